"""The good rule base in `good/`: every documented form, and the records that come of it."""

import datetime
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest

from kb.model.conditions import AllOf, AnyOf, Condition, NotOf, Test
from kb.model.lookup import Lookup
from kb.model.records import Rule, Scope
from kb.model.values import NO, YES, Choices, Interval, Ranges, choices, is_subset, point, ranges
from kb.sources import LoadResult, load_rule_base

GOOD = Path(__file__).parent / "good"
ORDER = "dress-order/2024"


@cache
def loaded() -> LoadResult:
    return load_rule_base(GOOD)


@cache
def lookup() -> Lookup:
    base = loaded().base
    assert base is not None
    return Lookup(base)


def rule(name: str) -> Rule:
    return lookup().rules[name if name.count("/") == 2 else f"{ORDER}/{name}"]


def values_of(condition: Condition, fact: str) -> object:
    """The values of the one test of a fact in a conjunction."""
    assert isinstance(condition, AllOf)
    (found,) = [p.values for p in condition.parts if isinstance(p, Test) and p.fact == fact]
    return found


def test_it_loads_without_a_problem_and_with_digests() -> None:
    assert loaded().problems == ()
    assert set(loaded().digests) == {path.name for path in GOOD.glob("*.yaml")}
    assert all(len(digest) == 64 for digest in loaded().digests.values())


# The vocabulary


def test_authorities_are_ranked_and_equals_share_a_rank() -> None:
    ranks = {a.id: a.rank for a in lookup().base.authorities}
    assert ranks == {"board": 0, "superintendent": 1, "station": 2, "pilot-station": 2}


def test_one_order_runs_through_all_ladders() -> None:
    grade = lookup().facts["grade"]
    assert " ".join(v.id for v in grade.values) == "H1 H2 H3 K1 K2 K3 K4 K5 K6 K7 W1 W2 W3"
    assert {v.id: v.group for v in grade.values}["K7"] == "keepers"
    assert (grade.kind, grade.family) == ("scale", "grade")


def test_ladders_and_groups_are_groups_of_grades() -> None:
    groups = lookup().groups
    assert groups["wardens"].members == ("W1", "W2", "W3")
    assert groups["petty-keepers"].members == ("K3", "K4", "K5")
    assert groups["watch-leaders"].members == ("K3", "K4", "K5", "W1")
    assert groups["keepers"].one == "keeper"
    assert groups["land"].fact == "place"


def test_facts_are_made_from_people_and_items() -> None:
    facts = lookup().facts
    assert facts["holds:diver"].family == "qualification"
    assert facts["holds:coxswain"].family == "appointment"
    assert facts["holds:medical-waiver"].family == "waiver"
    assert facts["winter"].family == "term"
    assert facts["worn:cap"].ask == "Is the cap worn?"
    assert facts["temperature"].unit == "Cel"
    assert {f"worn:{item.id}" for item in lookup().base.items} <= set(facts)


def test_an_authorisation_is_a_scale_of_authorities() -> None:
    fact = lookup().facts["granted:extreme-heat"]
    assert fact.kind == "scale"
    assert [v.id for v in fact.values] == ["none", "station", "pilot-station", "superintendent", "board"]


def test_items_keep_what_is_said_of_them() -> None:
    liner = lookup().items["storm-coat-liner"]
    assert liner.broader == ("garment", "feature")
    assert liner.part_of == "storm-coat"
    assert (liner.valid_from, liner.valid_until) == (datetime.date(2020, 1, 1), datetime.date(2030, 1, 1))
    assert liner.care_note == "Dry flat."
    assert lookup().items["storm-coat"].protects == ("cold", "rain")
    assert lookup().broader("old-smock") == ("old-smock", "smock", "outer-garment", "garment", "anything")


def test_aspects_are_added_to_and_declared() -> None:
    aspects = lookup().aspects
    assert [v.id for v in aspects["colour"].values] == ["gilt", "silver"]
    assert (aspects["tarring"].verb, aspects["tarring"].done) == ("tar", "tarred")
    assert (aspects["sheen"].kind, aspects["sheen"].within) == ("choice", "finish")
    assert set(lookup().aspects_within("size")) == {
        "size", "height", "width", "length", "diameter", "letter-height",
    }  # fmt: skip


def test_exclusions_are_conditions() -> None:
    (exclusion,) = lookup().base.exclusions
    assert exclusion == AllOf((Test("place", choices("afloat")), Test("activity", choices("parade"))))


# Books, clauses, time


def test_a_later_edition_ends_the_earlier_one() -> None:
    assert lookup().editions["dress-order/2019"].valid_until == datetime.date(2024, 3, 1)
    assert lookup().editions[ORDER].valid_until == datetime.date(2030, 1, 1)
    assert lookup().editions["station-order/2025"].label == "Station Order, 2025"
    assert rule("dress-order/2019/cap-worn").valid_until == datetime.date(2024, 3, 1)


def test_a_clause_keeps_text_part_and_place() -> None:
    clause = lookup().clauses[f"{ORDER}/4.12"]
    assert clause.text.startswith("Deck gloves may be worn")
    assert (clause.heading, clause.part, clause.kind) == ("Deck gloves", "Foul weather", "rule")
    assert str(clause.at) == "order-2024-1.yaml:27:5"
    assert lookup().clauses[f"{ORDER}/6.1"].part == "Insignia"


def test_a_replaced_clause_ends_with_its_rules() -> None:
    clause = lookup().clauses[f"{ORDER}/4.12"]
    assert clause.valid_until == datetime.date(2026, 4, 1)
    assert clause.replaced_by == "interim-notice/2026/1"
    assert rule("4.12-1").valid_until == datetime.date(2026, 4, 1)
    assert lookup().clauses["interim-notice/2026/1"].replaces == (f"{ORDER}/4.12",)


def test_a_repealed_clause_ends_on_the_day_of_the_repealing_clause() -> None:
    clause = lookup().clauses[f"{ORDER}/4.13"]
    assert clause.valid_until == datetime.date(2026, 5, 1)
    assert clause.replaced_by is None
    assert lookup().clauses["interim-notice/2026/2"].repeals == (f"{ORDER}/4.13",)


def test_an_amendment_passes_over_a_clause_that_ended_before() -> None:
    assert lookup().clauses["dress-order/2019/4.12"].valid_until == datetime.date(2024, 3, 1)
    assert lookup().clauses["dress-order/2019/4.12"].replaced_by is None


def test_delegations_definitions_and_tolerances() -> None:
    delegation = lookup().delegations[f"{ORDER}/local-gloves"]
    assert (delegation.to, delegation.clauses, delegation.items) == (
        "station",
        (f"{ORDER}/4.12",),
        ("gloves",),
    )
    assert lookup().delegations[f"{ORDER}/local-strictness"].allows == "stricter"
    (definition,) = lookup().base.definitions
    assert definition.condition == Test("temperature", ranges([Interval(None, Fraction(5), False, True)]))
    assert [t.allow for t in lookup().base.tolerances] == [Fraction(25400, 8000), Fraction(25400, 4000)]


# Conditions


def test_a_condition_of_every_form() -> None:
    condition = rule("every-condition").condition
    assert isinstance(condition, AllOf)
    grades, more = [p.values for p in condition.parts if isinstance(p, Test) and p.fact == "grade"]
    assert grades == choices("H1", "H2", "H3", "W1", "W2", "W3")
    assert more == choices("K5", "K6", "K7", "W1", "W2", "W3")
    assert values_of(condition, "rig") == choices("boat-rig", "watch-rig")
    assert values_of(condition, "hauling") == YES
    assert values_of(condition, "temperature") == Ranges((Interval(Fraction(30), None, low_open=True),))
    last = Fraction(datetime.date(2019, 4, 1).toordinal())
    assert values_of(condition, "awarded-on") == Ranges((Interval(None, last, high_open=True),))
    assert values_of(condition, "sea-state") == choices("choppy", "rough")
    assert values_of(condition, "worn:storm-coat") == YES
    assert values_of(condition, "holds:diver") == YES
    assert values_of(condition, "granted:extreme-heat") == choices("superintendent", "board")
    assert NotOf(Test("place", choices("ashore", "town", "market"))) in condition.parts
    assert NotOf(Test("holds:medical-waiver", YES)) in condition.parts
    assert NotOf(Test("granted:shirt-order", choices("board"))) in condition.parts
    either = AnyOf(
        (
            Test("activity", choices("boarding")),
            AllOf((Test("activity", choices("hauling-lines")), Test("weather", choices("foul")))),
        )
    )
    assert either in condition.parts
    assert {Test("worn:scarf", YES), Test("worn:cap", YES)} <= set(condition.parts)


def test_a_group_and_a_place_take_in_all_within() -> None:
    condition = rule("on-land").condition
    assert values_of(condition, "place") == choices("ashore", "town", "market")
    assert values_of(condition, "sea-state") == choices("choppy", "rough")


def test_a_list_under_unless_is_any_of_them() -> None:
    condition = rule("foul-or-hauling").condition
    assert condition == NotOf(AnyOf((Test("weather", choices("foul")), Test("hauling", YES))))


# Rules


@pytest.mark.parametrize(
    ("name", "modality", "aspect", "items"),
    [
        ("5.1-1", "must", "wear", ("cap",)),
        ("5.1-2", "must_not", "wear", ("smock",)),
        ("5.1-3", "may", "wear", ("scarf",)),
        ("5.1-4", "need_not", "wear", ("collar",)),
        ("own-cap", "must", "possession", ("cap",)),
        ("torches", "may", "carrying", ("torch",)),
        ("no-pins", "must_not", "piercing", ("storm-coat",)),
        ("tarred", "must_not", "tarring", ("new-smock",)),
        ("both-jersey", "must", "wear", ("jersey",)),
        ("both-trousers", "must", "wear", ("trousers",)),
    ],
)
def test_acts(name: str, modality: str, aspect: str, items: tuple[str, ...]) -> None:
    found = rule(name)
    assert (found.modality, found.aspect, found.scope.items) == (modality, aspect, items)
    assert found.value.values == YES
    assert found.authority == "board"
    assert found.clause == f"{ORDER}/5.1"


def test_alternatives_are_one_duty_over_a_set() -> None:
    assert rule("feet").scope == Scope(items=("boots", "shoes"), alternatives="one")
    assert rule("neck").scope == Scope(items=("scarf", "collar"), alternatives="any")


def test_otherwise_holds_for_all_other_grades_and_each_item() -> None:
    others = Test("grade", choices("H1", "H2", "H3"))
    for item in ("boots", "shoes"):
        found = rule(f"feet-{item}-otherwise")
        assert (found.modality, found.condition) == ("may", others)
        assert found.scope == Scope(items=(item,))
    officers = Test("grade", choices("W1", "W2", "W3"))
    assert rule("smock-may-otherwise").modality == "must_not"
    assert rule("smock-may-otherwise").condition == officers


def test_only_closes_the_rest_of_the_class_and_grants_if_it_says_so() -> None:
    coats = rule("coats")
    assert coats.modality == "must_not"
    assert coats.scope == Scope(items=("outer-garment",), excluding=("storm-coat", "smock"))
    assert f"{ORDER}/coats-storm-coat" not in lookup().rules
    assert rule("badges-diver-badge").modality == "may"


def test_not_together_forbids_each_while_the_other_is_worn() -> None:
    assert rule("one-at-neck-scarf").condition == Test("worn:collar", YES)
    assert rule("one-at-neck-collar").condition == Test("worn:scarf", YES)
    assert rule("one-at-neck-collar").modality == "must_not"


def test_phase_out_ends_what_permits_exactly_that() -> None:
    out = rule("smock-out")
    assert (out.modality, out.valid_from) == ("must_not", datetime.date(2026, 10, 1))
    assert out.exception_to == (f"{ORDER}/smock-may",)
    assert rule("smock-in").modality == "may"
    assert rule("smock-in").valid_from == datetime.date(2026, 3, 1)


def test_scope_and_residual() -> None:
    assert rule("nothing-else").residual
    assert rule("nothing-else").scope == Scope(items=("anything",), excluding=("grooming",))
    assert not rule("smock-itself").scope.narrower


def test_links_dates_and_remarks_of_a_rule() -> None:
    off = rule("cap-off")
    assert off.exception_to == (f"{ORDER}/5.1-1", f"{ORDER}/4.12-1", f"{ORDER}/4.12-2")
    assert off.disables == (f"{ORDER}/smock-may", f"{ORDER}/smock-may-otherwise")
    assert off.repairs == f"{ORDER}/neck"
    assert off.non_derogable
    assert (off.valid_from, off.valid_until) == (datetime.date(2024, 6, 1), datetime.date(2027, 1, 1))
    assert (off.note, off.caution) == ("On the water.", "Hold on to it.")


def test_a_lower_authority_departs_under_a_delegation() -> None:
    gloves = rule("station-order/2025/gloves-on")
    assert gloves.delegation == f"{ORDER}/local-gloves"
    assert gloves.authority == "station"
    assert gloves.non_derogable
    assert rule("station-order/2025/scarf-off").delegation == f"{ORDER}/local-strictness"


# Aspects

MM = Fraction(254, 10)


def test_about_takes_the_tolerance_that_the_book_states() -> None:
    height = rule("strip-height")
    assert height.value.measure is not None
    assert height.value.measure.tolerance == MM / 8
    assert height.value.measure.interval == Interval(MM, MM)
    assert height.value.values == ranges([Interval(MM - MM / 8, MM + MM / 8)])


def test_about_takes_the_tolerance_beside_it_first() -> None:
    width = rule("strip-width").value
    assert width.measure is not None
    assert width.measure.tolerance == MM / 2
    assert width.values == ranges([Interval(MM * 9 / 2, MM * 11 / 2)])
    by_eye = rule("strip-by-eye").value
    assert by_eye.values == ranges([Interval(Fraction(295), Fraction(305))])


def test_about_takes_the_tolerance_of_a_higher_authority() -> None:
    height = rule("station-order/2025/strip-height").value
    assert height.measure is not None
    assert height.measure.tolerance == MM / 8


def test_about_takes_the_tolerance_of_another_book_of_the_authority() -> None:
    length = rule("interim-notice/2026/long-strip").value.measure
    assert length is not None
    assert length.tolerance == MM / 4


def test_a_tolerance_of_a_rule_is_for_what_is_about() -> None:
    height, width = (rule(f"interim-notice/2026/new-strip-{a}").value for a in ("height", "width"))
    assert height.values == ranges([Interval(MM * 3 - 1, MM * 3 + 1)])
    assert width.values == point(MM * 4)


def test_a_measure_keeps_its_second_unit_and_its_datum() -> None:
    length = rule("strip-length").value
    assert length.values == point(30)
    assert length.measure is not None
    assert length.measure.also is not None
    assert (length.measure.unit, length.measure.also.unit) == ("mm", "[in_i]")
    reach = rule("cuff").value.measure
    assert reach is not None
    assert reach.datum is not None
    assert (reach.datum.measured_from, reach.datum.measured_to) == ("cuff edge", "wrist bone")
    assert reach.datum.posture == "arms hanging"


def test_counts_choices_and_orders() -> None:
    assert rule("counts-count").value.values == Ranges((Interval(None, Fraction(2)),))
    assert rule("counts-kit-count").value.values == Ranges((Interval(Fraction(3), None),))
    assert rule("strip-colour").value.values == choices("gilt", "silver")
    senior = rule("senior-diver-badge").value
    assert senior.order == ("diver-badge", "pilot-badge")
    assert len(senior.values.members) == 1 if isinstance(senior.values, Choices) else False


def test_a_manner_is_an_act_for_each_text() -> None:
    wash = lookup().aspects["care:wash-by-hand"]
    assert (wash.kind, wash.within, wash.label) == ("act", "care", "wash by hand")
    found = rule("liner-care-care-wash-by-hand")
    assert (found.aspect, found.value.values) == ("care:wash-by-hand", YES)
    assert found.value.values != NO


def test_positions_are_alternatives_with_a_place() -> None:
    value = rule("device-place").value
    first, second = value.positions
    assert value.values == choices(first.id, second.id)
    assert (first.relation, first.feature, first.on, first.side) == ("above", "visor", "cap", "left")
    assert (first.orientation, first.slot) == ("horizontal", "primary")
    assert first.offset is not None
    assert first.offset.about
    assert first.offset.tolerance == MM / 8
    assert second.on == "cap"  # the visor is part of it


def test_records_point_to_what_is_there() -> None:
    """Every id that a record names is the id of a record."""
    base = lookup().base
    for each in base.rules:
        assert each.clause in lookup().clauses
        assert each.aspect in lookup().aspects
        assert set(each.scope.items + each.scope.excluding) <= set(lookup().items)
        assert set(each.exception_to + each.disables) <= set(lookup().rules)
        for test in _tests(each.condition):
            assert is_subset(test.values, lookup().domain(test.fact))


def _tests(condition: Condition) -> list[Test]:
    if isinstance(condition, Test):
        return [condition]
    parts = (condition.part,) if isinstance(condition, NotOf) else condition.parts
    return [test for part in parts for test in _tests(part)]
