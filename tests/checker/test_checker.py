"""Saved answers are verified as they were given, and refused once they say anything else."""

from __future__ import annotations

import ast
import copy
import datetime
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import kb.checker
import kb.plain
from kb import KnowledgeBase, answer_to_json
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
QUESTIONS = (
    "May I wear the liner alone?",
    "Can a K5 wear gloves ashore?",
    "Where does the cap device go for an officer?",
    "Where does the identity disc go?",
    "Who may wear the keeper's pin?",
    "May I wear the storm coat with the watch coat?",
    "Must an H2 wear the flotation vest in boat rig?",
    "May I leave off the service cap in parade rig?",
    "May a coxswain wear the white lanyard when carrying guests in foul weather?",
    "How many qualification devices may I wear?",
    "May I wear the headphones on watch?",
    "What changed in 2026?",
    "What did the Interim Notice change?",
    "What has the notice changed about the belts?",
    "Nobody may wear earrings in parade rig, is that right?",
    "Is it true that earrings are forbidden in parade rig?",
    "What must an H2 wear in shore rig?",
    "May I wear shore rig in the mess?",
)
Json = dict[str, Any]


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


def saved(base: KnowledgeBase, question: str) -> Json:
    (answer,) = base.ask(question, as_of=DAY)
    found: Json = json.loads(answer_to_json(answer))
    return found


@pytest.mark.parametrize("question", QUESTIONS)
def test_an_answer_is_verified_as_it_was_given(demo: KnowledgeBase, question: str) -> None:
    answer = saved(demo, question)
    assert demo.verify(answer) is None


def _put(*path: Any, value: Any) -> Callable[[Json], None]:
    def change(answer: Json) -> None:
        place: Any = answer
        for step in path[:-1]:
            place = place[step]
        place[path[-1]] = value

    return change


def _drop(*path: Any) -> Callable[[Json], None]:
    def change(answer: Json) -> None:
        place: Any = answer
        for step in path[:-1]:
            place = place[step]
        del place[path[-1]]

    return change


LINER = QUESTIONS[0]
GLOVES = QUESTIONS[1]
CHANGES: dict[str, tuple[str, Callable[[Json], None]]] = {
    "other books": (LINER, _put("kb", value="0" * 64)),
    "no digest": (LINER, _drop("kb")),
    "another day, before the edition": (LINER, _put("as_of", value="2020-01-01")),
    "no day": (LINER, _put("as_of", value="soon")),
    "verdict": (LINER, _put("verdict", value="permitted")),
    "verdict of the case": (LINER, _put("cases", 0, "verdict", value="permitted")),
    "verdict of the proof": (LINER, _put("derivation", 0, "verdict", value="silent")),
    "a case that is gone": (LINER, _drop("cases", 0)),
    "a proof that is gone": (LINER, _drop("derivation", 0)),
    "quoted text": (LINER, _put("derivation", 0, "rules", 0, "text", value="The liner may be worn.")),
    "cited text": (LINER, _put("citations", 0, "text", value="The liner may be worn.")),
    "cited clause": (LINER, _put("citations", 0, "clause", value="9.9")),
    "a rule that is not": (LINER, _put("derivation", 0, "rules", 0, "rule", value="no/1/x")),
    "modality": (LINER, _put("derivation", 0, "rules", 0, "modality", value="must")),
    "status": (LINER, _put("derivation", 0, "rules", 0, "status", value="disabled")),
    "alive": (LINER, _put("derivation", 0, "rules", 1, "alive", value=False)),
    "a rule left out": (LINER, _drop("derivation", 0, "rules", 0)),
    "a defeat made up": (
        LINER,
        _put(
            "derivation", 0, "defeats",
            value=[{"winner": "dress-order/2024/liner-alone", "loser": "dress-order/2024/liner-alone",
                    "principle": "authority", "detail": ""}],
        ),
    ),
    "fate of a value": (LINER, _put("derivation", 0, "values", 1, "status", value="supported")),
    "another item": (LINER, _put("derivation", 0, "item", value="storm-coat")),
    "facts of the reading": (LINER, _put("reading", "facts", value={"worn:storm-coat": ["yes"]})),
    "not alone": (LINER, _put("reading", "alone", value=False)),
    "a row turned": (GLOVES, _put("cases", 0, "verdict", value="prohibited")),
    "a row left out": (GLOVES, _drop("cases", 1)),
    "a row widened": (GLOVES, _put("cases", 0, "when", value={})),
    "a row's facts": (GLOVES, _put("cases", 0, "when", "hauling", value=["yes"])),
}  # fmt: skip


@pytest.mark.parametrize("name", CHANGES)
def test_a_changed_answer_is_refused_with_the_place_and_the_reason(demo: KnowledgeBase, name: str) -> None:
    question, change = CHANGES[name]
    answer = copy.deepcopy(saved(demo, question))
    change(answer)
    refused = demo.verify(answer)
    assert refused is not None
    where, what = refused
    assert where
    assert what


@pytest.mark.parametrize("value", [None, [], 3, "text", {}, {"format": 1}, {"format": 2}])
def test_what_is_no_answer_is_refused(demo: KnowledgeBase, value: Any) -> None:
    assert demo.verify(value) is not None


@pytest.mark.parametrize(
    ("value", "said"),
    [
        ({}, ("format", "only answers in format 1 are known")),
        ([], ("format", "only answers in format 1 are known")),
        (3, ("the answer", "it is not an answer in format 1: its shape is another")),
        (
            {"format": 1, "question": "?"},
            ("the answer", "it is not an answer in format 1: 'kb' is missing or unknown"),
        ),
    ],
)
def test_the_reason_names_no_name_of_the_language(
    demo: KnowledgeBase, value: Any, said: tuple[str, str]
) -> None:
    assert demo.verify(value) == said


def test_a_rule_of_a_clause_that_did_not_change_is_not_cited(demo: KnowledgeBase) -> None:
    """Between two days the clauses that began or ended there are cited beside those that decide."""
    answer = saved(demo, "What changed in 2026?")
    other = next(r for r in demo.lookup.base.rules if r.clause == "dress-order/2024/2.1")
    (cited,) = (c for c in saved(demo, "What colour is the storm coat?")["citations"] if c["clause"] == "2.1")
    answer["citations"].append({**cited, "rules": [other.id]})
    assert demo.verify(answer) == ("citations", "a rule that decides nothing is cited")


def test_what_one_book_did_is_all_listed_and_nothing_else(demo: KnowledgeBase) -> None:
    """By the plain meaning alone, without the answer that the program gives once more."""
    answer = saved(demo, "What did the Interim Notice change?")
    shorter, other = copy.deepcopy(answer), copy.deepcopy(answer)
    told = [{side["verdict"] for side in one["sides"]} for one in answer["differences"]]
    gone = shorter["differences"].pop(next(n for n, verdicts in enumerate(told) if len(verdicts) > 1))
    other["reading"]["book"] = "station-order"
    said = [kb.checker.check(one, demo.lookup, demo.digest) for one in (answer, shorter, other)]
    assert said[0] is None
    assert said[1] == ("differences", f"{gone['item']} is left out")
    assert said[2] == ("differences[0]", "something is compared that was not asked about")


def test_the_checker_is_short_and_apart() -> None:
    """Under 250 lines, and nothing of the reasoner, its explanation or its answers in it or below it."""
    own = Path(kb.checker.__file__)
    assert len(own.read_text("utf-8").splitlines()) < 250
    for path in (own, *Path(kb.plain.__file__).parent.glob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom):
                assert not str(node.module).startswith(("kb.reasoner", "kb.explanation", "kb.answer"))


def test_the_first_word_of_an_answer_is_one_that_its_question_takes(demo: KnowledgeBase) -> None:
    answer = saved(demo, "Nobody may wear earrings in parade rig, is that right?")
    assert answer["headline"].startswith("Right. ")
    answer["headline"] = answer["headline"].replace("Right. ", "Wrong. ")
    assert demo.verify(answer) is not None


def test_how_a_thing_must_be_worn_is_cited_beside_leave_to_wear_it() -> None:
    """A duty of another clause that holds whenever the hat is worn; one that is nothing to it is refused."""
    base = opened("school")
    (answer,) = base.ask("Lower Sixth, raining hard: is the felt hat allowed outside?", as_of=DAY)
    data: Json = json.loads(answer_to_json(answer))
    assert data["headline"] == "Yes. The felt hat may be worn, but must be marked with the owner's name."
    assert len(data["citations"]) == 2
    assert base.verify(data) is None
    duty = data["citations"][1]["rules"][0]
    other = next(
        r for r in base.lookup.base.rules if r.clause == base.lookup.rules[duty].clause and r.id != duty
    )
    data["citations"][1]["rules"] = [other.id]
    assert base.verify(data) == ("citations", "a rule that decides nothing is cited")
