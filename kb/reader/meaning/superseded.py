"""Questions about a clause by its number: "which clause replaced 5.17", "is clause 7.7 still in force"."""

from __future__ import annotations

import re

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query
from kb.model.records import Case
from kb.reader.meaning.defined import find_clause
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

LEAD = (
    r"(?:(?:so|and|but|ok|okay|well|please|right|now|also|hi|hello|just|(?:can|could|will|would) you"
    r" (?:please )?"
    r"(?:tell|show|list|remind)(?: me| us)?|tell (?:me|us)|(?:list|show|name)(?: me| us)? (?=what|which"
    r"|any|all)|remind me|do you know|i['’]d like to know) ?,? ?)*"
)
NUMBER = Pattern(
    r"\b(?:clauses?|rule|paragraph|section) [a-z]?\d+(?:\.\d+)*\b|\b\d+\.\d+\b(?! ?(?:mm|cm|m|in|kg|km|°"
    r"|deg))"
)
_GONE = (
    r"(?:replac(?:e|es|ed)|superseded?s?|amend(?:s|ed)?|chang(?:e|es|ed)|repeal(?:s|ed)?|end(?:s|ed)?"
    r"|cancel(?:s|led)?"
    r"|(?:takes?|took|taken) the place of|in force|valid|current|stand(?:s|ing)?|appl(?:y|ies)|hold(?:s"
    r"|ing)?|good"
    r"|say|said|says|read|there|different|the same)"
)
_OF_CLAUSE = Pattern(
    rf"{LEAD}(?:(?:what|which|is|has|was|were|does|did|do|how) )(?:(?:clauses?|rules?|paragraphs?|has|is"
    rf"|was|did|does|we|you|still"
    rf"|it|have|been|used to|the old|old|any|part|later) )*(?:clause |rule |paragraph )?<n>"
    rf"(?: (?:still|no longer|been|now|ever|use to|used to|be|is|was|has|like|by|with|to|what|before"
    rf"|originally|at first"
    rf"|earlier|previously|before it was|it was|back then|in the past|then|instead|until then|any more"
    rf"|anymore|{_GONE}))*"
)
_BY_WHAT = Pattern(
    rf"{LEAD}(?:what|which)(?: other)?(?: clause| rule| paragraph)?(?: has| have| had)? {_GONE} (?:clause "
    rf"|rule )?<n>(?: (?:by|with|now|then))?"
    rf"|{LEAD}(?:any |the |what )*(?:amendments?|changes?|alterations?) (?:to|of|in) (?:clause |rule )?<n>"
)


def of_clause(said: str, found: Understood, case: Case, lookup: Lookup) -> Query | Ask | None:
    """ "Which clause replaced 5.17", "is clause 7.7 still in force": that clause, shown with the new."""
    match = Pattern(r"\b[a-z]?\d+(?:\.\d+)*\b").search(said)
    books = {piece.arg for piece in found.pieces if piece.tag == "book"}
    if match is None or len(books) > 1:
        return None
    bare = f"{said[: match.start()]}<n>{said[match.end() :]}"
    if not (_OF_CLAUSE.fullmatch(bare) or _BY_WHAT.fullmatch(bare)):
        return None
    gone = [
        clause
        for clause in lookup.base.clauses
        if clause.number.casefold() == match.group()
        and clause.replaced_by is not None
        and lookup.clauses[clause.replaced_by].valid_from <= case.as_of
        and books <= {clause.edition, lookup.editions[clause.edition].book}
    ]
    if len(gone) == 1 and not re.search(r"\b(?:now|currently|today|these days)\b", said):
        return Query(kind="source", clause=gone[0].id, case=case)
    clause = find_clause(match.group(), next(iter(books), ""), case, lookup)
    return None if isinstance(clause, Abstain) else clause
