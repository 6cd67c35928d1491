"""What each line makes of a session."""

from __future__ import annotations

import datetime
from typing import Any

import msgspec
import pytest

from kb.model.lookup import Lookup
from kb.model.records import FactValue, Group
from kb.model.values import choices
from shell.plain import render_plain
from shell.session import Session, merge
from shell.turns import Reply, take_line
from shell.words import brief
from tests.shell.fake_books import AT
from tests.shell.fakes import FakeBase


def talk(base: Any, *lines: str, session: Session | None = None) -> tuple[Session, Reply]:
    session, reply = session or Session(), Reply()
    for line in lines:
        session, reply = take_line(session, line, base)
    return session, reply


def said(reply: Reply) -> str:
    return render_plain(reply.blocks, 80) + reply.text + reply.complaint


def test_a_profile_is_kept_and_sent_with_each_question(base: FakeBase) -> None:
    session, reply = talk(base, "I am a K5 in boat rig")
    assert session.profile == (("grade", choices("K5")), ("rig", choices("boat-rig")))
    assert "K5" in said(reply)
    talk(base, "May I wear the coat?", session=session)
    assert base.asked[-1]["facts"] == session.profile


def test_facts_are_told_in_few_words(base: FakeBase) -> None:
    lookup = base.lookup
    grades = Group(id="keepers", label="keepers", fact="grade", members=("K4", "K5"), at=AT)
    weather = lookup.facts["weather"]
    rain = FactValue(id="rain", label="rain", within="foul", at=AT)
    wider = msgspec.structs.replace(weather, values=(*weather.values, rain))
    facts = tuple(wider if fact.id == "weather" else fact for fact in lookup.base.facts)
    base.lookup = Lookup(msgspec.structs.replace(lookup.base, groups=(grades,), facts=facts))
    for values, told in (
        (("grade", choices("K4", "K5")), "keepers"),
        (("grade", choices("K4")), "K4"),
        (("weather", choices("foul", "rain")), "foul weather"),
        (("weather", choices("fair", "rain")), "fair weather or rain"),
        (("hauling", choices("yes")), "hauling lines"),
        (("hauling", choices("no")), "hauling lines: no"),
    ):
        assert brief((values,), base) == told  # type: ignore[arg-type]


def test_a_later_statement_replaces_the_same_fact_only(base: FakeBase) -> None:
    session, _ = talk(base, "I am a K5 in boat rig", "remember K4")
    assert dict(session.profile) == {"grade": choices("K4"), "rig": choices("boat-rig")}


def test_a_statement_before_a_question_is_remembered_first(base: FakeBase) -> None:
    session, reply = talk(base, "I am a K5. May I wear the coat?")
    assert session.profile == (("grade", choices("K5")),)
    assert base.asked[-1] | {"previous": None} == {
        "text": "May I wear the coat?",
        "facts": session.profile,
        "as_of": None,
        "previous": None,
    }
    assert "PERMITTED" in said(reply)


@pytest.mark.parametrize("text", ["weather fair", "Fair!", "fair weather.", "fair"])
def test_a_reply_may_be_some_words_of_one_choice(text: str, base: FakeBase) -> None:
    session, _ = talk(base, "May I wear the liner?", text)
    assert session.replies == (("weather", choices("fair")),)


def test_a_word_of_several_choices_is_not_guessed(base: FakeBase) -> None:
    _, reply = talk(base, "May I wear the liner?", "weather")
    assert "none of the choices" in reply.complaint


def test_what_goes_on_from_an_earlier_question_follows_the_profile_and_the_day(base: FakeBase) -> None:
    session, _ = talk(base, "May I wear the coat?", "I am a K4", "as of 2025-03-01", "and the badge?")
    before = base.asked[-1]["previous"]
    assert dict(before.query.case.facts)["grade"] == choices("K4")
    assert before.query.case.as_of == datetime.date(2025, 3, 1)
    talk(base, "forget grade", "and the coat?", session=session)
    assert "grade" not in dict(base.asked[-1]["previous"].query.case.facts)


def test_one_fact_or_all_can_be_forgotten(base: FakeBase) -> None:
    session, _ = talk(base, "I am a K5 in boat rig", "as of 2026-06-01", "forget rig")
    assert [name for name, _ in session.profile] == ["grade"]
    session, reply = talk(base, "forget weather", session=session)
    assert "not remembered" in reply.complaint
    session, reply = talk(base, "forget", session=session)
    assert session.profile == ()
    assert session.as_of == datetime.date(2026, 6, 1)
    assert "nothing" in said(reply)


def test_a_reply_fills_the_missing_fact_and_answers_again(base: FakeBase) -> None:
    session, reply = talk(base, "May I wear the liner?")
    assert "What is the weather?" in said(reply)
    session, reply = talk(base, "foul", session=session)
    assert "PERMITTED" in said(reply)
    assert base.asked[-1]["text"] == "May I wear the liner?"
    assert dict(base.asked[-1]["facts"])["weather"] == choices("foul")
    assert session.profile == (), "a reply is not part of the profile"


def test_what_is_no_reply_is_a_new_question(base: FakeBase) -> None:
    session, _ = talk(base, "May I wear the liner?")
    talk(base, "May I wear the coat in fair weather?", session=session)
    assert base.asked[-1]["text"] == "May I wear the coat in fair weather?"
    assert base.asked[-1]["previous"] == session.answers[-1].reading


def test_a_reply_that_misses_is_asked_for_again(base: FakeBase) -> None:
    before, _ = talk(base, "May I wear the liner?")
    after, reply = talk(base, "purple", session=before)
    assert after == msgspec.structs.replace(before, missed=after.missed)
    assert reply.complaint == "That is none of the choices."
    assert "What is the weather?" in said(reply)
    session, _ = talk(base, "foul", session=after)
    assert session.answers[-1].verdict == "permitted"


def test_a_few_words_that_are_no_reply_may_still_be_a_question(base: FakeBase) -> None:
    session, _ = talk(base, "May I wear the liner?", "the badge")
    assert session.question == "the badge"
    assert session.answers[-1].verdict == "conflict"


def test_what_is_not_understood_leaves_the_last_answer_in_place(base: FakeBase) -> None:
    before, _ = talk(base, "May I wear the coat?")
    after, reply = talk(base, "May I wear the florgle?", session=before)
    assert "NOT ANSWERED" in said(reply)
    assert after == msgspec.structs.replace(before, missed=after.missed)
    assert after.missed is not None
    assert after.missed.question == "May I wear the florgle?"


def test_a_question_starts_without_the_replies_of_the_one_before(base: FakeBase) -> None:
    talk(base, "May I wear the liner?", "foul", "May I wear the coat?")
    assert base.asked[-1]["facts"] == ()


def test_the_day_goes_with_the_question_and_can_go_back(base: FakeBase) -> None:
    session, reply = talk(base, "as of 2025-03-01", "May I wear the coat?")
    assert base.asked[-1]["as_of"] == datetime.date(2025, 3, 1)
    assert "For the day: " in said(reply)
    session, reply = talk(base, "as of today", "May I wear the coat?", session=session)
    assert session.as_of is None
    assert "For the day: " not in said(reply)


@pytest.mark.parametrize(
    ("line", "part"),
    [
        ("why", "Nothing has been answered yet"),
        ("json", "Nothing has been answered yet"),
        ("clause", "as in: clause"),
        ("clause 99.9", "no clause"),
        ("as of 2025-13-01", "not a date"),
        ("as of", "as in: as of"),
        ("query", "as in: query"),
        ("remember purple", "not understood"),
        ("items zzz", "Nothing has that word"),
        ("slow question", "deadline"),
    ],
)
def test_what_cannot_be_done_is_a_complaint_and_changes_nothing(line: str, part: str, base: FakeBase) -> None:
    before, _ = talk(base, "I am a K5")
    after, reply = talk(base, line, session=before)
    assert part in reply.complaint
    assert after == before


def test_why_shows_the_whole_chain(base: FakeBase) -> None:
    _, reply = talk(base, "May I wear the liner ashore?", "why")
    text = said(reply)
    assert "by specificity" in text
    assert "does not apply: the place is afloat" in text
    assert "order/gloves.yaml:12:5" in text


def test_json_clause_items_facts_and_query_show_their_data(base: FakeBase) -> None:
    for line, part in {
        "json": '"permitted"',
        "clause 4.12": "Rules made from it",
        "items coat": "oilskin coat",
        "facts weather": "foul weather",
        "query SELECT * {}": "storm coat",
        "profile": "nothing",
    }.items():
        _, reply = talk(base, "May I wear the coat?", line)
        assert part in said(reply), line


def test_the_worn_facts_are_not_listed(base: FakeBase) -> None:
    _, reply = talk(base, "facts")
    assert "worn" not in said(reply)


def test_a_hostile_line_comes_back_visible(base: FakeBase) -> None:
    _, reply = talk(base, "clause \x1b[31m9")
    assert "\x1b" not in said(reply)


def test_merge_keeps_the_place_of_what_is_replaced() -> None:
    merged = merge((("a", 1), ("b", 2)), (("a", 3), ("c", 4)))
    assert merged == (("a", 3), ("b", 2), ("c", 4))
