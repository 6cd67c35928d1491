"""The draft of the demo's plan, as kept in draft_demo.txt.

After a change of the demo or of the wording, write it anew with `python -m tests.guidance.draft_demo`, read
it as the one who has to sign it would, and commit it only if a person could have written it.
"""

from __future__ import annotations

from pathlib import Path

from kb import demo_folder
from kb.files import write_atomically
from kb.guidance.compose import compose
from kb.guidance.reading import open_plan
from kb.guidance.render_markdown import render_markdown

KEPT = Path(__file__).with_name("draft_demo.txt")
PLAN = demo_folder() / "plans" / "boat-crews-in-winter.plan"


def demo_draft() -> str:
    """The draft as Markdown, with noughts for the digest, which any change of the books changes."""
    return render_markdown(compose(open_plan(PLAN.read_bytes(), PLAN.name, demo_folder()), "0" * 64)).decode()


if __name__ == "__main__":
    write_atomically(KEPT, demo_draft().encode())
