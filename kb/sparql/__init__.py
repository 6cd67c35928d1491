"""The store of a rule base and its questions in SPARQL; its text is in `kb/queries`.

Names are loaded when first used: a question needs the store, not the process for users' queries.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from kb.lazy import loader

if TYPE_CHECKING:
    from kb.sparql.named import named_query, query_names
    from kb.sparql.sandbox import run_user_query
    from kb.sparql.store import (
        Store,
        amendments,
        candidate_rules,
        clause_text,
        delegations,
        items_of_class,
        labels,
        linked_rules,
        open_store,
        opposing_rules,
        phase_outs,
        rules_in_force,
        rules_of_clause,
        rules_of_rig,
        run_named,
        who_may,
    )
    from kb.sparql.table import Table, Term, to_csv, to_json

__all__ = [
    "Store",
    "Table",
    "Term",
    "amendments",
    "candidate_rules",
    "clause_text",
    "delegations",
    "items_of_class",
    "labels",
    "linked_rules",
    "named_query",
    "open_store",
    "opposing_rules",
    "phase_outs",
    "query_names",
    "rules_in_force",
    "rules_of_clause",
    "rules_of_rig",
    "run_named",
    "run_user_query",
    "to_csv",
    "to_json",
    "who_may",
]

__getattr__ = loader(
    __name__,
    {
        "kb.sparql.named": ("named_query", "query_names"),
        "kb.sparql.sandbox": ("run_user_query",),
        "kb.sparql.store": (
            "Store",
            "amendments",
            "candidate_rules",
            "clause_text",
            "delegations",
            "items_of_class",
            "labels",
            "linked_rules",
            "open_store",
            "opposing_rules",
            "phase_outs",
            "rules_in_force",
            "rules_of_clause",
            "rules_of_rig",
            "run_named",
            "who_may",
        ),
        "kb.sparql.table": ("Table", "Term", "to_csv", "to_json"),
    },
)
