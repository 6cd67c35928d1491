"""Checks over the whole base that belong to no single section."""

from __future__ import annotations

from collections.abc import Iterable

from kb.errors import Location
from kb.model.conditions import tests
from kb.model.records import Definition
from kb.sources.cycles import find_cycles
from kb.sources.drafts import ClauseDraft
from kb.sources.report import Report, quoted
from kb.sources.vocabulary import Vocabulary


def check_rule_ids(clauses: Iterable[ClauseDraft], report: Report) -> None:
    """Report two rules of one edition with the same id."""
    first: dict[str, Location] = {}
    for draft in (rule for clause in clauses for rule in clause.rules):
        known = first.setdefault(draft.rule.id, draft.rule.at)
        if known is not draft.rule.at:
            message = (
                f"The rule {quoted(draft.rule.id)} stands here for the second time; the first is at {known}."
            )
            report.error(draft.rule.at, "duplicate-id", message, "Give each an id of its own.")
        elif first[draft.rule.id] is draft.rule.at:
            continue


def check_definitions(definitions: Iterable[Definition], vocabulary: Vocabulary, report: Report) -> None:
    """Report terms that are defined by themselves, and warn of terms that nothing defines."""
    uses: dict[str, tuple[str, ...]] = {}
    place: dict[str, Location] = {}
    for definition in definitions:
        used = tuple(test.fact for test in tests(definition.condition))
        uses[definition.term] = (*uses.get(definition.term, ()), *used)
        place.setdefault(definition.term, definition.at)
    for circle in find_cycles(uses):
        message = f"Terms are defined by each other in a circle: {' by '.join((*circle, circle[0]))}."
        report.error(place[circle[0]], "circular-definition", message, "Define one of them by plain facts.")
    for fact in vocabulary.facts.values():
        if fact.family == "term" and fact.id not in uses:
            message = f"No clause defines the term {quoted(fact.id)}."
            remedy = f"Add defines: [{{term: {fact.id}, when: ...}}] to a clause, or make it kind: yes or no."
            report.warn(fact.at, "undefined-term", message, remedy)


def check_duties_on_kinds(clauses: Iterable[ClauseDraft], vocabulary: Vocabulary, report: Report) -> None:
    """Warn of a duty on a kind of items: it asks for each of them at once, which few texts mean."""
    drafts = (draft for clause in clauses for draft in clause.rules)
    for rule in (draft.rule for draft in drafts if not draft.each_kind):
        scope = rule.scope
        if rule.modality != "must" or scope.alternatives is not None or not scope.narrower:
            continue
        kinds = [kind for item in scope.items for kind in vocabulary.narrower(item) if kind != item]
        aspect = vocabulary.aspects.get(rule.aspect)
        if not kinds or aspect is None or aspect.kind != "act":
            continue
        message = f"This asks for each kind of {quoted(scope.items[0])} at once."
        some = ", ".join(kinds[:4])
        remedy = (
            f"If any will do, write {{any of: [{some}]}}; else add: each kind: yes, or this item only: yes."
        )
        report.warn(rule.at, "duty-on-a-kind", message, remedy)
