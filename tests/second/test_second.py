"""A second, invented service: what its books say, worked out by hand, against what the program answers.

Every question of questions.yaml is one test. Nothing here knows the program's own demonstration data.
"""

from datetime import date
from pathlib import Path
from typing import Any

import pytest
import yaml

from kb import Answer, KnowledgeBase
from tests.opening import opened

HERE = Path(__file__).parent
SOURCE = (HERE / "questions.yaml").read_text("utf-8")
QUESTIONS: list[dict[str, Any]] = yaml.load(SOURCE, Loader=yaml.BaseLoader)  # every scalar a text
AS_OF = "2026-02-01"
EXPECTATIONS = {"verdict", "never", "clauses", "outcome", "words", "values", "entries", "caution"}
KEYS = {"ask", "grade", "facts", "as-of"} | EXPECTATIONS


def _name(question: dict[str, Any]) -> str:
    given = {"grade": question.get("grade"), **question.get("facts", {}), "as-of": question.get("as-of")}
    return " ".join([question["ask"], *(f"{key}={value}" for key, value in given.items() if value)])


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("second")


def _ask(base: KnowledgeBase, question: dict[str, Any]) -> Answer:
    given = dict(question.get("facts", {}))
    if "grade" in question:
        given["grade"] = question["grade"]
    facts = tuple(base.fact(name, value) for name, value in given.items())
    answers = base.ask(question["ask"], facts=facts, as_of=date.fromisoformat(question.get("as-of", AS_OF)))
    assert len(answers) == 1, [(answer.outcome, answer.verdict) for answer in answers]
    return answers[0]


def _listed(value: Any) -> list[str]:
    return value if isinstance(value, list) else [value]


def _value_labels(answer: Answer) -> list[str]:
    return [value.label for value in answer.values]


def _missing(answer: Answer, question: dict[str, Any]) -> dict[str, Any]:
    """What the question expects and the answer has not, by key, with what the answer has instead."""
    cited = {citation.number for citation in answer.citations}
    held: dict[str, tuple[bool, Any]] = {}
    if "verdict" in question:
        held["verdict"] = (answer.verdict in _listed(question["verdict"]), answer.verdict)
    if "never" in question:
        held["never"] = (answer.verdict not in question["never"], answer.verdict)
    if "clauses" in question:
        held["clauses"] = (set(question["clauses"]) <= cited, sorted(cited))
    if "outcome" in question:
        held["outcome"] = (answer.outcome == question["outcome"], answer.outcome)
    if "words" in question:
        words = set(answer.abstain.words) if answer.abstain else set()
        held["words"] = (set(question["words"]) <= words, sorted(words))
    if "values" in question:
        labels = _value_labels(answer)
        held["values"] = (any(question["values"] in label for label in labels), labels)
    if "entries" in question:
        entries = {entry.item for entry in answer.entries}
        held["entries"] = (set(question["entries"]) <= entries, sorted(entries))
    if "caution" in question:
        held["caution"] = (bool(answer.cautions), answer.cautions)
    return {key: (question[key], got) for key, (right, got) in held.items() if not right}


def test_every_question_expects_something_and_says_it_in_known_keys() -> None:
    for question in QUESTIONS:
        assert set(question) <= KEYS, question
        assert set(question) & {"verdict", "never", "outcome", "values", "entries"}, question
    assert len({_name(question) for question in QUESTIONS}) == len(QUESTIONS) >= 60


@pytest.mark.parametrize("question", QUESTIONS, ids=_name)
def test_question(base: KnowledgeBase, question: dict[str, Any]) -> None:
    answer = _ask(base, question)
    missing = _missing(answer, question)
    read_as = answer.reading.text if answer.reading else None
    assert not missing, f"(expected, got): {missing}; read as: {read_as}"
