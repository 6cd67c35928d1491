"""Cases from a table of texts: what each column means, and the decision on each row.

A mistake in a cell is a value, so that a long table is never stopped by one row.
"""

from __future__ import annotations

import datetime
from bisect import bisect_right
from collections.abc import Callable, Hashable, Iterable, Sequence

import msgspec

from kb.answer import answer_query
from kb.answer.acts import count_breach
from kb.compiled import Decided, Decider, Memory, Value, set_of, value_of
from kb.errors import UsageError
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Fact, Item, Named
from kb.model.values import Ranges, ValueSet
from kb.reader import parse_fact
from kb.reader.names.spelling import near_names
from kb.reasoner import WORN, Engine
from kb.text import formula_safe, visible

_DAYS_KEPT = 8
_QUOTED = ("'=", "'+", "'-", "'@")
_LARGEST_CELL = 1000


class CellProblem(msgspec.Struct, frozen=True):
    """What is wrong with a row: the column counts from 1, and is 0 where no single cell is to blame."""

    column: int
    message: str


class _Columns(msgspec.Struct, frozen=True):
    """What the columns of a table hold, by their places."""

    item: int
    aspect: int | None
    as_of: int | None
    facts: tuple[tuple[int, str], ...]
    width: int


def plain_cell(text: str) -> str:
    """A cell without the apostrophe that keeps a spreadsheet from taking it for a formula."""
    return text[1:] if text.startswith(_QUOTED) else text


def _names_of(records: Iterable[Named]) -> dict[str, tuple[str, ...]]:
    """The ids that each name (in small letters) fits: an id where it is one, else labels, else words."""
    found: dict[str, dict[str, None]] = {}
    everyday: dict[str, dict[str, None]] = {}
    for record in records:
        for name in (record.label, *record.other_labels):
            found.setdefault(_folded(name), {})[record.id] = None
        for name in record.everyday if isinstance(record, Item) else ():
            everyday.setdefault(_folded(name), {})[record.id] = None
    found = everyday | found
    return {name: tuple(ids) for name, ids in found.items()} | {
        _folded(record.id): (record.id,) for record in records
    }


def _folded(name: str) -> str:
    return " ".join(name.split()).casefold()


class CaseTable:
    """Decides the rows of a table with the columns of `header`.

    `item`, and if wanted `aspect` (else wear) and `as_of` (else `today`), then a column for each fact by id
    or label; `member`, and columns whose name begins with "_", are only carried along. An empty cell is a
    fact that is not known. `UsageError` where the header makes no sense.
    """

    def __init__(
        self,
        lookup: Lookup,
        engine: Callable[[datetime.date], Engine],
        header: Sequence[str],
        today: datetime.date,
    ) -> None:
        self._lookup, self._engine, self._today = lookup, engine, today
        self._items = _names_of(lookup.base.items)
        self._aspects = _names_of(lookup.base.aspects)
        self._columns = self._read_header([plain_cell(name) for name in header])
        counted = {i for rule in lookup.base.rules if rule.aspect == "count" for i in rule.scope.items}
        self._limited = tuple(frozenset(lookup.narrower(item)) for item in sorted(counted))
        self._tells_worn = any(fact.startswith(WORN) for _, fact in self._columns.facts)
        self._broken: Memory[Hashable, Decided | None] = Memory()
        spans = [(rule.valid_from, rule.valid_until) for rule in lookup.base.rules]
        spans += [(clause.valid_from, clause.valid_until) for clause in lookup.base.clauses]
        self._changes = sorted({day for span in spans for day in span if day is not None})
        self._deciders: dict[datetime.date, Decider] = {}
        self._read: Memory[tuple[int, str], Value | CellProblem] = Memory()
        self._days: Memory[str, Decider | CellProblem] = Memory()
        self._places: Memory[tuple[datetime.date, str, str], CellProblem | tuple[str, str]] = Memory()

    @staticmethod
    def written(cell: str) -> str:
        """A cell as it goes into a table: no formula to a spreadsheet, and read back as it was."""
        return formula_safe(cell)

    # -- the header -------------------------------------------------------------------------------------

    def _read_header(self, header: Sequence[str]) -> _Columns:
        facts = _names_of(self._lookup.base.facts)
        places: dict[str, int] = {}
        for place, name in enumerate(header):
            meaning = self._meaning(name, facts)
            if meaning in places:
                raise UsageError(
                    f"Columns {places[meaning] + 1} and {place + 1} are both for {visible(meaning)}."
                )
            if meaning:
                places[meaning] = place
        if "item" not in places:
            raise UsageError(
                "There is no column item. The first line names the columns, as in: item,grade,rig"
            )
        item, aspect, as_of = (places.pop(name, None) for name in ("item", "aspect", "as_of"))
        assert item is not None
        return _Columns(item, aspect, as_of, tuple((p, f) for f, p in places.items()), len(header))

    def _meaning(self, name: str, facts: dict[str, tuple[str, ...]]) -> str:
        """The id of the fact that a column is for, a name of our own, or nothing."""
        folded = _folded(name)
        if folded in ("item", "aspect", "as_of", "as of"):
            return folded.replace(" ", "_")
        found = facts.get(folded, ())
        if len(found) == 1:
            return found[0]
        if found:
            raise UsageError(f'The column "{visible(name)}" fits {" and ".join(found)}. Write the id.')
        if folded == "member" or folded.startswith("_"):
            return ""
        near = near_names(folded, [*(n for n in facts if not n.startswith("worn:")), "item", "aspect"])
        hint = f" Did you mean {' or '.join(near)}?" if near else ""
        raise UsageError(
            f'The column "{visible(name)}" is no fact that the books know.{hint} '
            'Begin its name with "_" if it is only to be carried along.'
        )

    # -- a row ------------------------------------------------------------------------------------------

    def decide(self, cells: Sequence[str]) -> Decided | CellProblem:
        """The decision on one row."""
        columns = self._columns
        if len(cells) != columns.width:
            return CellProblem(0, f"there are {len(cells)} cells, and {columns.width} columns")
        decider = self._decider("" if columns.as_of is None else cells[columns.as_of])
        if isinstance(decider, CellProblem):
            return decider
        place = self._place(decider, cells)
        if isinstance(place, CellProblem):
            return place
        case: dict[str, Value] = {}
        for column, fact in columns.facts:
            text = cells[column]
            if text:
                value = self._value(column, fact, text)
                if isinstance(value, CellProblem):
                    return value
                if value != "":
                    case[fact] = value
        try:
            decider.check(*place, case)
            decided = decider.decide(*place, case)
            return self._within_limits(decider, *place, case, decided) if self._tells_worn else decided
        except UsageError as error:
            return CellProblem(0, str(error).rstrip("."))

    def _within_limits(
        self, decider: Decider, item: str, aspect: str, case: dict[str, Value], decided: Decided
    ) -> Decided:
        """The decision, unless what is worn together breaks a limit on numbers (see `count_breach`)."""
        worn = {fact[len(WORN) :] for fact, value in case.items() if value == "yes" and fact.startswith(WORN)}
        if aspect != "wear" or not worn or decided.verdict in ("prohibited", "conflict"):
            return decided
        if not any(len(kinds & {*worn, item}) > 1 for kinds in self._limited):
            return decided
        key = (decider.engine.as_of, item, frozenset(case.items()))
        if key not in self._broken:
            facts = tuple((fact, set_of(value)) for fact, value in case.items())
            known = Case(as_of=decider.engine.as_of, facts=facts)
            breach = count_breach(decider.engine, Query(kind="may", items=(item,), case=known))
            self._broken[key] = None if breach is None else self._limited_by(breach.cases[0].rules)
        return self._broken[key] or decided

    def _limited_by(self, rules: tuple[str, ...]) -> Decided:
        clauses = tuple(dict.fromkeys(self._lookup.rules[rule].clause for rule in rules))
        return Decided("prohibited", clauses[:1], rules)

    def texts(self, decided: Decided) -> tuple[str, str, str]:
        """Verdict, clauses and rules in words that the other commands take."""
        clauses = (self._lookup.clauses[clause] for clause in decided.clauses)
        named = "; ".join(f"{clause.edition} clause {clause.number}" for clause in clauses)
        return decided.verdict, named, "; ".join(decided.rules)

    def _decider(self, text: str) -> Decider | CellProblem:
        found = self._days.get(text)
        if found is None:
            found = self._days[text] = self._new_decider(plain_cell(text).strip())
        return found

    def _new_decider(self, text: str) -> Decider | CellProblem:
        """One decider serves all the days on which the same rules and clauses are in force."""
        try:
            day = datetime.date.fromisoformat(text) if text else self._today
        except ValueError:
            column = (self._columns.as_of or 0) + 1
            return CellProblem(column, f'"{visible(text)}" is not a date; write it as 2026-06-01')
        place = bisect_right(self._changes, day)
        same = self._changes[place - 1] if place else day
        if same not in self._deciders:
            if len(self._deciders) >= _DAYS_KEPT:
                self._deciders.pop(next(iter(self._deciders)))
                self._days.clear()
            self._deciders[same] = Decider(self._engine(same))
        return self._deciders[same]

    def _place(self, decider: Decider, cells: Sequence[str]) -> CellProblem | tuple[str, str]:
        """The item and the aspect of a row."""
        columns = self._columns
        aspect = "" if columns.aspect is None else cells[columns.aspect]
        key = (decider.engine.as_of, cells[columns.item], aspect)
        found = self._places.get(key)
        if found is None:
            found = self._places[key] = self._new_place(decider, cells[columns.item], aspect)
        return found

    def _new_place(self, decider: Decider, item: str, aspect: str) -> CellProblem | tuple[str, str]:
        columns, lookup = self._columns, self._lookup
        aspects = self._named(self._aspects, aspect, "wear", "aspect")
        if isinstance(aspects, str):
            return CellProblem((columns.aspect or 0) + 1, aspects)
        items = self._named(self._items, item, "", "item")
        if isinstance(items, str):
            return CellProblem(columns.item + 1, items)
        case = Case(as_of=decider.engine.as_of)
        query = Query(kind="may", items=items, aspect=aspects[0], case=case)
        answer = answer_query(decider.engine, Reading(question="", query=query), "")
        if answer.ask is not None and answer.ask.fact == "item":
            kinds = ", ".join(value for value, _ in answer.ask.choices)
            label = lookup.items[items[0]].label
            return CellProblem(columns.item + 1, f"the rules differ by kind of {label}; write one of {kinds}")
        return items[0], aspects[0]

    def _named(
        self, names: dict[str, tuple[str, ...]], text: str, otherwise: str, what: str
    ) -> tuple[str, ...] | str:
        """The one id that a text names, in a tuple; else what is wrong."""
        written = _folded(plain_cell(text)) or otherwise
        found = names.get(written, ())
        if len(found) == 1:
            return found
        if found:
            return f'"{visible(text)}" fits {" and ".join(found)}; write the id'
        if not written:
            return f"there is no {what}"
        near = near_names(written, list(names))
        hint = f"; perhaps {' or '.join(near)}" if near else ""
        return f'there is no {what} "{visible(text[:100])}"{hint}'

    def _value(self, column: int, fact: str, text: str) -> Value | CellProblem:
        """The value of a cell; the empty text for a blank one."""
        found = self._read.get((column, text))
        if found is None:
            found = self._read[column, text] = self._new_value(column, self._lookup.facts[fact], text)
        return found

    def _new_value(self, column: int, fact: Fact, text: str) -> Value | CellProblem:
        written = plain_cell(text).strip()
        if not written:
            return ""
        if len(written) > _LARGEST_CELL:
            return CellProblem(column + 1, "the cell is too long")
        try:
            _, values = parse_fact(self._lookup, fact.id, written)
        except UsageError as error:
            return CellProblem(column + 1, str(error).rstrip("."))
        return _day_of(values) if fact.kind == "date" else value_of(values)


def _day_of(values: ValueSet) -> Value:
    """A single day as its ordinal; other sets of days as they are."""
    if isinstance(values, Ranges) and len(values.intervals) == 1:
        (only,) = values.intervals
        if only.low is not None and only.high == only.low + 1 and only.low.denominator == 1:
            return only.low.numerator
    return values
