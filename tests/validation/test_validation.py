"""Findings of the shapes as problems for the writer of the rule books."""

import pytest
from rdflib import OWL, RDF, URIRef

import kb.vocabulary as v
from kb.errors import Location, Problem
from kb.graph import Quad, format_nquads, to_nquads, to_quads
from kb.validation import load_shapes, validate
from tests.graph.graph_bases import hand_made

CAP = "https://sls.example/item/cap"


@pytest.fixture(autouse=True)
def no_network(monkeypatch):
    def refuse(*_arguments, **_options):
        raise AssertionError("the network was asked for")

    monkeypatch.setattr("socket.socket.connect", refuse)
    monkeypatch.setattr("socket.getaddrinfo", refuse)


def test_a_finding_says_where_what_and_what_to_do():
    graph = "https://sls.example/graph/vocabulary"
    bad = [quad for quad in to_quads(hand_made()) if (quad.subject, quad.predicate) != (CAP, v.SKOS_BROADER)]
    bad.append(Quad(CAP, v.SKOS_BROADER, "https://sls.example/item/hat", graph))
    assert validate(format_nquads(bad)) == (
        Problem(
            at=Location("books/order.yaml", 41, 3),
            code="item-kind-of",
            message="cap: What the item is a kind of is not declared as an item. Found: https://sls.example/item/hat.",
            remedy="Name declared items, or built-in tops, after `kind of`.",
        ),
    )


def test_nothing_is_fetched_though_the_data_asks_for_it():
    graph = "https://sls.example/graph/vocabulary"
    wish = Quad("https://sls.example/", str(OWL.imports), "http://www.w3.org/2004/02/skos/core", graph)
    assert validate(format_nquads([*to_quads(hand_made()), wish])) == ()


@pytest.mark.parametrize("imported", [True, False])
def test_nothing_is_imported_though_the_shapes_ask_for_it(tmp_path, imported):
    """The imported file has a shape that no item fits; given directly it would be heard."""
    strict = tmp_path / "strict.ttl"
    strict.write_text(
        "@prefix sh: <http://www.w3.org/ns/shacl#> . @prefix cb: <https://clothbound.example/ns#> .\n"
        "<https://clothbound.example/shapes#strict> a sh:NodeShape ; sh:targetClass cb:Item ;"
        ' sh:nodeKind sh:Literal ; sh:message "Never." .'
    )
    shapes = load_shapes()
    if imported:
        ontology = URIRef("https://clothbound.example/shapes")
        shapes.add((ontology, RDF.type, OWL.Ontology))
        shapes.add((ontology, OWL.imports, URIRef(strict.as_uri())))
    else:
        shapes.parse(strict)
    assert bool(validate(to_nquads(hand_made()), shapes)) is not imported


def test_what_is_derived_is_not_checked():
    strange = Quad(CAP, v.SKOS_PREF_LABEL, "https://sls.example/x", "https://sls.example/graph/derived")
    assert validate(format_nquads([*to_quads(hand_made()), strange])) == ()


def test_findings_are_sorted_and_each_is_given_once():
    without_labels = [quad for quad in to_quads(hand_made()) if quad.predicate != v.SKOS_PREF_LABEL]
    problems = validate(format_nquads(without_labels))
    assert list(problems) == sorted(set(problems))
    assert {problem.code for problem in problems} == {"label"}
    labelled = [quad for quad in to_quads(hand_made()) if quad.predicate == v.SKOS_PREF_LABEL]
    assert len(problems) == len(labelled)


def test_warnings_are_told_from_errors():
    graph = "https://sls.example/graph/vocabulary"
    again = Quad(
        CAP,
        v.SKOS_ALT_LABEL,
        next(
            quad.object
            for quad in to_quads(hand_made())
            if (quad.subject, quad.predicate) == (CAP, v.SKOS_PREF_LABEL)
        ),
        graph,
    )
    (problem,) = validate(format_nquads([*to_quads(hand_made()), again]))
    assert (problem.code, problem.severity) == ("label-repeated", "warning")


def test_an_empty_graph_has_nothing_to_find():
    assert validate(b"") == ()
