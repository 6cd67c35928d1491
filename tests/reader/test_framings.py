"""Whatever a plain question is wrapped in, it is read as the plain question is: of things of four services.

All of it is common English, no source. Each wrapping is tried on every thing, and each word of judgement in
every frame, so that no sentence of these is known by itself.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

import pytest

from tests.reader.conftest import Base
from tests.reader.notation import write_reading


class Core(NamedTuple):
    """What is asked: the verb and the thing, and when or where; `forms` are to do, doing and did."""

    book: str
    forms: tuple[str, str, str]
    thing: str
    when: str


_WEAR = ("wear", "wearing", "wore")
_CARRY = ("carry", "carrying", "carried")
CORES = (
    Core("demo", _WEAR, "deck shoes", "with the watch rig in the lamp room"),
    Core("demo", _WEAR, "the storm hat", "with the watch coat in the watch rig"),
    Core("demo", _CARRY, "an umbrella", "with the boat rig"),
    Core("demo", _WEAR, "a rescue medal", "in the boat rig"),
    Core("demo", _WEAR, "ear defenders", "in the machinery spaces while machinery is running"),
    Core("second", _WEAR, "gaiters", "in fell rig in rain"),
    Core("second", _WEAR, "a wristwatch", "in rope rig"),
    Core("third", _WEAR, "the fleece", "with full dress"),
    Core("third", _CARRY, "a rucksack", "in the ticket hall"),
    Core("fourth", _CARRY, "an umbrella", "in station dress"),
    Core("fourth", _WEAR, "necklaces", "in fire kit"),
    Core("fourth", _WEAR, "a beard", "as a cadet"),
)

# {do}, {doing}, {did} with the thing; {it}, {is} the thing and its verb; {when} when and where; `!` capital.
WRAPPINGS = """
Isn't it true that I can't {do} {when}?
Is it not the case that one may {do} {when}?
Is it fair to say that you can't {do} {when}?
It can't be right that one may {do} {when}, can it?
I may {do} {when}. True?
I can't {do} {when}. True or false?
May I {do} {when}, yes or no?
May I {do} {when}, true or false?
{!it} {when}. Yes or no?
Yes or no: may I {do} {when}?
I'd like to {do} {when}. Yes or no?
Is {doing} {when} still an option?
Would I get away with {doing} {when}?
Would I be pushing my luck {doing} {when}?
Would it be wrong to {do} {when}?
Would it be out of order to {do} {when}?
Any reason I shouldn't {do} {when}?
Is there any reason why I can't {do} {when}?
Nobody can make me {do} {when}, can they?
Nobody's going to force me to {do} {when}, are they?
They can't make us {do} {when}, can they?
Nobody can stop me {doing} {when}, can they?
Surely nobody has to {do} {when}?
Nobody may {do} {when}, may they?
No need for {it} {when}, surely?
{!when}, there's no need for {it}, is there?
There's no need to {do} {when}, is there?
{!it} {when}: left to choice?
{Is} {it} {when} left to choice?
May I {do} {when} regardless?
According to the book, may I {do} {when}?
May I {do} {when}, according to the rules?
In a nutshell, may I {do} {when}?
Long story short, may I {do} {when}?
Am I mistaken, or may I {do} {when}?
May I {do} {when}, or am I imagining things?
The old hands at the station swear that nobody may {do} {when}. True?
The old hands swear that you may {do} {when}. Right?
My sergeant says I must {do} {when}. Is she in the right?
Our cox keeps telling us we can {do} {when}. Is he having us on?
They say you can't {do} {when}. Any truth in that?
Word is that you may {do} {when}. Can that be right?
My mate reckons {doing} {when} is fine. I said no. Who's right?
He says it's fine to {do} {when}; is it?
I {did} {when}. Was I wrong to?
I {did} {when}. Was I allowed to?
She {did} {when}. Is she in the right?
A lad in my section likes to {do} {when}. Is he allowed to?
The new ones asked to {do} {when}. May they?
Some lads want to {do} {when}. Can they?
She wants to {do} {when}. That isn't on, is it?
My mum suggested I {do} {when}. That's not on, is it?
My brother {did} {when}. Would that be all right?
You can't {do} {when}, surely?
{!it} {when}: not allowed, I suppose?
{!it} {when} - permitted, I hope?
I fancy {doing} {when}. Any objection?
I'm fairly sure I may {do} {when}. Correct?
Are we agreed that one may {do} {when}?
Would it land me in hot water to {do} {when}?
How bad is it if I {did} {when}?
Wouldn't it be wrong to {do} {when}?
Must I {do} {when}, or is that just a myth?
Somebody told the crew that we can't {do} {when}. He's wrong, surely?
Nobody needs {it} {when}, do they?
""".strip().splitlines()

ALLOWED = """
an option|still an option|a possibility|on the cards|in line with the rules|the done thing
|right and proper|admissible
|excusable|tolerated|suitable|within the rules
"""
FORBIDDEN = """
a crime|a sin|an offence|a hanging offence|a punishable offence|a disciplinary matter|out of line|out of order
|out of the question|off the menu|ruled out|beyond the pale|unlawful|unacceptable|inadmissible|a mistake
|a bad idea
|a misdemeanour|a no-no|off limits|frowned on|a definite no|a breach of etiquette|naughty
"""
OPTIONAL = """
left to choice|left to me|up to the wearer|up to us|a matter of taste|my own choice|a personal choice
|at my discretion|my own affair|left open|a free choice
"""
REQUIRED = "a must|an absolute must|de rigueur|non-negotiable|essential|expected of us"
FRAMES = """
{Is} {it} {when} {judged}?
Is it {judged} to {do} {when}?
{!it} {when} - {judged}?
{!it} {when}: is that {judged}?
{!when}, {is} {it} {judged}?
""".strip().splitlines()
OF_DEEDS = """
Would it be {judged} to {do} {when}?
Is {doing} {when} {judged}?
I {did} {when}. Was that {judged}?
I'd like to {do} {when}. Is that {judged}?
""".strip().splitlines()
JUDGED = [
    (word.strip(), frame)
    for words, frames in (
        (ALLOWED, FRAMES + OF_DEEDS), (FORBIDDEN, FRAMES + OF_DEEDS),
        (OPTIONAL, FRAMES[:3]), (REQUIRED, FRAMES[:3]),
    )
    for word in words.replace("\n", "").split("|")
    for frame in frames
]  # fmt: skip


@pytest.fixture(scope="session")
def services(demo: Base, second: Base, third: Base, fourth: Base) -> dict[str, Base]:
    return {"demo": demo, "second": second, "third": third, "fourth": fourth}


def filled(text: str, core: Core, judged: str = "") -> str:
    """The wrapping around what is asked."""
    several = core.thing.endswith("s")
    do, doing, did = (f"{form} {core.thing}" for form in core.forms)
    slots = {
        "do": do, "doing": doing, "did": did, "it": core.thing, "when": core.when, "judged": judged,
        "!it": _capital(core.thing), "!when": _capital(core.when),
        "is": "are" if several else "is", "Is": "Are" if several else "Is",
    }  # fmt: skip
    for slot, words in slots.items():
        text = text.replace(f"{{{slot}}}", words)
    return text


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def _of(reading: str) -> str:
    """What is asked of what and when: "must I", "may I" and "is it forbidden to" are answered alike."""
    words = [word for word in reading.split()[1:] if word != "not" and not word.startswith("verdicts:")]
    return " ".join(words)


@cache
def _plain(base: Base, core: Core) -> str:
    return _of(write_reading(base.read(f"May I {core.forms[0]} {core.thing} {core.when}?")))


def _misread(services: dict[str, Base], text: str, judged: str = "") -> list[str]:
    """The questions that are read otherwise than the plain one; a judgement is tried on every other thing."""
    found = []
    for core in CORES[:: 2 if judged else 1]:
        question, base = filled(text, core, judged), services[core.book]
        reading = write_reading(base.read(question))
        if _of(reading) != _plain(base, core) or reading.startswith(("ask", "abstain")):
            found.append(f"{question} -> {reading}")
    return found


@pytest.mark.parametrize("wrapping", WRAPPINGS)
def test_a_wrapped_question_is_read_as_the_plain_one(services: dict[str, Base], wrapping: str) -> None:
    assert _misread(services, wrapping) == []


FAULTS = (
    "Would I be in the wrong if I {did} {when}?",
    "Would I be breaking a rule if I {did} {when}?",
)


@pytest.mark.parametrize("wrapping", FAULTS)
def test_yes_and_no_are_said_of_a_fault(services: dict[str, Base], wrapping: str) -> None:
    """Who asks if it breaks a rule is told yes where it may not be."""
    for core in CORES:
        reading = write_reading(services[core.book].read(filled(wrapping, core, "")))
        assert _of(reading) == _plain(services[core.book], core)
        assert "verdicts:prohibited" in reading.split()


@pytest.mark.parametrize(("judged", "frame"), JUDGED, ids=[f"{frame} {word}" for word, frame in JUDGED])
def test_a_word_of_judgement_asks_what_a_plain_one_does(
    services: dict[str, Base], judged: str, frame: str
) -> None:
    assert _misread(services, frame, judged) == []


def test_the_tables_are_as_large_as_they_claim() -> None:
    assert len(WRAPPINGS) * len(CORES) > 600
    assert len(JUDGED) * len(CORES[::2]) > 2000
