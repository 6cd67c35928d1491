"""Words of the asking sentence that no answer can rest on, left out and named: "on the ferry", "my lot".

What is left out is a circumstance that no fact of the books takes, so the answer holds with it and without;
or it is talk. A thing, what is done to it or how it is, an amount, a day, the standing of a person and any
word that is not known as one of everyday talk stay, and stop the question.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.reader.phrases.english import LEADING_PREPOSITIONS, tag_set
from kb.reader.pieces.pieces import Understood
from kb.reader.stories.closed import PERIODS, closed_end
from kb.reader.stories.idle import SEXES, SPEAKERS, STATES, THINGS, Stretches, is_doing, is_one_of
from kb.reader.stories.modifiers import is_told
from kb.reader.stories.shown import is_cared
from kb.reader.words.everyday import DOINGS, OCCASIONS, OTHERS, PLACES
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts

Read = Callable[[str], Reading]
_ASKED = frozenset({"may", "must", "where", "how", "how_many", "who", "list"})
_LED_BY = tuple(
    tuple(words.split())
    for words in """
no matter what|as long as|so long as|supposing|assuming|provided that|provided|even though|even if|whatever
|now that|so that|given that|seeing as|seeing that|just because|just so|because|though|although|if|whenever
|when|while|whilst|since|as|so|now|considering
""".replace("\n", "").split("|")
)
"""What leads a clause of circumstance, the longest first."""
_LOOSE = frozenset(
    {("since",), ("as",), ("so",), ("now",), ("considering",), ("whatever",), ("no", "matter", "what")}
)
"""Those of them that lead one only before a person."""
_MEANWHILE = word_set("when while whilst whenever")
_REASONS = word_set("because though although considering")  # with which a clause says what holds
_BOUND = tag_set("comma, range")
_ASKING = tag_set(
    "can, may, must, should, do, be, have to, what, which, who, where, how, how many, when, why"
)
_INVERTED = tag_set("self, person, det, poss, item, items, fact")
_AT_PLACE = word_set("""
    at in on by near behind outside inside around about round along across through past aboard to into down up
""")
_WAYS = word_set("up down over back out along")
_AT_TIME = word_set("at in on during for of to through")
_IDLY = word_set("joke laugh dare treat favor favour change bet giggle prank")
_BARE = word_set("""
    work home night dawn dusk noon midday midnight school college town church class court bed hospital port
""")
_KEEPING = word_set("""
    put puts putting keep keeps keeping kept leave leaves leaving left store stores storing stow stows stowing
    hang hangs hanging hung stick place
""")
_ATTACHING = tag_set("fix, fasten, care, run, does")
_USING = word_set("use uses using used")
_SAT = word_set("sat stood just still")
_FEELING = word_set("keep stay feel get look be")
_DONE_TO = tag_set("item, items, fact, particle, together")
_WEARING = frozenset({"wear", "carrying", "use"})
_LIMITING = tag_set("only, not, no, but, unless, and, or, neither, without, unread, whatever, alone")
"""Tags of words that make what follows count: "only on the ferry"."""
_GOES_ON = tag_set("""
    unknown, item, items, fact, values, aspect value, fact name, number, measure, of, place, aspect, and, or
""")
_EVERY = word_set("this every each most all some")
_TIMES = word_set("""
    afternoon afternoons morning mornings evening evenings night nights day days weekend weekends weekdays
    lunchtime
""")
_TODAY = word_set("afternoon morning evening lunchtime")
_ADVERBS = word_set("""
    tonight tonite overnight honestly frankly truly genuinely perhaps maybe possibly probably certainly
    definitely absolutely legally theoretically hypothetically realistically ideally happily proudly gladly
    cheerfully
""")
_NEUTRAL = word_set("""
    good trusty lucky lovely beloved favorite favourite precious faithful cherished treasured wretched blasted
    blooming bloody damned damn darned ruddy flipping bleeding silly stupid daft ridiculous horrid ghastly
    beautiful gorgeous handsome splendid poor dratted infernal confounded legendary famous infamous notorious
    humble ludicrous marvellous magnificent dreaded hateful mere
""")
_CALM = word_set("quiet busy hectic dull slow boring")  # how a time of work may be
_WET = word_set("wet damp soaked soaking sodden soggy dripping dirty muddy grubby")
"""How a thing may be that is cared for: how that may be done does not turn on it."""
_CREW = word_set("lot ten gang bunch")
_ANYONE = word_set(
    "man woman men women bloke blokes chap chaps fellow fellows fella fellas guy guys soul body"
)
_DUMMY = tag_set("allowed, banned, required, optional, to")
"""What follows an "it" that stands for nothing: "is it okay to"."""
_COUNTING = word_set("one two some any all of")
_MODALS = tag_set("can, may, must, should, do, be, have to")
_AFTER_SUBJECT = tag_set("""
    act, have to, allowed, be, can, may, must, should, leave off, filler, have, required, to, not, fasten, fix
    only, show, hold, use, banned, unknown
""")


class _Span(msgspec.Struct, frozen=True):
    """Pieces `first` to `last` (not included) that may go, and what stands in their place."""

    first: int
    last: int
    instead: str = ""
    clause: bool = False
    named: bool = True


def without_spare(reading: Reading, found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """The reading of the rest of a text, with what was left out named; None where nothing may go."""
    sought = _Sought(found, lookup)
    spans = tuple(sought.spans())
    if not spans or sought.loses_sight(spans) or sought.is_strange(spans):
        return None
    again = read(sought.rest(spans))
    gone = tuple(sought.said(span.first, span.last).strip(" ,") for span in spans if span.named)
    if again.ask is not None and again.ask.fact == "item" and again.ask.choices and reading.ask is None:
        return again
    query = again.query
    if query is None or query.kind not in _ASKED:
        return None
    if not query.items and (query.kind != "list" or len(query.case.facts) == len(again.carried)):
        return None  # "what do I wear to a wedding" asks for more than all that is worn
    return msgspec.structs.replace(again, unused=(*gone, *again.unused))


class _Sought(Stretches):
    """The search for what may go in one text."""

    def spans(self) -> Iterator[_Span]:
        """What may go, in order, each with a word that nothing explains."""
        ways = (
            self._clause, self._however, self._purpose, self._doubt, self._remark, self._person, self._time,
            self._phrase, self._going, self._closed, self._word,
        )  # fmt: skip
        for first, end in self._asking_parts():
            self.first, self.end, at = first, end, first
            while at < end:
                span = next((s for way in ways if (s := way(at)) is not None and self._is_stopping(s)), None)
                if span is not None:
                    yield span
                at = span.last if span is not None else at + 1

    def _is_stopping(self, span: _Span) -> bool:
        """Whether a stretch has a word that nothing explains."""
        return bool(span.instead) or any(
            piece.tag in ("unknown", "number", "unread", "grant", "range", "dimension")
            for piece in self.pieces[span.first : span.last]
        )

    def _asking_parts(self) -> Iterator[tuple[int, int]]:
        """The sentences that ask, and what leads to one with a colon: `first` and `end`, as pieces."""
        tokens, text = self.found.tokens, self.found.text
        for start, end in pairwise((*sentence_starts(text, tokens), len(tokens))):
            after = tokens[end].start if end < len(tokens) else len(text)
            mark = text[tokens[end - 1].end : after].strip()[:1]
            inside = [i for i, piece in enumerate(self.pieces) if start <= piece.first < end]
            if inside and (mark in ("?", ":", "") or end == len(tokens)):
                yield inside[0], inside[-1] + 1

    def _clause(self, at: int) -> _Span | None:
        """ "Because my mum likes it", "when it's perishing", "if the tunic hides them"."""
        lows = self.lows(at, self.end)
        led = next((words for words in _LED_BY if lows[: len(words)] == words), None)
        if led is None or len(lows) <= len(led):
            return None
        subject = self.pieces[at].first + len(led)
        loose = led in _LOOSE and lows[len(led)] not in SPEAKERS
        if loose and (led == ("as",) or not self.is_somebody(subject)):
            return None
        for end in self._ends(at, led[0] in _MEANWHILE):
            if self.is_talk(subject, end):
                return _Span(at, end, clause=True)
            if (thing := self.hiding(subject, end)) is not None:
                return _Span(at, end, f"with the {self.said(thing, thing + 1)}", clause=True)
        last = next(i for i in range(at, self.end) if self.pieces[i].last >= subject) + 1
        whole = self.pieces[last - 1].last == subject
        return _Span(at, last, "if", named=False) if whole and led[-1] in _REASONS else None

    def _ends(self, at: int, meanwhile: bool) -> Iterator[int]:
        """Where a clause that begins at a piece may end: the farthest first, not beyond a question.

        What is true `meanwhile` ends before a fact that holds then, too: "while chatting on the slipway".
        """
        stops = []
        for place in range(at + 1, self.end):
            tag, after = self.tag(place), self.tag(place + 1)
            if tag in _BOUND:
                stops.append(place)
                if after in _ASKING:
                    break
            elif meanwhile and self._leads(place):
                stops.append(place)
            elif at == self.first and tag in _MODALS and after in _INVERTED:
                stops.append(place)
                break
        else:
            stops.append(self.end)
        yield from reversed(stops)

    def _however(self, at: int) -> _Span | None:
        """ "However bright it is"."""
        lows = self.lows(at, min(at + 4, self.end))
        weather = lows[:1] == ("however",) and len(lows) > 3 and lows[1] in STATES
        last = next((i for i in range(at, self.end) if self.low(i).endswith(("is", "gets", "'s"))), at)
        return _Span(at, last + 1) if weather and lows[2] == "it" and self._is_over(last + 1) else None

    def _purpose(self, at: int) -> _Span | None:
        """ "To keep warm", "to impress the visitors"."""
        used = any(self.tag(i) == "act" and self.low(i) in _USING for i in range(self.first, at))
        led = at == self.first or self.tag(at - 1) in _DONE_TO or self._is_place(self.low(at - 1))
        if self.low(at) != "to" or not led or used or self._is_put(at):
            return None
        end = next((i for i in range(at, self.end) if self.tag(i) in _BOUND or self._leads(i)), self.end)
        places = range(at + 1, end)
        acts = bool(places) and self.tag(at + 1) == "unknown" and is_one_of(self.low(at + 1), DOINGS)
        feels = acts and self.low(at + 1) in _FEELING and end == at + 3 and self.low(at + 2) in STATES
        told = is_told(self.found, self.lookup, self.pieces[at].last, self.pieces[end - 1].last)
        whole = (end < self.end or at > self.first) and not told
        return _Span(at, end) if whole and (feels or (acts and self.is_idle(places))) else None

    def _doubt(self, at: int) -> _Span | None:
        """ "..., or will I look silly?"."""
        asks = self.tag(at + 1) in _MODALS or self.low(at + 1) in ("will", "would")
        if at == self.first or self.low(at) != "or" or not asks or at + 2 >= self.end:
            return None
        begun = at - (self.tag(at - 1) == "comma")
        return _Span(begun, self.end) if self.is_talk(self.pieces[at + 2].first, self.end) else None

    def _leads(self, place: int) -> bool:
        """ "In boat rig": a fact with the word that leads to it."""
        fact = self.tag(place) == "fact" and self.lows(place, place + 1)[0] in LEADING_PREPOSITIONS
        return fact and self.low(place) not in ("the", "a", "an")

    def _remark(self, at: int) -> _Span | None:
        """ "My mum is coming, may I ...", "having my tea, may I ..."; a place between commas."""
        if at > self.first and self.tag(at - 1) not in _BOUND:
            return None
        doing = is_doing(self.low(at)) or (self.low(at) in _SAT and is_doing(self.low(at + 1)))
        end = next(
            (i for i in range(at, self.end) if self.tag(i) in _BOUND or (doing and self._leads(i))), self.end
        )
        if end <= at or (at == self.first and end == self.end):
            return None
        if end == at + 1 and self.tag(at) == "unknown" and self._is_place(self.low(at)):
            return _Span(at, end)
        first = at + (self.tag(at) == "filler" and at + 1 < end)  # "surely nobody minds"
        subject = self.pieces[first].first
        begun = doing or self.found.tokens[subject].low in SPEAKERS or self.is_somebody(subject)
        acts = doing or any(self.tag(i) in ("be", "have", "unknown") for i in range(at + 1, end))
        subject += self.low(at) in _SAT
        if not begun or not acts or self.tag(at) in _ASKING or not self.is_talk(subject, end):
            return None
        return _Span(at, end, clause=True)

    def _is_place(self, low: str) -> bool:
        return is_one_of(low, PLACES, OCCASIONS) and self.is_free(low)

    def _person(self, at: int) -> _Span | None:
        """ "May my lot ...", "can one of my ten ...": no more than people."""
        if at == self.first or self.tag(at - 1) not in _MODALS:
            return None
        place, last = at, min(self.end, at + 5)
        while place < last and (
            self.tag(place) in ("det", "poss") or _COUNTING.issuperset(self.low(place).split())
        ):
            place += 1
        low = self.low(place) if place < last else ""
        owned = low in _CREW and self.tag(place - 1) == "poss"
        if place == at or not (owned or low in _ANYONE) or (low in SEXES and self.tells_sexes()):
            return None
        return _Span(at, place + 1, "we", named=False) if self.tag(place + 1) in _AFTER_SUBJECT else None

    def _time(self, at: int) -> _Span | None:
        """ "This afternoon", "most days"."""
        low, after = self.low(at), self.low(at + 1)
        times = _TODAY if low == "this" else _TIMES
        fits = low in _EVERY and after in times and self._is_over(at + 2) and not self._is_limited(at)
        return _Span(at, at + 2) if fits else None

    def _phrase(self, at: int) -> _Span | None:
        """ "On the ferry", "behind the ticket counter", "for my birthday"."""
        low = self.low(at)
        if low in ("as a", "for a") and self.low(at + 1) in _IDLY and self._is_over(at + 2):
            return _Span(at, at + 2)
        if (low not in _AT_PLACE and low not in _AT_TIME) or self._is_limited(at):
            return None
        place = at + 1
        while self.tag(place) in ("det", "poss") and self.low(place) not in THINGS | {"another", "other"}:
            place += 1
        begun = place
        while self.tag(place) in ("unknown", "degree") and self.is_free(self.low(place)):
            place += 1
        if place == begun or not self._is_over(place):
            return None
        head = self.low(place - 1)
        occasion = low in _AT_TIME and is_one_of(head, OCCASIONS)
        somewhere = low in _AT_PLACE and is_one_of(head, PLACES) and not self._is_put(self.end)
        bare = begun == at + 1 and not (occasion or head in _BARE or head.endswith("s"))
        begun = at
        while begun > self.first and self.low(begun - 1) in _WAYS and self.tag(begun - 1) == "filler":
            begun -= 1  # "up at the summit"
        return _Span(begun, place) if (occasion or somewhere) and not bare else None

    def _going(self, at: int) -> _Span | None:
        """ "While riding inside the cabin": what is done there is no more than being there."""
        before = self.tag(at - 1) if at > self.first else "comma"
        after = self.tag(at + 1) in ("in", "on", "at", "by", "fact") or self.low(at + 1) == "inside"
        leads = (before in ("if", "when", "comma") or self.low(at - 1) in ("go", "going")) and after
        going = self.tag(at) == "unknown" and is_doing(self.low(at)) and self.is_free(self.low(at))
        return _Span(at, at + 1) if going and leads else None

    def _is_cared(self, end: int) -> bool:
        return any(is_cared(self.found, self.pieces[i]) for i in range(self.first, end))

    def _word(self, at: int) -> _Span | None:
        """ "Perhaps"; the word before a thing in "my trusty belt"."""
        low, after = self.low(at), at + 1
        if self.tag(at) != "unknown" or self._is_limited(at):
            return None
        if low in _ADVERBS:
            return _Span(at, at + 1)
        while self.low(after) in _NEUTRAL and after < self.end:
            after += 1
        calm = low in _CALM and (self.tag(after) == "fact" or self.low(after) in PERIODS)
        neutral = low in _NEUTRAL or (low in _WET and self._is_cared(at))
        return _Span(at, at + 1) if calm or (neutral and self.tag(after) in ("item", "items")) else None

    def _closed(self, at: int) -> _Span | None:
        """ "New" before a thing, "after shift", "before hanging it up"."""
        cared = self.low(at) in ("before", "after") and self._is_cared(at)
        end = None if self._is_limited(at) else closed_end(self, at, cared)
        return _Span(at, end) if end is not None else None

    def _is_over(self, place: int) -> bool:
        """Whether a phrase ends before a piece, which goes on with nothing that it may be part of."""
        if place >= self.end:
            return True
        goes_on = self.tag(place) in _GOES_ON and not self._leads(place) and self.low(place) not in _ADVERBS
        return not goes_on and self.low(place) != "-"

    def _is_limited(self, place: int) -> bool:
        """ "Only on the ferry", "not on the ferry"."""
        return place > self.first and self.tag(place - 1) in _LIMITING

    def _is_put(self, end: int) -> bool:
        """Whether a thing is put somewhere or fastened before a piece, so that a place tells where."""
        acts = (self.pieces[i] for i in range(self.first, end))
        return any(
            piece.tag in _ATTACHING
            or (piece.tag == "act" and piece.arg not in _WEARING)
            or (self.found.tokens[piece.first].low in _KEEPING and piece.how != "pattern")
            for piece in acts
        )

    def loses_sight(self, spans: Sequence[_Span]) -> bool:
        """Whether the rest says "it" before it names a thing, and what goes may be what it stands for."""
        gone = {place for span in spans for place in range(span.first, span.last)}
        clauses = [place for span in spans if span.clause for place in range(span.first, span.last)]
        named = any(
            self.pieces[i].tag == "item"
            or (self.pieces[i].tag == "unknown" and is_one_of(self.low(i), OTHERS))
            for i in clauses
        )
        for place, piece in enumerate(self.pieces):
            if piece.tag in ("item", "items") and place not in gone:
                return False
            after = self.pieces[place + 1].tag if place + 1 < len(self.pieces) else ""
            if named and place not in gone and self.low(place) in THINGS and after not in _DUMMY:
                return True
        return False

    def is_strange(self, spans: Sequence[_Span]) -> bool:
        """Whether more than one word is left that nothing explains: the rest is not worth reading."""
        gone = {place for span in spans for place in range(span.first, span.last)}
        return sum(p.tag == "unknown" for i, p in enumerate(self.pieces) if i not in gone) > 1

    def rest(self, spans: Sequence[_Span]) -> str:
        """The text without them; commas that stood around one are one."""
        text = self.found.text
        for span in reversed(spans):
            start, end = self.bounds(span.first, span.last)
            before, after = text[:start].rstrip(), text[end:].lstrip()
            joint = f" {span.instead} " if span.instead else " "
            if not span.instead and before[-1:] in (",", "-", "–", "—", ""):
                before, after = before.rstrip(" ,-–—"), after.lstrip(" ,-–—")
                joint = ", " if before and after[:1] not in (*".?!:;", "") else ""
            text = before + joint + after
        return " ".join(text.split()).replace(" ?", "?").replace(" ,", ",")
