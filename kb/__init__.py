"""Clothbound's knowledge base: dress rules as data beside their clauses, and what they say.

Names are loaded when first used, so that a command pays only for what it needs.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from kb.answer import answer_to_json
    from kb.errors import (
        ClothboundError,
        InvalidDataError,
        Location,
        Problem,
        StoreUnavailableError,
        UsageError,
    )
    from kb.knowledge_base import BuildReport, KnowledgeBase, build, demo_folder, export_base
    from kb.model.questions import Answer, Reading
    from kb.model.records import Case
    from kb.sparql import Table
    from kb.text import visible

__all__ = [
    "Answer",
    "BuildReport",
    "Case",
    "ClothboundError",
    "InvalidDataError",
    "KnowledgeBase",
    "Location",
    "Problem",
    "Reading",
    "StoreUnavailableError",
    "Table",
    "UsageError",
    "answer_to_json",
    "build",
    "demo_folder",
    "export_base",
    "visible",
]

_HOMES = {
    "Answer": "kb.model.questions",
    "Reading": "kb.model.questions",
    "Case": "kb.model.records",
    "Table": "kb.sparql",
    "answer_to_json": "kb.answer",
    "visible": "kb.text",
    **dict.fromkeys(
        ("BuildReport", "KnowledgeBase", "build", "demo_folder", "export_base"), "kb.knowledge_base"
    ),
    **dict.fromkeys(
        (
            "ClothboundError",
            "InvalidDataError",
            "Location",
            "Problem",
            "StoreUnavailableError",
            "UsageError",
        ),
        "kb.errors",
    ),
}


def __getattr__(name: str) -> object:
    if name not in _HOMES:
        raise AttributeError(f"module 'kb' has no attribute {name!r}")
    return getattr(import_module(_HOMES[name]), name)
