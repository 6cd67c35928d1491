"""Yes or no said right after a fact: "on watch? no", "hauling: yes, sleeves down", "in town - nope".

Such a word belongs to what stands before it, and turns it if it is a no. One that can belong to nothing, or
to two things, stays in the question, where it stops it: a "no" that is passed over would give the contrary.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain
from kb.model.values import NO, YES, Choices
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.values import Pieces, complement_of, fact_piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token
from kb.text import visible

_NO = word_set("no nope nah not negative never n")
_YES = word_set("yes yep yeah yup aye affirmative y")
_LETTERS = word_set("n y")
_DASHES = frozenset({"-", "–", "—"})
_JOINING = frozenset({"and", "but", "or"})
_ASKED = frozenset({"?", ":", "="})
_JUDGING = frozenset({"allowed", "banned", "required", "optional"})
_DENYING = frozenset({"not", "no", "without", "no longer", "neither"})
_ASKING = tag_set("""
    can, may, must, should, have to, do, be, what, which, who, where, how, how many, when, why, act
    leave off""")
_AROUND_ITEM = tag_set("det, poss, filler, with, in, on, and, but, comma, have, self")
TAG = "whether"
SAID = "said"
"""The `arg` of a fact of which a yes or no was said: no other word turns it again."""


def marked(text: str, tokens: tuple[Token, ...], pieces: Pieces) -> Pieces:
    """The pieces with each such word as `TAG`, whose `arg` is "yes" or "no", or "" where it is not clear."""
    if not any(_word(token) in _NO or _word(token) in _YES for token in tokens):
        return pieces
    found = list(pieces)
    for index, piece in enumerate(pieces):
        word = _word(tokens[piece.first])
        if not index or piece.last - piece.first != 1 or not (word in _NO or word in _YES):
            continue
        if (word == "no" and _leads_noun(text, tokens, pieces, index)) or _is_either(tokens, piece.first):
            continue
        if word == "not" and _in_words(text, tokens, pieces, index):
            found[index] = Piece(first=piece.first, last=piece.last, tag=TAG)
            continue
        judged = word == "not" and index + 1 < len(pieces) and pieces[index + 1].tag in _JUDGING
        if tokens[piece.first].low == "n't" or judged:
            continue  # "in the mess: not allowed?"
        if word in _NO and _trails(text, tokens, pieces, index):
            found[index] = Piece(first=piece.first, last=piece.last, tag=TAG)
            continue
        before = _before(pieces, index, tokens)
        if pieces[before].tag not in ("name", "measure"):
            continue
        mark = _mark(text, tokens, pieces, before, index)
        if word in _LETTERS and mark not in _ASKED:
            if _end(text, tokens, piece.last) in ("end", ".", "?"):
                found[index] = Piece(first=piece.first, last=piece.last, tag=TAG)
            continue
        end = _end(text, tokens, piece.last)
        if not _is_said_of(mark, end, word) and not (
            mark in _ASKED and _is_next(text, tokens, index, pieces)
        ):
            if mark not in _ASKED:
                continue
            word = ""
        elif mark == "." or _is_unclear(text, tokens, pieces, before, mark, end):
            word = ""
        said = "" if not word else "no" if word in _NO else "yes"
        found[index] = Piece(first=piece.first, last=piece.last, tag=TAG, arg=said)
    return tuple(found)


def _word(token: Token) -> str:
    """A word as it is understood; a single letter as it is written ("n" is otherwise "and")."""
    written = token.text.casefold()
    return written if written in _LETTERS else "not" if token.low == "n't" else token.low


def _in_words(text: str, tokens: tuple[Token, ...], pieces: Pieces, index: int) -> bool:
    """Whether "I am not" is all that is said after a question mark."""
    first = index
    while first and pieces[first - 1].tag in ("self", "be", "do", "have", "person"):
        first -= 1
    if not 0 < first < index or _end(text, tokens, pieces[index].last) not in ("end", ".", ",", "!", ";"):
        return False
    gap = text[tokens[pieces[first - 1].last - 1].end : tokens[pieces[first].first].start].strip()
    return gap[:1] in _ASKED


def _is_either(tokens: tuple[Token, ...], place: int) -> bool:
    """ "Lanyard yes or no": it is asked which of them, and neither is said."""
    return [token.low for token in tokens[place : place + 3]] in (["yes", "or", "no"], ["no", "or", "yes"])


def _leads_noun(text: str, tokens: tuple[Token, ...], pieces: Pieces, index: int) -> bool:
    """ "May I? No BA.": whether a sentence of its own begins with the "no" of what there is not."""
    after = pieces[index + 1] if index + 1 < len(pieces) else None
    begins = tokens[pieces[index].first].text[:1].isupper() and text[
        : tokens[pieces[index].first].start
    ].strip()[-1:] in (".", "?", "!")
    return begins and after is not None and after.tag == "name" and not _end(text, tokens, pieces[index].last)


def ends_in_yes_or_no(text: str) -> bool:
    """Whether the last word is a yes or no, which other words put before it would give to another thing."""
    last = text.casefold().split()[-1:]
    return bool(last) and (last[0] in _NO or last[0] in _YES)


def _trails(text: str, tokens: tuple[Token, ...], pieces: Pieces, index: int) -> bool:
    """ "Hauling, no": whether a no after a comma ends a sentence: it may deny all that is said there."""
    comma = tokens[pieces[index].first - 1].low == "," and index > 1 and pieces[index - 2].tag == "name"
    return comma and _end(text, tokens, pieces[index].last) in ("end", ".", ";", "!")


def _before(pieces: Pieces, index: int, tokens: tuple[Token, ...]) -> int:
    dash = pieces[index - 1].last - pieces[index - 1].first == 1
    dash = dash and tokens[pieces[index - 1].first].low in _DASHES
    return index - 2 if dash and index > 1 else index - 1


def _mark(text: str, tokens: tuple[Token, ...], pieces: Pieces, before: int, index: int) -> str:
    """What stands between: "?", ":", "-", "." for the end of a sentence, or nothing."""
    gap = text[tokens[pieces[before].last - 1].end : tokens[pieces[index].first].start].strip()
    if gap[:1] in _ASKED:
        return gap[:1]
    if gap[:1] in _DASHES:
        return "-"
    return "." if gap else ""


def _end(text: str, tokens: tuple[Token, ...], place: int) -> str:
    """What ends the word before a place: a mark, "and", "end" for the end of the text, or nothing."""
    gap = text[tokens[place - 1].end : tokens[place].start if place < len(tokens) else len(text)].strip()
    if gap:
        return gap[:1]
    if place >= len(tokens):
        return "end"
    low = tokens[place].low
    return low if low == "," or low in _DASHES or low in _JOINING else ""


def _is_said_of(mark: str, end: str, word: str) -> bool:
    """Whether the word is said of what is before it; ", no?" and "no?" only ask for assent."""
    if not end or (mark in ("", "-", ".") and end == "?"):
        return False
    return mark != "." or word in _NO


def _is_next(text: str, tokens: tuple[Token, ...], index: int, pieces: Pieces) -> bool:
    """ "On watch? no in town? no": whether what follows has its own yes or no."""
    return any(
        piece.last < len(tokens)
        and (tokens[piece.last].low in _NO or tokens[piece.last].low in _YES)
        and text[tokens[piece.last - 1].end : tokens[piece.last].start].strip()[:1] in _ASKED
        for piece in pieces[index + 1 : index + 4]
        if piece.tag == "name"
    )


def _clause(pieces: Pieces, before: int, tokens: tuple[Token, ...], text: str) -> Sequence[Piece]:
    """The pieces of the same sentence, back to a comma, before a place."""
    first = before
    while first and pieces[first - 1].tag not in ("comma", TAG):
        gap = text[tokens[pieces[first - 1].last - 1].end : tokens[pieces[first].first].start].strip()
        if gap:
            break
        first -= 1
    return pieces[first:before]


def _asks(pieces: Pieces, before: int, tokens: tuple[Token, ...], text: str) -> bool:
    """ "May I wear it on watch? No": whether the word may answer the question itself."""
    return not _ASKING.isdisjoint(piece.tag for piece in _clause(pieces, before, tokens, text))


def _is_unclear(
    text: str, tokens: tuple[Token, ...], pieces: Pieces, before: int, mark: str, end: str
) -> bool:
    denied = {piece.tag for piece in _clause(pieces, before, tokens, text)[-2:]} & _DENYING
    if denied or end == "/" or (mark == "?" and _asks(pieces, before, tokens, text)):
        return True  # "not hauling? no", "n/a"
    return _is_item(pieces[before]) and not _is_alone(text, tokens, pieces, before, end)


def _is_item(piece: Piece) -> bool:
    return any(entry.kind == "item" for entry in piece.entries)


def _is_alone(text: str, tokens: tuple[Token, ...], pieces: Pieces, before: int, end: str) -> bool:
    """ "Storm coat? yes"; not "the cap? no, the beanie", which puts one thing for another."""
    rest = {piece.tag for piece in _clause(pieces, before, tokens, text)}
    return end != "," and rest <= _AROUND_ITEM


def said_of_facts(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Each fact with the yes or no that is said of it; a thing is worn or not."""
    found: list[Piece] = []
    for piece in pieces:
        at = len(found) - 1
        if at > 0 and found[at].last - found[at].first == 1 and tokens[found[at].first].low in _DASHES:
            at -= 1
        stated = _stated(piece, found[at], lookup) if piece.tag == TAG and piece.arg and at >= 0 else None
        if stated is None:
            found.append(piece)
        else:
            found[at:] = [stated]
    return tuple(found)


def _stated(said: Piece, before: Piece, lookup: Lookup) -> Piece | None:
    items = {entry.id for entry in before.entries if entry.kind == "item"}
    if before.tag == "name" and len(items) == 1 and all(entry.kind == "item" for entry in before.entries):
        worn = f"worn:{items.pop()}"
        if worn not in lookup.facts:
            return None
        values = YES if said.arg == "yes" else NO
        plain = msgspec.structs.replace(before, entries=(), arg=SAID)
        return fact_piece(plain, worn, values, before.first, said.last)
    if before.tag != "fact" or not isinstance(before.values, Choices):
        return None
    if said.arg == "yes":
        return msgspec.structs.replace(before, last=said.last, arg=SAID)
    values_left = complement_of(lookup, before.fact, before.values)
    if not isinstance(values_left, Choices) or not values_left.members:
        return None
    plain = msgspec.structs.replace(before, arg=SAID)
    return fact_piece(plain, before.fact, values_left, before.first, said.last)


def unclear(found: Understood) -> Abstain | None:
    """The refusal where it is not clear what a yes or no is said of."""
    words = tuple(visible(found.tokens[piece.first].text) for piece in found.pieces if piece.tag == TAG)
    if not words:
        return None
    return Abstain(reason=f'It is not clear what "{words[0]}" is said of.', words=words[:1])
