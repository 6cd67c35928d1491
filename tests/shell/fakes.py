"""A small knowledge base with canned answers, so that screens and exit codes are tested without the reasoner.

The service, its items and its wording are invented.
"""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

import msgspec

from kb.answer.kept import pack_facts, unpack_facts
from kb.errors import Problem, StoreUnavailableError, UsageError
from kb.model.questions import (
    Abstain,
    Answer,
    AnswerCase,
    Ask,
    Citation,
    Defeat,
    Derivation,
    Difference,
    ListEntry,
    OpenValue,
    Query,
    Reading,
    RuleStep,
    Side,
)
from kb.model.records import Case, Clause
from kb.model.values import YES, Choices, ValueSet, choices
from kb.reader import is_thanks
from kb.sparql import Table, Term
from kb.sparql.terms import QueryTerm
from tests.shell.fake_books import AT, DAY, HOSTILE, TERMS, TEXT, FakeOpening, little_lookup

CITATION = Citation(
    book="order",
    edition="order/2",
    title="Quay Order, second edition",
    number="4.12",
    clause="order/2/4.12",
    text=TEXT,
    rules=("order/2/liner",),
    at=AT,
)
OTHER_CITATION = msgspec.structs.replace(
    CITATION, title="Station Order", number="7", text="The badge is worn on every rig."
)


def step(rule: str, modality: Any, statement: str, **changes: Any) -> RuleStep:
    plain: dict[str, Any] = {
        "rule": rule,
        "modality": modality,
        "statement": statement,
        "status": "applies",
        "alive": True,
        "clause": "order/2/4.12",
        "text": TEXT,
        "authority": "board",
        "at": AT,
    }
    return RuleStep(**(plain | changes))


DERIVATION = Derivation(
    item="liner",
    aspect="wear",
    when=(("weather", choices("foul")),),
    verdict="permitted",
    steps=(
        step("order/2/ashore", "must_not", "nobody wears the liner alone ashore", status="does_not_apply",
             alive=False, reason="the place is afloat"),
        step("order/2/liner", "may", "a keeper may wear the liner alone in foul weather",
             reason="the weather is foul"),
        step("order/2/general", "must_not", "the liner is not worn alone", alive=False),
    ),
    defeats=(Defeat(winner="order/2/liner", loser="order/2/general", principle="specificity",
                    detail="its cases lie inside the other's"),),
    fates=(),
)  # fmt: skip


def _reading(text: str, read: str = "", **changes: Any) -> Reading:
    case = Case(as_of=DAY, facts=(("grade", choices("K5")),))
    query = Query(kind="may", items=("liner",), case=case)
    return Reading(question=text, text=read, query=query, **changes)


def _answer(text: str, **changes: Any) -> Answer:
    plain: dict[str, Any] = {
        "question": text,
        "as_of": DAY.isoformat(),
        "kb": "f00d",
        "outcome": "answer",
        "reading": _reading(text, "May you wear the quilted liner?"),
    }
    return Answer(**(plain | changes))


def prohibited(text: str) -> Answer:
    return _answer(
        text,
        verdict="prohibited",
        headline="You may not wear the quilted liner alone.",
        reading=_reading(text, "May a K5 wear the quilted liner alone, ashore?", carried=("grade",)),
        cases=(AnswerCase(when=(), label="in every case", verdict="prohibited"),),
        citations=(CITATION,),
        cautions=("Where the liner protects from cold, the safety authority decides, not a dress rule.",),
        notes=("From 1 October 2027 the liner is out of use.",),
        derivation=(DERIVATION,),
    )


def conditional(text: str) -> Answer:
    return _answer(
        text,
        verdict="conditional",
        headline="It depends on the weather.",
        cases=(
            AnswerCase(when=(("weather", choices("foul")),), label="foul weather", verdict="permitted"),
            AnswerCase(
                when=(("weather", choices("fair")),),
                label="fair weather, or no weather that the keeper of the watch has called foul",
                verdict="prohibited",
            ),
        ),
        derivation=(DERIVATION,),
        citations=(CITATION,),
        ask=Ask(
            fact="weather",
            prompt="What is the weather?",
            choices=(("fair", "fair weather"), ("foul", "foul weather")),
        ),
    )


def permitted(text: str) -> Answer:
    return _answer(
        text, verdict="permitted", headline="You may wear the quilted liner.", citations=(CITATION,)
    )


def listing(text: str) -> Answer:
    value = OpenValue(
        item="strip",
        aspect="height",
        label="1 in high",
        values=choices("x"),
        status="supported",
        required=True,
    )
    return _answer(
        text,
        headline="Four items are addressed.",
        entries=(
            ListEntry(item="gloves", label="deck gloves", verdict="prohibited"),
            ListEntry(item="coat", label="storm coat", verdict="required"),
            ListEntry(item="strip", label="name strip", verdict="required", values=(value,)),
            ListEntry(item="liner", label="quilted liner", verdict="permitted", condition="in foul weather"),
        ),
    )


def comparison(text: str) -> Answer:
    liner = (
        Side(item="liner", verdict="prohibited", text="prohibited", rules=("order/2/liner",)),
        Side(item="liner", verdict="conditional",
             text="permitted when the weather is foul; not addressed when the weather is fair"),
    )  # fmt: skip
    strip = (
        Side(item="strip", verdict="required", text="must be 1 in"),
        Side(item="strip", verdict="silent", text="not addressed"),
    )
    return _answer(
        text,
        headline="2 things differ, in watch rig compared with ashore. 3 things are the same.",
        sides=("in watch rig", "ashore"),
        differences=(
            Difference(item="liner", aspect="wear", label="quilted liner", sides=liner),
            Difference(item="strip", aspect="height", label="the height of the name strip", sides=strip),
        ),
        notes=("Of what is the same, 1 depends on further facts, in the same way on both sides.",),
    )


def where(text: str) -> Answer:
    values = (
        OpenValue(item="strip", aspect="position", label="centred above the left pocket",
                  values=choices("a"), status="supported", required=True),
        OpenValue(item="strip", aspect="height", label="1 in high", values=choices("b"),
                  status="supported", required=False),
    )  # fmt: skip
    return _answer(text, verdict="required", headline="The name strip has one place.", values=values)


def conflict(text: str) -> Answer:
    return _answer(
        text,
        verdict="conflict",
        headline="Two clauses disagree, and nothing in the books settles it.",
        citations=(CITATION, OTHER_CITATION),
        notes=("The Board could settle it.",),
    )


def silent(text: str) -> Answer:
    return _answer(text, verdict="silent")


def abstained(text: str) -> Answer:
    reason = "Some words are not known here."
    abstain = Abstain(
        reason=reason, words=("florgle",), suggestions=("May I wear the liner?", "items", "What must I wear?")
    )
    return _answer(text, outcome="abstain", reading=Reading(question=text, abstain=abstain), abstain=abstain)


def which(text: str) -> Answer:
    ask = Ask(fact="item", prompt="Which gloves?", choices=(("gloves", "deck gloves"), ("mitts", "mitts")))
    return _answer(text, outcome="ask", reading=Reading(question=text, ask=ask), ask=ask)


def hostile(text: str) -> Answer:
    """Every text of an answer holds terminal codes, markup and a bidirectional override."""
    cited = msgspec.structs.replace(CITATION, title=HOSTILE, number=HOSTILE, text=HOSTILE)
    first = AnswerCase(when=(), label=HOSTILE, verdict="permitted")
    second = AnswerCase(when=(("weather", choices("foul")),), label=HOSTILE, verdict="prohibited")
    bad_step = step(HOSTILE, "may", HOSTILE, reason=HOSTILE, clause=HOSTILE)
    return _answer(
        text,
        verdict="conditional",
        headline=HOSTILE,
        reading=_reading(HOSTILE, HOSTILE, carried=(HOSTILE,)),
        cases=(first, second),
        entries=(ListEntry(item="x", label=HOSTILE, verdict="permitted", condition=HOSTILE),),
        values=(OpenValue(item="x", aspect="size", label=HOSTILE, values=YES, status="supported",
                          required=True),),
        derivation=(msgspec.structs.replace(DERIVATION, steps=(bad_step,), defeats=()),),
        citations=(cited,),
        cautions=(HOSTILE,),
        notes=(HOSTILE,),
        ask=Ask(fact="weather", prompt=HOSTILE, choices=(("a", HOSTILE),)),
        abstain=Abstain(reason=HOSTILE, words=(HOSTILE,), suggestions=(HOSTILE,)),
    )  # fmt: skip


def _raise(error: BaseException) -> Callable[[str], Answer]:
    def raising(_text: str) -> Answer:
        raise error

    return raising


CANNED: dict[str, Callable[[str], Answer]] = {
    "ashore": prohibited,
    "florgle": abstained,
    "badge": conflict,
    "spoon": silent,
    "gloves": which,
    "where": where,
    "what must": listing,
    "hostile": hostile,
    "crash": _raise(RuntimeError("a wheel came off\x1b[31m")),
    "slow": _raise(StoreUnavailableError("The deadline passed.")),
    "stop": _raise(KeyboardInterrupt()),
    "liner": conditional,
    "coat": permitted,
}


class FakeReport(msgspec.Struct, frozen=True):
    problems: tuple[Problem, ...]
    counts: tuple[tuple[str, int], ...]
    seconds: float
    rebuilt: bool


class FakeBase:
    """Stands in for `KnowledgeBase`; `asked` and `queries` record what it is asked."""

    digest = "f00d"

    def __init__(self, _opening: FakeOpening | None = None) -> None:
        self.lookup = little_lookup()
        self.asked: list[dict[str, Any]] = []
        self.queries: list[str] = []

    def ask(
        self,
        text: str,
        *,
        facts: tuple[tuple[str, ValueSet], ...] = (),
        as_of: datetime.date | None = None,
        previous: Reading | None = None,
    ) -> tuple[Answer, ...]:
        self.asked.append({"text": text, "facts": facts, "as_of": as_of, "previous": previous})
        if " and also " in text:
            return tuple(answer for part in text.split(" and also ") for answer in self.ask(part))
        if "liner" in text.lower() and "weather" in dict(facts):
            return (permitted(text),)
        for word, make in CANNED.items():
            if word in text.lower():
                return (make(text),)
        return (abstained(text),)

    def fact(self, name: str, value: str) -> tuple[str, ValueSet]:
        for fact in self.lookup.base.facts:
            for known in fact.values:
                if fact.id == name and value.lower() in (known.id.lower(), known.label.lower()):
                    return fact.id, choices(known.id)
        raise UsageError(f'"{value}" is no {name}.')

    def statement(self, text: str) -> tuple[tuple[str, ValueSet], ...]:
        found = []
        for fact in self.lookup.base.facts:
            for known in fact.values:
                if known.id.lower() in text.lower() or known.label.lower() in text.lower():
                    found.append((fact.id, choices(known.id)))
        if not found:
            raise UsageError(f'"{text}" is not understood.')
        return tuple(found)

    def say_facts(self, facts: tuple[tuple[str, ValueSet], ...]) -> str:
        said = []
        for name, values in facts:
            assert isinstance(values, Choices)
            said += [self.lookup.value_label(name, value) for value in sorted(values.members)]
        return ", ".join(said)

    def pack_facts(self, facts: tuple[tuple[str, ValueSet], ...]) -> bytes:
        return pack_facts(facts)

    def unpack_facts(self, data: bytes) -> tuple[tuple[tuple[str, ValueSet], ...], tuple[str, ...]]:
        return unpack_facts(data, self.lookup)

    def clause(self, reference: str) -> tuple[Clause, ...]:
        found = tuple(c for c in self.lookup.base.clauses if c.number == reference.split()[-1])
        if not found:
            raise UsageError(f'There is no clause "{reference}".')
        return found

    def rules_of(self, _clause: str) -> tuple[tuple[SimpleNamespace, str], ...]:
        return ((SimpleNamespace(note=None), "Keepers may wear the quilted liner alone in foul weather."),)

    bears = gainsays = begun_anew = put_right = staticmethod(lambda *_: None)
    in_focus = staticmethod(lambda *_: (None, ()))

    is_thanks = staticmethod(is_thanks)

    def reply(self, answer: Answer, text: str) -> tuple[tuple[str, ValueSet], ...]:
        assert answer.ask is not None
        for value, label in answer.ask.choices:
            if text.lower() in (value, label):
                return ((answer.ask.fact, choices(value)),)
        raise UsageError("That is none of the choices.")

    def query_terms(self) -> tuple[QueryTerm, ...]:
        return TERMS

    def run_query(self, text: str, *, deadline: float, row_limit: int) -> Table:
        self.queries.append(text)
        if deadline < 0.01:
            raise StoreUnavailableError("The deadline passed.")
        if text.startswith("ASK"):
            return Table(kind="ask", boolean=True)
        rows: tuple[tuple[Term | None, ...], ...] = (
            (Term("iri", "https://quay.example/item/coat"), Term("literal", "storm coat", XSD_STRING)),
            (Term("literal", "=1+1", XSD_STRING), None),
            (Term("literal", HOSTILE, XSD_STRING), Term("literal", text[:10], LANG_STRING, "en")),
            (Term("blank", "b0"), Term("literal", "5", "http://www.w3.org/2001/XMLSchema#integer")),
        )
        cut = row_limit < len(rows)
        return Table(kind="select", columns=("item", "label"), rows=rows[:row_limit], truncated=cut)


XSD_STRING = "http://www.w3.org/2001/XMLSchema#string"
LANG_STRING = "http://www.w3.org/1999/02/22-rdf-syntax-ns#langString"
PROBLEM = Problem(AT, "unknown-item", 'There is no item "cote".', 'Write "coat".')


def fake_build(books: object, _cache: object) -> FakeReport:
    return FakeReport((PROBLEM,) if "broken" in str(books) else (), (("items", 4), ("rules", 12)), 0.25, True)


def fake_export(_books: object, form: str, target: Any) -> bytes:
    data = f"# {form}\n".encode()
    if target is not None:
        target.write_bytes(data)
    return data


def fake_json(answer: Answer) -> bytes:
    said = {"question": answer.question, "verdict": answer.verdict}  # the shell puts it on one line
    return json.dumps(said, indent=1).encode()
