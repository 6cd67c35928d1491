"""What the screens call verdicts and facts."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import kb
from shell.blocks import Cell, Tone
from shell.plain import cells

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase
    from shell.session import Session

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

_RANK = {"grade": 0, "rig": 1}  # of a family of facts, in the bottom line


# What becomes of the thing itself, where the question is whether one may or must do without it.
_WITHOUT = {
    "required": "must be {done}",
    "permitted": "may be {done}",
    "not_required": "need not be {done}",
    "prohibited": "must not be {done}",
}


def verdict_word(verdict: str, answer: Answer, base: KnowledgeBase) -> tuple[str, Tone]:
    """A verdict for a screen, with its tone. "Prohibited" of going without a thing could be taken for the
    going without, so that it is told of the thing."""
    word, tone = VERDICTS[verdict]
    query = answer.reading.query
    if query is None or query.polarity != "not" or query.value is not None or verdict not in _WITHOUT:
        return word, tone
    aspect = base.lookup.aspects[query.aspect]
    return (_WITHOUT[verdict].format(done=aspect.done) if aspect.done else word), tone


def verdict_cell(verdict: str, answer: Answer, base: KnowledgeBase) -> Cell:
    return Cell(*verdict_word(verdict, answer, base))


_FEW_VALUES = 8


def brief(facts: Facts, base: KnowledgeBase) -> str:
    """Facts in few words: grades by id, several by their group, other values by label, the narrower ones left
    out; sentences only for measures and the like."""
    words = []
    for name, values in facts:
        fact, members = base.lookup.facts[name], getattr(values, "members", ())
        if not members or values.complement or len(members) * 2 > len(fact.values) > _FEW_VALUES:
            words.append(base.say_facts(((name, values),)))
        elif fact.kind == "yes_no":
            words.append(fact.label if members == {"yes"} else f"{fact.label}: no")
        else:
            known = [value for value in fact.values if value.id in members and value.within not in members]
            groups = (
                g.label for g in base.lookup.base.groups if g.fact == name and set(g.members) == members
            )
            each = " or ".join(v.id if fact.family == "grade" else v.label for v in known)
            words.append(next(groups, each) if len(known) > 1 else each)
    return kb.visible(", ".join(words))


def toolbar_text(session: Session, base: KnowledgeBase, width: int) -> str:
    """Who you are and for which day, on one line of at most `width` cells: grade, rig, then the rest.

    What has no room is counted, never cut in the middle.
    """
    day = f"as of {session.as_of.isoformat() if session.as_of else 'today'}"
    facts = base.lookup.facts
    order = sorted(session.profile, key=lambda fact: _RANK.get(facts[fact[0]].family, len(_RANK)))
    words = [brief((fact,), base) for fact in order]
    room = width - cells(day) - 5
    for shown in range(len(words), -1, -1):
        more = [f"+{len(words) - shown}"] if shown < len(words) else []
        who = ", ".join([*words[:shown], *more])
        if cells(who) <= room:
            return f" {who or 'no profile'} | {day} "
    return f" {day} "


def whole(text: str) -> str:
    """The text with bytes that were no UTF-8, which Python keeps as half characters, as U+FFFD."""
    return "".join("\ufffd" if "\ud800" <= c <= "\udfff" else c for c in text)
