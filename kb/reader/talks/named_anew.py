"""A turn that names a thing of its own beside "it" or "one": that thing is meant, not the one of before.

"My beard's 4 cm, does it have to be covered?", after earrings, is of the beard; "can I have the one on the
sleeve?", after the cross on the back, is of the cross on the sleeve.
"""

from __future__ import annotations

import re

from kb.model.questions import Reading
from kb.reader.talks.further import keys_of
from kb.reader.talks.talked import Talk, item_alone
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_MY_OWN = Pattern(
    r"(?i)(?:(?:and|but|so|well|ok),? )*(?:my|our) (?P<thing>[\w-]+(?: [\w-]+)??)"
    r"(?:['\u2019]s|['\u2019]re| is| are) [^?]*?[,.;] .*\b(?:it|them|they)\b.*"
)
_ONE_ON = Pattern(
    r"(?i)\b(?:the|that) (?:ones?) "
    r"(?P<where>(?:on|in|at|over|under|round|around) (?:the |my )?(?P<part>[\w-]+))"
)


_OTHER_ONE = Pattern(r"(?i)\b(?:the|that|my) (?P<which>other|first|second|former|latter|last) ones?\b")
_PLACES = {"first": 0, "former": 0, "second": 1, "latter": 1, "last": 1}
_SUCH = Pattern(r"(?i)\b(?:the|an?|that|my) (?P<kind>[\w'-]+) ones?\b")


def of_its_own_thing(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """The reading of a turn that tells of a thing of one's own and goes on to "it", by that thing."""
    query, found = reading.query, _MY_OWN.fullmatch(text.strip())
    before = previous.frame or previous.query
    if query is None or before is None or found is None or query.items != before.items:
        return reading
    meant = _called(found["thing"], talk)
    known = {kind for one in query.items for kind in (one, *talk.lookup.broader(one))}
    return talk.read(text, None) if meant and not meant & known else reading


def _called(thing: str, talk: Talk) -> set[str]:
    """The things of that name, of which there may be several."""
    item, keys = item_alone(thing, talk.lexicon, talk.lookup), keys_of(thing)
    named = {
        one.id
        for one in talk.lookup.base.items
        if any(keys_of(name) == keys for name in (one.label, *one.other_labels, *one.everyday))
    }
    return named if item is None else {item}


def the_one_on(text: str, previous: Reading, talk: Talk) -> str:
    """ "The one on the sleeve", after its like on the back, by the whole name of the thing."""
    if (other := _OTHER_ONE.search(text)) is not None:
        return _of_the_pair(text, other, previous, talk)
    query, found, lookup = previous.query, _ONE_ON.search(text), talk.lookup
    if query is None or len(query.items) != 1:
        return text
    if found is None:
        return _the_like_one(text, query.items[0], talk)
    own = keys_of(lookup.items[query.items[0]].label)
    where = keys_of(found["where"]) | keys_of(found["part"])
    like = [
        item
        for item in lookup.base.items
        if item.id not in query.items
        and keys_of(found["part"]) <= (keys := keys_of(item.label))
        and len(keys - where & own) > 1
        and keys - where <= own
    ]
    if len(like) != 1:
        return text
    return f"{text[: found.start()]}the {like[0].label}{text[found.end() :]}"


def _of_the_pair(text: str, found: re.Match[str], previous: Reading, talk: Talk) -> str:
    """ "The other one", after one of two things of a kind that were named; "the second one", after a list."""
    before, lookup = previous.frame or previous.query, talk.lookup
    if before is None or not before.items:
        return text
    shown = previous.query is not None and previous.query.clause is not None and bool(previous.recent)
    last = previous.recent[:1] if shown else before.items
    kinds = {kind for item in last for kind in (*lookup.narrower(item), *lookup.broader(item)[1:2])}
    if before.kind == "list" and not shown:
        pair = [item for item in previous.recent[:2] if item in kinds and item not in before.items]
        place = _PLACES.get(found["which"].casefold())
        meant = [pair[place]] if len(pair) == 2 and place is not None else []
    else:
        like = {item for kind in kinds for item in lookup.narrower(kind) if len(lookup.narrower(item)) < 2}
        meant = [item for item in previous.recent if item in like and item not in last]
        meant = meant if found["which"].casefold() == "other" else []
    if len(meant) != 1:
        return text
    return f"{text[: found.start()]}the {lookup.items[meant[0]].label}{text[found.end() :]}"


def _the_like_one(text: str, before: str, talk: Talk) -> str:
    """ "The pin one", after a badge, where "pin" by itself is another thing: the pin badge."""
    such, lookup = _SUCH.search(text), talk.lookup
    head = [token.key for token in tokenize(lookup.items[before].label)][-1:]
    if such is None or keys_of(text).issuperset(head):
        return text
    wanted = [*(token.key for token in tokenize(such["kind"])), *head]
    like = [
        item
        for item in lookup.base.items
        if any([token.key for token in tokenize(n)] == wanted for n in (item.label, *item.other_labels))
    ]
    if len(like) != 1:
        return text
    return f"{text[: such.start()]}the {like[0].label}{text[such.end() :]}"
