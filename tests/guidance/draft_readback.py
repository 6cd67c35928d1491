"""The sentences of a draft put to the reader as claims: which are read, and with what verdict.

`python -m tests.guidance.draft_readback` lists for the demo's plan every sentence that is not read, or read
with another verdict, and the share of those that are.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Literal

from kb import KnowledgeBase, demo_folder
from kb.guidance.document import Document, Sentence
from kb.guidance.reading import Opened, open_plan
from kb.model.questions import Answer
from kb.model.records import Rule

PLAN = demo_folder() / "plans" / "boat-crews-in-winter.plan"
Outcome = Literal["same", "other", "depends", "unread"]

# The verdicts that say what a sentence says. A claimed value of a duty is permitted: the duty asks for it.
_ACTS = {
    "must": {"required"},
    "must_not": {"prohibited"},
    "may": {"permitted"},
    "need_not": {"permitted", "not_required"},
}
_VALUES = {"must": {"required", "permitted"}, "must_not": {"prohibited"}, "may": {"permitted"}}


def question(sentence: Sentence) -> str:
    first, rest = sentence.text[0], sentence.text[1:]
    named = rest[:1].isdigit() or rest[:1].isupper() or rest.startswith(" to ")
    return f"Is it true that {first if named else first.lower()}{rest}?"


def outcome(rule: Rule, kind: str, answer: Answer) -> Outcome:
    if answer.outcome != "answer" or answer.verdict is None:
        return "unread"
    if answer.verdict == "conditional":
        return "depends"
    wanted = (_ACTS if kind == "act" else _VALUES).get(rule.modality, set())
    return "same" if answer.verdict in wanted else "other"


def read_back(
    base: KnowledgeBase, opened: Opened, document: Document
) -> Iterator[tuple[Sentence, Outcome, Answer]]:
    """Every sentence that states a rule of the books (not a local one), and how it is read."""
    rules, aspects = base.lookup.rules, base.lookup.aspects
    for sentence in document.statements:
        if sentence.kind != "rule" or any(r not in rules for r in (*sentence.rules, *sentence.rivals)):
            continue
        answers = base.ask(question(sentence), facts=opened.plan.facts, as_of=opened.plan.effective)
        rule = rules[sentence.rules[0]]
        found = {outcome(rule, aspects[rule.aspect].kind, answer) for answer in answers}
        yield sentence, found.pop() if len(found) == 1 else "unread", answers[0]


def main() -> None:
    base = KnowledgeBase.open()
    opened = open_plan(PLAN.read_bytes(), PLAN.name, demo_folder())
    counts: Counter[str] = Counter()
    for sentence, found, answer in read_back(base, opened, base.draft(PLAN).document):
        counts[found] += 1
        if found != "same":
            words = answer.abstain.words if answer.abstain else ()
            print(f"{found}: {sentence.text} [{answer.verdict or ''} {', '.join(words)}]")
    total = sum(counts.values())
    print(", ".join(f"{name} {number} ({number / total:.0%})" for name, number in counts.most_common()))


if __name__ == "__main__":
    main()
