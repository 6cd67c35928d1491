"""The items that a rule covers, as the subject or the object of its sentence."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.records import Aspect, Modality, Rule, Scope
from kb.wording.english import definite, indefinite, is_plural, listing
from kb.wording.labels import item_label, the_item, the_items

GROOMING = "grooming"
_GIVING = frozenset({"issue", "supply", "provide"})
_NEGATIVE = ("must_not", "need_not")


def is_given(aspect: Aspect) -> bool:
    """Whether others do the act for who has the thing: it is issued to an usher, who issues nothing."""
    return aspect.verb in _GIVING


def is_class(lookup: Lookup, scope: Scope) -> bool:
    """Whether the scope names a class of items ("any outer garment") and not the things themselves."""
    return len(scope.items) == 1 and (
        bool(scope.excluding) or (scope.narrower and len(lookup.narrower(scope.items[0])) > 1)
    )


def is_top(lookup: Lookup, item: str) -> bool:
    """Whether an item is broader than everything ("anything")."""
    return not lookup.items[item].broader and item_label(lookup, item).lower().startswith("any")


def is_denial(lookup: Lookup, rule: Rule, modality: Modality) -> bool:
    """Whether the subject carries the "no" ("No outer garment may be worn"), so that the verb does not."""
    scope = rule.scope
    if modality not in _NEGATIVE:
        return False
    if len(scope.items) == 1 and item_label(lookup, scope.items[0]).lower().startswith("any "):
        return True
    return is_class(lookup, scope) or (len(scope.items) > 1 and scope.alternatives is None)


def one_of(lookup: Lookup, item: str) -> str:
    """An item in a rule, "the storm coat"; of grooming nobody has the one, "a beard", "cosmetics"."""
    label = item_label(lookup, item)
    if GROOMING not in lookup.broader(item):
        return the_item(lookup, item)
    return label if is_plural(label) else indefinite(label)


def _listed(lookup: Lookup, items: tuple[str, ...], word: str = "and") -> str:
    return listing([one_of(lookup, item) for item in items], word)


def _other_than(lookup: Lookup, scope: Scope) -> str:
    return f" other than {the_items(lookup, scope.excluding, 'or')}" if scope.excluding else ""


def say_class(lookup: Lookup, scope: Scope, word: str) -> str:
    """ "any outer garment other than the storm coat"; the top item is "anything" or "nothing"."""
    item = scope.items[0]
    if is_top(lookup, item):
        name = "nothing" if word == "no" else "anything"
    else:
        label = item_label(lookup, item)
        bare = label[4:] if label.lower().startswith("any ") else label
        name = label if definite(label) == label and word == "any" else f"{word} {bare}"
    return name + _other_than(lookup, scope)


def _alternatives(lookup: Lookup, scope: Scope) -> str:
    items = [one_of(lookup, item) for item in scope.items]
    if scope.alternatives == "one":
        return f"either {listing(items, 'or')}" if len(items) == 2 else f"exactly one of {listing(items)}"
    return f"{items[0]}, {items[1]} or both" if len(items) == 2 else f"at least one of {listing(items)}"


def say_scope(lookup: Lookup, scope: Scope, word: str = "any") -> str:
    """The items of a scope: "the storm coat", "the jersey and the cap", "any belt other than the sash"."""
    if scope.alternatives is not None and len(scope.items) > 1:
        return _alternatives(lookup, scope)
    if is_class(lookup, scope):
        return say_class(lookup, scope, word)
    return _listed(lookup, scope.items) + _other_than(lookup, scope)


def act_subject(lookup: Lookup, rule: Rule, modality: Modality) -> str:
    """The items as the subject of a passive sentence, with the "no" in it where it is a denial."""
    scope = rule.scope
    if not is_denial(lookup, rule, modality):
        return say_scope(lookup, scope, "the" if modality == "must" and not scope.excluding else "any")
    if len(scope.items) == 1:
        return say_class(lookup, scope, "no")
    items = [one_of(lookup, item) for item in scope.items]
    return f"neither {items[0]} nor {items[1]}" if len(items) == 2 else f"none of {listing(items)}"


def act_object(lookup: Lookup, rule: Rule, modality: Modality) -> str:
    """The items as the object after "must wear" or "must not wear"."""
    scope = rule.scope
    if is_class(lookup, scope):
        return say_scope(lookup, scope, "the" if modality == "must" and not scope.excluding else "any")
    word = "or" if modality in _NEGATIVE and scope.alternatives is None else "and"
    if word == "or":
        return _listed(lookup, scope.items, "or") + _other_than(lookup, scope)
    return say_scope(lookup, scope)
