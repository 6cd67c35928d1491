"""What was being done and is done no more: "and when I'm just standing about?", "once I've finished?".

What is denied outright ("no fog", "no machinery") is not so, either. Who stands about does nothing of what
was said; what was ordered, granted or worn is as it was.
"""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.values import YES, Choices, ValueSet
from kb.reader.meaning.query import merge_case
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.values import complement_of
from kb.reader.question import understand
from kb.reader.talks.further import LEAD, bare_words
from kb.reader.talks.talked import Talk
from kb.text import Pattern
from kb.wording import say_query

_WHO = r"(?:i|we|he|she|they|you)"
_IS = rf"(?:{_WHO}(?: am| are| is| was| were|['\u2019](?:m|re|s)) )?"
_ENDED = Pattern(
    rf"(?i){LEAD}(?:(?:what|how) about )?(?:(?:if|when|while|once|after|as soon as|what if|even when|now)"
    r"(?: that)? )?(?:"
    rf"{_IS}(?:just|only|simply|merely|now)? ?(?:standing|sitting|hanging|waiting|lounging|loafing|idling|"
    r"lazing|loitering|doing nothing|idle|at rest|resting)(?: (?:about|around|there|by|still|idle|idly|"
    r"at (?:all|present)|nothing))*|"
    rf"{_WHO}(?:['\u2019](?:ve|s|m|re)| have| has| am| are| is)?(?: (?:just|all|now|quite))*"
    r" (?:finish(?:ed)?|stop(?:ped)?|done|through)(?: (?:it|that|this|them|with (?:it|that|this)))?|"
    r"(?:it|that|this|all that)(?:['\u2019]s| is| has)?(?: (?:all|now))* (?:over|finished|done|ended)"
    r")(?: (?:again|then|now|for the day|with it|instead))*"
)
_NONE = Pattern(
    r"(?i)(?:(?:and|but|so|ok|okay|with|if|there(?:['\u2019]s| is| are))[ ,]+)*no "
    r"(?!(?:i|we|he|she|it|that|this|the|my|one|other|others|wait|sorry|not|no|longer|more|in|on|at|for|with|if|when|what|which|how)\b)(?=[a-z])"
)
_FURTHER = Pattern(r"(?i)[,;.]| (?:in|on|at|with|when|if|and|but|for|while)\b")
_OF_LIFE = ("situation", "term")
_DOINGS = frozenset({"activity", "task", "work", "duty", "occupation", "job"})


def ended(text: str, before: Query, talk: Talk) -> Reading | None:
    """The question before with the one doing that it knew of not going on; None for any other turn."""
    lookup = talk.lookup
    if before.kind not in ("may", "must") or _ENDED.fullmatch(bare_words(text)) is None:
        return None
    doing = [(fact, values) for fact, values in before.case.facts if _is_doing(fact, values, lookup)]
    if len(doing) != 1:
        return None
    over = {fact: complement_of(lookup, fact, values) for fact, values in doing}
    case = merge_case(before.case, over, None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def _is_doing(fact: str, values: ValueSet, lookup: Lookup) -> bool:
    """Whether a fact is known to be that something is being done: "hauling lines", "driving"."""
    record = lookup.facts[fact]
    if record.family != "situation" or not isinstance(values, Choices):
        return False
    if record.kind == "yes_no":
        return values == YES and _says_doing(record.label)
    named = [value for value in record.values if value.id in values.members]
    doing = record.label.casefold().split()[-1] in _DOINGS or any(_says_doing(v.label) for v in named)
    return record.kind == "choice" and not values.complement and len(named) == 1 and doing


def _says_doing(label: str) -> bool:
    return any(word.endswith("ing") and len(word) > 4 for word in label.casefold().split()[:1])


def denied(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "No fog", "and no machinery?": a circumstance that was read as if it were so is not.

    A "no" before a comma corrects what was said; one before a noun denies it.
    """
    found, query, lookup = _NONE.match(text), reading.query, talk.lookup
    before = previous.frame or previous.query
    if found is None or query is None or before is None:
        return reading
    old = dict(before.case.facts)
    noun, *more = _FURTHER.split(text[found.end() :])  # "no ceremony, in the hut?" is there
    words = understand(noun, talk.lexicon, lookup, None)
    pieces = words.pieces if isinstance(words, Understood) else ()
    said = {piece.fact: piece.values for piece in pieces if piece.tag == "fact" and piece.fact}
    wrong = {
        fact: complement_of(lookup, fact, values)
        for fact, values in query.case.facts
        if lookup.facts[fact].family in _OF_LIFE
        and old.get(fact) != values
        and (said.get(fact) == values or (not said and not more and values == YES))
    }
    if not wrong:
        return reading
    case = merge_case(query.case, wrong, None, False, lookup)
    asked = msgspec.structs.replace(query, case=case)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))
