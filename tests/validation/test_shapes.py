"""Each shape (SHACL Core 1.0) with a graph that fits and one that does not.

The graph that fits is a whole base. In each bad one a single property of a single node is changed, and
the finding must be of that shape, at the line of the record that the node belongs to.
"""

import pytest
from rdflib import RDF, SH, Graph, URIRef

import kb.vocabulary as v
from kb.graph import Literal, Quad, format_nquads, to_quads
from kb.validation import load_shapes, validate
from tests.graph.graph_bases import hand_made

NS = "https://sls.example/"
SHAPE = "https://clothbound.example/shapes#"


def text(value: str) -> Literal:
    return Literal(value)


def number(value: str, datatype: str = v.XSD_INTEGER) -> Literal:
    return Literal(value, datatype)


def day(value: str) -> Literal:
    return Literal(value, v.XSD_DATE)


NOWHERE = NS + "nowhere"
CAP, PEAK, BADGE = NS + "item/cap", NS + "item/peak", NS + "item/badge"
PLACE, TOWN, ASHORE = NS + "fact/place", NS + "fact/place/town", NS + "fact/place/ashore"
OLD, NEW = NS + "clause/order/2019/4.12", NS + "clause/order/2024/4.12"
EDITION = NS + "edition/order/2024"
RULE = NS + "rule/order/2024/"
DEFINITION = NS + "definition/order/2024/1%2F2/1"
TOLERANCE = NS + "tolerance/order/2024/1%2F2/1"
POSITION = RULE + "r5/value/position/1"
LID, SENSE = NS + "word/cap/lid", NS + "sense/WordNet/3.0/02954340-n"
MEASURE = RULE + "r3/value/measure"

# code | node | property | what it is changed to (nothing: left out) | line of the finding
BAD = [
    ("no-file", CAP, v.CB_FILE, [], 0),
    ("no-line", CAP, v.CB_LINE, [], 0),
    ("no-order", CAP, v.CB_ORDER, [], 41),
    ("label", CAP, v.SKOS_PREF_LABEL, [], 41),
    ("label", CAP, v.SKOS_PREF_LABEL, [text("cap"), text("hat")], 41),
    ("label-repeated", TOWN, v.SKOS_ALT_LABEL, [text("in town")], 21),
    ("empty-other-label", CAP, v.SKOS_ALT_LABEL, [text("")], 41),
    ("everyday-word", CAP, v.CB_EVERYDAY_WORD, [text("")], 41),
    ("rank", NS + "authority/station", v.CB_RANK, [number("-1")], 4),
    ("fact-kind", PLACE, v.CB_FACT_KIND, [text("guess")], 19),
    ("fact-family", PLACE, v.CB_FAMILY, [text("mood")], 19),
    ("fact-question", PLACE, v.CB_ASK, [text("")], 19),
    ("fact-unit", NS + "fact/temperature", v.CB_UCUM_CODE, [], 22),
    ("value-owner", TOWN, v.SKOS_IN_SCHEME, [CAP], 21),
    ("value-within", TOWN, v.SKOS_BROADER, [CAP], 21),
    ("value-within-itself", ASHORE, v.SKOS_BROADER, [TOWN], 20),
    ("value-ladder", NS + "grade/H1", v.CB_LADDER, [NOWHERE], 10),
    ("group-fact", NS + "group/out", v.CB_OF_FACT, [CAP], 27),
    ("group-empty", NS + "group/out", v.SKOS_MEMBER, [], 27),
    ("group-member", NS + "group/out", v.SKOS_MEMBER, [TOWN, NS + "grade/H1"], 27),
    ("aspect-kind", NS + "aspect/fit", v.CB_ASPECT_KIND, [text("mood")], 31),
    ("aspect-within", NS + "aspect/reach", v.CB_WITHIN, [NOWHERE], 32),
    ("aspect-within-itself", NS + "aspect/fit", v.CB_WITHIN, [NS + "aspect/reach"], 31),
    ("item-kind-of", CAP, v.SKOS_BROADER, [NS + "item/hat"], 41),
    ("item-kind-of-itself", CAP, v.SKOS_BROADER, [BADGE], 41),
    ("item-part-of", PEAK, v.CB_PART_OF, [CAP, BADGE], 42),
    ("item-part-and-kind", BADGE, v.CB_PART_OF, [CAP], 43),
    ("item-in-use", PEAK, v.CB_IN_USE_UNTIL, [day("2024-03-01")], 42),
    ("accepted-word", LID, v.PROV_VALUE, [], 44),
    ("accepted-word-item", LID, v.CB_WORD_FOR, [NOWHERE], 44),
    ("accepted-word-day", LID, v.DCTERMS_DATE_ACCEPTED, [text("2024")], 44),
    ("accepted-word-origin", LID, v.PROV_WAS_DERIVED_FROM, [NOWHERE, SENSE], 44),
    ("sense-id", SENSE, v.DCTERMS_IDENTIFIER, [], 0),
    ("sense-thesaurus", NS + "thesaurus/WordNet/3.0", v.CB_VERSION, [], 0),
    ("concept-and-scheme", CAP, v.RDF_TYPE, [v.CB_ITEM, v.SKOS_CONCEPT, v.SKOS_COLLECTION], 41),
    ("book-authority", NS + "book/order", v.CB_AUTHORITY_OF, [CAP], 50),
    ("edition-book", EDITION, v.ELI_REALIZES, [NOWHERE], 52),
    ("edition-dates", EDITION, v.ELI_IN_FORCE_FROM, [text("2024")], 52),
    ("edition-dates", EDITION, v.ELI_IN_FORCE_UNTIL, [day("2024-03-01")], 52),
    ("clause-edition", OLD, v.DCTERMS_IS_PART_OF, [NS + "book/order"], 55),
    ("clause-number", OLD, v.CB_NUMBER, [number("412")], 55),
    ("clause-text", OLD, v.PROV_VALUE, [text("")], 55),
    ("clause-kind", OLD, v.CB_CLAUSE_KIND, [text("poem")], 55),
    ("clause-dates", OLD, v.ELI_IN_FORCE_FROM, [], 55),
    ("clause-never-in-force", OLD, v.ELI_IN_FORCE_UNTIL, [day("2000-01-01")], 55),
    ("clause-replaces", NEW, v.DCTERMS_REPLACES, [CAP], 56),
    ("clause-repeals", NEW, v.ELI_REPEALS, [NOWHERE], 56),
    ("clause-replaced-by", OLD, v.DCTERMS_IS_REPLACED_BY, [NOWHERE], 55),
    ("clause-without-rule", OLD, v.CB_CLAUSE_KIND, [text("rule")], 55),
    ("clause-book", NS + "clause/order/4.12", v.ELI_IS_PART_OF, [CAP], 0),
    ("cites-clause", RULE + "r1", v.CB_CITES_CLAUSE, [NOWHERE], 70),
    ("delegation-to", NS + "delegation/d1", v.CB_DELEGATES_TO, [CAP], 58),
    ("delegation-clause", NS + "delegation/d1", v.CB_LIMITED_TO_CLAUSE, [CAP], 58),
    ("delegation-item", NS + "delegation/d1", v.CB_LIMITED_TO_ITEM, [OLD], 58),
    ("delegation-allows", NS + "delegation/d1", v.CB_ALLOWS, [text("all")], 58),
    ("defines-term", DEFINITION, v.CB_DEFINES, [NOWHERE], 59),
    ("defines-no-term", DEFINITION, v.CB_DEFINES, [PLACE], 59),
    ("definition-condition", DEFINITION, v.CB_WHEN, [], 59),
    ("tolerance-range", TOLERANCE, v.CB_APPLIES_TO, [], 60),
    ("tolerance-allow", TOLERANCE, v.CB_ALLOW, [], 60),
    ("tolerance-negative", TOLERANCE + "/allow", v.QUDT_NUMERIC_VALUE, [number("-1", v.XSD_DECIMAL)], 60),
    ("rule-modality", RULE + "r1", v.CB_MODALITY, [text("should")], 70),
    ("rule-item", RULE + "r1", v.CB_COVERS_ITEM, [], 70),
    ("rule-item", RULE + "r1", v.CB_COVERS_ITEM, [NS + "item/hat"], 70),
    ("rule-except-item", RULE + "r4", v.CB_EXCLUDES_ITEM, [PLACE], 73),
    ("rule-item-in-and-out", RULE + "r4", v.CB_EXCLUDES_ITEM, [CAP], 73),
    ("rule-narrower", RULE + "r1", v.CB_COVERS_NARROWER, [text("yes")], 70),
    ("rule-alternatives", RULE + "r4", v.CB_ALTERNATIVES, [text("some")], 73),
    ("rule-aspect", RULE + "r1", v.CB_ON_ASPECT, [CAP], 70),
    ("rule-value", RULE + "r1", v.CB_SPEAKS_OF, [], 70),
    ("rule-condition", RULE + "r2", v.CB_WHEN, [RULE + "r2/when", RULE + "r4/when"], 71),
    ("rule-authority", RULE + "r1", v.CB_AUTHORITY_OF, [], 70),
    ("rule-dates", RULE + "r1", v.ELI_IN_FORCE_FROM, [text("soon")], 70),
    ("rule-never-in-force", RULE + "r2", v.ELI_IN_FORCE_UNTIL, [day("2024-03-01")], 71),
    ("rule-flag", RULE + "r1", v.CB_NON_DEROGABLE, [], 70),
    ("rule-residual", RULE + "r1", v.CB_RESIDUAL, [], 70),
    ("exception-to", RULE + "r2", v.CB_EXCEPTION_TO, [RULE + "r9"], 71),
    ("exception-cycle", RULE + "r1", v.CB_EXCEPTION_TO, [RULE + "r2"], 70),
    ("disables", RULE + "r4", v.CB_DISABLES, [OLD], 73),
    ("disables-cycle", RULE + "r1", v.CB_DISABLES, [RULE + "r4"], 70),
    ("repairs", RULE + "r4", v.CB_REPAIRS, [RULE + "r9"], 73),
    ("repairs-cycle", RULE + "r4", v.CB_REPAIRS, [RULE + "r4"], 73),
    ("under-delegation", RULE + "r2", v.CB_UNDER_DELEGATION, [NS + "delegation/d9"], 71),
    ("rule-class", RULE + "r1", v.RDF_TYPE, [v.CB_RULE, v.ODRL_DUTY, v.ODRL_PERMISSION], 70),
    ("rule-value-kind", RULE + "r1/value", v.RDF_TYPE, [v.CB_RULE_VALUE], 70),
    ("rule-no-value", RULE + "r1/value", v.CB_HAS_VALUE, [], 70),
    ("test-fact", RULE + "r2/when/2/1", v.CB_TESTS_FACT, [NS + "fact/mood"], 71),
    ("test-values", RULE + "r2/when/2/1", v.RDF_TYPE, [v.CB_TEST], 71),
    ("not-of", RULE + "r2/when/2/2", v.CB_OPERAND, [], 71),
    ("interval-low", MEASURE + "/interval", v.CB_LOW, [text("6.35")], 72),
    (
        "interval-high",
        MEASURE + "/interval",
        v.CB_HIGH,
        [MEASURE + "/tolerance", MEASURE + "/interval/high"],
        72,
    ),
    ("quantity-exact", MEASURE + "/tolerance", v.CB_EXACT, [], 72),
    ("quantity-decimal", MEASURE + "/interval/low", v.QUDT_NUMERIC_VALUE, [text("6.35")], 72),
    ("measure-text", MEASURE, v.CB_AS_WRITTEN, [], 72),
    ("measure-unit", MEASURE, v.CB_UCUM_CODE, [], 72),
    ("measure-interval", MEASURE, v.CB_HAS_INTERVAL, [], 72),
    ("position-place", POSITION, v.CB_PLACE, [], 74),
    ("position-relation", POSITION, v.CB_RELATION, [], 74),
    ("position-on", POSITION, v.CB_ON_ITEM, [PLACE], 74),
    ("position-feature", POSITION, v.CB_BY_FEATURE, [NOWHERE], 74),
]


@pytest.fixture(scope="module")
def shapes():
    return load_shapes()


@pytest.fixture(scope="module")
def good() -> list[Quad]:
    return list(to_quads(hand_made()))


def shape_with(shapes: Graph, code: str) -> Graph:
    """One shape alone: it must find the mistake without help from others."""
    return shapes.cbd(URIRef(SHAPE + code))


def changed(quads: list[Quad], subject: str, predicate: str, objects: list) -> bytes:
    graph = next((quad.graph for quad in quads if quad.subject == subject), None)
    assert graph is not None, f"the good graph has no {subject}"
    kept = [quad for quad in quads if (quad.subject, quad.predicate) != (subject, predicate)]
    return format_nquads([*kept, *(Quad(subject, predicate, found, graph) for found in objects)])


def test_the_good_graph_fits_every_shape(good, shapes):
    assert validate(format_nquads(good), shapes) == ()


@pytest.mark.parametrize(
    ("code", "subject", "predicate", "objects", "line"), BAD, ids=[case[0] for case in BAD]
)
def test_a_bad_graph_is_found_at_its_line(good, shapes, code, subject, predicate, objects, line):
    problems = validate(changed(good, subject, predicate, objects), shape_with(shapes, code))
    found = [problem for problem in problems if problem.code == code]
    assert found, problems
    if line:
        assert line in {problem.at.line for problem in found}
        assert {problem.at.file for problem in found} == {"books/order.yaml"}
        assert "cycle" in code or "itself" in code or len({problem.at for problem in found}) == 1


def named_shapes(shapes: Graph) -> set[URIRef]:
    return {shape for kind in (SH.PropertyShape, SH.NodeShape) for shape in shapes.subjects(RDF.type, kind)}


def test_every_shape_is_tested(shapes):
    named = {str(shape).removeprefix(SHAPE) for shape in named_shapes(shapes)}
    assert named == {code for code, *_ in BAD}
    assert len(named) > 70


def test_every_shape_has_a_target_and_a_plain_message(shapes):
    """Plain for a writer of rule books, who knows nothing of RDF."""
    for shape in named_shapes(shapes):
        assert list(shapes.objects(shape, SH.targetClass)), shape
        message = str(shapes.value(shape, SH.message))
        assert message[0].isupper() or message[0] == "`"
        assert message.endswith(".")
        for word in ("sh:", "cb:", "IRI", "node", "literal", "datatype", "triple", "property", "None"):
            assert word not in message, message


def test_the_shapes_keep_to_the_core():
    """SHACL 1.0, sections 4 (core constraints) and 2.3.1 (property paths): no SPARQL, scripts or patterns."""
    shapes = load_shapes()
    predicates = {str(predicate).removeprefix(str(SH)) for predicate in shapes.predicates()}
    assert not predicates & {"sparql", "select", "ask", "js", "pattern", "rule", "entailment", "prefixes"}
