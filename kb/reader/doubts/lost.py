"""A last check that no name in a question is passed over: each is in what is asked, or told as unused."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import MONTHS
from kb.model.questions import Abstain, Ask, Query, Reading, Span
from kb.model.values import NO, Choices, Ranges
from kb.reader.names.lexicon import CREDENTIALS, PERSONAL
from kb.reader.pieces.naming import is_pattern_of
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern, visible

_WORN = "worn:"
_ACTS = frozenset({"wear", "carrying", "possession"})
_ASKED = frozenset({"may", "must", "who", "when", "why"})
_LEADING = ("over", "with", "whether", "regardless", "no matter")
_EITHER_WAY = Pattern(
    r"(?i)\b(?:over|with or without|whether or not|regardless of|no matter)(?: \w+){0,3} ?$"
)

_IT_GOES = Pattern(
    r"(?i)\bwhere (?:do|does|did|is|are|must|should|can|may) (?:it|they|this|that|these|those|them)"
    r"(?: one)?(?: be)? (?:go|sit|worn|put|placed|pinned|sewn|belong)\b[^?]* on (?:the|my|a|an|your) "
)
_WITH = Pattern(r"(?i)\s+(?:with|by|in|under)\s+(?:(?:a|an|the|my|your|his|her)\s+)?")

_SPELL = Pattern(r"(?i)\b(?:day|week|fortnight|month|year|spring|summer|autumn|winter)s?$")


def with_nothing_lost(reading: Reading, lookup: Lookup) -> Reading:
    """The reading, or that some of its words were not understood, where their names are not in the query."""
    if _takes_garment_for_it(reading):
        ask = Ask(fact="item", prompt="Which item is asked about?")
        return msgspec.structs.replace(reading, text="", query=None, ask=ask)
    spans = (*names_lost(reading, lookup), *_acts_lost(reading, lookup), *_own_lost(reading, lookup))
    told = (*_sides_lost(reading), *_pocketed(reading, lookup), *_beside_lost(reading, lookup))
    told = (*told, *_for_oneself(reading), *_asked_lost(reading), *_denied_aside(reading, lookup))
    lost = (*(span.text for span in spans), *told)
    if not lost:
        return reading
    shown = ", ".join(f'"{visible(word)}"' for word in lost)
    abstain = Abstain(reason=f"Not understood: {shown}.", words=lost)
    return msgspec.structs.replace(reading, text="", query=None, abstain=abstain)


_DENIES = frozenset({"not", "n't", "never"})


def _denied_aside(reading: Reading, lookup: Lookup) -> Iterator[str]:
    """ "I'm not serving, just clearing at dinner", read as serving at dinner: what was denied is not so."""
    facts = reading.query.case.facts if reading.query is not None else ()
    for one in (part.strip() for unused in reading.unused for part in unused.split(",")):
        lows = {token.low for token in tokenize(one)}
        if _DENIES.isdisjoint(lows):
            continue
        for fact, values in facts:
            record = lookup.facts.get(fact)
            known = isinstance(values, Choices) and not values.complement and values != NO
            if record is None or record.family != "situation" or fact in reading.carried or not known:
                continue
            named = [v.label for v in record.values if isinstance(values, Choices) and v.id in values.members]
            said = {token.low for label in (record.label, *named) for token in tokenize(label)}
            if any(low.endswith("ing") for low in said & lows):
                yield one
                break


_ASKS = Pattern(
    r"(?i)(?:do|does|did|must|should|shall|may|can|could|need|have|has)(?:n't)? "
    r"(?:i|we|you|he|she|they|it|anyone|anybody|someone|the|my|our|his|her)\b"
)


def _asked_lost(reading: Reading) -> Iterator[str]:
    """ "Do I have to tell anyone if I grow a beard?" asks of telling, which is not left out of it."""
    if reading.query is not None and reading.query.clause is None:
        yield from (one for one in reading.unused if _ASKS.match(one.strip()))


def _takes_garment_for_it(reading: Reading) -> bool:
    """ "Where does it go on the day shirt?", taken as where the day shirt goes: nothing was named before."""
    query = reading.query
    if query is None or query.kind not in ("where", "how") or not query.items or query.aspect != "position":
        return False
    it = _IT_GOES.search(reading.question)
    named = [span for span in reading.spans if span.role == "item" and span.target]
    return it is not None and len(named) == 1 and named[0].target == query.items[0]


def _acts_lost(reading: Reading, lookup: Lookup) -> Iterator[Span]:
    """ "Is a beard of 8 mm to be covered with a net": what is done with a thing, not asked of its measure."""
    query = reading.query
    if query is None or query.value is None or lookup.aspects[query.aspect].kind != "measure":
        return
    worn = {name for name, _ in query.case.facts if name.startswith(_WORN)}
    for span in reading.spans:
        act = lookup.aspects.get(span.target or "") if span.role == "aspect" else None
        if act is None or act.kind != "act" or act.id in _ACTS:
            continue
        means = [other for other in reading.spans if other.role == "item" and other.start > span.end]
        if any(
            f"{_WORN}{other.target}" in worn and _WITH.fullmatch(reading.question[span.end : other.start])
            for other in means
        ):
            yield span


_SIDED = Pattern(
    r"(?i)\b(?:left|right)(?:[- ]hand)? (?:sleeve|breast|chest|arm|shoulder|pocket|side|lapel|cuff|wrist|hand"
    r"|hip|thigh|leg|foot)\b"
)


def _sides_lost(reading: Reading) -> Iterator[str]:
    """ "The band on the right sleeve", where no more than wearing the band is asked about."""
    query = reading.query
    if (
        query is None
        or query.kind not in ("may", "must")
        or query.aspect not in _ACTS
        or query.value is not None
    ):
        return
    unused = " ".join(reading.unused)
    for found in _SIDED.finditer(reading.question):
        if found.group() not in unused and found.group() not in reading.text:
            yield found.group()


_POCKET = Pattern(r"(?i)\bin (?:(?:my|a|his|her|your|the|our|their) )?(?:[\w-]+ )?pockets?\b")


_STOWED = Pattern(
    r"(?i)\b(?:pockets?|pouch|bag|belt|case|box|holster|sheathe?d?|hands?|hung|hangs?|clip|clipped|lanyard|cord"
    r"|chain|neck|wrist|hooked|strap|breast|waist|drawer|locker)\b"
)
"""What a rule says how, or where, a thing is carried by; not that it is silent, or out of sight."""


def _pocketed(reading: Reading, lookup: Lookup) -> Iterator[str]:
    """ "The disc in my pocket": it is not worn there, nor carried so where a rule says how it is carried."""
    query, found = reading.query, _POCKET.search(reading.question)
    if query is None or found is None or query.kind not in ("may", "must") or query.value is not None:
        return
    items = [span for span in reading.spans if span.role == "item" and span.end <= found.start()]
    if not any(not reading.question[span.end : found.start()].strip() for span in items):
        return  # "my waiver in my pocket"
    carried = query.aspect == "carrying" and not any(
        lookup.aspects[rule.aspect].within in ("fit", "fastening")
        for rule in lookup.base.rules
        if {*lookup.broader(query.items[0])} & {*rule.scope.items}
        and _STOWED.search(lookup.aspects[rule.aspect].label)
    )
    if query.aspect in _ACTS and not carried and found.group() not in " ".join(reading.unused):
        yield found.group()


_ONESELF = Pattern(r"(?i)\bfor (?:(?:my|me|your|him|his|her|one)self|(?:our|them|their)selves)\b")


def _for_oneself(reading: Reading) -> Iterator[str]:
    """ "An umbrella for myself": whom a thing is worn or carried for, which a rule may tell."""
    query, found = reading.query, _ONESELF.search(reading.question)
    if found is not None and query is not None and query.kind in ("may", "must") and query.aspect in _BORNE:
        yield found.group()


_BORNE = frozenset({"wear", "carrying"})
_REACHING = Pattern(
    r"(?i)\b(?:to|past|below|over) (?:the |my |his |her )?(?:collar|shoulders?|chest|waist|hips?|knees?"
    r"|ankles?)\b"
)


def _beside_lost(reading: Reading, lookup: Lookup) -> Iterator[str]:
    """ "Hair 1 in below the collar, gathered up", "hair loose, to the shoulders": how a thing is worn where
    it is asked how far it reaches, or the other way round, where rules tell of both."""
    query = reading.query
    if query is None or not query.items or query.kind not in ("may", "must"):
        return
    own = {*lookup.broader(query.items[0])}
    spoken = {lookup.aspects[rule.aspect] for rule in lookup.rules_on(own)}
    asked = lookup.aspects[query.aspect]
    ways = [one for one in spoken if one.within in ("fit", "fastening")]
    if asked.kind == "measure" and query.value is not None:
        said = {token.key for token in tokenize(reading.question)}
        words = ([token.key for token in tokenize(way.label)] for way in ways)
        yield from (" ".join(keys) for keys in words if 1 < len(keys) < 4 and said.issuperset(keys))
    elif asked.within == "fastening" and isinstance(
        query.value, Ranges
    ):  # "the hem 3 in below the knee, buttoned"
        yield from (span.text for span in reading.spans if span.role == "measure")
    elif asked in ways and any(one.id == "reach" for one in spoken):
        yield from (found.group() for found in _REACHING.finditer(reading.question))


_OWN = Pattern(
    r"(?i)\b(?:mine|ours|his|hers|theirs|it|they)"
    r"(?:['’]s|['’]re| (?:is|are|was|were|reach(?:es)?|measures?|comes? (?:up )?to)) (?:(?:only|just) )?$"
)


def _own_lost(reading: Reading, lookup: Lookup) -> Iterator[Span]:
    """ "Must the socks be 6 in high, mine are 5": the measure told of one's own thing, where another is
    asked about."""
    query = reading.query
    if query is None or query.value is None or lookup.aspects[query.aspect].kind != "measure":
        return
    for span in reading.spans:
        told = span.role == "measure" and _OWN.search(reading.question[: span.start]) is not None
        said = f" {reading.text} ".replace("?", " ")
        if told and span.text not in reading.unused and f" {span.text} " not in said:
            yield span


def names_lost(reading: Reading, lookup: Lookup) -> Iterator[Span]:
    """The names of things, facts and measures that are neither in the query nor told as unused.

    A clause is shown for whatever is said, "when" asks of facts by their names, a season may tell the day.
    Parts of things, and things in a question of how or where, may only say what is measured or placed.
    """
    query = reading.query
    if query is None or query.clause is not None:
        return
    facts = {name for case in (query.case, query.other) if case is not None for name, _ in case.facts}
    items = _akin(query, facts, lookup)
    unused = " ".join(reading.unused)
    asked = (
        f" {reading.question.casefold()} "  # "is it only officers that may?", "must I be a K3 to wear it?"
    )
    limited = " only " in asked or " just " in asked
    whom = query.kind == "who" and (limited or (" be " in asked and " to " in asked))
    days = query.other is not None and query.other.as_of != query.case.as_of
    for span in reading.spans:
        if span.text in unused:
            continue
        if not span.target:
            if _is_length_lost(span, query):
                yield span
            continue
        if days and _SPELL.search(span.text):
            continue  # "in the last 12 months", "this summer": the days of the two sides
        if span.role == "item" and span.target in lookup.items:
            lost = _is_asked_of(span, query, reading, lookup) and span.target not in items
            lost = lost and not any(is_pattern_of(item, span.target, lookup) for item in query.items)
        elif span.role in ("fact", "grade") and span.target in lookup.facts:
            lost = span.target not in facts and not _may_be_absent(span.target, query, facts, lookup)
            lost = lost and not _is_item_asked(span, query, lookup) and not _is_act(span, query, lookup)
            lost = lost and not (whom and lookup.facts[span.target].family in PERSONAL)
        else:
            lost = span.role == "measure" and not _measures(span, query, facts, lookup)
        if lost:
            yield span


_LENGTH = Pattern(r"(?i)^.*\d.*(?:mm|cm|in|inch(?:es)?|ft|feet|foot|″|\")$")


def _is_length_lost(span: Span, query: Query) -> bool:
    """ "Shoes with a heel of 50 mm": a length that is told where no more than wearing is asked about."""
    plain = query.kind in _ASKED and query.value is None and query.aspect in _ACTS
    return plain and span.role == "measure" and _LENGTH.match(span.text) is not None


def _is_act(span: Span, query: Query, lookup: Lookup) -> bool:
    """Whether a name is the act asked about ("may the sleeves be rolled up"), or of what is measured."""
    aspect = lookup.aspects.get(query.aspect)
    if aspect is not None and aspect.kind == "measure":  # "how high are the letters", and no doctor's letter
        return {t.key for t in tokenize(span.text)} <= {t.key for t in tokenize(aspect.label)}
    done = aspect.done if aspect is not None else None
    return done is not None and done != "worn" and done in span.text.casefold().split()


def _is_item_asked(span: Span, query: Query, lookup: Lookup) -> bool:
    """Whether a rig that is named is what is asked about: "must cadets come in cadet dress"."""
    said = span.text.casefold()
    return any(lookup.items[item].label.casefold() in said for item in query.items if item in lookup.items)


def _akin(query: Query, facts: set[str], lookup: Lookup) -> set[str]:
    """The things of the query with what they are kinds of, their kinds, and their wholes and parts."""
    named = {*query.items, *(name.removeprefix(_WORN) for name in facts if name.startswith(_WORN))}
    found = {akin for i in named if i in lookup.items for akin in (*lookup.broader(i), *lookup.narrower(i))}
    wholes = {whole for item in found if (whole := lookup.items[item].part_of) is not None}
    found |= {kind for whole in wholes for kind in lookup.narrower(whole)}
    return found | {item.id for item in lookup.base.items if item.part_of in found}


def _is_asked_of(span: Span, query: Query, reading: Reading, lookup: Lookup) -> bool:
    """Whether a thing that is named must be one that the query is about."""
    if query.kind not in _ASKED or query.aspect not in _ACTS or span.target is None:
        return False
    label = lookup.items[span.target].label.casefold()
    rigs = (lookup.facts[f] for f, _ in query.case.facts if lookup.facts[f].family == "rig")
    if any(value.label.casefold() == label for rig in rigs for value in rig.values):
        return False  # a rig that is a thing, too, is told by the fact
    before = reading.question[: span.start]
    led = any(word in before.lower() for word in _LEADING) and _EITHER_WAY.search(before) is not None
    held = {t.key for name, _ in query.case.facts if _is_held(name, lookup) for t in _words_of(name)}
    named = {token.key for token in tokenize(span.text)}  # "if I hold the diver's badge"
    return not led and held.isdisjoint(named) and "feature" not in lookup.broader(span.target)


def _is_held(fact: str, lookup: Lookup) -> bool:
    return lookup.facts[fact].family in CREDENTIALS


def _words_of(fact: str) -> tuple[Token, ...]:
    return tokenize(fact.partition(":")[2].replace("-", " "))


def _may_be_absent(fact: str, query: Query, facts: set[str], lookup: Lookup) -> bool:
    """Whether a fact that is named need not be known: "when", a month that tells the day of a side
    of a comparison, or "last winter", where the month is."""
    if query.other is not None and len(lookup.facts[fact].values) == len(MONTHS):
        return True
    label = lookup.facts[fact].label.casefold()
    if query.polarity == "not" and label.endswith(" off"):  # "tunic off?" asks of the tunic
        bare = set(label.removesuffix(" off").split())
        return any(bare & set(lookup.items[item].label.casefold().split()) for item in query.items)
    dated = lookup.facts[fact].family == "term" and any(
        len(lookup.facts[f].values) == len(MONTHS) for f in facts
    )
    return query.kind == "when" or dated


def _measures(span: Span, query: Query, facts: set[str], lookup: Lookup) -> bool:
    """Whether an amount with a unit is asked about or known."""
    plain = not any(c.isalpha() for c in span.text) or not any(c.isdigit() for c in span.text)
    kinds = {lookup.facts[fact].kind for fact in facts}
    return plain or query.value is not None or not kinds.isdisjoint(("quantity", "scale", "date"))
