"""Which senses of a word can be meant in a dress rule: those below a few broad senses, by the kind of item.

"Boot" is footwear and the luggage room of a car, "shoes" are worn and a situation one may stand in: only what
is worn, carried, sewn on or groomed comes into question. The ids are those of WordNet 3.0; each stands with
one of its words, which is compared on use, so that the ids of another release cannot be taken for these.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from kb.errors import UsageError
from kb.model.lookup import Lookup
from kb.suggesting.wordnet import INSTALL, Sense, WordNet

_Broad = tuple[tuple[str, str], ...]

_WORN: _Broad = (
    ("03051540-n", "clothing"),
    ("03380867-n", "footwear"),
    ("02784218-n", "band"),  # worn around the body: armband, garter, sash
    ("03724870-n", "mask"),
    ("03725035-n", "mask"),
    ("03261603-n", "earmuff"),
    ("03663531-n", "life preserver"),
)
_ADDED: _Broad = (
    ("02681518-n", "adornment"),
    ("03485794-n", "handkerchief"),
    ("03323703-n", "fastener"),
    ("03106110-n", "cord"),
)
_KINDS: Mapping[str, _Broad] = MappingProxyType(
    {
        "garment": _WORN,
        "feature": (
            *_WORN,
            *_ADDED,
            ("03050026-n", "cloth covering"),
            ("03357376-n", "flap"),
            ("02902079-n", "brim"),
            ("02838728-n", "peak"),
            ("02773037-n", "bag"),
        ),
        "accessory": (
            *_WORN,
            *_ADDED,
            ("03852280-n", "optical instrument"),
            ("04437953-n", "timepiece"),
            ("03274561-n", "electro-acoustic transducer"),
            ("03967942-n", "plug"),
            ("02773037-n", "bag"),
            ("07272172-n", "label"),
        ),
        "insignia": (
            ("06880664-n", "emblem"),
            ("03282591-n", "emblem"),
            ("06696483-n", "award"),
            ("02681518-n", "adornment"),
            ("02784218-n", "band"),
            ("07262942-n", "armband"),
            ("07272172-n", "label"),
        ),
        "carried": (
            ("03183080-n", "device"),
            ("03294048-n", "equipment"),
            ("03563967-n", "implement"),
            ("03094503-n", "container"),
            ("02951843-n", "canopy"),
            ("03485794-n", "handkerchief"),
            ("03106110-n", "cord"),
        ),
        "grooming": (
            ("05254795-n", "hair"),
            ("05581693-n", "nail"),
            ("04447443-n", "toiletry"),
            ("03169390-n", "decoration"),
            ("03940256-n", "pin"),
            ("03043958-n", "clip"),
            ("02784218-n", "band"),
        ),
    }
)
_EVERY: _Broad = tuple(dict.fromkeys(broad for kind in _KINDS.values() for broad in kind))
# What lies below one of these is driven, stands in a room, is fired, or is played with.
_NEVER: _Broad = (
    ("03100490-n", "conveyance"),
    ("03405265-n", "furnishing"),
    ("04565375-n", "weapon"),
    ("04285146-n", "sports equipment"),
    ("03414162-n", "game equipment"),
)


def plausible(item: str, senses: Iterable[Sense], lookup: Lookup, thesaurus: WordNet) -> tuple[Sense, ...]:
    """Those of the senses that the item may be, going by what it is a kind of; an item that is no kind of a
    built-in one may be anything of a dress rule. Raises `UsageError` if the thesaurus is another release.
    """
    tops = [kind for kind in lookup.broader(item) if kind in _KINDS]
    wanted = _ids(tuple(broad for top in tops for broad in _KINDS[top]) or _EVERY, thesaurus)
    never = _ids(_NEVER, thesaurus)
    return tuple(
        sense
        for sense in senses
        if not wanted.isdisjoint(lineage := thesaurus.lineage(sense.id)) and never.isdisjoint(lineage)
    )


def _ids(broad: _Broad, thesaurus: WordNet) -> frozenset[str]:
    for identifier, word in broad:
        if word not in thesaurus.sense(identifier).words:
            raise UsageError(
                f"{thesaurus.name} {thesaurus.version} is not the release that this program knows: its sense "
                f'{identifier} is not "{word}". Install it: {INSTALL}'
            )
    return frozenset(identifier for identifier, _ in broad)
