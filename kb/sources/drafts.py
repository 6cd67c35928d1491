"""Clauses and rules as read, before their references are followed."""

from __future__ import annotations

import msgspec

from kb.model.records import Aspect, Clause, Definition, Delegation, Rule, Tolerance
from kb.sources.report import Report
from kb.sources.tree import Scalar
from kb.sources.vocabulary import Vocabulary


class RuleDraft(msgspec.Struct, frozen=True):
    """A rule without its links. `source` is the id of the rule as written, which may have become several."""

    rule: Rule
    source: str
    edition: str
    exception_to: tuple[Scalar, ...] = ()
    disables: tuple[Scalar, ...] = ()
    repairs: Scalar | None = None
    under: Scalar | None = None
    phase_out: bool = False
    each_kind: bool = False


class DelegationDraft(msgspec.Struct, frozen=True):
    delegation: Delegation
    edition: str
    clauses: tuple[Scalar, ...]


class ClauseDraft(msgspec.Struct, frozen=True):
    """A clause with everything it holds."""

    clause: Clause
    authority: str
    replaces: tuple[Scalar, ...] = ()
    repeals: tuple[Scalar, ...] = ()
    delegations: tuple[DelegationDraft, ...] = ()
    definitions: tuple[Definition, ...] = ()
    tolerances: tuple[Tolerance, ...] = ()
    rules: tuple[RuleDraft, ...] = ()


class Context:
    """What reading a rule needs to know, and where it leaves the aspects that manners bring along."""

    def __init__(self, vocabulary: Vocabulary, report: Report) -> None:
        self.vocabulary = vocabulary
        self.report = report
        self.acts: dict[str, Aspect] = {}
