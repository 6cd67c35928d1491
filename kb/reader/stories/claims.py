"""Two claims against each other: "he says 30 mm, I say 25", "my mate reckons caps are off, I reckon on".

Each is put as the question whether it is so. What the second leaves unsaid it takes from the first: a number,
a measure, a colour, a side or a way stands in the place of the first one's, "they" for what the first is of.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import msgspec

from kb.measures import find_measure, same_dimension
from kb.reader.doubts.asked_back import COLOURS
from kb.reader.stories.hearsay import disputes
from kb.reader.words.forms import NUMBER_WORDS, word_pairs, word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_SAYS = (
    r"(?:(?:still |also |just |both )?(?:says?|said|saying|reckons?|reckoned|thinks?|thought|claims?|claimed"
    r"|insists?|insisted|swears?|swore|believes?|maintains?|argues?|holds?|tells? (?:me|us)|told (?:me|us)"
    r"|(?:is|'m|am|are|'s) (?:sure|certain|adamant|convinced)|would have it|has it)"
    r"(?: that(?! (?:is|one)\b))?,? )"
)
_WHO = (
    r"(?:i|he|she|they|we|one|another|someone|somebody|people|others"
    r"|(?:the|my|our|his|her|a|an|this|that|some|one) (?!order|book|rule|notice|regulation|clause)[\w'-]+"
    r"(?: (?!says?\b)[\w'-]+){0,2}?|[A-Z][\w'-]+(?: [A-Z][\w'-]+)?)"
)
_ACCORDING = r"(?:according to (?:me|him|her|them|us|(?:the|my|our) [\w'-]+|[A-Z][\w'-]+),? )"
_LEAD = (
    r"(?:(?:so|well|ok|okay|right|look|hi|hello|now|but|and|help|settle this|settle a bet|settle an argument)"
    r"[,:.!]? )*(?:(?P<lead>[^.?!:;]{2,90}?)[.:,;]\s+(?:and |but |now )?)?"
)
_TAIL = (
    r"(?:[,;.:?!-]* *(?:so )?(?:who(?:'s| is|se| has| do)|(?:which|what) (?:holds|counts)"
    r"|which(?: of us)?(?:'s| is)?|am i|is (?:he|she)|are they"
    r"|what's|what is|can you settle|settle it|please settle|what do the)\b[^.?!]{0,40})?[ .?!]*"
)
_JOINT = r"(?:\s*[,;.:–—-]+\s+|\s+(?=(?:but|while|whereas|and)\b))(?:(?:and|but|while|whereas|though|yet) )?"
_TWO = Pattern(
    rf"{_LEAD}(?:(?P<who>{_WHO}) {_SAYS}|{_ACCORDING})(?P<first>.+?){_JOINT}"
    rf"(?:(?P<other>{_WHO}) {_SAYS}|{_ACCORDING})(?P<second>.+?){_TAIL}",
    re.IGNORECASE,
)
_PRONOUN = Pattern(r"(?:it|they|he|she|that|this|these|those)(?=[\s'’])", re.IGNORECASE)
_SUBJECT = Pattern(
    r"(?P<what>(?:(?:the|a|an|my|our|your) )?[\w'’ -]+?) (?:is|are|was|were|must|may|can|should|has|have"
    r"|goes?|comes?|stays?|sits?|hangs?|needs?|gets?|falls?|reach(?:es)?|shall|will|do|does)\b",
    re.IGNORECASE,
)
_OPPOSITE = word_pairs("""
    up=down down=up on=off off=on left=right right=left in=out out=in inside=outside outside=inside over=under
    under=over open=closed closed=open first=second second=first above=below below=above matt=polished
    polished=matt indoors=outdoors outdoors=indoors front=back back=front top=bottom bottom=top
""")
_DENYING = word_set("""
    not no never otherwise isn't aren't doesn't don't can't cannot mustn't wasn't different differently
    opposite won't needn't shouldn't wouldn't rubbish nonsense isn’t aren’t doesn’t don’t can’t
""")
_BARE = _DENYING | word_set("""
    yes so it they he she that them is are does do can may must was will would be i we you he's she's
""")
"""Words of a counter-claim that says nothing but that the first is or is not so."""
_RIGHT = word_set("right wrong the he's it's they're")
_AGREEING = word_set("so too as well also same the likewise agree it that do i'd say yes of course")
_NUMBER = Pattern(
    r"(?<![\w.])(?:\d+(?: \d+/\d+|/\d+|\.\d+)?|" + "|".join(NUMBER_WORDS) + r")(?![\w./])", re.IGNORECASE
)
NOBODY = "nobody"
_NOBODY = Pattern(
    r"(?:nobody|no one|no-one|none(?: of us)?)(?: (?:may|can|must|should|is|does|has))?", re.IGNORECASE
)
_ONLY = Pattern(r"(?:it's |it is |that's |they're )?only (?:for |with |in )?(?P<whom>.+)", re.IGNORECASE)


class TwoClaims(msgspec.Struct, frozen=True):
    """What the first says and what the second says, as they are written, and what is told before both.

    A second that says no more than that the first is not so is empty.
    """

    first: str
    second: str
    lead: str = ""
    called: str = "claims"


def two_claims(text: str) -> TwoClaims | None:
    """The claims of a text that has two with content of their own; None for any other."""
    found = _TWO.fullmatch(" ".join(text.split()))
    if found is None or (found["who"] or "").casefold() == (found["other"] or "").casefold() != "":
        return None
    first, second = (found[name].strip(" ,;.:!?-–—") for name in ("first", "second"))
    words = {word.strip(",.!?").casefold() for word in second.split()}
    lead = found["lead"] or ""
    if disputes([token.low for token in tokenize(lead)]):
        lead = ""  # "two of my people disagree"
    sided = not {"left", "right"}.isdisjoint(first.casefold().split())
    if not first or not words or words <= _AGREEING:
        return None
    if words <= _BARE or (words <= _BARE | _RIGHT and not sided):
        return TwoClaims(first, "", lead) if words & (_DENYING | {"wrong"}) else None
    return TwoClaims(first, second, lead)


_SIZE = r"\d[\d ./½¼¾]*\d?(?:\s?(?:mm|cm|m|in|inch(?:es)?|ft|\"|[mc]?m))?"
_ACROSS = r"(?: (?:wide|long|high|tall|across|deep|thick|in (?:width|length|height|diameter)))?"
_FINE = r"(?:ok|okay|fine|alright|all right|allowed|enough|acceptable|right|good enough|permitted)"
_DUTY = (
    r"(?:must|should|shall|does|do|has|have|need|needs) (?:(?:it|they|this|that|these) )?"
    r"(?:(?:have to|need to|got to|to) )?(?:be )?"
)
_OK_OR_MUST = Pattern(
    rf"(?:is|are|would|will) (?P<one>{_SIZE})(?P<way>{_ACROSS}) (?:be )?{_FINE}"
    rf"(?: (?:for|on|of|with|as) (?P<what>.+?))?,? or "
    rf"{_DUTY}(?:at least )?(?P<other>{_SIZE})(?P<of>,? (?:for|on|of|with) .+?)?[?. ]*",
    re.IGNORECASE,
)
_SIZED_OR_MUST = Pattern(
    rf"(?:is|are|would|will) (?:an? |the |my |our )?(?P<one>{_SIZE})(?P<way>{_ACROSS})[ -](?P<what>.+?)"
    rf" (?:be )?{_FINE},? or {_DUTY}(?:at least )?(?P<other>{_SIZE})[?. ]*",
    re.IGNORECASE,
)
_MUST_OR_OK = Pattern(
    rf"(?:must|should|does|do|has|have) (?P<what>.+?) (?:(?:have to|need to|to) )?(?:be )?"
    rf"(?P<one>{_SIZE})(?P<way>{_ACROSS}),? or "
    rf"(?:is|are|would|will) (?P<other>{_SIZE})(?:{_ACROSS}) (?:be )?{_FINE}(?: (?:too|as well|also))?[?. ]*",
    re.IGNORECASE,
)
_UNIT = Pattern(r"[a-z\"]+$", re.IGNORECASE)
_PAIR = Pattern(
    r"(?P<one>\d[\d ./½¼¾]*?)\s?(?P<unit>mm|cm|m|in|inch(?:es)?)?\s*(?:\bby\b|x|×)\s*"
    r"(?P<other>\d[\d ./½¼¾]*?)\s?(?P<last>mm|cm|m|in|inch(?:es)?)\b(?: (?:in size|big|large))?",
    re.IGNORECASE,
)


def two_measures(text: str) -> TwoClaims | None:
    """ "Is 3 cm ok for the belt or must it be 2": both measures as claims of the same thing."""
    plain = " ".join(text.split())
    found = _OK_OR_MUST.fullmatch(plain) or _SIZED_OR_MUST.fullmatch(plain) or _MUST_OR_OK.fullmatch(plain)
    if found is None:
        return None
    what = found["what"] or re.sub(r"(?i)^,? (?:for|on|of|with) ", "", found.groupdict().get("of") or "")
    one, other = _same_unit(found["one"].strip(), found["other"].strip())
    return TwoClaims(f"{what} is {one}{found['way']}", other, called="measures") if what and one else None


def _same_unit(one: str, other: str) -> tuple[str, str]:
    """Two amounts in the unit that only one of them has; "" where neither has one."""
    units = [found.group() if (found := _UNIT.search(said)) is not None else "" for said in (one, other)]
    unit = units[0] or units[1]
    return (
        (one if units[0] else f"{one} {unit}", other if units[1] else f"{other} {unit}") if unit else ("", "")
    )


def paired_measures(text: str) -> tuple[str, tuple[str, str]] | None:
    """ "Is a 5 by 1 in strip ok": the text without them, and the two measures in the order they are said."""
    found = _PAIR.search(text)
    if found is None:
        return None
    rest = f"{text[: found.start()].rstrip()} {text[found.end() :].lstrip()}"
    sizes = (
        f"{found['one'].strip()} {found['unit'] or found['last']}",
        f"{found['other'].strip()} {found['last']}",
    )
    return re.sub(r"(?i)^(is|are|may|can) +(?=\?|ok)", "", rest), sizes


def first_as_questions(claims: TwoClaims) -> Iterator[str]:
    """The first claim as questions, that in which it stands as it was said first."""
    yield from _ways(claims.first)


_KEPT_ON = Pattern(
    r"(?i)^(.+?) (?:is|are|go(?:es)?|stays?|comes?|sits?|must be|should be|must stay|must go)"
    r" (on|off|up|down|left|right)\b(.*)$"
)
_WORN = word_pairs(
    "on=worn off=taken_off up=worn_up down=worn_down left=worn_on_the_left right=worn_on_the_right"
)


def _ways(said: str) -> Iterator[str]:
    """A claim as it is, and in plainer words: "the cap stays on" as "is worn"."""
    yield f"{said}?"
    found = _KEPT_ON.match(said)
    if found is not None:
        be = "are" if re.search(r"(?i) (?:are|go|stay|come|sit) ", said) else "is"
        way = _WORN[found.group(2).casefold()].replace("_", " ")
        yield f"{be} {found.group(1)} {way}{found.group(3)}?"
        if found.group(2).casefold() in ("on", "off"):
            yield f"{found.group(1)} come {found.group(2)}{found.group(3)}?"


def second_as_questions(claims: TwoClaims) -> Iterator[str]:
    """The second claim as questions, that in which it stands most whole first."""
    first, second = claims.first, claims.second
    if (only := _ONLY.fullmatch(second)) is not None:
        yield from _only(first, only["whom"])
        return
    subject = _SUBJECT.match(first)
    if subject is not None and _NOBODY.fullmatch(second) is not None:
        yield f"{NOBODY}{first[subject.end('what') :]}?"
        return
    changed = _put_in(first, second)
    if changed is not None:
        yield from _ways(changed)
        return
    if subject is not None and (pronoun := _PRONOUN.match(second)) is not None:
        yield from _ways(f"{subject['what']}{second[pronoun.end() :]}")
    yield f"{second}?"
    colour = _colour(first, second)
    if colour is not None:
        yield f"{colour}?"


def _put_in(first: str, second: str) -> str | None:
    """The first claim with the one thing in it that the second puts otherwise; None where that says more."""
    bare = re.sub(
        r"(?i)^(?:(?:it's|it is|it should be|they're|they are|only|just|about|at|up to|to|is|are|more like"
        r"|make it|at most) )+",
        "",
        second,
    )
    bare = re.sub(
        r"(?i)(?: (?:is|are) (?:ok|okay|fine|right|allowed|enough|plenty|the limit|it))+$", "", bare
    )
    return (
        _number_in(first, bare)
        or _way_in(first, bare)
        or (_colour(first, bare) if _is_colour(bare) else None)
    )


def _number_in(first: str, bare: str) -> str | None:
    measure, was = find_measure(bare), find_measure(first)
    if was is not None and not same_dimension(was.measure.unit, "mm"):
        was = None  # "after ten years", "at 5 degrees"
    if measure is not None and not (bare[: measure.start] + bare[measure.end :]).strip():
        if was is None:
            return None
        return first[: was.start] + bare + first[was.end :]
    number, before = _NUMBER.fullmatch(bare), list(_NUMBER.finditer(first))
    if number is None or not before:
        return None
    other = find_measure(first)
    if other is not None and was is None:
        before = [found for found in before if not other.start <= found.start() < other.end]
    if was is not None:
        if any(not was.start <= found.start() < was.end for found in before):
            return None  # which of them is not said
        spot = before[0]
        whole = re.match(r"[\d /.½¼¾]*[\d½¼¾]", first[was.start : was.end])
        start, end = (was.start, was.start + whole.end()) if whole is not None else spot.span()
        return first[:start] + bare + first[end:]
    if len(before) != 1:
        return None
    start, end = before[0].span()
    return first[:start] + bare + first[end:]


def _way_in(first: str, bare: str) -> str | None:
    """ "The right", for "on the left breast"; "down", for "up"."""
    word = re.sub(r"(?i)^(?:on |to |at )?(?:the )?|(?: (?:one|side|there))+$", "", bare).casefold()
    there = [m for m in re.finditer(r"[A-Za-z]+", first) if m.group().casefold() == _OPPOSITE.get(word)]
    if len(there) != 1:
        return None
    start, end = there[0].span()
    return first[:start] + word + first[end:]


def _is_colour(bare: str) -> bool:
    words = bare.casefold().split()
    return bool(words) and words[-1] in COLOURS and len(words) <= _SHADED


_SHADED = 2  # "dark red"


def _colour(first: str, second: str) -> str | None:
    """The first claim in the colour of the second."""
    new = next((w for w in re.findall(r"[A-Za-z]+", second) if w.casefold() in COLOURS), None)
    old = [
        m
        for m in re.finditer(r"(?:(?:dark|light|navy|bright|pale) )?\b[A-Za-z]+", first)
        if m.group().split()[-1].casefold() in COLOURS
    ]
    if new is None or len(old) != 1:
        return None
    shaded = second if _is_colour(second) else new
    return first[: old[0].start()] + shaded + first[old[0].end() :]


def _only(first: str, whom: str) -> Iterator[str]:
    """ "Only K6 and up", of what the first has others do: whether nobody else may."""
    subject = re.match(
        r"(?i)((?:the |a |an |any )?[\w' -]+?) "
        r"((?:can|may|must|could|should|is allowed to|are allowed to)\b.*|wears?\b.*)",
        first,
    )
    if subject is not None:
        yield f"is it true that only {whom} {subject.group(2)}?"


_EXACT = Pattern(
    r"(?:[^.?!:;\d]{2,60}[.:,;]\s+)?(?P<own>(?:my|our|his|her|the) [^?]*?\d[^?]*?)"
    rf"(?:\s*[,;.:–—-]+\s+|\s+(?=(?:but|and)\b))(?:(?:and|but|yet|though) )?{_WHO} {_SAYS}"
    r"(?:it|they|that|mine|this) (?:(?:has|have|needs?|ought)(?:['’]s)? (?:got )?to|must|should) be"
    r" (?:exactly |precisely |dead |bang )?(?P<claim>\d+(?:\.\d+)? ?(?:mm|cm|in|inch(?:es)?)?)"
    r"(?: (?:exactly|precisely|on the dot|dead on|bang on|spot on|on the nose|to the millimetre))?"
    r"[,;.:]? *(?:so )?(?:(?:is|are) (?:he|she|they|that|it|this) (?:right|correct|true|so)|right|true"
    r"|correct)[ ?!]*",
    re.IGNORECASE,
)


def exact_claim(text: str) -> tuple[str, str] | None:
    """ "My badge sits 104 mm below the seam and my mate says it has to be 100 on the dot. Is he right?"

    What is so, as a question, and the measure that is claimed for it instead.
    """
    found = _EXACT.fullmatch(" ".join(text.split()))
    if found is None:
        return None
    return f"{found['own'].rstrip(' .,')}. Is that all right?", found["claim"].strip()
