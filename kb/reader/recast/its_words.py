"""What the words of a question say of its reading: which side, what is on top, that it asks of a fault."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.model.values import NO
from kb.reader.meaning.frame import Frame
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set
from kb.text import Pattern
from kb.wording import say_query

SIDED = word_set("above over below under beneath underneath short shy")
LAID = word_set("over under underneath beneath top")
_FAULTS = word_set("problem trouble issue offence wrong breach against breaking fault")


def of_its_words(reading: Reading, found: Understood, frame: Frame, lookup: Lookup) -> Reading:
    """The reading, with what its own words say of it."""
    if (far := _far_off(reading.query, found, lookup)) is not None:
        unread = Abstain(reason=f'Not understood: "{far}".', words=(far,))
        return Reading(question=reading.question, spans=reading.spans, abstain=unread)
    if reading.query is not None and not SIDED.isdisjoint(token.low for token in found.tokens):
        from kb.reader.recast.other_side import by_its_side  # noqa: PLC0415  few questions say a side

        reading = by_its_side(reading, found, lookup)
    if reading.query is not None and not LAID.isdisjoint(token.low for token in found.tokens):
        from kb.reader.recast.layers import by_its_order  # noqa: PLC0415  few questions lay one over another

        reading = by_its_order(reading, found, lookup)
    if reading.query is not None and reading.query.kind == "when":
        from kb.reader.recast.which_days import on_which_days  # noqa: PLC0415  few questions ask for days

        reading = on_which_days(reading, lookup)
    if (twice := _over_itself(reading.query, found)) is not None:
        unread = Abstain(reason=f'Not understood: "{twice}".', words=(twice,))
        return Reading(question=reading.question, spans=reading.spans, abstain=unread)
    if any(token.low == "down" for token in found.tokens):
        from kb.reader.recast.come_down import coming_down  # noqa: PLC0415  few questions have the word

        reading = coming_down(reading, found.tokens, lookup)
    elif any(token.low == "off" for token in found.tokens):
        from kb.reader.recast.come_down import switched_off  # noqa: PLC0415  as above

        reading = switched_off(reading, found.tokens, lookup)
    query = reading.query
    if query is not None and query.kind == "when" and _is_how(query, lookup):
        query = msgspec.structs.replace(query, kind="how")
        reading = msgspec.structs.replace(reading, query=query, text=say_query(lookup, query))
    if query is not None and any(token.low == "any" for token in found.tokens):
        from kb.reader.recast.figures_claimed import of_any_figure  # noqa: PLC0415  few questions are of any

        if (reading := of_any_figure(reading, found, lookup)).query != query:
            return reading
    if query is not None and query.kind in ("how", "where"):
        from kb.reader.recast.unsaid import left_unsaid  # noqa: PLC0415  most questions are whether

        return left_unsaid(reading, found.tokens, lookup)
    plain = query is not None and query.value is None and query.aspect == "wear"
    banned = frame.modalities == ("prohibited",) and not (frame.negated and query and query.polarity == "do")
    if query is None or (plain and not banned and _FAULTS.isdisjoint(token.low for token in found.tokens)):
        return reading
    from kb.reader.recast.faults import asked_of_a_fault, done_by_oneself, washed_at  # noqa: PLC0415  as needed

    reading = done_by_oneself(washed_at(reading, found.tokens, lookup), found.tokens, lookup)
    return asked_of_a_fault(reading, found.tokens, lookup, banned)


_AWAY = Pattern(
    r"(?i)\b(\d[\d.,/]* ?(?:m|metres?|meters?|yards?|yds?|feet|foot|ft|paces?)) (?:away |off |clear )?"
    r"(?:from|away|of|off)\b"
)


def _far_off(query: Query | None, found: Understood, lookup: Lookup) -> str | None:
    """How far off something is, where it was taken for the size of the thing: "3 metres from the winch"."""
    if query is None or query.value is None or lookup.aspects[query.aspect].kind != "measure":
        return None
    away = _AWAY.search(found.text)
    return away.group(1) if away is not None else None


_LAYER = Pattern(
    r"(?i)\b(?:which|what) (?:[\w'-]+ )?(?P<word>[\w'-]+) .*\b(?:under|over|underneath|beneath|on top of)\b"
)


def _over_itself(query: Query | None, found: Understood) -> str | None:
    """ "Which hat goes under the hard hat?": the word for it, where it was taken for what covers it."""
    if query is not None and query.items and query.polarity == "do" and "instead" in found.text:
        gone = f"worn:{query.items[0]}"  # "are my glasses good enough instead of the goggles"
        if any(fact == gone and values == NO for fact, values in query.case.facts):
            return "instead"
    asked = _LAYER.search(found.text) if query is not None and query.kind in ("may", "must", "list") else None
    if asked is None or query is None or not query.items:
        return None
    worn = {fact.removeprefix("worn:") for fact, _ in query.case.facts if fact.startswith("worn:")}
    return asked["word"] if worn.intersection(query.items) else None


def _is_how(query: Query, lookup: Lookup) -> bool:
    """ "When must I close it?": how it must be fastened tells when, too."""
    kind = lookup.aspects[query.aspect].kind
    return query.value is None and bool(query.items) and kind in ("manner", "choice")
