"""Names of values become facts, and expressions over them ("not ashore", "rain or snow") one fact each."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import repeat

import msgspec

from kb.model.lookup import Lookup
from kb.model.values import YES, Choices, intersect, is_empty, unite
from kb.reader.phrases.english import PHRASES
from kb.reader.pieces.around import around
from kb.reader.pieces.dimensions import named_dimensions
from kb.reader.pieces.grants import granted
from kb.reader.pieces.nicknames import things
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.places import places
from kb.reader.pieces.quantities import dates, numbers, quantities
from kb.reader.pieces.scales import base_of, by_number, compare_values, is_exception, is_one_grade
from kb.reader.pieces.shared import shared
from kb.reader.pieces.values import (
    LIGHT,
    LINKS,
    Pieces,
    as_fact,
    complement_of,
    entry_values,
    fact_piece,
    is_bounded,
    named_fact,
)
from kb.reader.pieces.whether import SAID, said_of_facts
from kb.reader.words.tokens import Token


def fold(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """All foldings in order; words that belong to an expression become part of its piece."""
    found = named_dimensions(by_number(shared(pieces, tokens, lookup), tokens, lookup), tokens, lookup)
    bounded = [is_bounded(found, index) for index in range(len(found))]
    found = tuple(map(as_fact, found, repeat(lookup), bounded))
    found = around(things(found, tokens, lookup), tokens, lookup)
    found = _owned(_only_waiver(found, tokens, lookup), tokens)
    found = _any_value(found, tokens, lookup)
    found = _by_company(found, lookup)
    found = places(found, tokens, lookup)
    found = numbers(found, tokens)
    found = quantities(found, tokens, lookup)
    found = dates(found, tokens, lookup)
    found = compare_values(found, tokens, lookup)
    found = _absorb_fact_names(found, lookup)
    found = granted(found, tokens, lookup)
    found = said_of_facts(found, tokens, lookup)
    found = _except(found, tokens, lookup)
    found = _unite(found, lookup)
    found = _absorb_fact_names(_negate(found, tokens, lookup), lookup)
    return tuple(_hyphen(piece, tokens) for piece in found)


def _hyphen(piece: Piece, tokens: tuple[Token, ...]) -> Piece:
    """A hyphen that no range took up only joins words."""
    loose = piece.tag == "range" and tokens[piece.first].low in ("-", "–", "—")
    return msgspec.structs.replace(piece, tag="comma") if loose else piece


_WITH = frozenset({"without", "no", "with", "hold", "have"})


def _only_waiver(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "Without a waiver", where the books have one."""
    waivers = [fact for fact in lookup.base.facts if fact.family == "waiver"]
    found = list(pieces)
    for index, piece in enumerate(pieces if len(waivers) == 1 else ()):
        before = index - 1
        while before >= 0 and pieces[before].tag in ("det", "poss"):
            before -= 1
        led = before >= 0 and pieces[before].tag in _WITH
        if piece.tag == "unknown" and tokens[piece.first].key == "waiver" and led:
            found[index] = fact_piece(piece, waivers[0].id, YES, piece.first, piece.last)
    return tuple(found)


_LIMBS = frozenset({"hand", "head", "arm", "leg", "foot", "face", "top"})  # "which goes on top"
_OF_A_LIMB = frozenset({"by", "left", "right", "free"})
_EACH = frozenset({"each", "either", "one", "both", "every", "same"})
_MY = frozenset({"my", "your", "his", "her", "their", "our"})


def _leads(found: Sequence[Piece], index: int) -> bool:
    """ "My hands in my pockets": whether what follows says where they are."""
    return index + 1 < len(found) and found[index + 1].tag in ("in", "on", "with", "beyond")


def _is_adjective(piece: Piece) -> bool:
    """ "The best coat": a loose word for a rig, right before an item, says what the item is like."""
    return (
        piece.tag == "fact"
        and piece.fact == "rig"
        and piece.how == "everyday"
        and piece.last - piece.first == 1
    )


def _owned(pieces: Pieces, tokens: tuple[Token, ...]) -> Pieces:
    """ "My officer's slides" says what slides they are, "on each hand" where: nobody's grade is said."""
    found = list(pieces)
    for index in range(1, len(found)):
        before = index - 1
        while before and (found[before].tag in LIGHT or tokens[found[before].first].low in _EACH):
            before -= 1
        limb = found[index].tag == "fact" and tokens[found[index].last - 1].key in _LIMBS
        after = tokens[found[index].last + 1 : found[index].last + 3]
        pocketed = any(token.key == "pocket" for token in after)
        low = tokens[found[index].first - 1].low
        alone = low in _OF_A_LIMB and found[index].last - found[index].first == 1  # "by hand", no deck hands
        led = found[before].tag == "on" or alone
        led = led or (low in _MY and (_leads(found, index) or found[before].tag in ("in", "with")))
        led = led or (pocketed and _leads(found, index))  # "are hands in pockets allowed?"
        if limb and led:
            found[index] = Piece(first=found[index].first, last=found[index].last, tag="unknown")
    for index in range(1, len(found) - 1):
        piece = found[index]
        if _is_adjective(piece) and any(entry.kind == "item" for entry in found[index + 1].entries):
            found[index] = Piece(first=piece.first, last=piece.last, tag="unknown")
            continue
        owner = piece.tag == "fact" and tokens[piece.last - 1].low.endswith(("'s", "s'"))
        item = any(entry.kind == "item" for entry in found[index + 1].entries)
        if owner and item and found[index - 1].tag == "poss":
            found[index] = Piece(first=piece.first, last=piece.last, tag="unknown")
    return tuple(found)


def _any_value(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "any weather": all values of the fact."""
    found = list(pieces)
    for index in range(len(found) - 1):
        name = named_fact(found[index + 1])
        domain = lookup.domain(name) if name else None
        if tokens[found[index].first].low == "any" and name and isinstance(domain, Choices):
            whole = fact_piece(found[index + 1], name, domain, found[index].first, found[index + 1].last)
            following = found[index + 2].tag if index + 2 < len(found) else ""
            if following != "but":
                found[index : index + 2] = [whole]
                return _any_value(tuple(found), tokens, lookup)
    return tuple(found)


_JOINS = frozenset({"and", "or", "comma", "range", "to"})


def _by_company(pieces: Pieces, lookup: Lookup) -> Pieces:
    """A word that is a value of several facts belongs to the fact of the value it is joined to."""
    found = list(pieces)
    named = {named_fact(piece) for piece in pieces}
    for index, piece in enumerate(found):
        values = (
            [entry for entry in piece.entries if entry.kind in ("value", "group")]
            if piece.tag == "name"
            else []
        )
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
            found[index] = fact_piece(
                piece, entry.owner, entry_values(entry, lookup), piece.first, piece.last
            )
    return tuple(found)


def _absorb_fact_names(pieces: Pieces, lookup: Lookup) -> Pieces:
    """ "weather is foul", "a temperature of 12 °C": the fact's own name joins its value."""
    found = list(pieces)
    index = 0
    while index < len(found):
        name = named_fact(found[index])
        if name is not None:
            after = index + 1
            while after < len(found) and found[after].tag in LINKS | {
                "above",
                "below",
                "at least",
                "at most",
            }:
                after += 1
            if after < len(found) and found[after].tag == "fact" and found[after].fact == name:
                if lookup.facts[name].kind == "quantity" or all(
                    p.tag in LINKS for p in found[index:after][1:]
                ):
                    fact = found[after]
                    found[index : after + 1] = [_widen(fact, found[index].first, fact.last)]
                continue_at = index + 1
                index = continue_at
                continue
            before = index - 1 - (index > 1 and found[index - 1].tag == "of")  # "35 km/h of wind"
            if index and found[before].tag == "fact" and found[before].fact == name:
                found[before : index + 1] = [_widen(found[before], found[before].first, found[index].last)]
                continue
        index += 1
    return tuple(found)


def _widen(piece: Piece, first: int, last: int) -> Piece:
    return msgspec.structs.replace(piece, first=first, last=last)


def _except(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "K3 to K6 but not K5", "ashore but not in town", "everyone except officers"."""
    found = list(pieces)
    index = 1
    while index < len(found):
        if found[index].tag == "but" or is_exception(found, index, tokens, lookup):
            after = index + 1
            while after < len(found) and found[after].tag in LINKS | {"not", "if", "when", "self"}:
                after += 1
            other = found[after] if after < len(found) else None
            if other is not None and other.tag == "fact" and isinstance(other.values, Choices):
                base = base_of(found[index - 1], other.fact, lookup)
                # "not raining and not snowing" takes nothing out of the rain
                apart = base is None or not base.members & other.values.members
                alone = apart and _excludes(found[index], other, tokens, lookup)
                domain = lookup.domain(other.fact) if alone else base
                if isinstance(domain, Choices):
                    removed, last = other.values, after
                    while last + 2 < len(found) and found[last + 1].tag in ("and", "or"):
                        more = found[last + 2]
                        if more.fact != other.fact or not isinstance(more.values, Choices):
                            break
                        removed, last = Choices(removed.members | more.values.members), last + 2
                    left = Choices(domain.members - removed.members)
                    if left.members:
                        if alone:
                            denied = fact_piece(other, other.fact, left, found[index].first, found[last].last)
                            found[index : last + 1] = [msgspec.structs.replace(denied, arg=_DENIED)]
                            continue
                        first = found[index - 1].first
                        found[index - 1 : last + 1] = [
                            fact_piece(other, other.fact, left, first, found[last].last)
                        ]
                        continue
        index += 1
    return tuple(found)


_DENIED = "denied"


def _excludes(but: Piece, other: Piece, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Whether what follows is left out of everything: "except in rain", "but not when hauling lines"."""
    words = {token.low for token in tokens[but.first : but.last]}
    people = lookup.facts[other.fact].family in ("grade", "branch")
    return not people and (words != {"but"})


def _unite(pieces: Pieces, lookup: Lookup) -> Pieces:
    """ "K5 or W1", "rain, snow and fog": values of one fact that are joined; others have to hold together."""
    found = list(pieces)
    index = 0
    while index + 1 < len(found):
        piece = found[index]
        after = index + 1
        while after < len(found) and found[after].tag in _BETWEEN:
            after += 1
        other = found[after] if after < len(found) else None
        if (
            piece.tag != "fact"
            or other is None
            or piece.fact != other.fact
            or _DENIED in (piece.arg, other.arg)
            or not (piece.values and other.values)
        ):
            index += 1
            continue
        listed = after == index + 1 and is_one_grade(piece, lookup) and is_one_grade(other, lookup)
        joined = listed or any(p.tag in ("and", "or", "comma") for p in found[index + 1 : after])
        both = intersect(piece.values, other.values)
        named = any(p.tag in ("and", "or") for p in found[index + 1 : after])
        apart = joined and not named and not listed and _is_denied(found, index, after)
        if (is_empty(both) and not joined) or apart:
            index += 1
            continue
        values = unite(piece.values, other.values) if named or is_empty(both) else both
        found[index : after + 1] = [fact_piece(piece, piece.fact, values, piece.first, other.last)]
    return tuple(found)


def _is_denied(found: Sequence[Piece], index: int, after: int) -> bool:
    """ "Not a warden, R3": whether what is denied ends before a comma, no list going on to an "or"."""
    before = index - 1
    while before >= 0 and found[before].tag in LIGHT:
        before -= 1
    goes_on = {piece.tag for piece in found[after + 1 : after + 3]} & {"or", "and", "comma"}
    return before >= 0 and found[before].tag in ("not", "no") and not goes_on


_BETWEEN = (LINKS | {"and", "or", "comma"}) - {"be"}


def _asks(pieces: Sequence[Piece], index: int) -> bool:
    """Whether a "not" belongs to the question's own verb: "can't officers", "aren't divers"."""
    if pieces[index].tag != "not" or not index:
        return False
    before, after = pieces[index - 1].tag, pieces[index + 1].tag if index + 1 < len(pieces) else ""
    if after in ("hold", "have") and index > 1:
        return False
    if before == "do" and index > 1 and pieces[index - 2].tag in ("self", "person", "who"):
        return False  # "if I don't touch it": a question has its "do" first
    denied = after == "for" and index > 1 and _is_item(pieces[index - 2])  # "coveralls are not for town"
    opens = all(piece.tag in _LEADING for piece in pieces[: index - 1])  # "so isn't a K3 allowed one"
    return before in ("can", "may", "must", "should", "do", "have to") or (
        before == "be" and (opens or denied)
    )


_LEADING = frozenset({"filler", "comma", "and", "but", "or"})


def _is_item(piece: Piece) -> bool:
    return bool(piece.entries) and {entry.kind for entry in piece.entries} == {"item"}


_OWN = frozenset({"mine", "yours", "ours", "theirs", "hers", ","})
_BEEN = frozenset({"been", "being", "do", "doing", "any"})
_BOUND = frozenset({("been", "through"), ("belong", "to"), ("part", "of")})


def _goes_on_with(tokens: tuple[Token, ...], place: int) -> bool:
    """Whether a word only goes on what is denied: "has not been signed off", "don't do any grinding"."""
    return tokens[place].low in _BEEN or (tokens[place - 1].low, tokens[place].low) in _BOUND


_NEGATIVE = frozenset({"not", "no longer", "without", "no", "unless", "neither", "whatever"})


def _negate(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "not ashore", "no longer afloat", "without a medical waiver"; "whether or not ashore" says nothing."""
    found = list(pieces)
    for index, piece in enumerate(pieces):
        if piece.tag not in _NEGATIVE or found[index] is not piece or _asks(pieces, index):
            continue
        light = (LINKS - {"be"} if piece.tag == "not" else LINKS) | {"hold", "have", "self"}
        after = index + 1
        while after < len(found) and (
            (found[after].tag in light and tokens[found[after].first].low not in _OWN)
            or _goes_on_with(tokens, found[after].first)
        ):
            after += 1
        fact = found[after] if after < len(found) else None
        if fact is None or fact.tag != "fact" or not isinstance(fact.values, Choices) or fact.arg == SAID:
            continue
        record = lookup.facts[fact.fact]
        named = {w for n in (record, *record.values) for w in n.label.casefold().split()}
        words = [token.low for token in tokens[fact.first : fact.last] if token.low not in named]
        if any(PHRASES.get((word,)) == "degree" for word in words):
            continue  # where it is not in heavy rain it may well rain
        if piece.tag == "whatever":
            found[after] = msgspec.structs.replace(fact, tag="joined")
        elif _can_be_denied(piece.tag, fact, lookup):
            values = complement_of(lookup, fact.fact, fact.values)
            joined = fact_piece(fact, fact.fact, values, piece.first, fact.last)
            _deny_others(found, after, piece.tag, tokens, lookup)
            found[index : after + 1] = [joined] * (after + 1 - index)
    return tuple(piece for index, piece in enumerate(found) if not index or found[index - 1] is not piece)


def _deny_others(found: list[Piece], index: int, tag: str, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "Not hauling lines or welding", "neither a medical nor a religious waiver": neither is so."""
    while index + 1 < len(found) and (
        found[index + 1].tag == "or" or tokens[found[index + 1].first].low == "nor"
    ):
        after = index + 2
        while after < len(found) and found[after].tag in LINKS:
            after += 1
        other = found[after] if after < len(found) else None
        if other is None or other.tag != "fact" or not isinstance(other.values, Choices):
            return
        if not _can_be_denied(tag, other, lookup):
            return
        denied = complement_of(lookup, other.fact, other.values)
        found[after] = fact_piece(other, other.fact, denied, other.first, other.last)
        index = after


def _can_be_denied(tag: str, fact: Piece, lookup: Lookup) -> bool:
    record = lookup.facts[fact.fact]
    if tag in ("without", "no"):
        return (
            record.kind == "yes_no"
            or record.family == "authorisation"
            or (tag == "no" and record.family == "situation")
        )
    return tag != "neither" or record.family != "grade"
