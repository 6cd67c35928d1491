"""Clothbound's knowledge base: dress rules as data beside their clauses, and what they say.

Names are loaded when first used, so that a command pays only for what it needs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from kb.lazy import loader

if TYPE_CHECKING:
    from kb.answer import answer_to_json
    from kb.audit import AuditReport, Finding, audit_to_json
    from kb.building import audit_books, build, export_base
    from kb.bulk import CaseTable, CellProblem
    from kb.errors import (
        ClothboundError,
        InvalidDataError,
        Problem,
        StoreUnavailableError,
        UsageError,
    )
    from kb.files import write_atomically
    from kb.knowledge_base import KnowledgeBase
    from kb.model.questions import Answer, Reading
    from kb.opening import Opening, demo_folder
    from kb.sparql import Table
    from kb.text import visible

__all__ = [
    "Answer",
    "AuditReport",
    "CaseTable",
    "CellProblem",
    "ClothboundError",
    "Finding",
    "InvalidDataError",
    "KnowledgeBase",
    "Opening",
    "Problem",
    "Reading",
    "StoreUnavailableError",
    "Table",
    "UsageError",
    "answer_to_json",
    "audit_books",
    "audit_to_json",
    "build",
    "demo_folder",
    "export_base",
    "visible",
    "write_atomically",
]

__getattr__ = loader(
    __name__,
    {
        "kb.answer": ("answer_to_json",),
        "kb.audit": ("AuditReport", "Finding", "audit_to_json"),
        "kb.building": ("audit_books", "build", "export_base"),
        "kb.bulk": ("CaseTable", "CellProblem"),
        "kb.errors": (
            "ClothboundError",
            "InvalidDataError",
            "Problem",
            "StoreUnavailableError",
            "UsageError",
        ),
        "kb.files": ("write_atomically",),
        "kb.knowledge_base": ("KnowledgeBase",),
        "kb.model.questions": ("Answer", "Reading"),
        "kb.opening": ("Opening", "demo_folder"),
        "kb.sparql": ("Table",),
        "kb.text": ("visible",),
    },
)
