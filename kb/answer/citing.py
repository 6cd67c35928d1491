"""The clauses that an answer cites: the fewest that carry it, and those that say the same of what is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from kb.model.conditions import Condition, NotOf, Test, tests
from kb.model.lookup import Lookup
from kb.model.questions import Citation
from kb.model.records import Rule
from kb.model.values import ValueSet, intersect, is_empty
from kb.reasoner import Facts

_STANDING = ("grade", "branch", "rig")


def citations(
    lookup: Lookup,
    groups: Iterable[tuple[str, ...]],
    both: bool = False,
    stated: Facts = (),
) -> tuple[Citation, ...]:
    """The smallest set of clauses (found greedily) with a rule of each group; all of each group if `both`.

    Of clauses that serve alike the one is taken that names the thing, then the one that speaks most of
    the facts that are `stated`.
    """
    wanted = [group for group in dict.fromkeys(groups) if group]
    named = {lookup.rules[r].clause for group in wanted for r in group if names_its_things(lookup.rules[r])}
    relevance = _relevance(lookup, wanted, dict(stated))
    chosen: dict[str, list[str]] = {}

    def choose(rule: str) -> None:
        listed = chosen.setdefault(lookup.rules[rule].clause, [])
        if rule not in listed:
            listed.append(rule)

    if both:
        for rule in (rule for group in wanted for rule in group):
            choose(rule)
        wanted = []
    while wanted:
        counts: dict[str, int] = {}
        for group in wanted:
            for clause in dict.fromkeys(lookup.rules[rule].clause for rule in group):
                counts[clause] = counts.get(clause, 0) + 1
        best = max(counts, key=lambda one: (counts[one], one in named, relevance.get(one, 0)))
        for group in wanted:
            for rule in group:
                if lookup.rules[rule].clause == best:
                    choose(rule)
        met = [g for g in wanted if any(lookup.rules[rule].clause == best for rule in g)]
        wanted = [g for g in wanted if g not in met]
        if not relevance.get(best, 0):  # a pattern that is out everywhere: the list of the rig asked of, too
            for rule in _of_what_is_stated(met, relevance, lookup):
                choose(rule)
        for rule in (*_limits_above(met, best, lookup), *_named_besides(met, best, dict(stated), lookup)):
            choose(rule)
    return tuple(citation(lookup, clause, tuple(rules)) for clause, rules in chosen.items())


def _limits_above(groups: Iterable[tuple[str, ...]], clause: str, lookup: Lookup) -> Iterator[str]:
    """The measures that a higher authority sets for what a clause of a lower one measures more narrowly."""
    rules = dict.fromkeys(rule for group in groups for rule in group)
    ranks = {rule: lookup.authorities[lookup.rules[rule].authority].rank for rule in rules}
    rank = min(ranks[rule] for rule in rules if lookup.rules[rule].clause == clause)
    yield from (r for r in rules if lookup.rules[r].value.measure is not None and ranks[r] < rank)


def _of_what_is_stated(
    groups: Iterable[tuple[str, ...]], relevance: Mapping[str, int], lookup: Lookup
) -> Iterator[str]:
    """The rules of the clause that speaks most of what is stated."""
    rules = [rule for group in groups for rule in group]
    clauses = {lookup.rules[rule].clause for rule in rules}
    best = max(clauses, key=lambda clause: relevance.get(clause, 0), default="")
    if relevance.get(best, 0):
        yield from (rule for rule in rules if lookup.rules[rule].clause == best)


def names_its_things(rule: Rule) -> bool:
    """Whether a rule is about the things it names, and not about all but those that it or others name."""
    return not rule.residual and not rule.scope.excluding


def _relevance(
    lookup: Lookup, groups: Iterable[tuple[str, ...]], stated: Mapping[str, ValueSet]
) -> Mapping[str, int]:
    """For each clause how much a rule of it speaks of what is stated, or of what that settles.

    A rule that tests "in the engine room" names what is stated; one that tests "not in the mess" speaks of it
    too, but less. Who wears what is said of most questions, and to test it is no more than that.
    """
    rules = dict.fromkeys(rule for group in groups if len(group) > 1 for rule in group) if stated else ()
    settled = _settled_by(stated, lookup) if rules else frozenset[str]()
    found: dict[str, int] = {}
    for rule in rules:
        record = lookup.rules[rule]
        speaks = len({test.fact for test in tests(record.condition)} & (settled | {*stated}))
        speaks += 2 * len(_named(record, stated, lookup))
        found[record.clause] = max(speaks, found.get(record.clause, 0))
    return found


def _named(rule: Rule, stated: Mapping[str, ValueSet], lookup: Lookup) -> frozenset[Test]:
    """The tests of a rule that name what is stated, but for who it is and in which rig."""
    return frozenset(
        test
        for test in _affirmed(rule.condition)
        if lookup.facts[test.fact].family not in _STANDING
        and test.fact in stated
        and not is_empty(intersect(test.values, stated[test.fact]))
    )


def _named_besides(
    groups: Iterable[tuple[str, ...]], clause: str, stated: Mapping[str, ValueSet], lookup: Lookup
) -> Iterator[str]:
    """The rules of other clauses that say the same of what is stated, and of which this one does not speak.

    Rings come off by running machinery, and in the lamp room: who tells both is told both clauses.
    """
    rules = dict.fromkeys(rule for group in groups for rule in group)
    named = {rule: {test.fact for test in _named(lookup.rules[rule], stated, lookup)} for rule in rules}
    told = {fact for rule in rules if lookup.rules[rule].clause == clause for fact in named[rule]}
    for rule in sorted(rules, key=lambda one: -len(named[one])):
        if not named[rule] <= told:
            told |= named[rule]
            yield rule


def _settled_by(stated: Mapping[str, ValueSet], lookup: Lookup) -> frozenset[str]:
    """The facts that cannot have all their values together with what is stated: the season, of a month."""
    tied = ({test.fact for test in tests(exclusion)} for exclusion in lookup.base.exclusions)
    return frozenset(fact for facts in tied if not facts.isdisjoint(stated) for fact in facts)


def _affirmed(condition: Condition) -> Iterator[Test]:
    """The tests of a condition that are not denied."""
    if isinstance(condition, Test):
        yield condition
    elif not isinstance(condition, NotOf):
        for part in condition.parts:
            yield from _affirmed(part)


def with_cited(lookup: Lookup, cited: tuple[Citation, ...], clauses: Iterable[str]) -> tuple[Citation, ...]:
    """What is cited, and further clauses besides, each once."""
    there = {one.clause for one in cited}
    besides = dict.fromkeys(clause for clause in clauses if clause not in there)
    return (*cited, *(citation(lookup, clause, ()) for clause in besides))


def citation(lookup: Lookup, clause_id: str, rules: tuple[str, ...]) -> Citation:
    clause = lookup.clauses[clause_id]
    edition = lookup.editions[clause.edition]
    return Citation(
        book=edition.book,
        edition=edition.id,
        title=edition.label,
        number=clause.number,
        clause=clause.id,
        text=clause.text,
        rules=rules,
        at=clause.at,
    )
