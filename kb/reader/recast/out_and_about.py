"""A thing worn on the way or at the shops: "my fleece on the bus to work", "pop to the shop in my shirt".

It is put as the books call it where the rules of the thing have one name for it: the way to or from work, or
outside the premises. Read only for a text that is not understood as it stands.
"""

from __future__ import annotations

from collections.abc import Iterator
from re import Match

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.on_the_way import JOURNEY, OWN_TIME, VEHICLE, WAY_NAMED
from kb.reader.words.forms import word_set
from kb.text import Pattern
from kb.wording.labels import is_whole

Edit = tuple[int, int, str]
_PREMISES = (
    "premises grounds property site campus compound estate workplace works workshop factory plant mill"
    " foundry brewery distillery dairy creamery bakery laundry farm nursery quarry mine pit yard gate"
    " gates shipyard dockyard dock docks harbour port airport airfield station depot garage terminal base"
    " camp barracks fort prison court school college university academy library laboratory hospital"
    " infirmary clinic surgery hospice home hotel inn restaurant club casino shop store market mall centre"
    " center office offices bank museum gallery theatre playhouse studio cinema arena stadium racecourse"
    " course rink baths pool gym park garden gardens zoo aquarium reserve church cathedral abbey minster"
    " chapel house hall castle palace"
)
_OUTSIDE = Pattern(
    rf"(?i)(?:outside|away from|off|out of|beyond) (?:the )?(?:[\w'’-]+ )?(?:{_PREMISES.replace(' ', '|')})"
)
"""What the books call being away from where one works: the whole of it, in any trade."""
_IN_IT = Pattern(
    r"(?i)(?P<more>(?: (?!in\b)[\w'’]+){0,3}?) in (?P<it>(?:my|the|our|his|her|their) [\w'’ -]+)"
)
_UNSTARTED = Pattern(r"(?i)\b(?:from|until|before|after|than) ?$")

_WORK = Pattern(r"(?i)\b(?:work|shift|dut(?:y|ies)|drills?|parade|practice|station|depot|base|job|turn)\b")
_BROKEN = Pattern(r"(?i)\b(?:stop|call|drop)(?:p?ed|p?ing)? (?:in|at|off|by)\b")


_DRINKS = Pattern(
    r"(?i)\b(?:drink(?:ing)? alcohol|(?:(?:go|going|pop|nip|stop off|stay) (?:out )?)?for an? (?:quick "
    r"|swift )?(?:pint|beer|drink|half|bevvy)|have a (?:quick )?(?:pint|beer|half)) in "
    r"(?P<it>(?:my|our|his|her|their) [\w'’ -]+?)"
    r"(?=\s*[.,;:?!]|\s*$| (?:after|on|at|when|if|with|before)\b)"
)
_PUB = Pattern(
    r"(?i)\b(?:go(?:ing)? |went |pop(?:p?ed|ping)? |nip(?:p?ed|ping)? |off )?(?:straight |down |over |out )?"
    r"to the (?:pub|boozer|tavern)\b"
)
_OF_DRINK = Pattern(
    r"(?i)\b(?:licensed|alcohol|pubs?|inns?|public houses?|drink(?:s|ing)?)\b"
    r"|\b(?:in|at|behind) (?:a|the|any) bar\b"
)
_DRUNK = frozenset(
    ("in a pub", "in the pub", "in licensed premises", "in a public house", "licensed premises")
)


def _at_a_drink(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Go for a pint in my tunic", where the books have a place for that: worn in a pub."""
    for match in _DRINKS.finditer(found.text):
        values = (value for fact in lookup.base.facts for value in (*fact.values, fact))
        called = [v.label for v in values if not _DRUNK.isdisjoint((v.label.casefold(), *v.other_labels))]
        if len(called) == 1:
            yield match.start(), match.end(), f"wear {match['it']} {called[0]}"


def _pub(found: Understood, lookup: Lookup) -> Match[str] | None:
    """ "To the pub", where the books say nothing of drink: a place outside like any other."""
    said = _PUB.search(found.text)
    if said is None or any(_OF_DRINK.search(clause.text) for clause in lookup.base.clauses):
        return None
    return said


def out_and_about(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of such a stretch of a text."""
    yield from _at_a_drink(found, lookup)
    journey = JOURNEY.search(found.text)
    errand = OWN_TIME.search(found.text) or _pub(found, lookup)
    said = journey or errand
    if said is None or _UNSTARTED.search(found.text[: said.start()]) or _BROKEN.search(found.text):
        return
    if any(is_whole(lookup, entry.id) for p in found.pieces for entry in p.entries if entry.kind == "item"):
        return  # the uniform as such has clauses of its own
    if journey is not None and _WORK.search(said.group()) is None and VEHICLE.search(said.group()) is None:
        return  # "we travel home" tells of no duty that it is from
    facts = {found.tokens[piece.first].start for piece in found.pieces if piece.tag == "fact"}
    if journey is None and any(said.start() <= start < said.end() for start in facts):
        return  # the shop is one of the places of the books
    names = _names(found, lookup)
    ways = [name for name in names if WAY_NAMED.fullmatch(name)] if journey is not None else []
    put = ways or [name for name in names if _OUTSIDE.fullmatch(name)]
    by = VEHICLE.search(said.group())
    if not put and by is not None and any(said.start() <= start < said.end() for start in facts):
        yield said.start(), said.end(), by.group()  # "on the bus to work" is in no working rig
    if len(put) != 1:
        return
    led = said.group().split()[0].casefold() in _VERBS
    worn = _IN_IT.match(found.text, said.end()) if led else None
    if worn is not None:
        yield said.start(), worn.end(), f"wear {worn['it']} {put[0]}{worn['more']}"
    else:
        yield said.start(), said.end(), put[0]


_VERBS = word_set("""
    go going come coming travel travelling traveling walk walking cycle cycling drive driving ride riding get
    getting head heading commute commuting pop popping nip nipping
""")


def out_asked(found: Understood, lookup: Lookup) -> tuple[str, tuple[str, ...]] | None:
    """ "Popping to the shop in my shirt. Fine?" as a question; None where a text does not begin so."""
    first = next(iter(out_and_about(found, lookup)), None)
    if first is None or first[0] or not first[2].startswith("wear "):
        return None
    return f"May I {first[2]}?", ()


def _names(found: Understood, lookup: Lookup) -> list[str]:
    """The labels of the circumstances on which the rules of the things that are named rest."""
    named = {entry.id for p in found.pieces if p.tag in ("item", "items") for entry in p.entries}
    covering = {broad for item in named for broad in lookup.broader(item)}
    rules = lookup.rules_on(covering)
    facts = [lookup.facts[one] for one in dict.fromkeys(t.fact for r in rules for t in tests(r.condition))]
    states = [fact for fact in facts if fact.family in ("situation", "term")]
    return list(dict.fromkeys(one.label for fact in states for one in (fact.values or (fact,))))
