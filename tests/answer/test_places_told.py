"""A place or a measure told of a thing is judged, in words of three services; no distance is dropped."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from kb import Answer, KnowledgeBase, answer_to_json, demo_folder
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
HERE = Path(__file__).parent.parent
FOLDERS = {"demo": demo_folder(), "third": HERE / "third" / "books", "fourth": HERE / "fourth" / "books"}
FOLDERS["seventh"] = HERE / "seventh" / "books"

Bases = Callable[[str], KnowledgeBase]


@pytest.fixture(scope="module")
def bases() -> Bases:
    return cache(lambda book: opened(book))


def ask(base: KnowledgeBase, question: str) -> Answer:
    answer = base.ask(question, as_of=DAY)[0]
    assert answer.verdict is None or base.verify(json.loads(answer_to_json(answer))) is None
    return answer


PLACES = [
    ("demo", "May the brassard be worn on the right sleeve?", "prohibited"),
    ("demo", "Is the brassard on the left sleeve ok?", "required"),
    ("demo", "May a K3 wear the branch flash on the left sleeve?", "prohibited"),
    ("demo", "May a K3 wear the branch flash on the right arm?", "required"),
    ("demo", "May an H3 wear the hands' knot on the right sleeve?", "prohibited"),
    ("demo", "May an H3 wear the hands' knot on the right sleeve of the jersey?", "prohibited"),
    ("demo", "Crease of the trousers starts 1 in below the waistband", "prohibited"),
    ("demo", "Crease of the trousers starts 2 in below the waistband", "required"),
    ("demo", "slip-on tab 8 7/8 in below the throat", "permitted"),
    ("demo", "slip-on tab 8 1/2 in below the throat", "prohibited"),
    ("demo", "slip-on tab 9 in below the throat on the right", "prohibited"),
    ("demo", "A K3's branch flash is 2 1/8 in below the shoulder seam, is that right?", "prohibited"),
    ("demo", "May the keeper's pin be worn on the storm coat?", "required"),
    ("third", "May the service badge be worn on the right side of the cabin jacket?", "prohibited"),
    ("third", "May the service badge be worn above the left breast pocket of the cabin jacket?", "required"),
    ("third", "May the service badge be worn below the left breast pocket?", "prohibited"),
    ("third", "Service badge 10 mm above the pocket, is that right?", "required"),
    ("third", "Service badge 15 mm above the pocket, is that right?", "prohibited"),
    ("third", "May the name plate be worn on the left side of the cabin jacket?", "prohibited"),
    ("fourth", "May the shoulder cord be worn on the right shoulder of the grey shirt?", "prohibited"),
    ("demo", "brassard 3 in above the elbow", "required"),
    ("demo", "brassard 5 in above the elbow", "prohibited"),
    ("demo", "brassard at the elbow", "prohibited"),
    ("demo", "slip-on tab at the throat", "prohibited"),
    ("seventh", "In Daily Dress, may a woven unit badge be worn on the right sleeve?", "prohibited"),
]


@pytest.mark.parametrize(("book", "question", "verdict"), PLACES)
def test_a_place_told_of_a_thing_is_open_or_not(bases: Bases, book: str, question: str, verdict: str) -> None:
    answer = ask(bases(book), question)
    assert answer.verdict == verdict, answer.headline
    assert answer.headline.startswith("No." if verdict == "prohibited" else "Yes.")
    assert answer.cases[0].values  # and where it goes is told


@pytest.mark.parametrize(
    ("question", "row"),
    [
        ("The hands' knot sits 5 in below the shoulder seam, is that right?", "prohibited"),
        ("The hands' knot sits 4 1/8 in below the shoulder seam, is that right?", "permitted"),
        ("name strip 1/4 in above the pocket of the day shirt", "prohibited"),
        ("Is the name strip above the left breast pocket?", "prohibited"),
    ],
)
def test_a_place_is_judged_in_each_case(bases: Bases, question: str, row: str) -> None:
    answer = ask(bases("demo"), question)
    assert row in {case.verdict for case in answer.cases}
    assert answer.reading.query is not None
    assert answer.reading.query.value is not None


@pytest.mark.parametrize(
    "question",
    ["The upper edge of the brassard is 3 in above the elbow, ok?", "brassard 3 in and 4 in above the elbow"],
)
def test_a_distance_that_is_not_understood_stops_the_question(bases: Bases, question: str) -> None:
    answer = ask(bases("demo"), question)
    query = answer.reading.query
    assert query is None or query.value is not None or query.clause is not None


MEASURES = [
    ("demo", "is 8 mm ok for the moustache", "prohibited"),
    ("demo", "is 5 mm ok for the moustache", "permitted"),
    ("demo", "may the hem of the storm coat be 3 in", "permitted"),
    ("demo", "May the brassard be 4 in high?", "required"),
    ("demo", "May the cap device of a K3 be 1 1/4 in high?", "required"),
    ("demo", "May the keeper's bars be 1/4 in high for a K4?", "required"),
    ("demo", "May the letters of the name strip be 1/2 in high?", "permitted"),
    ("third", "May the name plate be 1 in high?", "prohibited"),
    ("third", "Is 10 cm ok for the feather?", "permitted"),
    ("third", "Is 13 cm ok for the feather?", "prohibited"),
    ("fourth", "May the helmet band be 1 in wide?", "prohibited"),
]


@pytest.mark.parametrize(("book", "question", "verdict"), MEASURES)
def test_a_measure_is_that_of_the_rules_of_the_thing(
    bases: Bases, book: str, question: str, verdict: str
) -> None:
    answer = ask(bases(book), question)
    assert answer.reading.query is not None
    assert answer.reading.query.value is not None
    assert verdict in {case.verdict for case in answer.cases}, answer.headline


@pytest.mark.parametrize(
    ("book", "question", "verdict", "note"),
    [
        # The first unit counts: a rounded twin stands for it, one that disagrees does not.
        ("demo", "May hair stand 51 mm from the head?", "permitted", ""),
        ("demo", "May the keeper's bars be 6.35 mm high for a K4?", "prohibited", "the two are rounded"),
        ("demo", "Is the station patch ok at 1 1/2 in?", "prohibited", "the two disagree"),
        ("demo", "Is the station patch ok at 50 mm?", "required", "the two disagree"),
        ("third", "May the mourning band be 1 3/16 in wide?", "required", ""),
        ("fourth", "May the helmet band be 3/4 in wide?", "required", ""),
        ("fourth", "May the helmet band be 19.5 mm wide?", "prohibited", "the two are rounded"),
    ],
)
def test_of_two_units_the_first_counts(
    bases: Bases, book: str, question: str, verdict: str, note: str
) -> None:
    answer = ask(bases(book), question)
    assert verdict in {case.verdict for case in answer.cases}, answer.headline
    assert any("the first counts" in said and note in said for said in answer.notes) == bool(note)


@pytest.mark.parametrize(
    ("book", "question", "words"),
    [
        (
            "demo",
            "how many pairs of wool socks must an H1 own",
            "pairs of wool socks owned must be at least 6",
        ),
        ("demo", "how many deck gloves must an H1 own", "pairs of deck gloves owned must be at least 2"),
        ("demo", "how many undershirts must an H1 own", "number of undershirts owned must be at least 4"),
        ("demo", "how many badges may a diver wear", "qualification devices worn must be at most 2"),
        ("fourth", "how many station trousers must a firefighter own", "pairs of station trousers owned"),
    ],
)
def test_numbers_are_of_what_the_clause_counts(bases: Bases, book: str, question: str, words: str) -> None:
    assert words in ask(bases(book), question).headline


def test_where_a_thing_may_not_be_worn_its_measure_is_not_only_unaddressed(bases: Bases) -> None:
    notes = " ".join(ask(bases("demo"), "How long may a beard be?").notes)
    assert "The beard must not be worn where the wearer is a deck hand" in notes


@pytest.mark.parametrize(("side", "lead"), [("left", "Yes"), ("right", "No")])
def test_the_other_side_is_the_contrary_of_a_way(bases: Bases, side: str, lead: str) -> None:
    answer = ask(bases("demo"), f"May the satchel's strap go over the {side} shoulder in watch rig?")
    assert answer.headline.startswith(f"{lead}: the satchel must have the strap over the left shoulder")


def test_who_names_a_place_is_not_in_what_it_holds() -> None:
    """A crag is on the fell; who says "on the fell" is told of the fell first."""
    base = opened("second")
    answer = ask(base, "May I wear the wool hat in fell rig on the fell, without the helmet?")
    assert answer.headline == "Yes: the wool hat must be worn, unless the wearer is on a crag."
    assert ask(base, "May I wear the wool hat in fell rig on the crag?").verdict == "prohibited"


def test_a_place_that_a_rule_closes_to_all_of_a_kind_is_closed(bases: Bases) -> None:
    """Clause 5.1: "No badge is worn on the sun hat", wherever each of them goes."""
    answer = ask(bases("seventh"), "In Daily Dress, may a badge be worn on the sun hat?")
    assert answer.headline == "No. The badge must not be worn on the sun hat."
    assert [citation.number for citation in answer.citations] == ["5.1"]
