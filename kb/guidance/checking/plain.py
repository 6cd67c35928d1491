"""Sentences that belong to the form of guidance and state no rule."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

import msgspec

from kb.guidance.checking.books import Books
from kb.guidance.checking.citations import Citations
from kb.guidance.checking.passage import Passage
from kb.guidance.checking.verdicts import Weighing
from kb.guidance.checking.words import fold
from kb.model.records import Clause

_FORMS = re.compile(
    r"(?:made from (?:the )?rule books? .*|the table below gives.*|signature:?[ ._]*|name:?[ ._]*|"
    r"date:?[ ._]*|"
    r"grade and appointment:?[ ._]*|"
    r"[._ -]+|local rules are marked.*)"
)


def is_boilerplate(text: str) -> bool:
    """Whether a sentence is one of the form's own, or the deference to the safety authority."""
    from kb.answer.common import DEFERENCE  # noqa: PLC0415

    plain = fold(text)
    return plain.rstrip(".") == fold(DEFERENCE).rstrip(".") or _FORMS.fullmatch(plain) is not None


_REMARK = re.compile(r"(?:note|caution): (?P<text>.+)")
_LONGEST_REMARK = 8  # sentences
_OPEN = re.compile(r"this is open: .*\boppos(?:e|es)\b.*")


def is_remark(text: str, clauses: Sequence[Clause], books: Books) -> bool:
    """Whether a sentence is the note or caution of a rule of one of the clauses, word for word."""
    match = _REMARK.fullmatch(fold(text))
    said = match["text"].rstrip(" .") if match else ""
    rules = [rule for clause in clauses for rule in books.lookup.rules_of(clause.id)] if said else []
    return any(fold(remark).rstrip(" .") == said for r in rules for remark in (r.note, r.caution) if remark)


def remarks_whole(passages: Sequence[Passage], citations: Citations, books: Books) -> Iterator[Passage]:
    """The passages, a remark of several sentences that a rule makes word for word as one of them."""
    at = 0
    while at < len(passages):
        whole = passages[at]
        longest = _LONGEST_REMARK if _REMARK.fullmatch(fold(whole.text)) else 1
        taken = 1
        for end in range(at + 2, min(at + longest, len(passages)) + 1):
            text = " ".join(passage.text for passage in passages[at:end])
            found = citations.find(text)
            if is_remark(found.rest, books.resolve(found.citations).clauses, books):
                whole, taken = msgspec.structs.replace(passages[at], text=text, readings=(text,)), end - at
        yield whole
        at += taken


def is_open(text: str, clauses: Sequence[Clause], weighing: Weighing) -> bool:
    """Whether a sentence says that clauses oppose each other, and rules of them do so in some case."""
    here = {clause.id for clause in clauses}
    if not here or _OPEN.match(fold(text)) is None:
        return False
    engine, lookup = weighing.judge.engine, weighing.lookup
    rules = [rule for rule in weighing.rules if rule.clause in here]
    for rule in rules:
        for item in rule.scope.items:
            for decision in engine.problem(engine.group(item, rule.aspect), {}).decisions():
                for fate in decision.fates:
                    if fate.status == "contested":
                        closing = {lookup.rules[name].clause for name in fate.closed_by}
                        supporting = {lookup.rules[name].clause for name in fate.supported_by}
                        if here <= closing | supporting:
                            return True
                both = [fate for fate in decision.fates if fate.status == "closed"]
                named = {lookup.rules[name].clause for fate in both for name in fate.closed_by}
                if len(both) == len(decision.fates) and here <= named:
                    return True
    return False
