"""A question without the adjuncts in which nothing is that the books know: "while the kettle boils".

What they say can only be a circumstance, whatever their words are: of somebody else, of a place or of a time.
The question may be answered without them where its answer is the same in all cases, which is for whoever has
the answer to say (`kb.instead`). A stretch that names a thing, a fact or a measure of the books, that denies,
or that moves the day is none of them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask
from kb.reader.names.lexicon import Lexicon
from kb.reader.names.spelling import Search
from kb.reader.phrases.english import LEADING_PREPOSITIONS, tag_set
from kb.reader.phrases.leads import CLAUSE_LEADS, COLLEAGUES, COUNTING, PHRASE_LEADS
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.question import LONGEST_QUESTION, clean, too_much, understand
from kb.reader.recast.clocked import CLOCK
from kb.reader.stories.idle import SPEAKERS, THINGS, is_one_of
from kb.reader.stories.modifiers import is_told, loose_words
from kb.reader.words.bearing import BEARING, WORN
from kb.reader.words.everyday import DOINGS, OCCASIONS, OTHERS, PLACES
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_OPENING = word_set("in on for by through around across inside outside beside along with up down over under")
"""The same of one that leads the sentence, with a comma after it."""
_SOMEWHERE = word_set("in on around round through across inside outside along down up by aboard")
"""The same of a name ("in Spain"), or of a word for a place."""
_ALLOWED = tag_set("""
    unknown, det, poss, self, person, be, do, have, filler, particle, in, on, of, for, to, at, by, run, degree
    and, say, show, joined, outdoors, can, how, who, unread, between
""")
"""Tags of words that say nothing which the books know."""
_DONE = tag_set("act, care, fix, fasten, clause, about")
"""Tags of what somebody else may do in a clause: "while the cook dries the pans"."""
_PARTICLES = word_set("about over round along by up down off in out on away back under through")
_MODALS = tag_set("can, may, must, should, do, be, have to")
_USING = word_set("use uses using used tool tools")
_AIMED = tag_set("item, items, fact, comma")
"""Tags of what a purpose follows: of no permission, duty or wish."""
_AIMS = tag_set("unknown, have, say, show, filler")
_INVERTED = tag_set("self, person, det, poss, item, items, fact")
_OPENERS = tag_set("filler, and, but, comma")
_JOINTS = frozenset(",-–—")
_MOST = 14
_CLOCK = Pattern(rf"(?:{CLOCK})(?![\w'’-])", re.IGNORECASE)


class Rest(msgspec.Struct, frozen=True):
    """A text without adjuncts, which are `gone`.

    `apart`: none of them is said of the one who asks. `plain`: no word in them may tell how a thing is.
    `other`: it is asked of somebody of whose standing nothing is known. `timed`: all are times of day.
    `idle`: no rule on what is named turns on anything like them.
    """

    text: str
    gone: tuple[str, ...]
    apart: bool
    plain: bool
    other: bool = False
    timed: bool = False
    idle: bool = False


class _Span(msgspec.Struct, frozen=True):
    """Tokens `first` to `last` (not included), and what stands in their place; the rest as in `Rest`."""

    first: int
    last: int
    apart: bool
    plain: bool
    instead: str = ""
    timed: bool = False
    idle: bool = False


def without_adjuncts(
    text: str, *, lexicon: Lexicon, lookup: Lookup, search: Search | None = None
) -> Iterator[Rest]:
    """A text without all adjuncts that it has, then without each of them alone."""
    plain = clean(text)
    if len(text) > LONGEST_QUESTION or too_much(tokenize(plain)) is not None:
        return
    found = understand(plain, lexicon, lookup, search)
    if isinstance(found, Ask):
        return
    sought = _Sought(found, lookup)
    spans, loose = list(sought.spans()), list(sought.loose())
    apart = [span for span in spans if not any(o.first < span.last and span.first < o.last for o in loose)]
    every = sorted([*apart, *loose], key=lambda span: span.first)
    tried = dict.fromkeys(tuple(some) for some in (every, spans, loose, *([one] for one in every)))
    yield from (sought.rest(some) for some in tried if some)


_GIVEN = word_set("lend lends lending lent loan give gives giving given hand hands pass sell swap")


class _Sought:
    """The search for adjuncts in one text."""

    def __init__(self, found: Understood, lookup: Lookup) -> None:
        self.found, self.tokens, self.lookup = found, found.tokens, lookup
        self.pieces: dict[int, Piece] = {
            place: piece for piece in found.pieces for place in range(piece.first, piece.last)
        }
        self.first, self.end = 0, len(self.tokens)

    def spans(self) -> Iterator[_Span]:
        for first, end, asks in self._sentences():
            self.first, self.end, at = first, end, first
            while at < end:
                span = self._purpose(at)
                if asks and span is None:
                    span = self._clause(at) or self._by_the_clock(at) or self._phrase(at)
                    span = span or self._colleague(at) or self._receiver(at) or self._remark(at)
                if span is not None and self._is_strange(span):
                    yield span
                    at = span.last
                else:
                    at += 1

    def loose(self) -> Iterator[_Span]:
        """What no rule on what is named turns on."""
        for words in loose_words(self.found, self.lookup):
            inside = [i for i, t in enumerate(self.tokens) if words.start <= t.start and t.end <= words.end]
            if inside:
                yield _Span(inside[0], inside[-1] + 1, True, True, instead=words.instead.strip(), idle=True)

    def _sentences(self) -> Iterator[tuple[int, int, bool]]:
        """The sentences, as tokens, and whether each of them asks."""
        text = self.found.text
        for start, end in pairwise((*sentence_starts(text, self.tokens), len(self.tokens))):
            after = self.tokens[end].start if end < len(self.tokens) else len(text)
            mark = text[self.tokens[end - 1].end : after].strip()[:1]
            yield start, end, mark in ("?", ":") or end == len(self.tokens)

    def _low(self, at: int) -> str:
        return self.tokens[at].low if self.first <= at < self.end else ""

    def _tag(self, at: int) -> str:
        return self.pieces[at].tag if self.first <= at < self.end else ""

    def _led(self, at: int, leads: Sequence[tuple[str, ...]]) -> int:
        """How many words of such a lead stand at a place."""
        lows = tuple(token.low for token in self.tokens[at : min(at + 4, self.end)])
        return next((len(words) for words in leads if lows[: len(words)] == words), 0)

    def _opens(self, at: int) -> bool:
        """Whether nothing but a "well" or an "and" stands before a place in its sentence."""
        return all(self._tag(i) in _OPENERS for i in range(self.first, at))

    def _follows(self, at: int) -> bool:
        """Whether the thing that is asked about is named before a place."""
        return any(self._tag(i) in ("item", "items") for i in range(self.first, at))

    def _clause(self, at: int) -> _Span | None:
        """ "While the kettle boils", "because my dentist said so"."""
        size = self._led(at, CLAUSE_LEADS)
        subject = at + size
        if not size or not (self._opens(at) or self._follows(at)) or not self._is_subject(subject):
            return None
        end = self._ending(subject, self._opens(at), self._low(subject) not in SPEAKERS)
        if end is None or end < subject + 2 or (self._low(at) == "as" and not self._tells(subject, end)):
            return None
        return self._of_a_subject(at, end, subject)

    def _of_a_subject(self, at: int, end: int, subject: int) -> _Span:
        """A clause: who or what it is about is no thing that is worn, so nothing is said of how one is."""
        apart = self._low(subject) not in SPEAKERS and not self._acts(subject)
        worn = any(self._is_worn(i) or self._tag(i) == "act" for i in range(subject, end))
        own = self._low(subject) in SPEAKERS
        plain = not worn and not (own and not self._is_plain(subject, end))
        plain = plain and not self._is_standing(subject, end)
        return _Span(at, end, apart, plain)

    def _is_standing(self, first: int, end: int) -> bool:
        """ "I'm a civilian", "my dad was a diver": what somebody is, on which the answer may well turn."""
        return any(
            self._tag(i) == "be" and self._low(i + 1) in ("a", "an", "no") and self._tag(i + 2) == "unknown"
            for i in range(first, end - 1)
        )

    def _colleague(self, at: int) -> _Span | None:
        """ "May my skipper ...", "does a new recruit have to ...": somebody, whoever that is."""
        asked = at > self.first and self._tag(at - 1) in _MODALS
        last = at + 1
        while last < self.end and last < at + 4 and self._tag(last) in ("unknown", "degree", "person"):
            last += 1
        known = self._low(last - 1) in COLLEAGUES and self._tag(last - 1) == "unknown"
        if not asked or self._tag(at) not in ("det", "poss") or last == at + 1 or not known:
            return None
        follows = self._tag(last) in _DONE | _MODALS | {"leave off", "not", "allowed", "required", "hold"}
        return _Span(at, last, False, True, "anyone") if follows else None

    def _receiver(self, at: int) -> _Span | None:
        """ "May I lend it to a visitor": who gets it, whoever that is."""
        last = at + 2
        while last < self.end and last < at + 4 and self._tag(last) in ("unknown", "degree", "person"):
            last += 1
        who = self._low(last - 1)
        given = any(self._low(i) in _GIVEN for i in range(self.first, at))
        led = self._low(at) == "to" and self._tag(at + 1) in ("det", "poss") and last > at + 2
        known = who in COLLEAGUES or is_one_of(who, OTHERS) or self._tag(last - 1) == "person"
        return _Span(at, last, False, True) if given and led and known else None

    def _is_subject(self, at: int) -> bool:
        """Whether somebody or something begins there, that is no "it"."""
        if self._tag(at) in ("det", "poss"):
            return self._low(at) not in THINGS and self._tag(at + 1) in ("unknown", "person", "degree")
        plain = self._tag(at) in ("person", "unknown") or self._low(at) in SPEAKERS
        return plain and self._low(at) not in THINGS

    def _acts(self, at: int) -> bool:
        """ "Queueing": whether the one who asks is meant, though unsaid."""
        return self._low(at).endswith("ing") and self._tag(at) == "unknown"

    def _tells(self, subject: int, end: int) -> bool:
        """Whether something is said of a subject, not of a kind of it: no "as a bandana", "as a sling"."""
        verbs = ("be", "have", "do", "can", "run", "say", "show")
        acts = any(
            self._tag(i) in verbs or (self._tag(i) == "unknown" and self._is_verb(self._low(i)))
            for i in range(subject + 1, end)
        )
        return acts and self._low(subject) not in ("a", "an")

    @staticmethod
    def _is_verb(low: str) -> bool:
        return low.endswith(("ed", "ing", "'s")) or is_one_of(low, DOINGS)

    def _by_the_clock(self, at: int) -> _Span | None:
        """ "At half past six in the evening": what light it is then is for the answer to leave open."""
        match = _CLOCK.match(self.found.text, self.tokens[at].start)
        ends = [i + 1 for i in range(at, self.end) if match and self.tokens[i].end == match.end()]
        return _Span(at, ends[0], True, True, timed=True) if ends else None

    def _phrase(self, at: int) -> _Span | None:
        """ "At Uncle Bob's barbecue", "in Spain", "with my cousins"."""
        low, opens = self._low(at), self._opens(at)
        size = self._led(at, PHRASE_LEADS) or int(low in _OPENING | _SOMEWHERE)
        if not size or not (opens or self._follows(at)):
            return None
        end = self._ending(at + size, opens)
        if end is None or end <= at + size:
            return None
        apart = opens and self._low(end) == "," and (low != "with" or self._tells(at, end))
        if not self._is_plain(at + size, end):
            return _Span(at, end, True, False) if apart else None
        for_it = low == "for" and not opens and self._low(at - 1) == ","  # "with the rig, for the papers"
        free = bool(self._led(at, PHRASE_LEADS)) or apart or for_it
        somewhere = low in _SOMEWHERE and (self._is_named(at + 1, end) or self._is_place(end - 1))
        return _Span(at, end, True, True) if free or somewhere or self._is_company(at, end) else None

    def _purpose(self, at: int) -> _Span | None:
        """ "To fetch a tool", "just to nip to the stores", said of nothing that is used for it."""
        before = self._tag(at - 1) if not self._opens(at) else "comma"
        used = any(self._low(i) in _USING for i in range(self.first, at))
        led = self._low(at) == "to" or (self._tag(at) == "filler" and self._low(self._next(at) - 1) == "to")
        verb = self._next(at)
        acts = self._tag(verb) in _AIMS and not is_one_of(self._low(verb), BEARING)
        if not led or used or not acts or before not in _AIMED:
            return None
        end = self._ending(verb, self._opens(at))
        if end is None or end <= verb or not self._is_plain(verb + 1, end):
            return None
        return None if is_told(self.found, self.lookup, verb, end) else _Span(at, end, False, True)

    def _next(self, at: int) -> int:
        """The token after the piece that stands at a place."""
        return self.pieces[at].last

    def _is_company(self, at: int, end: int) -> bool:
        """ "With my cousins", "with the tourists watching"."""
        doing = next((i for i in range(at + 2, end) if self._acts(i)), end)
        head = self._low(doing - 1)
        person = self._tag(doing - 1) == "person" or is_one_of(head, OTHERS)
        return self._low(at) == "with" and person and "'" not in head

    def _is_named(self, first: int, end: int) -> bool:
        """Whether all words of a name are written with capitals: "in Spain"."""
        words = [token.text for i, token in enumerate(self.tokens[first:end], first) if self._tag(i) != "det"]
        return bool(words) and all(word[:1].isupper() and not word.isupper() for word in words)

    def _is_place(self, at: int) -> bool:
        return self._tag(at) == "unknown" and is_one_of(self._low(at), PLACES, OCCASIONS)

    def _remark(self, at: int) -> _Span | None:
        """ "The vicar asked nicely, may I ..."."""
        if at != self.first or not self._is_subject(at) or self._tag(at) in _MODALS:
            return None
        end = self._ending(at, True, self._low(at) not in SPEAKERS)
        if end is None or self._low(end) != "," or end < at + 3 or not self._tells(at, end):
            return None
        return self._of_a_subject(at, end, at)

    def _ending(self, start: int, opens: bool, told: bool = False) -> int | None:
        """Where an adjunct ends: the farthest place up to which nothing is said that the books know.

        `told`: it is a clause about somebody or something, which may do what the books have words for.
        """
        stop = None
        for at in range(start, min(self.end, start + _MOST)):
            if at > start and self._stops(at, opens):
                stop = at
                if opens and self._low(at) == "," and self._tag(at + 1) in _MODALS | {"what", "where", "how"}:
                    return stop
            if not (self._is_free(at) or (told and at > start and self._is_done(at, opens))):
                return stop
        return self.end if self.end - start <= _MOST else stop

    def _stops(self, at: int, opens: bool) -> bool:
        if self.tokens[at].low in _JOINTS:
            return True
        asks = opens and self._tag(at) in _MODALS and self._tag(at + 1) in _INVERTED
        asks = asks or (self._low(at) == "but" and self._tag(at + 1) == "self")  # "but we are still here"
        piece = self.pieces[at]
        fact = piece.first == at and piece.tag == "fact" and self._low(at) in LEADING_PREPOSITIONS
        return asks or fact or bool(self._led(at, CLAUSE_LEADS[:-1]) and self._is_subject(at + 1))

    def _is_free(self, at: int) -> bool:
        """Whether a word names nothing of the books, and neither denies nor moves the day."""
        low, piece = self.tokens[at].low, self.pieces[at]
        guessed = piece.how == "index" and low.endswith("ing")  # "watching", for a watch
        long = piece.tag == "dimension" and self._tag(at - 1) == "det" and self._tag(at + 1) == "unknown"
        free = piece.tag in _ALLOWED or low in _JOINTS or guessed or long
        return free and low not in COUNTING and not low[0].isdecimal()

    def _is_done(self, at: int, opens: bool) -> bool:
        """Whether a word of the books can only say there what somebody does: "the helicopter left"."""
        low, piece = self.tokens[at].low, self.pieces[at]
        last = at + 1 >= self.end or self._stops(at + 1, opens)
        return (
            piece.tag in _DONE
            or (low in _PARTICLES and last)
            or (low == "left" and self._tag(at - 1) == "unknown")
            or (piece.tag in ("item", "items") and piece.last - piece.first == 1 and low.endswith("ed"))
        )

    def _is_strange(self, span: _Span) -> bool:
        """Whether it has a word that nothing explains."""
        strange = ("unknown", "unread", "degree", "number")
        return any(self._tag(i) in strange for i in range(span.first, span.last))

    def _is_plain(self, first: int, end: int) -> bool:
        return not any(
            self._is_worn(i) or (is_one_of(self._low(i), BEARING) and not self._is_a_name(i))
            for i in range(first, end)
        )

    def _is_worn(self, at: int) -> bool:
        """Whether a word may stand for a thing, or be one that is worn or a part of one."""
        token = self.tokens[at]
        worn = token.low in WORN or token.key in WORN
        whose = self._tag(at) in ("det", "poss") and self._tag(at + 1) in ("unknown", "person")
        return (token.low in THINGS and not whose) or (worn and not self._is_a_name(at))

    def _is_a_name(self, at: int) -> bool:
        return at > self.first and self.tokens[at].text[:1].isupper()

    def rest(self, spans: Sequence[_Span]) -> Rest:
        """The text without some stretches."""
        text = self.found.text
        gone = []
        for span in reversed(spans):
            start, end = self.tokens[span.first].start, self.tokens[span.last - 1].end
            gone.append(text[start:end].strip(" ,-–—"))
            if span.instead:
                text = f"{text[:start]}{span.instead}{text[end:]}"
                continue
            before, after = text[:start].rstrip(), text[end:].lstrip()
            parted = before[-1:] in (*_JOINTS, "") or after[:1] in (*_JOINTS, "")
            before, after = before.rstrip(" ,-–—"), after.lstrip(" ,-–—")
            joint = ", " if parted and before and after[:1] not in (*".?!:;", "") else " "
            joint = "" if not before or after[:1] in (*".?!:;", "") else joint
            joint = " " if before[-1:] in (*".?!:;",) else joint
            text = before + joint + after
        return Rest(
            " ".join(text.split()),
            tuple(reversed(gone)),
            all(span.apart for span in spans),
            all(span.plain for span in spans),
            any(span.instead and not span.idle for span in spans),
            all(span.timed for span in spans),
            all(span.idle for span in spans),
        )
