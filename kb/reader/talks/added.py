"""What a situation adds to what is worn: "I'm at a funeral in parade rig. What's the extra?"."""

from __future__ import annotations

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Rule
from kb.model.values import ValueSet, intersect, is_empty
from kb.reader.meaning.query import merge_case
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.pieces import Understood
from kb.reader.question import understand
from kb.reader.talks.talked import Talk
from kb.text import Pattern

_EXTRA = Pattern(
    r"(?i)(?:(?:and|so|but|then),? )?(?:"
    r"what (?:extras?|additional|special)(?: \w+)? (?:do|must|should|shall|can|have) (?:i|we|they|he|she)"
    r"(?: (?:wear|need|have|add|put on|to wear|get))*|what (?:do|must|should|shall) (?:i|we|they) add|"
    r"what(?:['\u2019]s| is| are)? (?:(?:the|my|there) )?(?:extras?|added|additional|special)"
    r"(?: (?:kit|thing|item|bit|piece|dress))?|"
    r"(?:do|must|should) (?:i|we|they) (?:wear|need|add|put on) (?:any|some)thing (?:extra|special|more)|"
    r"(?:is there )?(?:any|some)thing (?:extra|special)(?: (?:to wear|needed|required|called for))?)"
    r"(?: (?:then|there|for (?:it|that)|on top|to wear|needed|required))*"
)
_SAID = tag_set("""
    det, poss, filler, comma, fact, in, on, for, at, with, be, self, person, and, to, if, have, act, hold
    when, unread, and how about
""")
_STANDING = frozenset({"grade", "branch", "rig"})


def added(text: str, previous: Reading | None, talk: Talk) -> Reading | None:
    """The list of what a rule has worn because of the situation that is told; None for any other text."""
    found = _EXTRA.search(text)
    if found is None or not found.group(0).strip():
        return None
    rest = f"{text[: found.start()]}, {text[found.end() :]}".strip(" ,.?!;:")
    said = understand(rest, talk.lexicon, talk.lookup, None) if rest else None
    if said is not None and not (isinstance(said, Understood) and {p.tag for p in said.pieces} <= _SAID):
        return None
    facts: dict[str, ValueSet] = {}
    for piece in said.pieces if isinstance(said, Understood) else ():
        if piece.tag == "fact" and piece.values is not None:
            facts[piece.fact] = piece.values
    before = previous.query.case if previous is not None and previous.query is not None else talk.case
    told = {
        f: v for f, v in (facts or dict(before.facts)).items() if talk.lookup.facts[f].family not in _STANDING
    }
    case = merge_case(
        before if before.as_of == talk.case.as_of else talk.case, facts, None, False, talk.lookup
    )
    items = _because_of(told, talk.lookup)
    if not items:
        return None
    return talk.made(text, Query(kind="list", items=items, case=case, modalities=("required",)))


def _because_of(told: dict[str, ValueSet], lookup: Lookup) -> tuple[str, ...]:
    """The items that a rule has worn where one of the facts holds, else those that it frees nobody from."""
    resting = [rule for rule in lookup.base.rules if rule.aspect == "wear" and _rests_on(rule, told)]
    duties = [rule for rule in resting if rule.modality == "must"]
    found = (item for rule in duties or resting for item in rule.scope.items if lookup.items[item].broader)
    return tuple(dict.fromkeys(found))


def _rests_on(rule: Rule, told: dict[str, ValueSet]) -> bool:
    return any(
        test.fact in told
        and (not is_empty(intersect(test.values, told[test.fact])) or rule.modality == "need_not")
        for test in tests(rule.condition)
    )
