"""A thing named alone after a measure, a place or the like was asked of another: "spurs?", after how wide."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.reader.meaning.fits import facts_that_matter, rules_of_aspect, wearing, whether_worn
from kb.reader.talks.talked import Talk, item_alone
from kb.text import Pattern

_BESIDE = Pattern(r"(?i)[ ,]*\b(?:as well|too|also)[ ?.!]*$")
_LED = Pattern(r"(?i)(?:and|or|but|so|what about|how about|what of)\b")
_WITH = Pattern(
    r"(?i)(?:(?:and|but|so|even|what about|how about),? )*with (?P<it>[\w' -]+?)(?: then)?[ ?.!]*"
)
_ASKS = frozenset({"how", "where", "how_many"})


def of_the_thing_itself(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """Whether the thing is worn at all, where no rule on it has what was asked of the one before."""
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or len(query.items) != 1:
        return reading
    if query.items == before.items:
        return _of_what_goes_with_it(text, query, talk) or reading
    if query.kind not in _ASKS or (query.aspect == before.aspect and _is_said(query, lookup)):
        return reading
    bare = _BESIDE.sub("", text)
    if _LED.match(bare) or item_alone(bare, talk.lexicon, lookup) != query.items[0]:
        return reading
    if next(rules_of_aspect(query.items, wearing(query.items, lookup), lookup), None) is None:
        return reading
    return talk.made(text, whether_worn(query, lookup))


def _is_said(query: Query, lookup: Lookup) -> bool:
    act = lookup.aspects[query.aspect].kind == "act"
    return act or next(rules_of_aspect(query.items, query.aspect, lookup), None) is not None


def _of_what_goes_with_it(text: str, query: Query, talk: Talk) -> Reading | None:
    """ "With a ribbon?", after whether hair is tied back: whether a ribbon may be worn.

    So where no rule on how it is done asks for the other, and one speaks of wearing that.
    """
    found, lookup = _WITH.fullmatch(text), talk.lookup
    if (
        found is None
        or query.kind not in ("may", "must")
        or lookup.aspects[query.aspect].id == wearing(query.items, lookup)
    ):
        return None
    item = item_alone(found["it"], talk.lexicon, lookup)
    if item is None or item in query.items or f"worn:{item}" not in dict(query.case.facts):
        return None
    if any(f"worn:{kind}" in facts_that_matter(query, lookup) for kind in lookup.broader(item)):
        return None
    act = wearing((item,), lookup)
    if next(rules_of_aspect((item,), act, lookup), None) is None:
        return None
    facts = tuple((fact, values) for fact, values in query.case.facts if fact != f"worn:{item}")
    case = msgspec.structs.replace(query.case, facts=facts)
    return talk.made(text, Query(kind="may", items=(item,), aspect=act, case=case))
