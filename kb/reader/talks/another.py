"""A turn about another thing beside the one before: what is under it, what goes first, what instead."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query, Reading
from kb.model.records import Fact
from kb.model.values import NO, YES, ValueSet
from kb.reader.meaning.fits import depends, tests_worn, wearing
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import name_words
from kb.reader.pieces.pieces import Understood
from kb.reader.question import clean, understand
from kb.reader.talks.further import LEAD, bare_words, keys_of
from kb.reader.talks.meant import at_once
from kb.reader.talks.talked import Talk, akin, item_alone
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_SAYS_SO = Pattern(
    r"(?:(?:but|and|yet|still) )?(?:according to )?the (?:\w+ ){0,3}?(\w+) (?:says|said|allows|permits|lets|"
    r"forbids|bans|states|does n't)"
    r"(?: (?:so|otherwise|it|that|this|them|me|us|not|different|differently|yes|no|say|allow))*"
)
_FIRST = Pattern(
    r"(?i)(?:(?:and|but|so) )?(?:is it |does it (?:go|come) )?(?:before or after|after or before) (.+?)[ ?]*"
)
_LETS = Pattern(
    r"(?:(?:but|and|so|then) )?(the (?:\w+ ){0,3}\w+) (?:(?:lets|let|excuses) (?:me|us|him|her|them) off|"
    r"(?:says|said|allows|lets)(?: that)? (?:i|me|we|us|he|she|they|them)(?: can| may| could| to)? "
    r"(?:leave (?:it|them) off|go without(?: it| them)?|do without(?: it| them)?|not wear (?:it|them)))"
    r"(?: (?!it$)(.*?))??(?: (?:does|do|is|did|has) n't (?:it|they)| right)?"
)
_UNDER = Pattern(
    r"(?i)(?:(?:and|but|so|with|(?:and )?(?:how|what) about) )?(.+?) (?:underneath|beneath|under|below|"
    r"on top|over|with|right next to|next to|beside|alongside|along with|together with|in addition to|"
    r"besides)"
    r"(?: (?:it|them|that))?[ ?]*"
)
_IN_ITS_PLACE = Pattern(
    r"(?i)(?:(?:and|but|so|then|or|no|well)[ ,]+)*(?:(?:what|how) about |what if i |(?:can|may|could|must) "
    r"i )?(?P<led>(?:(?:go )?with|in|wear(?:ing)?|us(?:e|ing)|have|put on|tak(?:e|ing)|carry(?:ing)?) )?"
    r"([\w' -]+?)"
    r"(?: on)?,? (?:instead|rather)(?: (?:of|than) (?:it|that|them|those|these|that one|mine))?"
    r"(?: then)?((?:,? (?:in|on|at|when|if|while|for|under|over|during) .+)?)"
)
_AS_WELL = Pattern(
    r"(?i)(?:(?:and|but|so|even|also|or|then)[ ,]+)*(?:(?:what|how) about |if i (?:wear|have|put on) )?"
    r"(?:(?:together |along )?with|over|under) ([\w' -]+?)(?: on)?,? (?:as well|too|also|at the same time)"
    r"(?: then)?"
)
_OTHER = Pattern(r"(?i)\b(?:the|my|that|your) other ((?!one\b|ones\b)[a-z]+)\b")
_SUCH = Pattern(r"(?i),? (?:i mean |that is )?the ([a-z]+) one\b")
_OWN_KIND = Pattern(
    r"(?i)my (\w+?)(?:['’]s| is| are) (\w+)[.,;] (?:so )?(is|are|was|were) (?:that|it|they|those)\b(.*)"
)
_BESIDE = "worn:"
_WITH_IT_ON = Pattern(
    r"(?i),? \b(?:with (?:it|them|that|those)(?: still)? on|(?:still )?(?:wearing|in) (?:them|those))\b"
)
_WITH_WHAT = Pattern(
    rf"(?i){LEAD}(?:what about |how about |ones? )?(with (?:an? |the )?[a-z]+)(?: then| too)?"
)
_LIGHT = Pattern(
    r"(?:(?:and|but|so|even|what about|how about) )*(?:(by day|in (?:the )?daylight|in the daytime|"
    r"during the day|in the light)|by night|at night|in the dark|after dark|during the night)"
)


def the_other(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And the other jacket?": the one thing of that name besides the one before; asks which of several."""
    found, before, lookup = _OTHER.search(text), previous.query, talk.lookup
    if found is None or before is None or len(before.items) != 1:
        return None
    words = understand(found.group(1), talk.lexicon, lookup, None)
    pieces = words.pieces if isinstance(words, Understood) else ()
    named = {entry.id for piece in pieces for entry in piece.entries if entry.kind == "item"}
    named |= {piece.arg for piece in pieces if piece.tag == "item"}
    kinds = {kind for item in named for kind in lookup.narrower(item) if len(lookup.narrower(kind)) < 2}
    others = [item.id for item in lookup.base.items if item.id in kinds and item.id != before.items[0]]
    if before.items[0] not in kinds or not others:
        return None
    spoken = [item for item in others if item in previous.recent]
    others = spoken if len(spoken) == 1 else others
    rest, which = text[found.end() :], _SUCH.match(text[found.end() :])
    if which is not None:  # "the other jacket, the down one"
        others = [i for i in others if keys_of(which.group(1)) <= keys_of(lookup.items[i].label)] or others
        rest = rest[which.end() :]
    if len(others) > 1:
        choices = tuple((item, lookup.items[item].label) for item in others)
        return Reading(
            question=text, ask=Ask(fact="item", prompt="Which other one is meant?", choices=choices)
        )
    label = f"the {lookup.items[others[0]].label}"
    again = talk.read(f"{text[: found.start()]}{label}{rest}", previous)
    return again if again.query is not None else None


def of_another(text: str, said: str, before: Query, talk: Talk) -> Reading | None:
    """A turn about another thing beside the one before: what is under it, what goes first, what instead."""
    lookup = talk.lookup
    if not before.items:
        return None
    label = lookup.items[before.items[0]].label
    first = _FIRST.fullmatch(clean(text.strip()))
    if first is not None:
        return talk.read(f"Which goes first, the {label} or {first.group(1)}?", None)
    saying = _SAYS_SO.fullmatch(said)
    if saying is not None and saying.group(1) in _speakers(lookup):
        return talk.made(text, before)  # whatever is said of it, the answer is the same
    leave = _LETS.fullmatch(said)
    if leave is not None and leave.group(1).split()[-1] in _speakers(lookup):
        asked = talk.made(f"I {said}", before)
        return talk.read(f"May I leave it off {leave.group(2) or ''}?", asked)
    beside = _such_a_kind(text, before, talk) or _in_its_place(text, before, talk)
    beside = beside or _as_well(text, before, talk)
    if beside is not None:
        return beside
    under = _UNDER.fullmatch(clean(text.strip()))
    item = item_alone(under.group(1), talk.lexicon, lookup) if under is not None else None
    acts = before.kind in ("may", "must")
    if (
        item is not None
        and item not in before.items
        and (acts or not tests_worn(before.items[0], item, lookup))
    ):
        worn: dict[str, ValueSet] = {f"worn:{before.items[0]}": YES}
        case = merge_case(msgspec.structs.replace(before.case, alone=False), worn, None, False, lookup)
        kind = before.kind if acts else "may"
        return talk.made(text, Query(kind=kind, items=(item,), aspect="wear", case=case))
    return _by_light(text, said, before, talk)


def what_is_on(text: str, previous: Reading, talk: Talk) -> tuple[str, Reading]:
    """ "And if I go out of the mess with them on?", after a duty beside the deck shoes: whether those may be.

    What is on is what was worn beside it, and not the thing that was asked about as a duty.
    """
    found, before = _WITH_IT_ON.search(text), previous.frame or previous.query
    if found is None or before is None or before.kind != "must" or before.polarity != "do":
        return text, previous
    worn = [f.removeprefix(_BESIDE) for f, v in before.case.facts if f.startswith(_BESIDE) and v == YES]
    if len(worn) != 1:
        return text, previous
    less = tuple((fact, values) for fact, values in before.case.facts if fact != f"{_BESIDE}{worn[0]}")
    case = msgspec.structs.replace(before.case, facts=less)
    asked = Query(kind="may", items=(worn[0],), aspect=wearing((worn[0],), talk.lookup), case=case)
    said = talk.made(f"The {talk.lookup.items[worn[0]].label}?", asked)
    said = msgspec.structs.replace(said, recent=previous.recent)
    return f"{text[: found.start()]}{text[found.end() :]}", said


def _such_a_kind(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "With a stone?", after rings: whether a ring with a stone may be worn, a kind of them in the books."""
    found, lookup = _WITH_WHAT.fullmatch(bare_words(text)), talk.lookup
    if found is None or len(before.items) != 1 or before.kind not in ("may", "must", "how_many"):
        return None
    item = before.items[0]
    head = tokenize(lookup.items[item].label)[-1].key
    kinds = [
        one.id
        for one in lookup.base.items
        for name in (one.label, *one.other_labels)
        if one.id != item and (keys := _content(name))
        if keys[0] == head and keys[1:] == _content(found[1])
    ]
    if len({*kinds}) != 1 or not akin(item, kinds[0], lookup):
        return None
    asked = Query(kind="may", items=(kinds[0],), aspect=wearing((kinds[0],), lookup), case=before.case)
    return talk.made(text, asked)


def _content(text: str) -> list[str]:
    return [token.key for token in tokenize(text) if token.low not in ("a", "an", "the")]


def _in_its_place(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "With wool gloves instead?", after whether deck gloves may be worn: whether those may be.

    So "a rucksack instead?", after which shoulder the satchel goes over.

    What is worn beside it and is of the kind of the new thing is what goes for that; see `corrected`.
    """
    found, lookup = _IN_ITS_PLACE.fullmatch(" ".join(clean(text).split()).rstrip(" ?.!")), talk.lookup
    item = item_alone(found.group(2), talk.lexicon, lookup) if found is not None else None
    if found is None or item is None or item in before.items or len(before.items) != 1:
        return None
    acts = before.kind in ("may", "must")
    if not (found["led"] if acts else before.kind in ("how", "where", "how_many")):
        return None
    worn = [f.removeprefix("worn:") for f, v in before.case.facts if f.startswith("worn:") and v == YES]
    if any(akin(item, other, lookup) for other in worn) or (acts and not akin(item, before.items[0], lookup)):
        return None
    act = wearing((item,), lookup)
    asked = Query(kind="may", items=(item,), aspect=act, case=before.case)
    again = talk.made(text, asked)
    rest = found.group(3).strip(" ,")
    return talk.read(f"and {rest}?", again) if rest else again


def _as_well(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "With the scarf as well?", after how the neck cloth is tied: whether they may be worn together.

    So where no rule on what was asked tells whether the other thing is worn.
    """
    found, lookup = _AS_WELL.fullmatch(" ".join(clean(text).split()).rstrip(" ?.!")), talk.lookup
    if found is None or len(before.items) != 1 or before.kind not in ("how", "where", "how_many"):
        return None
    item = item_alone(found.group(1), talk.lexicon, lookup)
    if item is None or item in before.items or "feature" in lookup.broader(before.items[0]):
        return None
    worn: dict[str, ValueSet] = {f"worn:{item}": YES}
    if before.aspect != wearing(before.items, lookup) and depends(before.items, before.aspect, worn, lookup):
        return None
    return at_once(text, (item, before.items[0]), before.case, talk)


def _tells_light(fact: Fact) -> bool:
    words = {
        word for name in (fact.label, *(v.label for v in fact.values)) for word in name.casefold().split()
    }
    return not words.isdisjoint({"dark", "day", "night", "light", "daylight", "twilight"})


def _speakers(lookup: Lookup) -> set[str]:
    """The last words of the names of books and authorities."""
    named = (*lookup.base.books, *lookup.base.authorities)
    return {tokenize(n)[-1].low for one in named for n in (one.label, *one.other_labels) if tokenize(n)}


def _by_light(text: str, said: str, before: Query, talk: Talk) -> Reading | None:
    """ "By day?", where the books only know whether it is dark."""
    light = _LIGHT.fullmatch(said)
    facts = [
        f.id
        for f in talk.lookup.base.facts
        if f.kind == "yes_no" and f.label.casefold().split()[-1] == "dark"
    ]
    if light is not None and not any(_tells_light(fact) for fact in talk.lookup.base.facts):
        return talk.made(text, before)  # the books know no difference
    if light is None or len(facts) != 1:
        return None
    values = NO if light.group(1) else YES
    case = merge_case(before.case, {facts[0]: values}, None, False, talk.lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def of_own_kind(text: str, talk: Talk) -> Reading | None:
    """ "My belt's canvas. Is that all right?": the kind that a sentence before the question tells of."""
    owned = _OWN_KIND.fullmatch(text.strip())
    if owned is None:
        return None
    thing, kind, verb, rest = owned.groups()
    reading = talk.read(f"{verb} the {kind} {thing}{rest}", None)
    return msgspec.structs.replace(reading, question=text) if reading.query is not None else None


_ABOUT = Pattern(
    r"(?i)(?:(?:and|so|but|ok|then)[, ]+)*(?:what|how) about (?:the |my )?"
    r"(?P<name>[\w' -]+?)(?: then)?[ ?!.]*"
)


def in_that_outfit(text: str, previous: Reading, talk: Talk) -> str:
    """ "What about Sail Dress?", after a thing in another outfit: in that one, and not whether it is worn."""
    about, before = _ABOUT.fullmatch(text), previous.frame or previous.query
    if about is None or before is None or not before.items:
        return text
    asked = [talk.lookup.items[item].label for item in before.items]
    one_is_in = any(talk.lookup.facts[fact].family == "rig" for fact, _ in before.case.facts)
    if not one_is_in or not _is_outfit(about["name"], talk) or any(_is_outfit(name, talk) for name in asked):
        return text
    return f"and in {about['name']}?"


def _is_outfit(name: str, talk: Talk) -> bool:
    """Whether a name is that of a rig which is a thing to put on as well."""
    entries = talk.lexicon.names.get("".join(name_words(name)), ())
    rigs = [
        entry for entry in entries if entry.kind == "value" and talk.lookup.facts[entry.owner].family == "rig"
    ]
    return bool(rigs) and any(entry.kind == "item" for entry in entries)
