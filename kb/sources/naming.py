"""Ids and labels: reading them, and checking that each means one thing."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

import msgspec

from kb.errors import Location
from kb.model.records import Named
from kb.sources.builtin import BUILT_IN
from kb.sources.fields import Fields
from kb.sources.report import Report, quoted

NAME_KEYS = ("id", "label", "other labels")
N = TypeVar("N", bound=Named)


class Name(msgspec.Struct, frozen=True):
    """What every named record begins with."""

    id: str
    label: str
    other_labels: tuple[str, ...]
    at: Location


def read_name(fields: Fields, needs_label: bool = True) -> Name | None:
    """Id and labels of an entry; None without an id. A missing label is reported and the id stands in."""
    identifier = fields.identifier()
    label = fields.required("label", "label: storm coat") if needs_label else fields.scalar("label")
    if identifier is None:
        return None
    shown = label.text if label else identifier.text
    return Name(identifier.text, shown, fields.texts("other labels"), fields.at)


def by_id(records: Iterable[N], kind: str, report: Report) -> dict[str, N]:
    """Records by id; a second record with an id is reported and left out."""
    found: dict[str, N] = {}
    for record in records:
        first = found.setdefault(record.id, record)
        if first is not record:
            where = "is part of every rule base" if first.at == BUILT_IN else f"stands in {first.at}"
            message = f"The {kind} {quoted(record.id)} is declared for the second time; the first {where}."
            report.error(record.at, "duplicate-id", message, "Give one of them another id, or remove it.")
    return found


def check_labels(records: Iterable[Named], kind: str, report: Report) -> None:
    """Report a label that two records of one kind share, in any case of letters."""
    owner: dict[str, Named] = {}
    for record in records:
        for label in dict.fromkeys(" ".join(text.split()) for text in (record.label, *record.other_labels)):
            first = owner.setdefault(label.casefold(), record)
            if first.id == record.id:
                continue
            both = f"{quoted(first.id)} and {quoted(record.id)}"
            message = f"The label {quoted(label)} stands for two {kind}: {both}."
            remedy = (
                "Give one of them another label; loose words that fit several belong under everyday words."
            )
            report.error(record.at, "ambiguous-label", message, remedy)
