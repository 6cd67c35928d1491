"""Clauses in few words: by number, and by edition where it is not the one that an answer rests on."""

from __future__ import annotations

from typing import TYPE_CHECKING

import kb

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase


def number_key(number: str) -> tuple[tuple[bool, int, str], ...]:
    """Clause numbers in the order of a book: 4.2 before 4.12."""
    return tuple(
        (not part.isdecimal(), int(part) if part.isdecimal() else 0, part) for part in number.split(".")
    )


def main_edition(answer: Answer, base: KnowledgeBase) -> str:
    """The edition that most rules of the answer are from; "" if it rests on none."""
    spoken = [entry.rules for entry in answer.entries] + [case.rules for case in answer.cases]
    spoken += [side.rules for difference in answer.differences for side in difference.sides]
    rules = [base.lookup.rules[rule] for some in spoken for rule in some if rule in base.lookup.rules]
    editions = [base.lookup.clauses[rule.clause].edition for rule in rules]
    return max(dict.fromkeys(editions), key=editions.count, default="")


def _numbers(rules: tuple[str, ...], base: KnowledgeBase, main: str) -> list[tuple[str, list[str]]]:
    """For each edition its label ("" for the main one, which goes first) and the numbers, in order."""
    found: dict[str, set[str]] = {}
    for rule in rules:
        if rule in base.lookup.rules:
            clause = base.lookup.clauses[base.lookup.rules[rule].clause]
            found.setdefault(clause.edition, set()).add(kb.visible(clause.number))
    labels = {one: "" if one == main else kb.visible(base.lookup.editions[one].label) for one in found}
    order = sorted(found, key=lambda edition: edition != main)
    return [(labels[edition], sorted(found[edition], key=number_key)) for edition in order]


def clause_numbers(rules: tuple[str, ...], base: KnowledgeBase, main: str) -> str:
    """For a sentence: "clauses 4.12, 5.1; Interim Notice, clause 3"; "" for none."""
    return "; ".join(
        f"{label}, clause{'s' * (len(numbers) > 1)} {', '.join(numbers)}".removeprefix(", ")
        for label, numbers in _numbers(rules, base, main)
    )


def numbers_alone(rules: tuple[str, ...], base: KnowledgeBase, main: str) -> str:
    """For a table: "4.12, 5.1; Interim Notice 3"; "" for none."""
    return "; ".join(
        f"{label} {', '.join(numbers)}".strip() for label, numbers in _numbers(rules, base, main)
    )
