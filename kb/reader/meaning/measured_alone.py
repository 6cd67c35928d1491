"""A measure asked for by its own name: "how high can the heel be" of the shoes whose heel is measured."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query
from kb.model.records import is_in_force
from kb.reader.meaning.narrowed import belongs
from kb.reader.pieces.parts import Roles


def measured_alone(query: Query, roles: Roles, lookup: Lookup) -> Query | Ask:
    """The question of the one thing that rules so measure, or that is worn where it is asked; else which."""
    aspect = next((one for one in (roles.measured, roles.aspect, query.aspect) if _is_own(one, lookup)), "")
    if query.kind != "how" or not aspect:
        return _WHICH
    day = query.case.as_of
    rules = [r for r in lookup.base.rules if r.aspect == aspect and r.value.measure and is_in_force(r, day)]
    items = list(dict.fromkeys(item for rule in rules for item in rule.scope.items))
    known = dict(query.case.facts)
    worn = [item for item in items if belongs(item, known, query.case, lookup)] if known else []
    meant = items if len(items) == 1 else worn
    if len(meant) == 1:
        return msgspec.structs.replace(query, aspect=aspect, items=(meant[0],))
    choices = tuple((item, lookup.items[item].label) for item in items)
    return Ask(fact="item", prompt="Which one is meant?", choices=choices) if items else _WHICH


_BUILT_IN = "built-in"
_WHICH = Ask(fact="item", prompt="Which item is asked about?")


def _is_own(aspect: str, lookup: Lookup) -> bool:
    """Whether an aspect is a measure that the books name, not a height or letters as all things may have."""
    record = lookup.aspects.get(aspect)
    if record is None or record.at.file == _BUILT_IN:
        return False
    return record.kind == "measure" and " of " in record.label
