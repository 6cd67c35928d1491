from __future__ import annotations

import gc

import pytest

import kb
import shell
from kb import errors
from kb.files import write_atomically
from kb.text import visible
from tests.shell.fakes import FakeBase, FakeOpening, fake_build, fake_export, fake_json


@pytest.fixture
def base() -> FakeBase:
    return FakeBase()


@pytest.fixture(autouse=True)
def contract(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """The canned base in place of the real one, save where the demo itself is tried."""
    if request.module.__name__.endswith("test_demo"):
        return
    names = {
        "KnowledgeBase": FakeBase,
        "Opening": FakeOpening,
        "build": fake_build,
        "export_base": fake_export,
        "answer_to_json": fake_json,
        "visible": visible,
        "write_atomically": write_atomically,
        "ClothboundError": errors.ClothboundError,
        "UsageError": errors.UsageError,
        "InvalidDataError": errors.InvalidDataError,
        "StoreUnavailableError": errors.StoreUnavailableError,
    }
    for name, value in names.items():
        monkeypatch.setitem(vars(kb), name, value)
    monkeypatch.setenv("COLUMNS", "80")
    monkeypatch.delenv("NO_COLOR", raising=False)


assert shell
gc.enable()  # the command line turned it off when it was loaded
