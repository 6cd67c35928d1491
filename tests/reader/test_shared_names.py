"""A name that a place and an outfit share, or two other facts: which is meant, or what is asked."""

from __future__ import annotations

import pytest

from kb import KnowledgeBase, Reading
from tests.little import DAY

BOOKS = """
service: {id: tide, label: Tide Wardens, namespace: "https://tide.example/"}
authorities: [{id: board, label: Board}]
facts:
  - id: place
    label: place
    values:
      - {id: at-loft, label: in the Loft, other labels: [the Loft]}
      - {id: at-gaol, label: in gaol}
      - {id: at-quay, label: on the quay}
  - id: sky
    label: sky
    values: [{id: clear, label: clear sky}, {id: gloom, label: gloom}]
  - id: mood
    label: mood
    values: [{id: merry, label: merry}, {id: gloomy, label: gloom}]
rigs:
  - {id: loft, label: Loft}
  - {id: gaol, label: gaol}
  - {id: strand, label: Strand}
items:
  - {id: loft-rig, label: Loft, kind of: garment}
  - {id: hood, label: hood, kind of: garment}
  - {id: mitts, label: mitts, kind of: garment}
  - {id: scarf, label: scarf, kind of: garment}
  - {id: veil, label: veil, kind of: garment}
book: {id: order, title: Tide Order, authority: board}
edition: {id: "1", title: Tide Order, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: The hood goes with the outfits, mitts with places, the scarf with gloom and the veil with all.
    rules:
      - {must: hood, rig: [loft, gaol]}
      - {must: mitts, when: {place: [at-loft, at-gaol]}}
      - {may: scarf, when: {sky: gloom}}
      - {must not: veil, rig: [loft, gaol]}
      - {may: veil, when: {place: [at-loft, at-gaol]}}
      - {must not: loft-rig, when: {place: at-quay}}
"""
PLACE, RIG = "place", "rig"


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    books = tmp_path_factory.mktemp("tide")
    (books / "tide.yaml").write_text(BOOKS, encoding="utf-8")
    return KnowledgeBase.open(books, tmp_path_factory.mktemp("cache"))


def _read(base: KnowledgeBase, question: str) -> Reading:
    return base.read(question, as_of=DAY)


@pytest.mark.parametrize(
    ("question", "facts"),
    [
        ("May I wear the veil in Loft?", {RIG: "loft"}),
        ("May I wear the veil in the Loft?", {PLACE: "at-loft"}),
        ("May I wear the veil with Loft?", {RIG: "loft"}),
        ("May I wear the veil on my way to the Loft?", {PLACE: "at-quay at-gaol"}),
        ("May I wear the veil in the Loft in Strand?", {PLACE: "at-loft", RIG: "strand"}),
        ("May I wear the veil in gaol in Strand?", {PLACE: "at-gaol", RIG: "strand"}),
        ("May I wear the veil in gaol on the quay?", {RIG: "gaol", PLACE: "at-quay"}),
        ("May I wear the veil in gaol or on the quay?", {PLACE: "at-gaol at-quay"}),
        ("May I wear the hood in gaol?", {RIG: "gaol"}),
        ("May I wear mitts in gaol?", {PLACE: "at-gaol"}),
        ("hood in loft?", {RIG: "loft"}),
        ("mitts in loft?", {PLACE: "at-loft"}),
        ("May I wear a scarf in gloom?", {"sky": "gloom"}),
    ],
)
def test_what_is_said_around_it_settles_which_is_meant(
    question: str, facts: dict[str, str], base: KnowledgeBase
) -> None:
    query = _read(base, question).query
    assert query is not None, question
    found = {fact: values.members for fact, values in query.case.facts}  # type: ignore[union-attr]
    assert {fact: found[fact] for fact in facts} == {f: {*named.split()} for f, named in facts.items()}
    assert {PLACE, RIG, "sky", "mood"} & {*found} == {*facts}


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("veil in loft?", ["Loft (rig)", "in the Loft (place)"]),
        ("May I wear the veil in gaol?", ["gaol (rig)", "in gaol (place)"]),
        ("May I wear the veil when dressed in the Loft?", ["Loft (rig)", "in the Loft (place)"]),
        ("May I wear the hood in gloom?", ["gloom (sky)", "gloom (mood)"]),
    ],
)
def test_else_it_is_asked_and_each_choice_is_understood(
    question: str, said: list[str], base: KnowledgeBase
) -> None:
    ask = _read(base, question).ask
    assert ask is not None, question
    assert sorted(label for _, label in ask.choices) == sorted(said)
    for text, label in ask.choices:
        query = _read(base, text).query
        assert query is not None, text
        fact = label.rpartition(" (")[2].removesuffix(")")
        assert [name for name, _ in query.case.facts if name in (PLACE, RIG, "sky", "mood")] == [fact]


def test_an_outfit_is_still_the_thing_asked_about(base: KnowledgeBase) -> None:
    query = _read(base, "May I wear Loft on the quay?").query
    assert query is not None
    assert query.items == ("loft-rig",)


@pytest.mark.parametrize(("reply", "fact"), [("the place", PLACE), ("rig", RIG), ("2", PLACE)])
def test_a_reply_says_which_is_meant(reply: str, fact: str, base: KnowledgeBase) -> None:
    asked = _read(base, "veil in loft?")
    query = base.read(reply, as_of=DAY, previous=asked).query
    assert query is not None
    assert [name for name, _ in query.case.facts] == [fact]
