"""A lexicon as JSON and back: to index the names of a base anew takes ten times as long as to read them."""

from __future__ import annotations

import msgspec

from kb.errors import StoreUnavailableError
from kb.model.lookup import Lookup
from kb.reader.names.lexicon import Entry, Lexicon


class _Stored(msgspec.Struct, frozen=True):
    longest: int
    names: dict[str, tuple[Entry, ...]]


def encode_lexicon(lexicon: Lexicon) -> bytes:
    """The names of a lexicon; the same base gives the same bytes."""
    return msgspec.json.encode(_Stored(lexicon.longest, lexicon.names))


def decode_lexicon(data: bytes, lookup: Lookup) -> Lexicon:
    """The lexicon of a base as `encode_lexicon` wrote it; `StoreUnavailableError` if it is none."""
    try:
        stored = msgspec.json.decode(data, type=_Stored)
    except (msgspec.DecodeError, UnicodeDecodeError) as error:
        raise StoreUnavailableError(f"The stored lexicon cannot be read: {error}. Build it again.") from error
    return Lexicon(stored.names, stored.longest, lookup)
