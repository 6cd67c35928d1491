"""Treatments and states asked about by a verb: "can I wring it out", "machine-wash it", "hood up".

A treatment that the books name ("wash by hand", "no softener", "wash at 30 °C") is asked about by its own
words, or by those of its contrary: a machine for the hand, a radiator for away from heat, other degrees.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Aspect, Case
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.query import said_case
from kb.reader.names.spelling import akin
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.pointing import is_place
from kb.reader.recast.either import is_raised
from kb.reader.words.everyday import PLACES
from kb.reader.words.forms import word_pairs, word_set
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern

_PARTICIPLES = word_pairs("""

    wring=wrung wringing=wrung hang=hung hanging=hung beat=beaten beating=beaten freeze=frozen
    freezing=frozen tear=torn spin=spun spinning=spun dry=dried wash=washed bend=bent sew=sewn keep=kept
    cut=cut shake=shaken press=ironed pressing=ironed pressed=ironed launder=washed laundering=washed
    laundered=washed twist=wrung twisting=wrung twisted=wrung conditioner=softener tumbled=tumble
""")
_LIGHT = word_set("""

    out up to be it dry down off and with the a an in at on by for near over from of through under using
    use put do my own me i can get give run stick chuck pop bung shove then just them
""")
_GENERIC = word_set("""

    wash washing washed launder clean cleaning cleaned dry drying dried take bring add using wear machine
    machines fabric
""")
_CLEANED = word_set(
    "wash washing washed launder clean cleaning cleaned laundry launderette laundress cleaner cleaners"
)
_ELSEWHERE = word_set("laundry launderette laundress home house town cleaners cleaner's")
_CLEANING = _ELSEWHERE | _CLEANED | word_set("send sent local steam")
_SPELLS = word_set("weekly daily monthly yearly fortnightly every each once twice week month")
_OFTEN = _SPELLS | word_set("day year wear use time or and often after before")
_STATES = word_set("dry dried clean cleaned washed")
_LABEL_LIGHT = word_set("by at the a an to of in with only each every after before again once and from away")
_DENIED = word_set("no not never without")
_CONTRARY: Mapping[str, frozenset[str]] = {
    "hand": word_set("machine machines washer launderette"),
    "flat": word_set("tumble tumbler hang hung hanging line peg hanger dryer drier radiator spin spun"),
    "heat": word_set(
        "radiator heater fire stove tumble tumbler dryer drier oven boiler hob hairdryer airer fireside grill"
    ),
    "station": word_set("home house launderette"),
    "cold": word_set("hot warm boil boiling"), "cool": word_set("hot warm boil boiling"),
    "warm": word_set("hot cold boil boiling"), "shade": word_set("sun sunshine sunlight"),
    "hang": word_set("tumble tumbler dryer drier"), "hung": word_set("tumble tumbler dryer drier"),
}  # fmt: skip
"""What is done instead, by the word of a treatment that it is not."""


_BOUND = Pattern(
    r"(?i)\b(?:(?P<denied>(?:not|no|never) (?:more than|over|above|hotter than|warmer than|higher than))|"
    r"at most|up to|(?:a )?maximum(?: of)?) \d"
)


def asked_treatment(
    found: Understood, left: Sequence[int], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Query | None:
    """The query of how the one item named is cared for, where rules on that have the verbs left over; whether
    it is worn, where a hood is up or down."""
    items = {piece.arg for piece in found.pieces if piece.tag == "item"}
    if frame.kind not in ("may", "must", "how") or len(items) != 1 or roles.clashing or roles.value:
        return None
    (item,) = items
    acts = [
        piece for piece in found.pieces if piece.tag in ("act", "leave off") and not _is_each(piece, found)
    ]
    if any(piece.arg not in ("", "use") for piece in acts) or _is_worn_meanwhile(found):
        return None
    other = _by_another(found, left, item, lookup)
    if other is not None:
        case = said_case(case, roles, lookup)
        if other and frame.kind == "may" and frame.polarity == "do":
            return Query(kind="may", items=(item,), aspect=other, polarity="not", case=case)
        return Query(kind="how", items=(item,), aspect="care", case=case)
    if any(_is_at_place(piece, lookup) for piece in found.pieces):
        return None
    said = said_case(case, roles, lookup)
    words = [t for i in left for t in found.tokens[found.pieces[i].first : found.pieces[i].last]]
    lows = {token.low for token in words}
    if lows in ({"up"}, {"down"}):
        polarity = frame.polarity if lows == {"up"} else "not"
        up = Query(kind="may", items=(item,), aspect="wear", polarity=polarity, case=said)
        return up if is_raised(item, lookup) and frame.kind == "may" and frame.polarity == "do" else None
    if _is_of_weather(words, found):
        return None
    treatments = _treatments(item, lookup)
    told = frame.modal or any(token.low not in _STATES for token in words)  # "dry and sunny" is of no care
    one = _the_one(words, treatments, lookup) if frame.kind != "how" and told else None
    if one is not None and any(piece.tag == "or" for piece in found.pieces):
        return Query(kind="how", items=(item,), aspect="care", case=said)  # "hung to dry or tumbled"
    if one is not None:
        name, same = one
        do = same == (frame.polarity == "do")
        if not do and frame.kind == "must":
            return None
        return Query(kind=frame.kind, items=(item,), aspect=name, polarity="do" if do else "not", case=said)
    if told and any(_tells(words, aspect, lookup) for aspect in treatments):
        return Query(kind="how", items=(item,), aspect="care", case=said)
    return None


_WEATHER = Pattern(
    r"\b(?:if|when|while|because|since|though|although|but|and|as) it(?: 's| is|'s) (?:\w+ )?(\w+)\b"
)


def _is_of_weather(words: Sequence[Token], found: Understood) -> bool:
    """ "The hood up if it's dry": a state of the weather, where no treatment is told in other words."""
    said = _WEATHER.search(" ".join(token.low for token in found.tokens))
    rest = {token.low for token in words} - {"up", "down", "on", "off"}
    return said is not None and rest == {said.group(1)} and rest <= _STATES


def _is_each(piece: Piece, found: Understood) -> bool:
    """ "After each wear": how often, and not whether it is worn."""
    return piece.first > 0 and found.tokens[piece.first - 1].low in ("each", "every")


_ONLY_BY = Pattern(r"\bby (?:the )?(.+?) only\b")
_CLEANED_BY = Pattern(
    r"^(?:wash|clean|launder)\w*\b[^,;]*? (?:by|at|in) (?:the )?"
    r"(?P<who>[a-z' ]+?)(?: only| at \d.*| after .*| every .*|$)"
)
"""Who cleans it, or where: "at the zoo at 60 °C", "in the house laundry only"; not with what, "by hand"."""
_CLEANERS = word_set("laundry cleaner firm company service launderer")
_OWN = Pattern(
    r"(?i)\b(?:at|back|to) home\b|\bhome (?:and|to) \w+|\b(?:take|bring)s? [\w' -]{1,30}? home\b"
    r"|\blaunderette\b"
    r"|\b(?:my|our|her|his) (?:own )?(?:own|mum's|mother's|wife's) (?:washing )?machine\b"
    r"|\b(?:local|nearest|a|the) (?:dry[- ])?cleaner'?s?\b|\bcleaner'?s? in town\b"
)
"""That it is done elsewhere: at home, in a machine of one's own, at a cleaner's in town."""
_DRY_ONLY = Pattern(r"\bdry[- ]?clean(?:ing|ed)?(?: only)?$")
_IN_WATER = Pattern(
    r"(?i)\b(?:in|through|thru) (?:the |a |my )?(?:(?:washing )?machine|wash)\b|\b(?:hand|machine)[- ]?wash\b"
    r"|^(?:can|may|could) (?:i|we) (?:just )?(?:wash|launder) "
)
_HOW_ELSE = word_set(
    "hot enough separately carefully properly run own machine dryer tonight filthy through thru"
)


def _by_another(found: Understood, left: Sequence[int], item: str, lookup: Lookup) -> str | None:
    """ "Wash it at home", "send it to a cleaner's", of what one named alone cleans: that it is cleaned so.

    Empty where who does it is not said, and may be that one; None where nothing of the kind is asked.
    """
    elsewhere = _elsewhere(found, left, item, lookup)
    if elsewhere is not None:
        return elsewhere
    agents = {
        name: {token.key for token in tokenize(only.group(1))}
        for name in _treatments(item, lookup)
        if (only := _ONLY_BY.search(lookup.aspects[name].label))
    }
    said = {token.key for token in found.tokens}
    if len(agents) != 1 or any(agent <= said for agent in agents.values()):
        return None
    ((name, own),) = agents.items()
    over = {t.low for i in left for t in found.tokens[found.pieces[i].first : found.pieces[i].last]}
    agent = {t.low for t in found.tokens if t.key in own}
    lows = {token.low for token in found.tokens}
    if not (agent or lows & _CLEANED) or not over <= _GENERIC | _LIGHT | _CLEANING | agent:
        return None
    return name if lows & _ELSEWHERE or any(low.endswith("s") for low in agent) else ""


def _elsewhere(found: Understood, left: Sequence[int], item: str, lookup: Lookup) -> str | None:
    """ "Can I wash my scrubs at home?", of what must be washed at the zoo: that it is washed so.

    Of what has a rule of its own on home nothing is said here.
    """
    lows = {token.low for token in found.tokens}
    wet = _IN_WATER.search(found.text) is not None and "dry" not in lows
    if (_OWN.search(found.text) is None and not wet) or lows.isdisjoint(_CLEANED | {"machine"}):
        return None
    related = set(lookup.broader(item))
    rules = lookup.rules_on(related)
    ways = {rule.aspect: lookup.aspects[rule.aspect] for rule in rules if rule.modality == "must"}
    dry = [n for n, way in ways.items() if way.within == "care" and _DRY_ONLY.search(way.label.casefold())]
    over = {t.low for i in left for t in found.tokens[found.pieces[i].first : found.pieces[i].last]}
    idle = _GENERIC | _LIGHT | _CLEANING | _HOW_ELSE
    free = all(low in idle or low.isdecimal() for low in over)
    if wet and dry:
        return dry[0] if len(dry) == 1 and free else None
    if _OWN.search(found.text) is None or any(_is_on_home(lookup.aspects[rule.aspect]) for rule in rules):
        return None
    cleaned = (
        (n, _CLEANED_BY.match(way.label.casefold())) for n, way in ways.items() if way.within == "care"
    )
    said = {token.key for token in found.tokens}
    names = [n for n, by in cleaned if by and _is_elsewhere(by["who"], said)]
    return names[0] if len(names) == 1 and free else None


def _is_elsewhere(who: str, said: set[str]) -> bool:
    """Whether who or what cleans it is some people or a place, of which nothing was said."""
    tokens = tokenize(who)
    return not {tokens[-1].low, tokens[-1].key}.isdisjoint(_CLEANERS | PLACES) and said.isdisjoint(
        token.key for token in tokens
    )


def _is_on_home(way: Aspect) -> bool:
    return way.within == "care" and "home" in way.label.split()


def _is_at_place(piece: Piece, lookup: Lookup) -> bool:
    """ "Can I hang it in the lamp room": no treatment of the books tells of the places that one may be at."""
    return piece.tag == "fact" and piece.values is not None and is_place(piece.fact, piece.values, lookup)


def _is_worn_meanwhile(found: Understood) -> bool:
    """ "May I wash in my jersey": whether what is named is what one has on."""
    thing = next(index for index, piece in enumerate(found.pieces) if piece.tag == "item")
    before = thing - 1
    while before >= 0 and found.pieces[before].tag in ("det", "poss"):
        before -= 1
    return before >= 0 and found.tokens[found.pieces[before].first].low == "in"


def _treatments(item: str, lookup: Lookup) -> list[str]:
    """The ways of care that rules name for an item or for what it is a kind of."""
    related = set(lookup.broader(item))
    spoken = {rule.aspect for rule in lookup.rules_on(related)}
    return [name for name in sorted(spoken) if lookup.aspects[name].within == "care"]


def _the_one(words: Sequence[Token], treatments: Sequence[str], lookup: Lookup) -> tuple[str, bool] | None:
    """The treatment that the words are of, and whether it is that or its contrary; None where not one is."""
    fits = {name: fit for name in treatments if (fit := _fit(words, lookup.aspects[name].label)) is not None}
    best = max((score for score, _ in fits.values()), default=0)
    chosen = [(name, same) for name, (score, same) in fits.items() if score == best]
    return chosen[0] if len(chosen) == 1 and best else None


def _fit(words: Sequence[Token], label: str) -> tuple[int, bool] | None:
    """How many words are of a treatment, and whether of its contrary; None if one is of neither."""
    parts = [part for part in tokenize(label) if part.low not in _LABEL_LIGHT and part.low[0].isalnum()]
    bound = _BOUND.search(label)
    denied = any(part.low in _DENIED for part in parts) and not (bound and bound["denied"])
    degrees = [part.low for part in parts if part.low.isdecimal()]
    score, against = 0, False
    if not any(_is_of(word, parts) for word in words):
        return None  # no more than a number
    for word in words:
        if word.low[0].isdecimal():
            if not degrees:
                return None
            score, against = score + 2, against or not _is_as_hot(word.low, degrees, bound is not None)
        elif any(_same_verb(word.low, part.low) for part in parts):
            score += 2
        elif any(_is_against(word.low, part.low) for part in parts):
            score, against = score + 2, True
        elif word.low not in _LIGHT | _GENERIC and word.low[0].isalpha():
            return None
    return (score, against == denied) if score else None


def _is_as_hot(said: str, degrees: Sequence[str], at_most: bool) -> bool:
    """Whether a number is that of a treatment, or within it where that is the most: "at most 40 °C"."""
    if at_most and said.isdecimal():
        return len(degrees) == 1 and int(said) <= int(degrees[0])
    return said in degrees


def _is_of(word: Token, parts: Sequence[Token]) -> bool:
    """Whether a word is one of a treatment, or of what is done instead."""
    same = word.low[0].isalpha() and any(_same_verb(word.low, part.low) for part in parts)
    return same or any(_is_against(word.low, part.low) for part in parts)


def _is_against(word: str, part: str) -> bool:
    return _PARTICIPLES.get(word, word) in _CONTRARY.get(part, ()) or word in _CONTRARY.get(part, ())


def _tells(words: Sequence[Token], aspect: str, lookup: Lookup) -> bool:
    """Whether every word of weight is one of a treatment's, in another form."""
    label = tokenize(lookup.aspects[aspect].label)
    often = _OFTEN if any(word.low in _SPELLS for word in words) else frozenset[str]()
    weighty = [word for word in words if word.low not in _LIGHT | often]
    return bool(weighty) and all(any(_same_verb(word.low, part.low) for part in label) for word in weighty)


def _same_verb(word: str, part: str) -> bool:
    forms = [_PARTICIPLES.get(one, one) for one in (word, part)]
    return forms[0] == forms[1] or (min(map(len, forms)) > 3 and akin(*forms))
