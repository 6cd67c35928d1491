"""Damage in everyday words, as what the books have of it: "a rip in my jacket", "a knock on my helmet".

However small it is said to be, it is damage: the books that name it know no size of it. Only names of
circumstances are put, and nothing is where the text denies it. The words are from memory: common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

Edit = tuple[int, int, str]
_NOUNS = {
    "torn": "rip|tear|split|slit",
    "ripped": "rip|tear|split|slit",
    "cracked": "crack|hairline crack",
    "holed": "hole",
    "damaged": "dent|crack|rip|tear|hole|split|gash",
    "frayed": "loose threads?",
}
"""What a thing has, by what it then is."""
_SIZE = r"(?:(?:small|tiny|little|wee|slight|minor|bit of a|big|huge|nasty|great big|long|short|inch) )*"
_HEDGE = (
    r"(?:,? ?(?:but |though |and )?(?:it['’]s |it is )?(?:only|just|nothing but|no more than)"
    r" (?:a |an )?(?:very )?(?:small|tiny|little|wee|slight|minor)(?: (?:one|bit|thing))?)?"
)
_THING = (
    r"(?P<it>(?:my|the|his|her|our|your|this|that)"
    r"(?: (?!(?:nearly|almost|never|not|has|had|just|only)\b)[a-z][\w-]*){1,4}?)"
)
_KNOCK = (
    r"(?:(?:hard|good|heavy|nasty|big|bit of a|slight|little|small) )*"
    r"(?:knock|bang|bash|bump|hit|whack|thump|clout|blow|wallop)"
)
_FINE = (
    r"(?:,? (?:but|and|though) (?:it )?(?:still )?(?:looks?|seems?) (?:quite |perfectly )?"
    r"(?:fine|ok|okay|all right|alright|undamaged|sound|good)"
    r"|[.,;] (?:there['’]s )?not a (?:mark|scratch|dent) on it(?: that i can see)?)?"
)
_FELL = r"(?:came|fell|dropped|landed|crashed)(?: (?:down|straight|right))*"
_NOT = Pattern(r"(?i)\b(?:not|n['’]t|no|never|nothing|without|if|unless|nearly|almost)\b[^.?!;,]*$")


def damage(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each such stretch of a text."""
    names = {
        name.casefold()
        for fact in lookup.base.facts
        if fact.family in ("situation", "term")
        for one in (fact, *fact.values)
        for name in (one.label, *one.other_labels)
    }
    said = {word for name in names for word in name.split()}
    for is_so, nouns in _NOUNS.items():
        if is_so in said:
            a_rip = rf"an? {_SIZE}(?:{nouns})"
            yield from _put(found, rf"(?:there(?:['’]s| is) )?{a_rip} in {_THING}{_HEDGE}", f" is {is_so}")
            yield from _put(
                found, rf"{_THING}(?:['’]s got| has(?: got)?) {a_rip}(?: in it)?{_HEDGE}", f" is {is_so}"
            )
    if "taken a blow" in names:
        yield from _put(found, rf"{_THING} (?:took|has taken|got|had) an? {_KNOCK}{_FINE}", ", taken a blow")
        yield from _put(found, rf"an? [a-z][\w-]* {_FELL} on(?:to)? {_THING}{_FINE}", ", taken a blow")


@cache
def _compiled(way: str) -> Pattern:
    return Pattern(rf"(?i)(?<![\w'’-])(?:{way})(?=\s*(?:[.,;:?!–—-]|$|(?:and|can|may|so|do)\b))")


def _put(found: Understood, way: str, is_so: str) -> Iterator[Edit]:
    for match in _compiled(way).finditer(found.text):
        if _NOT.search(found.text[: match.start()]) is None:
            yield match.start(), match.end(), f"{match['it']}{is_so}"
