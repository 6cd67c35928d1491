"""The whole way to an answer as a tree: each case, the rules that were looked at, and which beat which."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import kb
from shell.blocks import Block, Chain, Node, Points, Tone
from shell.words import VERDICTS

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

_MOST_REASONS = 5
_STATUS = {
    "applies": "applies",
    "does_not_apply": "does not apply",
    "depends": "may apply",
    "disabled": "is disabled",
    "not_in_force": "is not in force",
}
_PRINCIPLES = {
    "exception": "it is declared an exception",
    "delegation": "it is made under a delegation",
    "authority": "it stands higher",
    "edition": "it is later",
    "specificity": "it is about a narrower set of cases",
}
_TONES: dict[str, Tone] = {"must": "must", "may": "yes", "need_not": "yes", "must_not": "no"}


def _editions(answer: Answer, base: KnowledgeBase) -> tuple[str, ...]:
    """The labels of all editions that the derivation draws on."""
    clauses, editions = base.lookup.clauses, base.lookup.editions
    steps = (step for derivation in answer.derivation for step in derivation.steps)
    found = (editions[clauses[step.clause].edition].label for step in steps if step.clause in clauses)
    return tuple(dict.fromkeys(map(kb.visible, found)))


def _source_names(answer: Answer, base: KnowledgeBase) -> dict[str, str]:
    """Rule id to "clause <number>", after the edition's title where there are several editions."""
    clauses, editions = base.lookup.clauses, base.lookup.editions
    several = len(_editions(answer, base)) > 1
    names: dict[str, str] = {}
    for derivation in answer.derivation:
        for step in derivation.steps:
            clause = clauses.get(step.clause)
            title = f"{editions[clause.edition].label}, " if clause and several else ""
            names[step.rule] = kb.visible(f"{title}clause {clause.number}" if clause else step.clause)
    return names


def _rows(answer: Answer) -> tuple[tuple[tuple[tuple[str, Any], ...], str], ...]:
    """For each derivation the facts and the label of the table row that it proves."""
    if len(answer.cases) == len(answer.derivation):
        return tuple((case.when, case.label) for case in answer.cases)
    labels = {case.when: case.label for case in answer.cases}
    return tuple((proof.when, labels.get(proof.when, "")) for proof in answer.derivation)


def _chosen(answer: Answer) -> tuple[dict[str, Any], ...]:
    """For each derivation the facts that nobody stated: it is worked out for one case of its row."""
    return tuple(
        {fact: values for fact, values in proof.when if dict(row).get(fact) != values}
        for proof, (row, _) in zip(answer.derivation, _rows(answer), strict=True)
    )


def _titles(answer: Answer, base: KnowledgeBase) -> tuple[str, ...]:
    """What each derivation is about: its item among several, its row, and the case it is shown for."""
    items = {derivation.item for derivation in answer.derivation}
    titles = []
    for derivation, (when, label), chosen in zip(
        answer.derivation, _rows(answer), _chosen(answer), strict=True
    ):
        item = base.lookup.items.get(derivation.item)
        parts = [item.label] if item and len(items) > 1 else []
        parts.append(label or (base.say_facts(when) if when else "in every case"))
        title = f"{', '.join(parts)}: {VERDICTS[derivation.verdict][0]}"
        if chosen:
            title += f" (shown for one such case: {base.say_facts(tuple(chosen.items()))})"
        titles.append(kb.visible(title))
    return tuple(titles)


def _winner_names(answer: Answer, index: int, names: dict[str, str]) -> dict[str, str]:
    """Rule id to its source, with its sentence where several rules of the case share the source."""
    steps = answer.derivation[index].steps
    sources = [names[step.rule] for step in steps]
    return {
        step.rule: f'{names[step.rule]} ("{kb.visible(step.statement)}")'
        if sources.count(names[step.rule]) > 1
        else names[step.rule]
        for step in steps
    }


def _beaten(answer: Answer, index: int, names: dict[str, str]) -> dict[str, list[Node]]:
    """Loser's rule id to one node for each rule that beats it."""
    beaten: dict[str, list[Node]] = {}
    winners = _winner_names(answer, index, names)
    for defeat in answer.derivation[index].defeats:
        winner = winners.get(defeat.winner, kb.visible(defeat.winner))
        text = f"gives way to {winner} by {defeat.principle}: {_principle(defeat)}"
        beaten.setdefault(defeat.loser, []).append(Node(text))
    return beaten


def _steps(answer: Answer, index: int, names: dict[str, str]) -> tuple[Node, ...]:
    """The rules of one case: those that decide first, then the beaten ones, then those kept out."""
    beaten, opposed = _beaten(answer, index, names), _opposed(answer.derivation[index])
    winners = _winner_names(answer, index, names)
    order = {"applies": 0, "depends": 1, "disabled": 2, "does_not_apply": 3, "not_in_force": 4}
    steps = sorted(answer.derivation[index].steps, key=lambda step: (order[step.status], not step.alive))
    nodes = []
    for step in steps:
        state = _STATUS[step.status]
        reason = kb.visible(step.reason.removeprefix("kept out: "))
        below = [Node(f"{state}: {reason}" if reason else state)]
        below += [
            Node(f"disabled by {names.get(rule, kb.visible(rule))}")
            for rule in step.disabled_by
            if step.status == "disabled"
        ]
        below += [*beaten.get(step.rule, []), *_against(step.rule, opposed, winners)]
        tone = _TONES[step.modality] if step.status == "applies" and step.alive else "quiet"
        text = f"{names[step.rule]}: {kb.visible(step.statement)}"
        nodes.append(Node(text, (*below, Node(f"written at {kb.visible(str(step.at))}", tone="quiet")), tone))
    return tuple(nodes)


def short_reasons(answer: Answer, base: KnowledgeBase) -> tuple[Node, ...]:
    """What decided an answer that no further fact changes: its rules, each with the facts that make it apply
    and the rules that give way to it.

    Rules that only the case chosen for the proof brings in are left to the whole chain.
    """
    if any(case.when for case in answer.cases):
        return ()
    names = _source_names(answer, base)
    nodes: dict[str, Node] = {}
    for index, (derivation, chosen) in enumerate(zip(answer.derivation, _chosen(answer), strict=True)):
        sure = tuple(
            step
            for step in derivation.steps
            if step.status == "applies" and not any(fact in chosen for fact, _ in step.facts)
        )
        known = {step.rule for step in sure}
        winners, opposed = _winner_names(answer, index, names), _opposed(derivation)
        for step in sure:
            below = [Node(f"applies: {kb.visible(step.reason)}")] if step.facts else []
            below += [
                Node(f"goes before {winners[defeat.loser]} by {defeat.principle}: {_principle(defeat)}")
                for defeat in derivation.defeats
                if defeat.winner == step.rule and defeat.loser in known
            ]
            below += _against(step.rule, opposed, winners)
            if step.alive:
                text = f"{names[step.rule]}: {kb.visible(step.statement)}"
                nodes.setdefault(text, Node(text, tuple(below), _TONES[step.modality]))
    said_already = len(nodes) == 1 and next(iter(nodes)).endswith(f": {kb.visible(answer.headline)}")
    if said_already and not next(iter(nodes.values())).below:
        return ()
    return tuple(nodes.values())[:_MOST_REASONS]


def _opposed(derivation: Any) -> dict[str, tuple[str, ...]]:
    """In a conflict, for each rule the rules that it stands against: one closes what the other supports, or
    the two together leave nothing open."""
    if derivation.verdict != "conflict":
        return {}
    closes: dict[str, set[int]] = {}
    for number, fate in enumerate(derivation.fates):
        for rule in fate.closed_by:
            closes.setdefault(rule, set()).add(number)
    every = set(range(len(derivation.fates)))
    pairs = {(rule, other) for rule in closes for other in closes if closes[rule] | closes[other] == every}
    pairs |= {
        (rule, other) for fate in derivation.fates for rule in fate.closed_by for other in fate.supported_by
    }
    both = sorted({*pairs, *((other, rule) for rule, other in pairs)})
    return {rule: tuple(b for a, b in both if a == rule != b) for rule, _ in both}


def _against(rule: str, opposed: dict[str, tuple[str, ...]], names: dict[str, str]) -> list[Node]:
    rivals = [names.get(rival, kb.visible(rival)) for rival in opposed.get(rule, ())]
    return [Node(f"stands against {rival}, and neither gives way", tone="clash") for rival in rivals]


def _principle(defeat: Any) -> str:
    """Why one rule goes before the other, in words; what only says the name of the principle is left out."""
    detail: str = defeat.detail or _PRINCIPLES[defeat.principle]
    return kb.visible(detail.removeprefix("more specific: "))


def chain_blocks(answer: Answer, base: KnowledgeBase) -> tuple[Block, ...]:
    """One tree for the whole derivation, and what would have to change for another verdict."""
    names = _source_names(answer, base)
    nodes = tuple(
        Node(title, _steps(answer, index, names)) for index, title in enumerate(_titles(answer, base))
    )
    editions = _editions(answer, base)
    title = f"The whole way, in the {editions[0]}" if len(editions) == 1 else "The whole way"
    return (*((Chain(title, nodes),) if nodes else ()), *change_blocks(answer))


def change_blocks(answer: Answer) -> tuple[Block, ...]:
    """The smallest changes of facts that would give another verdict."""
    lines = tuple(
        f"{kb.visible(change.label)}: {VERDICTS[change.verdict][0].lower()}" for change in answer.changes
    )
    return (Points("It would be otherwise if", lines),) if lines else ()
