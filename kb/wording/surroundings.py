"""Everyday places that are under a roof, and those that are not; facts that the time of day tells.

Of others (a deck, a platform, a stand) either may be so.
"""

from __future__ import annotations

from collections.abc import Iterable

from kb.model.records import Fact

ROOMS = """
office canteen classroom kitchen corridor hallway library museum shop hotel restaurant cafe pub bar cinema
theatre hospital church chapel cathedral school gym gymnasium warehouse garage shed barn hangar lobby foyer
bathroom toilet bedroom dormitory dorm lounge basement cellar attic auditorium supermarket bank courtroom
cloakroom cafeteria bar room hall building house mess laboratory lab studio workshop store storeroom lift
staircase stairwell ballroom boardroom gallery nursery surgery clinic court town_hall village_hall pavilion
"""
OPEN_AIR = """
street yard courtyard garden field park lawn meadow playground car_park pavement square pitch forest woods
wood beach quay terrace patio churchyard countryside alley lane market_place
"""
_MORE_ROOMS = frozenset(
    {"hut", "boathouse", "ward", "scullery", "larder", "pantry", "showers", "laundry", "stores"}
)
_MORE_OPEN = frozenset({"slipway", "roadside", "road", "footpath", "pier", "jetty", "carriageway", "fell"})
_BOTH = frozenset({"court", "bar", "gallery", "store", "bank", "square"})
"""Words of more than one kind of place: a court to play on, a bar of sand."""
_PARTS = frozenset({"floor"})
_FORKED = frozenset(
    {"between", "and", "or", "outside", "near", "past", "beyond", "above", "to", "from", "of"}
)


def is_under_a_roof(labels: Iterable[str]) -> bool | None:
    """Whether places by their names ("in the library", "on the lawn") are all indoors, or all outdoors."""
    found = {_is_room(label.casefold().split()) for label in labels}
    return found.pop() if len(found) == 1 else None


def _is_room(words: list[str]) -> bool | None:
    if not words or not _FORKED.isdisjoint(words):
        return None
    noun = words[-2] if words[-1] in _PARTS and len(words) > 1 else words[-1]
    if noun in _MORE_ROOMS or (noun in ROOMS.split() and noun not in _BOTH):
        return True
    return False if noun in _MORE_OPEN or (noun in OPEN_AIR.split() and noun not in _BOTH) else None


def is_of_light(fact: Fact) -> bool:
    """Whether a fact may be told by the time of day."""
    names = [n for one in (fact, *fact.values) for n in (one.label, *one.other_labels)]
    return any(word in _LIGHT for name in names for word in name.casefold().split())


_LIGHT = frozenset(
    {"dark", "darkness", "night", "day", "daylight", "light", "twilight", "dusk", "dawn", "hours"}
)
