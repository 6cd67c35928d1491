"""Answers of the demo, each verified, then changed at places drawn at random and refused."""

from __future__ import annotations

import copy
import datetime
import json
import random
import shutil
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kb import KnowledgeBase, answer_to_json, demo_folder
from kb.checker import check
from tests.opening import opened
from tests.reader.conftest import HERE
from tests.reader.notation import read_cases

DAY = datetime.date(2026, 11, 25)
QUESTIONS = tuple(question for question, _ in read_cases(HERE / "demo.txt"))
SOME = (
    "May I wear the liner alone?",
    "Can a K5 wear gloves ashore?",
    "How wide is the belt?",
    "Where does the cap device go for an officer?",
    "Who may wear the keeper's pin?",
    "Must an H2 wear the flotation vest in boat rig?",
    "What must an H2 wear in boat rig?",
)
Json = Any
Path_ = tuple[str | int, ...]
# Words that only say again what other keys mean: the checker leaves them to the comparison of words.
WORDS = {"statement", "reason", "detail", "label", "title"}
# The question as it was typed, and how it was taken apart: they rest on what was said before.
FREE = (("question",), ("reading", "spans"), ("reading", "carried"))


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


def saved(base: KnowledgeBase, question: str) -> list[Json]:
    return [json.loads(answer_to_json(answer)) for answer in base.ask(question, as_of=DAY)]


@pytest.mark.slow
@pytest.mark.parametrize("question", QUESTIONS)
def test_every_demo_question_is_verified(demo: KnowledgeBase, question: str) -> None:
    for answer in saved(demo, question):
        assert demo.verify(answer) is None


def leaves(value: Json, path: Path_ = ()) -> Iterator[tuple[Path_, Json]]:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from leaves(inner, (*path, key))
    elif isinstance(value, list):
        for place, inner in enumerate(value):
            yield from leaves(inner, (*path, place))
    else:
        yield path, value


def changed(answer: Json, path: Path_, value: Json) -> Json:
    found = copy.deepcopy(answer)
    place = found
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = value
    return found


def another(chooser: random.Random, value: Json, likes: set[Json]) -> Json:
    """A value like those at such places of the answer, or one that is nowhere in it."""
    likes = likes - {value}
    if likes and chooser.random() < 0.7:
        return chooser.choice(sorted(likes, key=repr))
    if isinstance(value, bool):
        return not value
    return value + 1 if isinstance(value, int) else f"{value or ''}x"


def name_of(path: Path_) -> str:
    return next(str(step) for step in reversed(path) if isinstance(step, str))


@pytest.mark.slow
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(question=st.sampled_from(SOME), chooser=st.randoms(use_true_random=False))
def test_a_change_anywhere_is_refused(demo: KnowledgeBase, question: str, chooser: random.Random) -> None:
    (answer,) = saved(demo, question)
    places = [
        (path, value) for path, value in leaves(answer) if path[:1] not in FREE and path[:2] not in FREE
    ]
    likes: dict[str, set[Json]] = defaultdict(set)
    for path, value in places:
        likes[name_of(path)].add(value)
    path, value = chooser.choice(places)
    other = changed(answer, path, another(chooser, value, likes[name_of(path)]))
    refused = demo.verify(other)
    assert refused is not None, path
    assert all(refused)


@pytest.mark.slow
@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(question=st.sampled_from(SOME[:6]), chooser=st.randoms(use_true_random=False))
def test_the_checker_alone_refuses_what_changes_the_proof(
    demo: KnowledgeBase, question: str, chooser: random.Random
) -> None:
    (answer,) = saved(demo, question)
    parts = ("cases", "derivation", "values", "citations", "as_of", "verdict", "kb")
    places = [
        (path, value)
        for path, value in leaves({key: answer[key] for key in parts})
        if not WORDS.intersection(step for step in path if isinstance(step, str))
        and not (path[0] == "cases" and path[-1] == "text")
        and "measure" not in path
        and "position" not in path
    ]
    path, value = chooser.choice(places)
    other = changed(answer, path, another(chooser, value, set()))
    assert check(other, demo.lookup, demo.digest) is not None, path


def test_a_table_whose_rows_are_moved_together_is_refused(demo: KnowledgeBase) -> None:
    """Rows that stay disjoint and complete, and proofs that stay right, with a bound in another place."""
    (answer,) = saved(demo, "Can a K5 wear gloves ashore?")
    moved = json.loads(
        json.dumps(answer).replace('{"below": "4"}', '{"below": "3"}').replace('"from": "4"', '"from": "3"')
    )
    assert moved != answer
    refused = check(moved, demo.lookup, demo.digest)
    assert refused is not None
    assert "verdict" in refused[0]


@pytest.mark.parametrize("part", ["cases", "derivation", "citations", "values", "entries"])
@pytest.mark.parametrize("question", [SOME[1], SOME[2], SOME[6]])
def test_nothing_can_be_taken_away_or_said_twice(demo: KnowledgeBase, question: str, part: str) -> None:
    (answer,) = saved(demo, question)
    for n in range(len(answer[part]))[:: max(len(answer[part]) // 3, 1)]:
        less, more = copy.deepcopy(answer), copy.deepcopy(answer)
        del less[part][n]
        more[part].append(more[part][n])
        assert demo.verify(less) is not None
        assert demo.verify(more) is not None


def test_a_proof_that_leaves_out_a_rule_a_defeat_or_a_value_is_refused(demo: KnowledgeBase) -> None:
    (answer,) = saved(demo, "Can a K5 wear gloves ashore?")
    for n, proof in enumerate(answer["derivation"]):
        for key in ("rules", "defeats", "values"):
            for place in range(len(proof[key])):
                other = copy.deepcopy(answer)
                del other["derivation"][n][key][place]
                assert check(other, demo.lookup, demo.digest) is not None, (n, key, place)


@pytest.mark.parametrize("principle", ["exception", "delegation", "authority", "edition", "specificity"])
def test_a_defeat_by_another_line_is_refused(demo: KnowledgeBase, principle: str) -> None:
    (answer,) = saved(demo, "Can a K5 wear gloves ashore?")
    (n, defeat) = next(
        (n, defeats[0]) for n, proof in enumerate(answer["derivation"]) if (defeats := proof["defeats"])
    )
    other = changed(answer, ("derivation", n, "defeats", 0, "principle"), principle)
    refused = check(other, demo.lookup, demo.digest)
    assert (refused is None) == (principle == defeat["principle"])
    turned = changed(answer, ("derivation", n, "defeats", 0, "winner"), defeat["loser"])
    assert check(turned, demo.lookup, demo.digest) is not None


def test_an_answer_from_changed_books_is_refused(demo: KnowledgeBase, tmp_path: Path) -> None:
    books = tmp_path / "books"
    shutil.copytree(demo_folder(), books)
    path = books / "dress-order-2024-2-garments.yaml"
    path.write_text(path.read_text("utf-8").replace("buttoned into", "fastened into", 1), "utf-8")
    (answer,) = saved(KnowledgeBase.open(books, tmp_path / "cache"), SOME[0])
    refused = demo.verify(answer)
    assert refused is not None
    assert refused[0] == "kb"
    assert "other rule books" in refused[1]
    (refusal,) = [check({**answer, "kb": demo.digest}, demo.lookup, demo.digest)]
    assert refusal is not None, "the quoted text betrays it even under our digest"
    assert refusal[0].endswith("text")


def test_the_digest_is_of_the_books_and_not_of_where_they_lie(demo: KnowledgeBase, tmp_path: Path) -> None:
    books = tmp_path / "elsewhere"
    shutil.copytree(demo_folder(), books)
    assert KnowledgeBase.open(books, tmp_path / "cache").digest == demo.digest


@pytest.mark.slow
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(
    chooser=st.randoms(use_true_random=False),
    value=st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
        lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
        max_leaves=5,
    ),
)
def test_what_has_another_shape_is_refused_and_never_a_fault(
    demo: KnowledgeBase, chooser: random.Random, value: Json
) -> None:
    (answer,) = saved(demo, "Can a K5 wear gloves ashore?")
    path, _ = chooser.choice(list(leaves(answer)))
    path = path[: chooser.randint(1, len(path))]
    other = changed(answer, path, value)
    if other != answer and path[:1] not in FREE and path[:2] not in FREE and path != ("reading",):
        assert demo.verify(other) is not None, path


@pytest.mark.parametrize("question", [None, 5, ["x"], {}])
def test_an_answer_has_a_question_also_where_it_says_nothing(demo: KnowledgeBase, question: Json) -> None:
    (answer,) = saved(demo, "May I wear a florgle?")
    assert demo.verify(answer) is None
    assert demo.verify({**answer, "question": question}) is not None
    assert demo.verify({key: value for key, value in answer.items() if key != "question"}) is not None


@pytest.mark.parametrize("number", ["1e9999999", "1" * 5000, "1/0", "nan", "", "½", 3])
def test_numbers_that_are_none_are_refused(demo: KnowledgeBase, number: Json) -> None:
    (answer,) = saved(demo, "Can a K5 wear gloves ashore?")
    path = next(path for path, _ in leaves(answer) if path[-1] == "below")
    assert demo.verify(changed(answer, path, number)) is not None
