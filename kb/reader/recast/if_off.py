"""A thing that is carried "if it's switched off", where the rules have that for what must be done with it."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.text import Pattern

_IF = Pattern(
    r"(?i)[,;]?\s(?:but )?(?:only )?(?:if|as long as|so long as|provided(?: that)?|providing"
    r"|on condition that) (?:it|they|that|the \w+)(?:'s|’s|'re|’re| is| are| stays?| remains?)"
    r" (?P<state>[\w -]+)(?=[,.;?!]|$)"
)


def if_off(reading: Reading, lookup: Lookup) -> str | None:
    """The question without the condition, where that was taken for what is asked; else None.

    What must be so with a thing can be told beside whether it may be carried, and takes no leave away.
    """
    query, match = reading.query, _IF.search(reading.question)
    if query is None or match is None or query.kind != "may" or not query.items:
        return None
    if lookup.use_of(query.items[0]) != "carrying" or query.aspect == "carrying":
        return None
    state = [s for s in reading.spans if s.role == "aspect" and match.start("state") <= s.start < match.end()]
    things = [s for s in reading.spans if s.role == "item" and s.start < match.start()]
    if not state or not things:
        return None
    return f"{reading.question[: match.start()]}{reading.question[match.end() :]}"
