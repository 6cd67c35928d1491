"""Which clauses alter others that held before, and which of them a sentence speaks of."""

from __future__ import annotations

import re

from kb.model.lookup import Lookup
from kb.model.records import Clause


def altered(clause: Clause, lookup: Lookup) -> tuple[str, ...]:
    """The clauses that a clause replaces or ends, or whose rules its own go before, all of them older.

    What a lower authority orders beside them alters nothing.
    """
    rules = [name for rule in lookup.rules_of(clause.id) for name in (*rule.disables, *rule.exception_to)]
    over = dict.fromkeys(lookup.rules[name].clause for name in rules if name in lookup.rules)
    older = (one for one in over if is_altered(lookup.clauses[one], clause, lookup))
    return tuple(dict.fromkeys((*clause.replaces, *clause.repeals, *older)))


def is_altered(one: Clause, by: Clause, lookup: Lookup) -> bool:
    """Whether a clause is one that a later edition of the same or a higher authority may alter."""
    earlier = one.valid_from < by.valid_from and one.edition != by.edition
    return earlier and _rank(by, lookup) <= _rank(one, lookup)


def _rank(clause: Clause, lookup: Lookup) -> int:
    return lookup.authorities[lookup.books[lookup.editions[clause.edition].book].authority].rank


_OF_PART = re.compile(r"\bparts? (?P<parts>\d+(?:(?:, | and | or )\d+)*)", re.IGNORECASE)
_OF_CLAUSES = re.compile(
    r"\bclauses? (?P<first>[a-z]?\d[\d.]*\d|\d+)(?: to (?P<last>[a-z]?\d[\d.]*\d|\d+))?", re.IGNORECASE
)
_FROM_THIS = re.compile(r"\b(?:from|waive) (?:this|it)\b(?! (?:book|part|order|rule|chapter|section)\b)")
_ANY_CLAUSE = re.compile(r"\bany (?:clause|rule) (?:of this (?:book|order)|on|for)\b", re.IGNORECASE)
_NUMBERED = re.compile(
    r"\b(?:from|clauses?|rules?) \d+\.\d+(?:(?:, (?:and |or )?| and | or )\d+\.\d+)*\b(?! ?(?:mm|cm|m|°))"
)
_OF_SAFETY = re.compile(r"\b(?:safety|protect\w+)\b", re.IGNORECASE)


def takes_in(sentence: str, clause: Clause, other: Clause, protecting: bool) -> bool:
    """Whether what a sentence of a clause speaks of takes in another: "this clause", "Part 6", "3.3 to 3.6",
    "any clause of this book".

    "Safety items" take in what is `protecting`; what holds "under this clause" says nothing of others.
    """
    low = sentence.casefold()
    if "this clause" in low:
        return clause.id == other.id and "under this clause" not in low
    if _FROM_THIS.search(low) is not None:
        return clause.id == other.id
    if (parts := _OF_PART.search(sentence)) is not None:
        return other.number.split(".")[0] in re.findall(r"\d+", parts["parts"])
    if (span := _OF_CLAUSES.search(sentence)) is not None:
        first, last = _key(span["first"]), _key(span["last"] or span["first"])
        if first <= _key(other.number) <= last:
            return True
    if _ANY_CLAUSE.search(sentence) is not None:
        return True
    if (numbers := _NUMBERED.search(sentence)) is not None:
        return other.number in re.findall(r"\d+\.\d+", numbers[0])
    if span is not None:
        return False
    return protecting and _OF_SAFETY.search(sentence) is not None


def _key(number: str) -> tuple[int, ...]:
    return tuple(int(part) for part in re.findall(r"\d+", number))
