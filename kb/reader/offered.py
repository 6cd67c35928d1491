"""A question with each of the things in it that it was asked back which one is meant."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Reading
from kb.reader.choice import asked_place
from kb.reader.tokens import tokenize
from kb.wording import say_query

_MOST = 4


def offered(reading: Reading) -> dict[str, str]:
    """For each item the question with its label in place of the unclear word, those with that word first.

    Empty where something else was asked back, or too many things may be meant.
    """
    ask = reading.ask
    if ask is None or ask.fact != "item" or not 1 < len(ask.choices) <= _MOST:
        return {}
    where = asked_place(reading)
    if where is None:
        return {}
    said = {token.key for token in tokenize(reading.question[where[0] : where[1]])}
    ranked = sorted(ask.choices, key=lambda choice: not said & {t.key for t in tokenize(choice[1])})
    before, after = reading.question[: where[0]], reading.question[where[1] :]
    return {item: before + label + after for item, label in ranked}


def of_kinds(reading: Reading, ask: Ask, lookup: Lookup) -> tuple[Reading, ...]:
    """The readings of a question about a class of things as one about each kind, where it was asked which.

    Only of what has to be: what may be could be so of other things of the class as well.
    """
    query = reading.query
    if query is None or query.kind != "must" or ask.fact != "item" or not 1 < len(ask.choices) <= _MOST:
        return ()
    each = (msgspec.structs.replace(query, items=(kind, *query.items[1:])) for kind, _ in ask.choices)
    return tuple(msgspec.structs.replace(reading, query=one, text=say_query(lookup, one)) for one in each)
