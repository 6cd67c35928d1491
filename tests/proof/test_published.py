"""Published worked examples with known outcomes, each a little rule book in `published/`, its source on top.

`PUBLISHED` gives what the rule books say; where the source says something else, `DIFFERS` says what and why.
"""

from __future__ import annotations

import datetime
from functools import cache
from pathlib import Path

import pytest

from kb.model.lookup import Lookup
from kb.model.records import Case
from kb.model.values import Choices, ValueSet, point
from kb.reasoner import Engine, possible_facts, rows
from kb.sources import LoadResult, load_texts

FOLDER = Path(__file__).parent / "published"
DAY = datetime.date(2026, 11, 25)
HEAD = "head.yaml"

# example, item, aspect, facts ("fact=value"), verdicts over all completions
PUBLISHED = [
    ("penguin", "tweety", "flying", "injured=no", "prohibited"),
    ("penguin", "freddie", "flying", "injured=yes", "prohibited"),
    ("penguin", "freddie", "flying", "injured=no", "required"),
    ("nixon", "pacifism", "holding", "quaker=yes republican=yes", "conflict"),
    ("nixon", "pacifism", "holding", "quaker=yes republican=no", "required"),
    ("team", "thing", "holding", "", "required"),
    ("platypus", "mammal", "holding", "monotreme=yes fur=yes eggs=yes bill=yes", "required"),
    ("platypus", "mammal", "holding", "monotreme=no fur=yes eggs=yes bill=yes", "conflict"),
    ("chain", "bird", "flying", "", "required"),
    ("chain", "penguin", "flying", "magic=no", "prohibited"),
    ("chain", "penguin", "flying", "magic=yes", "required"),
    ("reinstated", "hat", "wear", "wet=no ill=no", "required"),
    ("reinstated", "hat", "wear", "wet=yes ill=no", "prohibited"),
    ("reinstated", "hat", "wear", "wet=yes ill=yes", "permitted"),
    ("ambiguity", "a", "wear", "", "conflict"),
    ("ambiguity", "p", "wear", "", "prohibited required"),
    ("ambiguity", "p", "wear", "worn:a=no", "required"),
    ("doctoral", "alice", "teaching", "", "required"),
    ("doctoral", "bob", "teaching", "", "prohibited"),
    ("students", "employment", "holding", "adult=yes student=no", "required"),
    ("students", "employment", "holding", "student=yes", "prohibited"),
    ("tina", "tina", "flying", "scared=no", "prohibited"),
    ("tina", "tina", "flying", "scared=yes", "required"),
    ("nationality", "citizenship", "holding", "born=1983 born-in-uk=yes parent-citizen=yes", "required"),
    ("nationality", "citizenship", "holding", "born=1983 born-in-uk=yes parent-settled=yes", "required"),
    ("nationality", "citizenship", "holding", "born=1982", "silent"),
    ("nationality", "citizenship", "holding", "born=1983 found-abandoned=yes contrary-shown=no", "required"),
    ("nationality", "citizenship", "holding", "born=1983 born-in-uk=yes found-abandoned=no",
     "required silent"),
    ("two-exceptions", "allowance", "holding", "parent=yes rich=yes", "conflict"),
    ("two-exceptions", "allowance", "holding", "parent=yes rich=no", "required"),
    ("two-exceptions", "allowance", "holding", "parent=no rich=yes", "prohibited"),
    ("two-exceptions", "allowance", "holding", "parent=no rich=no", "permitted"),
    ("fence", "fence", "wear", "by-the-sea=no worn:fence=yes", "prohibited"),
    ("fence", "fence", "colour", "by-the-sea=no worn:fence=yes", "required"),
    ("fence", "fence", "wear", "by-the-sea=yes worn:fence=yes", "permitted"),
    ("fence", "fence", "colour", "by-the-sea=yes worn:fence=yes", "silent"),
    ("chisholm", "going", "wear", "worn:going=no", "required"),
    ("chisholm", "telling", "wear", "worn:going=no", "prohibited"),
    ("chisholm", "telling", "wear", "worn:going=yes", "required"),
    ("murder", "murder", "wear", "worn:murder=yes", "prohibited"),
    ("murder", "gentle-murder", "wear", "worn:murder=yes", "required"),
    ("murder", "gentle-murder", "wear", "worn:murder=no", "prohibited"),
    ("reykjavik", "telling-other", "wear", "worn:telling-one=no", "prohibited"),
    ("reykjavik", "telling-other", "wear", "worn:telling-one=yes", "required"),
    ("ross", "mailing", "wear", "", "required"),
    ("ross", "burning", "wear", "", "silent"),
    ("free-choice", "pie", "wear", "", "permitted"),
    ("free-choice", "ice-cream", "wear", "", "permitted"),
    ("odrl-invalid", "asset", "carrying", "", "conflict"),
    ("odrl-perm", "asset", "carrying", "", "permitted"),
    ("odrl-prohibit", "asset", "carrying", "", "prohibited"),
    ("odrl-remedy", "indexing", "wear", "worn:indexing=no", "prohibited"),
    ("odrl-remedy", "anonymising", "wear", "worn:indexing=yes", "required"),
    ("odrl-remedy", "anonymising", "wear", "worn:indexing=no", "silent"),
    ("odrl-duty", "playing", "carrying", "compensated=yes", "permitted"),
    ("odrl-duty", "playing", "carrying", "compensated=no", "silent"),
    ("credit", "credit-activity", "wear", "holds:licence=no", "prohibited"),
    ("credit", "penalty", "wear", "holds:licence=no worn:credit-activity=yes", "required"),
    ("credit", "penalty", "wear", "holds:licence=yes worn:credit-activity=yes", "silent"),
    ("superior", "assembly", "holding", "sunday=yes", "permitted"),
    ("posterior", "cat", "carrying", "", "prohibited"),
    ("posterior", "guide-dog", "carrying", "", "permitted"),
    ("vehicles", "vehicle", "carrying", "", "prohibited"),
    ("vehicles", "ambulance", "carrying", "", "permitted"),
    ("vehicles", "toy-car", "carrying", "", "prohibited silent"),
]  # fmt: skip

DIFFERS = {
    ("nixon", "quaker=yes republican=yes"): (
        "Sceptical default logics conclude neither side. A dress question has to be settled, so that "
        "the tie is reported as a conflict, with both clauses."
    ),
    ("platypus", "monotreme=no fur=yes eggs=yes bill=yes"): (
        "Defeasible logic concludes neither side where one attacker is left; ours is a conflict."
    ),
    ("reinstated", "wet=yes ill=yes"): (
        "Under reinstatement the duty r1 would stand again, its attacker r2 being defeated. Here what "
        "is beaten stays beaten: the last exception permits, and revives no duty."
    ),
    ("ambiguity", ""): (
        "In the source r4 fires when `a` is concluded. A condition of ours is a fact of the case, "
        "never what another rule says, so that ambiguity does not travel: blocking's answer where the "
        "a is not worn, and the answer depends on that fact."
    ),
    ("odrl-invalid", ""): (
        "In ODRL the strategy `invalid` voids the whole policy; ours reports the conflict on the one "
        "thing, and answers all other questions."
    ),
    ("odrl-remedy", "worn:indexing=yes"): (
        "In ODRL a fulfilled remedy also ends the infringement; ours says what to do, and the "
        "prohibition stands."
    ),
    ("odrl-duty", "compensated=no"): (
        "In ODRL what is not permitted is at the discretion of the implementation; ours is silent, "
        "never allowed."
    ),
}


@cache
def load(name: str) -> LoadResult:
    files = [HEAD, f"{name}.yaml", *(p.name for p in FOLDER.glob(f"{name}-2.yaml"))]
    return load_texts({file: (FOLDER / file).read_text(encoding="utf-8") for file in files})


def lookup_of(name: str) -> Lookup:
    loaded = load(name)
    assert loaded.base is not None, loaded.problems
    assert not [problem for problem in loaded.problems if problem.severity == "error"]
    return Lookup(loaded.base)


def stated(text: str) -> tuple[tuple[str, ValueSet], ...]:
    facts = []
    for part in text.split():
        name, _, value = part.partition("=")
        is_date = value.isdigit()  # a year stands for the third of May in it
        number = datetime.date(int(value), 5, 3).toordinal() if is_date else 0
        facts.append((name, point(number) if is_date else Choices(frozenset({value}))))
    return tuple(facts)


def verdicts(name: str, item: str, aspect: str, facts: str) -> set[str]:
    lookup = lookup_of(name)
    engine = Engine(lookup, DAY)
    possible = possible_facts(Case(as_of=DAY, facts=stated(facts)), (item,), False, lookup)
    assert engine.check_case(possible)
    return {verdict for _, verdict in rows(engine.problem(engine.group(item, aspect), possible).verdicts())}


@pytest.mark.parametrize(("name", "item", "aspect", "facts", "expected"), PUBLISHED)
def test_a_published_example_has_its_outcome(
    name: str, item: str, aspect: str, facts: str, expected: str
) -> None:
    assert verdicts(name, item, aspect, facts) == set(expected.split())


def test_an_aspect_keeps_the_values_that_the_example_leaves_open() -> None:
    """Royal elephants: Clyde is not grey, by the rule on what is more specific."""
    for item, expected in (("african-elephant", {"grey"}), ("clyde", {"white", "green"})):
        engine = Engine(lookup_of("elephants"), DAY)
        group = engine.group(item, "colour")
        (decision,) = engine.problem(group, {}).decisions()
        left = {
            member
            for values, fate in zip(group.classes, decision.fates, strict=True)
            if fate.status != "closed" and isinstance(values, Choices)
            for member in values.members
        }
        assert left == expected


def test_a_later_general_law_does_not_derogate_from_an_earlier_special_one() -> None:
    early, late = "early/1950/1-1", "late/2000/1-1"
    engine = Engine(lookup_of("posterior"), DAY)
    general = engine.precedence.win(early, late)
    special = engine.precedence.win("early/1950/2-1", late)
    assert general is not None
    assert special is not None
    assert (general.winner, general.principle) == (late, "edition")
    assert (special.winner, special.principle) == ("early/1950/2-1", "specificity")


def test_a_circle_of_exceptions_is_an_error_when_the_books_are_read() -> None:
    codes = [problem.code for problem in load("circle").problems if problem.severity == "error"]
    assert codes == ["circular-exception"]


def test_every_example_names_its_source_and_is_tried() -> None:
    tried = {name for name, *_ in PUBLISHED} | {"elephants", "posterior", "circle"}
    names = {path.stem.removesuffix("-2") for path in FOLDER.glob("*.yaml")} - {"head"}
    assert names == tried
    assert len(names) >= 20
    for name in names:
        assert (FOLDER / f"{name}.yaml").read_text(encoding="utf-8").startswith("# Source: "), name


def test_every_difference_is_of_an_example_that_is_tried() -> None:
    assert set(DIFFERS) <= {(name, facts) for name, _, _, facts, _ in PUBLISHED}
