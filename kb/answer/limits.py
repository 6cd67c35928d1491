"""What a limit on numbers adds to an answer that depends on what else is worn."""

from __future__ import annotations

import msgspec

from kb.answer.acts import count_breach
from kb.answer.common import Part
from kb.model.questions import Query
from kb.model.values import NO
from kb.reasoner import WORN, Engine, possible_facts, rows
from kb.wording import listing, rule_reference, say_verdict, sentence, the_item
from kb.wording.english import is_plural


def within_limits(engine: Engine, query: Query, part: Part, headline: str) -> str:
    """The headline with the verdict in the cases that a limit on numbers leaves, where all have one.

    A limit can be broken, so that the table keeps the cases in which it is; but yes is not
    said of what only a broken limit allows.
    """
    lookup = engine.lookup
    known = {fact for fact, _ in query.case.facts}
    tested = dict.fromkeys(fact for case in part.cases for fact, _ in case.when if fact.startswith(WORN))
    out: dict[str, str] = {}
    for fact in tested:
        item = fact[len(WORN) :]
        if fact not in known and item in lookup.items and not set(query.items) & set(lookup.broader(item)):
            breach = count_breach(engine, msgspec.structs.replace(query, items=(*query.items, item)))
            if breach is not None and count_breach(engine, query) is None:
                out[item] = rule_reference(lookup, breach.cases[0].rules[0])
    if not out:
        return headline
    facts = (*query.case.facts, *((WORN + item, NO) for item in out))
    case = msgspec.structs.replace(query.case, facts=facts)
    others = tuple(item for item in query.items if item != part.item)
    possible = possible_facts(case, (part.item, *others), False, lookup)
    if not engine.check_case(possible):
        return headline
    problem = engine.problem(engine.group(part.item, part.aspect), possible)
    said = problem.said()
    if len(said) != 1 and not headline.startswith("Yes"):
        return headline
    things = listing([the_item(lookup, item) for item in out], "or")
    clauses = list(dict.fromkeys(out.values()))
    leave = "leave" if len(clauses) > 1 else "leaves"
    room = sentence(f"{listing(clauses)} {leave} no room for {things} as well")
    if len(said) > 1:
        table = rows(problem.verdicts())
        open_ = [fact for when, _ in table for fact, _ in when]
        left = say_verdict(lookup, "conditional", query, open_facts=open_, rows=table)
        return headline if left.startswith("Yes") else f"{left} {room}"
    verdict = say_verdict(lookup, next(iter(said)), query)
    if headline.startswith(("Yes", "Only when")) and verdict.startswith("No"):
        return f"{verdict} {room}"
    if headline.startswith(verdict.removesuffix(".")):
        return f"{headline} {room}"  # the table is said by what holds without them
    one = len(out) == 1 and not is_plural(lookup.items[next(iter(out))].label)
    return f"{headline} {room} Without {'it' if one else 'them'}: {verdict}"
