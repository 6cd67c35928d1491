"""Two ways offered: "is the cap black or navy", "chin strap up or down", "over or under the coat".

What is asked is which of them the books have: the colour of the cap, how the strap is worn. The question is
put anew in those words, with the facts that were said beside it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.model.lookup import Lookup
from kb.reader.doubts.asked_back import COLOURS
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize

_LIGHT = tag_set("""
    det, poss, filler, comma, self, be, do, must, should, have to, may, can, required, allowed, service
    person, what, which, how, where, joined, have, run, fix, fully, datum
""")
_LEADS = frozenset({"in", "on", "for", "with", "at", "of", "if", "when"})
_DIRECTIONS = word_set("""
    up down in out inside outside over under above below underneath beneath top left right front back loose
    open closed shut tucked untucked fastened unfastened buttoned unbuttoned high low forwards backwards
""")
_SHORT = 6
RAISED = word_set("hood visor")
"""What is up when it is on."""
_SIDED = word_set("arm shoulder breast side wrist hand foot ear leg sleeve hip")
_OR_DIRECTION = frozenset({"downward", "upward", "beyond"})
_TURNED = word_set("worn go goes come comes hang hangs sit sits turned put wear be everything all em")


def asked_either(found: Understood, before: Sequence[str], lookup: Lookup) -> str | None:
    """The question in which of two values or ways an item is worn; None where there are no two.

    An item that is not named is the one of the question `before`.
    """
    named = any(piece.tag in ("item", "items") for piece in found.pieces)
    if not named and before and len(found.tokens) < _SHORT:
        said = f"{found.text.rstrip(' ?')}, the {lookup.items[before[0]].label}?"
        return said if any(piece.tag == "or" for piece in found.pieces) else None
    pieces = found.pieces
    for place, piece in enumerate(pieces):
        words = [token.low for token in found.tokens[piece.first : piece.last]]
        if piece.tag == "or" or (piece.tag in _OR_DIRECTION and words[0] == "or"):
            return _of_values(found, place, lookup) or _of_ways(found, place, lookup)
    return None


def _near(pieces: tuple[Piece, ...], place: int, step: int, skipped: frozenset[str]) -> int:
    place += step
    while 0 <= place < len(pieces) and pieces[place].tag in skipped:
        place += step
    return place


def _of_values(found: Understood, place: int, lookup: Lookup) -> str | None:
    """ "Black or navy": values of one aspect, one of which the books may not have."""
    pieces = found.pieces
    before = _near(pieces, place, -1, frozenset({"det", "poss", "filler", "item", "items"}))
    after = _near(pieces, place, 1, frozenset({"det", "poss", "filler"}))
    sides = [pieces[side] for side in (before, after) if 0 <= side < len(pieces)]
    keys = [[token.key for token in found.tokens[side.first : side.last]] for side in sides]
    if len(keys) == 2 and keys[0] == keys[1]:  # "grey or gray" is one colour
        first, last = found.tokens[pieces[place].first].start, found.tokens[sides[1].last - 1].end
        return " ".join(f"{found.text[:first].rstrip()} {found.text[last:].lstrip()}".split())
    owners = [{entry.owner for entry in side.entries} for side in sides if side.tag == "aspect value"]
    shared = set.intersection(*owners) if owners else set()
    colours = [found.tokens[side.first].low in COLOURS for side in sides if side.tag == "unknown"]
    if len(colours) == 2 and all(colours) and "colour" in lookup.aspects:
        shared = {"colour"}
    if len(sides) != 2 or len(shared) != 1 or {side.tag for side in sides} - {"aspect value", "unknown"}:
        return None
    claimed = any(piece.tag in ("may", "can", "allowed") for piece in pieces)
    if claimed and len(owners) == 2:
        return None  # "may it be black or grey" claims both
    owner = shared.pop()
    aspect = lookup.aspects[owner].label
    last = after + (after + 1 < len(pieces) and pieces[after + 1].tag == "person")
    dropped, form = {before, place, *range(after, last + 1)}, f"What must the {aspect} of the {{}} be"
    named = {entry.id for side in sides for entry in side.entries if entry.owner == owner}
    bearer = _bearer(pieces, owner, named, lookup)
    if bearer is None:
        return _anew(found, dropped, form, lookup)
    dropped |= {index for index, piece in enumerate(pieces) if piece.tag == "items"}
    label = lookup.items[bearer].label
    return _anew(found, dropped, form.replace("{}", label), lookup, bearer)


def _bearer(pieces: Sequence[Piece], aspect: str, values: set[str], lookup: Lookup) -> str | None:
    """ "White cap or blue cap": of the things that may be meant, the one that rules have in such a value."""
    unclear = {tuple(e.id for e in piece.entries) for piece in pieces if piece.tag == "items"}
    if len(unclear) != 1 or any(piece.tag == "item" for piece in pieces):
        return None
    fitting = {
        item
        for item in unclear.pop()
        for rule in lookup.base.rules
        if rule.aspect == aspect
        and item in rule.scope.items
        and values & set(getattr(rule.value.values, "members", ()))
    }
    return fitting.pop() if len(fitting) == 1 else None


def _of_ways(found: Understood, place: int, lookup: Lookup) -> str | None:
    """ "Up or down", "in or out of the boots": two directions, with what they lead to."""
    tokens, pieces = found.tokens, found.pieces
    middle = pieces[place].first
    right = pieces[place].last - 1 if pieces[place].tag != "or" else pieces[place].last
    if right >= len(tokens) or tokens[right].low not in _DIRECTIONS:
        right = next(
            (n for n in range(right, min(right + 3, len(tokens))) if tokens[n].low in _DIRECTIONS), -1
        )
    left = next((n for n in range(middle - 1, max(middle - 7, -1), -1) if tokens[n].low in _DIRECTIONS), -1)
    if left < 0 or right < 0:
        return None
    tags = [piece.tag for piece in pieces[:place]]
    if "self" in tags and not {"item", "items"} & set(tags):
        return None  # "can I come in or out in boots" asks of no way to wear them
    dropped = {
        index
        for index, piece in enumerate(pieces)
        if piece.first <= right and piece.last > left and piece.tag not in ("item", "fact")
    }
    for index in range(max(dropped) + 1, len(pieces)):  # "under the coat", "out of the boots"
        if pieces[index].tag not in ("of", "det", "poss", "items") and not _is_side(found, pieces[index]):
            break
        dropped.add(index)
    turns = {tokens[left].low, tokens[right].low}
    item = _subject(found, lookup)
    if turns == {"up", "down"} and item is not None and is_raised(item.arg, lookup):
        return _anew(found, dropped, "May the {} be worn", lookup)  # a hood that is up is on
    side = turns == {"left", "right"}
    dropped.update(_beside(found, left, right, item))
    return _anew(found, dropped, "Where is the {} worn" if side else _manner(found, lookup), lookup)


def _beside(found: Understood, left: int, right: int, item: Piece | None) -> Iterator[int]:
    """ "The strip on the coat: above the tab or under it": what the item is on, and is above or under."""
    pieces, tokens = found.pieces, found.tokens
    if item is None or right + 1 >= len(tokens) or tokens[right + 1].low not in ("it", "them"):
        return
    for place in range(1, len(pieces)):
        before = place - 1
        while before and pieces[before].tag in ("det", "poss"):
            before -= 1
        led = pieces[before].tag == "on" or pieces[before].last == left + 1
        if pieces[place].tag in ("item", "items") and pieces[place] is not item and led:
            yield place


def is_raised(item: str, lookup: Lookup) -> bool:
    return tokenize(lookup.items[item].label.partition(" of ")[0])[-1].key in RAISED


def _is_side(found: Understood, piece: Piece) -> bool:
    """ "On the left or right arm": what the sides are of."""
    return piece.tag == "unknown" and found.tokens[piece.first].low in _SIDED


def _subject(found: Understood, lookup: Lookup) -> Piece | None:
    """The first item named, or the whole after "of" where the books know no such part of it."""
    items = [(place, piece) for place, piece in enumerate(found.pieces) if piece.tag == "item"]
    if len(items) > 1 and "of" in {p.tag for p in found.pieces[items[0][0] : items[1][0]]}:
        part, whole = items[0][1].arg, items[1][1].arg
        return items[0][1] if lookup.items[part].part_of in lookup.broader(whole) else items[1][1]
    return items[0][1] if items else None


def _manner(found: Understood, lookup: Lookup) -> str:
    """How to ask for the way an item is worn: by the one aspect in which its rules say it, if it is one."""
    item = _subject(found, lookup)
    spoken = {aspect for aspect, _ in _ways_of(item.arg, lookup)} if item is not None else set()
    if len(spoken) == 1:
        (aspect,) = spoken
        if lookup.aspects[aspect].kind == "position":
            return "Where is the {} worn"
        return f"What must the {lookup.aspects[aspect].label} of the {{}} be"
    return "How is the {} worn"


def _ways_of(item: str, lookup: Lookup) -> Iterator[tuple[str, str]]:
    """The aspects in which rules say how an item is worn, each with the rule's words."""
    for rule in lookup.base.rules:
        if item in rule.scope.items:
            aspect = lookup.aspects[rule.aspect]
            within = lookup.aspects[aspect.within] if aspect.within else aspect
            if within.kind == "position" or (within.kind == "manner" and within.id in ("fit", "fastening")):
                yield within.id, aspect.label


def _anew(
    found: Understood, dropped: set[int], form: str, lookup: Lookup, bearer: str | None = None
) -> str | None:
    """The form with the item, and the facts said beside it; None where other words are left."""
    pieces = found.pieces
    subject = _subject(found, lookup)
    item = subject.arg if subject is not None else bearer
    if item is None:
        return None
    ways = {token.key for _, label in _ways_of(item, lookup) for token in tokenize(label)}
    said = []
    for index, piece in enumerate(pieces):
        if index in dropped or piece is subject or piece.tag in (*_LIGHT, "of"):
            continue
        lead = pieces[index - 1] if index else None
        if piece.tag in ("fact", "on date", "day"):
            led = lead is not None and lead.tag in _LEADS
            said.append(_text(found, lead.first if lead is not None and led else piece.first, piece.last))
        elif piece.tag == "item":
            if "feature" not in lookup.broader(piece.arg):
                said.append("with the " + _text(found, piece.first, piece.last))
        elif piece.tag == "items":
            if found.tokens[piece.first].key not in ways:
                return None
        elif piece.tag in _LEADS or (piece.tag == "act" and piece.arg in ("wear", "use")):
            continue
        elif found.tokens[piece.first].low not in _TURNED:
            return None
    asked = form if subject is None else form.format(_text(found, subject.first, subject.last))
    return ", ".join([asked, *said]) + "?"


def _text(found: Understood, first: int, last: int) -> str:
    return found.text[found.tokens[first].start : found.tokens[last - 1].end]
