"""Claims that somebody makes, and the short questions that ask whether they hold: "... Is that so?".

A claim has three parts: who makes it and how ("my deputy insists that"), what is claimed, and how it is put
in doubt ("I don't think so. Which?"). The first and the last are grammar and classes of words; what is
between them is read as a question of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Span
from kb.reader.names.lexicon import PERSONAL
from kb.reader.pieces.ordered import HEALERS
from kb.reader.pieces.reported import SAYING
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern

_SAYING = SAYING | word_set("""
    saying claim claiming think thought reckon reckoned insist insisted believe believed maintain
    maintained argue argued swear swore tell tells told telling hear heard read reads assure assures
    assured convinced certain sure adamant announce announces announced declare declares declared
    mention mentions mentioned suggest suggests suggested state states stated warn warns warned explain
    explains explained inform informs informed promise promises promised shout shouts shouted has rumour
    rumor word gossip apparently seemingly supposedly allegedly
""")
_HEARERS = word_set("me us him her them everyone everybody people")
_VERDICTS = word_set("""
    forbidden banned prohibited right wrong true false correct incorrect ok okay fine alright allowed
    permitted permissible legal illegal lawful unlawful proper acceptable accurate valid kosher legit
    trouble breach rule rules order regulations regulation book books problem pass passes muster stop
    stopped complain complains complaint break broke broken breaking offence guilty excused good enough
    hold holds stand stands water against happen happens sense so fair bounds limits limit tolerance
    line serious rubbish nonsense tosh mistaken joking kidding lying fibbing having spec rights let
    allow permit forbid regs regulation dress code decent fault faults clear charge
""")
_FRAME = word_set("""
    is it that this he she they i we you him her them me us am are was were be been do does did have has
    had will would can could may might must shall should not n't 's 're 'll 'd isn't the a an or and but
    so then really actually still quite any anything anyone anybody somebody nothing with in of to out
    within by there all yes no on what how about as my his her their our for if just at too even ever
    now go going get got getting be being think thinks reckon tell told say says case honestly , - me
    much far up who which or not talking telling make makes
""")
_WHO = word_set("""
    officer boss skipper chief mate lad lads cook sergeant inspector captain chap bloke man woman lady guy boy
    girl friend sister brother wife husband uncle aunt father mother dad mum colleague instructor storekeeper
""")
_LONGEST = 12
_FURTHEST = 9
_NOT_TO = ("not", "to")


def asks_whether_so(lows: Sequence[str]) -> bool:
    """Whether a sentence only asks if what was said is so: "is he right?", "fine?", "did I break a rule?"."""
    words = [low for place, low in enumerate(lows) if low != "," and not (place and low in _WHO)]
    return (
        0 < len(words) <= _LONGEST
        and any(low in _VERDICTS for low in words)
        and all(low in _VERDICTS or low in _FRAME for low in words)
    )


def claims_something(lows: Sequence[str]) -> bool:
    """Whether a stretch says that somebody says or thinks something: "he swears that ..."."""
    return any(_says(tuple(lows), place) for place in range(len(lows)))


def _says(lows: tuple[str, ...], place: int) -> bool:
    """Whether a word is one of saying: "he says", "rumour has it", not "he has"."""
    if lows[place : place + 2] == ("told", "off"):
        return False
    return lows[place] in _SAYING and (lows[place] != "has" or lows[place + 1 : place + 2] == ("it",))


def claim_starts(lows: Sequence[str]) -> Iterator[int]:
    """Where what is claimed may begin: after each word of saying, the last first, and at the start.

    Between the word and what is said there may be who heard it, and how and when: "was told by the skipper
    the other day that ...".
    """
    for place in range(len(lows) - 2, -1, -1):
        if tuple(lows[place : place + 2]) == ("according", "to") and "," in lows[place : place + _FURTHEST]:
            yield lows.index(",", place) + 1
        if not (_says(tuple(lows), place) and re.match(_TOLD_ONE, " ".join(lows[place:]))):
            continue
        that = next(
            (n for n in range(place + 1, min(place + _FURTHEST, len(lows) - 1)) if lows[n] == "that"), 0
        )
        if that:
            yield that + 1
        start = place + 1
        start += lows[start] in _HEARERS
        start += start < len(lows) and lows[start] in (",", "it")
        rest = tuple(lows[start : start + 2])
        if rest and rest[0] not in ("that", "to") and rest != _NOT_TO:
            yield start
    yield 0


# Below, a sentence is its words with spaces between them, commas and dashes as words of their own.
_FINITE = (
    r"(?:is|are|was|were|am|be|'s|'re|'m|may|can|must|should|could|would|will|shall|might|do|does|did|has|have"
    r"|had|wears?|wearing|wore|carry|carries|if|when|while|because|that|which|who|whom|what|where|how|why"
    r"|whether|wants?|wish|likes?|needs?|hopes?|tries|trying|nobody|none|no|not|n't|never|orders?|book|rules?|notice|manual|clause|regulations?|[,–—-])"
)
_SOMEBODY = rf"(?:(?:that|this) )?(?:(?!{_FINITE} )[\w'&-]+ ){{1,8}}?(?:, [^,]+ , )?"
_HELPING = (
    r"(?:(?:has|have|had|'s|'ve|'d|is|are|was|were|'re|'m|am|would|could|will|been|being|keeps?|kept|always"
    r"|still|just|also|both|all|now|only|even|actually|once|often|firmly|quite|very|so|pretty|fairly|really"
    r"|certainly|going|(?:led|given|made|happens?|tends?|inclined|used|seems?|had) to) )*"
)
_SAYS = (
    r"(?:(?:say|think|claim|reckon|insist|believe|maintain|argue|swear|tell|hear|assure|convince"
    r"|announce|declare|mention|suggest|warn|explain|inform|promise|shout|teach|assume|suppose|presume"
    r"|understand|complain|grumble|mutter|repeat|preach|imagine|fancy|expect|figure|conclude|bet|remind"
    r"|advise)(?:s|es|d|ed|ing)?|gather|(?:argu|assur|convinc|announc|declar|promis|assum|suppos|presum|imagin|figur"
    r"|conclud|believ|advis)ing|swore|sworn|said|thought|told|heard|taught|understood|positive|sure|certain"
    r"|convinced|adamant|(?:have|having) it|under the (?:impression|illusion)|going (?:round|about)"
    r"|doing the rounds|put(?= to (?:me|us|him|her|them)\b)|making the rounds|in no doubt"
    r"|of the (?:opinion|view|belief))"
)
_WITH_THAT = (
    r"(?:holds?|held|feels?|felt|knows?|knew|reads?|finds?|found|pointed out|points out|writes?|wrote"
    r"|remembers?|remembered|recalls?|agrees?|agreed)"
)
"""Verbs that make a claim of what follows only before a "that"."""
_WHOM = (
    r"(?:(?:to |with |at )?(?:me|us|him|them|(?:her|everyone|everybody|people|you"
    r"|(?<=told )(?:my|our|the) (?:new )?[\w'-]+)"
    r"(?= (?:that|,|the|an?|my|i|you|he|she|they|we|no|nobody)\b)) )?"
)
_TOLD_ONE = (
    rf"(?!\w+ (?:the|an?|my|our|his|her|their) (?:(?!{_FINITE}(?: |$))[\w'-]+(?: |$)){{1,4}}?(?:$"
    r"|, (?:(?:so|and|but) )?(?:do|must|may|can|should|am|is|are|what|which|how|where|who|why) ))"
)
"""Not who was told of it before something is asked: "I told the head keeper, do I have to wear it"."""
_OPENS = r"(?:(?:so|but|and|well|ok|okay|look|now|right|hello|hi|hey|listen|surely|,) )*"
_WHERE = r"(?:(?:in|at|on|over|during|round|around|down) (?:(?!that |,)[\w'-]+ ){1,5}?(?:, )?)?"
_NEWS = (
    r"(?:there (?:is|'s|was) )?(?:(?:the|a|an|some) )?(?:word|rumour|rumor|talk|gossip|story|view|opinion"
    r"|belief|theory|impression)(?: (?:round|in|on|at|about) (?:the )?[\w'-]+)?"
    r"(?: (?:is|'s|was|goes|has it|going round))"
)
_FRAMES = tuple(
    Pattern(rf"{_OPENS}(?:{form})")
    for form in (
        rf"{_WHERE}{_SOMEBODY}{_HELPING}(?:{_SAYS}|{_WITH_THAT}) {_WHOM}(?:(?!that )[\w'-]+ ){{0,6}}?"
        r"(?:, )?that (?!'s|is |was |are )(?:, )?",
        rf"{_WHERE}{_SOMEBODY}{_HELPING}{_TOLD_ONE}{_SAYS} {_WHOM}"
        r"(?:(?:blind|again|once|yesterday|firmly) )*(?:, )?"
        r"(?!(?:that|up|off|over|out|about|of|to|with|by|for|and|or|so|is|'s|was|yes|me|us"
        r"|no(?! (?!to\b|for\b|but\b|and\b|or\b|it\b|i\b|you\b|we\b|they\b|if\b|when\b|way\b)[a-z]))\b)",
        rf"{_NEWS} (?:that )?(?:, )?",
        rf"(?:(?:i|we) )?(?:(?:'ve|have|just|only) )*(?:heard|had it|got it|hear) (?:from|off) (?!{_FINITE} )"
        r"(?:[\w'-]+ ){1,4}?(?:, |: |that )",
        rf"according to (?:(?!{_FINITE} )[\w'&-]+ ){{1,4}}?(?:, |(?=(?:the|an?|my|our|you|we|i|no"
        r"|nobody|[\w-]+ (?:have|has|may|must|can|are|is|ought|need)) ))",
        r"(?:do|have|did) (?:i|we) (?:(?:have|got|get) )?(?:it|this|that) (?:right|straight) that ",
        r"(?:am|was|would|are|were) (?:i|we) (?:be )?(?:right|wrong|correct|mistaken|safe|justified)"
        r" (?:in|to) (?:think(?:ing)?|believ(?:e|ing)|assum(?:e|ing)|suppos(?:e|ing)|say(?:ing)?) (?:that )?",
    )
)
"""Who makes a claim, and how."""
_DISPUTING = (
    r"(?:(?:argu|debat)(?:e|es|ing|ed)|(?:quarrel|disagree|discuss|bicker|differ)(?:s|es|ing|ling|d|ed|led)?"
    r"|divided|at odds|fell out|fallen out|falling out|fighting|(?:can|do|could) (?:n't|not) agree"
    r"|(?:having|have|had) (?:an? )?(?:argument|row|dispute|debate|bet|quarrel))"
)
_DISPUTED = Pattern(
    rf"{_OPENS}(?:there (?:is|'s) (?:an? )?(?:argument|quarrel|row|debate|dispute|bet|question)"
    rf"|{_WHERE}{_SOMEBODY}{_HELPING}{_DISPUTING})(?: (?:here|again|now|about|over|on|as to))*"
    r" whether (?:or not )?"
)
_DISPUTE = Pattern(
    rf"{_OPENS}(?:there (?:is|'s) an argument|{_SOMEBODY}{_HELPING}{_DISPUTING})"
    r"(?: (?:about|over) (?:it|this|that))?(?: here| again| now)?"
)
_NOBODY = Pattern(
    rf"{_OPENS}(?:nobody|nobody's|no one|no one's|no-one|you|they|do)"
    r"(?: (?:is|'s|are|'re|going|to|can|could|will|would|n't|not))*"
    r" (?:tell|tells|persuade|convince) (?:me|us) (?:that )?"
)
_ORDERED = Pattern(
    rf"{_OPENS}{_WHERE}{_SOMEBODY}(?:(?:has|have|had|'s|'ve|'d|just|always|keeps?|kept) )*"
    r"(?:(?:told|tells?|telling|ordered|orders?|asked|advised|advises|instructed|reminded|warned|wants?|wanted"
    r"|expects?|expected|forced|forces) (?P<whom>me|us|him|her|them)"
    r"|(?:am|'m|is|was|were|been|being|got) (?:told|ordered|asked|advised|instructed|reminded|warned|forced))"
    r"(?: (?:yesterday|today|once|again))* (?P<no>not )?to (?=[a-z])"
)
_SAID_BEFORE = Pattern(
    rf"{_OPENS}(?:(?:i|we) )?(?:(?:'ve|have|just|only) )*(?:heard|had it|got it|hear|word|overheard)"
    r"(?: (?:from|off|in|at) [\w' -]+| this)?(?: (?:today|yesterday|lately))?"
    rf"|{_OPENS}(?:what (?:i|we) (?:heard|was told|were told)|(?:the )?(?:claim|rumour|story|word))"
    r"(?: is| was| this)*"
)
"""A sentence of its own that says no more than that the next was heard."""
_SAID_AFTER = Pattern(
    r" , (?:(?:so|as|or so) )?(?:(?:i|we)(?: have|'ve|'m| am| are|'re| was| were)?(?: always| been| just)*"
    r" (?:hear|heard|gather|gathered|understand|understood|believe|believed|thought|told|taught|assured)"
    r"|apparently|supposedly|allegedly|reportedly|by all accounts)$"
)
"""What comes after a claim and says no more than that it is one."""
_NONE = Pattern(
    r"(?:nobody|no one|no-one|none of (?:us|them|you)) (?:ever )?"
    r"(?:(?:may|can|should|is allowed to|gets to) )?"
    r"(?P<verb>wear|carry|lend|own|use|alter|shorten|wash|iron|cut|tuck|roll|grow|borrow|take)s? ",
    re.IGNORECASE,
)
"""That nobody does it, which claims that it is forbidden."""
_NOT_EVEN = Pattern(r",? not even\b[^,.;?]*$", re.IGNORECASE)
_WISH = Pattern(r"(?:i|he|she|we|they) (?:'d|would) (?:much |far )?(?:rather|sooner|like|love|prefer)\b")
_AS_SUBJECT = {"me": "I", "us": "we", "him": "he", "her": "she", "them": "they", None: "I"}
_TALK = Pattern(
    rf"{_OPENS}(?:what (?:is|'s)|why) (?:all )?(?:this|the|that) (?:\w+ )?(?:nonsense|talk|rumour|rumor|story"
    r"|business|fuss|rubbish|idea|i hear|i keep hearing) (?:about|of) (?P<no>not )?"
    r"(?P<having>(?:having|needing) to )?(?=[a-z])"
)
_ASKING = word_set("what which how when where why who")
_SAID = word_set("say says saying said reckon reckons think thinks claims insists swears told tells")
_BOOKS = (
    r"(?:(?:the|our|any) )?(?:dress |station |uniform )?"
    r"(?:rules?|regs|regulations?|orders?|books?|manual|code)"
)
_PRONOUNS = r"(?:it|that|this|they|he|she|i|we|you|one|those|these|there|anyone|him|her|them)"
_SETTLING = (
    r"(?:put an end to|settle|clear up|clear|sort out|sort|decide|end|judge|adjudicate|rule on|resolve)"
    r"(?: (?:it|this|that|us|the|a|an|our|my|their|this little)(?: (?:argument|quarrel|dispute|bet|matter"
    r"|question|row|debate|thing|one))?)?(?: (?:up|out))?|help(?: (?:me|us))?(?: out)?"
    r"|(?:set|put) (?:me|us|him|her|them) (?:right|straight)|have the last word|tell (?:me|us|him|her|them)"
)
_PLEA = Pattern(
    rf"(?:(?:so|please|can|could|would|will|you|someone|somebody|just|kindly|let us|let's) )*(?:{_SETTLING})"
    r"(?: (?:for|between|please|me|us|once and for all|then|now|today|here|the two of))*"
)
_DOUBTING = Pattern(
    rf"(?:(?:so|but|and|well|or|then|now) )*(?:"
    rf"(?:is|are|was|were|do|does|did|can|could|may|might|must|should|will|would|has|have|had|shall|am)"
    rf"(?: n't| not)? {_PRONOUNS}(?: (?:really|still|now|not|then|too|all|actually|do so|do that|have to|need"
    r" to|got to))*"
    r"|which(?: (?:is it|one|one is it|is right|of (?:us|them|the two)))?"
    r"|i (?:(?:do|can|could|will|would) (?:n't|not)|never) (?:really |quite |for a moment )?(?:think|believe"
    r"|buy|see|credit|swallow|trust)(?: (?:so|it|that|him|her|them|this|a word(?: of it)?))?"
    r"|i (?:doubt|wonder|dispute|question)(?: (?:about )?(?:it|that|this))?"
    r"|i have my doubts(?: about (?:it|that))?"
    r"|i ?(?:'m|am) (?:(?:not|so|quite|too|at all|entirely|that|really|a bit|rather) )*(?:sure|certain"
    r"|convinced|unsure|doubtful|sceptical|skeptical|unconvinced|in doubt|puzzled|confused)"
    r"(?: (?:about|of) (?:it|that|this|him|her|them))?"
    r"|(?:that |it |this )?(?:sounds?|seems?|looks?) (?:\w+ )?(?:odd|wrong|strange|fishy|unlikely|dubious)"
    r"(?: to (?:me|us))?"
    r"|who (?:is|'s|has|'s got|has got|got|do i believe|do we believe|should i believe)(?: (?:right|wrong|it"
    r" right|in the right|correct))?"
    r"|what (?:is|'s) (?:the|your) (?:truth|answer|verdict|ruling)(?: of it)?"
    r"|what (?:holds|counts|stands|applies|do you say|do i (?:tell|say to) (?:him|her|them))(?: today| now)?"
    r"|(?:is there )?(?:something|anything|any truth|some truth|truth) (?:in|to) (?:it|that|this)"
    r"|(?:has|have|did|do|does) (?:he|she|they|i|we) (?:(?:got|get|have) )?(?:it|that|this) right"
    r"|(?:has|have|do|does) (?:he|she|they|i|we) (?:got|have) (?:a point|the right of it|that right)"
    rf"|(?:do|does|would|will) {_BOOKS} (?:agree|say (?:so|that|it|the same)"
    r"|bear (?:him|her|them|it|that|me) out)"
    rf"|(?:is|was) (?:it|that|this) (?:really |actually |still )?(?:in|what) {_BOOKS}(?: says?| anywhere)*"
    r"|(?:has|did) (?:it|that|this|anything) (?:ever |really )?changed?(?: since| now| since then)?"
    r"|should (?:i|we) (?:believe|trust|listen to) (?:him|her|them|it|that)"
    r")"
)


class Claim(msgspec.Struct, frozen=True):
    """What is claimed, as a question, and the stretches of the text (from, to) that say whose claim it is."""

    asked: str
    around: tuple[tuple[int, int], ...]


def doubts(lows: Sequence[str]) -> bool:
    """Whether a sentence says no more than that what was said is in doubt, or is to be settled."""
    words = " ".join(low for low in lows if low != ",")
    asks = asks_whether_so(lows) and (_ASKING.isdisjoint(lows) or "say" in lows)
    return asks or bool(_DOUBTING.fullmatch(words) or _PLEA.fullmatch(words))


def disputes(lows: Sequence[str]) -> bool:
    """Whether a sentence says no more than that there is a dispute to settle, or asks to settle it."""
    words = " ".join(low for low in lows if low != ",")
    return bool(_PLEA.fullmatch(words) or _DISPUTE.fullmatch(words))


def with_doubts(parts: Sequence[str]) -> tuple[str, ...]:
    """The parts of a line, those that only doubt a claim, or open a dispute, with the claim itself."""
    found: list[str] = []
    for part in parts:
        lows = [token.low for token in tokenize(part)]
        led = bool(found) and disputes([token.low for token in tokenize(found[-1])])
        if found and (led or (not found[-1].endswith("?") and doubts(lows) and _is_claim(found[-1]))):
            found[-1] = f"{found[-1]} {part}"
        else:
            found.append(part)
    return tuple(found)


def _is_claim(text: str) -> bool:
    return any(True for _ in claims_in(text, tokenize(text)))


def claims_in(text: str, tokens: tuple[Token, ...]) -> Iterator[Claim]:
    """The claims that a text puts in doubt, as they may be asked, that with most words cut away first."""
    starts = (*sentence_starts(text, tokens), len(tokens))
    parts = list(pairwise(starts))
    lows = [token.low for token in tokens]
    opened = False
    around: list[tuple[int, int]] = []
    while len(parts) > 1 and doubts(lows[slice(*parts[-1])]):
        around.append((tokens[parts[-1][0]].start, len(text)))
        parts.pop()
    while len(parts) > 1 and _leads_to_claim(lows[slice(*parts[0])]):
        around.append((0, tokens[parts[1][0]].start))
        parts.pop(0)
        opened = True
    first, last = parts[-1]
    last = _before_tail(lows, first, last)
    if any(_frames(" ".join(lows[slice(*part)])) for part in parts[:-1]):
        return  # whose of the two
    before = text[tokens[parts[0][0]].start : tokens[first].start]
    words = " ".join(lows[first:last])
    if around and (after := _SAID_AFTER.search(words)) is not None:
        last -= after.group().count(" ")
        around.append((tokens[last].start, tokens[parts[-1][1] - 1].end))
        words, opened = words[: after.start()], True
    end = tokens[last - 1].end
    for cut, lead, tail in _frames(words):
        start = first + words[:cut].count(" ")
        advised = not HEALERS.isdisjoint(lows[first:start])
        wished = _WISH.match(" ".join(lows[start:last])) is not None  # "he'd rather wear the skirt"
        if start >= last or advised or wished or not _SAID.isdisjoint(lows[start:last]):
            continue
        said = _undenied(text, tokens[start:last]) if lead is None else text[tokens[start].start : end]
        if (none := _NONE.match(said)) is not None and not lead:
            said = f"is it forbidden to {none['verb']} {_NOT_EVEN.sub('', said[none.end() :])}"
        frame = (tokens[first].start, tokens[start].start)
        yield Claim(f"{before}{lead or ''}{said}{tail}?", (frame, *around))
    if opened and _SAID.isdisjoint(lows[first:last]):
        yield Claim(f"{before}{text[tokens[first].start : end]}?", tuple(around))


def _leads_to_claim(lows: Sequence[str]) -> bool:
    """Whether a sentence says no more than that there is a dispute, or that something was heard."""
    return disputes(lows) or bool(_SAID_BEFORE.fullmatch(" ".join(lows).strip(" :-.–—")))


def _before_tail(lows: Sequence[str], first: int, last: int) -> int:
    """Where a sentence ends without a doubt at its end: "..., is there anything in that"."""
    place = next((n for n in range(last - 2, first + 1, -1) if lows[n] in (",", "-", "–", "—")), 0)
    return place if place and doubts(lows[place + 1 : last]) else last


def _frames(words: str) -> list[tuple[int, str | None, str]]:
    """Where what is claimed may begin in a sentence, and what stands before and after it as a question.

    Before it stands None where the claim is that it is not so that it may not be.
    """
    if (found := _NOBODY.match(words)) is not None:
        return [(found.end(), None, "")]
    if (found := _TALK.match(words)) is not None:
        if found["having"]:
            return [(found.end(), "must I " if not found["no"] else "may I not ", "")]
        return [(found.end(), "is ", " forbidden" if found["no"] else " allowed")]
    if (found := _DISPUTED.match(words)) is not None:
        return [(found.end(), "", "")]
    told: list[tuple[int, str | None, str]] = []
    if (found := _ORDERED.match(words)) is not None:
        modal = "may" if found["no"] else "must"
        told.append((found.end(), f"{modal} {_AS_SUBJECT[found['whom']]} ", ""))
    ends = [found.end() for frame in _FRAMES if (found := frame.match(words)) is not None]
    return told or [(end, "", "") for end in ends[:1] if end < len(words)]


def _undenied(text: str, said: Sequence[Token]) -> str:
    """A claim without its first denial: "I can't pin it on" as "I can pin it on"."""
    place = next((n for n, token in enumerate(said) if token.low in ("n't", "not")), 0)
    if not place:
        return text[said[0].start : said[-1].end]
    return f"{text[said[0].start : said[place - 1].end]} {text[said[place + 1].start : said[-1].end]}"


def of_its_maker(asked: str, named: Sequence[Span], lookup: Lookup) -> str:
    """ "My H1 says he needs no knot", without who says so: with the standing for "he"."""
    standings = [s for s in named if s.target in lookup.facts and lookup.facts[s.target].family in PERSONAL]
    first, _, rest = asked.partition(" ")
    if len(standings) != 1 or first.casefold() not in ("he", "she", "they"):
        return asked
    return f"{'' if first.casefold() == 'they' else 'a '}{standings[0].text} {rest}"
