"""The check of a whole document: header, sentences, what is left out, what will not stay true."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Iterator

import msgspec

from kb.guidance.checking.audience import read_audience, read_heading
from kb.guidance.checking.books import Books
from kb.guidance.checking.citations import Citations
from kb.guidance.checking.claims import Claims
from kb.guidance.checking.document import Block, Document, refused
from kb.guidance.checking.findings import CheckFinding, CheckReport, Unread
from kb.guidance.checking.header import Header, read_header
from kb.guidance.checking.heading import early_findings, header_findings
from kb.guidance.checking.names import Names
from kb.guidance.checking.passage import Passage, Result
from kb.guidance.checking.passages import LONGEST, Passages
from kb.guidance.checking.plain import is_boilerplate
from kb.guidance.checking.sentences import Sentence, split_sentences
from kb.guidance.checking.staying import later_findings
from kb.guidance.checking.truth import Judge
from kb.guidance.checking.verdicts import Weighing
from kb.guidance.checking.whole import left_out_findings
from kb.guidance.checking.words import fold, level
from kb.model.conditions import ALWAYS, Condition, Test, all_of
from kb.model.lookup import Lookup
from kb.reader import Lexicon
from kb.reasoner import Engine, Facts

MOST_SENTENCES = 20_000


class Desk:
    """What a check works with: the books, the names in them, the reasoner for each day, the books' digest."""

    def __init__(
        self, lookup: Lookup, lexicon: Lexicon, engine: Callable[[datetime.date], Engine], digest: str
    ) -> None:
        self.lookup = lookup
        self.engine = engine
        self.digest = digest
        self.names = Names(lookup, lexicon)
        self.claims = Claims(self.names)
        self.citations = Citations(lookup)


def check_document(document: Document, desk: Desk, today: datetime.date, facts: Facts = ()) -> CheckReport:
    """Check guidance on its effective date (`today` if it gives none) and until it expires.

    `facts` say for whom it is, in the place of what the document says of that.
    """
    return _Check(document, desk, today, facts).run()


class _Check:
    """One run over one document."""

    def __init__(self, document: Document, desk: Desk, today: datetime.date, facts: Facts) -> None:
        self.document = document
        self.desk = desk
        self.today = today
        self.citations = desk.citations
        self.header: Header = read_header(document, desk.lookup, self.citations)
        self.day = self.header.effective.date if self.header.effective else today
        self.names = desk.names
        self.claims = desk.claims
        if facts:
            stated: Condition = all_of([Test(fact, values) for fact, values in facts])
            self.audience, self.sure = self.names.plain(stated), True
        else:
            self.audience, self.sure = read_audience(self.names, self.header.applies)
        self.books = Books(desk.lookup, self.header, self.day)
        self._on_day: dict[datetime.date, Passages] = {}
        self._all_stated: frozenset[str] = frozenset()

    def run(self) -> CheckReport:
        """The report."""
        passages = list(self._passages())
        if len(passages) > MOST_SENTENCES:
            message = f"The document has more than {MOST_SENTENCES} sentences."
            raise refused(self.document.name, passages[-1].line, "too-long", message, "Check it in parts.")
        self._all_stated = self._stated(passages)
        checker = self.passages_on(self.day)
        findings: list[CheckFinding] = [
            *self._hidden(),
            *header_findings(self.header, self.books, self.today),
        ]
        unread: list[Unread] = [*self._unread_audience()]
        results: list[tuple[Passage, Result]] = []
        known: dict[tuple[object, ...], Result] = {}
        for passage in passages:
            key = (passage.text, passage.readings, passage.contexts)
            if key not in known:
                known[key] = checker.check(passage)
            results.append((passage, _placed(known[key], passage)))
        findings += left_out_findings(checker, results)
        findings += later_findings(self, results)
        for _, result in results:
            findings += result.findings
            unread += [result.unread] if result.unread else []
        findings += early_findings(self.header, findings)
        return self._report(findings, unread, [result for _, result in results])

    def _report(
        self, findings: list[CheckFinding], unread: list[Unread], results: list[Result]
    ) -> CheckReport:
        made_from, books = self.header.digest, self.desk.digest
        if made_from and made_from != books:
            findings = [_caused(finding) for finding in findings]
        return CheckReport(
            name=self.document.name,
            unit=self.document.unit,
            day=self.day,
            expires=self.header.expires.date if self.header.expires else None,
            made_from=made_from,
            books=books,
            audience=" ".join(self.header.applies),
            findings=tuple(sorted(dict.fromkeys(findings), key=lambda f: (f.line, f.severity, f.code))),
            unread=tuple(sorted(unread, key=lambda u: u.line)),
            sentences=len(results),
            confirmed=sum(result.confirmed for result in results),
            citations=sum(result.citations for result in results),
            quotations=sum(result.quotations for result in results),
        )

    def passages_on(self, day: datetime.date) -> Passages:
        """What checks sentences on a day."""
        if day not in self._on_day:
            books = self.books if day == self.day else Books(self.desk.lookup, self.header, day)
            weighing = Weighing(Judge(self.desk.engine(day), self.names), books)
            self._on_day[day] = Passages(
                self.desk.lookup,
                self.claims,
                self.citations,
                books,
                weighing,
                self._all_stated,
                bool(self.header.digest),
                self.sure,
                self.passages_on,
            )
        return self._on_day[day]

    def _stated(self, passages: list[Passage]) -> frozenset[str]:
        """Every clause that the document cites."""
        found = [self.citations.find(p.text).citations for p in passages if len(p.text) <= LONGEST]
        clauses = [c for cited in found if cited for c in self.books.resolve(cited).all_clauses]
        return frozenset(clause.id for clause in clauses)

    # -- what is checked --------------------------------------------------------------------------------

    def _passages(self) -> Iterator[Passage]:
        headings: list[tuple[int, Condition]] = []
        for index, block in enumerate(self.document.blocks):
            if index in self.header.blocks:
                continue
            if block.kind == "heading":
                headings = [(depth, c) for depth, c in headings if depth < block.level]
                headings.append((block.level, read_heading(self.names, block.text)))
                if not self.citations.find(level(block.text)).citations:
                    continue
            section = all_of([condition for _, condition in headings])
            lead = read_heading(self.names, block.lead) if block.lead else ALWAYS
            contexts = tuple(
                dict.fromkeys(
                    [all_of([self.audience, section, lead]), all_of([self.audience, section]), self.audience]
                )
            )
            if block.kind == "row":
                yield from self._row(block, contexts)
                continue
            following = self.document.blocks[index + 1].kind if index + 1 < len(self.document.blocks) else ""
            for sentence in split_sentences(block):
                leads = sentence.text.endswith(":") and following in ("item", "row")
                if not leads and not is_boilerplate(sentence.text):
                    yield self._passage(sentence, block, contexts)

    def _passage(self, sentence: Sentence, block: Block, contexts: tuple[Condition, ...]) -> Passage:
        readings = [sentence.text]
        if block.lead:
            lead = block.lead.rstrip(" :")
            readings.append(f"{lead} {sentence.text}")
            gathered = re.sub(
                r"\bthe following(?: items?| articles?| garments?)?\b",
                sentence.text.rstrip(" .;,"),
                lead,
                count=1,
                flags=re.I,
            )
            if gathered != lead:
                readings += [gathered, re.sub(r"\bare\b", "is", gathered)]
        return Passage(sentence.text, sentence.line, sentence.place, tuple(readings), contexts)

    def _row(self, block: Block, contexts: tuple[Condition, ...]) -> Iterator[Passage]:
        """The cells of a table row as sentences, each under its column's title, and the row read along."""
        cells = [level(cell) for cell in block.cells]
        if not block.header:
            return
        head = [level(cell) for cell in block.header]
        titled = [
            t for t in head if re.match(r"(?i)(?:ref(?:erence)?s?|clauses?|citations?|source|authority)\b", t)
        ]
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

    def _hidden(self) -> Iterator[CheckFinding]:
        for block in self.document.blocks:
            if block.hidden:
                message = "The text holds characters that do not show; a reader may not see what it says."
                yield CheckFinding(
                    line=block.lines[0][1],
                    place=block.place,
                    severity="warning",
                    code="hidden-characters",
                    text=level(block.text)[:300],
                    message=message,
                    suggestion="Take them out.",
                )

    def _unread_audience(self) -> Iterator[Unread]:
        if not self.sure:
            place = next(
                (
                    b
                    for b in self.document.blocks
                    if any(level(b.text).endswith(t) for t in self.header.applies)
                ),
                None,
            )
            line = place.lines[0][1] if place else 1
            reason = "it was not understood for whom this is; --grade, --rig and --fact can say it"
            yield Unread(line, place.place if place else "line 1", " ".join(self.header.applies), reason)


def _placed(result: Result, passage: Passage) -> Result:
    """A result of an equal sentence elsewhere, at the place of this one."""
    findings = tuple(
        msgspec.structs.replace(f, line=passage.line, place=passage.place) for f in result.findings
    )
    unread = result.unread and msgspec.structs.replace(result.unread, line=passage.line, place=passage.place)
    return msgspec.structs.replace(result, findings=findings, unread=unread)


def _caused(finding: CheckFinding) -> CheckFinding:
    """A finding under other books than those the guidance was made from: the books may be the cause."""
    if finding.cause or finding.code in ("hidden-characters", "units-disagree"):
        return finding
    causes = {
        "dropped-exception": "an exception is in force that the guidance does not know",
        "overruled": "another clause goes before it now",
        "not-verbatim": "the clause reads otherwise now",
        "invented-clause": "the clause is not in the books any more",
        "not-said": "no clause says it any more",
    }
    cause = causes.get(finding.code, "the clause says something else now")
    return msgspec.structs.replace(finding, cause=cause)


__all__ = ["Desk", "check_document", "fold"]
