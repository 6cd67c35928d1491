"""Statements about an order of precedence: "Devices must be worn in this order, the senior first: ..."."""

from __future__ import annotations

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.conditions import read_tail
from kb.guidance.checking.names import Names
from kb.guidance.checking.scopes import read_scope
from kb.model.records import RuleValue
from kb.model.values import Choices
from kb.text import Pattern

_SENIOR = r"(?:the )?senior first,? "
_ORDER = Pattern(
    rf"(?:(?:the )?order(?: of precedence)? (?:of|for) (?P<of>.+?),? (?:{_SENIOR})?(?:must be|shall be|is)"
    r"|(?P<worn>.+?) (?:must|shall|are to|is to) be worn (?:in )?(?:this|the following) order"
    r"(?: of precedence)?(?P<tail>,? [^:]+?)??(?:,? (?:the )?senior first)?):? (?P<items>[^:]+)"
)
_NEXT = Pattern(r",? (?:and )?then |, and |, | and |; ")
_ASPECT = "order"


def read_order(names: Names, text: str) -> Claim | None:
    """The claim that things are worn in an order; None for any other text, or where a name is not known."""
    match = _ORDER.fullmatch(text)
    aspect = next((a.id for a in names.lookup.base.aspects if a.kind == _ASPECT), None)
    if match is None or aspect is None:
        return None
    found = read_scope(names, match["of"] or match["worn"], "must", False)
    condition = read_tail(names, match["tail"] or "")
    named = [names.item(part.removeprefix("the ").strip()) for part in _NEXT.split(match["items"])]
    known = tuple(item for item in named if item is not None)
    if found is None or found[1] or condition is None or len(known) != len(named) or len(known) < 2:
        return None
    values = Choices(frozenset({"--".join(known)}))
    return Claim(
        modality="must",
        scope=found[0],
        aspect=aspect,
        value=RuleValue(values=values, order=known),
        condition=condition,
    )
