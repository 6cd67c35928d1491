"""Everyday words as what the books have of it: "in the canteen" is indoors, a drummer plays an instrument.

Read only for a text that is not understood as it stands; the names are those of the books that are loaded.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cache

from kb.model.lookup import Lookup
from kb.model.months import MONTHS
from kb.model.records import Fact, FactValue
from kb.reader.names.lexicon import CREDENTIALS
from kb.reader.phrases.english import CREDENTIAL_NOUNS
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.places import indoors_fact
from kb.reader.words.tokens import tokenize, word_key
from kb.text import Pattern
from kb.wording.surroundings import OPEN_AIR, ROOMS

Edit = tuple[int, int, str]
_OWN = r"(?:(?:the|a|an|my|our|your|his|her|their|this|that|some|somebody's|someone's) )?"
_FROST = (
    r"(?:in|during|under|on) (?:(?:a|the) )?(?:(?:hard|sharp|heavy|severe|deep|bitter|night|slight|light) )?"
    r"(?:frosts?|frosty (?:weather|conditions|mornings?|days?|nights?)|(?:sub-?zero|freezing|minus|negative) "
    r"(?:temperatures?|weather|conditions))\b|"
    r"(?:below|under|beneath) (?:freezing(?: point)?|zero)(?: degrees)?\b|sub-?zero\b|"
    r"(?<=it is )(?:freezing|frosty)\b|(?<=it's )(?:freezing|frosty)\b|(?<=it’s )(?:freezing|frosty)\b|"
    r"(?:when|if|while) there(?:'s| is) (?:a )?frost\b"
)
_PLAYERS = """
flute: flautist flutist fluter
clarinet: clarinettist clarinetist
horn: hornist
drum: drummer
drums: drummer
bugle: bugler
trumpet: trumpeter
cornet: cornetist cornettist
trombone: trombonist
saxophone: saxophonist
sax:
oboe: oboist
bassoon: bassoonist
fife: fifer
pipes: piper
bagpipes: bagpiper
violin: violinist
fiddle: fiddler
percussion: percussionist
organ: organist
piano: pianist
cello: cellist
harp: harpist
viola: violist violaist
double bass: bassist
timpani: timpanist
keyboards: keyboardist
guitar: guitarist
tuba:
euphonium:
piccolo:
cymbals:
triangle:
glockenspiel:
xylophone:
accordion: accordionist
recorder:
tenor horn:
french horn:
bass drum:
side drum:
snare drum:
kettle drum:
"""
"""Instruments, each with those who play it."""
INSTRUMENTS = {
    name: tuple(players.split())
    for name, _, players in (x.partition(":") for x in _PLAYERS.strip().splitlines())
}
_PARTS = """
chest breast breasts torso arm arms sleeve sleeves wrist shoulder shoulders front back neck head leg legs
forearm upper_arm body person
"""
_DONE = r"(?:passed|completed|finished|done|got through|sat and passed|got my results for)"
_COURSE = r"(?:exam|examination|test|course|assessment|training|qualification|certificate|ticket|module)"


def implied(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' name of each such stretch of a text."""
    ways: tuple[Callable[[Understood, Lookup], Iterator[Edit]], ...] = (
        _within, _called_out, _freezing, _playing, _day_for, _owners_differ, _qualified, _lately, _part_asked,
        _consisting, _distance, _day_of_a_month,
    )  # fmt: skip
    for way in ways:
        yield from way(found, lookup)


@cache
def _compiled(source: str) -> Pattern:
    return Pattern(source, re.IGNORECASE)


def _any_of(words: str) -> str:
    return "|".join(word.replace("_", " ") for word in words.split())


def _is_said(found: Understood, start: int, end: int) -> bool:
    """Whether names of the books explain all words of weight between two places of the text."""
    tags = ("unknown", "filler", "values")  # "values": what may be of several, "the drill hall"
    unknown = [p for p in found.pieces if p.tag in tags and p.last - p.first == 1]
    spans = [(found.tokens[p.first].start, found.tokens[p.last - 1].end) for p in unknown]
    return not any(start <= first and last <= end for first, last in spans)


def _within(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "In the canteen", "inside the town hall", where the books know whether one is indoors."""
    if indoors_fact(lookup) is None:
        return
    kinds = ((ROOMS, "in|inside|within|at", "indoors"), (OPEN_AIR, "in|on|across", "outdoors"))
    for rooms, leading, meant in kinds:
        pattern = _compiled(rf"\b(?:{leading}) {_OWN}(?:[a-z-]+ )?(?:{_any_of(rooms)})\b(?!'|’|-| \w+ing\b)")
        for match in pattern.finditer(found.text):
            if not _is_said(found, match.start(), match.end()):
                yield match.start(), match.end(), meant


def _freezing(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "In frost", where the books measure one temperature."""
    units = [fact.unit for fact in lookup.base.facts if fact.kind == "quantity"]
    point = {"Cel": "0 °C", "[degF]": "32 °F"}
    measured = [point[unit] for unit in units if unit in point]
    told = {piece.fact for piece in found.pieces if piece.tag == "fact"}
    if any(fact in told and lookup.facts[fact].unit in point for fact in told):
        return  # "it's freezing, about 2 degrees"
    if len(measured) == 1:
        for match in _compiled(rf"\b(?:{_FROST})").finditer(found.text):
            yield match.start(), match.end(), f"below {measured[0]}"


_EMERGENCIES = frozenset({"incident", "fireground", "emergency"})


def _called_out(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Turn up to the fire", where one value of the books is at an incident or a fire by its name."""
    values = [
        v for f in lookup.base.facts if f.family == "situation" and f.kind == "choice" for v in f.values
    ]
    meant = [value.label for value in values if _is_emergency((value.label, *value.other_labels))]
    if len(meant) != 1:
        return
    fire = r"(?:(?:house|barn|car|kitchen|forest|gorse|big|small|real) )?(?:fire|blaze|shout|call-?out)"
    pattern = _compiled(rf"\b(?:to|at|on|attending|fighting) (?:a|the|that|this) {fire}\b(?! \w+ing\b)")
    for match in pattern.finditer(found.text):
        if not _is_said(found, match.start(), match.end()):
            yield match.start(), match.end(), meant[0]


def _is_emergency(names: tuple[str, ...]) -> bool:
    keys = [[token.key for token in tokenize(name)] for name in names]
    return any(words[-1] == "fire" or not _EMERGENCIES.isdisjoint(words) for words in keys)


def _day_for(found: Understood, _: Lookup) -> Iterator[Edit]:
    """ "Is 5 November a good day for a pin" is whether it is allowed on that day."""
    day = rf"(?:the )?\d{{1,2}}(?:st|nd|rd|th)?(?: of)? (?:{'|'.join(MONTHS)})(?: \d{{4}})?"
    asked = _compiled(
        rf"(?P<verb>is|was|will|would) (?P<day>{day})(?P<past> have been| be)? (?:a|an|the) (?:[a-z]+ )?"
        r"(?:day|date|time) (?:for|to (?:wear|carry|have|put on))(?: wearing)? (?P<what>.+?)\W*"
    ).fullmatch(found.text.strip())
    if asked is not None:
        past = asked["verb"].lower() == "was" or asked["past"] == " have been"
        yield 0, len(found.text), f"{'Was' if past else 'Is'} {asked['what']} allowed on {asked['day']}?"


def _owners_differ(found: Understood, _: Lookup) -> Iterator[Edit]:
    """ "A firefighter's helmet and an officer's" differ as the helmet of the one and of the other."""
    said = found.text
    if _compiled(r"\b(?:differ|compare|distinguish)").search(said) is None:
        return
    owner = r"(?:(?:an?|the|every|each) )?([\w -]{1,40}?)['’]s?"
    joined = (
        r"(?:and|or|from|with|to|than|versus|vs|differs? from|(?:is |are )?different (?:from|to)"
        r"|compared (?:to|with))"
    )
    pattern = _compiled(
        rf"(?:.*?\b(?:between|compare|compared|does|do|is|are|distinguishes) |){owner} ([a-z]+(?: [a-z]+)?)"
        rf"(?: rules?)?,? {joined} {owner}(?: \2)?(?P<tail>|,? (?:in|on|at|when|while|during) .+?)\W*"
    )
    match = pattern.fullmatch(said.strip())
    if match is not None:
        one, what, other = match.group(1), match.group(2), match.group(3)
        sides = f"the {what} of a {one} and of a {other}{match['tail']}"
        yield 0, len(said), f"What is the difference between {sides}?"


def _playing(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "A drummer", "who plays the horn", where the books ask for the instrument."""
    fact = next((fact for fact in lookup.base.facts if _asks_instrument(fact)), None)
    if fact is None:
        return
    for instrument, players in INSTRUMENTS.items():
        name = _name_of(instrument, fact)
        if name is None:
            continue
        them = "|".join([f"{instrument}[ -]players?", *(f"{player}s?" for player in players)])
        said = f"with {name},"
        for match in _compiled(rf"\b(?:a |an |the |our |your |all )?(?:{them})\b").finditer(found.text):
            if not _is_said(found, match.start(), match.end()):
                subject = (
                    found.text[: match.start()].strip().lower().endswith(("'m", "am", "is", "are", "as"))
                )
                yield match.start(), match.end(), said[:-1] if subject else f"someone {said[:-1]}"
        for match in _compiled(rf"(?<=[a-z] )on (?:the |an? )?{instrument}\b").finditer(found.text):
            if not _is_said(found, match.start(), match.end()):
                yield match.start(), match.end(), said[:-1]  # "a bandsman on the cornet"
        plays = r"plays?|beats?|bangs?|blows?|toots?"
        does = rf"(?:who |that )?(?:{plays}|is playing|are playing|'m playing|’m playing|am playing)"
        played = rf"(?:\b(?:i|we|he|she|they) |\b)?{does} (?:the |an? |my )?{instrument}\b"
        for match in _compiled(played).finditer(found.text):
            yield match.start(), match.end(), said[:-1]


def _asks_instrument(fact: Fact) -> bool:
    return fact.kind == "choice" and any(
        word_key(name.lower().split()[-1]) == "instrument" for name in (fact.label, *fact.other_labels)
    )


def _name_of(instrument: str, fact: Fact) -> str | None:
    """The name of the value for an instrument: its own, or that for all others."""
    last = word_key(instrument.split()[-1])
    own = next((v for v in fact.values if word_key(v.label.lower().split()[-1]) == last), None)
    named = own or next((v for v in fact.values if _is_rest(v)), None)
    if named is None:
        return None
    return f"{fact.label} {named.label}" if own else named.label


def _is_rest(value: FactValue) -> bool:
    return value.label.lower().split()[0] in ("another", "other", "any")


def _qualified(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "I passed my first-aid exam", where there is one credential with the word in its name."""
    lately = r"(?:\bhave |\bhas |['’]ve |['’]s )?(?:\b(?:just|now|finally|recently|also) )?\b"
    pattern = rf"{lately}{_DONE} {_OWN}([\w' -]{{1,40}}?) {_COURSE}\b"
    for match in _compiled(pattern).finditer(found.text):
        words = {token.key for token in tokenize(match.group(1)) if token.low != "-"}
        held = [fact for fact in lookup.base.facts if fact.family in CREDENTIALS and words <= _words(fact)]
        if len(held) == 1:
            yield match.start(), match.end(), f" hold the {held[0].label}"


def _lately(found: Understood, _: Lookup) -> Iterator[Edit]:
    """ "I have just qualified as a diver" is that I have."""
    doing = r"(?:qualified|been (?:appointed|made|promoted|awarded|given)|become|got|earned|joined)"
    pattern = rf"(?<=have )(?:just|only just|recently|finally|now|newly) (?={doing}\b)"
    for match in _compiled(pattern + "|" + pattern.replace("have ", "'ve ")).finditer(found.text):
        yield match.start(), match.end(), ""


def _words(fact: Fact) -> frozenset[str]:
    names = (fact.label, *fact.other_labels)
    keys = {token.key for name in names for token in tokenize(name)} - CREDENTIAL_NOUNS
    return frozenset(keys | {key + "ing" for key in keys} | {key.removesuffix("er") + "ing" for key in keys})


def _part_asked(found: Understood, _: Lookup) -> Iterator[Edit]:
    """ "Whereabouts on the chest does it go": the place is what is asked."""
    parts = _any_of(_PARTS)
    pattern = (
        r"\b(?P<where>where(?:abouts)?(?: exactly)?|(?:on |at )?(?:which|what) (?:side|part))"
        rf" (?:on|of|along|across|up) {_OWN}(?:{parts})(?= (?:do|does|should|must|is|are|may|can)\b)"
    )
    for match in _compiled(pattern).finditer(found.text):
        yield match.end("where"), match.end(), ""


def _distance(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "How far is it above the pocket", where a rule places something by a pocket: where it is."""
    relation, verb = r"(?:above|below|over|under|beneath|from|off)", r"(?:is|are|does|do|must|should)"
    worn = r"(?: (?:be|sit|sits|go|goes|worn|placed|fixed|pinned|sewn|come|hang))*"
    name, tail = rf"{_OWN}(?P<it>[\w' -]{{2,40}}?)", r"(?P<tail>,? (?:in|on|for|when|with) .+?)?\W*"
    mark = rf"{_OWN}(?P<mark>(?!\d)[\w -]{{2,30}}?)"
    ways = (
        rf"how far {verb} {name}{worn} {relation} {mark}{tail}",
        rf"how far {relation} {mark} {verb} {name}{worn}{tail}",
    )
    asked = next((m for way in ways if (m := _compiled(way).fullmatch(found.text.strip()))), None)
    if asked is None or tokenize(asked["mark"])[-1].key not in _marks(found, lookup):
        return
    yield 0, len(found.text), f"Where must the {asked['it']} be worn{asked['tail'] or ''}?"


def _marks(found: Understood, lookup: Lookup) -> set[str]:
    """The nouns by which rules place what is named at a distance."""
    named = {entry.id for piece in found.pieces for entry in piece.entries if entry.kind == "item"}
    rules = lookup.rules_on(named)
    places = [place for rule in rules for place in rule.value.positions if place.offset]
    said = [lookup.items[place.feature].label for place in places if place.feature in lookup.items]
    datums = [place.offset.datum for place in places if place.offset and place.offset.datum]
    said += [text for datum in datums for text in (datum.measured_from, datum.measured_to) if text]
    return {token.key for text in said for token in tokenize(text)}


def _consisting(found: Understood, _: Lookup) -> Iterator[Edit]:
    """ "What does cadet dress include?" is what it consists of."""
    pattern = r"(?<=[a-z] )(?:include|contain|entail|involve)(?=\W*$)"
    if found.text.lower().startswith(("what does ", "what do ")):
        for match in _compiled(pattern).finditer(found.text):
            yield match.start(), match.end(), "consist of"


_WEATHERS = {"rainy": "rain", "wet": "rain", "snowy": "snow", "foggy": "fog", "misty": "fog"}


def _day_of_a_month(found: Understood, _: Lookup) -> Iterator[Edit]:
    """ "One sweltering day in July 2024" is in July 2024; "years ago, in 2019" is in 2019."""
    when = rf"(?:(?:early |late |mid-)?(?:{'|'.join(MONTHS)})|(?:19|20)\d\d)\b"
    days = "day|morning|afternoon|evening|night|week|(?:mon|tues|wednes|thurs|fri|satur|sun)day"
    some = rf"(?:on )?(?:one|a|an|some) (?P<how>(?:[a-z]+,? ){{0,2}}?)(?:{days})"
    ago = r"(?:(?:many |some |a few |long )?years ago|ages ago|a while ago|a while back|long ago|back)"
    for before in (some, ago):
        source = rf"\b{before},? (?:back )?(?=in {when})"
        for match in _compiled(source).finditer(found.text):
            how = match.groupdict().get("how") or ""
            weather = [noun for adjective, noun in _WEATHERS.items() if adjective in how.casefold().split()]
            yield match.start(), match.end(), "".join(f"in {noun}, " for noun in weather)
    deep = (
        r"(?:the (?:middle|height|depths?|dead|heart|thick|midst|start|beginning|end|whole) of|mid|high"
        r"|deepest|deep|early|late|(?:all|most|part) of|(?:the )?(?:first|second|third|fourth|last)"
        r" (?:week|half|part|few days|days|weekend)(?: (?:of|in))?)[ -]"
    )
    month = rf"(?=(?:{'|'.join(MONTHS)}|winter|summer)\b(?!,? (?:of )?\d{{4}}))"
    for match in _compiled(rf"\b{deep}{month}").finditer(found.text):
        yield match.start(), match.end(), ""
