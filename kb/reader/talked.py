"""What a turn of a talk is read in, and readings made of a query rather than of words."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case
from kb.reader.lexicon import Lexicon
from kb.reader.question import read_question
from kb.reader.spelling import Search
from kb.wording import say_query


class Talk(msgspec.Struct, frozen=True):
    """The books, what is remembered, and the index."""

    lexicon: Lexicon
    lookup: Lookup
    case: Case
    search: Search | None

    def read(self, text: str, previous: Reading | None) -> Reading:
        """One text as a question that may go on from `previous`."""
        return read_question(
            text, lexicon=self.lexicon, lookup=self.lookup, case=self.case, search=self.search,
            previous=previous,
        )  # fmt: skip

    def made(self, text: str, query: Query) -> Reading:
        """The reading of a text that a query is made of; all its facts are kept from before."""
        kept = tuple(fact for fact, _ in query.case.facts)
        return Reading(question=text, text=say_query(self.lookup, query), query=query, carried=kept)
