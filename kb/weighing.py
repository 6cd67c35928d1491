"""Which of two claims stands: each is asked, and what comes of both is said beside the first answer."""

from __future__ import annotations

from collections.abc import Callable

from kb.answer.alike import with_beside
from kb.model.questions import Answer, Query, Reading
from kb.model.values import ValueSet
from kb.reader.claims import TwoClaims, first_as_questions, second_as_questions, two_claims
from kb.reasoner import Facts

AskWith = Callable[[str, Facts, Reading | None], tuple[Answer, ...]]
_STANDS = "stands"
_FALLS = "does not stand"
_OPEN = "depends on more than is said"
_SILENT = "is of something that the books do not address"
_TURNED = {_STANDS: _FALLS, _FALLS: _STANDS}
_OTHERS = "is it true that only"
"""Of such a question the answer is whether the others may."""


def weighed(text: str, facts: Facts, ask: AskWith, stated: Callable[[str], Facts]) -> tuple[Answer, ...]:
    """The answers to both claims of a text, with which of them stands; empty where it has no two of them.

    `ask` answers a question in given facts, after a reading; `stated` gives the facts of a statement, none
    where it is not understood.
    """
    claims = two_claims(text)
    told_before = stated(claims.lead) if claims is not None and claims.lead else ()
    if claims is None or bool(claims.lead) != bool(told_before):
        return ()
    facts = tuple({**dict(facts), **dict(told_before)}.items())
    one, asked = None, ""
    for asked in first_as_questions(claims):
        told = ask(asked, facts, None)
        if (one := _plain(told)) is not None:
            break
        if len(told) == 1 and told[0].outcome == "ask":
            return told
    if one is None or one.reading.query is None:
        return ()
    if not claims.second:
        return (with_beside(one, [_said(_fate(one), _TURNED.get(_fate(one), _fate(one)))]),)
    second, question = _second(claims, one, facts, ask)
    if second is None:
        return (
            with_beside(one, [f"The first claim {_fate(one)}; what the second says was not understood."]),
        )
    if _settings(one.reading.query, facts) == {}:
        here = {**dict(facts), **_settings(second.reading.query, facts)}
        one = _plain(ask(asked, tuple(here.items()), None)) or one
    fate = _fate(second)
    fate = _TURNED.get(fate, fate) if question.startswith(_OTHERS) else fate
    return with_beside(one, [_said(_fate(one), fate)]), second


def _second(claims: TwoClaims, one: Answer, facts: Facts, ask: AskWith) -> tuple[Answer | None, str]:
    """The answer to the second claim, in what the first one states, and the question that it is."""
    known = {**dict(facts), **_settings(one.reading.query, facts)}
    for question in second_as_questions(claims):
        second = _plain(ask(question, tuple(known.items()), one.reading))
        if second is not None and second.reading.query != one.reading.query:
            return second, question
    return None, ""


def _settings(query: Query | None, facts: Facts) -> dict[str, ValueSet]:
    """What a claim states beside the thing, apart from what was known before."""
    stated = query.case.facts if query is not None else ()
    return {
        fact: values
        for fact, values in stated
        if (fact, values) not in facts and not fact.startswith("worn:")
    }


def _plain(answers: tuple[Answer, ...]) -> Answer | None:
    """The answer whether something is so, where there is one and no more, or one alone of a value."""
    if len(answers) > 1:
        answers = tuple(
            a for a in answers if a.reading.query is not None and a.reading.query.value is not None
        )
    if len(answers) != 1 or answers[0].outcome != "answer" or answers[0].reading.unused:
        return None
    query = answers[0].reading.query
    return answers[0] if query is not None and query.kind in ("may", "must") else None


def _fate(answer: Answer) -> str:
    """What becomes of a claim, by what the answer to it leads with."""
    if answer.verdict in ("silent", "conflict"):
        return _SILENT if answer.verdict == "silent" else _OPEN
    return (
        _STANDS
        if answer.headline.startswith("Yes")
        else _FALLS
        if answer.headline.startswith("No")
        else _OPEN
    )


def _said(first: str, second: str) -> str:
    both = {_STANDS: "Both claims stand.", _FALLS: "Neither claim stands."}
    if first == second:
        return both.get(first, f"Each of the two claims {first}.")
    if second == _STANDS:
        return f"Of the two claims the second stands, the first {first.removesuffix(' stand')}."
    return f"Of the two claims the first {first}, the second {second.removesuffix(' stand')}."
