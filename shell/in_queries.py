"""Completion inside a query: keywords, prefixes, terms, records by their label, and the query's variables."""

from __future__ import annotations

from collections.abc import Iterator

from shell.vocabulary import Term, Vocabulary

_KEYWORDS = """ASK BASE BIND CONSTRUCT COUNT DESCRIBE DISTINCT EXISTS FILTER FROM GRAPH GROUP HAVING LIMIT
MINUS NOT OFFSET OPTIONAL ORDER PREFIX SELECT UNION VALUES WHERE"""
_FORMS = ("SELECT ", "ASK ", "CONSTRUCT ", "DESCRIBE ", "PREFIX ")
_ENDS = " \n\t{}().;,|^/!=*+"
_LOCAL_FROM = 3  # letters of a term without its prefix

Found = tuple[int, str, str]  # where it begins, the text, and what it is


def _word_start(text: str) -> int:
    """Where the word before the cursor begins; an IRI or a text in quotes is one word, spaces and all."""
    quote = opened = -1
    for place, sign in enumerate(text):
        if quote >= 0:
            quote = -1 if sign == text[quote] or sign == "\n" else quote
        elif opened >= 0:
            opened = -1 if sign in ">\n" or (sign == " " and place == opened + 1) else opened
        elif sign in "\"'":
            quote = place
        elif sign == "<":
            opened = place
    if quote >= 0 or opened >= 0:
        return max(quote, opened)
    return max(text.rfind(sign) for sign in _ENDS) + 1


def _variables(text: str) -> list[str]:
    """The variables of a text, as they come, each once."""
    words = "".join(c if c.isalnum() or c in "?$_" else " " for c in text).split()
    return list(dict.fromkeys(word for word in words if word[0] in "?$" and len(word) > 1))


def _begins(term: Term, word: str) -> bool:
    """Whether a record goes by an IRI or a label that begins so, or a label with such a word in it."""
    label = term.about.casefold()
    return term.text.casefold().startswith(f"<{word}") or label.startswith(word) or f" {word}" in label


def _expected(before: str, text: str, vocabulary: Vocabulary) -> Iterator[tuple[str, str]]:
    """What can follow a space: after a subject a property, after "a" a class, else the variables."""
    words = text.replace("{", " { ").replace(";", " ; ").replace(".", " . ").split()
    last, further = (words[-1], words[-2] if len(words) > 1 else "") if words else ("", "")
    inside = before.count("{") > before.count("}")
    if last.lower() == "query" or not last:
        yield from ((form, "keyword") for form in _FORMS)
    elif last.upper() == "PREFIX":
        yield from ((f"{t.text} <{t.about}>", "prefix") for t in vocabulary.terms if t.kind == "prefix")
    elif last == "a" and inside:
        yield from ((t.text, t.about) for t in vocabulary.terms if t.kind == "class")
    elif inside and (last == ";" or (last[0] in "?$<" and further in ("{", ".", ""))):
        yield from ((t.text, t.about) for t in vocabulary.terms if t.kind == "property")
    else:
        yield from ((variable, "variable") for variable in _variables(text))


def in_query(text: str, vocabulary: Vocabulary, whole: str) -> Iterator[Found]:
    """What fits at the end of `text`, the part of the `whole` query before the cursor."""
    start = _word_start(text)
    word, before = text[start:], text[:start]
    terms = vocabulary.terms
    if not word:
        yield from ((start, found, about) for found, about in _expected(text, before, vocabulary))
    elif word[0] in "?$":
        others = [v for v in _variables(before + " " + whole[len(text) :]) if v != word]
        yield from ((start, v, "variable") for v in others if v.startswith(word))
    elif word[0] == "<":
        said = word[1:].casefold()
        yield from (
            (start, t.text, t.about) for t in terms if t.kind == "record" and said and _begins(t, said)
        )
    elif word[0] in "\"'":
        said, quote = word[1:].casefold(), word[0]
        names = (e.text for e in vocabulary.entries if e.kind != "act" and quote not in e.text)
        yield from (
            (start, f"{quote}{name}{quote}", "label")
            for name in names
            if said and name.casefold().startswith(said)
        )
    else:
        yield from _named(start, word, before, vocabulary)


def _named(start: int, word: str, before: str, vocabulary: Vocabulary) -> Iterator[Found]:
    """Keywords, prefixes, and terms by their whole or their local name."""
    low = word.casefold()
    if word.isalpha():
        yield from (
            (start, k, "keyword") for k in _KEYWORDS.split() if k.startswith(word.upper()) and k != word
        )
    declares = before.split()[-1:] and before.split()[-1].upper() == "PREFIX"
    for term in vocabulary.terms:
        if term.kind == "prefix" and term.text.startswith(low) and (declares or term.text != low):
            yield start, f"{term.text} <{term.about}>" if declares else term.text, term.about
    if declares:
        return
    for term in vocabulary.terms:
        if term.kind in ("class", "property"):
            local = term.text.partition(":")[2].casefold()
            by_name = ":" not in word and len(word) >= _LOCAL_FROM and local.startswith(low)
            if term.text != word and (by_name or (":" in word and term.text.casefold().startswith(low))):
                yield start, term.text, term.about
