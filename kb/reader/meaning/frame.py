"""What kind of question it is, read from its words of structure."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

import msgspec

from kb.model.questions import QuestionKind, Verdict
from kb.reader.meaning.flow import MODALS, Flow, asked_verdicts, main_modal
from kb.reader.pieces.pieces import Piece
from kb.reader.words.tokens import Token

Polarity = Literal["do", "not"]

_WH = frozenset(
    {"what", "which", "who", "where", "how", "how many", "when", "why", "compare", "order", "which clause"}
)
_ACTS = frozenset({"act", "leave off"})


class Frame(msgspec.Struct, frozen=True, kw_only=True):
    """The shape of a question.

    `ambiguous`: "must I not" can be read two ways; `carry`: "and for officers?" goes on from the one before.
    `terse`: no verb of a question was written; `sized`: the aspect comes from "how high" or the like;
    `ruled`: it asks for rules or clauses by these words. `used` are the places of the pieces that the frame
    explains; `modal` is "may", "must" or "" (none was written).
    """

    kind: QuestionKind
    modal: str = ""
    polarity: Polarity = "do"
    negated: bool = False
    ambiguous: bool = False
    carry: bool = False
    terse: bool = False
    aspect: str = ""
    sized: bool = False
    ruled: bool = False
    modalities: tuple[Verdict, ...] = ()
    used: frozenset[int] = frozenset()
    lasting: bool = False  # "how long may I wear it" may ask for a time, "how long a tape" for none
    tall: bool = False  # "how tall" asks for a size, where "how high" may ask for a place


def find_frame(
    pieces: Sequence[Piece], tokens: tuple[Token, ...], told: frozenset[int] = frozenset()
) -> Frame:
    """Kind, modality, polarity and negation of a question; `told` are the places of statements beside it."""
    flow = Flow(pieces, tokens, told)
    used: set[int] = set()
    negated, polarity, ambiguous = _negation(flow, used)
    modal_at = main_modal(flow)
    modal = MODALS.get(flow.tag(modal_at), "")
    if _fits_whom(flow, modal_at):
        modal = "may"
    bans = flow.tag(modal_at) == "banned" or "banned" in flow.tags
    kind, aspect = _kind(flow, modal, used)
    if kind == "must" and negated and modal_at and flow.tag(modal_at) in ("must", "should"):
        kind = "may" if flow.tag(modal_at + 1) == "not" and flow.lasts[modal_at + 1] == "not" else kind
    if kind not in ("may", "must") and polarity == "not" and not _chosen_not(flow):
        negated, polarity = True, "do"
    if "leave off" in flow.tags:
        ambiguous = ambiguous or (negated and polarity == "not")
        polarity = "do" if kind == "list" else "not"
    terse = not modal and kind == "may" and not any(tag in ("be", "do", "and how about") for tag in flow.tags)
    return Frame(
        kind=kind, modal=modal, polarity=polarity, negated=negated,
        ambiguous=ambiguous and kind in ("may", "must"),
        carry=flow.tag(0) == "and how about" or (flow.tag(0) in ("and", "or", "but") and len(flow.tags) < 6),
        terse=terse, aspect=aspect, sized="dimension" in flow.tags,
        ruled=any(tag in ("rule", "which clause", "say", "about") for tag in flow.tags),
        modalities=asked_verdicts(kind, modal, negated, bans, flow),
        used=frozenset(used), tall="tall" in flow.lasts, lasting=_is_lasting(flow),
    )  # fmt: skip


def _chosen_not(flow: Flow) -> bool:
    """ "choose not to own": the act itself is negated, whatever the question."""
    return any(tag == "not" and flow.tag(i + 1) == "to" for i, tag in enumerate(flow.tags))


def _fits_whom(flow: Flow, modal_at: int) -> bool:
    """ "What rank do I need to be to wear it" asks who may."""
    needs = flow.tag(modal_at) == "have to" and flow.lasts[modal_at] == "be"
    return needs and flow.tag(modal_at + 1) == "to" and "who" in flow.tags[:modal_at]


def _negation(flow: Flow, used: set[int]) -> tuple[bool, Polarity, bool]:
    """(the modality is negated or the question is a negative one, polarity of the act, two readings)."""
    negated, ambiguous = False, False
    polarity: Polarity = "do"
    for index, tag in enumerate(flow.tags):
        if tag not in ("not", "no longer"):
            continue
        if index and index == len(flow.tags) - 1:
            continue
        if _is_judged(flow, index):
            polarity = "not"
        elif _in_condition(flow, index):
            pass
        elif flow.tags[index + 1 : index + 3] == ["be", "aspect"] and flow.tag(0) == "may":
            polarity = "not"  # "may the fastening of the coat not be "buttoned""
        elif _is_ambiguous(flow, index):
            ambiguous = True
        elif flow.tags[max(index - 3, 0) : index] == ["allowed", "self", "do"]:
            polarity = "not"
        elif _negates_modal(flow, index):
            negated = True
        elif flow.tag(index + 1) in (*_ACTS, "to", "have", "be"):
            polarity = "not"
        else:
            continue
        used.add(flow.places[index])
    return negated, polarity, ambiguous


def _is_judged(flow: Flow, index: int) -> bool:
    """ "Is it wrong if I don't wear it", "my boots aren't laced, all right": that it is not is asked."""
    if flow.tag(index - 1) not in ("do", "be"):
        return False
    first = index - 2
    while first >= 0 and flow.tags[first] in _OF_IT:
        first -= 1  # "if my scarf ends aren't tucked in"
    thing = flow.tag(index - 1) == "be" and first < index - 2
    told = not thing and flow.tag(index - 2) in _WEARERS and flow.tag(index + 1) in _ACTS
    if not thing and not told:
        return False
    before = flow.tags[: first + 1 if thing else index - 2]
    before = before[:-1] if before[-1:] in (["if"], ["when"]) else before
    said = [tag for tag in flow.tags[index + 1 :] if tag not in ("be", "self", "person")]
    plain = told and not before and MODALS.keys().isdisjoint(said)  # "I don't wear it?"
    judged = before[-1:] in _JUDGING and _OF_IT.isdisjoint(
        before
    )  # not "is the hood banned if I don't wear it"
    stated = told or flow.tag(index + 1) not in _PREDICATES  # "my boots aren't laced, is that ok"
    closes = said[-1:] in _JUDGING or (thing and said[-1:] in _MAY)
    return judged or plain or (stated and not before and closes)


_OF_IT = frozenset({"item", "items", "run", "on", "of", "aspect"})
_JUDGING, _WEARERS = (["allowed"], ["banned"]), ("self", "person", "fact")
_MAY = (["may"], ["can"])


def _in_condition(flow: Flow, index: int) -> bool:
    """ "... if I do not wear the cap": the "not" belongs to what is worn, not to the question."""
    if flow.tag(index + 1) not in ("act", "hold", "have"):
        return False
    for tag in reversed(flow.tags[:index]):
        if tag in ("if", "when"):
            return True
        if tag in MODALS:
            return False
    return False


_SUBJECTS = ("self", "person", "fact", "item", "items")
_PREDICATES = ("have to", "allowed", "banned", "required", "optional", "be")


def _is_ambiguous(flow: Flow, index: int) -> bool:
    """ "Must I not wear it", "may I not wear it", "mustn't I wear it"."""
    before, after = flow.tag(index - 1), flow.tag(index + 1)
    if before in (*_SUBJECTS, "and", "or") and flow.tag(0) in ("may", "must", "should"):
        return after in (*_ACTS, "be", "have")
    contracted = flow.words[index] == "n't" and index == 1 and after in _SUBJECTS
    return contracted and flow.words[0] in ("must", "may")


def _negates_modal(flow: Flow, index: int) -> bool:
    """ "Can't I", "do I not have to", "K5 must not", "is it not allowed"; not "is it ok not to"."""
    before, after = flow.tag(index - 1), flow.tag(index + 1)
    if before in (*_AUXILIARIES, "have"):
        chosen = before in ("may", "can") and after == "to"  # "you may choose not to wear it"
        return not chosen and (flow.words[index] == "n't" or index > 1 or after not in _ACTS)
    if before in _SUBJECTS and (after in _PREDICATES or flow.tag(0) in ("can", "do", "be")):
        return True
    return after in ("allowed", "banned", "required", "optional", "have to", "must")


def _kind(flow: Flow, modal: str, used: set[int]) -> tuple[QuestionKind, str]:
    """The kind of question and the aspect that its question word asks about."""
    head = _head(flow)
    return (
        _whole_question(flow, modal, used)
        or _asked_by_word(flow, head)
        or _asked_size(flow, head, used)
        or _asked_openly(flow, head, modal, used)
        or _yes_or_no(flow, modal, used)
    )


Asked = tuple[QuestionKind, str] | None
_WORDS: dict[str, tuple[QuestionKind, str]] = {
    "who": ("who", ""),
    "where": ("where", "position"),
    "why": ("why", ""),
}
_AUXILIARIES = ("may", "can", "must", "should", "do", "be", "have to")


def _whole_question(flow: Flow, modal: str, used: set[int]) -> Asked:
    """Questions known by one word anywhere: a comparison, a source, an order of precedence."""
    if "compare" in flow.tags:
        used.add(flow.places[flow.tags.index("compare")])
        return "compare", ""
    told = ("say" in flow.tags or "about" in flow.tags) and not modal and "act" not in flow.tags
    ruled = "rule" in flow.tags and not modal and "act" not in flow.tags
    meant = "mean" in flow.tags and "fact" in flow.tags and not modal and "act" not in flow.tags
    if told or ruled or meant or _is_numbered(flow, modal) or "which clause" in flow.tags:
        return "source", ""
    either = _either_measure(flow)
    if either:
        used.update(flow.places[place] for place in either)
        named = _named_aspect(flow, used)
        said = "dimension" in flow.tags
        return "how", named or (flow.pieces[flow.first("dimension")].arg if said else "size")
    if "order" in flow.tags and not _is_which_order(flow):
        used.add(flow.places[flow.tags.index("order")])
        return "how", "precedence"
    return None


def _is_numbered(flow: Flow, modal: str) -> bool:
    """Whether a clause is asked for by its number; of "we have 4.5 here. May I wear it" it is a measure."""
    place = flow.first("clause number")
    if place == len(flow.tags):
        return False
    amount = flow.words[place][0].isdigit() and flow.tag(place - 1) in ("be", "have", "hold", "say")
    return not (amount and modal and "act" in flow.tags and not {"item", "items"}.isdisjoint(flow.tags))


def denied_leave(pieces: Sequence[Piece], frame: Frame) -> set[int]:
    """Places of the "not" of "I'm not allowed to clip it on": it denies the leave, not what is done."""
    found = set[int]()
    for index in frame.used if frame.negated else ():
        before, after = pieces[max(index - 1, 0) : index], pieces[index + 1 : index + 2]
        led = any(piece.tag in ("can", "may") for piece in before) or any(p.tag == "allowed" for p in after)
        if pieces[index].tag == "not" and led:
            found |= set(range(pieces[index].first, pieces[index].last))
    return found


def _is_lasting(flow: Flow) -> bool:
    """ "How long may the band be worn", "how long have I got": no thing stands right after "how long"."""
    place = flow.first("dimension")
    asked = place < len(flow.tags) and flow.words[place] == "how" and flow.lasts[place] == "long"
    led = place > 0 and place < len(flow.tags) and flow.lasts[place - 1] == "for"  # "and for how long"
    return asked and "act" in flow.tags and (led or flow.tag(place + 1) in (*_AUXILIARIES, "have"))


def _is_which_order(flow: Flow) -> bool:
    """ "Which order is for drivers": not in which order things of a kind come."""
    which = (
        flow.words[flow.tags.index("order")] in ("which", "what")
        and flow.tag(flow.tags.index("order") + 1) == "be"
    )
    return which and {"item", "items", "fact name", "aspect"}.isdisjoint(flow.tags)


def _either_measure(flow: Flow) -> list[int]:
    """ "Is 3 cm ok or must it be 38 mm": the places of two measures that are alternatives."""
    found = [i for i, tag in enumerate(flow.tags) if tag in ("measure", "number")]
    if len(found) != 2 or flow.tags[found[0]] != "measure" or "or" not in flow.tags[found[0] : found[1]]:
        return []
    between = {*flow.tags[found[0] + 1 : found[1]]}
    return found if between <= _ALTERNATIVE else []


_ALTERNATIVE = frozenset({"or", "be", "self", "dimension", "aspect", "item", "items", "for", "of", *MODALS})


def _asked_by_word(flow: Flow, head: int) -> Asked:
    word = flow.tag(head)
    if word == "how many" and "number" not in flow.tags:
        return "how_many", "count"
    if word == "when" and head == 0 and flow.tag(1) in _AUXILIARIES:
        return "when", ""
    return _WORDS.get(word)


def _asked_size(flow: Flow, head: int, used: set[int]) -> Asked:
    """ "How high is it", "what size is it", not "is it 2 in high"."""
    if "dimension" not in flow.tags or "measure" in flow.tags:
        return None
    place = flow.tags.index("dimension")
    piece = flow.pieces[place]
    asking = (
        flow.words[place] in ("how", "what", "dimensions", "measurements") or piece.last - piece.first > 1
    )
    if not asking and flow.tag(head) not in ("how", "what"):
        return None
    used.add(flow.places[place])
    return ("where" if piece.arg == "position" else "how"), piece.arg


def _asked_openly(flow: Flow, head: int, modal: str, used: set[int]) -> Asked:
    """ "How", "what" and "which" questions."""
    word, tags = flow.tag(head), flow.tags
    if word == "how" and "care" in tags:
        used.add(flow.places[tags.index("care")])
        return "how", "care"
    if word == "how" or (word in ("what", "which") and "aspect" in tags):
        return "how", _named_aspect(flow, used)
    if word not in ("what", "which") and "list" not in tags:
        return None
    if word in ("what", "which") and flow.tag(head + 1) in ("item", "items"):
        if flow.tag(head - 1) in ("on", "in", "above", "below"):
            return "where", "position"
        if "act" in tags and flow.tag(main_modal(flow) + 1) in ("self", "person", "fact", "not"):
            return "list", ""
        after = flow.tag(head + 2)
        kinds = after not in ("or", "and") and not any(_parts_kinds(flow, i) for i in range(len(tags)))
        bare = set(tags[head + 2 :])
        if "fact" in bare and bare <= {"fact", "for", "in", "on", "with"} and head == 0:
            return "list", ""
        if after == "with" or (
            kinds and after in ("may", "can", "must", "should", "have to", "do") and "act" in tags
        ):
            return "list", ""
        if modal or "act" in tags:
            return _yes_or_no(flow, modal, used)
    if modal or "act" in tags or "leave off" in tags or flow.tag(head + 1) == "with":
        return "list", ""
    return ("source" if "fact" in tags and ("be" in tags or "mean" in tags) else "may"), ""


def _parts_kinds(flow: Flow, index: int) -> bool:
    """Whether a word ("or", "on" before no date or fact) makes "which belt ..." no question for kinds."""
    put = flow.tag(index) == "on" and flow.tag(index + 1) not in ("on date", "fact")
    return flow.tag(index) == "or" or put


def _yes_or_no(flow: Flow, modal: str, used: set[int]) -> tuple[QuestionKind, str]:
    """May or must; a plain statement of what is worn ("do officers wear it") asks about a duty."""
    tags = flow.tags
    named = not modal and "aspect" in tags and "measure" not in tags and "aspect value" not in tags
    care = named and flow.pieces[tags.index("aspect")].arg.startswith("care:")  # "iron my smock"
    if named and not care:
        return "how", _named_aspect(flow, used)
    topic = tags[:3] in (["item", "do", "self"], ["items", "do", "self"])  # "the cap: do I wear it"
    stated = (topic or flow.tag(0) in ("do", "be", "which", "what")) and "act" in tags
    return ("must" if modal == "must" or (not modal and stated) else "may"), ""


def _head(flow: Flow) -> int:
    """The question word; a "who" further in only says who somebody is ("a K5 who is a diver")."""
    for index, tag in enumerate(flow.tags):
        if tag == "where" and "act" in flow.tags[:index] and flow.tags[0] in _AUXILIARIES:
            continue  # "may I wear it open where machinery is running"
        leading = all(before in ("list", "show", "by", "for", "self") for before in flow.tags[:index])
        if tag in _WH and (tag != "who" or leading or (flow.led[index] and flow.tag(index + 2) != "fact")):
            return index
    return len(flow.tags)


def _named_aspect(flow: Flow, used: set[int]) -> str:
    for index, tag in enumerate(flow.tags):
        if tag == "aspect":
            used.add(flow.places[index])
            return flow.pieces[index].arg
    return ""
