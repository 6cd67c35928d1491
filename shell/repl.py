"""The interactive shell: reads lines, shows replies, and never loses the session."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from prompt_toolkit import PromptSession
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from prompt_toolkit.formatted_text import StyleAndTextTuples
from prompt_toolkit.history import FileHistory, History, InMemoryHistory
from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
from prompt_toolkit.keys import Keys
from prompt_toolkit.layout.processors import Processor, Transformation, TransformationInput
from prompt_toolkit.styles import Style

import kb
from shell.completion import Vocabulary, suggest, vocabulary_of
from shell.output import Output, complain, resized
from shell.session import Session
from shell.turns import Reply, take_line
from shell.words import brief, whole

if TYPE_CHECKING:
    from kb import KnowledgeBase

_PROMPT = "> "
_STYLE = Style.from_dict({"bottom-toolbar": "noreverse", "prompt": "bold"})


class _ShellCompleter(Completer):
    """Hands `suggest` to prompt_toolkit; texts go in as plain text, never as markup."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self._vocabulary = vocabulary

    def get_completions(self, document: Document, _event: CompleteEvent) -> Iterator[Completion]:
        for found in suggest(document.text, document.cursor_position, self._vocabulary):
            shown: StyleAndTextTuples = [("", kb.visible(found.text))]
            about: StyleAndTextTuples = [("", kb.visible(found.about))]
            start = found.start - document.cursor_position
            yield Completion(found.text, start_position=start, display=shown, display_meta=about)


class _Shown(Processor):
    """Shows characters that turn or hide text, which prompt_toolkit leaves be, as U+FFFD, one for one."""

    def apply_transformation(self, transformation_input: TransformationInput) -> Transformation:
        fragments: StyleAndTextTuples = [
            (style, "".join(c if c < "\xa0" or kb.visible(c) == c else "\ufffd" for c in text))
            for style, text, *_ in transformation_input.fragments
        ]
        return Transformation(fragments)


def _bindings() -> KeyBindings:
    """No mouse: the handler of prompt_toolkit fails for a colour escape, which looks like a mouse's."""
    bindings = KeyBindings()

    @bindings.add(Keys.Vt100MouseEvent)
    def _(_event: KeyPressEvent) -> None:
        pass

    return bindings


def history_file() -> Path:
    """Where lines are kept: XDG_STATE_HOME, else ~/.local/state."""
    state = os.environ.get("XDG_STATE_HOME", "")
    folder = Path(state) if Path(state).is_absolute() else Path.home() / ".local" / "state"
    return folder / "clothbound" / "history"


def open_history(path: Path) -> History:
    """A history that only its owner may read; in memory where no file can be made."""
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        os.close(os.open(path, os.O_CREAT | os.O_APPEND | os.O_WRONLY | os.O_NOFOLLOW | os.O_NONBLOCK, 0o600))
        path.chmod(0o600)
    except OSError as error:
        complain(f"Lines are not kept: {path}: {error.strerror}.")
        return InMemoryHistory()
    return FileHistory(str(path))


def toolbar_text(session: Session, base: KnowledgeBase, width: int) -> str:
    """Who you are and for which day, on one line of at most `width` cells."""
    who = brief(session.profile, base) if session.profile else "nobody in particular"
    day = f"as of {session.as_of.isoformat() if session.as_of else 'today'}"
    room = max(width - len(day) - 5, 8)
    who = who if len(who) <= room else who[: room - 3] + "..."
    return f" {who} | {day} "


def show(reply: Reply, output: Output) -> None:
    if reply.complaint:
        complain(reply.complaint)
    if reply.blocks:
        output.show(reply.blocks)
    if reply.text:
        output.write(reply.text)
    output.write("")


def _one_line(session: Session, line: str, base: KnowledgeBase, output: Output) -> tuple[Session, bool]:
    """The session after a line, and whether to leave; whatever goes wrong, the session stays."""
    try:
        session, reply = take_line(session, line, base)
        if not reply.leave:
            show(reply, resized(output))
        return session, reply.leave
    except KeyboardInterrupt:
        complain("Stopped.")
    except BrokenPipeError:
        raise
    except Exception as error:  # a fault in one answer must not end the session
        if os.environ.get("CLOTHBOUND_DEBUG") == "1":
            raise
        complain(f"internal error: {type(error).__name__}: {str(error)[:200]}; please report it.")
    return session, False


def loop(read: Callable[[Session], str], base: KnowledgeBase, output: Output) -> int:
    """Lines from `read` until it raises `EOFError` or a command leaves."""
    session = Session()
    while True:
        try:
            text = read(session)
        except KeyboardInterrupt:
            continue
        except EOFError:
            return 0
        for line in filter(str.strip, whole(text).splitlines()):
            session, leave = _one_line(session, line, base, output)
            if leave:
                return 0


def _prompting(base: KnowledgeBase, output: Output) -> Callable[[Session], str]:
    """A reader with history, completion and a toolbar."""
    prompt: PromptSession[str] = PromptSession(
        history=open_history(history_file()),
        completer=_ShellCompleter(vocabulary_of(base)),
        complete_while_typing=True,
        enable_history_search=False,
        style=_STYLE,
        key_bindings=_bindings(),
        input_processors=[_Shown()],
    )

    def read(session: Session) -> str:
        bar: StyleAndTextTuples = [("class:bottom-toolbar.text", toolbar_text(session, base, output.width))]
        return prompt.prompt([("class:prompt", _PROMPT)], bottom_toolbar=lambda: bar)

    return read


def _plainly(_session: Session) -> str:
    return input(_PROMPT)


def run_repl(base: KnowledgeBase, output: Output) -> int:
    """Run until the user leaves; the exit code is 0."""
    service = kb.visible(base.lookup.base.service.label)
    output.write(f"{service}. Ask a question, or write help. Ctrl-D leaves.\n")
    read = _prompting(base, output) if output.drawn else _plainly
    return loop(read, base, output)
