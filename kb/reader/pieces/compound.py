"""Two items in a row that are one thing: "the day shirt sleeves"; the class that several items make; what is
owned, and not worn."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece


def part_or_whole(roles: Roles, aspect: str, lookup: Lookup) -> None:
    """A part that anything may have, said after its whole: asked about is the one that the rules speak of."""
    if roles.measure_unit:
        _measured_part(roles, lookup)
    if roles.crowded is None:
        return
    whole, part = roles.crowded
    if len(part.entries) != 1 or not _is_any_part(part.entries[0].id, lookup):
        return
    of_part = _spoken(part.entries[0].id, aspect, lookup)
    if not of_part and not (whole.tag == "item" and _spoken(whole.arg, aspect, lookup)):
        return
    kept, other = (part, whole) if of_part else (whole, part)
    sided = not {"left", "right"}.isdisjoint(lookup.items[part.entries[0].id].label.casefold().split())
    if kept is whole and sided:
        return  # "unit badge right sleeve": where it is worn is not passed over
    for pieces in (roles.asked, roles.worn, roles.unworn):
        if other in pieces and kept in pieces:
            pieces.remove(other)
            roles.crowded = None
    if roles.crowded is None and kept is part and whole.tag == "item":
        roles.worn.append(whole)


def _measured_part(roles: Roles, lookup: Lookup) -> None:
    """ "A knife with a 7 cm blade": the measure is of what rules measure; the other is asked about, too."""
    measured = [p for p in roles.worn if p.tag == "item" and _spoken(p.arg, "size", lookup)]
    if len(measured) != 1 or any(_spoken(e.id, "size", lookup) for p in roles.asked for e in p.entries):
        return
    roles.worn = [piece for piece in roles.worn if piece not in measured]
    roles.asked, roles.counted = [*measured, *roles.asked], measured[0]


def _is_any_part(item: str, lookup: Lookup) -> bool:
    return "feature" in lookup.broader(item) and lookup.items[item].part_of is None


def _spoken(item: str, aspect: str, lookup: Lookup) -> bool:
    """Whether a rule speaks about the aspect of an item, what it is a kind of, or its kinds."""
    related = {*lookup.broader(item), *lookup.narrower(item)}
    wanted = {*lookup.aspects_within(aspect), aspect}
    return any(r.aspect in wanted for r in lookup.rules_on(related))


def counted_class(piece: Piece, lookup: Lookup) -> str | None:
    """The narrowest class that holds all that a word may mean and whose number a rule bounds: "coats"."""
    shared = _shared([lookup.broader(entry.id) for entry in piece.entries])
    counted = {item for r in lookup.base.rules if r.aspect == "count" for item in r.scope.items}
    found = [item for item in shared if item in counted]
    return min(found, key=lambda item: len(lookup.narrower(item)), default=None)


def _shared(paths: Sequence[Sequence[str]]) -> list[str]:
    return [item for item in paths[0] if all(item in path for path in paths[1:])]


def ranked_things(query: Query, lookup: Lookup) -> Query | Ask | Abstain:
    """ "What is the order of precedence": of what the books rank, where that is one thing."""
    ranked = dict.fromkeys(i for r in lookup.base.rules if r.aspect == query.aspect for i in r.scope.items)
    if len(ranked) == 1:
        return msgspec.structs.replace(query, items=tuple(ranked))
    if not ranked:
        return Abstain(reason="The books set no order of precedence.")
    choices = tuple((item, lookup.items[item].label) for item in ranked)
    return Ask(fact="item", prompt="The order of which things?", choices=choices)


def frees_owner(modalities: Sequence[str], items: Sequence[str], lookup: Lookup) -> bool:
    """ "Who is exempt from safety boots": whether rules free nobody from wearing it, but from owning it."""
    if "not_required" not in modalities or not items:
        return False
    freed = {r.aspect for r in lookup.rules_on((items[0],)) if r.modality == "need_not"}
    return "possession" in freed and lookup.use_of(items[0]) not in freed
