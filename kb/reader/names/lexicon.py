"""The names of a rule base, indexed for exact look-up: joined word keys -> what they name.

A key joins the word keys of a label without spaces, so "storm coat", "storm-coat" and "Stormcoats" are one.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property, lru_cache
from itertools import chain
from typing import Literal, NamedTuple

from kb.model.lookup import Lookup
from kb.model.records import Named
from kb.reader.phrases.english import PHRASES, SKIPPED_INSIDE_LABELS
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize, word_key

EntryKind = Literal[
    "item", "value", "fact", "group", "aspect", "act", "aspect value", "authority", "book", "service"
]
CREDENTIALS = ("qualification", "appointment", "waiver")
PERSONAL = frozenset({"grade", "branch", *CREDENTIALS})
"""Families of facts about who somebody is."""
_FUNCTION_WORDS = frozenset(words[0] for words in PHRASES if len(words) == 1)


class Entry(NamedTuple):
    """One thing that a name names. `rank`: 0 a label, 1 an everyday word, 2 the last word or core of a label,
    3 a guess that counts only where nothing better is known (the id or last word of a value or another
    label; an item that is only guessed is asked about).

    `owner` is the fact of a value or group, or the aspect of an aspect value.
    """

    kind: EntryKind
    id: str
    owner: str = ""
    rank: int = 0


class Lexicon:
    """Frozen indexes over the names of one rule base (see `build`)."""

    def __init__(self, names: dict[str, tuple[Entry, ...]], longest: int, lookup: Lookup) -> None:
        self.names = names
        self.longest = longest
        self._lookup = lookup

    @classmethod
    def build(cls, lookup: Lookup) -> Lexicon:
        """Index every label, everyday word, verb and code of the rule base."""
        from kb.reader.names.entries import all_names, best_entries, everyday_names  # noqa: PLC0415  then it is kept
        from kb.reader.names.initials import with_short_forms  # noqa: PLC0415
        from kb.reader.names.nouns import with_other_nouns, with_short_nouns  # noqa: PLC0415
        from kb.reader.names.unmentioned import no_studs, unmentioned  # noqa: PLC0415

        names: dict[str, dict[Entry, None]] = {}
        longest = 1
        for words, entry in chain(all_names(lookup), with_short_nouns(lookup.base.items)):
            if not words:
                continue
            longest = max(longest, len(words))
            names.setdefault("".join(words), {})[entry] = None
        best = {key: best_entries(entries) for key, entries in names.items()}
        further: dict[str, dict[Entry, None]] = {}
        for words, entry in with_other_nouns(lookup.base.items):
            longest = max(longest, len(words))
            further.setdefault("".join(words), {})[entry] = None
        everyday = ((key, no_studs(key, entries, lookup)) for key, entries in everyday_names(best))
        best |= {key: entries for key, entries in everyday if entries}
        best = {key: tuple(entries) for key, entries in further.items()} | best
        best = with_short_forms(best, lookup)  # which are of what the books name alone
        for key, strange, size in tuple(unmentioned(best, lookup)):
            longest = max(longest, size)
            best[key] = (strange,)
        return cls(best, longest, lookup)

    def is_written_apart(self, entry: Entry, words: int) -> bool:
        """Whether an item has a name of so many words."""
        item = self._lookup.items[entry.id]
        return any(len(name_words(name)) == words for name in (*labels_of(item), *item.everyday))

    @cached_property
    def label_words(self) -> tuple[str, ...]:
        """Every content word of a label, for suggestions about misspelt words."""
        from kb.reader.words.kinds import narrower, same  # noqa: PLC0415  only for words that are not known

        words = {
            token.low: None
            for named in named_records(self._lookup)
            for label in (named.label, *named.other_labels, *getattr(named, "everyday", ()))
            for token in tokenize(label)
            if len(token.low) > 3 and token.low.isalpha() and token.low not in _FUNCTION_WORDS
        }
        for item in self._lookup.base.items:  # "wristwatch" for "wrist watch"
            pairs = (name.lower().split() for name in labels_of(item))
            words |= {"".join(pair): None for pair in pairs if len(pair) == 2 and "".join(pair).isalpha()}
        for row in (*same(), *(names for _, names in narrower())):
            if any(joined(name) in self.names for name in row):
                words |= {word: None for name in row for word in name.lower().split() if len(word) > 4}
        return tuple(words)

    @cached_property
    def long_names(self) -> tuple[tuple[str, ...], ...]:
        """Names of several words, as keys, for words that are misspelt inside them."""
        from kb.reader.names.entries import all_names  # noqa: PLC0415  only for words that are not known

        return tuple(dict.fromkeys(words for words, _ in all_names(self._lookup) if len(words) > 1))

    @cached_property
    def plurals(self) -> frozenset[str]:
        """Keys of one-word labels that are always plural ("shorts", which is not "short")."""
        words = [
            t for item in self._lookup.base.items for n in labels_of(item) if len(t := label_tokens(n)) == 1
        ]
        return frozenset(key for ((low, key),) in words if low != key)

    @cached_property
    def in_the_plural(self) -> frozenset[tuple[str, str, str]]:
        """(word, fact, value) named in the plural alone: who is in blacks is not told by what is black."""
        return frozenset(
            (word[:-1], fact.id, value.id)
            for fact in self._lookup.base.facts
            for value in fact.values
            for words in ({word for name in labels_of(value) for word in name.lower().split()},)
            for word in words
            if word.endswith("s") and word[:-1] not in words
        )

    @cached_property
    def is_for_the_young(self) -> bool:
        """Whether pupils or cadets are among those whom the books dress, so that parents and siblings ask."""
        return any(
            not _YOUNG.isdisjoint(label.casefold().split())
            for named in (*self._lookup.base.facts, *self._lookup.base.groups)
            if getattr(named, "family", getattr(named, "fact", "")) in ("grade", "branch")
            for one in (named, *getattr(named, "values", ()))
            for label in labels_of(one)
        )

    @cached_property
    def known_words(self) -> frozenset[str]:
        """Keys of every word that the books use: none of them is a misspelling."""
        texts = (clause.text for clause in self._lookup.base.clauses)
        return frozenset(token.key for text in texts for token in tokenize(text)) | {
            word_key(word) for word in self.label_words
        }


_YOUNG = word_set("pupil pupils student students cadet cadets child children chorister choristers year")


def joined(name: str) -> str:
    """The key under which a name is looked up."""
    return "".join(name_words(name))


@lru_cache(maxsize=8192)
def label_tokens(label: str) -> tuple[tuple[str, str], ...]:
    """(lower-case word, key) of each word of a label."""
    plain = label.replace("-", " ")
    if plain.isascii() and plain.replace(" ", "").isalpha():
        return tuple((low, word_key(low)) for low in plain.lower().split())
    return tuple((token.low, token.key) for token in tokenize(label) if token.low != "-")


@lru_cache(maxsize=8192)
def name_words(label: str) -> tuple[str, ...]:
    """Word keys of a label, without the words that may be left out of it; what ends it is none: "rig A"."""
    tokens = label_tokens(label)
    kept = tuple(key for low, key in tokens[:-1] if low not in SKIPPED_INSIDE_LABELS)
    return (*kept, *(key for _, key in tokens[-1:]))


def named_records(lookup: Lookup) -> Iterator[Named]:
    base = lookup.base
    yield from base.items
    for fact in base.facts:
        if fact.family != "worn":
            yield fact
            yield from fact.values
    yield from base.groups
    for aspect in base.aspects:
        yield aspect
        yield from aspect.values
    yield from base.authorities
    yield from base.books


def labels_of(named: Named) -> tuple[str, ...]:
    return (named.label, *named.other_labels)
