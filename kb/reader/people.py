"""Others of whom the question before is asked again, with its verb: "and may attendants?"."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.reader.lexicon import Lexicon
from kb.reader.pieces import Understood
from kb.reader.question import clean, understand
from kb.text import Pattern

_STANDING = frozenset({"grade", "branch", "qualification", "appointment"})
_ASKED = Pattern(
    r"(?i)(?:(?:and|but|so) )?(?:may|can|could|must|should|do|does|are|is) ([\w' -]{2,40}?)[ ?.]*"
)


def people_asked(text: str, lexicon: Lexicon, lookup: Lookup) -> str | None:
    """The words for whom it is asked, where they name people by their grade or the like and say no more."""
    asked = _ASKED.fullmatch(" ".join(clean(text).split()))
    found = understand(asked.group(1), lexicon, lookup, None) if asked is not None else None
    if asked is None or not isinstance(found, Understood):
        return None
    facts = [piece.fact for piece in found.pieces if piece.tag == "fact"]
    bare = {piece.tag for piece in found.pieces} <= {"det", "fact", "filler"}
    standing = bool(facts) and all(lookup.facts[fact].family in _STANDING for fact in facts)
    return asked.group(1) if bare and standing else None
