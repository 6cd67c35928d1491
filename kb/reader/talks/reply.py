"""A reply to a question that was asked back."""

from __future__ import annotations

from collections.abc import Sequence

from kb.errors import UsageError
from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask
from kb.model.values import NO, YES, Choices, ValueSet
from kb.reader.meaning.follow import NONE_OF_THEM, said_plainly, unmeant
from kb.reader.names.lexicon import Lexicon
from kb.reader.phrases.english import PHRASES
from kb.reader.talks.handed import as_holder
from kb.reader.talks.statement import parse_fact, read_statement
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern


def read_reply(ask: Ask, text: str, *, lexicon: Lexicon, lookup: Lookup) -> tuple[tuple[str, ValueSet], ...]:
    """The facts that a reply states: a value of what was asked, its number in the choices, or a sentence.

    Raises `UsageError` where a fact was asked for and the reply gives none, or where no fact was asked for.
    """
    if ask.fact not in lookup.facts:
        nothing = unmeant(ask, said_plainly(tokenize(text[:100])))
        raise UsageError("No fact was asked for." if nothing is None else nothing.reason)
    text = _by_holder(_MEANT.sub(r"\1, ", text), lookup)
    said = text.strip().rstrip(".?!")
    if said.isdecimal() and ask.choices and 1 <= int(said) <= len(ask.choices):
        return (parse_fact(lookup, ask.fact, ask.choices[int(said) - 1][0]),)
    if said.casefold() in NONE_OF_THEM:
        return (_none_of(ask, lookup),)
    try:
        return (parse_fact(lookup, ask.fact, said),)
    except UsageError as unknown:
        outright = _outright(said, ask, lookup)
        if outright is not None:
            return (outright,)
        whether = _WHETHER.fullmatch(said)
        if whether is not None and whether.group(2) is None:
            whether = None if _says_of(ask, said, lexicon, lookup) else whether
        further = _part(ask, whether.group(3), lexicon, lookup) if whether is not None else ()
        if whether is not None and whether.group(2) is None and further:
            if whether.group(1).casefold().startswith("n") and not _IS_SUBJECT.match(whether.group(3)):
                raise unknown  # "no in town", asked whether on watch: what is denied is not clear
            if ask.fact in dict(further):
                whether = None
        if whether is not None and further and lookup.facts[ask.fact].kind == "yes_no":
            return tuple(
                {**dict((parse_fact(lookup, ask.fact, _plainly(whether.group(1))),)), **dict(further)}.items()
            )
        found = read_statement(text, lexicon=lexicon, lookup=lookup)
        if not isinstance(found, Abstain) and found and not _names_only_items(found, said):
            return found
        if whether is not None and _tells_the_same(whether.group(1), whether.group(3), ask, lookup):
            return (parse_fact(lookup, ask.fact, _plainly(whether.group(1))),)
        said = _without_yes(ask, said, lookup)
        parts = [part.strip() for part in _PARTS.split(said) if part.strip()]
        several = [_part(ask, part, lexicon, lookup) for part in parts]
        if not all(several):
            raise unknown
        return tuple({fact: (fact, values) for facts in several for fact, values in facts}.values())


def _by_holder(text: str, lookup: Lookup) -> str:
    """What one has, where a reply tells who gave it; raises where the books do not say that they do."""
    told = as_holder(text, lookup)
    if isinstance(told, Abstain):
        raise UsageError(told.reason)
    return told


_MEANT = Pattern(r"(?i)^(no|nope|sorry|oh) (?=i (?:mean|meant)\b)")
_CORRECTED = Pattern(r"(?i)^(?:no|nope|sorry|oh),\s*")  # "no, the other cap" does without nothing
_WHETHER = Pattern(r"(?i)(yes|yep|yeah|yup|aye|nope|nah|no)([,.;] (?:and |but )?| and | but )? ?(.+)")
_TOLD = Pattern(
    r"(?i)(?:(?:no|nope|nah|yes|yep|yeah|aye|well|actually)[,.]? (?:but )?)?(?:i|we|it|he|she|they|there)"
    r"(?:['\u2019](?:m|re|s|ve)| am| is| are| do| does| have| has)"
    r"(?P<not> not| never|n['\u2019]t)? (?P<rest>[^,;.:?!]+?)"
    r"(?: (?:today|tonight|now|right now|just now|at the moment|at present|currently|this time|any ?more|"
    r"yet))*"
    r"(?P<tail>[,;.:]+ (?:but )?(?:(?:the|my|our|his|her|an?) )?[a-z]+(?: [a-z]+)?"
    r"(?:['\u2019]s| is| are| does| has| have)(?: (?:it|that|so))?)?"
)
_WITH_WHAT = word_set("with in on at to by from for while")
_IS_SUBJECT = Pattern(r"(?i)(?:i|we|he|she|they|it|the|my)\b")
_DENIED = Pattern(
    r"(?i)(?:there(?:['’]s| is| are) )?(?:no|not|without|not any|"
    r"nothing(?:['’]s| is| was)?)(?: the| any)? ([\w' -]+)"
)
_NOBODY = Pattern(r"(?i)\b(?:no ?body|no[- ]one|not|n['\u2019]t)\b")
_HEDGED = Pattern(
    r"(?i)\b(?:but|if|unless|only|except|when|while|sometimes|usually|mostly|maybe|perhaps|or|until|once|after|before|"
    r"apart|other|another|without)\b|\?"
)
_PARTS = Pattern(r"(?i),? (?:and|but) |, ")
_IT_IS = Pattern(
    r"(?i)(?:yes|no)?,? ?(?:it|that|they|i|we)"
    r"(?:['’](?:s|ve|m|re|d)| is| has| have| am| are| was| did| do| does)?"
    r"(n['’]t| not)?(?: been)?(?: granted| given| allowed| approved| issued| so)?"
)


def _without_yes(ask: Ask, said: str, lookup: Lookup) -> str:
    """ "Yes, I'm on watch", asked in which rig: that I am on watch."""
    whether = _WHETHER.fullmatch(said)
    if whether is None or whether.group(2) is None or lookup.facts[ask.fact].kind == "yes_no":
        return said
    yes = _plainly(whether.group(1)) == "yes"
    return whether.group(3) if yes and _IS_SUBJECT.match(whether.group(3)) else said


def _plainly(word: str) -> str:
    return "no" if word.casefold().startswith("n") else "yes"


def _tells_the_same(word: str, rest: str, ask: Ask, lookup: Lookup) -> bool:
    """ "Yes, I meet passengers", asked whether among passengers: what follows only says so in other words."""
    record = lookup.facts[ask.fact]
    if record.kind != "yes_no" or _HEDGED.search(rest) or (_plainly(word) == "yes" and _NOBODY.search(rest)):
        return False
    asked = f"{record.label} {' '.join(record.other_labels)} {ask.prompt}"
    known = {token.key for token in tokenize(asked) if len(token.low) > 3}
    return not known.isdisjoint(token.key for token in tokenize(rest) if len(token.low) > 3)


def _outright(said: str, ask: Ask, lookup: Lookup) -> tuple[str, ValueSet] | None:
    """The fact that a few words or a plain sentence deny or state, where they say no more than that."""
    absent = _absent(said, ask, lookup)
    if absent is not None:
        return absent, NO
    stated = _told_whether(ask, said, lookup)
    return _reaches(ask, said, lookup) if stated is None else (ask.fact, stated)


def _reaches(ask: Ask, said: str, lookup: Lookup) -> tuple[str, ValueSet] | None:
    from kb.reader.talks.how_far import reaches  # noqa: PLC0415  few replies tell how far something goes

    return reaches(ask, said, lookup)


def _told_whether(ask: Ask, said: str, lookup: Lookup) -> Choices | None:
    """ "I'm not in charge today, the mate is", asked whether in charge of the boat: no.

    What is told has to begin as what was asked does, and to say no more: who travels need not travel alone,
    but who does not travel does not. Whom else it is said of says nothing more after a no.
    """
    told = _TOLD.fullmatch(said)
    record = lookup.facts[ask.fact]
    if told is None or record.kind != "yes_no" or _HEDGED.search(f"{told['rest']} {told['tail'] or ''}"):
        return None
    denied = told["not"] is not None
    if told["tail"] is not None and not denied:
        return None
    words, names = _weighty(told["rest"]), (record.label, *record.other_labels)
    if any(_is_all_of(name, words) for name in names):
        return NO if denied else YES  # "I'm on call as duty engineer", asked whether duty engineer on call
    if all(len(word) < 4 for word in words) or (denied and "or" in _weighty(record.label)):
        return None  # who is not armed may be under orders, asked whether "armed or under orders"
    left = [_weighty(name)[len(words) :] for name in names if _weighty(name)[: len(words)] == words]
    sure = any(
        not rest
        or (rest[0] == "of" and len(rest) < 3)
        or (denied and (rest[0] in _WITH_WHAT or words[0].endswith("ing")))
        for rest in left
    )
    if not sure:
        return None  # "in the house", asked whether on the way to the house
    return NO if denied else YES


def _weighty(text: str) -> list[str]:
    """The keys of the words that are no articles, in order."""
    return [token.key for token in tokenize(text) if PHRASES.get((token.low,)) not in ("det", "poss")]


def _is_all_of(name: str, words: Sequence[str]) -> bool:
    """Whether words are those of a name of several, in any order, with small words between them."""
    own = set(_weighty(name))
    return len(own - _BETWEEN) > 1 and own <= set(words) and set(words) - own <= _BETWEEN


_BETWEEN = word_set("as at in on of for to the with")


def _says_of(ask: Ask, said: str, lexicon: Lexicon, lookup: Lookup) -> bool:
    """Whether "no hauling" is said of what was asked, and is no "no" with something further after it."""
    found = read_statement(said, lexicon=lexicon, lookup=lookup)
    return not isinstance(found, Abstain) and ask.fact in dict(found)


def _absent(said: str, ask: Ask, lookup: Lookup) -> str | None:
    """The yes-or-no fact that "no machinery" denies by words of its label: that asked about, or the one."""
    denied = _DENIED.fullmatch(said)
    words = {token.key for token in tokenize(denied.group(1))} if denied is not None else set()
    facts = [
        fact.id
        for fact in lookup.base.facts
        if words and fact.kind == "yes_no" and fact.family == "situation"
        and any(words <= {token.key for token in tokenize(name)} for name in (fact.label, *fact.other_labels))
    ]  # fmt: skip
    return ask.fact if ask.fact in facts else facts[0] if len(facts) == 1 else None


def _part(ask: Ask, said: str, lexicon: Lexicon, lookup: Lookup) -> tuple[tuple[str, ValueSet], ...]:
    """The facts of one part of a reply, if it has any: "6 degrees", "dry", "it has not been granted"."""
    record = lookup.facts[ask.fact]
    whether = _IT_IS.fullmatch(said)
    if whether is not None and record.kind == "yes_no":
        return ((ask.fact, NO if whether.group(1) else YES),)
    if whether is not None and record.family == "authorisation":
        granted = valid_grants(record, lookup)
        return ((ask.fact, Choices(frozenset({"none"})) if whether.group(1) else granted),)
    if _NOBODY.search(said) and (nobody := _nobody_did(said, lookup)) is not None:
        return (nobody,)
    try:
        return (parse_fact(lookup, ask.fact, said),)
    except UsageError:
        found = read_statement(said, lexicon=lexicon, lookup=lookup)
    if not isinstance(found, Abstain) and not _names_only_items(found, said):
        return found
    labels = [
        (fact.id, value.id)
        for fact in lookup.base.facts
        for value in fact.values
        if f"{said} {fact.label}".casefold()
        in (name.casefold() for name in (value.label, *value.other_labels))
    ]
    return (parse_fact(lookup, *labels[0]),) if len(labels) == 1 else ()


def _nobody_did(said: str, lookup: Lookup) -> tuple[str, ValueSet] | None:
    from kb.reader.talks.granted import nobody_did  # noqa: PLC0415  few replies deny an order

    return nobody_did(said, lookup.facts, lookup)


def _none_of(ask: Ask, lookup: Lookup) -> tuple[str, ValueSet]:
    """What is left of a fact when nothing that was offered holds."""
    domain = lookup.domain(ask.fact)
    offered = [parse_fact(lookup, ask.fact, value)[1] for value, _ in ask.choices]
    named = frozenset().union(*(values.members for values in offered if isinstance(values, Choices)))
    left = domain.members - named if isinstance(domain, Choices) and not domain.complement else frozenset()
    if lookup.facts[ask.fact].family == "authorisation":
        return ask.fact, Choices(frozenset({"none"}))
    if not left or not named:
        raise UsageError("One of them has to hold; say which, or that it is not known.")
    return ask.fact, Choices(left)


def _names_only_items(found: tuple[tuple[str, ValueSet], ...], said: str) -> bool:
    """Whether a reply only names items, without a word of wearing: it states nothing about them."""
    words = tokenize(_CORRECTED.sub("", said))
    tags = {PHRASES.get((token.low,)) for token in words}
    if words and words[-1].low in ("yes", "yep", "yeah", "no", "nope"):
        return False  # "the storm coat: yes"
    return all(fact.startswith("worn:") for fact, _ in found) and tags.isdisjoint(_WEARING)


_WEARING = frozenset({"wear", "use", "with", "without", "no", "have"})
