"""A question with a story: what the sentences beside it tell, what "it" stands for, whose claim is asked of.

What a story says is taken where it is sure (a place, an activity, the grade of the one who asks), and else
left out and named: an answer in which a circumstance is open holds whatever the circumstance was. What would
turn the question (a measure, a day, a credential that the books may know) is never left out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.reader.aside import STATE_WORDS, Read, is_of_another_time, weighty_words
from kb.reader.asked_back import COLOURS
from kb.reader.english import tag_set
from kb.reader.forms import word_set
from kb.reader.hearsay import asks_whether_so, claim_starts
from kb.reader.pieces import Piece, Understood
from kb.reader.sentences import sentence_starts
from kb.reader.told import PERSONAL
from kb.reader.whose import PEOPLE, SPEAKER, is_shifted

_THINGS = word_set("it they them this that these those one ones mine")
_PAST = word_set("was were did had used")
_DENYING = tag_set("not, no longer, neither, unless, if, or, but, unread")
_TURNING = tag_set("""
    measure, number, day, date, clause number, which clause, whatever, how many, at least, at most, too many
    grant, authority
""")
"""Tags of what must be taken or refused, never left out."""
_CIRCUMSTANCE = frozenset({"situation", "rig", "term"})
_WH = tag_set("what, which, who, where, when, why, how, how many, which clause")
_NO_QUESTION = tag_set("be, do, have, self, det, filler, comma, unknown, person")
_MODAL = word_set("may can must should could might does do need")
_PREPOSITIONS = tag_set("in, on, at, for, by, of, from, to, run, between, beyond")
_LIGHT = tag_set("det, poss, filler, comma, and, but")
_BESIDE = tag_set("with, without, or, compare, and, but")
_WEARING = tag_set("have, act, with, hold, be")
_WANTING = word_set("""
    fancy fancies fancied bought brought chose chosen picked like liked love loved want wanted prefer
    preferred sport sports sported sporting don donned found kept keep
""")
_LACKING = tag_set("no, without, leave off, not")


class _Sentence(msgspec.Struct, frozen=True):
    """Pieces `first` to `last` (not included), and the mark at the end."""

    first: int
    last: int
    mark: str


def from_story(found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """The reading of the sentence that asks, with what the others tell; None where that is not clear."""
    sentences = list(_sentences(found))
    if len(sentences) == 1:
        return _cut_short(found, sentences[0], _Story(found, (), sentences[0], lookup), lookup, read)
    place = _asking(sentences)
    asking, beside = sentences[place], [s for s in sentences if s is not sentences[place]]
    if any(s.mark == "?" for s in beside):
        return None
    if asks_whether_so(_lows(found, asking)) and not _things(found, asking):
        return _claimed(found, sentences[:place], sentences[place + 1 :], lookup, read)
    story = _Story(found, beside, asking, lookup)
    question = _said(found, asking)
    if not _things(found, asking):
        named = _antecedent(found, sentences[:place], asking)
        if named is None or any(_things(found, s) for s in sentences[place + 1 :]):
            return None
        question = named
    elif _points_back(found, asking) or any(_things(found, s) for s in sentences[place + 1 :]):
        return None
    return _with_facts(question, story, read)


class _Story:
    """What the sentences beside the question tell: facts that are sure, words that are left out."""

    def __init__(
        self, found: Understood, beside: Sequence[_Sentence], asking: _Sentence, lookup: Lookup
    ) -> None:
        pieces = found.pieces
        self.turns = any(pieces[p].tag in _TURNING for s in beside for p in range(s.first, s.last))
        self.turns = self.turns or _has_weight(found, beside, lookup)
        self.turns = self.turns or any(_has_colour(found, s) for s in beside if _things(found, s))
        others = bool(PEOPLE.intersection(_lows(found, asking)))
        dated = any(pieces[p].tag == "on date" for s in beside for p in _range(s))
        self.turns = self.turns or (dated and _PAST.isdisjoint(_lows(found, asking)))
        self.facts: list[str] = []
        self.unused: list[str] = []
        for sentence in beside:
            sure: list[Piece] = []
            for clause in _clauses(found, sentence):
                sure += _sure(found, clause, others, lookup)
            self.facts += [_words(found, piece, lookup) for piece in sure]
            if any(pieces[p].tag not in _LIGHT and pieces[p] not in sure for p in _range(sentence)):
                self.unused.append(_said(found, sentence))


def _with_facts(question: str, story: _Story, read: Read) -> Reading | None:
    """The reading of a question with the facts of its story, which must not make another question of it."""
    if story.turns:
        return None
    alone = read(question)
    if alone.query is None or not (alone.query.items or alone.query.kind in ("list", "source")):
        return None
    text = ", ".join([question.rstrip(" ?.!"), *dict.fromkeys(story.facts)]) + "?"
    again = read(text) if story.facts else alone
    if again.query is None:
        return None
    asked = [(q.kind, q.items, q.aspect, q.polarity, q.value, q.clause) for q in (alone.query, again.query)]
    if asked[0] != asked[1]:
        return None
    return msgspec.structs.replace(again, unused=(*story.unused, *again.unused))


def _claimed(
    found: Understood, before: Sequence[_Sentence], after: Sequence[_Sentence], lookup: Lookup, read: Read
) -> Reading | None:
    """ "They say the liner may be worn alone. Is that so?": the claim as a question, whoever makes it."""
    told = next((n for n in range(len(before) - 1, -1, -1) if _things(found, before[n])), None)
    if told is None or any(_things(found, s) for s in after):
        return None
    claim = before[told]
    story = _Story(found, [*before[:told], *before[told + 1 :], *after], claim, lookup)
    if story.turns:
        return None
    reading = _cut_short(found, claim, story, lookup, read)
    if reading is not None:
        return reading
    shown = _shown_worn(found, claim)
    return _with_facts(shown, _Story(found, [*before, *after], claim, lookup), read) if shown else None


def _cut_short(
    found: Understood, claim: _Sentence, story: _Story, lookup: Lookup, read: Read
) -> Reading | None:
    """The claim in a sentence as a question, without who makes it: "they say that ..."."""
    first = found.pieces[claim.first].first
    end = found.tokens[found.pieces[claim.last - 1].last - 1].end
    asked = {found.pieces[p].first for p in _range(claim) if found.pieces[p].tag in _WH}
    for start in claim_starts(_lows(found, claim)):
        if not start and not story.facts and not story.unused:
            return None  # as it stands it was not understood
        if start and asked & set(range(first, first + start)):
            continue  # "who says that ..."
        reading = _with_facts(f"{found.text[found.tokens[first + start].start : end]}?", story, read)
        if reading is not None and _is_whole(reading, found, claim, first + start, lookup):
            cut = found.text[found.tokens[first].start : found.tokens[first + start].start].strip(" ,")
            return msgspec.structs.replace(reading, unused=(*filter(None, [cut]), *reading.unused))
    return None


def _is_whole(reading: Reading, found: Understood, claim: _Sentence, first: int, lookup: Lookup) -> bool:
    """Whether nothing that the books know was cut off before the claim, and what is measured is asked."""
    pieces = found.pieces[claim.first : claim.last]
    cut = [p for p in pieces if p.last <= first]
    standing = [p for p in cut if p.tag == "fact" and lookup.facts[p.fact].family in PERSONAL]
    if any(p.tag in ("item", "items", "fact", "values") and p not in standing for p in cut):
        return False  # who makes the claim may well have a grade
    measured = any(p.tag in ("measure", "number") for p in pieces)
    return not measured or (reading.query is not None and reading.query.value is not None)


def _shown_worn(found: Understood, claim: _Sentence) -> str:
    """ "In town with no vest on. Did I break a rule?": whether the one thing named may, or must, be worn."""
    pieces = found.pieces[claim.first : claim.last]
    things = [p for p in pieces if p.tag in ("item", "items")]
    if len(list(claim_starts(_lows(found, claim)))) > 1:
        return ""  # "the old hands say ..."
    if len(things) != 1 or any(p.tag in ("may", "must", "can", "have to", "should") for p in pieces):
        return ""
    place = pieces.index(things[0]) - 1
    while place >= 0 and pieces[place].tag in _LIGHT:
        place -= 1
    led = pieces[place].tag if place >= 0 else ""
    thing = _surface(found, things[0])
    after = pieces[pieces.index(things[0]) + 1 :]
    off = any(p.tag == "leave off" for p in pieces) or any(
        found.tokens[p.first].low == "off" for p in after[:1]
    )
    if led in _LACKING or off:
        return f"must the {thing} be worn?"
    if led == "act" and pieces[place].arg not in ("wear", "use"):
        return ""
    if led == "unknown" and found.tokens[pieces[place].first].low in _WANTING:
        return f"may the {thing} be worn?"
    if led in _WEARING or any(p.tag == "act" and p.arg in ("wear", "use") for p in pieces):
        return f"may the {thing} be worn?"
    return ""


def _sentences(found: Understood) -> Iterator[_Sentence]:
    starts = sentence_starts(found.text, found.tokens)
    for number, start in enumerate(starts):
        end = starts[number + 1] if number + 1 < len(starts) else len(found.tokens)
        inside = [i for i, piece in enumerate(found.pieces) if start <= piece.first < end]
        after = found.tokens[end].start if end < len(found.tokens) else len(found.text)
        mark = found.text[found.tokens[end - 1].end : after].strip()[:1]
        if inside:
            yield _Sentence(inside[0], inside[-1] + 1, mark)


def _asking(sentences: Sequence[_Sentence]) -> int:
    """The place of the last sentence with a question mark, or of the last one."""
    marked = [place for place, sentence in enumerate(sentences) if sentence.mark == "?"]
    return marked[-1] if marked else len(sentences) - 1


def _clauses(found: Understood, sentence: _Sentence) -> Iterator[range]:
    """A sentence parted at commas and at "and", "but" and "so"."""
    first = sentence.first
    for place in _range(sentence):
        lows = [token.low for token in found.tokens[found.pieces[place].first : found.pieces[place].last]]
        if found.pieces[place].tag in ("comma", "and", "but") or lows == ["so"]:
            if place > first:
                yield range(first, place)
            first = place + 1
    if first < sentence.last:
        yield range(first, sentence.last)


def _sure(found: Understood, clause: range, others: bool, lookup: Lookup) -> Iterator[Piece]:
    """The facts of a clause that hold of the question: now, not denied, and of whom it asks."""
    pieces = [found.pieces[place] for place in clause]
    if not _DENYING.isdisjoint(piece.tag for piece in pieces):
        return
    lacking = {_next_noun(pieces, n) for n, piece in enumerate(pieces) if piece.tag in ("no", "without")}
    lows = {token.low for piece in pieces for token in found.tokens[piece.first : piece.last]}
    speaks = bool(lows & SPEAKER) and pieces[0].tag in ("self", "filler", "in", "on", "for", "at", "fact")
    opens = pieces[0].tag == "fact"
    for piece in pieces:
        if piece.tag == "on date":
            yield piece
        if piece.tag != "fact" or piece in lacking or is_of_another_time(found, pieces, piece):
            continue
        family = lookup.facts[piece.fact].family
        own = family in PERSONAL and (others or speaks or opens) and not is_shifted(tuple(lows))
        if family in _CIRCUMSTANCE or own:
            yield piece


def _next_noun(pieces: Sequence[Piece], place: int) -> Piece | None:
    """What "no" or "without" denies: the first name or unknown word after it."""
    return next((p for p in pieces[place + 1 :] if p.tag in ("item", "items", "fact", "unknown")), None)


def _has_colour(found: Understood, sentence: _Sentence) -> bool:
    """Whether a sentence says what colour or make something is: "a lovely scarf, bright pink"."""
    for place in _range(sentence):
        piece = found.pieces[place]
        lows = {token.low for token in found.tokens[piece.first : piece.last]}
        if (piece.tag == "aspect value" and not lows & STATE_WORDS) or not lows.isdisjoint(COLOURS):
            return True
    return False


def _has_weight(found: Understood, sentences: Sequence[_Sentence], lookup: Lookup) -> bool:
    """Whether words that are no fact of the books are such as may bear on the answer: a waiver, a rank."""
    weighty = weighty_words(lookup)
    for sentence in sentences:
        for place in _range(sentence):
            piece = found.pieces[place]
            if piece.tag == "unknown" and found.tokens[piece.first].key in weighty:
                return True
    return False


def _things(found: Understood, sentence: _Sentence) -> list[Piece]:
    return [found.pieces[p] for p in _range(sentence) if found.pieces[p].tag in ("item", "items")]


def _antecedent(found: Understood, before: Sequence[_Sentence], asking: _Sentence) -> str | None:
    """The question with the one thing that was told of in the place of "it"; None where that is not clear."""
    things = {
        found.text[found.tokens[p.first].start : found.tokens[p.last - 1].end].casefold(): p
        for s in before
        for p in _things(found, s)
    }
    if len({p.arg or p.entries for p in things.values()}) != 1:
        return None
    thing = next(reversed(things.values()))
    if any(_rivals(found, sentence, thing) for sentence in before):
        return None
    first, last = found.pieces[asking.first].first, found.pieces[asking.last - 1].last
    asked = found.tokens[first:last]
    pointing = [
        token
        for token, before in zip(asked, (None, *asked), strict=False)
        if token.low in _THINGS and not (token.low == "one" and before is not None and before.low in _MODAL)
    ]  # "may one wear them"
    if {found.pieces[p].tag for p in _range(asking)} <= _NO_QUESTION:
        return None  # "are they?"
    if not pointing and _is_bare(found, asking):
        return f"{_said(found, asking)} wear the {_surface(found, thing)}?"
    if len(pointing) != 1:
        return None
    (pronoun,) = pointing
    label = _surface(found, thing)
    led = "a" if pronoun.low == "one" else "the"
    begin, end = found.tokens[first].start, found.tokens[last - 1].end
    return f"{found.text[begin : pronoun.start]}{led} {label}{found.text[pronoun.end : end]}?"


def _is_bare(found: Understood, asking: _Sentence) -> bool:
    """ "Must I?", "do I have to?": a question of which only the modal and the subject are said."""
    tags = [found.pieces[p].tag for p in _range(asking) if found.pieces[p].tag not in ("filler", "comma")]
    modal = {"must", "have to", "should"} & {*tags}
    return bool(modal) and {*tags} <= {"do", "must", "have to", "should", "self", "person", "to"}


def _rivals(found: Understood, sentence: _Sentence, thing: Piece) -> bool:
    """Whether another thing, that the books do not know, was named beside it: "it" may be that one.

    Who a sentence is about is none ("my aunt knitted me a scarf"), nor is what belongs to a preposition.
    """
    for place in range(sentence.first + 2, sentence.last):
        piece, led, before = found.pieces[place], found.pieces[place - 1].tag, found.pieces[place - 2]
        if piece.tag != "unknown" or led not in ("det", "poss") or before.tag in _PREPOSITIONS:
            continue
        after = found.pieces[place + 1] if place + 1 < len(found.pieces) else None
        if after is None or after.first != thing.first:  # "a lovely scarf"
            return True
    return False


def _points_back(found: Understood, asking: _Sentence) -> bool:
    """Whether "it" or the like comes before the thing that the question names."""
    for place in _range(asking):
        piece = found.pieces[place]
        if piece.tag in ("item", "items"):
            return False
        lows = {token.low for token in found.tokens[piece.first : piece.last]}
        if lows & _THINGS and piece.tag in ("self", "det", "either", "neither", "unknown"):
            return True
    return False


def _range(sentence: _Sentence) -> range:
    return range(sentence.first, sentence.last)


def _lows(found: Understood, sentence: _Sentence) -> tuple[str, ...]:
    first, last = found.pieces[sentence.first].first, found.pieces[sentence.last - 1].last
    return tuple(token.low for token in found.tokens[first:last])


def _said(found: Understood, sentence: _Sentence) -> str:
    first, last = found.pieces[sentence.first].first, found.pieces[sentence.last - 1].last
    return found.text[found.tokens[first].start : found.tokens[last - 1].end]


def _surface(found: Understood, piece: Piece) -> str:
    return found.text[found.tokens[piece.first].start : found.tokens[piece.last - 1].end]


def _words(found: Understood, piece: Piece, lookup: Lookup) -> str:
    words = _surface(found, piece)
    if piece.tag == "on date":
        return f"on {words}"
    return f"for {words}" if lookup.facts[piece.fact].family in PERSONAL else words
