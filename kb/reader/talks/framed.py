"""What a turn leaves for the next one: the question that it goes on from, and the things that were named."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import partial

import msgspec

from kb.measures import same_dimension
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading, Span
from kb.model.values import YES, Choices, ValueSet
from kb.reader.meaning.fits import wearing, whether_worn
from kb.reader.meaning.query import merge_case
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.pointing import is_place
from kb.reader.pieces.values import complement_of
from kb.reader.question import clean, understand
from kb.reader.talks.talked import Talk
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern
from kb.wording import say_query
from kb.wording.surroundings import is_under_a_roof

_MOST = 6
_HEDGED = Pattern(
    r"(?i)\b(?:not|no|or|unless|except|without|never|if|outside|off|than|until|before|after)\b|n['\u2019]t\b"
)
_DOORS = frozenset({"indoors", "outdoors", "out of doors", "outside", "inside", "in the open"})
_INSIDE = frozenset({"indoors", "inside"})
_OF_THE_AIR = word_set("air outside outdoors outdoor out ambient")
_WHERE = frozenset({"place", "location", "whereabouts", "area", "site"})
_MODAL = Pattern(r"(?i)(?:(?:and|but|so) )?(?:may|can|could|must|should|do|does|am|is|are)\b")


def frame_of(reading: Reading, previous: Reading | None, lookup: Lookup) -> Query | None:
    """The question that further words go on from, where a clause or the source was shown in between."""
    if reading.frame is not None:
        return reading.frame  # the reader has said it already
    query = reading.query
    before = None if previous is None else previous.frame or previous.query
    if reading.ask is not None and reading.ask.fact == "item":
        return before  # the thing that is meant is asked about in what was said before
    if query is None or not (query.clause or query.kind == "source"):
        return None
    named = {
        span.target
        for span in reading.spans
        if span.role == "item" and span.target in lookup.items and span.text not in reading.unused
    }
    if query.clause is not None and any(map(partial(_of_another_one, reading), reading.spans)):
        return None  # "the tab of the higher grade", which is not the wearer's own
    only = _only_thing(reading, query, lookup) if query.clause is not None and not named else None
    other = before is None or before.kind == "list" or _is_of_another(reading, before, lookup)
    if only is not None and other:
        return Query(kind="may", items=(only,), aspect=wearing((only,), lookup), case=query.case)
    if query.clause is not None and len(named) == 1 and (before is None or not named & {*before.items}):
        items = tuple(
            item for item in named if item is not None
        )  # "how is the coat dried?", told by a clause
        return Query(kind="may", items=items, aspect=wearing(items, lookup), case=query.case)
    if query.clause is not None and before is not None and _is_of_another(reading, before, lookup):
        return None  # "how is the coat dried?", of which coat not being known: "it" is not what was before
    same = before is not None and (query.clause is not None or query.items == before.items)
    return before if same else None


def _only_thing(reading: Reading, query: Query, lookup: Lookup) -> str | None:
    """The one thing of a clause of whose name most was said, the last word of it at least: "my badge"."""
    rules = lookup.rules_of(query.clause) if query.clause in lookup.clauses else ()
    said = {token.key for token in tokenize(reading.question)}
    found: dict[str, int] = {}
    for item in {item for rule in rules for item in rule.scope.items}:
        record = lookup.items[item]
        for words in map(tokenize, (record.label, *record.other_labels, *record.everyday)):
            if words[-1].key in said:
                found[item] = max(found.get(item, 0), sum(word.key in said for word in words))
    most = [item for item, words in found.items() if words == max(found.values())]
    return most[0] if len(most) == 1 else None


def _of_another_one(reading: Reading, span: Span) -> bool:
    return span.role == "item" and reading.question[span.end :].lstrip().startswith("of ")


def leading_on(reading: Reading, previous: Reading | None, talk: Talk) -> Reading:
    """A clause that is shown in place of an answer, with what further words go on from after it."""
    query = reading.query
    if query is None or query.clause is None or reading.frame is not None:
        return reading
    frame = frame_of(reading, previous, talk.lookup)
    if frame is not None:
        frame = in_what_case(frame, reading.question, previous, talk)
    return msgspec.structs.replace(reading, recent=recently(reading, previous), frame=frame)


def _is_of_another(reading: Reading, before: Query, lookup: Lookup) -> bool:
    """Whether a turn names things, and none of them may be one of those before."""
    spoken = [span for span in reading.spans if span.role == "item"]
    names = {
        token.key
        for item in before.items
        for name in (lookup.items[item].label, *lookup.items[item].everyday)
        for token in tokenize(name)
    }
    return bool(spoken) and all(
        span.target not in before.items and names.isdisjoint(t.key for t in tokenize(span.text))
        for span in spoken
    )


def recently(reading: Reading, previous: Reading | None) -> tuple[str, ...]:
    """The items named in the talk, the last first."""
    asked = reading.query.items if reading.query is not None else ()
    named = tuple(span.target for span in reading.spans if span.role == "item" and span.target is not None)
    return tuple(dict.fromkeys((*asked, *named, *(previous.recent if previous is not None else ()))))[:_MOST]


def in_what_case(frame: Query, text: str, previous: Reading | None, talk: Talk) -> Query:
    """What further words go on from, after a clause was shown: the thing that was asked of, in its case.

    Only what is said outright; of the thing before, only where it was asked if one may or must.
    """
    before = None if previous is None else previous.frame or previous.query
    if _HEDGED.search(text) or (before is not None and frame == before and not _MODAL.match(text)):
        return frame
    if frame == before and frame.kind not in ("may", "must"):
        frame = whether_worn(frame, talk.lookup)  # "may I keep it on?", after how many
    found = understand(clean(text), talk.lexicon, talk.lookup, None)
    pieces = found.pieces if isinstance(found, Understood) else ()
    stated = {p.fact: p.values for p in pieces if p.tag == "fact" and p.fact and p.values is not None}
    stated = {f: v for f, v in stated.items() if talk.lookup.facts[f].family in ("situation", "rig", "term")}
    return msgspec.structs.replace(frame, case=merge_case(frame.case, stated, None, False, talk.lookup))


def _is_where(fact: str, values: ValueSet, lookup: Lookup) -> bool:
    """Whether a fact says at which place one is: "in the mess", and not "on parade"."""
    return lookup.facts[fact].label.casefold().split()[-1] in _WHERE and is_place(fact, values, lookup)


def _left(known: Mapping[str, ValueSet], old: Mapping[str, ValueSet], lookup: Lookup) -> Iterator[str]:
    """The places of before at which one is no more who is indoors, or out of doors, now."""
    new = [fact for fact, values in known.items() if old.get(fact) != values]
    doors = [
        f for f in new if lookup.facts[f].label.casefold() in _DOORS and lookup.facts[f].kind == "yes_no"
    ]
    if len(doors) != 1:
        return
    inside = (known[doors[0]] == YES) == (lookup.facts[doors[0]].label.casefold() in _INSIDE)
    for fact, values in known.items():
        if old.get(fact) != values or not isinstance(values, Choices) or not _is_where(fact, values, lookup):
            continue
        named = [value.label for value in lookup.facts[fact].values if value.id in values.members]
        roofed = is_under_a_roof(named) if named and not values.complement else None
        if roofed is not None and roofed != inside:
            yield fact


def moved(query: Query, before: Query, lookup: Lookup) -> Query:
    """A question of another place, without that it was in or out of doors at the one before.

    "And outside?", after the mess, is not in the mess.
    """
    old, known = dict(before.case.facts), dict(query.case.facts)
    left = {fact: complement_of(lookup, fact, old[fact]) for fact in _left(known, old, lookup)}
    if left:
        facts = tuple((fact, left.get(fact, values)) for fact, values in query.case.facts)
        return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
    places = {f for f, v in known.items() if old.get(f) != v and _is_where(f, v, lookup)}
    doors = {
        fact
        for fact, values in known.items()
        if lookup.facts[fact].kind == "yes_no" and lookup.facts[fact].label.casefold() in _DOORS
        if old.get(fact) == values
    }
    if places:
        doors |= {
            fact for fact, values in known.items() if old.get(fact) == values == YES and _at(fact, lookup)
        }
        doors |= set(_left_off(known, old, places, lookup))
    if not places or not doors:
        return query
    kept = tuple((fact, values) for fact, values in query.case.facts if fact not in doors)
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=kept))


def _at(fact: str, lookup: Lookup) -> bool:
    """Whether a fact is to be beside something: "in the office?", after "at a lathe", is not there now."""
    record = lookup.facts[fact]
    return record.family == "situation" and record.label.split()[0].casefold() in _BESIDE


def _left_off(
    known: Mapping[str, ValueSet], old: Mapping[str, ValueSet], places: Iterable[str], lookup: Lookup
) -> Iterator[str]:
    """The rig of before, at a place that has one of its own by name: "and in the lab?", after yard dress.

    A ticket hall is not the hall of hall dress.
    """
    names = [_keys(name) for place in places for name in _names(place, known[place], lookup)]
    for fact, values in known.items():
        if lookup.facts[fact].family != "rig" or old.get(fact) != values or not isinstance(values, Choices):
            continue
        rigs = {value.id: _keys(value.label) for value in lookup.facts[fact].values}
        shared = {key for keys in rigs.values() for key in keys if _in_several(key, rigs)}
        own = {
            rig for rig, keys in rigs.items() if any(name & keys - shared and name <= keys for name in names)
        }
        if len(own) == 1 and not values.complement and own.isdisjoint(values.members):
            yield fact


def _names(fact: str, values: ValueSet, lookup: Lookup) -> list[str]:
    if not isinstance(values, Choices) or values.complement or len(values.members) > 1:
        return []  # anywhere else
    return [value.label for value in lookup.facts[fact].values if value.id in values.members]


def _in_several(key: str, names: Mapping[str, set[str]]) -> bool:
    return sum(key in keys for keys in names.values()) > 1


def _keys(name: str) -> set[str]:
    return {token.key for token in tokenize(name) if len(token.low) > _SHORT}


_SHORT, _BESIDE = 3, frozenset({"at", "behind", "beside", "inside", "over"})


def measured_again(reading: Reading, previous: Reading, lookup: Lookup) -> Reading:
    """ "And at 13?", after the water was 9 degrees: of the water, though the air is measured so as well."""
    query, before = reading.query, previous.query
    if query is None or before is None:
        return reading
    old, known = dict(before.case.facts), dict(query.case.facts)
    for fact in known.keys() - old.keys():
        again = _measured_before(fact, old, lookup)
        if again is None or known.get(again) != old[again]:
            continue
        if _says_which(reading.question, fact, again, lookup):
            continue
        facts = tuple((f, known[fact] if f == again else v) for f, v in known.items() if f != fact)
        query = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
        spans = tuple(
            msgspec.structs.replace(span, target=again) if span.target == fact else span
            for span in reading.spans
        )
        return msgspec.structs.replace(reading, query=query, spans=spans, text=say_query(lookup, query))
    return reading


def _measured_before(fact: str, old: Iterable[str], lookup: Lookup) -> str | None:
    """The one circumstance of the question before that has the unit of another."""
    unit = lookup.facts[fact].unit if lookup.facts[fact].kind == "quantity" else None
    if unit is None:
        return None
    found = [f for f in old if (other := lookup.facts[f].unit) is not None and same_dimension(other, unit)]
    return found[0] if len(found) == 1 else None


def _says_which(text: str, fact: str, other: str, lookup: Lookup) -> bool:
    """Whether a text has a word that is of the one circumstance and not of the other: "air", "outside"."""
    names = (lookup.facts[fact].label, *lookup.facts[fact].other_labels)
    own = {token.key for name in names for token in tokenize(name)}
    own = (own - {token.key for token in tokenize(lookup.facts[other].label)}) | _OF_THE_AIR
    return not own.isdisjoint(token.key for token in tokenize(text))
