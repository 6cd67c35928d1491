"""What is asked in a word after a thing has been told, and what number a condition has: "how hot for ...?".

Written as the lines of `sayings.py` are.
"""

from __future__ import annotations

AFTERWARDS = r"""
# problem problems issue issues trouble worry worries snag snags bother difficulty hitch harm
<sep>(?:(?:is|are|would|will) )?(?:either|any|one|both|each)(?: one)?(?: of (?:those|these|them|that|the
    \s(?:two|three|lot)))?(?: be)? (?:an? |any )?(?:problems?|issues?|trouble|worry|worries|snags?|bother
    |difficulty|hitch)\s*\?+\s*$ => . Are either of those allowed?
<sep>(?:(?:is|are|would|will|isn't|won't) )?(?:(?:that|this|it|they|those|these) )?(?:(?:going to )?be\s
    )?(?:any |an? )?(?:problems?|issues?|trouble|worry|worries|snags?|bother|difficulty|hitch
    |harm)(?: (?:with|in)
    \s(?:that|it|this|them))?\s*\?+\s*$ => , ok?
# hot cold warm cool chilly windy strong high low wet bad
^(?:just )?how (?:hot|cold|warm|cool|chilly|windy|strong|high|low|wet|bad) (?:must|does|do|should|has
    |need|needs|is) (?:it|<the> [\w -]{3,25}?) (?:(?:have|need|got|has|supposed|meant) to\s)?(?:be|get|blow
    |reach|go|rise|drop|fall)?(?: outside| out)?,? (?:before|for|to|if|so that|until) (?:(?:<i> |<me> )?
    (?:can|may|must|could|have to|to|am allowed to|are allowed to)?\s?(?:<wear> |<wearing> )?)
    (?!.*\b(?:to|off)\b)(.+?)(?:\s(?:can|may|must) be worn| is worn| is allowed)?\W*$ => when may \1 be worn?
^(?:at|above|below|over|under|from) (?:what|which) (?:temperature|forecast|wind(?: speed)?|reading) (?:is|are
    |do|does|can|may|must) (?:<i> (?:have to |need to )?<wear> )?(.+?)(?: allowed| permitted| worn| required
    | compulsory| be worn)?\W*$ => when may \1 be worn?
# longest shortest
\bwhat(?:['’]?s| is| was| would be) the (?:longest|shortest) ((?:<the> )?[\w' -]+?) (?:that )?(<i>
    |<the> [\w'-]+|[a-z]{1,2}\d) (can|may|could|might|am allowed to|is allowed to|are allowed to) (?:have
    |wear|grow|carry|sport)\b => how long may \1 of \2 be
# exemption exemptions permit permits dispensation dispensations
^(?:and |so )?(?:(?:does|do|will|would|can) )?((?:<the> )?[\w -]*?(?:exemption|permit|dispensation)s?)
    \s(?:ever )?(?:runs? out|expires?|lapses?|ends?)(?: after (?:an?|one|two|three|six|twelve|\d+)
    \s(?:days?|weeks?|months?|years?))?(?:,? (?:like|as|just like|the same as) [^.;?!]+)?\W*$ => do \1 expire?
"""
