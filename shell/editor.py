"""The line editor on a terminal: history, completion, several lines for a query, and the bottom line."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from prompt_toolkit import PromptSession
from prompt_toolkit.application import get_app
from prompt_toolkit.auto_suggest import AutoSuggest, Suggestion
from prompt_toolkit.buffer import Buffer
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from prompt_toolkit.filters import Condition, to_filter
from prompt_toolkit.formatted_text import StyleAndTextTuples
from prompt_toolkit.history import FileHistory, History, InMemoryHistory
from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
from prompt_toolkit.keys import Keys
from prompt_toolkit.layout.processors import Processor, Transformation, TransformationInput
from prompt_toolkit.styles import Style

import kb
from shell.commands import begins_query, may_begin_query, needs_more
from shell.completion import suggest
from shell.output import columns, complain
from shell.session import Session
from shell.state import answered_file, history_file, make_private
from shell.vocabulary import Vocabulary, vocabulary_of
from shell.words import toolbar_text

if TYPE_CHECKING:
    from kb import KnowledgeBase

PROMPT = "> "
MORE = ". "
_OFFERED = 12
_OFFERED_ON_TAB = 60


def editor_style() -> Style:
    """What stands out does so without colour too; see no-color.org."""
    return Style.from_dict(
        {
            "bottom-toolbar": "noreverse",
            "prompt": "bold",
            "auto-suggestion": "underline" if os.environ.get("NO_COLOR") else "ansibrightblack",
            "completion-menu.completion.current": "reverse",
        }
    )


class ShellCompleter(Completer):
    """Hands `suggest` to prompt_toolkit; texts go in as plain text, never as markup."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self._vocabulary = vocabulary
        self.remembered: tuple[str, ...] = ()

    def get_completions(self, document: Document, event: CompleteEvent) -> Iterator[Completion]:
        asked = event.completion_requested
        found = suggest(
            document.text,
            document.cursor_position,
            self._vocabulary,
            limit=_OFFERED_ON_TAB if asked else _OFFERED,
            remembered=self.remembered,
        )
        for suggestion in found:
            shown: StyleAndTextTuples = [("", kb.visible(suggestion.text))]
            about: StyleAndTextTuples = [("", kb.visible(suggestion.about))]
            start = suggestion.start - document.cursor_position
            text = suggestion.text.rstrip() + _space_after(suggestion.text, document)
            yield Completion(text, start_position=start, display=shown, display_meta=about)


def _space_after(completed: str, document: Document) -> str:
    """The space that ends a finished word; none in a query, nor where one follows or the word goes on."""
    ends = completed[-1:].isalnum() or completed[-1:].isspace()
    return " " if ends and not begins_query(document.text) and document.current_char != " " else ""


class _Shown(Processor):
    """Shows characters that turn or hide text, which prompt_toolkit leaves be, as U+FFFD, one for one."""

    def apply_transformation(self, transformation_input: TransformationInput) -> Transformation:
        fragments: StyleAndTextTuples = [
            (style, "".join(c if c < "\xa0" or kb.visible(c) == c else "\ufffd" for c in text))
            for style, text, *_ in transformation_input.fragments
        ]
        return Transformation(fragments)


class Before(AutoSuggest):
    """The rest of an earlier line that began like this one and was answered, if all of it can be shown."""

    def __init__(self, history: History) -> None:
        self._history = history
        self._lines = dict.fromkeys(reversed([*history.load_history_strings()]))  # the last one last

    def keep(self, line: str) -> None:
        """Note a line that was answered."""
        is_new = line not in self._lines
        self._lines.pop(line, None)
        self._lines[line] = None
        if is_new:
            self._history.store_string(line)

    def get_suggestion(self, _buffer: Buffer, document: Document) -> Suggestion | None:
        typed = document.text
        if not typed.strip() or "\n" in typed:
            return None
        rests = (line[len(typed) :] for line in reversed(self._lines) if line.startswith(typed))
        return next((Suggestion(r) for r in rests if r and r.isprintable() and kb.visible(r) == r), None)


def _bindings() -> KeyBindings:
    """What is typed after the space of a finished word: a second one is none, a mark stands in its place.

    No mouse: the handler of prompt_toolkit fails for a colour escape, which looks like a mouse's.
    """
    bindings = KeyBindings()

    @Condition
    def after_a_space() -> bool:
        document = get_app().current_buffer.document
        spaced = document.char_before_cursor == " " and document.is_cursor_at_the_end
        return spaced and bool(document.text.strip()) and not may_begin_query(document.text)

    @bindings.add(" ", filter=after_a_space)
    def _(_event: KeyPressEvent) -> None:
        pass

    @bindings.add("?", filter=after_a_space)
    @bindings.add(",", filter=after_a_space)
    def _(event: KeyPressEvent) -> None:
        event.current_buffer.delete_before_cursor()
        event.current_buffer.insert_text(event.data)

    @bindings.add(Keys.Vt100MouseEvent)
    def _(_event: KeyPressEvent) -> None:
        pass

    return bindings


def open_history(path: Path, told: bool = True) -> History:
    """A history for its owner alone; in memory, with a complaint if `told`, where no file can be made."""
    try:
        make_private(path)
    except OSError as error:
        if told:
            complain(f"Lines are not kept: {path}: {error.strerror}.")
        return InMemoryHistory()
    return FileHistory(str(path))


def make_reader(base: KnowledgeBase) -> tuple[Callable[[Session], str], Callable[[str], None]]:
    """A reader of lines with history, completion and the bottom line, which raises as `prompt` does; and what
    is to be told of every line that was answered, so that it may be proposed again."""
    before = Before(open_history(answered_file(), told=False))
    completer = ShellCompleter(vocabulary_of(base))
    prompt: PromptSession[str] = PromptSession(
        history=open_history(history_file()),
        completer=completer,
        complete_while_typing=True,
        auto_suggest=before,
        multiline=Condition(lambda: needs_more(get_app().current_buffer.text)),
        prompt_continuation=[("class:prompt", MORE)],
        style=editor_style(),
        key_bindings=_bindings(),
        input_processors=[_Shown()],
    )
    # The arrows look for lines that begin with what is typed. As an option this would end completion.
    prompt.default_buffer.enable_history_search = to_filter(True)

    def read(session: Session) -> str:
        completer.remembered = tuple(base.lookup.facts[name].label for name, _ in session.profile)
        style = "class:bottom-toolbar.text" + (" bold" if session.as_of else "")

        def bar() -> StyleAndTextTuples:
            return [(style, toolbar_text(session, base, columns()))]

        return prompt.prompt([("class:prompt", PROMPT)], bottom_toolbar=bar).rstrip(" ")

    return read, before.keep
