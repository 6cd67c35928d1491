"""How what is worn beside a thing is said to be: "medals under the coat, as long as it's buttoned".

No rule asks how another thing is fastened or folded before it says whether this one is worn, so the answer
holds with that clause and without it; it is left out, and named.
"""

from __future__ import annotations

import re
from collections.abc import Callable

import msgspec

from kb.model.questions import Reading
from kb.reader.phrases.poles import phrases
from kb.reader.pieces.pieces import Piece, Understood
from kb.text import Pattern

Read = Callable[[str], Reading]
_ITEMS = ("item", "items")
_BESIDE = frozenset({"with", "without"})
_CLAUSE = Pattern(
    r",? ?\b(?:as long as|so long as|provided(?: that)?|providing|if|even if|when|while|though|although) "
    r"(?:it|they|that one)(?:'s| is|'re| are| was| were)(?: (?:all|fully|properly|kept|left|still))? "
    r"(?P<state>[a-z]+(?: [a-z]+)?)(?= ?[.,;?!]|$)",
    re.IGNORECASE,
)


def without_its_state(found: Understood, read: Read) -> Reading | None:
    """The reading without a clause on how the thing beside is; None where it may be of the thing itself."""
    text = found.text.replace("’", "'")
    clause = _CLAUSE.search(text)
    if clause is None or not _is_fastening(clause["state"]):
        return None
    before = [p for p in found.pieces if found.tokens[p.last - 1].end <= clause.start()]
    named = [place for place, piece in enumerate(before) if piece.tag in _ITEMS]
    if len(named) < 2 or not _is_beside(before, named[-1]):
        return None
    again = read(text[: clause.start()] + text[clause.end() :])
    query = again.query
    other = before[named[-1]].entries
    if (
        query is None
        or not query.items
        or query.value is not None
        or query.aspect not in ("wear", "carrying")
    ):
        return None
    worn = {f"worn:{entry.id}" for entry in other}
    if worn.isdisjoint(fact for fact, _ in query.case.facts) or {e.id for e in other} & set(query.items):
        return None
    said = clause.group().strip(" ,")
    return msgspec.structs.replace(again, unused=(*again.unused, said))


def _is_fastening(state: str) -> bool:
    poles = phrases().get(tuple(state.casefold().split()), frozenset())
    return any(name in ("fast", "raised", "straight") for name, _ in poles)


def _is_beside(before: list[Piece], place: int) -> bool:
    """Whether a preposition leads to the thing: "under the coat"."""
    place -= 1
    while place >= 0 and before[place].tag in ("det", "poss"):
        place -= 1
    return place >= 0 and before[place].tag in _BESIDE
