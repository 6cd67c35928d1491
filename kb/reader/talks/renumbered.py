"""A number without its unit, which is that of the number before: "and 97?", after "at 82 decibels"."""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.reader.talks.further import LEAD
from kb.reader.talks.talked import Talk
from kb.text import Pattern

_WORDS = (
    "two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|sixty|"
    "ninety"
)
_BARE = Pattern(
    rf"(?i)\W*{LEAD}(?P<led>(?:(?:what|how) (?:about|if)|what|even if|even|if|say|suppose|at|for|after|with|"
    r"when|once) )?"
    r"(?P<is>(?:(?:it|that|this|there)(?:['\u2019]s| is| was| were| gets to| goes (?:up|down) to| drops to| "
    r"rises to)|"
    r"(?:i|we|he|she|they) (?:only |just )?(?:stay|take|wait|work|need|stop|have|do)|"
    r"(?:i|we|he|she|they)(?:['\u2019](?:m|re|s)| am| are| is)(?: in there| there| up there)?(?: for)?) )?"
    rf"(?P<small>(?:only|just|exactly|nearly|more like|about) )*(?P<number>(?:minus |-)?\d{{1,4}}(?:\.\d+)?|"
    rf"{_WORDS})"
    r"(?: (?:then|instead|now))?\W*"
)
_MEASURED = Pattern(
    rf"(?i)(?<![\w.])(?:\d+(?:\.\d+)?|{_WORDS})(?:[ -](?P<unit>[a-z]+(?:/[a-z]+)?)| ?(?P<sign>°C?|%))"
)
_MOST = 3


def with_the_unit(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """The question before with the number said in place of the one told; None where that is not plain.

    A number in words alone may count things: "and two?"
    """
    found, before = _BARE.fullmatch(text), previous.query
    if (
        found is None
        or before is None
        or not (found["number"][-1].isdigit() or found["is"] or found["small"])
    ):
        return None
    for unit in list(dict.fromkeys((*_units(previous.question), *_units(previous.text))))[:_MOST]:
        again = talk.read(f"and with {found['number']} {unit}?", previous)
        again = again if again.query is not None else talk.read(f"and at {found['number']} {unit}?", previous)
        if again.query is not None and _is_told_anew(again.query, before, talk.lookup):
            return talk.made(text, again.query)
    return None


def _units(text: str) -> Iterator[str]:
    for found in _MEASURED.finditer(text):
        yield found["unit"] or found["sign"]


def _is_told_anew(query: Query, before: Query, lookup: Lookup) -> bool:
    """Whether one circumstance that was told before, of which there is a measure, is all that has changed."""
    old, new = dict(before.case.facts), dict(query.case.facts)
    changed = [fact for fact in {*old, *new} if old.get(fact) != new.get(fact)]
    same = (query.kind, query.items, query.aspect) == (before.kind, before.items, before.aspect)
    if len(changed) != 1 or changed[0] not in old or not same:
        return False
    record = lookup.facts[changed[0]]
    return record.kind in ("quantity", "scale") or any(
        sign.isdigit() for value in record.values for sign in value.label
    )
