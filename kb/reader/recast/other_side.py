"""A measure on the other side than the books have it: "30 mm above the knee", of a hem that ends below it.

How far a thing reaches is kept as a number from something, and on which side is said by the clause alone.
What is told or asked of the other side is never judged by the number: the clause is shown that says it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Rule, is_in_force
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.gauge import same_words
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern
from kb.wording import say_query

_WAYS = {"above": word_set("above over"), "below": word_set("below under beneath underneath")}
_SHORT = word_set("short shy")
"""Of something, they say that a thing does not come to it."""
_NEARLY = 2
"""How many words may stand between a measure and its side: "30 mm or so above"."""
_LED = 4
"""How many words what it is taken from may stand behind the side: "above the middle of my knee"."""
_LIGHT, _IT = word_set("the of a an"), word_set("it them")
_SENTENCE = Pattern(r"(?<=[.;:]) ")


def by_its_side(reading: Reading, found: Understood, lookup: Lookup) -> Reading:
    """The reading; that of the clause, where a measure is told or asked of the side that it does not have."""
    query = reading.query
    if query is None or query.kind not in ("may", "must", "how") or not query.items:
        return reading
    if query.aspect not in lookup.aspects_within("size") and not _is_measured(query, lookup):
        return reading
    rules = [rule for rule in _measuring(query, lookup) if _side_of(rule, lookup)]
    if not rules or any(
        _side_of(rule, lookup) in _said(found, rule) or not _said(found, rule) for rule in rules
    ):
        return reading
    shown = Query(kind="source", clause=rules[0].clause, case=query.case)
    return msgspec.structs.replace(reading, query=shown, text=say_query(lookup, shown))


def _is_measured(query: Query, lookup: Lookup) -> bool:
    return query.aspect in lookup.aspects and lookup.aspects[query.aspect].kind == "measure"


def _measuring(query: Query, lookup: Lookup) -> Iterator[Rule]:
    """The rules in force that measure a thing from something, in the way that is asked about."""
    near = {one for item in query.items for one in (*lookup.broader(item), *lookup.narrower(item))}
    within = {query.aspect, *lookup.aspects_within(query.aspect)}
    for rule in lookup.base.rules:
        measure = rule.value.measure
        if rule.aspect not in within or measure is None or measure.datum is None:
            continue
        if not near.isdisjoint(rule.scope.items) and is_in_force(rule, query.case.as_of):
            yield rule


def _keys(rule: Rule) -> set[str]:
    """The words of what a rule measures from."""
    measure = rule.value.measure
    datum = measure.datum if measure is not None else None
    told = tokenize((datum.measured_from if datum is not None else None) or "")
    return {token.key for token in told if token.low not in _LIGHT}


def _side_of(rule: Rule, lookup: Lookup) -> str:
    """The one side that a clause has of what a rule measures from; "" for none or both."""
    keys, sides = _keys(rule), set[str]()
    for sentence in _SENTENCE.split(lookup.clauses[rule.clause].text):
        tokens = tokenize(sentence)
        if any(token.key in keys for token in tokens):
            sides |= {side for place, side in _sides(tokens) if _leads(tokens, place, keys, _IT)}
    return sides.pop() if len(sides) == 1 else ""


def _sides(tokens: Sequence[Token]) -> Iterator[tuple[int, str]]:
    for place, token in enumerate(tokens):
        yield from ((place, side) for side, words in _WAYS.items() if token.low in words)


def _leads(
    tokens: Sequence[Token], place: int, keys: set[str], pointing: frozenset[str] = frozenset()
) -> bool:
    """Whether a side is that of what is measured from, which stands soon behind it."""
    after = tokens[place + 1 : place + 1 + _LED]
    return any(keys & same_words(token.key) for token in after) or (bool(after) and after[0].low in pointing)


def _said(found: Understood, rule: Rule) -> set[str]:
    """The sides that are told of a measure, or of what the rule measures from."""
    tokens, keys = found.tokens, _keys(rule)
    ends = {piece.last for piece in found.pieces if piece.tag == "measure"}

    def is_told(place: int) -> bool:
        return _leads(tokens, place, keys) or any(end <= place <= end + _NEARLY for end in ends)

    short = {
        "short"
        for place, (token, after) in enumerate(pairwise(tokens))
        if token.low in _SHORT and after.low == "of" and is_told(place)
    }
    return short | {side for place, side in _sides(tokens) if is_told(place)}
