"""A user's own query, run in a process of its own that can neither write, nor reach out, nor run on."""

from __future__ import annotations

import os
import select
import signal
import sys
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

import msgspec
import pyoxigraph

from kb.errors import ClothboundError, StoreUnavailableError, UsageError
from kb.sparql.guard import check_query, what_is_wrong
from kb.sparql.store import HasStore, StoreSource, source_of
from kb.sparql.table import ResultKind, Table, Term
from kb.text import Pattern, visible
from kb.vocabulary import PREFIXES

DEADLINE_S = 10.0
MOST_S = 3600.0
MEMORY_BYTES = 512 * 1024 * 1024
ROW_LIMIT = 10_000
RESULT_BYTES = 64 * 1024 * 1024

_CHILD = Path(__file__).with_name("child.py")
_PACKAGES = str(Path(pyoxigraph.__file__).parent.parent)
_MESSAGE_LENGTH = 300
_PLACE = Pattern(r"error at (\d+):(\d+): ")
_CHUNK = 1 << 16


class _Head(msgspec.Struct, frozen=True):
    """A line of the child that is not a row: what kind of result follows, how it ended, or an error."""

    kind: ResultKind | None = None
    columns: tuple[str, ...] = ()
    boolean: bool | None = None
    end: str | None = None
    error: str | None = None
    message: str = ""


_ROW = msgspec.json.Decoder(tuple[Term | None, ...])
_HEAD = msgspec.json.Decoder(_Head)


class _Child:
    """A started child: its process id, the pipe to it and the pipe from it. `close` leaves nothing behind."""

    def __init__(self) -> None:
        here_in, self.to_child = os.pipe()
        self.from_child, here_out = os.pipe()
        try:
            self.pid = os.posix_spawn(
                sys.executable,
                [sys.executable, "-I", "-S", str(_CHILD)],
                os.environ,
                file_actions=[
                    (os.POSIX_SPAWN_DUP2, here_in, 0),
                    (os.POSIX_SPAWN_DUP2, here_out, 1),
                    (os.POSIX_SPAWN_OPEN, 2, os.devnull, os.O_WRONLY, 0),
                ],
                setsigdef=[signal.SIGINT, signal.SIGTERM],
                setsigmask=[],
            )
        except OSError as error:
            os.close(self.to_child)
            os.close(self.from_child)
            raise StoreUnavailableError(
                f"No process can be started for the query: {error.strerror}."
            ) from error
        finally:
            os.close(here_in)
            os.close(here_out)
        os.set_blocking(self.to_child, False)
        os.set_blocking(self.from_child, False)
        self.status: int | None = None

    def close(self) -> None:
        os.close(self.to_child)
        os.close(self.from_child)
        with suppress(ProcessLookupError):
            os.kill(self.pid, signal.SIGKILL)
        self.wait()

    def wait(self) -> int:
        """The exit status; the process is gone afterwards."""
        if self.status is None:
            try:
                self.status = os.waitstatus_to_exitcode(os.waitpid(self.pid, 0)[1])
            except ChildProcessError:  # another part of the program collects children
                self.status = 0
        return self.status


def _deadline_passed(seconds: float) -> StoreUnavailableError:
    return StoreUnavailableError(
        f"The query took longer than {seconds:g} s and was stopped. Ask for less, or add a LIMIT."
    )


def _exchange(child: _Child, request: bytes, deadline_s: float) -> Iterator[bytes]:
    """Send the request and yield what comes back, piece by piece, until the child closes its end."""
    end = time.monotonic() + deadline_s
    poll = select.poll()
    poll.register(child.from_child, select.POLLIN)
    poll.register(child.to_child, select.POLLOUT)
    unsent = memoryview(request)
    while True:
        left = end - time.monotonic()
        ready = dict(poll.poll(left * 1000)) if left > 0 else {}
        if not ready:
            raise _deadline_passed(deadline_s)
        if child.to_child in ready:
            try:
                unsent = unsent[os.write(child.to_child, unsent[:_CHUNK]) :]
            except BrokenPipeError:
                unsent = memoryview(b"")
            if not unsent:
                poll.unregister(child.to_child)
        if child.from_child in ready:
            piece = os.read(child.from_child, _CHUNK)
            if not piece:
                return
            yield piece


def _lines(pieces: Iterator[bytes], most: int) -> Iterator[bytes | None]:
    """Whole lines; None instead of all the rest once more than `most` bytes have come."""
    rest = b""
    total = 0
    for piece in pieces:
        total += len(piece)
        if total > most:
            yield None
            return
        *whole, rest = (rest + piece).split(b"\n") if b"\n" in piece else (rest + piece,)
        yield from whole


# The engine lists characters that it would have taken, "['0' ..= '9' | '%']"; that helps nobody.
_CHARACTERS = Pattern(r",? ?\[(?:'|_)[^\]]*\]")


def _error(found: _Head, text: str) -> ClothboundError:
    message = visible(" ".join(found.message.split()))
    if len(message) > _MESSAGE_LENGTH:
        message = message[:_MESSAGE_LENGTH] + "..."
    if found.error == "syntax":
        plain = what_is_wrong(text)
        if plain is not None:
            return plain
        place = _PLACE.match(message)
        where = f"line {place[1]}, column {place[2]}: this" if place else "it"
        wanted = _CHARACTERS.sub("", _PLACE.sub("", message)).removesuffix("expected one of").strip(" ,.")
        return UsageError(f"Query, {where} is not valid SPARQL{f': {wanted}' if wanted else ''}.")
    if found.error == "memory":
        return _too_big()
    if found.error == "store":
        return StoreUnavailableError(f"The store cannot be opened: {message}. Build it again.")
    return UsageError(f"The query cannot be answered: {message}.")


def _too_big() -> StoreUnavailableError:
    return StoreUnavailableError(
        "The query needs more memory than it may have, or is too deep, and was stopped. Ask for less."
    )


def _crash(status: int) -> StoreUnavailableError:
    """What it means that the child ended without saying that it was done."""
    if status in (-signal.SIGXCPU, -signal.SIGKILL):
        return StoreUnavailableError("The query took too much processor time and was stopped. Ask for less.")
    if status in (-signal.SIGSEGV, -signal.SIGABRT, -signal.SIGBUS, -signal.SIGILL):
        return _too_big()
    return StoreUnavailableError(f"The query process ended unexpectedly (status {status}).")


def _collect(lines: Iterator[bytes | None], child: _Child, text: str) -> Table:
    head: _Head | None = None
    rows: list[tuple[Term | None, ...]] = []
    end: str | None = None
    for line in lines:
        if line is None:
            end = "truncated"
            break
        if line.startswith(b"["):
            rows.append(_ROW.decode(line))
            continue
        found = _HEAD.decode(line)
        if found.error is not None:
            raise _error(found, text)
        if found.end is not None:
            end = found.end
            break
        head = found
    if head is None or head.kind is None or end is None:
        raise _crash(child.wait())
    return Table(
        kind=head.kind,
        columns=head.columns,
        rows=tuple(rows),
        boolean=head.boolean,
        truncated=end == "truncated",
    )


def _request(source: Path | bytes, text: str, deadline_s: float, memory_bytes: int, row_limit: int) -> bytes:
    nquads = source if isinstance(source, bytes) else b""
    request: dict[str, Any] = {
        "text": text,
        "prefixes": dict(PREFIXES),
        "store": None if isinstance(source, bytes) else str(source),
        "bytes": len(nquads),
        "packages": _PACKAGES,
        "memory": memory_bytes,
        "seconds": int(deadline_s) + 1,
        "rows": row_limit,
    }
    return msgspec.json.encode(request) + b"\n" + nquads


def run_user_query(
    source: StoreSource | HasStore,
    text: str,
    *,
    deadline_s: float = DEADLINE_S,
    memory_bytes: int = MEMORY_BYTES,
    row_limit: int = ROW_LIMIT,
) -> Table:
    """The result of a read-only SPARQL 1.1 query over a store folder, N-Quads, or what has a `store`.

    The union of all graphs is the default graph; the prefixes of `kb.vocabulary` need no declaration.
    `memory_bytes` is what the query may use beyond the opened store. A result over `row_limit` rows or
    `RESULT_BYTES` comes cut, with `truncated` set.

    Raises `UsageError` for a query that is refused or not valid, or a deadline that is no time or over an
    hour; `StoreUnavailableError` if the store does not open, or the deadline or the memory is used up.
    """
    if not 0 < deadline_s <= MOST_S:  # false for what is not a number, too
        raise UsageError(f"The deadline is a number of seconds above 0 and at most {MOST_S:g}.")
    check_query(text)
    request = _request(source_of(source), text, deadline_s, memory_bytes, row_limit)
    child = _Child()
    try:
        return _collect(_lines(_exchange(child, request, deadline_s), RESULT_BYTES), child, text)
    except (msgspec.DecodeError, msgspec.ValidationError) as error:
        raise StoreUnavailableError("The query process sent something unreadable.") from error
    finally:
        child.close()
