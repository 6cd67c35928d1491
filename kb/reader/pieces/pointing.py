"""Words that take a place or a time over from what was said before: "and do I need a helmet there?"."""

from __future__ import annotations

from collections.abc import Mapping

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.model.values import YES, Choices, ValueSet
from kb.reader.phrases.english import LEADING_PREPOSITIONS
from kb.reader.pieces.pieces import Understood

_AFTER = frozenset({"", "comma", "filler", "if", "when", "in", "on", "and", "with", "without", "fact", "for"})
_CIRCUMSTANCES = ("situation", "term", "authorisation", "rig")
_WAYS = frozenset({"up", "down", "over", "out", "in"})
_LAST = ("then", "instead", "too", "also")
_FOR_THAT = (" for that", " doing that", " while i do that", " when i do that")
_BESIDE = frozenset(
    {"outside", "beyond", "past", "inside", "behind", "at", "beside", "over", "near", "aboard"}
)
_MAY = frozenset({"can", "could", "may", "ca"})
_THEN = ("at that time", "at the time", "in that case", "under those conditions", "in those conditions")


def loose_there(found: Understood) -> int | None:
    """The place of a "there" that says where; None where it only helps a sentence along."""
    for index, piece in enumerate(found.pieces):
        lows = [token.low for token in found.tokens[piece.first : piece.last]]
        if piece.tag not in ("det", "filler") or lows[-1] != "there" or not set(lows[:-1]) <= _WAYS:
            continue
        after = found.pieces[index + 1].tag if index + 1 < len(found.pieces) else ""
        before = found.pieces[index - 1].tag if index else ""
        if after in _AFTER and before not in ("", "be"):
            return index
    return None


def pointed_at(
    found: Understood, previous: Reading | None, lookup: Lookup, joined: bool = False
) -> Mapping[str, ValueSet]:
    """The facts of the question before that such words take over, or one that is `joined` to it by "and"."""
    if previous is None or previous.query is None:
        return {}
    facts = {f: v for f, v in previous.query.case.facts if lookup.facts[f].family in _CIRCUMSTANCES}
    if joined or _says_then(found):
        return facts
    if loose_there(found) is not None:
        return {f: v for f, v in facts.items() if is_place(f, v, lookup) or _is_beside(f, v, lookup)}
    return {}


def _says_then(found: Understood) -> bool:
    lows = [token.low for token in found.tokens]
    said = " ".join(lows)
    led = len(lows) > 2 and (lows[-1] in _LAST or lows[0] == "then" or lows[-2:] == ["as", "well"])
    led = led or said.rstrip(" ?.!").endswith(_FOR_THAT)
    return led or any(words in said for words in _THEN) or _puts_in_place(found, lows)


def _puts_in_place(found: Understood, lows: list[str]) -> bool:
    """ "Can I have my hat on instead? It's dry", "couldn't I just wear the waistcoat?": in place of that."""
    if "instead" in lows[2:]:
        return lows[lows.index("instead", 2) + 1 :][:1] != ["of"]
    just = lows.index("just") if "just" in lows[2:5] else 0
    asked = just > 0 and not _MAY.isdisjoint(lows[:2]) and lows[just + 1 : just + 2] != ["because"]
    return asked and all(piece.tag != "fact" for piece in found.pieces)


def is_place(fact: str, values: ValueSet, lookup: Lookup) -> bool:
    """Whether the values of a fact are places: their names begin with a preposition, "on the ice"."""
    record = lookup.facts[fact]
    if record.family != "situation" or record.kind != "choice" or not isinstance(values, Choices):
        return False
    labels = [value.label for value in record.values if value.id in values.members]
    return any(label.split()[0].casefold() in LEADING_PREPOSITIONS for label in labels)


def _is_beside(fact: str, values: ValueSet, lookup: Lookup) -> bool:
    """Whether a yes says where one is: "outside the parapet", "at moving machinery"."""
    return values == YES and lookup.facts[fact].label.split()[0].casefold() in _BESIDE


def is_nowhere(found: Understood, previous: Reading | None, lookup: Lookup) -> bool:
    """Whether no place was said that a "there" could mean."""
    named = any(p.fact and p.values is not None and is_place(p.fact, p.values, lookup) for p in found.pieces)
    return not named and not pointed_at(found, previous, lookup)
