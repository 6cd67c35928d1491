"""So many of a thing on one limb: "two rings on the same hand", "three studs in one ear".

Where a clause says how many go on each, that is no number of the books, and the clause is shown. Where the
books count the thing but on no limb of its own, as many may be on one as may be worn at all.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Rule, is_in_force
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern
from kb.wording import say_query

_ON_ONE = Pattern(
    r"(?i),?\s*\b(?:all )?(?:on|in|per|for) "
    r"(?:(?:one|the same|a single|each|either|every|my|the)(?: and the same)? )?"
    r"(?:left |right )?(?P<limb>hand|finger|thumb|wrist|ear(?:[ -]?lobe)?|lobe|ankle|arm|nostril|side)\b"
)
_PAIR = Pattern(r"(?i)\bpairs? of ((?:[a-z-]+ ){0,2}[a-z-]+)")
_EACH = word_set("each every either per apiece")
_PLAIN = tag_set("""
    item, items, number, fact, on, in, det, poss, place, may, can, self, person, wear, act, have, allowed
    filler, comma, be, measure, of, unknown, run, for, must, together, all
""")
_DIGITS = 2
_LOBE = {"lobe": "ear", "earlobe": "ear"}


def on_a_limb(
    found: Understood, case: Case, lookup: Lookup, read: Callable[[str], Reading]
) -> Reading | None:
    """The reading of what is asked of so many on a limb; None where none is named, or more is said."""
    limb = _ON_ONE.search(found.text)
    if limb is None or any(piece.tag not in _PLAIN for piece in found.pieces):
        return None
    if any(token.low.isdigit() and len(token.low) > _DIGITS for token in found.tokens):
        return None  # "in 2024" is of other rules
    before = [p for p in found.pieces if found.tokens[p.last - 1].end <= limb.start()]
    things = [piece for piece in before if piece.tag in ("item", "items")]
    if len({piece.first for piece in things}) != 1 or not _is_counted(found, things[0], limb[0]):
        return None
    part = limb["limb"].casefold().replace(" ", "").replace("-", "")
    part = _LOBE.get(part, part.removesuffix("lobe"))
    ruled = list(_counting(things[0], case, lookup))
    told = {rule.clause for rule in ruled if part in _each(rule, lookup) or _by_the_pair(rule, lookup)}
    if len(told) == 1:
        query = Query(kind="source", clause=told.pop(), case=case)
        return Reading(question=found.text, text=say_query(lookup, query), query=query)
    if told or not ruled:
        return None
    rest = f"{found.text[: limb.start()]}{found.text[limb.end() :]}"
    again = read(rest)
    if again.query is None or again.query.aspect != "count":
        return None
    return msgspec.structs.replace(again, question=found.text, unused=(*again.unused, limb[0].strip(" ,")))


def _is_counted(found: Understood, thing: Piece, on: str) -> bool:
    """Whether it is said how many there are: "two rings", "a ring on each"."""
    before = found.tokens[max(thing.first - 2, 0) : thing.first]
    counted = any(p.tag == "number" and thing.first - 2 <= p.first < thing.first for p in found.pieces)
    return (
        counted
        or any(token.low in ("one", "both") for token in before)
        or not _EACH.isdisjoint(on.casefold().split())
    )


def _counting(thing: Piece, case: Case, lookup: Lookup) -> Iterator[Rule]:
    """The rules in force that say how many of a thing there may be."""
    near = (
        {one for entry in thing.entries for one in lookup.broader(entry.id)} if thing.entries else set[str]()
    )
    for rule in lookup.rules_on(near):
        if rule.aspect == "count" and is_in_force(rule, case.as_of):
            yield rule


def _by_the_pair(rule: Rule, lookup: Lookup) -> bool:
    """Whether the clause counts a thing by the pair: "one pair of ear studs may be worn"."""
    named = {key for item in rule.scope.items for key in _keys(lookup.items[item].label)}
    pairs = _PAIR.finditer(lookup.clauses[rule.clause].text)
    return any(named & set(_keys(pair[1])) for pair in pairs)


def _keys(text: str) -> Iterator[str]:
    return (token.key for token in tokenize(text))


def _each(rule: Rule, lookup: Lookup) -> set[str]:
    """The limbs of which a rule or its clause says how many go on each: "one in each ear lobe"."""
    limbs = set[str]()
    for text in (rule.note or "", lookup.clauses[rule.clause].text):
        tokens = tokenize(text)
        for place, token in enumerate(tokens):
            if token.low in _EACH:
                limbs |= {after.key for after in tokens[place + 1 : place + 3]}
    return limbs
