"""What the screens call verdicts and facts."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import kb
from shell.blocks import Cell, Tone

if TYPE_CHECKING:
    from kb import KnowledgeBase

Facts = tuple[tuple[str, Any], ...]  # value sets, only ever handed back to `kb`

# In the order of the groups of a list.
VERDICTS: dict[str, tuple[str, Tone]] = {
    "required": ("required", "must"),
    "permitted": ("permitted", "yes"),
    "not_required": ("not required", "yes"),
    "prohibited": ("prohibited", "no"),
    "conditional": ("it depends", "open"),
    "conflict": ("conflict", "clash"),
    "silent": ("not addressed", "quiet"),
}


def verdict_cell(verdict: str) -> Cell:
    word, tone = VERDICTS[verdict]
    return Cell(word, tone)


def brief(facts: Facts, base: KnowledgeBase) -> str:
    """Facts in few words: grades by id, other values by label; sentences only for measures and the like."""
    words = []
    for name, values in facts:
        fact, members = base.lookup.facts[name], getattr(values, "members", ())
        if not members or values.complement:
            words.append(base.say_facts(((name, values),)))
        elif fact.kind == "yes_no":
            words.append(fact.label if members == {"yes"} else f"{fact.label}: no")
        else:
            known = [value for value in fact.values if value.id in members]
            words.append(" or ".join(v.id if fact.family == "grade" else v.label for v in known))
    return kb.visible(", ".join(words))


def whole(text: str) -> str:
    """The text with bytes that were no UTF-8, which Python keeps as half characters, as U+FFFD."""
    return "".join("\ufffd" if "\ud800" <= c <= "\udfff" else c for c in text)
