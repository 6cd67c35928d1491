"""Words that only help a question along, told by what stands beside them: going about, having, falling rain.

Each such word is taken up only in its place (a verb after its subject, a particle after its verb). Elsewhere
it explains nothing and stops the question, as any other word does; so does whatever limits or changes it.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.measures import same_dimension
from kb.model.lookup import Lookup
from kb.reader.meaning.activity import activity
from kb.reader.meaning.attached import attached
from kb.reader.names.lexicon import Lexicon
from kb.reader.phrases.english import BODY, LEADING_PREPOSITIONS
from kb.reader.pieces.pieces import Piece
from kb.reader.pieces.values import Pieces
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

_ITEMS = ("item", "items")
_WORN = frozenset({"wear", "use", "carrying", "possession"})
_LIGHT = frozenset({"det", "poss", "filler"})
_VERB_PLACE = frozenset(
    {"self", "person", "can", "may", "must", "should", "have to", "allowed", "to", "not", "do", "and", "or"}
    | {"have", "be"}
)
_MOTION = word_set("""
    go goes going gone went walk walks walking walked stroll strolls strolling nip nips nipping pop pops
    popping wander wanders wandering head heads heading potter slop slopping step steps stepping come comes
    coming came get gets getting turn turns turning show shows hang move moves moving stand stands standing
    sit sits sitting stay stays staying drop drops dash pootle mooch trot""")
_NEEDS_PARTICLE = word_set("get gets getting turn turns turning show shows hang come comes coming came")
_MOTION_PARTICLES = word_set("about round around along over out down up off back across through away")
_SMALL = _MOTION_PARTICLES | {"half", "dozen"}
_HAVING = word_set("take takes taking taken took keep keeps keeping kept")
_CHOOSING = word_set("choose chooses choosing pick picks prefer prefers opt select")
_WRAPPING = word_set("wrap wraps tie hang put wind loop drape sling wrapped hung tied draped wound")
_FALLING = word_set("""
    coming falling driving blowing pelting hammering lashing bucketing down over in about around outside day
    days morning afternoon evening conditions spell rolling closing creeping drifting running""")
_PROMOTED = word_set("made make became become promoted appointed")
_LATELY = tuple(tuple(words.split()) for words in (
    "last week", "last month", "last year", "this week", "this month", "recently", "yesterday", "lately",
    "today", "just now", "the other day",
))  # fmt: skip


def light(pieces: Pieces, tokens: tuple[Token, ...], lexicon: Lexicon, lookup: Lookup) -> Pieces:
    """The pieces with every such word as the act or the filler that it is in its place."""
    found = list(pieces)
    for index, piece in enumerate(pieces):
        if found[index] is not piece:
            continue
        if piece.tag == "fact":
            from kb.reader.meaning.crews import is_of_another  # noqa: PLC0415  as needed

            if _is_anothers(found, index, tokens) or is_of_another(found, index, tokens, lookup):
                _retag(found, index, "unread")
                continue
            _falling(found, index, tokens, lookup)
            _promoted(found, index, tokens, lookup)
        elif piece.tag.startswith("body"):
            _on_body(found, index, tokens, lookup)
        elif piece.tag in _STRUCTURE:
            _structure(found, index, tokens, lookup)
        elif piece.last - piece.first == 1:
            _word(found, index, tokens, lexicon, lookup)
    attached(found, tokens, lookup)
    if any(piece.tag == "number" or tokens[piece.first].low in _SMALL for piece in found):
        from kb.reader.meaning.particles import particles  # noqa: PLC0415  many questions have none

        particles(found, tokens, lookup)
    return tuple(found)


_LEFT_OUT = frozenset(
    {"can", "may", "must", "should", "have to", "self", "person", "leave off", "not", "filler"}
)
_STRUCTURE = frozenset({"range", "but", "or", "no", "list", "show", "with", "only", "unread", "may"})


def _structure(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """A word of structure that only joins here, or that is one of content here."""
    piece = found[index]
    if piece.tag == "range":
        after = _past(found, index + 1)
        choice = _tag(found, after) == "fact" and lookup.facts[found[after].fact].kind == "choice"
        if choice and tokens[piece.first].low == "up":
            _retag(found, index, "filler")  # "up to the loft"
    elif piece.tag == "but":
        _conjoined(found, index, tokens)
    elif piece.tag == "or":
        _or_not(found, index, tokens)
    elif piece.tag == "no" and _tag(found, index + 1) == "act":
        if tokens[found[index + 1].first].low.endswith("ing"):
            _retag(found, index, "banned")  # "is there no wearing it"
    elif piece.tag in ("list", "show") and _tag(found, index - 1) in ("poss", "det"):
        acting = any(p.tag == "act" and p.arg not in _WORN for p in found[:index])
        _retag(found, index, "filler" if acting else "unread")  # "mark my name", "my name"
    elif piece.tag == "with" and tokens[piece.first].low == "over":
        if any(token.low in _CHOOSING for token in tokens[: piece.first]):
            _retag(found, index, "whatever")  # "choose the smock over the coat"
    elif piece.tag == "only":
        _just(found, index, tokens, lookup)
    elif piece.tag == "may" and piece.first and tokens[piece.first - 1].low in ("in", "during"):
        _retag(found, index, "unknown")  # the month, where the books have no months
    elif piece.tag == "unread" and tokens[piece.first].low == "after":
        after = _past(found, index + 1)
        record = lookup.facts[found[after].fact] if _tag(found, after) == "fact" else None
        if record is not None and record.kind == "quantity" and same_dimension(record.unit or "1", "a"):
            _retag(found, index, "filler")  # "after 12 years of service"


def _is_anothers(found: Sequence[Piece], index: int, tokens: tuple[Token, ...]) -> bool:
    """ "The coxswain's mate" is no coxswain."""
    return tokens[found[index].last - 1].low.endswith(("'s", "s'")) and _tag(found, index + 1) == "person"


def _word(
    found: list[Piece], index: int, tokens: tuple[Token, ...], lexicon: Lexicon, lookup: Lookup
) -> None:
    """A single word that may be a verb of going or having, or a state of things."""
    piece, word = found[index], tokens[found[index].first].low
    if word == "out" and piece.tag in ("filler", "particle"):
        _out(found, index, lookup)
    elif word in _MOTION and piece.tag in ("unknown", "filler", "have", "run"):
        _motion(found, index, tokens, lookup)
    elif word in _HAVING and piece.tag == "unknown":
        _having(found, index)
    elif word == "one" and piece.tag == "number":
        if _tag(found, index - 1) in _VERB_PLACE and _tag(found, index + 1) in ("act", "leave off", "hold"):
            _retag(found, index, "person")  # "must one own it"
    elif word == "missing" and piece.tag == "unknown":
        of = index - 2 if _tag(found, index - 1) == "be" else index - 1  # "my strip's missing"
        _retag(found, index, "leave off" if _tag(found, of) in _ITEMS else "unknown")
    elif piece.tag in ("unknown", "aspect value"):
        from kb.reader.meaning.crews import beside  # noqa: PLC0415  most words are known

        if beside(found, index, tokens, lookup) or piece.tag != "unknown":
            return
        activity(found, index, tokens, lexicon, lookup)


def _retag(found: list[Piece], index: int, tag: str, arg: str = "") -> None:
    found[index] = msgspec.structs.replace(found[index], tag=tag, arg=arg)


def _tag(found: Sequence[Piece], index: int) -> str:
    return found[index].tag if 0 <= index < len(found) else ""


def _past(found: Sequence[Piece], index: int, tags: frozenset[str] = _LIGHT) -> int:
    """The next place that is no article or filler."""
    while index < len(found) and found[index].tag in tags:
        index += 1
    return index


def _is_verb_place(found: Sequence[Piece], index: int, ing: bool, lookup: Lookup) -> bool:
    before = index - 1
    while before >= 0 and found[before].tag == "filler":
        before -= 1
    if before < 0 or (found[before].tag in ("comma", "fact", "if") and ing):
        return ing
    piece = found[before]
    people = piece.tag == "fact" and lookup.facts[piece.fact].family in ("grade", "branch", "appointment")
    return people or piece.tag in _VERB_PLACE


def _motion(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "Walk about in the smock" asks about wearing it; "nip into town in it" only says where."""
    ing = tokens[found[index].first].low.endswith("ing")
    if _tag(found, index - 1) == "what" and _tag(found, index + 1).startswith("body"):
        _retag(found, index, "act", "wear")  # "what goes on my feet"
        return
    if not _is_verb_place(found, index, ing, lookup):
        return
    after = index + 1
    while after < len(found) and _is_particle(found[after], tokens):
        after += 1
    following = _tag(found, after)
    if after == index + 1 and following != "fact" and tokens[found[index].first].low in _NEEDS_PARTICLE:
        return
    if following not in ("", "in", "on", "to", "with", "comma", "without", "fact", "by", "for", "if", "when"):
        return
    worn = following in ("in", "with") and _tag(found, _past(found, after + 1)) in _ITEMS
    acts = any(piece.tag in ("act", "leave off") for piece in found)
    _retag(found, index, "act" if worn and not acts else "filler", "wear" if worn and not acts else "")
    for place in range(index + 1, after):
        _retag(found, place, "filler")


def _is_particle(piece: Piece, tokens: tuple[Token, ...]) -> bool:
    plain = piece.tag in ("unknown", "particle", "about", "on", "filler", "range", "outdoors", "beyond")
    return plain and piece.last - piece.first == 1 and tokens[piece.first].low in _MOTION_PARTICLES


def _out(found: list[Piece], index: int, lookup: Lookup) -> None:
    """ "Take my earrings out", "my shirt out": not to be passed over after what is worn."""
    if _tag(found, index - 1) not in _ITEMS or _tag(found, index + 1) in ("in", "on", "to", "fact"):
        return
    if found[index].how == "pattern":
        return  # it goes with a verb
    item = found[index - 1]
    before = index - 2
    while before >= 0 and found[before].tag in (*_LIGHT, "not"):
        before -= 1
    if _tag(found, before) == "be":  # "is the cap out if I am in town"
        _retag(found, index, "banned")
        return
    jewels = item.tag == "item" and "accessory" in lookup.broader(item.arg)
    for place in range(index - 2, -1, -1):
        if found[place].tag == "act" and found[place].arg == "use" and jewels:
            _retag(found, place, "leave off")
            return
    _retag(found, index, "unread")


def _having(found: list[Piece], index: int) -> None:
    """ "Take a torch", "keep a beard": what is worn or carried."""
    before = found[index - 1].tag if index else ""
    after = _past(found, index + 1, _LIGHT | {"number"})
    if (before in _VERB_PLACE or before == "fact") and _tag(found, after) in _ITEMS:
        _retag(found, index, "act", "use")


def _falling(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "Snow coming down", "rain about"."""
    piece = found[index]
    fact = lookup.facts[piece.fact]
    if fact.family != "situation" or fact.kind not in ("choice", "scale") or piece.last - piece.first > 2:
        return
    if tokens[piece.first].low in LEADING_PREPOSITIONS:
        return
    after = index + 1
    rolls = _tag(found, after) == "be" and _tag(found, after + 1) in ("unknown", "act")
    if rolls and _tag(found, after + 2) in ("in", "on") and tokens[found[after + 1].first].low in _FALLING:
        _retag(found, after, "filler")  # "fog is rolling in"
        after += 1
    while after < len(found) and _tag(found, after) in (
        "unknown",
        "particle",
        "about",
        "on",
        "in",
        "run",
        "degree",
        "act",
    ):
        if any(token.low not in _FALLING for token in tokens[found[after].first : found[after].last]):
            break
        after += 1
    while (
        after > index + 1 and found[after - 1].tag in ("in", "on") and _tag(found, after) not in ("", "comma")
    ):
        after -= 1
    if _tag(found, after) in _ITEMS or (after == index + 2 and found[index + 1].tag == "in"):
        return
    for place in range(index + 1, after):
        _retag(found, place, "filler")


def _on_body(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "Round my neck" beside a scarf says no more than that it is worn."""
    nouns = BODY[found[index].arg]
    items = [piece for piece in found[:index] if piece.tag in _ITEMS]
    if not items or not all(
        any(_names(lookup, entry.id, nouns) for entry in piece.entries) for piece in items[-1:]
    ):
        return
    _retag(found, index, "filler")
    for place, piece in enumerate(found[:index]):
        word = tokens[piece.first].low
        if word in _WRAPPING and piece.tag in ("unknown", "fix", "fasten", "run", "act"):
            _retag(found, place, "act", "wear")


def _names(lookup: Lookup, item: str, nouns: frozenset[str]) -> bool:
    """Whether a name of an item ends in one of the nouns of what is worn on a part of the body."""
    record = lookup.items[item]
    return any(
        name.split()[-1].casefold().removesuffix("s") in nouns
        or name.split()[-1].casefold().removesuffix("es") in nouns
        for name in (record.label, *record.other_labels)
    )


def _conjoined(found: list[Piece], index: int, tokens: tuple[Token, ...]) -> None:
    """ "It is winter but shirt order is granted": "but" before another fact or sentence only joins."""
    if tokens[found[index].first].low != "but" or found[index].last - found[index].first > 1 or not index:
        return
    before, place = found[index - 1], _past(found, index + 1)
    after = found[place] if place < len(found) else None
    before = found[index - 2] if before.tag == "comma" and index > 1 else before
    if after is None or before.tag in ("person", "det", "not"):
        return
    if after.tag == "self" or (after.tag == before.tag == "fact" and after.fact != before.fact):
        _retag(found, index, "comma")


def _just(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "No snow, just rain": the state of things is no more than said, which changes nothing."""
    after = _past(found, index + 1)
    low, verb = tokens[found[index].first].low, tokens[found[index].last].low if after < len(found) else ""
    asked = any(piece.tag == "not" for piece in found[:index])
    if (
        low == "just"
        and asked
        and (_tag(found, index + 1) in ("act", "leave off") or _tag(found, index - 1) == "self")
        and not verb.endswith("ing")
    ):
        _retag(found, index, "filler")  # "can't I just wear it"
        return
    fact = found[after] if after < len(found) else None
    begun = not index or found[index - 1].tag in ("comma", "filler", "be")
    if fact is None or fact.tag != "fact":
        return
    led = after == index + 1 and _tag(found, index - 1) in ("have", "with")
    if led and lookup.facts[fact.fact].kind == "quantity":
        _retag(found, index, "filler")  # "I've only eight years of service"
    if not begun:
        return
    family = lookup.facts[fact.fact].family
    just = tokens[found[index].first].low == "just"
    mine = index > 1 and (found[index - 2].tag, found[index - 1].tag) == ("self", "be")  # "I'm only on watch"
    article = tokens[found[index + 1].first].low in ("a", "an")  # "only a cadet here"; not "only the cadets"
    grade = (not index or mine) and family == "grade" and after == index + 2 and article
    if (family == "situation" and (just or mine)) or grade:
        _retag(found, index, "filler")


def _or_not(found: list[Piece], index: int, tokens: tuple[Token, ...]) -> None:
    """ "Helmet or not?" at the end asks no more than "helmet?"."""
    words = [token.low for token in tokens[found[index].first :]]
    rest = {piece.tag for piece in found[index + 1 :]}
    without = bool({"leave off", "not"} & rest) and rest <= _LEFT_OUT  # "or can I go without"
    named = {piece.entries for piece in found[:index] if piece.tag in _ITEMS}
    again = [piece.tag for piece in found[index + 1 :] if piece.entries not in named]
    twice = len(rest) > 1 and again in (["no"], ["without"], ["without", "det"])  # "hat or no hat"
    if index and (without or twice or words in (["or", "not"], ["or", "no"])):
        for place in range(index, len(found)):
            _retag(found, place, "filler")


def _promoted(found: list[Piece], index: int, tokens: tuple[Token, ...], lookup: Lookup) -> None:
    """ "I made Watch Keeper last week"."""
    if lookup.facts[found[index].fact].family not in ("grade", "appointment", "qualification"):
        return
    before = index - 1
    while before >= 0 and (found[before].tag in ("det", "to", "particle", "for")):
        before -= 1
    if before < 1 or tokens[found[before].first].low not in _PROMOTED:
        return
    if found[before].tag not in ("unknown", "hold") or found[before - 1].tag not in (
        "self",
        "have",
        "be",
        "filler",
        "only",
    ):
        return
    for place in range(before, index):
        _retag(found, place, "filler")
    if found[before - 1].tag == "only":
        _retag(found, before - 1, "filler")
    start = found[index].last
    for words in _LATELY:
        end = start + len(words)
        if tuple(token.low for token in tokens[start:end]) == words:
            for place in range(index + 1, len(found)):
                if found[place].first >= start and found[place].last <= end:
                    _retag(found, place, "filler")
