"""Words that stand for a name of the books: "the webbing one", "nothing running", "twelve letters".

A text that is not understood is read once more with the name in their place, where only one can be meant.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import cache

import msgspec

from kb.measures import UNITS, same_dimension
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.months import MONTHS
from kb.model.questions import Reading, Span
from kb.model.records import Fact
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import NUMBER_WORDS, word_set
from kb.reader.words.tokens import Token, tokenize
from kb.text import Pattern

Edit = tuple[int, int, str]
_ITEMS = ("item", "items")
_BOUNDS = ("above", "below", "at least", "at most")
_DENYING = word_set("no without")
_MORE = word_set("more longer higher over upwards above")
_FEWER = word_set("fewer less shorter under below")


def put_names(found: Understood, lookup: Lookup) -> str | None:
    """The text with names in place of what stands for them; None where nothing does."""
    text = found.text
    for start, end, name in _edits(found, lookup):
        text = text[:start] + name + text[end:]
    return text if text != found.text else None


def left_away(found: Understood, lookup: Lookup) -> tuple[str, ...]:
    """The words of a text that tell when, how old or which animal, for which no name was put: left out."""
    from kb.reader.recast.ages import ages  # noqa: PLC0415  most questions are understood without
    from kb.reader.recast.lives import TIMES  # noqa: PLC0415  most questions are understood without
    from kb.reader.recast.lodged import lodged  # noqa: PLC0415  as above

    edits = {(start, end) for start, end, name in _edits(found, lookup) if not name}
    return tuple(
        found.text[s:e].strip(" ,")
        for way in (*TIMES, ages, lodged)
        for s, e, _ in way(found, lookup)
        if (s, e) in edits
    )


def _edits(found: Understood, lookup: Lookup) -> tuple[Edit, ...]:
    """What is put in place of what, from the end of the text on; no two of them overlap."""
    ways: tuple[Callable[[Understood, Lookup], Iterator[Edit]], ...] = (
        _implied, _the_one, _nothing_done, _counted, _measured, _waiver, _folk, _states, _denied, _absent,
        _out_and_about, _circumstances, _contraries, _lives, _alike, _lettered, _short_months,
    )  # fmt: skip
    kept: list[Edit] = []
    meant = {(start, end): name for way in ways for start, end, name in way(found, lookup)}
    for edit in sorted(((*place, name) for place, name in meant.items()), reverse=True):
        if not kept or edit[1] <= kept[-1][0]:
            kept.append(edit)
    from kb.reader.recast.scattered import scattered  # noqa: PLC0415  most questions are understood without

    apart = [one for one in scattered(found, lookup) if all(one[1] <= k[0] or k[1] <= one[0] for k in kept)]
    return tuple(sorted([*kept, *apart], reverse=True))


def spans_put(found: Understood, spans: tuple[Span, ...], again: Reading, lookup: Lookup) -> tuple[Span, ...]:
    """The spans of a text, of which those that a name was put for are linked to what `again` took it for."""
    edits = _edits(found, lookup)
    kept = [
        span for span in spans if not any(start <= span.start and span.end <= end for start, end, _ in edits)
    ]
    for start, end, name in edits:
        moved = sum(len(other) - (last - first) for first, last, other in edits if last <= start)
        within = [s for s in again.spans if start + moved <= s.start and s.end <= start + moved + len(name)]
        link = next((span for span in within if span.target), None)
        role, target = (link.role, link.target) if link is not None else ("filler", None)
        said = found.text[start:end]
        if said.strip():
            kept.append(Span(start=start, end=end, text=said, role=role, target=target, how="everyday"))
    return tuple(sorted(kept, key=lambda span: span.start))


_CAPITALS = Pattern(r"\b([A-Z]{3,}(?:[ -][A-Z]{2,})*) ([a-z]+)\b")


def _lettered(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "The SKERRY LIGHTS strip": of the things of which a clause has the lettering, the one so called."""
    for match in _CAPITALS.finditer(found.text):
        clauses = {clause.id for clause in lookup.base.clauses if match[1] in clause.text}
        items = {i for rule in lookup.base.rules if rule.clause in clauses for i in rule.scope.items}
        noun = tokenize(match[2])[0].key
        called = [i for i in items if tokenize(lookup.items[i].label)[-1].key == noun]
        if len(called) == 1:
            yield match.start(), match.end(), lookup.items[called[0]].label


_SHORT_MONTH = Pattern(
    r"(?i)\b(?:(?<=in )|(?<=from )|(?<=since )|(?<=until )|(?<=till )|(?<=by )|(?<=of )|(?<=\d )|(?<=th )"
    r"|(?<=st )|(?<=mid )|(?<=late )|(?<=early ))(jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec)\b\.?"
)


def _short_months(found: Understood, _: Lookup) -> Iterator[Edit]:
    """ "From sept": a month by its first letters, after a word that leads to one."""
    for match in _SHORT_MONTH.finditer(found.text):
        yield (
            match.start(),
            match.end(),
            next(m for m in MONTHS if m.startswith(match[1].casefold()[:3])).title(),
        )


def _folk(found: Understood, _: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.folk import people_meant, wanted  # noqa: PLC0415  most questions are understood without

    yield from people_meant(found)
    yield from wanted(found)


def _states(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.states import states  # noqa: PLC0415  as above

    yield from states(found, lookup)


def _implied(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.implied import implied  # noqa: PLC0415  as above

    yield from implied(found, lookup)


def _contraries(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.contraries import contraries  # noqa: PLC0415  most questions are understood without

    yield from contraries(found, lookup)


def _denied(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.denials import denials  # noqa: PLC0415  as above

    yield from denials(found, lookup)


def _absent(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.absent import absent  # noqa: PLC0415  as above

    yield from absent(found, lookup)


def _circumstances(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.circumstances import circumstances  # noqa: PLC0415  as above

    yield from circumstances(found, lookup)


def _out_and_about(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.out_and_about import out_and_about  # noqa: PLC0415  as above

    yield from out_and_about(found, lookup)


def _lives(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.ages import ages  # noqa: PLC0415  as above
    from kb.reader.recast.damage import damage  # noqa: PLC0415  as above
    from kb.reader.recast.happening import happening  # noqa: PLC0415  as above
    from kb.reader.recast.lives import lives  # noqa: PLC0415  as above
    from kb.reader.recast.lodged import lodged  # noqa: PLC0415  as above

    yield from lodged(found, lookup)
    yield from lives(found, lookup)
    yield from happening(found, lookup)
    yield from ages(found, lookup)
    yield from damage(found, lookup)


def _alike(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    from kb.reader.recast.alike import alike  # noqa: PLC0415  as above

    yield from alike(found, lookup)


def _the_one(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "My canvas belt for the webbing one": the belt that is called so."""
    tokens = found.tokens
    if not any(token.low in ("one", "ones") for token in tokens):
        return
    heads = {tokens[p.last - 1].key: tokens[p.last - 1].low for p in found.pieces if p.tag in _ITEMS}
    labels = {
        tuple(token.key for token in tokenize(name))
        for item in lookup.base.items
        for name in (item.label, *item.other_labels)
    }
    for place, token in enumerate(tokens):
        if token.low not in ("one", "ones") or not place:
            continue
        for count in (2, 1):
            words = tuple(t.key for t in tokens[max(place - count, 0) : place])
            named = [low for key, low in heads.items() if (*words, key) in labels]
            if len(named) == 1:
                yield token.start, token.end, named[0]
                break


def _nothing_done(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Nothing running" of the one thing that the books know to be running or not."""
    for one, after in zip(found.tokens, found.tokens[1:], strict=False):
        if one.low != "nothing":
            continue
        labels = [
            fact.label
            for fact in lookup.base.facts
            if fact.kind == "yes_no" and fact.family == "situation"
            for words in (tokenize(fact.label),)
            if len(words) > 1 and words[-1].low == after.low
        ]
        if len(labels) == 1:
            yield one.start, after.end, f"no {labels[0]}"


class _Bound(msgspec.Struct, frozen=True):
    """The numbers of a noun for which a value holds: "name of ten letters or more"."""

    noun: str
    low: int
    high: int


def _bound(label: str) -> _Bound | None:
    words = tokenize(label)
    for place, token in enumerate(words[:-1]):
        number = _number(token)
        if number is None:
            continue
        before = {t.low for t in words[:place]}
        after = {t.low for t in words[place + 2 :]}
        least = "least" in before or (bool(after & _MORE) and "or" in after)
        most = "most" in before or {"up", "to"} <= before or (bool(after & _FEWER) and "or" in after)
        if least == most:
            return None
        return _Bound(words[place + 1].key, number if least else 0, number if most else 10**6)
    return None


@cache
def _bounds(lookup: Lookup) -> tuple[tuple[str, _Bound], ...]:
    values = (value for fact in lookup.base.facts if fact.kind == "choice" for value in fact.values)
    return tuple((value.label, bound) for value in values if (bound := _bound(value.label)) is not None)


def _number(token: Token) -> int | None:
    return int(token.low) if token.low.isdecimal() and len(token.low) < 4 else NUMBER_WORDS.get(token.low)


def _counted(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "A name of twelve letters", "an eleven-letter name": the value that holds for so many."""
    bounds = _bounds(lookup)
    if not bounds:
        return
    tokens = found.tokens
    known = {place for p in found.pieces if p.tag == "fact" for place in range(p.first, p.last)}
    for place, token in enumerate(tokens):
        number = _number(token) if place not in known else None
        after = place + 1 + (place + 1 < len(tokens) and tokens[place + 1].low == "-")
        if number is None or after >= len(tokens):
            continue
        fitting = [
            label
            for label, bound in bounds
            if bound.noun == tokens[after].key and bound.low <= number <= bound.high
        ]
        if len(fitting) == 1:
            opening = tokenize(fitting[0])[0].key
            following = [t.key for t in tokens[after + 1 : after + 4]]
            named = following[:1] == [opening]  # "an eleven-letter name", "eleven letters in my name"
            ends = 1 if named else 3 if following[:1] == ["in"] and following[2:] == [opening] else 0
            led = [t.key for t in tokens[max(place - 2, 0) : place]] == [
                opening,
                "of",
            ]  # "a name of three letters"
            yield tokens[place - 2 * led].start, tokens[after + ends].end, fitting[0]


def _tested(found: Understood, lookup: Lookup) -> Iterator[Fact]:
    """The facts that rules on the things that are named test."""
    named = {entry.id for piece in found.pieces if piece.tag in _ITEMS for entry in piece.entries}
    covering = {broad for item in named for broad in lookup.broader(item)}
    rules = lookup.rules_on(covering)
    facts = dict.fromkeys(test.fact for rule in rules for test in tests(rule.condition))
    yield from (lookup.facts[fact] for fact in facts)


def _measured(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Gloves, below 4": a bare number is of the one measure on which the rules of the thing rest."""
    told = [i for i, p in enumerate(found.pieces) if p.tag == "number" and _is_of_air(found, i)]
    places = told or [
        i for i, p in enumerate(found.pieces) if p.tag == "number" and _is_bare(found.pieces, i)
    ]
    stated = [lookup.facts[piece.fact] for piece in found.pieces if piece.tag == "fact"]
    known = [f for f in stated if f.kind == "quantity" and (not told or same_dimension(f.unit or "1", "Cel"))]
    if len(places) != 1 or known or any(piece.tag == "measure" for piece in found.pieces):
        return
    units = {fact.unit for fact in _tested(found, lookup) if fact.kind == "quantity" and fact.unit in UNITS}
    if told:
        units = {unit for unit in units if same_dimension(str(unit), "Cel")}
    if len(units) == 1:
        last = found.tokens[found.pieces[places[0]].last - 1]
        yield last.end, last.end, f" {UNITS[str(units.pop())].symbol}"


_AIR = word_set("it's it is 's about only just nearly around minus -")


def _is_of_air(found: Understood, index: int) -> bool:
    """ "It's 27 and ...": a bare number of degrees."""
    first, last = found.pieces[index].first, found.pieces[index].last
    before = [token.low for token in found.tokens[max(first - 4, 0) : first]]
    while before and before[-1] in _AIR - {"it", "is", "'s", "it's"}:
        before.pop()
    after = found.pieces[index + 1].tag if index + 1 < len(found.pieces) else ""
    said = before[-1:] in (["it's"], ["its"]) or before[-2:] in (["it", "'s"], ["it", "is"])
    rest = found.text[found.tokens[last - 1].end :].strip()
    signed = found.text[: found.tokens[first].start].rstrip(" ").endswith("+")
    if not before and _AND_SO.match(rest):
        return True
    ends = rest[:1] in (".", ",", ";", ":", "-", "?", "!", "")
    return (said or signed) and (ends or after in ("and", "but", "fact", "outdoors", "particle"))


_AND_SO = Pattern(
    r"(?i)(?:degrees )?(?:and|but) (?:dry|wet|sunny|cloudy|overcast|grey|gray|windy|breezy|calm|still|clear"
    r"|bright|fine|fair|foggy|misty|rain(?:ing|y)|drizzling|showery|snowing|frosty|icy|freezing|mild|warm|hot|cold"
    r"|chilly|cool|damp|humid|muggy|dull|gusty|stormy|crisp|no (?:wind|rain|sun)|pouring)\b"
)
"""What goes on from degrees of the air at the head of a line: "seven and dry"."""


def _is_bare(pieces: Sequence[Piece], index: int) -> bool:
    after = pieces[index + 1].tag if index + 1 < len(pieces) else ""
    return index > 0 and pieces[index - 1].tag in _BOUNDS and after in ("", "comma", "and", "filler", "fact")


def _waiver(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "No waiver": none of those on which the rules of the thing rest."""
    for place, token in enumerate(found.tokens):
        led = found.tokens[max(place - 2, 0) : place]
        before = led[0] if len(led) > 1 and led[1].low in ("any", "a") else led[-1] if led else token
        if token.key == "waiver" and before.low in _DENYING:
            labels = [fact.label for fact in _tested(found, lookup) if fact.family == "waiver"]
            if labels:
                yield before.start, token.end, " and ".join(f"no {label}" for label in labels)
