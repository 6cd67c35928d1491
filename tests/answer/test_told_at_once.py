"""What the first line says: nothing that was asked is lost in it, and it says no more than the rules do."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from kb import KnowledgeBase
from shell.layout import arrange
from tests.opening import opened

DAY = datetime.date(2026, 11, 25)
VOCABULARY = """
service: {id: bakers, label: Bakers, namespace: "https://bakers.example/"}
authorities: [{id: guild, label: Guild}]
branches:
  - {id: counter, label: counter hands}
  - {id: oven, label: oven hands}
  - {id: mill, label: mill hands}
  - {id: carts, label: carters}
facts:
  - id: place
    label: place
    values: [{id: shop, label: shop}, {id: loft, label: flour loft}, {id: yard, label: yard}]
aspects:
  - {id: colour, values: [{id: clear, label: clear}, {id: red, label: red}]}
items:
  - {id: varnish, label: nail varnish, kind of: grooming}
  - {id: clogs, label: clogs, kind of: garment}
"""
BOOK = """
book: {id: rules, title: Rules, authority: guild}
edition: {id: "2020", title: Rules, in force from: 2020-01-01}
clauses:
  - clause: "1"
    text: Nail varnish is worn by counter hands only, and it is clear.
    rules:
      - {may: varnish, branch: counter}
      - {must not: varnish, unless: {branch: counter}}
      - {must: varnish, colour: clear}
"""


@pytest.fixture(scope="module")
def bakers(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    folder: Path = tmp_path_factory.mktemp("bakers")
    for name, text in (("vocabulary", VOCABULARY), ("rules", BOOK)):
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return KnowledgeBase.open(folder, tmp_path_factory.mktemp("cache"))


@pytest.mark.parametrize(
    ("question", "verdict", "told"),
    [
        ("Is red nail varnish ok?", "prohibited", "red"),
        ("Is red nail varnish alright for the counter girls?", "prohibited", "red"),
        ("Is red nail varnish ok for oven hands?", "prohibited", "red"),
        ("Is clear nail varnish ok?", "conditional", "clear"),
    ],
)
def test_a_colour_that_was_asked_about_is_not_lost(
    bakers: KnowledgeBase, question: str, verdict: str, told: str
) -> None:
    """Only some may wear it at all, and they wear it clear."""
    (answer,) = bakers.ask(question, as_of=DAY)
    assert answer.verdict == verdict
    assert answer.headline.startswith("No")
    assert told in " ".join((answer.reading.text, *answer.reading.beside, *answer.reading.unused))


def test_a_colour_of_what_is_not_worn_is_named_as_not_used() -> None:
    (answer,) = opened("demo").ask("Are red earrings ok?", as_of=DAY)
    assert answer.headline == "No. The earrings must not be worn."
    assert answer.reading.unused == ("red",)


@pytest.mark.parametrize(
    ("question", "badge", "text"),
    [
        ("Do I need a whistle off watch?", "YES, IN BOAT RIG", "The whistle must be carried; in any other"),
        (
            "Can a K5 wear the shore coat on watch?",
            "NO, IN ANY RIG EXCEPT SHORE RIG",
            "The shore coat must not be worn; in shore rig the books are silent.",
        ),
        (
            "Is it ok not to wear a cap in shore rig indoors?",
            "YES, ORDINARILY",
            "The service cap must not be worn, unless",
        ),
    ],
)
def test_what_holds_in_one_rig_is_said_of_that_rig(question: str, badge: str, text: str) -> None:
    (answer,) = opened("demo").ask(question, as_of=DAY)
    first = arrange(answer, opened("demo"))[0]
    assert first.badge == badge  # type: ignore[union-attr]
    assert first.text.startswith(text)  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("question", "allowed"),
    [
        ("How do I wash the liner?", ()),
        ("Is the jersey worn inside or outside the trousers?", ()),
        ("What colours of hair grip can I use?", ()),
        ("Can I wear 3 rings?", ("at most 2",)),
    ],
)
def test_what_must_be_done_is_not_listed_as_left_to_choose(question: str, allowed: tuple[str, ...]) -> None:
    (answer,) = opened("demo").ask(question, as_of=DAY)
    blocks = arrange(answer, opened("demo"))
    lists = [block for block in blocks if getattr(block, "title", "") == "Allowed"]
    assert [getattr(block, "points", ()) for block in lists] == ([allowed] if allowed else [])


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("Is there anywhere I can wear sunglasses?", "The sunglasses may be worn when it is day"),
        ("Is there any rig in which I can wear earrings?", "The earrings must not be worn."),
        (
            "Is there any rig I may wear the shore coat in?",
            "The shore coat may be worn when the wearer is in",
        ),
    ],
)
def test_whether_there_is_any_case_is_answered_with_the_cases(question: str, headline: str) -> None:
    (answer,) = opened("demo").ask(question, as_of=DAY)
    assert answer.headline.startswith(headline)


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        ("May I wear the shore coat with the jersey in watch rig?", "No. The shore coat must not be worn."),
        ("Liner over jersey, no coat, in the mess?", "No. The quilted liner must not be worn."),
        (
            "May I wear the storm hood with the storm hat in storm rig?",
            "No. The storm hood must not be worn with the storm hat.",
        ),
        (
            "May I wear the braces with the belt and the dress trousers?",
            "No. The braces must not be worn with the belt.",
        ),
    ],
)
def test_what_is_no_ground_of_a_ban_does_not_stand_in_it(question: str, headline: str) -> None:
    """A thing worn beside it without which it may not be worn either."""
    (answer,) = opened("demo").ask(question, as_of=DAY)
    assert answer.headline == headline


@pytest.mark.parametrize(
    ("question", "headline"),
    [
        (
            "Can I wear headphones when travelling?",
            "No. The headphones must not be worn when the wearer is in town or on watch; otherwise they"
            " may be.",
        ),
        (
            "Do I still need the cap with a turban on parade?",
            "No, in parade rig: the service cap need not be worn with the religious head covering when the"
            " wearer holds the religious waiver; otherwise it must be; in any other rig it depends on"
            " further facts.",
        ),
    ],
)
def test_what_is_out_of_the_ordinary_is_no_double_denial(question: str, headline: str) -> None:
    (answer,) = opened("demo").ask(question, as_of=DAY)
    assert answer.headline == headline
