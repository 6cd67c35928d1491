"""The words of the books: facts that no rule uses, clauses without rules, labels that fit two items."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator

from kb.audit.findings import Finding
from kb.audit.law import giving_clauses
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Clause, Item, is_in_force
from kb.text import slug
from kb.wording import clause_reference, item_label
from kb.wording.english import plural

_ALWAYS_THERE = frozenset({"grade", "branch", "rig", "worn"})


def unused_facts(lookup: Lookup) -> Iterator[Finding]:
    """Facts that no rule of any edition tests, be it through a defined term that a rule tests.

    One that is never together with a value of such a fact tells something of it, and so changes answers, too.
    """
    meanings: dict[str, set[str]] = {}
    for excluded in lookup.base.exclusions:
        together = {test.fact for test in tests(excluded)}
        for fact in together:
            meanings.setdefault(fact, set()).update(together)
    for definition in lookup.base.definitions:
        meanings.setdefault(definition.term, set()).update(t.fact for t in tests(definition.condition))
    used: set[str] = set()
    waiting = {test.fact for rule in lookup.base.rules for test in tests(rule.condition)}
    while waiting:
        fact = waiting.pop()
        if fact not in used:
            used.add(fact)
            waiting |= meanings.get(fact, set())
    for record in lookup.base.facts:
        if record.family not in _ALWAYS_THERE and record.id not in used and record.at.file != "built-in":
            yield Finding(
                at=record.at,
                code="unused-fact",
                severity="warning",
                message=f"No rule uses the {_kind(record.family)} “{record.label}”: it changes no answer.",
                suggestion="Use it in a rule's condition, or remove it.",
            )


def _kind(family: str) -> str:
    return {"situation": "fact", "term": "defined term"}.get(family, family)


def empty_clauses(lookup: Lookup, days: Iterable[datetime.date]) -> Iterator[Finding]:
    """Clauses in force that should hold rules and have none in force on any audited day."""
    spells = list(days)
    filled = {rule.clause for rule in lookup.base.rules if any(is_in_force(rule, day) for day in spells)}
    for clause in lookup.base.clauses:
        live = any(is_in_force(clause, day) for day in spells)
        if clause.kind == "rule" and live and clause.id not in filled and not _acts(lookup, clause):
            yield Finding(
                at=clause.at,
                code="clause-without-rules",
                severity="warning",
                clause=clause.id,
                reference=clause_reference(lookup, clause.id),
                message=f"{clause_reference(lookup, clause.id)} is in force, but no rule of it is.",
                suggestion="Write its rules, or say what kind of clause it is.",
            )


def _acts(lookup: Lookup, clause: Clause) -> bool:
    """Whether a clause does something without rules: it amends, delegates, defines or gives a tolerance."""
    giving = clause.id in giving_clauses(lookup.base)
    stating = any(tolerance.clause == clause.id for tolerance in lookup.base.tolerances)
    return giving or stating or bool(clause.replaces or clause.repeals)


def shared_labels(lookup: Lookup) -> Iterator[Finding]:
    """Labels that fit two items but for case, hyphens and number; exact repeats are errors at load.

    A label that is also an everyday word of an unrelated item is a note: the label wins.
    """
    items = [item for item in lookup.base.items if item.at.file != "built-in"]
    by_key: dict[str, dict[str, str]] = {}
    for item in items:
        for label in (item.label, *item.other_labels):
            by_key.setdefault(_key(label), {}).setdefault(item.id, label)
    for owners in by_key.values():
        names = list(owners)
        for later in names[1:]:
            yield _shared(lookup.items[names[0]], lookup.items[later], owners[names[0]], owners[later])
    for item in items:
        for word in item.everyday:
            for owner in by_key.get(_key(word), {}):
                related = owner in lookup.broader(item.id) or item.id in lookup.broader(owner)
                if not related and owner != item.id:
                    yield _everyday(lookup, item, owner, word)


def _key(label: str) -> str:
    """A label without case, hyphens, articles and number: "The Deck-Gloves" and "deck glove" are one."""
    words = slug(label).split("-")
    kept = words[1:] if len(words) > 1 and words[0] in ("the", "a", "an") else words
    return "".join(plural(" ".join(kept)).split())


def _shared(first: Item, later: Item, one: str, other: str) -> Finding:
    names = f"“{first.label}” and “{later.label}”"
    return Finding(
        at=later.at,
        code="shared-label",
        severity="warning",
        message=f"The labels “{one}” and “{other}” read alike, but are of two items, {names}.",
        suggestion="Make one of the labels tell them apart, or make it an everyday word of both.",
    )


def _everyday(lookup: Lookup, item: Item, owner: str, word: str) -> Finding:
    return Finding(
        at=item.at,
        code="shared-label",
        severity="note",
        message=f"The everyday word “{word}” of “{item.label}” is a label of “{item_label(lookup, owner)}”, "
        "so it is never asked back which is meant.",
        suggestion="Make it an everyday word of both, or leave it out here.",
    )
