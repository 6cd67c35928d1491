"""The list that may be told where it was asked back which thing is meant: "footwear for hall rig"."""

from __future__ import annotations

from kb.text import Pattern

_FOR = Pattern(
    r"(?i)(?P<things>(?!.*\b(?:may|can|must|is|are|do|does)\b)[\w' -]{3,30}?) (?:for|in)"
    r" (?P<where>(?:the )?[\w' -]{3,40}?)\W*"
)
_LED = Pattern(r"(?i)(?P<where>[\w' -]{3,40}?)(?: -+|:|;|,) (?P<things>which .+?)\W*")
_WHICH = Pattern(
    r"(?i)(?:and |so )?(?P<which>which|what) (?P<things>[\w' -]+?) (?:is|are|was|were) (?:it|worn|to be"
    r" worn|right|correct"
    r"|proper|the right one|wanted|required|needed|used|on)\b(?P<rest>[^?]*?)\W*"
)


def as_list(text: str) -> str | None:
    """The text as a question for a list; None where it asks of one thing."""
    said = " ".join(text.split())
    led = _LED.fullmatch(said)
    if led is not None and said.lower().count("which") > 1:
        return f"What do I wear in {led['where']}?"
    which = _WHICH.fullmatch(said)
    if which is not None:
        return f"Which {which['things']} do I wear{which['rest']}?"
    meant = _FOR.fullmatch(said)
    if meant is not None:
        things = meant["things"].strip().removeprefix("Which ").removeprefix("which ")
        return f"Which {things} do I wear in {meant['where']}?"
    return None
