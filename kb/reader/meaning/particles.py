"""Adverbs of direction, the particle of a verb of dress, and how many people it is asked of.

"Down in the lamp room" says no more than "in the lamp room"; "must be off" is "must be taken off"; "two of
us" are "us". Where the books have a thing up, down or back, these words say how it is: they stay, and stop
the question.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.reader.phrases.english import BODY, LEADING_PREPOSITIONS, LIMBS, tag_set
from kb.reader.pieces.pieces import Piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, tokenize

_DIRECTIONS = word_set("up down over back out along across around through away")
_PEOPLE = frozenset({"grade", "branch", "appointment", "qualification"})
_ITEMS = ("item", "items")
_NOUN = tag_set("det, poss")
_MOVED = word_set("""
    put puts putting take takes taking taken took keep keeps keeping kept leave leaves leaving left pull pulls
    pulling pulled push pushed turn turns turned turning roll rolls rolled flip flipped tip tipped tilt tilted
    tie tied pin pinned hold held wind wound tuck tucked fold folded hang hung
""")
_DUTY = tag_set("must, should, have to, can, may, do, have")
_TAKING = word_set("take takes taking taken took bring come comes coming came")
_PUTTING = word_set("put puts putting have has having stay stays staying keep keeps keeping go goes")
_NEVER_BEFORE = tag_set("unknown, fix, fasten, run, number, measure, values")
"""What a particle goes with: "rolled up", "6 cm down"."""
_SETTING = word_set("put puts putting set sets setting lay")
_COUNTS = word_set("half a dozen couple few")


def particles(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """Turn each such word, in place, into the filler or the act that it is where it stands."""
    for index, piece in enumerate(found):
        low = tokens[piece.first].low
        if piece.tag == "number":
            _people(found, index, tokens, lookup)
        elif piece.tag == "unknown" and low in ("half", "dozen"):
            _dozen(found, index, tokens, lookup)
        elif piece.last - piece.first != 1:
            continue
        elif (
            low in ("off", "out") and piece.tag in ("particle", "filler") and _is_to_be(found, index, lookup)
        ):
            _retag(found, index, "leave off")
        elif low in _DIRECTIONS and _is_single(piece) and not _put_up(found, index, tokens, lookup):
            _direction(found, index, tokens, lookup)


def _retag(found: list[Piece], index: int, tag: str, arg: str = "") -> None:
    found[index] = msgspec.structs.replace(found[index], tag=tag, arg=arg)


def _tag(found: Sequence[Piece], index: int) -> str:
    return found[index].tag if 0 <= index < len(found) else ""


def _is_to_be(found: Sequence[Piece], index: int, lookup: Lookup) -> bool:
    """ "Does the watch have to be off", "must the earrings be out": a thing is to be taken off.

    Only what is worn in the body comes out: "may the liner be out" is of something else.
    """
    thing = index - 2
    if _tag(found, index + 1) in ("of", "to") or found[0].tag == "when" or _tag(found, thing) not in _ITEMS:
        return False
    if found[index].tag == "filler" and any(
        "accessory" not in lookup.broader(entry.id) for entry in found[thing].entries
    ):
        return False
    if found[index - 1].tag == "have to":
        return True
    led = _tag(found, index - 1) in ("be", "for")
    before = thing - 1
    while _tag(found, before) in _NOUN:
        before -= 1
    return led and _tag(found, before) in _DUTY - {"do"}


def _put_up(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "Put an umbrella up", "take the badge down": what is carried is used, insignia are worn."""
    low = tokens[found[index].first].low
    around = [i for i in (*range(index - 1, max(-1, index - 4), -1), index + 1, index + 2) if i < len(found)]
    thing = next((i for i in around if i >= 0 and found[i].tag in _ITEMS), None)
    if low not in ("up", "down") or thing is None or _is_state(found[thing], low, tokens, lookup):
        return False
    acts = [i for i in range(index - 1, max(-1, index - 5), -1) if found[i].tag in ("act", "unknown", "run")]
    word = tokens[found[acts[0]].first].low if acts else ""
    broader = {kind for entry in found[thing].entries for kind in lookup.broader(entry.id)}
    shown = "insignia" in broader
    if not acts or not (shown or "carried" in broader):
        return False
    if low == "down" and word in _TAKING and shown:
        _retag(found, acts[0], "leave off")
    elif low == "up" and word in _PUTTING:
        _retag(found, acts[0], "act", "wear" if shown else "use")
    elif low == "down" and word in _SETTING:
        _retag(found, index, "unread")  # neither carried nor left at home
        return True
    else:
        return False
    _retag(found, index, "filler")
    return True


def _direction(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "Up on an open deck", "back in the mess": the place says it all."""
    after = index + 1
    while after < len(found) and tokens[found[after].first].low in _DIRECTIONS and _is_single(found[after]):
        after += 1
    if not _is_place(found, after, tokens, lookup):
        return
    before = index - 1
    while _tag(found, before) == "filler":
        before -= 1
    piece = found[before] if before >= 0 else None
    if piece is not None and (piece.tag in _NEVER_BEFORE or tokens[piece.last - 1].low in _MOVED):
        return
    low = tokens[found[index].first].low
    if any(_is_state(named, low, tokens, lookup) for named in found if named.tag in _ITEMS):
        return
    if piece is not None and piece.tag in ("be", "for", "have to") and _tag(found, before - 1) in _ITEMS:
        return
    if piece is not None and piece.tag in _ITEMS:
        verb = before - 1
        while _tag(found, verb) in (*_NOUN, "filler"):
            verb -= 1
        moved = verb >= 0 and tokens[found[verb].first].low in _MOVED
        if moved or (low == "back" and _is_set(piece, lookup)):
            return
    for place in range(index, after):
        _retag(found, place, "filler")


def _is_single(piece: Piece) -> bool:
    return piece.last - piece.first == 1 and piece.tag in ("particle", "with", "filler", "unknown")


def _is_place(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Whether a place is named there, with the preposition that leads to it."""
    led = _tag(found, index) in ("in", "on", "to")
    while _tag(found, index) in ("in", "on", "to", *_NOUN):
        index += 1
    if index >= len(found):
        return False
    piece, low = found[index], tokens[found[index].first].low
    if piece.tag == "fact":
        fact = lookup.facts[piece.fact]
        leads = led or (low in LEADING_PREPOSITIONS and low not in ("the", "a", "an", "working"))
        return leads and fact.family == "situation" and fact.kind in ("choice", "yes_no")
    if piece.tag != "unknown" or not led or tokens[piece.first].key in LIMBS:
        return False
    from kb.reader.words.everyday import PLACES  # noqa: PLC0415  few places are unknown to the books

    return low in PLACES or tokens[piece.first].key in PLACES


def _is_state(piece: Piece, word: str, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Whether the books say of a thing, of a part of it or of one so called that it is up, down or back."""
    if word not in ("up", "down", "back"):
        return False
    sought = {"back"} if word == "back" else {"up", "down"}
    related = {kind for entry in piece.entries for kind in lookup.broader(entry.id)}
    related |= {item.id for item in lookup.base.items if item.part_of in related}
    name = tokens[piece.last - 1].key
    for rule in lookup.base.rules:
        aspect = lookup.aspects[rule.aspect]
        if aspect.id == "care" or aspect.within == "care":
            continue  # "hung up afterwards"
        label = tokenize(f"{aspect.label} {aspect.done or ''}")
        of_it = bool(related.intersection(rule.scope.items))
        if of_it or any(token.key == name for token in label):
            text = tokenize(lookup.clauses[rule.clause].text) if of_it else ()
            if sought.intersection(token.low for token in (*label, *text)):
                return True
    return False


def _is_set(piece: Piece, lookup: Lookup) -> bool:
    """Whether it is headgear, which may sit back on the head."""
    names = [name for entry in piece.entries for name in (lookup.items[entry.id].label,)]
    return any(name.split()[-1].casefold().rstrip("s") in BODY["head"] for name in names)


def _people(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "Two of us", "three of our cadets", "two attendants", "must all ten wear": no more than people."""
    after = index + 1
    if found[index].arg == "1":
        return  # "one of us is a diver": who it is may count
    if _tag(found, after) == "of":
        after += 1
        while _tag(found, after) in _NOUN:
            after += 1
        if not _is_people(found, after, tokens, lookup):
            return
        low = tokens[found[after].first].low
        if found[after].tag == "self" and low not in ("us", "them", "you"):
            return
    elif _tag(found, index - 1) == "det" and tokens[found[index - 1].first].low == "all":
        if _tag(found, after) not in ("act", "have", "have to"):
            return
    elif not _is_people(found, after, tokens, lookup) or found[after].tag == "self":
        return
    for place in range(index, after):
        _retag(found, place, "filler")


def _is_people(found: Sequence[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Whether people are named there, and nothing that is theirs: "two wardens", "two members"."""
    if index >= len(found) or found[index].tag not in ("fact", "person", "self"):
        return False
    piece, last = found[index], tokens[found[index].last - 1].low
    if _tag(found, index + 1) in (*_ITEMS, "fact name", "values") or last.endswith(("'s", "s'", "'")):
        return False
    if piece.tag == "fact" and lookup.facts[piece.fact].family not in _PEOPLE:
        return False
    return piece.tag == "self" or last.endswith("s") or last in ("people", "men", "women")


def _dozen(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "Half a dozen cadets", "a dozen of us"."""
    after = index
    while after < len(found) and tokens[found[after].first].low in _COUNTS:
        after += 1
    counted = [tokens[piece.first].low for piece in found[index:after]]
    if "dozen" not in counted:
        return
    if _tag(found, after) == "of":
        after += 1
    if _is_people(found, after, tokens, lookup):
        for place in range(index, after):
            _retag(found, place, "filler")
