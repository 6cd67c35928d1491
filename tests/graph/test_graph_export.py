"""Exports open in other tools and hold the same triples. RDF 1.1 N-Quads, RDF 1.1 Turtle, JSON-LD 1.1."""

import io
import json
import os
import subprocess
import sys
from pathlib import Path

import pyoxigraph
import pytest
import rdflib
from hypothesis import HealthCheck, given, settings
from rdflib.compare import isomorphic

from kb.errors import StoreUnavailableError, UsageError
from kb.graph import FORMATS, export, export_bytes, format_nquads, parse_nquads, quads_of, read_base, to_quads
from kb.graph.terms import Literal
from tests.graph.graph_bases import BASES, hand_made

# rdflib's own parsers use what rdflib calls deprecated.
pytestmark = pytest.mark.filterwarnings("ignore:(Dataset|ConjunctiveGraph):DeprecationWarning")

RDFLIB_NAMES = {"turtle": "turtle", "nquads": "nquads", "jsonld": "json-ld"}
OXIGRAPH_FORMATS = {
    "turtle": pyoxigraph.RdfFormat.TURTLE,
    "nquads": pyoxigraph.RdfFormat.N_QUADS,
    "jsonld": pyoxigraph.RdfFormat.JSON_LD,
}


@pytest.fixture(autouse=True)
def no_network(monkeypatch):
    def refuse(*_arguments, **_options):
        raise AssertionError("the network was asked for")

    monkeypatch.setattr("socket.socket.connect", refuse)
    monkeypatch.setattr("socket.getaddrinfo", refuse)


@pytest.fixture(autouse=True)
def literals_as_written(monkeypatch):
    monkeypatch.setattr(rdflib, "NORMALIZE_LITERALS", False)


def with_rdflib(data: bytes, name: str) -> rdflib.Dataset:
    dataset = rdflib.Dataset()
    dataset.parse(data=data.decode(), format=RDFLIB_NAMES[name])
    return dataset


def triples_of(dataset: rdflib.Dataset, derived: bool) -> rdflib.Graph:
    graph = rdflib.Graph()
    for subject, predicate, found, name in dataset.quads():
        if derived or not str(name).endswith("graph/derived"):
            graph.add((subject, predicate, found))
    return graph


def expected_triples(base) -> rdflib.Graph:
    """Made from the quads without any serialisation."""
    graph = rdflib.Graph()
    for quad in to_quads(base):
        if quad.graph.endswith("graph/derived"):
            continue
        found = quad.object
        if isinstance(found, Literal):
            plain = found.datatype.endswith("#string")
            node = rdflib.Literal(found.value, datatype=None if plain else rdflib.URIRef(found.datatype))
        else:
            node = rdflib.URIRef(found)
        graph.add((rdflib.URIRef(quad.subject), rdflib.URIRef(quad.predicate), node))
    return graph


@pytest.mark.parametrize("name", FORMATS)
def test_rdflib_reads_the_same_triples(name):
    base = hand_made()
    read = triples_of(with_rdflib(export_bytes(base, name), name), derived=False)
    expected = expected_triples(base)
    assert len(read) == len(expected) > 500
    assert isomorphic(read, expected)


def as_pyoxigraph_writes(node) -> str:
    if not isinstance(node, rdflib.Literal):
        return str(pyoxigraph.NamedNode(str(node)))
    datatype = pyoxigraph.NamedNode(str(node.datatype)) if node.datatype else None
    return str(pyoxigraph.Literal(str(node), datatype=datatype))


@pytest.mark.parametrize("name", FORMATS)
def test_two_engines_read_the_same(name):
    """rdflib and pyoxigraph, on a canonical form of what they read."""
    data = export_bytes(hand_made(), name)
    by_pyoxigraph = set()
    for quad in pyoxigraph.parse(data, format=OXIGRAPH_FORMATS[name]):
        graph = "" if isinstance(quad.graph_name, pyoxigraph.DefaultGraph) else str(quad.graph_name)
        by_pyoxigraph.add((str(quad.subject), str(quad.predicate), str(quad.object), graph))
    by_rdflib = set()
    for subject, predicate, found, graph in with_rdflib(data, name).quads():
        home = "" if graph in (None, rdflib.graph.DATASET_DEFAULT_GRAPH_ID) else f"<{graph}>"
        by_rdflib.add((f"<{subject}>", f"<{predicate}>", as_pyoxigraph_writes(found), home))
    assert by_rdflib == by_pyoxigraph


@pytest.mark.parametrize("name", ["nquads", "jsonld"])
def test_an_export_with_graphs_is_a_whole_base(name):
    base = hand_made()
    store = pyoxigraph.Store()
    store.load(export_bytes(base, name), format=OXIGRAPH_FORMATS[name])
    assert read_base(quads_of(store)) == base


@settings(max_examples=10, deadline=None, suppress_health_check=list(HealthCheck))
@given(base=BASES)
def test_any_base_survives_each_format(base):
    store = pyoxigraph.Store()
    store.load(export_bytes(base, "jsonld"), format=pyoxigraph.RdfFormat.JSON_LD)
    assert read_base(quads_of(store)) == base
    turtle = set(pyoxigraph.parse(export_bytes(base, "turtle"), format=pyoxigraph.RdfFormat.TURTLE))
    asserted = {
        quad.triple
        for quad in pyoxigraph.parse(export_bytes(base, "nquads"), format=pyoxigraph.RdfFormat.N_QUADS)
        if not quad.graph_name.value.endswith("graph/derived")
    }
    assert {quad.triple for quad in turtle} == asserted


@pytest.mark.parametrize("name", FORMATS)
def test_the_same_base_gives_the_same_bytes_in_every_process(name):
    script = (
        "import sys; from tests.graph.graph_bases import hand_made; from kb.graph import export_bytes\n"
        + (f"sys.stdout.buffer.write(export_bytes(hand_made(), {name!r}))")
    )
    for seed in ("1", "2"):
        environment = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(Path(__file__).parents[2])}
        done = subprocess.run(
            [sys.executable, "-c", script], env=environment, capture_output=True, check=True
        )
        assert done.stdout == export_bytes(hand_made(), name)


def test_turtle_is_meant_to_be_read():
    text = export_bytes(hand_made(), "turtle").decode()
    (block,) = [part for part in text.split("\n\n") if part.startswith("<https://sls.example/item/cap> ")]
    assert (
        block
        == """<https://sls.example/item/cap> a cb:Item, skos:Concept ;
    cb:column 3 ;
    cb:everydayWord "hat", "lid" ;
    cb:file "books/order.yaml" ;
    cb:hasEntry <https://sls.example/item/cap/everydayWord/1>, <https://sls.example/item/cap/everydayWord/2> ;
    cb:line 41 ;
    cb:order 2 ;
    cb:protects "head" ;
    dcterms:identifier "cap" ;
    skos:broader <https://sls.example/item/anything> ;
    skos:inScheme <https://sls.example/items> ;
    skos:prefLabel "cap" ."""
    )


def test_nquads_are_sorted_and_without_blank_nodes():
    lines = export_bytes(hand_made(), "nquads").decode().splitlines()
    assert lines == sorted(set(lines))
    assert not [line for line in lines if line.startswith("_:") or " _:" in line.split('"')[0]]


def test_jsonld_carries_its_context():
    document = json.loads(export_bytes(hand_made(), "jsonld"))
    assert document["@context"]["cb"] == "https://clothbound.example/ns#"
    assert "http" not in json.dumps(
        [name for graph in document["@graph"] for node in graph["@graph"] for name in node]
    )


def test_literals_are_escaped_as_canonical_nquads_ask():
    """RDF 1.1 N-Triples, section 4 (canonical form): only these four characters are escaped in a literal."""
    base = hand_made()
    text = 'quote " backslash \\ line\n return\r tab\t bell\x07 é ½ \u2028 😀'
    (first, *_) = to_quads(base)
    line = format_nquads([first._replace(object=Literal(text))]).decode()
    escaped = '"quote \\" backslash \\\\ line\\n return\\r tab\t bell\x07 é ½ \u2028 😀"'
    assert line.endswith(f"{escaped} <https://sls.example/graph/vocabulary> .\n")
    (read,) = parse_nquads(line.encode())
    assert read.object == Literal(text)
    (by_engine,) = pyoxigraph.parse(line, format=pyoxigraph.RdfFormat.N_QUADS)
    assert by_engine.object.value == text


@pytest.mark.parametrize("line", ["<a> <b> <c> .", '<a> <b> "c"@en <g> .', "_:a <b> <c> <g> .", "nonsense"])
def test_lines_that_are_not_canonical_are_refused(line):
    with pytest.raises(ValueError, match="line 2"):
        list(parse_nquads(f"<a> <b> <c> <g> .\n{line}\n".encode()))


def test_export_to_a_file_and_to_a_stream(tmp_path):
    base = hand_made()
    target = tmp_path / "base.ttl"
    export(base, "turtle", target)
    stream = io.BytesIO()
    export(base, "turtle", stream)
    assert target.read_bytes() == stream.getvalue() == export_bytes(base, "turtle")
    assert [entry.name for entry in tmp_path.iterdir()] == ["base.ttl"]


def test_export_to_a_missing_folder_is_a_clear_error(tmp_path):
    with pytest.raises(StoreUnavailableError, match="cannot be written"):
        export(hand_made(), "nquads", tmp_path / "nowhere" / "base.nq")


def test_an_unknown_format_is_a_clear_error():
    with pytest.raises(UsageError, match="turtle, nquads, jsonld"):
        export_bytes(hand_made(), "rdfxml")
