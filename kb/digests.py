"""Digests that tell whether a file or a folder has changed; nothing here guards a secret."""

from __future__ import annotations

# `hashlib` loads OpenSSL, a fortieth of a question's time; the standard `random` goes round it alike.
try:
    from _blake2 import blake2b
except ImportError:
    from hashlib import blake2b

SIZE = 32
"""Bytes of a digest; in hexadecimal it has twice as many characters."""


class Digest:
    """BLAKE2b (RFC 7693) of 256 bits over what is given piece by piece."""

    def __init__(self, data: bytes = b"") -> None:
        self._total = blake2b(data, digest_size=SIZE)

    def update(self, data: bytes) -> None:
        self._total.update(data)

    def hexadecimal(self) -> str:
        return self._total.hexdigest()


def digest_name(data: bytes) -> str:
    """The digest of bytes that are at hand, in hexadecimal."""
    return blake2b(data, digest_size=SIZE).hexdigest()
