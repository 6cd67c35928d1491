"""A thing named alone after a measure, a place or the like was asked of another: "spurs?", after how wide."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.reader.meaning.fits import rules_on, wearing, whether_worn
from kb.reader.talks.talked import Talk, item_alone
from kb.text import Pattern

_BESIDE = Pattern(r"(?i)[ ,]*\b(?:as well|too|also)[ ?.!]*$")
_LED = Pattern(r"(?i)(?:and|or|but|so|what about|how about|what of)\b")
_ASKS = frozenset({"how", "where", "how_many"})


def of_the_thing_itself(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """Whether the thing is worn at all, where no rule on it has what was asked of the one before."""
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or len(query.items) != 1 or query.items == before.items:
        return reading
    if query.kind not in _ASKS or (query.aspect == before.aspect and _is_said(query, lookup)):
        return reading
    bare = _BESIDE.sub("", text)
    if _LED.match(bare) or item_alone(bare, talk.lexicon, lookup) != query.items[0]:
        return reading
    if next(rules_on(query.items, wearing(query.items, lookup), lookup), None) is None:
        return reading
    return talk.made(text, whether_worn(query, lookup))


def _is_said(query: Query, lookup: Lookup) -> bool:
    act = lookup.aspects[query.aspect].kind == "act"
    return act or next(rules_on(query.items, query.aspect, lookup), None) is not None
