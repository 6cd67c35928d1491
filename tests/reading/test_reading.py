"""What the reader has reached on each half of the questions stays reached."""

from __future__ import annotations

from pathlib import Path

import pytest

from kb import KnowledgeBase
from tests.reading.report import mark_questions, talk
from tests.reading.sheets import BOOKS, SHEETS, dialogues, questions

# At least so many right and at most so many wrong, as `python -m tests.reading.report` counts them.
REACHED = {
    ("demo", "open"): (351, 4),
    ("demo", "kept"): (352, 3),
    ("second", "open"): (75, 0),
    ("second", "kept"): (83, 2),
    ("third", "open"): (131, 1),
    ("third", "kept"): (128, 1),
    ("demo-further", "open"): (99, 1),
    ("demo-further", "kept"): (104, 1),
    ("second-further", "open"): (26, 2),
    ("second-further", "kept"): (28, 0),
    ("third-further", "open"): (45, 1),
    ("third-further", "kept"): (46, 0),
    ("fourth", "open"): (60, 0),
    ("fourth", "kept"): (59, 3),
    ("demo-daily", "open"): (52, 0),
    ("demo-daily", "kept"): (48, 1),
    ("demo-weekly", "open"): (49, 1),
    ("second-daily", "open"): (21, 0),
    ("second-daily", "kept"): (18, 2),
    ("third-daily", "open"): (32, 0),
    ("third-daily", "kept"): (25, 0),
    ("fifth", "open"): (58, 0),
    ("fifth", "kept"): (50, 2),
    ("sixth", "open"): (49, 0),
    ("sixth", "kept"): (40, 2),
    ("seventh", "open"): (29, 0),
}
REACHED_TURNS = {
    ("dialogues", "open"): (153, 0),
    ("dialogues", "kept"): (122, 3),
    ("dialogues-third", "open"): (43, 0),
    ("dialogues-third", "kept"): (48, 0),
    ("dialogues-further", "open"): (67, 0),
    ("dialogues-further", "kept"): (54, 3),
    ("dialogues-third-further", "open"): (31, 1),
    ("dialogues-third-further", "kept"): (34, 1),
    ("dialogues-fourth", "open"): (36, 2),
    ("dialogues-fourth", "kept"): (31, 2),
    ("dialogues-last", "kept"): (126, 5),
    ("dialogues-daily", "open"): (46, 0),
    ("dialogues-daily", "kept"): (43, 1),
    ("dialogues-weekly", "open"): (31, 0),
    ("dialogues-third-daily", "open"): (33, 1),
    ("dialogues-third-daily", "kept"): (25, 0),
    ("dialogues-fifth", "open"): (20, 1),
    ("dialogues-fifth", "kept"): (30, 2),
    ("dialogues-sixth", "open"): (20, 0),
    ("dialogues-sixth", "kept"): (17, 0),
    ("dialogues-seventh", "open"): (16, 2),
}


@pytest.fixture(scope="module")
def bases(tmp_path_factory: pytest.TempPathFactory) -> dict[str, KnowledgeBase]:
    folder: Path = tmp_path_factory.mktemp("reading")
    return {name: KnowledgeBase.open(path, folder) for name, path in BOOKS.items()}


@pytest.mark.slow
@pytest.mark.parametrize(("sheet", "half"), REACHED)
def test_questions_are_answered_as_well_as_before(
    sheet: str, half: str, bases: dict[str, KnowledgeBase]
) -> None:
    marks = [marked.held.mark for marked in mark_questions(sheet, half, bases[SHEETS[sheet]])]
    right, wrong = REACHED[sheet, half]
    assert marks.count("right") >= right
    assert marks.count("wrong") <= wrong


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
        assert min(map(len, halves)) >= 60
