"""Further words of a talk: said in plainer ones, put against those before, or put beside them.

"Same for a K3?", "and with them up?", "and the letters?".
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query, Reading
from kb.model.values import NO, YES, Choices, ValueSet
from kb.reader.meaning.fits import facts_that_matter, kind_of_part, tests_worn, wearing
from kb.reader.meaning.query import merge_case
from kb.reader.phrases.english import CREDENTIAL_NOUNS
from kb.reader.pieces.values import closure
from kb.reader.pieces.whether import ends_in_yes_or_no
from kb.reader.question import clean
from kb.reader.talks.talked import Talk, in_its_case, item_alone
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_WORN = "worn:"
_THANKS = Pattern(
    r"(?i)(?:(?:ok|okay|right|fine|great|good|perfect|lovely|brilliant|excellent|understood|noted|thanks|"
    r"thank you|thankyou|cheers|ta|got it|i see|gotcha|cool|sure|ah|oh|aha|hm+|will do|sounds good|"
    r"(?:that|it)(?:['’]s| is| was) (?:all|fine|clear|great|good|helpful|good to know|it|ok|okay)|that helps|"
    r"that makes sense|makes sense|fair enough|good to know|much appreciated|many thanks|a lot|very much|"
    r"so much|then|very well|very good|no worries|no problem|never mind|nice|bye|goodbye|cheerio|well|so|"
    r"for that|for now|mate|all clear|as i thought|i thought so|and|all good)\b[ ,.;!]*)+"
)
LEAD = r"(?:(?:and|but|so|ok|okay|right|then|well|also),? )*"
_TO = r" (for|with|in|on|at|if|when|of|to|as for|without|under|over) (.+)"
_SAME = Pattern(
    rf"(?i){LEAD}(?:(?:is|are|was|does|do|would|will) (?:it|that|this|they) )?(?:be )?"
    r"(?:(?:just|all|exactly|still) )?(?:the )?same(?: thing| rules?| answer| one)?"
    rf"(?: goes| holds?| apply| applies| true| again| here)?(?: too| as well)?{_TO}"
)
_SAME_SO = Pattern(
    rf"(?i){LEAD}(?:is it |does it |would it be )?(?:just |all |exactly |"
    rf"still )?(?:the )?same(?: thing| rules?| answer)?"
    r"(?: goes| holds?| applies| true| again)?(?: too| as well)? ((?:off|out|outside|inside|indoors|"
    r"outdoors|ashore|afloat|"
    r"aboard|aloft|there|here|by|after|during|before|once|while|until|today|tomorrow|now|as)\b.*)"
)
_HOLDS = Pattern(
    rf"(?i){LEAD}(?:does|do|would|will) (?:that|it|this|they|the same) (?:also |still |even )?"
    rf"(?:go(?! over| under)|apply|hold|count|stand|change)(?: too| as well| good| true)?{_TO}"
)
_TRUE = Pattern(
    rf"(?i){LEAD}(?:is|are|was) (?:that|it|this|they) (?:also |still |even )?"
    r"(?:so|true|the case|right|any different|different|otherwise|changed|like that)"
    rf"(?: too| as well| also)?{_TO}"
)
_ALTERS = (
    r"(?:change|alter|affect|help|matter|make (?:a|any) difference|count|do|get me (?:out of|off|round) it)"
    r"(?: (?:to )?(?:that|it|this|things|anything|the answer|me|us))*(?: at all| then)?"
)
_CHANGES = Pattern(
    rf"(?i){LEAD}(?:(?:would|does|will|could|might|do) ((?:having )?(?:an? |the |my )[\w' -]+?) {_ALTERS}|"
    rf"((?:having )?(?:an? |the |my )[\w' -]+?)[,;:]+ (?:would|does|will|could|might) (?:that|it|this|"
    rf"one) {_ALTERS})"
)
_LIKEWISE = Pattern(rf"(?i){LEAD}(?:what of|as for|likewise(?: for)?|ditto(?: for)?|similarly for) (.+)")
_HAVE_NONE = Pattern(
    rf"(?i){LEAD}(?:what )?(?:(?:if|when) )?(?:i|he|she|they|we|you) "
    r"(?:(?:do|does|have|has)(?: not|n['\u2019]t)|lacks?|lost|forgot|left)(?: got| have| own)? "
    r"(?:one|it|them|any|mine|any of them)"
)
_OFF_IT = Pattern(rf"(?i){LEAD}(?:off|away from|out of|not on|not in) (?:it|there)")
_ALSO = Pattern(
    r"(?i)(?!(?:and|but|so|may|can|could|must|do|does|is|are|should|what|which|how|where|who|when|why|"
    r"am|if)\b)"
    r"(.+?),? (?:as well|too|also)(?: then)?((?:,? .+)?)"
)
_HOW_MUCH = Pattern(
    rf"(?i)({LEAD}how (?:long|wide|high|tall|big|many|deep|large|far))"
    r"(?: (?:at (?:the )?(?:very )?(?:most|least)|exactly|roughly|maximum|minimum|max|min|at a maximum))+(.*)"
)
_THAT_OK = Pattern(
    rf"(?i){LEAD}(?:is|was|would) (?:that|this)(?: be)? "
    r"(?=(?:ok|okay|allowed|fine|all right|alright|permitted)\b)"
)
_IN_THERE = Pattern(r"(?i)\b(?:in|on|over|up|down|out) (?:there|here)\b")
_WHAT_ELSE = Pattern(
    rf"(?i){LEAD}what else(?: (?:is there|do i|do we|should i)(?: (?:need|wear|have))*|"
    r" (must|may|can) (?:i|we) wear)?(?: then)?(?: ((?:for|in|at|on|when|while|with) .+))?"
)
_OVER_UNDER = Pattern(
    rf"(?i){LEAD}(?:is (?:it|that) |are they |worn )?((?:over or under|under or over|above or beneath|"
    r"inside or outside|outside or inside|on top of or under) "
    r"(?:(?!\b(?:does|do|is|are|must|may|can|should)\b).)+)"
)
_PARTS = "side|arm|hand|sleeve|shoulder|breast|pocket|wrist|ear|finger|leg|foot|lapel|collar|cuff|end|edge"
_WHICH_SIDE = Pattern(
    rf"(?i){LEAD}(?:(?:on|over|round|around|to|at|above|below) )?(?:which|what) (?:{_PARTS}|spot|place)"
    r"(?: (?:is|does|do|should|must|would) (?:it|they|that|this|i wear (?:it|them)|it go|they go|it be)"
    r"(?: on| worn| go| sit| be)*)?(?: then)?"
)
_LEFT_RIGHT = Pattern(
    rf"(?i){LEAD}(?:is (?:it|that)|are they)?(?:so )?(?:on |to |over )?(?:the |my )?(?:left|right)"
    rf"(?: (?:{_PARTS}))?(?: or (?:the |on the |my )?(?:left|right)(?: (?:{_PARTS}))?| only| then)?"
)
_HOW_FAR = Pattern(
    rf"(?i){LEAD}how (?:far|close|near|much) (?:up|down|in|out|along|above|below|back|from|off|to|apart)"
    r"(?: (?:it|that|them|there|does (?:it|that) go|do they go|is (?:it|that)|are they|"
    r"the \w+(?: (?!(?:is|are|does|do|must|should|may|can|goes|go|sits)\b)\w+)?))*"
)
_FAR_FROM = Pattern(
    rf"(?i){LEAD}(?:at )?how (?:far|close|near|high|low|many (?:inches|mm|cm|millimetres|centimetres)|much)"
    r"(?: (?:up|down|in|out|along|back))? "
    r"(?:above|below|behind|beneath|under|over|from|off|to|before|past|beyond|between|in front of) "
    r"(?:(?!\b(?:does|do|is|are|must|may|can|should|has|have)\b).)+"
)
_NOT_THAT = Pattern(
    rf"(?i){LEAD}not (?!even\b)(.+?),? (?:though|then|surely|either|mind(?: you)?|right|i (?:take it|suppose|"
    rf"guess))|(?:and |but |so |ok |right )*(?:so|but) not (?!even\b|really\b|now\b)(.+)"
)
_NOT_THE = Pattern(rf"(?i){LEAD}not ((?:the|my) [^,;]+)")
_ON_BODY = Pattern(
    rf"(?i){LEAD}(?:what about |how about )?((?:on|over|round|around|for|about) (?:my|your|the|his|her) \w+)"
)
_NUMBERED = Pattern(r"(?i)\d|\b(?:zero|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|one of)\b")
_ENDED = word_set("off stop stopped idle over finished still ended")
_NOT = Pattern(r"(?i)\b(?:not|no|isn|aren|never|without|off)\b|n['\u2019]t\b")
_SUCH_ONE = Pattern(
    r"(?i)(?:\b(?:the|a|an|my|that|those|these) ([\w'-]+(?: [\w'-]+)?) ones?\b|"
    r"(?<![\w'-])(?!(?:and|but|or|so|what|which|how|about|with|other|these|those|my|his|her|our|the|"
    r"any|some)\b)"
    r"([\w'-]+) ones\b)"
)
_IN_WHICH = Pattern(
    rf"(?i){LEAD}(?:in|on|at|with|during|for|under) (?:which|what) (?:rigs?|dress(?:es)?|orders? of dress|"
    r"weathers?|conditions?|circumstances?|cases?|situations?|occasions?|activit(?:y|ies)|places?)"
)
_NOT_EVEN = Pattern(rf"(?i){LEAD}not even (.+)")
_OVER = Pattern(rf"(?i){LEAD}(?:even )?(over|under|on top of|beneath|with) (?:my |the |an? )?(.+)")
_GENERIC = Pattern(
    r"(?i)\b(a|an|the|my|his|her|their|that|any|such a) (" + "|".join(sorted(CREDENTIAL_NOUNS)) + r")\b"
)
_PRONOUN = Pattern(
    r"(?i)\b(?:it|them|they|those|that one|this one|that|this|"
    r"(?:(?<=own )|(?<=wear )|(?<=have )|(?<=carry )|(?<=need )|(?<=use )|(?<=get ))one)\b"
)
_ONE = Pattern(r"(?i)\b(?:own|wear|have|carry|need|use|get) one\b")
_LED_PRONOUN = Pattern(r"(?i)\b(?:of|in|into|inside|over|under|on|with|to|round|behind) (?:it|them|those)\b")
_OWNER = Pattern(r"(?i)\b(?:its|their)\b")
_LIGHT = word_set("""
    a an the my your his her its their our it them they that this those these is are be being am was were 's
    with if in on at for to of and but so what how about even then i we he she you one 're 'm n't not when
    while""")
_FEW = 8


def is_thanks(text: str) -> bool:
    """ "Ok, thanks": words that ask nothing."""
    return "?" not in text and _THANKS.fullmatch(" ".join(clean(text).split()).strip(" ?.!")) is not None


def put_as(text: str, reading: Reading) -> Reading:
    """A reading of other words as one of those that were written; what is asked keeps the words it is of.

    One that was not understood still tells which things were named.
    """
    if reading.ask is not None:
        return reading
    places = {span: text.find(span.text) for span in reading.spans if span.role == "item" and span.text}
    named = tuple(
        msgspec.structs.replace(span, start=place, end=place + len(span.text))
        for span, place in places.items()
        if place >= 0 and reading.abstain is not None
    )
    return msgspec.structs.replace(reading, question=text, spans=named)


def bare_words(text: str) -> str:
    return " ".join(clean(text).split()).strip(" ?.!")


def in_full(text: str) -> str | None:
    """A few words as they are said in full: "same for a K3?" is "and what about a K3?"."""
    bare = bare_words(text)
    for pattern in (_SAME, _HOLDS, _TRUE):
        found = pattern.fullmatch(bare)
        if found is not None:
            led, rest = found.group(1).casefold(), found.group(2)
            return f"and what about {rest}?" if led in ("for", "of", "to", "as for") else f"and {led} {rest}?"
    for pattern, full in _FULL:
        found = pattern.fullmatch(bare)
        if found is not None and (pattern is not _NOT_THE or "?" in text):
            return full.format("".join(part for part in found.groups() if part)) + "?"
    found = _WHAT_ELSE.fullmatch(bare)
    if found is not None:
        return f"what {found.group(1) or 'must'} I wear {found.group(2) or ''}?"
    if _THAT_OK.match(bare):
        return f"{_THAT_OK.sub('is it ', bare)}?"
    if _IN_THERE.search(bare):
        return f"{_IN_THERE.sub('there', bare)}?"
    return None


_FULL = (
    (_OVER_UNDER, "is it worn {}"),
    (_SAME_SO, "and {}"),
    (_CHANGES, "and with {}"),
    (_HAVE_NONE, "and without it"),
    (_OFF_IT, "and outside it"),
    (_IN_WHICH, "when"),
    (_ALSO, "and {}"),
    (_HOW_MUCH, "{}"),
    (_LIKEWISE, "and what about {}"),
    (_NOT_EVEN, "even {}"),
    (_NOT_THE, "and {}"),
    (_NOT_THAT, "and {}"),
    *((pattern, "where is it worn") for pattern in (_WHICH_SIDE, _LEFT_RIGHT, _HOW_FAR, _FAR_FROM)),
)
"""Forms of few words, and what each is in full; the parts that a form leaves open follow each other."""


def keys_of(text: str) -> set[str]:
    return {t.key for t in tokenize(text) if t.low[0].isalnum()}


def content(text: str) -> set[str]:
    """The keys of the words that are no articles, pronouns, prepositions or joining words."""
    return {t.key for t in tokenize(text) if t.low[0].isalnum() and t.low not in _LIGHT}


def understood_otherwise(text: str, missed: Reading, previous: Reading, talk: Talk) -> Reading | None:
    """A turn that was not understood, by what the question before was about."""
    before, abstain = previous.query, missed.abstain
    if before is not None and before.kind == "list":
        return _in_a_list(text, before, talk)
    if before is None or not before.items:
        return None
    ask = missed.ask
    if ask is None or (ask.fact == "item" and not ask.choices):
        counted = _amount_of(text, previous, talk) or _the_other_kind(text, previous, talk)
        if counted is not None:
            return counted
    if abstain is None:  # "do the trousers go in or out of them?" names the other thing by "them"
        one = ask is not None and ask.fact == "item" and not ask.choices and _ONE.search(text)
        led = one or (ask is not None and ask.fact == "item" and _LED_PRONOUN.search(text))
        if led:
            return _by_label(text, Abstain(reason=""), previous, talk)
        sized = ask is not None and ask.fact == "item" and not ask.choices and _NUMBERED.search(text)
        return _by_label(text, Abstain(reason="", words=(text,)), previous, talk) if sized else None
    generic = _which_credential(text, abstain, before, talk)
    if generic is not None:
        return generic
    other = contrasted(text, before, talk)
    if other is not None:
        return talk.made(text, other)
    words = [t for t in tokenize(clean(text)) if t.low[0].isalnum() and t.low not in _LIGHT]
    part = kind_of_part(words[0].key, before, talk.lookup) if len(words) == 1 else None
    if part is not None:
        return talk.made(text, part)
    return _by_label(text, abstain, previous, talk)


def _in_a_list(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "And on my head?", after what is worn: of what is worn there."""
    bare = bare_words(text)
    led = _ON_BODY.fullmatch(bare)
    if led is None:
        return _one_listed(text, before, talk)
    here = msgspec.structs.replace(talk, case=before.case)
    again = here.read(f"what may I wear {led.group(1)}?", None)
    return put_as(text, again) if again.query is not None else None


def _one_listed(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "The woolly one", "even over my spectacles?", after a list: the one thing in it that this fits."""
    lookup, such, over = talk.lookup, _SUCH_ONE.search(text), _OVER.fullmatch(bare_words(text))
    listed = dict.fromkeys(kind for item in before.items for kind in (item, *lookup.narrower(item)))
    if such is not None:
        words = content(such.group(1) or such.group(2))
        named = [item for item in listed if any(words and words <= keys_of(n) for n in _names(item, lookup))]
        lead, trail = f"{text[: such.start()]}the ", text[such.end() :]
    elif over is not None and (worn := item_alone(over.group(2), talk.lexicon, lookup)) is not None:
        named = [item for item in listed if tests_worn(item, worn, lookup)]
        lead, trail = "may I wear the ", f" {over.group(1)} the {lookup.items[worn].label}?"
    else:
        return None
    if len(named) != 1:
        return None
    asked = Query(kind="may", items=(named[0],), aspect=wearing(named, lookup), case=before.case)
    again = talk.read(f"{lead}{lookup.items[named[0]].label}{trail}", talk.made(text, asked))
    return put_as(text, in_its_case(again, before, talk)) if again.query is not None else None


def _names(item: str, lookup: Lookup) -> tuple[str, ...]:
    return (lookup.items[item].label, *lookup.items[item].other_labels)


def _amount_of(text: str, previous: Reading, talk: Talk) -> Reading | None:
    if _NUMBERED.search(text) is None:
        return None
    from kb.reader.talks.amounts import amount  # noqa: PLC0415  few turns are a number alone

    return amount(text, previous, talk)


def _the_other_kind(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "The canvas one": the thing of the kind before whose name has the word."""
    before, found, lookup = previous.query, _SUCH_ONE.search(text), talk.lookup
    if before is None or found is None:
        return None
    item, words = lookup.items[before.items[0]], content(found.group(1) or found.group(2))
    kinds = {kind for kind in lookup.broader(item.id) if len(lookup.broader(kind)) > 2}
    named = [
        other
        for other in lookup.base.items
        if any(words and words <= keys_of(name) for name in (other.label, *other.other_labels))
        and (kinds & set(lookup.broader(other.id)) or set(item.everyday) & set(other.everyday))
    ]
    if len(named) != 1:
        return None
    again = talk.read(f"{text[: found.start()]}the {named[0].label}{text[found.end() :]}", previous)
    return put_as(text, again) if again.query is not None else None


def _which_credential(text: str, abstain: Abstain, before: Query, talk: Talk) -> Reading | None:
    """ "With a waiver?": the one that the rules on the thing ask for; asks where there are several."""
    found, lookup = _GENERIC.search(text), talk.lookup
    if found is None or not set(abstain.words) <= {found.group(2), found.group(0)}:
        return None
    family = found.group(2).casefold()
    facts = [lookup.facts[fact] for fact in facts_that_matter(before, lookup)]
    meant = [fact for fact in facts if fact.family == family]
    lead, trail = text[: found.start()], text[found.end() :]
    if len(meant) == 1:
        again = talk.read(f"{lead}the {meant[0].label}{trail}", talk.made(abstain.reason, before))
        return put_as(text, again) if again.abstain is None else None
    if not meant and before.kind in ("may", "must") and len(content(text)) == 1:
        return talk.made(text, before)  # "not even with a waiver?": no rule on the thing asks for any
    changed = tuple((f"{lead}the {fact.label}{trail}", fact.label) for fact in meant[:4])
    ask = Ask(fact="reading", prompt=f"Which {family} is meant?", choices=changed)
    return Reading(question=text, ask=ask) if changed else None


def contrasted(text: str, before: Query, talk: Talk) -> Query | None:
    """ "And with them up?", after "sleeves down": the other value that shares a word with the one known."""
    words, lookup = content(text), talk.lookup
    found: list[tuple[str, ValueSet]] = []
    known_facts = {**dict.fromkeys(facts_that_matter(before, lookup)), **dict(before.case.facts)}
    for fact, values in known_facts.items() if 0 < len(words) <= 2 else ():
        record = lookup.facts[fact]
        if record.kind == "yes_no" and words - _ENDED and words - _ENDED <= keys_of(record.label):
            denied = bool(words & _ENDED) or _NOT.search(text) is not None
            found.append((fact, NO if denied else YES))
        if record.kind not in ("choice", "scale") or not isinstance(values, Choices):
            continue
        known = set().union(*(keys_of(v.label) for v in record.values if v.id in values.members))
        for value in record.values:
            names = [keys_of(name) for name in (value.label, *value.other_labels)]
            if value.id not in values.members and any(k & known and k - known == words for k in names):
                found.append((fact, Choices(closure(lookup, fact, value.id))))
    if len(found) != 1:
        return None
    return msgspec.structs.replace(before, case=merge_case(before.case, dict(found), None, False, lookup))


def _by_label(text: str, missed: Abstain, previous: Reading, talk: Talk) -> Reading | None:
    """The words with the thing that they are about named in them, or before them."""
    before, bare = previous.query, bare_words(text)
    if before is None or len(before.items) != 1 or ends_in_yes_or_no(bare):
        return None
    label = f"the {talk.lookup.items[before.items[0]].label}"
    named = _OWNER.sub(f"{label}'s", bare) if _OWNER.search(bare) else _PRONOUN.sub(label, bare)
    tried: Sequence[str] = (named,) if named != bare else ()
    if not tried and missed.words and len(bare.split()) <= _FEW:
        tried = (f"{label} {bare}", f"{label}: {bare}")
    for words in tried:
        again = in_its_case(talk.read(f"{words}?", previous), before, talk)
        query = again.query
        if again.unused:
            continue  # what is about something else is not of the thing before
        of_it = (
            query is not None and query.clause is not None and _speaks_of(query.clause, before, talk.lookup)
        )
        if query is not None and (of_it or (query.items == before.items and query.clause is None)):
            acts = all(talk.lookup.aspects[q.aspect].kind == "act" for q in (query, before))
            told = any(span.role == "aspect" for span in again.spans)
            if not of_it and acts and query.aspect != before.aspect and not told:
                continue  # of another act than was asked about, without a word of it
            return put_as(text, again)
        if (
            again.ask is not None and again.ask.fact == "reading"
        ):  # "red?", where the books name no such colour
            return again
    return None


def _speaks_of(clause: str, before: Query, lookup: Lookup) -> bool:
    """Whether a rule of the clause is on the thing before by its name."""
    return any(r.clause == clause for r in lookup.rules_on(before.items[:1]))
