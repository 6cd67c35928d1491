"""Who is not in the place that is named, "on my way to the mess", "near the store", and what is over.

What is done before going in is asked of being there: "do I take it off before going to the canteen".
"""

from __future__ import annotations

import re

from kb.model.lookup import Lookup
from kb.model.values import Choices
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import complement_of, fact_piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token
from kb.text import Pattern
from kb.wording import is_place

NOT_THERE = word_set("""

    near next beside behind close way until till after done finished front route train bus coach tram ferry
    back return carry carrying bring bringing
""")
"""The words one of which is there."""
_WHO = r"(?:i|we|you|he|she|they|someone)"
_LED = Pattern(
    r"(?:^| )(?P<led>near(?: to)?|next to|close to|beside|behind|in front of|en route to"
    r"|(?:on|along) (?:my|the|our|your|his|her|their) way (?:over |down |up |back |out |home )*"
    r"(?:to|into|from)"
    r"|(?:on|in|aboard) (?:a |the |my )?(?:train|bus|coach|tram|ferry)(?: back| home| in)?"
    r" (?:to|into|from)"
    r"|(?:coming|going|get|getting|come) back from"
    rf"|(?:until|till) {_WHO}(?: have| 've| am| 'm| are| 're| has)? (?:get|gets|got|go|goes|come|comes"
    r"|enter|enters|reach|reaches|going|step|steps|walk|set foot)(?: back)?(?: (?:to|into|in|inside|for))?"
    r"|after(?: leaving| (?:i|we|you)(?: have| 've)? (?:leave|left))?"
    r"|(?:done|finished) (?:in|with|at))(?: (?:the|a|an|my|our|your|this|that))?$"
)
_OVER = Pattern(
    r"(?:is|'s|are|'re|has|have)(?: been)?(?: now| all| already| just| finally)*"
    r" (?:over|finished|done|ended)"
    r"(?= ?,?$| ,| (?:can|may|do|does|must|should|am|are|is|and|so|but|now)\b)"
)
_ENDS = word_set("over finished done ended")
_WITHIN = ("in ", "inside ", "aboard ", "on board ")
_CARRYING = word_set("carry carrying bring bringing")
_NAMED = frozenset({"fact", "item", "items", "values"})
_LEADS = word_set("in inside at on into the a an my our your this that")


def not_there(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """A place that one is only near, or not yet in, or in no more: anywhere but there."""
    lows = {token.low for token in tokens}
    if not _ENDS.isdisjoint(lows):
        _over(found, tokens, lookup)
    if NOT_THERE.isdisjoint(lows):
        return
    for piece in tuple(found):
        if piece.tag != "fact" or not isinstance(piece.values, Choices) or not _is_within(piece, lookup):
            continue
        head = piece.first
        while head < piece.last - 1 and tokens[head].low in _LEADS:
            head += 1
        led = _LED.search(" ".join(token.low for token in tokens[max(0, head - 8) : head]))
        if led is None:
            _carried_to(found, piece, head, tokens, lookup)
            continue
        start = head - len(led.group().split())
        index = found.index(piece)
        first = next((n for n in range(index + 1) if found[n].first >= start), index)
        if found[first].first != start or any(p.tag in _NAMED for p in found[first:index]):
            continue
        values = complement_of(lookup, piece.fact, piece.values)
        found[first : index + 1] = [fact_piece(piece, piece.fact, values, start, piece.last)]


def _carried_to(
    found: list[Piece], piece: Piece, head: int, tokens: tuple[Token, ...], lookup: Lookup
) -> None:
    """ "Carry a rucksack to town": on the way there, where the books have one name for that way."""
    start = head
    while start and tokens[start - 1].low in ("the", "our", "my"):
        start -= 1
    start -= 1
    index = found.index(piece)
    first = next((n for n in range(index + 1) if found[n].first >= start), index)
    carried = any(token.low in _CARRYING for token in tokens[: max(start, 0)])
    if start < 0 or tokens[start].low != "to" or found[first].first != start or not carried:
        return
    place = re.escape(" ".join(token.low for token in tokens[head : piece.last]))
    way = re.compile(
        rf"(?:^between (?:the )?{place} and |(?:^between .* and |way to |road to )(?:the )?{place}$)"
    )
    ways = [
        value.id
        for value in lookup.facts[piece.fact].values
        if any(way.search(label.casefold()) for label in (value.label, *value.other_labels))
    ]
    if len(ways) == 1:
        there = Choices(frozenset(ways))
        found[first : index + 1] = [fact_piece(piece, piece.fact, there, start, piece.last)]


def _over(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "The wedding's over": it is no wedding, where no more is said of it."""
    for piece in tuple(found):
        if piece.tag != "fact" or not isinstance(piece.values, Choices):
            continue
        last = piece.last
        while last < len(tokens) and last < piece.last + 6 and tokens[last].start - tokens[last - 1].end <= 1:
            last += 1
        owned = "'s " if tokens[piece.last - 1].low.endswith("'s") else ""
        ended = _OVER.match(owned + " ".join(token.low for token in tokens[piece.last : last]))
        if ended is None or lookup.facts[piece.fact].family != "situation":
            continue
        last = piece.last + len(ended.group().split()) - bool(owned)
        index = found.index(piece)
        end = next((n for n in range(index, len(found)) if found[n].last >= last), len(found) - 1)
        values = complement_of(lookup, piece.fact, piece.values)
        found[index : end + 1] = [fact_piece(piece, piece.fact, values, piece.first, found[end].last)]


def _is_within(piece: Piece, lookup: Lookup) -> bool:
    """Whether it is a place that one is in, and not one that one is at, of which "near" says as much."""
    fact = lookup.facts[piece.fact]
    if fact.kind != "choice" or not is_place(lookup, fact.id) or not isinstance(piece.values, Choices):
        return False
    named = [value.label for value in fact.values if value.id in piece.values.members]
    return bool(named) and not piece.values.complement and all(n.startswith(_WITHIN) for n in named)
