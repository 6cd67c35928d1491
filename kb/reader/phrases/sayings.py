"""Ways of asking by sense: whether one may, must or need not, who, when, where, and what is worn.

The form of a line is that of `rephrase.py`. Lines stand in blocks under words of which a text must have one:
the others are neither looked at nor compiled. `first` lines are for what would be read otherwise than it is
meant, the rest for what is not understood as it stands; `sayings_more.py` has more of these.
"""

from __future__ import annotations

import re
from functools import cache

from kb.reader.phrases.asides import MISLEADING_ASIDES
from kb.reader.phrases.askings import MISLEADING_ASKINGS
from kb.reader.phrases.choosings import BOTH, CHOOSINGS
from kb.reader.phrases.everyday_deeds import MISLEADING_DEEDS
from kb.reader.phrases.framings import FRAMINGS, NAMES
from kb.reader.phrases.inspections import SEEN
from kb.reader.phrases.misleading import MISLEADING, MISLEADING_LAST
from kb.reader.phrases.plainly import MISLEADING_PLAINLY
from kb.reader.phrases.street import STREET
from kb.reader.phrases.wheres import MISLEADING_WHERES
from kb.reader.phrases.workings import MISLEADING_WORKINGS
from kb.text import Pattern

Line = tuple[Pattern, str]

# Stretches of a pattern by name; `<name>` stands for them in the lines below.
_NAMES = r"""
i: (?:i|we|one|you|he|she|they|anyone|anybody|someone|somebody|everyone|everybody|people|folk)
me: (?:me|us|one|you|him|her|them|anyone|anybody|someone|somebody|everyone|everybody|people|folk)
the: (?:the|my|our|your|his|her|their|one's|an?|this|that|any)
subject: (?:<i>|<the> [\w' -]+?)
books: (?:<the> )?(?:[\w-]+ ){0,2}?(?:rules?|regs|regulations?|orders?|rulebook|book|manual|code|clauses?)
wear: (?:wear|have on|have|put on|don|sport|use|be in|go in|go about in|appear in|turn out in)
wearing: (?:wearing|having on|having|putting on|donning|sporting|using|being in|going about in|appearing in)
fine: (?:ok|okay|o\.k\.|allowed|all right|alright|fine|permitted|acceptable|legal|lawful|legit|proper|right
    |in\sorder|possible|permissible|correct|cool|kosher|a problem|an issue|wrong|a breach)
so: (?:is|would|will|was) (?:that|it|this)(?: be)?(?: still| really)? <fine>
tell: (?:(?:please |kindly |just |so |and |now |but )*(?:(?:can|could|would|will) (?:you|someone|somebody
    |anyone|anybody)\s)?(?:please |kindly |just |possibly )*(?:tell|remind|show|advise|inform|let|help)(?:\s
    (?:me|us))?(?: know)?(?: please| again| exactly)?|(?:please )?(?:say|advise|confirm|explain|clarify|state)
    |do you (?:happen to )?know|does (?:anyone|anybody|someone) know|(?:any|have you any|got any)\s(?:idea
    |clue)s?|(?:i|we) (?:just )?(?:need|want|wish|would like|'d like|should like|would love|'d love)(?: to\s
    (?:know|check|be sure|be told|find out|ask))?|(?:i'm|i am|we're|we are) (?:not (?:quite |entirely\s
    |really\s)?(?:sure|certain|clear)(?: about)?|unsure|uncertain|wondering|puzzled|in doubt|asking)|not\s
    (?:sure|certain)|unsure|wondering|(?:i|we) (?:wonder|forget|forgot|have forgotten|'ve forgotten
    |can't\sremember|cannot remember|can't recall|don't know|do not know|never know|keep forgetting
    |was\swondering|were\swondering)|(?:do|does) <books> say|what (?:do|does) <books> say about)
"""

_FIRST = r"""
# no
\b(?:sit|be|go|stand|walk|work|eat|appear)(?: about| around)? ((?:in|at|on) the [\w-]+ )?(?:with|in) (?:just
    |only\s)?(<the> [\w' -]+?) and no ([\w' -]+?)(?: over (?:it|them|the top)
    | on top(?: of (?:it|them))?| on)?(?=\W*$) => wear \2 \1without the \3
# change climb get slip peel step
\b(?:change|climb|get|slip|peel|step) out of (?=(?:my|the|our|his|her|their)\b(?! way)) => take off\s
# let lets allow allows permit permits allowing
^(?:do|does|did|will|would) <books> (?:actually |really |still )?(?:let|allow|permit) (<me>)(?: to)?\s
    (?!off\b)(?=\w+ ) => may \1
^(?:when|where) (?:do|does|did|will|would) <books> (?:let|allow|permit) (?:<me> (?:to )?(?:wear |have )?)?
    (.+?)\W*$ => when may \1 be worn?
^what (?:do|does|did|will|would) <books> (?:let|allow|permit) <me> (?:to )?(wear|carry|have|own)\b
     => what may I \1
# called required prescribed ordered
^((?:if|when|where) [^,;:.?]+?) (?:would (?:\w+ )?be|is|are)(?: \w+ly)? (?:called for|required|prescribed
    |ordered)(?= ?,| (?:in|at|on|aboard) [^,;:.?]+, ) => \1 is worn\s
# off excused exempted spared
^(?:do|does|did|can|will|would) ([\w' -]+?) (?:(?:still|ever|also|really) )*(?:get|be) (?:let off|excused
    |excused from|exempted from|spared) (?:<wearing> )?(?=\w) => may \1 go without\s
# exempt exempted excused spared relieved freed released off free
^(?:and |so )?(?:who(?:'s| is| are)|(?:which|what) (?:grades?|ranks?|members?|people) (?:is|are))
    \s(?:exempt(?:ed)?|excused|let off|spared|relieved|freed|released|free from|free of)(?: from| of)?
    \s(?:having to )?(?:(own|wear|carry)(?:ing)?|having) => who need not \1\s
^(?:and |so )?(?:who(?:'s| is| are)|(?:which|what) (?:grades?|ranks?|members?|people) (?:is|are))
    \s(?:exempt(?:ed)?|excused|let off|spared|relieved|freed|released|free from|free of)(?: from| of)?
    \s(?!by\b) => who need not have\s
# not never isn't aren't
^(?:and |so )?when (?:is|are) ([\w' -]+?) (?:not|never) (?:to be )?(worn|carried)\b => when must \1 not be \2
^(?:and |so )?when (?:isn't|aren't|is not|are not) ([\w' -]+?) (worn|carried)\b => when must \1 not be \2
# behind clear short away
\b(inch(?:es)?(?: and an? (?:half|quarter))?|in|mm|cm|(?:milli|centi)met(?:re|er)s?)
    \s(?:behind|clear of|short of|in from|away from)\s(?=(?:the|its|my|his|her|your|our|their) ) => \1 from\s
# within inside
^(is|are|would|was|were) (.+?) (?:be )?(?:well |still )?(?:with)?in(?:side)? (?:<books>|what(?: is|'s)\s
    (?:allowed|permitted)|(?:the |its |our )?(?:bounds|limits?|tolerances?|law))(?!\w) => \1 \2 allowed
# reason reasons obstacle impediment barrier grounds
^(?:is there |are there |there(?:'s| is) |have (?:you|we) )?(?:any|a|some|no)?\s?(?:good |earthly\s
    |particular\s|valid )?(?:reason|grounds?)s? (?:why )?(?:for me |for us )?(?:not to|(?:<i>) (?:can't|cannot
    |can not|may\snot|shouldn't|should not|mustn't|must not|couldn't|could not|might not)) => may I\s
^(?:is there |are there )?(?:any|a|an|some) (?:obstacle|impediment|barrier) (?:to|on|against)\s(?:(?:my|our|me
    |us) )?(?=\w+ing ) => is there a rule against\s
# get gets
^(?:do|does|did|would|will) (<subject>) (?:ever |still )?get to (?=\w+ ) => may \1
# should would 'd
^(?:i|we)(?:'d| should| would)(?: very much| rather| quite)? (?:like|love|be (?:glad|grateful|pleased|obliged)
    |appreciate it)(?: to (?:know|ask|hear|be told|learn)| if (?:you|someone) (?:could|would|can)(?: kindly
    |\splease)?\s(?:tell|let|advise|inform) (?:me|us)(?: know)?)(?: please)?(?: from you)?,?\s(?=(?:if|whether
    |when|where|who|whom|how|what|which|why)\b) =>
^(?:if|whether) (<subject>) (can|may|must|should|could|might|have to|need to) => \2 \1
# stand stands position deal score story verdict ruling word
^(?:where|how) (?:do|would|does|should) (?:<i>|<books>) stand (?:on|with|as regards|regarding|over|as to
    |when\sit comes to)(?: <wearing>)? => may I wear\s
^(?:so )?what(?:'s| is| are) the (?:position|deal|score|story|verdict|ruling|rulings|word|situation
    |state\sof\splay|line|lowdown) (?:on|with|about|as to|regarding|as regards|concerning|when it comes to)
     => what is the rule on\s
# duty compulsion obligation
^(?:am i|are we|is (?:he|she|one|anyone)) under (?:a|any) (?:duty|obligation|compulsion) to\b => must I\s
# have has
^(?:have|has) (?!.*\b(?:right|leave|permission|cause|need|reason|way|authority|order|orders|duty|choice) to\b)
    (<subject>) (?:still |really )?(?:got )?to (?=(?:be|wear|have|put|go|carry|own|keep|take|leave|stay
    |come)\b) => must \1
^what (?:have|has) (<i>) (?:got )?to (?=(?:be|wear|have|put|go|carry|own|keep|take)\b) => what must \1
^when (?:have|has) (<subject>) (?:got )?to (?=(?:be|wear|have|put|go|carry|own|keep|take)\b) => when must \1
# made make ordered forced compelled obliged force compel oblige
^(?:can|could|may) (<subject>) be (?:made|forced|compelled|obliged|ordered) to\b => must \1\s
^(?:can|could|may) (?:they|anyone|anybody|someone|somebody|<the> \w+) (?:really )?(?:make|force|compel|oblige)
    \s(<me>|<the> [\w-]+)(?: to)? (?=(?:wear|have|carry|put|own|keep)\b) => must \1\s
# whether choice choose
^(?:can|may|could|do) (<subject>) (?:get to )?(?:choose|decide|pick|say)(?: for (?:my|our|him|her|your|one
    |them)(?:self|selves))? (?:whether|if)(?: or not)? (?:to|<i>)\b => must \1
# choose decide opt elect prefer refuse decline avoid dodge duck shun
\b(can|may|could|might) (<subject>) (?:choose|decide|opt|elect|prefer) not to <wear>(?= )(?! to\b)
     => \1 \2 go without
\b(can|may|could|might) (<subject>) (?:refuse|decline|avoid|dodge|duck|get out of) (?:to <wear>|<wearing>)
    (?=\s) => \1 \2 go without
# rather sooner prefer
^(?:i|we|he|she|they)(?:'d| would|'ll)? (?:much |far )?(?:rather|sooner|prefer)(?: to)? not (?:to )?<wear>\s
    (.+?)[.;,:-]+ (?:<so>|(?:may|can|could) <i>(?: do (?:that|so|without)(?: it)?)?|any objections?)\W*$
     => may I go without \1?
# want wish like care intend plan
^(?:i|we|he|she|they) (?:do not|don't|does not|doesn't|would not|wouldn't|did not|didn't) (?:really |much )?
    (?:want|wish|like|care|intend|plan|feel like|fancy)(?: to)? (?:<wearing>|<wear>)\s(.+?)[.;,:-]+ (?:<so>|
    (?:may|can|could) <i>(?: do (?:that|so|without)(?: it)?)?|any objections?)\W*$ => may I go without \1?
# happens happen becomes occurs
^what(?:'ll| will| would| does|'s| is)? (?:happens?|going to happen|occurs?)(?: to me| to us)? (?:if
    |when)\s<i>\s(?:do not|don't|did not|didn't|doesn't|does not|won't|fail to|forget to|refuse to) <wear>\s
    (?!to\b) => may I go without\s
# way getting
^is there (?:any|a|no)?\s?(?:way|getting|means|dodge) (?:a?round|out of|past|of avoiding|to avoid
    |to\sget\sout\sof)\s(?:having to wear|<wearing>) => may I go without\s
# when
^<tell>,? when (<subject>) (may|can|must|should|could|might|is|are|am|has|have|need)\s(?!to\b) => when \2 \1
^<tell>,? when (<subject>) (?:have|has|need|needs) to\b => when must \1
^((?!if\b|whether\b|it\b|they\b)(?:[\w'-]+ ?){1,5}?)\s?[,:;.-]* when (?:is it |is that |are they )?(allowed
    |permitted|ok|okay|compulsory|required|mandatory|obligatory|forbidden|banned|optional|needed)\W*$
     => when is \1 \2?
^((?:<the> )?(?!and\b|but\b|so\b|what\b|how\b)(?:[\w'-]+ ?){1,4}?)\s?[,:;-]* (?:and )?when\W*$
     => when may \1 be worn?
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ when must (?:i|we|you|one)\W*$ => when must \1 be worn?
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ when (?:can|may|could) (?:i|we|you|one)\W*$
     => when may \1 be worn?
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ (?:and )?when (may|can|must|do|does|should|could|is|are|am)\s
    (.*?)\b(?:it|them|one|these|those)\b(.*)$ => when \2 \3\1\4
^when (?:is|are|was|were|would) (?:it|this)(?: be)? (?:wrong|forbidden|prohibited|banned|not allowed
    |an\soffence)\s(?:for <me> )?(?:to|if <i>) (wear|carry|have) (.+?)\W*$ => when may \2 not be worn?
^when (?:is|are|was|were|would) (?:it|this)(?: be)? <fine> (?:for <me> )?(?:to|if <i>) (wear|carry|have)\s
    (.+?)\W*$ => when may \2 be worn?
^when (?:would|will|should|might) (<subject>) be (allowed|permitted|required|obliged|expected)\b
     => when is \1 \2
^when (?:do|does) <books> (?:require|demand|call for|insist on|oblige me to wear|make me wear|prescribe)\s
    (.+?)\W*$ => when must \1 be worn?
^when (?:do|does) <books> (?:forbid|ban|prohibit|bar|rule out|disallow) (.+?)\W*$ => when may \1 not be worn?
^when (?:is|are|am) (<subject>) to (?=(?:be worn|wear|have|put|carry)\b) => when must \1
^when do (the .+?) (?:have|need) to\b => when must \1
# month months
^(?:in |during )?(?:which|what) months? (may|can|could) (?=<i> |<the> ) => when \1\s
# time occasion
^(?:is|are) there (?:any|a|ever a) (?:time|occasion)s? (?:when )?(<i>) (needn't|can't|mustn't|can|may|must
    |should|could)\b => when \2 \1
^(?:is|are) there (?:any|a|ever a) (?:time|occasion)s? (?:when )?(<i>) (don't|do not|) ?have to\b
     => when \2 \1 have to
# who whom
^(?:<tell>,? )who (?=(?:may|can|must|should|could|has|is|are|gets|wears|needs)\b) => who\s
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ (?:and )?who (?:can|may|could|might)\W*$ => who may wear \1?
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ (?:and )?who must\W*$ => who must wear \1?
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ (?:and )?who(?:'s| is| are)? (allowed|permitted|entitled|required
    |obliged|forbidden|barred|banned)(?: to)?(?: wear| have)?(?: it| them)?\W*$ => who is \2 to wear \1?
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ (?:and )?who (may|can|must|could|has to|gets to|wears|needs to)\b
    (.*?)\b(?:it|them|one|these|those)\b(.*)$ => who \2\3\1\4
^((?:<the> )?(?:[\w'-]+ ?){1,4}?)\s?[,:;-]* (?:for whom|for who|who(?:'s| is| are)? (?:it |that\s
    |they\s)?for)\W*$ => who may wear \1?
^to whom (?:is|are) (.+?) (forbidden|banned|barred|off[- ]limits|prohibited|denied|not allowed)\b(.*)$
     => who may not wear \1\3
^to whom (?:is|are) (.+?) (?:open|allowed|permitted|available)\b(.*)$ => who may wear \1\2
^on whom (?:is|are) (.+?) (?:compulsory|binding|mandatory|obligatory|incumbent)\b(.*)$ => who must wear \1\2
^who (?:is|are) to (?=(?:wear|carry|have|own)\b) => who must\s
# grade rank
^(?:from |at |by |above |of )?(?:what|which) (?:grade|rank)s? (?:up |upwards? |on |onwards? )?(?:(?:may|can
    |could|might|does|do|would) <i> (?:be allowed to )?<wear> (.+?)|(?:may|can|could|might) (.+?) be worn|
    (?:is|are) (.+?) (?:allowed|permitted|worn|open|available|ok|okay))\W*$ => who may wear \1\2\3?
^(?:from |at |by |above |of )?(?:what|which) (?:grade|rank)s? (?:up |upwards? |on |onwards? )?(?:(?:must
    |should|shall) <i> <wear> (.+?)|(?:must|should|shall) (.+?) be worn|(?:do|does|have|has)\s
    (.+?)\shave\sto\sbe\sworn|(?:is|are) (.+?) (?:compulsory|required|mandatory|obligatory|a must))\W*$
     => who must wear \1\2\3\4?
^(?:what|which) (?:grade|rank) (?:must|should|does|do|has|have) <i> (?:have to |got to |need to |to )?(?:be
    |hold|have)\s(?:to|for)(?: be allowed)?(?: to)? (?:wear|have|get)? => who may wear\s
# where
^<tell>,? where(?:abouts)? (<subject>) (may|can|must|should|could|might|is|are|am|has|have)\s(?!to\b)
     => where \2 \1
^<tell>,? where(?:abouts)? to (?:put|wear|pin|sew|stick|fix|have) => where do I wear\s
^<tell>,? where(?:abouts)? (<subject>) (?:goes?|sits?|belongs?|gets worn|is worn|are worn|lives?)\b(.*)$
     => where does \1 go\2
^where (?:do|does|would|did) <books> (?:want|put|place|have|require) (.+?)\W*$ => where must \1 be worn?
# garment part bit article
^(?:on |to )?(?:what|which) (?:garment|part|bit|article)s?(?: of (?:clothing|<the> \w+))?\s(?:do|does|is|are
    |should|must|can|may) (?!i\b|we\b|you\b|one\b)(.+?) (?:go|sit|worn|belong|fixed|pinned|sewn|attached
    |be\sworn|be|get worn|get sewn|get pinned)(?: on| to| onto)?\W*$ => where is \1 worn?
# on
^(?:to |on )?what (?:do|does|should|must) (?!i\b|we\b|you\b|one\b)((?:<the> )?[\w' -]+?) (?:go|sit|get sewn
    |get pinned) on(?: to)?\W*$ => where is \1 worn?
# makes make
^((?:what|which)(?: (?:all|items|garments|things|pieces|clothes|bits))?) makes? up (?!on\b|in\b|for\b|may\b
    |can\b|is\b) => \1 are worn in\s
# out
^what(?:'s| is| are) (?:all )?(?:out|off|barred|ruled out)(?: of bounds)? (in|for|with|on)\b
     => what may not be worn \1
# am are is to
^(what|which \w+|what \w+) (?:am|are|is|'s) (<i>) to (?=(?:wear|have|put|carry|bring)\b) => \1 must \2\s
^what(?:'s| is| are) to be (worn|carried)\b => what must be \1
# most outside longest widest biggest highest largest maximum max tops total all
^(how (?:long|wide|big|high|tall|deep|large|many|far)\b.*?),? (?:at (?:the )?(?:very |absolute )?(?:most
    |outside|longest|widest|biggest|highest|largest|maximum|max)|tops|in total|in all|all told)\W*$ => \1?
^what(?:'s| is| are) the (?:most|maximum|max) (?!(?:length|width|height|size|number|distance|diameter)\b)
    ([\w'\s-]+?)(?: that)? (<i>) (?:may|can|could|am allowed to|are allowed to|is allowed to) (wear|have|carry
    |own|put on|have on)\b => how many \1 may \2 \3
^up to (?:what|which) (length|size|width|height) (may|can) (.+?) be\b => what \1 \2 \3 be
# shade shades
^(what|which) shades? (?=(?:is|are|must|should|may|can|do|does|of)\b) => \1 colour\s
# within inside
^(.+?)\s*[,;.:?!-]+ (?:is (?:it|that|this) |am i |are we |would (?:it|that) be )?(?:well |still |just )?
    (?:with)?in(?:side)? (?:<books>|what(?:'s| is) (?:allowed|permitted)|(?:the |its |our )?(?:bounds|limits?
    |tolerances?|law))\W*$ => \1. Is that OK?
# pass do comply conform meet measure
^(.*\d.*?)\s*[,;.:?!-]+ (?:will|would|does|do|should) (?:it|that|this|they|those)(?: still| really)? (?:pass
    (?: muster)?|do|serve|comply|conform|meet (?:<books>|the standard)|measure up|make the grade)\W*$
     => \1. Is that OK?
^(?:would|will|does|do) (an? .*?\d.*?|my .*?\d.*?) (?:pass(?: muster)?|serve|comply|conform|measure up)\W*$
     => is \1 allowed?
# clear
\bam i in the clear\W*$ => is that OK?
# measures measure measured comes came come turned turns worked works
\b(?:has |have |'s |'ve )?(?:measured?s?|comes? (?:out at|to)|came (?:out at|to|out)|turn(?:ed|s) out(?: at
    |\sto be)?|work(?:ed|s) out at) (?=(?:exactly |about |just |only )?\d)(?!.*\b(?:above|below|over|under
    |from|past|beyond|off|short)\b) => is\s
# knot hitch bow
^(?:what|which)(?: (?:sort|kind|type) of)? (?:knot|hitch|bow) (?:is|are|gets|get|goes|go|should be|must be)
    (?:\sused| tied| made| put)?(?: for| in| on| with| into| to tie)? ((?:<the> )[\w' -]+?)\W*$
     => how must \1 be fastened?
# cloth fabric material stuff leather
^(?:what|which)(?: (?:sort|kind|type) of)? (?:cloth|fabric|material|stuff) (?:is|are|must|should)\s
    (<the>\s[\w'\s-]+?)(?: be| made(?: of| from| out of)?| be made(?: of| from| out of)?| of)?\W*$
     => what is \1 made of?
# says decides say word call
^who(?:'s got| says| decides| has)(?: the (?:final |last )?(?:say|word|call))?(?: on| over| about| in)?
    (?:\swhen| whether| if| that)? (?:it's |it is )(?:to be )? => who grants\s
^who(?:'s got| has) the (?:final |last )?(?:say|word|call) (?:on|over|about|in) => who grants\s
# ask see approach consult petition
^whom? (?:do|would|should|must|can|shall) (?:i|we|you|one) (?:ask|see|approach|apply to|go to|write to|consult
    |turn to|petition)(?: about| for| to get| regarding| over) (?:a |an |the )?(?=[\w -]*\b(?:waiver
    |permission|exemption|leave|order|dress|mourning)\b) => who grants\s
# rules rulebook regs
\b(?:back )?(?:under|by|per|in|from|according to|going by) (?:the |those )?(?:old |then )?(?:rules|rulebook
    |regs)\s(?:of|in|from|as of|back in) ((?:19|20)\d\d)\b => in \1
\bunder (?:the )?((?:19|20)\d\d) (?:rules|rulebook|regs)\b => in \1
# no
^(?:[\w' ]{2,25} (?:says?|said|reckons?|tells? <me>|told <me>|claims?|insists?|thinks?|is|has) (?:that )?)?no
    \s(?![^.;,?]*\b(?:is|are|may|must|can|need|one|to|other|way)\b)([\w' -]+?)
    ((?: (?:in|on|at|with|for|while|when|below|above|during)\b[^.;?!]*)?)[.;,]
    \s(?:is (?:that|it|he|she|this) (?:so|right|true|correct)|are they right|does that hold|true|right
    |correct)\W*$ => are no \1 worn\2?
# say says
^(what|when|where|who) (?:do|does) <books> say(?:s)?(?: that)? (<i>) (must|may|can|should|may not|must not)\b
     => \1 \3 \2
"""
_FIRST += MISLEADING_ASKINGS.rstrip() + MISLEADING_PLAINLY.rstrip() + MISLEADING_WHERES


@cache
def _named() -> tuple[tuple[str, str], ...]:
    lines = (_NAMES + NAMES.lstrip() + SEEN.lstrip()).strip().replace("\n    ", "").splitlines()
    pairs = [(f"<{name}>", words) for name, _, words in (line.partition(": ") for line in lines)]
    return tuple(reversed(pairs))  # a name stands for what those before it are made of


@cache
def _compiled(block: str) -> tuple[Line, ...]:
    found = []
    for line in block.splitlines():
        source, _, put = line.partition(" =>")
        for name, words in _named():
            source = source.replace(name, words)
        found.append(
            (Pattern(source.replace("colour", "colou?r"), re.IGNORECASE), put.strip().replace(r"\s", " "))
        )
    return tuple(found)


@cache
def _blocks(lines: str) -> tuple[tuple[str, ...], dict[str, tuple[int, ...]]]:
    """The blocks of some lines in their order, and the places of those for which a word is needed."""
    parts = lines.replace("\n    ", "").removeprefix("\n# ").rstrip().split("\n# ")
    places: dict[str, tuple[int, ...]] = {}
    blocks = list[str]()
    for place, part in enumerate(parts):
        words, _, block = part.partition("\n")
        blocks.append(block)
        for word in words.split():
            places[word] = (*places.get(word, ()), place)
    return tuple(blocks), places


def sayings(text: str, first: bool = False) -> tuple[Line, ...]:
    """The lines that may fit a text, in their order. `first`: those for what misleads."""
    return fitting(_first_lines() if first else _other_lines(), text)


@cache
def _first_lines() -> str:
    before = (
        STREET,
        MISLEADING_DEEDS,
        MISLEADING_ASIDES,
        MISLEADING_WORKINGS,
        MISLEADING,
        FRAMINGS,
        _FIRST,
        BOTH,
    )
    return "".join((*(lines.rstrip() for lines in before), MISLEADING_LAST))


@cache
def _other_lines() -> str:
    from kb.reader.phrases.afterwards import AFTERWARDS  # noqa: PLC0415  most questions are understood without
    from kb.reader.phrases.asides import ASIDES  # noqa: PLC0415  as above
    from kb.reader.phrases.closings import CLOSINGS  # noqa: PLC0415  as above
    from kb.reader.phrases.everyday_deeds import DEEDS  # noqa: PLC0415  as above
    from kb.reader.phrases.leaves import LEAVES  # noqa: PLC0415  as above
    from kb.reader.phrases.sayings_more import SAYINGS  # noqa: PLC0415  as above
    from kb.reader.phrases.tales import TALES  # noqa: PLC0415  as above
    from kb.reader.phrases.tellings import TELLINGS  # noqa: PLC0415  as above
    from kb.reader.phrases.times import TIMES  # noqa: PLC0415  as above
    from kb.reader.phrases.workings import WORKINGS  # noqa: PLC0415  as above

    before = (DEEDS, ASIDES, LEAVES, TIMES, WORKINGS, CHOOSINGS, CLOSINGS, AFTERWARDS)
    return "".join((*(lines.rstrip() for lines in before), SAYINGS, TELLINGS.rstrip(), TALES))


def fitting(lines: str, text: str) -> tuple[Line, ...]:
    """The lines of some blocks of which a text has a word, in their order."""
    plain = "".join(sign if sign.isalpha() or sign == "'" else " " for sign in text.lower().replace("’", "'"))
    blocks, places = _blocks(lines)
    words = {*plain.split(), *plain.replace("'", " ").split()}
    found = {place for word in words for place in places.get(word, ())}
    return tuple(line for place in sorted(found) for line in _compiled(blocks[place]))
