"""What is answered in place of asking back, or of saying that the books are silent, where that can be told.

Of several things that a word may mean each is answered where they fare alike. Where no rule speaks of what
was asked of a thing, the nearest that the rules do say of it is answered, and a note says so.
"""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from kb.answer.alike import told_alike
from kb.answer.common import replaced
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Reading
from kb.reader.nearest import nearest_reading
from kb.reader.offered import of_kinds, offered


def answers_instead(
    reading: Reading, read: Callable[[str], Reading], answer: Callable[[Reading], Answer], lookup: Lookup
) -> tuple[Answer, ...]:
    """The answers to a reading that asks back, or whose answer does or is silent; else that one answer."""
    plain = answer(reading)
    if reading.ask is not None:
        return _alike(reading, read, answer, lookup) or (plain,)
    if plain.outcome == "ask" and plain.ask is not None:
        kinds = of_kinds(reading, plain.ask, lookup)
        return (kinds and told_alike(kinds, [answer(one) for one in kinds], lookup)) or (plain,)
    near = nearest_reading(reading, lookup) if plain.verdict == "silent" else None
    told = answer(near) if near is not None else plain
    if told.verdict == "silent" or told is plain:
        return (plain,)
    note = f"The books are silent on “{reading.text}” This is the nearest that they say."
    return (replaced(told, notes=(*told.notes, note)),)


def _alike(
    reading: Reading, read: Callable[[str], Reading], answer: Callable[[Reading], Answer], lookup: Lookup
) -> tuple[Answer, ...]:
    texts = offered(reading)
    found = [read(text) for text in texts.values()]
    items = [one.query.items[:1] if one.query is not None else () for one in found]
    if not found or items != [(item,) for item in texts]:
        return ()
    asked = [msgspec.structs.replace(one, question=reading.question, spans=reading.spans) for one in found]
    return told_alike(asked, [answer(one) for one in asked], lookup)
