"""The vocabulary that is part of every rule base."""

from __future__ import annotations

from kb.errors import Location
from kb.model.records import Aspect, AspectKind, Item

BUILT_IN = Location("built-in")

TOP = "anything"

_ITEMS = (
    (TOP, "anything", None),
    ("garment", "garment", TOP),
    ("feature", "feature of a garment", TOP),
    ("insignia", "insignia", TOP),
    ("accessory", "accessory", TOP),
    ("carried", "thing carried", TOP),
    ("grooming", "grooming", TOP),
)

ITEMS: tuple[Item, ...] = tuple(
    Item(id=name, label=label, at=BUILT_IN, broader=(broader,) if broader else ())
    for name, label, broader in _ITEMS
)


def _aspect(
    name: str,
    kind: AspectKind,
    label: str,
    within: str | None = None,
    verb: str | None = None,
    done: str | None = None,
) -> Aspect:
    return Aspect(id=name, label=label, at=BUILT_IN, kind=kind, within=within, verb=verb, done=done)


ASPECTS: tuple[Aspect, ...] = (
    _aspect("wear", "act", "wear", verb="wear", done="worn"),
    _aspect("possession", "act", "possession", verb="own", done="owned"),
    _aspect("carrying", "act", "carrying", verb="carry", done="carried"),
    _aspect("alteration", "act", "alteration", verb="alter", done="altered"),
    _aspect("piercing", "act", "piercing", verb="pierce", done="pierced"),
    _aspect("position", "position", "position"),
    _aspect("size", "measure", "size"),
    _aspect("height", "measure", "height", within="size"),
    _aspect("width", "measure", "width", within="size"),
    _aspect("length", "measure", "length", within="size"),
    _aspect("diameter", "measure", "diameter", within="size"),
    _aspect("letter-height", "measure", "height of the letters", within="size"),
    _aspect("fit", "manner", "fit"),
    _aspect("reach", "measure", "reach", within="fit"),
    _aspect("count", "count", "number worn"),
    _aspect("kit-count", "count", "number owned"),
    _aspect("colour", "choice", "colour"),
    _aspect("finish", "choice", "finish"),
    _aspect("construction", "manner", "construction"),
    _aspect("fastening", "manner", "fastening"),
    _aspect("care", "manner", "care"),
    _aspect("precedence", "order", "order of precedence"),
)

ASPECT_KINDS: tuple[AspectKind, ...] = ("act", "choice", "manner", "measure", "count", "position", "order")

PROTECTIONS = (
    "feet", "hands", "eyes", "head", "hearing", "body", "cold", "heat", "flame", "rain", "machinery",
    "visibility", "flotation", "fall", "breathing", "chemicals", "electricity",
)  # fmt: skip

RELATIONS = (
    "above", "below", "on", "at", "centred on", "centred above", "centred below", "beside", "left of",
    "right of", "inboard of", "outboard of", "flush with", "along", "around", "between",
)  # fmt: skip

SIDES = ("left", "right", "both")
