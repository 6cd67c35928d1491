"""An answer without words that nothing explains, where the clauses bear it out: two witnesses that agree.

One is what the rest of the question says to the reader. The other is the text of the clauses: of all in
force, the one that carries the answer must be what the whole question, with the words that were not read,
speaks of most, and every other must have clearly less. Words that may be a thing, an amount, a denial, a
day or somebody's leave never go; within what asks, no word that may bear on how a thing is worn does.

Less is asked of an answer that is the same whatever else may be so: no circumstance can turn it. Then what
was not read must only not stand where the thing that is asked about is named: it may be another thing.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Sequence
from typing import NamedTuple

import msgspec

from kb.answer.alike import usual_verdict
from kb.answer.common import replaced
from kb.answer.speaking import ranked_clauses
from kb.keywords import analyse
from kb.left_out import ASKS, SUBJECTS, asking_part, describes_it, frees_nothing, is_of_another, places_of
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Reading
from kb.reader.recast.telling import LIGHT, clause_words, word_level
from kb.reader.stories.idle import STATES, is_one_of
from kb.reader.words.bearing import BEARING, WORN
from kb.reader.words.everyday import DOINGS, OCCASIONS, OTHERS, PLACES
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.tokens import Token, stems, tokenize
from kb.text import yes_or_no

Read = Callable[[str], Reading]
Tell = Callable[[Reading], tuple[Answer, ...]]
_CLEARLY = 0.8
"""Of the score of the clause that carries the answer, what every other must stay below."""
_ROUNDS, _MOST = 2, 8
_OPEN = word_set("what which who whom whose how where when why")
_NEVER = word_set("""
    no not n't never nor neither none nobody nothing even except unless without than more less most least
    another other both either too enough very instead rather hardly barely scarcely
    break breaks breaking broke broken breach breached problem problems issue trouble wrong
    granted grant grants waiver waivers exempt permission permit permits agreed approved signed
    from away up down off out over under in on inside outside behind above below between against ago left
""")
"""Words that turn or bound what is said, that tell a fault, and those of leave and of where a thing sits."""
_LENDING = word_set("lend lends lending lent loan loaned borrow borrows borrowing borrowed")
_BOUNDS = word_set("only whole happen happened happens changed change pass") | _LENDING
"""Words that bound what is asked, or ask for something else than for what holds."""
_DENYING = word_set("not n't never no")
_REASONS = word_set("because since thanks due owing given as")
"""What follows tells why somebody should be let off, and may be what the books let one off for."""
_EXCUSES = _REASONS - {"given", "as"} | word_set(
    "reason reasons grounds sake cause dispensation exemption leave"
)
_LEADS = word_set("if because cos when while whilst since though although as so")
_REMARKING = word_set("it they i we he she its im ive theyre that this only just")
_TURNING = (
    word_set("""
    no not n't never nor neither none nothing nobody hardly barely rarely seldom except unless without
    instead rather but or another other second too enough
""")
    | _LENDING
)
"""Words that make what is asked of it another thing, or nothing."""
_RELATIVE, _REACH = word_set("that which who whose whom"), 4
_OTHERS = word_set("he she they him them")
_SMALL = r"(?:\b(?:at|in|on|for|with|to|the|my|your|his|her|our|their|a|an|by|from|of)\s+)*"
_FIRM = frozenset(
    {("may", "do", "prohibited", "No"), ("may", "not", "required", "No"), ("must", "do", "required", "Yes")}
)
"""What is asked, and the verdict and word with which it is so whatever else holds."""
_DUE = frozenset((word, "to") for word in ("have", "need", "got", "allowed", "ok", "supposed", "required"))
_TOLD = frozenset({"required", "prohibited", "permitted", "not_required", "conditional"})


def borne_out(
    reading: Reading, as_of: datetime.date, read: Read, answer: Tell, lookup: Lookup
) -> Answer | None:
    """The answer to a question without the words that stopped it; None where anything speaks against it."""
    gone, again = list[str](), reading
    text = reading.question
    for _ in range(_ROUNDS):
        words = again.abstain.words if again.abstain is not None else ()
        if not words or len(gone) + len(words) > _MOST or _halves_a_word(text, words):
            return None
        gone += words
        text = _without(text, words)
        again = read(text)
        if again.abstain is None:
            break
    if again.carried and not _OTHERS.isdisjoint(token.low for token in tokenize(reading.question)):
        return None  # what was said of one is not known of another
    if again.abstain is not None:
        return None
    strict, harmless = _may_go(reading, tuple(gone)), _is_harmless(reading, gone)
    aside = _is_aside(reading, tuple(gone))
    idle = _EXCUSES.isdisjoint(_lows(reading)) and frees_nothing(reading, gone)
    if not (strict or harmless or aside or idle):
        return None
    (told, *more) = answer(again)
    query = told.reading.query
    if more or query is None or told.outcome != "answer" or is_of_another(reading, query, gone):
        return None
    seen = _Seen(reading, told, tuple(gone), as_of, lookup)
    if not (
        (strict and _is_witnessed(seen))
        or (harmless and _is_settled(seen))
        or (aside and _is_firm(seen))
        or (idle and _is_banned(seen))
        or _is_unsaid(seen)
    ):
        return None
    asked = msgspec.structs.replace(
        told.reading, question=reading.question, spans=reading.spans, unused=(*gone, *told.reading.unused)
    )
    return replaced(told, question=reading.question, reading=asked)


class _Seen(NamedTuple):
    """A question, its answer without the words `gone`, and what it is held against."""

    reading: Reading
    told: Answer
    gone: tuple[str, ...]
    as_of: datetime.date
    lookup: Lookup


def _is_witnessed(seen: _Seen) -> bool:
    """Whether the clauses bear out an answer of yes or no that may depend on more."""
    told, query = seen.told, seen.told.reading.query
    if query is None or query.kind not in ("may", "must") or not query.items:
        return False
    if told.verdict not in _TOLD or not yes_or_no(told.headline):
        return False
    if told.verdict == "conditional" and not all(
        _is_around(word, seen.reading.question) for word in seen.gone
    ):
        return False  # the rest may tell what the answer depends on: that a dentist asked for it
    return not _stands_in_what_is_cited(seen) and all(_speaks_of(seen))  # else the clause may turn on it


def _is_harmless(reading: Reading, gone: Sequence[str]) -> bool:
    """Whether no word counts, turns, bounds or excuses anything: what is settled stays so without them."""
    if not _EXCUSES.isdisjoint(token.low for token in tokenize(reading.question)):
        return False
    for word in gone:
        for token in tokenize(word):
            forms = {token.low, *stems(token.low)}
            if any(char.isdigit() for char in token.low) or not forms.isdisjoint(NUMBER_WORDS):
                return False
            if not forms.isdisjoint(_NEVER) or not forms.isdisjoint(_OPEN) or not forms.isdisjoint(_BOUNDS):
                return False
    return True


def _is_aside(reading: Reading, gone: tuple[str, ...]) -> bool:
    """Whether words stand only in what is told, or in a reason or remark that ends the question.

    "Because it was my grandad's", "if it's switched off", "it's only small".
    """
    tokens = tokenize(reading.question)
    first, last = asking_part(reading.question, tokens)
    thing = min((span.start for span in reading.spans if span.role == "item"), default=len(reading.question))
    if not _EXCUSES.isdisjoint(token.low for token in (*tokens[:first], *tokens[last:])):
        return False
    for place in places_of(tokens, gone):
        token = tokens[place]
        if not _OPEN.isdisjoint((token.low, *stems(token.low))) or token.low in _TURNING:
            return False
        told = not first <= place < last
        if told and not {token.low, *stems(token.low)}.isdisjoint(_NEVER | (_BOUNDS - {"only"})):
            return False
        if not told and not any(
            _leads_aside(tokens, i) and tokens[i].start > thing for i in range(first, place + 1)
        ):
            return False
    return True


def _leads_aside(tokens: tuple[Token, ...], place: int) -> bool:
    """Whether a reason, a condition or a remark on it begins there."""
    low = tokens[place].low
    after = tokens[place + 1].low if place + 1 < len(tokens) else ""
    return low in _LEADS or (low in (",", "-", "–") and after.partition("'")[0] in _REMARKING)


def _is_firm(seen: _Seen) -> bool:
    """Whether it is forbidden or required whatever else is so, and said to be: no reason can turn that."""
    told, query = seen.told, seen.told.reading.query
    if query is None or query.value is not None or not query.items or not _wants_yes_or_no(seen.reading):
        return False
    return (query.kind, query.polarity, told.verdict, yes_or_no(told.headline)) in _FIRM


def _is_banned(seen: _Seen) -> bool:
    """Whether a thing is forbidden whatever else is so, and said to be, to who asks for yes or no.

    Or whatever is ordinarily so, where the answer says what is out of the ordinary.
    """
    told, query = seen.told, seen.told.reading.query
    if query is None or query.value is not None or not query.items:
        return False
    if not _lows(seen.reading).isdisjoint(_OPEN - {"when"}):
        return False
    asked = (query.kind, query.polarity, yes_or_no(told.headline))
    if asked == ("may", "do", "No"):
        return usual_verdict(told, seen.lookup) == "prohibited"
    tokens = tokenize(seen.reading.question)
    which = any(_is_beside(seen.reading, tokens, place) for place in places_of(tokens, seen.gone))
    return (*asked[:2], told.verdict, asked[2]) in _FIRM and not which  # a red one need not be worn


def _is_unsaid(seen: _Seen) -> bool:
    """Whether it is asked how often a thing is cared for, of whose care nothing is said at all."""
    told, query = seen.told, seen.told.reading.query
    often = all(word.casefold() in ("often", "frequently") for word in seen.gone)
    return often and query is not None and query.aspect == "care" and told.verdict == "silent"


def _is_settled(seen: _Seen) -> bool:
    """Whether nothing that was left out can matter: the answer is the same in all cases.

    None of it may stand between "may I" and the thing, where it could be the thing; and where it is only
    permitted, or the question speaks as much of another clause, none may stand after it either.
    """
    reading, told = seen.reading, seen.told
    says = bool(yes_or_no(told.headline))
    if told.verdict in ("conditional", "silent", "conflict") or (not says and _wants_yes_or_no(reading)):
        return False
    where = _standing(reading, seen.gone)
    before, after = "before" in where, "after" in where
    if not before and told.verdict == "prohibited" and says:
        return not (_is_of_the_rest(told) and describes_it(reading, seen.gone))
    if (before or after) and _has_odd_words(seen.gone):
        return False
    most, clearly = _speaks_of(seen)
    told_of = _stands_in_what_is_cited(seen)
    weak = told.verdict not in ("prohibited", "required")
    if not most or (weak and (before or (after and not told_of))):
        return False
    query = told.reading.query
    facts = query.case.facts if query is not None else ()
    return (not before and (clearly or bool(facts))) or (clearly and told_of and not _has_the_act(seen))


def _is_of_the_rest(told: Answer) -> bool:
    """Whether it is told of all of a kind but one: "the ring other than a wedding band"."""
    return " other than " in told.reading.text or "that no rule names" in told.reading.text


def _lows(reading: Reading) -> set[str]:
    return {token.low for token in tokenize(reading.question)}


def _has_the_act(seen: _Seen) -> bool:
    """Whether what is asked to be done was left out: "do I have to hold my hat"."""
    tokens = tokenize(seen.reading.question)
    return any(_is_the_act(seen.reading, tokens, place) for place in places_of(tokens, seen.gone))


def _has_odd_words(gone: Sequence[str]) -> bool:
    """Whether a word is no common one: it may be a slip in something that matters, "gilt end inbord"."""
    from kb.reader.words.common_words import COMMON_WORDS  # noqa: PLC0415  few questions come to this

    tokens = (token for token in tokenize(" ".join(gone)) if token.low.isalpha())
    return any(COMMON_WORDS.isdisjoint({token.low, *stems(token.low)}) for token in tokens)


def _wants_yes_or_no(reading: Reading) -> bool:
    """Whether the last sentence asks for yes or no: none of its words asks for anything else."""
    tokens = tokenize(reading.question)
    first, last = asking_part(reading.question, tokens)
    return _OPEN.isdisjoint(token.low.partition("'")[0] for token in tokens[first:last])


def _standing(reading: Reading, gone: Sequence[str]) -> set[str]:
    """Where words stand: in what is told, or in what asks, before the thing or after it."""
    text, tokens = reading.question, tokenize(reading.question)
    first, last = asking_part(text, tokens)
    thing = min((span.start for span in reading.spans if span.role == "item"), default=len(text))
    return {
        "told" if not first <= place < last else "before" if tokens[place].start < thing else "after"
        for place in places_of(tokens, tuple(gone))
    }


def _speaks_of(seen: _Seen) -> tuple[bool, bool]:
    """Whether the clause that the question speaks of most carries the answer; whether it clearly is that."""
    ranked = ranked_clauses(seen.reading, seen.as_of, seen.lookup)
    cited = {citation.clause for citation in seen.told.citations}
    if not ranked or ranked[0][0] not in cited:
        return False, False
    others = [score for clause, score in ranked if clause not in cited]
    return True, not others or others[0] <= ranked[0][1] * _CLEARLY


def _stands_in_what_is_cited(seen: _Seen) -> bool:
    """Whether a word that was left out, and says something, stands in a clause that carries the answer."""
    told_by = [clause_words(seen.lookup.clauses[citation.clause]) for citation in seen.told.citations]
    lemmas = [lemma for lemma in analyse(" ".join(seen.gone)) if not _is_light(lemma)]
    return any(word_level(lemma, words) for words in told_by for lemma in lemmas)


def _is_light(lemma: str) -> bool:
    return lemma in LIGHT or is_one_of(lemma, DOINGS)


def _may_go(reading: Reading, words: tuple[str, ...]) -> bool:
    text = reading.question
    tokens = tokenize(text)
    lows = [token.low for token in tokens]
    if next((low for low in lows if low not in ("and", "so", "but", "well", "ok", ",")), "") in _OPEN:
        return False
    first, last = asking_part(text, tokens)
    thing = min((span.start for span in reading.spans if span.role == "item"), default=len(text))
    for place in places_of(tokens, words):
        asks = first <= place < last
        if not _is_free(tokens, place, asks) or _is_beside(reading, tokens, place):
            return False
        if (
            asks
            and tokens[place].start < thing
            and (_is_the_act(reading, tokens, place) or not _is_of_life(tokens[place].low))
        ):
            return False  # "a camera on the helmet": it may be the thing that is asked of
    return True


def _is_the_act(reading: Reading, tokens: tuple[Token, ...], place: int) -> bool:
    """Whether a word is what somebody may do to the thing: "can I answer my mobile"."""
    due = place > 1 and (tokens[place - 2].low, tokens[place - 1].low) in _DUE
    if place < 2 or not (due or (tokens[place - 1].low in SUBJECTS and tokens[place - 2].low in ASKS)):
        return False
    end, things = tokens[place].end, (span.start for span in reading.spans if span.role == "item")
    between = (tokenize(reading.question[end:start]) for start in things if start > end)
    return any(all(token.low in SUBJECTS for token in words) for words in between)


def _is_around(word: str, text: str) -> bool:
    """Whether a word tells how it is, where or at what occasion, and so nothing of anybody's leave."""
    low = word.casefold()
    so = re.search(rf"\bit(?:['’]s| is| was| feels) (?:\w+ )?{re.escape(low)}\b", text.casefold())
    return low in STATES or so is not None or is_one_of(low, PLACES, OCCASIONS)


def _is_of_life(low: str) -> bool:
    return is_one_of(low.split("'")[0], OTHERS, DOINGS)


def _is_free(tokens: tuple[Token, ...], place: int, asks: bool) -> bool:
    """Whether a word counts, denies and grants nothing, and in what asks bears on nothing worn either."""
    token = tokens[place]
    forms = {token.low, *stems(token.low)}
    clause = next((i for i in range(place, -1, -1) if tokens[i].low in ",.?!;:"), -1)
    if not _REASONS.isdisjoint(other.low for other in tokens[clause + 1 : place]):
        return False
    if any(char.isdigit() for char in token.low) or not forms.isdisjoint(NUMBER_WORDS):
        return False
    if not _NEVER.isdisjoint(forms) or (place and tokens[place - 1].low in _DENYING):
        return False
    if asks:
        if not _RELATIVE.isdisjoint(other.low for other in tokens[max(0, place - _REACH) : place]):
            return False  # "the medal that my grandfather gave me"
        named = token.text[:1].isupper() and place > 0 and tokens[place - 1].low not in ".?!"
        return not named and BEARING.isdisjoint(forms) and WORN.isdisjoint(forms)
    return True


def _is_beside(reading: Reading, tokens: tuple[Token, ...], place: int) -> bool:
    """Whether a word stands right before or after a thing, or before a fact's name: "the shop floor".

    It may then say which one, or name another.
    """
    start, end = tokens[place].start, tokens[place].end
    text = reading.question
    return any(
        (span.role in ("item", "fact") and text[end : span.start].isspace())
        or (span.role == "item" and text[span.end : start].isspace())
        for span in reading.spans
    )


def _halves_a_word(text: str, words: Sequence[str]) -> bool:
    """Whether a word is half of one with a hyphen: a "short-sleeved" top is not the sleeved one."""
    return any(re.search(rf"\w-{re.escape(word)}\b|\b{re.escape(word)}-\w", text) for word in words)


def _without(text: str, words: tuple[str, ...]) -> str:
    for word in words:
        text = re.sub(rf"{_SMALL}(?<!\w){re.escape(word)}(?!\w)", " ", text, count=1)
    return " ".join(text.split())
