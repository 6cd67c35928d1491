"""The words of structure of a question in a row, and which verdicts it asks about."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.questions import QuestionKind, Verdict
from kb.reader.pieces.pieces import Piece
from kb.reader.words.tokens import Token

SKIPPED = frozenset({"comma", "filler", "det", "poss", "joined", "service", "fully", "datum"})
MODALS = {"may": "may", "can": "may", "allowed": "may", "banned": "may", "must": "must", "should": "must",
          "have to": "must", "required": "must", "optional": "must"}  # fmt: skip
_LEADING, _WHOM = frozenset({"can", "may", "should"}), frozenset({"self", "person", "fact"})
_PREDICATES: dict[str, tuple[Verdict, ...]] = {"banned": ("prohibited",), "optional": ("permitted",)}


class Flow:
    """The pieces without those that carry nothing, with their places."""

    def __init__(
        self, pieces: Sequence[Piece], tokens: tuple[Token, ...], told: frozenset[int] = frozenset()
    ) -> None:
        self.places = [i for i, p in enumerate(pieces) if p.tag not in SKIPPED and i not in told]
        self.led = [i > 0 and pieces[i - 1].tag == "comma" for i in self.places]
        self.tags = [pieces[i].tag for i in self.places]
        self.pieces = [pieces[i] for i in self.places]
        self.words = [tokens[p.first].low for p in self.pieces]
        self.lasts = [tokens[p.last - 1].low for p in self.pieces]

    def tag(self, index: int) -> str:
        return self.tags[index] if 0 <= index < len(self.tags) else ""

    def first(self, *tags: str) -> int:
        return next((i for i, tag in enumerate(self.tags) if tag in tags), len(self.tags))


def main_modal(flow: Flow) -> int:
    """The place of the first word of permission or duty; in "could I be done for it" that of the ban."""
    first = flow.first(*MODALS)
    after = first + 1
    while flow.tag(after) in _WHOM:
        after += 1
    leads = flow.tag(first) in _LEADING and after > first + 1
    return after if leads and flow.tag(after) == "banned" else first


_VERDICTS: dict[tuple[str, bool], Verdict] = {
    ("must", False): "required", ("may", False): "permitted", ("must", True): "prohibited",
    ("may", True): "prohibited", ("need", True): "not_required",
}  # fmt: skip


def asked_verdicts(
    kind: QuestionKind, modal: str, negated: bool, bans: bool, flow: Flow
) -> tuple[Verdict, ...]:
    """The verdicts that a list or "who" is narrowed to, or that "why" takes for granted."""
    if kind in ("may", "must"):  # "is it banned", "is it optional": yes and no are said of that
        return _PREDICATES.get(flow.tag(main_modal(flow)), ())
    if kind in ("list", "who"):
        return _modalities(modal, negated, bans, flow)
    if kind == "when":
        return _said_of_when(modal, negated, bans, flow)
    why = flow.pieces[flow.first("why")] if kind == "why" else None
    if why is None or not modal or why.last - why.first > 1:
        return ()
    if "optional" in flow.tags:
        return ("permitted",)
    if bans or (negated and (modal == "may" or flow.tag(main_modal(flow)) in ("must", "should"))):
        return ("prohibited",)
    if modal == "must":
        return ("not_required",) if negated else ("required",)
    return ("permitted",)


def _said_of_when(modal: str, negated: bool, bans: bool, flow: Flow) -> tuple[Verdict, ...]:
    """ "When must it", "when may it not"; a plain "when may it" asks for every verdict."""
    if (
        modal == "must"
        and "optional" not in flow.tags
        and flow.tag(main_modal(flow)) not in ("must", "should")
    ):
        return ("not_required",) if negated else ("required",)
    if bans or (modal and negated):
        return ("prohibited",)
    return ("required",) if modal == "must" and "optional" not in flow.tags else ()


def _modalities(modal: str, negated: bool, bans: bool, flow: Flow) -> tuple[Verdict, ...]:
    """Which verdicts a list is narrowed to; several modal words in a row ("must or may") give several."""
    listed = _listed(flow)
    if len(listed) > 1 or listed == ["not_required"]:
        return tuple(dict.fromkeys(listed))
    if "optional" in flow.tags:
        return ("permitted",)
    if negated and not modal:
        return ("prohibited",)
    if bans:
        return ("required", "permitted") if negated else ("prohibited",)
    if "leave off" in flow.tags and modal == "may":
        return ("required",) if negated else ("permitted", "not_required")
    if "leave off" in flow.tags and modal == "must" and not negated:
        return ("prohibited",)  # "what must come off" is what must not be worn
    if modal == "must" and negated:
        written = flow.tag(main_modal(flow))
        return ("prohibited",) if written in ("must", "should") else ("permitted", "not_required")
    if modal == "may":
        return ("prohibited",) if negated else ("required", "permitted")
    return ("required",) if modal == "must" else ("required", "permitted")


def _listed(flow: Flow) -> list[Verdict]:
    """The verdicts of modal words that stand in a row, joined by "or"."""
    found: list[Verdict] = []
    index = flow.first("may", "can", "must", "have to")
    while index < len(flow.tags):
        tag = "need" if flow.words[index] == "need" else MODALS.get(flow.tag(index), "")
        no = flow.tag(index + 1) == "not"
        verdict = _VERDICTS.get((tag, no))
        if verdict is None:
            break
        found.append(verdict)
        index += 2 if no else 1
        if flow.tag(index) not in ("or", "and", *MODALS):
            break
        index += flow.tag(index) in ("or", "and")
    return found
