"""Measures told by what they are taken from: "how far past the mouth", "12 cm below the knee".

A rule is meant when its item is named and every other word of weight is one of those its measure is taken
from or to, or of the part or place that it is about.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Measure, Rule, is_in_force
from kb.model.values import ranges
from kb.reader.meaning.query import said_case
from kb.reader.phrases.english import tag_set
from kb.reader.phrases.standing import stands
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize, word_key
from kb.reader.words.written import as_written

_ABOVE = word_set("above over")
_BELOW = word_set("below under beneath underneath down")
_SIDES = (
    _ABOVE
    | _BELOW
    | word_set("""
    past beyond from off up back clear clears between short inside outside out pass passes close near
""")
)
_HOW: Mapping[str, str] = MappingProxyType(
    {
        "far": "", "low": "", "much": "", "close": "", "near": "", "deep": "", "short": "", "big": "",
        "large": "", "thick": "", "high": "height", "tall": "height", "long": "length", "wide": "width",
        "broad": "width",
    }
)  # fmt: skip
_OPEN = word_set("far high low")
_ENDS = (("ends", "are"), ("ends", "measure"), ("ends", "of"), ("ends", "were"))
"""What they measure needs no side: the ends of a neck cloth hang below its knot."""
# Words that say no more than that something reaches somewhere, or that a measure need not name.
_LIGHT = word_set("""
    arm distance how a an the my your his her its our their of to at on in by and is are be been does do
    did can could may must should shall will would have has got need it i we you they one that which
    what gap room space clearance height edge edges point line side sides seam tip leg legs back front behind
    ok okay fine allowed still mine right correct so just about roughly exactly there then up down out off
    when where with once if while until before after alright good meant supposed
""")
_SAME: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "top": ("upper",), "bottom": ("lower",), "loose": ("free",), "nail": ("fingernail",),
        "tip": ("fingertip", "end"), "lowest": ("lower", "lowest"), "fingertip": ("finger", "tip"),
        "head": ("scalp",), "lip": ("mouth",), "brow": ("eyebrow",), "cuff": ("sleeve", "cuff"),
        "sleeve": ("cuff", "sleeve"), "knee": ("kneecap", "knee"), "end": ("hem", "end"),
        "hem": ("edge", "hem"),
    }
)  # fmt: skip
_GAPS = frozenset({"distance", "gap", "space", "clearance"})
_GETTING = frozenset({"need", "get", "seek", "obtain", "ask", "have", "any"})
"""Before "clearance" they make it somebody's leave."""
_STATED = tag_set("fact, on date, joined, comma, filler, det, poss, allowed")


def gauged(found: Understood, roles: Roles, case: Case, lookup: Lookup) -> Query | None:
    """The question for the one measure that the words tell, or how it is worn; None where they tell none."""
    measured = _of_a_datum(found, roles, case, lookup)
    if measured is not None:
        return measured
    from kb.reader.recast.in_words import in_words  # noqa: PLC0415  most measures are kept as such

    return in_words(found, roles, case, lookup)


def _of_a_datum(found: Understood, roles: Roles, case: Case, lookup: Lookup) -> Query | None:
    """The question for the one measure that is told by what it is taken from."""
    lows = [token.low for token in found.tokens]
    claims = [piece for piece in found.pieces if piece.tag == "measure" and piece.measure is not None]
    heads = [after for low, after in pairwise(lows) if low == "how" and after in _HOW]
    heads += ["far" for before, low in pairwise(("", *lows)) if low in _GAPS and before not in _GETTING]
    heads += ["far" for low, after in pairwise(lows) if low in ("height", "distance") and after in _SIDES]
    from kb.reader.meaning.sited import sited  # noqa: PLC0415  few questions tell a place

    place = sited(found, roles, case, lookup)
    if place is not None or len(claims) > 1 or not (claims or heads):
        return place
    named = [_Named(p, found) for p in found.pieces if p.tag in ("item", "items")]
    words = [word for piece in found.pieces for word in _weighty(piece, found)]
    ends = any(pair in _ENDS for pair in pairwise(lows))
    if _SIDES.isdisjoint(lows) and not (words or ends if claims else heads[0] in _OPEN):
        return None
    if _SIDES.isdisjoint(lows) and not words and any(len(name.entries) > 1 for name in named):
        return None  # "how high is the cap" may be of any cap
    rules = [r for r in lookup.base.rules if _in_force(r, case) and _is_told(r, named, words, lookup)]
    meant = {(_narrowest(item, named, lookup), rule.aspect) for rule in rules for item in rule.scope.items}
    exact = {(item, aspect) for item, aspect in meant if any(item in name.entries for name in named)}
    meant = exact or meant
    sizes = {_HOW[low] for low in (lows if claims else heads[:1]) if _HOW.get(low)}
    if (len(meant) > 1 or claims) and len(sizes) == 1 and not sizes - lookup.aspects.keys():
        sized = lookup.aspects_within(*sizes)
        meant = {(item, aspect) for item, aspect in meant if aspect in sized}
    if len(meant) > 1 and len({(rule.clause, rule.aspect, rule.value) for rule in rules}) == 1:
        return Query(kind="source", clause=rules[0].clause, case=case)  # of several of a name alike
    if len(meant) != 1:
        return None
    ((item, aspect),) = meant
    if claims and not any(_same_way(rule, lows, lookup) for rule in rules):
        return Query(kind="source", clause=rules[0].clause, case=case)
    asked = Query(
        kind="where" if aspect == "position" else "how",
        items=(item,),
        aspect=aspect,
        case=said_case(case, roles, lookup),
    )
    measure = claims[0].measure if claims else None
    if measure is None:
        return asked
    if aspect == "position":
        return None  # what is said of a distance is judged, or it stops the question
    claimed = Query(
        kind="may", items=(item,), aspect=aspect, value=ranges([measure.interval]), case=asked.case
    )
    return as_written(claimed, measure.unit, lookup)


def _narrowest(item: str, named: Sequence[_Named], lookup: Lookup) -> str:
    """The item that is named, where the rule speaks of a class of it."""
    kinds = {
        e for name in named for e in name.entries if len(name.entries) == 1 and item in lookup.broader(e)
    }
    return kinds.pop() if len(kinds) == 1 else item


class _Named:
    """What a name may mean, and the keys of its words."""

    def __init__(self, piece: Piece, found: Understood) -> None:
        self.entries = frozenset(entry.id for entry in piece.entries)
        self.keys = {token.key for token in found.tokens[piece.first : piece.last]}


def stated(piece: Piece) -> bool:
    """Whether a piece is of no measure: a circumstance, what leads one in, whether it is allowed."""
    return piece.tag in _STATED


def _weighty(piece: Piece, found: Understood) -> Iterator[str]:
    if stated(piece) or piece.tag in ("item", "items", "measure"):
        return
    for token in found.tokens[piece.first : piece.last]:
        if not is_light(token.low) and token.low.isalpha():
            yield token.key


def is_light(low: str) -> bool:
    """Whether a word says no more than that something reaches somewhere, how far, or on which side."""
    return low in _LIGHT or low in _SIDES or low in _HOW or stands(low)


def _in_force(rule: Rule, case: Case) -> bool:
    return is_in_force(rule, case.as_of)


def _measures(rule: Rule) -> Iterator[Measure]:
    for measure in (rule.value.measure, *(position.offset for position in rule.value.positions)):
        if measure is not None and measure.datum is not None:
            yield measure


def _keys(*texts: str | None) -> set[str]:
    return {token.key for text in texts if text for token in tokenize(text)}


def _is_told(rule: Rule, named: list[_Named], words: list[str], lookup: Lookup) -> bool:
    """Whether the rule measures, and has everything that is named and all words of weight."""
    datums = {
        key for m in _measures(rule) if m.datum for key in _keys(m.datum.measured_from, m.datum.measured_to)
    }
    if not datums and not any(position.offset is not None for position in rule.value.positions):
        return False
    scope = set(rule.scope.items)
    wholes = {whole for item in scope if (whole := lookup.items[item].part_of)}
    places = {place for p in rule.value.positions for place in (p.on, p.feature) if place}
    own = {near for item in (*scope, *wholes) for near in (*lookup.broader(item), *lookup.narrower(item))}
    around = {near for place in places for near in lookup.broader(place)}
    parts = [_labels(item, lookup) for item in scope]
    if not named and len({*words}) > 1:
        return all(same_words(word) & datums for word in words)  # "the peak is 27 mm above the eyebrows"
    if not any(name.entries & own or any(_is_part(name, part) for part in parts) for name in named):
        return False
    said = datums | {key for item in (*scope, *wholes, *places) for key in _labels(item, lookup)}
    said |= {key for p in rule.value.positions for key in _keys(p.relation, p.slot, p.text, p.side)}
    said |= {key for way in _ways(rule, lookup) for key in _keys(way)}
    said.add("position")
    for name in named:
        labels = {key for entry in name.entries for key in _labels(entry, lookup)}
        labels |= {same for key in name.keys for same in same_words(key)}
        part = any(_is_part(name, part) for part in parts)
        if not (part or name.entries & (own | around) or labels & datums or _wears(rule, name, lookup)):
            return False
    return all(same_words(word) & said for word in words)


def _is_part(name: _Named, label: set[str]) -> bool:
    """Whether a name is of a part by what it is called elsewhere: the sleeve for its cuff."""
    return all(same_words(key) & label for key in name.keys)


def _ways(rule: Rule, lookup: Lookup) -> Iterator[str]:
    """The ways of wearing of which the rule's own clause speaks: "ends of equal length"."""
    for other in lookup.base.rules:
        if other.clause == rule.clause and set(other.scope.items) & set(rule.scope.items):
            aspect = lookup.aspects[other.aspect]
            if aspect.kind == "act" and aspect.within in ("fit", "fastening"):
                yield aspect.label


def _wears(rule: Rule, name: _Named, lookup: Lookup) -> bool:
    """ "The sleeves of the day shirt", of a rule on sleeves in a clause on that shirt."""
    part = all(
        "feature" in lookup.broader(item) and not lookup.items[item].part_of for item in rule.scope.items
    )
    said = _keys(lookup.clauses[rule.clause].text)
    return bool(part) and any(_keys(lookup.items[entry].label) <= said for entry in name.entries)


def same_words(word: str) -> set[str]:
    return {word, *map(word_key, _SAME.get(word, ()))}


def _labels(item: str, lookup: Lookup) -> set[str]:
    record = lookup.items[item]
    return _keys(record.label, *record.other_labels)


def _same_way(rule: Rule, lows: list[str], lookup: Lookup) -> bool:
    """Whether a claim "below" something is not of a rule that says "above" it, nor the other way round."""
    said = {token.low for token in tokenize(lookup.clauses[rule.clause].text)}
    for here, there in ((_ABOVE, _BELOW), (_BELOW, _ABOVE)):
        if not here.isdisjoint(lows) and here.isdisjoint(said) and not there.isdisjoint(said):
            return False
    return True
