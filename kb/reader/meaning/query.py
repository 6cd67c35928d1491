"""From frame and roles to the structured query, or to what must be asked first."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import with_settled
from kb.model.questions import Abstain, Ask, Query, QuestionKind, Verdict
from kb.model.records import Case
from kb.model.values import NO, YES, ValueSet, intersect, is_empty
from kb.reader.meaning.defined import defining_clause, find_clause
from kb.reader.meaning.fits import wearing
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.listed import listed_in_rig, which_of
from kb.reader.meaning.measured import (
    ask_part,
    described,
    manners_of,
    measured_item,
    other_manners,
    rule_aspects,
    size_aspect,
    sized_question,
    unsaid_care,
    which_measure,
    which_unsaid,
)
from kb.reader.meaning.measured_alone import measured_alone
from kb.reader.meaning.placed import (
    is_choice_of_company,
    is_count_on,
    is_where_it_goes,
    on_its_whole,
    only_garments,
    settle_places,
    worn_at_places,
)
from kb.reader.meaning.which_one import narrowed_list
from kb.reader.names.lexicon import PERSONAL
from kb.reader.pieces.compound import counted_class, frees_owner, part_or_whole, ranked_things
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece
from kb.reader.words.written import as_written
from kb.wording import say_query

Outcome = Query | Ask | Abstain
_WORN = "worn:"
_SIZES = ("height", "width", "length", "diameter", "size")


def build_query(frame: Frame, roles: Roles, case: Case, lookup: Lookup) -> Outcome:
    """The query in the case that text and remembered facts make; `Ask` or `Abstain` if there is none."""
    if roles.clashing:
        return Abstain(reason="The question states two things of one fact that cannot hold together.")
    if roles.other_acts:
        return Abstain(reason="Two acts are asked about; ask about one at a time.")
    defined = defining_clause(frame, roles, case, lookup)
    if defined is not None:
        return defined
    settle_places(roles, lookup)
    size = "size" if roles.measure_unit else "wear"
    part_or_whole(roles, roles.aspect or roles.value_aspect or size, lookup)
    frame, asked, worn, unworn = _sides(frame, roles)
    several = asked if frame.kind == "list" else []
    if frame.kind == "how_many" or roles.value_aspect == "count":
        asked = [_counted(piece, lookup) for piece in asked]
    if frame.sized or roles.measure_unit or frame.aspect in _SIZES:
        wanted = frame.aspect or roles.dimension or "size"
        asked = [measured_item(piece, wanted, lookup) or piece for piece in asked]
    known = {**dict(case.facts), **roles.facts}
    if not several:
        asked, worn, unworn = (
            [listed_in_rig(p, known, lookup) for p in pieces] for pieces in (asked, worn, unworn)
        )
    unclear = next((p for p in (*asked, *worn, *unworn) if p.tag == "items" and p not in several), None)
    if unclear is not None:
        return ask_item(unclear, lookup)
    items = _items_of(asked, bool(several))
    frame = which_of(frame, roles, items)
    one = _one_item(frame, roles, items, lookup)
    if one is not None:
        return one
    if roles.body:
        if items:
            return Abstain(reason="A part of the body and an item are named; ask about one of them.")
        from kb.reader.names.bodies import worn_on  # noqa: PLC0415  few questions name a part of the body

        items = worn_on(roles.body, lookup)
        if not items:
            return Abstain(reason="The books do not say what is worn there.", words=(roles.body,))
    merged = said_case(case, roles, lookup, {**_worn_facts(worn, YES), **_worn_facts(unworn, NO)})
    if frame.kind == "source":
        if roles.clause_number:
            return find_clause(roles.clause_number, roles.book, case, lookup)
        return _source(frame, roles, items, merged, lookup)
    described(frame, roles, items, lookup)
    query = _query(frame, roles, items, merged, lookup)
    return _settled(query, frame, roles, lookup)


def _counted(piece: Piece, lookup: Lookup) -> Piece:
    """ "How many coats": where a rule bounds the number of all that the word may mean, that class."""
    found = counted_class(piece, lookup) if piece.tag == "items" else None
    return msgspec.structs.replace(piece, tag="item", arg=found) if found else piece


def _settled(query: Query, frame: Frame, roles: Roles, lookup: Lookup) -> Outcome:
    """The query, unless it leaves out something that was said or needs something asked first."""
    if query.kind in ("where", "how") and roles.aspect not in ("", "wear", "carrying", query.aspect):
        return Abstain(reason="Two acts are asked about; ask about one at a time.")
    if roles.apart:
        return Abstain(reason="Two things are named, each with a value of its own; ask about one at a time.")
    if roles.value is not None and query.value is None:
        return Abstain(reason="A value is named, but the question does not ask about one.")
    query = as_written(query, roles.measure_unit, lookup)
    if query.value is not None and query.items and roles.measure_unit:
        which = which_measure(query, lookup)
        if isinstance(which, Ask):
            return which
        query = which
    bare = query.value is not None and roles.measure_unit and not roles.dimension
    if query.items and (bare or (query.kind == "how" and frame.sized)):
        stop = ask_part(query, lookup) or which_unsaid(query, bool(bare), frame.lasting, lookup)
        if stop is not None:
            return stop
    if roles.placing and query.items and not on_its_whole(query, roles, lookup):
        if is_where_it_goes(query, roles, lookup) or is_count_on(query, roles, lookup):
            case = _on_garments(query.case, roles, lookup)
            return _checked(msgspec.structs.replace(query, case=case), frame, roles, lookup)
        if query.kind not in ("where", "how", "how_many") or not only_garments(roles, lookup):
            return _ask_where(query, roles, lookup)
        query = msgspec.structs.replace(query, case=_on_garments(query.case, roles, lookup))
    return _checked(query, frame, roles, lookup)


def _items_of(asked: Sequence[Piece], several: bool) -> tuple[str, ...]:
    """The items asked about, all that an unclear word may mean where `several` do."""
    found = [entry.id for p in asked for entry in p.entries] if several else [p.arg for p in asked]
    return tuple(dict.fromkeys(found))


def _one_item(frame: Frame, roles: Roles, items: Sequence[str], lookup: Lookup) -> Ask | None:
    """Ask which of several items is meant, where they are alternatives or stand together."""
    if (
        roles.alternatives
        and frame.kind in ("may", "must", "where", "how", "how_many")
        and frame.aspect != "precedence"
    ):
        choices = tuple((item, lookup.items[item].label) for item in items)
        return Ask(fact="item", prompt="One item at a time: which one is meant?", choices=choices)
    if len(items) > 1 and roles.value is not None and roles.measure_unit and roles.counted is None:
        choices = tuple((item, lookup.items[item].label) for item in items)
        return Ask(fact="item", prompt="One item at a time: which one is measured?", choices=choices)
    if roles.crowded is not None:
        named = [entry for piece in roles.crowded for entry in piece.entries if entry.kind == "item"]
        pair = dict.fromkeys(entry.id for entry in named)
        choices = tuple((item, lookup.items[item].label) for item in pair)
        return Ask(fact="item", prompt="Two items stand together: which one is asked about?", choices=choices)
    return None


def _on_garments(case: Case, roles: Roles, lookup: Lookup) -> Case:
    worn = {_WORN + item: YES for item in worn_at_places(roles, lookup)}
    return merge_case(case, worn, None, False, lookup)


def _ask_where(query: Query, roles: Roles, lookup: Lookup) -> Ask:
    """A place is claimed ("on the coat, above the pocket"): offer the question where the item goes."""
    case = _on_garments(query.case, roles, lookup)
    where = Query(kind="where", items=query.items[:1], aspect="position", case=case)
    said = say_query(lookup, where)
    return Ask(fact="reading", prompt="A place is named. Is this the question?", choices=((said, said),))


def said_case(case: Case, roles: Roles, lookup: Lookup, more: Mapping[str, ValueSet] | None = None) -> Case:
    """The remembered case with what a text says put over it; a day and a month say what they settle."""
    said = with_settled(roles.facts, roles.as_of, lookup)
    return merge_case(
        case, {**narrowed(case, said, lookup), **(more or {})}, roles.as_of, roles.alone, lookup
    )


def merge_case(
    case: Case, facts: Mapping[str, ValueSet], as_of: datetime.date | None, alone: bool, lookup: Lookup
) -> Case:
    """The remembered case with the facts of a text put over it, in the order of the rule base."""
    merged = {**dict(case.facts), **facts}
    ordered = tuple((fact, merged[fact]) for fact in lookup.facts if fact in merged) if merged else ()
    return Case(as_of=as_of or case.as_of, facts=ordered, alone=alone or case.alone)


def narrowed(case: Case, facts: Mapping[str, ValueSet], lookup: Lookup) -> dict[str, ValueSet]:
    """Stated facts within what is remembered, where both can hold.

    A stated grade or branch is said of whoever has it, and stands as it is.
    """
    known = dict(case.facts)
    found = dict(facts)
    for fact, values in facts.items():
        if fact in known and lookup.facts[fact].family not in ("grade", "branch"):
            both = intersect(known[fact], values)
            found[fact] = values if is_empty(both) else both
    return found


def ask_item(piece: Piece, lookup: Lookup) -> Ask:
    """Ask which of several items a word means."""
    choices = tuple((entry.id, lookup.items[entry.id].label) for entry in piece.entries)
    prompt = "Which one is meant?" if len(choices) > 1 else f"Is the {choices[0][1]} meant?"
    return Ask(fact="item", prompt=prompt, choices=choices)


def _worn_facts(pieces: Sequence[Piece], values: ValueSet) -> dict[str, ValueSet]:
    return {_WORN + piece.arg: values for piece in pieces}


def _sides(frame: Frame, roles: Roles) -> tuple[Frame, list[Piece], list[Piece], list[Piece]]:
    """Asked about, worn, not worn. "May I go out without the cap?" asks about the cap."""
    asked = sorted(roles.asked, key=lambda piece: piece is not roles.counted)
    worn, unworn = roles.worn, roles.unworn
    if not asked and frame.kind == "source":  # "which clause says no beards"
        return frame, [*worn, *unworn], [], []
    if not asked and frame.kind != "list":
        if unworn:
            return msgspec.structs.replace(frame, polarity="not"), unworn, worn, []
        if worn:
            return frame, worn, [], []
    return frame, asked, worn, unworn


def _has_manner(item: str, lookup: Lookup) -> bool:
    """Whether any rule says in what way a thing carried is borne, as it would for what is worn."""
    within = {lookup.aspects[aspect].within for aspect in rule_aspects(item, lookup)}
    manners = (lookup.aspects[a] for a in within if a)
    carried = wearing((item,), lookup) == "carrying"
    return carried and any(a.kind == "manner" and a.id != "care" for a in manners)


def _aspect(frame: Frame, roles: Roles, items: Sequence[str], lookup: Lookup) -> tuple[QuestionKind, str]:
    kind = frame.kind
    if roles.measured and kind == "where" and not frame.sized and "fit" in manners_of(items, lookup):
        return "how", "fit"  # "which side does the free end go"
    if roles.measured and kind in ("how", "where", "may") and roles.value is None:
        return ("where" if roles.measured == "position" else "how"), roles.measured
    if kind == "where":
        spoken = rule_aspects(items[0], lookup) if items else ("position",)
        if roles.aspect not in ("", "wear") and roles.aspect in spoken and "position" not in spoken:
            if items and wearing(items, lookup) == "wear":
                return "must", roles.aspect  # what is else worn: the clause that has it carried says where
            return "where", "position"
        if "position" in spoken or frame.modal != "may":
            return "where", "position"
        kind = "may"
    if kind == "how_many":
        return kind, "kit-count" if _owned(roles, items, lookup) else "count"
    if kind == "how":
        return _how(frame, roles, items, lookup)
    if roles.value is not None:
        if roles.value_aspect == "count" and _owned(roles, items, lookup):
            return kind, "kit-count"
        if roles.measure_unit and not roles.value_aspect:
            return kind, size_aspect(roles.dimension or "size", items, lookup)
        return kind, roles.value_aspect or roles.dimension
    if roles.value_aspect:
        return _named_value(kind, roles, items, lookup)
    freed = kind == "who" and frees_owner(frame.modalities, items, lookup)
    return kind, "possession" if freed and roles.aspect in ("", "wear") else _act(roles, items, lookup)


def _act(roles: Roles, items: Sequence[str], lookup: Lookup) -> str:
    """The act that is said, else to have it on; "may I wear the satchel" asks of carrying it."""
    if roles.aspect == "wear" and items:
        return lookup.use_of(items[0])
    return roles.aspect or wearing(items, lookup, roles.facts)


def _owned(roles: Roles, items: Sequence[str], lookup: Lookup) -> bool:
    """Whether a number is one of things owned: it is said so, or rules speak of no other number of them."""
    if "kit-count" not in lookup.aspects or roles.aspect not in ("", "wear", "possession"):
        return False
    spoken = rule_aspects(items[0], lookup) if items and not roles.aspect else ()
    return roles.aspect == "possession" or ("kit-count" in spoken and "count" not in spoken)


def _how(frame: Frame, roles: Roles, items: Sequence[str], lookup: Lookup) -> tuple[QuestionKind, str]:
    wanted = frame.aspect or roles.dimension
    if wanted in _SIZES and frame.sized:
        return sized_question(wanted, roles, items, lookup, frame.tall)
    if items and unsaid_care(wanted or roles.value_aspect, items[0], lookup):
        return "may", wanted or roles.value_aspect
    if roles.aspect == "carrying" and items and _has_manner(items[0], lookup):
        return "how", wanted or roles.value_aspect or "wear"
    return "how", wanted or roles.value_aspect or roles.aspect or "wear"


def _named_value(
    kind: QuestionKind, roles: Roles, items: Sequence[str], lookup: Lookup
) -> tuple[QuestionKind, str]:
    """An aspect, or one manner of it by its text; of an item the manner that its rules speak of."""
    aspect = roles.value_aspect
    if kind not in ("may", "must"):
        return kind, aspect
    if lookup.aspects[aspect].kind != "act":
        return "how", aspect
    if kind == "may" and items and not roles.of_aspect and is_choice_of_company(aspect, items[0], lookup):
        return kind, "wear"
    others = other_manners(aspect, items[0], lookup) if items else ""
    return ("how", others) if others else (kind, aspect)


def _query(frame: Frame, roles: Roles, items: tuple[str, ...], case: Case, lookup: Lookup) -> Query:
    kind, aspect = _aspect(frame, roles, items, lookup)
    if kind == "how":  # "how is it fastened" names a manner by one of its values and asks for all of them
        within = lookup.aspects[aspect].within
        named = lookup.aspects[aspect].kind == "act"
        aspect = within if named and within and lookup.aspects[within].kind == "manner" else aspect
    if kind == "who" and roles.value is not None and aspect in ("count", "kit-count"):
        kind = "how_many"  # "who gets four": how many each gets tells it
    turned = frame.kind == "where" and kind == "must"  # "I took it off: where do I carry it"
    polarity = frame.polarity if kind in ("may", "must", "who", "when", "why") and not turned else "do"
    case = _of_anybody(case, roles, lookup) if kind == "who" else case
    return Query(
        kind=kind,
        items=items,
        aspect=aspect,
        value=roles.value if kind in ("may", "must", "why", "when", "who") else None,
        polarity=polarity,
        case=case,
        modalities=frame.modalities if kind not in ("may", "must") or _says_so(aspect, lookup) else (),
    )


def _says_so(aspect: str, lookup: Lookup) -> bool:
    """Whether the read-back can say "is it prohibited" of an aspect: not of places and ways of wearing."""
    record = lookup.aspects.get(aspect)
    acts = record is not None and record.kind == "act" and record.verb is not None
    return acts or (record is not None and record.kind in ("measure", "choice", "count"))


def _of_anybody(case: Case, roles: Roles, lookup: Lookup) -> Case:
    """A case without what is remembered of the one who asks, where it is asked who may."""
    kept = tuple((f, v) for f, v in case.facts if f in roles.facts or lookup.facts[f].family not in PERSONAL)
    return msgspec.structs.replace(case, facts=kept)


def _checked(query: Query, frame: Frame, roles: Roles, lookup: Lookup) -> Outcome:
    """What a query of its kind cannot do without."""
    if query.kind == "compare":
        if len(query.items) < 2:
            return Abstain(reason="A comparison needs two rigs, grades, places, dates or items side by side.")
        return query
    if query.kind == "list":
        return narrowed_list(query, frame, lookup)
    if not query.items and query.aspect == "precedence":
        return ranked_things(query, lookup)
    if not query.items:
        if frame.terse and not roles.aspect and not query.case.facts and not roles.alone:
            return Abstain(reason="No question about dress was found.")
        if _is_a_rig(frame, roles, lookup):
            return msgspec.structs.replace(query, kind="list", modalities=("required", "permitted"))
        return measured_alone(query, roles, lookup)
    if query.aspect not in lookup.aspects:
        return Abstain(reason="The books do not speak of this.", words=(query.aspect,))
    return query


def _is_a_rig(frame: Frame, roles: Roles, lookup: Lookup) -> bool:
    """ "boat rig for H2": a rig, with nothing said that it is worn with or that is asked about it."""
    rig = any(lookup.facts[fact].family == "rig" for fact in roles.facts)
    return frame.terse and rig and not (roles.aspect or roles.alone or roles.value_aspect or roles.dimension)


def _source(frame: Frame, roles: Roles, items: tuple[str, ...], case: Case, lookup: Lookup) -> Outcome:
    if not items and not roles.facts and not roles.value_aspect:
        return Ask(fact="item", prompt="Which item is asked about?")
    if not items and not roles.value_aspect:
        return _rules_where(frame, roles, case, lookup)
    if not items and roles.facts and roles.value is not None:
        return Abstain(reason="Which thing is asked about is not said.")  # "what is matt in boat rig"
    _, aspect = _aspect(msgspec.structs.replace(frame, kind="may"), roles, items, lookup)
    return Query(kind="source", items=items, aspect=aspect, case=case, book=roles.book or None)


def _rules_where(frame: Frame, roles: Roles, case: Case, lookup: Lookup) -> Outcome:
    """ "What is boat rig": what is worn in it; "the rules for hauling lines": all they say of wearing."""
    named = {lookup.facts[fact].family for fact in roles.facts}
    if "rig" not in named and not frame.ruled:
        return Abstain(reason="No question about dress was found.")
    modalities: tuple[Verdict, ...] = ("required", "permitted", "prohibited")
    return Query(kind="list", case=case, modalities=modalities if frame.ruled else modalities[:2])
