"""Grades by their numbers: "a five", "3 to 6 but not 5", "number five keeper", "keepers below a 4"."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.lookup import Lookup
from kb.model.values import Choices
from kb.reader.names.lexicon import Entry
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.scales import EXCEPTING, number_of
from kb.reader.pieces.values import LIGHT, Pieces, entry_values, fact_piece, named_fact
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token


def codes_ending_in(number: int, lookup: Lookup) -> tuple[str, ...]:
    """The codes of grades that are one letter or more and this number."""
    grades = [value.id for fact in lookup.base.facts if fact.family == "grade" for value in fact.values]
    return tuple(code for code in grades if code.lstrip(_LETTERS) == str(number))


_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ-"
_IN_RUN = frozenset({"to", "range", "or", "and", "comma", "but", "between", "det"})
_ONE_OF = word_set("a an any every each another all no")
_COUNTERS = word_set("number numbers num nr")
_NOUNS = frozenset({"unknown", "measure"})
_BESIDE_LADDER = frozenset({"below", "above", "at least", "at most", "det", "of", "range", "to", "between"})
_SPANS = frozenset({"to", "range", "but"})
_MOST_CHOICES = 4


def numbered_grades(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "A five", "3 to 6 but not 5", "number five keeper": numbers that only one ladder has, or that follow
    a grade of it or stand beside its name."""
    grade = next((fact for fact in lookup.base.facts if fact.family == "grade"), None)
    if grade is None:
        return pieces
    found = list(pieces)
    index = 0
    while index < len(found):
        run = _run(found, index, tokens, grade.id)
        numbers = [place for place in run if not _code(found[place], grade.id)]
        shared = _ladders(found, run, tokens, grade.id, lookup) if numbers else set()
        ladder = shared.pop() if len(shared) == 1 else None
        for place in numbers if ladder is not None else ():
            code = f"{ladder}{number_of(tokens[found[place].first])}"
            piece = found[place]
            counter = place - 1 if place == run[0] and _is_counter(found, place - 1, tokens) else place
            first = found[counter].first
            grades = Choices(frozenset({code}))
            found[counter] = found[place] = fact_piece(piece, grade.id, grades, first, piece.last)
        index = run[-1] + 1 if run else index + 1
    return tuple(piece for at, piece in enumerate(found) if not at or piece is not found[at - 1])


def unclear_grades(
    pieces: Sequence[Piece], tokens: tuple[Token, ...], lookup: Lookup
) -> tuple[tuple[Token, ...], tuple[str, ...]]:
    """The numbers that stand for grades of several ladders, and the letters of those; empty without any."""
    grade = next((fact.id for fact in lookup.base.facts if fact.family == "grade"), "")
    for index in range(len(pieces) if grade and any(p.tag in _NUMERALS for p in pieces) else 0):
        run = _run(pieces, index, tokens, grade)
        numbers = [tokens[pieces[place].first] for place in run if not _code(pieces[place], grade)]
        ladders = _ladders(pieces, run, tokens, grade, lookup) if numbers else set()
        if 2 <= len(ladders) <= _MOST_CHOICES:
            order = lookup.order(grade)
            return tuple(numbers), tuple(sorted(ladders, key=lambda ladder: _first_of(ladder, order)))
    return (), ()


_NUMERALS = frozenset({"unknown", "number"})


def _first_of(ladder: str, order: Sequence[str]) -> int:
    return min(rank for rank, code in enumerate(order) if code.rstrip("0123456789") == ladder)


def _run(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], grade: str) -> list[int]:
    """Places of numbers and grades that words such as "to" and "or" join, from one on; empty if none is said
    to be a grade."""
    places: list[int] = []
    named = index > 0 and _says_grade(found, index, tokens, grade)
    led = named or (index > 0 and tokens[found[index - 1].last - 1].low in _ONE_OF)
    while index < len(found):
        piece = found[index]
        if _code(piece, grade):
            places, led = [*places, index], True
        elif number_of(tokens[piece.first]) and (named or not tokens[piece.first].low.startswith("one")):
            if piece.tag not in (*_NUMERALS, "person"):
                break
            owned = tokens[piece.first].low.endswith(("'s", "s"))
            led, named = led or tokens[piece.first].low != tokens[piece.first].key, named or owned
            places.append(index)
        elif not places or not (piece.tag in _IN_RUN or _leaves_out(found, index, tokens, grade)):
            break
        elif len(places) > 1 and (piece.tag == "but" or tokens[piece.first].low in EXCEPTING):
            led = named = True  # "3 to 6 but not 5"
        index += 1
    if not places:
        return []
    ladder = _beside_ladder(found, places, tokens, grade)
    led = led or ladder is not None
    named = named or (ladder is not None and tokens[found[places[0]].first - 1].low in _ONE_OF)
    counts = not named and places[-1] + 1 < len(found) and _is_counted(found[places[-1] + 1])
    return places if led and not counts else []


def _says_grade(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], grade: str) -> bool:
    """Whether "grade" or "number" stands before a number: "grade 5", "keeper number five"."""
    before = index - 1
    if _is_counter(found, before, tokens):
        around = (found[before - 1] if before else None, found[index + 1] if index + 1 < len(found) else None)
        return any(piece is not None and _of_grades(piece, grade) for piece in around)
    return _names_fact(found[before], grade)


def _is_counter(found: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "Number five"."""
    return (
        index >= 0
        and found[index].last - found[index].first == 1
        and (tokens[found[index].first].low in _COUNTERS)
    )


def _of_grades(piece: Piece, grade: str) -> bool:
    return _ladder_named(piece, grade) or _names_fact(piece, grade)


def _names_fact(piece: Piece, fact: str) -> bool:
    return named_fact(piece) == fact or (piece.tag == "fact name" and piece.arg == fact)


def _is_counted(piece: Piece) -> bool:
    return piece.tag in _NOUNS or any(entry.kind == "item" for entry in piece.entries)


def _code(piece: Piece, grade: str) -> str:
    """The one grade that a name is, "" for anything else."""
    codes = [entry.id for entry in piece.entries if entry.kind == "value" and entry.owner == grade]
    return codes[0] if len(codes) == len(piece.entries) == 1 else ""


def _ladder_named(piece: Piece, grade: str) -> bool:
    """Whether a name is that of a ladder, "keepers", or of a group of grades."""
    entries = [entry for entry in piece.entries if entry.owner == grade]
    return bool(entries) and any(entry.kind == "group" for entry in entries)


def _beside_ladder(
    found: Sequence[Piece], places: Sequence[int], tokens: tuple[Token, ...], grade: str
) -> Piece | None:
    """ "A 4 keeper", "keepers below a 4", "keeper number five": the ladder's name beside the numbers.

    "4 keepers" are as many as that; "2 to 4 keepers" are grades.
    """
    after = found[places[-1] + 1] if places[-1] + 1 < len(found) else None
    if after is not None and _ladder_named(after, grade):
        noun = tokens[after.last - 1]
        one = noun.low in (noun.key, f"{noun.key}'s")
        return after if one or any(p.tag in _SPANS for p in found[places[0] : places[-1]]) else None
    before = places[0] - 1
    while before >= 0 and (
        found[before].tag in _BESIDE_LADDER
        or _names_fact(found[before], grade)
        or _is_counter(found, before, tokens)
    ):
        before -= 1
    return found[before] if before >= 0 and _ladder_named(found[before], grade) else None


def _ladders(
    found: Sequence[Piece], run: Sequence[int], tokens: tuple[Token, ...], grade: str, lookup: Lookup
) -> set[str]:
    """The letters before the number that all grades of a run can share."""
    shared: set[str] | None = None
    for place in run:
        code = _code(found[place], grade)
        codes = [code] if code else codes_ending_in(number_of(tokens[found[place].first]), lookup)
        letters = {code.rstrip("0123456789") for code in codes}
        shared = letters if shared is None else shared & letters
    named = _beside_ladder(found, run, tokens, grade) if run else None
    if shared and named is not None:
        members = {code for entry in named.entries for code in _members(entry, lookup)}
        shared &= {code.rstrip("0123456789") for code in members}
    return shared or set()


def _members(entry: Entry, lookup: Lookup) -> frozenset[str]:
    return entry_values(entry, lookup).members if entry.kind in ("value", "group") else frozenset()


def _leaves_out(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], grade: str) -> bool:
    """Whether a word such as "bar" stands before a grade: "3 to 6 bar 5"."""
    piece, after = found[index], index + 1
    while after < len(found) and found[after].tag in LIGHT:
        after += 1
    if after >= len(found) or piece.last - piece.first > 1 or tokens[piece.first].low not in EXCEPTING:
        return False
    return bool(_code(found[after], grade) or number_of(tokens[found[after].first]))
