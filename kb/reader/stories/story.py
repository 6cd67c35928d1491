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
from kb.reader.meaning.told import loose_claims, sentences_of
from kb.reader.meaning.whose import PEOPLE
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.days import Period
from kb.reader.pieces.pieces import Piece, Understood, named_activity
from kb.reader.stories.aside import Read, has_colour, has_weight
from kb.reader.stories.deeds import in_progress, is_borne, shown_deed
from kb.reader.stories.hearsay import asks_whether_so, claim_starts, claims_something
from kb.reader.stories.shown import (
    both_asked,
    day_said,
    has_rival,
    is_given,
    loses_topic,
    of_none,
    of_whom,
    opens_told,
    shown_done,
    shown_worn,
    with_place,
)
from kb.reader.stories.sure import LIGHT, addressed, beside_them, clauses_of, sure_of
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token

_THINGS = word_set("it they them this that these those one ones mine")
_PAST = word_set("was were did had used")
_TURNING = tag_set("""
    measure, number, day, date, clause number, which clause, whatever, how many, at least, at most, too many
    grant, authority
""")
"""Tags of what must be taken or refused, never left out."""
_HELD = tag_set("item, items, fact, values, on date, day, date, number, clause number")
_WH = tag_set("what, which, who, where, when, why, how, how many, which clause")
_NO_QUESTION = tag_set("be, do, have, self, det, filler, comma, unknown, person")
_BEING = word_set("is was would 's be isn't n't will")
_ECHO = tag_set("can, may, must, should, do, be, have to, self, filler, comma, not, det")
_MODAL = word_set("may can must should could might does do need")
_SELF = word_set("i we")
_LETTING = word_set("let stop allow permit send tell make")
_LENDING = word_set("lent lend lends lending borrowed loaned")
_CLAIMANT = tag_set("det, poss, person, unknown, self, fact, number")
_JOINING = tag_set("comma, and, but, if, unless")


class _Sentence(msgspec.Struct, frozen=True):
    """Pieces `first` to `last` (not included), and the mark at the end."""

    first: int
    last: int
    mark: str


def from_story(found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """The reading of the sentence that asks, with what the others tell; None where that is not clear."""
    if (doing := in_progress(found, lookup)) is not None:
        return read(doing)
    sentences = list(_sentences(found))
    if len(sentences) == 1:
        return _cut_short(found, sentences[0], _Story(found, (), sentences[0], lookup), lookup, read)
    place = _asking(sentences)
    asking, beside = sentences[place], [s for s in sentences if s is not sentences[place]]
    if any(s.mark == "?" for s in beside):
        return None
    asks = asks_whether_so(_lows(found, asking)) and not is_borne(found, _range(asking))
    if asks and not _things(found, asking):
        if any(loose_claims(found)):
            return None  # whose of the two
        so = _claimed(found, sentences[:place], sentences[place + 1 :], lookup, read)
        standing = any(found.pieces[p].tag == "fact" for p in _range(asking))  # "was the officer right"
        aside = (_said(found, asking),) if standing else ()
        return so and msgspec.structs.replace(so, unused=(*so.unused, *aside))
    story = _Story(found, beside, asking, lookup)
    question = _said(found, asking)
    if not _things(found, asking) or _points_back(found, asking):
        told = [_range(s) for s in sentences[:place]]
        claimed = any(claims_something(_lows(found, s)) for s in sentences[:place])
        if claimed and {found.pieces[p].tag for p in _range(asking)} <= _ECHO:
            return None  # "they say it may be worn alone. Can it?"
        named = both_asked(found, told, _range(asking)) or _antecedent(found, sentences[:place], asking)
        if named is None or any(_things(found, s) for s in sentences[place + 1 :]):
            return None
        question = named
    elif any(_things(found, s) for s in sentences[place + 1 :]):
        return None
    reading = _with_facts(with_place(found, map(_range, beside), question, lookup), story, read)
    topics = [_range(s) for s in beside if s.mark == ":"]
    return reading if reading is None or not loses_topic(found, topics, reading) else None


class _Story:
    """What the sentences beside the question tell: facts that are sure, words that are left out."""

    def __init__(
        self, found: Understood, beside: Sequence[_Sentence], asking: _Sentence, lookup: Lookup,
        then: _Sentence | None = None, begun: int = 0,
    ) -> None:  # fmt: skip
        """`then`: the sentence that tells what happened, when it did: the question is of that time.

        What is told in it from the piece `begun` on stands in the question.
        """
        pieces = found.pieces
        day = day_said(found, _range(then)) if then is not None else self._told_day(found, beside, asking)
        start, end = (day.start, day.end) if day is not None else (0, 0)
        timed = [p for p in pieces if start <= found.tokens[p.first].start < end]
        led = [msgspec.structs.replace(s, last=begun) if s is then and begun else s for s in beside]
        places = [p for s in led for p in _range(s)]
        self.turns = any(
            pieces[p].tag in _TURNING and pieces[p] not in timed and not is_given(found, p) for p in places
        )
        self.turns = self.turns or has_weight(found, places, lookup)
        self.turns = self.turns or any(
            pieces[p].tag == "act"
            and pieces[p].arg not in ("wear", "use")
            and found.tokens[pieces[p].first].low not in _LENDING
            for p in places
        )  # something was done to a thing
        self.turns = self.turns or any(has_colour(found, _range(s)) for s in led if _things(found, s))
        lows = {*_lows(found, asking)}
        others = bool(PEOPLE & lows) and (_SELF.isdisjoint(lows) or bool(_LETTING & lows))
        dated = any(pieces[p].tag == "on date" for s in beside for p in _range(s))
        self.turns = self.turns or (dated and _PAST.isdisjoint(_lows(found, asking)))
        self.facts: list[str] = []
        self.unused: list[str] = []
        for sentence in beside:
            sure: list[Piece] = []
            who = addressed(found, _range(sentence), lookup, sentence.mark) if then is None else ()
            self.turns = self.turns or who is None
            for clause in clauses_of(found, _range(sentence)):
                sure += sure_of(found, clause, others, lookup, then is sentence)
            sure = [piece for piece in pieces if piece in sure or piece in (who or ())]
            self.facts += [_words(found, piece, lookup) for piece in sure]
            if who:
                self.unused += beside_them(found, _range(sentence), sure)
            elif any(pieces[p].tag not in LIGHT and pieces[p] not in sure for p in _range(sentence)):
                self.unused.append(_said(found, sentence))
        if start < end and (then is not None or day_said(found, _range(asking)) is None):
            self.facts.append(found.text[start:end])

    def _told_day(self, found: Understood, beside: Sequence[_Sentence], asking: _Sentence) -> Period | None:
        """The one day told of, where it is asked what was so then: "he served in 2020. Was he let?"."""
        own, told = day_said(found, _range(asking)), [day_said(found, _range(s)) for s in beside]
        days = [day for day in told if day is not None]
        if own is not None and len(days) == 1:
            return days[0] if (own.first, own.last) == (days[0].first, days[0].last) else None
        past = not _PAST.isdisjoint(_lows(found, asking))
        return days[0] if past and own is None and len(days) == 1 else None


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
    pieces = found.pieces[claim.first : claim.last]
    if claims_something(_lows(found, claim)):
        return None  # "the old hands say ..."
    if done := shown_done(found, pieces):
        return _with_facts(done, story, read)
    deed = shown_deed(found, pieces)
    then = _Story(found, [*before, *after], claim, lookup, then=claim, begun=claim.first + deed.begun)
    reading = _with_facts(f"may I {deed.said}?", then, read) if deed.said else None
    shown = shown_worn(found, pieces) if reading is None else ""
    then = _Story(found, [*before, *after], claim, lookup, then=claim)
    return _with_facts(shown, then, read) if shown else reading


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
        said = (
            of_whom(found, found.pieces[claim.first : claim.last], first + start)
            + found.text[found.tokens[first + start].start : end]
        )
        reading = _with_facts(
            of_none(found, found.pieces[claim.first : claim.last], first + start) or f"{said}?", story, read
        )
        if reading is not None and _is_whole(reading, found, claim, first + start, lookup):
            cut = found.text[found.tokens[first].start : found.tokens[first + start].start].strip(" ,")
            return msgspec.structs.replace(reading, unused=(*filter(None, [cut]), *reading.unused))
    return None


def _is_whole(reading: Reading, found: Understood, claim: _Sentence, first: int, lookup: Lookup) -> bool:
    """Whether nothing that the books know was cut off before the claim, and what is measured is asked."""
    pieces = found.pieces[claim.first : claim.last]
    cut = [p for p in pieces if p.last <= first]
    who = cut and cut[0].tag in _CLAIMANT and not any(p.tag in _JOINING for p in cut)
    facts = [p for p in cut if p.tag == "fact"]  # "the old hands at the works say" tells who claims it
    free = [p for p in facts if who or (_is_standing(p, lookup) and not opens_told(cut, p))]
    dated = any(p.tag == "book" and _surface(found, p)[-1:].isdigit() for p in cut)
    if dated or any(p.tag in _HELD and p not in free for p in cut):
        return False
    measured = any(p.tag in ("measure", "number") for p in pieces)
    return not measured or (reading.query is not None and reading.query.value is not None)


def _sentences(found: Understood) -> Iterator[_Sentence]:
    for places, mark in sentences_of(found, sentence_starts(found.text, found.tokens)):
        yield _Sentence(places[0], places[-1] + 1, mark)


def _asking(sentences: Sequence[_Sentence]) -> int:
    """The place of the last sentence with a question mark, or of the last one."""
    marked = [place for place, sentence in enumerate(sentences) if sentence.mark == "?"]
    return marked[-1] if marked else len(sentences) - 1


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
    if any(has_rival(found, _range(sentence), thing) for sentence in before):
        return None
    first, last = found.pieces[asking.first].first, found.pieces[asking.last - 1].last
    asked = found.tokens[first:last]
    pointing = [
        token
        for token, before in zip(asked, (None, *asked), strict=False)
        if token.low in _THINGS and not (token.low == "one" and before is not None and before.low in _MODAL)
    ]  # "may one wear them"
    if len(pointing) > 1 and _leads(found, pointing[0]):
        pointing = pointing[1:]  # "was it all right to put it on"
    if {found.pieces[p].tag for p in _range(asking)} <= _NO_QUESTION:
        return None  # "are they?"
    if not pointing and _is_bare(found, asking):
        return f"{_said(found, asking)} wear the {_surface(found, thing)}?"
    if len(pointing) != 1:
        return None
    (pronoun,) = pointing
    label = f"{'a' if pronoun.low == 'one' else 'the'} {_surface(found, thing)}"
    begin, end = found.tokens[first].start, found.tokens[last - 1].end
    return f"{found.text[begin : pronoun.start]}{label}{found.text[pronoun.end : end]}?"


def _leads(found: Understood, pronoun: Token) -> bool:
    """Whether an "it" stands for no thing: "would it be wrong to ..."."""
    place = found.tokens.index(pronoun)
    before = found.tokens[place - 1].low if place else ""
    return (
        pronoun.low == "it"
        and before in _BEING
        and any(token.low in ("to", "if") for token in found.tokens[place : place + 6])
    )


def _is_bare(found: Understood, asking: _Sentence) -> bool:
    """ "Must I?", "do I have to?": a question of which only the modal and the subject are said."""
    tags = [found.pieces[p].tag for p in _range(asking) if found.pieces[p].tag not in ("filler", "comma")]
    modal = {"must", "have to", "should"} & {*tags}
    return bool(modal) and {*tags} <= {"do", "must", "have to", "should", "self", "person", "to"}


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


def _is_standing(piece: Piece, lookup: Lookup) -> bool:
    return piece.tag == "fact" and lookup.facts[piece.fact].family in PERSONAL


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
    dated = piece.tag == "on date"
    led = "on " if dated else "for " if lookup.facts[piece.fact].family in PERSONAL else ""
    return f"{led}{named_activity(piece) or _surface(found, piece)}"
