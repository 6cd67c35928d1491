"""Places said by what they are not ("outdoors", "outside the mess"), and words of degree ("heavy rain")."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.values import NO, YES, Choices
from kb.reader.names.lexicon import Entry, labels_of
from kb.reader.phrases.english import LEADING_PREPOSITIONS, PHRASES
from kb.reader.pieces.not_there import not_there
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import LIGHT, Pieces, complement_of, entry_values, fact_piece
from kb.reader.words.tokens import Token
from kb.wording import is_place

_INDOORS = frozenset({"indoors", "inside", "under a roof"})
_OUT = frozenset({"outdoors", "beyond"})
_DENIED = frozenset({"not", "no", "without", "but", "unless", "no longer", "neither"})
_NOUNS = frozenset({"name", "unknown", "number", "item", "items"})
_WITHIN = _NOUNS | {"measure", "self", "particle", "part", "limb"} | LIGHT
"""What "inside" may lead to: "inside the mess", "inside it", "inside out"."""


def places(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """ "Outside" alone is not indoors; before a place it is anywhere but there; "heavy rain" is rain."""
    found = [_no_street(piece, tokens, lookup) for piece in pieces]
    _entered(found, tokens, lookup)
    _bound_for(found, tokens, lookup)
    _being_there(found, tokens, lookup)
    not_there(found, tokens, lookup)
    _on_it(found, tokens, lookup)
    index = 0
    while index < len(found):
        if found[index].tag in _UP and _moves(found, index, tokens):
            found[index : index + 2] = [msgspec.structs.replace(found[index + 1], first=found[index].first)]
        if found[index].tag in ("fact", "outdoors") and _is_of_weather(found, index, tokens, lookup):
            found[index] = Piece(first=found[index].first, last=found[index].last, tag="filler")
        elif (
            found[index].tag in _OUT
            or _is_off(found, index, tokens, lookup)
            or _leads_out(found, index, tokens)
        ):
            _out_of(found, index, tokens, lookup)
        elif found[index].tag == "degree":
            _weather(found, index, tokens, lookup)
        elif found[index].tag == "unknown" and tokens[found[index].first].low == "indoors":
            _within(found, index, lookup)
        elif found[index].tag == "with" and tokens[found[index].first].low == "inside":
            _inside(found, index, tokens, lookup)
        index += 1
    return tuple(found)


_INTO = frozenset({"in", "into", "inside", "at", "through", "within"})


def _entered(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "Into the paint hall", which may be a thing besides, by the name of the place that it is."""
    for index, piece in enumerate(found):
        if piece.tag not in ("name", "item") or [entry.kind for entry in piece.entries] != ["item"]:
            continue
        lead = index - 1
        while lead >= 0 and found[lead].tag in ("det", "poss"):
            lead -= 1
        if lead < 0 or tokens[found[lead].last - 1].low not in _INTO:
            continue
        own = lookup.items[piece.entries[0].id].label.casefold()
        for fact in lookup.base.facts:
            named = [value.id for value in fact.values if _bare_name(value.label) == own]
            if named and fact.kind == "choice" and is_place(lookup, fact.id):
                values = Choices(frozenset(named))
                found[index] = fact_piece(piece, fact.id, values, piece.first, piece.last)
                break


def _on_it(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "On night watch": what one is on in the books, "on watch", and no thing of that name."""
    for index in range(2, len(found)):
        piece, when, lead = found[index], found[index - 1], found[index - 2]
        thing = piece.tag in ("name", "item") and piece.last - piece.first == 1
        told = when.tag == "fact" or all(entry.kind == "value" for entry in when.entries)
        if not (thing and told and lead.tag == "on" and when.last - when.first == 1):
            continue
        name = f"on {tokens[piece.first].low}"
        facts = [f.id for f in lookup.base.facts if name in (f.label.casefold(), *f.other_labels)]
        if len(facts) == 1 and lookup.facts[facts[0]].kind == "yes_no":
            found[index] = fact_piece(piece, facts[0], YES, piece.first, piece.last)


def _bare_name(label: str) -> str:
    """The name of a place without what leads to it: "paint hall" of "in the paint hall"."""
    words = label.casefold().split()
    while len(words) > 1 and words[0] in (*LEADING_PREPOSITIONS, "the", "a", "an"):
        words = words[1:]
    return " ".join(words)


_TOWARDS = frozenset({"to", "towards", "toward"})


def _bound_for(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "On the apron, on my way to the aircraft": where one is, and not yet where one goes."""
    named = [
        n for n, p in enumerate(found) if p.tag == "fact" and p.first < p.last and _is_of_places(p, lookup)
    ]
    for place in reversed(named):
        lead = place
        while lead and found[lead - 1].tag in LIGHT and found[lead - 1].tag != "comma":
            lead -= 1
        led = lead and tokens[found[lead - 1].last - 1].low in _TOWARDS
        here = [n for n in named if n < place and found[n].fact == found[place].fact]
        moving = any(token.low in MOVING for token in tokens[: found[place].first])
        if led and here and moving and tokens[found[place].first].low not in LEADING_PREPOSITIONS:
            found[lead - 1 : place + 1] = [
                Piece(first=found[lead - 1].first, last=found[place].last, tag="filler")
            ]


_THERE = frozenset(
    {"walking", "standing", "sitting", "strolling", "waiting", "wandering", "passing", "queuing"}
)


def _being_there(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "With the hat on walking through the hall", "standing in the hall": no more than being there."""
    for index in range(len(found) - 1):
        piece, after = found[index], found[index + 1]
        alone = piece.tag == "unknown" and piece.last - piece.first == 1 and tokens[piece.first].low in _THERE
        place = after.tag == "fact" and _is_of_places(after, lookup) and _is_there(after, tokens)
        if alone and place and (not index or found[index - 1].tag not in ("det", "poss")):
            found[index] = Piece(first=piece.first, last=piece.last, tag="filler")
            if index and found[index - 1].tag == "only" and tokens[found[index - 1].first].low == "just":
                found[index - 1] = msgspec.structs.replace(found[index - 1], tag="filler")


def _is_there(fact: Piece, tokens: tuple[Token, ...]) -> bool:
    return _is_led(fact, tokens) or tokens[fact.first].low in ("across", "through", "along")


def _is_of_places(piece: Piece, lookup: Lookup) -> bool:
    return lookup.facts[piece.fact].kind == "choice" and is_place(lookup, piece.fact)


MOVING = frozenset(
    {
        "walking",
        "crossing",
        "going",
        "heading",
        "passing",
        "strolling",
        "nipping",
        "popping",
        "way",
        "walk",
        "cross",
        "go",
    }
)
_OPEN = frozenset({"outside", "outdoors", "out"})
_SHUT = frozenset({"indoors", "inside"})
_BEING = frozenset({"is", "'s", "was", "gets", "turns"})
_UP = frozenset({"unknown", "particle", "filler", "outdoors", "range"})
_MOVING = frozenset({"up", "down", "out", "over", "back", "away", "along"})
_BEGUN = frozenset({"comma", "filler", "and", "but", "if", "when"})


def _moves(found: list[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "Up on a crag", "down in the engine room": where one is, and nothing is put there."""
    piece, after = found[index], found[index + 1] if index + 1 < len(found) else None
    am = index > 1 and found[index - 1].tag == "be" and found[index - 2].tag == "self"
    begun = not index or found[index - 1].tag in _BEGUN or am or _ends(tokens, piece.first)
    led = after is not None and after.tag == "fact" and _is_led(after, tokens)
    return begun and led and piece.last - piece.first == 1 and tokens[piece.first].low in _MOVING


def _is_off(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "I'm off the quay", "off the quay": not there; "coat off the peg" is of a coat."""
    before = found[index - 1].tag if index else "comma"
    led = [p.tag for p in found[index + 1 : index + 3]] in (["det", "fact"], ["poss", "fact"])
    off = found[index].tag == "particle" and tokens[found[index].first].low == "off"
    return off and led and before in _BEGUN | {"be"} and is_place(lookup, found[index + 2].fact)


def _leads_out(found: list[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "Outside the clinic", where "outside" is a name of the books, too: not there, and no more."""
    piece, after = found[index], index + 1
    if piece.tag != "fact" or piece.last - piece.first != 1 or tokens[piece.first].low != "outside":
        return False
    while after < len(found) and found[after].tag in ("det", "poss"):
        after += 1
    return after < len(found) and tokens[found[after].first].start - tokens[found[after].first - 1].end == 1


def _ends(tokens: tuple[Token, ...], place: int) -> bool:
    """Whether something other than a space stands before a word."""
    return tokens[place].start - tokens[place - 1].end > 1


_STREETS = frozenset({"Street", "Road", "Lane", "Avenue", "Hill", "Terrace", "Close", "Drive", "Row"})


def _no_street(piece: Piece, tokens: tuple[Token, ...], lookup: Lookup) -> Piece:
    """ "In the street" is no more than a street, though the books have a Kiln Street."""
    if piece.tag != "fact" or piece.last - piece.first != 1 or any(e.rank < 2 for e in piece.entries):
        return piece
    record = lookup.facts[piece.fact]
    labels = [v.label for v in record.values if any(entry.id == v.id for entry in piece.entries)]
    names = [label.split()[-1] in _STREETS and len(label.split()) > 1 for label in labels]
    plain = record.family == "situation" and names and all(names) and tokens[piece.first].text.islower()
    return Piece(first=piece.first, last=piece.last, tag="unknown") if plain else piece


def _is_of_weather(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "Indoors, if it's foul outside": the weather is out there, and somebody is elsewhere."""
    before = found[index - 1] if index else None
    if before is None or before.tag not in ("fact", "degree") or tokens[found[index].first].low not in _OPEN:
        return False
    led = [token.low for token in tokens[max(before.first - 3, 0) : before.first]]
    elsewhere = any(
        (piece.tag == "fact" and is_place(lookup, piece.fact)) or tokens[piece.first].low in _SHUT
        for n, piece in enumerate(found)
        if n not in (index - 1, index)
    )
    return elsewhere and "it" in led and bool(_BEING.intersection(led))


def _out_of(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    piece, after = found[index], index + 1
    while after < len(found) and found[after].tag in LIGHT:
        after += 1
    other = found[after] if after < len(found) else None
    if other is not None and other.tag == "fact" and _is_place(other, after > index + 1, tokens, lookup):
        values = complement_of(lookup, other.fact, other.values or YES)
        found[index : after + 1] = [fact_piece(other, other.fact, values, piece.first, other.last)]
        return
    if other is not None and other.tag == "self":
        found[index] = msgspec.structs.replace(piece, tag="beyond")  # "outside it"
        return
    if piece.tag != "outdoors":
        return
    if other is not None and tokens[piece.first].low == "outside" and not _stands_apart(other, tokens):
        return
    if other is not None and (after > index + 1 or other.tag in _NOUNS - {"name", "unknown"}):
        return
    indoors = _named_outdoors(lookup) or indoors_fact(lookup)
    if indoors is not None:
        found[index] = fact_piece(piece, *indoors, piece.first, piece.last)


def _within(found: list[Piece], index: int, lookup: Lookup) -> None:
    """ "Indoors", where the books know only whether one is out of doors."""
    outdoors = indoors_fact(lookup)
    if outdoors is not None and outdoors[1] == YES:
        found[index] = fact_piece(found[index], outdoors[0], NO, found[index].first, found[index].last)


def _inside(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "I am inside", "the cap inside?": indoors, where it leads to nothing that it could be inside of."""
    before = found[index - 1].tag if index else ""
    after = found[index + 1] if index + 1 < len(found) else None
    piece, outside = found[index], indoors_fact(lookup)
    ends = piece.last < len(tokens) and tokens[piece.last].start - tokens[piece.first].end > 1  # a full stop
    led = after is not None and after.tag == "fact" and _is_led(after, tokens)  # "inside in watch rig"
    apart = ends or after is None or led or after.tag not in _WITHIN | {"fact"}
    if before in ("det", "poss", "act", "unknown") or not apart or outside is None:
        return
    if _is_of_a_thing(found, index, tokens):
        return
    within = complement_of(lookup, *outside)
    if isinstance(within, Choices):
        found[index] = fact_piece(piece, outside[0], within, piece.first, piece.last)


def _is_of_a_thing(found: list[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "Inside or outside the sea boots": a side of those, as the other word of the two tells."""
    place = found[index].last
    if [token.low for token in tokens[place : place + 2]] not in (["or", "outside"], ["or", "over"]):
        return False
    rest = [piece.tag for piece in found if piece.first >= place + 2 and piece.tag not in LIGHT]
    return bool(rest) and rest[0] in _NOUNS


def _is_place(fact: Piece, article: bool, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Whether a value is named as a noun is, so that "outside" can lead to it."""
    record = lookup.facts[fact.fact]
    if record.family != "situation" or record.kind != "choice" or not isinstance(fact.values, Choices):
        return False
    labels = [v.label for v in record.values if v.id in fact.values.members][:1]
    if any(label.split()[0].endswith("ing") for label in labels):
        return False  # "out of the oven", of what is taken from it
    led = any(label.split()[0].casefold() in LEADING_PREPOSITIONS for label in labels)
    return article or (led and tokens[fact.first].low not in LEADING_PREPOSITIONS)


def _stands_apart(other: Piece, tokens: tuple[Token, ...]) -> bool:
    """Whether "outside" cannot lead to what follows it: no noun, and no place ("outside ashore")."""
    return other.tag not in _NOUNS and (other.tag != "fact" or _is_led(other, tokens))


def _is_led(fact: Piece, tokens: tuple[Token, ...]) -> bool:
    """Whether a preposition begins the words of a fact: "in winter", "on the slipway"."""
    return tokens[fact.first].low in LEADING_PREPOSITIONS


def indoors_fact(lookup: Lookup) -> tuple[str, Choices] | None:
    """The fact that is indoors or not, or out of doors or not, with what is not indoors."""
    for fact in lookup.base.facts:
        if fact.kind == "yes_no" and any(
            PHRASES.get(tuple(n.casefold().split())) == "outdoors" for n in (fact.label, *fact.other_labels)
        ):
            return fact.id, YES
        if fact.kind == "yes_no" and _INDOORS & {n.casefold() for n in (fact.label, *fact.other_labels)}:
            return fact.id, NO
        for value in fact.values:
            if _INDOORS & {name.casefold() for name in (value.label, *value.other_labels)}:
                inside = entry_values(Entry("value", value.id, fact.id), lookup)
                outside = complement_of(lookup, fact.id, inside)
                return (fact.id, outside) if isinstance(outside, Choices) else None
    return None


def _named_outdoors(lookup: Lookup) -> tuple[str, Choices] | None:
    """The one place of a book that is called so."""
    named = [
        (fact.id, entry_values(Entry("value", value.id, fact.id), lookup))
        for fact in lookup.base.facts
        for value in fact.values
        if any(PHRASES.get(tuple(n.casefold().split())) == "outdoors" for n in labels_of(value))
    ]
    return named[0] if len(named) == 1 else None


_PLAINLY = frozenset({"flat", "dead"})


def _weather(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """Rain is rain however heavy; but "not in heavy rain" does not say that it is dry."""
    fact = found[index + 1] if index + 1 < len(found) else None
    if fact is None or fact.tag != "fact" or any(p.tag in _DENIED for p in found[max(index - 3, 0) : index]):
        return
    record = lookup.facts[fact.fact]
    plainly = tokens[found[index].first].low in _PLAINLY  # "flat calm"; a "heavy sea" is another sea
    if record.family == "situation" and (record.kind == "choice" or (plainly and record.kind == "scale")):
        found[index : index + 2] = [msgspec.structs.replace(fact, first=found[index].first)]
