"""A clause as blocks: its text, when it is in force, and the rules made from it."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

import kb
from shell.blocks import Block, Headline, Points, Quote, Said

if TYPE_CHECKING:
    from kb import KnowledgeBase


def _force(start: datetime.date, end: datetime.date | None) -> str:
    return f"from {start.isoformat()}" + (f" to the day before {end.isoformat()}" if end else "")


def clause_blocks(reference: str, base: KnowledgeBase) -> tuple[Block, ...]:
    """Every clause that the reference names, one after the other; raises `UsageError` if there is none."""
    blocks: list[Block] = []
    for clause in base.clause(reference):
        edition = base.lookup.editions[clause.edition]
        title = f"{edition.label}, clause {clause.number}"
        blocks.append(Headline("", kb.visible(f"{clause.heading} ({title})" if clause.heading else title)))
        blocks.append(Said("In force", _force(clause.valid_from, clause.valid_until)))
        if clause.replaced_by:
            blocks.append(Said("Replaced by", kb.visible(clause.replaced_by)))
        if clause.kind != "rule":
            blocks.append(Said("Kind", clause.kind))
        blocks.append(Quote(kb.visible(title), kb.visible(clause.text)))
        sentences = tuple(kb.visible(sentence) for _, sentence in base.rules_of(clause.id))
        if sentences:
            blocks.append(Points("Rules made from it", sentences))
        if clause.note:
            blocks.append(Points("Note", (kb.visible(clause.note),)))
        blocks.append(Said("Written at", kb.visible(str(clause.at))))
    return tuple(blocks)
