"""The clause that a question speaks of by its own words: "when is everyone inspected", "who pays for it".

Only for questions that no rule answers. Every word of weight must stand in the clause, as it is or in a word
of the same sense, the clause must tell what is asked for (somebody, a time, a reason), and no other may be as
near.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from itertools import pairwise, takewhile

import msgspec

from kb.keywords import analyse, lemma
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Clause, is_in_force
from kb.model.values import Choices, intersect, is_empty
from kb.reader.meaning.listed import asks_which_thing
from kb.reader.names.spelling import akin
from kb.reader.pieces.doings import is_doing
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.recast.of_rigs import TURNS, asks_time, is_of_rig, told_times, which_rig
from kb.reader.recast.telling import (
    ASKING,
    LIGHT,
    Unit,
    analysed,
    asked_for,
    british,
    can_tell,
    clause_words,
    is_ruled,
    tells,
    word_level,
)
from kb.reader.words.forms import word_set
from kb.reader.words.same_sense import phrase_at
from kb.text import Pattern

_POINTING = word_set("it them thing one ones")
_KIT = word_set("kit uniform equipment")
_TELLS = Pattern(r"(?i)(?:but |and |so )?(?:my|our|his|her|their) [^?]*(?:n['\u2019]t|\bnot|\bnever)\b[^?]*$")
_ELSEWHERE = Pattern(r"(?i)\bnot (?:at|in|on|near|from|aboard) \w|\b(?:anywhere|everywhere) (?:but|else)\b")


def clause_by_words(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The one clause in force that has all words of weight; None where there is none or there are several."""
    if (opening := _opening(found))[1:2] == ["about"] or asks_which_thing(found):
        return None
    if ASKING.isdisjoint(opening) and sum(p.tag in _MEASURED for p in found.pieces) == 1:
        return None  # it is judged, or nothing is said
    if ASKING.isdisjoint(opening) and _ELSEWHERE.search(found.text) is not None:
        return None  # "not at the station, must I?": no clause on the station tells it
    if ASKING.isdisjoint(opening) and _TELLS.match(found.text) is not None:
        return None  # "my boots haven't come" asks nothing that a clause with those words tells
    units = tuple(_units(found, lookup))
    if not any(unit.piece for unit in units) and any(token.low in _POINTING for token in found.tokens):
        return None
    looks = any(piece.tag in ("aspect", "dimension") for piece in found.pieces[:3])
    if looks and not asked_for(opening) and len(units) < _MANY and not any(unit.items for unit in units):
        return None  # "what colour is the boat": no thing that is worn
    said = any(word.isalpha() for unit in units for word in unit.lemmas)
    if not said or (len(units) == 1 and len(found.tokens) <= _MANY):  # "who grants a"
        return None
    asked, core = asked_for(opening), [u for u in units if not _WEAK.issuperset(u.lemmas)] or units
    clauses = [
        clause
        for clause in lookup.base.clauses
        if is_in_force(clause, case.as_of) and (len(core) > 1 or _is_headed(core[0], clause, found))
        if can_tell(found.text, clause, lookup)
    ]
    near = every = list(_near(units, clauses, asked, lookup))
    bare = len(units) > 1 and all(unit.piece is not None and unit.piece.tag in _NAMES for unit in units)
    weak = all(
        (unit.piece is not None and unit.piece.tag in _NAMES) or _WEAK.issuperset(unit.lemmas)
        for unit in units
    )
    if weak and asked != "who" and not ASKING.isdisjoint(opening):  # "what goes over the jersey in boat rig"
        near = [one for one in near if lookup.clauses[one.clause].kind != "rule"]
    if asked == "who" and any(
        token.low in ("count", "counts", "counted", "qualifies") for token in found.tokens
    ):
        near = [one for one in near if lookup.clauses[one.clause].kind in ("definition", "information")]
    if telling := told_times(found):
        told = [one for one in every if telling.search(lookup.clauses[one.clause].text)]
        near = told or ([] if asks_time(found) else near)
    elif rig := which_rig(found, lookup):
        near = [one for one in near if is_of_rig(lookup.clauses[one.clause], rig)]
    if counted := _counted(found):  # "how many bars" is told by a clause on them, not by one on a "one-bar"
        near = [one for one in near if is_ruled(counted, lookup.clauses[one.clause], lookup)]
    if ASKING.isdisjoint(opening):  # "may rigs be mixed?": the one clause in which all of it stands
        enough = len(units) >= _MANY or (len(units) == _MANY - 1 and any(unit.piece for unit in units))
        near = [one for one in near if one.plain and (one.rare or len(units) >= _MANY)] if enough else []
        near = [one for one in near if bare or _says_itself(units, lookup.clauses[one.clause])]
        near = [one for one in near if _has_measure(found, lookup.clauses[one.clause])]
        return Query(kind="source", clause=near[0].clause, case=case) if len(near) == 1 else None
    near = [one for one in near if asked or one.plain or lookup.clauses[one.clause].kind != "rule"]
    chosen = _nearest([one for one in near if one.plain]) or (
        _clearest(near) if not any(one.plain for one in near) else None
    )
    return Query(kind="source", clause=chosen, case=case) if chosen is not None else None


def _has_measure(found: Understood, clause: Clause) -> bool:
    """Whether a clause can judge the measures that are told, if any: it has one, or says what one is."""
    measures = [
        found.text[found.tokens[p.first].start : found.tokens[p.last - 1].end]
        for p in found.pieces
        if p.tag == "measure"
    ]
    return not measures or clause.kind == "definition" or any(said in clause.text for said in measures)


def clause_of_carrying(
    reading: Reading, found: Understood, case: Case, lookup: Lookup
) -> tuple[Query, Query] | None:
    """ "If I take the cap off, where do I put it?": the one clause by which it is carried, where it says how.

    Of a thing of which no rule says the place. "Which arm", "which hand" ask it, too. The second query is
    what further words go on from.
    """
    if not _CARRYING.search(found.text.casefold()):
        return None
    if any(token.low.isdigit() for token in found.tokens):
        return None  # of another day
    case = reading.query.case if reading.query is not None else case
    named = {entry.id for piece in found.pieces if piece.tag in ("item", "items") for entry in piece.entries}
    items = {item for one in named for item in (one, *lookup.narrower(one)) if item in lookup.items}
    rules = lookup.rules_on(items)
    if any(rule.aspect == "position" for rule in rules if rule.modality == "must"):
        return None
    clauses = {
        rule.clause
        for rule in rules
        if rule.aspect == "carrying"
        and rule.modality == "must"
        and is_in_force(lookup.clauses[rule.clause], case.as_of)
    }
    names = [analyse(lookup.items[item].label)[-1:] for item in items]
    told = [
        one
        for one in clauses
        for sentence in lookup.clauses[one].text.casefold().split(". ")
        if _BY_THE_BODY.search(sentence) and any(set(name) <= set(analyse(sentence)) for name in names)
    ]
    if len(clauses) != 1 or len(told) != 1:
        return None
    carried = next(i for rule in rules if rule.clause == told[0] for i in rule.scope.items if i in items)
    return (
        Query(kind="source", clause=told[0], case=case),
        Query(kind="must", items=(carried,), aspect="carrying", case=case),
    )


_CARRYING = Pattern(
    r"\b(?:which|what) (?:hand|arm|side)(?: or (?:hand|arm|side))?\b.*\b(?:carr(?:y|ied)|hold|held|put)\b"
    r"|\bhow (?:do|does|is|are|must|should)\b.*\bcarr(?:y|ied)\b"
    r"|\b(?:take|took|taken)\b.*\boff\b.*\bwhere (?:do|does|should|must) \w+ (?:put|keep|carry|hold|stow)\b"
)
_BY_THE_BODY = Pattern(
    r"\b(?:in|under|over|on|across|from) (?:the |his |her |a |one )?(?:left |right |free |other |upper )*"
    r"(?:arm|hand|shoulder|pocket|back|belt|side)\b"
)


_MANY, _MEASURED = 3, ("measure", "number")
_NAMES = frozenset({"item", "items", "fact"})
_WEAK = word_set("end start begin stop old new young time last first next change")


def _counted(found: Understood) -> tuple[str, ...]:
    """What the thing right after "how many" may be."""
    for before, piece in pairwise(found.pieces):
        if before.tag == "how many" and piece.tag in ("item", "items"):
            return tuple(entry.id for entry in piece.entries if entry.kind == "item")
    return ()


def _says_itself(units: Sequence[Unit], clause: Clause) -> bool:
    """Whether a word of weight stands in the text of a clause, and not in its heading or part alone."""
    said = analysed(clause.text)
    words = (word for unit in units if unit.piece is None or unit.items for word in unit.lemmas)
    return any(_is_said(word, said) for word in words)


def _opening(found: Understood) -> list[str]:
    """The first words of the sentence that asks, if one has a question word there, else of the text."""
    lows = [token.low for token in found.tokens]
    starts = [0, *(i + 1 for i, low in enumerate(lows) if low in (".", ";", ":", "?", "!", ","))]
    for start in reversed(starts):
        if not ASKING.isdisjoint(lows[start : start + 3]):
            return lows[start : start + 6]
    return lows[:6]


class _Near(msgspec.Struct, frozen=True):
    """A clause that has all words: how rare they are, how close together, whether as they are
    (`plain`), and whether one of them stands in hardly another clause (`rare`)."""

    clause: str
    score: float
    plain: bool
    rare: bool
    order: tuple[bool, int, int]


def _nearest(near: Sequence[_Near]) -> str | None:
    """Of clauses with the very words, the one that is headed by them, or has them in form or together."""
    ranked = sorted(near, key=lambda one: one.order, reverse=True)
    if not ranked or (len(ranked) > 1 and ranked[0].order == ranked[1].order):
        return None
    return ranked[0].clause


def _clearest(near: Sequence[_Near]) -> str | None:
    """Of clauses with words of the same sense, the one that is clearly nearer than every other."""
    ranked = sorted(near, key=lambda one: one.score, reverse=True)
    if not ranked or (len(ranked) > 1 and ranked[0].score < ranked[1].score * _CLEARLY):
        return None
    return ranked[0].clause


_CLEARLY = 1.15


def _units(found: Understood, lookup: Lookup) -> Iterator[Unit]:
    tokens, index = found.tokens, 0
    named = {
        place: piece for piece in found.pieces if _is_name(piece) for place in range(piece.first, piece.last)
    }
    light = LIGHT | TURNS if asks_time(found) else LIGHT
    taken, own = set[int](), {word.casefold() for word in lookup.base.service.label.split()}
    while index < len(tokens):
        phrase = phrase_at(tokens, index) if index not in taken else None
        if phrase is not None:
            taken.update(phrase[1])
            yield Unit(analyse(phrase[0]))
        elif index in taken:
            pass
        elif (piece := named.get(index)) is not None:
            unit = _named_unit(piece, found, lookup)
            taken.update(range(piece.first, piece.last))
            if unit is not None:
                yield unit
        elif tokens[index].low not in light | own:
            lemmas = analyse(british(tokens[index].low))
            if lemmas:
                yield Unit(lemmas)
        index += 1


def _is_name(piece: Piece) -> bool:
    return piece.tag in ("item", "items", "fact", "fact name", "authority", "book")


def _named_unit(piece: Piece, found: Understood, lookup: Lookup) -> Unit | None:
    """A thing, a fact or an authority; None for a book as a whole and for people in general."""
    lows = [british(token.low) for token in found.tokens[piece.first : piece.last]]
    lemmas = tuple(word for low in lows for word in analyse(low))
    if LIGHT.issuperset(lows) or not lemmas:
        return None
    entries = [entry.id for entry in piece.entries if entry.id in lookup.items]
    labels = [
        name for item in entries for name in (lookup.items[item].label, *lookup.items[item].other_labels)
    ]
    return Unit(lemmas, tuple(analyse(label) for label in labels), tuple(entries), piece)


def _near(units: Sequence[Unit], clauses: Sequence[Clause], asked: str, lookup: Lookup) -> Iterator[_Near]:
    """The clauses that have all words and tell what is asked for."""
    said = {clause.id: clause_words(clause) for clause in clauses}
    often: dict[str, int] = {}
    for words in said.values():
        for word in set(words):
            often[word] = often.get(word, 0) + 1
    for clause in clauses:
        words = said[clause.id]
        levels = list(takewhile(bool, (_level(unit, words, clause, asked, lookup) for unit in units)))
        if len(levels) < len(units) or not tells(clause, asked, lookup):
            continue
        rare = [
            math.log((len(clauses) + 1) / min(often.get(word, 1) for word in unit.lemmas)) for unit in units
        ]
        heading = analyse(clause.heading or "")
        titled = any(_is_said(word, heading) for unit in units for word in unit.lemmas)
        score = sum(level * weight for level, weight in zip(levels, rare, strict=True))
        text = analysed(clause.text)
        all_words = [word for unit in units for word in unit.lemmas]
        exact = sum(word in text for word in all_words)
        yield _Near(
            clause=clause.id,
            score=score * (1.2 if titled else 1) * (1.1 if clause.kind != "rule" else 1),
            plain=min(levels) >= _PLAIN,
            rare=any(unit.piece is None and often.get(unit.lemmas[0], 0) <= _RARE for unit in units),
            order=(titled, exact, -_stretch(text, all_words)),
        )


_PLAIN = 0.9
_RARE = 2


def _is_said(word: str, said: tuple[str, ...]) -> bool:
    return any(word == other or akin(word, other) for other in said)


def _stretch(said: tuple[str, ...], words: Sequence[str]) -> int:
    """How far the words asked for lie apart in a text, where they are nearest."""
    best = len(said)
    for start in range(len(said)):
        missing = set(words)
        for end in range(start, min(start + best, len(said))):
            missing -= {word for word in missing if word == said[end] or akin(word, said[end])}
            if not missing:
                best = min(best, end - start)
                break
    return best


def _level(unit: Unit, words: tuple[str, ...], clause: Clause, asked: str, lookup: Lookup) -> float:
    """How surely a clause has a word: 1 as it is, less in another form or in one of its sense, 0 if not."""
    if unit.piece is not None and unit.piece.tag == "book":
        words = (*words, *analysed(lookup.editions[clause.edition].label))
    if unit.piece is not None and not _may_be_of(unit, unit.piece, clause, lookup):
        return 0.0
    levels = [word_level(word, words) for word in unit.lemmas]
    best = min(levels)
    if best < 1 and unit.names:
        text = f" {' '.join(words)} "
        if any(name and f" {' '.join(name)} " in text for name in unit.names):
            best = 1.0
    if best < 0.9 and unit.items and is_ruled(unit.items, clause, lookup):
        best = 0.9
    if (
        best < 0.4
        and asked in ("who", "time")
        and _is_kit(unit.items, lookup)
        and not _KIT.isdisjoint(analysed(clause.text))
    ):
        best = 0.4
    if not best and unit.piece is not None and unit.piece.tag == "fact name":
        best = 0.9 if _names_a_value(unit.piece.arg, analysed(clause.text), lookup) else 0.0
    if best < 0.9 and unit.piece is not None and unit.piece.fact and _tested(unit.piece, clause, lookup):
        best = 0.9
    return best


def _may_be_of(unit: Unit, piece: Piece, clause: Clause, lookup: Lookup) -> bool:
    """Whether a clause may speak of a value that no word of weight tells from its fellows: "Order E".

    Then it has to name that one, or to test for it.
    """
    if not piece.fact or piece.values is None or lookup.facts[piece.fact].family != "rig":
        return True
    values = lookup.facts[piece.fact].values
    fellows = [value for value in values if {*analyse(value.label)} == {*unit.lemmas}]
    named = [
        v.label.casefold()
        for v in fellows
        if isinstance(piece.values, Choices) and v.id in piece.values.members
    ]
    if len(fellows) < 2 or not named or _tested(piece, clause, lookup):
        return True
    return any(re.search(rf"\b{re.escape(name)}\b", clause.text.casefold()) for name in named)


def _names_a_value(fact: str, words: Sequence[str], lookup: Lookup) -> bool:
    """Whether a clause names one of the values of a fact: "which rig" is told by "cadet dress is worn"."""
    text = f" {' '.join(words)} "
    record = lookup.facts.get(fact)
    return record is not None and any(
        f" {' '.join(analysed(value.label))} " in text for value in record.values
    )


def _is_kit(items: Sequence[str], lookup: Lookup) -> bool:
    return bool(items) and all("grooming" not in lookup.broader(item) for item in items)


def _tested(piece: Piece, clause: Clause, lookup: Lookup) -> bool:
    return piece.values is not None and any(
        test.fact == piece.fact and not is_empty(intersect(test.values, piece.values))
        for rule in lookup.rules_of(clause.id)
        for test in tests(rule.condition)
    )


def _is_headed(unit: Unit, clause: Clause, found: Understood) -> bool:
    """Whether one word is enough: a doing that the clause speaks of, or what it is headed."""
    doings = [t.low for t in found.tokens if t.low.endswith(("ed", "ing")) and lemma(t.low) in unit.lemmas]
    if doings and not unit.items:
        return doings[0] in clause.text.casefold()
    if not unit.items and is_doing(unit.lemmas, clause.text, found.tokens):
        return True
    return clause.kind != "rule" and not set(unit.lemmas).isdisjoint(analyse(clause.heading or ""))
