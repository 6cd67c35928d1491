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
# may
\b(?:it(?:'s| is)|we(?:'re| are) in|this is) may(?= and\b| now\b|\s*[.,;?!]|\s*$) => it is in may
# waiver waivers exemption dispensation note certificate qualification appointment licence chit permit
(?:^|(?<=[.?!;,] ))(?:(?:so|but|and|now) )*(?:do|does|did|would|will|must|should) (?:<i>) <owing>
    \s(<credential>) <before>\s(?:<the> )?([^.;?!]+?)(?=\W*$) => is it prohibited to wear \2 without \1
(?:^|(?<=[.?!;,] ))(?:(?:so|but|and|now) )*(?:do|does|did|would|will|must|should) ((?:<the> )?
    [\w' -]{2,30}?) <owing> (<credential>) <before>\s(?:<the> )?([^.;?!]+?)(?=\W*$)
     => is it prohibited for \1 to wear \3 without \2
# go
^((?:[^?]*[.;,] )?)(?:does|do|must|will|would) (<the> [\w' -]+?) (?:have to |need to |got to )?go(?=\W*$
    | (?:when|while|if|during)\b) => \1must I go without \2
# use
^(?:and |so )?what (?:do|must|should|shall) (<i>) (?:(?:need|have) to )?(?:put on|wear) to use\b
     => what must \1 wear when using
# like want please fancy choose wish
\bas (?:long|short) as (?:<i>) (?:like|want|please|fancy|choose|wish)s?\b => any length
\bas (?:wide|broad|narrow) as (?:<i>) (?:like|want|please|fancy|choose|wish)s?\b => any width
\bas (?:big|large|small) as (?:<i>) (?:like|want|please|fancy|choose|wish)s?\b => any size
\bas (?:high|tall|low) as (?:<i>) (?:like|want|please|fancy|choose|wish)s?\b => any height
\bany (length|size|width|height)(?: that)? (?:<i>) (?:like|want|please|fancy|choose|wish)s?\b => any \1
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
# phone mobile telephone smartphone cellphone iphone
\b(?:answer|pick up|check|look at|stare at|scroll (?:on|through)|(?:talk|speak|chat|text|ring|call|be|go
    |get)(?: \w+)? (?:on|into)) (?:<the> )?((?:(?:mobile|cell|work|own|private|personal) )?(?:phone|mobile
    |telephone|smartphone|cellphone|iphone))(?=\W*$|[,.;]| (?:in|on|at|while|when|if|with|during|near|by
    |whilst|as|for|to|inside|outside)\b) => use my \1
# call calls text phone
\b(?:answer|take|make|have|return) (?:an?|the|my|any) (?:(?:quick|short|private|personal|phone|telephone) )*
    calls?(?=\W*$|[,.;]| (?:in|on|at|while|when|if|with|during|near|by|whilst|as|from|to)\b)
     => use a mobile phone
^(can|may|could|must) (<i>) (?:just |quickly )?(?:text|phone|ring)(?: (?:home|somebody|someone|(?:my|a|the)
    \s[\w]+))?(?=\W*$|,| (?:in|on|at|while|when|if|with|during|near|by|whilst|from)\b)
     => \1 \2 use a mobile phone
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
# given issued supplied provided
^(?:and |but |so )*(?:do|does|will|would|did) (?:<i>) get (it|them|<the> [\w' -]+?) (?:given|issued|supplied
    |provided)(?: out)?(?: to <me>)?(?: (?:for )?free(?: of charge)?)?\W*$ => is \1 issued?
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
# on
^(?!(?:is|are|can|may|must|do|does|what|with|i|i'm|put|and|if|when)\b)(?:the |my |a )?([\w' -]{4,30}?)
    \son,? (?:and|but) (?=(?:it|the|i|we)\b[^.?!]*[.;,]) => I have the \1 on and\s
# keep have wear leave
^(?:but |and |so |well |ok |okay )*(?:i|we)(?:'ve got|'ve| have got| have) (<the> [\w' -]+?)
    (?:,? (?:though|now|too|as it happens))?(?:[,.;:]+| -) (?:so |but |and )?(can|may|could|must|should)
    \s(i|we) (?:still |just )?(?:keep|have|wear|leave) (?:it|them)(?: on)?
    (?=\W*$| (?:with|on|in|at|while|when|for|if)\b) => \2 \3 wear \1
# answer answering check checking ring ringing text texting scroll scrolling call calls calling
\b(?:answer|take (?:a )?calls? on|make (?:a )?calls? on|check|text on|scroll (?:through|on)|ring \w+ on
    |call \w+ on|talk on) (?=(?:the|my|our|his|her|their|a) (?:(?:mobile|own|personal|smart)\s)*(?:phone
    |mobile|smartphone|telephone)s?\b) => use\s
"""

# What is misleading even in words that the lines above have made plainer.
MISLEADING_LAST = r"""
# be
^(?:do|does|must|need|should) (?:<i>|it|that|those|these|there|a man)(?: have to| need to| got to)? be
    \s(?=in |on |at |aboard|afloat|ashore)(.+?) (?:to wear|to have|to carry) (.+?)\W*$
     => when may \2 be worn?
^(?:do|does|must|need|should) (?:<i>|it|that|those|these|there|a man)(?: have to| need to| got to)? be
    \s(.+?) (?:to wear|to have|to carry) (.+?)\W*$ => who may wear \2?
# how
^(how many .+? (?:do|does|did|should|must|can|may|is|are)\b.*?) (?:on|round|around)
    \s(?:the|my|his|her|their|your|each) (?:upper |left |right )?(?:sleeve|cuff|arm)s?\W*$ => \1?
# when
^when (?:must|should|do|does|have|has) (.+?) (?:have to |need to |to )?(?:be taken off|come off|be removed)\b
     => when may \1 not be worn
^when (?:must|should|do|does|have|has) (i|we|you|they|one|an? [\w-]+) (?:have to |need to |to )?
    take ((?:the|my|our|your|their|his|her) [\w' -]+?) off\b => when may \1 not wear \2
^when (?:must|should|do|does|have|has) (i|we|you|they|one|an? [\w-]+) (?:have to |need to |to )?
    (?:take off|remove)\b => when may \1 not wear
# take takes took taken pull pulls
^((?:may|can|could|must|should|do|does|is|are|how|what|which|where) .+?),? (?:if|when|once|after)
    \s(?:i|we|he|she|they|you)(?:'ve| have| has)? (?:take|takes|took|taken|pull|pulls) off
    \s(?=(?:<own>|the|an?) )
     => \1 without\s
^((?:may|can|could|must|should|do|does|is|are|how|what|which|where) .+?),? (?:if|when|once|after)
    \s(?:i|we|he|she|they|you)(?:'ve| have| has)? (?:take|takes|took|taken|pull|pulls)
    \s((?:<own>|the|an?) [\w' -]+?) off\b => \1 without \2
^(?:(?:and|but|so|even|what|or) )*(?:if|when|once|after)
    \s(?:i|we|he|she|they|you)(?:'ve| have| has)? (?:take|takes|took|taken|pull|pulls) off
    \s((?:<own>|the|an?) [\w' -]+?)\W*$ => and without \1?
^(?:(?:and|but|so|even|what|or) )*(?:if|when|once|after)
    \s(?:i|we|he|she|they|you)(?:'ve| have| has)? (?:take|takes|took|taken|pull|pulls)
    \s((?:<own>|the|an?) [\w' -]+?) off\W*$ => and without \1?
# ironing pressing bleaching starching dyeing wringing boiling tumble
^(iron|press|bleach|starch|dye|wring|boil|tumble[- ]dry|dry[- ]clean)ing (.+?)\?$ => may I \1 \2?
# pins holes needles hole needle
\b(?:put|stick|push|poke|make|punch) (?:any )?(?:pins|holes|needles|a hole|a needle)
    \s(?:in|into|through)\b => pierce
# say
^(?:let's |just )?say,? (?:that )?(?=(?:the|it|i|we|he|she|you|they|there|my)\b) =>
# cloth fabric material
\b(?:what|which) (?:cloth|fabric|material)\b(?= and\b|\W*$) => what construction
\b(?:what|which) colour and (?:what |which )?(?:cloth|fabric|material)\b => what colour and what construction
# side
^(?:on )?(?:which|what) side of (?:the |my |a )?(.+?) (?:do|does|should|must) (.+?)
    \s(?:go|sit|hang|be worn|be)(?: on)?\W*$ => where on the \1 does \2 go?
# left forgotten forgot lost mislaid find have got see dropped
^(.*?)\b(?:has |have |had |'ve |'s )?(?:left|forgotten|forgot|lost|mislaid|can't find|cannot find|don't have
    |haven't got|can't see|dropped) (?:his|her|my|their|the|our)
    \s([\w' -]+?)(?: behind| at home| ashore| below| overboard)?[.;,]
    \s(?:is|are|was|were) (?:it|they|that) (needed|required|necessary|compulsory|a must|obligatory)(.*?)\?$
     => \1, is \2 \3\4?
^(.*?)\b(?:has |have |had |'ve |'s )?(?:left|forgotten|forgot|lost|mislaid|can't find|cannot find|don't have
    |haven't got|can't see|dropped) (?:his|her|my|their|the|our)
    \s([\w' -]+?)(?: behind| at home| ashore| below| overboard)?[.;]
    \s(?:did|does|do|must|should|will) (he|she|i|we|they)
    \s(?:need|have to have|have to wear|need to wear|wear) (?:it|them|one)(.*?)\?$
     => \1, must \3 wear \2\4?
# say says
^(?:but )?[t]he (?:\w+ ){0,2}(?:<volume>|paragraph|section|law|label) says?(?: that)? (.+?),? so (?:is|are|can
    |may|must|do|does)
    \s(?:it|they|i|we|he|she)\W*$ => \1?
# both
^(.+?) or (.+?)[,:] (?:can|may|could) (?:i|we|you|he|she|they) (?:have|wear|put on|sport) (?:them )?both\W*$
     => may I wear \1 with \2?
# order
^(?:what|which) (.+?) are there,? (?:and )?in (?:what |which )?order\W*$ => in what order are \1 worn?
# waiver permission exemption leave
^who(?:'d| would| do| should| must| can)? (?:i|we|you) (?:see|ask|go to|write to|talk to|speak to
    |apply to|approach)
    \s(?:about|for) (?:a |an |the )?(?=.*\b(?:waiver|permission|exemption|leave)\b) => who grants\s
# kit
^what kit (?:do|does|must|should) (.+?) (?:need|have|keep|require|hold)
    (?: to have)?\W*$ => what must \1 own?
# letter letters lettering
^((?:and )?)how (?:high|tall|big|large) (?:are|is) the (\w+) (?:letters|lettering)\W*$
     => \1height of the letters of the \2?
^((?:and )?)how (?:high|tall|big|large) (?:are|is) the (?:letters|lettering) (?:on|of|in)
    \s => \1what is the height of the letters of\s
^(.*?)(?:the )?letter (?:height|size) (?=(?:on|of|for)\b) => \1the height of the letters\s
"""
