"""A turn that only tells a circumstance, after how, where or when a thing is worn: whether it is worn there.

"And when I'm hand feeding?", after how big the pin may be, is not answered by its size where no pin is worn
for that. So it is not by when a thing may be worn, where it may not be.
"""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading
from kb.reader.meaning.fits import whether_worn
from kb.wording import say_query

_ASKED = ("how", "where", "when")
_SAID = frozenset({"aspect", "measure", "clause", "item", "value"})


def worn_there(
    told: Answer, previous: Reading, answer: Callable[[Reading], Answer], lookup: Lookup
) -> Answer:
    """The answer to such a turn (`told` so far): no, where the thing is not worn in that circumstance."""
    query = told.reading.query
    before = previous.frame or previous.query
    if (
        query is None
        or before is None
        or query.kind not in _ASKED
        or query.aspect == "care"  # a thing is washed where it is not worn
        or not _is_told(told.reading, query, before)
    ):
        return told
    asked = whether_worn(query, lookup)
    reading = msgspec.structs.replace(told.reading, query=asked, text=say_query(lookup, asked))
    whether = answer(reading)
    banned = whether.outcome == "answer" and whether.verdict == "prohibited"
    return whether if banned else told


def _is_told(reading: Reading, query: Query, before: Query) -> bool:
    """Whether a turn asks what was asked before of the same thing, and adds no more than a circumstance."""
    same = (query.kind, query.aspect, query.items) == (before.kind, before.aspect, before.items)
    more = {*query.case.facts} - {*before.case.facts}
    return same and len(query.items) == 1 and bool(more) and all(s.role not in _SAID for s in reading.spans)
