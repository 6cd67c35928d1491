"""`clothbound suggest-words`: everyday words out of a thesaurus, for a writer to accept or refuse."""

from __future__ import annotations

import os
import shlex
import sys
from itertools import groupby
from typing import TYPE_CHECKING, Any

import kb
from shell.output import make_output, safe_json, write_bytes
from shell.plain import hang
from shell.words import whole

if TYPE_CHECKING:
    from collections.abc import Iterable

    from kb import KnowledgeBase
    from shell.quick import Arguments

    # What `KnowledgeBase.word_desk` gives; `kb` exports no more names than it must.
    Desk = Any
    Suggestions = Any
    Proposal = Any
    Decision = Any

_LONGEST_LINE = 1_000
_KEYS = "y (yes), n (never), s or Enter (later), i (next item), own WORD (a word of yours), q (leave)"


def suggest_words(arguments: Arguments, base: KnowledgeBase) -> int:
    """Keep what is given, ask one by one on a terminal, or list what there is."""
    desk: Desk = base.word_desk()
    given = {name: _choices(name, getattr(arguments, name)) for name in ("accept", "refuse", "own")}
    if any(given.values()):
        return _keep(arguments, desk, given)
    found = desk.suggestions([whole(name) for name in arguments.items], narrower=arguments.narrower)
    if arguments.json:
        write_bytes(safe_json(desk.suggestions_to_json(found).decode()).encode())
        return 0
    output = make_output(arguments.plain)
    typed = sys.stdin.isatty() and sys.stdout.isatty() and not arguments.list
    if typed and found.proposals and _is_named(arguments):
        _Talk(desk, output.width).ask(found)
        return 0
    output.write("\n".join(_listed(found, desk, output.width)))
    if typed and found.proposals:
        output.write("\n" + "\n".join(hang("", _not_in_the_demo(), output.width)))
    return 0


def _choices(name: str, texts: list[str]) -> list[tuple[str, str]]:
    """Pairs of item and word; `UsageError` for what is none."""
    found = []
    for text in texts:
        item, equals, word = whole(text).partition("=")
        if not (item.strip() and equals and word.strip()):
            raise kb.UsageError(
                f'"{text}" is not an item and a word. Write --{name} ITEM=WORD, as in --{name} torch=lamp.'
            )
        found.append((item.strip(), word.strip()))
    return found


def _is_named(arguments: Arguments) -> bool:
    """Whether the books are the writer's own: those that come with the program are left as they are."""
    return arguments.books is not None or bool(os.environ.get("CLOTHBOUND_BOOKS"))


def _not_in_the_demo() -> str:
    demo = shlex.quote(str(kb.demo_folder()))
    return (
        "These are the books of the demo, which come with the program, so that no word is kept among them. "
        f"Copy them and name the copy: cp -r {demo} my-books; clothbound suggest-words --books my-books"
    )


def _keep(arguments: Arguments, desk: Desk, given: dict[str, list[tuple[str, str]]]) -> int:
    if not _is_named(arguments):
        raise kb.UsageError(_not_in_the_demo())
    desk, new = desk.decide(**given)
    if arguments.json:
        write_bytes(safe_json(desk.decisions_to_json(new).decode()).encode())
        return 0
    output = make_output(arguments.plain)
    lines = [line for decision in new for line in hang("", _kept(decision, desk), output.width)]
    output.write("\n".join([*lines, kb.visible(f"Kept in {desk.file}.")]))
    return 0


def _kept(decision: Decision, desk: Desk) -> str:
    word, label = decision.word, desk.lookup.items[decision.word.item].label
    how = "Accepted" if decision.accepted else "Refused"
    origin = word.origin
    source = f"{origin.thesaurus} {origin.version}, {origin.sense}" if origin is not None else "your own"
    return kb.visible(f"{how}: “{word.word}” for “{label}” ({source}).")


# -- the list ---------------------------------------------------------------------------------------------


def _listed(found: Suggestions, desk: Desk, width: int) -> list[str]:
    """Proposals under their item and sense, then what is left out of each item and why."""
    lines: list[str] = []
    for item in desk.lookup.base.items:
        proposals = [proposal for proposal in found.proposals if proposal.item == item.id]
        left_out = [left for left in found.left_out if left.proposal.item == item.id]
        if not proposals and not left_out:
            continue
        lines.append(kb.visible(f"{item.label} ({item.id})"))
        for sense, group in groupby(proposals, key=lambda proposal: proposal.origin.sense):
            words = list(group)
            lines += hang("  ", _sense(words[0], sense), width)
            lines += [kb.visible(f"    + {proposal.word}") for proposal in words]
        for left in left_out:
            lines += hang(f"    - {kb.visible(left.proposal.word)}: ", kb.visible(left.reason), width)
        lines.append("")
    return [*lines, *hang("", _summary(found, desk), width)]


def _sense(proposal: Proposal, sense: str) -> str:
    origin = proposal.origin
    kind = "a kind of " if proposal.relation == "narrower" else ""
    return kb.visible(
        f"{kind}“{proposal.name}”: {proposal.meaning} [{origin.thesaurus} {origin.version}, {sense}]"
    )


def _summary(found: Suggestions, desk: Desk) -> str:
    thesaurus = f"{desk.thesaurus.name} {desk.thesaurus.version}"
    items = len({proposal.item for proposal in found.proposals})
    words = _count(len(found.proposals), "word")
    decided = len(desk.decisions)
    if not found.proposals:
        told = f"No word is proposed out of {thesaurus}"
    else:
        told = f"{words} for {_count(items, 'item')} out of {thesaurus} (+)"
    left = f", {len(found.left_out)} left out (-)" if found.left_out else ""
    before = f"; {decided} decided before" if decided else ""
    return f"{told}{left}{before}."


def _count(number: int, name: str) -> str:
    return f"{number} {name}{'s' * (number != 1)}"


# -- the talk ---------------------------------------------------------------------------------------------


class _Talk:
    """Asks about each word on a terminal. What is answered is kept at once, so that leaving loses nothing."""

    def __init__(self, desk: Desk, width: int) -> None:
        self.desk = desk
        self.width = width
        self.counts = {True: 0, False: 0}

    def ask(self, found: Suggestions) -> None:
        items = [(item, list(group)) for item, group in groupby(found.proposals, key=lambda p: p.item)]
        self.say(f"{_summary(found, self.desk)} --list shows what is left out.")
        self.say(f"Which of them do people say? Answer {_KEYS}.")
        try:
            for number, (item, group) in enumerate(items, 1):
                self.say("")
                self.say(f"{self.desk.lookup.items[item].label} ({number} of {len(items)})")
                if not self.item(item, group):
                    break
        finally:  # also at Ctrl-C: what was answered is kept
            self.say("")
            self.say(self.end())

    def item(self, item: str, proposals: list[Proposal]) -> bool:
        """Ask about the words of an item; False to leave."""
        sense = ""
        for proposal in proposals:
            if proposal.origin.sense != sense:
                sense = proposal.origin.sense
                self.lines(hang("  ", _sense(proposal, sense), self.width))
            answer = self.answer(item, proposal.word)
            if answer in ("q", "i"):
                return answer == "i"
            if answer in ("y", "n"):
                self.keep("accept" if answer == "y" else "refuse", item, proposal.word)
        return True

    def answer(self, item: str, word: str) -> str:
        """y, n, s, i or q; a word of one's own is kept on the way."""
        while True:
            sys.stdout.write(kb.visible(f"    {word}? [y/n/s/i/own/q] "))
            sys.stdout.flush()
            line = sys.stdin.readline(_LONGEST_LINE)
            if not line:
                self.say("")
                return "q"
            text = whole(line.strip())
            first, _, rest = text.partition(" ")
            if first.lower() == "own" and rest.strip():
                if self.keep("own", item, rest.strip()):
                    self.lines([kb.visible(f"    “{rest.strip()}” is kept.")])
            elif text.lower() in _ANSWERS:
                return _ANSWERS[text.lower()]
            else:
                self.lines(hang("    ", _KEYS, self.width))

    def keep(self, how: str, item: str, word: str) -> bool:
        """Decide on one word, and whether it is kept; what stands against it is said, and nothing else."""
        try:
            self.desk, new = self.desk.decide(**{how: [(item, word)]})
        except kb.UsageError as error:
            self.lines(hang("    ! ", kb.visible(str(error)), self.width))
            return False
        for decision in new:
            self.counts[decision.accepted] += 1
        return True

    def end(self) -> str:
        accepted, refused = self.counts[True], self.counts[False]
        where = f" Kept in {self.desk.file}." if accepted or refused else ""
        return f"{accepted} accepted, {refused} refused.{where}"

    def say(self, text: str) -> None:
        self.lines(hang("", kb.visible(text), self.width))

    def lines(self, lines: Iterable[str]) -> None:
        sys.stdout.write("".join(f"{line}\n" for line in lines))


_ANSWERS = {word: word[:1] or "s" for word in ("y", "yes", "n", "no", "s", "skip", "", "i", "q", "quit")}
