"""A thing that is needed beside the one before: "do I need a cord?", after the sunglasses on deck.

So where rules on it ask whether that is worn; it is then asked with that on, and in the same case.
"""

from __future__ import annotations

import msgspec

from kb.model.conditions import evaluate
from kb.model.questions import Reading
from kb.model.values import YES, ValueSet
from kb.reader.doubts.choice import asked_place
from kb.reader.meaning.fits import rules_of_aspect, tests_worn, wearing
from kb.reader.meaning.query import merge_case
from kb.reader.talks.talked import Talk, in_its_case
from kb.text import Pattern
from kb.wording import say_query

_NEEDS = Pattern(
    r"(?i)(?:(?:and|but|so|then|ok)[ ,]+)*(?:do|does|must|should|would) (?:i|we|you|one|he|she|they|it) "
    r"(?:(?:also |still )?(?:need|have to (?:wear|have)|wear|have) (?:an?|any|some)\b|"
    r"still (?:need|have to (?:wear|have)|wear|have)\b|"
    r"(?:need|have to (?:wear|have)|wear|have)[\w' -]* still\b)"
)


def needed_with_it(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """The reading of such a turn with the thing before worn; any other as it is."""
    before, lookup = previous.frame or previous.query, talk.lookup
    if before is None or before.kind not in ("may", "must") or len(before.items) != 1:
        return reading
    on = before.items[0]
    worn = before.aspect == wearing((on,), lookup) and before.polarity == "do"
    if not worn or f"worn:{on}" not in lookup.facts or _NEEDS.match(text) is None:
        return reading
    ask = reading.ask
    if ask is not None and ask.fact == "item" and (where := asked_place(reading)) is not None:
        known = dict(before.case.facts)
        fitting = [
            value
            for value, _ in ask.choices
            if tests_worn(value, on, lookup)
            and any(
                rule.modality == "must" and evaluate(rule.condition, known.get) is not False
                for rule in rules_of_aspect((value,), before.aspect, lookup)
            )
        ]
        if len(fitting) != 1:
            return reading
        label = lookup.items[fitting[0]].label
        reading = talk.read(f"{reading.question[: where[0]]}{label}{reading.question[where[1] :]}", None)
    query = reading.query
    if query is None or len(query.items) != 1 or query.kind not in ("may", "must") or on in query.items:
        return reading
    if not tests_worn(query.items[0], on, lookup) or any(f.startswith("worn:") for f, _ in query.case.facts):
        return reading
    told = in_its_case(reading, before, talk)
    if told.query is None:
        return reading
    facts: dict[str, ValueSet] = {f"worn:{on}": YES}
    case = merge_case(told.query.case, facts, None, False, lookup)
    query = msgspec.structs.replace(told.query, case=case)
    kept = (*told.carried, *facts)
    return msgspec.structs.replace(
        told, question=text, query=query, text=say_query(lookup, query), carried=kept
    )
