"""A question with each of the things in it that it was asked back which one is meant."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

import msgspec

from kb.model.conditions import evaluate
from kb.model.lookup import Lookup
from kb.model.questions import Ask, Reading
from kb.model.records import is_in_force
from kb.reader.doubts.choice import asked_place
from kb.reader.meaning.fits import rules_of_aspect
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.tokens import tokenize
from kb.wording import say_query
from kb.wording.presumed import implied

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


def are_parts(items: Iterable[str], lookup: Lookup) -> bool:
    """Whether things are the few parts of one whole, each with its size: a coat has a hem and cuffs."""
    found = list(items)
    wholes = {lookup.items[item].part_of for item in found}
    return 1 < len(found) < _MOST and len(wholes) == 1 and None not in wholes


def stands_beside(item: str, reading: Reading) -> bool:
    """Whether a question has a thing beside the one asked about: worn with it, or left off for it."""
    query = reading.query
    facts = query.case.facts if query is not None and item not in query.items else ()
    return any(fact == f"worn:{item}" for fact, _ in facts)


_BETWEEN = word_set("or the a an my your his her our their either , and")


def each_named(reading: Reading) -> dict[str, str]:
    """ "May I wear the watch coat or the storm coat": the question with each of the things that it names.

    Empty where something else was asked back, or what it asks about is not named in a row.
    """
    ask, text = reading.ask, reading.question
    if ask is None or ask.fact != "item" or not 1 < len(ask.choices) <= _MOST:
        return {}
    spans = [span for span in reading.spans if span.role == "item" and span.target in dict(ask.choices)]
    if {span.target for span in spans} != set(dict(ask.choices)) or len(spans) != len(ask.choices):
        return {}
    gaps = (text[one.end : other.start] for one, other in pairwise(spans))
    if any({t.low for t in tokenize(gap)} - _BETWEEN or "or" not in gap.casefold().split() for gap in gaps):
        return {}
    first, last = spans[0].start, spans[-1].end
    return {one: text[:first] + text[s.start : s.end] + text[last:] for s in spans if (one := s.target)}


def is_of_another(reading: Reading, lookup: Lookup) -> bool:
    """Whether a part is named right after a thing of which it is none: "the storm hat's lining"."""
    spans = [span for span in reading.spans if span.role == "item" and span.target in lookup.items]
    for whole, part in pairwise(spans):
        owner = lookup.items[part.target].part_of if part.target else None
        beside = not reading.question[whole.end : part.start].strip()
        if beside and owner is not None and owner not in lookup.broader(whole.target or ""):
            return True
    return False


_AT_ONCE = word_set("all at once together same time")


def of_the_counted(reading: Reading, lookup: Lookup) -> str | None:
    """ "How many badges?", "all three badges at once?": the question of the one class that the rules count.

    None where something else was asked back, nothing is counted, or the rules count several classes.
    """
    ask, where = reading.ask, asked_place(reading)
    if ask is None or ask.fact != "item" or len(ask.choices) < 2 or where is None:
        return None
    tokens = tokenize(reading.question)
    lows = [token.low for token in tokens]
    many = any(pair == ("how", "many") for pair in pairwise(lows))
    place = next((index for index, token in enumerate(tokens) if token.start == where[0]), 0)
    numbered = any(low in NUMBER_WORDS or low.isdigit() for low in lows[max(0, place - 3) : place])
    if not many and not (numbered and not _AT_ONCE.isdisjoint(lows)):
        return None
    classes = [item for item, _ in ask.choices if len(lookup.narrower(item)) > 1]
    counted = [
        item
        for item in classes
        if any(not rule.residual for rule in rules_of_aspect((item,), "count", lookup))
    ]
    if len(counted) != 1:
        return None
    label = lookup.items[counted[0]].label
    return f"{reading.question[: where[0]]}{label}{reading.question[where[1] :]}"


def of_kinds(reading: Reading, ask: Ask, lookup: Lookup) -> tuple[Reading, ...]:
    """The readings of a question about a class of things as one about each kind, where it was asked which.

    Of what may be, only where no more is claimed or left off: all kinds that the books know are then told of.
    """
    query = reading.query
    if query is None or ask.fact != "item" or not 1 < len(ask.choices) <= _MOST:
        return ()
    plain = query.kind == "may" and query.polarity != "not" and query.value is None
    valued = query.kind in ("how", "where", "how_many") and query.value is None
    if query.kind not in ("must", "why") and not plain and not valued:
        return ()
    each = (msgspec.structs.replace(query, items=(kind, *query.items[1:])) for kind, _ in ask.choices)
    return tuple(msgspec.structs.replace(reading, query=one, text=say_query(lookup, one)) for one in each)


def of_the_wearer(reading: Reading, ask: Ask, lookup: Lookup) -> Reading | None:
    """The reading with the one kind that the one asked about wears, where it is taken for granted that it is
    worn: the jacket that a pilot takes off is not the one that rules give to others alone."""
    query = reading.query
    if query is None or ask.fact != "item" or query.value is not None or len(query.items) != 1:
        return None
    if not (query.kind == "may" and query.polarity == "not") and query.kind not in ("how", "where"):
        return None
    known, day = dict(query.case.facts), query.case.as_of
    if not any(lookup.facts[fact].family in ("grade", "branch") for fact in known):
        return None
    known = {**implied(lookup, known), **known}
    rules = [
        rule
        for rule in lookup.base.rules
        if rule.aspect == "wear" and rule.modality in ("must", "may") and is_in_force(rule, day)
    ]
    worn = {item: [r for r in rules if item in r.scope.items] for item, _ in ask.choices}
    own = [
        i for i, those in worn.items() if any(evaluate(r.condition, known.get) is not False for r in those)
    ]
    if len(own) != 1 or not all(worn.values()):
        return None
    one = msgspec.structs.replace(query, items=(own[0],))
    return msgspec.structs.replace(reading, query=one, text=say_query(lookup, one))


def without_words(reading: Reading) -> tuple[str, tuple[str, ...]] | None:
    """The question without words that it was asked back whether to leave out, and these words."""
    ask = reading.ask
    if ask is None or [said for _, said in ask.choices] != ["without it"]:
        return None
    rest = ask.choices[0][0]
    left = [token.low for token in tokenize(rest)]
    words = []
    for token in tokenize(reading.question):
        if token.low in left:
            left.remove(token.low)
        else:
            words.append(token.text)
    return (rest, tuple(words)) if words else None


def with_its_kinds(item: str, lookup: Lookup) -> bool:
    """Whether other things go by the noun of an item, so that a word before it may tell them apart."""
    noun = tokenize(lookup.items[item].label)[-1].key
    return any(
        tokenize(name)[-1].key == noun
        for other in lookup.base.items
        if other.id != item
        for name in (other.label, *other.other_labels)
    )


_SIZED = word_set("""
    small smaller little tiny wee titchy teeny mini miniature dainty thin thinner slim slender narrow short
    big bigger large larger huge great wide broad thick long
""")


def is_of_size(words: Iterable[str], item: str, lookup: Lookup) -> bool:
    """Whether words only say how big a thing is, and the books tell none of its kinds apart by that."""
    if not _SIZED.issuperset(word.casefold() for word in words):
        return False
    noun = tokenize(lookup.items[item].label)[-1].key
    names = (name for one in lookup.base.items for name in (one.label, *one.other_labels, *one.everyday))
    called = (tokenize(name) for name in names)
    return not any(
        name[-1].key == noun and not _SIZED.isdisjoint(token.low for token in name) for name in called if name
    )
