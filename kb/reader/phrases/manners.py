"""What stands around a question and is no part of it: "Excuse me, who ...", "So ...", "..., please?".

Greetings, thanks and words that only lead in are left away, signs are written alike, and so is room between
words; what is understood keeps its place in the text as it was written.
"""

from __future__ import annotations

import msgspec

from kb.model.questions import Reading, Span
from kb.reader.phrases import chatter
from kb.reader.phrases.typed import as_spelt
from kb.reader.words.tokens import tokenize
from kb.text import Pattern, visible

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
    r"(?i)(?:[ ,.;!?-]+(?:please|many thanks|thanks|thank you|cheers|ta|sir|ma'am|do you know|"
    r"can you tell me|could you tell me|if you know|though|tho)\b"
    r"(?: a lot| very much| so much| in advance| sir)?[ .!?]*)+$"
)
_MARKS = " ,.!:;?()\u2013\u2026-"
_PARTING = ",.;?!-"
_TWO_WORDS = 40
_LEADS = frozenset(",.!:;\u2013-")
_LAST_WORDS = ("please", "thank", "cheers", " ta", "sir", "ma'am", "you know", "tell me", "tho")
_SIGNS = str.maketrans(
    {"\u2018": "'", "\u2019": "'", "\u02bc": "'", "\u2032": "'", "\u201c": '"', "\u201d": '"'}
)


def without_manners(text: str, follows: bool = False) -> tuple[str, tuple[int, ...]]:
    """The question alone, and where each of its characters stands in the text.

    Where it `follows` others, less is chatter: "sorry, I meant ..." tells what is asked.
    """
    written = text.translate(_SIGNS)
    places = [i for i, sign in enumerate(written) if sign != " " or (i and written[i - 1] != " ")]
    plain, spelt = as_spelt("".join(written[i] for i in places))
    places = [places[i] for i in spelt]
    start = _begins(plain, follows)
    end, mark = _ends(plain, start)
    if not any(sign.isalnum() for sign in plain[start:end]):
        start, end, mark = 0, len(plain), ""
    alone, kept = plain[start:end], places[start:end]
    if mark:
        alone, kept = f"{alone}{mark}", [*kept, places[end]]
    return alone, tuple(kept)


def _begins(plain: str, follows: bool) -> int:
    """Where the question begins, after what only leads to it."""
    low = plain.lower()
    led = not _LEADS.isdisjoint(low.rstrip(" ?!.")) or low.lstrip().startswith("so ")
    first = _FIRST.match(plain) if led else None
    start = first.end() if first is not None else 0
    while _opens(low, start, follows):
        further = chatter.opener().match(plain, start)
        if further is None or further.end() == start:
            break
        start = further.end()
    return start


def _opens(low: str, start: int, follows: bool) -> bool:
    """Whether words begin as chatter may."""
    words = [word.strip(_MARKS) for word in low[start : start + _TWO_WORDS].split(None, 2)[:2]]
    if not words or follows or words[0] in chatter.OPENING:
        return bool(words) and (not follows or words[0] in chatter.NO_MEANING)
    return len(words) > 1 and words[0] in chatter.COMMON and words[1] in chatter.OPENING_PAIRS


def _ends(plain: str, start: int) -> tuple[int, str]:
    """Where the question ends, before thanks and the like, and the mark that it is to have."""
    low = plain.lower()
    end, mark = len(plain), ""
    last = _LAST.search(plain, start) if any(word in low for word in _LAST_WORDS) else None
    if last is not None and low.startswith("not ", start):
        last = None if "tho" in last.group().lower() else last  # "not on leave, though?" is of leave
    if last is not None:
        end, mark = last.start(), "?" if "?" in last.group() else ""
    while _closes(low[start:end].rstrip(_MARKS)):
        last = chatter.closer().search(plain[:end], start)
        if last is None or (low.startswith("not ", start) and "tho" in last.group().lower()):
            break
        end, mark = last.start(), "?" if "?" in last.group() else mark
    return end, mark


def _closes(low: str) -> bool:
    """Whether words end as chatter may."""
    words = low.rsplit(None, 1)
    last = words[-1].lstrip(_MARKS) if words else ""
    marked = len(words) > 1 and any(sign in low for sign in _PARTING)
    return last in chatter.CLOSING or (marked and last in chatter.CLOSING_AFTER_MARK)


def as_it_stands(told: str, alone: str, places: tuple[int, ...], text: str) -> str:
    """A stretch of the question alone as it was written in the text in which that stands."""
    start = alone.casefold().find(told.casefold()) if len(alone) == len(places) else -1
    return text[places[start] : places[start + len(told) - 1] + 1] if told and start >= 0 else told


def put_back(text: str, alone: str, places: tuple[int, ...], reading: Reading) -> Reading:
    """The reading of a question as one of the text in which it stands."""
    if reading.question != alone:
        return reading
    spans = tuple(
        msgspec.structs.replace(span, start=start, end=end, text=text[start:end])
        for span in reading.spans
        if 0 <= span.start < span.end <= len(places)
        for start, end in ((places[span.start], places[span.end - 1] + 1),)
    )
    around = (
        Span(start=token.start, end=token.end, text=token.text, role="filler")
        for token in tokenize(text[:_LONGEST])
        if token.text[0].isalnum() and not places[0] <= token.start <= places[-1]
    )
    spans = tuple(sorted((*spans, *around), key=lambda span: span.start))
    abstain = reading.abstain
    for word in abstain.words if abstain is not None else ():
        written = as_it_stands(word, alone, places, text)
        if abstain is not None and written != word:
            words = tuple(written if one == word else one for one in abstain.words)
            reason = abstain.reason.replace(f'"{word}"', f'"{visible(written)}"')
            abstain = msgspec.structs.replace(abstain, words=words, reason=reason)
    return msgspec.structs.replace(reading, question=text, spans=spans, abstain=abstain)
