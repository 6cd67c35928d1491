"""The standing of somebody else, told beside a question: "My lad's a cadet. May he?"; as in `sayings.py`."""

from __future__ import annotations

from kb.reader.phrases.leads import KIN
from kb.reader.words.forms import word_set

# Of whom a standing is told: who is told to be nothing of the service may be no member of it.
_FELLOWS = KIN | word_set("oppo pal buddy chum boss gaffer colleague shipmate workmate flatmate apprentice")
_MEN = "|".join(sorted(_FELLOWS))
_OF_THEM = (
    r"^(?:(?=.*\b(?:may|can|could|must|should|does|do|is|has|need) (?:he|she)\b)"
    rf"|(?!.*\b(?:i|me|mine|myself)\b)(?!.*\bmy (?!(?:[\w-]+ )?(?:{_MEN})\b)))"
)
# It is asked of them, or nothing else of one's own is spoken of; and something is asked, in the same text.
_STANDING = r"(?=(?:an? |[a-z]{1,3}\d\d?\b).*[.,;:?!–-]\s+\w)"
FELLOWS = rf"""
# {" ".join(sorted(_FELLOWS))}
{_OF_THEM}(.*?\b(?:my|our|his|her|the) (?:[\w-]+ )?(?:{_MEN}))'s (?:(?=not )|{_STANDING}) => \1 is\s
{_OF_THEM}(.*?\b(?:my|our|his|her|the) (?:[\w-]+ )?)(?:{_MEN})((?:,? who(?:'s| is)| is|,)(?: just
    | now| only)?|(?: has)?(?: just)? made) {_STANDING} => \1colleague\2\s
"""
