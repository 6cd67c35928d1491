"""Looking a user's query over before any engine parses it: size, nesting, and what it must not do.

The engine parses without word boundaries (`SERVICEex:a`, `1SERVICE`) and reads `<` now as the start of an
IRI, now as "less than". So this check sees more rather than less: a keyword counts wherever the engine
could find one, and text that can be read both ways is refused if one reading hides a keyword.
"""

from __future__ import annotations

import re

from kb.errors import UsageError
from kb.text import Pattern
from kb.vocabulary import PREFIXES

MAX_BYTES = 64 * 1024
MAX_NESTING = 64

_TOKEN = Pattern(
    r"""
      (?P<space>[ \t\r\n]+)
    | (?P<comment>\#[^\r\n]*)
    | (?P<text>\"{3}(?:"{0,2}(?:[^"\\]|\\.))*\"{3} | '{3}(?:'{0,2}(?:[^'\\]|\\.))*'{3})
    | (?P<open_text>\"{3} | '{3})
    | (?P<short>"(?:[^"\\\r\n]|\\.)*" | '(?:[^'\\\r\n]|\\.)*')
    | (?P<iri><[^<>"{}|^`\\\x00-\x20]*>)
    | (?P<triple><<|>>)
    | (?P<variable>[?$]\w+)
    | (?P<language>@[A-Za-z]+(?:-[A-Za-z0-9]+)*)
    | (?P<word>[\w:%·](?:[\w.:%·-]|\\[_~.!$&'()*+,;=/?\#@%-])*)
    | (?P<opening>[(\[{])
    | (?P<closing>[)\]}])
    | (?P<other>.)
    """,
    re.VERBOSE | re.DOTALL,
)
_ESCAPE = Pattern(r"\\u([0-9A-Fa-f]{4})|\\U([0-9A-Fa-f]{8})")
_UPDATES = frozenset({"LOAD", "INSERT", "DELETE", "CLEAR", "DROP", "CREATE", "ADD", "MOVE", "COPY", "WITH"})
_BOUNDARY = Pattern(r"[^A-Z]+")
_PREFIX_OPERATORS = "!+-^"


def _refuse(text: str, at: int, message: str) -> UsageError:
    line = text.count("\n", 0, at) + 1
    column = at - (text.rfind("\n", 0, at) + 1) + 1
    return UsageError(f"Query, line {line}, column {column}: {message}")


def _check_size(text: str) -> None:
    if not text.strip():
        raise UsageError("The query is empty. Write a SELECT, ASK, CONSTRUCT or DESCRIBE.")
    try:
        size = len(text.encode())
    except UnicodeEncodeError as error:
        raise UsageError("The query is not valid Unicode text.") from error
    if size > MAX_BYTES:
        raise UsageError(f"The query has {size} bytes; at most {MAX_BYTES} are accepted.")


def _check_escapes(text: str) -> None:
    """Refuse escapes for ASCII characters: never needed, they could spell a keyword or end a string."""
    for match in _ESCAPE.finditer(text):
        code = int(match[1] or match[2], 16)
        if code < 0x80:
            raise _refuse(text, match.start(), f"{match[0]} stands for a plain character: write it as it is.")
        if code > 0x10FFFF or 0xD800 <= code < 0xE000:
            raise _refuse(text, match.start(), f"{match[0]} is no character.")


def _check_word(text: str, at: int, word: str) -> None:
    """Refuse keywords in a bare word, or in the prefix of a prefixed name (its local part is plain)."""
    before, colon, local = word.partition(":")
    bare = before.upper()
    if colon and local.startswith("."):  # a name with an empty local part, a full stop, and what follows
        bare += f" {local.upper()}"
    if "SERVICE" in bare:
        raise _refuse(text, at, "SERVICE is not accepted: queries see the rule books only.")
    if (colon and bare.startswith("FROM") and bare != "FROM") or (not colon and "FROM" in bare):
        raise _refuse(text, at, "FROM is not accepted: use GRAPH to name a graph of the rule books.")
    if not colon and not _UPDATES.isdisjoint(_BOUNDARY.split(bare)):
        raise _refuse(text, at, f"{word.strip('.')} is not accepted: queries only read.")


def _check_iri(text: str, at: int, iri: str) -> None:
    """Refuse what may be two comparisons instead of an IRI, if that reading hides something."""
    inside = iri.upper()
    hides = ")" in iri and any(word in inside for word in ("SERVICE", "FROM"))
    if "'" in iri or hides:
        raise _refuse(
            text, at, "this may be an IRI or a comparison: put spaces around < and >, or write %27."
        )


class _Depth:
    """How deep brackets, and signs one after the other, are nested."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.brackets = 0
        self.signs = 0

    def step(self, kind: str, token: str, at: int) -> None:
        if kind in ("space", "comment"):
            return
        self.signs = self.signs + 1 if kind == "other" and token in _PREFIX_OPERATORS else 0
        if kind == "opening":
            self.brackets += 1
        elif kind == "closing":
            self.brackets = max(0, self.brackets - 1)
        if max(self.brackets, self.signs) > MAX_NESTING:
            raise _refuse(self.text, at, f"the query is nested more than {MAX_NESTING} levels deep.")


def check_query(text: str) -> None:
    """Raise `UsageError` with line and column if the query is too long or deep, or does more than read.

    Says nothing about the syntax: that is the engine's to check.
    """
    _check_size(text)
    _check_escapes(text)
    depth = _Depth(text)
    for match in _TOKEN.finditer(text):
        kind, token, at = str(match.lastgroup), match[0], match.start()
        depth.step(kind, token, at)
        if kind == "word":
            _check_word(text, at, token)
        elif kind == "iri":
            _check_iri(text, at, token)
        elif kind == "triple":
            raise _refuse(text, at, "quoted triples are not accepted: the rule books are RDF 1.1.")
        elif kind == "open_text" or (kind == "other" and token in "\"'"):
            raise _refuse(text, at, "this string is not closed.")


_CLOSES = {"(": ")", "[": "]", "{": "}"}


def what_is_wrong(text: str) -> UsageError | None:
    """Of a query that the engine does not accept: a prefix that is not known, or a bracket without another.

    The engine tells of both only which characters it would have taken instead.
    """
    declared = set(PREFIXES)
    open_ones: list[tuple[str, int]] = []
    before = ""
    for match in _TOKEN.finditer(text):
        kind, token, at = str(match.lastgroup), match[0], match.start()
        if kind == "word" and ":" in token:
            prefix = token.partition(":")[0]
            if before == "PREFIX":
                declared.add(prefix)
            elif prefix not in declared and prefix != "_":
                known = ", ".join(f"{one}:" for one in PREFIXES)
                return _refuse(
                    text, at, f"there is no prefix {prefix}:. Declare it, or take one of these: {known}."
                )
        elif kind == "opening":
            open_ones.append((token, at))
        elif kind == "closing":
            if not open_ones:
                return _refuse(text, at, f"this {token} closes nothing.")
            if _CLOSES[open_ones[-1][0]] != token:
                break
            open_ones.pop()
        if kind not in ("space", "comment"):
            before = token.upper()
    if open_ones:
        token, at = open_ones[-1]
        return _refuse(text, at, f"the {_CLOSES[token]} to this {token} is missing.")
    return None
