"""How a thing is, in other words: "visor down" is lowered, "if nobody sees it" is not seen.

Read only where one thing is named of which the books say something of the kind.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from kb.errors import UsageError
from kb.measures import MeasureError, parse_measure
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Rule
from kb.reader.pieces.pieces import Understood
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

Edit = tuple[int, int, str]
_ITEMS = ("item", "items")
_THE = r"(?:(?:the|my|our|your|his|her|their|its) )?"
_OFF = Pattern(
    r"(?i)(?:the |my |our )?(?P<it>[a-z-]+(?: [a-z-]+)?) off,? (?P<rest>[^?!]*?)[,.;:]? ?"
    r"(?:(?:is|would) (?:that|it|this) (?:be )?)?(?:allowed|ok|okay|fine|all right|alright|permitted)\W*"
)
_LOWERED = frozenset({"lowered", "down"})
_UNSEEN = Pattern(
    r"(?i),? ?\b(?:(?:if|when|as long as|so long as|provided|provided that|where|and) )?"
    r"(?:(?:nobody|no one|no-one|people (?:can't|cannot|don't)|you (?:can't|cannot|don't)|they can't) "
    r"(?:can |will |ever )?(?:sees?|notices?) (?:it|them|that)|"
    r"(?:it|they|that) (?:is|are|'s|'re|stays?|remains?)?(?: |)(?:not (?:seen|visible|showing|on show)"
    r"|unseen|out of (?:sight|view)|invisible|hidden(?: away)?)|"
    r"(?:it|they|that) (?:does not|doesn't|do not|don't|cannot|can't) (?:show|be seen))(?=\W|$)"
)
_SEEN = frozenset({"seen", "visible", "sight", "view", "show", "showing", "shows"})
_WITHIN = Pattern(r"\b(?:within|closer than|less than|nearer than) (\d[\d.]* ?(?:mm|cm|km|m|ft))\b")
_AWAY = Pattern(
    r"(?i),? ?\b(?:(?:about|some|roughly|around|only|just|barely|at|from|within|less than) )*"
    r"(\d[\d.]*|one|two|three|four|five|six|seven|eight|nine|ten) ?"
    r"(m|metres?|meters?|ft|feet|foot)\b(?: (?:away|off))?(?: from (?:me|us|him|her|you|them))?"
)
_APART = Pattern(r"(?i)\b(?:away|off|from|within|at)\b")
_EITHER = Pattern(r"(?i)\b(?:up or down|down or up)\b")  # two questions in one; not read
_FARTHER = Pattern(
    r"(?i)\b(?:more than|over|beyond|at least|further than|farther than|not|above|past|to|or|and)\W*$"
)
_MOVED = frozenset({"up", "down"})
_ASKS = (
    r"(?:is|are|should|must|does|do|shall|has|can|may|could|(?:do|must|should|may|can|could)"
    r" (?:i|we|you|he|she) (?:have to |need to )?(?:have|keep|leave|wear|put))"
)
_BEING = r"(?:to|be|go|stay|worn|kept|left|put|always|have)"
_HELD = r"(?:is|are|be|worn|kept|put|left|stays?)"
_LOOSE = (
    r"(?=[,.;:?!]|$| (?:in|on|at|when|while|if|with|during|for|afloat|ashore|outdoors|indoors|outside)\b)"
)
"""What follows where "up" leads to nothing: no "up to the visor", "down the front"."""


def let_down(found: Understood, lookup: Lookup) -> str | None:
    """The text with "down" as what is done to the one thing that rules lower; None where it says none."""
    bare = _bare(found, lookup)
    if bare is not None:
        return bare
    items = {e.id: p for p in found.pieces if p.tag in _ITEMS and len(p.entries) == 1 for e in p.entries}
    done = [(piece, verb) for item, piece in items.items() if (verb := _lowering(item, lookup))]
    if len(done) != 1:
        return None
    piece, verb = done[0]
    tokens = found.tokens
    name = found.text[tokens[piece.first].start : tokens[piece.last - 1].end]
    it = _THE + re.escape(name)
    asked = r"(?:is|should|must|does|shall|has|do i (?:have|need|keep))"
    allowed = r"(?:can|may|could) (?:i|we|you|he|she|they|one) (?:have|keep|leave|wear|push|flip|put)"
    ways = (
        (rf"\b{asked} {it}(?: (?:to )?(?:be|go|stay))? down\b(?! or up)", f"must the {name} be {verb}"),
        (rf"\b{allowed} {it} up\b(?! or down)", f"may the {name} not be {verb}"),
        (rf"\b{it} down\b(?! or up)", f"{name} {verb}"),
    )
    for way, put in ways:
        changed = re.sub(way, put, found.text, count=1, flags=re.IGNORECASE)
        if changed != found.text:
            return changed
    return None


def _how_held(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Chin strap down on deck?", of what a clause has up or down: how it is worn, whichever is said."""
    tokens = found.tokens
    if _MOVED.isdisjoint(token.low for token in tokens):
        return
    items = {e.id: p for p in found.pieces if p.tag in _ITEMS and len(p.entries) == 1 for e in p.entries}
    held = [(piece, item) for item, piece in items.items() if _is_held(item, lookup)]
    if len(held) != 1:
        return
    piece, item = held[0]
    name = re.escape(found.text[tokens[piece.first].start : tokens[piece.last - 1].end])
    asked = rf"(?P<it>(?:(?:so |and )?{_ASKS} )?{_THE}{name}(?: {_BEING})*"
    asked = rf"(?:^|[,.;:!?] ){asked} (?:up|down)(?: or (?:up|down|not))?){_LOOSE}"
    match = re.search(asked, found.text, re.IGNORECASE)
    if match is not None:
        yield match.start("it"), match.end("it"), f"how is the {lookup.items[item].label} worn"


def _is_held(item: str, lookup: Lookup) -> bool:
    """Whether a clause says of a thing itself that it is up or down."""
    named = rf"\b{re.escape(lookup.items[item].label)}s?\b[^.;]*?\b{_HELD} (?:up|down)\b"
    clauses = {rule.clause for rule in lookup.rules_on((item,))}
    return any(re.search(named, lookup.clauses[clause].text, re.IGNORECASE) for clause in clauses)


def _bare(found: Understood, lookup: Lookup) -> str | None:
    """ "With my tunic off" as the books' "tunic off"; "tunic off, allowed?" as whether it may come off."""
    asked = _OFF.fullmatch(found.text.strip())
    if asked is not None:
        return f"may I take the {asked['it']} off {asked['rest']}?"
    taken = _taken_off(found, lookup)
    if taken is not None:
        return taken
    for fact in lookup.base.facts:
        label = fact.label.casefold()
        if fact.kind == "yes_no" and label.endswith((" off", " on", " up", " down")):
            owned = rf"\bwith (?:(?:the|my|our|your|his|her|their) )?(?={re.escape(label)}\b)"
            changed = re.sub(owned, "when ", found.text, flags=re.IGNORECASE)
            if changed != found.text:
                return changed
    return None


_ASKED = frozenset(
    {"may", "can", "must", "should", "have to", "required", "optional", "how", "what", "which", "when"}
)
_FINE = Pattern(r"(?i)[ ,.;:–-]*(?:ok|okay|fine|allowed|all right|alright|permitted)?[ ?.!]*$")


def _taken_off(found: Understood, lookup: Lookup) -> str | None:
    """ "19 degrees outside - tunic off?", of a fact "tunic off" of the books: whether it may come off."""
    rigs = {v.label.casefold() for f in lookup.base.facts if f.family == "rig" for v in f.values}
    things = (e.id for p in found.pieces if p.tag in _ITEMS for e in p.entries)
    if any(lookup.items[item].label.casefold() not in rigs for item in things):
        return None
    if any(piece.tag in _ASKED for piece in found.pieces):
        return None
    facts = [p for p in found.pieces if p.tag == "fact" and p.fact in lookup.facts]
    off = [p for p in facts if lookup.facts[p.fact].label.casefold().endswith(" off")]
    if len(off) != 1 or found.tokens[off[0].last - 1].low != "off":
        return None
    tokens, text = found.tokens, found.text
    before = text[: tokens[off[0].first].start].strip(" ,.;:–-")
    after = _FINE.sub("", text[tokens[off[0].last - 1].end :]).strip(" ,.;:–-")
    said = lookup.facts[off[0].fact].label.casefold().removesuffix(" off").removeprefix("the ")
    return f"{before + ', ' if before else ''}may I take the {said} off{' ' + after if after else ''}?"


def _lowering(item: str, lookup: Lookup) -> str:
    """The participle of the act of letting an item down, where a rule speaks of it; "" where none does."""
    aspects = {rule.aspect for rule in lookup.rules_on((item,))}
    done = [lookup.aspects[aspect].done or "" for aspect in aspects]
    return next((verb for verb in done if _LOWERED.intersection(verb.split())), "")


def states(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and other words of each such stretch of a text."""
    items = {e.id for p in found.pieces if p.tag in _ITEMS and len(p.entries) == 1 for e in p.entries}
    rules = lookup.rules_on(items)
    if any(_hides(rule, lookup) for rule in rules):
        for match in _UNSEEN.finditer(found.text.replace("’", "'")):
            yield match.start(), match.end(), ", not seen,"
    yield from _near_enough(found, rules, lookup)
    yield from _how_held(found, lookup)


def hidden_matters(items: set[str], lookup: Lookup) -> bool:
    """Whether the books say of one of the items whether it may be seen."""
    return any(_hides(rule, lookup) for rule in lookup.rules_on(items))


def _hides(rule: Rule, lookup: Lookup) -> bool:
    label = lookup.aspects[rule.aspect].label
    return not _SEEN.isdisjoint(token.low for token in tokenize(label))


def _near_enough(found: Understood, rules: tuple[Rule, ...], lookup: Lookup) -> Iterator[Edit]:
    """ "Cutting gear 3 m away", of a fact that every clause takes for "within 5 m": no more than the fact."""
    said = {piece.fact for piece in found.pieces if piece.tag == "fact"}
    resting = [rule for rule in rules if any(test.fact in said for test in tests(rule.condition))]
    texts = {lookup.clauses[rule.clause].text for rule in resting}
    limits = [_length(match.group(1)) for text in texts if (match := _WITHIN.search(text))]
    if not limits or len(limits) != len(texts) or _EITHER.search(found.text):
        return
    for match in _AWAY.finditer(found.text):
        length = _length(f"{match.group(1)} {match.group(2)}")
        near = length is not None and all(limit is not None and length <= limit for limit in limits)
        farther = _FARTHER.search(found.text[: match.start()])
        if near and not farther and _APART.search(match.group(0)):
            yield match.start(), match.end(), ""


def _length(said: str) -> Fraction | None:
    from kb.reader.words.forms import NUMBER_WORDS  # noqa: PLC0415  few texts tell a distance

    number, _, unit = said.partition(" ")
    figure = str(NUMBER_WORDS.get(number.casefold(), number))
    try:
        interval = parse_measure(f"{figure} {unit}" if unit else said).interval
    except (MeasureError, UsageError):
        return None
    return interval.high
