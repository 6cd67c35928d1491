"""Required manners (fit, fastening, construction, care), whose texts authors write freely."""

from __future__ import annotations

from itertools import pairwise

from kb.model.lookup import Lookup
from kb.model.records import Aspect
from kb.text import Pattern
from kb.wording.english import ADVERBS, PREPOSITIONS, definite, head_index, indefinite, phrase

_PARTICIPLE = Pattern(
    r"[a-z]{2,}(ed|own|orn)$|^(worn|done|cut|put|set|laid|tied|hung|kept|made|left|shut|sewn|undone)$"
)
_ADJECTIVES = frozenset((
    "square", "plain", "loose", "tight", "long", "short", "open", "upright", "flat", "straight", "full",
    "high", "low", "neat", "tidy", "wide", "narrow", "vertical", "horizontal", "parallel", "central",
    "visible", "invisible", "flush", "taut", "slack", "snug", "whole", "bare", "seamless", "uniform",
    "waterproof", "opaque", "dark", "light", "discreet", "modest", "inconspicuous", "clear", "close",
    "level", "even", "free", "clean", "dry", "blunt", "smooth", "natural", "closed", "empty", "covered",
    "hidden", "matt", "secure", "dull", "undamaged", "complete", "unworn", "spotless",
))  # fmt: skip
_DETERMINERS = frozenset((
    "the", "a", "an", "all", "no", "one", "two", "three", "four", "five", "six", "both", "each", "every",
    "its",
))  # fmt: skip

_MATERIALS = frozenset((
    "cloth", "wool", "leather", "cotton", "canvas", "linen", "silk", "steel", "brass", "metal", "rubber",
    "felt", "serge", "nylon", "velvet", "denim", "oilskin", "plastic", "gold", "silver", "copper", "braid",
    "webbing", "tweed", "fur", "wood", "material", "fabric", "twill",
))  # fmt: skip
_TREATMENTS = frozenset((
    "air", "bleach", "brush", "change", "check", "clean", "dab", "darn", "disinfect", "dry", "dust",
    "examine", "exchange", "fold", "grease", "hang", "inspect", "iron", "keep", "lacquer", "launder",
    "mend", "oil", "patch", "pin", "polish", "press", "proof", "remove", "renew", "repair", "replace",
    "rinse", "roll", "scrub", "sew", "shake", "soak", "sponge", "starch", "steam", "store", "stow",
    "test", "trim", "tumble", "varnish", "wash", "wax", "wipe", "wrap", "wring",
))  # fmt: skip
_OF_THE_THING = frozenset({"fit", "fastening", "construction", "care"})
"""Manners in which a thing itself is; how it is issued or replaced is said of the issue."""
_OCCASIONAL = frozenset(
    {"every", "each", "once", "twice", "annually", "yearly", "monthly", "weekly", "daily"}
)
_BY_MEANS = frozenset({"dry", "steam", "hand", "machine", "spot", "wet", "tumble"})
_AFTER = frozenset(("", "enough", "and", "or", "all", "back", "together", "away", "flat"))
_DONE = {"hang": "hung", "keep": "kept", "sew": "sewn", "shake": "shaken", "wring": "wrung"}
_DOUBLED = ("dab", "pin", "scrub", "trim", "wrap")


def is_manner(aspect: Aspect) -> bool:
    """Whether an act is one text under a manner (the care "wash by hand")."""
    return aspect.kind == "act" and aspect.verb is None and aspect.within is not None


def say_manner(lookup: Lookup, scope: str, aspect: Aspect, verb: str) -> str:
    """ "The coat must be buttoned to the throat", "must have the collar turned down", else quoted."""
    words = aspect.label.lower().split()
    manner = lookup.aspects[aspect.within or aspect.id].label
    if aspect.within not in _OF_THE_THING:
        said = aspect.label if _is_when_or_by(words) else f"“{aspect.label}”"
        return phrase(definite(manner), "of", scope, verb, "be", said)
    if aspect.within == "fit" and len(words) > 1 and words[0].endswith("ing") and words[1] in PREPOSITIONS:
        return phrase(scope, verb, "be worn", aspect.label)
    done = treated(aspect)
    if done or _is_predicate(words):
        return phrase(scope, verb, "be", done or aspect.label)
    if _is_feature(words):
        return phrase(scope, verb, "have", definite(aspect.label))
    if _is_material(words):
        return phrase(scope, verb, "be of", aspect.label)
    if aspect.within == "construction" and len(words) > 1 and not words[0].endswith("ing"):
        return phrase(scope, verb, "have", indefinite(aspect.label))
    if _is_placed(words):
        return phrase(scope, verb, "have", definite(aspect.label))
    return phrase(definite(manner), "of", scope, verb, "be", f"“{aspect.label}”")


def treated(aspect: Aspect) -> str | None:
    """A treatment as it is done to a thing, "washed by hand" for "wash by hand"; None if it is none."""
    words = aspect.label.split()
    means, hyphen, way = words[0].partition("-") if words else ("", "", "")
    if hyphen and means.lower() in _BY_MEANS and way.lower() in _TREATMENTS:
        words = [means, way, *words[1:]]  # "tumble-dry"
    if [word.lower() for word in words[:2]] == ["clean", "and"] and words[2].lower() not in _TREATMENTS:
        return None  # "clean and in good repair" is how it is kept
    by_means = len(words) > 1 and words[0].lower() in _BY_MEANS and words[1].lower() in _TREATMENTS
    if aspect.within != "care" or not words or not (by_means or words[0].lower() in _TREATMENTS):
        return None
    if by_means:
        return " ".join((f"{words[0]}-{_done(words[1])}", *words[2:]))
    done = [_done(words[0])]
    for before, word in pairwise(words):
        joined = before in ("and", "or") and word.lower() in _TREATMENTS
        done.append(_done(word) if joined else word)
    return " ".join(done)


def _done(verb: str) -> str:
    verb = verb.lower()
    if verb in _DONE:
        return _DONE[verb]
    if verb in _DOUBLED:
        return f"{verb}{verb[-1]}ed"
    if verb.endswith("e"):
        return f"{verb}d"
    return f"{verb[:-1]}ied" if verb.endswith("y") and verb[-2] not in "aeiou" else f"{verb}ed"


def _is_when_or_by(words: list[str]) -> bool:
    """Whether a text can follow "the issue of the shoes must be": "on joining", "every two years"."""
    return bool(words) and (words[0] in PREPOSITIONS or words[0] in _OCCASIONAL)


def _is_predicate(words: list[str]) -> bool:
    """Whether a text can follow "must be": "square on the head", "under the chin"."""
    first, second = [*words, "", ""][:2]
    if first in PREPOSITIONS or (first, second) == ("out", "of"):
        return True
    if first == "not":
        return _is_predicate(words[1:])
    joins = first.endswith(",") or second in PREPOSITIONS or second in _AFTER
    how = second in _ADJECTIVES or second in ADVERBS or (second.endswith("ly") and len(second) > 4)
    how = how or second in _OCCASIONAL or second == "only"
    word = first.rstrip(",").split("-")[-1]
    done = bool(_PARTICIPLE.search(word)) or word == "hanging"
    return (done and (joins or how)) or (joins and word in _ADJECTIVES and second != "by")


def _is_feature(words: list[str]) -> bool:
    """Whether a text can follow "must have": "the collar turned down", "ends tucked in"."""
    turned = len(words) > 1 and words[0].endswith("s") and bool(_PARTICIPLE.search(words[1]))
    return turned or (bool(words) and words[0] in _DETERMINERS)


def _is_material(words: list[str]) -> bool:
    """Whether a text names what something is made of: "proofed cloth with a sewn lining"."""
    return bool(words) and words[head_index(words)] in _MATERIALS and words[0] not in _DETERMINERS


def _is_placed(words: list[str]) -> bool:
    """Whether a text says where a part goes: "strap over the left shoulder", "trousers inside"."""
    places = [word in PREPOSITIONS or word in ADVERBS for word in words[1:]]
    return any(places) and not words[0].endswith("ing") and words[0] not in _TREATMENTS
