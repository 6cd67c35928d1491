"""Which clauses alter others that held before: by replacing or ending them, or by a rule that goes before."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.records import Clause


def altered(clause: Clause, lookup: Lookup) -> tuple[str, ...]:
    """The clauses that a clause replaces or ends, or whose rules its own go before, all of them older.

    What a lower authority orders beside them alters nothing.
    """
    rules = [name for rule in lookup.rules_of(clause.id) for name in (*rule.disables, *rule.exception_to)]
    over = dict.fromkeys(lookup.rules[name].clause for name in rules if name in lookup.rules)
    older = (one for one in over if _is_altered(lookup.clauses[one], clause, lookup))
    return tuple(dict.fromkeys((*clause.replaces, *clause.repeals, *older)))


def _is_altered(one: Clause, by: Clause, lookup: Lookup) -> bool:
    earlier = one.valid_from < by.valid_from and one.edition != by.edition
    return earlier and _rank(by, lookup) <= _rank(one, lookup)


def _rank(clause: Clause, lookup: Lookup) -> int:
    return lookup.authorities[lookup.books[lookup.editions[clause.edition].book].authority].rank
