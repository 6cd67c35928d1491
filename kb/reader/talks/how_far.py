"""How far something reaches, told in other words than the fact has: "it goes past my collar"."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Ask
from kb.model.values import NO, YES, Choices
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_REACHES = Pattern(
    r"(?i)(?:(?:yes|yeah|no|well|but|and),? )*(?:it|they|mine|(?:my|his|her|our) [a-z]+)"
    r"(?P<not> (?:does|do)(?: not|n['\u2019]t))?(?: only| just)?"
    r"(?:['\u2019](?:s|re)| (?:goes|go|comes|come|reaches|reach|hangs|hang|falls|fall|is|are|stops|stop|"
    r"ends|end|gets|get))(?: (?:down|right|well|just|a bit|way))* "
    r"(?:(?P<past>past|below|beyond|over|beneath|longer than|under|further than)"
    r"|(?P<short>above|short of|shorter than|before)) (?:the|my|his|her|our) (?P<mark>[a-z' -]+?)"
)
_PAST = word_set("past below beyond over beneath under longer further lower passes reaches reaching passing")
_SMALL = word_set("of the my his her is are or and than in with that which a an it")


def reaches(ask: Ask, said: str, lookup: Lookup) -> tuple[str, Choices] | None:
    """The circumstance that was asked back, or the one such, with the mark of the reply; and if it is so."""
    told = _REACHES.fullmatch(said)
    mark = {token.key for token in tokenize(told["mark"])} - _SMALL if told is not None else set()
    facts = [
        fact.id
        for fact in lookup.base.facts
        if mark
        and fact.kind == "yes_no"
        and any(_is_past(name, mark) for name in (fact.label, *fact.other_labels))
    ]
    fact = ask.fact if ask.fact in facts else facts[0] if len(facts) == 1 else None
    if told is None or fact is None or (told["not"] and told["short"]):
        return None
    return fact, YES if told["past"] and not told["not"] else NO


def _is_past(name: str, mark: set[str]) -> bool:
    keys = {token.key for token in tokenize(name)}
    return mark <= keys and not keys.isdisjoint(_PAST)
