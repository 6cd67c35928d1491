"""A rule as it bears on one item: which values it closes or supports there, and when.

Following the design's reading of the four modalities: `must S` closes what is not in S,
`must_not S` closes S, `may S` supports S, `need_not S` supports what is not in S
(obligation and prohibition as restrictions of the open values, strong permission as support;
compare the permissions and defeaters of defeasible deontic logic).
"""

from __future__ import annotations

import msgspec

from kb.model.conditions import Condition, Test, all_of, any_of
from kb.model.lookup import Lookup
from kb.model.records import Rule, Scope
from kb.model.values import NO, YES, ValueSet, complement


class Norm(msgspec.Struct, frozen=True):
    """One rule's effect on one item: `values` are closed (`closes`) or supported when `condition` holds.

    `key` is the rule, or a name of its own where the rule has more than one effect on the item. One that
    `frees` from a duty keeps residual rules off what need not be so: it has been spoken of.
    """

    key: str
    rule: str
    closes: bool
    values: ValueSet
    condition: Condition
    residual: bool = False
    frees: bool = False


def covered_items(lookup: Lookup, scope: Scope) -> frozenset[str]:
    """All items that a scope covers."""
    items = {
        narrow for item in scope.items for narrow in (lookup.narrower(item) if scope.narrower else (item,))
    }
    return frozenset(item for item in items if covers(lookup, scope, item))


def rule_of(key: str) -> str:
    """The rule that a norm's key belongs to."""
    return key.partition("#")[0]


def item_of(key: str) -> str | None:
    """The item that a norm's own key names, if it has one."""
    return key.split("#")[1] if "#" in key else None


def covers(lookup: Lookup, scope: Scope, item: str, as_such: bool = False) -> bool:
    """Whether a scope covers an item: all of it, so not a kind that has an excluded item among its kinds.

    `as_such` it is something of the kind `item` that no rule names, so none of the excluded items.
    """
    above = lookup.broader(item)
    named = any(i in above for i in scope.items) if scope.narrower else item in scope.items
    return named and not any(
        i in above or (not as_such and item in lookup.broader(i)) for i in scope.excluding
    )


def _alternatives(lookup: Lookup, rule: Rule, item: str) -> tuple[Norm, ...]:
    """One duty over a set of items, seen from one of them.

    As long as no other alternative is worn this one may not be left off. With another worn, "one" closes
    this one and "any" supports it. Each effect has its own cases, so that the order of precedence compares
    what the duty asks here, not what it asks elsewhere.
    """
    above = lookup.broader(item)
    others = [other for other in rule.scope.items if other not in above]
    none_else = all_of([rule.condition, *(Test(f"worn:{other}", NO) for other in others)])
    some_else = all_of([rule.condition, any_of([Test(f"worn:{other}", YES) for other in others])])
    duty = Norm(f"{rule.id}#{item}#duty", rule.id, True, complement(rule.value.values), none_else)
    one = rule.scope.alternatives == "one"
    return (duty, Norm(f"{rule.id}#{item}#rest", rule.id, one, rule.value.values, some_else))


def norms_of(lookup: Lookup, rule: Rule, item: str) -> tuple[Norm, ...]:
    """The effects of a rule on an item that it covers."""
    if rule.scope.alternatives and rule.modality == "must":
        return _alternatives(lookup, rule, item)
    inside = rule.modality in ("must_not", "may")
    values = rule.value.values if inside else complement(rule.value.values)
    closes = rule.modality in ("must", "must_not")
    frees = rule.modality == "need_not"
    return (Norm(rule.id, rule.id, closes, values, rule.condition, rule.residual, frees),)
