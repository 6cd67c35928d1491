"""Yes-or-no facts and authorisations as phrases: what is worn, held, granted or going on."""

from __future__ import annotations

import re

from kb.model.lookup import Lookup
from kb.model.months import MONTHS
from kb.model.records import Fact
from kb.model.values import Choices
from kb.text import Pattern
from kb.wording.english import (
    ADVERBS,
    PREPOSITIONS,
    definite,
    head_index,
    indefinite,
    is_adverbial,
    is_participial,
    is_plural,
)
from kb.wording.labels import the_item
from kb.wording.phrases import WEARER, Phrase
from kb.wording.sets import all_can_grant, grant_ranks, grantors, say_grantor

WORN = "worn:"


def yes_no_phrase(lookup: Lookup, fact: Fact, chosen: frozenset[str]) -> Phrase:
    if len(chosen) != 1:
        either = "either way" if chosen else "neither way"
        return Phrase(f"{_either(lookup, fact)} is settled {either}", noun=f"{fact.label} {either}")
    yes = "yes" in chosen
    if fact.id.startswith(WORN) and fact.id[len(WORN) :] in lookup.items:
        return _worn_phrase(lookup, fact.id[len(WORN) :], yes)
    if fact.family in ("qualification", "appointment", "waiver"):
        return _held_phrase(fact, yes)
    return _state_phrase(fact, yes)


def _either(lookup: Lookup, fact: Fact) -> str:
    if fact.id.startswith(WORN) and fact.id[len(WORN) :] in lookup.items:
        return f"whether {WEARER} wears {the_item(lookup, fact.id[len(WORN) :])}"
    return f"the question of {definite(fact.label)}"


def _worn_phrase(lookup: Lookup, item: str, yes: bool) -> Phrase:
    name = _worn_name(lookup, item, yes)
    if yes:
        return Phrase(
            f"{WEARER} wears {name}", f"wearing {name}", f"with {name}", noun=f"with {name}", place=7
        )
    return Phrase(
        f"{WEARER} does not wear {name}",
        f"not wearing {name}",
        f"without {name}",
        noun=f"without {name}",
        place=7,
    )


def _worn_name(lookup: Lookup, item: str, yes: bool) -> str:
    """A class of items is "an outer garment" or "any outer garment"; a single item "the storm coat"."""
    label = lookup.items[item].label
    if label.lower().startswith("any"):
        return label
    if len(lookup.narrower(item)) > 1 and definite(label) != label:
        return indefinite(label) if yes else f"any {label}"
    return definite(label)


_CREDENTIALS = Pattern(
    r"(qualification|appointment|waiver|exemption|permission|certificate|licence|license|ticket|chit|award|rating|"
    r"endorsement|course|badge|pass|permit|warrant|commission|exception|dispensation|authority)s?$",
    re.I,
)


def credential(fact: Fact) -> str:
    """ "the diver qualification", also where the label is only "diver"."""
    label = fact.label
    words = label.split()
    if _CREDENTIALS.search(words[head_index(words)]) or _CREDENTIALS.search(label):
        return definite(label)
    if head_index(words) < len(words) - 1:
        return f"the {fact.family} of {label}"
    return definite(f"{label} {fact.family}")


def _held_phrase(fact: Fact, yes: bool) -> Phrase:
    name = credential(fact)
    if yes:
        return Phrase(
            f"{WEARER} holds {name}",
            f"holding {name}",
            f"with {name}",
            noun=f"with {name}",
            place=1,
            holder=True,
        )
    return Phrase(
        f"{WEARER} does not hold {name}",
        f"not holding {name}",
        f"without {name}",
        noun=f"without {name}",
        place=1,
        holder=True,
    )


def _state_phrase(fact: Fact, yes: bool) -> Phrase:
    """A yes-or-no situation. How the fact is asked for shows what kind of phrase its label is."""
    label, no = fact.label, "" if yes else "not "
    noun = f"{no}{label}"
    asked = _asked_frame(fact)
    if asked is not None:
        subject, verb, predicate = asked
        if subject == "it" and predicate.split()[0] in PREPOSITIONS:
            bare = f"{no}{predicate}"
            return Phrase(f"it {verb} {bare}", bare, bare if yes else None, noun=noun, place=6)
        return Phrase(f"{subject} {verb} {no}{predicate}", noun=noun)
    if (goes_on := _WHILE.fullmatch(label)) is not None:
        said = f"{goes_on['what']} {goes_on['verb']} {no}{goes_on['how']}"
        return Phrase(said, None, label if yes else None, noun=label if yes else said, place=6)
    if _OF_DAYS.match(label):
        return Phrase(f"the day is {no}{label}", None, label if yes else None, noun=noun, place=6)
    if is_adverbial(label) or is_participial(label) or _asks_you(fact):
        bare = f"{no}{label}"
        attached = bare if yes and is_adverbial(label) and not is_participial(label) else None
        return Phrase(f"{WEARER} is {bare}", bare, attached, True, noun, place=4)
    stated = _stated(fact, no)
    if stated is not None:
        return Phrase(stated, noun=noun, place=6)
    return Phrase(
        f"the case is {no}one of {label}",
        None,
        f"in the case of {label}" if yes else None,
        noun=noun,
        place=6,
    )


def _stated(fact: Fact, no: str) -> str | None:
    """What the question of a fact asks, as a statement: "the hair is gathered up" for "Is the hair ...?"."""
    words = fact.ask.strip().removesuffix("?").split()
    lead, rest = words[0].lower() if words else "", words[1:]
    you = len(rest) > 1 and rest[0].lower() == "you"
    first = fact.label.split()[0].lower()
    if you and lead in _YOU and (first in ("a", "an") or first.endswith("ed")):
        return f"{WEARER} is {no}{fact.label}"
    if len(rest) < 2 or any(word.rstrip(",").lower() in _OPEN or word.endswith(",") for word in rest):
        return None
    if you:
        said = _of_the_wearer(" ".join(rest[1:])).split()
        if lead == "do":
            verb = f"does not {said[0]}" if no else _third(said[0])
            return " ".join((WEARER, verb, *said[1:]))
        return (
            " ".join((WEARER, {"are": "is", "have": "has"}[lead], *no.split(), *said))
            if lead in _YOU
            else None
        )
    cut = next((place for place, word in enumerate(rest) if place and _PARTICIPLE.fullmatch(word)), None)
    if lead not in _LEADS or cut is None:
        return None
    return _of_the_wearer(" ".join((*rest[:cut], lead, *no.split(), *rest[cut:])))


def _third(verb: str) -> str:
    """A verb as it is said of one person: "wears", "goes", "carries", "has"."""
    if verb == "have":
        return "has"
    if re.search(r"[^aeiou]y$", verb):
        return f"{verb[:-1]}ies"
    return f"{verb}es" if re.search(r"(?:[sxzo]|ch|sh)$", verb) else f"{verb}s"


_OF_DAYS = Pattern(rf"(?:from|between|before|after|until|on) (?:\d+ )?(?:{'|'.join(MONTHS)})\b", re.I)
_WHILE = Pattern(r"(?:while|when) (?P<what>.+?) (?P<verb>is|are) (?P<how>.+)", re.I)
_OPEN = frozenset({"or", "not", "no", "any", "anyone", "which", "may"})
_YOU = frozenset({"are", "have"})
_LEADS = frozenset({"is", "are", "has", "have"})
_PARTICIPLE = Pattern(r"being|been|over|\w{3,}(?:ing|ed)", re.I)


def _of_the_wearer(text: str) -> str:
    return re.sub(r"\byou\b", WEARER, re.sub(r"\byour\b", f"{WEARER}'s", _lower_first(text)))


def _asks_you(fact: Fact) -> bool:
    """Whether the fact is asked for as "Are you <label>?"."""
    return fact.ask.lower().startswith(f"are you {fact.label.lower()}")


def _asked_frame(fact: Fact) -> tuple[str, str, str] | None:
    """Subject, verb and predicate of a situation from its question: "Is hot work being done?"."""
    match = re.fullmatch(r"(is|are) (?P<rest>.+?)\??", fact.ask.strip(), re.I)
    if match is None:
        return None
    verb, rest = match.group(1).lower(), match["rest"]
    label = re.escape(fact.label)
    it = re.fullmatch(
        rf"(?P<subject>it|there) (?P<predicate>(?:\w+ )?(?:the |an? |any )?{label})", rest, re.I
    )
    if it:
        return it["subject"].lower(), verb, _lower_first(it["predicate"])
    turned = re.fullmatch(r"(?P<word>\w+) (?P<noun>\w+)", fact.label.lower())
    if turned and rest.lower() == f"the {turned['noun']} {turned['word']}":
        return f"the {turned['noun']}", verb, turned["word"]  # "Is the fell white?" of the white fell
    whole = re.fullmatch(rf"(?P<subject>(?:the |your )?)(?P<label>{label})(?P<more>(?: .+)?)", rest, re.I)
    if whole is None:
        return None
    article = "the " if whole["subject"] else ""
    words = fact.label.split()
    than = next((i - 1 for i, word in enumerate(words) if i > 1 and word.lower() == "than"), None)
    cut = next((i for i, word in enumerate(words) if i and _begins_predicate(word)), than)
    if cut is None and not whole["more"] and len(words) > 1:
        cut = len(words) - 1
    if cut is not None:
        return article + " ".join(words[:cut]), verb, " ".join(words[cut:])
    more = whole["more"].strip()
    if not more:
        return None
    return article + fact.label, verb, _of_the_wearer(more)


def _begins_predicate(word: str) -> bool:
    low = word.lower()
    return low in ADVERBS or low in PREPOSITIONS or bool(re.search(r"..(ing|ed|en)$", low))


def _lower_first(text: str) -> str:
    return text if text[:2].isupper() else text[:1].lower() + text[1:]


# Authorisations


def grant_phrase(lookup: Lookup, fact: Fact, values: Choices) -> Phrase:
    """ "extreme heat dress has been granted by the District Superintendent or a higher authority"."""
    granting, ungranted = grant_ranks(lookup, fact.id, values)
    everyone = grantors(lookup, fact.id)
    if (len(granting) == len(everyone) and ungranted) or not (granting or ungranted):
        return Phrase(f"{fact.label} may or may not have been granted", noun=f"{fact.label} granted or not")
    named = [authority for authority in everyone if authority not in granting] if ungranted else granting
    have = (
        f"{fact.label} {'have' if is_plural(fact.label) else 'has'}{' not' if ungranted else ''} been granted"
    )
    noun = f"{fact.label} {'not ' if ungranted else ''}granted"
    if len(named) == len(everyone) and (ungranted or all_can_grant(lookup, fact.id)):
        return Phrase(have, noun=noun)
    by = say_grantor(lookup, fact.id, named, "or a higher authority")
    return Phrase(f"{have} by {by}", noun=f"{noun} by {say_grantor(lookup, fact.id, named)}")
