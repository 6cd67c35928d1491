"""The list that may be told where it was asked back which thing is meant: "footwear for hall rig"."""

from __future__ import annotations

from kb.text import Pattern

_FOR = Pattern(
    r"(?i)(?P<things>(?!.*\b(?:may|can|must|is|are|do|does)\b)[\w' -]{3,30}?) (?:for|in)"
    r" (?P<where>(?:the )?[\w' -]{3,40}?)\W*"
)
_LED = Pattern(r"(?i)(?P<where>[\w' -]{3,40}?)(?: -+|:|;|,) (?P<things>which .+?)\W*")
_ONE = Pattern(
    r"(?i)(?P<where>(?:(?:on|in|from|until|after|with|for|at) )?[\w' -]{3,40}?)(?:,| -+|:|;)"
    r" (?:which|what) (?P<things>[a-z]+(?: [a-z]+)?)\W*"
)
_NEEDED = Pattern(
    r"(?i)(?:and |so )?(?:which|what)(?: (?:kinds?|sorts?|types?|pairs?) of)? (?P<things>[\w' -]+?)"
    r" (?:do|must|should|would|shall) (?:I|we|you|they|one)"
    r" (?:need|want|require|have to have|have on|put on|wear)\b(?: on)?(?P<rest>[^?]*?)\W*"
)
_BARRED = Pattern(
    r"(?i)(?:and |so )?(?:which|what) (?P<things>[\w' -]+?) (?:is|are) (?:forbidden|prohibited|banned|barred"
    r"|not allowed|not permitted|never worn|not worn|ruled out)\b(?P<rest>[^?]*?)\W*"
)
_WHICH = Pattern(
    r"(?i)(?:and |so )?(?P<which>which|what) (?P<things>[\w' -]+?) (?:is|are|was|were) (?:it|worn|to be"
    r" worn|right|correct"
    r"|proper|the right one|wanted|required|needed|used|on)\b(?P<rest>[^?]*?)\W*"
)


_LEADING = frozenset({"on", "in", "from", "until", "after", "with", "for", "at"})
_OF_IT = frozenset(
    {"colour", "color", "size", "height", "length", "width", "side", "hand", "time", "one", "is"}
)


_NAMED = (
    Pattern(
        r"(?i)(?:and |so )?(?:what|which) (?P<as>colou?r|material|size)s? (?:of )?(?P<rest>(?!is\b|are\b).+)"
    ),
    Pattern(
        r"(?i)(?:and |so )?(?:what|which) (?P<as>colou?r|material|size)s? (?:is|are) (?:the |my |our |your )?"
        r"(?P<rest>.+)"
    ),
    Pattern(
        r"(?i)(?:and |so )?what(?: material)? (?:is|are) (?:the |my |our |your )?(?P<rest>.+?) (?P<as>made)"
        r"(?: of| from| out of)?\W*"
    ),
)
_ASPECTS = {"color": "colour", "material": "construction", "made": "construction"}


_LACKED = Pattern(r"(?i)^(?!what\b|which\b).*\b(?:without|minus|sans)\b")


def of_names(text: str) -> tuple[str, str]:
    """What is asked that the names of things may tell, and which things it is asked of; "" and the text."""
    said = " ".join(text.split())
    for number, pattern in enumerate(_NAMED):
        if (found := pattern.fullmatch(said)) is not None:
            low = found["as"].lower()
            return _ASPECTS.get(low, low), f"Which {found['rest']}" if not number else found["rest"]
    return "", text


def as_list(text: str) -> str | None:
    """The text as a question for a list; None where it asks of one thing."""
    said = " ".join(text.split())
    if _LACKED.search(said) is not None:
        return None  # "a driver in the cab without a tie": whether it may be left off
    led = _LED.fullmatch(said)
    if led is not None and said.lower().count("which") > 1:
        return f"What do I wear in {led['where']}?"
    of_one = _ONE.fullmatch(said)
    if of_one is not None and of_one["things"].split()[0].lower() not in _OF_IT:
        where = of_one["where"].strip()
        put = where if where.split()[0].lower() in _LEADING else f"in {where}"
        return f"Which {of_one['things']} do I wear {put}?"
    barred = _BARRED.fullmatch(said)
    if barred is not None:
        return f"Which {barred['things']} must I not wear{barred['rest']}?"
    needed = _NEEDED.fullmatch(said)
    if needed is not None:
        return f"Which {needed['things']} do I wear{needed['rest']}?"
    which = _WHICH.fullmatch(said)
    if which is not None:
        return f"Which {which['things']} do I wear{which['rest']}?"
    meant = _FOR.fullmatch(said)
    if meant is not None:
        things = meant["things"].strip().removeprefix("Which ").removeprefix("which ")
        return f"Which {things} do I wear in {meant['where']}?"
    return None
