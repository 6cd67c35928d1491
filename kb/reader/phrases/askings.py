"""Ways of asking of a choice, of what is too much, and of doing without; lines as in `sayings.py`."""

from __future__ import annotations

ASKINGS = r"""
# choice option
^(.+?)(?:\s*[,:;.]|\s+-)\s*(?:and |so )?(?:have|has|do|does|did|is|was) (?:<i>|there|it|that|this) (?:really\s
    |actually )?(?:have |got )?(?:any|a|much|my|no)? ?(?:real |free )?(?:choice|option)(?: here| left)?(?:\s
    (?:in|about|on) (?:it|that|this|the matter))?\W*$ => must I wear \1?
^(?:have|has|do|does) (?:<i>) (?:have |got )?(?:any|a|much) (?:real |free )?(?:choice|option|say) (?:about|on
    |over|in|with|as to) (?:wearing )?(<the> .+?)\W*$ => must I wear \1?
^(?:is|are) (<the> [\w' -]+?) (?:a matter of |really |just )?(?:up to <me>|(?:my|your|his
    |her|our|their|one's) (?:own )?choice)\b => must I wear \1
# started joined begun qualified taken signed promoted hired
^(?:i(?:'ve|'m| have| am)? )?(?:only |have )?just (?:been )?(?:started|joined|begun|qualified|taken on|signed
    \s(?:on|up)|promoted|hired)(?: work| out| up)?(?: as| to) (an? [\w' -]+?)(?: here)?([.,;:!]) (?=\w)
     => I'm \1\2\s
# off
\b(?:won't|will not|doesn't|does not|don't|just won't) come off(?=[\s.,;]|$) => cannot be removed
# too
\bhow (long|short|wide|broad|big|large|small|high|low|tall|thick) is too (?:long|short|wide|broad|big|large
    |small|high|low|tall|thick|much) for (<the> [\w'-]+)\b => how \1 may \2 be
^(?:is|are|would|will|was) (<the> [\w' -]+?) (?:be )?(?:too|over) (?:long|short|wide|broad|big|large|small
    |high|low|tall|thick)\s(?:at|with|being|if (?:it is|it's|they are|they're)) (\d[\d.,/ ]* ?(?:mm|cm|m|in
    |inch|inches|millimetres?|centimetres?|feet|ft))\b => is \1 of \2 ok
^(?:is|are|would|will|was) (<the> \d[\d.,/ ]*[ -]?(?:mm|cm|m|in|inch|inches|millimetres?|centimetres?)
    \s[\w' -]+?) (?:be )?(?:too|over) (?:long|short|wide|broad|big|large|small|high|low|tall|thick)\b
     => is \1 ok
# one
\bone (?=(?:[\w'-]+ ){1,3}of \d[\d.,/]* ?(?:mm|cm|m|in|inch|inches|millimetres?|centimetres?)\b) => a\s
# years years'
\b([\w-]+) years['’]? (?:of )?service\b => \1 years of service
\b(?:after|with|having) ([\w-]+) years['’] in\b => with \1 years of service
# get gets let lets excuse excuses free frees exempt exempts save saves spare spares
^(?:does|do|can|could|will|would|may|might) (<the> [\w'-]+(?: [\w'-]+){0,2}?) (?:ever |really )?(?:get|let
    |excuse|free|exempt|save|spare) <me> (?:out of|off|from)? ?(?:wearing |having to wear )?(<the> [\w'-]+
    (?: [\w'-]+){0,2}?)(,? (?:in|on|at|for|if|when|while|given|during) .+?)?\W*$ => must I wear \2 with \1\3?
# hardly barely next practically virtually scarcely
\b(?:hardly any|barely any|scarcely any|next to no|practically no|virtually no) (?=\w+) => no\s
# say
, say (?=(?:minus )?\d) => , at\s
# granted
\b(granted by <the> [\w -]+?),? (?:and )?not (?:by )?<the> [\w-]+(?: [\w-]+)?(?=\W*$|[,.;]) => \1
^([\w' -]+?): (<the> [\w -]+?)(?: of ours)? (?:has|have) granted (?:it|this|that),? (?:and )?not (?:by )?<the>
    \s[\w-]+[.;,] (.+?)\W*$ => \3 with \1 granted by \2?
# roll turn push
\bhow (?:far|high) (?:up )?(?:do|does|must|should|may|can|are|is) (<i>) (?:to )?(?:roll|turn|push) (<the>\s
    [\w' -]+?) up\b => how far up are \2 rolled
\bhow (?:far|high) up (?:do|does|must|should|may|can) (<i>) (?:roll|turn|push) (<the> [\w'-]+(?: [\w'-]+)?)\b
     => how high are \2 rolled
# hot warm
^how (?:hot|warm|cool) (?:do|does|must|should|may|can|shall) <i> (?:wash|launder) (<the> .+?)\W*$
     => how is \1 washed?
^how (?:hot|warm|cool) (?:is|are|must|should|may|can) (<the> .+?) (?:be )?(?:washed|laundered)\W*$
     => how is \1 washed?
# stays stay remains remain
^(<the> [\w' -]+?) (?:stays?|remains?) (?:with me|mine|with us|ours)\b => may I keep \1
^(?:does|do|will|would|can|may) (<the> [\w' -]+?) (?:stay|remain) (?:with me|mine|with us|ours)\b
     => may I keep \1
# hair
^hair (?:past|beyond|over|below|longer than) <the> collar\b => hair longer than the collar
# question
\b(is|are|was|were)(n['’]t| not)? (.+?) (?:quite |entirely |completely )?out of the question\b
     => \1\2 \3 forbidden
# gale gales storm storms winds
^((?:which|what) (?:clause|paragraph|rule|section|order)\b.+?) in (?:a |an |the )?(?:strong |high |heavy
    |full )?(?:gales?|winds?|wind storms?)\b => \1 in wind
# stores quartermaster storeman storekeeper
^how many (<the> )?([\w' -]+?) (?:will|do|does|would|should|shall) (?:the )?(?:stores|quartermaster|storeman
    |storekeeper)\s(?:hand|give|issue|let) <me>(?: have)?(?: out)?\b => how many \2 am I issued
# give issue supply provide
^(?:and |but |so )*(?:do|will|would|did) they (?:give|issue|supply|provide) <me>(?: with)? (<the> [\w' -]+?)
    (?: (?:for )?free(?: of charge)?)?\W*$ => is \1 issued?
# joined
\b(?:i have|i['’]ve|i) (?:(?:only |just |newly |recently )+)?joined(?: up)? as (an? [\w' -]+?)(?=[.;,])
     => I am \1
# bit while moment minute second sec mo minutes
,? for (?:just )?(?:a|one|a few|a couple of|a short|a little|five|ten) (?:bit|while|moment|minute|second|sec
    |mo|minutes)(?=\W*$) =>
# list name give tell show
^(.+?),? (?:would|will|could|can) you\W*$ => \1
# am
\bwhat am i (?:supposed |meant |expected )?to do with\s => how must I wear\s
# down waist shoulder
\b(?:long )?hair (?:that (?:reaches|goes|hangs)|reaching|hanging|going)? ?(?:down )?to <the> (?:waist
    |shoulders?|hips?|elbows?|bottom|knees?|middle of <the> back) => long hair
\b(?:waist|shoulder|hip|elbow)[- ]length hair\b => long hair
# paper writing
\bwaiver (?:on paper|in writing)\b => written waiver
# purposes purpose
,? for (?:the )?purposes? of <the> (?:[\w'-]+ )?(?:order|regulations?|rules?|instructions?|book|notice)\b =>
# head person man member nose
^(.*\bhow many [\w' -]+?) (?:per|for each|for every) (?:head|person|man|member|nose)\W*$ => \1 must I own?
# buy
\b(what (?:else|more)) (must|should|do|does|shall|have|has|need) (<i>) ((?:have |need |got )?(?:to )?)buy\b
     => \1 \2 \3 \4own
# looser stricter tougher tighter milder harder easier laxer harsher lenient strict
^(?:did|has|have) (<the> .+?)(?: rules?)? (?:get|got|gotten|become|been made) (?:any )?(?:more )?
    (?:looser|stricter|tougher|tighter|milder|harder|easier|laxer|harsher|lenient|strict)(?: or (?:more )?
    (?:looser|stricter|tougher|tighter|milder|harder|easier|laxer|harsher|lenient|strict))?( in (?:19
    |20)\d\d| since .+?)?\W*$
     => what changed about \1\2?
# changed
^((?:has|have|did) <the> [\w' -]+? changed?), or (?:is|are) (?:it|they) still [\w' -]+?\W*$ => \1?
# wording
^(?:from|since|as of) (?:which|what) (?:day|date) (?:does|do|did|is|are|has|have) <the> new
    \s(?:wording|text|rule|clause) (?:on|about|of|for) ([\w' -]+?) (?:count|counted|apply|applied|hold|held
    |run|valid|in force
    |been in force)\W*$ => when did the rule on \1 change?
"""

MISLEADING_ASKINGS = r"""
# cover covers comprise comprises include includes
^(?:and |so |but )?what (?:exactly )?(?:does|do|did) ["“'‘]([\w' -]+?)["”'’] (?:really |actually |exactly )?
    (?:cover|comprise|include|take in)\W*$ => what does \1 mean?
# why
^(?:so |and |but )?why (?:has|have)(?:n['’]t| not) ((?:<the> )?[\w' -]+?) got
    \s((?:<the> )?[\w'-]+(?: [\w'-]+)?)(?: on (?:his|her|their|the) (?:sleeves?|shoulders?|arms?|chest
    |collar))?\W*$ => why does \1 not wear \2?
^(?:so |and |but )?why (?:has|have)(?:n['’]t| not) got ((?:<the> )?[\w' -]+?)\W*$ => why may I not wear \1?
^(?:so |and |but )?why (?:does|do|must|should|has|have) ((?:<the> )?[\w' -]+?) (?:have to |need to |got to
    |to )?shave(?: (?:it|his beard|the beard))?(?: off)?\W*$ => why may \1 not wear a beard?
# get gets
^(?:and |so |but )?when (?:do|does|will|shall|would) (<i>) (?:get|be given|receive) (<own> [\w'-]+
    (?: [\w'-]+)?(?: and (?:<the> )?[\w'-]+(?: [\w'-]+)?)?)\W*$ => when is \2 issued?
# mark
^(.*\bwhat do .+?\bwear (?:at|for|to|on|in) .+?) to mark (?:it|the (?:day|occasion))\b => \1
# keep hang
^(.*\b(?:leaving|leavers?|retiring|resigning|quitting|(?:leave|retire|resign|quit)(?![^.;,:!?]*\b(?:on|off|out|behind)\b))\b
    [^?]*?[.;,:!]\s+(?:so |and |but )?)(?:may|can|could|do) <i> (?:get to )?(?:keep|hang on ?to) (?!on\b)
    ((?:<the>|all) [\w' -]+?)(?<! on)(?<! off)(?: then| afterwards| for good)?\W*$
     => \1am I allowed not to return \2?
^(?:may|can|could|do) (?:<i>|a leaver) (?:get to )?(?:keep|hang on ?to) (<the> [\w' -]+?)(?<! on) (?:when
    |after|once|on|if|upon) (?:<i> (?:leave|retire|resign|quit|go|have left|[\w']+ left)|leaving)\b[\w' ]*\W*$
     => on leaving, am I allowed not to return \1?
"""
