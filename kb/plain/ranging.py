"""The written meaning over all cases at once: `Meaning.fates` with sets of cases in the place of truths."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from kb.model.conditions import Condition
from kb.plain.cases import Effect, Known
from kb.plain.sets import NONE
from kb.plain.weighing import Fate, Meaning, frees

STATUSES = {
    (True, True): "contested",
    (True, False): "closed",
    (False, True): "supported",
    (False, False): "unaddressed",
}
By = dict[str, int]  # the cases in which each rule is alive at a piece of the values


class Piece(NamedTuple):
    closed_by: By
    supported_by: By
    closed: int
    supported: int


class Range:
    """What becomes of the values of an item and aspect, over all cases that fit what is known.

    `more` are further conditions whose sets of cases are asked for.
    """

    def __init__(
        self, meaning: Meaning, item: str, aspect: str, known: Known, more: Sequence[Condition] = ()
    ) -> None:
        self.meaning, self.item, self.aspect = meaning, item, aspect
        self.watched = meaning.watched(item, aspect, frozenset(known))
        self.sets = meaning.sets((*self.watched.values(), *more), known)
        self._holds = {key: self.sets.of(one) for key, one in self.watched.items()}
        self._applying: dict[str, int] = {}
        self.pieces = self._weighed(item, aspect)

    def _applies(self, rule: str) -> int:
        if rule not in self._applying:
            off = self.sets.any(self._applies(other.id) for other in self.meaning.disablers(rule))
            found = self.sets.but(self._holds[rule], off)
            repaired = self.meaning.lookup.rules[rule].repairs
            if repaired is not None:
                duty = self.meaning.lookup.rules[repaired]
                pieces = self._weighed(duty.scope.items[0], duty.aspect, without=duty.id)
                stands = self.sets.any(piece.closed_by.get(duty.id, NONE) for piece in pieces)
                found = self.sets.both(found, stands)
            self._applying[rule] = found
        return self._applying[rule]

    def _weighed(self, item: str, aspect: str, without: str = "") -> list[Piece]:
        """What becomes of each piece of the values."""
        sets, meaning = self.sets, self.meaning
        effects = [e for e in meaning.effects_on(item, aspect) if not meaning.rests_on(e.rule.id, without)]
        live = {e.key: sets.both(self._holds[e.key], self._applies(e.rule.id)) for e in effects}
        effects = [e for e in effects if live[e.key] != NONE]
        closing = [e for e in effects if e.closes and not e.rule.residual]
        names = [meaning.inside_of(e, meaning.pieces(item, aspect)) for e in effects]
        touched = {e.key: one for e, one in zip(effects, names, strict=True)}
        whole = set(range(len(meaning.pieces(item, aspect))))

        def beating(one: Effect, others: Sequence[Effect]) -> int:
            return sets.any(live[o.key] for o in others if meaning.win(one, o)[0] == o.key)

        stands = {}
        for one in closing:
            rivals = [o for o in closing if touched[one.key] | touched[o.key] == whole]
            stands[one.key] = sets.but(live[one.key], beating(one, rivals))
        pieces = []
        for place in sorted(whole):
            closers = [e for e in closing if place in touched[e.key]]
            supporters = [e for e in effects if not e.closes and place in touched[e.key]]
            closed = [(e, sets.but(stands[e.key], beating(e, supporters))) for e in closers]
            supported = [(e, sets.but(live[e.key], beating(e, closers))) for e in supporters]
            pieces.append(self._piece(closed, supported))
        residual = [(e, live[e.key], touched[e.key]) for e in effects if e.closes and e.rule.residual]
        freed = [
            (whole - touched[e.key], sets.any(p.supported_by.get(e.rule.id, NONE) for p in pieces))
            for e in effects
            if frees(e.rule)
        ]
        return self._swept(pieces, residual, freed)

    def _piece(self, closed: list[tuple[Effect, int]], supported: list[tuple[Effect, int]]) -> Piece:
        def united(side: list[tuple[Effect, int]]) -> By:
            by: By = {}
            for effect, cases in side:
                if cases != NONE:
                    by[effect.rule.id] = self.sets.any((by.get(effect.rule.id, NONE), cases))
            return by

        by, held = united(closed), united(supported)
        return Piece(by, held, self.sets.any(by.values()), self.sets.any(held.values()))

    def _swept(
        self,
        pieces: list[Piece],
        residual: list[tuple[Effect, int, set[int]]],
        freed: list[tuple[set[int], int]],
    ) -> list[Piece]:
        """What is not addressed is closed by a residual rule, as long as something outside it stays open.

        `freed` are the places of what need not be so, with the cases in which that is said.
        """
        sets = self.sets
        left = [sets.other(sets.but(one.closed, one.supported)) for one in pieces]
        found = []
        for place, one in enumerate(pieces):
            by = dict(one.closed_by)
            for effect, live, touched in residual:
                if place in touched:
                    outside = sets.any(left[other] for other in range(len(left)) if other not in touched)
                    spoken = (cases for places, cases in freed if place in places)
                    free = sets.other(sets.any((one.closed, one.supported, *spoken)))
                    cases = sets.all((live, outside, free))
                    if cases != NONE:
                        by[effect.rule.id] = cases
            found.append(Piece(by, one.supported_by, sets.any(by.values()), one.supported))
        return found

    def patterns(self, cases: int) -> Iterator[list[Fate]]:
        """Each way in which the values fare in some of the cases, with all rules that are then alive.

        Cases with a duty that is alive are told from cases without one.
        """
        rules = self.meaning.lookup.rules
        must = [
            cases_of
            for piece in self.pieces
            for rule, cases_of in piece.closed_by.items()
            if rules[rule].modality == "must"
        ]
        sides = [side for piece in self.pieces for side in piece[2:]] + [self.sets.any(must)]
        waiting: list[tuple[int, tuple[bool, ...]]] = [(cases, ())]
        while waiting:
            block, said = waiting.pop()
            if block == NONE:
                continue
            if len(said) == len(sides):
                yield self._fates(block, said)
                continue
            side = sides[len(said)]
            waiting.append((self.sets.but(block, side), (*said, False)))
            waiting.append((self.sets.both(block, side), (*said, True)))

    def _fates(self, block: int, said: Sequence[bool]) -> list[Fate]:
        values = self.meaning.pieces(self.item, self.aspect)
        found = []
        for place, (one, piece) in enumerate(zip(values, self.pieces, strict=True)):
            by = [{r for r, c in side.items() if self.sets.both(c, block) != NONE} for side in piece[:2]]
            found.append(Fate(one, STATUSES[said[2 * place], said[2 * place + 1]], *by))
        return found

    def alive(self, cases: int) -> set[str]:
        """The rules that are alive at some value in some of the cases."""
        sides = (side for piece in self.pieces for side in piece[:2])
        return {rule for side in sides for rule, one in side.items() if self.sets.both(one, cases) != NONE}
