"""Who asks, told beside the first question of a talk, holds for the questions after it as well.

"K6, on parade. White gloves?" says who asks as "I am a K6" does: "must I, though?" is still of a K6.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

import kb
from shell.commands import looks_like_question

if TYPE_CHECKING:
    from kb import KnowledgeBase
    from shell.words import Facts

_LONGEST = 80
_SENTENCE = re.compile(r"(?<=[.!?;:]) +")
_LEAD = r"(?:(?:hi|hello|hey|so|well|ok(?:ay)?|right|now|and|but),? )*"
_I_AM = re.compile(
    _LEAD + r"(?:i am|i['\u2019]?m|we are|we['\u2019]re)\b(?! not\b)",
    re.IGNORECASE,
)
_MADE = re.compile(
    _LEAD + r"(?:i['\u2019]ve|i have|i) (?:just |now |only |recently )*"
    r"(?:been (?:made|promoted(?: to)?|appointed)|become|became|joined|got made|made)(?: up to)?"
    r"(?: (?:an?|the|as))* ",
    re.IGNORECASE,
)
_NOT_WHO = re.compile(
    r"(?:an?|the|my|our|your|his|her|their|this|that|these|those|some|any|no|not|if|when|in|on|at|for|with|as|it|he|"
    r"she|they|there|we|you|i)\b",
    re.IGNORECASE,
)
_HERE = re.compile(r",? (?:here|speaking|again)\b[.!;:,]*$", re.IGNORECASE)
_TELLS = re.compile(_LEAD + r"i(?: am|['\u2019]?m| have|['\u2019]?ve)\b", re.IGNORECASE)
_PART = re.compile(r"[.,;:!?]+ +|,? (?:and|but) (?=i\b|i['\u2019]?(?:m|ve)\b)", re.IGNORECASE)
_SPEAKING = re.compile(r"([\w' -]{1,40}?),? (?:here|speaking)\b(?=[ ,.!;:]|$)[ ,.!;:]*(.*)", re.IGNORECASE)
_GRANTED = re.compile(
    r"\b(?:(?:has|have|had|is|was|are|been)\b|['\u2019](?:s|ve)\b).*\b(?:granted|given|approved|allowed|declared|"
    r"authori[sz]ed|ordered|in force|announced|called|on)\b|"
    r"\b(?:granted|approved|allowed|declared|authori[sz]ed|ordered|gave|grants|approves|orders)\b",
    re.IGNORECASE,
)
_HEDGED = re.compile(
    r"\b(?:if|unless|or|not|no longer|never|used to|was|were|will|going to|when|once|until|before|mate|"
    r"says?|said|told|friend|with (?:an?|the|my)|for (?:an?|the|my))\b|n['\u2019]t\b",
    re.IGNORECASE,
)


def who_asks(text: str, base: KnowledgeBase) -> Facts:
    """The grade and the like that a line with a question tells of who asks, if it tells any."""
    said = _SENTENCE.split(text.strip())
    if len(said) < 2 or len(said) > 4:
        return ()
    told: dict[str, Any] = {}
    for at, sentence in enumerate(said):
        bare = sentence.strip(" .!;:")
        if (
            sentence.endswith("?")
            or len(bare) > _LONGEST
            or looks_like_question(bare)
            or _HEDGED.search(bare)
        ):
            continue
        line = _of_oneself(bare, first=at == 0)
        if line is not None:
            told.update(_standing(line, base))
    return tuple(told.items())


def surely_told(text: str, base: KnowledgeBase) -> Facts:
    """What the parts of a line tell of who asks that are whole statements: "ive a doctors note".

    Of a line that is refused for other words these are known all the same; nothing is, where it hedges.
    """
    told: dict[str, Any] = {}
    for part in () if _HEDGED.search(text) or len(text) > 4 * _LONGEST else _PART.split(text):
        bare = part.strip(" .!?")
        if _TELLS.match(bare) is None or looks_like_question(bare):
            continue
        try:
            facts = base.statement(bare)
        except kb.UsageError:
            continue
        told.update(one for one in facts if base.lookup.facts[one[0]].family != "worn")
    return tuple(told.items())


def as_made(text: str) -> str | None:
    """ "I've just been made a foreman", which asks nothing, as what one is by now."""
    bare = text.strip(" .!")
    if looks_like_question(bare) or _HEDGED.search(bare) or _MADE.match(bare) is None:
        return None
    return _of_oneself(bare, first=False)


def as_told(text: str, base: KnowledgeBase) -> str | None:
    """A line that asks nothing and tells what holds from now on, as a statement; None for any other."""
    made = None if ". " in text else as_made(text)
    return made or as_speaking(text, base) or _as_granted(text, base)


def _as_granted(text: str, base: KnowledgeBase) -> str | None:
    """ "Shirt order is granted", which asks nothing."""
    bare = text.strip(" .!")
    return bare if _grants_in(bare, base) else None


def _grants_in(bare: str, base: KnowledgeBase) -> Facts:
    """The grants that a sentence tells, if that is all that it does."""
    if len(bare) > _LONGEST or looks_like_question(bare) or _HEDGED.search(bare) or not _GRANTED.search(bare):
        return ()
    try:
        told = base.statement(bare)
    except kb.UsageError:
        return ()
    return told if all(base.lookup.facts[fact].family == "authorisation" for fact, _ in told) else ()


def grants_told(text: str, before: Facts, after: Facts, base: KnowledgeBase) -> Facts:
    """The grants that a line tells as given: they hold for the lines after it, until they are forgotten.

    `before` and `after` are the facts of the questions before the line and with it: "the Master has granted
    it" tells by those what was granted. What is only supposed is not told.
    """
    told: dict[str, Any] = {}
    for sentence in _SENTENCE.split(text.strip()):
        if not sentence.endswith("?"):
            told.update(_grants_in(sentence.strip(" .!;:"), base))
    bare = text.strip(" .!")
    if not told and "?" not in text and not looks_like_question(bare) and not _HEDGED.search(bare):
        new = tuple(one for one in after if one not in before) if _GRANTED.search(bare) else ()
        told.update(one for one in new if base.lookup.facts[one[0]].family == "authorisation")
    return tuple(told.items())


def as_speaking(text: str, base: KnowledgeBase) -> str | None:
    """ "K5 here, watch rig", which asks nothing, as "I am a K5, watch rig"; all must be understood."""
    bare = text.strip(" .!")
    found = None if looks_like_question(bare) or _HEDGED.search(bare) else _SPEAKING.fullmatch(bare)
    if found is None or _NOT_WHO.match(bare) or not _standing(f"I am a {found.group(1)}", base):
        return None
    line = f"I am a {found.group(1)}, {found.group(2)}".rstrip(" ,")
    try:
        base.statement(line)
    except kb.UsageError:
        return None
    return line


def _of_oneself(bare: str, first: bool) -> str | None:
    """What a sentence says of who asks, as "I am a ..."; the first one may be no more than a name."""
    if _I_AM.match(bare):
        return bare
    made = _MADE.match(bare)
    if made is not None:
        return f"I am a {bare[made.end() :]}"
    return f"I am a {_HERE.sub('', bare)}" if first and _NOT_WHO.match(bare) is None else None


def _standing(line: str, base: KnowledgeBase) -> Facts:
    """The facts of somebody's standing in a sentence, or in its first part where it tells more."""
    head = re.split(r", | and (?=i\b)", line, maxsplit=1, flags=re.IGNORECASE)[0]
    for part in dict.fromkeys((line, head)):
        try:
            told = base.statement(part)
        except kb.UsageError:
            continue
        return tuple(one for one in told if base.lookup.facts[one[0]].family in _FAMILIES)
    return ()


_FAMILIES = frozenset({"grade", "branch", "appointment", "qualification"})
