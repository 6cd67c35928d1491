"""From a folder to a rule base."""

import os
import shutil
import textwrap
from pathlib import Path

import pytest

from kb.sources import Tree, load_rule_base, load_texts, parse_file
from kb.sources.events import LARGEST_FILE

GOOD = Path(__file__).parent / "good"


def codes(folder: Path) -> list[tuple[str, str]]:
    return [(problem.at.file, problem.code) for problem in load_rule_base(folder).problems]


def test_files_in_folders_below_are_read_and_named_from_the_top(tmp_path: Path) -> None:
    shutil.copytree(GOOD, tmp_path / "books")
    (tmp_path / "books" / "sub").mkdir()
    (tmp_path / "books" / "vocabulary.yaml").rename(tmp_path / "books" / "sub" / "words.yaml")
    result = load_rule_base(tmp_path)
    assert result.base is not None
    assert "books/sub/words.yaml" in result.digests
    assert result.base.service.at.file == "books/sub/words.yaml"


def test_the_base_does_not_depend_on_the_names_of_files(tmp_path: Path) -> None:
    for number, path in enumerate(sorted(GOOD.glob("*.yaml"), reverse=True)):
        shutil.copy(path, tmp_path / f"{number}.yaml")
    one, other = load_rule_base(GOOD).base, load_rule_base(tmp_path).base
    assert one is not None
    assert other is not None
    assert {rule.id for rule in one.rules} == {rule.id for rule in other.rules}


def test_a_missing_or_empty_folder_is_a_problem(tmp_path: Path) -> None:
    assert codes(tmp_path / "none") == [(str(tmp_path / "none"), "no-folder")]
    assert codes(tmp_path) == [(str(tmp_path), "no-files")]


def test_a_large_file_is_a_problem(tmp_path: Path) -> None:
    with (tmp_path / "a.yaml").open("wb") as stream:
        stream.truncate(LARGEST_FILE * 200)
    assert codes(tmp_path) == [("a.yaml", "file-too-large")]


def test_a_file_with_another_ending_is_pointed_out(tmp_path: Path) -> None:
    shutil.copytree(GOOD, tmp_path, dirs_exist_ok=True)
    (tmp_path / "more.yml").write_text("items: []\n")
    (tmp_path / ".hidden.yaml").write_text("no: no\n")
    result = load_rule_base(tmp_path)
    assert [(p.code, p.severity) for p in result.problems] == [("file-ignored", "warning")]
    assert result.base is not None


@pytest.mark.skipif(os.geteuid() == 0, reason="the administrator may read everything")
def test_an_unreadable_file_is_a_problem(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text("items: []\n")
    (tmp_path / "a.yaml").chmod(0)
    assert ("a.yaml", "unreadable-file") in codes(tmp_path)


def test_a_file_that_vanishes_is_a_problem(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text("items: []\n")

    def gone(data: bytes, name: str) -> Tree:
        raise FileNotFoundError(2, "No such file or directory", f"{name} {len(data)}")

    problems = load_rule_base(tmp_path, read_tree=gone).problems
    assert [p.code for p in problems] == ["unreadable-file"]


def test_a_fifo_is_passed_over(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.yaml")
    assert codes(tmp_path) == [(str(tmp_path), "no-files")]


def test_trees_may_be_kept(tmp_path: Path) -> None:
    """A reader of trees that parses only files that changed gives the same base."""
    shutil.copytree(GOOD, tmp_path, dirs_exist_ok=True)
    kept: dict[bytes, Tree] = {}
    parsed: list[str] = []

    def read_tree(data: bytes, name: str) -> Tree:
        if data not in kept:
            parsed.append(name)
            kept[data] = parse_file(data, name)
        return kept[data]

    first = load_rule_base(tmp_path, read_tree=read_tree)
    assert len(parsed) == len(first.digests)
    notice = tmp_path / "notices.yaml"
    notice.write_text(notice.read_text().replace("gloves are free", "gloves are left to each"))
    second = load_rule_base(tmp_path, read_tree=read_tree)
    assert parsed[len(first.digests) :] == ["notices.yaml"]
    assert second == load_rule_base(tmp_path)
    assert second.base != first.base


def test_nothing_is_judged_while_a_file_is_unreadable() -> None:
    result = load_texts(
        {"a.yaml": "items: [", "b.yaml": "items: [{id: scarf, label: scarf, kind of: shawl}]\n"}
    )
    assert [(p.at.file, p.code) for p in result.problems] == [("a.yaml", "not-yaml")]


def test_one_run_reports_every_mistake_in_the_order_of_the_files() -> None:
    text = (GOOD / "order-2024-1.yaml").read_text()
    text = text.replace("may: deck-gloves", "may: dek-gloves").replace("place: afloat", "plase: afloat")
    text = text.replace("on: 2026-10-01", "on: 2026-13-01")
    files = {path.name: path.read_text() for path in GOOD.glob("*.yaml")}
    result = load_texts({**files, "order-2024-1.yaml": text})
    assert result.base is None
    assert [p.code for p in result.problems] == ["unknown-item", "bad-date", "unknown-fact"]
    assert list(result.problems) == sorted(result.problems)


def test_a_large_base_loads_in_time() -> None:
    """200 kB in well under a second; the bound is loose because machines are shared."""
    files = {path.name: path.read_text() for path in GOOD.glob("*.yaml")}
    head = textwrap.dedent("""\
        book: {id: long-order, title: Long Order, authority: board}
        edition: {id: "1", in force from: 2024-03-01}
        clauses:
        """)
    clause = textwrap.indent(
        textwrap.dedent("""\
            - clause: "{n}"
              text: >-
                Deck gloves may be worn by keepers of grade K2 and above in foul
                weather when the sleeves are down.
              rules:
                - may: deck-gloves
                  grades: K2 and above
                  when: {{weather: foul, sleeves: down}}
            """),
        "  ",
    )
    long = head + "".join(clause.format(n=n) for n in range(1, 820))
    assert 190_000 < len(long) < 220_000
    result = load_texts({**files, "long.yaml": long})
    assert result.base is not None
    assert len(result.base.rules) > 819


@pytest.mark.parametrize(
    ("rule", "codes"),
    [
        ("{must: coat}", ["duty-on-a-kind"]),
        ("{must: coat, each kind: yes}", []),
        ("{must: coat, each kind: no}", ["duty-on-a-kind"]),
        ("{must: coat, this item only: yes}", []),
    ],
)
def test_a_writer_can_say_that_each_kind_is_meant(rule: str, codes: list[str]) -> None:
    """From memory: "headgear is worn with its badge" is meant of each hat."""
    text = (Path(__file__).parent / "broken" / "duty-on-a-kind.yaml").read_text("utf-8")
    result = load_texts({"books.yaml": text.replace("{must: coat}", rule)})
    assert [problem.code for problem in result.problems] == codes
    assert result.base is not None
    assert len(result.base.rules) == 1


def test_the_tolerance_of_a_rule_reaches_the_offsets_that_have_none() -> None:
    base = load_rule_base(GOOD).base
    assert base is not None
    placed = {rule.id.rpartition("/")[2]: rule.value.positions for rule in base.rules if rule.value.positions}
    found = [placed[name][0].offset for name in ("strip-place", "strip-place-own")]
    assert [offset.tolerance for offset in found if offset is not None] == [5, 2]
