"""How much a base holds."""

from __future__ import annotations

from kb.model.lookup import Lookup


def count_records(lookup: Lookup) -> tuple[tuple[str, int], ...]:
    """How many records of each kind a base has; items without the built-in ones."""
    base = lookup.base
    written = [item for item in base.items if item.at.file != "built-in"]
    return (
        ("books", len(base.books)),
        ("editions", len(base.editions)),
        ("clauses", len(base.clauses)),
        ("rules", len(base.rules)),
        ("items", len(written)),
        ("grades", len(lookup.order("grade")) if "grade" in lookup.facts else 0),
        ("rigs", len(lookup.order("rig")) if "rig" in lookup.facts else 0),
        ("facts", sum(1 for fact in base.facts if fact.family != "worn")),
    )
