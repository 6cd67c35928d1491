"""Questions put back about words that nothing explains: "only officers", "may it be red", "a four"."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query
from kb.model.records import Case
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.query import build_query
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Understood, is_other
from kb.reader.pieces.scales import number_of
from kb.reader.words.forms import word_set
from kb.text import visible
from kb.wording import say_query

COLOURS = word_set("""
    red blue green brown purple pink violet gold golden silver black white gray grey orange yellow navy
    maroon crimson scarlet beige cream khaki turquoise tan blonde ginger rainbow""")


def ask_instead(
    found: Understood, left: tuple[int, ...], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Ask | None:
    """The question that may be meant, where the words left over are of a kind that leads to one."""
    return (
        _ask_who(found, left, frame, roles, case, lookup)
        or _ask_colour(found, left, frame, roles, case, lookup)
        or _ask_place(found, left, frame, roles, case, lookup)
    )


_FEW = 3


def alone_unclear(found: Understood, frame: Frame, roles: Roles, case: Case, lookup: Lookup) -> Ask | None:
    """ "And if I wear the brassard?", "which one?" and "what knot?" say too little on their own."""
    if roles.supposed and roles.asked and not frame.modal and frame.kind == "may":
        return Ask(fact="item", prompt="Which item is asked about?")
    which = tuple(token.low for token in found.tokens[:2])
    nothing = not (roles.asked or roles.worn) and all(p.tag not in ("item", "items") for p in found.pieces)
    if which in (("which", "one"), ("which", "ones")) and frame.kind == "list" and nothing:
        return Ask(fact="item", prompt="Which one of what? Name the items that are meant.")
    if len(found.tokens) > _FEW:
        return None
    from kb.reader.meaning.follow import names_kind  # noqa: PLC0415  a whole question needs nothing of a talk

    if not names_kind(found, frame, roles):
        return None
    query = build_query(frame, roles, case, lookup)
    return _is_this(query, lookup) if isinstance(query, Query) else None


def _ask_who(
    found: Understood, left: tuple[int, ...], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Ask | None:
    """ "May only officers wear it" asks who may, "only worn in winter" when, "only one" how many."""
    if len(left) != 1 or found.pieces[left[0]].tag != "only" or frame.kind not in ("may", "must"):
        return None
    after = left[0] + 1
    while after < len(found.pieces) and found.pieces[after].tag in _BEFORE_BOUND:
        after += 1
    before = found.pieces[left[0] - 1] if left[0] else None
    piece = found.pieces[after] if after < len(found.pieces) else before
    if piece is not None and piece.tag in ("item", "items") and before is not None and before.tag == "fact":
        piece = before
    query = build_query(frame, roles, case, lookup)
    if piece is None or not isinstance(query, Query) or not query.items:
        return None
    if [one.tag for one in found.pieces[max(left[0] - 2, 0) : left[0]]] == ["number", "item"]:
        return _is_this(query, lookup)  # "one ring only when I haul": no more than one
    if piece.tag == "fact" and (query.value is None or query.aspect in ("count", "kit-count")):
        rest = tuple((fact, values) for fact, values in query.case.facts if fact != piece.fact)
        fact = lookup.facts[piece.fact]
        asked = msgspec.structs.replace(
            query,
            kind="when" if fact.family in _CIRCUMSTANCE and fact.kind != "date" else "who",
            case=msgspec.structs.replace(query.case, facts=rest),
            modalities=("required", "permitted"),
        )
    elif piece.tag == "number" and query.aspect in ("count", "kit-count"):
        asked = msgspec.structs.replace(query, kind="how_many", value=None)
    else:
        return None
    return _is_this(asked, lookup)


_CIRCUMSTANCE = frozenset({"situation", "rig", "term"})
_BEFORE_BOUND = frozenset(
    {"comma", "det", "poss", "filler", "for", "to", "act", "in", "on", "with", "if", "when"}
)


def _is_this(query: Query, lookup: Lookup) -> Ask:
    said = say_query(lookup, query)
    return Ask(fact="reading", prompt="Is this the question?", choices=((said, said),))


def _ask_colour(
    found: Understood, left: tuple[int, ...], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Ask | None:
    """A colour that the books do not name: what they say of the colour is offered."""
    words = [found.tokens[found.pieces[index].first] for index in left]
    if len(words) != 1 or words[0].low not in COLOURS or roles.value_aspect or "colour" not in lookup.aspects:
        return None
    query = build_query(frame, roles, case, lookup)
    if not isinstance(query, Query) or len(query.items) != 1 or query.kind not in ("may", "must"):
        return None
    after = found.pieces[left[0] + 1 :][:1]
    if after and after[0].tag == "item" and after[0].arg != query.items[0]:
        return None  # of another thing than the one asked about
    related = {*lookup.broader(query.items[0]), *lookup.narrower(query.items[0])}
    if not any(r.aspect == "colour" for r in lookup.rules_on(related)):
        return None
    asked = msgspec.structs.replace(query, kind="how", aspect="colour", polarity="do")
    piece = found.pieces[left[0]]
    strange = piece.tag == "unknown" or is_other(piece)
    prompt = f'The books name no colour "{visible(words[0].text)}".' if strange else "A colour is named."
    prompt += " Is this the question?"
    said = say_query(lookup, asked)
    return Ask(fact="reading", prompt=prompt, choices=((said, said),))


_BODY = word_set("""
    thigh thighs knee knees calf shin ankle ankles hip hips back chest breast stomach belly bottom rear
    elbow elbows forearm arm arms cuff shoulder shoulders neck throat forehead temple ear ears nose lip chin
    cheek left right side upper lower outer inner top front""")


def _ask_place(
    found: Understood, left: tuple[int, ...], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Ask | None:
    """ "On my right thigh": a place that the books do not know; where the thing goes is offered."""
    words = [
        token
        for index in left
        for token in found.tokens[found.pieces[index].first : found.pieces[index].last]
    ]
    led = bool(left) and any(piece.tag == "on" for piece in found.pieces[: left[0]])
    if not led or not _BODY.issuperset(word.low for word in words) or roles.value is not None:
        return None
    query = build_query(frame, roles, case, lookup)
    if isinstance(query, Ask) and query.fact == "reading" and roles.placing:
        return query  # a side was named as well: where the thing goes is offered
    if not isinstance(query, Query) or len(query.items) != 1 or query.kind not in ("may", "must"):
        return None
    related = {*lookup.broader(query.items[0]), *lookup.narrower(query.items[0])}
    placed = (r for r in lookup.base.rules if lookup.aspects[r.aspect].kind == "position")
    if not any(related.intersection(rule.scope.items) for rule in placed):
        return None
    asked = msgspec.structs.replace(query, kind="where", aspect="position", polarity="do")
    said = say_query(lookup, asked)
    place = visible(found.text[words[0].start : words[-1].end])
    prompt = f'The books name no place "{place}". Is this the question?'
    return Ask(fact="reading", prompt=prompt, choices=((said, said),))


def ask_grade(found: Understood, lookup: Lookup) -> Ask | None:
    """ "A four", "3 to 6 but not 5": numbers that are grades of several ladders; None without any."""
    if not any(map(number_of, found.tokens)):
        return None
    from kb.reader.pieces.ladders import unclear_grades  # noqa: PLC0415  few questions have numbers

    numbers, ladders = unclear_grades(found.pieces, found.tokens, lookup)
    if not numbers:
        return None
    labels = {value.id: value.label for fact in lookup.base.facts for value in fact.values}
    choices = []
    for ladder in ladders:
        text, codes = found.text, [f"{ladder}{number_of(token)}" for token in numbers]
        for token, code in reversed(tuple(zip(numbers, codes, strict=True))):
            owner = "'s" if token.low.endswith("'s") else ""
            text = text[: token.start] + code + owner + text[token.end :]
        said = [f"{code}, {labels[code]}" for code in codes]
        choices.append((text, said[0] if len(said) == 1 else ", ".join(codes)))
    words = ", ".join(f'"{visible(token.text)}"' for token in numbers)
    prompt = f"Which grade is {words}?" if len(numbers) == 1 else f"Which grades are {words}?"
    return Ask(fact="reading", prompt=prompt, choices=tuple(choices))


def on_its_day(stop: Ask | Abstain, roles: Roles, found: Understood, lookup: Lookup) -> Ask | Abstain:
    """What is asked back, with the day that was said in each question, or what names were taken for."""
    if isinstance(stop, Ask) and stop.fact == "item" and not stop.choices:
        return _with_what_was_read(stop, found, lookup)
    if isinstance(stop, Abstain) or stop.fact != "reading" or roles.as_of is None:
        return stop
    from kb.reader.pieces.days import say_day  # noqa: PLC0415  few are asked back

    day = say_day(roles.as_of)
    choices = tuple((f"{v.rstrip('?')}, on {day}?" if v == said else v, said) for v, said in stop.choices)
    return msgspec.structs.replace(stop, choices=choices)


def _with_what_was_read(stop: Ask, found: Understood, lookup: Lookup) -> Ask:
    """Which words, that may be meant for a thing, were taken for something else: "sunnies" for sunny."""
    taken = []
    for piece in found.pieces:
        if piece.tag != "fact" or not piece.entries:
            continue
        said = found.text[found.tokens[piece.first].start : found.tokens[piece.last - 1].end]
        fact = lookup.facts[piece.fact]
        meant = next((v for v in fact.values if v.id == piece.entries[0].id), fact)
        if said.casefold() not in {name.casefold() for name in (meant.label, *meant.other_labels)}:
            taken.append(f'"{visible(said)}" was taken for {meant.label}')
    return msgspec.structs.replace(stop, prompt=f"{stop.prompt} {', '.join(taken)}.") if taken else stop


def two_readings(query: Query, lookup: Lookup) -> Ask:
    """ "Must I not wear it?" asks whether it is forbidden, or whether it is not required."""
    plain = msgspec.structs.replace(query, polarity="do")
    without = msgspec.structs.replace(query, polarity="not")
    said = [say_query(lookup, reading) for reading in (plain, without)]
    return Ask(fact="reading", prompt="Which is meant?", choices=tuple((text, text) for text in said))
