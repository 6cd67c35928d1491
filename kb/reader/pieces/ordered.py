"""Who tells somebody what to wear: "my instructor has me in the coat" asks about the coat."""

from __future__ import annotations

from collections.abc import Iterator

from kb.reader.phrases.english import PHRASES
from kb.reader.pieces.pieces import Piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_WHO = word_set("""
    instructor boss chief skipper captain supervisor coach trainer sergeant bosun foreman gaffer leader
    officer
    teacher mate mother wife husband friend colleague storeman they he she""")
HEALERS = word_set("doctor doc physician medic gp surgeon optician nurse consultant")
"""Who gives advice that the books may go by."""
_OWNER = word_set("my our the a his her their")
_TELLING = word_set("""
    wants want wanted has had have asked asks makes made keeps put
    puts got lets let insists""")
_TOLD = word_set("me us him her them")
_WEARING = (("to", "wear"), ("in",), ("wear",), ("wearing",), ("to", "put", "on"), ("into",))


def _is_noun(word: str) -> bool:
    return word.isalpha() and (word,) not in PHRASES and word not in HEALERS


def ordered(tokens: tuple[Token, ...]) -> Iterator[Piece]:
    """The words that say who has somebody wear something, with the wearing as an act."""
    lows = [token.low for token in tokens]
    for place in range(1, len(lows) - 2):
        named = lows[place - 1] in _WHO or (
            place > 1 and lows[place - 2] in _OWNER and _is_noun(lows[place - 1])
        )
        if lows[place] not in _TELLING or lows[place + 1] not in _TOLD or not named:
            continue
        first = place - 1
        if first and lows[first - 1] in _OWNER:
            first -= 1
        for words in _WEARING:
            end = place + 2 + len(words)
            if tuple(lows[place + 2 : end]) == words and end < len(lows):
                yield Piece(first=first, last=place + 2, tag="filler", how="pattern")
                yield Piece(first=place + 2, last=end, tag="act", arg="wear", how="pattern")
                break
