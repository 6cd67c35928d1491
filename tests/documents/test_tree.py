"""What holds for every file: its length, the length of functions, and that it speaks of the project alone."""

from __future__ import annotations

import re

from tests.documents.code import functions, python_files, tree_files
from tests.documents.pages import ROOT

LONGEST_FILE = 400
LONGEST_FUNCTION = 80
FOLDERS = {"kb", "shell", "ontology", "demo_facts", "tests"}
TEXTS = {".py", ".md", ".yaml", ".ttl", ".toml", ".json", ".jsonld", ".rq", ".txt", ".tsv", ".svg", ""}
# A folder of one machine; /home/someone is nobody's.
MACHINE = re.compile(
    r"(?<![\w.])/(?:home/(?!someone\b)\w|Users/\w|root/|tmp/\w|work/\w|mnt/\w)|\b[A-Z]:\\\\?Users"
)


def test_no_file_is_long() -> None:
    files = [
        *python_files("kb", "shell", "tests"),
        *ROOT.glob("*.md"),
        *(ROOT / "kb" / "docs").glob("*.md"),
    ]
    lengths = {
        path.relative_to(ROOT).as_posix(): path.read_text(encoding="utf-8").count("\n") for path in files
    }
    assert len(lengths) > 100
    assert {name: length for name, length in lengths.items() if length > LONGEST_FILE} == {}


def test_no_function_is_long() -> None:
    long = [
        (path.relative_to(ROOT).as_posix(), name, length)
        for path in python_files("kb", "shell", "tests")
        for name, length in functions(path)
        if length > LONGEST_FUNCTION
    ]
    assert long == []


def test_no_file_names_a_folder_of_one_machine() -> None:
    found = []
    for path in tree_files():
        if path.suffix in TEXTS and path.name != "test_tree.py":
            text = path.read_text(encoding="utf-8", errors="replace")
            found += [f"{path.relative_to(ROOT)}: {m[0]}" for m in MACHINE.finditer(text)]
    assert found == []


def test_the_top_level_has_only_what_belongs_there() -> None:
    folders = {path.relative_to(ROOT).parts[0] for path in tree_files() if path.parent != ROOT}
    assert {name for name in folders if not name.startswith(".")} == FOLDERS
