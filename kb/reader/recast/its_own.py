"""Words before a thing that tell what it is anyway: "a plain wedding ring", where the band is a plain one.

What stands in another name of the thing, or what rules make it without exception, adds nothing to a question
that is not understood with it.
"""

from __future__ import annotations

from kb.model.conditions import ALWAYS
from kb.model.lookup import Lookup
from kb.model.values import Choices
from kb.reader.pieces.pieces import Understood
from kb.reader.words.tokens import tokenize

_DENYING = frozenset({"no", "not", "without", "never", "un"})


def without_its_own(found: Understood, lookup: Lookup) -> str | None:
    """The text without such words; None where there are none."""
    cut = []
    for piece in found.pieces:
        if piece.tag != "item" or piece.arg not in lookup.items:
            continue
        own = described(piece.arg, lookup)
        first = piece.first
        while first and (found.tokens[first - 1].key in own or found.tokens[first - 1].low == ","):
            first -= 1
        while first < piece.first and found.tokens[first].low == ",":
            first += 1
        if first < piece.first:
            cut.append((found.tokens[first].start, found.tokens[piece.first].start))
    text = found.text
    for start, end in reversed(cut):
        text = text[:start] + text[end:]
    return text if cut else None


def described(item: str, lookup: Lookup) -> frozenset[str]:
    """Keys of the words of an item's names, and of what the rules have it be at all times."""
    record = lookup.items[item]
    said = [record.label, *record.other_labels]
    for rule in lookup.rules_on((item,)):
        if rule.modality != "must" or rule.condition != ALWAYS:
            continue
        aspect = lookup.aspects[rule.aspect]
        if aspect.within == "construction":
            said.append(aspect.label)
        values = rule.value.values
        if isinstance(values, Choices) and not values.complement and len(values.members) == 1:
            said += [value.label for value in aspect.values if value.id in values.members]
    return frozenset(
        token.key
        for text in said
        if (words := tokenize(text)) and _DENYING.isdisjoint(word.low for word in words)
        for token in words
    )
