"""What was being done and is done no more: "and when I'm just standing about?", "once I've finished?".

Who stands about does nothing of what was said; what was ordered, granted or worn is as it was.
"""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.values import YES, Choices, ValueSet
from kb.reader.meaning.query import merge_case
from kb.reader.pieces.values import complement_of
from kb.reader.talks.further import LEAD, bare_words
from kb.reader.talks.talked import Talk
from kb.text import Pattern

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
