"""Several things that were seen, and how many of them are faults: each is a question of its own."""

from __future__ import annotations

from kb.text import Pattern

_HOW_MANY = Pattern(
    r"(?is)(?P<told>[^?]+?)(?:[.;:!]|\s[-–—])\s+(?:(?:so|now|well|and)[, ]+)?(?:"
    r"how many (?:faults?|things?|mistakes?|points?|breaches|marks)(?: wrong| off)?"
    r"(?: (?:is|are|does|would|do) (?:that|those|it|this|there|i|we)(?: make| be| come to| count| have| see)?"
    r"| in all| against (?:him|her|me))?"
    r"|what(?:'s|’s| is| are)?(?: all)? (?:wrong|(?:the|his|her|my) (?:faults?|mistakes?))"
    r"(?: (?:with|in|there|here)(?: (?:that|it|him|her|this|me|them))?)?"
    r"|(?:count|name|list|find) (?:the|his|her|my) (?:faults?|mistakes?)"
    r"|(?:which|what) (?:of (?:those|these|them|that) )?(?:is|are) (?:an? |the )?(?:faults?|wrong)"
    r")\s*[?.!]*\s*"
)
_LEAD = Pattern(r"^[^:;]{1,60}:\s+(?=\S)")
_AND = Pattern(r"\s*[,;]\s+(?:and\s+)?|\s+and\s+(?=(?:an?|the|no|his|her|my)\s)")
_MONTH = r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
_AROUND = Pattern(
    r"(?i)(?:(?:on|in|at|during|under|while|when|aboard|for|by) .+"
    rf"|(?:the )?\d{{1,2}}(?:st|nd|rd|th)? (?:of )?{_MONTH}(?: \d{{4}})?"
    rf"|{_MONTH} \d{{1,2}}(?:st|nd|rd|th)?(?:,? \d{{4}})?"
    r"|(?:an? |the )?[\w-]+ (?:rig|dress|uniform|weather)|[-\d]+ degrees)"
)
"""What is told of the day and the place, and holds for each of the things."""


def each_seen(parts: tuple[str, ...]) -> tuple[str, ...]:
    """ "White cap, rings on, 12 November. How many faults is that?": whether each is a fault."""
    counted = _HOW_MANY.fullmatch(parts[0]) if len(parts) == 1 else None
    if counted is None:
        return parts
    lead = _LEAD.match(counted["told"])
    rest = counted["told"][lead.end() :] if lead is not None else counted["told"]
    told = [one.strip(" .") for one in _AND.split(rest) if one.strip(" .")]
    around = [one for one in told if _AROUND.fullmatch(one) is not None]
    seen = [one for one in told if one not in around]
    before = lead.group() if lead is not None else ""
    return tuple(f"{before}{', '.join([one, *around])}. Is that a fault?" for one in seen) or parts
