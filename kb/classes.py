"""A class of things that somebody asks about, whose kinds fare differently: "May I wear a pin?"

Where the rules close the class but for a kind or two, that is the answer, and what becomes of these kinds is
said with it. Where what is known of the one who asks leaves one kind alone ("can I take the jacket off?"), it
is that.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from kb.answer.alike import told_alike, usual_verdict, with_beside
from kb.answer.common import replaced
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading
from kb.reader.doubts.offered import is_of_size, of_kinds, with_its_kinds, without_words
from kb.reader.words.tokens import tokenize
from kb.text import yes_or_no
from kb.wording import say_query
from kb.wording.labels import is_whole

Read = Callable[[str], Reading]
Tell = Callable[[Reading], Answer]
_MOST_KINDS = 4


def class_told(reading: Reading, plain: Answer, answer: Tell, lookup: Lookup) -> tuple[Answer, ...]:
    """What is answered of a class, in place of asking which of its kinds is meant; empty where it must be."""
    query, ask = reading.query, plain.ask
    if query is None or ask is None or ask.fact != "item":
        return ()
    if chosen := _which(reading, query, answer, lookup):
        return chosen
    kinds = of_kinds(reading, ask, lookup)
    told = [answer(one) for one in kinds]
    if goes_by_another_name(reading, lookup):
        return _of_another_kind(reading, query, plain, answer, lookup)  # the known kinds are others
    return (
        _whole_uniform(reading, query, plain, answer, lookup)
        or _mostly_out(query, told, lookup)
        or _all_but_one(reading, query, plain, answer, lookup)
        or (told_alike(kinds, told, lookup) if kinds else ())
        or _only_kind(reading, query, plain, answer, lookup)
        or _none_may(reading, query, plain, answer, lookup)
        or _as_such(reading, query, plain, answer, lookup)
    )


def _whole_uniform(
    reading: Reading, query: Query, plain: Answer, answer: Tell, lookup: Lookup
) -> tuple[Answer, ...]:
    """ "May I wear uniform off duty?": of the uniform as a whole, where a rule speaks of it by that name.

    What the same clauses say of single things of it ("but for the fleece") is told beside it.
    """
    if query.kind != "may" or query.polarity == "not" or query.value is not None or plain.ask is None:
        return ()
    if len(plain.ask.choices) <= _MOST_KINDS or not is_whole(lookup, query.items[0]):
        return ()
    if not _is_plainly_named(reading, query, lookup):
        return ()
    whole = answer(_asked(reading, msgspec.structs.replace(query, as_such=True), lookup))
    said = {case.verdict for case in whole.cases} if whole.outcome == "answer" else {"silent"}
    if said == {"silent"} or not said <= _SIMPLE or not _closes_by_name(whole, query, lookup):
        return ()
    clauses = {lookup.rules[rule].clause for case in whole.cases for rule in case.rules}
    apart = {name for one in clauses for rule in lookup.rules_of(one) for name in rule.scope.items}
    kinds = [kind for kind in _each(reading, query, plain, answer, lookup) if _is_of(kind, apart)]
    beside = [one for one in kinds if one.outcome == "answer" and one.verdict != whole.verdict]
    return (with_beside(whole, _said(beside)) if beside else whole,)


_SIMPLE = {"permitted", "prohibited", "not_required", "silent"}


def _is_of(told: Answer, items: set[str]) -> bool:
    return told.reading.query is not None and told.reading.query.items[0] in items


def _asked(reading: Reading, query: Query, lookup: Lookup) -> Reading:
    return msgspec.structs.replace(reading, ask=None, query=query, text=say_query(lookup, query))


def _which(reading: Reading, query: Query, answer: Tell, lookup: Lookup) -> tuple[Answer, ...]:
    """ "Which pen can I take in?" is answered by the pens that may be, not by yes or no."""
    first = next((token.low for token in tokenize(reading.question)), "")
    if first not in ("which", "what") or query.kind != "may" or query.polarity == "not" or query.value:
        return ()
    listed = msgspec.structs.replace(query, kind="list", modalities=("required", "permitted"))
    told = answer(_asked(reading, listed, lookup))
    return (told,) if told.outcome == "answer" and told.entries else ()


def _each(reading: Reading, query: Query, plain: Answer, answer: Tell, lookup: Lookup) -> list[Answer]:
    """The answer for each of the kinds that were offered."""
    choices = plain.ask.choices if plain.ask is not None else ()
    kinds = (msgspec.structs.replace(query, items=(kind, *query.items[1:])) for kind, _ in choices)
    return [answer(_asked(reading, one, lookup)) for one in kinds]


def _said(answers: Sequence[Answer]) -> list[str]:
    return [f"{one.reading.text} {one.headline}" for one in answers]


def _mostly_out(query: Query, told: Sequence[Answer], lookup: Lookup) -> tuple[Answer, ...]:
    """ "Jewellery while sawing?", where earrings alone may stay on: no leads, and they are told beside it."""
    if query.kind != "may" or any(one.outcome != "answer" for one in told):
        return ()
    out = [one for one in told if one.verdict == "prohibited"]
    left = [one for one in told if usual_verdict(one, lookup) in _GRANTED]
    if len(out) < 2 or len(left) != 1 or len(out) + len(left) < len(told):
        return ()
    if usual_verdict(left[0], lookup) == "required":
        return ()  # "headgear on parade?", where one must be worn
    return (with_beside(out[0], _said([one for one in told if one is not out[0]])),)


_GRANTED = ("permitted", "required")


def _all_but_one(
    reading: Reading, query: Query, plain: Answer, answer: Tell, lookup: Lookup
) -> tuple[Answer, ...]:
    """ "May I wear a ring?", of which no kind may be worn but one: no leads, which tells the one as well.

    So it is where a rule closes the class by its name. Of what must be worn the one kind is meant.
    """
    if query.kind != "may" or query.polarity == "not" or query.value is not None or plain.ask is None:
        return ()
    if not 0 < len(plain.ask.choices) <= _MOST_KINDS or not _is_plainly_named(reading, query, lookup):
        return ()
    whole = answer(_asked(reading, msgspec.structs.replace(query, as_such=True), lookup))
    if usual_verdict(whole, lookup) != "prohibited" or not _closes_by_name(whole, query, lookup):
        return ()
    kinds = _each(reading, query, plain, answer, lookup)
    usual = [usual_verdict(one, lookup) if one.outcome == "answer" else None for one in kinds]
    if usual.count("permitted") != 1 or usual.count("prohibited") != len(usual) - 1:
        return ()
    return (with_beside(whole, _said(kinds)),)


def _is_plainly_named(reading: Reading, query: Query, lookup: Lookup) -> bool:
    """Whether a class is called by its own name ("a signet ring"), not by a word for one of its kinds."""
    item = lookup.items[query.items[0]]
    names = [_keys(name) for name in (item.label, *item.other_labels)]
    return any(
        any(name <= _keys(span.text) for name in names)
        for span in reading.spans
        if span.role == "item" and span.target == item.id
    )


def _closes_by_name(whole: Answer, query: Query, lookup: Lookup) -> bool:
    carrying = [lookup.rules[rule] for case in whole.cases for rule in case.rules]
    named = any(query.items[0] in rule.scope.items for rule in carrying)
    return named and not any(rule.residual for rule in carrying)


def _only_kind(
    reading: Reading, query: Query, plain: Answer, answer: Tell, lookup: Lookup
) -> tuple[Answer, ...]:
    """ "Can I take the jacket off?" of a pilot: of the two jackets the one that a pilot ever wears.

    Of what must be worn it is the one that in any case must be; "abseiling without gloves" is without those
    that must be worn for it.
    """
    if query.value is not None or query.kind not in ("may", "must"):
        return ()
    if plain.ask is None or len(plain.ask.choices) < 2 or (query.kind == "may" and query.polarity != "not"):
        return ()
    bound = query.kind == "must"
    duty = msgspec.structs.replace(query, kind="must", polarity="do")
    each = [one for one in _each(reading, duty, plain, answer, lookup) if one.reading.query is not None]
    worn = [
        one.reading.query.items[0]
        for one in [one for one in each if one.verdict == "required" and not bound]
        or [
            one
            for one in each
            if any(case.verdict in (("required",) if bound else _GRANTED) for case in one.cases)
        ]
        if one.reading.query is not None
    ]
    if len(worn) != 1:
        return ()
    told = answer(_asked(reading, msgspec.structs.replace(query, items=(worn[0], *query.items[1:])), lookup))
    return (told,) if told.outcome == "answer" and told.verdict != "silent" else ()


def _none_may(
    reading: Reading, query: Query, plain: Answer, answer: Tell, lookup: Lookup
) -> tuple[Answer, ...]:
    """ "Tie in working rig?", where no kind of tie may be worn in it: no need to ask which is meant.

    Kinds of which the books say nothing may be among them, but none that may be worn, nor the class as such.
    """
    if query.kind != "may" or query.polarity == "not" or query.value is not None or plain.ask is None:
        return ()
    if not 1 < len(plain.ask.choices) <= _MOST_KINDS:
        return ()
    told = _each(reading, query, plain, answer, lookup)
    as_such = answer(_asked(reading, msgspec.structs.replace(query, as_such=True), lookup))
    if any(
        one.outcome != "answer" or one.verdict not in ("prohibited", "silent") for one in (*told, as_such)
    ):
        return ()
    banned = [one for one in (*told, as_such) if one.verdict == "prohibited"]
    if not banned:
        return ()
    return (with_beside(banned[0], _said([one for one in told if one is not banned[0]])),)


def _as_such(
    reading: Reading, query: Query, plain: Answer, answer: Tell, lookup: Lookup
) -> tuple[Answer, ...]:
    """ "Tattoos?", where rules speak of one kind of them alone: of the others, and of that one beside it.

    Where the others may not be worn and that one may, as ordinarily, it is what leads: "Earrings?"
    """
    if query.kind not in ("may", "must") or query.polarity == "not" or plain.ask is None:
        return ()
    if not plain.ask.choices or len(plain.ask.choices) > _MOST_KINDS:
        return ()
    told = answer(_asked(reading, msgspec.structs.replace(query, as_such=True), lookup))
    closed = told.verdict == "prohibited" and query.kind == "may" and query.value is None
    if told.outcome != "answer" or told.verdict in ("silent", "conflict"):
        return ()
    if told.verdict == "conditional":
        return _of_class_and_kind(reading, query, plain, told, answer, lookup)
    if len(plain.ask.choices) > 1 and not closed:
        return ()
    kinds = _each(reading, query, plain, answer, lookup)
    if any(one.outcome != "answer" for one in kinds):
        return ()
    apart = [one for one in kinds if one.verdict not in ("prohibited", "silent")]
    if not closed or not apart:
        return (with_beside(told, _said(kinds)),) if len(kinds) == 1 else ()
    if _is_none_of_them(reading, query, lookup):
        lead = told
    elif len(apart) == 1:
        lead = apart[0] if usual_verdict(apart[0], lookup) in _GRANTED else told
    else:
        return ()  # "the gloves", of which each has its use
    return (with_beside(lead, _said([one for one in (told, *kinds) if one is not lead])),)


def _of_another_kind(
    reading: Reading, query: Query, plain: Answer, answer: Tell, lookup: Lookup
) -> tuple[Answer, ...]:
    """ "Is a nose ring all right?", of no kind of jewellery that the books know: as the rest of it fares.

    What becomes of the known kinds is said beside it, where they are few.
    """
    told = answer(_asked(reading, msgspec.structs.replace(query, as_such=True), lookup))
    if told.outcome != "answer" or told.verdict == "silent" or not _verdicts(told) <= _CLOSED:
        return ()
    few = plain.ask is not None and len(plain.ask.choices) <= _MOST_KINDS
    kinds = _each(reading, query, plain, answer, lookup) if few else []
    return (with_beside(told, _said([one for one in kinds if one.outcome == "answer"])),)


_CLOSED = {"prohibited", "silent"}


def _verdicts(told: Answer) -> set[str]:
    return {case.verdict for case in told.cases}


def _of_class_and_kind(
    reading: Reading, query: Query, plain: Answer, told: Answer, answer: Tell, lookup: Lookup
) -> tuple[Answer, ...]:
    """ "Can I wear nail varnish?", of which the books know one kind apart: of it as such, with that beside.

    There is nothing to choose, and "yes" and "no" may not lead where they are not of both.
    """
    kinds = _each(reading, query, plain, answer, lookup)
    if len(kinds) != 1 or kinds[0].outcome != "answer" or not _is_plainly_named(reading, query, lookup):
        return ()
    led = usual_verdict(told, lookup), usual_verdict(kinds[0], lookup)
    if led[0] != led[1] and (led[0] == "silent" or yes_or_no(told.headline)):
        return ()
    return (with_beside(told, _said(kinds)),)


def _is_none_of_them(reading: Reading, query: Query, lookup: Lookup) -> bool:
    """Whether a thing is called so that it is of the class and none of its kinds.

    "A nose stud" goes by none of the names of jewellery, and "a Christmas pin" has a word before the noun
    that the books do not know.
    """
    if goes_by_another_name(reading, lookup):
        return True
    nouns = [span for span in reading.spans if span.role == "item" and span.target == query.items[0]]
    before = (span for span in reading.spans if span.role == "unknown")
    return any(0 < noun.start - span.end < 2 for span in before for noun in nouns)


def goes_by_another_name(reading: Reading, lookup: Lookup) -> bool:
    """Whether a class that may be worn or not is called by none of its names: "nose stud", "charity pin"."""
    query = reading.query
    if query is None or query.kind != "may" or query.polarity == "not" or query.value or not query.items:
        return False
    item = lookup.items[query.items[0]]
    names = _keys(" ".join((item.label, *item.other_labels, *item.everyday)))
    nouns = [span for span in reading.spans if span.role == "item" and span.target == item.id]
    alike = [noun for noun in nouns if not names.isdisjoint(_keys(noun.text))]
    if not nouns or any(noun.how == "label" or " " not in noun.text for noun in alike):
        return False
    if not alike:
        return True
    from kb.reader.names.unmentioned import is_strange  # noqa: PLC0415  few names are not the books' own

    return all(is_strange(noun.text, item.id, lookup) for noun in alike)


def _keys(text: str) -> set[str]:
    return {token.key for token in tokenize(text)}


def banned_whole(reading: Reading, read: Read, answer: Tell, lookup: Lookup) -> Answer | None:
    """ "My old smock", "small hoops": where no such thing may be worn, an unknown word turns nothing.

    It may be any word where no other thing goes by that noun, else one of size.
    """
    spared = without_words(reading)
    found = read(spared[0]) if spared is not None else None
    query = found.query if found is not None else None
    if spared is None or found is None or query is None or len(query.items) != 1 or query.kind != "may":
        return None
    if query.polarity == "not" or query.value is not None:
        return None
    if with_its_kinds(query.items[0], lookup) and not is_of_size(spared[1], query.items[0], lookup):
        return None
    asked = msgspec.structs.replace(found, question=reading.question, spans=reading.spans)
    plain = answer(asked)
    told, *more = (class_told(asked, plain, answer, lookup) if plain.outcome == "ask" else ()) or (plain,)
    if more or usual_verdict(told, lookup) != "prohibited" or yes_or_no(told.headline) != "No":
        return None
    unused = msgspec.structs.replace(told.reading, unused=(*spared[1], *told.reading.unused))
    return replaced(told, reading=unused)
