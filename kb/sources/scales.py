"""Expressions over an ordered fact: "K5 and above", "H1 to H3", "all except officers"."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from kb.model.records import Fact, FactValue, Group
from kb.sources.report import Report, listed, quoted, suggestion
from kb.sources.tree import Scalar

_UPWARD = {
    ("and", "above"),
    ("or", "above"),
    ("and", "up"),
    ("and", "higher"),
    ("or", "higher"),
    ("upwards",),
}
_DOWNWARD = {("and", "below"), ("or", "below"), ("and", "lower"), ("or", "lower"), ("downwards",)}
_JOIN = {",", "and", "or"}


class Scale(msgspec.Struct, frozen=True):
    """The values of a fact from the lowest to the highest, and every name for one or several of them."""

    label: str
    order: tuple[str, ...]
    names: dict[tuple[str, ...], tuple[int, ...]]
    shown: tuple[str, ...]


class _Refused(Exception):  # noqa: N818  never leaves this module
    def __init__(self, code: str, message: str, remedy: str) -> None:
        self.code, self.message, self.remedy = code, message, remedy
        super().__init__(message)


def _words(text: str) -> tuple[str, ...]:
    return tuple(text.replace(",", " , ").casefold().split())


def make_scale(fact: Fact, groups: Iterable[Group]) -> Scale:
    """The scale of a fact with its groups (ladders among them). Ids win over labels."""
    order = tuple(value.id for value in fact.values)
    rank = {value: index for index, value in enumerate(order)}
    names: dict[tuple[str, ...], tuple[int, ...]] = {}
    shown: list[str] = []
    records: list[tuple[FactValue | Group, tuple[int, ...]]] = [
        (value, (rank[value.id],)) for value in fact.values
    ]
    records += [
        (group, tuple(rank[m] for m in group.members if m in rank))
        for group in groups
        if group.fact == fact.id
    ]
    for record, ranks in records:
        names[_words(record.id)] = ranks
        shown.append(record.id)
    for record, ranks in records:
        one = record.one if isinstance(record, Group) else None
        for label in (record.label, *record.other_labels, *((one,) if one else ())):
            names.setdefault(_words(label), ranks)
            shown.append(label)
    return Scale(fact.label, order, names, tuple(shown))


class _Reader:
    """A cursor over the words of an expression."""

    def __init__(self, scale: Scale, text: str) -> None:
        self.scale = scale
        self.text = text
        self.words = _words(text)
        self.written = text.replace(",", " , ").split()
        self.place = 0
        self.longest = max((len(name) for name in scale.names), default=1)

    def accept(self, *phrases: tuple[str, ...]) -> bool:
        for phrase in phrases:
            if self.words[self.place : self.place + len(phrase)] == phrase:
                self.place += len(phrase)
                return True
        return False

    def name(self) -> tuple[str, tuple[int, ...]]:
        """The longest known name at the cursor."""
        for length in range(min(self.longest, len(self.words) - self.place), 0, -1):
            words = self.words[self.place : self.place + length]
            if words in self.scale.names:
                self.place += length
                ranks = self.scale.names[words]
                return self.scale.order[ranks[0]] if len(ranks) == 1 else " ".join(words), ranks
        raise self.unknown()

    def unknown(self) -> _Refused:
        rest = " ".join(self.written[self.place :]) or "nothing"
        first = rest.split(" , ")[0].split(" to ")[0].split(" and ")[0]
        message = f"{quoted(first)} in {quoted(self.text)} is no value of {self.scale.label}."
        remedy = suggestion(first, self.scale.shown, f"Write {listed(self.scale.order)}, or a group of them.")
        return _Refused("unknown-grade" if self.scale.label == "grade" else "unknown-value", message, remedy)

    def term(self) -> set[int]:
        if self.accept(("all", "of"), ("all",), ("any",)):
            return self.all()
        if self.accept(("above",), ("over",)):
            name, ranks = self.name()
            return self.filled(range(max(ranks) + 1, len(self.scale.order)), f"above {name}")
        if self.accept(("below",), ("under",)):
            name, ranks = self.name()
            return self.filled(range(min(ranks)), f"below {name}")
        self.accept(("from",))
        name, ranks = self.name()
        if self.accept(*_UPWARD):
            return set(range(min(ranks), len(self.scale.order)))
        if self.accept(*_DOWNWARD):
            return set(range(max(ranks) + 1))
        if self.accept(("to",), ("through",)):
            return self.span(name, ranks)
        return set(ranks)

    def all(self) -> set[int]:
        whole = set(range(len(self.scale.order)))
        if self.place < len(self.words) and self.words[self.place : self.place + 1] not in (
            (",",),
            ("except",),
        ):
            _, ranks = self.name()
            return set(ranks)
        return whole

    def span(self, low_name: str, low: tuple[int, ...]) -> set[int]:
        high_name, high = self.name()
        if min(low) > max(high) or max(low) > max(high):
            message = f"{quoted(self.text)} runs backwards: {high_name} stands below {low_name}."
            remedy = f"Write the lower one first: {high_name} to {low_name}."
            raise _Refused("reversed-range", message, remedy)
        return set(range(min(low), max(high) + 1))

    def filled(self, ranks: range, what: str) -> set[int]:
        if not ranks:
            message = f"There is no {self.scale.label} {what}."
            raise _Refused("empty-range", message, "Correct the value, or leave the line out.")
        return set(ranks)

    def terms(self) -> set[int]:
        found = self.term()
        while self.place < len(self.words) and self.words[self.place] in _JOIN:
            while self.place < len(self.words) and self.words[self.place] in _JOIN:
                self.place += 1
            found |= self.term()
        return found

    def expression(self) -> set[int]:
        found = self.terms()
        if self.accept((",", "except"), ("except", "for"), ("except",), ("but", "not"), ("without",)):
            found = found - self.terms()
        if self.place < len(self.words):
            rest = " ".join(self.written[self.place :])
            message = f"{quoted(rest)} in {quoted(self.text)} is not understood."
            remedy = f"Write for example {self.example()}."
            raise _Refused("bad-expression", message, remedy)
        if not found:
            raise _Refused(
                "empty-range",
                f"Nothing is left of {quoted(self.text)}.",
                "Take back the exception, or widen the range.",
            )
        return found

    def example(self) -> str:
        low, high = self.scale.order[0], self.scale.order[-1]
        return f"{low} to {high}, {low} and above, {low} to {high} except {high}"


def read_scale(texts: Iterable[Scalar], scale: Scale, report: Report) -> frozenset[str] | None:
    """The values that the expressions name together; None if one of them is not understood."""
    found: set[int] = set()
    failed = False
    for scalar in texts:
        try:
            found |= _Reader(scale, scalar.text).expression()
        except _Refused as refused:
            report.error(scalar.at, refused.code, refused.message, refused.remedy)
            failed = True
    return None if failed else frozenset(scale.order[rank] for rank in found)
