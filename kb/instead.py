"""What is answered in place of asking back, or of saying that the books are silent, where that can be told.

Of several things that a word may mean each is answered where they fare alike. Where no rule speaks of what
was asked of a thing, the nearest that the rules do say of it is answered, and that is said beside it.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
from itertools import pairwise
from typing import TYPE_CHECKING

import msgspec

from kb.answer.acts import wear_question
from kb.answer.alike import told_alike, told_whichever, usual_verdict, with_beside
from kb.answer.common import replaced
from kb.borne_out import borne_out
from kb.classes import banned_whole, class_told, goes_by_another_name
from kb.enough import not_enough
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Query, Reading
from kb.reader.doubts.nearest import nearest_reading
from kb.reader.doubts.offered import (
    are_parts,
    each_named,
    is_of_another,
    of_the_counted,
    of_the_wearer,
    offered,
    stands_beside,
    with_its_kinds,
)
from kb.reader.meaning.fits import is_far
from kb.reader.phrases.choosing import as_list, of_names
from kb.reader.recast.by_names import is_told_by_name, told_by_names
from kb.reader.recast.qualities import mere_qualities
from kb.reader.words.tokens import tokenize
from kb.shown import by_a_clause, names_a_thing, to_read, told_or_read
from kb.text import yes_or_no
from kb.wording import say_query
from kb.wording.surroundings import is_of_light

if TYPE_CHECKING:
    from kb.reader.adjuncts import Rest

Read = Callable[[str], Reading]
Tell = Callable[[Reading], Answer]
Rests = Callable[[str], "Iterable[Rest]"]
_NONE: Rests = lambda _: ()  # noqa: E731


def answers_instead(
    reading: Reading, as_of: datetime.date, read: Read, answer: Tell, rests: Rests, lookup: Lookup
) -> tuple[Answer, ...]:
    """The answers to a reading that asks back, or whose answer does or is silent; else that one answer.

    `rests` gives a text without what the books know nothing of. What is not answered has the clauses that
    speak of it on the day `as_of`.
    """
    plain = answer(reading)
    if reading.abstain is not None:
        once_more = partial(
            answers_instead, as_of=as_of, read=read, answer=answer, rests=_NONE, lookup=lookup
        )
        told_without = not_enough(reading, read, once_more, answer, lookup)
        told_without = told_without or _without_adjuncts(reading, as_of, read, answer, rests, lookup)
        told_without = told_without or borne_out(reading, as_of, read, once_more, lookup)
        told_without = told_without or _of_outfit(reading, as_of, answer, lookup)
        told_without = told_without or by_a_clause(reading, as_of, answer, lookup)
        from kb.reader.doubts.pointing_alone import asked_of_nothing  # noqa: PLC0415  most are understood

        if told_without is None and (pointing := asked_of_nothing(reading)) is not None:
            return (answer(pointing),)
        return (told_without or to_read(plain, as_of, lookup),)
    if reading.ask is not None:
        if not reading.ask.choices and (shown := _of_outfit(reading, as_of, answer, lookup)) is not None:
            return (shown,)
        one = _only(reading, read, answer) or _both_ways(reading, read, answer, lookup)
        one = (
            one
            or _which_measure(reading, read, answer, lookup)
            or banned_whole(reading, read, answer, lookup)
            or _at_a_place(reading, read, answer, lookup)
            or _counted(reading, read, answer, lookup)
        )
        if one is not None:
            return (one,)
        told = _the_needed(reading, read, answer, lookup)
        told = told or _as_list(reading, plain, read, answer, lookup) or _alike(reading, read, answer, lookup)
        told = told or _each(reading, read, answer)
        return told or (by_a_clause(reading, as_of, answer, lookup) or to_read(plain, as_of, lookup),)
    if plain.outcome == "ask" and plain.ask is not None:
        if (own := of_the_wearer(reading, plain.ask, lookup)) is not None:
            return answers_instead(own, as_of, read, answer, rests, lookup)
        at_once = of_names(reading.question)[0] or goes_by_another_name(reading, lookup)
        told = class_told(reading, plain, answer, lookup) if at_once else ()
        told = told or _as_list(reading, plain, read, answer, lookup)
        return told or class_told(reading, plain, answer, lookup) or (plain,)
    if plain.verdict == "silent" and (named := told_by_names(reading, answer, lookup)) is not None:
        return (named,)
    if plain.verdict == "silent" and (worn := _as_it_is(reading, answer, lookup)) is not None:
        return (worn,)
    if plain.verdict == "silent" and (barred := _barred(reading, answer, lookup)):
        return barred
    if plain.verdict == "silent" and (had := _not_had(reading, answer, lookup)) is not None:
        return (had,)
    near = nearest_reading(reading, lookup) if plain.verdict == "silent" else None
    nearer = answer(near) if near is not None else plain
    if nearer.verdict == "silent" or nearer is plain:
        return (told_or_read(reading, plain, answer, lookup),)
    return (with_beside(nearer, [f"{reading.text} {plain.headline} This is the nearest that they say."]),)


def _of_outfit(reading: Reading, as_of: datetime.date, answer: Tell, lookup: Lookup) -> Answer | None:
    from kb.outfits import asked_of_outfit  # noqa: PLC0415  most questions are of a thing

    found = asked_of_outfit(reading, as_of, lookup)
    return answer(found) if found is not None else None


_OPEN = frozenset({"where", "which", "what", "how", "who", "when", "why"})


def _as_list(reading: Reading, plain: Answer, read: Read, answer: Tell, lookup: Lookup) -> tuple[Answer, ...]:
    """ "Footwear for hall rig?", "which smock is worn now?": which of what may be meant is worn."""
    if plain.ask is None or plain.ask.fact != "item":
        return ()
    aspect, said = of_names(reading.question)  # "what colour socks": those whose names tell it
    text = as_list(said)
    found = read(text) if text is not None else None
    if found is None or found.query is None or found.query.kind != "list":
        return ()
    told = answer(msgspec.structs.replace(found, question=reading.question, spans=reading.spans))
    fitting = not aspect or any(is_told_by_name(one.item, aspect, lookup) for one in told.entries)
    return (told,) if told.outcome == "answer" and told.entries and fitting else ()


def _counted(reading: Reading, read: Read, answer: Tell, lookup: Lookup) -> Answer | None:
    """ "All three badges at once?": of the one class of them that the rules count."""
    text = of_the_counted(reading, lookup)
    found = read(text) if text is not None else reading
    counts = found.query is not None and found.query.aspect == "count"
    return answer(msgspec.structs.replace(found, question=reading.question)) if counts else None


def _the_needed(reading: Reading, read: Read, answer: Tell, lookup: Lookup) -> tuple[Answer, ...]:
    """ "Why do I need the trousers?", told what one does: the one pair of them that must be worn there.

    So of "gloves too?", after what all must be worn, where they are asked about in that case.
    """
    why = reading.question.casefold().removeprefix("and ").startswith("why ")
    if not why and (reading.frame is None or reading.frame.kind != "list"):
        return ()
    kinds = ("why",) if why else ("may", "must")
    found = [one for one in map(read, offered(reading).values()) if one.query is not None]
    asked = [msgspec.structs.replace(one, question=reading.question, spans=reading.spans) for one in found]
    told = [answer(one) for one in asked if one.query and one.query.kind in kinds and one.query.case.facts]
    needed = [one for one in told if usual_verdict(one, lookup) == "required"]
    return tuple(needed) if len(needed) == 1 else ()


def _alike(reading: Reading, read: Read, answer: Tell, lookup: Lookup) -> tuple[Answer, ...]:
    if is_of_another(reading, lookup):
        return ()
    texts = offered(reading)
    found = [read(text) for text in texts.values()]
    items = [one.query.items[:1] if one.query is not None else () for one in found]
    asked = [msgspec.structs.replace(one, question=reading.question, spans=reading.spans) for one in found]
    if are_parts(texts, lookup) and all(one.query is not None for one in found):
        told = tuple(answer(one) for one in asked)
        return told if all(one.outcome == "answer" and one.verdict != "silent" for one in told) else ()
    if found and all(stands_beside(item, one) for item, one in zip(texts, found, strict=True)):
        return told_whichever(asked, [answer(one) for one in asked])
    if not found or items != [(item,) for item in texts]:
        return ()
    if _stand_together(reading, texts):
        return _both(asked, answer)
    return told_alike(asked, [answer(one) for one in asked], lookup)


def _stand_together(reading: Reading, items: Mapping[str, str]) -> bool:
    """Whether each of the things is named, one right before the other: "a nylon fleece" is both of them."""
    spans = [span for span in reading.spans if span.role == "item" and (span.target or "") in items]
    beside = any(not reading.question[one.end : two.start].strip() for one, two in pairwise(spans))
    return beside and {span.target for span in spans} == set(items)


def _both(asked: Sequence[Reading], answer: Tell) -> tuple[Answer, ...]:
    """The answer of what is two things at once: it may not be worn where one of them may not."""
    told = [answer(one) for one in asked]
    banned = [one for one in told if one.outcome == "answer" and one.verdict == "prohibited"]
    others = [f"{one.reading.text} {one.headline}" for one in told if one is not banned[0]] if banned else []
    return (with_beside(banned[0], others),) if banned else ()


def _each(reading: Reading, read: Read, answer: Tell) -> tuple[Answer, ...]:
    """ "May I wear the watch coat or the storm coat", one answer for each; what must be is one of them."""
    found = [(item, read(text)) for item, text in each_named(reading).items()]
    if any(one.query is None or one.query.items[:1] != (item,) for item, one in found):
        return ()
    if any(one.query.kind not in _OF_EACH or one.query.polarity == "not" for _, one in found if one.query):
        return ()
    return tuple(answer(one) for _, one in found)


_OF_EACH = frozenset({"may", "where", "how", "how_many"})


def _asked(reading: Reading, query: Query, lookup: Lookup) -> Reading:
    return msgspec.structs.replace(reading, ask=None, query=query, text=say_query(lookup, query))


_ONLY = frozenset({"only", "just", "merely", "solely", "exclusively"})


def _only(reading: Reading, read: Read, answer: Tell) -> Answer | None:
    """ "Are only wardens allowed it?": who may tells whether nobody else may; so do when, and how many."""
    choices = reading.ask.choices if reading.ask is not None and reading.ask.fact == "reading" else ()
    words = (word.strip(",.:;?!") for word in reading.question.casefold().split())
    if len(choices) != 1 or _ONLY.isdisjoint(words):
        return None
    again = read(choices[0][1])
    if again.query is None or again.query.kind not in ("who", "when", "how_many"):
        return None
    told = answer(msgspec.structs.replace(again, question=reading.question, spans=reading.spans))
    return told if told.outcome == "answer" else None


def _which_measure(reading: Reading, read: Read, answer: Tell, lookup: Lookup) -> Answer | None:
    """ "Is 5 in enough for the strip?", which has a length and a height: the one that may be so much.

    The others, said beside it, must be far from that; where none may be so much, the first is answered.
    """
    choices = reading.ask.choices if reading.ask is not None and reading.ask.fact == "reading" else ()
    again = [read(said) for _, said in choices]
    queries = [one.query for one in again]
    if len(choices) < 2 or any(q is None or q.value is None or q.kind != "may" for q in queries):
        return None
    if len({q.items for q in queries if q}) > 1 or len({q.aspect for q in queries if q}) < len(queries):
        return None
    told = [
        answer(msgspec.structs.replace(one, question=reading.question, spans=reading.spans)) for one in again
    ]
    if any(one.outcome != "answer" or one.verdict == "silent" for one in told):
        return None
    fitting = [one for one in told if yes_or_no(one.headline) != "No"]
    lead = (fitting or told)[0]
    others = [one.reading.query for one in told if one is not lead]
    if fitting and not all(q is not None and is_far(q, lookup) for q in others):
        return None
    beside = [f"{one.reading.text} {one.headline}" for one in told if one is not lead]
    return with_beside(lead, beside)


def _both_ways(reading: Reading, read: Read, answer: Tell, lookup: Lookup) -> Answer | None:
    """ "Must I not wear gloves?" asks if they must be, or if they must not: what is so may settle both."""
    choices = reading.ask.choices if reading.ask is not None and reading.ask.fact == "reading" else ()
    asked = [read(said).query for _, said in choices] if len(choices) == 2 else []
    one, other = asked if asked else (None, None)
    if one is None or other is None or {one.polarity, other.polarity} != {"do", "not"}:
        return None
    if other != msgspec.structs.replace(one, polarity=other.polarity):
        return None
    told = answer(_asked(reading, msgspec.structs.replace(one, kind="may", polarity="do"), lookup))
    if told.verdict not in ("required", "prohibited"):
        return None
    plain = told.headline.removeprefix("No. ").removeprefix("Yes. ").removeprefix("Yes: ")
    return replaced(told, headline=f"{plain[:1].upper()}{plain[1:]}")  # yes and no may be of either


_HANDLED = frozenset({"use", "open", "hold", "take", "bring"})


def _not_had(reading: Reading, answer: Tell, lookup: Lookup) -> Answer | None:
    """ "May I use an umbrella?", which no rule has used or not: what may not be carried is not used."""
    query = reading.query
    if query is None or query.kind != "may" or query.polarity == "not" or len(query.items) != 1:
        return None
    if lookup.aspects[query.aspect].verb not in _HANDLED or query.aspect == lookup.use_of(query.items[0]):
        return None
    told = answer(_asked(reading, wear_question(lookup, query), lookup))
    return told if usual_verdict(told, lookup) == "prohibited" else None


def _as_it_is(reading: Reading, answer: Tell, lookup: Lookup) -> Answer | None:
    """ "A plain wedding ring?", of a thing that is called so: whether it may be worn."""
    query = reading.query
    if query is None or query.kind != "may" or query.polarity == "not" or len(query.items) != 1:
        return None
    way = lookup.aspects[query.aspect]
    if way.within != "construction" and (way.kind != "choice" or query.value is None):
        return None
    gone = mere_qualities(reading, query.items[0], lookup)
    if gone is None:
        return None
    asked = msgspec.structs.replace(reading, unused=(*gone, *reading.unused))
    plain = answer(_asked(asked, wear_question(lookup, query), lookup))
    return plain if plain.outcome == "answer" and plain.verdict != "silent" else None


def _barred(reading: Reading, answer: Tell, lookup: Lookup) -> tuple[Answer, ...]:
    """ "A silver ring by the winch?": of a class that may not be worn it is no question of which colour."""
    query = reading.query
    if query is None or query.kind != "may" or query.polarity == "not" or query.value is None:
        return ()
    if lookup.aspects[query.aspect].kind != "choice" or len(query.items) != 1:
        return ()
    worn = _asked(reading, wear_question(lookup, query), lookup)
    told = class_told(worn, asked, answer, lookup) if (asked := answer(worn)).outcome == "ask" else ()
    return told if told and all(one.verdict == "prohibited" for one in told) else ()


def _at_a_place(reading: Reading, read: Read, answer: Tell, lookup: Lookup) -> Answer | None:
    """ "On my belt": what may not be had at all, or not with the thing named, may not be had there either.

    Where no garment but its own was named, it is told where it goes; of any other it is not said to go there.
    """
    ask = reading.ask
    if ask is None or ask.fact != "reading" or len(ask.choices) != 1 or _is_sized(reading):
        return None
    first, *others = (token.low for token in tokenize(reading.question))
    if first in _OPEN or not _OPEN.isdisjoint({*others} - {"when"}):
        return None  # "when I am in town" is no question
    found = msgspec.structs.replace(
        read(ask.choices[0][0]), question=reading.question, spans=reading.spans, ask=None
    )
    where = found.query
    if where is None or where.kind != "where" or len(where.items) != 1:
        return None
    query = Query(kind="may", items=where.items, aspect=lookup.use_of(where.items[0]), case=where.case)
    bare = tuple(fact for fact in where.case.facts if not fact[0].startswith("worn:"))
    anywhere = msgspec.structs.replace(query, case=msgspec.structs.replace(where.case, facts=bare))
    told = answer(asked := _asked(found, anywhere, lookup))
    if goes_by_another_name(asked, lookup):
        for other in class_told(asked, told, answer, lookup)[:1]:
            return other if yes_or_no(other.headline) == "No" else None
        return None
    if told.verdict == "prohibited":
        return told if not with_its_kinds(where.items[0], lookup) else None
    with_it = answer(_asked(found, query, lookup))
    sided = any(token.low in ("left", "right") for token in tokenize(reading.question))
    if with_it.outcome == "answer" and yes_or_no(with_it.headline) == "No" and not sided:
        return with_it  # "the band on the right sleeve with the brassard": it may well be worn
    of_itself = f"worn:{lookup.items[where.items[0]].part_of}"
    if any(fact != of_itself for fact, _ in where.case.facts if fact.startswith("worn:")):
        return None
    placed = answer(found)
    goes = placed.outcome == "answer" and placed.verdict in ("required", "conditional")
    return placed if goes and placed.reading.query == where else None


def _without_adjuncts(
    reading: Reading, as_of: datetime.date, read: Read, answer: Tell, rests: Rests, lookup: Lookup
) -> Answer | None:
    """The answer without what the books know nothing of, where it is the same whatever that was."""
    for rest in rests(reading.question):
        again = read(rest.text)
        if not names_a_thing(again) or again.abstain is not None:
            continue
        (told, *more) = answers_instead(again, as_of, read, answer, _NONE, lookup)
        again, query = told.reading, told.reading.query
        if more or query is None or query.kind not in _SETTLED or not _is_settled(told, rest, lookup):
            continue
        if rest.other and any(lookup.facts[fact].family in _STANDING for fact, _ in query.case.facts):
            continue  # what is known of the one who asks is not known of another
        unused = (*rest.gone, *again.unused)
        asked = msgspec.structs.replace(again, question=reading.question, spans=reading.spans, unused=unused)
        return replaced(told, question=reading.question, reading=asked)
    return None


_STANDING = frozenset({"grade", "branch", "qualification", "appointment", "waiver"})
_SETTLED = frozenset({"may", "must", "where", "how", "how_many"})
_OF_THE_WEARER = frozenset({"grade", "branch", "qualification", "appointment", "worn", "rig"})
"""Families of facts that nothing but the wearer's own standing or dress settles."""


def _is_sized(reading: Reading) -> bool:
    """ "A badge of 25 mm on the lapel": where it goes is not all that is asked."""
    return any(span.role == "measure" for span in reading.spans)


def _is_settled(told: Answer, rest: Rest, lookup: Lookup) -> bool:
    """Whether an answer holds whatever was left out: it depends on nothing that those words may have told."""
    if told.outcome != "answer" or told.verdict in ("silent", "conflict") or told.entries:
        return False
    if rest.idle:
        return True
    open_facts = {name for case in told.cases for name, _ in case.when}
    apart = all(
        lookup.facts[name].family in _OF_THE_WEARER or (rest.timed and not is_of_light(lookup.facts[name]))
        for name in open_facts
    )
    if open_facts and not (apart and rest.apart and rest.plain):
        return False
    return rest.plain or told.verdict == "prohibited"
