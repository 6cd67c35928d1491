"""From records to English: the one place that puts rules, conditions, cases and verdicts into words.

What only few answers need is loaded when it is first used.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from kb.lazy import loader
from kb.wording.aspects import of_item, say_open_values, say_set, say_value
from kb.wording.cases import say_audience, say_case, say_depends, say_fact, say_facts, say_holders, say_who
from kb.wording.conditions import say_condition, say_test
from kb.wording.english import capital, definite, indefinite, listing, plural, sentence
from kb.wording.labels import (
    clause_reference,
    edition_reference,
    grade_label,
    is_place,
    item_label,
    rule_reference,
    the_item,
    value_name,
)
from kb.wording.positions import say_position, say_positions
from kb.wording.quantities import (
    say_count,
    say_date,
    say_datum,
    say_interval,
    say_intervals,
    say_measure,
    say_quantity,
    say_tolerance,
)
from kb.wording.queries import say_query, say_query_on_its_day
from kb.wording.rules import say_rule
from kb.wording.scopes import say_scope
from kb.wording.sets import say_values
from kb.wording.verdicts import say_verdict, say_when

if TYPE_CHECKING:
    from kb.wording.comparisons import (
        say_class_line,
        say_comparison,
        say_lead,
        say_matter,
        say_open_alike,
        say_sides,
        say_table,
    )
    from kb.wording.derivations import say_defeat, say_principle
    from kb.wording.listings import say_list_headline, say_sources
    from kb.wording.protection import say_protection
    from kb.wording.stated import say_stated
    from kb.wording.unless import say_joined, say_usual

__all__ = [
    "capital",
    "clause_reference",
    "definite",
    "edition_reference",
    "grade_label",
    "indefinite",
    "is_place",
    "item_label",
    "listing",
    "of_item",
    "plural",
    "rule_reference",
    "say_audience",
    "say_case",
    "say_class_line",
    "say_comparison",
    "say_condition",
    "say_count",
    "say_date",
    "say_datum",
    "say_defeat",
    "say_depends",
    "say_fact",
    "say_facts",
    "say_holders",
    "say_interval",
    "say_intervals",
    "say_joined",
    "say_lead",
    "say_list_headline",
    "say_matter",
    "say_measure",
    "say_open_alike",
    "say_open_values",
    "say_position",
    "say_positions",
    "say_principle",
    "say_protection",
    "say_quantity",
    "say_query",
    "say_query_on_its_day",
    "say_rule",
    "say_scope",
    "say_set",
    "say_sides",
    "say_sources",
    "say_stated",
    "say_table",
    "say_test",
    "say_tolerance",
    "say_usual",
    "say_value",
    "say_values",
    "say_verdict",
    "say_when",
    "say_who",
    "sentence",
    "the_item",
    "value_name",
]

__getattr__ = loader(
    __name__,
    {
        "kb.wording.comparisons": (
            "say_class_line",
            "say_comparison",
            "say_lead",
            "say_matter",
            "say_open_alike",
            "say_sides",
            "say_table",
        ),
        "kb.wording.derivations": ("say_defeat", "say_principle"),
        "kb.wording.listings": ("say_list_headline", "say_sources"),
        "kb.wording.protection": ("say_protection",),
        "kb.wording.stated": ("say_stated",),
        "kb.wording.unless": ("say_joined", "say_usual"),
    },
)
