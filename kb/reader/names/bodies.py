"""What is worn on a part of the body."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.reader.phrases.english import BODY
from kb.reader.words.tokens import tokenize, word_key

_UNWORN = frozenset({"carried", "feature", "insignia", "grooming"})


def worn_on(body: str, lookup: Lookup) -> tuple[str, ...]:
    """The items whose names say that they are worn on a part of the body, without what is narrower."""
    words = BODY[body]
    own = {word_key(word) for word in body.split()}
    found = []
    for item in lookup.base.items:
        if not item.broader or not _UNWORN.isdisjoint(lookup.broader(item.id)):
            continue
        names = [
            [token.key for token in tokenize(name.partition(" of ")[0])]
            for name in (item.label, *item.other_labels, *item.everyday)
        ]
        if any(name and (name[-1] in words or name[0] in own) for name in names):
            found.append(item.id)
    return tuple(item for item in found if set(lookup.broader(item)[1:]).isdisjoint(found))
