"""The audit: what in the rule books opposes itself, oversteps, never takes effect or leaves gaps."""

from kb.audit.auditing import audit_base, audit_problems
from kb.audit.findings import SEVERITIES, AuditReport, Finding, Severity, audit_to_json

__all__ = [
    "SEVERITIES",
    "AuditReport",
    "Finding",
    "Severity",
    "audit_base",
    "audit_problems",
    "audit_to_json",
]
