"""`python -m shell` is the command line too."""

from __future__ import annotations

import sys

from shell.main import program

sys.exit(program())
