"""Who made the books and what goes before what: "who may change these rules", "which clause wins".

Both are answered by the one clause that says so; where several do, or none, nothing is.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Clause, is_in_force
from kb.reader.pieces.pieces import Understood
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_BOOKS = (
    r"(?:(?:dress|uniform) )?"
    r"(?:instructions|regulations|rules|rulebook|rule book|regs|book|order|orders|manual)"
)
_DOES = (
    r"(?:issue|issues|issued|make|makes|made|write|writes|wrote|amend|amends|change|changes|alter|alters|revise"
    r"|revises|update|updates|rewrite|publish|publishes|published)"
)
_MADE = Pattern(
    r"(?i)^(?:so |and )?who"
    rf"(?: (?:can|may|could|is allowed to|has the (?:right|power|authority) to|gets to))? {_DOES}"
    rf"(?: and(?: who)?(?: has the right to| may| can| alone)? {_DOES})? (?:the|these|this|those|our|your)\s"
    rf"(?:[a-z]+ )?{_BOOKS}(?: and (?:who )?"
    r"(?:(?:has|have) the (?:right|power|authority) to|may|can|could|is allowed to) "
    rf"{_DOES} (?:them|it|these))?\W*$"
)
_AMENDS = Pattern(r"(?i)\b(?:amend|alter|chang|revis|updat)\w*\b")
_ISSUES = Pattern(r"(?i)\b(?:issued|made|written|published) by\b")
_CHANGING = Pattern(r"(?i)\b(?:amend|change|alter|revise|update|rewrite)s?\b")
_WINS = Pattern(
    r"(?i)\b(?:whose (?:word|say|order) (?:counts|goes|wins|prevails|comes first|is final)|"
    r"(?:which|what)(?: one| of (?:them|the two)| clause| rule)? "
    r"(?:wins|prevails|counts|applies|goes before|takes precedence|has priority|comes first))\b"
)
_PREVAILS = Pattern(r"(?i)\b(?:prevails?|goes before|go before|takes? precedence|overrides?)\b")
_CLAUSES = Pattern(r"(?i)\b(?:clauses?|rules?)\b.*\bgeneral\b|\bgeneral\b.*\b(?:clauses?|rules?)\b")


def issued(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The clause that says who made the books, or what goes before what; None where it is not asked."""
    text = " ".join(found.text.split())
    if _MADE.search(text):
        changing = _CHANGING.search(text)
        wanted = _AMENDS if changing else _ISSUES
        return _the_only(
            case,
            (
                clause
                for clause in _general(case, lookup)
                if wanted.search(clause.text) and _names_authority(clause, lookup)
            ),
        )
    if _WINS.search(text):
        prevailing = [c for c in _in_force(case, lookup) if _PREVAILS.search(c.text)]
        if _CLAUSES.search(text):
            return _the_only(case, (c for c in prevailing if _CLAUSES.search(c.text)))
        held = {piece.fact for piece in found.pieces if piece.tag == "fact"}
        keys = [
            _keys(lookup.facts[fact].label) for fact in held if lookup.facts[fact].family == "appointment"
        ]
        keys += [
            _keys(value.label)
            for piece in found.pieces
            if piece.tag == "values"
            for entry in piece.entries
            for value in lookup.facts[entry.owner].values
            if entry.id == value.id
        ]
        return _the_only(case, (c for c in prevailing if any(key <= _keys(c.text) for key in keys)))
    return None


def _the_only(case: Case, clauses: Iterator[Clause]) -> Query | None:
    found = [clause.id for clause in clauses]
    return (
        Query(kind="source", items=(), clause=found[0], case=Case(as_of=case.as_of))
        if len(found) == 1
        else None
    )


def _in_force(case: Case, lookup: Lookup) -> Iterator[Clause]:
    for clause in lookup.base.clauses:
        if is_in_force(clause, case.as_of):
            yield clause


def _general(case: Case, lookup: Lookup) -> Iterator[Clause]:
    """Clauses in force of which no rule is made."""
    ruled = {rule.clause for rule in lookup.base.rules}
    yield from (clause for clause in _in_force(case, lookup) if clause.id not in ruled)


def _names_authority(clause: Clause, lookup: Lookup) -> bool:
    words = _keys(clause.text)
    names = [name for a in lookup.base.authorities for name in (a.label, *a.other_labels)]
    return any(_keys(name) <= words for name in names)


def _keys(text: str) -> set[str]:
    return {token.key for token in tokenize(text)}
