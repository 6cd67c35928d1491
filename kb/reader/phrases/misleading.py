"""Ways of asking that would be read otherwise than they are meant; in the form of `sayings.py`."""

from __future__ import annotations

MISLEADING = r"""
# free liberty allowed permitted entitled welcome
\b(?:free|at liberty|allowed|permitted|entitled|welcome) not to (?:wear|have on|put on)\b
     => allowed to go without
# bollocked told shouted moaned yelled torn carpeted chewed pulled written nicked done sacked sent
     trouble bother soup bollocking rollicking telling ticking roasting dressing earful neck
^(?!(?:can|could|may|might|must|should|do|does|is|are|am|will|would|what|which|where|how|who|when
    |why)\b)(.*?\w)(?:\s*[,;:.?!–-]+)?(?<! or)\s(?:(?:will|would|can|could|might|am|are) <i> |<i>(?:'m| am
    |'re| are|'ll| will) )?(?:going to )?(?:be|get) (?:in |into )?(?:bollocked|told off|shouted at
    |moaned at|yelled at|torn off a strip|carpeted|chewed out|pulled up|written up|nicked|done|sacked
    |sent home|into? (?:trouble|bother|hot water|the (?:soup|poo))|a (?:bollocking|rollicking|telling off
    |ticking off|roasting|dressing down)|an earful|it in the neck)(?: for (?:it|that
    |them))?\s*\?*$ => \1, is that forbidden?
^(?:is|are|will|would|does|do) (.+?) (?:going to )?(?:get|land|put) <me> (?:in\s
    |into )?(?:bollocked|told off|shouted at|moaned at|yelled at|torn off a strip|carpeted|chewed out
    |pulled up|written up
    |nicked|done|sacked|sent home|into? (?:trouble|bother|hot water|the (?:soup|poo))|a (?:bollocking
    |rollicking
    |telling off|ticking off|roasting|dressing down)|an earful|it in the neck)(?: for it)?\W*$
     => is \1 forbidden?
# daft silly stupid dumb mad barmy bonkers crazy foolish idiotic nuts bad terrible dreadful rubbish
(?:\s*[,;:.?!]+|\s[–-])?\s(?:(?:is|was) (?:that|it|this) )?(?:an? )?(?:<very> )*(?:daft|silly|stupid|dumb
    |mad|barmy|bonkers|crazy|foolish|idiotic|nuts|bad|terrible|dreadful|rubbish) (?:idea|thing to\sdo|move
    |plan|shout|choice)\s*\?+\s*$ => , is that forbidden?
# get gets
^(do|does) (.+?) (?:ever |still |also )?get to (?=(?:wear|carry|have|own|keep|use|put|grow
    |roll)\b) => may \2\s
# see
\bwhere (?:the |other |any )?([\w'-]+) (?:can|could|might|may|will)(?: all)? see (?:me|us|him|her|them
    |it)\b => in sight of \1
# measure
^what(?:'s| is| does| do) (.+?) measure\W*$ => how big is \1?
# fag ciggie cig rollie smoke vape
\b(?:(?:go|going|nip|pop|step|come|slip)(?: out| outside| off)*(?: for)?|have|having|spark up
    |light up) an? (?:quick
    \s|cheeky |crafty |little )*(?:fag|ciggie|ciggy|cig|cigarette|rollie|smoke)(?: break)?\b => smoke
# pint half beer bevvy wine lager tipple cider
\b(?:(?:go|going|nip|pop|stop)(?: out| off| in)*(?: for)?|have|having|sink|neck|grab|get
    |down) an? (?:quick |cheeky |swift
    \s|cold |sneaky |little |glass of |small )*(?:pint|half|beer|bevvy|wine|lager|tipple
    |cider)s?\b => drink alcohol
# off
^(.*?\w)(?:\s*[,;.?]+|\s[–-])?\s(?:(?:because|since|as|if|even if|but|and|when|though|although) )?(mine|it
    |they|this
    |that) (?:won't|will not|can't|cannot|can not|doesn't|don't|refuses? to) (?:come|get|be (?:taken|got
    |prised
    |pulled)) off(?: (?:at all|any ?more|now|my finger|over the knuckle))?\W*$ => \1? \2 stays stuck.
^(<the> [\w' -]+?) (?:won't|will not|can't|cannot|can not|doesn't|don't|refuses? to) (?:come|get
    |be (?:taken|got
    |prised|pulled)) off[^,.;?!]*[,;.]+ (?:so |but )?(can|may|could|must|do|does|should|is|are) (.*?)\b(?:it
    |them)\b(.*?)\W*$ => \2 \3\1\4? That stays stuck.
# floor
\b(?:off|from|above|to) the floor\b(?=\W*$| (?:must|should|is|does)\b) => from the ground
# rock rocking
(?<!the )(?<!a )(?<!on )\brock(?:ing)? (?=(?:an?|my|some) ) => wear\s
# watch shift duty round turn
\b(can|may|could|must|should) (<i>) (?:do|stand|work|finish|see out) (?:my|the|our|this|his|her) watch in
    \s((?:<the> )?(?!order\b|full\b|peace\b)[\w' -]+?)(?=\W*$|[.,;]) => \1 \2 wear \3 on watch
# who
^((?:[^?]*[.;:,–-] )?)(?:and |but |so |honestly,? )*who(?:'s going to|'s gonna|'ll|'d| will| would
    | is going to)(?: ever| really| even)* (?:mind|care|object|notice|complain|bother|worry
    |fuss)(?: about it)? if <i> (?!(?:not|never|do|did|\w+n't|kept|wore|had|carried) )([^?.;]+?)(?:\W*$
    |\?(?= )) => \1may I \2?
^((?:[^?]*[.;:,–-] )?)(?:and |but |so |honestly,? )*who(?:'s going to|'s gonna|'ll|'d| will| would
    | is going to)(?: ever| really| even)* (?:mind|care|object|notice|complain|bother|worry
    |fuss)(?: about it)? if <i> (?:don't|didn't|do not|did not) (?:wear|have|bother with
    |put on)\s([^?.;]+?)(?:\W*$|\?(?= )) => \1may I go without \2?
# problem issue worry trouble deal bother
(^|[.;:,–-] )(?:surely |but |so )*(?!what\b|which\b|who\b|how\b|where\b|when\b|there\b|it\b|that\b
    |this\b)([^.;?!,]+?) (?:isn't|aren't|is not|are not|won't be|wouldn't be|can't be|shouldn't be)
     (?:<very> )*(?:going to be )?(?:a (?:problem|worry|bother|big deal)|an issue|any (?:trouble
    |bother))(?:,? (?:is|are|will|would) (?:it|they|that))?(?=\W*$|,? (?:in|on|at|with|when|while|whilst
    |under|during|for|if)\b) => \1may I have \2
# s
\b(?!(?:it|that|what|there|he|she|one|who|here)'s)([a-z]{3,})'s
    \s(?=(?:about |only |nearly |over |under |at least |at most )?\d+(?:[.,]\d+)? ?(?:mm|cm
    |metres?|meters?|inch(?:es)?|knots?|°c?|degrees?)(?: (?:long|wide|across|high|deep|thick|now|already))?
    (?:\s*[.,;?!:]|\s*$|\s(?:and|but|so)\b)) => \1 is\s
# borrow
^((?:[^?]*[.;,] )?)(?:i(?:'ve| have)? |we(?:'ve| have)? )?(?:just )?(?:lost|mislaid|forgot(?:ten)?|left|broke
    |broken)\s<own> ((?:[\w-]+ ){0,2}?[\w-]+)(?: (?:yesterday|today|last \w+|at home|this \w+
    |on the \w+))?[.;,]+ (?:so )?(can|may|could) (<i>) borrow (?:one|another(?: one)?|a spare(?: one)?)\b
     => \1\3 \4 borrow a \2
# lend lent loan borrow
^((?:[^?]*[.;,] )?)(?:(?:my|our|the|a|one of (?:my|our|the))(?: [\w-]+){1,3}?|he|she|they|some(?:one|body))
    (?:'s|'ve| has| have)? (?:just )?(?:forgotten|forgot|lost|left|mislaid|broken|broke|torn|ripped|ruined
    |needs?|wants?|lacks|(?:hasn't|haven't) got|(?:got )?no|doesn't have|don't have)
    \s(?:<own> |an? |the |any )?((?:[\w-]+ ){0,2}?[\w-]+)(?: (?:yesterday|today|at home|this \w+
    |on the \w+|in the \w+))?[.;,]+ (?:so )?(can|may|could) (<i>)
    \s(?:lend|loan) (?:him|her|them) (?:mine|ours|my (?:spare|other|old|second)(?: one| pair)?|one of mine)\b
     => \1\3 \4 lend the \2
# phone phones mobile mobiles telephone smartphone bag bags rucksack backpack handbag lighter knife
     camera umbrella
\b(?:take|bring) (<the> (?:[\w-]+ )?(?:phones?|mobiles?(?: phone)?|telephone|smartphone|bags?|rucksack
    |backpack|handbag|lighter|knife|camera|umbrella)) in(?:side)?(?= with (?:me|us)|\W*$|[.,;?]) => carry \1
# covered
^(?:is|are|must|should|do|does|has|have) (.+?) (?:(?:have|need) )?(?:got )?(?:to )?be covered(?: up| over)?
    \s(?:with|by) (<the> (?:[\w'-]+ )?(?:net|snood|hood|cap|hat))((?: (?:in|on|at|while|when) [^.;?!]+)?)\W*$
     => must I wear \2 with \1\3?
# new fresh replacement replacements
^(?:and |so )?(?:when|how (?:often|soon)) (?:do|does|can|will|would|may) <subject> (?:get|have|draw|claim
    |expect|be (?:given|issued(?: with)?)|receive|ask for) (?:(?:an?|some|the|<own>) )?(?:new|fresh
    |replacement)(?: pairs? of)? (?!ones?\b)([\w' -]+?)\W*$ => how often is the \1 replaced?
# third second fourth fifth another more extra
^<have_on>one ([\w' -]+?)<and_wants> (?:an? second|another|one more|an extra)<as_well> => may I wear two \1?
^<have_on>two ([\w' -]+?)<and_wants> (?:an? third|another|one more|an extra)<as_well> => may I wear three \1?
^<have_on>three ([\w' -]+?)<and_wants> (?:an? fourth|another|one more|an extra)<as_well>
     => may I wear four \1?
^<have_on>four ([\w' -]+?)<and_wants> (?:an? fifth|another|one more|an extra)<as_well> => may I wear five \1?
# old older earlier former first new newer
^(<own> [\w' -]+?) (?:dates(?: back)?|is dated|comes|came) (?:from|to|in)
    \s((?:[a-z]+ )?(?:19|20)\d\d)(?:,|\.|;| and| so)+ (?=(?:is|may|can|could|am|do|should|must)\b.*\b(?:old
    |older|earlier|former|first|new|newer) (?:pattern|one|kind|type|style|version|sort)\b)
     => I got \1 in \2. \s
# choice
^(.*?) instead of (.*?)<sep>(?:(?:is|would) (?:that|it|this)(?: be)? )?<own> (?:own )?choice(?: to make)?\W*$
     => may I wear \1 instead of \2?
# rolled
\b(?:have|keep|get|wear) (<the> sleeves of <the> [\w' -]+?|<the> [\w' -]+? sleeves) rolled(?: up)?\b
     => roll \1
\b(can|may|could|must|should) (<the> sleeves of <the> [\w' -]+?) be rolled up\b => \1 \2 be rolled
# take taking
\b(?:take|taking) up (?=<the> (?:[\w'-]+ )?(?:sleeves?|hems?|trousers|skirt|legs?|cuffs?)\b) => shorten\s
\b(?:take|taking) (<the> (?:[\w'-]+ )?(?:sleeves?|hems?|trousers|skirt|legs?|cuffs?)) up\b(?! (?:to|the
    |in)\b) => shorten \1
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
# choose pick decide choice
^(.*?)\b(?:can|may|could|do) (<i>) (?:get to |have to )?(?:choose|pick|decide|(?:have|get) (?:a|the|any)
    \s(?:free )?choice) between ((?:<the> )?[\w' -]+?) and ((?:<the> )?[\w' -]+?)\W*$
     => \1may \2 wear either \3 or \4?
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
# fine nice lovely
\b(?:when|while|whenever|whilst) (?:it|the (?:weather|day|sky))(?:['’]s| is| was|['’]s been)
    \s(?:nice and |quite |really |all )?(?:fine|nice|lovely)(?: and (?:dry|sunny|clear|warm))?
    (?: (?:out(?:side)?|today|weather))?(?![\w'-]| (?:to|that|for|if|by|with|as)\b) => in fine weather
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
^<i>(?:['’]ve| have| has)?(?: got| own)? no ([\w' -]+?)[.;,]+ (?:do|does|must|should)\s(<i>)
     (?:need(?: to have)?|have to have|have to wear|wear|have) (?:one|it|any|them)(?: there| then| here
    |\sfor that)?([^.;?!]*)\W*$ => must \2 wear a \1\3?
# on
^(?!(?:is|are|can|may|must|do|does|what|with|i|i'm|put|and|if|when)\b)(?:the |my |a )?([\w' -]{4,30}?)
    \son,? (?:and|but) (?=(?:it|the|i|we)\b[^.?!]*[.;,]) => I have the \1 on and\s
# keep have wear leave
^(?:but |and |so |well |ok |okay )*(?:i|we)(?:'ve got|'ve| have got| have) (<the> [\w' -]+?)
    (?:,? (?:though|now|too|as it happens))?(?:[,.;:]+| -) (?:so |but |and )?(can|may|could|must|should)
    \s(i|we) (?:still |just )?(?:keep|have|wear|leave) (?:it|them)(?: on)?
    (?=\W*$| (?:with|on|in|at|while|when|for|if)\b) => \2 \3 wear \1
# permission approval authorisation authorization authority consent clearance say-so go-ahead blessing
     leave
^<seek> (?:to|before (?:i|we)) (?=\w) => is it forbidden for \1 to\s
^<seek> (?:before wearing|before putting on|for) (?:an? |the |my )?(?=\w) => is it forbidden for \1 to wear\s
^(?:is|isn't) (?:there )?<consent> (?:<very> )*(?:needed|required|necessary) for (?:an? |the |my )?(?=\w) =>
    \sis it forbidden to wear\s
# himself herself myself themselves ourselves
(?<! for)(?<! by)(?<! to) (?:(?:him|her|my)self|(?:them|our)selves)(?=[.;,?]|$) =>
# wouldn't won't
^(?:wouldn't|won't) (it|that|this|<i>) be (?=\w) => would \1 be\s
# agree agreed settled understood established certain clear official beyond common given known gospel
^(?:is it|are we|do we|can we) (?:all )?(?:agree(?:d)?|settled|understood|established|certain|clear
    |official|beyond (?:question|doubt|dispute)|common knowledge|a given|known|gospel)(?: on it| then)?,?
    \sthat\s =>
# bad wrong serious illegal naughty
^how (?:bad|wrong|wicked|naughty|serious|illegal) (?:is|would|was) (?:it|that) (?:be )?(if|to|when)\b
     => is it allowed \1
# land get put
^(?:would|will|could|can|might|does|do) (?:it|that) (?:land|get|put) <me> (?:in|into) (?:hot water|trouble
    |the soup|bother|a mess) (if|to|when)\b => is it forbidden \1
# up down left
^(?:it's|it is|is it) <free>,? (?:whether|if|that)(?: or not)? (?:to|<i>) (?=\w) => must I\s
# or
^((?:is|are|am|do|does|must|may|can|should|have|has|could|would)\b.*?),? or (?:is|are) (?:that|it|this
    |they)(?: just| only| merely| simply)? (?:an? )?(?:no|yes|nicety|myth|rumou?r|suggestion|formality
    |tradition|habit|custom|joke|overkill|daft|silly|too much|<bad>|<ill>|<free>)\s*\?*$ => \1?
# all
\b(is|was|are|would) (that|it|this|they|those)( be)? (?:<very> )*all right(?=\W*$) => \1 \2\3 OK
# right wrong
\b(is|was|am|are|were) (i|he|she|we|they) in the (right|wrong)(?= about that\b|\W*$) => \1 \2 \3
# two pair
\bthe (?:two|pair)(?: of (?:them|these|those))?(?= (?:at once|together|at the same time|at one time|on)\b
    |\s*\?) => both
# true right wrong correct fact false so believe trust truth listen heed follow mistaken lying nonsense
     rubbish rot tosh
^(?:so |but |well )?(?:(?:<the>|some|all <the>|one of <the>) (?:(?!(?:<volume>)\b)[\w'-]+ ){1,5}?|(?:he
    |she|they|people|everyone|everybody|somebody|someone|word) )<says>(?: that|,)? (?!(?:he|she|they|his
    |her|their|so|it|that|yes|no)\b)([^.;?!]+)[.;,]+ (?:so |and )?(?:<echo>|(?:is (?:that
    |it)\s)?(?:<whether>|true or (?:false|not)|right or wrong|yes or no))\s*[?.!]*\s*$ => \1?
# word line view opinion take belief theory position claim story argument rumour gossip talk told hear
     heard gather understand
^(?:so |but )?(?:(?:the )?(?:word|rumour|gossip|talk)(?: round here| here| on board| in [\w ]{3,20}?)?
    \s(?:is|has it|goes)|<the> [\w' -]{2,25}?'s (?:line|view|opinion|take|belief|theory|position|claim
    |story|argument) is|(?:i|we)(?:'ve|'m| have| was| were| am| are|'re)? (?:been\s)?(?:told|hear|heard(?:
    \sit said)?|gather|understand))(?: on good authority| by [\w' -]{2,25}?)?(?: that)?,? (?=(?:i|we|you
    |one|nobody|no|the|my|our|all|only|any|an?|[\w'-]+ (?:is|are|isn't|aren't|may|must|can|can't|has to
    |have to))\b)([^.;?!]+)[.;,]+ (?:so )?(?:<echo>|(?:is (?:that|it) )?(?:<whether>|true or (?:false|not)
    |right or wrong|yes or no))\s*[?.!]*\s*$ => \1?
# true fact right correct so accurate
^(?:so |and )?is it (?:(?:really|actually|indeed|in fact) true|(?:(?:really|actually|indeed|in fact)
    \s)?(?:correct|right|so|accurate|a fact)) that\s => is it true that\s
# yes no true false right wrong correct agreed fact untrue yep yeah nope incorrect aye
<sep>(?:(?:so|and|then|or|but|well|just|please|is (?:it|that|this)|would (?:it|that) be|an?|simple
    |straight|plain|honest|quick|answer me)[ ,]+)*<whether>(?:,? or (?:an? )?(?:<whether>|not)
    | ?/ ?<whether>)(?:[ ,]+(?:then|please|though|<hoping>))*\s*[?.!]*\s*$ => ?
^(.*\w.*?)(?<!\bor)(?:\s*[,;.?!]+\s*|\s+[-–—]+\s*)(?:(?:so|and|then|well|just|is (?:it|that
    |this))[ ,]+)*(?:yes|no|true|false|correct|agreed|yep|yeah|nope)(?:[ ,]+(?:then|please|though
    |<hoping>))*\s*\?+\s*$ => \1?
# true right correct case fact truth fair
^(?:is(?:n't| not)|was(?:n't| not)) (?:it|that) (?:just |simply |really )?(?:true|right|so|correct|the
    \scase|a fact|fair|the truth)(?: to (?:say|think|believe))?,? that\s =>
^(?:is|was) it not (?:just |simply |really )?(?:true|right|so|correct|the case|a fact|fair|the truth)(?:
    \sto (?:say|think|believe))?,? that\s =>
# fair right true correct accurate safe
^(?:it|that|this) (?:can't|cannot|can not|couldn't|surely can't) (?:<very> )*be (?:right|true|so|correct
    |the case)(?: that)? (?=\w) =>
# mistaken wrong dreaming imagining mad just only
^(?:is it (?:just|only) me|am i (?:mistaken|wrong|dreaming|imagining (?:it|things)|going mad)|correct me
    \sif i'm (?:wrong|mistaken)|if i'm not (?:wrong|mistaken)|unless i'm (?:wrong|mistaken|dreaming))(?:,?
    \s(?:or|but))?,? (?=\w) =>
,? (?:or )?(?:am i|have i) (?:just )?(?:mistaken|wrong|dreaming|imagining (?:it|things)|got (?:that|it)
    \swrong|going mad|missing something)\s*\?*$ => ?
# hope suppose take presume assume trust imagine gather expect guess bet surely presumably hopes think
     doubt daresay
<sep><hoping>\s*[?.!]*\s*$ => ?
# not hardly surely certainly definitely
([.;:,–-] )(?:surely )?(?:not|never) (?:<very> )*(allowed|permitted|ok|okay|fine|legal|in order|acceptable
    |right|all right|proper|compulsory|required|needed|necessary)\s*\?\s*$ => \1\2?
# nutshell short brief word plain terms briefly simply bottom story
^(?:<shortly>|long story short|the long and (?:the )?short of it|briefly|put simply|simply put|bottom line
    |to cut a long story short)\s*[:,;-]* (?=\w) =>
# book rules regs regulations rulebook code law
^(?:strictly )?(?:according to|going by|as per|by|under|per) <rulebook>(?! (?:of|in|from|as)\b),? (?=\w) =>
# regardless anyway nonetheless nevertheless same may event
,? (?:regardless|anyway|all the same|nonetheless|nevertheless|come what may|either way|in any
    \sevent)\s*\?\s*$ => ?
# inches inch mm cm millimetres millimeters centimetres centimeters feet metres meters metric imperial
     money
^(.*\b(?:how|what|which|largest|biggest|longest|widest|highest|size|height|width|length|diameter|distance
    |tall|wide|broad|across)\b.*?),? (?:in|as) <unit>(?: or <unit>)?(?: please| ok| if
    \s.{3,20})?\s*[?.!]*\s*$ => \1?
"""
