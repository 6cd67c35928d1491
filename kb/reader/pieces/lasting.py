"""How long something holds: "the last day for the canvas belt", "until when", "from what day"."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from typing import Literal

from kb.model.conditions import ALWAYS
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Rule
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set
from kb.text import Pattern

End = Literal["until", "from"]

_ASKS_DAY = r"(?:when|(?:what|which) (?:day|date|month|year)(?:'s)?)"
_GOES = (
    r"(?:goes? out|go out|runs? out|ends?|ended|expires?|expired|phased out|out of (?:use|date|service)|"
    r"stops?|stopped|ceases?|ceased|withdrawn|abolished|gone|done away with|no longer|banned|forbidden|"
    r"prohibited|finished|retired|discontinued|not allowed|over|out(?=$))"
)
_BEGINS = (
    r"(?:starts?|started|begins?|began|come in|came in|comes in|phased in|introduced|brought in|"
    r"takes? effect|took effect|(?:come|comes|came) into (?:use|force|effect)|"
    r"becomes?|became|first (?:worn|allowed|be worn|wear))"
)
_UNTIL = Pattern(
    r"\b(?:last|final|latest) (?:day|date)\b|\bthe (?:last|final|latest) month\b|\b(?:last|end|expiry) date\b"
    r"|\bcut(?: - )?off\b|\bdeadline\b|\b(?:day|date) after which\b"
    rf"|\b(?:until|till|til|up to|up until|by) {_ASKS_DAY}\b"
    r"|\bhow (?:much )?long(?:er)?\b.*\b(?:still|go on|goes on|keep|carry on|continue|any longer|more|left)\b"
    rf"|\bhow much longer\b|\b(?:what|which) (?:day|date)'s\b.*\b{_GOES}\b"
    rf"|\b(?:when|what day|what date)\b.*\b(?:do|does|did|will|is|are|was|were|must|has|have)\b.*\b{_GOES}\b"
)
_FROM = Pattern(
    r"\bwhen (?:'s|is|was) the (?:changeover|change over|switch(?: ?over)?)\b|"
    r"\bhow long (?:has|have|'ve) (?:i|we|you|they|it|the|he|she|people|members)\b|"
    r"\b(?:what|which) (?:day|date)\b.*\b(?:start|begin|first)\b|"
    rf"\b(?:from|since|as of|starting|as from) {_ASKS_DAY}\b|\b(?:first|earliest|start) (?:day|date)\b"
    rf"|\bwhen\b.*\b(?:do|does|did|will|is|are|was|were|can|could)\b.*\b{_BEGINS}\b"
)
_CHANGED = Pattern(
    r"\bwhen(?: and how)? (do|does|did|will|is|are|was|were|has|have)\b.*"
    r"\b(?:chang(?:e|es|ed|ing)|amended|revised)\b"
)
_AHEAD = word_set("do does will is are")
_TRIGGERS = word_set(
    "when day date month year long longer cut cutoff deadline"
)  # spares most questions the patterns
_DENIED = Pattern(rf"\b(?:not|n't|{_GOES})\b")


def asked_end(found: Understood) -> End | None:
    """Whether the words ask for the last or the first day on which something holds."""
    if not any(token.low.removesuffix("'s") in _TRIGGERS for token in found.tokens):
        return None
    said = " ".join(token.low for token in found.tokens)
    if _FROM.search(said):
        return "until" if _DENIED.search(said) else "from"
    return "until" if _UNTIL.search(said) else None


def lasting(found: Understood, before: Sequence[str], case: Case, lookup: Lookup) -> Query | None:
    """The clause that says from or until which day the one item named is worn; None where none says so.

    Where no item is named it is the one of the question `before`.
    """
    end = asked_end(found)
    said = " ".join(token.low for token in found.tokens)
    changed = _CHANGED.search(said) if end is None and "when" in said.split() else None
    items = {piece.arg for piece in found.pieces if piece.tag == "item"} or set(before[:1])
    unclear = any(piece.tag in ("items", "measure") for piece in found.pieces)
    if (end is None and changed is None) or len(items) != 1 or unclear:
        return None
    (item,) = items
    if changed is not None:
        return _changing(item, changed.group(1) in _AHEAD, case, lookup)
    dated = list(_endings(item, lookup) if end == "until" else _beginnings(item, lookup))
    if not dated:
        return None
    best = max(strength for strength, _, _ in dated)
    days = {day for strength, day, _ in dated if strength == best}
    clauses = {rule.clause for strength, _, rule in dated if strength == best}
    if len(days) != 1 or len(clauses) != 1:
        return None
    return Query(kind="source", clause=clauses.pop(), case=case)


def _of_item(item: str, lookup: Lookup) -> Iterator[tuple[Rule, bool]]:
    """Rules on wearing exactly this item, each with whether it holds in every case."""
    for rule in lookup.rules_on((item,)):
        if rule.aspect == "wear":
            yield rule, rule.condition == ALWAYS


def _endings(item: str, lookup: Lookup) -> Iterator[tuple[int, datetime.date, Rule]]:
    for rule, always in _of_item(item, lookup):
        begun = lookup.editions[lookup.clauses[rule.clause].edition].valid_from
        if rule.modality == "must_not" and rule.valid_from > begun:
            yield 2 + always, rule.valid_from, rule
        ends = rule.valid_until
        if rule.modality in ("may", "must") and ends and ends != lookup.clauses[rule.clause].valid_until:
            yield int(always), ends, rule


def _beginnings(item: str, lookup: Lookup) -> Iterator[tuple[int, datetime.date, Rule]]:
    for rule, _ in _of_item(item, lookup):
        begun = lookup.editions[lookup.clauses[rule.clause].edition].valid_from
        if rule.modality in ("may", "must") and rule.valid_from > begun:
            yield 2 * (rule.modality == "may"), rule.valid_from, rule


def _changing(item: str, ahead: bool, case: Case, lookup: Lookup) -> Query | None:
    """The clause by which the rules on an item next change, or last did, if it is one and it says the day."""
    days: dict[datetime.date, set[str]] = {}
    for rule in lookup.base.rules:
        begun = lookup.editions[lookup.clauses[rule.clause].edition].valid_from
        if item in rule.scope.items and rule.valid_from > begun and (rule.valid_from > case.as_of) == ahead:
            days.setdefault(rule.valid_from, set()).add(rule.clause)
    if not days:
        return None
    clauses = days[min(days) if ahead else max(days)]
    return Query(kind="source", clause=clauses.pop(), case=case) if len(clauses) == 1 else None
