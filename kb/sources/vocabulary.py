"""The vocabulary of a service: everything that clauses and rules may name."""

from __future__ import annotations

from functools import cached_property

import msgspec

from kb.errors import Location
from kb.model.conditions import Condition
from kb.model.records import Aspect, Authority, Fact, Group, Item, Service, SuggestedWord
from kb.sources import people, situations, suggested, things
from kb.sources.builtin import BUILT_IN
from kb.sources.cycles import closure, find_cycles
from kb.sources.fields import Fields
from kb.sources.naming import NAME_KEYS, by_id, check_labels, read_name
from kb.sources.outfits import outfits, worn_in_rig
from kb.sources.report import Report, quoted
from kb.sources.scales import Scale, make_scale
from kb.sources.sections import Sections

NO_SERVICE = Service(id="none", label="none", namespace="https://none.example/", at=BUILT_IN)


class Vocabulary(msgspec.Struct, frozen=True, dict=True):
    """Records by id. `grantors` gives the lowest authority for each authorisation."""

    service: Service
    authorities: dict[str, Authority]
    facts: dict[str, Fact]
    groups: dict[str, Group]
    aspects: dict[str, Aspect]
    items: dict[str, Item]
    grantors: dict[str, str]
    accepted_words: tuple[SuggestedWord, ...] = ()
    worn_only: tuple[Condition, ...] = ()
    """That outfits of the rigs that rules name are worn in another rig, which can never be."""

    @cached_property
    def scales(self) -> dict[str, Scale]:
        groups = tuple(self.groups.values())
        return {f.id: make_scale(f, groups) for f in self.facts.values() if f.kind == "scale" and f.values}

    @cached_property
    def verbs(self) -> dict[str, str]:
        """Aspect id by verb."""
        return {aspect.verb: aspect.id for aspect in self.aspects.values() if aspect.verb}

    @cached_property
    def _narrower(self) -> dict[str, tuple[str, ...]]:
        below: dict[str, tuple[str, ...]] = {}
        for item in self.items.values():
            for parent in item.broader:
                below[parent] = (*below.get(parent, ()), item.id)
        return below

    def narrower(self, item: str) -> tuple[str, ...]:
        """The item and everything narrower."""
        return closure(item, self._narrower)


def read_vocabulary(sections: Sections, start: Location, report: Report) -> Vocabulary:
    """The vocabulary of all files; `start` is where to report what is missing altogether."""
    entries = sections.entries
    authorities = people.read_authorities(entries["authorities"], report)
    grade, ladders = people.read_ladders(entries["ladders"], report)
    groups = people.read_grade_groups(entries["grade groups"], grade, ladders, report)
    branch = people.read_values_fact(entries["branches"], "branch", "Which branch?", report)
    rig = people.read_values_fact(entries["rigs"], "rig", "Which rig?", report)
    facts = [fact for fact in (grade, branch, rig) if fact is not None]
    facts += situations.read_facts(entries["facts"], report)
    holdings = [
        f for key, family in people.HOLDINGS for f in people.read_holdings(entries[key], family, report)
    ]
    check_labels(holdings, "qualifications, appointments or waivers", report)
    granted, grantors = people.read_authorisations(entries["authorisations"], authorities, report)
    check_labels(granted, "authorisations", report)
    items = things.read_items(entries["items"], report)
    decisions = suggested.read_decisions(entries[suggested.SECTION], items, report)
    words = tuple(decision.word for decision in decisions if decision.accepted)
    items = suggested.with_words(items, words)
    worn = outfits(sections, rig, items)
    items |= worn
    stated = by_id([*facts, *holdings, *granted], "fact", report)
    groups += situations.read_fact_groups(entries["fact groups"], stated, report)
    aspects = things.read_aspects(entries["aspects"], report)
    _check_aspect_circles(aspects, report)
    return Vocabulary(
        service=_service(sections, start, report),
        authorities=authorities,
        facts=stated | {fact.id: fact for fact in things.worn_facts(items.values())},
        groups=by_id(groups, "group", report),
        aspects=aspects,
        items=items,
        grantors=grantors,
        accepted_words=words,
        worn_only=tuple(worn_in_rig(name, rig) for name in worn if rig is not None),
    )


def _check_aspect_circles(aspects: dict[str, Aspect], report: Report) -> None:
    for circle in find_cycles({a.id: (a.within,) if a.within else () for a in aspects.values()}):
        message = f"Aspects lie within each other in a circle: {' within '.join((*circle, circle[0]))}."
        report.error(aspects[circle[0]].at, "circular-within", message, "Take one of the within lines away.")


def _service(sections: Sections, start: Location, report: Report) -> Service:
    nodes = sections.entries["service"]
    if not nodes:
        remedy = 'Add service: {id: sls, label: Skerry Light Service, namespace: "https://sls.example/"}.'
        report.error(start, "missing-service", "No file says which service the books belong to.", remedy)
        return NO_SERVICE
    for extra in nodes[1:]:
        message = f"The service is declared for the second time; the first stands in {nodes[0].at}."
        report.error(extra.at, "duplicate-service", message, "Keep one service in a folder.")
    fields = Fields(nodes[0], (*NAME_KEYS, "namespace"), "the service", report)
    name = read_name(fields)
    namespace = fields.required("namespace", 'namespace: "https://sls.example/"')
    if namespace is not None and not _is_namespace(namespace.text):
        message = f"{quoted(namespace.text)} cannot begin the addresses of rules and items."
        remedy = 'Write an address without spaces that ends in / or #, such as "https://sls.example/".'
        report.error(namespace.at, "bad-namespace", message, remedy)
    if name is None or namespace is None:
        return NO_SERVICE
    return Service(
        id=name.id, label=name.label, other_labels=name.other_labels, at=name.at, namespace=namespace.text
    )


def _is_namespace(text: str) -> bool:
    scheme, colon, rest = text.partition(":")
    plain = text.isascii() and text.isprintable() and not set(text) & set(' <>"{}|\\^`')
    return bool(colon) and scheme.isalnum() and bool(rest.strip("/")) and text[-1:] in "/#" and plain
