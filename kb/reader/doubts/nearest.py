"""The nearest that rules say of a thing, where none speaks of what was asked: "how long is the jersey?".

The length is said as a way of wearing ("long enough to cover the belt"), what a thing is made of stands in
the words of a clause alone, of a crease it is only said where it runs. The read-back says what is answered.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, QuestionKind, Reading
from kb.model.records import Clause, is_in_force
from kb.model.values import OTHER
from kb.reader.meaning.fits import rules_of_aspect
from kb.reader.meaning.measured import rule_aspects
from kb.reader.words.colours import is_natural
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern
from kb.wording import say_query

_WORDS = {
    "length": word_set("long short length cover covers reach reaches"),
    "width": word_set("wide narrow width loose tight"),
    "height": word_set("high low tall height"),
}
_MADE = Pattern(r"\b(?:is|are|be) (?:made |knitted |woven )?(?:of|from) (?!(?:the|a|an|any|all)\b)\w")
_PLACED = Pattern(
    r"\b(?:worn|sewn|pinned|carried|placed|fixed|put|set) (?:\w+ )?(?:on|above|below|at|over|round|across) "
)
_SENTENCE = Pattern(r"(?<=[.;])\s+", re.UNICODE)


def nearest(query: Query | None, lookup: Lookup) -> Query | None:
    """The question that the rules of the (one) item do answer; None where they may answer what was asked."""
    if query is None or len(query.items) != 1 or query.clause is not None:
        return None
    if query.value is not None:
        return _of_its_colouring(query, lookup) or _of_dyeing(query, lookup)
    if len(lookup.narrower(query.items[0])) > 1 or _speaks(query, query.aspect, lookup):
        return None
    if query.kind in ("may", "must", "why"):
        return _of_an_act(query, lookup)
    if query.kind == "who":
        return _of_having(query, lookup)
    if query.kind == "how" and query.aspect in _WORDS:
        return _as_a_way(query, lookup)
    if query.kind == "how" and query.aspect == "construction":
        return _by_clause(query, _MADE, lookup)
    if query.kind == "where" and query.aspect == "position" and not _has_manner(query.items[0], lookup):
        return _by_clause(query, _PLACED, lookup)
    return None


def nearest_reading(reading: Reading, lookup: Lookup) -> Reading | None:
    """A reading of which the books are silent, as that of the question that they do answer."""
    query = _of_borrowing(reading, lookup) or nearest(reading.query, lookup)
    return msgspec.structs.replace(reading, query=query, text=say_query(lookup, query)) if query else None


_BORROWS = Pattern(r"(?i)\b(?:can|may|could) (?:i|we|he|she|they) (?:just |please )?borrow\b(?!.*\blend\b)")


def _of_borrowing(reading: Reading, lookup: Lookup) -> Query | None:
    """ "Can I borrow a pair?", where no rule is on lending: who borrows a thing wants to wear it."""
    query = reading.query
    if query is None or query.kind != "may" or _BORROWS.search(reading.question) is None:
        return None
    lent = lookup.aspects[query.aspect].verb == "lend" if query.aspect in lookup.aspects else False
    return msgspec.structs.replace(query, aspect=lookup.use_of(query.items[0])) if lent else None


def _of_an_act(query: Query, lookup: Lookup) -> Query | None:
    """Of wearing what no rule has worn, the one other matter of its rules; of carrying along, the wearing."""
    (item,) = query.items
    if query.aspect == "carrying" and "carried" not in lookup.broader(item):
        worn = msgspec.structs.replace(query, aspect="wear")
        return worn if _speaks(query, "wear", lookup) else None
    if query.aspect != "wear" or query.polarity != "do" or query.kind == "why":
        return None
    own = {rule.aspect for rule in lookup.rules_on((item,))}
    spoken = {lookup.aspects[name].within or name for name in own} - {"care"}
    if not spoken or any(lookup.aspects[aspect].kind == "act" for aspect in spoken):
        return None
    aspect = spoken.pop() if len(spoken) == 1 else "wear"
    kind: QuestionKind = "where" if aspect == "position" else "how_many" if aspect == "count" else "how"
    return msgspec.structs.replace(query, kind=kind, aspect=aspect, modalities=())


_COLOURINGS = word_set("dye tint colour color colouring coloring varnish polish lacquer")


def _of_its_colouring(query: Query, lookup: Lookup) -> Query | None:
    """ "Pink hair?", of which no rule is, but one of the colour of hair dye; "red nails?" of nail varnish."""
    if query.aspect != "colour" or _speaks(query, "colour", lookup):
        return None
    own = {token.key for token in tokenize(lookup.items[query.items[0]].label)}
    found = []
    for item in lookup.base.items:
        *first, last = (token.key for token in tokenize(item.label))
        if last in _COLOURINGS and set(first) == own and _speaks_of(item.id, "colour", lookup):
            found.append(item.id)
    return msgspec.structs.replace(query, items=(found[0],)) if len(found) == 1 else None


def _of_dyeing(query: Query, lookup: Lookup) -> Query | None:
    """ "Pink hair?", of which no rule is, but one on dyeing it: no hair grows so."""
    if query.aspect != "colour" or _speaks(query, "colour", lookup) or query.kind != "may":
        return None
    said = [tuple(one.removeprefix(OTHER).split("-")) for one in getattr(query.value, "members", ())]
    if not said or any(is_natural(words) or words == ("red",) for words in said):
        return None
    covering = set(lookup.broader(query.items[0]))
    acts = {rule.aspect for rule in lookup.base.rules if not covering.isdisjoint(rule.scope.items)}
    dyed = [one for one in acts if lookup.aspects[one].verb in ("dye", "tint", "bleach", "colour")]
    return msgspec.structs.replace(query, aspect=dyed[0], value=None) if len(dyed) == 1 else None


def _speaks_of(item: str, aspect: str, lookup: Lookup) -> bool:
    return any(not rule.residual for rule in rules_of_aspect((item,), aspect, lookup))


def _of_having(query: Query, lookup: Lookup) -> Query | None:
    """ "Who carries it?" of what rules have worn, and the other way round."""
    other = {"carrying": "wear", "wear": "carrying"}.get(query.aspect, "")
    found = bool(other) and any(
        rule.modality in ("must", "may")
        for rule in rules_of_aspect(query.items, other, lookup)
        if not rule.residual
    )
    return msgspec.structs.replace(query, aspect=other) if found else None


def _speaks(query: Query, aspect: str, lookup: Lookup) -> bool:
    """Whether a rule speaks of it, but for those that close what nothing mentions."""
    return any(not rule.residual for rule in rules_of_aspect(query.items, aspect, lookup))


def _as_a_way(query: Query, lookup: Lookup) -> Query | None:
    """The fit, where a way of wearing is put in words of the measure asked for; or the size across."""
    ways = [lookup.aspects[name] for name in rule_aspects(query.items[0], lookup)]
    if [way.id for way in ways if way.kind == "measure"] == ["size"]:
        return msgspec.structs.replace(query, aspect="size", modalities=())
    measured = any(way.kind == "measure" for way in ways)
    said = [way.within for way in ways if way.within and _WORDS[query.aspect] & _lows(way.label)]
    if measured or not said:
        return None
    return msgspec.structs.replace(query, aspect=said[0], modalities=())


def _lows(text: str) -> set[str]:
    return {token.low for token in tokenize(text)}


def _has_manner(item: str, lookup: Lookup) -> bool:
    """Whether a way of wearing may say where a thing is: "under the jersey"."""
    return any(lookup.aspects[name].within for name in rule_aspects(item, lookup))


def _by_clause(query: Query, pattern: Pattern, lookup: Lookup) -> Query | None:
    """The one clause in force that says it of the item in its own words."""
    item = query.items[0]
    found = {clause.id for clause in _clauses(query, lookup) if _says(clause, item, pattern, lookup)}
    if len(found) != 1:
        return None
    return Query(kind="source", clause=found.pop(), case=query.case)


def _clauses(query: Query, lookup: Lookup) -> Iterator[Clause]:
    day = query.case.as_of
    for name in dict.fromkeys(r.clause for r in lookup.rules_on((query.items[0],))):
        clause = lookup.clauses[name]
        if is_in_force(clause, day):
            yield clause


def _says(clause: Clause, item: str, pattern: Pattern, lookup: Lookup) -> bool:
    """Whether a sentence that begins with the name of the item says it."""
    names = (lookup.items[item].label, *lookup.items[item].other_labels)
    for sentence in _SENTENCE.split(clause.text):
        begun = " ".join(token.low for token in tokenize(sentence)).removeprefix("the ")
        if any(begun.startswith(f"{name.casefold()} ") for name in names) and pattern.search(sentence):
            return True
    return False
