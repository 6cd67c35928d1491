"""Which thing a measure is asked of: the only one of several that is measured, or a part of the one named."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query
from kb.reader.pieces import Piece


def measured_item(piece: Piece, aspect: str, lookup: Lookup) -> Piece | None:
    """ "How long may nails be": the one thing that the word may mean of which a rule says how long it is."""
    wanted = set(lookup.aspects_within(aspect)) if aspect in lookup.aspects else set()
    wanted = {a for a in wanted if lookup.aspects[a].kind == "measure"}
    found = [entry for entry in piece.entries if wanted & _spoken(entry.id, lookup)]
    others = [entry for entry in piece.entries if entry not in found]
    parts = [part for other in others for part in _parts(other.id, lookup)]
    if any(_is_measure(aspect, lookup) for part in parts for aspect in _spoken(part, lookup)):
        return None  # "how high is the cap" may be of its band
    return Piece(
        first=piece.first, last=piece.last, tag="item", arg=found[0].id, entries=tuple(found), how=piece.how
    ) if len(found) == 1 < len(piece.entries) else None  # fmt: skip


def ask_part(query: Query, lookup: Lookup) -> Ask | None:
    """ "How long is the coat", where the rules measure no coat but its hem and its cuff: which is meant."""
    item = query.items[0]
    if _spoken(item, lookup).intersection(lookup.aspects_within(query.aspect)):
        return None
    parts = [p for p in _parts(item, lookup) if any(_is_measure(a, lookup) for a in _spoken(p, lookup))]
    choices = tuple((part, lookup.items[part].label) for part in parts)
    return Ask(fact="item", prompt="Which part of it is meant?", choices=choices) if choices else None


def _parts(item: str, lookup: Lookup) -> list[str]:
    return [part.id for part in lookup.base.items if part.part_of == item]


def _is_measure(aspect: str, lookup: Lookup) -> bool:
    return lookup.aspects[aspect].kind == "measure"


def _spoken(item: str, lookup: Lookup) -> set[str]:
    """Aspects about which a rule speaks for an item, what it is a kind of, or its kinds."""
    related = {*lookup.broader(item), *lookup.narrower(item)}
    return {rule.aspect for rule in lookup.base.rules if related.intersection(rule.scope.items)}
