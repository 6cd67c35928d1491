"""A clause is found by every name that the program prints of it, and several are found by one reference."""

from __future__ import annotations

from pathlib import Path

import pytest

from kb.errors import UsageError
from kb.wording import clause_reference
from kb.wording.named_clauses import clauses_named
from tests.guidance.check_desk import SECOND, desk_of


@pytest.mark.parametrize("folder", [None, SECOND], ids=["demo", "second service"])
def test_every_printed_name_of_a_clause_opens_it(folder: Path | None) -> None:
    lookup = desk_of(folder).lookup
    for clause in lookup.base.clauses:
        label = lookup.editions[clause.edition].label
        for name in (
            clause_reference(lookup, clause.id),
            f"{label}, clause {clause.number}",
            f"{clause.edition} clause {clause.number}",
        ):
            assert [one.id for one in clauses_named(lookup, name)] == [clause.id], name


@pytest.mark.parametrize(
    ("reference", "found"),
    [
        ("6.10", ["dress-order/2024/6.10"]),
        ("clause 6.10.", ["dress-order/2024/6.10"]),
        ("Notice 3", ["interim-notice/2026/3"]),
        ("Station Order clause 5", ["station-order/2025/5"]),
        ("station order 5", ["station-order/2025/5"]),
        ("6.10 6.11", ["dress-order/2024/6.10", "dress-order/2024/6.11"]),
        ("6.10, and the Notice 3", ["dress-order/2024/6.10", "interim-notice/2026/3"]),
    ],
)  # fmt: skip
def test_references_as_people_write_them(reference: str, found: list[str]) -> None:
    assert [clause.id for clause in clauses_named(desk_of().lookup, reference)] == found


@pytest.mark.parametrize(
    "reference", ["", "clause", "9.99", "the moon 5", "5 of the moon", "Station Order 6.10", "6.10 9.99"]
)
def test_what_is_not_there_is_refused(reference: str) -> None:
    with pytest.raises(UsageError, match=r"There is no clause|Name a clause"):
        clauses_named(desk_of().lookup, reference)
