"""Words that are spelled like a short name of a circumstance or a grade, and are none where they stand.

"We march along the road" is in no month, "a button on top" is no grade, "travel home" is not at home.
"""

from __future__ import annotations

from collections.abc import Sequence

from kb.reader.names.shortened import ON_BODY
from kb.reader.pieces.pieces import Piece
from kb.reader.words.forms import word_set
from kb.reader.words.machines import MACHINES
from kb.reader.words.tokens import Token

_MARCHING = word_set("i we you they who , to can may must should let always never")
_ATOP = word_set("on over")
_AT_HOME = word_set("at staying stay stays")
_PEOPLE = word_set("the general")
_DOING = word_set("cut cuts visit visits")
"""Verbs that are the last word of a place's or a day's name, too: "I have cut my hand" is at no Cut."""
_BEFORE_NOUN = word_set("the a an this that at in on to from near by during royal state official")


_SOMEBODY = word_set("chap")
"""Somebody, by a word of which the plural may be a thing, too: what riders wear over their legs."""


def is_misnamed(piece: Piece, tokens: Sequence[Token]) -> bool:
    """Whether one word is not what it would name."""
    if piece.tag != "name" or piece.last - piece.first != 1:
        return False
    token = tokens[piece.first]
    if is_penalty(tokens, piece.first):
        return True
    before = tokens[piece.first - 1].low if piece.first else ""
    if token.text in _SOMEBODY:
        return {entry.kind for entry in piece.entries} == {"item"}
    owners = {entry.owner for entry in piece.entries if entry.kind == "value"}
    if token.text == "march":
        return bool(owners) and before in _MARCHING
    if owners and owners != {"grade"} and _is_of_a_machine(tokens, piece.first):
        return True
    if before in _VERB_AFTER and token.low == token.key and {e.owner for e in piece.entries} == {"grade"}:
        return any(after.low in _PARTICLES for after in tokens[piece.first + 1 : piece.first + 2])
    if token.low == "top":
        return "grade" in owners and before in _ATOP
    if not piece.entries or any(entry.kind != "value" or not entry.rank for entry in piece.entries):
        return False
    if all(entry.rank >= _SHORT for entry in piece.entries) and _is_near(tokens, piece.first):
        return True
    if owners.isdisjoint(_STANDING) and _is_subject(piece, tokens):
        return True
    if token.low == "home":
        return before not in _AT_HOME
    if token.text in _DOING:
        return before not in _BEFORE_NOUN
    return (token.low == "public" and before in _PEOPLE) or (token.low in ON_BODY and before != "on")


def is_penalty(tokens: Sequence[Token], place: int) -> bool:
    """ "What's the fine for no badge?" asks what it costs, not what is fine."""
    before = tokens[place - 1].low if place else ""
    after = tokens[place + 1].low if place + 1 < len(tokens) else ""
    return tokens[place].low == "fine" and before in _COSTING and after in _FOR


_COSTING, _FOR = word_set("the a any"), frozenset({"for", "if", "when", ""})
_SHORT = 1
"""From which rank on a name is less than a label: of "working with a chipper" the last word."""


_VERB_AFTER = word_set("i we you they to must should can may n't not never")
_PARTICLES = word_set("in out over back round around")
"""What makes a verb of a word that is a grade's name, too: "I hand in my whistle"."""
_STANDING = frozenset({"grade", "branch", "rig"})
_ASKED_OF = word_set("do can may must should could are")
_HAVING = word_set("need have wear carry allowed to put take")
_LAST_WORD = 3


def _is_subject(piece: Piece, tokens: Sequence[Token]) -> bool:
    """ "Do customers need ear plugs": who is asked about is not what somebody does, "serving customers".

    The last word of such a name stands for all of it only where it is not itself whom the question is about.
    """
    if any(entry.rank < _LAST_WORD for entry in piece.entries):
        return False
    token, start = tokens[piece.first], piece.first
    while start and tokens[start - 1].low in ("the", "our", "all", "any", "my"):
        start -= 1
    led = start > 0 and tokens[start - 1].low in _ASKED_OF
    after = tokens[piece.last].low if piece.last < len(tokens) else ""
    return token.low != token.key and led and after in _HAVING


def _is_near(tokens: Sequence[Token], place: int) -> bool:
    """ "Near the chipper" is not yet working with it, and near the gate is not at it."""
    before = [token.low for token in tokens[max(place - 3, 0) : place]]
    while before and before[-1] in ("the", "a", "an", "our", "any"):
        before.pop()
    return before[-1:] in (["near"], ["beside"]) or before[-2:] in (["next", "to"], ["close", "to"])


def _is_of_a_machine(tokens: Sequence[Token], place: int) -> bool:
    """ "The lathe's turning", "the winch is moving": what a machine does, nobody does yet.

    Neither is working it told by that, nor is any other work that the same word is for.
    """
    low = tokens[place].low
    if low.endswith("ing"):
        before = [token.low for token in tokens[max(place - 4, 0) : place] if token.low not in _STILL]
        noun = before[-2:-1] if before[-1:] in (["is"], ["'s"], ["are"]) else before[-1:]
        return bool(noun) and _singular(noun[0]) in MACHINES and (noun != before[-1:] or "'" in noun[0])
    after = [token.low for token in tokens[place + 1 : place + 5] if token.low not in _STILL]
    runs = after[:1] in (["is"], ["'s"], ["are"]) and after[1:2] and after[1] in _RUNS
    return bool(runs) and _singular(low) in MACHINES


def _singular(low: str) -> str:
    return low.replace("’", "'").removesuffix("'s").removesuffix("s")


_STILL = word_set("still just now not n't")
_RUNS = word_set("running moving turning spinning going working rotating on")
