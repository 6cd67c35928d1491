"""What stands beside an answer: what else in the question may not be, and how the thing must be then."""

from __future__ import annotations

from collections.abc import Collection, Iterator

import msgspec

from kb.answer.acts import is_way, wear_question
from kb.answer.citing import citations
from kb.answer.common import replaced
from kb.model.conditions import ALWAYS, evaluate, tests
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Verdict
from kb.model.records import OWNED_ASPECTS, Clause, Rule
from kb.model.values import NO, YES, Choices, others_in
from kb.reasoner import WORN, Engine, Problem, possible_facts, rows
from kb.wording import clause_reference, listing, say_rule, say_verdict, sentence, the_item

_MOST = 2
_USED = {"wear": "worn", "carrying": "carried"}
_OF_USE = frozenset({"wear", "carrying", *OWNED_ASPECTS})


def _act_notes(engine: Engine, query: Query, verdict: Verdict) -> tuple[str, ...]:
    """Beside whether a thing may be worn."""
    if verdict in ("prohibited", "conflict", "silent"):
        return ()
    if is_way(engine.lookup, query):
        return claim_notes(engine, query)
    return tuple(_looks(engine, query))


def with_duties(engine: Engine, query: Query, answer: Answer, verdict: Verdict) -> Answer:
    """The answer that a thing may be worn with how it must be then, as its first line: "but must be covered".

    Where what was told brings that duty with it, a yes alone would be taken for leave to wear it openly.
    """
    lookup, headline = engine.lookup, answer.headline
    answer = replaced(answer, notes=(*answer.notes, *_act_notes(engine, query, verdict)))
    worn = query.kind == "may" and query.polarity == "do" and query.aspect == lookup.use_of(query.items[0])
    if not worn or verdict not in ("permitted", "required"):
        return answer
    told, said = list[Rule](), list[str]()
    for rule in _bearing(engine, query):
        kept = rule.aspect in lookup.aspects_within("care") or lookup.aspects[rule.aspect].kind != "act"
        so: Verdict = "required" if rule.modality == "must" else "prohibited"
        group = engine.group(query.items[0], rule.aspect)
        if kept or not engine.problem(group, possible_facts(query.case, (), True, lookup)).always(so):
            continue
        plain = msgspec.structs.replace(query, kind="why", aspect=rule.aspect, items=query.items[:1])
        line = say_verdict(lookup, so, plain).removesuffix(".")
        it = sentence(the_item(lookup, query.items[0]), "")
        said.append(
            line.removeprefix(it).strip() if line.startswith(f"{it} ") else f"{line[:1].lower()}{line[1:]}"
        )
        told.append(rule)
    if not told:
        return answer
    notes = {_with_clause(lookup, rule) for rule in told}
    known = {citation.clause for citation in answer.citations}
    found = citations(lookup, [(rule.id,) for rule in told])
    joined = "but" if verdict == "permitted" else "and"
    return replaced(
        answer,
        headline=f"{headline.removesuffix('.')}, {joined} {listing(said)}.",
        notes=tuple(note for note in answer.notes if note not in notes),
        citations=(*answer.citations, *(one for one in found if one.clause not in known)),
    )


def claim_notes(engine: Engine, query: Query) -> tuple[str, ...]:
    """Beside whether a thing may be so: whether it may be worn at all, where that is not for everybody."""
    lookup = engine.lookup
    asked = query.value is not None or is_way(lookup, query)
    if not asked or query.polarity == "not" or len(lookup.narrower(query.items[0])) > 1:
        return ()
    plain = wear_question(lookup, query)
    possible = possible_facts(plain.case, plain.items, False, lookup)
    problem = engine.problem(engine.group(plain.items[0], plain.aspect), possible)
    table = rows(problem.verdicts())
    if len(table) < 2 or "prohibited" not in problem.said():
        return ()
    facts = [fact for when, _ in table for fact, _ in when]
    said = say_verdict(lookup, "conditional", plain, open_facts=facts, rows=table)
    return (f"Whether {the_item(lookup, plain.items[0])} may be {_USED[plain.aspect]} at all: {said}",)


def worn_notes(engine: Engine, query: Query) -> tuple[str, ...]:
    """Beside a silence on a value that no book names: what is said of wearing the thing."""
    if not others_in(query.value) or len(engine.lookup.narrower(query.items[0])) > 1:
        return ()
    plain = msgspec.structs.replace(wear_question(engine.lookup, query), kind="when")
    possible = possible_facts(plain.case, plain.items, False, engine.lookup)
    table = rows(engine.problem(engine.group(plain.items[0], plain.aspect), possible).verdicts())
    facts = [fact for when, _ in table for fact, _ in when]
    verdict = "conditional" if facts else table[0][1]
    if verdict in ("silent", "conflict"):
        return ()
    said = say_verdict(engine.lookup, verdict, plain, open_facts=facts, rows=table)
    it = the_item(engine.lookup, plain.items[0])
    return (f"Whether {it} may be {_USED[plain.aspect]} at all: {said}" if facts else said,)


def parted_from(engine: Engine, query: Query) -> Query | None:
    """Whether a thing told to be worn may be worn with the one asked about, if that is what forbids it.

    "I have a full beard. May I wear the mask?" is answered by a rule that is written of the beard.
    """
    lookup, item = engine.lookup, query.items[0]
    if query.kind != "may" or query.polarity == "not" or query.aspect != "wear" or query.case.alone:
        return None
    for other, _ in _fouled(engine, query):
        facts = dict(query.case.facts) | {WORN + item: NO}
        facts.pop(WORN + other, None)
        apart = msgspec.structs.replace(query.case, facts=tuple(facts.items()))
        group = engine.group(other, lookup.use_of(other))
        if engine.problem(group, possible_facts(apart, (), True, lookup)).always("prohibited"):
            continue
        together = facts | {WORN + item: YES}
        case = msgspec.structs.replace(query.case, facts=tuple(together.items()))
        return msgspec.structs.replace(query, items=(other,), aspect=lookup.use_of(other), case=case)
    return None


def with_company(engine: Engine, query: Query, answer: Answer) -> Answer:
    """The answer with what else may not be, and where nothing says whether, how the thing must be."""
    lookup, said = engine.lookup, [answer.headline]
    bearing = _only_how(engine, query) if answer.verdict == "silent" else ()
    if answer.verdict in ("silent", "conditional") and not bearing:
        from kb.answer.unspoken import with_elsewhere, with_unspoken  # noqa: PLC0415  many say yes or no

        told = with_unspoken if answer.verdict == "silent" else with_elsewhere
        answer = told(engine, query, answer)
        said = [answer.headline]
    if bearing:
        done = lookup.aspects[query.aspect].done or "done"
        whether = f"whether {the_item(lookup, query.items[0])} may be {done}"
        said = [f"No clause says {whether}, only how."]
        said += [_with_clause(lookup, rule) for rule in bearing]
    headline = " ".join((*said, *_foul_company(engine, query)))
    return msgspec.structs.replace(answer, headline=headline)


def _only_how(engine: Engine, query: Query) -> tuple[Rule, ...]:
    """The duties that take it for granted that the thing is worn in the case told."""
    if query.kind != "may" or query.polarity == "not":
        return ()
    return tuple(rule for rule in _bearing(engine, query) if rule.modality == "must")


def _foul_company(engine: Engine, query: Query) -> Iterator[str]:
    """Things that are said to be worn with it and may not be worn in this case themselves."""
    lookup = engine.lookup
    for other, problem in _fouled(engine, query):
        case = msgspec.structs.replace(query.case, alone=False)
        plain = msgspec.structs.replace(
            query, kind="why", items=(other,), case=case, polarity="do", modalities=()
        )
        said = say_verdict(lookup, "prohibited", wear_question(lookup, plain)).removeprefix("No. ")
        yield f"But {said[:1].lower()}{said[1:].removesuffix('.')} here ({_by(problem, lookup)})."
    for rule in _clashing(engine, query):
        said = say_rule(lookup, rule).removesuffix(".")
        yield f"But {said[:1].lower()}{said[1:]} ({clause_reference(lookup, rule.clause)})."
    yield from _outfit_banned(engine, query)
    yield from _protection_due(engine, query)


def _outfit_banned(engine: Engine, query: Query) -> Iterator[str]:
    """That the outfit of which the thing is a part may not be worn in the case told: scrubs in a corridor."""
    lookup, known = engine.lookup, dict(query.case.facts)
    rig, told = lookup.facts.get("rig"), {fact for fact in known if lookup.facts[fact].family == "situation"}
    if rig is None or rig.id in known or not told or query.aspect != "wear":
        return
    outfits = set[str]()
    for rule in (lookup.rules[name] for name in engine.group(query.items[0], "wear").rules):
        if rule.modality not in ("must", "may"):
            continue
        parts = [t.values for t in tests(engine.condition(rule.id)) if t.fact == rig.id]
        # A thing that is also worn without any outfit says nothing of one.
        outfits |= {one for v in parts if isinstance(v, Choices) for one in v.members} or {""}
    if len(outfits) != 1 or not outfits <= lookup.items.keys():
        return
    outfit = outfits.pop()
    problem = engine.problem(engine.group(outfit, "wear"), possible_facts(query.case, (), False, lookup))
    if problem.always("prohibited"):
        yield f"But {the_item(lookup, outfit)} must not be worn here ({_by(problem, lookup)})."


def _clashing(engine: Engine, query: Query) -> Iterator[Rule]:
    """The rules by which some may not wear such a thing with what is asked about: a beard and a mask."""
    lookup, together = engine.lookup, WORN + query.items[0]
    if query.kind != "may" or query.polarity == "not" or query.case.alone:
        return
    for _, problem in _company(engine, query):
        if problem.always("prohibited") or "prohibited" not in problem.said():
            continue
        for name in (name for group in problem.carrying_rules() for name in group):
            rule = lookup.rules[name]
            if rule.modality == "must_not" and any(t.fact == together for t in tests(engine.condition(name))):
                yield rule
                break


def _fouled(engine: Engine, query: Query) -> Iterator[tuple[str, Problem]]:
    """Each such thing that may not be worn in any case, with what forbids it."""
    return ((other, problem) for other, problem in _company(engine, query) if problem.always("prohibited"))


def _company(engine: Engine, query: Query) -> Iterator[tuple[str, Problem]]:
    """Each thing that is said to be worn with what is asked about, with what the rules say of it."""
    lookup = engine.lookup
    worn = [fact[len(WORN) :] for fact, values in query.case.facts if fact.startswith(WORN) and values == YES]
    for other in dict.fromkeys((*query.items[1:], *worn)):
        if other not in lookup.items or len(lookup.narrower(other)) > 1 or other == query.items[0]:
            continue
        case = msgspec.structs.replace(query.case, alone=False)
        use = lookup.use_of(other)
        problem = engine.problem(
            engine.group(other, use), possible_facts(case, query.items[:1], True, lookup)
        )
        yield other, problem


def _protection_due(engine: Engine, query: Query) -> Iterator[str]:
    """What protects the same and must be worn in the case told: gauntlets, for gloves at hot work."""
    lookup, item = engine.lookup, query.items[0]
    stated = {fact for fact, _ in query.case.facts if lookup.facts[fact].family == "situation"}
    guarded, kinds = set(lookup.items[item].protects), set(lookup.items[item].broader)
    if query.aspect != "wear" or len(query.items) > 1 or not stated or not guarded:
        return
    possible = possible_facts(query.case, (), True, lookup)
    for other in lookup.base.items:
        shared = (wider for kind in kinds.intersection(other.broader) for wider in lookup.items[kind].broader)
        alike = any(lookup.items[wider].broader for wider in shared)  # of a kind that is no "garment"
        alike = alike and other.id != item and bool(guarded.intersection(other.protects))
        if not alike or len(lookup.narrower(other.id)) > 1:
            continue
        group = engine.group(other.id, "wear")
        tested = {test.fact for rule in group.rules for test in tests(engine.condition(rule))}
        problem = engine.problem(group, possible) if stated & tested else None
        if problem is not None and problem.always("required"):
            yield f"But {the_item(lookup, other.id)} must be worn here ({_by(problem, lookup)})."


def _by(problem: Problem, lookup: Lookup) -> str:
    """The clauses that carry the verdict of an act, one for each group of rules."""
    rules = (rule for group in problem.carrying_rules() for rule in group[:1])
    return listing(list(dict.fromkeys(clause_reference(lookup, lookup.rules[rule].clause) for rule in rules)))


def _looks(engine: Engine, query: Query) -> Iterator[str]:
    """Duties as to how the thing is worn that what was stated brings with it, as sentences."""
    for rule in _bearing(engine, query):
        yield _with_clause(engine.lookup, rule)


def _with_clause(lookup: Lookup, rule: Rule) -> str:
    return f"{say_rule(lookup, rule)} ({clause_reference(lookup, rule.clause)})"


def _bearing(engine: Engine, query: Query) -> Iterator[Rule]:
    """The rules that make them."""
    lookup, known = engine.lookup, dict(query.case.facts)
    stated = {fact for fact in known if not fact.startswith(WORN)}
    found = 0
    for aspect in _aspects(lookup, query.items[0], stated):
        kind = lookup.aspects[aspect].kind
        if kind not in ("manner", "choice", "act") or aspect in _OF_USE or found == _MOST:
            continue
        for name in engine.group(query.items[0], aspect).rules:
            rule = lookup.rules[name]
            condition = engine.condition(name)
            tested = {test.fact for test in tests(condition)}
            bears = rule.modality in ("must", "must_not") and condition != ALWAYS and stated & tested
            if bears and found < _MOST and evaluate(condition, known.get) is True:
                found += 1
                yield rule


def _aspects(lookup: Lookup, item: str, facts: Collection[str] | None = None) -> list[str]:
    """The aspects that rules on the item, or on what it is a kind of, speak of, testing one of the facts."""
    wider = set(lookup.broader(item))
    return list(
        dict.fromkeys(
            rule.aspect
            for rule in lookup.rules_on(wider)
            if facts is None or any(_rests_on(lookup, test.fact, facts) for test in tests(rule.condition))
        )
    )


def _rests_on(lookup: Lookup, fact: str, facts: Collection[str]) -> bool:
    """Whether a fact is one of these, or a term that is made of others."""
    return fact in facts or lookup.facts[fact].family == "term"


def silence_notes(engine: Engine, query: Query) -> tuple[str, ...]:
    """The clauses that speak of the thing, where no rule says what is asked: their words may tell more."""
    lookup = engine.lookup
    if not query.items:
        return ()
    item = query.items[0]
    aspects = _aspects(lookup, item)
    spoken = [r for aspect in aspects for r in engine.group(item, aspect).rules]
    act = lookup.aspects[query.aspect].kind == "act"
    rules = [lookup.rules[r] for r in (engine.group(item, query.aspect).rules if act else spoken)]
    named = [rule for rule in rules if not rule.residual and (act or item in rule.scope.items)]
    names = [clause_reference(lookup, clause) for clause in dict.fromkeys(rule.clause for rule in named)]
    if not 0 < len(names) <= 2 * _MOST:
        return ()
    verb = "speaks" if len(names) == 1 else "speak"
    what = "not of this case" if act else "no rule says this"
    return (f"{listing(names)} {verb} of {the_item(lookup, item)}, but {what}.",)


def ended_note(engine: Engine, clause: Clause) -> str:
    """That a clause is not in force on the day, and what stands in its place."""
    day, lookup = engine.as_of, engine.lookup
    if clause.valid_until is None or clause.valid_until > day:
        return ""
    name = clause_reference(lookup, clause.id)
    since = f"{clause.valid_until.day} {clause.valid_until:%B %Y}"
    if clause.replaced_by is None:
        return sentence(f"{name} is no longer in force since {since}")
    return sentence(f"{name} was replaced by {clause_reference(lookup, clause.replaced_by)} on {since}")
