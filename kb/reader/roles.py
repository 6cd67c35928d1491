"""The part that every piece plays: what is asked about, what is worn with it, what is known."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from fractions import Fraction

from kb.model.lookup import Lookup
from kb.model.values import Choices, Interval, ValueSet, intersect, is_empty, point, ranges
from kb.reader.frame import Frame
from kb.reader.pieces import Piece
from kb.reader.tokens import Token

_MODAL = frozenset({"may", "can", "must", "should", "have to", "allowed", "banned"})
_PLACING = frozenset({"on", "above", "below", "place"})
EXPLAINED = frozenset(
    {"comma", "filler", "det", "poss", "joined", "self", "person", "can", "may", "must", "should", "have to", "allowed", "banned",
     "required", "optional", "be", "do", "have", "what", "which", "who", "where", "how", "how many", "when", "why", "act",
     "leave off", "with", "alone", "and", "or", "together", "on", "in", "of", "for", "if", "to", "say", "show",
     "list", "clause", "which clause", "about", "and how about", "date", "service", "particle", "hold"}
)  # fmt: skip
"""Tags that carry structure; every other piece must be given a part or the question is not understood."""


class Roles:
    """What was found, filled in piece by piece; read by `query` only."""

    def __init__(self) -> None:
        self.asked: list[Piece] = []
        self.worn: list[Piece] = []
        self.unworn: list[Piece] = []
        self.facts: dict[str, ValueSet] = {}
        self.clashing: list[Piece] = []
        self.alone = False
        self.alternatives = False
        self.aspect = ""
        self.other_acts: list[Piece] = []
        self.claims: list[Piece] = []
        self.placing: list[Piece] = []
        self.crowded: tuple[Piece, Piece] | None = None
        self.dimension = ""
        self.value: ValueSet | None = None
        self.value_aspect = ""
        self.measure_unit = ""
        self.as_of: datetime.date | None = None
        self.clause_number = ""
        self.book = ""
        self.skipping = False
        self.used: set[int] = set()


def find_roles(pieces: Sequence[Piece], tokens: tuple[Token, ...], frame: Frame, lookup: Lookup) -> Roles:
    """Walk the pieces once, left to right."""
    roles = Roles()
    walk = _Walk(pieces, tokens, frame, lookup, roles)
    for index in range(len(pieces)):
        walk.step(index)
    return roles


class _Walk:
    """The state of the walk: to which list the next item goes."""

    def __init__(
        self, pieces: Sequence[Piece], tokens: tuple[Token, ...], frame: Frame, lookup: Lookup, roles: Roles
    ) -> None:
        self.pieces, self.tokens, self.frame, self.lookup, self.roles = pieces, tokens, frame, lookup, roles
        self.state = "asked"
        self.condition = False
        self.acted = False

    def step(self, index: int) -> None:
        piece = self.pieces[index]
        handler = getattr(self, "_on_" + piece.tag.replace(" ", "_"), None)
        if handler is not None:
            handler(index, piece)
        elif piece.tag in _MODAL:
            self.state, self.condition = "asked", False

    def _tag(self, index: int) -> str:
        return self.pieces[index].tag if 0 <= index < len(self.pieces) else ""

    def _near(self, index: int, step: int) -> int:
        """The next piece in a direction that is not an article or filler."""
        index += step
        while 0 <= index < len(self.pieces) and self.pieces[index].tag in ("det", "poss", "filler", "comma"):
            index += step
        return index

    def _use(self, *places: int) -> None:
        self.roles.used.update(places)

    def _on_with(self, index: int, piece: Piece) -> None:
        self.state = "worn"

    def _on_without(self, index: int, piece: Piece) -> None:
        self.state = "unworn"
        if self._tag(self._near(index, 1)) in ("item", "items"):
            self._use(index)

    def _on_no(self, index: int, piece: Piece) -> None:
        self._on_without(index, piece)

    def _on_leave_off(self, index: int, piece: Piece) -> None:
        self.state, self.acted = "asked", True

    def _on_if(self, index: int, piece: Piece) -> None:
        self.condition = (
            self.acted or bool(self.roles.asked) or index == 0 or self._tag(index - 1) != "allowed"
        )

    def _on_when(self, index: int, piece: Piece) -> None:
        self.condition = self.condition or index > 0

    def _on_act(self, index: int, piece: Piece) -> None:
        later = self.acted and self.tokens[piece.first].low.endswith("ing")
        before = self._tag(self._near(index, -1))
        participle = self.acted and before in ("fact", "be", "if", "for", "in") and later
        if piece.arg == "wear" and (self.condition or later or participle):
            self.state = "unworn" if self._tag(index - 1) == "not" else "worn"
            if self._tag(index - 1) == "not":
                self._use(index - 1)
            return
        if self.roles.aspect and piece.arg not in (self.roles.aspect, "wear"):
            if self.roles.aspect != "wear":
                self.roles.other_acts.append(piece)
                return
        if piece.arg != "wear" or not self.roles.aspect:
            self.roles.aspect = piece.arg
        self.acted = True
        if self.state != "worn" or not self.roles.asked:
            self.state = "asked"

    def _on_item(self, index: int, piece: Piece) -> None:
        before = self._near(index, -1)
        tag = self._tag(before)
        if tag == "of" and self._is_whole(piece):
            self._use(index)
            return
        if tag == "on" and self.frame.kind == "where" and not self.roles.asked and self._more_items(index):
            self.roles.worn.append(piece)
            self._use(index)
            return
        if tag in _PLACING and self.roles.asked and self.pieces[before].tag != "in":
            self.roles.placing += [self.pieces[before], piece]
            self._use(index, before)
            return
        if tag == "in" and (self.roles.asked or self.roles.aspect == "wear") and self.frame.kind != "list":
            self.state = "worn" if self.roles.asked else "asked"
        elif tag == "in" and self.frame.kind == "list":
            self.state = "worn"
        if tag == "only" or (tag == "only" and self._tag(index - 1) == "det"):
            self.roles.alone = True
            self._use(before)
        self._use(index)
        if self._tag(index - 1) in ("item", "items"):
            self.roles.crowded = (self.pieces[index - 1], piece)
        if self.state == "asked" and self.roles.asked and tag == "or":
            self.roles.alternatives = True
        {"asked": self.roles.asked, "worn": self.roles.worn, "unworn": self.roles.unworn}[self.state].append(
            piece
        )

    _on_items = _on_item

    def _more_items(self, index: int) -> bool:
        return any(piece.tag in ("item", "items") for piece in self.pieces[index + 1 :])

    def _is_whole(self, piece: Piece) -> bool:
        """Whether an item after "of" only says whose part was meant."""
        wholes = {entry.id for entry in piece.entries}
        for asked in (*self.roles.asked, *self.roles.worn):
            owners = {self.lookup.items[entry.id].part_of for entry in asked.entries}
            if owners & wholes or any(set(self.lookup.broader(o)) & wholes for o in owners if o):
                return True
        return False

    def _on_alone(self, index: int, piece: Piece) -> None:
        self.roles.alone = True

    def _on_only(self, index: int, piece: Piece) -> None:
        after, before = self._tag(self._near(index, 1)), self._tag(self._near(index, -1))
        if (
            after in ("item", "items")
            or (after == "" and before in ("item", "items", "act"))
            or after == "act"
        ):
            self.roles.alone = True
            self._use(index)

    def _on_fact(self, index: int, piece: Piece) -> None:
        self._use(index)
        if piece.values is None:
            return
        known = self.roles.facts.get(piece.fact)
        both = piece.values if known is None else intersect(known, piece.values)
        if is_empty(both):
            self.roles.clashing.append(piece)
            return
        self.roles.facts[piece.fact] = both

    def _on_aspect(self, index: int, piece: Piece) -> None:
        if index in self.frame.used:
            return
        if not self.roles.value_aspect and not self.roles.aspect:
            self.roles.value_aspect = piece.arg
            self._use(index)

    def _on_aspect_value(self, index: int, piece: Piece) -> None:
        owners = {entry.owner for entry in piece.entries}
        if len(owners) == 1 and (not self.roles.value_aspect or self.roles.value_aspect in owners):
            self.roles.value_aspect = owners.pop()
            chosen = Choices(frozenset(entry.id for entry in piece.entries))
            known = self.roles.value
            self.roles.value = (
                Choices(chosen.members | known.members) if isinstance(known, Choices) else chosen
            )
            self._use(index)

    def _on_measure(self, index: int, piece: Piece) -> None:
        if piece.measure is not None and self.roles.value is None:
            self.roles.value = ranges([piece.measure.interval])
            self.roles.measure_unit = piece.measure.unit
            self._use(index)

    def _on_dimension(self, index: int, piece: Piece) -> None:
        measured = any(p.tag in ("measure", "number") for p in self.pieces)
        if index not in self.frame.used and (measured or self.frame.kind == "how"):
            self.roles.dimension = piece.arg
            self._use(index)

    def _on_number(self, index: int, piece: Piece) -> None:
        """A number before an item, or after "the number of ... be", counts it; after a book it is a clause."""
        number = int(piece.arg)
        before = self._near(index, -1)
        if self._tag(before) == "book" and not self.roles.clause_number:
            self.roles.clause_number = piece.arg
            self._use(index)
            return
        beside = self._tag(index + 1) in ("item", "items")
        counted = any(p.tag == "how many" for p in self.pieces)
        if self.roles.value is not None or not (beside or counted):
            return
        bounds = {
            "at least": Interval(Fraction(number), None), "at most": Interval(None, Fraction(number)),
            "above": Interval(Fraction(number), None, low_open=True),
            "below": Interval(None, Fraction(number), high_open=True),
        }  # fmt: skip
        interval = bounds.get(self._tag(before))
        if interval is not None:
            self._use(before)
        elif self._tag(index + 1) in ("to", "range") and self._tag(index + 2) == "number":
            interval = Interval(Fraction(number), Fraction(int(self.pieces[index + 2].arg)))
            self._use(index + 1, index + 2)
        self.roles.value = ranges([interval]) if interval is not None else point(number)
        self.roles.value_aspect = "count"
        self._use(index)

    def _on_by(self, index: int, piece: Piece) -> None:
        if self._tag(self._near(index, 1)) in ("fact", "person", "self"):
            self._use(index)

    def _on_on_date(self, index: int, piece: Piece) -> None:
        low = self.tokens[piece.first - 1].low if piece.first else ""
        if self.roles.as_of is None and low not in ("before", "after", "until", "till"):
            self.roles.as_of = piece.date
            self._use(index)
            if self._tag(index - 1) in ("between", "range", "above", "below"):
                self._use(index - 1)

    def _on_place(self, index: int, piece: Piece) -> None:
        if self.roles.asked:
            self.roles.placing.append(piece)
            self._use(index)

    def _on_clause_number(self, index: int, piece: Piece) -> None:
        if not self.roles.clause_number:
            self.roles.clause_number = piece.arg
            self._use(index)

    def _on_book(self, index: int, piece: Piece) -> None:
        self.roles.book = piece.arg
        self._use(index)

    def _on_care(self, index: int, piece: Piece) -> None:
        if self.frame.aspect == "care":
            self._use(index)

    def _on_grant(self, index: int, piece: Piece) -> None:
        if self._tag(index - 1) == "joined":
            self._use(index)
