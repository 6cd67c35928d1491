"""Statements about oneself ("I am a K5 in boat rig") and single facts given by name and value."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from kb.errors import UsageError
from kb.measures import UNITS, MeasureError, is_kind_of, parse_dates, parse_measure
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask
from kb.model.records import Fact, Measure
from kb.model.values import NO, YES, Choices, ValueSet, intersect, is_empty, ranges
from kb.reader.names.lexicon import CREDENTIALS, PERSONAL, Lexicon
from kb.reader.names.spelling import near_names
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.naming import credential_of
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.values import closure, entry_values
from kb.reader.question import clean, too_much, understand
from kb.reader.words.tokens import tokenize
from kb.text import Pattern, visible
from kb.wording import say_quantity

_OF_OTHERS = Pattern(  # "I'm the officer of the day, the warden is off"
    r"(?i)[,;.] (?:and |but |since |as |because )?((?:the|our|my) [a-z][\w' -]{2,30}?)(?:['\u2019]s| is) "
    r"(?:off|away|out|ill|sick|not here|on leave|absent|asleep|busy|gone)(?: today| now| tonight)?(?=\W*$)"
)
_OF_ANOTHER = Pattern(  # "the duty engineer is on call tonight"
    r"(?i)(?:(?:but|and|well|no|yes),? )*(?:the|our|another|some) [\w' -]+?"
    r"(?: (?:is|are)|['\u2019]s (?:on|in|at|off|a|an))\b"
    r"(?!.*\b(?:i|me|my|we|us|myself)\b)"
)
StatedFact = tuple[str, ValueSet]
_EXPLAINED = tag_set("""
    comma, filler, det, poss, self, person, be, do, have, in, on, of, for, and, with, hold, joined, act, to
    particle, if, date, only, service, grant, by, together, or
""")


def read_statement(text: str, *, lexicon: Lexicon, lookup: Lookup) -> tuple[StatedFact, ...] | Abstain:
    """Facts of the profile that a statement gives; `Abstain` naming the words that were not understood."""
    if " me " in text or " us " in text:
        from kb.reader.talks.handed import as_holder  # noqa: PLC0415  few statements tell who gave what

        told = as_holder(text, lookup)
        if isinstance(told, Abstain):
            return told
        text = told
    plain = _of_oneself(clean(text[:1001]), lexicon, lookup)
    refusal = too_much(tokenize(plain)) if len(text) <= 1000 else Abstain(reason="The statement is too long.")
    if refusal is not None:
        return refusal
    found = understand(plain, lexicon, lookup, None)
    if isinstance(found, Ask):
        words = tuple(label for _, label in found.choices)
        return Abstain(reason=found.prompt, suggestions=words[:3])
    facts = _facts_of(found, lookup)
    if not isinstance(facts, Abstain) and _OF_ANOTHER.match(plain) and not _holds_itself(facts, lookup):
        return Abstain(reason="That is said of somebody else, not of who asks.")
    if not isinstance(facts, Abstain) or not facts.words:
        return facts
    from kb.reader.talks.patter import without_patter  # noqa: PLC0415  only where words are left

    bare = without_patter(plain)  # "I'm on leave, mind"
    return facts if bare is None else _less_patter(bare, facts, lexicon, lookup)


def _holds_itself(facts: Sequence[StatedFact], lookup: Lookup) -> bool:
    return all(lookup.facts[fact].family != "appointment" for fact, _ in facts)


def _of_oneself(text: str, lexicon: Lexicon, lookup: Lookup) -> str:
    """A statement without where somebody else is, who is named by a grade or the like."""
    other = _OF_OTHERS.search(text)
    found = understand(other.group(1), lexicon, lookup, None) if other is not None else None
    if other is None or not isinstance(found, Understood):
        return text
    facts = [piece.fact for piece in found.pieces if piece.tag == "fact"]
    bare = {piece.tag for piece in found.pieces} <= {"fact", "det", "poss", "filler", "person"}
    if not bare or not facts or any(lookup.facts[fact].family not in PERSONAL for fact in facts):
        return text
    return text[: other.start()]


def _less_patter(
    bare: str, missed: Abstain, lexicon: Lexicon, lookup: Lookup
) -> tuple[StatedFact, ...] | Abstain:
    found = understand(bare, lexicon, lookup, None)
    facts = missed if isinstance(found, Ask) else _facts_of(found, lookup)
    return missed if isinstance(facts, Abstain) else facts


def _facts_of(found: Understood, lookup: Lookup) -> tuple[StatedFact, ...] | Abstain:
    facts: dict[str, ValueSet] = {}
    left: list[str] = []
    state, holding = YES, False
    for index, piece in enumerate(found.pieces):
        following = found.pieces[index + 1].tag if index + 1 < len(found.pieces) else ""
        if piece.tag == "not" and following in ("act", "hold", "have"):
            state = NO
            continue
        if piece.tag in _STATES and (piece.tag != "act" or found.pieces[index - 1].tag != "not"):
            state = _STATES[piece.tag]
        holding = holding or piece.tag in ("hold", "have")
        stated = _stated(piece, holding and not _is_put_on(found.pieces[index + 1 :]), state, lookup)
        if stated is not None:
            fact, values = stated
            both = intersect(facts.get(fact, values), values)
            if is_empty(both):
                return Abstain(reason="The statement says two things of one fact that cannot hold together.")
            facts[fact] = both
        elif piece.tag not in _EXPLAINED and piece.tag not in ("without", "no"):
            left.append(found.text[found.tokens[piece.first].start : found.tokens[piece.last - 1].end])
    if left:
        shown = ", ".join(f'"{visible(word)}"' for word in left)
        return Abstain(reason=f"Not understood: {shown}.", words=tuple(left))
    if not facts:
        return Abstain(reason="The statement gives no fact that the books know.")
    return tuple(facts.items())


def _is_put_on(rest: Sequence[Piece]) -> bool:
    """Whether what follows a thing says no more than that it is on: "got the badge on"."""
    tags = [piece.tag for piece in rest if piece.tag != "filler"]
    return tags[:1] in (["on"], ["particle"]) and (len(tags) == 1 or tags[1] == "comma")


_STATES = {"with": YES, "without": NO, "no": NO, "act": YES}


def _stated(piece: Piece, holding: bool, state: Choices, lookup: Lookup) -> StatedFact | None:
    if piece.tag == "fact" and piece.values is not None:
        held = holding and lookup.facts[piece.fact].family in CREDENTIALS
        return piece.fact, state if held and piece.values == YES else piece.values
    if piece.tag in ("item", "items") and holding:
        fact = credential_of(piece, lookup)
        if fact is not None:
            return fact, state
    if piece.tag == "item":
        return f"worn:{piece.arg}", state
    return None


def parse_fact(lookup: Lookup, name: str, value: str) -> StatedFact:
    """One fact by its id or label, and its value by id, label or expression. Raises `UsageError`."""
    fact = _fact_named(lookup, name)
    return fact.id, _value_of(fact, value, lookup)


def _fact_named(lookup: Lookup, name: str) -> Fact:
    wanted = " ".join(name.split()).casefold()
    for fact in lookup.base.facts:
        names = (fact.id, fact.id.partition(":")[2], fact.label, *fact.other_labels)
        if wanted in (written.casefold() for written in names if written):
            return fact
    near = near_names(
        wanted, [label for f in lookup.base.facts if f.family != "worn" for label in (f.id, f.label)]
    )
    raise UsageError(f'There is no fact "{visible(name)}".' + _did_you_mean(near))


def _did_you_mean(near: tuple[str, ...]) -> str:
    return f" Did you mean {' or '.join(near)}?" if near else ""


def _value_of(fact: Fact, value: str, lookup: Lookup) -> ValueSet:
    written = " ".join(value.split())
    if fact.kind == "yes_no":
        return _yes_or_no(fact, written)
    try:
        if fact.kind == "date":
            return parse_dates(_whole_year(written))
        if fact.kind == "quantity":
            measure = _measured(written, fact.unit)
            if fact.unit and not is_kind_of(measure, fact.unit):
                example = say_quantity(Fraction(10), fact.unit)
                raise UsageError(
                    f'"{visible(value)}" does not measure {fact.label}; write it as in "{example}".'
                )
            return ranges([measure.interval])
    except MeasureError as error:
        if fact.kind == "quantity" and fact.unit:
            example = say_quantity(Fraction(10), fact.unit)
            raise UsageError(f"{error.problem} Write a number and a unit, for example {example}.") from error
        raise UsageError(str(error)) from error
    return _choice_of(fact, written, lookup)


def _measured(written: str, unit: str | None) -> Measure:
    """A measure; a bare number, which may be below zero, is in the unit of the fact."""
    if unit and unit in UNITS and written[-1:].isdigit():
        written = f"{written} {UNITS[unit].symbol}"
    measure = parse_measure(written)
    if unit and unit in UNITS and measure.unit == "1" != unit:
        measure = parse_measure(f"{written} {UNITS[unit].symbol}")  # "ten"
    return measure


def _whole_year(written: str) -> str:
    """A year alone as its days; anything else as it is."""
    year = written.casefold().removeprefix("in ")
    return f"from {year}-01-01 to {year}-12-31" if year.isdecimal() and len(year) == 4 else written


_EITHER_WAY = {
    **dict.fromkeys(("yes", "y", "true", "1"), True),
    **dict.fromkeys(("no", "n", "false", "0"), False),
}


def _yes_or_no(fact: Fact, written: str) -> Choices:
    low = written.casefold()
    if low in _EITHER_WAY:
        return YES if _EITHER_WAY[low] else NO
    raise UsageError(f'{fact.label} is yes or no, not "{visible(written)}".')


def _choice_of(fact: Fact, written: str, lookup: Lookup) -> ValueSet:
    low = written.casefold()
    if fact.family == "authorisation" and low in _EITHER_WAY:
        nobody = frozenset({fact.values[0].id})
        everybody = frozenset(value.id for value in fact.values)
        return Choices(everybody - nobody if _EITHER_WAY[low] else nobody)
    for value in fact.values:
        if low == value.id.casefold():
            return Choices(closure(lookup, fact.id, value.id))
    lexicon = Lexicon.build(lookup)
    found = understand(written, lexicon, lookup, None)
    if not isinstance(found, Ask):
        pieces = [
            piece
            for piece in found.pieces
            if piece.tag not in ("det", "filler", "in", "on", "for", "of", "person")
        ]
        if len(pieces) == 1:
            values = _values_in(pieces[0], fact, lookup)
            if values is not None:
                return values
    names = [text for v in fact.values for text in (v.id, v.label, *v.other_labels)]
    names += [text for g in lookup.base.groups if g.fact == fact.id for text in (g.id, g.label)]
    names = [name for name in names if name.replace("-", " ") not in names or "-" not in name]
    near = near_names(low, names) or tuple(name for name in names if near_names(low, name.split()))[:3]
    hint = _did_you_mean(near) or f" {_some_of(fact)}"
    raise UsageError(f'"{visible(written)}" is no value of {fact.label}.{hint}')


def _some_of(fact: Fact) -> str:
    """The first values of a fact, grades by their short names, and how many more there are."""
    names = [value.id if fact.family == "grade" else value.label for value in fact.values]
    more = len(names) - _FEW_VALUES
    return f"Values are {', '.join(names[:_FEW_VALUES])}" + (f" and {more} more." if more > 0 else ".")


_FEW_VALUES = 3


def _values_in(piece: Piece, fact: Fact, lookup: Lookup) -> ValueSet | None:
    if piece.tag == "fact" and piece.fact == fact.id:
        return piece.values
    own = [entry for entry in piece.entries if entry.kind in ("value", "group") and entry.owner == fact.id]
    sets = {entry_values(entry, lookup) for entry in own}
    return sets.pop() if len(sets) == 1 else None
