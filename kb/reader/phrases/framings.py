"""What a plain question is wrapped in: "isn't it true that ...", "..., yes or no?", "is it a crime to ...?".

A wrapping has a part before the question, one after it, a word of judgement that comes to one of four ("an
option", "out of line", "left to choice", "a must"), and somebody who makes or stops one ("nobody can make me
..."). Each is a class of words (`NAMES`), and a question may have any of each; what is inside stays as it was
written. The lines are those of `sayings.py`, and are looked at before all others.
"""

from __future__ import annotations

from kb.reader.words.forms import word_set

IDIOMATIC = word_set(
    "cards water hot bad fair arm luck soup table menu agenda charge line bounds mark book land leave"
    " approval authority authorisation authorization permission consent clearance inspection muster home"
)
"""Words of wrappings that a book may have as names: "on the cards" is of no card."""

NAMES = r"""
owing: (?:(?:still|really|actually|also|always|even) )*(?:need|require|have to (?:have|hold|get|own)
    |need to (?:have|hold|get)|have|hold)
credential: (?:the|an?|my|our|his|her|their|any)? ?(?:[\w'-]+ ){0,3}?(?:waiver|exemption|dispensation|note
    |certificate|qualification|appointment|licence|chit|permit|ticket)
before: (?:for|(?:in order )?to <wear>|(?:before|when|while|if) <wearing>|(?:before|if) <i> (?:can |may |want
    \sto )?<wear>)
own: (?:my|our|your|his|her|their|one's)
nobody: (?:nobody|no one|no-one|none of (?:us|them|you)|not a soul)
rulebook: (?:<the> )?(?:book|rules|regs|regulations|rulebook|rule book|dress code|letter of the (?:law
    |rules))
sep: (?:\s*[,;.:?!]+\s*|\s+[-–—]+\s*)
whether: (?:yes|no|yep|yeah|nope|true|false|untrue|right|wrong|correct|incorrect|agreed|fact|fiction|myth
    |aye|nay)
hoping: (?:i (?:do )?(?:hope|suppose|take it|presume|assume|trust|imagine|gather|expect|guess|bet)|surely
    |presumably|one hopes|i'd (?:hope|imagine|guess|have thought)|you'd (?:think|hope)|no doubt|i dare ?say)
shortly: in (?:a nutshell|short|brief|a word|one word|plain (?:english|words)|simple terms)
very: (?:really|actually|still|quite|strictly|absolutely|totally|completely|entirely|ever|even|now|then
    |always|considered|deemed|thought|regarded as|classed as|seen as|counted as|treated as|altogether
    |simply|such)
be: (?:is|are|was|were|be|been|am|isn't|aren't|wasn't|weren't|'s|'re|s)
next: (?=\s*[.,;:?!)]|\s*$|\s+(?:to|if|for|in|on|at|with|when|while|whilst|aboard|under|over|during
    |without|as|then|these|this|anyway|though|once|where|after|before|here|there|nowadays|today|by|just
    |because)\b|\s+-)
any: (?:any|a|some|the)
unit: (?:mm|cm|metres?|meters?|inch(?:es)?|feet|millim\w+|centim\w+|imperial|metric|old money)
choosing: (?:choice|taste|discretion|judge?ment|preference|liking|conscience)
whoever: (?:<me>|the wearer|the individual|each(?: of us| member)?|everyone|the member)
volume: book|order|rules?|notice|manual|guide|clauses?|regulations?|instructions?|rulebook
healer: doctor|doc|physician|medic|gp|surgeon|optician|nurse|consultant|dentist|safety
comrade: (?:old |new )?(?:cooks?|bosun|mates?|oppos?|lads?|lass(?:es)?|boys?|girls?|men|crew|chief|boss
    |skipper|cox|clerk|instructor|storem[ae]n|storekeeper|sergeant|foreman|others?|driver|neighbou?rs?|friends?|colleagues?
    |rumou?rs?|gossip|old hands?|usher|porter|steward|receptionist|secretary|trainer|coach)
somebody: (?:<i>|(?:<the> )?(?:(?!is\b|are\b|was\b|has\b|wears?\b|in\b)[\w'-]+ ){0,3}?[\w'-]+)
says: (?:(?:always|all|both|still|even|now|just|also|keeps?|kept|has|have|been) )*(?:says?|said|saying
    |reckons?|reckoned|thinks?|thought|claims?|claimed|swears?|swore|insists?|insisted|maintains?
    |maintained|believes?|argues?|argued|going on|tells? <me>|told (?:<me>|<the> [\w'-]+)|telling <me>
    |assures? <me>|assured <me>|promised(?: <me>)?|warned <me>|has it|have it|is (?:sure|certain|adamant
    |convinced|positive))(?: to <me>)?(?: blind| once| firmly| flatly| loudly| again| for sure| on good
    \sauthority)?
blamed: (?:at fault|faulted|blamed|criticised|punished|reported|marked down|shot|hanged|hauled up|charged
    |fined|in for it)
echo: (?:(?:but )?(?:i|we) (?:said|say|told (?:him|her|them)|think|thought) (?:no|not|otherwise|never|so
    |yes)[.;,]+ )?(?:(?:he|she|they|it|that)(?:'s| is|'re| are| was| were) (?:right|wrong|mistaken|lying
    |joking|having me on)(?:,? (?:surely|right|(?:isn't|wasn't) (?:he|she|it|that)|(?:aren't|weren't)
    \sthey))?|not so|(?:that's |it's |what )?(?:nonsense|rubbish|rot|tosh|twaddle|hogwash|poppycock)(?:,?
    \s(?:right|surely|isn't it))?|(?:is|are|was|were|am) (?:it|they|that|this|he|she|i|we)(?: (?:right(?:
    \sabout that)?|in the (?:right|wrong)|correct|wrong|having me on|pulling my leg|talking (?:rubbish
    |nonsense|rot)|joking|mistaken|telling the truth|to be believed|really|so))?|who(?:'s| is) right
    |(?:should|do|can|shall) (?:i|we) (?:believe|trust|listen to|heed|follow) (?:him|her|them|that|it)|can
    \sthat be(?: right| true| so)?|(?:has|have|did) (?:he|she|they|i) got? (?:that|it) (?:right|wrong)
    |(?:is there )?(?:any|some) truth in (?:it|that)|what do <books> say)
good: (?:(?:an?|any|one)(?: \w+)? (?:option|possibility|goer|runner|starter)|on the cards|fair game|the
    \s(?:done|correct|proper|right) thing|right and proper|a safe bet|in line with <rulebook>|in the clear)
fit: (?:admissible|allowable|excusable|tolerated|tolerable|countenanced|sanctioned|approved(?: of)?
    |endorsed|licit|suitable|appropriate|advisable|sensible|wise|feasible|an? (?:good|acceptable|proper)
    \s(?:idea|thing|choice|plan)|correct dress|regulation|an? (?:definite |clear |firm )?yes
    |(?:perfectly\s|quite |entirely )?normal|(?:standard|common|normal|usual) practice|fair enough
    |justified|accepted|legitimate|valid|cricket|kosher|allowable|within <rulebook>)
bad: (?:(?:an?|any)(?: kind of| sort of| form of| \w+)? (?:crime|sin|offen[cs]e|misdemeanou?r|felony|faux
    \spas|transgression|hanging matter|disciplinary matter)|(?:an?|any)(?: \w+)? (?:violation|infringement
    |contravention|breach)(?: of (?:<rulebook>|etiquette|discipline|protocol|good order))?|out of (?:line
    |order|the question|bounds)|beyond the pale|(?:bad|poor) form|asking for trouble|pushing (?:<own> luck
    |it)|chancing (?:<own> arm|it)|(?:bending|stretching|flouting) <rulebook>|overstepping the mark|taking
    \sliberties|a liberty|cheeky|(?:not|never) (?:<very> )*(?:done(?! by)|the (?:done\s)?thing|cricket)
    |off the (?:menu|table|cards|list|agenda)|ruled out|a step too far|off[- ]limits|frowned up?on|verboten|a
    \sno[- ]no|a no[- ]go)
ill: (?:an? (?:blunder|error|slip|gaffe)|unlawful|unacceptable|inadmissible|improper|impermissible|illicit
    |inappropriate|unsuitable|criminal|sinful|disallowed|taboo|(?:forbidden|prohibited|banned) outright|a
    \smistake|an? (?:definite\s|clear |firm |flat |straight )?no|naughty|cheating|bad manners|rude
    |disrespectful|a bad (?:idea|thing)|unwise|a breach)
free: (?:(?:left (?:up |down )?|up |down )to (?:<whoever>|(?:<own> )?(?:own |free |personal )*<choosing>)
    |left open|a matter of (?:(?:free|personal|individual|pure|one's own) )?<choosing>|at
    \s<own> (?:own\s)?discretion|(?:an?|<own>)(?: own| personal| free| individual)+ (?:choice|affair
    |lookout|business|call|decision)|<own> (?:choice|affair|lookout))
due: (?:an absolute must|non[- ]negotiable|de[- ]rigueur|part of the (?:uniform|dress)|a fixture
    |(?:standard|regular|normal) issue)
unless_if: (?:(?!\b(?:when|if|while|whilst|once|whenever)\b)[^.;:?!])
needful: (?:essential|imperative|vital|unavoidable|indispensable|expected of (?:me|us|you)|demanded|stipulated
    |insisted (?:up)?on|laid down|a necessity|a condition|incumbent)
consent: (?:(?:any|an?|the|some|my|special|prior|written|express|formal|(?:any(?:one|body)|some(?:one|body))'s
    |<the> [\w -]{2,30}?'s) )*(?:permission|approval|authori[sz]ation|authority|consent|clearance|say-so
    |go-ahead|blessing|leave)(?: (?:from|of) (?:any(?:one|body)|some(?:one|body)|<the> [\w -]{2,30}?))?(?:
    \s(?:first|beforehand|in advance))?
seek: (?:so |and |but )?(?:do|does|did|must|should|will|would) (<i>|(?:<the>|an?) [\w' -]{2,30}?) (?:<very> )*
    (?:(?:need|have) to )?(?:need|ask(?: for)?|get|seek|obtain|request|require|have) <consent>
"""

FRAMINGS = r"""
# straight honestly honest plainly frankly truthfully heart bush
^(?:(?:so |now |just )?(?:tell me|say|be) (?:straight|honestly|honest|plainly|frankly|truthfully)(?: now|
    \splease)?|give it to me straight|straight up|hand on heart|no beating about the bush)\s*[,:;.!-]+\s =>
# or
([:,;–-] )(?:an? )?(\w+) or no \2\s*\?+\s*$ => \1allowed?
# permission approval authorisation authorization authority consent clearance say-so go-ahead blessing leave
^<seek> (?:to|before (?:i|we)) (?=\w) => is it forbidden for \1 to\s
^<seek> before (grow|carry)ing (?=\w) => is it forbidden for \1 to \2\s
^<seek> (?:before wearing|before putting on|for) (?:an? |the |my )?(?=\w) => is it forbidden for \1 to wear\s
^(?:is|isn't) (?:there )?<consent> (?:<very> )*(?:needed|required|necessary) (?:to|before i|before we)
    \s(?=\w) => is it forbidden to\s
^(?:is|isn't) (?:there )?<consent> (?:<very> )*(?:needed|required|necessary) for (?:an? |the |my )?(?=\w) =>
    \sis it forbidden to wear\s
# forbid ban prohibit bar rule disallow
^(?:surely |so )?<books> (?:doesn't|does not|don't|do not|can't|cannot|won't) (?:<very> )*(?:ban|forbid
    |prohibit|bar|rule out|disallow) (?:<me> (?:from )?)?(?:<wearing> )?(.+?)(?:,? (?:does|do|can) (?:it
    |they))?\s*\?*$ => is there a rule against \1?
# chance hope prospect
^(?:surely )?(?:there(?:'s| is) |is there )?(?:no|any|little|some|a) (?:chance|hope|prospect) of
    \s(?:<me> |<own> )?(?=\w+ing\b) => is it allowed for me\s
# stopping preventing stops
^(?:is (?:there )?)?(?:anything|something) (?:stopping|preventing|to stop|to prevent|that stops) <me> from
    \s(?=\w+ing\b) => is it allowed for me\s
# refuse decline object choose
^what (?:if|happens if|happens when) <i> (?:<very> |just )*(?:refuse|decline|object|choose not) to (?=\w)
     => must I\s
# much
^(?:would|is|will) it (?:be )?too much to ask (?:for <me> )?(to|if)\b => is it allowed \1
# rank grade
\b(under|below|above|over|from) the (?:rank|grade) of (?=\w) => \1\s
# himself herself myself themselves ourselves
(?<! for)(?<! by)(?<! to) (?:(?:him|her|my)self|(?:them|our)selves)(?=[.;,?]|$) =>
# wouldn't won't
^(?:wouldn't|won't) (it|that|this|<i>) be (?=\w) => would \1 be\s
# agree agreed settled understood established certain clear official beyond common given known gospel
^(?:is it|are we|do we|can we) (?:all )?(?:agree(?:d)?|settled|understood|established|certain|clear
    |official|beyond (?:question|doubt|dispute)|common knowledge|a given|known|gospel)(?: on it| then)?,?
    \sthat\s =>
# sure certain convinced positive
^(?:i'm|i am|we're|we are) (?:fairly|pretty|quite|almost|reasonably|rather|absolutely) (?:sure|certain
    |convinced|positive)(?: that)? (?=[\w'-]+ ) =>
# bad wrong serious illegal naughty
^how (?:bad|wrong|wicked|naughty|serious|illegal) (?:is|would|was) (?:it|that) (?:be )?(if|to|when)\b
     => is it allowed \1
# land get put
^(?:would|will|could|can|might|does|do) (?:it|that) (?:land|get|put) <me> (?:in|into) (?:hot water|trouble
    |the soup|bother|a mess) (if|to|when)\b => is it forbidden \1
# fault faulted blamed criticised punished reported marked shot hanged hauled charged fined
^(?:could|can|would|will|might|may|am|are|is|do|does) (<i>) (?:be |get )?<blamed> (?:for|over|by)
    \s(?=\w+ing\b) => is it forbidden for \1\s
^(?:could|can|would|will|might|may|am|are|is|do|does) (<i>) (?:be |get )?<blamed> (?:if|when)\b => is it
    \sforbidden when
# count amount constitute
^(?:does|do|would|will) (?:it|that|this) (?:count as|amount to|constitute) (?:<bad>|<ill>) => is it
    \sforbidden
# up down left
^(?:it's|it is|is it) <free>,? (?:whether|if|that)(?: or not)? (?:to|<i>) (?=\w) => must I\s
# pass bother skip
,? or (?:can|may|could|do) <i> (?:just )?(?:pass|skip (?:it|that|them)|give (?:it|them) a miss|not
    \sbother)\W*$ => ?
# or
^((?:is|are|am|do|does|must|may|can|should|have|has|could|would)\b.*?),? or (?:is|are) (?:that|it|this
    |they)(?: just| only| merely| simply)? (?:an? )?(?:no|yes|nicety|myth|rumou?r|suggestion|formality
    |tradition|habit|custom|joke|overkill|daft|silly|too much|<bad>|<ill>|<free>)\s*\?*$ => \1?
([:,–-] )(?:an? )?(?:yes or (?:an? )?no|ok(?:ay)? or not|fine or not|allowed or (?:not|forbidden
    |banned))(?= (?:in|on|at|with|for|when|while|if|under)\b) => \1allowed
# tell
<sep>(?:please )?tell me (?:that's|that is|it's|this is|they're) (?:<fine>|forbidden|banned|not allowed
    |<bad>)[.!?]*\s*$ => ?
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
^(?:is|was|isn't|wasn't) it (?:true or (?:false|not)|right or wrong|(?:a )?fact or (?:a )?(?:fiction
    |myth)),? that\s => is it true that\s
^(?:so |and )?is it (?:(?:really|actually|indeed|in fact) true|(?:(?:really|actually|indeed|in fact)
    \s)?(?:correct|right|so|accurate|a fact)) that\s => is it true that\s
^true or false,? that\s =>
# breach offence fault problem wrong allowed right
^(.*?\b)((?:my|our|an?|the) [\w ]+?)(| (?:on|in|at) [\w ]+?) has no (.+?) on\. is (?:that|this|it) (?:(?:a
    |any) (?:breach|offence|fault|problem)|wrong|allowed|all right)\W*$ => \1must \2\3 wear \4?
# yes no true false right wrong correct agreed fact untrue yep yeah nope incorrect aye
<sep>(?:(?:so|and|then|or|but|well|just|please|is (?:it|that|this)|would (?:it|that) be|an?|simple
    |straight|plain|honest|quick|answer me)[ ,]+)*<whether>(?:,? or (?:an? )?(?:<whether>|not)
    | ?/ ?<whether>)(?:[ ,]+(?:then|please|though|<hoping>))*\s*[?.!]*\s*$ => ?
^(.*\w.*?)(?<!\bor)(?:\s*[,;.?!]+\s*|\s+[-–—]+\s*)(?:(?:so|and|then|well|just|is (?:it|that
    |this))[ ,]+)*(?:yes|no|true|false|correct|agreed|yep|yeah|nope)(?:[ ,]+(?:then|please|though
    |<hoping>))*\s*\?+\s*$ => \1?
^(?:(?:an?|just|quick|simple|straight|plain|honest) )*(?:yes or no|yes/no|yes-or-no|true or false|right or
    \swrong)(?: (?:question|answer|one))?(?: please| then)?\s*[:,;.!?-]+ =>
^(?:so |and )?who(?:'s| is) (?:right|wrong|in the right)(?: here| then| there)?\s*[:,;?-]+ (?=\w) =>
# true right correct case fact truth fair
^(?:is(?:n't| not)|was(?:n't| not)) (?:it|that) (?:just |simply |really )?(?:true|right|so|correct|the
    \scase|a fact|fair|the truth)(?: to (?:say|think|believe))?,? that\s =>
^(?:is|was) it not (?:just |simply |really )?(?:true|right|so|correct|the case|a fact|fair|the truth)(?:
    \sto (?:say|think|believe))?,? that\s =>
# fair right true correct accurate safe
^(?:is|was|would|isn't) it (?:be )?(?:fair|right|true|correct|accurate|safe) to (?:say|think|assume
    |believe|suppose)(?: that)?,? (?=\w) =>
^(?:it|that|this) (?:can't|cannot|can not|couldn't|surely can't) (?:<very> )*be (?:right|true|so|correct
    |the case)(?: that)? (?=\w) =>
# mistaken wrong dreaming imagining mad just only
^(?:is it (?:just|only) me|am i (?:mistaken|wrong|dreaming|imagining (?:it|things)|going mad)|correct me
    \sif i'm (?:wrong|mistaken)|if i'm not (?:wrong|mistaken)|unless i'm (?:wrong|mistaken|dreaming))(?:,?
    \s(?:or|but))?,? (?=\w) =>
,? (?:or )?(?:am i|have i) (?:just )?(?:mistaken|wrong|dreaming|imagining (?:it|things)|got (?:that|it)
    \swrong|going mad|missing something)\s*\?*$ => ?
# bet wager daresay dare fear suspect doubt trust
^(?:(?:i(?:'d|'ll)? )?(?:bet|wager|fear|suspect|doubt|trust)|i dare ?say)(?: you)?(?: that)? (?=(?:i|we
    |you|he|she|they|it|that|this|those|there|nobody|no|the|my|our|a|an)\b) =>
# hope suppose take presume assume trust imagine gather expect guess bet surely presumably hopes think
     doubt daresay
<sep><hoping>\s*[?.!]*\s*$ => ?
# not hardly surely certainly definitely
([:–-] )(?:surely |certainly |definitely )?not\s*\?\s*$ => \1allowed?
([.;:,–-] )(?:surely )?(?:not|never) (?:<very> )*(allowed|permitted|ok|okay|fine|legal|in order|acceptable
    |right|all right|proper|compulsory|required|needed|necessary)\s*\?\s*$ => \1\2?
([.;:,!?-] ?)(?:that's |it's |they're )?(?:not|hardly)( (?:far |much |a bit )?too \w+)\s*\?\s*$ => \1\2?
# nutshell short brief word plain terms briefly simply bottom story
^(?:<shortly>|long story short|the long and (?:the )?short of it|briefly|put simply|simply put|bottom line
    |to cut a long story short)\s*[:,;-]* (?=\w) =>
<sep>(?:<shortly>|briefly)(?: please)?\s*[?.!]*\s*$ => ?
# book rules regs regulations rulebook code law
^(?:strictly )?(?:according to|going by|as per|by|under|per) <rulebook>(?! (?:of|in|from|as)\b),? (?=\w) =>
,? (?:strictly )?(?:according to|going by|as per|by|per) <rulebook>\s*([?.!]*)\s*$ => \1
# regardless anyway nonetheless nevertheless same may event
,? (?:regardless|anyway|all the same|nonetheless|nevertheless|come what may|either way|in any
    \sevent)\s*\?\s*$ => ?
# if
<sep>if (?:you (?:have|know|can|happen to know|have got)(?: (?:it|that|them|tell me))?|(?:that's|it's)
    \s(?:known|written down|possible)|you(?:'d| would) be so kind|you don't mind(?: me
    \sasking)?)\s*[?.!]*\s*$ => ?
# inches inch mm cm millimetres millimeters centimetres centimeters feet metres meters metric imperial money
^(.*\b(?:how|what|which|largest|biggest|longest|widest|highest|size|height|width|length|diameter|distance
    |tall|wide|broad|across)\b.*?),? (?:in|as) <unit>(?: or <unit>)?(?: please| ok| if
    \s.{3,20})?\s*[?.!]*\s*$ => \1?
# give tell state quote name
^(?:(?:please|kindly|can you|could you|would you|just|so) )*(?:give|tell|state|quote|name)(?: (?:me
    |us))?(?: please)?,? (?:the|its) (?=(?:[\w-]+ ){0,3}(?:height|width|length|size|colour|diameter|number
    |position|depth|temperature|distance|order|measurements?|dimensions?) (?:of|for|between)\b) => what is
    \sthe\s
# option possibility goer runner starter cards game thing proper bet line clear
\b(?:<very> )*<good><next> => allowed
# admissible normal practice fair allowable excusable tolerated tolerable countenanced sanctioned approved
     endorsed licit suitable appropriate advisable sensible wise feasible idea thing choice plan dress
     regulation yes justified accepted legitimate valid cricket kosher within
\b(<be>\b[^.;?!]*? )(?:<very> )*<fit><next> => \1allowed
(^|[.,;:–-] )(?:<very> )*<fit>\s*\?*$ => \1allowed?
# breach crime limits frowned verboten no luck arm chancing bending stretching flouting mark liberties
     liberty cheeky sin offence offense misdemeanour misdemeanor felony pas transgression matter violation
     infringement contravention line order question bounds pale form trouble done thing cricket menu table
     cards list agenda ruled far no-go go
\b(?:<very> )*<bad>(?: of)?<next> => forbidden
# blunder error slip gaffe naughty cheating manners rude disrespectful unlawful unacceptable inadmissible
     improper impermissible illicit inappropriate unsuitable criminal sinful disallowed taboo outright
     mistake no idea thing unwise breach
\b(<be>\b[^.;?!]*? )(?:<very> )*<ill><next> => \1forbidden
(^|[.,;:–-] )(?:<very> )*<ill>\s*\?*$ => \1forbidden?
# on
\b(that|it|this)(?:'s| is) (?:<very> )*not (?:<very> )*on(?=\W*$|, is\b) => \1 is forbidden
\b(that|it|this) isn't (?:<very> )*on(?=\W*$|, is\b) => \1 is forbidden
# choice taste discretion judgement judgment preference liking conscience affair lookout business call
     decision open up down left
(?<!whether )\b(?:<very> )*<free><next> => optional
# absolute negotiable rigueur uniform dress fixture issue
\b(?:<very> )*<due><next> => required
# essential imperative vital unavoidable indispensable expected demanded stipulated insisted laid
     necessity condition incumbent
\b(<be>\b[^.;?!]*? )(?:<very> )*<needful><next> => \1required
(?:^|(?<=[.,;:?!]\s))(<unless_if>*?\b<be>\b<unless_if>*? )(?:<very> )*expected(?!\sto\b)<next> => \1required
(^|[.,;:–-] )(?:<very> )*(?:<needful>|expected)\s*\?*$ => \1required?
# or
\b(?:<very> )*(?:an? )?(?:nice[- ]to[- ]have|extra|luxury|choice|option|suggestion|recommendation|free
    \schoice|optional|voluntary|advice|advisory|recommended) or (?:is it |are
    \sthey\s)?(?:<very> )*(?:an?\s)?(?:must|compulsory|required|obligatory|mandatory|duty|requirement|rule
    |order)\b => required
\b(?:<very> )*(?:an? )?(?:must|compulsory|required|obligatory|mandatory|duty|requirement) or (?:is it |are
    \sthey )?(?:<very> )*(?:just )?(?:an? )?(?:nice[- ]to[- ]have|extra|luxury|choice|option|suggestion
    |recommendation|optional|voluntary|advice|advisory|recommended|up to <me>)(?=\W|$) => required
# if luck arm chancing bending stretching flouting mark liberties liberty cheeky
^(?:would|will|am|are|is|was|were) (<i>) (?:be )?<bad>(?: by| in)? (?=\w+ing\b) => is it forbidden for \1\s
^(?:would|will|is|was|wouldn't|isn't) (?:it|that) (?:be )?(?:forbidden|wrong|banned|prohibited|against
    \s<rulebook>) if\s => is it allowed if\s
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
(^|[,;:–-] )(?:surely )?(?:<nobody>|they|<the> [\w-]+)(?:'s going to|'re going to| (?:can|could|will|would
    |may|might|is going to|are going to))(?:n't|'t|not| not)?(?: really| ever| actually)? (?:force|compel
    |bully|push|get) <me> into (?:wearing )? => \1 must I wear\s
# oops whoops dear mistake move idea matter trouble wrong
([.;!?,–-] )(?:oops|whoops|oh dear|uh oh|(?:a |my |big |bad )?mistake|bad (?:idea|move)
    |(?:does|did) (?:it|that|this) matter|will i (?:be|get) in(?:to)? trouble|(?:did|have) i (?:do|done)
    \s(?:something |anything )?wrong)\s*\?+\s*$ => \1is that allowed?
# tell persuade convince
^(?:surely )?(?:<nobody>|they|you|<the> [\w-]+)(?:'s going to|'re going to| (?:can|could|will|would|may|might
    |is going to|are going to))?(?:n't|'t|not| not)? (?:tell|persuade|convince) <me> (?:that )?(?=(?:i|we|one
    |you) (?:must|have|need|ought) ) =>
# nobody no none
\b<nobody>(?:'s| has| have| had|'d) (?:yet |actually |ever )?(ordered|granted|declared|announced|approved
    |authorised|allowed) ([\w' -]+?)(?: yet| so far| today)?(?=[,.;?]| but\b|$) => \2 has not been \1
^(?:surely )?<nobody> (?:but|except|other than|apart from|save) ([\w' -]{2,40}?) (?:may|can|is allowed to
    |are allowed to|should|gets? to) => only \1 may\s
# says said
[,;] (?:and |but )?(?:<the> )?[\w' -]{2,30}? (?:says?|said) (?:yes|no|so|not|otherwise|it's
    \s<fine>)\s*\?+\s*$ => ?
# straight right
,? (?:straight|right) (?:off|away)(?=[.;?]|$) =>
# stop prevent bar hinder stops prevents bars
(^|[,;:–-] )(?:surely )?(?:<nobody>|they|anyone|anybody) (?:can |could |will |would )?(?:stop|prevent|bar
    |hinder)s? <me> (?:from )?(?=\w+ing\b) => \1 is it allowed for me\s
# forbid
(^|[,;:–-] )(?:surely )?(?:<nobody>|they|anyone|anybody) (?:can |could |will |would )?forbid <me> to\s
     => \1 may I\s
# need call requirement obligation
(^|[,;:–-] )(?:surely )?(?:there(?:'s| is| was)(?: <very>| surely)* )?no (?:real |actual\s
    |earthly\s)?(?:need|call|requirement|obligation)(?: for <me>)? to (?=\w) => \1 must I\s
(^|[,;:–-] )(?:surely )?(?:there(?:'s| is| was)(?: <very>| surely)* )?no (?:real |actual\s
    |earthly\s)?(?:need|call|requirement) (?:for|of) (.+?)(?:,? (?:is|was) there)?(?:,? (?:surely
    |then))?\s*\?*$ => \1 must I have \2?
^(?:(?:is|was) there |have <i> )?(?:<very> )*any (?:real |actual )?(?:need|call|requirement|obligation)(?:
    \sfor <me>)? to (?=\w) => must I\s
# nobody no none
(^|[,;:–-] )(?:surely )?<nobody> (?:<very> )*(?:has|have|needs|need|is obliged|are obliged|is required|are
    \srequired|is expected) \s?to (?=\w) => \1 must anyone\s
(^|[,;:–-] )(?:surely )?<nobody>(?: in (?:<own>|the) \w+| here| at [\w' -]{3,30}?)?(?P<who> (?:below|above
    |under|over|without|junior to|senior to|of|with|but|except) [\w' -]{1,25}?)? (?:may|can|is allowed to
    |are allowed to|is permitted to|gets to|should) (?:ever )?(?=\w) => \1 may anyone\g<who>\s
# harm minds wrong
(?<=[.;,] )(?:and |but )?(?:<somebody> )?(?:<says> )?(?:there(?:'s| is|'d be) (?:no harm|nothing wrong)
    \s(?:in|with) (?:it|that|this)|(?:it|that|this) does no harm|nobody minds)[.;,]+ <echo>\W*$ => Is that
    \sOK?
# says said say reckons thinks claims swears swore insists insisted maintains promised assured told tells
     told sure certain adamant convinced thought reckon think swear
(?<=[.;,] )(?:and |but |though |which )?(?:<somebody> )?<says>(?: that)? (?:(?:it|they|that|this|those
    |these|he|she|i|we)(?:'s| is| was| were|'re| are|'d be| would be|'m| am)(?: all| both| perfectly|
    \squite)?|are|is) (?:<fine>|forbidden|banned|<good>|<fit>|<bad>|<ill>|within (?:the )?(?:tolerances?
    |limits?|bounds))[.;,]+ <echo>\W*$ => Is that OK?
([.;?!] )<echo>(?=\W*$) => \1Is that right
# harm
^(?:(?:where|what)(?:'s| is) the harm in|(?:surely )?(?:there(?:'s| is) )?no harm in) (?=\w+ing\b) => is
    \sit allowed for me\s
"""
