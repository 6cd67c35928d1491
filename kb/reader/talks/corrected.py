"""What is taken back, corrected or replaced in a talk, and what is asked of the thing before in few words.

"Forget the rain", "not boat rig, watch rig", "and with the storm coat instead?", "which ones?".
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

import msgspec

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query, Reading, Verdict
from kb.model.values import NO, YES, Choices, ValueSet
from kb.reader.meaning.defined import one_of
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import PHRASES, tag_set
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.pointing import is_place
from kb.reader.pieces.values import complement_of
from kb.reader.question import understand
from kb.reader.talks.further import LEAD, bare_words, content, keys_of, put_as
from kb.reader.talks.talked import Talk, item_alone
from kb.text import Pattern

_WORN = "worn:"
_MADE_OF = Pattern(
    rf"(?i){LEAD}(?:what(?:['’]s| is| are|['’]re) (?:it|they|that|these|those|this)(?: all)?"
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
_WHICH_ONES = Pattern(
    r"(?i)(.*?)[ ,.:;]*\b(?:which|what) (?:ones?|of (?:them|those)|kinds?|sorts?|type)\b"
    r"(?: (?:do|must|should|can|may) (?:i|we|they)(?: (?:wear|have to wear|need|have))?| is it| are they)?"
    r"[ ,.:;]*(.*)"
)
_ANYBODY_ELSE = Pattern(
    rf"(?i){LEAD}(?:what about |how about |for |can |may |must |do |does )?"
    r"(?:(?:any|every|some)(?:one|body) else|(?:all )?(?:the )?others?|the rest|(?:all )?(?:the )?other "
    r"(?:people|members|grades|ranks|hands|ones)|other people)"
    r"(?: of (?:us|them|you))?(?: too| then| as well)?"
)
_WITH_IT = Pattern(
    rf"(?i){LEAD}what (?:else )?(can|may|must|should|do|could) (?:i|we|he|she|they) (?:have to )?"
    r"(?:wear|have on) (?:under|underneath|beneath|over|with|on top of|together with|alongside) "
    r"(?:it|them|that)(?: then)?"
)
_JUST = Pattern(rf"(?i){LEAD}(?:just|only) (.+?)(?: (?:alone|on its own|by itself|then))*")
_TOLERANCE = Pattern(
    rf"(?i){LEAD}(?:what(?:['\u2019]s| is) (?:the )?(?:tolerance|leeway|margin|allowance)|"
    r"how (?:much|far) (?:off|out|over|wrong) (?:can|may) it be|"
    r"is there (?:any|a) (?:tolerance|leeway|margin))(?: (?:on|for) .+)?"
)
_EVERYBODY = Pattern(
    rf"(?i){LEAD}(?:what about |how about |for |is that for )?(?:all of (?:them|us)|every(?:one|body)|"
    r"any(?:one|body)|all (?:grades|ranks|members|people)|us all|all ranks|the lot)(?: then| too)?"
)
_ELSEWHEN = Pattern(
    rf"(?i){LEAD}(?:at |in |for )?(?:any |all |the )?"
    r"(?:other (?:times?|cases?|places?|occasions?|weather|work|things)|otherwise|elsewhere|(?:any|"
    r"some)where else|"
    r"the rest of the time|normally|usually)(?: then)?"
)
_ELSEWHERE = Pattern(r"(?i)\b(?:elsewhere|(?:any|some)where|other places?)\b")
_WITH = Pattern(
    rf"(?i){LEAD}(?:what about |how about |if (?:i|we) (?:wear|have) (?:it|them) )?"
    r"(?:(?:the|my|it|they|them) ?(?:[\w'-]+ ){0,3}?)?with "
)
_BESIDES = Pattern(
    r"(?i)\b(?:as well|too|also|both|together|besides?|(?:over|under|with|on top of|beneath) (?:it|"
    r"them|that))\b"
)
_INDEFINITE = Pattern(r"(?i)\b(?:a|an|any|another|one) $")
_WITHOUT_ONE = Pattern(rf"(?i){LEAD}(?:what about |how about |if i (?:am|['’]m|go) )?without one")
_NAMES = tag_set("""
    det, poss, filler, comma, fact, item, items, in, on, for, with, measure, number, of, be, self, person, and
""")


def corrected(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """A turn that takes back, corrects or replaces something of the question before."""
    before = previous.query
    if before is None:
        return None
    bare = bare_words(text)
    numbered = _numbered(text, bare, previous, talk) if any(sign.isdigit() for sign in bare) else None
    if numbered is not None:
        return numbered
    made_of = _made_of(bare, before, talk.lookup)
    if made_of is not None:
        return talk.made(text, made_of)
    if _WITHOUT_ONE.fullmatch(bare):
        return _without_one(text, previous, talk)
    dropped = _DROP.fullmatch(bare)
    if dropped is not None:
        return _dropped(text, dropped.group(1), dropped.group(2), previous, talk)
    beside = _WITH_IT.fullmatch(bare)
    if beside is not None:
        return _worn_with_it(text, beside.group(1).casefold(), before, talk)
    just = _JUST.fullmatch(bare)
    if just is not None and (one := _just_one(text, just.group(1), previous, talk)) is not None:
        return one
    if _TOLERANCE.fullmatch(bare):
        return _tolerance(text, before, talk)
    if _ANYBODY_ELSE.fullmatch(bare):
        return _of_the_others(text, before, talk)
    if _EVERYBODY.fullmatch(bare):
        said = [f for f, _ in before.case.facts if talk.lookup.facts[f].family in PERSONAL]
        return put_as(text, _less(previous, said, talk))
    if _ELSEWHEN.fullmatch(bare):
        return _in_other_cases(text, before, talk)
    which = _WHICH_ONES.fullmatch(bare)
    if which is not None:
        return _which_ones(text, " ".join(part for part in which.groups() if part), previous, talk)
    return _one_for_another(text, bare, previous, talk) or _instead(text, bare, previous, talk)


def _numbered(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """A measure of the thing that was measured before, or another day for the one that is known."""
    before = previous.query
    if before is None:
        return None
    from kb.reader.talks.amounts import amount, another_day  # noqa: PLC0415  few turns are a number alone

    if talk.lookup.aspects[before.aspect].kind == "measure":
        measured = amount(text, previous, talk)
        if measured is not None:
            return measured
    dated = another_day(bare, before, talk)
    return None if dated is None else talk.made(text, dated)


def _worn_with_it(text: str, modal: str, before: Query, talk: Talk) -> Reading | None:
    """ "What may I wear under it?": of the things of which a rule says what becomes of them with it."""
    if len(before.items) != 1:
        return None
    with_it, lookup = f"{_WORN}{before.items[0]}", talk.lookup
    tied = (
        item
        for rule in lookup.base.rules
        if rule.aspect == "wear" and any(test.fact == with_it for test in tests(rule.condition))
        for item in rule.scope.items
        if lookup.items[item].broader and item != before.items[0]
    )
    worn: dict[str, ValueSet] = {with_it: YES}
    case = merge_case(msgspec.structs.replace(before.case, alone=False), worn, None, False, lookup)
    asked: tuple[Verdict, ...] = ("required",) if modal in ("must", "should") else ("required", "permitted")
    kinds = tuple(dict.fromkeys(tied))
    if not kinds:  # the clauses on the thing may still say it
        return talk.made(text, Query(kind="source", items=before.items, case=before.case))
    return talk.made(text, Query(kind="list", items=kinds, case=case, modalities=asked))


def _just_one(text: str, said: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Just the scarf?", after two things together: the one, and nothing said of the other."""
    before = previous.query
    if before is None:
        return None
    worn = [f for f, v in before.case.facts if f.startswith(_WORN) and v == YES]
    item = item_alone(said, talk.lexicon, talk.lookup)
    if (
        item is None
        or not (worn or before.items[1:])
        or item not in {*before.items, *(f.removeprefix(_WORN) for f in worn)}
    ):
        return None
    less = _less(previous, worn, talk).query
    return None if less is None else talk.made(text, msgspec.structs.replace(less, items=(item,)))


def _tolerance(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "What's the tolerance?": the clause that says how far "about" may be off."""
    clauses = [tolerance.clause for tolerance in talk.lookup.base.tolerances]
    found = one_of(clauses, before.case, talk.lookup)
    if found is None:
        return None
    return Reading(question=text, ask=found) if isinstance(found, Ask) else talk.made(text, found)


def _of_the_others(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "And anyone else?": of all that are not who was said."""
    lookup = talk.lookup
    said = [(f, v) for f, v in before.case.facts if lookup.facts[f].family in PERSONAL]
    if len(said) != 1:
        return None
    others = {fact: complement_of(lookup, fact, values) for fact, values in said}
    case = merge_case(before.case, others, None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def _in_other_cases(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "And at other times?": wherever the one circumstance that was said is not."""
    lookup = talk.lookup
    said = [
        (fact, values)
        for fact, values in before.case.facts
        if lookup.facts[fact].family in ("situation", "term") and isinstance(values, Choices)
        if is_place(fact, values, lookup) or _ELSEWHERE.search(text) is None
    ]
    if len(said) != 1:
        return None
    others = {fact: complement_of(lookup, fact, values) for fact, values in said}
    case = merge_case(before.case, others, None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def _which_ones(text: str, rest: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And in workshop rig, which ones?": of all that go by the everyday name of the thing before."""
    before, lookup = previous.query, talk.lookup
    if before is None or not before.items or before.kind in ("source", "compare"):
        return None
    item, spoken = lookup.items[before.items[0]], keys_of(previous.question)
    words = item.everyday
    if keys_of(item.label) <= spoken:  # "which one?", of merit spoons, is of no other badges
        words = tuple(word for word in words if keys_of(word) <= spoken)
    groups = [[i.id for i in lookup.base.items if word in i.everyday] for word in words]
    several = before.items if len(before.items) > 1 else ()
    shared = sorted((len(group), group) for group in groups if len(group) > 1)
    kinds = several or (tuple(shared[0][1]) if shared else ())
    if not kinds:
        return None
    further_on = talk.read(rest, talk.made(text, before)).query if rest else before
    if further_on is None or further_on.items not in ((), before.items):
        return None
    query = Query(kind="list", items=kinds, case=further_on.case, modalities=("required", "permitted"))
    return talk.made(text, query)


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


def labels_of(fact: str, values: ValueSet, lookup: Lookup) -> Iterator[str]:
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
    keys = content(words)
    return [
        fact
        for fact, values in before.case.facts
        if keys and any(keys <= keys_of(label) for label in labels_of(fact, values, lookup))
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
    return put_as(text, again) if again.abstain is None else None


def _names_only(text: str, talk: Talk) -> Understood | None:
    found = understand(text, talk.lexicon, talk.lookup, None)
    plain = isinstance(found, Understood) and {piece.tag for piece in found.pieces} <= _NAMES
    return found if plain and isinstance(found, Understood) else None


def _one_for_another(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
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
    if not facts and not any(content(wrong) and content(wrong) <= keys_of(name) for name in names):
        return None
    less = _less(previous, facts, talk)
    worn = any(fact.startswith(_WORN) for fact in facts)
    return _go_on(text, f"with {right}" if worn else f"{led} {right}" if led else right, less, talk)


def _instead(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And with the storm coat instead?": in the place of what was worn with it before.

    So without "instead" where it is of the kind of that: one coat is worn for another, unless it is said
    that both are.
    """
    before, lookup = previous.query, talk.lookup
    instead = "instead" in bare.casefold().split()
    if before is None or not (instead or (_WITH.match(bare) and _BESIDES.search(bare) is None)):
        return None
    worn = [fact for fact, values in before.case.facts if fact.startswith(_WORN) and values == YES]
    found = understand(bare, talk.lexicon, lookup, None)
    if not worn or not isinstance(found, Understood) or not any(p.tag == "with" for p in found.pieces):
        return None
    new = {piece.arg for piece in found.pieces if piece.tag == "item"} - {*before.items}
    rigs = [p.fact for p in found.pieces if p.tag == "fact" and p.fact]
    told = {lookup.facts[fact].family for fact, _ in before.case.facts}
    if not new and rigs and {lookup.facts[fact].family for fact in rigs} == {"rig"} and "rig" not in told:
        again = talk.read(bare + "?", _less(previous, worn, talk))  # "and with boat rig?", after a coat
        return put_as(text, again) if again.query is not None else None
    kinds = {kind for item in new for kind in lookup.broader(item)[1:] if len(lookup.broader(kind)) > 2}
    akin = [fact for fact in worn if kinds & set(lookup.broader(fact.removeprefix(_WORN)))]
    gone = akin or (worn if instead and len(worn) == 1 else [])
    if not gone or not new or {fact.removeprefix(_WORN) for fact in gone} & new:
        return None
    again = talk.read(bare + "?", _less(previous, gone, talk))
    return put_as(text, again) if again.query is not None else None


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
