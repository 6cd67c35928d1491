"""What else a text may be, where it is not understood as it stands: another wording, a measure, a clause."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading, Span
from kb.model.records import OWNED_ASPECTS, Case
from kb.reader.doubts.lost import names_lost
from kb.reader.meaning.measured import of_its_manner, rule_aspects
from kb.reader.meaning.rephrase import as_mended, rephrased
from kb.reader.meaning.told import loose_claims
from kb.reader.phrases.not_meant import is_idiom
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.either import asked_either
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import tokenize
from kb.text import Pattern
from kb.wording import say_query

Read = Callable[[str], Reading]


def otherwise(
    reading: Reading, found: Understood, roles: Roles, before: Sequence[str], case: Case, lookup: Lookup,
    read: Read,
) -> Reading:  # fmt: skip
    """The reading of a text, or the one that its words give in another way; `read` reads other words.

    `before` are the items of the question before.
    """
    case = msgspec.structs.replace(case, as_of=roles.as_of or case.as_of)  # the law of the day that is named
    if (done := _of_a_deed(reading, found, lookup, read)) is not None:
        return done
    if not _CARRIED.isdisjoint(token.low for token in found.tokens):
        from kb.reader.recast.by_words import clause_of_carrying  # noqa: PLC0415  few questions ask it

        if (carried := clause_of_carrying(reading, found, case, lookup)) is not None:
            return msgspec.structs.replace(_made(reading, carried[0], lookup), frame=carried[1])
    matter = _of_another_matter(reading, found, roles, case, lookup) or _who_does_it(
        reading, found, case, lookup
    )
    if matter is not None:
        return _made(reading, matter, lookup)
    if reading.query is not None and any(token.key == "pair" for token in found.tokens):
        from kb.reader.pieces.pairs import in_pairs  # noqa: PLC0415  few questions count pairs

        return in_pairs(reading, found, lookup)
    if reading.abstain is not None and any(loose_claims(found)):
        from kb.reader.stories.story import from_story  # noqa: PLC0415  few questions tell what two people say

        beside = from_story(found, lookup, read)
        return reading if beside is None else _as_said(beside, reading)
    told = _on_a_limb(reading, found, case, lookup, read) or _judged(reading, found, read)
    told = told or _of_an_outfit(reading, found, lookup, read)
    if (told := told or _of_a_claim(reading, found, lookup, read)) is not None:
        return told
    named = second = None
    plainer = [
        asked_either(found, before, lookup)
        or rephrased(as_mended(found), first=True)
        or _let_down(found, lookup)
        or _layered(reading, found, lookup)
    ]
    if plainer == [None] and reading.query is None and not _is_choice(reading):
        from kb.reader.recast.stand_ins import left_away, put_names, spans_put  # noqa: PLC0415  most questions are understood before

        mended = as_mended(found)  # "7 degrrees": measures are read as they are written
        named = put_names(found, lookup)
        plainer = [mended if mended != found.text else None, named, rephrased(mended), rephrased(found.text)]
    for text in dict.fromkeys(plainer):
        if text is None:
            continue
        again = read(text)
        if (again.query is not None or _is_choice(again)) and not _is_unspoken(again, found, lookup):
            spans = spans_put(found, reading.spans, again, lookup) if text == named else reading.spans
            spans = tuple(_as_thing(span, again) for span in spans if not is_idiom(span, text, reading))
            gone = (*left_away(found, lookup), *again.unused) if text == named else again.unused
            again = msgspec.structs.replace(again, question=reading.question, spans=spans, unused=gone)
            shown = _is_clause(again) and len(sentence_starts(found.text, found.tokens)) > 1
            if not shown and not any(names_lost(again, lookup)):
                return again
            second = second or again
    if reading.abstain is None and not _is_without(reading):
        return second or _by_words(reading, found, case, lookup) or reading
    rest = _of_less(reading, found, case, lookup, read)
    return rest if second is None or not (rest.query is None or _is_clause(rest)) else second


def _is_clause(reading: Reading) -> bool:
    """Whether a clause is to be shown, which says less than an answer of what is told beside it."""
    return reading.query is not None and reading.query.clause is not None


def _is_unspoken(reading: Reading, found: Understood, lookup: Lookup) -> bool:
    """Whether other words make a question of an act on which the books have no rule: "pin a poppy to it"."""
    aspect = reading.query.aspect if reading.query is not None else ""
    done = lookup.aspects[aspect].done if aspect in lookup.aspects else None
    if done and "number" in done.split() and any(token.key in _OWN_NAME for token in found.tokens):
        return True  # "write my name in it", of what is marked with a number
    if aspect and lookup.aspects[aspect].verb != "use" and " use " in reading.question.casefold():
        return all(token.low != "use" for token in found.tokens)  # "answer my phone" is more than to carry it
    return aspect == "piercing" and all(rule.aspect != aspect for rule in lookup.base.rules)


def _as_thing(span: Span, again: Reading) -> Span:
    """A name as the thing that other words took it for: a rig that is worn."""
    items = again.query.items if again.query is not None else ()
    same = (s for s in again.spans if s.role == "item" and s.text == span.text and s.target in items)
    thing = next(same, None) if span.role == "fact" else None
    return span if thing is None else msgspec.structs.replace(span, role="item", target=thing.target)


_OWN_NAME = frozenset({"name", "initial", "surname"})


def _of_less(reading: Reading, found: Understood, case: Case, lookup: Lookup, read: Read) -> Reading:
    """The reading of a text of which not every word counts: a story, a claim, a clause by its own words."""
    from kb.reader.recast.qualities import of_its_own  # noqa: PLC0415  only where all else did not understand

    less = of_its_own(found, lookup, read) or _with_less(reading, found, lookup, read)
    if less is not None or reading.abstain is None:
        return reading if less is None else _as_said(less, reading)
    from kb.reader.stories.leadin import led_in  # noqa: PLC0415  as below

    led = led_in(found, lookup, read)
    if led is not None:
        return _as_said(led, reading)
    from kb.reader.stories.story import from_story  # noqa: PLC0415  as above

    told = from_story(found, lookup, read)
    if told is not None:
        return _as_said(told, reading)
    return _by_words(reading, found, case, lookup) or reading


def _who_does_it(reading: Reading, found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """ "Who may shorten a sleeve": the clause that names somebody, where no rule is on who does it."""
    query = reading.query
    whom = any(token.low in ("who", "whom") for token in found.tokens)
    listed = query is not None and query.kind == "source" and query.clause is None and whom
    if query is None or (query.kind != "who" and not listed):
        return None
    if query.aspect in ("wear", "carrying", *OWNED_ASPECTS) and not listed:
        return None
    if found.text.casefold().startswith(say_query(lookup, query).casefold().rstrip("?")):
        return None  # a read-back is read as what it was made of
    from kb.reader.recast.by_words import clause_by_words  # noqa: PLC0415  few questions ask who does something

    return clause_by_words(found, case, lookup)


def _by_words(reading: Reading, found: Understood, case: Case, lookup: Lookup) -> Reading | None:
    """The clause that speaks of it by its own words, where no thing was found that it is asked of."""
    if reading.query is not None or (
        reading.ask is not None and (reading.ask.fact != "item" or reading.ask.choices)
    ):
        return None
    from kb.reader.recast.by_words import clause_by_words  # noqa: PLC0415  most questions are understood before

    clause = clause_by_words(found, case, lookup)
    return _made(reading, clause, lookup) if clause is not None else None


def _on_a_limb(reading: Reading, found: Understood, case: Case, lookup: Lookup, read: Read) -> Reading | None:
    if reading.query is not None and reading.query.aspect in ("wear", "position"):
        return None
    from kb.reader.recast.per_limb import on_a_limb  # noqa: PLC0415  few questions count

    limb = on_a_limb(found, case, lookup, read)
    return None if limb is None else _as_said(limb, reading)


def _judged(reading: Reading, found: Understood, read: Read) -> Reading | None:
    """The reading of a measure that is told and judged, or asked for by a superlative, in plain words."""
    amounts = any(piece.tag in ("measure", "number") for piece in found.pieces)
    if amounts or any(token.key in ("couple", "pair", "inch") for token in found.tokens):
        from kb.reader.phrases.judged import judged, may_judge  # noqa: PLC0415  few texts tell an amount

        for text in judged(as_mended(found)) if may_judge(found.tokens) else ():
            again = read(text)
            asked = again.ask is not None and bool(again.ask.choices) and reading.query is None
            told = again.query is not None and again.query.value is not None
            if told or (asked and not _is_without(again)):
                kept = tuple(span for span in reading.spans if not is_idiom(span, text, reading))
                return _as_said(again, msgspec.structs.replace(reading, spans=kept))
    if reading.query is not None:
        return None
    from kb.reader.phrases.extremes import extremes, may_ask  # noqa: PLC0415  most questions are understood before

    for text in extremes(as_mended(found)) if may_ask(found.tokens) else ():
        again = read(text)
        if again.query is not None and again.query.kind in ("how", "how_many", "where"):
            care = again.query.aspect == "care"  # "at what temperature" is then of the water
            spans = tuple(s for s in reading.spans if not (care and s.text.casefold() == "temperature"))
            return msgspec.structs.replace(again, question=reading.question, spans=spans)
    return None


def _of_an_outfit(reading: Reading, found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """ "Can I go to the dinner in mess dress": whether it may be worn there."""
    if not any(p.tag == "fact" and lookup.facts[p.fact].family == "rig" for p in found.pieces) and all(
        piece.tag != "in" for piece in found.pieces
    ):
        return None
    from kb.reader.recast.outfits import in_an_outfit  # noqa: PLC0415  few questions ask of a rig

    worn = in_an_outfit(reading, found, lookup)
    again = read(worn[0]) if worn is not None else None
    if worn is None or again is None or again.query is None:
        return None
    return msgspec.structs.replace(again, question=reading.question, spans=worn[1])


_WANTED = Pattern(
    r"(?i)\b(?:wants?|like|fancy|need) (?:to \w+ (?:on )?)?(?:another|one more|an extra"
    r"|a (?:second|third|fourth))(?: one)?(?: on)?[.;]"
)
"""One more of a thing, whose number is asked about with it."""


_PAUSE = Pattern(r"[.,;:!–—-] ")


def _of_a_deed(reading: Reading, found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """ "They asked to wear it open. May they?" as one question; "He has it open. Fault?"."""
    if found.text.rstrip().endswith("?") and _PAUSE.search(found.text):
        from kb.reader.recast.inspected import inspected  # noqa: PLC0415  many questions are of one clause

        if (seen := inspected(as_mended(found), reading, lookup, read)) is not None:
            return seen
    if ("." not in found.text and ";" not in found.text) or _WANTED.search(found.text):
        return None
    from kb.reader.stories.deeds import deed_asked, in_progress  # noqa: PLC0415  few texts have two sentences

    asked = deed_asked(found, lookup)
    if asked is not None and (doing := in_progress(found, lookup)) is not None:
        asked = doing, ()
    if asked is not None and found.tokens[0].low.endswith("ing"):
        from kb.reader.recast.out_and_about import out_asked  # noqa: PLC0415  few deeds are done off the premises

        asked = out_asked(found, lookup) or asked
    again = read(asked[0]) if asked is not None else None
    if asked is None or again is None or again.query is None:
        return None
    again = msgspec.structs.replace(_as_said(again, reading), unused=(*asked[1], *again.unused))
    return None if any(names_lost(again, lookup)) else again


_OF_CLAIMANTS = frozenset({"fact", "grade", "aspect"})
_POINTING = frozenset({"it", "its", "they", "them", "these", "those", "one", "ones"})


def _of_a_claim(reading: Reading, found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """ "My deputy insists that wardens wear it. I don't think so. Which?": what is claimed, as a question.

    Of who claims it no amount, day or clause may be named, and nothing that "it" may be; the rest is unused.
    """
    if reading.query is not None:
        return None
    from kb.reader.stories import hearsay, leadin  # noqa: PLC0415  most questions are understood before

    for claim in hearsay.claims_in(found.text, found.tokens):
        cut = [s for s in reading.spans if s.target and any(a <= s.start < b for a, b in claim.around)]
        cut = [s for s in cut if s.role != "measure" or not s.text.isalpha()]  # "two of my men"
        pointing = not _POINTING.isdisjoint(token.low for token in tokenize(claim.asked))
        if any(s.role not in _OF_CLAIMANTS and (pointing or s.role != "item") for s in cut):
            continue
        told, cut = leadin.told_before(found.text, claim.around, cut)
        again = read(told + hearsay.of_its_maker(claim.asked, cut, lookup))
        if again.query is None and not _is_choice(again):
            continue
        around = [place for place in claim.around if any(place[0] <= span.start < place[1] for span in cut)]
        unused = tuple(found.text[start:end].strip(" ,").removeprefix(told) for start, end in around)
        again = msgspec.structs.replace(_as_said(again, reading), unused=(*unused, *again.unused))
        if not any(names_lost(again, lookup)):
            return again
    return None


def _let_down(found: Understood, lookup: Lookup) -> str | None:
    """The text with "visor down" as lowered, "tunic off, allowed?" as taken off, "badge up" as worn."""
    if all(token.low not in ("up", "down", "off", "than", "instead") for token in found.tokens):
        return None
    from kb.reader.recast.put_up import put_up  # noqa: PLC0415  few texts have the words
    from kb.reader.recast.states import let_down  # noqa: PLC0415  as above

    return let_down(found, lookup) or put_up(found, lookup)


_LAYERS = frozenset({"top", "everything", "underneath", "beneath", "over", "under"})


def _layered(reading: Reading, found: Understood, lookup: Lookup) -> str | None:
    """ "With the jacket on, the fleece underneath" as the fleece under it; no condition as what is asked."""
    lows = {token.low for token in found.tokens}
    if not _IFS.isdisjoint(lows):
        from kb.reader.recast.if_off import if_off  # noqa: PLC0415  few questions have a condition

        if (less := if_off(reading, lookup)) is not None:
            return less
    if _LAYERS.isdisjoint(lows):
        return None
    from kb.reader.recast.layers import layered, over_all  # noqa: PLC0415  few questions say what goes over what

    return over_all(found, lookup) or (layered(found, lookup) if reading.query is None else None)


_IFS = frozenset({"if", "long", "provided", "providing", "condition"})
_CARRIED = frozenset({"carry", "carried", "off", "hand", "arm"})


def _of_another_matter(
    reading: Reading, found: Understood, roles: Roles, case: Case, lookup: Lookup
) -> Query | None:
    """What the rules say in place of what was asked: another measure, a way of wearing, what is worn."""
    measured = None
    if not _is_answerable(reading, lookup):
        from kb.reader.recast.gauge import gauged  # noqa: PLC0415  most questions are understood before

        measured = gauged(found, roles, case, lookup)
    if measured is not None:
        return measured
    if reading.query is None or roles.placing:
        from kb.reader.recast.none_of import none_of  # noqa: PLC0415  as above

        none = none_of(found, roles, case, lookup)
        if none is not None:
            return none
    if reading.query is not None:
        from kb.reader.meaning.borne import on_it  # noqa: PLC0415  few questions ask what is on a thing

        on = on_it(reading.query, found, roles, case, lookup)
        return on or of_its_manner(reading.query, found, lookup)
    from kb.reader.meaning.member import enumeration, membership  # noqa: PLC0415  as above

    belongs = membership(found, case, lookup) or enumeration(found, case, lookup)
    if belongs is not None:
        return belongs
    if reading.abstain is not None:
        from kb.reader.meaning.defined import meaning_asked  # noqa: PLC0415  as above

        meant = meaning_asked(found.text, case, lookup)
        if meant is not None:
            return meant
    from kb.reader.pieces.issued import issued  # noqa: PLC0415  as above

    made = issued(found, case, lookup)
    if made is not None:
        return made
    from kb.reader.meaning.borne import borne  # noqa: PLC0415  as above

    return borne(found, roles, case, lookup)


def _with_less(reading: Reading, found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """The reading of fewer words: first of the question as a whole, since a statement beside it may count."""
    from kb.reader.recast.figures_claimed import figure_claimed  # noqa: PLC0415  as above
    from kb.reader.stories.aside import set_aside  # noqa: PLC0415  only where all else did not understand
    from kb.reader.stories.company import without_its_state  # noqa: PLC0415  as above
    from kb.reader.stories.spare import without_spare  # noqa: PLC0415  as above

    return (
        without_its_state(found, read)
        or figure_claimed(found, lookup, read)
        or without_spare(reading, found, lookup, read)
        or set_aside(found, lookup, read)
    )


def _as_said(again: Reading, reading: Reading) -> Reading:
    return msgspec.structs.replace(again, question=reading.question, spans=reading.spans)


def _made(reading: Reading, query: Query, lookup: Lookup) -> Reading:
    return Reading(question=reading.question, text=say_query(lookup, query), query=query, spans=reading.spans)


def _is_answerable(reading: Reading, lookup: Lookup) -> bool:
    """Whether a question was understood of which some rule may speak."""
    query = reading.query
    if query is None or not query.items or query.aspect not in lookup.aspects_within("size"):
        return query is not None
    return bool(set(rule_aspects(query.items[0], lookup)) & set(lookup.aspects_within(query.aspect)))


def _is_without(reading: Reading) -> bool:
    """Whether it was asked back whether to answer without a word."""
    return reading.ask is not None and [said for _, said in reading.ask.choices] == ["without it"]


def _is_choice(reading: Reading) -> bool:
    """Whether the words were understood but for which of several things is meant."""
    return reading.ask is not None and reading.ask.fact == "item" and bool(reading.ask.choices)
