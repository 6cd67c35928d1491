"""What is known in a question of a talk: what that before it knew, if it goes on from it, else of whom."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import facts_of_day
from kb.model.questions import Query, Reading
from kb.model.records import Case
from kb.model.values import Choices, ValueSet
from kb.reader.meaning import fits
from kb.reader.meaning.follow import take_up, worn_with
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import PERSONAL
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.pointing import is_place, pointed_at
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize

_OTHERS = word_set("he she they him her them")
_FIRST = word_set("i we me us my our")
_THIRD = word_set("he she him her his hers they their theirs")
_OF_ONE = ("may", "must", "where", "how", "how_many")


def case_in_talk(
    case: Case, found: Understood, frame: Frame, roles: Roles, previous: Reading, lookup: Lookup
) -> Case:
    """What is known in a question: what that before it knew, if it goes on from that, else who was meant."""
    before = previous.query
    if before is not None and (
        take_up(found, frame, roles, before, lookup)
        or goes_on(found, frame, roles, before)
        or (roles.asked and all(p.arg and fits.whole_of(p.arg, lookup) in before.items for p in roles.asked))
    ):
        return kept_case(case, found, roles, previous, lookup)
    if before is not None and _is_of_theirs(case, found, roles, before, lookup):
        kept = {f: v for f, v in before.case.facts if lookup.facts[f].family in PERSONAL}
        case = merge_case(case, kept, None, False, lookup)
    bare = not (roles.facts or roles.as_of)
    case = with_person(case, found, frame, previous, lookup, bare=bare, named=bool(roles.asked))
    led = frame.carry or found.tokens[0].low in ("and", "also")
    joined = led and bool(roles.asked) and frame.kind in _OF_ONE  # "and may I wear the scarf?"
    return merge_case(case, pointed_at(found, previous, lookup, joined), None, False, lookup)


def of_me_again(before: Query, case: Case, found: Understood, lookup: Lookup) -> Query:
    """ "And do I wear it?", after whether a K5 does: of who I am known to be, not of them."""
    if all(token.low not in ("i", "we") for token in found.tokens):
        return before
    mine = {f: v for f, v in case.facts if lookup.facts[f].family in PERSONAL}
    theirs = tuple((f, mine.get(f, v)) for f, v in before.case.facts)
    return msgspec.structs.replace(before, case=msgspec.structs.replace(before.case, facts=theirs))


def _is_of_theirs(case: Case, found: Understood, roles: Roles, before: Query, lookup: Lookup) -> bool:
    """ "And where does the pin go?", after whether she wears the pin: of her, not of whom the profile is."""
    if any(token.low in _FIRST for token in found.tokens) or not roles.asked:
        return False
    if not {piece.arg for piece in roles.asked} <= {*before.items}:
        return False
    mine = dict(case.facts)
    said = {f for f, v in before.case.facts if lookup.facts[f].family in PERSONAL and mine.get(f, v) != v}
    return bool(said) and said.isdisjoint(roles.facts)


def _is_left(fact: str, there: ValueSet, roles: Roles, case: Case, lookup: Lookup) -> bool:
    """Whether another place is named than that before: "in the yard?", after the shed that stands in it."""
    here = roles.facts[fact]
    places = all(
        is_place(fact, v, lookup) and isinstance(v, Choices) and not v.complement for v in (here, there)
    )
    return places and fact not in dict(case.facts)


def kept_case(case: Case, found: Understood, roles: Roles, previous: Reading, lookup: Lookup) -> Case:
    """What is known, with the facts of the question before over it.

    What was said of somebody else's grade or waiver is not said of "I".
    """
    before = previous.query
    if before is None:
        return case
    mine = any(token.low in _FIRST for token in found.tokens)
    was_mine = any(token.low in _FIRST for token in tokenize(previous.question[:200]))
    dropped = PERSONAL if mine and not was_mine else frozenset()
    day, settled = before.case.as_of, frozenset[object]()
    if day != case.as_of and not any(token.low == "then" for token in found.tokens):
        settled, day = frozenset(facts_of_day(day, lookup)), case.as_of  # a day is named for one turn
    told = [one for one in before.case.facts if one not in settled]
    facts = {f: v for f, v in told if lookup.facts[f].family not in dropped}
    left = [f for f in roles.facts if f in facts and _is_left(f, facts[f], roles, case, lookup)]
    facts = {f: v for f, v in facts.items() if f not in left}
    kept = worn_with(msgspec.structs.replace(before.case, facts=tuple(facts.items()), as_of=day), roles)
    return merge_case(
        msgspec.structs.replace(case, as_of=kept.as_of, alone=kept.alone),
        dict(kept.facts),
        None,
        False,
        lookup,
    )


def goes_on(found: Understood, frame: Frame, roles: Roles, before: Query) -> bool:
    """Whether a list is of the people of the question before: "and what may they wear?"."""
    named = any(token.low in _OTHERS for token in found.tokens)
    return frame.kind == "list" and (frame.carry or named or (before.kind == "list" and _is_bare(roles)))


def _is_bare(roles: Roles) -> bool:
    """Whether nothing is named: "what may I leave off?", after "what must I wear in boat rig?"."""
    return not (roles.facts or roles.asked or roles.worn or roles.unworn or roles.as_of)


def with_person(
    case: Case, found: Understood, frame: Frame, previous: Reading, lookup: Lookup, bare: bool,
    named: bool = False,
) -> Case:  # fmt: skip
    """What is known, with who wears it and in which rig, where a new question is of the same person.

    What is asked of one thing after what all is worn is asked of where that was, if it says (`bare`) nothing
    of that: "is the tie compulsory?". So is what is asked of another thing that is named, of those who were
    spoken of or in fewer words than one begins anew with: "can he have a lighter?", "are gloves allowed?".
    """
    before = previous.query
    if before is None or frame.kind in ("who", "list", "compare", "source"):
        return case
    said, was = ({t.low for t in tokens} for tokens in (found.tokens, tokenize(previous.question[:200])))
    other = not _THIRD.isdisjoint(said)
    mine = not _FIRST.isdisjoint(said)
    same = other or (mine and not _FIRST.isdisjoint(was))
    listed = before.kind == "list"  # what is worn in a rig, then one thing of it
    along = named and not mine and (other or (frame.kind in ("may", "must") and "wear" not in said))
    there = bare and (along or (listed and not other)) and frame.kind in (*_OF_ONE, "how")
    if not (same or (mine and listed) or there):
        return case
    who = PERSONAL if same or (listed and there and not mine) else ()
    families = (*who, "rig", *(("situation", "term") if there else ()))
    kept = {f: v for f, v in before.case.facts if lookup.facts[f].family in families}
    return merge_case(case, kept, None, False, lookup)
