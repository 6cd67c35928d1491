"""Every example of the page on semantics, run: its rules in little books, its last lines as expectations."""

from __future__ import annotations

import datetime
import re
from functools import cache

import pytest

from kb.model.lookup import Lookup
from kb.model.records import Case
from kb.model.values import OTHER, Choices, ValueSet, contains, others_in, point
from kb.reasoner import Engine, facts_of, possible_facts, rows
from kb.sources import load_texts
from tests.documents.pages import ROOT, fences_of, text_of

PAGE = ROOT / "kb" / "docs" / "semantics.md"
DAY = datetime.date(2026, 11, 25)
CASES = {"foul": "weather=foul", "fair": "weather=fair", "ashore": "place=ashore", "afloat": "place=afloat"}
VOCABULARY = """
service: {id: page, label: Page, namespace: "https://page.example/"}
authorities: [{id: board, label: Board}, {id: station, label: Station}]
facts:
  - id: weather
    label: weather
    values: [{id: fair, label: fair}, {id: foul, label: foul}, {id: snow, label: snow}]
  - {id: place, label: place, values: [{id: ashore, label: ashore}, {id: afloat, label: afloat}]}
  - {id: temperature, label: air temperature, kind: measure, unit: °C}
  - {id: winter, label: winter, kind: term}
aspects: [{id: colour, values: [{id: white, label: white}, {id: navy, label: navy}, {id: red, label: red}]}]
items:
  - {id: headgear, label: headgear, kind of: garment}
  - {id: cap, label: cap, kind of: headgear}
  - {id: hood, label: hood, kind of: headgear}
  - {id: scarf, label: scarf, kind of: garment}
  - {id: collar, label: collar, kind of: garment}
"""
BOOK = """
book: {{id: {book}, title: {book}, authority: {authority}}}
edition: {{id: "{year}", title: {book} {year}, in force from: {year}-01-01}}
clauses:
{clauses}"""
FIXED = """  - clause: "8"
    kind: definition
    text: Winter is below 0 degrees.
    defines: [{term: winter, when: {temperature: below 0 °C}}]
  - clause: "9"
    kind: procedure
    text: The Station may depart from the Order in headgear.
    delegates: [{id: local-headgear, to: station, items: [headgear]}]
"""
PARTS = {"order 2020": "board", "notice 2024": "board", "station 2024": "station"}


def rules_of(text: str) -> dict[str, list[str]]:
    """The rules of an example by the edition they stand in."""
    found: dict[str, list[str]] = {"order 2020": []}
    for line in text.splitlines():
        if line.startswith("- "):
            found["order 2020"].append(line[2:])
        elif not line.startswith("#"):
            name, _, inner = line.partition(": [")
            found[f"{name} 2024"] = [inner[:-1]]
    return found


@cache
def lookup_of(text: str) -> Lookup:
    """The books of an example."""
    files = {"vocabulary.yaml": VOCABULARY}
    for part, rules in rules_of(text).items():
        book, year = part.split()
        listed = "".join(f"      - {rule}\n" for rule in rules)
        if part != "order 2020":
            listed = f"      [{rules[0]}]\n"
        clauses = f'  - clause: "1"\n    text: The rules of the example.\n    rules:\n{listed}'
        if part == "order 2020":
            clauses += FIXED
        files[f"{book}-{year}.yaml"] = BOOK.format(
            book=book, year=year, authority=PARTS[part], clauses=clauses
        )
    loaded = load_texts(files)
    assert loaded.base is not None, loaded.problems
    return Lookup(loaded.base)


def case_of(text: str) -> Case:
    day, facts = DAY, []
    words = re.sub(r"\bon (\S+)", r"on=\1", text).split()
    for word in words:
        name, _, value = CASES.get(word, word).partition("=")
        values: ValueSet = Choices(frozenset({value}))
        if name == "on":
            day = datetime.date.fromisoformat(value)
        else:
            facts.append((name, point(int(value)) if name == "temperature" else values))
    return Case(as_of=day, facts=tuple(facts))


def outcome(lookup: Lookup, what: str, case: Case, wanted: str) -> str:
    """What the reasoner says, in the words of the page."""
    item, aspect, value = (*what.split(), *("wear", "")[what.count(" ") :])
    engine = Engine(lookup, case.as_of)
    group = engine.group(item, aspect, others_in(Choices(frozenset({value}))))
    problem = engine.problem(group, possible_facts(case, (item,), False, lookup))
    if value.startswith(OTHER):
        (decision,) = problem.decisions()
        fates = zip(group.classes, decision.fates, strict=True)
        return ", ".join(fate.status for values, fate in fates if contains(values, value))
    if wanted.startswith("open: "):
        (decision,) = problem.decisions()
        fates = zip(group.classes, decision.fates, strict=True)
        left = {
            value
            for values, fate in fates
            if fate.status != "closed" and isinstance(values, Choices)
            for value in values.members
        }
        return f"open: {', '.join(sorted(left))}"
    tree = problem.verdicts()
    by = facts_of(tree)
    verdicts = ", ".join(sorted({verdict for _, verdict in rows(tree)}))
    return f"{verdicts} by {', '.join(by)}" if by else verdicts


EXAMPLES = [fence for fence in fences_of(PAGE) if fence.language == "yaml"]


@pytest.mark.parametrize("fence", EXAMPLES, ids=[f"line {fence.line}" for fence in EXAMPLES])
def test_an_example_of_the_page_holds(fence) -> None:  # type: ignore[no-untyped-def]
    lines = [line[2:].split("|") for line in fence.text.splitlines() if line.startswith("# ")]
    assert lines
    lookup = lookup_of(fence.text)
    for what, case, wanted in lines:
        assert outcome(lookup, what.strip(), case_of(case), wanted.strip()) == wanted.strip()


def test_every_section_has_an_example() -> None:
    """All but the introduction and the table of sources."""
    sections = re.split(r"^## ", text_of(PAGE), flags=re.MULTILINE)[1:]
    without = [section.splitlines()[0] for section in sections if "```yaml" not in section]
    assert without == ["What it follows, and where it departs"]
