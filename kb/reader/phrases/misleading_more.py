"""More ways of asking that would be read otherwise than they are meant; in the form of `sayings.py`."""

from __future__ import annotations

MISLEADING_MORE = r"""
# option possibility goer runner starter cards game thing proper bet line clear
\b(?:<very> )*<good><next> => allowed
# admissible normal practice fair allowable excusable tolerated tolerable countenanced sanctioned
     approved endorsed licit suitable appropriate advisable sensible wise feasible idea thing choice plan
     dress regulation yes justified accepted legitimate valid cricket kosher within
\b(<be>\b[^.;?!]*? )(?:<very> )*<fit><next> => \1allowed
(^|[.,;:–-] )(?:<very> )*<fit>\s*\?*$ => \1allowed?
# breach crime limits frowned verboten no luck arm chancing bending stretching flouting mark liberties
     liberty cheeky sin offence offense misdemeanour misdemeanor felony pas transgression matter
     violation infringement contravention line order question bounds pale form trouble done thing cricket
     menu table cards list agenda ruled far no-go go
\b(?:<very> )*<bad>(?: of)?<next> => forbidden
# blunder error slip gaffe naughty cheating manners rude disrespectful unlawful unacceptable inadmissible
     improper impermissible illicit inappropriate unsuitable criminal sinful disallowed taboo outright
     mistake no idea thing unwise breach
\b(<be>\b[^.;?!]*? )(?:<very> )*<ill><next> => \1forbidden
(^|[.,;:–-] )(?:<very> )*<ill>\s*\?*$ => \1forbidden?
# on
\b(that|it|this) isn't (?:<very> )*on(?=\W*$|, is\b) => \1 is forbidden
# choice taste discretion judgement judgment preference liking conscience affair lookout business call
     decision open up down left
(?<!whether )\b(?:<very> )*<free><next> => optional
# absolute negotiable rigueur uniform dress fixture issue
\b(?:<very> )*<due><next> => required
# essential imperative vital unavoidable indispensable expected demanded stipulated insisted laid
     necessity condition incumbent
\b(<be>\b[^.;?!]*? )(?:<very> )*<needful><next> => \1required
(^|[.,;:–-] )(?:<very> )*(?:<needful>|expected)\s*\?*$ => \1required?
# if luck arm chancing bending stretching flouting mark liberties liberty cheeky
^(?:would|will|am|are|is|was|were) (<i>) (?:be )?<bad>(?: by| in)? (?=\w+ing\b) => is it forbidden for \1\s
^(?:would|will|am|are|is|was|were) (<i>|<the> [\w' -]{2,30}?) (?:be )?(?:in the wrong|wrong|at fault|out
    \sof (?:line|order)|in trouble|in breach|breaking (?:<any> (?:rules?|regs?|regulations?)|anything)
    |doing (?:anything |something )?wrong|committing an offence) if\s => is it allowed if\s
# nobody no none
(^|[,;:–-] )(?:surely )?<nobody> (?:<very> )*needs? (?!to\b)(?=\w) => \1 must anyone have\s
# make force compel oblige order
(^|[,;:–-] )(?:surely )?(?:<nobody>|they|<the> [\w-]+)(?:'s going to|'re going to| (?:can|could|will|would
    |may|might|is going to|are going to|has (?:the|any) right to))(?:n't|'t|not| not)?(?: really| ever|
    \sactually)? (?:make|force|compel|oblige|order) <me>(?: to)? (?=(?:wear|put|carry|have|own|keep|use
    |take|leave|tuck|roll|button|cover|shave|trim|tie|wash|go|get)\b) => \1 must I\s
# tell persuade convince
^(?:surely )?(?:<nobody>|they|you|<the> [\w-]+)(?:'s going to|'re going to| (?:can|could|will|would|may|might
    |is going to|are going to))?(?:n't|'t|not| not)? (?:tell|persuade|convince) <me> (?:that )?(?=(?:i|we|one
    |you) (?:must|have|need|ought) ) =>
# nobody no none
\b<nobody>(?:'s| has| have| had|'d) (?:yet |actually |ever )?(ordered|granted|declared|announced|approved
    |authorised|allowed) ([\w' -]+?)(?: yet| so far| today)?(?=[,.;?]| but\b|$) => \2 has not been \1
# need call requirement obligation
(^|[,;:–-] )(?:surely )?(?:there(?:'s| is| was)(?: <very>| surely)* )?no (?:real |actual\s
    |earthly\s)?(?:need|call|requirement|obligation)(?: for <me>)? to (?=\w) => \1 must I\s
(^|[,;:–-] )(?:surely )?(?:there(?:'s| is| was)(?: <very>| surely)* )?no (?:real |actual\s
    |earthly\s)?(?:need|call|requirement) (?:for|of) (.+?)(?:,? (?:is|was) there)?(?:,? (?:surely
    |then))?\s*\?*$ => \1 must I have \2?
# nobody no none
(^|[,;:–-] )(?:surely )?<nobody> (?:<very> )*(?:has|have|needs|need|is obliged|are obliged|is required|are
    \srequired|is expected) \s?to (?=\w) => \1 must anyone\s
(^|[,;:–-] )(?:surely )?<nobody>(?: in (?:<own>|the) \w+| here| at [\w' -]{3,30}?)?(?P<who> (?:below|above
    |under|over|without|junior to|senior to|of|with|but|except) [\w' -]{1,25}?)? (?:may|can|is allowed to
    |are allowed to|is permitted to|gets to|should) (?:ever )?(?=\w) => \1 may anyone\g<who>\s
# says said say reckons thinks claims swears swore insists insisted maintains promised assured told tells
     told sure certain adamant convinced thought reckon think swear
(?<=[.;,] )(?:and |but |though |which )?(?:<somebody> )?<says>(?: that)? (?:(?:it|they|that|this|those
    |these|he|she|i|we)(?:'s| is| was| were|'re| are|'d be| would be|'m| am)(?: all| both| perfectly|
    \squite)?|are|is) (?:<fine>|forbidden|banned|<good>|<fit>|<bad>|<ill>|within (?:the )?(?:tolerances?
    |limits?|bounds))[.;,]+ <echo>\W*$ => Is that OK?
([.;?!] )<echo>(?=\W*$) => \1Is that right
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
# called required prescribed ordered
^((?:if|when|where) [^,;:.?]+?) (?:would (?:\w+ )?be|is|are)(?: \w+ly)? (?:called for|required|prescribed
    |ordered)(?= ?,| (?:in|at|on|aboard) [^,;:.?]+, ) => \1 is worn\s
# off excused exempted spared
^(?:do|does|did|can|will|would) ([\w' -]+?) (?:(?:still|ever|also|really) )*(?:get|be) (?:let off|excused
    |excused from|exempted from|spared) (?:<wearing> )?(?=\w) => may \1 go without\s
# exempt exempted excused spared relieved freed released off free
^(?:and |so )?(?:who(?:'s| is| are)|(?:which|what) (?:grades?|ranks?|members?|people) (?:is|are))
    \s(?:exempt(?:ed)?|excused|let off|spared|relieved|freed|released|free from|free of)(?: from| of)?
    \s(?!by\b) => who need not have\s
# not never isn't aren't
^(?:and |so )?when (?:is|are) ([\w' -]+?) (?:not|never) (?:to be )?(worn|carried)\b => when must \1 not be \2
^(?:and |so )?when (?:isn't|aren't|is not|are not) ([\w' -]+?) (worn|carried)\b => when must \1 not be \2
# reason reasons obstacle impediment barrier grounds
^(?:is there |are there |there(?:'s| is) |have (?:you|we) )?(?:any|a|some|no)?\s?(?:good |earthly\s
    |particular\s|valid )?(?:reason|grounds?)s? (?:why )?(?:for me |for us )?(?:not to|(?:<i>) (?:can't
    |cannot|can not|may\snot|shouldn't|should not|mustn't|must not|couldn't|could not|might not)) => may I\s
# stand stands position deal score story verdict ruling word
^(?:where|how) (?:do|would|does|should) (?:<i>|<books>) stand (?:on|with|as regards|regarding|over|as to
    |when\sit comes to)(?: <wearing>)? => may I wear\s
^(?:so )?what(?:'s| is| are) the (?:position|deal|score|story|verdict|ruling|rulings|word|situation
    |state\sof\splay|line|lowdown) (?:on|with|about|as to|regarding|as regards|concerning|when it comes to)
     => what is the rule on\s
# duty compulsion obligation
^(?:am i|are we|is (?:he|she|one|anyone)) under (?:a|any) (?:duty|obligation|compulsion) to\b => must I\s
# have has
^(?:have|has) (?!.*\b(?:right|leave|permission|cause|need|reason|way|authority|order|orders|duty
    |choice) to\b)(<subject>) (?:still |really )?(?:got )?to (?=(?:be|wear|have|put|go|carry|own|keep|take
    |leave|stay|come)\b) => must \1
^what (?:have|has) (<i>) (?:got )?to (?=(?:be|wear|have|put|go|carry|own|keep|take)\b) => what must \1
# made make ordered forced compelled obliged force compel oblige
^(?:can|could|may) (<subject>) be (?:made|forced|compelled|obliged|ordered) to\b => must \1\s
^(?:can|could|may) (?:they|anyone|anybody|someone|somebody|<the> \w+) (?:really )?(?:make|force|compel
    |oblige)\s(<me>|<the> [\w-]+)(?: to)? (?=(?:wear|have|carry|put|own|keep)\b) => must \1\s
# choose decide opt elect prefer refuse decline avoid dodge duck shun
\b(can|may|could|might) (<subject>) (?:choose|decide|opt|elect|prefer) not to <wear>(?= )(?! to\b)
     => \1 \2 go without
\b(can|may|could|might) (<subject>) (?:refuse|decline|avoid|dodge|duck|get out of) (?:to <wear>|<wearing>)
    (?=\s) => \1 \2 go without
# way getting
^is there (?:any|a|no)?\s?(?:way|getting|means|dodge) (?:a?round|out of|past|of avoiding|to avoid
    |to\sget\sout\sof)\s(?:having to wear|<wearing>) => may I go without\s
# when
^<tell>,? when (<subject>) (may|can|must|should|could|might|is|are|am|has|have|need)\s(?!to\b) => when \2 \1
^((?!if\b|whether\b|it\b|they\b)(?:[\w'-]+ ?){1,5}?)\s?[,:;.-]* when (?:is it |is that |are they )?(allowed
    |permitted|ok|okay|compulsory|required|mandatory|obligatory|forbidden|banned|optional|needed)\W*$
     => when is \1 \2?
^((?:<the> )?(?!and\b|but\b|so\b|what\b|how\b)(?:[\w'-]+ ?){1,4}?)\s?[,:;-]* (?:and )?when\W*$
     => when may \1 be worn?
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ when must (?:i|we|you|one)\W*$ => when must \1 be worn?
^when (?:is|are|was|were|would) (?:it|this)(?: be)? (?:wrong|forbidden|prohibited|banned|not allowed
    |an\soffence)\s(?:for <me> )?(?:to|if <i>) (wear|carry|have) (.+?)\W*$ => when may \2 not be worn?
^when (?:is|are|was|were|would) (?:it|this)(?: be)? <fine> (?:for <me> )?(?:to|if <i>) (wear|carry|have)\s
    (.+?)\W*$ => when may \2 be worn?
^when (?:is|are|am) (<subject>) to (?=(?:be worn|wear|have|put|carry)\b) => when must \1
^when do (the .+?) (?:have|need) to\b => when must \1
# time occasion
^(?:is|are) there (?:any|a|ever a) (?:time|occasion)s? (?:when )?(<i>) (needn't|can't|mustn't|can|may|must
    |should|could)\b => when \2 \1
# anywhere somewhere place places spot rig rigs dress order outfit
^is there (?:anywhere|somewhere|(?:any|a|some|one) (?:place|spot|rig|dress|order|outfit))
    \s(?:that |which )?(<i>) (can't|mustn't|can|may|must|should|could) (.+?) (?:in|at|on)\W*$
     => when \2 \1 \3?
^(?:is|are) there (?:anywhere|somewhere|(?:any|a|some|one) (?:place|spot|rig|dress|order|outfit)s?)
    \s(?:where |in which |that |at which |on which )?(<i>) (needn't|can't|mustn't|can|may|must|should
    |could)\b => when \2 \1
^(?:is|are) there (?:anywhere|somewhere|(?:any|a|some|one) (?:place|spot|rig|dress|order|outfit)s?)
    \s(?:where |in which |that |at which |on which )?([\w' -]+?) (is|are) (allowed
    |permitted|worn|carried|forbidden|banned)\b => when \2 \1 \3
# worn
\bwhat (?:do|must|should|shall) (?:i|we|you) do with ((?:(?:my|our|an?|the|these|those|some) )?worn[- ]out
    \s[\w' -]+?)(?=\W*$) => who replaces \1
# who whom
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)\s?[.,:;-]+ (?:and )?who (?:can|may|could|might)\W*$ => who may wear \1?
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
# where
^<tell>,? where(?:abouts)? (<subject>) (?:goes?|sits?|belongs?|gets worn|is worn|are worn|lives?)\b(.*)$
     => where does \1 go\2
^where (?:do|does|would|did) <books> (?:want|put|place|have|require) (.+?)\W*$ => where must \1 be worn?
# garment part bit article
^(?:on |to )?(?:what|which) (?:garment|part|bit|article)s?(?: of (?:clothing|<the> \w+))?\s(?:do|does|is|are
    |should|must|can|may) (?!i\b|we\b|you\b|one\b)(.+?) (?:go|sit|worn|belong|fixed|pinned|sewn|attached
    |be\sworn|be|get worn|get sewn|get pinned)(?: on| to| onto)?\W*$ => where is \1 worn?
# makes make
^((?:what|which)(?: (?:all|items|garments|things|pieces|clothes|bits))?) makes? up (?!on\b|in\b|for\b|may\b
    |can\b|is\b) => \1 are worn in\s
# out
^what(?:'s| is| are) (?:all )?(?:out|off|barred|ruled out)(?: of bounds)? (in|for|with|on)\b
     => what may not be worn \1
# most outside longest widest biggest highest largest maximum max tops total all
^(how (?:long|wide|big|high|tall|deep|large|many|far)\b.*?),? (?:at (?:the )?(?:very |absolute )?(?:most
    |outside|longest|widest|biggest|highest|largest|maximum|max)|tops|in total|in all|all told)\W*$ => \1?
^what(?:'s| is| are) the (?:most|maximum|max) (?!(?:length|width|height|size|number|distance
    |diameter)\b)([\w'\s-]+?)(?: that)? (<i>) (?:may|can|could|am allowed to|are allowed to|is allowed to)
     (wear|have|carry|own|put on|have on)\b => how many \1 may \2 \3
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
^whom? (?:do|would|should|must|can|shall) (?:i|we|you|one) (?:ask|see|approach|apply to|go to|write to
    |consult|turn to|petition)(?: about| for| to get| regarding| over) (?:a |an
     |the )?(?=[\w -]*\b(?:waiver|permission|exemption|leave|order|dress|mourning)\b) => who grants\s
# no
^(?:[\w' ]{2,25} (?:says?|said|reckons?|tells? <me>|told <me>|claims?|insists?|thinks?|is|has) (?:that )?)?no
    \s(?![^.;,?]*\b(?:is|are|may|must|can|need|one|to|other|way)\b)([\w' -]+?)
    ((?: (?:in|on|at|with|for|while|when|below|above|during)\b[^.;?!]*)?)[.;,]
    \s(?:is (?:that|it|he|she|this) (?:so|right|true|correct)|are they right|does that hold|true|right
    |correct)\W*$ => are no \1 worn\2?
# cover covers comprise comprises include includes
^(?:and |so |but )?what (?:exactly )?(?:does|do|did) ["“'‘]([\w' -]+?)["”'’] (?:really |actually |exactly )?
    (?:cover|comprise|include|take in)\W*$ => what does \1 mean?
# why
^(?:so |and |but )?why (?:has|have)(?:n['’]t| not) ((?:<the> )?[\w' -]+?) got
    \s((?:<the> )?[\w'-]+(?: [\w'-]+)?)(?: on (?:his|her|their|the) (?:sleeves?|shoulders?|arms?|chest
    |collar))?\W*$ => why does \1 not wear \2?
# get gets
^(?:and |so |but )?when (?:do|does|will|shall|would) (<i>) (?:get|be given|receive) (<own> [\w'-]+
    (?: [\w'-]+)?(?: and (?:<the> )?[\w'-]+(?: [\w'-]+)?)?)\W*$ => when is \2 issued?
# mark
^(.*\bwhat do .+?\bwear (?:at|for|to|on|in) .+?) to mark (?:it|the (?:day|occasion))\b => \1
# keep hang
^(.*\b(?:leaving|leavers?|retiring|resigning|quitting|(?:leave|retire|resign|quit)(?![^.;,:!?]*\b(?:on|off
    |out|behind)\b))\b[^?]*?[.;,:!]\s+(?:so |and |but )?)(?:may|can|could|do) <i> (?:get to )?(?:keep
    |hang on ?to) (?!on\b)((?:<the>|all) [\w' -]+?)(?<! on)(?<! off)(?: then| afterwards
    | for good)?\W*$ => \1am I allowed not to return \2?
# problem problems trouble issue issues worry worries bother harm hassle deal
^(?!.*\b(?:is|are|was|were|it|that|this|there|why|what|who|when|where|how)\b.*\b(?:not
    |no)\b)(.*?\w),?\s(?:not|no) (?:really )?(?:an? |any )?(?:problems?|trouble|issues?|worry|worries
    |bother|harm|hassle|big deal)(?: (?:in|with) (?:that|it|this))?\W*$ => \1 ok?
# issued given supplied provided
^(?:and |so |but )?(?:is|are) (?!.*\b(?:order|leave|permission|consent|waiver|dispensation|word|notice)
    \b)(?:<the> )?([\w' -]+?) (?:issued|given|supplied|provided)(?: out)?(?: free)?(?: (?:to|for) <me>
    | by <the> [\w-]+)?(?: as well| too| free)*\W*$ => who buys the \1?
# give grant
^who (?:has|have|needs|need|must|should)(?: to)? (?:give|grant) (?=(?:permission|leave|consent|the ok)\b)
     => who gives\s
# finishes finish finishing finished
\bfinish(?:es|ed|ing)? (?=(?:about |just |only |some |at )?\d) => ends\s
# thing things garment garments gear stuff item
\b(which|what) (?:hi|high)[- ]?vi[sz](?:ibility)? (?:things?|garments?|gear|stuff|item)(?: (?:goes|go) on
    |\sdo (?:i|we) (?:put|have|need)(?: on)?) => \1 hi-vis do I wear
# mustn't
\bmustn't (?=(?:be|wear|have|carry|use|show|put|take|get|go|do|keep|leave)\b) => must not\s
# one single both
^(?:<the> )?([\w' -]+?)(?: -+|:|,|;)? (?:on |at )?(?:one|a single|just one) (?:shoulder|sleeve|arm|side
    |breast|wrist|hand|leg|collar|lapel|ear|cuff) or (?:both|two|each)\W*$ => where are the \1 worn?
# be
^(?:do|does|must|need|should) (?:<i>|it|that|those|these|there|a man)(?: have to| need to| got to)? be
    \s(.+?) (?:to wear|to have|to carry) (.+?)\W*$ => who may wear \2?
# how
^(how many .+? (?:do|does|did|should|must|can|may|is|are)\b.*?) (?:on|round|around)
    \s(?:the|my|his|her|their|your|each) (?:upper |left |right )?(?:sleeve|cuff|arm)s?\W*$ => \1?
# when
^when (?:must|should|do|does|have|has) (.+?) (?:have to |need to |to )?(?:be taken off|come off|be removed)\b
     => when may \1 not be worn
^when (?:must|should|do|does|have|has) (i|we|you|they|one|an? [\w-]+) (?:have to |need to |to )?
    (?:take off|remove)\b => when may \1 not wear
# ironing pressing bleaching starching dyeing wringing boiling tumble
^(iron|press|bleach|starch|dye|wring|boil|tumble[- ]dry|dry[- ]clean)ing (.+?)\?$ => may I \1 \2?
# pins holes needles hole needle
\b(?:put|stick|push|poke|make|punch) (?:any )?(?:pins|holes|needles|a hole|a needle)
    \s(?:in|into|through)\b => pierce
# say
^(?:let's |just )?say,? (?:that )?(?=(?:the|it|i|we|he|she|you|they|there|my)\b) =>
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
