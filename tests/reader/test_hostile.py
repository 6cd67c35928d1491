"""Text that is no question is refused clearly and quickly; nothing raises."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.reader import read_statement, split_questions
from tests.reader.conftest import Base
from tests.reader.test_questions import outcomes

HOSTILE = [
    "",
    "   ",
    "?",
    "?!?!...,;:",
    "🙂🙂🙂",
    "\x00\x1b[31m\x07",
    "\u202e\u200b",
    "may " * 20_000,
    "a" * 100_000,
    "(" * 5_000,
    "sash " * 119,
    "not " * 110 + "sash",
    "may I wear the sash with the sash with the sash over the sash without the sash",
    "K" + "5" * 900,
    "may I wear the sash at " + "9" * 400 + " in",
    "clause " + "1." * 200,
    "S1 to S2 to S3 to C1 but not S2 but not S3 and above below at least",
    "granted by by by the the Chapter shirtsleeves not not granted",
    "between and to from until S2",
    "what who where how why when which",
    "' OR 1=1; DROP TABLE rules; --",
    "[red]sash[/red] {{7*7}} ${x} <script>",
]


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
def test_hostile_text(choir: Base, text: str) -> None:
    choir.read("may I wear the robe")
    reading = choir.read(text)
    assert outcomes(reading) == 1
    read_statement(text, lexicon=choir.lexicon, lookup=choir.lookup)
    split_questions(text)


@pytest.mark.parametrize("text", HOSTILE[:10], ids=range(10))
def test_no_question_is_refused(choir: Base, text: str) -> None:
    reading = choir.read(text)
    assert reading.abstain is not None
    assert reading.abstain.reason


def test_hidden_characters_do_not_reach_the_reason(choir: Base) -> None:
    reading = choir.read("may I wear the \x1b[31mcloak\u202e?")
    assert reading.abstain is not None
    assert all(c.isprintable() for c in reading.abstain.reason)


WORDS = st.sampled_from(
    [
        "may",
        "must",
        "can",
        "not",
        "I",
        "you",
        "the",
        "a",
        "sash",
        "robe",
        "hood",
        "gloves",
        "S2",
        "cantors",
        "novice",
        "in",
        "gala",
        "dress",
        "nave",
        "outdoors",
        "with",
        "without",
        "alone",
        "only",
        "and",
        "or",
        "to",
        "from",
        "above",
        "below",
        "at",
        "least",
        "granted",
        "by",
        "Chapter",
        "shirtsleeves",
        "2",
        "in",
        "1/2",
        "high",
        "wide",
        "where",
        "how",
        "many",
        "who",
        "what",
        "when",
        "why",
        "if",
        "wear",
        "own",
        "carry",
        "leave",
        "off",
        "but",
        "except",
        "between",
        ",",
        "-",
        "2025-03-01",
        "clause",
        "1.2",
        "red",
        "cape",
    ]
)


@settings(max_examples=300, deadline=None)
@given(st.lists(WORDS, max_size=14))
def test_any_words_have_one_outcome(words: list[str]) -> None:
    base = _choir()
    reading = base.read(" ".join(words))
    assert outcomes(reading) == 1


def _choir() -> Base:
    if not _LOADED:
        from tests.reader.conftest import HERE, load

        _LOADED.append(load(HERE / "base"))
    return _LOADED[0]


_LOADED: list[Base] = []


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=60))
def test_any_text_has_one_outcome(text: str) -> None:
    assert outcomes(_choir().read(text)) == 1


SPLIT = [
    ("May I wear a sash? Must I wear a robe?", ("May I wear a sash?", "Must I wear a robe?")),
    ("May I wear a sash", ("May I wear a sash",)),
    ("May I wear a sash, and must I wear a robe?", ("May I wear a sash", "must I wear a robe?")),
    ("What does clause 1.2 say? And 1.3?", ("What does clause 1.2 say?", "And 1.3?")),
    ("Is a strip of 1.5 in. ok? Thanks.", ("Is a strip of 1.5 in. ok? Thanks.",)),
    ("May a K5 wear gloves and a cap?", ("May a K5 wear gloves and a cap?",)),
    ("May I wear a sash\nMust I wear a robe", ("May I wear a sash", "Must I wear a robe")),
    ("I am a K5. May I wear a cap?", ("I am a K5. May I wear a cap?",)),
    ("May I wear a cap? And a belt? I am a K5.", ("May I wear a cap?", "And a belt? I am a K5.")),
    ("storm coat\ncap", ("storm coat", "cap")),
    ("??", ()),
]


@pytest.mark.parametrize(("text", "expected"), SPLIT)
def test_split(text: str, expected: tuple[str, ...]) -> None:
    assert split_questions(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "having last year order to on the arm aboard the pilot boat around their eye",
        "may I wear the tarred smock on 2 October get done for 2026?",
        "may I wear the old pattern pilot's badge, awarded before 1 April member 2019",
        "what is the order of precedence on parade in January",
    ],
)
def test_no_day_is_put_in_place_again_and_again(demo: Base, text: str) -> None:
    assert outcomes(demo.read(text)) == 1


SENT = [
    "\x1b[31m",
    "\x1b[0m",
    "\x9b31m",
    "\x1b]0;a sash 30 mm\x07",
    "\x1b]8;;https://x.example\x1b\\",
    "\x1b(B",
    "\x1bM",
]


@pytest.mark.parametrize("sent", SENT, ids=ascii)
def test_what_is_meant_for_a_terminal_is_no_part_of_a_question(choir: Base, sent: str) -> None:
    plain = choir.read("May the sash be 2 cm wide?")
    for text in (f"{sent}May the sash be 2 cm wide?", f"May the {sent}sash be{sent} 2 cm wide?{sent}"):
        reading = choir.read(text)
        assert reading.query == plain.query
        assert [span.text for span in reading.spans if span.role == "measure"] == ["2 cm"]


def test_a_sequence_that_does_not_end_hides_nothing(choir: Base) -> None:
    assert choir.read("May I wear the \x1b]0;sash?").query is None or "sash" in choir.read("\x1b]0;sash").text
