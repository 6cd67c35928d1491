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
_LINKS = frozenset({"in", "on", "for", "be", "of", "filler", "det", "poss", "particle"})


def fold(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """All foldings in order; words that belong to an expression become part of its piece."""
    found = _numbered_grades(pieces, tokens, lookup)
    found = tuple(_as_fact(piece, lookup) for piece in found)
    found = _quantities(found, tokens, lookup)
    found = _dates(found, tokens, lookup)
    found = _absorb_fact_names(found, lookup)
    found = _compare(found, tokens, lookup)
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


def _granted(pieces: Pieces, lookup: Lookup) -> Pieces:
    """Who has granted an authorisation; the words of granting join it."""
    places = [i for i, p in enumerate(pieces) if p.tag == "fact" and lookup.facts[p.fact].family == "authorisation"]
    if len(places) != 1:
        return pieces
    place = places[0]
    fact = lookup.facts[pieces[place].fact]
    grantors = _authorities(pieces, fact)
    words = {i for i, p in enumerate(pieces) if p.tag in ("grant", "by") or i in grantors}
    upward = [i for i in range(len(pieces)) if pieces[i].tag == "upward" and i - 1 in grantors]
    if not grantors and not any(pieces[i].tag == "grant" for i in words):
        return pieces
    values = pieces[place].values
    if grantors:
        named = frozenset().union(*grantors.values())
        if upward:
            top = max(lookup.authorities[authority].rank for authority in named)
            named = frozenset(v.id for v in fact.values if v.id in lookup.authorities and lookup.authorities[v.id].rank <= top)
        values = Choices(named)
    found = list(pieces)
    found[place] = msgspec.structs.replace(found[place], values=values)
    for index in (*words, *upward):
        if found[index].tag != "fact":
            found[index] = msgspec.structs.replace(found[index], tag="joined")
    return tuple(found)


def _authorities(pieces: Pieces, fact: Fact) -> dict[int, frozenset[str]]:
    """Places of the authorities that can grant, a word that fits several only for those that can."""
    able = {value.id for value in fact.values}
    found: dict[int, frozenset[str]] = {}
    for index, piece in enumerate(pieces):
        named = {entry.id for entry in piece.entries if entry.kind == "authority"} & able
        if piece.tag == "name" and len(named) == 1:
            found[index] = frozenset(named)
    return found


def _except(pieces: Pieces, lookup: Lookup) -> Pieces:
    """ "K3 to K6 but not K5", "ashore but not in town"."""
    found = list(pieces)
    index = 0
    while index < len(found):
        piece = found[index]
        if piece.tag == "but" and index and found[index - 1].tag == "fact":
            after = index + 1
            while after < len(found) and found[after].tag in _LINKS | {"not"}:
                after += 1
            other = found[after] if after < len(found) else None
            base = found[index - 1]
            if other is not None and other.tag == "fact" and other.fact == base.fact and base.values and other.values:
                removed = other.values
                last = after
                while last + 2 < len(found) and found[last + 1].tag in ("and", "or") and found[last + 2].fact == base.fact:
                    removed = unite(removed, found[last + 2].values or removed)
                    last += 2
                left = _minus(base.values, removed)
                if not is_empty(left):
                    found[index - 1 : last + 1] = [_fact_piece(base, base.fact, left, base.first, found[last].last)]
                    continue
        index += 1
    return tuple(found)


def _minus(values: ValueSet, removed: ValueSet) -> ValueSet:
    if isinstance(values, Choices) and isinstance(removed, Choices):
        return Choices(values.members - removed.members)
    return values


def _unite(pieces: Pieces) -> Pieces:
    """ "K5 or W1", "rain, snow and fog": values of one fact, joined or side by side."""
    found = list(pieces)
    index = 0
    while index + 1 < len(found):
        piece = found[index]
        after = index + 1
        joined = False
        while after < len(found) and found[after].tag in _LINKS | {"and", "or"}:
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
        if piece.tag in ("not", "no longer", "without", "no", "unless"):
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
