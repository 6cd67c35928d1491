"""What decides whether a rule applies, and circles in it: such a rule would hang on itself."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from kb.model.records import Rule
from kb.sources.cycles import find_cycles
from kb.sources.report import Report
from kb.sources.vocabulary import Vocabulary


def check_applying(rules: Sequence[Rule], vocabulary: Vocabulary, report: Report) -> None:
    """Report circles through disabling and repairs together, of rules that are in force on one day.

    A rule hangs on those that disable it, and on those that decide whether the duty it repairs stands.
    Circles of one relation alone are reported as such, so that these are looked for where there are none.
    """
    named = {rule.id: rule for rule in rules}
    hangs: dict[str, list[str]] = {rule.id: [] for rule in rules}
    for rule in rules:
        for target in rule.disables:
            hangs[target].append(rule.id)
        if rule.repairs in named:
            hangs[rule.id] += _deciding(named[rule.repairs], named, vocabulary)
    for circle in find_cycles(hangs):
        if _together([named[name] for name in circle]):
            steps = " hangs on ".join((*circle, circle[0]))
            message = f"Whether these rules apply runs in a circle: {steps}."
            remedy = "Remove one of the repairs, or say the case in a condition."
            report.error(named[circle[0]].at, "circular-applying", message, remedy)


def _deciding(duty: Rule, named: dict[str, Rule], vocabulary: Vocabulary) -> list[str]:
    """The duty, and the rules on its item and aspect but those that rest on its being broken."""
    return [
        other.id
        for other in named.values()
        if other.aspect == duty.aspect
        and _covers(other, duty.scope.items[0], vocabulary)
        and not _rests_on(other, duty.id, named)
    ]


def _covers(rule: Rule, item: str, vocabulary: Vocabulary) -> bool:
    scope = rule.scope
    if not any(item in (vocabulary.narrower(i) if scope.narrower else (i,)) for i in scope.items):
        return False
    kinds = vocabulary.narrower(item)
    return not any(item in vocabulary.narrower(i) or i in kinds for i in scope.excluding)


def _rests_on(rule: Rule, duty: str, named: dict[str, Rule]) -> bool:
    seen = set()
    while rule.repairs in named and rule.id not in seen:
        if rule.repairs == duty:
            return True
        seen.add(rule.id)
        rule = named[rule.repairs]
    return False


def _together(rules: Sequence[Rule]) -> bool:
    """Whether there is a day on which all the rules are in force."""
    start = max(rule.valid_from for rule in rules)
    return all(start < (rule.valid_until or datetime.date.max) for rule in rules)
