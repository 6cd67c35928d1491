"""Questions to which a plain yes or no would be of something else than was asked.

Of a measure or number that is told as a fault ("three rings, is that a problem?", "15 cm, too long?") yes and
no are said of the fault, as they are of a ban. Who does something himself, and how hot the water is, is not
what rules on how it is done are of: the rules themselves are told, without yes or no.
"""

from __future__ import annotations

from itertools import pairwise

import msgspec

from kb.measures import same_dimension
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token
from kb.wording import say_query

_CORRECTED = (
    "pulled up", "picked up", "written up", "told off", "ticked off", "marked down", "sent back", "sent home",
    "sent away", "sent off", "hauled up", "reported", "reprimanded", "faulted", "failed", "rebuked",
)  # fmt: skip
_FAULTS = word_set("""
    problem problems wrong trouble issue issues objection objections fault faulty breach offence mistake
    forbidden banned prohibited barred illegal disallowed""")
_PLAINLY = word_set("problem problems trouble issue issues offence breach fault")
"""What makes a fault of wearing a thing, or of going without one."""
_ENDS = frozenset({"if", "when", "that", "?"})
_TOO = word_set(
    "long short big small large wide narrow high low deep thick thin many much few heavy tall far"
)
_RULES = word_set("rule rules regulation regulations regs order orders book")
_AGAINST = word_set("against break breaks breaking breach breaches broke broken")
_IT = word_set("it that this there")
_FINE = word_set("ok okay fine allowed permitted acceptable right alright legal good excuse excused")
_RIGHTLY = word_set("fair right rightly so justified correct")
_OUTSIDE = word_set("outside out over beyond")
_LIMITS = word_set("tolerance tolerances allowance limit limits bounds margin spec")
_DENIED = word_set("no not n't nothing never without isn't nobody")
_AGREED = (word_set("is are was were"), word_set("he she they"), word_set("right correct"))
_MENDED = word_set("""
    trim trimmed trimming cut cutting shave shaved shaving shorten shortened shortening clip clipped clipping
    crop cropped cropping file filed filing lengthen lengthened lengthening""")
_DUTY = word_set("must have has need needs should ought")
_BACK = 3  # words before, in which a denial is said of it
_MYSELF = word_set("myself yourself ourselves himself herself themselves oneself")


def asked_of_a_fault(
    reading: Reading, tokens: tuple[Token, ...], lookup: Lookup, banned: bool = False
) -> Reading:
    """The reading with yes and no said of the fault, where its words ask whether something told is one.

    `banned`: they ask so outright, "would I get told off for it".
    """
    query = reading.query
    if query is None or query.modalities:
        return reading
    lows = [token.low for token in tokens]
    if _is_to_be_mended(query, lows, lookup):
        turned = _turned(reading, msgspec.structs.replace(query, kind="may"), lookup)
        return msgspec.structs.replace(turned, unused=tuple(w for w in turned.unused if w not in _MENDED))
    if query.kind != "may":
        return reading
    if banned and "or" not in lows:
        return _turned(reading, query, lookup)
    if query.value is None:  # of an act it is said where it is asked: "I'm in trouble. May I wear it?"
        lows = lows[sentence_starts(reading.question, tokens)[-1] :]
        ends = any(one in _FAULTS | _RULES and then in _ENDS for one, then in pairwise([*lows, "?"]))
        if "or" in lows or (_PLAINLY.isdisjoint(lows) and not ends):  # not "I may be wrong, but may I"
            return reading
    elif query.polarity == "not" and _PLAINLY.isdisjoint(lows):
        return reading
    if not _names_a_fault(lows):
        return reading
    return _turned(reading, query, lookup)


def _turned(reading: Reading, query: Query, lookup: Lookup) -> Reading:
    turned = msgspec.structs.replace(query, modalities=("prohibited",))
    return msgspec.structs.replace(reading, query=turned, text=say_query(lookup, turned))


def _names_a_fault(lows: list[str]) -> bool:
    """Whether a word of fault is said, and neither denied nor offered beside its contrary."""
    if _is_put_right(lows):
        return True
    words = [low for low in lows if low[0].isalpha()]
    if len(words) > len(_AGREED) and all(map(frozenset.__contains__, _AGREED, words[-len(_AGREED) :])):
        lows = words[: -len(_AGREED)]  # "too high, he says: is he right?"
    if not _FINE.isdisjoint(lows):
        return False
    for index, low in enumerate(lows):
        too = low in _TOO and index > 0 and lows[index - 1] == "too"
        against = low in _AGAINST and not _RULES.isdisjoint(lows[index + 1 : index + _BACK])
        start = max(index - _BACK, 0)
        before = [one for one, after in pairwise(lows[start : index + 1]) if after not in _IT]  # "isn't it"
        beyond = low in _OUTSIDE and not _LIMITS.isdisjoint(lows[index + 1 : index + _BACK + 1])
        if (low in _FAULTS or too or against or beyond) and _DENIED.isdisjoint(before):
            return True
    return False


def _is_to_be_mended(query: Query, lows: list[str], lookup: Lookup) -> bool:
    """ "My beard is 30 mm. Must it be trimmed?": whether a measure told is asked to be put right."""
    told = query.value is not None and lookup.aspects[query.aspect].kind == "measure"
    if not told or query.kind not in ("may", "must") or query.polarity == "not":
        return False
    at = next((n for n, low in enumerate(lows) if low in _MENDED and "to" not in lows[n + 1 : n + 2]), None)
    if at is None or not _DENIED.isdisjoint(lows) or "or" in lows:
        return False
    measured = any(low[0].isdigit() for low in lows[:at])
    return measured and not _DUTY.isdisjoint(lows[:at])


def _is_put_right(lows: list[str]) -> bool:
    """ "... and I was told off for it. Fair?": whether what somebody was told is asked to be right."""
    words = [low for low in lows if low[0].isalpha()]
    said = f" {' '.join(words)} "
    return words[-1:] != [] and words[-1] in _RIGHTLY and any(f" {how} " in said for how in _CORRECTED)


def washed_at(reading: Reading, tokens: tuple[Token, ...], lookup: Lookup) -> Reading:
    """ "May I wash it at 40 degrees?": how it is washed; the heat is of the water, not of the air."""
    query = reading.query
    if query is None or query.kind not in ("may", "must") or lookup.aspects[query.aspect].within != "care":
        return reading
    warm = {fact.id for fact in lookup.base.facts if fact.unit and same_dimension(fact.unit, "Cel")}
    told = [fact for fact, _ in query.case.facts if fact in warm and fact not in reading.carried]
    if not told or not any(token.low.startswith("wash") for token in tokens):
        return reading
    facts = tuple(test for test in query.case.facts if test[0] not in told)
    case = msgspec.structs.replace(query.case, facts=facts)
    asked = Query(kind="how", items=query.items, aspect="care", case=case)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))


def done_by_oneself(reading: Reading, tokens: tuple[Token, ...], lookup: Lookup) -> Reading:
    """ "May I clean it myself?": how it is cleaned, or the clause on altering it, and neither yes nor no.

    Rules on what is done to a thing are not on who does it; the clause may well be.
    """
    query = reading.query
    if query is None or query.kind not in ("may", "must") or len(query.items) != 1:
        return reading
    if not any(token.low in _MYSELF for token in tokens) or query.aspect == lookup.use_of(query.items[0]):
        return reading
    if lookup.aspects[query.aspect].within == "care" or query.aspect == "care":
        asked = Query(kind="how", items=query.items, aspect="care", case=query.case)
    else:
        wider = set(lookup.broader(query.items[0]))
        rules = [r for r in lookup.rules_on(wider) if r.aspect == query.aspect]
        clauses = {rule.clause for rule in rules}
        if len(clauses) != 1:
            return reading
        asked = Query(kind="source", clause=next(iter(clauses)), case=query.case)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))
