"""What a rule says of an aspect other than an act: colour, fit, height, number, position, order."""

from __future__ import annotations

import re

from kb.measures import UNITS, from_base
from kb.measures.twins import agree
from kb.model.lookup import Lookup
from kb.model.records import Aspect, Rule, RuleValue, Scope
from kb.model.values import OTHER, Choices, Ranges, ValueSet, contains, others_in
from kb.wording.english import definite, indefinite, listing, phrase, plural
from kb.wording.labels import item_label, the_item
from kb.wording.manners import is_manner, say_manner
from kb.wording.positions import FEATURE, say_places, say_position, say_positions
from kb.wording.quantities import say_count, say_intervals, say_length, say_measure
from kb.wording.scopes import act_subject, is_denial, is_top, say_scope


def say_value(lookup: Lookup, aspect: str, value: RuleValue) -> str:
    """The values that a rule speaks about: "gilt or silver", "about 1 in (25.4 mm)", "centred on the cap"."""
    record = lookup.aspects[aspect]
    if record.kind == "position" and value.positions:
        return say_positions(lookup, value.positions)
    if record.kind == "order" and value.order:
        return ", then ".join(the_item(lookup, item) for item in value.order)
    if record.kind == "measure" and value.measure is not None:
        return say_measure(value.measure)
    return say_set(lookup, aspect, value.values, value)


def say_open_values(lookup: Lookup, aspect: str, values: ValueSet, value: RuleValue | None = None) -> str:
    """Values left open for an aspect; as `value` writes them where it speaks of exactly these values."""
    if value is not None and value.values == values:
        return say_value(lookup, aspect, value)
    return say_set(lookup, aspect, values, value)


def say_set(lookup: Lookup, aspect: str, values: ValueSet, value: RuleValue | None = None) -> str:
    """Any set of values of an aspect; `value` lends its unit, datum and positions."""
    record = lookup.aspects[aspect]
    if isinstance(values, Ranges):
        if record.kind == "count":
            return listing([say_count(interval) for interval in values.intervals], "or") or "none"
        unit = value.measure.unit if value is not None and value.measure is not None else "mm"
        return say_intervals(values, unit)
    if record.kind == "act":
        return _say_act_values(record, values)
    known = {position.id: position for rule in lookup.base.rules for position in rule.value.positions}
    names = {v.id: v.label for v in record.values}
    if value is not None:
        known |= {position.id: position for position in value.positions}
    said = [
        say_position(lookup, known[member])
        if member in known
        else names.get(member) or _loose(lookup, member)
        for member in _in_order(record, values)
    ]
    if values.complement:
        return f"anything but {listing(said, 'or')}" if said else "anything"
    return (say_places(said) if record.kind == "position" else listing(said, "or")) or "nothing"


def say_claimed(lookup: Lookup, aspect: str, item: str, values: ValueSet) -> str:
    """Values that a question claims, a measure in the unit that the books use for this aspect of the item."""
    if isinstance(values, Ranges) and lookup.aspects[aspect].kind == "measure":
        above = lookup.broader(item)
        measures = [
            rule.value.measure
            for rule in lookup.base.rules
            if rule.aspect == aspect and rule.value.measure and not set(above).isdisjoint(rule.scope.items)
        ]
        unit = measures[0].unit if measures and _is_simple(values, measures[0].unit) else "mm"
        rounded = any(measure.also is not None and agree(measure) for measure in measures)
        if not rounded and not _is_simple(values, "mm", 2) and _is_simple(values, "[in_i]"):
            unit = "[in_i]"  # 38.1 mm was said as 1 1/2 in
        return listing([say_length(interval, unit) for interval in values.intervals], "or") or "none"
    if lookup.aspects[aspect].kind == "position" and (told := others_in(values)):
        return listing([_loose(lookup, member) for member in sorted(told)], "or")  # a place as it was told
    return say_set(lookup, aspect, values)


def _is_simple(values: Ranges, unit: str, parts: int = 64) -> bool:
    """Whether every bound is a number of the unit as people write them: halves to sixty-fourths."""
    bounds = [bound for i in values.intervals for bound in (i.low, i.high) if bound is not None]
    return unit in UNITS and all(parts % from_base(bound, unit).denominator == 0 for bound in bounds)


def _loose(lookup: Lookup, member: str) -> str:
    if member.startswith(OTHER):
        return member.removeprefix(OTHER).replace("-", " ")
    return the_item(lookup, member) if member in lookup.items else member.replace(":", " ")


def _in_order(aspect: Aspect, values: Choices) -> list[str]:
    order = [value.id for value in aspect.values]
    rest = sorted(values.members.difference(order))
    return [member for member in order if member in values.members] + rest


def _say_act_values(aspect: Aspect, values: Choices) -> str:
    done = aspect.done or aspect.label
    said = [text for member, text in (("yes", done), ("no", f"not {done}")) if contains(values, member)]
    return listing(said, "or") or "nothing"


def say_aspect_statement(
    lookup: Lookup, rule: Rule, aspect: Aspect, verb: str, holder: str
) -> tuple[str, bool]:
    """The statement of a rule that is no plain act, and whether it names the holder itself."""
    value = rule.value
    scope = say_scope(lookup, rule.scope)
    if is_manner(aspect):
        if rule.modality == "must_not" and is_denial(lookup, rule, "must_not"):
            return say_manner(lookup, act_subject(lookup, rule, "must_not"), aspect, "may"), False
        return say_manner(lookup, scope, aspect, verb), False
    if aspect.kind == "position":
        return _say_place(lookup, rule, verb, holder)
    said = say_value(lookup, aspect.id, value)
    if aspect.kind == "count":
        from kb.wording.counts import say_counted  # noqa: PLC0415  few rules are about numbers

        counted = say_counted(lookup, rule, aspect, holder)
        if counted:
            return counted, bool(holder)
        return phrase(count_subject(lookup, rule.scope, aspect), verb, "be", said), False
    if aspect.kind == "order":
        things = plural(item_label(lookup, rule.scope.items[0])) if len(rule.scope.items) == 1 else scope
        subject = phrase(things, verb, "be worn in this", aspect.label)
        named = listing([the_item(lookup, item) for item in value.order])
        return f"{subject}, the senior first: {named or said}", False
    if aspect.label == "reach":
        return phrase(scope, verb, aspect.label, said), False
    plainly = _say_plainly(aspect, value, said)
    if plainly:
        return phrase(scope, verb, plainly), False
    return phrase(definite(aspect.label), "of", scope, verb, "be", said), False


_DIMENSIONS = {"height": "high", "width": "wide", "length": "long", "diameter": "in diameter"}


def _say_plainly(aspect: Aspect, value: RuleValue, said: str) -> str:
    """What is said of a thing without the name of the aspect, "be navy blue", "be 1 in high"; else empty."""
    if aspect.kind == "measure" and value.measure is not None and value.measure.datum is None:
        return f"be {said} {_DIMENSIONS[aspect.id]}" if aspect.id in _DIMENSIONS else ""
    if aspect.kind != "choice" or not isinstance(value.values, Choices) or value.values.complement:
        return ""
    if said.split()[-1] == aspect.label:
        return f"be of {said}"
    if aspect.id == "colour" and definite(said) != said:
        return f"be {said}"
    return f"have {indefinite(f'{said} {aspect.label}')}" if aspect.id == "finish" else ""


def count_subject(lookup: Lookup, scope: Scope, aspect: Aspect) -> str:
    """ "the number of rings worn" for the label "number worn"; "the stock of rings" for "stock"."""
    if len(scope.items) == 1 and not is_top(lookup, scope.items[0]):
        from kb.wording.counts import counts_pairs  # noqa: PLC0415  few rules are about numbers

        things = plural(item_label(lookup, scope.items[0]))
        if any(
            counts_pairs(lookup, r) for r in lookup.base.rules if r.aspect == aspect.id and r.scope == scope
        ):
            things = f"pairs of {things}"
        if scope.excluding:
            things += f" other than {listing([the_item(lookup, item) for item in scope.excluding], 'or')}"
    else:
        things = "things" if is_top(lookup, scope.items[0]) else say_scope(lookup, scope)
    words = aspect.label.split()
    if len(words) == 2 and re.search(r"(ed|en|rn)$", words[1]):
        return f"the {words[0]} of {things} {words[1]}"
    return f"{definite(aspect.label)} of {things}"


def _say_place(lookup: Lookup, rule: Rule, verb: str, holder: str) -> tuple[str, bool]:
    said = say_value(lookup, rule.aspect, rule.value)
    scope = say_scope(lookup, rule.scope)
    if any(FEATURE in lookup.broader(item) for item in rule.scope.items):
        return phrase(scope, verb, "be placed", said), False
    if holder:
        return phrase(holder, verb, "wear", scope, said), True
    return phrase(scope, verb, "be worn", said), False


def of_item(lookup: Lookup, aspect: str, item: str) -> str:
    """ "the height of the name strip", "the number of rings worn"."""
    record = lookup.aspects[aspect]
    if record.kind == "count":
        return count_subject(lookup, Scope(items=(item,)), record)
    manner = lookup.aspects[record.within] if is_manner(record) and record.within else record
    return f"{definite(manner.label)} of {the_item(lookup, item)}"
