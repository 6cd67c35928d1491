"""What closes a question and asks no more than it, and words of saying that claim nothing of their own.

"Lanyard yes or no", "..., or so I was told", "the board says yes, so yes?". Written as the lines of
`sayings.py`.
"""

from __future__ import annotations

from kb.reader.phrases.small_words import SMALL_WORDS

CLOSINGS = r"""
# says say said
[,;:.–-]+ (?:and |but |though |although )?(?:(?:<the> )?(?:(?!(?:who|which|what|granted|ordered)\b)[\w'-]+
    \s){1,6}?)(?:says?|said) (?:yes|no|so|not|otherwise|<fine>)[,;.]* (?:and |but )?(?:so |then )?(?:is it
    \s|are they )?(?:yes|no|ok|okay|fine|right|true|allowed)\s*\?+\s*$ => ?
^(?:so |but )?(?:<the> )?(?!(?:who|which|what)\b)[\w' -]{3,30}? (?:says?|said) (?:yes|ok|okay) to
    \s([^.,;?]+)[.,;]+ (?:so )?(?:is (?:it|that)(?: right| true| so)?|true|right|yes|no)\s*\?+\s*$
     => may I wear \1?
# so
,? (?:or|but|at least) so (?:i(?:'m| am| was|'ve been| have been) (?:told|assured)|(?:they|people|the \w+
    |my \w+|our \w+) (?:says?|said|tells? <me>|told <me>|claims?|reckons?|thinks?)|i(?:'ve)? (?:hear|heard
    |read|understand|gather|thought|think|believe))(?=\s*[.,;?!]|\s*$) =>
# says say said reckons thinks claims swears insists maintains told tells reckon think claim swear insist
(?:,| [–—-]) (?:(?:so|as|at least) )?(?:(?:<the> |one of <the> |some )(?:[\w'-]+ ){0,2}?<comrade>
    |<own> (?!(?:<volume>|<healer>)\b)[\w'-]+) (?:says?|said|reckons?|thinks?|claims?|swears?|insists?
    |maintains?|tells? <me>|told <me>|has it|have it)(?=\s*[.?!]|\s*$) =>
# told heard assured
\s(?:is|was)(?: just| only)? what (?:i|we)(?:'ve| have)? (?:was|were|been|just)? ?(?:told|heard|assured)
    (?=\s*[.;?!]|\s*$) =>
# according
,? according to (?:(?:<the> |one of <the> )?<comrade>|<own> (?!(?:<volume>|<healer>)\b)[\w'-]+)
    (?=\s*[.;?!]|\s*$) =>
# thermometer gauge dial meter display anemometer scale scales mercury
\bit (?:says|reads|shows|said|read|showed) (minus |-)?(\d[^,;.?]{0,20}?) (?:on|by|according to) <the>
    \s(?:[\w-]+ )?(?:thermometer|gauge|dial|meter|display|anemometer|scales?|mercury)\b => it is \1\2
# something
^(.*?)\b(?:is|are|was|were) (<the> [\w' -]+?) (?:something|a thing|one thing)(?: that| which)? ([\w' -]+?)
    \s(?:has|have|had) to (wear|carry|own)\b => \1 must \3 \4 \2
# against
(?:\s*[,;:.]+| [–—-]+)\s(?:and )?(?:that|it|this)(?:'s| is) not against (?:anything|the law
    |any(?: of the)? (?:rules?|clauses?)|<rulebook>)(?:,? is (?:it|that))?\W*$ => , is that allowed?
# keep leave
(?<=\w),? or (?:can|may|could|do) <i> (?:just )?(?:keep|leave) (?:it|them|those|that) on\W*$ => ?
# em
(?<=[a-z] )['’]?em(?=\s*[.,;?!]|\s*$|\s(?:up|down|off|on|in|out|under|over|with|to)\b) => them
# toe foot bottom
^(.*\b(?:what|which)\b.*?),? (?:from )?(?:head|top) to (?:toe|foot|bottom)(?=\s*[.,;?!]|\s*$) => \1
# told asked prompted bidden reminded
,? without (?:me |us |him |her |anyone |anybody )?(?:first )?(?:being|having been|having to be|getting)
    \s(?:told|asked|prompted|reminded)(?: (?:first|to(?: do so)?|by anyone|by anybody))?(?=\s*[.,;?!]|\s*$
    |\s(?:in|on|at|with|when|while)\b) =>
# nay yea yay aye nope yep
(?:\s*[,;:.–-]+)?\s(?:yay|yea|aye|yep|yeah) or (?:nay|no|nope)\s*[.?!]*\s*$ => ?
# y n
(?:\s*[,;:.–-]+)?\sy ?/ ?n\s*[.?!]*\s*$ => ?
# yes no yeah yep nope
^(?!(?:yes|no)\b)(.*\w)(?<! or)(?<! and)(?<! is)(?<! it)(?<! say)(?<! says)(?<! said)(?<! the)(?<! a)
    \s(?:a )?(?:simple |plain |straight )?yes[ /]*(?:or[ /]*)?no\s*[.?!]*\s*$ => \1?
^(?!(?:yes|no)\b)(.*\w)(?<! or)(?<! and)(?<! is)(?<! it)(?<! say)(?<! says)(?<! said)(?<! a)(?<! the)
    (?<! with)(?<! so)\s(?:so )?(?:yes|yeah|yep)\s*\?+\s*$ => \1?
# harmless innocent innocuous inoffensive crime sin biggie deal
([.,;:–-] ?)(?:(?:so|but|and|that(?:'s| is)|it(?:'s| is)|all|perfectly|pretty|fairly|quite|totally|hardly) )*
    (?:(?:harmless|innocent|innocuous|inoffensive)(?: enough)?|(?:no|a|not a) (?:crime|sin|biggie|big deal))
    (?:,? (?:surely|right|no|innit|(?:is|isn't) (?:it|that)))*\s*\?+\s*$ => \1is that allowed?
# doable passable workable
([.,;:–-] ?)(?:doable|workable|passable)\s*\?*$ => \1allowed?
# rest others
^(?:so )?(?:it's|it is|is it) (?:just|only) [^.;,?]{2,40}?,? (?:who|that) ([^.;,?]+?),? (?:and )?not (?:the
    \srest(?: of (?:us|them|you))?|the others|everyone else|everybody else|anyone else)(?=\s*[.,;?!]|\s*$)
     => who \1
^(.*\b(?:just|only)\b[^.;?]*?),? (?:and )?not (?:the rest(?: of (?:us|them|you))?|the others|everyone else
    |everybody else|anyone else)(?=\s*[.,;?!]|\s*$) => \1
# goes
^((?:[^?]*[.;:,–-] )?)(?:so |and |then )*what(?:'s going| goes) on(?: (?:me|then|now|there|first))*\s*\?*$
     => \1what must i wear?
# things items articles bits
^(?:please )?(?:name|list|tell me|give me|what are|which are) (?:all |both )?(?:of )?(?:the )?(?:\w+\s)?
    (?:things|items|articles|bits)(?: of (?:kit|clothing))? (?:that |which )?([\w' -]+?) (?:has|have|needs?
    |must)(?: to)? (wear|carry|own|have)( [^?]*)?$ => what must \1 \2\3?
^(?:please )?(?:name|list|tell me|give me|what are|which are) (?:all |both )?(?:of )?(?:the )?(?:\w+\s)?
    (?:things|items|articles|bits)(?: of (?:kit|clothing))? ([\w' -]+?) in ([\w' -]+?) (?:has|have|needs?
    |must)(?: to)? (wear|carry|own|have)\W*$ => what must \1 \3 in \2?
^(?:please )?(?:name|list|tell me|give me|what are|which are) (?:all |both )?(?:of )?(?:the )?(?:\w+\s)?
    (?:things|items|articles|bits)(?: of (?:kit|clothing))? (?:that |which )(?:is|are|must be|have to be
    |need to be) (worn|carried|owned)( [^?]*)?$ => what must be \1\2?
"""
CLOSINGS = CLOSINGS.rstrip() + SMALL_WORDS
