"""Which of several things a question may mean, by what the rules speak of: sleeves are rolled on a shirt."""

from __future__ import annotations

import msgspec

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query, Reading
from kb.reader.meaning.fits import rules_of_aspect

_HAVING = frozenset({"wear", "carrying", "possession"})
_PLAIN = ("may", "must")


def of_wholes(query: Query, lookup: Lookup) -> Query | Ask:
    """A question of what is done to a part that any garment may have, as one of the garments it is done to.

    No rule speaks of rolling sleeves, but some do of rolling shirts. Where rules of one of these alone rest
    on what is known, that one is meant; else it is asked which.
    """
    if query.kind not in _PLAIN or len(query.items) != 1 or not _is_done(query.aspect, lookup):
        return query
    (part,) = query.items
    loose = "feature" in lookup.broader(part) and lookup.items[part].part_of is None
    if not loose or any(rules_of_aspect(query.items, query.aspect, lookup)):
        return query
    spoken = _spoken_of(query.aspect, lookup)
    known = {fact for fact, _ in query.case.facts}
    fitting = [item for item, facts in spoken.items() if facts & known]
    worn = [item for item in spoken if f"worn:{item}" in known]
    meant = worn if len(worn) == 1 else fitting if len(fitting) == 1 else list(spoken)
    if len(meant) == 1:
        return msgspec.structs.replace(query, items=(meant[0],))
    if not meant:
        return query
    choices = tuple((item, lookup.items[item].label) for item in meant)
    return Ask(fact="item", prompt="Which one is meant?", choices=choices)


def part_meant(query: Query | None, previous: Reading, lookup: Lookup) -> str | None:
    """The part named before ("sleeves rolled?") whose size "how high" asks, where its whole has none."""
    if query is None or query.kind != "how" or previous.query is None or query.items != previous.query.items:
        return None
    if any(rules_of_aspect(query.items, query.aspect, lookup)):
        return None
    named = {span.target for span in previous.spans if span.role == "item" and span.target in lookup.items}
    parts = [item for item in named if item not in query.items and _is_measured(item, lookup)]
    return parts[0] if len(parts) == 1 else None


def _is_measured(item: str, lookup: Lookup) -> bool:
    return any(rule.value.measure is not None for rule in lookup.rules_on((item,)))


def _spoken_of(aspect: str, lookup: Lookup) -> dict[str, set[str]]:
    """The things on whose treatment rules speak, with the facts that these test."""
    within = set(lookup.aspects_within(aspect))
    found: dict[str, set[str]] = {}
    for rule in lookup.base.rules:
        if rule.aspect in within:
            for item in rule.scope.items:
                found.setdefault(item, set()).update(test.fact for test in tests(rule.condition))
    return found


def the_one_spoken_of(ask: Ask, aspect: str, lookup: Lookup) -> str | None:
    """The one of the offered things of which rules on what is done speak at all; None for wearing itself."""
    if ask.fact != "item" or len(ask.choices) < 2 or not _is_done(aspect, lookup):
        return None
    found = [item for item, _ in ask.choices if any(rules_of_aspect((item,), aspect, lookup))]
    return found[0] if len(found) == 1 else None


def _is_done(aspect: str, lookup: Lookup) -> bool:
    """Whether an aspect is something done to a thing, apart from having it on or owning it."""
    record = lookup.aspects.get(aspect)
    return record is not None and record.kind == "act" and aspect not in _HAVING and record.within is None
