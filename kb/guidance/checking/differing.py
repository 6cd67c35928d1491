"""Sentences that nobody could read, but that are a rule's own sentence except for words that carry it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from kb.guidance.checking.books import Books
from kb.guidance.checking.findings import CheckFinding, finding_at
from kb.guidance.checking.nearest import is_reordered, is_telling, nearest, tokens
from kb.guidance.checking.passage import Passage
from kb.guidance.checking.verdicts import Weighing
from kb.model.records import Clause
from kb.wording import clause_reference, say_datum, say_rule


class Differing:
    """Holds sentences against the sentences of the rules that they cite, word by word."""

    def __init__(self, books: Books, weighing: Weighing) -> None:
        self.books = books
        self.weighing = weighing
        self.lookup = books.lookup

    def find(self, passage: Passage, rest: str, clauses: Sequence[Clause]) -> CheckFinding | None:
        """The finding that a sentence changes a rule of its clauses; `rest` is the sentence without them."""
        rules = [rule for clause in clauses for rule in self.books.lookup.rules_of(clause.id)]
        pairs = [(rule.id, say_rule(self.lookup, rule)) for rule in rules]
        pairs += [
            (rule.id, self.weighing.said(rule, within, cite=False))
            for rule in rules
            for within in passage.contexts
        ]
        near = nearest(rest, pairs)
        if near is None:
            return None
        rule = self.lookup.rules[near[0]]
        name = clause_reference(self.lookup, rule.clause)
        if is_reordered(rest, near[1]):
            message = f"{name} has the same words in another order: {near[1]}"
        elif is_telling(near[2], self._telling):
            lost, added = " ".join(near[2].lost), " ".join(near[2].added)
            message = f"{name} says “{lost}” where this says “{added}”."
        else:
            return None
        return finding_at(
            passage,
            "error",
            "differs",
            message,
            self.weighing.said(rule, passage.contexts[0]),
            clause=name,
            quotation=self.weighing.quoted(rule, rest),
        )

    @cached_property
    def _telling(self) -> list[str]:
        """Words of grades, choices, manners and datums: exchanging one for another changes a rule."""
        base = self.lookup.base
        values = [value for fact in base.facts for value in fact.values]
        values += [value for aspect in base.aspects for value in aspect.values]
        texts = [name for value in values for name in (value.id, value.label)]
        manners = [aspect.label for aspect in base.aspects if aspect.kind == "act" and aspect.verb is None]
        measures = [rule.value.measure for rule in base.rules]
        datums = [say_datum(m.datum) for m in measures if m is not None and m.datum is not None]
        long = [word for text in (*manners, *datums) for word in tokens(text) if len(word) > 3]
        return [*long, *(word for text in texts for word in tokens(text))]
