"""Which thing a measure is asked of: the only one of several that is measured, or a part of the one named."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.conditions import ALWAYS
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query, QuestionKind
from kb.model.values import Choices
from kb.reader.meaning.frame import Frame
from kb.reader.names.lexicon import Entry
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.colours import HEADS
from kb.reader.words.tokens import tokenize
from kb.wording import say_query

_JOINTS = frozenset(
    {"in", "with", "a", "an", "the", "by", "and", "or", "not", "only", "of", "at", "on", "to"}
)
_IN_A = frozenset({"in", "with", "a", "an", "or"})


def measured_item(piece: Piece, aspect: str, lookup: Lookup) -> Piece | None:
    """ "How long may nails be": the one thing that the word may mean of which a rule says how long it is."""
    wanted = set(lookup.aspects_within(aspect)) if aspect in lookup.aspects else set()
    wanted = {a for a in wanted if lookup.aspects[a].kind == "measure"}
    found = [entry for entry in piece.entries if wanted.intersection(rule_aspects(entry.id, lookup))]
    others = [entry for entry in piece.entries if entry not in found]
    parts = [part for other in others for part in _parts(other.id, lookup)]
    if any(_is_measure(aspect, lookup) for part in parts for aspect in rule_aspects(part, lookup)):
        return None  # "how high is the cap" may be of its band
    return one_of(piece, found[0]) if len(found) == 1 < len(piece.entries) else None


def one_of(piece: Piece, entry: Entry) -> Piece:
    """The piece of a name that may mean several, as that of one of them."""
    return Piece(
        first=piece.first, last=piece.last, tag="item", arg=entry.id, entries=(entry,), how=piece.how
    )


def described(frame: Frame, roles: Roles, items: Sequence[str], lookup: Lookup) -> None:
    """Drop a colour that only describes what is worn: "is the yellow vest worn in town".

    It is the one that the thing always must have, and it is asked whether that is worn.
    """
    wanted = lookup.aspects.get(roles.value_aspect)
    if wanted is None or wanted.kind != "choice" or not isinstance(roles.value, Choices):
        return
    needed = frame.kind == "must" and not roles.aspect and roles.leading is not None
    if roles.aspect != "wear" and not needed:
        return
    if frame.kind not in ("may", "must") or frame.negated or len(items) != 1:
        return
    if always_is(items[0], wanted.id, roles.value, lookup):
        roles.value, roles.value_aspect = None, ""


def always_is(item: str, aspect: str, value: Choices, lookup: Lookup) -> bool:
    """Whether a thing always must have the one colour that is named; "a red or a blue pin" asks which."""
    rules = [rule for rule in lookup.rules_on((item,)) if rule.aspect == aspect]
    fixed = rules and all(rule.modality == "must" and rule.condition == ALWAYS for rule in rules)
    return bool(fixed and len(value.members) == 1 and all(rule.value.values == value for rule in rules))


def told_by(item: str, value: Choices, lookup: Lookup) -> str | None:
    """The circumstance that a thing worn is of a colour: "in a yellow or orange vest", of an orange one."""
    for fact in lookup.base.facts:
        words = tuple(token.low for token in tokenize(fact.label)) if fact.kind == "yes_no" else ()
        name = tuple(token.low for token in tokenize(lookup.items[item].label))
        said = words[: -len(name)] if words[-len(name) :] == name else ()
        if value.members <= set(said) and HEADS.union(_IN_A).issuperset(said):
            return fact.id
    return None


def which_measure(query: Query, lookup: Lookup) -> Query | Ask:
    """The measure that a bare length claims: the only one of the item, or of the whole of it; else which."""
    spoken = rule_aspects(query.items[0], lookup)
    within = [a for a in lookup.aspects_within(query.aspect) if a in spoken]
    whole = [a for a in within if " " not in lookup.aspects[a].label]
    if len(within) > 1 and len(whole) == 1:
        return msgspec.structs.replace(query, aspect=whole[0])
    if len(within) < 2:
        return query
    said = [say_query(lookup, msgspec.structs.replace(query, aspect=aspect)) for aspect in within]
    return Ask(fact="reading", prompt="Which measure is meant?", choices=tuple((text, text) for text in said))


def ask_part(query: Query, lookup: Lookup) -> Ask | None:
    """ "How long is the coat", where the rules measure no coat but its hem and its cuff: which is meant."""
    item = query.items[0]
    if set(lookup.aspects_within(query.aspect)).intersection(rule_aspects(item, lookup)):
        return None
    parts = [p for p in _parts(item, lookup) if any(_is_measure(a, lookup) for a in rule_aspects(p, lookup))]
    choices = tuple((part, lookup.items[part].label) for part in parts)
    return Ask(fact="item", prompt="Which part of it is meant?", choices=choices) if choices else None


def which_unsaid(query: Query, bare: bool, lasting: bool, lookup: Lookup) -> Abstain | None:
    """Stop where a measure is told, or "how long" is asked, and no rule measures that of the thing."""
    if bare and query.aspect == "size" and _told_elsewhere(query.items[0], lookup):
        return Abstain(reason="Not understood: which measure of it is told.")
    covering, lengths = set(lookup.broader(query.items[0])), set(lookup.aspects_within(query.aspect))
    ruled = any(r.aspect in lengths for r in lookup.rules_on(covering))
    if lasting and query.aspect == "length" and not ruled:
        return Abstain(reason="Not understood: a length or a time is asked for.", words=("how long",))
    return None


def _told_elsewhere(item: str, lookup: Lookup) -> bool:
    """Whether the books measure of a thing how far it is from another, or a circumstance ("hair length")."""
    if any(rule.aspect in lookup.aspects_within("size") for rule in lookup.rules_on((item,))):
        return False
    own = set(lookup.broader(item))
    rules = lookup.rules_on(own)
    placed = any(p.offset is not None for rule in rules for p in rule.value.positions)
    key = tuple(token.key for token in tokenize(lookup.items[item].label))
    facts = [
        tuple(t.key for t in tokenize(fact.label)) for fact in lookup.base.facts if fact.unit is not None
    ]
    return placed or any(fact[: len(key)] == key and len(fact) == len(key) + 1 for fact in facts)


def _parts(item: str, lookup: Lookup) -> list[str]:
    return [part.id for part in lookup.base.items if part.part_of == item]


def _is_measure(aspect: str, lookup: Lookup) -> bool:
    return lookup.aspects[aspect].kind == "measure"


def rule_aspects(item: str, lookup: Lookup) -> tuple[str, ...]:
    """Aspects about which any rule speaks for an item, what it is a kind of, or its kinds."""
    related = {*lookup.broader(item), *lookup.narrower(item)}
    return tuple(dict.fromkeys(r.aspect for r in lookup.rules_on(related)))


def manners_of(items: Sequence[str], lookup: Lookup) -> set[str]:
    """The manners in which rules say how an item is worn, not how far it reaches."""
    spoken = rule_aspects(items[0], lookup) if items else ()
    return {lookup.aspects[a].within or "" for a in spoken if lookup.aspects[a].kind == "act"}


def other_manners(aspect: str, item: str, lookup: Lookup) -> str:
    """The manner of which the item has rules in other words than those said ("buttoned up"), "" if none.

    Care is of many kinds: how a thing is dried does not say whether it may be ironed.
    """
    within, spoken = lookup.aspects[aspect].within, rule_aspects(item, lookup)
    others = [a for a in spoken if lookup.aspects[a].within == within]
    if within == "care":
        said = _verbs_of(aspect, lookup)
        others = [a for a in others if said & _verbs_of(a, lookup)]
    return within if within and aspect not in spoken and others else ""


def unsaid_care(aspect: str, item: str, lookup: Lookup) -> bool:
    """Whether a way of caring for things is named of which no rule on this one speaks: "how do I iron it"."""
    cared = aspect in lookup.aspects and lookup.aspects[aspect].within == "care"
    return cared and aspect not in rule_aspects(item, lookup) and not other_manners(aspect, item, lookup)


def _verbs_of(aspect: str, lookup: Lookup) -> set[str]:
    return {token.key for token in tokenize(lookup.aspects[aspect].label) if token.low not in _JOINTS}


def size_aspect(wanted: str, items: Sequence[str], lookup: Lookup) -> str:
    """The measured aspect that is meant: the one named, else the only one that the item's rules measure."""
    within = wanted if wanted in lookup.aspects else "size"
    if not items:
        return within
    spoken = rule_aspects(items[0], lookup)
    if any(aspect in spoken for aspect in lookup.aspects_within(within)):
        fitting = [a for a in lookup.aspects_within(within) if a in spoken]
        return fitting[0] if len(fitting) == 1 and within == "size" else within
    measured = [a for a in spoken if lookup.aspects[a].kind == "measure" and _answers(wanted, a, lookup)]
    if len(measured) == 1 and (within == "size" or " " not in lookup.aspects[measured[0]].label):
        return measured[0]
    if wanted == "size":
        return within
    parts = [part.id for part in lookup.base.items if part.part_of == items[0]]
    reaches = [aspect for part in parts for aspect in rule_aspects(part, lookup) if aspect not in spoken]
    told = [a for a in reaches if lookup.aspects[a].kind == "measure" and _answers(wanted, a, lookup)]
    families = {lookup.aspects[a].within or a for a in told}
    return families.pop() if len(families) == 1 and not measured else within


def _answers(wanted: str, aspect: str, lookup: Lookup) -> bool:
    """Whether a measure may answer for another: how far a thing reaches for how high or long it is."""
    if aspect in lookup.aspects_within("size"):
        round_too = wanted == "width" and aspect == "diameter"
        return round_too or wanted == "size" or aspect in lookup.aspects_within(wanted)
    return wanted in ("height", "length", "size")


def sized_question(
    wanted: str, roles: Roles, items: Sequence[str], lookup: Lookup, tall: bool = False
) -> tuple[QuestionKind, str]:
    """ "How high is it": a size; "how high is it worn", or of what is only placed: where it goes."""
    aspect = size_aspect(wanted, items, lookup)
    spoken = rule_aspects(items[0], lookup) if items else ()
    worn = roles.aspect == "wear" or not set(lookup.aspects_within("size")) & set(spoken)
    if wanted == "height" and "position" in spoken and worn and not tall:
        return "where", "position"
    return "how", aspect


def of_its_manner(query: Query, found: Understood, lookup: Lookup) -> Query | None:
    """ "Which knot for the neck cloth": how that is tied, where its rules have the word."""
    pieces = [piece for piece in found.pieces if piece.tag not in ("det", "poss", "filler")]
    if [piece.tag for piece in pieces[1:4]] != ["item", "for", "item"] or pieces[0].tag not in (
        "which",
        "what",
    ):
        return None
    word, thing = found.tokens[pieces[1].last - 1].low, pieces[3].entries[0].id
    for aspect in rule_aspects(thing, lookup):
        record = lookup.aspects[aspect]
        if record.within in ("fastening", "fit", "construction") and word in record.label.casefold().split():
            facts = tuple(fact for fact in query.case.facts if fact[0] != f"worn:{thing}")
            case = msgspec.structs.replace(query.case, facts=facts)
            return Query(kind="how", items=(thing,), aspect=record.within, case=case)
    return None
