"""What a line after one that was not understood goes on from: that line, or what was spoken of before it."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import kb
from shell.clauses import asks_what_carried
from shell.session import Session

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase, Reading
    from shell.words import Facts


_WHOLE = re.compile(
    r"\b(?:may|can|could|must|should|do|does|did|is|are|am|was|were|what|which|where|how|when|who|why|need|"
    r"allowed|permitted|required)\b",
    re.IGNORECASE,
)
_OF_THAT = re.compile(
    r"(?:(?:and|but|so) )*(?:by (?:whom?|what)|whom? by|to (?:whom?|what)|for (?:whom?|what|how long)|"
    r"why(?: (?:so|not|on earth(?: not)?))?|why(?:['\u2019]s| is| was|['\u2019]re| are)(?: n[o']t)? "
    r"(?:that|it|this|they|those)(?: so| not)?|"
    r"what(?:['\u2019]s| is) the (?:reason|point)(?: (?:for|of) that)?|"
    r"how (?:often|come|so)|how long for|what (?:for|with|in)|with what|where to|"
    r"who (?:else )?(?:can|could|may|might|would) (?:excuse|let|waive|allow|permit|release|free)"
    r"(?: (?:me|us|him|her|them|it|that|this|off|of|from|do|have|wear))*)(?: then| though)?",
    re.IGNORECASE,
)
_SUBJECT = re.compile(  # "does the band wobble?" has a verb after the thing
    r"(?:(?:and|but|so) )?(?:do|does|did|can|could|may|must|should|will|would|has|have)(?: (?:the|an?|my))? ",
    re.IGNORECASE,
)
_POINTS = re.compile(
    r"\b(?:it|them|they|those|these)\b(?! (?:is|was)\b)(?!['\u2019]s\b)(?! (?:\w+ )?(?:rains?|snows?|\d))",
    re.IGNORECASE,
)
_LED = re.compile(
    r"(?:and|but|or|also|even|what about|how about)\b|.*\b(?:too|as well|also)\W*$", re.IGNORECASE
)


_WHOSE = re.compile(
    r"(?:(?:and|but|or|what about|how about|no|not)\b,? ?)*"
    r"(?:my|his|her|our|their|the|an?|some(?:one|body))\b[\w -]*['\u2019]s?",
    re.IGNORECASE,
)
_MEASURE = re.compile(
    r"(?:(?:and|at|only|just|about|say|what about|of|for)\b ?)*(?:minus |-)?\d[\d .,/]*(?: ?[a-z°\"]{1,12})?"
    r"(?: (?:long|wide|high|tall))?",
    re.IGNORECASE,
)
_BESIDE = re.compile(
    r"(?:(?:and|but|or|also|even) )*(?:with|without|over|under|in|on|at|when|if)\b", re.IGNORECASE
)


_REPLIES = re.compile(
    r"(?:(?:and|but|so|oh|ok|okay|well)[ ,]+)*(?:yes|yep|yeah|yup|no|nope|nah|neither|both|either|sure|"
    r"are you sure|really|says who|who says(?: so)?|(?:yes|no),? (?:please|it is|it does|i am|i do|i have))",
    re.IGNORECASE,
)


_DECLINES = re.compile(
    r"(?:no|nope|nah|neither|none)(?:,? (?:thanks|thank you|it['\u2019]?s not|it is(?:n['\u2019]t| not)|"
    r"not that|that['\u2019]?s not (?:it|what i (?:asked|meant))|of (?:them|those|these)))*",
    re.IGNORECASE,
)


def rests_on_nothing(session: Session, text: str) -> bool:
    """Whether a line only answers, or asks further of, what was said before, where nothing was."""
    bare = text.strip(" ?.!")
    rests = _REPLIES.fullmatch(bare) or _OF_THAT.fullmatch(bare)
    return session.latest is None and session.missed is None and rests is not None


def rests_on_missed(session: Session, asked: Session, text: str) -> bool:
    """Whether a line goes on from a question that was not understood: "the scarf too?", "which clause?".

    What that asked is not known; of another question it would be the wrong answer.
    """
    missed = session.missed
    words = missed.abstain.words if missed is not None and missed.abstain is not None else ()
    if missed is None or not (words or "?" in missed.question or _WHOSE.fullmatch(missed.question)):
        return False
    if asks_what_carried(text) or _OF_THAT.fullmatch(text.strip(" ?.!")) is not None:
        return True
    query = session.latest.query if session.latest is not None else None
    if (query is None or query.kind != "list") and only_goes_on(text) and lists(asked):
        return True  # "in boat rig as well?" is not asked of all that is worn in it
    if _is_of_another(missed, words) and only_adds(asked) and _WHOLE.search(text) is None:
        return True  # "on parade?", after "what about a tiara?", is not of the ring before that
    roles = {span.role for answer in asked.answers for span in answer.reading.spans}
    if "item" not in roles and _WHOSE.fullmatch(missed.question.strip(" ?.!")) is not None:
        return True  # "which breast?", after "my grandad's", is not of the medals of one's own
    before = session.latest.query.items if session.latest is not None and session.latest.query else ()
    asks = {item for a in asked.answers if a.reading.query is not None for item in a.reading.query.items}
    names = "item" in roles or not asks <= {*before}
    if "item" in roles and "fact" in roles and query is not None:
        return False  # "and the hat at 7 degrees?" says of what it is, and in which case
    bare = _WHOLE.search(text) is None and names and not roles & {"aspect", "measure", "clause"}
    known = any(span.role in ("grade", "fact", "aspect") for span in missed.spans)
    return bare and (names_item(missed) or (known and session.latest is None))


def _is_of_another(missed: Reading, words: tuple[str, ...]) -> bool:
    """Whether what was not understood is a thing that was asked about: "and what about a tiara?"."""
    led = (
        r"(?:^|\b(?:about|and|but|or|wear|carry|have|use|own|take|need) )(?:an?|the|my|some|any|those|these) "
    )
    said = missed.question.strip()
    return not names_item(missed) and any(
        re.search(rf"{led}(?:[\w'-]+ )?{re.escape(word)}", said, re.IGNORECASE) for word in words
    )


def no_value(reason: str, asked: Session) -> str:
    """The complaint about a line that is no value of what was asked, with what stopped it as a question."""
    missed = asked.missed.abstain if asked.missed is not None else None
    several = asked.missed is not None and " " in asked.missed.question.strip()  # one word is named already
    left = missed.words if missed is not None and several else ()
    words = ", ".join(f'"{kb.visible(word)}"' for word in left)
    return kb.visible(reason) + (f" As a question: not understood: {words}." if words else "")


def only_goes_on(text: str) -> bool:
    """ "And the tunic?": whether a line says by its words that it goes on from another one."""
    return _LED.match(text) is not None and _WHOLE.search(text) is None


def misses(session: Session) -> bool:
    """Whether nothing was understood but that a thing is missing."""
    answers = session.answers
    return all(a.outcome == "abstain" or (a.ask is not None and a.ask.fact == "item") for a in answers)


def of_missed(session: Session, base: KnowledgeBase) -> Reading | None:
    """A question about the one thing that the line named which was not understood."""
    missed = session.missed
    spans = missed.spans if missed is not None else ()
    items = {span.target for span in spans if span.role == "item" and span.target is not None}
    led = {
        word for s in spans if missed and s.role == "item" for word in missed.question[: s.start].split()[-2:]
    }
    if led & {
        "on",
        "over",
        "under",
        "with",
        "to",
        "in",
        "above",
        "below",
        "from",
        "beside",
        "of",
    }:  # "a ribbon on the tunic" is not of the tunic
        return None
    if len(items) != 1 or (missed is not None and _runs_on(missed)):
        return None
    label = base.lookup.items[items.pop()].label
    return base.read(f"The {label}?", facts=session.profile, as_of=session.as_of)


def of_asked(session: Session, base: KnowledgeBase) -> Reading | None:
    """A question about the one thing of which it was asked back how the words about it are meant."""
    latest = session.latest
    if latest is None or latest.ask is None or latest.ask.fact != "reading":
        return None
    items = {span.target for span in latest.spans if span.role == "item" and span.target is not None}
    if len(items) != 1 or not items <= base.lookup.items.keys():
        return None
    label = base.lookup.items[items.pop()].label
    return base.read(f"The {label}?", facts=session.profile, as_of=session.as_of)


def declines(text: str) -> bool:
    """ "No", which says of a reading that was asked about that it is not what was meant."""
    return _DECLINES.fullmatch(text.strip(" .!")) is not None


def still_missed(session: Session, asked: Session, text: str) -> Reading:
    """What lines go on from that is not understood: the line itself, or the one that it only adds to."""
    missed, new = session.missed, asked.answers[-1].reading
    only = not names_item(new) and _WHOLE.search(text) is None
    words = missed.abstain.words if missed is not None and missed.abstain is not None else ()
    of_a_thing = missed is not None and (names_item(missed) or _is_of_another(missed, words))
    return missed if missed is not None and of_a_thing and only else new


def _goes_on_from_open(session: Session, older: Session) -> bool:
    """Whether a line that names no thing was read of another one than what is asked back is of.

    "And in July?", after which cap is meant, is not of the belt before that, and not of all that is worn.
    """
    latest = session.latest
    if latest is None or latest.ask is None or not names_item(latest):
        return False
    if session.before is not None and not _says_thing(latest, session.question):
        return False  # the thing was put in from the question before
    whole = latest.ask.fact == "reading" or any(span.role == "aspect" for span in latest.spans)
    return lists(older) or (whole and session.before is not None)


def rests_on_open(session: Session, older: Session, text: str) -> bool:
    """Whether a line that is no reply rests on what is asked back; `older` is it without that question."""
    strays = _strays_from_open(session, older, text) or _points_to_open(session, text)
    strays = strays or (only_measures(text) and _is_of_another_than(session, older))
    return strays or (only_adds(older) and _goes_on_from_open(session, older))


def only_measures(text: str) -> bool:
    """Whether a line gives no more than a measure: "6 mm", of whatever is spoken of."""
    return _MEASURE.fullmatch(text.strip(" ?.!")) is not None


def _is_of_another_than(session: Session, older: Session) -> bool:
    """Whether what is asked back names a thing, and a line was read of another one."""
    latest = session.latest
    asks = latest is not None and latest.ask is not None and names_item(latest)
    return asks and is_answered(older) and not is_of_open(session, older)


def is_answered(session: Session) -> bool:
    return all(answer.outcome == "answer" for answer in session.answers)


def is_of_open(session: Session, asked: Session) -> bool:
    """Whether what was answered is of a thing that is named, or offered, in what is asked back."""
    latest = session.latest
    if latest is None or latest.ask is None or lists(asked):
        return False
    items = {item for a in asked.answers if a.reading.query is not None for item in a.reading.query.items}
    spoken = {span.target for span in latest.spans if span.role == "item"}
    return not names_item(latest) or bool(items & (spoken | {value for value, _ in latest.ask.choices}))


def _strays_from_open(session: Session, older: Session, text: str) -> bool:
    """Whether few words were read of all that is worn, or of what was answered before a thing that is open.

    "And for kitchen staff?", asked what colour of hair is meant; "and with the badge on?", asked which thing
    goes where.
    """
    latest = session.latest
    if latest is None or latest.ask is None or not only_goes_on(text):
        return False
    before = session.before.query if session.before is not None else None
    if lists(older) and (before is None or before.kind != "list"):
        return True
    of_words = latest.ask.fact == "reading" or (latest.ask.fact == "item" and not latest.ask.choices)
    of_words = of_words and names_item(latest)  # what only went on itself is of the question before it
    names = any(names_item(answer.reading) for answer in older.answers)
    return of_words and (not names or _BESIDE.match(text) is not None)


def _points_to_open(session: Session, text: str) -> bool:
    """ "How often do I change them?", asked which gloves are meant: of those, and not of the apron before."""
    latest = session.latest
    if latest is None or latest.ask is None or latest.ask.fact != "item" or not latest.ask.choices:
        return False
    return _says_thing(latest, session.question) and _POINTS.search(text) is not None


def takes_back(session: Session, told: Facts, base: KnowledgeBase) -> bool:
    """Whether a statement says otherwise than the last question did by its own words: "it's daylight now"."""
    remembered = {fact for fact, _ in session.profile}
    new = tuple((fact, values) for fact, values in told if fact not in remembered)
    return bool(session.answers) and base.gainsays(session.answers[-1].reading, new)


def _runs_on(missed: Reading) -> bool:
    """ "The hair ribbon": whether a word that was not understood goes on with the thing, which is another."""
    words, asked = missed.abstain.words if missed.abstain is not None else (), missed.question
    ends = [
        asked[span.end :]
        for span in missed.spans
        if span.role == "item" and _SUBJECT.fullmatch(asked[: span.start]) is None
    ]
    return any(rest.startswith(f" {word}") for rest in ends for word in words)


def _says_thing(reading: Reading, line: str) -> bool:
    said = line.casefold()
    return any(span.role == "item" and span.text.casefold() in said for span in reading.spans)


def names_item(reading: Reading) -> bool:
    return any(span.role == "item" for span in reading.spans)


def names_thing(session: Session) -> bool:
    """Whether a line was read of a thing that it names, though what was asked of it is still open."""
    latest = session.latest
    return latest is not None and latest.query is not None and names_item(latest)


def only_adds(session: Session) -> bool:
    """Whether a line states no more than facts or a day for the question before: "and in March?"."""
    roles = {span.role for answer in session.answers for span in answer.reading.spans}
    return bool(roles & {"fact", "grade", "date"}) and not roles & {"item", "aspect", "measure", "clause"}


def goes_on(asked: Session, session: Session) -> bool:
    """Whether a line that names nothing was read of what was spoken of before the line that was missed."""
    latest = session.latest.query if session.latest is not None else None
    spans = session.missed.spans if session.missed is not None else ()
    missed = {span.target for span in spans if span.role == "item"}
    before = {*latest.items} if latest is not None else set()
    anew = not missed & before or missed < before  # one of the two that were spoken of
    readings = [answer.reading for answer in asked.answers if not names_item(answer.reading)]
    further = [r for r in readings if r.query is not None and before >= {*r.query.items}]
    return anew and len(further) == len(asked.answers)


def lists(session: Session) -> bool:
    queries = [answer.reading.query for answer in session.answers]
    return any(query is not None and query.kind == "list" for query in queries)


def replies(session: Session, text: str, offered: set[str]) -> bool:
    """Whether a line was read as the answer to what was asked back: as another question, or of a choice."""
    return any(
        a.outcome != "abstain"
        and not (a.ask is not None and a.ask.fact == "item" and not a.ask.choices)
        and (a.reading.question.strip() != text.strip() or _is_about(a.reading, offered))
        for a in session.answers
    )


def _is_about(reading: Reading, items: set[str]) -> bool:
    return reading.query is not None and bool(reading.query.items) and items.issuperset(reading.query.items)


def choice(text: str, answer: Answer) -> str:
    """The one choice that holds all the words of a reply ("watch" for "watch rig"), else the reply itself."""
    words = set(text.casefold().strip(".! ").split())
    labels = [label for _, label in answer.ask.choices] if answer.ask else []
    exact = [label for label in labels if label.casefold().split() == text.casefold().strip(".! ").split()]
    fitting = exact or [label for label in labels if words and words <= set(label.casefold().split())]
    return fitting[0] if len(fitting) == 1 else text
