"""What each command does: from parsed arguments to an exit code."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterable
from functools import partial
from typing import TYPE_CHECKING, Any

import kb
from shell.blocks import Block
from shell.dates import as_date
from shell.layout import arrange
from shell.output import Output, complain, complain_problems, make_output, safe_json, write_bytes
from shell.words import whole

if TYPE_CHECKING:
    from pathlib import Path

    from kb import Answer, KnowledgeBase
    from shell.quick import Arguments

_NOT_SETTLED = 4
_LONGEST_LINE = 100_000


def is_settled(answer: Answer) -> bool:
    return answer.outcome == "answer" and answer.verdict != "conflict"


def _open(arguments: Arguments) -> KnowledgeBase:
    opening = kb.Opening(arguments.books, arguments.cache)  # goes on while the next line loads its modules
    return kb.KnowledgeBase(opening)


def _given_facts(arguments: Arguments, base: KnowledgeBase) -> tuple[tuple[str, Any], ...]:
    pairs = [(name, value) for name in ("grade", "rig") if (value := getattr(arguments, name))]
    for text in arguments.fact:
        name, equals, value = text.partition("=")
        if not (name.strip() and equals and value.strip()):
            raise kb.UsageError(
                f'"{text}" is not a fact. Write --fact name=value, as in --fact weather=foul.'
            )
        pairs.append((name.strip(), value.strip()))
    facts = tuple(base.fact(name, value) for name, value in pairs)
    names = [name for name, _ in facts]
    twice = [name for name in dict.fromkeys(names) if names.count(name) > 1]
    if twice:
        raise kb.UsageError(f'The fact "{twice[0]}" is given twice.')
    return facts


def _questions(words: list[str]) -> Iterable[str]:
    """The question on the command line, else one a line from standard input."""
    text = whole(" ".join(words)).strip()
    first = text.partition(" ")[0]
    if first[:1] == "/" or (first.isupper() and len(first) > 2) or "{" in text or "<" in text:
        _refuse_other(text)
    if text and text != "-":
        yield text
        return
    if text != "-" and (words or sys.stdin.isatty()):
        raise kb.UsageError('There is no question. Try: clothbound ask "May I wear the storm coat?"')
    yield from filter(None, _lines())


def _refuse_other(text: str) -> None:
    """Tell somebody who asks a query or a word of the shell what to write."""
    from shell.commands import begins_query  # noqa: PLC0415  few questions look like one

    if begins_query(text):
        raise kb.UsageError('This is a query and no question. Write: clothbound query "SELECT ..."')
    if text.startswith("/"):
        raise kb.UsageError(
            f'"{text[:50]}" is no question. For words such as help write clothbound alone, or --help.'
        )


def _lines() -> Iterable[str]:
    """The lines of standard input, without the space around them; empty ones too."""
    while line := sys.stdin.readline(_LONGEST_LINE):
        if len(line) == _LONGEST_LINE and not line.endswith("\n"):
            raise kb.UsageError(
                f"A line has more than {_LONGEST_LINE:,} characters. Write one question a line."
            )
        yield whole(line.strip())


def _print_json(answer: Answer) -> None:
    """One object on one line; inside JSON strings line breaks are escaped, so those outside can go."""
    lines = kb.answer_to_json(answer).decode().split("\n")
    write_bytes(safe_json(" ".join(line.strip() for line in lines if line.strip())).encode() + b"\n")


def run_ask(arguments: Arguments) -> int:
    base = _open(arguments)
    facts = _given_facts(arguments, base)
    as_of = as_date(arguments.as_of) if arguments.as_of else None
    output = make_output(arguments.plain)
    given = [fact for fact, _ in facts]
    settled, first = True, True
    screens: list[Block] = []
    for text in _questions(arguments.text):
        answers = base.ask(text, facts=facts, as_of=as_of)
        show = partial(arrange, base=base, chain=arguments.why, given=given, talk=len(answers) > 1)
        for answer in answers:
            settled = settled and is_settled(answer)
            blocks = show(answer, dated=as_of is not None)
            screens += show(answer, dated=True) if arguments.svg else ()
            if arguments.json:
                _print_json(answer)
            else:
                _print_screen(output, blocks, first)
            first = False
    if arguments.svg:
        from shell.picture import write_picture  # noqa: PLC0415  rich only where a screen is drawn

        write_picture(arguments.svg, tuple(screens), " ".join(arguments.text))
    return 0 if settled else _NOT_SETTLED


def _print_screen(output: Output, blocks: tuple[Block, ...], first: bool) -> None:
    if not first:
        output.write("")
    output.show(blocks)


def run_build(arguments: Arguments) -> int:
    report = kb.build(arguments.books, arguments.cache)
    complain_problems(report.problems)
    if any(problem.severity == "error" for problem in report.problems):
        return kb.InvalidDataError.exit_code
    state = "built" if report.rebuilt else "up to date"
    width = max((len(str(number)) for _, number in report.counts), default=1)
    lines = [f"  {number:>{width}}  {kb.visible(name)}" for name, number in report.counts]
    print("\n".join([f"The base is {state} ({report.seconds:.2f} s).", *lines]))
    return 0


def run_query(arguments: Arguments) -> int:
    if arguments.deadline <= 0 or arguments.limit <= 0:
        raise kb.UsageError("--deadline and --limit take a number above 0.")
    from shell.queries import LARGEST_QUERY, query_text  # noqa: PLC0415  only for this command

    text = sys.stdin.read(LARGEST_QUERY) if arguments.query == "-" else query_text(arguments.query)
    table = _open(arguments).run_query(text, deadline=arguments.deadline, row_limit=arguments.limit)
    output = make_output(arguments.plain)
    from shell.table import table_text  # noqa: PLC0415  only for this command

    output.write(table_text(table, arguments.format, output.width))
    if table.truncated:
        complain(f"Only the first {arguments.limit} rows are shown; --limit shows more.")
    return 0


def run_export(arguments: Arguments) -> int:
    data = kb.export_base(arguments.books, arguments.format, arguments.output)
    if arguments.output is None:
        write_bytes(data)
    else:
        complain(f"{arguments.output}: {len(data)} bytes.")
    return 0


def run_clause(arguments: Arguments) -> int:
    from shell.clauses import clause_blocks  # noqa: PLC0415  only for this command

    base = _open(arguments)
    blocks = clause_blocks(" ".join(arguments.reference), base)
    make_output(arguments.plain).show(blocks)
    return 0


def run_audit(arguments: Arguments) -> int:
    from shell.audit import audit_screen  # noqa: PLC0415  only for this command

    return audit_screen(arguments)


def run_decide(arguments: Arguments) -> int:
    from shell.decide import decide_table  # noqa: PLC0415  only for this command

    return decide_table(arguments.file, _open(arguments), as_date(arguments.as_of or "today"))


def _no_folder(path: Path, takes: str, command: str) -> None:
    """Refuse a folder where one file is wanted: most likely its rule books are to be checked."""
    if os.path.isdir(path):  # noqa: PTH112  unlike pathlib, never raises
        raise kb.UsageError(
            f"{path} cannot be read: it is a folder, and {command} takes {takes}. To check rule books write: "
            f"clothbound build {path}, or clothbound audit {path}."
        )


def run_check(arguments: Arguments) -> int:
    from shell.check import check_guidance  # noqa: PLC0415  only for this command

    _no_folder(arguments.guidance, "one piece of guidance, Markdown or Word", "check")
    base = _open(arguments)
    return check_guidance(arguments, base, _given_facts(arguments, base))


def run_draft(arguments: Arguments) -> int:
    from shell.draft import write_draft  # noqa: PLC0415  only for this command

    _no_folder(arguments.plan, "the plan of one piece of guidance", "draft")
    return write_draft(arguments, _open(arguments))


def run_suggest_words(arguments: Arguments) -> int:
    from shell.suggesting import suggest_words  # noqa: PLC0415  only for this command

    return suggest_words(arguments, _open(arguments))


def run_verify(arguments: Arguments) -> int:
    from shell.verify import verify_answers  # noqa: PLC0415  only for this command

    return verify_answers(arguments.file, _open(arguments))


def run_shell(arguments: Arguments) -> int:
    """The interactive shell; lines out of a pipe are the same talk, without what helps at a keyboard."""
    output = make_output(arguments.plain)
    if sys.stdin.isatty():
        from shell.repl import run_repl  # noqa: PLC0415  prompt_toolkit only where somebody types

        return run_repl(_open(arguments), output)
    from shell.piped import converse  # noqa: PLC0415  only for a talk

    return 0 if converse(_lines(), _open(arguments), output) else _NOT_SETTLED


COMMANDS: dict[str | None, Callable[[Arguments], int]] = {
    None: run_shell,
    "ask": run_ask,
    "build": run_build,
    "query": run_query,
    "export": run_export,
    "clause": run_clause,
    "audit": run_audit,
    "verify": run_verify,
    "decide": run_decide,
    "draft": run_draft,
    "check": run_check,
    "suggest-words": run_suggest_words,
}
