"""The JSON Schema of plans, for editors, agrees with the reader of plans on form."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator
from referencing import Registry, Resource

from kb import demo_folder
from kb.files import data_folder
from tests.guidance.draft_cases import plan_text
from tests.guidance.test_draft_refusals import ALLOWED, REFUSED

PLANS = sorted((demo_folder() / "plans").glob("*.plan"))


@cache
def validator() -> Draft202012Validator:
    schemas = data_folder("ontology") / "schemas"
    plan, book = (
        json.loads((schemas / f"{n}.schema.json").read_text("utf-8")) for n in ("plan", "rule-book")
    )
    Draft202012Validator.check_schema(plan)
    return Draft202012Validator(
        plan, registry=Registry().with_resource(book["$id"], Resource.from_contents(book))
    )


def as_texts(text: str) -> Any:
    return yaml.load(text, Loader=yaml.BaseLoader)


GOOD = (
    *(plan.read_text("utf-8") for plan in PLANS),
    plan_text("rigs: boat-rig"),
    *(plan_text(*lines) for lines in ALLOWED),
    *(plan_text(*lines) for lines, _, _ in REFUSED),
)


@pytest.mark.parametrize("text", GOOD)
def test_what_the_reader_takes_the_schema_takes(text: str) -> None:
    assert [error.message for error in validator().iter_errors(as_texts(text))] == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("plan: little\n", ""),
        ("plan: little", "plan: so little"),
        ("review: 2026-12-31\n", ""),
        ("effective: 2026-12-01", "effective: soon"),
        ("rigs: boat-rig", "rig: boat-rig"),
        ("rigs: boat-rig", "audience: everybody"),
        ("rigs: boat-rig", "audience: {grade: K1}"),
        ("rigs: boat-rig", "arrange: at random"),
        ("rigs: boat-rig", "kit: maybe"),
        ("rigs: boat-rig", "situation: foul weather"),
        ("rigs: boat-rig", "items: [{id: cape, label: cape, kind of: garment}]"),
        ("rigs: boat-rig", "clauses: [{clause: '1', text: A., rules: [{mst: jersey}]}]"),
    ],
)
def test_the_schema_refuses_mistakes_of_form(old: str, new: str) -> None:
    good = plan_text("rigs: boat-rig")
    assert old in good
    assert not validator().is_valid(as_texts(good.replace(old, new)))
