"""What a few words take from the question before: its item, its facts, or all of it."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import facts_of_day
from kb.model.questions import Abstain, Ask, Query, Reading, Verdict
from kb.model.records import Case
from kb.model.values import NO, YES, Choices, ValueSet
from kb.reader.meaning import fits
from kb.reader.meaning.defined import defining_clause
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.placed import carriers, off_its_places, placed_on
from kb.reader.meaning.query import merge_case
from kb.reader.names.lexicon import Entry
from kb.reader.phrases.english import LEADING_PREPOSITIONS, PHRASES, tag_set
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.unnamed import of_value
from kb.reader.pieces.values import complement_of
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, tokenize
from kb.wording import say_query

_PRONOUNS = word_set("it them they this that these those itself themselves")
_OWN = word_set("mine yours ours theirs his hers")
_ECHO = tag_set("not, filler, comma, be, self, and, and how about, det")
_HAVING = ("wear", "carrying", "possession")
_SHORT = 6
_OTHERWISE = word_set("ask asking want tell let decide choose go going")
_TODAY = word_set("today now")
_UNKNOWN = frozenset(
    " ".join(token.low for token in tokenize(text))
    for text in (
        "don't know", "i don't know", "dont know", "not sure", "i'm not sure", "no idea", "i have no idea",
        "unknown", "unsure", "can't say", "i can't say", "cannot say", "don't know yet", "either", "any",
        "it depends", "doesn't matter", "dunno", "i dunno", "no clue", "not a clue", "haven't a clue", "idk",
    )
)  # fmt: skip
NONE_OF_THEM = frozenset(
    {
        *(
            "neither",
            "neither of them",
            "none",
            "none of them",
            "none of these",
            "none of those",
            "neither one",
        ),
        *("no one", "nobody", "somewhere else", "elsewhere", "something else", "anything else"),
        *("another", "another one", "some other", "other", "others"),
    }
)
_SINCE = {f"{on} {when}" for on in ("since", "until", "till", "from", "by") for when in ("when", "what date")}
_WHO_SAYS = frozenset({"says who", "who says", "who says so", "who says that", "says which book"})
_OTHER_ONE = frozenset(
    {"no the other one", "the other one", "no the other", "the other", "no not that one", "not that one"}
)


def said_plainly(tokens: tuple[Token, ...]) -> str:
    """The words of a short reply, without signs."""
    return " ".join(token.low for token in tokens if token.low[0].isalnum() or token.low == "n't")


def undecided(tokens: tuple[Token, ...], previous: Reading) -> Query | Abstain | None:
    """ "Don't know" leaves a question as it is; without knowing what was meant nothing can be answered."""
    said = said_plainly(tokens)
    if said not in _UNKNOWN and said not in NONE_OF_THEM:
        return None
    if previous.query is not None:
        return previous.query if said in _UNKNOWN else None
    return unmeant(previous.ask, said) if previous.ask is not None else None


def unmeant(ask: Ask, said: str) -> Abstain | None:
    """What a reply leaves unknown that picks nothing of what was asked; None for any other reply."""
    if said in NONE_OF_THEM:
        return Abstain(reason="Then it is not known what is meant; say it in other words.")
    if said not in _UNKNOWN:
        return None
    labels = tuple(label for _, label in ask.choices)[:3]
    return Abstain(reason="Without knowing which is meant, nothing can be answered.", suggestions=labels)


def other_one(tokens: tuple[Token, ...], before: Query, lookup: Lookup) -> Query | Ask | None:
    """ "No, the other one": what else the item's everyday word may mean; asks where that is several."""
    if said_plainly(tokens) not in _OTHER_ONE or len(before.items) != 1:
        return None
    item = lookup.items[before.items[0]]
    sharing = [
        [other.id for other in lookup.base.items if word in other.everyday and other.id != item.id]
        for word in item.everyday
    ]
    others = min((group for group in sharing if group), key=len, default=[])
    if len(others) == 1:
        return msgspec.structs.replace(before, items=(others[0],))
    choices = tuple((other, lookup.items[other].label) for other in others)
    return Ask(fact="item", prompt="Which other one is meant?", choices=choices) if choices else None


def echoed(found: Understood, before: Query, today: Case, lookup: Lookup) -> Query | Ask | None:
    """ "Why not?", "and without it?", "and today?": the question before, put another way."""
    tags = {piece.tag for piece in found.pieces}
    if tags <= _ECHO and any(token.low in _TODAY for token in found.tokens):
        return _on_day(before, today, lookup)
    if not before.items or before.kind in ("source", "compare"):
        return None
    if ("which clause" in tags and tags <= _ECHO | {"which clause", "say"}) or said_plainly(
        found.tokens
    ) in _WHO_SAYS:
        return Query(kind="source", items=before.items, aspect=before.aspect, case=before.case)
    if before.kind not in ("may", "must", "why"):
        return None
    if ("when" in tags and tags <= _ECHO | {"when", "date", "range"}) or said_plainly(found.tokens) in _SINCE:
        asked: tuple[Verdict, ...] = ("required",) if before.kind == "must" else ()
        return msgspec.structs.replace(before, kind="when", modalities=asked, value=None)
    if "why" in tags and tags <= _ECHO | {"why", "no longer"}:
        if any(token.low in _TODAY for token in found.tokens) or "no longer" in tags:
            before = _on_day(before, today, lookup)  # "why not now?"
        return msgspec.structs.replace(before, kind="why", modalities=())
    pronoun = any(token.low in _PRONOUNS for token in found.tokens)
    if pronoun and "beyond" in tags and tags <= _ECHO | {"beyond"}:
        return _elsewhere(before, lookup)
    if before.kind != "why" and pronoun and "without" in tags and tags <= _ECHO - {"not"} | {"without"}:
        return _without(before, lookup)
    return None


def _elsewhere(before: Query, lookup: Lookup) -> Query | None:
    """ "Outside it": anywhere but at the one place that the question before named."""
    named = []
    for fact, values in before.case.facts:
        record = lookup.facts[fact]
        labels = [v.label for v in record.values if isinstance(values, Choices) and v.id in values.members]
        led = any(label.split()[0].casefold() in LEADING_PREPOSITIONS for label in labels[:1])
        if record.family == "situation" and record.kind == "choice" and led:
            named.append((fact, complement_of(lookup, fact, values)))
    if len(named) != 1:
        return None
    facts = tuple((f, dict(named).get(f, v)) for f, v in before.case.facts)
    return msgspec.structs.replace(before, case=msgspec.structs.replace(before.case, facts=facts))


def _without(before: Query, lookup: Lookup) -> Query | Ask:
    """ "Without it": without the item; asks where something worn with it may be meant."""
    readings = [msgspec.structs.replace(before, polarity="not", value=None)]
    for fact, values in before.case.facts:
        if fact.startswith("worn:") and values == YES:
            facts = tuple((f, NO if f == fact else v) for f, v in before.case.facts)
            case = msgspec.structs.replace(before.case, facts=facts)
            readings.append(msgspec.structs.replace(before, case=case))
    if len(readings) == 1:
        return readings[0]
    said = [say_query(lookup, reading) for reading in readings]
    return Ask(fact="reading", prompt="Which is meant?", choices=tuple((text, text) for text in said))


def _on_day(before: Query, today: Case, lookup: Lookup) -> Query:
    """The question before on the day of now, without what the day that it had settled."""
    settled = facts_of_day(before.case.as_of, lookup)
    facts = tuple(fact for fact in before.case.facts if fact not in settled)
    case = msgspec.structs.replace(before.case, as_of=today.as_of, facts=facts)
    return msgspec.structs.replace(before, case=case)


def is_fragment(frame: Frame, roles: Roles) -> bool:
    """A few words that only make sense after a question: "ashore?", "the scarf?", "even if it rains?"."""
    if roles.supposed and not frame.modal and frame.kind == "may":
        return True
    if frame.terse and not roles.aspect:
        return not (roles.asked and (roles.facts or roles.alone or roles.worn))
    return not (frame.modal or roles.aspect or roles.asked or roles.worn or roles.unworn) and bool(
        roles.facts
    )


def names_kind(found: Understood, frame: Frame, roles: Roles) -> bool:
    """ "What knot?": a kind of thing is asked for, and it may be part of what was asked about before."""
    tags = [piece.tag for piece in found.pieces if piece.tag not in ("det", "filler", "comma", "and")]
    return frame.terse and bool(roles.asked) and tags[:1] in (["what"], ["which"])


def kind_asked(found: Understood, frame: Frame, before: Query, lookup: Lookup) -> Query | None:
    """ "What knot?", where the rules on the item before say which."""
    words = [piece for piece in found.pieces if piece.tag not in ("det", "filler", "comma", "and")]
    led = bool(words) and words[0].tag in ("what", "which") and len(words) == 2
    if not (led and frame.terse):
        return None
    return fits.asked_kind(found.tokens[words[1].last - 1].key, before, lookup)


def continued(before: Query, frame: Frame, roles: Roles, lookup: Lookup) -> Query | Ask | None:
    """The question before, with what the new words say put in place of what it said."""
    if frame.modal or frame.kind != "may" or before.clause is not None:
        return None
    if roles.value is not None:
        return of_value(before, roles, lookup)
    if roles.aspect not in ("", "wear", before.aspect):
        return None  # "or alter it?" asks of another act
    before = _put_beside(before, roles, lookup)
    unclear = next((p for p in (*roles.asked, *roles.worn, *roles.unworn) if p.tag == "items"), None)
    if unclear is not None:
        return None
    facts: dict[str, ValueSet] = dict(roles.facts)
    facts.update({f"worn:{p.arg}": YES for p in roles.worn})
    facts.update({f"worn:{p.arg}": NO for p in roles.unworn})
    if roles.as_of is not None:
        facts = {**dict(facts_of_day(roles.as_of, lookup)), **facts}
    items = tuple(dict.fromkeys(p.arg for p in roles.asked)) or before.items
    before, facts = _left_off(before, facts, items, roles)
    if roles.asked and frame.polarity == "not" and before.kind in ("may", "must"):  # "tunic off?"
        before = msgspec.structs.replace(before, kind="may", polarity="not", value=None)
    if roles.asked:
        before = fits.unmeasured(before, items, lookup)
        before = msgspec.structs.replace(before, aspect=fits.same_act(before, items, lookup))
    if not (facts or roles.asked or roles.alone or roles.as_of or roles.unworn):
        return None
    before = _off_the_place(before, lookup) if roles.led_by_on and roles.worn and before.items else before
    before = fits.of_one(before, items, lookup) if roles.asked else before
    merged = merge_case(worn_with(before.case, roles), facts, roles.as_of, roles.alone, lookup)
    after = msgspec.structs.replace(before, items=items, case=merged)
    if roles.led_by_on and roles.worn and off_its_places(after, [p.arg for p in roles.worn], lookup):
        return msgspec.structs.replace(after, kind="where", aspect="position", polarity="do")
    conditions = roles.facts or roles.worn or roles.unworn
    after = fits.of_the_whole(after, facts, lookup) if conditions and not roles.asked else after
    if conditions and fits.is_of_wearing(after, facts, lookup):
        return fits.whether_worn(after, lookup)
    if roles.asked and conditions and lookup.aspects[before.aspect].kind != "act":
        if not any(fits.rules_of_aspect(items, before.aspect, lookup)) and any(
            fits.rules_of_aspect(items, "wear", lookup)
        ):
            return fits.whether_worn(after, lookup)  # of a thing that has no length it is not asked
        said = [say_query(lookup, reading) for reading in (after, fits.whether_worn(after, lookup))]
        return Ask(fact="reading", prompt="Which is meant?", choices=tuple((text, text) for text in said))
    return after


def _put_beside(before: Query, roles: Roles, lookup: Lookup) -> Query:
    """The question before, once `roles` has what is only said to be worn with it as worn."""
    inside = roles.led_by_in and before.kind in ("may", "must") and _beside(before, roles, lookup)
    placed = roles.led_by_on and placed_on(before, roles, lookup)  # "on the smock?"
    instead = None if roles.supposed or inside or placed else _in_place_of_one(before, roles, lookup)
    if roles.supposed or inside or placed or instead is not None:
        roles.worn, roles.asked = [*roles.worn, *roles.asked], []
    return instead or before


def _in_place_of_one(before: Query, roles: Roles, lookup: Lookup) -> Query | None:
    """ "Fell boots", after "the hall trousers with the hall boots?": the question without the latter."""
    named = [p.arg for p in roles.asked if p.tag == "item"]
    if len(named) != 1 or len(roles.asked) > 1 or named[0] in before.items:
        return None
    kinds = _own_kinds(named[0], lookup)
    worn = [f for f, v in before.case.facts if f.startswith("worn:") and v == YES]
    out = [f for f in worn if not kinds.isdisjoint(_own_kinds(f.removeprefix("worn:"), lookup))]
    if len(out) != 1 or any(not kinds.isdisjoint(_own_kinds(item, lookup)) for item in before.items):
        return None
    kept = tuple((f, v) for f, v in before.case.facts if f not in out)
    return msgspec.structs.replace(before, case=msgspec.structs.replace(before.case, facts=kept))


def _own_kinds(item: str, lookup: Lookup) -> set[str]:
    """The kinds of a thing, but for those that are as wide as "garment"."""
    return {kind for kind in lookup.broader(item)[1:] if len(lookup.broader(kind)) > 2}


def _left_off(
    before: Query, facts: dict[str, ValueSet], items: tuple[str, ...], roles: Roles
) -> tuple[Query, dict[str, ValueSet]]:
    """ "And without the scarf?", of the scarf: whether it may be left off; what is asked about is no fact."""
    off = any(facts.get(f"worn:{item}") == NO for item in before.items)
    if off and before.kind in ("may", "must") and not roles.asked:
        before = msgspec.structs.replace(before, polarity="not", value=None)
    facts = {f: v for f, v in facts.items() if f.removeprefix("worn:") not in items or (v == NO and not off)}
    return before, facts


def _off_the_place(before: Query, lookup: Lookup) -> Query:
    """The question before without what it has the thing on: "and on the watch coat?"."""
    on = {f"worn:{garment}" for garment in carriers(before.items[0], lookup)}
    if before.aspect == "position" and before.value is not None:  # "on the coat" said where it is to go
        on |= {f for f, v in before.case.facts if f.startswith("worn:") and v == YES}
        before = fits.whether_worn(before, lookup)
    kept = tuple((f, v) for f, v in before.case.facts if f not in on)
    return msgspec.structs.replace(before, case=msgspec.structs.replace(before.case, facts=kept))


def _beside(before: Query, roles: Roles, lookup: Lookup) -> bool:
    """Whether what one is "in" is no other thing of the kind asked about: "in the coat?", of a liner."""
    kinds = {kind for item in before.items for kind in _own_kinds(item, lookup)}
    named = [p.arg for p in roles.asked if p.tag == "item"]
    return bool(named and before.items) and kinds.isdisjoint(k for i in named for k in lookup.broader(i))


def worn_with(case: Case, roles: Roles) -> Case:
    """A case in which nothing else is worn, or something is, as the new words have it."""
    if roles.worn:
        return msgspec.structs.replace(case, alone=False)
    if roles.alone:
        facts = tuple((f, v) for f, v in case.facts if not (f.startswith("worn:") and v == YES))
        return msgspec.structs.replace(case, facts=facts)
    return case


def take_up(found: Understood, frame: Frame, roles: Roles, before: Query, lookup: Lookup) -> bool:
    """ "May I wear it ashore?", "and how long?": whether the item of the question before was put in."""
    if roles.asked and before.items and _with_it(found):
        roles.worn = [*roles.worn, *_pieces_of(before)]
        return True
    if _on_what(found, frame, roles) and before.items:
        roles.worn, roles.asked = roles.asked, _pieces_of(before)
        return True
    if roles.asked or roles.worn or roles.unworn or roles.body or not before.items:
        return False
    if frame.kind in ("list", "source", "compare"):
        return False
    if defining_clause(frame, roles, before.case, lookup) is not None:
        return False
    pronoun = any(token.low in _PRONOUNS or token.low in _OWN for token in found.tokens)
    if not (pronoun or _is_elliptic(found, frame, roles)):
        return False
    named = any(p.tag in ("act", "leave off") for p in found.pieces) or any(
        PHRASES.get((token.low,)) in ("wear", "use") for token in found.tokens
    )
    if before.polarity == "not" and before.aspect == "wear" and frame.kind in ("may", "must") and not named:
        roles.unworn = _pieces_of(before)  # "must I?", after "may I leave it off?"
        return True
    roles.asked = _pieces_of(before)
    if any(piece.tag == "or" for piece in found.pieces) and isinstance(roles.value, Choices):
        roles.value = None  # "silver or gilt?" asks which
    kinds = ("may", "must", "who", "when", "why")
    acted = lookup.aspects[before.aspect].kind == "act" and frame.kind in kinds
    off = before.aspect not in _HAVING and any(p.tag == "leave off" for p in found.pieces)
    if acted and not off and not roles.aspect and roles.value is None and not roles.value_aspect:
        roles.aspect = before.aspect
    return True


def _pieces_of(before: Query) -> list[Piece]:
    if before.kind == "list" and len(before.items) > 1:  # "are they compulsory?", of one of those listed
        entries = tuple(Entry(kind="item", id=item) for item in before.items)
        return [Piece(first=0, last=1, tag="items", entries=entries)]
    return [Piece(first=0, last=1, tag="item", arg=item) for item in before.items]


def _with_it(found: Understood) -> bool:
    """ "May they wear a scarf over it?"."""
    return any(
        piece.tag in ("with", "on") and after.tag == "self" and found.tokens[after.first].low in _PRONOUNS
        for piece, after in zip(found.pieces, found.pieces[1:], strict=False)
    )


def _on_what(found: Understood, frame: Frame, roles: Roles) -> bool:
    """ "Where on the tunic?": the one thing named is what something is worn on."""
    if frame.kind != "where" or len(roles.asked) != 1 or roles.worn or len(found.tokens) > _SHORT:
        return False
    named = [index for index, piece in enumerate(found.pieces) if piece.tag == "item"]
    before = named[0] - 1 if len(named) == 1 else -1
    while before >= 0 and found.pieces[before].tag in ("det", "poss"):
        before -= 1
    return before >= 0 and found.pieces[before].tag in ("on", "in")


def _is_elliptic(found: Understood, frame: Frame, roles: Roles) -> bool:
    """ "Must he?", "and how long?": short, and without a verb that could be of something else."""
    if sum(piece.tag != "filler" for piece in found.pieces) > _SHORT:
        return False
    if any(token.low in _OTHERWISE for token in found.tokens):
        return False
    if frame.kind not in ("may", "must"):
        return True
    if frame.terse and isinstance(roles.value, Choices):  # "in gilt?"
        return True
    verbs = any(piece.tag in ("act", "leave off", "to") for piece in found.pieces)
    return bool(frame.modal) and not verbs and not any(token.low in ("go", "going") for token in found.tokens)
