"""Why: the clause that tells what a thing is for, where another one carries that it must be worn."""

from __future__ import annotations

import re
from collections.abc import Iterator

from kb.answer.citing import citation
from kb.answer.common import replaced
from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Citation
from kb.model.records import Clause, is_in_force

_PURPOSE = re.compile(
    r"\b(?:protect(?:s|ion|ing)?|because|so that|in order to|against|to be seen|to keep|to save|prevents?"
    r"|guards? (?:against|from|the \w+ (?:against|from)))\b",
    re.IGNORECASE,
)
_MUST = ("required", "conditional")


def with_purpose(lookup: Lookup, answer: Answer) -> Answer:
    """The answer to "why" with the one clause that tells what a thing is for, if no clause cited does."""
    query = answer.reading.query
    if query is None or query.kind != "why" or query.polarity == "not" or not query.items:
        return answer
    if answer.verdict not in _MUST or any(
        _tells(one.text, query.items[0], lookup) for one in answer.citations
    ):
        return answer
    told = list(_telling(query.items[0], answer, lookup))
    return replaced(answer, citations=(*answer.citations, *told)) if len(told) == 1 else answer


def _telling(item: str, answer: Answer, lookup: Lookup) -> Iterator[Citation]:
    """The clauses in force that have the thing worn by name and tell a purpose of it."""
    day = answer.reading.query.case.as_of if answer.reading.query is not None else None
    cited = {one.clause for one in answer.citations}
    for clause in lookup.base.clauses:
        rules = tuple(
            rule.id
            for rule in lookup.rules_of(clause.id)
            if rule.modality == "must" and rule.aspect == "wear" and item in rule.scope.items
        )
        current = day is not None and is_in_force(clause, day)
        told = (rules and _tells(clause.text, item, lookup)) or _is_purpose_of(clause, item, lookup)
        if told and current and clause.id not in cited:
            yield citation(lookup, clause.id, rules)


def _is_purpose_of(clause: Clause, item: str, lookup: Lookup) -> bool:
    """Whether a clause that is nothing but a purpose has the noun of the thing, and a word before that."""
    if clause.kind != "purpose":
        return False
    said, record = set(analyse(clause.text)), lookup.items[item]
    names = [words for name in (record.label, *record.other_labels) if (words := analyse(name))]
    return any(words[-1] in said and (len(words) == 1 or not said.isdisjoint(words[:-1])) for words in names)


def _tells(text: str, item: str, lookup: Lookup) -> bool:
    """Whether a clause tells a purpose in a sentence with the noun of the thing, or in one that begins with
    "it" or "they" right after that: "the boots protect the feet"."""
    record = lookup.items[item]
    nouns = {analyse(name)[-1] for name in (record.label, *record.other_labels) if analyse(name)}
    before = False
    for sentence in re.split(r"(?<=[.;]) ", text):
        pointing = before and sentence.lower().startswith(("it ", "they "))
        named = pointing or not nouns.isdisjoint(analyse(sentence))
        if named and _PURPOSE.search(sentence):
            return True
        before = named
    return False
