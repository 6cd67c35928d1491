"""The verdict table and the fates of values, against a second evaluator written from the definition."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.model.conditions import ALWAYS
from kb.model.values import NO, YES, choices
from kb.reasoner.decide import act_verdict, fates, value_classes
from kb.reasoner.norms import Norm


def never(_winner: str, _loser: str) -> bool:
    return False


STATUSES = ("contested", "closed", "supported", "unaddressed")


def by_the_table(worn: str, not_worn: str) -> str:
    """The table of the design as a list of lines; the first that fits."""
    lines = [
        (worn == "contested" or not_worn == "contested", "conflict"),
        (worn == "closed" and not_worn == "closed", "conflict"),
        (not_worn == "closed", "required"),
        (worn == "closed", "prohibited"),
        (worn == "supported", "permitted"),
        (not_worn == "supported", "not_required"),
        (True, "silent"),
    ]
    return next(verdict for fits, verdict in lines if fits)


@pytest.mark.parametrize(("worn", "not_worn"), list(itertools.product(STATUSES, STATUSES)))
def test_the_table_has_one_verdict_for_each_pair_of_fates(worn: str, not_worn: str) -> None:
    assert act_verdict(worn, not_worn) == by_the_table(worn, not_worn)  # type: ignore[arg-type]


def second_opinion(
    norms: list[tuple[str, bool, frozenset[str]]], values: list[str], beats: set[tuple[str, str]]
) -> list[str]:
    """The definition again, in sets and sentences: closing, out, alive, contested."""
    everything = set(values)
    found = []
    for v in values:
        closing_alive = False
        for name, closes, own in norms:
            if not closes or v not in own:
                continue
            out = any(
                other_closes and not (everything - own) & (everything - other_own) and (other, name) in beats
                for other, other_closes, other_own in norms
            )
            beaten = any(
                not other_closes and v in other_own and (other, name) in beats
                for other, other_closes, other_own in norms
            )
            closing_alive = closing_alive or not (out or beaten)
        supporter_alive = any(
            not closes
            and v in own
            and not any(
                other_closes and v in other_own and (other, name) in beats
                for other, other_closes, other_own in norms
            )
            for name, closes, own in norms
        )
        if closing_alive:
            found.append("contested" if supporter_alive else "closed")
        else:
            found.append("supported" if supporter_alive else "unaddressed")
    return found


@st.composite
def situations(draw: st.DrawFn) -> tuple[list[tuple[str, bool, frozenset[str]]], set[tuple[str, str]]]:
    count = draw(st.integers(0, 6))
    norms = [
        (f"r{i}", draw(st.booleans()), draw(st.frozensets(st.sampled_from("abcd"), min_size=1, max_size=3)))
        for i in range(count)
    ]
    pairs = itertools.combinations([name for name, _, _ in norms], 2)
    beats = set()
    for left, right in pairs:
        direction = draw(st.sampled_from(["none", "left", "right"]))
        if direction != "none":
            beats.add((left, right) if direction == "left" else (right, left))
    return norms, beats


@given(situations())
def test_fates_agree_with_the_definition(
    case: tuple[list[tuple[str, bool, frozenset[str]]], set[tuple[str, str]]],
) -> None:
    norms, beats = case
    values = list("abcd")
    masked = [
        (Norm(name, name, closes, choices(*own), ALWAYS), sum(1 << values.index(v) for v in own))
        for name, closes, own in norms
    ]
    found = fates(masked, len(values), lambda winner, loser: (winner, loser) in beats)
    assert [fate.status for fate in found] == second_opinion(norms, values, beats)


def test_a_residual_rule_closes_only_what_nothing_addresses() -> None:
    residual = Norm("r", "r", True, YES, ALWAYS, residual=True)
    support = Norm("s", "s", False, YES, ALWAYS)
    assert [f.status for f in fates([(residual, 1)], 2, never)] == ["closed", "unaddressed"]
    assert fates([(residual, 1), (support, 1)], 2, never)[0].status == "supported"


def test_a_residual_rule_does_not_close_the_last_open_value() -> None:
    residual = Norm("r", "r", True, YES, ALWAYS, residual=True)
    duty = Norm("d", "d", True, NO, ALWAYS)
    assert fates([(residual, 1), (duty, 2)], 2, never)[0].status == "unaddressed"


def test_values_fall_into_the_coarsest_classes() -> None:
    classes = value_classes([choices("a"), choices("a", "b")], choices("a", "b", "c", "d"))
    assert classes == (choices("a"), choices("b"), choices("c", "d"))
