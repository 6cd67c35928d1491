"""The named queries: two engines, expected rows, and a plain scan of the records as second opinion."""

from __future__ import annotations

import datetime
import re
from functools import cache

import pytest

from kb.errors import StoreUnavailableError, UsageError
from kb.files import data_folder
from kb.graph import to_nquads
from kb.model.lookup import Lookup
from kb.reasoner import StoredCandidates, scan_candidates
from kb.sources import load_rule_base
from kb.sparql import (
    Store,
    amendments,
    candidate_rules,
    clause_text,
    delegations,
    items_of_class,
    labels,
    linked_rules,
    named_query,
    open_store,
    opposing_rules,
    phase_outs,
    query_names,
    rules_in_force,
    rules_of_clause,
    rules_of_rig,
    run_named,
    who_may,
)
from kb.sparql.named import QUERIES, fill
from tests.sparql.shop import DAY, JULY, shop_base

YEAR = (datetime.date(2026, 1, 1), datetime.date(2027, 1, 1))


@cache
def nquads() -> bytes:
    return to_nquads(shop_base())


@pytest.fixture(scope="module")
def store() -> Store:
    return open_store(nquads())


def arguments(store: Store) -> dict[str, dict[str, object]]:
    """One set of values for each named query."""
    item = store.names.of("item", "storm-coat")
    wear = store.names.of("aspect", "wear")
    span = {"start": YEAR[0], "end": YEAR[1]}
    return {
        "namespace": {},
        "candidate-rules": {"item": (item,), "aspect": (wear,), "day": DAY},
        "rules-in-force": {"aspect": (wear,), "day": DAY},
        "linked-rules": {"rule": (store.names.of("rule", "all-but-shore"),)},
        "rules-of-clause": {"clause": store.names.of("clause", "order/1/2")},
        "clause-text": {"number": "3"},
        "items-of-class": {"item": store.names.of("item", "garment")},
        "who-may": {"item": item, "aspect": wear, "day": DAY},
        "rules-of-rig": {"rig": store.names.value("fact", "rig", "boat"), "day": DAY},
        "amendments": span,
        "opposing-rules": {"day": DAY},
        "labels": {},
        "delegations": {},
        "phase-outs": span,
    }


def test_every_query_is_tried_here(store: Store) -> None:
    assert set(query_names()) == set(arguments(store))


@pytest.mark.filterwarnings("ignore::DeprecationWarning:rdflib")
@pytest.mark.parametrize("name", query_names())
def test_rdflib_gives_the_same_rows(store: Store, name: str) -> None:
    """Outside check: rdflib's engine, which shares no code with ours."""
    import rdflib

    values = arguments(store)[name]
    dataset = rdflib.Dataset(default_union=True)
    dataset.parse(data=nquads(), format="nquads")
    found = [
        tuple(None if term is None else str(term) for term in row)
        for row in dataset.query(fill(name, values))  # type: ignore[arg-type, union-attr]
    ]
    ours = run_named(store, name, **values).rows  # type: ignore[arg-type]
    assert found
    assert [tuple(None if term is None else term.value for term in row) for row in ours] == found


@pytest.mark.parametrize("name", query_names())
def test_headers_declare_what_the_text_uses(name: str) -> None:
    query = named_query(name)
    assert re.fullmatch(r"[A-Z].*\.", query.purpose)
    assert {parameter.name for parameter in query.parameters} == set(re.findall(r"\$(\w+)", query.text))
    selected = re.search(r"SELECT DISTINCT ([^{]*?) WHERE", query.text)
    assert selected is not None, "every named query is a SELECT DISTINCT"
    assert tuple(selected[1].replace("?", "").split()) == query.columns
    assert "ORDER BY" in query.text, "without an order two engines need not agree"


def test_no_other_place_holds_sparql() -> None:
    package = QUERIES.parent
    sparql = re.compile(r"\b(SELECT|CONSTRUCT|ASK)\b[^\n\"]*\bWHERE\b|\bSELECT (DISTINCT )?\?")
    assert [path for path in package.rglob("*.py") if sparql.search(path.read_text())] == []


def test_candidates_agree_with_a_scan_of_the_records(store: Store) -> None:
    lookup = Lookup(shop_base())
    scan = scan_candidates(lookup)
    days = [DAY, JULY, datetime.date(2019, 1, 1), DAY - datetime.timedelta(days=1)]
    compared = 0
    for day in days:
        for item in lookup.items:
            for aspect in lookup.aspects:
                expected = tuple(scan(item, aspect, day))
                assert candidate_rules(store, (item,), (aspect,), day) == expected
                compared += len(expected)
    assert compared > 20


def candidates_of(store: Store, lookup: Lookup, asked: list[str]) -> StoredCandidates:
    """Candidates that note in `asked` which query they put."""

    def for_item(item: str, aspect: str, day: datetime.date) -> tuple[str, ...]:
        asked.append("item")
        return candidate_rules(store, (item,), (aspect,), day)

    def for_aspect(aspect: str, day: datetime.date) -> tuple[str, ...]:
        asked.append("aspect")
        return rules_in_force(store, (aspect,), day)

    return StoredCandidates(lookup, for_item, for_aspect)


def test_rules_in_force_are_those_of_an_aspect_on_a_day(store: Store) -> None:
    """Second opinion: the records."""
    rules = shop_base().rules
    for day in (DAY, JULY, datetime.date(2019, 1, 1)):
        for aspect in Lookup(shop_base()).aspects:
            assert rules_in_force(store, (aspect,), day) == tuple(
                rule.id
                for rule in rules
                if rule.aspect == aspect
                and rule.valid_from <= day
                and (rule.valid_until is None or day < rule.valid_until)
            )
    assert rules_in_force(store, (), DAY) == ()


def test_many_items_are_found_by_one_query_and_few_one_by_one(store: Store) -> None:
    lookup = Lookup(shop_base())
    scan, asked = scan_candidates(lookup), list[str]()
    candidates = candidates_of(store, lookup, asked)
    for item in lookup.items:
        assert candidates(item, "wear", DAY) == scan(item, "wear", DAY)
    assert asked == ["item"] * 3 + ["aspect"]
    assert candidates("coat", "colour", DAY) == scan("coat", "colour", DAY)
    assert candidates("coat", "wear", JULY) == scan("coat", "wear", JULY)
    assert asked[4:] == ["item", "item"], "another aspect and another day are asked for anew"


def test_candidates_for_several_items_and_aspects(store: Store) -> None:
    found = candidate_rules(store, ("storm-coat", "cap"), ("wear", "colour"), DAY)
    assert found == ("coats", "all-but-shore", "cap-off", "cap-on", "label", "no-storm-coat")
    assert candidate_rules(store, (), ("wear",), DAY) == ()


def test_a_rule_for_the_item_alone_does_not_cover_what_is_narrower(store: Store) -> None:
    assert "only-coat" in candidate_rules(store, ("coat",), ("wear",), DAY)
    assert "only-coat" not in candidate_rules(store, ("watch-coat",), ("wear",), DAY)


def test_linked_rules_follow_disables_repairs_and_exceptions(store: Store) -> None:
    assert linked_rules(store, ("all-but-shore",)) == ("all-but-shore", "cap-off")
    assert linked_rules(store, ("coats",)) == ("coats", "cap-off", "cap-on")


def test_rules_of_clause(store: Store) -> None:
    assert rules_of_clause(store, "order/1/2") == ("no-garment", "only-coat")
    assert rules_of_clause(store, "order/1/99") == ()


def test_clause_text(store: Store) -> None:
    (found,) = clause_text(store, "3")
    assert (found.clause, found.edition, found.heading) == ("order/1/3", "order/1", 'Coats, "old"')
    assert found.text == "The watch coat\nis left off."
    assert (found.valid_from, found.valid_until) == (datetime.date(2026, 3, 1), None)
    assert [clause.edition for clause in clause_text(store, "1")] == ["local/1", "order/1"]


def test_items_of_class(store: Store) -> None:
    assert items_of_class(store, "garment") == ("coat", "garment", "scarf", "storm-coat", "watch-coat")


def test_who_may_lists_grades_from_the_junior_up(store: Store) -> None:
    found = [(row.rule, row.modality, row.grade) for row in who_may(store, "storm-coat", "wear", DAY)]
    assert found == [
        ("coats", "must", "K1"),
        ("coats", "must", "K2"),
        ("no-storm-coat", "must_not", None),
    ]


def test_rules_of_rig(store: Store) -> None:
    assert rules_of_rig(store, "boat", DAY) == ("coats", "all-but-shore")
    assert rules_of_rig(store, "shore", DAY) == ("scarf-left-off", "all-but-shore")


def test_amendments_in_a_span(store: Store) -> None:
    found = [(row.day.isoformat(), row.clause, row.how, row.other) for row in amendments(store, *YEAR)]
    assert found == [
        ("2026-03-01", "order/1/3", "repeals", "order/1/2"),
        ("2026-03-01", "order/1/3", "replaces", "order/1/1"),
    ]
    assert amendments(store, datetime.date(2026, 3, 2), YEAR[1]) == ()
    assert len(amendments(store, datetime.date(2026, 3, 1), datetime.date(2026, 3, 2))) == 2


def test_opposing_rules(store: Store) -> None:
    """Not `no-storm-coat` against `no-garment`: both forbid. Not against `only-coat`: that coat alone."""
    found = [(row.lower, row.higher, row.aspect) for row in opposing_rules(store, DAY)]
    assert found == [
        ("local-scarf", "no-garment", "wear"),
        ("local-scarf", "scarf-left-off", "wear"),
        ("no-storm-coat", "coats", "wear"),
    ]


def test_labels(store: Store) -> None:
    found = {(row.kind, row.id, row.label, row.how) for row in labels(store)}
    assert {
        ("item", "scarf", "scarf", "preferred"),
        ("item", "scarf", "neck cloth", "other"),
        ("item", "scarf", "muffler", "everyday"),
        ("value", "weather/foul", "Label foul", "preferred"),
        ("value", "grade/K1", "Label K1", "preferred"),
        ("group", "keepers", "keepers", "preferred"),
        ("book", "order", "Order", "preferred"),
        ("edition", "order/1", "order/1", "preferred"),
    } <= found


def test_delegations(store: Store) -> None:
    (found,) = delegations(store)
    assert (found.id, found.clause, found.to, found.allows) == (
        "local-scarves",
        "order/1/2",
        "station",
        "anything",
    )
    assert (found.clauses, found.items) == (("order/1/1", "order/1/2"), ("scarf",))


def test_phase_outs(store: Store) -> None:
    found = [(row.day, row.item, row.rule) for row in phase_outs(store, *YEAR)]
    assert found == [(JULY, "scarf", None), (JULY, "watch-coat", "old")]
    assert phase_outs(store, YEAR[0], JULY) == ()


@pytest.mark.parametrize(
    "values",
    [
        {"number": datetime.date(2026, 1, 1)},
        {"number": ("1", "2")},
        {"number": ()},
        {},
        {"number": "1", "more": "2"},
    ],
)
def test_constants_that_do_not_fit_are_refused(store: Store, values: dict[str, object]) -> None:
    with pytest.raises(UsageError):
        run_named(store, "clause-text", **values)  # type: ignore[arg-type]


@pytest.mark.parametrize("bad", ['x> } DELETE { ?s ?p "', "no scheme", "https://a/b c", "https://a/\n"])
def test_an_iri_cannot_leave_its_brackets(bad: str) -> None:
    with pytest.raises(UsageError, match="not fit"):
        fill("items-of-class", {"item": bad})


@pytest.mark.parametrize(
    "text", ['3" } UNION { ?s ?p ?o } #', "\\", 'a"b\\c\nd\re\t', "$number", "'", "\x00"]
)
def test_a_text_stays_a_text(store: Store, text: str) -> None:
    assert clause_text(store, text) == ()
    assert "UNION { ?s" not in fill("clause-text", {"number": text}) or '\\"' in fill(
        "clause-text", {"number": text}
    )


def test_a_placeholder_inside_a_value_is_not_filled_again() -> None:
    filled = fill("amendments", {"start": YEAR[0], "end": YEAR[1]})
    assert "$" not in filled
    assert "$number" in fill("clause-text", {"number": "$number"})


def test_early_years_keep_four_digits() -> None:
    """XML Schema Part 2, 3.2.9: a year has at least four digits."""
    assert '"0099-01-02"' in fill("opposing-rules", {"day": datetime.date(99, 1, 2)})


@pytest.mark.parametrize("data", [b"", b"nonsense", b"<a:b> <a:b> <a:b> <a:b> ."])
def test_what_is_no_rule_base_is_not_opened(data: bytes) -> None:
    with pytest.raises(StoreUnavailableError):
        open_store(data)


# -- the demo books -----------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def demo() -> Lookup:
    loaded = load_rule_base(data_folder("demo_facts"))
    assert loaded.base is not None
    return Lookup(loaded.base)


@pytest.fixture(scope="module")
def demo_store(demo: Lookup) -> Store:
    return open_store(to_nquads(demo.base))


@pytest.mark.parametrize("day", [datetime.date(2023, 5, 1), datetime.date(2026, 11, 25)])
def test_candidates_of_the_demo_agree_with_a_scan(
    demo: Lookup, demo_store: Store, day: datetime.date
) -> None:
    scan, asked = scan_candidates(demo), list[str]()
    candidates = candidates_of(demo_store, demo, asked)
    found = {}
    for aspect in demo.aspects:
        for item in demo.items:
            found[item, aspect] = tuple(candidates(item, aspect, day))
            assert found[item, aspect] == tuple(scan(item, aspect, day))
    assert asked.count("aspect") == len(demo.aspects)
    some = [key for key in sorted(found) if found[key]][::20]
    assert [candidate_rules(demo_store, (item,), (aspect,), day) for item, aspect in some] == [
        found[key] for key in some
    ]


def test_phase_outs_of_the_demo(demo: Lookup, demo_store: Store) -> None:
    """Second opinion: the rules whose first day is later than that of their clause, read off the records."""
    expected = {
        (rule.valid_from, item, rule.id)
        for rule in demo.base.rules
        if rule.modality == "must_not"
        and rule.aspect == "wear"
        and rule.valid_from > demo.clauses[rule.clause].valid_from
        for item in rule.scope.items
    }
    found = phase_outs(demo_store, datetime.date(2000, 1, 1), datetime.date(2100, 1, 1))
    assert {(row.day, row.item, row.rule) for row in found if row.rule is not None} == expected != set()
