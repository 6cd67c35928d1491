"""The clause whose words still say it, where the one that stands in its place gives other words alone.

An amendment replaces whole clauses, though its text often tells no more than what is new. Who is answered by
a rule that was so before is shown the former clause beside.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kb.answer.citing import citation
from kb.answer.common import replaced
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Citation
from kb.model.records import Rule
from kb.wording import clause_reference, sentence


def with_former(lookup: Lookup, answer: Answer) -> Answer:
    """The answer with each replaced clause that had a cited rule as it is now, and a note of which it was."""
    found, notes = list(answer.citations), list[str]()
    for cited in answer.citations:
        for former in _said_so(lookup, cited):
            if all(one.clause != former for one in found):
                found.append(citation(lookup, former, ()))
                now, before = clause_reference(lookup, cited.clause), clause_reference(lookup, former)
                notes.append(sentence(f"{now} stands in place of {before}, which said the same of this"))
    if not notes:
        return answer
    return replaced(answer, citations=tuple(found), notes=(*answer.notes, *notes))


def _said_so(lookup: Lookup, cited: Citation) -> Iterator[str]:
    """The clauses replaced by a cited one, or by one of these, that had one of its cited rules."""
    replaced_ones = list(lookup.clauses[cited.clause].replaces)
    for former in replaced_ones:
        own = [rule for rule in lookup.base.rules if rule.clause == former]
        if cited.rules and all(any(_alike(lookup.rules[rule], one) for one in own) for rule in cited.rules):
            yield former
        replaced_ones += [one for one in lookup.clauses[former].replaces if one not in replaced_ones]


_SAID: Sequence[str] = ("modality", "scope", "aspect", "value", "condition")


def _alike(one: Rule, other: Rule) -> bool:
    return all(getattr(one, field) == getattr(other, field) for field in _SAID)
