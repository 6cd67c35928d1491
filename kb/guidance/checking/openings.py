"""How a sentence begins: its time, its circumstances, and turns such as "It is forbidden to"."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from kb.measures import find_date
from kb.reader.words.forms import word_set
from kb.text import Pattern

_WITH_DATE = Pattern(r"(?P<word>from|with effect from|as of|before|until|up to and including) ")
_LAST_DATE = Pattern(
    r",? (?:from|with effect from|as of|before|until|up to and including) (?:the )?\d{1,2}(?:st|nd|rd|th)?"
    r" (?:of )?[a-z]+ \d{4}(?: to \d{1,2} [a-z]+ \d{4})?(?: on(?:wards?)?)?$"
)
_IT_IS = Pattern(
    r"it is (?:strictly )?(?P<word>not (?:forbidden|prohibited)|forbidden|prohibited"
    r"|not (?:permitted|allowed|authori[sz]ed)|permitted"
    r"|allowed|recommended|advisable|desirable|preferable|advised|required|mandatory|compulsory"
    r"|not (?:required|necessary|mandatory|compulsory))"
    r"(?: for (?P<holder>.+?))? to (?P<rest>.+)"
)
_ORDERED = Pattern(r"(?:(?P<no>do not|don't|never)|always) (?P<rest>[a-z]+ .+)")
_NEVER = Pattern(r"(?:under|in) no circumstances|at no time|in no case|on no account")
_INVERTED = Pattern(r"(?:,? )(?:may|must|shall|can|is|are) (?P<what>.+?) (?P<rest>(?:to )?be .+)")
_EXCEEDS = Pattern(
    r"\b(?:must|may|shall|should|can) not (?:exceed|be (?:more|longer|wider|higher|greater) than)\b"
)
_AT_MOST = Pattern(r"(?P<before>.+?)(?P<size>\b(?:\d|one |two |three |half )[^,;]*?),? (?:at most|or less)")
_OFF: tuple[tuple[Pattern, str], ...] = (
    (
        Pattern(
            r"\b(?P<be>must be|shall be|has to be|have to be|is to be|are to be) (?:taken off|removed)\b"
        ),
        "must not be worn",
    ),
    (Pattern(r"\b(?:may|can) be (?:taken off|removed)\b"), "need not be worn"),
    (Pattern(r"\b(?P<be>is|are) (?:taken off|removed)\b"), r"\g<be> not worn"),
    (Pattern(r"\b(?:must|shall|has to|have to) (?:take off|remove)\b"), "must not wear"),
    (Pattern(r"(?<= )(?:takes off|removes)\b"), "does not wear"),
)
_STARTS = word_set("""
    the no any an a either neither members all every each everyone everybody exactly both nobody only
    personnel
""")
_MEANT = {
    **dict.fromkeys(("forbidden", "prohibited"), "must not"),
    **dict.fromkeys(("permitted", "allowed", "not forbidden", "not prohibited"), "may"),
    **dict.fromkeys(("recommended", "advisable", "desirable", "preferable", "advised"), "should"),
}


def turned(text: str) -> str:
    """ "It is forbidden to wear ..." and "Do not wear ..." as a statement about members.

    What must not exceed a measure must be at most so much.
    """
    text = _EXCEEDS.sub("must be at most", text)
    most = _AT_MOST.fullmatch(text)
    if most is not None:
        text = f"{most['before']}at most {most['size']}"
    match = _IT_IS.fullmatch(text)
    if match is not None:
        word = match["word"]
        meant = _MEANT.get(word) or (
            "must not"
            if word[4:] in ("permitted", "allowed", "authorised", "authorized")
            else "need not"
            if word.startswith("not ")
            else "must"
        )
        return f"{match['holder'] or 'members'} {meant} {match['rest']}"
    never = _NEVER.match(text)
    inverted = _INVERTED.fullmatch(text[never.end() :]) if never else None
    if inverted is not None:
        return f"{inverted['what']} must not {inverted['rest'].removeprefix('to ')}"
    ordered = _ORDERED.fullmatch(text)
    if ordered is not None:
        return f"members {'must not' if ordered['no'] else 'must'} {ordered['rest']}"
    return text


def openings(text: str) -> Iterator[tuple[str, str]]:
    """The ways to take the text for an opening and a statement, parted by a comma."""
    yield "", text
    place = text.find(", ")
    while place >= 0:
        yield text[:place], text[place + 2 :]
        place = text.find(", ", place + 1)
    for lead in (
        "for ",
        "in ",
        "on ",
        "with ",
        "when ",
        "at ",
        "during ",
        "if ",
        "where ",
        "while ",
        "unless ",
    ):
        if text.startswith(lead):  # "In watch rig the cap must be worn"
            words = text.split(" ")
            for cut in range(2, min(len(words), 14)):
                if words[cut] in _STARTS:
                    yield " ".join(words[:cut]), " ".join(words[cut:])
            return


def other_ways(text: str) -> Iterator[str]:
    """A sentence that is not understood as it stands, put another way.

    What is taken off is not worn; the days at its end come first, "(it may be worn) until 31 May 2026".
    """
    last = _LAST_DATE.search(text)
    if last is not None and not _WITH_DATE.match(text):
        yield f"{text[last.start() :].strip(' ,')} {text[: last.start()].strip(' ,')}"
    for taken_off, not_worn in _OFF:
        if taken_off.search(text):
            yield taken_off.sub(not_worn, text)
            return


def period(text: str) -> tuple[str, datetime.date | None, datetime.date | None]:
    """A sentence without the days it is for: "From 1 October 2026, ..."."""
    match = _WITH_DATE.match(text)
    found = find_date(text, match.end()) if match else None
    if match is None or found is None or found.start != match.end():
        return text, None, None
    rest = text[found.end :]
    if match["word"] == "before":
        return rest.lstrip(" ,"), None, found.date
    day = datetime.timedelta(days=1)
    if match["word"] in ("until", "up to and including"):
        return rest.lstrip(" ,"), None, found.date + day
    until = find_date(rest) if rest.startswith(" to ") else None
    if until is not None and until.start == 4:
        return rest[until.end :].lstrip(" ,"), found.date, until.date + day
    return rest.lstrip(" ,"), found.date, None
