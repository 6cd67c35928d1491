"""What stays open: conflicts that nothing settles, and topics on which the books are silent."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.audit.conflicts import by_rank, highest, unsettled
from kb.guidance.citing import Citing
from kb.guidance.document import Sentence
from kb.guidance.provisions import Provision
from kb.guidance.selecting import Selection
from kb.model.conditions import Condition, all_of
from kb.model.lookup import Lookup
from kb.model.records import Rule
from kb.reasoner.norms import covered_items
from kb.text import visible
from kb.wording import definite, listing, say_condition


class Matter(msgspec.Struct, frozen=True):
    """Rules of which nothing says which goes first, the higher authority's first, and when they clash."""

    rules: tuple[Rule, ...]
    condition: Condition

    @property
    def clauses(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(rule.clause for rule in self.rules))


def open_matters(selection: Selection) -> list[Matter]:
    """Conflicts between rules about the topics, in some case of the setting."""
    law, setting, lookup = selection.law, selection.setting, selection.lookup
    found: dict[frozenset[str], Matter] = {}
    for view in law.views:
        if view.item not in selection.wanted:
            continue
        known = setting.of(view)
        for norms, matter, _ in unsettled(view, selection.provisions.pairs(view)):
            names = frozenset(norm.rule for norm, _ in norms)
            case = setting.case(matter, known=known) if names not in found else None
            if case is not None:
                rules = tuple(by_rank(lookup, sorted(names)))
                both = setting.settle(all_of(rule.condition for rule in rules))
                found[names] = Matter(rules, both)
    return list(found.values())


def open_sentences(lookup: Lookup, matter: Matter, citing: Citing) -> tuple[Sentence, ...]:
    """The clauses word for word, when they oppose each other, and who can settle it."""
    quoted = [
        Sentence(f"“{visible(lookup.clauses[clause].text)}”", citing.clause(clause), "plain")
        for clause in matter.clauses
    ]
    said = say_condition(lookup, matter.condition, "")
    where = f"where {said}" if said else "in every case"
    names = listing([citing.clause(clause) for clause in matter.clauses])
    settles = highest(lookup, matter.rules).label
    verb = "oppose each other" if len(matter.clauses) > 1 else "opposes itself"
    opposed = f"This is open: {names} {verb} {where}, and nothing settles which goes first"
    return (
        *quoted,
        Sentence(opposed, kind="plain"),
        Sentence(f"Only {definite(settles)} can settle it", kind="plain"),
    )


def silent_topics(selection: Selection, provisions: Sequence[Provision]) -> list[str]:
    """The topics that the plan names and no provision is about."""
    lookup = selection.lookup
    spoken = {item for s in provisions for item in covered_items(lookup, s.rule.scope)}
    spoken |= {item for s in provisions for item in s.rule.scope.items}
    return [topic for topic in selection.plan.topics if spoken.isdisjoint(lookup.narrower(topic))]
