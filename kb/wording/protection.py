"""What things protect from, in words."""

from __future__ import annotations

from collections.abc import Mapping

from kb.model.lookup import Lookup
from kb.wording.english import is_plural, listing
from kb.wording.labels import item_label, the_items

_BODY = ("feet", "hands", "eyes", "head", "hearing", "body", "breathing")
_CALLED = {"breathing": "lungs"}
_AGAINST = {"machinery": "machinery", "fall": "falls", "flotation": "drowning"}


def say_protection(lookup: Lookup, protecting: Mapping[str, tuple[str, ...]]) -> str:
    """What each thing protects: "the cap protects against cold; the boots protect the feet"."""
    alike: dict[tuple[str, ...], list[str]] = {}
    for item, protects in protecting.items():
        alike.setdefault(protects, []).append(item)
    said = []
    for protects, items in alike.items():
        several = len(items) > 1 or is_plural(item_label(lookup, items[0]))
        verb = "protect" if several else "protects"
        said.append(f"{the_items(lookup, tuple(items))} {verb} {_whereof(protects)}")
    return "; ".join(said)


def _whereof(protects: tuple[str, ...]) -> str:
    """ "the hands, and against heat and flame"."""
    body = [f"the {_CALLED.get(part, part)}" for part in protects if part in _BODY]
    dangers = [_AGAINST.get(p, p) for p in protects if p not in _BODY and p != "visibility"]
    parts = [listing(body)] if body else []
    if dangers:
        parts.append(f"against {listing(dangers)}")
    if "visibility" in protects:
        parts.append("by being seen")
    return ", and ".join(parts)
