"""A value that no book names: whether it is another one than those that the rules of an item name."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query
from kb.model.values import OTHER, Choices, others_in
from kb.reader.pieces.parts import Roles
from kb.reader.words.colours import HEADS, is_name_of, is_natural, is_unnatural, may_be
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, label_words
from kb.text import visible
from kb.wording import listing, say_query

_OF_MANY = frozenset({"list", "source", "compare"})
_HAIR = word_set("hair beard moustache")
_LEADS = word_set("and so but then well ok okay , any")
_ELSE = (
    word_set("can could may might must does do should"),
    word_set("it they that this these those mine"),
    word_set("be have"),
    word_set("anything something"),
    word_set("else different other"),
)


def settled(query: Query, lookup: Lookup) -> Query | Ask:
    """The question with every value that it asks about settled: named, or one that no rule of the item names.

    A shade that may be one of the named ones is never taken for another; then what is meant is asked.
    """
    aspect = lookup.aspects[query.aspect]
    if not isinstance(query.value, Choices) or aspect.kind != "choice" or not query.items:
        return query
    others = [" ".join(_words_of(other, query.aspect, lookup)) for other in others_in(query.value)]
    if others and query.polarity == "not" and query.kind in ("may", "must"):
        return _offered(
            query, f'The books name no {aspect.label} "{visible(others[0])}". Is this the question?', lookup
        )
    spoken, taken = _spoken_of(query, lookup), set[str]()
    for member in sorted(query.value.members):
        words = _words_of(member, query.aspect, lookup)
        strange = member.startswith(OTHER)
        near = [v for v in spoken if _is_near(words, v, strange, query.aspect, lookup)]
        near = [] if member in spoken else near
        named = [
            v for v in near if any(is_name_of(words, label) for label in _labels(v, query.aspect, lookup))
        ]
        if not near:
            taken.add(member)
        elif len(near) == 1 and (named or _is_hair_colour(words, near[0], query, lookup)):
            taken.add(near[0])
        else:
            return _ask(query, " ".join(words), named if named == near else near, bool(named), lookup)
    if query.kind == "who":  # whose may be so is in the table of whether it may
        query = msgspec.structs.replace(query, kind="may", modalities=())
    return msgspec.structs.replace(query, value=Choices(frozenset(taken)))


def of_value(before: Query, roles: Roles, lookup: Lookup) -> Query | None:
    """ "What about black?": the question before, of another colour; None where more is said than that."""
    if roles.value_aspect not in lookup.aspects or not before.items or before.kind in _OF_MANY:
        return None
    more = roles.asked or roles.worn or roles.unworn or roles.facts or roles.aspect or roles.as_of
    if more or not isinstance(roles.value, Choices) or lookup.aspects[roles.value_aspect].kind != "choice":
        return None
    kind = before.kind if before.kind in ("may", "must") and before.value is not None else "may"
    return msgspec.structs.replace(
        before, kind=kind, aspect=roles.value_aspect, value=roles.value, polarity="do", modalities=()
    )


def anything_else(tokens: Sequence[Token], before: Query, lookup: Lookup) -> Query | None:
    """ "Can it be anything else?", after a colour: all that it may be; None where the words are others."""
    words = [token.low for token in tokens if token.low not in _LEADS]
    plain = len(words) == len(_ELSE) and all(word in some for word, some in zip(words, _ELSE, strict=True))
    if not plain or not before.items or lookup.aspects[before.aspect].kind != "choice":
        return None
    return msgspec.structs.replace(before, kind="how", value=None, polarity="do", modalities=())


def _spoken_of(query: Query, lookup: Lookup) -> list[str]:
    """The values of the aspect that rules on the item, or on kinds of it, name."""
    related = {*lookup.broader(query.items[0]), *lookup.narrower(query.items[0])}
    named = {
        member
        for rule in lookup.rules_on(related)
        if rule.aspect == query.aspect
        for member in getattr(rule.value.values, "members", ())
    }
    return [value.id for value in lookup.aspects[query.aspect].values if value.id in named]


def _words_of(member: str, aspect: str, lookup: Lookup) -> tuple[str, ...]:
    if member.startswith(OTHER):
        return tuple(member.removeprefix(OTHER).split("-"))
    return next(_labels(member, aspect, lookup), ())


def _labels(value: str, aspect: str, lookup: Lookup) -> Iterator[tuple[str, ...]]:
    """The names of a value as words, the first one first."""
    for record in lookup.aspects[aspect].values:
        if record.id == value:
            yield from (label_words(name) for name in (record.label, *record.other_labels))


def _is_near(words: tuple[str, ...], value: str, strange: bool, aspect: str, lookup: Lookup) -> bool:
    """Whether a colour may be the value of the books.

    Unless it is `strange` to them it is not: two that they name are two, save where one names no colour.
    """
    if HEADS.isdisjoint(words):
        return False
    labels = list(_labels(value, aspect, lookup))
    coloured = [label for label in labels if not HEADS.isdisjoint(label)]
    return (strange or not coloured) and any(may_be(words, label) for label in coloured or labels)


def _is_hair_colour(words: tuple[str, ...], value: str, query: Query, lookup: Lookup) -> bool:
    """Whether a colour of hair is for certain of the kind that a value names: blond, of natural colours."""
    labels = list(_labels(value, query.aspect, lookup))
    kind = all(HEADS.isdisjoint(label) and ("natural" in label or is_unnatural(label)) for label in labels)
    worn = label_words(lookup.items[query.items[0]].label)
    denied = any(is_unnatural(label) for label in labels)  # what may be so is then nothing else
    return kind and not _HAIR.isdisjoint(worn) and (denied or is_natural(words))


def _ask(query: Query, said: str, near: list[str], of_it: bool, lookup: Lookup) -> Ask:
    labels = {value.id: value.label for value in lookup.aspects[query.aspect].values}
    if of_it:
        asked = [msgspec.structs.replace(query, value=Choices(frozenset({value}))) for value in near]
        prompt = f'Which "{visible(said)}" is meant?'
    else:
        names = listing([labels[value] for value in near], "or")
        prompt = f'The books do not say whether "{visible(said)}" is {names}. Is this the question?'
        return _offered(query, prompt, lookup)
    choices = tuple((text, text) for text in (say_query(lookup, one) for one in asked))
    return Ask(fact="reading", prompt=prompt, choices=choices)


def _offered(query: Query, prompt: str, lookup: Lookup) -> Ask:
    """The question what the value must be, offered instead."""
    said = say_query(lookup, msgspec.structs.replace(query, kind="how", value=None, polarity="do"))
    return Ask(fact="reading", prompt=prompt, choices=((said, said),))
