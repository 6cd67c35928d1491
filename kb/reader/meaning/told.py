"""Statements before or after a question: "I have the storm coat on. Where does the pin go?"

What is said of oneself gives the case (facts, what is worn); only the question's own words say what is asked.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.pointing import is_nowhere, loose_there
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.turned import KIN

_ASKING = tag_set("""
    can, may, must, should, have to, allowed, banned, required, optional, do, what, which, who, where, how
    how many, when, why, compare, order, which clause, say, show, list, clause, rule, about, dimension, mean
    and how about, clause number, measure
""")
_STATING = frozenset({"be", "have", "act", "hold"})
_LIGHT = frozenset({"filler", "comma", "det", "poss", "and", "but", "if"})
_ITEMS = ("item", "items")
_THEN = ("situation", "rig", "term")
_SAYS = word_set("say says said reckon reckons reckoned think thinks thought claim claims claimed")
_WORN = frozenset({"wear", "use", "carrying", "possession"})


def told(found: Understood) -> frozenset[int]:
    """Places of the pieces that are in statements; none where the text is one sentence."""
    starts = sentence_starts(found.text, found.tokens)
    if len(starts) < 2:
        return frozenset()
    sentences = list(sentences_of(found, starts))
    stated = [places for places, mark in sentences if _is_told(found.pieces, places, mark)]
    if len(stated) == len(sentences):
        return frozenset()
    return frozenset(place for places in stated for place in places)


def loose_items(found: Understood, stated: frozenset[int]) -> frozenset[int]:
    """Places of items in a plain sentence that says nothing of wearing, beside a question about other items.

    "The sun hat blew away. May I wear the cap?": how the two go together is not understood.
    """
    starts = sentence_starts(found.text, found.tokens)
    if len(starts) < 2:
        return frozenset()
    sentences = [(places, mark) for places, mark in sentences_of(found, starts) if places[0] not in stated]
    plain = [places for places, mark in sentences if mark in (".", ";") and not _asks(found.pieces, places)]
    asked = {
        entry.id
        for places, _ in sentences
        if places not in plain
        for place in places
        if found.pieces[place].tag in _ITEMS
        for entry in found.pieces[place].entries
    }
    return frozenset(
        place
        for places in plain
        for place in places
        if found.pieces[place].tag in _ITEMS
        and asked
        and asked.isdisjoint(entry.id for entry in found.pieces[place].entries)
    )


def loose_denials(found: Understood) -> Iterator[int]:
    """The denials in a plain sentence about a thing, before a question that names none.

    "I never wear the scarf. Must I?" does not ask whether I must go without it.
    """
    starts = sentence_starts(found.text, found.tokens)
    if len(starts) < 2:
        return
    sentences = list(sentences_of(found, starts))
    asked = [places for places, mark in sentences if mark == "?"]
    if len(asked) != 1 or any(found.pieces[place].tag in _ITEMS for place in asked[0]):
        return
    for places, _ in sentences[:-1]:
        tags = [found.pieces[place].tag for place in places]
        if not _ASKING.isdisjoint(tags) or not any(tag in _ITEMS for tag in tags):
            continue
        yield from (place for place in places if found.pieces[place].tag == "not")


def loose_claims(found: Understood) -> Iterator[int]:
    """Where two say different things beside the question: "the skipper says boots, the mate says shoes"."""
    saying = [
        place
        for place, piece in enumerate(found.pieces)
        if piece.tag in ("say", "filler") and found.tokens[piece.last - 1].low in _SAYS
    ]
    if len(saying) < 2:
        return
    ends = [*saying[1:], len(found.pieces)]
    said = [
        {piece.arg for piece in found.pieces[first:end] if piece.tag in _ITEMS}
        for first, end in zip(saying, ends, strict=True)
    ]
    if said[0] and said[1] and said[0].isdisjoint(said[1]):
        yield from saying


def loose_then(found: Understood, lookup: Lookup) -> Iterator[int]:
    """The circumstances of what used to be, beside a question: "we used to wear it in boat rig. May I?"."""
    lows = [token.low for token in found.tokens]
    if "used" not in lows or lows[lows.index("used") + 1 :][:1] != ["to"]:
        return
    used = lows.index("used")
    starts = sentence_starts(found.text, found.tokens)
    first = max(start for start in starts if start <= used)
    end = min((start for start in starts if start > used), default=0)
    for place, piece in enumerate(found.pieces):
        if first <= piece.first < end and piece.tag == "fact" and lookup.facts[piece.fact].family in _THEN:
            yield place


def loose(found: Understood, previous: Reading | None, lookup: Lookup) -> tuple[int, ...]:
    """The pieces that are understood but play no part: things told of beside, a "there" without a place.

    So are the standings of somebody else than the one asked about.
    """
    there = loose_there(found)
    nowhere = there is not None and is_nowhere(found, previous, lookup)
    places = (
        *loose_items(found, told(found)),
        *loose_denials(found),
        *loose_claims(found),
        *loose_then(found, lookup),
        *((there,) if there is not None and nowhere else ()),
    )
    named = {token.low for token in found.tokens}
    if named.isdisjoint(KIN) and not any(
        piece.tag == "fact" and lookup.facts[piece.fact].family in PERSONAL for piece in found.pieces
    ):
        return places
    from kb.reader.meaning.whose import elsewhere  # noqa: PLC0415  many questions name nobody's standing

    return (*places, *elsewhere(found, lookup))


def _asks(pieces: Sequence[Piece], places: range) -> bool:
    tags = [pieces[place].tag for place in places if pieces[place].tag not in _LIGHT]
    return not _ASKING.isdisjoint(tags) or not _STATING & {*tags}


def sentences_of(found: Understood, starts: Sequence[int]) -> Iterator[tuple[range, str]]:
    """The places of the pieces of each sentence, and the mark at its end."""
    for number, start in enumerate(starts):
        end = starts[number + 1] if number + 1 < len(starts) else len(found.tokens)
        inside = [i for i, piece in enumerate(found.pieces) if start <= piece.first < end]
        after = found.tokens[end].start if end < len(found.tokens) else len(found.text)
        mark = found.text[found.tokens[end - 1].end : after].strip()[:1]
        if inside:
            yield range(inside[0], inside[-1] + 1), mark


def _is_told(pieces: Sequence[Piece], places: range, mark: str) -> bool:
    """Whether a sentence states facts, or what the one who speaks wears."""
    tags = [pieces[place].tag for place in places if pieces[place].tag not in _LIGHT]
    if tags[:3] == ["self", "do", "not"]:
        tags = ["self", *tags[2:]]  # "I do not have a hat"
    if mark == "?" or not tags or not _ASKING.isdisjoint(tags):
        return False
    if any(pieces[place].tag == "act" and pieces[place].arg not in _WORN for place in places):
        return False
    if not any(tag in _ITEMS for tag in tags):
        return "fact" in tags and "act" not in tags and "leave off" not in tags
    led = [i for i, tag in enumerate(tags) if tag in _ITEMS]
    if mark == "." and tags[0] in ("fact", "in") and _STATING.isdisjoint(tags):
        return all(i and tags[i - 1] in ("in", "and") for i in led)  # "Painting in coveralls."
    return mark != ":" and tags[0] in ("self", "fact", "person") and not _STATING.isdisjoint(tags)
