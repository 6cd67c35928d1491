"""What to ask about a word that nothing explains, where the books have something that it may mean."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Ask, Reading
from kb.model.values import YES, ValueSet
from kb.reader.names.lexicon import Entry
from kb.reader.pieces.pieces import Understood
from kb.reader.pieces.values import entry_values
from kb.reader.words.tokens import tokenize
from kb.text import visible
from kb.wording.cases import case_points

Read = Callable[[str], Reading]
_MOST = 4
_BEFORE = frozenset({"in", "on", "for", "if", "when", "with", "by"})


def ask_meaning(found: Understood, left: tuple[int, ...], lookup: Lookup, read: Read) -> Ask | None:
    """ "At the machinery": the facts and values whose names hold the word, each as the question it makes."""
    if len(left) != 1:
        return None
    piece = found.pieces[left[0]]
    word, first = found.tokens[piece.first], _start(found, left[0])
    if first is None or piece.tag != "unknown" or len(word.low) < 4 or not word.low.isalpha():
        return None
    start, end = found.tokens[first].start, found.tokens[piece.last - 1].end
    choices = []
    for fact, values in dict.fromkeys(_named_by(word.key, lookup)):
        said = case_points(lookup, ((fact, values),))[0]
        text = f"{found.text[:start].rstrip(' ,')}, {said}{found.text[end:]}"
        again = read(text)
        if again.query is not None and again.query.items and dict(again.query.case.facts).get(fact) == values:
            choices.append((text, said))
    if not 1 <= len(choices) <= _MOST:
        return None
    return Ask(fact="reading", prompt=f'What does "{visible(word.text)}" mean here?', choices=tuple(choices))


def _start(found: Understood, index: int) -> int | None:
    """The first word of the phrase that ends in a word: "at the machinery"; None if nothing leads to it."""
    before = index - 1
    while before >= 0 and found.pieces[before].tag in ("det", "poss"):
        before -= 1
    if before < 0 or found.pieces[before].tag not in _BEFORE:
        return None
    return found.pieces[before].first


def _named_by(word: str, lookup: Lookup) -> Iterator[tuple[str, ValueSet]]:
    """Facts of the situation that hold a word in their names: yes or no, or one value of a choice."""
    for group in lookup.base.groups:
        if lookup.facts[group.fact].family != "grade" and _holds(word, group.label, *group.other_labels):
            yield group.fact, entry_values(Entry("group", group.id, group.fact), lookup)
    for fact in lookup.base.facts:
        if fact.family not in ("situation", "rig", "term"):
            continue
        if fact.kind == "yes_no":
            if _holds(word, fact.label, *fact.other_labels):
                yield fact.id, YES
            continue
        for value in fact.values:
            if _holds(word, value.label, *value.other_labels):
                yield fact.id, entry_values(Entry("value", value.id, fact.id), lookup)


def _holds(word: str, *names: str) -> bool:
    return any(token.key == word for name in names for token in tokenize(name))
