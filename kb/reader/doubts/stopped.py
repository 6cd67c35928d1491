"""What is said about words that nothing explains: confirmed without a modifier, asked about, or named."""

from __future__ import annotations

from collections.abc import Callable

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Reading
from kb.reader.meaning.gate import is_modifier
from kb.reader.names.spelling import near_labels
from kb.reader.pieces.leftover import ask_meaning
from kb.reader.pieces.pieces import Understood
from kb.text import visible


def stopped(
    found: Understood, left: tuple[int, ...], lookup: Lookup, read: Callable[[str], Reading]
) -> Ask | Abstain:
    """What to say about words that nothing explains: confirm without a modifier, else abstain."""
    words = [_written(found, index) for index in left]
    if all(found.pieces[index].tag == "book" for index in left):
        shown = _quoted(words)
        prompt = f"All books are read together, not {shown} alone. Answer from all of them?"
        return Ask(
            fact="reading",
            prompt=prompt,
            choices=((_without(found, _with_lead(found, left)), "from all of them"),),
        )
    if all(is_modifier(found, left, index, lookup) for index in left):
        unknown = tuple(index for index in left if found.pieces[index].tag == "unknown")
        for dropped in dict.fromkeys((unknown or left, left)):
            rest = _without(found, dropped)
            again = read(rest)
            if again.abstain is None and (again.ask is None or again.ask.fact == "item"):
                shown = _quoted([_written(found, index) for index in dropped])
                prompt = f"The books do not know {shown} here. Answer without it?"
                return Ask(fact="reading", prompt=prompt, choices=((rest, "without it"),))

    meant = ask_meaning(found, left, lookup, read)
    if meant is not None:
        return meant
    names = [word for index, word in zip(left, words, strict=True) if found.pieces[index].tag == "unknown"]
    near = near_labels(" ".join(names), lookup) if names else ()
    bare = all(found.pieces[index].tag == "number" for index in left)
    reason = (
        f"It is not said what {_quoted(words)} measures." if bare else f"Not understood: {_quoted(words)}."
    )
    return Abstain(reason=reason, words=tuple(words), suggestions=near)


def _with_lead(found: Understood, left: tuple[int, ...]) -> tuple[int, ...]:
    """The places with the article and preposition before each: "under the station order"."""
    places = set(left)
    for index in left:
        before = index - 1
        while before >= 0 and found.pieces[before].tag == "det":
            places.add(before)
            before -= 1
        lead = found.pieces[before] if before >= 0 else None
        if lead is not None and (
            lead.tag in ("in", "by", "with", "for", "of")
            or (found.tokens[lead.last - 1].low == "to" and lead.tag == "filler")
        ):
            places.add(before)
    return tuple(sorted(places))


def _quoted(words: list[str]) -> str:
    return ", ".join(f'"{visible(word)}"' for word in words)


def _without(found: Understood, dropped: tuple[int, ...]) -> str:
    """The text without some of its words."""
    rest = found.text
    for index in reversed(dropped):
        piece = found.pieces[index]
        start, end = found.tokens[piece.first].start, found.tokens[piece.last - 1].end
        rest = rest[:start] + rest[end:].lstrip(" -")
    return " ".join(rest.split())


def _written(found: Understood, index: int) -> str:
    piece = found.pieces[index]
    return found.text[found.tokens[piece.first].start : found.tokens[piece.last - 1].end]
