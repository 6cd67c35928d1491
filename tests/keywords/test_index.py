"""The keyword index: what it finds, in which order, and what cannot go wrong with it."""

from __future__ import annotations

import itertools
import math
import threading
from pathlib import Path
from typing import Any

import pytest

from kb.errors import StoreUnavailableError
from kb.files import data_folder
from kb.keywords import K1, B, Document, analyse, build_index, documents_of, search, update_index
from kb.sources import load_rule_base


@pytest.fixture(scope="module")
def documents() -> tuple[Document, ...]:
    base = load_rule_base(data_folder("demo_facts")).base
    assert base is not None
    return documents_of(base)


@pytest.fixture(scope="module")
def index(tmp_path_factory: pytest.TempPathFactory, documents: tuple[Document, ...]) -> Path:
    folder = tmp_path_factory.mktemp("keywords")
    build_index(folder, documents)
    return folder


def test_every_label_finds_its_thing(index: Path, documents: tuple[Document, ...]) -> None:
    """A label asked for on its own is among the first five."""
    for document in documents:
        if document.kind != "item":
            continue
        assert document.id in {hit.id for hit in search(index, (document.label,), ("item",), 5)}


def test_inflected_words_find_the_same(index: Path) -> None:
    assert search(index, ("scarves",), ("item",)) == search(index, ("scarf",), ("item",)) != ()
    assert search(index, ("worn",)) == search(index, ("wear",)) != ()


def test_kinds_and_limit(index: Path) -> None:
    hits = search(index, ("weather",), limit=50)
    assert {"fact", "value", "clause"} <= {hit.kind for hit in hits}
    assert {hit.kind for hit in search(index, ("weather",), ("clause",), 50)} == {"clause"}
    assert search(index, ("weather",), limit=3) == hits[:3]
    assert [hit.score for hit in hits] == sorted((hit.score for hit in hits), reverse=True)
    assert search(index, ("weather",), limit=0) == ()


def test_the_field_says_where_the_word_was(index: Path) -> None:
    kinds = {(hit.kind, hit.field) for hit in search(index, ("collar",), limit=60)}
    assert ("clause", "text") in kinds
    assert any(field == "label" for _, field in kinds)


@pytest.mark.parametrize(
    "words",
    [
        ("NOT gloves AND (cap",),
        ("(" * 5000,),
        ("label:cap", "key:item"),
        ("*", "?", "[a TO z]", "cap~3", "cap^99", '"cap'),
        ("\x00", "\ud800", "\u202e"),
        ("'", "’s", "''''"),
        ("x" * 100_000,),
        tuple(f"word{n}" for n in range(2000)),
    ],
)
def test_no_word_is_a_command(index: Path, words: tuple[str, ...]) -> None:
    hits = search(index, words)
    wanted = set(analyse(" ".join(words)))
    assert not hits or wanted & {"glove", "cap", "label", "key", "item", "z"}


def test_no_words_find_nothing(index: Path) -> None:
    assert search(index, ()) == search(index, ("",)) == search(index, ("the", "of")) == ()


def test_an_updated_index_equals_a_new_one(tmp_path: Path, documents: tuple[Document, ...]) -> None:
    """Scores too: what was taken out no longer counts once the index is optimised; order always agrees."""
    changed = Document(
        id="4.7", kind="clause", heading="Ladders", text="Zinc ladders are polished on Fridays."
    )
    old, new = documents[:60], (*documents[1:60], changed)
    build_index(tmp_path / "old", old)
    assert search(tmp_path / "old", ("zinc",)) == ()
    update_index(tmp_path / "old", (changed,), (old[0].key,))
    build_index(tmp_path / "new", new)
    assert [hit.id for hit in search(tmp_path / "old", ("zinc",))] == ["4.7"]
    assert old[0].key not in {f"{hit.kind}:{hit.id}" for hit in search(tmp_path / "old", (old[0].label,))}
    for word in ("coat", "boots", "polished", "insignia"):
        found = [
            {(hit.kind, hit.id) for hit in search(tmp_path / name, (word,), limit=99)}
            for name in ("old", "new")
        ]
        assert found[0] == found[1]


def test_updating_twice_keeps_one_document(tmp_path: Path) -> None:
    document = Document(id="cap", kind="item", label="cap")
    build_index(tmp_path, (document,))
    update_index(tmp_path, (document,), ())
    update_index(tmp_path, (document,), ("item:none",))
    assert [hit.id for hit in search(tmp_path, ("cap",))] == ["cap"]


def test_threads_agree(index: Path) -> None:
    """One searcher for each thread: eight threads give what one gives."""
    questions = [("storm", "coat"), ("weather",), ("boots", "deck"), ("insignia", "collar"), ("gloves",)]
    expected = [search(index, words) for words in questions]
    wrong: list[object] = []

    def ask() -> None:
        for _ in range(6):
            for words, hits in zip(questions, expected, strict=True):
                try:
                    found = search(index, words)
                except StoreUnavailableError as error:
                    wrong.append(error)
                    continue
                if found != hits:
                    wrong.append((words, found))

    threads = [threading.Thread(target=ask) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert wrong == []


def test_what_is_no_index_is_a_clear_error(tmp_path: Path) -> None:
    with pytest.raises(StoreUnavailableError, match="Build it again"):
        search(tmp_path / "none", ("cap",))
    with pytest.raises(StoreUnavailableError, match="Build it again"):
        update_index(tmp_path, (), ("item:cap",))
    (tmp_path / "file").write_text("")
    with pytest.raises(StoreUnavailableError, match="cannot be written"):
        build_index(tmp_path / "file" / "below", ())


def test_the_library_is_imported_here_only() -> None:
    package = Path(__file__).parents[2] / "kb"
    users = [path.name for path in package.rglob("*.py") if "whoosh" in path.read_text()]
    assert users == ["keywords.py"]


# -- outside check ------------------------------------------------------------------------------------------


def _reference_scores(corpus: list[list[str]], query: list[str]) -> Any:
    """BM25 by the library bm25s, its inverse document frequency changed for the one that our library uses.

    bm25s "atire" has the same term weighting, tf (k1 + 1) / (tf + k1 (1 - b + b dl / avgdl)), with
    idf = ln(N / n); ours is ln(N / (n + 1)) + 1. Each word is scored alone and rescaled, then added up.
    """
    import bm25s
    import numpy

    retriever = bm25s.BM25(method="atire", k1=K1, b=B)
    retriever.index(corpus, show_progress=False)
    total = numpy.zeros(len(corpus))
    for word in query:
        holders = sum(word in tokens for tokens in corpus)
        if holders:
            theirs = math.log(len(corpus) / holders)
            ours = math.log(len(corpus) / (holders + 1)) + 1
            total += numpy.asarray(retriever.get_scores([word]), dtype=float) / theirs * ours
    return total


@pytest.mark.parametrize(
    "question",
    [
        "weather",
        "may the storm coat be worn ashore",
        "insignia on the left breast pocket",
        "hauling lines with gloves",
        "medals ribbons order of precedence",
        "boots shoes polished",
    ],
)
def test_order_agrees_with_bm25s(tmp_path: Path, documents: tuple[Document, ...], question: str) -> None:
    """Scores agree to 4 %: our library keeps the length of a field in one byte."""
    clauses = [
        Document(id=document.id, kind="clause", text=document.text)
        for document in documents
        if document.kind == "clause"
    ]
    build_index(tmp_path, clauses)
    hits = search(tmp_path, (question,), limit=len(clauses))
    reference = _reference_scores(
        [list(analyse(clause.text)) for clause in clauses], list(dict.fromkeys(analyse(question)))
    )
    expected = {clause.id: score for clause, score in zip(clauses, reference, strict=True) if score > 0}
    assert {hit.id for hit in hits} == set(expected)
    for hit in hits:
        assert hit.score == pytest.approx(expected[hit.id], rel=0.04)
    for better, worse in itertools.pairwise(hits):
        assert expected[better.id] >= expected[worse.id] * 0.96
