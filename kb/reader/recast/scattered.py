"""A circumstance by the words of its name, in any order and form: "the train is full of passengers".

Read only for a text that is not understood as it stands. All words of weight of one name must be said in one
clause of the text, with none of weight between them; nothing is taken where the clause denies, bounds or
doubts it, tells of another time or of somebody else, or has the words of another circumstance, too.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cache, lru_cache

import msgspec

from kb.keywords import lemma
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, tokenize
from kb.reader.words.turned import KIN, KINDS, SENSES, SHAPES
from kb.text import Pattern

Edit = tuple[int, int, str]

_LIGHT = word_set("""
    a an the this that these those my our your its i we you me us it am is are 'm 's 're be being been have
    've has got get gets getting there here now right just currently still in on at of with to for by from who
    which while when where any some all full several many lots plenty very really quite also too
    do does doing busy one own must need needs whose ' person people member members somebody someone anyone
""")
"""Words that change nothing where they stand between the words of a name."""
_DOUBTED = word_set("""
    not n't no never nobody none nothing nor neither without unless except instead than almost nearly hardly
    barely less fewer might maybe perhaps probably would could hope hopes if or whether ever only
    about going want wants plan planning try trying supposed hoping meant ready due will 'll shall next
    tomorrow later soon until till before
""")
"""What denies, bounds or doubts what a clause tells; "when it rains", but not "if it rains"."""
_THEN = word_set("""
    was were had did used yesterday ago last once former formerly since after finished ended stopped tonight
""")
_OTHERS = word_set("""
    he she him her his hers they them their theirs man woman somebody's someone's
""")
_THEIRS, _SELF = word_set("their his her them him"), word_set("i we")
_WHO = _SELF | word_set("they he she you who somebody someone")
_DIRECTED = word_set("""
    off out up down over above below under beneath beyond past before after away beside inside outside between
    near behind until against within across along around through than as not n't no without or less more least
    most longer shorter first last other another
""")
"""Words in which a name may differ from its contrary: they stand in both, or in neither."""
_EITHER = word_set("or")
_NONE = word_set("nobody none nothing")
_PARTING = word_set(". , ; : ? ! – — and but when whenever while because as so although though where")
_ASKING = word_set("can may must should do does am is are will would shall could need ought")
_ASKED = word_set("i we you he she they one anyone anybody somebody someone the my our a an it this that")
_PERFECT = word_set("has have lapsed lost stolen damaged worn outgrown injured troubled")
_PARTITIVE = word_set("leg piece joint rack side bit lot tray plate box pair load heap kind sort member part")
_STATIVE = word_set("stands stand stays stay remains remain keeps lies sits")
_DOWN = word_set("down up out")
_THROUGHOUT = word_set("wash clean hose sluice swill clear sweep rinse wipe scrub mop search dry reach")
"""What is done down, up or out as it is without: "washed down", "cleared out"."""
_POSTURE = word_set("walk walking stand standing sit sitting go going march marching am one those back")
_AGO = Pattern(
    r"(?i),? (?:(?:just|only) )?(?:yesterday|today|this \w+|last \w+|(?:in|since) [A-Z]\w+"
    r"|(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|a few|some|\d+) \w+ (?:ago|back))\b"
)
_GRANTING = Pattern(
    r"(?i)\bwho (?:\w+ )?(?:to )?"
    r"(?:authoris|authoriz|allow|grant|approv|order|giv|decid|permit|nam|agree|excus)\w*"
)
_YOU = "you"
_FEWEST = 2


class _Name(msgspec.Struct, frozen=True):
    """What a name of a circumstance says: the words of weight, and how the books put it."""

    words: frozenset[str]
    label: str
    fact: str
    value: str
    own: bool = False
    """Whether it is told of somebody, as "are you on guard" is, and "is there fog" is not."""
    done: bool = False
    """Whether it says what has come to be so, and is so still: "has run out"."""


class _Told(msgspec.Struct, frozen=True):
    """A name all of whose words stand in a clause, at these places of its tokens."""

    name: _Name
    places: tuple[int, ...]


def scattered(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each stretch of a text that tells a circumstance so."""
    if _GRANTING.search(found.text) is not None:
        return  # who grants it is told by a clause, and not by who wears it
    facts = {place for p in found.pieces if p.tag == "fact" for place in range(p.first, p.last)}
    known = [(p.fact, p.first) for p in found.pieces if p.tag == "fact"]
    names = _names(lookup)
    for clause in _clauses(found.tokens):
        lows = {found.tokens[place].low for place in clause}
        taken = _of_other_pieces(found, found.tokens[clause.start].low in _ASKING)
        words = _joined([token.low for token in found.tokens[: clause.stop]])
        offers = {place: _offers(words[place]) for place in clause if place in words and place not in taken}
        said = frozenset(word for words in offers.values() for word in words)
        near = [name for name in names if name.words <= said and _may_be_told(name, lows)]
        told = [one for name in near if (one := _placed(name, offers, found)) is not None]
        for one in _sure(told):
            within = range(one.places[0], one.places[-1] + 1)
            if all(
                fact != one.name.fact or place in within for fact, place in known
            ) and not facts.issuperset(one.places):
                yield _stretch(one, clause, found)


def _of_other_pieces(found: Understood, asking: bool) -> frozenset[int]:
    """The places of tokens that name a thing, a measure, a day or, in what is asked, what is done."""
    kept = ("item", "items", "measure", "number", "on date", "date", "book", "clause", *["act"] * asking)
    return frozenset(place for p in found.pieces if p.tag in kept for place in range(p.first, p.last))


def _clauses(tokens: Sequence[Token]) -> Iterator[range]:
    first = 0
    for place, token in enumerate(tokens):
        asks = (
            token.low in _ASKING
            and place + 1 < len(tokens)
            and tokens[place + 1].low in _ASKED
            and place > first
        )
        if token.low in _PARTING or asks:
            if place > first:
                yield range(first, place)
            first = place + (token.low in _PARTING)
    if first < len(tokens):
        yield range(first, len(tokens))


@cache
def _names(lookup: Lookup) -> tuple[_Name, ...]:
    """The names of all circumstances of the books that have words of weight enough."""
    found = [
        _Name(words, label, fact.id, value, _is_own(fact), not _PERFECT.isdisjoint(tokens_of(said)))
        for fact in lookup.base.facts
        if fact.family in ("situation", "term")
        for value, label, said in _said_of(fact)
        for words in _alternatives(said)
        if sum(word not in _DIRECTED for word in words) >= _FEWEST
    ]
    return tuple(dict.fromkeys(found))


def tokens_of(said: str) -> set[str]:
    return {token.low for token in tokenize(said)}


def _is_own(fact: Fact) -> bool:
    return fact.kind == "choice" or _YOU in tokens_of(fact.ask or "")


def _said_of(fact: Fact) -> Iterator[tuple[str, str, str]]:
    """The values of a fact, each with its label and every way in which it is said."""
    if fact.kind == "yes_no":
        yield from (("yes", fact.label, said) for said in (fact.label, *fact.other_labels))
        if fact.ask and not any(word.isupper() for word in fact.ask.split()[1:]):
            yield "yes", fact.label, fact.ask
    elif fact.kind == "choice":
        for value in fact.values:
            yield from ((value.id, value.label, said) for said in (value.label, *value.other_labels))


def _alternatives(said: str) -> Iterator[frozenset[str]]:
    """The words of weight of a name; those of "first or last person" are twice as many."""
    lows = [token.low for token in tokenize(said)]
    if "-" in said:
        lows = [*_joined(lows).values()]
    lows = [low for low in lows if low[0].isalnum() or low == "n't"]
    if any(low[0].isdigit() for low in lows):
        return
    if "or" in lows:
        place = lows.index("or")
        for left_out in (place - 1, place + 1):
            kept = [low for index, low in enumerate(lows) if index not in (place, left_out)]
            if "or" not in kept:
                yield _weighty(kept)
    else:
        yield _weighty(lows)


def _joined(lows: Sequence[str]) -> dict[int, str]:
    """The words by their places, of which those that a hyphen joins are one: "left-handed"."""
    found: dict[int, str] = {}
    for place, low in enumerate(lows):
        if "-" in lows[max(place - 1, 0) : place] and place - 2 in found:
            found[place] = f"{found.pop(place - 2)}-{low}"
        elif low != "-":
            found[place] = low
    return found


def _weighty(lows: Sequence[str]) -> frozenset[str]:
    return frozenset(_root(low) for low in lows if low in _DIRECTED or low not in _LIGHT)


@lru_cache(maxsize=8192)
def _root(low: str) -> str:
    """What a word is a form of: "detained" and "detainee" are of one."""
    if low in _DIRECTED:
        return low
    word = SHAPES.get(low) or lemma(low)
    word = SHAPES.get(word, word)
    for ending in ("ation", "ion", "ment", "ee", "e", "y"):
        if word.endswith(ending) and len(word) - len(ending) > 3:
            return word.removesuffix(ending)
    return word


@lru_cache(maxsize=8192)
def _offers(low: str) -> frozenset[str]:
    """What a word of a text may stand for in a name: itself, its like, what it is a kind of."""
    if "-" in low:
        return frozenset((low, *(_root(low).split("-"))))
    root = _root(low)
    found = set() if _is_light(low) else {root}
    for row in _rows(SENSES):
        if root in row:
            found |= row
    found |= _kinds().get(root, frozenset())
    return frozenset(found)


@cache
def _rows(text: str) -> tuple[frozenset[str], ...]:
    return tuple(frozenset(_root(word) for word in line.split()) for line in text.strip().splitlines())


@cache
def _kinds() -> Mapping[str, frozenset[str]]:
    """For a word what it is one of: a trumpet is a wind instrument."""
    found: dict[str, frozenset[str]] = {}
    for line in KINDS.strip().splitlines():
        kind, _, words = line.partition(": ")
        named = frozenset(_root(word) for word in kind.split())
        found |= {_root(word): found.get(_root(word), frozenset()) | named for word in words.split()}
    return found


def _may_be_told(name: _Name, lows: set[str]) -> bool:
    """Whether nothing in a clause denies, doubts or moves what it would tell, unless the name has it, too."""
    others = _OTHERS - _THEIRS if lows & _SELF else _OTHERS  # "while I give people their change"
    barring = _DOUBTED | (others | KIN if name.own else _EITHER) | (_EITHER if name.done else _THEN)
    said = name.words | (_NONE if "no" in name.words else frozenset())
    return not {low for low in lows & barring if low not in said and _root(low) not in said}


def _placed(name: _Name, offers: Mapping[int, frozenset[str]], found: Understood) -> _Told | None:
    """Where a name's words stand nearest together, if nothing of weight stands between them but a place."""
    places = [place for place, words in offers.items() if not words.isdisjoint(name.words)]
    best: tuple[int, ...] | None = None
    for start in range(len(places)):
        missing, run = set(name.words), list[int]()
        for place in places[start:]:
            if run and any(not _is_idle(n, place, found, name) for n in range(run[-1] + 1, place)):
                break
            missing -= offers[place]
            run.append(place)
            if not missing:
                break
        if not missing and (best is None or run[-1] - run[0] < best[-1] - best[0]):
            best = tuple(run)
    return None if best is None else _Told(name, best)


def _place_in(found: Understood, first: int, last: int, name: _Name) -> tuple[Piece, ...]:
    """The places of the books that are named between two words: "the floor of the laundry is sluiced"."""
    return tuple(
        p
        for p in found.pieces
        if p.tag == "fact" and first <= p.first and p.last <= last and p.fact == "place" != name.fact
    )


def _is_light(low: str) -> bool:
    return low in _LIGHT and low not in _DIRECTED


def _sure(told: Sequence[_Told]) -> Iterator[_Told]:
    """Those that no other name rivals; one that has all words of another and more goes before it."""
    for number, one in enumerate(told):
        own, sense = {*one.places}, (one.name.fact, one.name.value)
        near = [(n, other) for n, other in enumerate(told) if not own.isdisjoint(other.places)]
        if all(
            {*other.places} < own
            or ((other.name.fact, other.name.value) == sense and {*other.places} <= own and n >= number)
            for n, other in near
        ):
            yield one


def _is_idle(place: int, before: int, found: Understood, name: _Name) -> bool:
    """Whether a word between two of a name changes nothing: "a leg of lamb", "the Sailing Squadron"."""
    tokens, low = found.tokens, found.tokens[place].low
    named = place + 1 == before and tokens[place].text[:1].isupper()
    parted = place + 1 < before and low in _PARTITIVE and tokens[place + 1].low == "of"
    done = low in _DOWN and _root(tokens[place - 1].low) in _THROUGHOUT
    there = any(p.first <= place < p.last for p in _place_in(found, 0, before, name))
    whose = next((token.low for token in reversed(tokens[:place]) if token.low in _WHO), "")
    theirs = low in _THEIRS and whose in _SELF
    return named or parted or done or there or theirs or low in _STATIVE or _is_light(low)


def _stretch(one: _Told, clause: range, found: Understood) -> Edit:
    """The words of a circumstance, with who it is told of, and when what has come to be so came to be so."""
    tokens, first, last = found.tokens, one.places[0], one.places[-1]
    facts = {place for p in found.pieces if p.tag == "fact" for place in range(p.first, p.last)}
    while first - 1 > clause.start and tokens[first - 1].low == "-":
        first -= 2
    while first > clause.start and (
        _is_light(tokens[first - 1].low) or (tokens[first - 1].low in _POSTURE and first - 1 not in facts)
    ):
        first -= 1
    end = tokens[last].end
    if one.name.done and (ago := _AGO.match(found.text, end)) is not None:
        end = ago.end()
    placed = [p for p in _place_in(found, first, last, one.name) if p.last - 1 not in one.places]
    there = "".join(f", {found.text[tokens[p.first].start : tokens[p.last - 1].end]}" for p in placed)
    return tokens[first].start, end, f"{one.name.label}{there}"
