"""How it is, how one feels, or why, said beside a question: "when it's hot", "its freezing", "for fun"."""

from __future__ import annotations

import re

from kb.text import Pattern

_ADJECTIVES = """
hot warm chilly cold cool freezing boiling roasting sweltering mild nippy dry wet damp soaked soaking bright
nice lovely fine windy breezy late early tired hungry
scorching baking blistering perishing busy poorly sweaty comfortable uncomfortable miserable
quiet gloomy cloudy overcast sticky humid muggy bitter
"""
STATE_WORDS = frozenset(_ADJECTIVES.split())
_STATE = f"(?:{'|'.join(_ADJECTIVES.split())})"
_WHO_IS = r"(?:its|(?:it|i|we|s?he|they|you)(?:['’](?:s|m|re)| (?:is|am|are|was|were|feels?|felt|g[eo]ts?)))"
_HOW = r"(?:(?:too|so|very|really|a bit|feeling|getting|quite|rather|still|just) )*"
_SPAN = "(?:days?|nights?|mornings?|afternoons?|evenings?|weather|conditions|spells?)"
_FELT = "(?:freezing|boiling|roasting|sweltering|nippy|parky|perishing|baking|bitter)"
_UNLED = "".join(
    rf"(?<!\b{word} )"
    for word in (
        "if",
        "when",
        "while",
        "that",
        "how",
        "what",
        "and",
        "or",
        "than",
        "as",
        "where",
        "because",
        "so",
    )
)
"""What leads no clause that is said beside a question: "may I wear it its freezing"."""
STATES = Pattern(
    rf",?\s*\b(?:(?:if|when|whenever|while|because|since|as|now|now that) {_WHO_IS} {_HOW}{_STATE}"
    rf"(?:(?:,| and| or| but) {_STATE})*(?: (?:out|outside|there|today|enough))*|"
    rf"(?:on|in|during) (?:(?:a|an|the|those|such|this|these) )?(?:(?:very|really|too|{_STATE}),? (?:and )?)*"
    rf"{_STATE} {_SPAN}|"
    rf"(?<=[\w)]) and (?:bloody |absolutely |really )?{_FELT}(?=[.,;])|"
    rf"(?:but|though) (?:it['’]s |it is )?{_HOW}{_STATE}(?=[.,;])|^{_STATE} (?:and|but)|"
    rf"{_UNLED}{_WHO_IS} {_HOW}(?:bloody |flipping |proper |absolutely |well )?{_FELT}"
    r"(?: (?:in|out|up|over|down)?(?: ?(?:here|there|outside|today|again|now|enough)))*(?=\W*$|, "
    r"(?:can|may|could|must|should|do|does|is|are|what|which|where|how|who) )|"
    r"nothing (?:too )?(?:loud|fancy|flashy|showy|much|special|big)|"
    r"if it(?:['’]s| is) (?:only |just )?(?:quick|brief|for a (?:minute|moment|second))|"
    r"where (?:nobody|no[ -]one) (?:can )?sees? (?:it|them)|"
    r"(?:just )?(?:for (?:a|the) (?:photo|photograph|picture|laugh|joke|dare|change)|for (?:fun|show|luck)|"
    r"because (?:i|we) (?:just )?(?:like|want|prefer|fancy|feel like)(?: it| them| to)?))\b,?",
    re.IGNORECASE,
)
"""Ways of saying how it is, how one feels or why, apart from what the books may know ("in fog")."""
