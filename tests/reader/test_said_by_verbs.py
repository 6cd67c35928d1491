"""What a verb, a noun before a noun and somebody asked about decide, in a small book of another trade."""

from __future__ import annotations

import datetime

import pytest

from kb import Answer, KnowledgeBase
from tests.opening import opened

BOOKS = """
service: {id: tannery, label: Alder Tannery, namespace: "https://tannery.example/"}
authorities: [{id: owner, label: Owner}]
facts:
  - id: place
    label: place
    values:
      - {id: lime-yard, label: in the lime yard}
      - {id: drum-room, label: in the drum room}
      - {id: store, label: in the store}
  - id: activity
    label: work
    values:
      - {id: showing, label: guiding buyers}
      - {id: fleshing, label: fleshing hides}
  - {id: pump, label: pump running, kind: yes or no, ask: "Is the pump running?"}
aspects:
  - {id: rolling, label: rolling up, kind: act, verb: roll, done: rolled}
  - {id: tying, label: tying back, kind: act, verb: tie, done: tied back}
items:
  - {id: smock, label: smock, kind of: garment}
  - {id: sleeves, label: sleeves of the smock, other labels: [sleeves], kind of: feature, part of: smock}
  - {id: muffs, label: ear muffs, kind of: garment}
  - {id: brooch, label: bark brooch, everyday words: [brooch], kind of: insignia}
  - {id: hair, label: hair, kind of: grooming}
book: {id: order, title: Tannery Order, authority: owner}
edition: {id: "1", title: Tannery Order, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: Sleeves are buttoned at the wrist in the lime yard, and not rolled. They may be rolled in the store.
    rules:
      - {must: sleeves, fastening: buttoned at the wrist, when: {place: lime-yard}}
      - {must not roll: sleeves, when: {place: lime-yard}}
      - {may roll: sleeves, when: {place: store}}
      - {must not roll: sleeves, when: {place: drum-room}}
  - clause: "2"
    text: Ear muffs are worn while the pump is running; nobody guiding buyers wears them.
    rules:
      - {must: muffs, when: {pump: yes}}
      - {must not: muffs, when: {activity: showing}}
  - clause: "3"
    text: The bark brooch may be worn. Hair is tied back in the drum room.
    rules:
      - {may: brooch}
      - {must tie: hair, when: {place: drum-room}}
"""


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    books = tmp_path_factory.mktemp("tannery")
    (books / "tannery.yaml").write_text(BOOKS, encoding="utf-8")
    return KnowledgeBase.open(books, tmp_path_factory.mktemp("cache"))


def _answer(base: KnowledgeBase, question: str) -> Answer:
    (answer,) = base.ask(question, as_of=datetime.date(2026, 11, 25))
    return answer


@pytest.mark.parametrize(
    ("question", "verdict"),
    [
        ("Can I roll my sleeves up in the store?", "permitted"),
        ("roll my sleeves right up in the store?", "permitted"),
        ("Have my sleeves up in the store?", "permitted"),
        ("Can I roll my sleeves up in the lime yard?", "prohibited"),
        ("Do I have to keep my sleeves down in the drum room?", "prohibited"),
    ],
)
def test_an_act_of_the_books_goes_before_what_a_particle_fits(
    question: str, verdict: str, base: KnowledgeBase
) -> None:
    answer = _answer(base, question)
    query = answer.reading.query
    assert (answer.verdict, query and query.aspect) == (verdict, "rolling"), answer.reading.text


def test_a_noun_before_a_noun_is_no_verb(base: KnowledgeBase) -> None:
    query = _answer(base, "Can I wear a tie brooch?").reading.query
    assert query is None or query.aspect == "wear"
    query = _answer(base, "Must I tie my hair in the drum room?").reading.query
    assert query is not None
    assert query.aspect == "tying"


def test_who_is_asked_about_is_not_what_is_done(base: KnowledgeBase) -> None:
    query = _answer(base, "Do buyers need ear muffs?").reading.query
    assert query is None or query.kind == "source"  # the clause at most, and no verdict
    query = _answer(base, "Do I need ear muffs guiding buyers?").reading.query
    assert query is not None
    assert dict(query.case.facts).keys() == {"activity"}


@pytest.mark.parametrize(
    ("question", "read"),
    [
        ("Can I carry a rucksack to town in watch rig?",
         "May anyone carry the rucksack, in watch rig, between the station and the town?"),
        ("Headphones on the way home from town?", "May anyone wear the headphones, not in town?"),
        ("Can I wear headphones on the train to town when travelling?",
         "May anyone wear the headphones, not in town, travelling on duty?"),
        ("Can I wear headphones in town?", "May anyone wear the headphones, in town?"),
    ],
)  # fmt: skip
def test_who_goes_to_a_place_or_comes_from_it_is_not_there(question: str, read: str) -> None:
    assert opened("demo").read(question).text == read


@pytest.mark.parametrize(
    ("question", "read"),
    [
        ("On the workshop floor in my work jacket, which side is my name strip?",
         "Where must the name strip be worn, on the workshop floor, with the work jacket?"),
        ("Storm coat over jersey, where does the keeper's pin go?",
         "Where must the keeper's pin be worn, with the storm coat, with the service jersey?"),
        ("What does a diver have to take off?",
         "What must anyone with the diver qualification not wear?"),
        ("May a pilot with a badge from 2018 wear the old pattern?",
         "May anyone with the pilot qualification wear the old pattern pilot's badge, date of award from"
         " 1 January 2018 to 31 December 2018?"),
        ("Do I need a torch on night watch?", "Must anyone carry the pocket torch, on watch, at night?"),
        ("What do I do with a worn out jersey?", "What does clause Dress Order (2024) 8.11 say?"),
        ("What must we do with worn-out boots?", "What does clause Dress Order (2024) 8.11 say?"),
        ("Pilot badge from 2018, old pattern ok?",
         "May anyone with the pilot qualification wear the old pattern pilot's badge, date of award from"
         " 1 January 2018 to 31 December 2018?"),
    ],
)  # fmt: skip
def test_the_noun_of_the_question_is_what_is_asked_about(question: str, read: str) -> None:
    assert opened("demo").read(question).text == read


def test_no_word_of_what_a_thing_is_like_is_dropped() -> None:
    query = opened("demo").read("What is matt in boat rig?").query
    assert query is None or query.clause is not None
