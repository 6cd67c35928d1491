"""Words that no name and no phrase explains: index first, then a likely misspelling."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from typing import Protocol

from kb.model.lookup import Lookup
from kb.model.records import Item
from kb.reader.names.lexicon import Entry, Lexicon
from kb.reader.names.misspelt import sound, sounding, structure_words
from kb.reader.phrases.english import PHRASES
from kb.reader.words.tokens import Token, stems, tokenize, word_key

_PLACES = frozenset({"first", "second", "third", "fourth", "last", "next", "former", "latter"})
_SAID = """
    degrees inches millimetres millimeters centimetres centimeters metres celsius quarter today tomorrow
    yesterday tonight january february march april june july august september october november december
    monday tuesday wednesday thursday friday saturday sunday edition tolerance measure measures measured
    through another
"""
"""Words of measures, days and the like, which are read by their form."""


@cache
def _structure() -> frozenset[str]:
    return frozenset(word for phrase in PHRASES for word in phrase)


def _is_common(word: str) -> bool:
    from kb.reader.words.common_words import COMMON_WORDS  # noqa: PLC0415  only for words that are not known

    return word in COMMON_WORDS


@cache
def _worth_mending() -> tuple[str, ...]:
    """Words of structure that are long enough to be recognised misspelt."""
    words = {*_structure(), *_SAID.split()}
    return tuple(word for word in sorted(words) if len(word) > 4 and word.isalpha())


class Hit(Protocol):
    """What the keyword index finds: the kind of a record ("item", "clause", ...) and its id."""

    @property
    def kind(self) -> str: ...

    @property
    def id(self) -> str: ...


Search = Callable[[tuple[str, ...]], Sequence[Hit]]


def is_real_word(token: Token, lexicon: Lexicon) -> bool:
    """Whether a word is left alone: an ordinary English word or one that the books use."""
    if _is_common(token.low) or _is_common(token.key) or token.low in _structure():
        return True
    from kb.reader.words.same_sense import has_a_sense  # noqa: PLC0415  most words are known

    if token.key in lexicon.known_words or _is_told(token.low) or has_a_sense(token.low):
        return True
    things = token.low.endswith("ings") and len(token.low) >= _LONG_PLURAL  # "railings", not "earings"
    return _is_derived(token.low) or (things and _is_derived(token.key))


_LONG_PLURAL = 8


def _is_derived(word: str) -> bool:
    """Whether a word is made of an ordinary one: "stopping", "railing"."""
    for ending, restored in (
        ("ing", ("", "e")),
        ("ed", ("", "e")),
        ("er", ("", "e")),
        ("est", ("", "e")),
        ("ly", ("",)),
    ):
        if word.endswith(ending):
            stem = word[: -len(ending)]
            doubled = stem[:-1] if stem[-1:] == stem[-2:-1] and _doubles(stem) else stem
            if any(_is_common(stem + more) for more in restored) or _is_common(doubled):
                return True
    return False


def _doubles(stem: str) -> bool:
    """Whether the last letter is doubled as in "stopping": after one vowel that a consonant leads to."""
    return stem[-3:-2] in tuple("aeiouy") and stem[-4:-3] not in tuple("aeiou")


def _near_enough(word: str, name: str) -> bool:
    """Whether two words that sound alike are also written alike."""
    from rapidfuzz.distance import OSA  # noqa: PLC0415  only when a word is left over

    away = int(OSA.distance(word, name))
    return away <= 2 or (away <= len(word) // 2 and word[:2] == name[:2])


def near_words(word: str, lexicon: Lexicon, limit: int = 3) -> tuple[str, ...]:
    """Words of labels within the distance at which a slip is likely: 1, or 2 from eight letters.

    A known everyday word ("loitering") is no slip for another one, but may be for a form of it.
    """
    found = _near_words(word, lexicon, limit)
    if not found:
        return ()
    from kb.reader.words.everyday import DOINGS, OCCASIONS, OTHERS, PLACES  # noqa: PLC0415  few words are mended

    own = set(stems(word))
    known = any(not own.isdisjoint(words) for words in (DOINGS, OCCASIONS, OTHERS, PLACES))
    return tuple(name for name in found if not known or not own.isdisjoint(stems(name)))


def _near_words(word: str, lexicon: Lexicon, limit: int) -> tuple[str, ...]:
    from rapidfuzz import process  # noqa: PLC0415  only when a word is left over
    from rapidfuzz.distance import OSA  # noqa: PLC0415

    if len(word) < 4 or not word.isalpha():
        return ()
    alike = tuple(name for name in sounding(word, lexicon.label_words) if _near_enough(word, name))
    cutoff = 2 if len(word) >= 8 else 1
    forms = (word,) if word_key(word) == word else (word, word_key(word))
    found = [
        (str(name), score)
        for form in forms
        for name, score, _ in process.extract(
            form,
            (*lexicon.label_words, *_worth_mending()),
            scorer=OSA.distance,
            score_cutoff=cutoff,
            limit=limit + 5,
        )
    ]
    found = [entry for entry in found if word != f"un{entry[0]}"]  # "untucked" is no slip for "tucked"
    found = [entry for entry in found if entry[1] > 1 or _is_slip(word, entry[0])]
    if len(word) < 6:
        found = [entry for entry in found if entry[0][0] == word[0]]
    by_letters = {word_key(name) for name, score in found if score == 1}
    if len({word_key(name) for name in alike}) == 1 and (
        len(by_letters) != 1 or word_key(alike[0]) in by_letters
    ):
        return alike[:1]
    if not found and alike:
        return alike[:limit]
    if not found:
        return tuple(
            name
            for name in structure_words()
            if name[0] == word[0] and sound(name) == sound(word) and OSA.distance(word, name) <= 1
        )[:limit]
    best = min(score for _, score in found)
    return tuple(dict.fromkeys(name for name, score in found if score == best))[:limit]


_KEYS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
_ALIKE = ("aeiouy", "cksq", "sz", "fvph", "mn", "dt", "bp", "gj", "lr", "vw")


def _is_slip(word: str, name: str) -> bool:
    """Whether one letter put for another is a likely slip: beside it on the keyboard, or alike in sound."""
    if len(word) != len(name):
        return True
    pairs = [(left, right) for left, right in zip(word, name, strict=True) if left != right]
    if len(pairs) != 1:
        return True
    ((left, right),) = pairs
    return any({left, right} <= set(alike) for alike in _ALIKE) or _is_near(left, right)


def _is_near(left: str, right: str) -> bool:
    """Whether two letters are neighbours on a keyboard."""
    places = {
        key: (row, column + row / 2) for row, keys in enumerate(_KEYS) for column, key in enumerate(keys)
    }
    if left not in places or right not in places:
        return True
    return all(abs(one - other) <= 1 for one, other in zip(places[left], places[right], strict=True))


def near_labels(words: str, lookup: Lookup) -> tuple[str, ...]:
    """At most three labels of items with a word written nearly like one of the words, the nearest first.

    A word that somebody knows ("lathe", "mitts") is taken as meant, and of many words nothing is made.
    """
    said = [t.low for t in tokenize(words) if len(t.low) >= _LONG and not is_known_word(t.low)]
    near: dict[str, int] = {}
    for item in lookup.base.items if 0 < len(said) <= _FEW else ():
        for name in (item.label, *item.other_labels):
            *others, noun = name.casefold().replace("-", " ").split()
            for part in (noun, *others):
                away = min((_away(word, part) for word in said), default=_TOO_FAR)
                if away <= (1 if len(part) < _LONGER else 2) and (away or part == noun):
                    near[item.label] = min(near.get(item.label, away), away)
    return tuple(sorted(near, key=lambda label: near[label])[:3])


def _away(word: str, part: str) -> int:
    """How many slips lie between two words that begin alike."""
    from rapidfuzz.distance import OSA  # noqa: PLC0415  only when a word is left over

    if len(part) < _LONG or part[0] != word[0]:
        return _TOO_FAR
    return min(int(OSA.distance(form, part)) for form in (word, word_key(word)))


def is_known_word(word: str) -> bool:
    """Whether it is an ordinary word, one of everyday talk, or what clothes are called anywhere."""
    from kb.reader.words.everyday import DOINGS, OCCASIONS, OTHERS, PLACES  # noqa: PLC0415  few words are left over

    forms = {word, word_key(word)}
    return any(_is_common(form) or _is_told(form) for form in forms) or any(
        not forms.isdisjoint(words) for words in (DOINGS, OCCASIONS, OTHERS, PLACES)
    )


def _is_told(word: str) -> bool:
    """Whether a word is one of the street or of any wardrobe: "hubby", "mitts"."""
    from kb.reader.words.kinds import garment_words  # noqa: PLC0415  only for words that are not known
    from kb.reader.words.street import FEELINGS, GARMENTS, RELATIVES, STRONG  # noqa: PLC0415  as above

    return any(word in words for words in (RELATIVES, FEELINGS, STRONG, GARMENTS, garment_words()))


_LONG = 4  # letters of a word that can be told from another
_LONGER = 8
_TOO_FAR = 9
_FEW = 2


def near_names(word: str, names: Sequence[str]) -> tuple[str, ...]:
    """At most three of the names that look like a word."""
    from rapidfuzz import fuzz, process  # noqa: PLC0415  only when a name is unknown

    found = process.extract(word, tuple(dict.fromkeys(names)), scorer=fuzz.ratio, score_cutoff=67, limit=3)
    return tuple(str(name) for name, _, _ in found)


def index_entries(words: Sequence[str], search: Search, lookup: Lookup) -> tuple[Entry, ...]:
    """Items that the index finds and that have every word, or one akin to it, in their names."""
    found: list[Entry] = []
    if _PLACES.issuperset(words):
        return ()  # "the first one" is no first aid badge
    for hit in search(tuple(words)):
        item = lookup.items.get(hit.id) if hit.kind == "item" else None
        if item is None:
            continue
        text = " ".join((item.label, *item.other_labels, *item.everyday)).casefold().replace("-", " ")
        keys = [word_key(word.strip("'\"(),")) for word in text.split()]
        told = len(words) > 1 or any(_stands_for(word_key(words[0]), head) for head in _heads(item))
        if told and all(any(_stands_for(word_key(word), key) for key in keys) for word in words):
            found.append(Entry("item", item.id, "", 1))
    return tuple(dict.fromkeys(found))


_AFTER_NOUN = (
    r" (?:(?:brought|worn|issued|carried|kept|held|used|made|bought|lent|given|required)"
    r" (?:of|from|for|with|without|in|on|to|by|at|under|over)|of|that) "
)


def _heads(item: Item) -> Iterator[str]:
    """The nouns of an item's names: what goes before only says which it is."""
    for name in (item.label, *item.other_labels, *item.everyday):
        words = re.split(_AFTER_NOUN, name.casefold().replace("-", " "))[0].split()
        yield word_key((words or name.split())[-1].strip("'\"(),"))


def _stands_for(word: str, key: str) -> bool:
    """Whether a word may be one of a name; an ordinary word ("make") is no other word ("makeup")."""
    ending = key.removeprefix(word) if key.startswith(word) else ""
    return word == key or (akin(word, key) and (not _is_common(word) or ending in _ENDINGS))


_ENDINGS = frozenset({"ed", "d", "ing", "er", "y", "en", "ly"})


def akin(word: str, key: str) -> bool:
    """Whether two words share their stem: equal, or alike but for an ending of at most three letters."""
    if word == key:
        return True
    common = 0
    for left, right in zip(word, key, strict=False):
        if left != right:
            break
        common += 1
    return common >= 4 and len(word) - common <= 3 and len(key) - common <= 3
