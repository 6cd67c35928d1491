"""Who grants what was spoken of, and for how long: "who grants it?", "how long does it last?"."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query
from kb.model.records import Fact
from kb.reader.meaning.defined import granting, one_of
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_GRANTS = Pattern(
    r"(?:(?:and|so|but) )?(?:(?:from|by) whom|(?:who|whom) (?:from|by)|from who|by who|whose (?:leave|"
    r"permission|say so|ok|order|consent)(?: (?:do i need|is (?:needed|that)|would i need))?)(?: then)?|"
    r"(?:(?:and|so|but) )?(?:who|whom) (?:(?:can |may |could |might |has |do i get to )?(?:grant|give|gave|"
    r"issue|approve|sign|award|order|post|declare|announce|call|allow|permit|authori[sz]e|sanction|waive|change)(?:s|d|ed|"
    r"n)?(?: off)?|"
    r"do (?:i|we|you|they) (?:have to )?(?:ask|see|go to|apply to)|(?:should|must|would|can) (?:i|"
    r"we) ask)(?: me| us| you| him| her| them)?(?: on| for| about)? "
    r"(?:(?:that|this|such an?|the same|the (?:other|last|second|latter|former|first)) one|"
    r"one of (?:those|these|them)|it|one|that|this|them|those)(?: then| please| exactly)?"
)
_GETS = Pattern(
    r"(?:(?:and|so|but|then) )*(?:how|where) (?:do|does|can|could|would|should|might) (?:i|we|one|you|"
    r"he|she|they) "
    r"(?:go about getting|get|obtain|apply for|ask for|come by|request|go for)(?: hold of)? (?:it|one|"
    r"that|this|them)"
    r"(?: (?:granted|approved|signed|issued|given))?(?: then)?"
)
_LASTS = Pattern(
    r"(?:(?:and|so|but) )?(?:for how long|how long for|"
    r"(?:is|does|will|would) (?:it|that|one|this|they) (?:last |be |valid |good )*(?:for (?:life|good|"
    r"ever|always)|permanent|"
    r"forever|run out|expire|lapse|end)|(?:for )?how long (?:does|do|is|are|will|would|can) (?:it|"
    r"that|one|this|they) "
    r"(?:be )?(?:last|good|valid|hold|run|granted|given)(?: for| good)?)"
)
_CALLS = Pattern(r"\bwho(?:m)? (?:(?:can|may|could|might|has) )?(order|post|declar|announc|call)")
_FOR_ONE = Pattern(r"\b(?:ask|see|go to|apply)\b.*\bone\b")  # "for one": of which is not clear
_SPELLS = Pattern(r"\b(?:day|week|month|year|until|expir|end|for good|for life)s?\b")
_KINDS = frozenset({"waiver", "permission", "exemption", "licence", "permit", "leave"})
_LASTING = frozenset({"last", "valid", "expire", "run"})
_SEEKING = frozenset({"ask", "asks", "apply", "applies", "application", "grants", "granted", "grant"})
_GRANTED = ("waiver", "authorisation")


def held(before: Query, lookup: Lookup) -> list[str]:
    """The waivers and grants that the question before was about."""
    return [fact for fact, _ in before.case.facts if lookup.facts[fact].family in _GRANTED]


def asked_grant(said: str, before: Query, lookup: Lookup) -> Query | Ask | Abstain | None:
    """The clause on granting the one waiver or grant that was said, else that the answer rests on.

    Where none is, who can allow it are those whom a clause lets depart from the rules on it.
    """
    spell, gets = _LASTS.fullmatch(said) is not None, _GETS.fullmatch(said) is not None
    if not spell and not gets and _GRANTS.fullmatch(said) is None:
        return None
    if before.kind == "source" and before.clause is not None:
        clauses = [before.clause]
    elif not (clauses := _called(said, before, lookup)):
        resting = [f for f in facts_that_matter(before, lookup) if lookup.facts[f].family in _GRANTED]
        unsure = gets or (len(resting) > 1 and _FOR_ONE.search(said))
        facts = held(before, lookup) or ([] if unsure else resting)
        if not facts and not resting and not spell and not gets:
            return _letting(before, lookup)
        if not facts:
            return None
        ways = [_ways_to(lookup.facts[fact], gets, lookup) for fact in facts]
        clauses = list(dict.fromkeys(clause for way in ways for clause in way))  # which is meant is asked
    if spell:
        kinds = {word for clause in clauses for word in _words(clause, lookup)}
        clauses = on_spell(clauses, kinds, lookup)
    return one_of(clauses, before.case, lookup)


def _called(said: str, before: Query, lookup: Lookup) -> list[str]:
    """The clauses with the one state of things that was told, for "who declares it?", if they say it so."""
    verb = _CALLS.search(said)
    if verb is None:
        return []
    told = [lookup.facts[fact] for fact, _ in before.case.facts if lookup.facts[fact].family == "situation"]
    so = [f.id for f in told if any(t.low.startswith(verb[1]) for t in tokenize(f"{f.label} {f.ask}"))]
    rules = (
        r for r in lookup.base.rules if len(so) == 1 and any(t.fact == so[0] for t in tests(r.condition))
    )
    found = dict.fromkeys(rule.clause for rule in rules)
    return [clause for clause in found if verb[1] in lookup.clauses[clause].text.casefold()]


def _ways_to(fact: Fact, gets: bool, lookup: Lookup) -> list[str]:
    """The clauses on granting what a fact tells of, or on asking for it."""
    clauses, asking = [clause.id for clause in granting(fact, lookup)], list(_asking(fact, lookup))
    return (asking or clauses) if gets else (clauses or asking)


def _letting(before: Query, lookup: Lookup) -> Query | Ask | Abstain | None:
    """The clauses that let somebody depart from the rules on what was asked before."""
    if before.kind not in ("may", "must", "why", "when") or not before.items:
        return None
    from kb.reader.meaning.authority import letting  # noqa: PLC0415  only where nothing is granted

    clauses = letting(set(), set(before.items), before.case, lookup)
    return one_of(clauses, before.case, lookup) or Abstain(reason="The books let nobody allow that.")


def on_spell(clauses: Iterable[str], words: Iterable[str], lookup: Lookup) -> list[str]:
    """Those of the clauses on granting something that say for how long, else those on grants of its kind.

    `words` are keys of words; those among them that are a kind of grant say which.
    """
    spelled = [clause for clause in clauses if _SPELLS.search(lookup.clauses[clause].text.casefold())]
    return spelled or list(_lasting(_KINDS.intersection(words), lookup))


def _words(clause: str, lookup: Lookup) -> set[str]:
    return {token.key for token in tokenize(lookup.clauses[clause].text)}


def _lasting(kinds: frozenset[str], lookup: Lookup) -> Iterator[str]:
    """The clauses that say of a kind of grant how long it lasts: "a waiver lasts twelve months"."""
    for clause in lookup.base.clauses:
        words = _words(clause.id, lookup)
        if kinds & words and _LASTING & words and _SPELLS.search(clause.text.casefold()):
            yield clause.id


def _asking(fact: Fact, lookup: Lookup) -> Iterator[str]:
    """The clauses that say whom one asks for what a fact is a kind of: "asks the Marshal for a waiver"."""
    kind = tokenize(fact.label)[-1].low
    heads = {tokenize(authority.label)[-1].low for authority in lookup.base.authorities}
    for clause in lookup.base.clauses:
        said = {token.low for token in tokenize(f"{clause.heading or ''}. {clause.text}")}
        if {kind, f"{kind}s"} & said and said & _SEEKING and said & heads:
            yield clause.id
