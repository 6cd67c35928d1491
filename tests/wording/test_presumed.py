# ruff: noqa: E501  tables read better on one line
"""What goes without saying of who asks: on duty, in uniform, and dressed as the books order."""

from __future__ import annotations

import datetime
from collections.abc import Mapping

import pytest

from kb import KnowledgeBase
from kb.model.values import choices
from kb.wording.presumed import goes_on, has_two_sides, out_of_uniform
from kb.wording.trades import outfit_rigs, rig_ordered
from kb.wording.unless import usually
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


@pytest.fixture(scope="module")
def bases() -> Mapping[str, KnowledgeBase]:
    return {name: opened(name) for name in ("demo", "sixth", "seventh", "eighth")}


@pytest.mark.parametrize(
    ("books", "private"),
    [("demo", ()), ("sixth", ("own clothes",)), ("seventh", ("civilian clothes",)), ("eighth", ("private clothes",))],
)  # fmt: skip
def test_own_clothes_are_no_uniform(
    bases: Mapping[str, KnowledgeBase], books: str, private: tuple[str, ...]
) -> None:
    lookup = bases[books].lookup
    found = out_of_uniform(lookup).members
    assert tuple(v.label for v in lookup.facts["rig"].values if v.id in found) == private


@pytest.mark.parametrize(
    ("branch", "place", "rigs"),
    [
        ("room-staff", None, {"rooms-dress"}),
        ("room-staff", "reception", {"salon"}),  # where another outfit is ordered in its place
        ("station", None, {"platform-dress"}),
        ("track", None, {"ballast"}),
    ],
)
def test_who_asks_wears_the_outfit_that_is_ordered(
    bases: Mapping[str, KnowledgeBase], branch: str, place: str | None, rigs: set[str]
) -> None:
    lookup = bases["eighth"].lookup
    stated = {"branch": choices(branch), **({"place": choices(place)} if place else {})}
    known = {**goes_on(lookup, stated.items()), **stated}
    assert known["duty"] == choices("on-duty")
    assert rig_ordered(lookup, known, DAY) == {"rig": choices(*rigs)}


def test_nothing_is_ordered_off_duty_or_of_nobody(bases: Mapping[str, KnowledgeBase]) -> None:
    lookup = bases["eighth"].lookup
    off = {"branch": choices("station"), "duty": choices("off-duty")}
    assert "duty" not in goes_on(lookup, off.items())
    assert rig_ordered(lookup, off, DAY) == {}
    assert rig_ordered(lookup, goes_on(lookup, ()), DAY) == {}


def test_only_outfits_that_the_books_tie_to_a_rig_have_one(bases: Mapping[str, KnowledgeBase]) -> None:
    rigs = outfit_rigs(bases["eighth"].lookup)
    assert rigs["rooms-outfit"] == choices("rooms-dress")
    assert "grey-cardigan" not in rigs


def test_a_situation_that_is_only_ever_excepted_has_one_side(bases: Mapping[str, KnowledgeBase]) -> None:
    assert not has_two_sides(bases["eighth"].lookup, "short-stay")
    assert has_two_sides(bases["demo"].lookup, "indoors")


@pytest.mark.parametrize(
    ("books", "question", "headline"),
    [
        (
            "eighth",
            "Can room staff keep the grey cardigan on while making the beds?",
            "No, in Rooms Dress. The grey cardigan must not be worn; in any other rig it depends on further facts.",
        ),
        (
            "eighth",
            "Can anybody wear the straw hat in the kitchen?",
            "No. The straw hat must not be worn, unless the wearer is in private clothes or ",
        ),
        # Whoever asks to wear another outfit does not mean the one that is ordered.
        ("sixth", "Can Range be worn on the Upper Floors?", "No. The Range must not be worn; when "),
    ],
)
def test_headlines_lead_with_what_holds_in_uniform(
    bases: Mapping[str, KnowledgeBase], books: str, question: str, headline: str
) -> None:
    (answer,) = bases[books].ask(question, as_of=DAY)
    assert answer.headline.startswith(headline)


@pytest.mark.parametrize(
    ("told", "rig"),
    [
        ({"branch": "guards", "place": "platform"}, None),
        ({"branch": "station", "place": "platform"}, "platform-dress"),
        ({"branch": "guards", "place": "train"}, "crew"),
        ({"place": "platform"}, "platform-dress"),
    ],
)
def test_no_outfit_is_presumed_where_the_trade_and_the_place_name_two(
    bases: Mapping[str, KnowledgeBase], told: Mapping[str, str], rig: str | None
) -> None:
    stated = tuple((fact, choices(value)) for fact, value in told.items())
    assert usually(bases["eighth"].lookup, DAY, stated).get("rig") == (choices(rig) if rig else None)
