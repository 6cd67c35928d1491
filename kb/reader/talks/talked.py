"""What a turn of a talk is read in, and readings made of a query rather than of words."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import facts_of_day
from kb.model.questions import Query, Reading
from kb.model.records import Case
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import Lexicon
from kb.reader.names.spelling import Search
from kb.reader.pieces.pieces import Understood
from kb.reader.question import clean, read_question, understand
from kb.text import Pattern
from kb.wording import say_query

_WORN = "worn:"
_ITEM_ALONE = frozenset({"det", "poss", "filler", "comma", "item", "and", "how about"})
_LED = Pattern(
    r"(?i)^(?:(?:no|nope|sorry|oh|ah|oops|well|ok|okay|fine|right|all right|alright|good|great|so|and|"
    r"now|then|i mean|i meant|make (?:that|it))\b[ ,.:]*)+"
)
_TRAILED = Pattern(r"(?i)[ ,]*\b(?:i mean|i meant|i said|then|sorry|rather)[ .!?]*$")


class Talk(msgspec.Struct, frozen=True):
    """The books, what is remembered, and the index."""

    lexicon: Lexicon
    lookup: Lookup
    case: Case
    search: Search | None

    def read(self, text: str, previous: Reading | None) -> Reading:
        """One text as a question that may go on from `previous`."""
        return read_question(
            text, lexicon=self.lexicon, lookup=self.lookup, case=self.case, search=self.search,
            previous=previous,
        )  # fmt: skip

    def made(self, text: str, query: Query) -> Reading:
        """The reading of a text that a query is made of; all its facts are kept from before."""
        kept = tuple(fact for fact, _ in query.case.facts)
        return Reading(question=text, text=say_query(self.lookup, query), query=query, carried=kept)


def in_its_case(reading: Reading, before: Query, talk: Talk) -> Reading:
    """A reading in the case of the question before, with what its own words state put in place of that.

    A day is named for one turn, and for why it was so; one garment is worn for another of its kind.
    """
    query, lookup = reading.query, talk.lookup
    if query is None:
        return reading
    known_before = {fact for fact, _ in (*before.case.facts, *talk.case.facts)}
    said, remembered = {span.target for span in reading.spans}, dict(talk.case.facts)
    stated = {
        f: v
        for f, v in query.case.facts
        if f not in known_before or not (f in reading.carried or (f not in said and remembered.get(f) == v))
    }
    known, day = dict(before.case.facts), query.case.as_of
    if day == talk.case.as_of != before.case.as_of:
        settled = facts_of_day(before.case.as_of, lookup)
        day = before.case.as_of if query.kind == "why" else day
        known = {f: v for f, v in known.items() if query.kind == "why" or (f, v) not in settled}
    gone = {f for f in known if f not in stated and any(_is_akin(f, fact, lookup) for fact in stated)}
    gone |= {f"{_WORN}{item}" for item in query.items}
    known = {fact: values for fact, values in known.items() if fact not in gone}
    case = Case(as_of=day, facts=tuple(known.items()), alone=query.case.alone)
    query = msgspec.structs.replace(query, case=merge_case(case, stated, None, False, lookup))
    kept = tuple(fact for fact, _ in query.case.facts if fact not in stated)
    return msgspec.structs.replace(reading, query=query, text=say_query(lookup, query), carried=kept)


def _is_akin(one: str, other: str, lookup: Lookup) -> bool:
    """Whether two facts are of things worn of one kind."""
    if not (one.startswith(_WORN) and other.startswith(_WORN)):
        return False
    return akin(one.removeprefix(_WORN), other.removeprefix(_WORN), lookup)


def akin(one: str, other: str, lookup: Lookup) -> bool:
    """Whether two things are of one kind, narrower than clothing."""
    kinds = {kind for kind in lookup.broader(one)[1:] if len(lookup.broader(kind)) > 2}
    return not kinds.isdisjoint(lookup.broader(other))


def item_alone(text: str, lexicon: Lexicon, lookup: Lookup) -> str | None:
    """The item, if a turn names one and says no more."""
    bare = _TRAILED.sub("", _LED.sub("", clean(text.strip())))
    found = understand(bare, lexicon, lookup, None)
    if not isinstance(found, Understood) or not {p.tag for p in found.pieces} <= _ITEM_ALONE:
        return None
    items = [piece.arg for piece in found.pieces if piece.tag == "item"]
    return items[0] if len(items) == 1 else None
