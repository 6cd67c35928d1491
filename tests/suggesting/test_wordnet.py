"""WordNet is read as it is: numbers, ids and words that others have published of release 3.0."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import SimpleNamespace

import pytest

from kb.errors import UsageError
from kb.suggesting import plausible
from kb.suggesting.wordnet import WordNet, open_wordnet

# Things to wear, of the classes of the image recognition challenge ILSVRC 2012: its class list names each by
# the offset of a noun in WordNet 3.0 and by the words of that synset (Russakovsky et al., "ImageNet Large
# Scale Visual Recognition Challenge", 2015, and the list that comes with it).
ILSVRC = """
n02769748 backpack, back pack, knapsack, packsack, rucksack, haversack
n02807133 bathing cap, swimming cap
n02817516 bearskin, busby, shako
n02837789 bikini, two-piece
n02869837 bonnet, poke bonnet
n02883205 bow tie, bow-tie, bowtie
n02910353 buckle
n02992529 cellular telephone, cellular phone, cellphone, cell, mobile phone
n03124170 cowboy hat, ten-gallon hat
n03325584 feather boa, boa
n03424325 gasmask, respirator, gas helmet
n03485794 handkerchief, hankie, hanky, hankey
n03534580 hoopskirt, crinoline
n03594734 jean, blue jean, denim
n03595614 jersey, T-shirt, tee shirt
n03630383 lab coat, laboratory coat
n03775071 mitten
n03814906 necklace
n03877472 pajama, pyjama, pj's, jammies
n04133789 sandal
n04254777 sock
n04350905 suit, suit of clothes
n04356056 sunglasses, dark glasses, shades
n04371430 swimming trunks, bathing trunks
"""


@pytest.mark.parametrize("line", ILSVRC.strip().splitlines(), ids=lambda line: line.split(", ")[0])
def test_ids_and_words_are_those_that_were_published(line: str, wordnet: WordNet) -> None:
    number, _, words = line.partition(" ")
    sense = wordnet.sense(f"{number[1:]}-n")
    assert sense.words == tuple(words.split(", "))
    assert all(sense in wordnet.senses(word) for word in sense.words)


def test_the_numbers_of_nouns_are_those_that_were_published(wordnet: WordNet) -> None:
    """WordNet manual, WNSTATS(7WN), release 3.0: 117,798 noun strings and 82,115 noun synsets."""
    assert wordnet.version == "3.0"
    lines = [line for line in wordnet._index.splitlines() if not line.startswith(b" ")]
    senses = [line for line in wordnet._data.splitlines() if not line.startswith(b" ")]
    assert (len(lines), len(senses)) == (117_798, 82_115)


def test_every_word_of_the_index_is_found(wordnet: WordNet) -> None:
    """The index is searched by halves; every 97th line, and those at the ends."""
    lines = [line for line in wordnet._index.splitlines() if not line.startswith(b" ")]
    for line in (*lines[::97], *lines[:3], *lines[-3:]):
        word, count = line.split()[0].decode(), int(line.split()[2])
        assert len(wordnet._places(word)) == count, word
    assert wordnet._places("zzyzx") == wordnet._places("") == ()


@pytest.mark.parametrize(
    ("written", "word"),
    [
        ("coats", "coat"),
        ("Storm Coat", None),
        ("boxes", "box"),
        ("brushes", "brush"),
        ("watches", "watch"),
        ("ladies", "lady"),
        ("seamen", "seaman"),
        ("scarves", "scarf"),  # noun.exc
        ("feet", "foot"),  # noun.exc
        ("life-jacket", "life jacket"),
        ("tee   shirts", "tee shirt"),
    ],
)
def test_plurals_are_undone(written: str, word: str | None, wordnet: WordNet) -> None:
    """WordNet manual, MORPHY(7WN): rules of detachment for nouns, and the list of exceptions."""
    found = {each for sense in wordnet.senses(written) for each in sense.words}
    assert word in found if word is not None else not found


def test_a_sense_has_its_kinds_and_what_it_is_a_kind_of(wordnet: WordNet) -> None:
    """From memory, without a source: a greatcoat is a coat, a coat is clothing, and clothing an artifact."""
    (greatcoat,) = wordnet.senses("greatcoat")
    coat = next(sense for sense in wordnet.senses("coat") if sense.field == "noun.artifact")
    clothing = wordnet.senses("clothing")[0]
    assert greatcoat.broader == (coat.id,)
    assert greatcoat.id in coat.narrower
    assert {greatcoat.id, coat.id, clothing.id} <= wordnet.lineage(greatcoat.id)
    assert coat.meaning.startswith("an outer garment that has sleeves")
    assert '"' not in coat.meaning, "examples are left out"


def test_the_broad_senses_are_of_this_release(wordnet: WordNet) -> None:
    for identifier, word in (*plausible._EVERY, *plausible._NEVER):
        assert word in wordnet.sense(identifier).words, identifier


def test_another_release_is_not_taken_for_this_one(wordnet: WordNet) -> None:
    shifted = (("03057021-n", "clothing"),)  # a coat
    with pytest.raises(UsageError, match="not the release that this program knows"):
        plausible._ids(shifted, wordnet)
    with pytest.raises(UsageError, match="has no sense 00000007-n"):
        wordnet.sense("00000007-n")


def test_a_missing_package_is_told_with_the_line_that_installs_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(importlib.util, "find_spec", lambda _: None)
    with pytest.raises(UsageError) as told:
        open_wordnet()
    assert 'pip install "clothbound[words]"' in str(told.value)
    assert told.value.exit_code == 2


def test_a_package_without_data_counts_as_missing(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Later releases of the package fetch their data instead of carrying it."""
    package = SimpleNamespace(submodule_search_locations=[str(tmp_path)])
    monkeypatch.setattr(importlib.util, "find_spec", lambda _: package)
    with pytest.raises(UsageError, match="not installed"):
        open_wordnet()


def test_files_that_are_damaged_are_told(tmp_path: Path) -> None:
    for name in ("index.noun", "data.noun", "lexnames"):
        (tmp_path / name).write_bytes(b"coat n 1 1 @ 1 1 00000001  \n" if name == "index.noun" else b"x\n")
    broken = WordNet(tmp_path)
    with pytest.raises(UsageError, match="does not say which WordNet"):
        _ = broken.version
    with pytest.raises(UsageError, match=r"noun\.exc cannot be read"):
        broken.senses("coat")
    (tmp_path / "noun.exc").write_bytes(b"")
    with pytest.raises(UsageError, match="has no sense 00000001-n"):
        broken.senses("coat")
