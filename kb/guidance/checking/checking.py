"""The check of a whole document: header, sentences, what is left out, what will not stay true."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterator
from functools import lru_cache

import msgspec

from kb.guidance.checking.audience import read_audience
from kb.guidance.checking.books import Books
from kb.guidance.checking.cautions import cautions_left_out
from kb.guidance.checking.citations import Citations
from kb.guidance.checking.claims import Claims
from kb.guidance.checking.document import Document, refused
from kb.guidance.checking.findings import CheckFinding, CheckReport, Unread
from kb.guidance.checking.gathering import Gathering
from kb.guidance.checking.header import Header, read_header
from kb.guidance.checking.heading import early_findings, header_findings
from kb.guidance.checking.names import Names
from kb.guidance.checking.passage import Passage, Result
from kb.guidance.checking.passages import LONGEST, Passages
from kb.guidance.checking.plain import remarks_whole
from kb.guidance.checking.settling import settling_findings
from kb.guidance.checking.staying import later_findings
from kb.guidance.checking.truth import Judge
from kb.guidance.checking.verdicts import Weighing
from kb.guidance.checking.whole import left_out_findings
from kb.guidance.checking.words import fold, level
from kb.model.conditions import Condition, Test, all_of
from kb.model.lookup import Lookup
from kb.reader import Lexicon
from kb.reasoner import Engine, Facts

MOST_SENTENCES = 10_000
_DAYS = 8  # kept for a document that is checked again after a change


class Desk:
    """What a check works with: the books, the names in them, who judges on each day, the books' digest."""

    def __init__(
        self, lookup: Lookup, lexicon: Lexicon, engine: Callable[[datetime.date], Engine], digest: str
    ) -> None:
        self.lookup = lookup
        self.digest = digest
        self.names = Names(lookup, lexicon)
        self.claims = Claims(self.names)
        self.citations = Citations(lookup)
        self.judge = lru_cache(maxsize=_DAYS)(lambda day: Judge(engine(day), self.names))


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
        passages = list(Gathering(self.document, self.header, self.desk, self.audience).passages())
        if len(passages) > MOST_SENTENCES:
            message = f"The document has more than {MOST_SENTENCES} sentences."
            raise refused(
                self.document.name, passages[MOST_SENTENCES].line, "too-long", message, "Check it in parts."
            )
        passages = list(remarks_whole(passages, self.citations, self.books))
        self._all_stated = self._stated(passages)
        checker = self.passages_on(self.day)
        findings: list[CheckFinding] = [
            *self._hidden(),
            *header_findings(self.header, self.books, self.today),
        ]
        unread: list[Unread] = [*self._unread_audience(), *self.header.undated]
        results: list[tuple[Passage, Result]] = []
        known: dict[tuple[object, ...], Result] = {}
        for passage in passages:
            key = (passage.text, passage.readings, passage.contexts)
            if key not in known:
                known[key] = checker.check(passage)
            results.append((passage, _placed(known[key], passage)))
        findings += left_out_findings(checker, results)
        findings += later_findings(self, results)
        if self.header.digest:
            findings += cautions_left_out(results, self.document, self.books, checker.weighing.judge)
        findings += settling_findings(results, self.desk.lookup)
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
            weighing = Weighing(self.desk.judge(day), books)
            self._on_day[day] = Passages(
                self.desk.lookup,
                self.desk.claims,
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
