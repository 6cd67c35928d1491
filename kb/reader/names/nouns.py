"""Names of things with another noun that means the same: a "V-neck jumper" is the V-neck pullover."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from kb.model.records import Item
from kb.reader.names.lexicon import Entry, labels_of, name_words
from kb.reader.words.kinds import same


def with_other_nouns(items: Iterable[Item]) -> Iterator[tuple[tuple[str, ...], Entry]]:
    """Each label of several words with the nouns that mean the same in place of the one that ends it."""
    others = _others()
    longest = max(map(len, others))
    for item in items:
        for label in labels_of(item):
            words = name_words(label)
            for size in range(min(longest, len(words) - 1), 0, -1):
                if found := others.get(words[-size:]):
                    yield from ((words[:-size] + noun, Entry("item", item.id, "", 1)) for noun in found)
                    break


def with_short_nouns(items: Iterable[Item]) -> Iterator[tuple[tuple[str, ...], Entry]]:
    """Each label that ends with "wristwatch" with "watch", beside what else is called so: being on watch."""
    for item in items:
        for label in labels_of(item):
            words = name_words(label)
            if words[-1:] == name_words("wristwatch"):
                yield (*words[:-1], *name_words("watch")), Entry("item", item.id, "", 1)


def _others() -> Mapping[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """For each everyday noun those that mean the same."""
    rows = [tuple(dict.fromkeys(name_words(name) for name in row)) for row in same()]
    return {noun: tuple(other for other in row if other != noun) for row in rows for noun in row}
