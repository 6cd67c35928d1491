"""The names that can be put in at the cursor, from the books, with an index of how their words go on."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable
from typing import TYPE_CHECKING, Literal

import msgspec
from rapidfuzz import fuzz, process

from shell.numbering import number_key

if TYPE_CHECKING:
    from kb import KnowledgeBase

_SCAN = 2000
_FUZZY_SCORE = 75

# "one" is what somebody can be ("a K5", "coxswain"), "many" several at once ("petty officers"), "holds" what
# somebody can have ("first aid qualification").
Kind = Literal["item", "one", "many", "holds", "rig", "situation", "act", "aspect"]
_HELD = ("qualification", "waiver", "authorisation")
_ASKED_AS = ("choice", "measure", "count")  # kinds of aspects of which one asks "what"


class Entry(msgspec.Struct, frozen=True):
    """A text that can be put in, what it is in words, and its kind; `first` where it is a name of its own and
    not another word for something."""

    text: str
    about: str
    kind: Kind = "item"
    first: bool = True


class Term(msgspec.Struct, frozen=True):
    """What a query may name, and what it is: a prefix, a class, a property or a record."""

    text: str
    about: str
    kind: str


class Vocabulary(msgspec.Struct, frozen=True):
    """Entries with a sorted index: every tail of a label that begins with a word, and where it belongs.

    `words` are all single words of the entries, for slips of the finger; `stated` are facts with their names
    before them ("grade K3"); `clauses`, `facts` and `days` follow the commands that take one, `terms`
    stand in queries.
    """

    entries: tuple[Entry, ...]
    keys: tuple[str, ...]
    owners: tuple[tuple[bool, int, int], ...]
    words: tuple[str, ...]
    clauses: tuple[Entry, ...] = ()
    facts: tuple[Entry, ...] = ()
    days: tuple[Entry, ...] = ()
    stated: tuple[Entry, ...] = ()
    terms: tuple[Term, ...] = ()


def make_vocabulary(
    entries: Iterable[Entry],
    *,
    clauses: Iterable[Entry] = (),
    facts: Iterable[Entry] = (),
    days: Iterable[Entry] = (),
    stated: Iterable[Entry] = (),
    terms: Iterable[Term] = (),
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
        tuple(sorted(set(clauses), key=lambda entry: (number_key(entry.text), entry.about))),
        tuple(dict.fromkeys(facts)),
        (Entry("today", "the present day"), *dict.fromkeys(days)),
        tuple(dict.fromkeys(stated)),
        tuple(dict.fromkeys(terms)),
    )


def with_prefix(vocabulary: Vocabulary, prefix: str) -> list[tuple[bool, Entry]]:
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


def named(vocabulary: Vocabulary, phrase: str) -> tuple[Kind, ...]:
    """The kinds of what goes by a phrase as a whole."""
    start, found = bisect_left(vocabulary.keys, phrase), []
    while start < len(vocabulary.keys) and vocabulary.keys[start] == phrase:
        is_tail, _, number = vocabulary.owners[start]
        found += [] if is_tail else [vocabulary.entries[number].kind]
        start += 1
    return tuple(found)


def near(vocabulary: Vocabulary, word: str) -> list[Entry]:
    """Entries with a word that is nearly `word`, the nearest first; else with a word that has it inside."""
    alike = process.extract(word, vocabulary.words, scorer=fuzz.ratio, score_cutoff=_FUZZY_SCORE, limit=3)
    matches = [match for match, _, _ in alike] or [known for known in vocabulary.words if word in known]
    return [entry for match in matches for _, entry in with_prefix(vocabulary, match)]


def _kind(family: str) -> Kind:
    if family in _HELD:
        return "holds"
    return "one" if family in ("grade", "appointment") else "rig" if family == "rig" else "situation"


def _items(base: KnowledgeBase) -> list[Entry]:
    """Names of items, those first of which most rules speak, and built-in kinds last."""
    said = Counter(item for rule in base.lookup.base.rules for item in rule.scope.items)
    items = sorted(base.lookup.base.items, key=lambda item: (item.at.file == "built-in", -said[item.id]))
    return [
        Entry(name, "item", "item", name == item.label)
        for item in items
        for name in (item.label, *item.other_labels)
    ]


def _values(base: KnowledgeBase) -> list[Entry]:
    """Grades, rigs, groups, and other values of facts; of a yes-or-no fact its own name."""
    lookup = base.lookup
    entries: list[Entry] = []
    for fact in lookup.base.facts:
        kind = _kind(fact.family)
        if fact.family == "worn":
            continue
        if not fact.values:
            entries += [Entry(fact.label, "fact", kind)] if fact.kind == "yes_no" else []
        elif kind == "holds" and fact.kind == "scale":
            entries.append(Entry(fact.label, "fact", kind))  # by whom it is granted says nothing alone
        if fact.family == "grade":
            entries += [Entry(value.id, value.label, kind) for value in fact.values]
        for value in fact.values if fact.family != "authorisation" else ():
            names = (value.label, *value.other_labels)
            entries += [Entry(name, fact.label, kind, name == value.label) for name in names]
    for group in lookup.base.groups:
        kind = _kind(lookup.facts[group.fact].family)
        several = (group.label, *group.other_labels)
        entries += [
            Entry(name, "group", "many" if kind == "one" else kind, name == several[0]) for name in several
        ]
        entries += [Entry(group.one, "group", "one")] if group.one and kind == "one" else []
    return entries


def _stated(base: KnowledgeBase) -> list[Entry]:
    """A fact and its value in one: "grade K3"; a value that has the name of the fact in it stands alone."""
    found = []
    for fact in base.lookup.base.facts:
        if fact.family in ("worn", "authorisation"):
            continue
        for value in fact.values:
            short = value.id if fact.family == "grade" else value.label
            is_whole = fact.label.casefold() in short.casefold()
            found.append(Entry(short if is_whole else f"{fact.label} {short}", value.label))
    return found


def vocabulary_of(base: KnowledgeBase) -> Vocabulary:
    """Items, grades, rigs and other values of facts, what is asked of items, the clauses, days, and terms."""
    lookup = base.lookup
    acts = [Entry(a.verb, "act", "act") for a in lookup.base.aspects if a.verb]
    aspects = [
        Entry(aspect.label, "asked", "aspect")
        for aspect in lookup.base.aspects
        if aspect.kind in _ASKED_AS and aspect.within in (None, "size")
    ]
    facts = [Entry(fact.label, "fact") for fact in lookup.base.facts if fact.family != "worn"]
    clauses = [
        Entry(clause.number, clause.heading or lookup.editions[clause.edition].label)
        for clause in lookup.base.clauses
    ]
    starts = sorted((edition.valid_from, edition.label) for edition in lookup.base.editions)
    return make_vocabulary(
        [*_items(base), *acts, *aspects, *_values(base)],
        clauses=clauses,
        facts=facts,
        days=[Entry(day.isoformat(), f"{label} comes into force") for day, label in starts],
        stated=_stated(base),
        terms=[Term(term.text, term.about, term.kind) for term in base.query_terms()],
    )
