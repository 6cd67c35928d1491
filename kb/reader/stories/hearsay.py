"""Claims that somebody makes, and the short questions that ask whether they hold: "... Is that so?"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.reader.pieces.reported import SAYING
from kb.reader.words.forms import word_set

_SAYING = SAYING | word_set("""
    saying claim claiming think thought reckon reckoned insist insisted believe believed maintain
    maintained argue argued swear swore tell tells told telling hear heard read reads assure assures
    assured convinced certain sure adamant announce announces announced declare declares declared
    mention mentions mentioned suggest suggests suggested state states stated warn warns warned explain
    explains explained inform informs informed promise promises promised shout shouts shouted has rumour
    rumor word gossip apparently seemingly supposedly allegedly
""")
_WHOM = word_set("me us him her them everyone everybody people")
_VERDICTS = word_set("""
    forbidden banned prohibited right wrong true false correct incorrect ok okay fine alright allowed
    permitted permissible legal illegal lawful unlawful proper acceptable accurate valid kosher legit
    trouble breach rule rules order regulations regulation book books problem pass passes muster stop
    stopped complain complains complaint break broke broken breaking offence guilty excused good enough
    hold holds stand stands water against happen happens sense so fair bounds limits limit tolerance
    line serious rubbish nonsense tosh mistaken joking kidding lying fibbing having spec rights let
    allow permit forbid regs regulation dress code decent
""")
_FRAME = word_set("""
    is it that this he she they i we you him her them me us am are was were be been do does did have has
    had will would can could may might must shall should not n't 's 're 'll 'd isn't the a an or and but
    so then really actually still quite any anything anyone anybody somebody nothing with in of to out
    within by there all yes no on what how about as my his her their our for if just at too even ever
    now go going get got getting be being think thinks reckon tell told say says case honestly , - me
    much far up who which or not talking telling make makes
""")
_WHO = word_set("""
    officer boss skipper chief mate lad lads cook sergeant inspector captain chap bloke man woman lady guy boy
    girl friend sister brother wife husband uncle aunt father mother dad mum colleague instructor storekeeper
""")
_LONGEST = 12
_FURTHEST = 9


def asks_whether_so(lows: Sequence[str]) -> bool:
    """Whether a sentence only asks if what was said is so: "is he right?", "fine?", "did I break a rule?"."""
    words = [low for place, low in enumerate(lows) if low != "," and not (place and low in _WHO)]
    return (
        0 < len(words) <= _LONGEST
        and any(low in _VERDICTS for low in words)
        and all(low in _VERDICTS or low in _FRAME for low in words)
    )


def claims_something(lows: Sequence[str]) -> bool:
    """Whether a stretch says that somebody says or thinks something: "he swears that ..."."""
    return any(_says(tuple(lows), place) for place in range(len(lows)))


def _says(lows: tuple[str, ...], place: int) -> bool:
    """Whether a word is one of saying: "he says", "rumour has it", not "he has"."""
    return lows[place] in _SAYING and (lows[place] != "has" or lows[place + 1 : place + 2] == ("it",))


def claim_starts(lows: Sequence[str]) -> Iterator[int]:
    """Where what is claimed may begin: after each word of saying, the last first, and at the start.

    Between the word and what is said there may be who heard it, and how and when: "was told by the skipper
    the other day that ...".
    """
    for place in range(len(lows) - 2, -1, -1):
        if tuple(lows[place : place + 2]) == ("according", "to") and "," in lows[place : place + _FURTHEST]:
            yield lows.index(",", place) + 1
        if not _says(tuple(lows), place) or tuple(lows[place : place + 2]) == ("told", "off"):
            continue
        that = next(
            (n for n in range(place + 1, min(place + _FURTHEST, len(lows) - 1)) if lows[n] == "that"), 0
        )
        if that:
            yield that + 1
        start = place + 1
        start += lows[start] in _WHOM
        start += start < len(lows) and lows[start] in (",", "it")
        if start < len(lows) and lows[start] != "that":
            yield start
    yield 0
