"""What the names of a rule base name: the entries of a lexicon, worked out when the base is built."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from operator import attrgetter

from kb.model.lookup import Lookup
from kb.model.months import MONTHS
from kb.model.records import Fact, FactValue
from kb.reader.names.asked import asked_names
from kb.reader.names.lexicon import (
    CREDENTIALS,
    Entry,
    EntryKind,
    joined,
    label_tokens,
    labels_of,
    name_words,
)
from kb.reader.names.shortened import (
    CALENDAR,
    ON_BODY,
    doing,
    going_on,
    one_way,
    shared_tails,
    short_places,
    there,
    with_adjective,
)
from kb.reader.phrases.english import CREDENTIAL_NOUNS, LEADING_PREPOSITIONS, PHRASES, SKIPPED_INSIDE_LABELS
from kb.reader.words.forms import word_set
from kb.reader.words.kinds import circumstances, narrower, same
from kb.reader.words.tokens import word_key
from kb.wording.manners import treated

_NAMING = frozenset({"with", "person", "degree"})  # "inside" may be a place, "mate" a grade, "driving" work
_DENYING = frozenset({"not", "no", "non", "never", "without"})
_FUNCTION_WORDS = frozenset(words[0] for words in PHRASES if len(words) == 1)


def best_entries(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """One entry for each target, the best rank of it; labels shut out everything weaker."""
    ranked = sorted(entries, key=_RANK)
    if len(ranked) == 1:
        return tuple(ranked)
    best: dict[tuple[str, str, str], Entry] = {}
    for entry in ranked:
        best.setdefault(entry[:3], entry)
    limit = {0: 0, 1: 2, 2: 2, 3: 3}[ranked[0].rank]
    return tuple(entry for entry in best.values() if entry.rank <= limit)


_RANK = attrgetter("rank")


def everyday_names(names: Mapping[str, tuple[Entry, ...]]) -> Iterator[tuple[str, tuple[Entry, ...]]]:
    """Everyday words that the books do not have, as what they have under another name."""
    broader: dict[str, tuple[Entry, ...]] = {}
    for kind, kinds in narrower():
        found = _called((kind,), names)
        broader = {joined(name): found for name in kinds if found} | broader
    rows = tuple(same())
    own = {(e.id, row) for row in rows for name in row for e in names.get(joined(name), ()) if e.rank == 0}
    labelled = {item for item, _ in own}
    for row in rows:  # who calls sunglasses "glasses" does not call them spectacles
        if found := tuple(e for e in _called(row, names) if (e.id, row) in own or e.id not in labelled):
            broader |= {joined(name): found for name in row}
    for row, other in circumstances():
        found = _called(row, names, ("value", "group"))
        if not found:  # "by day" where all that the books have is "dark"
            found = tuple(e._replace(id="no") for e in _called(other, names, ("value",)) if e.id == "yes")
        if len(found) == 1:
            broader |= {joined(name): found for name in row}
    yield from ((key, entries) for key, entries in broader.items() if key not in names)


def _called(
    row: Sequence[str], names: Mapping[str, tuple[Entry, ...]], kinds: tuple[EntryKind, ...] = ("item",)
) -> tuple[Entry, ...]:
    """What has one of these names; that whose label it is before what may be meant by it."""
    found = [e for name in row for e in names.get(joined(name), ()) if e.kind in kinds and e.rank < 2]
    first = min((entry.rank for entry in found), default=0)
    return tuple(dict.fromkeys(e._replace(rank=1) for e in found if e.rank == first))


def all_names(lookup: Lookup) -> Iterator[tuple[tuple[str, ...], Entry]]:
    base = lookup.base
    for label in labels_of(base.service):
        yield name_words(label), Entry("service", base.service.id)
    for authority in base.authorities:
        for label in labels_of(authority):
            yield name_words(label), Entry("authority", authority.id)
            yield name_words(label)[-1:], Entry("authority", authority.id, "", 2)
    for edition in base.editions:
        for label in labels_of(edition):
            yield name_words(label), Entry("book", edition.id)
            own = name_words(lookup.books[edition.book].label)
            yield (
                tuple(word for word in name_words(label) if word not in own),
                Entry("book", edition.id, "", 1),
            )
        for label in labels_of(lookup.books[edition.book]):
            yield name_words(f"{label} {edition.id.rpartition('/')[2]}"), Entry("book", edition.id)
    for book in base.books:
        for label in labels_of(book):
            yield name_words(label), Entry("book", book.id)
            yield name_words(label.partition(" of ")[2]), Entry("service", base.service.id, "", 1)
    yield from _item_names(lookup)
    for fact in base.facts:
        yield from (() if fact.family == "worn" else _fact_names(fact))
        yield from ((tail, Entry("value", one, fact.id, 2)) for tail, one in shared_tails(fact))
    things = {words for item in base.items for words in map(name_words, labels_of(item)) if len(words) == 1}
    for fact in base.facts:  # but "is the hair gathered up" is as well how the hair is worn
        entry = Entry("value", "yes", fact.id, 1)
        asked = asked_names(fact) if fact.family in ("situation", "term") else ()
        yield from ((words, entry) for words in asked if words[:1] not in things)
    for group in base.groups:
        for label in (*labels_of(group), *((group.one,) if group.one else ())):
            yield name_words(label), Entry("group", group.id, group.fact)
            yield _without_preposition(label), Entry("group", group.id, group.fact, 1)
    yield from _aspect_names(lookup)


def _item_names(lookup: Lookup) -> Iterator[tuple[tuple[str, ...], Entry]]:
    for item in lookup.base.items:
        if not item.broader:
            continue
        for label in (item.label, *item.other_labels, item.id.replace("-", " ")):
            words = name_words(label)
            yield words, Entry("item", item.id)
            if len(words) > 1:
                yield _head(label, _BEFORE_MORE), Entry("item", item.id, "", 2 if label is item.label else 3)
            yield from ((w, Entry("item", item.id, "", 3)) for w in with_adjective(label_tokens(label)))
        for word in item.everyday:
            yield name_words(word), Entry("item", item.id, "", 1)


_BEFORE_MORE = frozenset({"of", "on", "in", "at", "for", "with", "without", "from", "that", "able"})


def _head(label: str, leads: frozenset[str] = frozenset({"of"})) -> tuple[str, ...]:
    """The noun of a label: its last word, or the one before "of" or other `leads`; none of "not hauling".

    Of "tattoo on the hand" it is no hand, and of "ring with a stone" no stone.
    """
    tokens = label_tokens(label)
    if tokens[0][0] in _DENYING:
        return ()
    if "'" not in label:
        for index, (low, _) in enumerate(tokens):
            if low in leads and index and low in label.lower().split():  # not of "slip-on"
                return (tokens[index - 1][1],)
    low, key = tokens[-1]
    return () if low in _FUNCTION_WORDS or len(low) < 3 else (key,)


def _without_preposition(label: str) -> tuple[str, ...]:
    tokens = label_tokens(label)
    if tokens[0][0] not in LEADING_PREPOSITIONS:
        return ()
    while len(tokens) > 1 and tokens[0][0] in LEADING_PREPOSITIONS:
        tokens = tokens[1:]
    if len(tokens) == 1 and tokens[0][0] in _FUNCTION_WORDS:
        return ()
    return tuple(key for low, key in tokens if low not in SKIPPED_INSIDE_LABELS)


def _fact_names(fact: Fact) -> Iterator[tuple[tuple[str, ...], Entry]]:
    family = fact.family
    for label in labels_of(fact):
        words = name_words(label)
        if fact.kind == "yes_no" or family == "authorisation":
            entry = Entry("value", "yes", fact.id)
            yield words, entry
            yield _predicated(label), entry
            yield _told(label), entry
            yield _meanwhile(label), entry._replace(rank=1)
            yield _without_preposition(label), entry._replace(rank=1)
            if words[0] == "on" and len(words) > 1:
                yield ("off", *words[1:]), Entry("value", "no", fact.id, 1)
            yield from _shorter(words, entry, family)
            yield from ((way, entry._replace(rank=1)) for way in going_on(words))
        else:
            yield words, Entry("fact", fact.id)
            if fact.kind == "quantity":
                yield from ((word, Entry("fact", fact.id, "", 2)) for word in _quantity_words(label))
    if family == "authorisation":
        return
    fact_words = name_words(fact.label)
    for value in fact.values:
        yield from _value_names(fact, value, fact_words)


def _predicated(label: str) -> tuple[str, ...]:
    """ "fell white" for "white fell": the order in which "the fell is white" has it."""
    tokens = label_tokens(label)
    if len(tokens) != 2 or tokens[0][0] in LEADING_PREPOSITIONS or tokens[0][0] in SKIPPED_INSIDE_LABELS:
        return ()
    return () if tokens[0][0].endswith("ing") else (tokens[1][1], tokens[0][1])


def _told(label: str) -> tuple[str, ...]:
    """ "The train leaves after dark" for "on a train that leaves after dark"."""
    before, that, after = label.partition(" that ")
    return (*(_without_preposition(before) or name_words(before)), *name_words(after)) if that else ()


_MEANWHILE = frozenset({"while", "when", "where", "whenever"})
_IS = frozenset({"is", "are"})


def _meanwhile(label: str) -> tuple[str, ...]:
    """ "A train standing there" for "while a train is standing there"."""
    tokens = label_tokens(label)
    if tokens[0][0] not in _MEANWHILE or not _IS.intersection(low for low, _ in tokens):
        return ()
    kept = (key for low, key in tokens[1:] if low not in SKIPPED_INSIDE_LABELS and low not in _IS)
    return tuple(kept)


def _quantity_words(label: str) -> Iterator[tuple[str, ...]]:
    """ "temperature" for "air temperature", "wind" for "wind speed"."""
    words = name_words(label)
    if len(words) == 2:
        generic = words[1] in ("speed", "force", "strength", "level", "weight")
        yield words[:1] if generic else words[1:]


_VAGUE = word_set("working carrying handling using making taking giving holding wearing being going")
"""Doings that say nothing without what they are done with: who is working is not yet on the track."""


def _shorter(words: tuple[str, ...], entry: Entry, family: str) -> Iterator[tuple[tuple[str, ...], Entry]]:
    """Names cut short: "hauling" and "haul lines" for "hauling lines", "diver" for "diver qualification"."""
    if family in CREDENTIALS:
        yield (*words, family), entry
        yield (family, "of", *words), entry
        core = tuple(word for word in words if word not in CREDENTIAL_NOUNS)
        if len(core) > 1 and core[-1].endswith("er") and (core[-1],) not in PHRASES:
            yield core[-1:], entry._replace(rank=3)
        if core and core != words:
            yield core, entry._replace(rank=2)
            if not core[-1].endswith(("er", "r")) and family != "waiver":
                yield (*core[:-1], core[-1] + "er"), entry._replace(rank=2)
    if verbs := _verbs_of(words[0]):
        if len(words) == 1 or words[0] not in _VAGUE:
            yield words[:1], entry._replace(rank=2)
        yield from (((verb, *words[1:]), entry) for verb in verbs if len(words) > 1)


def _town(label: str) -> tuple[str, ...]:
    """ "In Ostrel" for "in Ostrel town", and for "at Ostrel", which may be a depot of its name."""
    words = label.split()
    if len(words) > 1 and words[-1] in ("town", "village", "city") and words[-2][:1].isupper():
        return "in", *name_words(words[-2])
    return (
        ("in", *name_words(words[1]))
        if len(words) == _PAIR and words[0] == "at" and label[3].isupper()
        else ()
    )


_PAIR = 2


def _done(words: tuple[str, ...], entry: Entry) -> Iterator[tuple[tuple[str, ...], Entry]]:
    """ "Cross the line" for "crossing the line", "guests of the Board" for "showing guests of the Board"."""
    if len(words) > 1:
        yield from (((verb, *words[1:]), entry) for verb in _verbs_of(words[0]))
    if len(words) > 2 and words[0].endswith("ing"):
        yield words[1:], entry._replace(rank=2)


def _verbs_of(doing: str) -> tuple[str, ...]:
    """What "crossing" may be the gerund of."""
    if not doing.endswith("ing") or len(doing) < 6:
        return ()
    stem = doing[:-3]
    return stem, stem + "e", stem[:-1] if stem[-1:] == stem[-2:-1] else stem


def _value_names(
    fact: Fact, value: FactValue, fact_words: tuple[str, ...]
) -> Iterator[tuple[tuple[str, ...], Entry]]:
    entry = Entry("value", value.id, fact.id)
    if fact.family == "grade":
        yield name_words(value.id), entry
        yield from ((way, entry) for way in _being(value.label.lower()))
    if fact.family in ("situation", "branch", "rig"):
        yield name_words(value.id), entry._replace(rank=1 if "-" in value.id else 3)
        bare = ON_BODY | CALENDAR | {"round"}  # "showing visitors round"
        if bare.isdisjoint(head := _head(value.label)):
            yield head, entry._replace(rank=3)
    for label in labels_of(value):
        words = name_words(label)
        if len(words) > 1 or words[0] not in _FUNCTION_WORDS or PHRASES[words] in _NAMING:
            yield words, entry
        if len(words) == 1 and fact.family == "situation":
            yield from (((form,), entry._replace(rank=3)) for form in _derived(words[0]))
        if fact.family == "situation":
            yield from ((short, entry._replace(rank=2)) for short in short_places(label, label_tokens(label)))
        yield from ((way, entry) for short in (one_way, doing) for way in short(label_tokens(label)))
        yield from (((lead, *words), entry) for lead in _leads(words))
        if fact.family == "situation":
            yield _town(label), entry._replace(rank=1)
            yield _predicated(label), entry
            yield from ((way, entry._replace(rank=1)) for way in there(label, words))
            yield from _done(words, entry)
        yield _without_preposition(label), entry._replace(rank=1)
        core = tuple(word for word in words if word not in fact_words)
        if core and core != words:
            if core[0] not in _FUNCTION_WORDS:
                yield (*core, *fact_words), entry
            if not (len(core) == 1 and (core[0] in _FUNCTION_WORDS or len(core[0]) < 3)):
                yield core, entry._replace(rank=2)
        yield (*fact_words, *(core or words)), entry
        yield from ((name, entry._replace(rank=2)) for name in _with_head(core, words, fact_words))
    for word in value.everyday:
        yield name_words(word), entry._replace(rank=1)


def _with_head(
    core: tuple[str, ...], words: tuple[str, ...], fact_words: tuple[str, ...]
) -> tuple[tuple[str, ...], ...]:
    """ "Level high" and "high level", of an avalanche level."""
    if not core or core == words or len(fact_words) < 2:
        return ()
    return (fact_words[-1], *core), (*core, fact_words[-1])


def _leads(words: tuple[str, ...]) -> tuple[str, ...]:
    """Words that may stand before a value: "in rain"; more before "may"."""
    leads = () if PHRASES.get(words) == "degree" else ("in",)  # "in driving rain"
    return (*leads, "this", "every", "each", "during") if words[0] in _FUNCTION_WORDS else leads


def _being(grade: str) -> tuple[tuple[str, ...], ...]:
    """ "On probation" for a probationer."""
    state = word_key(grade[:-2]) if grade.endswith("ationer") and grade.isalpha() else ""
    return (("on", state), (state,)) if state else ()


def _derived(noun: str) -> tuple[str, ...]:
    """Adjective and verb of a word for weather or the like: foggy, raining, rained; none of a month."""
    if noun in MONTHS:
        return ()
    doubled = noun + noun[-1]
    return (noun + "y", doubled + "y", noun + "ing", noun + "ed")


def _aspect_names(lookup: Lookup) -> Iterator[tuple[tuple[str, ...], Entry]]:
    for aspect in lookup.base.aspects:
        for label in labels_of(aspect):
            if aspect.id != "wear":
                yield name_words(label), Entry("act" if aspect.verb else "aspect", aspect.id)
        if done := treated(aspect):
            yield name_words(done), Entry("aspect", aspect.id)
        if aspect.verb and aspect.id != "wear":
            for form in verb_forms(aspect.verb, aspect.done):
                yield (form,), Entry("act", aspect.id)
            if len((aspect.done or "").split()) > 1:
                yield name_words(aspect.done or ""), Entry("act", aspect.id)
        for value in aspect.values:
            for label in labels_of(value):
                yield name_words(label), Entry("aspect value", value.id, aspect.id)
                core = tuple(w for w in name_words(label) if w != word_key(aspect.label.lower()))
                if core:
                    yield core, Entry("aspect value", value.id, aspect.id, 1)


def verb_forms(verb: str, done: str | None) -> tuple[str, ...]:
    """Keys of the forms of a verb: pierce, pierces, piercing, pierced. Several words are joined.

    A participle that is no form of the verb stands for it where it is the whole of what is done ("issued"),
    not as the first word of more ("put into a washing machine", of what is machine-washed).
    """
    before, _, last = verb.lower().rpartition("-")
    if before:  # "tumble-dry"
        head = "".join(name_words(before))
        past = done.lower().split()[0] if done else ""
        own = (word_key(past),) if past.startswith(last[:3]) else ()  # "washed at home"
        return (*(head + form for form in verb_forms(last, None)), *own)
    first, _, rest = verb.lower().partition(" ")
    stem = first.removesuffix("e")
    doubled = (
        first + first[-1]
        if len(first) < 6
        and first[-1] not in "aeiouwxy"
        and first[-2:-1] in tuple("aeiou")
        and first[-3:-2] not in tuple("aeiou")
        else stem
    )
    past = done.lower().split()[0] if done else ""
    past = past if past[:1] == first[:1] or done == past else ""
    past = past or (first[:-1] + "ied" if first.endswith("y") else stem + "ed")
    forms = (first, first + "s", first + "es", first[:-1] + "ies", stem + "ing", doubled + "ing", past)
    tail = "".join(name_words(rest)) if rest else ""
    return tuple(dict.fromkeys(word_key(form) + tail for form in (*forms, doubled + "ed")))
