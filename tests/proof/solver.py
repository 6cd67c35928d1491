"""The answer set of an encoded base: the fates and verdicts that the written semantics gives."""

from __future__ import annotations

import datetime
import itertools
import re
from collections.abc import Callable, Sequence

import clingo

from kb.model.conditions import Condition
from kb.model.records import RuleBase
from tests.proof.encode import SEMANTICS, SPECIFICITY, Encoding, Full

Key = tuple[int, str, str]  # case, item, aspect
_ATOM = re.compile(r"(\w+)\((\S*)\)")
_EFFECT = r"(\w+\([^()]*\))"
_PAIR = re.compile(rf"{_EFFECT},{_EFFECT}(|,\w+)")
SHOWN = """
#show possible/1. #show verdict/4. #show fate/5. #show closed_by/5. #show supported_by/5.
#show won/3. #show narrower/2. #show seen/1.
seen(disabled) :- disabled(C,R), holds(C,R), possible(C).
seen(repair) :- owed(C,D), possible(C).
seen(residual) :- swept(_,main,_,_,_,_).
seen(set) :- active(_,rest(_,_)).
seen(term) :- meaning(T,_).
"""


class Verdicts:
    """What the program says, by case, item and aspect; values are terms as the encoding names them."""

    def __init__(self) -> None:
        self.possible: set[int] = set()
        self.verdict: dict[Key, str] = {}
        self.fates: dict[Key, dict[str, str]] = {}
        self.closed_by: dict[Key, dict[str, set[str]]] = {}
        self.supported_by: dict[Key, dict[str, set[str]]] = {}
        self.won: dict[tuple[str, str], str] = {}
        self.narrower: list[tuple[str, str]] = []  # as terms
        self.seen: set[str] = set()

    def read(self, model: str) -> None:
        """Take in an answer set as text: one string is far quicker to get than every term of every atom."""
        for name, inner in _ATOM.findall(model):
            if name == "possible":
                self.possible.add(int(inner))
            elif name == "seen":
                self.seen.add(inner)
            elif name in ("won", "narrower"):
                left, right, principle = _PAIR.fullmatch(inner).groups()  # type: ignore[union-attr]
                if name == "won":
                    self.won[_effect_key(left), _effect_key(right)] = principle[1:]
                else:
                    self.narrower.append((left, right))
            else:
                case, item, aspect, *rest = inner.replace('"', "").split(",")
                self._take(name, (int(case), item, aspect), rest)

    def _take(self, name: str, key: Key, rest: list[str]) -> None:
        if name == "verdict":
            self.verdict[key] = rest[0]
        elif name == "fate":
            self.fates.setdefault(key, {})[rest[0]] = rest[1]
        else:
            table = self.closed_by if name == "closed_by" else self.supported_by
            table.setdefault(key, {}).setdefault(rest[0], set()).add(rest[1])


def _effect_key(effect: str) -> str:
    """How the reasoner names an effect: the rule, or the rule, the item and the part of a duty over a set."""
    kind, _, inner = effect[:-1].partition("(")
    parts = inner.replace('"', "").split(",")
    return parts[0] if kind == "whole" else f"{parts[0]}#{parts[1]}#{'duty' if kind == 'own' else 'rest'}"


def solve(program: str, read: Callable[[str], object]) -> int:
    """Give the first answer set to `read` as text; the number of answer sets, counted to two."""
    problems: list[str] = []
    control = clingo.Control(["--models=2", "-Wno-atom-undefined"], lambda _, text: problems.append(text))
    control.add("base", [], program)
    control.ground([("base", []), ("law", [])])
    count = 0

    def take(model: clingo.Model) -> None:
        nonlocal count
        count += 1
        if count == 1:
            read(str(model))

    control.solve(on_model=take)
    assert not problems, problems
    return count


def decide(
    encoding: Encoding,
    pairs: Sequence[tuple[str, str]],
    completions: Sequence[Full],
    narrower: str | None = None,
) -> Verdicts:
    """Fates and verdicts of items and aspects in completions; `narrower` gives specificity as facts.

    Without it specificity is worked out over the completions, which must then be the whole case space.
    """
    found = Verdicts()
    special = SPECIFICITY if narrower is None else narrower
    text = [encoding.text, encoding.asked(pairs), encoding.cases(completions), SEMANTICS, special, SHOWN]
    count = solve("\n".join(text), found.read)
    assert count == 1, f"the program has {count} answer sets"
    return found


def completions_of(encoding: Encoding) -> list[Full]:
    """Every combination of the points of the facts, possible or not."""
    return [
        dict(zip(encoding.space, values, strict=True))
        for values in itertools.product(*encoding.space.values())
    ]


def encode(
    base: RuleBase,
    day: datetime.date,
    stated: frozenset[str] = frozenset(),
    also: Sequence[Condition] = (),
) -> Encoding:
    """The encoding of a base, with terms that two clauses define in the same way written out."""
    first = Encoding(base, day, stated, also=also)
    if not first.disputed:
        return first
    agreed = frozenset(term for term in first.disputed if not _differs(first, term))
    return Encoding(base, day, stated, agreed, also)


def _differs(encoding: Encoding, term: str) -> bool:
    """Whether two definitions of a term differ in a possible case."""
    conditions = encoding.disputed[term]
    probe = Encoding(encoding.base, encoding.day, frozenset({*encoding.meanings, term}), also=conditions)
    numbers = [probe.nodes[condition] for condition in conditions]
    rules = "".join(
        f"differ :- possible(C), true(C,{a}), not true(C,{b}). " for a in numbers for b in numbers if a != b
    )
    shown: list[str] = []
    text = [probe.text, probe.cases(completions_of(probe)), SEMANTICS, rules, "#show differ/0."]
    solve("\n".join(text), shown.append)
    return shown != [""]
