"""Places on a garment in words."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.lookup import Lookup
from kb.model.records import Position
from kb.wording.english import listing
from kb.wording.labels import the_item
from kb.wording.quantities import say_measure

FEATURE = "feature"
_SIDES = {"left": "on the left side", "right": "on the right side", "both": "on both sides"}


def say_position(lookup: Lookup, position: Position) -> str:
    """ "centred above the visor of the cap, on the left side, about 1 1/4 in (31.75 mm) from ... to ..."."""
    if position.text:
        return position.text
    place = the_item(lookup, position.on)
    if position.feature is not None:
        feature = the_item(lookup, position.feature)
        part = lookup.items[position.feature].part_of
        owned = part is not None and part in lookup.broader(position.on)
        link = "of" if owned or FEATURE in lookup.broader(position.feature) else "on"
        place = feature if _says_whose(feature, position.on, lookup) else f"{feature} {link} {place}"
    points = [f"{position.relation} {place}"]
    if position.side:
        points.append(_SIDES.get(position.side, f"on the {position.side} side"))
    if position.offset is not None:
        points.append(say_measure(position.offset))
    if position.orientation:
        points.append(position.orientation)
    if position.slot:
        points.append(f"in the {position.slot} place")
    return ", ".join(points)


def _says_whose(feature: str, item: str, lookup: Lookup) -> bool:
    """Whether a part is called by what it is of, in any of its names: "the breast pocket of the blazer"."""
    names = (lookup.items[item].label, *lookup.items[item].other_labels)
    return the_item(lookup, item) in feature or any(feature.endswith(f" of the {name}") for name in names)


def say_positions(lookup: Lookup, positions: tuple[Position, ...]) -> str:
    """Alternative places, joined by "or"."""
    return say_places([say_position(lookup, position) for position in positions])


def say_places(said: Sequence[str]) -> str:
    """Places in words, joined by "or" so that it is clear where one ends."""
    if len(said) < 2:
        return "".join(said)
    if not any("," in place for place in said):
        return f"either {listing(said, 'or')}"
    return f"in one of these places: {'; '.join(said[:-1])}; or {said[-1]}"


def grouped_places(said: Sequence[str]) -> list[str]:
    """Places that differ in the garment alone as one: "on the smock or the coat, on the left side"."""
    groups: dict[tuple[str, str], list[str]] = {}
    for place in said:
        head, comma, rest = place.partition(",")
        led, the, garment = head.rpartition(" the ")
        groups.setdefault((led, comma + rest), []).append(f"{the}{garment}".strip())
    return [
        f"{led} {garments[0] if len(garments) == 1 else listing(garments, 'or')}{rest}".strip()
        for (led, rest), garments in groups.items()
    ]
