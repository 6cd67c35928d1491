"""One folder of built books for all workers of a run, and the properties that it tries.

Properties are tried on the same examples in each run, so that the gate says the same of the same tree.
`--hypothesis-profile=fresh` tries new ones. No example is failed for the time that it takes.
"""

from __future__ import annotations

import gc
import os
import shutil
import tempfile

import pytest
from hypothesis import settings

from tests.opening import FOLDER

settings.register_profile("gate", derandomize=True, deadline=None)
settings.register_profile("fresh", deadline=None)
settings.load_profile("gate")


def pytest_configure(config: pytest.Config) -> None:
    """The workers, started by the run that looks after them, have its environment."""
    if "PYTEST_XDIST_WORKER" not in os.environ:
        os.environ[FOLDER] = folder = tempfile.mkdtemp(prefix="clothbound-tests-")
        config.add_cleanup(lambda: shutil.rmtree(folder, ignore_errors=True))


def pytest_collection_finish() -> None:
    """What was collected stays till the end, so looking through it for garbage is a tenth of the run."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(100_000, 50, 50)
