"""More ways of asking, for what is not understood as it stands; in the form of `sayings.py`."""

from __future__ import annotations

SAYINGS_MORE = r"""
# taking bringing wheeling escorting showing walking leading seeing
\b(?:taking|bringing|wheeling|escorting|showing|walking|leading|seeing) (?:an? |the |some |my |our |a few )?
    (?:\w+ )?(?:patients?|visitors?|guests?|child|children|kids|people|somebody|someone|part(?:y|ies)|group
    |famil(?:y|ies)|parents|customers?|trainees?) (?:(?:in|on)?to|through|round|around|over)
    \s(?=(?:the|an?|our|my)\b) => in\s
# run come go walk pop nip dash get head slip step wander
\b(can|may|could|must|should) (<i>) (?:just |quickly |still )?(?:run|come|go|walk|pop|nip|dash|get|head
    |slip|step|wander) (?:back )?(?:into|inside) ((?!way\b|line\b)(?:<the> )(?:[\w'-]+ )?[\w'-]+) (?:in
    |with|wearing) ((?:<the> )?(?!order\b|full\b|a hurry)[\w' -]+?)(?: on)?\W*$ => \1 \2 wear \4 in \3?
# nobody no none soul
^((?:[^?]*[.;:,–-] )?)(?:surely |but |and |so )*<nobody>(?:(?:'ll|'d| will| would| can| could)(?: ever
    | really)?)? <minds>(?: (?:about|over|at|to))? (?:if|when|that) <i>\s([^?]+?)(?:,? (?:do|does|will
    |would|can|could) (?:they|he|she|anyone|anybody|you))?\W*$ => \1may I \2?
^((?:[^?]*[.;:,–-] )?)(?:surely |but |and |so )*<nobody>(?:(?:'ll|'d| will| would| can| could)(?: ever
    | really)?)? <minds>(?: (?:about|over|at|to))?\s(?!if\b|when\b|that (?:i|we|the|my)\b|what\b
    |how\b)([^,;.?!]+?)(?:,? (?:do|does|will|would|can|could) (?:they|he|she|anyone|anybody
    |you))?\W*$ => \1may I have \2?
^(?!(?:[^?]*[.;:,–-] )?(?:may|can|could|must|should|is|are|do|does|what|which|who|where|how
    |when)\b)([^?]*\w)[.;,!]+ (?:surely |but |and |so )*<nobody>(?:(?:'ll|'d| will| would| can
    | could)(?: ever| really)?)? <minds>(?: about it| about that)?(?:(?:,? (?:do|does|will|would|can
    |could) (?:they|he|she|anyone|anybody|you))|, right)?\W*$ => \1. Is that allowed?
# s
\b(?!(?:it|that|there|what|who|where|how|here|let|he|she|nobody|nothing|none|everybody|everyone|anyone
    |anybody|one|no-one)'s)([a-z]{3,})'s
    \s(?=(?:on|off|out|up|down|being|gone|broken|so|too|very|really|always|still|not|now|about|coming|going
    |running|working|moving|leaking|dripping|boiling|freezing)\b(?! (?:the|a|an|my)\b)) => \1 is\s
\b(?!(?:it|that|there|what|who|where|how|here|let|he|she|nobody|nothing|none|everybody|everyone|anyone
    |anybody|one|no-one)'s)([a-z]{3,})'s
    \s(?=(?:been|got|had|become|changed)\b) => \1 has\s
# can may must could should do does can't mustn't couldn't don't ca
^(?!.*\b(?:though|although|if|when|whenever|while|whilst|because|since|as|unless|until|till|once|after|before
    |where|that|now|considering|given|seeing|provided|assuming|supposing|even|not|no|never|neither|without
    |none|nobody|nothing|[a-z]+n't|(?:i|we|he|she|they)(?:'m|'re|'s| am| are| is)|(?:is|'s) an?)\b)
    ([^?]*\b(?:it|the [\w-]+|my [\w-]+|our [\w-]+|i|we)(?:'s|'m|'ve|'re| is| am| are| was| has| have)\b
    [^?,]*)[,;] (?:so |and )?(?=(?:can|may|must|could|should|do|does)(?:n't)? (?:i|we|he|she|they)\b)
     => \1.\s
# year day month hours
,? (?:all day(?:[ -]long)?|every(?: single)? day|day in,? day out|in every month|in any month
    |at any time of (?:the )?year)(?=\s*[.,;:?!]|\s*$|,? (?:in|on|with|for|or|and|at|by)\b) =>
# at
^((?:we|i|they|he|she)(?:'re| are|'m| am| have|'ve)? [a-z' -]{3,40}?) at (?:about |around )?
    (?:\d{1,2}|six|seven|eight|nine|ten|eleven|twelve)(?: sharp| ?o'clock)?(?=,| and | so ) => \1
# dye dyed dyeing bleach bleached tint tinted colour coloured
\b(?:dye|bleach|tint|colour) <own> hair (?:(?:in|to) )?(?:an? )?((?:(?:bright|dark|light|pale|deep|neon|hot
    |pastel|electric|vivid|bottle|sky|ash|platinum) )?(?!(?:at|for|in|on|and|or|before|while|when|with|if
    |by|to|the|my|again)\b)[a-z]+)\b => wear \1 hair
^(?:<own> )?hair(?:'s| is| was| has)?(?: been)? (?:dyed|bleached|tinted|coloured) ((?:(?:bright|dark|light
    |pale|deep|neon|hot|pastel|electric|vivid|bottle|sky|ash|platinum) )?(?!(?:at|for|in|on|and|or|before
    |while|when|with|if|by|to|the|my|again)\b)[a-z]+)(?:,? (?:(?:at|over) the weekend|last (?:night|nite
    |week|month|weekend)|yesterday|recently|lately|this morning|\w+ (?:days?|weeks?
    |months?) ago))? => my hair is \1,\s
# machine washer dryer drier
\b(?:put|chuck|bung|throw|sling|stick|pop|shove|toss|stuff|run|wash|clean|dry|do) (<the> [\w' -]+?) (?:in
    |into|through) <the> (?:washing[- ]?machine|washer|machine(?= (?:on|for) (?:an? )?(?:\w+ )?(?:wash
    |cycle|programme)))\b => machine-wash \1
# trouble
<sep>(?:so )?(?:am|will|is) (?:i|he|she)(?: be)? in (?:any )?trouble(?: now| then| for (?:that|it|this))?\W*$
     => . Is that wrong?
# pocket pockets zip loop dart darts gusset panel elastic velcro
\b(?:put|putting|sew|sewing|stitch|add|adding|fit|have|get) (?:an?|another|an extra|some|two) (?:extra
     |little|small |inside |inner |hidden )*(?:pockets?|zip|loop|darts?|gusset|panel|elastic|velcro) (?:put
     |sewn|added |fitted )?(?:on|onto|to|in|into|inside) (?=<the> ) => alter\s
# alteration change modification repair
<sep>(?:is|was|would) (?:that|it|this)(?: be)? an? (?:alteration|change|modification|repair) (?:that
     |which )?(?:<books>|they|you) (forbids?|bans?|prohibits?)\W*$ => . Is that forbidden?
# neater smarter bright shiny clean warm warmer dry
^(?!.*\b(?:wear|carry|own|have on)\b)((?:may|can|could|should|must|am i allowed to) .+?),? (?:just |only
    |so as |in order )?to (?:keep|make|get) (?:it|them|<the> [\w-]+)(?: look| feel)?
    \s(?:neater|smarter|bright|shiny|clean|warm|warmer|dry)\W*$ => \1?
# fair right rightly justified correct unfair unfairly unjust wrongly
,? (?:and|so|but) (?:i|he|she|we|they) (?:was|were|got|have been|has been|had been) (?:pulled up|picked up
    |written up|told off|ticked off|marked down|sent back|sent home|sent away|sent off|hauled up|reported
    |reprimanded|faulted|failed|rebuked)(?: (?:for|over|about|on) (?:it|that|them|this))?[.,;:] (?:(?:was
    |is) (?:that|it|he|she|they) )?(?:fair|fair enough|right|rightly(?: so)?|justified|correct
    |unfair(?:ly)?|unjust(?:ly)?|wrongly)\W*$ => ?
# ought
^(.*?)\bought (<the> [\w' -]+?) (?:to )?(?=be ) => \1must \2\s
# choice
<sep>(?:is|would) (?:that|it|this)(?: be)? (?:my|our|his|her) (?:own )?choice(?: to make)?\W*$ => , ok?
# prefer prefers
(?<!would )(?<!'d )\bprefers?(?: to wear| wearing)? ((?:<the> )?[\w' -]+?) to (?:wearing )?(<the> [\w' -]+?)
    (?=[.;,?!]|$) => wants to wear \1 instead of \2
# everything all whatever
^(?:.*?\b)?(?:list|name|give|tell|show)(?: me| us)? (?:everything|all|whatever)(?: that
    | which)?(?:\s(?:goes|go) on|(?: (?:i|we|you|one|they))? (?:need|have|must|should
    |ought)(?: to)?(?: have| wear| put on)?| is worn| belongs)? (?:for|in|with|as|to)
     (?:<the> )?([\w' -]+?)\W*$ => what do I wear in \1?
# kit outfit get-up list rundown
^(?:so |and )?(?:give|show|tell|list|name)(?: me| us)? (?:the |a )?(?:full |whole |complete |entire )?(?:kit
    |outfit|get-up|list|rundown|kit list) (?:for|in|of) (?:<the> )?([\w' -]+?)\W*$ => what do I wear in \1?
# come comes
^when (?:do|does|must|should|may|can) (?:<the> )?([\w' -]+?) (?:come|go) (up|down|off|on)\b([^.;?!]*)\W*$
     => when is the \1 \2\3?
# go goes
^when (?:do|does|must|should|may|can) (?:<the> )?([\w' -]+?) go (up|down|on)\b([^.;?!]*)\W*$
     => when is the \1 \2\3?
# so
,? (?:or|but|at least) so (?:i(?:'m| am| was|'ve been| have been) (?:told|assured)|(?:they|people|the \w+
    |my \w+|our \w+) (?:says?|said|tells? <me>|told <me>|claims?|reckons?|thinks?)|i(?:'ve)? (?:hear|heard
    |read|understand|gather|thought|think|believe))(?=\s*[.,;?!]|\s*$) =>
# says say said reckons thinks claims swears insists maintains told tells reckon think claim swear insist
(?:,| [–—-]) (?:(?:so|as|at least) )?(?:(?:<the> |one of <the> |some )(?:[\w'-]+ ){0,2}?<comrade>
    |<own> (?!(?:<volume>|<healer>)\b)[\w'-]+) (?:says?|said|reckons?|thinks?|claims?|swears?|insists?
    |maintains?|tells? <me>|told <me>|has it|have it)(?=\s*[.?!]|\s*$) =>
# thermometer gauge dial meter display anemometer scale scales mercury
\bit (?:says|reads|shows|said|read|showed) (minus |-)?(\d[^,;.?]{0,20}?) (?:on|by|according to) <the>
    \s(?:[\w-]+ )?(?:thermometer|gauge|dial|meter|display|anemometer|scales?|mercury)\b => it is \1\2
# against
(?:\s*[,;:.]+| [–—-]+)\s(?:and )?(?:that|it|this)(?:'s| is) not against (?:anything|the law
    |any(?: of the)? (?:rules?|clauses?)|<rulebook>)(?:,? is (?:it|that))?\W*$ => , is that allowed?
# toe foot bottom
^(.*\b(?:what|which)\b.*?),? (?:from )?(?:head|top) to (?:toe|foot|bottom)(?=\s*[.,;?!]|\s*$) => \1
# told asked prompted bidden reminded
,? without (?:me |us |him |her |anyone |anybody )?(?:first )?(?:being|having been|having to be|getting)
    \s(?:told|asked|prompted|reminded)(?: (?:first|to(?: do so)?|by anyone|by anybody))?(?=\s*[.,;?!]|\s*$
    |\s(?:in|on|at|with|when|while)\b) =>
# nay yea yay aye nope yep
(?:\s*[,;:.–-]+)?\s(?:yay|yea|aye|yep|yeah) or (?:nay|no|nope)\s*[.?!]*\s*$ => ?
# yes no yeah yep nope
^(?!(?:yes|no)\b)(.*\w)(?<! or)(?<! and)(?<! is)(?<! it)(?<! say)(?<! says)(?<! said)(?<! the)(?<! a)
    \s(?:a )?(?:simple |plain |straight )?yes[ /]*(?:or[ /]*)?no\s*[.?!]*\s*$ => \1?
^(?!(?:yes|no)\b)(.*\w)(?<! or)(?<! and)(?<! is)(?<! it)(?<! say)(?<! says)(?<! said)(?<! a)(?<! the)
    (?<! with)(?<! so)\s(?:so )?(?:yes|yeah|yep)\s*\?+\s*$ => \1?
# doable passable workable
([.,;:–-] ?)(?:doable|workable|passable)\s*\?*$ => \1allowed?
# goes
^((?:[^?]*[.;:,–-] )?)(?:so |and |then )*what(?:'s going| goes) on(?: (?:me|then|now|there|first))*\s*\?*$
     => \1what must i wear?
# but
^(?:(?:(?:(?:either|one|both|any) of us|i|we|he|she|they|you) )?(?:may|might|could|can)(?: (?:well|easily
    |both))?\sbe (?:wrong|mistaken|right|confused|out of date|imagining (?:it|things))|(?:(?:it|this
    |that)(?:'s| is)?\s)?(?:sounds? |seems? |may (?:be|sound|seem) |might (?:be|sound
    |seem) )?(?:an? )?(?:bit |rather |very\s|probably |possibly )?(?:daft|odd|silly|strange|stupid|dumb
    |weird|fussy|pedantic|picky|petty|cheeky|basic|trivial|naive)(?: question| thing to ask| to ask
    | perhaps| i know)?|call me (?:daft|odd|silly|strange|stupid|dumb|weird|fussy|pedantic|picky|petty
    |cheeky|basic|trivial|naive)|(?:i(?:'m| am) )?not (?:quite |really |entirely |at all )?(?:sure|certain
    |positive|clear)(?: (?:about|of) (?:it|this|that))?|(?:i(?:'ve| have)? (?:got )?)?no idea(?: why)?
    |(?:i )?hate to ask|don't laugh|forgive me|pardon me|excuse me|no offence|with respect
    |with all respect),? but (?=\w) =>
^(?!.*\b(?:all|any\w*|every\w*|no|none|nothing|nobody|nowhere|never|always|whatever|last|not|n't
    |cannot)\b[^.;?]*\bbut\b)(?!.*n['’]t\b[^.;?]*\bbut\b)(.*\w),? but (?:(?:it|they)['’]?(?:s| is|re
    | are) )?(?=(?:switched|turned|worn|kept|hidden|out of sight|under|inside|folded|tucked|done up|undone
    |open|closed|clean|plain|small|covered|rolled|fastened|unfastened|buttoned|unbuttoned)\b) => \1,\s
# only just merely purely barely
,? (?:just|only|purely|merely|simply) for (?:(?:the )?(?:warmth|comfort|looks?|luck|company|view
    |convenience|feel of it)|show|fun)(?=\s*[.,;:?!]|\s*$) =>
\b(?:only|just) (?=for (?:an?|one|two|three|five|ten|fifteen|twenty|half an|a few|a couple of
    |\d+) (?:seconds?|moments?|minutes?|mins?|hours?)\b) =>
(?<=\w),? (?:just|only|merely) (?=(?:walking|passing|crossing|going|coming|popping|nipping|running|driving
    |cycling|heading|stopping|travelling|changing trains|on (?:my|our|his|her|the) way)\b) =>\s
\b((?:when|if|as|since|because|though|but|and) (?:i|he|she|we|they|you)(?:['’](?:m|s|re)| am| is| are| was
    | were)) (?:only|just|merely)\s(?!wearing|in\b|carrying|holding|with|to\b|those|the|allowed
    |permitted) => \1\s
\b((?:even )?(?:if|when|while) (?:i|he|she|we|they|you)) (?:only|just|merely) (?=(?:go|goes|come|comes
    |look|looks|walk|walks|stand|stands|watch|watches|climb|climbs|pass|passes|sit|sits|help|helps|cross
    |crosses|stop|stops|visit|visits|work|works|eat|eats)\b) => \1\s
^(how many [^.;?,]+?),? (?:is it )?(?:just|only) (?:the )?(?:one|two|pair)\W*$ => \1?
# enough
(?:^|(?<=[.,;])) ?(?:and )?(?:(?:it|i)(?:['’](?:s|m)| is| am) )?(?:quite )?(?:warm|cool|light|dry|mild|hot)
    \senough(?: without(?: it| one|them)?)?(?=\s*[.,;:?!]|\s*$) =>
\b(is|are|will|would) ((?:the|my|our|an?|his|her) [\w' -]+?) (?:be |do )?(?:good |smart |fine |dress
    \s|(?<=alone ))enough\s(?:for|in|with|on|at) => is \2 ok in\s
# problem
(?:\s*[,;.:?!]+|\s+[-–—]+)\s*(?:(?:that|it|this)(?:'s| is) )?(?:not|no)
     (?:a )?problem\s*\?+\s*$ => , allowed?
# harm excuse objection objections
(?:\s*[,;.:?!]+|\s+[-–—]+)\s*(?:is there )?(?:any|an|no) (?:harm|excuse|objections?)(?: (?:in|to|for)
     (?:that|it|this))?\s*\?+\s*$ => , allowed?
# problem problems issue issues trouble worry worries snag snags bother difficulty hitch harm
<sep>(?:(?:is|are|would|will) )?(?:either|any|one|both|each)(?: one)?(?: of (?:those|these|them|that|the
    \s(?:two|three|lot)))?(?: be)? (?:an? |any )?(?:problems?|issues?|trouble|worry|worries|snags?|bother
    |difficulty|hitch)\s*\?+\s*$ => . Are either of those allowed?
<sep>(?:(?:is|are|would|will|isn't|won't) )?(?:(?:that|this|it|they|those|these) )?(?:(?:going to )?be\s
    )?(?:any |an? )?(?:problems?|issues?|trouble|worry|worries|snags?|bother|difficulty|hitch
    |harm)(?: (?:with|in)
    \s(?:that|it|this|them))?\s*\?+\s*$ => , ok?
# hot cold warm cool chilly windy strong high low wet bad
^(?:just )?how (?:hot|cold|warm|cool|chilly|windy|strong|high|low|wet|bad) (?:must|does|do|should|has
    |need|needs|is) (?:it|<the> [\w -]{3,25}?) (?:(?:have|need|got|has|supposed|meant) to\s)?(?:be|get|blow
    |reach|go|rise|drop|fall)?(?: outside| out)?,? (?:before|for|to|if|so that|until) (?:(?:<i> |<me> )?
    (?:can|may|must|could|have to|to|am allowed to|are allowed to)?\s?(?:<wear> |<wearing> )?)
    (?!.*\b(?:to|off)\b)(.+?)(?:\s(?:can|may|must) be worn| is worn| is allowed)?\W*$ => when may \1 be worn?
# longest shortest
\bwhat(?:['’]?s| is| was| would be) the (?:longest|shortest) ((?:<the> )?[\w' -]+?) (?:that )?(<i>
    |<the> [\w'-]+|[a-z]{1,2}\d) (can|may|could|might|am allowed to|is allowed to|are allowed to) (?:have
    |wear|grow|carry|sport)\b => how long may \1 of \2 be
# exemption exemptions permit permits dispensation dispensations
^(?:and |so )?(?:(?:does|do|will|would|can) )?((?:<the> )?[\w -]*?(?:exemption|permit
    |dispensation)s?)\s(?:ever )?(?:runs? out|expires?|lapses?|ends?)(?: after (?:an?|one|two|three|six
    |twelve|\d+)\s(?:days?|weeks?|months?|years?))?(?:,? (?:like|as|just like
    |the same as) [^.;?!]+)?\W*$ => do \1 expire?
# lets allows permits let allow permit
^(?:<books>|<the> (?:[\w-]+ )?notice) (?:now |still )?(?:lets?|allows?|permits?) <me>(?: to)?
    \s(?=<wear> |keep |leave |carry |go )([^.;?!]+?)(?:,? (?:does|do|did)(?:n't| not)? (?:it
    |they))?\W*$ => may I \1?
# speaking
^speaking (?:purely |only |strictly |just )?as (?=(?:an?|the|one) [\w' -]+[,:;-]) => as\s
# where
^((?:<the> )?(?:[\w'-]+ ?){1,5}?)[,:;-]? (?:goes|go|sits|sit|is worn|are worn|belongs
    |belong) where(?:abouts)?(?: exactly| precisely)?\W*$ => where does \1 go?
^where(?:abouts)? (?:exactly|precisely|abouts|on earth) (?=(?:do|does|is|are|must|should|may|can)\b)
     => where\s
^where (?:ought|has|have) (.+?) to (?:go|be|sit)\W*$ => where should \1 go?
^where (?:on|about) (?:<the> )?(?:body|person|uniform|kit|dress|rig|self|frame)\s(do|does|is|are|should
    |must)\s(.+?) (?:belong|go|sit|live|worn|be worn)\W*$ => where \1 \2 go?
# place placement spot location position site
^(?:what(?:'s| is) )?the (?:exact |right |proper |correct |prescribed |laid[- ]down )?(?:place|placement|spot
    |location|site|position) (?:for|of|to wear|to put) (.+?)\W*$ => where is \1 worn?
^(?:exact |right |proper |correct )?(?:place|placement|spot|location|site|position) (?:for|of) (.+?)\W*$
     => where is \1 worn?
# placed sited
^how(?:'s| is| are| must| should) (.+?) (?:be )?(?:placed|sited|located|situated)\W*$ => where is \1 worn?
# qualifies qualify entitled
^who (?:qualifies|qualify|is eligible|are eligible)(?: for| to wear| to have) => who may wear\s
^who(?:'s| is| are)(?: all)? entitled to wear => who may wear\s
# who
^who (?:all )?(?:goes|go|walks|walk) (?:about|around|round) (?:in|with) => who wears\s
^(?:is there )?(?:a |any )?lists? of (?:those |people |the people |people )?who => who\s
# hands head feet neck
^what am i to (?:have|wear|put) on (my|his|her|their|our) (hands|head|feet|neck|face|legs|body)
     => what must I have on \1 \2
# times time occasions occasion case cases condition conditions circumstances circumstance situations
     situation days
^(?:is|are) there (?:any |a |ever a |ever any |some |certain )?(?:times?|occasions?|cases?|circumstances?
    |conditions|situations?|days?|moments?|instances?) (?:of the (?:day|year) )?(?:when |where |in which\s
    |on\swhich |that |at which|under which )?(<subject>) (can|may|must|could|should|might|is|are|am|need|has
    |have)(n't| not)?\s => when \2\3 \1\s
^(?:is|are) there (?:any |an |ever any )?(?:occasions?|situations?|cases?|calls?) (?:to wear|for wearing
    |for)\s(.+?)\W*$ => when may \1 be worn?
^(?:at|in|on|under|for|during) (?:what|which) (?:sorts? of |kinds? of )?(?:times?|cases?|conditions?
    |circumstances?|situations?|occasions?|events?|days?) (?=(?:can|may|must|could|should|is|are|am|do
    |does)\b) => when\s
# weather conditions temperature temperatures year months season seasons month
^(?:at|below|above|under|over|from|in|up to|down to) (?:what|which) temperatures? (?:and (?:below|above
    |under)\s)?(?=(?:can|may|must|could|should|is|are|am|do|does)\b) => when\s
^(?:at |in |during )?(?:what|which) (?:time|times|part|parts|season|seasons)(?: of the year| of year)?\s(?=
    (?:can|may|must|could|should|is|are|am|do|does)\b) => when\s
# becomes become becoming
^when (?:do|does) (.+?) (?:become|get|turn) (compulsory|required|mandatory|obligatory|optional|allowed|banned
    |forbidden|necessary)\W*$ => when is \1 \2?
# law regs rule rules any anything bars bans order orders book code ban forbid
^is there (?:a|any|some) (?:law|ordinance|regulation|provision|edict|prohibition|bar|injunction|veto)\s
    (?:against|on|to stop) => is there a rule against\s
^(?:do|does|did|will|would) <books> (?:actually |really )?(?:ban|forbid|prohibit|bar|rule out|disallow|outlaw
    |exclude|stop|prevent|keep) (?:<me> (?:from )?)?(?:the )?(?:<wearing> )?(?:of )?(?=[\w])
     => is there a rule against\s
^(?:do|does|did|will|would) (?:the |our |these |any )?(?:regs|book|order|manual|code) (?:allow|permit
    |sanction|approve)(?: of)? => is it allowed to wear\s
# against
\bagainst (?:the )?(?:regs|reg|order|orders|book|code|law|dress code)\b => against the rules
# breach break breaking broke infringing violating contravening
^(?:would|will|am|are|is|do|does|did) <i> (?:be )?(?:in breach|breaking|break|breach|infringing|infringe
    |violating|violate|contravening|contravene|falling foul|fall foul)(?: of)?(?: any| an?| some| the)?
    (?:\srules?| regs?| clauses?| regulations?| orders?| code)?(?: if (?:i|we) (?:wear|wore)| by wearing
    |\sin\swearing| wearing| to wear| with)(?= ) => is it against the rules to wear
# trouble catch told pulled shouted caught
^(?:am|are|would|will) <i> (?:be |get )?in(?:to)? trouble (?:without|with no|for not wearing
    |if\si'm\snot\swearing)(?= ) => is it against the rules to go without
\bcatch it (?=for|if) => get in trouble\s
# problem issue issues worry trouble snag hitch catch bother
^(?:is there |are there |would there be )?(?:any|a) (?:problem|issue|trouble|difficulty|worry|snag|hitch
    |catch|bother)s?\s(?:if <i>\s
    (?:wear|wore)|wearing|with <wearing>|with me <wearing>|with my <wearing>)(?= )
     => is it against the rules to wear
^(?:would|will|could) (.+?) be (?:a |an )?(?:problem|issue|trouble|difficulty|worry)\b => is \1 allowed
# order
^(?:would|will|might|could) (.+?) be (?:quite |all )?in order\b(?! of| to) => is \1 allowed
# show turn wrap
\b(can|may|could|must|should|do|does) (<subject>) (?:show up|turn up|wrap (?:myself |himself |herself )?up
    |bundle up|kit up|rig up) (?:in|with|wearing) (?=(?:a|an|the|my|our|his|her)\b) => \1 \2 wear\s
# part form place
^(?:can|may|could|does|do|should|must) (.+?) (?:form|be) (?:a )?part of (?=\w) => may \1 be worn in\s
# dare
^dare (<i>) => may \1
# absolutely hook obligation compelled essential imperative rigueur negotiable unavoidable
\b(?:under|is there) (?:an?|any) (?:obligation|compulsion|duty|requirement) (?:on <me> |for <me> )?to\b
     => required to
^(is|are|was|were) (.+?) (?:absolutely |strictly |really )?(?:essential|imperative|de rigueur
    |non[-\s]negotiable|unavoidable|indispensable|vital|a necessity|an? absolute must|(?:a )?(?:standard
    |regular|normal) issue|de[- ]rigueur|a fixture)\b => \1 \2 compulsory
"""
