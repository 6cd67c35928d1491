"""A turn whose words settle what its reading leaves open: which part is meant, or that another thing is worn.

"How wide is that band?", of a helmet that has one; "the jersey instead?", after whether sleeves may be up.
"""

from __future__ import annotations

import re

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading, Verdict
from kb.model.values import NO, YES
from kb.reader.meaning import fits
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import PERSONAL, Lexicon
from kb.reader.phrases.english import PHRASES
from kb.reader.pieces.pieces import Understood
from kb.reader.question import understand
from kb.reader.talks.further import LEAD, bare_words, keys_of, put_as
from kb.reader.talks.talked import Talk, akin, in_its_case, item_alone
from kb.reader.words.tokens import tokenize, word_key
from kb.text import Pattern
from kb.wording import say_query

_BEFORE_ITEM = frozenset({"det", "poss", "wear", "use", "act", "no", "with"})
_LIGHT = frozenset({"det", "poss", "filler", "comma"})
_INSTEAD = Pattern(
    rf"(?i){LEAD}(?:(?:no|sorry|i mean|i meant|what about|how about),? )*"
    r"(?:(in|on|at|for|during|when|while|with) )?((?:(?:the|an?|my) )?[\w'\u2019 -]{2,40}?)(?: then| too)?"
)
_OF_WHOM = (
    r"((?:and |but |so )?(?:may|can|could|must|should|do|does|are|is))(?: the| an?| our)? <word>"
    r"( (?:have|need|wear|carry|own|allowed|get|take|be)\b.*)"
)
_NOT = Pattern(rf"(?i){LEAD}not ((?!even\b)[a-z'\u2019-]+(?: [a-z'\u2019-]+){{0,3}})")
_NOUN = Pattern(
    r"(?i)\b(the|its|their|those|these) ([a-z]{4,})\b(?! (?:of|on) (?:the|my|a|an|his|her|your)\b)"
)
_ALL_ONES = Pattern(r"(?i)(?:and |but |or |what about |how about )*([a-z]{3,}) ones?\W*")
_SUCH_ONES = Pattern(
    r"(?i)(?!.*\bother\b).*?"
    r"(\b(?:the|my|those|these) (?!same|first|second|last|next|new|old)([a-z]{3,}) ones?\b)"
)
_OTHERS = Pattern(
    r"(?i)(?:(?:and|but|or|what about|how about) )*"
    r"((?!(?:the|my|those|these|other|same|first|second|last|next|new|old|which|what|any|some)\b)"
    r"([a-z]{3,}) ones)\b"
    r"(?= ?[?.!,]| ?$)"
)
_WHY = Pattern(r"(?i)\b(?:why|how come|what for|reason|point)\b")
_HOW = Pattern(
    r"(?i)\b(?:how|what|which|where|long|longer|longest|length|wide|width|high|height|tall|deep|big|size)\b"
)
_ABOUT = Pattern(r"(?i)\b(?:what|how) (?:about|of|if)\b")
_AND = Pattern(r"(?i)\W*(?:and|or|what about|how about|for|as for|same (?:for|with)|also)\b")
_SET = Pattern(r"(?i)\b(?:with|without|in|on|at|when|if|while|instead|over|under|beneath|for|during|after)\b")
_PROHIBITED: tuple[Verdict, ...] = ("prohibited",)


def not_the_thing(text: str, talk: Talk) -> str | None:
    """ "Not deck shoes?", where no more than a thing is named: what about that; else None."""
    found = _NOT.fullmatch(bare_words(text)) if "?" in text else None
    named = found is not None and item_alone(found.group(1), talk.lexicon, talk.lookup) is not None
    return f"and {found.group(1)}?" if found is not None and named else None


def no_longer_why(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "Ok, and nail varnish?", after why no earrings may be worn: whether that may be.

    So in other words after "why not?": whether it may be, and not whether it is prohibited.
    """
    query, before = reading.query, previous.query
    if query is None or before is None or (query.kind, before.kind) != ("why", "why") or _WHY.search(text):
        return reading
    asked = () if query.modalities == _PROHIBITED else query.modalities
    query = msgspec.structs.replace(query, kind="may", modalities=asked)
    return msgspec.structs.replace(reading, query=query, text=say_query(talk.lookup, query))


def the_only_part(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "How wide is that band?", asked which part is meant: the one that there is, if the turn names it."""
    ask = reading.ask
    if ask is None or ask.fact != "item" or len(ask.choices) != 1 or previous.query is None:
        return reading
    item, lookup = ask.choices[0][0], talk.lookup
    whole = fits.whole_of(item, lookup)
    if item not in lookup.items or whole is None or whole not in previous.query.items:
        return reading
    own = keys_of(lookup.items[item].label) - keys_of(lookup.items[whole].label)
    words = [token for token in tokenize(text) if token.key in own]
    if len(words) != 1:
        return reading
    label = lookup.items[item].label
    again = talk.read(f"{text[: words[0].start]}{label}{text[words[0].end :]}", None)
    query = again.query
    if query is None or query.items != (item,) or lookup.aspects[query.aspect].kind != "measure":
        return reading
    return put_as(text, in_its_case(again, previous.query, talk))


def with_its_part(text: str, previous: Reading, talk: Talk) -> str:
    """ "What colour can the fastenings be?", after the hair: the hair fastening, the one thing so called.

    Where the word alone may be another thing, that thing is meant. "The black ones", after the deck shoes,
    are the black shoes.
    """
    query, lookup = previous.query, talk.lookup
    query = previous.frame if query is not None and query.clause is not None else query
    if query is None or len(query.items) != 1:
        return text
    called = _so_called(text, query.items[0], previous, lookup)
    found = _NOUN.search(text)
    if called != text or found is None:
        return called
    item, noun = lookup.items[query.items[0]], word_key(found.group(2).casefold())
    own = keys_of(item.label)
    labels = {one.id: [token.key for token in tokenize(one.label)] for one in lookup.base.items}
    named = [i for i, keys in labels.items() if len(keys) > 1 and keys[-1] == noun and {*keys[:-1]} <= own]
    if len(named) != 1 or named[0] in query.items or {item.id, *lookup.broader(item.id)} & {*named}:
        return text
    words = understand(found.group(2), talk.lexicon, lookup, None)
    if noun in own or (
        isinstance(words, Understood) and any(p.tag in ("item", "items") for p in words.pieces)
    ):
        return text
    return f"{text[: found.start()]}the {lookup.items[named[0]].label}{text[found.end() :]}"


def _so_called(text: str, item: str, previous: Reading, lookup: Lookup) -> str:
    """The text with the one other thing of the kind of an item named that "the black ones" are."""
    beside = _ALL_ONES.fullmatch(text.strip())
    spans = [span for span in previous.spans if span.role == "item" and span.target not in (None, item)]
    if beside is not None and len(spans) == 1 and _SET.match(previous.question):
        return f"and with {beside.group(1)} {spans[0].text}?"  # "with socks?", "white ones?"
    found = _SUCH_ONES.match(text) or _OTHERS.match(text)
    word = word_key(found.group(2).casefold()) if found is not None else ""
    names = (lookup.items[item].label, *lookup.items[item].other_labels)
    if found is None or any(word in keys_of(name) for name in names):
        return text
    named = [one.id for one in lookup.base.items if word in keys_of(one.label) and akin(item, one.id, lookup)]
    if len(named) != 1:
        return text
    return f"{text[: found.start(1)]}the {lookup.items[named[0]].label}{text[found.end(1) :]}"


def without_the_other(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "May I have one without it?", after a waiver for a beard: without the waiver, not the beard."""
    query, lookup = reading.query, talk.lookup
    if query is None or query.polarity != "do" or len(query.items) != 1:
        return reading
    itself = f"worn:{query.items[0]}"
    if dict(query.case.facts).get(itself) != NO or itself in reading.carried:
        return reading
    spoken = [span.target for span in previous.spans if span.role == "fact" and span.target is not None]
    held = [f for f in dict.fromkeys(spoken) if lookup.facts[f].family in ("waiver", "qualification")]
    if len(held) != 1:
        return Reading(question=reading.question, abstain=Abstain(reason="Say what it is to be without."))
    facts = tuple((fact, values) for fact, values in query.case.facts if fact != itself)
    case = merge_case(msgspec.structs.replace(query.case, facts=facts), {held[0]: NO}, None, False, lookup)
    asked = msgspec.structs.replace(query, case=case)
    return msgspec.structs.replace(reading, query=asked, text=say_query(lookup, asked))


def whether_at_all(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "And varnish?", after how long nails may be: whether it may be worn, as it has no length in the books.

    So after where something goes. Of two things of one kind the same is asked, though the books may not say
    it, unless no more than the other is named ("spurs?", after how wide an armband is), or a rule forbids
    the other: how big hoops are matters little where they are banned.
    """
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or len(query.items) != 1 or not before.items:
        return reading
    way = lookup.aspects[query.aspect]
    if query.kind not in ("how", "where") or query.aspect != before.aspect:
        return reading
    if way.kind not in ("measure", "position", "choice") and query.aspect != "size":
        return reading
    (item,) = query.items
    same = any(akin(one, item, lookup) for one in before.items) and _AND.match(text) is not None
    same = same and not _is_banned(item, lookup)
    if item in before.items or same:
        return reading
    named = {span.role for span in reading.spans}
    asks = _HOW.search(_ABOUT.sub("", text)) is not None
    if "item" not in named or named & {"aspect", "measure", "clause"} or asks:
        return reading
    act = fits.wearing(query.items, lookup)
    if any(fits.rules_of_aspect(query.items, query.aspect, lookup)) or not any(
        fits.rules_of_aspect(query.items, act, lookup)
    ):
        return reading
    worn = _unrolled(fits.whether_worn(query, lookup), before, lookup)
    return msgspec.structs.replace(reading, query=worn, text=say_query(lookup, worn))


def _is_banned(item: str, lookup: Lookup) -> bool:
    """Whether a rule forbids wearing this very thing, in some case or in all, and none ever orders it."""
    rules = fits.rules_of_aspect((item,), fits.wearing((item,), lookup), lookup)
    said = {rule.modality for rule in rules if item in rule.scope.items}
    return "must_not" in said and "must" not in said


def in_its_own_act(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "A raincoat in the rain?", after whether sleeves may be rolled: whether it may be worn.

    So where no rule speaks of the new thing as it was asked of the one before, and the turn says when: of the
    thing alone it is not clear what is asked.
    """
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or len(query.items) != 1 or query.kind not in ("may", "must"):
        return reading
    if query.items == before.items or query.aspect != before.aspect or not _SET.search(text):
        return reading
    if any(span.role in ("aspect", "measure", "clause") for span in reading.spans):
        return reading
    act = fits.wearing(query.items, lookup)
    own = any(
        query.items[0] in rule.scope.items for rule in fits.rules_of_aspect(query.items, query.aspect, lookup)
    )
    if query.aspect == act or own or not any(fits.rules_of_aspect(query.items, act, lookup)):
        return reading
    worn = _unrolled(fits.whether_worn(query, lookup), before, lookup)
    return msgspec.structs.replace(reading, query=worn, text=say_query(lookup, worn))


def _unrolled(query: Query, before: Query, lookup: Lookup) -> Query:
    """The question without that the thing before is worn, which asking what is done to it said."""
    gone = {f"worn:{item}" for item in before.items}
    gone |= {f"worn:{whole}" for item in before.items if (whole := fits.whole_of(item, lookup)) is not None}
    kept = tuple((fact, values) for fact, values in query.case.facts if fact not in gone or values != YES)
    return msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=kept))


def put_right(text: str, missed: Reading, lexicon: Lexicon, lookup: Lookup) -> str | None:
    """The question that was not understood, with what this turn says for the words of it that were not."""
    words = missed.abstain.words if missed.abstain is not None else ()
    place = missed.question.find(words[0]) if len(words) == 1 else -1
    led = missed.question[: max(place, 0)].casefold().split()[-1:]
    named = any(span.role == "item" for span in missed.spans)
    if place < 0:
        return None
    if named:
        return _in_the_place(text, missed, words[0], lexicon, lookup)
    fits_there = bool(led) and PHRASES.get((led[0],)) in _BEFORE_ITEM
    item = item_alone(text, lexicon, lookup) if fits_there else None
    if item is None:
        return None
    return missed.question[:place] + lookup.items[item].label + missed.question[place + len(words[0]) :]


def _in_the_place(text: str, missed: Reading, word: str, lexicon: Lexicon, lookup: Lookup) -> str | None:
    """ "And in the mess?", after "may I wear the cap in the scullery?", of which nothing else is unknown.

    So "and rescuers?", after "must visitors wear the helmet?": it is asked of them instead.
    """
    found = _INSTEAD.fullmatch(bare_words(text))
    if found is None:
        return None
    led, said = found.groups()
    read = understand(said if led is None else f"{led} {said}", lexicon, lookup, None)
    pieces = [p for p in read.pieces if p.tag not in _LIGHT] if isinstance(read, Understood) else []
    facts = [p.fact for p in pieces if p.tag == "fact" and p.fact]
    if not facts or len(facts) != len([p for p in pieces if p.tag not in ("in", "on", "for", "with")]):
        return None
    unknown = re.escape(word)
    if led in (None, "for") and all(lookup.facts[fact].family in PERSONAL for fact in facts):
        who = re.fullmatch(_OF_WHOM.replace("<word>", unknown), missed.question, re.IGNORECASE)
        if who is not None:
            return f"{who.group(1)} {said}{who.group(2)}"
    at = led and re.search(rf"\b{led} ((?:the|an?|my|our) )?{unknown}(?= ?[?.,;]| ?$)", missed.question, re.I)
    return f"{missed.question[: at.start()]}{led} {said}{missed.question[at.end() :]}" if at else None


def of_either(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "Silver or gilt?", of the item before, is asked of whom and of what that was."""
    query, before = reading.query, previous.query
    named = any(span.role == "item" for span in reading.spans)
    either = " or " in f" {reading.question.casefold()} "
    if query is None or before is None or named or not either or query.items != before.items:
        return reading
    facts = {**dict(before.case.facts), **dict(query.case.facts)}
    case = merge_case(query.case, facts, None, False, talk.lookup)
    query = msgspec.structs.replace(query, case=case)
    return msgspec.structs.replace(reading, query=query, text=say_query(talk.lookup, query))
