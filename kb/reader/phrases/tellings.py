"""Ways of telling what one did, and of asking whether it was right; written as the lines of `sayings.py`."""

from __future__ import annotations

TELLINGS = r"""
# gave given
\b(?:'ve |have |has |had )?(?:gave|given) (<the> [\w' -]+?) an? (?:(?:good|quick|proper|thorough|gentle|light
    |firm|decent)\s)*(wring|iron|press|wash|brush|scrub|rinse|polish|bleach|starch|soak|tarring|lacquer)
    (?: out)?(?= |[.,;?!]|$) => have \2ed \1
\bwringed\b => wrung
# wringer mangle
\b(?:put|ran|run|pushed|fed) (<the> [\w' -]+?) through (?:the|a|my|our) (?:wringer|mangle)\b => wrung \1
# iron
\b(?:put|ran|run) (?:the|an|a hot|my) iron (?:over|across|on) (?=<the> ) => ironed\s
# purpose deliberately accident mistake accidentally thinking intentionally knowingly
,? \b(?:on purpose|deliberately|intentionally|knowingly|accidentally|by (?:accident|mistake)|without
    \sthinking)(?=[.,;?!]| (?:in|on|at|with|as|yesterday|today|last|this)\b) =>
# nobody no
,? (?:and|but|though) (?:nobody|no one|no-one)(?: ever| has| had|'s)* (?:said|minded|noticed|complained
    |objected|cared|commented|bothered|remarked)(?: (?:a word|anything|a thing|about it|to me))*(?=[.;]) =>
# turned turns showed shows
\b(?:turned|turns|showed|shows) (?:out|up)(?= (?:on|at|in|for|with|without|to)\b) => came
# wants wanted
^<the> [\w' -]{2,30}? (?:wants?|wanted) (<the> [\w' -]+?) (out|off)\b([^.;?!]*)[.;,] (?:<echo>|is (?:he|she
    |that|it) right|(?:do|must) i(?: have to)?)\W*$ => must I take \1 \2\3?
# through
\b(wore|wear|walked?|went|go|came|strolled?|passed) ([^.;?]{0,40}?\b)?through (?=(?:the )?[\w' -]{3,20}(?:
    \s(?:with|in)\b|[.,;?]|$)) => \1 \2in\s
# lasts runs holds valid good
^(?:so )?<the> [\w' -]{2,30}? <says>(?: that)? ((?:<the> )?[\w' -]+?) (?:lasts|runs|holds|is good|is valid)
    \s(?:for )?[^.;?!]+?[,;] (?:and |but )?<the> [\w' -]{2,30}? <says> [^.;?!]+[.;,] who[^.;?!]*\W*$
     => how long does \1 last?
\btarringed\b => tarred
# becomes become happens happen done
^(?:and |so )?what (?:becomes|happens|must happen|should happen|is to happen|is (?:to be )?done|must be done
    |should be done)\s(?:of|to|with) (<the>(?: (?!after\b|if\b|when\b|once\b|on\b|in\b|at\b|from\b|for\b)
    [\w'-]+)+)(?: after (?:an?|any|the|its|each|every|being in a)\s(?:fall|drop|wear|use|wash|soaking|ducking
    |dunking|swim|trip|tumble|slip))?\W*$ => how is \1 cared for?
# before after
^(?:if (?:both|the two|they)(?: both)? are worn,? )?(?:does|do|is|are|must|should) (<the> [\w' -]+?)
    \s(?:go|come|sit|rank|worn|be worn) (?:before|in front of|ahead of|above) (<the> [\w' -]+?),? or
    \s(?:after|behind|below)(?: (?:it|that|them))?\W*$ => which comes first, \1 or \2?
^(?:if (?:both|the two|they)(?: both)? are worn,? )?(?:does|do|is|are|must|should) (<the> [\w' -]+?)
    \s(?:go|come|sit|rank|worn|be worn) (?:after|behind|below) (<the> [\w' -]+?),? or
    \s(?:before|in front of|ahead of|above)(?: (?:it|that|them))?\W*$ => which comes first, \1 or \2?
# waiver waivers
^(?:<the> )?([\w -]*waivers?) (?:doesn't|does not|don't|do not|never) (?:ever )?(?:run out|expire|lapse|end)
    (?:,? (?:or )?(?:does|do) (?:it|they))?\W*$ => how long does \1 last?
^(?:and )?(?:does|do|will|would|can) ((?:<the> )?[\w -]*waivers?) (?:ever )?(?:run out|expire|lapse|end)\W*$
     => how long does \1 last?
^for how long (?:is|are|was|does) ((?:<the> )?[\w -]*waivers?) (?:given|granted|issued|good|valid|last)
    (?: for)?\W*$ => how long does \1 last?
# refuse refuses refused decline declines won't unwilling
^((?:one of )?<the> [\w' -]+?) (?:(?:refuses?|refused|declines?|is unwilling|are unwilling) to|won't)
    \s(take off|remove|leave off|wear|put on|carry) ([^.?!;]+?)[.;:]+ (?:so |and )?(?:does|do|must|should)
    \s(?:he|she|they)(?: really)?(?: have to| need to)?\W*$ => must \1 \2 \3?
# no
^no ([\w' -]+?) (is|are) (worn|carried)\b([^.;?!]*)[.;] (?:does that hold|is (?:that|it|he|she)
    \s(?:so|right|true|correct)|are they right|right|true|correct)\W*$ => \2 no \1 \3\4?
"""
