"""A question that only points at things: "can I wear it with that?". It is asked which thing is meant.

All its words are such as any question has, and none of them names anything; what it points at was not said.
"""

from __future__ import annotations

import msgspec

from kb.model.questions import Ask, Reading
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize

_POINTING = word_set("""
    it its that this these those they them one ones other others another same latter former
    thing things stuff something like so such
""")
_SIDES = word_set("left right over under up down on off in out inside outside above below front back")
_PLACES = word_set("there here")
_LITTLE = word_set("""
    i i'm we you he she me us him her my our your his their myself ourselves anyone everybody everyone
    am is are was were be been being 's 're 'm 've 'd 'll s n't t m re
    do does did done doing have has had having can could may might must should shall will would ought need
    needs needed want wants wanted let get got go goes going gone put puts putting take takes taking keep
    keeps kept leave left stay stays wear wears wearing worn wore use used carry wait waits change changed try
    matter matters count counts happen happens work works apply applies mean means know say says
    a an the any some all both either each every no not nor never none neither only just even still yet
    already again also too as well anyway though then now today tomorrow tonight yesterday later soon always
    ever often sometimes usually normally really actually please maybe perhaps
    and or but if when while because what which who where how why whether whose about
    to of for with without by from at into onto over under on off in out up down than between before after
    during until till since along together instead back
    ok okay fine alright all right allowed permitted good bad wrong correct acceptable legal problem issue way
    last next first time times day days week weeks month year morning afternoon evening night
    monday tuesday wednesday thursday friday saturday sunday mondays tuesdays wednesdays thursdays fridays
    saturdays sundays weekend weekends
    two three four yes yeah ta thanks cheers hi hello hey lol mate sir
""")


def asked_of_nothing(reading: Reading) -> Reading | None:
    """A reading that refuses such a question, as one that asks which thing is meant; None for any other."""
    if any(span.role in ("item", "fact", "grade", "clause") for span in reading.spans):
        return None
    lows = [word for token in tokenize(reading.question) for word in token.low.split("'") if word.isalnum()]
    if not lows or any(word not in _ALL for word in lows) or lows[:2] == ["what", "time"]:
        return None
    sides = len(lows) > 1 and all(word in _SIDES or word == "or" for word in lows)
    if _POINTING.isdisjoint(lows) and not sides and not (_PLACES.issuperset(lows[-1:]) and len(lows) > 1):
        return None
    ask = Ask(fact="item", prompt="Which item is asked about?")
    return msgspec.structs.replace(reading, abstain=None, ask=ask)


_ALL = _POINTING | _SIDES | _PLACES | _LITTLE
