"""Weather, light and places in everyday words, as what the books have of them: "half past eleven at night".

Read only for a text that is not understood as it stands, and only where the books have the one thing meant.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from kb.model.lookup import Lookup
from kb.model.records import Fact, FactValue
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.recast.clocked import clocked
from kb.reader.recast.reaching import reaching
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize, word_key
from kb.text import Pattern

Edit = tuple[int, int, str]
_HOURS = "one two three four five six seven eight nine ten eleven twelve"
_FAIR = word_set("sunshine sunny fair clear fine dry")
_BRILLIANT = r"(?:(?:bright|blazing|brilliant|full|glaring|hot|strong|scorching|glorious|lovely|blinding) )*"
_ENDS = r"(?=\s*(?:[.,;:?!–—-]|$|(?:at|on|and|with|in|today|outside|may|must|can|should|do|is|are|when)\b))"
_SUN = (
    rf"(?:in|under|out in|beneath) (?:(?:the|this|that) )?{_BRILLIANT}sun(?:shine|light)?{_ENDS}"
    rf"|(?:the )?{_BRILLIANT}sun(?:(?:['’]s| is) (?:out|shining|blinding|glaring|dazzling"
    r"|fierce|(?:right )?in my eyes|blazing|beating down)| shining| blazing| beating down)"
    rf"|(?:bright|blazing|brilliant|full|hot|glorious) sun(?:shine|light)?(?: (?:outside|today))*{_ENDS}"
    r"|(?:(?:clear|bright|cloudless|blue) )+sk(?:y|ies)(?: (?:overhead|outside|today))*"
)
_SUNNY = (
    r"(?:it['’]s|it is|on|during) (?:a |one )?(?:(?:very|nice|lovely|warm|bright|hot) )*sunny"
    r"(?: (?:day|morning|afternoon|out|outside|today))*"
)
_LYING = (
    r"(?:(?:there['’]s|there is|with|in|under) )?(?:(?:about |nearly |over |almost )?"
    r"(?:an?|one|two|three|half a|\d+) ?(?:foot|feet|ft|inch|inches|in|cm|centimetres?|metres?|m) of )"
    r"(?:(?:fresh|deep|new|thick) )*snow"
    r"(?: (?:about|around|lying|outside|on the ground|down|underfoot|out there|everywhere))*"
    r"|(?:(?:deep|fresh|thick|old|hard) )*snow (?:lying|underfoot|lies|is lying|on the (?:pavement|grass))"
    r"(?: (?:about|around|outside|everywhere|on the ground))*|ground (?:is )?(?:white|covered) with snow"
)
_NOT_YET = r"(?! (?:is |was |are )?(?:forecast|expected|predicted|due|coming|melting|melted|gone)\b)"
_ROADS = (
    r"(?:in|on|along|up|down|across|beside|by) (?:(?:the|a|our|this|that|any) )?"
    r"(?:(?:busy|main|high|public|village|town|open|narrow|country) )*"
    r"(?:high street|street|road|pavement|footpath|kerb|carriageway|highway|"
    r"crossing|zebra crossing|roundabout|junction|dual carriageway|lane|motorway)s?"
)
_AREA = Pattern(
    r'["“](?P<what>[\w -]+)["”] is (?:the |that )?\w+ (?P<side>inside|within|behind|beyond) the '
    r"(?P<edge>[\w ]+?)(?= of | or |[.,;]|$)"
)
_SIDES = {"inside": "inside|within|in", "within": "inside|within|in", "behind": "behind", "beyond": "beyond"}
_CLOCKED = {*"0123456789", "dawn", "sunrise", "noon", "midday", "dusk", "sunset", "midnight", "night", "day"}
"""Words of times, which go one way only: "between dusk and 08:00"."""
_TO_AND_FROM = Pattern(r"\bway (?:to (?:and|or) from|from (?:and|or) to) (?:the )?(?P<there>\w+)")
_GOING = (
    r"(?:(?:on (?:my|the|our|his|her) way|walking|going|cycling|climbing|coming|driving|heading|strolling)"
    r"(?: (?:up|down|back|along|over))?(?: the (?:hill|road|path|lane))? )?"
)


def circumstances(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each such stretch of a text."""
    for way in (
        clocked,
        _fair,
        _dry,
        _snow_on_the_ground,
        _on_the_road,
        _inside,
        _between,
        _on_the_way,
        _no_more,
        _alone,
        _away_from,
        _so_far_on,
        reaching,
    ):
        yield from way(found, lookup)


@cache
def _compiled(source: str) -> Pattern:
    return Pattern(rf"(?<![\w'’-])(?:{source})(?![\w'’-])", re.IGNORECASE)


def _values(lookup: Lookup) -> Iterator[tuple[Fact, FactValue]]:
    yield from ((f, v) for f in lookup.base.facts if f.family == "situation" for v in f.values)


def named(lookup: Lookup, words: Iterable[str]) -> list[str]:
    """The labels of the states, and of yes or no facts, by one of these names."""
    called = _called(lookup)
    places = {place for word in words for place in called.get(word, ())}
    return [label for _, label in sorted(places)]


@cache
def _called(lookup: Lookup) -> dict[str, list[tuple[int, str]]]:
    """The states and the yes or no facts by each of their names, with their place among them."""
    facts = [f for f in lookup.base.facts if f.kind == "yes_no" and f.family in ("situation", "term")]
    found: dict[str, list[tuple[int, str]]] = {}
    for place, one in enumerate((*(value for _, value in _values(lookup)), *facts)):
        for name in (one.label, *one.other_labels):
            found.setdefault(name.casefold(), []).append((place, one.label))
    return found


def _fair(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "In the sun", "clear blue skies"."""
    meant = {
        value.label
        for fact, value in _values(lookup)
        if fact.kind == "choice"
        for name in (value.label, *value.other_labels)
        if name.casefold() in _FAIR or _is_of_fair_weather(name.casefold().split())
    }
    sunny = {label for label in (*meant, *named(lookup, _SUNSHINE)) if "sun" in label.casefold()}
    meant = sunny or meant  # "dry and dull weather" is fair, and no sunshine
    if len(meant) == 1:
        for match in (*_compiled(_SUN).finditer(found.text), *_compiled(_SUNNY).finditer(found.text)):
            yield match.start(), match.end(), meant.copy().pop()


_DRY = (
    r"(?<=\band )dry|(?<=\bbut )dry|(?<=it['’]s )dry|(?<=\bits )dry|(?<=it is )dry|(?<=[,;] )dry"
    r"|(?<=^)dry(?=,)"
)
_OUT = r"(?: (?:out|outside|outdoors|out there|today|tonight|now))*"


def _dry(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "It's ten degrees and dry", where the books have dry weather."""
    meant = named(lookup, ("dry weather", "dry", "in dry weather", "fair weather"))
    ends = r"(?=\s*(?:[.,;:?!–—-]|$|(?:and|so|but|can|may|must|do|does|should|could|shall|is|are|in)\b))"
    if len(meant) == 1 and all(
        piece.tag != "fact" or "dry" not in _lows(found, piece) for piece in found.pieces
    ):
        for match in _compiled(rf"(?:{_DRY}){_OUT}{ends}").finditer(found.text):
            yield match.start(), match.end(), meant[0]


def _lows(found: Understood, piece: Piece) -> set[str]:
    return {token.low for token in found.tokens[piece.first : piece.last]}


_SUNSHINE = ("bright sun", "sunny", "sunshine")


def _is_of_fair_weather(words: list[str]) -> bool:
    return words[-1] in ("weather", "sky") and not _FAIR.isdisjoint(words)


def _snow_on_the_ground(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "A foot of snow about"."""
    meant = named(lookup, ("snow on the ground", "snow lying", "lying snow"))
    if len(meant) == 1:
        for match in _compiled(rf"(?:{_LYING}){_NOT_YET}").finditer(found.text):
            if match.group().casefold() != meant[0].casefold():
                yield match.start(), match.end(), meant[0]


def _on_the_road(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Along the high street", where one value of the books is on a road, and on no road of its own name."""
    roads = [
        v
        for _, v in _values(lookup)
        if v.label.split()[0] in ("on", "at") and tokenize(v.label)[-1].low == "road" and v.label.islower()
    ]
    if len(roads) != 1:
        return
    names = {name.casefold() for name in (roads[0].label, *roads[0].other_labels)}
    for match in _compiled(_ROADS).finditer(found.text):
        if match.group().casefold() not in names and not _is_name(match):
            yield match.start(), match.end(), roads[0].label


def _is_name(match: re.Match[str]) -> bool:
    """ "In Kiln Street": whether it is written as a name."""
    return match.group().split()[-1][:1].isupper()


def _inside(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Inside the cordon", where a clause says what place that is."""
    led = Pattern(r"(?i)\b(?:inside|within|in|behind|beyond) the\b").search(found.text)
    for clause in lookup.base.clauses if led else ():
        for defined in _AREA.finditer(clause.text):
            meant = named(lookup, (defined["what"].casefold(),))
            edge = defined["edge"].split()
            if len(meant) == 1 and edge:
                lead = "".join(rf"(?:{word} )?" for word in edge[:-1])
                side = _SIDES[defined["side"]]
                for match in _compiled(rf"(?:still )?(?:{side}) the {lead}{edge[-1]}").finditer(found.text):
                    yield match.start(), match.end(), meant[0]


def _between(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Walking up the hill from the town to the station"."""
    for _, value in _values(lookup):
        led, _, other = value.label.casefold().partition(" and ")
        one = led.removeprefix("between ")
        if (
            one == led
            or not other
            or not _CLOCKED.isdisjoint(re.findall(r"[a-z]+|\d", value.label.casefold()))
        ):
            continue
        ends = [re.escape(end.removeprefix("the ")) for end in (one, other)]
        for here, there in (ends, ends[::-1]):
            led = rf"{_GOING}(?:from|between) (?:the )?{here}"
            way = rf"{led} (?:back )?(?:up |down )?(?:to|and) (?:the )?{there}"
            for match in _compiled(way).finditer(found.text):
                yield match.start(), match.end(), value.label


def _no_more(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The sea is only slight", "the sea only slight": no more than that it is."""
    for fact in lookup.base.facts:
        if fact.kind != "scale" or fact.family != "situation":
            continue
        degrees = "|".join({re.escape(value.label.split()[0]) for value in fact.values})
        nouns = "|".join({re.escape(value.label.split()[-1]) for value in fact.values})
        only = r"(?P<only> (?:only|just|merely|no more than))"
        told = rf"(?:{nouns})(?:['’]s| is| being| was)?{only} (?:{degrees})"
        for match in _compiled(told).finditer(found.text):
            said = match.group().replace(match["only"], "", 1)
            yield match.start(), match.end(), said


def _on_the_way(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Walking home from work", where the books have the way to and from it."""
    ways = [(v, m) for _, v in _values(lookup) if (m := _TO_AND_FROM.search(v.label)) is not None]
    if len(ways) != 1:
        return
    value, match = ways[0]
    there = rf"(?:work|duty|{re.escape(match['there'])})"
    moving = r"(?:on (?:my|the|our|his|her|their) way|walking|going|cycling|driving|heading|commuting)"
    for said in _compiled(
        rf"{moving} (?:(?:home|back|in|straight home) )?(?:from|to|into) (?:the )?{there}"
        rf"|{moving} (?:home|back home)(?= ?(?:[.,;:?!]|$)| (?:in|with|after|tonight))"
    ).finditer(found.text):
        yield said.start(), said.end(), value.label


_OWN = r"(?:all )?(?:on (?:my|our|your|his|her|their) own|by (?:my|your|him|her|them|our)sel(?:f|ves))"
_OVER = r"(?=\s*(?:[.,;:!?–—-]|$|(?:and|but|by|in|on|to|from|at|with|when|without)\b))"


def _alone(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Travelling on my own", where the books know whether one is alone."""
    meant = named(lookup, ("alone", "travelling alone"))
    if len(meant) == 1:
        for match in _compiled(rf"(?:(?:travelling|going|journeying) )?{_OWN}{_OVER}").finditer(found.text):
            yield match.start(), match.end(), meant[0]


def _away_from(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Well away from the rails", where one place is "beside the rails": it is not there."""
    led = r"(?:(?:well|far|right|quite|some way|a long way|nowhere) )?(?:away from|clear of|near)"
    for match in _compiled(rf"(?P<led>{led}) (?:any |the |our |all (?:the )?)?(?P<it>\w+)").finditer(
        found.text
    ):
        if match["led"].casefold().endswith("near") != match["led"].casefold().startswith("nowhere"):
            continue
        noun = word_key(match["it"].casefold())
        there = {
            value.label
            for _, value in _values(lookup)
            for name in (value.label, *value.other_labels)
            if (words := tokenize(name))[-1].key == noun and words[0].low in _BESIDE
        }
        if len(there) == 1 and not re.search(r"\d|metre|feet|not|n['’]t", found.text[: match.start()][-12:]):
            yield match.start(), match.end(), f"not {there.pop()}"


_BESIDE = word_set("beside near by at within")
_NUMBER = rf"(?:\d+|{_HOURS.replace(' ', '|')}|(?:twenty|thirty)(?:[- ]\w+)?|\w+teen)"


def _so_far_on(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Twenty weeks pregnant": that one is, where no measure of it is kept."""
    meant = named(lookup, ("pregnant", "expecting"))
    if len(meant) == 1:
        led = r"(?<!was )(?<!were )(?:(?:about|nearly|almost|over|now|already) )*"
        said = rf"{led}{_NUMBER} (?:weeks?|months?) (?:pregnant|gone|along)"
        for match in _compiled(said).finditer(found.text):
            yield match.start(), match.end(), meant[0]
