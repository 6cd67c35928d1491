"""Numbers and measures said alone in a talk: "two of them?", "and 30 mm?", "exactly 15?", "at zero?"."""

from __future__ import annotations

import msgspec

from kb.errors import UsageError
from kb.measures import UNITS, MeasureError, parse_measure
from kb.model.questions import Query, Reading
from kb.reader.fits import rules_on
from kb.reader.further import LEAD, bare_words, put_as
from kb.reader.measured import rule_aspects
from kb.reader.query import merge_case
from kb.reader.statement import parse_fact
from kb.reader.talked import Talk
from kb.text import Pattern

_NUMBER = r"\d+(?:(?: \d+)?/\d+|\.\d+)?|zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_AMOUNT = Pattern(
    rf"(?i){LEAD}(?:(?:what|how) (?:about|if)|even if|even|if|is|are|at|with|on|may i|can i|could i|say)? ?"
    r"(?:it(?:['’]s| is| was| measures)|they(?:['’]re| are)|there(?:['’]s| is| are)"
    r"|(?:i|he|she|they|we|you)? ?(?:have|wear|want|had|wore|has|wears|own|be)|i['’]ve(?: got)?)? ?"
    r"(?:exactly|only|just)? ?"
    rf"((?:minus |-)?(?:{_NUMBER}))( of (?:them|these|those)| ones)?(?: ?([^ ].{{0,14}}?))??"
    r"(?: (?:then|instead|ok|okay|allowed|fine|all right|too many|together|at once))*"
)


_DATED = Pattern(
    rf"(?i){LEAD}(?:(?:what|how) about |what if |if )?(?:it (?:was|were|is) |i |he |she )?"
    r"(?:in |on |joined in )?((?:\d{1,2} )?(?:[a-z]{3,9} )?\d{4})(?: instead| then)?"
)
_UNIT = Pattern(r"(?i)\d ?(mm|cm|m|in|inch|inches|millimetres?|centimetres?)\b")


def amount(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """A number as the number of the things spoken of, a measure as theirs, or the fact that has one."""
    before, found = previous.query, _AMOUNT.fullmatch(bare_words(text))
    if before is None or found is None or not before.items:
        return None
    number, of_them, unit = found.groups()
    if unit is not None:
        return _measured(text, f"{number} {unit}", before, talk)
    if of_them is None and before.kind != "how_many":
        given = _given(number, before, talk)
        if given is not None:
            return talk.made(text, given)
    if number.casefold() == "one" and of_them is None and before.kind != "how_many":
        return None  # "and one?" may stand for the thing
    label = talk.lookup.items[before.items[0]].label
    counted = {"count", "kit-count"} & set(rule_aspects(before.items[0], talk.lookup))
    if not counted and of_them is None:
        measures = talk.lookup.aspects[before.aspect].kind == "measure"
        unit = (_unit_of(previous) or _unit_in_books(before, talk)) if measures else ""
        return _measured(text, f"{number} {unit}", before, talk) if unit else None
    act = "own" if before.aspect in ("possession", "kit-count") else "wear"
    again = _in_its_case(talk, before).read(f"may I {act} {number} {label}?", None)
    return put_as(text, again) if again.query is not None else None


def another_day(text: str, before: Query, talk: Talk) -> Query | None:
    """ "And in 2016?", after "I joined in 2014": the one date that is known of somebody, as another."""
    found = _DATED.fullmatch(bare_words(text))
    facts = [fact for fact, _ in before.case.facts if talk.lookup.facts[fact].kind == "date"]
    if found is None or len(facts) != 1:
        return None
    try:
        fact, values = parse_fact(talk.lookup, facts[0], found.group(1))
    except UsageError:
        return None
    case = merge_case(before.case, {fact: values}, None, False, talk.lookup)
    return msgspec.structs.replace(before, case=case)


def _unit_of(previous: Reading) -> str:
    """The unit in which a measure was said before, "" if there was none."""
    found = _UNIT.search(previous.question)
    return found.group(1) if found is not None else ""


def _unit_in_books(before: Query, talk: Talk) -> str:
    """The unit in which the books measure what was spoken of, "" where they use several."""
    rules = rules_on(before.items, before.aspect, talk.lookup)
    units = {rule.value.measure.unit for rule in rules if rule.value.measure is not None}
    unit = units.pop() if len(units) == 1 else ""
    return UNITS[unit].symbol if unit in UNITS else ""


def _in_its_case(talk: Talk, before: Query) -> Talk:
    return msgspec.structs.replace(talk, case=before.case)


def _given(number: str, before: Query, talk: Talk) -> Query | None:
    """The one quantity that is known of the situation, as another number."""
    facts = [fact for fact, _ in before.case.facts if talk.lookup.facts[fact].kind == "quantity"]
    if len(facts) != 1:
        return None
    try:
        fact, values = parse_fact(talk.lookup, facts[0], number)
    except UsageError:
        return None
    case = merge_case(before.case, {fact: values}, None, False, talk.lookup)
    return msgspec.structs.replace(before, case=case)


def _measured(text: str, said: str, before: Query, talk: Talk) -> Reading | None:
    """ "And 30 mm?": may the measure that was spoken of be so much."""
    aspect = talk.lookup.aspects[before.aspect]
    if aspect.kind not in ("measure", "position"):
        return None
    try:
        parse_measure(said)
    except MeasureError:
        return None
    label = talk.lookup.items[before.items[0]].label
    if aspect.kind == "position":
        start = _measured_from(before, talk)
        apart = (
            _in_its_case(talk, before).read(f"the {label} is {said} from the {start}", None)
            if start
            else None
        )
        return put_as(text, apart) if apart is not None and apart.query is not None else None
    modal = "must" if before.kind == "must" else "may"
    again = _in_its_case(talk, before).read(f"{modal} the {aspect.label} of the {label} be {said}?", None)
    return put_as(text, again) if again.query is not None else None


def _measured_from(before: Query, talk: Talk) -> str:
    """What all rules on where a thing goes measure its distance from, "" where that is not one thing."""
    rules = rules_on(before.items, before.aspect, talk.lookup)
    datums = {p.offset.datum for rule in rules for p in rule.value.positions if p.offset is not None}
    starts = {datum.measured_from for datum in datums if datum is not None}
    return (starts.pop() or "") if len(starts) == 1 else ""
