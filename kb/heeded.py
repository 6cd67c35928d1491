"""What was told and left out of a reading, where the answer may turn on it: it is asked about.

"The mincer's running right next to me. Neckerchief?" is yes unless machinery is running. What is told shares
a word of weight with what the answer turns on, so that a yes or a no first would be said over it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

import msgspec

from kb.answer.common import ask_for
from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Reading
from kb.model.values import NO, YES, Choices, ValueSet, intersect, is_empty
from kb.reader.recast.telling import LIGHT
from kb.reader.words.forms import word_set
from kb.reader.words.machines import MACHINERY, MACHINES
from kb.reader.words.tokens import tokenize

Facts = Mapping[str, ValueSet]
Tell = Callable[[Reading], Answer]
_LEADS = ("Yes", "No")
_DENYING = word_set("no not n't nobody none nothing never neither nor without")


def unheeded(answer: Answer, tell: Tell, lookup: Lookup) -> Reading | None:
    """The reading of an answer as a question back, if what was left out may turn yes or no."""
    reading, query = answer.reading, answer.reading.query
    if query is None or query.kind not in ("may", "must") or answer.verdict != "conditional":
        return None
    lead = _lead(answer)
    if not lead:
        return None
    known = dict(query.case.facts)
    turning = [
        (fact, values)
        for fact, values in _spoken_of(answer, lookup)
        if fact not in known or not is_empty(intersect(known[fact], values))
    ]
    for fact, values in (*turning, *_passed_over(answer, known, lookup)):
        facts = tuple((known | {fact: values}).items())
        so = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
        if _lead(tell(msgspec.structs.replace(reading, query=so))) != lead:
            rows = [seen for case in answer.cases for name, seen in case.when if name == fact]
            ask = ask_for(lookup, fact, None if fact in known and not rows else known.get(fact), rows)
            return msgspec.structs.replace(reading, query=None, ask=ask)
    return None


def _lead(answer: Answer) -> str:
    return next((lead for lead in _LEADS if answer.headline.startswith(lead)), "")


def _spoken_of(answer: Answer, lookup: Lookup) -> Iterator[tuple[str, ValueSet]]:
    """The facts that the answer turns on, each with what may have been told of it, or denied."""
    put = [span.text for span in answer.reading.spans if span.role == "fact" and span.how == "everyday"]
    said = [
        (set(analyse(text)) - LIGHT, not _DENYING.isdisjoint(token.low for token in tokenize(text)))
        for text in (*answer.reading.unused, *put)
    ]
    for fact in dict.fromkeys(name for case in answer.cases for name, _ in case.when):
        record = lookup.facts[fact]
        if record.family not in ("situation", "term"):
            continue
        for told, denied in said:
            if record.kind == "yes_no" and _shares((record.label, *record.other_labels), told):
                yield fact, NO if denied else YES
            for value in record.values if record.kind == "choice" else ():
                if _shares((value.label, *value.other_labels), told):
                    yield fact, Choices(members=frozenset((value.id,)), complement=denied)


def _passed_over(answer: Answer, known: Facts, lookup: Lookup) -> Iterator[tuple[str, ValueSet]]:
    """Of the facts that are settled, the other values by a name of which every word was left out.

    "Giving a passenger her change", read as speaking to passengers: it was for the less.
    """
    told = {lemma for text in answer.reading.unused for lemma in analyse(text)}
    for fact in known if told else ():
        record = lookup.facts[fact]
        if record.kind != "choice" or record.family != "situation":
            continue
        whole = [value for value in record.values if _is_whole((value.label, *value.other_labels), told)]
        others = [Choices(members=frozenset((value.id,))) for value in whole]
        if all(is_empty(intersect(known[fact], values)) for values in others):
            yield from ((fact, values) for values in others)


def _is_whole(names: tuple[str, ...], told: set[str]) -> bool:
    """Whether all words of weight of a name were told."""
    words = (frozenset(analyse(name)) for name in names)
    return any(len(name) > 1 and name <= told for name in words)


def _shares(names: tuple[str, ...], told: set[str]) -> bool:
    """Whether a word of weight of a name was told, or a machine where the name is of machinery."""
    words = {lemma for name in names for lemma in analyse(name)}
    return not told.isdisjoint(words) or not (MACHINERY.isdisjoint(words) or MACHINES.isdisjoint(told))
