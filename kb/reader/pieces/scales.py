"""Grades and other ordered values: "K5 and above", "below W1", "H1 to H3", "from K3 up", "K6+"."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import months_of
from kb.model.values import Choices
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import LIGHT, Pieces, fact_piece, named_fact
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.tokens import Token

EXCEPTING = word_set("bar barring minus less excepting save sans without not")


def number_of(word: Token) -> int:
    """The small number that a word is, 0 if none: "five", "5", "fives", "5s"."""
    return NUMBER_WORDS.get(word.key, int(word.key) if word.key.isdecimal() and len(word.key) < 3 else 0)


def by_number(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "A five", "number five keeper", "3 to 6 but not 5" as grades."""
    if not any(map(number_of, tokens)):
        return pieces
    from kb.reader.pieces.ladders import numbered_grades  # noqa: PLC0415  few questions have numbers

    return numbered_grades(pieces, tokens, lookup)


def is_exception(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "K3 to K6 bar K5", "every rig minus the boat rig": a word that takes out a value."""
    piece, before, after = found[index], index - 1, index + 1
    word = tokens[piece.first].low
    if piece.last - piece.first > 1 or word not in EXCEPTING or not 0 < index < len(found) - 1:
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


def base_of(piece: Piece, fact: str, lookup: Lookup) -> Choices | None:
    """What an exception is taken from: values of the same fact, its name, or "everyone"."""
    if piece.tag == "fact":
        return piece.values if piece.fact == fact and isinstance(piece.values, Choices) else None
    whole = named_fact(piece) == fact or (
        piece.tag in ("person", "det") and lookup.facts[fact].family == "grade"
    )
    domain = lookup.domain(fact)
    return domain if whole and isinstance(domain, Choices) else None


def is_one_grade(piece: Piece, lookup: Lookup) -> bool:
    """Grades in a row are written with what is no word between them: "K4/K5"."""
    one = isinstance(piece.values, Choices) and len(piece.values.members) == 1
    return one and lookup.facts[piece.fact].family == "grade"


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
    _leave_out(found, tokens, lookup)
    taken = [(p.first, p.last) for p in found if p.tag == "fact"]
    return tuple(p for p in found if p.tag == "fact" or all(not a <= p.first < b for a, b in taken))


_LEFT_OUT = (("left", "out"), ("excepted",), ("excluded",), ("aside",), ("apart",), ("exempted",))


def _leave_out(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "K4 to K7, K6 left out": take the grade before such words from those named before it, in `found`."""
    for index in range(2, len(found) - 1):
        whole, out = found[index - 2], found[index]
        words = tuple(token.low for token in tokens[out.last : out.last + 2])
        said = next((left for left in _LEFT_OUT if words[: len(left)] == left), ())
        if not said or whole.fact != out.fact or out.tag != "fact" or found[index - 1].tag != "comma":
            continue
        if lookup.facts[out.fact].family != "grade":
            continue
        if isinstance(whole.values, Choices) and isinstance(out.values, Choices):
            rest, last = Choices(whole.values.members - out.values.members), out.last + len(said)
            if rest.members and out.values.members <= whole.values.members:
                found[index - 2] = found[index] = fact_piece(whole, whole.fact, rest, whole.first, last)
                found[index - 1] = found[index]
    found[:] = [piece for at, piece in enumerate(found) if not at or piece is not found[at - 1]]


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
_OVER = word_set("above over higher")
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
    after = tokens[following.first].low if following is not None else ""
    if word in ("on", "&") and (after in _UP or after in _DOWN or (word == "&" and after in _OVER)):
        word, last = "down" if after in _DOWN else "up", last + 1
        following = found[last + 1] if last + 1 < len(found) else None
    elif word == "plus" and single:  # "K6 plus: ...", and no "K6 plus a pin"
        parted = following is None or tokens[following.first].start - tokens[found[last].last - 1].end > 1
        return ("at least", last) if parted or (following is not None and following.tag in _ENDS) else None
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
