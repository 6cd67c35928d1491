"""What belongs to a term: "is 3 October summer", "who are the officers", "is a Crew Leader an officer".

The answer is the clause that says what the term is. Terms are those that clauses define, and groups of grades
where a clause tells who is in them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

import msgspec

from kb.keywords import analyse
from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Clause, is_in_force
from kb.reader.pieces.editions import in_edition
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

_COUNTS = (
    r"count(?:s|ed)?|class(?:es|ed)?|fall(?:s)?|fell|com(?:e|es)|came|belongs?|belonged|ranks?|ranked"
    r"|reckoned|regarded"
    r"|treated|considered|seen|deemed|taken|called|qualif(?:y|ies|ied)|part|included?|includes|mean(?:s"
    r"|t)?|defined?"
    r"|termed|rated|make(?:s)? up|made up|start(?:s|ed)?|begin(?:s)?|began"
)
_JOIN = (
    r"as|in|into|under|within|among|to|of|with|for|a|an|the|one|some|any|part|still|already|officially"
    r"|really|strictly|technically|actually|exactly|by"
)
_END = (
    r"(?:,? ?(?:as (?:the|these|this|your|our) [a-z ]{3,20} (?:use|uses|mean|means|have|has|define"
    r"|defines) (?:it|the (?:word|term))"
    r"|(?:in|under|by|for|according to|within) (?:the|these|this|those|your|our) [a-z ]{3,24}|or not|now"
    r"|here|then|yet"
    r"|already|too|at all|proper|exactly|in (?:that|the) sense|in this service|in the (?:brigade|service)"
    r"|start(?:s)?|begin(?:s)?|end(?:s)?|finish(?:es)?|over"
    r"|last|lasts|count|counted|mean|means|there|as an? [a-z0-9 -]{2,20}|(?:at|on|during|when|if)"
    r" [a-z0-9°'’ -]{2,30}))*"
)
_LEAD = Pattern(
    r"^(?:(?:so|and|but|ok|okay|well|please|tell me|say|just|now|then),? )*(?:as an? [\w' -]{2,30}?,?"
    r" (?=(?:am|is|are|do|does)\b))?"
)
_ASKS = (
    rf"(?:(?:is|are|was|were|am) (?P<one>.{{1,60}}?)|(?:does|do|did|would|will) (?P<two>.{{1,60}}?) (?:be"
    rf" )?(?:{_COUNTS})|(?:who|what|whom)(?:['’]s)?(?: all)?"
    rf"|(?:which|what|how many) (?!(?:is|are|was|were|do|does|did|has|may|must|can|should)\b)[\w-]+(?:"
    rf" (?!in\b)[\w-]+)?|when(?: exactly)?|(?:for )?how long|what is the"
    rf" (?:definition|meaning) of"
    rf"|from when|until when|(?:define|explain))"
    rf"(?: (?:is|are|was|were|am|does|do|did|has|have|can be|be|{_COUNTS}|{_JOIN}))*"
)
_OTHER_MATTERS = frozenset(
    {
        "item",
        "items",
        "act",
        "aspect",
        "aspect value",
        "leave off",
        "care",
        "allowed",
        "required",
        "optional",
        "banned",
    }
)
_FACTS = frozenset({"fact", "values", "day", "on date", "measure", "item", "items"})
_YEAR = Pattern(r",? ?(?:say |like )?(?:back )?in (?:19|20)\d\d\b")


def membership(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The one clause that says what the term is that a text ends with, where no more than that is asked."""
    said = re.sub(r"['’]s\b", " is", " ".join(found.text.casefold().split())).strip(" ?.!\"'")
    if said.startswith(("what about", "how about", "and what about")) or _is_of_a_case(found):
        return None
    edition = in_edition(found, case.as_of, lookup)
    if edition is not None:
        cut = found.text[: edition.start] + found.text[edition.end :]
        said = _YEAR.sub("", " ".join(cut.casefold().split()).strip(" ?.!")).strip(" ,?")
        case = msgspec.structs.replace(case, as_of=edition.first)
    said = _LEAD.sub("", re.sub(r"[\"“”‘’]", "", said))
    for term, clauses, of_things in sorted(_glossary(lookup), key=lambda entry: -len(entry[0])):
        match = _is_all(said, term) if term in said else None
        if match is not None and (of_things or not _names_more(found, term)):
            known = [lookup.clauses[name] for name in clauses if _in_force(lookup.clauses[name], case)]
            known = [clause for clause in known if _is_known(match["one"] or match["two"], clause, found)]
            current = [clause for clause in known if clause.kind == "definition"] or known
            if len(current) == 1:
                return Query(kind="source", clause=current[0].id, case=case)
    return None


def _is_of_a_case(found: Understood) -> bool:
    """ "What gloves at -10": which are worn then, not which things are gloves."""
    asked = [piece.tag for piece in found.pieces[:2]]
    which = asked in (["what", "item"], ["what", "items"], ["which", "item"], ["which", "items"])
    return which and any(piece.tag in ("fact", "measure", "number") for piece in found.pieces)


def _names_more(found: Understood, term: str) -> bool:
    """Whether a thing or a doing is named besides the term: "is the cap worn in winter" asks of the cap."""
    for piece in found.pieces:
        text = " ".join(token.low for token in found.tokens[piece.first : piece.last])
        if piece.tag in _OTHER_MATTERS and piece.arg != "use" and text not in term and f"{term}s" != text:
            return True
    return False


def _is_known(subject: str | None, clause: Clause, found: Understood) -> bool:
    """Whether what is asked about is a fact of the books, or stands in the clause."""
    words = set(analyse(subject or ""))
    facts = (piece for piece in found.pieces if piece.tag in _FACTS)
    named = {word for p in facts for t in found.tokens[p.first : p.last] for word in analyse(t.low)}
    return not words or not words.isdisjoint(named) or not words.isdisjoint(analyse(clause.text))


def _is_all(said: str, term: str) -> re.Match[str] | None:
    """Whether a text asks what belongs to a term and nothing else."""
    word = rf"(?:an? |the )?{re.escape(term)}s?"
    pattern = rf"{_ASKS} {word}(?: or {word.replace(re.escape(term), '[a-z -]{3,30}?')})?{_END}"
    other = rf"{_ASKS} [a-z -]{{3,30}}? or {word}{_END}"
    return re.fullmatch(pattern, said) or re.fullmatch(other, said)


@lru_cache(maxsize=4)
def _glossary(lookup: Lookup) -> tuple[tuple[str, tuple[str, ...], bool], ...]:
    """Terms in small letters, the clauses that say what they are, and whether they are classes of things."""
    found: dict[tuple[str, bool], dict[str, None]] = {}
    for terms, of_things in (((*_defined(lookup), *_grouped(lookup)), False), (_said_to_be(lookup), True)):
        for term, clause in terms:
            found.setdefault((term.casefold().removeprefix("the "), of_things), {})[clause] = None
    return tuple(
        (term, tuple(clauses), of_things) for (term, of_things), clauses in found.items() if len(term) > 2
    )


def _defined(lookup: Lookup) -> Iterator[tuple[str, str]]:
    for definition in lookup.base.definitions:
        record = lookup.facts[definition.term]
        for name in (record.label, *record.other_labels):
            yield name, definition.clause
    for clause in lookup.base.clauses:
        if clause.kind == "definition":
            yield from ((name, clause.id) for name in re.findall(r"[\"“]([^\"“”]{2,40})[\"”]", clause.text))
            if clause.heading:
                yield clause.heading, clause.id
        elif clause.kind == "information":
            for name in re.findall(r"[\"“]([^\"“”]{2,40})[\"”]", f"{clause.heading or ''} {clause.text}"):
                yield name, clause.id


def _grouped(lookup: Lookup) -> Iterator[tuple[str, str]]:
    """Groups of grades, where a clause of no rule names both the group and grades in it."""
    for group in lookup.base.groups:
        record = lookup.facts[group.fact]
        if record.family != "grade":
            continue
        members = {value.id.casefold() for value in record.values if value.id in group.members}
        labels = [name for name in (group.label, *group.other_labels, group.one or "") if name]
        for clause in lookup.base.clauses:
            words = analyse(clause.text)
            named = any(f" {' '.join(analyse(label))} " in f" {' '.join(words)} " for label in labels)
            if clause.kind in ("definition", "information") and named and not members.isdisjoint(words):
                yield from ((label, clause.id) for label in labels)


def _said_to_be(lookup: Lookup) -> Iterator[tuple[str, str]]:
    """Classes of things, where a clause says of some things that they are of it: "earrings are jewellery"."""
    for item in lookup.base.items:
        kinds = lookup.narrower(item.id)[1:]
        names = [lookup.items[kind].label for kind in kinds]
        if not names or not item.broader:
            continue
        label = re.escape(item.label.casefold())
        said = Pattern(rf"(?i)\b(?:{'|'.join(map(re.escape, names))})s? (?:is|are) (?:an? )?{label}s?\b")
        yield from ((item.label, clause.id) for clause in lookup.base.clauses if said.search(clause.text))


def _in_force(clause: Clause, case: Case) -> bool:
    day = case.as_of
    return is_in_force(clause, day)


# -- how many there are, and which ----------------------------------------------------------------------

_LISTED = Pattern(
    r"(?:so |and )?(?:what|which|how many|list|name|show me|tell me)(?: are| is)?(?: all)?(?: the| our)?"
    r"(?: different| various| highest| lowest| top| most senior| most junior)? (?P<noun>[a-z]+?)s?"
    r"(?: (?:are there|are in use|do we have|have we got|exist|there are|(?:does|has|in) (?:the|our|this)"
    r" [a-z]+(?: have| got)?))*"
)
_GRADES = frozenset({"grade", "rank", "level"})
_MOST = 0.75


def enumeration(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """ "Which rigs are there": the one clause that names (nearly) all of them."""
    match = _LISTED.fullmatch(" ".join(found.text.casefold().split()).strip(" ?.!"))
    if match is None:
        return None
    chosen: list[str] = []
    for fact in lookup.base.facts:
        family = "grade" if match["noun"] in _GRADES else match["noun"]
        if fact.family not in ("grade", "rig", "branch") or family not in (
            fact.family,
            fact.label.casefold(),
        ):
            continue
        names = [group.label for group in lookup.base.groups if group.fact == fact.id]
        names = names if fact.family == "grade" and len(names) > 1 else [value.label for value in fact.values]
        for clause in lookup.base.clauses:
            text = f" {' '.join(analyse(clause.text))} "
            told = sum(f" {' '.join(analyse(name))} " in text for name in names)
            general = fact.family != "grade" or clause.kind in ("definition", "information")
            if _in_force(clause, case) and general and told > 1 and told >= _MOST * len(names):
                chosen.append(clause.id)
    return Query(kind="source", clause=chosen[0], case=case) if len(chosen) == 1 else None
