"""The clause that a question speaks of by its own words: "when is everyone inspected", "who cleans the coat".

Only for questions that no rule answers: every word of weight must stand in the clause, and it must be nearer
to them than any other.
"""

from __future__ import annotations

from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Clause
from kb.reader.english import tag_set
from kb.reader.forms import word_set
from kb.reader.pieces import Piece, Understood
from kb.reader.spelling import akin

_ASKING = word_set("who whom whose when what which how where why")
_WEIGHTLESS = tag_set("""
    filler, det, poss, comma, self, person, may, can, must, should, have to, allowed, required, be, do, have
    and, or, on, in, of, for, if, to, with, by, what, which, who, where, how, how many, when, why, particle
    joined, service, list, show, between, range, mean, unread, rule, say, about, not, no
    book, which clause, clause
""")
_EMPTY = word_set("""
    get gets got happen often kind sort thing count keep make use end start begin stop old new young time last
    first next long far big
""")


def clause_by_words(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The one clause in force that has all words of weight; None where there is none or there are several."""
    opening = [token.low for token in found.tokens[:6]]
    if _ASKING.isdisjoint(opening) or opening[1:2] == ["about"]:
        return None
    words = [word for piece in found.pieces for word in _words_of(piece, found)]
    items = [frozenset(entry.id for entry in piece.entries) for piece in found.pieces if _is_item(piece)]
    if not any(_words_of(piece, found) for piece in found.pieces if piece.tag != "fact"):
        return None
    fitting = [
        clause
        for clause in lookup.base.clauses
        if _in_force(clause, case) and _speaks(clause, words) and _about(clause, items, lookup)
    ]
    if len(words) == 1 and not items:  # one word: a doing that one clause speaks of, or what one is headed
        doings = [t.low for t in found.tokens if t.low.endswith(("ed", "ing")) and words[0] in analyse(t.low)]
        exact = [clause for clause in fitting if doings and doings[0] in clause.text.casefold()]
        headed = [c for c in fitting if c.kind != "rule" and _is_said(words[0], analyse(c.heading or ""))]
        fitting = exact if len(exact) == 1 else headed
    ranked = sorted(((_closeness(clause, words), clause.id) for clause in fitting), reverse=True)
    if not ranked or (len(ranked) > 1 and ranked[0][0] == ranked[1][0]):
        return None
    return Query(kind="source", clause=ranked[0][1], case=case)


def _closeness(clause: Clause, words: list[str]) -> tuple[bool, int, int]:
    """How near the clause is to the words: in its heading, in the same form, close together."""
    heading = analyse(clause.heading or "")
    said = analyse(clause.text)
    titled = any(_is_said(word, heading) for word in words)
    return titled, sum(word in said for word in words), -_stretch(said, words)


def _stretch(said: tuple[str, ...], words: list[str]) -> int:
    """How far the words asked for lie apart in a text, where they are nearest."""
    best = len(said)
    for start in range(len(said)):
        missing = set(words)
        for end in range(start, min(start + best, len(said))):
            missing -= {word for word in missing if word == said[end] or akin(word, said[end])}
            if not missing:
                best = min(best, end - start)
                break
    return best


def _is_said(word: str, said: tuple[str, ...]) -> bool:
    return any(word == other or akin(word, other) for other in said)


def _is_item(piece: Piece) -> bool:
    return piece.tag in ("item", "items")


def _words_of(piece: Piece, found: Understood) -> tuple[str, ...]:
    if piece.tag in _WEIGHTLESS or _is_item(piece) or (piece.tag == "act" and piece.arg in ("wear", "use")):
        return ()
    lows = [token.low for token in found.tokens[piece.first : piece.last]]
    return tuple(word for word in analyse(" ".join(lows)) if word not in _EMPTY)


def _in_force(clause: Clause, case: Case) -> bool:
    day = case.as_of
    return clause.valid_from <= day and (clause.valid_until is None or day < clause.valid_until)


def _speaks(clause: Clause, words: list[str]) -> bool:
    said = analyse(f"{clause.heading or ''}. {clause.text}")
    return all(_is_said(word, said) for word in words)


def _about(clause: Clause, items: list[frozenset[str]], lookup: Lookup) -> bool:
    """Whether the clause names each of the items, or has a rule on it or its kinds."""
    if not items:
        return True
    said = f" {' '.join(analyse(clause.text))} "
    ruled = {item for rule in lookup.base.rules if rule.clause == clause.id for item in rule.scope.items}
    return all(
        any(ruled.intersection(lookup.broader(item)) or _named(item, said, lookup) for item in meant)
        for meant in items
    )


def _named(item: str, said: str, lookup: Lookup) -> bool:
    record = lookup.items[item]
    return any(f" {' '.join(analyse(name))} " in said for name in (record.label, *record.other_labels))
