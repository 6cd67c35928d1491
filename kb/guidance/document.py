"""A piece of guidance as data: what every format is made of."""

from __future__ import annotations

import datetime
from typing import Literal

import msgspec

Kind = Literal["rule", "caution", "note", "plain"]


class Sentence(msgspec.Struct, frozen=True, omit_defaults=True):
    """One sentence without its closing mark; `citation` is what stands in brackets behind it.

    `rules` are the ids of the rules that it states, `rivals` of those that take it back elsewhere. `parts`
    are the statements that it was made of, each a sentence of its own with the name of its thing.
    """

    text: str
    citation: str = ""
    kind: Kind = "rule"
    rules: tuple[str, ...] = ()
    rivals: tuple[str, ...] = ()
    parts: tuple[Sentence, ...] = ()

    @property
    def whole(self) -> str:
        """The sentence as it stands on the page."""
        if not self.citation:
            return self.text if self.text.endswith((".", "”", "?", "!")) else f"{self.text}."
        return f"{self.text} ({self.citation})."


class Table(msgspec.Struct, frozen=True):
    """What differs by grade: the titles of the columns, rows of as many cells, the rules that it states."""

    caption: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    rules: tuple[str, ...]


class Paragraph(msgspec.Struct, frozen=True, omit_defaults=True):
    """A numbered paragraph: "2.1", its sentences, and a table below them if it has one."""

    number: str
    sentences: tuple[Sentence, ...]
    table: Table | None = None


class Section(msgspec.Struct, frozen=True):
    """Paragraphs under one numbered heading."""

    number: str
    heading: str
    paragraphs: tuple[Paragraph, ...]


class Document(msgspec.Struct, frozen=True, kw_only=True):
    """A whole draft. `references` are lettered; `digest` is that of the rule books (64 hex digits)."""

    subject: str
    references: tuple[str, ...]
    purpose: str
    applicability: str
    sections: tuple[Section, ...]
    effective: datetime.date
    expires: datetime.date
    review: datetime.date
    digest: str
    authority: str

    @property
    def statements(self) -> tuple[Sentence, ...]:
        """Every single statement as a whole sentence of its own."""
        return tuple(part for sentence in self.sentences for part in sentence.parts or (sentence,))

    @property
    def sentences(self) -> tuple[Sentence, ...]:
        return tuple(s for section in self.sections for p in section.paragraphs for s in p.sentences)
