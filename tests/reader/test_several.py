"""A question about several things is answered for each of them; common practice, no source."""

from __future__ import annotations

import itertools

import pytest

from kb.model.questions import Reading
from kb.reader import each_thing
from tests.reader.conftest import Base

_FORMS = (
    "Do I need the {} and the {}?", "May I wear the {} and the {}?", "Who may wear the {} and the {}?",
    "When must I wear the {} and the {}?", "Can I leave off the {} and the {}?",
)  # fmt: skip


def asked(base: Base, text: str) -> tuple[Reading, ...]:
    return each_thing(base.read(text), base.lookup)


def first_items(readings: tuple[Reading, ...]) -> list[str]:
    return [reading.query.items[0] for reading in readings if reading.query is not None]


@pytest.mark.parametrize("form", _FORMS)
def test_every_thing_has_a_question_of_its_own(choir: Base, demo: Base, second: Base, form: str) -> None:
    for base in (choir, demo, second):
        worn = [
            i for i in base.lookup.base.items if {"garment", "accessory"} & set(base.lookup.broader(i.id))
        ]
        for one, other in itertools.islice(itertools.pairwise(worn), 20):
            readings = asked(base, form.format(one.label, other.label))
            if readings[0].query is not None:
                assert first_items(readings) == [one.id, other.id], form.format(one.label, other.label)


def test_what_bears_on_whether_it_may_be_worn_is_worn_with_it(demo: Base) -> None:
    coats = asked(demo, "May I wear the storm coat and the watch coat?")  # 2.4: one coat at a time
    assert [reading.query.items for reading in coats if reading.query] == [
        ("storm-coat", "watch-coat"),
        ("watch-coat", "storm-coat"),
    ]
    duties = asked(demo, "Must I wear the storm coat and the watch coat?")
    assert [reading.query.items for reading in duties if reading.query] == [("storm-coat",), ("watch-coat",)]


def test_a_number_is_of_what_it_stands_before(demo: Base) -> None:
    for text in ("May I wear two rings and a neck chain?", "May I wear a neck chain and two rings?"):
        ring, chain = (reading.query for reading in asked(demo, text))
        assert ring is not None
        assert chain is not None
        assert (ring.items, ring.aspect, chain.items, chain.value) == (
            ("ring",),
            "count",
            ("neck-chain",),
            None,
        )


def test_a_talk_goes_on_from_all_of_them(demo: Base) -> None:
    before = asked(demo, "Must I wear the storm coat and the work jacket in boat rig?")[-1]
    further = each_thing(demo.read("And in watch rig?", previous=before), demo.lookup)
    assert first_items(further) == ["storm-coat", "work-jacket"]


def test_a_measure_is_of_what_rules_measure(third: Base) -> None:
    for text in ("May I carry a pocket knife with a 7 cm blade?", "a pocket knife with a blade of 7 cm, ok?"):
        blade, knife = (reading.query for reading in asked(third, text))
        assert blade is not None
        assert knife is not None
        assert (blade.items, blade.aspect) == (("blade",), "length")
        assert (knife.items, knife.aspect, knife.value) == (("knife",), "carrying", None)


def test_together_each_is_worn_with_the_others(third: Base) -> None:
    apart = asked(third, "May I wear the wrist watch and the neckerchief in hall dress?")
    assert [reading.query.items for reading in apart if reading.query] == [("wrist-watch",), ("neckerchief",)]
    both = asked(third, "May I wear the wrist watch and the neckerchief together in hall dress?")
    assert [reading.query.items for reading in both if reading.query] == [
        ("wrist-watch", "neckerchief"),
        ("neckerchief", "wrist-watch"),
    ]


def test_with_stays_one_question(demo: Base) -> None:
    (reading,) = asked(demo, "May I wear the storm coat with the scarf?")
    assert reading.query is not None
    assert reading.query.items == ("storm-coat",)
