"""Verbs of putting and fastening: "where do I fix the badge", "do I have to button the coat"."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import msgspec

from kb.reader.phrases.english import PHRASES
from kb.reader.pieces.pieces import Piece
from kb.reader.words.tokens import Token

Pieces = tuple[Piece, ...]
_ITEMS = ("item", "items")
_NOUN_STARTS = frozenset({"det", "poss", "what", *_ITEMS})
_SUBJECTS = frozenset({"self", "person"})
_ASKING = frozenset({"may", "can", "must", "should", "have to", "do"})
_DUTIES = frozenset({"must", "should", "have to", "required"})
_FREEDOMS = frozenset({"may", "can", "allowed", "banned", "optional"})


def verbs(pieces: Pieces, tokens: tuple[Token, ...]) -> Pieces:
    """Verbs that stand beside an item, as the act or the aspect that they mean here.

    To fix or to run says where something is, to fasten says how; elsewhere such a word explains nothing.
    """
    found = _taken_off([_as_verb(pieces, index, tokens) for index in range(len(pieces))], tokens)
    tags = {piece.tag for piece in found}
    fastening = bool(_DUTIES & tags or (pieces[:1] and pieces[0].tag == "do")) and not _FREEDOMS & tags
    for index, piece in enumerate(found):
        if piece.tag == "fix" and "where" in tags:
            found[index] = msgspec.structs.replace(piece, tag="act", arg="wear")
        elif piece.tag == "run" and {"where", "dimension"} & tags:
            found[index] = msgspec.structs.replace(piece, tag="joined")
        elif piece.tag == "fasten" and fastening and "how" not in tags:
            found[index] = msgspec.structs.replace(piece, tag="aspect", arg="fastening")
        elif _is_made_of(found, index, tokens):
            found[index] = msgspec.structs.replace(piece, tag="act", arg="wear")
        elif _hangs_out(found, index, tokens):
            found[index] = msgspec.structs.replace(piece, tag="particle")
        elif piece.tag == "fully" and {"fasten", "aspect"} & tags:
            found[index] = msgspec.structs.replace(piece, tag="joined")
    if found and _asks_of_a_denial(found, tokens):
        found[-1] = msgspec.structs.replace(found[-1], tag="allowed")
    return tuple(found)


def _asks_of_a_denial(pieces: Sequence[Piece], tokens: tuple[Token, ...]) -> bool:
    """ "My boots aren't laced, ok?": nothing else asks, and what is asked of is that it is not so."""
    tags = [piece.tag for piece in pieces]
    ends = tags[-1] == "filler" and tokens[pieces[-1].last - 1].low in ("ok", "okay", "fine")
    denied = any(pair == ("be", "not") for pair in pairwise(tags))
    return ends and denied and tags[0] != "be" and (_ASKING | _FREEDOMS | _DUTIES).isdisjoint(tags)


def _hangs_out(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "Shirt out, all right?": "out" says how the thing is, where nothing follows that one is out in."""
    out = pieces[index].tag == "filler" and tokens[pieces[index].first].low == "out"
    after = pieces[index + 1].tag if index + 1 < len(pieces) else ""
    return out and index > 0 and pieces[index - 1].tag in _ITEMS and after in ("", "comma", "allowed", "over")


def _as_verb(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> Piece:
    """ "May I pin the tape", "may I leave the cap": a name where only a verb can stand is no name."""
    piece = pieces[index]
    if _is_sitting(pieces, index, tokens):
        return Piece(first=piece.first, last=piece.last, tag="sitting")  # which nothing explains
    if (
        _is_done_to(pieces, index, tokens)
        or _does_not(pieces, index)
        or _does_so(pieces, index)
        or _works(pieces, index, tokens)
        or _is_span(pieces[index], tokens)
        or _is_a_hand(pieces, index, tokens)
        or _is_so_much(pieces, index)
        or _is_giving(pieces, index, tokens)
        or _is_noun(pieces, index, tokens)
        or _is_worn_out(pieces, index, tokens)
    ):
        return Piece(first=piece.first, last=piece.last, tag="unknown", how="pattern")
    single = piece.last - piece.first == 1 and piece.tag in ("fact", *_ITEMS, "values", "fact name")
    leaving = tokens[piece.first].low == "leave"
    if single and piece.tag in _ITEMS and _is_done(pieces, index, tokens):
        return Piece(first=piece.first, last=piece.last, tag="unknown", how="pattern")
    if (
        not single
        or not _is_verb_place(pieces, index, tokens, leaving)
        or tokens[piece.first].low.endswith(("ing", "s"))
    ):
        return piece
    tag = PHRASES.get((tokens[piece.first].low,), "")
    verb = (
        tag if tag in ("fix", "fasten", "run") else "fix" if tokens[piece.first].low == "pin" else "unknown"
    )
    return Piece(first=piece.first, last=piece.last, tag=verb)


_BEFORE_DOING = frozenset(
    {"", "filler", "be", "banned", "allowed", "poss", "self", "person", "to", "required"}
)


def _is_done_to(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "Is painting the coat allowed" asks of the coat's paint, not of what is worn when painting."""
    piece = pieces[index]
    if piece.tag != "fact" or not tokens[piece.last - 1].low.endswith("ing"):
        return False
    before, after = pieces[index - 1].tag if index else "", [p.tag for p in pieces[index + 1 : index + 3]]
    done = len(after) == 2 and after[0] in ("det", "poss") and after[1] in _ITEMS
    return done and before in _BEFORE_DOING and not any(p.tag in ("act", "leave off") for p in pieces)


def _does_not(pieces: Sequence[Piece], index: int) -> bool:
    """ "My boots don't fit", "I don't care": what does not do so is asked for no fit and no care."""
    denied = index > 1 and pieces[index - 1].tag == "not" and pieces[index - 2].tag in ("do", "can")
    return denied and pieces[index].tag == "aspect"


def _does_so(pieces: Sequence[Piece], index: int) -> bool:
    """ "The keeper can clear it": right after a modal that has its subject a word of colour is a verb."""
    before = [pieces[place].tag if place >= 0 else "" for place in (index - 1, index - 2)]
    led = before[0] in ("can", "may", "must", "should") and before[1] in (*_SUBJECTS, "fact", "authority")
    return led and pieces[index].tag == "aspect value"


def _works(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "I work in town": who works there is in no rig for it, whatever rig a book calls "work"."""
    piece, before = pieces[index], tokens[pieces[index].first - 1].low if pieces[index].first else ""
    everyday = piece.tag == "fact" and piece.how == "everyday" and piece.last - piece.first == 1
    return everyday and tokens[piece.first].low == "work" and PHRASES.get((before,), "") in _SUBJECTS


_GIVING = frozenset({"issue", "supply", "provide"})


def _is_giving(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "Must an usher issue it": who is asked of gets things issued and issues none."""
    before = pieces[index - 1].tag if index else ""
    gives = pieces[index].tag == "act" and tokens[pieces[index].first].low in _GIVING
    return gives and before in (*_SUBJECTS, *_ASKING, "fact", "values", "authority", "service")


def _is_worn_out(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "What do I do with a worn out jersey": how it is, and not that it is worn."""
    piece = pieces[index]
    words = [token.low for token in tokens[piece.first : piece.last + 1]]
    after = pieces[index + 2].tag if index + 2 < len(pieces) else ""
    return piece.tag == "act" and words == ["worn", "out"] and after in _ITEMS


_ARTICLES = frozenset({"a", "an", "the", "my", "our", "his", "their"})


def _is_noun(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "May I wear a tie pin": the plain form of a verb, after an article, is the noun of what is worn."""
    piece = pieces[index]
    bare = piece.tag == "act" and piece.last - piece.first == 1 and tokens[piece.first].low not in _GIVING
    led = bare and piece.first > 0 and tokens[piece.first - 1].low in _ARTICLES
    if not led or tokens[piece.first].low.endswith(("ing", "ed")):
        return False
    other = any(p.tag == "act" and p.arg != piece.arg for p in pieces[:index])
    after = pieces[index + 1].tag if index + 1 < len(pieces) else ""
    return other and after in _ITEMS


def _is_span(piece: Piece, tokens: tuple[Token, ...]) -> bool:
    """ "In my day", "for a day", "for the day": long ago, or how long, and not by daylight."""
    word = tokens[piece.first].low if piece.tag == "fact" and piece.last - piece.first == 1 else ""
    before = tokens[piece.first - 1].low if piece.first else ""
    led = piece.first > 1 and before == "the" and tokens[piece.first - 2].low in ("for", "of")
    return word == "day" and (
        led or before in ("my", "his", "her", "our", "their", "your", "a", "one", "half")
    )


def _is_sitting(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "May I sit on the coat": who sits is no garment that sits somewhere."""
    piece = pieces[index]
    return (
        piece.tag == "act"
        and tokens[piece.first].low in ("sit", "sits", "sitting")
        and index > 0
        and pieces[index - 1].tag in _SUBJECTS
        and index + 1 < len(pieces)
        and pieces[index + 1].tag == "on"
    )


def _is_a_hand(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "In the hand", "in my hands": a limb, and nothing that is handed in."""
    noun = pieces[index].tag == "act" and tokens[pieces[index].first].low in ("hand", "hands")
    return noun and index > 0 and pieces[index - 1].tag in ("det", "poss", "in")


def _is_so_much(pieces: Sequence[Piece], index: int) -> bool:
    """ "The kitchen is 33, cap off?": how warm it is there, and no count of caps."""
    around = [pieces[place].tag for place in range(max(index - 2, 0), min(index + 2, len(pieces)))]
    return pieces[index].tag == "number" and around == ["fact", "be", "number", "comma"]


_AFTER_VERB = frozenset({"", "comma", "in", "on", "at", "fact", "if", "when", "filler", "for"})
_ASKED = frozenset({"can", "may", "must", "should"})
_ACTING = frozenset({"act", "leave off", "fix", "run", "fasten", "aspect", "unknown", "where", "how"})


def _taken_off(pieces: list[Piece], tokens: tuple[Token, ...]) -> list[Piece]:
    """ "Cap off in the mess?": "off" is all that is said of what is done, right after the item.

    What is asked of another thing after it is not: "cap off, can I have my hood up?".
    """
    if any(piece.tag in _ACTING for piece in pieces):
        return pieces
    for index in range(1, len(pieces)):
        off = pieces[index].tag == "particle" and tokens[pieces[index].first].low == "off"
        after = {piece.tag for piece in pieces[index + 1 :]}
        alone = _ASKED.isdisjoint(after) or after.isdisjoint(_ITEMS)
        if off and alone and pieces[index - 1].tag in _ITEMS:
            pieces[index] = msgspec.structs.replace(pieces[index], tag="leave off")
    return pieces


def _is_made_of(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "Is the jersey part of watch rig", "does watch rig include the jersey": whether it is worn in it."""
    piece = pieces[index]
    if piece.tag not in ("unknown", "filler") or not index:
        return False
    after = index + 1
    while after < len(pieces) and pieces[after].tag in ("of", "in", "det"):
        after += 1
    following = pieces[after] if after < len(pieces) else None
    word, before = tokens[piece.first].low, pieces[index - 1]
    if following is None:
        return False
    if word in ("part", "included"):
        return following.fact == "rig" and before.tag in (*_ITEMS, "det", "be")
    return word in ("include", "includes") and before.fact == "rig" and following.tag in _ITEMS


def _is_done(pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "May I whistle on watch", "allowed to whistle": a thing's name as the verb, with nothing after it."""
    word, after = tokens[pieces[index].first], pieces[index + 1].tag if index + 1 < len(pieces) else ""
    if word.low != word.key or after not in _AFTER_VERB or not index:
        return False
    before, last = pieces[index - 1], tokens[pieces[index].first - 1].low
    asked = index > 1 and pieces[index - 2].tag in _ASKING and before.tag == "self"
    return asked or (last == "to" and before.tag in ("allowed", "have to", "to") and before.first > 0)


_PINNING = frozenset({"pin", "clip"})
_POINTING = frozenset({"it", "them", "this", "that", "these", "those", "one", "mine"})


def _is_verb_place(
    pieces: Sequence[Piece], index: int, tokens: tuple[Token, ...], leaving: bool = False
) -> bool:
    before = pieces[index - 1].tag if index else ""
    asked = index > 1 and pieces[index - 2].tag in _ASKING
    led = (before in _SUBJECTS and asked) or before in ("have to", "to")
    if asked and before in _SUBJECTS and leaving:
        return True  # "may I leave one button open" is nobody's leave
    if not led or index + 1 >= len(pieces):
        return False
    after = pieces[index + 1]
    pinned = tokens[pieces[index].first].low in _PINNING and tokens[after.first].low in _POINTING
    return pinned or after.tag in _NOUN_STARTS  # "can I pin it on the shirt"
