"""Which of two things that differ in a word: "and the tie, white or black?", "brass or steel?", of the badge.

So only where the books have both by such names; which of them is worn is then asked, in the case before.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.reader.doubts.asked_back import COLOURS
from kb.reader.talks.further import LEAD, bare_words, put_as
from kb.reader.talks.talked import Talk, in_its_case
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_NOUN = r"(?:(?:the|my|his|her|our|their) )?(?P<noun>[\w'-]+(?: [\w'-]+)?)(?:,| -| –|:)? "
_TAIL = r"(?: ones?)?(?: (?:is it|then|today|now|tomorrow|do i wear|should it be|for that))*"
_TWO = Pattern(
    rf"(?i){LEAD}(?:(?:what about|how about) )?(?:{_NOUN}(?:is it |should it be |do i wear )?)?"
    rf"(?:the )?(?P<one>[\w'-]+) or (?:the |an? )?(?P<two>[\w'-]+){_TAIL}"
)
_COLOUR = Pattern(rf"(?i){LEAD}(?:(?:what about|how about) )?{_NOUN}(?:which|what) colou?r{_TAIL}")
_MOST = 5


def either_of(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """Which of the things may be worn that a turn tells apart by one word of their names."""
    before, bare, lookup = previous.frame or previous.query, bare_words(text), talk.lookup
    if before is None or (" or " not in bare and "colo" not in bare):
        return None
    items: list[str] = []
    if (two := _TWO.fullmatch(bare)) is not None:
        words = (two["one"].casefold(), two["two"].casefold())
        nouns = [two["noun"]] if two["noun"] else list(_nouns(before, lookup))
        found = ([_named(f"{word} {noun}", lookup) for word in words] for noun in nouns)
        items = next(([one, other] for one, other in found if one and other and one != other), [])
    elif (which := _COLOUR.fullmatch(bare)) is not None:
        named = (_named(f"{colour} {which['noun']}", lookup) for colour in sorted(COLOURS))
        items = list(dict.fromkeys(item for item in named if item is not None))
    if not 1 < len(items) <= _MOST:
        return None
    labels = " and the ".join(lookup.items[item].label for item in items)
    again = talk.read(f"which of the {labels} may I wear?", None)
    if again.query is None or {*again.query.items} != {*items}:
        return None
    return put_as(text, in_its_case(again, before, talk))


def _nouns(before: Query, lookup: Lookup) -> Iterator[str]:
    """What the thing before is called, and that without its first word: "name badge", of a brass one."""
    for item in before.items[:1] if len(before.items) == 1 else ():
        label = lookup.items[item].label
        yield label
        if " " in label:
            yield label.partition(" ")[2]


def _named(name: str, lookup: Lookup) -> str | None:
    """The one thing that has just this name."""
    keys = [token.key for token in tokenize(name)]
    named = [
        item.id
        for item in lookup.base.items
        if any([t.key for t in tokenize(label)] == keys for label in (item.label, *item.other_labels))
    ]
    return named[0] if len(named) == 1 else None
