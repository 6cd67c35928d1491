"""What travels between reader, reasoner and screen: the query, its reading, and the answer."""

from __future__ import annotations

from typing import Literal

import msgspec

from kb.errors import Location
from kb.model.records import Case, Measure, Modality, Position
from kb.model.values import ValueSet

QuestionKind = Literal[
    "may", "must", "where", "how", "how_many", "who", "when", "list", "why", "compare", "source"
]
Verdict = Literal["required", "permitted", "prohibited", "not_required", "conflict", "silent", "conditional"]
SpanRole = Literal[
    "item", "fact", "grade", "aspect", "measure", "date", "clause", "structure", "filler", "unknown"
]
Outcome = Literal["answer", "ask", "abstain"]
Principle = Literal["exception", "delegation", "authority", "edition", "specificity"]
ValueStatus = Literal["contested", "closed", "supported", "unaddressed"]
RuleStatus = Literal["applies", "does_not_apply", "depends", "disabled", "not_in_force"]


class Query(msgspec.Struct, frozen=True, kw_only=True):
    """A structured question.

    `items` are asked about together (the first is the one asked about, the rest are worn with it);
    empty for a list. `aspect` is an aspect id; a broader one ("size") stands for all within it.
    `value` is a claimed value of the aspect ("may it be 2 in high?"). `polarity` "not" asks about
    going without ("may I leave the cap off?"). `clause` is a clause id for a source question, `book` the id
    of a book or edition that it is narrowed to; `modalities` narrows a list to what is required, permitted
    or prohibited. `other` is the second case of a comparison; without it two `items` are compared in one.
    `as_such` asks of something of the kind `items[0]` that no rule names.
    """

    kind: QuestionKind
    items: tuple[str, ...] = ()
    aspect: str = "wear"
    value: ValueSet | None = None
    polarity: Literal["do", "not"] = "do"
    case: Case
    clause: str | None = None
    modalities: tuple[Verdict, ...] = ()
    other: Case | None = None
    book: str | None = None
    as_such: bool = False


class Span(msgspec.Struct, frozen=True, kw_only=True):
    """A stretch of the question and what it was linked to; `start` and `end` count characters."""

    start: int
    end: int
    text: str
    role: SpanRole
    target: str | None = None
    how: Literal["label", "everyday", "index", "spelling", "pattern"] = "label"


class Ask(msgspec.Struct, frozen=True, kw_only=True):
    """What is missing: a fact id (or "item", "reading"), the question to put, `(value, label)` choices.

    `others`: it may have other values, too, which all come to the same.
    """

    fact: str
    prompt: str
    choices: tuple[tuple[str, str], ...] = ()
    others: bool = False


class Abstain(msgspec.Struct, frozen=True, kw_only=True):
    """Why nothing is answered: the words that were not understood, and at most three suggestions."""

    reason: str
    words: tuple[str, ...] = ()
    suggestions: tuple[str, ...] = ()


class Reading(msgspec.Struct, frozen=True, kw_only=True):
    """How a question was understood. Exactly one of `query`, `ask`, `abstain` is not None.

    `text` is the read-back, a positive sentence; `carried` names the facts kept from before or
    from the profile; `recent` the items named in the talk so far, the last first;
    `frame` the question about a thing that further words go on from, where this one shows a clause or lists;
    `unused` the clauses of the text that were set aside because the books know nothing in them; `beside` what
    else the words may ask, each with what the books say of it in a line.
    """

    question: str
    text: str = ""
    query: Query | None = None
    spans: tuple[Span, ...] = ()
    carried: tuple[str, ...] = ()
    ask: Ask | None = None
    abstain: Abstain | None = None
    recent: tuple[str, ...] = ()
    frame: Query | None = None
    unused: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()


class RuleStep(msgspec.Struct, frozen=True, kw_only=True):
    """What became of one candidate rule. `facts` are the tests that decided it, in words and as data.

    `alive` says whether it still closes or supports any value after precedence.
    """

    rule: str
    modality: Modality
    statement: str
    status: RuleStatus
    alive: bool
    facts: tuple[tuple[str, ValueSet], ...] = ()
    reason: str = ""
    disabled_by: tuple[str, ...] = ()
    clause: str
    text: str
    authority: str
    at: Location


class Defeat(msgspec.Struct, frozen=True, kw_only=True):
    """`winner` beats `loser` on one line of the order of precedence; `detail` says how, in words."""

    winner: str
    loser: str
    principle: Principle
    detail: str


class ValueFate(msgspec.Struct, frozen=True, kw_only=True):
    """One class of values of the aspect, what became of it, and the rules that decided it."""

    values: ValueSet
    status: ValueStatus
    closed_by: tuple[str, ...] = ()
    supported_by: tuple[str, ...] = ()


class Derivation(msgspec.Struct, frozen=True, kw_only=True):
    """The proof for one item and aspect in one fully decided case (`when` on top of the query's case)."""

    item: str
    aspect: str
    when: tuple[tuple[str, ValueSet], ...]
    verdict: Verdict
    steps: tuple[RuleStep, ...]
    defeats: tuple[Defeat, ...]
    fates: tuple[ValueFate, ...]


class OpenValue(msgspec.Struct, frozen=True, kw_only=True):
    """One value left open for an aspect; `label` is in words, `required` says that nothing else is open."""

    item: str
    aspect: str
    label: str
    values: ValueSet
    status: ValueStatus
    required: bool
    measure: Measure | None = None
    position: Position | None = None
    rules: tuple[str, ...] = ()


class AnswerCase(msgspec.Struct, frozen=True, kw_only=True):
    """One row of a decision table: `when` it holds, on top of what was known; `label` says it in words."""

    when: tuple[tuple[str, ValueSet], ...]
    label: str
    verdict: Verdict
    values: tuple[OpenValue, ...] = ()
    rules: tuple[str, ...] = ()


class ListEntry(msgspec.Struct, frozen=True, kw_only=True):
    """One line of a list: an item (or a holder, for "who") with its verdict and the rules behind it.

    `usual` is what holds where nothing is out of the ordinary, if the verdict depends on more.
    """

    item: str
    label: str
    verdict: Verdict
    usual: Verdict | None = None
    condition: str = ""
    values: tuple[OpenValue, ...] = ()
    rules: tuple[str, ...] = ()


class Side(msgspec.Struct, frozen=True, kw_only=True):
    """What one side of a comparison says of an item and aspect: its table, and the proof of each row.

    `text` says it in words; a line of a whole list has no table, only its verdict, and no proof.
    """

    item: str
    verdict: Verdict
    text: str
    cases: tuple[AnswerCase, ...] = ()
    derivation: tuple[Derivation, ...] = ()
    rules: tuple[str, ...] = ()


class Difference(msgspec.Struct, frozen=True, kw_only=True):
    """An aspect of an item in which the two sides of a comparison differ; `label` names it in words."""

    item: str
    aspect: str
    label: str
    sides: tuple[Side, Side]


class Change(msgspec.Struct, frozen=True, kw_only=True):
    """Facts that, were they so instead of as stated, would give another verdict; `label` in words.

    `rules` are those that would decide it then.
    """

    facts: tuple[tuple[str, ValueSet], ...]
    label: str
    verdict: Verdict
    rules: tuple[str, ...] = ()


class Citation(msgspec.Struct, frozen=True, kw_only=True):
    """A clause that carries the answer."""

    book: str
    edition: str
    title: str
    number: str
    clause: str
    text: str
    rules: tuple[str, ...] = ()
    at: Location


class Answer(msgspec.Struct, frozen=True, kw_only=True):
    """The answer to one question. `headline` is the verdict in words.

    `sides` names the two sides of a comparison, `differences` are all that it found. `speaking` are clauses
    to be read where nothing is answered, since they speak of what was asked; no verdict rests on them.
    """

    question: str
    as_of: str
    kb: str
    outcome: Outcome
    reading: Reading
    headline: str = ""
    verdict: Verdict | None = None
    cases: tuple[AnswerCase, ...] = ()
    values: tuple[OpenValue, ...] = ()
    entries: tuple[ListEntry, ...] = ()
    sides: tuple[str, ...] = ()
    differences: tuple[Difference, ...] = ()
    derivation: tuple[Derivation, ...] = ()
    changes: tuple[Change, ...] = ()
    citations: tuple[Citation, ...] = ()
    speaking: tuple[Citation, ...] = ()
    cautions: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    ask: Ask | None = None
    abstain: Abstain | None = None
