"""Rules that can never take effect, and links between rules that never come to bear."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import msgspec

from kb.audit.conflicts import Opposition
from kb.audit.findings import Finding
from kb.audit.law import Law, View, ViewKey, places
from kb.errors import Location
from kb.model.conditions import Condition
from kb.model.lookup import Lookup
from kb.model.records import Rule
from kb.reasoner import Norm
from kb.reasoner.norms import covered_items
from kb.wording import clause_reference, listing, say_rule, sentence


class Liveness(msgspec.Struct, frozen=True):
    """What becomes of the rules of a day: those with an impossible condition, those always set aside, those
    that are beaten in every case; all others have an effect in some case."""

    impossible: frozenset[str]
    set_aside: frozenset[str]
    beaten: frozenset[str]

    @property
    def dead(self) -> frozenset[str]:
        return self.impossible | self.set_aside | self.beaten


class Effects:
    """Whether a rule applies and has an effect, by view; alike views of several days are worked out once."""

    def __init__(self) -> None:
        self._applies: dict[tuple[ViewKey, str], bool] = {}
        self._bears: dict[tuple[ViewKey, str], bool] = {}

    def applies(self, view: View, norm: Norm) -> bool:
        place = (view.key, norm.key)
        if place not in self._applies:
            self._applies[place] = view.law.case((view.applies(norm),), view.known) is not None
        return self._applies[place]

    def bears(self, view: View, norm: Norm, mask: int) -> bool:
        place = (view.key, norm.key)
        if place not in self._bears:
            self._bears[place] = _has_effect(view, norm, mask)
        return self._bears[place]


def liveness(law: Law, effects: Effects) -> Liveness:
    """For every rule of the day whether some case lets it have an effect on some item it covers."""
    alive: set[str] = set()
    applying: set[str] = set()
    for view in law.views:
        for norm, mask in view.norms():
            if norm.rule in alive:
                continue
            if norm.rule in applying or effects.applies(view, norm):
                applying.add(norm.rule)
                if effects.bears(view, norm, mask):
                    alive.add(norm.rule)
    impossible, set_aside, beaten = set(), set(), set()
    for rule in law.rules:
        if rule.id in alive:
            continue
        if rule.id in applying:
            beaten.add(rule.id)
        elif law.case((law.engine.condition(rule.id),)) is None:
            impossible.add(rule.id)
        else:
            set_aside.add(rule.id)
    return Liveness(frozenset(impossible), frozenset(set_aside), frozenset(beaten))


def _has_effect(view: View, norm: Norm, mask: int) -> bool:
    tried: set[Condition] = set()
    for place in places(mask):
        condition = view.effective(norm, mask, place)
        if condition not in tried:
            tried.add(condition)
            if view.law.case((condition,), view.known) is not None:
                return True
    return False


def idle_findings(
    law: Law, found: Liveness, everything: Sequence[Opposition], reported: Iterable[str]
) -> list[Finding]:
    """Rules without effect that no other finding explains already, one for each entry of a source."""
    lookup = law.lookup
    winners: dict[str, list[str]] = {}
    for pair in everything:
        if pair.loser:
            winners.setdefault(pair.loser, []).append(pair.winner)
    silent = set(reported)
    silent.update(
        rule.id for rule in law.rules if not covered_items(lookup, rule.scope)
    )  # of what no rule names
    findings = []
    for group in _entries(law, found.dead - silent):
        rule = group[0]
        if rule.id in found.impossible:
            findings.append(_impossible(lookup, rule))
        elif rule.id in found.set_aside:
            findings.append(_set_aside(law, rule))
        else:
            findings.append(_never_prevails(lookup, rule, winners.get(rule.id, [])))
    return findings


def _entries(law: Law, names: Iterable[str]) -> list[list[Rule]]:
    """The named rules by the entry that they were written as."""
    wanted = set(names)
    entries: dict[Location, list[Rule]] = {}
    for rule in law.rules:
        entries.setdefault(rule.at, []).append(rule)
    return [
        [rule for rule in rules if rule.id in wanted]
        for rules in entries.values()
        if any(rule.id in wanted for rule in rules)
    ]


def _finding(lookup: Lookup, rule: Rule, code: str, message: str, suggestion: str, severe: bool) -> Finding:
    reference = clause_reference(lookup, rule.clause)
    return Finding(
        at=rule.at,
        code=code,
        severity="error" if severe else "warning",
        clause=rule.clause,
        reference=reference,
        rules=(rule.id,),
        message=sentence(message),
        suggestion=suggestion,
    )


def _impossible(lookup: Lookup, rule: Rule) -> Finding:
    reference = clause_reference(lookup, rule.clause)
    return _finding(
        lookup,
        rule,
        "never-applies",
        f"{reference} never applies, because its conditions exclude each other: “{say_rule(lookup, rule)}”",
        "Correct the condition, correct what is “never together”, or remove the rule.",
        severe=True,
    )


def _set_aside(law: Law, rule: Rule) -> Finding:
    lookup = law.lookup
    reference = clause_reference(lookup, rule.clause)
    others = [clause_reference(lookup, lookup.rules[r].clause) for r in law.engine.disablers(rule.id)]
    by = "it says how a thing is worn where that is not worn"
    if others or rule.repairs:
        by = (
            f"{listing(list(dict.fromkeys(others)))} sets it aside"
            if others
            else "the duty it repairs never stands"
        )
    return _finding(
        lookup,
        rule,
        "never-applies",
        f"{reference} never takes effect, because {by} whenever it would: “{say_rule(lookup, rule)}”",
        "Narrow the rule that disables it, or remove one of the two.",
        severe=False,
    )


def _never_prevails(lookup: Lookup, rule: Rule, winners: Sequence[str]) -> Finding:
    reference = clause_reference(lookup, rule.clause)
    names = list(dict.fromkeys(clause_reference(lookup, lookup.rules[name].clause) for name in winners))
    by = f"{listing(names)} goes before it" if len(names) == 1 else f"{listing(names)} go before it"
    if rule.residual:
        by = "other clauses address everything that it would close"
    elif not names:
        by = "it leaves every value as it is"
    return _finding(
        lookup,
        rule,
        "never-prevails",
        f"{reference} never takes effect, because {by} in every case: “{say_rule(lookup, rule)}”",
        "Make it an exception to the other rule, narrow the other rule, or remove this one.",
        severe=False,
    )


# Links between rules


class Link(msgspec.Struct, frozen=True):
    """One reference of an entry to the rules of a clause: whether it ever comes to bear, and whether the
    rules it means are ever in force at the same time."""

    at: Location
    kind: str
    number: str
    rule: str
    target: str
    bears: bool
    in_force: bool


def links(law: Law, everything: Sequence[Opposition]) -> list[Link]:
    """The exceptions and disablings of the day's rules."""
    lookup = law.lookup
    today = {rule.id for rule in law.rules}
    pairs = {(norm.rule, other.rule) for p in everything for norm in _norms(p) for other in _norms(p)}
    found = []
    for rule in law.rules:
        for target in rule.exception_to:
            bears = (rule.id, target) in pairs
            found.append(_link(lookup, "exception", rule, target, bears, target in today))
        for target in rule.disables:
            here = target in today
            both = [law.engine.condition(name) for name in (rule.id, target)]
            found.append(_link(lookup, "disables", rule, target, here and law.case(both) is not None, here))
    return found


def _norms(pair: Opposition) -> tuple[Norm, ...]:
    return tuple(norm for norm, _ in pair.norms)


def _link(lookup: Lookup, kind: str, rule: Rule, target: str, bears: bool, here: bool) -> Link:
    clause = lookup.clauses[lookup.rules[target].clause]
    book = lookup.editions[clause.edition].book
    return Link(rule.at, kind, f"{book} {clause.number}", rule.id, target, bears, here)


def idle_link_findings(lookup: Lookup, found: Sequence[Link], dead: Iterable[str]) -> list[Finding]:
    """Exceptions that never come to bear on any rule of the clause that they name, on any day.

    Of phase-outs only what the text itself could say: their exceptions are made by the program.
    """
    groups: dict[tuple[Location, str, str], list[Link]] = {}
    for link in found:
        groups.setdefault((link.at, link.kind, link.number), []).append(link)
    silent = set(dead)
    findings = []
    for group in groups.values():
        if any(link.bears for link in group) or any(link.rule in silent for link in group):
            continue
        if any(link.target in silent for link in group):
            continue
        if _by_phase_out(lookup, group):
            continue
        findings.append(_idle_link(lookup, group))
    return findings


def _by_phase_out(lookup: Lookup, group: Sequence[Link]) -> bool:
    """Whether a phase-out may have made the exceptions: a ban on wearing what the targets want worn."""
    rule = lookup.rules[group[0].rule]
    return (
        rule.modality == "must_not"
        and rule.aspect == "wear"
        and all(
            lookup.rules[link.target].modality in ("must", "may")
            and set(lookup.rules[link.target].scope.items) <= set(lookup.narrower(rule.scope.items[0]))
            for link in group
        )
    )


def _idle_link(lookup: Lookup, group: Sequence[Link]) -> Finding:
    rule = lookup.rules[group[0].rule]
    other = next((link.target for link in group if link.in_force), group[0].target)
    names = [clause_reference(lookup, lookup.rules[name].clause) for name in (rule.id, other)]
    verb = "is called an exception to" if group[0].kind == "exception" else "is said to disable"
    if not any(link.in_force for link in group):
        why = "which is never in force at the same time"
    elif group[0].kind == "disables":
        why = "but the two never apply in the same case"
    else:
        why = "but the two never say opposite things in the same case"
    return _finding(
        lookup,
        rule,
        "idle-exception" if group[0].kind == "exception" else "idle-disabling",
        f"{names[0]} {verb} {names[1]}, {why}",
        "Correct the reference or the conditions, or remove the reference.",
        severe=False,
    )
