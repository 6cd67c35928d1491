"""What an ambiguous name stands for: the words around it decide, or the person is asked."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.records import Item
from kb.model.values import is_subset, unite
from kb.reader.names.lexicon import CREDENTIALS, Entry, EntryKind
from kb.reader.phrases.english import CREDENTIAL_NOUNS, tag_set
from kb.reader.pieces.nicknames import so_called
from kb.reader.pieces.pieces import Piece, only
from kb.reader.pieces.values import entry_values, fact_piece
from kb.reader.words.tokens import Token, tokenize

Pieces = tuple[Piece, ...]
_TAG: dict[EntryKind, str] = {
    "item": "item", "act": "act", "aspect": "aspect", "aspect value": "aspect value", "fact": "fact name",
    "authority": "authority", "book": "book", "service": "filler",
}  # fmt: skip
_PLACE_TAGS = ("in", "on", "for", "if", "be")


def resolve_names(pieces: Pieces, tokens: tuple[Token, ...], lookup: Lookup) -> Pieces:
    """Every "name" piece becomes "item" (`arg` its id), "items" (several fit), "values" or another plain tag.

    "values" are values of several facts, between which nothing decides.
    """
    found = [
        msgspec.structs.replace(piece, tag="unknown", entries=())
        if _is_of_a_kind(pieces, i, tokens, lookup)
        else piece
        for i, piece in enumerate(pieces)
    ]
    for index, piece in enumerate(found):
        if piece.tag == "name":
            found[index] = _plain(piece, found[:index], tokens, lookup, _names_others(pieces, index))
    found = _with_modifiers(_people_joined(found, pieces, lookup), tokens, lookup)
    found = _compounds(found, tokens, lookup)
    for index in range(1, len(found)):
        if found[index].tag == "items" and found[index - 1].tag in ("which", "what"):
            found[index] = _all_called(found[index], tokens, lookup)
    return tuple(
        _chosen(
            piece, found, lookup, _before(found, index, False) in ("which", "what"), _joined(found, index)
        )
        for index, piece in enumerate(found)
    )


_BESIDES = frozenset({"insignia", "accessory", "carried"})


def _is_of_a_kind(pieces: Pieces, index: int, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """ "A band shirt", where a band of another name is called so: it says which shirt, and not that band.

    A part and what is worn on a thing are rightly named after it: "the coat pocket", "a hat badge".
    """
    piece, after = pieces[index], pieces[index + 1] if index + 1 < len(pieces) else None
    if piece.tag != "name" or after is None or after.tag != "name" or piece.last - piece.first != 1:
        return False
    word, following = tokens[piece.first], tokens[after.first]
    if following.start != word.end + 1 or word.low != word.key or len(after.entries) != 1:
        return False
    called, named = piece.entries, after.entries[0]
    everyday = all(one.kind == "item" and one.rank in (1, 2) for one in called)
    if not everyday or named.kind != "item" or named.rank:
        return False
    kinds = {*lookup.broader(named.id)}
    return lookup.items[named.id].part_of is None and _BESIDES.isdisjoint(kinds)


def _people_joined(found: list[Piece], before: Pieces, lookup: Lookup) -> list[Piece]:
    """ "Team leaders and masters", where one of the words could have been something else as well."""
    for index in range(len(found) - 3, -1, -1):
        one, link, other = found[index : index + 3]
        late = "name" in (before[index].tag, before[index + 2].tag)
        grades = one.fact == other.fact and bool(one.fact) and lookup.facts[one.fact].family == "grade"
        if late and grades and link.tag in ("and", "or") and one.values and other.values:
            both = unite(one.values, other.values)
            found[index : index + 3] = [fact_piece(one, one.fact, both, one.first, other.last)]
    return found


def _all_called(piece: Piece, tokens: tuple[Token, ...], lookup: Lookup) -> Piece:
    """ "Which gloves": a noun that is one item's whole name and ends those of others means all of them."""
    only_one = len(piece.entries) == 1 and piece.last - piece.first == 1
    if not only_one or len(lookup.narrower(piece.entries[0].id)) > 1:
        return piece
    noun = tokens[piece.first].key
    called = [
        item.id
        for item in lookup.base.items
        if any(tokenize(name)[-1].key == noun for name in (item.label, *item.other_labels))
    ]
    if len(called) < 2 or piece.entries[0].id not in called:
        return piece
    return msgspec.structs.replace(piece, entries=tuple(Entry("item", item, "", 1) for item in called))


_CONSISTING = frozenset({"consist", "consists", "comprise", "comprises", "made"})
_LISTING = frozenset({"", "comma", "with", "item", "items"})  # "studs, station dress?", "lanyard band dress"
_LEADS = frozenset({"and", "but", "so", "how about", "with", "comma"})
_BEFORE_BE = frozenset({"comma", "when", "where", "why", "who", "and", "but", "so"})


def _names_others(pieces: Pieces, index: int) -> bool:
    """Whether another thing is named beside a name, which is no rig."""
    others = (piece.entries for place, piece in enumerate(pieces) if place != index)
    return any(e and {one.kind for one in e} == {"item"} for e in others)


def _is_whole(before: Sequence[Piece], previous: str, after: Sequence[Token], others: bool) -> bool | None:
    """Whether a rig that is also a thing to put on is the thing, "when is it worn", or not, "consist of"."""
    if any(token.low in _CONSISTING for token in after) or (others and previous in _LISTING):
        return False
    tags = [piece.tag for piece in before if piece.tag not in ("det", "poss", "filler")]
    if previous == "with" and _LEADS.issuperset(tags):
        return False  # "and with Order C?" goes on from "in Order B"
    return True if previous == "be" and (len(tags) == 1 or tags[-2] in _BEFORE_BE) else None


def _stands_apart(piece: Piece, tokens: tuple[Token, ...]) -> bool:
    """Whether a name is all that is said between two stops, of which commas are words of their own."""
    own = tokens[piece.first : piece.last]
    before, after = tokens[: piece.first][-1:], tokens[piece.last :][:1]
    stopped = all(one.low == "," or own[0].start - one.end > 1 for one in before)
    return stopped and all(one.low == "," or one.start - own[-1].end > 1 for one in after)


def of_the_same(entries: tuple[Entry, ...], before: Piece) -> tuple[Entry, ...]:
    """What "that takes pictures" names after "watch": one of those that may be meant, and no other thing."""
    meant = {entry.id for entry in before.entries} | {before.arg}
    return entries if before.tag not in ("item", "items") or {e.id for e in entries} <= meant else ()


def _is_somewhere(piece: Piece, tokens: tuple[Token, ...]) -> bool:
    """ "On the road": a place, and no rig that is called Road."""
    led = tuple(token.low for token in tokens[max(piece.first - 2, 0) : piece.first])
    return led in (("on", "the"), ("at", "the")) and tokens[piece.first].text.islower()


_BEFORE_ACTS = tag_set("to, self, person, fact, not, may, must, can, have to, allowed")


def _plain(
    piece: Piece, before: Sequence[Piece], tokens: tuple[Token, ...], lookup: Lookup, others: bool
) -> Piece:
    """Choose the kind of thing that a name names."""
    word = tokens[piece.last - 1].low
    values = tuple(e for e in piece.entries if e.kind in ("value", "group"))
    values = _nearest(so_called(values, tokens[piece.first : piece.last], lookup), lookup)
    items = only(piece, "item")
    previous = next((p.tag for p in reversed(before) if p.tag not in ("det", "poss", "filler")), "")
    if values and items and all(entry.owner == "rig" for entry in values):
        whole = _is_whole(before, previous, tokens[piece.last : piece.last + 3], others)
        if whole is None and others and _stands_apart(piece, tokens):
            whole = False  # "Raining. Hill rig. Shell?"
        values, items = (values, ()) if whole is False else ((), items) if whole else (values, items)
        if piece.last - piece.first == 1 and _is_somewhere(piece, tokens):
            return Piece(first=piece.first, last=piece.last, tag="unknown", how="pattern")
    if values and (not items or previous in _PLACE_TAGS):
        if (
            len({entry_values(entry, lookup) for entry in values})
            == len({entry.owner for entry in values})
            == 1
        ):
            entry = values[0]
            return msgspec.structs.replace(
                piece, tag="fact", fact=entry.owner, values=entry_values(entry, lookup)
            )
        if not items and not any(entry.kind in ("act", "aspect", "aspect value") for entry in piece.entries):
            return msgspec.structs.replace(piece, tag="values", entries=values)
    if items:
        acts = only(piece, "act")
        if acts and previous in _BEFORE_ACTS:
            return msgspec.structs.replace(piece, tag="act", arg=acts[0].id)
        if acts and _is_participle(before, acts[0].id, word, lookup):
            return msgspec.structs.replace(piece, tag="act", arg=acts[0].id)
        return msgspec.structs.replace(piece, tag="items", entries=items)
    for kind in ("act", "aspect", "aspect value", "fact", "authority", "book", "service"):
        entries = only(piece, kind)
        if entries:
            return msgspec.structs.replace(piece, tag=_TAG[kind], arg=entries[0].id, entries=entries)
    return msgspec.structs.replace(piece, tag="values", entries=values)


def _nearest(values: tuple[Entry, ...], lookup: Lookup) -> tuple[Entry, ...]:
    """Values of several facts: that of the situation which has the word for its whole name, "tower".

    Of values of one fact the one that holds the others: a ladder of masters with a grade called Master.
    """
    if len({entry.owner for entry in values}) == 1:
        sets = [entry_values(entry, lookup) for entry in values]
        for entry, widest in zip(values, sets, strict=True):
            if all(is_subset(one, widest) for one in sets):
                return (entry,)
    best = min((entry.rank for entry in values), default=0)
    nearest = tuple(entry for entry in values if entry.rank == best)
    owners = {entry.owner for entry in nearest}
    return nearest if best == 1 and len(owners) == 1 and _is_situation(owners, lookup) else values


def _is_situation(facts: Iterable[str], lookup: Lookup) -> bool:
    return all(lookup.facts[fact].family == "situation" for fact in facts)


def _is_participle(before: Sequence[Piece], act: str, word: str, lookup: Lookup) -> bool:
    """Whether a word that may name an item says what is done with one named before: "is a torch carried"."""
    if word != lookup.aspects[act].done and not word.endswith("ed"):
        return False
    named = any(piece.tag in ("item", "items") for piece in before)
    return named and before[-1].tag in ("be", "item", "items", "fact", "not", "filler")


def _item_words(item: Item) -> frozenset[str]:
    labels = (item.label, *item.other_labels, *item.everyday)
    return frozenset(token.key for label in labels for token in tokenize(label))


def _with_modifiers(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> list[Piece]:
    """Words before an item that belong to the names of some that fit: "old pilot badge"."""
    index = 0
    while index < len(found):
        piece = found[index]
        if piece.tag == "items" and index:
            start = index
            while start and found[start - 1].tag in (
                "unknown",
                "fact",
                "fact name",
                "values",
                "aspect value",
                "authority",
            ):
                start -= 1
                words = [t.key for p in found[start:index] for t in tokens[p.first : p.last] if t.low != "-"]
                fitting = tuple(e for e in piece.entries if set(words) <= _item_words(lookup.items[e.id]))
                if fitting and (len(piece.entries) > 1 or found[start].tag == "unknown"):
                    found[start : index + 1] = [
                        msgspec.structs.replace(
                            piece, first=found[start].first, entries=fitting, how="everyday"
                        )
                    ]
                    index = start
                    piece = found[index]
        index += 1
    return found


def _compounds(found: list[Piece], tokens: tuple[Token, ...], lookup: Lookup) -> list[Piece]:
    """ "coat liner": an everyday word right before its part only says which part."""
    index = 0
    while index + 1 < len(found):
        left, right = found[index], found[index + 1]
        if left.tag == right.tag == "items":
            owners = {entry.id for entry in left.entries}
            parts = tuple(e for e in right.entries if lookup.items[e.id].part_of in owners)
            if parts:
                found[index : index + 2] = [msgspec.structs.replace(right, first=left.first, entries=parts)]
                continue
            same = tuple(entry for entry in right.entries if entry.id in owners)
            if same and len(same) < len(right.entries):
                found[index : index + 2] = [msgspec.structs.replace(right, first=left.first, entries=same)]
                continue
            if len(left.entries) == 1 < len(right.entries) and _says(
                left.entries[0].id, right, tokens, lookup
            ):
                found[index : index + 2] = [msgspec.structs.replace(left, last=right.last)]
                continue
        index += 1
    return found


def _says(item: str, part: Piece, tokens: tuple[Token, ...], lookup: Lookup) -> bool:
    """Whether the way in which rules have a thing worn names a part of it: "the strap over the shoulder"."""
    word = tokens[part.last - 1].key
    ways = {rule.aspect for rule in lookup.rules_on((item,))}
    return part.last - part.first == 1 and any(
        word in {token.key for token in tokenize(lookup.aspects[way].label)} for way in ways
    )


def _before(found: Sequence[Piece], index: int, light: bool) -> str:
    """The tag before a piece, over articles where `light`."""
    index -= 1
    while light and index >= 0 and found[index].tag in ("det", "poss"):
        index -= 1
    return found[index].tag if index >= 0 else ""


_BESIDE = frozenset({"with", "without", "and", "or", "but"})


def _joined(found: Sequence[Piece], index: int) -> bool:
    """Whether another thing stands beside a name: "with my cap", "a watch with it", "cap or beanie"."""
    after = found[index + 1].tag if index + 1 < len(found) else ""
    return _before(found, index, True) in _BESIDE or after in ("or", "with")


def _chosen(piece: Piece, pieces: Iterable[Piece], lookup: Lookup, which: bool, beside: bool) -> Piece:
    """An item that several names fit, settled by what else the question names."""
    if piece.tag != "items":
        return piece
    entries = piece.entries
    if len(entries) > 1:
        others = [p for p in pieces if p.tag == "items" and p is not piece]
        certain = {p.entries[0].id for p in others if len(p.entries) == 1}
        if which and len(certain.intersection(entry.id for entry in entries)) > 1:
            return msgspec.structs.replace(piece, tag="det")
        if beside:  # "goggles over my glasses" are two things
            sure = {p.entries[0].id for p in others if len(p.entries) == 1}
            entries = tuple(entry for entry in entries if entry.id not in sure) or entries
        entries = _settled(entries, others, lookup)
        if len(entries) > 1:
            entries = of_whom(entries, pieces, lookup)
    if len(entries) == 1 and entries[0].rank < 3:
        return msgspec.structs.replace(piece, tag="item", arg=entries[0].id, entries=entries)
    return msgspec.structs.replace(piece, entries=entries)


def _settled(entries: tuple[Entry, ...], others: Sequence[Piece], lookup: Lookup) -> tuple[Entry, ...]:
    certain = {p.entries[0].id for p in others if len(p.entries) == 1}
    named = tuple(entry for entry in entries if entry.id in certain)
    if len(named) == 1:
        return named
    wholes = {lookup.items[item].part_of for item in certain}
    part = tuple(entry for entry in entries if entry.id in wholes)
    if len(part) == 1:
        return part
    within = tuple(entry for entry in entries if lookup.items[entry.id].part_of in certain)
    if len(within) == 1:
        return within
    beside = tuple(entry for entry in entries if lookup.items[entry.id].part_of in wholes - {None})
    if len(beside) == 1:
        return beside  # "does the strap go above the visor", both of which a cap has
    whole_of_rest = tuple(
        e for e in entries if all(o is e or lookup.items[o.id].part_of == e.id for o in entries)
    )
    if len(whole_of_rest) == 1:
        return whole_of_rest
    bearing = tuple(entry for entry in entries if entry.id in _bearing(certain, lookup))
    if len(bearing) == 1:
        return bearing  # "which side of the hat does the feather go"
    broadest = tuple(e for e in entries if all(e.id in lookup.broader(other.id) for other in entries))
    return broadest if len(broadest) == 1 else entries


def _bearing(items: Iterable[str], lookup: Lookup) -> set[str]:
    """The garments on which rules place items."""
    named = set(items)
    return {position.on for rule in lookup.rules_on(named) for position in rule.value.positions}


def of_whom(entries: tuple[Entry, ...], pieces: Iterable[Piece], lookup: Lookup) -> tuple[Entry, ...]:
    """ "A coxswain ... his badge": the one of these that is called after what the wearer is said to be."""
    held = [p.fact for p in pieces if p.tag == "fact" and lookup.facts[p.fact].family in CREDENTIALS]
    names = [[token.key for token in tokenize(lookup.facts[fact].label)] for fact in held]
    words = {key for name in names for key in name if key not in CREDENTIAL_NOUNS and len(key) > 3}
    heads = words & {name[-1] for name in names}  # a school prefect has the prefect's badge, not the school's
    for said in (words, heads):
        called = tuple(e for e in entries if said & {t.key for t in tokenize(lookup.items[e.id].label)})
        if len(called) == 1:
            return called
    return entries


def credential_of(piece: Piece, lookup: Lookup) -> str | None:
    """The credential that holding an item means: "I hold the diver's badge" is the diver qualification."""
    items = [lookup.items[entry.id] for entry in piece.entries]
    words = {t.key for item in items for label in (item.label, *item.other_labels) for t in tokenize(label)}
    found = [
        fact.id
        for fact in lookup.base.facts
        if fact.family in CREDENTIALS
        and {t.key for t in tokenize(fact.id.partition(":")[2].replace("-", " "))} <= words
    ]
    return found[0] if len(found) == 1 else None


_PATTERNS = frozenset({"old", "new", "pattern", "former", "first", "second"})


def is_pattern_of(item: str, other: str, lookup: Lookup) -> bool:
    """Whether a thing is the old or the new pattern of another by its name, as "mine is from 2015" tells."""
    if item not in lookup.items or other not in lookup.items:
        return False
    name, own = lookup.items[other].label.casefold(), lookup.items[item].label.casefold()
    pattern = own.removesuffix(name).split()
    return own.endswith(f" {name}") and _PATTERNS.issuperset(pattern)
