"""One sentence of guidance: its citations, its quotations, the rule that it states."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Iterator, Sequence

import msgspec

from kb.guidance.checking.books import Books, Cited, Fault
from kb.guidance.checking.citations import Citations
from kb.guidance.checking.citations import Found as FoundCitations
from kb.guidance.checking.claim import Claim
from kb.guidance.checking.claims import Claims
from kb.guidance.checking.dating import Dating
from kb.guidance.checking.differing import Differing
from kb.guidance.checking.findings import CheckFinding, Severity, Unread, finding_at
from kb.guidance.checking.local import weigh_local
from kb.guidance.checking.modals import last_statement, speaks_of_duty
from kb.guidance.checking.passage import Passage, Result
from kb.guidance.checking.plain import is_open, is_remark
from kb.guidance.checking.quotations import find_quotations, nearest_part
from kb.guidance.checking.quoting import Quoting
from kb.guidance.checking.remarks import Remarks
from kb.guidance.checking.settling import is_settling
from kb.guidance.checking.verdicts import TRUE, Verdict, Weighing
from kb.guidance.checking.words import fold
from kb.model.conditions import ALWAYS, Condition, all_of
from kb.model.lookup import Lookup
from kb.model.records import Clause, Rule
from kb.wording import clause_reference, say_rule

_BROKEN = re.compile(
    r"where(?: the duty of)?(?: the)?[ ,]*is (?:broken|not (?:complied with|met|kept)), (?P<rest>.+)"
)
_ONLY_QUOTED = re.compile(r'"[^"]*"[.,;]?')
LONGEST = 3_000
_SHOWN = 200
_ORDER = {"true": 0, "partly": 1, "unsure": 2, "false": 3}


class Passages:
    """Checks sentences on one day. `sure_of_audience` is False if it was not understood for whom they are."""

    def __init__(
        self,
        lookup: Lookup,
        claims: Claims,
        citations: Citations,
        books: Books,
        weighing: Weighing,
        stated: frozenset[str],
        strict: bool,
        sure_of_audience: bool,
        on_day: Callable[[datetime.date], Passages],
    ) -> None:
        self.lookup = lookup
        self.claims = claims
        self.citations = citations
        self.books = books
        self.weighing = weighing
        self.differing = Differing(books, weighing)
        self.remarks = Remarks(claims.names, weighing)
        self.stated = stated
        self.left_out: Severity = "error" if strict else "warning"
        self.sure_of_audience = sure_of_audience
        self.on_day = on_day

    def said(self, text: str) -> list[Rule]:
        """The rules whose sentence a folded text is, word for word; those in force first."""
        found = self.claims.names.sentences.get(fold(text).rstrip(" ."), ())
        return sorted(found, key=lambda rule: not self.books.is_current(rule))

    # -- a sentence -------------------------------------------------------------------------------------

    def check(self, passage: Passage) -> Result:
        """Everything about one sentence."""
        if len(passage.text) > LONGEST:
            short = msgspec.structs.replace(passage, text=f"{passage.text[:_SHOWN]} ...")
            return self._note_unread(short, Result(), "it is too long")
        claim, reading = self._claim(passage)
        if claim is None:
            several = self._several(passage)
            return several if several is not None else self._check(passage, claim, reading)
        day = self.books.day
        if claim.since is not None and claim.since > day:
            day = claim.since
        elif claim.until is not None and claim.until <= day:
            day = claim.until - datetime.timedelta(days=1)
        result = self.on_day(day)._check(passage, claim, reading)
        dated = list(Dating(self).check(passage, claim, result.cited)) if result.confirmed else []
        return (
            msgspec.structs.replace(result, findings=(*result.findings, *dated), confirmed=not dated)
            if dated
            else result
        )

    def _several(self, passage: Passage) -> Result | None:
        """What comes of a sentence that states several rules, "... and must not ..."; None for any other."""
        for reading in passage.readings:
            parts = self._apart(self.citations.find(reading).rest)
            if parts is None:
                continue
            results = [self._check(passage, claim, part) for claim, part in parts]
            unread = next((result.unread for result in results if result.unread), None)
            findings = dict.fromkeys(finding for result in results for finding in result.findings)
            confirmed = all(result.confirmed for result in results)
            first = msgspec.structs.replace(results[0], claim=None, confirmed=confirmed)
            return msgspec.structs.replace(first, findings=tuple(findings), unread=unread)
        return None

    def _apart(self, text: str) -> list[tuple[Claim, str]] | None:
        """The statements of a sentence, each with its words; None if one of them is not understood."""
        limited = self.claims.sized(text)
        allowed = self.claims.read(limited[0]) if limited else None
        if limited is not None and allowed is not None:
            return [(allowed, limited[0]), (limited[1], text)]
        for before, last, borrows in last_statement(text):
            claim = self.claims.read(last)
            if claim is None or (borrows and claim.condition != ALWAYS):
                continue
            whole = self.claims.read(before)
            first = [(whole, before)] if whole is not None else self._apart(before)
            if first is not None:
                return [*first, (claim, last)]
        return None

    def _check(self, passage: Passage, claim: Claim | None, reading: str) -> Result:
        found = self.citations.find(passage.text)
        cited = self.books.resolve(found.citations)
        findings = [self._fault(passage, fault, claim) for fault in cited.faults]
        quotations, quoted = Quoting(self.citations, self.books, self.weighing).check(
            passage, found, cited, claim is not None
        )
        findings += quoted
        result = Result(
            findings=tuple(findings),
            citations=sum(len(c.numbers) for c in found.citations),
            quotations=quotations,
            cited=cited.clauses,
        )
        if claim is not None:
            return self._weighed(passage, result, claim, reading, found, cited)
        if quotations and not self._states_more(found.rest):
            return msgspec.structs.replace(result, confirmed=not quoted)
        repaired = self._repaired(passage, result, found.rest, cited)
        if repaired is not None:
            return repaired
        if is_settling(found.rest) and not found.citations:
            return result
        if is_remark(found.rest, cited.clauses, self.books) or is_open(
            passage.text, cited.clauses, self.weighing
        ):
            return msgspec.structs.replace(result, confirmed=not findings)
        if self.remarks.must_be_understood(found.rest):
            return self._remark(passage, result, found)
        plain = fold(found.rest)
        if not (
            found.citations or found.local or speaks_of_duty(plain) or self.claims.speaks_of_thing(plain)
        ):
            return result
        return self._unread(passage, result, found, cited)

    def _remark(self, passage: Passage, result: Result, found: FoundCitations) -> Result:
        """What comes of a note, a caution or a definition that is not the books' own, word for word."""
        understood, finding = self.remarks.check(passage, found.rest)
        if finding is not None:
            return msgspec.structs.replace(result, findings=(*result.findings, finding))
        if understood or result.findings:
            return result
        reason = "it is a note, a caution or a definition, and not in the words of the books"
        return self._note_unread(passage, result, reason)

    def _repaired(self, passage: Passage, result: Result, rest: str, cited: Cited) -> Result | None:
        """What comes of "Where the duty of clause 4.1 is broken, ..."; None for any other sentence."""
        match = _BROKEN.fullmatch(fold(rest))
        claim = self.claims.read(match["rest"]) if match else None
        if claim is None:
            return None
        here = {clause.id for clause in cited.clauses}
        rules = [rule for rule in self.weighing.rules if rule.clause in here and rule.repairs]
        judge, within = self.weighing.judge, passage.contexts[0]
        for rule in rules:
            duty = self.lookup.rules[rule.repairs or ""]
            if (
                duty.clause in here
                and judge.says(rule, claim)
                and judge.implies(all_of([claim.condition, within]), rule.condition)
            ):
                return msgspec.structs.replace(result, confirmed=not result.findings)
        near = self.weighing.best(rules, passage.text)
        if near is None:
            return None
        name = clause_reference(self.lookup, near.clause)
        said = say_rule(self.lookup, near)
        finding = finding_at(
            passage,
            "error",
            "contradicts",
            f"{name} says otherwise: {said}",
            clause=name,
            quotation=self.weighing.quoted(near, passage.text),
            suggestion=said,
        )
        return msgspec.structs.replace(result, findings=(*result.findings, finding))

    def _states_more(self, rest: str) -> bool:
        """Whether a sentence states something beside its quotations."""
        bare = rest
        for quotation in reversed(find_quotations(rest)):
            bare = bare[: quotation.start] + " " + bare[quotation.end :]
        return speaks_of_duty(fold(bare))

    def _claim(self, passage: Passage) -> tuple[Claim | None, str]:
        """The first reading that is understood."""
        for reading in passage.readings:
            rest = self.citations.find(reading).rest
            if _ONLY_QUOTED.fullmatch(rest):
                continue  # a clause's own words are held against the clause
            claim = self.claims.read(rest)
            exact = self.said(rest)
            if claim is None and exact:
                claim = Claim.of(exact[0])
            if claim is not None:
                return msgspec.structs.replace(claim, rules=tuple(rule.id for rule in exact)), rest
        return None, ""

    def _fault(self, passage: Passage, fault: Fault, claim: Claim | None) -> CheckFinding:
        clause = self.lookup.clauses.get(fault.clause)
        successor = self.books.successor(clause) if clause is not None else None
        suggestion = fault.suggestion
        if successor is not None:
            rules = [r for r in self.lookup.rules_of(successor.id) if self.books.is_current(r)]
            rules = [r for r in rules if claim is not None and r.aspect == claim.aspect] or rules
            near = self.weighing.best(rules, passage.text)
            if near is not None and fold(passage.text) != fold(say_rule(self.lookup, near)):
                suggestion = self.weighing.said(near, passage.contexts[0])
        return finding_at(
            passage,
            "error",
            fault.code,
            fault.message,
            cause=fault.cause,
            clause=clause_reference(self.lookup, successor.id) if successor else "",
            quotation=nearest_part(passage.text, successor.text) if successor else "",
            suggestion=suggestion,
        )

    # -- the claim --------------------------------------------------------------------------------------

    def _weighed(
        self,
        passage: Passage,
        result: Result,
        claim: Claim,
        reading: str,
        found: FoundCitations,
        cited: Cited,
    ) -> Result:
        findings = [*result.findings, *self._units(passage, claim, cited)]
        if cited.foreign and not cited.clauses:
            reason = f"it rests on {cited.foreign[0]}, which is no rule book"
            return self._note_unread(
                passage, msgspec.structs.replace(result, findings=tuple(findings)), reason
            )
        if found.local:
            verdict = weigh_local(self.weighing, claim, passage.contexts, cited.clauses, cited.stale)
            within = passage.contexts[0]
        else:
            verdict, within = self.weigh(claim, passage.contexts, cited.clauses, reading)
        if not self.sure_of_audience and verdict.partial:
            verdict = Verdict(
                "unsure", message="it holds for some; for whom the guidance is was not understood"
            )
        if cited.stale and not cited.clauses and verdict.kind == "false":  # the citation is reported already
            verdict = Verdict("true") if findings else verdict
        if verdict.kind == "unsure":
            reason = f"{verdict.message}"
            return self._note_unread(
                passage, msgspec.structs.replace(result, findings=tuple(findings)), reason
            )
        own_words = any(self.lookup.rules[rule].clause == c.id for rule in claim.rules for c in cited.clauses)
        if verdict.code == "exception-elsewhere" and (self.left_out == "warning" or own_words):
            verdict = TRUE
        if verdict.kind == "true" and claim.weak:
            verdict = self.weighing.weaker(claim, within, cited.clauses, passage.text)
        if verdict.kind != "true":
            findings.append(self.of_verdict(passage, verdict, reading))
        confirmed = verdict.kind == "true" and not findings
        return msgspec.structs.replace(
            result,
            findings=tuple(findings),
            confirmed=confirmed,
            claim=claim,
            local=found.local,
            within=within,
        )

    def weigh(
        self, claim: Claim, contexts: Sequence[Condition], cited: Sequence[Clause], text: str
    ) -> tuple[Verdict, Condition]:
        """The mildest verdict of a claim under the circumstances that it may be meant for."""
        best: tuple[Verdict, Condition] | None = None
        for within in contexts:
            verdict = self.weighing.weigh(claim, within, cited, text, self.stated)
            if best is None or _ORDER[verdict.kind] < _ORDER[best[0].kind]:
                best = (verdict, within)
            if verdict.kind == "true":
                break
        assert best is not None, "a passage has a context"
        if best[0].code == "no-case":
            verdict = self.weighing.weigh(claim, ALWAYS, cited, text, self.stated)
            return (verdict, ALWAYS) if verdict.kind == "false" else best
        return best

    def of_verdict(
        self, passage: Passage, verdict: Verdict, text: str, since: datetime.date | None = None
    ) -> CheckFinding:
        """The finding that a verdict other than "true" amounts to."""
        severity: Severity = "error"
        if verdict.kind == "partly":
            mild = verdict.code in ("open-conflict", "exception-elsewhere")
            severity = "warning" if mild else self.left_out
        rule = verdict.rule
        return finding_at(
            passage,
            severity,
            verdict.code,
            verdict.message,
            clause=clause_reference(self.lookup, rule.clause) if rule else "",
            quotation=self.weighing.quoted(rule, text) if rule else "",
            suggestion=verdict.suggestion,
            cause=verdict.cause,
            since=since,
        )

    def _units(self, passage: Passage, claim: Claim, cited: Cited) -> Iterator[CheckFinding]:
        """The finding that the two units of a measure do not agree, unless the cited clause gives them so."""
        from kb.measures.twins import agree  # noqa: PLC0415

        rules = [rule for clause in cited.clauses for rule in self.lookup.rules_of(clause.id)]
        given = [m for rule in rules if (m := rule.value.measure) is not None and m.also is not None]
        pairs = [(m.interval, m.also.interval) for m in given if m.also is not None]
        for measure in (claim.measure, *(position.offset for position in claim.value.positions)):
            if measure is None or measure.also is None or (measure.interval, measure.also.interval) in pairs:
                continue
            if not agree(measure):
                said = measure.text.partition("(")[0].strip()
                message = f"The two units do not agree: {said} is not {measure.also.text}."
                yield finding_at(passage, "error", "units-disagree", message)

    # -- what was not understood ------------------------------------------------------------------------

    def _unread(self, passage: Passage, result: Result, found: FoundCitations, cited: Cited) -> Result:
        """A sentence without a claim: one word or number away from a rule, or left unread."""
        texts = dict.fromkeys((found.rest, *(self.citations.find(one).rest for one in passage.readings)))
        held = (self.differing.find(passage, text, cited.all_clauses) for text in texts)
        finding = next((one for one in held if one is not None), None)
        if finding is not None:
            return msgspec.structs.replace(result, findings=(*result.findings, finding))
        if result.findings:
            return result
        return self._note_unread(passage, result, "it was not understood")

    def _note_unread(self, passage: Passage, result: Result, reason: str) -> Result:
        note = Unread(passage.line, passage.place, passage.text, reason)
        return msgspec.structs.replace(result, unread=note)
