"""A turn that supposes something: that what was spoken of is held ("say I've got one. May I wear a turban?").

What "it" is, the talk says: the waiver, the grant or the like of which the question or the clause before
spoke. Where that is more than one, that which bears on what is asked now; else nothing is taken for granted.
"""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.model.values import YES
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import CREDENTIALS
from kb.reader.talks.talked import Talk
from kb.text import Pattern
from kb.wording import say_query

_HAS_IT = Pattern(
    r"(?i)(?:(?:and|so|but|ok|okay|right|well|now|say|let['\u2019]?s say|suppose|supposing|assume|assuming|"
    r"imagine|if|when|once|that|what if)[ ,:]+)*"
    r"(?:i|we)(?:['\u2019]ve| have|['\u2019]d| had)?"
    r"(?: (?:got|hold|held|been (?:given|granted)|got hold of|have|had|already))*"
    r" (?:it|one|that|this|them|that one)(?: (?:now|already|granted|in (?:my )?hand))*"
    r"[.,;:!?]+ (?:then )?(?P<rest>\S.+)"
)
_HOLDING = Pattern(r"(?i)\b(?:got|have|hold|held|had|given|granted)\b|['\u2019]ve\b")
_SUPPOSES = Pattern(r"(?i)\b(?:if|when|while)\b")
_SLIGHT = frozenset({"only", "just", "merely"})
_GRANTED = (*CREDENTIALS, "authorisation")


def holding_it(
    text: str, previous: Reading, talk: Talk, read: Callable[[str, Reading, Talk], Reading]
) -> Reading | None:
    """The rest of such a turn, where what was spoken of is held; it is asked which where that is open."""
    found = _HAS_IT.fullmatch(text.strip())
    if found is None or _HOLDING.search(text[: found.start("rest")]) is None:
        return None
    spoken = _spoken(previous, talk.lookup)
    if not spoken:
        return None
    reading = read(found["rest"], previous, talk)
    query = reading.query
    if query is None or query.clause is not None:
        return msgspec.structs.replace(reading, question=text, spans=())
    held = [fact for fact in facts_that_matter(query, talk.lookup) if fact in spoken]
    held = list(spoken) if len(spoken) == 1 else held
    if len(held) != 1:
        named = " or ".join(f"the {talk.lookup.facts[fact].label}" for fact in sorted(spoken))
        return Reading(question=text, abstain=Abstain(reason=f"Say what is held: {named}."))
    fact = talk.lookup.facts[held[0]]
    values = valid_grants(fact, talk.lookup) if fact.family == "authorisation" else YES
    case = merge_case(query.case, {fact.id: values}, None, False, talk.lookup)
    again: Query = msgspec.structs.replace(query, case=case)
    return msgspec.structs.replace(
        reading, question=text, spans=(), query=again, text=say_query(talk.lookup, again)
    )


def _spoken(previous: Reading, lookup: Lookup) -> frozenset[str]:
    """What may be held that the question before named, else its clause, or that its answer rests on."""
    asked = [query for query in (previous.query, previous.frame) if query is not None]
    texts = [lookup.clauses[query.clause].text for query in asked if query.clause is not None]
    found = _named(previous.question, lookup)
    found = found or {fact for query in asked for fact, _ in query.case.facts if _is_held(fact, lookup)}
    found = found or {fact for text in texts for fact in _named(text, lookup)}
    matter = (fact for query in asked for fact in facts_that_matter(query, lookup))
    return frozenset(found or {fact for fact in matter if _is_held(fact, lookup)})


def _named(text: str, lookup: Lookup) -> set[str]:
    said = text.casefold()
    return {
        fact.id
        for fact in lookup.base.facts
        if _is_held(fact.id, lookup)
        if any(name.casefold() in said for name in (fact.label, *fact.other_labels))
    }


def _is_held(fact: str, lookup: Lookup) -> bool:
    return lookup.facts[fact].family in _GRANTED


def without_slight(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "Even if I'm only painting?": of what is supposed, "only" says nothing more."""
    if reading.abstain is None or not reading.abstain.words or not set(reading.abstain.words) <= _SLIGHT:
        return reading
    if _SUPPOSES.search(text) is None:
        return reading
    again = talk.read(" ".join(word for word in text.split() if word.casefold() not in _SLIGHT), previous)
    return msgspec.structs.replace(again, question=text) if again.query is not None else reading
