"""A thing said to be in one of two states of which the books name one: "shirt hanging out", "chain showing".

Every word must go with what is said: the thing and its parts, the state, where that shows. A question whether
the contrary may be is one whether the thing may go without the way that the books name.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query, QuestionKind
from kb.model.records import Aspect, Case
from kb.model.values import NO, YES
from kb.reader.meaning.frame import Frame, denied_leave
from kb.reader.meaning.query import said_case
from kb.reader.phrases.poles import BESIDE, PARTLY, Posed, is_by_other_means, named_poles, phrases, posed
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.wording import say_query

_LIGHT = word_set("""

    leave leaves leaving left keep keeps keeping kept have has had wear wears wearing worn let lets
    letting go goes going get gets got be being do does all just half partly properly completely fully
    slightly bit about around neatly casually loosely right way lad lass mate quite very so too over it
    them really lol while when with
""")
_LEADS = word_set(
    "in into out of from at to up over above below on past round around down off outside beneath the"
)
_PLACES: Mapping[str, frozenset[str]] = {
    "tucked": word_set(
        "trousers trouser waistband belt skirt shorts kilt breeches top tail tails hem waist ends "
        "end coat"
    ),
    "rolled": word_set(
        "elbow elbows forearm forearms wrist wrists sleeve sleeves cuff cuffs arm arms knee knees"
    ),
    "fast": word_set(
        "neck throat front top waist chin button buttons zip lace laces buckle flap strap bottom "
        "ends"
    ),
    "raised": word_set("neck ears ear chin face throat head"),
    "seen": word_set(
        "collar shirt jersey sleeve sleeves cuff cuffs hem neck tunic coat jacket top edge chest "
        "pocket bag"
    ),
    "gathered": word_set("collar shoulders shoulder back neck face eyes helmet hat cap"),
    "straight": word_set("head side forehead eyes brow face back angle ear ears"),
}  # fmt: skip
_DENYING = word_set("not n't never no without unless nobody")


def asked_pose(
    found: Understood, left: Sequence[int], frame: Frame, roles: Roles, case: Case, lookup: Lookup
) -> Query | Ask | None:
    """The query about the one way of wearing, or act, of which the words name the one pole or the other."""
    if frame.kind not in ("may", "must") or roles.value is not None or roles.clashing:
        return None
    if any(piece.tag in ("which", "what", "how", "who", "where", "why") for piece in found.pieces):
        return None
    pieces, tokens = found.pieces, found.tokens
    if any(p.tag == "aspect" and lookup.aspects[p.arg].within == "care" for p in pieces):
        return None  # "wring the scarf out"
    nouns = frozenset(place for p in pieces if p.tag in ("item", "items") for place in range(p.first, p.last))
    states = [p for p in pieces if p.tag == "fact" and p.last - p.first > 1]  # "the saw is running"
    nouns |= {place for p in states for place in range(p.first, p.last) if tokens[place].low in _NOUNS}
    said = posed(tokens, nouns)
    denied = _denial(found, left, frame, said) if said is not None else None
    if said is None or denied is None:
        return None
    said = msgspec.structs.replace(said, places=said.places | denied)
    if denied:  # it is the denial of the way, and of no act besides
        frame = msgspec.structs.replace(frame, polarity="do")
    over = [place for index in left for place in range(pieces[index].first, pieces[index].last)]
    if is_of_another_clause(found, said.places):
        return None
    fits: _Fits = {}
    for item in _subjects(found, roles, case, lookup):
        for aspect in _of_item(item, lookup):
            shared = _shared(said, aspect, found, frame)
            if len(set(shared.values())) == 1 and _explains(
                found, over, said, shared.keys(), item, aspect, roles, lookup
            ):
                fits[item, aspect.id] = len(shared), next(iter(shared.values()))
    if not fits:
        return _on_show(said, over, found, frame, said_case(case, roles, lookup), lookup)
    fits = _as_named(fits, found, lookup)
    best = max(score for score, _ in fits.values())
    chosen = {key: same for key, (score, same) in fits.items() if score == best}
    if len(set(chosen.values())) > 1:  # down as a rule, and up where it may be
        due = {(i, r.aspect) for r in lookup.base.rules if r.modality == "must" for i in r.scope.items}
        chosen = {key: same for key, same in chosen.items() if key in due}
    if len({item for item, _ in chosen}) != 1 or len(set(chosen.values())) != 1:
        return None
    (item, way), agrees = next(iter(chosen.items()))
    worn = {f"worn:{p.arg}": YES for p in roles.worn if p.tag == "item" and p.arg != item}
    worn |= {f"worn:{p.arg}": NO for p in roles.unworn if p.tag == "item" and p.arg != item}
    known = {fact: values for fact, values in worn.items() if fact in lookup.facts}
    whole = said_case(case, roles, lookup, known)
    return _query(item, way, agrees != bool(denied), frame, found, whole, lookup)


_Fits = dict[tuple[str, str], tuple[int, bool]]


def _as_named(fits: _Fits, found: Understood, lookup: Lookup) -> _Fits:
    """The ways that are acts of the books' own, before those that only tell by the way what is so.

    Whose verb is said is what is asked about, whatever a particle fits besides: "roll my sleeves up". What is
    done up at the wrist is not rolled up, either; where a rule is against rolling, that is the one to ask.
    """
    done = {piece.arg for piece in found.pieces if piece.tag == "act"}
    said = {key: fit for key, fit in fits.items() if lookup.aspects[key[1]].within is None and key[1] in done}
    if said:
        return said
    if not any(lookup.aspects[way].within is None and _is_barred(item, way, lookup) for item, way in fits):
        return fits
    return {key: fit for key, fit in fits.items() if lookup.aspects[key[1]].within != "fastening"}


def _is_barred(item: str, way: str, lookup: Lookup) -> bool:
    """Whether some rule is against doing so."""
    return any(
        rule.aspect == way and rule.modality == "must_not"
        for rule in lookup.rules_on(set(lookup.broader(item)))
    )


_NOUNS = word_set("saw hook clip buckle strap lace tie pin hitch")
"""Words for things that are forms of verbs as well, in the name of a circumstance."""
_ROLLED = word_set("roll rolled rolling rolls")
_SLEEVES = word_set("sleeve sleeves cuff cuffs leg legs hem hems trousers")
_HIDDEN = ("seen", False)


def _shared(said: Posed, aspect: Aspect, found: Understood, frame: Frame) -> dict[str, bool]:
    """The pairs that a way and what is said are both of, and whether they agree."""
    named = dict(named_poles(aspect))
    shared = {name: pole == named[name] for name, pole in said.poles if name in named}
    lows = {token.low for token in found.tokens}
    if not lows.isdisjoint(PARTLY):
        if not {*shared} <= {"fast", "tucked"} or "at least" in aspect.label:
            return {}
        shared = dict.fromkeys(shared, False)  # what is half done up is not done up
    words = {found.tokens[place].low for place in said.places}
    if frame.kind == "may" and _HIDDEN in said.poles and shared.get("seen"):
        return {}  # who says that it is hidden asks whether it may be worn so
    if "rolled" in shared and not (words & _ROLLED or lows & _SLEEVES):
        return {}  # "may I push up my jersey"
    label = {token.low for token in tokenize(aspect.label)}
    if "fast" in shared and is_by_other_means(words, label):
        return {}  # what is tied by hand is not clipped on
    if shared.get("gathered") and not words & label & {"up", "back"}:
        return {}  # what is tied may still not be tied back
    return shared


def _query(
    item: str, way: str, same: bool, frame: Frame, found: Understood, case: Case, lookup: Lookup
) -> Query | Ask:
    """Whether a contrary may be is whether the way may not be; whether it must be is asked back."""
    left = any(piece.tag == "leave off" for piece in found.pieces)  # "leave it hanging out"
    do = same == (left or frame.polarity == "do")
    kind: QuestionKind = "must" if not frame.modal and found.pieces[0].tag == "do" else frame.kind
    if kind == "may" or do:
        return Query(kind=kind, items=(item,), aspect=way, polarity="do" if do else "not", case=case)
    within = lookup.aspects[way].within
    if within is None and _is_barred(item, way, lookup):
        return Query(kind="must", items=(item,), aspect=way, polarity="not", case=case)
    if within is not None and "open" in lookup.aspects[way].label.split():
        return Query(kind="how", items=(item,), aspect=within, case=case)  # "must I do it up"
    dual = say_query(lookup, Query(kind="may", items=(item,), aspect=way, case=case))
    return Ask(fact="reading", prompt="Asked of its contrary, is this the question?", choices=((dual, dual),))


def _subjects(found: Understood, roles: Roles, case: Case, lookup: Lookup) -> tuple[str, ...]:
    """The things that are named for certain; else all that a name may mean, where no rig tells which."""
    certain = dict.fromkeys(p.arg for p in found.pieces if p.tag == "item")
    rigs = any(lookup.facts[fact].family == "rig" for fact in (*dict(case.facts), *roles.facts))
    if certain or rigs:
        return tuple(certain)
    return tuple(dict.fromkeys(e.id for p in found.pieces if p.tag == "items" for e in p.entries))


def is_of_another_clause(found: Understood, said: Collection[int]) -> bool:
    """ "My coat has loose buttons, may I wear it": whether it is asked about wearing, apart from it."""
    acts = [p.first for p in found.pieces if p.tag in ("act", "leave off") and p.how != "pattern"]
    first, last = min(said), max(said)
    return any(
        not first <= act <= last and any(mark in found.text[start:end] for mark in ",.;:?!")
        for act in acts
        for start, end in (_between(found, act, first, last),)
    )


def _between(found: Understood, act: int, first: int, last: int) -> tuple[int, int]:
    tokens = found.tokens
    return (tokens[act].end, tokens[first].start) if act < first else (tokens[last].end, tokens[act].start)


def _on_show(
    said: Posed, over: Sequence[int], found: Understood, frame: Frame, case: Case, lookup: Lookup
) -> Query | None:
    """ "A tattoo on show": of what one has on the body and no rule hides, whether one may have it."""
    items = {p.arg for p in found.pieces if p.tag == "item"}
    others = any(p.tag == "items" for p in found.pieces)
    light = all(place in said.places or found.tokens[place].low in _LIGHT for place in over)
    before = found.tokens[max(said.places) + 1].low if max(said.places) + 1 < len(found.tokens) else ""
    if said.poles != {("seen", True)} or len(items) != 1 or others or not light or before in ("the", "this"):
        return None  # "may I show the wig" to somebody
    (item,) = items
    if "grooming" not in lookup.broader(item):
        return None
    return Query(kind=frame.kind, items=(item,), aspect="wear", polarity=frame.polarity, case=case)


def _denial(found: Understood, left: Sequence[int], frame: Frame, said: Posed) -> frozenset[int] | None:
    """ "Not done up", "isn't tucked in": the place of a denial right before what is said, if there is one.

    None where something is denied that may be anything else.
    """
    first = min(said.places)
    outer = denied_leave(found.pieces, frame)
    near = [place for place in range(max(first - 4, 0), first) if found.tokens[place].low in _DENYING]
    near = [place for place in near if place not in outer]
    if not near:
        return frozenset()
    over = {place for i in left for place in range(found.pieces[i].first, found.pieces[i].last)}
    ours = {place for i in frame.used for place in range(found.pieces[i].first, found.pieces[i].last)}
    plain = found.tokens[near[0]].low in ("not", "n't") and frame.kind == "may"
    plain = plain and (frame.polarity == "do" or near[0] in ours)
    whole = len(near) == 1 and all(found.tokens[place].low in _LIGHT for place in range(near[0] + 1, first))
    return frozenset(near) if plain and whole and near[0] in over else None


def _of_item(item: str, lookup: Lookup) -> Iterator[Aspect]:
    """The ways of wearing and the acts of which rules speak for an item or what it is a kind of."""
    related = set(lookup.broader(item))
    spoken = {rule.aspect: None for rule in lookup.rules_on(related)}
    for name in spoken:
        aspect = lookup.aspects[name]
        if aspect.kind == "act" and (aspect.within in ("fit", "fastening") or aspect.within is None):
            yield aspect


def _explains(
    found: Understood, over: Sequence[int], said: Posed, shared: Collection[str], item: str, aspect: Aspect,
    roles: Roles, lookup: Lookup,
) -> bool:  # fmt: skip
    """Whether all words left over, and all other things named, go with what is said of the thing."""
    label = {token.key for token in tokenize(aspect.label)}
    places = {word for name in shared for word in _PLACES.get(name, ())}
    tokens = found.tokens
    if "raised" in shared and aspect.within is not None:
        idle = _LEADS | _LIGHT
        nouns = {t.key for t in tokenize(aspect.label) if (t.low,) not in phrases() and t.low not in idle}
        if nouns and not any(token.key in nouns for token in tokens):
            return False  # "the collar turned down" is of the collar
    for place in over:
        low = tokens[place].low
        known = place in said.places or low in _LIGHT or low in _LEADS or low in places
        if not known and tokens[place].key not in label:
            return False
    own = {*lookup.broader(item), *(part.id for part in lookup.base.items if part.part_of == item)}
    whole = lookup.items[item].part_of
    worn = {
        e.id for piece in (*roles.worn, *roles.unworn) for e in piece.entries if not _is_part(e.id, lookup)
    }
    for piece in found.pieces:
        if piece.tag not in ("item", "items"):
            continue
        entries = {entry.id for entry in piece.entries}
        keys = {token.key for token in tokens[piece.first : piece.last]}
        lows = {token.low for token in tokens[piece.first : piece.last]} - _LEADS - BESIDE
        alike = piece.tag == "items" and item in entries
        part = alike or (
            lows <= places and (_is_led(found, piece.first) or all(_is_part(e, lookup) for e in entries))
        )
        if not (entries & own or whole in entries or entries <= worn or keys <= label or part):
            return False
    return True


def _is_led(found: Understood, place: int) -> bool:
    """Whether a preposition leads to a thing: "out of my trousers"."""
    if found.tokens[place].low in _LEADS:
        return True
    while place and found.tokens[place - 1].low in BESIDE:
        place -= 1
    return bool(place) and found.tokens[place - 1].low in _LEADS


def _is_part(item: str, lookup: Lookup) -> bool:
    return "feature" in lookup.broader(item)
