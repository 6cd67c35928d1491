"""What was seen, and a short question that passes judgement on it: read as whether it may be, with yes and no
said of the fault where a fault is asked of.

All of it is common English, no source, of things of four services.
"""

from __future__ import annotations

import pytest

from kb.reader.words.split import split_questions
from tests.reader.conftest import Base

EARRINGS = "{asked} wear the earrings, in watch rig?"
BAD, FINE = "Is it prohibited for anyone to", "May anyone"
OF_A_FAULT = [
    "Is that a fault?", "Fault?", "A fault or not?", "Fault or fine?", "Trouble?", "Any trouble?",
    "In trouble?", "Is he in trouble?", "Am I in trouble for it?", "Is she in for it?",
    "Would that be a mark against me?",
    "At fault?", "In the wrong?", "Is it really a fault?",
    "Do I write it down?", "Should I write that up?", "Must I note it?", "Book him for it?", "Report her?",
    "Do I put him on report?", "Do I take his name?", "Should I pull him up for it?",
    "Do I pick her up on that?",
    "Do I send him back?", "Send her home to change?", "Have a word?", "Should I have a quiet word with him?",
    "Do I say something?", "Shall I say anything to him?", "Can the inspector object?", "Worth a note?",
    "Is it worth mentioning?", "Is that against anything?", "Anything against it?", "Against the rules?",
    "Does that break any rule?", "Clause?", "Which clause?", "What clause do I quote him?",
    "Which clause is that?", "Chapter and verse?", "What rule does that break?",
]  # fmt: skip
FOR_FINE = [
    "Is there any excuse?", "Any excuse for that?", "Excuse or not?", "Is he excused?", "Do I let it go?",
    "Let it pass?", "Do I let him off?", "Should I overlook it?", "Can I let that slide?", "Will it pass?",
    "Does she pass muster?", "Can it stay?", "Can he get away with it?", "Pass or fail?", "Good lad?",
    "Good lad or in the wrong?", "Properly dressed?", "Is she correctly dressed?", "Fit to be seen?",
    "Do I turn a blind eye?",
]  # fmt: skip


@pytest.mark.parametrize("judged", OF_A_FAULT)
@pytest.mark.parametrize("told", ["Earrings in watch rig.", "Somebody with earrings in, watch rig -"])
def test_a_fault_is_asked_of(demo: Base, told: str, judged: str) -> None:
    assert demo.read(f"{told} {judged}").text == EARRINGS.format(asked=BAD)


@pytest.mark.parametrize("judged", FOR_FINE)
def test_it_is_asked_whether_it_is_fine(demo: Base, judged: str) -> None:
    assert demo.read(f"Earrings in watch rig. {judged}").text == EARRINGS.format(asked=FINE)


SEEN = [
    ("demo", "A warden with no branch flash, should I pull him up for it?",
     "Is it prohibited for wardens to go without the branch flash?"),
    ("demo", "K2 on watch without a whistle, watch rig. Fault?",
     "Is it prohibited for a K2 to choose not to carry the whistle, in watch rig, on watch?"),
    ("demo", "Shiny buckle on the belt at muster. Do I write it down?",
     "Is it prohibited that the finish of the belt buckle be polished, at inspection?"),
    ("demo", "Scarf ends hanging outside the coat. Fault or not?",
     "Is it prohibited that the fit of the wool scarf not be “ends tucked in”?"),
    ("demo", "Work jacket open, lathe running. What clause do I quote him?",
     "Is it prohibited that the fastening of the work jacket not be “closed”, machinery running?"),
    ("demo", "K5 turned up on parade with his collar unhooked. Do I write that down?",
     "Is it prohibited that the fastening of the tunic collar not be “hooked”, for a K5, on parade?"),
    ("demo", "A coxswain polished his badge for the storm rig. Good lad or in the wrong?",
     "May the finish of the coxswain's badge be polished, for anyone with the coxswain appointment, in storm "
     "rig?"),
    ("demo", "Ends of the neck cloth measure 4 1/4 in. Within the allowance?",
     "May the length of the neck cloth be 4 1/4 in (107.95 mm)?"),
    ("fifth", "Hem of my skirt is 70 mm below the knee. Pass or fail?",
     "May the reach of the slate skirt be 70 mm?"),
    ("fifth", "My skirt ends 70 mm below the knee. Do I send her back?",
     "Is it prohibited that the reach of the slate skirt be 70 mm?"),
    ("third", "Name plate 82 mm long. Outside the allowance?",
     "Is it prohibited that the length of the name plate be 82 mm?"),
    ("third", "Name plate 82 mm long. Within the allowance?",
     "May the length of the name plate be 82 mm?"),
    ("third", "My moustache is staying. Anything against it?",
     "Is it prohibited for anyone to wear the moustache?"),
]  # fmt: skip


@pytest.mark.parametrize(("book", "question", "text"), SEEN)
def test_what_is_seen_is_read(request: pytest.FixtureRequest, book: str, question: str, text: str) -> None:
    assert request.getfixturevalue(book).read(question).text == text


ASIDES = [
    ("I've told him twice", "I've told him twice"), ("second time this week", "second time this week"),
    ("she's new", "she's new"), ("he should know better", "he should know better"),
    ("says his mother gave them to him", "says his mother gave them to him"),
    ("he says he needs them to hear", "he says he needs them to hear"),
]  # fmt: skip


@pytest.mark.parametrize(("aside", "named"), ASIDES)
def test_what_only_scolds_or_excuses_is_left_out_and_named(demo: Base, aside: str, named: str) -> None:
    reading = demo.read(f"K3 with earrings, {aside}. Clause?")
    assert (reading.text, reading.unused) == ("Is it prohibited for a K3 to wear the earrings?", (named,))


NOT_SO = [
    "I've told him twice: no earrings. Clause?",
    "K3 with earrings, he says he's a diver. Excuse?",
    "K3 with earrings and a purple wig. Fault?",
    "K3 with a wig. Do I write it down?",
    "Which earrings do I wear in watch rig, and which clause?",
    "May I wear earrings in watch rig, and what clause do I quote?",
    "May I wear earrings in watch rig, do I write it down?",
]


@pytest.mark.parametrize("question", NOT_SO)
def test_is_not_so_read(demo: Base, question: str) -> None:
    reading = demo.read(question)
    assert reading.query is None or not (reading.unused or reading.query.modalities == ("prohibited",))


EACH = [
    ("Inspection this morning: cap band 1 1/2 in above the eyebrows, white cap, 12 November. "
     "How many faults is that?",
     ("Inspection this morning: cap band 1 1/2 in above the eyebrows, 12 November. Is that a fault?",
      "Inspection this morning: white cap, 12 November. Is that a fault?")),
    ("Watch rig, K3: earrings, two rings and a beard. How many faults?",
     ("Watch rig, K3: earrings. Is that a fault?", "Watch rig, K3: two rings. Is that a fault?",
      "Watch rig, K3: a beard. Is that a fault?")),
    ("Sunglasses, earrings, on parade. Which of them are faults?",
     ("Sunglasses, on parade. Is that a fault?", "Earrings, on parade. Is that a fault?")),
    ("Sunglasses on parade. What's wrong with that?", ("Sunglasses on parade. Is that a fault?",)),
    ("What's wrong with sunglasses, on parade?", ("What's wrong with sunglasses, on parade?",)),
    ("Sunglasses, earrings. How many may I wear?", ("Sunglasses, earrings. How many may I wear?",)),
]  # fmt: skip


@pytest.mark.parametrize(("text", "questions"), EACH)
def test_each_thing_seen_is_asked_of(text: str, questions: tuple[str, ...]) -> None:
    assert tuple(one.casefold() for one in split_questions(text)) == tuple(
        one.casefold() for one in questions
    )


HANDLED = [
    "Cap on in the mess. May I take it off?",
    "Socks down on parade. Can I pull them up?",
    "I've an umbrella and it's raining, parade rig. Can I put it up?",
    "My collar is down on parade. May I turn it up?",
]


@pytest.mark.parametrize("question", HANDLED)
def test_what_is_done_with_the_thing_is_no_fault(demo: Base, question: str) -> None:
    reading = demo.read(question)
    assert reading.query is None or reading.query.modalities == ()
