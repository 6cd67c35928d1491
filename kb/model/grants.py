"""What a list of dress in a rig takes for granted: that nothing has been granted which nobody mentioned."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from kb.model.lookup import Lookup
from kb.model.values import Choices, ValueSet


def ungranted(
    lookup: Lookup, aspect: str, items: Sequence[str], *stated: Collection[str]
) -> dict[str, ValueSet]:
    """Grants as not given, for a list of what is worn in a rig; nothing for other lists.

    `stated` are the facts that are stated of each case that is listed: a grant in any is left as it is.
    """
    rigs = {fact.id for fact in lookup.base.facts if fact.family == "rig"}
    if aspect != "wear" or items or any(rigs.isdisjoint(facts) for facts in stated):
        return {}
    return {
        fact.id: Choices(
            frozenset(value for value in lookup.order(fact.id) if value not in lookup.authorities)
        )
        for fact in lookup.base.facts
        if fact.family == "authorisation" and not any(fact.id in facts for facts in stated)
    }
