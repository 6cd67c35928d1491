"""Which thing a turn means: what a reply names, "both", "the hat" of the one hat spoken of before."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from kb.model.conditions import evaluate
from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query, Reading, Verdict
from kb.model.records import Case
from kb.model.values import YES, ValueSet
from kb.reader.doubts.choice import answer_to_ask, asked_place
from kb.reader.meaning.fits import rules_of_aspect, tests_worn, wearing
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import Entry
from kb.reader.pieces.pieces import Understood
from kb.reader.question import understand
from kb.reader.talks.statement import read_statement
from kb.reader.talks.talked import Talk, akin, item_alone
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_WORN = "worn:"
_WEARS: tuple[Verdict, ...] = ("required", "permitted")
_WHICH = Pattern(
    r"(?i)(?:(?:so|and|but)[ ,]+)?(?:what|which)(?:['’]s|['’]re| is| are) (?:the|my|our) \w+"
    r"(?: now| then| today)?[ ?]*$"
)
_LED = Pattern(
    r"(?i)(?:(?:no|yes|sorry|oh|ah|well|ok|okay|er|um|right|i mean|i meant|i(?:['\u2019]m| am|"
    r" was) (?:asking|talking)"
    r" about|(?:it|that|this)(?:['\u2019]s| is| was| would be)|about|make (?:that|it)|as in|namely|"
    r"say)\b[ ,.:;-]*)+"
)
_TAIL = Pattern(
    r"(?i)[ ,]*\b(?:please|i mean|i meant|i said|that is|(?:that )?i(?:['\u2019]m| am) (?:asking|"
    r"talking) about)\W*$"
)
_ASKS = Pattern(
    r"(?i)(?:may|can|could|must|should|do|does|is|are|what|which|how|where|when|who|why|and|but)\b"
)
_ADDS = Pattern(
    r"(?i)(?:(?:and|but|so|even|what about|how about|what|or)\b,? )*(?=(?:if|when|while|in|on|at|"
    r"during|under|for|with)\b)"
)
_GOES_ON = Pattern(r"(?i)(?:and|but|so|what about|how about|with|for|in|on|the same|even)\b")
_JOINS = Pattern(r"(?i)(?:on|in|at|with|without|over|under|when|while|if|for|during|as|by|of|and)\b")
_IT = Pattern(r"(?i)\b(?:it|them|that|this|one|those|these)\b")
_NOW = Pattern(r"(?i)[ ,]+(?:(?:just|right) now|now(?:adays)?|today|these days|at the moment)$")
_BESIDE = Pattern(r"(?i)\b(?:with|without|no) (?:(?:the|my|an?) )?$")
_BEFORE_NOUN = frozenset(
    {"the", "my", "a", "an", "your", "his", "her", "our", "their", "any", "this", "that"}
)
_LIGHT = frozenset({"det", "poss", "filler", "comma"})
_DEFINITE = frozenset({"the", "my", "that", "this", "your", "his", "her", "their", "our"})
_OF_A_THING = ("may", "must", "how", "where", "how_many", "when", "why")


def filled(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """A turn that says which item, or in what case, after it was asked which item is meant."""
    ask = previous.ask
    if ask is None or ask.fact != "item" or answer_to_ask(text, previous, talk.lexicon) is not None:
        return None
    item = item_alone(text, talk.lexicon, talk.lookup)
    offered = [kind for value, _ in ask.choices for kind in talk.lookup.broader(value)[1:]]
    fits = item is not None and (not offered or not set(offered).isdisjoint(talk.lookup.broader(item)[1:]))
    where = asked_place(previous) if ask.choices else None
    if item is not None and (where is None or item not in {value for value, _ in ask.choices}):
        if (told := _in_that_rig(text, item, ask, previous, talk)) is not None or not fits:
            return told
        label = talk.lookup.items[item].label
        if where is not None:
            again = talk.read(previous.question[: where[0]] + label + previous.question[where[1] :], None)
        else:
            meant = Query(kind="may", items=(item,), aspect=wearing((item,), talk.lookup), case=talk.case)
            again = talk.read(previous.question, talk.made(f"The {label}?", meant))
        if again.query is None or again.query.items[:1] != (item,):
            return None
        named = again.query.kind != "why" or any(akin(value, item, talk.lookup) for value, _ in ask.choices)
        return again if named else None  # "my watch?", after why the trousers are worn
    if item is not None:
        return None
    told = _named_with_more(text, previous, talk) or _only_told(text, ask, previous, talk)
    return told or _still_open(text, previous, talk)


def _in_that_rig(text: str, item: str, ask: Ask, previous: Reading, talk: Talk) -> Reading | None:
    """ "Order B", asked which shoes are meant, where a rig and the whole of it are called alike: in it."""
    names = {
        name.casefold() for name in (talk.lookup.items[item].label, *talk.lookup.items[item].other_labels)
    }
    rigs = [
        value.label
        for fact in talk.lookup.base.facts
        if fact.family == "rig"
        for value in fact.values
        if value.label.casefold() in names
    ]
    if len(rigs) != 1 or not ask.choices or item in {value for value, _ in ask.choices}:
        return None
    return _only_told(f"in {rigs[0]}", ask, previous, talk) or Reading(question=text, ask=ask)


def _still_open(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And in May?", "must I wear it ashore?", asked which cap is meant: of the cap, whichever it is."""
    ask, where, alone = previous.ask, asked_place(previous), talk.read(text, None)
    if ask is None or not ask.choices or (alone.query is not None and alone.query.items):
        return None
    if previous.frame is not None and all(span.role != "aspect" for span in previous.spans):
        return None  # "which badge?" was only said in between
    if where is None:  # "where do I carry it?", which cap "it" was not being known either
        open_too = alone.ask is not None and alone.ask.fact == "item" and not alone.ask.choices
        return Reading(question=text, ask=ask) if open_too and _IT.search(text) is not None else None
    word, added, said = previous.question[slice(*where)], _ADDS.match(text), text.strip(" ?.!")
    if (pronoun := _IT.search(text)) is not None:
        asked = f"{text[: pronoun.start()]}the {word}{text[pronoun.end() :]}"
    elif added is not None:
        before = _NOW.sub("", previous.question.rstrip(" ?.!"))
        asked = f"{before} {said[added.end() :]}?"
    else:
        return None
    again = talk.read(asked, None)
    same = again.ask is not None and again.ask.fact == "item" and bool(again.ask.choices)
    named = again.query is not None and {*again.query.items} <= {value for value, _ in ask.choices}
    return again if same or (named and again.query is not None and again.query.items) else None


def _only_told(text: str, ask: Ask, previous: Reading, talk: Talk) -> Reading | None:
    """ "I'm a K5", "and in town?", asked which cap is meant: the same asked of each, in that case."""
    if "?" in text and (previous.frame is not None or _ADDS.match(text) is None):
        return None
    said = _ADDS.sub("", text).strip(" ?.!")
    facts = read_statement(said, lexicon=talk.lexicon, lookup=talk.lookup)
    if not ask.choices or not isinstance(facts, tuple) or not facts:
        return None
    if any(fact.startswith(_WORN) for fact, _ in facts):
        return None
    again = talk.read(f"{previous.question.rstrip(' ?.!')}, {said}?", None)
    if "?" in text and again.ask is not None and again.ask.fact == "item":
        return again
    whole = again.query is not None and again.query.kind == "list" and not again.query.items
    if not whole and (again.ask is None or again.ask.fact != "item"):
        return again if again.query is not None else None
    asked = _filled_with(ask.choices[0][0], previous, talk)
    case = merge_case(talk.case if asked is None else asked.case, dict(facts), None, False, talk.lookup)
    kinds = tuple(value for value, _ in ask.choices)
    return talk.made(text, Query(kind="list", items=kinds, case=case, modalities=_WEARS))


def _named_with_more(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "The diver's badge, on the day shirt": what was asked before, of that, with what is said more."""
    lead = _LED.match(text)
    said = text[lead.end() :] if lead is not None else text
    found = understand(said, talk.lexicon, talk.lookup, None)
    pieces = [p for p in found.pieces if p.tag not in _LIGHT] if isinstance(found, Understood) else []
    if not isinstance(found, Understood) or not pieces or pieces[0].tag != "item" or _ASKS.match(said):
        return None
    if {word.casefold() for word in said[: found.tokens[pieces[0].first].start].split()} - _BEFORE_NOUN:
        return None
    item, place = pieces[0].arg, found.tokens[pieces[0].last - 1].end
    rest = _TAIL.sub("", said[place:]).strip(" ,;:.!?-\u2013")
    asked = _in_its_place(item, previous, talk)
    if asked is None or item not in _offered(previous, talk):
        return None
    going_on = previous.frame is not None and _GOES_ON.match(previous.question) is not None
    before = talk.made(previous.question, previous.frame) if going_on and previous.frame is not None else None
    plain = talk.read(f"{asked.rstrip(' ?.!')}?", before)
    if plain.query is None or plain.query.items[:1] != (item,):
        return None
    if not rest:
        return plain
    joins = " " if _JOINS.match(rest) else ", "
    whole = talk.read(f"{asked.rstrip(' ?.!')}{joins}{rest}?", before)
    told = (
        () if _is_that(whole, plain.query) else read_statement(rest, lexicon=talk.lexicon, lookup=talk.lookup)
    )
    if told and isinstance(told, tuple):
        case = merge_case(plain.query.case, dict(told), None, False, talk.lookup)
        whole = talk.made(f"{asked}, {rest}?", msgspec.structs.replace(plain.query, case=case))
    elif not _is_that(whole, plain.query):
        whole = talk.read(f"and {rest}?", plain)
    return whole if _is_that(whole, plain.query) else None


def _is_that(reading: Reading, asked: Query) -> bool:
    query = reading.query
    return query is not None and (query.items, query.kind, query.aspect) == (
        asked.items,
        asked.kind,
        asked.aspect,
    )


def _in_its_place(item: str, previous: Reading, talk: Talk) -> str | None:
    """The question before with a thing in the place of the unclear word, or of "it"."""
    where = asked_place(previous)
    if where is None and (pronoun := _IT.search(previous.question)) is not None:
        where = pronoun.span()
    if where is None:
        return None
    lead = previous.question[: where[0]].split()[-1:]
    article = "" if lead and lead[0].casefold() in _BEFORE_NOUN else "the "
    return (
        previous.question[: where[0]]
        + article
        + talk.lookup.items[item].label
        + previous.question[where[1] :]
    )


def _offered(previous: Reading, talk: Talk) -> frozenset[str]:
    """The things that may be meant: those offered and what is akin to them, else all."""
    ask, lookup = previous.ask, talk.lookup
    values = [value for value, _ in ask.choices] if ask is not None else []
    kinds = {kind for value in values for kind in lookup.broader(value)[1:]}
    return frozenset(
        item for item in lookup.items if not values or item in values or kinds & set(lookup.broader(item)[1:])
    )


def both_of(text: str, word: str | None, previous: Reading, talk: Talk) -> Reading | None:
    """Two things at once: the two that were offered, else the last two named."""
    lookup = talk.lookup
    if previous.query is None and previous.ask is not None and previous.ask.fact == "item":
        pair = tuple(value for value, _ in previous.ask.choices)
        case = talk.case
        first = _filled_with(pair[0], previous, talk) if len(pair) == 2 else None
        if first is not None and first.kind == "must":  # "is the vest required?", of both
            return talk.made(text, Query(kind="list", items=pair, case=first.case, modalities=_WEARS))
    else:
        kind = {entry.id for entry in _named(word, talk)} if word else set(lookup.items)
        pair = tuple(item for item in previous.recent if item in kind)[:2]
        case = previous.query.case if previous.query is not None else talk.case
    return at_once(text, (pair[0], pair[1]), case, talk) if len(pair) == 2 else None


def at_once(text: str, pair: tuple[str, str], case: Case, talk: Talk) -> Reading:
    """Whether two things may be worn at once: asked of one that is sure to be forbidden beside the other."""
    lookup = talk.lookup
    one, other = sorted(pair, key=lambda item: _is_closed(item, {*pair} - {item}, case, lookup), reverse=True)
    facts = {f: v for f, v in case.facts if f != f"worn:{one}"}
    worn: dict[str, ValueSet] = {f"worn:{other}": YES}
    merged = merge_case(
        msgspec.structs.replace(case, facts=tuple(facts.items()), alone=False), worn, None, False, lookup
    )
    return talk.made(text, Query(kind="may", items=(one,), aspect=wearing((one,), lookup), case=merged))


def _filled_with(item: str, previous: Reading, talk: Talk) -> Query | None:
    """The question before with one of the items in it that it was asked which of is meant."""
    where = asked_place(previous)
    if where is None:
        return None
    text = previous.question[: where[0]] + talk.lookup.items[item].label + previous.question[where[1] :]
    return talk.read(text, None).query


def _is_closed(item: str, others: set[str], case: Case, lookup: Lookup) -> bool:
    """Whether a rule is sure to forbid an item in a case in which the others are worn."""
    known = {**dict(case.facts), **{f"worn:{other}": YES for other in others}}
    return any(
        rule.modality == "must_not" and evaluate(rule.condition, known.get) is True
        for rule in rules_of_aspect((item,), "wear", lookup)
    )


def _named(word: str, talk: Talk) -> tuple[Entry, ...]:
    found = understand(word, talk.lexicon, talk.lookup, None)
    pieces = found.pieces if isinstance(found, Understood) else ()
    return tuple(entry for piece in pieces for entry in piece.entries)


def told_before(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """A word that may mean several items means the one that was named last, if only one of them was."""
    ask = reading.ask
    if ask is None or ask.fact != "item" or reading.question == previous.question:
        return reading
    if _WHICH.match(reading.question):
        before = previous.query.case if previous.query is not None else talk.case
        facts = dict(before.facts) if before.as_of == talk.case.as_of else dict(talk.case.facts)
        case = merge_case(talk.case, facts, None, False, talk.lookup)
        kinds = tuple(value for value, _ in ask.choices)
        return talk.made(reading.question, Query(kind="list", items=kinds, case=case, modalities=_WEARS))
    where = asked_place(reading) or _place_of_all(ask, reading.question)
    if where is None or reading.spans == ():
        return reading
    meant = the_one_named(reading.question[slice(*where)], (v for v, _ in ask.choices), previous, talk.lookup)
    meant = _or_the_other(meant, reading, (value for value, _ in ask.choices))
    meant = meant or _the_one_tested(reading.question[: where[0]], ask, previous, talk.lookup)
    again = _with_name(reading, where, meant, previous, talk) if meant is not None else reading
    return again if again.query is not None else reading


def _the_one_tested(lead: str, ask: Ask, previous: Reading, lookup: Lookup) -> str | None:
    """ "And without a plate?", after where the disc goes: the plate that the rules on the disc speak of."""
    before = previous.frame or previous.query
    if before is None or len(before.items) != 1 or _BESIDE.search(lead) is None:
        return None
    tested = [value for value, _ in ask.choices if tests_worn(before.items[0], value, lookup)]
    return tested[0] if len(tested) == 1 else None


def _place_of_all(ask: Ask, text: str) -> tuple[int, int] | None:
    """Where the last word of the names of all that may be meant stands: "tunic off", of several tunics."""
    last = {label.split()[-1].casefold() for _, label in ask.choices if label}
    place = text.casefold().find(min(last)) if len(last) == 1 else -1
    return (place, place + len(min(last))) if place >= 0 else None


def kind_named_before(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "The hat without the coat?", of all headgear as the words stand: of the hat that was spoken of."""
    query, lookup = reading.query, talk.lookup
    if query is None or len(query.items) != 1 or query.kind not in _OF_A_THING:
        return reading
    kind = query.items[0]
    if (other := _last_so_called(reading, previous, talk)) is not None:
        again = _with_name(reading, *other, previous, talk)
        return again if again.query is not None and again.query.items == (other[1],) else reading
    spans = [span for span in reading.spans if span.role == "item" and span.target == kind]
    kinds = lookup.narrower(kind)
    if len(spans) != 1 or len(kinds) < 2 or previous.query is None or kind in previous.query.items:
        return reading
    (span,) = spans
    lead = reading.question[: span.start].casefold().split()[-1:]
    meant = the_one_named(span.text, kinds, previous, lookup) if lead and lead[0] in _DEFINITE else None
    meant = _or_the_other(meant, reading, (other for other in kinds if other != kind))
    if meant is None or meant == kind:
        return reading
    again = _with_name(reading, (span.start, span.end), meant, previous, talk)
    return again if again.query is not None and again.query.items == (meant,) else reading


_BESIDES = Pattern(
    r"(?i)\b(?:as well|too)\W*$|^and\b.*\b(?:can|may|could|should) \w+ (?:wear|have|carry|put on) the\b"
)
"""What is asked beside the thing before, also as it was put for "the pin as well"."""


def _or_the_other(meant: str | None, reading: Reading, items: Iterable[str]) -> str | None:
    """ "Can I wear the pin as well?", after the badge that is a pin, too: the other pin."""
    if meant is None or _BESIDES.search(reading.question) is None:
        return meant
    others = [item for item in items if item != meant]
    return others[0] if len(others) == 1 else None


def _last_so_called(reading: Reading, previous: Reading, talk: Talk) -> tuple[tuple[int, int], str] | None:
    """Where "the vest" stands that was read as another than the one named last in the talk, and that."""
    spans = [span for span in reading.spans if span.role == "item"]
    if len(spans) != 1 or reading.query is None or spans[0].target not in (None, *reading.query.items):
        return None
    span, lookup = spans[0], talk.lookup
    words = {token.key for token in tokenize(span.text)}
    lead = reading.question[: span.start].casefold().split()[-1:]
    if not lead or lead[0] not in ("the", "that", "this") or not words:
        return None
    keys = {item: {t.key for t in tokenize(lookup.items[item].label)} for item in previous.recent}
    named = [item for item in previous.recent if words < keys[item]]
    if not named or named[0] in reading.query.items or len(lookup.narrower(named[0])) > 1:
        return None
    return (span.start, span.end), named[0]


def _with_name(reading: Reading, where: tuple[int, int], item: str, previous: Reading, talk: Talk) -> Reading:
    label = talk.lookup.items[item].label
    return talk.read(reading.question[: where[0]] + label + reading.question[where[1] :], previous)


def the_one_named(word: str, items: Iterable[str], previous: Reading, lookup: Lookup) -> str | None:
    """The one of several things that was named last in the talk; None for several in the turn before.

    One whose name has the word ("the hat", of a storm hat and a storm hood) goes before the others.
    """
    fitting = {*items} & {*previous.recent}
    keys = {token.key for token in tokenize(word) if token.low[0].isalnum()}
    so_called = {
        item
        for item in fitting
        for name in (lookup.items[item].label, *lookup.items[item].other_labels)
        if keys and keys <= {token.key for token in tokenize(name)}
    }
    fitting = so_called or fitting
    query = previous.query
    last = {span.target for span in previous.spans if span.role == "item"}
    if query is not None:
        last |= {*query.items, *(f.removeprefix(_WORN) for f, _ in query.case.facts if f.startswith(_WORN))}
    latest = fitting & last
    if len(latest) > 1:
        return None
    return next((item for item in previous.recent if item in (latest or fitting)), None)
