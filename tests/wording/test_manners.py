"""Manners, whose texts authors write freely, as a person would put them into a sentence."""

from __future__ import annotations

import pytest

from kb.model.records import Aspect
from kb.wording.manners import say_manner, treated
from tests.little import AT, base

LOOKUP = base(
    aspects=tuple(
        Aspect(id=name, label=name, kind="manner", at=AT)
        for name in ("care", "construction", "fit", "replacement")
    )
)


def manner(label: str, within: str) -> Aspect:
    return Aspect(id=f"{within}:x", label=label, kind="act", within=within, at=AT)


@pytest.mark.parametrize(
    ("within", "label", "said"),
    [
        ("care", "wring", "the cap must not be wrung"),
        ("care", "rinse and dry", "the cap must not be rinsed and dried"),
        ("care", "hang to dry away from heat", "the cap must not be hung to dry away from heat"),
        ("care", "wrap in tissue", "the cap must not be wrapped in tissue"),
        ("care", "use no soap", "the care of the cap must not be “use no soap”"),
        ("care", "dry clean only", "the cap must not be dry-cleaned only"),
        ("care", "dry flat", "the cap must not be dried flat"),
        ("care", "dry-cleaned only", "the cap must not be dry-cleaned only"),
        ("care", "tumble-dry", "the cap must not be tumble-dried"),
        ("care", "kept clean and in good repair", "the cap must not be kept clean and in good repair"),
        ("care", "clean and in good repair", "the cap must not be clean and in good repair"),
        ("care", "clean and press", "the cap must not be cleaned and pressed"),
        ("care", "replaced every 12 months", "the cap must not be replaced every 12 months"),
        ("care", "renew each morning", "the cap must not be renewed each morning"),
        ("construction", "blunt at the end", "the cap must not be blunt at the end"),
        ("fit", "clean", "the cap must not be clean"),
        ("replacement", "every two years", "the replacement of the cap must not be every two years"),
        ("replacement", "on joining", "the replacement of the cap must not be on joining"),
        (
            "replacement",
            "found by the wearer",
            "the replacement of the cap must not be “found by the wearer”",
        ),
        ("construction", "steel toecap", "the cap must not have a steel toecap"),
        ("construction", "oiled leather", "the cap must not be of oiled leather"),
        ("construction", "linen with a silk lining", "the cap must not be of linen with a silk lining"),
        ("fit", "strap under the chin", "the cap must not have the strap under the chin"),
        ("fit", "trousers inside", "the cap must not have the trousers inside"),
        ("fit", "out of sight", "the cap must not be out of sight"),
        ("fit", "discreet", "the cap must not be discreet"),
        ("fit", "ending at the ear", "the cap must not be worn ending at the ear"),
    ],
)
def test_a_manner_becomes_a_predicate_where_its_text_allows(within: str, label: str, said: str) -> None:
    assert say_manner(LOOKUP, "the cap", manner(label, within), "must not") == said


def test_only_care_is_a_treatment() -> None:
    assert treated(manner("brush", "care")) == "brushed"
    assert treated(manner("brush", "fit")) is None
    assert treated(manner("by hand", "care")) is None
