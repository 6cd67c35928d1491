"""Ways of asking which, what all, one side or both, and when a thing comes out; lines as in `sayings.py`."""

from __future__ import annotations

from kb.reader.phrases.leads import KIN
from kb.reader.words.forms import word_set

_KIN = "|".join(sorted(KIN))
# Of whom a standing is told: who is told to be nothing of the service may be no member of it.
_FELLOWS = KIN | word_set("oppo pal buddy chum boss gaffer colleague shipmate workmate flatmate apprentice")
_MEN = "|".join(sorted(_FELLOWS))
_OF_THEM = (
    r"^(?:(?=.*\b(?:may|can|could|must|should|does|do|is|has|need) (?:he|she)\b)"
    rf"|(?!.*\b(?:i|me|mine|myself)\b)(?!.*\bmy (?!(?:[\w-]+ )?(?:{_MEN})\b)))"
)
# It is asked of them, or nothing else of one's own is spoken of; and something is asked, in the same text.
_STANDING = r"(?=(?:an? |[a-z]{1,3}\d\d?\b).*[.,;:?!–-]\s+\w)"
BOTH = rf"""
# {" ".join(sorted(_FELLOWS))}
{_OF_THEM}(.*?\b(?:my|our|his|her|the) (?:[\w-]+ )?(?:{_MEN}))'s (?:(?=not )|{_STANDING}) => \1 is\s
{_OF_THEM}(.*?\b(?:my|our|his|her|the) (?:[\w-]+ )?)(?:{_MEN})((?:,? who(?:'s| is)| is|,)(?: just
    | now| only)?|(?: has)?(?: just)? made) {_STANDING} => \1colleague\2\s
# thing things garment garments gear stuff item
\b(which|what) (?:hi|high)[- ]?vi[sz](?:ibility)? (?:things?|garments?|gear|stuff|item)(?: (?:goes|go) on
    |\sdo (?:i|we) (?:put|have|need)(?: on)?) => \1 hi-vis do I wear
\b(which|what) (?:hi|high)[- ]?vi[sz](?:ibility)? (?:things?|garments?|gear|stuff|item) (?=(?:do|must|should
    |may|can|shall)\b) => \1 hi-vis\s
# mustn't
\bmustn't (?=(?:be|wear|have|carry|use|show|put|take|get|go|do|keep|leave)\b) => must not\s
# one single both
^(?:<the> )?([\w' -]+?)(?: -+|:|,|;)? (?:on |at )?(?:one|a single|just one) (?:shoulder|sleeve|arm|side|breast
    |wrist|hand|leg|collar|lapel|ear|cuff) or (?:both|two|each)\W*$ => where are the \1 worn?
^(?:on )?(?:one|a single|just one) (?:shoulder|sleeve|arm|side|breast|wrist|hand|leg|collar|lapel|ear
    |cuff) or\s
    (?:both|two|each) (?:for|with) (?:<the> )?([\w' -]+?)\W*$ => where are the \1 worn?
^(?:<the> )?([\w' -]+?)(?: -+|:|,|;) (?:just )?one or (?:two|more|several|both)\W*$ => how many \1 may I wear?
^(?:just )?one ([a-z][\w-]+) or (?:two|more|several)\W*$ => how many \1s may I wear?
"""

CHOOSINGS = rf"""
# rather sooner
(?<=\w) (?:says?|said|thinks?|reckons?|feels?)(?: that)? (?:<i>)(?:'d| would) (?:much |far )?(?:rather|sooner)
    \s<wear> (?!no\b|nothing\b)([^.;,?!]+?) than (?:<wear> )?([^.;,?!]+?)(?=[.;,?!]|$)
     => \swants to wear \1 instead of \2
\b(<i>)(?:'d| would) (?:much |far )?(?:rather|sooner) <wear> (?!no\b|nothing\b)([^.;,?!]+?)
    \sthan (?:<wear> )?([^.;,?!]+?)(?=[.;,?!]|$) => \1 want to wear \2 instead of \3
(?<=\w) (?:says?|said|thinks?|reckons?|feels?)(?: that)? (?:<i>)(?:'d| would) (?:much |far )?(?:rather|sooner)
    \s(?=<wear> ) => \swants to\s
# prefer prefers
(?<!would )(?<!'d )\bprefers?(?: to wear| wearing)? ((?:<the> )?[\w' -]+?) to (?:wearing )?(<the> [\w' -]+?)
    (?=[.;,?!]|$) => wants to wear \1 instead of \2
\b(?:would|'d) prefer(?: to wear| wearing)? (<the> [\w' -]+?) to (?:wearing )?(<the> [\w' -]+?)(?=[.;,?!]|$)
     => wants to wear \1 instead of \2
# want wants
^(?:my|our|his|her|the) (?:[\w-]+ )?(?:{_KIN}) wants to (?=<wear> )([^.;?!]+?)\W*$ => may I \1?
^(<i>|<the> [\w' -]+?) wants? to (?=<wear> )([^.;?!]+?)\W*$ => may \1 \2?
# everything all whatever
^(?:.*?\b)?(?:list|name|give|tell|show)(?: me| us)? (?:everything|all|whatever)(?: that| which)?(?:\s
    (?:goes|go) on|(?: (?:i|we|you|one|they))? (?:need|have|must|should|ought)(?: to)?(?: have| wear| put on)?
    | is worn| belongs)? (?:for|in|with|as|to) (?:<the> )?([\w' -]+?)\W*$ => what do I wear in \1?
^everything(?: that| which)? (?:goes|go) on (?:for|in
    |with) (?:<the> )?([\w' -]+?)\W*$ => what do I wear in \1?
# kit outfit get-up list rundown
^(?:so |and )?(?:give|show|tell|list|name)(?: me| us)? (?:the |a )?(?:full |whole |complete |entire )?(?:kit
    |outfit|get-up|list|rundown|kit list) (?:for|in|of) (?:<the> )?([\w' -]+?)\W*$ => what do I wear in \1?
# takes gets bears
\b(?:which|what) (arm|sleeve|side|shoulder|breast|wrist|hand|leg|pocket|collar) (?:takes|gets|has|carries
    |bears) (<the> [\w' -]+?)(?=\W*$|[,.;]) => on which \1 is \2 worn
# come comes
^when (?:do|does|must|should|may|can) (?:<the> )?([\w' -]+?) (?:come|get taken) out\b([^.;?!]*)\W*$
     => when are \1 worn\2?
^when (?:do|does|must|should|may|can) (?:<the> )?([\w' -]+?) (?:come|go) (up|down|off|on)\b([^.;?!]*)\W*$
     => when is the \1 \2\3?
# go goes
^when (?:do|does|must|should|may|can) (?:<the> )?([\w' -]+?) go (up|down|on)\b([^.;?!]*)\W*$
     => when is the \1 \2\3?
# head heads feet hands shoulders legs neck
^what (?:do|does|did|should|must|may|can) (.+?) (?:have|has|had|got)(?: got)? on (?:<the> )?(head|hand
    |leg|neck
    |shoulder)s? ?([^.;?!]*)\W*$ => what do \1 wear on the \2 \3?
^what (?:do|does|did|should|must|may|can) (.+?) (?:have|has|had|got)(?: got)? on (?:<the> )?(feet|foot)\s?
    ([^.;?!]*)\W*$ => what do \1 wear on the feet \3?
^what (?:have|has) (.+?) got on (?:<the> )?(head|hand|leg|neck|shoulder)s? ?([^.;?!]*)\W*$
     => what do \1 wear on the \2 \3?
^what(?:'s| is| are) on (?:<the> )?(head|hand|leg|neck
    |shoulder)s? ?([^.;?!]*)\W*$ => what is worn on the \1 \2?
^what(?:'s| is| are) on (?:<the> )?(?:feet|foot) ?([^.;?!]*)\W*$ => what is worn on the feet \1?
# why
^why (?:has|have|does|do|did|is|are) (?:that|the|this|those|these|some|one|another|other|your|his|her)\s
    ?[\w-]*(?: [\w-]+)? (?:got|have|get|wear|wearing|has|in) (?:an? |the )?([\w-]+) ([\w-]+(?: [\w-]+)?)\s
    (?:when|while|whereas|and|but) (?:mine|i|ours|we|my|the rest)\b[^?]*\W*$ => why is the \2 \1?
# turn come arrive report show attend appear parade
(?<!how do i )(?<!how do we )(?<!how should i )(?<!how must i )\b(?:come|turn (?:up|out)|arrive|report
    |show up|attend|appear|parade|go) in (?=(?:<the> )?(?:[\w-]+ ){{1,2}}?(?:rig
    |dress|kit|uniform|order)\b) => wear\s
# be are is am
^(must|should|do|does)(n't)? (.+?) (?:have to |need to )?be in (?=(?:<the> )?(?:[\w-]+ ){{1,2}}?(?:rig
    |dress|kit|uniform|order)\b) => must\2 \3 wear\s
"""
