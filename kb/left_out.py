"""Which words may be left out of a question whose thing is forbidden whatever else holds.

No circumstance can turn such an answer, so what may be left out is told by what could: another thing, another
deed, a denial, a number, somebody's leave, a place that is left, and who is no person of the books. What
stands right before the thing may say which one it is: there only colours and words of degree and wear go.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from kb.model.questions import Query, Reading, Span
from kb.reader.phrases.leads import KIN
from kb.reader.words.colours import HEADS, MODIFIERS
from kb.reader.words.everyday import OTHERS
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.strange_things import pictured
from kb.reader.words.tokens import Token, stems, tokenize
from kb.text import Pattern

_TURN = word_set("""
    no not n't never nor neither none nobody nothing except unless without instead rather but than more less
    most another other both either hardly barely scarcely too enough second third fourth fifth once twice
    off out away from outside behind past before after until till over near by between beyond against
    leave leaves leaving left finish finished finishing stop stops stopped done ended ending closed shut gone
    remove removing removed mend mending lose losing lost break broke broken breach
    granted grant grants waiver waivers exempt permission permit permits agreed approved signed allowed
    what which who whom whose how where when why whole happen happened happens changed change pass
    guest guests visitor visitors public customer customers stranger patient patients
""")
"""Words that could turn it: they deny, bound or count, tell of a place or work that is left, or of leave."""
_MERELY = word_set("it's i'm i've we've we're he's she's they're that's you've")
_BEFORE = (
    HEADS
    | MODIFIERS
    | word_set("""
    little small tiny big huge large great full old older new newer spare empty thin thick nice lovely cheap
    expensive favourite fancy cute bright dark light gold silver plain simple private personal beloved
""")
)
"""What may stand right before a thing that is forbidden altogether: it is that thing all the same."""
_LIGHTLY = word_set("""
    just still even now surely really quickly simply ever maybe perhaps today tonight tomorrow again quick
    up down in on there here along at least only also as well for moment straight directly
""")
_DEEDS = word_set("""
    take bring make keep nip pop go come run walk get have use slip wander dash stroll drive ride dance
    me us present birthday christmas
""")
"""What is done in or with it, and who gave it: "can I nip across in my scrubs", "Gran knitted me a hat"."""
_GIVING = word_set("gave bought got knitted made sent lent passed gives buys wants wanted says said thinks")
_PUT_BY = word_set(
    "put store lock drop stow hide hand sell swap wash clean dry iron throw chuck give pack hang"
)
_WITH, _MINE = word_set("in with wearing"), word_set("my our")
_KIND = word_set("that which who whose with of from made like i my he she they we mum dad")
"""What a thing is followed by where more is told of which one it is: "the ring I was married with"."""
_IT = word_set("it them that this these those")
_WHOLE = 4
"""A form with fewer letters may be no form of the word at all: "notes" is not "not"."""
_ENDS = frozenset(",.;?!-")
_LED = word_set("in on at to into near during while when for from after before under by with the my")
_SMALL = word_set("a an the my our his her their your any some one of those these that this")
_TIMES = word_set("minute minutes min mins hour hours second seconds sec secs moment")
_WHO = word_set("i'm im am as he's she's is are we're")
ASKS = word_set("""
    can can't could may might must mustn't should do don't does doesn't did am is are isn't aren't will
    would have has need
""")
SUBJECTS = word_set(
    "i we you he she they it one the a an my our his her their this that these those any anyone"
)
_SO = r"(?:(?:so|and|but|surely|honestly|really|then|i'?m sure|after all),? )*"
_FINE = (
    r"(?:,? (?:surely|right|honestly|is it|is there|isn't it"
    r"|(?:would|will|do|does|could) (?:they|he|she|you)))*"
)
_CLOSED = Pattern(
    rf"(?i)(?:^|(?<=[.,;:!?–-] )){_SO}"
    r"(?:(?:nobody|no one|no-one|none of (?:us|them|you)|not a soul)(?:'d|'ll| would| will| could| can| ever"
    r"| really)* (?:minds?|cares?|objects?|notices?|complains?|bothers?)(?: (?:about )?(?:it|that|this))?"
    r"|(?:there(?:'s| is) |there can be |where(?:'s| is) |what(?:'s| is) )?(?:no|the|any) (?:real )?harm"
    r"(?: done)?(?: in (?:it|that|this))?"
    r"|(?:(?:it|that|this|they)(?:'s| is| are|'re|'ll be| will be| wo)?(?: not|n't|n't be| not be)|not) an?"
    r" (?:problem|issue|worry)"
    r"|(?:(?:it|that|this)(?:'s| is) )?(?:all |quite |perfectly |pretty )?(?:harmless|innocent)(?: enough)?"
    r"|(?:any|no) objections?(?:,? (?:i|we) (?:hope|trust|take it))?"
    r"|(?:there(?:'s| is) )?nothing wrong (?:with|in) (?:it|that|this))"
    rf"{_FINE}\s*\?+\s*$"
)
"""That nothing speaks against it, said after a question or in place of one."""
_TURNED = Pattern(
    r"(?i)\bnever (?:ever )?(?:take|took|have|had|taken) (?:it|them|this|mine) (?:off|out)\b"
    r"|\bfor an? (?:quick |short )?(?:second|sec|moment|minute|bit|while)\b"
    r"|\b(?:switched|turned|powered) off\b|\b(?:phone|mobile|telephone)(?:'s| is) (?:switched |turned )?off\b"
    r"|\b(?:loom|engine|machine|motor|saw|mower|pump|power|lathe|drill|mixer|slicer|oven|heating)s?"
    r"(?:'s|'re| is| are| was| were) (?:all |still )?off\b"
    r"|\boff (?:down |over |out |up |back |round )?to(?= (?:the|my|our|a)\b)"
    r"|\bleav(?:e|ing) (?:it|them|this|these|mine) (?:in|on)(?=\s*[.,;?!]|\s*$| (?:on|at|during|while|when|if"
    r"|for|with|under)\b)"
    r"|\bafter (?:(?:my|the|our|his|her) )?(?:shift|work|hours|duty|school|lunch|dinner|tea|breakfast"
    r"|class|lessons|practice|rehearsal|training)\b"
    r"|\b(?:i|we|shift|work|it)(?:'d|'ve| has| had| was)? (?:finished|ended|knocked off|clocked off|over"
    r"|done)(?: (?:early|late))?(?: at \w+(?: o'?clock)?)?(?=,? and\b|\s*[.,;])"
    r"|\b(?:it'?s|they'?re|it is|they are|that'?s|its) (?:just|only)\b"
)
"""Words that turn something elsewhere, in a phrase that turns nothing: how long, how a telephone is, that one
goes somewhere, and that what is worn stays on."""
_MARKED = word_set("sticker badge pin patch transfer decal brooch sock socks mug")
"""What may have a picture or a name on it, which is then said before it: a unicorn sticker."""
_PICTURED = word_set("dinosaur rocket robot pirate fairy princess train tractor football daisy sun moon")
_TRINKETS = word_set("bracelet bangle anklet necklace chain choker ring earring pendant locket")
_OF_TRINKETS = word_set("""
    friendship festival charm beaded woven plaited leather string rope cord silicone rubber plastic wooden
    lucky vintage antique pearl diamond ruby coral amber jade shell engagement eternity
""")
"""What trinkets are made of or given for: they are trinkets all the same."""


def idle_places(text: str, tokens: Sequence[Token]) -> frozenset[int]:
    """The places of words that stand in a phrase that turns nothing, whatever they are elsewhere."""
    plain = text.replace("\u2019", "'")
    spans = [match.span() for pattern in (_CLOSED, _TURNED) for match in pattern.finditer(plain)]
    return frozenset(
        place for place, token in enumerate(tokens) if any(a <= token.start < b for a, b in spans)
    )


def frees_nothing(reading: Reading, gone: Sequence[str]) -> bool:
    """Whether none of these words can make of a thing that is forbidden one that is not."""
    tokens = tokenize(reading.question)
    things = [span for span in reading.spans if span.role == "item"]
    idle = idle_places(reading.question, tokens)
    places = tuple(place for place in places_of(tokens, gone) if place not in idle)
    if things and not places:
        return bool(gone)
    if not things or not places:
        return False
    asking = asking_part(reading.question, tokens)
    return all(
        _is_idle(tokens, place, set(places))
        and _is_not_it(tokens, place, set(places), asking, reading.spans, things)
        for place in places
    )


def _is_at_another_time(reading: Reading, gone: Sequence[str]) -> bool:
    """ "Until the games", "after chapel": what was read as so is not so then; a thing comes off before it."""
    tokens = tokenize(reading.question)
    places = set(places_of(tokens, gone))
    off = any(token.low in ("off", "out", "remove") for token in tokens)
    times = {"until", "till", "after", "following", "" if off else "before"}
    return any(tokens[place].low in times and not {place + 1, place + 2} & places for place in places)


def is_of_another(reading: Reading, query: Query, gone: Sequence[str]) -> bool:
    """Whether a value is of what was not read, "gilt buttons", or only told: "it's grey, may I bleach it".

    Or whether it is at another time that it is asked of: "until the games".
    """
    return _is_at_another_time(reading, gone) or (
        query.value is not None
        and (
            _acts_on_it(reading.question, gone)
            or any(
                one.role in ("aspect", "measure")
                and other.role == "unknown"
                and reading.question[one.end : other.start].isspace()
                for one, other in pairwise(reading.spans)
            )
        )
    )


def describes_it(reading: Reading, gone: Sequence[str]) -> bool:
    """Whether one of these words tells which thing is meant, in what is said right after it."""
    tokens = tokenize(reading.question)
    return any(
        _describes(tokens, place, span, reading.spans)
        for place in places_of(tokens, gone)
        for span in reading.spans
        if span.role == "item"
    )


def _acts_on_it(text: str, gone: Sequence[str]) -> bool:
    """Whether one of these words is what is to be done with "it": "may I bleach it"."""
    tokens = tokenize(text)
    return any(
        tokens[place - 2].low in ASKS
        and tokens[place - 1].low in SUBJECTS
        and any(token.low in _IT for token in tokens[place + 1 : place + 3])
        for place in places_of(tokens, gone)
        if place > 1
    )


def _is_idle(tokens: Sequence[Token], place: int, gone: set[int]) -> bool:
    """Whether a word turns, bounds and counts nothing."""
    token = tokens[place]
    forms = {token.low, *stems(token.low)}
    after = tokens[place + 1].low if place + 1 < len(tokens) else ""
    before = tokens[place - 1].low if place else ""
    if any(char.isdigit() for char in token.low) or not forms.isdisjoint(NUMBER_WORDS):
        return after in _TIMES and place + 1 in gone
    if token.low in ("least", "most"):
        return before == "at"
    if token.low == "only":
        return before in _MERELY or (before in ("have", "is", "am", "'s", "'ve", "'m"))
    asks = before == "n't" and (place < 3 or tokens[place - 3].low in _ENDS)  # "aren't small ones fine"
    if before in ("no", "not", "n't", "never", "without") and not asks:
        return False
    return token.low not in _TURN and not any(len(form) >= _WHOLE and form in _TURN for form in forms)


def _is_not_it(
    tokens: Sequence[Token],
    place: int,
    gone: set[int],
    asking: tuple[int, int],
    spans: Sequence[Span],
    things: Sequence[Span],
) -> bool:
    """Whether a word names neither what is asked about, nor who asks, nor what is done with it."""
    token = tokens[place]
    if any(_touches(tokens, place, gone, span) for span in spans if span.role in ("grade", "fact")):
        return token.low in _LIGHTLY
    if any(_describes(tokens, place, span, spans) for span in things):
        return False
    if (led := next((s for s in things if _leads_to(tokens, place, gone, s)), None)) is not None:
        return token.low in _BEFORE or _is_on_it(tokens, place, led)
    if any(_follows(tokens, place, span) for span in things):
        return token.low in _LIGHTLY
    first, last = asking
    if not first <= place < last:
        return not _is_who(tokens, place)
    start = min((span.start for span in things if span.start >= tokens[first].start), default=None)
    if start is None or token.start > start:
        return True
    if token.low in KIN:
        return place + 1 < len(tokens) and tokens[place + 1].low in _GIVING  # else who is to wear it
    if token.low in _LIGHTLY or token.low in _DEEDS or token.low in _GIVING or token.low in _TIMES:
        return True
    if place > 1 and tokens[place - 2].low == "for" and tokens[place - 1].low in _SMALL:
        return True  # "for a pint"
    at = _place_of(tokens, start)
    worn = at > 1 and tokens[at - 1].low in _MINE and tokens[at - 2].low in _WITH
    return worn and token.low not in _PUT_BY


def _is_on_it(tokens: Sequence[Token], place: int, span: Span) -> bool:
    """ "A unicorn sticker": whether a word says what is to be seen on a thing, whatever that is."""
    head = tokens[_place_of(tokens, span.end) - 1].low
    forms = {tokens[place].low, *stems(tokens[place].low)}
    if head.removesuffix("s") in _TRINKETS and tokens[place].low in _OF_TRINKETS:
        return True
    return head.removesuffix("s") in _MARKED and not forms.isdisjoint(OTHERS | _PICTURED | pictured())


def _place_of(tokens: Sequence[Token], start: int) -> int:
    return next((i for i, token in enumerate(tokens) if token.start >= start), len(tokens))


def _leads_to(tokens: Sequence[Token], place: int, gone: set[int], span: Span) -> bool:
    """Whether only words that are left out as well stand between a word and a name."""
    end = _place_of(tokens, span.start)
    return place < end and all(i in gone for i in range(place, end))


def _touches(tokens: Sequence[Token], place: int, gone: set[int], span: Span) -> bool:
    """Whether a word stands beside the name of a rank or circumstance and may make another of it.

    What begins with its own small word is not another one for what goes before: "a pint on the way home".
    """
    led = tokens[_place_of(tokens, span.start)].low in _LED
    return (not led and _leads_to(tokens, place, gone, span)) or _follows(tokens, place, span)


def _describes(tokens: Sequence[Token], place: int, span: Span, spans: Sequence[Span]) -> bool:
    """Whether a word stands in what is said of a thing right after it, up to a comma or a circumstance."""
    after = next((i for i, token in enumerate(tokens) if token.start >= span.end), len(tokens))
    if not after < len(tokens) or tokens[after].low not in _KIND or place < after:
        return False
    return not any(
        token.low in _ENDS or any(one.start <= token.start < one.end for one in spans if one.role == "fact")
        for token in tokens[after:place]
    )


def _follows(tokens: Sequence[Token], place: int, span: Span) -> bool:
    return place > 0 and tokens[place - 1].start < span.end <= tokens[place].start


def _is_who(tokens: Sequence[Token], place: int) -> bool:
    """ "I'm a guest": who asks may be nobody whom the books bind."""
    i = place - 1
    while i >= 0 and tokens[i].low in _SMALL:
        i -= 1
    return i >= 0 and i < place - 1 and tokens[i].low in _WHO


def places_of(tokens: tuple[Token, ...], words: Sequence[str]) -> Iterator[int]:
    said = {low for word in words for low in (token.low for token in tokenize(word))}
    return (place for place, token in enumerate(tokens) if token.low in said)


def asking_part(text: str, tokens: tuple[Token, ...]) -> tuple[int, int]:
    """The places of the last part of the text that asks: from "can I" to the end of its sentence."""
    starts = (*sentence_starts(text, tokens), len(tokens))
    for first, last in reversed(tuple(pairwise(starts))):
        if last - first < 3 and first:
            continue  # "Allowed?", "is it?" asks what was said before it
        for place in range(first, last - 1):
            opens = place == first or tokens[place - 1].low in (",", "-", "so", "and", "but")
            if opens and tokens[place].low in ASKS and tokens[place + 1].low in SUBJECTS:
                return place, last
        return first, last
    return 0, len(tokens)
