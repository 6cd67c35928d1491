"""Namespaces and terms of the graph, as plain strings.

Every `CB_*` term is declared in `ontology/clothbound.ttl`; the terms of other
vocabularies that are used are listed there under "reused".
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

CB = "https://clothbound.example/ns#"
RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#"
RDFS = "http://www.w3.org/2000/01/rdf-schema#"
XSD = "http://www.w3.org/2001/XMLSchema#"
SKOS = "http://www.w3.org/2004/02/skos/core#"
DCTERMS = "http://purl.org/dc/terms/"
PROV = "http://www.w3.org/ns/prov#"
ELI = "http://data.europa.eu/eli/ontology#"
ODRL = "http://www.w3.org/ns/odrl/2/"
TIME = "http://www.w3.org/2006/time#"
QUDT = "http://qudt.org/schema/qudt/"
UNIT = "http://qudt.org/vocab/unit/"

PREFIXES: Mapping[str, str] = MappingProxyType(
    {
        "cb": CB,
        "dcterms": DCTERMS,
        "eli": ELI,
        "odrl": ODRL,
        "prov": PROV,
        "qudt": QUDT,
        "rdf": RDF,
        "rdfs": RDFS,
        "skos": SKOS,
        "time": TIME,
        "unit": UNIT,
        "xsd": XSD,
    }
)

# Datatypes
XSD_STRING = XSD + "string"
XSD_BOOLEAN = XSD + "boolean"
XSD_INTEGER = XSD + "integer"
XSD_DECIMAL = XSD + "decimal"
XSD_DATE = XSD + "date"

# Classes of records
CB_SERVICE = CB + "Service"
CB_AUTHORITY = CB + "Authority"
CB_FACT = CB + "Fact"
CB_VALUE = CB + "Value"
CB_GROUP = CB + "Group"
CB_ASPECT = CB + "Aspect"
CB_ITEM = CB + "Item"
CB_ACCEPTED_WORD = CB + "AcceptedWord"
CB_SENSE = CB + "Sense"
CB_BOOK = CB + "Book"
CB_EDITION = CB + "Edition"
CB_CLAUSE = CB + "Clause"
CB_CLAUSE_WORK = CB + "ClauseWork"
CB_DELEGATION = CB + "Delegation"
CB_DEFINITION = CB + "Definition"
CB_TOLERANCE = CB + "Tolerance"
CB_EXCLUSION = CB + "Exclusion"
CB_RULE = CB + "Rule"
CB_EXEMPTION = CB + "Exemption"

# Classes of the parts of records
CB_RULE_VALUE = CB + "RuleValue"
CB_TEST = CB + "Test"
CB_ALL_OF = CB + "AllOf"
CB_ANY_OF = CB + "AnyOf"
CB_NOT_OF = CB + "NotOf"
CB_CHOICES = CB + "Choices"
CB_RANGES = CB + "Ranges"
CB_INTERVAL = CB + "Interval"
CB_MEASURE = CB + "Measure"
CB_DATUM = CB + "Datum"
CB_POSITION = CB + "Position"
CB_ENTRY = CB + "Entry"

# Where a record was written, and order among its like
CB_FILE = CB + "file"
CB_LINE = CB + "line"
CB_COLUMN = CB + "column"
CB_ORDER = CB + "order"
CB_HAS_ENTRY = CB + "hasEntry"
CB_ON_PROPERTY = CB + "onProperty"

# Properties of the vocabulary: service, authorities, facts, groups, aspects, items
CB_NAMESPACE = CB + "namespace"
CB_RANK = CB + "rank"
CB_FACT_KIND = CB + "factKind"
CB_FAMILY = CB + "family"
CB_ASK = CB + "ask"
CB_UCUM_CODE = CB + "ucumCode"
CB_LADDER = CB + "ladder"
CB_OF_FACT = CB + "ofFact"
CB_SINGULAR = CB + "singular"
CB_ASPECT_KIND = CB + "aspectKind"
CB_WITHIN = CB + "within"
CB_VERB = CB + "verb"
CB_DONE = CB + "done"
CB_EVERYDAY_WORD = CB + "everydayWord"
CB_WORD_FOR = CB + "wordFor"
CB_VERSION = CB + "version"
CB_PART_OF = CB + "partOf"
CB_LAYER = CB + "layer"
CB_PROTECTS = CB + "protects"
CB_CARE_NOTE = CB + "careNote"
CB_IN_USE_FROM = CB + "inUseFrom"
CB_IN_USE_UNTIL = CB + "inUseUntil"

# Properties of books, clauses and what clauses state
CB_AUTHORITY_OF = CB + "authority"
CB_NUMBER = CB + "number"
CB_CLAUSE_KIND = CB + "clauseKind"
CB_HEADING = CB + "heading"
CB_BOOK_PART = CB + "bookPart"
CB_CITES_CLAUSE = CB + "citesClause"
CB_DELEGATES_TO = CB + "delegatesTo"
CB_LIMITED_TO_CLAUSE = CB + "limitedToClause"
CB_LIMITED_TO_ITEM = CB + "limitedToItem"
CB_ALLOWS = CB + "allows"
CB_DEFINES = CB + "defines"
CB_APPLIES_TO = CB + "appliesTo"
CB_ALLOW = CB + "allow"

# Properties of rules
CB_MODALITY = CB + "modality"
CB_COVERS_ITEM = CB + "coversItem"
CB_EXCLUDES_ITEM = CB + "excludesItem"
CB_COVERS_NARROWER = CB + "coversNarrower"
CB_ALTERNATIVES = CB + "alternatives"
CB_ON_ASPECT = CB + "aspect"
CB_SPEAKS_OF = CB + "speaksOf"
CB_WHEN = CB + "when"
CB_EXCEPTION_TO = CB + "exceptionTo"
CB_DISABLES = CB + "disables"
CB_REPAIRS = CB + "repairs"
CB_UNDER_DELEGATION = CB + "underDelegation"
CB_NON_DEROGABLE = CB + "nonDerogable"
CB_RESIDUAL = CB + "residual"
CB_CAUTION = CB + "caution"

# Properties of conditions, value sets, measures and positions
CB_OPERAND = CB + "operand"
CB_TESTS_FACT = CB + "fact"
CB_HAS_VALUE = CB + "value"
CB_COMPLEMENT = CB + "complement"
CB_HAS_INTERVAL = CB + "interval"
CB_LOW = CB + "low"
CB_HIGH = CB + "high"
CB_LOW_OPEN = CB + "lowOpen"
CB_HIGH_OPEN = CB + "highOpen"
CB_EXACT = CB + "exact"
CB_HAS_MEASURE = CB + "measure"
CB_HAS_POSITION = CB + "position"
CB_IN_ORDER = CB + "inOrder"
CB_AS_WRITTEN = CB + "asWritten"
CB_ABOUT = CB + "about"
CB_HAS_TOLERANCE = CB + "tolerance"
CB_HAS_DATUM = CB + "datum"
CB_ALSO = CB + "also"
CB_MEASURED_FROM = CB + "measuredFrom"
CB_MEASURED_TO = CB + "measuredTo"
CB_POSTURE = CB + "posture"
CB_PLACE = CB + "place"
CB_RELATION = CB + "relation"
CB_ON_ITEM = CB + "onItem"
CB_BY_FEATURE = CB + "byFeature"
CB_SIDE = CB + "side"
CB_OFFSET = CB + "offset"
CB_ORIENTATION = CB + "orientation"
CB_SLOT = CB + "slot"

# Derived graph only
CB_FOR_GRADE = CB + "forGrade"

# Reused terms
RDF_TYPE = RDF + "type"
RDF_VALUE = RDF + "value"
SKOS_CONCEPT = SKOS + "Concept"
SKOS_CONCEPT_SCHEME = SKOS + "ConceptScheme"
SKOS_COLLECTION = SKOS + "Collection"
SKOS_PREF_LABEL = SKOS + "prefLabel"
SKOS_ALT_LABEL = SKOS + "altLabel"
SKOS_BROADER = SKOS + "broader"
SKOS_IN_SCHEME = SKOS + "inScheme"
SKOS_MEMBER = SKOS + "member"
SKOS_NOTE = SKOS + "note"
SKOS_DEFINITION = SKOS + "definition"
DCTERMS_IDENTIFIER = DCTERMS + "identifier"
DCTERMS_TITLE = DCTERMS + "title"
DCTERMS_DATE_ACCEPTED = DCTERMS + "dateAccepted"
DCTERMS_IS_PART_OF = DCTERMS + "isPartOf"
DCTERMS_REPLACES = DCTERMS + "replaces"
DCTERMS_IS_REPLACED_BY = DCTERMS + "isReplacedBy"
PROV_AGENT = PROV + "Agent"
PROV_ORGANIZATION = PROV + "Organization"
PROV_ENTITY = PROV + "Entity"
PROV_VALUE = PROV + "value"
PROV_WAS_QUOTED_FROM = PROV + "wasQuotedFrom"
PROV_WAS_DERIVED_FROM = PROV + "wasDerivedFrom"
ELI_LEGAL_RESOURCE = ELI + "LegalResource"
ELI_LEGAL_EXPRESSION = ELI + "LegalExpression"
ELI_SUBDIVISION = ELI + "LegalResourceSubdivision"
ELI_REALIZES = ELI + "realizes"
ELI_IS_PART_OF = ELI + "is_part_of"
ELI_VERSION_DATE = ELI + "version_date"
ELI_IN_FORCE_FROM = ELI + "first_date_entry_in_force"
ELI_IN_FORCE_UNTIL = ELI + "date_no_longer_in_force"
ELI_REPEALS = ELI + "repeals"
ELI_BASED_ON = ELI + "based_on"
ODRL_RULE = ODRL + "Rule"
ODRL_PERMISSION = ODRL + "Permission"
ODRL_PROHIBITION = ODRL + "Prohibition"
ODRL_DUTY = ODRL + "Duty"
ODRL_ACTION_CLASS = ODRL + "Action"
ODRL_ACTION = ODRL + "action"
ODRL_TARGET = ODRL + "target"
TIME_PROPER_INTERVAL = TIME + "ProperInterval"
TIME_INSTANT = TIME + "Instant"
TIME_HAS_TIME = TIME + "hasTime"
TIME_HAS_BEGINNING = TIME + "hasBeginning"
TIME_HAS_END = TIME + "hasEnd"
TIME_IN_XSD_DATE = TIME + "inXSDDate"
QUDT_QUANTITY_VALUE = QUDT + "QuantityValue"
QUDT_NUMERIC_VALUE = QUDT + "numericValue"
QUDT_HAS_UNIT = QUDT + "hasUnit"
