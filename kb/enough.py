"""Whether a thing is enough: "are ear plugs enough at a blast?", "only the liners on: is that enough?".

It is not where the thing, or the thing alone, may not be worn, nor where something else that protects the
same must be worn in the case told. That it is enough no rule says: then nothing is answered here.
"""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from kb.answer.alike import usual_verdict
from kb.answer.common import replaced
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading
from kb.model.values import YES
from kb.text import Pattern
from kb.wording import say_query

Read = Callable[[str], Reading]
Tell = Callable[[Reading], Answer]
TellInstead = Callable[[Reading], tuple[Answer, ...]]

_AS_LEAVE = (
    (
        Pattern(
            r"(?i)\bI(?:['\u2019]ve| have)? (?:only|just) (?:got |have )?"
            r"(?P<thing>(?:my|the|an?|some) [\w' -]+?)(?: on)?[.,;:!?]+ *"
            r"(?:so |and )?(?:is|are) (?:that|it|this|they|those|these) enough\b"
        ),
        r"May I wear only \g<thing>",
    ),
    (
        Pattern(
            r"(?i)\b(?:is|are|will|would)(?: just| only)? (?P<thing>(?:(?:my|the|an?|some|our) )?"
            r"[\w'-]+(?: [\w'-]+){0,3}?)"
            r"(?: (?:on (?:its|their) own|by (?:itself|themselves)|alone))?(?: be)? enough\b"
        ),
        r"May I wear \g<thing>",
    ),
    (
        Pattern(
            r"(?i)\bis it (?:true|right) that (?P<thing>(?:(?:my|the|an?|some|our) )?"
            r"[\w'-]+(?: [\w'-]+){0,3}?)"
            r"(?: (?:on (?:its|their) own|by (?:itself|themselves)|alone))? (?:is|are) enough\b"
        ),
        r"May I wear \g<thing>",
    ),
)
"""What asks it, as whether the thing may be worn, or be worn alone."""
_MOST = 3


def not_enough(
    reading: Reading, read: Read, tell: TellInstead, answer: Tell, lookup: Lookup
) -> Answer | None:
    """The no to a question of what is enough; None where it is none, or where nothing says no.

    `tell` answers also what would be asked back, `answer` a query as it stands.
    """
    for pattern, leave in _AS_LEAVE:
        if pattern.search(reading.question) is None:
            continue
        told, *more = tell(read(pattern.sub(leave, reading.question)))
        query = told.reading.query if not more else None
        if query is None or query.kind != "may" or query.polarity == "not" or len(query.items) != 1:
            continue
        if query.aspect != "wear" or query.value is not None:
            continue
        asked = msgspec.structs.replace(told.reading, question=reading.question, spans=reading.spans)
        if told.outcome == "answer" and usual_verdict(told, lookup) == "prohibited":
            return replaced(told, question=reading.question, reading=asked)
        return _due(asked, query, answer, lookup)
    return None


def _due(asked: Reading, query: Query, answer: Tell, lookup: Lookup) -> Answer | None:
    """The no with what else must be worn, of what protects the same."""
    worn = (f"worn:{query.items[0]}", YES)
    case = msgspec.structs.replace(query.case, facts=(*query.case.facts, worn), alone=False)
    due = []
    for other in _alike(query, lookup)[:_MOST]:
        left = msgspec.structs.replace(query, items=(other,), polarity="not", case=case)
        told = answer(msgspec.structs.replace(asked, query=left, text=say_query(lookup, left)))
        if told.outcome == "answer" and told.headline.startswith("No: "):
            due.append(told)
    if not due:
        return None
    first, *more = due
    beside = tuple(f"{one.reading.text} {one.headline}" for one in more)
    return replaced(
        first, reading=msgspec.structs.replace(first.reading, beside=(*first.reading.beside, *beside))
    )


def _alike(query: Query, lookup: Lookup) -> list[str]:
    """What protects the same and must be worn where something that was told is so."""
    guarded = set(lookup.items[query.items[0]].protects)
    told = {fact for fact, _ in query.case.facts}
    due = {
        item
        for rule in lookup.base.rules
        if rule.modality == "must" and rule.aspect == "wear"
        if told & {test.fact for test in tests(rule.condition)}
        for item in rule.scope.items
    }
    return [
        item.id
        for item in lookup.base.items
        if item.id in due and item.id != query.items[0] and guarded.intersection(item.protects)
    ]
