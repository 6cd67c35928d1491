"""Ways of telling what one is and how things stand; written as the lines of `sayings.py`."""

from __future__ import annotations

_LATELY = r"(?:(?:only |have |'ve )*(?:just|newly|recently|now|finally))"
_SOON = (
    r"(?: (?:today|tonight|tomorrow|this (?:week|morning|evening|month)|next (?:week|month)|last (?:week"
    r"|month)|(?:on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day))"
)

TALES = rf"""
# started start starting joined begun taken
^((?:[^.?!;]*[.;,] )?)(?:i|we)?(?:'ve|'m| have| am| will be|'ll be)? ?{_LATELY}? ?(?:start(?:ed|ing)?|begun
    |been taken on|joined|join|signed on){_SOON}? (?:work )?as (?=an? \w) => \1I am\s
# first
^(?:it(?:'s| is) )?(?:my )?first (?:ever )?(?:day|shift|week|night){_SOON}? as (?=an? \w) => I am\s
# keep leave
\b(?:keep|leave) (it|them|mine|this|these) on\b(?! (?:the|my|a) (?:peg|hook|shelf|seat|rack)) => wear \1
# hair
\bhair(?:'s|'s got| is| has got)?(?: (?:comes?|goes|hangs|falls|gets|grows|is|grown))?
    (?: right| all the way)? down (?:past|beyond|below)\s => hair is below\s
\bhair(?:'s| is)?(?: (?:comes?|goes|hangs|falls|gets|just))*(?: right| all the way)? (?:down )?to\s
    (?=(?:the|my|our|his|her|their) (?:collar|shoulders?)\b) => hair reaches\s
^(.*\bhair\b.*[.,;] .*?)\btie it (?:up|back)\b => \1tie my hair back
# whole entire full complete
\b(?:the|my|our|his|her|their) (?:whole|entire|full|complete)
    \s(?=[\w-]+ (?:dress|rig|order|uniform|kit)\b) => the\s
# work
\b(i|we) work (?=(?:in|on|at) the \w+ as an? ) => \1 am\s
# long
\b(?:so|as) long as\b => if
# nothing's
\bnothing(?:'s| is) (?=\w+ing\b) => nothing\s
"""
