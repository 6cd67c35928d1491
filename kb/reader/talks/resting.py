"""A circumstance that the answer before rests on, told in a few words of its name.

"There's a guard rail", after a harness that need not be worn behind one; "and if guests are brought?".
Read only for a turn that is not understood, and only where one circumstance alone has all its words.
"""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.model.records import Fact
from kb.model.values import NO, YES, Choices, ValueSet
from kb.reader.meaning.fits import facts_that_matter, tests_worn
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import PERSONAL
from kb.reader.pieces.values import closure, complement_of
from kb.reader.talks.further import contrasted
from kb.reader.talks.talked import Talk, item_alone
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_WHOLE = Pattern(
    r"(?i)^\W*(?:(?:and|but|so|or|then|ok|okay|right|well|now),? )*"
    r"(?:may|can|could|must|should|shall|do|does|did|am|is|are|was|were|will|would|who|what(?! if\b)|which|"
    r"where|why|how|whose|when(?= (?:is|are|was|were|do|does|did|may|can|must|should|will)\b))\b|"
    r"\b(?:says?|said|told|heard|thought|unless|except|until|before|after|or|same|allowed|need|rules?|"
    r"clause)\b"
)
_NOT = Pattern(r"(?i)\b(?:no|not|never|without|nobody|none|neither)\b|n['\u2019]t\b")
_APART = word_set("outside beyond past off away out over from clear")
_IDLE = word_set("""
    a an the my your his her its their our this that these those some any it they them i me we us he him she
    you one and but so if when while once as even what only just though then now still again today here there
    too also really actually right of to in on at for with by up down about onto into along around beside
    am is are was were be been being 's 're 'm 've 'll 'd have has had having got get gets getting will would
    can might may could come comes coming came bring brings bringing brought arrive arrives arrived go goes
    going gone went climb climbs climbing climbed step steps stepping walk walks walking stand stands standing
    stood sit sits sitting sat stay stays staying put puts set keep make makes do does doing done use uses
    using used work works working wear wearing wearer case present near behind within inside under next close
    reach handle handling hold holding take takes taking place person somebody someone stuff thing goods item
    people mind know suppose say quite very watching accompanied
    attended company running operating started starting
    starts start switched no not n't never without nobody none neither
""")
_OTHERS = "(?:me|us|him|her|them)"
_BY = Pattern(
    r"(?i)(?:(?:and|but|so|well|yes|no|what),? )*(?:(?:if|when|while|with|since|as|once) )?"
    r"(?:there(?:['\u2019]s| is| are) )?"
    r"(?:an?|the|my|our|another|some(?:one|body)?|his|her|two|three) [\w' -]+?"
    r"(?:['\u2019]s| is| are|['\u2019]ll be| will be)?"
    r"(?: (?:right|just|also|standing|sitting|always|already))* "
    r"(?:present|here|there|nearby|around|about|watching|at hand|on hand|in attendance|looking on|"
    rf"standing by|close by|(?:along |beside|with|by|next to|near) (?:with )?{_OTHERS}|"
    rf"(?:coming|going|walking|standing|sitting|working) (?:along )?(?:with|by|beside|next to) {_OTHERS})"
    r"(?: (?:too|as well|now|again|all the time|today|then))*\W*"
)
_FAMILIES = ("situation", "term")
_MOST, _STEM = 12, 7


def resting(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """The question before, with the one circumstance that its rules test and the turn names, so or not so."""
    before, lookup = previous.frame or previous.query, talk.lookup
    if before is None or len(before.items) != 1 or before.kind not in ("may", "must"):
        return None
    tokens = [token for token in tokenize(text) if token.low[0].isalnum() or token.low[0] == "'"]
    if not 1 < len(tokens) <= _MOST or _WHOLE.search(text):
        return None
    told = {token.key for token in tokens if token.low not in _IDLE and token.low not in _APART}
    apart = any(token.low in _APART for token in tokens)
    found = dict(_meant(told, apart, before, lookup)) if told and all(len(word) > 1 for word in told) else {}
    if len(found) != 1:
        return None
    ((fact, values),) = found.items()
    if _NOT.search(text):
        values = complement_of(lookup, fact, values)
    case = merge_case(before.case, {fact: values}, None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


_WHO = r"(?:i|he|she|we|they)"
_IT = r"(?:(?:my|the|his|her|our|their|an?) )?(?P<{}>[\w' -]+?)"
_ON = Pattern(
    r"(?i)\W*(?:(?:and|but|so|well|yes|ok|okay),? )*(?:"
    rf"{_IT.format('is')}(?:['\u2019](?:s|re)| is| are) on|"
    rf"{_WHO}(?:['\u2019](?:ve|s)| have| has)(?: got)? {_IT.format('got')} on|"
    rf"{_WHO}(?:['\u2019](?:m|s|re)| am| is| are) (?:wearing|going to wear|using) {_IT.format('doing')}|"
    rf"{_WHO}(?:['\u2019]ll| might| may| could| will|['\u2019]ve| have| has| need| needs)(?: got)?"
    rf"(?: have to| need to| to)? (?:use|wear|put on|have on) {_IT.format('due')})"
    r"(?: (?:too|as well|though|today|now|at times|sometimes|then|anyway))*[.! ]*"
)


def worn_with_it(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "He might have to use the respirator", of a beard: the question before, with that on.

    Only where a rule on the thing before asks whether the other is worn; nothing is asked of the other.
    """
    found, before = _ON.fullmatch(text.strip()), previous.frame or previous.query
    if found is None or before is None or len(before.items) != 1 or before.kind not in ("may", "must"):
        return None
    said = next(words for words in found.groupdict().values() if words)
    item = item_alone(f"the {said}", talk.lexicon, talk.lookup)
    if item is None or item in before.items or not tests_worn(before.items[0], item, talk.lookup):
        return None
    case = merge_case(before.case, {f"worn:{item}": YES}, None, False, talk.lookup)
    case = msgspec.structs.replace(case, alone=False)
    return talk.made(text, msgspec.structs.replace(before, case=case))


_WITH_IT = Pattern(
    r"(?:(?:and|but|so|or|even|what about|how about) )*with (?:it|that|one|them)"
    r"(?: (?:then|again|too|as well))*(?: ((?:in|on|at|when|if|while|during|for|under) .+))?"
)


def worn_again(text: str, said: str, before: Query, talk: Talk) -> Reading | None:
    """ "And with it in snow?", after the liner without the coat: with that on which was off.

    What was off is what "it" is: the thing asked about is not worn with itself.
    """
    found = _WITH_IT.fullmatch(said)
    if found is None:
        return None
    known, lookup = dict(before.case.facts), talk.lookup
    off = [f for f, v in known.items() if v == NO and lookup.facts[f].family == "worn"]
    off = [fact for fact in off if fact.partition(":")[2] not in before.items]
    if not off:
        return None
    if len(off) > 1:
        return Reading(question=text, abstain=Abstain(reason="It is not clear with what."))
    case = merge_case(before.case, {off[0]: YES}, None, False, lookup)
    again = talk.made(text, msgspec.structs.replace(before, case=case))
    return talk.read(f"and {found.group(1)}?", again) if found.group(1) else again


_FAIR = Pattern(
    r"(?i)\W*(?:(?:and|but|so|even|what),? )*(?:(?:if|when|once|while|whenever|now) )?"
    r"(?:it|the weather|the sky)(?:['\u2019]s| is| has)? (?:(?:all|now|quite|nice and) )*"
    r"(dry|fine|clear|fair)(?:(?:ed|s)(?: up)?)?(?: again| now| out| outside)*\W*"
)
_FOUL = word_set("""
    rain rainfall rainy raining drizzle snow snowfall snowy snowing blizzard sleet hail fog foggy mist ice icy
    storm thunder wet foul
""")
_STOPS = Pattern(
    r"(?i)\W*(?:(?:and|but|so|even|what|ok|okay|right|oh),? )*(?:(?:if|when|once|while|after|now|as soon as) "
    r"(?:that )?)?(?:it|that|they|the [\w' -]+?)(?:['\u2019](?:s|re)| is| are| has| have)?"
    r"(?: (?:all|now|just|quite|finally))* "
    r"(?:stop(?:s|ped)?|let(?:s|ting)? up|clear(?:s|ed|ing)? up|brighten(?:s|ed)? up|eases? (?:off|up)|"
    r"(?:(?:been|being|gets?|is|are) )?(?:switched|turned|shut|powered) (?:off|down)|"
    r"(?:standing |quite )?(?:still|idle)|off|blow(?:s|n) over|dr(?:y|ies|ied) up)"
    r"(?: (?:raining|snowing|running|moving|turning|for the day|again|now|then|altogether))*\W*"
)
_IT_STOPS = Pattern(r"(?i)\W*(?:(?:and|but|so|even|what) )*(?:if|when|once) it(?:['\u2019]s| has| is)? stop")
_GOING = word_set("running moving turning spinning rotating revolving going working started on operating")


def fair_again(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And when it's clear?", after fog, where the books have no name for fair weather: no fog."""
    before, lookup = previous.frame or previous.query, talk.lookup
    found = _FAIR.fullmatch(text)
    if before is None or not before.items or found is None:
        return None
    for fact, values in before.case.facts:
        record = lookup.facts[fact]
        if record.kind != "choice" or not isinstance(values, Choices) or values.complement:
            continue
        foul = {v.id for v in record.values if word_set(v.label.casefold()) & _FOUL}
        names = (name for value in record.values for name in (value.label, *value.other_labels))
        named = {word for name in names for word in name.casefold().split()}
        left = frozenset(value.id for value in record.values) - foul
        if values.members <= foul and left and found.group(1).casefold() not in named:
            case = merge_case(before.case, {fact: Choices(left)}, None, False, lookup)
            return talk.made(text, msgspec.structs.replace(before, case=case))
    return None


def stopped(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "What if it stops?", after rain, or a running machine: the question before with that not so.

    Where nothing was said that can stop, the thing itself is not meant to: then nothing is read of it.
    """
    before, lookup, found = previous.frame or previous.query, talk.lookup, _STOPS.fullmatch(text)
    if before is None or not before.items or found is None:
        return None
    said, over, stands = {token.key for token in tokenize(text)}, dict[str, ValueSet](), False
    for fact, values in before.case.facts:
        record = lookup.facts[fact]
        if record.family not in _FAMILIES or not isinstance(values, Choices) or values.complement:
            continue
        if record.kind == "choice":
            foul = {v.id for v in record.values if word_set(v.label.casefold()) & _FOUL}
            left = frozenset(value.id for value in record.values) - foul
            if values.members <= foul and left:
                over[fact] = Choices(left)
        elif word_set(record.label.casefold()) & (_FOUL | _GOING):
            stands = stands or values == NO
            over |= {fact: complement_of(lookup, fact, values)} if values == YES else {}
    named = {fact for fact in over if said & {t.key for t in tokenize(lookup.facts[fact].label)}}
    over = {fact: over[fact] for fact in named} or over
    if len(over) == 1:
        case = merge_case(before.case, over, None, False, lookup)
        return talk.made(text, msgspec.structs.replace(before, case=case))
    if not over and stands:  # "and when it's off?", after "what if it stops?"
        return talk.made(text, before)
    if _IT_STOPS.match(text) is None:
        return None
    return Reading(question=text, abstain=Abstain(reason="It is not clear what stops."))


def said_of_it(text: str, word: str, before: Query, talk: Talk) -> Reading | None:
    """ "Even if they're prescribed?", of lenses: no duty is asked for, but the one thing told of them."""
    other = contrasted(text, before, talk)
    if other is not None:
        return talk.made(text, other)
    stem = word.casefold()[:_STEM]
    told = {
        fact: YES
        for fact in facts_that_matter(before, talk.lookup)
        if talk.lookup.facts[fact].kind == "yes_no" and len(stem) == _STEM
        if any(token.low.startswith(stem) for token in tokenize(talk.lookup.facts[fact].label))
    }
    if len(told) != 1 or _NOT.search(text):
        return None
    case = merge_case(before.case, dict[str, ValueSet](told), None, False, talk.lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def someone_by(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "The Chargehand's with me" makes nobody a Chargehand: one is present, where the books ask that."""
    query, before = reading.query, previous.frame or previous.query
    if query is None or before is None or _BY.fullmatch(text) is None:
        return reading
    old = dict(before.case.facts)
    new = [fact for fact, values in query.case.facts if old.get(fact) != values]
    if not any(talk.lookup.facts[fact].family in PERSONAL for fact in new):
        return reading
    missed = Abstain(reason="That is said of somebody else, not of who asks.")
    return resting(text, previous, talk) or Reading(question=text, spans=reading.spans, abstain=missed)


def _meant(told: set[str], apart: bool, before: Query, lookup: Lookup) -> Iterator[tuple[str, ValueSet]]:
    known = dict(before.case.facts)
    for fact in facts_that_matter(before, lookup):
        record = lookup.facts[fact]
        if record.family not in _FAMILIES:
            continue
        for name, values in _named(record, lookup):
            words = [token for token in tokenize(name) if token.low[0].isalnum()]
            own = {token.key for token in words if token.low not in _IDLE and token.low not in _APART}
            if (own == told or (fact in known and told < own)) and apart == any(
                token.low in _APART for token in words
            ):
                yield fact, values


def _named(record: Fact, lookup: Lookup) -> Iterator[tuple[str, ValueSet]]:
    if record.kind == "yes_no":
        yield from ((name, YES) for name in (record.label, *record.other_labels))
    elif record.kind == "choice":
        for value in record.values:
            there = Choices(closure(lookup, record.id, value.id))
            yield from ((name, there) for name in (value.label, *value.other_labels))
