"""What mostly holds, where it takes too many facts to say when it is otherwise."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.conditions import Test
from kb.model.lookup import Lookup
from kb.model.months import months_of
from kb.model.questions import Verdict
from kb.wording.cases import Facts, say_depends
from kb.wording.conditions import phrase_in
from kb.wording.english import listing
from kb.wording.presumed import has_two_sides
from kb.wording.situations import WORN
from kb.wording.unless import Usually, all_values, ordinary_sets, strange_in

_MOST_NAMED = 3
IN_SOME_DISAGREE = "; in some of these cases the clauses disagree"


def say_mostly(
    lookup: Lookup, rows: Sequence[tuple[Facts, Verdict]], line: str, otherwise: Sequence[int], said: Usually
) -> str:
    """ "..., unless one of these is out of the ordinary: the place and 4 more facts".

    The months in which it is otherwise are said: that of the day goes without saying, but not all the year.
    So are the things that may be worn for this one. Nothing where a fact that has no ordinary side makes it
    otherwise.
    """
    facts = [when for when, _ in rows]
    sets = ordinary_sets(lookup, facts, said)
    strange = [fact for index in otherwise for fact in strange_in(facts[index], sets)]
    if any(has_two_sides(lookup, fact) for fact in strange if fact not in said):
        return ""
    names = sorted(dict.fromkeys(strange), key=strange.count, reverse=True)
    apart = [fact for fact in names if months_of(lookup.facts[fact]) or fact.startswith(WORN)][:_MOST_NAMED]
    unless = []
    for fact in apart:
        inside = [index for index in otherwise if fact in strange_in(facts[index], sets)]
        unless.append(phrase_in(lookup, Test(fact, all_values(facts, inside, fact))).clause)
    if rest := [fact for fact in names if fact not in apart]:
        unless.append(f"one of these is out of the ordinary: {say_depends(lookup, rest)}")
    clash = IN_SOME_DISAGREE if any(rows[index][1] == "conflict" for index in otherwise) else ""
    if {rows[index][1] for index in otherwise} == {"silent"}:  # "unless" would be taken for the contrary
        return f"{line.removesuffix('.')}; in some cases when {listing(unless, 'or')}, the books are silent."
    return f"{line.removesuffix('.')}, unless {listing(unless, 'or')}{clash}."
