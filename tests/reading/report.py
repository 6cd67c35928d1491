"""How well questions are read and answered: `python -m tests.reading.report [--half kept] [--misses]
[--only SHEET]`.

RS(10) is the reading score: a right answer or a right refusal 1, a needless refusal 0, a wrong answer -10.
A conditional answer is right if what is expected is what it leads with ("Yes. ..., unless ..."), or what it
says where everything that nobody mentioned (a waiver, a grant, another garment) is absent, and withheld if
another of its cases says it. The baseline is keyword search alone: it cites its best clause, and takes the
verdict from the modal word in it.
"""

from __future__ import annotations

import argparse
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Iterable, Sequence
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from kb import Answer, KnowledgeBase, Reading, UsageError
from kb.model.questions import Abstain
from shell.commands import read_line
from shell.session import Session
from shell.turns import take_line
from tests.reading.judging import Mark, Verdict, judge, judge_line
from tests.reading.sheets import BOOKS, SHEETS, TALKS, Asked, dialogues, questions

_MODALS = (
    ("must not", "prohibited"),
    ("may not", "prohibited"),
    ("must", "required"),
    ("shall", "required"),
    ("may", "permitted"),
)


class Marked(NamedTuple):
    """A question with what is held of its answer, and the seconds that reading and answering took."""

    sheet: str
    asked: Asked
    held: Verdict
    seconds: float
    answers: tuple[Answer, ...] = ()

    @property
    def said(self) -> str:
        """The headlines of the answers."""
        return " / ".join(answer.headline or answer.outcome for answer in self.answers)


def ask(base: KnowledgeBase, asked: Asked) -> tuple[tuple[Answer, ...], float]:
    """The answers to the line; a fact that the books do not have is left out, as a person would."""
    facts = []
    for name, value in asked.facts:
        try:
            facts.append(base.fact(name, value))
        except UsageError as error:
            print(f"{asked.text!r}: {error}", file=sys.stderr)
    started = time.perf_counter()
    try:
        answers = base.ask(asked.text, facts=tuple(facts), as_of=asked.as_of)
    except UsageError as error:  # what was read cannot be so: nothing is answered
        reading = Reading(question=asked.text, abstain=Abstain(reason=str(error)))
        answers = (base.answer(reading),)
    return answers, time.perf_counter() - started


def mark_questions(name: str, half: str, base: KnowledgeBase) -> list[Marked]:
    return [mark_line(name, asked, base) for asked in questions(name, half)]


def mark_line(name: str, asked: Asked, base: KnowledgeBase) -> Marked:
    answers, seconds = ask(base, asked)
    return Marked(name, asked, judge_line(answers, asked, base.lookup), seconds, answers)


def share(marks: Iterable[bool]) -> str:
    """A share with its n."""
    found = list(marks)
    return f"{sum(found) / len(found):7.1%}  n={len(found)}" if found else "      -  n=0"


def reading_score(held: Sequence[Verdict]) -> float:
    """RS(10) over these: 1 at best."""
    worth = {"right": 1, "withheld": 0, "wrong": -10}
    return sum(worth[one.mark] for one in held) / max(len(held), 1)


def lines(marked: Sequence[Marked]) -> list[str]:
    """The measures of one set of questions."""
    answerable = [m for m in marked if m.asked.outcomes[0] == "answer"]
    answered = [m for m in answerable if m.held.mark != "withheld"]
    cited = [m.held.cited for m in marked if m.held.cited]
    asks = [m for m in marked if m.held.asked]
    to_ask = [m for m in marked if m.asked.outcomes[0] == "ask"]
    found = sum(count for count, _, _ in cited)
    precision = sum(hit for _, hit, _ in cited) / max(found, 1)
    outside = [m.held.mark == "right" for m in marked if m.asked.outcomes[0] == "abstain"]
    return [
        f"verdict accuracy (answerable)    {share(m.held.mark == 'right' for m in answerable)}",
        f"selective accuracy (answered)    {share(m.held.mark == 'right' for m in answered)}",
        f"coverage (answerable)            {share(m.held.mark != 'withheld' for m in answerable)}",
        f"wrong and confident (all)        {share(m.held.mark == 'wrong' for m in marked)}",
        f"right refusal (outside)          {share(outside)}",
        f"kind of question read            {share(m.held.kind_is_right for m in answered)}",
        f"ask precision                    {share(m.held.mark == 'right' for m in asks)}",
        f"ask recall                       {share(m.held.mark == 'right' for m in to_ask)}",
        f"citation recall (one expected)   {share(hit for _, _, hit in cited)}",
        f"citation precision               {precision:7.1%}  n={found}",
        f"RS(10)                           {reading_score([m.held for m in marked]):7.3f}  n={len(marked)}",
        f"median time of an answer         {statistics.median(m.seconds for m in marked) * 1e3:7.1f} ms",
    ]


def talk(base: KnowledgeBase, turns: Sequence[Asked]) -> list[tuple[Asked, Verdict, str]]:
    """A dialogue as the shell holds it: the profile, the last question, a reply to what was asked back."""
    known = tuple(base.fact(name, value) for name, value in turns[0].facts)
    session = Session(profile=known, as_of=turns[0].as_of)
    held = []
    for turn in turns:
        before = session.answers
        session, reply = take_line(session, turn.text, base)
        why = read_line(turn.text).name == "why" and not reply.complaint
        if before and session.answers is before and why:
            found = judge(before[-1], turn, base.lookup, may_ask=True)  # its whole way is shown
            held.append((turn, found, before[-1].headline))
            continue
        if session.answers is before:  # not understood: the session is as it was
            mark: Mark = "right" if "abstain" in turn.outcomes else "withheld"
            held.append((turn, Verdict(mark, False, False, None, "no answer"), reply.complaint))
            continue
        answer = session.answers[-1]
        held.append((turn, judge(answer, turn, base.lookup, may_ask=True), answer.headline or answer.outcome))
    return held


def baseline(base: KnowledgeBase, asked: Asked) -> tuple[str, str]:
    """What keyword search alone would say: the verdict that a modal word suggests, and its best clause."""
    words = tuple(word.strip("?.,!'\"").casefold() for word in asked.text.split())
    hits = base.generation.search(words, ("clause",), 1)
    if not hits:
        return "", ""
    clause = next(c for c in base.lookup.base.clauses if c.id == hits[0].id)
    text = clause.text.casefold()
    verdict = next((verdict for modal, verdict in _MODALS if modal in text), "silent")
    return verdict, f"{clause.edition} {clause.number}"


def _first(asked: Asked) -> dict[str, Any]:
    """What is expected before all else."""
    part: dict[str, Any] = asked.expect.get("each", [asked.expect])[0]
    first: dict[str, Any] = part.get("any_of", [part])[0]
    return first


def baseline_lines(base: KnowledgeBase, asked: Iterable[Asked]) -> list[str]:
    answerable = [one for one in asked if one.outcomes[0] == "answer"]
    said = [(baseline(base, one), _first(one)) for one in answerable]
    judged = [
        (v, e) for (v, _), e in said if e.get("verdict") not in (None, "conditional", "silent", "conflict")
    ]
    return [
        f"baseline, verdict                {share(v == e['verdict'] for v, e in judged)}",
        f"baseline, clause                 {share(c in e.get('clauses', ()) for (_, c), e in said)}",
    ]


def _told(title: str, found: list[str], show: Callable[[str], None]) -> None:
    show(f"\n{title}")
    for line in found:
        show(f"  {line}")


def _told_of_talks(name: str, half: str, opened: Callable[[str], KnowledgeBase], misses: bool) -> None:
    talks = [talk(opened(one.books), one.turns) for one in dialogues(half, name)]
    whole = [all(held.mark == "right" for _, held, _ in found) for found in talks]
    turns = [held for found in talks for _, held, _ in found]
    _told(
        f"{name}, {half} half",
        [
            f"whole dialogues                  {share(whole)}",
            f"turns                            {share(h.mark == 'right' for h in turns)}",
            f"wrong and confident (turns)      {share(h.mark == 'wrong' for h in turns)}",
            f"RS(10) of turns                  {reading_score(turns):7.3f}  n={len(turns)}",
        ],
        print,
    )
    if misses:
        for found in talks:
            for turn, held, said in found:
                if held.mark != "right":
                    begun = found[0][0].text[:30]
                    print(f"{held.mark:8} | {begun} … {turn.text} | {held.why} | {said[:100]}")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--half", choices=("open", "kept"), default="open")
    parser.add_argument("--misses", action="store_true", help="name each question that is not right")
    parser.add_argument(
        "--only", metavar="NAME", nargs="+", help="some sets of questions or dialogues: demo-further"
    )
    chosen = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        opened = cache(lambda name: KnowledgeBase.open(BOOKS[name], Path(folder)))
        for name, books in SHEETS.items():
            if chosen.only is not None and name not in chosen.only:
                continue
            base = opened(books)
            marked = mark_questions(name, chosen.half, base)
            _told(f"{name}, {chosen.half} half", lines(marked), print)
            _told("keyword search alone", baseline_lines(base, (m.asked for m in marked)), print)
            if chosen.misses:
                for m in sorted(marked, key=lambda m: m.held.mark, reverse=True):
                    if m.held.mark != "right":
                        facts = " ".join(f"{a}={b}" for a, b in m.asked.facts)
                        print(f"{m.held.mark:8} | {m.asked.text} | {facts} | {m.held.why} | {m.said[:110]}")
        for name in TALKS:
            if chosen.only is None or name in chosen.only:
                _told_of_talks(name, chosen.half, opened, chosen.misses)


if __name__ == "__main__":
    main()
