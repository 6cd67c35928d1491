"""What a clause is said to have done or not done: "which clause says you can't mix orders"."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from kb.keywords import analyse, lemma
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_LEADING = word_set("can n't not may must should never to cannot")
_CLAUSE = word_set("clause rule paragraph section regulation article para")
_LIGHT = word_set("the a an my our your any one's their")


def is_doing(lemmas: Collection[str], text: str, tokens: Sequence[Token]) -> bool:
    """Whether the one word of weight is a verb, and a clause that is asked for has it with its object."""
    if _CLAUSE.isdisjoint(token.low for token in tokens[:4]):
        return False
    said = set(analyse(text))
    for place in range(1, len(tokens) - 1):
        if tokens[place - 1].low in _LEADING and lemma(tokens[place].low) in lemmas:
            objects = [token.low for token in tokens[place + 1 :] if token.low not in _LIGHT]
            return bool(objects) and lemma(tokens[place].low) in said and set(analyse(objects[0])) <= said
    return False
