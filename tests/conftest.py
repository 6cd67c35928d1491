"""Properties are tried on the same examples in each run, so that the gate says the same of the same tree.

`--hypothesis-profile=default` tries new ones.
"""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("gate", derandomize=True)
settings.load_profile("gate")
