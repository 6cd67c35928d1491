"""What is worn at a place: "what goes on the left sleeve", "which badges are worn on the collar"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Position
from kb.reader.meaning.query import said_case
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set

_OPENING = tag_set("what, which, list, item, items")
_LIGHT = tag_set(
    "filler, comma, det, poss, of, on, in, for, be, do, can, may, must, should, have to, self, person"
)
_VERBS = word_set("go goes going sit sits belong belongs hang hangs wear worn come comes")
_SIDES = word_set("left right")
_BREAST = word_set("breast chest side")


def borne(found: Understood, roles: Roles, case: Case, lookup: Lookup) -> Query | None:
    """A list of what the rules place where the question says; None where it asks for no such thing."""
    pieces = [piece for piece in found.pieces if piece.tag not in ("filler", "comma")]
    head = next((i for i, piece in enumerate(pieces) if piece.tag in ("what", "which")), None)
    if head is None or any(piece.tag not in ("fact", *_LIGHT) for piece in pieces[:head]) or roles.clashing:
        return None
    sides: set[str] = set()
    kinds: list[Piece] = []
    places: list[Piece] = []
    for piece in pieces[head + 1 :]:
        lows = {token.low for token in found.tokens[piece.first : piece.last]}
        if piece.tag in ("item", "items"):
            (places if sides or _led(pieces, piece) else kinds).append(piece)
        elif lows & _SIDES:
            sides |= lows & _SIDES
        elif not _is_light(piece, lows):
            return None
    items = tuple(_at(places, sides, lookup)) if places or sides else ()
    if kinds:
        wanted = {entry.id for piece in kinds for entry in piece.entries}
        items = tuple(item for item in items if wanted.intersection(lookup.broader(item)))
    if not items or not (places or sides) or len(sides) > 1:
        return None
    said = said_case(case, roles, lookup)
    if len(items) == 1:
        return Query(kind="where", items=items, aspect="position", case=said)
    return Query(kind="list", items=items, case=said, modalities=("required", "permitted"))


def on_it(query: Query, found: Understood, roles: Roles, case: Case, lookup: Lookup) -> Query | None:
    """ "What do officers wear on the slide?": what the rules place there, and not the slide itself."""
    lows = [token.low for token in found.tokens]
    if query.kind not in ("may", "must") or len(query.items) != 1 or "on" not in lows:
        return None
    if not {"what", "which"}.intersection(lows[:3]):
        return None
    placed = borne(found, roles, case, lookup)
    return placed if placed is not None and query.items[0] not in placed.items else None


def _led(pieces: Sequence[Piece], piece: Piece) -> bool:
    """Whether "on" leads to an item."""
    before = pieces.index(piece) - 1
    while before >= 0 and pieces[before].tag in ("det", "poss"):
        before -= 1
    return before >= 0 and pieces[before].tag in ("on", "of", "above", "below", "in")


def _is_light(piece: Piece, lows: set[str]) -> bool:
    plain = (
        piece.tag in _LIGHT or piece.tag == "fact" or (piece.tag == "act" and piece.arg in ("wear", "use"))
    )
    return plain or bool(lows & (_VERBS | _BREAST))


def _at(places: Sequence[Piece], sides: set[str], lookup: Lookup) -> Iterator[str]:
    """The items with a rule that places them on all that was named, on that side."""
    named = [{entry.id for entry in piece.entries} for piece in places]
    found: dict[str, None] = {}
    for rule in lookup.base.rules:
        if any(_fits(position, named, sides) for position in rule.value.positions):
            found |= dict.fromkeys(rule.scope.items)
    yield from found


def _fits(position: Position, named: Sequence[set[str]], sides: set[str]) -> bool:
    at = {position.on, position.feature}
    return all(at & place for place in named) and (not sides or position.side in (*sides, "both"))
