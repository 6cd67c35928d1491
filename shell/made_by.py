"""Whose order it is: of all that an answer rests on, the book that a line calls by its kind.

"Who made that order?", after an answer by a code and an order, asks of the order; the clause of it that says
by whom or under what power it is made stands with those that carried the answer.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import msgspec

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

_KIND = re.compile(
    r"\b(?:that|this|the|such an?) (?:\w+ )?"
    r"(order|minute|amendment|notice|circular|supplement|sheet|code)\W*$",
    re.IGNORECASE,
)
_MADE = re.compile(r"\bis (?:made|given|issued) (?:by|under)\b", re.IGNORECASE)


def of_the_book_named(text: str, before: Answer, base: KnowledgeBase) -> Answer:
    """An answer with the clauses of the one book that a line names by its kind; as it is otherwise."""
    kind = _KIND.search(text)
    if kind is None:
        return before
    named = tuple(cited for cited in before.citations if kind.group(1).casefold() in cited.title.casefold())
    editions = {cited.edition for cited in named}
    if len(editions) != 1:
        return before
    known = {cited.clause for cited in named}
    made = [
        msgspec.structs.replace(
            named[0], number=clause.number, clause=clause.id, text=clause.text, rules=(), at=clause.at
        )
        for clause in base.lookup.base.clauses
        if clause.edition in editions and clause.id not in known and _MADE.search(clause.text)
    ]
    return msgspec.structs.replace(before, citations=(*made[:1], *named))
