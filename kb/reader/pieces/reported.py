"""What others say: "he says the liner may be worn alone, I say not" asks whether the first claim holds."""

from __future__ import annotations

from collections.abc import Iterator

from kb.reader.phrases.english import PHRASES
from kb.reader.pieces.pieces import Piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

SAYING = word_set("says say said claims claimed thinks reckons insists believes maintains argues swears")
_CLAIMS = SAYING - {"say"}
_PRONOUNS = word_set("he she they someone somebody everyone everybody people others")
_BOOKS = word_set("order book notice rules manual guide")
_SPEAKERS = word_set("""
    mate friend colleague shipmate boss chief supervisor instructor skipper buddy partner leader captain
    officer other others neighbour oppo one""")
_OWN = word_set("say said think thought believe reckon claim disagree")
AGREEMENT = word_set("""
    that it he she they them you i we is are 's was do does n't not no yes so otherwise the opposite wrong
    right different may can must need have to be worn allowed ok fine forbidden banned required
    never ,""")
_RIGHT = word_set("right correct wrong")


def reported(tokens: tuple[Token, ...], named: frozenset[int] = frozenset()) -> Iterator[Piece]:
    """The words that only say who claims what, and a bare counter-claim at the end.

    `named` are the places of words that the books have as names.
    """
    last = len(tokens)
    start = _correction(tokens)
    if start:
        yield _filler(0, start)
    verdict = _who_is_right(tokens)
    if verdict < last:
        yield _filler(verdict, last)
        last = verdict
    while start < last:
        opened = not start or tokens[start - 1].low in (",", "so", "ok", "well", "but", "and")
        end = _saying(tokens, start, last) or (_somebody(tokens, start, last, named) if opened else 0)
        if end:
            yield _filler(start, end)
        start = max(end, start + 1)
    counter = _counter_claim(tokens, last)
    if counter < last:
        yield _filler(counter, last)


_OPENERS = word_set("no nope yes yeah yep ok okay right oops sorry well ah oh")
_MEANT = (("i", "meant"), ("i", "mean"), ("rather",), ("make", "that"), ("actually",))


def _correction(tokens: tuple[Token, ...]) -> int:
    """The end of what opens a correction: "No, ...", "Oops, I meant ..."; 0 without one."""
    opened = len(tokens) > 2 and tokens[0].low in _OPENERS and tokens[1].low == ","
    at = 2 if opened else 0
    for words in _MEANT:
        if opened and tuple(token.low for token in tokens[at : at + len(words)]) == words:
            at += len(words)
            break
    return at if at < len(tokens) else 0


def _filler(first: int, last: int) -> Piece:
    return Piece(first=first, last=last, tag="filler", how="pattern")


def _saying(tokens: tuple[Token, ...], start: int, last: int) -> int:
    """The end of "he says that", "my mate told me that", where that begins here; else 0."""
    lows = [token.low for token in tokens[start : min(start + 7, last)]]
    if not start and lows[:2] == ["but", "the"]:  # "but the order says they may"
        said = next((place for place in (3, 4, 5) if place < len(lows) and lows[place] in SAYING), 0)
        if said and lows[said - 1] in _BOOKS and said + 1 < len(lows):
            return said + 1 + (lows[said + 1] == "that")
    if start and tokens[start - 1].low not in (",", "and", "but", "if"):
        return 0
    at = 0
    if lows[0] in _PRONOUNS:
        at = 1
    elif lows[0] in ("my", "the", "our", "a", "your", "one", "another") and len(lows) > 1:
        at = next((place + 1 for place in (1, 2) if place < len(lows) and lows[place] in _SPEAKERS), 0)
    if not at or at >= len(lows):
        return 0
    if lows[at] in SAYING:
        at += 1
    elif lows[at : at + 2] in (["told", "me"], ["tells", "me"], ["told", "us"]):
        at += 2
    else:
        return 0
    at += at < len(lows) and lows[at] == "that"
    if _is_order(lows[at:]):
        return 0  # "told me to wear it"
    return start + at if start + at < last else 0


def _is_order(lows: list[str]) -> bool:
    return lows[:1] == ["to"] or lows[:2] == ["not", "to"]


def _somebody(tokens: tuple[Token, ...], start: int, last: int, named: frozenset[int]) -> int:
    """The end of "Bob reckons that": a claim of somebody by name; else 0."""
    at = start
    while at < min(start + 2, last) and tokens[at].low.isalpha() and at not in named:
        if tokens[at].low in ("nobody", "none", "noone"):
            return 0  # "nobody told me"
        if (tokens[at].low,) in PHRASES or tokens[at].low in (*_CLAIMS, "told", "tells"):
            break
        at += 1
    lows = [token.low for token in tokens[at : min(at + 3, last)]]
    if at == start or not lows:
        return 0
    end = at + (1 if lows[0] in _CLAIMS else 2 if lows[:2] in (["told", "me"], ["tells", "me"]) else 0)
    if end == at or end >= last or _is_order([token.low for token in tokens[end : end + 2]]):
        return 0
    someone = all(token.text.istitle() for token in tokens[start:at]) or at == start + 1
    said = PHRASES.get((tokens[end].low,)) in ("self", "person", "det", "poss") or tokens[end].low == "that"
    return end + (tokens[end].low == "that") if someone and (said or tokens[start].text.istitle()) else 0


def _counter_claim(tokens: tuple[Token, ...], last: int) -> int:
    """Where "I say not", "I say they are not", "I disagree" begins, if it ends the text."""
    for start in range(1, last - 1):
        if tokens[start].low != "i" or tokens[start + 1].low not in _OWN:
            continue
        if all(token.low in AGREEMENT for token in tokens[start + 2 : last]):
            return start - (tokens[start - 1].low in ("and", "but"))
    return last


def _who_is_right(tokens: tuple[Token, ...]) -> int:
    """Where "who is right", "is he right" begins, if it ends the text after something else."""
    lows = [token.low for token in tokens]
    for words in (3, 5):
        tail = lows[-words:]
        if len(lows) > words + 2 and tail[-1] in _RIGHT:
            if tail[0] in ("who", "which") and tail[-2] in ("is", "'s"):
                return len(lows) - words
            if tail[0] == "is" and tail[1] in ("he", "she", "that", "this", "it") and words == 3:
                return len(lows) - words
            if tail[:2] == ["am", "i"]:
                return len(lows) - words
    return len(lows)
