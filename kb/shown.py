"""The clause that is shown where no rule answers, and the clauses to read where none clearly does."""

from __future__ import annotations

import datetime
from collections.abc import Callable

import msgspec

from kb.answer.common import replaced
from kb.answer.speaking import clauses_that_speak
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Reading
from kb.wording import say_query

Tell = Callable[[Reading], Answer]
_LESS = "without it"


def by_a_clause(reading: Reading, as_of: datetime.date, answer: Tell, lookup: Lookup) -> Answer | None:
    """The one clause that most words of an open question speak of.

    Where something is to be chosen it must surely tell what is asked for.
    """
    ask = reading.ask
    if ask is not None and ask.fact not in ("item", "reading"):
        return None
    choosing = ask is not None and bool({said for _, said in ask.choices} - {_LESS})
    from kb.reader.recast.by_most_words import clause_by_most_words  # noqa: PLC0415  most are understood before
    from kb.reader.recast.let_off import NONE_SAYS_WHO  # noqa: PLC0415  as above

    # what other clauses say of the thing does not tell who may allow it
    sought = reading.abstain is not None and reading.abstain.reason.startswith(NONE_SAYS_WHO)
    found = None if sought else clause_by_most_words(reading, as_of, lookup, surely=choosing)
    if found is None and not choosing:
        from kb.reader.stories.provided import clause_provided  # noqa: PLC0415  as above

        found = clause_provided(reading, as_of, lookup)
    return answer(found) if found is not None else None


def to_read(plain: Answer, as_of: datetime.date, lookup: Lookup) -> Answer:
    """An answer that refuses, or that asks without a choice, with the clauses that speak of it."""
    if plain.ask is not None and (plain.ask.choices or not names_a_thing(plain.reading)):
        return plain
    told = clauses_that_speak(plain.reading, as_of, lookup)
    return replaced(plain, as_of=as_of.isoformat(), speaking=told)


def told_or_read(reading: Reading, plain: Answer, answer: Tell, lookup: Lookup) -> Answer:
    """For an open question of which no rule speaks, the clause that tells it, or those to read beside."""
    query = reading.query
    if plain.verdict != "silent" or query is None:
        return plain
    if query.kind == "source" and not query.items:
        from kb.reader.meaning.defined import meaning_asked  # noqa: PLC0415  as above

        meant = meaning_asked(reading.question, query.case, lookup)
        if meant is None:
            return plain
        return answer(msgspec.structs.replace(reading, query=meant, text=say_query(lookup, meant)))
    if query.kind in ("source", "compare"):
        return plain
    if query.kind in ("may", "must"):
        from kb.reader.recast.told_by import SURE, kind_of  # noqa: PLC0415  few are silent

        done = bool(query.items) and query.aspect not in ("wear", lookup.use_of(query.items[0]))
        if not done and kind_of(reading.question) not in {*SURE, "often", "until", "cost"}:
            return plain  # whether it may be worn is asked
    day = query.case.as_of  # which may be long past
    told = by_a_clause(reading, day, answer, lookup)
    return told or replaced(plain, speaking=clauses_that_speak(reading, day, lookup, beside=True))


def names_a_thing(reading: Reading) -> bool:
    return any(span.role == "item" and span.how != "index" for span in reading.spans)
