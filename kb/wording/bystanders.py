"""Who and what is out of the ordinary by the name it goes by: guests, and what stands near a machine.

Who asks what to wear is one of those whom the books are for, not a visitor, unless it is said; and nobody is
next to a running saw who does not say so.
"""

from __future__ import annotations

from functools import lru_cache

from kb.model.lookup import Lookup
from kb.model.values import Ranges, ValueSet
from kb.wording.labels import GRADE

_GUESTS = frozenset(
    {
        *("guest", "guests", "visitor", "visitors", "contractor", "contractors", "customer", "customers"),
        *("passenger", "passengers", "patient", "patients", "spectator", "spectators", "tourist", "tourists"),
    }
)


@lru_cache(maxsize=8)
def guests(lookup: Lookup) -> frozenset[str]:
    """The grades that are none of the service: those in a group of visitors, or called so themselves.

    None where that would be all of them.
    """
    record = lookup.facts.get(GRADE)
    if record is None:
        return frozenset()
    found = {value.id for value in record.values if _is_guest(value.label, *value.other_labels)}
    for group in lookup.base.groups:
        if group.fact == GRADE and _is_guest(group.label, *group.other_labels):
            found.update(group.members)
    return frozenset(found) if len(found) < len(record.values) else frozenset()


def _is_guest(*names: str) -> bool:
    """Whether the last word of a name says so: a "visitors' escort" is no visitor."""
    return any(name.casefold().split()[-1:] and name.casefold().split()[-1] in _GUESTS for name in names)


def is_far(lookup: Lookup, fact: str, values: ValueSet) -> bool:
    """Whether a fact is a distance with no upper bound: "more than 10 m from a running chainsaw"."""
    record = lookup.facts[fact]
    distance = record.kind == "quantity" and "distance" in record.label.casefold().split()
    return distance and isinstance(values, Ranges) and any(one.high is None for one in values.intervals)
