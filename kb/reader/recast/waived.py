"""Who lets off a thing told before: "I can't get boots on. Can anybody excuse me from them?".

So, too, where no thing is named: off "a clause" or "the rules" is off whatever they ask.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.reader.pieces.pieces import Understood
from kb.reader.words.sentences import sentence_starts
from kb.text import Pattern

_WHOM = r"(?:me|us|him|her|them|you|someone|somebody|anyone|anybody)"
_OFF = (
    rf"(?:let(?:ting)? (?:{_WHOM} )?off|(?:excus|exempt|releas|spar)(?:e|ing|ed)?(?: {_WHOM})? from"
    r"|excused from|exempt(?:ed)? from|let off)"
)
_RULE = (
    r"(?:an?|any|one|some|the)(?: of the)? (?:clauses?|rules?)(?: (?:of|in) (?:the|this) (?:dress )?book)?"
)
_FOR = (
    r"(?:(?:for|of) )?(?:up to |more than |over |about |at least )?[\w-]+ (?:days?|weeks?|months?|years?)"
    r"|on (?:medical|religious|health) grounds|for (?:medical|religious|health) reasons"
)
_DESIRED = Pattern(
    rf"(?i)(?:i|we|he|she|they)(?:'d|'ll)? (?:need|needs|want|wants|like|have|require)(?: to be| to get)? "
    rf"(?:{_OFF} {_RULE}|an? (?:waiver|exemption)(?: from {_RULE})?)(?P<told>[^.;?!]*)[.;,] "
    r"(?:and |so )?who (?:can|could|may|might|will|is (?:able|allowed) to) "
    r"(?:grant|give|allow|do|approve|authorise|authorize|agree to|sign)(?: me| us)? (?:that|it|this|one)\W*"
)
_ANY = Pattern(
    rf"(?i)(?:so |and |but )?(?P<who>who (?:can|could|may|might|will|is (?:able|allowed) to)) {_OFF} {_RULE}"
    r"(?P<told>[^.;?!]*)\W*"
)
_LONG = Pattern(rf"(?i)\b(?:{_FOR})\b")
_THEM = Pattern(rf"(?i)\b(?P<off>{_OFF}(?: (?:wearing|having to wear))?) (?:it|them|that|these|those|this)\b")
_SPOKEN = frozenset({"item", "items"})


def plainly_let_off(found: Understood) -> Iterator[str]:
    """The text with what somebody is let off in it; none where it stands there, or cannot be told.

    The clause on who grants waivers tells for how long, too.
    """
    whole = _DESIRED.fullmatch(found.text) or _ANY.fullmatch(found.text)
    if whole is not None:
        long = _LONG.search(whole["told"])
        yield f"who can grant a waiver{f' {long.group()}' if long is not None else ''}?"
        yield "who can grant a waiver?"
        return
    last = sentence_starts(found.text, found.tokens)[-1]
    if not last:
        return
    asked = found.text[found.tokens[last].start :]
    before = [piece for piece in found.pieces if piece.tag in _SPOKEN and piece.last <= last]
    after = any(piece.tag in _SPOKEN and piece.first >= last for piece in found.pieces)
    if after:
        yield asked
    if after or len({piece.arg for piece in before}) != 1 or _THEM.search(asked) is None:
        return
    thing = found.text[found.tokens[before[0].first].start : found.tokens[before[0].last - 1].end]
    yield _THEM.sub(rf"\g<off> the {thing}", asked)
