"""The last ways of asking, for what is not understood as it stands; in the form of `sayings.py`."""

from __future__ import annotations

from kb.reader.phrases.sayings_more import SAYINGS_MORE

SAYINGS_LAST = r"""
# choice please left down discretion matter liberty
^(?:do|does|have|has) (<i>) (?:have |got )?(?:a|any|no) (?:choice|say|option|freedom|discretion)\s(?:about
    |over|in|on|as to|with|regarding)(?: the)?(?: <wearing>)?(?= ) => must \1 wear
^is (?:it|this) (?:left to|down to|up to|for|at) <me> (?:whether|if)(?: or not)? (?:to|<i>)
     => is it optional to\s
# most max maximum limit
^(?:the )?(?:most|max|maximum) (?!(?:length|width|height|size|number|distance|diameter)\b)([\w' -]+?s)
    (?:\sallowed| permitted)?\W*$ => how many \1 may be worn?
^what(?:'s| is) the (?:limit|max|maximum|cap|ceiling) (?:on|for)(?: the number of)? ([\w' -]+s)\W*$
     => how many \1 may be worn?
^([\w' -]+s)[:,] (?:the )?(?:max|maximum|limit|most)\W*$ => how many \1 may be worn?
^(?:what(?:'s| is) |is there )?(?:the |a |any )?(?:maximum|max|greatest|upper|limit|limit on the|limit to the
    |limits? (?:on|to|for)(?: the)?)\s?(length|width|height|size|diameter)(?: allowed| permitted)? (?:of|for
    |on) (.+?)\W*$ => what is the \1 of \2?
^(.+?)[:,] (?:maximum|max|greatest) (length|width|height|size|diameter)\W*$ => what is the \2 of \1?
^(?:maximum|max|greatest) (length|width|height|size|diameter)[,:] (.+?)\W*$ => what is the \1 of \2?
# ought
^((?:how|what) [\w ]+?) ought (.+?) to be\b => \1 should \2 be
# measure
^what (?:do|does) (.+?) measure\W*$ => what size is \1?
# colour colours color
^what(?:'s| is) the (?:right|proper|correct|prescribed|official) (colou?rs?) (?:for
    |of) => what is the \1 of\s
# good compliant problem wrong lawful keep wear true yes trouble breaking
^(.*\d.*?)\s*[,;.:?!-]+ (?:is (?:it|that|this) |am i )?(?:still )?(?:any good|good|compliant|(?:a\s
    |any\s)?problem|anything wrong(?: with (?:that|it))?|lawful|(?:may|can|could) i (?:wear|keep|have) (?:it
    |them)(?: like that| as (?:it is|they are)| so)?|true or not|yes or no|in trouble|breaking (?:a
    |any)\srules?|in\sbreach|all right|yes)\W*$ => \1. Is that OK?
# measuring measures
\b(?:that |which )?measur(?:ing|es) (?=(?:exactly |about |just |only )?\d) => that is\s
# made make
^(?:they|he|she|the \w+|someone) (?:made|make|cut|sewed|printed|gave|got)(?: me| us)? (an?\s
    (?:[\w/.-]+\s){1,5}?[\w'-]+)[.;,] => I have \1.
^(?:they|he|she|the \w+|someone) (?:made|make|cut|sewed|printed) (my [\w' -]+?) (?=\d) => \1 is\s
\b((?:the|my) [\w' -]+?) (?:that |which )?they (?:made|gave|sold|cut|printed|issued|sent)(?: me| us)? (?=is\b
    |are\b) => \1\s
# keep have hold carry cart lug tote take bring
\b(?:have|keep|hold|take|bring|cart|lug|tote|carry) ((?:the|my|our|an?|his|her) [\w' -]+?) (?:about me|around
    |about|along|with me|with us|about my person|on my person)(?= (?:in|on|while|when|at
    |during|with)\b|\W*$) => carry \1
# come go
^(can|may|could|must|should) ((?:the|my|our|an?|his|her) [\w' -]+?) (?:come|go) (?:with me|along|with us)\b
     => \1 \2 be carried
^(?:does|do) ((?:the|my|our|an?|his|her) [\w' -]+?) have to (?:come|go) (?:with me|along|with us)\b
     => must \1 be carried
# better
^had (<i>|the [\w' -]+?) better (?=(?:wear|have|be|put)\b) => should \1
# demand demands insist insists oblige make makes require requires call calls expect prescribe
^(?:do|does|did|will|would|can) (?:<books>|they|anyone|anybody) (?:actually |really )?(?:make|oblige|force
    |compel|require|order|expect|want) (<me>)(?: to)? (?=(?:wear|have|put|carry|own|keep|be|go)\b) => must \1
^(?:do|does|did|will|would) <books> (?:actually |really )?(?:demand|call for|insist on|insist upon|prescribe
    |expect|want|lay down) (?:<wearing> )? => must I wear\s
^(?:do|does) ([\w' -]+? (?:rig|dress|order|kit|uniform)) (?:demand|call for|need|want|take|insist on|include
    |entail|involve)\s(?:an? |the )?([\w' -]+?)\W*$ => is \2 worn in \1?
# miss
\b(give|giving) ((?:the|my|our|his|her) [\w' -]+?) a miss\b => go without \2
# opt excused exempt exempted
\bopt out of(?: wearing)? => go without\s
# stay remain
^(can|may|could|must|should) ((?:the|my|our|his|her) [\w' -]+?) (?:stay|remain|be left|be) (?:at home|off
    |behind|in\s(?:my|the|his|her) (?:locker|bag|drawer))\b => \1 I go without \2
# bare bareheaded barehanded barefoot barefooted
(?<!or can i )(?<!or may i )(?<!or do i )\b(?:go|be|work|walk|come|appear|stay|turn out|stand)(?: about
    |\saround| out)? bare[ -]?headed\b => go without headgear
(?<!or can i )(?<!or may i )(?<!or do i )\b(?:go|be|work|walk|come|appear|stay|turn out|stand)(?: about
    |\saround| out)? bare[ -]?handed\b => go without gloves
(?<!or can i )(?<!or may i )(?<!or do i )\b(?:go|be|work|walk|come|appear|stay|turn out|stand)(?: about
    |\saround| out)? bare[ -]?foot(?:ed)?\b => go without footwear
^bare[ -]?head(?:ed)?\b => without headgear
^bare[ -]?hand(?:s|ed)\b => without gloves
^(?!.*\bor (?:can|may|do) i\b)(.{3,}?),? (?:with )?(?:<the> )?bare[ -]?hand(?:s|ed)\b => \1 without gloves
^(?!.*\bor (?:can|may|do) i\b)(.{3,}?),? (?:with )?(?:<the> )?bare[ -]?head(?:s|ed)?\b => \1 without headgear
# hatless capless gloveless beltless sockless tieless shoeless coatless jacketless shirtless helmetless
     scarfless bootless bagless vestless maskless
\b(?:go|be|work|walk|come|appear|stay|turn out|stand)(?: about| around| out)? ([a-z]{3,}?)less\b
     => go without a \1
# decides calls settles orders declares announces determines proclaims
^whom? (?:decides|calls|settles|orders|declares|announces|determines|proclaims|rules)(?: on| over)?
     (?:the\s|a\s|an )?(?=[\w' -]*\b(?:waivers?|permission|exemptions?|leave|order|dress
    |mourning)\W*$) => who grants\s
# taking take bringing bring
\b(?:take|taking|bring|bringing) (an? [\w' -]+?) (?:up|over|across)(?= (?:when|if|while)\b) => carry \1
# describe talk walk run take give rundown head top parts components constitutes composed list
^(?:please |can you |could you )*(?:describe|outline|detail|explain)(?: to me| for me)? ((?:[\w'-]+ )*(?:rig
    |dress|order|kit|uniform|gear|wear|clothes))(?: to me|\sfor\sme)?\W*$ => what is worn in \1?
^(?:please |can you |could you )*(?:talk|walk|run|take|lead) (?:me|us) through(?: the list for)? (
    (?:[\w'-]+\s)*(?:rig|dress|order|kit|uniform|gear|wear|clothes))\W*$ => what is worn in \1?
^(?:please |can you |could you )*run through ((?:[\w'-]+ )*(?:rig|dress|order|kit|uniform|gear|wear|clothes))
    (?: for me| with me)?\W*$ => what is worn in \1?
^(?:please )?(?:give|tell|list|show)(?: me| us)? (.+?),? (?:from )?(?:head|top) to (?:toe|foot|tail
    |bottom)\b.*$ => what is worn in \1?
^(.+?)[,:;-]? (?:from )?(?:the )?(?:head|top|cap|hat) (?:to|down to) (?:toe|foot|tail|bottom|boots|socks)
    (?:,?\s(?:pls|please|thanks|ta))?\W*$ => what is worn in \1?
^(.+?)[,:;-]? from (?:the )?(?:head|top) (?:down|downwards)\W*$ => what is worn in \1?
^what(?:'s| is| are) (?:all )?(?:the )?(?:whole|parts|components|elements|pieces|bits|ingredients|make-up
    |composition|contents|list)(?: of| for| in) ((?:[\w'-]+ )*(?:rig|dress|order|kit|uniform|gear|wear
    |clothes))\W*$ => what is worn in \1?
^what (?:all )?constitutes ((?:[\w'-]+ )*(?:rig|dress|order|kit|uniform|gear|wear|clothes))\W*$
     => what is worn in \1?
^how(?:'s| is) ((?:[\w'-]+ )*(?:rig|dress|order|kit|uniform|gear|wear|clothes)) (?:made up|composed
    |constituted|put together|built up)\W*$ => what is worn in \1?
^list (?:the (?:items|parts|pieces|contents) of )?((?:[\w'-]+ )*(?:rig|dress|order|kit|uniform|gear|wear
    |clothes))\W*$ => what is worn in \1?
^(?:full|complete|whole|entire|check|kit|packing|item) ?lists? (?:for|of) (.+?)(?:,? (?:pls|please))?\W*$
     => what is worn in \1?
# checklist
^(?:a |the )?checklist (?:for|of) (.+?)\W*$ => what is worn in \1?
# include includes look entail entails involve involves call calls demand demands
^what (?:all )?(?:do|does) ((?:[\w'-]+ )*(?:rig|dress|order|kit|uniform|gear|wear|clothes)) (?:include
    |look\slike|entail|involve|cover|contain)\W*$ => what is worn in \1?
^what (?:all )?(?:do|does) (.+?) (?:call for|demand|ask for|insist on)\W*$ => what is required in \1?
# dress dressed turn
^how (?:do|does|should|must|shall|ought|am|are|is|can) (<i>) (?:to )?(?:be )?(?:dress(?:ed)?|turn(?:ed)? out
    |kit(?:ted)? out|rig(?:ged)? (?:out|up)) (?:up )?(?:for|in) (.+?)\W*$ => what is worn in \2?
# kit contents list
^([\w' -]+? (?:rig|dress|order)),? (?:kit|contents|list|kit list|in full
    |in detail)\W*$ => what is worn in \1?
# hoping planning intending meaning wanting tempted
^(?:i|we)(?: was| were| am| are|'m|'re|'d been| had been) (?:just |rather )?(?:hoping|planning|intending
    |meaning|wanting|tempted) to (?=\w+ ) => I would like to\s
# just
\bjust (?=(?:anyone|anybody|everyone|everybody)\b) =>
# y'all ya yous youse ye
\b(?:y'all|ya|yous|youse|ye)\b => you
# off
\b(?:won't|will not|doesn't|does not|don't|just won't) come off(?=[\s.,;]|$) => cannot be removed
# years years'
\b([\w-]+) years['’]? (?:of )?service\b => \1 years of service
# hardly barely next practically virtually scarcely
\b(?:hardly any|barely any|scarcely any|next to no|practically no|virtually no) (?=\w+) => no\s
# stays stay remains remain
^(<the> [\w' -]+?) (?:stays?|remains?) (?:with me|mine|with us|ours)\b => may I keep \1
# hair
^hair (?:past|beyond|over|below|longer than) <the> collar\b => hair longer than the collar
# gale gales storm storms winds
^((?:which|what) (?:clause|paragraph|rule|section|order)\b.+?) in (?:a |an |the )?(?:strong |high |heavy
    |full )?(?:gales?|winds?|wind storms?)\b => \1 in wind
# bit while moment minute second sec mo minutes
,? for (?:just )?(?:a|one|a few|a couple of|a short|a little|five|ten) (?:bit|while|moment|minute|second|sec
    |mo|minutes)(?=\W*$) =>
# list name give tell show
^(.+?),? (?:would|will|could|can) you\W*$ => \1
# dates date days hours months
^(?:on |between |from |in |during )?(?:what|which) (?:exact |calendar )?(?:dates?|days|hours|months)
     (?:of the\s(?:year|day) )?(?=(?:can|may|must|could|should|is|are|am|do|does|will)\b) => when\s
# bother bothering
,? (?:and )?(?:not|never) (?:have to )?bother (?:with |about )?(?:wearing |putting on )?(?=\w) => without\s
# come walk wander pop nip get go
\b(can|may|could|might|must|should) (<i>) (?:come|walk|wander|pop|nip|get|go)(?: about| around)? ((?:in|into
    |to|onto|on|through)\s<the> [\w' -]+?) (?:in|wearing|with) (?!(?:the|a|an|order|case)\b)([\w' -]+?)
    (?=\W*$|,| without\b| and\b) => \1 \2 wear \4 \3
# ask see speak talk approach
^who (?:do|does|should|must|can|would) (<i>) (?:have to |need to )?(?:ask|see|go to|speak to|talk to
    |approach)(?: about| for| regarding)?(?: permission| leave)?(?: for| about| to)? (?:<wearing>|wear)
    \s(.+?)\W*$ => who gives permission to wear \2?
# high tall
^how (?:high|tall) (?:can|may|must|should|could) (<the> )?([\w-]+?)s? be\b
     => what must the height of the \2 be
# long
^how long (?:can|may|must|should|could) (<the> )?([\w-]+?)s? be\b => what must the length of the \2 be
# issued given supplied provided
^how many ([\w' -]+?) (?:is|are|am|was|were) (?:(<the>)? ?(?:new )?([\w' -]+?)|(<i>)) (?:issued|given
    |supplied|provided)(?: with)?\W*$ => how many \1 does \2 \3\4 get?
# run runs dash hurry rush go goes
\b(when|if|once|while|whenever) (<subject>) (?:(?:just |only )?(?:runs?|dash|hurry|rush)|(?:just
    |only) goe?s?)\s(?=(?:back )?(?:indoors|outdoors|inside|outside|in|into|out|onto|on to
    |to)\b) => \1 \2 go\s
# through across along
\b((?:walk|stroll|wander|march|pass|travel|com|go|cross)l?ing(?: (?:straight |back )?home)?)
    \s(?:through|along) (?=\w) => \1 in\s
# whole entire
,? ?\b(?:for |during |over )?the (?:whole|entire) (?:time|trip|day|shift|journey|way|while
    |of it)(?=[.,;?!]| |$) =>
# ordinary normal usual regular routine everyday
,? ?\b(?:on|for|during|in) (?:an? |the |my )?(?:ordinary|normal|usual|regular|routine|everyday)
    \s(?:(?:working )?days?|shifts?|weekdays?|conditions|circumstances|times)(?=[.,;?!]| |$) =>
# off
^((?:(?!\b(?:is|are|was|were|may|can|must|should|could|do|does|did|i|or|how|if|with
    |have)\b)[^.;:?!])*[,.;:] )?(?:so |then |and )?((?:<the> )?(?:(?!(?:and|so|then|is|are|may|can|must
    |should|do|does|a|i|or|but)\b)[\w'-]+ ){1,3})(?:obviously |surely |presumably |definitely |certainly
    \s|naturally |clearly |of course |always |then )(?:has to be |have to be |to be |must be )?off\W*$
     => \1must \2 be taken off?
# taken let
\b(?:have|get|having|getting) (<the> (?:[\w'-]+ )?[\w'-]+) (?:taken (?:in|up)|let (?:out|down))\b(?:(?:
    \sa (?:bit|little))?,? (?:to|so (?:that )?(?:it|they)) (?:make (?:it|them) )?(?:fits?)(?: (?:me|better
    |properly))?)? => alter \1
# staying keeping
^(<the> [\w' -]+?)(?:'s| is| are) (?:staying|stopping|here to stay|not coming off)(?: on| put)?[,.;:-]+
    \s(?:(?:is there )?(?:anything|something|any rule|a rule)(?: in <books>)? (?:against|to stop)(?: it
    |\sthat| them| me)?|any objections?)\W*$ => is there a rule against wearing \1?
# show shows showing seen visible shown displayed
\b(is|are|was|were) ([^,.;?]+?) (all right|fine|ok|okay|allowed|permitted),? (?:if|provided|providing
    |(?:so|as)\slong as)(?: that)? (?:it|they) (?:can't|cannot|can not|couldn't|won't|isn't|aren't
    |doesn't|don't|is not|are not|does not|do not)(?: be)? (?:seen|visible|show|showing|on show|noticed
    |shown)\W*$ => \1 \2 \3 out of sight
# down up over across along out round back
\b((?:take|carry|bring|wear) <the> [\w-]+(?: [\w-]+)?) (?:down|up|over|across|along|out|round|back) (?=(?:to
    |onto|into) (?:the|our)\b) => \1\s
# boiling roasting baking sweltering scorching sizzling heatwave
^(who\b.*?) (?:(?:when|if|while|once) it(?:'s| is| gets) (?:boiling|roasting|baking|sweltering|scorching
    |sizzling)(?: hot)?|(?:in|during) (?:a|the) heatwave)\b => \1 in hot weather
# to
^(?:and |so )?what (?:do|must|should|shall|would) (<i>) (?:(?:need|have) to )?(?:put on|wear|need) to
    \s(?!(?:wear|have|put|carry|own|bring|know|do|be|get|take|buy|show)\b)([a-z]{2,}?)e?\b
    ((?: [\w' -]+?)?)\W*$ => what do \1 wear when \2ing\3?
# ordinary normal regular standard typical everyday
\b(?:an?) (?:ordinary|normal|regular|standard|typical|everyday) (?=[a-z]) => a\s
# say says
\bwho (?:can|may|could|gets to|has to) say (?:that )?(<the> [\w' -]+?) (?:can |may )?(?:comes?|goes?) off\b
     => who can let us take off \1
# past
\bpast (?=the (?!(?:\w+ )?(?:collars?|knees?|ears?|shoulders?|elbows?|wrists?|eyebrows?|corners?|hips?|lips?
    |hour|end|edge|hem|cuffs?|chin|jaw|waist)\b)[a-z]) => beyond\s
# year
,? (?:at |for )?this time of (?:the )?year\b => today
# start starts started starting begin begins beginning began going moving move transferred transfer
^((?:[^.?!;]*[.;] )?)(?:i|we)(?:'m|'re|'ll| am| are| will)? (?:start(?:s|ed|ing)?|begin(?:s|ning)?|began
    |going|moving|move|transfer(?:red)?)(?: <from_when>)? (on|in|at)
     (<the> [\w' -]+?)(?: <from_when>)?(?:,? (?:my )?first (?:day|week|month|season|winter|summer
    |term)(?: here| ever)?)?(?=[.;!]) => \1I am \2 \3
# starter starters
^(?:i'm (?:a )?|we're |i am (?:a )?)?new starters? (?:here )?(?=(?:in|on|at) the\b) => I am\s
# pocket pockets
^((?:[^?]*[.;,:] )?)(?:my |a |the )?(<pocketed>)<in_pocket>(?:,? or not|:? (?:ok|okay|fine|allowed
    |all right|alright|yes or no))?\W*$ => \1may I carry my \2?
\b(can|may|could|must|should) (<i>) (?:just |still )?(?:have|keep|carry|put|leave|stick|stow|bring
    |take)\s((?:my |a |the |our )?<pocketed>)(?: on me)?<in_pocket> => \1 \2 carry \3
# difference differences differ differs different
^((?:[^.?!;]*[.,;:] )?)(?:what(?:'s| is|s| are)|whats|any|is there (?:a|any)) (?:the
     |a )?differences? between (an? [\w -]+?)'s ([\w -]+?) and (?:mine|ours|my own|the one i wear
    |my one)\?\s(?:i'm|i am|we're|we are) (an? [\w -]+?)\W*$ => \1what's the difference between \2's \3 and
     \4's?
# gave given
\b(?:'ve |have |has |had )?(?:gave|given) (<the> [\w' -]+?) an? (?:(?:good|quick|proper|thorough|gentle|light
    |firm|decent)\s)*(wring|iron|press|wash|brush|scrub|rinse|polish|bleach|starch|soak|tarring|lacquer)
    (?: out)?(?= |[.,;?!]|$) => have \2ed \1
\bwringed\b => wrung
# purpose deliberately accident mistake accidentally thinking intentionally knowingly
,? \b(?:on purpose|deliberately|intentionally|knowingly|accidentally|by (?:accident|mistake)|without
    \sthinking)(?=[.,;?!]| (?:in|on|at|with|as|yesterday|today|last|this)\b) =>
# turned turns showed shows
\b(?:turned|turns|showed|shows) (?:out|up)(?= (?:on|at|in|for|with|without|to)\b) => came
# through
\b(wore|wear|walked?|went|go|came|strolled?|passed) ([^.;?]{0,40}?\b)?through (?=(?:the )?[\w' -]{3,20}(?:
    \s(?:with|in)\b|[.,;?]|$)) => \1 \2in\s
# becomes become happens happen done
^(?:and |so )?what (?:becomes|happens|must happen|should happen|is to happen|is (?:to be )?done|must be done
    |should be done)\s(?:of|to|with) (<the>(?: (?!after\b|if\b|when\b|once\b|on\b|in\b|at\b|from\b|for\b)
    [\w'-]+)+)(?: after (?:an?|any|the|its|each|every|being in a)\s(?:fall|drop|wear|use|wash|soaking|ducking
    |dunking|swim|trip|tumble|slip))?\W*$ => how is \1 cared for?
# before after
^(?:if (?:both|the two|they)(?: both)? are worn,? )?(?:does|do|is|are|must|should) (<the> [\w' -]+?)
    \s(?:go|come|sit|rank|worn|be worn) (?:before|in front of|ahead of|above) (<the> [\w' -]+?),? or
    \s(?:after|behind|below)(?: (?:it|that|them))?\W*$ => which comes first, \1 or \2?
# refuse refuses refused decline declines won't unwilling
^((?:one of )?<the> [\w' -]+?) (?:(?:refuses?|refused|declines?|is unwilling|are unwilling) to|won't)
    \s(take off|remove|leave off|wear|put on|carry) ([^.?!;]+?)[.;:]+ (?:so |and )?(?:does|do|must|should)
    \s(?:he|she|they)(?: really)?(?: have to| need to)?\W*$ => must \1 \2 \3?
# started start starting joined begun taken
^((?:[^.?!;]*[.;,] )?)(?:i|we)?(?:'ve|'m| have| am| will be|'ll be)? ?(?:(?:only |have |'ve )*(?:just|newly
    |recently|now|finally))? ?(?:start(?:ed|ing)?|begun|been taken on|joined|join|signed on)(?: (?:today
    |tonight|tomorrow|this (?:week|morning|evening|month)|next (?:week|month)|last (?:week|month)
    |(?:on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day))? (?:work )?as (?=an? \w) => \1I am\s
# keep leave
\b(?:keep|leave) (it|them|mine|this|these) on\b(?! (?:the|my|a) (?:peg|hook|shelf|seat|rack)) => wear \1
# hair
\bhair(?:'s| is)?(?: (?:comes?|goes|hangs|falls|gets|just))*(?: right| all the way)? (?:down )?to\s
    (?=(?:the|my|our|his|her|their) (?:collar|shoulders?)\b) => hair reaches\s
^(.*\bhair\b.*[.,;] .*?)\btie it (?:up|back)\b => \1tie my hair back
# long
\b(?:so|as) long as\b => if
# isn't aren't
^(is|are)n't (<the> [\w' -]{3,40}?) ((?:worn|put|placed|pinned|sewn|fixed)\s
    (?:on|at|in|above|below|over|under|beside|next to) .+)$ => \1 \2 \3
"""
SAYINGS = SAYINGS_MORE.rstrip() + SAYINGS_LAST
