"""Where, how, how many: the values that are left open for the aspects of an item."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from kb.answer.common import Part, row_label
from kb.explanation import derive
from kb.model.questions import AnswerCase, Derivation, OpenValue, ValueFate, ValueStatus, Verdict
from kb.model.records import Rule, leaves_room
from kb.model.values import ValueSet, contains, intersect, is_empty, is_subset, others_in, unite
from kb.reasoner import Engine, Group, claim_verdict, rows
from kb.wording import say_open_values, say_value

Key = tuple[Verdict, tuple[ValueStatus, ...]]


def aspects_of(engine: Engine, item: str, aspect: str) -> tuple[str, ...]:
    """The aspects within `aspect` (all but acts for "wear") for which the item has rules in force."""
    lookup = engine.lookup
    if aspect == "wear":
        wanted = [a.id for a in lookup.base.aspects if a.kind != "act" or a.within is not None]
    else:
        wanted = list(lookup.aspects_within(aspect))
    named = {rule.aspect for rule in lookup.base.rules}
    return tuple(a for a in wanted if a in named and engine.group(item, a).rules)


def aspect_part(
    engine: Engine,
    item: str,
    aspect: str,
    possible: Mapping[str, ValueSet],
    claim: ValueSet | None = None,
    bound: bool = False,
    on: frozenset[str] = frozenset(),
) -> Part:
    """The table of values left open for one aspect; with `claim`, the verdict is on the claimed values.

    `bound` asks whether these are all that is left ("must it be at most 7 in?"), not whether each of them is.
    `on` are the garments it was asked of, if any: no place on another is told.
    """
    group = engine.group(item, aspect, others_in(claim))
    elsewhere = _elsewhere(engine, group, on)
    place = engine.lookup.aspects[aspect].kind == "position"
    room = place and claim is not None and leaves_room(claim, engine.lookup.base.rules)

    def key(statuses: tuple[ValueStatus, ...], duty: bool) -> Key:
        statuses = _closed_at(statuses, elsewhere)
        verdict = (
            _claimed(group, statuses, claim, duty, bound, place) if claim else engine.verdict(group, statuses)
        )
        return ("permitted" if room and verdict == "required" else verdict), statuses

    folded: Key = ("conditional", ())
    cases: list[AnswerCase] = []
    derivations: list[Derivation] = []
    problem = engine.problem(group, possible)
    for when, (verdict, _) in rows(problem.values(key, folded, duties=claim is not None)):
        derivation = derive(engine, problem, possible, when)
        cases.append(
            AnswerCase(
                when=when,
                label=row_label(engine.lookup, when),
                verdict=verdict,
                values=() if verdict == "conditional" else open_values(engine, group, derivation, elsewhere),
                rules=problem.alive_rules(dict(when)),
            )
        )
        derivations.append(derivation)
    return Part(item=item, aspect=aspect, cases=tuple(cases), derivations=tuple(derivations))


def _claimed(
    group: Group, statuses: Sequence[ValueStatus], claim: ValueSet, duty: bool, bound: bool, place: bool
) -> Verdict:
    """The verdict on claimed values. What a duty leaves open is permitted; all that it leaves, required.

    Where they are asked for as a bound, a part of them may be closed: "at most 7 in" and "more than 5 in".
    The words for a `place` may fit several places, of which one that is open is enough.
    """
    touched = [
        status
        for values, status in zip(group.classes, statuses, strict=True)
        if not is_empty(intersect(values, claim))
    ]
    if place and set(touched) != {"closed"} and "contested" not in touched:
        touched = ["supported"] if "supported" in touched else ["unaddressed"]
    verdict = claim_verdict(touched)
    part_closed = bound and verdict == "prohibited" and set(touched) != {"closed"}
    if not duty or not (part_closed or verdict in ("silent", "permitted")):
        return verdict
    beside = (s for v, s in zip(group.classes, statuses, strict=True) if not is_subset(v, claim))
    if all(status == "closed" for status in beside):
        return "required"
    return verdict if part_closed else "permitted"


def _elsewhere(engine: Engine, group: Group, on: frozenset[str]) -> frozenset[int]:
    """The classes of values that are places on other garments than it was asked of; none if all are."""
    lookup = engine.lookup
    if not on or lookup.aspects[group.aspect].kind != "position":
        return frozenset()
    places = {p.id: p.on for rule in group.rules for p in lookup.rules[rule].value.positions}
    theirs = {g for garment in on for g in (*lookup.broader(garment), *lookup.narrower(garment))}
    of = [
        {garment for place, garment in places.items() if contains(values, place)} for values in group.classes
    ]
    others = frozenset(i for i, garments in enumerate(of) if garments and theirs.isdisjoint(garments))
    return others if any(not theirs.isdisjoint(garments) for garments in of) else frozenset()


def _closed_at(statuses: tuple[ValueStatus, ...], places: frozenset[int]) -> tuple[ValueStatus, ...]:
    """The statuses with those at some places closed; as they are where nothing else is open."""
    closed: tuple[ValueStatus, ...] = tuple(
        "closed" if i in places else status for i, status in enumerate(statuses)
    )
    return closed if set(closed) != {"closed"} else statuses


def open_values(
    engine: Engine, group: Group, derivation: Derivation, elsewhere: frozenset[int] = frozenset()
) -> tuple[OpenValue, ...]:
    """What is left open in one decided case, in the words of the rules where these say exactly that."""
    lookup = engine.lookup
    kind = lookup.aspects[group.aspect].kind
    fates = derivation.fates
    if kind == "act":
        return _open_act(engine, group, derivation)
    restricted = any(fate.status == "closed" for fate in fates)
    left = [f for f in fates if f.status == "supported" or (restricted and f.status == "unaddressed")]
    others, single = [group.classes[i] for i in elsewhere], len(left) == 1
    left = [fate for fate in left if fate.values not in others] or left
    if not left:
        return ()
    rules = {rule: lookup.rules[rule] for fate in fates for rule in (*fate.closed_by, *fate.supported_by)}
    if kind in ("measure", "count"):
        return (_open_quantity(engine, group, left, rules, restricted),)
    found = []
    for fate in left:
        rule = _speaker(fate.values, rules.values())
        if rule is None and kind != "choice":
            continue
        position = (
            next((p for p in rule.value.positions if contains(fate.values, p.id)), None) if rule else None
        )
        found.append(
            OpenValue(
                item=group.item,
                aspect=group.aspect,
                label=say_open_values(lookup, group.aspect, fate.values, rule.value if rule else None),
                values=fate.values,
                status=fate.status,
                required=restricted and single,
                position=position,
                rules=tuple(r.id for r in rules.values() if is_subset(fate.values, r.value.values)),
            )
        )
    return tuple(found)


def _speaker(values: ValueSet, rules: Iterable[Rule]) -> Rule | None:
    """The rule that speaks about these values, a duty first."""
    speaking = [r for r in rules if r.modality in ("must", "may") and is_subset(values, r.value.values)]
    return min(speaking, key=lambda r: r.modality != "must") if speaking else None


def _open_quantity(
    engine: Engine, group: Group, left: Sequence[ValueFate], rules: Mapping[str, Rule], restricted: bool
) -> OpenValue:
    values = left[0].values
    for fate in left[1:]:
        values = unite(values, fate.values)
    speaker = next(
        (r for r in rules.values() if r.modality in ("must", "may") and _is_left(r, group, left)), None
    )
    lender = speaker or next((r for r in rules.values() if r.value.measure is not None), None)
    if speaker is not None:
        label = say_value(engine.lookup, group.aspect, speaker.value)
    else:
        label = say_open_values(engine.lookup, group.aspect, values, lender.value if lender else None)
    return OpenValue(
        item=group.item,
        aspect=group.aspect,
        label=label,
        values=values,
        status=left[0].status,
        required=restricted,
        measure=speaker.value.measure if speaker else None,
        rules=tuple(rules),
    )


def _is_left(rule: Rule, group: Group, left: Sequence[ValueFate]) -> bool:
    """Whether a rule speaks of exactly the classes of values that are left."""
    kept = [fate.values for fate in left]
    return all(is_subset(values, rule.value.values) == (values in kept) for values in group.classes)


def _open_act(engine: Engine, group: Group, derivation: Derivation) -> tuple[OpenValue, ...]:
    """An act within a manner ("care:hand-wash"): one value, required, permitted or prohibited."""
    lookup = engine.lookup
    if derivation.verdict in ("silent", "conflict"):
        return ()
    rules = tuple(rule for fate in derivation.fates for rule in (*fate.closed_by, *fate.supported_by))
    return (
        OpenValue(
            item=group.item,
            aspect=group.aspect,
            label=lookup.aspects[group.aspect].label,
            values=derivation.fates[0].values,
            status=derivation.fates[0].status,
            required=derivation.verdict == "required",
            rules=rules,
        ),
    )
