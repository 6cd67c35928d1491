"""A turn whose words settle what its reading leaves open: which part is meant, or that another thing is worn.

"How wide is that band?", of a helmet that has one; "the jersey instead?", after whether sleeves may be up.
"""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.values import YES
from kb.reader.meaning import fits
from kb.reader.talks.further import keys_of, put_as
from kb.reader.talks.talked import Talk, in_its_case
from kb.reader.words.tokens import tokenize
from kb.text import Pattern
from kb.wording import say_query

_SET = Pattern(r"(?i)\b(?:with|without|in|on|at|when|if|while|instead|over|under|beneath|for|during|after)\b")


def the_only_part(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "How wide is that band?", asked which part is meant: the one that there is, if the turn names it."""
    ask = reading.ask
    if ask is None or ask.fact != "item" or len(ask.choices) != 1 or previous.query is None:
        return reading
    item, lookup = ask.choices[0][0], talk.lookup
    whole = fits.whole_of(item, lookup)
    if item not in lookup.items or whole is None or whole not in previous.query.items:
        return reading
    own = keys_of(lookup.items[item].label) - keys_of(lookup.items[whole].label)
    words = [token for token in tokenize(text) if token.key in own]
    if len(words) != 1:
        return reading
    label = lookup.items[item].label
    again = talk.read(f"{text[: words[0].start]}{label}{text[words[0].end :]}", None)
    query = again.query
    if query is None or query.items != (item,) or lookup.aspects[query.aspect].kind != "measure":
        return reading
    return put_as(text, in_its_case(again, previous.query, talk))


def in_its_own_act(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "A raincoat in the rain?", after whether sleeves may be rolled: whether it may be worn.

    So where no rule speaks of the new thing as it was asked of the one before, and the turn says when: of the
    thing alone it is not clear what is asked.
    """
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or len(query.items) != 1 or query.kind not in ("may", "must"):
        return reading
    if query.items == before.items or query.aspect != before.aspect or not _SET.search(text):
        return reading
    if any(span.role in ("aspect", "measure", "clause") for span in reading.spans):
        return reading
    act = fits.wearing(query.items, lookup)
    own = any(query.items[0] in rule.scope.items for rule in fits.rules_on(query.items, query.aspect, lookup))
    if query.aspect == act or own or not any(fits.rules_on(query.items, act, lookup)):
        return reading
    worn = _unrolled(fits.whether_worn(query, lookup), before, lookup)
    return msgspec.structs.replace(reading, query=worn, text=say_query(lookup, worn))


def _unrolled(query: Query, before: Query, lookup: Lookup) -> Query:
    """The question without that the thing before is worn, which asking what is done to it said."""
    gone = {f"worn:{item}" for item in before.items}
    gone |= {f"worn:{whole}" for item in before.items if (whole := fits.whole_of(item, lookup)) is not None}
    kept = tuple((fact, values) for fact, values in query.case.facts if fact not in gone or values != YES)
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=kept))
