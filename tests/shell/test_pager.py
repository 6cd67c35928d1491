"""The pager: only for what is longer than the screen, and no pager is a reason to lose anything."""

from __future__ import annotations

import sys

import pytest

from shell import output, pager
from shell.blocks import Headline, Next, Points, Said
from shell.output import Output

LONG = (Points("Many", tuple(f"line {number}" for number in range(100))),)
COPY = [sys.executable, "-c", "import sys; sys.stderr.write(sys.stdin.read())"]
LEAVE = [sys.executable, "-c", "import sys; sys.stdin.close()"]


@pytest.mark.parametrize(
    ("told", "command"),
    [("", []), ("cat", []), ("more -d", ["more", "-d"]), ("'open quote", []), ("less", ["less"])],
)
def test_the_pager_is_the_users(told: str, command: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PAGER", told)
    assert pager.pager_command() == command


def test_without_less_there_is_none(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PAGER", raising=False)
    monkeypatch.setenv("PATH", "")
    assert pager.pager_command() == []


@pytest.fixture
def paged(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What was given to the pager, on a screen of 24 rows."""
    given: list[str] = []
    monkeypatch.setenv("PAGER", "more")
    monkeypatch.setattr(output, "rows", lambda: 24)
    monkeypatch.setattr(pager, "page", lambda text, _command: given.append(text) or True)
    return given


def test_only_what_is_longer_than_a_drawn_screen_is_paged(
    paged: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    Output(True, 80).show(LONG, paged=True)
    assert len(paged) == 1
    assert "line 99" in paged[0]
    assert capsys.readouterr().out == ""
    for drawn, blocks, wanted in ((True, LONG, False), (False, LONG, True), (True, (Said("a", "b"),), True)):
        Output(drawn, 80).show(blocks, paged=wanted)
        assert capsys.readouterr().out
    assert len(paged) == 1


def test_what_ends_in_a_question_is_not_paged_but_has_its_verdict_again_before_it(
    paged: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    verdict, ask = Headline("IT DEPENDS", "It depends on the place."), Next("Where?", ("ashore", "afloat"))
    Output(True, 80).show((verdict, *LONG, ask), paged=True)
    assert not paged
    lines = [line for line in capsys.readouterr().out.splitlines() if line.strip()]
    assert sum("IT DEPENDS" in line for line in lines) == 2
    assert "IT DEPENDS" in lines[-3]
    assert "Where?" in lines[-2]
    for drawn, blocks in ((True, (verdict, ask)), (False, (verdict, *LONG, ask)), (True, (*LONG, ask))):
        Output(drawn, 80).show(blocks, paged=True)
        assert capsys.readouterr().out.count("IT DEPENDS") == blocks.count(verdict)


def test_a_pager_gets_the_text_and_may_leave_early(capfd: pytest.CaptureFixture[str]) -> None:
    assert pager.page("caf\u00e9\n", COPY)
    assert "caf" in capfd.readouterr().err
    assert pager.page("x" * 5_000_000, LEAVE)
    assert "Traceback" not in capfd.readouterr().err


@pytest.mark.parametrize("command", [["/missing/pager"], ["/"]])
def test_a_pager_that_is_none_leaves_the_text_to_the_screen(
    command: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert not pager.page("text", command)
    monkeypatch.setattr(output, "rows", lambda: 24)
    monkeypatch.setattr(pager, "pager_command", lambda: command)
    Output(True, 80).show(LONG, paged=True)
    assert "line 99" in capsys.readouterr().out
