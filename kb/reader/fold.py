"""Names of values become facts, and expressions over them ("K5 and above", "not ashore") one fact each."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from kb.measures import MeasureError, parse_dates, same_dimension
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import Choices, ValueSet, intersect, is_empty, ranges, unite
from kb.reader.english import NUMBER_WORDS
from kb.reader.lexicon import Entry
from kb.reader.pieces import Piece
from kb.reader.tokens import Token

Pieces = tuple[Piece, ...]
_LIGHT = frozenset({"det", "poss"})
_LINKS = frozenset({"comma", "in", "on", "for", "be", "of", "filler", "det", "poss", "particle"})


def fold(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """All foldings in order; words that belong to an expression become part of its piece."""
    found = _numbered_grades(pieces, tokens, lookup)
    found = tuple(_as_fact(piece, lookup) for piece in found)
    found = _by_company(found, lookup)
    found = _numbers(found, tokens)
    found = _quantities(found, tokens, lookup)
    found = _dates(found, tokens, lookup)
    found = _compare(found, tokens, lookup)
    found = _absorb_fact_names(found, lookup)
    found = _granted(found, lookup)
    found = _except(found, lookup)
    found = _unite(found)
    return _negate(found, tokens, lookup)


def closure(lookup: Lookup, fact: str, value: str) -> frozenset[str]:
    """A value and everything narrower."""
    parents = {v.id: v.within for v in lookup.facts[fact].values}

    def inside(candidate: str | None) -> bool:
        while candidate is not None and candidate != value:
            candidate = parents.get(candidate)
        return candidate == value

    return frozenset(v for v in parents if inside(v)) or frozenset({value})


def entry_values(entry: Entry, lookup: Lookup) -> Choices:
    """The values that a value or group stands for."""
    fact = lookup.facts[entry.owner]
    if entry.kind == "group":
        members = lookup.groups[entry.id].members
        return Choices(frozenset().union(*(closure(lookup, fact.id, member) for member in members)))
    if fact.family == "authorisation":
        return Choices(frozenset(v.id for v in fact.values if v.id in lookup.authorities))
    return Choices(closure(lookup, fact.id, entry.id))


def _fact_piece(piece: Piece, fact: str, values: ValueSet, first: int, last: int) -> Piece:
    return msgspec.structs.replace(piece, first=first, last=last, tag="fact", fact=fact, values=values)


def _as_fact(piece: Piece, lookup: Lookup) -> Piece:
    """A name of nothing but values of one fact becomes that fact."""
    if piece.tag != "name" or not all(entry.kind in ("value", "group") for entry in piece.entries):
        return piece
    owners = {entry.owner for entry in piece.entries}
    sets = {entry_values(entry, lookup) for entry in piece.entries}
    if len(owners) > 1 or len(sets) > 1:
        return piece
    return _fact_piece(piece, owners.pop(), sets.pop(), piece.first, piece.last)


def _numbered_grades(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "a five" where one grade's code alone ends in that number."""
    grade = next((fact for fact in lookup.base.facts if fact.family == "grade"), None)
    if grade is None:
        return pieces
    found = list(pieces)
    for index, piece in enumerate(found):
        if piece.tag != "unknown":
            continue
        word = tokens[piece.first]
        number = NUMBER_WORDS.get(word.key, int(word.key) if word.key.isdecimal() and len(word.key) < 3 else 0)
        plural = word.low != word.key
        if not number or not (plural or (index and found[index - 1].tag == "det")):
            continue
        codes = [value.id for value in grade.values if value.id.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ-") == str(number)]
        if len(codes) == 1:
            found[index] = _fact_piece(piece, grade.id, Choices(frozenset(codes)), piece.first, piece.last)
    return tuple(found)


_JOINS = frozenset({"and", "or", "comma", "range", "to"})


def _by_company(pieces: Pieces, lookup: Lookup) -> Pieces:
    """A word that is a value of several facts belongs to the fact of the value it is joined to."""
    found = list(pieces)
    named = {named_fact(piece) for piece in pieces}
    for index, piece in enumerate(found):
        values = [entry for entry in piece.entries if entry.kind in ("value", "group")] if piece.tag == "name" else []
        if len({entry.owner for entry in values}) < 2 and not any(e.kind == "item" for e in piece.entries):
            continue
        company = {
            found[place].fact
            for step in (-1, 1)
            for place in (index + 2 * step,)
            if 0 <= place < len(found) and found[index + step].tag in _JOINS and found[place].tag == "fact"
        } or named
        fitting = [entry for entry in values if entry.owner in company]
        if len({entry_values(entry, lookup) for entry in fitting}) == 1:
            entry = fitting[0]
            found[index] = _fact_piece(piece, entry.owner, entry_values(entry, lookup), piece.first, piece.last)
    return tuple(found)


def _numbers(pieces: Pieces, tokens: tuple[Token, ...]) -> Pieces:
    """Bare numbers, in figures or words."""
    return tuple(
        msgspec.structs.replace(piece, tag="number", arg=str(number))
        if piece.tag == "unknown" and (number := _number(tokens[piece.first].low)) is not None
        else piece
        for piece in pieces
    )


def _number(word: str) -> int | None:
    return int(word) if word.isdecimal() and len(word) < 5 else NUMBER_WORDS.get(word)


def named_fact(piece: Piece) -> str | None:
    """The fact that a piece names by its own label ("weather")."""
    return next((entry.id for entry in piece.entries if entry.kind == "fact"), None) if piece.tag == "name" else None


def _quantities(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Measures that state a fact: of a kind that only facts have, or beside the fact's name."""
    facts = [fact for fact in lookup.base.facts if fact.kind == "quantity" and fact.unit]
    named = {named_fact(piece) for piece in pieces}
    found = list(pieces)
    for index, piece in enumerate(found):
        if piece.tag != "measure" or piece.measure is None:
            continue
        unit = piece.measure.unit
        fitting = [fact for fact in facts if same_dimension(fact.unit or "1", unit)]
        beside = [fact for fact in fitting if fact.id in named]
        chosen = beside or ([] if same_dimension(unit, "mm") else fitting)
        if len(chosen) == 1:
            values = ranges([piece.measure.interval])
            found[index] = _fact_piece(piece, chosen[0].id, values, piece.first, piece.last)
    return tuple(found)


_DATE_WORDS = frozenset({"before", "after", "since", "on", "from", "later", "earlier", "not", "or", "to", "until", "between", "and"})


def _dates(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Dates that state a fact ("awarded before 1 April 2019"); the others say for which day one asks."""
    facts = [fact for fact in lookup.base.facts if fact.kind == "date"]
    found = list(pieces)
    index = 0
    while index < len(found):
        piece = found[index]
        place = _date_name(found[:index], tokens, facts) if piece.tag == "on date" else None
        if place is None or piece.date is None:
            index += 1
            continue
        at, fact = place
        last = index
        if index + 2 < len(found) and found[index + 1].tag in ("to", "range", "and") and found[index + 2].tag == "on date":
            last = index + 2
        first_word, last_word = found[at].last, found[last].last
        words = [_date_text(found, tokens, place) for place in range(first_word, last_word)]
        try:
            values = parse_dates(" ".join(word for word in words if word))
        except MeasureError:
            index += 1
            continue
        found[at : last + 1] = [_fact_piece(piece, fact, values, found[at].first, last_word)]
        index = at + 1
    return tuple(found)


def _date_text(pieces: Sequence[Piece], tokens: tuple[Token, ...], place: int) -> str:
    for piece in pieces:
        if piece.first <= place < piece.last and piece.date is not None:
            return piece.date.isoformat() if place == piece.first else ""
    low = tokens[place].low
    return low if low in _DATE_WORDS else ""


def _date_name(before: Sequence[Piece], tokens: tuple[Token, ...], facts: Sequence[Fact]) -> tuple[int, str] | None:
    """Where a date fact is named before the date, and which: by its label, or by a word akin to it."""
    for index in range(len(before) - 1, max(len(before) - 5, -1), -1):
        piece = before[index]
        name = named_fact(piece)
        if name and any(fact.id == name for fact in facts):
            return index, name
        if piece.tag == "hold":
            stem = tokens[piece.last - 1].low[:5]
            akin = [f for f in facts if any(w.startswith(stem) for w in (*f.label.lower().split(), *f.id.split("-")))]
            if len(akin) == 1:
                return index, akin[0].id
    return None


def _absorb_fact_names(pieces: Pieces, lookup: Lookup) -> Pieces:
    """ "weather is foul", "a temperature of 12 °C": the fact's own name joins its value."""
    found = list(pieces)
    index = 0
    while index < len(found):
        name = named_fact(found[index])
        if name is not None:
            after = index + 1
            while after < len(found) and found[after].tag in _LINKS | {"above", "below", "at least", "at most"}:
                after += 1
            if after < len(found) and found[after].tag == "fact" and found[after].fact == name:
                if lookup.facts[name].kind == "quantity" or all(p.tag in _LINKS for p in found[index:after][1:]):
                    fact = found[after]
                    found[index : after + 1] = [_widen(fact, found[index].first, fact.last)]
                continue_at = index + 1
                index = continue_at
                continue
            if index and found[index - 1].tag == "fact" and found[index - 1].fact == name:
                found[index - 1 : index + 1] = [_widen(found[index - 1], found[index - 1].first, found[index].last)]
                continue
        index += 1
    return tuple(found)


def _widen(piece: Piece, first: int, last: int) -> Piece:
    return msgspec.structs.replace(piece, first=first, last=last)


def _ordered(piece: Piece, lookup: Lookup) -> tuple[str, ...]:
    """The order of a finite scale, empty for other facts."""
    if piece.tag != "fact" or not isinstance(piece.values, Choices):
        return ()
    fact = lookup.facts[piece.fact]
    return lookup.order(piece.fact) if fact.kind == "scale" and fact.family != "authorisation" else ()


def _compare(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "K5 and above", "below W1", "at least K2", "H1 to H3", "from K3 to K5"."""
    found = list(pieces)
    index = 0
    while index < len(found):
        order = _ordered(found[index], lookup)
        if order:
            _compare_at(found, index, order, tokens)
        index += 1
    return tuple(found)


def _span(order: Sequence[str], keep: Callable[[int], bool]) -> Choices:
    return Choices(frozenset(value for rank, value in enumerate(order) if keep(rank)))


def _compare_at(found: list[Piece], index: int, order: tuple[str, ...], tokens: tuple[Token, ...]) -> None:
    piece = found[index]
    ranks = _ranks(piece, order)
    before = index - 1
    while before >= 0 and found[before].tag in _LIGHT:
        before -= 1
    opening = found[before].tag if before >= 0 else ""
    if opening == "with" and tokens[found[before].first].low in ("under", "over"):
        opening = "below" if tokens[found[before].first].low == "under" else "above"
    after = found[index + 1].tag if index + 1 < len(found) else ""
    rules: dict[str, Callable[[int], bool]] = {
        "above": lambda rank: rank > max(ranks), "below": lambda rank: rank < min(ranks),
        "at least": lambda rank: rank >= min(ranks), "at most": lambda rank: rank <= max(ranks),
    }  # fmt: skip
    if opening in rules:
        found[before : index + 1] = [_fact_piece(piece, piece.fact, _span(order, rules[opening]), found[before].first, piece.last)]
    elif after in ("upward", "downward"):
        rule = rules["at least" if after == "upward" else "at most"]
        found[index : index + 2] = [_fact_piece(piece, piece.fact, _span(order, rule), piece.first, found[index + 1].last)]
    elif after in ("to", "range") or (after == "and" and opening == "between"):
        other = index + 2
        while other < len(found) and found[other].tag in _LIGHT:
            other += 1
        if other < len(found) and found[other].tag == "fact" and found[other].fact == piece.fact:
            high = _ranks(found[other], order)
            start = before if opening == "between" else index
            span = _span(order, lambda rank: min(ranks) <= rank <= max(high))
            if span.members:
                found[start : other + 1] = [_fact_piece(piece, piece.fact, span, found[start].first, found[other].last)]


def _ranks(piece: Piece, order: Sequence[str]) -> list[int]:
    members = piece.values.members if isinstance(piece.values, Choices) else frozenset()
    return [rank for rank, value in enumerate(order) if value in members] or [0]


_GRANTING = frozenset({"grant", "by", "have", "be", "not", "no", "det", "upward", "joined"})


def _granted(pieces: Pieces, lookup: Lookup) -> Pieces:
    """Who has granted an authorisation, said before or after it; the words of granting join it."""
    found = list(pieces)
    for place, piece in enumerate(found):
        if piece.tag != "fact" or lookup.facts[piece.fact].family != "authorisation":
            continue
        fact = lookup.facts[piece.fact]
        grantors = _authorities(found, fact)
        first, last = place, place + 1
        while first and (found[first - 1].tag in _GRANTING or first - 1 in grantors):
            first -= 1
        while last < len(found) and (found[last].tag in _GRANTING or found[last].tag == "or" or last in grantors):
            last += 1
        if any(p.tag in ("grant", "not", "no") for p in found[first:last]):
            _join_grant(found, place, (first, last), grantors, fact, lookup)
    return tuple(found)


def _join_grant(
    found: list[Piece], place: int, reach: tuple[int, int], grantors: dict[int, frozenset[str]], fact: Fact, lookup: Lookup
) -> None:
    near = range(*reach)
    able = frozenset(v.id for v in fact.values if v.id in lookup.authorities)
    named = frozenset().union(*(grantors[i] for i in near if i in grantors)) or able
    if any(found[i].tag == "upward" for i in near):
        lowest = max(lookup.authorities[authority].rank for authority in named)
        named = frozenset(a for a in able if lookup.authorities[a].rank <= lowest)
    if any(found[i].tag in ("not", "no") for i in near):
        named = frozenset(v.id for v in fact.values) - named
    found[place] = msgspec.structs.replace(found[place], values=Choices(named))
    for index in near:
        if index != place and (found[index].tag in ("grant", "by", "upward", "not", "no") or index in grantors):
            found[index] = msgspec.structs.replace(found[index], tag="joined")


def _authorities(pieces: Sequence[Piece], fact: Fact) -> dict[int, frozenset[str]]:
    """Places of the authorities that can grant, a word that fits several only for those that can."""
    able = {value.id for value in fact.values}
    found: dict[int, frozenset[str]] = {}
    for index, piece in enumerate(pieces):
        named = {entry.id for entry in piece.entries if entry.kind == "authority"} & able
        if piece.tag == "name" and len(named) == 1:
            found[index] = frozenset(named)
    return found


def _except(pieces: Pieces, lookup: Lookup) -> Pieces:
    """ "K3 to K6 but not K5", "ashore but not in town", "everyone except officers", "any rig except boat rig"."""
    found = list(pieces)
    index = 1
    while index < len(found):
        if found[index].tag == "but":
            after = index + 1
            while after < len(found) and found[after].tag in _LINKS | {"not"}:
                after += 1
            other = found[after] if after < len(found) else None
            if other is not None and other.tag == "fact" and isinstance(other.values, Choices):
                base = _base_of(found[index - 1], other.fact, lookup)
                if base is not None:
                    removed, last = other.values, after
                    while last + 2 < len(found) and found[last + 1].tag in ("and", "or"):
                        more = found[last + 2]
                        if more.fact != other.fact or not isinstance(more.values, Choices):
                            break
                        removed, last = Choices(removed.members | more.values.members), last + 2
                    left = Choices(base.members - removed.members)
                    if left.members:
                        first = found[index - 1].first
                        found[index - 1 : last + 1] = [_fact_piece(other, other.fact, left, first, found[last].last)]
                        continue
        index += 1
    return tuple(found)


def _base_of(piece: Piece, fact: str, lookup: Lookup) -> Choices | None:
    """What an exception is taken from: values of the same fact, its name, or "everyone"."""
    if piece.tag == "fact":
        return piece.values if piece.fact == fact and isinstance(piece.values, Choices) else None
    whole = named_fact(piece) == fact or (piece.tag in ("person", "det") and lookup.facts[fact].family == "grade")
    domain = lookup.domain(fact)
    return domain if whole and isinstance(domain, Choices) else None


def _unite(pieces: Pieces) -> Pieces:
    """ "K5 or W1", "rain, snow and fog": values of one fact, joined or side by side."""
    found = list(pieces)
    index = 0
    while index + 1 < len(found):
        piece = found[index]
        after = index + 1
        joined = False
        while after < len(found) and found[after].tag in _LINKS | {"and", "or"} - {"be"}:
            joined = joined or found[after].tag in ("and", "or")
            after += 1
        other = found[after] if after < len(found) else None
        if (
            piece.tag == "fact" and other is not None and other.tag == "fact" and piece.fact == other.fact
            and piece.values and other.values and (joined or after == index + 1)
        ):  # fmt: skip
            both = intersect(piece.values, other.values)
            values = unite(piece.values, other.values) if joined or is_empty(both) else both
            found[index : after + 1] = [_fact_piece(piece, piece.fact, values, piece.first, other.last)]
            continue
        index += 1
    return tuple(found)


def _asks(pieces: Sequence[Piece], index: int) -> bool:
    """Whether a "not" belongs to the question's own verb: "can't officers", "aren't divers"."""
    if pieces[index].tag != "not" or not index:
        return False
    before = pieces[index - 1].tag
    return before in ("can", "may", "must", "should", "do", "have to") or (before == "be" and index == 1)


def complement_of(lookup: Lookup, fact: str, values: ValueSet) -> ValueSet:
    """The other values of a fact."""
    domain = lookup.domain(fact)
    if isinstance(domain, Choices) and isinstance(values, Choices):
        return Choices(domain.members - values.members)
    return values


def _negate(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "not ashore", "no longer afloat", "without a medical waiver"."""
    found = list(pieces)
    index = 0
    while index < len(found):
        piece = found[index]
        if piece.tag in ("not", "no longer", "without", "no", "unless", "neither") and not _asks(found, index):
            after = index + 1
            light = _LINKS | {"hold", "have"} if piece.tag != "not" else _LINKS - {"be"}
            while after < len(found) and found[after].tag in light:
                after += 1
            fact = found[after] if after < len(found) else None
            credential = fact is not None and fact.tag == "fact" and lookup.facts[fact.fact].kind == "yes_no"
            fits = fact is not None and fact.tag == "fact" and (piece.tag not in ("without", "no") or credential)
            if fits and fact is not None and fact.values is not None and isinstance(fact.values, Choices):
                values = complement_of(lookup, fact.fact, fact.values)
                found[index : after + 1] = [_fact_piece(fact, fact.fact, values, piece.first, fact.last)]
        index += 1
    return tuple(found)
