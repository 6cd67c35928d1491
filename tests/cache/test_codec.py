"""A rule base as JSON and back."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings

from kb.cache import decode_base, encode_base
from kb.errors import StoreUnavailableError
from kb.files import data_folder
from kb.model.records import RuleBase
from kb.sources import load_rule_base
from tests.graph.graph_bases import for_type


@given(base=for_type(RuleBase))
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_base_comes_back(base: RuleBase) -> None:
    assert decode_base(encode_base(base)) == base


def test_the_demo_comes_back_and_the_bytes_do_not_depend_on_hashing() -> None:
    base = load_rule_base(data_folder("demo_facts")).base
    assert base is not None
    data = encode_base(base)
    again = decode_base(data)
    assert again == base
    assert encode_base(again) == data
    groups = msgspec.json.decode(data)["rules"]
    for rule in groups:
        members = rule["value"]["values"].get("members", [])
        assert members == sorted(members)


@pytest.mark.parametrize("data", [b"", b"{}", b"[]", b'{"service": 1}', b"\xff\xfe", b"null"])
def test_what_is_no_base_is_a_clear_error(data: bytes) -> None:
    with pytest.raises(StoreUnavailableError, match="Build it again"):
        decode_base(data)


@pytest.mark.parametrize("number", ["x", "1/0", "", "1" * 5000])
def test_a_bad_number_is_a_clear_error(number: str) -> None:
    base = load_rule_base(data_folder("demo_facts")).base
    assert base is not None
    document = msgspec.json.decode(encode_base(base))
    document["tolerances"][0]["allow"] = number
    with pytest.raises(StoreUnavailableError, match="Build it again"):
        decode_base(msgspec.json.encode(document))
