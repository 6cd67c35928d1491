"""What is asked of a thing and no rule of it has, though a wider question would be answered: nothing is said.

"Over the helmet or under it?" of a thing of which no rule says what it goes over is not asked about its
colour; "where do I put it once it's off?" is not asked about how it sits on the head.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Reading
from kb.reader.meaning.measured import rule_aspects
from kb.reader.recast.by_names import not_of_one_kind
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token
from kb.text import Pattern

_LAYERS = word_set("over under beneath underneath inside outside above below top")
_PUT_AWAY = Pattern(
    r"\b(?:take|takes|took|taken|taking)\b.*\boff\b.*\bwhere\b.*\b(?:put|keep|carry|hold|stow|leave)\b"
    r"|\bwhere\b.*\b(?:put|keep|stow|leave) (?:it|them)\b.*\b(?:take|takes|took|taken) (?:it|them) off\b"
)


def left_unsaid(reading: Reading, tokens: Sequence[Token], lookup: Lookup) -> Reading:
    """The reading; one that refuses, where it is of another matter than what was asked."""
    query = reading.query
    if query is None or query.kind not in ("how", "where") or query.clause is not None or not query.items:
        return reading
    reading = not_of_one_kind(reading, lookup)
    lows = [token.low for token in tokens]
    if {"over", "under", "or"}.issubset(lows):
        labels = (lookup.aspects[aspect].label.split() for aspect in rule_aspects(query.items[0], lookup))
        if query.kind == "how" and all(_LAYERS.isdisjoint(words) for words in labels):
            return _refused(reading, ("over", "under"), "The books do not say what it goes over.")
    elif _PUT_AWAY.search(" ".join(lows)):
        return _refused(reading, ("off",), "The books do not say where it is put.")
    return reading


def _refused(reading: Reading, words: tuple[str, ...], reason: str) -> Reading:
    return msgspec.structs.replace(
        reading, query=None, text="", unused=(), abstain=Abstain(reason=reason, words=words)
    )
