"""Clauses with everything that stands in them, before references are followed."""

from __future__ import annotations

from kb.errors import Location
from kb.measures import MeasureError, parse_difference, parse_measure, same_dimension
from kb.model.records import Book, Clause, ClauseKind, Definition, Delegation, Edition, Tolerance
from kb.sources.books import UNDATED, Books
from kb.sources.conditions import read_condition
from kb.sources.drafts import ClauseDraft, Context, DelegationDraft
from kb.sources.fields import Fields
from kb.sources.report import listed, quoted, suggestion
from kb.sources.rules import read_rules
from kb.sources.sections import Part
from kb.sources.things import check_item
from kb.sources.tree import Mapping
from kb.text import Pattern

_KEYS = (
    "clause", "text", "heading", "kind", "from", "until", "replaces", "repeals", "non-derogable", "delegates",
    "tolerances", "defines", "rules", "note",
)  # fmt: skip
_KINDS: tuple[ClauseKind, ...] = ("rule", "definition", "purpose", "procedure", "information")
_NUMBER = Pattern(r"[\w.()-]+")


def read_clauses(parts: tuple[Part, ...], books: Books, context: Context) -> list[ClauseDraft]:
    """The clauses of all parts in the order of the files."""
    drafts: list[ClauseDraft] = []
    first: dict[str, Location] = {}
    for part, edition_id in zip(parts, books.part_editions, strict=True):
        edition, book = _whose(edition_id, part, books)
        for node in part.clauses:
            draft = _read_clause(node, edition, book, part.title, context)
            if draft is None:
                continue
            clause = draft.clause
            if clause.id in first and edition_id is not None:
                where = first[clause.id]
                message = f"The clause {quoted(clause.number)} stands here again; the first is at {where}."
                context.report.error(clause.at, "duplicate-clause", message, "Correct one of the numbers.")
                continue
            first[clause.id] = clause.at
            drafts.append(draft)
    return drafts


def _whose(edition_id: str | None, part: Part, books: Books) -> tuple[Edition, Book]:
    """Edition and book of a part; stand-ins when they are unknown, so that its rules are read."""
    if edition_id is not None:
        edition = books.editions[edition_id]
        return edition, books.books[edition.book]
    at = part.at
    return Edition(id="?/?", label="?", at=at, book="?", valid_from=UNDATED), Book(
        id="?", label="?", at=at, authority=""
    )


def _read_clause(
    node: Mapping, edition: Edition, book: Book, part: str | None, context: Context
) -> ClauseDraft | None:
    report = context.report
    fields = Fields(node, _KEYS, "a clause", report)
    number = fields.required("clause", 'clause: "4.12"')
    text = fields.required("text", "text: >- and the words of the clause, indented, on the next line")
    if number is not None and not _NUMBER.fullmatch(number.text):
        message = f"{quoted(number.text)} cannot be the number of a clause."
        report.error(
            number.at, "bad-clause-number", message, "Use letters, digits, dots, hyphens and brackets."
        )
    word = fields.one_of("kind", _KINDS, "rule")
    kind: ClauseKind = next((known for known in _KINDS if known == word), "rule")
    begin, end = fields.span("from", "until")
    _check_kind(fields, kind, context)
    clause = Clause(
        id=f"{edition.id}/{number.text if number else '?'}",
        edition=edition.id,
        number=number.text if number else "?",
        text=text.text if text else "",
        kind=kind,
        at=fields.at,
        heading=fields.text("heading"),
        part=part,
        valid_from=max(edition.valid_from, begin or edition.valid_from),
        valid_until=min((day for day in (edition.valid_until, end) if day is not None), default=None),
        note=fields.text("note"),
    )
    if clause.valid_until is not None and clause.valid_until <= clause.valid_from:
        dates = f"it would begin on {clause.valid_from} and end on {clause.valid_until}"
        message = f"The clause is never in force: {dates}."
        report.error(fields.at, "never-in-force", message, "Correct its dates, or those of its edition.")
    rules = read_rules(
        fields.mappings("rules"), clause, book.authority, fields.flag("non-derogable"), context
    )
    draft = ClauseDraft(
        clause=clause,
        authority=book.authority,
        replaces=fields.scalars("replaces"),
        repeals=fields.scalars("repeals"),
        delegations=tuple(_delegations(fields, clause, context)),
        definitions=tuple(_definitions(fields, clause, context)),
        tolerances=tuple(_tolerances(fields, clause, context)),
        rules=tuple(rules),
    )
    return draft if number is not None else None


def _check_kind(fields: Fields, kind: ClauseKind, context: Context) -> None:
    rules = fields.mappings("rules")
    if kind == "rule" and not rules and fields.has("clause"):
        message = "The clause says no rule, and not that it is something else."
        remedy = f"Add rules:, or say kind: {listed(_KINDS[1:])}."
        context.report.error(fields.at, "no-rules", message, remedy)
    if kind != "rule" and rules:
        message = f"The clause is of the kind {kind}, but it has rules."
        remedy = "Remove the kind: a clause with rules may define and explain as well."
        context.report.error(fields.place("kind"), "rules-not-wanted", message, remedy)


def _delegations(fields: Fields, clause: Clause, context: Context) -> list[DelegationDraft]:
    vocabulary, report = context.vocabulary, context.report
    found = []
    for node in fields.mappings("delegates"):
        entry = Fields(node, ("id", "to", "clauses", "items", "allows"), "a delegation", report)
        name = entry.identifier()
        to = entry.required("to", "to: station")
        if to is not None and to.text not in vocabulary.authorities:
            remedy = suggestion(to.text, vocabulary.authorities, "Declare it under authorities.")
            report.error(to.at, "unknown-authority", f"There is no authority {quoted(to.text)}.", remedy)
            to = None
        items = [item for item in entry.scalars("items") if check_item(item, vocabulary.items, report)]
        allows = entry.one_of("allows", ("stricter", "anything"), "anything")
        if name is None or to is None:
            continue
        delegation = Delegation(
            id=f"{clause.edition}/{name.text}",
            clause=clause.id,
            to=to.text,
            items=tuple(item.text for item in items),
            allows="stricter" if allows == "stricter" else "anything",
            at=entry.at,
        )
        found.append(DelegationDraft(delegation, clause.edition, entry.scalars("clauses")))
    return found


def _definitions(fields: Fields, clause: Clause, context: Context) -> list[Definition]:
    report = context.report
    terms = {fact.id for fact in context.vocabulary.facts.values() if fact.family == "term"}
    found = []
    for node in fields.mappings("defines"):
        entry = Fields(node, ("term", "when"), "a definition", report)
        term = entry.required("term", "term: winter")
        when = entry.node_of("when")
        if when is None:
            entry.missing("when", "when: {temperature: below 5 °C}")
        if term is not None and term.text not in terms:
            remedy = suggestion(term.text, terms, "Declare it under facts with kind: term.")
            report.error(term.at, "unknown-term", f"There is no term {quoted(term.text)}.", remedy)
        if term is None or when is None:
            continue
        condition = read_condition(when, context.vocabulary, report)
        found.append(Definition(term=term.text, condition=condition, clause=clause.id, at=entry.at))
    return found


def _tolerances(fields: Fields, clause: Clause, context: Context) -> list[Tolerance]:
    report = context.report
    found = []
    for node in fields.mappings("tolerances"):
        entry = Fields(node, ("about", "allow"), "a tolerance", report)
        about = entry.required("about", "about: up to 2 in")
        allow = entry.required("allow", "allow: 1/8 in")
        if about is None or allow is None:
            continue
        try:
            measure = parse_measure(about.text)
            allowed, unit = parse_difference(allow.text)
        except MeasureError as error:
            report.error(entry.at, "bad-tolerance", error.problem, error.remedy)
            continue
        if not same_dimension(measure.unit, unit):
            message = "The two measures of the tolerance are in different kinds of unit."
            report.error(
                entry.at, "wrong-unit", message, "Write for example {about: up to 2 in, allow: 1/8 in}."
            )
            continue
        found.append(
            Tolerance(unit=unit, applies=measure.interval, allow=allowed, clause=clause.id, at=entry.at)
        )
    return found
