"""The records of a rule base. All are frozen; ids are short names, unique within their kind.

Terms follow SKOS (items), ELI (books, editions, clauses), deontic logic (modalities)
and the trade. IRIs are made from ids in `kb.graph` only.
"""

import datetime
from collections.abc import Iterable
from fractions import Fraction
from typing import Literal

import msgspec

from kb.errors import Location
from kb.model.conditions import ALWAYS, Condition
from kb.model.values import OTHER, Choices, Interval, ValueSet, others_in

Modality = Literal["must", "must_not", "may", "need_not"]
FactKind = Literal["choice", "scale", "yes_no", "quantity", "date"]
FactFamily = Literal[
    "grade",
    "branch",
    "rig",
    "qualification",
    "appointment",
    "waiver",
    "authorisation",
    "worn",
    "term",
    "situation",
]
AspectKind = Literal["act", "choice", "manner", "measure", "count", "position", "order"]
ClauseKind = Literal["rule", "definition", "purpose", "procedure", "information"]

# Aspects of what somebody owns: who asks about them does not take the thing as worn.
OWNED_ASPECTS = frozenset({"possession", "kit-count"})


class Named(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """What every record with a label has."""

    id: str
    label: str
    other_labels: tuple[str, ...] = ()
    at: Location


class Service(Named, frozen=True, omit_defaults=True, kw_only=True):
    namespace: str


class Authority(Named, frozen=True, omit_defaults=True, kw_only=True):
    """`rank` 0 is the highest; equal ranks are possible."""

    rank: int


class FactValue(Named, frozen=True, omit_defaults=True, kw_only=True):
    """One value of a choice or scale; `within` is a broader value (pier within ashore); `group` a ladder."""

    everyday: tuple[str, ...] = ()
    within: str | None = None
    group: str | None = None
    note: str | None = None


class Fact(Named, frozen=True, omit_defaults=True, kw_only=True):
    """Something a case states. `values` are in order for a scale; `unit` is a UCUM code for a quantity."""

    kind: FactKind
    family: FactFamily = "situation"
    ask: str
    values: tuple[FactValue, ...] = ()
    unit: str | None = None


class Group(Named, frozen=True, omit_defaults=True, kw_only=True):
    """A named set of values of one fact: a ladder, "petty officers", "cold places"."""

    fact: str
    members: tuple[str, ...]
    one: str | None = None


class Aspect(Named, frozen=True, omit_defaults=True, kw_only=True):
    """What a rule may say about an item. `verb`/`done` ("pierce"/"pierced") for an act.

    An act has the values yes and no; `wear` is an act. A `manner` has one act per text under it,
    whose `within` is the manner ("care" holds "care:hand-wash").
    """

    kind: AspectKind
    within: str | None = None
    verb: str | None = None
    done: str | None = None
    values: tuple[FactValue, ...] = ()


class Item(Named, frozen=True, omit_defaults=True, kw_only=True):
    """A SKOS concept for whatever a dress rule can speak about."""

    broader: tuple[str, ...]
    everyday: tuple[str, ...] = ()
    part_of: str | None = None
    layer: str | None = None
    protects: tuple[str, ...] = ()
    care_note: str | None = None
    valid_from: datetime.date | None = None
    valid_until: datetime.date | None = None
    note: str | None = None


class WordOrigin(msgspec.Struct, frozen=True, kw_only=True):
    """Where a word was found: the name and version of a thesaurus, and the id of the sense there."""

    thesaurus: str
    version: str
    sense: str


class SuggestedWord(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """An everyday word of an item that a writer decided on, and the day.

    Without an `origin` it is the writer's own; `meaning` is what the thesaurus says that the sense means.
    A base has the accepted ones, each of them also among the `everyday` words of its item.
    """

    item: str
    word: str
    on: datetime.date
    origin: WordOrigin | None = None
    meaning: str | None = None
    at: Location


class Book(Named, frozen=True, omit_defaults=True, kw_only=True):
    authority: str


class Edition(Named, frozen=True, omit_defaults=True, kw_only=True):
    """`id` is "<book>/<edition>"; `valid_until` is the first day out of force."""

    book: str
    valid_from: datetime.date
    valid_until: datetime.date | None = None


class Clause(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """One clause of one edition; `id` is "<edition id>/<number>". Amendments are already in `valid_until`."""

    id: str
    edition: str
    number: str
    text: str
    kind: ClauseKind
    at: Location
    heading: str | None = None
    part: str | None = None
    valid_from: datetime.date
    valid_until: datetime.date | None = None
    replaces: tuple[str, ...] = ()
    repeals: tuple[str, ...] = ()
    replaced_by: str | None = None
    note: str | None = None


class Delegation(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """A clause lets an authority (or a higher one) depart from clauses and items of the base.

    Empty `clauses` means any clause, empty `items` any item. `allows` "stricter" lets it only close values.
    """

    id: str
    clause: str
    to: str
    clauses: tuple[str, ...] = ()
    items: tuple[str, ...] = ()
    allows: Literal["stricter", "anything"] = "anything"
    at: Location


class Definition(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """A clause says when a term (a fact of family "term") holds."""

    term: str
    condition: Condition
    clause: str
    at: Location


class Tolerance(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """How far "about" may be off, in base units, for nominal lengths within `applies`."""

    unit: str
    applies: Interval
    allow: Fraction
    clause: str
    at: Location


class Datum(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """What a measure is taken from and to, and the posture it is taken in."""

    measured_from: str | None = None
    measured_to: str | None = None
    posture: str | None = None


class Measure(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """A measure as written, and its exact meaning in the base unit (mm, days, 1, ...).

    `interval` holds the written bounds without tolerance; `about` with `tolerance` None cannot be
    judged. `also` is the same measure as the text gives it in a second unit.
    """

    text: str
    unit: str
    interval: Interval
    about: bool = False
    tolerance: Fraction | None = None
    datum: Datum | None = None
    also: "Measure | None" = None


class Position(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """A place on a garment. `id` is made from the content, so equal places are one value."""

    id: str
    relation: str
    on: str
    feature: str | None = None
    side: str | None = None
    offset: Measure | None = None
    orientation: str | None = None
    slot: str | None = None
    text: str | None = None


class RuleValue(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """The values a rule speaks about, and how the text writes them."""

    values: ValueSet
    measure: Measure | None = None
    positions: tuple[Position, ...] = ()
    order: tuple[str, ...] = ()


class Scope(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """The items a rule covers: `items` and what is narrower, less `excluding` and what is narrower.

    With `alternatives` the rule is one duty over a set: "one" exactly one of `items`, "any" at least one.
    """

    items: tuple[str, ...]
    excluding: tuple[str, ...] = ()
    narrower: bool = True
    alternatives: Literal["one", "any"] | None = None


class Rule(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """A dress rule; `id` is "<edition id>/<name>". `valid_*` is already cut to its clause."""

    id: str
    modality: Modality
    scope: Scope
    aspect: str
    value: RuleValue
    condition: Condition = ALWAYS
    clause: str
    authority: str
    valid_from: datetime.date
    valid_until: datetime.date | None = None
    exception_to: tuple[str, ...] = ()
    disables: tuple[str, ...] = ()
    repairs: str | None = None
    delegation: str | None = None
    non_derogable: bool = False
    residual: bool = False
    note: str | None = None
    caution: str | None = None
    at: Location


class RuleBase(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """Everything the rule books say. Tuples keep the order of the sources."""

    service: Service
    authorities: tuple[Authority, ...]
    facts: tuple[Fact, ...]
    groups: tuple[Group, ...]
    aspects: tuple[Aspect, ...]
    items: tuple[Item, ...]
    books: tuple[Book, ...]
    editions: tuple[Edition, ...]
    clauses: tuple[Clause, ...]
    delegations: tuple[Delegation, ...]
    definitions: tuple[Definition, ...]
    tolerances: tuple[Tolerance, ...]
    exclusions: tuple[Condition, ...]
    rules: tuple[Rule, ...]
    accepted_words: tuple[SuggestedWord, ...] = ()


class Case(msgspec.Struct, frozen=True, omit_defaults=True, kw_only=True):
    """What is known: for each fact the values it may still have. A fact not listed is unknown.

    `alone` says that of all items only those of the question (and those listed as worn) are worn.
    """

    as_of: datetime.date
    facts: tuple[tuple[str, ValueSet], ...] = ()
    alone: bool = False


def is_in_force(one: Rule | Clause | Edition, day: datetime.date) -> bool:
    """Whether a rule, a clause or an edition holds on a day: from its first, before the one it ends."""
    return one.valid_from <= day and (one.valid_until is None or day < one.valid_until)


def leaves_room(claim: ValueSet, rules: Iterable[Rule]) -> bool:
    """Whether a told distance is one of several that the place allows: "about 9 in", "1 to 2 in"."""
    distance = any(letter.isdigit() for other in others_in(claim) for letter in other.removeprefix(OTHER))
    if not distance or not isinstance(claim, Choices):
        return False
    offsets = (p.offset for rule in rules for p in rule.value.positions if p.id in claim.members)
    return any(o is not None and (o.tolerance or o.interval.low != o.interval.high) for o in offsets)
