"""The audit of a rule base: every check, over every spell of time from a day on."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence

import msgspec

from kb.audit.conflicts import Struggles, conflict_findings, overlap_findings
from kb.audit.findings import AuditReport, Finding, in_order
from kb.audit.idle import Effects, Link, Liveness, idle_findings, idle_link_findings, links, liveness
from kb.audit.law import Law, covering_rules, giving_clauses
from kb.audit.oversteps import (
    Overstep,
    beaten_oversteps,
    claimed_oversteps,
    overstep_findings,
    partial_findings,
)
from kb.audit.reach import gap_findings
from kb.audit.repeats import Repeats, repeat_findings
from kb.audit.units import measure_findings
from kb.audit.vocabulary import empty_clauses, shared_labels, unused_facts
from kb.errors import Problem
from kb.model.lookup import Lookup
from kb.model.records import RuleBase
from kb.wording import clause_reference

OWN_CODES = frozenset({"non-derogable", "no-delegation", "outside-delegation", "delegation-not-granted"})
_BEYOND_POWER = frozenset({"amends-higher"})


class _Spell:
    """What one spell of time without a change of the law shows."""

    def __init__(self, law: Law, struggles: Struggles, effects: Effects, dated: bool) -> None:
        self.law = law
        self.dated = dated
        self.conflicts = conflict_findings(law, struggles, dated)
        self.oppositions = [pair for view in law.views for pair in struggles.pairs(view)]
        self.liveness: Liveness = liveness(law, effects)
        self.links: list[Link] = links(law, self.oppositions)
        beaten = beaten_oversteps(law, self.oppositions, self.liveness.dead)
        self.oversteps: list[Overstep] = [*claimed_oversteps(law), *beaten]
        self.repeats = Repeats(law, self.liveness.dead).found()


def change_days(base: RuleBase, as_of: datetime.date) -> tuple[datetime.date, ...]:
    """The day itself and every later one on which a rule, delegation or definition begins or ends."""
    days = {as_of}
    giving = giving_clauses(base)
    bounds = [(rule.valid_from, rule.valid_until) for rule in base.rules]
    bounds += [(c.valid_from, c.valid_until) for c in base.clauses if c.id in giving]
    for start, end in bounds:
        days.update(day for day in (start, end) if day is not None)
    return tuple(sorted(day for day in days if day >= as_of))


def audit_base(
    base: RuleBase,
    as_of: datetime.date,
    problems: Sequence[Problem] = (),
    *,
    dated: bool = False,
) -> AuditReport:
    """Audit a base from a day on.

    `problems` are the warnings of loading it; `dated` puts the day into examples.

    Rules that are no longer in force on that day are history, and are not judged.
    """
    lookup = Lookup(base)
    days = change_days(base, as_of)
    index = covering_rules(lookup)
    struggles, effects = Struggles(), Effects()
    spells = [_Spell(Law(lookup, day, index), struggles, effects, dated or day != as_of) for day in days]
    rules = [rule for rule in base.rules if rule.valid_until is None or rule.valid_until > as_of]
    findings = [
        *_over_time(lookup, spells),
        *gap_findings(spells[0].law),
        *unused_facts(lookup),
        *empty_clauses(lookup, days),
        *shared_labels(lookup),
        *measure_findings(lookup, iter(rules)),
    ]
    findings += [
        _placed(lookup, finding_of(problem)) for problem in problems if problem.code not in OWN_CODES
    ]
    return AuditReport(as_of=as_of, days=days, findings=in_order(findings), rules=len(rules))


def _placed(lookup: Lookup, finding: Finding) -> Finding:
    """The finding with the clause that it stands in."""
    before = [c for c in lookup.base.clauses if c.at.file == finding.at.file and c.at <= finding.at]
    if not before:
        return finding
    clause = max(before, key=lambda c: c.at)
    return msgspec.structs.replace(finding, clause=clause.id, reference=clause_reference(lookup, clause.id))


def finding_of(problem: Problem) -> Finding:
    """A problem of loading the sources as a finding."""
    severe = problem.severity == "error" or problem.code in _BEYOND_POWER
    return Finding(
        at=problem.at,
        code=problem.code,
        severity="error" if severe else "warning",
        message=problem.message,
        suggestion=problem.remedy,
    )


def audit_problems(problems: Sequence[Problem], as_of: datetime.date) -> AuditReport:
    """The report where the sources have errors, so that there is nothing to audit yet."""
    findings = in_order([finding_of(problem) for problem in problems])
    return AuditReport(as_of=as_of, days=(), findings=findings, rules=0, complete=False)


def _over_time(lookup: Lookup, spells: Sequence[_Spell]) -> list[Finding]:
    """Findings of all spells, each once: faults on any day, idle things only if idle on every day."""
    conflicts = _first(finding for spell in spells for finding in spell.conflicts)
    dead = _on_every_day(spells, [spell.liveness.dead for spell in spells])
    oversteps = [step for spell in spells for step in spell.oversteps if _lasting(step, dead)]
    beyond = {step.rule for step in oversteps}
    beyond |= {rule.id for rule in lookup.base.rules if rule.at in {lookup.rules[r].at for r in beyond}}
    oppositions = [pair for spell in spells for pair in spell.oppositions]
    found: list[Finding] = [*conflicts, *overstep_findings(lookup, oversteps)]
    found += overlap_findings(lookup, oppositions, conflicts)
    repeated = _on_every_day(spells, [frozenset(spell.repeats) for spell in spells])
    for spell in spells:
        found += _of_spell(spell, dead, beyond, repeated)
    found += idle_link_findings(lookup, [link for s in spells for link in s.links], dead | beyond)
    return _first(found)


def _lasting(step: Overstep, dead: frozenset[str]) -> bool:
    """A rule that is only beaten counts if it is beaten on every day; a false claim counts at once."""
    return step.claimed or step.rule in dead


def _of_spell(
    spell: _Spell, dead: frozenset[str], beyond: set[str], repeated: frozenset[str]
) -> list[Finding]:
    law = spell.law
    found = partial_findings(law, spell.oppositions, dead | beyond, spell.dated)
    lasting = Liveness(
        *(
            names & dead
            for names in (spell.liveness.impossible, spell.liveness.set_aside, spell.liveness.beaten)
        )
    )
    found += idle_findings(law, lasting, spell.oppositions, beyond)
    superfluous = {rule: other for rule, other in spell.repeats.items() if rule in repeated - beyond}
    return found + repeat_findings(law, superfluous)


def _on_every_day(spells: Sequence[_Spell], named: Sequence[frozenset[str]]) -> frozenset[str]:
    """Rules that are named in every spell in which they are in force."""
    seen: set[str] = set()
    spared: set[str] = set()
    for spell, names in zip(spells, named, strict=True):
        for rule in spell.law.rules:
            seen.add(rule.id)
            if rule.id not in names:
                spared.add(rule.id)
    return frozenset(seen - spared)


def _first(findings: Iterable[Finding]) -> list[Finding]:
    """Findings without those that another day repeats: one for each code and set of rules."""
    kept: dict[tuple[str, object, tuple[str, ...]], Finding] = {}
    for finding in findings:
        kept.setdefault((finding.code, finding.at, finding.rules), finding)
    return list(kept.values())
