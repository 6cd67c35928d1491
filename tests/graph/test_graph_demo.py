"""The demo rule books through the graph and back, and in other tools."""

import pyoxigraph
import pytest
import rdflib

import kb.vocabulary as v
from kb.files import data_folder
from kb.graph import export_bytes, parse_nquads, quads_of, read_base, to_nquads
from kb.model.records import RuleBase
from kb.sources import load_rule_base
from kb.validation import validate


@pytest.fixture(scope="module")
def demo() -> RuleBase:
    result = load_rule_base(data_folder("demo_facts"))
    assert result.base is not None, result.problems
    return result.base


@pytest.fixture(scope="module")
def nquads(demo) -> bytes:
    return to_nquads(demo)


def test_the_demo_comes_back_from_a_store(demo, nquads):
    store = pyoxigraph.Store()
    store.bulk_load(nquads, format=pyoxigraph.RdfFormat.N_QUADS)
    assert read_base(quads_of(store)) == demo == read_base(parse_nquads(nquads))


def test_the_demo_fits_the_shapes(nquads):
    assert validate(nquads) == ()


def test_the_demo_opens_in_rdflib_as_in_pyoxigraph(demo):
    data = export_bytes(demo, "turtle")
    by_rdflib = rdflib.Graph().parse(data=data.decode(), format="turtle")
    by_pyoxigraph = set(pyoxigraph.parse(data, format=pyoxigraph.RdfFormat.TURTLE))
    assert len(by_rdflib) == len(by_pyoxigraph) > 10_000
    assert not [subject for subject in by_rdflib.subjects() if isinstance(subject, rdflib.BNode)]


def test_the_queries_of_the_readme_run_and_find_something(nquads):
    """The examples in ontology/README.md, over the union of the graphs."""
    text = (data_folder("ontology") / "README.md").read_text()
    examples = text.split("```sparql\n")[1].split("```")[0].split("# ")[1:]
    prefixes = "".join(f"PREFIX {name}: <{iri}> " for name, iri in v.PREFIXES.items())
    store = pyoxigraph.Store()
    store.bulk_load(nquads, format=pyoxigraph.RdfFormat.N_QUADS)
    assert len(examples) == 4
    for example in examples:
        query = example.partition("\n")[2]
        assert list(store.query(prefixes + query, use_default_graph_as_union=True)), query
