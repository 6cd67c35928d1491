"""What is done to a thing time and again, and what is to be done with one that is worn no more.

"How often are the boots greased?" asks for the care of which a rule says "grease each month"; "what do I do
with my whistle?", where no rule lets it be worn or carried any longer, for the one clause that still speaks
of it.
"""

from __future__ import annotations

from kb.keywords import lemma
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Rule
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set
from kb.text import Pattern

_OFTEN = Pattern(r"(?i)^(?:so |and |but )?how (?:often|frequently|many times)\b")
_EACH = word_set("each every once twice daily weekly monthly yearly annually before after always")
_DO_WITH = Pattern(
    r"(?i)^(?:so |and |but )?what (?:do|should|must|shall|am|are|is|can) (?:i|we|you|one)"
    r" (?:(?:have|need|meant|supposed) to )?do with [^,;:.]+$"
)
_WORN = frozenset({"wear", "carrying", "use"})


def done_often(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """ "How often must the vest be examined": the care of which a rule says how often it is."""
    item = _the_one(found) if _OFTEN.search(found.text) else None
    said = {lemma(token.low) for token in found.tokens}
    for rule in _in_force(item, case, lookup) if item is not None else ():
        aspect = lookup.aspects[rule.aspect]
        verb, *more = aspect.label.casefold().split() or [""]
        if rule.modality == "must" and aspect.within and lemma(verb) in said and not _EACH.isdisjoint(more):
            return Query(kind="how", items=(item or "",), aspect=aspect.within, case=case)
    return None


def worn_no_more(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """ "What do I do with my whistle": the one clause on it, where none lets it be worn or carried."""
    item = _the_one(found) if _DO_WITH.search(found.text.rstrip(" ?!.")) else None
    rules = _in_force(item, case, lookup) if item is not None else ()
    clauses = dict.fromkeys(rule.clause for rule in rules)
    if len(clauses) != 1 or any(rule.aspect in _WORN for rule in rules):
        return None
    return Query(kind="source", clause=next(iter(clauses)), case=case)


def _the_one(found: Understood) -> str | None:
    named = {piece.arg for piece in found.pieces if piece.tag == "item"}
    several = any(piece.tag == "items" for piece in found.pieces)
    return named.pop() if len(named) == 1 and not several else None


def _in_force(item: str, case: Case, lookup: Lookup) -> tuple[Rule, ...]:
    return tuple(
        rule
        for rule in lookup.rules_on(lookup.broader(item))
        if rule.valid_from <= case.as_of and (rule.valid_until is None or case.as_of < rule.valid_until)
    )
