"""Lists name what is to be put on, and apart from it what ordinarily is."""

from __future__ import annotations

import datetime

import pytest

from kb import Answer, KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)
LISTS = [
    (
        "playhouse",
        "What do I wear as an usher at a matinee?",
        "For an Usher, kind of performance matinee, the name badge must be worn, and ordinarily the claret"
        " waistcoat, the white shirt, the grey house tie, the black trousers or the black skirt, and the"
        " black shoes; ",
    ),
    (
        "demo",
        "What must an H2 wear in shore rig?",
        "For an H2 in shore rig, the day shirt, the dress socks, the black shoes, the hands' knot, the branch"
        " flash and the identity disc must be worn, and ordinarily the dress trousers or the dress skirt; ",
    ),
    (
        "demo",
        "What do I wear on watch as a K1?",  # jersey or shirt is what the workshop asks for
        "For a K1, on watch, the keeper's bars, the branch flash and the identity disc must be worn, and"
        " ordinarily the service jersey, the day shirt, ",
    ),
    (
        "demo",
        "What must an H2 wear in boat rig?",
        "For an H2 in boat rig, the lined smock, the service jersey, ",
    ),
]


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name, _, _ in LISTS}


def asked(base: KnowledgeBase, question: str) -> Answer:
    (answer,) = base.ask(question, as_of=DAY)
    return answer


@pytest.mark.parametrize(("name", "question", "headline"), LISTS)
def test_what_is_to_be_put_on_is_named(
    bases: dict[str, KnowledgeBase], name: str, question: str, headline: str
) -> None:
    answer = asked(bases[name], question)
    assert answer.headline.startswith(headline)
    said = {"required", "permitted", "prohibited", "not_required"}
    for entry in answer.entries:
        assert entry.usual is None or entry.verdict == "conditional"
        if entry.usual in said and not entry.condition.startswith("ordinarily"):
            assert entry.usual.replace("_", " ") in entry.condition or " when " in entry.condition


def test_what_goes_with_a_thing_that_nobody_named_is_not_ordinarily_worn(
    bases: dict[str, KnowledgeBase],
) -> None:
    answer = asked(bases["demo"], "What must an H2 wear in boat rig?")
    (device,) = [entry for entry in answer.entries if entry.item == "cap-device"]
    assert device.usual is None
    assert device.condition == "required when the wearer wears the service cap"


def test_of_a_narrowed_list_only_what_it_asks_for_is_ordinary(bases: dict[str, KnowledgeBase]) -> None:
    answer = asked(bases["demo"], "What must a K2 wear in watch rig?")
    assert {entry.usual for entry in answer.entries} <= {None, "required"}
