"""Comparisons: "what differs in boat rig compared with watch rig", "what has changed since 1 March 2025".

The two sides are stretches of words about the same facts with other values, joined by "and", "with" or the
like. Each side is read with all the other words as if it were the whole question.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence
from operator import itemgetter

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading, Span
from kb.model.records import Case, Edition
from kb.model.values import NO, YES, ValueSet
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.gate import unexplained
from kb.reader.meaning.listed import worn_as_rig
from kb.reader.meaning.query import merge_case, narrowed
from kb.reader.meaning.roles import find_roles
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.months import with_months
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece
from kb.reader.words.tokens import Token
from kb.text import visible
from kb.wording import say_query

Pieces = tuple[Piece, ...]
Fold = Callable[[Pieces], Pieces]

_JOINS = frozenset({"and", "or", "with", "compare", "to", "range", "comma", "than", "and how about"})
_WITHIN = tag_set("""
    name, fact, det, poss, in, on, of, for, with, without, no, not, upward, downward, above, below, at least
    at most, range, number, measure, on date, date, hold, have, and, or, but, act, alone, when, if, by, comma
    unknown, book, to, joined, person, self, grant
""")
_CLOSING = tag_set("name, fact, on date, measure, number, upward, downward, alone, unknown, joined, grant")
_LIGHT = frozenset({"det", "poss", "for", "between", "on", "comma", "in", "and", "or", "filler"})
_LONGEST = 9
_ID = itemgetter(0)
_ONE_DAY = datetime.timedelta(days=1)


class Side(msgspec.Struct, frozen=True, kw_only=True):
    """What one side says for itself: facts and a day, or an item."""

    facts: tuple[tuple[str, ValueSet], ...] = ()
    day: datetime.date | None = None
    items: tuple[str, ...] = ()
    alone: bool = False

    def matches(self, other: Side) -> bool:
        """Whether two sides speak of the same things and say something different of them."""
        named = [fact for fact, _ in self.facts] == [fact for fact, _ in other.facts]
        dated = (self.day is None) == (other.day is None)
        return named and dated and len(self.items) == len(other.items) and self != other


class Words(msgspec.Struct, frozen=True):
    """The question: unfolded pieces, words, and how pieces are folded and linked."""

    pieces: Pieces
    tokens: tuple[Token, ...]
    fold: Fold
    lookup: Lookup

    def low(self, index: int) -> str:
        piece = self.pieces[index]
        return " ".join(token.low for token in self.tokens[piece.first : piece.last])


def comparison(
    text: str, words: Words, spans: tuple[Span, ...], frame: Frame, case: Case, previous: Reading | None
) -> Reading | None:
    """The reading of a comparison of two cases; None where none are named (two items, or nothing)."""
    before = previous.query if previous is not None else None
    outcome = _read(words, frame, case, before)
    if isinstance(outcome, Query):
        kept = tuple(fact for fact, _ in case.facts if fact in dict(outcome.case.facts))
        said = say_query(words.lookup, outcome)
        return Reading(question=text, text=said, query=outcome, spans=spans, carried=kept)
    return None if outcome is None else Reading(question=text, spans=spans, abstain=outcome)


def _read(words: Words, frame: Frame, case: Case, before: Query | None) -> Query | Abstain | None:
    words = msgspec.structs.replace(words, pieces=with_months(words.pieces, words.tokens))
    words = _with_years(words)
    found = _two_sides(words) or _with_and_without(words) or _two_editions(words)
    found = found or _one_edition(words, case) or _one_day(words, case)
    if found is None:
        return None
    used, (left, right) = found
    rest = words.fold(tuple(piece for index, piece in enumerate(words.pieces) if index not in used))
    frame = msgspec.structs.replace(
        frame, used=frozenset(i for i, p in enumerate(rest) if p.tag == "compare")
    )
    roles = find_roles(rest, words.tokens, frame, words.lookup)
    strange = unexplained(rest, frame, roles)
    if strange:
        return _not_understood(words, rest, strange)
    return _query(roles, (left, right), case, words.lookup, before)


def _not_understood(words: Words, pieces: Pieces, strange: Sequence[int]) -> Abstain:
    named = tuple(
        " ".join(token.text for token in words.tokens[pieces[i].first : pieces[i].last]) for i in strange
    )
    shown = ", ".join(f'"{visible(name)}"' for name in named)
    return Abstain(reason=f"Not understood: {shown}.", words=named)


def _query(
    roles: Roles, sides: tuple[Side, Side], case: Case, lookup: Lookup, before: Query | None
) -> Query | Abstain:
    if roles.clashing or roles.value is not None or roles.other_acts:
        return Abstain(reason="A comparison is of what the rules say; leave out the value or the second act.")
    items = tuple(dict.fromkeys(e.id for p in roles.asked for e in p.entries if e.kind == "item"))
    if not items and before is not None and _points_back(roles):
        items = before.items
    worn = {f"worn:{p.arg}": YES for p in roles.worn if p.arg} | {f"worn:{p.arg}": NO for p in roles.unworn}
    if any(piece.tag == "items" for piece in (*roles.worn, *roles.unworn)):
        return Abstain(reason="It is not clear which item is worn.")
    cases = []
    for side in sides:
        facts = {**narrowed(case, {**roles.facts, **worn, **dict(side.facts)}, lookup)}
        alone = roles.alone or side.alone
        cases.append(merge_case(case, facts, side.day or roles.as_of, alone, lookup))
    if cases[0] == cases[1]:
        return Abstain(reason="Both sides of the comparison are the same.")
    aspect = roles.value_aspect or roles.aspect or "wear"
    return Query(kind="compare", items=items, aspect=aspect, case=cases[0], other=cases[1])


def _points_back(roles: Roles) -> bool:
    return not roles.asked and not roles.body


def _with_years(words: Words) -> Words:
    """A year by itself is its first day, unless it names an edition."""
    if _edition_places(words):
        return words
    pieces = []
    for index, piece in enumerate(words.pieces):
        said = words.low(index)
        if (
            piece.tag in ("unknown", "number")
            and len(said) == 4
            and said.isdecimal()
            and said[:2] in ("19", "20")
        ):
            piece = Piece(
                first=piece.first, last=piece.last, tag="on date", date=datetime.date(int(said), 1, 1)
            )
        pieces.append(piece)
    return msgspec.structs.replace(words, pieces=tuple(pieces))


# -- where the sides are --------------------------------------------------------------------------------

Found = tuple[frozenset[int], tuple[Side, Side]] | None


def _side(words: Words, first: int, last: int) -> Side | None:
    """What the pieces from `first` to `last` say by themselves, if all of them are understood."""
    frame = Frame(kind="list")
    folded = words.fold(words.pieces[first:last])
    roles = find_roles(folded, words.tokens, frame, words.lookup)
    left = [i for i in unexplained(folded, frame, roles) if folded[i].tag not in ("between", "date")]
    if left or roles.clashing or roles.value is not None or roles.clause_number or roles.book:
        return None
    if any(piece.tag == "items" for piece in (*roles.asked, *roles.worn, *roles.unworn)):
        return None
    worn = {f"worn:{p.arg}": YES for p in roles.worn} | {f"worn:{p.arg}": NO for p in roles.unworn}
    items = tuple(p.arg for p in roles.asked)
    rig = worn_as_rig(items, words.lookup)  # what is worn in it, not when it is worn itself
    facts = tuple(sorted({**roles.facts, **worn, **rig}.items(), key=_ID))
    side = Side(facts=facts, day=roles.as_of, items=() if rig else items, alone=roles.alone)
    return side if facts or side.day or side.items or side.alone else None


def _two_sides(words: Words) -> Found:
    """Two stretches beside a joining word that speak of the same facts; "compared with" joins first."""
    joins = [i for i, p in enumerate(words.pieces) if p.tag in _JOINS and 0 < i < len(words.pieces) - 1]
    known: dict[tuple[int, int], Side | None] = {}

    def side(first: int, last: int) -> Side | None:
        if (first, last) not in known:
            known[first, last] = _side(words, first, last)
        return known[first, last]

    for chosen in ([i for i in joins if words.pieces[i].tag == "compare"], joins):
        found = [pair for join in chosen for pair in _pairs(words, join, side)]
        if found:
            (start, end), pair = max(found, key=lambda one: (len(one[1][0].facts), one[0][1] - one[0][0]))
            lead = {start - 1} if start and words.pieces[start - 1].tag == "between" else set()
            return frozenset({*range(start, end + 1), *lead}), pair
    return None


def _pairs(
    words: Words, join: int, side: Callable[[int, int], Side | None]
) -> list[tuple[tuple[int, int], tuple[Side, Side]]]:
    """The stretches before and after a joining word that can stand beside each other."""
    starts = _stretch(words, range(join - 1, max(join - _LONGEST, 0) - 1, -1))
    ends = _stretch(words, range(join + 1, min(join + _LONGEST, len(words.pieces))))
    if not starts or not ends or words.pieces[starts[0]].tag not in _CLOSING:
        return []
    closing = [end for end in ends if words.pieces[end].tag in _CLOSING]
    found = []
    for start in starts:
        left = side(start, join)
        if left is None or left.items:
            continue
        for end in closing:
            right = side(join + 1, end + 1)
            between = words.pieces[join].tag == "compare" or words.low(start - 1).startswith("between")
            if right is not None and (apart := _one_or_other(left, right, between, words.lookup)):
                found.append(((start, end), apart))
            elif right is not None and left.matches(right):
                found.append(((start, end), (left, right)))
    return found


def _one_or_other(left: Side, right: Side, between: bool, lookup: Lookup) -> tuple[Side, Side] | None:
    """ "A medical and a religious waiver": whoever has the one has not the other.

    "Between the ice and parade": where one is and what one does.
    """
    if len(left.facts) != 1 or len(right.facts) != 1 or left.day or right.day or left.items or right.items:
        return None
    (one, had), (other, having) = left.facts[0], right.facts[0]
    if between and one != other and lookup.facts[one].family == lookup.facts[other].family == "situation":
        return left, right
    held = had == having == YES and lookup.facts[one].kind == lookup.facts[other].kind == "yes_no"
    if one == other or not held or lookup.facts[one].family != lookup.facts[other].family:
        return None
    return _having(one, other), _having(other, one)


def _having(one: str, other: str) -> Side:
    return Side(facts=tuple(sorted(((one, YES), (other, NO)), key=_ID)))


def _stretch(words: Words, places: range) -> list[int]:
    """The places up to the first piece that no side can hold."""
    found: list[int] = []
    for place in places:
        if words.pieces[place].tag not in _WITHIN:
            break
        found.append(place)
    return found


def _with_and_without(words: Words) -> Found:
    """ "With and without a medical waiver", "with or without the storm coat"."""
    tags = [piece.tag for piece in words.pieces]
    for index in range(len(tags) - 3):
        first, last = tags[index], tags[index + 2]
        if tags[index + 1] not in ("and", "or") or {first, last} != {"with", "without"}:
            continue
        for end in range(len(tags), index + 3, -1):
            held = words.pieces[index + 3 : end]
            if any(piece.tag not in _WITHIN for piece in held):
                continue
            sides = [_held(words, at, held) for at in (index, index + 2)]
            if sides[0] is not None and sides[1] is not None and sides[0].matches(sides[1]):
                return frozenset(range(index, end)), (sides[0], sides[1])
    return None


def _held(words: Words, at: int, held: Pieces) -> Side | None:
    joined = msgspec.structs.replace(words, pieces=(words.pieces[at], *held))
    return _side(joined, 0, len(joined.pieces))


def _one_day(words: Words, case: Case) -> Found:
    """ "Since 1 March 2025": that day and that of the question; "on 1 March 2025": the day before and it."""
    places = [i for i, piece in enumerate(words.pieces) if piece.tag == "on date" and piece.date is not None]
    if len(places) != 1:
        return None
    (place,) = places
    day = words.pieces[place].date
    assert day is not None, "chosen above"
    lead = words.low(place - 1) if place else ""
    used = {place}
    if lead in ("on", "of", "from", "with effect from", "effective") and place:
        pair = (day - _ONE_DAY, day)
        used.add(place - 1)
    elif lead in ("since", "after", "starting", "before", "until") and place:
        pair = (day, case.as_of)
        used.add(place - 1)
    elif lead.endswith("before and after"):
        pair = (day - _ONE_DAY, day)
    else:
        pair = (day, case.as_of)
    for index in range(place - 2, place - 4, -1):  # "before and after"
        if index >= 0 and words.low(index) in ("before", "and") and lead == "after":
            used.add(index)
            pair = (day - _ONE_DAY, day)
    if pair[0] == pair[1]:
        return None
    return frozenset(used), (Side(day=pair[0]), Side(day=pair[1]))


# -- editions -------------------------------------------------------------------------------------------

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_EDITION_WORDS = frozenset({"edition", "editions", "version", "versions", "issue", "issues"})
_SINCE = frozenset(
    {"since", "against", "under", "than", "compared with", "compared to", "versus", "vs", "with"}
)
_OLD = frozenset({"old", "previous", "last", "former", "earlier"})
_NEW = frozenset({"new", "current", "latest", "present"})


def _edition_places(words: Words) -> list[int]:
    return [i for i in range(len(words.pieces)) if not _EDITION_WORDS.isdisjoint(words.low(i).split())]


def _two_editions(words: Words) -> Found:
    """ "Between the 2019 and the 2024 edition": the last day of the earlier, the first of the later."""
    places = _edition_places(words)
    if not places:
        return None
    for book in _books(words):
        editions = sorted(
            (e for e in words.lookup.base.editions if e.book == book), key=lambda edition: edition.valid_from
        )
        named = {
            i: e for i in range(len(words.pieces)) if (e := _edition(words.low(i), editions)) is not None
        }
        chosen = sorted(
            {edition.id: edition for edition in named.values()}.values(), key=lambda e: e.valid_from
        )
        if len(chosen) == 2:
            early, late = chosen
            last = early.valid_until or late.valid_from
            used = {*named, *places, *_book_places(words)}
            low, high = min(named), max([*named, *places])
            used |= {i for i in range(low, high) if words.pieces[i].tag in _LIGHT}
            used |= {i for i in (low - 1, low - 2) if i >= 0 and words.pieces[i].tag in _LIGHT}
            days = (min(last, late.valid_from) - _ONE_DAY, late.valid_from)
            return frozenset(used), (Side(day=days[0]), Side(day=days[1]))
    return None


def _one_edition(words: Words, case: Case) -> Found:
    """ "Since the first edition", "against the 2019 Order": that edition's last day and the day asked for."""
    places = {*_edition_places(words), *_book_places(words)}
    for book in _books(words) if places else ():
        editions = sorted(
            (e for e in words.lookup.base.editions if e.book == book), key=lambda e: e.valid_from
        )
        named = {
            i: e for i in range(len(words.pieces)) if (e := _edition(words.low(i), editions)) is not None
        }
        ended = {e.valid_until for e in named.values()} - {None, case.as_of}
        if len({e.id for e in named.values()}) != 1 or len(ended) != 1:
            continue
        low, high = min(*named, *places), max(*named, *places)
        while low and (words.pieces[low - 1].tag in _LIGHT or words.low(low - 1) in _SINCE):
            low -= 1
        (until,) = ended
        assert until is not None, "left out above"
        return frozenset(range(low, high + 1)), (Side(day=until - _ONE_DAY), Side(day=case.as_of))
    return None


def _book_places(words: Words) -> list[int]:
    return [
        i for i, p in enumerate(words.pieces) if {"book", "edition"} & {entry.kind for entry in p.entries}
    ]


def _books(words: Words) -> tuple[str, ...]:
    """The books named, else those that have more than one edition."""
    ids = {e.id: e.book for e in words.lookup.base.editions}
    entries = [entry.id for piece in words.pieces for entry in piece.entries if entry.kind == "book"]
    named = dict.fromkeys(ids.get(entry, entry) for entry in entries)
    every = [edition.book for edition in words.lookup.base.editions]
    return tuple(named) or tuple(dict.fromkeys(book for book in every if every.count(book) > 1))


def _edition(said: str, editions: Sequence[Edition]) -> Edition | None:
    """The edition that a word names: its name ("2019"), its year, its number among them, old or new."""
    parts = said.split()
    for place, edition in enumerate(editions):
        name = edition.id.removeprefix(f"{edition.book}/").casefold()
        if name in parts or str(edition.valid_from.year) in parts:
            return edition
        if place < len(_ORDINALS) and _ORDINALS[place] in parts:
            return edition
    if not _OLD.isdisjoint(parts) and len(editions) > 1:
        return editions[-2]
    return editions[-1] if not _NEW.isdisjoint(parts) else None
