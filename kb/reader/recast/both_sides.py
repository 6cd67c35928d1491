"""The clause that names both sides of a comparison, where no rule of the thing tells them apart.

"The bars are red; those of officers are silver" need be no rule on the colour of what they are worn on.
"""

from __future__ import annotations

import datetime

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import is_in_force
from kb.reader.recast.replaced import names_in
from kb.reader.recast.telling import analysed
from kb.reader.words.forms import word_set
from kb.wording import say_query

_DIFFERING = word_set("difference differ different compare between one what whats")


def clause_of_both(reading: Reading, as_of: datetime.date, lookup: Lookup) -> Reading | None:
    """The reading of a comparison of grades as a question for the one clause with all words of it."""
    query = reading.query
    if query is None or query.other is None or len(query.items) != 1:
        return None
    apart = {fact for fact, _ in {*query.case.facts} ^ {*query.other.facts}}
    said = [lemma for lemma in analysed(reading.question) if lemma not in _DIFFERING]
    if not said or not apart or any(lookup.facts[fact].family != "grade" for fact in apart):
        return None  # another book may say something else of a place, and a clause is of one day
    found = []
    for clause in lookup.base.clauses:
        words = analysed(clause.text)
        if is_in_force(clause, as_of) and all(word in words for word in said):
            found += [clause.id] if names_in(query.items[0], clause.text, lookup, wide=False) else []
    if len(found) != 1:
        return None
    asked = Query(kind="source", clause=found[0], case=msgspec.structs.replace(query.case, facts=()))
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))
