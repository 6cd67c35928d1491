"""A figure that a condition is claimed to have: "the wind has to top 20 before we wear it, still so?".

What settles it is when the thing may be worn, which has the figure that holds. The claim is left out, and
named.
"""

from __future__ import annotations

import re
from collections.abc import Callable

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

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


def _is_measured(what: str, lookup: Lookup) -> bool:
    return any(
        fact.kind == "quantity" and what.casefold() in fact.label.casefold().split()
        for fact in lookup.base.facts
    )


def _is_thing(tag: str, fact: str, lookup: Lookup) -> bool:
    return tag == "item" or (tag == "fact" and lookup.facts[fact].family == "rig")
