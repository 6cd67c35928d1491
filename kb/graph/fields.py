"""The plain fields of every record and the properties that carry them; read in both directions.

What has a shape of its own (conditions, value sets, measures) is in `kb.graph.writing` and
`kb.graph.reading`.
"""

from __future__ import annotations

import datetime
from typing import Any, NamedTuple

import kb.vocabulary as v
from kb.graph.names import Names
from kb.graph.terms import Literal


class Field(NamedTuple):
    """An attribute, its property, and what it holds.

    `kind` is "text", "date", "integer", "flag", or the kind of record that is referred to. A tuple is
    `many`. `also` are further properties that repeat the value for readers who know only those.
    """

    attribute: str
    predicate: str
    kind: str = "text"
    many: bool = False
    also: tuple[str, ...] = ()


_NAMED = (
    Field("label", v.SKOS_PREF_LABEL),
    Field("other_labels", v.SKOS_ALT_LABEL, many=True),
)
_IN_FORCE = (
    Field("valid_from", v.ELI_IN_FORCE_FROM, "date"),
    Field("valid_until", v.ELI_IN_FORCE_UNTIL, "date"),
)
_NOTE = Field("note", v.SKOS_NOTE)

SERVICE = (*_NAMED, Field("namespace", v.CB_NAMESPACE))
AUTHORITY = (*_NAMED, Field("rank", v.CB_RANK, "integer"))
FACT = (
    *_NAMED,
    Field("kind", v.CB_FACT_KIND),
    Field("family", v.CB_FAMILY),
    Field("ask", v.CB_ASK),
    Field("unit", v.CB_UCUM_CODE),
)
_EVERYDAY = Field("everyday", v.CB_EVERYDAY_WORD, many=True)
VALUE = (*_NAMED, _EVERYDAY, Field("group", v.CB_LADDER, "group"), _NOTE)
GROUP = (*_NAMED, Field("fact", v.CB_OF_FACT, "fact"), Field("one", v.CB_SINGULAR))
ASPECT = (
    *_NAMED,
    Field("kind", v.CB_ASPECT_KIND),
    Field("within", v.CB_WITHIN, "aspect"),
    Field("verb", v.CB_VERB),
    Field("done", v.CB_DONE),
)
ITEM = (
    *_NAMED,
    Field("broader", v.SKOS_BROADER, "item", many=True),
    _EVERYDAY,
    Field("part_of", v.CB_PART_OF, "item"),
    Field("layer", v.CB_LAYER),
    Field("protects", v.CB_PROTECTS, many=True),
    Field("care_note", v.CB_CARE_NOTE),
    Field("valid_from", v.CB_IN_USE_FROM, "date"),
    Field("valid_until", v.CB_IN_USE_UNTIL, "date"),
    _NOTE,
)
ACCEPTED_WORD = (
    Field("item", v.CB_WORD_FOR, "item"),
    Field("word", v.PROV_VALUE),
    Field("on", v.DCTERMS_DATE_ACCEPTED, "date"),
    Field("meaning", v.SKOS_DEFINITION),
)
_TITLED = (Field("label", v.SKOS_PREF_LABEL, also=(v.DCTERMS_TITLE,)), _NAMED[1])
BOOK = (*_TITLED, Field("authority", v.CB_AUTHORITY_OF, "authority"))
EDITION = (
    *_TITLED,
    Field("book", v.ELI_REALIZES, "book"),
    Field("valid_from", v.ELI_IN_FORCE_FROM, "date", also=(v.ELI_VERSION_DATE,)),
    _IN_FORCE[1],
)
CLAUSE = (
    Field("edition", v.DCTERMS_IS_PART_OF, "edition", also=(v.PROV_WAS_QUOTED_FROM,)),
    Field("number", v.CB_NUMBER),
    Field("text", v.PROV_VALUE),
    Field("kind", v.CB_CLAUSE_KIND),
    Field("heading", v.CB_HEADING),
    Field("part", v.CB_BOOK_PART),
    *_IN_FORCE,
    Field("replaces", v.DCTERMS_REPLACES, "clause", many=True),
    Field("repeals", v.ELI_REPEALS, "clause", many=True),
    Field("replaced_by", v.DCTERMS_IS_REPLACED_BY, "clause"),
    _NOTE,
)
_CITES = Field("clause", v.CB_CITES_CLAUSE, "clause")
DELEGATION = (
    _CITES,
    Field("to", v.CB_DELEGATES_TO, "authority"),
    Field("clauses", v.CB_LIMITED_TO_CLAUSE, "clause", many=True),
    Field("items", v.CB_LIMITED_TO_ITEM, "item", many=True),
    Field("allows", v.CB_ALLOWS),
)
DEFINITION = (_CITES, Field("term", v.CB_DEFINES, "fact"))
TOLERANCE = (_CITES, Field("unit", v.CB_UCUM_CODE))
RULE = (
    _CITES,
    Field("modality", v.CB_MODALITY),
    Field("aspect", v.CB_ON_ASPECT, "aspect"),
    Field("authority", v.CB_AUTHORITY_OF, "authority"),
    *_IN_FORCE,
    Field("exception_to", v.CB_EXCEPTION_TO, "rule", many=True),
    Field("disables", v.CB_DISABLES, "rule", many=True),
    Field("repairs", v.CB_REPAIRS, "rule"),
    Field("delegation", v.CB_UNDER_DELEGATION, "delegation"),
    Field("non_derogable", v.CB_NON_DEROGABLE, "flag"),
    Field("residual", v.CB_RESIDUAL, "flag"),
    _NOTE,
    Field("caution", v.CB_CAUTION),
)
SCOPE = (
    Field("items", v.CB_COVERS_ITEM, "item", many=True),
    Field("excluding", v.CB_EXCLUDES_ITEM, "item", many=True),
    Field("narrower", v.CB_COVERS_NARROWER, "flag"),
    Field("alternatives", v.CB_ALTERNATIVES),
)
RULE_VALUE = (Field("order", v.CB_IN_ORDER, "item", many=True),)
INTERVAL = (Field("low_open", v.CB_LOW_OPEN, "flag"), Field("high_open", v.CB_HIGH_OPEN, "flag"))
MEASURE = (
    Field("text", v.CB_AS_WRITTEN),
    Field("unit", v.CB_UCUM_CODE),
    Field("about", v.CB_ABOUT, "flag"),
)
DATUM = (
    Field("measured_from", v.CB_MEASURED_FROM),
    Field("measured_to", v.CB_MEASURED_TO),
    Field("posture", v.CB_POSTURE),
)
POSITION = (
    Field("relation", v.CB_RELATION),
    Field("on", v.CB_ON_ITEM, "item"),
    Field("feature", v.CB_BY_FEATURE, "item"),
    Field("side", v.CB_SIDE),
    Field("orientation", v.CB_ORIENTATION),
    Field("slot", v.CB_SLOT),
    Field("text", v.CB_AS_WRITTEN),
)


def flag(value: bool) -> Literal:
    return Literal("true" if value else "false", v.XSD_BOOLEAN)


def integer(value: int) -> Literal:
    return Literal(str(value), v.XSD_INTEGER)


def encode(names: Names, kind: str, value: Any) -> str | Literal:
    """A value of a field as an object of a triple."""
    if kind == "text":
        return Literal(value)
    if kind == "date":
        return Literal(value.isoformat(), v.XSD_DATE)
    if kind == "flag":
        return flag(value)
    if kind == "integer":
        return integer(value)
    return names.of(kind, value)


def decode(names: Names, kind: str, found: str | Literal) -> Any:
    """The value of a field from the object of a triple; `ValueError` where it does not fit."""
    if not isinstance(found, Literal):
        return names.id_of(kind, found)
    if kind == "text":
        return found.value
    if kind == "date":
        return datetime.date.fromisoformat(found.value)
    if kind == "integer":
        return int(found.value)
    if kind == "flag" and found.value in ("true", "false"):
        return found.value == "true"
    raise ValueError(f"{found.value!r} is no {kind}")
