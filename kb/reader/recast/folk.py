"""People who are no more than people: "can a man wear it", "must my lot own one", "can my ten leave it off".

A word for people that the books know (women, a crew) is a name, and never taken so; neither is one that may
tell a standing (a recruit, a guest, an officer).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.model.lookup import Lookup
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set

FOLK = word_set("""
    man men woman women chap chaps fellow fellows bloke blokes lad lass lasses lot crew team gang bunch guy
    gal gals girl girls boy boys individual individuals squad outfit soul souls human being beings body mob
    rabble troops hands youngster youngsters lady ladies gent gents gentleman gentlemen
""")
_WHOLE = word_set("whole entire poor old dear")
_LEADING = tag_set("can, may, must, should, do, have to, be, if, when, for, comma, allowed, banned, no, and")
_FOLLOWING = tag_set(
    "act, leave off, have, be, can, may, must, should, have to, do, allowed, required, banned, hold, comma"
    ", not"
)

_STATING = tag_set("be, have, do, hold")
_ASKING = tag_set("can, may, must, should, do, have to, be")


_WANTING = word_set("want wants wanted fancy fancies")
_OVER = tag_set("comma, with, in, on, fact, filler, for, and, but, if, when")


def wanted(found: Understood) -> Iterator[tuple[int, int, str]]:
    """ "She wants the jersey on": she wants to wear it, where no more is said to be done to it."""
    pieces, tokens = found.pieces, found.tokens
    for index, piece in enumerate(pieces[1:-1], 1):
        if tokens[piece.last - 1].low not in _WANTING or pieces[index + 1].tag not in ("det", "poss"):
            continue
        thing = pieces[index + 2] if index + 2 < len(pieces) else piece
        after = pieces[index + 3] if index + 3 < len(pieces) else None
        on = after is not None and after.last - after.first == 1 and tokens[after.first].low == "on"
        over = after is None or after.tag in _OVER or on or _parts(found, thing)
        if thing.tag not in ("item", "items") or not over:
            continue
        if on and after is not None and not _names(pieces, index + 4):
            yield tokens[after.first].start, tokens[after.first].end, ""
        yield tokens[piece.last - 1].end, tokens[piece.last - 1].end, " to wear"


def _names(pieces: Sequence[Piece], index: int) -> bool:
    """Whether a noun follows that "on" leads to."""
    return index < len(pieces) and pieces[index].tag in ("det", "poss", "unknown", "item", "items", "fact")


def _parts(found: Understood, piece: Piece) -> bool:
    """Whether a sentence ends after a piece."""
    end = found.tokens[piece.last - 1].end
    return found.text[end:].lstrip()[:1] in (".", ";", "!", "?", "")


def people_meant(found: Understood) -> Iterator[tuple[int, int, str]]:
    """Start, end and plainer word of each such stretch of a text."""
    pieces = found.pieces
    for index, piece in enumerate(pieces):
        word = found.tokens[piece.first].low
        folk = piece.tag == "unknown" and piece.last - piece.first == 1 and word in FOLK
        counted = piece.tag == "number" and index > 0 and pieces[index - 1].tag == "poss"
        if not (folk or counted):
            continue
        first, last = _start(found, index), _end(found, index)
        if not folk and first == index:
            continue
        before = pieces[first - 1].tag if first else "comma"
        after = pieces[last].tag if last < len(pieces) else "comma"
        if before not in _LEADING or after not in _FOLLOWING:
            continue
        if after in _STATING and before not in _ASKING:
            continue  # "my lot are in town": told of them, not asked
        yield found.tokens[pieces[first].first].start, found.tokens[pieces[last - 1].last - 1].end, "people"


def _start(found: Understood, index: int) -> int:
    """The piece at which such people begin: "my", "the whole", "us"."""
    pieces = found.pieces
    while index and found.tokens[pieces[index - 1].first].low in _WHOLE:
        index -= 1
    leads = index and (
        pieces[index - 1].tag in ("det", "poss") or found.tokens[pieces[index - 1].first].low == "us"
    )
    return index - 1 if leads else index


def _end(found: Understood, index: int) -> int:
    """The piece after such people: past "like me"."""
    after: Sequence[Piece] = found.pieces[index + 1 : index + 3]
    like = len(after) == 2 and found.tokens[after[0].first].low == "like" and after[1].tag == "self"
    return index + 3 if like else index + 1


def names_of_people(lookup: Lookup) -> Iterator[str]:
    """What the books call people: authorities, grades and groups of them, appointments."""
    base = lookup.base
    grades = [value for fact in base.facts if fact.family == "grade" for value in fact.values]
    groups = [group for group in base.groups if lookup.facts[group.fact].family == "grade"]
    appointed = [fact for fact in base.facts if fact.family == "appointment"]
    for one in (*base.authorities, *grades, *groups, *appointed):
        yield from (one.label, *one.other_labels)
