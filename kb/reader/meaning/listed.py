"""A name of several items beside a rig: the one that its rules allow or want, if they forbid the others."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

import msgspec

from kb.model.conditions import AllOf, AnyOf, Condition, Test
from kb.model.lookup import Lookup
from kb.model.records import Rule
from kb.model.values import Choices, ValueSet, intersect, is_empty
from kb.reader.meaning.frame import Frame
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood

_FOR = frozenset({"may", "must"})


def listed_in_rig(piece: Piece, facts: Mapping[str, ValueSet], lookup: Lookup) -> Piece:
    """ "A cap in shore rig": the one cap of the rig, where its rules forbid every other."""
    rig = next((fact for fact in facts if lookup.facts[fact].family == "rig"), None)
    if piece.tag != "items" or rig is None or len(piece.entries) < 2:
        return piece
    ids = {entry.id for entry in piece.entries}
    rules = [rule for rule in lookup.base.rules if _speaks_of(rule, rig, facts[rig], lookup)]
    spoken = [item for item in ids if any(r.modality in _FOR and item in r.scope.items for r in rules)]
    banned = [item for item in ids if any(_bans(rule, item, lookup) for rule in rules)]
    if len(spoken) != 1 or not ids <= {*spoken, *banned}:
        return piece
    entries = tuple(entry for entry in piece.entries if entry.id == spoken[0])
    return msgspec.structs.replace(piece, tag="item", arg=spoken[0], entries=entries)


def worn_as_rig(items: Sequence[str], lookup: Lookup) -> dict[str, ValueSet]:
    """That somebody is in a rig, of one that rules name as a thing too, where nothing else is named."""
    rig = next((fact for fact in lookup.base.facts if fact.family == "rig"), None)
    labels = {lookup.items[item].label for item in items}
    if rig is None or len(labels) != 1:
        return {}
    named = frozenset(value.id for value in rig.values if value.label in labels)
    return {rig.id: Choices(named)} if named else {}


def _bans(rule: Rule, item: str, lookup: Lookup) -> bool:
    broader = set(lookup.broader(item))
    return (
        rule.modality == "must_not"
        and bool(broader.intersection(rule.scope.items))
        and broader.isdisjoint(rule.scope.excluding)
    )


def _speaks_of(rule: Rule, rig: str, values: ValueSet, lookup: Lookup) -> bool:
    return rule.aspect == "wear" and not rule.residual and _tests(rule.condition, rig, values, lookup)


def _tests(condition: Condition, fact: str, values: ValueSet, lookup: Lookup) -> bool:
    """Whether a condition names some of the values of a fact, other than to leave the rest out."""
    if isinstance(condition, Test):
        named = condition.values
        few = isinstance(named, Choices) and 2 * len(named.members) <= len(lookup.facts[fact].values)
        return condition.fact == fact and few and not is_empty(intersect(named, values))
    if isinstance(condition, AllOf | AnyOf):
        return any(_tests(part, fact, values, lookup) for part in condition.parts)
    return False


def which_of(frame: Frame, roles: Roles, items: Sequence[str]) -> Frame:
    """ "Storm hat or storm hood?", "do I wear the belt or the braces?" asks which of them are worn."""
    acts = roles.aspect in ("", "wear") and roles.value is None and not roles.value_aspect
    plain = frame.modal != "may" and frame.polarity == "do" and not frame.negated
    if not (roles.alternatives and len(items) > 1 and frame.kind in ("may", "must") and plain and acts):
        return frame
    return msgspec.structs.replace(frame, kind="list", modalities=("required", "permitted"))


def asks_which_thing(found: Understood) -> bool:
    """ "Which smock goes?" asks for one of several things, and for no clause."""
    pieces = found.pieces
    return any(
        piece.tag in ("what", "which") and after.tag in ("item", "items") for piece, after in pairwise(pieces)
    )
