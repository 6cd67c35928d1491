"""Whether a stretch of a sentence says only what somebody does or feels: "because my mum likes it".

Such a stretch says nothing of a thing, of what is done to it or how it is, of an amount, of a day or of the
standing of a person. Each of its words is one of structure or a known one of everyday talk (`everyday`).
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

import msgspec

from kb.model.lookup import Lookup
from kb.reader.phrases.english import tag_set
from kb.reader.phrases.felt import STATE_WORDS
from kb.reader.phrases.leads import KIN
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.stories.aside import weighty_words
from kb.reader.words.everyday import DOINGS, OCCASIONS, OTHERS, PLACES
from kb.reader.words.forms import word_set
from kb.reader.words.street import FEELINGS
from kb.reader.words.tokens import stems, word_key

SPEAKERS = word_set("i we he she you me us")
THINGS = word_set("it they them this that these those one ones mine yours his hers theirs ours its")
"""Words that may stand for a thing."""
SEXES = word_set("man men woman women male female males females")
_SOMEBODY = word_set("nobody everybody everyone anybody anyone somebody someone folk folks people")
_SEEING = word_set(
    "see sees seeing saw like likes loves love want wants hate hates mind prefer prefers notice stand bear"
)
_SIGHT = word_set("see sees seeing saw notice")
_HIDING = word_set("hides hide covers cover conceals conceal hid hidden")
STATES = (
    STATE_WORDS
    | FEELINGS
    | word_set("""
    perishing baltic parky draughty drizzly baking scorching balmy raw arctic stormy grim dreary
    knackered shattered exhausted bored nervous shy cheerful homesick hungover thirsty starving peckish drowsy
    lazy asleep awake careful quick sweat mad frost
""")
)
"""How it is or how somebody feels, apart from how a thing is."""
_WATCHING = word_set("watching looking coming going having")
GOING = word_set("""
    go goes going pop nip dash dart run slip trot walk step cycle drive head rush hop stroll wander scoot
""")
"""Verbs of going somewhere for a while."""
_SWEATING = word_set(
    "dripping sweating melting shivering freezing boiling roasting baking sweltering choking"
)
_MUNCHING = word_set("munching sipping nibbling chewing")
_MEALS = word_set("""
    tea coffee cuppa brew cocoa squash juice milk water sandwich sandwiches lunch snack snacks biscuit
    biscuits cake soup roll bun pie apple banana crisps chocolate chips stew packed elevenses breakfast supper
    dinner porridge
""")
"""What one has in a break; none of it is worn, and drink that rules may forbid is not among it."""
_BODY = word_set(
    "ear ears foot feet hand hands back leg legs knee knees nose finger fingers eye eyes toes throat"
)
_STAYING = word_set("stay stays staying remain remains")
_PARTICLES = word_set("up down out away around about along through round over back there here home together")
_ALLOWED = tag_set("""
    self, person, det, poss, can, may, must, should, be, do, have, not, filler, to, in, on, of, for, show, say
    list, about, run, degree, joined, how, who, when, if, particle, and, by, no, outdoors, at, rule, what
    unknown, act, with, unread, only, dimension, between
""")
_LIGHT = tag_set("filler, not, degree, only")
_VERBS = tag_set("be, have, do, can, may, must, should, run, act, show, say, list")
_WANTING = word_set("want wants like likes know knows think thinks ask asks wonder wonders feel feels there")
_ONLY = {
    "unread": word_set("because though although towards via despite"),
    "with": word_set("with"),
    "for": word_set("for like a an the"),
    "between": word_set("from"),
    "only": word_set("only just"),
    "dimension": word_set("across long"),
}
"""The words of a tag that may stand in talk, where others of it may not."""


def is_one_of(low: str, *kinds: frozenset[str]) -> bool:
    """Whether a word, or one that it is a form of ("queueing", "queue"), is of one of the kinds."""
    return any(form in kind for form in stems(low) for kind in kinds)


def is_everyday(low: str) -> bool:
    """Whether a word is a known one of everyday talk."""
    known = (
        low in STATES | _MEALS | _MUNCHING | _SWEATING
        or low in _WATCHING
        or low.removesuffix("'s") in _SOMEBODY
        or low.removesuffix("'s") in KIN
    )
    return known or is_one_of(low, DOINGS, OTHERS, PLACES, OCCASIONS)


def is_doing(low: str) -> bool:
    """ "Queueing", "laughing"."""
    return low.endswith("ing") and (is_one_of(low, DOINGS, GOING) or low in _WATCHING | _SWEATING | _MUNCHING)


def _undone(piece: Piece, found: Understood) -> Piece:
    """A piece, as unknown where the keyword index takes a doing for a thing: "watching" for a watch."""
    guessed = piece.tag in ("item", "items") and piece.how == "index" and piece.last - piece.first == 1
    doing = guessed and is_doing(found.tokens[piece.first].low)
    return msgspec.structs.replace(piece, tag="unknown") if doing else piece


class Stretches:
    """The pieces of one text, of which those from `first` to `end` (not included) are looked at."""

    def __init__(self, found: Understood, lookup: Lookup) -> None:
        self.found, self.lookup = found, lookup
        self.pieces = tuple(_undone(piece, found) for piece in found.pieces)
        self.first, self.end = 0, len(found.pieces)

    def tag(self, place: int) -> str:
        return self.pieces[place].tag if 0 <= place < self.end else ""

    def low(self, place: int) -> str:
        """The words of a piece in lower case."""
        return " ".join(self.lows(place, place + 1)) if 0 <= place < len(self.pieces) else ""

    def lows(self, first: int, end: int) -> tuple[str, ...]:
        """The words of the pieces from `first` to `end`."""
        start = self.pieces[first].first
        return tuple(token.low for token in self.found.tokens[start : self.pieces[end - 1].last])

    def said(self, first: int, last: int) -> str:
        """The pieces from `first` to `last` as they were written."""
        start, end = self.bounds(first, last)
        return self.found.text[start:end]

    def bounds(self, first: int, last: int) -> tuple[int, int]:
        tokens = self.found.tokens
        return tokens[self.pieces[first].first].start, tokens[self.pieces[last - 1].last - 1].end

    def is_talk(self, subject: int, end: int) -> bool:
        """Whether the words from the token `subject` to the piece `end` are somebody's doings or feelings."""
        places = [i for i in range(self.first, end) if self.pieces[i].last > subject]
        low = self.found.tokens[subject].low if places else ""
        if not places or low in THINGS:
            return bool(places) and low == "it" and self._is_weather(subject + 1, places)
        begun = (
            low in SPEAKERS
            or is_doing(low)
            or self.is_somebody(subject)
            or self.low(places[0]).startswith("there ")
        )
        acts = is_doing(low) or any(self._is_verb(i) for i in places if self.pieces[i].last > subject)
        return begun and acts and all(self._is_idle(i, places, subject) for i in places)

    def hiding(self, subject: int, end: int) -> int | None:
        """The place of the thing in "the tunic hides them"."""
        places = [i for i in range(self.first, end) if self.pieces[i].last > subject]
        things = [i for i in places if self.pieces[i].tag == "item"]
        rest = [self.low(i) for i in places if i not in things and self.pieces[i].tag not in ("det", "poss")]
        hides = len(things) == 1 and len(rest) == 2 and rest[0] in _HIDING and rest[1] in THINGS
        return things[0] if hides else None

    def is_somebody(self, token: int) -> bool:
        """Whether a person or the like begins there: "my mum", "nobody", "the dog"."""
        low = self.found.tokens[token].low.removesuffix("'s")
        place = next(i for i, piece in enumerate(self.pieces) if piece.last > token)
        if low in _SOMEBODY or (self.tag(place) == "person" and low not in THINGS):
            return True
        if self.tag(place) in ("det", "poss") and low not in THINGS:
            noun = self.low(place + 1)
            somebody = self.tag(place + 1) == "unknown" and (is_everyday(noun) or self._is_felt(place + 1))
            return somebody or (self._is_rank(place + 1) and self.tag(place + 2) in ("unknown", "say"))
        return self.tag(place) == "unknown" and low.endswith("s") and (low in KIN or is_one_of(low, OTHERS))

    def _is_felt(self, place: int) -> bool:
        """ "My feet", "my back's"."""
        return self.low(place).removesuffix("'s") in _BODY and self.tag(place - 1) == "poss"

    def _is_rank(self, place: int) -> bool:
        fact = self.pieces[place].fact if self.tag(place) == "fact" else ""
        return bool(fact) and self.lookup.facts[fact].family in ("grade", "branch", "appointment")

    def is_idle(self, places: Sequence[int]) -> bool:
        """Whether pieces say nothing of a thing, a state or a standing."""
        return all(self._is_idle(place, places, self.pieces[places[0]].first) for place in places)

    def is_free(self, low: str) -> bool:
        """Whether a word is an everyday one, and none of the words by which the books name anything."""
        return is_everyday(low) and word_key(low) not in self._named and low not in self._named

    def is_named(self, place: int) -> bool:
        """Whether the books have the word of a piece in a name."""
        token = self.found.tokens[self.pieces[place].first]
        return token.key in self._weighty or token.key in self._named or token.low in self._named

    @cached_property
    def _named(self) -> frozenset[str]:
        """Last words of the names of things, and all words in those of facts."""
        base = self.lookup.base
        things = (name for i in base.items for name in (i.label, *i.other_labels, *i.everyday))
        names = [name.split()[-1] for name in things if name.strip()]
        for fact in base.facts:
            names += [fact.label, *fact.other_labels] if fact.family != "term" else []
            names += [name for value in fact.values for name in (value.label, *value.other_labels)]
        words = frozenset(word for name in names for word in name.casefold().replace("-", " ").split())
        return words - DOINGS

    @cached_property
    def _weighty(self) -> frozenset[str]:
        return weighty_words(self.lookup)

    @cached_property
    def hides(self) -> bool:
        """Whether the books say of a thing that is named that it is, or is not, to be seen."""
        from kb.reader.recast.states import hidden_matters  # noqa: PLC0415  few texts speak of seeing

        named = {entry.id for piece in self.pieces if piece.tag == "item" for entry in piece.entries}
        return hidden_matters(named, self.lookup)

    def tells_sexes(self) -> bool:
        """Whether the books tell men and women apart."""
        values = (value for fact in self.lookup.base.facts for value in fact.values)
        names = (name for value in values for name in (value.label, *value.other_labels))
        return any(not SEXES.isdisjoint(name.casefold().split()) for name in names)

    def _is_idle(self, place: int, places: Sequence[int], subject: int) -> bool:
        """Whether one piece of a stretch says nothing of a thing, a state or a standing."""
        piece = self.pieces[place]
        tokens = self.found.tokens[max(piece.first, subject) : piece.last]
        lows = tuple(token.low for token in tokens)
        begun = place <= places[0] + 2 and self.is_somebody(subject)
        if (begun and self._is_rank(place)) or self._is_felt(place):
            return True
        weighty = piece.tag != "det" and any(token.key in self._weighty for token in tokens)  # "Order A"
        if piece.tag not in _ALLOWED or weighty:
            return False
        if piece.tag in _ONLY and not _ONLY[piece.tag].issuperset(lows):
            return False
        after = [i for i in places if i > place and not self._is_light(i)]
        if piece.tag == "unknown":
            return self.is_free(lows[0]) or lows[0] in _PARTICLES
        if piece.tag == "act" and lows[0] in _STAYING:
            return bool(after) and self.tag(after[0]) not in ("item", "items")
        if piece.tag == "act":
            pointed = not after or self.low(after[0]) in THINGS
            return piece.arg == "wear" and self.is_somebody(subject) and pointed
        if piece.tag == "be" and after:
            return self._is_being(after[0])
        pointing = piece.first > subject and lows[-1] in THINGS
        if pointing and not self._leads_noun(place, places):
            before = self.low(place - 1)
            seen = before in _SEEING and not (before in _SIGHT and self.hides)
            return seen or self.tag(place - 1) == "act"
        return True

    def _is_light(self, place: int) -> bool:
        """ "Only", "really", "very": what "is" may have before what one is."""
        return self.tag(place) in _LIGHT and self.low(place) not in STATES

    def _is_verb(self, place: int) -> bool:
        low, tag = self.low(place), self.tag(place)
        return (
            tag in _VERBS
            or low in _WANTING
            or low.endswith("'s")
            or (tag == "unknown" and is_one_of(low, DOINGS))
        )

    def _is_being(self, place: int) -> bool:
        """Whether what follows "is" is a doing, a place or how somebody feels: no standing."""
        low, tag = self.low(place), self.tag(place)
        if low in STATES or (tag == "unknown" and is_doing(low)):
            return True
        return tag in ("in", "on", "at", "run", "outdoors") or low in ("about", "here", "there", "having")

    def _leads_noun(self, place: int, places: Sequence[int]) -> bool:
        """Whether a pointing word stands before its noun ("this dog") or a clause ("says that I")."""
        after = self.tag(place + 1) if place + 1 in places else ""
        leads = self.low(place) in ("this", "that", "these", "those", "his", "its")
        return leads and after in ("unknown", "self", "person", "det", "poss")

    def _is_weather(self, start: int, places: Sequence[int]) -> bool:
        """ "It is perishing": how it is, and not how the thing is."""
        rest = [i for i in places if self.pieces[i].last > start]
        plain = ("be", "filler", "and", "degree", "run", "in", "outdoors")
        words = [self.low(i) for i in rest if self.pieces[i].tag not in plain]
        return bool(words) and all(word in STATES for word in words)
