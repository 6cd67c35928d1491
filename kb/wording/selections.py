"""Facts with a choice or a scale of values as phrases: weather, place, rig, branch, sea state."""

from __future__ import annotations

import re

from kb.model.lookup import Lookup
from kb.model.months import months_of
from kb.model.records import Fact
from kb.model.values import Choices
from kb.text import Pattern
from kb.wording.english import (
    be,
    definite,
    indefinite,
    is_adverbial,
    is_participial,
    listing,
    phrase,
    with_shared_end,
    with_shared_start,
)
from kb.wording.phrases import WEARER, Phrase
from kb.wording.sets import Atom, atoms, closed, negated, say_ordered

_BRANCHES = Pattern(r"\b(branch|department|division|corps|section)\b", re.I)
_FEW = 3  # "in fell or hall rig" is plainer than "in any rig except rope rig"
_ADJECTIVE = Pattern(
    r"(y|ous|ful|less|able|ible|ish|ed|ic)$|^(clear|fair|foul|fine|dry|wet|hot|cold|cool|warm|calm|rough|mild|bad"
    r"|good|severe|normal|poor|bright|dull|overcast|light|heavy|strong|usual)$"
)
_ABOUT = {"weather": "in", "activity": "during"}
_LEADING = Pattern(r"\b(by|at|in|during) (the )?")


def _stripped(lookup: Lookup, fact: Fact, values: list[str]) -> list[str] | None:
    """Value labels without the words of the fact's label: "foul" (weather), "down" (sleeves)."""
    own = [word.lower() for word in fact.label.split()]
    found: list[str] = []
    for value in values:
        words = lookup.value_label(fact.id, value).split()
        low = [word.lower() for word in words]
        if len(words) > len(own) and low[: len(own)] == own:
            found.append(" ".join(words[len(own) :]))
        elif len(words) > len(own) and low[-len(own) :] == own:
            found.append(" ".join(words[: -len(own)]))
        elif len(words) > 1 and len(own) > 1 and low[-1] in (own[0], own[-1]):
            found.append(" ".join(words[:-1]))
        else:
            return None
    return found


def scale_phrase(lookup: Lookup, fact: Fact, values: Choices) -> Phrase:
    text = say_ordered(lookup, fact.id, values, "or")
    labels = [value.label for value in fact.values]
    short = _stripped(lookup, fact, [value.id for value in fact.values])
    if short is not None:
        for label, stripped in sorted(zip(labels, short, strict=True), key=lambda pair: -len(pair[0])):
            text = text.replace(label, stripped)
    subject = definite(fact.label)
    return Phrase(f"{subject} {be(fact.label)} {text}", noun=f"{fact.label} {text}")


def choice_phrase(lookup: Lookup, fact: Fact, chosen: frozenset[str]) -> Phrase:
    order = frozenset(lookup.order(fact.id))
    if not chosen or chosen == order:
        which = "any" if chosen else "no"
        return Phrase(f"{which} {fact.label} will do", noun=f"{which} {fact.label}")
    months = months_of(fact)
    if months and chosen <= set(months):
        return _months_phrase(lookup, fact, [month in chosen for month in months])
    name = _group_name(lookup, fact, chosen)
    direct: list[Atom] = [(name, ())] if name else _grouped(lookup, fact, atoms(lookup, fact.id, chosen))
    others = atoms(lookup, fact.id, order - chosen)
    turned = sum(1 + len(w) for _, w in others) < sum(1 + len(w) for _, w in direct)
    turned = turned and not (fact.family == "rig" and len(direct) < _FEW)
    picked = others if turned else direct
    if fact.family == "rig":
        return _rig_phrase(lookup, fact.id, picked, turned)
    if fact.family == "branch":
        return _branch_phrase(lookup, fact.id, picked, turned)
    labels = [lookup.value_label(fact.id, value) for value, _ in picked]
    labels += [lookup.value_label(fact.id, hole) for _, without in picked for hole in without]
    doing = _is_of_wearer(fact) or any(map(is_adverbial, labels))  # "on parade or visiting a school"
    if all(is_adverbial(label) or (doing and _is_done(label, fact)) for label in labels):
        bare = _join_atoms(lookup, fact, picked, turned)
        attached = bare if not turned and all(is_adverbial(label) for label in labels) else None
        place = 3 if attached else 4
        if attached and re.match(r"is it\b", fact.ask, re.I):
            return Phrase(f"it is {_LEADING.sub(r'', bare)}", bare, attached, noun=bare, place=6)
        return Phrase(f"{WEARER} is {bare}", bare, attached, True, bare, place)
    return _noun_choice(lookup, fact, picked, turned)


def _months_phrase(lookup: Lookup, fact: Fact, chosen: list[bool]) -> Phrase:
    """ "the month is November to March": three months or more in a row by the first and the last."""
    starts = [i for i in range(12) if chosen[i] and not chosen[i - 1]]
    runs = []
    for start in starts:
        run = [(start + step) % 12 for step in range(12)]
        run = run[: next(step for step in range(12) if not chosen[run[step]])]
        said = [lookup.value_label(fact.id, months_of(fact)[i]) for i in run]
        runs += [f"{said[0]} to {said[-1]}"] if len(said) > 2 else said
    text = listing(runs, "or")
    return Phrase(f"{definite(fact.label)} {be(fact.label)} {text}", noun=phrase(fact.label, text))


def _is_of_wearer(fact: Fact) -> bool:
    """Whether a fact may be something that the wearer is: "falling snow", of the weather, is not."""
    return not re.match(rf"(what|which) (is|are) (the )?{re.escape(fact.label)}\b", fact.ask, re.I)


def _is_done(label: str, fact: Fact) -> bool:
    """Whether a label tells what the wearer does; of any fact, if it is done to something."""
    words = label.lower().split()
    return is_participial(label) and (_is_of_wearer(fact) or words[1:2] in (["a"], ["an"], ["the"]))


def _grouped(lookup: Lookup, fact: Fact, found: list[Atom]) -> list[Atom]:
    """Values with those that make up a whole group said by its name, "on the slipway or on deck"."""
    for group in lookup.base.groups:
        members = closed(lookup, fact.id, group.members) if group.fact == fact.id else frozenset()
        inside = [atom for atom in found if atom[0] in members and not atom[1]]
        if len(inside) > 1 and closed(lookup, fact.id, [value for value, _ in inside]) == members:
            name = _group_name(lookup, fact, members)
            if name:
                place = found.index(inside[0])
                rest = [atom for atom in found if atom not in inside]
                found = [*rest[:place], (name, ()), *rest[place:]]
    return found


def _group_name(lookup: Lookup, fact: Fact, chosen: frozenset[str]) -> str | None:
    """A name of the group that is exactly this set, if it can stand by itself as the values do."""
    for group in lookup.base.groups:
        if group.fact == fact.id and closed(lookup, fact.id, group.members) == chosen and len(chosen) > 1:
            return next(
                (n for n in (group.label, *group.other_labels) if is_adverbial(n) or is_participial(n)), None
            )
    return None


def _join_atoms(lookup: Lookup, fact: Fact, picked: list[Atom], turned: bool) -> str:
    texts = []
    for value, without in picked:
        text = lookup.value_label(fact.id, value)
        if without:
            named = _group_name(lookup, fact, closed(lookup, fact.id, without))
            text += f" but not {named or listing([lookup.value_label(fact.id, h) for h in without], 'or')}"
        texts.append(text)
    if turned:
        return negated(listing(texts, "or"), len(texts) > 1)
    return with_shared_start(texts, "or")


def _noun_choice(lookup: Lookup, fact: Fact, picked: list[Atom], turned: bool) -> Phrase:
    values = [value for value, _ in picked]
    subject, verb = definite(fact.label), be(fact.label)
    strippable = [value for value in fact.values if _stripped(lookup, fact, [value.id]) is not None]
    short = None
    bare = [value.id for value in strippable if _is_qualified(fact, value.label)]
    if (len(strippable) > 1 or set(values) <= set(bare)) and not any(without for _, without in picked):
        short = [(_stripped(lookup, fact, [v]) or [lookup.value_label(fact.id, v)])[0] for v in values]
    if short is not None:
        text = listing(short, "or")
        said = negated(text, len(short) > 1) if turned else text
        head = [lookup.value_label(fact.id, value) for value in values]
        noun = with_shared_end(head, "or")
        return Phrase(f"{subject} {verb} {said}", noun=negated(noun, len(head) > 1) if turned else noun)
    labels = [lookup.value_label(fact.id, value) for value in values]
    if not turned and all(_names_itself(fact, label) for label in labels) and not any(w for _, w in picked):
        had = listing([indefinite(label) for label in labels], "or")
        return Phrase(f"{WEARER} has {had}", None, f"with {had}", noun=had, place=6)
    said = _join_atoms(lookup, fact, picked, turned)
    lead = _lead(fact, labels) if not any(w for _, w in picked) else None
    if lead is not None:
        named = f"{lead} {with_shared_end(labels, 'or')}"
        clause = f"there is {said}" if lead == "in" and not turned else f"{subject} {verb} {said}"
        if turned:
            return Phrase(clause, negated(named, len(labels) > 1), noun=said)
        return Phrase(clause, named, named, noun=said, place=6)
    return Phrase(f"{subject} {verb} {said}", noun=phrase(fact.label, said))


def _lead(fact: Fact, labels: list[str]) -> str | None:
    """What leads to names of weather or of doings, "in rain", "during rope work"; None if they are no names.

    An adjective is none ("the weather is foul"), nor is what somebody is ("hauling lines").
    """
    lead = _ABOUT.get(fact.label.lower())
    firsts = [label.split()[0].lower() for label in labels]
    if lead is None or any(map(is_adverbial, labels)):
        return None
    if lead == "during" and any(map(is_participial, labels)):
        return None
    if lead == "in" and any(len(label.split()) == 1 and _ADJECTIVE.search(label) for label in labels):
        return None
    if "the" in firsts:  # "on the way to work", "during the parade" do not share their beginning
        return "on" if len(labels) == 1 and labels[0].split()[1:2] == ["way"] else None
    return lead


def _is_qualified(fact: Fact, label: str) -> bool:
    """Whether a label is the fact's own with one word before it: "clear weather"."""
    words, own = label.lower().split(), fact.label.lower().split()
    return len(words) == len(own) + 1 and words[1:] == own


def _names_itself(fact: Fact, label: str) -> bool:
    """Whether a value is a thing that the fact is about: "name of ten letters" for the length of the name."""
    _, of, thing = fact.label.partition(" of ")
    return bool(of) and label.split()[0].lower() in thing.lower().split()


def _rig_phrase(lookup: Lookup, fact: str, picked: list[Atom], turned: bool) -> Phrase:
    names = with_shared_end([lookup.value_label(fact, value) for value, _ in picked], "or")
    text = f"in any rig except {names}" if turned else f"in {names}"
    return Phrase(f"{WEARER} is {text}", text, text, True, text, 8 if turned else 2)


def _branch_phrase(lookup: Lookup, fact: str, picked: list[Atom], turned: bool) -> Phrase:
    labels = [lookup.value_label(fact, value) for value, _ in picked]
    labels = [label if _BRANCHES.search(label) else f"{label} branch" for label in labels]
    names = definite(with_shared_end(labels, "or"))
    text = f"{'not ' if turned else ''}of {names}"
    if turned and len(picked) > 1:
        text = (
            f"of neither {names.replace(' or ', ' nor ')}" if len(picked) == 2 else f"not of any of {names}"
        )
    return Phrase(f"{WEARER} is {text}", text, text, True, text, 1, holder=True)
