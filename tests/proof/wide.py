"""Rule books whose case space is too large to write out: specificity and sample cases by solving.

Here the answer-set program does search: a case is one value for each fact, within what is possible,
and a rule is inside another when no case meets the one and not the other.
"""

from __future__ import annotations

from collections.abc import Sequence

import clingo

from tests.proof.encode import SEMANTICS, Encoding, Full, quoted
from tests.proof.points import Point

Wanted = tuple[clingo.Symbol, bool]
_GUESS = """
case(0).
1 { has(0,F,V) : possible_value(F,V) } 1 :- free(F).
:- impossible(0).
#show.
#show has(F,V) : has(0,F,V), free(F).
"""


class Space:
    """All possible cases of an encoded base, asked through a solver."""

    def __init__(self, encoding: Encoding, seed: int) -> None:
        self.encoding = encoding
        self._points: dict[tuple[str, str], Point] = {}
        lines = []
        for fact, points in encoding.space.items():
            lines.append(f"free({quoted(fact)}).")
            for point in points:
                name = encoding.point(fact, point)
                self._points[fact, name] = point
                lines.append(f"possible_value({quoted(fact)},{name}).")
        options = ["-Wno-atom-undefined", "--rand-freq=0.9", "--sign-def=rnd", f"--seed={seed}"]
        self._control = clingo.Control(options)
        self._control.add(
            "base", [], "\n".join([encoding.text, *lines, encoding.asked(()), _GUESS, SEMANTICS])
        )
        self._control.ground([("base", [])])
        atoms = self._control.symbolic_atoms
        self.effects = {
            str(a.symbol.arguments[0]): a.symbol.arguments[0] for a in atoms.by_signature("effect", 2)
        }
        self.rivals = [(a.symbol.arguments[0], a.symbol.arguments[1]) for a in atoms.by_signature("rival", 2)]
        self.bears = [
            (a.symbol.arguments[0], a.symbol.arguments[1].string) for a in atoms.by_signature("bears", 2)
        ]
        self._spans: dict[clingo.Symbol, set[str]] = {}
        for atom in atoms.by_signature("spans", 2):
            effect, item = atom.symbol.arguments
            self._spans.setdefault(effect, set()).add(item.string)
        self._inside: dict[tuple[clingo.Symbol, clingo.Symbol], bool] = {}

    def _wanted(self, wanted: Sequence[Wanted]) -> list[tuple[clingo.Symbol, bool]]:
        return [(clingo.Function("meets", [clingo.Number(0), effect]), truth) for effect, truth in wanted]

    def can_be(self, *wanted: Wanted) -> bool:
        """Whether a possible case meets each effect's condition, or does not, as wanted."""
        return bool(self._control.solve(assumptions=self._wanted(wanted)).satisfiable)

    def case(self, *wanted: Wanted) -> Full | None:
        """Such a case, random where free."""
        with self._control.solve(assumptions=self._wanted(wanted), yield_=True) as handle:
            model = handle.model()
            if model is None:
                return None
            shown = [atom.arguments for atom in model.symbols(shown=True)]
        return {fact.string: self._points[fact.string, str(value)] for fact, value in shown}

    def inside(self, one: clingo.Symbol, other: clingo.Symbol) -> bool:
        """Whether every case of one effect, items and facts, is a case of the other."""
        if (one, other) not in self._inside:
            within = self._spans[one] <= self._spans[other]
            self._inside[one, other] = within and not self.can_be((one, True), (other, False))
        return self._inside[one, other]

    def narrower(self) -> str:
        """Specificity of all pairs that can meet on an item, as facts."""
        found = [(a, b) for a, b in self.rivals if self.inside(a, b) and not self.inside(b, a)]
        return "\n".join(f"narrower({a},{b})." for a, b in found)
