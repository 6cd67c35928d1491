"""Names of a package that are loaded when first used: a command pays only for what it needs (PEP 562)."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib import import_module


def loader(package: str, homes: Mapping[str, tuple[str, ...]]) -> Callable[[str], object]:
    """The `__getattr__` of a package; `homes` maps a module to the names that it gives."""
    modules = {name: module for module, names in homes.items() for name in names}

    def load(name: str) -> object:
        if name not in modules:
            raise AttributeError(f"module {package!r} has no attribute {name!r}")
        return getattr(import_module(modules[name]), name)

    return load
