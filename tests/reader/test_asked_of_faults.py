"""Yes and no said of what is asked: of a fault, of what is not done, of a claim; nothing told may fall out.

All of it is common English, no source, of things of the services.
"""

from __future__ import annotations

import pytest

from tests.reader.conftest import Base

BAN, FINE = "Is it prohibited for anyone to", "May anyone"
WEARING = [
    "Could I be done for {doing}?", "Can I get done for {doing}?", "Might I be pulled up for {doing}?",
    "Could I get told off for {doing}?", "Can they stop me for {doing}?", "Could I be stopped for {doing}?",
    "Is it a fault {doing}?", "Is {doing} a fault?", "Would {doing} be a fault?",
    "Will anyone object to {doing}?", "Does anybody mind {doing}?", "Could I be put on a charge for {doing}?",
]  # fmt: skip
SO_IT_IS = [
    "Is it a fault that {so}?", "Is it a fault if {so}?", "Is it a problem that {so}?",
    "Could I be done if {so}?", "Would I get told off if {so}?", "Am I at fault if {so}?",
    "Is it wrong if {so}?", "Would it matter if {so}?", "{so}. Is that a fault?",
    "{so}, is that wrong?", "{so}. Could I be done for it?",
]  # fmt: skip
ALLOWED = ["Am I in the clear if {so}?", "Is it all right if {so}?", "{so}, all right?", "{so}. Is that OK?"]


@pytest.mark.parametrize("asked", WEARING)
@pytest.mark.parametrize(
    ("name", "doing", "read"),
    [
        ("demo", "wearing deck shoes in parade rig", "wear the deck shoes, in parade rig?"),
        ("demo", "not wearing black shoes in shore rig", "go without the black shoes, in shore rig?"),
        ("seventh", "wearing a ring afloat", "wear the plain ring, afloat?"),
    ],
)
def test_what_is_a_fault(
    name: str, asked: str, doing: str, read: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(name)
    assert base.read(asked.format(doing=doing)).text == f"{BAN} {read}"


@pytest.mark.parametrize("asked", [*SO_IT_IS, *ALLOWED])
@pytest.mark.parametrize(
    ("name", "so", "read"),
    [
        ("demo", "I don't wear black shoes in shore rig", "go without the black shoes, in shore rig?"),
        ("demo", "I wear deck shoes in parade rig", "wear the deck shoes, in parade rig?"),
        ("seventh", "I don't wear deck shoes afloat", "go without the deck shoes, afloat?"),
    ],
)
def test_what_is_done_or_not(
    name: str, asked: str, so: str, read: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(name)
    question = asked.format(so=so)
    assert base.read(question).text == f"{FINE if asked in ALLOWED else BAN} {read}"


@pytest.mark.parametrize(
    ("name", "question", "read"),
    [
        ("demo", "Is it a fault that my buckle is shiny?",
         "Is it prohibited that the finish of the belt buckle be polished?"),
        ("demo", "Could I get done for having a shiny buckle?",
         "Is it prohibited that the finish of the belt buckle be polished?"),
        ("demo", "Is it a fault if my scarf ends aren't tucked in?",
         "Is it prohibited that the fit of the wool scarf not be “ends tucked in”?"),
        ("demo", "Would I be in trouble if my cap device isn't silver as a hand?",
         "Is it prohibited that the colour of the cap device not be silver, for deck hands?"),
        ("seventh", "Would I get told off for wearing six skill badges?",
         "Is it prohibited that the number of skill badges worn be exactly 6?"),
        ("demo", "Is it a problem that he isn't wearing his tab in boat rig?",
         "Is it prohibited for anyone to go without the slip-on tab, in boat rig?"),
        ("demo", "A Third Hand doesn't wear the cap device, right?", "May an H1 go without the cap device?"),
        ("demo", "Is the storm hood banned if I don't wear the storm coat?",
         "Is it prohibited for anyone to wear the storm hood, without the storm coat?"),
        ("demo", "Is it ok to wear the scarf if I don't wear the neck cloth in watch rig?",
         "May anyone wear the wool scarf, in watch rig, without the neck cloth?"),
        ("demo", "You may choose not to wear the neck cloth as a warden in parade rig, right?",
         "May wardens go without the neck cloth, in parade rig?"),
        ("fifth", "Can a C1 with the Long Road badge wear the beret in Order C?",
         "May a C1 with the Long Road qualification wear the beret, in Order C, with the Long Road badge?"),
        ("second", "Supper at Low Tarn hut tonight, nothing ceremonial. Does the hall cap stay on inside with"
         " hall rig?", "Must anyone wear the hall cap, in hall rig, in Low Tarn hut?"),
        ("demo", "My day shirt sleeves are rolled. Must they come down?",
         "Is it prohibited for anyone to roll the day shirt?"),
        ("demo", "Jersey sleeves rolled up. Do they have to come down?",
         "Is it prohibited for anyone to roll the service jersey, sleeves up?"),
        ("demo", "May the day shirt sleeves be rolled up?", "May anyone wear the day shirt, sleeves up?"),
    ],
)  # fmt: skip
def test_so_it_is_read(name: str, question: str, read: str, request: pytest.FixtureRequest) -> None:
    base: Base = request.getfixturevalue(name)
    reading = base.read(question)
    assert reading.text == read, (reading.ask, reading.abstain)


@pytest.mark.parametrize(
    ("name", "question"),
    [
        ("demo", "My cap badge is off. Is that a fault?"),
        ("demo", "My visor is bent. Is that a fault?"),
        ("demo", "May I roll the sleeves of the undershirt?"),
        ("demo", "Am I allowed the scarf if I don't like the neck cloth?"),
    ],
)
def test_so_it_is_not(name: str, question: str, request: pytest.FixtureRequest) -> None:
    base: Base = request.getfixturevalue(name)
    assert base.read(question).query is None
