"""What a fact is asked by, as names of it: "Is hot work being done?" makes "hot work being done" one.

Whoever writes the books puts the question in everyday words; who tells the fact uses them, too.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.records import Fact
from kb.reader.names.lexicon import name_words
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize

_BE, _HAVE, _DO = word_set("is are was were"), word_set("has have had"), word_set("do does did")
_OPEN = word_set("or and if not no any anyone anything when where who which may must")
"""Words of a question that a plain statement does not answer as it stands."""
_LONGEST, _LONGEST_INSERTED = 10, 7
_US = {"you": ("me", "us"), "your": ("my",)}


def asked_names(fact: Fact) -> Iterator[tuple[str, ...]]:
    """The words of a statement that says yes to the question of a yes-or-no fact."""
    text = fact.ask.strip().removesuffix("?")
    words = [token.low for token in tokenize(text)]
    if fact.kind != "yes_no" or not 2 < len(words) <= _LONGEST or not all(word.isalnum() for word in words):
        return
    if not _OPEN.isdisjoint(words):
        return
    lead, subject, rest = words[0], words[1], words[2:]
    you = subject == "you"
    if lead in _BE and you and rest[0] in ("a", "an"):
        yield name_words(" ".join(rest))
    told = [rest] if you or subject in ("it", "there") else [words[1:]]
    if lead in _HAVE and not you and len(words) <= _LONGEST_INSERTED:
        whole = words[1:]  # "a net has been hung": where the verb begins is not looked for
        told += [[*whole[:place], lead, *whole[place:]] for place in range(1, len(whole))]
    if lead in _DO and you:
        told += [[form, *rest[1:]] for form in _doing(rest[0])]
    for said in told:
        for one in _said_of_oneself(said):
            name = name_words(" ".join(one))
            if len(name) > 1:
                yield name


def _doing(verb: str) -> tuple[str, ...]:
    """ "Carrying", and what it may be written as, of "carry"."""
    stem = verb.removesuffix("e")
    return (f"{stem}ing", f"{verb}{verb[-1]}ing", f"{verb}s")


def _said_of_oneself(words: list[str]) -> Iterator[list[str]]:
    """ "Staff are with me" for "Are staff with you?"."""
    if not _US.keys() & set(words):
        yield words
        return
    for place in range(2):
        yield [_US[word][min(place, len(_US[word]) - 1)] if word in _US else word for word in words]
