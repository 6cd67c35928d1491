"""What differs between two cases: against two lists, against the clauses, and as the checker sees it."""

from __future__ import annotations

import copy
import datetime
import json
import re
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from kb import Answer, KnowledgeBase, UsageError, answer_to_json
from kb.answer import answer_query
from kb.model.conditions import Test, all_of
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case
from kb.model.values import NO, YES, choices
from kb.reasoner import Engine
from tests.little import DAY, base, fact, rule
from tests.opening import opened

TODAY = datetime.date(2026, 11, 25)
SECOND = Path(__file__).parents[1] / "second/books"
SCHEMA = json.loads((Path(__file__).parents[2] / "ontology/schemas/answer.schema.json").read_text("utf-8"))
DEMO_QUESTIONS = (
    "What is the difference between boat rig and watch rig for a K5?",
    "Compare officers and hands in parade rig.",
    "How do the gloves rules differ for H2 and K5?",
    "Compare the storm coat in town with on the slipway.",
    "What has changed for the knit cap since 1 March 2022?",
    "What changed between the 2019 and the 2024 edition?",
    "What changes on 1 October 2026?",
    "What is the difference between the storm coat and the watch coat?",
    "What differs for the liner with the storm coat and without the storm coat?",
    "What differs for the service cap with and without a medical waiver in parade rig?",
    "Compare foul and fair weather for the storm coat in watch rig.",
)
SECOND_QUESTIONS = (
    "What differs in fell rig compared with hall rig for an R3?",
    "What differs for the shell jacket, in rain compared with in clear weather, in fell rig?",
    "What has changed for the orange smock since 1 June 2022?",
    "What differs for the beard, an R1 compared with an R3?",
)
Json = Any


@pytest.fixture(scope="module")
def demo() -> KnowledgeBase:
    return opened("demo")


@pytest.fixture(scope="module")
def second() -> KnowledgeBase:
    return opened("second")


def ask(knowledge: KnowledgeBase, question: str) -> Answer:
    (answer,) = knowledge.ask(question, as_of=TODAY)
    return answer


def table(answer: Answer) -> dict[tuple[str, str], tuple[str, str]]:
    return {
        (one.item, one.aspect): (one.sides[0].verdict, one.sides[1].verdict) for one in answer.differences
    }


# -- what the clauses of the demo say -------------------------------------------------------------------


def test_rigs_differ_as_their_lists_of_dress_say(demo: KnowledgeBase) -> None:
    """Decided from the texts of clauses 3.2 to 3.5: watch rig, boat rig, and the outer garments of each."""
    found = table(ask(demo, DEMO_QUESTIONS[0]))
    assert found["lined-smock", "wear"] == ("required", "prohibited")
    assert found["knit-cap", "wear"][0] == "required"
    assert found["storm-coat", "wear"] == ("prohibited", "conditional")
    assert ("undershirt", "wear") not in found or found["undershirt", "wear"][0] != found[
        "undershirt", "wear"
    ][1]


def test_only_what_differs_is_named(demo: KnowledgeBase) -> None:
    answer = ask(demo, DEMO_QUESTIONS[2])
    assert table(answer) == {
        ("deck-gloves", "possession"): ("required", "silent"),
        ("deck-gloves", "kit-count"): ("required", "silent"),
    }
    assert [citation.number for citation in answer.citations] == ["8.2"]
    assert answer.differences[1].sides[0].text.startswith("must be at least 2")
    assert answer.cautions, "gloves protect"


def test_what_must_be_worn_in_one_outfit_alone_is_named_first(demo: KnowledgeBase) -> None:
    answer = ask(demo, "What is the difference between boat rig and watch rig for a K5?")
    for side, names in re.findall(
        r"Required in (boat|watch) rig and not in \w+ rig[^:]*: ([^.]+)\.", answer.headline
    ):
        place = ("boat", "watch").index(side)
        for name in re.split(r", | and (?!\w+ more)", names):
            (one,) = (d for d in answer.differences if d.label == name and d.aspect == "wear")
            assert "required" in one.sides[place].text.replace("not required", "")
            assert "required" not in one.sides[1 - place].text.replace("not required", "")
    assert answer.headline.startswith("Required in boat rig and not in watch rig")


def test_one_point_alone_that_differs_is_told(demo: KnowledgeBase) -> None:
    answer = ask(demo, "Parade and watch rig: how does the keeper's pin rule differ for a K7?")
    (one,) = answer.differences
    assert all(side.text in answer.headline for side in one.sides)


def test_nothing_differs_is_said_plainly(demo: KnowledgeBase) -> None:
    answer = ask(demo, DEMO_QUESTIONS[3])
    assert answer.differences == ()
    assert answer.headline.startswith("Nothing differs")
    assert "depend on further facts" in " ".join(answer.notes)
    assert answer.verdict is None


def test_days_are_compared_with_the_rules_of_each(demo: KnowledgeBase) -> None:
    answer = ask(demo, DEMO_QUESTIONS[4])
    assert answer.sides == ("on 1 March 2022", "on 25 November 2026")
    assert table(answer)["cap-turn-up", "height"] == ("silent", "required")
    cited = {citation.edition for citation in answer.citations}
    assert cited == {"dress-order/2019", "dress-order/2024"}


def test_cases_that_cut_across_those_of_the_other_day_are_compared(demo: KnowledgeBase) -> None:
    """From K3 upwards before, from K1 upwards unless diving now: K1 is a part of one case on each side."""
    (answer,) = demo.ask("What is different about the beard since the first edition?", as_of=DAY)
    assert [one.aspect for one in answer.differences] == ["wear", "length"]


@pytest.mark.parametrize(
    ("question", "item", "aspects"),
    [
        ("What changes on 1 May 2026?", "name-strip", {"length"}),  # Interim Notice 2
        ("How do K2 and K3 differ?", "keepers-bars", {"count"}),  # 5.7: as many bars as the grade has
        ("How do K2 and K3 differ?", "whistle", {"possession", "carrying"}),  # 6.12 and 8.3
        ("How do H4 and K1 differ?", "deck-knife", {"possession"}),  # 8.2 against 8.3
        ("What changes on 1 October 2026?", "tarred-smock", {"wear", "possession", "tarring"}),  # 2.8
    ],
)
def test_all_that_the_clauses_say_of_a_thing_is_compared(
    demo: KnowledgeBase, question: str, item: str, aspects: set[str]
) -> None:
    """Decided from the clause texts: what is owned and carried, how long, how many, not only worn."""
    answer = ask(demo, question)
    assert aspects <= {one.aspect for one in answer.differences if one.item == item}
    assert "point" in answer.headline
    assert demo.verify(json.loads(answer_to_json(answer))) is None


def test_facts_that_exclude_each_other_are_refused_on_either_side(demo: KnowledgeBase) -> None:
    """What excludes what is declared in the books; here it holds on the second side only."""
    exclusion = demo.lookup.base.exclusions[0]
    facts = tuple((test.fact, test.values) for test in exclusion.parts)  # type: ignore[union-attr]
    query = Query(kind="compare", case=Case(as_of=TODAY), other=Case(as_of=TODAY, facts=facts))
    with pytest.raises(UsageError, match="exclude"):
        demo.answer(Reading(question="?", text="?", query=query))


# -- against two lists ----------------------------------------------------------------------------------

PAIRS = (
    ({"rig": "boat-rig"}, {"rig": "watch-rig"}),
    ({"rig": "storm-rig", "grade": "H2"}, {"rig": "storm-rig", "grade": "W1"}),
    ({"place": "slipway", "rig": "workshop-rig"}, {"place": "town", "rig": "workshop-rig"}),
    ({"grade": "K1"}, {"grade": "K7"}),
)


@pytest.mark.parametrize(("left", "right"), PAIRS)
def test_a_comparison_is_what_two_lists_differ_in(
    demo: KnowledgeBase, left: dict[str, str], right: dict[str, str]
) -> None:
    cases = [
        Case(as_of=TODAY, facts=tuple((f, choices(v)) for f, v in side.items())) for side in (left, right)
    ]
    lists = []
    for case in cases:
        answer = demo.answer(Reading(question="?", text="?", query=Query(kind="list", case=case)))
        lists.append({entry.label: (entry.verdict, entry.condition) for entry in answer.entries})
    query = Query(kind="compare", case=cases[0], other=cases[1])
    compared = demo.answer(Reading(question="?", text="?", query=query))
    labels = {one.label: tuple(side.verdict for side in one.sides) for one in compared.differences}
    for label in {*lists[0], *lists[1]}:
        verdicts = tuple(side.get(label, ("silent", ""))[0] for side in lists)
        if verdicts[0] != verdicts[1]:
            assert labels[label] == verdicts
        elif verdicts[0] != "conditional":
            assert label not in labels
        elif lists[0][label] == lists[1][label] and label in labels:
            assert labels[label] == ("conditional", "conditional")


# -- a little base, every case by hand ------------------------------------------------------------------


def little(left: dict[str, Any], right: dict[str, Any], *rules: Any) -> Answer:
    lookup = base(*rules, facts=(fact("wet"), fact("cold"), fact("dark")))
    return compare(lookup, left, right)


def compare(lookup: Lookup, left: dict[str, Any], right: dict[str, Any]) -> Answer:
    cases = [Case(as_of=DAY, facts=tuple(side.items())) for side in (left, right)]
    query = Query(kind="compare", items=("cap",), case=cases[0], other=cases[1])
    return answer_query(Engine(lookup, DAY), Reading(question="?", text="?", query=query), "")


def test_the_same_dependence_on_another_fact_is_no_difference() -> None:
    answer = little({"wet": YES}, {"wet": NO}, rule("when-cold", "must", when=Test("cold", YES)))
    assert answer.differences == ()
    assert "1 depends on further facts" in answer.notes[0]


def test_a_dependence_turned_round_is_a_difference() -> None:
    answer = little(
        {"wet": YES},
        {"wet": NO},
        rule("wet-cold", "must", when=all_of([Test("wet", YES), Test("cold", YES)])),
        rule("wet-mild", "may", when=all_of([Test("wet", YES), Test("cold", NO)])),
        rule("dry-mild", "must", when=all_of([Test("wet", NO), Test("cold", NO)])),
        rule("dry-cold", "may", when=all_of([Test("wet", NO), Test("cold", YES)])),
    )
    assert table(answer) == {("cap", "wear"): ("conditional", "conditional")}


def test_two_rules_for_the_same_are_no_difference() -> None:
    rules = [rule("wet", "must", when=Test("wet", YES)), rule("dry", "must", when=Test("wet", NO))]
    assert little({"wet": YES}, {"wet": NO}, *rules).differences == ()


def test_where_nothing_is_said_on_either_side_the_books_are_silent() -> None:
    answer = little({"wet": YES}, {"wet": NO}, rule("other", "must", "scarf"))
    assert (answer.verdict, answer.differences) == ("silent", ())


# -- the form, and the checker --------------------------------------------------------------------------


def saved(knowledge: KnowledgeBase, question: str) -> Json:
    return json.loads(answer_to_json(ask(knowledge, question)))


@pytest.mark.parametrize("question", DEMO_QUESTIONS)
def test_comparisons_of_the_demo_fit_the_schema_and_are_verified(demo: KnowledgeBase, question: str) -> None:
    answer = saved(demo, question)
    jsonschema.validate(answer, SCHEMA, jsonschema.Draft202012Validator)
    assert demo.verify(answer) is None


@pytest.mark.parametrize("question", SECOND_QUESTIONS)
def test_comparisons_of_other_books_are_verified(second: KnowledgeBase, question: str) -> None:
    answer = saved(second, question)
    assert answer["reading"]["kind"] == "compare"
    jsonschema.validate(answer, SCHEMA, jsonschema.Draft202012Validator)
    assert second.verify(answer) is None


def _set(path: tuple[str | int, ...], value: Any) -> Any:
    def change(answer: Json) -> None:
        place = answer
        for step in path[:-1]:
            place = place[step]
        place[path[-1]] = value

    return change


def _last_with_rows(answer: Json) -> Json:
    return [one for one in answer["differences"] if one["aspect"] != "wear"][-1]


CHANGES = {
    "a verdict of a side": (2, _set(("differences", 0, "sides", 0, "verdict"), "prohibited")),
    "a verdict of a row": (2, _set(("differences", 0, "sides", 0, "cases", 0, "verdict"), "prohibited")),
    "the rules of a side": (2, _set(("differences", 0, "sides", 0, "rules"), [])),
    "a proof of another side": (4, lambda a: a["differences"][0]["sides"].reverse()),
    "a proof that is gone": (2, _set(("differences", 0, "sides", 0, "derivation"), [])),
    "a difference that is gone": (2, lambda a: a["differences"].pop()),
    "what a side is called": (2, _set(("sides", 0), "a K9")),
    "what a side says in words": (2, _set(("differences", 0, "sides", 0, "text"), "free")),
    "the other case": (2, _set(("reading", "other", "facts"), {"grade": ["H3"]})),
    "the other day": (4, _set(("reading", "other", "as_of"), "2022-03-01")),
    "no other case": (2, _set(("reading", "other"), None)),
    "a line of a list": (0, _set(("differences", 0, "sides", 0, "verdict"), "permitted")),
    "a line of a list that is gone": (0, lambda a: a["differences"].pop(0)),
    "the rules of a line": (0, _set(("differences", 0, "sides", 0, "rules"), [])),
    "a measure left out": (6, lambda a: a["differences"].remove(_last_with_rows(a))),
    "a table that is gone": (6, lambda a: _last_with_rows(a)["sides"][0].update(cases=[])),
    "a number that is the same": (0, _set(("headline",), "Nothing differs.")),
}


@pytest.mark.parametrize("name", CHANGES)
def test_a_comparison_that_says_anything_else_is_refused(demo: KnowledgeBase, name: str) -> None:
    number, change = CHANGES[name]
    answer = copy.deepcopy(saved(demo, DEMO_QUESTIONS[number]))
    change(answer)
    assert demo.verify(answer) is not None


@pytest.mark.parametrize(
    ("books", "question", "told"),
    [
        ("undertakers", "Compare call dress and office dress", "in call dress and not in office dress"),
        ("racecourse", "differences between officials' suit and race silks", "in race silks and not in"),
        ("shipyard", "What sets working rig and visitor's dress apart?", ""),
        ("shipyard", "difference between working rig and visitor's dress", ": boiler suit and work gloves. "),
    ],
)
def test_outfits_named_as_things_differ_in_what_is_worn(books: str, question: str, told: str) -> None:
    """A rosette that any rig but one may have is not told as the other's own."""
    (answer,) = opened(books).ask(question, as_of=TODAY)
    assert told in answer.headline
    assert "rosette" not in answer.headline
    assert bool(answer.differences) is bool(told)
