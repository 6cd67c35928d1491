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
_AFTER = r"(?=\W*$|,? (?:in|on|at|with|when|while|whilst|under|during|for|if)\b)"

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
# problem issue worry trouble deal bother
(^|[.;:,–-] )(?:surely |but |so )*(?!what\b|which\b|who\b|how\b|where\b|when\b|there\b|it\b|that\b|this\b)
    ([^.;?!,]+?) (?:isn't|aren't|is not|are not|won't be|wouldn't be|can't be|shouldn't be) (?:<very> )*
    (?:going to be )?(?:a (?:problem|worry|bother|big deal)|an issue|any (?:trouble|bother))
    (?:,? (?:is|are|will|would) (?:it|they|that))?{_AFTER} => \1may I have \2
# became become
\bwhat(?:ever)? (?:has |'s )?bec(?:ame|ome) of\b => what happened to
"""
