"""Names of things as people read them."""

from __future__ import annotations

from functools import lru_cache

from kb.model.lookup import Lookup
from kb.text import Pattern
from kb.wording.english import definite, is_adverbial, is_participial, listing

_CODE = Pattern(r"[A-Z]{1,4}-?\d{0,3}")
_WORD = Pattern(r"[A-Z][A-Z0-9-]*")
GRADE = "grade"


def item_label(lookup: Lookup, item: str) -> str:
    return lookup.items[item].label


def is_whole(lookup: Lookup, item: str) -> bool:
    """Whether a class is the clothes as a whole ("the uniform"), of which no other thing is one more."""
    return "uniform" in item_label(lookup, item).casefold().split()


def the_item(lookup: Lookup, item: str) -> str:
    """ "the storm coat", "the deck gloves"."""
    return definite(item_label(lookup, item))


def the_items(lookup: Lookup, items: tuple[str, ...], word: str = "and") -> str:
    return listing([the_item(lookup, item) for item in items], word)


@lru_cache(maxsize=256)
def is_coded(lookup: Lookup, fact: str) -> bool:
    """Whether all ids of a fact's values are short codes that people say (K5), not made-up names.

    People say them where a clause does, where they are all that a grade is called, and where a name would not
    tell a grade from a group: "a master" is of any grade of the masters.
    """
    record = lookup.facts[fact]
    if record.family != GRADE or not all(_CODE.fullmatch(value.id) for value in record.values):
        return False
    codes = {value.id for value in record.values}
    groups = {
        name.casefold()
        for group in lookup.base.groups
        if len(group.members) > 1
        for name in (group.label, group.one or "", *group.other_labels)
    }
    return any(value.label == value.id or value.label.casefold() in groups for value in record.values) or any(
        not codes.isdisjoint(_WORD.findall(clause.text)) for clause in lookup.base.clauses
    )


def value_name(lookup: Lookup, fact: str, value: str) -> str:
    """What a value of a fact is called within a sentence: the code of a grade, else its label."""
    return value if is_coded(lookup, fact) else lookup.value_label(fact, value)


def grade_label(lookup: Lookup, grade: str) -> str:
    """ "K5 (Second Keeper)"; the label alone where ids are not codes."""
    label = lookup.value_label(GRADE, grade)
    return f"{grade} ({label})" if is_coded(lookup, GRADE) and label != grade else label


def book_name(lookup: Lookup, book: str) -> str:
    """ "the Station Order", "the Dress Order (2019)" for a book or one of its editions."""
    if book in lookup.books:
        return definite(lookup.books[book].label)
    return definite(edition_reference(lookup, book))


def edition_reference(lookup: Lookup, edition: str) -> str:
    """ "Dress Order (2024)"."""
    record = lookup.editions[edition]
    return f"{lookup.books[record.book].label} ({edition.removeprefix(record.book + '/')})"


def clause_reference(lookup: Lookup, clause: str) -> str:
    """ "Dress Order (2024) 4.12"."""
    record = lookup.clauses[clause]
    return f"{edition_reference(lookup, record.edition)} {record.number}"


def rule_reference(lookup: Lookup, rule: str) -> str:
    """The reference of the clause that a rule stands in."""
    return clause_reference(lookup, lookup.rules[rule].clause)


def is_place(lookup: Lookup, fact: str) -> bool:
    """Whether the values of a fact are places: "on the platform", "ashore"."""
    record = lookup.facts[fact]
    labels = [value.label for value in record.values] if record.family == "situation" else []
    placed = [label for label in labels if is_adverbial(label) and not is_participial(label)]
    return record.kind == "choice" and len(placed) * 2 > len(labels)
