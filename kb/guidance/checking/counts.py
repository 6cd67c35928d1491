"""Limits on numbers: "No more than two pins may be worn", "A K1 must wear exactly one bar"."""

from __future__ import annotations

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.conditions import read_holder
from kb.guidance.checking.modals import Modal
from kb.guidance.checking.scopes import read_scope
from kb.guidance.checking.statements import Statements, after
from kb.guidance.checking.words import fold
from kb.model.conditions import ALWAYS, Condition
from kb.model.records import Aspect
from kb.text import Pattern

_LIMIT = (
    r"(?:(?P<most>at most|not more than|no more than|up to|a maximum of"
    r"|only(?= (?:\d|one|two|three|four|five|six) ))"
    r"|(?P<least>at least|no fewer than|not fewer than|no less than|not less than|a minimum of)"
    r"|(?P<exact>exactly))"
)
_PASSIVE = Pattern(
    rf"{_LIMIT} (?P<number>\w+) (?P<items>.+?) "
    r"(?P<modal>may|must|can|shall|are to|is to|are|is) (?:be )?(?P<rest>.+)"
)
_ACTIVE = Pattern(
    rf"(?P<holder>.+?) (?:(?P<modal>may|must|can|shall|are to|is to) (?P<verb>\w+) {_LIMIT}"
    r"|(?:must|may|shall) not (?P<denied>\w+) (?P<more>more than)) (?P<number>\w+) (?P<what>.+)"
)
_AT_ONCE = Pattern(r"at (?:a|one|any one|the same) time|at once|together")
_MAY = frozenset({"may", "can"})


class Counting(Statements):
    """Reads limits on how many things are worn or owned."""

    def counted(self, core: str) -> Claim | None:
        """The limit that a statement gives; None if it gives none. "At least two may be worn" is none."""
        active = _ACTIVE.fullmatch(core)
        if active is not None:
            claim = self._by_holder(active["holder"], active["verb"] or active["denied"], active.groupdict())
            if claim is not None:
                return claim
        match = _PASSIVE.match(core)
        if match is None or (match["modal"] in _MAY and not match["most"]):
            return None
        limit = _limit(match.groupdict())
        for aspect in self._others:
            rest = after(match["rest"], fold(aspect.label).split()[-1]) if aspect.kind == "count" else None
            found = rest is not None and self._of(aspect, limit, match["number"], match["items"], rest)
            if found:
                return found
        return None

    def _by_holder(self, text: str, verb: str, given: dict[str, str | None]) -> Claim | None:
        holder = read_holder(self.names, text)
        act = next((act for act in self._acts if act.verb == verb), None)
        if holder is None or act is None or (given["modal"] in _MAY and not given["most"]):
            return None
        limit = "at most" if given["more"] else _limit(given)
        words = (given["what"] or "").split(" ")
        for aspect in self._others:
            if aspect.kind != "count" or fold(aspect.label).split()[-1] != fold(act.done or ""):
                continue
            for cut in range(len(words), 0, -1):
                items, tail = " ".join(words[:cut]), " ".join(words[cut:])
                claim = self._of(aspect, limit, given["number"] or "", items.rstrip(","), tail, holder)
                if claim is not None:
                    return claim
        return None

    def _of(
        self, aspect: Aspect, limit: str, number: str, items: str, tail: str, holder: Condition = ALWAYS
    ) -> Claim | None:
        found = read_scope(self.names, items, "must", False)
        for value in self.values.at_start(aspect.id, f"{limit} {number}") if found else ():
            if found is None or found[1] or value.rest:
                continue
            plain = _AT_ONCE.sub("", tail).strip()
            claim = self._claim(Modal(0, 0, "must"), found[0], aspect.id, value.value, plain, holder)
            if claim is not None:
                return claim
        return None


def _limit(given: dict[str, str | None]) -> str:
    return "at most" if given["most"] else "at least" if given["least"] else "exactly"
