"""IRIs, numbers and units in the graph, and what is derived."""

import subprocess
import sys
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

import kb.vocabulary as v
from kb.graph import Literal, Names, to_quads
from kb.graph.parts import decimal_text, unit_triples
from kb.measures.units import UNITS
from tests.graph.graph_bases import TEXT, hand_made

NAMES = Names("https://sls.example/")
RULE = "https://sls.example/rule/order/2024/"


def objects(subject: str, predicate: str) -> set[str | Literal]:
    return {q.object for q in to_quads(hand_made()) if (q.subject, q.predicate) == (subject, predicate)}


@pytest.mark.parametrize(
    ("kind", "identifier", "path"),
    [
        ("item", "storm-coat", "item/storm-coat"),
        ("fact", "worn:storm-coat", "fact/worn%3Astorm-coat"),
        ("clause", "order/2024/4.12", "clause/order/2024/4.12"),
        ("clause", "order/2024/4/12", "clause/order/2024/4%2F12"),
        ("rule", "order/2024/..", "rule/order/2024/%2E%2E"),
        ("item", "café 50%", "item/caf%C3%A9%2050%25"),
        ("item", "a/b", "item/a%2Fb"),
    ],
)
def test_iris_are_percent_encoded_as_rfc_3986_says(kind, identifier, path):
    """RFC 3986, section 2.3: letters, digits and - . _ ~ are unreserved; all else is encoded as UTF-8."""
    assert NAMES.of(kind, identifier) == f"https://sls.example/{path}"
    assert NAMES.id_of(kind, NAMES.of(kind, identifier)) == identifier


@given(st.sampled_from(["item", "clause", "rule"]), TEXT, TEXT)
def test_ids_come_back_from_iris_and_differ_as_ids_do(kind, one, other):
    assert NAMES.id_of(kind, NAMES.of(kind, one)) == one
    assert (NAMES.of(kind, one) == NAMES.of(kind, other)) == (one == other)


@given(TEXT, TEXT, TEXT, TEXT)
def test_values_of_different_facts_never_share_an_iri(fact, value, other_fact, other_value):
    one, other = NAMES.value("fact", fact, value), NAMES.value("fact", other_fact, other_value)
    assert NAMES.value_id("fact", fact, one) == value
    assert (one == other) == ((fact, value) == (other_fact, other_value))


def test_an_iri_of_another_kind_is_refused():
    with pytest.raises(ValueError, match="no item"):
        NAMES.id_of("item", "https://sls.example/rule/x")
    with pytest.raises(ValueError, match="no value"):
        NAMES.value_id("fact", "place", "https://sls.example/grade/K5")


@given(st.fractions())
def test_decimals_are_exact_or_missing(number):
    """XSD 1.1 part 2: a decimal has finitely many digits. Reference: `Decimal` of the standard library."""
    text = decimal_text(number)
    rest = number.denominator
    for prime in (2, 5):
        while rest % prime == 0:
            rest //= prime
    assert (text is None) == (rest != 1)
    if text is not None:
        assert Fraction(Decimal(text)) == number
        assert "e" not in text.lower()
        assert text == "0" or not text.endswith(("0", ".")) or "." not in text


def test_a_number_carries_the_unit_it_is_kept_in_and_a_measure_the_unit_it_is_written_in():
    """1/4 in is 6.35 mm exactly (UCUM 2.1: [in_i] = 2.54 cm)."""
    measure = f"{RULE}r3/value/measure"
    low = f"{measure}/interval/low"
    assert objects(measure, v.CB_UCUM_CODE) == {Literal("[in_i]")}
    assert objects(measure, v.QUDT_HAS_UNIT) == {v.UNIT + "IN"}
    assert objects(low, v.CB_UCUM_CODE) == {Literal("mm")}
    assert objects(low, v.QUDT_HAS_UNIT) == {v.UNIT + "MilliM"}
    assert objects(low, v.CB_EXACT) == {Literal("127/20")}
    assert objects(low, v.QUDT_NUMERIC_VALUE) == {Literal("6.35", v.XSD_DECIMAL)}
    assert objects(f"{measure}/tolerance", v.QUDT_NUMERIC_VALUE) == set()


def test_every_unit_of_the_program_has_a_qudt_name():
    assert [code for code in UNITS if not list(unit_triples("x", code))] == []


def test_a_rule_says_what_odrl_knows():
    assert v.ODRL_DUTY in objects(RULE + "r1", v.RDF_TYPE)
    assert v.ODRL_PROHIBITION in objects(RULE + "r2", v.RDF_TYPE)
    assert v.ODRL_PERMISSION in objects(RULE + "r3", v.RDF_TYPE)
    assert v.CB_EXEMPTION in objects(RULE + "r4", v.RDF_TYPE)
    assert objects(RULE + "r1", v.ODRL_TARGET) == {"https://sls.example/item/cap"}
    assert objects(RULE + "r1", v.ODRL_ACTION) == {"https://sls.example/aspect/wear"}
    assert objects(RULE + "r3", v.ODRL_ACTION) == set(), "a reach is no action"
    assert objects(RULE + "r4", v.ODRL_TARGET) == set(), "odrl:target has no alternatives"


def test_clauses_keep_one_iri_through_all_editions():
    editions = [f"https://sls.example/clause/order/{year}/4.12" for year in (2019, 2024)]
    assert [objects(clause, v.ELI_REALIZES) for clause in editions] == [
        {"https://sls.example/clause/order/4.12"}
    ] * 2


def test_each_edition_has_its_graph():
    graphs = {q.graph.removeprefix("https://sls.example/graph/") for q in to_quads(hand_made())}
    assert graphs == {"vocabulary", "catalogue", "edition/order/2019", "edition/order/2024", "derived"}
    for quad in to_quads(hand_made()):
        if quad.subject.startswith(RULE) and not quad.graph.endswith("derived"):
            assert quad.graph == "https://sls.example/graph/edition/order/2024"


def test_grades_are_derived_only_where_they_are_a_joint_condition():
    grades = {
        rule: {str(grade).rpartition("/")[2] for grade in objects(RULE + rule, v.CB_FOR_GRADE)}
        for rule in ("r1", "r2", "r4", "r5")
    }
    assert grades == {"r1": set(), "r2": {"H2", "K1"}, "r4": set(), "r5": {"H1", "H2"}}


def test_what_is_derived_stays_in_its_own_graph():
    derived = {v.CB_FOR_GRADE, v.ELI_BASED_ON, v.TIME_HAS_TIME}
    for quad in to_quads(hand_made()):
        if quad.predicate in derived:
            assert quad.graph == "https://sls.example/graph/derived"
    found = {quad.predicate for quad in to_quads(hand_made()) if quad.graph.endswith("/derived")}
    assert derived <= found


def test_the_graph_is_made_without_an_rdf_library():
    """rdflib and pyoxigraph cost start-up time; whoever only asks a question should not pay it."""
    heavy = ("rdflib", "pyoxigraph", "pyshacl", "yaml")
    script = f"import sys, kb.graph; print([name for name in {heavy} if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
