"""Which of several circumstances of one unit a measure tells: "27 degrees" of the air or of the water.

First the one whose own word was said ("8 degrees in the water"), then the one that rules on the things named
turn on, then the plain one: that is called by the word they share ("temperature"), or is of the air.
"""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.reader.names.lexicon import name_words
from kb.reader.pieces.pieces import Piece, only
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_LIGHT = word_set("of the a an in at for time length")
_PLAIN = word_set("air outdoor outside ambient")
_GROWING = word_set("old pregnant gone along expecting")


def measured_fact(
    fitting: Sequence[Fact], found: Sequence[Piece], tokens: Sequence[Token], lookup: Lookup
) -> Fact | None:
    """The one fact of those that fit the unit; None where that is not clear."""
    own = {fact.id: _own_words(fact, fitting) for fact in fitting}
    said = {token.key for token in tokens} | {token.low for token in tokens}
    for chosen in (
        [fact for fact in fitting if not own[fact.id].isdisjoint(said)],
        _tested(fitting, found, lookup),
        [fact for fact in fitting if _is_plain(fact, own[fact.id], fitting)],
    ):
        if len(chosen) == 1:
            return chosen[0]
        if chosen and len(chosen) < len(fitting):
            return None
    return None


def concerns(fact: Fact, found: Sequence[Piece], tokens: Sequence[Token], lookup: Lookup) -> bool:
    """Whether a time may be that of a fact: it has a word of it, or rules on the things named turn on it.

    Where nothing is named, which may be what was named before, any may.
    """
    said = {token.key for token in tokens} | {token.low for token in tokens}
    named = any(only(piece, "item") for piece in found if piece.tag == "name")
    words = frozenset[str]().union(*(_words(name) for name in (fact.label, *fact.other_labels)))
    return not named or not words.isdisjoint(said) or bool(_tested([fact], found, lookup))


def is_of_growing(piece: Piece, tokens: Sequence[Token], fact: Fact) -> bool:
    """Whether a time is that of a child, "three months old", "three months pregnant", and not of a fact."""
    after = tokens[piece.last].low if piece.last < len(tokens) else ""
    return after in _GROWING and after not in fact.label.casefold() and "age" not in _words(fact.label)


def _words(label: str) -> frozenset[str]:
    return frozenset(name_words(label)) - _LIGHT


def _own_words(fact: Fact, fitting: Sequence[Fact]) -> frozenset[str]:
    """The words of a fact's names that no other has."""
    others = [other for other in fitting if other.id != fact.id]
    theirs = frozenset[str]().union(
        *(_words(name) for one in others for name in (one.label, *one.other_labels))
    )
    own = frozenset[str]().union(*(_words(name) for name in (fact.label, *fact.other_labels)))
    return own - theirs


def _tested(fitting: Sequence[Fact], found: Sequence[Piece], lookup: Lookup) -> list[Fact]:
    """The facts that rules on the things named turn on."""
    named = {entry.id for piece in found if piece.tag == "name" for entry in only(piece, "item")}
    wider = {item for name in named for item in lookup.broader(name)}
    turning = {test.fact for rule in lookup.rules_on(wider) for test in tests(rule.condition)}
    return [fact for fact in fitting if fact.id in turning]


_STANDING, _UP = word_set("at above over below up"), word_set("up high above off")


def stood_at(
    fitting: Sequence[Fact], found: Sequence[Piece], index: int, tokens: Sequence[Token], lookup: Lookup
) -> list[Fact]:
    """The fact that a length tells where somebody is at: "do I need a harness at 3 metres?".

    Only where rules on the thing turn on one such fact and none gives a length of the thing itself.
    """
    piece = found[index]
    led = {token.low for token in tokens[max(piece.first - 1, 0) : piece.first + 1]}
    after = {token.low for token in tokens[piece.last : piece.last + 1]}
    if _STANDING.isdisjoint(led) and _UP.isdisjoint(after):
        return []
    named = {entry.id for piece in found if piece.tag == "name" for entry in only(piece, "item")}
    wider = {item for name in named for item in lookup.broader(name)}
    own = any(r.value.measure for r in lookup.rules_on(wider))
    return [] if own else _tested(fitting, found, lookup)


def _is_plain(fact: Fact, own: frozenset[str], fitting: Sequence[Fact]) -> bool:
    shared = frozenset.intersection(*(_words(one.label) for one in fitting))
    bare = any(_words(name) == shared for name in (fact.label, *fact.other_labels))
    return bool(shared) and (bare or not own.isdisjoint(_PLAIN))


_LEADS, _ARTICLES = word_set("in of for"), word_set("the a an my our")


def end_of_measure(fact: Fact, found: Sequence[Piece], index: int, tokens: Sequence[Token]) -> int:
    """The place after a measure at `index` and what it says again of the fact: "in the water", "old"."""
    words, at = _words(fact.label), index + 1
    lead = at
    while at < len(found) and tokens[found[at].first].low in _LEADS | _ARTICLES:
        at += 1
    if lead < at < len(found) and tokens[found[at].last - 1].key in words:
        return at + 1
    aged = lead < len(found) and tokens[found[lead].first].low == "old" and "age" in words
    return lead + 1 if aged else lead
