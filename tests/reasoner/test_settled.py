"""Points on which the reasoner and the outside proof differed; each is settled by the written semantics."""

from __future__ import annotations

import datetime
from fractions import Fraction

import pytest

from kb.errors import UsageError
from kb.model.conditions import ALWAYS, Condition, Test, all_of
from kb.model.lookup import Lookup
from kb.model.records import Case, Clause, Definition, Delegation, Fact, Scope
from kb.model.values import NO, YES, Interval, ValueSet, choices, ranges
from kb.reasoner import Engine, possible_facts, rows
from kb.reasoner.space import constraints, implies
from tests.little import AT, DAY, base, fact, rule

KINDS = {"headgear": (), "cap": ("headgear",), "hood": ("headgear",)}
FOUL = Test("weather", choices("foul"))


def verdicts(lookup: Lookup, item: str, **known: ValueSet) -> set[str]:
    facts = {name.replace("__", ":"): values for name, values in known.items()}
    engine = Engine(lookup, DAY)
    return {v for _, v in rows(engine.problem(engine.group(item, "wear"), facts).verdicts())}


def test_a_repair_that_covers_its_own_duty_does_not_decide_whether_the_duty_stands() -> None:
    duty = rule("duty", "must", "cap")
    repair = rule("repair", "must_not", "headgear", repairs="duty", exception_to=("duty",))
    lookup = base(duty, repair, items=KINDS)
    assert verdicts(lookup, "cap", worn__cap=YES, worn__headgear=YES) == {"required"}
    assert verdicts(lookup, "cap", worn__cap=NO) == {"prohibited"}
    assert verdicts(lookup, "hood", worn__cap=NO) == {"prohibited"}


GRANT = Delegation(id="d", clause="order/1/9", to="station", at=AT)


def test_two_rules_under_delegations_that_let_each_depart_from_the_other_are_a_tie() -> None:
    local = {"edition": "local/1", "authority": "station", "delegation": "d"}
    one = rule("a", "must", **local)  # type: ignore[arg-type]
    other = rule("b", "must_not", **local)  # type: ignore[arg-type]
    lookup = base(one, other, delegations=(GRANT,))
    assert Engine(lookup, DAY).precedence.win("a", "b") is None
    assert verdicts(lookup, "cap") == {"conflict"}


def test_such_a_tie_is_settled_by_the_lines_below() -> None:
    local = {"authority": "station", "delegation": "d"}
    one = rule("a", "must", edition="local/1", **local)  # type: ignore[arg-type]
    other = rule("b", "must_not", edition="local/2", **local)  # type: ignore[arg-type]
    later = {"local/2": datetime.date(2024, 1, 1)}
    lookup = base(one, other, delegations=(GRANT,), editions=later)
    win = Engine(lookup, DAY).precedence.win("a", "b")
    assert win is not None
    assert (win.winner, win.principle) == ("b", "edition")


def test_a_duty_to_wear_exactly_one_is_broken_by_wearing_two() -> None:
    duty = rule("duty", "must", scope=Scope(items=("cap", "hood"), alternatives="one"))
    repair = rule("repair", "must", "scarf", repairs="duty")
    items = {"cap": (), "hood": (), "scarf": ()}
    lookup = base(duty, repair, items=items)
    assert verdicts(lookup, "scarf", worn__cap=YES, worn__hood=YES) == {"required"}
    assert verdicts(lookup, "scarf", worn__cap=NO, worn__hood=NO) == {"required"}
    assert verdicts(lookup, "scarf", worn__cap=YES, worn__hood=NO) == {"silent"}


def test_an_exclusion_about_narrower_items_bears_on_the_broader_one() -> None:
    """One of cap and hood is always worn, so headgear is."""
    bare = all_of([Test("worn:cap", NO), Test("worn:hood", NO)])
    lookup = base(items=KINDS, exclusions=(bare,))
    assert implies(ALWAYS, Test("worn:headgear", YES), lookup)
    (limit, *_) = constraints([Test("worn:headgear", YES)], lookup)
    assert limit != ALWAYS


def test_a_case_is_checked_against_the_kinds_of_what_is_worn() -> None:
    rain_bares = all_of([Test("worn:headgear", YES), FOUL])
    bare = all_of([Test("worn:cap", NO), Test("worn:hood", NO)])
    weather = fact("weather", "fair", "foul")
    engine = Engine(base(items=KINDS, facts=(weather,), exclusions=(rain_bares, bare)), DAY)
    assert not engine.check_case({"weather": choices("foul")})
    assert engine.check_case({"weather": choices("fair")})


def possible(lookup: Lookup, *items: str, wearing: bool = False, **known: ValueSet) -> dict[str, ValueSet]:
    facts = tuple((name.replace("__", ":"), values) for name, values in known.items())
    return possible_facts(Case(as_of=DAY, facts=facts), items, wearing, lookup)


def test_wearing_a_kind_of_thing_and_not_the_thing_is_no_case() -> None:
    lookup = base(rule("a", "must_not", "cap", when=Test("worn:headgear", YES)), items=KINDS)
    engine = Engine(lookup, DAY)
    for order in ({"worn__hood": YES, "worn__headgear": NO}, {"worn__headgear": NO, "worn__hood": YES}):
        known = possible(lookup, "cap", **order)  # type: ignore[arg-type]
        assert not engine.check_case(known)
        with pytest.raises(UsageError):
            engine.problem(engine.group("cap", "wear"), known).verdicts()


def test_the_question_has_the_last_word_on_what_it_asks_about() -> None:
    lookup = base(items=KINDS)
    known = possible(lookup, "cap", wearing=True, worn__headgear=NO)
    assert (known["worn:cap"], known["worn:headgear"]) == (YES, YES)


def test_alone_leaves_nothing_open_of_a_kind_that_is_not_worn() -> None:
    """Headgear is not worn, so neither is the cap, though the case leaves that open."""
    lookup = base(items={**KINDS, "scarf": ()})
    case = Case(as_of=DAY, facts=(("worn:cap", choices("yes", "no")),), alone=True)
    assert possible_facts(case, ("scarf",), False, lookup)["worn:cap"] == NO


def test_what_alone_leaves_open_is_closed_by_a_kind_that_is_not_worn() -> None:
    """Whether the cap is worn is left open, but no clothes are worn and a cap is some: the exemption is off.

    What is worn "alone" is neither asked about nor said to be worn (page on meaning, "What is not known").
    """
    exempt = rule("exempt", "need_not", "headgear")
    ends = rule("ends", "need_not", "clothes", when=Test("worn:cap", NO), disables=("exempt",))
    items = {"clothes": (), "headgear": (), "cap": ("clothes", "headgear")}
    lookup = base(exempt, ends, items=items)
    case = Case(as_of=DAY, facts=(("worn:cap", choices("yes", "no")),), alone=True)
    engine = Engine(lookup, DAY)
    group = engine.group("headgear", "wear")
    alone = possible_facts(case, ("headgear",), False, lookup)
    assert rows(engine.problem(group, alone).verdicts()) == (((), "silent"),)
    with_others = possible_facts(Case(as_of=DAY, facts=case.facts), ("headgear",), False, lookup)
    table = {
        dict(when)["worn:cap"]: said for when, said in rows(engine.problem(group, with_others).verdicts())
    }
    assert table == {YES: "not_required", NO: "silent"}


def test_between_one_day_and_the_next_there_is_none() -> None:
    """Up to the 31st and before the 1st are the same days, so neither rule is more specific."""
    day = Fact(id="awarded-on", label="award", ask="?", kind="date", at=AT)
    last = Fraction(datetime.date(2026, 3, 31).toordinal())
    until: Condition = Test("awarded-on", ranges([Interval(high=last)]))
    before: Condition = Test("awarded-on", ranges([Interval(high=last + 1, high_open=True)]))
    lookup = base(rule("a", "must", when=until), rule("b", "must_not", when=before), facts=(day,))
    assert implies(before, until, lookup)
    assert Engine(lookup, DAY).precedence.win("a", "b") is None


def test_a_defined_term_is_written_out_in_what_is_never_together() -> None:
    winter = Fact(id="winter", label="winter", ask="?", kind="yes_no", family="term", at=AT)
    defined = Definition(term="winter", condition=FOUL, clause="order/1/1", at=AT)
    never = all_of([Test("winter", YES), Test("hauling", YES)])
    lookup = base(
        rule("a", "must", when=all_of([FOUL, Test("hauling", YES)])),
        facts=(fact("weather", "fair", "foul"), fact("hauling"), winter),
        exclusions=(never,),
    )
    clause = Clause(
        id="order/1/1", edition="order/1", number="1", text="Text.", kind="definition", valid_from=DAY, at=AT
    )
    changed = type(lookup.base)(
        **{name: getattr(lookup.base, name) for name in lookup.base.__struct_fields__}
        | {"definitions": (defined,), "clauses": (clause,)}
    )
    assert verdicts(Lookup(changed), "cap") == {"silent"}
    assert not Engine(Lookup(changed), DAY).check_case({"weather": choices("foul"), "hauling": YES})
