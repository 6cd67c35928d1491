"""Put an answer together: the kind of question decides which part is worked out."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from kb.answer.acts import (
    act_answer,
    carriers,
    closes_all,
    is_banned,
    is_named_so,
    is_way,
    wear_question,
)
from kb.answer.alike import with_beside
from kb.answer.aspects import aspect_part, aspects_of
from kb.answer.beside import claim_notes, parted_from, silence_notes, with_company, with_duties, worn_notes
from kb.answer.changes import allowing, turning_changes
from kb.answer.citing import citations
from kb.answer.common import (
    Part,
    all_rules,
    ask_of_table,
    cautions,
    change_notes,
    dispute_notes,
    folded_notes,
    list_cautions,
    refuse_exclusions,
    replaced,
    settling_notes,
    unused_value,
    with_rule_notes,
)
from kb.answer.kinds import is_value_question, kinds_that_differ, the_kind_worn
from kb.answer.units import unit_notes, unworn_notes
from kb.model.questions import Answer, Ask, OpenValue, Query, Reading, Side, Verdict
from kb.model.records import OWNED_ASPECTS
from kb.model.values import NO, YES, ValueSet
from kb.reasoner import WORN, Engine, possible_facts
from kb.wording import is_place, say_query, say_verdict, say_when, the_item

_MOST_KINDS = 20


def answer_query(engine: Engine, reading: Reading, digest: str) -> Answer:
    """The answer to a reading; without a query, what to ask back or why nothing is answered.

    Raises `UsageError` when the stated facts exclude each other.
    """
    query = reading.query
    blank = Answer(
        question=reading.question,
        as_of=engine.as_of.isoformat(),
        kb=digest,
        outcome="ask" if reading.ask else "abstain",
        reading=reading,
        ask=reading.ask,
        abstain=reading.abstain,
    )
    if query is None:
        return blank
    engine = engine.as_such() if query.as_such else engine
    possible = possible_facts(query.case, query.items, False, engine.lookup)
    refuse_exclusions(engine, query.case, possible)
    if query.other is not None:
        refuse_exclusions(
            engine.on(query.other.as_of), query.other, possible_facts(query.other, (), False, engine.lookup)
        )
    kinds = kinds_that_differ(engine, query)
    of_one = kinds[0] if len(kinds) == 1 else the_kind_worn(engine, query, kinds)
    if of_one is not None and is_value_question(engine, query):
        return _answer_as(engine, msgspec.structs.replace(query, items=(of_one, *query.items[1:])), blank)
    claimed = is_way(engine.lookup, query) or (query.kind != "how" and is_value_question(engine, query))
    if claimed and is_banned(engine, query):
        return _answer_as_banned(engine, query, blank)
    if claimed and query.kind == "may" and engine.lookup.aspects[query.aspect].kind == "count":
        whole = msgspec.structs.replace(query, as_such=True)  # how many of a class of which none is worn
        if closes_all(engine.as_such(), whole):
            return _answer_as_worn(engine, whole, blank)
    if kinds:
        ask = _ask_which(engine, query, kinds)
        return replaced(blank, outcome="ask", ask=ask, reading=_asking(reading, ask))
    return with_rule_notes(engine.lookup, _KINDS.get(query.kind, _act)(engine, query, blank))


def _answer_as(engine: Engine, query: Query, blank: Answer) -> Answer:
    """The answer to another question than was asked, which tells what was asked for."""
    said = msgspec.structs.replace(blank.reading, query=query, text=say_query(engine.lookup, query))
    return answer_query(engine, said, blank.kb)


def _answer_as_worn(engine: Engine, query: Query, blank: Answer) -> Answer:
    """Whether the thing may be worn, in place of how, how many or where."""
    return _answer_as(engine, wear_question(engine.lookup, query), blank)


def _answer_as_banned(engine: Engine, query: Query, blank: Answer) -> Answer:
    """Whether it may be worn, and what of the value asked about; one that is forbidden is the firmer no."""
    worn = _answer_as_worn(engine, query, blank)
    if query.value is None:
        return worn
    if worn.verdict == "prohibited":
        return unused_value(worn)
    so = with_rule_notes(engine.lookup, _values(engine, query, blank))
    if so.reading.query != query or so.verdict == "silent":
        return unused_value(worn)
    return so if so.verdict == "prohibited" else with_beside(worn, (f"{so.reading.text} {so.headline}",))


def _answer_as_place(engine: Engine, query: Query, blank: Answer) -> Answer | None:
    """When the thing is worn, in place of where on the body, if that turns on where somebody is."""
    plain = msgspec.structs.replace(wear_question(engine.lookup, query), kind="when")
    answer = _answer_as(engine, plain, blank)
    facts = {fact for case in answer.cases for fact, _ in case.when}
    return answer if any(is_place(engine.lookup, fact) for fact in facts) else None


def _asking(reading: Reading, ask: Ask) -> Reading:
    """The reading as one that asks, so that a reply finds its place."""
    return Reading(question=reading.question, spans=reading.spans, ask=ask)


def _ask_which(engine: Engine, query: Query, items: Sequence[str]) -> Ask:
    label = engine.lookup.items[query.items[0]].label
    choices = tuple((item, engine.lookup.items[item].label) for item in items[:_MOST_KINDS])
    return Ask(fact="item", prompt=f"Which {label}?", choices=choices)


def _act(engine: Engine, query: Query, blank: Answer) -> Answer:
    """May, must, when, why."""
    if engine.lookup.aspects[query.aspect].kind != "act":
        return _values(engine, query, blank)
    part = act_answer(engine, query)
    open_ = (verdict := part.verdict) not in ("prohibited", "conflict")
    company: tuple[str, ...] = ()
    if open_ and (query.case.alone or any(values == NO for _, values in query.case.facts)):
        from kb.answer.lacking import company_note, lacking  # noqa: PLC0415  few questions leave a thing off

        without = lacking(engine, query, part, blank.reading.carried)
        if without is not None:
            return _answer_as(engine, without, blank)
        company = company_note(engine, query, blank.reading.carried) if query.kind == "may" else ()
    if open_ and (parted := parted_from(engine, query)) is not None:
        return _answer_as(engine, parted, blank)
    cited = carriers(engine.lookup, query, part)
    both = any(case.verdict == "conflict" for case in part.cases)
    answer = _finish(engine, query, blank, [part], verdict, cited, both)
    if query.kind == "may" and verdict == "required" and (worn := _worn_so(engine, query, answer)):
        return worn
    answer = with_duties(engine, query, replaced(answer, notes=(*company, *answer.notes)), verdict)
    if query.case.facts:
        from kb.answer.nearly import with_nearly, without_idle  # noqa: PLC0415  many tell nothing

        answer = with_nearly(engine, query, without_idle(engine, query, part, answer))
    if query.case.alone:
        from kb.answer.lacking import said_alone  # noqa: PLC0415

        answer = said_alone(engine, query, answer)
    answer = with_company(engine, query, answer) if open_ else answer
    if query.kind == "when" and len(part.cases) > 1 and part.aspect == query.aspect:
        times = say_when(engine.lookup, query, [(case.when, case.verdict) for case in part.cases])
        answer = replaced(answer, headline=times or answer.headline)
    if len(part.cases) > 1 and query.aspect == "wear":
        from kb.answer.limits import within_limits  # noqa: PLC0415  for tables only

        return replaced(answer, headline=within_limits(engine, query, part, answer.headline))
    if len(part.cases) > 1 or part.aspect != query.aspect:
        return answer
    others = tuple(item for item in query.items if item != part.item)
    possible = possible_facts(query.case, (part.item, *others), False, engine.lookup)
    changes = turning_changes(engine, engine.group(part.item, part.aspect), possible, verdict)
    answer = replaced(answer, changes=changes)
    allowed = allowing(engine.lookup, query, part.cases[0], changes)
    known = {citation.clause for citation in answer.citations}
    beside = citations(engine.lookup, [(rule,) for rule, _ in allowed])
    return replaced(
        answer,
        notes=(*(note for _, note in allowed), *answer.notes),
        citations=(*answer.citations, *(found for found in beside if found.clause not in known)),
    )


def _values(engine: Engine, query: Query, blank: Answer) -> Answer:
    """Where, how, how many, and claims about values."""
    item = query.items[0]
    wearing = query.aspect not in OWNED_ASPECTS
    possible = possible_facts(query.case, query.items, wearing, engine.lookup)
    parts = _spoken(engine, query, aspects_of(engine, item, query.aspect), possible)
    if not parts and query.value is None:
        parts = _spoken(engine, query, _akin(engine, item, query), possible)
    if not parts:
        alike = not kinds_that_differ(engine, wear_question(engine.lookup, query))
        if is_named_so(engine.lookup, query) or is_banned(engine, query, alike):
            worn = _answer_as_worn(engine, query, blank)
            return worn if is_named_so(engine.lookup, query) else unused_value(worn)
        if query.kind == "where" and (places := _answer_as_place(engine, query, blank)):
            return places
        silent = _finish(engine, query, blank, [], "silent", cited=[])
        notes = (*silent.notes, *worn_notes(engine, query), *silence_notes(engine, query))
        return replaced(silent, notes=notes)
    verdicts = [part.verdict for part in parts]
    verdict: Verdict = verdicts[0] if len(set(verdicts)) == 1 else "required"
    if "conditional" in verdicts:
        verdict = "conditional"
    if "conflict" in verdicts:
        verdict = "conflict"
    cases = [case for part in parts for case in part.cases]
    spoken = [value.rules for case in cases for value in case.values if value.rules]
    both = verdict == "conflict"
    cited = spoken if spoken and not both else [case.rules for case in cases]
    answer = _finish(engine, query, blank, parts, verdict, cited=cited, both=both)
    beside = (*claim_notes(engine, query), *unworn_notes(engine, query, cases))
    return replaced(answer, notes=(*unit_notes(engine, query), *answer.notes, *beside))


def _worn_so(engine: Engine, query: Query, answer: Answer) -> Answer | None:
    """That a thing may be worn, to who asks whether it may be in just the way that it must be worn in."""
    manner = engine.lookup.aspects[query.aspect].within
    if manner is None or manner in engine.lookup.aspects_within("care") or query.polarity == "not":
        return None
    worn = _answer_as_worn(engine, query, answer)
    if worn.verdict not in ("permitted", "required"):
        return None
    way = say_verdict(engine.lookup, "required", msgspec.structs.replace(query, kind="why"))
    known = {(citation.edition, citation.number) for citation in worn.citations}
    cited = (*worn.citations, *(c for c in answer.citations if (c.edition, c.number) not in known))
    headline = worn.headline if way.partition(" must ")[2] in worn.headline else f"{worn.headline} {way}"
    return replaced(worn, headline=headline, citations=cited)


def _spoken(
    engine: Engine, query: Query, aspects: Sequence[str], possible: dict[str, ValueSet]
) -> list[Part]:
    """The parts of the aspects of which the books say anything."""
    item, claim, bound = query.items[0], query.value, query.kind == "must"
    worn = frozenset(name.removeprefix(WORN) for name, values in query.case.facts if values == YES)
    on = worn if query.kind in ("where", "how") else frozenset[str]()
    parts = [aspect_part(engine, item, aspect, possible, claim, bound, on) for aspect in aspects]
    return [part for part in parts if any(case.verdict != "silent" for case in part.cases)]


def _akin(engine: Engine, item: str, query: Query) -> tuple[str, ...]:
    """Aspects that answer the same question in other words, where the one asked about has no rule.

    A place may be given as a manner ("under the jersey"), a length as how far something reaches.
    """
    aspects = engine.lookup.aspects
    wanted: tuple[str, ...] = ()
    if query.kind == "where":
        manners = [a for a, record in aspects.items() if record.kind == "manner" and a != "care"]
        wanted = tuple(a for a, record in aspects.items() if record.within in manners)
    elif aspects[query.aspect].kind == "measure":
        sizes = engine.lookup.aspects_within("size")
        measures = [a for a, record in aspects.items() if record.kind == "measure"]
        if query.aspect == "size":
            wanted = tuple(a for a in measures if a in sizes)
        elif query.aspect in ("height", "length"):
            wanted = tuple(a for a in measures if a not in sizes)
        elif query.aspect not in sizes:
            wanted = tuple(measures)
    return tuple(a for a in aspects_of(engine, item, "wear") if a in wanted)


def _people(engine: Engine, query: Query, blank: Answer) -> Answer:
    possible = possible_facts(query.case, query.items, False, engine.lookup)
    from kb.answer.people import people_part  # noqa: PLC0415  few questions ask who
    from kb.wording import say_list_headline  # noqa: PLC0415

    part, entries = people_part(engine, query, possible)
    cited = [case.rules for case in part.cases]
    answer = _finish(engine, query, blank, [part], part.verdict, cited=cited)
    headline = say_list_headline(engine.lookup, query, entries)
    told = None if answer.verdict == "conditional" else answer.verdict  # each kind of person has its own
    return replaced(answer, entries=entries, headline=headline, verdict=told, ask=None)


def _list(engine: Engine, query: Query, blank: Answer) -> Answer:
    from kb.answer.lists import list_answer  # noqa: PLC0415  few questions ask for a list

    return list_answer(engine, query, blank)


def _compare(engine: Engine, query: Query, blank: Answer) -> Answer:
    """What differs between two cases, or between two items."""
    lookup = engine.lookup
    from kb.answer.amending import with_amending  # noqa: PLC0415  few questions compare
    from kb.answer.comparing import compare  # noqa: PLC0415
    from kb.wording import say_comparison, say_open_alike, say_sides  # noqa: PLC0415

    found = compare(engine, query)
    both = [side for one in found.differences for side in one.sides]
    if query.other is not None:
        names = say_sides(lookup, query.case, query.other)
    else:
        names = (the_item(lookup, query.items[0]), the_item(lookup, query.items[1]))
    rules = tuple(dict.fromkeys(rule for side in both for rule in side.rules))
    items = tuple(dict.fromkeys((*query.items, *(side.item for side in both))))
    notes = settling_notes(lookup, [case for side in both for case in side.cases])
    notes = (*notes, *found.notes)
    if found.open_alike:
        notes = (*notes, say_open_alike(found.open_alike))
    answer = replaced(
        blank,
        outcome="answer",
        headline=found.lead + say_comparison(lookup, query, names, len(found.differences), found.alike),
        sides=names,
        differences=found.differences,
        citations=citations(lookup, [*found.naming, *(g for side in both for g in _carriers(side))]),
        cautions=list_cautions(lookup, items, rules),
        notes=notes,
    )
    answer = with_amending(engine, query, answer)
    return answer if found.differences or found.alike else replaced(answer, verdict="silent")


def _carriers(side: Side) -> list[tuple[str, ...]]:
    """For each row of a side the rules of which a clause is enough to carry it."""
    spoken = [value.rules for case in side.cases for value in case.values if value.rules]
    return spoken or [case.rules for case in side.cases] or [side.rules]


def _source(engine: Engine, query: Query, blank: Answer) -> Answer:
    from kb.answer.sources import source_answer  # noqa: PLC0415  few questions ask for a clause

    return source_answer(engine, query, blank)


def _finish(
    engine: Engine,
    query: Query,
    blank: Answer,
    parts: Sequence[Part],
    verdict: Verdict,
    cited: Sequence[tuple[str, ...]],
    both: bool = False,
) -> Answer:
    lookup = engine.lookup
    cases = tuple(case for part in parts for case in part.cases)
    open_facts = tuple(dict.fromkeys(fact for case in cases for fact, _ in case.when))
    plain = [case for part in parts if len(part.cases) == 1 for case in part.cases]
    values: tuple[OpenValue, ...] = tuple(value for case in plain for value in case.values)
    rules = all_rules(cases)
    ask = None
    if open_facts:
        ask = ask_of_table(lookup, query, cases)
    stated, alike = "", {case.verdict for case in cases}
    if query.value is not None and verdict == "conditional" and len(alike) == 1:
        stated = say_verdict(lookup, alike.pop(), query, rules=rules)  # what is left differs, the verdict not
    elif verdict == "conditional":
        from kb.wording import say_stated  # noqa: PLC0415  many answers have no table

        stated = say_stated(lookup, query, [part.cases for part in parts])
    answer = replaced(
        blank,
        outcome="answer",
        verdict=verdict,
        headline=stated
        or say_verdict(
            lookup,
            verdict,
            query,
            open_facts=open_facts,
            rows=[(case.when, case.verdict) for case in cases] if len(parts) == 1 else (),
            values=values,
            rules=rules,
        ),
        cases=cases,
        values=values,
        derivation=tuple(derivation for part in parts for derivation in part.derivations),
        citations=citations(lookup, cited, both, query.case.facts),
        cautions=cautions(lookup, query.items, rules),
        notes=(
            *folded_notes(cases),
            *settling_notes(lookup, cases),
            *change_notes(engine, query.items[0], [part.aspect for part in parts] or [query.aspect]),
            *dispute_notes(engine, open_facts),
        ),
        ask=ask,
    )
    if not any(lookup.clauses[cited.clause].replaces for cited in answer.citations):
        return answer
    from kb.answer.former import with_former  # noqa: PLC0415  few clauses stand in place of others

    return with_former(lookup, answer)


_KINDS: dict[str, Callable[[Engine, Query, Answer], Answer]] = {
    "where": _values,
    "how": _values,
    "how_many": _values,
    "who": _people,
    "list": _list,
    "compare": _compare,
    "source": _source,
}
