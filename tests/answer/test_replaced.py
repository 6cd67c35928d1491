"""How often a thing is replaced: by the clause that says it of this thing, and silent where none does."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask


@pytest.mark.parametrize(
    ("name", "question", "clause"),
    [
        # "The navy jersey is replaced every two years"
        ("cadets", "How often do I get a new jersey?", "6.1"),
        # "The safety helmet must be worn ... It is replaced after any heavy blow and ... every 5 years."
        ("ambulance", "How often is the safety helmet replaced?", "3.2"),
        # "Boots are replaced every two years, all else when worn out."
        ("zoo", "How often do helpers get a new bib?", "7.1"),
        # "Safety shoes are issued to porters and replaced every twelve months"
        ("infirmary", "How often do porters get new safety shoes?", "7.1"),
        # "The filters of the half mask are replaced each month"
        ("quarry", "how often do the mask filters get changed", "6.2"),
        # "These are changed after every case"
        ("undertakers", "How often are the nitrile gloves changed?", "5.2"),
    ],
)
def test_the_clause_that_says_it_is_shown(ask: Ask, name: str, question: str, clause: str) -> None:
    answer = ask(name, question)
    assert (answer.outcome, answer.verdict) == ("answer", None)
    assert [citation.number for citation in answer.citations] == [clause]


@pytest.mark.parametrize(
    ("name", "question", "said", "clause"),
    [
        ("shipyard", "How often do I get new boiler suits?", "must be replaced every 12 months", "6.1"),
        ("quarry", "How often do we replace the hard hats?", "must be replaced every five years", "6.2"),
    ],
)
def test_where_a_rule_says_how_often_it_answers(
    ask: Ask, name: str, question: str, said: str, clause: str
) -> None:
    answer = ask(name, question)
    assert answer.verdict == "required"
    assert said in answer.headline
    assert clause in [citation.number for citation in answer.citations]


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("cadets", "How often is the river cap replaced?"),  # its clause says it of the jersey alone
        ("cadets", "How often do we get new deck shoes?"),  # they are bought by the cadet
        ("creamery", "How often do I get new yard boots?"),  # white boots are replaced
        ("ambulance", "How often does the fleece jacket get replaced?"),
        (
            "airferry",
            "How often do we get a new greatcoat?",
        ),
        (
            "forest",
            "How often do I get new moss trousers if I don't rip them?",
        ),
        ("undertakers", "How often do I get a new top hat if I look after it?"),
        ("firebrigade", "When do I get a new station shirt?"),  # "Clause 2.6 is replaced" is of no shirt
        ("patrol", "When do I get a new fleece?"),  # "if they leak" is of shell jackets
    ],
)
def test_the_books_are_silent_where_no_clause_says_it(ask: Ask, name: str, question: str) -> None:
    answer = ask(name, question)
    assert (answer.outcome, answer.verdict) == ("answer", "silent")
    assert answer.headline.startswith("The books are silent: no clause says how often to replace the ")
    assert ask(name, answer.reading.text).headline == answer.headline


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("infirmary", "Who pays for the navy outdoor coat, me or the infirmary?"),
        ("museum", "Who pays for the black suit, me or the museum?"),
        ("pool", "Who pays for the swimming costume?"),
    ],
)
def test_the_books_are_silent_where_no_clause_says_who_pays(ask: Ask, name: str, question: str) -> None:
    answer = ask(name, question)
    assert (answer.outcome, answer.verdict) == ("answer", "silent")
    assert answer.headline.startswith("The books are silent: no clause says who pays for the ")
    assert ask(name, answer.reading.text).headline == answer.headline


def test_what_is_said_of_all_kit_is_not_silence(ask: Ask) -> None:
    """ "Kit that is worn out is ... replaced": the books do say something of it."""
    assert ask("demo", "How often is the boat helmet replaced?").verdict != "silent"
    assert ask("cadets", "How often do I wash my jersey?").verdict != "silent"


@pytest.mark.parametrize(
    ("name", "question", "clause"),
    [
        # "A helmet is replaced after any hard knock and at the latest after five years"
        ("patrol", "My helmet's six years old but it's never had a knock. Can I go on wearing it?", "6.2"),
        ("patrol", "My helmet took a knock on Friday. Can I keep it?", "6.2"),
        # "The fire helmet is replaced after ten years or after any heavy blow"
        ("firebrigade", "My fire helmet is eleven years old. Must it be replaced?", "6.3"),
        ("quarry", "A lump of stone came down on my hard hat. Do I still have to change it?", "6.2"),
        ("playhouse", "A spanner came down on my hard hat. Do I have to get a new one?", "7.2"),
        ("shipyard", "I dropped my hard hat. Is it still ok?", "6.1"),
        # "the overcoat every five years"; what is "worn out of doors with the overcoat" is not
        ("tramway", "My overcoat is six years old. Can I carry on wearing it?", "7.1"),
    ],
)
def test_what_is_old_or_struck_has_the_clause_on_replacing_it(
    ask: Ask, name: str, question: str, clause: str
) -> None:
    answer = ask(name, question)
    assert (answer.outcome, answer.verdict) == ("answer", None)
    assert [citation.number for citation in answer.citations] == [clause]


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("firebrigade", "My fire helmet is eleven years old. Can I put a sticker on it?"),  # of the sticker
        ("patrol", "My son is six years old. Does he need a helmet on skis?"),  # it is not the helmet's age
        ("quarry", "My grey hard hat is two years old, can I still wear it?"),  # which is worn no more
        ("school", "My boots fell off the shelf. Can I wear them in the workshop?"),
    ],
)
def test_another_question_is_not_one_of_replacing(ask: Ask, name: str, question: str) -> None:
    assert not ask(name, question).reading.text.startswith("What does clause")
