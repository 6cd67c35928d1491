"""A comparison as a saved answer records it: what each side says, by the plain meaning of the rules."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from typing import Any

from kb.model.lookup import Lookup
from kb.model.values import ValueSet, unite
from kb.plain.asking import Question
from kb.plain.weighing import Fate

Line = tuple[str, str, frozenset[str]]


class Sides:
    """The two sides of a comparison: each a day, a case, and the item where the sides differ in that."""

    def __init__(self, reading: Any, lookup: Lookup, day: datetime.date) -> None:
        self.lookup, self.items, self.reading = lookup, reading["items"], reading
        other = reading["other"]
        if other is None:
            self.cases = [(day, reading), (day, reading)]
        else:
            self.cases = [(day, reading), (datetime.date.fromisoformat(other["as_of"]), {**reading, **other})]
        self._questions: dict[tuple[int, str, str], Question] = {}
        self._behind = _behind(lookup, reading["book"])

    def reading_of(self, side: int, item: str, aspect: str) -> Any:
        """One side's question about an aspect of an item, as its reading."""
        record = self.lookup.aspects[aspect]
        kind = "may" if record.kind == "act" and record.within is None else "how"
        facts = self.cases[side][1]
        said = {"kind": kind, "items": [item], "aspect": aspect, "value": None, "verdicts": []}
        return {**self.reading, **said, "facts": facts["facts"], "alone": facts["alone"]}

    def question(self, side: int, item: str, aspect: str) -> Question:
        key = (side, item, aspect)
        if key not in self._questions:
            reading = self.reading_of(side, item, aspect)
            self._questions[key] = Question(reading, self.lookup, self.cases[side][0])
        return self._questions[key]

    def lines(self) -> tuple[set[Line], set[Line]]:
        """Where no item is named: what a list of everything would hold on each side."""
        lists = []
        for day, facts in self.cases:
            reading = {**self.reading, "kind": "list", "facts": facts["facts"], "alone": facts["alone"]}
            lists.append(Question(reading, self.lookup, day))
        also = {item for one in lists for item in one.named()}
        return lists[0].entries(also, lists[1:]), lists[1].entries(also, lists[:1])

    def places(self) -> Iterator[tuple[tuple[str, str], str]]:
        """The items of either side and the aspects in which rules that name them speak of them.

        Without items every item, in all but what it is that a list of things worn holds.
        """
        look = self.lookup
        if not self.items:
            pairs_named = {(i, r.aspect) for r in look.base.rules if not r.residual for i in r.scope.items}
            yield from (((item, item), a) for item, a in sorted(pairs_named) if a != "wear")
            return
        kinds = {kind for item in self.items for kind in look.narrower(item)}
        kinds |= {part.id for part in look.base.items if part.part_of in kinds}
        pairs = [(item, item) for item in sorted(kinds)]
        if self.reading["other"] is None:
            pairs = [(self.items[0], self.items[1])]
        wide = self.reading["aspect"]
        for pair in pairs:
            named = {r.aspect for r in look.base.rules if {*pair} & {*r.scope.items}}
            for aspect in look.aspects if wide == "wear" else look.aspects_within(wide):
                if aspect in named or (aspect == "wear" and (pair[0] in self.items or named)):
                    yield pair, aspect

    def outcomes(self, side: int, item: str, aspect: str) -> set[tuple[str, ValueSet | None]]:
        """Every outcome that some case of a side has: the verdict, and the values left open together."""
        question = self.question(side, item, aspect)
        meaning, known = question.meaning, question.known(item, aspect)
        watched = meaning.watched(item, aspect, frozenset(known))
        act = self.lookup.aspects[aspect].kind == "act"
        found = set()
        for truths in meaning.outcomes(tuple(watched.values()), known):
            fates = meaning.fates(item, aspect, dict(zip(watched, truths, strict=True)))
            found.add((question.said(item, aspect, fates)[0], None if act else left_open(fates)))
        return found

    # -- what a comparison claims ---------------------------------------------------------------------------

    def claims(self, differences: Any) -> Iterator[tuple[bool, str, str]]:
        """Whether each claim holds, where it stands, and what is wrong if not; proofs are not here."""
        for n, one in enumerate(differences):
            yield len(one["sides"]) == 2, f"differences[{n}].sides", "there are two sides"
            for m, side in enumerate(one["sides"]):
                where, rows = f"differences[{n}].sides[{m}]", side["cases"]
                said = rows[0]["verdict"] if len(rows) == 1 else "conditional"
                used = {rule for row in rows for rule in row["rules"]}
                yield not rows or side["verdict"] == said, where, "the verdict does not follow from the rows"
                yield not rows or {*side["rules"]} == used, where, "these are not the rules of the rows"
                yield bool(rows) == self.has_table(one), where, "a line of a list, and no other, has no table"
        if self.items:
            yield from self._between_items(differences)
            return
        others = [one for one in differences if self.has_table(one)]
        yield from self._between_lists([one for one in differences if one not in others])
        if self.reading["aspect"] == "wear":
            yield from self._between_items(others)
        else:
            yield not others, "differences", "something is compared that was not asked about"

    def has_table(self, difference: Any) -> bool:
        """Whether a difference is shown with its rows: all are but those of things listed with others."""
        return bool(self.items) or difference["aspect"] != self.reading["aspect"]

    def _between_items(self, differences: Any) -> Iterator[tuple[bool, str, str]]:
        listed = {(*(side["item"] for side in one["sides"]), one["aspect"]) for one in differences}
        known = {(*pair, aspect) for pair, aspect in self.places()}
        yield listed <= known, "differences", "something is compared that was not asked about"
        for first, second, aspect in sorted(known):
            left, right = self.outcomes(0, first, aspect), self.outcomes(1, second, aspect)
            if left != right and self._bears_on(self._deciding(first, second, aspect)):
                yield (first, second, aspect) in listed, "differences", f"{aspect} of {first} is left out"
            elif left != right or len(left) == 1:
                said = (first, second, aspect) not in listed
                yield said, "differences", f"{aspect} of {first} does not differ"

    def _between_lists(self, differences: Any) -> Iterator[tuple[bool, str, str]]:
        lines = [{self._key(line): line for line in found} for found in self.lines()]
        listed = set()
        for n, one in enumerate(differences):
            rules = [frozenset(side["rules"]) for side in one["sides"]]
            key = self._key((one["item"], "", rules[0] or rules[1]))
            listed.add(key)
            for m, side in enumerate(one["sides"]):
                line = (side["item"], side["verdict"], rules[m])
                right = lines[m].get(key, (one["item"], "silent", frozenset())) == line
                yield right, f"differences[{n}].sides[{m}]", f"not what the rules say of {one['item']}"
            asked = self._bears_on({*rules[0], *rules[1]})
            yield asked, f"differences[{n}]", "something is compared that was not asked about"
        for key in {*lines[0], *lines[1]} - listed:
            same = [side[key][1] if key in side else "silent" for side in lines]
            spared = not self._bears_on({rule for side in lines if key in side for rule in side[key][2]})
            yield same[0] == same[1] or spared, "differences", f"{', '.join(sorted(key))} is left out"

    def _deciding(self, first: str, second: str, aspect: str) -> set[str]:
        """The rules that decide an aspect of an item on either side."""
        sides = ((self.question(m, item, aspect), item) for m, item in enumerate((first, second)))
        return {r for one, item in sides for r in one.outcomes(item, aspect, one.known(item, aspect))[1]}

    def _bears_on(self, rules: set[str]) -> bool:
        """Whether what some rules say was asked about: all is, unless it is asked what one book did."""
        return self._behind is None or any(self.lookup.rules[rule].clause in self._behind for rule in rules)

    def _key(self, line: Line) -> frozenset[str]:
        """The item of a line; the rule of one that is about everything of a kind but some."""
        item, _, rules = line
        kinds = any(self.lookup.rules[rule].scope.excluding and len(rules) == 1 for rule in rules)
        return rules if kinds and item in self.lookup.rules[min(rules)].scope.items else frozenset({item})


def _behind(lookup: Lookup, book: str | None) -> set[str] | None:
    """The clauses of a book or an edition and those that they replace or end; None without a book."""
    own = [c for c in lookup.base.clauses if book in (c.edition, lookup.editions[c.edition].book)]
    return None if book is None else {one for c in own for one in (c.id, *c.replaces, *c.repeals)}


def left_open(fates: list[Fate]) -> ValueSet | None:
    """All values that are left open together; None where none are, or nothing is said."""
    closed = any(fate.status == "closed" for fate in fates)
    found: ValueSet | None = None
    for fate in fates:
        if fate.status == "supported" or (closed and fate.status == "unaddressed"):
            found = fate.values if found is None else unite(found, fate.values)
    return found
