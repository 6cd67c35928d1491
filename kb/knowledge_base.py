"""The one door to everything: open rule books, ask, look up clauses, query, build, export."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from functools import cached_property, partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from kb import reader
from kb.answer import answer_query
from kb.answer.common import on_its_day, replaced, told_once
from kb.cache import decode_base
from kb.doubted import heeded, undoubted
from kb.errors import UsageError
from kb.keywords import Hit
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Reading
from kb.model.records import Case, Clause, Rule
from kb.model.values import ValueSet
from kb.opening import Opening
from kb.reader import Lexicon, read_turn, split_questions
from kb.reader.names.stored import decode_lexicon
from kb.reasoner import Engine, Facts, StoredCandidates
from kb.sparql import candidate_rules, rules_in_force
from kb.wording import say_facts, say_rule

if TYPE_CHECKING:
    from kb.bulk import CaseTable
    from kb.guidance.checking import CheckReport, Desk
    from kb.guidance.checking.claims import Claims
    from kb.guidance.drafting import Draft, Format
    from kb.reader.adjuncts import Rest
    from kb.sparql import Table
    from kb.sparql.terms import QueryTerm
    from kb.suggesting import WordDesk

_ENGINES_KEPT, _FEW = 8, 4


class KnowledgeBase:
    """Rule books ready for questions. Make one with `open`."""

    def __init__(self, opening: Opening) -> None:
        self._opening = opening
        self.generation = opening.generation()
        self.lookup = Lookup(decode_base(self.generation.base_json.read_bytes()))
        self.digest = self.generation.manifest.books
        self._engines: dict[datetime.date, Engine] = {}

    @classmethod
    def open(cls, books: Path | None = None, cache: Path | None = None) -> KnowledgeBase:
        """Open rule books, building the cache where it is stale.

        Raises `InvalidDataError` for errors in the sources, `StoreUnavailableError` if there is no cache.
        """
        return cls(Opening(books, cache))

    # -- questions --------------------------------------------------------------------------------------

    @cached_property
    def lexicon(self) -> Lexicon:
        return decode_lexicon(self.generation.lexicon_json.read_bytes(), self.lookup)

    def engine(self, as_of: datetime.date) -> Engine:
        """The reasoner for one day; a few days are kept warm."""
        if as_of not in self._engines:
            if len(self._engines) >= _ENGINES_KEPT:
                self._engines.pop(next(iter(self._engines)))
            store = self._opening.store
            candidates = StoredCandidates(
                self.lookup,
                lambda item, aspect, day: candidate_rules(store(), (item,), (aspect,), day),
                lambda aspect, day: rules_in_force(store(), (aspect,), day),
            )
            self._engines[as_of] = Engine(self.lookup, as_of, candidates)
        return self._engines[as_of]

    def _search(self, words: tuple[str, ...]) -> Sequence[Hit]:
        return self.generation.search(words)

    def read(
        self,
        text: str,
        *,
        facts: Facts = (),
        as_of: datetime.date | None = None,
        previous: Reading | None = None,
    ) -> Reading:
        """How one question is understood, given a remembered profile."""
        case = Case(as_of=as_of or datetime.date.today(), facts=facts)
        return read_turn(
            text,
            lexicon=self.lexicon,
            lookup=self.lookup,
            case=case,
            search=self._search,
            previous=previous,
        )

    def answer(self, reading: Reading) -> Answer:
        """The answer to a reading."""
        as_of = reading.query.case.as_of if reading.query else datetime.date.today()
        return answer_query(self.engine(as_of), reading, self.digest)

    def nearest_cases(self, answer: Answer, most: int) -> Answer:
        """The answer with at most `most` of its cases: those with the fewest facts out of the ordinary."""
        from kb.wording.unless import nearest_first  # noqa: PLC0415  only for long tables

        if answer.reading.query is None:
            return answer
        order = nearest_first(self.lookup, answer.reading.query, [case.when for case in answer.cases])
        return replaced(answer, cases=tuple(answer.cases[index] for index in order[:most]))

    def ask(
        self,
        text: str,
        *,
        facts: Facts = (),
        as_of: datetime.date | None = None,
        previous: Reading | None = None,
    ) -> tuple[Answer, ...]:
        """The answers to the questions in a line, one for each.

        A sentence among them that states facts ("I am a W2.") holds for those that follow; each question can
        go on from the one before it ("May I wear the scarf? And in town?").
        """
        if reader.may_claim(text):
            from kb.weighing import weighed  # noqa: PLC0415  few texts have two claims

            def ask(said: str, given: Facts, before: Reading | None) -> tuple[Answer, ...]:
                return self.ask(said, facts=given, as_of=as_of, previous=before)

            if weighing := weighed(text, facts, ask, self._stated, self.lookup):
                return weighing
        known = dict(facts)
        answers: list[Answer] = []
        parts = split_questions(text) or (text,)
        if len(parts) > 1:
            parts, once = reader.shared(parts, self._stated)
            known.update(once)
            previous = reader.gone_on_from(previous, dict(once))
        for part in parts:
            case = Case(as_of=as_of or datetime.date.today(), facts=tuple(known.items()))
            reading = self.read(part, facts=case.facts, as_of=case.as_of, previous=previous)
            stated = self._stated(part) if len(parts) > 1 and reading.query is None else ()
            known.update(stated)
            if not stated:
                asked = self._claimed(part, reading, case) or reader.each_thing(reading, self.lookup)
                told = [answer for one in asked for answer in self._answers(one, case, previous)]
                told = self._told_further(part, reading, told, answers) if answers else told
                answers += [on_its_day(self.lookup, one, case.as_of, self.answer) for one in told_once(told)]
                if reading.query is not None:
                    previous = asked[-1]
                elif told[-1].reading.query is not None:
                    previous = told[-1].reading
        if 1 in (len(parts), len(answers)) and reader.may_deny(text):
            from kb.confirmed import confirmed  # noqa: PLC0415  few put a claim

            answers = [confirmed(text, answer) for answer in answers]
        if len(parts) > 1 and len(answers) > 1:
            from kb.focus import told_of_the_line  # noqa: PLC0415  most lines have one part

            day = as_of or datetime.date.today()
            whole = partial(self.read, text, facts=tuple(known.items()), as_of=day)
            return told_of_the_line(whole, answers, self.answer, day, self.lookup)
        return tuple(answers)

    def _told_further(
        self, part: str, reading: Reading, told: list[Answer], before: Sequence[Answer]
    ) -> list[Answer]:
        """The clause that the part of a line before was answered by, if it tells what no answer does."""
        from kb.focus import told_in_focus  # noqa: PLC0415  most lines have one part

        focus = tuple(dict.fromkeys(one.clause for one in before[-1].citations))
        if reading.question != part:  # put in other words, as a turn of a talk is
            reading = Reading(question=part)
        day = datetime.date.fromisoformat(before[-1].as_of)
        found = told_in_focus(reading, told, focus, "", day, self.lookup) if len(focus) < _FEW else None
        return [self.answer(found)] if found is not None else told

    def _answers(self, reading: Reading, case: Case, previous: Reading | None) -> tuple[Answer, ...]:
        """The answer to a reading; others, where it asked back or the books are silent."""
        if reading.query is not None:
            answer = self.answer(reading)
            if reading.query.kind == "may" and answer.verdict not in ("prohibited", "conflict"):
                from kb.with_it import asked_together  # noqa: PLC0415  many questions are settled before

                reading, answer = asked_together(reading, answer, self.answer, self.lookup)
            if answer.outcome == "answer" and answer.verdict != "silent":
                if answer.entries:
                    from kb.outfits import told_by_clause  # noqa: PLC0415  few questions ask for a list

                    return (told_by_clause(answer, self.answer, self.lookup),)
                if previous is not None:  # a talk says less, so that nothing is doubted in it
                    from kb.worn_there import worn_there  # noqa: PLC0415  as above

                    return (worn_there(answer, previous, self.answer, self.lookup),)
                return (undoubted(answer, case.as_of, self.answer, self.lookup),)
        from kb.instead import answers_instead  # noqa: PLC0415  most questions are answered as they stand

        def read(text: str) -> Reading:
            return self.read(text, facts=case.facts, as_of=case.as_of, previous=previous)

        def rests(said: str) -> Iterable[Rest]:
            names = self.lexicon
            return reader.without_adjuncts(said, lexicon=names, lookup=self.lookup, search=self._search)

        told = answers_instead(reading, case.as_of, read, self.answer, rests, self.lookup)
        if len(told) > 1 or told[0].reading.query is None or told[0].reading.query.clause is None:
            return told if previous is not None else heeded(told, case.as_of, self.answer, self.lookup)
        talk = reader.Talk(self.lexicon, self.lookup, case, self._search)
        return (replaced(told[0], reading=reader.leading_on(told[0].reading, previous, talk)),)

    def _claimed(self, text: str, reading: Reading, case: Case) -> tuple[Reading, ...]:
        """The claim of "Is it true that ...?" read as guidance is; empty where the reader does as well."""
        if " that " not in text or text.lstrip()[:5].lower() != "is it":
            return ()
        from kb.guidance.checking.asking import claim_readings, each_kind  # noqa: PLC0415  only for claims

        found: list[Reading] = []
        for one in claim_readings(text, reading, self._claims, case):
            query = one.query
            several = query is not None and len(self.lookup.narrower(query.items[0])) > 1
            found += (several and each_kind(one, self.answer(one).ask, self.lookup)) or (one,)
        return tuple(found)

    @cached_property
    def _claims(self) -> Claims:
        from kb.guidance.checking.claims import Claims  # noqa: PLC0415
        from kb.guidance.checking.names import Names  # noqa: PLC0415

        return Claims(Names(self.lookup, self.lexicon))

    def in_focus(
        self,
        text: str,
        answers: Sequence[Answer],
        focus: tuple[str, ...],
        spoken: str = "",
        as_of: datetime.date | None = None,
    ) -> tuple[Answer | None, tuple[str, ...]]:
        """The clause in focus that tells what a line asks, if its `answers` do not; what is in focus then.

        `spoken` is the line before that the clauses in focus speak of, if they do not carry its answer.
        """
        from kb.focus import is_settled, left_in_focus, told_in_focus  # noqa: PLC0415  only in a talk

        day = as_of or datetime.date.today()
        reading = answers[-1].reading if is_settled(answers) else self.read(text, as_of=day)
        told = told_in_focus(reading, answers, focus, spoken, day, self.lookup)
        answer = self.answer(told) if told is not None else None
        shown = answers if answer is None else (answer,)
        return answer, left_in_focus(reading, shown, focus, day, self.lookup)

    def _stated(self, text: str) -> Facts:
        found = reader.read_statement(text, lexicon=self.lexicon, lookup=self.lookup)
        return found if isinstance(found, tuple) else ()

    def verify(self, saved: Any) -> tuple[str, str] | None:
        """Where and why a saved answer (the JSON object of `ask --json`, decoded) is refused, or None.

        Its claims are checked apart from the reasoner; then its words are compared with what is said now.
        """
        from kb.answer.again import words_differ  # noqa: PLC0415  only here
        from kb.checker import check  # noqa: PLC0415
        from kb.weighing import as_put  # noqa: PLC0415

        if (refused := check(saved, self.lookup, self.digest)) is not None:
            return refused
        engine = self.engine(datetime.date.fromisoformat(saved["as_of"]))
        return words_differ(engine, saved, self.digest, as_put)

    def draft(self, plan: Path, form: Format = "markdown") -> Draft:
        """The guidance that a writer's plan asks for, made from these books; see `kb/docs/guidance.md`.

        Raises `UsageError` if the plan cannot be read or the format is not installed, `InvalidDataError` with
        its mistakes, and with every local rule that oversteps what the station may decide.
        """
        from kb.guidance.drafting import make_draft  # noqa: PLC0415  only for this command

        return make_draft(plan, self._opening.folder, self.digest, form)

    def check(self, path: Path, *, today: datetime.date | None = None, facts: Facts = ()) -> CheckReport:
        """What is false or left out in guidance (Markdown or Word) on its effective date and while it lasts.

        `today` stands in for an effective date that is not given, `facts` for what it says of whom it is for.
        Raises `UsageError` if the file cannot be read, `InvalidDataError` if it is no such document.
        """
        from kb.guidance.checking import check_document, read_document  # noqa: PLC0415  only here

        return check_document(read_document(path), self._desk, today or datetime.date.today(), facts)

    @cached_property
    def _desk(self) -> Desk:
        from kb.guidance.checking import Desk  # noqa: PLC0415  keeps what it has read for the next document

        return Desk(self.lookup, self.lexicon, self.engine, self.digest)

    def case_table(self, header: Sequence[str], as_of: datetime.date | None = None) -> CaseTable:
        """What decides the rows of a table with these columns; `UsageError` if they make no sense."""
        from kb.bulk import CaseTable  # noqa: PLC0415  only for tables

        return CaseTable(self.lookup, self.engine, header, as_of or datetime.date.today())

    def word_desk(self) -> WordDesk:
        """Where a writer decides on everyday words that a thesaurus has for the items of these books.

        Raises `UsageError` with the line that installs the thesaurus where it is missing.
        """
        from kb.suggesting import WordDesk  # noqa: PLC0415  only for this command

        return WordDesk.open(self._opening.folder, self.lookup, self.lexicon)

    # -- facts ------------------------------------------------------------------------------------------

    def statement(self, text: str) -> Facts:
        """The facts that a sentence such as "I am a K5 in boat rig" states; `UsageError` if it is unclear."""
        found = reader.read_statement(text, lexicon=self.lexicon, lookup=self.lookup)
        if isinstance(found, tuple):
            return found
        unsaid = [word for word in found.words if f'"{word}"' not in found.reason]
        raise UsageError(f"{found.reason} {', '.join(unsaid)}".strip())

    def fact(self, name: str, value: str) -> tuple[str, ValueSet]:
        """One fact given by name and value; `UsageError` with near names if there is none."""
        return reader.parse_fact(self.lookup, name, value)

    def pack_facts(self, facts: Facts) -> bytes:
        """The facts that last as JSON, to be kept for another day."""
        from kb.answer.kept import lasting, pack_facts  # noqa: PLC0415  only in the shell

        return pack_facts(lasting(facts, self.lookup))

    def unpack_facts(self, data: bytes) -> tuple[Facts, tuple[str, ...]]:
        """The kept facts that these books know, and the names of those that they do not; never raises."""
        from kb.answer.kept import unpack_facts  # noqa: PLC0415  only in the shell

        return unpack_facts(data, self.lookup)

    def put_right(self, text: str, missed: Reading) -> str | None:
        """The question that was not understood, with the item that `text` names in it; else None."""
        return reader.put_right(text, missed, self.lexicon, self.lookup)

    def begun_anew(self, text: str) -> str | None:
        """The question alone, where a line says that it is of another matter; else None."""
        return reader.of_another_matter(text)

    def bears(self, reading: Reading, facts: Facts) -> bool:
        """Whether one of the facts bears on what the reading asks of an item."""
        query, named = reading.query, {fact for fact, _ in facts}
        return query is not None and not named.isdisjoint(reader.facts_that_matter(query, self.lookup))

    def gainsays(self, reading: Reading, facts: Facts) -> bool:
        """Whether one of the facts cannot hold together with what the reading is asked under."""
        from kb.model.values import intersect, is_empty  # noqa: PLC0415  only where a statement is made

        known = dict(reading.query.case.facts) if reading.query is not None else {}
        return any(fact in known and is_empty(intersect(known[fact], values)) for fact, values in facts)

    def reply(self, answer: Answer, text: str) -> Facts:
        """The fact that a reply to `answer.ask` states."""
        if answer.ask is None:
            raise UsageError("Nothing was asked.")
        return reader.read_reply(answer.ask, text, lexicon=self.lexicon, lookup=self.lookup)

    def is_thanks(self, text: str) -> bool:
        """Whether a line asks and tells nothing: "ok, thanks"."""
        return reader.is_thanks(text)

    def say_facts(self, facts: Facts) -> str:
        return say_facts(self.lookup, facts)

    # -- clauses and queries ----------------------------------------------------------------------------

    def clause(self, reference: str) -> tuple[Clause, ...]:
        """The clauses that references such as "4.12" or "Dress Order (2024) 4.12" fit, the latest first."""
        from kb.wording.named_clauses import clauses_named  # noqa: PLC0415  no question asks for it

        return clauses_named(self.lookup, reference)

    def rules_of(self, clause: str) -> tuple[tuple[Rule, str], ...]:
        """The rules of a clause, each with its sentence."""
        return tuple((r, say_rule(self.lookup, r)) for r in self.lookup.base.rules if r.clause == clause)

    def run_query(self, text: str, *, deadline: float = 10.0, row_limit: int = 10_000) -> Table:
        """The result of a read-only SPARQL query, run apart from this process."""
        from kb.sparql import run_user_query  # noqa: PLC0415  loads the process that runs users' queries

        return run_user_query(self.generation, text, deadline_s=deadline, row_limit=row_limit)

    def query_terms(self) -> tuple[QueryTerm, ...]:
        """What a query may name: prefixes, classes and properties, and the records of these books."""
        from kb.sparql.terms import query_terms  # noqa: PLC0415  only where somebody writes queries

        return query_terms(self.lookup.base)
