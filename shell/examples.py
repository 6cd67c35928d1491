"""Lines to try, made of what the open books speak about."""

from __future__ import annotations

from typing import TYPE_CHECKING

import kb
from shell.commands import BY_NAME

if TYPE_CHECKING:
    from kb import KnowledgeBase


def _item(base: KnowledgeBase, kind: str) -> str:
    """The label of the first item that a rule about an aspect of this kind covers; "" if none does."""
    lookup = base.lookup
    for rule in lookup.base.rules:
        fits = rule.aspect == "wear" if kind == "act" else lookup.aspects[rule.aspect].kind == kind
        known = [item for item in rule.scope.items if item in lookup.items]
        if fits and known and not rule.residual and lookup.items[known[0]].at.file != "built-in":
            return lookup.items[known[0]].label
    return ""


def _values(base: KnowledgeBase, family: str) -> list[str]:
    """Names of the values of a family of facts: ids of grades, labels of others."""
    facts = [fact for fact in base.lookup.base.facts if fact.family == family]
    return [value.id if family == "grade" else value.label for fact in facts for value in fact.values]


def questions(base: KnowledgeBase) -> tuple[str, ...]:
    """Up to three questions that these books can answer."""
    worn, placed = _item(base, "act"), _item(base, "position")
    rigs = _values(base, "rig")
    found = [f"May I wear the {worn}?"] if worn else []
    found += [f"What must I wear in {rigs[0]}?" if rigs else "What must I wear?"]
    found += [f"Where does the {placed} go?"] if placed else []
    return tuple(kb.visible(question) for question in found)


def nothing_yet(what: str, base: KnowledgeBase) -> str:
    """The complaint about a line that needs a question before it."""
    return f'Nothing has been {what} yet. Ask first, as in "{questions(base)[0]}"'


def _argument(name: str, base: KnowledgeBase) -> str:
    """What can follow a command, in these books; "" where they have nothing that can."""
    written = base.lookup.base
    facts = [fact.label for fact in written.facts if fact.family != "worn" and fact.values]
    if name == "remember":
        who, rigs = _values(base, "grade"), _values(base, "rig")
        return " in ".join(words[0] for words in (who[-1:], rigs) if words)
    if name in ("facts", "forget"):
        return facts[0] if facts else ""
    if name == "items":
        labels = [item.label for item in written.items if item.at.file != "built-in"]
        return labels[0].split()[-1] if labels else ""
    return written.clauses[0].number if name == "clause" and written.clauses else ""


def example_of(name: str, base: KnowledgeBase) -> str:
    """A line with this command that works with these books."""
    argument = _argument(name, base)
    return kb.visible(f"{name} {argument}") if argument else BY_NAME[name].example
