"""Checks guidance, drafted or written by hand, against the rule books."""

from kb.guidance.checking.checking import Desk, check_document
from kb.guidance.checking.document import Document, read_document
from kb.guidance.checking.findings import CheckFinding, CheckReport, Unread

__all__ = [
    "CheckFinding",
    "CheckReport",
    "Desk",
    "Document",
    "Unread",
    "check_document",
    "read_document",
]
