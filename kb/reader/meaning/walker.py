"""Where a walk over the pieces stands, the amounts it meets, and words that go with what is beside them."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from kb.measures import same_dimension
from kb.model.lookup import Lookup
from kb.model.values import NO, YES, Choices, Interval, ranges
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.measured import always_is, one_of, told_by
from kb.reader.phrases.english import PHRASES
from kb.reader.pieces.naming import credential_of, is_pattern_of
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, is_other
from kb.reader.pieces.quantities import bounded, is_year
from kb.reader.words.tokens import Token

LIGHT = frozenset({"det", "poss", "filler", "comma"})
ITEMS = ("item", "items")
_OPENING = frozenset(
    {"where", "how", "how many", "what", "which", "can", "may", "must", "should", "do", "be"}
)
_ASKING = frozenset({"can", "may", "must", "should", "have to", "required", "do", "what", "which", "how"})
_BESIDES = frozenset({"still", "also", "too", "anyway", "besides", "well"})
_POINTING = frozenset(
    {"it", "them", "they", "one", "ones", "both", "either", "each", "that", "those", "these"}
)
_TO_HOURS = frozenset({"at", "until", "till", "since"})
_TELLING = LIGHT | {"be", "of", "fact", "on date", "allowed", "self", "have", "can", "may", "must", "should"}
"""What may stand between a thing and its pattern: "my badge from 2015, is the old pattern ok?"."""
_EACH = frozenset({"each", "either", "every", "apiece", "per"})


def _whole(interval: Interval) -> Interval:
    """Closed bounds of a count: "more than one" is at least two."""
    low = interval.low + 1 if interval.low is not None and interval.low_open else interval.low
    high = interval.high - 1 if interval.high is not None and interval.high_open else interval.high
    return Interval(low, high)


class Walker:
    """The pieces and what was found in them so far."""

    def __init__(
        self, pieces: Sequence[Piece], tokens: tuple[Token, ...], frame: Frame, lookup: Lookup, roles: Roles,
        told: frozenset[int] = frozenset(),
    ) -> None:  # fmt: skip
        self.told = told
        self.beside: int | None = None  # the colour before a thing that is worn with the one asked about
        self.pieces, self.tokens, self.frame, self.lookup, self.roles = pieces, tokens, frame, lookup, roles

    def _tag(self, index: int) -> str:
        return self.pieces[index].tag if 0 <= index < len(self.pieces) else ""

    def _near(self, index: int, step: int) -> int:
        """The next piece in a direction that is not an article or filler."""
        index += step
        while 0 <= index < len(self.pieces) and self.pieces[index].tag in LIGHT:
            index += step
        return index

    def _use(self, *places: int) -> None:
        self.roles.used.update(places)

    def _is_of_the_one(self, index: int) -> bool:
        """ "I have a pink cap. May I wear it?": a strange colour of the one thing that is spoken of."""
        things = [place for place, piece in enumerate(self.pieces) if piece.tag in ITEMS]
        asks = self.frame.kind == "may" and self.frame.polarity == "do" and is_other(self.pieces[index])
        return asks and things == [index + 1]

    def _is_of_another(self, index: int, chosen: frozenset[str]) -> bool:
        """ "A grey hat and black gloves": whether an earlier value is of another thing than this one."""
        earlier = [i for i, piece in enumerate(self.pieces[:index]) if piece.tag == "aspect value"]
        if not earlier or {entry.id for entry in self.pieces[earlier[-1]].entries} == chosen:
            return False
        one, other = self._thing_of(earlier[-1]), self._thing_of(index)
        return one is not None and other is not None and one.entries != other.entries

    def _thing_of(self, index: int) -> Piece | None:
        """The thing that a value is of: right after it, or the last before it."""
        after = self._near(index, 1)
        places = [after] if self._tag(after) in ITEMS else range(index - 1, -1, -1)
        return next((self.pieces[place] for place in places if self._tag(place) in ITEMS), None)

    def _put(self, index: int, where: str) -> None:
        """A thing among those asked about, worn or not worn, with a colour right before it.

        "With my orange vest on": of a thing beside it is a circumstance of the books, or what it always is,
        and none that is asked about.
        """
        piece, before = self.pieces[index], index - 1
        lists = {"asked": self.roles.asked, "worn": self.roles.worn, "unworn": self.roles.unworn}
        colours = self.pieces[before].entries if self._tag(before) == "aspect value" else ()
        value, owners = Choices(frozenset(e.id for e in colours)), {e.owner for e in colours}
        if where == "asked" or len(owners) != 1:
            lists[where].append(piece)
            return
        (aspect,) = owners
        if piece.tag == "items":
            fixed = [e for e in piece.entries if always_is(e.id, aspect, value, self.lookup)]
            piece = one_of(piece, fixed[0]) if len(fixed) == 1 else piece
        lists[where].append(piece)
        fact = told_by(piece.arg, value, self.lookup) if piece.tag == "item" else None
        if fact is not None:
            self.roles.facts[fact] = YES if where == "worn" else NO
        if fact is not None or (piece.tag == "item" and always_is(piece.arg, aspect, value, self.lookup)):
            self._forget(before, value)
            self._use(before)
        elif before not in self.told:
            self.beside = before

    def _forget(self, index: int, value: Choices) -> None:
        if self.roles.value == value and self.roles.leading == index:
            self.roles.value, self.roles.value_aspect, self.roles.leading = None, "", None

    def end(self) -> None:
        """No colour of a thing beside is one of what is asked about: "the navy cap with a red scarf"."""
        self._before_the_need()
        self._without_any()
        if self.beside is not None and self.roles.asked:
            chosen = Choices(frozenset(entry.id for entry in self.pieces[self.beside].entries))
            if self.roles.leading == self.beside and self.roles.value == chosen:
                self._forget(self.beside, chosen)
                self.roles.used.discard(self.beside)

    def _stands_beside(self, index: int) -> bool:
        """Whether a thing stands right behind another.

        Not so in a list without its commas: "the badge belt and medal", "jersey scarf together".
        """
        if self._tag(index - 1) not in ITEMS or (index - 1 in self.told) != (index in self.told):
            return False
        after = self._tag(index + 1) == "and" and self._tag(self._near(index + 1, 1)) in ITEMS
        listed = after or any(piece.tag == "together" for piece in self.pieces[index:])
        things = [entry.id for piece in self.pieces[index - 1 : index + 1] for entry in piece.entries]
        parts = [i for i in things if self.lookup.items[i].part_of or "feature" in self.lookup.broader(i)]
        return not listed or bool(parts)

    def _without_any(self) -> None:
        """Who holds no "waiver" holds none of any kind: no "medical waiver", no "waiver for beards"."""
        facts = self.roles.facts
        for name in [fact for fact, values in facts.items() if values == NO]:
            record = self.lookup.facts[name]
            words = set(record.label.casefold().split())
            for other in self.lookup.base.facts if record.family == "waiver" else ():
                if other.family == record.family and words < set(other.label.casefold().split()):
                    facts.setdefault(other.id, NO)

    def _before_the_need(self) -> None:
        """ "Deck shoes in the mess, do I still need dress socks?": what stands before is worn."""
        asked = self.roles.asked
        if self.frame.kind != "must" or self.frame.polarity != "do" or self.roles.alternatives:
            return
        for place in range(len(self.pieces) - 1, 0, -1):
            piece = self.pieces[place]
            if piece.tag != "comma" and self._runs_on(self.pieces[place - 1].last - 1, piece.first):
                continue
            before = [one for one in asked if one.last <= piece.first]
            if not before or len(before) == len(asked) or not self._needs(place + (piece.tag == "comma")):
                continue
            if not any(self._tag(i) in _ASKING or self._tag(i) in ("and", "or") for i in range(place)):
                self.roles.worn, self.roles.asked = [*self.roles.worn, *before], asked[len(before) :]
            return

    def _needs(self, first: int) -> bool:
        """Whether it is asked from a place on if something more is needed: "is the tab needed as well"."""
        words = [token.low for token in self.tokens[self.pieces[first].first :]]
        words = [low for before, low in pairwise(["", *words]) if before != "with"]  # "needed with it"
        opened = self._tag(self._near(first - 1, 1)) in ("do", "must", "have to", "be", "should")
        need = any(
            self._tag(i) in ("must", "have to", "required", "should") for i in range(first, len(self.pieces))
        )
        return need and (opened or not _BESIDES.isdisjoint(words)) and _POINTING.isdisjoint(words)

    def _leading(self, index: int) -> int:
        """The piece that leads to a thing, before its colour where one says to be in it."""
        before = self._near(index, -1)
        led = self._near(before, -1) if self._tag(before) == "aspect value" else before
        return led if self._tag(led) == "in" and self._says_in(led) else before

    def _asks_anew(self, index: int) -> bool:
        """ "No plate on. Where's the disc?": a question that begins a sentence of its own."""
        first = self.pieces[index].first
        return self._tag(index) in _OPENING and first > 0 and not self._runs_on(first - 1, first)

    def _is_to_hand(self, index: int) -> bool:
        """ "I've nothing else with me": what there is to put on, not what is worn."""
        after = self._near(index, 1)
        return (
            self._tag(self._near(index, -1)) == "have"
            and self._tag(after) == "with"
            and self._tag(self._near(after, 1)) in ("self", "person")
        )

    def _says_in(self, before: int) -> bool:
        """ "I'm on the quay in my vest, so ...": what one says to be in."""
        place = before - 1
        while self._tag(place) in ("fact", *LIGHT):
            place -= 1
        told = self._tag(place) == "be" and self._tag(place - 1) in ("self", "person")
        return told and any(piece.tag in ITEMS for piece in self.pieces[before + 3 :])

    def between(self, index: int) -> None:
        """ "From a skiff" says where."""
        after = self._near(index, 1)
        if self._tag(after) == "fact" and self.lookup.facts[self.pieces[after].fact].family == "situation":
            self._use(index)

    def hold(self, index: int) -> None:
        if self._tag(self._near(index, 1)) in ("fact", "joined"):
            self._use(index)

    def date_word(self, index: int) -> None:
        if self._tag(self._near(index, 1)) == "on date":
            self._use(index)

    def measure(self, index: int) -> None:
        measure = self.pieces[index].measure if index not in self.frame.used else None
        if measure is not None and self.roles.value is None and self._is_a_size(measure.unit):
            self.roles.value = ranges([measure.interval])
            self.roles.measure_unit = measure.unit
            self._use(index)

    def _is_a_size(self, unit: str) -> bool:
        """Whether something worn is measured in a unit: a length, or what some rule measures."""
        used = {rule.value.measure.unit for rule in self.lookup.base.rules if rule.value.measure}
        return any(same_dimension(unit, other) for other in ("mm", *used))

    def dimension(self, index: int) -> None:
        measured = any(p.tag in ("measure", "number") for p in self.pieces)
        if index not in self.frame.used and (measured or self.frame.kind == "how"):
            self.roles.dimension = self.pieces[index].arg
            self._use(index)

    def oversize(self, index: int) -> None:
        """ "Is 40 mm too wide" asks whether it may be; "it is 3 mm too wide" does not say how wide it is."""
        before = self._near(index, -1)
        if self._tag(before) == "measure" and self._tag(self._near(before, -1)) == "be" and before <= 2:
            phrase = PHRASES.get((self.tokens[self.pieces[index].last - 1].low,), "")
            self.roles.dimension = phrase.partition(":")[2]
            self._use(index)

    def number(self, index: int) -> None:
        """A number before an item, or after "the number of", counts it; after a book it is a clause."""
        if index in self.frame.used:
            return
        piece, before, after = self.pieces[index], self._near(index, -1), self._near(index, 1)
        if is_year(piece) and self._tag(before) != "book":
            return  # "in summer 2021 three badges", "April 2021: the smock", "my 2019 jersey"
        if index and self.tokens[piece.first - 1].low in _TO_HOURS:
            return  # "we sail at ten, the helmet on"
        if self._tag(before) == "book" and not self.roles.clause_number:
            self.roles.clause_number = piece.arg
            self._use(index)
            return
        counting = [i for i, p in enumerate(self.pieces) if p.tag in ("how many", "too many")]
        if self.roles.value is not None or not (self._tag(after) in ITEMS or counting):
            return
        if self._tag(after) in ITEMS and not self._runs_on(piece.last - 1, self.pieces[after].first):
            return  # "it is 31. Collar open?"
        if any(token.low in _EACH for token in self.tokens[piece.last :]):
            return  # "two pins on each lapel" are more than two
        led = self._tag(after) in ITEMS and self._tag(before) in ("on", "in", "over", "with")
        if led and "feature" in {b for e in self.pieces[after].entries for b in self.lookup.broader(e.id)}:
            return  # "a bag on one shoulder" counts no shoulders
        number = Fraction(int(piece.arg))
        bound = self._tag(before) if self._tag(before) in ("at least", "at most", "above", "below") else ""
        interval = bounded(bound, number)
        if bound:
            interval = _whole(interval)
            self._use(before)
        elif self._tag(index - 1) == "or" and self._tag(index - 2) == "number":
            first = int(self.pieces[index - 2].arg)
            if first + 1 != number or index - 2 in self.roles.used:
                return
            interval = Interval(Fraction(first), number)
            self._use(index - 2)
        elif self._tag(index + 1) in ("to", "range") and self._tag(index + 2) == "number":
            interval = Interval(number, Fraction(int(self.pieces[index + 2].arg)))
            self._use(index + 1, index + 2)
        elif self.frame.kind == "must" and self._bare(index) and not counting and not self._wears():
            interval = Interval(number, None)  # whoever owns four owns the three that he must
        self._use(*counting)
        self.roles.counted = self.pieces[after] if self._tag(after) in ITEMS else None
        self.roles.value, self.roles.value_aspect = ranges([interval]), "count"
        self._use(index)

    def _runs_on(self, first: int, last: int) -> bool:
        """Whether no more than a blank stands between words: a sign such as a full stop is no word."""
        return all(self.tokens[i + 1].start - self.tokens[i].end < 2 for i in range(first, last))

    def _is_dated(self, index: int, asked: bool) -> bool:
        """ "Badge awarded April 2019. Old pattern fine?": a thing that tells no more than the date.

        So does one that is asked about by its pattern. Whoever was given it holds what it stands for.
        """
        next_to = index + 1 + (self._tag(index + 1) == "comma")
        after = self.pieces[next_to] if next_to < len(self.pieces) else None
        dated = after is not None and after.tag == "fact" and self.lookup.facts[after.fact].kind == "date"
        later = any(piece.tag in ITEMS for piece in self.pieces[next_to + 1 :])
        parted = dated and after is not None and later and not self._runs_on(after.last - 1, after.last)
        if not parted and not ((asked or dated) and self._is_of_pattern(index, dated)):
            return False
        held = credential_of(self.pieces[index], self.lookup) if dated else None
        if held is not None:
            self.roles.facts.setdefault(held, YES)
        return True

    def _is_of_pattern(self, index: int, dated: bool) -> bool:
        """ "My pilot's badge is the old pattern": one thing, told by its name and then by its pattern.

        Of a thing with its date ("with a badge of 2018") the pattern may be what is worn.
        """
        for piece in self.pieces[index + 1 :]:
            if piece.tag == "item":
                return is_pattern_of(piece.arg, self.pieces[index].arg, self.lookup)
            if piece.tag not in _TELLING and not (dated and piece.tag in ("act", "comma")):
                return False
        return False

    def _wears(self) -> bool:
        """Whether it is asked how many are worn: who must wear three wears no fourth."""
        return any(piece.tag == "act" and piece.arg in ("wear", "use") for piece in self.pieces)

    def _bare(self, index: int) -> bool:
        """Whether a number stands without "exactly"."""
        first = self.pieces[index].first
        return not first or self.tokens[first - 1].low not in ("exactly", "precisely", "just", "only")

    def on_date(self, index: int) -> None:
        from kb.reader.pieces.vintage import is_of_standing  # noqa: PLC0415  few questions name a day

        piece = self.pieces[index]
        low = self.tokens[piece.first - 1].low if piece.first else ""
        led = self.tokens[piece.first - (low in ("on", "since"))]
        if is_of_standing(self.pieces, self.tokens, led.start, low, self.lookup):
            return  # "qualified on 3 March 2015"
        if self.roles.as_of is None and low not in ("before", "after", "until", "till"):
            self.roles.as_of = piece.date
            self._use(index)
            if self._tag(index - 1) in ("between", "range", "above", "below"):
                self._use(index - 1)

    def _worn_where(self, index: int) -> bool:
        """ "Storm coat over the jersey, where does the pin go": the garments told before are worn with it."""
        after = index + 1
        if self._tag(after) not in ("be", "do", "must", "should", "may", "can"):
            return False
        after += 1
        while self._tag(after) in ("det", "poss"):
            after += 1
        asked = self.roles.asked
        broader = [{b for e in piece.entries for b in self.lookup.broader(e.id)} for piece in asked]
        if self._tag(after) not in ITEMS or not asked or not all("garment" in kinds for kinds in broader):
            return False
        self.roles.asked, self.roles.worn = [], [*asked, *self.roles.worn]
        return True

    def by(self, index: int) -> None:
        if self._tag(self._near(index, 1)) in ("fact", "person", "self"):
            self._use(index)

    def body(self, index: int) -> None:
        """ "On my head": what is worn there, where no item is named."""
        if self.frame.kind == "list" and not self.roles.asked and not self.roles.body:
            self.roles.body = self.pieces[index].arg
            self._use(index)

    def place(self, index: int) -> None:
        if self.roles.asked:
            self.roles.placing.append(self.pieces[index])
            self._use(index)

    def clause_number(self, index: int) -> None:
        if not self.roles.clause_number:
            self.roles.clause_number = self.pieces[index].arg
            if self.frame.kind in ("source", "compare"):
                self._use(index)

    def book(self, index: int) -> None:
        self.roles.book = self.pieces[index].arg
        if self.frame.kind == "source":
            self._use(index)

    def care(self, index: int) -> None:
        if self.frame.aspect == "care":
            self._use(index)

    def grant(self, index: int) -> None:
        self.roles.granting = True
        if self._tag(index - 1) == "joined" or self.frame.kind == "who":
            self._use(index)

    def mean(self, index: int) -> None:
        if self.frame.kind == "source":
            self._use(index)
