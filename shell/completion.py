"""Completion: text, cursor and names in, suggestions out; no input or output."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import msgspec
from rapidfuzz import fuzz, process

from shell.commands import COMMANDS, begins_query
from shell.in_queries import in_query
from shell.saving import FORMS
from shell.vocabulary import Entry, Kind, Vocabulary, named, near, with_prefix

_LONGEST_PHRASE = 4
_ID_LENGTH = 3  # a single capital is completed to ids such as K5 only
_FUZZY_FROM = 4
_FUZZY_PHRASE = 80
_INSIDE_FROM = 3

# How a line that asks can begin, and what follows a beginning of which no name is a part.
_STARTERS = (
    "May I wear ", "Must I wear ", "What must I wear ", "What may I wear ", "Where does the ", "How many ",
    "Who may wear ", "When may I wear ",
)  # fmt: skip
_OPENINGS: dict[str, tuple[str, ...]] = {
    **dict.fromkeys(("may", "can", "must", "should", "could"), ("I ", "a ")),
    "what": ("must I wear ", "may I wear "),
    **dict.fromkeys(("what must", "what may", "what can", "what should"), ("I wear ", "a ")),
    "where": ("does the ", "do the "),
    **dict.fromkeys(("where does", "where do"), ("the ",)),
    "how": ("many ", "must the ", "is the "),
    "who": ("may wear ", "must wear "),
    "when": ("may I wear ", "must I wear "),
    "why": ("can't I wear ", "must I wear "),
    **dict.fromkeys(("why can't", "why must", "why may", "when may", "when must"), ("I ",)),
    **dict.fromkeys(("is", "are", "does", "do"), ("the ",)),
    "i": ("am a ",),
    "i am": ("a ", "in "),
    "i'm": ("a ", "in "),
}
_WHO = (
    "as",
    "am",
    "i'm",
    "for",
    "by",
    "officer",
    "grade",
    "may",
    "can",
    "must",
    "should",
    "does",
    "is",
    "are",
)
_MODALS = ("may", "can", "must", "should", "could")
_ACTS = (
    "may i", "can i", "can't i", "cannot i", "must i", "should i", "could i", "i have to", "who may",
    "who must", "who can", "may i not", "can i not", "must i not", "mustn't i", "allowed to", "i may",
)  # fmt: skip
# The words before the cursor, and what can follow them; the longest that fits counts.
_FOLLOWS: dict[str, tuple[Kind, ...]] = {
    **{f"{word} {article}": ("one",) for word in _WHO for article in ("a", "an")},
    **dict.fromkeys(("as", "below", "above", "grade", "under a", "over a"), ("one",)),
    **dict.fromkeys(_MODALS, ("many",)),
    **dict.fromkeys(("for", "of"), ("many", "item")),
    **dict.fromkeys(("in", "in the"), ("rig", "situation")),
    **dict.fromkeys(("at", "at the", "on", "on the", "while", "when", "if", "during"), ("situation",)),
    **dict.fromkeys(("it is", "it's", "i am", "i'm"), ("situation",)),
    **dict.fromkeys(
        ("i hold", "i hold a", "i have", "i have a", "holds a", "has a", "holding a"), ("holds",)
    ),
    **dict.fromkeys(_ACTS, ("act",)),
    **dict.fromkeys(("what", "which"), ("aspect",)),
    **dict.fromkeys(("wears", "wearing", "the", "my", "with", "without", "how many"), ("item",)),
    **{f"{word} {article}": ("item",) for word in ("wearing", "with", "without") for article in ("a", "an")},
}
_STATED: tuple[Kind, ...] = ("one", "rig", "holds", "situation")
_REMEMBER = "remember "
_ARTICLES = ("a", "an", "the", "my")
_LEAD_WORDS = frozenset(word for lead in _FOLLOWS for word in lead.split()) | {"a", "an"}
_LONGEST_LEAD = max(lead.count(" ") + 1 for lead in _FOLLOWS)
_AFTER_ITEM = ("in ", "with ", "without ", "when ", "as a ")
_AFTER_PLACE = ("with ", "without ", "when ", "as a ")
_AFTER_ASPECT = ("is the ", "are the ", "must the ", "may the ")
# What "in" and its like go before: no name that begins with another such word, or tells a doing.
_BEFORE_PLACES = frozenset({"in", "at", "on"})
_LED = frozenset(
    (
        "in",
        "at",
        "on",
        "by",
        "under",
        "between",
        "near",
        "over",
        "off",
        "during",
        "out",
        "among",
        "with",
        "not",
    )
)


class Suggestion(msgspec.Struct, frozen=True):
    """`text` in place of everything from `start` to the cursor."""

    start: int
    text: str
    about: str


def _acts(words: list[str], vocabulary: Vocabulary) -> bool:
    """Whether the last word before an article, if there is one, is what is done to a thing: "pierce the"."""
    last = words[:-1] if words and words[-1] in _ARTICLES else words
    return bool(last) and "act" in named(vocabulary, last[-1])


def _fitting(lead: str, vocabulary: Vocabulary) -> tuple[Kind, ...]:
    """What can follow the words before a phrase; () where anything can."""
    words = lead.casefold().replace("’", "'").split()
    if _acts(words, vocabulary):
        return ("item",)
    for count in range(min(_LONGEST_LEAD, len(words)), 0, -1):
        kinds = _FOLLOWS.get(" ".join(words[-count:]))
        if kinds:
            return kinds
    return ()


def _suits(entry: Entry, kinds: tuple[Kind, ...], lead: str) -> bool:
    """Whether a name can stand after the words before it: of its kind, and no second "in" after "in"."""
    if entry.kind not in kinds:
        return False
    last = lead.casefold().split()[-1:]
    first = entry.text.casefold().split()[0]
    if entry.kind != "situation" or not last or last[0] not in _BEFORE_PLACES:
        return True
    return first not in _LED and not first.endswith("ing") and len(entry.text) > 1


def _word_starts(text: str) -> list[int]:
    """Where the last words begin, the longest stretch first."""
    starts = [i for i, c in enumerate(text) if not c.isspace() and (i == 0 or text[i - 1].isspace())]
    return starts[-_LONGEST_PHRASE:]


def _matching(pool: Iterable[Entry], start: int, typed: str) -> Iterator[Suggestion]:
    yield from (Suggestion(start, e.text, e.about) for e in pool if e.text.casefold().startswith(typed))


def _argument(text: str, vocabulary: Vocabulary, remembered: tuple[str, ...]) -> Iterator[Suggestion]:
    """What may follow a command word."""
    commands = tuple(Entry(command.name, command.does) for command in COMMANDS)
    kept = tuple(Entry(name, "remembered") for name in remembered)
    pools = {
        "help ": commands,
        "forget ": kept or vocabulary.facts,
        "as of ": vocabulary.days,
        "save ": tuple(Entry(f"answer{form}", "a new file") for form in FORMS),
        "items ": _single(e for e in vocabulary.entries if e.kind == "item"),
        "facts ": _single(vocabulary.facts),
    }
    lowered = text.casefold()
    for word, pool in pools.items():
        if lowered.startswith(word):
            yield from _matching(pool, len(word), lowered[len(word) :])
    if lowered.rpartition(" ")[0].endswith("clause"):
        start = len(text) - len(text.rpartition(" ")[2])
        yield from _matching(vocabulary.clauses, start, text[start:].casefold())


def _single(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The last words of names, each once, for commands that take one word."""
    return tuple(dict.fromkeys(Entry(e.text.split()[-1], "word") for e in entries if e.text.split()))


def _stated(text: str, begin: int, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """Facts that can be stated of somebody, alone or after others: "K5 in boat rig"."""
    told = text[begin:]
    if told[-1:].isspace() and "rig" in _fitting(told, vocabulary):
        yield from _any_of(("rig",), text, vocabulary)
    for start in (start for start in _word_starts(text) if start >= begin):
        phrase = " ".join(text[start:].casefold().split()) + (" " if text[-1].isspace() else "")
        yield from _matching(vocabulary.stated, start, phrase)
        for is_tail, entry in with_prefix(vocabulary, phrase):
            is_lead = is_tail and all(word in _LEAD_WORDS for word in phrase.split())
            if entry.kind in _STATED and not is_lead and entry.text.casefold() != phrase:
                yield Suggestion(start, entry.text, entry.about)
    if not told.strip():
        yield from _any_of(_STATED, text, vocabulary)
    elif told[-1].isspace():
        yield from _any_of(_fitting(told, vocabulary), text, vocabulary)
        if _last_name(told.casefold().split(), vocabulary)[0]:
            yield Suggestion(len(text), "in ", "and then")


def _line_start(text: str) -> Iterator[Suggestion]:
    """Commands and the beginnings of questions, while the line still fits them."""
    typed = text.lstrip().casefold()
    start = len(text) - len(text.lstrip())
    steered = typed.removeprefix("/")
    for command in COMMANDS:
        if command.name.startswith(steered) and command.name != typed:
            yield Suggestion(start, command.name, command.does)
    for starter in () if typed.endswith(" ") else _STARTERS:
        if starter.casefold() != typed and starter.casefold().startswith(typed):
            yield Suggestion(start, starter, "question")


def _last_name(words: list[str], vocabulary: Vocabulary) -> tuple[int, tuple[Kind, ...]]:
    """Of how many of the last words there is a name, the longest, and what goes by it; 0 without one."""
    for count in range(min(_LONGEST_PHRASE, len(words)), 0, -1):
        kinds = named(vocabulary, " ".join(words[-count:]))
        if kinds:
            return count, kinds
    return 0, ()


def _goes_on(text: str, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """After a space: words that lead on from how the line begins, or from the name that stands last."""
    words = text.casefold().replace("’", "'").split()
    for opening in _OPENINGS.get(" ".join(words), ()):
        yield Suggestion(len(text), opening, "question")
    count, kinds = _last_name(words, vocabulary)
    before = words[: len(words) - count]
    asks = bool(before) and before[0] in _MODALS and not any(_acts([w], vocabulary) for w in before)
    leads: tuple[str, ...] = ()
    if asks and ("one" in kinds or "many" in kinds):
        yield from _any_of(("act",), text, vocabulary)
    elif "aspect" in kinds and before and before[-1] in ("what", "which"):
        yield from (Suggestion(len(text), lead, "question") for lead in _AFTER_ASPECT)
        yield from _any_of(("item",), text, vocabulary)
    elif kinds and "act" not in kinds and before and not _fitting(text, vocabulary):
        leads = _AFTER_ITEM if "item" in kinds else _AFTER_PLACE
    yield from (Suggestion(len(text), lead, "and then") for lead in leads)


def _any_of(kinds: tuple[Kind, ...], text: str, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """Everything that can follow, before a letter of it is typed: by names of their own."""
    for kind in kinds:
        fit = [e for e in vocabulary.entries if e.kind == kind and _suits(e, (kind,), text)]
        yield from (Suggestion(len(text), entry.text, entry.about) for entry in fit if entry.first)


def _labels(text: str, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """Labels that go on from the last words; where there are none, labels with a nearly equal word.

    What can stand there goes first; where anything of it is found, nothing else is offered.
    """
    starts = _word_starts(text)
    slips = tuple(_slip_before(text, starts, vocabulary))
    if slips:
        yield from slips
        return
    spaced = text[-1].isspace()
    found = list(_begun(text, starts, vocabulary))
    fitting = [suggestion for fits, suggestion in found if fits]
    if spaced:
        kinds = _fitting(text, vocabulary)
        rigs = _any_of(("rig",), text, vocabulary) if "rig" in kinds else ()
        every = _any_of(kinds, text, vocabulary)
        only = bool(fitting) and text.casefold().split()[-1] in ("at", "on")
        yield from (
            *rigs,
            *(fitting or [s for _, s in found]),
            *_goes_on(text, vocabulary),
            *(() if only else every),
        )
    elif found:
        yield from fitting or [suggestion for _, suggestion in found]
    elif starts:
        yield from _slips(text, starts[-1], vocabulary)


def _begun(text: str, starts: list[int], vocabulary: Vocabulary) -> Iterator[tuple[bool, Suggestion]]:
    """Labels that the last words begin, the shortest first, each with whether its kind can stand there.

    After a whole name and a space only what goes on from that name; words such as "in the" begin no more than
    whole labels.
    """
    spaced = text[-1].isspace()
    count, _ = _last_name(text.casefold().split(), vocabulary) if spaced else (0, ())
    found: list[tuple[bool, int, bool, Suggestion]] = []
    for start in starts[: len(starts) - count + 1] if count else starts:
        kinds = _fitting(text[:start], vocabulary)
        phrase = " ".join(text[start:].casefold().split()) + (" " if spaced else "")
        short = len(phrase.strip()) < 2
        empty = spaced and all(word in _LEAD_WORDS for word in phrase.split())
        if short and not (text[start].isupper() or kinds or empty):
            continue
        for is_tail, entry in with_prefix(vocabulary, phrase):
            placed = entry.kind == "situation" and phrase.split()[0] in _BEFORE_PLACES and not is_tail
            fits = placed or _suits(entry, kinds, text[:start])
            if empty and (is_tail or not fits):
                continue
            if entry.text.casefold() != phrase and (
                not short or fits or empty or len(entry.text) <= _ID_LENGTH
            ):
                new = Suggestion(start, entry.text, entry.about)
                found.append((is_tail, len(entry.text), fits, new))
    yield from ((fits, new) for *_, fits, new in sorted(found, key=lambda one: one[:2]))


def _slips(text: str, start: int, vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """For a word that begins no label: labels that it may have been meant for."""
    word, kinds = text[start:].casefold(), _fitting(text[:start], vocabulary)
    if word in vocabulary.words or len(word) < (_INSIDE_FROM if kinds else _FUZZY_FROM):
        return
    meant = sorted(near(vocabulary, word), key=lambda entry: entry.kind not in kinds)
    yield from (Suggestion(start, entry.text, entry.about) for entry in meant)


def _slip_before(text: str, starts: list[int], vocabulary: Vocabulary) -> Iterator[Suggestion]:
    """For an unknown word before the one that is being typed: labels that begin nearly like both together."""
    if len(starts) < 2 or text[-1].isspace():
        return
    start, last = starts[-2:]
    before = text[start:last].strip().casefold()
    if len(before) < _FUZZY_FROM or before in vocabulary.words or before in _LEAD_WORDS:
        return
    phrase = " ".join(text[start:].casefold().split())
    alike = process.extract(phrase, vocabulary.keys, scorer=fuzz.ratio, score_cutoff=_FUZZY_PHRASE, limit=3)
    for key, _, _ in alike:
        yield from (Suggestion(start, e.text, e.about) for _, e in with_prefix(vocabulary, key))


def suggest(
    text: str,
    cursor: int,
    vocabulary: Vocabulary,
    *,
    limit: int = 12,
    remembered: tuple[str, ...] = (),
) -> tuple[Suggestion, ...]:
    """At most `limit` suggestions for the text before the cursor, the best first, none twice.

    After a space they are what can stand there; `remembered` are the labels of facts that can be forgotten.
    """
    before = text[:cursor]
    if not before.strip():
        return ()
    if begins_query(before):
        every = tuple(Suggestion(*found) for found in in_query(before, vocabulary, text))
    elif before[: len(_REMEMBER)].casefold() == _REMEMBER:
        every = tuple(_stated(before, len(_REMEMBER), vocabulary))
    else:
        special = tuple(_argument(before, vocabulary, remembered))
        every = special or (*_line_start(before), *_labels(before, vocabulary))
    unique = {suggestion.text.casefold(): suggestion for suggestion in reversed(every)}
    return tuple(s for s in dict.fromkeys(every) if unique[s.text.casefold()] is s)[:limit]
