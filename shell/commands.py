"""The words that steer the interactive shell, and how a line is told apart."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Literal

import msgspec


class Command(msgspec.Struct, frozen=True):
    """One command of the shell: how to write it, what it does, and a line that really works."""

    name: str
    usage: str
    does: str
    example: str


COMMANDS: tuple[Command, ...] = (
    Command("why", "why", "show every case and rule behind the last answer, and which beat which", "why"),
    Command("clause", "clause REFERENCE", "show a clause and the rules made from it", "clause 1.1"),
    Command("json", "json", "show the last answer as data", "json"),
    Command(
        "remember",
        "remember FACTS",
        'keep facts about you; "I am ..." does the same',
        "remember K5 in boat rig",
    ),
    Command("profile", "profile", "show what is remembered", "profile"),
    Command("forget", "forget [FACT]", "forget one remembered fact, or all", "forget rig"),
    Command("as of", "as of DATE", "answer for another day; as of today goes back", "as of 2026-06-01"),
    Command("items", "items [WORD]", "list what the books speak about", "items coat"),
    Command("facts", "facts [WORD]", "list what a case may state, and its values", "facts weather"),
    Command(
        "save",
        "save FILE",
        "write the last answer to a new file: .txt, .md, .json or .svg",
        "save answer.md",
    ),
    Command(
        "query",
        "query SPARQL",
        "run a SPARQL query, on as many lines as it takes",
        "query SELECT * WHERE { ?s ?p ?o } LIMIT 3",
    ),
    Command("help", "help [COMMAND]", "show this, or more about one command", "help clause"),
    Command("quit", "quit", "leave; so does Ctrl-D", "quit"),
)
BY_NAME = {command.name: command for command in COMMANDS}

LineKind = Literal["command", "statement", "question"]


class Line(msgspec.Struct, frozen=True):
    """What a line is; for a command `name` and `argument`, else `argument` is the whole line."""

    kind: LineKind
    name: str
    argument: str


_ALONE = {
    "why": "why",
    "json": "json",
    "profile": "profile",
    "quit": "quit",
    "exit": "quit",
    "help": "help",
    "?": "help",
}
_ARGUMENT = {
    "clause": re.compile(
        r"(?!.*\b(?:about|that|which|who|since|in|for|from|with)\b)(?:[^\s?]+\s+){0,12}[^\s?]*\d[^\s?]*",
        re.IGNORECASE,
    ),
    "as of": re.compile(
        r"today|yesterday|tomorrow|\d{4}-\d{1,2}-\d{1,2}|\d+|[\w .,]{3,24}\b\d{4}", re.IGNORECASE
    ),
    "items": re.compile(
        r"(?!required|permitted|prohibited|allowed|forbidden|mandatory|optional)[^\s?]+", re.IGNORECASE
    ),
    "facts": re.compile(r"[^\s?]+"),
    "query": re.compile(
        r"\s*(?:select|ask|construct|describe|prefix|base|#)\b.*|\S+\.rq", re.IGNORECASE | re.DOTALL
    ),
    "save": re.compile(r"(?P<quote>[\"']?)\S(?:.*\S)?\.\w+(?P=quote)"),
    "remember": re.compile(r"[^?]+"),
    "forget": re.compile(r"[^?]+"),
    "help": re.compile(
        "|".join(re.escape(command.name) for command in COMMANDS) + r"|(?!me\b)[\w-]+", re.IGNORECASE
    ),
}
_STATES = re.compile(
    r"(?:i am|i['’]?m|we are|we['’]re|i hold|i have|i serve|my (?:grade|rig|branch) is|it is|it['’]s)\b",
    re.IGNORECASE,
)
_ASKS = re.compile(
    r"\?|\b(?:may|can|could|must|should|shall|do|does|what|which|where|how|when|who|whose|why|allowed|"
    r"need|have to|got to|required|permitted|prohibited|authori[sz]ed|forbidden|ok|okay)\b|"
    r"^(?:\w+[ ,]+){0,2}back to (?:the|my)\b",
    re.IGNORECASE,
)


# A query that is written without the word for it: what no sentence of English has, or a keyword in capitals.
_BARE_QUERY = re.compile(
    r"(?:prefix\s+[\w.-]*:|base)\s*<|select\s+(?:distinct\s+|reduced\s+)?[?$*(]|"
    r"(?:ask|construct)\s*(?:where\s*)?\{|describe\s+(?:[?$*<]|[a-z][\w-]*:[a-z])",
    re.IGNORECASE,
)
_OPENING = re.compile(r"\s*(?:select(?:\s+(?:distinct|reduced))?|describe)\s+", re.IGNORECASE)
_KEYWORD = re.compile(r"(?:SELECT|CONSTRUCT|PREFIX)\b")


def begins_query(text: str) -> bool:
    """Whether a line is a query, or the beginning of one, with the command word before it or without."""
    return (_is_query(text) and text[5:6].isspace()) or _is_bare_query(text)


def may_begin_query(text: str) -> bool:
    """Whether what was typed so far is a query, or words that a variable makes one: `select distinct`."""
    return begins_query(text) or _OPENING.fullmatch(text) is not None


def _is_bare_query(text: str) -> bool:
    bare = text.lstrip()
    return _BARE_QUERY.match(bare) is not None or _KEYWORD.match(bare) is not None


_NO_STRUCTURE = re.compile(
    r'"""(?s:.*?)"""|\'\'\'(?s:.*?)\'\'\'|"(?:[^"\\\n]|\\.)*"|\'(?:[^\'\\\n]|\\.)*\'|<[^<>\s]*>|#[^\n]*'
)


_DESCRIBES = re.compile(r"\bdescribe\s+\S", re.IGNORECASE)
# Lines that belong to the query above them though its braces are closed.
_GOES_ON = re.compile(r"\s*(?:(?:order|limit|offset|group|having|values)\b|\})", re.IGNORECASE)


def needs_more(text: str) -> bool:
    """Whether a line is the beginning of a query that goes on below; an empty line ends it all the same."""
    words = ["query", text] if _BARE_QUERY.match(text) else text.split(maxsplit=1)
    if not words or words[0].lower() != "query" or text.endswith("\n"):
        return False
    if len(words) == 1:
        return True
    if _ARGUMENT["query"].fullmatch(words[1]) is None:
        return False
    bare = _NO_STRUCTURE.sub(" ", words[1])
    if "{" not in bare:
        return not (words[1].endswith(".rq") or _DESCRIBES.search(words[1]))
    return bare.count("{") > bare.count("}")


def split_lines(text: str) -> Iterator[str]:
    """The lines of what was typed or pasted, without empty ones; a query with all that belongs to it."""
    whole, is_open = "", False
    for line in text.splitlines():
        if is_open or ((_is_query(whole) or _is_bare_query(whole)) and _GOES_ON.match(line)):
            whole += "\n" + line
        else:
            yield from filter(None, [whole.strip()])
            whole = line
        is_open = needs_more(whole)
    yield from filter(None, [whole.strip()])


def _is_query(text: str) -> bool:
    return text[:5].lower() == "query"


def looks_like_question(text: str) -> bool:
    """Whether a line has a question mark or a word that asks."""
    return _ASKS.search(text) is not None


def split_statement(text: str) -> tuple[str, str]:
    """A statement before a question on one line ("I am a K5. May I ...?"), and the rest."""
    head, stop, rest = text.partition(". ")
    if stop and rest.strip() and _STATES.match(head.strip()) and not looks_like_question(head):
        return head.strip(), rest.strip()
    return "", text


def read_line(line: str) -> Line:
    """Command, statement about oneself, or question. A command word in front of other words is a question."""
    text = line.strip()
    lowered = text.lower()
    if _is_bare_query(text):
        return Line("command", "query", text)
    if text.startswith("/"):  # as commands are written elsewhere
        steered = read_line(text[1:])
        return steered if steered.kind == "command" else Line("question", "", text)
    bare = lowered.rstrip("?!. ") or lowered
    if bare in _ALONE:
        return Line("command", _ALONE[bare], "")
    for name, pattern in _ARGUMENT.items():
        if lowered == name:
            return Line("command", name, "")
        if lowered.startswith(name) and text[len(name)].isspace():
            argument = text[len(name) :].strip()
            if pattern.fullmatch(argument):
                return Line("command", name, argument.strip("\"'") if name == "save" else argument)
    if _STATES.match(text) and not looks_like_question(text):
        return Line("statement", "", text)
    return Line("question", "", text)
