"""The program over the canned base, as a process: `python -m tests.shell.run_fake ARGUMENTS`."""

from __future__ import annotations

import sys

import kb
from tests.shell.fakes import FakeBase, FakeOpening, fake_build, fake_export, fake_json

if __name__ == "__main__":
    vars(kb).update(
        KnowledgeBase=FakeBase,
        Opening=FakeOpening,
        build=fake_build,
        export_base=fake_export,
        answer_to_json=fake_json,
    )
    from shell.main import main

    sys.exit(main())
