"""What a question asks for, and whether a sentence of a clause tells it: somebody, a distance, a date."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.model.lookup import Lookup
from kb.model.records import Clause
from kb.reader.recast.asking import asking_part
from kb.reader.recast.folk import names_of_people
from kb.reader.recast.telling import SOMEBODY, TIME, analysed, tells, word_level
from kb.reader.words.colours import HEADS
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_PART = r"(?:side|arm|hand|hip|shoulder|sleeve|breast|pocket|wrist|ear|finger|leg|foot|lapel|collar|cuff|eye)"
_DAY = r"(?:mon|tues|wednes|thurs|fri|satur|sun)days?"
_NAMED = r"(?:january|february|march|april|may|june|july|august|september|october|november|december)"
_MONTH = rf"{_NAMED}(?= \d|\b[^ ])"
_LONG = r"(?:mm|cm|m|km|metres?|meters?|yards?|miles?|inch(?:es)?|in|feet|ft)"
_MEASURE = rf"\b\d+(?:\.\d+)? ?{_LONG}\b|\d ?(?:in|mm)\b"
_SIZES = {
    "wide": (
        r"wide|broad",
        r"widest|narrowest|broadest",
        r"width|breadth",
        r"wide|width|broad|breadth|across",
    ),
    "high": (r"high|tall", r"highest|tallest|lowest", r"height", r"high|tall|height|above|below|over|under"),
    "deep": (r"deep", r"deepest", r"depth", r"deep|depth"),
    "long": (r"longer", r"longest|shortest", r"length", r"long|longer|length|shorter"),
    "thick": (r"thick", r"thickest|thinnest", r"thickness", r"thick|thickness"),
}
"""For each way of measuring a thing: how it is asked, in superlatives, by a noun; how it is told."""
_MOST = r"\b(?:what|which)(?: 's| is| are| was| were)? the (?:very )?"
_SIZE_ASKED = tuple(
    (kind, Pattern(rf"\bhow (?:{how})\b|{_MOST}(?:{most})\b|\b(?:what|which) (?:{noun})\b"))
    for kind, (how, most, noun, _) in _SIZES.items()
)
_KINDS = (
    ("who", Pattern(r"\b(?:who|whom|whose)\b")),
    ("cost", Pattern(
        r"\bwhat\b.*\b(?:cost|price|fee|charge)\b|\bhow much\b(?:.*\b(?:cost|pay|owe|charge)\b|(?: is it)?$)"
    )),
    ("until", Pattern(r"\b(?:till|until|til|up to) (?:when|what (?:day|date|time))\b")),
    ("often", Pattern(r"\bhow (?:often|frequently|many times)\b")),
    ("", Pattern(r"\bhow long (?:(?:is|are|was) (?:it|they|that)|.*\bbe)$|\b(?:since|from) when\b")),
    ("time", Pattern(
        r"\bhow (?:long|soon|late|early|quickly|fast|old)\b|\bwithin what\b"
        r"|\bhow many (?:minutes|hours|days|weeks|months|years)\b"
    )),
    ("warmth", Pattern(
        r"\bhow (?:warm|hot|cold|cool|chilly)\b|\b(?:what|which) temperature\b|\bhow many degrees\b"
    )),
    ("strong", Pattern(r"\bhow strong\b|\b(?:what|which) speed\b")),
    ("far", Pattern(
        r"\bhow (?:far|close|near)\b|\b(?:what|which) distance\b"
        r"|\bhow many (?:metres|meters|yards|feet|inches|miles|kilomet(?:re|er)s|mm|cm|km|m)\b"
    )),
    *_SIZE_ASKED,
    ("number", Pattern(r"\bhow (?:many|much)\b")),
    ("name", Pattern(
        r"\b(?:what|which) grade (?:is|are|was) (?:that|this|it|he|she|they|called|known|meant|nicknamed)\b"
        r"|\bwhat (?:is|are) (?:\S+ ){1,4}(?:called|nicknamed)\b|\bwhat (?:do|does) (?:\w+ ){1,2}call\b"
        r"|\bnick-?name"
    )),
    ("date", Pattern(r"\b(?:what|which) (?:days?|dates?|months?|years?)\b")),
    ("when", Pattern(r"\bwhen\b|\b(?:what|which) time\b")),
    ("measure", Pattern(r"\bhow (?:big|large)\b|\b(?:what|which) (?:size|diameter)\b")),
    ("colour", Pattern(r"\b(?:what|which) colou?rs?\b")),
    ("side", Pattern(rf"\b(?:what|which) {_PART}\b")),
    ("where", Pattern(r"\bwhere\b")),
)  # fmt: skip
_WHEN = (
    rf"\b(?:when|while|until|before|after|within|each|every|whenever|during|at once)\b|\b{_DAY}\b"
    rf"|\b{_MONTH}|\b\d\d?[:.]\d\d\b|\b(?:sunrise|sunset|noon|midday|midnight|dark|dusk|dawn)\b"
    r"|\bat the (?:start|end|beginning)\b|\bonce\b"
)
_TOLD_BY = {
    "cost": Pattern(
        r"\b(?:free|costs?|pays?|paid|charged|price|expense|buys?|bought|crowns?|pounds?|fees?)\b"
    ),
    "until": Pattern(
        r"\b(?:until|till|lapses?|expires?|not after|no later than|at the latest|to the (?:last|end))\b"
    ),
    "often": Pattern(
        r"\b(?:each|every|whenever|between(?! \S+(?: \S+)? and\b)|daily|weekly|monthly|yearly|quarterly|once|"
        r"twice)\b"
        rf"|\b{_DAY}\b|\bat the (?:start|end) of\b"
    ),
    "time": TIME,
    "warmth": Pattern(r"\d ?(?:°|degrees)|\b(?:freezing|frost)\b"),
    "strong": Pattern(r"\d (?:km/h|kph|mph|knots|m/s)\b|\bforce \d"),
    "far": Pattern(rf"(?:{_MEASURE})"),
    "date": Pattern(rf"\b{_DAY}\b|\b\d\d? {_NAMED}|\b{_NAMED} \d|\b(?:19|20)\d\d\b"),
    "when": Pattern(_WHEN),
    "measure": Pattern(rf"{_MEASURE}|\d degrees\b"),
    "name": Pattern(r"\([“\"‘'][^”\"’']+[”\"’']\)|\b(?:called|known as|nicknamed?)\b"),
    "side": Pattern(r"\b(?:left|right|both|either)\b"),
    "where": Pattern(r"\b(?:at|to|in|on|across|from|inside|behind|by) (?:the|an?) "),
}
_SIZED = {kind: Pattern(rf"\b(?:{told})\b") for kind, (_, _, _, told) in _SIZES.items()}
SURE = frozenset({"who", "time", "warmth", "strong", "far", "number", "name", "date", "measure", *_SIZES})
"""What a sentence tells or does not, so that a clause that does not is no rival of one that does."""
SAID = {
    "name": word_set("call called known nickname name mean"),
    "number": word_set("run amount come"),
    "time": word_set("minute hour day week month year old"),
    "warmth": word_set("warm hot cold cool chilly temperature degree"),
    "far": word_set("distance metre meter yard foot inch mile millimetre centimetre kilometre close near"),
    "date": word_set("day date month year begin start end"),
    "strong": word_set("strong speed"),
    "when": word_set("day date time"),
    "measure": word_set("size diameter big large"),
} | {
    kind: word_set(f"{' '.join(words).replace('|', ' ')} sit stand hang reach")
    for kind, words in _SIZES.items()
}
"""Words that weigh nothing beside what they ask for."""
_TITLE = Pattern(r"\b[Tt]he (?:[A-Z]\w+ )+(?:of (?:the )?)?[A-Z]\w+")
_SENTENCE = Pattern(r"(?<=[.;:]) ")
_GOES_ON = Pattern(r"(?:It|Its|They|Their|Each|Both|One|This|These) ")
_IN_PART = Pattern(r"(?i)\bin (?:clause )?\d|\bsentences?\b|\bbecomes?\b|\badd(?:ed)?\b")
_COUNTED = 5
"""How many words after a number what it counts may stand."""


def kind_asked(said: str) -> str:
    """What the words of a question ask for; "noun" where these say it, "" for what nothing tells for sure."""
    return next((kind for kind, pattern in _KINDS if pattern.search(said)), "noun")


def kind_of(text: str) -> str:
    """What a question asks for by the first words of what asks."""
    tokens = tokenize(text)
    asking = asking_part(text, tokens)
    lows = [token.low for token in tokens] if asking is None else asking.lows
    return kind_asked(" ".join(lows[:_OPENING]))


def tells_kind(clause: Clause, kind: str, lookup: Lookup) -> bool:
    """Whether a clause tells something of a kind that no clause tells by chance: somebody, a time, a date."""
    if kind == "number":
        return tells(clause, kind, lookup)
    told = kind in SURE | _SURER
    return told and any(is_told(kind, sentence, lookup) for sentence in with_its_subject(clause))


_OPENING = 5
_SURER = frozenset({"until", "often", "cost", "side", "colour"})


def sentences_with(lemmas: Sequence[str], clause: Clause) -> Iterator[str]:
    """The sentences of a clause that have one of some words; all of them where there are none."""
    for sentence in _SENTENCE.split(clause.text):
        words = analysed(sentence)
        if not lemmas or any(word_level(lemma, words) for lemma in lemmas):
            yield sentence


def with_its_subject(clause: Clause) -> Iterator[str]:
    """The sentences of a clause, with the one before where they go on from it: "It is 5 in long."."""
    before = ""
    for sentence in _SENTENCE.split(clause.text):
        before = f"{before} {sentence}".strip() if _GOES_ON.match(sentence) else sentence
        yield before


def amended(clause: Clause, lookup: Lookup) -> tuple[Clause, ...]:
    """The clauses that a clause stands in place of but changes in part alone: they are read with it."""
    if not clause.replaces or _IN_PART.search(clause.text) is None:
        return ()
    return tuple(lookup.clauses[one] for one in clause.replaces)


def is_counted(core: Sequence[str], sentence: str) -> bool:
    """Whether a number stands before what is counted: "not more than four plain grips"."""
    words = [word.strip(".,;:()") for word in sentence.casefold().split()]
    return any(
        word_level(lemma, analysed(after))
        for place, word in enumerate(words)
        if word.isdigit() or word in NUMBER_WORDS
        for after in words[place + 1 : place + _COUNTED]
        for lemma in core
    )


def is_called(lemmas: Sequence[str], sentence: str) -> bool:
    """Whether a sentence gives a thing a name, or says whose name it is: 'L1 Line Trainee ("pebble")'."""
    words = analysed(sentence)
    return all(lemma in words for lemma in lemmas) and _TOLD_BY["name"].search(sentence) is not None


def is_told(kind: str, sentence: str, lookup: Lookup) -> bool:
    """Whether a sentence tells what is asked for."""
    if kind == "who":
        said = analysed(sentence)
        text = f" {' '.join(said)} "
        names = (" ".join(analysed(name)) for name in names_of_people(lookup))
        titled = not SOMEBODY.isdisjoint(said) or _TITLE.search(sentence) is not None
        return titled or any(name and f" {name} " in text for name in names)
    low = sentence.casefold()
    if kind == "colour":
        return not HEADS.isdisjoint(word.strip(".,;:()") for word in low.split())
    if kind in _SIZED:
        return _SIZED[kind].search(low) is not None and _TOLD_BY["measure"].search(low) is not None
    return kind == "noun" or (kind in _TOLD_BY and _TOLD_BY[kind].search(low) is not None)
