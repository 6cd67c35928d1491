"""Findings of the shapes as problems for the writer of the rule books."""

import pytest

import kb.vocabulary as v
from kb.errors import Location, Problem
from kb.graph import Quad, format_nquads, to_quads
from kb.validation import validate
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


def test_nothing_is_imported_or_fetched():
    """Even if the data asks for it."""
    ontology = "http://www.w3.org/2002/07/owl#"
    graph = "https://sls.example/graph/vocabulary"
    wish = Quad("https://sls.example/", ontology + "imports", "http://www.w3.org/2004/02/skos/core", graph)
    assert validate(format_nquads([*to_quads(hand_made()), wish])) == ()


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
