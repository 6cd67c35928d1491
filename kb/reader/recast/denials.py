"""What is said not to be so, in people's own words: "the engine's off", "nobody has ordered it".

Each is put as the books' own name for it with a "no", and only where one fact of the books is meant. Read
only for a text that is not understood as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.reader.pieces.pieces import Understood
from kb.reader.words.machines import MACHINES
from kb.reader.words.tokens import tokenize, word_key
from kb.text import Pattern

Edit = tuple[int, int, str]
_ITEMS = ("item", "items")
_NEAR = (
    r"(?:(?:right )?(?:near|beside|by|next to|close to|around|past|walking past|to walk past|passing|to pass"
    r"|alongside|with|at|where|over|while|when) )?(?:a |an |any |some )?"
)
_OWN = r"(?:(?:all )?(?:the|my|our|your|their|its|any|all|this|that|those|these) )?"
_IS = r"(?:['’](?:s|re)|(?: (?:is|are|was|were|has|have|stays?|being|now|been|all|both|currently))*)"
_AFTER = r"(?=\s*(?:[.,;:!?–—-]|$|(?:and|but|so|in|at|for|when|now|today|while)\b))"
"""What may follow a word for how a machine is: not "still running", not "on the slipway"."""
_NOT_ON = r"(?:on|going|turning|running|in use|working)"
_STILL = (
    rf"(?:(?:switched off|turned off|shut off|shut down|powered down|(?:not|n['’]t) {_NOT_ON}|off|stopped"
    rf"|standing (?:still|idle)|stationary|silent|idle|at rest|dead){_AFTER})"
)
_GOING = (
    r"(?:(?:still|already|now) )?(?:(?:switched on|turned on|turning over|turning|going|running|humming"
    rf"|ticking over|roaring|spinning|on|live){_AFTER})"
)
_ENDED = r"(?:finished|over|all done|complete|completed|over and done with|at an end|over for the day)"
_CEASED = r"(?:finished|stopped|done with|finished with|through with|no longer)"
_NONE = r"(?:no|without any|without|with no)"
_GOING_ON = r"(?: (?:is|are|being|going|done|on|at the moment|under way|underway|in progress|happening))*"
_NOBODY = r"(?:nobody|no one|no-one|none of them)"
_SAID = r"(?:said|ordered|told|asked|allowed|granted|authorised|authorized|approved|given|declared|announced)"
_WHAT = (
    r"(?: (?:us|me|them|anyone|anybody))?(?: (?:so|it|that|this|otherwise|anything|a thing|a word|yes|one"
    r"|any(?: such)?(?: order| word| permission)?|(?:the|an|a) (?:order|word|nod|go-ahead|say-so)))?"
    r"(?: yet| so far)?"
)
_WORD = r"(?:words?|orders?|signs?|say-so|permission|peep|messages?|go-ahead)"
_OVER = r"(?=\s*(?:[.,;:!?–—-]|$|and |but |so |though |in |at |on |for |when |today|here|now))"
"""Where what is said of it is over, so that nothing goes on from it ("never said we couldn't")."""
_ABOUT = r"(?: (?:about|on|of|for) (?:it|that|this|any (?:such )?thing))?"
_MEDICAL = r"(?:(?:[a-z]+ )?(?:doctor|doc|physician|medic|medical officer|gp|optician|consultant))"
_WEARING = Pattern(
    r" (?:to|(?:that )?i (?:should|must|may|can|ought to|need to|have to)) (?=(?:wear|keep|put|use|have)\b)",
    re.IGNORECASE,
)
_NOTE = r"(?:note|letter|chit|advice|word|say-so|orders?|instructions?|certificate|line)"
_TOLD = r"(?:told|advised|recommended|prescribed|ordered|says|said|insists|insisted)"


def denials(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each such stretch of a text."""
    yield from _stopped(found, lookup)
    yield from _left(found, lookup)
    yield from _ended(found, lookup)
    yield from _ungranted(found, lookup)
    yield from _unadvised(found, lookup)
    yield from _without_a_set(found, lookup)


@cache
def _compiled(pattern: str) -> Pattern:
    return Pattern(rf"\b(?:{pattern})(?![\w'’-])", re.IGNORECASE)


def _matches(pattern: str, found: Understood) -> Iterator[re.Match[str]]:
    return _compiled(pattern).finditer(found.text)


def _any_of(names: Iterable[str]) -> str:
    return _joined(frozenset(names))


@cache
def _joined(names: frozenset[str]) -> str:
    return "|".join(sorted(map(re.escape, names), key=len, reverse=True))


@cache
def _states(lookup: Lookup) -> tuple[Fact, ...]:
    return tuple(f for f in lookup.base.facts if f.kind == "yes_no" and f.family == "situation")


def _tested(found: Understood, lookup: Lookup) -> set[str]:
    """The facts that rules on the things that are named test."""
    named = {entry.id for piece in found.pieces if piece.tag in _ITEMS for entry in piece.entries}
    covering = {broad for item in named for broad in lookup.broader(item)}
    rules = lookup.rules_on(covering)
    return {test.fact for rule in rules for test in tests(rule.condition)}


@cache
def _machine(lookup: Lookup) -> tuple[Fact | None, frozenset[str]]:
    """The one machine that the books know to be running or not, and the words for it."""
    running = [fact for fact in _states(lookup) if tokenize(fact.label)[-1].low == "running"]
    if len(running) != 1:
        return None, frozenset()
    named = frozenset(word_key(token.low) for token in tokenize(running[0].label)[:-1])
    return (None if named.isdisjoint(MACHINES) else running[0]), named


def _stopped(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The engine's off", "with the machines standing still", "the motors are humming"."""
    running, named = _machine(lookup)
    if running is None:
        return
    things = {token.key for p in found.pieces if p.tag in _ITEMS for token in found.tokens[p.first : p.last]}
    nouns = _any_of(form for word in (MACHINES | named) - things for form in (word, word + "s", word + "es"))
    for match in _matches(rf"{_NEAR}{_OWN}(?:{nouns}){_IS} ?{_STILL}", found):
        yield match.start(), match.end(), f"no {running.label}"
    for match in _matches(rf"{_NEAR}{_OWN}(?:{nouns}){_IS} {_GOING}", found):
        yield match.start(), match.end(), running.label
    for match in _matches(rf"{_NEAR}{_OWN}(?:running|moving|turning|spinning) (?:{nouns})", found):
        yield match.start(), match.end(), running.label
    if running.id in _tested(found, lookup):
        for match in _matches(rf"(?:with |when |while |if )?(?:everything|it all){_IS} ?{_STILL}", found):
            yield match.start(), match.end(), f"no {running.label}"


def _left(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Gone off watch", "just come off duty an hour ago"."""
    labels = [name for f in _states(lookup) for name in (f.label, *f.other_labels)]
    nouns = _any_of(name.partition(" ")[2] for name in labels if name.casefold().startswith("on "))
    if not nouns:
        return
    going = r"(?:gone|went|go|going|come|came|coming|knocked|knocking|clocked|signed|got|stood|been stood)"
    ago = r"(?: (?:an hour|half an hour|a (?:while|minute|moment|bit)|(?:\w+ )?(?:minutes|hours)) ago)?"
    for match in _matches(rf"{going}(?: (?:straight|just|now|back))? off (?P<what>{nouns}){ago}", found):
        yield match.start(), match.end(), f"off {match['what']}"


def _ended(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The welding is finished", "no hot work going on", "done painting"."""
    lows = found.text.casefold()
    for name, label, one in _doings(lookup):
        if name.casefold() not in lows:
            continue
        said = re.escape(name)
        over = rf"(?:the |our |my )?{said}{_IS} {_ENDED}"
        ceased = (
            r"(?:(?:i|we|he|she|they)(?:['’](?:m|re|ve|s)| (?:am|are|is|have|has))(?: (?:all|just|now))* )?"
        )
        for match in (*_matches(over, found), *_matches(rf"{ceased}{_CEASED} (?:the )?{said}", found)):
            yield match.start(), match.end(), f"no {label}" if one else f"not {label}"
        for match in _matches(rf"{_NONE} {said}{_GOING_ON}", found):
            if match.group().casefold() != f"no {label}".casefold() and one:
                yield match.start(), match.end(), f"no {label}"


@cache
def _doings(lookup: Lookup) -> tuple[tuple[str, str, bool], ...]:
    """The names of what is done with its label, and whether it is a fact of its own."""
    found = list[tuple[str, str, bool]]()
    for fact in lookup.base.facts:
        if fact.family != "situation":
            continue
        own = fact.kind == "yes_no"
        for named in (fact,) if own else fact.values if fact.kind == "choice" else ():
            for name in (named.label, *named.other_labels):
                words = name.casefold().split()
                if words[0].endswith("ing") or (own and words[-1] in ("work", "drill")):
                    found.append((name, named.label, own))
    return tuple(found)


def _ungranted(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Nobody has ordered mourning", "no word from the Superintendent", "the bandmaster hasn't said so"."""
    named = {piece.fact for piece in found.pieces if piece.tag == "fact"}
    grants = [f for f in lookup.base.facts if f.family == "authorisation" or _grantors(f)]
    said = [fact for fact in grants if fact.id in named]
    tested = _tested(found, lookup)
    meant = said or [fact for fact in grants if fact.id in tested] or grants
    if len(meant) == 1:
        yield from _granting(meant[0], meant[0].id in named, found, lookup)


def _granting(fact: Fact, named: bool, found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """What is said of the one thing that may have been granted or ordered, with who did or did not."""
    grantors = _any_of(_who_grants(fact, lookup))
    who = rf"(?:the |our |my )?(?:{grantors}|{_NOBODY})"
    has = r"(?:['’]s|(?: (?:himself|herself|themselves|simply|just))? (?:has|have|had|did))"
    names = _any_of((fact.label, *fact.other_labels))
    about = rf"{_WHAT} (?:about|on|of) (?:the |any )?(?:{names})"
    what = rf"(?:{about}|(?: (?:any |the )?(?:{names})|{_WHAT}){_ABOUT})"
    lead = r"(?:though |although |and |but |as )?"
    not_said = rf"{who}{has}(?: ?n['’]t| not| never)?(?: (?:yet|actually))? {_SAID}{what}"
    but = rf",? (?:but|though|although|while|whereas|only)(?: that)? (?P<by>{who}){has}"
    for match in _matches(not_said + but + _OVER, found):
        if _denies(match.group()[: match.start("by") - match.start()]) and not _denies(match["by"]):
            yield match.start(), match.end(), _granted_by(fact, match["by"])
            return
    for match in _matches(rf"(?:{grantors})(?P<self>,? (?:himself|herself|in person|personally))", found):
        yield match.start("self"), match.end("self"), ""
    passive = (
        rf"(?:the )?(?:{names})(?: ha(?:s|ve| d)| was| is)(?: ?n['’]t| not| never)(?: been| yet)* {_SAID}"
    )
    silent = (
        r"(?:with )?(?:no|not a|without a|without any|nothing(?! but)|not one)"
        rf"(?: {_WORD})?(?: yet)? (?:from|of|by) {who}"
        rf"|{who}{has} {_SAID} nothing(?! but)|{who} (?:is|has been|was|kept|keeps|stays|stayed) silent"
    )
    ways = (rf"{lead}{not_said}{_OVER}", rf"{lead}(?:{silent})(?: yet| so far)?{_OVER}", rf"{passive}{_OVER}")
    for way in ways:
        for match in _matches(way, found):
            if _denies(match.group()):
                yield match.start(), match.end(), _not_granted(fact, named, match, found)
    for match in _matches(
        rf"(?:{lead}(?P<by>{who}){has} {_SAID}(?: so| it| yes| (?:the|an) order){_OVER})", found
    ):
        if not _denies(match.group()):
            yield match.start(), match.end(), _granted_by(fact, match["by"])


def _denies(said: str) -> bool:
    """Whether it is said that something was not done: one "no" alone."""
    words = said.casefold()
    nobody = re.search(rf"\b{_NOBODY}\b", words) is not None
    return nobody != (re.search(r"n['’]t\b|\b(?:not|never|no|without|nothing|silent)\b", words) is not None)


def _granted_by(fact: Fact, who: str) -> str:
    by = re.sub(r"(?i)^(?:the|our|my) ", "", who)
    return (
        f"{fact.label} granted by the {by}" if fact.family == "authorisation" else f"{fact.label} of the {by}"
    )


def _grantors(fact: Fact) -> set[str]:
    """Whose order the values of a fact are, where one of them is that there is none: "no order"."""
    label = fact.label.casefold()
    if fact.kind != "choice" or not any(value.label.casefold() == f"no {label}" for value in fact.values):
        return set()
    return {value.label.casefold().rpartition(f"{label} of the ")[2] for value in fact.values} - {""}


def _who_grants(fact: Fact, lookup: Lookup) -> Iterator[str]:
    for value in fact.values:
        authority = lookup.authorities.get(value.id)
        if fact.family == "authorisation" and authority is not None:
            yield from (authority.label, *authority.other_labels)
            yield authority.label.partition(" of ")[0].split()[-1]
    yield from _grantors(fact)


def _not_granted(fact: Fact, named: bool, match: re.Match[str], found: Understood) -> str:
    if fact.family != "authorisation":
        return f"no {fact.label}"
    names = _any_of((fact.label, *fact.other_labels))
    inside = re.search(names, match.group(), re.IGNORECASE) is not None
    rest = found.text[: match.start()] + found.text[match.end() :]
    granted = re.search(rf"\b(?:{_SAID}|grants?|orders?)\b", rest, re.IGNORECASE) is not None
    return "" if named and not inside and granted else f"{fact.label} not granted"


def _unadvised(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "No doctor's note", "my doctor told me to": of the medical facts on which the rules rest."""
    tested = _tested(found, lookup)
    medical = [f for f in lookup.base.facts if f.id in tested and "medical" in f.label.casefold().split()]
    note = (
        rf"(?:(?:a|any|the|my) )?(?:{_MEDICAL}['’]?s? {_NOTE}|{_NOTE} (?:from|of|by) (?:a|the|my) {_MEDICAL})"
    )
    if medical:
        for match in _matches(rf"(?:and |but )?{_NONE} {note}", found):
            yield match.start(), match.end(), " and ".join(f"no {fact.label}" for fact in medical)
    advice = [fact for fact in medical if fact.family == "situation"]
    told = rf"(?:because |as |since |and |but )?(?:my|the|a|our) {_MEDICAL} (?:has |have )?{_TOLD}"
    whom = r"(?: (?:me|us|him|her|them))"
    tail = rf"{whom}?(?: (?:so|it|them))|{whom} to(?= ?[,.;:!?]| ?$)|{whom}(?= to wear\b)"
    said = rf"{told}(?:{tail}|(?= (?:that )?i\b))"
    held = rf"(?:(?:i|we|he|she)(?:['’](?:ve|s)| have| has)(?: got)? |with |on |by ){note}"
    if len(medical) != 1 or not advice:
        return
    label = advice[0].label
    for match in _matches(held, found):
        yield match.start(), match.end(), f"with {label}"
    for match in _matches(said, found):
        to = Pattern(r" (?:to|that i (?:should|must|may|can)|i should)\b", re.IGNORECASE)
        led = to.match(found.text, match.end())
        yield (
            (match.start(), led.end(), f"on {label} I")
            if led
            else (match.start(), match.end(), f"with {label}")
        )


def _without_a_set(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "No set on my back", where the books know of breathing apparatus."""
    worn = [f for f in _states(lookup) if any("breathing apparatus" in n for n in (f.label, *f.other_labels))]
    if len(worn) != 1:
        return
    gear = r"(?:a |an |the |my |any )?(?:(?:ba|air|breathing) )?sets?"
    back = r"(?: (?:on )?(?:my|his|her|their|our|your|the) backs?| on)?"
    for match in _matches(
        rf"(?:{_NONE}|not (?:wearing|in|on|under)|n['’]t (?:wearing|in|on)) {gear}{back}", found
    ):
        if match.group().casefold().split()[-1] not in ("no", "without"):
            yield match.start(), match.end(), f"no {worn[0].label}"
