"""Properties are tried on the same examples in each run, so that the gate says the same of the same tree.

`--hypothesis-profile=fresh` tries new ones. No example is failed for the time that it takes.
"""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("gate", derandomize=True, deadline=None)
settings.register_profile("fresh", deadline=None)
settings.load_profile("gate")
