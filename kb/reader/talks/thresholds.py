"""From where on it is so: "and at what temperature?", "how close?"; and "only 3 minutes" of a bound told."""

from __future__ import annotations

import msgspec

from kb.measures import find_measure, same_dimension
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading, Verdict
from kb.model.records import is_in_force
from kb.model.values import NO, is_subset
from kb.reader.meaning.fits import facts_that_matter, rules_of_aspect
from kb.reader.meaning.query import merge_case
from kb.reader.pieces.bounded import bounded_fact
from kb.reader.talks.further import LEAD, bare_words
from kb.reader.talks.talked import Talk
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_AT = r"(?:(?:at|from|below|above|under|over|beyond|past|within|after|for|in|until|till|down to|up to|on) )?"
_IS = (
    r"(?:(?:does|do|did|is|are|was|must|may|can|should|would|has|have) (?:that|it|this|they|there|i|we|one)\b"
    r"(?: (?:have to|got to|need to|be allowed|be|start|begin|apply|count|hold|end|stop|kick in|change|"
    r"do that|so|worn|put on|go|allowed|wear (?:it|them|one)|take (?:it|them) off|leave (?:it|them) off|away|"
    r"need (?:it|them|one)))*)"
)
_WHAT = Pattern(
    rf"(?i){LEAD}{_AT}(?:what|which|how many|how much)(?: sort of)?(?: the)? (?P<noun>[a-z]+)"
    rf"(?: away| off| or (?:more|less))?(?: {_IS})?(?: (?:then|exactly|though|again))*"
)
_HOW = Pattern(
    rf"(?i){LEAD}how (?P<noun>hot|cold|warm|cool|close|near|far|far away|far off|windy|strong)"
    rf"(?: (?:the )?(?:wind|air|water|it))?(?: {_IS})?(?: (?:then|exactly|though|again))*"
)
_DIMENSIONS = {
    "Cel": word_set("temperature temperatures degree degrees heat cold hot cold warm cool warmth"),
    "m": word_set("metre metres meter meters distance feet yards close near far away off"),
    "min": word_set("minute minutes hour hours day days week weeks month months time"),
    "km/h": word_set("wind speed windy strong force strength"),
}
_MANY = 5
_ACTS = ("may", "must", "when", "why")
_REQUIRED: tuple[Verdict, ...] = ("required",)
_LEADING = word_set("""
    no nope sorry oh oops wait well i mean meant said make that it actually rather 's is was 'm am are what
    how about if say even just only for at after within with and but or so be more like around nearly not
    there in stay stays staying , . there""")
_TRAILING = word_set("then instead today now ok okay tops most at only away off long , . ?")


def threshold(text: str, before: Query, talk: Talk) -> Reading | None:
    """When it is so, without what was told of the one measure that is asked for."""
    bare, lookup = bare_words(text), talk.lookup
    found = _WHAT.fullmatch(bare) or _HOW.fullmatch(bare)
    if found is None or not before.items or before.kind not in _ACTS:
        return None
    if lookup.aspects[before.aspect].kind != "act":
        return None
    words = {token.key for token in tokenize(found["noun"])} | {*found["noun"].casefold().split()}
    units = [unit for unit, names in _DIMENSIONS.items() if words & names]
    facts = [
        fact
        for fact in facts_that_matter(before, lookup)
        if lookup.facts[fact].kind == "quantity"
        and any(same_dimension(lookup.facts[fact].unit or "1", unit) for unit in units)
    ]
    if len(facts) != 1:
        return None
    if (clause := _the_one_that_tells(facts[0], before, lookup)) is not None:
        return talk.made(text, Query(kind="source", clause=clause, case=before.case))
    known = tuple((fact, values) for fact, values in before.case.facts if fact != facts[0])
    asked = msgspec.structs.replace(
        before, kind="when", value=None, modalities=_REQUIRED if before.kind == "must" else (),
        case=msgspec.structs.replace(before.case, facts=known),
    )  # fmt: skip
    return talk.made(text, asked)


def _the_one_that_tells(fact: str, before: Query, lookup: Lookup) -> str | None:
    """The one clause that tests a fact among many: a line of all cases would not tell the measure."""
    known = dict(before.case.facts)
    if len({*facts_that_matter(before, lookup)} - {*known}) < _MANY:
        return None
    clauses = {
        rule.clause
        for rule in rules_of_aspect(before.items, before.aspect, lookup)
        if is_in_force(rule, before.case.as_of)
        for test in tests(rule.condition)
        if test.fact == fact and (fact not in known or is_subset(known[fact], test.values))
    }
    return clauses.pop() if len(clauses) == 1 else None


def other_amount(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "No, sorry, only 3 minutes", after "in the cold room for ten": the bound in that is told anew."""
    bare, lookup = bare_words(text), talk.lookup
    found = find_measure(bare)
    if found is None or not before.items:
        return None
    lead, trail = tokenize(bare[: found.start]), tokenize(bare[found.end :])
    if not {t.low for t in lead} <= _LEADING or not {t.low for t in trail} <= _TRAILING:
        return None
    settled = [
        one
        for fact, _ in before.case.facts
        if lookup.facts[fact].kind == "yes_no"
        for label in (lookup.facts[fact].label,)
        if (one := bounded_fact(found.measure, tokenize(label), lookup)) is not None and one.fact == fact
    ]
    if len(settled) != 1 or _is_told(before, found.measure.unit, lookup):
        return None
    (one,) = settled
    if (
        one.value == NO and lookup.items[before.items[0]].protects
    ):  # what takes protection off is said in full
        return Reading(question=text, abstain=Abstain(reason="Say in full what is asked of that."))
    case = merge_case(before.case, {one.fact: one.value}, None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def _is_told(before: Query, unit: str, lookup: Lookup) -> bool:
    """Whether a measure of that kind was told, too."""
    records = (lookup.facts[fact] for fact, _ in before.case.facts)
    return any(record.kind == "quantity" and same_dimension(record.unit or "1", unit) for record in records)
