"""Defeasible theories as rule bases, one literal after another.

A literal is an item: rules for it are duties to wear it, rules against it prohibitions, defeaters permissions
and exemptions. What a theory has proved so far is what the case says: a body is a condition over that. What
is definite is said by a higher authority, and superiority is a declared exception.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterable, Iterator
from typing import Literal

import msgspec

from kb.model.conditions import Condition, Test, all_of
from kb.model.values import NO, YES
from kb.reasoner import Engine
from tests.little import DAY, base, fact, rule

Kind = Literal["strict", "defeasible", "defeater"]
MODALITIES = {True: ("must", "must_not"), False: ("may", "need_not")}


class Line(msgspec.Struct, frozen=True):
    """One ground rule of a theory; literals are atoms, with "~" before them where denied."""

    name: str
    kind: Kind
    head: str
    body: tuple[str, ...]


class Theory(msgspec.Struct, frozen=True):
    facts: frozenset[str]
    lines: tuple[Line, ...]
    superior: frozenset[tuple[str, str]]

    def literals(self) -> set[str]:
        return {literal for line in self.lines for literal in (line.head, *line.body)} | self.facts


class NotLayeredError(Exception):
    """The literals of a theory rest on each other in a circle, which a rule book cannot say."""


def atom_of(literal: str) -> str:
    return literal.lstrip("~")


def opposite(literal: str) -> str:
    return literal[1:] if literal.startswith("~") else f"~{literal}"


def _ground(text: str, binding: dict[str, str]) -> str:
    name, bracket, inner = text.replace(" ", "").partition("(")
    if not bracket:
        return name
    return f"{name}({','.join(binding.get(term, term) for term in inner[:-1].split(','))})"


def ground(
    facts: Iterable[str],
    rules: Iterable[tuple[str, Kind, str, tuple[str, ...]]],
    superior: Iterable[tuple[str, str]],
) -> Theory:
    """The theory with every variable replaced by every constant; superiority goes to all copies of a rule."""
    known = frozenset(facts)
    constants = sorted(
        {term for literal in known for term in re.findall(r"[\w]+", literal.partition("(")[2])}
    )
    lines: list[Line] = []
    copies: dict[str, list[str]] = {}
    for name, kind, head, body in rules:
        variables = sorted(
            {v for text in (head, *body) for v in re.findall(r"\b[A-Z]\w*", text.partition("(")[2])}
        )
        for number, values in enumerate(itertools.product(constants, repeat=len(variables))):
            binding = dict(zip(variables, values, strict=True))
            made = tuple(_ground(text, binding) for text in (head, *body))
            copies.setdefault(name, []).append(f"{name}.{number}")
            lines.append(Line(f"{name}.{number}", kind, made[0], made[1:]))
    pairs = {(a, b) for one, other in superior for a in copies.get(one, ()) for b in copies.get(other, ())}
    return Theory(known, tuple(lines), frozenset(pairs))


def definite(theory: Theory) -> set[str]:
    """What facts and strict rules alone prove."""
    found = set(theory.facts)
    while True:
        new = {
            line.head for line in theory.lines if line.kind == "strict" and found.issuperset(line.body)
        } - found
        if not new:
            return found
        found |= new


def layers(theory: Theory) -> Iterator[str]:
    """The atoms, each after all that its rules rest on."""
    below: dict[str, set[str]] = {atom_of(literal): set() for literal in theory.literals()}
    for line in theory.lines:
        below[atom_of(line.head)] |= {atom_of(literal) for literal in line.body}
    while below:
        ready = sorted(atom for atom, rests in below.items() if not rests & below.keys())
        if not ready:
            raise NotLayeredError
        yield from ready
        for atom in ready:
            del below[atom]


def conclusions(theory: Theory, specificity: bool = True) -> set[str]:
    """What the reasoner concludes. Without `specificity` every rule is made a case of its own."""
    certain, proved = definite(theory), set[str]()
    for atom in layers(theory):
        verdict = _verdict(theory, atom, certain, proved, specificity)
        if verdict == "required":
            proved.add(atom)
        elif verdict == "prohibited":
            proved.add(f"~{atom}")
    return proved | certain


def _verdict(theory: Theory, atom: str, certain: set[str], proved: set[str], specificity: bool) -> str:
    lines = [line for line in theory.lines if atom_of(line.head) == atom]
    names = {literal for line in lines for literal in line.body}
    apart = set() if specificity else {f"case of {line.name}" for line in lines}
    rules = [
        rule(f"given-{literal}", "must_not" if literal.startswith("~") else "must", atom)
        for literal in (atom, f"~{atom}")
        if literal in certain
    ]
    for line in lines:
        body: list[Condition] = [Test(literal, YES) for literal in line.body]
        if not specificity:
            body.append(Test(f"case of {line.name}", YES))
        rules.append(
            rule(
                line.name,
                MODALITIES[line.kind != "defeater"][line.head.startswith("~")],  # type: ignore[arg-type]
                atom,
                when=all_of(body),
                edition="local/1",
                authority="station",
                exception_to=tuple(
                    sorted(b for a, b in theory.superior if a == line.name and _meet(b, lines))
                ),
            )
        )
    exclusions = tuple(
        all_of([*(Test(literal, YES) for literal in line.body), Test(line.head, NO)])
        for line in theory.lines
        if line.kind == "strict"
        and names.issuperset((line.head, *line.body))
        and (line.head in proved or not proved.issuperset(line.body))
    )
    lookup = base(
        *rules,
        items={atom: ()},
        facts=tuple(fact(name) for name in sorted(names | apart)),
        exclusions=exclusions,
    )
    known = {name: YES if name in proved else NO for name in names} | dict.fromkeys(apart, YES)
    engine = Engine(lookup, DAY)
    (decision,) = engine.problem(engine.group(atom, "wear"), known).decisions()
    return decision.verdict


def _meet(name: str, lines: list[Line]) -> bool:
    """Whether a rule is among those on the same atom; superiority over others has no effect."""
    return any(line.name == name for line in lines)
