"""Which of several things is meant, by what else was said: the tunic that one takes off in station dress.

What is asked about is narrowed only where the question takes for granted that it is worn, as "take it off"
and "what colour" do: whether a thing may or must be worn cannot tell which of them it is.
"""

from __future__ import annotations

from collections.abc import Mapping

from kb.model.conditions import evaluate, tests
from kb.model.lookup import Lookup
from kb.model.questions import Ask
from kb.model.records import Case, Rule, is_in_force
from kb.model.values import Choices, ValueSet
from kb.reader.meaning.frame import Frame
from kb.reader.names.lexicon import PERSONAL
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece
from kb.reader.words.tokens import tokenize

_GRANTED = ("how", "where", "how_many")


def narrowed(ask: Ask, frame: Frame, roles: Roles, case: Case, lookup: Lookup) -> str | None:
    """The one of the offered things that fits what was said; None where several do, or none."""
    offered = [item for item, _ in ask.choices if item in lookup.items]
    if ask.fact != "item" or len(offered) < 2 or len(offered) != len(ask.choices):
        return None
    beside = _beside(roles, offered, lookup)
    if beside is not None:
        return beside
    worn = any(_may_be(piece, offered) for piece in roles.worn)  # "with the tunic on"
    if not worn and not any({e.id for e in piece.entries} >= set(offered) for piece in roles.asked):
        return None
    if not worn and frame.kind not in _GRANTED and not (frame.kind == "may" and frame.polarity == "not"):
        return None
    known = {**dict(case.facts), **roles.facts}
    if (due := _due(offered, known, case, lookup)) and frame.kind == "may" and frame.polarity == "not":
        return due  # "may I abseil without gloves": not without those that must be worn for it
    fitting = [item for item in offered if belongs(item, known, case, lookup)]
    others = [item for item in offered if item not in fitting]
    kept_out = all(_is_out(item, known, case, lookup) for item in others)
    return fitting[0] if len(fitting) == 1 and kept_out else None


def _due(offered: list[str], known: Mapping[str, ValueSet], case: Case, lookup: Lookup) -> str | None:
    """The one of the offered things that some rule has worn in what is known, whatever else is so."""
    due = [
        item
        for item in offered
        if any(
            rule.modality == "must" and evaluate(rule.condition, known.get) is True
            for rule in _on(item, case, lookup)
        )
    ]
    return due[0] if len(due) == 1 else None


def _beside(roles: Roles, offered: list[str], lookup: Lookup) -> str | None:
    """Of what is worn beside the one thing asked about, or for it, that which rules name: "under the lid"."""
    asked = [piece for piece in roles.asked if piece.tag == "item"]
    unclear = [piece for piece in (*roles.worn, *roles.unworn, *roles.placing) if _may_be(piece, offered)]
    if len(asked) != 1 or len(roles.asked) != 1 or len(unclear) != 1:
        return None
    rules = lookup.rules_on((asked[0].arg,))
    named = [item for item in offered if any(_speaks_of(rule, item, lookup) for rule in rules)]
    if not named and unclear[0] in roles.unworn:  # "a skirt instead of trousers"
        either = [rule.scope.items for rule in rules if rule.scope.alternatives]
        named = [item for item in offered if any(item in items for items in either)]
    if not named and unclear[0] in roles.unworn:
        texts = {lookup.clauses[rule.clause].text.casefold() for rule in rules}
        named = [item for item in offered if any(_is_in_place_of(item, text, lookup) for text in texts)]
    if not named and unclear[0] in roles.worn:
        rigs = _rigs(asked[0].arg, lookup)
        named = [item for item in offered if not rigs.isdisjoint(_rigs(item, lookup))]
    return named[0] if len(named) == 1 else None


def _is_in_place_of(item: str, text: str, lookup: Lookup) -> bool:
    """Whether a clause has something worn in place of a thing by its name: "instead of the brimmed hat"."""
    labels = (lookup.items[item].label, *lookup.items[item].other_labels)
    return any(
        f"{led} {article}{label.casefold()}" in text
        for label in labels
        for led in ("instead of", "in place of")
        for article in ("the ", "a ", "an ", "")
    )


def _rigs(item: str, lookup: Lookup) -> frozenset[str]:
    """The rigs in which rules have a thing worn by name."""
    found = (
        test.values
        for rule in lookup.rules_on((item,))
        if rule.aspect == "wear" and rule.modality in ("must", "may")
        for test in tests(rule.condition)
        if test.fact == "rig"
    )
    named = (values for values in found if isinstance(values, Choices) and not values.complement)
    return frozenset(rig for values in named for rig in values.members)


def _may_be(piece: Piece, offered: list[str]) -> bool:
    return piece.tag == "items" and {entry.id for entry in piece.entries} >= set(offered)


def _speaks_of(rule: Rule, item: str, lookup: Lookup) -> bool:
    """Whether a rule tests that an item is worn, or has its whole name in a way of wearing."""
    label = " ".join(token.key for token in tokenize(lookup.items[item].label))
    way = " ".join(token.key for token in tokenize(lookup.aspects[rule.aspect].label))
    return f"worn:{item}" in {test.fact for test in tests(rule.condition)} or f" {label} " in f" {way} "


def _on(item: str, case: Case, lookup: Lookup) -> list[Rule]:
    """The rules in force that have an item worn, or let it be."""
    return [
        rule
        for rule in lookup.rules_on((item,))
        if rule.aspect == "wear" and rule.modality in ("must", "may") and _is_in_force(rule, case)
    ]


def _is_in_force(rule: Rule, case: Case) -> bool:
    return is_in_force(rule, case.as_of)


def belongs(item: str, known: Mapping[str, ValueSet], case: Case, lookup: Lookup) -> bool:
    """Whether a rule has it worn under something of what is known, and nothing known speaks against it."""
    return any(
        evaluate(rule.condition, known.get) is not False
        and any(
            test.fact in known and lookup.facts[test.fact].family not in PERSONAL
            for test in tests(rule.condition)
        )
        for rule in _on(item, case, lookup)
    )


def _is_out(item: str, known: Mapping[str, ValueSet], case: Case, lookup: Lookup) -> bool:
    """Whether no rule has it worn in what is known, or one of what is not worn keeps it out there."""
    if all(evaluate(rule.condition, known.get) is False for rule in _on(item, case, lookup)):
        return True
    banning = [
        rule for rule in lookup.rules_on((item,)) if rule.modality == "must_not" and rule.aspect == "wear"
    ]
    return any(
        evaluate(rule.condition, known.get) is True
        and any(test.fact in known for test in tests(rule.condition))
        for rule in banning
        if not rule.scope.excluding and _is_in_force(rule, case)
    )
