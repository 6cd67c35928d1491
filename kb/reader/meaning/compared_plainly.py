"""A comparison that was not understood, in plainer words: "when it comes to mobiles" as "for mobiles"."""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from kb.model.questions import Reading
from kb.reader.meaning.rephrase import as_mended, rephrased
from kb.reader.pieces.pieces import Understood


def in_plainer_words(compared: Reading, found: Understood, read: Callable[[str], Reading]) -> Reading:
    """What was read as a comparison; one that was not understood, in plainer words if these are."""
    plainer = rephrased(as_mended(found)) if compared.abstain is not None else None
    again = read(plainer) if plainer is not None else compared
    if again is compared or again.query is None or again.query.kind != "compare":
        return compared
    return msgspec.structs.replace(again, question=compared.question, spans=compared.spans)
