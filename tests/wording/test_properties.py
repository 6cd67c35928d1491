"""No sentence, whatever the rule, shows a gap, an id or an unbalanced bracket."""

from __future__ import annotations

import re
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from kb.model.conditions import ALWAYS, AllOf, AnyOf, Condition, NotOf, Test
from kb.model.records import Position, Rule, RuleValue, Scope
from kb.model.values import YES, Choices, Interval, Ranges, ValueSet, choices, ranges
from kb.wording import say_condition, say_query, say_rule, say_verdict
from kb.wording.normal import without_idle
from tests.wording.bases import ASPECTS, ITEMS, rule, words
from tests.wording.test_queries import query
from tests.wording.test_rules import m, pos, pos2

LOOKUP = words()
FACTS = tuple(fact.id for fact in LOOKUP.base.facts)
PLAIN = tuple(item for item in ITEMS if item != "anything")


def values_of(fact: str) -> st.SearchStrategy[ValueSet]:
    domain = LOOKUP.domain(fact)
    if isinstance(domain, Choices):
        return st.sets(st.sampled_from(sorted(domain.members)), min_size=1).map(lambda s: choices(*s))
    bound = st.one_of(st.none(), st.integers(700_000, 740_000) if fact == "awarded" else st.integers(-20, 40))
    return st.tuples(bound, bound).map(_interval)


def _interval(bounds: tuple[int | None, int | None]) -> ValueSet:
    low, high = (None if bound is None else Fraction(bound) for bound in bounds)
    if low is not None and high is not None and low > high:
        low, high = high, low
    return ranges([Interval(low, high)])


TESTS = st.sampled_from(FACTS).flatmap(lambda fact: values_of(fact).map(lambda values: Test(fact, values)))
CONDITIONS: st.SearchStrategy[Condition] = st.recursive(
    TESTS,
    lambda inner: st.one_of(
        st.lists(inner, min_size=1, max_size=4).map(lambda parts: AllOf(tuple(parts))),
        st.lists(inner, min_size=1, max_size=4).map(lambda parts: AnyOf(tuple(parts))),
        inner.map(NotOf),
    ),
    max_leaves=8,
)
VALUES: dict[str, st.SearchStrategy[RuleValue]] = {
    "act": st.just(RuleValue(values=YES)),
    "choice": st.sets(st.sampled_from(["gilt", "silver", "navy"]), min_size=1).map(
        lambda s: RuleValue(values=choices(*s))
    ),
    "measure": st.sampled_from(["about 1 in", "1/4 to 1/2 in", "at most 30 mm", "2.5 cm (1 in)"]).map(m),
    "count": st.sampled_from(["1", "at most 2", "at least 3", "2 to 4"]).map(m),
    "order": st.just(RuleValue(values=choices("x"), order=("diver-badge", "pilot-badge", "bar"))),
    "position": st.lists(st.sampled_from([pos, pos2]), min_size=1, max_size=2, unique_by=lambda p: p.id).map(
        lambda found: RuleValue(values=choices(*(p.id for p in found)), positions=tuple(found))
    ),
}  # fmt: skip


@st.composite
def rules(draw: st.DrawFn) -> Rule:
    aspect = draw(st.sampled_from([a for a in ASPECTS if a.kind != "manner"]))
    modality = draw(st.sampled_from(["must", "must_not", "may", "need_not"]))
    items = draw(st.lists(st.sampled_from(PLAIN), min_size=1, max_size=3, unique=True))
    other = draw(st.one_of(st.none(), st.sampled_from(["one", "any"]))) if len(items) > 1 else None
    excluding = ("storm-coat",) if items == ["outer-garment"] and draw(st.booleans()) else ()
    made = rule(modality, *items, aspect=aspect.id, value=draw(VALUES[aspect.kind]), when=draw(CONDITIONS))  # type: ignore[arg-type]
    scope = Scope(items=tuple(items), excluding=excluding, alternatives=other)  # type: ignore[arg-type]
    fields = {name: getattr(made, name) for name in made.__struct_fields__}
    residual = modality == "must_not" and aspect.id == "wear" and draw(st.booleans())
    return Rule(**{**fields, "scope": scope, "residual": residual})


def check(text: str) -> None:
    """What holds of every sentence."""
    assert not re.search(r"\bNone\b(?! of )", text)
    assert "  " not in text
    assert text == text.strip()
    assert " ," not in text
    assert " ." not in text
    assert ",," not in text
    assert not re.search(r"\b(the|a|an|of|by|with|when|unless|and|or|be) (?=[.,;?]|$)", text)
    assert not re.search(r"\b(the the|a the|the any|the a|of of|when when)\b", text)
    assert not re.search(r"[a-z]:[a-z]", text)
    assert not re.search(r"Choices|Ranges|frozenset|\bp[12]\b|[a-z]-[a-z]+-[a-z]{2,}", text)
    for opened, closed in ("()", "[]", "“”"):
        assert text.count(opened) == text.count(closed)


@settings(max_examples=150, deadline=None)
@given(rules())
def test_every_rule_is_one_whole_sentence(made: Rule) -> None:
    text = say_rule(words(made), made)
    check(text)
    assert text[0].isupper() or text[0].isdigit()
    assert text.endswith((".", ".”"))
    assert re.search(r"\b(must|may|need)\b", text)


@settings(max_examples=100, deadline=None)
@given(CONDITIONS, st.sampled_from(["when", ""]))
def test_every_condition_is_whole(condition: Condition, lead: str) -> None:
    text = say_condition(LOOKUP, condition, lead)
    check(text)
    assert bool(text) is (without_idle(LOOKUP, condition) != ALWAYS)


@settings(max_examples=100, deadline=None)
@given(
    st.sampled_from(
        ["may", "must", "where", "how", "how_many", "who", "when", "list", "why", "compare", "source"]
    ),
    st.sampled_from(PLAIN),
    st.lists(TESTS, max_size=4, unique_by=lambda test: test.fact),
    st.booleans(),
    st.sampled_from(["do", "not"]),
)
def test_every_question_can_be_read_back(
    kind: str, item: str, facts: list[Test], alone: bool, polarity: str
) -> None:
    items = () if kind == "list" else (item,)
    asked = query(kind, *items, facts=tuple(facts), alone=alone, polarity=polarity)  # type: ignore[arg-type]
    text = say_query(LOOKUP, asked)
    check(text)
    assert text.endswith("?")
    if items:
        assert LOOKUP.items[item].label.split()[-1].rstrip(")")[:4] in text
        for verdict in ("required", "permitted", "prohibited", "not_required", "conflict", "silent"):
            check(say_verdict(LOOKUP, verdict, asked))  # type: ignore[arg-type]


def test_positions_without_anything_but_a_garment() -> None:
    bare = Position(id="p1", relation="around", on="cap")
    value = RuleValue(values=choices("p1"), positions=(bare,))
    text = say_rule(LOOKUP, rule("may", "device", aspect="position", value=value))
    assert text == "The cap device may be worn around the service cap."
    assert isinstance(LOOKUP.domain("awarded"), Ranges)
