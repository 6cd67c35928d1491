"""Two things worn at once: of a kind, told apart by colour ("a black watch and a silver one"), or of two.

How many are worn is asked of those of a kind, and not whether one may be of either colour. Of two others it
is asked of the one that may not be worn beside the other, whichever of them was named first.
"""

from __future__ import annotations

from fractions import Fraction

import msgspec

from kb.model.conditions import evaluate, tests
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query, Reading
from kb.model.records import is_in_force
from kb.model.values import YES, Choices, Interval, Ranges, ValueSet, contains
from kb.reader.meaning.fits import rules_of_aspect
from kb.reader.meaning.query import merge_case
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.unnamed import settled
from kb.text import Pattern
from kb.wording import say_query

_ITEMS = ("item", "items")
_WORN = "worn:"
_IT = Pattern(
    r"(?i)\b(?:with|over|under|beside|and) (?:it|them|that|those|this|these)\b|\b(?:both|together)\b"
)


_BOTH_OF_A_KIND = Pattern(
    r"(?i)\bboth (?:(?:of )?(?:the|my|his|her|our|their|your|these|those) )?(?:[\w'-]+ ){0,2}[\w'-]+s\b"
)


def of_values(query: Query, found: Understood, lookup: Lookup) -> Query | Ask:
    """The question with its values settled, whether they are said of one thing or of several."""
    return settled(_at_once(query, found, lookup), lookup)


def _at_once(query: Query, found: Understood, lookup: Lookup) -> Query:
    """The question whether so many may be worn, where each of them is named by a value of its own."""
    plain = isinstance(query.value, Choices) and not query.value.complement and len(query.value.members) > 1
    asked = query.kind == "may" and query.polarity == "do" and len(query.items) == 1
    if not (plain and asked and "count" in lookup.aspects):
        return query
    named = [n for n, p in enumerate(found.pieces) if _is_of(p, query.aspect)]
    linked = found.pieces[named[0] : named[-1]] if named else ()
    tags = {piece.tag for piece in linked}
    together = any(piece.tag == "together" for piece in found.pieces) or found.tokens[-1].low == "both"
    together = together and "and" in tags
    apart = "and" in tags and all(_is_one(found, place) for place in named)
    beside = "with" in tags and all(_is_noun(found, place + 1) for place in named)
    if len(named) < 2 or "or" in tags or not (together or apart or beside):
        return query
    number = Fraction(len(named))
    if _may_be_so_many(query.items[0], number, lookup):
        return query  # then it turns on what colour each is
    return msgspec.structs.replace(query, aspect="count", value=Ranges((Interval(low=number, high=number),)))


def _is_of(piece: Piece, aspect: str) -> bool:
    return piece.tag == "aspect value" and any(entry.owner == aspect for entry in piece.entries)


def _is_one(found: Understood, place: int) -> bool:
    """ "A silver one", "the copper spoon": one thing that is so."""
    if not place or found.pieces[place - 1].tag != "det" or not _is_noun(found, place + 1):
        return False
    return not found.tokens[found.pieces[place + 1].last - 1].low.endswith("s")


def _is_noun(found: Understood, place: int) -> bool:
    piece = found.pieces[place] if place < len(found.pieces) else None
    return piece is not None and (piece.tag in _ITEMS or found.tokens[piece.last - 1].low in ("one", "ones"))


def _may_be_so_many(item: str, number: Fraction, lookup: Lookup) -> bool:
    """Whether rules limit how many of a thing are worn, and none of them shuts so many out."""
    wider = lookup.broader(item)
    limits = [r for r in lookup.rules_on(wider) if r.aspect == "count"]
    return bool(limits) and all(
        contains(rule.value.values, number) == (rule.modality != "must_not") for rule in limits
    )


def of_both(text: str, reading: Reading, lookup: Lookup) -> Reading:
    """ "Both badges at once?", of which one alone was read: no answer tells of the two."""
    query = reading.query
    if query is None or query.kind not in ("may", "must") or _BOTH_OF_A_KIND.search(text) is None:
        return reading
    alone = len(query.items) == 1 and not lookup.items[query.items[0]].label.casefold().endswith("s")
    beside = any(fact.startswith(_WORN) and values == YES for fact, values in query.case.facts)
    if not alone or beside or lookup.aspects[query.aspect].kind != "act":
        return reading
    return Reading(question=text, abstain=Abstain(reason="Two are asked about; ask about one at a time."))


def of_the_closed_one(reading: Reading, lookup: Lookup) -> Reading:
    """ "The neck cloth with the scarf?": of the scarf, where that is what may not be worn with the other."""
    query = reading.query
    if query is None or query.polarity != "do" or query.value:
        return reading
    if query.kind in ("how", "how_many"):
        return _of_its_company(reading, query, lookup)
    if (query.kind, query.aspect) != ("may", "wear"):
        return reading
    worn = [fact for fact, values in query.case.facts if fact.startswith(_WORN) and values == YES]
    new = [fact for fact in worn if fact not in reading.carried]
    if len(query.items) != 1 or not worn or len(new) > 1 or (not new and not _IT.search(reading.question)):
        return reading  # what was on before is not spoken of now
    item = query.items[0]
    others = [fact.removeprefix(_WORN) for fact in new or worn]
    others = [other for other in others if len(lookup.narrower(other)) < 2]  # of socks, which is not known
    closed = [other for other in others if _closed_by(other, item, query, lookup)]
    if len(closed) != 1:
        return reading
    (other,) = closed
    if _closed_by(item, other, query, lookup) and (
        _is_duty(other, query, lookup) or not _is_duty(item, query, lookup)
    ):
        return reading  # what is a duty somewhere stays on there: it is the other that comes off
    return _of(other, reading, query, lookup)


def _of_its_company(reading: Reading, query: Query, lookup: Lookup) -> Reading:
    """ "And with a mask?", after how long a beard may be: whether the mask may be worn with one.

    So where no rule on how the thing is asks whether the other is worn, and one forbids it beside that.
    """
    worn = [fact for fact, values in query.case.facts if fact.startswith(_WORN) and values == YES]
    new = [fact for fact in worn if fact not in reading.carried]
    if len(query.items) != 1 or len(new) != 1 or not reading.carried:
        return reading
    fact, other = f"{_WORN}{query.items[0]}", new[0].removeprefix(_WORN)
    tested = any(
        test.fact == new[0]
        for rule in rules_of_aspect(query.items, query.aspect, lookup)
        for test in tests(rule.condition)
    )
    forbids = any(
        rule.modality == "must_not"
        and is_in_force(rule, query.case.as_of)
        and any(test.fact == fact and test.values == YES for test in tests(rule.condition))
        for rule in rules_of_aspect((other,), "wear", lookup)
    )
    return _of(other, reading, query, lookup) if forbids and not tested else reading


def _of(other: str, reading: Reading, query: Query, lookup: Lookup) -> Reading:
    """Whether the other thing may be worn, with the one that was asked about."""
    less = tuple(fact for fact in query.case.facts if fact[0] != f"{_WORN}{other}")
    case = msgspec.structs.replace(query.case, facts=less, alone=False)
    beside: dict[str, ValueSet] = {f"{_WORN}{query.items[0]}": YES}
    case = merge_case(case, beside, None, False, lookup)
    asked = Query(kind="may", items=(other,), aspect="wear", case=case)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))


def _is_duty(item: str, query: Query, lookup: Lookup) -> bool:
    """Whether a rule on exactly this thing makes it a duty in some case."""
    return any(
        rule.modality == "must" and item in rule.scope.items and is_in_force(rule, query.case.as_of)
        for rule in rules_of_aspect((item,), "wear", lookup)
    )


def _closed_by(item: str, other: str, query: Query, lookup: Lookup) -> bool:
    """Whether a rule forbids a thing for no more than that the other is worn."""
    alone: dict[str, ValueSet] = {f"{_WORN}{other}": YES}
    nothing: dict[str, ValueSet] = {}
    return any(
        rule.modality == "must_not" and is_in_force(rule, query.case.as_of)
        and evaluate(rule.condition, alone.get) is True
        and evaluate(rule.condition, nothing.get) is not True
        for rule in rules_of_aspect((item,), "wear", lookup)
    )  # fmt: skip
