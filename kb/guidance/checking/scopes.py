"""The things that a sentence is about: "the storm coat", "no outer garment other than the watch coat"."""

from __future__ import annotations

from typing import Literal

from kb.guidance.checking.names import Names
from kb.model.records import Modality, Scope
from kb.text import Pattern

_DETERMINERS = Pattern(
    r"(?:the|an?|any|his or her|his|her|their|your|my|its|every|each|all|a pair of|pairs of) "
)
_EITHER = Pattern(r"either (?P<items>.+)")
_ONE = Pattern(r"exactly one of (?P<items>.+)")
_ANY = Pattern(r"at least one of (?P<items>.+)")
_BOTH = Pattern(r"(?P<items>.+) or both")
_OTHER_THAN = Pattern(r",? (?:other than|except(?: for)?|apart from|save|but) ")
_LIST = Pattern(r", and |, or | and | or | nor |, ")


def read_scope(names: Names, text: str, modality: Modality, one: bool) -> tuple[Scope, bool] | None:
    """The scope, and whether the words deny ("no cap"); `one` says that "but not both" follows."""
    plain = text.strip(" ,")
    if not plain or len(plain) > 400:
        return None
    if one:
        items = read_items(names, plain.removeprefix("either ")) if " or " in plain else None
        return (Scope(items=items, alternatives="one"), False) if items and len(items) == 2 else None
    for pattern, meant in ((_ONE, "one"), (_ANY, "any"), (_BOTH, "any"), (_EITHER, "any")):
        match = pattern.fullmatch(plain)
        items = read_items(names, match["items"]) if match else None
        if items is not None and len(items) > 1:
            alternatives: Literal["one", "any"] = "one" if meant == "one" else "any"
            return Scope(items=items, alternatives=alternatives), False
    for start in ("neither ", "none of "):
        if plain.startswith(start):
            items = read_items(names, plain.removeprefix(start))
            return (Scope(items=items), True) if items is not None else None
    if plain.startswith(("no ", "nothing")):
        bare = plain.removeprefix("no ")
        bare = f"any{bare[2:]}" if bare.startswith("nothing") else bare
        found = _class(names, bare)
        items = None if found is not None else read_items(names, bare.replace(" or no ", " or "))
        found = Scope(items=items) if items is not None else found
        return (found, True) if found is not None else None
    found = _class(names, plain)
    if found is not None:
        return found, False
    items = read_items(names, plain)
    if items is None or (" or " in plain and modality == "must"):
        return None  # "the cap or the hat must be worn" leaves open whether both may be
    return Scope(items=items), False


def _class(names: Names, text: str) -> Scope | None:
    """One item, perhaps less some that are narrower."""
    mark = _OTHER_THAN.search(text)
    item = _item(names, text[: mark.start()] if mark else text)
    if item is None:
        return None
    if mark is None:
        return Scope(items=(item,))
    excluding = read_items(names, text[mark.end() :])
    return None if excluding is None else Scope(items=(item,), excluding=excluding)


def left_out(names: Names, scope: Scope, text: str) -> tuple[Scope, str] | None:
    """The scope less items that follow its verb, "(no cap may be worn) other than this", and the rest."""
    mark = _OTHER_THAN.match(f" {text}") if len(scope.items) == 1 and not scope.excluding else None
    words = text[mark.end() - 1 :].split(" ") if mark else []
    for cut in range(min(len(words), 60), 0, -1):
        excluding = read_items(names, " ".join(words[:cut]).rstrip(","))
        if excluding is not None:
            return Scope(items=scope.items, excluding=excluding), " ".join(words[cut:])
    return None


def _item(names: Names, text: str) -> str | None:
    found = names.item(text)
    if found is not None:
        return found
    article = _DETERMINERS.match(text)
    return names.item(text[article.end() :]) if article else None


def read_items(names: Names, text: str) -> tuple[str, ...] | None:
    """Every item of a list; None if one of them is not known."""
    whole = _item(names, text)
    if whole is not None:
        return (whole,)
    listed = text.removeprefix("both ") if " and " in text else text
    found = [_item(names, part.strip()) for part in _LIST.split(listed)]
    known = tuple(item for item in found if item is not None)
    return known if known and len(known) == len(found) else None
