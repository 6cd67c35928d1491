"""Whether a place told beside a thing is open: "on the left sleeve", "5 in below the shoulder seam".

The words are held against every place where some rule puts the thing. Those that they fit are asked about;
where they fit none, only a place that no rule names is asked about, which rules on its place then close.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from types import MappingProxyType

import msgspec

from kb.measures import format_interval
from kb.measures.twins import as_first
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Measure, Position, Rule, is_in_force
from kb.model.values import OTHER, YES, Choices, Interval
from kb.reader.meaning.placed import is_one_of_two
from kb.reader.meaning.query import said_case
from kb.reader.phrases.english import tag_set
from kb.reader.phrases.standing import stands_done
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import visible

_ABOVE = word_set("above over")
_BELOW = word_set("below under beneath underneath down")
_BESIDE = word_set("beside next")
_AROUND = word_set("around round")
_ON = word_set("on at in onto upon from along")
_FROM = word_set("from off to past beyond")
_ASKING = word_set(
    "where what which who whom whose how why when whether if not n't never without or than unless"
)
_SIDES = word_set("left right")
_DETERMINERS = word_set("the a an my his her our your")
_HAVING = word_set("wear wears wearing got have has having 've")
_WHICH = word_set("lower upper front back rear inner outer middle")
_SIZED = word_set("long high wide tall thick broad across deep big")
_BODY: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "breast": ("breast", "chest"), "chest": ("breast", "chest"), "arm": ("arm", "sleeve"),
        "shoulder": (),
        "forearm": ("forearm", "arm"), "hand": (), "wrist": ("wrist", "cuff"), "hip": (), "thigh": (),
        "leg": (),
    }
)  # fmt: skip
_SIDED = word_set("side") | _BODY.keys()
_LIGHT = word_set("""
    it its this that ok okay fine alright correct there good allowed so a an the my his her our your up of and
    roughly about just stay stays near enough mine part
""")
_PLAIN = tag_set("""
    filler, comma, det, poss, be, do, can, may, must, should, allowed, self, person, fact, joined, on date
    measure, have to, for, by
""")


_NOWHERE = Interval(Fraction(0), Fraction(0))


class _Told(msgspec.Struct, frozen=True):
    """What is said of a place: items after the words that lead to them, a side, a measure and its words.

    `at` are those of its words at which the thing itself is said to be.
    """

    things: tuple[tuple[str, frozenset[str], tuple[str, ...]], ...]
    side: str
    body: frozenset[str]
    datum: frozenset[str]
    at: frozenset[str]
    leads: frozenset[str]
    measure: Measure | None
    worn: tuple[str, ...]
    first: int
    last: int


def sited(found: Understood, roles: Roles, case: Case, lookup: Lookup) -> Query | None:
    """The question whether the told place is open; None where a text tells none, or more than a place."""
    if any(token.low in _ASKING for token in found.tokens):
        return None
    things = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    placed = [piece for piece in things if _one_placed(piece, lookup)]
    subject = next((p for p in placed if not _is_said_worn(found, p)), placed[0] if placed else None)
    if subject is None or roles.clashing or is_one_of_two(found.pieces, subject):
        return None
    item = _one_placed(subject, lookup)
    rules = [rule for rule in _placing(item, lookup) if _in_force(rule, case)]
    told = _told(found, subject, rules)
    if told is None or not rules:
        return None
    fitting, unsure, barred = set[str](), False, set[str]()
    for rule in rules:
        text = {token.key for token in tokenize(lookup.clauses[rule.clause].text)}
        for position in rule.value.positions:
            fit = _fits(position, told, text, lookup)
            unsure = unsure or fit is None
            if fit:
                fitting.add(position.id)
                barred.update([position.id] if rule.modality == "must_not" else [])
    if not barred and (unsure or _places_kinds(item, lookup)):
        return None  # "about" without a tolerance is never judged
    if not fitting and not _is_of_a_place(told, rules):
        return None
    plain = all(len(entries) == 1 for _, entries, _ in told.things)  # "my own coat" may be none of the books'
    words = [] if plain and barred and barred == fitting else [OTHER + _words(found, told)]
    value = Choices(
        frozenset({*fitting, *words})
    )  # the words are what is read back, or the place that is barred
    worn = {f"worn:{name}": YES for name in _garments(told, lookup)}
    said = said_case(case, roles, lookup, {f: v for f, v in worn.items() if f in lookup.facts})
    return Query(kind="may", items=(item,), aspect="position", value=value, case=said)


def _one_placed(piece: Piece, lookup: Lookup) -> str:
    """The one thing that a name may mean and that some rule places, "" if there is none or several.

    Of "a pin" that may be one of no clause it is asked which.
    """
    placed = [e.id for e in piece.entries if any(True for _ in _placing(e.id, lookup))]
    kin = {*lookup.broader(placed[0]), *lookup.narrower(placed[0])} if len(placed) == 1 else set[str]()
    return placed[0] if kin.issuperset(entry.id for entry in piece.entries) and placed else ""


def _places_kinds(item: str, lookup: Lookup) -> bool:
    """Whether rules place the kinds of a thing, each for itself: of the class no one place is asked."""
    kinds = {*lookup.narrower(item)} - {item}
    return any(r.aspect == "position" for r in lookup.rules_on(kinds))


def _placing(item: str, lookup: Lookup) -> Iterator[Rule]:
    above = set(lookup.broader(item))
    return (r for r in lookup.rules_on(above) if r.aspect == "position" and r.value.positions)


def _in_force(rule: Rule, case: Case) -> bool:
    return is_in_force(rule, case.as_of)


class _Words:
    """What is found of a place, word by word."""

    def __init__(self, found: Understood, datums: set[str]) -> None:
        self.found, self.datums = found, datums
        self.things: list[tuple[str, frozenset[str], tuple[str, ...]]] = []
        self.sides: set[str] = set()
        self.body: set[str] = set()
        self.datum: set[str] = set()
        self.at: set[str] = set()
        self.leads: set[str] = set()
        self.measure: Measure | None = None
        self.lead = ""
        self.worn: list[str] = []
        self.far = any(piece.tag == "measure" for piece in found.pieces)
        self.starts: list[int] = []
        self.ends: list[int] = []

    def take(self, piece: Piece, before: bool) -> bool:
        """Take a piece, `before` the thing or after it; False if it says anything else."""
        if piece.tag == "with" and self.found.tokens[piece.first].low == "with":
            self.lead = "with"
            return True
        if piece.tag == "item" and self.lead == "with":
            self.worn.append(piece.arg)  # it is said what else is worn
            return not before
        if piece.tag == "item" and _is_said_worn(self.found, piece):
            self.worn.append(piece.arg)
            return True
        if piece.tag in ("measure", "item", "items"):
            self.starts.append(piece.first)
            self.ends.append(piece.last)
        if piece.tag == "measure" and piece.measure is not None:
            if _is_of_the_thing(self.found, piece):
                return False
            first, self.measure = self.measure is None, piece.measure
            return first
        if piece.tag in ("item", "items"):
            words = tuple(token.key for token in self.found.tokens[piece.first : piece.last])
            self.things.append((self.lead, frozenset(entry.id for entry in piece.entries), words))
            self.datum.update(key for key in words if key in self.datums)
            return not before
        return all(self.word(place, piece.tag) for place in range(piece.first, piece.last))

    def word(self, place: int, tag: str) -> bool:
        token = self.found.tokens[place]
        kind = _lead(token.low) if tag not in ("fact", "on date") else ""
        if token.low in _SIDES and _is_side(self.found, place):
            self.sides.add(token.low)
        elif kind:
            self.lead = kind
            self.leads.add(kind)
            self.starts.append(place)  # a place begins with it and does not end with it
            return True
        elif token.low in _BODY and tag != "fact":
            self.body.add(token.low)
        elif token.low == "of" and tag != "fact":
            self.lead = "on"
            return True
        elif token.key in self.datums and tag not in ("fact", "det", "filler"):
            self.datum.add(token.key)
            self.at.update([token.key] if self.lead == "on" and token.low not in _WHICH else [])
            self.ends.append(place + 1)  # "the upper edge is 2 in above ...": the place begins later
            return True
        elif token.low != "side":
            light = token.low in _LIGHT or token.low in _SIDES or stands_done(token.low)
            return light or tag in _PLAIN or (tag == "have" and self.far)
        self.starts.append(place)
        self.ends.append(place + 1)
        return True


def _is_of_the_thing(found: Understood, piece: Piece) -> bool:
    """Whether a measure says how big the thing is, not where it goes: "a feather of 13 cm", "6 cm high"."""
    before = found.tokens[piece.first - 1].low if piece.first else ""
    after = found.tokens[piece.last].low if piece.last < len(found.tokens) else ""
    return before == "of" or after in _SIZED


def _told(found: Understood, subject: Piece, rules: Sequence[Rule]) -> _Told | None:
    """What the words beside the subject say of a place; None if one of them says anything else."""
    words = _Words(found, {key for rule in rules for p in rule.value.positions for key in _datum_keys(p)})
    for piece in found.pieces:
        worn = piece.tag == "act" and piece.arg in ("wear", "use")
        if piece is subject and not words.ends:
            words.starts.clear()  # "on" of a day before it leads to no place
        if piece is not subject and not worn and not words.take(piece, piece.first < subject.first):
            return None
    if len(words.sides) > 1 or not (words.things or words.sides or words.datum or words.body):
        return None
    if not (words.leads or words.measure):
        return None
    return _Told(
        tuple(words.things),
        "".join(words.sides),
        frozenset(words.body),
        frozenset(words.datum),
        frozenset(words.at),
        frozenset(words.leads),
        words.measure,
        tuple(words.worn),
        min(words.starts),
        max(words.ends),
    )


def _is_said_worn(found: Understood, piece: Piece) -> bool:
    """Whether a thing is told as worn, not as where another goes: "I've got the sash on", "sash worn"."""
    lows = [token.low for token in found.tokens]
    before = piece.first - 1
    while before >= 0 and lows[before] in _DETERMINERS:
        before -= 1
    after = lows[piece.last] if piece.last < len(lows) else ""
    ends = "".join(lows[piece.last + 1 : piece.last + 2]) in ("", ",")
    return (before >= 0 and lows[before] in _HAVING) or after == "worn" or (after == "on" and ends)


def _is_side(found: Understood, place: int) -> bool:
    """ "On the right", not "is that right"."""
    after = found.tokens[place + 1].low if place + 1 < len(found.tokens) else ""
    before = found.tokens[place - 1].low if place else ""
    follows = any(p.first == place + 1 and p.tag in ("item", "items") for p in found.pieces)
    return follows or after in _SIDED or before in ("the", "my", "his", "her", "on")


def _lead(low: str) -> str:
    for name, words in _LEADS.items():
        if low in words:
            return name
    return ""


_LEADS: Mapping[str, frozenset[str]] = MappingProxyType(
    {"above": _ABOVE, "below": _BELOW, "beside": _BESIDE, "around": _AROUND, "on": _ON, "off": _FROM}
)


def _datum_keys(position: Position) -> Iterator[str]:
    datum = position.offset.datum if position.offset is not None else None
    for text in (datum.measured_from, datum.measured_to) if datum is not None else ():
        yield from (token.key for token in tokenize(text or "") if token.low not in ("the", "of", "a", "and"))


def _fits(position: Position, told: _Told, text: set[str], lookup: Lookup) -> bool | None:
    """Whether the words may be of a place; None where its distance is "about" and cannot be judged."""
    if told.side and position.side not in (None, told.side, "both"):
        return False
    named = text | _label_keys(position, lookup)
    if any(named.isdisjoint((word, *_BODY[word])) for word in told.body):
        return False
    keys = set(_datum_keys(position))
    bare = not (told.side or told.body or told.datum)  # "on the shell", of what is "on the left breast"
    if (bare or position.feature is not None) and any(
        _is_some(one[1], position.on, lookup) for one in told.things
    ):
        return None
    for lead, entries, words in told.things:
        if not _is_at(position, lead, entries, lookup) and not (told.measure and set(words) <= keys):
            return False
    if told.measure is None:
        away = position.offset is not None and not _within(_NOWHERE, position.offset)
        if away and told.at & keys - _label_keys(position, lookup):
            return False  # "at the throat", of what goes 9 in below it
        return told.datum <= keys | _label_keys(position, lookup)
    if not told.datum <= keys | _label_keys(position, lookup) or not _same_way(told, position, text):
        return False
    offset = position.offset
    if offset is None:
        return True
    if offset.about and offset.tolerance is None:
        return None
    return _within(as_first(told.measure.interval, told.measure.unit, offset), offset)


def _label_keys(position: Position, lookup: Lookup) -> set[str]:
    places = [place for place in (position.on, position.feature) if place is not None]
    return {token.key for place in places for token in tokenize(lookup.items[place].label)}


def _is_at(position: Position, lead: str, entries: frozenset[str], lookup: Lookup) -> bool:
    """Whether a thing named after a word such as "above" is where the position is, and so."""
    feature = position.feature or position.on
    if entries & _near(feature, lookup):
        if lead in ("above", "below", "beside", "around"):
            return lead in position.relation or (lead == "around" and position.relation.startswith("on"))
        far = any(
            word in position.relation for word in ("above", "below", "beside", "board", "left", "right")
        )
        return not far or lead == "off"
    owners = {position.on, lookup.items[feature].part_of or position.on}
    around = {near for owner in owners for near in _near(owner, lookup)}
    carriers = {p.on for rule in _placing(position.on, lookup) for p in rule.value.positions}
    return bool(entries & (around | carriers)) and lead in ("on", "around", "")


def _is_some(entries: frozenset[str], whole: str, lookup: Lookup) -> bool:
    """Whether things are garments, told of a feature of any garment: not every one has a breast pocket."""
    of_all = set(lookup.items[whole].broader) <= {"anything"}
    return of_all and whole not in entries and not entries.isdisjoint(lookup.narrower(whole))


def _near(item: str, lookup: Lookup) -> set[str]:
    return {*lookup.broader(item), *lookup.narrower(item)}


def _same_way(told: _Told, position: Position, text: set[str]) -> bool:
    """Whether "above" is not said of what the place or its clause has "below", nor the other way round."""
    for here, there, word in (("above", "below", _BELOW), ("below", "above", _ABOVE)):
        other = there in position.relation or (not text.isdisjoint(word) and here not in text)
        if other and here in told.leads and here not in position.relation:
            return False
    return True


def _within(claimed: Interval, offset: Measure) -> bool:
    slack = offset.tolerance or Fraction(0)
    low, high = offset.interval.low, offset.interval.high
    under = low is not None and (claimed.low is None or claimed.low < low - slack)
    over = high is not None and (claimed.high is None or claimed.high > high + slack)
    return not under and not over


def _is_of_a_place(told: _Told, rules: Sequence[Rule]) -> bool:
    """Whether the words, but for side and distance, are of some place of the thing, or of another thing."""
    if told.things or told.side or told.body:
        return True
    keys = {key for rule in rules for p in rule.value.positions for key in _datum_keys(p)}
    return bool(told.datum) and told.datum <= keys


def _garments(told: _Told, lookup: Lookup) -> Iterator[str]:
    """The garments named, on which some rule may put something: they are worn."""
    yield from told.worn
    for lead, entries, _ in told.things:
        if lead in ("on", "") and len(entries) == 1:
            (name,) = entries
            if "feature" not in lookup.broader(name) and lookup.items[name].part_of is None:
                yield name


def _words(found: Understood, told: _Told) -> str:
    """The place as it was told, a length with what it is in the other unit."""
    tokens = found.tokens
    words = found.text[tokens[told.first].start : tokens[told.last - 1].end]
    measure = told.measure
    piece = next((p for p in found.pieces if p.tag == "measure" and p.measure is measure), None)
    if measure is not None and piece is not None and measure.unit == "[in_i]":
        typed = found.text[tokens[piece.first].start : tokens[piece.last - 1].end]
        words = (
            words
            if "(" in typed or f"{typed} (" in words
            else words.replace(typed, f"{typed} ({format_interval(measure.interval, 'mm')})", 1)
        )
    return visible("-".join(words.split()))
