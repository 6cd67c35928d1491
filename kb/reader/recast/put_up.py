"""Putting a thing up or down, where that is having it on or off: "may the badge stay up", "an umbrella up".

So, too, with a thing that is off when another is asked of: "coat off. May I wear the scarf?".

What of insignia is up is worn, and what is carried is up when it is in use. Nothing is read so where rules
speak of raising or lowering the thing itself.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import partial

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import NUMBER_WORDS, word_set

_CARRYING = word_set("carry carrying hold holding")
_MOVED = word_set("up down")
_LEADS = (
    r"(?:(?:the|my|our|your|his|her|their|an?|any|all|both)(?: of (?:the|my|our|your|his|her|their))? )?"
    rf"(?:(?:{'|'.join(NUMBER_WORDS)}|\d{{1,2}}) )?"
)
_WHO = r"(?:i|we|you|he|she|they|one|anyone|somebody|people)"
_ON = r"(?:put|putting|have|having|keep|keeping|leave|leaving|wear|wearing|stick|sticking|get|getting)"
_STAYING = r"(?:stay|go|remain|come|be|be left|be kept|be put|be worn)"
_OFF = r"(?:take|taking|pull|pulling|bring|bringing)"
_NONE_ON = (
    r"(?:^|(?<=[,.;:] ))(?:(?:and|but|so|with) )?"
    r"(?:(?:i|we)(?:['\u2019]ve| have)?(?: got| took| taken)? )?(?:(?:the|my|our|his|her) )?%s"
    r"(?:['\u2019]s| is| are)? off(?=[.,;:] (?:so |and |then )?(?:can|could|may|must|should|do|does|am|is|"
    r"are)\b (?!(?:i|we|it|they|that|this)\W*$|(?:it|that|this|they) )\w+ \w)"
)
"""What is off, where what follows asks of something else than whether that may be."""
_INSTEAD = (
    r"\b(carry|carrying|hold|holding|bring|bringing) (?P<it>%s%s)(?P<rest>[^.;?!]*?),? "
    r"(?:rather than|instead of|and not|without) (?:having to )?(?:wear|wearing|having|have|putting|put)"
    r"(?: (?:it|them|one))?(?: on)?\b"
)


def put_up(found: Understood, lookup: Lookup) -> str | None:
    """The text with such a thing as worn, taken off or carried; None where it says nothing of the kind."""
    for pattern, put in _ways(found, lookup):
        changed = re.sub(pattern, put, found.text, count=1, flags=re.IGNORECASE)
        if changed != found.text:
            return changed
    return None


_Put = str | Callable[[re.Match[str]], str]


def _ways(found: Understood, lookup: Lookup) -> Iterator[tuple[str, _Put]]:
    moved = not _MOVED.isdisjoint(token.low for token in found.tokens)
    tokens = found.tokens
    several = len({entry.id for p in found.pieces if p.tag in ("item", "items") for entry in p.entries}) > 1
    for piece in found.pieces:
        words = [token.low for token in tokens[piece.first : piece.last]]
        if piece.tag == "fact" and words[0] in _CARRYING and len(words) > 1:
            named = re.escape(found.text[tokens[piece.first + 1].start : tokens[piece.last - 1].end])
            yield _INSTEAD % ("", named), r"go without \g<it>\g<rest>, carrying \g<it>"
        if piece.tag not in ("item", "items"):
            continue
        name = re.escape(found.text[tokens[piece.first].start : tokens[piece.last - 1].end])
        if several and piece.tag == "item":
            yield _NONE_ON % name, f"no {found.text[tokens[piece.first].start : tokens[piece.last - 1].end]}"
        if moved and _are(piece, "insignia", lookup) and not _is_moved(piece, lookup):
            yield from _of_insignia(name)
        elif moved and _are(piece, "carried", lookup) and not _is_moved(piece, lookup):
            it = rf"(?P<it>{_LEADS}{name})"
            yield (
                rf"\b{_ON} (?:up {it}|{it.replace('?P<it>', '?P<that>')} up)\b",
                partial(_either, _raised(piece, found, lookup)),
            )
        else:
            yield _INSTEAD % (_LEADS, name), r"go without \g<it>\g<rest>"


def _either(act: str, match: re.Match[str]) -> str:
    return f"{act} {match['it'] or match['that']}"


def _raised(piece: Piece, found: Understood, lookup: Lookup) -> str:
    """ "Open" an umbrella, where rules on putting it up turn on what is told, else that it is carried."""
    told = {other.fact for other in found.pieces if other.tag == "fact"}
    for rule in lookup.base.rules:
        act = lookup.aspects[rule.aspect]
        names = " ".join((act.label, *act.other_labels)).casefold().split()
        if act.verb is None or "up" not in names or not told & {t.fact for t in tests(rule.condition)}:
            continue
        if any(entry.id in rule.scope.items for entry in piece.entries):
            return act.verb
    return "carry"


def _of_insignia(name: str) -> Iterator[tuple[str, str]]:
    it = rf"(?P<it>{_LEADS}{name})"
    yield rf"\b{_ON} {it} (?:back )?up\b", r"wear \g<it>"
    yield rf"\b{_ON} up {it}", r"wear \g<it>"
    yield rf"\b(?:do|does|will) {it} (?:still )?{_STAYING} up\b", r"must \g<it> be worn"
    yield rf"\b(?:do|does|will) {it} (?:have to )?(?:come|go|get taken) down\b", r"must I take off \g<it>"
    yield rf"\b{it} (?:still )?{_STAYING} up\b", r"\g<it> be worn"
    yield rf"\b{it} (?:have to |has to )?(?:come|go|be taken|get taken) down\b", r"\g<it> be taken off"
    yield rf"\b{_OFF} {it} down\b", r"take off \g<it>"
    yield rf"\b{_OFF} down {it}", r"take off \g<it>"


def _are(piece: Piece, kind: str, lookup: Lookup) -> bool:
    return bool(piece.entries) and all(kind in lookup.broader(entry.id) for entry in piece.entries)


def _is_moved(piece: Piece, lookup: Lookup) -> bool:
    """Whether rules speak of raising or lowering it."""
    named = {rule.aspect for e in piece.entries for rule in lookup.rules_on((e.id,))}
    words = " ".join(
        f"{lookup.aspects[aspect].label} {lookup.aspects[aspect].done or ''}" for aspect in named
    )
    return not _MOVED.isdisjoint(words.casefold().split())
