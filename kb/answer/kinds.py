"""Of a thing that there are several kinds of: those that rules tell apart, and the one that is meant."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.answer.acts import act_answer, wear_question
from kb.answer.aspects import aspects_of
from kb.model.questions import Query
from kb.reasoner import Engine, possible_facts

_WORN = frozenset({"required", "permitted", "not_required"})


def kinds_that_differ(engine: Engine, query: Query) -> tuple[str, ...]:
    """The kinds of the item asked about, where rules make them fare differently from it or from each other.

    Of an aspect with values only where the item itself has no rule to answer from.
    """
    if not query.items or query.as_such or query.kind in ("list", "source", "compare"):
        return ()
    item = query.items[0]
    kinds = [
        kind
        for kind in engine.lookup.narrower(item)[1:]
        if any(_has_own_rule(engine, kind, aspect) for aspect in _aspects(engine, query, kind))
    ]
    aspects = _aspects(engine, query, item)
    if is_value_question(engine, query):
        return () if aspects else tuple(kinds)
    possible = possible_facts(query.case, query.items, False, engine.lookup)
    fates = {engine.problem(engine.group(kind, query.aspect), possible).said() for kind in (item, *kinds)}
    return tuple(kinds) if len(fates) > 1 else ()


def _has_own_rule(engine: Engine, item: str, aspect: str) -> bool:
    rules = engine.lookup.rules
    return any(item in rules[rule].scope.items for rule in engine.group(item, aspect).rules)


def is_value_question(engine: Engine, query: Query) -> bool:
    return query.kind in ("where", "how", "how_many") or engine.lookup.aspects[query.aspect].kind != "act"


def _aspects(engine: Engine, query: Query, item: str) -> Sequence[str]:
    if is_value_question(engine, query):
        return aspects_of(engine, item, query.aspect)
    return (query.aspect,)


def the_kind_worn(engine: Engine, query: Query, kinds: Sequence[str]) -> str | None:
    """Of several kinds of what "which shoulder is the lanyard on?" asks about the one worn in what is told.

    One that in the case may or must be worn, where all others may not or no clause speaks of them there.
    """
    if not query.case.facts or not is_value_question(engine, query):
        return None
    worn = [kind for kind in kinds if _is_worn(engine, query, kind)]
    return worn[0] if len(worn) == 1 else None


def _is_worn(engine: Engine, query: Query, kind: str) -> bool:
    of_it = msgspec.structs.replace(query, items=(kind, *query.items[1:]))
    part = act_answer(engine, wear_question(engine.lookup, of_it))
    return part.verdict in _WORN or any(case.verdict in _WORN for case in part.cases)
