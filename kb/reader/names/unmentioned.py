"""Names of things that no clause mentions, where the books close what they do not mention: "a charity pin".

Each stands for the class that such a rule closes, and is asked about as one that no rule names.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from kb.model.lookup import Lookup
from kb.reader.names.lexicon import Entry, joined, labels_of, name_words
from kb.reader.words.kinds import NO_STUDS
from kb.reader.words.strange_things import strange_things
from kb.reader.words.tokens import tokenize

_BADGES = frozenset({"badge", "pin", "patch"})
_CAUSES = frozenset({"charity", "remembrance", "campaign", "cause"})


def unmentioned(names: Mapping[str, tuple[Entry, ...]], lookup: Lookup) -> Iterator[tuple[str, Entry, int]]:
    """The key of each such name, what it stands for, and of how many words it is."""
    closed = {
        item
        for rule in lookup.base.rules
        if rule.residual and rule.modality == "must_not" and rule.aspect == "wear"
        for item in rule.scope.items
    }
    if not closed:
        return
    classes = {label.casefold(): item.id for item in lookup.base.items for label in labels_of(item)}
    texts = (clause.text for clause in lookup.base.clauses)
    mentioned = {token.key for text in texts for token in tokenize(text)}
    for chain, things in strange_things():
        near = (classes[name] for name in chain if name in classes)
        items = [item for item in near if closed.intersection(lookup.broader(item))]
        for thing in things if items else ():
            words = name_words(thing)
            said = words[:-1] if words[-1] in _BADGES else words  # "badge" is mentioned, "charity" is not
            if "poppy" in said and not mentioned.isdisjoint(_CAUSES):
                continue  # it may be what the book calls a charity pin
            if joined(thing) not in names and mentioned.isdisjoint(said):
                yield "".join(words), Entry("item", items[0], "", 1), len(words)


def no_studs(key: str, entries: tuple[Entry, ...], lookup: Lookup) -> tuple[Entry, ...]:
    """What an everyday name may mean: where earrings are studs, or must be, a hoop is but jewellery."""
    if all(key != joined(name) for name in NO_STUDS):
        return entries
    rules = [rule for rule in lookup.base.rules if rule.modality == "must"]
    be_studs = {i for r in rules if "stud" in lookup.aspects[r.aspect].label for i in r.scope.items}
    studs = [e for e in entries if e.id in be_studs or "stud" in lookup.items[e.id].label.casefold()]
    others = tuple(e for e in entries if e not in studs)
    if others or not studs:
        return others
    classes = (item for item in lookup.base.items if "jewellery" in map(str.casefold, labels_of(item)))
    return tuple(Entry("item", item.id, "", 1) for item in classes)


def is_strange(text: str, item: str, lookup: Lookup) -> bool:
    """Whether a name of several words, the last one that of a class, is of what a book need not mention."""
    called = {label.casefold() for label in labels_of(lookup.items[item])}
    near = [things for chain, things in strange_things() if not called.isdisjoint(chain)]
    key = joined(text)
    return any(key == joined(name) for things in near for name in things if " " in name)
