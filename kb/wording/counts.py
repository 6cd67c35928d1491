"""Limits on numbers as sentences: "No more than two pins may be worn", "A K1 must wear exactly one bar"."""

from __future__ import annotations

import re

from kb.measures.numbers import CARDINALS
from kb.model.lookup import Lookup
from kb.model.records import OWNED_ASPECTS, Aspect, Rule
from kb.model.values import Ranges
from kb.text import Pattern
from kb.wording.english import head_index, is_plural, phrase, plural
from kb.wording.holders import EVERY_MEMBER
from kb.wording.labels import item_label
from kb.wording.quantities import count_bounds
from kb.wording.scopes import is_top

_NUMBERS = ("no", *CARDINALS[1:13])
_ONE = {1: ("a",)}
_PAIRED = frozenset(
    ("trousers", "shorts", "goggles", "glasses", "spectacles", "braces", "tights", "overalls")
)


def say_counted(lookup: Lookup, rule: Rule, aspect: Aspect, holder: str) -> str:
    """The statement of a duty to wear or own so many things; empty where it has no such plain form."""
    values, scope = rule.value.values, rule.scope
    words = aspect.label.split()
    act = next((a for a in lookup.base.aspects if a.verb and len(words) == 2 and a.done == words[1]), None)
    if rule.modality != "must" or act is None or not isinstance(values, Ranges) or len(values.intervals) != 1:
        return ""
    if len(scope.items) != 1 or scope.excluding or is_top(lookup, scope.items[0]):
        return ""
    low, high = count_bounds(values.intervals[0])
    many, modal = _limits(low, high)
    number = high if high is not None else low
    if counts_pairs(lookup, rule):
        pairs = "pair of" if number == 1 else "pairs of"
        things = f"{pairs} {plural(item_label(lookup, scope.items[0]))}"
    else:
        things = _things(item_label(lookup, scope.items[0]), number)
    if not many or not things:
        return ""
    if not holder and modal == "must" and aspect.id in OWNED_ASPECTS:
        holder = EVERY_MEMBER
    if holder:
        return phrase(holder, modal, act.verb or "have", many, things)
    return phrase(many, things, modal, "be", act.done or "done")


_PAIRS_OF = Pattern(r"(?i)\b(?P<number>\w+) pairs? of (?P<things>(?:\w+ ){0,2}\w+)")
_IN_PAIRS = Pattern(r"(?i)\b(?P<things>(?:\w+ ){1,3})(?P<number>\w+) pairs?\b(?! of)")


def counts_pairs(lookup: Lookup, rule: Rule) -> bool:
    """Whether the clause of a rule on numbers counts pairs of the thing: "six pairs of wool socks"."""
    text = lookup.clauses[rule.clause].text
    if "pair" not in text or len(rule.scope.items) != 1 or not isinstance(rule.value.values, Ranges):
        return False
    head = item_label(lookup, rule.scope.items[0]).split()[-1].lower().removesuffix("s")
    bounds = {bound for interval in rule.value.values.intervals for bound in count_bounds(interval)}
    numbers = {word for n in bounds if n is not None for word in (str(n), _number(n), *_ONE.get(n, ()))}
    return any(
        found["number"].lower() in numbers
        and head in [word.lower().removesuffix("s") for word in found["things"].split()]
        for pattern in (_PAIRS_OF, _IN_PAIRS)
        for found in pattern.finditer(text)
    )


def _limits(low: int | None, high: int | None) -> tuple[str, str]:
    """The number and the modal: "no more than two" may be worn, "at least two" must be."""
    if high is not None and high > 0 and (low is None or low <= 0):
        return f"no more than {_number(high)}", "may"
    if low is None or low <= 0 or (high is not None and high < low):
        return "", ""
    if high is None:
        return f"at least {_number(low)}", "must"
    if high == low:
        return f"exactly {_number(low)}", "must"
    return f"{_number(low)} to {_number(high)}", "must"


def _number(number: int) -> str:
    return _NUMBERS[number] if number < len(_NUMBERS) else str(number)


def _things(label: str, number: int | None) -> str:
    """The things that are counted; empty where a label in the plural has no singular that is sure."""
    if number != 1:
        return plural(label)
    if not is_plural(label):
        return label
    words = label.split()
    index = head_index(words)
    head = words[index]
    if (
        head.lower() in _PAIRED
        or not re.search(r"[^s]s$", head)
        or re.search(r"(ies|[sxz]es|[cs]hes)$", head)
    ):
        return ""
    words[index] = head[:-1]
    return " ".join(words)
