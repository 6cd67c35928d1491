# ruff: noqa: E501  screens read better on one line
"""What the layout makes of single parts of an answer."""

from __future__ import annotations

import datetime
import re
from typing import Any

import msgspec
import pytest

from kb.model.lookup import Lookup
from kb.model.questions import AnswerCase, Defeat, Derivation, ListEntry, ValueFate
from kb.model.records import Rule, RuleValue, Scope
from kb.model.values import YES, choices
from shell.blocks import Grid, Node, Said
from shell.chain import chain_blocks, short_reasons
from shell.layout import arrange, further_blocks
from shell.numbering import clause_numbers, main_edition, numbers_alone
from shell.plain import render_plain
from tests.shell import fakes

LONG = "permitted when a; prohibited when b; required when c"


def plain(answer: Any, base: Any, *, chain: bool = False) -> str:
    return render_plain(arrange(answer, base, chain=chain), 100)


def decided(*steps: Any, defeats: tuple[Defeat, ...] = (), when: Any = ()) -> Any:
    proof = Derivation(
        item="liner", aspect="wear", when=when, verdict="prohibited", steps=steps, defeats=defeats, fates=()
    )
    case = AnswerCase(when=(), label="in every case", verdict="prohibited")
    return msgspec.structs.replace(
        fakes.silent("May I?"), verdict="prohibited", cases=(case,), derivation=(proof,)
    )


def test_the_verdict_comes_first_and_the_next_question_last(base: Any) -> None:
    lines = plain(fakes.conditional("May I?"), base).splitlines()
    assert lines[0].startswith("IT DEPENDS")
    assert lines[-2:] == ["? What is the weather?", "  fair weather / foul weather"]


def test_the_rules_that_decided_stand_in_for_a_missing_reason(base: Any) -> None:
    winner = fakes.step("a", "must_not", "The liner must not be worn ashore.", reason="ashore",
                        facts=(("place", choices("ashore")),))  # fmt: skip
    loser = fakes.step("b", "may", "The liner may be worn.", alive=False)
    defeat = Defeat(winner="a", loser="b", principle="specificity", detail="narrower")
    reasons = short_reasons(decided(winner, loser, defeats=(defeat,)), base)
    assert reasons == (
        Node(
            "clause 4.12: The liner must not be worn ashore.",
            (
                Node("applies: ashore"),
                Node('goes before clause 4.12 ("The liner may be worn.") by specificity: narrower'),
            ),
            "no",
        ),
    )


def test_a_rule_that_only_the_chosen_case_brings_in_is_no_reason(base: Any) -> None:
    facts = (("weather", choices("foul")),)
    always = fakes.step("a", "must_not", "Never worn.")
    chosen = fakes.step("b", "must_not", "Not worn in foul weather.", facts=facts, reason="foul")
    answer = decided(always, chosen, when=facts)
    assert short_reasons(answer, base) == (Node("clause 4.12: Never worn.", (), "no"),)
    assert "in every case: prohibited (shown for one such case: foul weather)" in render_plain(
        chain_blocks(answer, base), 100
    )


def test_a_beaten_rule_stands_below_the_one_that_beats_it_even_where_two_clauses_disagree(base: Any) -> None:
    one = fakes.step("a", "must", "The badge is worn.")
    other = fakes.step("b", "must_not", "The badge is not worn ashore.")
    loser = fakes.step("c", "must_not", "No badge is worn.", alive=False)
    defeat = Defeat(winner="a", loser="c", principle="authority", detail="")
    answer = decided(one, other, loser, defeats=(defeat,))
    assert [len(node.below) for node in short_reasons(answer, base)] == [1, 0]
    assert "by authority: it stands higher" in plain(answer, base)


OPPOSED = [
    # The values yes and no: each closed by one rule, or one of them closed and supported at once.
    ((("a",), ()), (("b",), ())),
    ((("a",), ("b",)), ((), ())),
    # Three values; the rule that leaves one of them open beside each other rule is no part of it.
    ((("a", "x"), ()), (("b",), ()), (("a",), ())),
]


@pytest.mark.parametrize("fates", OPPOSED)
def test_in_a_conflict_the_chain_says_which_rules_stand_against_each_other(fates: Any, base: Any) -> None:
    steps = tuple(fakes.step(name, "must_not", f"Rule {name}.") for name in "abx")
    values = tuple(
        ValueFate(values=choices(str(n)), status="contested", closed_by=closed, supported_by=supported)
        for n, (closed, supported) in enumerate(fates)
    )
    answer = decided(*steps)
    (proof,) = answer.derivation
    for verdict in ("conflict", "prohibited"):
        found = msgspec.structs.replace(proof, verdict=verdict, fates=values)
        text = plain(msgspec.structs.replace(answer, derivation=(found,)), base, chain=True)
        expected = ['"Rule b."', '"Rule a."'] if verdict == "conflict" else []
        assert re.findall(r"stands against clause 4.12 \((.*?)\)", text) == expected


def test_a_row_names_its_clauses_where_the_rows_differ_in_them(base: Any) -> None:
    rule = Rule(
        id="order/2/liner", modality="may", scope=Scope(items=("liner",)), aspect="wear",
        value=RuleValue(values=YES),
        clause="order/2/4.12", authority="board", valid_from=fakes.DAY, at=fakes.AT,
    )  # fmt: skip
    base.lookup.rules[rule.id] = rule
    foul = AnswerCase(
        when=(("weather", choices("foul")),), label="foul", verdict="permitted", rules=(rule.id,)
    )
    fair = AnswerCase(when=(("weather", choices("fair")),), label="fair", verdict="silent")
    for cases, columns in (((foul, fair), 3), ((foul, foul), 2)):
        answer = msgspec.structs.replace(fakes.conditional("May I?"), cases=cases)
        (grid,) = [block for block in arrange(answer, base) if isinstance(block, Grid)]
        assert len(grid.columns) == columns
    answer = msgspec.structs.replace(fakes.conditional("May I?"), cases=(foul, fair))
    (grid,) = [block for block in arrange(answer, base) if isinstance(block, Grid)]
    assert [row[-1].text for row in grid.rows] == ["4.12", "-"]


def test_clauses_of_another_edition_are_told_with_it(base: Any) -> None:
    lookup = base.lookup
    notice = msgspec.structs.replace(lookup.base.editions[0], id="notice/1", label="Notice")
    clauses = [("order/2", "4.12"), ("order/2", "4.2"), ("notice/1", "3")]
    written = tuple(
        msgspec.structs.replace(
            lookup.base.clauses[0], id=f"{edition}/{number}", edition=edition, number=number
        )
        for edition, number in clauses
    )
    rules = tuple(
        Rule(
            id=clause.id, modality="may", scope=Scope(items=("liner",)), aspect="wear",
            value=RuleValue(values=YES), clause=clause.id, authority="board", valid_from=fakes.DAY,
            at=fakes.AT,
        )
        for clause in written
    )  # fmt: skip
    editions = (*lookup.base.editions, notice)
    base.lookup = Lookup(
        msgspec.structs.replace(lookup.base, editions=editions, clauses=written, rules=rules)
    )
    every = tuple(rule.id for rule in rules)
    answer = msgspec.structs.replace(
        fakes.listing("What?"), entries=(ListEntry(item="x", label="x", verdict="required", rules=every),)
    )
    assert main_edition(answer, base) == "order/2"
    assert clause_numbers(every, base, "order/2") == "clauses 4.2, 4.12; Notice, clause 3"
    assert numbers_alone(every, base, "order/2") == "4.2, 4.12; Notice 3"
    assert clause_numbers(every[:1], base, "order/2") == "clause 4.12"
    assert clause_numbers((), base, "order/2") == numbers_alone((), base, "") == ""
    assert "x (clauses 4.2, 4.12; Notice, clause 3)" in plain(answer, base)


def test_the_badge_is_not_said_twice(base: Any) -> None:
    answer = msgspec.structs.replace(fakes.conflict("May I?"), headline="Conflict: two clauses disagree.")
    assert plain(answer, base).startswith("CONFLICT - Two clauses disagree.")


def test_what_can_be_asked_next_is_told_where_nothing_is_asked_back() -> None:
    assert further_blocks(fakes.conditional("May I?")) == ()
    assert further_blocks(fakes.abstained("May I?")) == ()
    (said,) = further_blocks(fakes.prohibited("May I?"))
    assert said == Said("Next", "why | clause 4.12 | or a further question")


def test_a_conditional_answer_leaves_its_reasons_to_the_table(base: Any) -> None:
    assert short_reasons(fakes.conditional("May I?"), base) == ()


def test_a_list_counts_many_cases_and_shows_them_when_asked_why(base: Any) -> None:
    entry = ListEntry(item="gloves", label="deck gloves", verdict="conditional", condition=LONG)
    answer = msgspec.structs.replace(fakes.listing("What?"), entries=(entry,))
    assert "deck gloves, 3 cases" in plain(answer, base)
    assert "ask about one item" in plain(answer, base)
    assert LONG in plain(answer, base, chain=True)


def test_long_lists_name_their_clauses_and_short_ones_quote_them(base: Any) -> None:
    cited = tuple(msgspec.structs.replace(fakes.CITATION, number=str(n)) for n in (1, 2, 3))
    many = msgspec.structs.replace(fakes.listing("What?"), citations=cited)
    assert "Quay Order, second edition: 1, 2, 3" in plain(many, base)
    assert fakes.TEXT[:20] not in plain(many, base)
    few = msgspec.structs.replace(many, citations=cited[:2])
    assert plain(few, base).count(fakes.TEXT[:20]) == 2


def test_silence_is_said_outright(base: Any) -> None:
    assert "neither a permission nor a prohibition" in plain(fakes.silent("May I?"), base).replace("\n", " ")


def test_at_most_three_suggestions(base: Any) -> None:
    answer = fakes.abstained("florgle")
    assert answer.abstain is not None
    more = msgspec.structs.replace(answer.abstain, suggestions=("one", "two", "three", "four"))
    text = plain(msgspec.structs.replace(answer, abstain=more), base)
    assert "- three" in text
    assert "four" not in text


def test_rows_without_conditions_are_no_table(base: Any) -> None:
    case = AnswerCase(when=(), label="in every case", verdict="required")
    answer = msgspec.structs.replace(fakes.where("Where?"), cases=(case, case))
    assert "Case by case" not in plain(answer, base)


@pytest.mark.parametrize(
    ("verdict", "headline", "first"),
    [
        ("permitted", "No. The liner may be worn, but need not be.", "NO - Permitted: the liner may be worn, but need not be."),
        ("required", "No: the fastening must be closed.", "NO - Required: the fastening must be closed."),
        ("prohibited", "Yes. The liner must not be worn.", "YES - Prohibited: the liner must not be worn."),
        # Where both say the same, the verdict is the first word.
        ("permitted", "Yes. The liner may be worn.", "PERMITTED - Yes. The liner may be worn."),
        ("prohibited", "No. The liner must not be worn.", "PROHIBITED - No. The liner must not be worn."),
        ("not_required", "No. The liner need not be worn.", "NOT REQUIRED - No. The liner need not be worn."),
        ("required", "Nothing but the liner must be worn.", "REQUIRED - Nothing but the liner must be worn."),
    ],
)  # fmt: skip
def test_yes_or_no_stands_first_where_the_verdict_would_say_the_contrary(
    base: Any, verdict: str, headline: str, first: str
) -> None:
    answer: Any = msgspec.structs.replace(fakes.silent("Must I?"), verdict=verdict, headline=headline)
    assert plain(answer, base).splitlines()[0] == first


def test_the_day_is_told_where_it_is_asked_for_and_not_of_two_days(base: Any) -> None:
    answer = fakes.prohibited("May I?")
    assert Said("For the day", "25 November 2026") in arrange(answer, base, dated=True)
    assert not any(isinstance(b, Said) and b.label in ("For the day", "Asked") for b in arrange(answer, base))
    query: Any = answer.reading.query
    other = msgspec.structs.replace(query.case, as_of=datetime.date(2025, 1, 1))
    query = msgspec.structs.replace(query, kind="compare", other=other)
    two = msgspec.structs.replace(answer, reading=msgspec.structs.replace(answer.reading, query=query))
    assert not any(isinstance(b, Said) and b.label == "For the day" for b in arrange(two, base, dated=True))


def test_a_fact_that_is_not_in_the_question_is_not_told_as_kept(base: Any) -> None:
    answer = fakes.prohibited("May I?")
    reading = msgspec.structs.replace(answer.reading, carried=("weather",))
    blocks = arrange(msgspec.structs.replace(answer, reading=reading), base)
    assert not any(isinstance(block, Said) and block.label == "Kept" for block in blocks)


def test_a_fact_of_an_option_is_given_and_not_kept(base: Any) -> None:
    answer = fakes.prohibited("May I?")
    labels = {block.label for block in arrange(answer, base, given=("grade",)) if isinstance(block, Said)}
    assert "Given" in labels
    assert "Kept" not in labels


@pytest.mark.parametrize(
    ("headline", "badge", "text"),
    [
        ("No. The tie must not be worn, unless it is cold.", "NO, ORDINARILY", "The tie must not be worn, unless it is cold."),
        ("Yes, in boat rig. The tie may be worn; in any other rig it must not be.", "YES, IN BOAT RIG",
         "The tie may be worn; in any other rig it must not be."),
        ("Yes, in boat rig: the tie must be worn; in any other rig the books are silent.", "YES, IN BOAT RIG",
         "The tie must be worn; in any other rig the books are silent."),
        ("Yes: the tie may or must be worn, depending on the rig.", "YES", "The tie may or must be worn, depending on the rig."),
        ("No. The tie must not be worn when it is hot; otherwise it may be.", "IT DEPENDS", "The tie must not be worn when it is hot; otherwise it may be."),
        ("It depends on the rig.", "IT DEPENDS", "On the rig."),
        ("Only when it is cold: the tie may be worn.", "IT DEPENDS", "Only when it is cold: the tie may be worn."),
        ("Yesterday's tie must not be worn.", "IT DEPENDS", "Yesterday's tie must not be worn."),
    ],
)  # fmt: skip
def test_what_leads_a_table_stands_in_the_badge(headline: str, badge: str, text: str, base: Any) -> None:
    answer = msgspec.structs.replace(fakes.conditional("May I?"), headline=headline)
    first = arrange(answer, base)[0]
    assert (first.badge, first.text) == (badge, text)
