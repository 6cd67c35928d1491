"""What the reader has reached on each half of the questions stays reached."""

from __future__ import annotations

import json

import pytest

from kb import Answer, KnowledgeBase, answer_to_json
from tests.opening import opened
from tests.reading.report import mark_questions, talk
from tests.reading.sheets import BOOKS, SHEETS, SMALL, dialogues, questions

# At least so many right and at most so many wrong, as `python -m tests.reading.report` counts them.
REACHED = {
    ("demo", "open"): (353, 3),
    ("demo", "kept"): (348, 1),
    ("second", "open"): (76, 0),
    ("second", "kept"): (84, 1),
    ("third", "open"): (130, 1),
    ("third", "kept"): (130, 1),
    ("demo-further", "open"): (101, 1),
    ("demo-further", "kept"): (104, 0),
    ("second-further", "open"): (25, 2),
    ("second-further", "kept"): (28, 0),
    ("third-further", "open"): (45, 1),
    ("third-further", "kept"): (47, 0),
    ("fourth", "open"): (59, 0),
    ("fourth", "kept"): (61, 3),
    ("demo-daily", "open"): (53, 0),
    ("demo-daily", "kept"): (48, 1),
    ("demo-weekly", "open"): (57, 0),
    ("second-daily", "open"): (21, 0),
    ("second-daily", "kept"): (20, 0),
    ("third-daily", "open"): (33, 0),
    ("third-daily", "kept"): (27, 0),
    ("fifth", "open"): (65, 0),
    ("fifth", "kept"): (62, 1),
    ("sixth", "open"): (54, 0),
    ("sixth", "kept"): (51, 1),
    ("seventh", "open"): (41, 1),
    ("demo-monthly", "open"): (54, 0),
    ("eighth", "open"): (45, 1),
    ("eighth", "kept"): (43, 0),
    ("infirmary", "open"): (27, 1),
    ("airferry", "open"): (22, 1),
    ("forest", "open"): (26, 0),
    ("playhouse", "open"): (26, 0),
    ("airferry", "kept"): (21, 1),
    ("ambulance", "open"): (23, 0),
    ("cadets", "open"): (27, 0),
    ("cadets", "kept"): (25, 1),
    ("creamery", "open"): (24, 1),
    ("creamery", "kept"): (24, 1),
    ("forest", "kept"): (22, 3),
    ("hotel", "open"): (24, 1),
    ("hotel", "kept"): (26, 0),
    ("infirmary", "kept"): (22, 0),
    ("playhouse", "kept"): (25, 1),
    ("racecourse", "open"): (24, 0),
    ("shipyard", "open"): (21, 0),
    ("tramway", "open"): (23, 1),
    ("tramway", "kept"): (27, 0),
    ("zoo", "open"): (27, 1),
    ("ambulance", "kept"): (26, 0),
    ("museum", "open"): (22, 2),
    ("patrol", "open"): (20, 1),
    ("quarry", "open"): (27, 0),
    ("racecourse", "kept"): (25, 2),
    ("shipyard", "kept"): (28, 0),
    ("undertakers", "open"): (19, 2),
    ("zoo", "kept"): (25, 1),
    ("cathedral", "open"): (21, 1),
    ("demo-quarterly", "open"): (25, 1),
    ("firebrigade", "open"): (20, 4),
    ("museum", "kept"): (19, 2),
    ("patrol", "kept"): (22, 1),
    ("pool", "open"): (23, 1),
    ("quarry", "kept"): (23, 1),
    ("school", "open"): (20, 0),
    ("undertakers", "kept"): (17, 0),
    ("cathedral-further", "open"): (16, 2),
    ("demo-yearly", "open"): (41, 0),
    ("firebrigade-further", "open"): (19, 1),
    ("museum-further", "open"): (19, 0),
    ("patrol-further", "open"): (17, 1),
    ("pool-further", "open"): (25, 0),
    ("quarry-further", "open"): (20, 0),
    ("school-further", "open"): (18, 1),
    ("undertakers-further", "open"): (14, 0),
    ("cathedral", "kept"): (24, 0),
    ("firebrigade", "kept"): (22, 1),
    ("pool", "kept"): (18, 1),
    ("school", "kept"): (22, 1),
    ("airferry-further", "open"): (9, 0),
    ("airferry-further", "kept"): (8, 1),
    ("ambulance-further", "open"): (7, 0),
    ("cadets-further", "open"): (11, 0),
    ("cathedral-further", "kept"): (21, 0),
    ("creamery-further", "open"): (8, 0),
    ("creamery-further", "kept"): (11, 0),
    ("demo-autumn", "open"): (24, 1),
    ("firebrigade-further", "kept"): (16, 0),
    ("forest-further", "open"): (11, 0),
    ("forest-further", "kept"): (10, 0),
    ("hotel-further", "open"): (9, 0),
    ("infirmary-further", "open"): (8, 0),
    ("infirmary-further", "kept"): (7, 1),
    ("museum-further", "kept"): (18, 1),
    ("patrol-further", "kept"): (16, 0),
    ("playhouse-further", "open"): (10, 0),
    ("playhouse-further", "kept"): (8, 0),
    ("pool-further", "kept"): (18, 1),
    ("quarry-further", "kept"): (18, 0),
    ("racecourse-further", "open"): (9, 0),
    ("school-further", "kept"): (18, 0),
    ("shipyard-further", "open"): (8, 1),
    ("tramway-further", "open"): (9, 1),
    ("tramway-further", "kept"): (10, 0),
    ("undertakers-further", "kept"): (20, 0),
    ("zoo-further", "open"): (5, 0),
}
REACHED_TURNS = {
    ("dialogues", "open"): (153, 0),
    ("dialogues", "kept"): (124, 1),
    ("dialogues-third", "open"): (44, 0),
    ("dialogues-third", "kept"): (48, 0),
    ("dialogues-further", "open"): (67, 0),
    ("dialogues-further", "kept"): (66, 0),
    ("dialogues-third-further", "open"): (28, 1),
    ("dialogues-third-further", "kept"): (37, 1),
    ("dialogues-fourth", "open"): (34, 0),
    ("dialogues-fourth", "kept"): (34, 2),
    ("dialogues-last", "kept"): (135, 4),
    ("dialogues-daily", "open"): (47, 0),
    ("dialogues-daily", "kept"): (44, 1),
    ("dialogues-weekly", "kept"): (30, 1),
    ("dialogues-weekly", "open"): (31, 0),
    ("dialogues-third-daily", "open"): (34, 0),
    ("dialogues-third-daily", "kept"): (23, 0),
    ("dialogues-fifth", "open"): (22, 1),
    ("dialogues-fifth", "kept"): (33, 0),
    ("dialogues-sixth", "open"): (22, 0),
    ("dialogues-sixth", "kept"): (18, 0),
    ("dialogues-seventh", "open"): (19, 0),
    ("dialogues-monthly", "open"): (81, 0),
    ("dialogues-sixth-further", "open"): (48, 1),
    ("dialogues-eighth", "open"): (34, 1),
    ("dialogues-infirmary", "open"): (14, 2),
    ("dialogues-airferry", "open"): (18, 0),
    ("dialogues-forest", "open"): (10, 0),
    ("dialogues-playhouse", "open"): (17, 1),
    ("dialogues-airferry", "kept"): (12, 1),
    ("dialogues-ambulance", "open"): (18, 0),
    ("dialogues-cadets", "open"): (17, 0),
    ("dialogues-cadets", "kept"): (16, 0),
    ("dialogues-creamery", "kept"): (16, 2),
    ("dialogues-creamery", "open"): (17, 0),
    ("dialogues-forest", "kept"): (15, 0),
    ("dialogues-hotel", "open"): (18, 0),
    ("dialogues-hotel", "kept"): (15, 1),
    ("dialogues-infirmary", "kept"): (19, 1),
    ("dialogues-playhouse", "kept"): (10, 0),
    ("dialogues-racecourse", "open"): (12, 1),
    ("dialogues-shipyard", "open"): (15, 1),
    ("dialogues-tramway", "open"): (15, 0),
    ("dialogues-tramway", "kept"): (19, 0),
    ("dialogues-zoo", "open"): (18, 0),
    ("dialogues-ambulance", "kept"): (16, 0),
    ("dialogues-museum", "open"): (12, 0),
    ("dialogues-patrol", "open"): (13, 2),
    ("dialogues-quarry", "open"): (12, 0),
    ("dialogues-racecourse", "kept"): (12, 1),
    ("dialogues-shipyard", "kept"): (18, 0),
    ("dialogues-undertakers", "open"): (10, 0),
    ("dialogues-zoo", "kept"): (12, 1),
    ("dialogues-cathedral", "open"): (14, 2),
    ("dialogues-firebrigade", "open"): (15, 0),
    ("dialogues-museum", "kept"): (14, 2),
    ("dialogues-patrol", "kept"): (10, 1),
    ("dialogues-pool", "open"): (11, 4),
    ("dialogues-quarry", "kept"): (15, 1),
    ("dialogues-quarterly", "open"): (33, 1),
    ("dialogues-school", "open"): (13, 1),
    ("dialogues-undertakers", "kept"): (20, 0),
    ("dialogues-cathedral-further", "open"): (13, 0),
    ("dialogues-firebrigade-further", "open"): (12, 0),
    ("dialogues-museum-further", "open"): (10, 1),
    ("dialogues-patrol-further", "open"): (9, 2),
    ("dialogues-pool-further", "open"): (13, 0),
    ("dialogues-quarry-further", "open"): (4, 0),
    ("dialogues-school-further", "open"): (10, 1),
    ("dialogues-undertakers-further", "open"): (9, 0),
    ("dialogues-yearly", "open"): (32, 0),
    ("dialogues-cathedral", "kept"): (14, 0),
    ("dialogues-firebrigade", "kept"): (12, 1),
    ("dialogues-pool", "kept"): (15, 0),
    ("dialogues-school", "kept"): (16, 0),
    ("dialogues-airferry-further", "open"): (7, 3),
    ("dialogues-airferry-further", "kept"): (5, 0),
    ("dialogues-ambulance-further", "open"): (9, 0),
    ("dialogues-autumn", "open"): (25, 1),
    ("dialogues-cadets-further", "open"): (8, 0),
    ("dialogues-cathedral-further", "kept"): (13, 0),
    ("dialogues-creamery-further", "open"): (3, 0),
    ("dialogues-creamery-further", "kept"): (8, 2),
    ("dialogues-firebrigade-further", "kept"): (14, 1),
    ("dialogues-forest-further", "open"): (8, 0),
    ("dialogues-forest-further", "kept"): (9, 0),
    ("dialogues-hotel-further", "open"): (7, 0),
    ("dialogues-infirmary-further", "open"): (6, 0),
    ("dialogues-infirmary-further", "kept"): (9, 0),
    ("dialogues-museum-further", "kept"): (10, 0),
    ("dialogues-patrol-further", "kept"): (10, 0),
    ("dialogues-playhouse-further", "open"): (6, 0),
    ("dialogues-playhouse-further", "kept"): (5, 0),
    ("dialogues-pool-further", "kept"): (11, 0),
    ("dialogues-quarry-further", "kept"): (8, 1),
    ("dialogues-racecourse-further", "open"): (7, 0),
    ("dialogues-school-further", "kept"): (13, 2),
    ("dialogues-shipyard-further", "open"): (5, 0),
    ("dialogues-tramway-further", "open"): (3, 1),
    ("dialogues-tramway-further", "kept"): (3, 3),
    ("dialogues-undertakers-further", "kept"): (11, 0),
    ("dialogues-zoo-further", "open"): (7, 1),
}


VERIFIED = (*SMALL, "eighth")
"""The sets whose answers stand up to the checker, too, which is apart from the reasoner."""


def refused(base: KnowledgeBase, answer: Answer) -> bool:
    return answer.outcome == "answer" and base.verify(json.loads(answer_to_json(answer))) is not None


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in BOOKS}


@pytest.mark.slow
@pytest.mark.parametrize(("sheet", "half"), REACHED)
def test_questions_are_answered_as_well_as_before(
    sheet: str, half: str, bases: dict[str, KnowledgeBase]
) -> None:
    base = bases[SHEETS[sheet]]
    marked = mark_questions(sheet, half, base)
    marks = [one.held.mark for one in marked]
    right, wrong = REACHED[sheet, half]
    assert marks.count("right") >= right
    assert marks.count("wrong") <= wrong
    if half == "open" and sheet in VERIFIED:
        assert [one.asked.text for one in marked for answer in one.answers if refused(base, answer)] == []


@pytest.mark.slow
@pytest.mark.parametrize(("name", "half"), REACHED_TURNS)
def test_dialogues_go_as_well_as_before(name: str, half: str, bases: dict[str, KnowledgeBase]) -> None:
    marks = [held.mark for one in dialogues(half, name) for _, held, _ in talk(bases[one.books], one.turns)]
    right, wrong = REACHED_TURNS[name, half]
    assert marks.count("right") >= right
    assert marks.count("wrong") <= wrong


def test_the_halves_share_no_question() -> None:
    for books in BOOKS:
        halves = [{asked.text for asked in questions(books, half)} for half in ("open", "kept")]
        assert halves[0].isdisjoint(halves[1])
        assert min(map(len, halves)) >= (30 if books in SMALL else 60)
