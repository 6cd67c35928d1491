"""A trade that the program has not met: beekeepers, whose rig is also what they must wear at the hives."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import KnowledgeBase
from shell.layout import arrange

DAY = datetime.date(2026, 11, 28)
VOCABULARY = """
service: {id: hivers, label: Hivers, namespace: "https://hivers.example/"}
authorities: [{id: guild, label: Guild}]
branches: [{id: grafters, label: grafters}, {id: carters, label: carters}]
facts:
  - id: place
    label: place
    values: [{id: hives, label: at the hives}, {id: shed, label: in the shed}]
  - id: weather
    label: weather
    values:
      - {id: dry, label: dry weather, other labels: [sunny]}
      - {id: rain, label: rain, other labels: [raining]}
  - id: occasion
    label: occasion
    ask: What is the occasion?
    values:
      - {id: ordinary, label: ordinary day}
      - {id: feast, label: feast day}
      - {id: swarm, label: swarming}
      - {id: fair, label: at a fair}
      - {id: school, label: visiting a school}
  - {id: on-shift, label: on shift, kind: yes or no, ask: "Are you on shift?"}
  - {id: breeze, label: wind speed, kind: measure, unit: km/h, ask: "How windy is it?"}
rigs: [{id: hive-rig, label: hive rig}, {id: shed-rig, label: shed rig}]
aspects:
  - {id: lending, label: lending, kind: act, verb: lend, done: lent}
items:
  - {id: smock, label: rain smock, other labels: [smock], kind of: garment}
  - {id: veil, label: bee veil, kind of: garment, protects: [head, eyes]}
  - {id: gauntlets, label: hide gauntlets, everyday words: [gauntlets], kind of: garment, protects: [hands]}
  - {id: tag, label: name tag, kind of: insignia}
  - {id: sprig, label: thyme sprig, kind of: insignia}
  - {id: radio, label: field radio, other labels: [radio], kind of: carried}
  - {id: coverall, label: white coverall, everyday words: [coverall], kind of: garment}
  - {id: jacket, label: felt jacket, other labels: [felt coat], kind of: garment}
  - {id: mitts, label: hand cover, other labels: [gloves], kind of: garment}
  - {id: white-mitts, label: white gloves, kind of: mitts}
  - {id: wool-mitts, label: wool gloves, kind of: mitts}
  - {id: pocket, label: chest pocket of the felt coat, kind of: feature, part of: jacket}
  - {id: crest, label: guild crest, kind of: insignia}
  - {id: lapel, label: lapel, kind of: feature, part of: jacket}
  - {id: ribbon, label: blue ribbon, everyday words: [ribbon], kind of: insignia}
  - {id: stud, label: ear stud, kind of: accessory}
  - {id: hoop, label: ear hoop, kind of: accessory}
"""
BOOK = """
book: {id: rules, title: Rules, authority: guild}
edition: {id: "2020", title: Rules, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: At the hives the hive rig is worn. The rain smock is worn with it in rain or a wind above 50 km/h.
    rules:
      - {must: hive-rig, when: {place: hives}}
      - must: smock
        rig: hive-rig
        when: {any of: [{weather: rain}, {breeze: above 50 km/h}]}
      - may: smock
        rig: hive-rig
        unless: {any of: [{weather: rain}, {breeze: above 50 km/h}]}
  - clause: "2"
    text: The name tag is worn on the right breast.
    rules:
      - must: tag
      - must: tag
        position: {relation: "on", on: garment, side: right, text: on the right breast}
  - clause: "3"
    text: The field radio may be carried on shift.
    rules: [{may carry: radio, when: {on-shift: yes}}]
  - clause: "4"
    text: The rain smock is not ironed. The white coverall is dried in the loft.
    rules:
      - {must not: smock, care: iron}
      - {must: coverall, care: dry in the loft}
  - clause: "5"
    text: Grafters wear the thyme sprig. A badge that these rules do not name is not worn.
    rules:
      - {must: sprig, branch: grafters}
      - {must not: insignia, residual: yes}
  - clause: "6"
    text: The blue ribbon is worn on the left lapel of the felt jacket.
    rules:
      - must: ribbon
      - must: ribbon
        position: {relation: "on", feature: lapel, on: jacket, side: left}
  - clause: "7"
    text: Hide gauntlets and the bee veil are worn at the hives.
    rules: [{must: [gauntlets, veil], when: {place: hives}}]
  - clause: "8"
    text: Everybody owns two white coveralls and one rain smock. Ear studs are worn, ear hoops are not.
    rules:
      - {must own: [coverall, smock]}
      - {must: coverall, kit-count: at least 2}
      - {may: stud}
      - {must not: hoop}
  - clause: "10"
    text: White gloves are worn at a fair and on a visit to a school. Wool gloves may be worn in the shed.
    rules:
      - {must: white-mitts, when: {occasion: [fair, school]}}
      - {may: wool-mitts, when: {place: shed}}
  - clause: "11"
    text: The guild crest is worn above the chest pocket.
    rules:
      - {must: crest}
      - must: crest
        position: {relation: above, feature: pocket, on: jacket}
  - clause: "9"
    heading: Lost kit
    kind: procedure
    text: Kit that is lost is paid for by the member. Worn-out kit is exchanged at the shed.
"""
LETTER = """
book: {id: letter, title: Letter, authority: guild}
edition: {id: "2026", title: Letter, in force from: 2026-10-01}
clauses:
  - clause: "1"
    from: 2026-11-01
    replaces: rules/2020 clause 2
    text: From 1 November 2026 the name tag is worn on the left breast.
    rules:
      - must: tag
      - must: tag
        position: {relation: "on", on: garment, side: left, text: on the left breast}
  - clause: "2"
    from: 2027-01-01
    replaces: rules/2020 clause 3
    text: From 1 January 2027 the field radio is not carried on shift.
    rules: [{must not carry: radio, when: {on-shift: yes}}]
"""


@pytest.fixture(scope="module")
def hivers(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    folder: Path = tmp_path_factory.mktemp("hivers")
    for name, text in (("vocabulary", VOCABULARY), ("rules", BOOK), ("letter", LETTER)):
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return KnowledgeBase.open(folder, tmp_path_factory.mktemp("cache"))


ASKED = [
    # the words of a place are held against the law of the day that is named
    ("name tag on the right breast, 30 October 2026?", "Yes. The name tag must be worn on the right breast"),
    ("name tag on the left breast on 30 October 2026?", "No. The name tag must be worn on the right breast"),
    ("In October 2026, name tag on the right breast?", "Yes. The name tag must be worn on the right breast"),
    ("name tag on the right breast?", "No. The name tag must be worn on the left breast"),
    # "wear" is a word of its own
    ("wear my ear stud?", "Yes. The ear stud may be worn."),
    ("wear my rain smock in hive rig in the rain?", "Yes: the rain smock must be worn."),
    # a rig that is said alone is where one is, though it is a thing to put on as well
    ("It is raining. Hive rig. Smock or no smock?", "Yes: the rain smock must be worn."),
    ("Dry weather, hive rig, smock?", "Yes: the rain smock may or must be worn, depending on the wind"),
    # a denial that leads a question is none
    ("Isn't the blue ribbon worn on the right lapel?", "No. The blue ribbon must be worn on the lapel"),
    ("Isn't the blue ribbon worn on the left lapel?", "Yes. The blue ribbon must be worn on the lapel"),
    # going without what covers the hands is going without those that must be worn
    ("At a fair with bare hands?", "No: the white gloves must be worn"),
    ("At a fair without gloves?", "No: the white gloves must be worn"),
    # places, occasions and measures are said as people say them
    (
        "Where does the guild crest go?",
        "The guild crest must be worn above the chest pocket of the felt coat.",
    ),
    (
        "When must white gloves be worn?",
        "The white gloves must be worn when the wearer is at a fair or visiting",
    ),
    # what is made law already and will hold
    ("when were radios banned on shift", "Letter, clause 2, in force from 1 January 2027"),
    ("When does the new radio rule come in?", "Letter, clause 2, in force from 1 January 2027"),
    # a season that is spoken of as begun has begun
    ("Has the name tag rule changed this winter?", "Where the name tag is worn: must be on the right"),
    # how a thing is dried does not say whether it may be ironed
    ("I iron my white coverall, ok?", "The books are silent: no clause addresses whether the care"),
    ("How do I iron my white coverall?", "Rules, clause 4"),
    ("Can I iron my rain smock?", "No. The rain smock must not be ironed."),
]


@pytest.mark.parametrize(("question", "headline"), ASKED)
def test_is_answered(hivers: KnowledgeBase, question: str, headline: str) -> None:
    (answer,) = hivers.ask(question, as_of=DAY)
    assert answer.headline.startswith(headline)


def test_what_others_do_not_wear_is_not_left_out(hivers: KnowledgeBase) -> None:
    (answer,) = hivers.ask("which items must grafters wear that others don't", as_of=DAY)
    assert answer.reading.abstain is not None
    assert "others" in answer.reading.abstain.words


@pytest.mark.parametrize("question", ["must the name tag be on the smock", "name tag on the smock?"])
def test_one_garment_is_not_demanded_where_any_is_named(hivers: KnowledgeBase, question: str) -> None:
    """The rule says on which breast of a garment it goes, and not of which."""
    (answer,) = hivers.ask(question, as_of=DAY)
    assert not answer.headline.startswith("Yes. The name tag must be worn on the left breast")


def test_which_word_was_taken_for_no_thing_is_named(hivers: KnowledgeBase) -> None:
    """Sunglasses are no weather."""
    (answer,) = hivers.ask("sunnies on shift?", as_of=DAY)
    assert answer.ask is not None
    assert answer.ask.prompt == 'Which item is asked about? "sunnies" was taken for dry weather.'


def test_a_wind_is_said_in_the_unit_in_which_it_was_told(hivers: KnowledgeBase) -> None:
    (answer,) = hivers.ask("Wind is 40 mph, hive rig, smock?", as_of=DAY)
    assert answer.headline == "Yes: the rain smock must be worn."
    assert "wind speed 40 mph (64.4 km/h)" in answer.reading.text
    (again,) = hivers.ask(answer.reading.text, as_of=DAY)
    assert again.reading.query == answer.reading.query


def test_what_no_clause_requires_is_headed_so(hivers: KnowledgeBase) -> None:
    (answer,) = hivers.ask("does a carter have to carry a radio", as_of=DAY)
    (head, *_) = arrange(answer, hivers)
    assert (head.badge, answer.verdict) == ("NOT REQUIRED", "conditional")
