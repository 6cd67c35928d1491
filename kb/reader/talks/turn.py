"""A turn of a talk: words that stand for something said before, and what is remembered for the next turn."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query, Reading
from kb.model.records import Case
from kb.reader.doubts.choice import answer_to_ask
from kb.reader.doubts.lost import with_nothing_lost
from kb.reader.meaning.fits import wearing
from kb.reader.meaning.permits import asked_grant, held
from kb.reader.meaning.placed import told_where
from kb.reader.meaning.query import merge_case
from kb.reader.meaning.spoken import part_meant
from kb.reader.names.lexicon import PERSONAL, Lexicon
from kb.reader.names.spelling import Search
from kb.reader.phrases.english import PHRASES
from kb.reader.phrases.manners import as_it_stands, put_back, without_manners
from kb.reader.question import clean
from kb.reader.talks.framed import frame_of, in_what_case, recently
from kb.reader.talks.talked import Talk, item_alone
from kb.reader.words.sentences import as_written
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_LONGEST = 120
_NONE = Pattern(r"(?i)no [a-z]")
_BOTH = Pattern(
    r"(?:(?:and|but|so|what about|how about|what|if|when|(?:(?:can|may|could) )?(?:i|we) (?:wear|take|"
    r"have|carry|use)) )*"
    r"(?:(?:them )?both(?: of (?:them|those))?(?: (?!of|on|at|together)(\w+))?"
    r"(?: (?:together|at once|at the same time|at one time|at a time|on))*|"
    r"(?:them )?(?:together|at once|at the same time|at one time))"
)
_NO_COUNT = Pattern(
    r"(?:(?:but|and|so) )?why (?:does|do|did|is|was|are) (?:n't |not )?(?:that|it|this|they|those) (?:not )?"
    r"(?:count|apply|matter|hold|help|work|good enough|enough)"
)
_ONE = Pattern(r"(?i)\b(with|without|got|have|has|hold) one\b(?= ?[?.!,]| ?$)")
_THAT = Pattern(r"\b(?:it|its|that|this|one|they|them)\b")
_COND = Pattern(
    r"(?:(?:and|but|even|so|what|or) )*(?:with|without|over|under|if|when|while) "
    r"(?!.*\b(?:may|can|must|do|is|are)\b)"
)
_MORE = Pattern(r"(?i)\b(?:extras?|add(?:ed|itional)?|special|more)\b")
_SURE = Pattern(
    r"(?:(?:and|but|so|ok|oh|hm|wait|what) )*(?:(?:are you|you 're|you are) (?:(?:quite|really|"
    r"absolutely|very|so) )*"
    r"(?:sure|certain|positive)(?: (?:about|of) (?:that|it|this))?|(?:really|seriously|honestly|truly|"
    r"definitely)|"
    r"is (?:that|it|this) (?:really |still |definitely )?(?:so|right|true|correct|certain|a fact|"
    r"final|the case)|"
    r"(?:is (?:that|it|mine) )?(?:far |much )?too (?:long|short|high|low|wide|narrow|big|small|tall|"
    r"far|deep)|"
    r"(?:just |only )?(?:for |this )(?:the )?once|(?:just |only )(?:the once|for (?:now|today|"
    r"a (?:minute|moment|bit)))|"
    r"for (?:sure|certain|real)|(?:i|we|he|she|they) (?:ca|can|may|must|could)(?: ?n?['\u2019]t| not)?|"
    r"still|even (?:so|then|now)|regardless|come again|say again|pardon|"
    r"(?:can|could) you (?:repeat|say) that(?: again)?|(?:not|even)(?: even)? (?:just )?"
    r"(?:(?:a (?:single|small|little|tiny|plain) )?one(?: of (?:them|those))?|at all)|at all)(?: now| then)?"
)
_ME = Pattern(r"(?:(?:and|but|so|what about|how about|for|what of) )*(?:me|myself)(?: then| too| as well)?")
_MUST_BE = Pattern(
    r"(?:(?:and|but|so|then) )*what (?:must|should|does|do|is|may|can|ought) (?:it|they|that|mine)"
    r"(?: (?:have to|supposed to|to|need to))? be(?: then)?"
)
_SAYS = Pattern(r"(?i)\b(?:says?|said|tells?|told|claims?|reckons?|thinks?|insists?|swears?)\b")
_WISHES = Pattern(
    r"(?i)(?:(?:and|but|so) )?(?:they|he|she|we|(?:the|my|our|his|her) \w+(?: \w+)?)"
    r" (?:want|wants|wanted|asked|asks|would like|insists?|prefers?|likes?|loves?|hates?)\b[^?]+$"
)
_HEADED = Pattern(r"([^.!?]{3,50})[.!] +(\S.*)")
_ANYWAY = Pattern(r"(?: (?:anyway|anyhow|exactly|actually|precisely|by the way|though|please))+$")
_SO = Pattern(
    r"(?:(?:and|but|even|what|also) )*(?:if|when|though|where|while) (?:they|it|those|that|mine) "
    r"(?:'re|are|'s|is|were|was) (?:(?:not|n't) )?(\w+)"
)
_DUTY = frozenset({"must", "required", "allowed", "should", "have to"})


def read_turn(
    text: str, *, lexicon: Lexicon, lookup: Lookup, case: Case, search: Search | None = None,
    previous: Reading | None = None,
) -> Reading:  # fmt: skip
    """Read one question as a turn that may go on from `previous`; see `read_question`."""
    talk = Talk(lexicon, lookup, case, search)
    alone, places = without_manners(text, previous is not None)
    reading = _read(alone, previous, talk)
    reading = reading if alone == text else put_back(text, alone, places, reading)
    if previous is not None and (reading.unused or _WISHES.match(text)):
        from kb.reader.talks.people import by_another  # noqa: PLC0415  few turns only tell something

        reading = by_another(text, reading, previous, lookup)
    if reading.unused:
        unused = tuple(as_it_stands(one, alone, places, text) for one in reading.unused)
        reading = msgspec.structs.replace(reading, unused=as_written(unused, text))
    if previous is None or _SAYS.search(text) is None:  # who says something is no part of what is asked
        reading = with_nothing_lost(reading, lookup)
    if reading.query is not None and reading.query.case.facts:
        from kb.reader.pieces.distances import within_the_rules  # noqa: PLC0415  few questions tell a fact

        reading = within_the_rules(reading, lookup)
        if previous is not None:
            from kb.reader.meaning.at_once import of_both, of_the_closed_one  # noqa: PLC0415  only in a talk
            from kb.reader.talks.people import not_of_another  # noqa: PLC0415  as above

            reading = not_of_another(text, of_the_closed_one(reading, lookup), previous, lookup)
            reading = of_both(text, reading, lookup)
            from kb.reader.talks.measured_so import measured_so  # noqa: PLC0415  as above
            from kb.reader.talks.resting import someone_by  # noqa: PLC0415  as above

            reading = measured_so(text, someone_by(text, reading, previous, talk), previous, talk)
    frame = frame_of(reading, previous, lookup)
    if frame is not None and reading.query is not None and reading.query.clause is not None:
        frame = in_what_case(frame, text, previous, talk)
    return msgspec.structs.replace(reading, recent=recently(reading, previous), frame=frame)


def _read(text: str, previous: Reading | None, talk: Talk) -> Reading:
    reading = _added(text, previous, talk) if len(text) <= _LONGEST else None
    if reading is None and "what" in text[:20].lower() and len(text) <= _LONGEST:
        from kb.reader.talks.what_for import what_for  # noqa: PLC0415  few lines ask what a thing is for

        reading = what_for(text, previous, talk)
    if reading is None and "my " in text.lower() and len(text) <= _LONGEST:
        from kb.reader.talks.another import of_own_kind  # noqa: PLC0415  few lines tell what one owns

        reading = of_own_kind(text, talk)
    if reading is None and previous is not None and len(text) <= _LONGEST:
        reading = _gone_on(text, previous, talk)
        if "my " in text.lower() and _THAT.search(text):
            from kb.reader.talks.named_anew import of_its_own_thing  # noqa: PLC0415  few name one's own

            reading = of_its_own_thing(text, reading, previous, talk)
    reading = reading or talk.read(text, previous)
    return _opened(text, talk) or reading if reading.query is None and previous is None else reading


def _opened(text: str, talk: Talk) -> Reading | None:
    """ "Deputy Head Keeper speaking. ...", "ok, quick one: ...": a first question as one further on."""
    from kb.reader.talks.patter import without_patter  # noqa: PLC0415  most questions are read as they stand

    bare = without_patter(text) if len(text) <= _LONGEST else None
    if bare is None or (_NONE.match(text) and not _NONE.match(bare)):
        return None  # "no machinery running on the pier" answers nothing
    again = talk.read(bare, None)
    return msgspec.structs.replace(again, question=text, spans=()) if again and again.query else None


def _added(text: str, previous: Reading | None, talk: Talk) -> Reading | None:
    """ "At a funeral, what's the extra?"."""
    if _MORE.search(text) is None:
        return None
    from kb.reader.talks.added import added  # noqa: PLC0415  few ask what is worn besides

    return added(text, previous, talk)


def _gone_on(text: str, previous: Reading, talk: Talk) -> Reading:
    """A turn read by what was said before it, without the words that only tie it to that."""
    from kb.reader.talks.another import in_that_outfit, what_is_on  # noqa: PLC0415  only in a talk
    from kb.reader.talks.cropped import cropped  # noqa: PLC0415
    from kb.reader.talks.either_of import either_of  # noqa: PLC0415
    from kb.reader.talks.excused import excused  # noqa: PLC0415
    from kb.reader.talks.further import put_as  # noqa: PLC0415
    from kb.reader.talks.granted import said_so  # noqa: PLC0415
    from kb.reader.talks.patter import loosely, of_another_matter, without_patter  # noqa: PLC0415
    from kb.reader.talks.people import MYSELF, by_their_name, of_somebody_else  # noqa: PLC0415
    from kb.reader.talks.resting import fair_again, stopped, worn_with_it  # noqa: PLC0415
    from kb.reader.talks.settled import with_its_part  # noqa: PLC0415
    from kb.reader.talks.supposed import holding_it  # noqa: PLC0415

    anew = of_another_matter(text)
    if anew is not None:
        return put_as(text, _begun_anew(anew, previous, talk))
    if (again := holding_it(text, previous, talk, _gone_on)) is not None:
        return again
    again = excused(text, previous, talk, _further) or either_of(text, previous, talk)
    again = again or worn_with_it(text, previous, talk) or fair_again(text, previous, talk)
    again = again or stopped(text, previous, talk) or cropped(text, previous, talk)
    again = again or said_so(text, previous, talk)
    if again is not None:
        return again
    if _SAYS.search(text) or "heard" in text or "thought" in text:
        from kb.reader.talks.gainsaid import gainsaid  # noqa: PLC0415  few turns tell what others say

        if (again := gainsaid(text, previous, talk)) is not None:
            return again
    previous, talk = of_somebody_else(text, previous, talk)
    topic = _HEADED.fullmatch(text)
    if topic is not None and (of_it := _headed(topic.group(1), topic.group(2), previous, talk)) is not None:
        return put_as(text, of_it)
    named = in_that_outfit(by_their_name(text, previous, talk), previous, talk)
    named = with_its_part(named, previous, talk)
    if " one" in named:
        from kb.reader.talks.named_anew import the_one_on  # noqa: PLC0415  few lines call it "the one on ..."

        named = the_one_on(named, previous, talk)
    named, previous = what_is_on(named, previous, talk)
    said = loosely(MYSELF.sub("", named), previous, talk)
    reading = _further(said, previous, talk)
    bare = without_patter(said) if reading.query is None else None
    if bare is not None and (again := _further(bare, previous, talk)).query is not None:
        said, reading = bare, again
    if reading.query is None and (parted := _by_parts(bare or said, reading, previous, talk)) is not None:
        return put_as(text, parted)
    if " no " in f" {text[:40].casefold()}":
        from kb.reader.talks.ended import denied  # noqa: PLC0415  few turns deny

        reading = denied(text, reading, previous, talk)
    return reading if said == text or reading.ask is not None else put_as(text, reading)


def _by_parts(text: str, missed: Reading, previous: Reading, talk: Talk) -> Reading | None:
    """A turn of several parts, each read as one; None where a thing is asked back that can be chosen."""
    if missed.ask is not None and (missed.ask.fact != "item" or missed.ask.choices):
        return None
    from kb.reader.talks.piecemeal import piecemeal  # noqa: PLC0415  few turns are not understood

    return piecemeal(text, previous, talk, _further)


def _headed(head: str, rest: str, previous: Reading, talk: Talk) -> Reading | None:
    """ "The service cap, then. Where do I carry it?": the rest, after the thing that is named by itself."""
    item, before = item_alone(head, talk.lexicon, talk.lookup), previous.query
    if item is None or not _THAT.search(rest.casefold()):
        return None
    case = talk.case if before is None else before.case
    less = tuple((f, v) for f, v in case.facts if f != f"worn:{item}")
    case = msgspec.structs.replace(case, facts=less, alone=False)
    asked = Query(kind="may", items=(item,), aspect=wearing((item,), talk.lookup), case=case)
    reading = _gone_on(rest, talk.made(f"The {talk.lookup.items[item].label}?", asked), talk)
    return reading if reading.query is not None and reading.query.items[:1] == (item,) else None


def _begun_anew(text: str, previous: Reading, talk: Talk) -> Reading:
    """A question of another matter: of the same person in the same rig, but not of where or when that was."""
    query, known = previous.query, {fact for fact, _ in talk.case.facts}
    said = query.case.facts if query is not None else ()
    kept = {f: v for f, v in said if talk.lookup.facts[f].family in (*PERSONAL, "rig") and f not in known}
    case = merge_case(talk.case, kept, None, False, talk.lookup)
    reading = msgspec.structs.replace(talk, case=case).read(text, None)
    if reading.query is not None and any(span.role in ("item", "clause") for span in reading.spans):
        return reading
    again = _further(text, previous, talk)
    return again if again.query is not None or reading.ask is None else reading


def _further(text: str, previous: Reading, talk: Talk) -> Reading:
    """A turn read by what was said before it."""
    from kb.reader.talks.corrected import corrected  # noqa: PLC0415  only in a talk
    from kb.reader.talks.elliptic import elliptic, extent, is_all, lacking  # noqa: PLC0415
    from kb.reader.talks.felt import felt  # noqa: PLC0415
    from kb.reader.talks.further import bare_words, in_full, is_thanks, understood_otherwise  # noqa: PLC0415
    from kb.reader.talks.itself import of_the_thing_itself  # noqa: PLC0415
    from kb.reader.talks.meant import filled  # noqa: PLC0415
    from kb.reader.talks.of_its_kind import anothers_part  # noqa: PLC0415
    from kb.reader.talks.refined import refined  # noqa: PLC0415
    from kb.reader.talks.settled import not_the_thing  # noqa: PLC0415
    from kb.reader.talks.supposed import without_slight  # noqa: PLC0415
    from kb.reader.talks.thereupon import on_its_side, today_again, told_of_another  # noqa: PLC0415
    from kb.reader.talks.unmoved import unmoved  # noqa: PLC0415

    previous = today_again(text, previous, talk)
    if answer_to_ask(text, previous, talk.lexicon) is None and is_thanks(text):
        return Reading(question=text, abstain=Abstain(reason="There is no question in this."))
    full = in_full(text) or on_its_side(text, previous, talk) or not_the_thing(text, talk) or text
    said = " ".join(t.low for t in tokenize(clean(full)) if t.low[0].isalnum() or t.low[0] in "'n")
    said = _ANYWAY.sub("", said)
    reading = _of_what_was_said(text, said, previous, talk) or filled(text, previous, talk)
    reading = reading or anothers_part(text, previous, talk)
    if reading is None and previous.query is not None and previous.query.clause is not None:
        from kb.reader.talks.granted import of_a_clause  # noqa: PLC0415  as above

        reading = of_a_clause(text, bare_words(full), previous, talk)
        reading = reading or told_of_another(text, previous, talk)
    listed = previous.query is not None and previous.query.kind == "list"
    replies = previous.ask is None or answer_to_ask(text, previous, talk.lexicon) is not None
    if previous.frame is not None and reading is None and replies and (not listed or _THAT.search(said)):
        previous = msgspec.structs.replace(previous, query=previous.frame)
    if reading is None and (reading := extent(text, previous.query, talk)) is not None:
        full = text
    reading = reading or lacking(text, previous, talk) or elliptic(full, previous, talk)
    reading = reading or felt(text, previous, talk) or corrected(full, previous, talk)
    reading = reading or unmoved(text, previous, talk)
    reading = reading or talk.read(full, previous)
    if previous.query is not None and (part := part_meant(reading.query, previous, talk.lookup)) is not None:
        of_part = msgspec.structs.replace(previous.query, items=(part,))
        reading = talk.read(full, msgspec.structs.replace(previous, query=of_part))
    reading = without_slight(text, reading, previous, talk)
    if reading.query is None:
        reading = understood_otherwise(full, reading, previous, talk) or reading
    if reading.query is None or (reading.query.clause is not None and "?" not in text):
        from kb.reader.talks.resting import resting  # noqa: PLC0415  few turns are not understood

        reading = resting(text, previous, talk) or reading
    reading = of_the_thing_itself(text, refined(text, reading, previous, talk), previous, talk)
    open_item = _asks_item(text, previous, talk) and _COND.match(said) is not None
    if previous.query is None and reading.query and (open_item or is_all(reading.query, said)):
        return Reading(question=text, ask=Ask(fact="item", prompt="Which item is asked about?"))
    if reading.query is not None and (told := told_where(reading.query, talk.lookup)) is not reading.query:
        return talk.made(text, told)
    if full == text or reading.ask is not None:
        return reading
    return msgspec.structs.replace(reading, question=text, spans=())


def _asks_item(text: str, previous: Reading, talk: Talk) -> bool:
    """Whether a turn leaves open which thing is meant, as was asked."""
    asks = previous.ask is not None and previous.ask.fact == "item"
    return asks and answer_to_ask(text, previous, talk.lexicon) is None


def _of_what_was_said(text: str, said: str, previous: Reading, talk: Talk) -> Reading | None:
    """A turn that only makes sense by what was said: "both", "and if it is?", "who grants it?"."""
    if (both := _BOTH.fullmatch(said)) is not None:
        from kb.reader.talks.meant import both_of  # noqa: PLC0415  only in a talk

        return both_of(text, both.group(1), previous, talk)
    before = previous.query
    if before is None:
        return None
    from kb.reader.talks.another import of_another, the_other  # noqa: PLC0415  only in a talk
    from kb.reader.talks.ended import ended  # noqa: PLC0415  as above
    from kb.reader.talks.in_its_stead import in_its_stead  # noqa: PLC0415  as above
    from kb.reader.talks.people import as_asked, people_asked  # noqa: PLC0415  as above
    from kb.reader.talks.resting import said_of_it, worn_again  # noqa: PLC0415  as above
    from kb.reader.talks.thereupon import if_so, not_so, without_that  # noqa: PLC0415  as above

    again = _said_again(text, said, before, previous, talk) or without_that(text, said, before, talk)
    again = again or worn_again(text, said, before, talk)
    again = again or not_so(text, before, talk) or ended(text, before, talk)
    if again is not None:
        return again
    so, asked = _SO.fullmatch(said), previous.frame or before
    if so is not None and asked.items and PHRASES.get((so.group(1),)) in _DUTY:
        return said_of_it(text, so.group(1), asked, talk)
    if before.kind in ("may", "must") and (whom := people_asked(text, talk.lexicon, talk.lookup)):
        return as_asked(talk.read(f"and what about {whom}?", previous), text, talk)
    granted = _of_a_grant(text, said, before, previous, talk)
    if granted is not None:
        return granted
    beside = in_its_stead(text, said, previous, talk) or of_another(text, said, before, talk)
    beside = beside or the_other(text, previous, talk)
    if beside is not None:
        return beside
    supposed = if_so(text, said, before, talk)
    if supposed is not None:
        return supposed
    one = held(before, talk.lookup)
    if len(one) == 1 and _ONE.search(text):
        label = talk.lookup.facts[one[0]].label
        return talk.read(_ONE.sub(rf"\1 the {label}", text), previous)
    return None


def _said_again(text: str, said: str, before: Query, previous: Reading, talk: Talk) -> Reading | None:
    """ "Are you sure?", "what must it be?", "no, 18": the question before, as it stands or nearly so."""
    from kb.reader.meaning.renumbered import renumbered  # noqa: PLC0415  only in a talk

    if (other := renumbered(text, previous.question, before, talk.lookup)) is not None:
        return talk.made(text, other)
    from kb.reader.talks.renumbered import with_the_unit  # noqa: PLC0415  as above
    from kb.reader.talks.thresholds import other_amount, threshold  # noqa: PLC0415  as above

    told = other_amount(text, before, talk) or threshold(text, previous.frame or before, talk)
    told = told or with_the_unit(text, previous, talk)
    if told is not None:
        return told
    if _MUST_BE.fullmatch(said) and talk.lookup.aspects[before.aspect].kind != "act":
        return talk.made(text, msgspec.structs.replace(before, kind="how", value=None, polarity="do"))
    if _ME.fullmatch(said):
        from kb.reader.talks.people import of_me  # noqa: PLC0415  as above

        return talk.made(text, of_me(before, talk))
    if _SURE.fullmatch(said) and before.kind not in ("how_many", "compare"):
        return talk.made(text, before)
    return talk.read("Why?", previous) if _NO_COUNT.fullmatch(said) else None


def _of_a_grant(text: str, said: str, before: Query, previous: Reading, talk: Talk) -> Reading | None:
    """ "Who grants it?", "for how long?", "the Matron has given me one"."""
    if " me " in said or " us " in said:
        from kb.reader.talks.handed import as_holder  # noqa: PLC0415  few turns tell who gave what

        told = as_holder(text, talk.lookup)
        if isinstance(told, Abstain):
            return Reading(question=text, abstain=told)
        if told != text:
            return talk.read(f"and with {told.removeprefix('I have ')}?", previous)
    grant = asked_grant(said, before, talk.lookup)
    if isinstance(grant, Abstain):
        return Reading(question=text, abstain=grant)
    if grant is not None:
        return Reading(question=text, ask=grant) if isinstance(grant, Ask) else talk.made(text, grant)
    if "for how long" in said or "how long for" in said:  # no length of the thing is asked for
        return Reading(question=text, abstain=Abstain(reason="The books do not say for how long."))
    return None
