"""The process in which a user's query runs: started by file name, reads one request, writes rows, ends.

It is started anew and not forked, so it holds no lock, thread or file of the program that asked; imports
only what the query needs; and after opening the store takes from itself the right to open anything else.
"""

from __future__ import annotations

import json
import os
import resource
import sys
from _thread import start_new_thread
from collections.abc import Iterator
from contextlib import suppress
from typing import Any, BinaryIO

_PAGE = resource.getpagesize()


def _die_with_parent(stream: BinaryIO) -> None:
    """End at once when the asking process closes its end, even if it was killed."""
    stream.read()
    os._exit(1)


def _memory_in_use() -> int:
    try:
        with open("/proc/self/statm", "rb") as stream:  # noqa: PTH123  pathlib costs milliseconds here
            return int(stream.read().split()[0]) * _PAGE
    except OSError:
        return 0


def _limit(kind: int, amount: int) -> None:
    _, hard = resource.getrlimit(kind)
    if hard != resource.RLIM_INFINITY:
        amount = min(amount, hard)
    with suppress(OSError, ValueError):  # a system may lack the limit; the parent's deadline still holds
        resource.setrlimit(kind, (amount, amount))


def _contain(request: dict[str, Any]) -> None:
    """No more memory than granted, no more time, no new file, socket or process, no core dump."""
    _limit(resource.RLIMIT_AS, _memory_in_use() + request["memory"])
    _limit(resource.RLIMIT_CPU, request["seconds"])
    _limit(resource.RLIMIT_CORE, 0)
    _limit(resource.RLIMIT_FSIZE, 0)
    _limit(resource.RLIMIT_NOFILE, 0)


def _term(term: Any) -> list[str] | None:
    kind = type(term).__name__
    if kind == "NamedNode":
        return ["iri", term.value]
    if kind == "Literal":
        return ["literal", term.value, term.datatype.value, *([term.language] if term.language else [])]
    if kind == "BlankNode":
        return ["blank", term.value]
    if term is None:
        return None
    raise TypeError("the result has quoted triples, which RDF 1.1 does not know")


def _answers(result: Any) -> Iterator[dict[str, Any] | list[Any]]:
    kind = type(result).__name__
    if kind == "QueryBoolean":
        yield {"kind": "ask", "boolean": bool(result)}
        return
    if kind == "QueryTriples":
        yield {"kind": "graph", "columns": ["subject", "predicate", "object"]}
        for triple in result:
            yield [_term(triple.subject), _term(triple.predicate), _term(triple.object)]
        return
    columns = [variable.value for variable in result.variables]
    yield {"kind": "select", "columns": columns}
    for solution in result:
        yield [_term(term) for term in solution]


def _run(request: dict[str, Any], nquads: bytes, write: Any) -> None:
    sys.path.append(request["packages"])
    import pyoxigraph  # noqa: PLC0415  found through the request

    try:
        if request["store"] is None:
            store = pyoxigraph.Store()
            store.bulk_load(nquads, pyoxigraph.RdfFormat.N_QUADS)
        else:
            store = pyoxigraph.Store.read_only(request["store"])
    except (OSError, SyntaxError, ValueError) as error:
        write({"error": "store", "message": str(error)})
        return
    _contain(request)
    left = request["rows"]
    result = store.query(request["text"], prefixes=request["prefixes"], use_default_graph_as_union=True)
    for answer in _answers(result):
        if isinstance(answer, list):
            if not left:
                write({"end": "truncated"})
                return
            left -= 1
        write(answer)
    write({"end": "complete"})


def main() -> None:
    source, sink = sys.stdin.buffer, sys.stdout.buffer
    request = json.loads(source.readline())
    nquads = source.read(request["bytes"])
    start_new_thread(_die_with_parent, (source,))
    encode = json.JSONEncoder(ensure_ascii=False, separators=(",", ":")).encode

    def write(answer: object) -> None:
        sink.write(encode(answer).encode() + b"\n")

    try:
        _run(request, nquads, write)
    except MemoryError:
        write({"error": "memory", "message": ""})
    except SyntaxError as error:
        write({"error": "syntax", "message": str(error)})
    except Exception as error:
        write({"error": "query", "message": str(error)})
    sink.flush()
    os._exit(0)


if __name__ == "__main__":
    main()
