"""The circumstances of a sentence, "in boat rig when it is winter, unless hauling lines", as a condition.

Every word has to find its place: a part that nothing explains makes the whole unread.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from kb.guidance.checking.names import Names
from kb.model.conditions import ALWAYS, AnyOf, Condition, Test, all_of, any_of, negate
from kb.model.values import NO, YES, intersect, is_empty
from kb.text import Pattern

_LEADS = Pattern(
    r"(?:,? ?(?:and |but )*)(?:when|whenever|if|where|while|whilst|provided that|provided|as long as)\s"
)
_WHEN = Pattern(r",? (?:when|whenever|if|where|while|whilst|provided that|provided|as long as) ")
_BUT = Pattern(r"(?:^|,? )(?P<word>unless|except|save|other than|but not) ")
_AFTER_EXCEPT = Pattern(r"(?:for|by|that|when|if|where|while|as to|to) ")
_WEARER = Pattern(r"(?:the wearer|the member|they|he or she|you|one|members?) (?:is|are) ")
_DETERMINERS = Pattern(r"(?:the|an?|any|his or her|his|her|their|your|my|its|one's) ")
_WORN = Pattern(
    r"(?P<no>without(?: wearing)?|not wearing|(?:the wearer )?does not wear)? ?"
    r"(?P<yes>with|wearing|(?:the wearer )?wears|together with|along with)? ?"
)
_LINKED = (
    "without ",
    "with ",
    "wearing ",
    "not wearing ",
    "holding ",
    "in the ",
    "on the ",
    "of the ",
    "in ",
    "on ",
    "at ",
    "aboard ",
    "during ",
    "not ",
    "the weather is ",
    "the wearer is ",
    "the ",
)
_DENYING = ("without ", "not wearing ", "not holding ")
_ALWAYS = Pattern(r"(?:^|,? )(?:at all times|always|without exception|in all circumstances)$")
_LISTED = Pattern(r"(?:(?P<some>(?:at least )?one of these holds)|all of these hold): (?P<points>\(a\) .+)")
_MARK = Pattern(r"^(?:and |or )?\([a-z]\) ")
_NUMBERED = Pattern(r"(?:either )?\(1\) .+, or \(2\) .+")
_NUMBER = Pattern(r"(?:^|, or )\((?P<number>\d{1,2})\) ")
_LONGEST = 900
_MEMBERS = r"(?:members|people|those|anyone|everyone|personnel) (?:who|that) (?:are|is) "
_MEMBERS_WHO = Pattern(_MEMBERS)
_BY_MEMBERS = Pattern(rf" by (?={_MEMBERS})")


def read_tail(names: Names, text: str) -> Condition | None:
    """What follows (or comes before) a statement, as a condition; `ALWAYS` for nothing, None if unread."""
    tail = _ALWAYS.sub("", text.strip(" ,;"))
    if not tail:
        return ALWAYS
    if len(tail) > _LONGEST:
        return None
    if tail in names.tails:
        return names.tails[tail]
    if tail.startswith("neither "):
        return None  # "is worn neither ashore nor afloat" denies the whole
    for start, end in reversed([match.span() for match in _BUT.finditer(tail)]):
        before = read_tail(names, tail[:start]) if start else ALWAYS
        if before is None:
            continue
        after = _exception(names, tail[end:])
        if after is not None:
            return all_of([before, negate(after)])
    if tail.startswith("by "):
        return read_people(names, tail.removeprefix("by "))
    who = _BY_MEMBERS.search(tail)
    if who:
        parts = [read_tail(names, tail[: who.start()]), read_people(names, tail[who.end() :])]
        known = [part for part in parts if part is not None]
        return all_of(known) if len(known) == len(parts) else None
    lead = _LEADS.match(tail)
    if lead:
        return read_condition(names, tail[lead.end() :])
    for match in _WHEN.finditer(tail):
        before = read_condition(names, tail[: match.start()])
        after = read_tail(names, tail[match.start() :].strip(" ,"))
        if isinstance(before, AnyOf) and " and " in tail[: match.start()]:
            continue  # "on deck and on the slipway when ...": the second may go with the last alone
        if before is not None and after is not None:
            return all_of([before, after])
    return read_condition(names, tail)


def read_people(names: Names, text: str) -> Condition | None:
    """ "K1 to K5 in watch rig": who, and the circumstances."""
    who = _MEMBERS_WHO.match(text)
    if who:
        return read_tail(names, text[who.end() :])
    words = text.split(" ")
    for cut in range(len(words), 0, -1):
        holder = read_holder(names, " ".join(words[:cut]))
        rest = read_tail(names, " ".join(words[cut:])) if holder is not None else None
        if holder is not None and rest is not None:
            return all_of([holder, rest])
    return None


def _exception(names: Names, text: str) -> Condition | None:
    plain = text.strip(" ,")
    lead = _AFTER_EXCEPT.match(plain)
    rest = plain[lead.end() :] if lead else plain
    people = read_people(names, rest) if lead and lead[0] in ("by ", "for ") else None
    found = read_holder(names, rest) or people or read_condition(names, rest)
    return found or read_condition(names, plain)


def read_condition(names: Names, text: str) -> Condition | None:
    """Phrases of circumstances side by side or joined by "and", "or"; None if a word is not explained."""
    plain = text.strip(" ,")
    if not plain or len(plain) > _LONGEST:
        return None
    found = names.conditions.get(plain) or names.conditions.get(plain.removeprefix("either "))
    if found is not None:
        return found
    listed = _LISTED.fullmatch(plain)
    if listed:
        return _lettered(names, listed["points"], listed["some"] is not None)
    if _NUMBERED.fullmatch(plain):
        return _numbered(names, plain.removeprefix("either "))
    wearer = _WEARER.match(plain)
    if wearer:
        return read_condition(names, plain[wearer.end() :])
    return (
        _sequence(names, plain)
        or _joined(names, plain.removeprefix("both "))
        or _worn(names, plain)
        or names.stated(plain)
    )


def _lettered(names: Names, text: str, some: bool) -> Condition | None:
    """ "(a) the wearer is on leave; (b) [all of these hold: (a) ...]", at least one of them or all."""
    parts: list[str] = []
    depth = 0
    for point in text.split("; "):
        if depth:
            parts[-1] += f"; {point}"
        else:
            parts.append(_MARK.sub("", point))
        depth += point.count("[") - point.count("]")
    found = [read_condition(names, part.removeprefix("[").removesuffix("]")) for part in parts]
    known = [part for part in found if part is not None]
    if len(known) < len(found):
        return None
    return any_of(known) if some else all_of(known)


def _numbered(names: Names, text: str) -> Condition | None:
    """ "(1) it is dark, and the wearer is in town, or (2) the wearer is on leave": each stands by itself."""
    marks = list(_NUMBER.finditer(text))
    if [mark["number"] for mark in marks] != [str(index) for index in range(1, len(marks) + 1)]:
        return None
    ends = [*(mark.start() for mark in marks[1:]), len(text)]
    found = [read_condition(names, text[mark.end() : end]) for mark, end in zip(marks, ends, strict=True)]
    known = [part for part in found if part is not None]
    return any_of(known) if len(known) == len(found) else None


def _sequence(names: Names, text: str) -> Condition | None:
    """Phrases side by side: "in boat rig ashore", "with the storm coat, in town"."""
    words = text.split(" ")
    for cut in range(len(words) - 1, 0, -1):
        first = " ".join(words[:cut]).rstrip(",")
        found = names.conditions.get(first) or (_worn(names, first) if cut < 7 else None)
        rest = " ".join(words[cut + 1 if words[cut] == "and" else cut :])
        if (
            found is None
            or words[cut] in ("or", "nor", "neither")
            or (words[cut - 1].endswith(",") and " or " in rest)
        ):
            continue
        after = read_condition(names, rest)
        if words[cut - 1].endswith(",") and isinstance(after, AnyOf) and " and " in rest:
            continue  # "in boat rig, on deck and on the slipway" may be three cases
        if after is not None and not (_ends_open(first, rest)):
            return _both([found, after]) if words[cut] == "and" else all_of([found, after])
    return None


def _both(parts: Sequence[Condition]) -> Condition:
    """Parts joined by "and": "on deck and on the slipway" are two places, for nobody is in both at once."""
    tests = [part for part in parts if isinstance(part, Test)]
    facts = {test.fact for test in tests}
    apart = len(tests) == len(parts) and len(facts) == 1
    if apart and all(is_empty(intersect(one.values, other.values)) for one, other in combinations(tests, 2)):
        return any_of(parts)
    return all_of(parts)


def _ends_open(first: str, rest: str) -> bool:
    """Whether an "or" further on could take in what stands before: then it is not clear what it joins."""
    return " or " in f" {rest} " and " and " in f" {first} {rest} "


def _pieces(text: str, word: str) -> Iterator[list[str]]:
    """The ways to take a text for a list joined by a word, the loosest first.

    What stands between commas is a part of the list only if no other joining word begins it.
    """
    for mark in (f", {word} ", f" {word} "):
        head, found, last = text.rpartition(mark)
        if not found:
            continue
        parts = head.split(", ")
        if mark[0] == "," and f", {word} " in head:
            parts = head.split(f", {word} ")
        if any(part.startswith(("and ", "or ", "nor ", "but ")) for part in parts):
            parts = [head]
        yield [*parts, last]
        if len(parts) > 1:
            yield [head, last]


def _joined(names: Names, text: str) -> Condition | None:
    """Parts joined by "and" or "or"; a comma before the word joins more loosely than none."""
    if text.startswith("neither ") and " nor " in text:
        first, _, second = text.removeprefix("neither ").partition(" nor ")
        both = [read_condition(names, part) for part in (first, second)]
        known = [part for part in both if part is not None]
        return all_of([negate(part) for part in known]) if len(known) == 2 else None
    head, found, rest = text.partition(" and either ")
    if found:
        before = [read_condition(names, part) for part in head.strip(" ,").split(", ")]
        after = read_condition(names, f"either {rest}")
        known = [part for part in (*before, after) if part is not None]
        return all_of(known) if len(known) == len(before) + 1 else None
    alternatives = text.startswith("either ")
    text = text.removeprefix("either ")
    mixed = " and " in text and " or " in text and not alternatives
    for word in ("or", "and")[: 1 if alternatives else 2]:
        if mixed and f", {word} " not in text:
            continue
        for parts in _pieces(text, word):
            denied = word == "or" and _is_shared_denial(parts)
            if word == "or" and parts[0].startswith("not ") and not parts[-1].startswith("not "):
                continue  # "not ashore or on leave" may mean two things
            each = _sharing(names, parts) or _each(names, parts, denied)
            if each is not None:
                if word == "and":
                    return _both(each)
                return all_of(each) if denied else any_of(each)
    return None


def _sharing(names: Names, parts: list[str]) -> list[Condition] | None:
    """Parts that share the end of the last, "in workshop or shore rig"; None if they do not."""
    words = parts[-1].split(" ")
    start = next((lead for lead in _LINKED if parts[0].startswith(lead)), "")
    for cut in range(1, len(words)):
        shared = " ".join(words[cut:])
        whole = [f"{part} {shared}" for part in parts[:-1]] + [parts[-1]]
        whole = [part if part.startswith(start) else f"{start}{part}" for part in whole]
        found = [names.conditions.get(part) for part in whole]
        known = [part for part in found if isinstance(part, Test)]
        if len(known) == len(found) and len({test.fact for test in known}) == 1:
            return list(known)
    return None


def _is_shared_denial(parts: list[str]) -> bool:
    """Whether "without" stands once before a list: "without the cap or the hood" is without either."""
    start = next((lead for lead in _DENYING if parts[0].startswith(lead)), "")
    return start != "" and not any(part.startswith(start) for part in parts[1:])


def _each(names: Names, parts: list[str], denied: bool) -> list[Condition] | None:
    """Each part of a list, with the beginning of the first where it needs that."""
    found: list[Condition] = []
    start = next((lead for lead in _LINKED if parts[0].startswith(lead)), "")
    for part in parts:
        plain = part.removeprefix("and ").removeprefix("or ").strip()
        read = None if denied and part != parts[0] else read_condition(names, plain)
        if start and read is None and not plain.startswith(start):
            read = read_condition(names, start + plain)
        if read is None:
            return None
        found.append(read)
    return found


def _worn(names: Names, text: str) -> Condition | None:
    """ "with the storm coat", "without a belt", "wearing the smock"."""
    match = _WORN.match(text)
    if match is None or not (match["no"] or match["yes"]):
        return None
    rest = text[match.end() :]
    article = _DETERMINERS.match(rest)
    item = names.item(rest[article.end() :] if article else rest)
    if item is None or f"worn:{item}" not in names.lookup.facts:
        return None
    return Test(f"worn:{item}", NO if match["no"] else YES)


_ALL = frozenset(
    (
        "everyone",
        "everybody",
        "members",
        "all members",
        "every member",
        "each member",
        "all",
        "all hands on station",
        "personnel",
        "all personnel",
        "anyone",
        "anybody",
        "you",
        "members of the service",
        "all members of the service",
        "a member",
        "the member",
        "any member",
        "all grades",
        "members of all grades",
        "the wearer",
        "wearers",
    )
)
_LONGEST_OF_ALL = max(len(text.split(" ")) for text in _ALL)
_WHO_HOLD = Pattern(r" (?:who|that) (?:holds?|have|has) ")
_UP_TO = Pattern(r"(?:(?:members of )?(?:all )?grades )?up to(?: and including)? (?P<grade>\S+)")
_QUANTIFIED = Pattern(r"(?:all|every|each|any|those|members who are|members of grades?|grades?|the) ")


def read_holder(names: Names, text: str) -> Condition | None:
    """Who a sentence is about: "K2 and above of the boat branch with the diver qualification"."""
    plain = _UP_TO.sub(r"\g<grade> and below", _WHO_HOLD.sub(" with ", text.strip(" ,")))
    if plain in _ALL:
        return ALWAYS
    if plain in names.holders:
        return names.holders[plain]
    for start, end in ((m.start(), m.end()) for m in _BUT.finditer(plain)):
        before, after = read_holder(names, plain[:start]), read_holder(names, plain[end:])
        if before is not None and after is not None:
            return all_of([before, negate(after)])
    words = plain.split(" ")
    for cut in range(min(len(words) - 1, max(names.longest_holder, _LONGEST_OF_ALL)), 0, -1):
        first = " ".join(words[:cut])
        known = names.holders.get(first) or (ALWAYS if first in _ALL else None)
        rest = known is not None and read_condition(names, " ".join(words[cut:]))
        if known is not None and rest and names.of_holders(rest):
            return all_of([known, rest])
    quantified = _QUANTIFIED.match(plain)
    if quantified and plain[quantified.end() :] in names.holders:
        return names.holders[plain[quantified.end() :]]
    stated = names.stated(plain)
    return stated if stated is not None and names.of_holders(stated) else None
