"""Defeasible theories with known conclusions: those of `datalog-conformance`, with `tiny-datalog` beside.

The cases of the folders `basic`, `superiority` and `ambiguity` are tried. Those of `closure` and `klm` are
about rational closure, and those of `strict_only` hold no conflict: neither is a matter of rule books.
"""

from __future__ import annotations

from functools import cache

import pytest
from datalog_conformance.plugin import discover_yaml_tests, get_tests_dir
from datalog_conformance.schema import TestCase as ConformanceCase
from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_datalog.defeasible import Theory as TinyTheory

from tests.proof.theories import Kind, Line, Theory, conclusions, definite, ground, opposite

FOLDERS = ("basic", "superiority", "ambiguity")

# Specificity is a line of our order of precedence. Defeasible logic knows only declared superiority, so that
# each case is tried with it and without.
NEEDS_SPECIFICITY = {
    "bozzato_example1_bob_exception": "none is declared superior; the doctoral student is the special case",
}


@cache
def cases() -> dict[str, ConformanceCase]:
    found = {}
    for folder in FOLDERS:
        for _, case in discover_yaml_tests(get_tests_dir() / "defeasible" / folder):
            if case.theory is not None and not case.skip:
                assert case.name not in found
                found[case.name] = case
    return found


def _literal(name: str, values: tuple[object, ...]) -> str:
    return f"{name}({','.join(map(str, values))})" if values else name


def theory_of(case: ConformanceCase) -> Theory:
    raw = case.theory
    assert raw is not None
    kinds: tuple[tuple[Kind, list], ...] = (  # type: ignore[type-arg]
        ("strict", raw.strict_rules), ("defeasible", raw.defeasible_rules), ("defeater", raw.defeaters),
    )  # fmt: skip
    return ground(
        [_literal(name, row) for name, rows in raw.facts.items() for row in rows],
        [(r.id, kind, r.head, tuple(r.body)) for kind, rules in kinds for r in rules],
        raw.superiority,
    )


def expected_of(case: ConformanceCase) -> tuple[set[str], set[str]]:
    """What has to be concluded, and what must not be; of the two policies of ambiguity, blocking."""
    sections = case.expect if case.expect is not None else case.expect_per_policy["blocking"]  # type: ignore[index]

    def named(*keys: str) -> set[str]:
        return {
            _literal(name, row)
            for key in keys
            for name, rows in sections.get(key, {}).items()  # type: ignore[union-attr]
            for row in rows
        }

    return named("definitely", "defeasibly"), named("not_defeasibly", "undecided")


def agrees(case: ConformanceCase, specificity: bool) -> bool:
    found = conclusions(theory_of(case), specificity)
    wanted, unwanted = expected_of(case)
    return wanted <= found and not unwanted & found


@pytest.mark.parametrize("name", sorted(cases()))
def test_a_theory_has_its_conclusions(name: str) -> None:
    case = cases()[name]
    assert agrees(case, specificity=True)
    assert agrees(case, specificity=False) == (name not in NEEDS_SPECIFICITY)


def test_there_are_enough_cases() -> None:
    assert len(cases()) >= 70


def tiny(theory: Theory) -> set[str]:
    """What tiny-datalog proves, under names that it can read."""
    names = {atom: f"p{i}" for i, atom in enumerate(sorted({text.lstrip("~") for text in theory.literals()}))}
    labels = {line.name: f"r{i}" for i, line in enumerate(theory.lines)}
    arrows = {"strict": "->", "defeasible": "=>", "defeater": "~>"}

    def literal(text: str) -> str:
        return ("~" if text.startswith("~") else "") + names[text.lstrip("~")]

    lines = [f"{literal(fact)}." for fact in sorted(theory.facts)]
    for line in theory.lines:
        body = ", ".join(map(literal, line.body))
        lines.append(f"{labels[line.name]}: {body} {arrows[line.kind]} {literal(line.head)}.")
    lines += [f"{labels[a]} > {labels[b]}." for a, b in sorted(theory.superior)]
    proved = TinyTheory.parse("\n".join(lines)).conclusions()["+∂"]
    atoms = {name: atom for atom, name in names.items()}
    return {("~" if pred.startswith("~") else "") + atoms[pred.lstrip("~")] for pred, _ in proved}


@pytest.mark.parametrize("name", sorted(cases()))
def test_the_second_oracle_agrees_on_it(name: str) -> None:
    theory = theory_of(cases()[name])
    assert conclusions(theory, specificity=False) == tiny(theory)


ATOMS = ("a", "b", "c", "d")


@st.composite
def theories(draw: st.DrawFn) -> Theory:
    """Layered theories of up to ten rules: bodies speak of earlier atoms, defeaters are never superior."""
    lines: list[Line] = []
    for number in range(draw(st.integers(1, 10))):
        place = draw(st.integers(0, 3))
        body = draw(st.lists(st.sampled_from(ATOMS[:place]), max_size=2, unique=True)) if place else []
        signed = tuple(draw(st.sampled_from([atom, f"~{atom}"])) for atom in body)
        kind: Kind = draw(st.sampled_from(["defeasible", "defeasible", "defeasible", "defeater", "strict"]))
        head = draw(st.sampled_from([ATOMS[place], f"~{ATOMS[place]}"]))
        lines.append(Line(f"r{number}", kind, head, signed))
    facts = draw(st.frozensets(st.sampled_from(["a", "~b", "c"]), max_size=1))
    pairs = [
        (later.name, earlier.name)
        for i, earlier in enumerate(lines)
        for later in lines[i + 1 :]
        if later.kind != "defeater" and later.head == opposite(earlier.head)
    ]
    superior = frozenset(draw(st.lists(st.sampled_from(pairs), max_size=6))) if pairs else frozenset()
    return Theory(facts, tuple(lines), superior)


@settings(max_examples=250, deadline=None)
@given(theories())
def test_random_theories_agree_with_the_second_oracle(theory: Theory) -> None:
    certain = definite(theory)
    if any(opposite(literal) in certain for literal in certain):
        return  # a contradiction in what is certain: ours is a conflict, defeasible logic proves both
    assert conclusions(theory, specificity=False) == tiny(theory)


def test_a_defeater_that_is_superior_is_where_we_depart() -> None:
    """A permission may beat a prohibition, and a duty beside it then stands. A defeater never helps."""
    lines = (
        Line("duty", "defeasible", "a", ()),
        Line("against", "defeasible", "~a", ()),
        Line("free", "defeater", "a", ()),
    )
    theory = Theory(frozenset(), lines, frozenset({("free", "against")}))
    assert conclusions(theory, specificity=False) == {"a"}
    assert tiny(theory) == set()
