"""Words beside a thing or an occasion that may be left out, since no rule on what is named turns on such.

"For five minutes", "at my old skipper's funeral", "that my mum gave me", "they're warm enough": how long,
whose an occasion is, who gave a thing, how somebody likes it. Where a clause on the things that are named
speaks of such, the words stay and stop the question.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

import msgspec

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.reader.phrases.leads import COLLEAGUES, KIN
from kb.reader.pieces.pieces import Understood, named_activity
from kb.reader.stories.idle import is_one_of
from kb.reader.words.bearing import BEARING, WORN
from kb.reader.words.everyday import OCCASIONS, OTHERS
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_WORD_ENDS = r"(?![\w'’-])"
_ENDS = r"(?=\s*(?:[.,;:?!)–—-]|$)|\s(?:in|on|at|with|and|or|while|when|during|to|if|under|over|between)\b)"
_COUNT = r"(?:an?|one|two|three|four|five|six|ten|fifteen|twenty|thirty|a few|a couple of|half an|\d+)"
_SPELL = r"(?:seconds?|secs?|minutes?|mins?|moments?|hours?|hrs?|tick|ticks|jiffy)"
_SHORT = r"(?:quick|brief|short|single|mere|little|measly|one-off|whole|full|good)"
_EVEN = (
    r"(?:(?:not )?even |just |only |if only |merely |surely |about |another |up to |all of |say |the odd )"
)
_TRIP = r"(?:trip|run|visit|errand|job|look|word|spin|dash|stroll|chat|task|turn|glance|go)"
_LASTING = (
    rf"(?:,\s*)?{_EVEN}*\bfor {_EVEN}*(?:{_COUNT} (?:{_SHORT} )*{_SPELL}|a (?:{_SHORT} )*(?:while|bit|time))"
    r"(?: or (?:two|three|so))?(?: (?:at (?:the )?most|at least|max|tops|or less))?" + _WORD_ENDS,
    rf"(?:,\s*)?{_EVEN}*\b{_COUNT} {_SPELL},? (?:at (?:the )?most|max|tops){_WORD_ENDS}",
    rf"(?:,\s*)?{_EVEN}*\b(?:(?:just )?(?:this|the) once|for once|for (?:the|this one) (?:day|afternoon"
    r"|morning|evening|night))" + _WORD_ENDS,
    rf"(?:,\s*)?{_EVEN}*\b(?:if it['’]s )?(?:for )?(?:an?|one|this one|the) (?:{_SHORT} )+(?:{_TRIP}|one)"
    rf"{_WORD_ENDS}",
)
_TIMED = Pattern(
    r"\b(?:\d+|an?|one|two|three|four|five|ten|fifteen|twenty|thirty|few|half an?) "
    r"(?:seconds?|minutes?|hours?|days?)\b|\b(?:brief(?:ly)?|temporar(?:y|ily)|short (?:time|while)|moment"
    r"|trips?|errands?|journeys?|at a time|prolonged|once)\b",
    re.IGNORECASE,
)
"""How a clause says for how long, or for what going, something holds."""
_TIMES = frozenset({"s", "min", "h", "d", "wk", "mo", "a"})
_GIVING = (
    r"(?:gave|bought|got|sent|brought|found) (?:it (?:for|to) )?me"
    r"|(?:bought|got|found|picked up|ordered)(?: (?:it|them|one))?(?: (?:online|myself|second hand|cheap))*"
)
_OCCASION = r"(?: for (?:my|our|the) (?P<when>[\w’'-]+)| (?:last|this) (?:week|month|year|christmas))?"
_GIVEN = (
    rf"(?:(?:that|which) )?(?P<who>i|we|(?:a|my|our|one of my) [\w’'-]+(?: [\w’'-]+)?) (?:{_GIVING})"
    rf"{_OCCASION}{_ENDS}",
    rf"(?:given|bought|sent) (?:to )?me by (?P<who>(?:a|my|our) [\w’'-]+(?: [\w’'-]+)?){_OCCASION}{_ENDS}",
    rf"(?:,\s*)?(?:a|as a|it(?:['’]s| is| was) a|they(?:['’]re| are| were) a|because it(?:['’]s| is| was) a)"
    rf" (?:\w+ )?(?:gift|present|souvenir|keepsake) from (?P<who>(?:a|my|our|his|her) [\w’'-]+(?: [\w’'-]+)?)"
    rf"{_OCCASION}{_ENDS}",
)
_GAVE = (
    r"(?P<who>(?:a|my|our|one of my) [\w’'-]+(?: [\w’'-]+)?) (?:has |have |['’]s )?(?:given|gave|bought|got"
)
_GAVE += r"|sent|brought) me(?=\s)"
_GIFTS = Pattern(
    r"\b(?:gifts?|gave|given|giving|presented|presents?|received|bought|buys?|purchased?|privately|supplied|"
    r"acquired|foreign|obtained|suppliers?|shops?)\b",
    re.IGNORECASE,
)
_LIKING = word_set("""
    warm warmer warmest smart smarter smartest comfy comfier comfortable nice nicer nicest pretty prettier
    practical handy handier easy easier quick quicker cool cooler cheap cheaper cosy cosier lucky lovely
    better softer
""")
_LIKED = (
    r"(?:,|;|-|–|—|\bbecause|\bsince|\bas|\bcos|\bcause)\s*(?:they|it|these|those)"
    r"(?:['’](?:re|s)| are| is| looks?| feels?| seems?| would be| would look|['’]d be|['’]d look|['’]ll be)"
    r"(?: (?:just|so|too|very|really|much|a bit|a lot|quite|way|far|rather|nice and|plenty|simply))*"
    r" (?P<how>[a-z]+)(?: (?:enough|too|that way|like that|anyway|as well))?(?=\s*(?:[.;?!)]|$|,))"
)
_OWNER = r"(?:my|our|his|her|their|a|an|the)(?: (?P<age>\w+))? (?P<who>[\w-]+)['’]s? (?=(?P<what>[a-z]+))"
_INSIGNIA = frozenset({"insignia", "medal", "medals", "badge", "decoration", "decorations", "ribbons"})
_POWERED = (
    r"(?:,\s*)?(?:\b(?:but|and|if|when|while|as long as|so long as|provided|even if|even when) )*\b"
    r"(?:(?:it|they|which|that)(?: is|['’]s| are|['’]re|s)?(?: all)? )?(?:(?:is|are) )?"
    r"(?:(?:(?:switched|turned|powered)(?: right| completely)? (?:off|down)|switched to silent|muted|silenced"
    r"|(?:on|in|set to) (?:silent|mute|vibrate|flight mode|airplane mode|aeroplane mode)(?: mode)?)"
    r"|(?<=s )(?:right |completely )?off|(?<=are )off)" + _ENDS,
)
_POWER = Pattern(
    r"\b(?:switch\w*|turned (?:off|on|down)|silen\w+|mut(?:e|ed)|power\w*|vibrat\w+|flight mode)\b",
    re.IGNORECASE,
)
"""How a clause says whether an instrument is running."""
_PROGRAMME = (
    r"(?:,\s*)?(?:on|with) (?:an? |the )?(?:(?:really|very|nice|short|quick|long) )*(?:cold|cool|warm|hot"
    r"|gentle|delicates?|wool(?:len)?|silk|low|short|quick)(?:[- ]\w+)? (?:wash|cycle|programme|setting)"
    + _ENDS,
)
_HEAT = Pattern(r"\b(?:cold|cool|warm|hot|gentl\w+|degrees|delicate|programme|cycle)\b|°", re.IGNORECASE)
_WASHING = Pattern(r"\b(?:wash|launder|clean)", re.IGNORECASE)
"""How a clause says which wash something is given."""
_HOT = "(?:furnace|oven|sauna|greenhouse|hell|hades|hob|stove|desert|bakery|boiler(?: room)?|tropics)"
_COLD = "(?:charity|icebox|fridge|freezer|ice|siberia|arctic|north pole|pole|morgue|tomb|iceberg|igloo)"
_FEELS = r"(?:it(?:['’]s| is| feels) )?"
_DEGREES = Pattern(r"\d ?(?:°|degrees?\b|c\b)", re.IGNORECASE)
"""How it is told in figures how hot or cold it is, so that nothing turns on what it is like."""
_HERE = r"(?: (?:in|out|outside|up|down)? ?(?:here|there|today|outside|again|weather))*"
_WEATHERS = (
    (
        rf"{_FEELS}(?:(?:hotter|warmer) than|(?:like|as hot as)) (?:a |an |the )?{_HOT}{_HERE}",
        Pattern(r"\b(?:hot|hotter|warm|warmer|heat|temperature|degrees|thermometer)\b|°", re.IGNORECASE),
    ),
    (
        rf"{_FEELS}(?:(?:(?:colder|chillier) than|(?:like|as cold as)) (?:a |an |the )?{_COLD}"
        rf"|brass monkeys?|cold enough to freeze [\w ]+?|bitter){_HERE}",
        Pattern(r"\b(?:cold|colder|freez\w+|frost|winter|temperature|degrees)\b|°", re.IGNORECASE),
    ),
    (
        rf"(?:and )?{_FEELS}(?:blowing|howling) (?:a )?(?:gale|hooley|hoolie|hurricane|storm"
        rf"|old boots|great guns){_HERE}",
        Pattern(r"\b(?:winds?|windy|gales?|storms?|foul|weather)\b", re.IGNORECASE),
    ),
    (
        rf"(?:and )?{_FEELS}(?:bucketing|tipping|chucking|lashing|hammering|pelting|tippling|siling)"
        rf"(?: it)?(?: down)?(?: with rain)?{_HERE}",
        Pattern(r"\b(?:rain\w*|wet|foul|weather|snow\w*|storms?)\b", re.IGNORECASE),
    ),
)
"""Ways of saying how it is by what it is like, each with how a clause tells it; after or before a pause."""
_ITEMS = frozenset({"item", "items"})
_TELLING = _ITEMS | {"fact", "values", "not", "no", "without", "unless", "aspect value"}


class Loose(msgspec.Struct, frozen=True):
    """Where such words begin and end in a text, and what stands in their place."""

    start: int
    end: int
    instead: str = ""


def is_told(found: Understood, lookup: Lookup, first: int, end: int) -> bool:
    """Whether a clause on the things named has one of the unknown words from the token `first` to `end`."""
    strange = {
        found.tokens[p.first].key for p in found.pieces if p.tag == "unknown" and first <= p.first < end
    }
    return any(token.key in strange for token in tokenize(_Sought(found, lookup).texts))


def loose_words(found: Understood, lookup: Lookup) -> Iterator[Loose]:
    """The words of a text that no rule on what is named turns on, in order."""
    sought = _Sought(found, lookup)
    if not sought.kinds:
        return
    spans = (*sought.lasting(), *sought.given(), *sought.liked(), *sought.owned(), *sought.powered())
    spans += (*sought.washed(), *sought.felt(), *sought.worked_on())
    end = 0
    for span in sorted(spans, key=lambda one: (one.start, -one.end)):
        if span.start >= end:
            yield span
            end = span.end


@cache
def _compiled(written: str) -> Pattern:
    return Pattern(rf"(?:(?<![\w'’-])|(?=,))(?:{written})", re.IGNORECASE)


class _Sought:
    """The search for such words in a text that names some things."""

    def __init__(self, found: Understood, lookup: Lookup) -> None:
        self.found, self.lookup = found, lookup
        named = {entry.id for piece in found.pieces if piece.tag in _ITEMS for entry in piece.entries}
        self.kinds = {kind for item in named for kind in lookup.broader(item)}
        kin = self.kinds | named | {kind for item in named for kind in lookup.narrower(item)}
        self.rules = lookup.rules_on(kin)
        self.texts = " ".join(dict.fromkeys(lookup.clauses[rule.clause].text for rule in self.rules))

    def _matches(self, *patterns: str) -> Iterator[re.Match[str]]:
        """Where such words stand that name no thing and no fact, and that deny nothing."""
        for written in patterns:
            for match in _compiled(written).finditer(self.found.text):
                if self._is_clear(match.start(), match.end(), "not even" in match.group().casefold()):
                    yield match

    def _is_clear(self, start: int, end: int, denied: bool) -> bool:
        tokens = self.found.tokens
        inside = (
            p for p in self.found.pieces if tokens[p.first].start < end and tokens[p.last - 1].end > start
        )
        return all(p.tag not in _TELLING or (denied and p.tag == "not") for p in inside)

    def lasting(self) -> Iterator[Loose]:
        """ "For five minutes", "just this once", "even for a quick trip"."""
        facts = (self.lookup.facts[test.fact] for rule in self.rules for test in tests(rule.condition))
        if not _TIMED.search(self.texts) and not any(fact.unit in _TIMES for fact in facts):
            yield from (Loose(match.start(), match.end()) for match in self._matches(*_LASTING))

    def given(self) -> Iterator[Loose]:
        """ "That my mum gave me"; "a friend gave me a bracelet" is that one has it. Of no badge."""
        labels = {word for kind in self.kinds for word in self.lookup.items[kind].label.casefold().split()}
        if _GIFTS.search(self.texts) or labels & _INSIGNIA:
            return
        yield from (
            Loose(m.start(), m.end(), "I have")
            for m in self._matches(_GAVE)
            if _is_somebody(m["who"]) and self._names_next(m.end())
        )
        things = [self.found.tokens[p.last - 1].end for p in self.found.pieces if p.tag in _ITEMS]
        for match in self._matches(*_GIVEN):
            fits = match["when"] is None or is_one_of(match["when"].casefold(), OCCASIONS)
            if fits and things[0] <= match.start() and _is_somebody(match["who"]):
                yield Loose(match.start(), match.end())

    def _names_next(self, place: int) -> bool:
        """Whether a thing is named there: "an umbrella", "earrings"."""
        after = [p for p in self.found.pieces if self.found.tokens[p.first].start >= place]
        return bool(after) and after[0].tag in _ITEMS | {"det", "number"}

    def liked(self) -> Iterator[Loose]:
        """ "They're warm enough", "it looks smarter"."""
        words = {token.low for token in tokenize(self.texts) if len(token.low) > _STEM}
        for match in self._matches(_LIKED):
            how = match["how"].casefold()
            told = any(how.startswith(word) or word.startswith(how) for word in words)
            if how in _LIKING and not told:
                yield Loose(match.start(), match.end())

    def powered(self) -> Iterator[Loose]:
        """ "If it's off", "on silent", of what one carries, where no clause asks whether it runs."""
        if "carried" in self.kinds and not _POWER.search(self.texts):
            yield from (Loose(match.start(), match.end()) for match in self._matches(*_POWERED))

    def washed(self) -> Iterator[Loose]:
        """ "On a gentle wash", where no clause on washing it says how hot or how gently."""
        texts = dict.fromkeys(self.lookup.clauses[rule.clause].text for rule in self.rules)
        if not any(_WASHING.search(text) and _HEAT.search(text) for text in texts):
            yield from (Loose(match.start(), match.end()) for match in self._matches(*_PROGRAMME))

    def felt(self) -> Iterator[Loose]:
        """ "Hotter than a furnace here", where no clause on the thing tells how hot it is, or figures do."""
        for written, told in _WEATHERS:
            if not told.search(self.texts) or _DEGREES.search(self.found.text):
                for match in self._matches(written):
                    before, after = self.found.text[: match.start()], self.found.text[match.end() :]
                    opens = not before.strip() or before.rstrip()[-1] in ",.;:-–—"
                    if opens and after.lstrip()[:1] in ("", *",.;:-–—"):
                        yield Loose(match.start(), match.end())

    def worked_on(self) -> Iterator[Loose]:
        """ "Painting railings", "when I paint the hull": what the work is done to, which no clause tells."""
        pieces, tokens = self.found.pieces, self.found.tokens
        told = {token.key for token in tokenize(self.texts)}
        for place, piece in enumerate(pieces):
            by_verb = bool(named_activity(piece))
            if not by_verb and (piece.tag != "fact" or not tokens[piece.last - 1].low.endswith("ing")):
                continue
            if not by_verb and place and pieces[place - 1].tag not in _OPENING_WORK:
                continue  # "may I wear my welding mask"
            article = place + 1 < len(pieces) and pieces[place + 1].tag in ("det", "poss")
            at = place + 1 + article
            if at >= len(pieces) or pieces[at].tag != "unknown":
                continue
            if at + 1 < len(pieces) and pieces[at + 1].tag not in _CLOSING_WORK:
                continue
            token = tokens[pieces[at].first]
            plain = article or token.low != token.key  # one thing without an article is a kind of thing
            if plain and token.key not in told and {token.low, token.key}.isdisjoint(BEARING | WORN):
                yield Loose(tokens[piece.last].start, token.end)

    def owned(self) -> Iterator[Loose]:
        """ "At my old skipper's funeral", where no clause asks whose it is."""
        for match in self._matches(_OWNER):
            what = match["what"].casefold()
            whose = Pattern(rf"{what}s? of\b|['’]s {what}", re.IGNORECASE).search(self.texts)
            here = (p for p in self.found.pieces if self.found.tokens[p.first].start == match.end())
            facts = [self.lookup.facts[piece.fact] for piece in here if piece.tag == "fact"]
            occasion = is_one_of(what, OCCASIONS) and any(fact.family == "situation" for fact in facts)
            if occasion and not whose and _is_person(match["who"].casefold()):
                yield Loose(match.start(), match.end(), "a ")


_STEM = 3
_OPENING_WORK = frozenset({"if", "when", "be", "comma", "to", "filler", "self", "for"})
_CLOSING_WORK = frozenset(
    {"fact", "comma", "in", "on", "at", "do", "can", "may", "must", "should", "be", "with", "if"}
)


def _is_somebody(said: str) -> bool:
    words = said.casefold().split()
    return words[-1] in ("i", "we") or (len(words) > 1 and _is_person(words[-1]))


def _is_person(low: str) -> bool:
    return low in KIN | COLLEAGUES or is_one_of(low, OTHERS)
