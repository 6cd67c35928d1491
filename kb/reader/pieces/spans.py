"""The words of a question with the part that each plays in it, and what it was linked to."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Span, SpanRole
from kb.reader.pieces.pieces import Understood

_ROLES: dict[str, SpanRole] = {
    "item": "item", "items": "item", "act": "aspect", "aspect": "aspect", "aspect value": "aspect",
    "dimension": "aspect", "care": "aspect", "order": "aspect", "fact": "fact", "fact name": "fact",
    "values": "fact", "measure": "measure", "number": "measure", "on date": "date", "day": "date",
    "clause number": "clause",
    "book": "clause", "filler": "filler", "det": "filler", "poss": "filler", "comma": "filler",
    "unknown": "unknown",
}  # fmt: skip


def make_spans(found: Understood, lookup: Lookup) -> tuple[Span, ...]:
    """Every piece with its place in the text, its part, and what it was linked to."""
    mended = {place for place, _ in found.mended}
    spans: list[Span] = []
    for piece in found.pieces:
        role = _ROLES.get(piece.tag, "structure")
        if role == "fact" and piece.fact and lookup.facts[piece.fact].family == "grade":
            role = "grade"
        how = "spelling" if mended.intersection(range(piece.first, piece.last)) else piece.how
        start, end = found.tokens[piece.first].start, found.tokens[piece.last - 1].end
        target = piece.fact or (piece.arg if role not in ("structure", "filler") else None) or None
        spans.append(
            Span(start=start, end=end, text=found.text[start:end], role=role, target=target, how=how)
        )
    return tuple(spans)
