"""A word that may mean several things is answered where the books leave no need to ask which."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import KnowledgeBase

DAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    return KnowledgeBase.open(None, tmp_path_factory.mktemp("alike"))


def _told(base: KnowledgeBase, text: str) -> list[tuple[str, str | None]]:
    answers = base.ask(text, as_of=DAY)
    return [(a.reading.query.items[0], a.verdict) for a in answers if a.reading.query is not None]


def test_things_that_fare_alike_are_answered_each(base: KnowledgeBase) -> None:
    smocks = [("lined-smock", "prohibited"), ("tarred-smock", "prohibited")]
    assert _told(base, "Aren't smocks forbidden with the watch rig?") == smocks
    belts = _told(base, "Do I have to wear the belt in storm rig?")
    assert belts == [("canvas-belt", "conditional"), ("webbing-belt", "conditional")]


def test_the_one_that_must_be_worn_leads_and_the_other_is_told_beside(base: KnowledgeBase) -> None:
    (answer,) = base.ask("vest boat rig?", as_of=DAY)
    assert answer.verdict == "required"
    assert "flotation vest" in answer.headline
    assert any("high-visibility vest" in said for said in answer.reading.beside)


def test_the_one_whose_value_rests_on_what_is_said_leads(base: KnowledgeBase) -> None:
    (answer,) = base.ask("What colour cap do I put on in July?", as_of=DAY)
    assert "service cap must be white" in answer.headline
    assert any("navy blue" in said for said in answer.reading.beside)


def test_the_one_that_rules_speak_of_where_nothing_is_out_of_the_ordinary_leads(base: KnowledgeBase) -> None:
    text = "I'm officer of the day, in watch rig. Must I keep the cap on when I go inside?"
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.headline == "Yes. The service cap must be worn, unless the wearer wears other headgear."
    (beside,) = answer.reading.beside  # of the other a rule speaks in town alone
    assert "knit cap must not be worn when the wearer is in town; otherwise the books are silent" in beside


def test_a_class_is_not_asked_about_where_no_kind_of_it_may_be_worn(
    tmp_path_factory: pytest.TempPathFactory,
) -> None:
    books = Path(__file__).parents[1] / "fifth" / "books"
    fifth = KnowledgeBase.open(books, tmp_path_factory.mktemp("fifth"))
    (answer,) = fifth.ask("May I wear a tie with Order C?", as_of=DAY)
    assert answer.headline == "No. The knotted tie must not be worn."
    assert any("clip-on safety tie" in said for said in answer.reading.beside)
    text = "I'm Workshop at Ostrel. Shorts with the coverall top at noon in July, ok?"
    (answer,) = fifth.ask(text, as_of=DAY)  # one kind may be worn at some hours, another in another rig
    assert answer.outcome == "ask"


@pytest.mark.parametrize(
    "text",
    [
        "colour of the cap?",
        "Where does the strip go?",
        "socks with shoes?",
        "Where does the badge go?",
        "What colour is the storm hat's lining?",
    ],
)
def test_things_that_fare_otherwise_are_asked_about(base: KnowledgeBase, text: str) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.outcome == "ask"


def test_a_further_question_goes_on_from_all_of_them(base: KnowledgeBase) -> None:
    first = base.ask("Aren't smocks forbidden with the watch rig?", as_of=DAY)
    again = base.ask("And in boat rig?", as_of=DAY, previous=first[-1].reading)
    assert {answer.reading.query.items[0] for answer in again if answer.reading.query} == {
        "lined-smock",
        "tarred-smock",
    }


@pytest.mark.parametrize(
    ("text", "inside"),
    [
        ("May I wear the service cap inside?", True),
        ("I'm inside, in watch rig. May I wear the service cap?", True),
        ("Can I wear the day shirt inside the jersey?", False),
    ],
)
def test_inside_alone_is_indoors(base: KnowledgeBase, text: str, inside: bool) -> None:
    query = base.read(text, as_of=DAY).query
    assert query is not None
    assert ("indoors" in dict(query.case.facts)) is inside
