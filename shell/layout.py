"""From an answer to blocks: verdict, cases, reasons, clauses, cautions, what to ask next."""

from __future__ import annotations

from typing import TYPE_CHECKING

import kb
from shell.blocks import Block, Cell, Grid, Headline, Next, Points, Quote, Said, Tone
from shell.chain import chain_blocks

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

# How a verdict is called, its tone, and the title of its group in a list; in the order of the groups.
VERDICTS: dict[str, tuple[str, Tone]] = {
    "required": ("required", "must"),
    "permitted": ("permitted", "yes"),
    "not_required": ("not required", "yes"),
    "prohibited": ("prohibited", "no"),
    "conditional": ("it depends", "open"),
    "conflict": ("conflict", "clash"),
    "silent": ("not addressed", "quiet"),
}
_OPENING = {
    "ask": ("ONE QUESTION FIRST", "open"),
    "abstain": ("NOT ANSWERED", "quiet"),
}
_QUOTED_UNDER_A_LIST = 2
_SILENT = "The books do not address it. That is neither a permission nor a prohibition."


def verdict_word(verdict: str) -> str:
    return VERDICTS[verdict][0]


def _cell(verdict: str) -> Cell:
    word, tone = VERDICTS[verdict]
    return Cell(word, tone)


def _clean(texts: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(kb.visible(text) for text in texts if text)


def _headline(answer: Answer) -> tuple[Block, ...]:
    text = kb.visible(answer.headline)
    if answer.outcome == "abstain":
        reason = answer.abstain.reason if answer.abstain else ""
        return (Headline("NOT ANSWERED", text or kb.visible(reason), "quiet"),)
    if answer.outcome == "ask":
        return (Headline("ONE QUESTION FIRST", text, "open"),)
    if answer.verdict is None:
        return (Headline("", text, "plain"),)
    word, tone = VERDICTS[answer.verdict]
    return (Headline(word.upper(), text or (_SILENT if answer.verdict == "silent" else ""), tone),)


def _reading(answer: Answer) -> tuple[Block, ...]:
    blocks: list[Block] = []
    if answer.reading.text:
        blocks.append(Said("Read as", kb.visible(answer.reading.text)))
    if answer.reading.carried:
        blocks.append(Said("Kept", ", ".join(_clean(answer.reading.carried))))
    return tuple(blocks)


def _abstained(answer: Answer) -> tuple[Block, ...]:
    if answer.abstain is None:
        return ()
    blocks: list[Block] = []
    reason = kb.visible(answer.abstain.reason)
    if answer.headline and reason != kb.visible(answer.headline):
        blocks.append(Said("Reason", reason))
    if answer.abstain.words:
        words = ", ".join(f'"{word}"' for word in _clean(answer.abstain.words))
        blocks.append(Said("Not understood", words))
    if answer.abstain.suggestions:
        blocks.append(Points("You could ask", _clean(answer.abstain.suggestions[:3])))
    return tuple(blocks)


def _values_text(labels: tuple[str, ...]) -> str:
    return "; ".join(dict.fromkeys(_clean(labels)))


def _cases(answer: Answer) -> tuple[Block, ...]:
    """The decision table, one row a case; left out where no fact changes the answer."""
    if len(answer.cases) < 2 or not any(case.when for case in answer.cases):
        return ()
    with_values = any(case.values for case in answer.cases)
    columns = ("When", "Then", "Left open") if with_values else ("When", "Then")
    rows: list[tuple[Cell, ...]] = []
    for case in answer.cases:
        row: tuple[Cell, ...] = (Cell(kb.visible(case.label) or "otherwise"), _cell(case.verdict))
        if with_values:
            row += (Cell(_values_text(tuple(value.label for value in case.values)) or "-"),)
        rows.append(row)
    return (Grid("Case by case", columns, tuple(rows)),)


def _values(answer: Answer) -> tuple[Block, ...]:
    lines = []
    for value in answer.values:
        notes = [] if not value.required else ["the only one"]
        if value.measure is not None and value.measure.about and value.measure.tolerance is None:
            notes.append('no clause says how far "about" may be off, so it is not judged')
        label = kb.visible(value.label)
        lines.append(f"{label} ({'; '.join(notes)})" if notes else label)
    return (Points("Left open", tuple(dict.fromkeys(lines))),) if lines else ()


def _numbers(rules: tuple[str, ...], base: KnowledgeBase) -> str:
    """The clause numbers behind some rules: "clause 4.12" or "clauses 4.12, 5.1"; "" for none."""
    clauses = dict.fromkeys(base.lookup.rules[rule].clause for rule in rules if rule in base.lookup.rules)
    numbers = tuple(dict.fromkeys(kb.visible(base.lookup.clauses[clause].number) for clause in clauses))
    return f"clause{'s' * (len(numbers) > 1)} {', '.join(numbers)}" if numbers else ""


def _entries(answer: Answer, base: KnowledgeBase) -> tuple[Block, ...]:
    """A list, grouped by verdict in the order of `VERDICTS`; each line ends with its clauses."""
    groups: dict[str, list[str]] = {}
    for entry in answer.entries:
        text = kb.visible(entry.label)
        values = _values_text(tuple(value.label for value in entry.values))
        text += f": {values}" if values else ""
        text += f", {kb.visible(entry.condition)}" if entry.condition else ""
        numbers = _numbers(entry.rules, base)
        text += f" ({numbers})" if numbers else ""
        groups.setdefault(entry.verdict, []).append(text)
    return tuple(
        Points(f"{word.capitalize()} ({len(groups[verdict])})", tuple(groups[verdict]), tone)
        for verdict, (word, tone) in VERDICTS.items()
        if verdict in groups
    )


def _sources(answer: Answer) -> tuple[Block, ...]:
    """The clauses in full; under a long list only where they stand."""
    if answer.entries and len(answer.citations) > _QUOTED_UNDER_A_LIST:
        numbers: dict[str, list[str]] = {}
        for cited in answer.citations:
            numbers.setdefault(kb.visible(cited.title), []).append(kb.visible(cited.number))
        lines = tuple(f"{title}: {', '.join(dict.fromkeys(n))}" for title, n in numbers.items())
        return (Points("Clauses", lines),)
    return tuple(
        Quote(kb.visible(f"{cited.title}, clause {cited.number}"), kb.visible(cited.text))
        for cited in answer.citations
    )


def _remarks(answer: Answer) -> tuple[Block, ...]:
    blocks: list[Block] = []
    if answer.cautions:
        blocks.append(Points("Caution", _clean(answer.cautions), "clash"))
    if answer.notes:
        blocks.append(Points("Note", _clean(answer.notes)))
    return tuple(blocks)


def _next(answer: Answer) -> tuple[Block, ...]:
    if answer.ask is None:
        return ()
    return (Next(kb.visible(answer.ask.prompt), _clean(tuple(label for _, label in answer.ask.choices))),)


def arrange(answer: Answer, base: KnowledgeBase, *, chain: bool = False) -> tuple[Block, ...]:
    """The blocks of one answer; with `chain` the whole derivation stands in for the short reason."""
    reasons = _clean(answer.why)
    why: tuple[Block, ...] = (Points("Because", reasons),) if reasons else ()
    if chain and answer.derivation:
        why += chain_blocks(answer, base)
    return (
        *_headline(answer),
        *_reading(answer),
        *_abstained(answer),
        *_cases(answer),
        *_values(answer),
        *_entries(answer, base),
        *why,
        *_sources(answer),
        *_remarks(answer),
        *_next(answer),
    )
