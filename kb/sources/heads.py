"""The head of a rule: its modality, its act, and the items it is about."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from kb.model.conditions import ALWAYS, Condition, Test, any_of
from kb.model.records import Modality, Scope
from kb.model.values import YES
from kb.sources.drafts import Context
from kb.sources.fields import Fields, as_texts
from kb.sources.report import listed, nearest, quoted, suggestion
from kb.sources.things import check_item
from kb.sources.tree import Entry, Mapping, Node, Scalar
from kb.text import Pattern

_MODALITY: dict[str, Modality] = {
    "must not": "must_not",
    "must": "must",
    "may": "may",
    "need not": "need_not",
}
_HEAD = Pattern(r"(must not|must|may|need not)(?: (\S.*))?")
SHORT_FORMS = ("only", "not together", "phase out", "phase in")


class Subject(msgspec.Struct, frozen=True):
    """One rule to be made: modality, act, scope; `suffix` tells it apart from its siblings."""

    modality: Modality
    act: str
    scope: Scope
    suffix: str = ""
    condition: Condition = ALWAYS


class Head(msgspec.Struct, frozen=True):
    """How a rule begins: the key, its modality and act (None for a short form) and its value."""

    key: Scalar
    value: Node
    modality: Modality | None
    act: str = "wear"


def is_head(key: str) -> bool:
    return key in SHORT_FORMS or _HEAD.fullmatch(key) is not None


def read_head(node: Mapping, context: Context) -> Head | None:
    """The one line of a rule that says what it is; a problem if there is none, or more than one."""
    heads = [entry for entry in node.entries if is_head(entry.key.text)]
    report = context.report
    if not heads:
        remedy = "Begin it with must, must not, may or need not and an item, such as may: deck-gloves."
        report.error(
            node.at, "missing-modality", "The rule does not say must, must not, may or need not.", remedy
        )
        return None
    if len(heads) > 1:
        message = f"The rule says {' and '.join(quoted(entry.key.text) for entry in heads)} at once."
        report.error(
            heads[1].key.at, "two-modalities", message, "Write two rules, each with a hyphen of its own."
        )
        return None
    return _head(heads[0], context)


def _head(entry: Entry, context: Context) -> Head | None:
    if entry.key.text in SHORT_FORMS:
        return Head(entry.key, entry.value, None)
    match = _HEAD.fullmatch(entry.key.text)
    assert match is not None
    verbs = context.vocabulary.verbs
    verb = match[2] or "wear"
    if verb not in verbs:
        remedy = suggestion(verb, verbs, f"Write {listed(verbs)}, or declare an aspect of kind act.")
        if match[1] == "must" and nearest(verb, ("not",)):  # "must nott"
            remedy = "Did you mean must not?"
        context.report.error(entry.key.at, "unknown-verb", f"{quoted(verb)} is no known verb.", remedy)
        return None
    return Head(entry.key, entry.value, _MODALITY[match[1]], verbs[verb])


def _known(texts: Iterable[Scalar], context: Context) -> list[str]:
    items = context.vocabulary.items
    return list(dict.fromkeys(t.text for t in texts if check_item(t, items, context.report)))


def read_subjects(head: Head, fields: Fields, context: Context) -> list[Subject]:
    """The rules that a head stands for, one for each item."""
    if head.modality is None:
        return _SHORT[head.key.text](head, fields, context)
    narrower = not fields.flag("this item only")
    excluding = tuple(_known(fields.scalars("except items"), context))
    if isinstance(head.value, Mapping):
        return _alternatives(head, excluding, narrower, context)
    names = _known(as_texts(head.value, quoted(head.key.text), context.report), context)
    _check_covered(fields, names, context)
    return [
        Subject(
            modality=head.modality,
            act=head.act,
            scope=Scope(items=(name,), excluding=excluding, narrower=narrower),
            suffix=f"-{name}" if len(names) > 1 else "",
        )
        for name in names
    ]


def _check_covered(fields: Fields, names: list[str], context: Context) -> None:
    """Warn of an exception that takes nothing away."""
    covered = {inner for name in names for inner in context.vocabulary.narrower(name)}
    for text in fields.scalars("except items"):
        if names and text.text in context.vocabulary.items and text.text not in covered:
            message = f"{quoted(text.text)} is no kind of {listed(names)}, so the exception changes nothing."
            remedy = "Correct the item, or its kind of line."
            context.report.warn(text.at, "useless-exception", message, remedy)


def _alternatives(head: Head, excluding: tuple[str, ...], narrower: bool, context: Context) -> list[Subject]:
    assert isinstance(head.value, Mapping)
    fields = Fields(head.value, ("one of", "any of"), "a choice of items", context.report)
    words = [word for word in ("one of", "any of") if fields.has(word)]
    if len(words) != 1 or head.modality != "must":
        message = "A choice of items is written as must: {one of: [...]} or must: {any of: [...]}."
        remedy = "Write that, or a plain list: a list is one rule for each item."
        context.report.error(head.value.at, "bad-alternatives", message, remedy)
        return []
    names = _known(fields.scalars(words[0]), context)
    if len(names) < 2:
        message = "A choice of items needs at least two different items."
        context.report.error(
            fields.place(words[0]), "bad-alternatives", message, "Name them: [boots, shoes]."
        )
        return []
    scope = Scope(
        items=tuple(names),
        excluding=excluding,
        narrower=narrower,
        alternatives="one" if words[0] == "one of" else "any",
    )
    return [Subject(head.modality, head.act, scope)]


def _only(head: Head, fields: Fields, context: Context) -> list[Subject]:
    names = _known(as_texts(head.value, '"only"', context.report), context)
    if not fields.has("of"):
        fields.missing("of", "of: outer-garment")
    subjects: list[Subject] = []
    classes = _known(fields.scalars("of"), context)
    for top in classes:
        suffix = f"-{top}" if len(classes) > 1 else ""
        subjects.append(Subject("must_not", "wear", Scope(items=(top,), excluding=tuple(names)), suffix))
    covered = {inner for top in classes for inner in context.vocabulary.narrower(top)}
    for text in as_texts(head.value, '"only"', context.report):
        if classes and text.text in names and text.text not in covered:
            message = f"{quoted(text.text)} is no kind of {listed(classes)}."
            context.report.warn(
                text.at, "useless-exception", message, "Correct the item, or its kind of line."
            )
    if fields.flag("grants"):
        subjects += [Subject("may", "wear", Scope(items=(name,)), f"-{name}") for name in names]
    return subjects


def _not_together(head: Head, fields: Fields, context: Context) -> list[Subject]:
    names = _known(as_texts(head.value, '"not together"', context.report), context)
    if len(names) < 2:
        message = "Two or more items are needed that are not worn together."
        context.report.error(head.value.at, "bad-not-together", message, "Write [scarf, collar].")
        return []
    narrower = not fields.flag("this item only")
    return [
        Subject(
            "must_not",
            "wear",
            Scope(items=(name,), narrower=narrower),
            f"-{name}",
            any_of(Test(f"worn:{other}", YES) for other in names if other != name),
        )
        for name in names
    ]


def _phase(head: Head, fields: Fields, context: Context) -> list[Subject]:
    if not fields.has("on"):
        fields.missing("on", "on: 2026-10-01")
    names = _known(as_texts(head.value, quoted(head.key.text), context.report), context)
    modality: Modality = "must_not" if head.key.text == "phase out" else "may"
    return [
        Subject(modality, "wear", Scope(items=(name,)), f"-{name}" if len(names) > 1 else "")
        for name in names
    ]


_SHORT = {"only": _only, "not together": _not_together, "phase out": _phase, "phase in": _phase}
