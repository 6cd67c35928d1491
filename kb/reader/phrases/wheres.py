"""Ways of asking on which side or limb a thing goes; written as the lines of `sayings.py`."""

from __future__ import annotations

_LIMB = "(?:side|shoulder|arm|forearm|hip|hand|wrist|breast|sleeve|lapel|leg|ear|end|edge|half)"

WHERES = rf"""
# which what
^(?:on |over |from |at )?(?:which|what) {_LIMB} (do|does|should|must|is|are) (.+?) (?:hang|hung|go|sit|be worn
    |be carried|be slung|worn|carried|slung|dangle|lie|fall)(?: from| over| on| at| off| across| to)\W*$
     => where \1 \2 go?
^(?:<the> )?([\w' -]+?)(?: -+|:|,|;)? (?:goes |go |sits |sit |is worn |are worn |worn |hangs |hang )?(?:on
    |over|at|from) (?:which|what) {_LIMB}\W*$ => where is the \1 worn?
# tucked hang
^(?:(?:is|are|must|should|does|do) )?((?:<the> )[\w' -]+?)(?: be| get)?[,:-]? (?:tucked in|hanging out
    |hang out|left out) or\s
    (?:(?:can|may|does|do|is|are|should|must) (?:it|they|that|i) )?(?:just )?(?:be )?
    (?:tucked(?: it| them)? in|tucks? in|hangs?|hanging|left|leave|worn|let (?:it|them) hang)?
    (?: it| them)? ?(?:out|loose|free|over)?\W*$ => what must the fit of \1 be?
"""
MISLEADING_WHERES = r"""
# finishes finish finishing finished
\bfinish(?:es|ed|ing)? (?=(?:about |just |only |some |at )?\d) => ends\s
# side end edge half
^(?:<the> )?((?:(?!where|which|what|how|does|do|must|may|is|are)[\w'-]+ ?){1,4}?)(?: -+|:|,|;)?\s
    (?:(?:goes|go|sits|sit|is worn|are worn|worn|hangs|hang) )?(?:on|at|to) (?:which|what)\s
    (?:side|end|edge|half) of (?:<the> )?[\w' -]+?\W*$ => where is the \1 worn?
"""
"""Where the other thing would be taken for a second that is asked about."""
