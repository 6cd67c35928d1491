"""A rule base as JSON and back, without loss: exact numbers are texts such as "5/4"."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import msgspec

from kb.errors import StoreUnavailableError
from kb.model.records import RuleBase


def _to_json(value: Any) -> str:
    if isinstance(value, Fraction):
        return str(value)
    raise TypeError(f"{type(value).__name__} has no JSON form")


def _from_json(kind: type, value: Any) -> Any:
    if kind is Fraction and isinstance(value, str):
        above, _, below = value.partition("/")  # Fraction would find the parts by a regular expression
        return Fraction(int(above), int(below)) if below else Fraction(int(above))
    raise TypeError(f"{kind.__name__} has no JSON form")


_ENCODER = msgspec.json.Encoder(enc_hook=_to_json, order="deterministic")


def encode_base(base: RuleBase) -> bytes:
    """The base as JSON; the same base gives the same bytes."""
    return _ENCODER.encode(base)


def decode_base(data: bytes) -> RuleBase:
    """The base that `encode_base` wrote; `StoreUnavailableError` if it is none."""
    try:
        return msgspec.json.decode(data, type=RuleBase, dec_hook=_from_json)
    except (msgspec.DecodeError, UnicodeDecodeError, ValueError, TypeError, ZeroDivisionError) as error:
        raise StoreUnavailableError(
            f"The stored rule base cannot be read: {error}. Build it again."
        ) from error
