"""What the books say, put for those whom guidance is for, each sentence with its clause."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import SequenceMatcher

import msgspec

from kb.guidance.checking.books import Books
from kb.guidance.checking.nearest import nearest
from kb.guidance.checking.quotations import nearest_part
from kb.guidance.checking.words import fold
from kb.model.conditions import AllOf, Condition, Test
from kb.model.lookup import Lookup
from kb.model.records import Rule
from kb.reasoner import simplify
from kb.wording import say_rule

_MOST = 60
_MADE_FROM = 0.8


class Spelling:
    """Rules as sentences of one piece of guidance; each is made once."""

    def __init__(self, lookup: Lookup, books: Books) -> None:
        self.lookup = lookup
        self.books = books
        self._sentences: dict[tuple[str, Condition], str] = {}

    def best(self, rules: Sequence[Rule], text: str) -> Rule | None:
        """Of rules the one whose sentence is most like a text."""
        wanted = fold(text)

        def likeness(rule: Rule) -> float:
            return SequenceMatcher(None, wanted, fold(say_rule(self.lookup, rule))).ratio()

        return max(rules[:_MOST], key=likeness) if rules else None

    def meant(self, rules: Sequence[Rule], text: str, within: Condition) -> Rule | None:
        """Of rules the one that a text was plainly made from, word by word; None if it is near none."""
        pairs = [(r.id, said) for r in rules[:_MOST] for said in self._ways(r, within)]
        found = nearest(text, pairs)
        return self.lookup.rules[found[0]] if found is not None and found[2].ratio >= _MADE_FROM else None

    def _ways(self, rule: Rule, within: Condition) -> tuple[str, str]:
        return say_rule(self.lookup, rule), self.said(rule, within, cite=False)

    def settled(self, condition: Condition, within: Condition) -> Condition:
        """What is left of a condition where another holds, as far as that shows at once."""
        parts = within.parts if isinstance(within, AllOf) else (within,)
        known = {part.fact: part.values for part in parts if isinstance(part, Test)}
        return simplify(condition, known)

    def said(self, rule: Rule, within: Condition, cite: bool = True) -> str:
        """A rule's sentence for the audience, with its clause behind it."""
        key = (rule.id, within)
        if key not in self._sentences:
            left = msgspec.structs.replace(rule, condition=self.settled(rule.condition, within))
            self._sentences[key] = say_rule(self.lookup, left)
        text = self._sentences[key]
        if not cite:
            return text
        return f"{text.rstrip('.')} ({self.books.cite(rule.clause)})."

    def quoted(self, rule: Rule, text: str) -> str:
        """The part of a rule's clause that a text is about."""
        return nearest_part(text, self.lookup.clauses[rule.clause].text)
