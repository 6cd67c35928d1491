"""From an answer to blocks: verdict, cases, reasons, clauses, cautions, what to ask next."""

from __future__ import annotations

import datetime
import re
from collections.abc import Collection, Iterable
from typing import TYPE_CHECKING

import kb
from shell.blocks import Block, Cell, Chain, Grid, Headline, Next, Points, Quote, Said, Tone
from shell.chain import chain_blocks, change_blocks, short_reasons
from shell.numbering import clause_numbers, main_edition, number_key, numbers_alone
from shell.words import VERDICTS, brief, verdict_cell, verdict_word

if TYPE_CHECKING:
    from kb import Answer, KnowledgeBase

_QUOTED_UNDER_A_LIST = 2
_MOST_CASES, _NEAREST_CASES = 12, 8
_CASES_IN_A_LIST = 2
_NONE = "none of these"
_NAMED_IN_A_CELL = 3
_PLAIN = ("label", "pattern")  # how words were linked that need no telling
_TO_READ = "Clauses that speak of it. They were not taken for an answer."
_SILENT = "The books do not address it. That is neither a permission nor a prohibition."


def _clean(texts: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(kb.visible(text) for text in texts if text)


def _headline(answer: Answer, base: KnowledgeBase) -> tuple[Block, ...]:
    text = kb.visible(answer.headline)
    if answer.outcome == "abstain":
        reason = answer.abstain.reason if answer.abstain else ""
        return (Headline("NOT ANSWERED", text or kb.visible(reason), "quiet"),)
    if answer.outcome == "ask":
        return (Headline("ONE QUESTION FIRST", text, "open"),)
    if answer.verdict is None:
        return (_as_found(answer, text),)
    word, tone = verdict_word(answer.verdict, answer, base)
    query = answer.reading.query
    if query is not None and query.kind in _OPEN and answer.verdict in ("required", "permitted"):
        return (Headline(_OPEN[query.kind], text, tone),)  # where a badge goes: that it is worn is not said
    if answer.verdict == "conditional" and (led := _LED.match(text)):
        return (_as_led(led, text, tone),)
    if answer.verdict == "conditional" and text.startswith(_UNBOUND):  # it depends whether it may be, no more
        word, tone = VERDICTS["not_required"]
    if answer.verdict == "conditional" and text.startswith(_ON):
        text = f"On {text.removeprefix(_ON)}"  # the badge says the rest
    said, colon, rest = text.partition(": ")
    if colon and said.casefold() == word:  # the badge says it already
        text = rest[:1].upper() + rest[1:]
    first = next((lead for lead in _APART if re.match(rf"{lead}[.:] ", text)), "")
    if first and word in _APART[first]:
        return (_as_asked(first, word, text),)
    return (Headline(word.upper(), text or (_SILENT if answer.verdict == "silent" else ""), tone),)


def _as_found(answer: Answer, text: str) -> Headline:
    """What has no verdict; of a clause that was looked up and not asked for, that it has to be read."""
    query, numbers = answer.reading.query, [one.number for one in answer.citations]
    alone = query is not None and query.clause is not None and len(numbers) == 1
    if not alone or not text.endswith(f", clause {numbers[0]}") or numbers[0] in answer.question:
        return Headline("", text, "plain")
    return Headline("READ THE CLAUSE", f"No verdict is worked out from it: {text}.", "plain")


_OPEN = {"where": "WHERE", "how": "HOW", "how_many": "HOW MANY"}
_LED = re.compile(r"(?P<first>Yes|No|Right|Wrong)(?:, (?P<where>in [^.:;]+))?[.:,] ")
_ON, _UNBOUND = "It depends on ", "No clause requires it"
_SET_APART = (" unless ", "; in any other ", "; but when ", "; without ", "; when ", "; in some cases when ")


def _as_led(led: re.Match[str], text: str, tone: Tone) -> Headline:
    """What leads a table, with its exceptions: "NO, ORDINARILY - The tie must not be worn, unless ...".

    What holds in one rig is said of that rig: of a dozen others it may be silent. "The tie must not be worn
    when ...; otherwise it may be" is neither yes nor no.
    """
    rest = text[led.end() :]
    badge = led["first"].upper()
    if led["where"]:
        badge += f", {led['where'].upper()}"
    elif "; otherwise " in rest:
        badge = VERDICTS["conditional"][0].upper()
    elif any(words in rest for words in _SET_APART):
        badge += ", ORDINARILY"
    return Headline(badge, rest[:1].upper() + rest[1:], tone)


# What a thing is, where yes or no would say the contrary of it to who reads both in one breath.
_APART = {"No": ("required", "permitted"), "Yes": ("prohibited",)}


def _as_asked(first: str, word: str, text: str) -> Headline:
    """Yes or no to what was asked, and then what the thing is: "NO - Permitted: it may be worn, but need not
    be." to who asks whether it must be, as "PERMITTED - No." takes reading twice."""
    rest = text[len(first) + 2 :]
    rest = f"the {rest[4:]}" if rest.startswith("The ") else rest
    return Headline(first.upper(), f"{word.capitalize()}: {rest}", "yes" if first == "Yes" else "no")


def _carried(answer: Answer, base: KnowledgeBase, names: Iterable[str]) -> str:
    """Facts that the question itself does not tell, with their values where the query has them."""
    query = answer.reading.query
    known = dict(query.case.facts) if query else {}
    words = []
    for name in names:
        if name not in base.lookup.facts:
            words.append(kb.visible(name))
        elif name in known:  # the month of another day is no longer known in a question of a whole year
            words.append(brief(((name, known[name]),), base))
    return ", ".join(words)


def _left_out(clause: str, answer: Answer) -> tuple[str, ...]:
    """What of a stretch was left out: without the facts in it that are in the question that was read."""
    reading, query = answer.reading, answer.reading.query
    start = reading.question.find(clause)
    known = dict(query.case.facts) if query is not None else {}
    inside = [s for s in reading.spans if start >= 0 and start <= s.start and s.end <= start + len(clause)]
    used = [s for s in inside if s.role == "fact" and s.target in known and s.target not in reading.carried]
    rest = tuple(s.text for s in inside if s not in used and s.role not in ("structure", "filler"))
    return rest if used and rest else (clause,)


def _reading(answer: Answer, base: KnowledgeBase, given: Collection[str], talk: bool) -> tuple[Block, ...]:
    blocks: list[Block] = []
    if answer.reading.text:
        blocks.append(Said("Read as", kb.visible(answer.reading.text)))
    if answer.outcome != "abstain" and any(span.how not in _PLAIN for span in answer.reading.spans):
        from shell.taken import taken  # noqa: PLC0415  most words are plain

        blocks += [Said("Taken", told)] if (told := taken(answer, base)) else []
    # of a single question nothing is kept: what goes with its words is read from them
    for label, named in (("Given", True), *((("Kept", False),) if talk else ())):
        names = (name for name in answer.reading.carried if (name in given) is named)
        if known := _carried(answer, base, names):
            blocks.append(Said(label, known))
    if answer.reading.unused:
        left = (part for clause in answer.reading.unused for part in _left_out(clause, answer))
        blocks.append(Said("Not used", ", ".join(f'"{part}"' for part in _clean(tuple(left)))))
    blocks += [Said("Beside it", said) for said in _clean(answer.reading.beside)]
    return tuple(blocks)


def _abstained(answer: Answer) -> tuple[Block, ...]:
    if answer.abstain is None:
        return ()
    blocks: list[Block] = []
    reason = kb.visible(answer.abstain.reason)
    if answer.headline and reason != kb.visible(answer.headline):
        blocks.append(Said("Reason", reason))
    if any(kb.visible(word) not in reason for word in answer.abstain.words):
        words = ", ".join(f'"{word}"' for word in _clean(answer.abstain.words))
        blocks.append(Said("Not understood", words))
    if answer.abstain.suggestions:
        blocks.append(Points("Did you mean", _clean(answer.abstain.suggestions[:3])))
    return tuple(blocks)


def _to_read(answer: Answer) -> tuple[Block, ...]:
    """The clauses that speak of what was asked, where nothing is answered."""
    quotes = tuple(_quoted(one.title, one.number, one.text) for one in answer.speaking)
    return (Said("To read", _TO_READ), *quotes) if quotes else ()


def _quoted(title: str, number: str, text: str) -> Quote:
    return Quote(kb.visible(f"{title}, clause {number}"), kb.visible(text))


def _listed(labels: tuple[str, ...]) -> str:
    """Texts for one cell: a single one as it is, several one below the other."""
    texts = tuple(dict.fromkeys(_clean(labels)))
    return texts[0] if len(texts) == 1 else "\n".join(f"- {text}" for text in texts)


def _cases(answer: Answer, shown: Answer, base: KnowledgeBase) -> tuple[Block, ...]:
    """The decision table, one row a case; left out where no fact changes the answer, and above a list.

    The clauses of a row stand beside it, unless all rows have the same ones.
    """
    if answer.entries or len(answer.cases) < 2 or not any(case.when for case in answer.cases):
        return ()
    with_values = any(case.values for case in answer.cases)
    with_verdicts = not with_values or len({case.verdict for case in answer.cases}) > 1
    main = main_edition(answer, base)
    clauses = [numbers_alone(case.rules, base, main) for case in shown.cases]
    with_clauses = len(set(clauses)) > 1
    columns = ("When", *(("Then",) if with_verdicts else ()), *(("Value",) if with_values else ()))
    columns += ("Clause",) if with_clauses else ()
    rows: list[tuple[Cell, ...]] = []
    for case, numbers in zip(shown.cases, clauses, strict=True):
        row: tuple[Cell, ...] = (Cell(kb.visible(case.label) or "otherwise"),)
        row += (verdict_cell(case.verdict, answer, base),) if with_verdicts else ()
        row += (Cell(_listed(tuple(v.label for v in case.values)) or "-"),) if with_values else ()
        row += (Cell(numbers or "-"),) if with_clauses else ()
        rows.append(row)
    more = len(answer.cases) - len(shown.cases)
    hint = (Said("More", f"{more} cases that are further out of the ordinary; why shows them all."),)
    return (Grid("Case by case", columns, tuple(rows), apart=True), *(hint if more else ()))


def _values(answer: Answer, base: KnowledgeBase) -> tuple[Block, ...]:
    """The values that are allowed, where the headline does not tell them all; of manners it does."""
    lines = []
    for value in answer.values:
        aspect = base.lookup.aspects.get(value.aspect)
        if aspect is not None and aspect.kind == "act":
            continue
        label = kb.visible(value.label)
        if value.measure is not None and value.measure.about and value.measure.tolerance is None:
            label += ' (no clause says how far "about" may be off, so nothing is judged)'
        lines.append(label)
    lines = list(dict.fromkeys(lines))
    if all(line in kb.visible(answer.headline) for line in lines):
        return ()
    return (Points("Allowed", tuple(lines)),)


def _condition(condition: str, full: bool) -> str:
    """The cases of one line of a list; many are only counted unless `full`."""
    cases = condition.count(";") + 1
    if full or cases <= _CASES_IN_A_LIST:
        return kb.visible(condition)
    return f"{cases} cases"


def _entries(answer: Answer, base: KnowledgeBase, full: bool) -> tuple[Block, ...]:
    """A list, grouped by verdict in the order of `VERDICTS`; what is mostly so beside what always is."""
    groups: dict[tuple[str, bool], list[str]] = {}
    main = main_edition(answer, base)
    for entry in answer.entries:
        values = "; ".join(dict.fromkeys(_clean(tuple(value.label for value in entry.values))))
        numbers = clause_numbers(entry.rules, base, main)
        text = kb.visible(entry.label) + (f": {values}" if values else "")
        mostly = entry.usual is not None and entry.usual not in ("silent", "conditional", "conflict")
        group = (entry.usual or entry.verdict) if mostly else entry.verdict
        said = entry.condition
        if mostly:  # its group says so
            said = said.removeprefix("ordinarily ").removeprefix(f"{group.replace('_', ' ')}, ")
        text += f", {_condition(said, full)}" if said else ""
        groups.setdefault((group, mostly), []).append(text + (f" ({numbers})" if numbers else ""))
    counted = not full and any(entry.condition.count(";") >= _CASES_IN_A_LIST for entry in answer.entries)
    hint: tuple[Block, ...] = (Said("More", "ask about one item to see its cases."),) if counted else ()
    groups_shown = tuple(
        Points(f"{'Ordinarily ' + word if mostly else word.capitalize()} ({len(found)})", tuple(found), tone)
        for verdict, (word, tone) in VERDICTS.items()
        for mostly in (False, True)
        if (found := groups.get((verdict, mostly)))
    )
    return groups_shown + hint


def _differences(answer: Answer, base: KnowledgeBase) -> tuple[Block, ...]:
    """What differs, one row a line: what each side says, with the clauses behind it."""
    if not answer.differences:
        return ()
    main = main_edition(answer, base)
    rows: list[tuple[Cell, ...]] = []
    for difference in answer.differences:
        cells = []
        for side in difference.sides:
            is_short = len(side.rules) <= _NAMED_IN_A_CELL
            numbers = clause_numbers(side.rules, base, main) if is_short else ""
            text = kb.visible(side.text) + (f" ({numbers})" if numbers else "")
            cells.append(Cell(text, VERDICTS[side.verdict][1]))
        rows.append((Cell(kb.visible(difference.label)), *cells))
    return (Grid("What differs", ("", *_clean(answer.sides)), tuple(rows), apart=True),)


def _sources(answer: Answer, shown: Answer) -> tuple[Block, ...]:
    """The clauses in full; where they stand alone under a long list, and of cases that are not shown."""
    if (answer.entries or answer.differences) and len(answer.citations) > _QUOTED_UNDER_A_LIST:
        return (Points("Clauses", _numbered((c.title, c.number) for c in answer.citations)),)
    kept = {rule for case in shown.cases for rule in case.rules}
    left = {rule for case in answer.cases for rule in case.rules} - kept
    far = [one for one in answer.citations if one.rules and left.issuperset(one.rules)]
    near = (_quoted(one.title, one.number, one.text) for one in answer.citations if one not in far)
    return (
        *near,
        *(
            (Points("Clauses of the other cases", _numbered((c.title, c.number) for c in far)),)
            if far
            else ()
        ),
    )


def _numbered(cited: Iterable[tuple[str, str]]) -> tuple[str, ...]:
    numbers: dict[str, list[str]] = {}
    for book, number in cited:
        numbers.setdefault(kb.visible(book), []).append(kb.visible(number))
    return tuple(f"{title}: {', '.join(sorted(set(n), key=number_key))}" for title, n in numbers.items())


def _remarks(answer: Answer) -> tuple[Block, ...]:
    blocks: list[Block] = []
    if answer.cautions:
        blocks.append(Points("Caution", _clean(answer.cautions), "clash"))
    if answer.notes:
        blocks.append(Points("Note", _clean(answer.notes)))
    return tuple(blocks)


def next_blocks(answer: Answer) -> tuple[Block, ...]:
    """What the answer asks for, if anything."""
    if answer.ask is None:
        return ()
    choices = _clean(tuple(label for _, label in answer.ask.choices))
    return (Next(kb.visible(answer.ask.prompt), (*choices, _NONE) if answer.ask.others else choices),)


def further_blocks(answer: Answer) -> tuple[Block, ...]:
    """What somebody who reads on can write next in the shell; nothing where something is asked back."""
    if answer.ask is not None or answer.outcome != "answer":
        return ()
    commands = ["why"] if answer.derivation else []
    commands += [f"clause {kb.visible(answer.citations[0].number)}"] if answer.citations else []
    return (Said("Next", " | ".join([*commands, "or a further question"])),) if commands else ()


def _reasons(answer: Answer, base: KnowledgeBase) -> tuple[Block, ...]:
    """The short reason: the rules that decided it; who asks why is told what would be otherwise too."""
    nodes = short_reasons(answer, base)
    query = answer.reading.query
    changes = change_blocks(answer) if query is not None and query.kind == "why" else ()
    return (*((Chain("Because", nodes),) if nodes else ()), *changes)


def _day(answer: Answer) -> tuple[Block, ...]:
    """For which day the answer holds; a comparison of two days says them itself."""
    query = answer.reading.query
    day = datetime.date.fromisoformat(answer.as_of) if query is None else query.case.as_of
    if query is not None and query.other is not None and query.other.as_of != day:
        return ()
    return (Said("For the day", f"{day.day} {day:%B} {day.year}"),)


def arrange(
    answer: Answer,
    base: KnowledgeBase,
    *,
    chain: bool = False,
    dated: bool = False,
    asked: bool = False,
    given: Collection[str] = (),
    talk: bool = True,
) -> tuple[Block, ...]:
    """The blocks of one answer; with `chain` the whole derivation too, and lists in full.

    With `dated` it says for which day it holds, with `asked` what the question was: in a file both, on the
    screen the day where one was told. The facts `given` come from options of this one question;
    without `talk` nothing was said before it.
    """
    is_long = len(answer.cases) > _MOST_CASES and not chain
    shown = base.nearest_cases(answer, _NEAREST_CASES) if is_long else answer
    return (
        *_headline(answer, base),
        *((Said("Asked", kb.visible(answer.question)),) if asked else ()),
        *_reading(answer, base, given, talk),
        *(_day(answer) if dated else ()),
        *_abstained(answer),
        *_to_read(answer),
        *_cases(answer, shown, base),
        *(() if chain else _reasons(answer, base)),
        *_values(answer, base),
        *_entries(answer, base, chain),
        *_differences(answer, base),
        *(chain_blocks(answer, base) if chain else ()),
        *_sources(answer, shown),
        *_remarks(answer),
        *next_blocks(answer),
    )
