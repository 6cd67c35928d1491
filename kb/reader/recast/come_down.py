"""Sleeves that are up and may have to come down: "rolled up, and now I'm at the lathe. Must they come down?".

Who asks that asks whether they may not be rolled or turned up, and not whether they, or the garment, must be.
"""

from __future__ import annotations

from itertools import pairwise

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token
from kb.wording import say_query

_COMES = word_set(
    "come comes go goes roll rolled turn turned pull pulled put let brought get them it sleeves"
)
_ROLLED = word_set("rolled turned pushed pulled up back")
_TURNING = frozenset({"roll", "turn"})
_DENIED = word_set("no not n't nothing never without up")


def coming_down(reading: Reading, tokens: tuple[Token, ...], lookup: Lookup) -> Reading:
    """The reading with yes and no said of what may not be up, where it was taken for what must be."""
    query, lows = reading.query, [token.low for token in tokens]
    if query is None or query.kind != "must" or query.polarity == "not" or "down" not in lows:
        return reading
    asked = lows[sentence_starts(reading.question, tokens)[-1] :]
    at = asked.index("down") if "down" in asked else 0
    if not at or asked[at - 1] not in _COMES or not _DENIED.isdisjoint(asked) or _is_garment(lows):
        return reading
    if lookup.aspects[query.aspect].verb in _TURNING:
        return _forbidden(reading, query, lookup)
    if query.aspect != "wear" or _ROLLED.isdisjoint(lows):
        return reading
    own = set(lookup.broader(query.items[0]))
    ruled = {rule.aspect for rule in lookup.rules_on(own)}
    turned = [aspect for aspect in ruled if lookup.aspects[aspect].verb in _TURNING]
    if len(turned) == 1:
        return _forbidden(reading, msgspec.structs.replace(query, aspect=turned[0]), lookup)
    return msgspec.structs.replace(
        reading, query=None, text="", abstain=Abstain(reason="No rule was found on what is up or down.")
    )


def switched_off(reading: Reading, tokens: tuple[Token, ...], lookup: Lookup) -> Reading:
    """The reading of what "must be off" as switched off, where rules have it so: a camera, a torch."""
    query, lows = reading.query, [token.low for token in tokens]
    if query is None or query.kind != "must" or query.aspect != "wear" or query.polarity == "do":
        return reading
    if not any(one in _BEING and then == "off" for one, then in pairwise(lows)):
        return reading
    own = set(lookup.broader(query.items[0]))
    off = {rule.aspect for rule in lookup.rules_on(own) if lookup.aspects[rule.aspect].done == "switched off"}
    if len(off) != 1:
        return reading
    put = msgspec.structs.replace(query, aspect=off.pop(), polarity="do")
    return msgspec.structs.replace(reading, query=put, text=say_query(lookup, put))


_BEING = word_set("be is are")


def _is_garment(lows: list[str]) -> bool:
    """Whether what comes down is no sleeve: a veil, a brim, a hood."""
    return not any(low.startswith(("sleeve", "cuff", "collar", "leg", "trouser", "hem")) for low in lows)


def _forbidden(reading: Reading, query: Query, lookup: Lookup) -> Reading:
    put = msgspec.structs.replace(query, kind="may", modalities=("prohibited",))
    return msgspec.structs.replace(reading, query=put, text=say_query(lookup, put))
