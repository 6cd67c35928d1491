"""What is going on, in everyday words, as what the books have of it: "the show's on", "a lorry is backing
in", "we're about to land", "up a ladder at three metres", "near the chipper".

Read only for a text that is not understood as it stands; the names are those of the books that are loaded.
Nothing is taken where it is denied, or where two of them may be meant.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Set
from functools import cache

from kb.measures import same_dimension
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Understood
from kb.reader.words.machines import MACHINERY, MACHINES, RUNNING
from kb.text import Pattern

Edit = tuple[int, int, str]
_THE = r"(?:(?:the|a|an|our|my|this|that|one|some|another) )?"
_ON = r"(?:on|running|under ?way|going on|in progress|in full swing|happening)"
_MOVES = (
    r"(?:(?:backing|reversing|pulling|driving|rolling|turning|coming|drawing|arriving|leaving|manoeuvring"
    r"|maneuvering|shunting|setting off)(?: (?:in|into|out|up|away|off|round|around|back|past|by|through))*"
    r"|on the move)"
)
_MOVING = Pattern(r"(?:an? )?([\w -]+?) (?:is |are )?moving")
_LORRIES = ("lorry", "truck", "wagon", "artic")
_VEHICLES = ("lorry", "van", "car", "truck", "ambulance", "bus", "taxi", "tractor")
_SOON = (
    r"(?:just )?(?:about|getting ready|preparing|getting set|fixing) to|coming in to|(?:just )?going in to"
)
_CLIMBED = r"(?:ladder|steps|step-?ladder|scaffold(?:ing)?|tower|tree|mast|pole|platform|lift)"
_ABOVE = r"(?:off|above) the (?:ground|floor|deck|stage)"
_AMOUNT = (
    r"(?P<much>(?:\d+(?:\.\d+)?|a|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty)"
    r" ?(?:m|metres?|meters?|ft|feet|foot))"
)
_NOT = Pattern(
    r"(?i)\b(?:not|n['’]t|no|nothing|nobody|never|isn['’]t|without|nor|if|unless|hardly)\b[^.,;?!]*$"
)


def happening(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each such stretch of a text."""
    for way in _WAYS:
        for start, end, put in way(found, lookup):
            if _NOT.search(found.text[:start]) is None:
                yield start, end, put


@cache
def _compiled(source: str) -> Pattern:
    return Pattern(rf"(?<![\w'’-])(?:{source})(?![\w’-])", re.IGNORECASE)


@cache
def _names(lookup: Lookup) -> tuple[tuple[str, str], ...]:
    """What circumstances are called, each with the label of what it names."""
    found: list[tuple[str, str]] = []
    for fact in lookup.base.facts:
        if fact.family not in ("situation", "term"):
            continue
        for one in (fact,) if fact.kind == "yes_no" else fact.values:
            found += [(name.casefold(), one.label) for name in (one.label, *one.other_labels)]
    return tuple(found)


@cache
def _called(lookup: Lookup, *forms: Pattern) -> tuple[tuple[str, frozenset[str]], ...]:
    """What the names of these forms are of, their first group, each with the labels of what is so named."""
    found: dict[str, set[str]] = {}
    for name, label in _names(lookup):
        if (led := next((m for form in forms if (m := form.fullmatch(name))), None)) is not None:
            found.setdefault(led[1], set()).add(label)
    return tuple((thing, frozenset(labels)) for thing, labels in found.items())


def _only(labels: Set[str]) -> str | None:
    return next(iter(labels)) if len(labels) == 1 else None


def _going_on(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The show's on", where the books have "during the show"."""
    lows = found.text.casefold()
    for noun, labels in _called(lookup, _DURING):
        one = _only(labels) if noun in lows else None
        if one is None:
            continue
        for match in _compiled(rf"{_THE}{noun}(?:['’]s| is) (?:now |still |already )?{_ON}").finditer(
            found.text
        ):
            after = found.text[match.end() :].lstrip()[:1]
            if after in ("", ".", ",", ";", ":", "!", "?", "-", "–", "a", "s"):
                yield match.start(), match.end(), one


_DURING = Pattern(r"(?:during|while) (?:the |an? )?([a-z]+)(?: is running| is on| runs)?")


def _in_motion(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "A lorry is backing in", where the books ask whether one is moving."""
    called = _called(lookup, _MOVING)
    moving = {label for _, labels in called for label in labels}
    one = _only({label for label in moving if not label.casefold().startswith("near ")})
    if one is None:
        return
    nouns = {noun for noun, labels in called if one in labels}
    if "vehicle" in nouns:
        nouns |= set(_VEHICLES)
    elif not nouns.isdisjoint(_LORRIES):
        nouns |= set(_LORRIES)
    said = "|".join(re.escape(noun) for noun in sorted(nouns, key=len, reverse=True))
    is_so = r"(?:['’]s| is| are|['’]re)?(?: (?:just|now|still|slowly))?"
    for match in _compiled(rf"(?:there(?:['’]s| is| are) )?{_THE}(?:{said})s?{is_so} {_MOVES}").finditer(
        found.text
    ):
        yield match.start(), match.end(), one


_NEARBY = (
    r"(?:,? ?(?:and )?(?:i(?:['’]m| am)|we(?:['’]re| are)|it(?:['’]s| is)|which is))?"
    r"(?:,? (?:just|right|only|stood|standing|sat|sitting|working|up|close))*"
    r" (?:(?:next to|beside|alongside|near|close to|by|in front of|behind|at) (?:me|us|it|them|my \w+)"
    r"|within (?:arm['’]?s )?(?:reach|length)|(?:an )?arm['’]?s length (?:away|off)|here|alongside|nearby"
    r"|close by|under my nose)"
)
"""That a machine is near, told after it: "right next to me", "and I'm stood right at it"."""
_MACHINE = rf"(?:[\w-]+ )?(?:{'|'.join(sorted(MACHINES - MACHINERY))}|machine)s?"
"""Machinery itself is understood by the books' own name."""
_THERE_IS = r"(?:there(?:['’]s| is| are) )?"
_BESIDE = r"(?:near|next to|beside|close to|by|at)"
_STOOD = r"(?:,? and| but|,|\.) i(?:['’]m| am)(?: (?:stood|standing|sat|working|about|only|just|some))*"
_MOVING = Pattern(r"(?:an? )?([\w -]+?) (?:is |are )?moving")
_RUNS = Pattern(r"(?:near )?(?:an? |the |any )?(?:running|moving|turning) (?P<it>[a-z][a-z -]*)")
_IS_RUN = Pattern(
    r"(?P<it>[a-z][a-z -]*?)(?: is| are|['’]s)?"
    r" (?:running|moving|on|turning|in motion|in use|being worked)"
)


def _running(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The mincer's going right next to me", where the books have "near running machinery"."""
    things: dict[str, set[str]] = {}
    for thing, labels in _called(lookup, _RUNS, _IS_RUN):
        things.setdefault(thing.removeprefix("near "), set()).update(labels)
    lows = found.text.casefold()
    for thing, all_labels in things.items():
        one = _only(all_labels) if thing in MACHINERY or thing in lows else None
        if one is None:
            continue
        names = [name for name, label in _names(lookup) if label == one]
        near = next((name for name in names if name.startswith("near ")), "")
        some = thing in MACHINERY
        said = _MACHINE if some else rf"{re.escape(thing)}s?"
        is_so = r"(?:['’]s| is| are|['’]re)?(?: (?:still|just|now))?"
        runs = rf"{_THERE_IS}{_THE}(?:{said}){is_so} {RUNNING}"
        moving = rf"(?:right )?{_BESIDE} {_THE}(?:running|moving|turning) (?:{said})"
        at_it = (
            rf"(?:right )?(?:{_BESIDE}|on) {_THE}(?:{said}),? (?:while|when|whilst|and) (?:it|they)"
            rf"(?:['’]s| is| are|['’]re) {RUNNING}"
        )
        for way in (rf"{runs}{_NEARBY if near else _THERE}", *([moving, at_it] if near else ())):
            for match in _compiled(way).finditer(found.text):
                if match.group().casefold() not in names:
                    yield match.start(), match.end(), near or one


def _so_far(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The saw's going and I'm stood five metres away", where the books measure how far one is from it."""
    for fact in lookup.base.facts:
        led = _DISTANCE.fullmatch(fact.label.casefold()) if fact.kind == "quantity" else None
        if led is None or led["it"].split()[-1] not in MACHINES:
            continue
        runs = rf"{_THERE_IS}{_THE}{re.escape(led['it'])}(?:['’]s| is)(?: (?:still|now))? {RUNNING}"
        way = rf"{runs}{_STOOD} {_AMOUNT} (?:away|off|from it|away from it|back)"
        for match in _compiled(way).finditer(found.text):
            yield match.start(), match.end(), f"{fact.label} {match['much']}"


_DISTANCE = Pattern(r"distance from (?:an? |the )?(?:running |moving |turning )?(?P<it>[a-z][a-z -]*)")
_THERE = r"(?=\s*(?:[.,;:!?–—-]|$|(?:and|but|so)\b))"


_LOUD = Pattern(
    r".*\b(?:(?P<bound>above|over|more than|louder than|below|under|less than|at least) (?P<much>\d+)"
    r" ?(?:decibels?|db)|(?P<least>\d+) ?(?:decibels?|db) (?:or|and) (?:more|over|above|louder|up))"
)
_DECIBELS = (
    r"(?P<lead>(?:the )?(?:noise|sound)(?: level)?(?: is|['’]s)(?: at)? "
    r"|it['’]s (?:at )?|it is (?:at )?|at )?"
    r"(?:(?:about|around|over|nearly) )*(?P<much>\d+) ?(?:decibels?|db(?:a\b|\(a\))?)"
    r"(?! (?:limit|rule|figure|thing|mark|business)\b)"
)

_PAST = Pattern(r"(?i)\b(?:did|was|were|used to|back (?:in|then|when)|(?:19|20)\d\d)\b")
"""Of another time no scale is taken: what was loud work then is not told by how loud it is."""


def _so_loud(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "90 decibels in the workshop", where the books have noise above 85 of them, or scales of it."""
    told = _compiled(_DECIBELS)
    for fact in lookup.base.facts if told.search(found.text) else ():
        bands = [(value.label, _band(value.label)) for value in fact.values]
        led = _LOUD.fullmatch(fact.label.casefold()) if fact.kind == "yes_no" else None
        name = next((name for name in fact.other_labels if name.isalpha() or " " in name), fact.label)
        for match in told.finditer(found.text):
            much, hedged = int(match["much"]), "over" in match.group().casefold()
            within = [label for label, band in bands if band is not None and band[0] < much <= band[1]]
            sure = not hedged and "nearly" not in match.group().casefold() and not _PAST.search(found.text)
            if len(within) == 1 and sure:
                yield match.start(), match.end(), within[0]
            if led is None:
                continue
            most, bound = int(led["much"] or led["least"]), led["bound"] or "at least"
            above = much > most or (much == most and bound == "at least")
            so = much < most if bound in ("below", "under", "less than") else above
            if not hedged or above:
                joint = ", " if (match["lead"] or "").casefold() == "at " and name.startswith("in ") else ""
                yield match.start(), match.end(), joint + (name if so else f"not {name}")


def _band(label: str) -> tuple[int, int] | None:
    """Above how many decibels, and up to how many, the value of a scale holds."""
    if "decibel" not in label.casefold() and " db" not in label.casefold():
        return None
    above = re.search(r"\b(?:above|over|more than) (\d+)", label)
    most = re.search(
        r"\b(?:up to|at most|not more than) (\d+)|\b(\d+) (?:decibels?|db) or less", label, re.IGNORECASE
    )
    if above is None and most is None:
        return None
    top = int(most[1] or most[2]) if most is not None else 10**6
    return int(above[1]) if above is not None else -1, top


def _about_to(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "We're about to land", where the books have what is so before landing."""
    soon: dict[str, set[str]] = {}
    for doing, called in _called(lookup, _BEFORE):
        soon.setdefault(_verb(doing), set()).update(called)
    for verb, labels in soon.items():
        one = _only(labels)
        said = rf"(?:(?:i|we|they)(?:['’](?:m|re)| am| are) |^|(?<=[,;:.] ))(?:{_SOON}) {verb}"
        for match in _compiled(said).finditer(found.text):
            if one is not None:
                yield match.start(), match.end(), f"I am {one}" if one.split()[0].endswith("ing") else one


_BEFORE = Pattern(r"(?:before|preparing for|preparing to|about to) ([a-z]+)")


def _verb(doing: str) -> str:
    return doing[:-3] if doing.endswith("ing") else doing


def _so_high(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Up a ladder at three metres", where the books measure one height at which somebody works."""
    heights = [
        fact.label
        for fact in lookup.base.facts
        if fact.kind == "quantity" and fact.unit and same_dimension(fact.unit, "mm")
        if "height" in fact.label.casefold().split() and fact.family == "situation"
    ]
    if len(heights) != 1:
        return
    hedge = r"(?:(?:about|around|some|maybe|roughly|nearly|over|only) )?"
    up = rf"(?:up|on|at the top of) (?:the |a |my |an? )?(?:\w+ )?{_CLIMBED}"
    for way in (
        rf"{up},? (?:at |maybe |about )*{hedge}{_AMOUNT}(?: up| high| off the \w+)?",
        rf"{hedge}{_AMOUNT} (?:up|{_ABOVE}),? (?:up |on )?(?:the |a |my )?{_CLIMBED}",
        rf"{hedge}{_AMOUNT} up(?=\s*(?:[.,;:?!]|$))",
        rf"{hedge}{_AMOUNT} (?:{_ABOVE}|up in the air)",
    ):
        for match in _compiled(way).finditer(found.text):
            yield match.start(), match.end(), f"{heights[0]} {match['much']}"


def _near_one(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Near the chipper", where the books have "near a chainsaw, winch or chipper"."""
    for fact in lookup.base.facts:
        if fact.kind != "yes_no" or fact.family != "situation":
            continue
        listed = _LISTED.fullmatch(fact.label.casefold())
        if listed is None or listed["lead"].split()[0] not in _LEADS:
            continue
        nouns = [listed["first"], *listed["more"].removeprefix(", ").split(", "), listed["last"]]
        said = "|".join(re.escape(noun.strip()) + "s?" for noun in nouns if noun.strip())
        leads = "near|beside|next to|close to|by" if listed["lead"] == "near" else re.escape(listed["lead"])
        names = (name for name in (*fact.other_labels, fact.label) if "," not in name)
        put = next(names, fact.label)
        for match in _compiled(rf"(?:right )?(?:{leads}) {_THE}(?:{said})").finditer(found.text):
            if match.group().casefold() != put.casefold():
                yield match.start(), match.end(), put


_LISTED = Pattern(
    r"(?P<lead>[a-z]+(?: [a-z]+)??) (?:an? |the )?(?P<first>[\w -]+?)(?P<more>(?:, [\w -]+?)*),? or"
    r" (?P<last>[\w -]+)"
)
_LEADS = frozenset({"near", "beside", "handling", "within", "using", "working"})


_WORKS_IT = Pattern(r"(?:working (?:at|on|with)|using|operating|at|on) (?:an? |the )?(?P<it>[a-z][a-z, -]*)")
_AT_IT = (
    r"(?:(?:while|when|whilst) i(?:'m| am)? (?:using|use|on|at|work(?:ing)? (?:at|on|with)|operat(?:e|ing))"
    r"|working (?:at|on|with)|using|operating|on|at)"
)


def _at_machine(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "On the lathe", "while I use the drill", where the books have "working at a lathe or drill"."""
    lows = {token.key for token in found.tokens}
    if MACHINES.isdisjoint(lows):
        return
    worked: dict[str, set[str]] = {}
    for name, label in _names(lookup):
        led = _WORKS_IT.fullmatch(name)
        for noun in re.split(r", (?:or )?| or ", led["it"]) if led is not None else ():
            plain = noun.removeprefix("a ").removeprefix("an ").removeprefix("the ")
            if plain.split()[-1] in MACHINES:
                worked.setdefault(plain, set()).add(label)
    for noun, labels in worked.items():
        one = _only(labels)
        for match in _compiled(rf"{_AT_IT} {_THE}{re.escape(noun)}").finditer(found.text):
            if one is not None and match.group().casefold() != one.casefold():
                yield match.start(), match.end(), f", {one}"


_HANDLING = (
    r"(?:pushing|shoving|shifting|moving|lifting|carrying|humping|wheeling|lugging|stacking|heaving|dragging"
    r"|rolling|hauling|loading|unloading|handling)"
)


def _handled(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Pushing flight cases about", where the books have "handling flight cases"."""
    things: dict[str, set[str]] = {}
    for name, label in _names(lookup):
        led = re.fullmatch(r"(?:handling|loading|moving) (?:an? |the )?([a-z][a-z -]+)", name)
        if led is not None and " or " not in name and "," not in name:
            things.setdefault(led[1], set()).add(label)
    for thing, labels in things.items():
        one = _only(labels)
        put = next(
            (name for name, label in _names(lookup) if label == one and name.startswith("handling")), ""
        )
        noun = re.escape(thing).removesuffix("s") + "s?"
        said = (
            rf"{_HANDLING} (?:(?:some|the|a|an|heavy|my|our|more) )*{noun}(?: (?:about|around|round|in|out))?"
        )
        for match in _compiled(said).finditer(found.text):
            if one is not None and put and match.group().casefold() != put:
                yield match.start(), match.end(), put


def _so_it_is(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "It's airborne": the one state of which rules on the thing speak, by the first of its two words."""
    named = {entry.id for piece in found.pieces for entry in piece.entries if entry.kind == "item"}
    wider = {broad for item in named for broad in lookup.broader(item)}
    rules = lookup.rules_on(wider)
    tested = {test.fact for rule in rules for test in tests(rule.condition)}
    firsts: dict[str, set[str]] = {}
    for fact in (lookup.facts[fact] for fact in tested):
        words = fact.label.casefold().split()
        if fact.kind == "yes_no" and fact.family == "situation" and len(words) == _PAIR:
            firsts.setdefault(words[0], set()).add(fact.label)
    unknown = {found.tokens[p.first].low for p in found.pieces if p.tag == "unknown"}
    for word, labels in firsts.items():
        one = _only(labels)
        for match in _compiled(rf"(?:it|that)(?:['’]s| is) {re.escape(word)}").finditer(found.text):
            if one is not None and word in unknown:
                yield match.start(), match.end(), one


_PAIR = 2


_WAYS = (
    _going_on, _in_motion, _running, _so_far, _so_loud, _about_to, _so_high, _near_one, _handled, _so_it_is,
    _at_machine,
)  # fmt: skip
