"""Which of its looks a thing has: "which cap badge does an inspector wear", where there is one cap badge.

A thing without kinds is asked about itself. Where its rules tell people or cases apart by one look alone
(silver for some, gold for others), "which" asks for that look.
"""

from __future__ import annotations

from msgspec.structs import replace

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Query, QuestionKind
from kb.model.records import Rule, is_in_force
from kb.reader.meaning.frame import Frame


def narrowed_list(query: Query, frame: Frame, lookup: Lookup) -> Query:
    """ "What gloves may I wear": a list of kinds; an item without kinds is asked about itself."""
    if len(query.items) != 1 or len(lookup.narrower(query.items[0])) != 1:
        return query
    kind: QuestionKind = "must" if frame.modal == "must" else "may"
    asked = frame.polarity == "do" and not frame.negated
    look = _by_its_look(query, lookup) if asked else None
    return look or replace(query, kind=kind, modalities=(), polarity=frame.polarity)


def _by_its_look(query: Query, lookup: Lookup) -> Query | None:
    """The question of the one look in which rules tell cases of a thing apart; None where it is not one."""
    if query.aspect != "wear":
        return None
    wider = set(lookup.broader(query.items[0]))
    looks: dict[str, list[Rule]] = {}
    for rule in lookup.base.rules:
        look = lookup.aspects[rule.aspect].kind == "choice" and rule.modality in ("must", "may")
        if look and wider.intersection(rule.scope.items) and is_in_force(rule, query.case.as_of):
            looks.setdefault(rule.aspect, []).append(rule)
    told = {fact for fact, _ in query.case.facts}
    apart = [
        aspect
        for aspect, rules in looks.items()
        if len({rule.value.values for rule in rules}) > 1
        and (not told or any(test.fact in told for rule in rules for test in tests(rule.condition)))
    ]
    return replace(query, kind="how", aspect=apart[0], modalities=()) if len(apart) == 1 else None
