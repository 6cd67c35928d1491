"""The ontology, the constants, the shapes and the context speak of the same terms."""

import json
import re
from pathlib import Path

import pytest
import rdflib
from rdflib import OWL, RDF, RDFS, URIRef

import kb.vocabulary as v
from kb.files import data_folder
from kb.graph import to_quads
from tests.graph.graph_bases import hand_made

FOLDER = data_folder("ontology")
NAMESPACES = set(v.PREFIXES.values())


def load(name: str) -> rdflib.Graph:
    return rdflib.Graph().parse(FOLDER / name, format="turtle")


@pytest.fixture(scope="module")
def ontology() -> rdflib.Graph:
    return load("clothbound.ttl")


@pytest.fixture(scope="module")
def constants() -> set[str]:
    values = {value for name, value in vars(v).items() if name.isupper() and isinstance(value, str)}
    return {value for value in values if value not in NAMESPACES and not value.startswith(v.XSD)}


def declared(ontology: rdflib.Graph) -> set[str]:
    kinds = (OWL.Class, OWL.ObjectProperty, OWL.DatatypeProperty)
    return {str(term) for kind in kinds for term in ontology.subjects(RDF.type, kind)}


def reused(ontology: rdflib.Graph) -> set[str]:
    return {str(term) for term in ontology.subjects(RDFS.isDefinedBy)}


def test_every_constant_is_declared_and_every_declared_term_has_a_constant(ontology, constants):
    assert declared(ontology) == {term for term in constants if term.startswith(v.CB)}
    assert reused(ontology) == {term for term in constants if not term.startswith(v.CB)}


def test_every_term_in_the_data_is_declared(ontology):
    """And every property that is declared is in the data of a base that uses every field."""
    used = set()
    for quad in to_quads(hand_made()):
        used.add(quad.predicate)
        if quad.predicate == v.RDF_TYPE:
            used.add(quad.object)
    known = declared(ontology) | reused(ontology)
    assert used <= known
    assert known - used == {v.ODRL_RULE}, "a superclass only"


def test_every_constant_is_used_by_the_code(constants):
    package = Path(v.__file__).parent
    texts = [path.read_text() for path in package.rglob("*.py") if path.name != "vocabulary.py"]
    words = set(re.findall(r"\bv\.([A-Z_]+)\b", "\n".join(texts)))
    names = {name for name, value in vars(v).items() if isinstance(value, str) and value in constants}
    assert names - words == {"ODRL_RULE"}


def test_every_term_has_a_label_and_a_comment(ontology):
    for term in declared(ontology):
        assert ontology.value(URIRef(term), RDFS.label), term
        assert str(ontology.value(URIRef(term), RDFS.comment)).endswith("."), term


def test_classes_are_written_with_a_capital_and_properties_without(ontology):
    for term in declared(ontology):
        is_class = (URIRef(term), RDF.type, OWL.Class) in ontology
        assert term.removeprefix(v.CB)[0].isupper() == is_class, term


def test_objects_in_the_data_are_of_the_declared_kind(ontology):
    """Object properties lead to IRIs, datatype properties to literals of the declared datatype."""
    for quad in to_quads(hand_made()):
        if not quad.predicate.startswith(v.CB):
            continue
        term = URIRef(quad.predicate)
        if (term, RDF.type, OWL.ObjectProperty) in ontology:
            assert isinstance(quad.object, str), quad
        else:
            assert quad.object.datatype == str(ontology.value(term, RDFS.range)), quad


def test_subjects_and_objects_are_of_the_declared_classes(ontology):
    types: dict[str, set[str]] = {}
    for quad in to_quads(hand_made()):
        if quad.predicate == v.RDF_TYPE:
            types.setdefault(quad.subject, set()).add(quad.object)
    checked = 0
    for quad in to_quads(hand_made()):
        domain = ontology.value(URIRef(quad.predicate), RDFS.domain)
        range_ = ontology.value(URIRef(quad.predicate), RDFS.range)
        if domain is not None:
            checked += 1
            assert str(domain) in types[quad.subject], quad
        if range_ is not None and isinstance(quad.object, str) and range_ != RDF.Property:
            checked += 1
            assert str(range_) in types[quad.object], quad
    assert checked > 200


def test_prefixes_are_the_same_everywhere():
    pattern = re.compile(r"^@prefix (\w+): <([^>]+)> \.$", re.MULTILINE)
    context = json.loads((FOLDER / "context.jsonld").read_text())["@context"]
    assert {name: iri for name, iri in context.items() if isinstance(iri, str)} == dict(v.PREFIXES)
    for file in FOLDER.glob("*.ttl"):
        for name, iri in pattern.findall(file.read_text()):
            assert v.PREFIXES.get(name, iri) == iri, (file.name, name)


def test_the_context_types_each_property_as_the_ontology_does(ontology):
    context = json.loads((FOLDER / "context.jsonld").read_text())["@context"]
    typed = {name: term["@type"] for name, term in context.items() if isinstance(term, dict)}
    for term in ontology.subjects(RDF.type, OWL.ObjectProperty):
        assert typed["cb:" + str(term).removeprefix(v.CB)] == "@id"
    for term in ontology.subjects(RDF.type, OWL.DatatypeProperty):
        datatype = str(ontology.value(term, RDFS.range)).removeprefix(v.XSD)
        expected = None if datatype == "string" else f"xsd:{datatype}"
        assert typed.get("cb:" + str(term).removeprefix(v.CB)) == expected


@pytest.mark.parametrize("name", ["shapes.ttl", "alignments.ttl", "clothbound.ttl"])
def test_our_terms_in_the_turtle_files_are_declared_and_nothing_is_imported(name, ontology):
    graph = load(name)
    ours = {str(term) for triple in graph for term in triple if str(term).startswith(v.CB)}
    assert ours
    assert ours <= declared(ontology)
    assert not list(graph.triples((None, OWL.imports, None)))


def test_alignments_go_from_terms_in_use_to_other_vocabularies(ontology):
    for subject, _, found in load("alignments.ttl"):
        assert str(subject) in declared(ontology) | reused(ontology)
        assert not str(found).startswith(v.CB)


def test_the_table_of_the_shape_names_every_property():
    """README.md is what the authors of queries read."""
    text = (FOLDER / "README.md").read_text()
    missing = {
        short
        for quad in to_quads(hand_made())
        for prefix, iri in v.PREFIXES.items()
        if quad.predicate.startswith(iri)
        and (short := f"{prefix}:{quad.predicate.removeprefix(iri)}") not in text
    }
    assert missing <= {"rdf:type", "time:hasTime", "time:hasBeginning", "time:hasEnd", "time:inXSDDate"}
