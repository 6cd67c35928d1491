"""What a clause is said to have done or not done: "which clause says you can't mix orders".

And what a yes-or-no question asks to be done, or to be free to do: "do I have to renew my waiver".
"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from kb.keywords import analyse, lemma
from kb.reader.words.everyday import DOINGS
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_LEADING = word_set("can n't not may must should never to cannot")
_CLAUSE = word_set("clause rule paragraph section regulation article para")
_LIGHT = word_set("the a an my our your any one's their")
_AUXILIARY = word_set("""
    do does did is are am was were may can could must should shall will would might have has had need
""")
_BEFORE = word_set("and but so then well ok now if on at by from to for in")
_BEING = word_set("is are am was were")
_GRANTING = word_set(
    "allow permit refuse reject forbid let grant inspect approve lapse expire show overrule run"
)
_ANYONE = word_set("""
    i we you he she they it one anyone anybody someone somebody nobody everyone everybody there
""")
_OBLIGED = word_set("""
    n't not still really ever even just then also always now already either have has had got to need be been
    being allowed obliged entitled permitted bound supposed required able free only actually right
""")
_WEARING = word_set("""
    wear put take pull keep leave carry cover remove tuck roll fasten unfasten button turn swap hang tie
    go be do
""")
_OWNED = _LIGHT | word_set("his her its their these those this that any every each some no")


def place_of_doing(told: Sequence[str]) -> int | None:
    """The place of the verb of a yes-or-no question: "is he allowed to ask", "may the instructor choose"."""
    place = next((i for i, low in enumerate(told) if low not in _BEFORE), len(told))
    if place > 1 or told[place : place + 1] == [] or told[place] not in _AUXILIARY:
        return None
    being, place = told[place] in _BEING, place + 1
    while place < len(told) and told[place] in ("n't", "not"):
        place += 1
    if told[place : place + 1] and told[place] in _ANYONE:
        first = place + 1
        place = next((i for i in range(first, len(told)) if not _is_obliged(told, i)), len(told))
        done = told[place : place + 1] and told[place] not in _WEARING
        sure = not being or "to" in told[first:place] or (done and _is_verb(told[place]))
        return place if done and sure else None
    after = (i for i in range(place + 1, len(told)) if told[i] not in _OBLIGED and told[i - 1] not in _OWNED)
    verb = next((i for i in after if _is_verb(told[i]) or told[i] in _WEARING), None)
    return verb if verb is not None and told[verb] not in _WEARING else None


def _is_obliged(told: Sequence[str], place: int) -> bool:
    """Whether a word before the verb says no more than that it may or must be done: "have" of "have to"."""
    having = told[place] in ("have", "has", "had")
    return told[place] in _OBLIGED and (not having or told[place + 1 : place + 2] == ["to"])


def _is_verb(low: str) -> bool:
    return low in DOINGS or low in _GRANTING or (low.endswith("ed") and lemma(low) in DOINGS)


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
