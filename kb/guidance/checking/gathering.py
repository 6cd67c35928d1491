"""The sentences of a document, each with the readings that its place in a list or a table allows."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Protocol

from kb.guidance.checking.audience import read_heading
from kb.guidance.checking.citations import Citations
from kb.guidance.checking.claim import Claim
from kb.guidance.checking.claims import Claims
from kb.guidance.checking.document import Block, Document
from kb.guidance.checking.header import Header
from kb.guidance.checking.modals import last_statement
from kb.guidance.checking.names import Names
from kb.guidance.checking.passage import Passage
from kb.guidance.checking.plain import is_boilerplate
from kb.guidance.checking.sentences import Sentence, split_sentences
from kb.guidance.checking.words import level
from kb.model.conditions import ALWAYS, Condition, all_of
from kb.text import Pattern
from kb.wording import say_scope

_NUMBERED = Pattern(r"^\s*\d[\d.]*[a-z]?\s+")
_SOURCE = Pattern(r"(?i)(?:ref(?:erence)?s?|clauses?|citations?|source|authority)\b")
_FOLLOWING = re.compile(r"\bthe following(?: items?| articles?| garments?)?\b", re.IGNORECASE)
_CONDITION = Pattern(
    r"(?i).*\b(?:when|whenever|if|where|while|unless|except|provided that|as long as)"
    r"(?: (?:one|any|either) of (?:these|the following) (?:holds|applies))?:?"
)
_LAST_WORD = Pattern(r"(?i)[,;]? (?P<word>and|or)$|[,;](?P<none>)$")
_PRONOUN = re.compile(r"(?:it|they|both)(?= (?:must|may|need|shall|is|are|has|have)\b)", re.IGNORECASE)


class Tools(Protocol):
    """What sentences are read with."""

    @property
    def names(self) -> Names: ...
    @property
    def claims(self) -> Claims: ...
    @property
    def citations(self) -> Citations: ...


class Gathering:
    """Goes through a document; `audience` is the condition that holds for everyone addressed."""

    def __init__(self, document: Document, header: Header, tools: Tools, audience: Condition) -> None:
        self.blocks = document.blocks
        self.header = header
        self.names, self.claims, self.citations = tools.names, tools.claims, tools.citations
        self.audience = audience
        self._before = ""

    def passages(self) -> Iterator[Passage]:
        """Every sentence that may state something."""
        headings: list[tuple[int, Condition]] = []
        gathered: set[int] = set()
        for index, block in enumerate(self.blocks):
            if index in self.header.blocks or index in gathered:
                continue
            if block.kind == "heading":
                headings = [(depth, c) for depth, c in headings if depth < block.level]
                headings.append((block.level, read_heading(self.names, block.text)))
                if not self.citations.find(level(block.text)).citations:
                    yield from self._said_in_heading(block)
                    continue
            contexts = self._contexts(all_of([condition for _, condition in headings]), block)
            if block.kind == "row":
                yield from self._row(block, contexts)
                continue
            items = self._items(index)
            self._before = ""
            for sentence in split_sentences(block):
                leads = items and sentence.text.rstrip()[-1:] not in ".!?"
                if leads and _CONDITION.fullmatch(sentence.text):
                    gathered |= {index + 1 + place for place in range(len(items))}
                    parts = [split_sentences(item) for item in items]
                    yield self._list(sentence, [part[0].text for part in parts if part], contexts)
                    for item, part in zip(items, parts, strict=True):
                        yield from (self._passage(more, item, contexts) for more in part[1:])
                elif not (leads or self._leads_table(index, sentence)) and not is_boilerplate(sentence.text):
                    yield self._passage(sentence, block, contexts)

    def _said_in_heading(self, block: Block) -> Iterator[Passage]:
        """A heading that states a rule, by itself or behind a colon; most only name what follows."""
        text = level(_NUMBERED.sub("", block.text))
        for said in dict.fromkeys((text, *re.split(r": | - ", text)[1:])):
            claim = self.claims.read(said)
            if claim is not None and claim.sure:
                yield Passage(said, block.lines[0][1], block.place, (said,), (self.audience, ALWAYS))
                return

    def _contexts(self, section: Condition, block: Block) -> tuple[Condition, ...]:
        lead = read_heading(self.names, block.lead) if block.lead else ALWAYS
        whole = all_of([self.audience, section])
        return tuple(dict.fromkeys([all_of([whole, lead]), whole, self.audience]))

    def _items(self, index: int) -> list[Block]:
        """The items of a list that follows a block directly."""
        found: list[Block] = []
        for block in self.blocks[index + 1 :]:
            if block.kind != "item" or self.blocks[index].kind == "item":
                break
            found.append(block)
        return found

    def _leads_table(self, index: int, sentence: Sentence) -> bool:
        following = self.blocks[index + 1].kind if index + 1 < len(self.blocks) else ""
        return following == "row" and sentence.text.endswith(":")

    # -- lists ------------------------------------------------------------------------------------------

    def _list(self, lead: Sentence, items: Sequence[str], contexts: tuple[Condition, ...]) -> Passage:
        """ "The cap must be worn when: - ashore; or - on parade" as one sentence; "or" has to stand there."""
        said: list[str] = []
        words: set[str] = set()
        cited: list[str] = []
        for text in items:
            found = self.citations.find(text)
            cited += [text[c.start : c.end] for c in found.citations]
            bare = found.rest.strip(" .")
            last = _LAST_WORD.search(bare)
            words |= {last["word"].lower()} if last and last["word"] else set()
            said.append((bare[: last.start()] if last else bare).strip(" .;,"))
        opening = lead.text.rstrip(" :")
        source = f" ({'; '.join(dict.fromkeys(cited))})" if cited else ""
        word = words.pop() if len(words) == 1 else ""
        either = " either" if word == "or" and len(said) > 1 else ""
        joined = f", {word} ".join(said) if either else f" {word} ".join(said)
        text = f"{opening}{either} {joined}" if word or len(said) == 1 else f"{opening}: {'; '.join(said)}"
        return Passage(f"{text}{source}", lead.line, lead.place, (f"{text}{source}",), contexts)

    # -- one sentence -----------------------------------------------------------------------------------

    def _passage(self, sentence: Sentence, block: Block, contexts: tuple[Condition, ...]) -> Passage:
        readings = [sentence.text]
        if block.lead:
            text = _LAST_WORD.sub("", sentence.text.rstrip(" .;")) if block.kind == "item" else sentence.text
            lead = block.lead.rstrip(" :")
            readings.append(f"{lead} {text}")
            gathered = _FOLLOWING.sub(text.rstrip(" .;,"), lead, count=1)
            if gathered != lead:
                readings += [gathered, re.sub(r"\bare\b", "is", gathered)]
        named = self._named(sentence.text)
        readings += [named] if named else []
        self._before = named or sentence.text
        return Passage(sentence.text, sentence.line, sentence.place, tuple(readings), contexts)

    def _named(self, text: str) -> str:
        """The sentence with the thing that "it" stands for, which the sentence before it is about."""
        pronoun = _PRONOUN.match(text)
        claim = (
            self._first_claim(self.citations.find(self._before).rest) if pronoun and self._before else None
        )
        if pronoun is None or claim is None or claim.scope.alternatives:
            return ""
        if pronoun[0].lower() == "it" and len(claim.scope.items) > 1:
            return ""
        return f"{say_scope(self.names.lookup, claim.scope, 'the')}{text[pronoun.end() :]}"

    def _first_claim(self, text: str) -> Claim | None:
        """What a sentence states first."""
        claim = self.claims.read(text)
        starts = (self._first_claim(before) for before, _, _ in last_statement(text)) if claim is None else ()
        return claim or next((found for found in starts if found is not None), None)

    # -- tables -----------------------------------------------------------------------------------------

    def _row(self, block: Block, contexts: tuple[Condition, ...]) -> Iterator[Passage]:
        """The cells of a table row as sentences, each under its column's title, and the row read along."""
        cells = [level(cell) for cell in block.cells]
        if not block.header:
            return
        head = [level(cell) for cell in block.header]
        titled = [t for t in head if _SOURCE.match(t)]
        source = " ".join(
            f"({cell.strip('()')})"
            for cell, title in zip(cells, head, strict=False)
            if title in titled and cell
        )
        rest = [cell for cell, title in zip(cells, head, strict=False) if title not in titled]
        columns = [title for title in head if title not in titled]
        line, place = block.lines[0][1], block.place
        if titled and not any(re.match(r"(?i)the ", title) for title in columns[1:]):
            whole = " ".join(cell for cell in rest if cell)
            text = f"{whole} {source}".strip()
            yield Passage(text, line, place, (text, *self._titled(columns, rest, source)), contexts)
            return
        for title, cell in zip(columns[1:], rest[1:], strict=False):
            text = f"{cell} {source}".strip()
            if cell and (self.citations.find(text).citations or re.search(r"\b(?:must|may|need)\b", cell)):
                readings = (
                    text,
                    f"For {rest[0]}, {title} must be {text}",
                    f"{rest[0]} {text}",
                    f"{rest[0]} {title} {text}",
                )
                yield Passage(f"{rest[0]} | {title}: {text}", line, place, readings, contexts)

    def _titled(self, columns: list[str], cells: list[str], source: str) -> Iterator[str]:
        """A row of which the titles of the columns are a part: "may wear", "the beard"."""
        for title, cell in zip(columns[1:], cells[1:], strict=False):
            yield f"For {cells[0]}, {title} must be {cell} {source}"
            yield f"{cells[0]} {title} {cell} {source}"
