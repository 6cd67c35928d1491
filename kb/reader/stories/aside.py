"""Clauses of a story beside the question, which say nothing that the books know: "I slept badly. May I ...".

What they leave out can only be a circumstance, so the answer holds without it; but they are named, as not
used. A clause that names a thing, a person's standing, a measure or a day is never set aside, and nothing is
where the question needs it to know what "it" is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.reader.doubts.asked_back import COLOURS
from kb.reader.meaning.whose import is_shifted
from kb.reader.phrases.english import CREDENTIAL_NOUNS, LIMBS, tag_set
from kb.reader.phrases.felt import STATE_WORDS, STATES
from kb.reader.phrases.leads import COLLEAGUES
from kb.reader.pieces.pieces import Piece, Understood, named_activity
from kb.reader.words.everyday import OTHERS
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token, stems, tokenize

Read = Callable[[str], Reading]
_CARRYING = tag_set("""
    item, items, fact, fact name, values, measure, number, on date, day, date, clause number, which clause
    clause, book, authority, aspect value, grant, hold, alone, only, without, with, no, leave off, compare
    at least, at most, too many, neither, banned, required, optional, allowed, unless, whatever, service
    body, how many, oversize
""")
"""Tags of words that may bear on an answer."""
_KEPT = frozenset({"fact", "on date"})
_CIRCUMSTANCE = ("situation", "rig", "term")
_OPENING = tag_set("self, filler, fact, in, on, for, at, particle, between, joined, outdoors, beyond")
_NONE, _SCARCELY = word_set("nobody none noone not n't no never"), word_set("nothing hardly barely")
_DENYING = tag_set("not, no, no longer, neither, without, unless, if, or, but")
_JOINING = tag_set("comma, and, but, or")
_LIGHT = tag_set("comma, and, but, or, filler")
_PLAIN = word_set("air speed level state of the force strength")
_VERBS = tag_set("be, have, do, can, may, must, should, have to")
_LEADING = tag_set("self, be, det, poss, filler, comma, and, hold, joined")
_PAST = word_set("""
    from off left back after before until past near former ex nearly almost soon later tomorrow yesterday
    last next ago used leaving finished done gone over
""")
"""Words that put a place, a time or a standing that follows out of the present."""
FORMER = word_set("ex former formerly")
_SETTING = word_set("in on at aboard")
_ONWARD = word_set("off back left")
_LEAVE = word_set("""
    dispensation permission permit chit clearance authorisation authorization doctor physician medic gp doc
""")
_ANOTHER_DAY = word_set("yesterday last next ago soon later forecast expected predicted")
_WHO_ONE_IS = ("self", "be", "det", "unknown")
"""Of "I'm a Commodore": a standing that the books do not know, by which they might give another answer."""
_SOMEBODY = COLLEAGUES | OTHERS
_NO_STANDING = word_set("bit little lot mess")
_TURNING = word_set("but so and")
_POINTING = word_set("it its they them that this these those one ones both either neither")
_ASKING = tag_set(
    "can, may, must, should, do, be, what, which, who, where, how, how many, when, why, have to"
)


class _Clause(msgspec.Struct, frozen=True):
    """Pieces `first` to `last` (not included), and the mark that ends its sentence."""

    first: int
    last: int
    mark: str
    sentence: int


def set_aside(found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """The reading of a text without such clauses; None where it has none, or is no question without them."""
    return _without_clauses(found, lookup, read) or _without_states(found, read)


def _without_states(found: Understood, read: Read) -> Reading | None:
    """ "When it's hot", "on a warm dry day": what no fact of the books takes, in the question itself."""
    unused = [match.group().strip(" ,") for match in STATES.finditer(found.text)]
    rest = STATES.sub(lambda match: "," if match.group()[0] == match.group()[-1] == "," else " ", found.text)
    if not unused or len(found.text) - len(rest) < 4:
        return None
    return _read_without(rest, unused, read)


def _read_without(rest: str, unused: Sequence[str], read: Read) -> Reading | None:
    """The reading of the rest, with what was left out; or what is asked back of it."""
    again = read(" ".join(rest.split()))
    if again.ask is not None and again.ask.fact == "item" and again.ask.choices:
        return again
    if again.query is None or not (again.query.items or again.query.kind in ("list", "source")):
        return None
    return msgspec.structs.replace(again, unused=(*unused, *again.unused))


def _without_clauses(found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    clauses = list(_clauses(found, sentence_starts(found.text, found.tokens)))
    if len(clauses) < 2:
        return None
    asking = {clause.sentence for clause in clauses if _asks(found, clause, clauses)}
    if not asking:
        return None
    weighty = weighty_words(lookup)
    kept: list[str] = []
    unused: list[str] = []
    for clause in clauses:
        said = _text(found, clause.first, clause.last)
        mark = clause.mark or "?"
        if clause.sentence in asking:
            kept.append(said + (mark if _ends(clause, clauses) else ","))
        elif _is_idle(found, clause, weighty, lookup):
            unused.append(said)
        elif facts := _facts_in(found, clause, weighty, lookup):
            kept.append(f"{facts}:")
            unused += _strange(found, clause)
        else:
            kept.append(said + (mark if _ends(clause, clauses) else ","))
    if not unused or _points_out(found, clauses, asking):
        return None
    return _read_without(" ".join(kept), unused, read)


def _clauses(found: Understood, starts: Sequence[int]) -> Iterator[_Clause]:
    """The clauses of each sentence: a statement is parted at commas, and at "and" before a new subject."""
    pieces = found.pieces
    for number, start in enumerate(starts):
        end = starts[number + 1] if number + 1 < len(starts) else len(found.tokens)
        inside = [i for i, piece in enumerate(pieces) if start <= piece.first < end]
        if not inside:
            continue
        after = found.tokens[end].start if end < len(found.tokens) else len(found.text)
        mark = found.text[found.tokens[end - 1].end : after].strip()[:1]
        first = inside[0]
        led = _leads(found, inside) if mark in ("?", "") else 0
        if led:  # "I slept badly, but may I ..."
            yield _Clause(first, led, ",", number)
            first, number = led + 1, number + len(starts)
        if mark not in ("?", ""):
            for place in inside[1:]:
                if pieces[place].tag == "comma" or (
                    pieces[place].tag in ("and", "but") and _begins(found, place + 1)
                ):
                    if place > first:
                        yield _Clause(first, place, mark, number)
                    first = place + 1
        if first <= inside[-1]:
            yield _Clause(first, inside[-1] + 1, mark, number)


def _leads(found: Understood, inside: Sequence[int]) -> int:
    """Where "but", "so" or "and" joins a question to a statement in the same sentence; 0 if it does not."""
    pieces = found.pieces
    for place in inside[1:-2]:
        low = found.tokens[pieces[place].first].low
        if low in _TURNING and pieces[place + 1].tag in _ASKING and pieces[place - 1].tag == "comma":
            return place if pieces[inside[0]].tag not in _ASKING else 0
    return 0


def _begins(found: Understood, place: int) -> bool:
    tag = found.pieces[place].tag if place < len(found.pieces) else ""
    return tag in ("self", "person", "det", "poss", "filler", "joined")


def _ends(clause: _Clause, clauses: Sequence[_Clause]) -> bool:
    return all(other.sentence != clause.sentence or other.first <= clause.first for other in clauses)


def _asks(found: Understood, clause: _Clause, clauses: Sequence[_Clause]) -> bool:
    """Whether a sentence asks: by its mark, or as the last of them, by its first word or after a colon."""
    if clause.mark == "?":
        return True
    if clause.sentence != max(other.sentence for other in clauses):
        return False
    before = [other for other in clauses if other.sentence == clause.sentence - 1]
    led = bool(before) and before[0].mark == ":"
    return led or found.pieces[clause.first].tag in _ASKING


def _is_idle(found: Understood, clause: _Clause, weighty: frozenset[str], lookup: Lookup) -> bool:
    """Whether a clause has no word that the books know for anything that an answer can rest on."""
    tags = tuple(piece.tag for piece in found.pieces[clause.first : clause.last])
    if tags == _WHO_ONE_IS and found.tokens[found.pieces[clause.last - 1].first].low not in _NO_STANDING:
        return False
    said = found.pieces[clause.first : clause.last]
    former = any(_lows(found, piece) & FORMER for piece in said)  # "ex-cadet:"
    if former or (clause.mark == ":" and is_stranger(found, said)):
        return False
    for place in range(clause.first, clause.last):
        piece = found.pieces[place]
        acting = piece.tag == "act" and piece.arg != "use"
        state = piece.tag == "fact" and lookup.facts[piece.fact].family in _CIRCUMSTANCE
        if state and is_of_another_time(found, found.pieces[clause.first : clause.last], piece):
            continue
        if (
            (piece.tag in _CARRYING and not _is_idle_word(found, piece))
            or piece.tag.startswith("body")
            or acting
        ):
            return False
        if any(_weighs(token, weighty) for token in _tokens(found, piece)):
            return False
    return True


def is_stranger(found: Understood, pieces: Sequence[Piece]) -> bool:
    """ "Tall recruit:": whether it ends in a word for somebody whom the books do not know."""
    last = found.tokens[pieces[-1].last - 1].low
    return pieces[-1].tag in ("unknown", "person") and not _SOMEBODY.isdisjoint((last, *stems(last)))


def _is_idle_word(found: Understood, piece: Piece) -> bool:
    """ "I've just come back", "it is bright", "behind the station"."""
    word = found.tokens[piece.first].low
    if piece.tag == "authority":  # "behind the station"
        before = next((p for p in reversed(found.pieces) if p.first < piece.first and p.tag != "det"), None)
        return before is not None and before.tag in ("on", "in", "beyond")
    return (piece.tag == "only" and word == "just") or (piece.tag == "aspect value" and word in STATE_WORDS)


def _weighs(token: Token, weighty: frozenset[str]) -> bool:
    return token.key in weighty or any(token.key in (word + "y", word + word[-1] + "y") for word in weighty)


def _facts_in(found: Understood, clause: _Clause, weighty: frozenset[str], lookup: Lookup) -> str:
    """The words of the facts in a clause about where one is and what one does, if it has other words, too."""
    pieces = found.pieces[clause.first : clause.last]
    opening = next((p for p in pieces if p.tag not in _LIGHT), None)
    if opening is None or not {piece.tag for piece in pieces}.isdisjoint(_DENYING):
        return ""
    if any(_lows(found, piece) & _NONE for piece in pieces) or _lows(found, opening) & _SCARCELY:
        return ""  # "nobody has ordered it", "nothing ceremonial"
    tags = {piece.tag for piece in pieces}
    loose = opening.tag == "unknown" and tags.isdisjoint(_VERBS)  # "hard going up on the slope", "climbing"
    if opening.tag not in _OPENING and not loose:
        return ""
    facts = [piece for piece in pieces if piece.tag == "fact"]
    others = [piece for piece in pieces if piece.tag not in _KEPT]
    own = _own_standing(pieces)
    if own and is_shifted([low for piece in pieces for low in _lows(found, piece)]):
        return ""  # "I used to be a K5"
    known = {lookup.facts[piece.fact].family for piece in facts if piece not in own}
    if len(others) == len(pieces) or not known.issubset(_CIRCUMSTANCE):
        return ""
    past = [fact for fact in facts if fact not in own and is_of_another_time(found, pieces, fact)]
    if len(past) == len(facts):
        return ""
    for piece in others:
        if (
            piece.tag in _CARRYING - {"with", "body"} and not _is_idle_word(found, piece)
        ) or piece.tag == "act":
            return ""
        if piece.tag == "person" or any(_weighs(token, weighty) for token in _tokens(found, piece)):
            return ""
    if not past and not any(piece.tag in ("unknown", "aspect value") for piece in others):
        return ""
    return ", ".join(_dated(found, piece) for piece in pieces if piece.tag in _KEPT and piece not in past)


def _strange(found: Understood, clause: _Clause) -> Iterator[str]:
    """The stretches of a clause in which there are words that nothing explains."""
    first = last = -1
    for place in range(clause.first, clause.last):
        piece = found.pieces[place]
        used = piece.tag in _KEPT and not is_of_another_time(
            found, found.pieces[clause.first : clause.last], piece
        )
        if used and first >= 0:
            yield _text(found, first, last)
            first = -1
        elif not used and (piece.tag in ("unknown", "aspect value", "authority") or piece.tag in _KEPT):
            first, last = (place if first < 0 else first), place + 1
            while piece.tag in _KEPT and first > clause.first and _leads_out(found, found.pieces[first - 1]):
                first -= 1  # "off the field"
    if first >= 0:
        yield _text(found, first, last)


def _leads_out(found: Understood, piece: Piece) -> bool:
    return piece.tag in ("det", "poss") or bool(_lows(found, piece) & _PAST)


_BETWEEN = tag_set("det, poss, filler, of, in, on, for, to, be, have, joined, comma")


def is_of_another_time(found: Understood, pieces: Sequence[Piece], fact: Piece, then: bool = False) -> bool:
    """ "Back from leave", "off the field", "on watch yesterday": whether a fact is said of another time.

    With `then` it is asked of the day that is told of.
    """
    place = pieces.index(fact) - 1
    while place >= 0 and pieces[place].tag in _BETWEEN and not _lows(found, pieces[place]) & _PAST:
        place -= 1
    before = _lows(found, pieces[place]) if place >= 0 and pieces[place].tag != "fact" else set()
    if found.tokens[fact.first].low in _SETTING:
        before = before - _ONWARD  # "off in boat rig", "back on watch"
    aside = {low for piece in pieces for low in _lows(found, piece)}
    past = bool(before & _PAST and "to" not in before)  # "off to"
    return past or (not then and bool(aside & _ANOTHER_DAY))


def in_standing(found: Understood, pieces: Sequence[Piece], standing: Piece) -> bool:
    """ "On the doors this evening as a Steward": in what standing one does what is told."""
    place = pieces.index(standing)
    return place > 0 and pieces[place - 1].tag == "for" and found.tokens[pieces[place - 1].first].low == "as"


def _lows(found: Understood, piece: Piece) -> set[str]:
    return {token.low for token in _tokens(found, piece)}


def _dated(found: Understood, piece: Piece) -> str:
    """ "Inspection on 2 March 2026": the day is that of the question."""
    return f"on {_words(found, piece)}" if piece.tag == "on date" else _words(found, piece)


def _own_standing(pieces: Sequence[Piece]) -> list[Piece]:
    """The facts that begin a clause about oneself: "I'm officer of the day ..."."""
    found: list[Piece] = []
    for place, piece in enumerate(pieces):
        begun = place > 0 and pieces[0].tag == "self"
        if piece.tag == "fact" and begun:
            found.append(piece)
        elif piece.tag not in _LEADING:
            break
    return found


def _points_out(found: Understood, clauses: Sequence[_Clause], asking: set[int]) -> bool:
    """Whether the question says "it" or the like before it names a thing, or names none."""
    named = False
    for clause in clauses:
        if clause.sentence not in asking:
            continue
        for piece in found.pieces[clause.first : clause.last]:
            named = named or piece.tag in ("item", "items") or piece.tag in ("what", "clause number")
            lows = {token.low for token in _tokens(found, piece)}
            if (
                not named
                and lows & _POINTING
                and piece.tag in ("self", "det", "either", "neither", "unknown")
            ):
                return True
    return not named


def weighty_words(lookup: Lookup) -> frozenset[str]:
    """Keys of the nouns by which standing, leave, credentials and whatever is measured are called."""
    labels = [
        label
        for fact in lookup.base.facts
        if fact.family in ("waiver", "qualification", "appointment", "authorisation")
        for label in (fact.label, *fact.other_labels)
    ]
    for fact in lookup.base.facts:
        if fact.family in ("grade", "branch"):
            labels += [label for value in fact.values for label in (value.label, *value.other_labels)]
    heads = {tokens[-1].key for label in labels if (tokens := tokenize(label))}
    for fact in lookup.base.facts:
        if fact.kind in ("quantity", "scale") and fact.family == "situation":
            heads |= {token.key for token in tokenize(fact.label)} - _PLAIN
    return frozenset(heads - LIMBS) | CREDENTIAL_NOUNS | _LEAVE


def _tokens(found: Understood, piece: Piece) -> tuple[Token, ...]:
    return found.tokens[piece.first : piece.last]


def _words(found: Understood, piece: Piece) -> str:
    return (
        named_activity(piece)
        or found.text[found.tokens[piece.first].start : found.tokens[piece.last - 1].end]
    )


def _text(found: Understood, first: int, last: int) -> str:
    start = found.tokens[found.pieces[first].first].start
    return found.text[start : found.tokens[found.pieces[last - 1].last - 1].end]


def has_colour(found: Understood, places: Iterable[int]) -> bool:
    """Whether it is said what colour or make something is, other than by its name: "a scarf, bright pink"."""
    for piece in (found.pieces[place] for place in places):
        lows = _lows(found, piece)
        value = piece.tag == "aspect value" and not lows & STATE_WORDS
        if piece.tag not in ("item", "items") and (value or not lows.isdisjoint(COLOURS)):
            return True
    return False


def has_weight(found: Understood, places: Iterable[int], lookup: Lookup) -> bool:
    """Whether words that are no fact of the books are such as may bear on the answer: a waiver, a rank."""
    weighty = weighty_words(lookup)
    told = (found.pieces[place] for place in places)
    return any(piece.tag == "unknown" and found.tokens[piece.first].key in weighty for piece in told)
