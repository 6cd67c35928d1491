"""A name that several facts share: an outfit called Yard, and a place called the Yard.

What is said around it settles which is meant: who goes somewhere goes to a place, what is worn over something
is worn over an outfit, and a name that the books have with an article in one sense and without in the other
is meant as it is written. Else it is what the rules on the things asked about turn on. Else it is asked.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise

import msgspec

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Ask
from kb.model.values import intersect, is_empty
from kb.reader.names.lexicon import Entry, label_tokens, labels_of
from kb.reader.phrases.english import LEADING_PREPOSITIONS
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.values import LIGHT, Pieces, entry_values, fact_piece
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token
from kb.text import visible
from kb.wording import is_place

Words = tuple[Token, ...]
Owners = Mapping[str, tuple[Entry, ...]]
_ARTICLES = frozenset({"the", "a", "an"})
_OWN = _ARTICLES | {"my", "your", "his", "her", "our", "their", "this", "that"}
_TO_A_PLACE = word_set("to into from through near past across towards toward outside inside at around by")
_WITH_A_THING = word_set("with over under beneath underneath wear wears wearing wore worn without of")
_DRESSING = word_set("""
    change changes changing changed switch switching dress dresses dressing dressed get gets getting put puts
    putting""")
_STAYING = word_set("""
    work works working worked be am is are been live lives stay stays staying stand stands standing serve
    serves serving go goes going come comes coming walk walks walking eat eating wait waiting""")
_NEAR = 2  # words, as in "dressed in the"
_IN = frozenset({"in", "on", "at"})
_JOINING = frozenset({"and", "or", "comma"})


def shared(pieces: Pieces, tokens: Words, lookup: Lookup) -> Pieces:
    """The names that several facts have by a label, each with what is meant by it, if that is sure."""
    found = list(pieces)
    for index, piece in enumerate(pieces):
        owners = owners_of(piece)
        if len(owners) > 1:
            meant = (
                _by_what_leads(pieces, index, owners, tokens, lookup)
                or _by_others(pieces, index, owners)
                or _by_rules(pieces, index, owners, lookup)
            )
            found[index] = _only(piece, meant, lookup) if meant else piece
    return tuple(found)


def ask_shared(found: Understood, lookup: Lookup) -> Ask | None:
    """Which is meant, for a name between which nothing decides: "in the mess (place)", "in mess (rig)"."""
    for piece in found.pieces:
        owners = owners_of(piece)
        if piece.tag != "values" or len(owners) < 2:
            continue
        start, end = found.tokens[piece.first].start, found.tokens[piece.last - 1].end
        choices = []
        for owner, entries in owners.items():
            fact = lookup.facts[owner]
            label = next((v.label for v in fact.values if v.id == entries[0].id), fact.label)
            said = f"{found.text[:start]}{fact.label} {label}{found.text[end:]}"
            choices.append((said, f"{label} ({fact.label})"))
        return Ask(
            fact="reading", prompt=f'What is "{visible(found.text[start:end])}"?', choices=tuple(choices)
        )
    return None


def owners_of(piece: Piece) -> Owners:
    """For each fact that a name is a label of a value of, what it names there."""
    owners: dict[str, tuple[Entry, ...]] = {}
    for entry in piece.entries if piece.tag in ("name", "values") else ():
        if entry.kind in ("value", "group") and entry.rank == 0:
            owners[entry.owner] = (*owners.get(entry.owner, ()), entry)
    return owners


def _only(piece: Piece, owner: str, lookup: Lookup) -> Piece:
    """The piece with what it names of one fact; an outfit may be the thing itself."""
    things = ("item",) if lookup.facts[owner].family == "rig" else ()
    kept = tuple(e for e in piece.entries if e.owner == owner or e.kind in things)
    return msgspec.structs.replace(piece, entries=kept)


def _by_what_leads(pieces: Pieces, index: int, owners: Owners, tokens: Words, lookup: Lookup) -> str | None:
    """A place after "go to", an outfit after "worn over"; after "in" what has an article, or has none."""
    piece = pieces[index]
    words = [token.low for token in tokens[piece.first : piece.last]]
    first = piece.first
    while words[0] not in LEADING_PREPOSITIONS and first and tokens[first - 1].low in _OWN:
        first -= 1
    led = words[0] if words[0] in LEADING_PREPOSITIONS else tokens[first - 1].low if first else ""
    before = tokens[first - 1 - (led != words[0])].low if first > (led != words[0]) else ""
    dressing = any(token.low in _DRESSING for token in tokens[max(first - _NEAR, 0) : first])
    places = [owner for owner in owners if is_place(lookup, owner)]
    others = [owner for owner in owners if owner not in places]
    if led in _TO_A_PLACE and not dressing:
        return places[0] if len(places) == 1 else None
    if led in _WITH_A_THING:
        return others[0] if len(others) == 1 else None
    article = any(token.low in _ARTICLES for token in tokens[first : piece.last])
    plainly = article or (before not in _STAYING and _is_in_full(pieces, index, tokens))
    if led not in _IN or dressing or not plainly:
        return None
    written = [
        owner
        for owner, entries in owners.items()
        if _takes_article(entries, piece, tokens, lookup) is article
    ]
    unsure = [
        owner for owner, entries in owners.items() if _takes_article(entries, piece, tokens, lookup) is None
    ]
    return written[0] if len(written) == 1 and not unsure else None


def _is_in_full(pieces: Pieces, index: int, tokens: Words) -> bool:
    """Whether a name is written as a name, or in a text with its articles, so that none was left out."""
    piece = pieces[index]
    named = [token for token in tokens[piece.first : piece.last] if token.low not in LEADING_PREPOSITIONS]
    return named[0].text[:1].isupper() or any(p.tag in ("det", "poss") for p in pieces)


def _takes_article(entries: Sequence[Entry], piece: Piece, tokens: Words, lookup: Lookup) -> bool | None:
    """Whether the names of values that are written so have an article, in all of them or in none."""
    written = _bare((token.low, token.key) for token in tokens[piece.first : piece.last])
    found = set[bool]()
    for entry in entries:
        values = lookup.facts[entry.owner].values
        record = (
            lookup.groups[entry.id] if entry.kind == "group" else next(v for v in values if v.id == entry.id)
        )
        for label in labels_of(record):
            if _bare(label_tokens(label)) == written:
                found.add(any(low in _ARTICLES for low, _ in label_tokens(label)))
    return found.pop() if len(found) == 1 else None


def _bare(words: Iterable[tuple[str, str]]) -> tuple[str, ...]:
    return tuple(key for low, key in words if low not in LEADING_PREPOSITIONS)


def _by_others(pieces: Pieces, index: int, owners: Owners) -> str | None:
    """The fact of what the name is joined to, or the only one of which nothing else is said."""
    beside = set[str]()
    for step in (1, -1):
        near = [piece for piece in pieces[index + step :: step] if piece.tag not in LIGHT][:2]
        if len(near) == 2 and near[0].tag in _JOINING:
            beside |= _one_owner(near[1])
    joined = [owner for owner in owners if owner in beside]
    if joined:
        return joined[0] if len(joined) == 1 else None
    said = {owner for place, piece in enumerate(pieces) if place != index for owner in _one_owner(piece)}
    left = [owner for owner in owners if owner not in said]
    return left[0] if len(left) == 1 else None


def _one_owner(piece: Piece) -> set[str]:
    owners = {entry.owner for entry in piece.entries if piece.tag == "name"}
    return owners if len(owners) == 1 and "" not in owners else set()


def _by_rules(pieces: Pieces, index: int, owners: Owners, lookup: Lookup) -> str | None:
    """The only one of the facts on which a rule on the things asked about turns, at what is named of it."""
    named = [e.id for n, p in enumerate(pieces) if n != index for e in p.entries if p.tag == "name"]
    wider = {wide for item in named if item in lookup.items for wide in lookup.broader(item)}
    turning = set[str]()
    for rule in lookup.base.rules:
        if not wider.isdisjoint(rule.scope.items):
            for test in tests(rule.condition):
                values = [entry_values(entry, lookup) for entry in owners.get(test.fact, ())]
                if not all(is_empty(intersect(test.values, one)) for one in values):
                    turning.add(test.fact)
    return turning.pop() if len(turning) == 1 else None


_PARTS = word_set("branch section side staff crew division")


def of_the_branch(pieces: Pieces, tokens: Words, lookup: Lookup) -> Pieces:
    """ "House staff", "house passengers": of the House branch, where the service is called the House."""
    found = list(pieces)
    for index, (piece, after) in enumerate(pairwise(pieces)):
        if piece.arg != lookup.base.service.id or after.tag not in ("person", "fact"):
            continue
        named = tuple(token.key for token in tokens[piece.first : piece.last])
        groups = [
            Entry("group", group.id, group.fact)
            for group in lookup.base.groups
            for words in (tuple(key for _, key in label_tokens(group.label)),)
            if words[:-1] == named and words[-1] in _PARTS
        ]
        if len(groups) == 1:
            values = entry_values(groups[0], lookup)
            found[index] = fact_piece(piece, groups[0].owner, values, piece.first, piece.last)
    return tuple(found)


def listed_outfits(pieces: tuple[Piece, ...], tokens: tuple[Token, ...]) -> tuple[Piece, ...]:
    """ "In Parade or Band Dress": rigs that are things to put on as well, where one is in all of them."""
    found = list(pieces)
    for first, piece in enumerate(pieces):
        before = tokens[piece.first - 1].low if piece.first else ""
        if not _rigs(piece) or "in" not in (before, tokens[piece.first].low):
            continue
        last = first
        while last + 2 < len(pieces) and pieces[last + 1].tag in LISTING and _rigs(pieces[last + 2]):
            last += 2
        if last == first or pieces[last - 1].tag == "comma":
            continue
        for index in range(first, last + 1, 2):
            one = pieces[index]
            found[index] = Piece(first=one.first, last=one.last, tag="name", entries=_rigs(one))
    return tuple(found)


LISTING = ("and", "or", "comma")


def _rigs(piece: Piece) -> tuple[Entry, ...]:
    """The rigs that a name may stand for, if it stands for no other fact."""
    values = tuple(entry for entry in piece.entries if entry.kind in ("value", "group"))
    return values if piece.tag == "name" and {entry.owner for entry in values} == {"rig"} else ()
