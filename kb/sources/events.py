"""Bytes of a file to a tree, through the YAML event stream: no value is interpreted, nothing is executed."""

from __future__ import annotations

import re

import yaml

from kb.digests import digest_name
from kb.errors import Location, Problem
from kb.sources.report import quoted
from kb.sources.tree import Entry, Mapping, Node, Scalar, Sequence, Tree
from kb.text import is_hidden

LARGEST_FILE = 5_000_000
DEEPEST = 20
_MOST_HIDDEN = 20
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class _Stopped(Exception):  # noqa: N818  never leaves this module
    """The rest of the file cannot be read."""


def _too_deep(at: Location) -> Problem:
    message = f"The nesting is deeper than {DEEPEST} levels."
    return Problem(at, "too-deep", message, "Split the value or check the brackets.")


class _Open:
    """A collection that is not closed yet; a mapping also holds the key that waits for its value."""

    def __init__(self, at: Location, mapping: bool, dropped: bool) -> None:
        self.at = at
        self.mapping = mapping
        self.dropped = dropped
        self.key: Scalar | None = None
        self.bad_key = False
        self.entries: list[Entry] = []
        self.nodes: list[Node] = []
        self.seen: dict[str, Location] = {}


class _Builder:
    """Turns events into nodes and keeps the problems on the way."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.stack: list[_Open] = []
        self.root: Node | None = None
        self.documents = 0

    def at(self, event: yaml.Event) -> Location:
        mark = event.start_mark
        return Location(self.file, mark.line + 1, mark.column + 1) if mark else Location(self.file)

    def error(self, at: Location, code: str, message: str, remedy: str) -> None:
        self.problems.append(Problem(at, code, message, remedy))

    def take(self, event: yaml.Event) -> None:
        if isinstance(event, yaml.ScalarEvent):
            self.check_plain(event)
            self.check_escapes(event)
            self.put(Scalar(event.value, self.at(event)))
        elif isinstance(event, (yaml.MappingStartEvent, yaml.SequenceStartEvent)):
            self.check_plain(event)
            self.open(self.at(event), isinstance(event, yaml.MappingStartEvent))
        elif isinstance(event, (yaml.MappingEndEvent, yaml.SequenceEndEvent)):
            self.close()
        elif isinstance(event, yaml.AliasEvent):
            at = self.at(event)
            self.error(at, "alias", f"An alias (*{event.anchor}) is used here.", "Write the value out again.")
            self.drop()
        elif isinstance(event, yaml.DocumentStartEvent):
            self.begin_document(event)

    def begin_document(self, event: yaml.Event) -> None:
        self.documents += 1
        if self.documents > 1:
            self.error(
                self.at(event),
                "second-document",
                "A second document begins here.",
                "Put it into a file of its own.",
            )
            raise _Stopped

    def check_plain(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent) -> None:
        if event.anchor is not None:
            message = f"An anchor (&{event.anchor}) is used here."
            self.error(self.at(event), "anchor", message, "Remove it and write the value where it is needed.")
        if event.tag is not None:
            message = f"A tag ({event.tag}) is used here."
            self.error(self.at(event), "tag", message, "Remove it: every value is read as plain text.")

    def check_escapes(self, event: yaml.ScalarEvent) -> None:
        """Hidden characters that an escape in double quotes makes; the others are found in the raw text."""
        if event.style != '"' or event.value.isprintable():
            return
        hidden = next((c for c in event.value if is_hidden(c)), None)
        if hidden is not None:
            self.error(
                self.at(event),
                "hidden-character",
                f"An escape writes a control or invisible character (U+{ord(hidden):04X}).",
                "Write only characters that can be seen.",
            )

    def open(self, at: Location, mapping: bool) -> None:
        if len(self.stack) >= DEEPEST:
            self.problems.append(_too_deep(at))
            raise _Stopped
        parent = self.stack[-1] if self.stack else None
        key_place = parent is not None and parent.mapping and parent.key is None and not parent.bad_key
        if key_place:
            self.error(
                at,
                "key-not-text",
                "A list or mapping stands where a key belongs.",
                "Write a text as the key.",
            )
        self.stack.append(_Open(at, mapping, dropped=key_place))

    def close(self) -> None:
        done = self.stack.pop()
        node: Node = (
            Mapping(tuple(done.entries), done.at) if done.mapping else Sequence(tuple(done.nodes), done.at)
        )
        if done.dropped:
            self.drop()
        else:
            self.put(node)

    def drop(self) -> None:
        """Leave out a refused node; a dropped key takes its value along."""
        if not self.stack or not self.stack[-1].mapping:
            return
        parent = self.stack[-1]
        if parent.key is None and not parent.bad_key:
            parent.bad_key = True
        else:
            parent.key, parent.bad_key = None, False

    def put(self, node: Node) -> None:
        if not self.stack:
            self.root = node
            return
        parent = self.stack[-1]
        if not parent.mapping:
            parent.nodes.append(node)
        elif parent.bad_key:
            parent.bad_key = False
        elif parent.key is None:
            self.begin_entry(parent, node)
        else:
            parent.entries.append(Entry(parent.key, node))
            parent.key = None

    def begin_entry(self, parent: _Open, node: Node) -> None:
        assert isinstance(node, Scalar)
        key = " ".join(node.text.split())
        if key == "<<":
            self.error(node.at, "merge-key", "A merge key (<<) is used here.", "Write the lines out instead.")
            parent.bad_key = True
        elif key in parent.seen:
            first = parent.seen[key]
            message = (
                f"The key {quoted(key)} stands here for the second time; the first is on line {first.line}."
            )
            self.error(node.at, "duplicate-key", message, "Keep one of them, or put both values into a list.")
            parent.bad_key = True
        else:
            parent.seen[key] = node.at
            parent.key = Scalar(key, node.at)


def _decode(data: bytes, file: str) -> tuple[str, list[Problem]]:
    """The text of a file with plain line ends; a list of problems if it is no UTF-8."""
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8", "replace")
        at = Location(file, before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1)
        message = f"The file is not UTF-8 text (byte 0x{data[error.start]:02X})."
        return "", [Problem(at, "not-utf8", message, "Save the file with the encoding UTF-8.")]
    return text.removeprefix("\ufeff").replace("\r\n", "\n"), []


def _hidden(text: str, file: str) -> list[Problem]:
    """A problem for each control or invisible character (at most twenty)."""
    found = "".join(c for c in set(text) if is_hidden(c))
    if not found:
        return []
    problems = []
    for match in re.finditer(f"[{re.escape(found)}]", text):
        begin = text.rfind("\n", 0, match.start()) + 1
        at = Location(file, text.count("\n", 0, match.start()) + 1, match.start() - begin + 1)
        message = f"A control or invisible character (U+{ord(match[0]):04X}) stands here."
        problems.append(Problem(at, "hidden-character", message, "Delete it, or type the text again."))
        if len(problems) == _MOST_HIDDEN:
            break
    return problems


_SYNTAX = (
    ("cannot start any token", "A character stands here that cannot begin a value.",
     "Indent with spaces, not tabs, and put a text that begins with @, `, % or | into quotation marks."),
    ("mapping values are not allowed", "There is a colon here where none can be.",
     "Put a text that contains a colon into quotation marks, or write it under >-."),
    ("found unexpected end of stream", "A quotation mark is opened and never closed.", "Close it."),
    ("could not find expected ':'", "A line here has no colon after its key.",
     "Write key: value, and indent the lines of a long text."),
    ("expected ',' or", "A bracket is not closed, or a comma is missing.", "Close it or add the comma."),
    ("did not find expected", "The lines do not line up here, or a bracket or quotation mark is missing.",
     "Begin every line of a list or mapping in the same column and close every bracket and quotation mark."),
    ("unknown escape", "A backslash in double quotation marks begins something unknown.",
     "Use single quotation marks."),
    ("undefined alias", "A text that begins with * is read as an alias.", "Put it into quotation marks."),
)  # fmt: skip


def _syntax_problem(error: yaml.YAMLError, file: str, text: str) -> Problem:
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    at = Location(file, mark.line + 1, mark.column + 1) if mark else Location(file)
    if "maximum nesting depth" in str(getattr(error, "problem", "")):
        return _too_deep(at)
    if any(re.match(r"[ ]*\t", line) for line in text.split("\n")[at.line - 1 : at.line]):
        return Problem(at, "not-yaml", "The line is indented with a tab.", "Indent with spaces alone.")
    said = f"{getattr(error, 'problem', '') or ''} {getattr(error, 'context', '') or ''}"
    for phrase, message, remedy in _SYNTAX:
        if phrase in said:
            return Problem(at, "not-yaml", message, remedy)
    return Problem(
        at, "not-yaml", "The file cannot be read as YAML here.", "Check indentation, colons and quotes."
    )


def _unreadable(file: str, digest: str, problems: list[Problem]) -> Tree:
    return Tree(file, digest, None, tuple(problems), readable=False)


def parse_file(data: bytes, name: str) -> Tree:
    """The tree of one file, `name` its path relative to the folder. Never raises: problems are in the tree.

    Depends on nothing but its arguments, so a tree may be kept for as long as the digest stays the same.
    """
    digest = digest_name(data)
    if len(data) > LARGEST_FILE:
        message = f"The file is larger than {LARGEST_FILE // 1_000_000} MB."
        return _unreadable(name, digest, [Problem(Location(name), "file-too-large", message, "Split it.")])
    text, problems = _decode(data, name)
    problems = problems or _hidden(text, name)
    if problems:
        return _unreadable(name, digest, problems)
    builder = _Builder(name)
    try:
        for event in yaml.parse(text, Loader=_LOADER):
            builder.take(event)
    except _Stopped:
        return _unreadable(name, digest, builder.problems)
    except yaml.YAMLError as error:
        return _unreadable(name, digest, [*builder.problems, _syntax_problem(error, name, text)])
    root = builder.root
    if root is None or isinstance(root, Mapping) or (isinstance(root, Scalar) and not root.text):
        found = root if isinstance(root, Mapping) else None
        return Tree(name, digest, found, tuple(builder.problems))
    message = "The file does not begin with a section."
    remedy = "Begin with a section such as items: or clauses: at the left margin."
    return _unreadable(name, digest, [*builder.problems, Problem(root.at, "not-sections", message, remedy)])
