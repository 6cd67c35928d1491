# ruff: noqa: E501  tables read better on one line
"""What goes along with what is told, by the books' own rules."""

from __future__ import annotations

import datetime

import pytest

from kb.model.values import YES, choices
from kb.wording.along import goes_along, goes_along_of
from tests.opening import opened

DAY = datetime.date(2026, 12, 1)


def test_what_is_told_has_the_place_the_task_and_the_grade_that_the_books_give_it() -> None:
    museum, patrol, pool = (opened(book).lookup for book in ("museum", "patrol", "pool"))
    in_hand = goes_along(museum, {"material": choices("paper")}, DAY)
    assert in_hand == {"task": choices("handling", "packing", "installing", "treating")}
    assert "grade" in goes_along(pool, {"on-watch": YES}, DAY)
    # A place is anybody's, and of the weather nothing goes without saying.
    assert "grade" not in goes_along(pool, {"place": choices("lido")}, DAY)
    assert goes_along(patrol, {"weather": choices("whiteout")}, DAY) == {}
    assert goes_along(patrol, {"light": choices("day")}, DAY) == {}


def test_what_the_books_say_of_a_thing_in_what_is_told_is_said_of_a_place() -> None:
    patrol = opened("patrol").lookup
    snowing = {"weather": choices("snowing")}
    assert "place" in goes_along_of(patrol, snowing, ("goggles",), DAY)
    assert goes_along_of(patrol, snowing, ("fleece",), DAY) == {}
    assert "place" in goes_along_of(patrol, {"moving": choices("foot")}, ("vest",), DAY)


@pytest.mark.parametrize(
    ("book", "question", "headline"),
    [
        # A thing is left off in the rigs in which it is a duty; what would be so in another is said as well.
        ("cathedral", "Can a Steward take the blazer off when it's 28 degrees?", "Yes, in floor dress: the navy blazer may be left off, unless the wearer is in the Bishop's presence;"),
        ("cathedral", "It's 28 degrees and the Bishop is here. Can I leave my blazer off, I'm a Steward?", "No, in floor dress: the navy blazer must be worn;"),
        ("museum", "It's 26 degrees in the long gallery. Can I take my blazer off?", "Yes. The slate blazer need not be worn; it must not be if the wearer is in evening dress."),
        ("firebrigade", "Do I need the high-vis?", "It depends"),
        # Degrees that a rule names are told of its place and task; without them it stays open.
        ("racecourse", "Going's been declared heavy. As a rider do I have to have goggles?", "Yes. The clear goggles must be worn when the wearer is riding in a race; otherwise the books are silent."),
        ("racecourse", "As a rider do I have to have goggles?", "It depends on the activity and the going"),
        # One grade or branch of many is named as the exception, but where they are several it depends.
        ("zoo", "In yard dress and the air is 26 °C in the middle of October. Are work shorts ok?", "Yes. The work shorts may be worn, unless "),
        ("quarry", "wedding ring under my gloves, fine?", "It depends on the wearer's grade"),
        ("museum", "Do I need gloves for books?", "No: the nitrile gloves need not be worn; when "),
        ("museum", "Are cotton gloves OK for a gilded frame?", "Yes. The cotton gloves may be worn, unless "),
        ("pool", "Sunglasses on watch at the lido in bright sun?", "Yes: the sunglasses must be worn; they need not be if the wearer is not a guard"),
        ("pool", "do kiosk staff need a name badge", "Yes, in front of house dress. The name badge must be worn, unless "),
        ("patrol", "do I have to wear goggles when it's snowing", "Yes. The goggles must be worn, unless the wearer is not on snow."),
        ("patrol", "Can I wear my softshell on the train home?", "Yes. The softshell may be worn, unless the wearer is on shift or in a bar;"),
        ("quarry", "I'm walking across the yard in thick fog. Do I need the vest?", "Yes. The high-visibility vest must be worn, unless the wearer is indoors or "),
        # Who is on watch at no time in particular is told of nobody's sunglasses.
        ("pool", "Sunglasses at the lido in bright sun?", "Yes. The sunglasses may be worn"),
        ("racecourse", "Can I have an umbrella in the rain?", "It depends on the place, the wearer's grade and "),
        ("quarry", "Do I need the vest in the yard?", "It depends on "),
    ],
)  # fmt: skip
def test_headlines_lead_with_what_goes_along(book: str, question: str, headline: str) -> None:
    answer = opened(book).ask(question, as_of=DAY)[0]
    assert answer.headline.startswith(headline)
