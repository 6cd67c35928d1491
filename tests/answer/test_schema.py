"""Every answer fits the documented JSON Schema: verdicts, tables, lists, places, asking back, abstaining."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

import jsonschema
import pytest

from kb import KnowledgeBase, answer_to_json
from tests.opening import opened

SCHEMA = json.loads(
    (Path(__file__).parents[2] / "ontology/schemas/answer.schema.json").read_text(encoding="utf-8")
)
QUESTIONS = (
    "May I wear the liner alone?",
    "Can a K5 wear gloves ashore?",
    "Where does the cap device go for an officer?",
    "Who may wear the keeper's pin?",
    "What must an H2 wear in boat rig?",
    "How high are the letters of the name strip?",
    "How is the service jersey cared for?",
    "How many qualification devices may I wear?",
    "May a coxswain wear the white lanyard when carrying guests in foul weather?",
    "May I wear a kilt?",
    "Can I wear a hat?",
    "May I wear the shore coat in storm rig at 12 °C?",
    "What does clause 4.1 say?",
    "May the belt be 2 in wide?",
    "Why may I not wear the liner alone?",
    "",
)


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


def test_the_schema_is_one() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("question", QUESTIONS)
def test_an_answer_fits_the_schema(demo: KnowledgeBase, question: str) -> None:
    answers = demo.ask(question, as_of=datetime.date(2026, 11, 25))
    assert answers
    for answer in answers:
        jsonschema.validate(json.loads(answer_to_json(answer)), SCHEMA, jsonschema.Draft202012Validator)
