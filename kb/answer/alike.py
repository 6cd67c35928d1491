"""A word that may mean several things, where the books leave no need to ask which: they fare alike, or rules
speak of one of them alone.

"Are smocks forbidden in the watch rig?" is answered for each smock. Nothing is left out of the others:
where one of them leads, it is said beside it how they fare.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.answer.common import replaced
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.months import months_of
from kb.model.questions import Answer, Query, QuestionKind, Reading, Verdict
from kb.model.records import is_in_force
from kb.model.values import is_subset
from kb.wording import is_place
from kb.wording.unless import ordinary, usually_in

_PLAIN: frozenset[QuestionKind] = frozenset({"may", "must", "why"})
_VALUED: frozenset[QuestionKind] = frozenset({"how", "where", "how_many"})
_ASKED_WHETHER: frozenset[QuestionKind] = frozenset({"may", "must"})
_TOLD_OF_ONE = frozenset({"appointment", "qualification", "waiver", "situation"})
_UNSETTLED = frozenset({None, "conditional", "silent", "conflict"})


def told_alike(readings: Sequence[Reading], answers: Sequence[Answer], lookup: Lookup) -> tuple[Answer, ...]:
    """The answers to give in place of asking which thing is meant; empty where it has to be asked.

    `answers[n]` is the answer to `readings[n]`, the question with the n-th of the things that may be meant.
    """
    queries = [reading.query for reading in readings if reading.query is not None]
    kinds = {query.kind for query in queries}
    if any(answer.outcome != "answer" for answer in answers) or not kinds <= _PLAIN | _VALUED | {"source"}:
        return ()
    if kinds == {"source"}:
        return _each(answers, queries)
    spoken = [a for a, query in zip(answers, queries, strict=True) if _speaks(a, query, lookup)]
    meant = _meant(readings, answers, lookup) if kinds <= _ASKED_WHETHER else None
    if meant is not None:
        return _led_by(_called_so(meant, readings, answers, lookup), answers)
    if len(spoken) == 1:
        sure = all(answer.verdict == "silent" for answer in answers if answer is not spoken[0])
        plain = sure or kinds <= _VALUED or usual_verdict(spoken[0], lookup) is not None
        return _led_by(spoken[0], answers) if plain else ()
    if kinds <= _ASKED_WHETHER and (bound := _told_of_them(readings, answers, lookup)) is not None:
        return _led_by(bound, answers)
    if len(kinds) == 1 and (one := _all_but_silent(spoken, answers)) is not None:
        return _led_by(one, answers)
    if len(spoken) < len(answers) or len(kinds) > 1:
        return ()
    if kinds == {"why"} and len({frozenset(c.clause for c in one.citations) for one in answers}) == 1:
        return _led_by(answers[0], answers)  # one clause, which tells the reason for all of them
    if kinds <= _VALUED:
        said = {_matter(answer, lookup) for answer in answers}
        if len(said) == 1:
            return _each(answers, queries)
        bearing = _bearing(readings, answers, known=False) or _bearing(readings, answers, known=True)
        return _led_by(bearing[0], answers) if len(bearing) == 1 else ()
    leads = {_lead(answer) for answer in answers}
    must = kinds == {"must"}
    required = [a for a in answers if (usual_verdict(a, lookup) if must else a.verdict) == "required"]
    if len(required) == 1:
        return _led_by(_called_so(required[0], readings, answers, lookup), answers)
    if len(leads) != 1 or "" in leads:
        return ()
    worn = [a for a in answers if queries[0].polarity != "not" or usual_verdict(a, lookup) != "prohibited"]
    return _led_by(worn[0], answers) if len(worn) == 1 else _each(answers, queries)


def _told_of_them(readings: Sequence[Reading], answers: Sequence[Answer], lookup: Lookup) -> Answer | None:
    """The one of which a rule speaks for the very people and the very place that are told: the cap that
    drivers take off in the cab. None where rules speak so of several, or the answer is not settled."""
    bound = [n for n, reading in enumerate(readings) if _names_people_and_place(reading, lookup)]
    if len(bound) != 1 or answers[bound[0]].verdict in _UNSETTLED:
        return None
    others = [usual_verdict(one, lookup) for n, one in enumerate(answers) if n != bound[0]]
    return answers[bound[0]] if _GRANTED.isdisjoint(others) else None


_GRANTED = frozenset({"required", "permitted"})
_PEOPLE = frozenset({"grade", "branch"})


def _names_people_and_place(reading: Reading, lookup: Lookup) -> bool:
    query = reading.query
    if query is None or not query.items:
        return False
    known, day = dict(query.case.facts), query.case.as_of
    for rule in lookup.base.rules:
        if (
            query.aspect != rule.aspect
            or query.items[0] not in rule.scope.items
            or not is_in_force(rule, day)
        ):
            continue
        met = {
            t.fact for t in tests(rule.condition) if t.fact in known and is_subset(known[t.fact], t.values)
        }
        people = {fact for fact in met if lookup.facts[fact].family in _PEOPLE}
        if people and any(lookup.facts[fact].family == "situation" for fact in met):
            return True
    return False


def _all_but_silent(spoken: Sequence[Answer], answers: Sequence[Answer]) -> Answer | None:
    """The first of several that fare alike, where no rule says anything of the others: "a tie" is none for
    the hair."""
    silent = [one for one in answers if one.verdict == "silent"]
    if len(spoken) < 2 or not silent or len(spoken) + len(silent) < len(answers):
        return None
    if len({one.verdict for one in spoken}) > 1 or spoken[0].verdict in _UNSETTLED:
        return None
    return spoken[0] if len({_lead(one) for one in spoken} - {""}) == 1 else None


def _called_so(
    leading: Answer, readings: Sequence[Reading], answers: Sequence[Answer], lookup: Lookup
) -> Answer:
    """The one that leads, or another where the word that was said is in its name alone: "the pin" is the
    keeper's pin before it is a collar device that somebody calls so."""
    unclear = [span.text for span in readings[0].spans if span.role == "item" and span.target is None]
    said = {word for text in unclear for word in text.casefold().split()}
    named = [
        answer
        for answer, reading in zip(answers, readings, strict=True)
        if reading.query is not None
        and said.issubset(lookup.items[reading.query.items[0]].label.casefold().split())
    ]
    return named[0] if said and len(named) == 1 and _lead(named[0]) else leading


def told_whichever(readings: Sequence[Reading], answers: Sequence[Answer]) -> tuple[Answer, ...]:
    """ "The coat instead of the smock", of which there are two: the answer, if it is one whichever is meant.

    The things that may be meant only stand beside the one asked about. What depends on more is not so told.
    """
    queries = [reading.query for reading in readings if reading.query is not None]
    if len(queries) < len(readings) or len({_apart_from_worn(query) for query in queries}) > 1:
        return ()
    if any(answer.outcome != "answer" or answer.verdict in _UNSETTLED for answer in answers):
        return ()
    return _led_by(answers[0], answers) if len({answer.headline for answer in answers}) == 1 else ()


def _apart_from_worn(query: Query) -> Query:
    facts = tuple(fact for fact in query.case.facts if not fact[0].startswith("worn:"))
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))


def _meant(readings: Sequence[Reading], answers: Sequence[Answer], lookup: Lookup) -> Answer | None:
    """The one that is meant where it is asked of each whether it is worn; None where that cannot be told.

    Either it alone is worn for what somebody is said to be or to do: the cap of the officer of the day. Or it
    alone is not kept out: the cap in a rig in which no other is worn.
    """
    usual = [usual_verdict(answer, lookup) for answer in answers]
    worn_for = [n for n, reading in enumerate(readings) if _is_worn_for(reading, lookup)]
    if len(worn_for) == 1:
        others = {verdict for n, verdict in enumerate(usual) if n != worn_for[0]}
        of_one = usual[worn_for[0]] != "silent" or others.isdisjoint(("permitted", "required"))
        return answers[worn_for[0]] if of_one and usual[worn_for[0]] != "prohibited" else None
    left = [n for n, verdict in enumerate(usual) if verdict != "prohibited"]
    if len(left) != 1 or usual[left[0]] not in ("permitted", "required"):
        return None
    (one,) = left
    query = readings[one].query
    open_facts = {lookup.facts[fact].family for case in answers[one].cases for fact, _ in case.when}
    plain = query is not None and query.polarity != "not"
    return answers[one] if plain and "rig" not in open_facts else None


def _is_worn_for(reading: Reading, lookup: Lookup) -> bool:
    """Whether a thing must be worn for what the question itself says that somebody is or does."""
    query = reading.query
    if query is None or not query.items:
        return False
    known, day = dict(query.case.facts), query.case.as_of
    said = {fact for fact in known.keys() - set(reading.carried) if _tells_which(fact, lookup)}
    rules = (
        rule
        for rule in lookup.base.rules
        if rule.modality == "must" and rule.aspect == query.aspect
        if query.items[0] in rule.scope.items and is_in_force(rule, day)
    )
    return any(
        test.fact in said and is_subset(known[test.fact], test.values)
        for rule in rules
        for test in tests(rule.condition)
    )


def _tells_which(fact: str, lookup: Lookup) -> bool:
    """Whether a fact is what somebody is or does, not a place or a season, which is so of all things."""
    record = lookup.facts[fact]
    return (
        record.family in _TOLD_OF_ONE
        and record.kind in ("choice", "yes_no")
        and not is_place(lookup, fact)
        and not months_of(record)
    )


def _speaks(answer: Answer, query: Query, lookup: Lookup) -> bool:
    """Whether rules answer what was asked, and not another question in its place.

    A rule that holds out of the ordinary alone ("not in town") does not tell which thing is meant.
    """
    told = answer.reading.query
    usual = usual_verdict(answer, lookup) if query.kind in _PLAIN else answer.verdict
    return usual != "silent" and told is not None and told.kind == query.kind


def _matter(answer: Answer, lookup: Lookup) -> str:
    """What an answer says, apart from the thing that it says it of."""
    query = answer.reading.query
    label = lookup.items[query.items[0]].label if query is not None else ""
    return answer.headline.replace(label, "")


def _bearing(readings: Sequence[Reading], answers: Sequence[Answer], known: bool) -> list[Answer]:
    return [a for a, reading in zip(answers, readings, strict=True) if _rests_on_said(a, reading, known)]


def _rests_on_said(answer: Answer, reading: Reading, known: bool) -> bool:
    """Whether a rule that still speaks does so for what the question itself states, or is `known` besides."""
    query = reading.query
    said = {fact for fact, _ in query.case.facts} if query is not None else set()
    said -= set() if known else set(reading.carried)
    return any(
        fact in said
        for derivation in answer.derivation
        for step in derivation.steps
        if step.alive
        for fact, _ in step.facts
    )


def usual_verdict(answer: Answer, lookup: Lookup) -> Verdict | None:
    """The verdict where nothing is out of the ordinary: what must not be worn is not what one takes off."""
    if answer.verdict != "conditional":
        return answer.verdict
    query = answer.reading.query
    said = usually_in(lookup, query, of_duty=False) if query is not None else {}
    usual = ordinary(lookup, [(case.when, case.verdict) for case in answer.cases], said)
    return answer.cases[usual].verdict if usual is not None else None


def _lead(answer: Answer) -> str:
    """ "Yes" or "No", as the answer begins; the verdict where it was asked why; empty where it is neither."""
    query = answer.reading.query
    if query is not None and query.kind == "why":
        return answer.verdict if answer.verdict in ("required", "prohibited") else ""
    word = answer.headline.partition(" ")[0].rstrip(".,:;")
    return word if word in ("Yes", "No") else ""


def _each(answers: Sequence[Answer], queries: Sequence[Query]) -> tuple[Answer, ...]:
    items = tuple(dict.fromkeys(item for query in queries for item in query.items[:1]))
    whole = msgspec.structs.replace(queries[0], items=items)
    return tuple(
        replaced(answer, reading=msgspec.structs.replace(answer.reading, frame=whole)) for answer in answers
    )


def _led_by(leading: Answer, answers: Sequence[Answer]) -> tuple[Answer, ...]:
    others = [answer for answer in answers if answer is not leading]
    return (with_beside(leading, [f"{other.reading.text} {other.headline}" for other in others]),)


def with_beside(answer: Answer, said: Sequence[str]) -> Answer:
    """The answer with what else its question may ask, said beside its reading."""
    reading = msgspec.structs.replace(answer.reading, beside=(*answer.reading.beside, *said))
    return replaced(answer, reading=reading)
