"""What stands around a question and is no part of it: "Excuse me, who ...", "So ...", "..., please?".

Greetings, thanks and words that only lead in are left away, signs are written alike, and so is room between
words; what is understood keeps its place in the text as it was written.
"""

from __future__ import annotations

import msgspec

from kb.model.questions import Reading, Span
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_LONGEST = 1000
_FIRST = Pattern(
    r"(?i)\s*(?:(?:"
    r"(?:excuse me|pardon me|hello|hi|hey|hiya|good (?:morning|afternoon|evening|day)|morning|afternoon|"
    r"evening|please|sorry to (?:ask|bother you|trouble you)|sir|ma'am|dear all|"
    r"(?:just )?a? ?quick (?:question|one)|one (?:more |last |other )?(?:thing|question)|question|"
    r"ok|okay|right|right then|well|now|so|ah|oh|um|er|hmm|(?:i was|i'm|i am|just) (?:just )?wondering|"
    r"tell me|listen|look|out of interest|just checking|can you tell me|could you tell me|do you know|"
    r"help me out|settle an argument)"
    r"(?: there| all| everyone| again| then| sir| mate)?\s*(?:[,.!:;\u2013]+|\s-)\s*"
    r"|so (?!that\b|as\b|much\b|many\b|far\b|long\b|called\b|not\b))\s*)+(?=\S)"
)
_LAST = Pattern(
    r"(?i)(?:[ ,.;!?-]+(?:please|many thanks|thanks|thank you|cheers|ta|sir|ma'am|mate|do you know|"
    r"can you tell me|could you tell me|if you know|though|tho)\b"
    r"(?: a lot| very much| so much| in advance| sir)?[ .!?]*)+$"
)
_LEADS = frozenset(",.!:;\u2013-")
_LAST_WORDS = ("please", "thank", "cheers", " ta", "sir", "ma'am", "mate", "you know", "tell me", "tho")
_SIGNS = str.maketrans(
    {"\u2018": "'", "\u2019": "'", "\u02bc": "'", "\u2032": "'", "\u201c": '"', "\u201d": '"'}
)


def without_manners(text: str) -> tuple[str, tuple[int, ...]]:
    """The question alone, and where each of its characters stands in the text."""
    written = text.translate(_SIGNS)
    places = [i for i, sign in enumerate(written) if sign != " " or (i and written[i - 1] != " ")]
    plain = "".join(written[i] for i in places)
    low = plain.lower()
    led = not _LEADS.isdisjoint(low.rstrip(" ?!.")) or low.lstrip().startswith("so ")
    first = _FIRST.match(plain) if led else None
    start = first.end() if first is not None else 0
    last = _LAST.search(plain, start) if any(word in low for word in _LAST_WORDS) else None
    if last is not None and low.startswith("not ", start):
        last = None if "tho" in last.group().lower() else last  # "not on leave, though?" is of leave
    end = last.start() if last is not None else len(plain)
    if not any(sign.isalnum() for sign in plain[start:end]):
        start, end, last = 0, len(plain), None
    alone, kept = plain[start:end], places[start:end]
    if last is not None and "?" in last.group():
        alone, kept = f"{alone}?", [*kept, places[end]]
    return alone, tuple(kept)


def put_back(text: str, alone: str, places: tuple[int, ...], reading: Reading) -> Reading:
    """The reading of a question as one of the text in which it stands."""
    if reading.question != alone:
        return reading
    spans = tuple(
        msgspec.structs.replace(span, start=places[span.start], end=places[span.end - 1] + 1)
        for span in reading.spans
        if 0 <= span.start < span.end <= len(places)
    )
    around = (
        Span(start=token.start, end=token.end, text=token.text, role="filler")
        for token in tokenize(text[:_LONGEST])
        if token.text[0].isalnum() and not places[0] <= token.start <= places[-1]
    )
    spans = tuple(sorted((*spans, *around), key=lambda span: span.start))
    return msgspec.structs.replace(reading, question=text, spans=spans)
