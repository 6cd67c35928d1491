"""What is asked in a word after a thing has been told: "Problem?", "either of those an issue?".

Written as the lines of `sayings.py` are.
"""

from __future__ import annotations

AFTERWARDS = r"""
# problem problems issue issues trouble worry worries snag snags bother difficulty hitch
<sep>(?:(?:is|are|would|will) )?(?:either|any|one|both|each)(?: one)?(?: of (?:those|these|them|that|the
    \s(?:two|three|lot)))?(?: be)? (?:an? |any )?(?:problems?|issues?|trouble|worry|worries|snags?|bother
    |difficulty|hitch)\s*\?+\s*$ => . Are either of those allowed?
<sep>(?:(?:is|are|would|will|isn't|won't) )?(?:(?:that|this|it|they|those|these) )?(?:(?:going to )?be\s
    )?(?:any |an? )?(?:problems?|issues?|trouble|worry|worries|snags?|bother|difficulty|hitch)(?: with
    \s(?:that|it|this|them))?\s*\?+\s*$ => , ok?
"""
