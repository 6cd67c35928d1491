"""The outfits in a question that a clause is to answer: whether one is asked for, and what is said of it."""

from __future__ import annotations

import re
from itertools import pairwise

from kb.model.lookup import Lookup
from kb.model.records import Clause, Fact
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set
from kb.text import Pattern


def which_rig(found: Understood, lookup: Lookup) -> Fact | None:
    """The outfits, where it is asked which of them: "which rig do I wear in town"."""
    for before, piece in pairwise(found.pieces):
        fact = lookup.facts.get(piece.arg or "") if piece.tag == "fact name" else None
        if before.tag in ("which", "what") and fact is not None and fact.family == "rig":
            return fact
    return None


def is_of_rig(clause: Clause, rig: Fact) -> bool:
    """Whether a clause says when an outfit is worn, and not what is worn with it."""
    text = " ".join(clause.text.casefold().split())
    names = [
        re.escape(name.casefold()) for value in rig.values for name in (value.label, *value.other_labels)
    ]
    return clause.kind != "rule" or any(
        re.search(rf"\b{name} (?:is|are|for|may be)\b", text) for name in names
    )


_CLOCK = Pattern(
    r"(?i)\b(?:\d{1,2} ?(?:o['’]clock|am|pm|a\.m\.|p\.m\.)"
    r"|\d{1,2}[:.]\d\d(?! ?(?:mm|cm|m|in)\b)|noon|midnight)"
)
"""A time of the day in the text of a clause."""
_OFTEN = Pattern(
    r"(?i)\b(?:every|each|daily|weekly|monthly|yearly|annually|nightly|hourly|once|twice|after|before"
    r"|per (?:day|week|month|year)|a (?:day|week|month|year))\b"
)
"""How often something is done, in the text of a clause."""
TURNS = word_set("time start starts begin begins change changes switch switches come comes")


def asks_time(found: Understood) -> bool:
    """Whether a time of the day is asked for: "what time do they change over?"."""
    return any((a.low, b.low) == ("what", "time") for a, b in pairwise(found.tokens[:4]))


def told_times(found: Understood) -> Pattern | None:
    """What the text of a clause must have to tell the time of the day, or how often, as it is asked for."""
    if asks_time(found):
        return _CLOCK
    often = any((a.low, b.low) == ("how", "often") for a, b in pairwise(found.tokens[:4]))
    return _OFTEN if often else None
