"""Who gives leave, and who was given it: "can the Matron let me wear it", "the Manager has permitted it".

Whoever allows, excuses or lets somebody is not the wearer. What was told to be granted is taken as granted
where the books have it that this authority grants it; else the clause is shown that says who may.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import msgspec

from kb.model.conditions import tests
from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading, Span
from kb.model.records import Case, Clause, Fact, FactValue, Named, is_in_force
from kb.model.values import Choices
from kb.reader.meaning.superseded import LEAD
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.spans import make_spans
from kb.reader.recast.let_off import (
    ABLE,
    BESIDE,
    FREES,
    LETS,
    MODAL,
    NONE_SAYS_WHO,
    PEOPLE,
    SOMEBODY,
    WHO_CAN,
    WITHOUT,
    begun,
    has_words,
    in_order,
    nobody_may,
    strange,
)
from kb.reader.recast.telling import LIGHT
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import tokenize
from kb.text import Pattern
from kb.wording import say_query

_ME = r"(?:me|us|him|her|them|you|(?:my|our) \w+)"
_WEAR = r"(?:wear|have|keep|put)(?: on)?"
_LEAVE = r"(?:leave|permission|consent|the go-ahead|the ok|an? (?:written )?(?:waiver|permit|dispensation))"
_ALLOWS = (
    rf"(?:(?:let|allow|permit|authori[sz]e) {PEOPLE}(?: to)? {_WEAR}"
    rf"|(?:allow|permit|authori[sz]e|approve|sanction)(?: {_ME})?"
    rf"|give {SOMEBODY} {_LEAVE} (?:to {_WEAR}|for))"
)
_LETS_NOW = (
    rf"(?:lets {PEOPLE} off|(?:excuses|exempts|releases) {PEOPLE} from|waives)"
    rf"(?: having to)?(?: wear| wearing)?|lets {PEOPLE} {WITHOUT}"
)
_ALLOWS_NOW = (
    rf"(?:(?:lets|allows|permits|authori[sz]es) {PEOPLE}(?: to)? {_WEAR}|(?:allows|permits|authori[sz]es"
    rf"|approves|sanctions)(?: {_ME})?|(?:gives|grants) (?:{SOMEBODY} )?{_LEAVE} (?:to {_WEAR}|for))"
)
_ASKED = (
    Pattern(
        rf"{LEAD}{MODAL}(?: n't| not)? (?P<who>.+?) (?:even |just |really |ever )?{ABLE}"
        rf"(?:(?P<off>{LETS})|(?P<allow>{_ALLOWS})) (?P<thing>.+)"
    ),
    Pattern(
        rf"{LEAD}(?P<who>who(?: else)?|(?:which|what) \w+) {WHO_CAN} {ABLE}"
        rf"(?:(?P<off>{LETS})|(?P<allow>{_ALLOWS})) (?P<thing>.+)"
    ),
)
_WHO_NOW = Pattern(
    rf"{LEAD}(?P<who>who(?: else)?|(?:which|what) \w+) (?:(?P<off>{_LETS_NOW})|(?P<allow>{_ALLOWS_NOW}))"
    r" (?P<thing>.+)"
)
_ANYONE = word_set("anyone anybody someone somebody who which what else nobody")
_OFF = (
    rf"(?:(?:excused|exempted|spared|released|relieved|freed|lets?) {SOMEBODY} (?:off|from)"
    rf"(?: having to)?(?: (?:wear|wearing))?|(?:excused|spared) {_ME}|waived"
    rf"|(?:lets?|allow(?:s|ed)|permit(?:s|ted)) {SOMEBODY} (?:to )?{WITHOUT}"
    rf"|(?:given|gave|granted|gives) {SOMEBODY} (?:{_LEAVE} (?:to {WITHOUT}|not to wear)"
    r"|an? excus\w+ (?:from|for)))"
)
_ALLOWED = (
    rf"(?:(?:lets?|allow(?:s|ed)|permit(?:s|ted)|authori[sz]e[ds]) {SOMEBODY}(?: to)? {_WEAR}"
    rf"|(?:allowed|permitted|authori[sz]ed|approved|sanctioned|okayed)(?: {_ME})?"
    rf"|(?:given|gave|granted|gives) {SOMEBODY} {_LEAVE} (?:to {_WEAR}|for))"
)
_WHEN = r"(?: (?:for )?(?:tonight|today|this \w+|the (?:night|evening|day|shift|show|performance)))?"
_TOLD = (
    Pattern(
        rf"{LEAD}(?:(?:i|we) (?:am |'m |was |were |have been |'ve been )|been )?"
        r"(?P<off>(?:excused|exempted|exempt|spared|released|let off)(?: from)?(?: wearing)?)"
        rf" (?P<thing>.+?){_WHEN} by (?P<who>.+?){_WHEN}"
    ),
    Pattern(
        r"(?P<thing>.+?) (?:was|is|were|are|has been|have been) (?:(?P<off>waived|excused)"
        rf"|(?P<allow>permitted|allowed|approved|authori[sz]ed|sanctioned)){_WHEN}"
        rf" by (?P<who>.+?){_WHEN}"
    ),
    Pattern(
        rf"{LEAD}(?P<who>(?:[\w'-]+ ){{1,6}}?)(?:has |have |'s )?(?:already |just |now |kindly )*"
        rf"(?:(?P<off>{_OFF})|(?P<allow>{_ALLOWED})) (?P<thing>.+?){_WHEN}"
    ),
)
_UNSURE = word_set("""
    not n't never no nobody nor refused yet unless if would might could may should will 'll wants wanted
    whether says said thinks claims once before used
""")
_LONGER = word_set("day days week weeks fortnight month months year years season until every always ever")
_IT = Pattern(r"(?i)\b(?:it|them|that|this|these|those)\b")
_BARE = Pattern(
    r"(?i)(?:may|can|am|could) i(?: then| so| do (?:that|so|it)| allowed(?: to)?)?"
    r"|is (?:that|it|this) (?:ok|okay|allowed|all right|alright|fine|enough|permitted|in order)"
)
_GRANTED = ("authorisation", "waiver")
_NO_CLAUSE = Abstain(reason=f"{NONE_SAYS_WHO} allow it.")


def leave_given(
    found: Understood, case: Case, lookup: Lookup, read: Callable[[str], Reading]
) -> tuple[Query | Reading | Abstain | None, bool]:
    """The answer to who may give leave, or to what was asked once it was given; whether it is sure.

    What is not sure is for want of anything else that the books say of it.
    """
    starts = sentence_starts(found.text, found.tokens)
    if len(starts) in (2, 3):
        for first in _beginnings(found, starts[-2], starts[-1]):
            told = in_order(found.tokens[first : starts[-1]])
            match = next((m for p in _TOLD if (m := p.fullmatch(told)) is not None), None)
            if match is not None and _named(_words(match["who"]), lookup):
                within = range(first, starts[-1])
                return _as_granted(found, match.groupdict(), within, case, lookup, read), True
    bare = in_order(found.tokens).rstrip(" ?.!")
    match = next((m for p in (*_ASKED, _WHO_NOW) if (m := p.fullmatch(bare)) is not None), None)
    if match is None:
        return None, False
    place = begun(bare[: match.start("thing")], found.tokens)
    items = _items(found, place, len(found.tokens))
    who = _words(match["who"])
    anybody = bool(who) and who <= _ANYONE  # nobody is left of "the book"
    named = _named(who, lookup)
    if not items or _items(found, 0, place) or not (anybody or named):
        return None, False
    grants = _grants(items, match["off"] is not None, case, lookup, anybody)
    if strange(found, place):
        return (None if match["off"] or anybody else _NO_CLAUSE), False
    giving = [c for c, facts in grants.items() if named & _able(facts, lookup)]
    near = giving or list(grants)
    if len(near) > 1:
        near = [c for c in near if has_words(sorted(who - _ANYONE), lookup.clauses[c])]
    if len(near) == 1:
        by_name = any(lookup.facts[fact].family == "authorisation" for fact in grants[near[0]])
        return Query(kind="source", clause=near[0], case=case), by_name and (bool(giving) or anybody)
    return (None if match["off"] or (anybody and grants) else _NO_CLAUSE), False


def _beginnings(found: Understood, first: int, last: int) -> Iterator[int]:
    """Where a statement may begin: "I am an usher and the House Manager has permitted it"."""
    yield first
    for place in range(first, last):
        if found.tokens[place].low in ("and", "but"):
            yield place + 1


def _items(found: Understood, first: int, last: int) -> list[str]:
    """What the one name of things between two places may be."""
    named = [p for p in found.pieces if p.tag in ("item", "items") and first <= p.first < last]
    return [entry.id for p in named for entry in p.entries] if len(named) == 1 else []


def _words(said: str) -> set[str]:
    return {low for low in said.split() if low in _ANYONE or low not in LIGHT}


def _named(who: set[str], lookup: Lookup) -> set[str]:
    """The authorities and grades that all of the words fit: "the ward sister" is the sister of the ward."""
    return {*_fitting(who, lookup.base.authorities), *_fitting(who, tuple(_grades(lookup)))}


def _fitting(who: set[str], ones: Sequence[Named]) -> set[str]:
    """Those that are called so, else those whose names have all of the words."""
    labels = [(one.id, label) for one in ones for label in (one.label, *one.other_labels)]
    said = [(name, {token.low for token in tokenize(label)} - LIGHT) for name, label in labels]
    outright = {name for name, words in said if who and who == words}
    return outright or {name for name, words in said if who and who <= words}


def _grades(lookup: Lookup) -> Iterator[FactValue]:
    for fact in lookup.base.facts:
        if fact.family == "grade":
            yield from fact.values


def _grants(
    items: Sequence[str], off: bool, case: Case, lookup: Lookup, anybody: bool = False
) -> dict[str, tuple[str, ...]]:
    """The clauses in force that let somebody off one of the things, or allow it, once it is granted.

    Each with what must have been granted. `anybody`: it was asked who gives it, which a clause may tell that
    has no word for letting off ("under it hands need not wear the jacket").
    """
    wanted = "need_not" if off else "may"
    clauses = [clause for clause in lookup.base.clauses if is_in_force(clause, case.as_of)]
    freeing = [clause for clause in clauses if FREES.search(clause.text) is not None]
    found = dict(_granted_in(items, freeing if off else clauses, wanted, lookup))
    return found or (dict(_granted_in(items, clauses, wanted, lookup)) if anybody else {})


def _granted_in(
    items: Sequence[str], clauses: Sequence[Clause], wanted: str, lookup: Lookup
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The clauses of these that want something to have been granted, each with what."""
    for clause in clauses:
        rules = [r for r in lookup.rules_of(clause.id) if r.modality == wanted]
        facts = {
            test.fact: None
            for item in items
            for rule in rules
            if not set(lookup.broader(item)).isdisjoint(rule.scope.items)
            for test in tests(rule.condition)
            if lookup.facts[test.fact].family in _GRANTED
        }
        if facts:
            yield clause.id, tuple(facts)


def _able(facts: Sequence[str], lookup: Lookup) -> set[str]:
    return {one for fact in facts for one in valid_grants(lookup.facts[fact], lookup).members}


def _as_granted(
    found: Understood, said: dict[str, str | None], within: range, case: Case, lookup: Lookup,
    read: Callable[[str], Reading],
) -> Query | Reading | Abstain | None:  # fmt: skip
    """What was asked, with what was told to be granted; else the clause that says who may grant it."""
    place, off = within.stop, said["off"] is not None
    items = _items(found, within.start, place)
    who = _words(said["who"] or "")
    told = {token.low for token in found.tokens[within.start : place]}
    named = _named(who, lookup)
    asks = found.text[found.tokens[place].start :].strip(" ?.!")
    again = _asking(asks, found, place, items, off=off, lookup=lookup)
    if again is None:
        return None
    grants = _grants(items, off, case, lookup)
    if len(grants) > 1:
        grants = {c: facts for c, facts in grants.items() if named & _able(facts, lookup)}
        if not grants:
            return _NO_CLAUSE
    if len(grants) != 1:
        return nobody_may(items, case, lookup) if off and not grants else None
    ((clause, facts),) = grants.items()
    able = [fact for fact in facts if _gives(named, lookup.facts[fact], lookup)]
    before = found.text[: found.tokens[within.start].start].rstrip(" ,.;:!")
    before = before.removesuffix(" and").removesuffix(" but").rstrip(" ,")
    reading = read(f"{before}. {again}" if before else again)
    query = reading.query
    if (
        len(able) != 1
        or len(items) != 1
        or told & (_UNSURE | _LONGER)
        or not _is_as_written(told, lookup.facts[able[0]])
        or _more_is_told(found, within, who)
        or _items(found, 0, within.start)
        or query is None
        or reading.unused
        or query.kind not in ("may", "must")
        or query.items != (items[0],)
    ):
        return Query(kind="source", clause=clause, case=case)
    by = Choices(frozenset(named & _able(able, lookup)))
    facts_told = (*(one for one in query.case.facts if one[0] != able[0]), (able[0], by))
    query = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts_told))
    spans = tuple(_as_grantor(span, found, within, able[0]) for span in make_spans(found, lookup))
    return Reading(question=found.text, text=say_query(lookup, query), query=query, spans=spans)


def _as_grantor(span: Span, found: Understood, within: range, fact: str) -> Span:
    """The name of whoever gave leave, which is said of no wearer."""
    told = found.tokens[within.start].start <= span.start < found.tokens[within.stop].start
    if not told or span.role not in ("fact", "grade"):
        return span
    return msgspec.structs.replace(span, role="fact", target=fact)


def _asking(
    asks: str, found: Understood, place: int, items: Sequence[str], *, off: bool, lookup: Lookup
) -> str | None:
    """The question by itself, of the thing that leave was given for; None where it is of something else."""
    if not items:
        return None
    label = lookup.items[items[0]].label
    named = _items(found, place, len(found.tokens))
    it = _IT.search(asks)
    if _BARE.fullmatch(asks):
        return f"May I {'go without' if off else 'wear'} the {label}?"
    if it is not None:
        return f"{asks[: it.start()]}the {label}{asks[it.end() :]}?"
    return f"{asks}?" if named and set(named) == set(items) else None


def _gives(named: set[str], fact: Fact, lookup: Lookup) -> bool:
    """Whether all who may be meant, and make rules, grant it; of several the one that grants it first."""
    makers = {one for one in named if one in lookup.authorities}
    able = [
        lookup.authorities[one] for one in valid_grants(fact, lookup).members if one in lookup.authorities
    ]
    lowest = max((one.rank for one in able), default=0)
    first = {one.id for one in able if one.rank == lowest}
    return bool(makers) and makers <= {one.id for one in able} and not makers.isdisjoint(first)


def _is_as_written(told: set[str], fact: Fact) -> bool:
    """What is granted in writing was told to be so, or told by its name."""
    says = " ".join((fact.ask or "", fact.label, *fact.other_labels)).casefold()
    return "writ" not in says or not told.isdisjoint(word_set("written writing waiver waived"))


def _more_is_told(found: Understood, within: range, who: set[str]) -> bool:
    """Whether more is told than who granted what."""
    things = {i for p in found.pieces if p.tag in ("item", "items") for i in range(p.first, p.last)}
    rest = {found.tokens[at].low for at in within if at not in things}
    return bool({low for low in rest if low[0].isalpha()} - LIGHT - BESIDE - who - _SAYING)


_SAYING = word_set("""
    excused exempted exempt spared released relieved freed lets let off from allowed allows permitted permits
    authorised authorized approved sanctioned given gave granted gives leave permission consent waiver waived
    by without kindly already just now tonight today this shift show performance evening night go do
""")
