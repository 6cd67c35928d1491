"""A line given while something is asked back that answers no such thing: a correction, another question."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import kb

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

_LED = re.compile(  # a bare "no" before a noun denies it, and corrects nothing
    r"(?:(?:(?:no|nope)(?=\W*[,.:;-]|\W*$| (?:sorry|i mean|i meant|rather|make|for|and|wait|the)\b)|"
    r"(?:sorry|oops|ah|oh|well|i mean|i meant|rather|make (?:that|it)|for|and)\b)[ ,.:;-]*)+",
    re.IGNORECASE,
)
_NOT_ME = re.compile(
    r"(?:(?:no|nope|oh|well|sorry)[ ,]+)*(?:(?:it|that)['\u2019]?s )?"
    r"not (?:for |about )?(?:me|myself)[ ,.:;-]+"
    r"(?:(?:but|for|(?:it|that)['\u2019]?s(?: for| about)?) )*(?=(?:an?|the|my|our)\b)",
    re.IGNORECASE,
)
_WEARS = re.compile(
    r"\b(?:with|without|wear\w*|worn|wore|has|have|had|got|'ve|no|not|also|too|on|over|under|and)\b",
    re.IGNORECASE,
)
_WORN = "worn:"
_IT_IS = re.compile(
    r"(?:(?:well|but|and|no|oh|actually),? )*(?:it|that|this|they|mine)(?:['\u2019]s| is|['\u2019]re| are)"
    r"(?: actually| just| only)? (?:an?|the) [\w' -]+",
    re.IGNORECASE,
)


def meant_instead(answer: Answer, text: str, base: KnowledgeBase) -> str | None:
    """What a line asks that changes what was said before, or names a thing of its own; None for a reply.

    "K6", after "may a K2 wear it?", asks the same of a K6, whatever was asked back meanwhile.
    """
    query, ask = answer.reading.query, answer.ask
    if query is None or ask is None or ask.fact not in base.lookup.facts:
        return None
    if (other := _NOT_ME.match(text)) is not None:
        return f"and for {text[other.end() :].strip(' .!?')}?"
    led = _LED.match(text)
    plain = text[led.end() :] if led is not None else text
    try:
        facts = dict(base.reply(answer, plain)) if plain else {}
    except kb.UsageError:
        return None
    known = dict(query.case.facts)
    if any(fact in known and known[fact] != values for fact, values in facts.items() if fact != ask.fact):
        return f"and {plain.strip(' .!?')}?"
    left = [facts[name] for item in query.items if (name := f"{_WORN}{item}") in facts]
    if left and left[0] == base.fact(f"{_WORN}{query.items[0]}", "no")[1]:
        return "and without it?"
    things = {fact.removeprefix(_WORN) for fact in facts if fact.startswith(_WORN) and fact != ask.fact}
    return text if things and _WEARS.search(plain) is None else None


def kind_told(answer: Answer, text: str, base: KnowledgeBase) -> str | None:
    """What "it's a smart watch" asks, after a question on a watch: the same of that one; None for any other.

    Nobody who says which kind of a thing theirs is says that it is worn with another.
    """
    query, ask = answer.reading.query, answer.ask
    if _IT_IS.fullmatch(text.strip(" .!")) is None:
        return None
    try:
        told = base.statement(text)
    except kb.UsageError:
        return None
    things = [fact.removeprefix(_WORN) for fact, _ in told if fact.startswith(_WORN)]
    if len(told) != 1 or len(things) != 1:
        return None
    if ask is not None and things[0] in dict(ask.choices):
        return f"the {base.lookup.items[things[0]].label}"
    if query is None or query.kind == "source" or len(query.items) != 1 or things[0] in query.items:
        return None
    if not _akin(things[0], query.items[0], base):
        return None
    label = base.lookup.items[things[0]].label
    return f"and the {label}?" if query.kind in ("may", "must") else f"may I wear the {label}?"


def _akin(one: str, other: str, base: KnowledgeBase) -> bool:
    lookup = base.lookup
    kinds = {kind for kind in lookup.broader(one)[1:] if len(lookup.broader(kind)) > 2}
    alike = set(lookup.items[one].everyday) & set(lookup.items[other].everyday)
    return bool(alike) or not kinds.isdisjoint(lookup.broader(other))
