"""Which clauses took the place of others between two days, or ended them."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator

from kb.answer.citing import citation
from kb.answer.common import change_notes, replaced
from kb.model.altering import altered
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Difference, Query
from kb.model.records import Clause
from kb.reasoner import Engine
from kb.wording import clause_reference, listing, say_date, sentence


def clauses_behind(lookup: Lookup, book: str) -> frozenset[str]:
    """The clauses of a book or an edition, and those that they replace or end."""
    own = [c for c in lookup.base.clauses if book in (c.edition, lookup.editions[c.edition].book)]
    return frozenset(name for clause in own for name in (clause.id, *clause.replaces, *clause.repeals))


def amending(lookup: Lookup, query: Query, differences: Iterable[Difference]) -> tuple[Clause, ...]:
    """The clauses that began or ended between the two days of a comparison, other than with their edition.

    Where the comparison is of some things or circumstances, only those that bear on these or on what differs.
    """
    if query.other is None or query.other.as_of <= query.case.as_of:
        return ()
    touched = {lookup.rules[r].clause for one in differences for side in one.sides for r in side.rules}
    items = {near for item in query.items for near in lookup.narrower(item)}
    touched |= {rule.clause for rule in lookup.rules_on(items)}
    narrowed = bool(query.items or query.case.facts or query.book)
    behind = clauses_behind(lookup, query.book) if query.book else frozenset(lookup.clauses)

    def falls(day: datetime.date | None, whole: datetime.date | None) -> bool:
        first, last = query.case.as_of, query.other.as_of if query.other is not None else query.case.as_of
        return day is not None and day != whole and first < day <= last

    found = []
    for clause in lookup.base.clauses:
        edition = lookup.editions[clause.edition]
        begins = falls(clause.valid_from, None if altered(clause, lookup) else edition.valid_from)
        ends = clause.replaced_by is None and falls(clause.valid_until, edition.valid_until)
        near = not touched.isdisjoint((clause.id, *clause.replaces, *clause.repeals))
        if (begins or ends) and clause.id in behind and (near or not narrowed):
            found.append(clause)
    ended = {one for clause in found for one in clause.repeals}
    return tuple(clause for clause in found if clause.id not in ended)


def say_amending(lookup: Lookup, clause: Clause) -> Iterator[str]:
    """ "From 1 June 2026 Amendment (2026) 8.2 stands in place of Instructions (2025) 8.2."."""
    name, day = clause_reference(lookup, clause.id), say_date(clause.valid_from)
    if clause.replaces:
        old = listing([clause_reference(lookup, one) for one in clause.replaces])
        yield sentence(f"from {day} {name} stands in place of {old}")
    if clause.repeals:
        gone = [clause_reference(lookup, one) for one in clause.repeals]
        yield sentence(
            f"from {day} {listing(gone)} no longer {'hold' if len(gone) > 1 else 'holds'}, by {name}"
        )
    if not (clause.replaces or clause.repeals):
        last = f" until {say_date(clause.valid_until - _ONE_DAY)}" if clause.valid_until else ""
        yield sentence(f"{name} holds from {day}{last}")


_ONE_DAY = datetime.timedelta(days=1)
_MOST_SAID = 3


def with_amending(engine: Engine, query: Query, answer: Answer) -> Answer:
    """The comparison with the clauses behind it: which stands in place of which, since when, both cited."""
    lookup = engine.lookup
    clauses = amending(lookup, query, answer.differences)
    said = [text for clause in clauses for text in say_amending(lookup, clause)]
    cited = {found.clause for found in answer.citations}
    named = dict.fromkeys(
        one
        for clause in clauses
        for one in (*clause.replaces, *clause.repeals, clause.id)
        if one not in cited
    )
    more = tuple(
        citation(lookup, one, tuple(rule.id for rule in lookup.base.rules if rule.clause == one))
        for one in named
    )
    return replaced(
        answer,
        headline=" ".join((answer.headline, *said[:_MOST_SAID])),
        notes=(*said[_MOST_SAID:], *answer.notes, *_ahead(engine, query)),
        citations=(*answer.citations, *more),
    )


def _ahead(engine: Engine, query: Query) -> tuple[str, ...]:
    """What of the things asked about changes after the later day of a comparison of days."""
    if query.other is None or query.other.as_of <= query.case.as_of:
        return ()
    later = engine.on(query.other.as_of)
    return tuple(
        note for item in query.items for note in change_notes(later, item, tuple(engine.lookup.aspects))
    )
