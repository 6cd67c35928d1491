"""Questions about clauses: what one says, and which of them speak of an item."""

from __future__ import annotations

from collections.abc import Sequence

from kb.answer.beside import ended_note
from kb.answer.common import citation, replaced
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Verdict
from kb.model.records import Rule
from kb.reasoner import Engine
from kb.wording import say_sources


def source_answer(engine: Engine, query: Query, blank: Answer) -> Answer:
    """The clause itself, or the clauses that speak of an item, in all books or in the one that is named."""
    lookup = engine.lookup
    if query.clause is not None:
        rules = tuple(rule.id for rule in lookup.base.rules if rule.clause == query.clause)
        found = [citation(lookup, query.clause, rules)]
    else:
        named: dict[str, list[str]] = {}
        wanted = set(lookup.narrower(query.items[0])) if query.items else set()
        wide = set(_wider_rules(engine, query))
        for rule in lookup.base.rules:
            if query.book not in (None, *_books_of(lookup, rule)):
                continue
            spoken = wanted & set(rule.scope.items)
            in_force = query.book in lookup.editions or (
                spoken and rule.id in engine.group(rule.scope.items[0], rule.aspect).rules
            )
            if rule.id in wide or (spoken and in_force):
                named.setdefault(rule.clause, []).append(rule.id)
        found = [citation(lookup, clause, tuple(rules)) for clause, rules in named.items()]
    headline = say_sources(lookup, query, [(entry.title, entry.number) for entry in found])
    verdict: Verdict | None = None if found else "silent"
    ended = (ended_note(engine, lookup.clauses[query.clause]),) if query.clause is not None else ()
    notes = tuple(note for note in ended if note)
    return replaced(
        blank, outcome="answer", headline=headline, citations=tuple(found), verdict=verdict, notes=notes
    )


def _books_of(lookup: Lookup, rule: Rule) -> tuple[str, str]:
    """The book and the edition that a rule stands in."""
    edition = lookup.clauses[rule.clause].edition
    return lookup.editions[edition].book, edition


def _wider_rules(engine: Engine, query: Query) -> Sequence[str]:
    """Rules on a class of things that cover the item, but those that only close what nothing mentions."""
    if not query.items:
        return ()
    rules = engine.group(query.items[0], query.aspect).rules if query.aspect == "wear" else ()
    return [rule for rule in rules if not engine.lookup.rules[rule].residual]
