"""Who gave a waiver: "the Matron has given me a medical chit" tells that one has it, if she is who gives it.

It never tells that one is a Matron oneself; of "my mate gave me a medical chit" nothing is taken to be held.
"""

from __future__ import annotations

import re

from kb.model.lookup import Lookup
from kb.model.questions import Abstain
from kb.model.records import Fact
from kb.reader.meaning.defined import granting
from kb.reader.talks.further import keys_of
from kb.reader.words.forms import word_set
from kb.text import Pattern, visible

_HANDED = Pattern(
    r"(?i)(?:(?:and|but|well|yes|no|so|ok|okay|though),? )*(?P<who>[\w' -]{2,40}?)"
    r"(?:['\u2019]s| has| have| had)?(?: just| already| now)? (?:given|gave|granted|issued|written|wrote|"
    r"signed|got|handed|accepted) (?:me|us) (?P<what>(?:an?|the|my) [\w' -]{3,40})"
)
_GIVES = (
    r"(?:may |can |will |shall )?(?:\w+ )?(?:grant|give|issue|accept|approve|sign|allow)s?\b",
    r"(?:granted|given|issued|accepted|approved|signed|allowed)(?: \w+){0,2} by (?:the |a |an )?",
)
_UNNAMED = word_set("they someone somebody")
"""Who is not named may be whoever gives it."""
_ARTICLES = word_set("the a an our my his her their this that some")


def as_holder(text: str, lookup: Lookup) -> str | Abstain:
    """Such a statement as "I have a medical chit", or why it is not taken so; any other text as it stands."""
    found = _HANDED.fullmatch(text.strip(" .!"))
    if found is None:
        return text
    words = keys_of(found["what"])
    facts = [fact for fact in lookup.base.facts if fact.family == "waiver" and _is_named(fact, words)]
    if not facts:
        return text
    who = " ".join(word for word in found["who"].casefold().split() if word not in _ARTICLES)
    if len(facts) == 1 and (who in _UNNAMED or (who and _is_given(facts[0], who, lookup))):
        return f"I have {found['what']}"
    return Abstain(reason=f'No clause says that "{visible(who)}" may give the {facts[0].label}.')


def _is_named(fact: Fact, words: set[str]) -> bool:
    return any(keys_of(name) <= words for name in (fact.label, *fact.other_labels))


def _is_given(fact: Fact, who: str, lookup: Lookup) -> bool:
    """Whether a clause on granting it says that those do, and no more in between: "the Matron may grant"."""
    grants, by = _GIVES
    said = re.compile(rf"\b{re.escape(who)} {grants}|\b{by}{re.escape(who)}\b", re.IGNORECASE)
    return any(said.search(" ".join(clause.text.split())) is not None for clause in granting(fact, lookup))
