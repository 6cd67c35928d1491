"""Places named beside an item: "do I put the device on my cap", "where on the cap does the device go".

A garment on which some rule places the item says which garment is worn; any other place is asked about.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.reader.meaning.fits import rules_of_aspect, wearing
from kb.reader.meaning.measured import rule_aspects
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece
from kb.text import Pattern

_ITEMS = ("item", "items")


def carriers(item: str, lookup: Lookup) -> frozenset[str]:
    """The garments and parts of garments on which rules place an item, or a kind of it."""
    related = {*lookup.broader(item), *lookup.narrower(item)}
    found: set[str] = set()
    for rule in lookup.rules_on(related):
        if rule.modality != "must_not":
            for position in rule.value.positions:
                found.add(position.on)
                found.update(() if position.feature is None else (position.feature,))
    return frozenset(found)


def placed_on(before: Query, roles: Roles, lookup: Lookup) -> bool:
    """Whether what "on the smock" names may be where the item of the question before is worn."""
    if before.kind == "where" or not before.items or not roles.asked:
        return before.kind == "where"
    named = [piece.arg for piece in roles.asked]
    if lookup.aspects[before.aspect].kind == "measure" and len(named) == 1:
        return not any(rules_of_aspect(named, before.aspect, lookup))
    if "garment" not in lookup.broader(before.items[0]):  # of a badge it is asked, not of what it is on
        return all("garment" in lookup.broader(item) for item in named if item)
    on = carriers(before.items[0], lookup)
    return all(on & {item, *lookup.narrower(item)} for item in named)


def off_its_places(query: Query, garments: Sequence[str], lookup: Lookup) -> bool:
    """Whether a thing is asked of on garments on which no rule places it, though rules place it elsewhere."""
    on = carriers(query.items[0], lookup) if query.items else frozenset()
    known = {kind for item in garments for kind in (*lookup.broader(item), *lookup.narrower(item))}
    acts = query.kind in ("may", "must") and query.aspect == wearing(query.items, lookup)
    return acts and bool(on) and not on & known


def settle_places(roles: Roles, lookup: Lookup) -> None:
    """Ambiguous names of an item and of where it goes, each settled by the other where rules leave one."""
    places = [piece for piece in roles.placing if piece.tag in _ITEMS]
    if not places or len(roles.asked) != 1:
        return
    asked = roles.asked[0]
    if asked.tag == "items":
        entries = [e for e in asked.entries if all(fitting(place, e.id, lookup) for place in places)]
        if len(entries) == 1 and all(_share(place, entries[0].id, lookup) for place in places):
            roles.asked[0] = asked = _settled(asked, entries[0].id)
    if asked.tag == "item":
        for index, piece in enumerate(roles.placing):
            found = list(fitting(piece, asked.arg, lookup)) if piece.tag == "items" else []
            if len(found) == 1:
                roles.placing[index] = _settled(piece, found[0])


def _share(place: Piece, item: str, lookup: Lookup) -> bool:
    """Whether the label of an item has a word of a place: the cap device goes on the cap."""
    words = set(lookup.items[item].label.casefold().split())
    return any(words & set(lookup.items[entry.id].label.casefold().split()) for entry in place.entries)


def fitting(place: Piece, item: str, lookup: Lookup) -> tuple[str, ...]:
    """What a place may mean, of that on which rules place an item."""
    on = carriers(item, lookup)
    return tuple(
        entry.id
        for entry in place.entries
        if _owner(entry.id, lookup) in on or not on.isdisjoint(lookup.narrower(entry.id))
    )


def _owner(item: str, lookup: Lookup) -> str:
    return lookup.items[item].part_of or ""


def garments_named(roles: Roles, lookup: Lookup) -> list[str]:
    """The items of a claimed place that are worn, not parts of something worn."""
    return [p.arg for p in roles.placing if p.tag == "item" and "feature" not in lookup.broader(p.arg)]


def worn_at_places(roles: Roles, lookup: Lookup) -> list[str]:
    """What is worn where a thing is said to be: the garments named, and those that a part named is of."""
    places = [p.arg for p in roles.placing if p.tag == "item"]
    wholes = [lookup.items[place].part_of or "" for place in places]
    return garments_named(roles, lookup) + [one for one in wholes if f"worn:{one}" in lookup.facts]


def only_garments(roles: Roles, lookup: Lookup) -> bool:
    """Whether the place is no more than "on" a garment."""
    items = [piece for piece in roles.placing if piece.tag in ("item", "items")]
    return all(p.tag in ("item", "on") for p in roles.placing) and len(items) == len(
        garments_named(roles, lookup)
    )


def on_its_whole(query: Query, roles: Roles, lookup: Lookup) -> bool:
    """ "Must the collar be hooked on the tunic?": whether a thing is said to be on what it is a part of."""
    whole = _owner(query.items[0], lookup)
    if not whole or query.kind == "where" or query.aspect == "position":
        return False
    kin = {*lookup.broader(whole), *lookup.narrower(whole)}
    return all(piece.tag == "on" or (piece.tag == "item" and piece.arg in kin) for piece in roles.placing)


def _settled(piece: Piece, item: str) -> Piece:
    entries = tuple(entry for entry in piece.entries if entry.id == item)
    return msgspec.structs.replace(piece, tag="item", arg=item, entries=entries)


def is_where_it_goes(query: Query, roles: Roles, lookup: Lookup) -> bool:
    """Whether the places named are garments on which rules place the one item, or for "where" their parts."""
    if len(query.items) != 1 or any(piece.tag not in ("item", "on") for piece in roles.placing):
        return False
    if query.kind in ("may", "must"):
        parts = any("feature" in lookup.broader(item) for item in _named(roles))
        amount = query.value is not None and lookup.aspects[query.aspect].kind in ("measure", "count")
        if parts or not (amount or (query.aspect == "wear" and query.value is None)):
            return False
    elif query.kind != "where":
        return False
    item, go_with = query.items[0], query.kind in ("may", "must")
    if go_with and _is_put_anywhere(item, lookup):
        return all(piece.tag == "on" or "garment" in lookup.broader(piece.arg) for piece in roles.placing)
    return all(
        fitting(piece, item, lookup)
        or _owner(item, lookup) == piece.arg
        or (go_with and not carriers(item, lookup) and _tells(item, piece.arg, lookup))
        for piece in roles.placing
        if piece.tag == "item"
    )


def _is_put_anywhere(item: str, lookup: Lookup) -> bool:
    """Whether rules say when a thing is worn and nothing of how or where: "keys on the belt" go with it."""
    return all(
        lookup.aspects[aspect].kind == "act" and lookup.aspects[aspect].within is None
        for aspect in rule_aspects(item, lookup)
    )


def is_count_on(query: Query, roles: Roles, lookup: Lookup) -> bool:
    """ "Three pins on the coat": a number of things on what rules put them on, or that no rule places."""
    if query.value is None or lookup.aspects[query.aspect].kind != "count":
        return False
    places = [piece for piece in roles.placing if piece.tag in _ITEMS]
    on = carriers(query.items[0], lookup)
    return all(p.tag == "item" and (not on or fitting(p, query.items[0], lookup)) for p in places)


def _tells(item: str, garment: str, lookup: Lookup) -> bool:
    """Whether a rule on wearing a thing turns on whether the garment is worn: the hood goes on the coat."""
    worn = f"worn:{garment}"
    rules = (r for r in lookup.rules_on((item,)) if r.aspect == "wear")
    return any(test.fact == worn for rule in rules for test in tests(rule.condition))


def _named(roles: Roles) -> Iterator[str]:
    yield from (piece.arg for piece in roles.placing if piece.tag == "item")


_PLACE = Pattern(
    r"(?i)\b(?:left|right|breast|chest|sleeves?|shoulders?|lapels?|collar|wrist|pocket|centred|centered|round)\b"
)


def told_where(query: Query, lookup: Lookup) -> Query:
    """Where something is worn, of which no rule says so: the one clause on it that speaks of its place."""
    if query.kind != "where" or not query.items or query.aspect != "position":
        return query
    item = query.items[0]
    within = {lookup.aspects[aspect].within or aspect for aspect in rule_aspects(item, lookup)}
    if any(lookup.aspects[aspect].kind in ("position", "manner") and aspect != "care" for aspect in within):
        return query
    clauses = dict.fromkeys(rule.clause for rule in lookup.rules_on((item,)))
    names = [one.casefold() for one in (lookup.items[item].label, *lookup.items[item].other_labels)]
    names = names if len(clauses) > 1 else [""]
    told = [clause for clause in clauses if _is_placed(names, lookup.clauses[clause].text)]
    return Query(kind="source", clause=told[0], case=query.case) if len(told) == 1 else query


def _is_placed(names: Sequence[str], text: str) -> bool:
    """Whether a sentence that names a thing speaks of a place; one of another thing says nothing of it."""
    parts = (part.casefold() for part in text.split(". "))
    return any(_PLACE.search(part) and any(name in part for name in names) for part in parts)


_UPPER = ("over ", "on top of ")
_COMPANY = (*_UPPER, "under ", "beneath ", "underneath ", "inside ")


def is_choice_of_company(aspect: str, item: str, lookup: Lookup) -> bool:
    """Whether "the cap under the helmet" asks if the cap may be worn: rules only let it be, and so."""
    if not lookup.aspects[aspect].label.casefold().startswith(_COMPANY):
        return False
    related = set(lookup.broader(item))
    rules = lookup.rules_on(related)
    if within := lookup.aspects[aspect].within:
        ways = (lookup.aspects[one] for one in {rule.aspect for rule in rules} - {aspect})
        others = [way.label.casefold() for way in ways if way.within == within]
        upper = lookup.aspects[aspect].label.casefold().startswith(_UPPER)
        if any(one.startswith(_COMPANY) and one.startswith(_UPPER) != upper for one in others):
            return False  # "the body warmer over the boiler suit", which a rule has under it
    worn = [r for r in rules if r.aspect == "wear"]
    return any(rule.modality == "may" for rule in worn) and all(rule.modality != "must" for rule in worn)


def is_one_of_two(pieces: Sequence[Piece], subject: Piece) -> bool:
    """ "A pin and a flower on my jumper": what is asked is of both at once."""
    row = [piece for piece in pieces if piece.tag not in ("det", "poss")]
    return any(
        one.tag in _THINGS and both.tag == "and" and other.tag in _THINGS and subject in (one, other)
        for one, both, other in zip(row, row[1:], row[2:], strict=False)
    )


_THINGS = ("item", "items")
