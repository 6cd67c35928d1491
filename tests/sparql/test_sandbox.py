"""Users' queries: what they give, what is refused, and what hostile ones cannot do."""

from __future__ import annotations

import contextlib
import os
import re
import socket
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pyoxigraph
import pytest

from kb.errors import StoreUnavailableError, UsageError
from kb.graph import to_nquads
from kb.sparql import Table, Term, run_user_query
from kb.sparql.guard import check_query
from tests.sparql.shop import shop_base

CB = "PREFIX cb: <https://clothbound.example/ns#> "
PEOPLE_OFTEN_ASK = CB + "SELECT ?r ?m WHERE { ?r cb:modality ?m } ORDER BY ?r"


@pytest.fixture(scope="module")
def nquads() -> bytes:
    return to_nquads(shop_base())


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory, nquads: bytes) -> Path:
    """An on-disk store."""
    path = tmp_path_factory.mktemp("store") / "store"
    store = pyoxigraph.Store(str(path))
    store.bulk_load(nquads, pyoxigraph.RdfFormat.N_QUADS)
    store.flush()
    del store
    return path


@pytest.fixture(autouse=True)
def _nothing_left_behind() -> Iterator[None]:
    """After every test: no child, dead or alive, and no open file more than before."""
    before = len(os.listdir("/proc/self/fd"))  # noqa: PTH208  a handle of its own would count
    yield
    with pytest.raises(ChildProcessError):
        os.waitpid(-1, os.WNOHANG)
    assert len(os.listdir("/proc/self/fd")) == before  # noqa: PTH208


def values(table: Table) -> list[tuple[str | None, ...]]:
    return [tuple(None if term is None else term.value for term in row) for row in table.rows]


# -- what queries give ----------------------------------------------------------------------------------


def test_known_prefixes_need_no_declaration_and_a_declared_one_goes_first(nquads: bytes) -> None:
    plain = "SELECT ?r ?m WHERE { ?r cb:modality ?m } ORDER BY ?r"
    assert values(run_user_query(nquads, plain)) == values(run_user_query(nquads, PEOPLE_OFTEN_ASK)) != []
    assert values(run_user_query(nquads, "PREFIX cb: <https://other.example/> " + plain)) == []
    with pytest.raises(UsageError, match="there is no prefix unheard:"):
        run_user_query(nquads, plain.replace("cb:", "unheard:"))


@pytest.mark.parametrize("on_disk", [True, False])
def test_a_plain_query(folder: Path, nquads: bytes, on_disk: bool) -> None:
    table = run_user_query(folder if on_disk else nquads, PEOPLE_OFTEN_ASK)
    assert table.kind == "select"
    assert table.columns == ("r", "m")
    assert len(table.rows) == len(shop_base().rules)
    assert ("https://little.example/rule/coats", "must") in values(table)
    assert not table.truncated


def test_disk_and_memory_give_the_same(folder: Path, nquads: bytes) -> None:
    text = "SELECT * { GRAPH ?g { ?s ?p ?o } } ORDER BY ?g ?s ?p ?o"
    assert run_user_query(folder, text) == run_user_query(nquads, text)


def test_terms_of_every_kind(folder: Path) -> None:
    text = 'SELECT (<a:b> AS ?i) ("x" AS ?s) ("x"@en AS ?l) (1.5 AS ?n) (BNODE() AS ?b) ?none {}'
    ((iri, plain, tagged, number, blank, none),) = run_user_query(folder, text).rows
    xsd, rdf = "http://www.w3.org/2001/XMLSchema#", "http://www.w3.org/1999/02/22-rdf-syntax-ns#"
    assert (iri, none) == (Term("iri", "a:b"), None)
    assert plain == Term("literal", "x", xsd + "string")
    assert tagged == Term("literal", "x", rdf + "langString", "en")
    assert number == Term("literal", "1.5", xsd + "decimal")
    assert blank is not None
    assert blank.kind == "blank"


def test_ask_construct_and_describe(folder: Path) -> None:
    assert run_user_query(folder, "ASK { ?s ?p ?o }") == Table(kind="ask", boolean=True)
    assert run_user_query(folder, "ASK { <a:b> ?p ?o }").boolean is False
    built = run_user_query(folder, "CONSTRUCT { ?s <a:is> ?o } WHERE { ?s a ?o } LIMIT 3")
    assert (built.kind, built.columns) == ("graph", ("subject", "predicate", "object"))
    assert {row[1] for row in built.rows} == {Term("iri", "a:is")}
    assert len(run_user_query(folder, "DESCRIBE <https://little.example/item/cap>").rows) > 5


def test_rows_over_the_limit_are_cut(folder: Path) -> None:
    whole = run_user_query(folder, PEOPLE_OFTEN_ASK, row_limit=12)
    assert (len(whole.rows), whole.truncated) == (12, False)
    cut = run_user_query(folder, PEOPLE_OFTEN_ASK, row_limit=11)
    assert (cut.rows, cut.truncated) == (whole.rows[:11], True)


def test_a_result_of_many_bytes_is_cut(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("kb.sparql.sandbox.RESULT_BYTES", 100_000)
    table = run_user_query(folder, "SELECT * { ?a ?b ?c . ?d ?e ?f }", row_limit=10**6)
    assert table.truncated
    assert 100 < len(table.rows) < 2000


def test_odd_characters_come_back_whole(folder: Path) -> None:
    text = "SELECT ?x { VALUES ?x { 'tab\\t line\\n quote\\' \\\\ \u202e\U0001f9e5 [not a row]' } }"
    assert values(run_user_query(folder, text)) == [("tab\t line\n quote' \\ \u202e\U0001f9e5 [not a row]",)]


# -- what is wrong comes as a plain message ---------------------------------------------------------------


def test_a_syntax_error_says_where(folder: Path) -> None:
    with pytest.raises(UsageError, match="line 1, column 25: this is not valid SPARQL: expected") as caught:
        run_user_query(folder, "SELECT ?x WHERE { ?x a }")
    assert "[" not in str(caught.value)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("SELECT ?x WHERE { ?x foo:bar ?y }", r"line 1, column 22: there is no prefix foo:\. .* skos:"),
        ("PREFIX foo: <http://a/>\nSELECT ?x { ?x foo:b ex:c }", "line 2, column 22: there is no prefix ex:"),
        ("SELECT ?x WHERE { ?x", "line 1, column 17: the } to this { is missing"),
        ("SELECT ?x { FILTER(?x > 3 }", r"line 1, column 19: the \) to this \( is missing"),
        ("SELECT }", "line 1, column 8: this } closes nothing"),
    ],
)
def test_a_prefix_or_a_bracket_is_named(folder: Path, text: str, said: str) -> None:
    with pytest.raises(UsageError, match=said):
        run_user_query(folder, text)


def test_what_is_in_order_is_not_blamed(folder: Path) -> None:
    run_user_query(folder, "PREFIX foo: <http://a/> ASK { _:b foo:bar [ rdf:type 'foo:{' ] } # }")


def test_messages_carry_no_control_characters(folder: Path) -> None:
    with pytest.raises(UsageError) as caught:
        run_user_query(folder, "SELECT * { \x1b[31m }")
    assert "\x1b" not in str(caught.value)


def test_a_missing_store(tmp_path: Path) -> None:
    with pytest.raises(StoreUnavailableError, match="cannot be opened"):
        run_user_query(tmp_path / "none", "ASK {}")


def test_broken_nquads() -> None:
    with pytest.raises(StoreUnavailableError, match="cannot be opened"):
        run_user_query(b"not quads", "ASK {}")


# -- let through by the check, and answered ----------------------------------------------------------------

ACCEPTED = [
    "SELECT ?service ?from ?load { ?service ?from ?load }",
    "SELECT * { ?s ?p 'SERVICE <x> LOAD FROM' }",
    'SELECT * { ?s ?p \'\'\'it\'s a SERVICE\'\'\', """say "LOAD" """ }',
    "SELECT * { ?s ?p ?o } # SERVICE <http://x/> { ( ( (",
    "SELECT * { ?s <https://sls.example/service/sls> ?o }",
    "SELECT * { ?s <a:b(c)> ?o }",
    "PREFIX cb: <https://clothbound.example/ns#> SELECT * { ?s a cb:Service ; cb:from cb:load.service }",
    "SELECT * { ?s ?p 'x'@en-GB FILTER(?a<?b&&?b>?c) FILTER (?a < ?b) }",
    "SELECT * { ?s ?p '\\u00e9' }",
    "ASK " + "{" * 64 + "}" * 64,
    "SELECT * { ?s ?p -1, +2 FILTER (!(?a = -?b)) }",
]


@pytest.mark.parametrize("text", ACCEPTED, ids=range(len(ACCEPTED)))
def test_accepted_and_answered(folder: Path, text: str) -> None:
    assert run_user_query(folder, text, row_limit=5).kind in ("select", "ask")


def test_the_check_is_linear() -> None:
    """No text of 64 kB takes it a noticeable time."""
    hostile = ["-" * 60_000, "'\\" * 30_000, '""' * 30_001, "<" * 60_000, "a." * 30_000, "\\u00e9" * 10_000]
    hostile += ['"' * 60_001, '"""' + '""a' * 20_000, "a:" * 30_000, "@a-" * 20_000, "'''" + "\\'" * 30_000]
    for text in hostile:
        started = time.perf_counter()
        with contextlib.suppress(UsageError):
            check_query(text)
        assert time.perf_counter() - started < 1.0, text[:20]


# -- let through by the check, and still contained ----------------------------------------------------------

MIB = 1024 * 1024
CRASHES = {
    "sum": "SELECT (" + "+".join(["1"] * 20_000) + " AS ?x) {}",
    "path": "SELECT * { ?s " + "/".join(["<a:b>"] * 9_000) + " ?o }",
    "alternatives": "SELECT * { ?s " + "|".join(["<a:b>"] * 9_000) + " ?o }",
    "union": "SELECT * { " + " UNION ".join(["{}"] * 6_000) + " }",
    "or": "SELECT (" + "||".join(["?a"] * 15_000) + " AS ?x) {}",
    "hidden brackets": "SELECT (?a<" + "(" * 20_000 + "?b#>\n" + ")" * 20_001 + " AS ?x) {}",
}


@pytest.mark.parametrize("name", CRASHES)
def test_a_query_that_crashes_the_engine_is_an_error_or_an_answer(folder: Path, name: str) -> None:
    """Which of the two may change with the engine; a traceback or a dead program it never is."""
    check_query(CRASHES[name])
    found: Table | str
    try:
        found = run_user_query(folder, CRASHES[name], deadline_s=1, row_limit=5)
    except (UsageError, StoreUnavailableError) as error:
        found = str(error)
    assert isinstance(found, Table) or re.match(r"Query, line|The query", found)


def test_a_deep_query_would_crash_this_process_but_only_ends_the_child(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("kb.sparql.sandbox.check_query", lambda _: None)
    with pytest.raises(StoreUnavailableError, match="too deep"):
        run_user_query(folder, "ASK { FILTER(" + "(" * 20_000 + "1" + ")" * 20_000 + ") }")


SLOW = {
    "product": "SELECT (COUNT(*) AS ?n) { ?a ?b ?c . ?d ?e ?f . ?g ?h ?i . ?j ?k ?l }",
    "path": "SELECT (COUNT(*) AS ?n) { ?a (!<a:b>|^!<a:b>)* ?b . ?c (!<a:b>|^!<a:b>)* ?d }",
    "sorted product": "SELECT * { ?a ?b ?c . ?d ?e ?f . ?g ?h ?i } ORDER BY STR(?a) STR(?i)",
}


@pytest.mark.parametrize("name", SLOW)
def test_the_deadline_holds(folder: Path, name: str) -> None:
    started = time.perf_counter()
    with pytest.raises(StoreUnavailableError, match="was stopped"):
        run_user_query(folder, SLOW[name], deadline_s=0.5, memory_bytes=2048 * MIB)
    assert time.perf_counter() - started < 1.5


def doubling(times: int) -> str:
    binds = " ".join(f"BIND(CONCAT(?v{n}, ?v{n}) AS ?v{n + 1})" for n in range(times))
    return f"SELECT (STRLEN(?v{times}) AS ?n) {{ BIND('xxxxxxxxxxxxxxxx' AS ?v0) {binds} }}"


def test_memory_is_bounded(folder: Path) -> None:
    assert values(run_user_query(folder, doubling(16))) == [(str(16 << 16),)]
    with pytest.raises(StoreUnavailableError, match="memory"):
        run_user_query(folder, doubling(40), memory_bytes=128 * MIB)


def test_memory_of_a_sort_is_bounded(folder: Path) -> None:
    with pytest.raises(StoreUnavailableError, match="was stopped"):
        run_user_query(
            folder, "SELECT * { ?a ?b ?c . ?d ?e ?f } ORDER BY ?f ?a", memory_bytes=64 * MIB, deadline_s=8
        )


@pytest.mark.parametrize("pattern", ["(a+)+$", "(a|a)*b", "((((a{90}){90}){90}){90})", "(a*)*" * 2000])
def test_regular_expressions_cannot_hang(folder: Path, pattern: str) -> None:
    text = f"SELECT (REGEX('{'a' * 5000}b', '{pattern}') AS ?x) {{}}"
    table = run_user_query(folder, text, deadline_s=5)
    assert len(table.rows) == 1


def test_even_unchecked_nothing_reaches_the_network(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Behind the check stands the child's own limit: it can open no socket."""
    monkeypatch.setattr("kb.sparql.sandbox.check_query", lambda _: None)
    with socket.create_server(("127.0.0.1", 0)) as server:
        server.settimeout(0.3)
        port = server.getsockname()[1]
        with pytest.raises(UsageError, match="cannot be answered"):
            run_user_query(folder, f"SELECT * {{ SERVICE <http://127.0.0.1:{port}/> {{ ?s ?p ?o }} }}")
        with pytest.raises(TimeoutError):
            server.accept()


def test_even_unchecked_nothing_is_written(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("kb.sparql.sandbox.check_query", lambda _: None)
    with pytest.raises(UsageError, match="not valid SPARQL"):
        run_user_query(folder, "INSERT DATA { <a:b> <a:b> <a:b> }")


# -- used from a program with threads ------------------------------------------------------------


def test_from_many_threads_at_once(folder: Path) -> None:
    found: list[int] = []

    def ask() -> None:
        for _ in range(3):
            found.append(len(run_user_query(folder, PEOPLE_OFTEN_ASK, deadline_s=30).rows))

    threads = [threading.Thread(target=ask) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert found == [12] * 12


def test_an_interrupt_leaves_no_child(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(*_: object) -> Iterator[bytes]:
        raise KeyboardInterrupt
        yield b""

    monkeypatch.setattr("kb.sparql.sandbox._exchange", interrupted)
    with pytest.raises(KeyboardInterrupt):
        run_user_query(folder, SLOW["product"])


def test_the_child_ends_when_its_parent_is_killed(folder: Path, tmp_path: Path) -> None:
    import signal
    import subprocess
    import sys

    script = tmp_path / "asker.py"
    script.write_text(
        "import sys\nfrom pathlib import Path\nimport kb.sparql.sandbox as sandbox\n"
        "start = sandbox._Child.__init__\n"
        "def told(self):\n    start(self)\n    print(self.pid, flush=True)\n"
        "sandbox._Child.__init__ = told\n"
        "sandbox.run_user_query(Path(sys.argv[1]), sys.argv[2], deadline_s=60)\n"
    )
    asker = subprocess.Popen(
        [sys.executable, str(script), str(folder), SLOW["product"]], stdout=subprocess.PIPE, text=True
    )
    assert asker.stdout is not None
    child = int(asker.stdout.readline())
    time.sleep(0.3)
    asker.send_signal(signal.SIGKILL)
    asker.wait()
    asker.stdout.close()
    for _ in range(50):
        state = Path(f"/proc/{child}/stat")
        if not state.exists() or state.read_text().rpartition(")")[2].split()[0] == "Z":
            return
        time.sleep(0.1)
    os.kill(child, signal.SIGKILL)
    pytest.fail("the child runs on")
