"""More loose ways of saying how things have come to be, put plainly; the form is that of `patter.py`."""

from __future__ import annotations

_BARRED = r"(?:ruled out|a no-no|out of the question|not allowed|not permitted|forbidden|banned)"
_NO_USE = r"(?:no good|no use|no go|no-go|useless|not good enough|not ok|not okay)"
_VERY = r"(?:really |just |quite )?"
_NO_GOOD = rf"{_VERY}(?:{_NO_USE}|{_BARRED})"
_SAID = r"((?:[\w'-]+ ){0,3}?[\w-]+?)"
_NAMED = r"(?!(?:it|that|this|they|these|those|what|which|who|why|there|is|are|you)\b)"
_RULED_OUT = rf"""
^(?:(?:so|then|and|but|oh|ah|ok|okay)\b[ ,]*)*{_NAMED}{_SAID}(?:['\u2019](?:s|re)| is| are| would be)\s
 {_NO_GOOD}(?: for (?:that|it|this))?(?: then| either)?\W*$ => is \1 ok?
^(?:(?:so|then|and|but|oh|ah|ok|okay)\b[ ,]*)*(?:is|are) {_NAMED}{_SAID} {_VERY}{_BARRED}
 (?: for (?:that|it|this))?(?: then| either)?\W*$ => is \1 forbidden?
^(?:(?:so|then|and|but|oh|ah|ok|okay)\b[ ,]*)*(?:is|are) {_NAMED}{_SAID} {_VERY}{_NO_USE}
 (?: for (?:that|it|this))?(?: then| either)?\W*$ => is \1 ok?
^((?:and |but |so )*)would {_NAMED}{_SAID} be (?:ok|okay|all right|alright|fine|allowed|acceptable)
 (?: then| too)?\W*$ => \1is \2 ok?
"""
MOVED = (
    _RULED_OUT
    + r"""
^((?:(?:and|but|so|even|what|only)\b,? )*)(?:if|when|once|while|whenever|as long as) (?:it|the weather)
 (?:['\u2019]s| is| was| turns)\s(?:all |quite |nice and |bone |completely |good and )?(dry|wet|fine|foul|
 fair|clear)(?: again| now| out| outside| there)*(?=\W*$|,| and\b| or\b| at\b| but\b) => \1in \2 weather
\b(?:they|he|she|the [\w' -]{2,30}?|my \w+)(?:['\u2019]ve| have|['\u2019]s| has)?\s
 (?:just |now )?(?:moved|sent|posted|transferred|put|shifted|assigned|switched|detailed|ordered) (?:me|us)\s
 (?:over |across |off |down |up |out )?(?:to|into|onto) (?=\w) => I am at\s
\b(i|we|he|she)(?:['\u2019]ve| have|['\u2019]s| has|['\u2019]m| am| are|['\u2019]re)?\s
 (?:just |now )?(?:(?:get|got|gets|was|were|been|being|getting)\s)?
 (?:moved|sent|posted|transferred|shifted|assigned|switched|detailed|attached|seconded)\s
 (?:over |across |off |down |up |out )?(?:to|into|onto) (?=\w) => \1 am at\s
\b(?:when|once|if|as soon as|while|until) (?:i|we|he|she|they)(?:['\u2019](?:m|s|re)| am| are| is)?\s
 (?:go|get|goes|gets|am|going|getting) back (?:to|on|into|at) (?=\w+ing\b) => when\s
^(?:(?:and|no|nope|sorry|oops|oh|wait|actually|it['\u2019]s|it is|make that|i meant?)[ ,.]+)*
 (?:only|just|more like) (?=(?:minus )?\d+ ?(?:degrees|\u00b0)) => and at\s
\bwhy (?:does|do|did|has|have|can|will) (?:nobody|no ?one|no-one|nothing) (?:ever )?(?:settled?|decided?|
 resolved?|sort(?:ed)?|fix(?:ed)?)(?: (?:it|that|this|which))?(?: out)?\W*$ => why?
\b(?:last|this|that) year,? (?=(?:in|on|during) [\w ]*\b(?:19|20)\d\d\b) =>
^(?:and |but |so )*(?:now )?(?:what if |if |when |once )?(?:(?:the|some|a) )?(fog|rain|snow|mist|sleet|hail|
 drizzle|frost|storm|gale)(?:['\u2019]s| has| is)? (?:now |just )?(?:c[ao]me (?:down|in|on|up)|
 coming (?:down|in|on)|comes (?:down|in|on)|roll(?:ed|s|ing) in|set(?:s|ting)? in|
 start(?:ed|s|ing)|beg[au]n|begins|g[eo]t up|
 clos(?:ed|es|ing) in|blown up|falling|fallen)(?: now| again| since| outside)*\W*$ => and in \1?
^((?:and |but |so )*)(?:it|the weather)(?:['\u2019]s| has)? (?:now |just )?(?:start(?:ed|s)?|beg[au]n
 |begins)\s(?:to )?(?:be )?(rain|snow|hail|sleet|drizzl)e?(?:ing)?\b => \1in \2
\b(raining|snowing|hailing|blowing|pouring|drizzling|freezing) (?:really |very |quite |so |pretty )?(?:hard|
 heavily|badly|lightly|a (?:bit|little|lot|gale)|like mad|outside)(?=[?.,;!]|\s|$) => \1
\b((?:can|may|could|must|should|do) (?:i|we|he|she|they)) (?:at least|at any rate|perhaps|maybe|possibly)\s
 (?=\w) => \1\s
\bon (my|his|her|our|their|your) own (?=[a-z]) => on \1\s
\b(?:a|one) quarter of an hour\b => 15 minutes
\b(?:three[- ]quarters|3/4) of an hour\b => 45 minutes
\ban hour and a half\b => 90 minutes
\b((?:for|only|just|about|takes?)\s)an? (minute|hour)(?=\W*$|[,;.]| then\b) => \1 1 \2
\b(?:it|that|this|i)(?:['\u2019]ll| will| might| may|['\u2019]d| would) (?:only |just )?(?:take|be)(?: me| us|
 there| in there)?\s(?:only |just |about )?(?=\d+ (?:minute|hour|second)|half an hour) => and for\s
^(?:and |but |so )*how long (?:does|do|would|will|is|can) (?:the|that|this|such an?|an?|his|her|my) (?:\w+ )?
 (?:order|leave|permission|dispensation|excusal|exemption|grant|consent|permit)s?(?: (?:last|hold|run|stand|
 good|go on|count|valid|in force|be|for))*\W*$ => for how long?
^((?:and |but |so |what |even )*(?:if|when|while) (?:i|we|he|she|they) (?:nip|pop|dash|step|slip|go|run|
 wander|walk|head|duck|am|are|is) [\w ]+?) (?:in (?:it|them|those)|with (?:it|them|those)(?: still)? on|
 wearing (?:it|them|those))(?=\W*$) => \1
"""
)
# Where a turn is not understood as it stands.
MORE_ELSE = r"""
^(?:(?:one |just one |my |a |the )?(?:last|final) (?:one|thing|question|point)|lastly|finally|to finish)
 (?: then| now)?[,.:;!-]+ (?=\w) =>
^(?:(?:now|next|then) )?(?:i|we) (?:have|\w+) to ask[,.:;-]+ (?=\w) =>
[, ]+(?:truly|honestly|really|i (?:swear|promise)|believe me|for sure|to be (?:exact|precise|honest))
 (?=[.!?,]|$) =>
(?<=\w) back (?=(?:on|off)(?: again)?\W*$) =>\s
\bmyself(?=[.,;!?]|$) =>
"""
