"""Whatever stands in the files, loading collects problems and never raises."""

import random
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from kb.sources import load_texts, load_trees, parse_file

GOOD = {path.name: path.read_text() for path in sorted((Path(__file__).parent / "good").glob("*.yaml"))}
PIECES = (
    "- ", ": ", "{", "}", "[", "]", ", ", "'", '"', "#", "\n", "\n  ", "&a ", "*a", "!t ", "<<: ",
    "---\n", ">-\n", "|", "?", "must", "must not", "may", "not ", "any of", "clause 4.12", "K5",
    "K2 and above", "all except", "1 1/4 in", "about", "2024-02-30", "yes", "no", "worn", "granted",
    "holds", "dress-order/2024", "\u202e", "\x1b", "cap", "smock", "0", "-1", "1/0 in", "from", "to",
    "in force from", "id", "label", "\t", "'" * 3, "of", "only", "phase out", "otherwise", "null",
)  # fmt: skip


@st.composite
def changed_files(draw: st.DrawFn) -> dict[str, str]:
    """The good files with a few places cut out, doubled, swapped or overwritten."""
    files = dict(GOOD)
    chance = random.Random(draw(st.integers(0, 2**32)))
    for _ in range(draw(st.integers(1, 4))):
        name = draw(st.sampled_from(sorted(files)))
        text = files[name]
        start = chance.randrange(len(text) + 1)
        end = min(len(text), start + chance.choice((0, 1, 3, 10, 60)))
        piece = draw(st.sampled_from(PIECES))
        files[name] = text[:start] + piece * chance.choice((0, 1, 1, 2)) + text[end:]
    return files


@st.composite
def changed_lines(draw: st.DrawFn) -> dict[str, str]:
    """The good files with lines removed, repeated or moved, which keeps most of the form."""
    files = dict(GOOD)
    chance = random.Random(draw(st.integers(0, 2**32)))
    for _ in range(draw(st.integers(1, 4))):
        name = draw(st.sampled_from(sorted(files)))
        lines = files[name].splitlines(keepends=True)
        line = lines.pop(chance.randrange(len(lines)))
        for _ in range(draw(st.integers(0, 2))):
            lines.insert(chance.randrange(len(lines) + 1), line)
        files[name] = "".join(lines)
    return files


def check(files: dict[str, str]) -> None:
    result = load_texts(files)
    assert (result.base is None) == any(problem.severity == "error" for problem in result.problems)
    for problem in result.problems:
        assert problem.message
        assert problem.remedy
        lines = files[problem.at.file].count("\n") + 1
        assert 1 <= problem.at.line <= lines + 1
        assert problem.at.column >= 1


@settings(max_examples=150, deadline=None)
@given(changed_files())
def test_changed_characters_never_raise(files: dict[str, str]) -> None:
    check(files)


@settings(max_examples=150, deadline=None)
@given(changed_lines())
def test_changed_lines_never_raise(files: dict[str, str]) -> None:
    check(files)


@settings(max_examples=200, deadline=None)
@given(st.binary(max_size=200))
def test_any_bytes_never_raise(data: bytes) -> None:
    tree = parse_file(data, "a.yaml")
    base, problems = load_trees([tree])
    assert base is None
    assert problems


JSON_LIKE = st.recursive(
    st.sampled_from([*PIECES, "", "x"]),
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from(["id", "label", "x", "must"]), inner)
    ),
    max_leaves=8,
)


def flow(value: object) -> str:
    """A value as YAML in one line, every text in double quotes."""
    if isinstance(value, list):
        return "[" + ", ".join(map(flow, value)) + "]"
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {flow(inner)}" for key, inner in value.items()) + "}"
    text = str(value).replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n").replace("\t", "\\t")
    return f'"{text}"'


SECTION = st.sampled_from([
    "service", "authorities", "ladders", "grade groups", "branches", "qualifications", "authorisations",
    "facts", "fact groups", "never together", "items", "rigs", "aspects", "book", "edition", "part",
    "clauses",
])  # fmt: skip


@settings(max_examples=200, deadline=None)
@given(st.dictionaries(SECTION, JSON_LIKE, min_size=1))
def test_a_section_of_any_shape_never_raises(sections: dict[str, object]) -> None:
    text = "".join(f"{name}: {flow(value)}\n" for name, value in sections.items())
    check({"a.yaml": text.replace("\x1b", "").replace("\u202e", "")})


KEYS = st.sampled_from([
    "must", "must not", "may", "need not", "only", "of", "not together", "phase out", "on", "grades",
    "rig", "when", "unless", "otherwise", "except items", "exception to", "disables", "repairs", "under",
    "from", "until", "position", "height", "count", "colour", "care", "precedence", "tolerance",
    "residual", "id",
])  # fmt: skip


@settings(max_examples=200, deadline=None)
@given(
    st.dictionaries(KEYS, JSON_LIKE | st.sampled_from(["cap", "K2", "2026-01-01", "about 1 in"]), min_size=1)
)
def test_a_rule_of_any_shape_never_raises(rule: dict[str, object]) -> None:
    text = (
        'book: dress-order\nedition: "2024"\nclauses:\n  - clause: "99"\n    text: x\n    rules: ['
        + flow(rule)
        + "]\n"
    )
    check({**GOOD, "extra.yaml": text.replace("\x1b", "").replace("\u202e", "")})
