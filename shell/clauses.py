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
    r"(?: (?:is|are|was) (?:that|this|it)(?: in| from)?|(?: is it that)? says? (?:so|that|this|it))?)"
)
_SHOW = (
    r"(?:(?:and|but|so|ok|okay|please|can you|could you|just)[ ,]+)*"
    r"(?:(?:show|read|give|quote|tell)(?: (?:to )?me| us)?(?: out)?(?: (?:the|that|this|its))?"
    r" (?:(?:full |whole |exact )?(?:text|words|wording) of (?:the|that|this) )?"
    r"(?:clauses?|rules?|paragraphs?|articles?|wording|text|sections?|regulations?|chapter and verse)"
    r"|(?:show me|read(?: out)?|read(?: (?:to )?me)?|quote(?: me)?) (?:it|that|this|them)"
    r"|what (?:does|do) (?:the|that|this) (?:clause|rule|paragraph|article|section)s?"
    r" (?:actually |exactly )?say|(?:the )?(?:clause|exact words|wording),? please)"
    r"(?:(?: out)?(?: (?:to|for) me)?(?: please| then| itself| again| in full)*)"
)
_WHERE_SO = (
    r"(?:and |but |so |ok,? |why,? )*(?:where does (?:it|the book) say (?:so|that|this)"
    r"|where(?:['\u2019]s| is| was| does it) (?:that|this|it|say that|say so) "
    r"(?:all )?(?:written|stated|laid down|said|from|set down|in the (?:books?|rules))(?: down)?"
    r"|where(?:['\u2019]s it| do they| do the rules| does the book) say (?:so|that|this)"
    r"|where (?:can|do|could) i (?:find|read|look up|see) (?:that|this|it)(?: (?:up|written))?)"
    r"(?: then| exactly)?"
)
_IT = r"(?:that|this|it|the|such an?)(?: (?:rule|order|one|clause|limit|ban|exception|regulation|change))?"
_WHO_SO = (
    r"(?:and |but |so |ok,? |why,? )*"
    r"(?:says who|who says(?: so| that)?|who (?:decided|ordered)(?: so)?"
    r"|who (?:made|makes|wrote|writes|set|sets|decided|decides|laid down|issued|gave|ordered|brought in"
    rf"|introduced|came up with|thought(?: of| up)|(?:is|was|['\u2019]s) behind) {_IT}(?: (?:up|down|in))?"
    r"|who (?:decides|settles)(?: then)?"
    rf"|whose (?:rule|order|idea|decision) (?:is|was) {_IT}"
    rf"|(?:on|by|under) whose (?:authority|orders?|say[- ]so)(?: is {_IT})?)"
)
_WHO_SETTLES = (
    r"(?:and |but |so |ok,? |then,? )*(?:who|which(?: one)?) (?:then )?"
    r"(?:decides?|settles?|resolves?|rules|can (?:decide|settle|resolve)|has to (?:decide|settle)|wins|"
    r"goes first|prevails|has the (?:last|final) (?:say|word))"
    r"(?: (?:it|that|this|on (?:it|that|this)))?(?: then)?"
)
SAYS_SO = "Where does it say that?"
AGAIN = "Are you sure?"


def _is(pattern: str, text: str) -> bool:
    return re.fullmatch(pattern, text.strip(" ?.!"), re.IGNORECASE) is not None


def asks_what_carried(text: str) -> bool:
    """ "Which clause says so?": whether a line asks for no more than what the answer before rests on."""
    return _is(f"{_SAYS_SO}|{_WHERE_SO}|{_WHO_SO}|{_SHOW}", text)


def asks_who_made(text: str, before: Answer | None) -> bool:
    """ "Who made that rule?": whether such a line asks for whose rule it is that the answer before rests on.

    "That order" is none of a book that is not called one.
    """
    titles = " ".join(cited.title for cited in before.citations).casefold() if before else ""
    return _is(_WHO_SO, text) and ("order" in titles or not _is(r".* order", text))


def put_plainly(text: str, before: Answer | None = None) -> str:
    """ "Where's that written?" in the words that ask the same; any other line as it is."""
    if before is not None and _is(_WHO_SETTLES, text) and any(c.verdict == "conflict" for c in before.cases):
        return AGAIN
    return SAYS_SO if _is(f"{_WHERE_SO}|{_SHOW}", text) or asks_who_made(text, before) else text


def carried(found: Answer, before: Answer, makers: KnowledgeBase | None = None) -> Answer:
    """The answer to such a line: not all clauses that speak of a thing, but those that carried `before`.

    With the books that know the makers, whose each is stands before it.
    """
    if not before.citations or before.outcome != "answer":
        return found
    numbers: dict[str, list[str]] = {}
    for cited in before.citations:
        whose = makers and f"{makers.lookup.authorities[makers.lookup.books[cited.book].authority].label}: "
        numbers.setdefault(f"{whose or ''}{cited.title}", []).append(cited.number)
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
