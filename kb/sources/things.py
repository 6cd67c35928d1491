"""Items and aspects."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from kb.model.records import Aspect, AspectKind, Fact, FactValue, Item
from kb.sources import builtin
from kb.sources.cycles import find_cycles
from kb.sources.fields import Fields
from kb.sources.naming import NAME_KEYS, by_id, check_labels, read_name
from kb.sources.people import read_value
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.tree import Mapping, Scalar
from kb.wording.english import be

_ITEM_KEYS = (
    *NAME_KEYS,
    "everyday words",
    "kind of",
    "part of",
    "layer",
    "protects",
    "care note",
    "in use from",
    "in use until",
    "note",
)
_ASPECT_KEYS = (*NAME_KEYS, "kind", "within", "verb", "done", "values")


class _ItemRead(msgspec.Struct, frozen=True):
    item: Item
    kinds: tuple[Scalar, ...]
    part_of: Scalar | None


def read_items(nodes: Iterable[Mapping], report: Report) -> dict[str, Item]:
    """The built-in items and those of the service, by id."""
    drafts = [draft for node in nodes if (draft := _item(node, report)) is not None]
    items = by_id([*builtin.ITEMS, *(draft.item for draft in drafts)], "item", report)
    for draft in drafts:
        for reference in (*draft.kinds, *((draft.part_of,) if draft.part_of else ())):
            check_item(reference, items, report)
    check_labels(items.values(), "items", report)
    _check_circles(items, report)
    return items


def _item(node: Mapping, report: Report) -> _ItemRead | None:
    fields = Fields(node, _ITEM_KEYS, "an item", report)
    name = read_name(fields)
    kinds = fields.scalars("kind of")
    if not fields.has("kind of"):
        fields.missing("kind of", "kind of: garment")
    if name is None:
        return None
    part_of = fields.scalar("part of")
    protects = fields.scalars("protects")
    for function in protects:
        if function.text not in builtin.PROTECTIONS:
            remedy = suggestion(
                function.text, builtin.PROTECTIONS, f"Write {listed(builtin.PROTECTIONS, limit=20)}."
            )
            message = f"{quoted(function.text)} is no protective function."
            report.error(function.at, "unknown-protection", message, remedy)
    begin, end = fields.span("in use from", "in use until")
    item = Item(
        id=name.id,
        label=name.label,
        other_labels=name.other_labels,
        at=name.at,
        broader=tuple(dict.fromkeys(kind.text for kind in kinds)),
        everyday=fields.texts("everyday words"),
        part_of=part_of.text if part_of else None,
        layer=fields.text("layer"),
        protects=tuple(function.text for function in protects),
        care_note=fields.text("care note"),
        valid_from=begin,
        valid_until=end,
        note=fields.text("note"),
    )
    return _ItemRead(item, kinds, part_of)


def check_item(reference: Scalar, items: dict[str, Item], report: Report) -> bool:
    """Whether the text is the id of an item; a problem with the nearest ids otherwise."""
    if reference.text in items:
        return True
    folded = reference.text.casefold()
    meant = [i.id for i in items.values() if folded in (x.casefold() for x in (i.label, *i.other_labels))]
    remedy = (
        f"Write its id: {meant[0]}."
        if meant
        else suggestion(reference.text, items, "Declare it under items, or correct the id.")
    )
    report.error(reference.at, "unknown-item", f"There is no item {quoted(reference.text)}.", remedy)
    return False


def _check_circles(items: dict[str, Item], report: Report) -> None:
    for circle in find_cycles({item.id: item.broader for item in items.values()}):
        message = f"Items are kinds of each other in a circle: {' kind of '.join((*circle, circle[0]))}."
        report.error(items[circle[0]].at, "circular-kind", message, "Correct one of the kind of lines.")
    for circle in find_cycles({i.id: (i.part_of,) if i.part_of else () for i in items.values()}):
        message = f"Items are parts of each other in a circle: {' part of '.join((*circle, circle[0]))}."
        report.error(items[circle[0]].at, "circular-part", message, "Correct one of the part of lines.")


def worn_facts(items: Iterable[Item]) -> list[Fact]:
    """A yes/no fact `worn:<item>` for each item."""
    return [
        Fact(
            id=f"worn:{item.id}",
            label=f"{item.label} worn",
            at=item.at,
            kind="yes_no",
            family="worn",
            ask=f"{be(item.label).capitalize()} the {item.label} worn?",
        )
        for item in items
    ]


def read_aspects(nodes: Iterable[Mapping], report: Report) -> dict[str, Aspect]:
    """The built-in aspects, with values added by the service, and its own, by id."""
    aspects = {aspect.id: aspect for aspect in builtin.ASPECTS}
    for node in nodes:
        fields = Fields(node, _ASPECT_KEYS, "an aspect", report)
        identifier = fields.identifier()
        if identifier is None:
            continue
        read = [read_value(value, "a value", report) for value in fields.mappings("values")]
        values = tuple(value for value in read if value is not None)
        known = aspects.get(identifier.text)
        if known is None:
            aspects[identifier.text] = _new_aspect(fields, values, report)
        elif fields.has("kind") or (fields.has("label") and known.at != builtin.BUILT_IN):
            message = f"The aspect {quoted(identifier.text)} is declared for the second time."
            report.error(
                fields.at, "duplicate-id", message, "Give it another id, or leave kind and label out."
            )
        else:
            aspects[identifier.text] = msgspec.structs.replace(known, values=(*known.values, *values))
    return {name: _checked_aspect(aspect, aspects, report) for name, aspect in aspects.items()}


def _new_aspect(fields: Fields, values: tuple[FactValue, ...], report: Report) -> Aspect:
    name = read_name(fields)
    assert name is not None
    word = fields.one_of("kind", builtin.ASPECT_KINDS, "choice" if values else None)
    if word is None and not fields.has("kind"):
        fields.missing("kind", f"kind: act (one of {listed(builtin.ASPECT_KINDS)})")
    kind: AspectKind = next((known for known in builtin.ASPECT_KINDS if known == word), "choice")
    verb = fields.scalar("verb")
    if kind == "act" and verb is None:
        fields.missing("verb", "verb: tar")
    if verb is not None and (" " in verb.text or kind != "act"):
        message = f"{quoted(verb.text)} cannot be the verb of {quoted(name.id)}."
        report.error(
            verb.at, "bad-verb", message, "A verb is one word, and only an aspect of kind act has one."
        )
    return Aspect(
        id=name.id,
        label=name.label,
        other_labels=name.other_labels,
        at=name.at,
        kind=kind,
        within=fields.text("within"),
        verb=verb.text if verb else None,
        done=fields.text("done"),
        values=values,
    )


def _checked_aspect(aspect: Aspect, aspects: dict[str, Aspect], report: Report) -> Aspect:
    if aspect.within is not None and aspect.within not in aspects:
        remedy = suggestion(aspect.within, aspects, f"Write {listed(aspects, limit=30)}.")
        report.error(aspect.at, "unknown-aspect", f"There is no aspect {quoted(aspect.within)}.", remedy)
    rivals = [a for a in aspects.values() if aspect.verb and a.verb == aspect.verb and a.id != aspect.id]
    if rivals and aspect.at != builtin.BUILT_IN:
        message = f"The verb {quoted(aspect.verb or '')} belongs to {quoted(rivals[0].id)} already."
        report.error(aspect.at, "bad-verb", message, "Choose another verb.")
    values = tuple(by_id(aspect.values, "value", report).values())
    check_labels(values, "values", report)
    return msgspec.structs.replace(aspect, values=values)
