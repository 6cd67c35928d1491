"""What is written to the graph is read back without loss, also after a store has held it."""

import msgspec
import pyoxigraph
import pytest
from hypothesis import HealthCheck, given, settings

from kb.errors import InvalidDataError, StoreUnavailableError
from kb.graph import parse_nquads, quads_of, read_base, to_nquads, to_quads
from kb.graph.terms import Literal
from tests.graph.graph_bases import BASES, hand_made

SLOW_TO_MAKE = [HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.large_base_example]


@settings(max_examples=40, deadline=None, suppress_health_check=SLOW_TO_MAKE)
@given(base=BASES)
def test_any_base_comes_back(base):
    assert read_base(to_quads(base)) == base
    assert read_base(parse_nquads(to_nquads(base))) == base


def test_the_order_of_quads_does_not_matter():
    base = hand_made()
    assert read_base(reversed(list(to_quads(base)))) == base


@settings(max_examples=15, deadline=None, suppress_health_check=SLOW_TO_MAKE)
@given(base=BASES)
def test_a_store_changes_nothing_that_is_read_back(base):
    store = pyoxigraph.Store()
    store.bulk_load(to_nquads(base), format=pyoxigraph.RdfFormat.N_QUADS)
    assert read_base(quads_of(store)) == base


def test_the_hand_made_base_leaves_no_field_at_its_default():
    """Otherwise the round trip of the hand-made base would prove less than it says."""
    unused = set()
    used = set()

    def walk(value):
        if isinstance(value, msgspec.Struct):
            for field in msgspec.structs.fields(value):
                found = getattr(value, field.name)
                key = (type(value).__name__, field.name)
                required = field.default is msgspec.NODEFAULT and field.default_factory is msgspec.NODEFAULT
                (used if required or found != field.default else unused).add(key)
                walk(found)
        elif isinstance(value, tuple):
            for part in value:
                walk(part)

    walk(hand_made())
    book_aliases = {("Book", "other_labels"), ("Edition", "other_labels"), ("Aspect", "other_labels")}
    assert unused - used <= book_aliases | {
        ("Authority", "other_labels"),
        ("Fact", "other_labels"),
        ("FactValue", "note"),
        ("Group", "other_labels"),
        ("Item", "other_labels"),
        ("Interval", "low_open"),
    }


def test_derived_triples_are_not_read_back():
    base = hand_made()
    quads = [quad for quad in to_quads(base) if not quad.graph.endswith("graph/derived")]
    assert len(quads) < len(list(to_quads(base)))
    assert read_base(quads) == base


def test_a_cut_graph_is_refused():
    quads = [quad for quad in to_quads(hand_made()) if not quad.predicate.endswith("#exact")]
    with pytest.raises(StoreUnavailableError, match="exact"):
        read_base(quads)
    with pytest.raises(StoreUnavailableError, match="0 services"):
        read_base([])


def test_a_doubled_value_is_refused():
    quads = list(to_quads(hand_made()))
    number = next(quad for quad in quads if quad.predicate.endswith("#modality"))
    with pytest.raises(StoreUnavailableError, match="2 values"):
        read_base([*quads, number._replace(object=Literal("may"))])


@pytest.mark.parametrize(
    "namespace", ["", "sls", "https://sls.example", "https://sls example/", "https://<sls>/"]
)
def test_a_namespace_that_cannot_begin_an_iri_is_refused(namespace):
    base = hand_made()
    service = msgspec.structs.replace(base.service, namespace=namespace)
    with pytest.raises(InvalidDataError) as caught:
        to_nquads(msgspec.structs.replace(base, service=service))
    (problem,) = caught.value.problems
    assert problem.at == service.at
    assert "https://" in problem.remedy
