"""Ways of asking with words of time: "all year round", "from when to when", "the old limit was 20".

Lines as in `sayings.py`. What is left away says nothing that one day or month of the books tells.
"""

from __future__ import annotations

_ASKS = "(?:when|(?:what|which) (?:day|date|month|time))"
_TO = "(?:to|until|till|up to)"
_WAS = "(?:was|were|used to be|had been|said|allowed|gave)"
_END = r"(?=\s*[.,;:?!]|\s*$|,? (?:in|on|with|for|or|and|at|by)\b)"
_UNIT = r"(?:mm|cm|in|inch(?:es)?|millimet(?:re|er)s?|centimet(?:re|er)s?)"

TIMES = rf"""
# year day month hours
,? (?:all|the whole|the entire|throughout the|all through the|every(?: single)? day of the) year
    (?:[ -]?(?:round|long|through))?{_END} =>
,? (?:all day(?:[ -]long)?|every(?: single)? day|day in,? day out|in every month|in any month
    |at any time of (?:the )?year){_END} =>
^(?:all year(?:[ -]?(?:round|long))?|every day(?: of the year)?|all day(?: long)?),? (?=\w) =>
\b(?:on|in) an? (\d+)[ -]?(?:degrees?|°)(?: ?(?:c|celsius))? (?:day|afternoon|morning
    |evening)\b => at \1 degrees
^(?:between|during|in|at) (?:which|what) (?:dates|days|months|hours|times) (?=(?:can|may|must|do|does|is|are
    |should)\b) => when\s
# when until till date
^from {_ASKS} {_TO} {_ASKS} (?:is|are|do|does) (.+?)(?: run| last| go| hold)?\W*$ => when is \1?
^([\w' -]+?)\s?[:,;-]+ (?:from )?{_ASKS} {_TO} {_ASKS}\W*$ => when is \1?
^([\w' -]+?)\s?[:,;-]+ (?:until|till|up to|from|since) when\W*$ => when may \1 be worn?
# at
^((?:we|i|they|he|she)(?:'re| are|'m| am| have|'ve)? [a-z' -]{{3,40}}?) at (?:about |around )?
    (?:\d{{1,2}}|six|seven|eight|nine|ten|eleven|twelve)(?: sharp| ?o'clock)?(?=,| and | so ) => \1
# old former previous earlier
(?:[.;,:]|\s-)\s*(?:but |and |though |although |whereas )?(?:the |my |our )?(?:old|former|previous|earlier)
    \s(?:limit|rule|figure|maximum|minimum|size|length|width|number|amount) {_WAS} (?:about |only |just
    |up to )?[\d./]+ ?{_UNIT}?(?=\s*(?:[.,;?!](?!\d)|$)) =>
# first
^(?:hello,? |hi,? )?(?:it(?:'s| is) |this is )?my (?:very )?first (?:day|week)(?: here| today| aboard
    | on the job)?(?:,? and|,? so|\s?[,.:;-]+) (?=\w) =>
^(?:hello,? |hi,? )?first (?:day|week) here(?:,? and|,? so|\s?[,.:;-]+) (?=\w) =>
# new
^(?:hello,? |hi,? )?(?:i['’]?m |i am )?(?:brand[- ]|quite |fairly )?new
    \s(?=(?:on|in|at) [\w' -]{{3,30}}[.,;:] )(on|in|at)\b => I'm \1
^(?:hello,? |hi,? )?(?:brand[- ])?new (?!to\b)([a-z][\w' -]{{3,30}}?)(?: here| now)?(?=[.;:] (?:what|which|do
    |must|can|may|where|how)\b) => I'm a \1
"""
