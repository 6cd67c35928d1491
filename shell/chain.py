"""The whole way to an answer as a tree: each case, the rules that were looked at, and which beat which."""

from __future__ import annotations

from typing import TYPE_CHECKING

import kb
from shell.blocks import Block, Chain, Node, Tone

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

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


def _source_names(answer: Answer, base: KnowledgeBase) -> dict[str, str]:
    """Rule id to "<edition title>, clause <number>"."""
    clauses, editions = base.lookup.clauses, base.lookup.editions
    names: dict[str, str] = {}
    for derivation in answer.derivation:
        for step in derivation.steps:
            clause = clauses.get(step.clause)
            edition = editions.get(clause.edition) if clause else None
            name = f"{edition.label}, clause {clause.number}" if clause and edition else step.clause
            names[step.rule] = kb.visible(name)
    return names


def _titles(answer: Answer, base: KnowledgeBase) -> tuple[str, ...]:
    """What each derivation is about: its item where there are several, and its case in words."""
    items = {derivation.item for derivation in answer.derivation}
    labels = {case.when: case.label for case in answer.cases}
    titles = []
    for derivation in answer.derivation:
        item = base.lookup.items.get(derivation.item)
        when = labels.get(derivation.when) or base.say_facts(derivation.when)
        parts = [item.label] if item and len(items) > 1 else []
        parts += [when] if when else []
        verdict = derivation.verdict.replace("_", " ")
        titles.append(kb.visible(", ".join(parts) or "In this case") + f": {verdict}")
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
        reason = defeat.detail or _PRINCIPLES[defeat.principle]
        winner = winners.get(defeat.winner, kb.visible(defeat.winner))
        text = f"gives way to {winner} by {defeat.principle}: {kb.visible(reason)}"
        beaten.setdefault(defeat.loser, []).append(Node(text))
    return beaten


def _steps(answer: Answer, index: int, names: dict[str, str]) -> tuple[Node, ...]:
    """The rules of one case: those that decide first, then the beaten ones, then those kept out."""
    beaten = _beaten(answer, index, names)
    order = {"applies": 0, "depends": 1, "disabled": 2, "does_not_apply": 3, "not_in_force": 4}
    steps = sorted(answer.derivation[index].steps, key=lambda step: (order[step.status], not step.alive))
    nodes = []
    for step in steps:
        state = _STATUS[step.status]
        reason = kb.visible(step.reason)
        below = [Node(f"{state}: {reason}" if reason else state)]
        below += [
            Node(f"disabled by {names.get(rule, kb.visible(rule))}")
            for rule in step.disabled_by
            if step.status == "disabled"
        ]
        below += beaten.get(step.rule, [])
        tone = _TONES[step.modality] if step.status == "applies" and step.alive else "quiet"
        text = f"{names[step.rule]}: {kb.visible(step.statement)}"
        nodes.append(Node(text, (*below, Node(f"written at {kb.visible(str(step.at))}")), tone))
    return tuple(nodes)


def chain_blocks(answer: Answer, base: KnowledgeBase) -> tuple[Block, ...]:
    """One tree for the whole derivation."""
    names = _source_names(answer, base)
    nodes = tuple(
        Node(title, _steps(answer, index, names)) for index, title in enumerate(_titles(answer, base))
    )
    return (Chain("The whole way", nodes),) if nodes else ()
