"""Completion: text and cursor in, suggestions out; no input or output."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

import msgspec
from rapidfuzz import fuzz, process

from shell.commands import COMMANDS

if TYPE_CHECKING:
    from kb import KnowledgeBase

_STARTERS = (
    "May I wear ",
    "Must I wear ",
    "What must I wear ",
    "What may I wear ",
    "Where does the ",
    "How many ",
    "Who may wear ",
    "When may I wear ",
)
_LONGEST_PHRASE = 4
_ID_LENGTH = 3  # a single capital is completed to ids such as K5 only
_SCAN = 400
_FUZZY_FROM = 4
_FUZZY_SCORE = 75


class Entry(msgspec.Struct, frozen=True):
    """A text that can be put in, and what it is."""

    text: str
    about: str


class Suggestion(msgspec.Struct, frozen=True):
    """`text` in place of everything from `start` to the cursor."""

    start: int
    text: str
    about: str


class Vocabulary(msgspec.Struct, frozen=True):
    """Entries with a sorted index: every tail of a label that begins with a word, and where it belongs.

    `words` are all single words of the entries, for slips of the finger.
    """

    entries: tuple[Entry, ...]
    keys: tuple[str, ...]
    owners: tuple[tuple[bool, int], ...]
    words: tuple[str, ...]
    clauses: tuple[Entry, ...] = ()
    facts: tuple[Entry, ...] = ()


def make_vocabulary(
    entries: Iterable[Entry], clauses: Iterable[Entry] = (), facts: Iterable[Entry] = ()
) -> Vocabulary:
    unique = tuple(dict.fromkeys(entries))
    index: list[tuple[str, tuple[bool, int]]] = []
    words: set[str] = set()
    for number, entry in enumerate(unique):
        parts = entry.text.casefold().split()
        words.update(parts)
        index += [(" ".join(parts[i:]), (i > 0, number)) for i in range(len(parts))]
    index.sort()
    return Vocabulary(
        unique,
        tuple(key for key, _ in index),
        tuple(owner for _, owner in index),
        tuple(sorted(words)),
        tuple(sorted(set(clauses), key=lambda entry: entry.text)),
        tuple(dict.fromkeys(facts)),
    )


def vocabulary_of(base: KnowledgeBase) -> Vocabulary:
    """Labels of items, grades, rigs and other fact values, the clauses, and the names of facts."""
    lookup = base.lookup
    entries = [Entry(name, "item") for item in lookup.base.items for name in (item.label, *item.other_labels)]
    facts = []
    for fact in lookup.base.facts:
        if fact.family == "worn":
            continue
        facts.append(Entry(fact.label, "fact"))
        if not fact.values:
            entries.append(Entry(fact.label, "fact"))
        for value in fact.values:
            names = (value.label, *value.other_labels)
            entries += [Entry(name, fact.label) for name in names]
            if fact.family == "grade":
                entries.append(Entry(value.id, value.label))
    clauses = [
        Entry(clause.number, clause.heading or lookup.editions[clause.edition].label)
        for clause in lookup.base.clauses
    ]
    return make_vocabulary(entries, clauses, facts)


def _with_prefix(vocabulary: Vocabulary, prefix: str) -> list[Entry]:
    """Entries with a word tail that begins with `prefix`, whole labels first."""
    start = bisect_left(vocabulary.keys, prefix)
    found: list[tuple[bool, int]] = []
    for position in range(start, min(start + _SCAN, len(vocabulary.keys))):
        if not vocabulary.keys[position].startswith(prefix):
            break
        found.append(vocabulary.owners[position])
    return [vocabulary.entries[number] for _, number in sorted(found)]


def _near(vocabulary: Vocabulary, word: str) -> list[Entry]:
    """Entries with a word that is nearly `word`, the nearest first."""
    near = process.extract(word, vocabulary.words, scorer=fuzz.ratio, score_cutoff=_FUZZY_SCORE, limit=3)
    return [entry for match, _, _ in near for entry in _with_prefix(vocabulary, match)]


def _word_starts(text: str) -> list[int]:
    """Where the last words begin, the longest stretch first."""
    starts = [i for i, c in enumerate(text) if not c.isspace() and (i == 0 or text[i - 1].isspace())]
    return starts[-_LONGEST_PHRASE:]


def _argument(text: str, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """What may follow a command word."""
    commands = tuple(Entry(command.name, command.does) for command in COMMANDS)
    pools = {"help ": commands, "forget ": vocabulary.facts, "as of ": (Entry("today", "the present day"),)}
    lowered = text.casefold()
    for word, pool in pools.items():
        if lowered.startswith(word):
            typed = lowered[len(word) :]
            yield from (
                Suggestion(len(word), e.text, e.about) for e in pool if e.text.casefold().startswith(typed)
            )
    if lowered.rpartition(" ")[0].endswith("clause"):
        start = len(text) - len(text.rpartition(" ")[2])
        yield from (
            Suggestion(start, e.text, e.about) for e in vocabulary.clauses if e.text.startswith(text[start:])
        )


def _line_start(text: str) -> Iterator[Suggestion]:
    """Commands and the beginnings of questions, while the line still fits them."""
    typed = text.lstrip().casefold()
    start = len(text) - len(text.lstrip())
    for command in COMMANDS:
        if typed and command.name.startswith(typed):
            yield Suggestion(start, command.name, command.does)
    for starter in _STARTERS:
        if typed and starter.casefold().startswith(typed):
            yield Suggestion(start, starter, "question")


def _labels(text: str, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """Labels that go on from the last words; where there are none, labels with a nearly equal word."""
    starts = _word_starts(text)
    found = False
    for start in starts:
        phrase = " ".join(text[start:].casefold().split()) + (" " if text[-1].isspace() else "")
        short = len(phrase.strip()) < 2
        if short and not text[start].isupper():
            continue
        for entry in _with_prefix(vocabulary, phrase):
            if entry.text.casefold() != phrase and (not short or len(entry.text) <= _ID_LENGTH):
                found = True
                yield Suggestion(start, entry.text, entry.about)
    if starts and not found and len(text) - starts[-1] >= _FUZZY_FROM and not text[-1].isspace():
        word = text[starts[-1] :].casefold()
        if word not in vocabulary.words:
            yield from (Suggestion(starts[-1], e.text, e.about) for e in _near(vocabulary, word))


def suggest(text: str, cursor: int, vocabulary: Vocabulary, limit: int = 12) -> tuple[Suggestion, ...]:
    """At most `limit` suggestions for the text before the cursor, the best first, none twice."""
    before = text[:cursor]
    if not before.strip():
        return ()
    special = tuple(_argument(before, vocabulary))
    every = special or (*_line_start(before), *_labels(before, vocabulary))
    unique = {suggestion.text.casefold(): suggestion for suggestion in reversed(every)}
    return tuple(s for s in dict.fromkeys(every) if unique[s.text.casefold()] is s)[:limit]
