"""Words of a text with their places, and the key under which two spellings of a word are one."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from kb.reader.words.forms import CONTRACTIONS, IRREGULAR_SINGULARS, SLIPS, SPELLINGS
from kb.text import Pattern


class Token(NamedTuple):
    """A word, number or dash: characters `start` to `end`, the lower-case form, and its `key`."""

    start: int
    end: int
    text: str
    low: str
    key: str


_APOSTROPHES = str.maketrans({"’": "'", "‘": "'", "ʼ": "'", "′": "'", "`": "'", "´": "'"})
_WORD = Pattern(
    r"\d{1,2}'?s(?![^\W_])|\d+(?:[.,/]\d+)*|[^\W\d_]{1,4}\d{1,3}(?:'?s)?(?![^\W_])|[^\W\d_]+(?:'[^\W\d_]+)*'?|w/o\b|[-–—+&%°,]|[^\W_]",
    re.UNICODE | re.IGNORECASE,
)
_SIBILANT = ("ches", "shes", "sses", "xes", "zes")
_OUR = Pattern(r"our(?=s?$|ed$|ing$|ful$|less$|able$)")
_NOT_OUR = frozenset(
    ("four", "hour", "your", "pour", "sour", "tour", "flour", "scour", "dour", "detour", "contour")
)


def _singular(word: str) -> str:
    if word in IRREGULAR_SINGULARS:
        return IRREGULAR_SINGULARS[word]
    if len(word) < 3 or not word.endswith("s") or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(_SIBILANT):
        return word[:-2]
    return word[:-1]


_BRITISH = {
    "isation": "ization", "ised": "ized", "ising": "izing", "ise": "ize", "lled": "led", "lling": "ling",
    "tre": "ter", "bre": "ber", "yse": "yze",
}  # fmt: skip
_BRITISH_ENDINGS = tuple(_BRITISH)


def _american(word: str) -> str:
    if word in SPELLINGS:
        return SPELLINGS[word]
    if "our" in word and len(word) > 4 and word not in _NOT_OUR:
        word = _OUR.sub("or", word)
    if word.endswith(_BRITISH_ENDINGS):
        for british, american in _BRITISH.items():
            if len(word) > len(british) + 2 and word.endswith(british):
                return word[: -len(british)] + american
    return word


@lru_cache(maxsize=8192)
def word_key(low: str) -> str:
    """The form in which singular and plural, possessive, British and American spelling agree."""
    word = low.removesuffix("'s").removesuffix("'")
    if word[:1].isdecimal():
        return word.removesuffix("s")
    if not word.isascii():
        folded = unicodedata.normalize("NFKD", word)
        word = "".join(c for c in folded if not unicodedata.combining(c))
    return _american(_singular(word))


def stems(low: str) -> Iterator[str]:
    """A word and what it may be a form of: "queueing", "queue"."""
    yield from (low, word_key(low))
    for ending, instead in (("ies", "y"), ("es", ""), ("ied", "y")):
        if low.endswith(ending):
            yield low[: -len(ending)] + instead
    for ending in ("ing", "ed"):
        stem = low.removesuffix(ending)
        if stem != low and len(stem) > 2:
            yield from (stem, stem + "e", stem[:-1] if stem[-1] == stem[-2] else stem)


@lru_cache(maxsize=4096)  # labels are looked at for every question
def tokenize(text: str) -> tuple[Token, ...]:
    """Words in order; contractions are taken apart ("can't": can, n't), slips of structure words mended."""
    found: list[Token] = []
    plain = text.translate(_APOSTROPHES)
    for match in _WORD.finditer(plain):
        start = match.start()
        word, low = text[start : match.end()], match.group().casefold()
        parts = CONTRACTIONS.get(low)
        if parts is None and low.endswith("n't") and len(low) > 4:
            parts = (low[:-3], "n't")
        elif parts is None and low.endswith(("'re", "'ve", "'d", "'ll")):
            cut = low.rindex("'")
            parts = (low[:cut], low[cut:])
        if parts is None:
            low = SLIPS.get(low, low)
            found.append(Token(start, match.end(), word, low, word_key(low)))
            continue
        cut = len(parts[0]) if low.startswith(parts[0]) else len(word) - 2
        for offset, piece, part in ((0, word[:cut], parts[0]), (cut, word[cut:], parts[1])):
            found.append(Token(start + offset, start + offset + len(piece), piece, part, word_key(part)))
    return tuple(found)


def label_words(label: str) -> tuple[str, ...]:
    """Lower-case words of a label."""
    return tuple(token.low for token in tokenize(label))
