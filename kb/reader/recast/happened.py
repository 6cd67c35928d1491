"""What became of a rule: "what happened to the 25 mm limit for beards", "when did they stop training shoes".

Told by the one clause that altered what is named, if one did: it says what was changed, and its day is said
with it. Every word of weight must stand in that clause or in one that it altered.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import product

from kb.model.altering import altered, is_altered
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query
from kb.model.records import Case, Clause, is_in_force
from kb.reader.meaning.fits import rules_of_aspect
from kb.reader.meaning.superseded import LEAD
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.recast.telling import LIGHT, analysed, clause_words, word_level
from kb.reader.words.forms import word_set
from kb.text import Pattern

_BECOMES = (
    r"(?:happen(?:ed)?|become|became|gone on|been done|was done|did (?:they|you) do|have they done)"
    r" (?:to|of|with|about)"
)
_PAST = (
    r"(?:stop(?:ped|s)?|start(?:ed|s)?|beg[aiu]n|end(?:ed|s)?|chang(?:e|ed|es)|c[oa]me (?:in|out|into|off)"
    r"|go (?:out|up|down)|g?one|went|drop(?:ped)?|scrap(?:ped)?|abolish(?:ed)?|banned|ban|barred|bar"
    r"|forbidden|forbid|prohibited|allowed|allow|permitted|permit|let|brought|bring|introduced?|relax(?:ed)?"
    r"|tighten(?:ed)?|rais(?:e|ed)|lower(?:ed)?|cut|reduc(?:e|ed)|shorten(?:ed)?|lift(?:ed)?|replaced?"
    r"|withdrawn|withdraw|amend(?:ed)?|updat(?:e|ed)|alter(?:ed)?|mak(?:e|ing)|made|become|became|add(?:ed)?"
    r"|get|got|taken?|optional|compulsory)"
)
_ASKED = (
    Pattern(
        rf"{LEAD}(?:what(?:ever)?(?: ['’]s| has| have| ever| on earth)*"
        r"|(?:has|did) (?:anything|something)(?: ever)?)"
        rf" {_BECOMES} (?P<thing>.+)"
    ),
    Pattern(
        rf"{LEAD}(?:when|(?:on |from )?(?:what|which) (?:day|date)|how long ago)(?: exactly)?"
        rf" (?:did|was|were|has|have|had) (?P<thing>(?=.*\b{_PAST}\b).+)"
    ),
    Pattern(
        rf"{LEAD}(?:since|from|as of) (?:when|(?:what|which) (?:day|date))(?: exactly)?"
        r" (?:did|do|does|is|are|was|were|has|have|had|can|could|may|must) (?P<thing>.+)"
    ),
    Pattern(
        rf"{LEAD}(?:when|(?:on |from )?(?:what|which) (?:day|date))(?: exactly)? (?:does|do|will|is|are)"
        r" (?P<thing>(?:the )?(?:\S+ ){0,6}(?:rules?|bans?|limits?|changes?|exceptions?)"
        r" (?:(?:come|go|coming|going) (?:in(?:to)?|out)(?: (?:force|effect))?|start(?:ing|s)?|begin(?:ning)?"
        r"|change|changing|appl(?:y|ies)|take effect))"
    ),
    Pattern(rf"{LEAD}how long (?:has|have) (?P<thing>(?=.*\bbeen\b).+)"),
)
_SINCE = Pattern(
    r"(?:(?:and|so|but|oh|really) )*(?:since|from|as of) (?:when|(?:what|which) (?:day|date))"
    r"(?: (?:is|was|are|has|have) (?:that|this|it|they|these|those)(?: been)?(?: so| the rule| the case)?)?"
    r"(?: (?:it|they|that) (?:used to be|was|were)(?: \S+){1,3})?"
)
_OWN = Pattern(r"^(?:my|his|her) ")
_SAID_OF_RULES = word_set("""
    rule rules limit limits limited leaving leave left ban bans dates date months month business
    exception exceptions provision allowance being having wearing worn wear allowed allow allowing
    permitted permit let letting banned barred bar forbidden forbid prohibited compulsory optional
    required needed needing able called stop stopped stopping start started starting begin began begun
    end ended change changed come came in out into force effect go gone went drop dropped scrap scrapped
    abolish abolished bring brought introduce introduced relax relaxed tighten tightened raise raised
    lower lowered cut reduce reduced shorten shortened lift lifted replace replaced withdrawn withdraw
    amend amended update updated alter altered make made making become became add added year week lately
    recently old former previous original maximum minimum length height size everyone everybody anyone we
    us they them it off own new current longer ago first last this now please exactly ever nowadays long
    days these yet since used true lets taken take bother idea whole thing get got way mm cm degrees
    degree c f mention mentioned written back
""")
"""Words that speak of a rule and not of what it is about."""


def what_happened(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The clause in force that altered what is asked about; None where none did, or several as surely."""
    thing = _thing(found)
    if thing is None or any(p.tag in ("date", "on date") for p in found.pieces if p.first >= thing):
        return None  # "after 30 September" asks for what holds then
    named = [p for p in found.pieces if p.first >= thing and _named(p)]
    places = {place for p in named for place in range(p.first, p.last)}
    others = [token.low for place, token in enumerate(found.tokens) if place >= thing and place not in places]
    rest = [low for low in others if low[0].isalpha() and low not in LIGHT | _SAID_OF_RULES]
    figures = [low for low in others if low[0].isdecimal()] if not named else []
    now = [clause for clause in lookup.base.clauses if is_in_force(clause, case.as_of)]
    later = [clause for clause in lookup.base.clauses if _is_to_come(clause, case)]
    for altering, clauses in product((altered, _begun_after), (now, later)):
        scored = [
            (score, clause.id)
            for clause in clauses
            if (old := altering(clause, lookup))
            and _has_figures(figures, (clause.id, *old), lookup)
            and (score := _told(named, rest, clause, old, found, lookup, bool(figures and rest)))
        ]
        best = max((score for score, _ in scored), default=0)
        chosen = [clause for score, clause in scored if score == best]
        if chosen:
            return Query(kind="source", clause=chosen[0], case=case) if len(chosen) == 1 else None
    return None


def _is_to_come(clause: Clause, case: Case) -> bool:
    """Whether a clause is made already and will be law: "when were phones banned" may be of next year."""
    return clause.valid_from is not None and case.as_of is not None and clause.valid_from > case.as_of


def _begun_after(clause: Clause, lookup: Lookup) -> tuple[str, ...]:
    """The older clauses on what a clause has begun or ended on a day of its own, as a phase-out does."""
    rules = lookup.rules_of(clause.id)
    things = {item for rule in rules if rule.valid_from != clause.valid_from for item in rule.scope.items}
    if not things:
        return ()
    near = {kind for item in things for kind in (item, *lookup.broader(item))}
    older = (one for one in lookup.base.clauses if is_altered(one, clause, lookup))
    return tuple(
        one.id
        for one in older
        if any(not near.isdisjoint(rule.scope.items) for rule in lookup.rules_of(one.id))
    )


def since_when(found: Understood, before: Query, lookup: Lookup) -> Query | Abstain | None:
    """ "Since when?": the one clause in force that altered what the question before was about."""
    said = " ".join(token.low for token in found.tokens if token.low[0].isalnum())
    if not before.items or not _SINCE.fullmatch(said):
        return None
    things, case = before.items[:1], before.case
    ruling = [rule for rule in rules_of_aspect(things, before.aspect, lookup) if not rule.residual]
    deciding = {rule.clause: rule.valid_from for rule in ruling if is_in_force(rule, case.as_of)}
    altering = [
        clause.id
        for clause in lookup.base.clauses
        if is_in_force(clause, case.as_of) and altered(clause, lookup) and _covers(things, clause, lookup)
    ]
    own = [clause for clause in altering if clause in deciding]
    if not altering:  # a later book's clause that replaces no older one
        days = deciding.values()
        altering = [clause for clause, begun in deciding.items() if begun == max(days) > min(days)]
    newer = [d for d in deciding.values() if altering and d > lookup.clauses[altering[0]].valid_from]
    if len(own or altering) != 1 or (newer and not own):
        # the day of another clause would be none of what was answered, and when it is worn is not asked
        return Abstain(reason="It is not clear of which clause the day is asked.")
    (clause,) = own or altering
    return Query(kind="source", items=things, aspect=before.aspect, clause=clause, case=case)


def _thing(found: Understood) -> int | None:
    """The place of the first word of what it happened to."""
    tokens = found.tokens[: len(found.tokens) - (found.tokens[-1].low in ("?", ".", "!"))]
    said = " ".join(token.low for token in tokens)
    match = next((m for p in _ASKED if (m := p.fullmatch(said)) is not None), None)
    if match is None or _OWN.match(match["thing"]) or found.tokens[len(tokens) - 1].low == "how":
        return None  # "what happened to my scarf?"; "when did it change, and how?"
    return len(said[: match.start("thing")].split())


def _named(piece: Piece) -> bool:
    return piece.tag in ("item", "items", "fact", "fact name", "grade")


def _told(
    named: Sequence[Piece], rest: Sequence[str], clause: Clause, old: Sequence[str], found: Understood,
    lookup: Lookup, measured: bool,
) -> int:  # fmt: skip
    """How much of what is named a clause alters: 0 where it is not on it, or a word stands nowhere in it."""
    new = clause_words(clause)
    words = (*new, *(word for one in old for word in clause_words(lookup.clauses[one])))
    score, things = 0, measured  # "the 85 decibel limit" names no thing
    for piece in named:
        items = [entry.id for entry in piece.entries if entry.id in lookup.items]
        said = all(
            word_level(word, words)
            for t in found.tokens[piece.first : piece.last]
            for word in analysed(t.low)
        )
        if items and _covers(items, clause, lookup):
            score, things = score + 4, True
        elif items:
            return 0
        elif said:
            score, things = score + 1, things or not any(_is_item(p) for p in named)
    for word in rest:
        lemmas = analysed(word)
        if not all(word_level(lemma, words) for lemma in lemmas):
            return 0
        score += 2 * all(word_level(lemma, new) for lemma in lemmas)
    return score if things else 0


def _has_figures(figures: Sequence[str], clauses: Sequence[str], lookup: Lookup) -> bool:
    """Whether each number stands in what a clause says, or in what it altered."""
    numbers = {word for one in clauses for word in re.findall(r"\d+(?:\.\d+)?", lookup.clauses[one].text)}
    return numbers.issuperset(figures)


def _is_item(piece: Piece) -> bool:
    return piece.tag in ("item", "items")


def _covers(items: Sequence[str], clause: Clause, lookup: Lookup) -> bool:
    """Whether a clause has a rule on one of some things, or names one."""
    ruled = {item for rule in lookup.rules_of(clause.id) for item in rule.scope.items}
    near = {kind for item in items for kind in (*lookup.narrower(item), *_closest(item, lookup))}
    return not ruled.isdisjoint(near) or any(_names(item, clause, lookup) for item in items)


def _closest(item: str, lookup: Lookup) -> Iterator[str]:
    """The classes of a thing that are narrow enough to be spoken of for it."""
    yield from (kind for kind in lookup.broader(item) if len(lookup.narrower(kind)) <= _FEW)


_FEW = 4


def _names(item: str, clause: Clause, lookup: Lookup) -> bool:
    words = set(analysed(f"{clause.heading or ''}. {clause.text}"))
    labels = (lookup.items[item].label, *lookup.items[item].other_labels)
    return any(set(analysed(label)) <= words for label in labels)
