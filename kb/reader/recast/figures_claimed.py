"""A figure that a condition is claimed to have: "the wind has to top 20 before we wear it, still so?".

What settles it is when the thing may be worn, which has the figure that holds. The claim is left out, and
named. "A beard can be any length" is a claim, too: that it may be longer than the rules have it at most.
"""

from __future__ import annotations

import re
from collections.abc import Callable

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.model.records import Rule, is_in_force
from kb.model.values import Interval, Ranges
from kb.reader.meaning.measured import rule_aspects
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern
from kb.wording import say_query

Read = Callable[[str], Reading]
_CLAIM = Pattern(
    r"^(?P<claim>[^.;?!]*?\b(?P<what>[a-z]+) (?:still |only |always )?"
    r"(?:has to|have to|must|needs to|should|had to) (?:be )?"
    r"(?:top|exceed|pass|beat|reach|hit|over|above|below|under|at least|more than|less than"
    r"|(?:drop|fall|get|go|rise)(?: to)?(?: below| under| above| over)?) "
    r"-?(?P<figure>\d[\d.]*)[^.;?!]*? (?:before|for|to|if) (?P<rest>[^.;?!]+?))"
    r"[.;,:?!]+ (?:so |and )?(?:(?:is|was) (?:that|it) (?:still )?)?(?:the (?:right |correct )?"
    r"(?:figure|number|limit|mark|threshold|case|rule)|right|so|true|correct|still so)(?: now| today)?\W*$",
    re.IGNORECASE,
)


def figure_claimed(found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """When the one thing named may be worn, where a figure is claimed of a measure that the books know."""
    claim = _CLAIM.match(found.text)
    if claim is None or not _is_measured(claim["what"], lookup):
        return None
    start, end = claim.span("rest")
    named = {
        found.text[found.tokens[p.first].start : found.tokens[p.last - 1].end]
        for p in found.pieces
        if start <= found.tokens[p.first].start < end and _is_thing(p.tag, p.fact, lookup)
    }
    if len(named) != 1:
        return None
    again = read(f"when may {named.pop()} be worn?")
    if again.query is None or again.query.kind != "when":
        return None
    return msgspec.structs.replace(again, unused=(*again.unused, claim["claim"].strip()))


_ANY_FIGURE = Pattern(
    r"(?i)^(?!.*\bwh(?:at|ich)\b).*\b(?:can|may|could|might|is|are|have|has|wear|allowed)\b"
    r".*\b(?P<any>any (?:length|size|width|height|diameter|depth|thickness))\b"
)


def of_any_figure(reading: Reading, found: Understood, lookup: Lookup) -> Reading:
    """ "May a beard be any length?": whether it may be more than the most that any rule has, or less."""
    query = reading.query
    aspect = lookup.aspects[query.aspect] if query is not None else None
    if aspect is not None and aspect.within is not None and aspect.kind != "measure":
        if (said := _ANY_FIGURE.search(found.text)) is not None:  # "any length as long as it's neat"
            unread = Abstain(reason=f'Not understood: "{said["any"]}".', words=(said["any"],))
            return msgspec.structs.replace(reading, query=None, text="", unused=(), abstain=unread)
        return reading
    if query is None or query.kind != "how" or query.value is not None or len(query.items) != 1:
        return reading
    measures = [a for a in rule_aspects(query.items[0], lookup) if lookup.aspects[a].kind == "measure"]
    measure = query.aspect if query.aspect in measures or len(measures) != 1 else measures[0]
    beyond = _beyond(query, measure, lookup) if _ANY_FIGURE.search(found.text) else None
    if beyond is None:
        return reading
    query = msgspec.structs.replace(query, kind="may", aspect=measure, value=Ranges((beyond,)))
    return msgspec.structs.replace(reading, query=query, text=say_query(lookup, query))


def _beyond(query: Query, aspect: str, lookup: Lookup) -> Interval | None:
    """What is over the highest bound that a rule sets to the thing, else what is under the lowest."""
    over: list[Interval] = []
    under: list[Interval] = []
    for rule in _bounding(query, aspect, lookup):
        for part in rule.value.values.intervals if isinstance(rule.value.values, Ranges) else ():
            closed = rule.modality == "must_not"
            if (top := part.low if closed else part.high) is not None:
                over.append(Interval(low=top, low_open=not (closed and not part.low_open)))
            elif (least := part.high if closed else part.low) is not None:
                under.append(Interval(high=least, high_open=not (closed and not part.high_open)))
    if over:
        return max(over, key=lambda one: one.low or 0)
    return min(under, key=lambda one: one.high or 0) if under else None


def _bounding(query: Query, aspect: str, lookup: Lookup) -> list[Rule]:
    kinds = set(lookup.broader(query.items[0]))
    return [
        rule
        for rule in lookup.base.rules
        if rule.aspect == aspect and rule.modality in ("must", "must_not")
        if not kinds.isdisjoint(rule.scope.items) and is_in_force(rule, query.case.as_of)
    ]


def _is_measured(what: str, lookup: Lookup) -> bool:
    return any(
        fact.kind == "quantity" and what.casefold() in fact.label.casefold().split()
        for fact in lookup.base.facts
    )


def _is_thing(tag: str, fact: str, lookup: Lookup) -> bool:
    return tag == "item" or (tag == "fact" and lookup.facts[fact].family == "rig")
