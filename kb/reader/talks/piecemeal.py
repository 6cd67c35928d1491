"""A turn of several short parts that is not understood as one: each part goes on from the ones before it.

"And when I'm a warden, 10 mm, no boat?", "they've sent me ashore! In the mess, then?".
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

import msgspec

from kb.model.questions import Query, Reading
from kb.model.values import ValueSet, is_subset
from kb.reader.talks.talked import Talk
from kb.text import Pattern

Read = Callable[[str, Reading, Talk], Reading]

_BETWEEN = Pattern(
    r"(?i)(?<!\d)[,;:.!?]+ +(?!\d{3}\b)(?:(?:and|but|or|then|also|so) )*| [–—-]+ | but (?:now )?"
)
_SAYS_MORE = Pattern(r"(?i)\b(?:or|unless|except|rather|instead|not|n['’]t|why|who|which|where|says?|said)\b")
_LED = Pattern(r"(?i)^(?:(?:and|but|so|oh|ok|okay|well|then|now|right|what|even|still)\b[ ,.]*)+(?=\w)")
_ASKED = Pattern(r"(?i)^(?:may|can|could|must|should|do|does|is|are|what|how|when|if|while|once)\b")
_SIZED = Pattern(r"(?i)(?:(?:about|only|just|say|exactly) )*\d[\d. /]* ?(?:mm|cm|in|inch(?:es)?)\b\W*$")
_MOST, _LONG = 4, 12


def piecemeal(text: str, previous: Reading, talk: Talk, read: Read) -> Reading | None:
    """The question before, with what each part of the turn says put in place of what it said.

    Every part has to be understood, to say something of the same thing, and to leave what the parts before it
    said; nothing else is answered.
    """
    parts = [part.strip(" ,.;:!?-") for part in _BETWEEN.split(text) if part.strip(" ,.;:!?-")]
    before = previous.query
    if before is None or len(before.items) != 1 or before.kind not in ("may", "must"):
        return None
    if not 1 < len(parts) <= _MOST or any(len(part.split()) > _LONG for part in parts):
        return None
    parts.sort(key=lambda part: _SIZED.match(part) is not None)  # a size is of what the rest says
    latest, here = previous, talk
    told: dict[str, ValueSet] = {}
    valued: Query | None = None
    for part in parts:
        again = _part(part, latest, here, read)
        query = again.query if again is not None else None
        if again is None or query is None or latest.query is None or not _is_of_it(query, before):
            return None
        new = _new(query, latest.query)
        if not new and (query.value, query.case.as_of) == (latest.query.value, latest.query.case.as_of):
            return None  # the part said nothing
        known = dict(query.case.facts)
        if any(fact not in known or not is_subset(known[fact], values) for fact, values in told.items()):
            return None  # one part takes back what another said
        told |= new
        valued = query if query.value is not None and query.value != before.value else valued
        here = msgspec.structs.replace(here, case=msgspec.structs.replace(here.case, as_of=query.case.as_of))
        latest = msgspec.structs.replace(again, frame=None, recent=previous.recent)
    asked = latest.query
    if asked is not None and valued is not None and asked.value is None:  # "10 mm, and not in the boat?"
        asked = msgspec.structs.replace(valued, case=asked.case)
    return None if asked is None else talk.made(text, asked)


def _part(part: str, latest: Reading, here: Talk, read: Read) -> Reading | None:
    bare = _LED.sub("", part)
    if _SAYS_MORE.search(bare) and not bare.casefold().startswith("not "):
        return None
    tried = (f"{bare}?",) if _ASKED.match(bare) else (f"and {bare}?", f"{bare}?")
    readings = (read(words, latest, here) for words in tried)
    return next((r for r in readings if r.query is not None and not r.unused), None)


def _is_of_it(query: Query, before: Query) -> bool:
    return query.items == before.items and query.clause is None and query.kind == before.kind


def _new(query: Query, before: Query) -> Mapping[str, ValueSet]:
    old = dict(before.case.facts)
    return {fact: values for fact, values in query.case.facts if old.get(fact) != values}
