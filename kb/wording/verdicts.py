"""The headline of an answer: the verdict in words, for the question that was asked."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import OpenValue, Query, Verdict
from kb.model.values import YES, Ranges, ValueSet, others_in
from kb.wording.aspects import of_item, say_claimed
from kb.wording.cases import Facts, say_depends, say_facts
from kb.wording.english import listing, phrase, sentence
from kb.wording.labels import edition_reference, is_whole, item_label, rule_reference, the_item, the_items
from kb.wording.manners import is_manner, say_manner
from kb.wording.positions import grouped_places, say_places
from kb.wording.quantities import say_date
from kb.wording.situations import WORN

Lines = dict[tuple[str, str, Verdict], str]

# Question (may or must, do or not), verdict: the headline about an item and an act.
_HEADLINES: Lines = {
    ("may", "do", "required"): "Yes: {it} must be {done}.",
    ("may", "do", "permitted"): "Yes. {It} may be {done}.",
    ("may", "do", "prohibited"): "No. {It} must not be {done}.",
    (
        "may",
        "do",
        "not_required",
    ): "The books do not say: {it} need not be {done}, and no clause permits or forbids it.",
    ("may", "not", "required"): "No: {it} must be {done}.",
    ("may", "not", "permitted"): "Yes. {It} may be {done}, but need not be.",
    ("may", "not", "prohibited"): "Yes: {it} must not be {done}.",
    ("may", "not", "not_required"): "Yes. {It} need not be {done}.",
    ("must", "do", "required"): "Yes. {It} must be {done}.",
    ("must", "do", "permitted"): "No. {It} may be {done}, but need not be.",
    ("must", "do", "prohibited"): "No, this is prohibited: {it} must not be {done}.",
    ("must", "do", "not_required"): "No. {It} need not be {done}.",
    ("must", "not", "required"): "No: {it} must be {done}.",
    ("must", "not", "permitted"): "No. {It} may be {done}.",
    ("must", "not", "prohibited"): "Yes. {It} must not be {done}.",
    ("must", "not", "not_required"): "No. {It} need not be {done}, but no clause forbids it.",
}


def say_verdict(
    lookup: Lookup,
    verdict: Verdict,
    query: Query,
    *,
    open_facts: Sequence[str] = (),
    rows: Sequence[tuple[Facts, Verdict]] = (),
    values: Sequence[OpenValue] = (),
    rules: Sequence[str] = (),
) -> str:
    """The headline. `open_facts` are what a conditional verdict depends on and `rows` the cases that it
    has, `values` what is left open for an aspect, `rules` those that a conflict is between.

    Yes and no are said of what is asked: of what is prohibited, "Is it prohibited?" is answered by yes.
    """
    line = say_plain(lookup, verdict, query, open_facts, rows, values, rules)
    if query.kind not in ("may", "must") or query.modalities not in (("prohibited",), ("permitted",)):
        return line
    first = next((word for word in ("Yes", "No") if line.startswith(word)), "")
    turned = first and not (query.kind == "must" and line.startswith(_PROHIBITED))
    return _OTHER[first] + line[len(first) :] if turned else line


_PROHIBITED = "No, this is prohibited"
_OTHER = {"Yes": "No", "No": "Yes"}


def say_plain(
    lookup: Lookup,
    verdict: Verdict,
    query: Query,
    open_facts: Sequence[str] = (),
    rows: Sequence[tuple[Facts, Verdict]] = (),
    values: Sequence[OpenValue] = (),
    rules: Sequence[str] = (),
) -> str:
    if verdict == "conditional":
        from kb.wording.leading import (  # noqa: PLC0415
            say_claim_when,
            say_ordinarily,
            say_where_alone,
            say_whole,
            say_why,
        )

        ordinarily = (say_why if query.kind == "why" else say_ordinarily)(lookup, query, rows)
        ordinarily = ordinarily or say_claim_when(lookup, query, rows)
        if ordinarily:
            return ordinarily
        settled, rest = say_settled(lookup, query, [verdict for _, verdict in rows])
        if settled:
            return f"{settled}{rest.format(on=say_depends(lookup, open_facts))}."
        whole = say_whole(lookup, query, rows)
        if not whole and (alone := say_where_alone(lookup, query, rows)):
            return alone
        return _say_conditional(lookup, query, open_facts, whole)
    if verdict == "conflict":
        return _say_conflict(lookup, query, rules)
    if verdict == "silent":
        if early := say_before_all(lookup, query):
            return early
        return f"The books are silent: no clause addresses {_matter(lookup, query)}."
    if not query.items:
        return sentence(verdict.replace("_", " "))
    aspect = lookup.aspects[query.aspect]
    if query.kind in ("where", "how", "how_many") or aspect.kind != "act":
        return _say_value_verdict(lookup, verdict, query, values)
    line = _act_line(lookup, verdict, query)
    if query.kind not in ("may", "must"):
        line = line.removeprefix("Yes: ").removeprefix("Yes. ").removeprefix("No. ")
    return sentence(line)


def say_before_all(lookup: Lookup, query: Query) -> str:
    """That a day is before the first that any book is for; nothing of another day."""
    first = min(lookup.base.editions, key=lambda one: one.valid_from, default=None)
    if first is None or query.case.as_of >= first.valid_from:
        return ""
    named = f"{edition_reference(lookup, first.id)}, from {say_date(first.valid_from)}"
    return f"No book was in force on {say_date(query.case.as_of)}: the first is {named}."


def _act_line(lookup: Lookup, verdict: Verdict, query: Query) -> str:
    """The headline about an act; of a question that is neither may nor must, as if it were may."""
    asked, polarity = (query.kind, query.polarity) if query.kind in ("may", "must") else ("may", "do")
    line = _HEADLINES[asked, polarity, verdict]
    if is_manner(lookup.aspects[query.aspect]) and (so := _manner_line(lookup, verdict, query, line)):
        return so
    it = thing_in(lookup, query)
    done = done_in(lookup, query, query.case.alone and verdict != "required")
    return line.format(it=it, It=sentence(it, ""), done=done)


def _manner_line(lookup: Lookup, verdict: Verdict, query: Query, line: str) -> str:
    """The headline about a manner as one says it: "No: the boots must have the trousers inside."

    Nothing where its text can only be quoted, or where the headline says more than the verdict.
    """
    lead, _, rest = line.partition("{")
    aspect, modal = lookup.aspects[query.aspect], MODALS[verdict]
    if verdict == "required" and aspect.label.startswith("not "):
        aspect, modal = msgspec.structs.replace(aspect, label=aspect.label.removeprefix("not ")), "must not"
    said = say_manner(lookup, the_item(lookup, query.items[0]), aspect, modal)
    tail = ", but need not be" if rest.endswith("{done}, but need not be.") else ""
    if "“" in said or not (tail or rest.endswith(f" {MODALS[verdict]} be {{done}}.")):
        return ""
    return f"{lead}{sentence(said, '') if lead.endswith('. ') else said}{tail}."


def means_yes(lookup: Lookup, query: Query, verdict: Verdict) -> bool | None:
    """Whether a verdict is a yes or a no to the question; None where it is neither."""
    if verdict in ("silent", "conflict", "conditional"):
        return None
    if query.value is not None or lookup.aspects[query.aspect].kind != "act":
        return _is_good(query, verdict)
    line = _HEADLINES[query.kind, query.polarity, verdict]
    return True if line.startswith("Yes") else False if line.startswith("No") else None


def done_in(lookup: Lookup, query: Query, alone: bool | None = None) -> str:
    """ "worn with the storm coat", "worn alone", "worn with nothing but the storm coat"."""
    alone = query.case.alone if alone is None else alone
    aspect = lookup.aspects[query.aspect]
    if is_manner(aspect):
        return f"“{aspect.label}”"
    facts = [fact for fact, values in query.case.facts if values == YES and fact.startswith(WORN)]
    others = dict.fromkeys([*query.items[1:], *(fact.removeprefix(WORN) for fact in facts)])
    beside = tuple(item for item in others if item in lookup.items and item not in query.items[:1])
    done = aspect.done or "done"
    if not beside:
        return f"{done} alone" if alone else done
    return f"{done} with {'nothing but ' if alone else ''}{the_items(lookup, beside)}"


def thing_in(lookup: Lookup, query: Query) -> str:
    aspect, item = lookup.aspects[query.aspect], query.items[0]
    if is_manner(aspect):
        return of_item(lookup, aspect.id, item)
    return _any_other(lookup, item) if query.as_such else the_item(lookup, item)


def _any_other(lookup: Lookup, item: str) -> str:
    """ "Any pin other than the charity pin": what is of a class, and nothing that rules leave out of it."""
    rules = (rule.scope for rule in lookup.rules_on((item,)))
    apart = {kind for scope in rules for kind in scope.excluding if item in lookup.broader(kind)}
    kinds = tuple(kind for kind in lookup.narrower(item) if kind in apart)
    label = item_label(lookup, item)
    if 0 < len(kinds) < 4:
        return f"any {label} other than {the_items(lookup, kinds, 'or')}"
    return the_item(lookup, item) if is_whole(lookup, item) else f"any other {label}"


def _matter(lookup: Lookup, query: Query) -> str:
    """What no clause addresses."""
    if not query.items:
        return "this"
    aspect = lookup.aspects[query.aspect]
    if aspect.kind == "act":
        if query.kind in ("where", "how"):
            return f"how {thing_in(lookup, query)} must be {done_in(lookup, query)}"
        modal = "must" if query.kind == "must" else "may"
        return f"whether {thing_in(lookup, query)} {modal} be {done_in(lookup, query)}"
    if aspect.kind == "position":
        return f"where {the_item(lookup, query.items[0])} must be worn"
    if others_in(query.value):
        said = say_claimed(lookup, aspect.id, query.items[0], query.value)  # type: ignore[arg-type]
        return f"whether {of_item(lookup, aspect.id, query.items[0])} may be {said}"
    return of_item(lookup, aspect.id, query.items[0])


# Question, polarity: verdicts that all mean yes or all mean no, and what is then still open.
_ALIKE: tuple[tuple[str, str, frozenset[str], str, str], ...] = (
    (
        "may",
        "do",
        frozenset({"required", "permitted"}),
        "Yes: {it} may or must be {done}",
        ", depending on {on}",
    ),
    (
        "may",
        "not",
        frozenset({"permitted", "not_required", "prohibited"}),
        "Yes: {it} may be left off",
        "; whether that is a duty depends on {on}",
    ),
    (
        "must",
        "do",
        frozenset({"permitted", "not_required", "prohibited"}),
        "No: {it} need not be {done}",
        "; whether it may be depends on {on}",
    ),
    (
        "must",
        "not",
        frozenset({"permitted", "not_required", "required"}),
        "No: {it} may be {done}",
        "; whether that is a duty depends on {on}",
    ),
)


def say_settled(lookup: Lookup, query: Query, among: Sequence[Verdict]) -> tuple[str, str]:
    """Yes or no, where every case of a table has the same answer to the question asked, and what is then
    open, to be filled with what it depends on; else nothing."""
    if query.value is not None and others_in(query.value) and set(among) == {"prohibited"}:
        said = say_plain(lookup, "prohibited", query).removesuffix(".")
        place = lookup.aspects[query.aspect].kind == "position"
        return said, f"; {'where it goes' if place else 'what it must be'} depends on {{on}}"
    if query.items and lookup.aspects[query.aspect].kind == "act":
        for kind, polarity, verdicts, line, rest in _ALIKE:
            if (query.kind, query.polarity) == (kind, polarity) and among and verdicts.issuperset(among):
                said = line.format(it=thing_in(lookup, query), done=done_in(lookup, query))
                return sentence(said).removesuffix("."), rest
    return "", ""


def _say_conditional(lookup: Lookup, query: Query, open_facts: Sequence[str], whole: str = "") -> str:
    if not open_facts:
        return sentence(f"It depends on facts that are not known: {_matter(lookup, query)}")
    return f"It depends on {say_depends(lookup, open_facts)}{whole and f': {whole}'}."


_MOST_TIMES = 4
MODALS: dict[Verdict, str] = {
    "required": "must", "permitted": "may", "prohibited": "must not", "not_required": "need not",
}  # fmt: skip


def say_when(lookup: Lookup, query: Query, rows: Sequence[tuple[Facts, Verdict]]) -> str:
    """The cases of a table that have what "when" asks for; nothing where they take too many words."""
    asked: tuple[Verdict, ...] = query.modalities or ("required", "permitted")
    told = {verdict for _, verdict in rows}
    wanted = [(facts, verdict) for facts, verdict in rows if verdict in asked]
    if len(wanted) > _MOST_TIMES or told & {"conditional", "conflict"}:
        return ""
    it, done = thing_in(lookup, query), done_in(lookup, query)
    if not wanted:
        modal = " or ".join(MODALS[verdict] for verdict in reversed(asked) if verdict in MODALS)
        return sentence(f"no clause says that {it} {modal} be {done}")
    said = []
    for verdict in asked:
        times = [say_facts(lookup, facts) for facts, found in wanted if found == verdict]
        if times:
            said.append(sentence(f"{it} {MODALS[verdict]} be {done} when {'; or when '.join(times)}"))
    return " ".join(said)


def _say_conflict(lookup: Lookup, query: Query, rules: Sequence[str]) -> str:
    matter = _matter(lookup, query)
    clauses = list(dict.fromkeys(rule_reference(lookup, rule) for rule in rules))
    on = matter if matter.startswith(("whether", "where", "how")) else f"on {matter}"
    on = on if on.startswith("on ") else f"on {on}"
    if len(clauses) == 1:
        return f"Conflict: {clauses[0]} disagrees with itself {on}."
    if clauses:
        return f"Conflict: {listing(clauses)} disagree {on}."
    return f"Conflict: the clauses disagree {on}."


def _say_value_verdict(lookup: Lookup, verdict: Verdict, query: Query, values: Sequence[OpenValue]) -> str:
    told = lookup.aspects[query.aspect].kind == "position" and verdict in ("required", "permitted")
    strange = others_in(query.value) and values and (told or verdict == "prohibited")
    if query.value is not None and not strange:
        of_it = [value for value in values if value.aspect == query.aspect]
        asked = query.kind in ("may", "must") and query.polarity == "do"
        if asked and verdict == "prohibited" and of_it and _is_stretch(query.value):
            return f"No. {_state(lookup, query, query.aspect, of_it)}"  # a part of "at most 3" may well be
        return _say_claim(lookup, verdict, query)
    stated = [_state(lookup, query, aspect, values) for aspect in dict.fromkeys(v.aspect for v in values)]
    if not stated:
        if lookup.aspects[query.aspect].kind == "act":
            return sentence(
                f"the books say how {the_item(lookup, query.items[0])} must be {done_in(lookup, query)}"
            )
        return sentence(f"the books settle {_matter(lookup, query)}")
    if query.value is not None and query.kind in ("may", "must"):  # no book names what was asked about
        stated.insert(0, "Yes." if _is_good(query, verdict) else "No.")
    return " ".join(stated)


def _is_stretch(claim: ValueSet) -> bool:
    return isinstance(claim, Ranges) and any(one.low != one.high for one in claim.intervals)


def say_values_of(lookup: Lookup, query: Query, verdict: Verdict, values: Sequence[OpenValue]) -> str:
    """What is left open of each aspect, as sentences."""
    return _say_value_verdict(lookup, verdict, query, values)


def _state(lookup: Lookup, query: Query, aspect: str, values: Sequence[OpenValue]) -> str:
    """The values left open of one aspect as a sentence."""
    record = lookup.aspects[aspect]
    chosen = [value for value in values if value.aspect == aspect]
    labels = list(dict.fromkeys(value.label for value in chosen))
    item = chosen[0].item if chosen[0].item in lookup.items else query.items[0]
    if is_manner(record):
        return sentence(say_manner(lookup, the_item(lookup, item), record, _manner_verb(chosen[0])))
    item = _counted(lookup, chosen[0], item) if record.kind == "count" else item
    if record.kind == "act":
        return sentence(f"{of_item(lookup, aspect, item)}: {listing(labels)}")
    modal = "must" if all(value.required for value in chosen) or len(labels) > 1 else "may"
    said = labels[0] if len(labels) == 1 else f"either {listing(labels, 'or')}"
    if record.kind == "position":
        duties = [rule for rule in chosen[0].rules if lookup.rules[rule].modality == "must"]
        modal = "must" if duties else modal  # of several places the one on the garment asked of
        return sentence(phrase(the_item(lookup, item), modal, "be worn", say_places(grouped_places(labels))))
    if record.kind == "order":
        return sentence(f"{of_item(lookup, aspect, item)}, the senior first, {modal} be {said}")
    return sentence(f"{of_item(lookup, aspect, item)} {modal} be {said}")


def _counted(lookup: Lookup, value: OpenValue, item: str) -> str:
    """The class whose number the rules limit, where they limit no number of the thing itself."""
    scopes = [lookup.rules[rule].scope for rule in value.rules if rule in lookup.rules]
    if len(scopes) != 1 or item in scopes[0].items or len(scopes[0].items) != 1:
        return item
    return scopes[0].items[0]


def _manner_verb(value: OpenValue) -> str:
    if value.required:
        return "must"
    return {"closed": "must not", "supported": "may"}.get(value.status, "need not")


def _say_claim(lookup: Lookup, verdict: Verdict, query: Query) -> str:
    """The verdict on a claimed value: "No. The height of the device must not be 2 in."."""
    assert query.value is not None
    record, item = lookup.aspects[query.aspect], query.items[0]
    subject, be = of_item(lookup, record.id, item), "be"
    if record.kind == "position":
        subject, be = the_item(lookup, item), "be worn"
    said = say_claimed(lookup, record.id, item, query.value)
    modal = {"required": "must", "permitted": "may", "prohibited": "must not", "not_required": "need not"}[
        verdict
    ]
    if " not" in modal:  # "must not be 2": nobody forbids the very number
        said = said.replace("exactly ", "")
        for bound, more in (("at least ", "or more"), ("at most ", "or less")):
            said = f"{said.removeprefix(bound)} {more}" if said.startswith(bound) else said
    lead = "" if query.kind not in ("may", "must") else ("Yes. " if _is_good(query, verdict) else "No. ")
    return lead + sentence(phrase(subject, modal, be, said))


def _is_good(query: Query, verdict: Verdict) -> bool:
    """Whether a verdict is a yes to what is claimed of a value."""
    good = verdict in ("required", "permitted") if query.kind != "must" else verdict == "required"
    return good != (query.polarity == "not")
