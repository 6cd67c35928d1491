"""A thing of some age, or that took a blow, and whether it may go on: the clause on when it is replaced.

"My helmet is six years old, can I still wear it?" is no question of wearing helmets: what decides it
stands in the sentence that says after how long, or after what, the thing is replaced.
"""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, is_in_force
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.replaced import tells_of
from kb.reader.words.forms import NUMBER_WORDS
from kb.text import Pattern

_AMOUNT = rf"(?:\d+|an?|half a|{'|'.join(sorted(NUMBER_WORDS))}|several|a few|many|a couple of)"
_AGED = Pattern(
    r"(?i)\b(?:is|are|'s|’s|was|'re|turns?|turned|gets?|nearly|about|over|almost|now|already|only|just"
    r"|than) "
    rf"{_AMOUNT}(?: and a half)?[- ](?:years?|months?|seasons?|winters?)(?:[- ]old|\s+of age)?\b"
    rf"|\b{_AMOUNT}[- ](?:years?|months?)[- ]old\b"
    rf"|\b(?:had|used|worn|issued|got|bought|owned)\b[^.;?!]*\b{_AMOUNT} (?:years?|months?|seasons?)"
    r"(?: ago| now)?\b"
)
_STRUCK = Pattern(
    r"(?i)\b(?:(?:came|come|fell|fallen|landed|dropped|crashed|smashed|banged|hit|bounced|struck|knocked)"
    r"(?: down| off| out)?(?: (?:of|from|off) (?:the|a|my) \w+)? (?:on|onto|into|against)"
    r"|(?:took|taken|had|has had|got|gotten|suffered|received) (?:a|an|one|some) (?:(?:hard|heavy|big|bad"
    r"|good|right|real|nasty|sharp|little|small|slight|light) )?"
    r"(?:knock|blow|bang|bump|hit|whack|thump|clout|fall"
    r"|crack|dent|split|tear|hole)"
    r"|(?:dropped|hit|banged|knocked|struck|cracked|split|dented|bumped|whacked)"
    r" (?:my|the|his|her|our|their)"
    r"|(?:has|have|'s|is|are|was|were|been|got)(?: been)? (?:dropped|hit|banged|knocked|struck|cracked|split"
    r"|dented|bumped|whacked|damaged|worn through|worn out|worn smooth|torn|ripped))\b"
)
_ONTO = Pattern(
    r"(?i)\b(?:came|come|fell|fallen|landed|dropped|crashed|smashed|banged|hit|bounced|struck|knocked)"
    r"(?: down| off| out)? (?:on|onto|into|against) (?:my|the|his|her|our|their) "
)
_GOING_ON = Pattern(
    r"(?i)(?:^|[.;,:!–-] )(?:and |but |so |still |then )*(?:"
    r"(?:can|may|could|must|should|do|am|will|have|need)\b(?:n't)? ?(?:i|we|he|she|they|it|you|one)?\b"
    r"[^.;?!]*"
    r"\b(?:keep|go on|carry on|continue|stick with|still|wear|use|wearing|using|replaced?|changed?|renew"
    r"(?:ed)?|swap(?:ped)?|exchanged?|new|another|hand(?:ed)? (?:it |them )?in|bin|binned|scrap|scrapped"
    r"|throw|thrown|thrown away|retire[d]?|go|get rid of)\b[^.;?!]*"
    r"|(?:is|are|will|would|does|do) (?:it|that|they|these|those)\b(?: be| still| all)*(?: (?:ok|okay|fine"
    r"|all right|alright|allowed|good|good enough|safe|due|usable|need[^.;?!]*|have to[^.;?!]*|has to[^.;?!]*"
    r"|too old|past it|done))"
    r"(?: to[^.;?!]*)?|(?:time for|due for|due) (?:a )?(?:new|another|replac)[^.;?!]*"
    r"|(?:too old|past it|still (?:ok|okay|fine|good|all right|alright|allowed|usable)))\s*\?+\s*$"
)
_OF_ONE = Pattern(r"(?i)^(?:can|may|could|must|should|do|is|are)\b[^.;!]*\?+\s*$")


def when_worn_out(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The one clause that says when the one thing named is replaced; None where that is not asked or told."""
    if not (_AGED.search(found.text) or _STRUCK.search(found.text)):
        return None
    if not (_GOING_ON.search(found.text) or _OF_ONE.search(found.text)):
        return None
    named = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    if len(named) > 1 and (struck := _ONTO.search(found.text)) is not None:
        named = [piece for piece in named if found.tokens[piece.first].start == struck.end()]
    if len(named) != 1:
        return None
    items = [entry.id for entry in named[0].entries if entry.id in lookup.items]
    if any(_is_banned(item, lookup) for item in items):
        return None
    telling = [
        clause.id
        for clause in lookup.base.clauses
        if is_in_force(clause, case.as_of) and any(tells_of(item, clause, lookup) for item in items)
    ]
    return Query(kind="source", clause=telling[0], case=case) if len(telling) == 1 else None


def _is_banned(item: str, lookup: Lookup) -> bool:
    """Whether some rule has the thing itself not worn at all: it is another question then."""
    rules = (rule for rule in lookup.base.rules if rule.scope.items == (item,) and rule.aspect == "wear")
    return any(rule.modality == "must_not" for rule in rules)
