"""What leads a table where a verdict is one of some rigs: "Yes, in parade rig: ...; in any other rig ..."."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.conditions import Test
from kb.model.lookup import Lookup
from kb.model.questions import Query, Verdict
from kb.model.values import ValueSet, intersect, is_empty, is_subset, subtract
from kb.wording.cases import Facts
from kb.wording.conditions import phrase_in
from kb.wording.english import is_plural
from kb.wording.left_off import rigs_of_duty
from kb.wording.manners import is_manner
from kb.wording.phrases import WEARER
from kb.wording.presumed import RIG
from kb.wording.unless import all_values
from kb.wording.verdicts import MODALS, say_plain

Rows = Sequence[tuple[Facts, Verdict]]
UNSAID: dict[str, str] = {"silent": "the books are silent", "conflict": "the clauses disagree"}

_LONGEST = 260


def say_in_rig(lookup: Lookup, query: Query, rows: Rows, rigs: ValueSet, *, told: bool) -> str:
    """ "Yes, in parade rig: the sash must be worn with the tunic; in any other rig it must not be."

    Where nothing that was told goes with these rigs alone, it is one verdict in all others, and a yes in
    them: a no is said where nothing holds in any other, since no leave is then left unsaid.
    """
    if dict(query.case.facts).get(RIG) == rigs or not any(RIG in dict(when) for when, _ in rows):
        return ""  # it is what is said within them, or the same in all
    rigs = _alike_in(rows, rigs) if told else rigs
    inside = [(dict(when), verdict) for when, verdict in rows if may_have(when, RIG, rigs)]
    others = subtract(lookup.domain(RIG), rigs)
    left = [verdict for when, verdict in rows if may_have(when, RIG, others)]
    one = len({*left}) == 1 and left[0] != "conditional"
    silent = one and left[0] == "silent"
    off = query.polarity == "not" and not silent and rigs != rigs_of_duty(lookup, query)
    if not left or not (told or one) or query.value is not None or off:
        return ""
    table = [(_within_rigs(when, rigs), verdict) for when, verdict in inside]
    case = msgspec.structs.replace(query.case, facts=(*query.case.facts, (RIG, rigs)))
    asked = msgspec.structs.replace(query, case=case)
    facts = tuple(dict.fromkeys(fact for when, _ in table for fact, _ in when))
    line = say_plain(lookup, "conditional" if facts else table[0][1], asked, facts, table)
    first = next((word for word in ("Yes", "No") if line.startswith(word)), "")
    where = phrase_in(lookup, Test(RIG, rigs)).clause.removeprefix(f"{WEARER} is ")
    if not first or not (told or silent or first == "Yes") or (" except " in where and not one):
        return ""
    rest = say_again(lookup, query, left[0]) if one else "it depends on further facts"
    other = "in any other rig"
    if " except " in where:
        other = phrase_in(lookup, Test(RIG, others)).clause.removeprefix(f"{WEARER} is ")
    said = f"{first}, {where}{line[len(first) :].removesuffix('.')}; {other} {rest}."
    return said if len(said) <= _LONGEST else ""


def _alike_in(rows: Rows, rigs: ValueSet) -> ValueSet:
    """Rigs with all others of which the same verdict is told, where nothing is said of the rest."""
    inside = {verdict for when, verdict in rows if may_have(when, RIG, rigs)}
    told = [when for when, verdict in rows if verdict != "silent"]
    whole = all(dict(when).keys() == {RIG} for when, _ in rows)
    if not whole or len(inside) != 1 or inside != {verdict for _, verdict in rows} - {"silent"}:
        return rigs
    return all_values(told, range(len(told)), RIG)


def _within_rigs(when: dict[str, ValueSet], rigs: ValueSet) -> Facts:
    """A case among these rigs: without them where they are all of them that it has."""
    within = {**when, RIG: intersect(rigs, when[RIG])} if RIG in when else when
    return tuple(test for test in within.items() if test[0] != RIG or not is_subset(rigs, test[1]))


def spoken_of(rows: Rows) -> ValueSet | None:
    """The rigs in which a thing may or must be worn, where nothing is said of it in any other."""
    open_ = [when for when, verdict in rows if verdict in ("required", "permitted")]
    told = [when for when, verdict in rows if verdict != "silent"]
    if not open_ or len(open_) < len(told) or not all(RIG in dict(when) for when in told):
        return None
    return all_values(open_, range(len(open_)), RIG)


def may_have(row: Facts, fact: str, values: ValueSet) -> bool:
    return not any(name == fact and is_empty(intersect(values, had)) for name, had in row)


def say_again(lookup: Lookup, query: Query, verdict: Verdict, modal: str = "") -> str:
    """ "they must not be", after what was said of the same thing before."""
    plural = is_plural(lookup.items[query.items[0]].label) and not is_manner(lookup.aspects[query.aspect])
    it = "they" if plural else "it"
    return UNSAID.get(verdict) or f"{it} {modal or MODALS[verdict]} be"
