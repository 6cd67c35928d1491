"""Duties that a rule takes away, where a residual rule then forbids the thing altogether.

"Need not" frees from a duty and permits nothing. Where the books also say that what nothing mentions is not
worn, a thing that is freed in this way may not be worn at all, which is seldom what the writer meant.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from kb.audit.examples import question, smallest_case
from kb.audit.findings import Finding
from kb.audit.law import Law, View
from kb.model.conditions import Condition, all_of
from kb.model.values import ValueSet, contains
from kb.reasoner import Norm
from kb.wording import clause_reference, say_facts, say_rule, sentence


def relief_findings(law: Law, dated: bool) -> list[Finding]:
    """One warning for each rule that only frees from a duty what a residual rule then closes."""
    found: dict[str, Finding] = {}
    for view in law.views:
        for relief, rest, matter in _undone(view):
            if relief.rule not in found:
                case = law.case((matter,), view.known)
                if case is not None:
                    found[relief.rule] = _finding(view, relief, rest, matter, case, dated)
    return list(found.values())


def _undone(view: View) -> Iterator[tuple[Norm, Norm, Condition]]:
    """Each freeing and residual norm of an act, and when the one is alive while the other closes the act."""
    if view.law.lookup.aspects[view.aspect].kind != "act":
        return
    rules = view.law.lookup.rules
    done = next(i for i, values in enumerate(view.group.classes) if contains(values, "yes"))
    not_done = 1 - done
    for relief, mask in view.supporting:
        if rules[relief.rule].modality == "need_not" and mask >> not_done & 1:
            for rest, closed in view.residual:
                if closed >> done & 1 and view.law.together(relief, rest):
                    alive = view.alive(relief, mask, not_done)
                    yield relief, rest, all_of([alive, view.effective(rest, closed, done)])


def _finding(
    view: View, relief: Norm, rest: Norm, matter: Condition, case: Mapping[str, ValueSet], dated: bool
) -> Finding:
    lookup = view.law.lookup
    rule, other = lookup.rules[relief.rule], lookup.rules[rest.rule]
    facts = smallest_case(view, matter, case)
    where = f"where {say_facts(lookup, facts)}" if facts else "in every case"
    names = [clause_reference(lookup, one.clause) for one in (rule, other)]
    return Finding(
        at=rule.at,
        code="freed-but-forbidden",
        severity="warning",
        clause=rule.clause,
        reference=names[0],
        rules=(rule.id, other.id),
        message=sentence(
            f"{names[0]} only frees from a duty: “{say_rule(lookup, rule)}” Nothing permits it {where}, "
            f"so that {names[1]} forbids it: “{say_rule(lookup, other)}”"
        ),
        suggestion="If it may still be worn there, add a “may” beside the “need not”.",
        example=question(view.law, view.item, view.aspect, facts, dated),
    )
