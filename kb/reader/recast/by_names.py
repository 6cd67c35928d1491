"""What the names of things tell of them: "what colour tie goes with gala dress?", of two ties by colour.

Where no rule says what was asked of a class of things, but the kinds of it are called by their colour, what
they are made of or their size, it is asked which of the kinds are worn.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading
from kb.model.records import Rule
from kb.reader.meaning.fits import rules_of_aspect
from kb.reader.words.colours import DOUBTFUL, FINISHES, HEADS
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.wording import say_query

_LONG = word_set("long longer short shorter half full")
_SAID = {
    "colour": HEADS - FINISHES - DOUBTFUL,
    "construction": word_set("""
        leather wool woollen woolen canvas cotton linen silk felt rubber nylon nitrile cloth fur straw paper
        enamel brass bronze metal steel wooden plastic fleece tweed velvet webbing suede knitted woven mesh
        glass down patent
    """),
    "size": _LONG | word_set("large larger big small smaller little broad narrow wide thin thick"),
    "length": _LONG,
    "width": word_set("broad narrow wide"),
}
"""For an aspect the words of a name that tell it."""


def asked_of_names(reading: Reading, lookup: Lookup) -> Reading | None:
    """Which of the kinds of a class are worn, where their names alone tell what was asked; else None."""
    query = reading.query
    if query is None or query.kind != "how" or len(query.items) != 1 or query.value is not None:
        return None
    items, kinds = _called(reading, query, lookup)
    spoken = {
        rule for one in items for rule in rules_of_aspect((one,), query.aspect, lookup) if not rule.residual
    }
    if spoken or not any(is_told_by_name(kind, query.aspect, lookup) for kind in kinds):
        return None
    listed = msgspec.structs.replace(
        query, kind="list", items=items, aspect="wear", modalities=("required", "permitted")
    )
    return msgspec.structs.replace(reading, query=listed, text=say_query(lookup, listed))


def told_by_names(reading: Reading, answer: Callable[[Reading], Answer], lookup: Lookup) -> Answer | None:
    """Which of the kinds are worn, if the name of one of those tells what no rule says; else None."""
    named, query = asked_of_names(reading, lookup), reading.query
    told = answer(named) if named is not None else None
    if told is None or query is None:
        return None
    return told if any(is_told_by_name(one.item, query.aspect, lookup) for one in told.entries) else None


def not_of_one_kind(reading: Reading, lookup: Lookup) -> Reading:
    """The reading; of several kinds, where a rule says it of one alone that is not called by it.

    The rule on the colour of disposable gloves tells nothing of white gloves. But an "old green cape" is
    a cape by its name: where a rule is on the colour of capes, it tells what is asked of "the cape".
    """
    query = reading.query
    asked = asked_of_names(reading, lookup)
    if query is None or asked is None:
        return reading
    kinds = lookup.narrower(query.items[0])[1:]
    ruled = [kind for kind in kinds if any(not rule.residual for rule in _own(kind, query.aspect, lookup))]
    one = len(ruled) == 1 and not is_told_by_name(ruled[0], query.aspect, lookup)
    told = [kind for kind in kinds if one and is_told_by_name(kind, query.aspect, lookup)]
    apart = [kind for kind in told if not _goes_by(kind, ruled[0], lookup)]
    return asked if apart else reading


def _goes_by(item: str, kind: str, lookup: Lookup) -> bool:
    """Whether the name of a thing is that of another with a word before it."""
    name = [token.key for token in tokenize(lookup.items[kind].label)]
    return [token.key for token in tokenize(lookup.items[item].label)][-len(name) :] == name


def _own(item: str, aspect: str, lookup: Lookup) -> Iterator[Rule]:
    return (rule for rule in rules_of_aspect((item,), aspect, lookup) if item in rule.scope.items)


def is_told_by_name(item: str, aspect: str, lookup: Lookup) -> bool:
    """Whether the name of a thing tells its colour, what it is made of or its size."""
    words = [token.low for token in tokenize(lookup.items[item].label)]
    return not _SAID.get(aspect, frozenset()).isdisjoint(words[:-1])


def _called(reading: Reading, query: Query, lookup: Lookup) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The things to be listed, and their kinds; empty where a thing was named by more than its noun."""
    (item,) = query.items
    spans = [span.text for span in reading.spans if span.role == "item"]
    words = [token.key for token in tokenize(spans[0])] if len(spans) == 1 else []
    kinds = lookup.narrower(item)[1:]
    if kinds and words:
        return (item,), tuple(kinds)
    called = tuple(_with_noun(words, lookup)) if len(words) == 1 else ()
    return (called, called) if item in called else ((), ())


def _with_noun(words: Sequence[str], lookup: Lookup) -> Iterator[str]:
    """The things that a noun alone may stand for."""
    for item in lookup.base.items:
        names = [[token.key for token in tokenize(name)] for name in (item.label, *item.other_labels)]
        everyday = [[token.key for token in tokenize(name)] for name in item.everyday]
        if any(name[-1:] == words for name in names) or words in everyday:
            yield item.id
