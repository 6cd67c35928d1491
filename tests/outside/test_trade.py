"""Facts of the trade as answers. Common practice, no source; the book is tests/outside/trade."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from kb import Answer, KnowledgeBase

BOOKS = Path(__file__).parent / "trade"


@pytest.fixture(scope="module")
def trade(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    return KnowledgeBase.open(BOOKS, tmp_path_factory.mktemp("cache"))


def answer(trade: KnowledgeBase, question: str) -> Answer:
    (found,) = trade.ask(question)
    return found


@pytest.mark.parametrize("grade", ["E1", "E2", "E3"])
def test_no_grade_below_the_fourth_wears_the_cap_device(trade: KnowledgeBase, grade: str) -> None:
    assert answer(trade, f"May an {grade} wear the cap device?").verdict == "prohibited"


@pytest.mark.parametrize("grade", ["E4", "E5", "E6", "O1", "O2"])
def test_the_fourth_enlisted_grade_and_up_wear_the_cap_device(trade: KnowledgeBase, grade: str) -> None:
    assert answer(trade, f"Must an {grade} wear the cap device?").verdict == "required"


def test_the_cap_device_lies_about_an_inch_and_a_quarter_above_the_visor(trade: KnowledgeBase) -> None:
    (value,) = answer(trade, "Where does the cap device go?").values
    position = value.position
    assert position is not None
    assert position.offset is not None
    assert (position.relation, position.feature) == ("centred above", "visor")
    assert position.offset.interval.low == Fraction(5, 4) * Fraction(254, 10)
    assert position.offset.tolerance == Fraction(1, 8) * Fraction(254, 10)


def test_the_collar_device_is_an_inch_from_both_edges(trade: KnowledgeBase) -> None:
    (value,) = answer(trade, "Where is the collar device worn?").values
    assert value.position is not None
    assert value.position.offset is not None
    assert value.position.offset.text == "about 1 in"
    assert value.position.offset.datum is not None
    assert value.position.offset.datum.measured_to == "both edges that meet at the collar point"


@pytest.mark.parametrize(("name", "height"), [("no", Fraction(3, 4)), ("yes", Fraction(1, 2))])
def test_letters_are_smaller_for_very_long_names(trade: KnowledgeBase, name: str, height: Fraction) -> None:
    facts = (trade.fact("long-name", name),)
    (found,) = trade.ask("How high are the letters on the name strip?", facts=facts)
    heights = [v for v in found.values if v.aspect == "letter-height"]
    assert heights
    assert heights[0].measure is not None
    assert heights[0].measure.interval.low == height * Fraction(254, 10)


def test_a_device_stands_a_quarter_inch_above_its_strip(trade: KnowledgeBase) -> None:
    (value,) = answer(trade, "Where does the diver device go?").values
    assert value.position is not None
    assert value.position.offset is not None
    assert value.position.offset.interval.low == Fraction(254, 40)


@pytest.mark.parametrize(
    ("size", "verdict"),
    [("3 1/2 in", "permitted"), ("3 in", "permitted"), ("3 9/16 in", "prohibited"), ("90 mm", "prohibited")],
)
def test_a_unit_patch_is_at_most_three_and_a_half_inches(
    trade: KnowledgeBase, size: str, verdict: str
) -> None:
    assert answer(trade, f"May the unit patch be {size} wide?").verdict == verdict


def test_no_more_than_two_qualification_devices(trade: KnowledgeBase) -> None:
    two = answer(trade, "May I wear the diver device with the pilot device?")
    three = answer(trade, "May I wear the diver device with the pilot device and the engineer device?")
    assert (two.verdict, three.verdict) == ("permitted", "prohibited")


@pytest.mark.parametrize(
    ("weather", "sleeves", "hazard", "verdict"),
    [
        ("foul", "down", "no", "permitted"),
        ("foul", "up", "no", "prohibited"),
        ("fair", "down", "no", "prohibited"),
        ("fair", "up", "no", "prohibited"),
        ("fair", "up", "yes", "permitted"),
        ("foul", "up", "yes", "permitted"),
    ],
)
def test_gloves_in_foul_weather_with_sleeves_down_or_where_they_protect(
    trade: KnowledgeBase, weather: str, sleeves: str, hazard: str, verdict: str
) -> None:
    facts = (trade.fact("weather", weather), trade.fact("sleeves", sleeves), trade.fact("hazard", hazard))
    (found,) = trade.ask("May I wear gloves?", facts=facts)
    assert found.verdict == verdict
    assert any("safety" in caution for caution in found.cautions)


def test_gloves_without_facts_depend_on_all_three(trade: KnowledgeBase) -> None:
    found = answer(trade, "May I wear gloves?")
    assert found.verdict == "conditional"
    assert {fact for case in found.cases for fact, _ in case.when} == {"weather", "sleeves", "hazard"}
