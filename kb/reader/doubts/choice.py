"""A reply to a question that was asked back about the words: the question before, with the choice in it."""

from __future__ import annotations

from kb.measures import find_date
from kb.model.questions import Ask, Reading
from kb.reader.names.lexicon import Lexicon
from kb.reader.phrases.english import PHRASES, tag_set
from kb.reader.words.forms import NUMBER_WORDS
from kb.reader.words.tokens import tokenize, word_key
from kb.text import Pattern

_ORDINALS = {"first": 0, "former": 0, "second": 1, "third": 2, "fourth": 3, "last": -1, "latter": -1}
_LED = Pattern(r"(?i)^(?:(?:and|but|ok|okay|well|so|what about|how about|what of)\b[ ,]*)+")
_AGREED = tag_set("""
    yes, y, yes please, yes do, yes go ahead, please do, go ahead, go on, yeah, yep, aye, ok, okay, sure
    right, correct, that one
""")


def answer_to_ask(text: str, previous: Reading, lexicon: Lexicon) -> str | None:
    """The question that a reply makes of the one before; None where it is no reply to what was asked."""
    ask = previous.ask
    if ask is None or not ask.choices:
        return None
    dated = _date_in(text, ask)
    if dated is not None:
        return dated
    place = _chosen(text, ask, lexicon)
    if place is None:
        return None
    value, label = ask.choices[place]
    if ask.fact == "reading":
        return value
    where = asked_place(previous)
    if ask.fact == "item" and where is not None:
        return previous.question[: where[0]] + label + previous.question[where[1] :]
    return None


def _date_in(text: str, ask: Ask) -> str | None:
    """Any day of the year that was asked about, where days were offered."""
    value, label = ask.choices[0]
    said = find_date(text)
    if ask.fact != "reading" or said is None or find_date(label) is None or len(text.split()) > 5:
        return None
    return value.replace(label, said.date.isoformat())


def _chosen(text: str, ask: Ask, lexicon: Lexicon) -> int | None:
    """The place of the one choice that a reply picks: in full, by its place, or by words of it alone."""
    said = text.strip(" .?!").casefold()
    offered = said.removeprefix("yes").lstrip(" ,") or said
    for place, (value, label) in enumerate(ask.choices):
        if {said, offered} & {value.casefold().rstrip(".?!"), label.casefold().rstrip(".?!")}:
            return place
    if " ".join(said.replace(",", " ").split()) in _AGREED:
        return 0 if len(ask.choices) == 1 else None
    text = _LED.sub("", text)
    words = [t.low for t in tokenize(text) if PHRASES.get((t.low,)) not in ("det", "poss", "comma", "filler")]
    words = [word for word in words if word not in ("one", "number", "ones")]
    if len(words) == 1 and (numbered := _numbered(words[0], len(ask.choices))) is not None:
        return numbered
    keys = [word_key(word) for word in words]
    return _by_name(keys, ask, lexicon) if ask.fact == "item" else _by_kind(keys, ask)


def _numbered(word: str, count: int) -> int | None:
    place = _ORDINALS.get(word, (int(word) if word.isdecimal() else NUMBER_WORDS.get(word, 0)) - 1)
    if place == -1 and word in _ORDINALS:
        return count - 1
    return place if 0 <= place < count else None


def _by_name(keys: list[str], ask: Ask, lexicon: Lexicon) -> int | None:
    if not keys:
        return None
    named = {entry.id for entry in lexicon.names.get("".join(keys), ()) if entry.kind == "item"}
    found = [place for place, (value, _) in enumerate(ask.choices) if value in named]
    labels: list[list[str]] = []
    if len(found) != 1:
        labels = [[token.key for token in tokenize(label)] for _, label in ask.choices]
        found = [place for place, words in enumerate(labels) if set(keys) <= {*words}]
    if len(found) > 1:  # "the pilot's", of the pilot's badge and the old pattern pilot's badge
        found = [place for place in found if labels[place][: len(keys)] == keys] or found
    return found[0] if len(found) == 1 else None


def _by_kind(keys: list[str], ask: Ask) -> int | None:
    """ "The place", where "in the mess (place)" and "mess (rig)" are offered."""
    kinds = [label.rpartition(" (")[2].rstrip(")") if label.endswith(")") else "" for _, label in ask.choices]
    found = [n for n, kind in enumerate(kinds) if keys and [t.key for t in tokenize(kind)] == keys]
    return found[0] if len(found) == 1 else None


def asked_place(previous: Reading) -> tuple[int, int] | None:
    """The characters that the answer to "which item" replaces: an unclear word, else what was offered."""
    items = [span for span in previous.spans if span.role == "item"]
    offered = {value for value, _ in previous.ask.choices} if previous.ask is not None else set()
    unclear = [span for span in items if span.target is None]
    if len(unclear) > 1 and previous.ask is not None:  # "do my glasses need a cord": the one that is asked of
        words = {token.key for _, label in previous.ask.choices for token in tokenize(label)}
        unclear = [s for s in unclear if tokenize(s.text)[-1].key in words] or unclear
    unclear = unclear[:1]
    named = unclear or [span for span in items if span.target in offered] or items[:1]
    return (named[0].start, named[-1].end) if named else None
