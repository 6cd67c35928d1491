"""Following the references of rules and delegations, and the checks that need both ends."""

from __future__ import annotations

import msgspec

from kb.errors import Location
from kb.model.records import Clause, Delegation, Rule, Scope
from kb.sources.cycles import find_cycles
from kb.sources.drafts import ClauseDraft, RuleDraft
from kb.sources.references import References
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.tree import Scalar
from kb.sources.vocabulary import Vocabulary


class Links(msgspec.Struct, frozen=True):
    """What linking needs: references, delegations by id, rule drafts and validities by id."""

    references: References
    delegations: dict[str, Delegation]
    drafts: dict[str, RuleDraft]
    vocabulary: Vocabulary
    report: Report

    def rank(self, authority: str) -> int:
        known = self.vocabulary.authorities.get(authority)
        return known.rank if known else 0


def link_delegations(
    drafts: list[ClauseDraft], references: References, report: Report
) -> dict[str, Delegation]:
    """Delegations by id, with the clauses they name."""
    found: dict[str, Delegation] = {}
    for draft in (each for clause in drafts for each in clause.delegations):
        delegation = draft.delegation
        meant = [references.clauses_of(text, draft.edition, report) for text in draft.clauses]
        clauses = tuple(dict.fromkeys(c for each in meant if each is not None for c in each.clauses))
        linked = msgspec.structs.replace(delegation, clauses=clauses)
        first = found.setdefault(delegation.id, linked)
        if first is not linked:
            name = quoted(delegation.id)
            message = (
                f"The delegation {name} is declared for the second time; the first stands in {first.at}."
            )
            report.error(delegation.at, "duplicate-id", message, "Give one of them another id.")
    return found


def cut_to_clause(rule: Rule, clause: Clause) -> Rule:
    """The rule with its validity cut to that of its clause."""
    ends = [day for day in (rule.valid_until, clause.valid_until) if day is not None]
    return msgspec.structs.replace(
        rule, valid_from=max(rule.valid_from, clause.valid_from), valid_until=min(ends, default=None)
    )


def link_rules(clauses: list[ClauseDraft], links: Links) -> list[Rule]:
    """Rules with exceptions, disabled and repaired rules and delegations, cut to their clauses."""
    rules: list[Rule] = []
    for clause in clauses:
        for draft in clause.rules:
            rule = cut_to_clause(draft.rule, clause.clause)
            ended = clause.clause.valid_until
            lives = ended is None or ended > clause.clause.valid_from
            if lives and rule.valid_until is not None and rule.valid_until <= rule.valid_from:
                dates = f"it would begin on {rule.valid_from} and end on {rule.valid_until}"
                message = f"The rule is never in force: {dates}."
                links.report.warn(rule.at, "never-in-force", message, "Correct its dates, or remove it.")
            rules.append(_linked(rule, draft, links))
    return rules


def _linked(rule: Rule, draft: RuleDraft, links: Links) -> Rule:
    delegation = _delegation(rule, draft, links)
    exceptions = _meant(draft, draft.exception_to, delegation, links)
    if draft.phase_out:
        exceptions = tuple(dict.fromkeys([*exceptions, *_phased_out(rule, links)]))
    return msgspec.structs.replace(
        rule,
        exception_to=exceptions,
        disables=_meant(draft, draft.disables, delegation, links),
        repairs=_repaired(draft, links),
        delegation=delegation.id if delegation else None,
    )


def _named_delegation(name: str, draft: RuleDraft, links: Links) -> Delegation | None:
    """By id in the same edition, by book/edition/id, by book/id, or by an id that only one book has.

    Of several editions the last one is taken.
    """
    known = links.delegations
    exact = known.get(f"{draft.edition}/{name}") or known.get(name)
    if exact is not None:
        return exact
    book, _, last = name.rpartition("/")
    of_book = [d for d in known.values() if d.id.rpartition("/")[2] == last]
    if book:
        of_book = [d for d in of_book if d.id.partition("/")[0] == book]
    books = {d.id.partition("/")[0] for d in of_book}
    return of_book[-1] if len(books) == 1 else None


def _delegation(rule: Rule, draft: RuleDraft, links: Links) -> Delegation | None:
    text, report = draft.under, links.report
    if text is None:
        return None
    delegation = _named_delegation(text.text, draft, links)
    if delegation is None:
        known = [*links.delegations, *(name.rpartition("/")[2] for name in links.delegations)]
        remedy = suggestion(text.text, known, "A clause of a higher authority has to delegate it.")
        report.error(text.at, "unknown-delegation", f"There is no delegation {quoted(text.text)}.", remedy)
        return None
    if links.rank(rule.authority) > links.rank(delegation.to):
        to = f"{quoted(delegation.to)} or higher, not to {quoted(rule.authority)}"
        message = f"The delegation {quoted(text.text)} is granted to {to}."
        report.warn(
            text.at, "delegation-not-granted", message, "Remove the rule, or have the delegation widened."
        )
    if delegation.allows == "stricter" and rule.modality in ("may", "need_not"):
        message = (
            f"The delegation {quoted(text.text)} allows only stricter rules, and this one permits or exempts."
        )
        report.warn(
            text.at, "outside-delegation", message, "Remove the rule, or have the delegation widened."
        )
    allowed = {inner for item in delegation.items for inner in links.vocabulary.narrower(item)}
    outside = [item for item in rule.scope.items if delegation.items and item not in allowed]
    if outside:
        message = f"The delegation {quoted(text.text)} does not cover {listed(outside)}."
        remedy = f"It covers {listed(delegation.items)} and what is narrower."
        report.warn(text.at, "outside-delegation", message, remedy)
    return delegation


def _meant(
    draft: RuleDraft, texts: tuple[Scalar, ...], delegation: Delegation | None, links: Links
) -> tuple[str, ...]:
    """The rules that references mean, without the rule itself and its siblings."""
    found: list[str] = []
    for text in texts:
        named = links.references.rules_meant(text, draft.edition, links.report)
        others = [name for name in named if links.drafts[name].source != draft.source]
        if named and not others:
            message = f"{quoted(text.text)} means nothing but this rule itself."
            links.report.error(text.at, "refers-to-itself", message, "Correct the reference.")
        _check_departure(draft, others, text, delegation, links)
        found += others
    return tuple(dict.fromkeys(found))


def _check_departure(
    draft: RuleDraft, targets: list[str], text: Scalar, delegation: Delegation | None, links: Links
) -> None:
    """A lower authority departs from a higher one only under a delegation that covers it."""
    higher = [
        t for t in targets if links.rank(links.drafts[t].rule.authority) < links.rank(draft.rule.authority)
    ]
    if not higher:
        return
    if firm := [name for name in higher if links.drafts[name].rule.non_derogable]:
        message = f"No lower authority may depart from {quoted(firm[0])}: it is non-derogable."
        links.report.warn(text.at, "non-derogable", message, "Remove the reference.")
    elif draft.under is None:
        message = f"{quoted(text.text)} is of a higher authority, which has to delegate an exception to it."
        remedy = "Name the delegation with under:, or remove the reference."
        links.report.warn(text.at, "no-delegation", message, remedy)
    elif delegation is not None and delegation.clauses:
        outside = [n for n in higher if links.drafts[n].rule.clause not in delegation.clauses]
        if outside:
            message = f"The delegation {quoted(delegation.id)} does not cover {quoted(outside[0])}."
            links.report.warn(
                text.at, "outside-delegation", message, "Correct the reference or the delegation."
            )


def _repaired(draft: RuleDraft, links: Links) -> str | None:
    text = draft.repairs
    if text is None:
        return None
    named = links.references.rules_meant(text, draft.edition, links.report)
    others = [name for name in named if links.drafts[name].source != draft.source]
    duties = [name for name in others if links.drafts[name].rule.modality in ("must", "must_not")]
    if len(duties) == 1 and links.drafts[duties[0]].rule.aspect != "wear":
        message = f"Nothing in a case says whether {quoted(text.text)} is kept, so nothing can rest on that."
        remedy = "Only a duty to wear something, or not to, can be repaired."
        links.report.error(text.at, "repairs-not-wear", message, remedy)
        return None
    if len(duties) == 1:
        return duties[0]
    if len(duties) > 1:
        message = f"{quoted(text.text)} means {len(duties)} duties, but a rule repairs one."
        links.report.error(text.at, "ambiguous-repair", message, f"Write {listed(duties)}.")
    elif named:
        message = f"{quoted(text.text)} is no duty that could be broken."
        links.report.error(text.at, "repairs-no-duty", message, "Name a must or a must not.")
    return None


def _phased_out(rule: Rule, links: Links) -> list[str]:
    """Rules of the same or a lower authority that require or permit wearing what this rule phases out.

    A rule that begins after the phase-out brings the thing back, and is not among them.
    """
    gone = set(links.vocabulary.narrower(rule.scope.items[0]))
    mine = links.rank(rule.authority)
    return [
        other.rule.id
        for other in links.drafts.values()
        if other.rule.aspect == "wear"
        and other.rule.modality in ("must", "may")
        and _names(other.rule.scope, gone)
        and links.rank(other.rule.authority) >= mine
        and other.rule.valid_from <= rule.valid_from
        and other.rule.id != rule.id
    ]


def _names(scope: Scope, gone: set[str]) -> bool:
    """Whether a rule is of nothing else, or leaves others to choose from: then the duty is of those alone."""
    items = set(scope.items)
    return not items.isdisjoint(gone) if scope.alternatives is not None else items <= gone


def check_circles(rules: list[Rule], report: Report) -> None:
    """Report circles of exceptions, of disabling and of repairs."""
    at: dict[str, Location] = {rule.id: rule.at for rule in rules}
    relations = (
        ("circular-exception", "is an exception to", {r.id: r.exception_to for r in rules}),
        ("circular-disable", "disables", {r.id: r.disables for r in rules}),
        ("circular-repair", "repairs", {r.id: (r.repairs,) if r.repairs else () for r in rules}),
    )
    for code, verb, step in relations:
        for circle in find_cycles(step):
            message = f"The rules run in a circle: {f' {verb} '.join((*circle, circle[0]))}."
            report.error(at[circle[0]], code, message, "Remove one of the references.")
