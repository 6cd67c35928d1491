"""The JSON Schema for editors agrees with the reader on what is right, and refuses what a schema can see."""

import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator

ROOT = Path(__file__).parents[2]
SCHEMA = ROOT / "ontology" / "schemas" / "rule-book.schema.json"
RIGHT = sorted([*(Path(__file__).parent / "good").glob("*.yaml"), *(ROOT / "demo_facts").glob("*.yaml")])
BROKEN = Path(__file__).parent / "broken"

# Mistakes of form that an editor can point out while the writer types.
SEEN_BY_SCHEMA = (
    "bad-alternatives bad-alternatives-may bad-clause-number bad-id bad-not-together "
    "bad-reference empty-condition missing-about missing-allow missing-book missing-clause missing-edition "
    "missing-fact missing-grades missing-granted-by missing-id missing-kind-of missing-label missing-measure "
    "missing-modality missing-namespace missing-of missing-on missing-relation missing-term missing-text "
    "missing-to "
    "missing-unit-fact missing-values missing-when no-rules not-yes-or-no order-too-short rules-not-wanted "
    "unit-not-wanted unknown-key unknown-key-section unknown-protection unknown-word unknown-word-otherwise "
    "unknown-word-relation values-not-wanted incomplete-origin undecided-word undecided-word-both "
    "wrong-kind wrong-kind-entry wrong-kind-when wrong-kind-clauses"
)


@cache
def validator() -> Draft202012Validator:
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema)


def as_texts(path: Path) -> Any:
    """The file with every scalar as text, as the reader sees it."""
    return yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)


@pytest.mark.parametrize("path", RIGHT, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_what_the_reader_takes_the_schema_takes(path: Path) -> None:
    errors = [
        f"{error.json_path}: {error.message[:200]}" for error in validator().iter_errors(as_texts(path))
    ]
    assert errors == []


@pytest.mark.parametrize("name", SEEN_BY_SCHEMA.split())
def test_the_schema_refuses_mistakes_of_form(name: str) -> None:
    assert not validator().is_valid(as_texts(BROKEN / f"{name}.yaml"))
