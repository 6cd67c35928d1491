"""Short plain questions: on which days, who says yes, how many of what was told; lines as in `sayings.py`."""

from __future__ import annotations

_COUNTS = r"(?:two|three|four|five|six|seven|eight|nine|ten|\d\d?)"
_TROUBLE = r"(?:problems?|trouble|issues?|worry|worries|bother|harm|hassle|big deal)"

PLAINLY = rf"""
# dates date days hours months
^(?:on |between |from |in |during )?(?:what|which) (?:exact |calendar )?(?:dates?|days|hours|months) (?:of the
    \s(?:year|day) )?(?=(?:can|may|must|could|should|is|are|am|do|does|will)\b) => when\s
# enough
(^|[.;,:!] )(?:is|are|wo|would|will)(?:n't| not)? ((?:<the> )?[\w' -]+?) (?:be )?enough(?: on
    \s(?:its|their) own| by (?:itself|themselves))?,? without (<the> [\w' -]+?)\W*$
     => \1may I wear \2 without \3?
# bother bothering
,? (?:and )?(?:not|never) (?:have to )?bother (?:with |about )?(?:wearing |putting on )?(?=\w) => without\s
# come walk wander pop nip get go
\b(can|may|could|might|must|should) (<i>) (?:come|walk|wander|pop|nip|get|go)(?: about| around)? ((?:in|into
    |to|onto|on|through)\s<the> [\w' -]+?) (?:in|wearing|with) (?!(?:the|a|an|order|case)\b)([\w' -]+?)
    (?=\W*$|,| without\b| and\b) => \1 \2 wear \4 \3
# say agree okay nod
\bwho (?:has|have|needs|need|must|should)(?: to)? (?:say (?:yes|ok|okay|so)|agree|ok it|okay it
    |give (?:it |me |us )?the (?:nod|ok|okay|go-ahead)) (?:before|for|so) (<me>|<i>)(?: can| may| to)?
    \s(?=\w+ ) => who gives permission to\s
^(?:i've|i have|i've got|i have got) (<the>) (?:private )?([\w' -]+?)(?: from home| of my own)?
    (?: that| which)?\s(?:i'd|i would) (?:like|love|want) to <wear>((?: (?:in|on|at|with|for|to)\b[\w' -]*)?)
    [.;,!] who (?:has|have|needs|need|must) to
    \s(?:say (?:yes|ok|okay|so)|agree|ok it|okay it|give (?:it |me |us )?the (?:nod|ok|okay))\W*$
     => who has to approve \1 \2\3?
# ask see speak talk approach
^who (?:do|does|should|must|can|would) (<i>) (?:have to |need to )?(?:ask|see|go to|speak to|talk to
    |approach)(?: about| for| regarding)?(?: permission| leave)?(?: for| about| to)? (?:<wearing>|wear)
    \s(.+?)\W*$ => who gives permission to wear \2?
^who (?:do|does|should|must|can|would) (<i>) (?:have to |need to )?(?:ask|see|go to|speak to|talk to
    |approach)(?: about| for| regarding)?(?: permission| leave)?(?: for| about| to)? carry(?:ing)?
    \s(.+?)\W*$ => who gives permission to carry \2?
# high tall
^how (?:high|tall) (?:can|may|must|should|could) (<the> )?([\w-]+?)s? be\b
     => what must the height of the \2 be
# wide broad
^how (?:wide|broad) (?:can|may|must|should|could) (<the> )?([\w-]+?)s? be\b
     => what must the width of the \2 be
# long
^how long (?:can|may|must|should|could) (<the> )?([\w-]+?)s? be\b => what must the length of the \2 be
# issued given supplied provided
^how many ([\w' -]+?) (?:is|are|am|was|were) (?:(<the>)? ?(?:new )?([\w' -]+?)|(<i>)) (?:issued|given|supplied
    |provided)(?: with)?\W*$ => how many \1 does \2 \3\4 get?
# first
(?:^|(?<=[.;,:]) ?)(?:it's |this is |on )?(?:my |the )?(?:very )?(?:first|1st) (?:day|shift|week|morning
    |evening|night)(?: here| today| tomorrow| at work| on the job)?(?:,|\.|;| and) (?=\w) => \s
# uniform outfit kit attire
^(?:i'm |i am )?(?:<the> )?([\w' -]+?)(?: here)?[.,;:] what(?:'s| is) (?:the|my|our) (?:proper |correct |right
    |full |usual )?(?:uniform|outfit|kit|attire)\W*$ => what does a \1 wear?
# all two three four five six seven eight nine ten
^(?:i've|i have|i've got|i have got|i own|i've earned|i've won|i've collected) (?:got |earned |won |been given
    \s|gained |collected )?({_COUNTS}) (?:<own> )?([\w' -]+?)[.;,!] (?:so |and )?(?:all|all of them|all \1
    |\1)(?: of them| at once| together| then| on| ok| okay| fine| allowed)*\W*$ => may I wear \1 \2?
^(?:i've|i have) (?:passed|done|taken|completed|sat) ({_COUNTS}) ([\w-]+) (?:exams?|tests?|courses?
    |examinations?|papers)[.;,!] (?:so |and )?(?:all )?\1 ([\w-]+?)(?: then| ok| okay| allowed)*\W*$
     => I hold a \2 examination. May I wear \1 \2 \3?
# it they that
^what(?:'s| is| are) (?:it|they|that|those|these) for,? (<the> [\w' -]+?)\W*$ => why must \1 be worn?
"""

MISLEADING_PLAINLY = rf"""
# problem problems trouble issue issues worry worries bother harm hassle deal
^(?!.*\b(?:is|are|was|were|it|that|this|there|why|what|who|when|where|how)\b.*\b(?:not|no)\b)(.*?\w),?
    \s(?:not|no) (?:really )?(?:an? |any )?{_TROUBLE}(?: (?:in|with) (?:that|it|this))?\W*$ => \1 ok?
# issued given supplied provided
^(?:and |so |but )?(?:is|are) (?!.*\b(?:order|leave|permission|consent|waiver|dispensation|word|notice)
    \b)(?:<the> )?([\w' -]+?) (?:issued|given|supplied|provided)(?: out)?(?: free)?(?: (?:to|for) <me>
    | by <the> [\w-]+)?(?: as well| too| free)*\W*$ => who buys the \1?
# give grant
^who (?:has|have|needs|need|must|should)(?: to)? (?:give|grant) (?=(?:permission|leave|consent|the ok)\b)
     => who gives\s
"""
