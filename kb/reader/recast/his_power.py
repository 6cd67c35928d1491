"""What somebody orders and whether he has the power: "The foreman says no hard hats today. Can he do that?".

Not what the rules say of the thing is asked, but whether he may let people off it, or allow it.
"""

from __future__ import annotations

from collections.abc import Callable

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.let_off import NONE_SAYS_WHO, PARTED, WITHOUT, has_words
from kb.reader.recast.telling import LIGHT
from kb.reader.words.sentences import sentence_starts
from kb.text import Pattern

_WE = r"(?:i|we|you|they|everyone|everybody|nobody|no one|people|staff|visitors|(?:my|our|the|his) \w+)"
_SAID = (
    r"(?:has |have |had |'s |just |now |always )*(?:says?|said|saying|reckons?|thinks?|claims?|decided"
    r"|decides|told (?:me|us|everyone|everybody|people)|tells (?:me|us))(?: that)?"
    r"(?: today| it 's fine| it is fine)?"
)
_WORN = r"(?:wear|put on|have|use|bother with|carry|wearing|have on)"
_OFF = (
    r"(?:no (?P<bare>.+?)(?: (?:(?:is|are) )?(?:needed|required|necessary)| needs? (?:to )?be worn)?"
    rf"|{_WE} (?:do|does|need|have|need to) ?(?:n't|not)(?: (?:have|need|got) to)? (?:{_WORN} )?(?:need )?"
    r"(?P<duty>.+?)"
    rf"|{_WE} (?:can|could|may) (?:all )?(?:{WITHOUT}|not bother with|forget) (?P<left>.+?)"
    rf"|(?:to {WITHOUT}|not to (?:wear|bother with)) (?P<told>.+?)"
    rf"|(?P<gone>.+?) (?:(?:is|are)(?: n't| not)|(?:do|does|need) ?(?:n't|not)(?: need to)? be)"
    rf" (?:needed|required|necessary|worn)(?: today| here)?)"
)
_ON = rf"{_WE} (?:can|could|may|are allowed to|'re allowed to) {_WORN} (?P<thing>.+?)"
_POWER = (
    r"(?:(?:and |so |but )?(?:can|may|could) (?:he|she|they)(?: really| just| even)?"
    r"(?: (?:do|say|allow|decide|order|permit)(?: (?:that|this|so|it))?)?"
    r"|(?:is|are) (?:he|she|they)(?: really)? (?:allowed|entitled|permitted|able|free)"
    r"(?: to(?: (?:do|say|decide|order|allow) (?:that|this|so))?)?"
    r"|(?:is|does|has|have|do) (?:that|this|he|she|they|it)(?: really)? (?:have |got )?(?:in |within )?"
    r"(?:the |his |her |their )(?:power|powers|right|rights|authority|say)(?: to (?:do|say|decide|allow)"
    r" (?:that|this|so))?)"
)
_WHO = r"(?:.*?[.;,] )?(?:but |and |now )?(?P<who>(?:(?:the|my|our|a|an) )?(?:[\w'-]+ ){1,5}?)"
_ASKED = Pattern(rf"{_WHO}{_SAID} (?:{_OFF}|{_ON}) [.;,!-] {_POWER}(?: or not)?")
_HERSELF = frozenset(("i", "we", "you", "he", "she", "they", "it"))
_NONE = Abstain(reason=f"{NONE_SAYS_WHO} decide that.")


def his_power(
    found: Understood, lookup: Lookup, read: Callable[[str], Reading]
) -> Query | Reading | Abstain | None:
    """The answer to whether whoever is named may let people off the thing, or allow it; None if not asked."""
    starts = {place for place in sentence_starts(found.text, found.tokens) if place}
    parts = (f". {t.low}" if place in starts else t.low for place, t in enumerate(found.tokens))
    said = PARTED.sub(r"\1 off \2", " ".join(parts).replace(", .", "."))
    match = _ASKED.fullmatch(said)
    if match is None or match["who"].split()[-1] in _HERSELF:
        return None
    off = next((match[name] for name in ("bare", "duty", "left", "told", "gone") if match[name]), None)
    does = f"let us off {off}" if off is not None else f"allow us to wear {match['thing']}"
    again = read(f"Can {match['who']}{does}?")
    if again.query is None or not _says_who(again.query, match["who"], lookup):
        return again.abstain or _NONE
    return again.query


def _says_who(query: Query, who: str, lookup: Lookup) -> bool:
    """Whether it shows a clause on who may: one that lets somebody depart, frees nobody, or names him."""
    if query.clause is None or query.polarity == "not":
        return query.clause is not None
    named = [low for low in who.split() if low not in LIGHT]
    leaves = any(one.clause == query.clause for one in lookup.base.delegations)
    return leaves or has_words(named, lookup.clauses[query.clause])
