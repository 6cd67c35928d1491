"""Published grade equivalences, loaded as a second rule book whose grades are the NATO codes.

Sources: grades.tsv names one for each row (STANAG 2116 ed. 6 as annexed to the MoD Ukraine Order No 496 of
29.12.2020, and tables of national ranks); the order of United States pay grades is that of 37 USC 201. That
O-1 and O-2 are OF-1, O-n is OF-(n-1) and E-n is OR-n stands in standards.tsv as G2.
"""

from __future__ import annotations

import csv
import itertools
from pathlib import Path

import pytest

from kb import KnowledgeBase

HERE = Path(__file__).parent
LADDERS = (
    ("other-ranks", "other ranks", [f"OR-{n}" for n in range(1, 10)]),
    ("warrant-officers", "warrant officers", [f"WO-{n}" for n in range(1, 6)]),
    ("officers", "officers", [f"OF-{n}" for n in range(1, 11)]),
)
CODES = [code for _, _, codes in LADDERS for code in codes]


def published() -> list[dict[str, str]]:
    with (HERE / "grades.tsv").open(encoding="utf-8") as stream:
        return list(csv.DictReader(stream, delimiter="\t"))


def pay_grades() -> dict[str, str]:
    """United States pay grade to NATO code, as the published rows state it."""
    found = {}
    for row in published():
        if row["country"] != "US":
            continue
        grade = row["rank"].split("(")[-1].rstrip(")") if "(" in row["rank"] else row["rank"].split()[-1]
        if grade[1:2] == "-":
            found[grade] = row["code"]
    return found


def book() -> str:
    """A rule book whose grades are the codes, known also by pay grade, with one rule for each threshold."""
    other = {code: [pay for pay, mapped in pay_grades().items() if mapped == code] for code in CODES}
    lines = ['service: {id: codes, label: Codes, namespace: "https://codes.example/"}']
    lines += ["authorities:", "  - {id: alliance, label: Alliance}", "ladders:"]
    for name, label, codes in LADDERS:
        lines += [f"  - id: {name}", f"    label: {label}", "    grades:"]
        for code in codes:
            names = f", other labels: [{', '.join(other[code])}]" if other[code] else ""
            lines.append(f"      - {{id: {code}, label: Code {code}{names}}}")
    lines.append("items:")
    lines += [f"  - {{id: star-{i}, label: star number {i}, kind of: insignia}}" for i in range(len(CODES))]
    lines += ["book: {id: stars, title: Stars, authority: alliance}"]
    lines += ['edition: {id: "1", title: Stars, in force from: 2021-01-13}', "clauses:"]
    for i, code in enumerate(CODES):
        others = ", otherwise: must not" if i else ""
        lines += [
            f'  - clause: "{i}"',
            f"    text: Star number {i} is worn by {code} and above and by nobody else.",
            f"    rules: [{{must: star-{i}, grades: {code} and above{others}}}]",
        ]
    return "\n".join(lines) + "\n"


@pytest.fixture(scope="module")
def codes(tmp_path_factory: pytest.TempPathFactory) -> KnowledgeBase:
    folder = tmp_path_factory.mktemp("codes")
    (folder / "codes.yaml").write_text(book(), encoding="utf-8")
    return KnowledgeBase.open(folder, tmp_path_factory.mktemp("cache"))


def test_the_published_table_has_the_pay_grades() -> None:
    assert pay_grades()["O-1"] == pay_grades()["O-2"] == "OF-1"
    assert all(pay_grades()[f"O-{n}"] == f"OF-{n - 1}" for n in range(3, 11))
    assert all(pay_grades()[f"E-{n}"] == f"OR-{n}" for n in range(1, 10))


@pytest.mark.parametrize("pay", sorted(pay_grades()))
def test_a_pay_grade_is_read_as_its_published_code(codes: KnowledgeBase, pay: str) -> None:
    (fact, values) = codes.fact("grade", pay)
    assert fact == "grade"
    assert values.members == {pay_grades()[pay]}  # type: ignore[union-attr]


def test_a_star_is_worn_from_its_code_upwards_in_the_published_order(codes: KnowledgeBase) -> None:
    """Every pay grade against every threshold: the order of 37 USC 201 within each class of grades."""
    pays = pay_grades()
    for pay, (i, threshold) in itertools.product(sorted(pays), list(enumerate(CODES))[::4]):
        (found,) = codes.ask(f"Must an {pay} wear star number {i}?")
        expected = "required" if CODES.index(pays[pay]) >= CODES.index(threshold) else "prohibited"
        assert found.verdict == expected, (pay, threshold)


def test_every_published_code_of_an_other_rank_is_below_every_officer(codes: KnowledgeBase) -> None:
    order = codes.lookup.order("grade")
    found = {row["code"] for row in published() if row["code"] in order}
    junior = [order.index(code) for code in found if code.startswith("OR")]
    senior = [order.index(code) for code in found if code.startswith("OF")]
    assert max(junior) < min(senior)
    assert len(found) >= 19
