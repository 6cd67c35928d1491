"""Colours and finishes that no book names: what is answered, over several books, and that it is proved.

Decided from the rules by the page on semantics; the books are invented.
"""

from __future__ import annotations

import datetime
import json
from pathlib import Path

import jsonschema
import pytest

from kb import Answer, KnowledgeBase, answer_to_json
from tests.opening import opened

ROOT = Path(__file__).parents[2]
DAY = datetime.date(2026, 11, 25)
SCHEMA = json.loads((ROOT / "ontology/schemas/answer.schema.json").read_text(encoding="utf-8"))
VOCABULARY = """
service: {id: kilns, label: Kiln Wardens, namespace: "https://kilns.example/"}
authorities: [{id: guild, label: Guild}]
facts: [{id: weather, label: weather, values: [{id: fair, label: fair}, {id: foul, label: foul}]}]
aspects:
  - id: colour
    values:
      - {id: navy, label: navy blue}
      - {id: sky, label: sky blue}
      - {id: white, label: white}
      - {id: slate, label: slate grey}
      - {id: grey, label: grey}
      - {id: plain, label: a plain colour}
      - {id: tawny, label: light brown}
  - {id: finish, values: [{id: satin, label: satin}, {id: polished, label: polished}]}
items:
  - {id: apron, label: apron, kind of: garment}
  - {id: cape, label: cape, kind of: garment}
  - {id: sash, label: sash, kind of: garment}
  - {id: hood, label: hood, kind of: garment}
  - {id: smock, label: smock, kind of: garment}
  - {id: mitts, label: mitts, kind of: garment}
  - {id: visor, label: visor, kind of: garment}
  - {id: muffler, label: muffler, kind of: garment}
  - {id: tabard, label: tabard, kind of: garment}
  - {id: bib, label: bib, kind of: garment}
"""
BOOK = """
book: {id: rules, title: Rules, authority: guild}
edition: {id: "2020", title: Rules, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: The apron is navy blue, the cape navy or sky blue, the hood not white.
    rules:
      - {must: apron, colour: navy}
      - {must: cape, colour: [navy, sky]}
      - {must not: hood, colour: white}
      - {may: [apron, cape, sash, hood, smock, visor, tabard, bib]}
      - {must: bib, colour: slate}
  - clause: "2"
    text: The sash may be white and need not be navy blue in foul weather.
    rules:
      - {may: sash, colour: white}
      - {need not: sash, colour: navy, when: {weather: foul}}
  - clause: "3"
    text: The tabard is light brown or of a plain colour; the visor is polished; the muffler is not worn.
    rules:
      - {must: tabard, colour: [tawny, plain]}
      - {must: visor, finish: polished}
      - {must not: muffler}
  - clause: "4"
    text: What is not named is not worn.
    rules: [{must not: garment, residual: yes}]
"""
# The question, the verdict (or what is asked back), and how the headline begins.
KILNS = (
    ("May the apron be green?", "prohibited", "No. The colour of the apron must be navy blue."),
    ("Can my apron be bright blue?", "prohibited", "No. The colour of the apron must be navy blue."),
    ("Must the apron be pink?", "prohibited", "No. The colour of the apron must be navy blue."),
    ("May I wear a royal blue apron?", "prohibited", "No. The colour of the apron must be navy blue."),
    ("Can the apron be blue?", "required", "Yes. The colour of the apron must be navy blue."),
    ("Can the apron be sky blue?", "prohibited", "No. The colour of the apron must not be sky blue."),
    ("Can the cape be blue?", "Which \"blue\" is meant?", ""),
    ("Can the cape be red?", "prohibited", "No. The colour of the cape must be either navy blue or sky"),
    ("Can the cape be dark blue?", "The books do not say whether \"dark blue\" is navy blue.", ""),
    ("Can the hood be red?", "silent", "The books are silent: no clause addresses whether the colour"),
    ("Can the hood be cream?", "The books do not say whether \"cream\" is white.", ""),
    ("May the smock be orange?", "silent", "The books are silent: no clause addresses whether the colour"),
    ("Can the sash be purple?", "conditional", "Yes. The colour of the sash may be purple, when"),
    ("Can the sash be purple in foul weather?", "permitted", "Yes. The colour of the sash may be purple."),
    ("Can the sash be purple in fair weather?", "silent", "The books are silent"),
    ("Can the tabard be brown?", "Which \"brown\" is meant?", ""),
    ("Can the tabard be pink?", "The books do not say whether \"pink\" is a plain colour.", ""),
    ("Can the visor be matt?", "prohibited", "No. The finish of the visor must be polished."),
    ("Can the visor be glossy?", "The books do not say whether \"glossy\" is polished.", ""),
    ("Can the bib be grey?", "prohibited", "No. The colour of the bib must not be grey."),
    ("Can the bib be charcoal grey?", "prohibited", "No. The colour of the bib must be slate grey."),
    ("Can the bib be brown?", "prohibited", "No. The colour of the bib must be slate grey."),
    ("May I leave off a pink bib?", "The books name no colour \"pink\".", ""),
    ("May the muffler be pink?", "prohibited", "No. The muffler must not be worn."),
    ("May the mitts be pink?", "prohibited", "No. The mitts must not be worn."),
    ("What colours may the cape be?", "required", "The colour of the cape must be either navy blue or sky"),
    ("Can the apron be any other colour?", "required", "The colour of the apron must be navy blue."),
)  # fmt: skip
DEMO = (
    ("I hold a religious waiver. Might my head covering be green?", "prohibited",
     "No. The colour of the religious head covering must be either black or navy blue."),
    ("Can I dye my hair pink?", "prohibited", "No. The colour of the hair must be natural colour."),
    ("Can my hair be brown?", "required", "Yes. The colour of the hair must be natural colour."),
    ("May I wear red deck gloves?", "silent", "The books are silent: no clause addresses whether the colour"),
    ("Can my black shoes be matt?", "prohibited", "No. The finish of the black shoes must not be matt."),
)  # fmt: skip
SECOND = (
    ("Is a purple helmet allowed?", "conditional", "No. The colour of the helmet must not be purple."),
    ("May a leader wear a pink helmet?", "prohibited", "No. The colour of the helmet must be white."),
)  # fmt: skip
THIRD = (
    ("Can I carry a pink umbrella?", "prohibited", "No. The colour of the umbrella must be black."),
    ("Can the fleece be dark grey?", "The books do not say whether \"dark grey\" is grey.", ""),
    ("Is it ok if my hair is blonde?", "required", "Yes. The colour of the hair must be a natural hair"),
)  # fmt: skip
FOURTH = (
    ("May I wear a purple tie at Kiln Street?", "prohibited", "No. The colour of the tie must be navy blue."),
    ("Can my hair tie be gold?", "prohibited",
     "No. The colour of the hair tie must be either black, brown or navy blue."),
)  # fmt: skip
SETS = {"kilns": KILNS, "demo": DEMO, "second": SECOND, "third": THIRD, "fourth": FOURTH}
ALL = [(books, *line) for books, lines in SETS.items() for line in lines]


@pytest.fixture(scope="module")
def bases(tmp_path_factory: pytest.TempPathFactory) -> dict[str, KnowledgeBase]:
    kilns = tmp_path_factory.mktemp("kilns")
    (kilns / "vocabulary.yaml").write_text(VOCABULARY, encoding="utf-8")
    (kilns / "rules.yaml").write_text(BOOK, encoding="utf-8")
    bases = {name: opened(name) for name in ("demo", "second", "third", "fourth")}
    return bases | {"kilns": KnowledgeBase.open(kilns, tmp_path_factory.mktemp("cache"))}


def answer(base: KnowledgeBase, question: str) -> Answer:
    (found,) = base.ask(question, as_of=DAY)
    return found


@pytest.mark.parametrize(("books", "question", "verdict", "headline"), ALL, ids=[line[1] for line in ALL])
def test_a_value_that_no_book_names(
    bases: dict[str, KnowledgeBase], books: str, question: str, verdict: str, headline: str
) -> None:
    found = answer(bases[books], question)
    if not headline:
        assert found.ask is not None
        assert found.ask.prompt.startswith(verdict)
    else:
        assert (found.verdict, found.headline[: len(headline)]) == (verdict, headline)
    saved = json.loads(answer_to_json(found))
    jsonschema.validate(saved, SCHEMA, jsonschema.Draft202012Validator)
    assert bases[books].verify(saved) is None


def test_what_is_said_is_read_back(bases: dict[str, KnowledgeBase]) -> None:
    found = answer(bases["kilns"], "Can my apron be dark green?")
    assert found.reading.text == "May the colour of the apron be dark green?"
    assert json.loads(answer_to_json(found))["reading"]["value"] == ["other:dark-green"]


def test_silence_on_a_colour_says_what_is_so_of_wearing(bases: dict[str, KnowledgeBase]) -> None:
    assert "The hood may be worn." in answer(bases["kilns"], "Can the hood be red?").notes


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("reading", "value"), ["other:navy-blue"]),
        (("reading", "value"), ["other:"]),
        (("reading", "value"), ["green"]),
        (("verdict",), "permitted"),
        (("cases", 0, "verdict"), "permitted"),
        (("derivation", 0, "values", 0, "status"), "supported"),
    ],
)
def test_a_changed_answer_is_refused(
    bases: dict[str, KnowledgeBase], path: tuple[str | int, ...], value: object
) -> None:
    saved = json.loads(answer_to_json(answer(bases["kilns"], "May the apron be green?")))
    place = saved
    for step in path[:-1]:
        place = place[step]
    assert place[path[-1]] != value
    place[path[-1]] = value
    assert bases["kilns"].verify(saved) is not None


def test_an_answer_of_green_proves_nothing_of_red(bases: dict[str, KnowledgeBase]) -> None:
    saved = json.loads(answer_to_json(answer(bases["kilns"], "May the apron be green?")))
    saved["reading"]["value"] = ["other:red"]
    assert bases["kilns"].verify(saved) is not None
