"""One test of a fact as a phrase, in the forms that a sentence can use it in."""

from __future__ import annotations

from typing import NamedTuple

WEARER = "the wearer"


class Phrase(NamedTuple):
    """The forms of one test or condition.

    `clause` stands by itself ("the wearer is ashore"); `bare` follows "when" ("ashore", "hauling lines");
    `attached` follows anything ("in boat rig", "with the storm coat"). `state` says that the clause is
    "the wearer is" and `bare`. `noun` is for a list of facts ("foul weather"). `place` orders the attached,
    `holder` marks what says who somebody is.
    """

    clause: str
    bare: str | None = None
    attached: str | None = None
    state: bool = False
    noun: str | None = None
    place: int = 5
    holder: bool = False
