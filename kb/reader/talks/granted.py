"""A turn about a waiver or a grant, or after a clause: "and a medical one?", "if nobody ordered it?"."""

from __future__ import annotations

import re
from collections.abc import Iterable

import msgspec

from kb.model.conditions import tests
from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.model.values import NO, Choices, ValueSet
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import CREDENTIALS
from kb.reader.talks.further import LEAD, content, keys_of, put_as, understood_otherwise
from kb.reader.talks.talked import Talk, in_its_case
from kb.text import Pattern

_GRANTED = ("waiver", "authorisation")
_ALLOWS = Pattern(
    rf"(?i){LEAD}what (?:does|do|would|will) (?:it|that|one|they) (?:allow|permit|let|mean|change|cover|"
    r"excuse|give|get|say|do)(?: (?:me|us|you|one|for|exactly|to do|wear|of|from))*"
)
_BRINGS = Pattern(
    rf"(?i){LEAD}what (?:do|does|must|should|will|would) (?:i|we|he|she|they|one|you)(?: (?:have|need) to)? "
    r"(?:bring|show|produce|provide|hand in|submit|need|send in|give (?:him|her|them))"
    r"(?: for (?:it|that|one|this)| with me| along| to get (?:it|one)| then)*"
)
_SAID_THEN = Pattern(
    rf"(?i){LEAD}what (?:did|does) (?:it|that|they|the (?:book|order|rule|clause|regulation|text)s?) "
    r"(?:say|tell us|require) ((?:in|on|before|until) .*\d.*)"
)
_SUCH = Pattern(rf"(?i){LEAD}(?:what about |how about |for )?(?:an? |the )?(.+?)(?: ones?)?(?: too| then)?")
_NEEDED = Pattern(
    rf"(?i){LEAD}(?:do|does|would|must|should) (?:i|we|he|she|they|one|you) "
    r"(?:need|require|hold|have|have to (?:have|hold)|need to (?:have|hold)) ((?:the |an? |my |any )?.+?)"
    r"(?: for (?:it|that|them|this))?(?: first| too| then)?"
)
_LEAVE = Pattern(
    r"(?i)(?:(?:any|the|some|some(?:one|body)['\u2019]s|a|an|his|special|written|prior) )*(?:leave|"
    r"permission|approval|consent|authority|authori[sz]ation|say-so|ok|okay|order|slip|permit|go-ahead|clearance)"
)
_UNGRANTED = Pattern(
    r"(?i)(?:(?:and|but|so) )?(?:(?:even )?(?:if|when|where|once|while|until) )?"
    r"(?:(?:no ?body|no[- ]one)(?: has| had|['\u2019]s)? "
    r"(?:ordere?[ds]|grant(?:ed|s)|given?s?|allow(?:ed|s)|approve[ds]|authorise[ds]) (?:it|that|them)|"
    r"(?:the |my )?[\w ]{2,30}?(?: has| had| did)(?: not|n['\u2019]t) "
    r"(?:ordered?|grant(?:ed)?|give(?:n)?|allow(?:ed)?|approved?|authorised?) (?:it|that|them)|"
    r"(?:it|that)(?: has| had| was| is)(?: not|n['\u2019]t) (?:been )?(?:ordered|granted|given|approved))"
)


_GRANTS_IT = Pattern(
    r"(?i)\b(?:grant(?:s|ed)?|order(?:s|ed)?|allow(?:s|ed)?|approve[sd]?|authorise[sd]?) (?:it|that|this)\b"
)


def of_a_clause(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And mourning?", "a medical one?", after who grants what: the same asked of that."""
    before, lookup = previous.query, talk.lookup
    if before is not None and _ALLOWS.fullmatch(bare):
        return talk.made(text, before)
    if before is not None and before.clause is not None and _BRINGS.fullmatch(bare):
        if _grants(lookup.clauses[before.clause].text, lookup):
            return talk.made(text, before)
        return Reading(question=text, abstain=Abstain(reason="It is not clear for what that is brought."))
    dated = _SAID_THEN.fullmatch(bare)
    if dated is not None:
        again = talk.read(f"{previous.question.rstrip(' ?.!')} {dated.group(1)}?", None)
        if again.query is not None and again.query.case.as_of != talk.case.as_of:
            return put_as(text, again)
        return Reading(question=text, abstain=Abstain(reason="It is not clear what of that day is asked."))
    said = _SUCH.fullmatch(bare)
    spans = [s for s in previous.spans if s.role == "fact" and (s.target or "") in lookup.facts]
    families: set[str] = {lookup.facts[s.target].family for s in spans if s.target} or {*_GRANTED}
    words = content(said.group(1)) if said is not None else set()
    named = [
        fact.label
        for fact in lookup.base.facts
        if fact.family in families and fact.id not in {span.target for span in spans}
        if any(words and words <= keys_of(name) for name in (fact.label, *fact.other_labels))
    ]
    if len(named) != 1 or len(spans) > 1:
        return None
    asked = f"who grants the {named[0]}?"
    if spans:
        asked = f"{previous.question[: spans[0].start]}{named[0]}{previous.question[spans[0].end :]}"
    again = talk.read(asked, None)
    if again.query is not None and again.query.kind == "source":
        return put_as(text, again)
    return Reading(question=text, abstain=Abstain(reason=f"The books do not say that of the {named[0]}."))


def _grants(text: str, lookup: Lookup) -> bool:
    """Whether a clause names a waiver or the like, and so says what it takes to have one."""
    said = text.casefold()
    held = (fact for fact in lookup.base.facts if fact.family in (*CREDENTIALS, "authorisation"))
    return any(name.casefold() in said for fact in held for name in (fact.label, *fact.other_labels))


def not_granted(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And if nobody has ordered it?": without the one grant that was said, or that the answer rests on."""
    found, before, lookup = _UNGRANTED.search(bare), previous.query, talk.lookup
    if found is None or before is None:
        return None
    matter = facts_that_matter(before, lookup)
    families = [f for f in matter if lookup.facts[f].family == "authorisation"]
    facts = [f for f, _ in before.case.facts if lookup.facts[f].family == "authorisation"] or families
    if not facts:
        return _not_ordered(text, bare, found.group(0), previous, talk)
    if len(facts) != 1:
        return None
    label = lookup.facts[facts[0]].label
    again = talk.read(f"and {bare[: found.start()]}{label} not granted{bare[found.end() :]}?", previous)
    return put_as(text, again) if again.query is not None else None


def granted_it(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Once the Chief has granted it?": the one grant that the answer rests on, for "it"."""
    found, before = _GRANTS_IT.search(bare), previous.query
    if found is None or before is None or _UNGRANTED.search(bare) is not None:
        return None
    known = {fact for fact, _ in before.case.facts}
    facts = {*facts_that_matter(before, talk.lookup), *known}
    named = [f for f in facts if talk.lookup.facts[f].family == "authorisation"]
    if len(named) != 1:
        return None
    label = talk.lookup.facts[named[0]].label
    lead = bare[: found.start()]
    has = "" if lead.casefold().rstrip().endswith(("has", "had", "have", "'s")) else "has "
    again = talk.read(f"{lead}{has}granted {label}{bare[found.end() :]}?", previous)
    return put_as(text, again) if again.query is not None else None


def nobody_did(said: str, facts: Iterable[str], lookup: Lookup) -> tuple[str, ValueSet] | None:
    """ "Nobody has ordered it": the one of the facts that tells who did so, as nobody; else None."""
    words = said.strip(" .!?").casefold()
    verbs = {word for word in words.split() if len(word) > 3} if _UNGRANTED.fullmatch(words) else set[str]()
    none = [
        (fact, value.id)
        for fact in facts
        for value in lookup.facts[fact].values
        if value.label.casefold() == f"no {lookup.facts[fact].label.casefold()}"
        if any(verb.startswith(lookup.facts[fact].label.casefold()) for verb in verbs)
    ]
    return (none[0][0], Choices(frozenset({none[0][1]}))) if len(none) == 1 else None


def _not_ordered(text: str, bare: str, said: str, previous: Reading, talk: Talk) -> Reading | None:
    """As above, where who has ordered it is a circumstance; with what else the turn says."""
    before, lookup = previous.query, talk.lookup
    told = nobody_did(said, facts_that_matter(before, lookup), lookup) if before is not None else None
    if before is None or told is None:
        return None
    rest = bare.replace(said, "").strip(" ,;:.")
    again = talk.read(f"and {rest}?", previous) if content(rest) else talk.made(text, before)
    if again.query is None or again.query.items != before.items:
        return None
    case = merge_case(again.query.case, dict((told,)), None, False, lookup)
    return talk.made(text, msgspec.structs.replace(again.query, case=case))


_DOES = (
    r"(?: (?:do|have|keep|wear|put|leave|take|carry) (?:it|that|so|this|one|them)(?: (?:on|off|in|out))?"
    r"| go without)?"
)
_FINE = r"(?:ok|okay|fine|all right|alright|allowed|no problem|happy)"
_SAID_SO = Pattern(
    r"(?i)(?:(?:yes|yeah|yep|oh|well|but|and|so|ok|okay|though|no|actually)[ ,]+)*"
    r"(?:(?:i|we)(?:['\u2019]ve| have)? asked )?(?:the |my |our )?(?P<who>(?!(?:i|we|it)\b)[\w' -]{3,30}?)"
    r"(?:,? and (?:he|she|they))?(?: has| have| had|['\u2019]s|['\u2019]ve)?(?: (?:already|just|actually))?"
    rf"(?: (?:said|says|agreed|confirmed|told (?:me|us)|tells (?:me|us))(?: that)? (?:(?:i|we)"
    rf"(?: can| could| may| might|(?:['\u2019]m| am|['\u2019]re| are| was| were) allowed(?: to)?){_DOES}"
    rf"|(?:it|that)(?:['\u2019]s| is| was| would be| will be) {_FINE}|yes|ok|okay|go ahead)"
    rf"|(?: is| are|['\u2019]s|['\u2019]re| was| were)? {_FINE} with (?:it|that|this)"
    r"| (?:gave|given)(?: (?:me|us))? (?:the |his |her |their )?(?:ok|okay|go-ahead|nod|permission|leave|"
    r"say-so|consent|approval)(?: for (?:it|that))?"
    r"| (?:agreed|okayed|ok['\u2019]d|approved|allowed|permitted|lets? (?:me|us))"
    r"(?: (?:it|that|this|to it))?)"
    r"(?: (?:today|already|this (?:morning|afternoon|evening|week)|for (?:today|now)|yesterday))?"
    r"(?:[.,;:?!]* (?:so )?(?:(?:is (?:that|it) (?:ok|okay|fine|enough)|(?:can|may) i|am i ok)(?: then)?"
    r"|then|ok))?"
)
_ON_PAPER = ("written", "writing")
_GIVES_LEAVE = r"(?:allow|permit|approve|grant|excuse|give|let|authori[sz]e|order|agree|consent|release|free)"


def said_so(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Yes, the Base Manager said I could": the one grant that the answer rests on, if that one may give it.

    Of somebody whom no clause lets grant it nothing is taken; what must be written is not had by being told.
    """
    found, lookup = _SAID_SO.fullmatch(text.strip(" .?!")), talk.lookup
    before = previous.frame or previous.query
    if found is None or before is None or before.kind not in ("may", "must"):
        return None
    told = {}
    for name in facts_that_matter(before, lookup):
        fact = lookup.facts[name]
        if fact.family == "authorisation" and not any(word in fact.label.casefold() for word in _ON_PAPER):
            able = valid_grants(fact, lookup)
            named = able.members & _called(found["who"].casefold(), lookup)
            if named or _may_grant(found["who"], name, lookup):
                told[name] = Choices(named) if named else able
    if len(told) != 1:
        return None
    return talk.made(
        text, msgspec.structs.replace(before, case=merge_case(before.case, told, None, False, lookup))
    )


def _called(who: str, lookup: Lookup) -> frozenset[str]:
    """The authorities of that name."""
    ones = lookup.authorities.values()
    return frozenset(o.id for o in ones if who in (n.casefold() for n in (o.label, *o.other_labels)))


def _may_grant(who: str, fact: str, lookup: Lookup) -> bool:
    """Whether a clause that rests on a grant says in its own words that those give it."""
    by = rf"\b(?:of|by|from) (?:the |a |an )?{re.escape(who)}\b"
    does = rf"\b{re.escape(who)}(?:['\u2019]s)? (?:(?:may|can|has|shall) )?(?:\w+ )?{_GIVES_LEAVE}"
    said = re.compile(f"{by}|{does}", re.IGNORECASE)
    rests = {r.clause for r in lookup.base.rules if any(test.fact == fact for test in tests(r.condition))}
    return any(said.search(" ".join(lookup.clauses[clause].text.split())) for clause in rests)


def needed(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Do I need the qualification?": when the thing before may be had, which says whether with it."""
    found, before, lookup = _NEEDED.fullmatch(bare), previous.query, talk.lookup
    if found is None or before is None:
        return None
    if _LEAVE.fullmatch(found.group(1)):
        return _leave_for_it(text, before, talk)
    words = f"and without {found.group(1)}?"
    if before.kind not in ("may", "must", "when"):
        return None
    again = talk.read(words, previous)
    again = again if again.query is not None else understood_otherwise(words, again, previous, talk) or again
    query = in_its_case(again, before, talk).query
    facts = dict(query.case.facts) if query is not None else {}
    held = [f for f, v in facts.items() if v == NO and lookup.facts[f].family in CREDENTIALS]
    if query is None or query.items != before.items or len(held) != 1:
        return None
    kept = tuple((fact, values) for fact, values in before.case.facts if fact not in held)
    case = msgspec.structs.replace(before.case, facts=kept)
    return talk.made(text, msgspec.structs.replace(before, kind="when", value=None, polarity="do", case=case))


def _leave_for_it(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "Do I need leave for that?": when it may be done, where that rests on a grant."""
    matter = facts_that_matter(before, talk.lookup)
    if not any(talk.lookup.facts[fact].family == "authorisation" for fact in matter):
        return None
    if before.kind not in ("may", "must", "when"):
        return talk.made(text, before)
    return talk.made(text, msgspec.structs.replace(before, kind="when", value=None, polarity="do"))
