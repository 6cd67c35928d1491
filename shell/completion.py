"""Completion: text and cursor in, suggestions out; no input or output."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Literal

import msgspec
from rapidfuzz import fuzz, process

from shell.commands import COMMANDS
from shell.saving import FORMS

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
_SCAN = 2000
_FUZZY_FROM = 4
_FUZZY_SCORE = 75
_FUZZY_PHRASE = 80
_INSIDE_FROM = 3

Kind = Literal["item", "who", "rig", "situation", "act"]
_WHO_FAMILIES = ("grade", "branch", "qualification", "appointment", "waiver", "authorisation")
# The words before the cursor, and what can follow them; the longest that fits counts.
_WHO = ("as", "am", "for", "by", "officer", "grade", "may", "can", "must", "should", "does", "is", "are")
_FOLLOWS: dict[str, tuple[Kind, ...]] = {
    **{f"{word} {article}": ("who",) for word in _WHO for article in ("a", "an")},
    **dict.fromkeys(("as", "i am", "i'm", "below", "above", "grade"), ("who",)),
    **dict.fromkeys(("in", "in the", "at", "at the", "on", "on the", "while"), ("rig", "situation")),
    **dict.fromkeys(("when", "if", "during", "it is", "it's"), ("rig", "situation")),
    **dict.fromkeys(("may i", "can i", "must i", "should i", "i have to", "who may", "who must"), ("act",)),
    **dict.fromkeys(("wear", "wears", "wearing", "carry", "the", "my", "with", "without"), ("item",)),
    **dict.fromkeys(
        ("wear a", "wear an", "carry a", "carry an", "with a", "without a", "how many"), ("item",)
    ),
}
_LEAD_WORDS = frozenset(word for lead in _FOLLOWS for word in lead.split())
_LONGEST_LEAD = max(lead.count(" ") + 1 for lead in _FOLLOWS)
_KEYWORDS = """ASK BASE BIND CONSTRUCT COUNT DESCRIBE DISTINCT EXISTS FILTER FROM GRAPH GROUP HAVING LIMIT
MINUS NOT OFFSET OPTIONAL ORDER PREFIX SELECT UNION VALUES WHERE"""


class Entry(msgspec.Struct, frozen=True):
    """A text that can be put in, what it is in words, and its kind."""

    text: str
    about: str
    kind: Kind = "item"


class Suggestion(msgspec.Struct, frozen=True):
    """`text` in place of everything from `start` to the cursor."""

    start: int
    text: str
    about: str


class Vocabulary(msgspec.Struct, frozen=True):
    """Entries with a sorted index: every tail of a label that begins with a word, and where it belongs.

    `words` are all single words of the entries, for slips of the finger; `clauses`, `facts` and `days` follow
    the commands that take one.
    """

    entries: tuple[Entry, ...]
    keys: tuple[str, ...]
    owners: tuple[tuple[bool, int, int], ...]
    words: tuple[str, ...]
    clauses: tuple[Entry, ...] = ()
    facts: tuple[Entry, ...] = ()
    days: tuple[Entry, ...] = ()


def make_vocabulary(
    entries: Iterable[Entry],
    clauses: Iterable[Entry] = (),
    facts: Iterable[Entry] = (),
    days: Iterable[Entry] = (),
) -> Vocabulary:
    unique = tuple(dict.fromkeys(entries))
    index: list[tuple[str, tuple[bool, int, int]]] = []
    words: set[str] = set()
    for number, entry in enumerate(unique):
        parts = entry.text.casefold().split()
        words.update(parts)
        index += [(" ".join(parts[i:]), (i > 0, len(entry.text), number)) for i in range(len(parts))]
    index.sort()
    return Vocabulary(
        unique,
        tuple(key for key, _ in index),
        tuple(owner for _, owner in index),
        tuple(sorted(words)),
        tuple(sorted(set(clauses), key=lambda entry: entry.text)),
        tuple(dict.fromkeys(facts)),
        (Entry("today", "the present day"), *dict.fromkeys(days)),
    )


def _kind(family: str) -> Kind:
    return "who" if family in _WHO_FAMILIES else "rig" if family == "rig" else "situation"


def vocabulary_of(base: KnowledgeBase) -> Vocabulary:
    """Labels of items, grades, rigs and other fact values, the clauses, the names of facts, and days."""
    lookup = base.lookup
    entries = [Entry(name, "item") for item in lookup.base.items for name in (item.label, *item.other_labels)]
    entries += [Entry(aspect.verb, "act", "act") for aspect in lookup.base.aspects if aspect.verb]
    facts = []
    for fact in lookup.base.facts:
        if fact.family == "worn":
            continue
        facts.append(Entry(fact.label, "fact"))
        kind = _kind(fact.family)
        if not fact.values:
            entries.append(Entry(fact.label, "fact", kind))
        for value in fact.values:
            names = (value.label, *value.other_labels)
            entries += [Entry(name, fact.label, kind) for name in names]
            if fact.family == "grade":
                entries.append(Entry(value.id, value.label, kind))
    for group in lookup.base.groups:
        kind = _kind(lookup.facts[group.fact].family)
        entries += [Entry(name, "group", kind) for name in (group.label, *group.other_labels)]
    clauses = [
        Entry(clause.number, clause.heading or lookup.editions[clause.edition].label)
        for clause in lookup.base.clauses
    ]
    starts = sorted((edition.valid_from, edition.label) for edition in lookup.base.editions)
    days = [Entry(day.isoformat(), f"{label} comes into force") for day, label in starts]
    return make_vocabulary(entries, clauses, facts, days)


def _with_prefix(vocabulary: Vocabulary, prefix: str) -> list[tuple[bool, Entry]]:
    """Entries with a word tail that begins with `prefix`, and whether it is not the whole label.

    Whole labels go first, the shortest first.
    """
    start = bisect_left(vocabulary.keys, prefix)
    found: list[tuple[bool, int, int]] = []
    for position in range(start, min(start + _SCAN, len(vocabulary.keys))):
        if not vocabulary.keys[position].startswith(prefix):
            break
        found.append(vocabulary.owners[position])
    return [(is_tail, vocabulary.entries[number]) for is_tail, _, number in sorted(found)]


def _near(vocabulary: Vocabulary, word: str) -> list[Entry]:
    """Entries with a word that is nearly `word`, the nearest first; else with a word that has it inside."""
    near = process.extract(word, vocabulary.words, scorer=fuzz.ratio, score_cutoff=_FUZZY_SCORE, limit=3)
    matches = [match for match, _, _ in near] or [known for known in vocabulary.words if word in known]
    return [entry for match in matches for _, entry in _with_prefix(vocabulary, match)]


def _fitting(lead: str) -> tuple[Kind, ...]:
    """What can follow the words before a phrase; () where anything can."""
    words = lead.casefold().split()
    for count in range(min(_LONGEST_LEAD, len(words)), 0, -1):
        kinds = _FOLLOWS.get(" ".join(words[-count:]))
        if kinds:
            return kinds
    return ()


def _word_starts(text: str) -> list[int]:
    """Where the last words begin, the longest stretch first."""
    starts = [i for i, c in enumerate(text) if not c.isspace() and (i == 0 or text[i - 1].isspace())]
    return starts[-_LONGEST_PHRASE:]


def _argument(text: str, vocabulary: Vocabulary, remembered: tuple[str, ...]) -> Iterator[Suggestion]:
    """What may follow a command word."""
    commands = tuple(Entry(command.name, command.does) for command in COMMANDS)
    kept = tuple(Entry(name, "remembered") for name in remembered)
    pools = {
        "help ": commands,
        "forget ": kept or vocabulary.facts,
        "as of ": vocabulary.days,
        "save ": tuple(Entry(f"answer{form}", "a new file") for form in FORMS),
    }
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


def _sparql(text: str) -> Iterator[Suggestion]:
    """Keywords, and the variables that the query has already."""
    start = max(text.rfind(c) for c in " \n\t{}().;,") + 1
    word = text[start:]
    variables = dict.fromkeys(found for found in _words_of(text[:start]) if found[0] in "?$")
    if word[:1] in ("?", "$"):
        yield from (Suggestion(start, v, "variable") for v in variables if v.startswith(word) and v != word)
    elif word:
        yield from (
            Suggestion(start, k, "keyword")
            for k in _KEYWORDS.split()
            if k.startswith(word.upper()) and k != word
        )


def _words_of(text: str) -> list[str]:
    return "".join(c if c.isalnum() or c in "?$_" else " " for c in text).split()


def _line_start(text: str) -> Iterator[Suggestion]:
    """Commands and the beginnings of questions, while the line still fits them."""
    typed = text.lstrip().casefold()
    start = len(text) - len(text.lstrip())
    for command in COMMANDS:
        if typed and command.name.startswith(typed):
            yield Suggestion(start, command.name, command.does)
    for starter in _STARTERS:
        if typed and starter.casefold() != typed and starter.casefold().startswith(typed):
            yield Suggestion(start, starter, "question")


def _labels(text: str, vocabulary: Vocabulary, asked: bool) -> Iterator[Suggestion]:
    """Labels that go on from the last words; where there are none, labels with a nearly equal word.

    What can stand there goes first; where anything of it is found, nothing else is offered.
    """
    starts = _word_starts(text)
    slips = tuple(_slip_before(text, starts, vocabulary))
    if slips:
        yield from slips
        return
    found: list[tuple[bool, bool, int, Suggestion]] = []
    for start in starts:
        kinds = _fitting(text[:start])
        phrase = " ".join(text[start:].casefold().split()) + (" " if text[-1].isspace() else "")
        short = len(phrase.strip()) < 2
        empty = phrase.endswith(" ") and all(word in _LEAD_WORDS for word in phrase.split())
        if short and not (text[start].isupper() or kinds):
            continue
        for is_tail, entry in _with_prefix(vocabulary, phrase):
            fits = entry.kind in kinds
            if empty and not fits:
                continue
            if entry.text.casefold() != phrase and (not short or fits or len(entry.text) <= _ID_LENGTH):
                found.append((fits, is_tail, len(entry.text), Suggestion(start, entry.text, entry.about)))
    found.sort(key=lambda one: one[1:3])
    fitting = [suggestion for fits, *_, suggestion in found if fits]
    if asked and text[-1].isspace():
        yield from (*fitting, *_any_that_fits(text, vocabulary))
    elif found:
        yield from fitting or [suggestion for *_, suggestion in found]
    elif starts and not text[-1].isspace():
        yield from _slips(text, starts[-1], vocabulary)


def _any_that_fits(text: str, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """Everything that can follow, before a letter of it is typed."""
    kinds = _fitting(text)
    yield from (Suggestion(len(text), e.text, e.about) for e in vocabulary.entries if e.kind in kinds)


def _slips(text: str, start: int, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """For a word that begins no label: labels that it may have been meant for."""
    word, kinds = text[start:].casefold(), _fitting(text[:start])
    if word in vocabulary.words or len(word) < (_INSIDE_FROM if kinds else _FUZZY_FROM):
        return
    near = sorted(_near(vocabulary, word), key=lambda entry: entry.kind not in kinds)
    yield from (Suggestion(start, entry.text, entry.about) for entry in near)


def _slip_before(text: str, starts: list[int], vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """For an unknown word before the one that is being typed: labels that begin nearly like both together."""
    if len(starts) < 2 or text[-1].isspace():
        return
    start, last = starts[-2:]
    before = text[start:last].strip().casefold()
    if len(before) < _FUZZY_FROM or before in vocabulary.words or before in _LEAD_WORDS:
        return
    phrase = " ".join(text[start:].casefold().split())
    near = process.extract(phrase, vocabulary.keys, scorer=fuzz.ratio, score_cutoff=_FUZZY_PHRASE, limit=3)
    for key, _, _ in near:
        yield from (Suggestion(start, e.text, e.about) for _, e in _with_prefix(vocabulary, key))


def suggest(
    text: str,
    cursor: int,
    vocabulary: Vocabulary,
    *,
    limit: int = 12,
    asked: bool = False,
    remembered: tuple[str, ...] = (),
) -> tuple[Suggestion, ...]:
    """At most `limit` suggestions for the text before the cursor, the best first, none twice.

    With `asked` (somebody pressed Tab) also where nothing of a word is typed yet; `remembered` are the labels
    of the facts that can be forgotten.
    """
    before = text[:cursor]
    if not before.strip():
        return ()
    if before[:5].casefold() == "query" and before[5:6].isspace():
        every: tuple[Suggestion, ...] = tuple(_sparql(before))
    else:
        special = tuple(_argument(before, vocabulary, remembered))
        every = special or (*_line_start(before), *_labels(before, vocabulary, asked))
    unique = {suggestion.text.casefold(): suggestion for suggestion in reversed(every)}
    return tuple(s for s in dict.fromkeys(every) if unique[s.text.casefold()] is s)[:limit]
