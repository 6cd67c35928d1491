"""Further words of a talk: said in plainer ones, taken back, put against those before, or put beside them.

"Same for a K3?", "forget the rain", "not boat rig, watch rig", "and with them up?", "and the letters?".
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query, Reading
from kb.model.values import NO, YES, Choices, ValueSet
from kb.reader.english import CREDENTIAL_NOUNS, PHRASES, tag_set
from kb.reader.fits import facts_that_matter, kind_of_part
from kb.reader.forms import word_set
from kb.reader.pieces import Understood
from kb.reader.query import merge_case
from kb.reader.question import clean, understand
from kb.reader.talked import Talk
from kb.reader.tokens import tokenize
from kb.reader.values import closure
from kb.text import Pattern

_WORN = "worn:"
_THANKS = Pattern(
    r"(?i)(?:(?:ok|okay|right|fine|great|good|perfect|lovely|brilliant|excellent|understood|noted|thanks|"
    r"thank you|thankyou|cheers|ta|got it|i see|gotcha|cool|sure|ah|oh|aha|hm+|will do|sounds good|"
    r"(?:that|it)(?:['’]s| is| was) (?:all|fine|clear|great|good|helpful|good to know|it|ok|okay)|that helps|"
    r"that makes sense|makes sense|fair enough|good to know|much appreciated|many thanks|a lot|very much|"
    r"so much|then|very well|very good|no worries|no problem|never mind|nice|bye|goodbye|cheerio|well|so|"
    r"for that|for now|mate|clear|all clear|as i thought|i thought so|and|all good)\b[ ,.;!]*)+"
)
_LEAD = r"(?:(?:and|but|so|ok|okay|right|then|well|also),? )*"
_TO = r" (for|with|in|on|at|if|when|of|to|as for|without|under|over) (.+)"
_SAME = Pattern(
    rf"(?i){_LEAD}(?:(?:is|are|was|does|do|would|will) (?:it|that|this|they) )?(?:be )?"
    r"(?:(?:just|all|exactly|still) )?(?:the )?same(?: thing| rules?| answer| one)?"
    rf"(?: goes| holds?| apply| applies| true| again| here)?(?: too| as well)?{_TO}"
)
_HOLDS = Pattern(
    rf"(?i){_LEAD}(?:does|do|would|will) (?:that|it|this|they|the same) (?:also |still |even )?"
    rf"(?:go|apply|hold|count|stand|change)(?: too| as well| good| true)?{_TO}"
)
_TRUE = Pattern(
    rf"(?i){_LEAD}(?:is|are|was) (?:that|it|this|they) (?:also |still |even )?"
    r"(?:so|true|the case|right|any different|different|otherwise|changed|like that)"
    rf"(?: too| as well| also)?{_TO}"
)
_LIKEWISE = Pattern(rf"(?i){_LEAD}(?:what of|as for|likewise(?: for)?|ditto(?: for)?|similarly for) (.+)")
_PARTS = "side|arm|hand|sleeve|shoulder|breast|pocket|wrist|ear|finger|leg|foot|lapel|collar|cuff|end|edge"
_WHICH_SIDE = Pattern(
    rf"(?i){_LEAD}(?:(?:on|over|round|around|to|at|above|below) )?(?:which|what) (?:{_PARTS}|spot|place)"
    r"(?: (?:is|does|do|should|must|would) (?:it|they|that|this|i wear (?:it|them)|it go|they go|it be)"
    r"(?: on| worn| go| sit| be)*)?(?: then)?"
)
_LEFT_RIGHT = Pattern(
    rf"(?i){_LEAD}(?:is (?:it|that)|are they)?(?:so )?(?:on |to |over )?(?:the |my )?(?:left|right)"
    rf"(?: (?:{_PARTS}))?(?: or (?:the |on the |my )?(?:left|right)(?: (?:{_PARTS}))?)?"
)
_HOW_FAR = Pattern(
    rf"(?i){_LEAD}how (?:far|close|near|much) (?:up|down|in|out|along|above|below|back|from|off|to|apart)"
    r"(?: (?:it|that|them|there|does (?:it|that) go|do they go|is (?:it|that)|are they|the \w+(?: \w+)?))*"
)
_MADE_OF = Pattern(
    rf"(?i){_LEAD}(?:what(?:['’]s| is| are|['’]re) (?:it|they|that|these|those|this)(?: all)?"
    r"(?: made)? (?:of|from|out of)|(?:of |in )?(?:what|which) (?:material|cloth|fabric|stuff|metal|leather)"
    r"(?: (?:is|are) (?:it|they|that)(?: made)?(?: of| from| out of| in)?)?)"
)
_DROP = Pattern(
    r"(?i)(?:(?:ok|okay|right|well|but|and|no|now|so|oh|sorry),? )*(?:forget|ignore|never ?mind|disregard|"
    r"leave aside|scrap|not counting|strike|cancel|take away)(?: about| that| it(?:['’]s| is)?)? "
    r"(?:the |a |an |my |being |it being |about )?([^,;:.?]+?)(?:[,;:.?]+ *(.+))?"
)
_NOT_BUT = Pattern(
    r"(?i)(?:(?:no|sorry|oh|oops|well|i mean|i meant|i said),? )*not (?:(in|on|at|for|with|as) )?(.+?)"
    r"(?:,| but|;| -| –|:|\.)+ (?:(?:but|rather|i mean|i meant|in|on|at|for|with|as) )*(.+)"
)
_AND_NOT = Pattern(
    r"(?i)(?:(?:no|sorry|oh|oops|well|i mean|i meant|i said),? )*(.+?),? (?:and )?not "
    r"(?:(in|on|at|for|with|as) )?(.+)"
)
_INDEFINITE = Pattern(r"(?i)\b(?:a|an|any|another|one) $")
_WITHOUT_ONE = Pattern(rf"(?i){_LEAD}(?:what about |how about |if i (?:am|['’]m|go) )?without one")
_GENERIC = Pattern(
    r"(?i)\b(a|an|the|my|his|her|their|that|any|such a) (" + "|".join(sorted(CREDENTIAL_NOUNS)) + r")\b"
)
_NAMES = tag_set("""
    det, poss, filler, comma, fact, item, items, in, on, for, with, measure, number, of, be, self, person, and
""")
_PRONOUN = Pattern(r"(?i)\b(?:it|them|they|those|that one|this one|that|this)\b")
_OWNER = Pattern(r"(?i)\b(?:its|their)\b")
_LIGHT = word_set("""
    a an the my your his her its their our it them they that this those these is are be being am was were 's
    with if in on at for to of and but so what how about even then i we he she you one 're 'm n't not when
    while""")
_FEW = 8


def is_thanks(text: str) -> bool:
    """ "Ok, thanks": words that ask nothing."""
    return _THANKS.fullmatch(" ".join(clean(text).split()).strip(" ?.!")) is not None


def _put_as(text: str, reading: Reading) -> Reading:
    """A reading of other words as one of those that were written; what is asked keeps the words it is of."""
    return reading if reading.ask is not None else msgspec.structs.replace(reading, question=text, spans=())


def _bare(text: str) -> str:
    return " ".join(clean(text).split()).strip(" ?.!")


def in_full(text: str) -> str | None:
    """A few words as they are said in full: "same for a K3?" is "and what about a K3?"."""
    bare = _bare(text)
    for pattern in (_SAME, _HOLDS, _TRUE):
        found = pattern.fullmatch(bare)
        if found is not None:
            led, rest = found.group(1).casefold(), found.group(2)
            return f"and what about {rest}?" if led in ("for", "of", "to", "as for") else f"and {led} {rest}?"
    found = _LIKEWISE.fullmatch(bare)
    if found is not None:
        return f"and what about {found.group(1)}?"
    if any(pattern.fullmatch(bare) for pattern in (_WHICH_SIDE, _LEFT_RIGHT, _HOW_FAR)):
        return "where is it worn?"
    return None


def further(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """A turn that takes back, corrects or replaces something of the question before."""
    before = previous.query
    if before is None:
        return None
    bare = _bare(text)
    made_of = _made_of(bare, before, talk.lookup)
    if made_of is not None:
        return talk.made(text, made_of)
    if _WITHOUT_ONE.fullmatch(bare):
        return _without_one(text, previous, talk)
    dropped = _DROP.fullmatch(bare)
    if dropped is not None:
        return _dropped(text, dropped.group(1), dropped.group(2), previous, talk)
    return _corrected(text, bare, previous, talk) or _instead(text, bare, previous, talk)


def _made_of(bare: str, before: Query, lookup: Lookup) -> Query | None:
    """ "What's it made of?": how it is made where a rule says so, else what the books say of it."""
    if _MADE_OF.fullmatch(bare) is None or not before.items:
        return None
    covering = set(lookup.broader(before.items[0]))
    made = any(
        lookup.aspects[rule.aspect].within == "construction" and covering & set(rule.scope.items)
        for rule in lookup.base.rules
    )
    if made:
        return Query(kind="how", items=before.items[:1], aspect="construction", case=before.case)
    return Query(kind="source", items=before.items[:1], aspect=before.aspect, case=before.case)


def _keys(text: str) -> set[str]:
    return {t.key for t in tokenize(text) if t.low[0].isalnum()}


def _content(text: str) -> set[str]:
    """The keys of the words that are no articles, pronouns, prepositions or joining words."""
    return {t.key for t in tokenize(text) if t.low[0].isalnum() and t.low not in _LIGHT}


def _labels(fact: str, values: ValueSet, lookup: Lookup) -> Iterator[str]:
    """The names of a fact as it is known: of its values, and with each the name of the fact."""
    record = lookup.facts[fact]
    yield record.label
    for value in record.values:
        if isinstance(values, Choices) and (value.id in values.members) != values.complement:
            yield from (f"{name} {record.label}" for name in (value.label, *value.other_labels))
    for group in lookup.base.groups:
        if group.fact == fact:
            yield from (group.label, *((group.one,) if group.one else ()))
    item = lookup.items.get(fact.removeprefix(_WORN)) if fact.startswith(_WORN) else None
    if item is not None:
        yield from (item.label, *item.other_labels, *item.everyday)


def _said_before(words: str, before: Query, lookup: Lookup) -> list[str]:
    """The facts of the question before that words name."""
    keys = _content(words)
    return [
        fact
        for fact, values in before.case.facts
        if keys and any(keys <= _keys(label) for label in _labels(fact, values, lookup))
    ]


def _less(previous: Reading, facts: Collection[str], talk: Talk) -> Reading:
    """The question before without some of its facts."""
    query = previous.query
    if query is None:
        return previous
    kept = tuple((fact, values) for fact, values in query.case.facts if fact not in facts)
    less = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=kept))
    made = talk.made(previous.question, less)
    return msgspec.structs.replace(made, recent=previous.recent)


def _dropped(text: str, what: str, rest: str | None, previous: Reading, talk: Talk) -> Reading | None:
    """ "Forget the rain": the question before without it, and with what else is said."""
    before = previous.query
    gone = _said_before(what, before, talk.lookup) if before is not None else []
    if not gone:
        return None
    less = _less(previous, gone, talk)
    if rest is None:
        return msgspec.structs.replace(less, question=text)
    return _go_on(text, rest, less, talk)


def _go_on(text: str, rest: str, less: Reading, talk: Talk) -> Reading | None:
    led = PHRASES.get((rest.split()[0].casefold(),)) in ("and", "but", "and how about", "can", "may", "must")
    again = talk.read(rest if led else f"and {rest}?", less)
    if again.query is None and again.ask is None:
        again = talk.read(rest, less)
    return _put_as(text, again) if again.abstain is None else None


def _names_only(text: str, talk: Talk) -> Understood | None:
    found = understand(text, talk.lexicon, talk.lookup, None)
    plain = isinstance(found, Understood) and {piece.tag for piece in found.pieces} <= _NAMES
    return found if plain and isinstance(found, Understood) else None


def _corrected(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Not boat rig, watch rig", "the watch coat, not the storm coat": one thing for another said before."""
    but, and_not = _NOT_BUT.fullmatch(bare), _AND_NOT.fullmatch(bare)
    if but is not None:
        led, wrong, right = but.groups()
    elif and_not is not None:
        right, led, wrong = and_not.groups()
    else:
        return None
    before = previous.query
    if before is None or _names_only(right, talk) is None:
        return None
    facts = _said_before(wrong, before, talk.lookup)
    names = [
        n for i in before.items for n in (talk.lookup.items[i].label, *talk.lookup.items[i].other_labels)
    ]
    if not facts and not any(_content(wrong) and _content(wrong) <= _keys(name) for name in names):
        return None
    less = _less(previous, facts, talk)
    worn = any(fact.startswith(_WORN) for fact in facts)
    return _go_on(text, f"with {right}" if worn else f"{led} {right}" if led else right, less, talk)


def _instead(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And with the storm coat instead?": in the place of what was worn with it before."""
    before, lookup = previous.query, talk.lookup
    if before is None or "instead" not in bare.casefold().split():
        return None
    worn = [fact for fact, values in before.case.facts if fact.startswith(_WORN) and values == YES]
    found = understand(bare, talk.lexicon, lookup, None)
    if not worn or not isinstance(found, Understood) or not any(p.tag == "with" for p in found.pieces):
        return None
    new = {piece.arg for piece in found.pieces if piece.tag == "item"}
    kinds = {kind for item in new for kind in lookup.broader(item)[1:] if len(lookup.broader(kind)) > 2}
    akin = [fact for fact in worn if kinds & set(lookup.broader(fact.removeprefix(_WORN)))]
    gone = akin or (worn if len(worn) == 1 else [])
    if not gone or not new:
        return None
    again = talk.read(bare + "?", _less(previous, gone, talk))
    return _put_as(text, again) if again.query is not None else None


def _without_one(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And without one?": of the two things named, the one that "a" led to."""
    before = previous.query
    if before is None:
        return None
    worn = [fact for fact, values in before.case.facts if fact.startswith(_WORN) and values == YES]
    named = [
        span.target
        for span in previous.spans
        if span.role == "item" and span.target and _INDEFINITE.search(previous.question[: span.start])
    ]
    target = named[0] if len(named) == 1 else worn[0].removeprefix(_WORN) if worn and not named else None
    if target is None:
        return None
    if f"{_WORN}{target}" in worn:
        facts: dict[str, ValueSet] = {f"{_WORN}{target}": NO}
        case = merge_case(before.case, facts, None, False, talk.lookup)
        return talk.made(text, msgspec.structs.replace(before, case=case))
    if target in before.items and before.kind in ("may", "must"):
        return talk.made(text, msgspec.structs.replace(before, polarity="not", value=None))
    return None


def understood_otherwise(text: str, missed: Reading, previous: Reading, talk: Talk) -> Reading | None:
    """A turn that was not understood, by what the question before was about."""
    before, abstain = previous.query, missed.abstain
    if before is None or abstain is None or not before.items:
        return None
    generic = _which_credential(text, abstain, before, talk)
    if generic is not None:
        return generic
    contrasted = _contrasted(text, before, talk)
    if contrasted is not None:
        return talk.made(text, contrasted)
    words = [t for t in tokenize(clean(text)) if t.low[0].isalnum() and t.low not in _LIGHT]
    part = kind_of_part(words[0].key, before, talk.lookup) if len(words) == 1 else None
    if part is not None:
        return talk.made(text, part)
    return _by_label(text, abstain, previous, talk)


def _which_credential(text: str, abstain: Abstain, before: Query, talk: Talk) -> Reading | None:
    """ "With a waiver?": the one that the rules on the thing ask for; asks where there are several."""
    found, lookup = _GENERIC.search(text), talk.lookup
    if found is None or not set(abstain.words) <= {found.group(2), found.group(0)}:
        return None
    family = found.group(2).casefold()
    facts = [lookup.facts[fact] for fact in facts_that_matter(before, lookup)]
    meant = [fact for fact in facts if fact.family == family]
    lead, trail = text[: found.start()], text[found.end() :]
    previous = talk.made(abstain.reason, before)
    if len(meant) == 1:
        again = talk.read(f"{lead}the {meant[0].label}{trail}", previous)
        return _put_as(text, again) if again.abstain is None else None
    changed = tuple((f"{lead}the {fact.label}{trail}", fact.label) for fact in meant[:4])
    ask = Ask(fact="reading", prompt=f"Which {family} is meant?", choices=changed)
    return Reading(question=text, ask=ask) if changed else None


def _contrasted(text: str, before: Query, talk: Talk) -> Query | None:
    """ "And with them up?", after "sleeves down": the other value that shares a word with the one known."""
    words, lookup = _content(text), talk.lookup
    found: list[tuple[str, ValueSet]] = []
    for fact, values in before.case.facts if 0 < len(words) <= 2 else ():
        record = lookup.facts[fact]
        if record.kind not in ("choice", "scale") or not isinstance(values, Choices):
            continue
        known = set().union(*(_keys(v.label) for v in record.values if v.id in values.members))
        for value in record.values:
            names = [_keys(name) for name in (value.label, *value.other_labels)]
            if value.id not in values.members and any(k & known and k - known == words for k in names):
                found.append((fact, Choices(closure(lookup, fact, value.id))))
    if len(found) != 1:
        return None
    return msgspec.structs.replace(before, case=merge_case(before.case, dict(found), None, False, lookup))


def _by_label(text: str, missed: Abstain, previous: Reading, talk: Talk) -> Reading | None:
    """The words with the thing that they are about named in them, or before them."""
    before, bare = previous.query, _bare(text)
    if before is None or len(before.items) != 1:
        return None
    label = f"the {talk.lookup.items[before.items[0]].label}"
    named = _OWNER.sub(f"{label}'s", bare) if _OWNER.search(bare) else _PRONOUN.sub(label, bare)
    tried: Sequence[str] = (named,) if named != bare else ()
    if not tried and missed.words and len(bare.split()) <= _FEW:
        tried = (f"{label} {bare}", f"{label}: {bare}")
    for words in tried:
        again = talk.read(f"{words}?", previous)
        query = again.query
        if query is not None and query.items == before.items and query.clause is None:
            return _put_as(text, again)
    return None
