"""Every mistake a writer can make: one broken rule base each, and the one problem that it must give.

The first line of a fixture says where and what: `# line:column code`. A mistake that takes
two books has a folder, and the line stands in the file that has the mistake.
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from kb.errors import Location
from kb.sources import load_trees, parse_file

BROKEN = Path(__file__).parent / "broken"
CASES = sorted(path for path in BROKEN.iterdir() if path.is_dir() or path.suffix == ".yaml")
EXPECTED = re.compile(rb"# (\d+):(\d+) ([a-z0-9-]+)\n")


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_a_mistake_gives_one_problem_at_its_place(path: Path) -> None:
    files = sorted(path.glob("*.yaml")) if path.is_dir() else [path]
    (file, expected), *others = [(f, m) for f in files if (m := EXPECTED.match(f.read_bytes()))]
    assert not others
    line, column, code = int(expected[1]), int(expected[2]), expected[3].decode()
    assert path.stem.startswith(code)

    base, problems = load_trees([parse_file(each.read_bytes(), each.name) for each in files])

    assert [(p.at, p.code) for p in problems] == [(Location(file.name, line, column), code)]
    problem = problems[0]
    assert problem.message.endswith(".")
    assert problem.remedy.endswith((".", "?"))
    assert (base is None) == (problem.severity == "error")


def _codes(module: ast.Module) -> Iterator[str]:
    """The second argument of every call that reports a problem."""
    for node in ast.walk(module):
        if not isinstance(node, ast.Call) or len(node.args) < 4:
            continue
        name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        if name in ("error", "warn", "Problem") and isinstance(node.args[1], ast.Constant):
            yield str(node.args[1].value)


def test_every_code_has_a_fixture() -> None:
    """The codes in the source, but those of the folder and its files, which `test_loading` covers."""
    sources = Path(__file__).parents[2] / "kb" / "sources"
    used = {code for path in sources.glob("*.py") for code in _codes(ast.parse(path.read_text()))}
    shown = {m[3].decode() for f in BROKEN.rglob("*.yaml") if (m := EXPECTED.match(f.read_bytes()))}

    assert len(used) > 60
    assert used - shown == {
        "file-ignored",
        "file-name",
        "file-too-large",
        "no-files",
        "no-folder",
        "unreadable-file",
    }


def test_a_condition_that_is_denied_outside_when_is_told_where_it_goes() -> None:
    path = BROKEN / "unknown-key-not.yaml"
    _, (problem,) = load_trees([parse_file(path.read_bytes(), path.name)])
    assert problem.remedy == 'Write "when: {not rig: ...}"; only conditions can be denied.'


def test_a_slip_in_must_is_told_as_one() -> None:
    path = BROKEN / "unknown-key-not.yaml"
    written = path.read_bytes().replace(b"      - must: coat", b"      - musst: coat")
    _, problems = load_trees([parse_file(written, path.name)])
    assert "Did you mean must?" in [problem.remedy for problem in problems]


def test_a_slip_in_must_not_is_told_as_one() -> None:
    path = BROKEN / "unknown-key-not.yaml"
    written = path.read_bytes().replace(b"      - must: coat", b"      - must nott: coat")
    _, problems = load_trees([parse_file(written, path.name)])
    assert "Did you mean must not?" in [problem.remedy for problem in problems]


@pytest.mark.parametrize("written", [b"a:\n  b: 1\n\tc: 2\n", b"a:\n\t- b\n", b"a:\n  - b: 1\n  \t c: 2\n"])
def test_a_tab_in_the_indentation_is_named(written: bytes) -> None:
    (problem,) = parse_file(written, "tab.yaml").problems
    assert "tab" in f"{problem.message} {problem.remedy}"
    assert "colons" not in problem.remedy
