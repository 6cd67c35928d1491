"""Ways of saying that a thing is on, off, out, up or shown, or goes along; written as those of `sayings.py`.

The particle is read only with the noun or the verb that it goes with: what comes "out" is worn in the body,
a sleeve that is taken "up" is shortened, a notice that is "up" holds.
"""

from __future__ import annotations

ON_AND_OFF = r"""
# off
^off with (<the> [\w'-]+)\b => must I take off \1
^((?:(?!\b(?:is|are|was|were|may|can|must|should|could|do|does|did|i|or|how|if|with
    |have)\b)[^.;:?!])*[,.;:] )?(?:so |then |and )?((?:<the> )?(?:(?!(?:and|so|then|is|are|may|can|must
    |should|do|does|a|i|or|but)\b)[\w'-]+ ){1,3})(?:obviously |surely |presumably |definitely |certainly
    \s|naturally |clearly |of course |always |then )(?:has to be |have to be |to be |must be )?off\W*$
     => \1must \2 be taken off?
^((?:<the> )?(?!\b(?:is|are|may|can|must|should|do|does|if|when|how|what)\b)[\w' -]+?) ((?:in|on|at|with
    |during|while|when) [^,;.?!]+),? (?:so )?(?:obviously|surely|presumably|definitely|certainly|naturally
    |clearly|of course) off\W*$ => must \1 be taken off \2?
# out off
(?:^|(?<=[,.;:!?]) )(?:so |and |then )?(?:(?:do|must|should|shall) (?:i|we) (?:really |still |now
    \s)?(?:have to\s|need to )?|(?:have|has) (?:i|we) (?:got )?to )?(?:take|whip|slip|pull) (it|them|this
    |these) off
    ((?: (?:in|on|at|when|while|if|for|during|afloat|ashore|indoors|outdoors|airside)\b[^.;?!]*)?)\W*$
     => must I take \1 off\2?
^(?=.*\b(?:ear|nose|lip|navel|studs?|earrings?|piercings?|hoops?|sleepers?)\b)(.*?[,.;:!?]) (?:so |and
    \s|then )?(?:(?:do|must|should|shall) (?:i|we) (?:really |still |now )?(?:have to |need to )?|(?:have
    |has) (?:i|we)\s(?:got )?to )?(?:take|pull) (it|them|this|these) out
    ((?: (?:in|on|at|when|while|if|for|during|afloat|ashore|indoors|outdoors|airside)\b[^.;?!]*)?)\W*$
     => \1 Must I take \2 off\3?
# take lose drop remove put
^(?:i(?:'ve| have)(?: got)? |with |wearing )?((?:two|three|four|five|six|seven|eight|nine|ten|\d{1,2}))
    \s([\w'-]+(?: [\w'-]+)?)(?: showing| on show| visible| on| up| in)?(?: at once|
    \stogether)?\s*[,.;:-]+ (?:so )?(?:do|must|should|shall|have) (?:i|we) (?:have to |need to\s|got to
    \s|to )?(?:take|put|lose|drop|remove|pull) (?:one|two|some|a couple|the rest)(?: of them)?(?: (?:out
    |off|down|away))?\W*$ => is it forbidden to wear \1 \2?
# sleeve sleeves hem hems trousers skirt leg legs cuff cuffs
^(?:<the> )?(sleeves?|hems?|trousers|skirt|legs?|cuffs?) (?:on|of) (<the> [\w'-]+(?: [\w'-]+)?) (?:is|are)
    \s(?:a bit |a little |a touch |far |much |way |just )?too long(?: for me| on me)?[,.;:-]+ (?:so |and )?
    (can|may|could|must|should|shall) (<i>) (?:have to )?(?:take|turn|cut|sew) (?:it|them) (?:up|down
    |short|shorter)( myself)?\W*$ => \3 \4 shorten the \1 of \2\5?
^(?:<the> )?([\w'-]+(?: [\w'-]+)? (?:sleeves?|hems?|trousers|skirt|legs?|cuffs?)|trousers|skirt) (?:is|are)
    \s(?:a bit |a little |a touch |far |much |way |just )?too long(?: for me| on me)?[,.;:-]+ (?:so |and )?
    (can|may|could|must|should|shall) (<i>) (?:have to )?(?:take|turn|cut|sew) (?:it|them) (?:up|down
    |short|shorter)( myself)?\W*$ => \2 \3 shorten the \1\4?
# taken let
\b(?:have|get|having|getting) (<the> (?:[\w'-]+ )?[\w'-]+) taken in,? (?:to|so (?:that )?(?:it|they))
    \s(?:make (?:it|them) |be |is |are |sits? )?(?:tighter|slimmer|narrower|smaller|closer)\b => taper \1
\b(?:have|get|having|getting) (<the> (?:[\w'-]+ )?[\w'-]+) (?:taken (?:in|up)|let (?:out|down))\b(?:(?:
    \sa (?:bit|little))?,? (?:to|so (?:that )?(?:it|they)) (?:make (?:it|them) )?(?:fits?)(?: (?:me|better
    |properly))?)? => alter \1
# stays stay comes goes remains
(?:^|(?<=[,.;:!?]) )((?:<the> )?[\w'-]+(?: [\w'-]+)?) (?:stays?|comes?|goes|remains?) (?:with me|with us
    |on me|along|on my person)(?= (?:in|on|at|when|while|if|afloat
    |ashore|airside|indoors|outdoors)\b|\W*$) => may I carry \1
# staying keeping
^(?:i'm|i am) keeping (<the> [\w' -]+?)[,.;:-]+ (?:<so>|<echo>)\W*$ => may I wear \1?
^(?:i'm|i am) keeping (<the> [\w' -]+?)[,.;:-]+ (?:(?:is there )?(?:anything|something|any rule|a rule)
    (?: in <books>)? (?:against|to stop)(?: it| that| them| me)?|any objections?)\W*$
     => is there a rule against wearing \1?
^(<the> [\w' -]+?)(?:'s| is| are) (?:staying|stopping|here to stay|not coming off)(?: on| put)?[,.;:-]+
    \s(?:<so>|<echo>)\W*$ => may I wear \1?
^(<the> [\w' -]+?)(?:'s| is| are) (?:staying|stopping|here to stay|not coming off)(?: on| put)?[,.;:-]+
    \s(?:(?:is there )?(?:anything|something|any rule|a rule)(?: in <books>)? (?:against|to stop)(?: it
    |\sthat| them| me)?|any objections?)\W*$ => is there a rule against wearing \1?
# show shows showing seen visible shown displayed
\b(how many [\w' -]+?) (?:(?:can|may|could|must|should) (?:be (?:seen|visible|showing|shown|displayed|on
    \sshow)|show)|(?:is|are) (?:allowed|permitted) to (?:show|be seen|be visible))\b => \1 may be worn
^(?:i(?:'ve| have)(?: got)? |with )(?:(?:two|three|four|five|six|seven|eight|nine|ten|\d{1,2}))
    \s([\w'-]+(?: [\w'-]+)?)[,.;:-]+ (?:so )?how many (?:of them )?(may|can|must|should) i (?:show|wear
    |put up|have up|display|have on)\W*$ => how many \1 \2 I wear?
\b(hair|fringe|beard|hem|cuff|liner|lining|strap|chain) shows? (?=(?:about |some |a good )?\d) => \1 is\s
\b(is|are|was|were) ([^,.;?]+?) (all right|fine|ok|okay|allowed|permitted),? (?:if|provided|providing
    |(?:so|as)\slong as)(?: that)? (?:it|they) (?:can't|cannot|can not|couldn't|won't|isn't|aren't
    |doesn't|don't|is not|are not|does not|do not)(?: be)? (?:seen|visible|show|showing|on show|noticed
    |shown)\W*$ => \1 \2 \3 out of sight
^((?:<the> )?(?!\b(?:what|which|how|where|when|who|is|are|may|can|must|do|does)\b)[\w' -]+?)[,;:-]+
    \s(?:and )?(?:can|may|could|should|might) (?:people|anyone|anybody|others|everyone|everybody|passengers
    |visitors|guests) see (?:it|them)\W*$ => may \1 be seen?
^(?:and |so )?(?:can|may|could|should|might) (?:people|anyone|anybody|others|everyone|everybody|passengers
    |visitors|guests) see (it|them|<the> [\w'-]+(?: [\w'-]+)?)\W*$ => may \1 be seen?
# notice warning signal
\b((?:<the> )?(?:[\w'-]+ )?(?:notice|warning|signal))(?:'s| is| are| was| has been) (?:now )?(?:up|posted
    |out|put up|hung out|on the (?:door|board|wall)|up on the (?:door|board|wall))(?=[.,;:!?]| (?:and
    |so)\b|$) => \1
# goes go hangs hang sits sit
^(?:on|at|in|round|around) (?:which|what) [\w-]+(?: or [\w-]+)? (?:does|do|must|should) (<the> [\w'
    \s-]+?) (?:go|hang|sit)\b => where is \1 worn
^(?:on|at|in|round|around) (?:which|what) [\w-]+(?: or [\w-]+)? (<the> [\w' -]+?) (?:goes|go|sits|sit
    |hangs|hang)\W*$ => where is \1 worn?
^(?:on|at|in|round|around) (?:which|what) [\w-]+(?: or [\w-]+)? (?:goes|go|sits|sit|hangs|hang) (<the>
    \s[\w'-]+(?:[\w'-]+)?)\b => where is \1 worn
# low
^how (?:low|far down|high|far up) (?:may|can|must|should|could|do|does) ((?:<the> )?[\w'-]+) (?:go|come
    |reach|end|extend|get|grow)\W*$ => where must \1 end?
# buttons
\b(?<!top )(?<!last )(?:(?:with|the|my|some|all) )*buttons (undone|open|unfastened) (?:on|of) (<the>
    \s[\w'-]+(?: [\w'-]+)?)\b => \2 \1
# showing visible hanging sticking undone
^(<the> [\w' -]+?)(?:'s| is| are) (showing|visible|hanging out|sticking out|on show|undone)[,.;:-]+ (?:so
    \swhat|so|<so>)\W*$ => may \1 be \2?
# hood hoods
\b(hoods?(?: of [\w -]+?)?) (?:go|goes|come|stay|be put|be left) up\b => \1 be up
# wind
^(?:at|in|from|above|up to|under) (?:what|which) (?:winds?(?: speed| strength)?|strength of wind)
    \s(?=(?:may|can|must|should|could)\b) => when\s
# keep always never
^(?:i|we) (?:keep|always|am always|can never|never) (?:forgetting|forget|mixing up|remember|recall) <the>
    \s((?:size|length|width|height|depth|colour|order|number|position|place) of [^.;?!]+?)\W*$
     => what is the \1?
# faces points face point facing
^(?:which|what) (?:end|side|edge|face|part) of (<the> [\w'-]+(?: [\w'-]+)?) (?:faces?|points?|goes|is
    \sfacing)(?: the| to the)? (?:outwards?|inwards?|out|in|up|down|upwards?|downwards?|forwards?
    |backwards?|front|back|left|right|top)\W*$ => how is \1 worn?
"""
