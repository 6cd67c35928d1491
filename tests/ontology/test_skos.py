"""Integrity conditions of the SKOS Reference (W3C Recommendation, 18 August 2009; from memory).

S9: concept and concept scheme are disjoint. S13: preferred, alternative and hidden labels are disjoint.
S14: one preferred label for each language. S27: related is disjoint with the transitive broader; "part of"
is what we could have taken for related. S37: collections are disjoint from concepts and schemes.
"""

from collections import defaultdict

import pytest

import kb.vocabulary as v
from kb.files import data_folder
from kb.graph import to_quads
from kb.sources import load_rule_base
from tests.graph.graph_bases import hand_made


@pytest.fixture(scope="module", params=["every field", "demo"])
def graph(request) -> dict[str, dict[str, set]]:
    found: dict[str, dict[str, set]] = defaultdict(lambda: defaultdict(set))
    demo = load_rule_base(data_folder("demo_facts")).base
    for quad in to_quads(hand_made() if request.param == "every field" else demo):
        found[quad.subject][quad.predicate].add(quad.object)
    return found


def test_s9_s37_classes_are_disjoint(graph):
    classes = {v.SKOS_CONCEPT, v.SKOS_CONCEPT_SCHEME, v.SKOS_COLLECTION}
    seen = set()
    for properties in graph.values():
        mine = properties[v.RDF_TYPE] & classes
        assert len(mine) <= 1
        seen |= mine
    assert seen == classes


def test_s13_s14_labels(graph):
    for properties in graph.values():
        assert len(properties[v.SKOS_PREF_LABEL]) <= 1
        assert not properties[v.SKOS_PREF_LABEL] & properties[v.SKOS_ALT_LABEL]


def test_s27_part_of_and_broader(graph):
    for node, properties in graph.items():
        above, queue = set(), [node]
        while queue:
            for parent in graph[queue.pop()][v.SKOS_BROADER] - above:
                above.add(parent)
                queue.append(parent)
        assert not above & properties[v.CB_PART_OF]
        assert node not in above


def test_broader_and_member_stay_within_one_scheme(graph):
    checked = 0
    for properties in list(graph.values()):
        for parent in properties[v.SKOS_BROADER]:
            assert graph[parent][v.SKOS_IN_SCHEME] == properties[v.SKOS_IN_SCHEME]
            checked += 1
        for member in properties[v.SKOS_MEMBER]:
            assert graph[member][v.SKOS_IN_SCHEME] == properties[v.CB_OF_FACT]
            checked += 1
    assert checked > 5
