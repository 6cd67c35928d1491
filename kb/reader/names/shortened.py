"""Names cut short where people leave words out: "in the hall", "on the way to work", "long hair"."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from kb.model.records import Fact
from kb.reader.phrases.english import LEADING_PREPOSITIONS, LIMBS, PHRASES, SKIPPED_INSIDE_LABELS
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize

_WAYS = word_set("to from in out into up down on off before after at")
ON_BODY = LIMBS | word_set("shoulder breast back side hip waist collar sleeve cuff pocket")
_ROOM = word_set("room building block house")
_WHOLE = word_set("chapel mess gym library office kitchen galley laundry sauna surgery infirmary theatre")
CALENDAR = word_set("day week month year hour time")
"""Nouns that everybody says without meaning the one that a book names: "on the day" is on no oath day."""
_Words = Sequence[tuple[str, str]]


def short_places(label: str, words: _Words) -> Iterator[tuple[str, ...]]:
    """ "In the hall" for "in the ticket hall": the preposition and the noun; words are (lower case, key).

    Without its own name a place is any: "on the road" is not on the Flats road.
    """
    if any(word[:1].isupper() for word in label.split()[1:-1]):
        return
    kept = [word for word in words if word[0] not in SKIPPED_INSIDE_LABELS]
    if len(kept) == 3 and kept[-1][0] in _ROOM and kept[1][0] in _WHOLE:
        yield kept[0][1], kept[1][1]  # "in the chapel" for "in the chapel room"
    led = len(kept) > 2 and kept[0][0] in LEADING_PREPOSITIONS and "of" not in {low for low, _ in kept}
    if led and kept[-1][1] not in ON_BODY | CALENDAR:  # "on the shoulder" is not on the hard shoulder
        yield kept[0][1], kept[-1][1]


def one_way(words: _Words) -> Iterator[tuple[str, ...]]:
    """ "On the way to work" for "the way to and from work": one of two prepositions."""
    kept = [word for word in words if word[0] not in SKIPPED_INSIDE_LABELS]
    for place in range(1, len(kept) - 2):
        if kept[place][0] == "and" and {kept[place - 1][0], kept[place + 1][0]} <= _WAYS:
            for left_out in (place - 1, place + 1):
                keys = tuple(key for i, (_, key) in enumerate(kept) if i not in (place, left_out))
                yield keys
                yield "on", *keys


def with_adjective(words: _Words) -> Iterator[tuple[str, ...]]:
    """ "Long hair" for "loose long hair": the end of a label that begins with a word of structure."""
    for first in range(1, len(words) - 1):
        if PHRASES.get((words[first][0],), "").startswith(("dimension", "degree", "oversize")):
            yield tuple(key for _, key in words[first:])


def shared_tails(fact: Fact) -> Iterator[tuple[tuple[str, ...], str]]:
    """ "Service dress", where there are a winter and a summer service dress: the end of the names of several
    rigs, of two words at least, with each rig that it may be."""
    names = ((value.id, tokenize(value.label)) for value in fact.values if fact.family == "rig")
    tails = [(tuple(token.key for token in name[1:]), one) for one, name in names if len(name) > _SHORTEST]
    counts = Counter(tail for tail, _ in tails)
    yield from ((tail, one) for tail, one in tails if counts[tail] > 1)


_SHORTEST = 2  # words: of "winter dress" and "summer dress" no end has two


def doing(words: _Words) -> Iterator[tuple[str, ...]]:
    """ "Evacuating a cabin" for "evacuation of a cabin": the verb of a noun for what is done."""
    kept = [word for word in words if word[0] not in SKIPPED_INSIDE_LABELS]
    if len(kept) < 3 or kept[1][0] != "of" or not kept[0][0].endswith("ation"):
        return
    stem, rest = kept[0][0].removesuffix("ation"), tuple(key for _, key in kept[2:])
    yield from ((stem + ending, *rest) for ending in ("ating", "ate", "ated", "ing"))


def there(label: str, words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """ "Up a tower" for "on a tower", "across the apron" for "on the apron"."""
    led = label.split()[0]
    if led in ("on", "in") and len(words) > 1:
        yield from ((way, *words[1:]) for way in ("across", "through", *(("up",) if led == "on" else ())))


_RUNNING = ("going", "on", "turning", "run", "about", "around", "nearby")
_GOING = ("going", "on", "running", "firing", "working")


def going_on(words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """ "Saw going" for "saw running", "laser on" for "laser in use", "see smoke" for "smoke in sight"."""
    if words[-1] == "running" and len(words) > 1:
        yield from ((*words[:-1], form) for form in _RUNNING)
    before, last = words[:-2], words[-2:]
    if before and last == ("in", "use"):
        yield from ((*before, form) for form in _GOING)
    if before and last == ("in", "sight"):
        yield from ((way, *before) for way in ("see", "seeing"))
