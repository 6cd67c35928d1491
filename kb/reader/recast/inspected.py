"""What was seen at an inspection, and a short question on it: "Earrings on parade. Do I write it down?".

The question says no more than whether what was seen is a fault, or is fine. It is put as "Is that OK?", and
yes and no are said of the fault where a fault is asked of.
"""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.reader.phrases.inspections import JUDGING
from kb.reader.phrases.sayings import fitting
from kb.text import Pattern
from kb.wording import say_query

Read = Callable[[str], Reading]

_LAST = Pattern(r"(?s)(?P<told>[^?]*[^\W\d][^?]*?)(?:\s*[,;.:!]+\s+|\s+[-–—]+\s+)(?P<asked>[^.;:?!]+\?+)\s*")
_ASKING = Pattern(
    r"(?i)(?:^|[.;:!] )(?:(?:and|so|but|well|now|then|hello|hi) )*(?:what|which|where|when|who|whose|why|how"
    r"|may|can|could|must|should|shall|do|does|did|is|are|am|was|were|will|would|have|has|if|whether)\b"
)


def inspected(text: str, reading: Reading, lookup: Lookup, read: Read) -> Reading | None:
    """The reading of what is told, asked whether it is OK, with yes and no said of a fault; or None."""
    for told, asks in _judged(text):
        plain, beside = _without_asides(told)
        if not plain:
            continue
        again = _asked(f"{_shown(plain)}. Is that OK?", reading, read)
        reason = _REASON.search(plain) if again is None else None
        if reason is not None and not _names(reading, reason.span()):
            beside.append(reason["said"])
            again = _asked(f"{_shown(plain[: reason.start()])}. Is that OK?", reading, read)
        if again is None and asks == "clause":
            again = _asked(f"Which clause mentions {plain}?", reading, read)
        if again is None:
            continue
        spans = tuple(span for span in reading.spans if span.end <= len(told))
        unused = (*beside, *again.unused)
        again = msgspec.structs.replace(again, question=reading.question, spans=spans, unused=unused)
        return again if asks == "fine" else _as_fault(again, lookup)
    return None


def _asked(text: str, reading: Reading, read: Read) -> Reading | None:
    """The reading of a text, if it is a question or asks which of several things is meant."""
    again = read(text)
    ask = again.ask if again.query is None else None
    chooses = ask is not None and bool(ask.choices) and (ask.fact == "item" or reading.query is None)
    return again if again.query is not None or chooses else None


def _names(reading: Reading, place: tuple[int, int]) -> bool:
    """Whether a stretch of the text has a name of the books, or an amount or a day."""
    return any(span.target and place[0] <= span.start < place[1] for span in reading.spans)


def _without_asides(told: str) -> tuple[str, list[str]]:
    """What is told without what only scolds or excuses, and those words."""
    beside = [found.group().strip(" ,.;:-") for found in _ASIDE.finditer(told)]
    return _ASIDE.sub("", told).strip(" ,.;:-"), beside


def _shown(told: str) -> str:
    """ "A hand turned out for parade rig without ..." as "A hand, parade rig without ..."."""
    return _TURNED_OUT.sub(", ", told)


_TURNED_OUT = Pattern(
    r"(?i)(?<=\w) (?:(?:has|have|is|was|had) |'s )?(?:just )?(?:turn(?:ed|s|ing)|shows?|show(?:ed|n|ing)|came"
    r"|com(?:es|ing)|f[ae]ll(?:s|en)?|report(?:s|ed|ing)|parad(?:es|ed|ing)|stood) "
    r"(?:(?:out|up|in|along|here) )?for (?=\w)"
)
_TIMES = (
    r"(?: (?:once|twice|thrice|before|already|again|so|often"
    r"|(?:two|three|four|five|a dozen|many|several|\d+) times))*"
)
_ASIDE = Pattern(
    r"(?i)(?:^|[,.;:]? (?:- |– |— )?)(?:(?:and|but|though|although) )?(?:"
    rf"(?:i|we)(?:'ve| have|'d| had)?{_TIMES} (?:told|warned|asked|reminded|spoken to) (?:him|her|them)"
    rf"(?: (?:about|of) (?:it|that|this))?{_TIMES}"
    r"|(?:for the |the )?(?:second|third|fourth|umpteenth) time"
    r"(?: (?:this (?:week|month|year)|running|now|today))?"
    r"|(?:he|she|they)(?:'s| is|'re| are) (?:(?:only|just|quite|very) )?(?:new|young|sorry|keen|nervous"
    r"|a good (?:lad|man|lass))"
    r"|(?:he|she|they) (?:(?:should|ought to|must) )?knows? better|would you believe(?: it)?|i ask you"
    r"|of all things|bold as brass|cool as you like|plain as day|clear as day"
    r")(?=\s*[,.;:]|\s*$)"
)
"""What scolds or excuses, and says nothing of what was seen."""
_REASON = Pattern(
    r"(?i)[,.;:]? (?:-|–|—)? ?(?P<said>(?:(?:but|and|though) )?(?:he|she|they|who) (?:(?:only|just) )?"
    r"(?:says?|said|claims?|claimed|reckons?|tells? me|told me|insists?|swears?|thinks?)\b[^.;]*"
    r"|(?:says|claims|reckons|swears) (?:he|she|it|his|her|that)\b[^.;]*"
    r"|(?:because|since|as) (?:he|she|they|it|his|her|their)\b[^.;]*)$"
)
"""What is said in excuse. No fact of the books is in it, so that the answer holds whatever it comes to."""


def _judged(text: str) -> list[tuple[str, str]]:
    """What is told, and what of it is asked; from each place where the question may begin."""
    plain, found = text.replace("’", "'").rstrip(), []
    parts = _LAST.fullmatch(plain)
    if parts is None or _ASKING.search(parts["told"]) or _BID.search(parts["told"]):
        return []
    cuts = [parts.span("told")[1]]
    cuts += [match.start() for match in _COMMA.finditer(plain, parts.start("asked"))]
    for cut in cuts:
        asked = plain[cut:].lstrip(" ,;.:!-–—")
        if any(pattern.fullmatch(asked) for pattern, _ in fitting(JUDGING, asked)):
            asks = next(put for pattern, put in fitting(JUDGING, asked) if pattern.fullmatch(asked))
            found.append((plain[:cut], asks))
    return found


_COMMA = Pattern(r",\s")
_BID = Pattern(r"(?i)\b(?:told|said|says?|asked|ordered|warned)\b[^.;]*[:,] no\b")
"""What somebody was told: "I've told him: no earrings"."""


def _as_fault(reading: Reading, lookup: Lookup) -> Reading:
    """The reading with yes and no said of the fault."""
    query = reading.query
    if query is None or query.kind != "may" or query.modalities:
        return reading
    turned = msgspec.structs.replace(query, modalities=("prohibited",))
    return msgspec.structs.replace(reading, query=turned, text=say_query(lookup, turned))
