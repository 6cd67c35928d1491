"""A turn that leaves out what it is of: "why the helmet?", "how far can I roll them?", "the new one", "wring
them out?", "my mate's".

Each form gives the question before, put otherwise, or is left for the other ways of reading a turn.
"""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading, Verdict
from kb.model.records import Rule
from kb.model.values import NO, YES, ValueSet, choices
from kb.reader.meaning.fits import depends, rules_of_aspect, wearing, whole_of
from kb.reader.meaning.query import merge_case
from kb.reader.phrases.english import PHRASES
from kb.reader.pieces.datum import datum_keys
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.pointing import is_place
from kb.reader.question import understand
from kb.reader.talks.done_so import does_so
from kb.reader.talks.further import LEAD, bare_words, content, keys_of, put_as
from kb.reader.talks.granted import granted_it, needed, not_granted, of_a_clause
from kb.reader.talks.talked import Talk, in_its_case, item_alone
from kb.reader.words.tokens import word_key
from kb.text import Pattern

_REQUIRED: tuple[Verdict, ...] = ("required",)
_WORN = frozenset({"wear", "carrying", "possession"})
_WHY = Pattern(
    rf"(?i){LEAD}why (?P<need>(?:do|must|should|would) (?:i|we|you|they|people) "
    r"(?:need|wear|have|(?:have|need) to (?:wear|have)) )?"
    r"(?:the |a |an |my |any |all the |all |those |these )?(?P<what>.+?)(?: on)?(?: then| at all)?"
)
_OF = Pattern(
    rf"(?i){LEAD}(?:(?:no|sorry|i mean|i meant|that(?:['\u2019]s| is)),? )*(?:that )?(?:of|on|for) (.+?)"
    r"(?:[ ,]+(?:sorry|i mean|i meant|that is))*"
)
_DO_IT = Pattern(
    rf"(?i){LEAD}([a-z]+) (?:it|them|those|that)(?: (out|up|down|in|off|over|on|through|together))?"
    r"(?: for (?:a|an|the|my|some) (.+?))?(?: then| too| at all)?"
)
_TAKEN_FROM = Pattern(
    rf"(?i){LEAD}how (?:far|high|low|long|much|close|near)(?: (?:up|down))? "
    r"(?:above|below|beneath|under|over|from|past|beyond)\b"
)
_HOW_FAR = Pattern(
    rf"(?i){LEAD}(?:(?:up |down |back |over )?(?:to|till|until) (?:where|what (?:point|height|level|length))|"
    r"(?:to )?how (?:far|high|much|many times)(?: up| down| back| over| in)?)"
    r"(?: (?:can|may|must|should|do|are|is|could) (?:i|we|they|it|he|she)\b.*?)?"
    r"(?: (?:above|below|over|past|from|up to) (?:the |my |his |her )?(\w+))?(?: then)?"
)
_OTHERS = Pattern(
    rf"(?i){LEAD}(?:(?:can|may|could|am|are|is) (?:i|we|he|she|they)(?: allowed to)? )?"
    r"(?:(borrow|share)|wear|use|have|take|carry) "
    r"(?:(?:somebody|someone|anybody|anyone) else['\u2019]s|another \w+['\u2019]s|"
    r"(?:my|a|the|his|her|our) (?:\w+ ){0,2}?\w+['\u2019]s?|hers|theirs|yours|his|"
    r"(?:one|it|them|some|any) (?:of|from|off) .+?)(?: one)?"
    r"(?: instead| then| for (?:now|today|a day|the day))?"
)
_AGE = r"new|newer|newest|current|present|latest|modern|old|older|former|previous|earlier"
_AGED = Pattern(rf"(?i)\b(?:the|a|an|my) ({_AGE})(?: (?:pattern|style|type|model))? (?:ones?|kind|pattern)\b")
_OLD = frozenset({"old", "older", "former", "previous", "earlier"})
_AGES = frozenset(word_key(word) for word in (*_AGE.split("|"), "pattern", "style", "type", "model"))
_BESIDE = Pattern(
    r"(?i)((?:and |but |so |even )*with .+?) (?:beside|next to|alongside|along with|as well as|by|near) "
    r"(?:it|them|that)"
)
_LACKED = Pattern(
    rf"(?i){LEAD}(?:(?:mine|it|that)(?:['\u2019]s| is| has| got)(?: been| got)? (?:broken|lost|gone|"
    rf"missing|stolen|"
    r"in the wash|torn|worn out),? (?:(?:so|and) )?)?(?:(?:what |and )?(?:if|when) )?(?:i|he|she|they|"
    r"we)(?:['\u2019]ve| have| has|['\u2019]s)?"
    r"(?: (?:got )?no| lost| left| forgot(?:ten)?| lack|n['\u2019]t got|['\u2019](?:m|re) without|"
    r" (?:am|are|is) without|"
    r" (?:do|does|have|has|had)(?: not|n['\u2019]t)(?: got| have)?)"
    r" (?:(?:the|my|a|an|any) )?(.+?)(?: at home| behind)?"
    r"(?:[,.;]* ((?:and |so |but )?(?:then what|what then|what now|now what|what (?:do|must|should) i"
    r"(?: have to)? (?:wear|carry|do|take)(?: then| instead)?)))?"
)
_ONE = frozenset({"one", "it", "them", "any", "mine", "his", "hers"})
_NO_NOUN = (
    r"(?= (?:with|over|under|on|in|at|when|if|while|without|instead|and|or|for|as|to|then|too|off)\b|\W*$)"
)
_IT = rf"(?:it|them)\b|(?:that|those|this|these)\b{_NO_NOUN}"
_OBJECT = Pattern(
    r"(?i)\b(?:wear|wearing|worn|carry|carrying|use|using|have|put|pin|clip|sew|attach|fix|fasten|tie|"
    r"hang|keep|"
    r"tuck|button|place|don|swap|trade|change|combine|pair|need|allowed|with|over|under|underneath|beneath|"
    r"without|of|beside|above|below|behind|inside|cover|covers|match|leave|put on|wear both|on top of)"
    rf" ({_IT})"
)
_SUBJECT = Pattern(
    r"(?i)\b(?:can|may|must|should|does|do|is|are|could|will|would|when|if|where|how) "
    r"(?:(?:does|do|is|are|must|should|may|can) )?(it|they|that|those)"
    r"(?= (?:have to |need to )?(?:be )?(?:worn|carried|used|go|goes|sit|sits|hang|hangs|put|pinned|fastened|"
    r"fixed|combined|paired|matched)\b|"
    r" (?:(?:allowed|ok|okay|fine|all right) )?(?:with|over|under|on|without) )"
)
_LISTING = Pattern(r"\b(?:what|which|wear|worn|kit|list|everything|all|clothes|dress|outfit|gear|need)\b")
_KEPT = Pattern(
    r"(?i)(?:(?:and|but|so) )*(?:i|we)(?:['\u2019]ve| have)(?: got)? [^.;?]+?[,.;]"
    r" (?:can|may|could|must) (?:i|we) (?:still |just )?keep (?:it|them)\b"
)
_OF_IT = Pattern(r"\b(?:does|do|will|would) (?:it|that|one)\b")
_OFF = Pattern(r"(?i)\b(?:off|away from|clear of|out of) the (\w+)\b")


def elliptic(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """The reading of such a turn; None for any other."""
    before, bare = previous.query, bare_words(text)
    if (done := does_so(text, bare, previous, talk)) is not None:
        return done
    if (
        before is not None
        and before.clause is not None
        and (other := of_a_clause(text, bare, previous, talk))
    ):
        return other
    if before is None or not before.items:
        return _why(text, bare, previous, talk)
    return (
        _of_it(text, previous, talk)
        or _of_its_whole(text, bare, before, talk)
        or _why(text, bare, previous, talk)
        or _done_to_it(text, bare, previous, talk)
        or _anothers(text, bare, before, talk)
        or _by_age(text, bare, previous, talk)
        or _measured(text, bare, previous, talk)
        or _off_the(text, previous, talk)
        or not_granted(text, bare, previous, talk)
        or granted_it(text, bare, previous, talk)
        or needed(text, bare, previous, talk)
    )


def is_all(query: Query, said: str) -> bool:
    """Whether few words after a question that was not settled were read as asking for all that is worn."""
    short = _LISTING.search(said) is None or _OF_IT.search(said) is not None
    return query.kind == "list" and not query.items and short


def of_the_same(reading: Reading, previous: Reading, talk: Talk) -> Reading:
    """A question of a part of the thing before, or why or whether to do without it, in the case of that."""
    query, before = reading.query, previous.query
    if query is None or before is None or not query.items:
        return reading
    if all(whole_of(item, talk.lookup) in before.items for item in query.items):
        return in_its_case(reading, before, talk)  # "can the hood be up?", of the jacket before
    if not set(query.items) <= set(before.items):
        return reading
    stated = [fact for fact, _ in query.case.facts if fact not in reading.carried]
    named = {span.target for span in reading.spans if span.role == "item"}
    if stated or not named or query.case.alone or query.case.as_of != talk.case.as_of:
        return reading
    if query.kind != "why" and (query.kind not in ("may", "must") or query.polarity != "not"):
        return reading
    return in_its_case(reading, before, talk)


def _of_it(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "May I wear it with the storm coat?": the thing before put in its place, beside the one named."""
    before, found = previous.query, _OBJECT.search(text) or _SUBJECT.search(text)
    if found is None or before is None or len(before.items) != 1 or before.kind == "list":
        return None
    if _KEPT.match(text) is not None:
        return None  # "I've got a beard though, can I keep it?"
    words = understand(text, talk.lexicon, talk.lookup, None)
    pieces = words.pieces if isinstance(words, Understood) else ()
    named = {entry.id for piece in pieces if piece.tag in ("item", "items") for entry in piece.entries}
    named |= {piece.arg for piece in pieces if piece.tag == "item"}
    if not named or before.items[0] in named:
        return None
    label = f"the {talk.lookup.items[before.items[0]].label}"
    again = talk.read(f"{text[: found.start(1)]}{label}{text[found.end(1) :]}", previous)
    if again.ask is not None and found.group(0).casefold().startswith(("with ", "over ", "on ", "under ")):
        return None  # which cap goes "on with it" is asked of the words as they stand
    return put_as(text, in_its_case(again, before, talk))


def _of_its_whole(text: str, bare: str, before: Query, talk: Talk) -> Reading | None:
    """ "Of the storm coat, I mean", after "may the hood be up?": what was asked, if the hood is of that."""
    found = _OF.fullmatch(bare)
    item = item_alone(found.group(1), talk.lexicon, talk.lookup) if found is not None else None
    whole = whole_of(before.items[0], talk.lookup)
    return talk.made(text, before) if item is not None and item == whole else None


def _why(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Why the helmet?": why what was answered of it, in the case in which it was."""
    found, before = _WHY.fullmatch(bare), previous.query
    item = item_alone(found["what"], talk.lexicon, talk.lookup) if found is not None else None
    if item is None or before is None or found is None:
        return None
    if before.items and item not in previous.recent and not found["need"]:
        return None  # of a list it may be any
    act = before.aspect if item in before.items else wearing((item,), talk.lookup)
    case = before.case
    worn = tuple((fact, values) for fact, values in case.facts if fact != f"worn:{item}")
    asked = Query(kind="why", items=(item,), aspect=act, case=msgspec.structs.replace(case, facts=worn))
    return talk.made(text, msgspec.structs.replace(asked, modalities=_REQUIRED if found["need"] else ()))


def _done_to_it(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Wring them out?", "pierce it for a pin?": whether that may be done to the thing before."""
    found, before = _DO_IT.fullmatch(bare), previous.query
    if found is None or before is None or len(before.items) != 1:
        return None
    verb, way, aim = found.groups()
    if (verb.casefold(),) in PHRASES or (aim and item_alone(aim, talk.lexicon, talk.lookup) is None):
        return None
    label = f"the {talk.lookup.items[before.items[0]].label}"
    here = msgspec.structs.replace(talk, case=before.case)
    for done in (f"{verb} {way} {label}", f"{verb} {label} {way}") if way else (f"{verb} {label}",):
        again = here.read(f"may I {done}?", None)
        if again.query is not None and again.query.items == before.items:
            return put_as(text, again)
    return None


def extent(text: str, before: Query | None, talk: Talk) -> Reading | None:
    """ "How far can I roll them?": the measure that the clause on what is done has with it."""
    lookup = talk.lookup
    far = _HOW_FAR.fullmatch(bare_words(text))
    if before is None or not before.items:
        return None
    act = lookup.aspects[before.aspect]
    done = act.kind == "act" and before.aspect not in _WORN
    if not (far and done) and _TAKEN_FROM.match(bare_words(text)):
        return _reaching(text, before, talk)
    if far is None or not done:
        return None
    clauses = {rule.clause for rule in rules_of_aspect(before.items, before.aspect, lookup)}
    measured = {
        (item, rule.aspect)
        for rule in lookup.base.rules
        if rule.clause in clauses and rule.value.measure is not None
        if far[1] is None or word_key(far[1].casefold()) in datum_keys(rule)
        if lookup.aspects[rule.aspect].kind == "measure"
        for item in rule.scope.items
        if item in before.items or "feature" in lookup.broader(item)
    }
    if len(measured) != 1:
        reason = "The books do not say how far that is done." if not measured else "Say what is measured."
        return Reading(question=text, abstain=Abstain(reason=reason))
    ((item, aspect),) = measured
    return talk.made(text, Query(kind="how", items=(item,), aspect=aspect, case=before.case))


def _reaching(text: str, before: Query, talk: Talk) -> Reading | None:
    """ "How far below the knee can the hem be?": the one measure of the thing that is taken from there."""
    said, lookup = content(text), talk.lookup
    item = before.items[0]
    measured = {
        (one, rule.aspect)
        for rule in lookup.base.rules
        if not said.isdisjoint(datum_keys(rule))
        for one in rule.scope.items
        if item in (one, whole_of(one, lookup))
    }
    if len(measured) != 1 or lookup.aspects[min(measured)[1]].kind != "measure":
        return None
    one, aspect = measured.pop()
    return talk.made(text, Query(kind="how", items=(one,), aspect=aspect, case=before.case))


def _anothers(text: str, bare: str, before: Query, talk: Talk) -> Reading | None:
    """ "Can I borrow my mate's?": whether the thing before may be lent."""
    if len(before.items) != 1 or _OTHERS.fullmatch(bare) is None:
        return None
    lending = [aspect.id for aspect in talk.lookup.base.aspects if aspect.verb == "lend"]
    if len(lending) != 1:
        return Reading(
            question=text, abstain=Abstain(reason="The books do not say what may be borrowed or shared.")
        )
    asked = Query(kind="may", items=before.items, aspect=lending[0], case=before.case)
    return talk.made(text, asked)


def _by_age(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "And with the new one beside it?": the thing that differs from the one before by its age alone."""
    found, before, lookup = _AGED.search(bare), previous.query, talk.lookup
    if found is None or before is None:
        return None
    item = before.items[0]
    named = {
        other.id
        for other in lookup.base.items
        if other.broader
        and other.id != item
        and (content(other.label) - _AGES == content(lookup.items[item].label) - _AGES)
        and _is_old(other.id, lookup) == (found.group(1).casefold() in _OLD)
    }
    if len(named) != 1:
        return None
    other = named.pop()
    said = f"{bare[: found.start()]}the {lookup.items[other].label}{bare[found.end() :]}"
    led = _BESIDE.fullmatch(said)
    worn: dict[str, ValueSet] = {f"worn:{item}": YES}
    if led is not None and depends((other,), wearing((other,), lookup), worn, lookup):
        case = merge_case(msgspec.structs.replace(before.case, alone=False), worn, None, False, lookup)
        asked = Query(kind="may", items=(other,), aspect=wearing((other,), lookup), case=case)
        return talk.made(text, asked)
    again = talk.read(f"{led.group(1) if led is not None else said}?", previous)
    return put_as(text, again) if again.query is not None else None


def _is_old(item: str, lookup: Lookup) -> bool:
    return not keys_of(lookup.items[item].label).isdisjoint(word_key(word) for word in _OLD)


def lacking(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "I've got no beacon. Then what?": what has to be worn or carried by who is without it."""
    bare, before, lookup = bare_words(text), previous.query, talk.lookup
    found = _LACKED.fullmatch(f"I {bare}" if bare[:5].casefold().rstrip() in ("lost", "forgo") else bare)
    if found is None or before is None or not before.items:
        return None
    what = found.group(1).casefold()
    if found.group(2) and item_alone(what, talk.lexicon, lookup) is None and what not in _ONE:
        alone = talk.read(text, None)  # nothing of it is of the thing before
        reason = "The books do not say what is done without that."
        told = alone.query is not None and alone.query.kind == "source"
        return alone if told else Reading(question=text, abstain=Abstain(reason=reason))
    lone = before.items[0] if len(before.items) == 1 else None
    item = lone if what in _ONE else item_alone(what, talk.lexicon, lookup)
    if item is None:
        return None
    instead = tuple(dict.fromkeys(i for rule in _repairing(item, lookup) for i in rule.scope.items))
    if not instead:
        again = talk.read("and without it?", previous) if found.group(2) and item == lone else None
        return put_as(text, again) if again is not None and again.query is not None else None
    facts: dict[str, ValueSet] = {f"worn:{item}": NO}
    case = merge_case(before.case, facts, None, False, lookup)
    if len(instead) == 1:
        asked = Query(kind="must", items=instead, aspect=wearing(instead, lookup), case=case)
        return talk.made(text, asked)
    return talk.made(text, Query(kind="list", items=instead, case=case, modalities=_REQUIRED))


def _repairing(item: str, lookup: Lookup) -> Iterator[Rule]:
    """The rules that say what to do where a duty to have the item on is broken."""
    duties = {rule.id for rule in rules_of_aspect((item,), wearing((item,), lookup), lookup)}
    return (rule for rule in lookup.base.rules if rule.repairs in duties)


def _measured(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    if not any(sign.isdigit() for sign in bare):
        return None
    from kb.reader.talks.amounts import own_measure  # noqa: PLC0415  few turns have a number

    return own_measure(text, previous, talk)


def _off_the(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "Off the snow?", where a snowfield is a place that the books know: not there."""
    found = _OFF.search(text)
    places = list(_places(found.group(1).casefold(), talk.lookup)) if found is not None else []
    if found is None or len(places) != 1:
        return None
    again = talk.read(f"{text[: found.start()]}not {places[0]}{text[found.end() :]}", previous)
    return put_as(text, again) if again.query is not None else None


def _places(word: str, lookup: Lookup) -> Iterator[str]:
    """The names of the places of which the word is a word, or the beginning of one."""
    for fact in lookup.base.facts:
        for value in fact.values:
            words = value.label.casefold().split()[1:]
            named = any(one == word or (one.startswith(word) and len(word) > 3) for one in words)
            if named and is_place(fact.id, choices(value.id), lookup):
                yield value.label
