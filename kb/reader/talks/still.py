"""What still holds in a turn that asks of another thing: where the wearer said to be, and for what occasion.

"Can I keep my lanyard on?", after "I'm working the winch. Must I wear the gloves?", is asked at the winch.
Kept is only what was told as being so, and bears on the thing; a turn that says where or when keeps nothing.
"""

from __future__ import annotations

import msgspec

from kb.model.conditions import tests
from kb.model.questions import Reading
from kb.model.values import ValueSet
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import PERSONAL
from kb.reader.pieces.pieces import Understood
from kb.reader.question import clean, understand
from kb.reader.talks.talked import Talk
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern
from kb.wording import say_query

_SITUATED = frozenset({"situation", "rig", "term"})
_KINDS = ("may", "must")
_FIRST = word_set("i we me us my our mine")
_OTHERS = word_set("he she they his her hers their them anyone anybody someone somebody you nobody everyone")
_ELSEWHERE = Pattern(
    r"(?i)\b(?:another|other|different|else|general(?:ly)?|ever|always|usually|normally|anywhere|elsewhere|"
    r"any time|otherwise|both|at once|together|tomorrow|yesterday|next|last|instead|off duty)\b"
)
_ASKED = Pattern(
    r"(?i)[.!;:] +(?=[^.!;:]*$)|, (?=(?:so |and |then )*(?:can|may|could|must|should|do|does|"
    r"am|is|are|what|which|where|how|who)\b[^.!;:]*$)"
)
_AS_WELL = Pattern(
    r"(?i)(?:.+[.,;] )?(?:(?:and|even) (?:the |my |a )?[\w' -]{2,40}|"
    r"(?:and )?(?:(?:the|my|an?) )?[\w' -]{2,40}? (?:as well|too|also))(?: then)?\W*"
)
_WORN = Pattern(r"(?i)\bwhat\b.*\b(?:wear|worn|put on|dress|outfit|rig|uniform)\b")
_STAYS = Pattern(r"(?i)\b(?:keep|still|stay|leave)\b")  # of how one is now: "can I keep my watch on?"
_WITH_IT = Pattern(r"(?i)\bwith (?:it|that|this|them)\b")
_HEDGED = Pattern(
    r"(?i)\b(?:not|no|or|unless|except|without|never|if|outside|off|than|until|before|after)\b|n['\u2019]t\b"
)


def still_there(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """The reading of a turn of one's own in the circumstances that were told before; as it is otherwise."""
    query = reading.query
    if query is None or query.kind not in _KINDS or not query.items or query.case.alone:
        return reading
    listed = _one_of_those_worn(text, reading, previous, talk)
    if listed is not None:
        return listed
    said = {token.low for token in tokenize(text)}
    if said.isdisjoint(_FIRST) or not said.isdisjoint(_OTHERS) or _ELSEWHERE.search(text):
        return reading
    lookup = talk.lookup
    if query.case.as_of != talk.case.as_of or not any(span.role == "item" for span in reading.spans):
        return reading
    told = _told(text, previous, talk)
    known = dict(query.case.facts)
    named = {span.target for span in reading.spans if span.role == "fact"}
    if any(lookup.facts[f].family in _SITUATED for f in named if f in lookup.facts):
        return reading
    kept: dict[str, ValueSet] = {
        fact: values
        for fact, values in told.items()
        if fact not in known and lookup.facts[fact].family in (*_SITUATED, *PERSONAL)
    }
    kept = {f: kept[f] for f in facts_that_matter(query, lookup) if f in kept}
    if not kept:
        return reading
    case = merge_case(query.case, kept, None, False, lookup)
    again = msgspec.structs.replace(query, case=case)
    carried = tuple(dict.fromkeys((*reading.carried, *kept)))
    return msgspec.structs.replace(reading, query=again, text=say_query(lookup, again), carried=carried)


def _one_of_those_worn(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading | None:
    """ "The tailcoat as well?", after the clause on what is worn at a wedding: whether it must be, at one."""
    query, before = reading.query, previous.query
    if query is None or before is None or before.clause is None or _AS_WELL.fullmatch(text.strip()) is None:
        return None
    if _WORN.search(previous.question) is None or _HEDGED.search(previous.question):
        return None
    known = dict(query.case.facts)
    told = {**_rig_of(before.clause, talk), **_facts_in(previous.question, talk)}
    kept = {fact: values for fact, values in told.items() if fact not in known}
    case = merge_case(query.case, kept, None, False, talk.lookup)
    case = msgspec.structs.replace(case, as_of=before.case.as_of)
    again = msgspec.structs.replace(query, kind="must", case=case) if query.kind == "may" else query
    carried = tuple(dict.fromkeys((*reading.carried, *kept)))
    return msgspec.structs.replace(
        reading, query=again, text=say_query(talk.lookup, again), carried=carried, frame=again
    )


def _rig_of(clause: str, talk: Talk) -> dict[str, ValueSet]:
    """The rig in which all is worn that a clause has worn: what is asked further is of that."""
    lookup = talk.lookup
    rules = [rule for rule in lookup.rules_of(clause) if rule.modality == "must" and rule.aspect == "wear"]
    rigs = [
        frozenset((t.fact, t.values) for t in tests(rule.condition) if lookup.facts[t.fact].family == "rig")
        for rule in rules
    ]
    one = len(rigs) > 1 and len(set(rigs)) == 1 and len(rigs[0]) == 1
    return dict(rigs[0]) if one else {}


def _told(text: str, previous: Reading, talk: Talk) -> dict[str, ValueSet]:
    """The circumstances that the wearer told as such, and not those under which a thing was asked about.

    What went on from them ("and my ring?") leaves them as they were; "with it" is in the rig before.
    """
    lookup, before = talk.lookup, previous.frame or previous.query
    parts = _ASKED.split(previous.question)
    told = _facts_in(parts[0], talk) if len(parts) > 1 and not _HEDGED.search(parts[0]) else {}
    if before is None or before.case.as_of != talk.case.as_of:
        return told
    known = dict(before.case.facts)
    if _STAYS.search(text) or any(token.low in _FIRST for token in tokenize(previous.question)):
        told |= {fact: known[fact] for fact in previous.carried if fact in known}
    if _WITH_IT.search(text) is not None:
        rigs = known if before.clause is None else _facts_in(previous.question, talk)
        told |= {fact: values for fact, values in rigs.items() if lookup.facts[fact].family == "rig"}
    return {fact: known.get(fact, values) for fact, values in told.items()}


def _facts_in(text: str, talk: Talk) -> dict[str, ValueSet]:
    found = understand(clean(text), talk.lexicon, talk.lookup, None)
    pieces = found.pieces if isinstance(found, Understood) else ()
    return {p.fact: p.values for p in pieces if p.tag == "fact" and p.fact and p.values is not None}
