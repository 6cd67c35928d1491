"""What the walk over the pieces of a question found."""

from __future__ import annotations

import datetime

from kb.model.values import ValueSet
from kb.reader.pieces.pieces import Piece


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
        self.measured = ""
        self.granting = False
        self.led_by_on = False
        self.led_by_in = False
        self.supposed = False
        self.value: ValueSet | None = None
        self.value_aspect = ""
        self.leading: int | None = None  # where the value stands right before a thing: "the yellow vest"
        self.of_aspect = False  # "the fit of the cap" names the aspect of a way that is named, too
        self.measure_unit = ""
        self.counted: Piece | None = None
        self.apart = False  # two things, each with a value of its own
        self.as_of: datetime.date | None = None
        self.clause_number = ""
        self.book = ""
        self.body = ""
        self.used: set[int] = set()
