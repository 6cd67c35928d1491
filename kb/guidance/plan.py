"""A writer's plan: for whom, where and about what guidance is wanted, and the station's own clauses."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from typing import Literal

import msgspec

from kb.errors import Location
from kb.model.conditions import AllOf, AnyOf, Condition, NotOf, Test
from kb.model.values import ValueSet, complement, intersect, is_empty, unite
from kb.reasoner import Facts
from kb.sources.conditions import read_condition, read_fact_values
from kb.sources.fields import Fields
from kb.sources.report import Report, listed, quoted
from kb.sources.things import check_item
from kb.sources.tree import Entry, Mapping, Node, Scalar, Tree
from kb.sources.vocabulary import Vocabulary

Arrangement = Literal["head to toe", "by topic"]
ARRANGEMENTS: tuple[Arrangement, ...] = ("head to toe", "by topic")
LOCAL = ("items", "clauses")
_KEYS = (
    "plan", "subject", "purpose", "authority", "effective", "expires", "review", "arrange", "audience",
    "rigs", "situation", "topics", "kit", *LOCAL,
)  # fmt: skip
_AUDIENCE = (("grades", "grade", "ladders"), ("branch", "branch", "branches"))


class Plan(msgspec.Struct, frozen=True, kw_only=True):
    """What guidance is wanted. `expires` is its last day, `topics` are items (empty means every item).

    `facts` is what holds for everybody and everywhere that the guidance is for.
    """

    id: str
    at: Location
    subject: str
    purpose: str
    authority: str
    effective: datetime.date
    expires: datetime.date
    review: datetime.date
    arrange: Arrangement
    facts: Facts
    topics: tuple[str, ...]
    kit: bool
    local: bool

    @property
    def edition(self) -> str:
        """The id of the edition that the station's own clauses stand in."""
        return f"{self.id}/{self.effective.year}"


def local_tree(tree: Tree) -> Tree | None:
    """The station's own clauses of a plan as a file of a rule book; None if it has none."""
    root = tree.root
    if root is None or root.get("clauses") is None:
        return None
    entries = [entry for entry in root.entries if entry.key.text in LOCAL]
    begin, end = _text(root, "effective"), _text(root, "expires")
    year = begin.text[:4] if begin else "?"
    book = _mapping(root, id="plan", title="subject", authority="authority")
    lines = [
        _line(root, "book", book),
        _line(root, "edition", _edition(root, year, begin, end)),
    ]
    return Tree(tree.file, tree.digest, Mapping((*lines, *entries), root.at))


def _text(root: Mapping, key: str) -> Scalar | None:
    found = root.get(key)
    return found if isinstance(found, Scalar) else None


def _line(root: Mapping, key: str, value: Node) -> Entry:
    return Entry(Scalar(key, root.at), value)


def _mapping(root: Mapping, **keys: str) -> Mapping:
    """A mapping made of some of the plan's values under other keys."""
    found = [Entry(Scalar(key, root.at), node) for key, name in keys.items() if (node := root.get(name))]
    return Mapping(tuple(found), root.at)


def _edition(root: Mapping, year: str, begin: Scalar | None, end: Scalar | None) -> Mapping:
    entries = [_line(root, "id", Scalar(year, root.at))]
    if begin is not None:
        entries.append(_line(root, "in force from", begin))
    if end is not None and (after := _day_after(end.text)):
        entries.append(_line(root, "in force until", Scalar(after, end.at)))
    return Mapping(tuple(entries), root.at)


def _day_after(text: str) -> str:
    try:
        return (datetime.date.fromisoformat(text.strip()) + datetime.timedelta(days=1)).isoformat()
    except (ValueError, OverflowError):
        return ""  # reported where the plan itself is read


def read_plan(tree: Tree, vocabulary: Vocabulary, report: Report) -> Plan | None:
    """The plan in a file; None (with problems in the report) if something that it needs is missing."""
    if tree.root is None:
        report.error(Location(tree.file), "empty-plan", "The file is empty.", "Write plan: and an id first.")
        return None
    fields = Fields(tree.root, _KEYS, "a plan", report)
    name = fields.identifier("plan")
    subject = fields.required("subject", "subject: Dress of the boat crews in winter")
    purpose = fields.required("purpose", "purpose: and one sentence that says what it is for")
    authority = _authority(fields, vocabulary, report)
    dates = _dates(fields, report)
    arrange = fields.one_of("arrange", ARRANGEMENTS, "head to toe")
    facts = _facts(fields, vocabulary, report)
    topics = [t.text for t in fields.scalars("topics") if check_item(t, vocabulary.items, report)]
    kit = fields.flag("kit")
    if fields.has("items") and not fields.has("clauses"):
        message = "The plan has items of its own, but no clauses that speak about them."
        report.error(fields.place("items"), "unused-items", message, "Add clauses:, or remove the items.")
    if report.failed or not (name and subject and purpose and authority and dates):
        return None
    return Plan(
        id=name.text,
        at=fields.at,
        subject=" ".join(subject.text.split()),
        purpose=" ".join(purpose.text.split()),
        authority=authority,
        effective=dates[0],
        expires=dates[1],
        review=dates[2],
        arrange=next(known for known in ARRANGEMENTS if known == arrange),
        facts=facts,
        topics=tuple(dict.fromkeys(topics)),
        kit=kit,
        local=fields.has("clauses"),
    )


def _authority(fields: Fields, vocabulary: Vocabulary, report: Report) -> str | None:
    found = fields.required("authority", f"authority: {next(iter(vocabulary.authorities), 'station')}")
    if found is None or found.text in vocabulary.authorities:
        return found.text if found else None
    if not fields.has("clauses"):  # else the loader of the clauses says so
        remedy = f"Write {listed(vocabulary.authorities)}."
        report.error(found.at, "unknown-authority", f"There is no authority {quoted(found.text)}.", remedy)
    return None


def _dates(fields: Fields, report: Report) -> tuple[datetime.date, datetime.date, datetime.date] | None:
    found = []
    for key, example in (("effective", "2026-12-01"), ("expires", "2027-11-30"), ("review", "2027-09-01")):
        if not fields.has(key):
            fields.missing(key, f"{key}: {example}")
        found.append(fields.date(key))
    effective, expires, review = found
    if effective is None or expires is None or review is None:
        return None
    if expires < effective:
        message = f"The guidance would expire ({expires}) before it takes effect ({effective})."
        report.error(fields.place("expires"), "reversed-dates", message, "Correct one of the dates.")
        return None
    if not effective <= review <= expires:
        message = f"The review date ({review}) is not between the effective date and the expiry."
        report.error(fields.place("review"), "review-outside", message, "Correct the review date.")
        return None
    return effective, expires, review


def _facts(fields: Fields, vocabulary: Vocabulary, report: Report) -> Facts:
    """Everything that the plan states of its audience and situation, one entry for each fact."""
    stated: list[tuple[Test, Location]] = []
    audience = fields.node_of("audience")
    if isinstance(audience, Mapping):
        inner = Fields(audience, (*(key for key, _, _ in _AUDIENCE), "holds"), "an audience", report)
        for key, fact, section in _AUDIENCE:
            stated += _named(inner, key, fact, section, vocabulary, report)
        for text in inner.scalars("holds"):
            line = Entry(Scalar("holds", text.at), text)
            stated += _situation(Mapping((line,), text.at), vocabulary, report)
    elif audience is not None:
        message = "The audience is no mapping."
        report.error(audience.at, "wrong-kind", message, "Write audience: {grades: K1 to K3, branch: boats}.")
    stated += _named(fields, "rigs", "rig", "rigs", vocabulary, report)
    situation = fields.node_of("situation")
    if situation is not None:
        stated += _situation(situation, vocabulary, report)
    return _joined(stated, report)


def _named(
    fields: Fields, key: str, fact: str, section: str, vocabulary: Vocabulary, report: Report
) -> list[tuple[Test, Location]]:
    texts = fields.scalars(key)
    if not texts:
        return []
    if fact not in vocabulary.facts:
        message = f"The plan names {quoted(key)}, but the rule books have no {section}."
        report.error(fields.lines[key].key.at, "unknown-fact", message, f"Remove the line {quoted(key)}.")
        return []
    values = read_fact_values(vocabulary.facts[fact], texts, vocabulary, report)
    return [] if values is None else [(Test(fact, values), fields.place(key))]


def _situation(node: Node, vocabulary: Vocabulary, report: Report) -> list[tuple[Test, Location]]:
    """A mapping as under `when`, each line of which says the values that one fact may have."""
    if not isinstance(node, Mapping):
        read_condition(node, vocabulary, report)  # reports it
        return []
    found = []
    for entry in node.entries:
        condition = read_condition(Mapping((entry,), entry.key.at), vocabulary, report)
        test = _as_test(condition)
        if test is not None:
            found.append((test, entry.key.at))
        elif condition != AllOf(()):
            message = f"{quoted(entry.key.text)} does not say the values of one fact."
            remedy = "Write one line for each fact, such as place: [slipway, afloat]."
            report.error(entry.key.at, "not-a-fact", message, remedy)
    return found


def _as_test(condition: Condition) -> Test | None:
    """The condition as one test of one fact, if it is one."""
    if isinstance(condition, Test):
        return condition
    if isinstance(condition, NotOf):
        inner = _as_test(condition.part)
        return Test(inner.fact, complement(inner.values)) if inner else None
    parts = [_as_test(part) for part in condition.parts]
    tests = [part for part in parts if part is not None]
    if not tests or len(tests) < len(parts) or len({test.fact for test in tests}) > 1:
        return None
    values = tests[0].values
    for test in tests[1:]:
        joined = unite if isinstance(condition, AnyOf) else intersect
        values = joined(values, test.values)
    return Test(tests[0].fact, values)


def _joined(stated: Iterable[tuple[Test, Location]], report: Report) -> Facts:
    found: dict[str, ValueSet] = {}
    for test, at in stated:
        values = intersect(found[test.fact], test.values) if test.fact in found else test.values
        if is_empty(values):
            message = f"The plan leaves no value of {quoted(test.fact)}."
            report.error(at, "no-value", message, "Correct one of the lines.")
        found[test.fact] = values
    return tuple(found.items())
