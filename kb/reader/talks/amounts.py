"""Numbers and measures said in a talk: "two of them?", "and 30 mm?", "at zero?", "mine is 9 mm, OK?"."""

from __future__ import annotations

import msgspec

from kb.errors import UsageError
from kb.measures import UNITS, MeasureError, parse_measure
from kb.model.conditions import evaluate
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Position, Rule
from kb.reader.meaning.fits import facts_that_matter, rules_of_aspect, wearing
from kb.reader.meaning.measured import rule_aspects
from kb.reader.meaning.query import merge_case
from kb.reader.pieces.datum import datum_keys
from kb.reader.talks.further import LEAD, bare_words, keys_of, put_as
from kb.reader.talks.statement import parse_fact
from kb.reader.talks.talked import Talk
from kb.reader.words.tokens import word_key
from kb.text import Pattern

_NUMBER = r"\d+(?:(?: \d+)?/\d+|\.\d+)?|zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_AMOUNT = Pattern(
    rf"(?i){LEAD}(?:(?:what|how) (?:about|if)|even if|even|if|is|are|at|(?P<led>with|after|past)|on|"
    rf"may i|can i|could i"
    r"|say)? ?"
    r"(?:it(?:['’]s| is| was| measures)|they(?:['’]re| are)|there(?:['’]s| is| are)"
    r"|(?:i|he|she|they|we|you)? ?(?:have|wear|want|had|wore|has|wears|own|be)|i['’]ve(?: got)?)? ?"
    r"(?:exactly|only|just)? ?"
    rf"((?:minus |-)?(?:{_NUMBER}))( of (?:them|these|those)| ones)?(?: ?([^ ].{{0,14}}?))??"
    r"(?: (?:then|instead|ok|okay|allowed|fine|all right|too many|together|at once))*"
)


_DATED = Pattern(
    rf"(?i){LEAD}(?:(?:no|sorry|oops|oh|wait|i mean|i meant|i said|make (?:it|that)|rather|actually)[ ,.]+)*"
    r"(?:(?:what|how) about |what if |if )?(?:it (?:was|were|is) |i |he |she )?"
    r"(?:in |on |joined in )?((?:\d{1,2} )?(?:[a-z]{3,9} )?\d{4})(?: instead| then)?"
)
_UNIT = Pattern(r"(?i)\d ?(mm|cm|m|in|inch|inches|millimetres?|centimetres?)\b")


_ASIDE = (
    r"(?:is|are|was|will|would|does|do) (?:that|it|this|they|those|these) (?:still |also |really |then )?"
    r"(?:be |count as |got to be )?"
)
_PASSES = (
    r"(?:(?:with)?in (?:the )?(?:tolerance|limits?|bounds)|(?:close|near) enough|acceptable|"
    r"all ?right|ok|okay|fine|"
    r"allowed|permitted|pass(?:es)?|do|out|off|over|under|(?:any|no) good|legal|up to standard|matter|"
    r"so|true|correct|wrong|good enough|a problem|right|"
    r"against the rules|"
    r"(?:far |much |a bit |a little )?too (?:much|big|long|high|wide|short|small|low|far|tall|narrow|deep))"
)
_OWN = Pattern(
    rf"(?i){LEAD}(?:(?:what if|what about|how about|even if|if|say|suppose|is|are|would|will) )?"
    r"(?:(?:mine|ours|his|hers|theirs|my one|it|they|that|this|those|these|(?:my|his|her|our|the|their) "
    r"(?P<thing>[a-z]+(?: [a-z]+)?))(?:['\u2019](?:s|re)| (?:is|are|was|were|measures?|sits?|hangs?|"
    r"comes? to|goes|"
    r"reach(?:es)?|stands?|falls?|be|being|at))? )?(?:worn |rolled |set |cut |pinned |only |just |"
    r"about |at |exactly |"
    r"roughly |more like |a good |nearly |to |now |an? |the )*"
    rf"(?P<number>(?:{_NUMBER}))(?: ?(?P<unit>mm|cm|m|in|inch|inches|millimet(?:re|er)s?|centimet(?:re|"
    rf"er)s?|yards?|feet|"
    r"ft|\"))?(?: (?P<way>long|wide|high|tall|across|deep|thick|in (?:diameter|length|width|height)))?"
    r"(?: (?:on|in|for) (?:me|mine|him|her|us))?"
    r"(?: (?P<relation>above|below|from|past|over|under|beyond|up|down)(?: (?:the |my |his |her |its )?"
    r"(?P<datum>[a-z]+(?: [a-z]+)?))??)?(?: (?:on|in|for) (?:me|mine|him|her|us))?"
    rf"(?P<tag>[,;.:?]* (?:{_ASIDE}(?:{_PASSES}|it)?|{_PASSES}|or not|right|yes|is it|are they|"
    rf"isn['\u2019]t it)"
    r"(?: or not| then| too| as well)*)?"
)
_WAYS = {
    "long": "length", "wide": "width", "across": "width diameter", "high": "height", "tall": "height",
    "deep": "depth", "thick": "thickness",
}  # fmt: skip


def own_measure(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Mine is 9 1/2 in below, is that ok?": may what was measured before be so much, or be there."""
    before, found = previous.query, _OWN.fullmatch(bare_words(text))
    if before is None or found is None or not before.items:
        return None
    lookup = talk.lookup
    aspect, label = lookup.aspects[before.aspect], lookup.items[before.items[0]].label
    if aspect.kind not in ("measure", "position"):
        return None
    named = {word_key(word) for word in (found["thing"] or "").split()}
    way = (found["way"] or "").removeprefix("in ")
    if not named <= keys_of(f"{aspect.label} {label}") or (
        way and aspect.kind == "measure" and aspect.label not in _WAYS.get(way, way).split()
    ):
        return None
    unit = found["unit"] or _unit_of(previous) or _unit_in_books(before, talk)
    return (
        _measured(text, f"{found['number']} {unit}", before, talk, found["relation"], found["datum"])
        if unit
        else None
    )


def amount(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """A number as the number of the things spoken of, a measure as theirs, or the fact that has one."""
    before, found = previous.query, _AMOUNT.fullmatch(bare_words(text))
    if before is None or found is None or not before.items:
        return None
    led, number, of_them, unit = found.groups()
    if unit is not None:
        return _measured(text, f"{number} {unit}", before, talk)
    if of_them is None and (before.kind != "how_many" or led in ("after", "past")):
        given = _given(number, before, talk, supposed=led is not None)
        if given is not None:
            return talk.made(text, given)
        if led in ("after", "past"):
            return None
    if number.casefold() == "one" and of_them is None and before.kind != "how_many":
        return None  # "and one?" may stand for the thing
    label = talk.lookup.items[before.items[0]].label
    counted = {"count", "kit-count"} & set(rule_aspects(before.items[0], talk.lookup))
    if not counted and of_them is None:
        measures = talk.lookup.aspects[before.aspect].kind in ("measure", "position")
        unit = (_unit_of(previous) or _unit_in_books(before, talk)) if measures else ""
        return _measured(text, f"{number} {unit}", before, talk) if unit else None
    act = "own" if before.aspect in ("possession", "kit-count") else "wear"
    again = _in_its_case(talk, before).read(f"may I {act} {number} {label}?", None)
    return put_as(text, again) if again.query is not None else None


def another_day(text: str, before: Query, talk: Talk) -> Query | None:
    """ "And in 2016?", after "I joined in 2014": the one date that is known of somebody, as another."""
    found = _DATED.fullmatch(bare_words(text))
    facts = [fact for fact, _ in before.case.facts if talk.lookup.facts[fact].kind == "date"]
    if found is None or len(facts) != 1:
        return None
    try:
        fact, values = parse_fact(talk.lookup, facts[0], found.group(1))
    except UsageError:
        return None
    case = merge_case(before.case, {fact: values}, None, False, talk.lookup)
    return msgspec.structs.replace(before, case=case)


def _unit_of(previous: Reading) -> str:
    """The unit in which a measure was said before, "" if there was none."""
    found = _UNIT.search(previous.question)
    return found.group(1) if found is not None else ""


def _unit_in_books(before: Query, talk: Talk) -> str:
    """The unit in which the books measure what was spoken of, "" where they use several."""
    rules = rules_of_aspect(before.items, before.aspect, talk.lookup)
    places = (rule.value for rule in rules)
    measures = (m for v in places for m in (v.measure, *(p.offset for p in v.positions)))
    units = {measure.unit for measure in measures if measure is not None}
    unit = units.pop() if len(units) == 1 else ""
    return UNITS[unit].symbol if unit in UNITS else ""


def _in_its_case(talk: Talk, before: Query) -> Talk:
    return msgspec.structs.replace(talk, case=before.case)


def _given(number: str, before: Query, talk: Talk, supposed: bool = False) -> Query | None:
    """The one quantity that is known of the situation, or that the answer rests on, as another number."""
    known = [fact for fact, _ in before.case.facts]
    resting = (*known, *facts_that_matter(before, talk.lookup)) if supposed else known
    facts = [fact for fact in dict.fromkeys(resting) if talk.lookup.facts[fact].kind == "quantity"]
    if len(facts) != 1:
        return None
    try:
        fact, values = parse_fact(talk.lookup, facts[0], number)
    except UsageError:
        return None
    case = merge_case(before.case, {fact: values}, None, False, talk.lookup)
    return msgspec.structs.replace(before, case=case)


def _measured(
    text: str, said: str, before: Query, talk: Talk, relation: str | None = None, datum: str | None = None
) -> Reading | None:
    """ "And 30 mm?": may the measure spoken of be so much, or what was placed be so far from there."""
    before = _of_its_size(before, talk)
    aspect = talk.lookup.aspects[before.aspect]
    if aspect.kind not in ("measure", "position"):
        return None
    try:
        parse_measure(said)
    except MeasureError:
        return None
    rules = list(rules_of_aspect(before.items, before.aspect, talk.lookup))
    if relation in _DIRECTIONS and not any(_says(rule, relation, talk) for rule in rules):
        return None  # "below" is not asked where the books say "above"
    label = talk.lookup.items[before.items[0]].label
    if aspect.kind == "position":
        way, start = _way_from(rules, talk)
        start = datum or start
        if not start or not way:
            return None
        words = f"may the {label} be worn {said} {relation if relation in _DIRECTIONS else way} the {start}?"
    else:
        if datum is not None and not any(word_key(datum) in datum_keys(rule) for rule in rules):
            return None
        words = f"{'must' if before.kind == 'must' else 'may'} the {aspect.label} of the {label} be {said}?"
    again = _in_its_case(talk, before).read(words, None)
    if again.query is None or again.query.aspect != before.aspect:
        return None
    return put_as(text, again)


def _of_its_size(before: Query, talk: Talk) -> Query:
    """ "And 10 mm?", after whether a beard may be worn: of the one size that the books measure."""
    lookup = talk.lookup
    if before.kind not in ("may", "must") or before.aspect != wearing(before.items, lookup):
        return before
    known = dict(before.case.facts)
    if any(
        rule.modality == "must_not"
        and _in_force(rule, before, lookup)
        and evaluate(rule.condition, known.get) is not False
        for rule in rules_of_aspect(before.items, before.aspect, lookup)
    ):
        return before  # of what may not be worn at all, no size says that it may
    measured = {*rule_aspects(before.items[0], lookup)}
    sizes = [aspect for aspect in lookup.aspects_within("size") if aspect in measured]
    return msgspec.structs.replace(before, kind="may", aspect=sizes[0]) if len(sizes) == 1 else before


def _in_force(rule: Rule, asked: Query, lookup: Lookup) -> bool:
    clause, day = lookup.clauses[rule.clause], asked.case.as_of
    return all(
        (one.valid_from is None or one.valid_from <= day)
        and (one.valid_until is None or day < one.valid_until)
        for one in (rule, clause)
    )


_DIRECTIONS = ("above", "below")


def _says(rule: Rule, word: str, talk: Talk) -> bool:
    return word in talk.lookup.clauses[rule.clause].text.casefold().split()


def _way_from(rules: list[Rule], talk: Talk) -> tuple[str, str]:
    """What all rules on where a thing goes measure its distance from, and on which side; "" for several."""
    places = [place for rule in rules for place in rule.value.positions if place.offset is not None]
    starts = {_start_of(place, talk) for place in places}
    ways = {place.relation.split()[-1] for place in places}
    way = ways.pop() if len(ways) == 1 else "from"
    return way if way in _DIRECTIONS else "from", starts.pop() if len(starts) == 1 else ""


def _start_of(place: Position, talk: Talk) -> str:
    """What a place is so far from, by the name of the part of the garment before the words of the measure."""
    if place.relation.split()[-1] in _DIRECTIONS and place.feature in talk.lookup.items:
        return talk.lookup.items[place.feature].label
    datum = place.offset.datum if place.offset is not None else None
    return (datum.measured_from if datum is not None else None) or ""
