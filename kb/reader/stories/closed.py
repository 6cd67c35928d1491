"""Words before a thing, and of when something is done, that the rules on the thing do not tell apart.

"My new deck shoes", "after the training": they are left out and named, where no clause on the thing speaks of
old and new, of whose it is, of before and after. Where one does, they stay and stop the question.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.conditions import tests
from kb.model.records import OWNED_ASPECTS, Rule
from kb.reader.phrases.english import tag_set
from kb.reader.stories.idle import GOING, Stretches, is_doing, is_everyday, is_one_of
from kb.reader.stories.modifiers import is_told
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_AGES = word_set("old new older newer newest latest former current brand")
_OWNERS = word_set("own issued issue spare personal private borrowed lent loan lend")
_HABITS = word_set("same usual regular ordinary everyday")
_SIZES = word_set("""
    small smaller smallest little tiny wee big bigger biggest large larger largest huge enormous massive thin
    thinner thick thicker chunky wide narrow broad size sizes dimension dimensions diameter width
""")
_LOOKS = word_set("""
    plain simple discreet discreetly discrete subtle modest modestly nice pretty cute elegant tasteful
    ornament ornamental decorated decoration patterned pattern conspicuous inconspicuous unobtrusive
    unobtrusively sober restrained decent fancy showy
""")
_PRICES = word_set("cheap expensive pricey costly valuable value worth cost costs price")
_ATTRIBUTES = word_set("""
    old new brand own issued issue spare same usual regular
    small little tiny wee big large huge enormous massive thin thick chunky
    plain simple discreet subtle modest nice pretty cute elegant tasteful cheap expensive pricey costly
""")
_SIZE = "size"
_LENGTH = Pattern(r"\d ?(?:mm|cm|in|ft|m)\b")
_SIGHT = word_set("see sees seen show shows showing visible notice notices hidden sight view")
_LED = tag_set(
    "det, poss, with, act, number, without, no, in, and, or, of, leave off, filler, have, comma, on, be"
)
_PEOPLE = frozenset({"grade", "branch", "appointment", "qualification"})
_ITEMS = ("item", "items")
_LOOSE = tag_set("unknown, grant, dimension")
PERIODS = word_set("shift duty training work practice drill school")
"""What one does for a time, of which a thing may be worn before and after."""
_GETTING = word_set("""
    get gets getting buy buying bought draw drawing claim replace replacing exchange swap collect
""")
"""Verbs of which an attribute tells what is got: "may I get a new cap"."""
_PLAIN = tag_set("filler, det, poss, in, on, to, particle, self, person, outdoors, run")
_WASHES = word_set("wash rinse swim soak soaking ducking shift trip storm rain")
_WASHINGS = word_set("washing rinsing drying soaking wearing")
_ACROSS = word_set("out over across down up round along back")
_AFTER_ERRAND = frozenset({"", "comma", "in", "on", "with", "fact", "and", "when", "if", "outdoors"})
_BEFORE_AFTER = word_set("before after")
_STANDING = word_set("""
    promotion promoting appointment appointing award awarding qualification qualifying confirmation joining
    enlisting enlistment graduation graduating passing retirement retiring leaving resignation probation exam
    test commission
""")
"""What changes somebody's standing, on which rules turn."""


def closed_end(sought: Stretches, at: int, cared: bool) -> int | None:
    """Where the words that begin at a piece and tell nothing end; None where they may tell something.

    `cared`: whether it is asked how a thing is cared for, which has an order of its own.
    """
    if sought.low(at) in _BEFORE_AFTER:
        return _sequence_end(sought, at) if cared else _time_end(sought, at)
    return (
        _attribute_end(sought, at) or _errand_end(sought, at) or _till_then(sought, at) or _on_top(sought, at)
    )


def _sequence_end(sought: Stretches, at: int) -> int | None:
    """ "Before hanging it up", "after the wash", said of how a thing is cared for."""
    low, then = sought.low(at + 1), at + 2
    if low in ("the", "a") and sought.low(then) in _WASHES:
        end = then + 1
    elif low.endswith("ing") and sought.low(then) in ("it", "them"):
        end = then + 1 + (sought.low(then + 1) in ("up", "out", "away", "on", "down"))
    else:
        end = then if low in _WASHINGS else at
    return end if end > at and sought.tag(end) not in ("unknown", *_ITEMS) else None


def _attribute_end(sought: Stretches, at: int) -> int | None:
    """ "New" in "my new deck shoes", "in a spare helmet", "a new cadet"."""
    low, place = sought.low(at), at
    if low not in _ATTRIBUTES or sought.tag(at) not in _LOOSE or "or" in (
        sought.low(at - 1), sought.low(at + 1),
    ):  # fmt: skip
        return None
    while sought.low(place) in _ATTRIBUTES and sought.tag(place) in _LOOSE:
        place += 1
    if sought.low(place) == "pair" and sought.low(place + 1) == "of":
        place += 2
    begun = at
    while begun > 0 and sought.low(begun - 1) in _ATTRIBUTES:
        begun -= 1
    if begun > 0 and sought.tag(begun - 1) not in _LED:
        return None
    if (low == "brand") != (sought.low(at + 1) == "new" and low == "brand"):
        return None
    if sought.tag(place) in _ITEMS:
        named = {entry.id for entry in sought.pieces[place].entries}
    elif low == "new" and sought.tag(place) == "fact":
        piece = sought.pieces[place]
        if sought.lookup.facts[piece.fact].family not in _PEOPLE or _tells_service(sought):
            return None
        return at + 1
    else:
        return None
    alike = _ages_of(low)
    lows = [token.low for token in sought.found.tokens]
    if not _SIGHT.isdisjoint(lows) and sought.hides:
        return None  # whether it may be is then asked with whether it shows
    contrast = sum(word in alike for word in lows) > 1 + (low == "brand")  # "the new liner with an old coat"
    if contrast or not _GETTING.isdisjoint(lows):
        return None
    return None if _is_told(sought, named, alike) else at + 1 + (low == "brand")


def _ages_of(low: str) -> frozenset[str]:
    """The words of which a clause has one where it tells such an attribute from its contrary."""
    return next(words for words in (_AGES, _OWNERS, _HABITS, _SIZES, _LOOKS, _PRICES) if low in words)


def _is_told(sought: Stretches, named: set[str], words: frozenset[str]) -> bool:
    """Whether the name of a thing, or of one called like it, or a clause on it, has one of the words."""
    lookup = sought.lookup
    heads = {tokenize(lookup.items[item].label)[-1].key for item in named}
    like = {i.id for i in lookup.base.items if tokenize(i.label)[-1].key in heads}
    labels = (name for i in like | named for name in (lookup.items[i].label, *lookup.items[i].other_labels))
    texts = (lookup.clauses[rule.clause].text for rule in _rules(sought, like | named))
    told = tuple(labels), tuple(texts)
    if any(words.intersection(token.low for token in tokenize(text)) for some in told for text in some):
        return True
    if words in (_SIZES, _LOOKS, _PRICES) and len(like) > 1:
        return True  # "thin gloves", of several kinds of gloves
    if words is _SIZES and (_is_measured(sought, like | named) or any(map(_LENGTH.search, told[1]))):
        return True
    return any(piece.tag == "act" and piece.arg in OWNED_ASPECTS for piece in sought.pieces)


def _is_measured(sought: Stretches, named: set[str]) -> bool:
    """Whether a rule on a thing, or on a part of it, says how big it is, or how many of it there are."""
    whole = named | {i.id for i in sought.lookup.base.items if i.part_of in named}
    sizes = {_SIZE, *sought.lookup.aspects_within(_SIZE)}
    return any(rule.aspect in sizes for rule in _rules(sought, whole))


def _rules(sought: Stretches, named: set[str]) -> Iterator[Rule]:
    related = {kind for item in named for kind in sought.lookup.broader(item)}
    return (r for r in sought.lookup.base.rules if related.intersection(r.scope.items))


def _named(sought: Stretches) -> set[str]:
    return {e.id for piece in sought.pieces if piece.tag in _ITEMS for e in piece.entries}


def _tells_service(sought: Stretches) -> bool:
    """Whether a rule on what is named turns on how long somebody has served, or since when."""
    facts = {test.fact for rule in _rules(sought, _named(sought)) for test in tests(rule.condition)}
    kinds = (sought.lookup.facts[fact] for fact in facts if fact in sought.lookup.facts)
    return any(fact.kind in ("date", "quantity") and "temperature" not in fact.id for fact in kinds)


def _on_top(sought: Stretches, at: int) -> int | None:
    """ "Carry the bag on top", where no other thing is named that it may be on top of."""
    if (sought.low(at), sought.low(at + 1)) != ("on", "top") or sought.low(at + 2) == "of":
        return None
    things = {piece.entries for piece in sought.pieces if piece.tag in _ITEMS}
    carried = any(piece.tag == "act" and piece.arg == "carrying" for piece in sought.pieces)
    return at + 2 if len(things) == 1 and carried else None


def _errand_end(sought: Stretches, at: int) -> int | None:
    """ "To the cashpoint" of "nip out to the cashpoint", "for a paper": where one goes, or what for.

    Whatever is called so can be no thing that is worn; it stays where the books have the word.
    """
    at += sought.low(at) in _ACROSS and sought.low(at + 1) in ("to", "into", "for")
    lead, tokens = sought.low(at).rpartition(" ")[2], sought.found.tokens
    before = tokens[max(0, sought.pieces[at].first - 3) : sought.pieces[at].last]
    if lead not in ("to", "into", "for") or not any(is_one_of(token.low, GOING) for token in before):
        return None
    begun = at + 1
    while sought.tag(begun) in ("det", "poss"):
        begun += 1
    place = begun
    while sought.tag(place) == "unknown" and place < begun + 3 and not sought.is_named(place):
        place += 1
    if place == begun or sought.tag(place) not in _AFTER_ERRAND:
        return None
    words = {tokens[sought.pieces[i].first].key for i in range(begun, place)}
    texts = (clause.text for clause in sought.lookup.base.clauses) if lead == "for" else ()
    if any(not words.isdisjoint(token.key for token in tokenize(text)) for text in texts):
        return None
    told = is_told(sought.found, sought.lookup, sought.pieces[begun].first, sought.pieces[place - 1].last)
    return None if told else place


def _till_then(sought: Stretches, at: int) -> int | None:
    """ "Till then", where no rule on what is named ends on a day."""
    if sought.low(at) not in ("till", "until") or sought.low(at + 1) != "then":
        return None
    dated = any(rule.valid_until is not None for rule in _rules(sought, _named(sought)))
    return None if dated else at + 2


def _time_end(sought: Stretches, at: int) -> int | None:
    """ "After shift", "before going out in the boats"."""
    if not _named(sought) or _is_told(sought, _named(sought), _BEFORE_AFTER):
        return None
    place = at + 1
    while sought.tag(place) in ("det", "poss"):
        place += 1
    begun = place
    doing = sought.low(place).endswith("ing") and (
        is_doing(sought.low(place)) or sought.low(place) in ("going", "coming", "getting", "setting")
    )
    while place < sought.end and _is_plain(sought, place, begun, doing):
        place += 1
    return place if place > begun and sought.tag(place) in ("", "comma", "in", "on", "with", "fact") else None


def _is_plain(sought: Stretches, place: int, begun: int, doing: bool) -> bool:
    """Whether a word goes on with what one does meanwhile: a doing and where, or a time of work."""
    low, tag = sought.low(place), sought.tag(place)
    if (not doing and place > begun) or low in _STANDING:
        return False
    if not doing:
        return low in PERIODS and tag in ("unknown", "fix", "does")
    if tag == "fact":
        fact = sought.lookup.facts[sought.pieces[place].fact]
        led = sought.tag(place - 1) in ("in", "on", "to", "det")
        return led and fact.family == "situation" and fact.kind in ("choice", "yes_no")
    if tag in ("unknown", "fix", "does"):
        return low in PERIODS or (tag == "unknown" and is_everyday(low))
    return tag in _PLAIN or (tag == "values" and sought.tag(place - 1) in ("in", "on", "det"))
