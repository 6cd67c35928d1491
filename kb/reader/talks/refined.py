"""A turn that is read: what of the question before it still holds of it, and what does not any more."""

from __future__ import annotations

import msgspec

from kb.model.questions import Query, Reading
from kb.reader.meaning.fits import without_clashes
from kb.reader.talks.dressed import out_of_that_place, out_of_that_rig
from kb.reader.talks.elliptic import of_the_same
from kb.reader.talks.framed import measured_again, moved
from kb.reader.talks.meant import kind_named_before, told_before
from kb.reader.talks.of_its_kind import of_the_kind_named
from kb.reader.talks.settled import (
    in_its_own_act,
    no_longer_why,
    of_either,
    the_only_part,
    whether_at_all,
    without_the_other,
)
from kb.reader.talks.still import still_there
from kb.reader.talks.talked import Talk
from kb.reader.talks.thereupon import (
    back_to,
    of_what_has_it,
    off_itself,
    on_what,
    put_there_too,
    so_worn,
    thereupon,
)
from kb.reader.talks.with_it_on import needed_with_it
from kb.text import Pattern
from kb.wording import say_query

_ALONE = Pattern(r"(?i)\b(?:alone|only|just|nothing|solely|itself|themselves|without anything|own)\b")


def refined(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """The reading of a turn with what goes on from the question before; see each of the steps."""

    reading = kind_named_before(told_before(reading, previous, talk), previous, talk)
    reading = of_the_same(the_only_part(text, reading, previous, talk), previous, talk)
    reading = out_of_that_rig(_freed(of_either(reading, previous, talk), previous, talk), previous, talk)
    reading = out_of_that_place(reading, previous, talk)
    reading = so_worn(text, thereupon(text, reading, previous, talk), previous, talk)
    reading = of_what_has_it(back_to(text, reading, previous, talk), previous, talk)
    reading = in_its_own_act(text, off_itself(reading, talk), previous, talk)
    reading = without_the_other(whether_at_all(text, reading, previous, talk), previous, talk)
    reading = still_there(text, on_what(text, reading, previous, talk), previous, talk)
    reading = no_longer_why(text, put_there_too(text, reading, previous, talk), previous, talk)
    reading = of_the_kind_named(text, reading, previous, talk)
    return _not_with_itself(needed_with_it(text, reading, previous, talk), previous, talk)


def _not_with_itself(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "And the sunglasses at night?", after a cord with them on: of those, not with them."""
    query = reading.query
    own = f"worn:{query.items[0]}" if query is not None and len(query.items) == 1 else ""
    before = previous.query
    if query is None or before is None or (own, dict(query.case.facts).get(own)) not in before.case.facts:
        return reading  # only what was kept from another thing
    if query.items == before.items:
        return reading
    facts = tuple(one for one in query.case.facts if one[0] != own)
    asked = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
    return msgspec.structs.replace(reading, query=asked, text=say_query(talk.lookup, asked))


def _no_longer_alone(reading: Reading, query: Query, before: Query, talk: Talk) -> Reading:
    """ "And earrings?", after "just my ring, then?": it is not asked of them whether they alone are worn."""
    same = query.items == before.items or not query.items
    if not (query.case.alone and before.case.alone) or same or _ALONE.search(reading.question):
        return reading
    asked = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, alone=False))
    return msgspec.structs.replace(reading, query=asked, text=say_query(talk.lookup, asked))


def _freed(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """A reading without what excludes what is new in it: "in a cabin?" after "outdoors"."""
    reading = measured_again(reading, previous, talk.lookup)
    if reading.query is None or previous.query is None:
        return reading
    reading = _no_longer_alone(reading, reading.query, previous.query, talk)
    if reading.query is None:
        return reading
    query = moved(without_clashes(reading.query, previous.query, talk.lookup), previous.query, talk.lookup)
    if query is reading.query:
        return reading
    return msgspec.structs.replace(reading, query=query, text=say_query(talk.lookup, query))
