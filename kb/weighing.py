"""Which of two claims, or measures, stands: each is asked, and what comes of both is said beside the first.

"He says 30 mm, I say 25"; "is 3 cm ok or must it be 2"; "a 5 by 1 in strip".
"""

from __future__ import annotations

import re
from collections.abc import Callable

from kb.answer.alike import with_beside
from kb.answer.common import replaced
from kb.confirmed import confirmed
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading
from kb.model.values import ValueSet
from kb.reader.meaning.measured import rule_aspects
from kb.reader.stories.claims import (
    NOBODY,
    TwoClaims,
    exact_claim,
    first_as_questions,
    paired_measures,
    second_as_questions,
    two_claims,
    two_measures,
)
from kb.reasoner import Facts
from kb.text import yes_or_no

AskWith = Callable[[str, Facts, Reading | None], tuple[Answer, ...]]
_STANDS = "stands"
_FALLS = "does not stand"
_OPEN = "depends on more than is said"
_SILENT = "is of something that the books do not address"
_TURNED = {_STANDS: _FALLS, _FALLS: _STANDS}
_OTHERS = "is it true that only"
"""Of such a question the answer is whether the others may."""


def weighed(
    text: str, facts: Facts, ask: AskWith, stated: Callable[[str], Facts], lookup: Lookup
) -> tuple[Answer, ...]:
    """The answers to both claims of a text, with which of them stands; empty where it has no two of them.

    `ask` answers a question in given facts, after a reading; `stated` gives the facts of a statement, none
    where it is not understood.
    """
    if (exact := exact_claim(text)) is not None:
        return tuple(replaced(one, question=text) for one in _exactly(exact, facts, ask))
    claims = two_claims(text) or two_measures(text)
    told_before = stated(claims.lead) if claims is not None and claims.lead else ()
    if claims is None:
        return _both_ways_round(text, facts, ask, lookup)
    if bool(claims.lead) != bool(told_before):
        return ()
    facts = tuple({**dict(facts), **dict(told_before)}.items())
    one, asked = None, ""
    for asked in first_as_questions(claims):
        told = ask(asked, facts, None)
        if (one := _plain(told)) is not None:
            break
        if len(told) == 1 and told[0].outcome == "ask":
            return (claims.called == "measures" and _of_one_side(claims, told[0], facts, ask, lookup)) or told
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
    fate = _TURNED.get(fate, fate) if question.startswith((_OTHERS, NOBODY)) else fate
    return with_beside(one, [_said(_fate(one), fate, claims.called)]), second


def _exactly(said: tuple[str, str], facts: Facts, ask: AskWith) -> tuple[Answer, ...]:
    """Whether it must be as somebody claims, where it is otherwise: not where that may be, too."""
    one = _plain(ask(said[0], facts, None))
    return () if one is None or _fate(one) not in (_STANDS, _FALLS) else (_held_exactly(said[1], one),)


def _held_exactly(measure: str, one: Answer) -> Answer:
    rest = re.sub(r"^(?:Yes|No)\b[.:,]? *", "", one.headline)
    fate = f"No: it need not be {measure} exactly." if _fate(one) == _STANDS else "As it is it may not stay."
    return replaced(one, headline=f"{fate} {rest[:1].upper()}{rest[1:]}")


def as_put(text: str, answer: Answer) -> Answer:
    """An answer with the first words that fit how its question is put."""
    exact = exact_claim(text)
    if exact is not None and _fate(answer) in (_STANDS, _FALLS):
        return _held_exactly(exact[1], answer)
    return confirmed(text, answer)


_TRADE = ("width", "length", "height", "diameter")
"""The order in which two measures of a thing are said."""


def _both_ways_round(text: str, facts: Facts, ask: AskWith, lookup: Lookup) -> tuple[Answer, ...]:
    """ "A 5 by 1 in strip": each of the two measures of it, in the order in which more of them stand."""
    pair = paired_measures(text)
    told = ask(pair[0], facts, None) if pair is not None else ()
    query = told[0].reading.query if len(told) == 1 else None
    if pair is None or query is None or not query.items or query.kind not in ("may", "must"):
        return told if len(told) == 1 and told[0].outcome == "ask" else ()
    spoken = set(rule_aspects(query.items[0], lookup)) & set(lookup.aspects_within("size"))
    sides = [aspect for aspect in _TRADE if aspect in spoken]
    label, given = (
        lookup.items[query.items[0]].label,
        tuple({**dict(facts), **dict(query.case.facts)}.items()),
    )
    if len(sides) == 1:
        return _alone(sides[0], label, pair[1], given, ask, lookup)
    if len(sides) != len(pair[1]):
        return ()
    ways = []
    for way in (sides, sides[::-1]):
        texts = [
            f"may the {lookup.aspects[a].label} of the {label} be {m}?"
            for a, m in zip(way, pair[1], strict=True)
        ]
        ways.append([_plain(ask(one, given, None)) for one in texts])
    one, other = max(ways, key=lambda way: sum(a is not None and _fate(a) != _FALLS for a in way))
    return () if one is None or other is None else (one, other)


def _alone(
    side: str, label: str, sizes: tuple[str, str], given: Facts, ask: AskWith, lookup: Lookup
) -> tuple[Answer, ...]:
    """Two measures of a thing of which one side alone is fixed: that which may be so, else the first of them.

    What is round is as much both ways: there the larger counts, the one that may not be so before the other.
    """
    named = lookup.aspects[side].label
    told = [_plain(ask(f"may the {named} of the {label} be {size}?", given, None)) for size in sizes]
    found = [answer for answer in told if answer is not None]
    if len(found) != len(sizes):
        return ()
    wanted = _FALLS if side == "diameter" else _STANDS
    lead = next((answer for answer in found if _fate(answer) == wanted), found[0])
    return (
        lead if side == "diameter" else with_beside(lead, [f"Only the {named} of the {label} is fixed."]),
    )


def _of_one_side(
    claims: TwoClaims, told: Answer, facts: Facts, ask: AskWith, lookup: Lookup
) -> tuple[Answer, ...]:
    """ "Must the belt be 1 1/2 in or is 2 in ok": of the side which the books fix at just one of the two."""
    sides = []
    for _, said in told.ask.choices if told.ask is not None else ():
        first = _plain(ask(said, facts, None))
        query = first.reading.query if first is not None else None
        if first is None or query is None or not query.items:
            return ()
        named, label = lookup.aspects[query.aspect].label, lookup.items[query.items[0]].label
        second = _plain(ask(f"may the {named} of the {label} be {claims.second}?", facts, None))
        if second is not None and "required" in (first.verdict, second.verdict):
            sides.append((first, second))
    if len(sides) != 1:
        return ()
    one, other = sides[0]
    return with_beside(one, [_said(_fate(one), _fate(other), claims.called)]), other


def _second(claims: TwoClaims, one: Answer, facts: Facts, ask: AskWith) -> tuple[Answer | None, str]:
    """The answer to the second claim, in what the first one states, and the question that it is."""
    known = {**dict(facts), **_settings(one.reading.query, facts)}
    for question in second_as_questions(claims):
        given = facts if question.startswith(NOBODY) else tuple(known.items())  # of the others, too
        second = _plain(ask(question, given, one.reading))
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
        if yes_or_no(answer.headline) == "Yes"
        else _FALLS
        if yes_or_no(answer.headline) == "No"
        else _OPEN
    )


def _said(first: str, second: str, called: str = "claims") -> str:
    both = {_STANDS: f"Both {called} stand.", _FALLS: f"Neither of the two {called} stands."}
    if first == second:
        return both.get(first, f"Each of the two {called} {first}.")
    if second == _STANDS:
        return f"Of the two {called} the second stands, the first {first.removesuffix(' stand')}."
    return f"Of the two {called} the first {first}, the second {second.removesuffix(' stand')}."
