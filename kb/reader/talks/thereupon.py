"""A turn that supposes what was asked before: "may I roll my sleeves then?", after "may my coat be off?"."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import msgspec

from kb.model.granting import valid_grants
from kb.model.lookup import Lookup
from kb.model.months import facts_of_day
from kb.model.questions import Abstain, Ask, Query, Reading
from kb.model.records import Fact
from kb.model.values import NO, YES, Choices, ValueSet
from kb.reader.meaning.fits import facts_that_matter, rules_of_aspect, wearing, whether_worn, whole_of
from kb.reader.meaning.placed import carriers
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import CREDENTIALS
from kb.reader.pieces.values import complement_of
from kb.reader.talks.further import LEAD, bare_words, content, keys_of, put_as
from kb.reader.talks.talked import Talk, akin, item_alone
from kb.text import Pattern
from kb.wording import say_query

_THEN = Pattern(
    r"(?i)^(?:and |but |so )*(?:may|can|could|must|do|does|is|are|should|am|how|what|which|where)\b.*"
    r"[^,;.] (?:then|in that case|when i do(?: that)?|if i do(?: that)?)\W*$|"
    r"^(?:and |but |so )*(?:then|in that case),? (?:(?:i|we) (?:do|need|have|must)|must|do|need)\b"
)
_ALTERNATIVE = Pattern(r"(?i)(?:(?:and|but|so|ok|or),? )*(?:what|how) about ")
_IF_SO = Pattern(
    r"(?:(?:and|but|so|ok|what|even) )*(?:if|when|once|while|whenever) (?:it|that|they|i|he|she|we) "
    r"(?:is|are|am|was|were|has|have|do|does|did|had|'s|'m|'re|'ve)(?: (not|n't))?(?: been)?"
)
_EVEN = Pattern(r"(?i)(?:(?:and|but|not) )*even\b")
_EVEN_UNDER = Pattern(
    r"(?i)(?:(?:and|but|so) )*even (?:under(?:neath)?|over|beneath|on top of) (?!it\b|them\b)"
)
_SOMEBODY = Pattern(r"\b(?:he|she|they)\b")
_ASKS = Pattern(r"(?i)\b(?:how|what|which|where|must|should|have to|who|when|why)\b")
_NO_MORE = Pattern(
    rf"(?i){LEAD}(?:(?:what about |how about |even |if )?(?:without|with no)|(?:when|if|"
    rf"once) there(?:['\u2019]s| is) no)"
    r" (?:any |the |more )?([\w' -]+?)(?: any ?more| then)?"
)
_WITHOUT_IT = Pattern(
    r"(?:(?:and|but|so|or|even|what about|how about|what if i go) )*without (?:it|one|that|them)(?: then)?"
)
_ON_AGAIN = Pattern(
    r"(?:(?:and|but|so|or|what about|how about) )*(?:with|(?:if|when) i (?:have|keep|put|leave|wear)) "
    r"(?:it|that|them)(?: back)? on(?: again| then)?"
)
_PRESENT = Pattern(r"(?i)\b(?:today|nowadays|these days|currently|at present|right now|as of now)\b")
_LED = Pattern(r"(?i)(?:(?:and|but|so|what about|how about)\b,? ?)+")
_IT = Pattern(r"(?i)\b(?:it|them|they|that)\b")
_OFF = frozenset({"off"})
_SIDE_OF = Pattern(
    rf"(?i){LEAD}(?:(?:on|over|at|round|around) )?(?:which|what) (?:side|end|part|half|edge|lapel|"
    r"breast|sleeve|shoulder|pocket|cuff|collar|arm|leg) (?:of|on) (?:the |my |his |her |their )?([\w' -]+?)"
    r"(?: (?:is|are|does|do|should|must|will|would|can|may) (?:it|they|that|this|those|i|we|he|she)\b.*)?"
)
_ON_THAT = Pattern(
    rf"(?i){LEAD}(?:even )?on ((?:the|my|his|her|our|an?) [\w' -]+?)(?:,? (?:as well|too|also))?(?: then)?"
)
_THERE_TOO = Pattern(rf"(?i){LEAD}(on .+?),? (?:as well|too|also)(?: then)?")


def thereupon(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """The reading with the thing before on, or off, as was asked, where that matters to what is asked now."""
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or before.kind not in ("may", "must") or len(before.items) != 1:
        return reading
    item = before.items[0]
    if before.aspect != wearing(before.items, lookup) or not query.items or item in query.items:
        return reading
    other = query.kind == "may" and akin(item, query.items[0], lookup)  # one goes for the other
    if _THEN.search(text) is None or _ALTERNATIVE.match(text) or other:
        return reading
    told = dict(_of_wearing(item, before.polarity == "do", facts_that_matter(query, lookup), lookup))
    new = {fact: values for fact, values in told.items() if fact not in dict(query.case.facts)}
    if not new:
        return reading
    case = merge_case(query.case, new, None, False, lookup)
    query = msgspec.structs.replace(query, case=case)
    kept = (*reading.carried, *new)
    return msgspec.structs.replace(reading, query=query, text=say_query(lookup, query), carried=kept)


def so_worn(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "Off watch, out of sight?", after whether one may carry it: whether one may so.

    Only where all rules on it want or allow the manner that is said; else it is asked of the manner itself.
    """
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or before.kind not in ("may", "must") or query.items != before.items:
        return reading
    if query.kind != "how" or lookup.aspects[query.aspect].kind != "manner" or _ASKS.search(text):
        return reading
    told = {span.target for span in reading.spans if span.role == "fact"}
    manners = {span.target for span in reading.spans if span.role == "aspect" and span.target}
    rules = [rule for rule in rules_of_aspect(query.items, query.aspect, lookup) if rule.aspect in manners]
    if (
        not (told or _EVEN.match(text))
        or not rules
        or any(rule.modality not in ("must", "may") for rule in rules)
    ):
        return reading
    query = msgspec.structs.replace(before, case=query.case)
    return msgspec.structs.replace(reading, query=query, text=say_query(lookup, query))


def of_what_has_it(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "May he carry one?", after how long a blade may be: whether he may carry what the blade is of."""
    query, lookup, before = reading.query, talk.lookup, previous.query
    if query is None or len(query.items) != 1:
        return reading
    if query.aspect not in (wearing(query.items, lookup), "carrying"):
        return reading
    if before is None or query.items != before.items or lookup.aspects[before.aspect].kind == "act":
        return reading
    named = any(span.role == "item" for span in reading.spans)
    whole = whole_of(query.items[0], lookup)
    if named or whole is None or any(rules_of_aspect(query.items, query.aspect, lookup)):
        return reading
    act = wearing((whole,), lookup)
    if not any(rules_of_aspect((whole,), act, lookup)):
        return reading
    facts = tuple((f, v) for f, v in query.case.facts if f != f"worn:{whole}")
    case = msgspec.structs.replace(query.case, facts=facts)
    query = msgspec.structs.replace(query, items=(whole,), aspect=act, case=case)
    return msgspec.structs.replace(reading, query=query, text=say_query(lookup, query))


def without_that(text: str, said: str, before: Query, talk: Talk) -> Reading | None:
    """ "And without it?", after how long a beard may be with a waiver: without what is held or worn.

    Of a measure or a place it is not asked without the thing that has it. "And with it on?" turns over what
    was said to be off.
    """
    lookup = talk.lookup
    if _ON_AGAIN.fullmatch(said) is not None:
        off = [f for f, v in before.case.facts if _is_off(f, v, lookup)]
        if len(off) != 1:
            return None
        turned = complement_of(lookup, off[0], dict(before.case.facts)[off[0]])
        case = merge_case(before.case, {off[0]: turned}, None, False, lookup)
        return talk.made(text, msgspec.structs.replace(before, case=case))
    if _WITHOUT_IT.fullmatch(said) is None or lookup.aspects[before.aspect].kind == "act":
        return None
    held = [f for f, v in before.case.facts if v == YES and lookup.facts[f].family in (*CREDENTIALS, "worn")]
    if len(held) != 1:
        return Reading(question=text, abstain=Abstain(reason="It is not clear without what."))
    case = merge_case(before.case, {held[0]: NO}, None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def _is_off(fact: str, values: ValueSet, lookup: Lookup) -> bool:
    record = lookup.facts[fact]
    if record.family == "worn":
        return values == NO
    return record.kind == "yes_no" and values == YES and record.label.casefold().split()[-1] in _OFF


def not_so(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "And without snow?", after snow on the ground: the one circumstance that the words name, not so."""
    found = _NO_MORE.fullmatch(bare_words(text))
    if found is None:
        return None
    from kb.reader.talks.corrected import labels_of  # noqa: PLC0415  few turns say what is no more so

    known, lookup = dict(before.case.facts), talk.lookup
    keys = content(found.group(1))
    named = [
        fact
        for fact, values in known.items()
        if lookup.facts[fact].family == "situation" and isinstance(values, Choices)
        if keys and any(keys <= keys_of(label) for label in labels_of(fact, values, lookup))
    ]
    if len(named) != 1:
        return None
    others: dict[str, ValueSet] = {named[0]: complement_of(lookup, named[0], known[named[0]])}
    case = merge_case(before.case, others, None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def today_again(text: str, previous: Reading, talk: Talk) -> Reading:
    """What a turn goes on from that names the present, after one of another day: as of now.

    "Even under the coat?", after how a thing is worn, goes on from whether it is worn.
    """
    query = previous.query
    if query is not None and query.kind in ("how", "how_many", "where") and _EVEN_UNDER.match(text):
        return msgspec.structs.replace(previous, query=whether_worn(query, talk.lookup), frame=None)
    if query is None or query.case.as_of == talk.case.as_of or _PRESENT.search(text) is None:
        return previous
    settled = facts_of_day(query.case.as_of, talk.lookup)
    facts = tuple(fact for fact in query.case.facts if fact not in settled)
    case = msgspec.structs.replace(query.case, as_of=talk.case.as_of, facts=facts)
    return msgspec.structs.replace(previous, query=msgspec.structs.replace(query, case=case), frame=None)


def told_of_another(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And the harness?", after a clause that says how the vest is stored: the same question of that."""
    query = previous.query
    led = _LED.match(text)
    item = item_alone(text[led.end() :] if led is not None else text, talk.lexicon, talk.lookup)
    if query is None or query.clause is None or item is None:
        return None
    named = [span for span in previous.spans if span.role == "item" and span.target]
    pronoun = _IT.search(previous.question)
    where = (named[0].start, named[0].end) if len(named) == 1 else pronoun.span() if pronoun else None
    if where is None:
        return None
    label = talk.lookup.items[item].label
    article = "" if named else "the "
    asked = f"{previous.question[: where[0]]}{article}{label}{previous.question[where[1] :]}"
    again = talk.read(asked, None)
    return put_as(text, again) if again.query is not None and again.query.kind == query.kind else None


def on_its_side(text: str, previous: Reading, talk: Talk) -> str | None:
    """ "Which side of the waistcoat?", after a badge that rules place on it: where on it that is worn."""
    found, before = _SIDE_OF.fullmatch(bare_words(text)), previous.frame or previous.query
    if found is None or before is None or len(before.items) != 1:
        return None
    item = item_alone(f"the {found.group(1)}", talk.lexicon, talk.lookup)
    if item is None or not carriers(before.items[0], talk.lookup) & {item, *talk.lookup.narrower(item)}:
        return None
    return f"where is it worn on the {talk.lookup.items[item].label}?"


def put_there_too(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "On my jumper as well?", of a badge that no rule places there: whether it may be there."""
    query, before, found = reading.query, previous.query, _THERE_TOO.fullmatch(bare_words(text))
    if query is None or before is None or found is None or query.items != before.items:
        return reading
    if "where" not in (query.kind, before.kind):
        return reading
    worn = talk.made(text, whether_worn(before, talk.lookup))
    label = talk.lookup.items[query.items[0]].label
    asked = talk.read(f"may I wear the {label} {found.group(1)}?", worn)
    claim = asked.query
    if claim is None or claim.items != query.items or claim.aspect != "position" or claim.value is None:
        return reading
    return put_as(text, asked)


def on_what(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "On the sun hat too?", read of the sun hat: of the badge that was spoken of; else it asks of which."""
    query, before, lookup = reading.query, previous.query, talk.lookup
    found = _ON_THAT.fullmatch(bare_words(text))
    if query is None or before is None or found is None or len(query.items) != 1 or query.kind == "list":
        return reading
    item = query.items[0]
    if item in before.items or item != item_alone(found.group(1), talk.lexicon, lookup):
        return reading
    for spoken in (i for i in previous.recent if i != item and "garment" not in lookup.broader(i)):
        worn = Query(kind="may", items=(spoken,), aspect=wearing((spoken,), lookup), case=before.case)
        label = f"may I wear the {lookup.items[spoken].label} on {found.group(1)}?"
        asked = talk.read(label, talk.made(text, worn))
        if asked.query is not None and asked.query.items == (spoken,) and asked.query.aspect == "position":
            return put_as(text, asked)
    return Reading(question=text, ask=Ask(fact="item", prompt="Which item is asked about?"))


def off_itself(reading: Reading, talk: Talk) -> Reading:
    """A question whether a thing may be off, without that it is: "tunic off?" supposes nothing more."""
    query, lookup = reading.query, talk.lookup
    if query is None or query.polarity != "not" or len(query.items) != 1 or query.kind not in ("may", "must"):
        return reading
    said = {fact for fact, _ in _of_wearing(query.items[0], False, lookup.facts, lookup)}
    facts = tuple((fact, values) for fact, values in query.case.facts if fact not in said)
    if query.aspect != wearing(query.items, lookup) or facts == query.case.facts:
        return reading
    query = msgspec.structs.replace(query, case=msgspec.structs.replace(query.case, facts=facts))
    return msgspec.structs.replace(reading, query=query, text=say_query(lookup, query))


def back_to(text: str, reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """ "And outdoors at 22 degrees, coat off?", after how high the sleeves are rolled: whether it may be off.

    So where all that is new bears on wearing the coat, and nothing of it on the measure.
    """
    query, before, lookup = reading.query, previous.query, talk.lookup
    if query is None or before is None or query.items != before.items or query.aspect != before.aspect:
        return reading
    if lookup.aspects[query.aspect].kind == "act":
        return reading
    last = content(text.rsplit(",", 1)[-1])
    named = [i for i in previous.recent if i not in query.items and _names_off(last, i, lookup)]
    if len(named) != 1:
        return reading
    off = {fact for fact, _ in _of_wearing(named[0], False, lookup.facts, lookup)}
    old = dict(before.case.facts)
    new = {f for f, v in query.case.facts if old.get(f) != v} - off
    act = wearing(named, lookup)
    asked = Query(kind="may", items=(named[0],), aspect=act, case=query.case, polarity="not")
    matter = {*facts_that_matter(asked, lookup)}
    if not new or not new <= matter or not new.isdisjoint(facts_that_matter(query, lookup)):
        return reading
    kept = tuple((f, v) for f, v in query.case.facts if f not in off)
    return talk.made(
        text, msgspec.structs.replace(asked, case=msgspec.structs.replace(query.case, facts=kept))
    )


def if_so(text: str, said: str, before: Query, talk: Talk) -> Reading | None:
    """ "And if it is?": the one fact that was said not to hold, as one that does; and the other way round."""
    supposed, lookup = _IF_SO.fullmatch(said), talk.lookup
    if supposed is None:
        return None
    holds = supposed.group(1) is None
    turned: list[tuple[str, ValueSet]] = []
    given: list[tuple[str, ValueSet]] = []  # by somebody: "and if he does?"
    for fact, values in before.case.facts:
        record = lookup.facts[fact]
        if record.family == "authorisation":
            absent = complement_of(lookup, fact, valid_grants(record, lookup))
            granted = any(authority in lookup.authorities for authority in getattr(values, "members", ()))
            if granted != holds:
                given.append((fact, valid_grants(record, lookup) if holds else absent))
        elif (
            record.kind == "choice"
            and holds
            and (_is_none(values, record) or (record.family == "situation" and _is_denied(values, record)))
        ):
            given.append((fact, complement_of(lookup, fact, values)))
        elif record.kind == "yes_no" and record.family != "worn" and (values == YES) != holds:
            turned.append((fact, complement_of(lookup, fact, values)))
    turned = given if given and _SOMEBODY.search(said) else [*given, *turned]
    if not turned and not holds:
        turned = [(f, complement_of(lookup, f, v)) for f, v in _stated_choices(before, lookup)]
    if not turned:
        known = {fact for fact, _ in before.case.facts}
        resting = (lookup.facts[fact] for fact in facts_that_matter(before, lookup) if fact not in known)
        whether = [f.id for f in resting if f.kind == "yes_no" and f.family == "situation"]
        turned = [(fact, YES if holds else complement_of(lookup, fact, YES)) for fact in whether]
    if len(turned) != 1:
        return Reading(question=text, abstain=Abstain(reason="It is not clear what is supposed."))
    case = merge_case(before.case, dict(turned), None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def _is_none(values: ValueSet, record: Fact) -> bool:
    """Whether nobody has ordered anything: "no order"."""
    named = [
        v.label.casefold() for v in record.values if isinstance(values, Choices) and v.id in values.members
    ]
    return named == [f"no {record.label.casefold()}"]


def _is_denied(values: ValueSet, record: Fact) -> bool:
    """Whether few values alone are left out: "not rain"."""
    return isinstance(values, Choices) and (values.complement or 2 * len(values.members) > len(record.values))


def _stated_choices(before: Query, lookup: Lookup) -> Iterator[tuple[str, ValueSet]]:
    """What is known of the situation by one of its values: "it is snowing"."""
    for fact, values in before.case.facts:
        record = lookup.facts[fact]
        few = isinstance(values, Choices) and 2 * len(values.members) <= len(record.values)
        if record.family == "situation" and record.kind == "choice" and few:
            yield fact, values


def _names_off(words: set[str], item: str, lookup: Lookup) -> bool:
    record = lookup.items[item]
    names = (record.label, *record.other_labels, *record.everyday)
    return words > _OFF and any(words - _OFF <= keys_of(name) for name in names)


def _of_wearing(item: str, on: bool, facts: Iterable[str], lookup: Lookup) -> Iterator[tuple[str, ValueSet]]:
    """Which of the facts say that the item is on, or off: "tunic off" of a station tunic."""
    for fact in facts:
        record = lookup.facts.get(fact)
        if record is None or record.kind != "yes_no":
            continue
        if fact == f"worn:{item}":
            yield fact, YES if on else NO
        elif record.family != "worn" and any(
            _names_off(keys_of(name), item, lookup) for name in (record.label, *record.other_labels)
        ):
            yield fact, NO if on else YES
