"""Ways of wearing named by a verb or by their contrary: "tuck in my shirt", "with my collar up", "unhooked".

The ways are the values that rules name for an item ("the collar turned down"). A question that has the
words of
one, or those words with one of them turned round (up for down, in for out, un-), is about that way.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import takewhile

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query, QuestionKind
from kb.model.records import Aspect, Case
from kb.model.values import YES
from kb.reader.meaning.claimed import claimed_only
from kb.reader.meaning.frame import Frame, denied_leave
from kb.reader.meaning.placed import is_choice_of_company
from kb.reader.meaning.query import merge_case, said_case
from kb.reader.names.spelling import akin
from kb.reader.phrases.english import ARRANGED
from kb.reader.phrases.poles import PARTLY
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.recast.treatment import asked_treatment
from kb.reader.words.forms import word_pairs, word_set
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern
from kb.wording import say_query

_CONTRARY: Mapping[str, str] = word_pairs("""
    up=down down=up in=out inside=out out=in outside=in open=closed closed=open on=off off=on loose=tied""")
_SIDES = word_set("left right")
_ANY_SIDE = word_set("both either each")
_SAME: Mapping[str, str] = word_pairs("inside=in outside=out into=in shut=closed done=fastened")
_LIGHT_VERBS = word_set("""
    leave leaves leaving left have keep turn turned push pull pulled put wear go let hang get do done fold
    tuck
    flip flipped pop popped worn wearing walk round around about untucked""")
_SHUT = word_set("buttoned fastened hooked laced closed zipped done clipped buckled")
_SHUTTING = word_set("done fastened closed shut fasten close")
_OPENING = word_set("undone unfastened open unfasten undo loose dangling")
_ONE_OF = word_set("top bottom first last upper lower one two three few couple some")
_BUTTONS = word_set("button hook toggle popper stud snap")
_SMALL = word_set("on onto up down in at off or top back")
_EMPTY = word_set("the a an of to my your all with and fully completely")
_ASKING = frozenset({"how", "what", "which", "where", "dimension", "care"})
_DENYING = word_set("not never without")
_ENDING = word_set(
    "with without if when while because as like in on at for by than instead rather unless but except save"
)


def asked_way(
    found: Understood, left: Sequence[int], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Query | Ask | None:
    """The query about the one way of wearing that explains every word left over; None if there is none.

    Whether a contrary ("unhooked") may be is whether the way may not be; whether it must be is asked back.
    """
    others = claimed_only(found, left, frame, roles, case, lookup)
    if others is not None:
        return others
    if frame.kind == "how" and left and not _ASKING.isdisjoint(piece.tag for piece in found.pieces):
        return _how_worn(found, left, roles, case, lookup)
    if frame.kind == "how":
        frame = msgspec.structs.replace(frame, kind="may")  # "shirt not tucked in?"
    if frame.kind not in ("may", "must") or roles.value is not None or roles.clashing or roles.unworn:
        return None
    from kb.reader.recast.posing import asked_pose, is_of_another_clause  # noqa: PLC0415  only where words are left

    places = [place for i in left for place in range(found.pieces[i].first, found.pieces[i].last)]
    if places and is_of_another_clause(found, places):
        return None
    fits = _fitting(
        found, [found.tokens[place] for place in places], lookup, denied_leave(found.pieces, frame)
    )
    if len(fits) != 1:
        pose = asked_pose(found, left, frame, roles, case, lookup) if left else None
        return pose or asked_treatment(found, left, frame, roles, case, lookup)
    (((item, way), turned),) = fits.items()
    said = said_case(case, roles, lookup)
    if turned == "both":
        return Query(kind="how", items=(item,), aspect=lookup.aspects[way].within or way, case=said)
    kind = frame.kind
    if not frame.modal and found.pieces[0].tag == "do":
        kind = "must"  # "do I tuck it in"
    if turned == "same":
        if kind == "may" and frame.polarity == "do" and is_choice_of_company(way, item, lookup):
            return Query(kind=kind, items=(item,), case=said)
        return Query(kind=kind, items=(item,), aspect=way, polarity=frame.polarity, case=said)
    if frame.polarity == "not":
        return None
    if kind == "may":  # may be open: may go without being buttoned
        return Query(kind=kind, items=(item,), aspect=way, polarity="not", case=said)
    if len({token.low for token in found.tokens} & {"left", "right"}) == 1:  # the one other side
        return Query(kind="must", items=(item,), aspect=way, polarity="not", case=said)
    other: QuestionKind = "may"
    dual = say_query(lookup, Query(kind=other, items=(item,), aspect=way, case=said))
    return Ask(fact="reading", prompt="Asked of its contrary, is this the question?", choices=((dual, dual),))


def _fitting(
    found: Understood, over: Sequence[Token], lookup: Lookup, outer: set[int]
) -> dict[tuple[str, str], str]:
    """The ways of the things named that explain what is left over, and whether they are meant or turned."""
    words = [t for place, t in enumerate(found.tokens) if t.low[0].isalpha() and place not in outer]
    fits: dict[tuple[str, str], str] = {}
    for item in dict.fromkeys(_items(found.pieces, lookup)):
        for aspect in _ways(item, lookup):
            turned = _turned(aspect.label, words, over) or _layered(
                found, item, aspect.label, words, over, lookup
            )
            denied = "" if turned else _as_denied(aspect.label, words, over)
            turned = turned or denied
            if turned and _alone(found.pieces, item, aspect, found.tokens, lookup, kinds=bool(denied)):
                fits[item, aspect.id] = turned
    return fits


def _how_worn(
    found: Understood, left: Sequence[int], roles: Roles, case: Case, lookup: Lookup
) -> Query | None:
    """ "How do I wear the ends of my scarf": in what way, where the words left over are those of one way."""
    over = {t.key for i in left for t in found.tokens[found.pieces[i].first : found.pieces[i].last]}
    fits = {
        (item, aspect.within)
        for item in dict.fromkeys(_items(found.pieces, lookup))
        for aspect in _ways(item, lookup)
        if over <= {token.key for token in tokenize(aspect.label)}
    }
    if len(fits) != 1 or roles.clashing:
        return None
    (((item, within)),) = fits
    said = said_case(case, roles, lookup)
    return Query(kind="how", items=(item,), aspect=within or "fit", case=said)


_OVER: Mapping[str, str] = word_pairs("""
    over=over outside=over above=over under=under underneath=under beneath=under below=under inside=under
    within=under""")


_COVERS: Mapping[str, str] = {**_OVER, "cover": "over", "covers": "over", "covering": "over"}
_ALL = frozenset({"clothing", "clothe", "everything", "garment"})


def turned_over(query: Query, found: Understood, frame: Frame, roles: Roles, lookup: Lookup) -> Query:
    """ "May I wear the vest under my coat": of what goes over all clothing, the contrary of the way."""
    layered = any(_side(found.tokens, place) for place in range(len(found.tokens)))
    if query.kind != "may" or not roles.worn or not layered:
        return query
    way = asked_way(found, (), frame, roles, query.case, lookup)
    if not isinstance(way, Query) or way.polarity != "not":
        return query
    if way.items == query.items or len(query.items) != 1:
        return way
    return _beside(way, query.items[0], lookup)  # "the coat over my vest"


def _beside(way: Query, other: str, lookup: Lookup) -> Query:
    """A question of how a thing is worn with another, which was the one asked about."""
    facts = tuple((fact, v) for fact, v in way.case.facts if fact != f"worn:{way.items[0]}")
    case = msgspec.structs.replace(way.case, facts=facts)
    return msgspec.structs.replace(way, case=merge_case(case, {f"worn:{other}": YES}, None, False, lookup))


def beneath(query: Query, found: Understood, roles: Roles, lookup: Lookup) -> Query:
    """ "The cap under the helmet", of a helmet that goes over the cap: whether that is how it is worn."""
    said = [(_OVER[t.low], place) for place, t in enumerate(found.tokens) if t.low in _OVER]
    worn = {piece.arg for piece in roles.worn if piece.tag == "item"}
    if len(said) != 1 or len(worn) != 1 or len(query.items) != 1 or query.kind not in ("may", "must"):
        return query
    (other,), (item,), ((side, place),) = worn, query.items, said
    if not any(p.tag == "item" and p.arg == other and p.first > place for p in found.pieces):
        return query
    names = [{t.key for t in tokenize(lookup.items[kind].label)} for kind in lookup.broader(item)]
    for aspect in _ways(other, lookup):
        label = tokenize(aspect.label)
        led = [(_COVERS[t.low], _nouns(label, i)) for i, t in enumerate(label) if t.low in _COVERS]
        if len(led) == 1 and any(named <= led[0][1] for named in names):
            asked = Query(kind="may", items=(other,), aspect=aspect.id, case=query.case)
            asked = _beside(asked, item, lookup)
            return asked if led[0][0] != side else msgspec.structs.replace(asked, polarity="not")
    return query


def _layered(
    found: Understood, item: str, label: str, words: Sequence[Token], over: Sequence[Token], lookup: Lookup
) -> str:
    """As `_led`; of a coat over the vest, the vest that goes over everything is not worn so.

    What such a way leaves out ("but the flotation vest") may go over it; a bag is not clothing.
    """
    led, named = _led(label, words, over), {token.key for token in tokenize(label)}
    if not led or not _ALL & named:
        return led
    others = [p for p in found.pieces if p.tag in ("item", "items") and p.arg != item]
    if any({t.key for t in found.tokens[p.first : p.last]} <= named for p in others):
        return ""
    for index, piece in enumerate(found.pieces):
        if any(_side(found.tokens, place) for place in range(piece.first, piece.last)):
            rest = [p for p in found.pieces[index + 1 :] if p.tag not in ("det", "poss")]
            if not rest or rest[0].tag != "item" or rest[0].arg != item:
                continue
            worn = "everything" in named or not all(_is_carried(p, lookup) for p in others)
            return {"same": "contrary", "contrary": "same"}[led] if worn else ""
    return led


def _is_carried(piece: Piece, lookup: Lookup) -> bool:
    return bool(piece.entries) and all(lookup.use_of(entry.id) != "wear" for entry in piece.entries)


def _side(words: Sequence[Token], place: int) -> str:
    """ "over" or "under", where a word says that one thing goes over or under another."""
    low = words[place].low
    top = low == "top" and place + 1 < len(words) and words[place + 1].low == "of"  # "on top of"
    return "over" if top else _OVER.get(low, "")


def _led(label: str, words: Sequence[Token], over: Sequence[Token]) -> str:
    """ "Over my shirt" of "out of sight under the shirt or jersey": the same place, or the other side."""
    sides = [(_side(words, place), place) for place in range(len(words))]
    said = [(side, _nouns(words, place)) for side, place in sides if side]
    named = tokenize(label)
    known = [(_OVER[t.low], _nouns(named, place)) for place, t in enumerate(named) if t.low in _OVER]
    if len(said) != 1 or len(known) != 1 or not known[0][1] or not said[0][1]:
        return ""
    if not said[0][1] & known[0][1] and not _ALL & known[0][1]:
        return ""
    nouns = said[0][1] if _ALL & known[0][1] else said[0][1] & known[0][1]
    said_so = {words[place].low for side, place in sides if side}
    if not _covers(over, said_so | {t.low for t in words if t.key in nouns}):
        return ""  # "under the helmet if it is torn"
    aside = [{t.low for t in some} & (_SIDES | _ANY_SIDE) for some in (words, named)]
    if all(aside) and not aside[0] & aside[1]:
        return "contrary"  # "over the right shoulder", "over both shoulders"
    leads = next(place for place, t in enumerate(named) if t.low in _OVER)
    denied = any(token.low in _DENYING for token in named[:leads])  # "without tucking it under the strap"
    return "same" if (said[0][0] == known[0][0]) != denied else "contrary"


def _nouns(words: Sequence[Token], place: int) -> set[str]:
    """Keys of the nouns that a preposition leads to, as far as they are joined by "or" and "and"."""
    after = takewhile(lambda t: t.low not in _ENDING, words[place + 1 : place + 7])
    return {token.key for token in after if token.low not in _EMPTY | {"or", "any", "his", "her"}}


def _items(pieces: Sequence[Piece], lookup: Lookup) -> Iterator[str]:
    """The items that are named for certain, and parts of these."""
    certain = {piece.arg for piece in pieces if piece.tag == "item"}
    yield from sorted(certain)
    for piece in pieces:
        if piece.tag == "items":
            yield from (e.id for e in piece.entries if lookup.items[e.id].part_of in certain)


def _ways(item: str, lookup: Lookup) -> Iterator[Aspect]:
    """The ways that rules name for an item itself or for what it is a kind of."""
    related = set(lookup.broader(item))
    spoken = {rule.aspect for rule in lookup.rules_on(related)}
    for name in sorted(spoken):
        aspect = lookup.aspects[name]
        if aspect.kind == "act" and aspect.within in ("fit", "fastening"):
            yield aspect


def _alone(
    pieces: Sequence[Piece], item: str, aspect: Aspect, tokens: tuple[Token, ...], lookup: Lookup,
    kinds: bool,
) -> bool:  # fmt: skip
    """Whether every other item named is a word of the way, or of `kinds` in it, or a part of the item."""
    label = {token.key for token in tokenize(aspect.label)}
    for piece in pieces:
        if piece.tag not in ("item", "items") or _is_which_button(piece, tokens):
            continue
        entries = {entry.id for entry in piece.entries}
        words = {token.key for token in tokens[piece.first : piece.last]}
        whole = lookup.items[item].part_of
        words = set() if kinds and _is_kind_in(entries, label, lookup) else words
        if item not in entries and whole not in entries and not words <= label and not label & _ALL:
            return False
    return True


_DENIED = Pattern(r"\b(?:and|but) (?:not|never) (.+)$")


def _as_denied(label: str, words: Sequence[Token], over: Sequence[Token]) -> str:
    """ "Pushed up on my cap" of "worn in front of the eyes and not pushed up onto the head or cap"."""
    denied = _DENIED.search(label)
    tail = {t.key for t in tokenize(denied.group(1))} - _EMPTY if denied is not None else set[str]()
    said = {t.key for t in words} & tail
    verb = any(_is_verb(t.low) and t.key in tail for t in over)
    if not over or not (verb or len(said - _SMALL) > 0) or any(t.low in _DENYING for t in words):
        return ""
    rest = {t.key for t in over} - tail
    return "contrary" if rest <= _LIGHT_VERBS | _SMALL and {t.key for t in over} & tail else ""


def _is_which_button(piece: Piece, tokens: tuple[Token, ...]) -> bool:
    """ "The top button": a word that elsewhere is a garment."""
    after = tokens[piece.last].key if piece.last < len(tokens) else ""
    return after in _BUTTONS and _ONE_OF.issuperset(token.low for token in tokens[piece.first : piece.last])


def _is_kind_in(entries: set[str], label: set[str], lookup: Lookup) -> bool:
    """Whether a way names what each of the things that a name may mean is a kind of: a peaked cap, a cap."""
    return bool(entries) and all(
        any(tokenize(lookup.items[kind].label)[-1].key in label for kind in lookup.broader(entry))
        for entry in entries
    )


def _turned(label: str, words: Sequence[Token], over: Sequence[Token]) -> str:
    """ "same", "contrary" or "both" if the words are those of a way; "" if they are not."""
    used: set[str] = set()
    contrary, agreed, loose, undone = 0, 0, 0, False
    parts = [part for part in tokenize(label) if part.low not in _EMPTY]
    reaching = {parts[-1].low} if " to the " in label and len(parts) > 1 else set()  # "up to the throat"
    sides = {t.low for t in words} & _SIDES
    for part in parts:
        aside = sides - {part.low} if part.low in _SIDES else set()  # "pulled to the left"
        if part.low in reaching and part.key not in {t.key for t in words} and not aside:
            continue
        same = {
            t.low
            for t in words
            if _SAME.get(t.low, t.low) == _SAME.get(part.low, part.low) or t.key == part.key
        }
        same |= {t.low for t in words if _is_verb(part.low) and akin(t.low, part.low) and len(part.low) > 3}
        against = aside | {t.low for t in words if _against(t.low, part.low)}
        if part.low in _SHUT:
            same |= {t.low for t in words if t.low in _SHUTTING}
            against |= {t.low for t in words if t.low in _OPENING}
        if against and _is_verb(part.low):
            used |= same - {part.low}  # "leave a button open" is not buttoned
            same &= {part.low}
        if part.low in _CONTRARY and same and against:
            return "both" if _covers(over, used | same | against) else ""
        if not same and not against:
            if not _is_verb(part.low) and not (part.low in _CONTRARY and undone):
                return ""
            loose += _is_verb(part.low)
        undone = undone or (bool(against) and part.low in _SHUT)
        undone = undone or any(low.startswith("un") for low in against)
        contrary += bool(against and not same)
        agreed += bool(same)
        used |= same | against
    if contrary > 1 or (loose and not (contrary + agreed > 1)) or not _covers(over, used):
        return ""
    if agreed and not contrary and not PARTLY.isdisjoint(t.low for t in words):
        return "" if "at least" in label else "contrary"  # "half laced" is not laced to the top
    return ("contrary" if contrary else "same") if contrary or agreed else ""


def _is_verb(word: str) -> bool:
    return word in ARRANGED or word.endswith("ed")


def _against(word: str, part: str) -> bool:
    if part in _CONTRARY:
        return _CONTRARY[part] == _SAME.get(word, word)
    return _is_verb(part) and word.startswith("un") and akin(word.removeprefix("un"), part)


def _covers(over: Sequence[Token], used: set[str]) -> bool:
    return all(token.low in used or token.low in _LIGHT_VERBS | _ONE_OF | PARTLY for token in over)
