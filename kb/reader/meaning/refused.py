"""Questions that are not about dress though they may look it: which grade is senior, whether it will rain."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Abstain
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.grants import said_to_be_on
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.text import Pattern, visible

_ITEMS = ("item", "items")
_COMPARING = word_set(
    "above below over under higher lower senior junior outranks outrank rank ranks than equal"
)
_PLAIN = tag_set(
    "be, do, fact, det, poss, filler, comma, not, or, and, in, on, of, for, to, above, below, range"
)
_FORECAST = Pattern(
    r"(?i)^\W*(?:is it (?:going to|gonna|likely to|due to|set to|meant to|supposed to|expected to)|will it|"
    r"is there going to be|will there be)\b"
)


def refused(found: Understood, lookup: Lookup) -> Abstain | None:
    """The refusal of such a question; None for any other."""
    pieces, tokens = found.pieces, found.tokens
    if tokens[:1] and tokens[0].low in ("is", "will") and _FORECAST.match(found.text):
        told = [p for p in pieces if p.tag == "fact" and lookup.facts[p.fact].family == "situation"]
        before = next(
            (i for i, t in enumerate(tokens) if i and t.low in ("so", "and", "do", "must")), len(tokens)
        )
        if told and told[0].last <= before:
            return Abstain(reason="The books cannot tell what will be; say how it is, or what to suppose.")
    for place, piece in enumerate(pieces):
        if piece.tag == "fact" and lookup.facts[piece.fact].family == "authorisation":
            speaker = said_to_be_on(pieces, place)
            if speaker > 0 and pieces[speaker].tag == "unknown" and pieces[speaker - 1].tag == "det":
                word = visible(tokens[pieces[speaker].last - 1].text)  # whose word may be no leave
                return Abstain(reason="Whether who said so can grant it is not known.", words=(word,))
    row = [piece for piece in pieces if piece.tag not in ("det", "poss")]
    for one, both, other in zip(row, row[1:], row[2:], strict=False):
        if both.tag == "and" and _is_twice(one, other, found) and _are_counted(one.arg, lookup):
            word = visible(tokens[both.first].text)
            return Abstain(reason="Two of one kind are asked of; ask how many of it.", words=(word,))
    grades = [p for p in pieces if p.tag == "fact" and lookup.facts[p.fact].family == "grade"]
    named = {place for piece in grades for place in range(piece.first, piece.last)}  # "Under Keeper"
    said = {token.low for place, token in enumerate(tokens) if place not in named}
    if grades and said & _COMPARING and pieces[0].tag in ("be", "do") and len(tokens) < _LONGEST:
        rest = [p for p in pieces if p.tag not in _PLAIN and not _COMPARING & {tokens[p.first].low}]
        others = [p for p in pieces if p.tag == "fact" and p not in grades]
        if not rest and not others:
            return Abstain(reason="Which grade is above which is asked, and no rule of dress; name an item.")
    return None


_LONGEST = 12


def _is_twice(one: Piece, other: Piece, found: Understood) -> bool:
    """ "A charity badge and union badge": two names of what is one thing to the books."""
    named = [tuple(token.key for token in found.tokens[p.first : p.last]) for p in (one, other)]
    return one.tag == other.tag == "item" and one.arg == other.arg and named[0] != named[1]


def _are_counted(item: str, lookup: Lookup) -> bool:
    wider = {*lookup.broader(item)}
    return any(r.aspect == "count" for r in lookup.rules_on(wider))
