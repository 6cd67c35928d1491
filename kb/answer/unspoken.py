"""A silence on a case, where clauses speak of the same act in other cases: what they say comes first.

"Do I need eye protection, with the machine off?" is not told that no clause addresses it, but that none
requires it in that case, and when one does. It stays a silence: what no rule reaches is neither allowed nor
forbidden.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.answer.citing import citation, with_cited
from kb.model.conditions import evaluate, tests
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query
from kb.model.records import Modality, Rule
from kb.model.values import intersect, is_empty
from kb.reasoner import Engine
from kb.text import Pattern
from kb.wording import clause_reference, listing, say_rule, the_item

_MOST, _LONGEST = 2, 220
"""Rules that are told, and the letters of one: more than that is left to the clauses."""


def with_unspoken(engine: Engine, query: Query, answer: Answer) -> Answer:
    """The answer to a question of an act on which no rule applies, with the rules on other cases."""
    rules = _on_act(engine, query)
    if query.kind == "must":
        rules = [rule for rule in rules if rule.modality == "must"] or rules
    if not rules:
        return answer
    lookup = engine.lookup
    clauses = list(dict.fromkeys(rule.clause for rule in rules))
    said = _sentences(engine, rules)
    if not said:
        named = [clause_reference(lookup, clause) for clause in clauses[: 2 * _MOST]]
        more = ["further clauses"] if len(clauses) > 2 * _MOST else []
        verb = "speaks" if len(clauses) == 1 else "speak"
        it = the_item(lookup, query.items[0])
        said = [f"{listing([*named, *more])} {verb} of {it}, but not of this case."]
    return msgspec.structs.replace(
        answer,
        headline=" ".join((_lead(lookup, query, {rule.modality for rule in rules}), *said)),
        speaking=tuple(citation(lookup, clause, ()) for clause in clauses[:_MOST]),
    )


def _lead(lookup: Lookup, query: Query, told: set[Modality]) -> str:
    """What no clause does here that one does elsewhere, of what was asked."""
    if query.kind == "must" and query.polarity == "do" and "must" in told:
        return f"{_NOT_REQUIRED}."
    if query.kind == "may" and query.polarity == "do" and "may" in told:
        return "No clause allows it in this case, and none forbids it."
    if query.kind == "may" and query.polarity == "do" and "must" in told:
        return f"{_NOT_REQUIRED}, and none forbids it."
    if query.kind == "may" and query.polarity == "not" and "must" in told:
        return f"No clause requires {the_item(lookup, query.items[0])} in this case."
    return "The books are silent on this case."


_NOT_REQUIRED = "No clause requires it in this case"
_SILENT = "otherwise the books are silent."
_ON = "It depends on "


def with_elsewhere(engine: Engine, query: Query, answer: Answer) -> Answer:
    """A table that leads to a silence, with the leave and the duties that what was stated keeps out."""
    known = dict(query.case.facts)
    in_rig = {fact: values for fact, values in known.items() if fact == "rig"}.get
    answer = _with_no_duty(query, answer)
    if not known or answer.verdict != "conditional" or not answer.headline.endswith(_SILENT):
        return answer
    rules = [
        rule
        for rule in _on_act(engine, query)
        if rule.modality in ("may", "must")
        and evaluate(condition := engine.condition(rule.id), known.get) is False
        and evaluate(condition, in_rig) is not False  # what holds in another rig is no news in this one
    ]
    said = _sentences(engine, rules)
    if not said:
        return answer
    start, plain = answer.headline.removesuffix(_SILENT), query.kind == "may" and query.polarity == "do"
    left = any(case.verdict in ("permitted", "required", "not_required") for case in answer.cases)
    rest = "otherwise no clause allows or forbids it here." if plain and not left else _SILENT
    if plain and not left and query.value is None and _is_leave_of_its_own(engine, rules, answer):
        start, rest = _as_no(start), NONE_ALLOWS
    elif query.polarity == "do" and any(_is_denied(engine, rule, query) for rule in rules):
        start, rest = _as_no_duty(query, start, rest)
    return msgspec.structs.replace(
        answer,
        headline=" ".join((f"{start}{rest}".strip(), *said)),
        citations=with_cited(engine.lookup, answer.citations, (rule.clause for rule in rules)),
    )


NONE_ALLOWS = "otherwise no clause allows it here."
"""The end of a no: it is forbidden in some cases, and the leave that is given in others is not for this."""


def _as_no(start: str) -> str:
    _, _, said = start.removeprefix(_ON).partition(": ")
    return f"No. {said[:1].upper()}{said[1:]}" if said and start.startswith(_ON) else start


_ONLY = Pattern(r"Only when (?P<when>[^:]+): (?P<it>the [^:;]+? must [^:;]+); ")
"""A table in which a thing is required in some cases, and no more is said of any other."""


def _as_no_duty(query: Query, start: str, rest: str) -> tuple[str, str]:
    """Of who tells that a duty does not hold, that none does, and in what further case one would."""
    free = "" if query.kind == "must" else "; none forbids it"
    if (only := _ONLY.fullmatch(start)) is not None and rest == _SILENT:
        return f"{_NOT_REQUIRED}, unless {only['when']}: then {only['it']}{free}.", ""
    _, _, said = start.removeprefix(_ON).partition(": ")
    if query.kind == "may" and start.startswith(_ON) and " must not be " in said:
        return f"{_NOT_REQUIRED}: {said}", rest
    return start, rest


def _is_denied(engine: Engine, rule: Rule, query: Query) -> bool:
    """Whether a duty fails by how things were told to stand: "no stone being moved", "there's a guard rail".

    That it is for other places, tasks or people than those told is no news of what is at hand.
    """
    if rule.modality != "must":
        return False
    known, facts = dict(query.case.facts), engine.lookup.facts
    rest = {
        fact: values
        for fact, values in known.items()
        if facts[fact].family not in ("situation", "term")
        or not (facts[fact].kind in ("yes_no", "quantity") or getattr(values, "complement", False))
    }
    told = {fact: values for fact, values in known.items() if fact not in rest}
    condition = engine.condition(rule.id)
    if told and evaluate(condition, told.get) is False:
        return True
    return evaluate(condition, known.get) is False and evaluate(condition, rest.get) is not False


def _is_leave_of_its_own(engine: Engine, rules: Sequence[Rule], answer: Answer) -> bool:
    """Whether what is kept out is leave, which neither excepts from the ban told nor is for others alone.

    "A fitter with the certificate may wear a beard", excepting from a ban on beards at brake blocks, does not
    make other beards a matter of leave. Nor does "pilots may wear a name badge", beside "ramp crew must not
    wear one on the apron", which is for ramp crew alone.
    """
    banning = {rule for case in answer.cases if case.verdict == "prohibited" for rule in case.rules}
    leave = [rule for rule in rules if rule.modality == "may" and banning.isdisjoint(rule.exception_to)]
    return bool(leave) and not all(_is_of_others(engine, name, leave) for name in banning)


def _is_of_others(engine: Engine, ban: str, leave: Sequence[Rule]) -> bool:
    """Whether a ban is on people of other grades or branches than some leave is for."""
    return any(
        of_ban.fact == of_leave.fact and is_empty(intersect(of_ban.values, of_leave.values))
        for of_ban in tests(engine.condition(ban))
        if engine.lookup.facts[of_ban.fact].family in ("grade", "branch")
        for rule in leave
        for of_leave in tests(engine.condition(rule.id))
    )


def _with_no_duty(query: Query, answer: Answer) -> Answer:
    """Of a table in which nothing is ever required, that first, to who asks whether it must be."""
    verdicts = {case.verdict for case in answer.cases}
    free = "silent" in verdicts and verdicts <= {"silent", "permitted", "not_required", "prohibited"}
    if not free or query.kind != "must" or query.polarity != "do" or not answer.headline.startswith(_ON):
        return answer
    _, colon, rest = answer.headline.partition(": ")
    if not colon:
        rest = f"whether it may be depends on {answer.headline.removeprefix(_ON)}"
    return msgspec.structs.replace(answer, headline=f"{_NOT_REQUIRED}: {rest}")


def _on_act(engine: Engine, query: Query) -> list[Rule]:
    if not query.items or engine.lookup.aspects[query.aspect].kind != "act":
        return []
    rules = [engine.lookup.rules[name] for name in engine.group(query.items[0], query.aspect).rules]
    return [rule for rule in rules if not rule.residual]


def _sentences(engine: Engine, rules: Sequence[Rule]) -> list[str]:
    """The rules as sentences with their clauses; none where they are many or long."""
    told = {say_rule(engine.lookup, rule).removesuffix("."): rule.clause for rule in rules}
    if len(told) > _MOST or any(len(said) > _LONGEST for said in told):
        return []
    return [f"{said} ({clause_reference(engine.lookup, clause)})." for said, clause in told.items()]
