"""Treatments and states asked about by a verb: "can I wring it out", "hung up to dry", "hood up"."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case
from kb.reader.forms import word_pairs, word_set
from kb.reader.frame import Frame
from kb.reader.parts import Roles
from kb.reader.pieces import Understood
from kb.reader.query import said_case
from kb.reader.spelling import akin
from kb.reader.tokens import Token, tokenize

_PARTICIPLES = word_pairs("""
    wring=wrung wringing=wrung hang=hung hanging=hung beat=beaten beating=beaten freeze=frozen freezing=frozen
    tear=torn spin=spun spinning=spun dry=dried wash=washed bend=bent sew=sewn keep=kept cut=cut shake=shaken
""")
_LIGHT = word_set("out up to be it dry down off and with the a an in at")
_RAISED = word_set("hood visor")


def asked_treatment(
    found: Understood, left: Sequence[int], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Query | None:
    """The query of how the one item named is cared for, where rules on that have the verbs left over; whether
    it is worn, where a hood is up or down."""
    items = {piece.arg for piece in found.pieces if piece.tag == "item"}
    if frame.kind not in ("may", "must", "how") or len(items) != 1 or roles.clashing or roles.value:
        return None
    if any(piece.tag in ("act", "leave off") for piece in found.pieces):
        return None
    (item,) = items
    said = said_case(case, roles, lookup)
    words = [t for i in left for t in found.tokens[found.pieces[i].first : found.pieces[i].last]]
    lows = {token.low for token in words}
    if lows in ({"up"}, {"down"}):
        raised = tokenize(lookup.items[item].label.partition(" of ")[0])[-1].key in _RAISED
        polarity = frame.polarity if lows == {"up"} else "not"
        up = Query(kind="may", items=(item,), aspect="wear", polarity=polarity, case=said)
        return up if raised and frame.kind == "may" and frame.polarity == "do" else None
    for aspect in _treatments(item, lookup):
        if _tells(words, aspect, lookup):
            return Query(kind="how", items=(item,), aspect="care", case=said)
    return None


def _treatments(item: str, lookup: Lookup) -> list[str]:
    """The ways of care that rules name for an item or for what it is a kind of."""
    related = set(lookup.broader(item))
    spoken = {rule.aspect for rule in lookup.base.rules if related.intersection(rule.scope.items)}
    return [name for name in sorted(spoken) if lookup.aspects[name].within == "care"]


def _tells(words: Sequence[Token], aspect: str, lookup: Lookup) -> bool:
    """Whether every word of weight is one of a treatment's, in another form."""
    label = tokenize(lookup.aspects[aspect].label)
    weighty = [word for word in words if word.low not in _LIGHT]
    return bool(weighty) and all(any(_same_verb(word.low, part.low) for part in label) for word in weighty)


def _same_verb(word: str, part: str) -> bool:
    forms = [_PARTICIPLES.get(one, one) for one in (word, part)]
    return forms[0] == forms[1] or (min(map(len, forms)) > 3 and akin(*forms))
