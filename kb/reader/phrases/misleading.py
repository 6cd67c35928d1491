"""Ways of asking that would be understood otherwise than they are meant; lines as in `sayings.py`.

"Where I must put it" asks where, "why no belt" asks why not, "lanyard, who?" asks who, a choice between two
things takes one of them, and "I have no tie. Do I need one?" asks of wearing it, not of going without. "Do I
need a waiver for a beard" asks whether it is prohibited without one, and not whether a beard must be worn.
"""

from __future__ import annotations

MISLEADING = r"""
# where what which when why how
^(?:(?:please|sorry|excuse me|pardon|hello|hi)[,!.]? )?(where|when|why|how|(?:which|what)(?: [\w'-]+){0,3}?)
    \s(i|we|you|one) (must|may|can|should|shall) (?=(?:wear|put|have|carry|own|keep|use|take|do|get|bring
    |show)\b)([^,;.:?!]*)\W*$ => \1 \3 \2 \4?
^(?:(?:please|sorry|excuse me|pardon|hello|hi)[,!.]? )?(where|when|why|how|(?:which|what)(?: [\w'-]+){0,3}?)
    \s(i|we|you|one) (have|need) to (?=(?:wear|put|have|carry|own|keep|use|take|do|get|bring|show)\b)
    ([^,;.:?!]*)\W*$ => \1 do \2 \3 to \4?
# waiver waivers exemption dispensation note certificate qualification appointment licence chit permit
(?:^|(?<=[.?!;,] ))(?:(?:so|but|and|now) )*(?:do|does|did|would|will|must|should) (?:<i>) <owing>
    \s(<credential>) <before>\s(?:<the> )?([^.;?!]+?)(?=\W*$) => is it prohibited to wear \2 without \1
(?:^|(?<=[.?!;,] ))(?:(?:so|but|and|now) )*(?:do|does|did|would|will|must|should) ((?:<the> )?
    [\w' -]{2,30}?) <owing> (<credential>) <before>\s(?:<the> )?([^.;?!]+?)(?=\W*$)
     => is it prohibited for \1 to wear \3 without \2
# choose pick decide choice
^(.*?)\b(?:can|may|could|do) (<i>) (?:get to |have to )?(?:choose|pick|decide|(?:have|get) (?:a|the|any)
    \s(?:free )?choice) between ((?:<the> )?[\w' -]+?) and ((?:<the> )?[\w' -]+?)\W*$
     => \1may \2 wear either \3 or \4?
^(.*?)\b(?:is there|have <i>|have <i> got) (?:a|the|any) (?:free )?choice between ((?:<the> )?[\w' -]+?) and
    \s((?:<the> )?[\w' -]+?)\W*$ => \1may I wear either \2 or \3?
# come comes
\b(?:must|should|do|does|did|will) (it|they|that|this|these|those) (?:have to |need to )?come off\b
     => must \1 be taken off
^(?:at |in |from )?where (?:must|should|do|does|have|has) (?!it say)(.+?) (?:have to |need to )?(?:come off
    |be taken off)\b([^.;?!]*)\W*$ => when may \1 not be worn?
# switch
\b(?:must|should|do|does|shall) (?:<i>) (?:have to |need to )?switch off (?=<the> )
     => is it forbidden to switch on\s
\b(?:must|should|do|does|shall) (?:<i>) (?:have to |need to )?switch (<the> [\w' -]+?) off\b
     => is it forbidden to switch on \1
\b(may|can|could) (<i>) switch off (?=<the> ) => \1 \2 go without switching on\s
\b(may|can|could) (<i>) switch (<the> [\w' -]+?) off\b => \1 \2 go without switching on \3
# off
^((?:[^,.;:?!]+ )?(?:camera|cam|bodycam|radio|phone|telephone|light|lamp|torch|recorder|device
    |beacon)s?\b[^,.;:?!]*?)\s*[,.;:-]*(?<!switched) (?:is it |are they |should (?:it|they) be |switched
    \s)?(?:off,? or on|on,? or off)\W*$
     => may \1 be switched on?
^(.+?)\s*[,.;:-]+ (?:so |and |then )?(?:is it |are they |should (?:it|they) be |does it go |do they go
    |do (?:i|we) (?:have|wear|keep) (?:it|them) )?(?:off,? or on|on,? or off|on,? off)\W*$ => \1?
# kit
^(?:the |a )?([\w' -]+? (?:branch|crew|team|section|party))(?:'s)?[,:]? kit list(?: please)?\W*$
     => what must the \1 own?
# one ones
\b([\w-]+ ([a-z]+)) or (?:<the> )?([\w-]+) ones?(?=\W*$| (?:for|with|in|on|at)\b) => \1 or \3 \2
# thermometer mercury
(?:<the> )?(?:[\w-]+ )?(?:thermometer|mercury)(?: outside| here| on the \w+)? (?:says?|said|reads?|shows?
    |showed|stands at|is at|has) (minus |-)?(\d+(?:\.\d+)?)(?: ?(?:°c?|degrees?(?: c)?|c)\b)?
     => it is \1\2 degrees
# day days
\b(?:back )?in (?:my|his|her|our|their) (?:young(?:er)? )?days?,? =>
# why
^(?:so |and |but )?why (?:is there |are there )?no (?!longer\b|more\b|one\b)(.+?)(?: allowed| permitted)?\W*$
     => why may I not wear \1?
# left right
^((?:(?:[\w'’-]+ ){0,3}?)(?!(?:on|the|my|your|his|her|our|their|an?|at|to|of|round|around|from|over|with|and
    |or|either|both|lower|upper|which|what|whose|where|roll(?:ed)?|wear(?:ing)?|have|has|keep|put|is|are|in|into|by
    |under|above|below|for|as|no|not|this|that|one|up|down|off)\b)[\w'’-]+),? (left|right) ((?:lower |upper )?
    (?:breast|chest|sleeve|arm|shoulder|cuff|lapel))(?=\W*$|,? (?:in|for|at|when|if|during|ok|okay)\b)
     => \1 on the \2 \3
# fine nice lovely
\b(?:when|while|whenever|whilst) (?:it|the (?:weather|day|sky))(?:['’]s| is| was|['’]s been)
    \s(?:nice and |quite |really |all )?(?:fine|nice|lovely)(?: and (?:dry|sunny|clear|warm))?
    (?: (?:out(?:side)?|today|weather))?(?![\w'-]| (?:to|that|for|if|by|with|as)\b) => in fine weather
\b(?:when|while) fine(?=\W*$|,) => in fine weather
\bif (?:it|the (?:weather|day|sky))(?:['’]s| is) (?:nice and |quite |really |all )?(?:fine|nice|lovely)
    \s(?:out(?:side)?|today)\b => in fine weather
^it(?:['’]s| is) (?:a )?(?:fine|nice|lovely)(?: day)? (?:out(?:side)?|today)(?=[,.;] ) => in fine weather
# who when
^(?:please )?(?!(?:do|does|did|so|and|but|or|i|we|he|she|they|you|tell|say|ask|know|what|which|how|where|why
    |when|who|may|can|must|should|is|are|was|were|it|that|this|says?|since|until|till|by|not)\b)
    ([\w' -]{3,50}?)(?:\s*[,:;.–-]+ ?| )who\W*$ => who may wear \1?
^(?:please )?(?!(?:do|does|did|so|and|but|or|i|we|he|she|they|you|tell|say|ask|know|what|which|how|where|why
    |when|who|may|can|must|should|is|are|was|were|it|that|this|says?|since|until|till|by|not)\b)
    ([\w' -]{3,50}?)(?:\s*[,:;.–-]+ ?)when(?:,? (?:and )?with what)?\W*$ => when may I wear \1?
# nobody one they not never no n't haven't hasn't wasn't
^(?:(?:nobody|no[- ]one)(?: has|['’]s)?(?: ever| yet)? (?:gave|given|issued|handed|bought|sent) <me>
    |they (?:never|haven't|didn't|have not|did not)(?: yet)? (?:gave|give|given|issued?|hand|handed) <me>
    |<i>(?: was| were| am| is|['’]ve| have| has)?(?: not| never|n't)(?: yet)?(?: been)?
    \s(?:given|issued(?:\swith)?|handed|sent|got|have|own)) (?:an?|any) ([\w' -]+?)[.;,]+
    \s(?:do|does|must|should) (<i>) (?:need(?: to have)?|have to have|have to wear|wear|have)
    \s(?:one|it|any|them)(?: there| then| here|\sfor that)?([^.;?!]*)\W*$ => must \2 wear a \1\3?
^<i>(?:['’]ve| have| has)?(?: got| own)? no ([\w' -]+?)[.;,]+ (?:do|does|must|should)
    \s(<i>) (?:need(?: to have)?|have to have|have to wear|wear|have) (?:one|it|any|them)(?: there| then| here
    |\sfor that)?([^.;?!]*)\W*$ => must \2 wear a \1\3?
"""
