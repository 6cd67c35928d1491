"""Results in the two standard forms, read back by engines that did not write them."""

from __future__ import annotations

import csv
import io
import json

import pytest

from kb.sparql import Table, Term, to_csv, to_json

STRING = "http://www.w3.org/2001/XMLSchema#string"
INTEGER = "http://www.w3.org/2001/XMLSchema#integer"
LANG = "http://www.w3.org/1999/02/22-rdf-syntax-ns#langString"
TABLE = Table(
    kind="select",
    columns=("x", "y"),
    rows=(
        (Term("iri", "https://a.example/b"), Term("literal", 'say "no",\nthen go', STRING)),
        (Term("literal", "-5", INTEGER), Term("literal", "chapeau", LANG, "fr")),
        (Term("blank", "b1"), None),
    ),
)


def test_json_is_the_recommendations_form() -> None:
    """SPARQL 1.1 Query Results JSON Format, sections 3.1 and 3.2."""
    found = json.loads(to_json(TABLE))
    assert found["head"] == {"vars": ["x", "y"]}
    assert found["results"]["bindings"] == [
        {
            "x": {"type": "uri", "value": "https://a.example/b"},
            "y": {"type": "literal", "value": 'say "no",\nthen go'},
        },
        {
            "x": {"type": "literal", "value": "-5", "datatype": INTEGER},
            "y": {"type": "literal", "value": "chapeau", "xml:lang": "fr"},
        },
        {"x": {"type": "bnode", "value": "b1"}},
    ]
    assert json.loads(to_json(Table(kind="ask", boolean=False))) == {"head": {}, "boolean": False}


def test_json_says_when_it_was_cut() -> None:
    cut = Table(kind="select", columns=("x",), truncated=True)
    assert json.loads(to_json(cut))["head"] == {"vars": ["x"], "truncated": True}


def test_both_libraries_read_the_json() -> None:
    import pyoxigraph
    from rdflib.query import Result

    ours = to_json(TABLE).encode()
    solutions = pyoxigraph.parse_query_results(ours, pyoxigraph.QueryResultsFormat.JSON)
    assert isinstance(solutions, pyoxigraph.QuerySolutions)
    assert [[None if term is None else term.value for term in row] for row in solutions] == [
        [None if term is None else term.value for term in row] for row in TABLE.rows
    ]
    read = Result.parse(io.BytesIO(ours), format="json")
    assert [[None if term is None else str(term) for term in row] for row in read][:2] == [
        ["https://a.example/b", 'say "no",\nthen go'],
        ["-5", "chapeau"],
    ]


def test_csv_is_read_back_by_the_csv_module() -> None:
    text = to_csv(TABLE)
    assert text.endswith("_:b1,\r\n")
    assert list(csv.reader(io.StringIO(text, newline=""))) == [
        ["x", "y"],
        ["https://a.example/b", 'say "no",\nthen go'],
        ["'-5", "chapeau"],
        ["_:b1", ""],
    ]
    assert to_csv(Table(kind="ask", boolean=True)) == "boolean\r\ntrue\r\n"


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_no_cell_is_a_formula(start: str) -> None:
    table = Table(kind="select", columns=("x",), rows=((Term("literal", f"{start}1+1", STRING),),))
    (_, (cell,)) = csv.reader(io.StringIO(to_csv(table), newline=""))
    assert cell == f"'{start}1+1"


def test_csv_agrees_with_the_engines_own_where_no_cell_is_a_formula() -> None:
    """Outside check: pyoxigraph writes the same CSV of the same results."""
    import pyoxigraph

    rows = tuple(row for row in TABLE.rows if row[0] is not None and row[0].value != "-5")
    table = Table(kind="select", columns=TABLE.columns, rows=rows)
    solutions = pyoxigraph.parse_query_results(to_json(table).encode(), pyoxigraph.QueryResultsFormat.JSON)
    assert isinstance(solutions, pyoxigraph.QuerySolutions)
    theirs = solutions.serialize(format=pyoxigraph.QueryResultsFormat.CSV)
    assert theirs is not None
    assert to_csv(table).encode() == theirs
