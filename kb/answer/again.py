"""The words of a saved answer whose claims hold: said again from its reading, and compared."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from typing import Any

from kb.answer.assemble import answer_query
from kb.answer.citing import citation
from kb.answer.common import replaced
from kb.answer.encode import answer_object
from kb.errors import UsageError
from kb.model.questions import Answer, Citation, Query, Reading
from kb.model.records import Case
from kb.plain import facts_from_json, values_from_json
from kb.reasoner import Engine
from kb.wording import say_query, say_query_on_its_day

AsPut = Callable[[str, Answer], Answer]


def saved_query(engine: Engine, reading: Any) -> Query:
    """The query that a saved reading stands for."""
    facts = tuple(facts_from_json(reading["facts"]).items())
    value, other = reading["value"], reading["other"]
    return Query(
        kind=reading["kind"],
        items=tuple(reading["items"]),
        aspect=reading["aspect"],
        value=None if value is None else values_from_json(value),
        polarity=reading["polarity"],
        case=Case(as_of=engine.as_of, facts=facts, alone=reading["alone"]),
        clause=reading["clause"],
        modalities=tuple(reading["verdicts"]),
        book=reading["book"],
        as_such=reading["as_such"],
        other=None if other is None else _saved_case(other),
    )


def _saved_case(other: Any) -> Case:
    """The second case of a comparison."""
    day = datetime.date.fromisoformat(other["as_of"])
    return Case(as_of=day, facts=tuple(facts_from_json(other["facts"]).items()), alone=other["alone"])


def difference(saved: Any, said: Any, where: str = "") -> tuple[str, str] | None:
    """The first place at which two JSON values differ, and what stands there in the second."""
    if isinstance(saved, dict) and isinstance(said, dict) and saved.keys() == said.keys():
        places = ((f"{where}.{key}".lstrip("."), saved[key], said[key]) for key in said)
    elif isinstance(saved, list) and isinstance(said, list) and len(saved) == len(said):
        places = ((f"{where}[{n}]", *pair) for n, pair in enumerate(zip(saved, said, strict=True)))
    else:
        same = saved == said and type(saved) is type(said)
        return None if same else (where, f"the program says {said!r:.200}")
    return next((found for place in places if (found := difference(place[1], place[2], place[0]))), None)


def words_differ(engine: Engine, data: Any, digest: str, as_put: AsPut) -> tuple[str, str] | None:
    """Where a saved answer uses other words than the program for the same reading; None if nowhere.

    `as_put` gives an answer the first word that fits how its question is put.

    How the question was taken apart (`spans`, `carried`) is not compared: it rests on what came before it.
    """
    if data["reading"]["kind"] is None:
        return None
    try:
        return _compared(engine, data, digest, as_put)
    except (UsageError, LookupError, TypeError, ValueError) as error:
        return "the answer", f"it cannot be said again: {error}"


def _as_cited(engine: Engine, shown: Any) -> tuple[Citation, ...]:
    return tuple(citation(engine.lookup, f"{one['edition']}/{one['clause']}", ()) for one in shown)


def _compared(engine: Engine, data: Any, digest: str, as_put: AsPut) -> tuple[str, str] | None:
    saved = data["reading"]
    query = saved_query(engine, saved)
    text = say_query(engine.lookup, query)
    reading = Reading(question=data["question"], text=text, query=query)
    answer = answer_query(engine, reading, digest)
    if answer.verdict == "silent":  # which clauses stand beside rests on the words of the question
        answer = replaced(answer, speaking=_as_cited(engine, data["speaking"]))
    put = as_put(data["question"], answer)
    again = answer_object(put if data["headline"] == put.headline else answer)
    if saved["text"] not in (text, say_query_on_its_day(engine.lookup, query)):
        return "reading.text", f"the reading is said as {text!r}"
    return difference({**data, "reading": None}, {**again, "reading": None})
