"""Users' queries that are refused before they are run, and where the message says it is."""

from __future__ import annotations

import pytest

from kb.errors import UsageError
from kb.sparql.guard import MAX_BYTES, check_query

REFUSED = [
    "SELECT * { SERVICE <http://127.0.0.1:9/> { ?s ?p ?o } }",
    "SELECT * { service <http://127.0.0.1:9/> { ?s ?p ?o } }",
    "SELECT * { sErViCe SILENT <http://127.0.0.1:9/> { ?s ?p ?o } }",
    "SELECT * {SERVICE<http://127.0.0.1:9/>{?s ?p ?o}}",
    "SELECT * { SERVICE#\n<http://127.0.0.1:9/> { ?s ?p ?o } }",
    "SELECT * { SERVICE ?where { ?s ?p ?o } }",
    "PREFIX e: <http://127.0.0.1:9/> SELECT * { SERVICEe:a { ?s ?p ?o } }",
    "PREFIX e: <http://127.0.0.1:9/> SELECT * { SERVICESILENTe:a { ?s ?p ?o } }",
    "PREFIX e: <http://127.0.0.1:9/> SELECT * { ?s ?p 1SERVICE e:a { ?s ?p ?o } }",
    "PREFIX e: <http://127.0.0.1:9/> SELECT * { ?s ?p 1.SERVICE e:a { ?s ?p ?o } }",
    "PREFIX e: <http://127.0.0.1:9/> SELECT * { ?s ?p trueSERVICE e:a { ?s ?p ?o } }",
    "PREFIX e: <http://127.0.0.1:9/> SELECT * { ?s ?p e:.SERVICE e:a { ?s ?p ?o } }",
    "PREFIX e: <http://127.0.0.1:9/> SELECT * { ?s ?p e:a\\# SERVICE e:a { ?s ?p ?o } }",
    "PREFIX e: <http://127.0.0.1:9/> SELECT * { ?s ?p e:a\\' SERVICE e:a { ?s ?p ?o } } #'",
    "SELECT * { FILTER(?a<?b)SERVICE?x#>\n { ?s ?p ?o } }",
    "SELECT * { FILTER(?a<'>')SERVICE<http://127.0.0.1:9/>{?s ?p ?o}#'\n }",
    "SELECT * { \\u0053ERVICE <http://127.0.0.1:9/> { ?s ?p ?o } }",
    "SELECT * { S\\U00000045RVICE <http://127.0.0.1:9/> { ?s ?p ?o } }",
    "SELECT * { \u017fERVICE <http://127.0.0.1:9/> { ?s ?p ?o } }",
    "SELECT ('\\u0027 AS ?x) { SERVICE <http://127.0.0.1:9/> {} } #'",
    'SELECT * { ?s ?p \'a\\\'b\', """x""" . SERVICE <http://127.0.0.1:9/> {} }',
    "LOAD <file:///etc/passwd>",
    "LOAD SILENT <http://127.0.0.1:9/>",
    "INSERT DATA { <a:b> <a:b> <a:b> }",
    "delete where { ?s ?p ?o }",
    "DROP ALL",
    "CLEAR ALL",
    "PREFIX a: <b:c> WITH <a:b> DELETE { ?s ?p ?o } WHERE { ?s ?p ?o }",
    "SELECT * FROM <file:///etc/passwd> { ?s ?p ?o }",
    "SELECT * FROM NAMED <file:///etc/passwd> { GRAPH ?g { ?s ?p ?o } }",
    "SELECT *from<file:///etc/passwd>{?s ?p ?o}",
    "PREFIX e: <file:///> SELECT * FROMe:passwd {?s ?p ?o}",
    "ASK { ?s ?p 'never closed }",
    "ASK { ?s ?p '''never closed'' }",
    "SELECT * { << ?s ?p ?o >> ?q ?r }",
    "",
    " \n",
    "SELECT ('\ud800' AS ?x) {}",
    "ASK {} # " + "x" * MAX_BYTES,
    "ASK " + "{" * 65 + "}" * 65,
    "SELECT (" + "!" * 65 + "true AS ?x) {}",
    "SELECT (" + "- " * 65 + "1 AS ?x) {}",
    "ASK { ?s " + "^" * 65 + "<a:b> ?o }",
    "SELECT (" + "(" * 30_000 + "1" + ")" * 30_000 + " AS ?x) {}",
    "ASK { ?s ?p " + "[ <a:b> " * 5000 + "1" + "]" * 5000 + " }",
]


@pytest.mark.parametrize("text", REFUSED, ids=range(len(REFUSED)))
def test_refused(text: str) -> None:
    with pytest.raises(UsageError) as caught:
        check_query(text)
    assert len(str(caught.value)) < 200


def test_a_refusal_says_where() -> None:
    with pytest.raises(UsageError, match=r"line 2, column 3: SERVICE is not accepted"):
        check_query("SELECT * {\n  SERVICE <http://127.0.0.1:9/> {} }")
