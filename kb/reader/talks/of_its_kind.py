"""A turn that goes on from a word and not from the one thing that it was told of.

"And in boat rig?", after "do I need the trousers?" was told of those of another rig: of the trousers worn
there. "And the jersey's?", after how high the sleeves of the shirt are rolled: of what is done to that.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.model.records import is_in_force
from kb.model.values import Choices, ValueSet
from kb.reader.meaning.fits import rules_of_aspect, whole_of
from kb.reader.talks.further import LEAD, bare_words, keys_of
from kb.reader.talks.talked import Talk, in_its_case, item_alone
from kb.text import Pattern
from kb.wording import the_item

_LED = Pattern(r"(?i)(?:(?:and|but|so|what about|how about|what|then)\b,? ?)+")
_WHOSE = Pattern(
    rf"(?i){LEAD}(?:(?:what about|how about|what of) )?((?:the|my) [\w' -]+?)['\u2019](?:s|(?<=s['\u2019]))"
    r"(?: ones?| sleeves?)?(?: then| too)?"
)
_USES = frozenset({"wear", "carrying", "use"})


def of_the_kind_named(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """A turn that only tells another rig, of whichever thing there the word before was said of."""
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or len(before.items) != 1 or query.items != before.items:
        return reading
    rigs = [f for f, v in query.case.facts if lookup.facts[f].family == "rig" and _is_new(f, v, before)]
    only = all(span.role in ("fact", "structure", "filler") for span in reading.spans)
    if query.kind != before.kind or len(rigs) != 1 or not only:
        return reading
    asked = _without_rig(previous.question, dict(before.case.facts).get(rigs[0]), rigs[0], lookup)
    named = keys_of(asked)
    if any(keys_of(name) <= named for name in _names(before.items[0], lookup)):
        return reading  # it was named in full
    rest = text[led.end() :] if (led := _LED.match(text)) is not None else text
    again = talk.read(f"{asked}, {rest.strip(' ?.!')}?", None)
    if again.query is None:
        return again if again.ask is not None and again.ask.fact == "item" and again.ask.choices else reading
    kinds, there = {*lookup.broader(before.items[0])}, dict(again.query.case.facts).get(rigs[0])
    if there != dict(query.case.facts)[rigs[0]]:
        return reading
    if again.query.kind != query.kind or len(again.query.items) != 1 or again.query.aspect != query.aspect:
        return reading
    if again.query.items == before.items or again.query.items[0] not in kinds:
        return reading
    return in_its_case(again, before, talk)


def _is_new(fact: str, values: ValueSet, before: Query) -> bool:
    return dict(before.case.facts).get(fact) not in (None, values)


def _without_rig(question: str, values: ValueSet | None, fact: str, lookup: Lookup) -> str:
    """The question before without the rig that was put behind it: "do I need the trousers, in boat rig?"."""
    asked = question.strip(" ?.!")
    old = values.members if isinstance(values, Choices) else frozenset[str]()
    rigs = [value for value in lookup.facts[fact].values if value.id in old]
    labels = (name for value in rigs for name in (value.label, *value.other_labels))
    for label in labels:
        asked = re.sub(rf"(?i),? (?:in|on|with|for) (?:the |my )?{re.escape(label)}(?=\W|$)", "", asked)
    return asked


def _names(item: str, lookup: Lookup) -> tuple[str, ...]:
    return (lookup.items[item].label, *lookup.items[item].other_labels)


def anothers_part(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """What the clause on the measure of a part has done to the whole, asked of another whole."""
    found, before, lookup = _WHOSE.fullmatch(bare_words(text)), previous.query, talk.lookup
    if found is None or before is None or len(before.items) != 1:
        return None
    part, item = before.items[0], item_alone(found.group(1), talk.lexicon, lookup)
    if item is None or "feature" not in lookup.broader(part) or item == whole_of(part, lookup):
        return None
    if lookup.aspects[before.aspect].kind == "act":
        return None
    acts = {act for act in _done(before, lookup) if any(rules_of_aspect((item,), act, lookup))}
    if len(acts) == 1:
        return talk.made(text, Query(kind="may", items=(item,), aspect=acts.pop(), case=before.case))
    reason = f"No rule says that of {the_item(lookup, item)}."
    return Reading(question=text, abstain=Abstain(reason=reason))


def _done(before: Query, lookup: Lookup) -> Iterator[str]:
    """The acts, other than wearing, on which the clauses have a rule that measure the part before."""
    day = before.case.as_of
    measuring = rules_of_aspect(before.items, before.aspect, lookup)
    for clause in {rule.clause for rule in measuring if is_in_force(rule, day)}:
        for rule in lookup.rules_of(clause):
            if lookup.aspects[rule.aspect].kind == "act" and rule.aspect not in _USES:
                yield rule.aspect
