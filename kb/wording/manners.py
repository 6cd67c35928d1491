"""Required manners (fit, fastening, construction, care), whose texts authors write freely."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.records import Aspect
from kb.text import Pattern
from kb.wording.english import PREPOSITIONS, definite, phrase

_PARTICIPLE = Pattern(
    r"[a-z]{2,}(ed|own|orn)$|^(worn|done|cut|put|set|laid|tied|hung|kept|made|left|shut|sewn|undone)$"
)
_ADJECTIVES = frozenset((
    "square", "plain", "loose", "tight", "long", "short", "open", "upright", "flat", "straight", "full",
    "high", "low", "neat", "tidy", "wide", "narrow", "vertical", "horizontal", "parallel", "central",
    "visible", "invisible", "flush", "taut", "slack", "snug", "whole", "bare", "seamless", "uniform",
    "waterproof", "opaque", "dark", "light",
))  # fmt: skip
_DETERMINERS = frozenset((
    "the", "a", "an", "all", "no", "one", "two", "three", "four", "five", "six", "both", "each", "every",
    "its",
))  # fmt: skip


def is_manner(aspect: Aspect) -> bool:
    """Whether an act is one text under a manner (the care "wash by hand")."""
    return aspect.kind == "act" and aspect.verb is None and aspect.within is not None


def say_manner(lookup: Lookup, scope: str, aspect: Aspect, verb: str) -> str:
    """ "The coat must be buttoned to the throat", "must have the collar turned down", else quoted."""
    words = aspect.label.lower().split()
    if _is_predicate(words):
        return phrase(scope, verb, "be", aspect.label)
    if _is_feature(words):
        return phrase(scope, verb, "have", aspect.label)
    manner = lookup.aspects[aspect.within or aspect.id].label
    return phrase(definite(manner), "of", scope, verb, "be", f"“{aspect.label}”")


def _is_predicate(words: list[str]) -> bool:
    """Whether a text can follow "must be": "square on the head", "under the chin"."""
    first, second = [*words, "", ""][:2]
    if first in PREPOSITIONS:
        return True
    joins = first.endswith(",") or second in PREPOSITIONS or second in ("", "enough", "and", "or", "all")
    word = first.rstrip(",").split("-")[-1]
    return joins and (bool(_PARTICIPLE.search(word)) or (word in _ADJECTIVES and second != "by"))


def _is_feature(words: list[str]) -> bool:
    """Whether a text can follow "must have": "the collar turned down", "ends tucked in"."""
    turned = len(words) > 1 and words[0].endswith("s") and bool(_PARTICIPLE.search(words[1]))
    return turned or (bool(words) and words[0] in _DETERMINERS)
