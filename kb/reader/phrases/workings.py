"""What is done to a thing, and what is asked of that: "have it taken up", "write my name in it", "Fair?".

Written as the lines of `sayings.py` are.
"""

from __future__ import annotations

_LATELY = (
    r"(?:,? (?:(?:at|over) the weekend|last (?:night|nite|week|month|weekend)|yesterday|recently|lately"
    r"|this morning|\w+ (?:days?|weeks?|months?) ago))?"
)
_HUE = (
    r"((?:(?:bright|dark|light|pale|deep|neon|hot|pastel|electric|vivid|bottle|sky|ash|platinum) )?"
    r"(?!(?:at|for|in|on|and|or|before|while|when|with|if|by|to|the|my|again)\b)[a-z]+)"
)
_PUT_IN = "put|chuck|bung|throw|sling|stick|pop|shove|toss|stuff|run|wash|clean|dry|do"
_WASHER = r"washing[- ]?machine|washer|machine(?= (?:on|for) (?:an? )?(?:\w+ )?(?:wash|cycle|programme))"
_DRYER = "(?:tumble[- ]?)?(?:dryer|drier)"
_TEXT = (
    r"(?:(?:(?:<own>|the|an?)(?: own| full| first)? )?(?:nicknames?|names?|initials|surnames?)"
    r"|[\"'‘“][\w -]{1,20}[\"'’”])"
)
_WORN = r"(?![\w -]*(?:badge|plate|strip|tape|tab|label|tag|plaque)\b)"
"""What is not made to bear a name."""
_PENNED = "put|written|wrote|sewn|sewed|stitched|embroidered|printed|inked|painted"
_DYED = "(?:dyed|bleached|tinted|coloured)"
CORRECTED = (
    "pulled up", "picked up", "written up", "told off", "ticked off", "marked down", "sent back", "sent home",
    "sent away", "sent off", "hauled up", "reported", "reprimanded", "faulted", "failed", "rebuked",
)  # fmt: skip
_CORRECTED = f"(?:{'|'.join(CORRECTED)})"

_NEXT = {
    "one": ("second", "two"),
    "two": ("third", "three"),
    "three": ("fourth", "four"),
    "four": ("fifth", "five"),
}
_ONE_MORE = "\n".join(
    rf"^(?:i|he|she|we)(?:['’]ve|['’]s| have| has)? (?:already )?(?:wears?|have|has|got|owns?)?(?: on)?"
    rf" ?{number} ([\w' -]+?)(?: on| already)? (?:and|but) (?:i |he |she |we )?"
    r"(?:wants?|would like|['’]d like|fancy|need)(?: to (?:wear|have|add|put on))?"
    rf" (?:an? {ordinal}|another|one more|an extra)(?: one)?(?: on)?[.,;?!]*"
    rf"(?: (?:any chance|<so>|(?:may|can|could) <i>(?: do that)?|<fine>))?\W*$ => may I wear {following} \1?"
    for number, (ordinal, following) in _NEXT.items()
)
MISLEADING_WORKINGS = rf"""
# watch
\b(?:doing|standing|working|pulling) (?:(?:my|the|a|his|her|our|their|first|next|middle|night|day) )*
    watch\b(?! (?:rig|coat|cap|dress|bill|keep|leader)) => on watch
\b(?:did|stood|worked) (?:(?:my|the|a|his|her|our|their|first|next|middle|night|day) )*watch\b
    (?! (?:rig|coat|cap|dress|bill|keep|leader)) => was on watch
\b(?:do|stand|work|pull) (?:(?:my|the|a|his|her|our|their|your|first|next|middle|night|day) )*watch\b
    (?! (?:rig|coat|cap|dress|bill|keep|leader)) => go on watch
# covered
^(?:is|are|must|should|do|does|has|have) (.+?) (?:(?:have|need) )?(?:got )?(?:to )?be covered(?: up| over)?
    \s(?:with|by) (<the> (?:[\w'-]+ )?(?:net|snood|hood|cap|hat))((?: (?:in|on|at|while|when) [^.;?!]+)?)\W*$
     => must I wear \2 with \1\3?
^(?:may|can|could) (.+?) be covered(?: up| over)? (?:with|by) (<the> (?:[\w'-]+ )?(?:net|snood|hood|cap|hat))
    ((?: (?:in|on|at|while|when) [^.;?!]+)?)\W*$ => may I wear \2 with \1\3?
# uniform outfit attire dress rig
^(?:so |and )?what(?:['’]s| is| are) the (?:proper |correct |right |full |usual |official )?(?:uniform|outfit
    |attire|dress|rig|get-?up) (?:for|worn by) (?!the day\b)([\w' -]+?)\W*$ => what do I wear for \1?
# coloured colored
^(?:(?:can|may|could) <subject> (?:<wear>|keep)|(?:are|is)) (?:<the> |some )?(?:(?:brightly|vividly
    |strongly|darkly)\s)?colou?red ([\w' -]+?)( (?:in|on|at|with|when|while|for|as) [^.;?!]+)?(?: <fine>)?\W*$
     => what colour may the \1 be\2?
# new fresh replacement replacements
^(?:and |so )?(?:when|how (?:often|soon)) (?:do|does|can|will|would|may) <subject> (?:get|have|draw|claim
    |expect|be (?:given|issued(?: with)?)|receive|ask for) (?:(?:an?|some|the|<own>) )?(?:new|fresh
    |replacement)(?: pairs? of)? (?!ones?\b)([\w' -]+?)\W*$ => how often is the \1 replaced?
# third second fourth fifth another more extra
{_ONE_MORE}
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
\b(?:take|taking) (<the> (?:[\w'-]+ )?(?:sleeves?|hems?|trousers|skirt|legs?|cuffs?)) up\b(?! (?:to|the|in)\b)
     => shorten \1
"""
"""Lines for what would be understood as it stands, but otherwise than it is meant."""

WORKINGS = rf"""
# dye dyed dyeing bleach bleached tint tinted colour coloured
\b(?:have|get) (<own> hair) {_DYED}\b => dye \1
\b(?:dye|bleach|tint|colour) <own> hair (?:(?:in|to) )?(?:an? )?{_HUE}\b => wear \1 hair
\b(?:i|he|she|we)(?:['’](?:ve|s)| have| has)? (?:just |gone and |had )?{_DYED} (<own>) hair {_HUE}{_LATELY}
     => \1 hair is \2
^(?:<own> )?hair(?:'s| is| was| has)?(?: been)? {_DYED} {_HUE}{_LATELY} => my hair is \1,\s
# machine washer dryer drier
\b(?:{_PUT_IN}) (<the> [\w' -]+?) (?:in|into|through) <the> (?:{_WASHER})\b => machine-wash \1
\b(?:{_PUT_IN}) (<the> [\w' -]+?) (?:in|into|through) <the> (?:{_DRYER})\b => tumble-dry \1
\b(<the> [\w' -]+?) (?:go|be (?:put|chucked|thrown|stuck|washed|cleaned|done)) (?:in|into|through) <the>
    \s(?:{_WASHER})\b => \1 be machine-washed
\b(<the> [\w' -]+?) (?:go|be (?:put|chucked|thrown|stuck|dried)) (?:in|into|through) <the>
    \s(?:{_DRYER})\b => \1 be tumble-dried
# natural normal
<sep>(?:(?:is|would|will) )?(?:that|it|this)?(?: be)? ?(?:natural
    |normal)(?:[- ]looking)? enough(?: for [\w' -]+)?\W*$
     => . Is that ok?
# trouble
<sep>(?:so )?(?:am|will|is) (?:i|he|she)(?: be)? in (?:any )?trouble(?: now| then| for (?:that|it|this))?\W*$
     => . Is that wrong?
# taken turned
\b(?:have|get|having|getting) (<the> [\w' -]+?) (?:taken|turned) up\b(?: (?:a (?:bit|little|touch|inch)
    |an inch)(?: or (?:so|two))?)?(?=[.,;?!]|\s*$| (?:by|in|at|for|if)\b) => shorten \1
# cut
\bcut (<the> [\w' -]+?) down(?: a (?:bit|little|touch))?(?: at the (?:top|bottom|back|front|sides?))?
    (?=[.,;?!]|\s*$) => alter \1
# pocket pockets zip loop dart darts gusset panel elastic velcro
\b(?:put|putting|sew|sewing|stitch|add|adding|fit|have|get) (?:an?|another|an extra|some|two) (?:extra |little
    |small |inside |inner |hidden )*(?:pockets?|zip|loop|darts?|gusset|panel|elastic|velcro) (?:put |sewn
    |added |fitted )?(?:on|onto|to|in|into|inside) (?=<the> ) => alter\s
# alteration change modification repair
<sep>(?:is|was|would) (?:that|it|this)(?: be)? an? (?:alteration|change|modification|repair) (?:that |which )?
    (?:<books>|they|you) (forbids?|bans?|prohibits?)\W*$ => . Is that forbidden?
<sep>(?:is|was|would) (?:that|it|this)(?: be)? an? (?:alteration|change|modification|repair) (?:that |which )?
    (?:<books>|they|you) (?:allows?|permits?|lets? <me> (?:do|make))\W*$ => . Is that allowed?
# name initials surname
\b(?:scratch|engrav|etch|carv)(?:e|ing)? (?:<own>|the|an?)(?: own| full)? (?:name|initials|surname)s? (?:in|on
    |into|onto|inside|across)(?: (?:the|its) (?:back|inside|lining|rear|reverse|underside) (?:of|in))?
    \s(?=<the> ) => mark\s
\b(?:writ|ink|stamp|sew|stitch|embroider|print|scribbl|put)(?:e|t?ing)? (?:<own>|the|an?)(?: own| full)?
    \s(?:name|initials|surname)s? (?:in|into|inside|on the inside of)(?: (?:the|its) (?:back|lining|label|hem
    |collar) of)? (?=<the> ) => mark\s
# name nickname initials surname stitched embroidered sewn printed stitch embroider
\b(?:have|get|having|getting) {_TEXT} (?:{_PENNED}) (?:on|onto|across|to)(?: <the> (?:back|front|outside
    |side) of)? (?=<the> {_WORN}) => inscribe\s
\b(?:writ|ink|stamp|sew|stitch|embroider|print|paint|scribbl|put)(?:e|t?ing)? {_TEXT} (?:on|onto|across)(?:
    \s<the> (?:back|front|outside|side) of)? (?=<the> {_WORN}) => inscribe\s
^(?:<the> [\w-]+|<i>)(?:'s| has| have|'ve)? (?:{_PENNED}) {_TEXT} (?:on|onto|across) (<the> [\w' -]+?)<sep>
    (?:<so>|allowed)\W*$ => may I inscribe \1?
\b(may|can|could|must|should|is|are) {_TEXT} (?:be )?(?:{_PENNED}) (?:on|onto|across) (?=<the> {_WORN})
     => \1 I inscribe\s
# neater smarter bright shiny clean warm warmer dry
^(?!.*\b(?:wear|carry|own|have on)\b)((?:may|can|could|should|must|am i allowed to) .+?),? (?:just |only
    |so as |in order )?to (?:keep|make|get) (?:it|them|<the> [\w-]+)(?: look| feel)?
    \s(?:neater|smarter|bright|shiny|clean|warm|warmer|dry)\W*$ => \1?
# fair right rightly justified correct unfair unfairly unjust wrongly
,? (?:and|so|but) (?:i|he|she|we|they) (?:was|were|got|have been|has been|had been) {_CORRECTED}(?: (?:for
    |over
    |about|on) (?:it|that|them|this))?[.,;:] (?:(?:was|is) (?:that|it|he|she|they) )?(?:fair|fair enough|right
    |rightly(?: so)?|justified|correct|unfair(?:ly)?|unjust(?:ly)?|wrongly)\W*$ => ?
# holes eyelets
\b(?:leave|skip|miss) (?:out )?(?:the )?(?:top|bottom|last|upper|first)?(?: \w+)? (?:lace )?(?:holes?
    |eyelets?)
    \s(?:(?:open|undone|empty|free|unlaced|unused) )?(?:of|on|in) (?=<the> ) => have half laced\s
# laced buttoned done zipped fastened closed hooked
^(?:laced|buttoned|done up|zipped|fastened|closed|hooked)(?: all the way)?(?: up)?(?: to the top)?,? or
    \s(?=(?:can|may|could) ) =>
,? or (?:can|may|could) (?:it|they|i|we) (?:\w+ (?:it|them) )?(?:(?:be|hang|stay|go|wear|flap|left) )*(?:open
    |loose
    |undone|unbuttoned|unlaced|unzipped|unfastened)\W*$ => ?
# using wearing needed
,? (?:when|while|if) (?:i'm|i am|he's|she's|they're|they are|it's|it is) not (?:using|wearing
    |needed|needing|in use)(?: (?:it|them))?(?=\W*$|[,;.]) =>
# ought
^(.*?)\bought (<the> [\w' -]+?) (?:to )?(?=be ) => \1must \2\s
# choice
<sep>(?:is|would) (?:that|it|this)(?: be)? (?:my|our|his|her) (?:own )?choice(?: to make)?\W*$ => , ok?
# done
<sep>(?:is|would) (?:that|it|this)(?: be)? (?:ever )?(?:done|the done thing)\W*$ => , ok?
"""
