"""Every sentence of a draft holds in every case it speaks of, and nothing that holds is left out.

Compared with the reasoner, case by case at random; the draft is made by satisfiability over all cases.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from kb.guidance.provisions import Provision
from kb.guidance.selecting import Selection
from kb.model import conditions
from kb.model.values import ValueSet, contains, is_subset
from kb.reasoner import WORN, Decision
from kb.reasoner.norms import covered_items
from tests.guidance.draft_cases import SECOND, cases, first_selection, holds, opened, plan_text

EXPECTED = {"must": "required", "must_not": "prohibited", "may": "permitted"}
PLANS: list[tuple[str, Path | None]] = [
    (plan_text("audience: {grades: H1 to K5, branch: boats}", "rigs: [boat-rig, storm-rig]",
               "situation: {winter: yes, place: [slipway, open-decks]}"), None),
    (plan_text("rigs: watch-rig", "situation: {place: [mess, town, workshop-floor]}"), None),
    (plan_text("audience: {grades: wardens}", "rigs: [parade-rig, shore-rig]",
               "situation: {activity: [parade, funeral]}"), None),
    (plan_text("rigs: workshop-rig", "situation: {machinery-running: yes, place: engine-house}"), None),
    (plan_text("clauses:", '  - clause: "1"', "    text: In the mess no telephone is carried.", "    rules:",
               "      - must not carry: telephone", "        when: {place: mess}",
               "        under: dress-order/2024/local-strictness"), None),
    (plan_text("situation: {place: fell}", authority="marshal", day="2026-01-01"), SECOND),
    (plan_text("rigs: hall-rig", authority="marshal", day="2026-01-01"), SECOND),
    (plan_text(authority="marshal", day="2026-01-01"), SECOND),
]  # fmt: skip
CASES = 25


@pytest.fixture(scope="module", params=range(len(PLANS)))
def selection(request: pytest.FixtureRequest) -> Selection:
    text, books = PLANS[request.param]
    return first_selection(opened(text, books))


def facts_of(selection: Selection, item: str, aspect: str, about: list[Provision]) -> tuple[str, ...]:
    """The facts that the decision rests on, and those that the provisions test."""
    engine = selection.law.engine
    tested = [*engine.watched(engine.group(item, aspect)).values(), *selection.setting.terms]
    tested += [selection.setting.written(provision.rule.condition) for provision in about]
    return tuple(sorted({t.fact for c in tested for t in conditions.tests(c)}))


def decide(selection: Selection, item: str, aspect: str, known: Mapping[str, ValueSet]) -> Decision:
    """What the reasoner says of an item in a case in which everything is known."""
    engine = selection.law.engine
    lookup = selection.lookup
    known = dict(known)
    if lookup.aspects[aspect].kind != "act":
        taken = selection.law.view(item, aspect).known
        known |= {fact: taken[fact] for kind in lookup.broader(item) if (fact := WORN + kind) in taken}
    group = engine.group(item, aspect)
    truths = {
        key: holds_there
        for key, condition in engine.watched(group).items()
        if (holds_there := _truth(condition, known)) is not None
    }
    return engine.decide(group, truths)


def _truth(condition: conditions.Condition, known: Mapping[str, ValueSet]) -> bool | None:
    return conditions.evaluate(condition, known.get)


def fits(selection: Selection, provision: Provision, item: str, decision: Decision) -> bool:
    """Whether a decision is what a provision says of the item."""
    rule = provision.rule
    group = selection.law.engine.group(item, rule.aspect)
    act = selection.lookup.aspects[rule.aspect].kind == "act"
    if act and rule.modality in EXPECTED and contains(rule.value.values, "yes"):
        return decision.verdict == EXPECTED[rule.modality] or (
            rule.modality == "may" and _is_choice(selection, decision)
        )
    fates = list(zip(group.classes, decision.fates, strict=True))
    if rule.modality == "must":
        return all(f.status == "closed" for v, f in fates if not is_subset(v, rule.value.values))
    if rule.modality == "must_not":
        return all(f.status == "closed" for v, f in fates if is_subset(v, rule.value.values))
    if rule.modality == "may":
        return all(f.status == "supported" for v, f in fates if is_subset(v, rule.value.values))
    return decision.verdict != "required"


def _is_choice(selection: Selection, decision: Decision) -> bool:
    """Whether a thing is required only as one of several, of which another will do."""
    closing = {rule for fate in decision.fates for rule in fate.closed_by}
    return decision.verdict == "required" and all(
        selection.lookup.rules[rule].scope.alternatives for rule in closing
    )


def _is_part_of_choice(selection: Selection, decision: Decision) -> bool:
    """Whether a thing may be worn because another of a choice is, which the duty over both says."""
    supporting = {rule for fate in decision.fates for rule in fate.supported_by}
    rules = selection.lookup.rules
    return decision.verdict == "permitted" and any(rules[rule].scope.alternatives for rule in supporting)


def test_a_sentence_holds_wherever_it_speaks(selection: Selection) -> None:
    lookup = selection.lookup
    tried = 0
    for provision in selection.chosen():
        rule = provision.rule
        if rule.scope.alternatives or rule.repairs:
            continue
        items = [i for i in covered_items(lookup, rule.scope) if selection.in_play(i)]
        for item in sorted(items)[:3]:
            for known in cases(selection, facts_of(selection, item, rule.aspect, [provision]), 7, CASES):
                if not holds(selection, rule.condition, known):
                    continue
                tried += 1
                decision = decide(selection, item, rule.aspect, known)
                assert fits(selection, provision, item, decision), (provision, item, known, decision)
    assert tried > 200


def test_nothing_that_holds_is_left_out(selection: Selection) -> None:
    lookup = selection.lookup
    chosen = selection.chosen()
    modality = {"required": ("must",), "prohibited": ("must_not",), "permitted": ("may",)}
    for item in sorted(lookup.items):
        if not selection.in_play(item) or len(lookup.narrower(item)) > 1:
            continue
        group = selection.law.engine.group(item, "wear")
        about = [s for s in chosen if s.rule.aspect == "wear" and item in covered_items(lookup, s.rule.scope)]
        if not group.rules:
            continue
        for known in cases(selection, facts_of(selection, item, "wear", about), 11, CASES):
            decision = decide(selection, item, "wear", known)
            if decision.verdict not in modality or _is_part_of_choice(selection, decision):
                continue
            said = [s for s in about if holds(selection, s.rule.condition, known)]
            if decision.verdict == "prohibited" and not said:
                closing = {rule for fate in decision.fates for rule in fate.closed_by}
                records = [lookup.rules[rule] for rule in closing]
                assert all(rule.residual or rule.scope.alternatives for rule in records), (
                    item,
                    known,
                    records,
                )
                continue
            wanted = modality[decision.verdict]
            assert any(s.rule.modality in wanted or s.rule.scope.alternatives for s in said), (
                item,
                known,
                decision,
                said,
            )
