"""More ways of asking, for a text not understood as it stands; written as those of `sayings.py`."""

from __future__ import annotations

from kb.reader.phrases.askings import ASKINGS
from kb.reader.phrases.at_home import AT_HOME
from kb.reader.phrases.beginnings import BEGINNINGS
from kb.reader.phrases.differences import DIFFERENCES
from kb.reader.phrases.goings import GOINGS
from kb.reader.phrases.handlings import HANDLINGS
from kb.reader.phrases.on_and_off import ON_AND_OFF
from kb.reader.phrases.plainly import PLAINLY
from kb.reader.phrases.wheres import WHERES

SAYINGS = r"""
# lets allows permits let allow permit
^(?:<books>|<the> (?:[\w-]+ )?notice) (?:now |still )?(?:lets?|allows?|permits?) <me>(?: to)?
    \s(?=<wear> |keep |leave |carry |go )([^.;?!]+?)(?:,? (?:does|do|did)(?:n't| not)? (?:it
    |they))?\W*$ => may I \1?
# speaking
^speaking (?:purely |only |strictly |just )?as (?=(?:an?|the|one) [\w' -]+[,:;-]) => as\s
# if whether
^<tell>,? (?:if|whether|that) (?:<books> (?:allow|permit|let) (<me>)(?: to)? )(?=\w+ ) => may \1
^<tell>,? (?:if|whether|that) (?=(?:i|we|he|she|they|you|one|it|there|anyone|anybody|the|my|our|an?|this
    |that)\b) =>
^<tell>,? (?:if|whether) (?:it's|it is|it'd be|it would be) => is it
^<tell>,? (?:if|whether) (?=\w+ing\b) => is\s
# where
^<tell>,? where(?:abouts)?(?: exactly| precisely)?\s(?=(?:do|does|is|are|must|should|may|can)\b) => where\s
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)[,:;-]? (?:goes|go|sits|sit|is worn|are worn|belongs|belong) where(?:abouts)?
    (?: exactly| precisely)?\W*$ => where does \1 go?
^where(?:abouts)? (?:exactly|precisely|abouts|on earth) (?=(?:do|does|is|are|must|should|may|can)\b)
     => where\s
^where (?:ought|has|have) (.+?) to (?:go|be|sit)\W*$ => where should \1 go?
^where (?:on|about) (?:<the> )?(?:body|person|uniform|kit|dress|rig|self|frame)\s(do|does|is|are|should
    |must)\s(.+?) (?:belong|go|sit|live|worn|be worn)\W*$ => where \1 \2 go?
^where(?:'s| is| are) (.+?)(?:'s)? (?:rightful |proper |right |correct )?(?:place|home|spot)\W*$
     => where is \1 worn?
# place placement spot location position site
^(?:what(?:'s| is) )?the (?:exact |right |proper |correct |prescribed |laid[- ]down )?(?:place|placement|spot
    |location|site|position) (?:for|of|to wear|to put) (.+?)\W*$ => where is \1 worn?
^(?:exact |right |proper |correct )?(?:place|placement|spot|location|site|position) (?:for|of) (.+?)\W*$
     => where is \1 worn?
^in (?:what|which) (?:place|spot|location) (?:do|does|should|must|is|are) (.+?) (?:go|worn|be worn|be|sit)\W*$
     => where is \1 worn?
# placed sited
^how(?:'s| is| are| must| should) (.+?) (?:be )?(?:placed|sited|located|situated)\W*$ => where is \1 worn?
# qualifies qualify entitled
^who (?:qualifies|qualify|is eligible|are eligible)(?: for| to wear| to have) => who may wear\s
^who(?:'s| is| are)(?: all)? entitled to wear => who may wear\s
\b(am|is|are) (<subject>) entitled to (wear|carry|have)\b => may \2 \3
# who
^who (?:all )?(?:goes|go|walks|walk) (?:about|around|round) (?:in|with) => who wears\s
^(?:is there )?(?:a |any )?lists? of (?:those |people |the people |people )?who => who\s
^who (?:has|have) (?:a |the )?(?:duty|obligation) to => who must\s
# grade rank
,? (?:in|at|for|with|of) (?:(?:someone|somebody|anyone|anybody|a man|a woman|a person|people|one|those)
    \s(?:in|of|at|with) )?my (?:own |present |current )?(?:grade|rank)
    (?= ?[?.,;]| ?$| (?:in|on|at|with|to)\b) =>
# grade rank grades ranks
^(?:is there )?(?:a |any )?lists? of (?:the )?(?:grades|ranks) (?:that|which|who) => who\s
# hands head feet neck
^what am i to (?:have|wear|put) on (my|his|her|their|our) (hands|head|feet|neck|face|legs|body)
     => what must I have on \1 \2
# times time occasions occasion case cases condition conditions circumstances circumstance situations
     situation days
^(?:is|are) there (?:any |a |ever a |ever any |some |certain )?(?:times?|occasions?|cases?|circumstances?
    |conditions|situations?|days?|moments?|instances?) (?:of the (?:day|year) )?(?:when |where |in which\s
    |on\swhich |that |at which|under which )?(?:<i>|<the> [\w' -]+?) (?:don't|do not|doesn't|does not)\s
    (?:have|need) to (?:wear|be worn)\s(.+?)\W*$ => when need \1 not be worn?
^(?:is|are) there (?:any |a |ever a |ever any |some |certain )?(?:times?|occasions?|cases?|circumstances?
    |conditions|situations?|days?|moments?|instances?) (?:of the (?:day|year) )?(?:when |where |in which\s
    |on\swhich |that |at which|under which )?(<subject>) (can|may|must|could|should|might|is|are|am|need|has
    |have)(n't| not)?\s => when \2\3 \1\s
^(?:is|are) there (?:any |an |ever any )?(?:occasions?|situations?|cases?|calls?) (?:to wear|for wearing
    |for)\s(.+?)\W*$ => when may \1 be worn?
^(?:what|which) (?:are the )?(?:times|occasions|situations|circumstances|conditions|days|cases)\s(?:when|where
    |in which|on which) (<subject>) (can|may|must|could|should|might|is|are|am) => when \2 \1
^(?:what|which) (?:times|occasions|situations|circumstances|conditions|activities|places|jobs|duties
    |weather)\s(?:calls?|asks?) for (.+?)\W*$ => when must \1 be worn?
^(?:what|which) (?:times|occasions|situations|circumstances|conditions|activities|places|jobs|duties
    |weather)\s(?:require|demand|need|requires|demands)s? (.+?)\W*$ => when must \1 be worn?
^(?:at|in|on|under|for|during) (?:what|which) (?:sorts? of |kinds? of )?(?:times?|cases?|conditions?
    |circumstances?|situations?|occasions?|events?|days?) (?=(?:can|may|must|could|should|is|are|am|do
    |does)\b) => when\s
# weather conditions temperature temperatures year months season seasons month
^(?:in|at|on|under|for|during) (?:what|which) (?:sorts? of |kinds? of |type of )?(?:weather|conditions?)\s(?=
    (?:can|may|must|could|should|is|are|am|do|does)\b) => when\s
^(?:at|below|above|under|over|from|in|up to|down to) (?:what|which) temperatures? (?:and (?:below|above
    |under)\s)?(?=(?:can|may|must|could|should|is|are|am|do|does)\b) => when\s
^how (?:cold|hot|warm|chilly) (?:must|should|does|has|need|do) it (?:be|have to be|get|need to be|got to be)\s
    (?:for <me> to|before <i> (?:can|may|have to|must)) (wear|have on|put on) (.+?)\W*$
     => when may \2 be worn?
^(?:at |in |during )?(?:what|which) (?:time|times|part|parts|season|seasons)(?: of the year| of year)?\s(?=
    (?:can|may|must|could|should|is|are|am|do|does)\b) => when\s
# becomes become becoming
^when (?:do|does) (.+?) (?:become|get|turn) (compulsory|required|mandatory|obligatory|optional|allowed|banned
    |forbidden|necessary)\W*$ => when is \1 \2?
# objection objections object complain mind eyelid anything fuss eyebrow
^(?:is there |are there |would there be |have you |has anyone |does anyone have )?(?:any|an
    |some)\sobjections?\s(?:to|against|if|over) (?:my|our|me|us|his|her|the|a chap|one's)?\s?(?=\w+ing\b)
     => is it allowed for me\s
^(?:can|could|would|will|does|do) (?:anyone|anybody|someone|somebody|you|they|the \w+) (?:really )?(?:object
    |complain|mind|fuss|grumble|care|bat an eyelid|say anything|make a fuss
    |raise an eyebrow)(?: to| about| over| at)? (?:me |my |us )?(?:if <i> |<wearing>\s|when <i> )
    (?:wear|wore|wears)?\s? => may I wear\s
^(?:d'you |do you |would you )?mind if (<i>) (?:wear|wore|have|had) => may I wear\s
# law regs rule rules any anything bars bans order orders book code ban forbid
^is there (?:a|any|some) (?:law|ordinance|regulation|provision|edict|prohibition|bar|injunction|veto)\s
    (?:against|on|to stop) => is there a rule against\s
^(?:do|does|did|will|would) <books> (?:actually |really )?(?:ban|forbid|prohibit|bar|rule out|disallow|outlaw
    |exclude|stop|prevent|keep) (?:<me> (?:from )?)?(?:the )?(?:<wearing> )?(?:of )?(?=[\w])
     => is there a rule against\s
^(?:do|does|did|will|would) (?:any|some|any of the) (?:rules?|clauses?|regs?|regulations?)\s(?:ban|forbid
    |prohibit|bar|rule out|disallow|stop|prevent)s? (?:<me> (?:from )?)? => is there a rule against\s
^does (?:anything|something)(?: in <books>)? (?:ban|forbid|prohibit|bar|rule out|disallow|stop|prevent)\s
    (?:<me> (?:from )?)? => is there a rule against\s
^(?:do|does|did|will|would) (?:the |our |these |any )?(?:regs|book|order|manual|code) (?:allow|permit|sanction
    |approve)(?: of)? => is it allowed to wear\s
# against
\bagainst (?:the )?(?:regs|reg|order|orders|book|code|law|dress code)\b => against the rules
# breach break breaking broke infringing violating contravening
^(?:would|will|is|was) (?:it|that) (?:be )?(?:a )?(?:breach|infringement|violation|contravention)
    (?:\sof\s<books>)?\s(?:to|if i|for me to) => is it against the rules to\s
^(?:would|will|am|are|is|do|does|did) <i> (?:be )?(?:in breach|breaking|break|breach|infringing|infringe
    |violating|violate|contravening|contravene|falling foul|fall foul)(?: of)?(?: any| an?| some| the)?
    (?:\srules?| regs?| clauses?| regulations?| orders?| code)?(?: if (?:i|we) (?:wear|wore)| by wearing
    |\sin\swearing| wearing| to wear| with)(?= ) => is it against the rules to wear
^(?:would|will|am|are|is|do|does|did) <i> (?:be )?(?:in breach|breaking|break|breach|infringing|infringe
    |violating)(?: of)?(?: any| an?| some| the)?(?: rules?| regs?| clauses?| regulations?| orders?)?
    (?:\swithout| with no| if i leave off| not wearing| by not wearing)(?= )
     => is it against the rules to go without
# trouble catch told pulled shouted caught
^(?:am|are|would|will) <i> (?:be |get )?in(?:to)? trouble (?:without|with no|for not wearing
    |if\si'm\snot\swearing)(?= ) => is it against the rules to go without
^if <i> (?:wear|wore|have on) (.+?), (?:am|are|would|will|do|does) <i> (?:be |get )?(?:in(?:to)? trouble
    |in\sbreach|break(?:ing)? (?:a|the|any) rules?|wrong|told off|pulled up|done)\W*$
     => is it against the rules to wear \1?
^if <i> (?:don't|do not|didn't|did not) (?:wear|have on) (.+?), (?:am|are|would|will|do|does) <i> (?:be\s
    |get\s)?(?:in(?:to)? trouble|in breach|break(?:ing)? (?:a|the|any) rules?|wrong|told off|pulled up
    |done)\W*$ => is it against the rules to go without \1?
\bcatch it (?=for|if) => get in trouble\s
,? (?:and )?(?:not|without) (?:get|getting|be|being|land|landing)(?: myself)? (?:in(?:to)? trouble|told off
    |pulled up|a telling[- ]off|shouted at|caught)(?: for it)?\W*$ => ?
# problem issue issues worry trouble snag hitch catch bother
^(?:is there |are there |would there be )?(?:any|a) (?:problem|issue|trouble|difficulty|worry|snag|hitch
    |catch|bother)s?\s(?:if <i>\s
    (?:wear|wore)|wearing|with <wearing>|with me <wearing>|with my <wearing>)(?= )
     => is it against the rules to wear
^(?:is there |are there |would there be )?(?:any|a) (?:problem|issue|trouble|difficulty|worry|snag|hitch
    |catch|bother)s?\s(?:if <i>\s
    (?:leave off|left off|don't wear|do not wear|go without|went without)|not wearing|going without
    |with\sgoing without|leaving off)(?= ) => is it against the rules to go without
^(?:is there |are there |would there be )?(?:any|an?) (?:problem|issue|trouble|difficulty|worry|worries
    |issues|snag|hitch|catch|bother)s? with(?: <wearing>)?(?= ) => is it against the rules to wear
^(?:would|will|could) (.+?) be (?:a |an )?(?:problem|issue|trouble|difficulty|worry)\b => is \1 allowed
# order
^(?:would|will|might|could) (.+?) be (?:quite |all )?in order\b(?! of| to) => is \1 allowed
# stop prevent
^(?:would|will|do|does|could|can) <books> (?:stop|prevent|keep) (<me>) (?:from )?(?=\w+ing\b)
     => is it allowed for \1
# idea thing cricket goer business
^(is|are|was|were|would) (.+?) (?:be )?(?:still )?(?:really )?(?:a (?:good|bad|wise|sensible) (?:idea|choice
    |plan|thing)|the (?:done )?thing|the ticket|cricket|a goer|a runner|good form|bad form|kosher|wise
    |sensible|advisable)(?!\w) => \1 \2 allowed
^(?:isn't|aren't) (?!\w+ing )(.+?) (?:a (?:good|bad) idea|the done thing)(?!\w) => may I wear \1
# good bad wise sensible
^(?:isn't|is|wasn't|was) (iron|press|bleach|starch|wring|boil|wash|lacquer|polish|tar|brush)ing (.+?) (?:a\s
    (?:good|bad|wise|sensible) (?:idea|thing|plan)|wise|sensible)\W*$ => may I \1 \2?
# suitable appropriate tolerated admissible sanctioned approved accepted approved-of countenanced
^(is|are|was|were|would|will) (.+?) (?:be )?(?:still )?(?:really )?(?:considered |deemed |thought )?
    (?:suitable|appropriate|tolerated|admissible|sanctioned|approved(?: of| wear)?|accepted|countenanced
    |endorsed|allowable|authorised wear|licit|legitimate|valid)(?= (?:in|with|for|on|at|as|when|if|wear|under
    |over|while|aboard)\b|\W*$) => \1 \2 allowed
# room
^(?:is|was) there (?:any )?room for (.+?)(?= (?:in|with|on|at)\b) => is \1 allowed
# show turn wrap
\b(can|may|could|must|should|do|does) (<subject>) (?:show up|turn up|wrap (?:myself |himself |herself )?up
    |bundle up|kit up|rig up) (?:in|with|wearing) (?=(?:a|an|the|my|our|his|her)\b) => \1 \2 wear\s
# part form place
^(?:can|may|could|does|do|should|must) (.+?) (?:form|be) (?:a )?part of (?=\w) => may \1 be worn in\s
^(?:does|do|has|have) (.+?) (?:have )?(?:a|any) place (?=(?:in|with)\b) => is \1 allowed\s
# legally legitimately lawfully possibly absolutely definitely really properly conceivably
\b(can|may|could|must|might|do|does) (<i>) (?:legally|legitimately|lawfully|possibly|absolutely|definitely
    |conceivably|properly|reasonably|safely|decently|happily|rightfully)\b => \1 \2
# dare
^dare (<i>) => may \1
# please grateful glad
^(?:i|we)(?:'d| should| would)? be (?:most |very )?(?:grateful|glad|pleased|obliged|thankful)(?: to (?:know
    |hear|be told)| if you could (?:tell me|say|confirm))?,? (?:if|whether) => ,\s
# please
^please (?:could|can|would) (?:you|someone) => could you
# absolutely hook obligation compelled essential imperative rigueur negotiable unavoidable
^(am|are|is) (<subject>) (?:on the hook for|stuck with|lumbered with|saddled with) => must \2 wear
\b(?:under|is there) (?:an?|any) (?:obligation|compulsion|duty|requirement) (?:on <me> |for <me> )?to\b
     => required to
^(?:am|are|is) (<i>) (?:compelled|constrained|obligated|honour[- ]bound|duty[- ]bound) to\b => must \1
^(is|are|was|were) (.+?) (?:absolutely |strictly |really )?(?:essential|imperative|de rigueur
    |non[-\s]negotiable|unavoidable|indispensable|vital|a necessity|an? absolute must|(?:a )?(?:standard
    |regular|normal) issue|de[- ]rigueur|a fixture)\b => \1 \2 compulsory
^is it (?:absolutely |strictly |really )?(?:essential|imperative|vital|incumbent on <me>|indispensable
    |binding) to\b => is it compulsory to
# choice please left down discretion matter liberty
^(?:do|does|have|has) (<i>) (?:have |got )?(?:a|any|no) (?:choice|say|option|freedom|discretion)\s(?:about
    |over|in|on|as to|with|regarding)(?: the)?(?: <wearing>)?(?= ) => must \1 wear
^(?:may|can|could) (<i>) (?:please (?:my|our|him|her|your|one|them)(?:self|selves)|take or leave
    |pick\sand\schoose)(?: about| over| as to| on)?(?: <wearing>)?(?= ) => must \1 wear
^is (?:it|this) (?:left to|down to|up to|for|at) <me> (?:whether|if)(?: or not)? (?:to|<i>)
     => is it optional to\s
^is (?:it|this) (?:my|our|his|her|your|one's|anyone's) (?:own )?(?:choice|decision|call|affair|business
    |discretion)\s(?:whether|if)(?: or not)? (?:to|<i>) => is it optional to\s
^is (?:it|this) left to <me> (?:whether|if) (?:to|<i>) => is it optional to\s
^(is|are) (.+?) (?:(?:left )?to (?:my|our|one's|your) (?:own )?(?:choice|discretion|taste)|a matter of (?:
    (?:personal|free) )?(?:choice|taste|preference)|(?:left )?(?:up|down) to <me>)\b => \1 \2 optional
# most max maximum limit
^(?:the )?(?:most|max|maximum) (?!(?:length|width|height|size|number|distance|diameter)\b)([\w' -]+?) (<i>)\s
    (?:can|may|could) (wear|have|carry|own)((?: on)?(?: at (?:once|a time|one time|the same time)
    |\stogether)?)\W*$ => how many \1 may \2 \3\4?
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
^what(?:'s| is) the (longest|widest|biggest|largest|highest|tallest|shortest|smallest|narrowest) (.+?) (<i>)\s
    (?:can|may|could|am allowed to) (?:have|wear|carry)\W*$ => what is the \1 \2 can be?
^(how many .+?) (?:at a time|at one time|at one go)\W*$ => \1 at once?
# ought
^((?:how|what) [\w ]+?) ought (.+?) to be\b => \1 should \2 be
# measure
^what (?:do|does) (.+?) measure\W*$ => what size is \1?
# colour colours color
^what(?:'s| is) the (?:right|proper|correct|prescribed|official) (colou?rs?) (?:for|of) => what is the \1 of\s
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
# ought
^ought (.+?) to (?=(?:be worn|wear|have|be)\b) => should \1
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
# come
\b(can|may|could) (<subject>) (?:come|come in|come along|show up|turn up|report|go ashore|leave the house)\s
    (?:without|with no) => \1 \2 go without\s
# stay remain
^(can|may|could|must|should) ((?:the|my|our|his|her) [\w' -]+?) (?:stay|remain|be left|be) (?:at home|off
    |behind|in\s(?:my|the|his|her) (?:locker|bag|drawer))\b => \1 I go without \2
# free liberty allowed permitted
\b(?:free|at liberty|allowed|permitted|entitled|welcome) not to (?:wear|have on|put on)\b
     => allowed to go without
# off lets excuses excuse
^(?:do|does|will|would) <books> (?:let|excuse|release|exempt|spare) (<me>) (?:off|from)?\s?(?:<wearing> )?(?=
    (?:the|my|our|an?)\b) => may \1 go without\s
# bothered faff fuss
^(?:i|we) (?:really )?(?:can't|cannot|couldn't) (?:really )?be (?:bothered|fussed|fagged|faffed) (?:with
    |to\swear|wearing)\s(.+?)[.;,:-]+ (?:<so>|(?:may|can|could) <i>(?: do (?:that|so|without)(?: it)?)?
    |any\sobjections?)\W*$ => may I go without \1?
^(?:i|we)(?:'d| would)? (?:much |far )?(?:rather|sooner|prefer) (?:go without|to go without|leave off|skip)\s
    (.+?)[.;,:-]+ (?:<so>|(?:may|can|could) <i>(?: do (?:that|so|without)(?: it)?)?|any objections?)\W*$
     => may I go without \1?
# bare bareheaded barehanded barefoot barefooted
(?<!or can i )(?<!or may i )(?<!or do i )\b(?:go|be|work|walk|come|appear|stay|turn out|stand)(?: about
    |\saround| out)? bare[ -]?headed\b => go without headgear
(?<!or can i )(?<!or may i )(?<!or do i )\b(?:go|be|work|walk|come|appear|stay|turn out|stand)(?: about
    |\saround| out)? bare[ -]?handed\b => go without gloves
(?<!or can i )(?<!or may i )(?<!or do i )\b(?:go|be|work|walk|come|appear|stay|turn out|stand)(?: about
    |\saround| out)? bare[ -]?foot(?:ed)?\b => go without footwear
^bare[ -]?headed\b => without headgear
^bare[ -]?handed\b => without gloves
# hatless capless gloveless beltless sockless tieless shoeless coatless jacketless shirtless helmetless
     scarfless bootless bagless vestless maskless
\b(?:go|be|work|walk|come|appear|stay|turn out|stand)(?: about| around| out)? ([a-z]{3,}?)less\b
     => go without a \1
^([a-z]{3,}?)less (?=(?:in|on|at|with)\b) => without a \1\s
# order
^(?:what(?:'s| is) )?(?:the )?(?:right |proper |correct )?order (?:of|for) ([\w' -]+?)\W*$
     => in what order are \1 worn?
# goes comes sits ranks worn
^which ([\w' -]+?) (?:goes|comes|sits|is worn|ranks|belongs) (?:first|on top|at the top|uppermost|highest
    |topmost|ahead|above the others?|innermost)\W*$ => in what order are \1 worn?
# decides calls settles orders declares announces determines proclaims
^whom? (?:decides|calls|settles|orders|declares|announces|determines|proclaims|rules)(?: on| over)? (?:the\s
    |a\s|an )?(?=[\w' -]*\b(?:waivers?|permission|exemptions?|leave|order|dress|mourning)\W*$) => who grants\s
^whose (?:say-so|say so|word|decision|nod|signature|ok|blessing)(?: do (?:i|we|you) need)? (?:for|to get
    |to\shave)\s => whose permission do I need for\s
# surely nobody
^(.*?),? ?\b(?:surely )?(?:nobody|no one|no-one|none of us) (?:really )?(?:has|have|needs|need) to (wear|carry
    |own|have) (.+?)(?:,? (?:do|does|has|have) <i>)?\W*$ => \1 must anyone \2 \3?
# taking take bringing bring
\b(?:take|taking|bring|bringing) (an? [\w' -]+?) (?:up|over|across)(?= (?:when|if|while)\b) => carry \1
# nobody
^(?:surely )?(?:nobody|no one|no-one|none of us) (?:really )?(?:has|have|needs|need) to wear (.+?)(?:,? (?:do
    |does|has|have)\s<i>)?\W*$ => must anyone wear \1?
# describe talk walk run take give rundown head top parts components constitutes composed list
^(?:please |can you |could you )*(?:describe|outline|detail|explain)(?: to me| for me)? ((?:[\w'-]+ )*(?:rig
    |dress|order|kit|uniform|gear|wear|clothes))(?: to me|\sfor\sme)?\W*$ => what is worn in \1?
^(?:please |can you |could you )*(?:talk|walk|run|take|lead) (?:me|us) through(?: the list for)? (
    (?:[\w'-]+\s)*(?:rig|dress|order|kit|uniform|gear|wear|clothes))\W*$ => what is worn in \1?
^(?:please |can you |could you )*run through ((?:[\w'-]+ )*(?:rig|dress|order|kit|uniform|gear|wear|clothes))
    (?: for me| with me)?\W*$ => what is worn in \1?
^(?:please |can you |could you )*(?:give|tell|show|read) (?:me |us )?(?:the |a )?(?:list|rundown|run-down
    |lowdown|breakdown|lot|works|full story|full list) (?:for|of|on|about)(?: what(?:'s| is) (?:worn )?in)?\s
    (.+?)\W*$ => what is worn in \1?
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
# told
^(?:i've|i have|we've|we have|i was|i'm|i am|we're)(?: been)? (?:just )?told ((?:[\w'-]+ )*(?:rig|dress|order
    |kit|uniform|gear|wear|clothes))[.;,:-]+ what(?:'s| is)\s(?:that|it)\W*$ => what is worn in \1?
# ban bans forbid forbids
^what (?:all )?(?:do|does) <books> (?:ban|forbid|prohibit|bar|rule out|disallow|exclude) (in|for|with|on)\b
     => what may not be worn \1
# kit contents list
^([\w' -]+? (?:rig|dress|order)),? (?:kit|contents|list|kit list|in full|in detail)\W*$ => what is worn in \1?
# hoping planning intending meaning wanting tempted
^(?:i|we)(?: was| were| am| are|'m|'re|'d been| had been) (?:just |rather )?(?:hoping|planning|intending
    |meaning|wanting|tempted) to (?=\w+ ) => I would like to\s
# just
\bjust (?=(?:anyone|anybody|everyone|everybody)\b) =>
# y'all ya yous youse ye
\b(?:y'all|ya|yous|youse|ye)\b => you
# throw chuck stick pop sling bung pull
\b(can|may|could|must|should|do|does|shall) (<subject>) (?:(?:throw|chuck|stick|pop|sling|bung|pull|slip|whack
    |shove)\son) (?=(?:the|my|our|a|an|his|her|some)\b) => \1 \2 wear\s
# yea legit
(?:\s*[,;.:?!]|\s+-)\s*(?:yea or nay|legit|lawful|kosher|yay or nay|aye or no|aye|thumbs up)\s*\??\s*$ => ?
"""
SAYINGS += ASKINGS.rstrip() + PLAINLY + GOINGS.lstrip("\n").rstrip() + WHERES.rstrip() + ON_AND_OFF.rstrip()
SAYINGS += HANDLINGS + AT_HOME + BEGINNINGS + DIFFERENCES
