"""Several questions in one line."""

from __future__ import annotations

import re

from kb.reader.words.forms import word_set
from kb.text import Pattern

_END = Pattern(r"[?!]+(?=\s|$)|[.;](?=\s+(?:and\s+)?[A-Z])|\n+")
_SHORT = Pattern(r"\b(?:cl|para|sec|art|no|approx|max|min|ca|in|ft|st|dr|mr|mrs|ms)\.$", re.IGNORECASE)
_AND = (
    r"[,;]?\s+(?:and(?:,?\s+(?:also|then|finally|lastly|next|secondly|thirdly|another thing|so))?|also|plus)"
    r"[,:]?\s+"
)
_HOW_MUCH = r"(?:long|wide|high|deep|big|tall|thick|far|often|soon|late|early|warm|cold|close|near|large)"
_OF_WHICH = (
    r"(?:sort|kind|type|colou?r|size|side|sleeve|arm|way|clause|knot|lapel|shoulder|hand|hip|breast|pocket"
    r"|wrist|leg|cuff|collar|finger|ear|day|date|month)s?"
)
_NEXT = Pattern(
    rf"{_AND}(?=(?:may|can|must|should|do|does|am|are|is|where|how|who|whom|what|which|when|why)\s+"
    r"(?:i|we|you|the|a|an|it|they|do|does|must|may|is|are|many|can|should|someone|anyone)\b)|"
    rf"{_AND}(?=(?:what|how) about\b)|"
    rf"{_AND}(?=(?:in|on|at|with|from|for|by|to|within|until|till|after)\s+(?:which|what|whom|when)\b)|"
    rf"{_AND}(?=(?:for|within|after|in|until|till)\s+how\s+(?:long|many|soon)\b)|"
    rf"{_AND}(?=how\s+{_HOW_MUCH}(?:\s+(?:up|down|apart|above|below|beforehand|before|in advance))?\s+"
    r"(?:is|are|must|may|can|does|do|should|will|have|has)\s+(?!(?:to|been|not)\b)\w)|"
    rf"{_AND}(?=(?:how\s+{_HOW_MUCH}|where)\s*\?*$)|"
    rf"{_AND}(?=(?:what|which)\s+{_OF_WHICH}\b)|"
    rf"{_AND}(?=who\s+(?:gets|has|wears|needs|grants|decides|says|carries|owns|gives|signs|pays|orders|issues"
    r"|allows|approves|checks|inspects|settles|names)\b)|"
    r",\s+and\s+(?=(?:may|can|must|should|do|does|are|is)\s+[\w' -]{2,40}\?)",
    re.IGNORECASE,
)
_RUN_ON = Pattern(
    r"\s*[,;]\s+(?=(?:may|can|could|must|should|do|does|am|are|is)\s+"
    r"(?:i|we|you|he|she|the|a|an|my|our|anyone|someone|everyone)\s+\S+\s+\S+|"
    r"(?:where|how|what|when)\s+(?:may|can|must|should|do|does|is|are|many|long|wide|high|big|far|colou?r)\s+\S+|"
    r"who\s+(?:may|can|must|should|wears|carries|has|owns)\s+\S+)",
    re.IGNORECASE,
)
"""Where a comma alone parts two questions, if what stands before it is one."""
_ASKED_ALREADY = Pattern(
    r"(?:and |but |so |also )*(?:(?:may|can|could|must|should|do|does|am|are|is)\s+\w+\s+\w+|"
    r"(?:where|how|who|what|which|when)\s+(?:may|can|must|should|do|does|is|are|many|long|wide|high|big|far|wears"
    r"|carries|colou?r)\b|(?:which|what)\s+\w+\s+(?:may|can|must|should|do|does|is|are)\b)",
    re.IGNORECASE,
)

_OPENING = Pattern(
    r"(?:may|can|could|must|should|shall|do|does|am|is|are|isn|aren|don|can|where|how|who|what|which|when|why|show|list)\b",
    re.IGNORECASE,
)


_LED = Pattern(
    r",\s*(?:may|can|could|must|should|do|does|am|are|is)\s+(?:i|we|you|he|she|they|the|an?|my|our)\b",
    re.IGNORECASE,
)


_SAID_OF = Pattern(
    r"\s*(?:no|nope|nah|not|yes|yep|yeah|yup|aye)\b"
    r"(?=\s*(?:[.,;:!?]|$)|\s+(?:and|but)\b|\s+[^.,;?!]{1,40}\?\s*(?:no|nope|nah|yes|yep|yeah|yup|aye)\b)",
    re.IGNORECASE,
)
_CONFIRMS = Pattern(
    r"(?:(?:so|and|then|or|well|just|please|a|an|simple|straight|plain|honest|quick)[ ,]+)*"
    r"(?:yes|no|true|false|right|wrong|correct|agreed)"
    r"(?:,? or (?:an? )?(?:yes|no|not|true|false|right|wrong))?"
    r"(?:[ ,]+(?:please|then|though|surely))*[?!. ]*",
    re.IGNORECASE,
)
_FRAGMENT = Pattern(r"[^.,;:?!\n]*$")
_LONGEST_FRAGMENT = 6


def _is_answered(text: str, start: int, mark: int, after: int) -> bool:
    """ "On watch? no": whether a bare fact and the yes or no said of it stand around a question mark."""
    fragment = _FRAGMENT.search(text[start:mark])
    words = fragment.group().split() if fragment is not None else []
    bare = 0 < len(words) <= _LONGEST_FRAGMENT and _OPENING.match(" ".join(words)) is None
    return bare and _SAID_OF.match(text, after) is not None


def split_questions(text: str) -> tuple[str, ...]:
    """The questions in a text, in order.

    It is parted at ? and !, at full stops and semicolons before a capital letter, at line ends, and at "and"
    before the opening of another question. A statement stays with the question that it goes with.
    """
    parts: list[str] = []
    start = 0
    for match in _END.finditer(text[:4000]):
        if match.group() == "." and _SHORT.search(text[start : match.end()]):
            continue
        if match.group() == "?" and _is_answered(text, start, match.start(), match.end()):
            continue
        parts.append(text[start : match.end()].strip())
        start = match.end()
    parts.append(text[start:4000].strip())
    found = [piece.strip(" ,;") for part in parts for one in _next(part) for piece in _run_on(one)]
    found = [side for piece in found if any(c.isalnum() for c in piece) for side in _each_side(piece)]
    found = [fate for piece in found for fate in _each_fate(piece)]
    parted = _of_each(_with_statements(found))
    if not any(word in text.casefold() for word in _COUNTED):
        return parted
    from kb.reader.words.counted import each_seen  # noqa: PLC0415  few questions count faults

    return each_seen(parted)


_COUNTED = ("how many", "wrong", "fault", "mistake")
"""What a question that counts faults has one of."""


_SIDES = Pattern(
    r"(?P<one>[^.,;:?!]*(?:, [^.,;:?!]+)?)(?:,| -)? or (?:(?:is|are|was) (?:it|that|they) |(?:do|does) "
    r"(?:it|that|they) (?:count|apply) )?(?:only|just) (?:for (?=in |on |at ))?(?P<other>[^.,;:?!]+)\?+",
    re.IGNORECASE,
)
_SIDE = Pattern(
    r"(?:(?P<lead>in|on|at|with|under|over|during|when|while|if|after|before|instead of|by|from|for|aboard)"
    r" (?!(?:fun|show|now|it)\b|an? (?:bit|while|minute|moment)\b|the (?:moment|day|look|time)\b)\S|"
    r"ashore\b|(?:the|our|my) (?!(?:one|same|left|right|other|two|odd|rule)\b)\w|[a-z]\d+\b|"
    r"[a-z-]{3,}[^su]s\b)",
    re.IGNORECASE,
)
_PLACED = Pattern(r"\b(?:in|on|at|with|under|over|during|when|while|if|for)\b", re.IGNORECASE)


def _each_side(part: str) -> tuple[str, ...]:
    """ "Must the hands wear it too, or just the officers?": whether it is so for each of them."""
    sides = _SIDES.fullmatch(part.strip()) if " or " in part.lower() else None
    if sides is None:
        return (part,)
    one = re.sub(r"(?i),? (?:too|as well|also|yet|already)$", "", sides["one"].rstrip(" ,"))
    other = re.sub(r"(?i)^(?:us|we|those|people)(?= (?:in|on|at|of)\b)", "", sides["other"]).strip()
    begun = _SIDE.match(other)
    led = re.match(r"(?i)(?:in|on|at|for|with|when) [^,]+, ", one)
    asked = _OPENING.match(one, led.end() if led else 0) is not None or one != sides["one"].rstrip(" ,")
    if begun is None or not asked:
        return (part,)
    place = re.search(rf"(?i)^.*\b(?={begun['lead']} )", one) if begun["lead"] else None
    alone = place is not None and _PLACED.search(one, place.end() + len(begun["lead"])) is None
    again = one[: place.end()] + other if place is not None and alone else one
    return f"{one}?", f"{again}?" if again != one else f"And {other}?"


_FATE = (
    r"(?:allowed|permitted|ok|okay|fine|all right|required|compulsory|mandatory|optional|banned|forbidden"
    r"|prohibited|not allowed)"
)
_OTHER = r"(?P<other>(?!(?:it|they|that|this|these|those|he|she|i|we|you|so|is|are|not)\b)[^.,;:?!]+?)"
_FATES = Pattern(
    rf"(?P<be>are|is) (?P<one>[^.,;:?!]+?) (?P<first>{_FATE}),? (?:and|but) (?:(?:are|is) )?{_OTHER}"
    rf" (?P<second>{_FATE})(?P<where> (?:in|on|at|when|while|during|with) [^.,;:?!]+)?\W*",
    re.IGNORECASE,
)
_TOLD_FATES = Pattern(
    rf"(?P<one>[^.,;:?!]+?) (?P<be>are|is) (?P<first>{_FATE}),? (?:and|but) {_OTHER}"
    rf" (?P<so>(?:are|is)(?: not|n['’]t)?)(?: (?P<second>{_FATE}))?\W*",
    re.IGNORECASE,
)


def _each_fate(part: str) -> tuple[str, ...]:
    """ "Are studs allowed and hoops forbidden?", "studs are fine but hoops aren't": one question of each."""
    low = part.casefold()
    if " and " not in low and " but " not in low:
        return (part,)
    if (put := _FATES.fullmatch(part.strip())) is not None:
        asked = ((put["one"], put["first"]), (put["other"], put["second"]))
        return tuple(f"{put['be']} {thing} {fate}{put['where'] or ''}?" for thing, fate in asked)
    told = _TOLD_FATES.fullmatch(part.strip())
    if told is None or _OPENING.match(part):
        return (part,)
    return (
        f"{told['one']} {told['be']} {told['first']}?",
        f"{told['other']} {told['so']} {told['second'] or told['first']}?",
    )


_OF_EACH = Pattern(
    r"(?P<first>[^.,;:?!]+?),? and (?P<second>(?!\d|second |third )[^.,;:?!]+?)"
    r"(?:\s*[,;.:]|\s+[-–—]+)\s*(?:(?:is|are|would|will)\s+)?(?:either|any|one|both|each)(?:\s+one)?"
    r"(?:\s+of\s+(?:those|these|them|that|the\s+two))?(?:\s+be)?\s+(?:an?\s+|any\s+)?"
    r"(?:problems?|issues?|trouble|worry|worries|bother|ok|okay|fine|allowed|permitted|all\s+right)\s*\?+",
    re.IGNORECASE,
)


def _of_each(parts: tuple[str, ...]) -> tuple[str, ...]:
    """ "A beard of 5 mm and a ring: is either a problem?": two questions, where a measure is of one alone."""
    if len(parts) != 1 or not any(sign.isdigit() for sign in parts[0]):
        return parts
    both = _OF_EACH.fullmatch(parts[0].strip())
    if both is None or " between " in parts[0] or _OPENING.match(parts[0]) is not None:
        return parts
    return f"{both['first']}, ok?", f"May I wear {both['second']}?"


def _next(part: str) -> list[str]:
    """ "May I wear it and where does it go": the questions that an "and" parts."""
    low = part.lower()  # the pattern is large, and seldom needed
    if not any(word in low for word in ("and", "also", "plus")):
        return [part]
    found = _NEXT.split(part)
    for place in range(len(found) - 2, -1, -1):
        bare, other = _BARE.fullmatch(found[place].strip()), _BARE.match(found[place + 1])
        if bare is not None and other is not None and other.end() < len(found[place + 1]):
            found[place] += found[place + 1][other.end() :]  # "how wide and how high is it"
        elif place + 1 < len(found) and not _is_question(found[place]) and _LATER.search(found[place]):
            found[place] += "?"
    return found


_BARE = Pattern(rf"(?:how {_HOW_MUCH}|(?:what|which) {_OF_WHICH}|where|when)\b", re.IGNORECASE)
_LATER = Pattern(
    r"(?:[:;–-]\s+(?:(?:in|on|at|from|for|by|to|after|within) )?(?:how|what|which|who|whom|where|when)"
    r"|,\s+(?:how|what))\b",
    re.IGNORECASE,
)
""" "A cadet leader, how many bars", which asks as well."""


def _run_on(part: str) -> list[str]:
    """ "Where do the bars go, how many does a K4 wear": the questions that a comma parts."""
    found, start = [], 0
    for match in _RUN_ON.finditer(part) if "," in part or ";" in part else ():
        if _is_asked(part, start, match.end()):
            found.append(part[start : match.start()])
            start = match.end()
    return [*found, part[start:]]


def _is_asked(part: str, start: int, end: int) -> bool:
    """Whether a question stands before a comma; "my mate, who wears glasses" is none, and goes on."""
    if part[end : end + 3].casefold() == "who" and part[start : start + 3].casefold() not in _OF_WORDS:
        return False
    return _ASKED_ALREADY.match(part, start) is not None


_OF_WORDS = frozenset(("who", "whe", "how", "wha"))


def opens_question(part: str) -> bool:
    """Whether a part begins as a question with a verb does: "may I ...", "and where ..."."""
    joined = _JOINED.match(part)
    start = joined.end() if joined is not None else 0
    return _OPENING.match(part, start) is not None or _LED.search(part) is not None


_JOINED = Pattern(r"\s*(?:(?:and|but|so|or|also|then|plus)[ ,]+)+", re.IGNORECASE)


def _with_statements(parts: list[str]) -> tuple[str, ...]:
    """Each question with the statements before it ("I am a K5. May I ..."); the last takes those after it."""
    if not any(_is_question(part) for part in parts):
        return tuple(parts)
    found: list[str] = []
    waiting: list[str] = []
    for part in parts:
        if found and not waiting and part.endswith("?") and _CONFIRMS.fullmatch(part):
            continue  # "May I? Yes or no?"
        waiting.append(part)
        if _is_question(part):
            ended = [told if told[-1] in _MARKS else f"{told}." for told in waiting[:-1]]
            found.append(" ".join([*ended, waiting[-1]]))
            waiting = []
    if waiting:
        found[-1] = " ".join([found[-1], *waiting])
    return tuple(found)


_MARKS = frozenset(".!?:;,")
_SAYING = word_set("""
    say says said reckon reckons think thinks claim claims insist insists swear swears believe believes
    maintain maintains according told tells sure holds has
""")


def may_claim(text: str) -> bool:
    """Whether a text has two words of saying, as two claims against each other have, or two measures."""
    words = text.casefold().split()
    amounts = [word for word in words if word[0].isdigit()]
    joined = len(amounts) > 1 and not _JOINING_SIZES.isdisjoint(words)
    joined = joined or any("x" in word or "×" in word for word in amounts)
    joined = joined or not _EXACTLY.isdisjoint(word.strip(",.:;?!") for word in words)
    return joined or sum(word.strip(",:;") in _SAYING for word in words) > 1


_EXACTLY = frozenset(("exactly", "precisely", "dot", "dead", "bang", "spot", "nose"))
_JOINING_SIZES = frozenset(("or", "by", "x", "×"))


_LEADS = frozenset(("on", "in", "to", "from", "for", "at", "by", "under"))
_ASKED = frozenset(("which", "what", "whom"))


def _is_question(part: str) -> bool:
    if part.endswith("?"):
        return True
    words = part.casefold().split(None, 2)
    led = len(words) > 2 and words[0] in _LEADS and words[1] in _ASKED  # "on which arm ..."
    return led or _OPENING.match(part) is not None or _LED.search(part) is not None


_TRUTH = word_set("true right correct so case fact")
_DENYING = word_set(
    "not cannot never no nobody none nor neither out forbidden barred prohibited disallowed outlawed"
)


def may_deny(text: str) -> bool:
    """Whether a text has a word of those that put a claim to be confirmed, or that deny or forbid."""
    words = {word.strip(",.:;?!") for word in text.casefold().replace("’", "'").split()}
    said = words & (_TRUTH | _DENYING) or any("n't" in word or word.startswith("bann") for word in words)
    return bool(said)
