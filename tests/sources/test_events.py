"""From bytes to a tree: plain texts, positions, and what is refused."""

import msgspec
import pytest
import yaml

from kb.digests import digest_name
from kb.errors import Location
from kb.sources import Tree, events, parse_file
from kb.sources.tree import Mapping, Scalar, Sequence


def codes(data: bytes | str) -> list[tuple[int, int, str]]:
    raw = data if isinstance(data, bytes) else data.encode()
    return [(p.at.line, p.at.column, p.code) for p in parse_file(raw, "a.yaml").problems]


def test_every_value_is_the_text_that_is_written() -> None:
    """What YAML 1.1 would read as a boolean, an octal, a sexagesimal, a float, a date or nothing."""
    tree = parse_file(b"a: [no, 010, 1:30, 1.10, 2024-03-01, ~, 0x1F, .inf, 'x']\n", "a.yaml")
    assert tree.root is not None
    values = tree.root.get("a")
    assert isinstance(values, Sequence)
    written = [node.text for node in values.nodes if isinstance(node, Scalar)]
    assert written == ["no", "010", "1:30", "1.10", "2024-03-01", "~", "0x1F", ".inf", "x"]


def test_positions_count_characters_from_one() -> None:
    tree = parse_file("é: {ü: [ä, b]}\n".encode(), "a.yaml")
    assert tree.root is not None
    inner = tree.root.get("é")
    assert isinstance(inner, Mapping)
    values = inner.get("ü")
    assert isinstance(values, Sequence)
    assert [node.at for node in values.nodes] == [Location("a.yaml", 1, 9), Location("a.yaml", 1, 12)]


def test_windows_line_ends_and_a_byte_order_mark_are_taken() -> None:
    plain = parse_file(b"a: b\nc: >-\n  d\n  e\n", "a.yaml")
    assert parse_file(b"\xef\xbb\xbfa: b\r\nc: >-\r\n  d\r\n  e\r\n", "a.yaml").root == plain.root


def test_a_tree_goes_through_a_file_unchanged() -> None:
    """So that unchanged files need not be parsed again."""
    data = b"items:\n  - {id: cap, id: hat, label: [a, {b: c}]}\n"
    tree = parse_file(data, "a.yaml")
    assert tree.digest == digest_name(data)
    assert tree.problems
    assert msgspec.msgpack.decode(msgspec.msgpack.encode(tree), type=Tree) == tree
    assert msgspec.json.decode(msgspec.json.encode(tree), type=Tree) == tree


@pytest.mark.parametrize("data", [b"", b"\n", b"# only a remark\n", b"---\n"])
def test_an_empty_file_is_no_problem(data: bytes) -> None:
    tree = parse_file(data, "a.yaml")
    assert (tree.root, tree.problems, tree.readable) == (None, (), True)


def test_a_large_file_is_refused_unread() -> None:
    assert codes(b"a: b\n" + b"#" * events.LARGEST_FILE) == [(1, 1, "file-too-large")]


def test_nesting_stops_at_twenty() -> None:
    deep = events.DEEPEST - 1
    assert codes("a: " + "[" * deep + "]" * deep) == []
    assert codes("a: " + "[" * (deep + 1) + "]" * (deep + 1)) == [(1, 4 + deep, "too-deep")]
    assert codes("a: " + "[" * 900)[0][2] == "too-deep"


@pytest.mark.parametrize(
    "character", ["\x00", "\x1b", "\x7f", "\x85", "\u200b", "\u202e", "\u2066", "\ufeff", "\u00ad"]
)
def test_hidden_characters_are_refused_where_they_stand(character: str) -> None:
    assert codes(f"a: b\nc: d{character}e\n") == [(2, 5, "hidden-character")]


@pytest.mark.parametrize("escape", [r"\e", r"\0", r"\u202e", r"\x07", r"\L", r"\u200b", r"\uFEFF"])
def test_hidden_characters_from_escapes_are_refused(escape: str) -> None:
    assert codes(f'a: b\nc: "d{escape}e"\n') == [(2, 4, "hidden-character")]


@pytest.mark.parametrize("escape", [r"\n", r"\t", r"\_", r"\u00e9", r"\""])
def test_other_escapes_are_taken(escape: str) -> None:
    assert codes(f'a: "d{escape}e"\n') == []


def test_every_refusal_in_one_file_is_reported() -> None:
    text = "a: &x 1\na: 2\nb: !!int 3\nc: *x\nd: {<<: {e: f}, g: h}\n? [k]\n: v\n"
    assert codes(text) == [
        (1, 4, "anchor"),
        (2, 1, "duplicate-key"),
        (3, 4, "tag"),
        (4, 4, "alias"),
        (5, 5, "merge-key"),
        (6, 3, "key-not-text"),
    ]
    root = parse_file(text.encode(), "a.yaml").root
    assert root is not None
    assert [entry.key.text for entry in root.entries] == ["a", "b", "d"]


def test_a_bomb_of_merge_keys_costs_nothing() -> None:
    """820 bytes of this take PyYAML's own loader long before version 6.0.4."""
    lines = ["a0: &a0 {k: v}"] + [f"a{n}: &a{n} {{<<: [*a{n - 1}, *a{n - 1}]}}" for n in range(1, 30)]
    assert {code for _, _, code in codes("\n".join(lines))} == {"anchor", "merge-key", "alias"}


def test_the_slower_loader_gives_the_same_tree(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where PyYAML is built without its C library."""
    text = b"items:\n  - {id: cap, label: [a, 'b c']}\n  - id: hat\n    text: >-\n      One\n      two.\n"
    fast = parse_file(text, "a.yaml")
    monkeypatch.setattr(events, "_LOADER", yaml.SafeLoader)
    assert parse_file(text, "a.yaml") == fast
