"""Decisions are added to a file of their own, whole or not at all; what a writer wrote stays as it is."""

from __future__ import annotations

import datetime
import errno
import subprocess
import sys
from pathlib import Path

import pytest

from kb.errors import InvalidDataError, StoreUnavailableError, UsageError
from kb.sources import load_rule_base
from kb.suggesting import WordDesk, keeping
from kb.suggesting.keeping import FILE
from tests.suggesting.ferry import open_desk

DAY = datetime.date(2026, 3, 1)
LATER = datetime.date(2026, 4, 1)


def everyday(books: Path, item: str) -> tuple[str, ...]:
    base = load_rule_base(books).base
    assert base is not None
    return next(found.everyday for found in base.items if found.id == item)


def problem(raised: pytest.ExceptionInfo[InvalidDataError]) -> tuple[str, str]:
    (found,) = raised.value.problems
    assert found.message.endswith(".")
    assert found.remedy.endswith((".", "?"))
    return str(found.at), found.code


def test_accepted_and_refused_words_come_back_with_where_they_are_from(books: Path, desk: WordDesk) -> None:
    desk, new = desk.decide(
        accept=[("sash", "waistband"), ("red sash", "cincture")],
        refuse=[("sash", "girdle")],
        own=[("lamp", "glim")],
        day=DAY,
    )
    assert [(d.word.word, d.accepted) for d in new] == [
        ("waistband", True),
        ("cincture", True),
        ("glim", True),
        ("girdle", False),
    ]
    assert everyday(books, "sash") == ("waistband", "cincture")
    assert everyday(books, "lamp") == ("glim",)
    again = open_desk(books)
    assert again.decisions == desk.decisions
    kept = {d.word.word: d for d in again.decisions}
    assert kept["girdle"].accepted is False
    origin = kept["girdle"].word.origin
    assert origin is not None
    assert (origin.thesaurus, origin.version, origin.sense) == ("WordNet", "3.0", "03438071-n")
    assert kept["waistband"].word.meaning == desk.thesaurus.sense("03438071-n").meaning
    assert kept["glim"].word.origin is None
    assert {d.word.on for d in again.decisions} == {DAY}
    assert {p.word for p in again.suggestions(["sash"]).proposals} == {"waistcloth"}


def test_the_base_and_the_graph_have_the_accepted_words_with_their_origin(
    books: Path, desk: WordDesk
) -> None:
    """Read back through SPARQL by a library of others."""
    from rdflib import Graph

    from kb.graph import export_bytes

    desk.decide(accept=[("sash", "waistband")], refuse=[("sash", "girdle")], own=[("lamp", "glim")], day=DAY)
    base = load_rule_base(books).base
    assert base is not None
    assert [(w.item, w.word) for w in base.accepted_words] == [("sash", "waistband"), ("lamp", "glim")]
    graph = Graph().parse(export_bytes(base, "turtle"), format="turtle")
    rows = graph.query("""
        PREFIX cb: <https://clothbound.example/ns#> PREFIX prov: <http://www.w3.org/ns/prov#>
        PREFIX dcterms: <http://purl.org/dc/terms/>
        SELECT ?word ?day ?sense ?thesaurus ?version WHERE {
          ?accepted prov:value ?word ; cb:wordFor ?item ; dcterms:dateAccepted ?day .
          ?item cb:everydayWord ?word .
          OPTIONAL { ?accepted prov:wasDerivedFrom [ dcterms:identifier ?sense ;
            dcterms:isPartOf [ dcterms:title ?thesaurus ; cb:version ?version ] ] } }""")
    assert {tuple(str(term) for term in row) for row in rows} == {
        ("waistband", "2026-03-01", "03438071-n", "WordNet", "3.0"),
        ("glim", "2026-03-01", "None", "None", "None"),
    }


def test_files_of_the_writer_stay_byte_for_byte(books: Path, desk: WordDesk) -> None:
    before = {path.name: (path.read_bytes(), path.stat().st_ino) for path in books.iterdir()}
    desk.decide(accept=[("sash", "waistband")], day=DAY)
    after = {path.name: (path.read_bytes(), path.stat().st_ino) for path in books.iterdir()}
    assert after.pop(FILE)
    assert after == before


@pytest.mark.parametrize(
    "written",
    [
        b"# mine\n\nsuggested words:\n  - {word: glim,   item: lamp, accepted: 2026-01-01}   # odd  gap\n",
        b"suggested words:\n- word: glim\n  item: lamp\n  accepted: 2026-01-01\n# the end",
        b"suggested words:\r\n    - word: glim\r\n      item: lamp\r\n      accepted: 2026-01-01\r\n",
        b"rigs: [{id: best, label: best rig}]\nsuggested words:\n",
        b"rigs: [{id: best, label: best rig}]",
        b"# nothing yet\n",
        b"",
        "\ufeffsuggested words:\n  - word: glim\n    item: lamp\n    accepted: 2026-01-01\n".encode(),
    ],
    ids=["comments", "no-indent", "crlf", "empty-section", "no-section", "only-comment", "empty", "mark"],
)
def test_lines_are_only_added_to_a_file_that_the_writer_changed(books: Path, written: bytes) -> None:
    (books / FILE).write_bytes(written)
    before = open_desk(books)
    desk, _ = before.decide(accept=[("sash", "waistband")], refuse=[("pack", "packsack")], day=DAY)
    data = (books / FILE).read_bytes()
    assert data.startswith(written)
    assert (b"\r\n" in written) == (b"\r\n" in data[len(written) :])
    assert everyday(books, "sash") == ("waistband",)
    assert len(desk.decisions) == len(before.decisions) + 2
    assert open_desk(books).decisions == desk.decisions


@pytest.mark.parametrize(
    ("written", "place"),
    [
        ("suggested words: [{word: glim, item: lamp, accepted: 2026-01-01}]\n", f"{FILE}:1:1"),
        (
            "# a\nsuggested words:\n  - {word: glim, item: lamp, accepted: 2026-01-01}\nrigs: []\n",
            f"{FILE}:2:1",
        ),
        ("suggested words: {word: glim, item: lamp, accepted: 2026-01-01}\n", f"{FILE}:1:1"),
        ("rigs: []\n...\n", f"{FILE}:1:1"),
    ],
    ids=["in-brackets", "not-last", "one-mapping", "end-of-document"],
)
def test_where_nothing_can_be_added_nothing_is_written(books: Path, written: str, place: str) -> None:
    (books / FILE).write_text(written, "utf-8")
    desk = open_desk(books)
    with pytest.raises(InvalidDataError) as raised:
        desk.decide(accept=[("sash", "waistband")], day=DAY)
    assert problem(raised) == (place, "nothing-added")
    assert (books / FILE).read_text("utf-8") == written


def test_a_change_of_mind_is_one_more_entry(books: Path, desk: WordDesk) -> None:
    desk, _ = desk.decide(accept=[("sash", "waistband")], day=DAY)
    desk, _ = desk.decide(refuse=[("sash", "waistband")], day=LATER)
    assert everyday(books, "sash") == ()
    assert [(d.accepted, d.word.on) for d in desk.decisions] == [(False, LATER)]
    desk, _ = desk.decide(accept=[("sash", "waistband")], day=LATER)
    assert everyday(books, "sash") == ("waistband",)
    assert (books / FILE).read_text("utf-8").count("word: waistband") == 3
    origin = desk.decisions[0].word.origin
    assert origin is not None
    assert origin.sense == "03438071-n", "the origin is kept through all of it"
    with pytest.raises(UsageError, match='"Waistband" is accepted for "red sash" since 2026-04-01'):
        desk.decide(accept=[("sash", "Waistband")])


def test_an_entry_in_a_later_file_is_not_overruled_in_silence(books: Path) -> None:
    entry = "suggested words:\n  - {word: waistband, item: sash, refused: 2026-01-01}\n"
    (books / "zz.yaml").write_text(entry, "utf-8")
    desk = open_desk(books)
    with pytest.raises(InvalidDataError) as raised:
        desk.decide(accept=[("sash", "waistband")], day=DAY)
    assert problem(raised) == ("zz.yaml:2:5", "later-entry")
    assert not (books / FILE).exists()


@pytest.mark.parametrize(
    ("how", "choice", "told"),
    [
        ("accept", ("shorts", "drawers"), "“drawers” is a name of “drawers” (branch) already."),
        ("accept", ("first-vest", "vest"), "“vest” may mean “white waistcoat” already."),
        ("own", ("lamp", "red sash"), "“red sash” is a name of “red sash” already."),
        ("own", ("lamp", "must"), "A question about “must” is read as something else"),
        ("own", ("lamp", "lamp2"), '"lamp2" is no word that people say'),
        ("own", ("lamp", "torches"), '"torches" means "torch" as it is.'),
        ("accept", ("sash", "gridle"), 'WordNet does not have "gridle" for "red sash". It has "girdle"'),
        ("refuse", ("sash", "gridle"), 'WordNet does not have "gridle" for "red sash".'),
        ("accept", ("sahs", "girdle"), 'There is no item "sahs". Did you mean sash'),
        ("accept", ("glasses", "specs"), '"specs" means "spectacles" as it is.'),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_kept(
    how: str, choice: tuple[str, str], told: str, books: Path, desk: WordDesk
) -> None:
    with pytest.raises(UsageError) as raised:
        desk.decide(**{how: [choice]}, day=DAY)
    assert told in str(raised.value)
    assert not (books / FILE).exists()


def test_all_is_kept_or_nothing(books: Path, desk: WordDesk) -> None:
    with pytest.raises(UsageError):
        desk.decide(accept=[("sash", "waistband"), ("shorts", "drawers")], day=DAY)
    with pytest.raises(UsageError, match="cannot be a word for both"):
        desk.decide(own=[("sash", "gleam"), ("lamp", "Gleam")], day=DAY)
    with pytest.raises(UsageError, match="is given twice"):
        desk.decide(accept=[("sash", "waistband")], refuse=[("sash", "waistband")], day=DAY)
    assert not (books / FILE).exists()


def test_a_word_accepted_for_one_item_is_taken_for_the_others(books: Path, desk: WordDesk) -> None:
    desk, _ = desk.decide(own=[("sash", "gleam")], day=DAY)
    with pytest.raises(UsageError, match="“gleam” is an everyday word of “red sash” already"):
        desk.decide(own=[("lamp", "gleam")])
    assert everyday(books, "lamp") == ()


def test_books_that_were_broken_meanwhile_are_told_with_their_place(books: Path, desk: WordDesk) -> None:
    (books / FILE).write_text("suggested words:\n  - {word: glim, item: lamp}\n", "utf-8")
    with pytest.raises(InvalidDataError) as raised:
        desk.decide(accept=[("sash", "waistband")], day=DAY)
    assert problem(raised) == (f"{FILE}:2:5", "undecided-word")
    (books / FILE).write_text("suggested words: [\n", "utf-8")
    with pytest.raises(InvalidDataError) as raised:
        desk.decide(accept=[("sash", "waistband")], day=DAY)
    assert problem(raised) == (f"{FILE}:2:1", "not-yaml")


def test_what_the_writer_changed_meanwhile_is_heeded(books: Path, desk: WordDesk) -> None:
    path = books / "vocabulary.yaml"
    text = path.read_text("utf-8").replace("label: torch,", "label: torch, other labels: [waistband],")
    path.write_text(text, "utf-8")
    with pytest.raises(UsageError, match="“waistband” is a name of “torch” already"):
        desk.decide(accept=[("sash", "waistband")], day=DAY)


def test_a_disk_that_is_full_leaves_the_old_file(
    books: Path, desk: WordDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk, _ = desk.decide(accept=[("sash", "waistband")], day=DAY)
    before = (books / FILE).read_bytes()

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("kb.files.os.fsync", full)
    with pytest.raises(StoreUnavailableError, match="No space left"):
        desk.decide(accept=[("sash", "cincture")], day=DAY)
    assert (books / FILE).read_bytes() == before
    assert sorted(path.name for path in books.iterdir()) == ["rules.yaml", FILE, "vocabulary.yaml"]


_TWO = """
import datetime, sys
from pathlib import Path
from tests.suggesting.ferry import open_desk
desk = open_desk(Path(sys.argv[1]))
for word in sys.argv[2:]:
    desk, _ = desk.decide(own=[("sash", word)], day=datetime.date(2026, 3, 1))
"""


def test_two_writers_at_once_lose_nothing(books: Path) -> None:
    words = [["glimmer", "gleamer", "glower"], ["flimmer", "fleamer", "flower"]]
    root = Path(__file__).parents[2]
    writers = [
        subprocess.Popen([sys.executable, "-c", _TWO, str(books), *group], cwd=root) for group in words
    ]
    assert [writer.wait(timeout=60) for writer in writers] == [0, 0]
    assert sorted(everyday(books, "sash")) == sorted([*words[0], *words[1]])


@pytest.mark.parametrize(
    "text", ["plain", "it's: a # trap", "- no", '"', "3.0", "[x]", "é", "a\\b", "no", "~"]
)
def test_any_text_is_written_so_that_it_reads_back(text: str) -> None:
    from kb.sources import parse_file

    for name in ("version", "meaning"):
        tree = parse_file(f"{name}: {keeping._scalar(name, text)}\n".encode(), "x.yaml")
        assert tree.problems == ()
        assert tree.root is not None
        assert getattr(tree.root.get(name), "text", None) == text
