"""The phrases that a rule base can be spoken of in, each with what it means: conditions, holders, items.

The wording of conditions is fixed, so what the program would say of a test can be looked up word for word.
What is written otherwise goes to the reader, whose gate lets no word pass that it does not know.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cached_property, lru_cache, partial

from kb.guidance.checking.words import KEPT, fold
from kb.model.conditions import AllOf, Condition, NotOf, Test, all_of, any_of, negate, tests
from kb.model.lookup import Lookup
from kb.model.questions import Ask
from kb.model.records import Fact, Rule
from kb.model.values import YES, Choices
from kb.reader import Lexicon, read_statement
from kb.reader.question import clean, understand
from kb.reader.words.forms import word_set
from kb.reasoner.norms import covered_items
from kb.wording.conditions import phrase_in, take_apart
from kb.wording.holders import say_subject
from kb.wording.normal import positive
from kb.wording.phrases import Phrase
from kb.wording.rules import say_rule
from kb.wording.sets import closed
from kb.wording.testing import phrase_of

HOLDERS = frozenset({"grade", "branch", "qualification", "appointment", "waiver"})
_MOST_GRADES = 60
_STATING = frozenset({"fact", "item", "items", "joined", "measure", "date", "comma"})
_SMALL = word_set("""
    the a an his her their your my its one's of in on at for with without wearing wears wear worn holding
    holds hold having has have had who that is are be being been was it and or not no by to when whenever if
    where while whilst during aboard member members wearer person you they he she somebody someone
""")
_WEARING = frozenset({"with", "without", "wearing", "wears", "wear", "worn"})


def conjuncts(condition: Condition) -> tuple[Condition, ...]:
    return condition.parts if isinstance(condition, AllOf) else (condition,)


def same(left: Condition, right: Condition) -> bool:
    return left == right


class Names:
    """Look-up of phrases for one rule base; everything is worked out when first asked for."""

    def __init__(self, lookup: Lookup, lexicon: Lexicon) -> None:
        self.lookup = lookup
        self.lexicon = lexicon
        self.covered = lru_cache(maxsize=KEPT)(partial(covered_items, lookup))
        self._stated: dict[str, Condition | None] = {}
        self._named: dict[str, str | None] = {}

    # -- conditions -------------------------------------------------------------------------------------

    @cached_property
    def conditions(self) -> dict[str, Condition]:
        """What follows a statement or "when", folded, and its condition; ambiguous ones are left out."""
        found: dict[str, Condition | None] = {}
        for condition in self._parts():
            said = phrase_in(self.lookup, positive(self.lookup, condition))
            for text in (*_forms(said), *self._in_the_case(condition)):
                key = fold(text)
                if found.setdefault(key, condition) != condition:
                    found[key] = None
        return {key: condition for key, condition in found.items() if condition is not None}

    def _parts(self) -> Iterator[Condition]:
        """Every condition that the books or a sentence about them could name as one."""
        seen: dict[Condition, None] = {}
        base = self.lookup.base
        for whole in (*(r.condition for r in base.rules), *(d.condition for d in base.definitions)):
            for part in conjuncts(whole):
                seen[part] = None
                if isinstance(part, NotOf):
                    seen[part.part] = None
            parts = [part.part for part in conjuncts(whole) if isinstance(part, NotOf)]
            if parts:
                seen[any_of(parts)] = None
            for test in tests(whole):
                seen[test] = None
                seen[negate(test)] = None
        for fact in base.facts:
            for test in self._simple(fact):
                seen[test] = None
                seen[negate(test)] = None
        yield from (self.plain(part) for part in seen)

    def _simple(self, fact: Fact) -> Iterator[Test]:
        if fact.kind == "yes_no":
            yield Test(fact.id, Choices(frozenset({"yes"})))
            yield Test(fact.id, Choices(frozenset({"no"})))
        for value in fact.values:
            yield Test(fact.id, Choices(closed(self.lookup, fact.id, [value.id])))
        for group in self.lookup.base.groups:
            if group.fact == fact.id:
                yield Test(fact.id, Choices(closed(self.lookup, fact.id, group.members)))

    def plain(self, condition: Condition) -> Condition:
        """The condition without `not` and with finite sets written out, so that equals are equal."""
        return self._written(positive(self.lookup, condition))

    def _written(self, condition: Condition) -> Condition:
        if isinstance(condition, Test):
            domain = self.lookup.domain(condition.fact)
            if isinstance(condition.values, Choices) and isinstance(domain, Choices):
                kept = [
                    v
                    for v in domain.members
                    if (v in condition.values.members) != condition.values.complement
                ]
                return Test(condition.fact, Choices(frozenset(kept)))
            return condition
        if isinstance(condition, NotOf):
            return NotOf(self._written(condition.part))
        parts = [self._written(part) for part in condition.parts]
        return all_of(parts) if isinstance(condition, AllOf) else any_of(parts)

    @cached_property
    def tails(self) -> dict[str, Condition]:
        """Whole ends of rules' sentences, "in boat rig with the smock when it is winter", folded."""
        from kb.wording.conditions import follow, with_unless  # noqa: PLC0415

        found: dict[str, Condition | None] = {}
        for rule in self.lookup.base.rules:
            parts = take_apart(self.lookup, rule.condition)
            held = [part for part in conjuncts(rule.condition) if not self._is_holder(part)]
            condition = self.plain(all_of(held))
            tail = follow(parts)
            key = fold(with_unless(tail, parts.unless, "," if tail else "").strip(" ,"))
            if not parts.except_for and key and found.setdefault(key, condition) != condition:
                found[key] = None
        return {key: condition for key, condition in found.items() if condition is not None}

    def _is_holder(self, condition: Condition) -> bool:
        return isinstance(condition, Test) and phrase_of(self.lookup, condition).holder

    def stated(self, text: str) -> Condition | None:
        """What the reader makes of a text that states facts; None if it does not know every word.

        Facts joined by "or" and facts under a "not" are left to the caller: the reader takes all for true.
        """
        if text not in self._stated:
            self._stated[text] = self._read(text)
        return self._stated[text]

    def _read(self, text: str) -> Condition | None:
        found = read_statement(text, lexicon=self.lexicon, lookup=self.lookup)
        if not isinstance(found, tuple) or not self._is_plain(text):
            return None
        words = set(text.split())
        if words & {"only", "just", "solely", "merely"}:
            return None
        if len(found) > 1 and words & {"outside", "inside"}:
            return None  # "outside the mess" is not "outside, in the mess"
        if len(found) > 1 and words & {
            "or",
            "nor",
            "not",
            "no",
            "without",
            "unless",
            "except",
            "neither",
            "but",
        }:
            return None
        worn = [fact for fact, _ in found if fact.startswith("worn:")]
        unclear = {"or", "nor", "unless", "except", "neither", "but", "other"}
        if worn and (words & unclear or len(worn) > 1 or not words & _WEARING):
            return None
        return self.plain(all_of([Test(fact, values) for fact, values in found]))

    def _is_plain(self, text: str) -> bool:
        """Whether a text that states facts has only small words beside them.

        A question may be put loosely ("usually", "near", "instead of"); a rule may not.
        """
        found = understand(clean(text), self.lexicon, self.lookup, None)
        if isinstance(found, Ask):
            return False
        pieces = found.pieces
        for index, piece in enumerate(pieces):
            if piece.tag in _STATING:
                continue
            said = [token.low for token in found.tokens[piece.first : piece.last]]
            if piece.tag in ("and", "or", "comma") and not 0 < index < len(pieces) - 1:
                return False
            if not all(word in _SMALL for word in said):
                return False
        return True

    # -- holders ----------------------------------------------------------------------------------------

    @cached_property
    def holders(self) -> dict[str, Condition]:
        """Who a sentence may be about, folded: "k2 and above", "members of the boat branch", "a k5"."""
        found: dict[str, Condition] = {}
        for condition in self._holder_sets():
            for text in (say_subject(self.lookup, [condition]), phrase_of(self.lookup, condition).noun or ""):
                if text:
                    found.setdefault(fold(text), self.plain(condition))
        for rule in self.lookup.base.rules:
            held = take_apart(self.lookup, rule.condition).holder
            if held:
                found.setdefault(fold(say_subject(self.lookup, held)), self.plain(all_of(held)))
            unless = take_apart(self.lookup, rule.condition).except_for
            if unless:
                found.setdefault(fold(say_subject(self.lookup, unless)), self.plain(all_of(unless)))
        return found

    @cached_property
    def longest_holder(self) -> int:
        """The number of words of the longest of them: none need be looked for beyond it."""
        return max((len(text.split(" ")) for text in self.holders), default=0)

    @cached_property
    def sentences(self) -> dict[str, list[Rule]]:
        """The rules by what the program says of them, folded and without the full stop."""
        found: dict[str, list[Rule]] = {}
        for rule in self.lookup.base.rules:
            found.setdefault(fold(say_rule(self.lookup, rule)).rstrip("."), []).append(rule)
        return found

    def _holder_sets(self) -> Iterator[Test]:
        for fact in self.lookup.base.facts:
            if fact.family not in HOLDERS:
                continue
            yield from self._simple(fact)
            order = self.lookup.order(fact.id)
            if fact.family == "grade" and len(order) <= _MOST_GRADES:
                for first in range(len(order)):
                    for last in range(first + 1, len(order) + 1):
                        run = frozenset(order[first:last])
                        yield Test(fact.id, Choices(run))
                        if len(run) < len(order):
                            yield Test(fact.id, Choices(frozenset(order) - run))

    def of_holders(self, condition: Condition) -> bool:
        """Whether a condition speaks only of who somebody is."""
        return all(self.lookup.facts[test.fact].family in HOLDERS for test in tests(condition))

    def _in_the_case(self, condition: Condition) -> Iterable[str]:
        """ "In the case of hair tied up", as a writer may put what is a circumstance by its name."""
        if isinstance(condition, Test) and condition.values == YES:
            fact = self.lookup.facts[condition.fact]
            yield from (f"in the case of {label}" for label in (fact.label, *fact.other_labels))

    # -- items ------------------------------------------------------------------------------------------

    @cached_property
    def _items(self) -> dict[str, str | None]:
        found: dict[str, str | None] = {}
        for item in self.lookup.base.items:
            for label in (item.label, *item.other_labels):
                key = fold(label)
                found[key] = item.id if found.setdefault(key, item.id) == item.id else None
        return found

    def item(self, name: str) -> str | None:
        """The one item that a name without its article means; None if there is none, or more than one."""
        if name not in self._named:
            self._named[name] = self._item(fold(name))
        return self._named[name]

    def _item(self, key: str) -> str | None:
        if key in self._items:
            return self._items[key]
        from kb.reader.names.lexicon import name_words  # noqa: PLC0415

        entries = self.lexicon.names.get("".join(name_words(key)), ())
        items = [entry.id for entry in entries if entry.kind == "item" and entry.rank <= 1]
        return items[0] if len(items) == 1 and len(entries) == 1 else None


def _forms(said: Phrase) -> Iterable[str]:
    texts = [said.clause, said.bare or "", said.attached or ""]
    return [text for text in texts if text] + [
        t.removeprefix("either ") for t in texts if t.startswith("either ")
    ]
