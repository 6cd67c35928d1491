"""The lexicon of a generation is the one that its base gives."""

from __future__ import annotations

from pathlib import Path

import pytest

from kb.cache import decode_base, ensure
from kb.errors import StoreUnavailableError
from kb.model.lookup import Lookup
from kb.opening import demo_folder
from kb.reader.names.lexicon import Lexicon
from kb.reader.names.stored import decode_lexicon


def test_what_is_stored_is_what_would_be_built(tmp_path: Path) -> None:
    generation = ensure(demo_folder(), tmp_path)
    lookup = Lookup(decode_base(generation.base_json.read_bytes()))
    stored, built = decode_lexicon(generation.lexicon_json.read_bytes(), lookup), Lexicon.build(lookup)
    assert stored.names == built.names
    assert stored.longest == built.longest
    assert len(stored.names) > 1000


def test_what_is_no_lexicon_is_refused(tmp_path: Path) -> None:
    lookup = Lookup(decode_base(ensure(demo_folder(), tmp_path).base_json.read_bytes()))
    for data in (b"", b"{}", b'{"longest": 1, "names": {"cap": [["no kind", "x", "", 0]]}}', b"\xff"):
        with pytest.raises(StoreUnavailableError, match="Build it again"):
            decode_lexicon(data, lookup)
