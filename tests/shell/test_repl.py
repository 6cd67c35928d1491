"""The interactive loop, typed at through a pipe: keys in, a session that survives them out."""

from __future__ import annotations

import stat
from pathlib import Path
from typing import Any

import msgspec
import pytest
from prompt_toolkit import PromptSession
from prompt_toolkit.application import create_app_session
from prompt_toolkit.buffer import Buffer
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document
from prompt_toolkit.history import FileHistory, InMemoryHistory
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from kb.model.lookup import Lookup
from kb.model.values import choices
from shell.editor import Before, ShellCompleter, editor_style, make_reader, open_history
from shell.output import Output
from shell.repl import run_repl
from shell.session import Session
from shell.state import answered_file, history_file, profile_file
from shell.turns import take_line
from shell.vocabulary import vocabulary_of
from shell.words import toolbar_text
from tests.shell.fakes import HOSTILE, FakeBase

CTRL_C, CTRL_D, CTRL_R, ENTER = "\x03", "\x04", "\x12", "\r"
UP, RIGHT = "\x1b[A", "\x1b[C"
TYPING, ASKED = CompleteEvent(text_inserted=True), CompleteEvent(completion_requested=True)


@pytest.fixture(autouse=True)
def state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    return tmp_path / "clothbound" / "history"


def typed(keys: str, base: Any) -> int:
    with create_pipe_input() as pipe, create_app_session(input=pipe, output=DummyOutput()):
        pipe.send_text(keys)
        return run_repl(base, Output(drawn=True, width=80))


def test_questions_are_answered_until_ctrl_d(base: FakeBase, capsys: pytest.CaptureFixture[str]) -> None:
    assert typed(f"May I wear the liner?{ENTER}foul{ENTER}{CTRL_D}", base) == 0
    out = capsys.readouterr().out
    assert "Quay Service" in out
    assert "IT DEPENDS" in out
    assert "PERMITTED" in out


def test_ctrl_c_clears_the_line_and_keeps_the_session(
    base: FakeBase, capsys: pytest.CaptureFixture[str]
) -> None:
    assert typed(f"I am a K5{ENTER}half a li{CTRL_C}profile{ENTER}quit{ENTER}", base) == 0
    assert capsys.readouterr().out.count("grade   K5") == 2


def test_a_fault_or_a_stop_in_one_answer_does_not_end_the_session(
    base: FakeBase, capsys: pytest.CaptureFixture[str]
) -> None:
    keys = f"I am a K5{ENTER}crash{ENTER}stop it{ENTER}slow{ENTER}profile{ENTER}{CTRL_D}"
    assert typed(keys, base) == 0
    captured = capsys.readouterr()
    assert captured.out.count("grade   K5") == 2
    assert "internal error: RuntimeError" in captured.err
    assert "Stopped." in captured.err
    assert "deadline" in captured.err
    assert "\x1b" not in captured.err


@pytest.mark.parametrize(
    "line",
    [
        "select ?r where { ?r a :Rule }",
        "select distinct ?r where { ?r a :Rule }",
        "May I wear the storm coat?",
    ],
)
def test_a_line_is_taken_as_typed_where_a_mark_may_follow_a_space(line: str, base: FakeBase) -> None:
    typed(f"{line}{ENTER}{ENTER}{CTRL_D}", base)
    assert line in [*open_history(history_file()).load_history_strings()]


def test_a_mark_takes_the_place_of_the_space_before_it(base: FakeBase) -> None:
    typed(f"May I wear the storm coat ?{ENTER}{CTRL_D}", base)
    assert [*open_history(history_file()).load_history_strings()] == ["May I wear the storm coat?"]


def test_history_is_for_the_owner_alone_and_comes_back(base: FakeBase, state: Path) -> None:
    typed(f"May I wear the coat?{ENTER}{CTRL_D}", base)
    assert history_file() == state
    assert stat.S_IMODE(state.stat().st_mode) == 0o600
    assert stat.S_IMODE(state.parent.stat().st_mode) == 0o700
    history = open_history(state)
    assert isinstance(history, FileHistory)
    assert list(history.load_history_strings()) == ["May I wear the coat?"]


def proposed(before: Before, typed_so_far: str) -> str | None:
    found = before.get_suggestion(Buffer(), Document(typed_so_far))
    return found.text if found is not None else None


def test_an_earlier_line_is_proposed_if_it_was_answered(base: FakeBase) -> None:
    lines = (
        "May I wear the coat in boat rig?",
        "May I wear the cxoat florgle?",
        "May I wear gloves?",
        "json 5",
    )
    typed("".join(f"{line}{ENTER}" for line in lines) + CTRL_D, base)
    assert stat.S_IMODE(answered_file().stat().st_mode) == 0o600
    before = Before(open_history(answered_file()))
    assert proposed(before, "May I wear the c") == "oat in boat rig?"
    assert proposed(before, "May I wear the cx") is None  # not understood
    assert proposed(before, "May I wear g") is None  # something was asked back, and not answered yet
    assert proposed(before, "j") is None
    assert proposed(before, "") is None


def test_the_latest_of_the_lines_that_fit_is_proposed_and_each_is_kept_once(tmp_path: Path) -> None:
    before = Before(open_history(tmp_path / "answered"))
    for line in ("May I wear the coat?", "May I wear the cap?", "May I wear the coat?"):
        before.keep(line)
    assert proposed(before, "May") == " I wear the coat?"
    assert (tmp_path / "answered").read_text().count("+May") == 2
    assert proposed(Before(open_history(tmp_path / "answered")), "May I wear the ca") == "p?"


@pytest.mark.parametrize("hidden", ["\x1b[2J", "\u202e", "\n"])
def test_an_earlier_line_with_a_hidden_character_is_not_offered(hidden: str) -> None:
    assert proposed(Before(InMemoryHistory([f"May I wear{hidden} the coat?"])), "May I w") is None


def test_an_earlier_line_is_found_by_the_arrow_and_by_searching(base: FakeBase) -> None:
    typed(f"May I wear the coat?{ENTER}profile{ENTER}help{ENTER}{CTRL_D}", base)
    base.asked.clear()
    typed(f"May{UP}{ENTER}{CTRL_D}", base)
    assert [one["text"] for one in base.asked] == ["May I wear the coat?"]
    typed(f"{CTRL_R}coat{ENTER}{ENTER}{CTRL_D}", base)
    assert [one["text"] for one in base.asked] == ["May I wear the coat?"] * 2


def test_tab_completes_with_all_that_fits(base: Any) -> None:
    completer = ShellCompleter(vocabulary_of(base))
    completer.remembered = ("grade",)
    for text, expected in (("May I wear it in wa", ["watch rig "]), ("forget ", ["grade "])):
        assert [c.text for c in completer.get_completions(Document(text), ASKED)] == expected
    for event in (TYPING, ASKED):  # after a space too, whether or not somebody asks with Tab
        assert [c.text for c in completer.get_completions(Document("as a "), event)][:2] == ["K4 ", "K5 "]
    assert len(list(completer.get_completions(Document("May I wear the "), ASKED))) == 4


@pytest.mark.parametrize(
    ("keys", "line"),
    [
        (
            "May I wear the storm coat  in boat rig",
            "May I wear the storm coat in boat rig",
        ),  # a space by habit
        ("May I wear the storm coat ?", "May I wear the storm coat?"),
        ("May I wear the storm coat , ashore?", "May I wear the storm coat, ashore?"),
        ("May I wear the storm coat ", "May I wear the storm coat"),
    ],
)
def test_after_the_space_of_a_completed_word_none_is_typed_twice(
    base: FakeBase, keys: str, line: str
) -> None:
    typed(f"{keys}{ENTER}{CTRL_D}", base)
    assert [one["text"] for one in base.asked] == [line]


def test_a_query_gets_no_space_and_keeps_those_it_has(base: Any) -> None:
    completer = ShellCompleter(vocabulary_of(base))
    found = [c.text for c in completer.get_completions(Document("query SELECT ?x WHERE { ?x cb:"), ASKED)]
    assert found
    assert not any(text.endswith(" ") for text in found)
    typed(f'query SELECT * {{ ?s ?p "a  b ?"  }} LIMIT 1{ENTER}{CTRL_D}', base)
    assert base.queries == ['SELECT * { ?s ?p "a  b ?"  } LIMIT 1']


def test_a_query_goes_over_several_lines(base: FakeBase, capsys: pytest.CaptureFixture[str]) -> None:
    keys = f"query{ENTER}SELECT *{ENTER}WHERE {{{ENTER}?s ?p ?o{ENTER}}} LIMIT 4{ENTER}profile{ENTER}{CTRL_D}"
    typed(keys, base)
    assert base.queries == ["SELECT *\nWHERE {\n?s ?p ?o\n} LIMIT 4"]
    assert "Rows: 4" in capsys.readouterr().out


def test_an_empty_line_ends_a_query_that_is_not_closed(base: FakeBase) -> None:
    typed(f"query SELECT * {{{ENTER}{ENTER}profile{ENTER}{CTRL_D}", base)
    assert base.queries == ["SELECT * {"]


def test_ctrl_c_leaves_a_query_and_keeps_the_session(
    base: FakeBase, capsys: pytest.CaptureFixture[str]
) -> None:
    typed(f"I am a K5{ENTER}query SELECT * {{{ENTER}?s{CTRL_C}profile{ENTER}{CTRL_D}", base)
    assert base.queries == []
    assert capsys.readouterr().out.count("grade   K5") == 2


def test_the_bottom_line_shows_the_profile(base: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    bars: list[Any] = []
    monkeypatch.setattr(
        PromptSession, "prompt", lambda *_, bottom_toolbar: bars.extend(bottom_toolbar()) or ""
    )
    read, _ = make_reader(base)
    session = Session()
    for line in ("help", "I am a K5 in boat rig", "as of 2025-03-01"):
        session, _ = take_line(session, line, base)
        read(session)
    assert [text.strip() for _, text in bars] == [
        "no profile | as of today",
        "K5, boat rig | as of today",
        "K5, boat rig | as of 2025-03-01",
    ]
    assert "bold" in bars[-1][0], "another day than today stands out"


def test_a_profile_comes_back_for_the_same_service_only(
    base: FakeBase, capsys: pytest.CaptureFixture[str], state: Path
) -> None:
    typed(f"I am a K5 in boat rig{ENTER}as of 2025-03-01{ENTER}{CTRL_D}", base)
    kept = profile_file(base)  # type: ignore[arg-type]
    assert stat.S_IMODE(kept.stat().st_mode) == 0o600
    assert stat.S_IMODE(kept.parent.stat().st_mode) == 0o700
    assert stat.S_IMODE(kept.parent.parent.stat().st_mode) == 0o700
    capsys.readouterr()
    typed(f"May I wear the coat?{ENTER}{CTRL_D}", base)
    assert "Remembered: K5, boat rig" in capsys.readouterr().out
    assert base.asked[-1]["facts"] == (("grade", choices("K5")), ("rig", choices("boat-rig")))
    assert base.asked[-1]["as_of"] is None, "a day is for one session"
    other = FakeBase()
    service = msgspec.structs.replace(other.lookup.base.service, namespace="https://other.example/")
    other.lookup = Lookup(msgspec.structs.replace(other.lookup.base, service=service))
    typed(f"May I wear the coat?{ENTER}{CTRL_D}", other)
    assert other.asked[-1]["facts"] == ()
    typed(f"forget{ENTER}{CTRL_D}", base)
    assert not kept.exists()
    assert state.exists()


def test_what_the_books_do_not_know_any_more_is_said(
    base: FakeBase, capsys: pytest.CaptureFixture[str]
) -> None:
    kept = profile_file(base)  # type: ignore[arg-type]
    kept.parent.mkdir(parents=True)
    kept.write_text('{"grade": ["K9"], "rig": ["boat-rig"]}')
    typed(f"profile{ENTER}{CTRL_D}", base)
    captured = capsys.readouterr()
    assert "Remembered: boat rig" in captured.out
    assert "books have changed: grade" in captured.err


@pytest.mark.parametrize("name", ["answer.txt", "answer.md", "answer.json", "answer.svg"])
def test_the_last_answer_is_saved_and_no_file_is_overwritten(
    name: str, base: FakeBase, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target = tmp_path / name
    typed(f"May I wear the liner ashore?{ENTER}save {target}{ENTER}{CTRL_D}", base)
    first = target.read_bytes()
    assert b"liner" in first
    assert f"Saved: {target}" in capsys.readouterr().out.replace("\n       ", "")
    typed(f"May I wear the coat?{ENTER}save {target}{ENTER}save {tmp_path}/no/x.md{ENTER}{CTRL_D}", base)
    assert target.read_bytes() == first
    said = capsys.readouterr().err
    assert "is there already" in said
    assert "cannot be written" in said


def test_a_history_that_others_may_read_is_closed_to_them(state: Path) -> None:
    state.parent.mkdir(parents=True)
    state.write_text("")
    state.chmod(0o644)
    open_history(state)
    assert stat.S_IMODE(state.stat().st_mode) == 0o600


def test_no_history_file_is_no_reason_to_stop(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "file").write_text("")
    assert isinstance(open_history(tmp_path / "file" / "history"), InMemoryHistory)
    assert "not kept" in capsys.readouterr().err


def test_a_relative_state_folder_is_ignored(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    # XDG Base Directory Specification: a relative path is invalid and is to be ignored.
    monkeypatch.setenv("XDG_STATE_HOME", "here")
    monkeypatch.setenv("HOME", str(tmp_path))
    assert history_file() == tmp_path / ".local" / "state" / "clothbound" / "history"


@pytest.mark.parametrize("width", [30, 60, 100])
def test_the_toolbar_is_one_line_with_profile_and_day(width: int, base: Any) -> None:
    session, _ = take_line(Session(), "I am a K5 in boat rig", base)
    session, _ = take_line(session, "as of 2025-03-01", base)
    text = toolbar_text(session, base, width)
    assert len(text) <= width
    assert "2025-03-01" in text
    assert "K5" in text


def test_completions_show_hostile_labels_visibly() -> None:
    from shell.vocabulary import Entry, make_vocabulary

    completer = ShellCompleter(make_vocabulary([Entry("coat" + HOSTILE, HOSTILE)]))
    (found,) = completer.get_completions(Document("coa"), TYPING)
    assert "\x1b" not in found.display_text
    assert "\x1b" not in found.display_meta_text


def test_completion_is_wired_to_the_vocabulary(base: Any) -> None:
    completer = ShellCompleter(vocabulary_of(base))
    found = [c.text for c in completer.get_completions(Document("May I wear the sto"), TYPING)]
    assert found == ["storm coat "]


def test_without_drawing_lines_are_read_plainly(
    base: Any, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = iter(["I am a K5", "profile"])

    def read(_prompt: str) -> str:
        try:
            return next(lines)
        except StopIteration:
            raise EOFError from None

    monkeypatch.setattr("builtins.input", read)
    assert run_repl(base, Output(drawn=False, width=80)) == 0
    assert capsys.readouterr().out.count("grade  K5") == 2


def test_the_rest_of_an_earlier_line_stands_out_without_colour(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    found = editor_style().get_attrs_for_style_str("class:auto-suggestion")
    assert found.underline
    assert not found.color
