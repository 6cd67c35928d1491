"""Every YAML example of the page on rule books loads."""

import re
import textwrap
from pathlib import Path

from kb.sources import load_texts
from kb.sources.sections import BOOK, VOCABULARY

PAGE = Path(__file__).parents[2] / "kb" / "docs" / "rule-books.md"
REST = Path(__file__).parent / "documents" / "vocabulary.yaml"
SHORT = 'book: dress-order\nedition: "2024"\n'
RULE = (
    SHORT + 'clauses:\n  - clause: "{number}"\n    text: An example.\n    rules:\n      - must: cap\n{body}'
)


def examples() -> list[str]:
    return re.findall(r"^```yaml\n(.*?)^```", PAGE.read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL)


def as_file(number: int, example: str) -> str:
    """An example as a whole file: clauses get a book, the keys of a rule a rule."""
    keys = re.findall(r"^([a-z][a-z ]*):", example, re.MULTILINE)
    if not set(keys) <= {*BOOK, *VOCABULARY}:
        return RULE.format(number=f"9.{number}", body=textwrap.indent(example, " " * 8))
    return SHORT + example if "clauses" in keys and "book" not in keys else example


def test_every_example_of_the_page_loads() -> None:
    files = {f"example-{n}.yaml": as_file(n, example) for n, example in enumerate(examples(), 1)}
    assert len(files) >= 6

    result = load_texts({**files, "rest.yaml": REST.read_text(encoding="utf-8")})

    assert [str(p) for p in result.problems if p.code != "undefined-term"] == []
    assert result.base is not None
    assert {rule.clause.rpartition("/")[2] for rule in result.base.rules} >= {"4.12", "9.4", "9.5", "9.6"}
