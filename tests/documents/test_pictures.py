"""The pictures of the README say what the program says today."""

from __future__ import annotations

from pathlib import Path

from tests.documents.pages import README, ROOT, prose_of
from tests.documents.pictures import AS_OF, draw, questions, words_of

FOLDER = ROOT / ".pictures"


def test_the_readme_shows_every_picture_and_tells_their_day() -> None:
    assert {path for _, path in questions()} == set(FOLDER.iterdir())
    assert AS_OF in prose_of(README)


def test_the_pictures_say_what_the_program_says(tmp_path: Path) -> None:
    old = []
    for number, (question, kept) in enumerate(questions()):
        fresh = tmp_path / f"{number}.svg"
        draw(question, fresh, tmp_path / "cache")
        if words_of(fresh) != words_of(kept):
            old.append(f"{question}\n  kept: {' '.join(words_of(kept))}\n  now:  {' '.join(words_of(fresh))}")
    assert not old, "Draw anew with python -m tests.documents.pictures and look:\n" + "\n".join(old)


def test_the_pictures_point_nowhere() -> None:
    for _, path in questions():
        text = path.read_text(encoding="utf-8").replace('xmlns="http://www.w3.org/2000/svg"', "")
        assert "//" not in text
        assert "<script" not in text
        assert "<image" not in text
