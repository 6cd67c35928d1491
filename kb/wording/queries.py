"""The read-back of a structured question: one question sentence in simple patterns."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import facts_of_day, month_of
from kb.model.questions import Query, Verdict
from kb.model.records import Aspect
from kb.wording.aspects import of_item, say_claimed
from kb.wording.cases import case_points, say_who
from kb.wording.english import listing, phrase, plural, sentence
from kb.wording.labels import book_name, clause_reference, is_whole, item_label, the_item
from kb.wording.manners import is_manner
from kb.wording.quantities import say_date
from kb.wording.scopes import is_given

_MODAL: dict[Verdict, str] = {
    "required": "must",
    "permitted": "may",
    "prohibited": "must not",
    "not_required": "need not",
}


def say_query(lookup: Lookup, query: Query) -> str:
    """ "May a K5 wear the deck gloves, in boat rig, ashore?" """
    said = {
        "may": _say_may,
        "must": _say_may,
        "why": _say_may,
        "when": _say_may,
        "where": _say_where,
        "how": _say_how,
        "how_many": _say_how_many,
        "who": _say_who_question,
        "list": _say_list,
        "compare": _say_compare,
        "source": _say_source,
    }[query.kind](lookup, query)
    return sentence(said, "?")


def say_query_on_its_day(lookup: Lookup, query: Query) -> str:
    """The read-back of a question about another day than that of asking: the day says its month too."""
    if query.kind == "compare":  # its sides say their days
        return say_query(lookup, query)
    month = month_of(query.case.as_of, lookup)
    settled = facts_of_day(query.case.as_of, lookup)
    facts = tuple(fact for fact in query.case.facts if fact not in settled)
    said = say_query(
        lookup, msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
    )
    day = query.case.as_of
    whole_year = month is not None and month not in query.case.facts and (day.month, day.day) == (1, 1)
    return f"{said.removesuffix('?')}, {f'in {day.year}' if whole_year else f'on {say_date(day)}'}?"


def person(lookup: Lookup, query: Query) -> str:
    """Who the question is about, "anyone" where nothing is known of them."""
    who = say_who(lookup, query.case.facts)
    return f"anyone{who.removeprefix('someone')}" if who.split()[0] == "someone" else who.rstrip(",")


def situation(lookup: Lookup, query: Query, first: str = "") -> str:
    """What follows the question: ", in boat rig, ashore, with nothing else worn"."""
    points = [first] if first else []
    points += case_points(lookup, query.case.facts)
    if query.case.alone:
        points.append("with nothing else worn")
    return "".join(f", {point}" for point in points)


def _for_person(lookup: Lookup, query: Query, lead: str = "for") -> str:
    who = person(lookup, query)
    return "" if who == "anyone" else f"{lead} {who}"


def items_in_words(lookup: Lookup, query: Query) -> str:
    """ "the quilted liner with the storm coat"; "any insignia that no rule names" of a kind as such."""
    if query.as_such and not is_whole(lookup, query.items[0]):
        return f"any {item_label(lookup, query.items[0])} that no rule names"
    others = [the_item(lookup, item) for item in query.items[1:]]
    return phrase(the_item(lookup, query.items[0]), f"with {listing(others)}" if others else "")


def _act(query: Query, aspect: Aspect) -> str:
    """ "wear", "go without", "choose not to own"."""
    if query.polarity == "do":
        return aspect.verb or "have"
    return "go without" if aspect.id == "wear" else f"choose not to {aspect.verb or 'have'}"


def _say_may(lookup: Lookup, query: Query) -> str:
    aspect = lookup.aspects[query.aspect]
    lead = {"why": "why, or why not, may", "when": "when may"}.get(query.kind, query.kind)
    if query.kind in ("why", "when") and query.modalities in _WHY:
        return _say_why(lookup, query, *_WHY[query.modalities])
    if query.modalities in _ASKED and query.kind in ("may", "must") and query.items:
        return _say_whether(lookup, query, _ASKED[query.modalities])
    if not query.items:
        return phrase(lead, person(lookup, query), _act(query, aspect), "anything") + situation(lookup, query)
    if is_given(aspect) and query.polarity == "do" and query.kind in ("may", "must", "when"):
        return phrase(lead, _given(lookup, query, aspect)) + situation(lookup, query)
    if aspect.kind == "act" and aspect.verb is not None:
        asked = phrase(lead, person(lookup, query), _act(query, aspect), items_in_words(lookup, query))
        return asked + situation(lookup, query)
    return claim(lookup, query, lead) + situation(lookup, query, _for_person(lookup, query))


def _given(lookup: Lookup, query: Query, aspect: Aspect) -> str:
    """ "The waistcoat be issued to an usher"."""
    return phrase(
        items_in_words(lookup, query), "be", aspect.done or "done", _for_person(lookup, query, "to")
    )


_WHY: dict[tuple[Verdict, ...], tuple[str, str]] = {
    ("required",): ("must", ""), ("permitted",): ("may", ""), ("prohibited",): ("may", "not"),
    ("not_required",): ("need", "not"),
}  # fmt: skip


_ASKED: dict[tuple[Verdict, ...], str] = {("prohibited",): "prohibited", ("permitted",): "optional"}


def _say_whether(lookup: Lookup, query: Query, asked: str) -> str:
    """ "Is it prohibited for a K5 to wear the ring, in town", "is it optional ..."."""
    aspect = lookup.aspects[query.aspect]
    if aspect.kind == "act" and aspect.verb is not None:
        what = phrase("to", _act(query, aspect), items_in_words(lookup, query))
        return phrase("is it", asked, "for", person(lookup, query), what) + situation(lookup, query)
    claimed = claim(lookup, query, "").strip()
    return phrase("is it", asked, "that", claimed) + situation(lookup, query, _for_person(lookup, query))


def _say_why(lookup: Lookup, query: Query, modal: str, no: str) -> str:
    """ "Why must a K5 wear the cap", "when may people not wear the ring"."""
    aspect = lookup.aspects[query.aspect]
    who = person(lookup, query)
    who = f"people{who.removeprefix('anyone')}" if who.split()[0] == "anyone" else who
    if query.items and not (aspect.kind == "act" and aspect.verb is not None):
        said = claim(lookup, query, f"{query.kind} {modal}")
        if no:
            subject, be, rest = said.partition(" be ")
            said = f"{subject} {no}{be}{rest}"
        return said + situation(lookup, query, _for_person(lookup, query))
    what = items_in_words(lookup, query) if query.items else "anything"
    return phrase(query.kind, modal, who, no, _act(query, aspect), what) + situation(lookup, query)


def claim(lookup: Lookup, query: Query, modal: str) -> str:
    """A question about a value: "may the height of the device be 2 in"."""
    aspect = lookup.aspects[query.aspect]
    item, no = query.items[0], "not " if query.polarity == "not" else ""
    if is_manner(aspect):
        return f"{modal} {of_item(lookup, aspect.id, item)} {no}be “{aspect.label}”"
    value = "as it is" if query.value is None else say_claimed(lookup, aspect.id, item, query.value)
    if aspect.kind == "position":
        return f"{modal} {the_item(lookup, item)} {no}be worn {value}"
    if query.value is None:
        return f"{modal} {of_item(lookup, aspect.id, item)} {no}be left open"
    return f"{modal} {of_item(lookup, aspect.id, item)} {no}be {value}"


def _say_where(lookup: Lookup, query: Query) -> str:
    return f"where must {items_in_words(lookup, query)} be worn" + situation(
        lookup, query, _for_person(lookup, query, "by")
    )


def _say_how(lookup: Lookup, query: Query) -> str:
    aspect = lookup.aspects[query.aspect]
    tail = situation(lookup, query, _for_person(lookup, query))
    if aspect.kind == "act" and aspect.verb is not None:
        return f"how must {items_in_words(lookup, query)} be {aspect.done or 'done'}" + tail
    if aspect.kind == "position":
        return _say_where(lookup, query)
    return f"what must {of_item(lookup, aspect.id, query.items[0])} be" + tail


def _say_how_many(lookup: Lookup, query: Query) -> str:
    tail = situation(lookup, query, _for_person(lookup, query))
    aspect = lookup.aspects[query.aspect]
    words = aspect.label.split()
    if aspect.kind == "count" and len(words) != 2:
        return f"what must {of_item(lookup, aspect.id, query.items[0])} be" + tail
    done = words[1] if aspect.kind == "count" else "worn"
    if aspect.kind == "count":
        things = of_item(lookup, aspect.id, query.items[0]).removeprefix(f"the {words[0]} of ")
        return f"how many {things.removesuffix(f' {done}')} may be {done}" + tail
    return f"how many {plural(item_label(lookup, query.items[0]))} may be {done}" + tail


def modal_of(modalities: tuple[Verdict, ...], otherwise: str) -> str:
    """ "must", "may", or "may or must" for the verdicts that a list is narrowed to."""
    if modalities == ("required", "permitted"):
        return "may"
    if modalities == ("permitted",):
        return "may but need not"
    found = [_MODAL[verdict] for verdict in modalities if verdict in _MODAL]
    return listing(found, "or") or otherwise


def _say_who_question(lookup: Lookup, query: Query) -> str:
    aspect = lookup.aspects[query.aspect]
    act = phrase(modal_of(query.modalities, "may"), _act(query, aspect), items_in_words(lookup, query))
    among = _for_person(lookup, query, "of")
    return phrase("who", act) + situation(lookup, query, among)


def _say_list(lookup: Lookup, query: Query) -> str:
    aspect = lookup.aspects[query.aspect]
    modal = modal_of(query.modalities, "may")
    first, denied, _ = modal.partition(" not")
    named = [the_item(lookup, item) for item in query.items]
    what = f"which of {listing(named)}" if named else "what"
    one = denied and " or " not in modal and "but" not in modal
    act = f"not {_act(query, aspect)}" if one else _act(query, aspect)
    modal = first if one else modal
    who = person(lookup, query)
    return phrase(what, modal, "people" if who == "anyone" else who, act) + situation(lookup, query)


def _say_compare(lookup: Lookup, query: Query) -> str:
    if query.other is None:
        names = listing([the_item(lookup, item) for item in query.items]) or "dress"
        return f"how do the rules for {names} compare" + situation(lookup, query, _for_person(lookup, query))
    from kb.wording.comparisons import COMPARED, say_sides, shared_case  # noqa: PLC0415  few compare

    shared = msgspec.structs.replace(query, case=shared_case(query))
    what = [
        the_item(lookup, item) if query.aspect == "wear" else of_item(lookup, query.aspect, item)
        for item in query.items
    ]
    differs = f"what differs by {book_name(lookup, query.book)}" if query.book else "what differs"
    about = phrase(differs, f"for {listing(what)}" if what else "", _for_person(lookup, shared))
    left, right = say_sides(lookup, query.case, query.other)
    return f"{about}, {left} {COMPARED} {right}{situation(lookup, shared)}"


def _say_source(lookup: Lookup, query: Query) -> str:
    if query.clause is not None:
        of = ""
        if query.items and query.polarity == "not":
            of = f" of being let off {the_item(lookup, query.items[0])}"
        return f"what does clause {clause_reference(lookup, query.clause)} say{of}"
    clauses = f"clauses of {book_name(lookup, query.book)}" if query.book else "clauses"
    if not query.items and query.book and not query.case.facts:
        return f"what does {book_name(lookup, query.book)} say"
    if not query.items:
        return f"which {clauses} apply" + situation(lookup, query, _for_person(lookup, query))
    names = listing([the_item(lookup, item) for item in query.items])
    if query.polarity == "not":
        paid = query.aspect == "possession"
        return f"who pays for {names}" if paid else f"how often must {names} be replaced"
    return f"which {clauses} speak of {names}" + situation(lookup, query, _for_person(lookup, query))
