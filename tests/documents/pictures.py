"""The screens of the README, drawn by the installed program.

After a change of the demo, of the wording or of the screens, draw them anew with
`python -m tests.documents.pictures`, look at them, and commit them.
"""

from __future__ import annotations

import html
import re
import subprocess
import tempfile
from pathlib import Path

from tests.documents.pages import README, ROOT, links_of
from tests.documents.running import environment

AS_OF = "2026-12-01"


def questions() -> list[tuple[str, Path]]:
    """The question and the file of every picture in the README; the question is the picture's text."""
    return [(link.label, ROOT / link.target) for link in links_of(README) if link.picture]


def draw(question: str, target: Path, cache: Path) -> None:
    """The screen of a question as it is on the day of the pictures."""
    command = ["clothbound", "ask", question, "--as-of", AS_OF, "--svg", str(target)]
    env = environment(cache)
    done = subprocess.run(command, env=env, capture_output=True, text=True, encoding="utf-8", check=False)
    assert done.returncode in (0, 4), done.stderr


def words_of(picture: Path) -> list[str]:
    """The words of a picture, in order; how they are placed and coloured is the drawing library's affair."""
    texts = re.findall(r"<text [^>]*>([^<]*)</text>", picture.read_text(encoding="utf-8"))
    return html.unescape(" ".join(texts)).replace("\xa0", " ").split()


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as cache:
        for question, target in questions():
            target.parent.mkdir(exist_ok=True)
            draw(question, target, Path(cache))
            print(target.relative_to(ROOT))
