"""On which days something is worn: "what dates can I wear the wool hat".

When it is worn may rest on much besides. Where one clause alone tells days, months or hours for the thing,
and others bear on it, too, that clause is the answer.
"""

from __future__ import annotations

import re

import msgspec

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.months import MONTHS, months_of
from kb.model.questions import Reading
from kb.model.records import Rule, is_in_force
from kb.text import Pattern
from kb.wording import say_query

_ASKED = Pattern(
    r"(?i)^(?:and |so )?(?:on |between |from |in |during )?(?:what|which) (?:exact |calendar )?"
    r"(?:dates?|days|hours|months)\b"
)
_TIMES = re.compile(rf"(?i)\b(?:{'|'.join(m for m in MONTHS if m != 'may')}|\d\d?[:.]\d\d)\b")


def on_which_days(reading: Reading, lookup: Lookup) -> Reading:
    """The reading, or the one of the clause that tells the days that were asked for."""
    query = reading.query
    if query is None or query.kind != "when" or not query.items or _ASKED.search(reading.question) is None:
        return reading
    left_off = (fact.partition(":")[2] for fact, _ in query.case.facts if fact.startswith("worn:"))
    items, day = {*query.items[:1], *left_off}, query.case.as_of
    wide = {kind for item in items for kind in lookup.broader(item)}
    rules = [
        rule
        for rule in lookup.rules_on(wide)
        if rule.aspect in ("wear", "carrying")
        if is_in_force(rule, day)
    ]
    timed = {
        rule.clause for rule in rules if items.intersection(rule.scope.items) and _is_timed(rule, lookup)
    }
    if len(timed) != 1 or timed == {rule.clause for rule in rules}:
        return reading
    told = msgspec.structs.replace(query, kind="source", clause=timed.pop(), items=(), aspect="wear")
    return msgspec.structs.replace(reading, query=told, text=say_query(lookup, told))


def _is_timed(rule: Rule, lookup: Lookup) -> bool:
    """Whether a rule turns on months, days of the year or hours."""
    facts = (lookup.facts[test.fact] for test in tests(rule.condition))
    return any(
        fact.kind == "date"
        or months_of(fact)
        or any(_TIMES.search(name) for one in (fact, *fact.values) for name in (one.label, *one.other_labels))
        for fact in facts
    )
