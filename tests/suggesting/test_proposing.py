"""What is proposed, what is left out and why; every proposal is understood once it is a word of its item."""

from __future__ import annotations

from pathlib import Path

import pytest

import kb
from kb.model.lookup import Lookup
from kb.model.records import Case
from kb.reader import Lexicon, read_question
from kb.sources import load_texts
from kb.suggesting import WordDesk
from kb.suggesting.clashes import find_clash, is_understood, is_word, some_of
from kb.suggesting.plausible import plausible
from kb.suggesting.wordnet import WordNet
from tests.little import DAY
from tests.suggesting.ferry import BOOK, VOCABULARY, open_desk


def words(desk: WordDesk, item: str, **how: bool) -> dict[str, str]:
    """Proposed words of an item, each with the id of its sense."""
    found = desk.suggestions([item], **how).proposals
    assert {proposal.item for proposal in found} <= {item}
    return {proposal.word: proposal.origin.sense for proposal in found}


def reasons(desk: WordDesk, item: str) -> dict[str, tuple[str, tuple[str, ...]]]:
    found = desk.suggestions([item]).left_out
    return {left.proposal.word: (left.reason, left.items) for left in found}


def test_words_of_the_same_sense_are_proposed_with_their_origin(desk: WordDesk) -> None:
    """The ids and words are WordNet 3.0's; that of the rucksack is in the class list of ILSVRC 2012."""
    assert words(desk, "sash") == dict.fromkeys(
        ("girdle", "cincture", "waistband", "waistcloth"), "03438071-n"
    )
    assert words(desk, "pack") == dict.fromkeys(
        ("backpack", "knapsack", "packsack", "haversack"), "02769748-n"
    )
    (first, *_) = desk.suggestions(["sash"]).proposals
    assert (first.name, first.relation) == ("sash", "synonym"), "the noun of the label"
    assert (first.origin.thesaurus, first.origin.version) == ("WordNet", "3.0")
    assert first.meaning.startswith("a band of material around the waist")


def test_only_what_can_be_worn_counts(desk: WordDesk, wordnet: WordNet) -> None:
    """A sash is also the frame of a window, a torch also a plant and a burner, a boot also of a car."""
    lookup = desk.lookup
    for item, name, kept in (
        ("sash", "sash", {"03438071-n"}),
        ("deck-boots", "boots", {"02872752-n"}),
        ("polish", "nail", {"05581693-n"}),
    ):
        senses = wordnet.senses(name)
        found = {sense.id for sense in plausible(item, senses, lookup, wordnet)}
        assert found == kept
        assert len(senses) > len(found), name
    torch = {sense.words[0] for sense in plausible("lamp", wordnet.senses("torch"), lookup, wordnet)}
    assert "flashlight" in torch
    assert "common mullein" not in torch


def test_a_sense_that_agrees_with_another_name_goes_before_the_others(
    desk: WordDesk, wordnet: WordNet
) -> None:
    """Pants are also what is worn under trousers; what is called trousers as well is not that."""
    assert {"bloomers", "knickers"} <= {word for sense in wordnet.senses("pants") for word in sense.words}
    told = {*words(desk, "work-trousers"), *reasons(desk, "work-trousers")}
    assert told.isdisjoint({"bloomers", "knickers", "drawers"})


def test_a_word_that_names_something_else_is_left_out_and_told(desk: WordDesk) -> None:
    """ "Drawers" is the label of a branch here, "waistcoat" may be either of two."""
    assert "drawers" not in words(desk, "shorts")
    reason, items = reasons(desk, "shorts")["drawers"]
    assert reason == "“drawers” is a name of “drawers” (branch) already."
    assert items == ()
    reason, items = reasons(desk, "first-vest")["waistcoat"]
    assert reason == "“waistcoat” may mean “white waistcoat” already."
    assert items == ("second-vest",)


def test_a_word_that_would_fit_two_items_is_left_out_of_both() -> None:
    twins = "\n  - {id: dress-sash, label: dress sash, kind of: accessory}\n"
    loaded = load_texts({"v.yaml": VOCABULARY.rstrip("\n") + twins, "b.yaml": BOOK})
    assert loaded.base is not None
    lookup = Lookup(loaded.base)
    desk = WordDesk.open(Path("nowhere"), lookup, Lexicon.build(lookup))
    for item, other in (("sash", "dress-sash"), ("dress-sash", "sash")):
        assert words(desk, item) == {}
        reason, items = reasons(desk, item)["cincture"]
        assert items == (other,)
        assert reason == f"“cincture” would fit “{lookup.items[other].label}” as well."


def test_a_word_that_would_fit_narrower_items_too_goes_to_the_broad_one() -> None:
    wide = "\n  - {id: any-cape, label: cape, kind of: garment}\n"
    narrow = "  - {id: rain-cape, label: rain cape, kind of: any-cape}\n"
    loaded = load_texts({"v.yaml": VOCABULARY.rstrip("\n") + wide + narrow, "b.yaml": BOOK})
    assert loaded.base is not None
    lookup = Lookup(loaded.base)
    desk = WordDesk.open(Path("nowhere"), lookup, Lexicon.build(lookup))
    assert "mantle" in words(desk, "any-cape")
    assert reasons(desk, "rain-cape")["mantle"] == ("“mantle” would fit “cape” as well.", ("any-cape",))


def test_what_is_understood_already_is_neither_proposed_nor_left_out(desk: WordDesk) -> None:
    """The reader knows specs and shades for spectacles and sunglasses, and a plural for its singular."""
    assert is_understood("specs", "glasses", desk.lexicon)
    found = desk.suggestions(["glasses", "long-coat"])
    told = {p.word for p in found.proposals} | {left.proposal.word for left in found.left_out}
    assert told.isdisjoint({"specs", "eyeglasses", "spectacles", "overcoat"})


def test_a_long_list_of_reasons_is_cut() -> None:
    assert some_of(["a"]) == "a"
    assert some_of(list("abcd")) == "a, b, c and d"
    assert some_of(list("abcdefg")) == "a, b, c, d and 3 more"


def test_narrower_words_are_proposed_when_asked_for(desk: WordDesk) -> None:
    """From memory, without a source: a cummerbund is a kind of sash."""
    assert "cummerbund" not in words(desk, "sash")
    assert "cummerbund" in words(desk, "sash", narrower=True)
    found = desk.suggestions(["sash"], narrower=True).proposals
    assert {p.relation for p in found if p.word == "cummerbund"} == {"narrower"}


def test_items_that_are_built_in_get_no_words(desk: WordDesk) -> None:
    found = desk.suggestions()
    told = {p.item for p in found.proposals} | {left.proposal.item for left in found.left_out}
    assert told
    assert told.isdisjoint({"anything", "garment", "feature", "insignia", "accessory", "carried", "grooming"})


@pytest.mark.parametrize(
    "word", ["must", "may", "not", "two", "inch", "yard", "wet", "steersman", "today", "carry", "wear"]
)
def test_a_word_of_the_question_or_of_the_books_cannot_name_an_item(word: str, desk: WordDesk) -> None:
    assert find_clash(word, "sash", desk.lexicon, desk.lookup) is not None


@pytest.mark.parametrize("word", ["cummerbund", "glim", "dress blue", "T-shirt", "man's cloak", "écharpe"])
def test_a_word_of_ones_own_can(word: str, desk: WordDesk) -> None:
    assert is_word(word)
    assert find_clash(word, "sash", desk.lexicon, desk.lookup) is None


@pytest.mark.parametrize(
    "text", ["", "x", "a" * 61, "sash2", "two\nlines", "\u202ehsas", "[sash]", "one two three four five", "-"]
)
def test_what_nobody_says_is_no_word(text: str) -> None:
    assert not is_word(text)


def test_every_proposal_for_the_demo_is_read_as_its_item_once_it_is_a_word_of_it() -> None:
    """Each on its own, in books loaded with it: the promise that listing makes."""
    folder = kb.demo_folder()
    texts = {path.name: path.read_text("utf-8") for path in folder.glob("*.yaml")}
    desk = open_desk(folder)
    found = desk.suggestions().proposals
    assert len(found) > 50
    assert len({proposal.item for proposal in found}) > 25
    for proposal in found[::6]:
        entry = f"suggested words: [{{word: {proposal.word}, item: {proposal.item}, accepted: 2026-01-01}}]\n"
        base = load_texts({**texts, "zz.yaml": entry}).base
        assert base is not None
        lookup = Lookup(base)
        reading = read_question(
            f"May I wear the {proposal.word}?",
            lexicon=Lexicon.build(lookup),
            lookup=lookup,
            case=Case(as_of=DAY),
        )
        assert reading.query is not None, (proposal.word, reading)
        assert reading.query.items == (proposal.item,), proposal.word


def test_no_proposal_for_the_demo_names_anything_in_it() -> None:
    desk = open_desk(kb.demo_folder())
    for proposal in desk.suggestions().proposals:
        entries = desk.lexicon.names.get("".join(proposal.word.lower().replace("-", "").split()), ())
        assert {entry.id for entry in entries} <= {proposal.item}, proposal.word
