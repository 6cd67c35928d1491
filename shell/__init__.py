"""The command line and the interactive shell."""

import gc
import sys

# A one-shot question is soon over: looking for garbage would be a tenth of its time. `main` turns the
# collector on again for every other command, and at its end.
gc.disable()

# msgspec takes three names from typing_extensions where that is installed; `typing` has the same ones since
# Python 3.11. Loading the package costs a one-shot question two thirds of a bare Python start, so msgspec is
# loaded first, without it.
if "typing_extensions" not in sys.modules and "msgspec" not in sys.modules:
    sys.modules["typing_extensions"] = None  # type: ignore[assignment]
    try:
        import msgspec  # noqa: F401
    finally:
        del sys.modules["typing_extensions"]
