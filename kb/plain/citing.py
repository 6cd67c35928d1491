"""The clauses that a saved answer cites, held against the books."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterator
from typing import Any

from kb.model.lookup import Lookup
from kb.model.records import Clause, Rule


def citing(data: Any, lookup: Lookup, is_duty: Callable[[Rule], bool]) -> Iterator[tuple[bool, str, str]]:
    """Whether each claim holds, where it stands, and what is wrong if not.

    Each citation is a clause of the books word for word, and every row has a rule that is cited. No rule is
    cited that does not decide, here or if facts were changed as is said, or say how what may be worn must be
    (`is_duty`); between two days those of a clause that begins or ends there are cited, too.
    """
    clauses = {(one.edition, one.number): one for one in lookup.base.clauses}
    sides = [side for one in data["differences"] for side in one["sides"]]
    rows = [*data["cases"], *(row for side in sides for row in side["cases"])]
    spoken = [*rows, *data["entries"], *sides, *(value for row in rows for value in row["values"])]
    cited = set[str]()
    for n, one in enumerate(data["citations"]):
        clause = clauses[one["edition"], one["clause"]]
        edition, source = lookup.editions[clause.edition], {"file": clause.at.file, "line": clause.at.line}
        said = (one["book"], one["title"], one["text"], one["source"])
        same = said == (edition.book, edition.label, clause.text, source)
        yield same, f"citations[{n}]", "it is not as in the books"
        mine = all(lookup.rules[rule].clause == clause.id for rule in one["rules"])
        yield mine, f"citations[{n}].rules", "a rule is of another clause"
        cited |= {*one["rules"]}
    deciding = {rule for one in (*spoken, *data["changes"]) for rule in one["rules"]}
    deciding |= {one for one in cited if _changes(lookup.clauses[lookup.rules[one].clause], data)}
    deciding |= {one for one in cited - deciding if is_duty(lookup.rules[one])}
    source_asked = data["reading"]["kind"] == "source"
    yield source_asked or cited <= deciding, "citations", "a rule that decides nothing is cited"
    for n, row in enumerate(data["cases"]):
        rules = {*row["rules"]}.union(*(value["rules"] for value in row["values"]))
        carried = not rules or row["verdict"] == "silent" or bool(rules & cited)
        yield carried, f"cases[{n}]", "no rule of this row is cited"
    for n, one in enumerate(data["differences"]):
        rules = {rule for side in one["sides"] for rule in side["rules"]}
        yield not rules or bool(rules & cited), f"differences[{n}]", "no rule of it is cited"


def _changes(clause: Clause, data: Any) -> bool:
    """Whether a clause begins or ends between the days of a comparison, so that the time of it is told."""
    other = data["reading"]["other"]
    if other is None:
        return False
    first, last = datetime.date.fromisoformat(data["as_of"]), datetime.date.fromisoformat(other["as_of"])
    return any(day is not None and first < day <= last for day in (clause.valid_from, clause.valid_until))
