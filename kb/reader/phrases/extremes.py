"""The most or least of a measure or number, asked for: "the longest beard I may have", "how hot to wash it".

What is asked is how long, how wide or how many a thing may be, since the books say in what bounds; so that
question is put in place of the superlative.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token

TRIGGERS = word_set("""
    longest shortest widest broadest narrowest highest tallest lowest biggest largest smallest deepest
    thickest thinnest furthest farthest nearest closest most fewest least minimum maximum max min bare
    temperature hot warm heat cool cold degrees inches millimetres centimetres mm cm
""")
"""Of these a text must have one."""
_SIZES = {
    "longest": "long", "shortest": "long", "widest": "wide", "broadest": "wide", "narrowest": "wide",
    "highest": "high", "tallest": "high", "lowest": "high", "biggest": "big", "largest": "big",
    "smallest": "big", "deepest": "deep", "thickest": "thick", "thinnest": "thick", "furthest": "far",
    "farthest": "far", "nearest": "close", "closest": "close",
}  # fmt: skip
_LINES = r"""
<what><most> (?P<what>.+?) (?:that )?(?P<who><who>) <modal> <verb>(?P<tail> .+)?
     => {how} may the {what} be{for_who}{tail}
<what><most> (?:that )?(?P<what>.+?) (?:<modal>|is|are) (?:<stands> |to be )?(?:allowed|permitted|worn)? ?
    (?P<tail>.+)? => {how}{side} may {what} be{rest}
<what><most> (?:(?:permitted|allowed|possible) )?(?P<what>.+?)
    (?: (?:allowed|permitted|possible|going|there is|you can get))?(?P<tail> <side> .+)?
     => {how}{side} may the {what} be{rest}
(?P<lead>.+?)[,:] (?:the )?<most> (?P<what>.+?) => {how} may the {what} be, {lead}
<what>(?:max(?:imum)?|min(?:imum)?|greatest|least|largest) (?P<what>.+?) (?P<size><dimension>)
    (?P<tail> (?:for|in|on|of) .+)? => what is the {size} of the {what}{tail}
<what>(?:max(?:imum)?|min(?:imum)?|greatest|least|smallest) (?P<size><dimension>) (?P<tail>(?:of|for) .+)
     => what is the {size}{tail}
<what>(?:least|smallest|minimum|lowest) number of (?P<what>.+) => how many {what}
(?P<what>.+?)[,:;-]* (?:the )?(?:(?:bare|absolute) )?(?:minimum|least|fewest|min)(?: number)? (?P<who><who>)
    \s<modal> (?P<verb><verb>)(?P<tail> .+)? => how many {what} must {who} {verb}{tail}
<what>(?:fewest|least|minimum(?: number of)?) (?P<what>.+?) (?:that )?(?P<who><who>) <modal>
    \s(?:get by with |make do with )?(?:own|owning|have|having|keep)(?P<tail> .+)?
     => how many {what} must {who} own{tail}
<what>(?:fewest|least) (?P<what>.+?) (?:to|I) (?:own|have|keep) => how many {what} must I own
(?P<what>how many .+?),? <least>(?P<tail> .+)? => {what}{tail}
how many <unit> (?P<tail><side> .+) => how far {tail}
how many <unit> (?P<tail>(?:long|wide|high|tall|deep|across|broad|thick) .+) => how {tail}
(?P<what>(?:where|how) .+?),? in <unit> (?P<tail><side> .+) => {what} {tail}
(?:at )?(?:what|which) (?:temperature|heat|temp|setting) (?:do|does|should|must|can|may|is|are|to|for)
    \s(?:(?:i|we|you|one) )?(?P<lead>.*?)<wash>(?P<tail> .+?)?(?: (?:at|on))? => how must {washed} be washed
how (?:hot|warm|cool|cold) (?:can|may|should|must|do|does|is|are) (?:(?:i|we|you|one) )?(?P<lead>.*?)<wash>
    (?P<tail> .+?)?(?: at)? => how must {washed} be washed
(?P<lead>.+?)[,:] (?:what|which|at what) (?:temperature|heat|temp)
    (?: (?:to |for |do i )?(?:<wash>)(?: (?:it|them))?(?: at)?)? => how must {washed} be washed
<wash> temperature (?:for|of) (?P<lead>.+) => how must {washed} be washed
"""
_NAMES = {
    "what": r"(?:(?:what(?:'s| is| would be)?|tell me|give me|state|name) )?(?:the )?(?:very |absolute )?",
    "most": f"(?P<most>{'|'.join(_SIZES)})",
    "who": r"(?:i|we|you|one|he|she|they|anyone|somebody|someone|people|(?:an?|the|my|our|any) [\w' -]+?"
    r"|[a-z]{1,2}\d{1,2}s?)",
    "modal": r"(?:can|may|could|might|must|should|(?:am|are|is) allowed to|have to|has to|need to)",
    "verb": r"(?:have|wear|carry|grow|own|get away with|keep|put on|use|sport|be seen with|get)",
    "stands": r"(?:be|come|go|sit|hang|reach|fall|end|stop|stand|stick out|run|start|be worn|get)",
    "side": r"(?:above|below|over|under|past|beyond|from|off|up|down|inside|outside|beneath)",
    "dimension": r"(?:length|width|height|size|diameter|depth|distance|reach)",
    "least": r"(?:at (?:the )?(?:very |bare )?(?:least|minimum|most|maximum)|(?:as an? )?(?:bare )?"
    r"(?:minimum|maximum))",
    "unit": r"(?:inches|inch|mm|millimetres?|millimeters?|cm|centimetres?|centimeters?)",
    "wash": r"(?:wash(?:ed|ing)?|launder(?:ed|ing)?|clean(?:ed|ing)?)",
}


@cache
def _lines() -> tuple[tuple[re.Pattern[str], str], ...]:
    found = []
    for line in _LINES.strip().replace("\n    ", "").splitlines():
        source, _, put = line.partition(" => ")
        source = re.sub(r"(?<!\?P)<(\w+)>", lambda name: _NAMES[name[1]], source)
        found.append((re.compile(source, re.IGNORECASE), f"{put}?"))
    return tuple(found)


def may_ask(tokens: tuple[Token, ...]) -> bool:
    """Whether a text has a word of those that such a question has."""
    return any(token.low in TRIGGERS for token in tokens)


def extremes(text: str) -> Iterator[str]:
    """The text as the question how much the thing may be, in each way that its words allow."""
    plain = " ".join(text.replace("’", "'").split()).rstrip(" ?.!")
    plain = re.sub(r"(?i)(?:,? (?:please|pls|thanks|then))+$", "", plain)
    for pattern, put in _lines():
        found = pattern.fullmatch(plain)
        if found is not None:
            yield " ".join(put.format(**_parts(found)).replace(" ?", "?").split())


def _parts(found: re.Match[str]) -> dict[str, str]:
    said = {name: (words or "").strip(" ,") for name, words in found.groupdict().items()}
    size = _SIZES.get(said.get("most", "").casefold(), "")
    tail = said.get("tail", "")
    sided = re.match(rf"(?i){_NAMES['side']}\b", tail) is not None
    who = said.get("who", "")
    plain = who.casefold() in ("i", "we", "you", "one", "anyone", "somebody", "someone", "people", "")
    across = re.match(r"(?i)across\b ?", tail)
    rest = tail[across.end() :] if across is not None and size == "big" else tail
    washed = " ".join(word for word in (said.get("lead", ""), tail) if word)
    washed = re.sub(r"(?i)\b(?:be|the|my|a|an|at|it|them|to)\b ?", "", washed).strip()
    return {
        **said,
        "how": "how far" if sided and size in ("high", "far", "long", "close") else f"how {size}",
        "side": f" {tail}" if sided else "",
        "rest": "" if sided else f" {rest}".rstrip(),
        "tail": f" {tail}".rstrip(),
        "for_who": "" if plain else f" for {who}",
        "washed": f"the {washed}",
    }
