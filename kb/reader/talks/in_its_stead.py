"""What is worn in the place of a thing that was asked about: "what do I wear instead?", "what replaces it?".

Told by the clause that forbids the thing, where it has another of its kind worn; else by what of the kind is
worn in the case before. It is never all that is worn.
"""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.conditions import evaluate
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading, Verdict
from kb.model.records import is_in_force
from kb.reader.meaning.fits import rules_of_aspect, tests_worn, wearing
from kb.reader.talks.talked import Talk, akin
from kb.text import Pattern

_WORN: tuple[Verdict, ...] = ("required", "permitted")
_MOST = 16
_WEAR = (
    r"(?: have to| supposed to)?(?: be)?(?: wear(?:ing)?| us(?:e|ing)| put on| carry(?:ing)?| have(?: on)?)"
)
_INSTEAD = Pattern(
    r"(?:(?:and|but|so|then|well|ok|oh) )*(?:"
    rf"what(?: (?:must|may|can|should|do|shall|am|are|could|would) (?:i|we|you|one|he|she|they){_WEAR}?)?"
    r"(?: (?:then|instead|in its place|in place of (?:it|that|them)|in their place|in that case)){1,2}"
    r"|(?:what|which one) (?:replaces|replaced|has replaced|takes the place of|goes in place of)"
    r" (?:it|that|them|those)(?: now| then)?"
    r"|what (?:is|are) (?:it|they|that) replaced (?:by|with)|what(?: is| are)? (?:worn )?in its place"
    r"(?: now| then)?)"
)


def in_its_stead(text: str, said: str, previous: Reading, talk: Talk) -> Reading | None:
    """What is worn for the thing before; None for any other turn."""
    before = previous.frame or previous.query
    if before is None or not before.items or _INSTEAD.fullmatch(said) is None:
        return None
    if before.kind not in ("may", "must", "why"):
        return None
    lookup, item = talk.lookup, before.items[0]
    facts = tuple(one for one in before.case.facts if one[0] != f"worn:{item}")
    case = msgspec.structs.replace(before.case, facts=facts, alone=False)
    others = tuple(dict.fromkeys(_beside_the_ban(before, lookup)))
    if len(others) == 1:
        return talk.made(text, Query(kind="may", items=others, aspect=wearing(others, lookup), case=case))
    parent = _kind(item, lookup)
    kinds = others or ((parent,) if parent is not None else ())
    if not kinds:
        return Reading(question=text, abstain=Abstain(reason="The books do not say what is worn instead."))
    return talk.made(text, Query(kind="list", items=kinds, case=case, modalities=_WORN))


def _beside_the_ban(before: Query, lookup: Lookup) -> Iterator[str]:
    """What is of the kind of the thing before and is worn by the clause that forbids that."""
    item, day = before.items[0], before.case.as_of
    banning = {
        rule.clause
        for rule in rules_of_aspect((item,), before.aspect, lookup)
        if rule.modality == "must_not" and not rule.residual and item in rule.scope.items
        if not rule.scope.excluding and is_in_force(rule, day)
    }
    known = dict(before.case.facts)
    for clause in sorted(banning):
        for rule in lookup.rules_of(clause):
            open_ = is_in_force(rule, day) and evaluate(rule.condition, known.get) is not False
            if rule.modality not in ("must", "may") or rule.aspect != before.aspect or not open_:
                continue
            for one in rule.scope.items:
                if _is_for(one, item, lookup) or (
                    rule.modality == "must" and not _goes_with(one, item, lookup)
                ):
                    yield one


def _kind(item: str, lookup: Lookup) -> str | None:
    """The nearest class of a thing that has others in it; none so wide that it is all that is worn."""
    wide = next((b for b in lookup.broader(item)[1:] if len(lookup.narrower(b)) > 2), None)
    return wide if wide is not None and len(lookup.narrower(wide)) <= _MOST else None


def _is_for(one: str, item: str, lookup: Lookup) -> bool:
    """Whether one thing goes for another: of its nearest kind, and not worn with it."""
    kind = _kind(item, lookup)
    of_it = kind is not None and one in lookup.narrower(kind) and one != kind
    return of_it and akin(one, item, lookup) and not _goes_with(one, item, lookup)


def _goes_with(one: str, item: str, lookup: Lookup) -> bool:
    """Whether it is the same thing, or one that rules have worn with it."""
    return one == item or tests_worn(one, item, lookup)
