"""What a word means to the reader already, and what it would mean as an everyday word of an item."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from contextlib import suppress

import msgspec

from kb.measures import MeasureError, parse_measure
from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.model.records import Case, Named
from kb.reader import Lexicon, read_question
from kb.reader.names.lexicon import Entry, joined, name_words
from kb.text import Pattern
from kb.wording.english import listing
from kb.wording.labels import item_label

_QUESTIONS = ("May I wear the {}?", "Must the {} be worn?")
# Letters of any script with hyphens and apostrophes inside, up to four words.
_WORDS = Pattern(r"[^\W\d_]+(?:['’.-]?[^\W\d_]+)*'?(?: [^\W\d_]+(?:['’.-]?[^\W\d_]+)*'?){0,3}")
LONGEST_WORD = 60


class Clash(msgspec.Struct, frozen=True):
    """Why a word cannot be an everyday word of an item; `items` are those that it would be mixed up with."""

    reason: str
    items: tuple[str, ...] = ()


def is_word(text: str) -> bool:
    """Whether a text is one to four words without digits, as people say them."""
    return 1 < len(text) <= LONGEST_WORD and _WORDS.fullmatch(text) is not None


def is_understood(word: str, item: str, lexicon: Lexicon) -> bool:
    """Whether the word names the item as it is, and nothing else."""
    entries = lexicon.names.get(joined(word), ())
    return {(entry.kind, entry.id) for entry in entries} == {("item", item)} and entries[0].rank < _GUESS


def find_clash(word: str, item: str, lexicon: Lexicon, lookup: Lookup) -> Clash | None:
    """What stands against the word, in the books or in how it would be read; None if nothing does."""
    return named_clash(word, item, lexicon, lookup) or read_clash(word, item, lexicon, lookup)


def named_clash(word: str, item: str, lexicon: Lexicon, lookup: Lookup) -> Clash | None:
    """Another thing of the books that the word names or may name."""
    others = [e for e in lexicon.names.get(joined(word), ()) if (e.kind, e.id) != ("item", item)]
    if not others:
        return None
    said = list(dict.fromkeys(_said(entry, lookup) for entry in others))
    named = tuple(dict.fromkeys(entry.id for entry in others if entry.kind == "item"))
    return Clash(f"“{word}” {some_of(said)} already.", named)


def read_clash(word: str, item: str, lexicon: Lexicon, lookup: Lookup) -> Clash | None:
    """That a question with the word would not be read as the same question with the item's label."""
    if _is_measured(word):
        return Clash(f"“{word}” is a number or a unit of measure.")
    entry = Entry("item", item, "", 1)
    longest = max(lexicon.longest, len(name_words(word)))
    tried = Lexicon(lexicon.names | {joined(word): (entry,)}, longest, lookup)
    for question in _QUESTIONS:
        reading = _read(question, word, tried, lookup)
        if not _means(reading, item, _read(question, item_label(lookup, item), lexicon, lookup)):
            return Clash(f"A question about “{word}” is read as something else: {_read_as(reading)}")
    return None


def some_of(said: list[str]) -> str:
    """The first few as "a, b and c", and how many more there are."""
    more = len(said) - _SAID
    return listing(said if more <= 0 else [*said[:_SAID], f"{more} more"])


def _is_measured(word: str) -> bool:
    for text in (word, f"1 {word}"):
        with suppress(MeasureError):
            parse_measure(text)
            return True
    return False


def _read(question: str, word: str, lexicon: Lexicon, lookup: Lookup) -> Reading:
    case = Case(as_of=datetime.date.today())
    return read_question(question.format(word), lexicon=lexicon, lookup=lookup, case=case)


def _means(reading: Reading, item: str, usual: Reading) -> bool:
    """Whether a question about the word is the usual one about the item; where not even its label can be
    asked about so, whether it is a question about the item."""
    if usual.query is not None and usual.query.items == (item,):
        return reading.query == usual.query
    return reading.query is not None and reading.query.items == (item,)


def _read_as(reading: Reading) -> str:
    if reading.query is not None:
        return reading.text
    return reading.ask.prompt if reading.ask is not None else getattr(reading.abstain, "reason", "")


_GUESS = 3
_SAID = 4
_RANKS = ("is a name of", "is an everyday word of", "may mean", "may mean")


def _said(entry: Entry, lookup: Lookup) -> str:
    """ "is an everyday word of the shore coat"."""
    return f"{_RANKS[entry.rank]} {_called(entry, lookup)}"


def _called(entry: Entry, lookup: Lookup) -> str:
    if entry.kind == "item":
        return f"“{item_label(lookup, entry.id)}”"
    if entry.kind == "value":
        return f"“{lookup.value_label(entry.owner, entry.id)}” ({lookup.facts[entry.owner].label})"
    homes: dict[str, Mapping[str, Named]] = {
        "fact": lookup.facts,
        "group": lookup.groups,
        "aspect": lookup.aspects,
        "act": lookup.aspects,
        "authority": lookup.authorities,
    }
    record = homes[entry.kind].get(entry.id) if entry.kind in homes else None
    return f"“{record.label if record else entry.id}” ({entry.kind})"
