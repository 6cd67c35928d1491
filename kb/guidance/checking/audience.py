"""For whom guidance is, and the circumstances that its headings and lead-ins set."""

from __future__ import annotations

import re

from kb.guidance.checking.conditions import read_condition, read_holder, read_tail
from kb.guidance.checking.names import Names
from kb.guidance.checking.words import fold
from kb.model.conditions import ALWAYS, Condition, all_of

_SPEAKS = re.compile(
    r"^(?:this|the|these)? ?(?:guidance|order|instruction|document|note|notice|guide|rules?)?,? ?"
    r"(?:applies|apply|is meant|is|are|holds?)? ?(?:only )?(?:to|for)?:? ?"
)
_WITHIN = re.compile(r"^(?:all|every) ")
_NUMBER = re.compile(r"^(?:section |part |chapter )?[\d.]*\d[.)]?\s+|^[\d.]+\s+|^[a-z][.)]\s+")


def read_audience(names: Names, texts: tuple[str, ...]) -> tuple[Condition, bool]:
    """The condition that holds for everyone addressed, and whether every word of it was understood."""
    found: list[Condition] = []
    sure = True
    for text in texts:
        for sentence in re.split(r"(?<=[.;])\s+", text):
            condition = read_who(names, sentence)
            sure = sure and condition is not None
            found += [condition] if condition is not None else []
    return all_of(found), sure


def read_who(names: Names, text: str) -> Condition | None:
    """ "This guidance applies to K1 to K5 in boat rig"; None if a word is not understood."""
    plain = fold(text).strip(" .;:")
    lead = _SPEAKS.match(plain)
    plain = plain[lead.end() :] if lead else plain
    if not plain:
        return ALWAYS
    words = plain.split(" ")
    for cut in range(len(words), 0, -1):
        first = " ".join(words[:cut]).strip(" ,")
        holder = read_holder(names, first) or read_holder(names, _WITHIN.sub("", first))
        if holder is None:
            continue
        rest = " ".join(words[cut:]).strip(" ,")
        tail = read_tail(names, rest) or _each(names, rest)
        if tail is not None:
            return all_of([holder, tail])
    return read_tail(names, plain) or _each(names, plain)


def _each(names: Names, text: str) -> Condition | None:
    """Circumstances parted by commas: "in watch rig and boat rig, ashore, in winter"."""
    found = []
    for part in text.split(", "):
        condition = read_condition(names, part) or read_holder(names, part) or _season(names, part)
        if condition is None:
            return None
        found.append(condition)
    return all_of(found)


def _season(names: Names, text: str) -> Condition | None:
    """ "In winter" where the books call the term "winter"."""
    bare = re.sub(r"^(?:in|during|at|on) (?:the )?", "", text)
    return names.stated(bare) if bare != text else None


def read_heading(names: Names, text: str) -> Condition:
    """The circumstances that a heading names: "3. Watch rig"; `ALWAYS` if it names none."""
    plain = _NUMBER.sub("", fold(text)).strip(" .:")
    if not plain or len(plain) > 80:
        return ALWAYS
    found = read_holder(names, plain) or names.conditions.get(plain) or names.stated(plain)
    if found is None:
        return ALWAYS
    if any(fact.startswith("worn:") for fact in _facts(found)):
        return ALWAYS  # "Belts" is what a section is about, not what is worn in it
    return found


def _facts(condition: Condition) -> list[str]:
    from kb.model.conditions import tests  # noqa: PLC0415

    return [test.fact for test in tests(condition)]
