"""Headlines of tables: yes or no first, where nothing is out of the ordinary, then what holds otherwise.

A short table is said whole; of a long one it is said outside of which cases the first word holds, and what it
turns on within them. Nothing is left out by it: no case that answers otherwise lies outside of those.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from itertools import chain
from types import MappingProxyType

import msgspec

from kb.model.conditions import AllOf, Condition, Test, all_of, tests
from kb.model.lookup import Lookup
from kb.model.questions import Query, Verdict
from kb.model.values import YES, ValueSet, is_subset, subtract
from kb.wording.cases import Facts, say_depends
from kb.wording.either import say_either
from kb.wording.english import sentence
from kb.wording.in_rigs import UNSAID, Rows, may_have, say_again, say_in_rig, spoken_of
from kb.wording.labels import the_item
from kb.wording.left_off import rigs_of_duty
from kb.wording.manners import is_manner
from kb.wording.mostly import IN_SOME_DISAGREE, say_mostly
from kb.wording.presumed import RIG, has_two_sides, place_of
from kb.wording.situations import WORN
from kb.wording.unless import (
    Usually,
    all_values,
    exceptions,
    goes_with,
    is_denied,
    ordinary_rows,
    ordinary_sets,
    say_any,
    say_exceptions,
    say_joined,
    strange_in,
    usually_in,
)
from kb.wording.verdicts import MODALS, done_in, means_yes, say_plain, say_settled, thing_in

_MOST_COVERING = 3  # facts that are named for the exceptions
_LONGEST = 170  # characters of them
_MOST_SAID = 3  # verdicts of a table that is said whole
_LONGEST_WHOLE = 260


def say_ordinarily(lookup: Lookup, query: Query, rows: Rows) -> str:
    """Yes or no, "unless ...", where that says the whole table; else nothing."""
    said = usually_in(lookup, query)
    if query.kind not in ("may", "must") or not query.items:
        return ""
    beside = goes_with(rows)
    if beside is not None:
        return _say_beside(lookup, query, rows, beside)
    if either := say_either(lookup, query, rows):
        return either
    rigs = said.get(RIG) or place_of(lookup, query.items[:1], query.case.as_of).get(RIG)
    spoken = spoken_of(rows)
    rigs = spoken if spoken is not None and (rigs is None or is_subset(spoken, rigs)) else rigs
    answers = [means_yes(lookup, query, verdict) for _, verdict in rows]
    # with one answer in all rigs what differs is said as an exception: "Yes. ...; it must not be if ..."
    settled = len({*answers}) == 1 and rigs_of_duty(lookup, query) is not None
    told = RIG in said
    if rigs is not None and not settled and (in_rig := say_in_rig(lookup, query, rows, rigs, told=told)):
        return in_rig
    usual = ordinary_rows(lookup, rows, said)
    if not usual:
        return ""
    leading = {answers[index] for index in usual}
    if len(leading) != 1 or None in leading:
        return _say_only_if(lookup, query, rows)
    otherwise = [index for index, found in enumerate(answers) if found not in leading]
    verdicts = {rows[index][1] for index in usual}
    if not otherwise:
        return _say_further(lookup, query, rows, usual[0], said) if len(verdicts) == 1 else ""
    alike = [verdict for (_, verdict), found in zip(rows, answers, strict=True) if found in leading]
    one = len(set(alike)) == 1
    together = say_plain(lookup, alike[0], query) if one else say_settled(lookup, query, alike)[0]
    plain = say_plain(lookup, rows[usual[0]][1], query) if len(verdicts) == 1 else ""
    others = [index for index, (_, verdict) in enumerate(rows) if verdict not in verdicts]
    lines = [(line, left) for line, left in ((together, otherwise), (plain, others)) if line]
    if verdicts == {"prohibited"}:
        lines.reverse()  # "it may be left off" would hide that it must be
    exact = (_say_unless(lookup, query, rows, line, left, said) for line, left in lines)
    covered = (_say_covered(lookup, query, rows, line, left, said) for line, left in lines)
    mostly = (say_mostly(lookup, rows, line, left, said) for line, left in lines)
    return next((line for line in chain(exact, covered, mostly) if line), "")


def _say_unless(
    lookup: Lookup, query: Query, rows: Rows, line: str, otherwise: Sequence[int], said: Usually
) -> str:
    """ "..., unless the wearer is diving": just when it is otherwise, where that takes few words."""
    facts = [when for when, _ in rows]
    clashes = [index for index in otherwise if rows[index][1] == "conflict"]
    if clashes:
        return _say_clashes(
            lookup, query, rows, line, clashes, [i for i in otherwise if i not in clashes], said
        )
    unless = say_exceptions(lookup, facts, otherwise, said)
    if not unless or any(verdict == "conditional" for _, verdict in rows):
        return ""
    apart = exceptions(lookup, facts, otherwise, said)
    if positively := _say_positively(lookup, query, line, apart, {rows[index][1] for index in otherwise}):
        return positively
    if unsaid := _say_unsaid(query, rows, line, unless, otherwise):
        return unsaid
    known = {test.fact for one in apart for test in tests(one)}
    sets = ordinary_sets(lookup, facts, said)
    near = [index for index in otherwise if known.issuperset(strange_in(facts[index], sets))]
    mixed = len({rows[index][1] in ("silent", "conflict") for index in near}) > 1
    told = {*known, *sets}
    further = dict.fromkeys(fact for index in near for fact, _ in facts[index] if fact not in told)
    return f"{line.removesuffix('.')}, unless {unless}{_say_then(lookup, further if mixed else ())}."


def _say_unsaid(query: Query, rows: Rows, line: str, when: str, otherwise: Sequence[int]) -> str:
    """ "... need not be worn; when it is summer, the books are silent", in some cases at least.

    After "unless" it would be taken for the contrary: that it must be worn then.
    """
    verdicts = {rows[index][1] for index in otherwise}
    if verdicts == {"silent"}:
        said = UNSAID["silent"]
    elif query.kind == "must" and line.startswith("No") and verdicts == {"silent", "prohibited"}:
        said = "no clause requires that"
    else:
        return ""
    return f"{line.removesuffix('.')}; when {when}, {said}."


def _say_positively(
    lookup: Lookup, query: Query, line: str, apart: Sequence[Condition], verdicts: Collection[Verdict]
) -> str:
    """ "... must not be worn when the wearer is in town; otherwise they may be", not "unless not in town".

    Only where all that is out of the ordinary is a denial, whose contrary is said without one.
    """
    if query.polarity == "not" or query.value is not None or is_manner(lookup.aspects[query.aspect]):
        return ""  # "may be left off ...; otherwise it must be" would be taken the wrong way
    parts = apart[0].parts if apart and isinstance(apart[0], AllOf) else apart
    denied = [part for part in parts if isinstance(part, Test) and is_denied(lookup, part.fact, part.values)]
    if len(apart) != 1 or len(verdicts) != 1 or len(denied) < len(parts):
        return ""
    contrary = [Test(part.fact, subtract(lookup.domain(part.fact), part.values)) for part in denied]
    if any(is_denied(lookup, part.fact, part.values) for part in contrary):
        return ""
    rest = say_again(lookup, query, next(iter(verdicts)))
    return f"{line.removesuffix('.')} when {say_any(lookup, contrary)}; otherwise {rest}."


def _say_clashes(
    lookup: Lookup,
    query: Query,
    rows: Rows,
    line: str,
    clashes: Sequence[int],
    otherwise: Sequence[int],
    said: Usually,
) -> str:
    """ "..., unless it is winter; but when the wearer is diving, the clauses disagree".

    "Unless" is for what is otherwise: where clauses disagree nothing is settled, so that it is told by name.
    """
    when = say_exceptions(lookup, [when for when, _ in rows], clashes, said)
    kept = [row for index, row in enumerate(rows) if index not in clashes]
    left = [index for index, row in enumerate(rows) if index not in clashes]
    rest = (
        _say_unless(lookup, query, kept, line, [left.index(i) for i in otherwise], said)
        if otherwise
        else line
    )
    open_ = any(verdict == "conditional" for _, verdict in rows)
    return (
        f"{rest.removesuffix('.')}; but when {when}, {UNSAID['conflict']}."
        if when and rest and not open_
        else ""
    )


def _say_then(lookup: Lookup, facts: Iterable[str]) -> str:
    """ "; it then depends on the rig", where the cases that are set apart do not all come to one thing."""
    names = list(facts)
    return f"; it then depends on {say_depends(lookup, names)}" if names else ""


def _say_covered(
    lookup: Lookup, query: Query, rows: Rows, line: str, otherwise: Sequence[int], said: Usually
) -> str:
    """ "..., unless the wearer is pregnant; it then depends on the rig": where alone it can be otherwise."""
    facts = [when for when, _ in rows]
    within = covering(lookup, facts, otherwise, said)
    if not within:
        return ""
    kept = [when for index, when in enumerate(facts) if index not in otherwise]
    inside = any(may_have(when, *test) for when in kept for test in within.items())
    inside = inside or any(rows[index][1] == "conditional" for index in otherwise)
    unless = say_any(lookup, [Test(*test) for test in within.items()])
    further = dict.fromkeys(fact for index in otherwise for fact, _ in facts[index] if fact not in within)
    then = _say_then(lookup, further if inside else ())
    if any(rows[index][1] == "conflict" for index in otherwise):
        then += IN_SOME_DISAGREE
    if len(unless) <= _LONGEST and (unsaid := _say_unsaid(query, rows, line, unless, otherwise)):
        some = " in some cases" if inside and unsaid.endswith("silent.") else ""
        return f"{unsaid.removesuffix('.')}{some}."
    return f"{line.removesuffix('.')}, unless {unless}{then}." if len(unless) <= _LONGEST else ""


def covering(
    lookup: Lookup, facts: Sequence[Facts], otherwise: Sequence[int], said: Usually = MappingProxyType({})
) -> dict[str, ValueSet]:
    """Facts with values of which each of the rows `otherwise` has some; none where that takes too many.

    Each of these rows is out of the ordinary in some fact. The fewest facts are named, with all the values
    that they have in such rows, so that outside of those nothing is otherwise. A fact with two sides is none
    to set apart so, unless one side goes without saying: "unless on duty; it then depends" says nothing.
    """
    sets = ordinary_sets(lookup, facts, said)
    strange = {index: strange_in(facts[index], sets) for index in otherwise}
    left, chosen = list(otherwise), list[str]()
    while left and len(chosen) < _MOST_COVERING:
        counts: dict[str, int] = {}
        for fact in (fact for index in left for fact in strange[index]):
            counts[fact] = counts.get(fact, 0) + 1
        chosen.append(max(counts, key=counts.__getitem__, default=""))
        left = [index for index in left if chosen[-1] not in strange[index]]
    if left or any(has_two_sides(lookup, fact) for fact in chosen if fact not in said):
        return {}
    return {fact: all_values(facts, [i for i in otherwise if fact in strange[i]], fact) for fact in chosen}


def _say_beside(lookup: Lookup, query: Query, rows: Rows, worn: str) -> str:
    """ "The cap device must be worn with the service cap; without it the cap device must not be worn."."""
    if query.polarity == "not" or query.value is not None:
        return ""
    other = next(verdict for when, verdict in rows if dict(when)[worn] != YES)
    case = msgspec.structs.replace(query.case, facts=(*query.case.facts, (worn, YES)))
    asked = msgspec.structs.replace(query, case=case)
    inside = [(when, verdict) for when, verdict in rows if dict(when)[worn] == YES]
    inside = [(tuple(test for test in when if test[0] != worn), verdict) for when, verdict in inside]
    if len(inside) == 1:
        line = say_plain(lookup, inside[0][1], asked)
    else:
        facts = dict.fromkeys(fact for when, _ in inside for fact, _ in when)
        line = say_plain(lookup, "conditional", asked, tuple(facts), inside)
    if line.startswith("It depends"):
        return ""
    it = the_item(lookup, worn.removeprefix(WORN)) if len(inside) > 1 else "that"
    return f"{line.removesuffix('.')}; without {it} {say_again(lookup, query, other)}."


def _say_only_if(lookup: Lookup, query: Query, rows: Rows) -> str:
    """One verdict that is a yes, all other cases silent: "Only when ...: it may be worn; otherwise ..."."""
    told = {verdict for _, verdict in rows} - {"silent"}
    only = next(iter(told), None)
    if only is None or len(told) > 1 or not means_yes(lookup, query, only):
        return ""
    line = say_plain(lookup, only, query).removesuffix(".")
    chosen = [index for index, (_, verdict) in enumerate(rows) if verdict != "silent"]
    when = say_joined(lookup, [facts for facts, _ in rows], chosen)
    said = line.removeprefix("Yes: ").removeprefix("Yes. ")
    said = f"the {said.removeprefix('The ')}" if said.startswith("The ") else said
    return f"Only {when}: {said}; otherwise the books are silent." if when else ""


def _say_further(lookup: Lookup, query: Query, rows: Rows, usual: int, said: Usually) -> str:
    """The ordinary verdict, and when it is another one that answers alike: "may be worn; must be if ..."."""
    verdict, others = rows[usual][1], {v for _, v in rows} - {rows[usual][1]}
    if len(others) != 1 or query.value is not None or lookup.aspects[query.aspect].kind != "act":
        return ""
    (other,) = others
    otherwise = [index for index, (_, found) in enumerate(rows) if found == other]
    facts = [when for when, _ in rows]
    when = say_exceptions(lookup, facts, otherwise, said)
    if any(
        has_two_sides(lookup, test.fact)
        for one in exceptions(lookup, facts, otherwise, said)
        for test in tests(one)
    ):
        return ""
    line = say_plain(lookup, verdict, query).removesuffix(".")
    modal = "need not" if (verdict, other) == ("required", "permitted") else MODALS[other]
    return f"{line}; {say_again(lookup, query, other, modal)} if {when}." if when else ""


def say_claim_when(lookup: Lookup, query: Query, rows: Rows) -> str:
    """ "No. The width of the tape must not be 125 mm, when the wearer is in hall rig."

    A claim about a measure or place speaks of a thing that is worn. Where all rules that say anything of it
    agree, it stands, with when they do.
    """
    told = {verdict for _, verdict in rows} - {"silent"}
    if query.value is None or query.kind not in ("may", "must") or len(told) != 1:
        return ""
    (verdict,) = told
    chosen = [index for index, (_, found) in enumerate(rows) if found != "silent"]
    when = say_joined(lookup, [facts for facts, _ in rows], chosen)
    if verdict in ("conditional", "conflict") or not when:
        return ""
    return f"{say_plain(lookup, verdict, query).removesuffix('.')}, {when}."


def say_why(lookup: Lookup, query: Query, rows: Rows) -> str:
    """What leads where it was asked why: the verdict alone, without yes or no."""
    line = say_ordinarily(lookup, msgspec.structs.replace(query, kind="may"), rows)
    if line.endswith(unsaid := f", {UNSAID['silent']}."):  # nobody doubts here what holds then
        line = line.replace("; when ", ", unless ").removesuffix(unsaid) + "."
    where, parted, said = line.partition(". The ")
    if parted and where.startswith(("Yes, in ", "No, in ")):  # "in boat rig the jersey must be worn; ..."
        line = f"{where} the {said}"
    for word in ("Yes", "No"):
        line = line.removeprefix(f"{word}, ").removeprefix(f"{word}: ").removeprefix(f"{word}. ")
    return sentence(line) if line else ""


def say_whole(lookup: Lookup, query: Query, rows: Rows) -> str:
    """A short table in full: "it must be worn when it is winter; otherwise the books are silent".

    Nothing where that takes too many words, or a row is folded.
    """
    verdicts = list(dict.fromkeys(verdict for _, verdict in rows))
    if query.value is not None or not query.items or lookup.aspects[query.aspect].kind != "act":
        return ""
    if not 1 < len(verdicts) <= _MOST_SAID or "conditional" in verdicts or query.kind not in ("may", "must"):
        return ""
    facts = [when for when, _ in rows]
    times = {
        one: say_joined(lookup, facts, [i for i, (_, verdict) in enumerate(rows) if verdict == one])
        for one in verdicts
    }
    rest = max(verdicts, key=lambda one: (not times[one], one == "silent", len(times[one])))
    if any(not times[one] for one in verdicts if one != rest):
        return ""
    first, *more = (one for one in sorted(verdicts, key=_ORDER.index) if one != rest)
    spoken = first not in UNSAID
    parts = [f"{_say_fully(lookup, query, first)} {times[first]}"]
    for one in more:
        parts.append(f"{(say_again if spoken else _say_fully)(lookup, query, one)} {times[one]}")
        spoken = spoken or one not in UNSAID
    last = (say_again if spoken else _say_fully)(lookup, query, rest)
    said = f"{'; '.join(parts)}; otherwise {last}"
    return said if len(said) <= _LONGEST_WHOLE else ""


def say_where_alone(lookup: Lookup, query: Query, rows: Rows) -> str:
    """ "Only when the wearer is a cook in whites: the tall hat may be worn; otherwise it must not be."

    What all cases have in common in which the answer is yes. Where it can be no within that, too, it is said
    what it then depends on. Nothing where it takes too many words, or the cases have nothing in common.
    """
    if query.kind not in ("may", "must") or query.value is not None or query.polarity == "not":
        return ""
    if lookup.aspects[query.aspect].kind != "act" or any(v in ("conditional", "conflict") for _, v in rows):
        return ""
    answers = [means_yes(lookup, query, verdict) for _, verdict in rows]
    told = [verdict for (_, verdict), yes in zip(rows, answers, strict=True) if yes]
    common = _common(lookup, [when for (when, _), yes in zip(rows, answers, strict=True) if yes])
    said = usually_in(lookup, query)
    sets = ordinary_sets(lookup, [when for when, _ in rows], said)
    common = {
        fact: values
        for fact, values in common.items()
        if not (fact in sets and is_subset(sets[fact], values)) and not is_denied(lookup, fact, values)
    }
    inside = [i for i, (row, _) in enumerate(rows) if all(may_have(row, *test) for test in common.items())]
    outside = {verdict for i, (_, verdict) in enumerate(rows) if i not in inside}
    if not common or len(common) > _MOST_COVERING or not outside or outside - {"prohibited", "silent"}:
        return ""
    rest = ", or ".join(UNSAID.get(v) or say_again(lookup, query, v) for v in sorted(outside))
    further = list(dict.fromkeys(fact for i in inside for fact, _ in rows[i][0] if fact not in common))
    mixed = not all(answers[i] for i in inside)
    thens = (
        (f", depending on {say_depends(lookup, further)}", ", depending on further facts") if mixed else ("",)
    )
    when = say_any(lookup, [all_of(Test(*test) for test in common.items())])
    modal = " or ".join(MODALS[verdict] for verdict in reversed(_ORDER) if verdict in told)
    line = f"{thing_in(lookup, query)} {modal} be {done_in(lookup, query)}"
    whole = (f"Only when {when}: {line}{then}; otherwise {rest}." for then in thens)
    return next((text for text in whole if len(text) <= _LONGEST_WHOLE), "")


def _common(lookup: Lookup, rows: Sequence[Facts]) -> dict[str, ValueSet]:
    """What all rows have in common: of each fact that all of them name the values that one of them has."""
    shared = [f for f, _ in rows[0] if all(f in dict(row) for row in rows)] if rows else []
    found = {fact: all_values(rows, range(len(rows)), fact) for fact in shared}
    return {f: values for f, values in found.items() if not is_subset(lookup.domain(f), values)}


_ORDER: tuple[Verdict, ...] = ("required", "permitted", "not_required", "prohibited", "conflict", "silent")


def _say_fully(lookup: Lookup, query: Query, verdict: Verdict) -> str:
    """ "the deck gloves may be worn with the storm coat"."""
    said = UNSAID.get(verdict)
    return said or f"{thing_in(lookup, query)} {MODALS[verdict]} be {done_in(lookup, query)}"
