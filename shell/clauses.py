"""A clause as blocks: its text, when it is in force, and the rules made from it."""

from __future__ import annotations

import datetime
import re
from typing import TYPE_CHECKING

import msgspec

import kb
from shell.blocks import Block, Headline, Points, Quote, Said

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

_SAYS_SO = (
    r"(?:and |but |so |ok,? )*(?:(?:which|what) "
    r"(?:clauses?|rules?|paragraphs?|articles?|orders?|books?|regulations?|sections?)"
    r"(?: (?:is|are|was) (?:that|this|it)(?: in| from)?|(?: is it that)? says? (?:so|that|this|it))?"
    r"|says who|who says(?: so| that)?)"
)
_WHERE_SO = (
    r"(?:and |but |so |ok,? )*(?:where does (?:it|the book) say (?:so|that|this)"
    r"|where(?:['\u2019]s| is| was| does it) (?:that|this|it|say that|say so) "
    r"(?:all )?(?:written|stated|laid down|said|from|set down|in the (?:books?|rules))(?: down)?"
    r"|where(?:['\u2019]s it| do they| do the rules| does the book) say (?:so|that|this)"
    r"|where (?:can|do|could) i (?:find|read|look up|see) (?:that|this|it)(?: (?:up|written))?)"
    r"(?: then| exactly)?"
)
SAYS_SO = "Where does it say that?"


def asks_what_carried(text: str) -> bool:
    """ "Which clause says so?": whether a line asks for no more than what the answer before rests on."""
    return re.fullmatch(f"{_SAYS_SO}|{_WHERE_SO}", text.strip(" ?.!"), re.IGNORECASE) is not None


def put_plainly(text: str) -> str:
    """ "Where's that written?" in the words that ask the same; any other line as it is."""
    return SAYS_SO if re.fullmatch(_WHERE_SO, text.strip(" ?.!"), re.IGNORECASE) else text


def carried(found: Answer, before: Answer) -> Answer:
    """The answer to such a line: not all clauses that speak of a thing, but those that carried `before`."""
    if not before.citations or before.outcome != "answer":
        return found
    numbers: dict[str, list[str]] = {}
    for cited in before.citations:
        numbers.setdefault(cited.title, []).append(cited.number)
    told = [
        f"{title}, clause{'s' if len(each) > 1 else ''} "
        + " and ".join([part for part in (", ".join(each[:-1]), each[-1]) if part])
        for title, each in numbers.items()
    ]
    reading = msgspec.structs.replace(found.reading, text="Which clauses carried the answer before?")
    return msgspec.structs.replace(
        found, headline="; ".join(told), citations=before.citations, reading=reading
    )


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
        sentences = tuple(
            kb.visible(f"{sentence} Note: {rule.note}" if rule.note else sentence)
            for rule, sentence in base.rules_of(clause.id)
        )
        if sentences:
            blocks.append(Points("Rules made from it", sentences))
        if clause.note:
            blocks.append(Points("Note", (kb.visible(clause.note),)))
        blocks.append(Said("Written at", kb.visible(str(clause.at))))
    return tuple(blocks)
