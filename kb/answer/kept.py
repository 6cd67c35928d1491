"""Facts as bytes that can be kept, and facts again for as long as the books still have them."""

from __future__ import annotations

from typing import Any

import msgspec

from kb.answer.encode import encode_values
from kb.model.lookup import Lookup
from kb.model.values import Choices, ValueSet, is_empty, is_subset, subtract
from kb.plain import values_from_json
from kb.wording import is_place

_UNFIT = (AttributeError, IndexError, KeyError, RecursionError, TypeError, ValueError, ZeroDivisionError)


_LASTING = frozenset({"grade", "branch", "rig", "qualification", "appointment", "waiver"})


def lasting(facts: tuple[tuple[str, ValueSet], ...], lookup: Lookup) -> tuple[tuple[str, ValueSet], ...]:
    """The facts that hold on another day too: who somebody is, in what and where; not today's weather."""
    return tuple(
        (fact, values)
        for fact, values in facts
        if lookup.facts[fact].family in _LASTING or is_place(lookup, fact)
    )


def pack_facts(facts: tuple[tuple[str, ValueSet], ...]) -> bytes:
    """JSON: for each fact its values, in the form that a saved answer has them."""
    data = {fact: encode_values(values) for fact, values in facts}
    return msgspec.json.format(msgspec.json.encode(data), indent=2) + b"\n"


def unpack_facts(data: bytes, lookup: Lookup) -> tuple[tuple[tuple[str, ValueSet], ...], tuple[str, ...]]:
    """The facts that the books still know, and the names of those that they do not; never raises."""
    try:
        kept: Any = msgspec.json.decode(data)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError):
        return (), ()
    if not isinstance(kept, dict):
        return (), ()
    found = {fact: _values(fact, written, lookup) for fact, written in kept.items()}
    known = tuple((fact, values) for fact, values in found.items() if values is not None)
    return known, tuple(fact for fact, values in found.items() if values is None)


def _values(fact: str, written: Any, lookup: Lookup) -> ValueSet | None:
    if fact not in lookup.facts:
        return None
    try:
        values, domain = values_from_json(written), lookup.domain(fact)
        if isinstance(values, Choices) and values.complement:
            values = subtract(domain, Choices(values.members))
        fits = type(values) is type(domain) and not is_empty(values) and is_subset(values, domain)
    except _UNFIT:
        return None
    return values if fits else None
