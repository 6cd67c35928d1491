"""Conditions as clauses: "when the weather is foul and the sleeves are down, unless hauling lines"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from kb.model.conditions import ALWAYS, NEVER, AllOf, Condition, NotOf, Test, any_of
from kb.model.lookup import Lookup
from kb.wording.english import is_adverbial, is_compound, is_participial, listing, phrase
from kb.wording.normal import depth, is_worn, positive, without_idle
from kb.wording.phrases import WEARER, Phrase
from kb.wording.testing import phrase_of


class Parts(NamedTuple):
    """A condition taken apart: who, what follows directly, what follows "when" and "unless".

    `except_for` is the same as `unless` where that only says who somebody is, `exception` as a condition.
    """

    holder: tuple[Test, ...] = ()
    attached: tuple[Phrase, ...] = ()
    when: tuple[Phrase, ...] = ()
    unless: tuple[Phrase, ...] = ()
    except_for: tuple[Test, ...] = ()
    exception: Condition | None = None


def say_test(lookup: Lookup, test: Test) -> str:
    """One test as a clause that stands by itself: "the weather is foul", "the wearer is ashore"."""
    return phrase_of(lookup, test).clause


@lru_cache(maxsize=4096)  # each answer says the conditions of all rules that bear on it
def say_condition(lookup: Lookup, condition: Condition, lead: str = "when") -> str:
    """A condition in words, to stand after the lead word; empty for the condition that always holds."""
    condition = without_idle(lookup, condition)
    if condition == ALWAYS:
        return ""
    if condition == NEVER:
        return phrase(lead, "never")
    parts = take_apart(lookup, condition)
    holder = tuple(phrase_of(lookup, test) for test in parts.holder)
    return compose(parts._replace(holder=(), attached=(*holder, *parts.attached)), lead)


def take_apart(lookup: Lookup, condition: Condition) -> Parts:
    """The conjuncts of a condition by the place that they take in a sentence."""
    condition = without_idle(lookup, condition)
    if condition == NEVER:
        return Parts(when=(Phrase("no case is left", "never"),))
    conjuncts = condition.parts if isinstance(condition, AllOf) else (condition,)
    holder: list[Test] = []
    attached: list[Phrase] = []
    when: list[Phrase] = []
    unless: list[Condition] = []
    for part in conjuncts:
        if isinstance(part, NotOf) and not is_worn(part.part):
            unless.append(part.part)
            continue
        found = phrase_in(lookup, positive(lookup, part))
        if found.holder and isinstance(part, Test):
            holder.append(part)
        elif found.attached is not None:
            attached.append(found)
        else:
            when.append(found)
    exceptions: tuple[Phrase, ...] = ()
    people = tuple(p for p in unless if isinstance(p, Test) and phrase_of(lookup, p).holder)
    if unless:
        exceptions = (phrase_in(lookup, positive(lookup, any_of(unless))),)
    attached.sort(key=lambda p: p.place)
    holder.sort(key=lambda t: phrase_of(lookup, t).place)
    whole = positive(lookup, any_of(unless)) if unless else None
    people = people if len(unless) == 1 else ()
    return Parts(tuple(holder), tuple(attached), tuple(when), exceptions, people, whole)


def phrase_in(lookup: Lookup, condition: Condition) -> Phrase:
    """The phrase of a condition without `not`, its parts joined so that they cannot be misread."""
    if isinstance(condition, Test):
        return phrase_of(lookup, condition)
    if isinstance(condition, NotOf):
        return phrase_in(lookup, positive(lookup, condition))
    if not condition.parts:
        return Phrase("there is no condition" if isinstance(condition, AllOf) else "no case is left")
    if len(condition.parts) == 1:
        return phrase_in(lookup, condition.parts[0])
    if depth(condition) > 2:
        return Phrase(lettered(lookup, condition))
    phrases = [phrase_in(lookup, part) for part in condition.parts]
    if isinstance(condition, AllOf):
        return _both(phrases)
    return _either(phrases, any(isinstance(part, AllOf) for part in condition.parts))


def lettered(lookup: Lookup, condition: Condition) -> str:
    """A deeply nested condition as a lettered list: "at least one of these holds: (a) ...; (b) ..."."""
    if isinstance(condition, Test | NotOf) or depth(condition) < 2:
        return phrase_in(lookup, condition).clause
    lead = "all of these hold" if isinstance(condition, AllOf) else "at least one of these holds"
    marks = "abcdefghijklmnopqrstuvwxyz"
    points: list[str] = []
    for index, part in enumerate(condition.parts):
        mark = marks[index] if index < len(marks) else str(index + 1)
        text = lettered(lookup, part) if depth(part) > 2 else phrase_in(lookup, part).clause
        points.append(f"({mark}) [{text}]" if "(a)" in text else f"({mark}) {text}")
    return f"{lead}: {'; '.join(points)}"


def _both(phrases: Sequence[Phrase]) -> Phrase:
    bare = _bare_list(phrases)
    attached: str | None = None
    if all(p.attached is not None and not p.holder and not is_compound(p.attached) for p in phrases):
        attached = _joined([p.attached or "" for p in phrases])
    state = bare is not None and all(p.state for p in phrases)
    clause = f"{WEARER} is {bare}" if state else _joined(_merged(phrases))
    return Phrase(clause, bare, attached, state, noun=bare or clause)


def _bare_list(phrases: Sequence[Phrase]) -> str | None:
    """The bare forms joined by "and", at most one of them with an "or" of its own, and that one last."""
    texts = [p.bare for p in phrases if p.bare is not None]
    if len(texts) < len(phrases) or sum(map(is_compound, texts)) > 1:
        return None
    return _joined(sorted(texts, key=is_compound))


def _either(phrases: Sequence[Phrase], nested: bool) -> Phrase:
    bare: str | None = None
    if all(p.bare is not None for p in phrases) and not nested:
        bare = _alternatives([p.bare or "" for p in phrases])
    attached: str | None = None
    if all(p.attached is not None and not p.holder for p in phrases) and not nested:
        attached = _alternatives([p.attached or "" for p in phrases])
    state = bare is not None and all(p.state for p in phrases)
    either = f"either {_apart([p.clause for p in phrases])}" if nested else ""
    clause = (
        f"{WEARER} is {bare}" if state else either or f"either {_alternatives([p.clause for p in phrases])}"
    )
    return Phrase(clause, bare, attached, state, noun=bare or clause)


def _apart(clauses: Sequence[str]) -> str:
    """ "A, or the wearer is in town and is a warden": an "and" set off by a comma could go with all of them.

    What cannot be said without that comma is numbered.
    """
    marked = f", and {WEARER} "
    texts = [text if " or " in text else text.replace(marked, " and ", 1) for text in clauses]
    if any(", and " in text for text in texts):
        texts = [f"({index}) {text}" for index, text in enumerate(texts, 1)]
    return ", or ".join(texts)


def _alternatives(texts: Sequence[str]) -> str:
    """ "with the cap or the hood": a shared beginning is said once."""
    for start in ("with ", "wearing ", "holding ", f"{WEARER} wears ", f"{WEARER} holds "):
        if all(text.startswith(start) for text in texts) and not any(is_compound(text) for text in texts):
            return start + listing([text.removeprefix(start) for text in texts], "or")
    return listing([piece for text in texts for piece in _pieces(text)], "or")


def _pieces(text: str) -> list[str]:
    """The alternatives that a text consists of, where each stands by itself: "on parade or on leave"."""
    pieces = re.split(r", or |, | or ", text)
    alone = all(is_adverbial(piece) or is_participial(piece) for piece in pieces)
    return pieces if alone and not re.search(r" (and|but|nor|except) ", text) else [text]


def _joined(texts: Sequence[str]) -> str:
    """ "without the cap or the hood": a shared denial is said once."""
    for start in (
        "without ",
        "not wearing ",
        "not holding ",
        f"{WEARER} does not wear ",
        f"{WEARER} does not hold ",
    ):
        if all(text.startswith(start) for text in texts) and not any(is_compound(text) for text in texts):
            return start + listing([text.removeprefix(start) for text in texts], "or")
    return listing(texts)


def compose(parts: Parts, lead: str = "when") -> str:
    """What follows the statement: attached phrases, "when", "unless". Without a lead, clauses only."""
    attached, when = list(parts.attached), list(parts.when)
    if lead and attached and not when and all(p.bare for p in attached):
        text = phrase(lead, _sequence(attached, bare=True))
    elif lead:
        text = phrase(_sequence(attached), _when(when, lead))
    else:
        text = _when([*attached, *when], "")
    return with_unless(text, parts.unless)


def follow(parts: Parts, lead: str = "when") -> str:
    """The same beside a full statement and without "unless": what can be attached needs no "when"."""
    return phrase(_sequence(parts.attached), _when(list(parts.when), lead))


def with_unless(text: str, unless: Sequence[Phrase], mark: str = ",") -> str:
    """The text with its exceptions behind it, set off by `mark`."""
    if not unless:
        return text
    excepted = unless[0].attached
    if excepted and text and not unless[0].holder and " and " not in excepted:
        return f"{text}{mark} except {excepted.removeprefix('either ')}"
    said = unless[0].bare or unless[0].clause
    if ", or " not in said and "(a)" not in said:
        said = said.removeprefix("either ")
    return f"{text}{mark} unless {said}" if text else f"unless {said}"


def _sequence(phrases: Sequence[Phrase], bare: bool = False) -> str:
    """Attached phrases one after another, "in boat rig ashore"; set off by "and" where one holds an "or"."""
    texts = [(p.bare if bare else p.attached) or "" for p in phrases]
    if bare and not all(map(is_adverbial, texts)):
        return listing(texts)
    for start, word in (("with ", "and"), ("without ", "or")):
        shared = [text for text in texts if text.startswith(start) and not is_compound(text)]
        if len(shared) > 1:
            one = start + listing([text.removeprefix(start) for text in shared], word)
            texts = [*(text for text in texts if text not in shared), one]
    texts = [
        f"and {text}" if text.startswith("without ") and before.startswith("with ") else text
        for before, text in zip(("", *texts), texts, strict=False)
    ]
    unclear = [text for text in texts[:-1] if is_compound(text) and not text.endswith(" rig")]
    return listing(texts) if unclear else " ".join(texts)


def _when(phrases: list[Phrase], lead: str) -> str:
    if not phrases:
        return ""
    if len(phrases) == 1:
        return phrase(lead, (phrases[0].bare if lead else None) or _unlead(phrases[0].clause, lead))
    bare = _bare_list(phrases)
    if lead and bare is not None:
        return phrase(lead, bare)
    clauses = _merged(phrases)
    last = [c for c in clauses if "(a)" in c]
    return phrase(lead, listing([c for c in clauses if "(a)" not in c] + last))


def _merged(phrases: Sequence[Phrase]) -> list[str]:
    """The clauses, all that the wearer "is" in one of them: "the wearer is ashore and not hauling lines"."""
    states = [p for p in phrases if p.state and not is_compound(p.bare or "")]
    if len(states) < 2:
        return [p.clause for p in phrases]
    one = f"{WEARER} is {listing([p.bare or '' for p in states])}"
    return [one if p is states[0] else p.clause for p in phrases if p is states[0] or p not in states]


def _unlead(clause: str, lead: str) -> str:
    """ "either" is not needed where nothing stands before the alternatives."""
    return clause.removeprefix("either ") if lead and "(a)" not in clause else clause
