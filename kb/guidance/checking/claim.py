"""What a sentence of guidance states, in the terms of the rules of the books."""

from __future__ import annotations

import datetime

import msgspec

from kb.model.conditions import ALWAYS, Condition
from kb.model.records import Measure, Modality, Rule, RuleValue, Scope


class Claim(msgspec.Struct, frozen=True, kw_only=True):
    """What a sentence says: a rule without a clause; `measure` as written, `since` and `until` its time.

    `rules` are the rules of the books that are said in exactly these words. `sure` is False where the words
    leave open whether a duty is meant; `weak` says that they only advise ("should").
    """

    modality: Modality
    scope: Scope
    aspect: str
    value: RuleValue
    condition: Condition = ALWAYS
    measure: Measure | None = None
    since: datetime.date | None = None
    until: datetime.date | None = None
    residual: bool = False
    sure: bool = True
    weak: bool = False
    rules: tuple[str, ...] = ()

    @classmethod
    def of(cls, rule: Rule) -> Claim:
        """What a rule says, as a claim."""
        return cls(
            modality=rule.modality,
            scope=rule.scope,
            aspect=rule.aspect,
            value=rule.value,
            condition=rule.condition,
            residual=rule.residual,
        )

    def as_rule(self, like: Rule) -> Rule:
        """The claim as a rule record; `like` lends what a claim does not have."""
        return msgspec.structs.replace(
            like,
            id="draft",
            modality=self.modality,
            scope=self.scope,
            aspect=self.aspect,
            value=self.value,
            condition=self.condition,
            residual=self.residual,
            repairs=None,
            exception_to=(),
            disables=(),
        )
