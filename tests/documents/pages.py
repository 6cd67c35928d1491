"""The documents as data: their fences, links, headings and inline code."""

from __future__ import annotations

import re
from pathlib import Path

import msgspec

ROOT = Path(__file__).parents[2]
README = ROOT / "README.md"
DEVELOPERS = ROOT / "DEVELOPERS.md"
PAGES = (
    README,
    DEVELOPERS,
    ROOT / "CHANGELOG.md",
    ROOT / "demo_facts" / "README.md",
    ROOT / "ontology" / "README.md",
    ROOT / "kb" / "docs" / "guidance.md",
    ROOT / "kb" / "docs" / "rule-books.md",
    ROOT / "kb" / "docs" / "semantics.md",
)

_FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
_LINK = re.compile(r"(!?)\[([^\]]*)\]\(([^)\s]+)\)")
_CODE = re.compile(r"`([^`\n]+)`")
_HEADING = re.compile(r"^#+ (.+)$", re.MULTILINE)


class Fence(msgspec.Struct, frozen=True):
    """A fenced example: its language, its text, and the line of the page on which the text begins."""

    language: str
    text: str
    line: int


class Link(msgspec.Struct, frozen=True):
    """A link or, with `picture`, an image."""

    picture: bool
    label: str
    target: str


def text_of(page: Path) -> str:
    return page.read_text(encoding="utf-8")


def fences_of(page: Path) -> list[Fence]:
    text = text_of(page)
    return [Fence(m[1], m[2], text.count("\n", 0, m.start(2)) + 1) for m in _FENCE.finditer(text)]


def prose_of(page: Path) -> str:
    """The page without its fenced examples."""
    return _FENCE.sub("", text_of(page))


def links_of(page: Path) -> list[Link]:
    return [Link(bool(m[1]), m[2], m[3]) for m in _LINK.finditer(_CODE.sub("", prose_of(page)))]


def code_of(page: Path) -> list[str]:
    """Everything in single backquotes outside the fences."""
    return _CODE.findall(prose_of(page))


def anchors_of(page: Path) -> set[str]:
    """The anchors of the headings: lower case, hyphens for spaces, no punctuation."""
    bare = (re.sub(r"[^\w\- ]", "", heading.lower()) for heading in _HEADING.findall(prose_of(page)))
    return {heading.strip().replace(" ", "-") for heading in bare}


def section_of(page: Path, heading: str) -> str:
    """The prose under one heading, up to the next heading of its level or above."""
    found = re.search(rf"^(#+) {re.escape(heading)}$", text_of(page), re.MULTILINE)
    assert found, f"{page.name} has no heading {heading}"
    rest = text_of(page)[found.end() :]
    following = re.search(rf"^#{{1,{len(found[1])}}} ", rest, re.MULTILINE)
    return rest[: following.start()] if following else rest


def rows_of(section: str) -> list[list[str]]:
    """The rows of the tables in a section, without their heads."""
    rows: list[list[str]] = []
    for line in section.splitlines():
        if not line.startswith("|"):
            continue
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if set("".join(cells)) <= set("-: "):
            rows.pop()
        else:
            rows.append(cells)
    return rows
