"""Which circumstance a bare measure tells, where the books measure several in one unit."""

from __future__ import annotations

import datetime

import pytest

from kb import KnowledgeBase

BOOKS = """
service: {id: weir, label: Weir Wardens, namespace: "https://weir.example/"}
authorities: [{id: board, label: Board}]
facts:
  - {id: air, label: air temperature, other labels: [temperature], kind: measure, unit: °C, ask: "How warm?"}
  - {id: river, label: river temperature, kind: measure, unit: °C, ask: "How warm is the river?"}
  - {id: cast-age, label: age of the cast, kind: measure, unit: wk, ask: "How old is the cast?"}
  - {id: boots-wait, label: time of waiting for boots, kind: measure, unit: wk, ask: "How long is the wait?"}
  - {id: long-cold, label: in the ice house for more than 10 minutes, kind: yes or no, ask: "Long?"}
  - {id: near-saw, label: within 8 metres of the weir saw, kind: yes or no, ask: "Are you near the weir saw?"}
items:
  - {id: hood, label: hood, kind of: garment}
  - {id: drysuit, label: drysuit, kind of: garment}
  - {id: sling, label: sling, kind of: garment}
  - {id: clogs, label: clogs, kind of: garment}
  - {id: muffs, label: muffs, kind of: garment}
book: {id: order, title: Weir Order, authority: board}
edition: {id: "1", title: Weir Order, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: Below 5 degrees the hood is worn. In a river below 8 degrees the drysuit is worn.
    rules:
      - {must: hood, when: {air: below 5 °C}}
      - {must: drysuit, when: {river: below 8 °C}}
      - {may: sling, when: {cast-age: below 6 wk}}
      - {may: clogs, when: {boots-wait: below 4 wk}}
      - {must: hood, when: {long-cold: yes}}
      - {must: muffs, when: {near-saw: yes}}
"""


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    books = tmp_path_factory.mktemp("weir")
    (books / "weir.yaml").write_text(BOOKS, encoding="utf-8")
    return KnowledgeBase.open(books, tmp_path_factory.mktemp("cache"))


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("Must I wear the hood at 3 degrees?", {"air"}),
        ("It's 3 degrees, hood needed?", {"air"}),
        ("Must I wear the hood at minus two?", {"air"}),
        ("Must I wear the drysuit at 7 degrees?", {"river"}),
        ("Is the drysuit needed, 7 degrees in the river?", {"river"}),
        ("Must I wear the hood, 7 degrees in the river?", {"river"}),
        ("May I wear the sling if it is three weeks old?", {"cast-age"}),
        ("May I wear clogs for 3 weeks?", {"boots-wait"}),
        ("What do I wear at 3 degrees?", {"air"}),
    ],
)
def test_a_measure_tells_the_circumstance_it_is_of(
    base: KnowledgeBase, question: str, told: set[str]
) -> None:
    reading = base.read(question, as_of=datetime.date(2026, 11, 25))
    assert reading.query is not None, reading
    assert {fact for fact, _ in reading.query.case.facts} == told


def test_of_two_that_fit_alike_none_is_taken(base: KnowledgeBase) -> None:
    reading = base.read("May I wear the hood for 3 weeks?", as_of=datetime.date(2026, 11, 25))
    told = () if reading.query is None else reading.query.case.facts
    assert all(fact not in ("cast-age", "boots-wait") for fact, _ in told)


@pytest.mark.parametrize(
    ("question", "stated"),
    [
        ("Must I wear the hood for 3 minutes in the ice house?", ("long-cold", "no")),
        ("I'm in the ice house for a quarter of an hour, hood on?", ("long-cold", "yes")),
        ("In the ice house for 20 minutes, must I wear the hood?", ("long-cold", "yes")),
        ("Must I wear muffs 5 metres from the weir saw?", ("near-saw", "yes")),
        ("12 metres away from the weir saw, do I need muffs?", ("near-saw", "no")),
    ],
)
def test_a_measure_settles_a_circumstance_with_a_bound(
    base: KnowledgeBase, question: str, stated: tuple[str, str]
) -> None:
    (answer,) = base.ask(question, as_of=datetime.date(2026, 12, 1))
    assert answer.reading.query is not None, answer.abstain
    facts = dict(answer.reading.query.case.facts)
    assert facts.keys() == {stated[0]}
    assert getattr(facts[stated[0]], "members", None) == {stated[1]}


@pytest.mark.parametrize(
    "question",
    ["Must I wear muffs for 3 weeks?", "Must I wear the hood for 3 minutes in the ice cream parlour?"],
)
def test_a_time_of_something_else_is_not_taken(base: KnowledgeBase, question: str) -> None:
    (answer,) = base.ask(question, as_of=datetime.date(2026, 12, 1))
    query = answer.reading.query
    assert query is None or not query.case.facts
