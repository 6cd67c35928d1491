"""Questions put otherwise keep their answer; those turned round or about another thing have the one computed.

Every question of the open half that is answered rightly is put in other words that mean the same (another
label, an equal measure, a slip of the keys, the circumstance first, the other spelling, capitals, manners).
A reading may be lost to that now and then, never changed: what is answered then is the same verdict with the
same values from the same clauses.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import NamedTuple

import msgspec
import pytest

from kb import Answer, KnowledgeBase, Reading, UsageError
from kb.model.questions import Query
from kb.model.values import ValueSet
from kb.reader.meaning.fits import wearing
from kb.reader.names.spelling import near_words
from kb.reader.words.common_words import COMMON_WORDS
from kb.reader.words.tokens import tokenize
from kb.reasoner import Facts
from kb.wording import say_query
from tests.opening import opened
from tests.reading.judging import judge
from tests.reading.sheets import Asked, questions

pytestmark = pytest.mark.slow


class Right(NamedTuple):
    """A question that is answered rightly, with its answer."""

    base: KnowledgeBase
    asked: Asked
    facts: Facts
    answer: Answer

    def read(self, text: str) -> Reading:
        answers = self.base.ask(text, facts=self.facts, as_of=self.asked.as_of)
        if len(answers) == 1:
            return answers[0].reading
        return self.base.read(text, facts=self.facts, as_of=self.asked.as_of)


@pytest.fixture(scope="module")
def right() -> list[Right]:
    found = []
    for name in ("demo", "second", "third", "fourth"):
        base = opened(name)
        for asked in questions(name, "open"):
            facts = tuple(_facts(base, asked))
            answers = base.ask(asked.text, facts=facts, as_of=asked.as_of)
            told = len(answers) == 1 and answers[0].outcome == "answer"
            if told and judge(answers[0], asked, base.lookup).mark == "right":
                found.append(Right(base, asked, facts, answers[0]))
    return found


def _facts(base: KnowledgeBase, asked: Asked) -> Iterator[tuple[str, ValueSet]]:
    for name, value in asked.facts:
        try:
            yield base.fact(name, value)
        except UsageError:
            continue


# -- the same question in other words -------------------------------------------------------------------


def _other_label(one: Right) -> Iterator[str]:
    """Each name of an item in its label's place, as long as the books give the name to one thing."""
    lookup, text = one.base.lookup, one.asked.text
    owners: dict[str, set[str]] = {}
    for item in lookup.base.items:
        for name in (item.label, *item.other_labels, *item.everyday):
            owners.setdefault(name.casefold(), set()).add(item.id)
    for span in one.answer.reading.spans:
        if span.role != "item" or span.target not in lookup.items or span.how != "label":
            continue
        item = lookup.items[span.target]
        if span.text.casefold() not in {name.casefold() for name in (item.label, *item.other_labels)}:
            continue  # in another number, or cut short
        for name in (item.label, *item.other_labels):
            if name.casefold() != span.text.casefold() and owners[name.casefold()] == {item.id}:
                yield text[: span.start] + name + text[span.end :]
                break


_MM = re.compile(r"\b(\d+) ?mm\b")
_CM = re.compile(r"\b(\d+) ?cm\b")
_INCHES = re.compile(r"\b(\d+(?: \d+/\d+)?) ?inch(?:es)?\b")


def _equal_measure(one: Right) -> Iterator[str]:
    """Millimetres as centimetres and as inches, centimetres and inches as millimetres."""
    text = one.asked.text
    for found in _MM.finditer(text):
        yield f"{text[: found.start()]}{int(found[1]) / 10:g} cm{text[found.end() :]}"
        inches = Fraction(int(found[1]) * 10, 254)
        yield f"{text[: found.start()]}{inches.numerator}/{inches.denominator} in{text[found.end() :]}"
    for found in _CM.finditer(text):
        yield f"{text[: found.start()]}{int(found[1]) * 10} mm{text[found.end() :]}"
    for found in _INCHES.finditer(text):
        millimetres = sum(map(Fraction, found[1].split()), Fraction(0)) * Fraction(254, 10)
        yield f"{text[: found.start()]}{float(millimetres):g} mm{text[found.end() :]}"


def _slip(one: Right) -> Iterator[str]:
    """Two letters of a long word changed over, where that makes no other word."""
    for token in tokenize(one.asked.text):
        word = token.text
        if len(word) < 8 or not word.isalpha() or not word.islower():
            continue
        middle = len(word) // 2
        slipped = word[:middle] + word[middle + 1] + word[middle] + word[middle + 2 :]
        near = near_words(slipped, one.base.lexicon)
        if slipped != word and slipped not in COMMON_WORDS and near in ((token.key,), (word,)):
            yield one.asked.text[: token.start] + slipped + one.asked.text[token.end :]
            return


def _doubled(one: Right) -> Iterator[str]:
    """A letter of a long word written twice."""
    for token in tokenize(one.asked.text):
        word, middle = token.text, len(token.text) // 2
        if len(word) > 6 and word.isalpha() and word.islower():
            doubled = word[:middle] + word[middle] + word[middle:]
            yield one.asked.text[: token.start] + doubled + one.asked.text[token.end :]


_LAST = re.compile(r"(?P<main>.*\S) (?P<lead>in|on|at|with|when|during|for|while) (?P<rest>[^,.;?]+)\?")


def _circumstance_first(one: Right) -> Iterator[str]:
    """ "In boat rig, may I wear it?" for "May I wear it in boat rig?", where it is all of the end."""
    text = one.asked.text
    found = _LAST.fullmatch(text)
    spans = one.answer.reading.spans
    if found is None or re.search(r"[.;:,?]", found["main"]):
        return
    inside = [s for s in spans if s.start >= found.start("rest") and s.role not in ("filler", "structure")]
    if inside and all(span.role in ("fact", "date") for span in inside):
        main = found["main"]
        lowered = main if main.startswith("I ") else main[0].lower() + main[1:]
        yield f"{found['lead'].capitalize()} {found['rest']}, {lowered}?"


_SPELT = (
    ("colour", "color"), ("grey", "gray"), ("jewellery", "jewelry"), ("moustache", "mustache"),
    ("authoris", "authoriz"), ("travelling", "traveling"), ("metre", "meter"), ("centre", "center"),
)  # fmt: skip


def _spelt_otherwise(one: Right) -> Iterator[str]:
    for british, american in _SPELT:
        for written, other in ((british, american), (american, british)):
            if re.search(rf"\b{written}", one.asked.text):
                yield re.sub(rf"\b{written}", other, one.asked.text)


def _capitals(one: Right) -> Iterator[str]:
    yield one.asked.text.upper()


def _politely(one: Right) -> Iterator[str]:
    text = one.asked.text
    yield f"Excuse me, {text[0].lower() + text[1:] if not text.startswith('I') else text}"
    if text.endswith("?") and not re.search(r"[.;:,?]", text[:-1]):
        yield f"{text[:-1]}, please?"
        yield f"Hello. {text} Thanks."


def _led_in(one: Right) -> Iterator[str]:
    text = one.asked.text
    lowered = text if text.startswith("I") else text[0].lower() + text[1:]
    yield f"So {lowered}"
    yield f"Ok, {lowered}"
    yield f"I was wondering, {lowered}"


def _other_signs(one: Right) -> Iterator[str]:
    """Typeset apostrophes, and more room between words."""
    if "'" in one.asked.text:
        yield one.asked.text.replace("'", "\u2019")
    yield "  " + one.asked.text.replace(" ", "  ")


OTHERWISE: dict[str, tuple[Callable[[Right], Iterator[str]], int, int]] = {
    # how it is put otherwise, at least so many that can be, at most so many readings lost
    "another label": (_other_label, 200, 2),
    "an equal measure": (_equal_measure, 12, 0),
    "a slip of the keys": (_slip, 100, 2),
    "the circumstance first": (_circumstance_first, 35, 5),  # a verb in another place, of four services
    "the other spelling": (_spelt_otherwise, 15, 1),
    "capitals": (_capitals, 350, 3),  # a name ("Bob reckons") is known by its capital
    "politely": (_politely, 700, 3),
    "a letter twice": (_doubled, 300, 24),
    "with words that lead in": (_led_in, 1000, 5),
    "with other signs": (_other_signs, 400, 2),
}


def _said(answer: Answer) -> tuple[object, ...]:
    """What an answer says: verdict, values and clauses, and what becomes of each thing in a list."""
    return (
        answer.verdict,
        [(case.label, case.verdict, [value.label for value in case.values]) for case in answer.cases],
        [(entry.item, entry.verdict, entry.condition) for entry in answer.entries],
        [(citation.edition, citation.number) for citation in answer.citations],
    )


def _is_lost(one: Right, text: str) -> str | None:
    """What became of a question put otherwise: "" if it is answered alike, None if it is not answered.

    A clause that is only shown, to be read, is no answer to what was answered, nor the other way round.
    """
    before = one.answer.reading.query
    if one.base.read(text, facts=one.facts, as_of=one.asked.as_of).query == before:
        return ""
    reading = one.read(text)  # what is answered in place of the question as it is read
    if reading.query is None:
        return None
    if reading.query == before:
        return ""
    if before is not None and (reading.query.clause is None) != (before.clause is None):
        return None
    other = one.base.answer(reading)
    return "" if _said(other) == _said(one.answer) else f"{text!r} is read as {reading.text!r}"


@pytest.mark.parametrize("way", OTHERWISE)
def test_a_question_put_otherwise_has_the_same_answer(right: list[Right], way: str) -> None:
    put, at_least, most = OTHERWISE[way]
    became = [(text, _is_lost(one, text)) for one in right for text in put(one)]
    assert len(became) >= at_least
    assert [what for _, what in became if what] == []
    lost = [text for text, what in became if what is None]
    assert len(lost) <= most, lost


# -- the act turned round, and another thing ------------------------------------------------------------

_WEAR = re.compile(
    r"^(.*?(?:may|can|could|allowed to|ok to|all right to|need to|have to|must)\b.*?) wear (.*)$", re.I
)


def _turned(one: Right) -> Iterator[tuple[str, Query]]:
    """The question of going without, by its words and as computed."""
    query, found = one.answer.reading.query, _WEAR.match(one.asked.text)
    acts = query is not None and query.kind in ("may", "must") and query.aspect == "wear"
    plain = query is not None and acts and query.value is None and not query.modalities
    if query is None or found is None or not plain or query.polarity != "do" or query.case.alone:
        return
    turned = msgspec.structs.replace(query, polarity="not")
    for act in ("go without", "leave off"):
        yield f"{found[1]} {act} {found[2]}", turned


def _of_another_thing(one: Right) -> Iterator[tuple[str, Query]]:
    """The question about a thing that has nothing to do with the one asked about, and as computed."""
    query, lookup, text = one.answer.reading.query, one.base.lookup, one.asked.text
    named = [span for span in one.answer.reading.spans if span.role == "item"]
    if (
        query is None
        or query.kind not in ("may", "must")
        or len(named) != 1
        or query.items != (named[0].target,)
    ):
        return
    if query.aspect != wearing(query.items, lookup) or query.value is not None or query.modalities:
        return
    if any(span.role == "measure" for span in one.answer.reading.spans):  # "one harness" is no one gloves
        return
    others = [i for i in lookup.base.items if i.broader and len(lookup.narrower(i.id)) == 1 and not i.part_of]
    start = sum(map(ord, text)) % len(others)
    for item in (*others[start:], *others[:start]):
        akin = set(lookup.broader(item.id)[:-2]) & set(lookup.broader(query.items[0]))
        worn = {fact for fact, _ in query.case.facts} & {f"worn:{item.id}"}
        same_act = wearing((item.id,), lookup) == query.aspect
        if same_act and not akin and not worn and item.id not in query.items:
            swapped = msgspec.structs.replace(query, items=(item.id,))
            yield text[: named[0].start] + item.label + text[named[0].end :], swapped
            return


def _asks_if_it_is(reading: Reading, computed: Query, one: Right) -> bool:
    """Whether it is asked back if the question as computed is the one."""
    return reading.ask is not None and [said for said, _ in reading.ask.choices] == [
        say_query(one.base.lookup, computed)
    ]


@pytest.mark.parametrize(("change", "at_least", "most"), [(_turned, 30, 0), (_of_another_thing, 150, 6)])
def test_what_changes_the_question_changes_the_answer_as_computed(
    right: list[Right],
    change: Callable[[Right], Iterator[tuple[str, Query]]],
    at_least: int,
    most: int,
) -> None:
    became = []
    for one in right:
        for text, computed in change(one):
            reading = one.read(text)
            if reading.beside:  # what is told beside, where the books are silent on what was asked
                reading = one.base.read(text, facts=one.facts, as_of=one.asked.as_of)
            if reading.query is not None and reading.query.clause is not None:
                continue  # a clause is shown: "is there a way round ..."
            if _asks_if_it_is(reading, computed, one):
                continue  # what was said around the other thing speaks of another clause
            if reading.query is None or reading.query == computed:
                became.append((text, "" if reading.query is not None else None))
                continue
            answers = [
                one.base.answer(msgspec.structs.replace(reading, query=q)) for q in (reading.query, computed)
            ]
            alike = _said(answers[0]) == _said(answers[1])
            became.append((text, "" if alike else f"{text!r} is read as {reading.text!r}"))
    assert len(became) >= at_least
    assert [what for _, what in became if what] == []
    lost = [text for text, what in became if what is None]
    assert len(lost) <= most, lost
