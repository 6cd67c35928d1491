"""Conditions of rules, definitions and exclusions: mappings of facts and values to tests."""

from __future__ import annotations

from kb.measures import UNITS, MeasureError, base_unit, parse_dates, parse_measure
from kb.model.conditions import ALWAYS, Condition, Test, all_of, any_of, negate
from kb.model.records import Fact
from kb.model.values import NO, YES, Interval, Ranges, ValueSet, choices, ranges
from kb.sources.cycles import closure
from kb.sources.fields import as_text, as_texts, kind_of
from kb.sources.people import NOT_GRANTED
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.scales import read_scale
from kb.sources.things import check_item
from kb.sources.tree import Entry, Mapping, Node, Scalar, Sequence
from kb.sources.vocabulary import Vocabulary

_ALIASES = {"grades": "grade"}
_WORDS = ("any of", "all of", "unless", "worn", "holds", "granted", "grades")
_WRITE = "Write a fact and its value, such as {weather: foul}."


def read_condition(node: Node, vocabulary: Vocabulary, report: Report) -> Condition:
    """A mapping of which every line must hold. What is not understood is reported and left out."""
    if not isinstance(node, Mapping):
        message = f"The condition is {kind_of(node)}, but facts and values are needed."
        report.error(node.at, "wrong-kind", message, _WRITE)
        return ALWAYS
    if not node.entries:
        report.error(node.at, "empty-condition", "The condition has no line.", _WRITE)
    return all_of(_line(entry, vocabulary, report) for entry in node.entries)


def read_conditions(node: Node, vocabulary: Vocabulary, report: Report) -> list[Condition]:
    """A list of conditions; one alone counts as a list of one."""
    nodes = node.nodes if isinstance(node, Sequence) else (node,)
    return [read_condition(each, vocabulary, report) for each in nodes]


def _line(entry: Entry, vocabulary: Vocabulary, report: Report) -> Condition:
    key, value = entry.key, entry.value
    if key.text.startswith("not "):
        bare = Scalar(key.text.removeprefix("not ").strip(), key.at)
        return negate(_line(Entry(bare, value), vocabulary, report))
    if key.text == "any of":
        return any_of(read_conditions(value, vocabulary, report))
    if key.text == "all of":
        return all_of(read_conditions(value, vocabulary, report))
    if key.text == "unless":
        return negate(any_of(read_conditions(value, vocabulary, report)))
    if key.text == "worn":
        return _worn(value, vocabulary, report)
    if key.text == "holds":
        return _holds(value, vocabulary, report)
    if key.text == "granted":
        return _granted(value, vocabulary, report)
    return _fact_line(key, value, vocabulary, report)


def _worn(value: Node, vocabulary: Vocabulary, report: Report) -> Condition:
    names = [n for n in as_texts(value, '"worn"', report) if check_item(n, vocabulary.items, report)]
    return any_of(Test(f"worn:{name.text}", YES) for name in names) if names else ALWAYS


def _holds(value: Node, vocabulary: Vocabulary, report: Report) -> Condition:
    tests = []
    for name in as_texts(value, '"holds"', report):
        if f"holds:{name.text}" in vocabulary.facts:
            tests.append(Test(f"holds:{name.text}", YES))
            continue
        known = [fact.removeprefix("holds:") for fact in vocabulary.facts if fact.startswith("holds:")]
        remedy = suggestion(name.text, known, "Declare it under qualifications, appointments or waivers.")
        message = f"There is no qualification, appointment or waiver {quoted(name.text)}."
        report.error(name.at, "unknown-holding", message, remedy)
    return any_of(tests) if tests else ALWAYS


def _granted(value: Node, vocabulary: Vocabulary, report: Report) -> Condition:
    """By the lowest authority that may grant it or a higher one, or by the one that is named and higher."""
    asked: list[tuple[Scalar, Scalar | None]]
    if isinstance(value, Mapping):
        asked = [(entry.key, as_text(entry.value, '"granted"', report)) for entry in value.entries]
    else:
        asked = [(name, None) for name in as_texts(value, '"granted"', report)]
    tests = []
    for name, authority in asked:
        fact = vocabulary.facts.get(f"granted:{name.text}")
        if fact is None:
            known = [f.removeprefix("granted:") for f in vocabulary.facts if f.startswith("granted:")]
            remedy = suggestion(name.text, known, "Declare it under authorisations.")
            message = f"There is no authorisation {quoted(name.text)}."
            report.error(name.at, "unknown-authorisation", message, remedy)
        elif authority is not None and authority.text not in vocabulary.authorities:
            known = list(vocabulary.authorities)
            remedy = suggestion(authority.text, known, f"Write {listed(known)}.")
            message = f"There is no authority {quoted(authority.text)}."
            report.error(authority.at, "unknown-authority", message, remedy)
        else:
            lowest = authority.text if authority else vocabulary.grantors.get(name.text)
            if authority is not None:
                _check_grantor(name, authority, vocabulary, report)
            tests.append(_granted_test(fact, lowest, vocabulary))
    return any_of(tests) if tests else ALWAYS


def _check_grantor(name: Scalar, authority: Scalar, vocabulary: Vocabulary, report: Report) -> None:
    """Report an authority too low to grant what a condition says that it has granted."""
    lowest = vocabulary.grantors.get(name.text)
    ranks = vocabulary.authorities
    if lowest in ranks and ranks[authority.text].rank > ranks[lowest].rank:
        message = (
            f"{quoted(authority.text)} cannot grant {quoted(name.text)}; {quoted(lowest)} or higher can."
        )
        remedy = f"Write {quoted(lowest)} or a higher authority, or only granted: {name.text}."
        report.error(authority.at, "grantor-too-low", message, remedy)


def _granted_test(fact: Fact, lowest: str | None, vocabulary: Vocabulary) -> Test:
    authorities = vocabulary.authorities
    rank = authorities[lowest].rank if lowest in authorities else 0
    names = [v.id for v in fact.values if v.id != NOT_GRANTED and authorities[v.id].rank <= rank]
    return Test(fact.id, choices(*names))


def _fact_line(key: Scalar, value: Node, vocabulary: Vocabulary, report: Report) -> Condition:
    fact = vocabulary.facts.get(_ALIASES.get(key.text, key.text))
    if fact is None:
        known = [f for f in vocabulary.facts if ":" not in f]
        close = {"grade": "Declare ladders of grades.", "rig": "Declare rigs.", "branch": "Declare branches."}
        otherwise = close.get(_ALIASES.get(key.text, key.text), "Declare it under facts.")
        remedy = suggestion(key.text, [*known, *_WORDS], otherwise)
        report.error(key.at, "unknown-fact", f"There is no fact {quoted(key.text)}.", remedy)
        return ALWAYS
    texts = as_texts(value, quoted(key.text), report)
    values = read_fact_values(fact, texts, vocabulary, report) if texts else None
    if values is None:
        return ALWAYS
    _warn_of_all(key, fact, values, report)
    return Test(fact.id, values)


def _warn_of_all(key: Scalar, fact: Fact, values: ValueSet, report: Report) -> None:
    """A line with every value of a choice asks nothing: a case has one of the values that are declared."""
    every = choices(*(value.id for value in fact.values))
    if fact.kind == "choice" and fact.family == "situation" and len(fact.values) > 1 and values == every:
        message = f"{quoted(key.text)} names every value that is declared, so the line always holds."
        remedy = (
            "Leave it out, or declare a value for whatever else there is ({id: elsewhere, label: elsewhere})."
        )
        report.warn(key.at, "always-true", message, remedy)


def read_fact_values(
    fact: Fact, texts: tuple[Scalar, ...], vocabulary: Vocabulary, report: Report
) -> ValueSet | None:
    """The values of a fact that the texts name together; None if any is not understood."""
    if fact.kind == "yes_no":
        return _yes_no(fact, texts, report)
    if fact.kind == "scale":
        found = (
            read_scale(texts, vocabulary.scales[fact.id], report) if fact.id in vocabulary.scales else None
        )
        return None if found is None else choices(*found)
    if fact.kind == "choice":
        return _choice(fact, texts, vocabulary, report)
    return _numbers(fact, texts, report)


def _yes_no(fact: Fact, texts: tuple[Scalar, ...], report: Report) -> ValueSet | None:
    if len(texts) == 1 and texts[0].text in ("yes", "no"):
        return YES if texts[0].text == "yes" else NO
    message = f"{quoted(fact.id)} is either yes or no, not {quoted(listed(t.text for t in texts))}."
    report.error(texts[0].at, "not-yes-or-no", message, "Write yes or no.")
    return None


def _choice(fact: Fact, texts: tuple[Scalar, ...], vocabulary: Vocabulary, report: Report) -> ValueSet | None:
    """Named values, their groups, and everything within them."""
    below: dict[str, tuple[str, ...]] = {}
    names: dict[str, tuple[str, ...]] = {}
    groups = [group for group in vocabulary.groups.values() if group.fact == fact.id]
    for value in fact.values:
        if value.within:
            below[value.within] = (*below.get(value.within, ()), value.id)
        for label in (value.label, *value.other_labels):
            names[label.casefold()] = (value.id,)
    for group in groups:
        for label in (group.label, *group.other_labels, group.id):
            names[label.casefold()] = group.members
    names |= {value.id.casefold(): (value.id,) for value in fact.values}
    found: set[str] = set()
    failed = False
    for text in texts:
        members = names.get(" ".join(text.text.split()).casefold())
        if members is None:
            known = [value.id for value in fact.values] + [group.id for group in groups]
            remedy = suggestion(text.text, known, f"Write {listed(known)}.")
            message = f"{quoted(text.text)} is no value of the fact {quoted(fact.id)}."
            report.error(text.at, "unknown-value", message, remedy)
            failed = True
        else:
            found.update(inner for member in members for inner in closure(member, below))
    return None if failed else choices(*found)


def _numbers(fact: Fact, texts: tuple[Scalar, ...], report: Report) -> Ranges | None:
    intervals: list[Interval] = []
    failed = False
    for text in texts:
        try:
            if fact.kind == "date":
                intervals.extend(parse_dates(text.text).intervals)
                continue
            measure = parse_measure(text.text)
        except MeasureError as error:
            code = "bad-date" if fact.kind == "date" else "bad-measure"
            report.error(text.at, code, error.problem, error.remedy)
            failed = True
            continue
        if fact.unit is not None and base_unit(measure.unit) != base_unit(fact.unit):
            _wrong_unit(fact, text, measure.unit, report)
            failed = True
        intervals.append(measure.interval)
    return None if failed else ranges(intervals)


def _wrong_unit(fact: Fact, text: Scalar, unit: str, report: Report) -> None:
    symbol = UNITS[fact.unit or "1"].symbol
    if unit == "1":
        message = f"{quoted(text.text)} has no unit."
        report.error(text.at, "missing-unit", message, f"Write {text.text} {symbol}.")
    else:
        message = f"{quoted(text.text)} is in a unit of another kind than {quoted(fact.id)}."
        report.error(text.at, "wrong-unit", message, f"Write it in {symbol}.")
