"""What the books know nothing of is left out and named where the answer is the same without it."""

from __future__ import annotations

import re

import pytest

from kb import Answer, KnowledgeBase
from tests.opening import opened
from tests.reading.sheets import BOOKS, SHEETS, TODAY, questions

# What is left out stands in braces; common practice, no source, but for the verdicts, which are the clauses'.
LEFT_OUT = {
    "demo": """
        {While the kettle boils} in the mess, may I wear deck shoes with watch rig? permitted 4.7
        {Before the pub opens}, may I wear the work jacket with the workshop rig? permitted 3.9
        {As my locker jammed}, may I wear canvas trousers with the parade rig in town? prohibited 3.16
        {My locker jammed}, may I wear canvas trousers with the parade rig in town? prohibited 3.16
        {Because of the bus strike}, may I carry a satchel with the parade rig? prohibited 6.11
        {At Uncle Bob's barbecue} on leave, may I wear headphones in town? prohibited 6.14
        May I carry an umbrella in the boat rig, {because the forecast looks grim}? prohibited 6.10
        May I wear my earrings in parade rig {when the brass section is tuning up}? prohibited 6.5
        {At half past six in the evening}, may I wear earrings in shore rig? prohibited 6.5
        {With Auntie Joan's wedding coming up}, may I wear nail varnish with the boat rig? prohibited 6.20
        {For want of a locker}, may I carry a satchel with the parade rig? prohibited 6.11
        May {my skipper} wear earrings with the parade rig? prohibited 6.5
        Does {a new recruit} have to wear the storm coat in boat rig? prohibited 3.5
        May I lend my flotation vest {to a visitor}? prohibited 1.14
        May I lend the flotation vest {to my neighbour} {for the afternoon}? prohibited 1.14
        Do I need the climbing harness {for two minutes} working aloft? required 7.13
        May I take my goggles off {for a few seconds} while painting? required 7.10
        May I lend my flotation vest {to my brother}, {just this once}? prohibited 1.14
        May I keep the flotation vest off in boat rig, {even for a quick run}? required 7.1
        {For one quick trip} in the skiff on leave, are deck shoes with the shore rig okay? prohibited 4.8
        May I wear white gloves with the watch rig, {they're warm enough}? prohibited 3.12
        Can I carry the umbrella with the parade rig, {it's handy}? prohibited 6.10
        May I carry the umbrella {that my aunt gave me} in the boat rig? prohibited 6.10
        Can I wear my rescue medal with the watch rig at {my old skipper's} funeral? conditional 5.23
        {My aunt gave me} earrings and I'd like to wear them in shore rig. May I? prohibited 6.5
        May I wear earrings in shore rig {to please my gran}? prohibited 6.5
        Satchel with the parade rig, {for the papers}? prohibited 6.11
        Can I wear the storm coat over the workshop rig {to cross the yard} in rain? prohibited 3.9
        {With the wife's cousins visiting from Spain}, may I wear earrings in shore rig? prohibited 6.5
        May I carry my phone in the lamp room {if it's switched off}? prohibited 7
        Can I take my phone into the lamp room {in flight mode}? prohibited 7
        {My phone is off}. May I carry it in the lamp room? prohibited 7
        Are coveralls compulsory when painting {railings} on the station in workshop rig? required 2.16
        When I paint {the railings} do I need goggles? required 7.10
    """,
    "second": """
        {After the helicopter left}, may I wear earrings in fell rig? prohibited 4.9
        {While the collie sniffs about}, must I wear the helmet in rope rig? required 3.1
        {Because my boyfriend hates them}, must I wear gaiters in fell rig on a snowfield? required 2.4
    """,
    "third": """
        {In Innsbruck}, may I wear the felt hat with mountain dress? prohibited 16
        {Until the lift mechanic turns up}, may I wear a bracelet in hall dress? prohibited 50
        May I wear wool mittens for rope work {while the winch is being greased}? prohibited 32
        Do I have to wear a helmet on a tower {to fetch a tool}? required 29
        Do I have to wear a helmet on a tower, {only for a quick look}? required 29
        May I wear the felt hat with mountain dress, {it looks nicer}? prohibited 16
        May I wear a bracelet in hall dress, {a gift from my wife}? prohibited 50
        Do I have to wear a helmet on a tower {when the foreman is having his sandwiches}? required 29
    """,
    "fourth": """
        {Five past eleven at night}, on the road: must a cadet wear a hi-vis tabard? conditional 7.4
        {While the reporters film us}, may I wear an earring in fire kit? prohibited 8.5
        {When the accountant drops in}, may I carry an umbrella in station dress? prohibited 5.10
        {While the mayor makes his speech}, may I wear a wristwatch in band dress? prohibited 8.7
    """,
    "eighth": """
        Can I put the green jacket in the washing machine {on a cold wash}? prohibited 9.4
        May I put my salon jacket in the washing machine {on a gentle cycle}? prohibited 9.4
        my phone in the cab, {switched} to {silent} - ok?? prohibited 6.8
        My frock coat is {tight} under the arms, can I get a {slip} to have it altered? prohibited 2.4
        {Blowing} a {hooley}, may I wear the round cap in the cab? prohibited 4.1
        {It's blowing a gale}, may I carry a private telephone in the cab? prohibited 6.8
        {Hotter than a furnace here}. May I wear shorts with Ballast Dress? prohibited 3.3
        {It's brass monkeys out}. May I wear a plain ring on the line? prohibited 6.4
    """,
}
# How a thing is, what is worn with it, what settles the answer, and what moves the day.
KEPT = {
    "demo": """
        May I wear the storm coat while the buttons are missing in storm rig?
        Specs on the deck of the tender: do they need to be on a string?
        May I wear deck shoes 3 metres from running machinery?
        wardins ware there slides gilt end inbord, yes?
        May I carry my snorkel in the engine room?
        May I wear the knit cap as the bobble fell off with the boat rig?
        As the strap is broken, may I wear the boat helmet on the open deck?
        With a cardigan under it, may I wear the storm coat in storm rig?
        May I wear the knit cap with my cousin's pompom in boat rig?
        May I wear the wool scarf in Harris tweed in winter?
        May I wear the satchel at my hip with watch rig?
        May I wear the lanyard at half mast in parade rig?
        May I wear a beard since the clergyman made me a deacon?
        May I wear the watch coat until the new coats are issued in watch rig?
        May my skipper wear the keeper's pin?
        May I wear the rescue medal that my grandfather gave me in parade rig?
        May I use a hook to close the storm coat in storm rig?
        May I wear the work jacket with the workshop rig to hide a tear?
        May I wear white gloves with the watch rig, they're too small?
        Am I allowed to yodel in the storm coat?
        May my wife wear the storm coat in boat rig?
        May the contractor wear earrings with the parade rig?
        I'm a civilian, may I wear the storm coat in storm rig?
        My dad is a civilian, may he wear the storm coat in storm rig?
        At half past six in the evening, must I wear the high-visibility vest in town?
        For medical reasons, may I wear earrings in parade rig?
        Unless the boss says otherwise, may I wear deck shoes in the mess with watch rig?
    """,
    "eighth": """
        May I put the orange vest in the washing machine on a hot wash?
        Colder than charity out here, may I wear a private wool hat with Crew Dress?
    """,
    "second": """
        May I wear the wool hat on the fell because mine is torn?
    """,
    "third": """
        Because the consul is a Sikh, may I wear a religious head covering in place of the peaked cap?
        Thanks to a dispensation, may I wear sports shoes with tower dress?
        May I wear the watch that belongs to my wife on duty?
        May I wear the fleece while it's inside out with tower dress?
        Since the doctor examined me, may I wear sports shoes with cabin dress?
    """,
    "fourth": """
        Because my dentist recommended it, may I wear sunglasses indoors in station dress?
        When it is dyed green, may I wear a beard as an F2?
        May I wear white gloves at waist height in band dress on parade?
    """,
}


@pytest.fixture(scope="module")
def bases() -> dict[str, KnowledgeBase]:
    return {name: opened(name) for name in BOOKS}


def lines(written: dict[str, str]) -> list[tuple[str, str]]:
    return [(books, line.strip()) for books, text in written.items() for line in text.strip().splitlines()]


def asked(base: KnowledgeBase, text: str) -> Answer:
    (answer,) = base.ask(text, as_of=TODAY)
    return answer


@pytest.mark.parametrize(("books", "line"), lines(LEFT_OUT))
def test_what_can_change_nothing_is_left_out(bases: dict[str, KnowledgeBase], books: str, line: str) -> None:
    text, verdict, clause = line.rsplit(" ", 2)
    answer = asked(bases[books], re.sub(r"[{}]", "", text))
    assert answer.verdict == verdict
    assert clause in [citation.number for citation in answer.citations]
    assert answer.reading.unused == tuple(re.findall(r"{(.*?)}", text))


@pytest.mark.parametrize(("books", "text"), lines(KEPT))
def test_what_may_count_stops_the_answer(bases: dict[str, KnowledgeBase], books: str, text: str) -> None:
    answer = asked(bases[books], text)
    assert answer.outcome in ("ask", "abstain")
    assert not answer.reading.unused


@pytest.mark.parametrize("sheet", ["demo", "third", "fourth"])
def test_no_answer_becomes_another_one(bases: dict[str, KnowledgeBase], sheet: str) -> None:
    """Whatever happens to the Archduke meanwhile, a verdict stays what it is, or is withheld."""
    base, changed = bases[SHEETS[sheet]], []
    for one in list(questions(sheet, "open"))[::9]:
        plain = base.ask(one.text, as_of=TODAY)[-1]
        if plain.reading.query is None or plain.reading.query.kind not in ("may", "must"):
            continue
        again = base.ask(f"While the Archduke yodelled, {one.text}", as_of=TODAY)[-1]
        if again.outcome == "answer" and again.verdict != plain.verdict:
            changed.append(one.text)
    assert not changed


@pytest.mark.parametrize("text", ["", " ", "?", "while " * 200, "x" * 5000])
def test_what_is_no_question_stays_none(bases: dict[str, KnowledgeBase], text: str) -> None:
    assert asked(bases["demo"], text).outcome == "abstain"
