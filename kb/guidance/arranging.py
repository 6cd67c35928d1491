"""Provisions under headings and in paragraphs: from head to toe, or in the order of the plan's topics."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from kb.guidance.merging import merge_items
from kb.guidance.plan import Plan
from kb.guidance.provisions import Provision
from kb.guidance.zones import KIT, ORDER, OTHER, zone_of
from kb.model.lookup import Lookup
from kb.model.records import OWNED_ASPECTS
from kb.wording import capital, item_label, plural

_KINDS = ("count", "position", "order", "choice", "measure", "manner")
_MODALITIES = ("must", "must_not", "may", "need_not")
_USE = ("wear", "carrying", *OWNED_ASPECTS)


class Arranged:
    """The paragraphs of one heading, each a list of provisions about one thing, or about several alike."""

    def __init__(self, heading: str, paragraphs: list[list[Provision]]) -> None:
        self.heading = heading
        self.paragraphs = paragraphs


def arrange(lookup: Lookup, plan: Plan, provisions: Sequence[Provision]) -> list[Arranged]:
    """Every provision under one heading, in one paragraph."""
    headings = [_heading(lookup, plan, provision) for provision in provisions]
    order = list(dict.fromkeys([*_order(lookup, plan), *headings]))
    return [
        Arranged(
            heading,
            _paragraphs(lookup, [s for s, h in zip(provisions, headings, strict=True) if h == heading]),
        )
        for heading in order
        if heading in headings
    ]


def _order(lookup: Lookup, plan: Plan) -> list[str]:
    topics = [_title(lookup, topic) for topic in plan.topics]
    return topics if plan.arrange == "by topic" and topics else list(ORDER)


def _heading(lookup: Lookup, plan: Plan, provision: Provision) -> str:
    if provision.rule.aspect in OWNED_ASPECTS:
        return KIT
    item = provision.rule.scope.items[0]
    if plan.arrange == "by topic" and plan.topics:
        return _topic(lookup, plan, item)
    return zone_of(lookup, item)


def _topic(lookup: Lookup, plan: Plan, item: str) -> str:
    """The nearest of the topics that a thing, or what it is a part of, belongs to."""
    whole = lookup.items[item].part_of
    for kind in (*lookup.broader(item), *(lookup.broader(whole) if whole else ())):
        if kind in plan.topics:
            return _title(lookup, kind)
    for topic in plan.topics:  # a rule about a whole class bears on the topics within it
        if topic in lookup.narrower(item):
            return _title(lookup, topic)
    return OTHER


def _title(lookup: Lookup, topic: str) -> str:
    """A topic as a heading: a kind of things in the plural."""
    label = item_label(lookup, topic)
    return capital(plural(label) if len(lookup.narrower(topic)) > 1 else label)


def _paragraphs(lookup: Lookup, provisions: Sequence[Provision]) -> list[list[Provision]]:
    """What is said of several things together first, then a paragraph for each thing."""
    merged = merge_items(lookup, provisions)
    place = {item.id: i for i, item in enumerate(lookup.base.items)}
    groups: dict[tuple[str, ...], list[Provision]] = {}
    for provision in merged:
        groups.setdefault(provision.rule.scope.items, []).append(provision)

    def rank(items: tuple[str, ...]) -> tuple[bool, bool, bool, int]:
        """Classes of things, then things, those that are only forbidden last."""
        use = any(s.rule.aspect in _USE for s in groups[items])
        several = len(items) > 1 or len(lookup.narrower(items[0])) > 1
        forbidden = use and all(p.rule.modality == "must_not" for p in groups[items])
        return not (several and use), several, forbidden, place[items[0]]

    return [with_exceptions(_sorted(lookup, groups[items])) for items in sorted(groups, key=rank)]


def _sorted(lookup: Lookup, provisions: Iterable[Provision]) -> list[Provision]:
    """The use of a thing first, then number, place and looks, then how it is treated."""
    order = {aspect.id: i for i, aspect in enumerate(lookup.base.aspects)}

    def rank(provision: Provision) -> tuple[int, int, int]:
        aspect = lookup.aspects[provision.rule.aspect]
        if aspect.kind == "act" and aspect.id in _USE:
            step = 0
        elif aspect.kind == "act":
            step = len(_KINDS) + (1 if aspect.verb is None else 2)
        else:
            step = 1 + _KINDS.index(aspect.kind)
        modality = _MODALITIES.index(provision.rule.modality)
        return step, order[aspect.within or aspect.id] if step else 0, order[aspect.id] if step else modality

    return sorted(provisions, key=rank)


def with_exceptions(provisions: Sequence[Provision]) -> list[Provision]:
    """The provisions with each that takes another back right behind it."""
    placed: dict[int, Provision] = {}

    def put(provision: Provision) -> None:
        if id(provision) in placed:
            return
        placed[id(provision)] = provision
        for other in provisions:
            if not set(provision.rivals).isdisjoint(other.rules):
                put(other)

    for provision in provisions:
        put(provision)
    return list(placed.values())
