"""A line that tells what the question before rests on, which by itself is no value of what was asked back.

"I'm in the restaurant and it's 15 mm", asked of which grade: the question is put anew with it in front.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from shell.commands import looks_like_question
from shell.words import Facts

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase, Reading

_LONGEST = 100
_TELLS = re.compile(
    r"(?:(?:well|no|yes|and|but|so|oh|ah),? )*(?:i|we|my|our|it|they|the|there)\b",
    re.IGNORECASE,
)
_HEDGED = re.compile(
    r"\b(?:if|unless|or|maybe|perhaps|sometimes|usually|probably|suppose|whether|until|except|why|says?|said|told|"
    r"think|heard|he|she|his|her|their|mate|friend|another|other|others|not|no|never|without)\b|n['\u2019]t\b",
    re.IGNORECASE,
)
_IT_IS = re.compile(
    r"\b(?:it|they)(['\u2019]s| is|['\u2019]re| are)(?= (?:only |about |just |all |over |under )*\d)",
    re.IGNORECASE,
)
_STATE = re.compile(
    r"\b(?:the|an?|some) (\w+)(?:,? and |, )(?:it|they)(?:['\u2019]s| is|['\u2019]re| are) "
    r"(running|moving|going)\b",
    re.IGNORECASE,
)
_KEPT = re.compile(
    r",? (?:and|but) (?=(?:very |quite |really |well |nicely |kept |all )+(?:\w+)$)", re.IGNORECASE
)
_FURTHER = re.compile(r",? and (?=(?:it|they|i|we|there)\b)", re.IGNORECASE)
_KINDS = frozenset({"may", "must", "how", "when", "where"})


def told_again(text: str, answer: Answer, known: Facts, base: KnowledgeBase) -> str | None:
    """The question before with what a line tells in front of it, where it is answered and by that."""
    query, said = answer.reading.query, text.strip(" .!")
    if query is None or query.clause is not None or len(query.items) != 1 or query.kind not in _KINDS:
        return None
    if len(said) > _LONGEST or looks_like_question(said) or not _TELLS.match(said) or _HEDGED.search(said):
        return None
    for put in _ways(said, base.lookup.items[query.items[0]].label):
        line = f"{put}. {answer.reading.text}"
        found = base.ask(line, facts=known, as_of=query.case.as_of)
        if len(found) == 1 and _is_told(found[0], answer.reading, base):
            return line
    return None


def _ways(said: str, label: str) -> tuple[str, ...]:
    """A line with the thing that was asked of in place of "it", in one sentence and in several."""
    said = _KEPT.sub(". It's ", said)  # "and very tidy"
    of_it = _IT_IS.sub(lambda found: f"my {label}{found.group(1)}", said)
    stated = _STATE.sub(r"the \2 \1", said)
    parted, as_said = _FURTHER.sub(". ", of_it), _FURTHER.sub(". ", said)
    return tuple(dict.fromkeys((stated, parted, of_it, as_said, said)))


def _is_told(found: Answer, before: Reading, base: KnowledgeBase) -> bool:
    """Whether an answer is of the same question, with more told: all that was known is in it still."""
    query, asked = found.reading.query, before.query
    if found.outcome != "answer" or query is None or asked is None or found.verdict is None:
        return False
    if found.verdict == "conditional" and found.reading.unused:
        return False  # it may rest on what was told and not taken
    if query.items != asked.items or not dict(asked.case.facts).items() <= dict(query.case.facts).items():
        return False
    measured = query.value is not None and query.aspect != asked.aspect
    same = query.kind == asked.kind and query.aspect == asked.aspect and query.polarity == asked.polarity
    more = base.bears(before, tuple(set(query.case.facts) - set(asked.case.facts)))
    return measured or (same and more)
