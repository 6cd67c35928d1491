"""What may be named in a query: every prefix is known, every term declared, every record in the graph."""

from __future__ import annotations

from kb.graph import to_nquads
from kb.sparql import run_user_query
from kb.sparql.terms import query_terms
from kb.vocabulary import PREFIXES
from tests.sparql.shop import shop_base


def test_every_term_can_be_written_and_every_record_is_in_the_graph() -> None:
    base = shop_base()
    terms = query_terms(base)
    prefixes = {term.text for term in terms if term.kind == "prefix"}
    assert prefixes == {f"{prefix}:" for prefix in PREFIXES}
    named = [term.text for term in terms if term.kind in ("class", "property")]
    assert "skos:prefLabel" in named
    assert "cb:Rule" in named
    assert all(text.partition(":")[0] + ":" in prefixes for text in named)
    used = " ".join(f"{{ ?s {text} ?o }} UNION" for text in named)
    run_user_query(to_nquads(base), f"SELECT * WHERE {{ {used} {{}} }} LIMIT 1")  # each is valid SPARQL
    table = run_user_query(to_nquads(base), "SELECT DISTINCT ?s WHERE { ?s ?p ?o }")
    known = {f"<{row[0].value}>" for row in table.rows if row[0] is not None}
    records = {term.text for term in terms if term.kind == "record"}
    assert records
    assert records <= known
