"""What one does with a thing that comes to wearing or carrying it, and where; lines as in `sayings.py`."""

from __future__ import annotations

from kb.reader.phrases.leads import KIN
from kb.reader.words.forms import word_set

_MOVE = r"(?:come|walk|wander|pop|nip|get|go|run|dash|step|slip|head|hop|stroll|travel|cycle|drive|bike)"
_WAY = r"(?: (?:about|back|off|straight|over|out|along|down|up|round))?"
_BY = r"(?: (?:on|by|in) (?:the |my |a )?(?:bus|train|tram|bike|bicycle|car|tube|ferry|coach))?"
_IN = r"(?:in|wearing|with)"
_OURS = word_set("lad lass boy girl missus hubby bloke fella youngest eldest")
KIN_WORDS = "(?:" + "|".join(sorted(f"(?:late |old |dear |own )*{word}" for word in KIN | _OURS)) + ")"
_DOINGS = """
serve/serving drive/driving fly/flying ride/riding cook/cooking paint/painting clean/cleaning dig/digging
eat/eating dance/dancing teach/teaching climb/climbing row/rowing sail/sailing lift/lifting
"""
_DONE = "".join(
    rf"""# {one}
\b(can|may|could|might|must|should) (<i>) (?:just |still |even )?{one} in (my|our|his|her|their) ([\w' -]+?)
    (?=\W*$|,| instead\b| rather\b) => \1 \2 wear \3 \4 when {doing}
"""
    for one, _, doing in (pair.partition("/") for pair in _DOINGS.split())
)

HANDLINGS = (
    rf"""
# clip tack velcro pop slap bung whack
\b(can|may|could) (<i>) (?:just )?(?:clip|tack|velcro|pop|slap|bung|whack) (<the> [\w' -]+?)
    \son(?:to)?((?: to)? (?:the|my|our|his|her|their) [\w' -]+?)?(?=\W*$|,| if\b| when\b| while\b| for\b)
     => \1 \2 wear \3 on\4
# round around across along through over inside past
\b(can|may|could|might|must|should) (<i>) (?:just |quickly )?{_MOVE}{_WAY} (?:round|around|across|along
    |through|over|inside) (<the> [\w' -]+?) (?:with|wearing|in my) (?:my |an? |the )?([\w' -]+?)(?: on)?\W*$
     => \1 \2 wear my \4 in \3?
# outside outdoors indoors inside
\b(can|may|could|might|must|should) (<i>) (?:just |quickly )?{_MOVE}{_WAY} (outside|outdoors|indoors|inside)
    (?: for [\w' -]+?)? {_IN} (<the> [\w' -]+?)(?: on)?\W*$ => \1 \2 wear \4 \3?
# home
\b(can|may|could|might|must|should) (<i>) (?:just )?{_MOVE}{_WAY} home{_BY} {_IN} ((?:<the> )?[\w' -]+?)
    (?: on)?(?=\W*$|,| if\b| when\b) => \1 \2 wear \3 on the way home
# down up over across along out round back
\b((?:take|carry|bring|wear) <the> [\w-]+(?: [\w-]+)?) (?:down|up|over|across|along|out|round|back) (?=(?:to
    |onto|into) (?:the|our)\b) => \1\s
# sew stitch
\b(can|may|could) (<i>) (?:just )?(?:sew|stitch) (<the> [\w' -]+?) on(?=\W*$) => \1 \2 wear \3
# dab drop touch splash squirt spray spritz hint spot lick dash whiff trace smidgen smear
\b(?:just |only )?an? (?:tiny |little |small |wee )?(?:dab|drop|touch|splash|squirt|spray|spritz|hint
    |spot|lick|dash|whiff|trace|smidgen|smear) of (?=\w) =>
# back in
\b(?:hand|give|turn|send) (everything|all <the> [\w'-]+|[\w' -]*?\b(?:stuff|kit|gear|things|clobber
    |belongings)) (?:back|in)(?=\W*$|,| (?:when|if|after|once|on|by|before|at)\b) => return \1
# stuff kit gear things clobber belongings
\breturn (?:all )?<the> (?:stuff|kit|gear|things|clobber|belongings)\b => return everything issued
\bwhen (?:does|do|must|should|will) (?:all )?<the> (?:stuff|kit|gear|things|clobber) (?:have to\s
    |need to )?(?:go|come|be handed|be given|be sent) back\b => when must I return everything issued
# boiling roasting baking sweltering scorching sizzling heatwave
^(who\b.*?) (?:(?:when|if|while|once) it(?:'s| is| gets) (?:boiling|roasting|baking|sweltering|scorching
    |sizzling)(?: hot)?|(?:in|during) (?:a|the) heatwave)\b => \1 in hot weather
# bare legs legged
\b(can|may|could) (<i>) (?:have|go|be|keep) (?:with )?(?:<the> )?bare[ -]?leg(?:s|ged) (?:with|in|under)
    \s(<the> [\w' -]+?)(?=\W*$|[.,;]| (?:in|on|at|for|when|if|while)\b) => \1 \2 wear \3 without tights
^(.*\bskirt\b.*?),? (?:(?:and|with|but) )?bare[ -]?leg(?:s|ged)\b => \1 without tights
\b(?:with )?bare[ -]hands\b => without gloves
# ears eyes head hands feet face mouth
\b(?:do|must|should|will) (<i>) (?:have to |need to )?(?:need|want|wear|have|put)(?: on)? (?:something
    |anything) (over|on|in|for) (<the> (?:ears|eyes|head|hands|feet|face|mouth))\b => what must \1 wear \2 \3
(?:^|(?<=[.;:,!] ))(?:something|anything) (over|on|in|for) (<the> (?:ears|eyes|head|hands|feet|face
    |mouth))\W*$ => what must I wear \1 \2?
# to
^(?:and |so )?what (?:do|must|should|shall|would) (<i>) (?:(?:need|have) to )?(?:put on|wear|need) to
    \s(?!(?:wear|have|put|carry|own|bring|know|do|be|get|take|buy|show)\b)([a-z]{{2,}}?)e?\b
    ((?: [\w' -]+?)?)\W*$ => what do \1 wear when \2ing\3?
# doing
(?:^|(?<=[.;!] ))(?:(?:i|we)(?:'m| am|'re| are) )?doing (<the> [\w' -]+?), => on \1,
# full proper fledged qualified real actual regular ordinary
\b((?:i|we)(?:'m|'re| am| are)|as) (an?) (?:full|proper|fully[ -](?:fledged|qualified)|real|actual|regular
    |ordinary) (?=[a-z]) => \1 a\s
# ordinary normal regular standard typical everyday
\b(?:an?) (?:ordinary|normal|regular|standard|typical|everyday) (?=[a-z]) => a\s
# shave
^(.*\b(beard|moustache|goatee|whiskers)\b.*)\bshave (?:it|this|that|them)(?: all)?(?: off)?(?=\W*$
    | (?:for|when|while|if|before)\b) => \1shave off my \2
# grew grown growing
\b(?:i|we)(?:'ve|'m| have| am)? (?:just )?(?:grew|grown|growing) (?:an?|my|the) (?:beard|moustache|goatee
    |whiskers)(?: (?:over|during|on|in) (?:(?:the|my) )?(?:holidays?|leave|summer|winter|weekend|christmas
    |break))?(?:,? (?:and|so)(?: now)?|[.,;]) (?=.*\bshave off my\b) =>
# day
,? all day(?: long)?(?=\W*$|[.,;]) =>
# say says
\bwho (?:can|may|could|gets to|has to) say (?:that )?(<i>|<the> [\w' -]+?) (?:can |may )?(take|leave)(?= )
     => who can let \1 \2
\bwho (?:can|may|could|gets to|has to) say (?:that )?(<i>|<the> [\w' -]+?) (?:can |may )?(?:go|do) without\b
     => who can let \1 go without
\bwho (?:can|may|could|gets to|has to) say (?:that )?(<the> [\w' -]+?) (?:can |may )?(?:comes?|goes?) off\b
     => who can let us take off \1
# two three four five
\ball (?:two|three|four|five) (?:of (?:them|these) )?(?=(?:at once|together|at the same time)\b) => all\s
# promised love like want wanted
^(?:my|our) {KIN_WORDS} (?:has |have |just )*(?:gave|bought|made|knitted|drew|left|sent|got) me (an?|this
    |some) ([\w' -]+?)(?: for [\w' -]+?)?,? and i(?:'ve| have|'d| would)?(?: promised (?:him|her|them)
    (?: that)? i'd|(?: really)?(?: love| like| want| wanted) to) (put|pin|stick|clip|hang|fix)
    \s(?:it|them|this)( [\w' -]+?)[.;,!?]+ (?:surely |so |and )?(?:that|it|is|are|any|no|nobody|would|will
    |ok|okay|alright|allowed)\b[^.?]*\?$ => may I \3 \1 \2\4?
# stud studs brooch anklet choker earring locket sunglasses penknife lighter smartwatch rucksack backpack
(?:^|(?<=[.;,!] ))(?:my|our|his|her|the) {KIN_WORDS} (?:has |have |just |only |once )*(?:gave|bought|got
    |sent) me ((?:an?|some|this|these) [\w' -]*?(?:studs?|brooch|anklet|choker|earrings?|locket|sunglasses
    |penknife|lighter|smartwatch|rucksack|backpack))(?: for (?:my|our|his|her) [\w' -]+?
    | for (?:christmas|xmas))?(?=[.,;!]) => I have \1
# past
\bpast (?=the (?!(?:\w+ )?(?:collars?|knees?|ears?|shoulders?|elbows?|wrists?|eyebrows?|corners?|hips?|lips?
    |hour|end|edge|hem|cuffs?|chin|jaw|waist)\b)[a-z]) => beyond\s
# enough sufficient
^(?:is|are|will|would) ((?:<the> )?[\w' -]+?) (?:be )?(?:good enough|enough|sufficient)((?: (?:for|in|at|when
    |on|near|while) [\w' -]+?)?),? or (?:do|must|should|have) (<i>) (?:have to |need to |got to |also )*
    (?:need|wear|have|put on|put)(?: on)? (<the> [\w' -]+?)(?: too| as well| on top| on| instead| also)*\W*$
     => must \3 wear \4\2?
"""
    + _DONE
)
