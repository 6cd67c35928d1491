"""Links lead somewhere, and what a page names exists."""

from __future__ import annotations

import ast
import importlib.util
import re
import tomllib
from pathlib import Path

import pytest

from tests.documents.code import parsed, python_files, tree_files
from tests.documents.pages import DEVELOPERS, PAGES, ROOT, anchors_of, code_of, links_of, prose_of


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.relative_to(ROOT).as_posix())
def test_every_link_leads_somewhere(page: Path) -> None:
    for link in links_of(page):
        assert not re.match(r"[a-z]+:", link.target), f"{link.target} is not part of the program"
        file, _, anchor = link.target.partition("#")
        target = (page.parent / file).resolve() if file else page
        assert target.is_file(), link.target
        assert not anchor or anchor in anchors_of(target), link.target


def test_every_page_is_looked_at() -> None:
    assert {path for path in tree_files() if path.suffix == ".md"} == set(PAGES)


@pytest.mark.parametrize("page", PAGES[:2], ids=lambda page: page.name)
def test_every_path_and_module_in_the_text_exists(page: Path) -> None:
    folder = ROOT
    for line in prose_of(page).splitlines():
        for code in re.findall(r"`([^`]+)`", line):
            if code.startswith("kb/") and code.endswith("/"):
                folder = ROOT / code
            if re.fullmatch(r"\.?(kb|shell|tests|ontology|demo_facts|ci)/[\w./-]*", code):
                assert (ROOT / code).exists(), code
            elif re.fullmatch(r"[\w-]+\.py", code):
                assert list((ROOT / "kb").rglob(code)) or list((ROOT / "shell").rglob(code)), code
            elif code.startswith("python -m "):
                assert importlib.util.find_spec(code.split()[2]) is not None, code
    assert folder.is_dir()


def _layers() -> list[str]:
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    contract = settings["tool"]["importlinter"]["contracts"][0]["layers"]
    return [name.strip() for line in contract for name in line.split("|")]


def _imported(path: Path) -> set[str]:
    """Dotted names of what a module imports from the program."""
    found: set[str] = set()
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module, *(f"{node.module}.{alias.name}" for alias in node.names)}
        elif isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
    return found


def test_the_layers_are_told_in_an_order_in_which_each_imports_only_from_those_before() -> None:
    flow = prose_of(DEVELOPERS).partition("## How data flows")[2].partition("\n## ")[0]
    place = {}
    for layer in _layers():
        file = layer.replace(".", "/")
        place[layer] = flow.find(f"`{file}/`" if (ROOT / file).is_dir() else f"`{file}.py`")
    assert -1 not in place.values(), place
    pairs = set()
    for path in python_files("kb"):
        module = ".".join(path.relative_to(ROOT).with_suffix("").parts)
        for importer in place:
            if module == importer or module.startswith(f"{importer}."):
                imported = _imported(path)
                pairs |= {(importer, layer) for layer in place if layer in imported and layer != importer}
                pairs |= {
                    (importer, layer)
                    for layer in place
                    if layer != importer and any(name.startswith(f"{layer}.") for name in imported)
                }
    assert len(pairs) > 20
    assert [pair for pair in sorted(pairs) if place[pair[1]] > place[pair[0]]] == []


def test_pages_name_no_file_that_is_gone() -> None:
    assert [
        code
        for page in PAGES[:2]
        for code in code_of(page)
        if code.endswith(".md") and not (ROOT / code).is_file()
    ] == []
