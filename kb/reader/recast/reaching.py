"""How far a thing reaches, where a fact has that in its name: "my moustache goes past the corner".

The fact is called "moustache past the corner of the mouth"; who has it so, wears the thing. What does not get
as far is not past it. "It reaches the corner" tells neither.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

Edit = tuple[int, int, str]
_LABEL = Pattern(r"(?P<what>[\w' -]+?) (?P<past>past|beyond) (?:the )?(?P<end>[\w' -]+)", re.IGNORECASE)
_OWN = r"(?:(?:the|a|my|your|his|her|our|their) )?"
_GO = (
    r"(?:(?:that|which) )?(?:just |only |now |already )?(?:goes|comes|passes|gets|grows|hangs|reaches|runs"
    r"|extends|droops|is|sticks out)(?: (?:right|well|down|out|just|a bit|a little))*"
)
_SHORT = (
    r"(?:(?:that|which) )?(?:is short(?:,)? and )?(?:(?:does|do)(?: not|n['’]t)|never) (?:quite |even )?"
    r"(?:go|come|pass|get|grow|hang|reach|run|extend)(?: (?:as far as|to|up to|down to))?"
)


def reaching(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each such stretch of a text."""
    worn = {item.label.casefold() for item in lookup.base.items}
    for fact in lookup.base.facts:
        named = _LABEL.fullmatch(fact.label) if fact.kind == "yes_no" else None
        if named is None or named["what"].casefold() not in worn:
            continue
        end = " ".join(_OWN + re.escape(w) for w in named["end"].split() if w != "the")
        what = re.escape(named["what"])
        there = rf"(?:passes {end}|{_GO} (?:past|beyond) {end})"
        short = rf"{_SHORT}(?: (?:past|beyond))? {end}"
        led = rf"(?<![\w'’-])(?:i(?:['’]ve| have) (?:got )?)?(?:(?:the|a|my) )?{what},? "
        for source, deny in ((there, ""), (short, "not ")):
            for match in re.finditer(rf"{led}{source}(?![\w'’-])", found.text, re.IGNORECASE):
                yield match.start(), match.end(), f"I wear the {named['what']}, {deny}{fact.label}"
