"""What is told around a question and turns nothing: who minds, who gave it, that something is a problem.

Written as the lines of `sayings.py`. A line takes talk away only where what stays is a whole question.
"""

from __future__ import annotations

_MIND = (
    r"(?:(?:really |actually |ever |much |surely )*(?:minds?|cares?|objects?|bothers?|complains?|fuss(?:es)?"
    r"|notices?|worr(?:y|ies)|kicks up a fuss|gives a (?:hoot|damn|monkey's|toss)))"
)
_WILL = r"(?:(?:'ll|'d| will| would| can| could)(?: ever| really)?)?"
_TAG = r"(?:,? (?:do|does|will|would|can|could) (?:they|he|she|anyone|anybody|you))"
_OVER = r"(?: (?:about|over|at|to))?"
_WHO_MINDS = (
    r"(?:and |but |so |honestly,? )*who(?:'s going to|'s gonna|'ll|'d| will| would| is going to)"
    r"(?: ever| really| even)* (?:mind|care|object|notice|complain|bother|worry|fuss)(?: about it)? if <i>"
)
_STOP = r"(?:\W*$|\?(?= ))"
_THING = r"(?!(?:it|that|this|them|those|these|me|him|her|us)\b|\w+ing\b)"
_AFTER = r"(?=\W*$|,? (?:in|on|at|with|when|while|whilst|under|during|for|if)\b)"

MISLEADING_ASIDES = rf"""
# who
^((?:[^?]*[.;:,–-] )?){_WHO_MINDS} (?!(?:not|never|do|did|\w+n't|kept|wore|had|carried) )([^?.;]+?){_STOP}
     => \1may I \2?
^((?:[^?]*[.;:,–-] )?){_WHO_MINDS} kept ([^?.;]+?){_STOP} => \1may I keep \2?
^((?:[^?]*[.;:,–-] )?){_WHO_MINDS} wore ([^?.;]+?){_STOP} => \1may I wear \2?
^((?:[^?]*[.;:,–-] )?){_WHO_MINDS} had ([^?.;]+?){_STOP} => \1may I have \2?
^((?:[^?]*[.;:,–-] )?){_WHO_MINDS} carried ([^?.;]+?){_STOP} => \1may I carry \2?
^((?:[^?]*[.;:,–-] )?){_WHO_MINDS} (?:don't|didn't|do not|did not) (?:wear|have|bother with|put on)
    \s([^?.;]+?){_STOP} => \1may I go without \2?
# harm
^((?:[^?]*[.;:–-] )?)(?:surely |but |so )*(?:there(?:'s| is) )?no (?:real |great )?harm in {_THING}
    ([^?.;,]+?)(?:,? is there|,? surely)?\W*$ => \1may I have \2?
^((?:[^?]*[.;:–-] )?)(?:but |so )*(?:where|what)(?:'s| is) the (?:real )?harm in {_THING}([^?.;,]+?)\W*$
     => \1may I have \2?
# problem issue worry trouble deal bother
(^|[.;:,–-] )(?:surely |but |so )*(?!what\b|which\b|who\b|how\b|where\b|when\b|there\b|it\b|that\b|this\b)
    ([^.;?!,]+?) (?:isn't|aren't|is not|are not|won't be|wouldn't be|can't be|shouldn't be) (?:<very> )*
    (?:going to be )?(?:a (?:problem|worry|bother|big deal)|an issue|any (?:trouble|bother))
    (?:,? (?:is|are|will|would) (?:it|they|that))?{_AFTER} => \1may I have \2
# s
\b(?!(?:it|that|what|there|he|she|one|who|here)'s)([a-z]{{3,}})'s
    \s(?=(?:about |only |nearly |over |under |at least |at most )?\d+(?:[.,]\d+)? ?(?:mm|cm
    |metres?|meters?|inch(?:es)?|knots?|°c?|degrees?)(?: (?:long|wide|across|high|deep|thick|now|already))?
    (?:\s*[.,;?!:]|\s*$|\s(?:and|but|so)\b)) => \1 is\s
# borrow
^((?:[^?]*[.;,] )?)(?:i(?:'ve| have)? |we(?:'ve| have)? )?(?:just )?(?:lost|mislaid|forgot(?:ten)?|left|broke
    |broken)\s<own> ((?:[\w-]+ ){{0,2}}?[\w-]+)(?: (?:yesterday|today|last \w+|at home|this \w+
    |on the \w+))?[.;,]+ (?:so )?(can|may|could) (<i>) borrow (?:one|another(?: one)?|a spare(?: one)?)\b
     => \1\3 \4 borrow a \2
# lend lent loan borrow
^((?:[^?]*[.;,] )?)(?:(?:my|our|the|a|one of (?:my|our|the))(?: [\w-]+){{1,3}}?|he|she|they|some(?:one|body))
    (?:'s|'ve| has| have)? (?:just )?(?:forgotten|forgot|lost|left|mislaid|broken|broke|torn|ripped|ruined
    |needs?|wants?|lacks|(?:hasn't|haven't) got|(?:got )?no|doesn't have|don't have)
    \s(?:<own> |an? |the |any )?((?:[\w-]+ ){{0,2}}?[\w-]+)(?: (?:yesterday|today|at home|this \w+
    |on the \w+|in the \w+))?[.;,]+ (?:so )?(can|may|could) (<i>)
    \s(?:lend|loan) (?:him|her|them) (?:mine|ours|my (?:spare|other|old|second)(?: one| pair)?|one of mine)\b
     => \1\3 \4 lend the \2
# phone phones mobile mobiles telephone smartphone bag bags rucksack backpack handbag lighter knife camera
     umbrella
\b(?:take|bring) (<the> (?:[\w-]+ )?(?:phones?|mobiles?(?: phone)?|telephone|smartphone|bags?|rucksack
    |backpack|handbag|lighter|knife|camera|umbrella)) in(?:side)?(?= with (?:me|us)|\W*$|[.,;?]) => carry \1
"""

ASIDES = rf"""
# nobody no none soul
^((?:[^?]*[.;:,–-] )?)(?:surely |but |and |so )*<nobody>{_WILL} {_MIND}{_OVER} (?:if|when|that) <i>
    \s([^?]+?){_TAG}?\W*$ => \1may I \2?
^((?:[^?]*[.;:,–-] )?)(?:surely |but |and |so )*<nobody>{_WILL} {_MIND}{_OVER}
    \s(?!if\b|when\b|that (?:i|we|the|my)\b|what\b|how\b)([^,;.?!]+?){_TAG}?\W*$ => \1may I have \2?
^(?!(?:[^?]*[.;:,–-] )?(?:may|can|could|must|should|is|are|do|does|what|which|who|where|how|when)\b)
    ([^?]*\w)[.;,!]+ (?:surely |but |and |so )*<nobody>{_WILL} {_MIND}(?: about it| about that)?
    (?:{_TAG}|, right)?\W*$ => \1. Is that allowed?
^([^?]*\w),? (?:and |but )?<nobody>(?:'s| has| have|'ve| had)?(?: ever| yet)*
    \s(?:said|mentioned|complained|objected|noticed|minded|cared|commented|told me off|stopped me)
    (?: (?:a (?:thing|word)|anything|about (?:it|that|them)|so far|yet|before))*[.;,!]+ (?=\w) => \1.\s
# s
\b(?!(?:it|that|there|what|who|where|how|here|let|he|she|nobody|nothing|none|everybody|everyone|anyone
    |anybody|one|no-one)'s)([a-z]{{3,}})'s
    \s(?=(?:on|off|out|up|down|being|gone|broken|so|too|very|really|always|still|not|now|about|coming|going
    |running|working|moving|leaking|dripping|boiling|freezing)\b(?! (?:the|a|an|my)\b)) => \1 is\s
\b(?!(?:it|that|there|what|who|where|how|here|let|he|she|nobody|nothing|none|everybody|everyone|anyone
    |anybody|one|no-one)'s)([a-z]{{3,}})'s
    \s(?=(?:been|got|had|become|changed)\b) => \1 has\s
# can may must could should do does can't mustn't couldn't don't ca
^(?!.*\b(?:though|although|if|when|whenever|while|whilst|because|since|as|unless|until|till|once|after|before
    |where|that|now|considering|given|seeing|provided|assuming|supposing|even|not|no|never|neither|without
    |none|nobody|nothing|[a-z]+n't|(?:i|we|he|she|they)(?:'m|'re|'s| am| are| is)|(?:is|'s) an?)\b)
    ([^?]*\b(?:it|the [\w-]+|my [\w-]+|our [\w-]+|i|we)(?:'s|'m|'ve|'re| is| am| are| was| has| have)\b
    [^?,]*)[,;] (?:so |and )?(?=(?:can|may|must|could|should|do|does)(?:n't)? (?:i|we|he|she|they)\b)
     => \1.\s
# starting
\b(an? (?:new )?[\w-]+(?: [\w-]+)?) starting (?:on |next |this )?(?:mon|tues|wednes|thurs|fri|satur|sun)day\b
     => \1
# became become
\bwhat(?:ever)? (?:(?:has |'s )become|became) of\b => what happened to
# clause paragraph section
^what(?:'s| has| is| was| did they)? (?:happened to|(?:been )?changed? (?:in|about|with|to)
    |(?:new|different) (?:in|about)) (?:the )?((?:clause|paragraph|section) [\w-]*\d[\w./-]*
    (?: of [\w' -]+)?)\W*$ => what does \1 say?
^(?:when|since when) (?:was|were|did they|has|is) (?:the )?((?:clause|paragraph|section) [\w-]*\d[\w./-]*
    (?: of [\w' -]+?)?) (?:been )?(?:last )?(?:changed?|replaced?|amended|altered|updated|different|repealed
    |withdrawn)\W*$
     => what does \1 say?
"""
