"""Right and wrong, said of a claim that denies something: "he can't wear it, is that so?".

The reader asks of such a claim whether the thing may or must be worn, and "no" would then be said of what
nobody put: "Nobody may wear it, true?" is not answered by no where nobody may.
"""

from __future__ import annotations

import re

from kb.answer.common import replaced
from kb.model.questions import Answer, Query
from kb.text import yes_or_no

_SAID = (
    r"true(?: or (?:false|not))?|right(?: or (?:wrong|not))?|correct(?: or not)?|(?:is|was) (?:that|it|this)"
    r" (?:right|true|correct|so|the case)(?: or not)?|(?:is|was|are) (?:he|she|they) (?:right|correct)"
    r"(?: or (?:wrong|not))?|(?:am|are) (?:i|we) (?:right|correct)(?: or not)?|is (?:that|it) not so"
)
_AFTER = re.compile(rf"(?:[,;:.!?–-]\s*)(?:so |and )?(?:{_SAID})(?: then| though| please)?\W*$")
_BEFORE = re.compile(
    r"^(?:so |and )?(?:is it (?:right|true|correct|so|the case|a fact) (?:that )?|am i (?:right|correct)"
    r" (?:that|in thinking|in saying|to think|to say)(?: that)? |(?:true|right) or (?:false|wrong)\s*[:,–-] )"
)
_ASKS = re.compile(r"^(?:so |and |but )?(?:can|may|must|do|does|is|are|am|should|could|need|have|has)\b")
_CIRCUMSTANCE = re.compile(r"\b(?:if|when|unless|because|where|while|since|although)\b")
_LEAVE = r"allowed|permitted|let|free|authorised|entitled|acceptable|ok|okay|fine"
_NONE = r"no (?:\w+ ){1,3}(?:may|can|is|are|has|have|needs?|wears?|carr(?:y|ies))\b"
_NO_LEAVE = re.compile(
    rf"\b(?:can not|cannot|may not|must not|should not|never|not (?:{_LEAVE})|nobody|no one|none of)\b"
    rf"|^{_NONE}"
)
_NOT_DONE = re.compile(
    r"\b(?:is|are|was|were) not (?:(?:supposed |meant )?to\b|(?:\w+ )?(?:worn|carried)\b"
    r"|(?:on|the done thing)\W*$)"
)
_BANS = re.compile(
    r"\b(?:banned|forbidden|prohibited|barred|disallowed|outlawed|ruled out|unacceptable|off[- ]limits"
    r"|(?:is|are) out(?= (?:in|on|at|for)\b|\W*$))"
)
_NO_DUTY = re.compile(
    r"\b(?:need not|not (?:have|need(?:ed)?|obliged?|required?)(?: to)?|nobody|no one|none of"
    r"|not (?:compulsory|necessary|mandatory|obligatory))\b"
    rf"|^{_NONE}"
)
_STATES = re.compile(
    r"(?:so |and |but |then |well |oh |ok |okay |,)*+(?!(?:what|which|who|whose|how|why|when|where|any"
    r"|whether|if|since|as|because|can|may|must|do|does|did|is|are|am|was|were|should|could|would|will|shall|need|have"
    r"|has|not|never|no|tell|please)\b)[^?.;:,!]+\W*"
)
_DENIALS = re.compile(r"\b(?:not|cannot|never|nobody|no one|none|neither|nor|no)\b")
_NOT_BEFORE = re.compile(r"\bnot (?:\w+ )?$")
_RIGHT = {"No": "Right", "Yes": "Wrong"}


def _claim(text: str) -> str:
    """What a text puts to be confirmed, without circumstances; empty where it puts nothing."""
    low = " ".join(text.casefold().replace("’", "'").split())
    low = low.replace("can't", "can not").replace("n't", " not")
    after, before = _AFTER.search(low), _BEFORE.search(low)
    if after is None and before is None:
        return _stated(low)
    if before is None and _ASKS.search(low):
        return ""
    return _without_circumstance(low[before.end() if before else 0 : after.start() if after else len(low)])


def _without_circumstance(claim: str) -> str:
    return claim[: told.start()] if (told := _CIRCUMSTANCE.search(claim)) else claim


def _stated(low: str) -> str:
    """What one sentence states, and asks by its mark at the most: "so we don't need a helmet?"."""
    return _without_circumstance(low) if _STATES.fullmatch(low) else ""


def _denies(claim: str, query: Query) -> bool:
    """Whether a claim denies once what yes and no are said of: leave, duty, or a ban."""
    denials = len(_DENIALS.findall(claim))
    if query.modalities == ("prohibited",):
        return denials == 1 and _NOT_BEFORE.search(claim[: _first_ban(claim)]) is not None
    if query.modalities:
        return False
    if query.kind == "may" and query.polarity == "do":
        if _BANS.search(claim):
            return denials == 0
        if _NOT_DONE.search(claim):
            return denials == 1
    denied = {"may": _NO_LEAVE, "must": _NO_DUTY, "source": _NO_LEAVE}.get(query.kind)
    return denied is not None and denied.search(claim) is not None and denials == 1


def _first_ban(claim: str) -> int:
    return found.start() if (found := _BANS.search(claim)) else 0


def confirmed(text: str, answer: Answer) -> Answer:
    """The answer, with right or wrong for no or yes where they are to be said of a denial."""
    query, led = answer.reading.query, yes_or_no(answer.headline)
    if query is None or not led or answer.headline.startswith("No, this is prohibited"):
        return answer
    if not _denies(_claim(text), query):
        return answer
    return replaced(answer, headline=f"{_RIGHT[led]}{answer.headline[len(led) :]}")
