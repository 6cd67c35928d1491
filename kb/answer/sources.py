"""Questions about clauses: what one says, and which of them speak of an item."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.answer.beside import ended_note
from kb.answer.citing import citation
from kb.answer.common import replaced
from kb.keywords import analyse
from kb.model.altering import altered
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Citation, Query, Verdict
from kb.model.records import Rule, is_in_force
from kb.reasoner import Engine
from kb.text import Pattern
from kb.wording import listing, say_date, say_sources, the_item


def source_answer(engine: Engine, query: Query, blank: Answer) -> Answer:
    """The clause itself, or the clauses that speak of an item, in all books or in the one that is named."""
    lookup = engine.lookup
    if query.clause is not None:
        found = [_whole(lookup, one) for one in (query.clause, *_instead(engine, query.clause))]
    elif query.book is not None and not query.items:
        edition = _edition_of(engine, query.book)
        found = [_whole(lookup, clause.id) for clause in lookup.base.clauses if clause.edition == edition]
    elif query.polarity == "not":
        found = []  # how often a thing is replaced, or who pays for it, which no clause says
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
        for clause in _changing(lookup, query, wanted):
            named.setdefault(clause, [])
        found = [citation(lookup, clause, tuple(rules)) for clause, rules in named.items()]
    headline = say_sources(lookup, query, [(entry.title, entry.number) for entry in found])
    if query.clause is not None and len(found) == 1:
        headline += _since_of_it(engine, query, query.clause)
    if query.clause is not None and query.items and query.polarity == "not":
        said = f"Nobody may be let off {the_item(lookup, query.items[0])}: {headline}"
        headline = said if _WHO.search(blank.reading.question) else f"No. {said}"
    verdict: Verdict | None = None if found else "silent"
    ended = (ended_note(engine, lookup.clauses[query.clause]),) if query.clause is not None else ()
    notes = tuple(note for note in ended if note)
    return replaced(
        blank, outcome="answer", headline=headline, citations=tuple(found), verdict=verdict, notes=notes
    )


_WHO = Pattern(r"(?i)\bwho(?:m|se)?\b(?! (?:is|has|'s) (?:in|on)\b)")
"""What is not answered by yes or no: "who can let me off the helmet"."""


def _since_of_it(engine: Engine, query: Query, clause: str) -> str:
    """From which day a clause holds, or what it says of the thing asked about, where that has its own day."""
    lookup, record = engine.lookup, engine.lookup.clauses[clause]
    wide = {kind for item in query.items[:1] for kind in lookup.broader(item)}
    within = lookup.aspects_within(query.aspect)
    begun = {
        rule.valid_from
        for rule in lookup.rules_of(clause)
        if rule.aspect in within and not wide.isdisjoint(rule.scope.items) and is_in_force(rule, engine.as_of)
    }
    if query.polarity == "not" or begun <= {record.valid_from}:
        return _since(lookup, clause)
    thing = the_item(lookup, query.items[0])
    days = listing([say_date(day) for day in sorted(begun)])
    return f"; what it says of {thing} is in force from {days}"


def _since(lookup: Lookup, clause: str) -> str:
    """From which day a clause holds that altered others."""
    record = lookup.clauses[clause]
    return f", in force from {say_date(record.valid_from)}" if altered(record, lookup) else ""


def _edition_of(engine: Engine, book: str) -> str:
    """The edition that is named, or the last one of a book that has begun by the day."""
    if book in engine.lookup.editions:
        return book
    editions = [edition for edition in engine.lookup.base.editions if edition.book == book]
    begun = [edition for edition in editions if edition.valid_from <= engine.as_of]
    return max(begun or editions, key=lambda edition: edition.valid_from).id


def _whole(lookup: Lookup, clause: str) -> Citation:
    return citation(lookup, clause, tuple(rule.id for rule in lookup.base.rules if rule.clause == clause))


def _instead(engine: Engine, clause: str) -> tuple[str, ...]:
    """What stands in place of a clause that is no longer in force on the day, or of one of its rules."""
    until, base = engine.lookup.clauses[clause].valid_until, engine.lookup.base
    if until is not None and until <= engine.as_of:
        return tuple(c.id for c in base.clauses if clause in (*c.replaces, *c.repeals))
    rules = {rule.id for rule in engine.lookup.rules_of(clause)}
    begun = engine.lookup.clauses[clause].valid_from
    over = (r for r in base.rules if r.valid_from > begun and not rules.isdisjoint(r.disables))
    return tuple(dict.fromkeys(rule.clause for rule in over if is_in_force(rule, engine.as_of)))


def _changing(lookup: Lookup, query: Query, items: set[str]) -> Iterator[str]:
    """The clauses of the book asked about that name one of the items, or replace or end a clause on it."""
    names = [set(analyse(lookup.items[item].label)) for item in items]
    for clause in lookup.base.clauses:
        book = (clause.edition, lookup.editions[clause.edition].book)
        if query.book is None or query.book not in book:
            continue
        gone = {*clause.replaces, *clause.repeals}
        said = set(analyse(clause.text))
        if any(name <= said for name in names) or any(
            rule.clause in gone and items & set(rule.scope.items) for rule in lookup.base.rules
        ):
            yield clause.id


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
