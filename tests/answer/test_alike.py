"""A word that may mean several things is answered where the books leave no need to ask which."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import KnowledgeBase
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)


@pytest.fixture(scope="module")
def base() -> KnowledgeBase:
    return opened("demo")


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


@pytest.fixture(scope="module")
def third() -> KnowledgeBase:
    return opened("third")


@pytest.fixture(scope="module")
def sixth() -> KnowledgeBase:
    return opened("sixth")


@pytest.mark.parametrize(
    ("text", "headline"),
    [
        ("With the boat rig, may I have the storm coat instead of the smock when it rains?", "No. The storm"),
        (
            "Can I wear deck shoes with watch rig in the mess without socks?",
            "Yes. The deck shoes may be worn.",
        ),
    ],
)
def test_what_stands_beside_need_not_be_told_apart_where_the_answer_is_the_same(
    base: KnowledgeBase, text: str, headline: str
) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.headline.startswith(headline)
    assert len(answer.reading.beside) == 1


@pytest.mark.parametrize(
    ("text", "item", "other"),
    [
        ("Cap with the workshop rig?", "knit-cap", "service cap"),
        ("Does the officer of the day take his cap off indoors?", "service-cap", "knit cap"),
        ("I am officer of the day, do I keep the cap on indoors?", "service-cap", "knit cap"),
        ("Working buoys in July, sea calm. Suit needed then?", "immersion-suit", "coveralls"),
    ],
)
def test_the_one_worn_for_what_is_said_or_not_kept_out_leads(
    base: KnowledgeBase, text: str, item: str, other: str
) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.reading.query is not None
    assert answer.reading.query.items == (item,)
    assert any(other in said for said in answer.reading.beside)


@pytest.mark.parametrize(
    "text", ["Is a cap needed with the storm rig?", "Can I leave off the cap if I've the storm hat on?"]
)
def test_where_nothing_that_was_said_tells_it_is_asked(base: KnowledgeBase, text: str) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.outcome == "ask"
    assert answer.ask is not None
    assert {item for item, _ in answer.ask.choices} == {"service-cap", "knit-cap"}


def test_the_sizes_of_the_parts_of_a_whole_are_told_of_each(base: KnowledgeBase) -> None:
    told = base.ask("How long should my storm coat be?", as_of=DAY)
    assert [answer.reading.query.items[0] for answer in told if answer.reading.query] == [
        "coat-cuff",
        "coat-hem",
    ]


@pytest.mark.parametrize(
    ("text", "headline"),
    [
        (
            "Does the strap go above the visor when I'm in town?",
            "The chin strap must be worn above the visor",
        ),
        ("Which shoulder does the satchel strap go over?", "The satchel must have the strap over the left"),
        ("How does the satchel strap go?", "The satchel must have the strap over the left"),
    ],
)
def test_a_part_is_known_by_its_whole_or_by_the_part_beside_it(
    base: KnowledgeBase, text: str, headline: str
) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.headline.startswith(headline)


def test_a_thing_and_its_own_parts_are_the_thing(sixth: KnowledgeBase) -> None:
    (answer,) = sixth.ask("What colour is the tab for the House?", as_of=DAY)
    assert answer.headline.startswith("The colour of the grade tab must be")


@pytest.mark.parametrize(
    ("text", "headline"),
    [
        ("May I have the key pouch on the left?", "When the wearer"),
        (
            "Left-handed, may I have the key pouch on the left?",
            "When the wearer is in Linen: the key pouch must",
        ),
    ],
)
def test_a_place_that_no_rule_names_is_answered_with_where_the_thing_goes(
    sixth: KnowledgeBase, text: str, headline: str
) -> None:
    (answer,) = sixth.ask(text, as_of=DAY)
    assert answer.headline.startswith(headline) or "key pouch must be worn on the key belt" in answer.headline


def test_what_is_not_worn_with_a_thing_does_not_go_on_it(third: KnowledgeBase) -> None:
    (answer,) = third.ask("Do I put my grade bars on the tower suit?", as_of=DAY)
    assert answer.headline.startswith("No. The grade bars must not be worn with the tower suit")


def test_where_a_thing_goes_does_not_tell_that_it_goes_on_a_garment(sixth: KnowledgeBase) -> None:
    (answer,) = sixth.ask("Tab on my apron or not?", as_of=DAY)
    assert answer.outcome == "ask"


def test_what_no_rule_lets_be_worn_with_a_thing_is_still_asked_about(base: KnowledgeBase) -> None:
    (answer,) = base.ask("Can I put the whistle on my belt?", as_of=DAY)
    assert answer.outcome == "ask"


@pytest.mark.parametrize(
    ("text", "items"),
    [
        ("Shore rig: which coat?", {"watch-coat", "shore-coat"}),
        ("In shore rig, which coat?", {"watch-coat", "shore-coat"}),
        ("On 1 October 2026, which smock?", {"lined-smock"}),
        ("What kind of gloves do I need for hauling?", {"deck-gloves", "white-gloves"}),
    ],
)
def test_which_of_them_is_a_list(base: KnowledgeBase, text: str, items: set[str]) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.reading.query is not None
    assert answer.reading.query.kind == "list"
    assert {entry.item for entry in answer.entries} == items


@pytest.mark.parametrize("text", ["Which gloves are forbidden for rope work?", "Rope work: which mittens?"])
def test_which_of_them_is_barred_is_a_list_of_what_is(third: KnowledgeBase, text: str) -> None:
    answers = third.ask(text, as_of=DAY)
    lists = [a for a in answers if a.reading.query is not None and a.reading.query.kind == "list"]
    assert [a.reading.query.modalities for a in lists if a.reading.query] == (
        [("prohibited",)] if "forbidden" in text else []
    )


@pytest.mark.parametrize("text", ["Which smock?", "Which socks?"])
def test_which_alone_is_asked(base: KnowledgeBase, text: str) -> None:
    (answer,) = base.ask(text, as_of=DAY)
    assert answer.outcome == "ask"


def test_the_one_that_has_the_word_in_its_own_name_leads(base: KnowledgeBase) -> None:
    """ "Pin" is an everyday word for the collar device, too, which must be worn there."""
    (answer,) = base.ask("Upper keeper at a funeral in parade rig: must the pin be worn?", as_of=DAY)
    assert answer.headline == "No. The keeper's pin may be worn, but need not be."
    assert any("collar device" in said for said in answer.reading.beside)
    assert _told(base, "Must a K4 wear the tape in watch rig?") == [("name-strip", "required")]
