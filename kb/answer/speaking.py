"""The clauses that speak of what was asked, for a question that is not answered: to be read, not a verdict.

Each thing that was named and each other word of the question counts by how few clauses speak of it (inverse
document frequency; Sparck Jones, 1972): a thing by the rules on it, a word as it is or in another form.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterator, Mapping
from functools import lru_cache

from kb.answer.citing import citation
from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Citation, Reading
from kb.model.records import Clause, is_in_force

_MOST = 3
_NEAR = 0.6
"""Of the score of the best, below which a clause is not shown."""
_THING, _NAMED, _WIDER, _FORM = 1.5, 1.2, 0.5, 0.8
_WITH_MORE = 2.2
_SAME = 5
"""As many letters in common at the start make a word a form of another."""


def clauses_that_speak(
    reading: Reading, as_of: datetime.date, lookup: Lookup, beside: bool = False
) -> tuple[Citation, ...]:
    """At most three clauses in force on a day, the nearest first, each with a thing or two words of it.

    Those `beside` an answer have the thing and another word of it.
    """
    ranked = ranked_clauses(reading, as_of, lookup, _WITH_MORE if beside else _NAMED)
    near = [one for one, score in ranked[:_MOST] if score >= ranked[0][1] * _NEAR]
    return tuple(citation(lookup, clause, ()) for clause in near)


def ranked_clauses(
    reading: Reading, as_of: datetime.date, lookup: Lookup, least: float = _NAMED
) -> tuple[tuple[str, float], ...]:
    """The clauses in force on a day that have a thing or two words of a question, the nearest first."""
    clauses = {clause.id: clause for clause in lookup.base.clauses if is_in_force(clause, as_of)}
    scores, sure = dict.fromkeys(clauses, 0.0), dict.fromkeys(clauses, 0.0)
    for spoken in _units(reading, clauses, lookup):
        weight = math.log((len(clauses) + 1) / (len(spoken) or 1))
        for clause, level in spoken.items():
            scores[clause] += level * weight
            sure[clause] += level
    ranked = sorted((one for one in scores if sure[one] >= least), key=lambda one: -scores[one])
    return tuple((one, scores[one]) for one in ranked)


def _units(reading: Reading, clauses: Mapping[str, Clause], lookup: Lookup) -> Iterator[Mapping[str, float]]:
    """For each thing and word of a question the clauses that speak of it, and how surely each does."""
    text = reading.question
    for span in sorted(reading.spans, key=lambda one: -one.start):
        if span.role == "item" and span.target in lookup.items:
            yield _of_thing(span.target, clauses, lookup)
            text = f"{text[: span.start]} {text[span.end :]}"
    forms = {one: _forms_of(clause) for one, clause in clauses.items()}
    for word in dict.fromkeys(analyse(text)):
        stem = word[:_SAME] if len(word) > _SAME else ""
        spoken = {
            one: 1.0 if word in words else _FORM
            for one, (words, stems) in forms.items()
            if word in words or stem in stems
        }
        if spoken:
            yield spoken


def _of_thing(item: str, clauses: Mapping[str, Clause], lookup: Lookup) -> Mapping[str, float]:
    """The clauses with a rule on a thing, or on what it is a kind of, or that name it."""
    spoken: dict[str, float] = {}
    wider = frozenset(lookup.broader(item))
    for rule in lookup.rules_on(wider):
        if rule.clause in clauses:
            level = _THING if item in rule.scope.items else _WIDER
            spoken[rule.clause] = max(level, spoken.get(rule.clause, 0))
    names = [analyse(name) for name in (lookup.items[item].label, *lookup.items[item].other_labels)]
    for one, clause in clauses.items():
        if any(name and set(name) <= set(lemmas_of(clause)) for name in names):
            spoken[one] = max(_NAMED, spoken.get(one, 0))
    return spoken


@lru_cache(maxsize=4096)
def lemmas_of(clause: Clause) -> tuple[str, ...]:
    """The words of a clause, its heading and its part, as the keyword index has them."""
    return analyse(f"{clause.heading or ''}. {clause.part or ''}. {clause.text}")


@lru_cache(maxsize=4096)
def _forms_of(clause: Clause) -> tuple[frozenset[str], frozenset[str]]:
    """The words of a clause, and how they begin: what `lemma_level` looks for, all at once."""
    words = frozenset(lemmas_of(clause))
    return words, frozenset(word[:_SAME] for word in words)


def lemma_level(word: str, words: tuple[str, ...]) -> float:
    """How surely a word is among others: 1 as it is, less in another form, else 0."""
    if word in words:
        return 1.0
    stem = word[:_SAME]
    return _FORM if len(word) > _SAME and any(other[:_SAME] == stem for other in words) else 0.0
