"""The part of a text that asks: which sentence, and by what word it says what is asked for."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import msgspec

from kb.reader.pieces.doings import place_of_doing
from kb.reader.recast.telling import ASKING
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token
from kb.text import Pattern

_BEFORE = word_set("""
    and but so then well ok now in on at by from to for with of up under until till since
    within after before above below beyond over
""")
_WONDERING = Pattern(
    r"(?:\b(?:i|we) (?:would |'d )?(?:just )?(?:like|love|want|wanted|need) to (?:know|learn|hear|find out)"
    r"|\b(?:i|we) (?:'m |am |'re |are |was |were )?(?:just )?(?:wonder|wondering|asking)"
    r"|(?:^|\b(?:please|can you|could you|would you)) (?:please )?(?:tell|remind|show) (?:me|us)"
    r"|\b(?:do you|does anyone|does anybody|does someone) (?:happen to )?know)$"
)
""" "I'd like to know how many ...": what leads in a question that stands later in its sentence."""
_DASHES = frozenset({"-", "–", "—"})
_JOINING = word_set("or versus vs")
_VERBS = word_set("""
    do does did is are am was were may can could must should shall will would might have has had
""")
_AUXILIARY = _VERBS | word_set("i we you he she they to be allowed the one that gets get")
_BEING, _MANY = word_set("is are was were 's"), word_set("many much often")
_DETERMINERS = word_set("the a an my our your his her their")
_SIDES = word_set("now if when because since as while though although after before once until where")
_SUBJECTS = word_set("i we you he she they it the my our his her their a an somebody someone")
WHICH_OF = word_set("another new other extra further special additional different exact same first next")
"""What may stand before the noun that is asked for: "what new things", "how many further stars"."""
_DAYS = word_set("day date time")
"""What is asked for by these is a time, which a clause tells without the word."""


class Asking(msgspec.Struct, frozen=True):
    """The sentence that asks: its places, its words, and the place of what is asked for (-1 if none is).

    What a yes-or-no question asks for is something done (`doing`).
    """

    first: int
    last: int
    lows: tuple[str, ...]
    core: int
    doing: bool = False


def asking_part(text: str, tokens: Sequence[Token]) -> Asking | None:
    """The last sentence or part of one that opens with a question word, else the last that asks of a doing.

    None if it is a choice, or there is none.
    """
    starts = (*sentence_starts(text, tuple(tokens)), len(tokens))
    doing: Asking | None = None
    for start, last in reversed(tuple(pairwise(starts))):
        lows = [token.low for token in tokens[start:last]]
        for first in (0, *(place + 1 for place, low in enumerate(lows) if low == "," or low in _DASHES)):
            first += _led_in(lows[first:])
            told = lows[first:]
            lead = next((i for i, low in enumerate(told[:4]) if low.split("'")[0] in ASKING), None)
            if lead is None or not _BEFORE.issuperset(told[:lead]):
                done = place_of_doing(told) if doing is None and _JOINING.isdisjoint(told) else None
                if done is not None:
                    doing = _of_doing(start + first, told, done)
                continue
            if not _JOINING.isdisjoint(told) or told[lead + 1 : lead + 2] in (["about"], ["if"]):
                return None
            if _is_beside(told, lead):
                continue
            core = _core(told, lead)
            whole = -1 if core is None else start + first + core
            return Asking(start + first, last, tuple(told), whole)
    return doing


def _led_in(told: Sequence[str]) -> int:
    """How many words lead in a question: "I'd like to know how many"."""
    lead = next((i for i, low in enumerate(told) if low in ASKING), 0)
    return lead if _WONDERING.search(" ".join(told[:lead]).replace(" n't", "n't")) is not None else 0


def _of_doing(start: int, told: Sequence[str], done: int) -> Asking:
    """What asks of a doing: from its verb to where a side sentence begins, "now I have changed units"."""
    sides = (i for i in range(done + 1, len(told) - 1) if told[i] in _SIDES and told[i + 1] in _SUBJECTS)
    last = next(sides, len(told))
    return Asking(start + done, start + last, tuple(told), start + done, doing=True)


def _is_beside(told: Sequence[str], lead: int) -> bool:
    """ "Where rigs are mixed, does he ...?", which asks what comes after."""
    return told[lead] in ("where", "when") and any(
        low == "," and not _VERBS.isdisjoint(told[i + 1 : i + 2]) for i, low in enumerate(told)
    )


def _core(told: Sequence[str], lead: int) -> int | None:
    """The place of the word that says what is asked for: "how many years", "which end", "who decides"."""
    word, place = told[lead].split("'")[0], lead + 1
    if word in ("who", "whom"):
        place = _past(_AUXILIARY, told, place)
    elif word == "how":
        place = _past(_MANY, told, place)
        if place == lead + 1:
            return None
    elif word in ("what", "which", "whose"):
        place = _past(_DETERMINERS, told, _past(_BEING, told, place))
    else:
        return None
    place = _past(WHICH_OF, told, place)
    return place if place < len(told) and told[place] not in _DAYS else None


def _past(words: frozenset[str], told: Sequence[str], place: int) -> int:
    while place < len(told) and told[place] in words:
        place += 1
    return place
