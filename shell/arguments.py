"""The command line: commands, options, and help that ends with an example that works."""

from __future__ import annotations

import argparse
import re
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import kb
from shell.output import columns
from shell.plain import wrap

if TYPE_CHECKING:
    from _typeshed import SupportsWrite

PROGRAM = "clothbound"
_EXAMPLE = "  "  # before a line of an example

EXAMPLES: dict[str, tuple[str, ...]] = {
    "": ("clothbound", 'clothbound ask "May a K5 wear the storm coat in boat rig?"'),
    "ask": (
        'clothbound ask "May a K5 wear the storm coat in boat rig?"',
        'clothbound ask "May I wear the storm coat?" --grade K5 --rig boat-rig --json',
        'clothbound ask "May I wear the storm coat?" --fact weather=foul --as-of 2026-06-01 --why',
    ),
    "build": ("clothbound build", "clothbound build my-books"),
    "query": (
        'clothbound query "SELECT ?item ?label WHERE { ?item skos:prefLabel ?label } LIMIT 5"',
        'clothbound query "SELECT ?s WHERE { ?s ?p ?o } LIMIT 1" --format json',
    ),
    "export": ("clothbound export --format nquads -o base.nq",),
    "clause": ('clothbound clause "1.1"',),
    "audit": ("clothbound audit my-books", "clothbound audit --notes --json", "clothbound audit --strict"),
    "verify": ("clothbound verify answer.json", "clothbound verify -"),
    "decide": ("clothbound decide cases.csv", "clothbound decide - --as-of 2026-06-01"),
    "draft": (
        "clothbound draft winter.plan",
        "clothbound draft winter.plan --format word -o winter.docx",
    ),
    "check": (
        "clothbound check guidance.md",
        "clothbound check guidance.docx --json",
        "clothbound check guidance.md --grade K5 --as-of 2026-12-01",
    ),
    "suggest-words": (
        "clothbound suggest-words --books my-books",
        "clothbound suggest-words spectacles torch --list",
        'clothbound suggest-words --books my-books --accept "storm coat=slicker" --refuse jersey=pinafore',
    ),
}


_NO_COMMAND = re.compile(r"invalid choice: ['\"](.+?)['\"] \(choose from")


class _Parser(argparse.ArgumentParser):
    """argparse, with errors as our own exception so that they end in one place."""

    def error(self, message: str) -> NoReturn:
        asked = _NO_COMMAND.search(message)
        if asked is not None and " " in asked[1]:
            raise kb.UsageError(f'Did you mean: {PROGRAM} ask "{asked[1]}"')
        raise kb.UsageError(f"{message[:1].upper()}{message[1:]}. Try: {self.prog} --help")

    def format_help(self) -> str:
        """The help; that of the program itself ends with the places of what comes with it."""
        if self.prog != PROGRAM:
            return super().format_help()
        demo = kb.demo_folder()
        places = [
            "places:",
            f"{_EXAMPLE}the demo's rule books: {demo}",
            f"{_EXAMPLE}plans for draft: {demo / 'plans'}",
        ]
        return super().format_help() + "\n" + "\n".join(places) + "\n"

    def print_help(self, file: SupportsWrite[str] | None = None) -> None:
        """Write the help; argparse itself would not tell that it cannot be written."""
        (file or sys.stdout).write(self.format_help())

    def exit(self, status: int = 0, message: str | None = None) -> NoReturn:
        """Leave once what was printed is written."""
        sys.stdout.flush()
        super().exit(status, message)


def _path(text: str) -> Path:
    """A path; an empty one, as from a variable that is not set, would mean the folder one stands in."""
    if not text:
        raise argparse.ArgumentTypeError("the path is empty")
    return Path(text)


class _Version(argparse.Action):
    """Prints the version; reads the package's metadata only when asked to."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        _namespace: argparse.Namespace,
        _values: str | Sequence[object] | None,
        _option: str | None = None,
    ) -> None:
        from importlib.metadata import version  # noqa: PLC0415  slow, and seldom needed

        print(f"{PROGRAM} {version(PROGRAM)}")
        parser.exit()


def _common(suppress: bool) -> _Parser:
    """Options that stand before or after the command; after it they must not reset what stood before."""
    common = _Parser(add_help=False, argument_default=argparse.SUPPRESS if suppress else None)
    group = common.add_argument_group("everywhere")
    group.add_argument(
        "--books", type=_path, metavar="DIR", help="the rule books (default: CLOTHBOUND_BOOKS, else the demo)"
    )
    group.add_argument("--cache", type=_path, metavar="DIR", help="where the built base is kept")
    plain = {"default": argparse.SUPPRESS} if suppress else {"default": False}
    group.add_argument("--plain", action="store_true", help="plain text, no colour and no drawing", **plain)
    return common


def _epilog(command: str) -> str:
    lines = "\n".join(f"{_EXAMPLE}{example}" for example in EXAMPLES[command])
    return f"example{'s' * (len(EXAMPLES[command]) > 1)}:\n{lines}"


def _folded(example: str, width: int) -> list[str]:
    """An example over several lines where it is too long for one, so that a shell takes them for one."""
    if len(_EXAMPLE + example) <= width:
        return [_EXAMPLE + example]
    room = max(width - len(_EXAMPLE) * 2 - 2, 20)
    lines = [""]
    for word in re.findall(r'(?:"[^"]*"|[^\s"])+', example):  # in quotes only what is too long by itself
        for piece in wrap(word, room):
            fits = len(lines[-1]) + 1 + len(piece) <= room
            lines = [*lines[:-1], f"{lines[-1]} {piece}".strip()] if fits else [*lines, piece]
    indented = [_EXAMPLE * (1 if number == 0 else 2) + line for number, line in enumerate(lines)]
    return [f"{line} \\" for line in indented[:-1]] + indented[-1:]


def _add_folder(command: argparse.ArgumentParser) -> None:
    """The rule books as the one argument of a command about them."""
    command.add_argument(
        "folder", nargs="?", type=_path, metavar="DIR", help="the rule books, as --books gives them"
    )


def _add_ask(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "text", nargs="*", metavar="QUESTION", help="the question; - or none: one a line from standard input"
    )
    command.add_argument("--json", action="store_true", help="one JSON object for each answer, one a line")
    command.add_argument("--grade", metavar="GRADE", help="your grade, by id or name")
    command.add_argument("--rig", metavar="RIG", help="the rig, by id or name")
    command.add_argument(
        "--fact", action="append", default=[], metavar="NAME=VALUE", help="a further fact; may be repeated"
    )
    command.add_argument(
        "--as-of", metavar="DATE", help="the day the answer is for, as 2026-06-01 (default: today)"
    )
    command.add_argument(
        "--why",
        action="store_true",
        help="show every case, every rule that was looked at, and which beat which",
    )
    command.add_argument("--svg", type=_path, metavar="FILE", help="also write the screen as a picture")


def _add_query(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "query", metavar="QUERY", help="SPARQL, a file that ends in .rq, or - for standard input"
    )
    command.add_argument(
        "--format", choices=("table", "json", "csv"), default="table", help="(default: table)"
    )
    command.add_argument(
        "--deadline",
        type=float,
        default=10.0,
        metavar="S",
        help="give up after so many seconds (default: 10)",
    )
    command.add_argument(
        "--limit", type=int, default=10_000, metavar="ROWS", help="at most so many rows (default: 10000)"
    )


def _add_export(command: argparse.ArgumentParser) -> None:
    _add_folder(command)
    formats = ("turtle", "nquads", "jsonld")
    command.add_argument("--format", choices=formats, default="turtle", help="(default: turtle)")
    command.add_argument(
        "-o", "--output", type=_path, metavar="FILE", help="a file instead of standard output"
    )


def _add_clause(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "reference", nargs="+", metavar="REFERENCE", help="4.12, or dress-order/2024 clause 4.12"
    )


def _add_decide(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "file",
        metavar="FILE",
        help="CSV with a column item, one for each fact, aspect and as_of if wanted; - for standard input",
    )
    command.add_argument(
        "--as-of", metavar="DATE", help="the day of the rows that give none, as 2026-06-01 (default: today)"
    )


def _add_draft(command: argparse.ArgumentParser) -> None:
    said = "the plan, YAML with subject, audience, rigs, days and clauses of its own; the demo has some"
    command.add_argument("plan", type=_path, metavar="PLAN", help=said)
    formats = ("markdown", "html", "word", "pdf")
    said = "(default: markdown; pdf needs the extra pdf of the installation)"
    command.add_argument("--format", choices=formats, default="markdown", help=said)
    command.add_argument(
        "-o", "--output", type=_path, metavar="FILE", help="a file instead of standard output"
    )


def _add_check(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "guidance",
        type=_path,
        metavar="FILE",
        help="guidance as Markdown or Word (.docx)",
    )
    command.add_argument("--json", action="store_true", help="one JSON object")
    command.add_argument(
        "--strict", action="store_true", help="exit with 3 for warnings and sentences not understood, too"
    )
    command.add_argument(
        "--as-of", metavar="DATE", help="the day, as 2026-06-01, if the guidance gives none (default: today)"
    )
    command.add_argument("--grade", metavar="GRADE", help="for whom it is, if it does not say so itself")
    command.add_argument("--rig", metavar="RIG", help="in which rig, by id or name")
    command.add_argument(
        "--fact", action="append", default=[], metavar="NAME=VALUE", help="what else holds; may be repeated"
    )


def _add_verify(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "file", metavar="FILE", help="answers as `ask --json` prints them; - for standard input"
    )


def _add_audit(command: argparse.ArgumentParser) -> None:
    _add_folder(command)
    command.add_argument("--json", action="store_true", help="one JSON object")
    command.add_argument("--notes", action="store_true", help="show notes too, such as settled overlaps")
    command.add_argument("--strict", action="store_true", help="exit with 3 for warnings as well as errors")
    command.add_argument(
        "--as-of", metavar="DATE", help="audit from this day on, as 2026-06-01 (default: today)"
    )


def _add_suggest_words(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "items", nargs="*", metavar="ITEM", help="only for these items, by id or name (default: all)"
    )
    for name, what in (
        ("--accept", "keep a proposed word for an item"),
        ("--refuse", "do not propose a word for an item again"),
        ("--own", "keep a word of your own for an item"),
    ):
        command.add_argument(
            name, action="append", default=[], metavar="ITEM=WORD", help=f"{what}; may be repeated"
        )
    command.add_argument(
        "--narrower", action="store_true", help="propose names of kinds of the item too (parka for a coat)"
    )
    command.add_argument("--list", action="store_true", help="list the proposals, ask nothing")
    command.add_argument("--json", action="store_true", help="one JSON object, ask nothing")


def _add_build(command: argparse.ArgumentParser) -> None:
    _add_folder(command)


_COMMANDS = {
    "ask": ("ask what the rule books say", _add_ask),
    "build": ("check the rule books and build the base", _add_build),
    "query": ("run a SPARQL query over the base", _add_query),
    "export": ("write the base as RDF", _add_export),
    "clause": ("show a clause and the rules made from it", _add_clause),
    "audit": ("find contradictions, oversteps, dead rules and gaps in the rule books", _add_audit),
    "verify": ("check saved answers against the rule books", _add_verify),
    "decide": ("decide a table of cases, each with its clause and rules", _add_decide),
    "draft": ("write guidance for one station, every sentence with its clause, from a plan", _add_draft),
    "check": ("check guidance, drafted or written by hand, against the rule books", _add_check),
    "suggest-words": (
        "propose everyday words for items out of a thesaurus, to accept or refuse",
        _add_suggest_words,
    ),
}


class _Help(argparse.RawDescriptionHelpFormatter):
    """Help as wide as the terminal. argparse would load four compression libraries to find the width."""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, width=columns() - 2)

    def _fill_text(self, text: str, width: int, indent: str) -> str:
        """What stands above and below the options, in lines of the terminal's width."""
        lines: list[str] = []
        for line in text.splitlines():
            is_example = line.startswith(_EXAMPLE)
            lines += _folded(line.strip(), width) if is_example else wrap(line, max(width, 20))
        return "\n".join(indent + line for line in lines)


def make_parser(argv: Sequence[str] = ()) -> argparse.ArgumentParser:
    """The parser; with a command line that begins with a command, for that command alone."""
    parser = _Parser(
        prog=PROGRAM,
        description="What the dress rules say, with the clause. Without a command: the interactive shell.",
        epilog=_epilog(""),
        formatter_class=_Help,
        parents=[_common(suppress=False)],
    )
    parser.add_argument(
        "--version",
        action=_Version,
        nargs=0,
        default=argparse.SUPPRESS,
        help="show the version and leave",
    )
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands")
    wanted = argv[0] if argv and argv[0] in _COMMANDS else None
    for name, (summary, add) in _COMMANDS.items():
        if wanted not in (None, name):
            continue  # the others would only cost time
        command = commands.add_parser(
            name,
            help=summary,
            description=f"{summary[0].upper()}{summary[1:]}.",
            epilog=_epilog(name),
            formatter_class=_Help,
            parents=[_common(suppress=True)],
        )
        add(command)
    return parser
