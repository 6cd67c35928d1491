"""Who starts somewhere, what is put on to do something, a pocket that a thing is carried in, and short ways.

Lines as in `sayings.py`.
"""

from __future__ import annotations

_SOON = (
    r"(?: (?:today|tonight|tomorrow|soon|shortly|(?:this|next) (?:week|month|year|term|season"
    r"|morning|evening)"
    r"|(?:on |next |this )*(?:mon|tues|wednes|thurs|fri|satur|sun)day))"
)
_BEGIN = r"(?:start(?:s|ed|ing)?|begin(?:s|ning)?|began|going|moving|move|transfer(?:red)?)"
_HAD = (
    r"(?:phones?|mobiles?|mobile phones?|telephones?|smartphones?|keys|penknife|pocket knife"
    r"|knife|lighter|torch"
    r"|radio|whistle|pen|cigarettes|wallet|vape)"
)
_POCKET = (
    r"(?: (?:off|on silent|switched off|turned off))?,? (?:in|inside) (?:my|the|a|his|her|our|your|their)"
    r" (?:(?:back|hip|side|top|breast|jacket|coat|shirt|trouser|front|inside|left|right|closed"
    r"|zipped) )*pockets?"
)
_NIP = r"(?:nip|pop|dash|slip|sneak|run|dart|head|hop|step|wander|stroll|walk|go|come)"
_NIPPING = (
    r"(?:nipping|popping|dashing|slipping|sneaking|running|darting|heading|hopping|stepping"
    r"|wandering|strolling"
    r"|walking|going|coming)"
)
_WAY = r"(?: (?:about|back|off|straight|over|out|along|down|up|round|across|just|quickly))*"
_TO = r"(?:to|into|in|through|onto)"
_THERE = (
    r"(?:the|our) (?!(?:funeral|wedding|parade|dinner)\b)[a-z]+"
    r"(?:[ -](?!in |with |wearing )[a-z]+){0,4}?"
)
_SPELL = (
    r"(?:,? (?:for|just for) (?:a |an |one |two |five |ten )?(?:minutes?|moment|second|sec|mins?"
    r"|tick|bit|while))?"
)

BEGINNINGS = rf"""
# put
\b(what (?:all )?(?:do|does|must|should|shall|would|did|have|has) .+?) put on to
    \s(?!(?:the|my|our|his|her|their|an?|it|them|this|that|go|come|get|match|look|keep|stay|feel
    |avoid|save)\b)(?=[a-z]+\b)
     => \1 wear to\s
# year
,? (?:at |for )?this time of (?:the )?year\b => today
# start starts started starting begin begins beginning began going moving move transferred transfer
^((?:[^.?!;]*[.;] )?)(?:i|we)(?:'m|'re|'ll| am| are| will)? {_BEGIN}{_SOON}? (on|in
    |at) (<the> [\w' -]+?){_SOON}?
    (?:,? (?:my )?first (?:day|week|month|season|winter|summer|term)(?: here| ever)?)?(?=[.;!])
     => \1I am \2 \3
# starter starters
^(?:i'm (?:a )?|we're |i am (?:a )?)?new starters? (?:here )?(?=(?:in|on|at) the\b) => I am\s
# pocket pockets
^((?:[^?]*[.;,:] )?)(?:my |a |the )?({_HAD}){_POCKET}(?:,? or not|:? (?:ok|okay|fine|allowed|all right
    |alright|yes or no))?
    \W*$ => \1may I carry my \2?
\b(can|may|could|must|should) (<i>) (?:just |still )?(?:have|keep|carry|put|leave|stick|stow|bring|take)
    \s((?:my |a |the |our )?{_HAD})(?: on me)?{_POCKET} => \1 \2 carry \3
# nip pop dash slip sneak run dart head hop step wander stroll walk go come
\b(can|may|could|if|when) (<i>) (?:just |only |quickly )?{_NIP}{_WAY} {_TO} ({_THERE}){_SPELL}
    \s(?:in|wearing|with) ((?:my|our|his|her|their) [\w' -]+?)(?: on)?(?=\W*$|[.,;?]) => \1 \2 wear \4 in \3
# nipping popping dashing slipping sneaking running darting heading hopping stepping wandering strolling
     walking going coming
^((?:[^.?!;]*[.;!] )?)(i'm an? [\w' -]+?) and (?:i'm )?(?:(?:just|only) )*{_NIPPING}{_WAY} {_TO}
    \s({_THERE}){_SPELL}(?=\s*[.,;!:]) => \1\2. I am in \3
^((?:[^.?!;]*[.;!] )?)(?:i'm |i am |we're |we are )?(?:(?:just|only) )+{_NIPPING}{_WAY} {_TO}
    \s({_THERE}){_SPELL}(?=\s*[.,;!:]) => \1I am in \2
"""
