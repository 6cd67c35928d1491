"""What a turn leaves for the next one: the question that it goes on from, and the things that were named."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.reader.meaning.fits import wearing

_MOST = 6


def frame_of(reading: Reading, previous: Reading | None, lookup: Lookup) -> Query | None:
    """The question that further words go on from, where a clause or the source was shown in between."""
    query = reading.query
    before = None if previous is None else previous.frame or previous.query
    if reading.ask is not None and reading.ask.fact == "item":
        return before  # the thing that is meant is asked about in what was said before
    if query is None or not (query.clause or query.kind == "source"):
        return None
    named = {span.target for span in reading.spans if span.role == "item" and span.target in lookup.items}
    if query.clause is not None and len(named) == 1 and (before is None or not named & {*before.items}):
        items = tuple(
            item for item in named if item is not None
        )  # "how is the coat dried?", told by a clause
        return Query(kind="may", items=items, aspect=wearing(items, lookup), case=query.case)
    same = before is not None and (query.clause is not None or query.items == before.items)
    return before if same else None


def recently(reading: Reading, previous: Reading | None) -> tuple[str, ...]:
    """The items named in the talk, the last first."""
    asked = reading.query.items if reading.query is not None else ()
    named = tuple(span.target for span in reading.spans if span.role == "item" and span.target is not None)
    return tuple(dict.fromkeys((*asked, *named, *(previous.recent if previous is not None else ()))))[:_MOST]
