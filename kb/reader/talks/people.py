"""Others of whom the question before is asked again: "and may attendants?", "and my pal, may he?"."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, QuestionKind, Reading
from kb.model.records import Case
from kb.model.values import ValueSet
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import PERSONAL, Lexicon
from kb.reader.pieces.pieces import Understood
from kb.reader.question import clean, understand
from kb.reader.talks.talked import Talk
from kb.reader.words.split import opens_question
from kb.text import Pattern, visible
from kb.wording import say_query

PEOPLE = (
    "mate|pal|friend|brother|sister|colleague|chum|buddy|oppo|cousin|partner|wife|husband|son|daughter|man|"
    "woman|lad|lass|girl|boy|chap|bloke|fellow|guy|nephew|niece|neighbour|room-?mate|team-?mate|boss|superior|"
    "supervisor|dad|father|mum|mother|uncle|aunt|fianc[ée]e?|girlfriend|boyfriend|twin|apprentice|trainee|"
    "recruit|junior|relief|replacement|deputy|predecessor|successor"
)

MYSELF = Pattern(
    r"(?i)(?:(?:and|but|ok|okay|right|so|well|now),? )*(?:back to (?:me|myself|my (?:own )?case)|"
    r"as for (?:me|myself))[,.:;]+ |"
    r"^(?:(?:and|but|so|ok|okay),? )*(?:(?:what|how) about )?(?:me|myself),? "
    r"(?=(?:in|on|at|by|near|with|without|if|when|while|during|for|under|over|as|once)\b)"
)
_STANDING = frozenset({"grade", "branch", "qualification", "appointment"})
_VERB = Pattern(r"(?i)(?:(?:and|but|so) )?(may|can|could|must|should)\b")
_DUTY = frozenset({"must", "should"})
_ASKED = Pattern(
    r"(?i)(?:(?:and|but|so|what if|even if) )*(?:may|can|could|must|should|do|does|are|is|"
    rf"(?:my|our) (?:{PEOPLE})(?:['\u2019]s| is|,? (?:he|she)(?:['\u2019]s| is))(?: only| just| still)?) "
    r"([\w' -]{2,40}?)[ ?.]*"
)
_WHO_ARE = Pattern(
    r"(?i)(?:(?:and|but|so|ok|okay),? )*(?:(?:who|what)(?:['\u2019]s|['\u2019]re| is| are| was| were)|"
    r"(?:who|what) (?:counts?|qualif(?:y|ies)|is meant|do(?:es)? you (?:call|mean))(?: as| by)?)\b.*"
)
_THEY = Pattern(
    r"(?i)(?P<lead>(?:.*? )?(?:may|can|could|must|should|shall|do|does|are|is|would|will)) "
    r"(?P<who>they|he|she)\b(?P<rest>.*)"
)
_NAMED = frozenset({"structure", "filler", "grade", "fact", "unknown"})
_SOMEBODY = Pattern(
    rf"(?i)(?:(?:and|but|so|then|now|ok|okay|right|well),? )*(?:(?:what|how) about |what if )?"
    rf"(?:my|our|his|her|a|this|that|some|another) (?:{PEOPLE})(?:['\u2019]s|\b)(?!['\u2019]s \w+ \w)"
)


def of_somebody_else(text: str, previous: Reading, talk: Talk) -> tuple[Reading, Talk]:
    """What a turn goes on from: without who "I" am, where it is of "my pal from the hall branch"."""
    query = previous.query
    mine = MYSELF.match(text) is not None
    if query is None or not (mine or _SOMEBODY.match(text)):
        return previous, talk
    lookup = talk.lookup
    if mine:
        return msgspec.structs.replace(previous, query=of_me(previous.frame or query, talk), frame=None), talk
    query = msgspec.structs.replace(query, case=_of_nobody(query.case, lookup))
    here = msgspec.structs.replace(talk, case=_of_nobody(talk.case, lookup))
    return msgspec.structs.replace(previous, query=query), here


def by_their_name(text: str, previous: Reading, talk: Talk) -> str:
    """ "May they wear a pin?", after "who are petty keepers?": may petty keepers.

    So of "can he?", where a clause was shown of somebody else: it is not asked of the one who asks.
    """
    they, query = _THEY.fullmatch(text), previous.query
    if they is None or query is None or query.kind != "source":
        return text
    if _WHO_ARE.match(previous.question):
        named = [span for span in previous.spans if span.role in ("grade", "fact")]
        if len(named) != 1 or {span.role for span in previous.spans} - _NAMED:
            return text
        fact, first, last = named[0].target, named[0].start, named[0].end
    elif they["who"].casefold() == "they" or (told := _told_of(previous.question, talk)) is None:
        return text
    else:
        fact, first, last = told
    if fact is None or fact not in talk.lookup.facts or talk.lookup.facts[fact].family not in _STANDING:
        return text
    before = previous.question[:first].casefold().split()
    article = f"{before[-1]} " if before and before[-1] in ("a", "an", "the", "my", "our") else ""
    return f"{they['lead']} {article}{previous.question[first:last]}{they['rest']}"


def _told_of(text: str, talk: Talk) -> tuple[str, int, int] | None:
    """The one standing that a question names, and where; None where somebody else is named as well."""
    found = understand(text, talk.lexicon, talk.lookup, None)
    pieces = found.pieces if isinstance(found, Understood) else ()
    named = [p for p in pieces if p.tag == "fact" and talk.lookup.facts[p.fact].family in _STANDING]
    if len(named) != 1 or not isinstance(found, Understood):
        return None
    one = named[0]
    return one.fact, found.tokens[one.first].start, found.tokens[one.last - 1].end


def by_another(text: str, reading: Reading, previous: Reading, lookup: Lookup) -> Reading:
    """ "I told the officer of the day" makes nobody that officer; else the reading as it stands.

    So of a turn that asks nothing and of which no more is understood than who somebody is, or that tells what
    somebody wants and would be read as asking how something is.
    """
    query, before = reading.query, previous.query
    if query is None or before is None or "?" in text or opens_question(text):
        return reading
    if not reading.unused and query.kind not in ("may", "must"):
        return Reading(question=reading.question, abstain=Abstain(reason="There is no question in this."))
    if not reading.unused:
        return reading
    old = dict(before.case.facts)
    new = {fact for fact, values in query.case.facts if old.get(fact) != values}
    if not new or any(lookup.facts[fact].family not in PERSONAL for fact in new):
        return reading
    shown = ", ".join(f'"{visible(word)}"' for word in reading.unused)
    missed = Abstain(reason=f"Not understood: {shown}.", words=reading.unused)
    return Reading(question=reading.question, spans=reading.spans, abstain=missed)


def not_of_another(text: str, reading: Reading, previous: Reading, lookup: Lookup) -> Reading:
    """ "The duty engineer is on call tonight" says nothing of who asks; else the reading as it stands."""
    if "?" in text or reading.query is None or not _IS_ANOTHER.match(text):
        return reading
    old = dict(previous.query.case.facts) if previous.query is not None else {}
    new = [fact for fact, values in reading.query.case.facts if old.get(fact) != values]
    if all(lookup.facts[fact].family != "appointment" for fact in new):
        return reading
    missed = Abstain(reason="That is said of somebody else, not of who asks.")
    return Reading(question=reading.question, spans=reading.spans, abstain=missed)


_IS_ANOTHER = Pattern(
    r"(?i)(?:(?:but|and|well|no|yes),? )*(?:the|our|another|some) [\w' -]+?"
    r"(?: (?:is|are)|['\u2019]s (?:on|in|at|off|a|an))\b"
    r"(?!.*\b(?:i|me|my|mine|we|us|myself)\b)"
)


def of_me(query: Query, talk: Talk) -> Query:
    """The question of who I am by the profile, instead of whoever was spoken of."""
    mine = {f: v for f, v in talk.case.facts if talk.lookup.facts[f].family in PERSONAL}
    case = merge_case(_of_nobody(query.case, talk.lookup), mine, None, False, talk.lookup)
    return msgspec.structs.replace(query, case=case)


def _of_nobody(case: Case, lookup: Lookup) -> Case:
    kept: Iterable[tuple[str, ValueSet]] = (
        f for f in case.facts if lookup.facts[f[0]].family not in PERSONAL
    )
    return msgspec.structs.replace(case, facts=tuple(kept))


def people_asked(text: str, lexicon: Lexicon, lookup: Lookup) -> str | None:
    """The words for whom it is asked, where they name people by their grade or the like and say no more."""
    asked = _ASKED.fullmatch(" ".join(clean(text).split()))
    found = understand(asked.group(1), lexicon, lookup, None) if asked is not None else None
    if asked is None or not isinstance(found, Understood):
        return None
    facts = [piece.fact for piece in found.pieces if piece.tag == "fact"]
    bare = {piece.tag for piece in found.pieces} <= {"det", "fact", "filler"}
    standing = bool(facts) and all(lookup.facts[fact].family in _STANDING for fact in facts)
    return asked.group(1) if bare and standing else None


def as_asked(reading: Reading, text: str, talk: Talk) -> Reading:
    """The question of others with the verb of the turn: "must wardens?", after "may I wear it?"."""
    query, verb = reading.query, _VERB.match(text)
    kind: QuestionKind = "must" if verb is not None and verb.group(1).casefold() in _DUTY else "may"
    if query is None or verb is None or query.kind not in ("may", "must") or query.kind == kind:
        return reading
    query = msgspec.structs.replace(query, kind=kind)
    return msgspec.structs.replace(reading, query=query, text=say_query(talk.lookup, query))
