"""What goes over what, said by an adverb: "with the jacket on, the fleece underneath", "which goes on top".

The adverb is put as the preposition with the other thing that is named: "the fleece under the jacket". Which
of two goes on top is asked of the one of which the rules say that it is worn over, or under, the other.
"""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.model.records import Aspect
from kb.model.values import is_subset
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.wording import clause_reference, say_query

_SIDES: dict[str, str] = {
    f"{words}{thing}": side
    for side, ways in (("over", "on top|on the top|over the top|over"), ("under", "underneath|beneath|under"))
    for words in ways.split("|")
    for thing in ("", " of it", " of that", " it", " that")
    if thing or words not in ("over", "under")
}
_CONTRARY = {"over": "under", "under": "over"}
_OVER = word_set("over outside above")
_UNDER = word_set("under underneath beneath below inside")
_ASKING = frozenset({"which", "what"})
_ALL = frozenset({"clothing", "clothe", "everything", "garment"})
_ENDS = tag_set("comma, and, with, in, fact, allowed, banned, may, can, for, if, when, must, should, or, be")
_JOINING = word_set("with and plus")
_ARTICLES = word_set("the a an my his her our their your")
_ITEMS = ("item", "items")


def layered(found: Understood, lookup: Lookup) -> str | None:
    """The text with the preposition for the adverb; None where no layer is said so of two things."""
    things = [piece for piece in found.pieces if piece.tag == "item"]
    if len({piece.arg for piece in things}) != 2 or any(piece.tag == "items" for piece in found.pieces):
        return None
    sides = list(_sides(found))
    between = {token.low for token in found.tokens[things[0].last : things[-1].first]}
    if any(token.low in _ASKING for token in found.tokens) or ("or" in between and len(sides) == 1):
        return _which(found, things, lookup)
    if not 1 <= len(sides) <= 2:
        return None
    first, end, side = sides[0]
    before = [piece for piece in things if piece.last <= first]
    if not before:
        return None
    upper = before[-1]
    other = next(piece for piece in things if piece.arg != upper.arg)
    if any(token.low == "and" for token in found.tokens[other.last : upper.first]):
        return None  # "I have the coat on and would like the hat on top": two things are told
    text, tokens = found.text, found.tokens
    name = text[tokens[other.first].start : tokens[other.last - 1].end]
    if len(sides) == 2:
        if sides[1][2] == side or other.first < end:
            return None
        return f"{text[: tokens[first].start]}{side} the {name}{text[tokens[sides[1][1] - 1].end :]}"
    led = upper.first - 1
    while led > 0 and tokens[led].low in _ARTICLES:
        led -= 1
    if led > 0 and tokens[led].low in _JOINING and other.last <= led:  # "medals with the coat on top"
        own = text[tokens[upper.first].start : tokens[upper.last - 1].end]
        return f"{text[: tokens[led].start]}{_CONTRARY[side]} the {own}{text[tokens[end - 1].end :]}"
    return f"{text[: tokens[first].start]}{side} the {name}{text[tokens[end - 1].end :]}"


def _sides(found: Understood) -> Iterator[tuple[int, int, str]]:
    """First token, end and side of each such adverb: nothing that it may lead to stands after it."""
    tokens, place = found.tokens, 0
    tags = {piece.first: piece.tag for piece in found.pieces}
    while place < len(tokens):
        lows = [token.low for token in tokens[place : place + 4]]
        length = next((n for n in (4, 3, 2, 1) if " ".join(lows[:n]) in _SIDES and len(lows) >= n), 0)
        after = place + length
        gap = (
            found.text[tokens[after - 1].end : tokens[after].start] if length and after < len(tokens) else "."
        )
        if length and (gap.strip() or tags.get(after, "") in _ENDS):
            yield place, after, _SIDES[" ".join(lows[:length])]
            place = after
        else:
            place += 1


def _which(found: Understood, things: list[Piece], lookup: Lookup) -> str | None:
    """ "Tunic and tabard: which goes on top", "what goes on top, the tunic or the tabard": how the one of
    which the rules say it is worn."""
    lows = [token.low for token in found.tokens]
    asked = next((place for place, low in enumerate(lows) if low in _ASKING), -1)
    one, other = things[0], things[-1]
    if not any(word in _OVER | _UNDER or word == "top" for word in lows[max(asked, 0) :]):
        return None
    offered = (asked < 0 or one.first > asked + 1) and "or" in lows[one.last : other.first]
    if not (offered or (asked >= 0 and lows[asked] == "which" and other.first < asked)):
        return None
    told = [
        (piece, way)
        for piece, beside in ((one, other), (other, one))
        for way in _ways(piece.arg, lookup)
        if _is_of(way, beside, lookup)
    ]
    if not told:
        return _of_both(one.arg, other.arg, lookup)
    if len({piece.arg for piece, _ in told}) != 1:
        return None
    piece, way = told[0]
    tokens, text = found.tokens, found.text
    rest = [p for p in found.pieces if p.tag == "fact"]
    said = ", ".join(text[tokens[p.first].start : tokens[p.last - 1].end] for p in rest)
    manner = lookup.aspects[way.within or way.id].label
    return f"What must the {manner} of the {lookup.items[piece.arg].label} be{', ' + said if said else ''}?"


def _of_both(one: str, other: str, lookup: Lookup) -> str | None:
    """What the clause says that has it of two of a kind: "the badge gained later above the other"."""
    both = set(lookup.broader(one)) & set(lookup.broader(other))
    clauses = {
        rule.clause
        for rule in lookup.rules_on(both)
        if {"other", "another"}
        & (words := {token.low for token in tokenize(lookup.aspects[rule.aspect].label)})
        and words & (_OVER | _UNDER)
    }
    if len(clauses) != 1:
        return None
    (clause,) = clauses
    return f"What does clause {clause_reference(lookup, clause)} say?"


def over_all(found: Understood, lookup: Lookup) -> str | None:
    """ "Vest: on top of everything?", of what the rules say is worn over all clothing."""
    things = [piece for piece in found.pieces if piece.tag in _ITEMS]
    lows = [token.low for token in found.tokens]
    if len(things) != 1 or things[0].tag != "item" or "everything" not in lows:
        return None
    place = lows.index("everything")
    phrases = (["on", "top", "of"], ["over"])
    led = next((words for words in phrases if lows[place - len(words) : place] == words), None)
    after = lows[place + 1] if place + 1 < len(lows) else ""
    if led is None or after in ("but", "except", "else", "that", "i", "we"):
        return None
    ways = [way for way in _ways(things[0].arg, lookup) if _ALL & {t.key for t in tokenize(way.label)}]
    if len(ways) != 1 or any(p.tag in ("not", "may", "can", "no") for p in found.pieces):
        return None
    start, end = found.tokens[place - len(led)].start, found.tokens[place].end
    before = found.text[:start].rstrip(" ,:;-")
    bare = all(piece.tag in (*_ITEMS, "det", "poss", "with", "list", "comma") for piece in found.pieces)
    name = lookup.items[things[0].arg].label
    if bare:
        return f"is the {name} worn {ways[0].label}?"
    return f"{before} {ways[0].label}{found.text[end:]}"


def _ways(item: str, lookup: Lookup) -> Iterator[Aspect]:
    """The ways of wearing that say what goes over what, which rules name for a thing."""
    related = set(lookup.broader(item))
    spoken = {rule.aspect for rule in lookup.rules_on(related)}
    for name in sorted(spoken):
        aspect = lookup.aspects[name]
        words = {token.low for token in tokenize(aspect.label)}
        if (
            aspect.kind == "act"
            and aspect.within in ("fit", "fastening")
            and words & (_OVER | _UNDER | {"top"})
        ):
            yield aspect


def _is_of(way: Aspect, other: Piece, lookup: Lookup) -> bool:
    """Whether a way of wearing names another thing, what it is a kind of, or all clothing."""
    label, _, excepted = way.label.partition(" but ")
    said = {token.key for token in tokenize(label)}
    if {token.key for token in tokenize(lookup.items[other.arg].label)} <= {
        t.key for t in tokenize(excepted)
    }:
        return False  # "over everything but the vest"
    if said & {"clothing", "clothe", "everything"}:
        return True
    kinds = [lookup.items[kind] for kind in lookup.broader(other.arg) if kind in lookup.items]
    labels = [label for kind in kinds for label in (kind.label, *kind.other_labels)]
    return any({token.key for token in tokenize(label)} <= said for label in labels)


def by_its_order(reading: Reading, found: Understood, lookup: Lookup) -> Reading:
    """ "The vest over the flotation vest?", where a rule says it is under: how the one is worn that is told.

    Whether they may be worn together is no answer to which of them is on top.
    """
    query, things = reading.query, [piece for piece in found.pieces if piece.tag == "item"]
    acts = query is not None and (query.aspect, query.polarity, query.value) == ("wear", "do", None)
    if query is None or not acts or query.kind not in ("may", "must"):
        return reading
    rigs = [p for p in found.pieces if p.tag == "fact" and lookup.facts[p.fact].family == "rig"]
    if len(things) == len(rigs) == 1 and things[0].last < rigs[0].first:
        return _over_a_rig(reading, query, found, things[0], rigs[0], lookup)
    if len(things) != 2:
        return reading
    upper, lower = things
    led = [token.low for token in found.tokens[upper.last : lower.first] if token.low not in _ARTICLES]
    over = led[-1:] == ["over"] or led[-3:] == ["on", "top", "of"]
    if not (over or (led and led[-1] in _UNDER)):
        return reading
    asks = _LEAVE.isdisjoint(token.low for token in found.tokens)
    going = asks and "go" in led  # which of the two is on top, and nothing else
    told = {
        (piece.arg, way.within)
        for piece, beside, asked_over in ((upper, lower, over), (lower, upper, not over))
        for way in _ways(piece.arg, lookup)
        if _is_of(way, beside, lookup) and (going or _is_over(way) != asked_over)
    }
    if going and not told:
        words = found.text[found.tokens[upper.last].start : found.tokens[lower.first - 1].end]
        unread = Abstain(reason="No rule says which of the two goes over the other.", words=(words,))
        return Reading(question=reading.question, spans=reading.spans, abstain=unread)
    if len(told) != 1:
        return reading
    ((item, manner),) = told
    worn = {f"worn:{piece.arg}" for piece in things}
    facts = tuple(fact for fact in query.case.facts if fact[0] not in worn)
    case = msgspec.structs.replace(query.case, facts=facts)
    asked = Query(kind="how", items=(item,), aspect=manner or "fit", case=case)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))


_LEAVE = frozenset({"can", "may", "could"})


def _is_part(item: str, rig: Piece, lookup: Lookup) -> bool:
    """Whether a rule has a thing worn in a rig."""
    return any(
        test.fact == rig.fact and rig.values is not None and is_subset(test.values, rig.values)
        for rule in lookup.rules_on([item])
        if rule.modality == "must" and rule.aspect == "wear"
        for test in tests(rule.condition)
    )


def _over_a_rig(
    reading: Reading, query: Query, found: Understood, thing: Piece, rig: Piece, lookup: Lookup
) -> Reading:
    """ "The body protector over the silks?", where the rules have it under a part of them: how it is worn."""
    led = [token.low for token in found.tokens[thing.last : rig.first] if token.low not in _ARTICLES]
    over = led[-1:] == ["over"] or led[-3:] == ["on", "top", "of"]
    parts = [item for item in lookup.base.items if _is_part(item.id, rig, lookup)]
    manners = {
        way.within
        for way in _ways(thing.arg, lookup)
        if _is_over(way) != over and any(part.label.casefold() in way.label.casefold() for part in parts)
    }
    if not (over or (led and led[-1] in _UNDER)) or len(manners) != 1:
        return reading
    asked = Query(kind="how", items=(thing.arg,), aspect=manners.pop() or "fit", case=query.case)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))


def _is_over(way: Aspect) -> bool:
    return _UNDER.isdisjoint(token.low for token in tokenize(way.label))
