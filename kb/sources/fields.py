"""Reading the keys of one mapping: what may stand there, and what kind of value."""

from __future__ import annotations

import datetime
from collections.abc import Iterable

from kb.errors import Location
from kb.measures import MeasureError, parse_date
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.tree import Entry, Mapping, Node, Scalar, Sequence
from kb.text import Pattern

_ID = Pattern(r"[A-Za-z0-9]+(?:-[A-Za-z0-9]+)*")
_YES_NO = {"yes": True, "no": False}


def kind_of(node: Node) -> str:
    """What a node is, in words."""
    if isinstance(node, Scalar):
        return "a text" if node.text else "nothing"
    return "a list" if isinstance(node, Sequence) else "a mapping"


def is_id(text: str) -> bool:
    return _ID.fullmatch(text) is not None


def as_text(node: Node, what: str, report: Report) -> Scalar | None:
    """The node as a text that is not empty; a problem otherwise."""
    if isinstance(node, Scalar) and node.text.strip():
        return Scalar(node.text.strip(), node.at)
    report.error(
        node.at, "wrong-kind", f"{what} is {kind_of(node)}, but a text is needed.", "Write one text."
    )
    return None


def as_texts(node: Node, what: str, report: Report) -> tuple[Scalar, ...]:
    """The node as one text or a list of texts."""
    nodes = node.nodes if isinstance(node, Sequence) else (node,)
    if isinstance(node, Mapping):
        report.error(
            node.at,
            "wrong-kind",
            f"{what} is a mapping, but a text or a list is needed.",
            "Write [first, second].",
        )
        return ()
    return tuple(text for each in nodes if (text := as_text(each, what, report)) is not None)


def as_mappings(node: Node, what: str, report: Report) -> tuple[Mapping, ...]:
    """The node as a list of mappings; one mapping alone counts as a list of one."""
    if isinstance(node, Mapping):
        return (node,)
    if isinstance(node, Scalar):
        if node.text:
            message = f"{what} is a text, but a list is needed."
            report.error(
                node.at, "wrong-kind", message, "Write one entry a line, each beginning with a hyphen."
            )
        return ()
    found = []
    for each in node.nodes:
        if isinstance(each, Mapping):
            found.append(each)
        else:
            message = f"An entry of {what} is {kind_of(each)}, but keys and values are needed."
            report.error(each.at, "wrong-kind", message, "Write it as {id: ..., label: ...}.")
    return tuple(found)


class Fields:
    """The lines of one mapping, `what` it is in words; unknown keys are reported when it is made."""

    def __init__(self, node: Mapping, known: Iterable[str], what: str, report: Report) -> None:
        self.node = node
        self.what = what
        self.report = report
        self.lines: dict[str, Entry] = {entry.key.text: entry for entry in node.entries}
        allowed = list(known)
        for key, entry in self.lines.items():
            if key not in allowed:
                self.unknown_key(entry, allowed)

    def unknown_key(self, entry: Entry, known: list[str]) -> None:
        key = entry.key
        remedy = suggestion(key.text, known, f"Known here: {listed(known, limit=40)}.")
        denied = key.text.removeprefix("not ")
        if denied != key.text and "when" in known and denied in known:
            remedy = f"Write {quoted(f'when: {{{key.text}: ...}}')}; only conditions can be denied."
        if entry.value == Scalar("", entry.value.at):
            remedy = "A comma in braces ends a text: put a text that has one into quotation marks."
        self.report.error(key.at, "unknown-key", f"{quoted(key.text)} is no key of {self.what}.", remedy)

    @property
    def at(self) -> Location:
        return self.node.at

    def has(self, key: str) -> bool:
        return key in self.lines

    def node_of(self, key: str) -> Node | None:
        return self.lines[key].value if key in self.lines else None

    def place(self, key: str) -> Location:
        """Where a key's value stands; the mapping itself if it lacks the key."""
        return self.lines[key].value.at if key in self.lines else self.at

    def scalar(self, key: str) -> Scalar | None:
        node = self.node_of(key)
        return None if node is None else as_text(node, quoted(key), self.report)

    def text(self, key: str) -> str | None:
        found = self.scalar(key)
        return found.text if found else None

    def scalars(self, key: str) -> tuple[Scalar, ...]:
        node = self.node_of(key)
        return () if node is None else as_texts(node, quoted(key), self.report)

    def texts(self, key: str) -> tuple[str, ...]:
        return tuple(scalar.text for scalar in self.scalars(key))

    def mappings(self, key: str) -> tuple[Mapping, ...]:
        node = self.node_of(key)
        return () if node is None else as_mappings(node, quoted(key), self.report)

    def required(self, key: str, example: str) -> Scalar | None:
        """The text of a key that must be there."""
        node = self.node_of(key)
        if node is None or (isinstance(node, Scalar) and not node.text.strip()):
            self.missing(key, example)
            return None
        return self.scalar(key)

    def missing(self, key: str, example: str) -> None:
        code = f"missing-{key.replace(' ', '-')}"
        message = f"{self.what.capitalize()} lacks {quoted(key)}."
        self.report.error(self.at, code, message, f"Add for example {example}.")

    def identifier(self, key: str = "id") -> Scalar | None:
        """An id: letters, digits and hyphens. A bad one is reported and kept, so that references hold."""
        found = self.required(key, f"{key}: storm-coat")
        if found is not None and not is_id(found.text):
            message = f"{quoted(found.text)} is no id."
            remedy = "Use letters, digits and single hyphens, such as storm-coat."
            self.report.error(found.at, "bad-id", message, remedy)
        return found

    def flag(self, key: str) -> bool:
        """yes or no; no if left out."""
        found = self.scalar(key)
        if found is None:
            return False
        if found.text not in _YES_NO:
            message = f"{quoted(key)} is {quoted(found.text)}, but yes or no is needed."
            self.report.error(found.at, "not-yes-or-no", message, "Write yes or no.")
            return False
        return _YES_NO[found.text]

    def date(self, key: str) -> datetime.date | None:
        found = self.scalar(key)
        if found is None:
            return None
        try:
            return parse_date(found.text)
        except MeasureError as error:
            self.report.error(found.at, "bad-date", error.problem, error.remedy)
            return None

    def one_of(self, key: str, known: Iterable[str], default: str | None = None) -> str | None:
        """A word of a closed list."""
        found = self.scalar(key)
        if found is None:
            return default
        allowed = list(known)
        if found.text in allowed:
            return found.text
        message = f"{quoted(found.text)} is not known as {quoted(key)}."
        remedy = suggestion(found.text, allowed, f"Write {listed(allowed, limit=30)}.")
        self.report.error(found.at, "unknown-word", message, remedy)
        return default

    def span(self, first: str, last: str) -> tuple[datetime.date | None, datetime.date | None]:
        """Two dates, the first day in and the first day out; a reversed pair is reported."""
        begin, end = self.date(first), self.date(last)
        if begin is not None and end is not None and end <= begin:
            message = f"{quoted(last)} ({end}) is not after {quoted(first)} ({begin})."
            remedy = "It is the first day on which it no longer holds: correct one of the dates."
            self.report.error(self.place(last), "reversed-dates", message, remedy)
            return begin, None
        return begin, end
