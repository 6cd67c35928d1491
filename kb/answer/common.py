"""Parts that every kind of answer shares: cautions, notes, and what to ask next."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Sequence

import msgspec

from kb.errors import UsageError
from kb.model.lookup import Lookup
from kb.model.months import facts_of_day
from kb.model.questions import (
    Answer,
    AnswerCase,
    Ask,
    Derivation,
    OpenValue,
    Query,
    Reading,
    Verdict,
)
from kb.model.records import Case
from kb.model.values import Choices, ValueSet
from kb.reasoner import Decision, Engine, Facts
from kb.wording import (
    clause_reference,
    listing,
    say_facts,
    say_query_on_its_day,
    say_rule,
    say_scope,
    sentence,
)

DEFERENCE = (
    "No dress rule restricts protective equipment where it is needed; "
    "local safety codes and the safety authority decide."
)


class Part(msgspec.Struct, frozen=True, kw_only=True):
    """What was worked out for one item and aspect: the table and the proof of each row."""

    item: str
    aspect: str
    cases: tuple[AnswerCase, ...]
    derivations: tuple[Derivation, ...]
    carriers: tuple[tuple[tuple[str, ...], ...], ...] = ()  # for each row, as `Problem.carrying_rules`

    @property
    def verdict(self) -> Verdict:
        verdicts = {case.verdict for case in self.cases}
        return self.cases[0].verdict if len(verdicts) == 1 and len(self.cases) == 1 else "conditional"


def decisive(decision: Decision, classes: Sequence[ValueSet]) -> tuple[str, ...]:
    """The rules without which an act's verdict would not stand."""
    by_value = {
        value: fate
        for values, fate in zip(classes, decision.fates, strict=True)
        if isinstance(values, Choices)
        for value in values.members
    }
    done, not_done = by_value["yes"], by_value["no"]
    chosen = {
        "required": not_done.closed_by,
        "prohibited": done.closed_by,
        "permitted": tuple(dict.fromkeys((*done.supported_by, *not_done.supported_by))),
        "not_required": not_done.supported_by,
        "silent": (),
    }.get(decision.verdict)
    return chosen if chosen is not None else decision.rules


_MANY_CHOICES = 8


def ask_for(
    lookup: Lookup, fact: str, possible: ValueSet | None = None, rows: Sequence[ValueSet] = ()
) -> Ask:
    """The question that asks for a fact, and its possible values (none for a quantity or date).

    Of many values those are offered that the rows of a table (their values of the fact) tell from the rest.
    """
    record = lookup.facts[fact]
    allowed = possible if possible is not None else lookup.domain(fact)
    names: Sequence[tuple[str, str]] = [(value.id, value.label) for value in record.values]
    if record.kind == "yes_no":
        names = [("yes", "yes"), ("no", "no")]
    choices = tuple(
        (value, label)
        for value, label in names
        if not isinstance(allowed, Choices) or (value in allowed.members) != allowed.complement
    )
    few = [row.members for row in rows if isinstance(row, Choices) and len(row.members) * 2 <= len(choices)]
    told = tuple(choice for choice in choices if any(choice[0] in members for members in few))
    if len(choices) <= _MANY_CHOICES or not 0 < len(told) < len(choices):
        return Ask(fact=fact, prompt=record.ask, choices=choices)
    return Ask(fact=fact, prompt=record.ask, choices=told, others=True)


_LONG = 12


def ask_of_table(lookup: Lookup, query: Query, cases: Sequence[AnswerCase]) -> Ask:
    """The question for what decides most in a table; of a long one for what is not mostly one way anyhow."""
    rows = [case.when for case in cases]
    asked = next(fact for row in rows for fact, _ in row)
    if len(cases) > _LONG:
        from kb.wording.unless import nearest_open  # noqa: PLC0415  few tables are long

        asked = nearest_open(lookup, query, rows)
    told = [values for row in rows for fact, values in row if fact == asked]
    return ask_for(lookup, asked, dict(query.case.facts).get(asked), told)


def refuse_exclusions(engine: Engine, case: Case, possible: dict[str, ValueSet]) -> None:
    """Raises `UsageError` where the facts of a case exclude each other."""
    if not engine.check_case(possible):
        stated = say_facts(engine.lookup, case.facts)
        raise UsageError(f"These facts exclude each other: {stated}. Take one of them back.")


def cautions(lookup: Lookup, items: Sequence[str], rules: Iterable[str]) -> tuple[str, ...]:
    """What a rule cautions, and the deference owed wherever an item protects."""
    cautioned = [lookup.rules[rule] for rule in rules if lookup.rules[rule].caution]
    spoken = {rule.caution: say_scope(lookup, rule.scope) for rule in reversed(cautioned)}
    texts = [f"{sentence(items, '')}: {caution}" for caution, items in reversed(spoken.items())]
    for item in items:
        related = (*lookup.broader(item), *lookup.narrower(item))
        protects = dict.fromkeys(p for i in related for p in lookup.items[i].protects)
        if protects:
            label = lookup.items[item].label
            texts.append(f"Protection ({', '.join(protects)}): {label}. {DEFERENCE}")
    return tuple(texts)


def list_cautions(lookup: Lookup, items: Sequence[str], rules: Iterable[str]) -> tuple[str, ...]:
    """As `cautions`, the items that protect all in one sentence."""
    guards = {item: ", ".join(lookup.items[item].protects) for item in items if lookup.items[item].protects}
    if len(guards) < 2:
        return cautions(lookup, tuple(guards), rules)
    named = "; ".join(f"{lookup.items[item].label} ({against})" for item, against in guards.items())
    return (
        *cautions(lookup, (), rules),
        f"Protection: {named}. No dress rule restricts protective equipment where it is needed; local safety "
        "codes and the safety authority decide.",
    )


def with_rule_notes(lookup: Lookup, answer: Answer) -> Answer:
    """The answer with what is remarked on the rules that carry it, each with its clause."""
    if answer.reading.query is not None and answer.reading.query.kind == "why":
        from kb.answer.purposes import with_purpose  # noqa: PLC0415  few questions ask why

        answer = with_purpose(lookup, answer)
    carrying = [lookup.rules[rule] for cited in answer.citations for rule in cited.rules]
    remarks = [f"{clause_reference(lookup, rule.clause)}: {rule.note}" for rule in carrying if rule.note]
    return replaced(answer, notes=tuple(dict.fromkeys((*remarks, *answer.notes)))) if remarks else answer


def _say_date(day: datetime.date) -> str:
    return f"{day.day} {day:%B %Y}"


def change_notes(engine: Engine, item: str, aspects: Sequence[str]) -> tuple[str, ...]:
    """Rules about exactly this item that begin or end after the day of the question."""
    lookup, day = engine.lookup, engine.as_of
    notes: list[str] = []
    for rule in lookup.base.rules:
        if item not in rule.scope.items or rule.aspect not in aspects:
            continue
        clause = lookup.clauses[rule.clause]
        title = f"{lookup.editions[clause.edition].label}, clause {clause.number}"
        if rule.valid_from > day:
            ahead = say_rule(lookup, rule, f"from {_say_date(rule.valid_from)},")
            notes.append(f"Changes ahead: {ahead} ({title})")
    record = lookup.items[item]
    if record.valid_until is not None:
        tense = "is" if record.valid_until > day else "has been"
        notes.append(f"{record.label}: {tense} out of use from {_say_date(record.valid_until)}.")
    if record.valid_from is not None and record.valid_from > day:
        notes.append(f"{record.label}: in use only from {_say_date(record.valid_from)}.")
    return tuple(dict.fromkeys(notes))


def dispute_notes(engine: Engine, facts: Iterable[str]) -> tuple[str, ...]:
    """Why a term that the answer depends on is unknown: two clauses define it differently."""
    lookup = engine.lookup
    notes = []
    for fact in dict.fromkeys(facts):
        if fact in engine.disputed:
            numbers = " and ".join(
                f"{lookup.editions[lookup.clauses[d.clause].edition].label} {lookup.clauses[d.clause].number}"
                for d in engine.disputed[fact]
            )
            notes.append(f"Clauses define “{lookup.facts[fact].label}” differently: {numbers}.")
    return tuple(notes)


def settling_notes(lookup: Lookup, cases: Iterable[AnswerCase]) -> tuple[str, ...]:
    """Who could settle the conflicts in a table: the highest authority behind the rules of each."""
    found = []
    for case in cases:
        if case.verdict == "conflict" and case.rules:
            behind = [lookup.authorities[lookup.rules[rule].authority] for rule in case.rules]
            highest = min(behind, key=lambda authority: authority.rank)
            clauses = dict.fromkeys(clause_reference(lookup, lookup.rules[r].clause) for r in case.rules)
            found.append(f"Only {highest.label} can settle this between {listing(tuple(clauses))}.")
    return tuple(dict.fromkeys(found))


def folded_notes(cases: Iterable[AnswerCase]) -> tuple[str, ...]:
    """What a row that depends on further facts means: there were more rows than a table shows."""
    if all(case.verdict != "conditional" for case in cases):
        return ()
    return (
        "Where a row says that it depends, further facts decide: state the facts of the row and ask again.",
    )


def replaced(answer: Answer, **changes: object) -> Answer:
    """The answer with some fields changed."""
    fields = {name: getattr(answer, name) for name in answer.__struct_fields__}
    return Answer(**{**fields, **changes})


def unused_value(answer: Answer) -> Answer:
    """Whether a thing may be worn, with the words of the value that was asked of it named as not used."""
    told = (span.text for span in answer.reading.spans if span.role in ("measure", "aspect"))
    left = (text for text in told if text not in answer.reading.unused)
    unused = (*answer.reading.unused, *left)
    return replaced(answer, reading=msgspec.structs.replace(answer.reading, unused=unused))


_MONTHS = 12


def on_its_day(
    lookup: Lookup, answer: Answer, today: datetime.date, tell: Callable[[Reading], Answer]
) -> Answer:
    """The answer with its day in the read-back, where the question is about another day than `today`.

    `tell` answers a reading: of a month that was named it is the answer on its days.
    """
    stated = answer.reading.query.case.facts if answer.reading.query is not None else ()
    if any(len(lookup.facts[fact].values) >= _MONTHS for fact, _ in stated):
        from kb.answer.monthly import in_the_month_to_come  # noqa: PLC0415  few questions name a month

        answer = in_the_month_to_come(answer, tell, lookup)
    query = answer.reading.query
    if query is None or query.case.as_of == today:
        return answer
    said = say_query_on_its_day(lookup, query)
    own = {one[0] for one in facts_of_day(query.case.as_of, lookup) if one in query.case.facts}
    kept = tuple(fact for fact in answer.reading.carried if fact not in own)  # the day says them
    return replaced(answer, reading=msgspec.structs.replace(answer.reading, text=said, carried=kept))


def row_label(lookup: Lookup, when: Facts) -> str:
    return say_facts(lookup, when) if when else "in every case"


def all_rules(cases: Iterable[AnswerCase]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(rule for case in cases for rule in case.rules))


def merged(values: Iterable[OpenValue]) -> tuple[OpenValue, ...]:
    return tuple(dict.fromkeys(values))


def told_once(answers: Sequence[Answer]) -> list[Answer]:
    """Answers without those that say of B with A what is said already of A with B."""
    found: dict[object, Answer] = {}
    for answer in answers:
        query = answer.reading.query
        clauses = tuple(citation.clause for citation in answer.citations)
        mirrored = query is not None and len(query.items) > 1 and clauses
        key = (frozenset(query.items), answer.verdict, clauses) if query and mirrored else len(found)
        found.setdefault(key, answer)
    return list(found.values())
