"""The source text of the program as data: files, functions, names and literals."""

from __future__ import annotations

import ast
import fnmatch
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import get_args

import kb.model.questions
import kb.model.records
from tests.documents.pages import ROOT

PROGRAM = ("kb", "shell")
_NOT_OURS = (".git", *(line.strip("/") for line in (ROOT / ".gitignore").read_text().split()))


def tree_files() -> list[Path]:
    """Every file of the tree but those that .gitignore names; works where there is no Git."""

    def below(folder: Path) -> Iterator[Path]:
        for path in sorted(folder.iterdir()):
            if any(fnmatch.fnmatch(path.name, pattern) for pattern in _NOT_OURS):
                continue
            if path.is_dir():
                yield from below(path)
            else:
                yield path

    return list(below(ROOT))


def python_files(*folders: str) -> list[Path]:
    inside = [ROOT / folder for folder in folders]
    return [p for p in tree_files() if p.suffix == ".py" and any(p.is_relative_to(f) for f in inside)]


@cache
def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def functions(path: Path) -> list[tuple[str, int]]:
    """The name and the number of lines of every function."""
    kinds = (ast.FunctionDef, ast.AsyncFunctionDef)
    found = [node for node in ast.walk(parsed(path)) if isinstance(node, kinds)]
    return [(node.name, (node.end_lineno or node.lineno) - node.lineno + 1) for node in found]


@cache
def words_of_the_code() -> frozenset[str]:
    """Every identifier and every one-word literal of the program, and every local name of the ontology."""
    found: set[str] = set()
    for path in python_files(*PROGRAM):
        for node in ast.walk(parsed(path)):
            for field in ("id", "attr", "name", "arg"):
                value = getattr(node, field, None)
                if isinstance(value, str):
                    found.add(value)
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and " " not in node.value:
                found.add(node.value)
    for path in (ROOT / "ontology").glob("*.ttl"):
        found.update(re.findall(r"\b\w+:([A-Za-z]\w*)", path.read_text(encoding="utf-8")))
    return frozenset(found)


def record_names() -> set[str]:
    """The public records of the model: every structure that a module of kb.model defines, and its indexes."""
    found = set()
    for path in (ROOT / "kb" / "model").glob("*.py"):
        for node in parsed(path).body:
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                found.add(node.name)
    return found


def kinds() -> dict[str, tuple[str, ...]]:
    """The literal types of the model with their values."""
    found = {}
    for module in (kb.model.records, kb.model.questions):
        for name, value in vars(module).items():
            values = get_args(value)
            if values and all(isinstance(v, str) for v in values) and not issubclass(type(value), type):
                found[name] = values
    return found
