"""What is said once for all questions of a line: "earrings? a beard? in rope rig", "as a K5: ... ? ... ?".

Questions of a few words, and those that go on about "it", share the rig, the place, the weather or the
standing that stands before the first of them or after the last. It is taken from where it stands and holds
for each; a part that has one of its own keeps what it has.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from functools import partial

import msgspec

from kb.model.questions import Query, Reading
from kb.model.values import ValueSet
from kb.reader.stories.hearsay import with_doubts
from kb.reader.talks.statement import StatedFact
from kb.reader.words.forms import word_set
from kb.reader.words.split import opens_question
from kb.text import Pattern

Stated = Callable[[str], tuple[StatedFact, ...]]
_LEAD = Pattern(
    r"([^:?!.;]{1,80}):\s|((?:in|on|at|for|as|when|while|with|during|under|aboard|by)\b[^,:?!.;]{1,80}),",
    re.IGNORECASE,
)
_AS = Pattern(r",\s+(as an? [^,:?!.;]{1,60}),", re.IGNORECASE)
_LEADS = word_set("in on at for as when while with without during under aboard by if whenever inside outside")
_WEARING = word_set("with without over under")
_JOINS = word_set("and or also plus then & but")
_POINTING = word_set("it they them these those its their he she")
_WHEN = Pattern(r"^\s*(?:when|whenever|if|while)\s+", re.IGNORECASE)
_END = Pattern(r"[?!]\s+(?=\S)")
_TELLS = Pattern(r"(?:i|we|he|she|they|it|there)(?:['\u2019]|\s(?:am|is|are|was|have|has)\b)", re.IGNORECASE)
_SENTENCE = ".?!"


def shared(parts: Sequence[str], stated: Stated) -> tuple[tuple[str, ...], tuple[StatedFact, ...]]:
    """The questions of a line without what is said once after the last of them, and the facts for all.

    `stated` gives the facts of a few words, none where they say anything else.
    """
    parts = with_doubts(parts)
    asked, known = list(parts), dict(_leading(parts, stated))
    tail, setting = "", _alone(asked, stated)
    if setting:
        asked.pop()
    else:
        ends = list(_END.finditer(asked[-1]))
        tail = asked[-1][ends[-1].end() :] if ends else ""
        setting = _worn_apart(tail, stated) if tail else ()
        asked[-1] = asked[-1][: ends[-1].end()].strip() if setting else asked[-1]
    if setting:
        pass
    elif (
        _TELLS.match(asked[-1]) is None
        and not tail
        and all(map(partial(_depends, parts), range(1, len(parts))))
    ):
        cut, setting = _cut(asked[-1], stated)
        own = any(_cut(_unled(part), stated)[1] for part in asked[:-1])
        setting = () if own else setting
        asked[-1] = cut if setting else asked[-1]
    known.update(setting)
    return tuple(asked), tuple(known.items())


def gone_on_from(previous: Reading | None, once: Mapping[str, ValueSet]) -> Reading | None:
    """What the questions of a line go on from, in the case that is said once for all of them."""
    if previous is None or not once:
        return previous
    frame = None if previous.frame is None else _in_case(previous.frame, once)
    query = None if previous.query is None else _in_case(previous.query, once)
    return msgspec.structs.replace(previous, query=query, frame=frame)


def _in_case(query: Query, once: Mapping[str, ValueSet]) -> Query:
    facts = tuple((fact, once.get(fact, values)) for fact, values in query.case.facts)
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))


def _alone(parts: Sequence[str], stated: Stated) -> tuple[StatedFact, ...]:
    """ "Scarf? Neck cloth? When it's 5 degrees.": the facts of a last part that is no question of its own."""
    last = parts[-1]
    led = last.casefold().split(None, 1)[0] in _LEADS
    asks = last.endswith("?") and (len(parts) < _SEVERAL or any(map(opens_question, parts[1:])))
    return _setting(last.rstrip(" ?"), stated) if led and not asks and len(parts) > 1 else ()


_SEVERAL = 3


def _leading(parts: Sequence[str], stated: Stated) -> tuple[StatedFact, ...]:
    """ "In rope rig: earrings? a beard?": what stands before the first question, for those in few words."""
    if any(opens_question(part) for part in parts[1:]):
        return ()
    found, inside = _LEAD.match(parts[0]), _AS.search(parts[0])
    lead = (found.group(1) or found.group(2)) if found is not None else inside.group(1) if inside else ""
    return _worn_apart(lead, stated) if lead else ()


def _setting(text: str, stated: Stated) -> tuple[StatedFact, ...]:
    """The facts of words that a preposition or the like leads; those of a thing only where it is worn."""
    words = text.casefold().split(None, 1)
    return _worn_apart(text, stated) if words and words[0] in _LEADS else ()


def _worn_apart(text: str, stated: Stated) -> tuple[StatedFact, ...]:
    facts = stated(_WHEN.sub("", text))
    led = text.casefold().split(None, 1)[0] in _WEARING if text.strip() else False
    return facts if led or all(not fact.startswith("worn:") for fact, _ in facts) else ()


def _depends(parts: Sequence[str], place: int) -> bool:
    """Whether a question has no verb of its own, or is joined to the one before and goes on about "it", or
    in the words with which the first began."""
    part = parts[place]
    if not opens_question(part):
        return True
    if parts[place - 1][-1:] in _SENTENCE:
        return False
    words = [word.strip(",.?!;:") for word in part.casefold().split()]
    alike = words[:_LIKE] == [word.strip(",") for word in _unled(parts[0]).casefold().split()][:_LIKE]
    return alike or not set(words).isdisjoint(_POINTING)


_LIKE = 3  # "may I carry ... and may I carry ..."


def _unled(part: str) -> str:
    """A question without what leads to it."""
    found = _LEAD.match(part)
    return part[found.end() :] if found is not None else part


def _cut(part: str, stated: Stated) -> tuple[str, tuple[StatedFact, ...]]:
    """A question without the setting that ends it, and the facts of that."""
    words = part.rstrip(" ?!.").split()
    for place in range(1, len(words)):
        head = [word.casefold().strip(",") for word in words[:place]]
        if words[place].casefold() not in _LEADS or set(head) <= _JOINS:
            continue
        facts = _setting(" ".join(words[place:]), stated)
        if facts and all(not fact.startswith("worn:") for fact, _ in facts):
            return " ".join(words[:place]).rstrip(" ,") + "?", facts
    return part, ()
