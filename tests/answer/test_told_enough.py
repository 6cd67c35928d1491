# ruff: noqa: E501  tables read better on one line
"""Where enough is told, the first word is a yes or a no; where it is not, nothing is presumed."""

from __future__ import annotations

import pytest

from tests.answer.conftest import Ask


@pytest.mark.parametrize(
    ("book", "text", "headline"),
    [
        # the rig in which alone a thing has its place: a no holds there, and nothing is allowed elsewhere
        ("racecourse", "It's 22 degrees on the gallops, stable day. Can I leave the exercise jacket off?", "No, in riding-out kit: the exercise jacket must be worn; in any other rig the books are silent."),
        ("hotel", "Chef here. The mincer's running right next to me. Neckerchief?", "No, in working dress. The neckerchief must not be worn; in any other rig the books are silent."),
        ("zoo", "I'm a vet in the clinic. Do I have to wear scrubs?", "Yes, in clinic dress. The scrubs must be worn; in any other rig the books are silent."),
        # whose branch is told is one of those among whom the books look for it
        ("shipyard", "I'm an electrician handling wire. Can I leave my plain wedding ring on under a glove?", "No. The plain wedding ring must not be worn with the handwear when the wearer is in the paint hall or is"),
        ("shipyard", "I'm a rigger. Wedding ring under a glove while handling wire?", "No. The plain wedding ring must not be worn"),
        # in another rig than that of the parade nobody is on parade
        ("cadets", "It's 9 degrees and we're out in river rig. Woolly hat alright?", "Yes. The knitted cap may be worn, unless the wearer is on parade."),
        ("cadets", "On parade in river rig, 9 degrees. Woolly hat alright?", "No. The knitted cap must not be worn."),
        # what is nowhere required is not required, wherever it is forbidden
        ("airferry", "do ramp agents need a name badge", "No clause requires it in this case: the name badge must not be worn when the wearer is on the apron;"),
        ("airferry", "May ramp agents wear a name badge?", "It depends on the place"),
        # leave for a way of carrying a thing is none to have it in a place where it is forbidden
        ("zoo", "I'm a keeper. Cant I take my mobile in the monkey house if its in a closed pocket?", "No. The mobile telephone must not be carried, unless"),
        ("zoo", "As a keeper can I keep my phone in a closed pocket?", "Yes: the mobile telephone must be kept in a closed pocket"),
        # nothing told, nothing presumed
        ("shipyard", "Can I leave my plain wedding ring on under a glove?", "Only when the wearer is a yard grade"),
        ("cadets", "It's 9 degrees. Woolly hat alright?", "It depends on"),
    ],
)  # fmt: skip
def test_first_words(ask: Ask, book: str, text: str, headline: str) -> None:
    assert ask(book, text).headline.startswith(headline)


@pytest.mark.parametrize(
    ("book", "text", "reading"),
    [
        ("zoo", "No lorries are moving in the service yard. Do I need the hi vis?", "Must anyone wear the high-visibility vest, in the service yard, not near moving vehicles?"),
        ("zoo", "Nothing moving in the service yard. Do I need the hi vis?", "Must anyone wear the high-visibility vest, in the service yard, not near moving vehicles?"),
        ("zoo", "Lorries are moving in the service yard. Do I need the hi vis?", "Must anyone wear the high-visibility vest, in the service yard, near moving vehicles?"),
        ("shipyard", "A guard rail is fitted along the edge of the open water. Do we still need life jackets?", "Must anyone wear the life jacket, over or beside open water, behind a guard rail?"),
        ("shipyard", "There's no guard rail along the edge of the open water. Do we need life jackets?", "Must anyone wear the life jacket, over or beside open water, not behind a guard rail?"),
        ("racecourse", "Horses in the paddock. Umbrella?", "May anyone carry the umbrella, in the paddock, horses present?"),
        ("ambulance", "The sun has set and we're outdoors. Do I need the hi viz jacket?", "Must anyone wear the high-visibility jacket, not indoors, between sunset and sunrise?"),
        ("ambulance", "My radio isn't working. Can I use my mobile in front of a patient?", "May anyone use the private mobile phone, in front of a patient, without a working radio?"),
        ("creamery", "I walk across the tanker yard every day. Do I need the hi-vis vest?", "Must anyone wear the hi-vis vest, in the tanker yard, on foot?"),
    ],
)  # fmt: skip
def test_how_things_stand_in_other_words(ask: Ask, book: str, text: str, reading: str) -> None:
    assert ask(book, text).reading.text == reading


@pytest.mark.parametrize(
    ("book", "text", "untold"),
    [
        ("racecourse", "I've fed the horses. Can I carry an umbrella in the paddock?", "horses present"),
        ("ambulance", "My radio's fine. Can I use my mobile in front of a patient?", "without a working radio"),
        ("ambulance", "The sun hasn't gone down. Do I need the hi viz jacket outdoors?", ", between sunset"),
    ],
)  # fmt: skip
def test_what_is_not_told_is_not_read(ask: Ask, book: str, text: str, untold: str) -> None:
    assert untold not in ask(book, text).reading.text
