"""Grades and other ordered values: "K5 and above", "below W1", "H1 to H3", "a five", "from K3 up", "K6+"."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import months_of
from kb.model.values import Choices
from kb.reader.forms import NUMBER_WORDS, word_set
from kb.reader.lexicon import Entry
from kb.reader.pieces import Piece
from kb.reader.tokens import Token
from kb.reader.values import LIGHT, Pieces, entry_values, fact_piece, named_fact


def number_of(word: Token) -> int:
    """The small number that a word is, 0 if none: "five", "5", "fives", "5s"."""
    return NUMBER_WORDS.get(word.key, int(word.key) if word.key.isdecimal() and len(word.key) < 3 else 0)


def codes_ending_in(number: int, lookup: Lookup) -> tuple[str, ...]:
    """The codes of grades that are one letter or more and this number."""
    grades = [value.id for fact in lookup.base.facts if fact.family == "grade" for value in fact.values]
    return tuple(code for code in grades if code.lstrip(_LETTERS) == str(number))


_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ-"
_IN_RUN = frozenset({"to", "range", "or", "and", "comma", "but", "between", "det"})
_ONE_OF = word_set("a an any every each another all no")
_COUNTERS = word_set("number numbers num nr")
_NOUNS = frozenset({"unknown", "measure"})
_EXCEPTING = word_set("bar barring minus less excepting save sans without not")
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
        elif len(places) > 1 and (piece.tag == "but" or tokens[piece.first].low in _EXCEPTING):
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
        one = tokens[after.last - 1].low == tokens[after.last - 1].key
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
    if after >= len(found) or piece.last - piece.first > 1 or tokens[piece.first].low not in _EXCEPTING:
        return False
    return bool(_code(found[after], grade) or number_of(tokens[found[after].first]))


def is_exception(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "K3 to K6 bar K5", "every rig minus the boat rig": a word that takes out a value."""
    piece, before, after = found[index], index - 1, index + 1
    word = tokens[piece.first].low
    if piece.last - piece.first > 1 or word not in _EXCEPTING or not 0 < index < len(found) - 1:
        return False
    while before > 0 and found[before].tag == "comma":
        before -= 1
    while after < len(found) - 1 and found[after].tag in LIGHT:
        after += 1
    out = found[after]
    if out.tag != "fact" or not isinstance(out.values, Choices):
        return False
    base = found[before]
    if base.tag != "fact":
        people = base.tag in ("person", "det") and lookup.facts[out.fact].family == "grade"
        return word != "not" and (people or named_fact(base) == out.fact)
    within = isinstance(base.values, Choices) and base.fact == out.fact
    return within and out.values.members < getattr(base.values, "members", frozenset())


def _ordered(piece: Piece, lookup: Lookup) -> tuple[str, ...]:
    """The order of a finite scale, empty for other facts."""
    if piece.tag != "fact" or not isinstance(piece.values, Choices):
        return ()
    fact = lookup.facts[piece.fact]
    return lookup.order(piece.fact) if fact.kind == "scale" and fact.family != "authorisation" else ()


def _months(piece: Piece, lookup: Lookup) -> tuple[str, ...]:
    """January to December where a fact is the month, which goes on after the end with the beginning."""
    single = piece.tag == "fact" and isinstance(piece.values, Choices) and len(piece.values.members) == 1
    return months_of(lookup.facts[piece.fact]) if single else ()


def compare_values(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "K5 and above", "below W1", "at least K2", "H1 to H3", "from K3 to K5", "November to March"."""
    found = list(pieces)
    index = 0
    while index < len(found):
        order = _ordered(found[index], lookup)
        months = () if order else _months(found[index], lookup)
        if order or months:
            _compare_at(found, index, order or months, tokens, in_a_circle=bool(months))
        index += 1
    return _graded(found, tokens, lookup)


_GRADED = word_set("graded ranked ranking rank ranks rated level levels")


def _graded(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "Anyone graded K3 up", "K3 to K5 inclusive": words that go with grades, as part of what they say."""
    for index, piece in enumerate(found):
        if piece.tag != "fact" or lookup.facts[piece.fact].family != "grade":
            continue
        before, after = found[max(index - 1, 0)], found[min(index + 1, len(found) - 1)]
        led = before.tag == "unknown" and tokens[before.first].low in _GRADED
        ends = after.tag == "unknown" and tokens[after.first].low == "inclusive"
        first, last = before.first if led else piece.first, after.last if ends else piece.last
        found[index] = msgspec.structs.replace(piece, first=first, last=last)
    taken = [(p.first, p.last) for p in found if p.tag == "fact"]
    return tuple(p for p in found if p.tag == "fact" or all(not a <= p.first < b for a, b in taken))


def _span(order: Sequence[str], keep: Callable[[int], bool]) -> Choices:
    return Choices(frozenset(value for rank, value in enumerate(order) if keep(rank)))


def _compare_at(
    found: list[Piece], index: int, order: tuple[str, ...], tokens: tuple[Token, ...], in_a_circle: bool
) -> None:
    piece = found[index]
    ranks = _ranks(piece, order)
    before = index - 1
    while before >= 0 and found[before].tag in LIGHT:
        before -= 1
    opening = found[before].tag if before >= 0 else ""
    if opening == "with" and tokens[found[before].first].low in ("under", "over"):
        opening = "below" if tokens[found[before].first].low == "under" else "above"
    after = found[index + 1].tag if index + 1 < len(found) else ""
    led = opening == "between" and tokens[found[before].first].low == "from"
    open_end = _open_end(found, index, tokens, led)
    rules: dict[str, Callable[[int], bool]] = {
        "above": lambda rank: rank > max(ranks), "below": lambda rank: rank < min(ranks),
        "at least": lambda rank: rank >= min(ranks), "at most": lambda rank: rank <= max(ranks),
    }  # fmt: skip
    if in_a_circle and (opening in rules or after in ("upward", "downward") or open_end is not None):
        return
    up_to = _up_to(found, before, tokens, piece.fact)
    if up_to is not None:
        opening, before = up_to
    if open_end is not None:
        bound, last = open_end
        start = before if led else index
        span = _span(order, rules[bound])
        found[start : last + 1] = [fact_piece(piece, piece.fact, span, found[start].first, found[last].last)]
        return
    if opening in rules:
        found[before : index + 1] = [
            fact_piece(piece, piece.fact, _span(order, rules[opening]), found[before].first, piece.last)
        ]
    elif after in ("upward", "downward"):
        rule = rules["at least" if after == "upward" else "at most"]
        found[index : index + 2] = [
            fact_piece(piece, piece.fact, _span(order, rule), piece.first, found[index + 1].last)
        ]
    elif after in ("to", "range") or (after == "and" and opening == "between"):
        other = index + 2
        while other < len(found) and found[other].tag in LIGHT:
            other += 1
        if other < len(found) and found[other].tag == "fact" and found[other].fact == piece.fact:
            high = _ranks(found[other], order)
            start = before if opening == "between" else index
            low, top = min(ranks), max(high)
            round_the_end = in_a_circle and low > top
            span = _span(
                order, lambda rank: (rank >= low or rank <= top) if round_the_end else low <= rank <= top
            )
            if span.members:
                found[start : other + 1] = [
                    fact_piece(piece, piece.fact, span, found[start].first, found[other].last)
                ]


_UP = word_set("up upwards upward onwards onward")
_DOWN = word_set("down downwards downward")
_STARTS = frozenset({"in", "on", "for", "to", "with", "det", "poss"})


def _open_end(
    found: Sequence[Piece], index: int, tokens: tuple[Token, ...], led: bool
) -> tuple[str, int] | None:
    """ "K6+", "from K3 up", "K3 down": the bound that a value is, and the piece with which that ends.

    `led` is whether "from" stands before it. "On" ends it so only before no thing and no place.
    """
    last = index + 1
    if last >= len(found):
        return None
    word, end = tokens[found[last].first].low, tokens[found[index].last - 1].end
    single = found[last].last - found[last].first == 1
    following = found[last + 1] if last + 1 < len(found) else None
    if word == "+" and single and tokens[found[last].first].start == end:
        joins = following is not None and following.fact == found[index].fact  # "H3+K4"
        return None if joins else ("at least", last)
    if led and word == "on" and following is not None and tokens[following.first].low in _UP:
        word, last = "up", last + 1
        following = found[last + 1] if last + 1 < len(found) else None
    ends = following is None or following.tag in _ENDS
    if not single or not (word in _UP or word in _DOWN or (word == "on" and led and ends)):
        return None
    if not led and following is not None and following.tag in _STARTS:
        return None
    return "at most" if word in _DOWN else "at least", last


_ENDS = frozenset(
    {"comma", "may", "can", "must", "should", "be", "do", "have to", "act", "allowed", "banned"}
)


_UP_TO = {
    ("up", "to"): "at most",
    ("up", "to", "and", "including"): "at most",
    ("up", "to", "but", "not", "including"): "below",
    ("up", "to", "but", "excluding"): "below",
}


def _up_to(
    found: Sequence[Piece], before: int, tokens: tuple[Token, ...], fact: str
) -> tuple[str, int] | None:
    """ "Up to K5", with no value before it from which it would range: the bound, and where it begins."""
    last = found[before].last if before >= 0 else 0
    for words, bound in _UP_TO.items():
        first = last - len(words)
        if first < 0 or tuple(token.low for token in tokens[first:last]) != words:
            continue
        start = next((at for at, piece in enumerate(found[: before + 1]) if piece.first == first), -1)
        ranges = start > 0 and found[start - 1].fact == fact
        return (bound, start) if start >= 0 and not ranges else None
    return None


def _ranks(piece: Piece, order: Sequence[str]) -> list[int]:
    members = piece.values.members if isinstance(piece.values, Choices) else frozenset()
    return [rank for rank, value in enumerate(order) if value in members] or [0]
