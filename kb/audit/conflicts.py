"""Opposed rules: those that the order of precedence settles, and those that it leaves unsettled."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

import msgspec

from kb.audit.examples import question, smallest_case
from kb.audit.findings import Finding
from kb.audit.law import Law, View, ViewKey, places
from kb.model.conditions import Condition, all_of, any_of
from kb.model.lookup import Lookup
from kb.model.questions import Principle
from kb.model.records import Authority, Rule
from kb.model.values import ValueSet
from kb.reasoner import Facts, Norm
from kb.wording import clause_reference, listing, say_defeat, say_facts, say_rule, sentence

Norms = tuple[tuple[Norm, int], ...]


Case = dict[str, ValueSet]
Left = tuple[Norms, Condition, Case]


class Opposition(msgspec.Struct, frozen=True):
    """Two norms of one view that pull against each other in some case; `principle` None is a tie."""

    view: View
    norms: Norms
    winner: str = ""
    loser: str = ""
    principle: Principle | None = None


def opposed(view: View, one: tuple[Norm, int], other: tuple[Norm, int]) -> bool:
    """Whether two norms pull one value in opposite directions, or together leave nothing open."""
    if one[0].rule == other[0].rule:
        return False
    if one[0].closes != other[0].closes:
        return bool(one[1] & other[1])
    return one[0].closes and not view.everything & ~one[1] & ~other[1]


def oppositions(view: View) -> Iterator[Opposition]:
    """Every pair of opposed norms that apply together in some case, with who wins."""
    law = view.law
    for pair in combinations([*view.closing, *view.supporting], 2):
        one, other = pair[0][0], pair[1][0]
        if not opposed(view, *pair) or not law.together(one, other):
            continue
        win = law.engine.precedence.win(one.key, other.key)
        if win is None:
            yield Opposition(view, pair)
        else:
            loser = other if win.winner == one.key else one
            winner = one if loser is other else other
            yield Opposition(view, pair, winner.rule, loser.rule, win.principle)


def conflict_of(view: View, one: tuple[Norm, int], other: tuple[Norm, int]) -> Condition:
    """When two opposed norms are alive against each other."""
    if one[0].closes != other[0].closes:
        shared = places(one[1] & other[1])
        return any_of(all_of([view.alive(*one, i), view.alive(*other, i)]) for i in shared)
    return all_of(
        any_of(view.alive(norm, mask, i) for norm, mask in (one, other) if mask >> i & 1)
        for i in places(view.everything)
    )


def unsettled(view: View, pairs: Sequence[Opposition]) -> list[Left]:
    """What is left unsettled in a view: the norms, when they conflict, and one case.

    Single rules that leave nothing open first, then pairs; then sets of three or more, for values that
    several rules close together.
    """
    found: list[Left] = []
    for norm, mask in view.closing:
        if mask == view.everything:
            matter = all_of(view.alive(norm, mask, i) for i in places(mask))
            case = view.law.case((matter,), view.known)
            if case is not None:
                found.append((((norm, mask),), matter, case))
    alone = {norms[0][0].rule for norms, _, _ in found}
    for pair in pairs:
        doubled = all(n.closes for n, _ in pair.norms) and any(n.rule in alone for n, _ in pair.norms)
        if pair.principle is None and not doubled:
            matter = conflict_of(view, *pair.norms)
            case = view.law.case((matter,), view.known)
            if case is not None:
                found.append((pair.norms, matter, case))
    known = [{norm.key for norm, _ in norms} for norms, _, _ in found]
    while crowd := _crowd(view, known):
        found.append(crowd)
        known.append({norm.key for norm, _ in crowd[0]})
    return found


def _crowd(view: View, known: list[set[str]]) -> Left | None:
    """Rules that together close every value though no two of them do, if some case has such."""
    closers = [*view.closing, *view.residual]
    covered = 0
    for _, mask in closers:
        covered |= mask
    act = view.law.lookup.aspects[view.aspect].kind == "act"
    if covered != view.everything or len(closers) < 2 or (act and len(view.residual) < 2):
        return None

    def extend(place: int, chosen: Norms, parts: list[Condition]) -> Left | None:
        keys = {norm.key for norm, _ in chosen}
        if any(pair <= keys for pair in known):
            return None
        case = view.law.case(parts, view.known)
        if case is None:
            return None
        if not view.everything >> place:
            return chosen, all_of(parts), case
        fresh = [closer for closer in closers if closer not in chosen]
        for closer in (*chosen, *fresh):
            if closer[1] >> place & 1:
                wider = chosen if closer in chosen else (*chosen, closer)
                found = extend(place + 1, wider, [*parts, view.effective(*closer, place)])
                if found:
                    return found
        return None

    return extend(0, (), [])


# Findings


class Struggles:
    """Oppositions and what is left unsettled, by view; alike views of several days are worked out once."""

    def __init__(self) -> None:
        self._pairs: dict[ViewKey, list[Opposition]] = {}
        self._left: dict[ViewKey, list[Left]] = {}

    def pairs(self, view: View) -> list[Opposition]:
        if view.key not in self._pairs:
            self._pairs[view.key] = list(oppositions(view))
        return self._pairs[view.key]

    def left(self, view: View) -> list[Left]:
        if view.key not in self._left:
            self._left[view.key] = unsettled(view, self.pairs(view))
        return self._left[view.key]


def conflict_findings(law: Law, struggles: Struggles, dated: bool) -> list[Finding]:
    """Unsettled oppositions of a day as errors, one for each set of rules."""
    findings: dict[frozenset[str], Finding] = {}
    for view in law.views:
        for norms, matter, case in struggles.left(view):
            rules = frozenset(norm.rule for norm, _ in norms)
            if rules not in findings:
                facts = smallest_case(view, matter, case)
                findings[rules] = _unsettled_finding(view, sorted(rules), facts, dated)
    return list(findings.values())


def highest(lookup: Lookup, rules: Sequence[Rule]) -> Authority:
    """The highest authority behind some rules: only it can settle what they leave open."""
    return min((lookup.authorities[rule.authority] for rule in rules), key=lambda a: a.rank)


def by_rank(lookup: Lookup, names: Sequence[str]) -> list[Rule]:
    """Rules with the higher authority first, then in the order of the sources."""
    place = {rule: i for i, rule in enumerate(lookup.rules)}
    rules = sorted(names, key=lambda n: (lookup.authorities[lookup.rules[n].authority].rank, place[n]))
    return [lookup.rules[name] for name in rules]


def _unsettled_finding(view: View, names: Sequence[str], facts: Facts, dated: bool) -> Finding:
    lookup = view.law.lookup
    rules = by_rank(lookup, names)
    settled_by = highest(lookup, rules).label
    references = [clause_reference(lookup, rule.clause) for rule in rules]
    alone = len(rules) == 1
    where = f"where {say_facts(lookup, facts)}" if facts else "in every case"
    said = " against ".join(f"“{say_rule(lookup, rule)}”" for rule in rules)
    between = listing(list(dict.fromkeys(references)))
    verb = "oppose each other" if len(set(references)) > 1 else "opposes itself"
    remedy = (
        f"Add “exception to: {rules[0].id}” to {'the other rule' if len(rules) == 2 else 'another of them'} "
        f"(or the other way round), or narrow one of the conditions; only {settled_by} can settle it."
    )
    return Finding(
        at=rules[-1].at,
        code="leaves-nothing" if alone else "unsettled",
        severity="error",
        clause=rules[-1].clause,
        reference=references[-1],
        rules=tuple(rule.id for rule in rules),
        message=sentence(
            f"{between} leaves no value open {where}: {said}"
            if alone
            else f"{between} {verb} {where}, and nothing settles which goes first: {said}"
        ),
        suggestion="Leave a value open, or say that the thing itself is not worn." if alone else remedy,
        example=question(view.law, view.item, view.aspect, facts, dated),
        settled_by=settled_by,
    )


def overlap_findings(
    lookup: Lookup, everything: Sequence[Opposition], errors: Sequence[Finding]
) -> list[Finding]:
    """Oppositions that precedence or a third rule settles, as notes: one for each pair of rules."""
    left = {finding.rules for finding in errors}
    findings: dict[tuple[str, ...], Finding] = {}
    for found in everything:
        rules = by_rank(lookup, sorted({norm.rule for norm, _ in found.norms}))
        key = tuple(rule.id for rule in rules)
        if key in findings or key in left:
            continue
        last = rules[-1] if not found.loser else lookup.rules[found.loser]
        if found.principle == "edition" and lookup.rules[found.winner].modality in ("may", "need_not"):
            findings[key] = _eased_finding(found, key)
            continue
        if found.principle is None:
            names = listing([clause_reference(lookup, rule.clause) for rule in rules])
            message = f"{names} are opposed and of equal weight, and in every case a third rule settles it"
            suggestion = "Check whether an exception between the two would say it more plainly."
        else:
            message = say_defeat(lookup, found.principle, found.winner, found.loser)
            suggestion = "Nothing to do if that is meant; an exception says so in the text as well."
        findings[key] = Finding(
            at=last.at,
            code="overlap",
            severity="note",
            clause=last.clause,
            reference=clause_reference(lookup, last.clause),
            rules=key,
            message=sentence(message),
            suggestion=suggestion,
        )
    return list(findings.values())


def _eased_finding(found: Opposition, rules: tuple[str, ...]) -> Finding:
    """A later permission or exemption that goes before an earlier rule where both meet, by its date alone.

    Who amends a book seldom means that; nothing but the date decides it, so that it is easily overlooked.
    """
    view, lookup = found.view, found.view.law.lookup
    later, earlier = lookup.rules[found.winner], lookup.rules[found.loser]
    written = all_of(view.law.written(norm) for norm, _ in found.norms)
    case = view.law.case((written,), view.known)
    facts = smallest_case(view, written, case) if case else ()
    where = f" where {say_facts(lookup, facts)}" if facts else ""
    references = [clause_reference(lookup, rule.clause) for rule in (earlier, later)]
    return Finding(
        at=later.at,
        code="eased-by-date",
        severity="warning",
        clause=later.clause,
        reference=references[1],
        rules=rules,
        message=sentence(
            f"{references[1]} goes before {references[0]}{where}, only because it is later: "
            f"“{say_rule(lookup, later)}” against “{say_rule(lookup, earlier)}”"
        ),
        suggestion=(
            f"If {references[0]} should still hold there, write that under “unless”; if not, add "
            f"“exception to: {earlier.id}”, which says so."
        ),
        example=question(view.law, view.item, view.aspect, facts, False),
    )
