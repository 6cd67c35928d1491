"""How the street puts it: "daft idea?", "gonna get bollocked for", "do us lot get to", "a hat from home".

Written as the lines of `sayings.py`, and looked at with those that come before all others.
"""

from __future__ import annotations

_TOLD_OFF = r"""(?:bollocked|told off|shouted at|moaned at|yelled at|torn off a strip|carpeted|chewed out
    |pulled up|written up
    |nicked|done|sacked|sent home|into? (?:trouble|bother|hot water|the (?:soup|poo))|a (?:bollocking
    |rollicking
    |telling off|ticking off|roasting|dressing down)|an earful|it in the neck)"""
_FOOLISH = (
    r"(?:daft|silly|stupid|dumb|mad|barmy|bonkers|crazy|foolish|idiotic|nuts|bad|terrible|dreadful|rubbish)"
)
_ASKING = (
    r"(?:can|could|may|might|must|should|do|does|is|are|am|will|would|what|which|where|how|who|when|why)"
)

STREET = rf"""
# bollocked told shouted moaned yelled torn carpeted chewed pulled written nicked done sacked sent trouble
     bother soup bollocking rollicking telling ticking roasting dressing earful neck
(^|[.;:,?!–-] ?)(?:so |and |but )?(?:(?:will|would|can|could|might|am|are|shall) <i> |<i>(?:'m| am|'re| are
    |'ll
    | will|'d| would) )?(?:going to )?(?:be |get )(?:in |into )?{_TOLD_OFF} (?:for|over|by) (?=\w+ing\b)
     => \1is it forbidden for me\s
^(?!{_ASKING}\b)(.*?\w)(?:\s*[,;:.?!–-]+)?(?<! or)\s(?:(?:will|would|can|could|might|am|are) <i> |<i>(?:'m
    | am|'re
    | are|'ll| will) )?(?:going to )?(?:be|get) (?:in |into )?{_TOLD_OFF}(?: for (?:it|that|them))?\s*\?*$
     => \1, is that forbidden?
^({_ASKING}\b.*?\w)(?:\s*[,;:.?!–-]+)?(?: or)?\s(?:will|would|can|could|might|am
    |are) <i> (?:going to )?(?:be|get) (?:in
    \s|into )?{_TOLD_OFF}(?: for (?:it|that|them))?\s*\?*$ => \1?
^(?:is|are|will|would|does|do) (.+?) (?:going to )?(?:get|land|put) <me> (?:in\s
    |into )?{_TOLD_OFF}(?: for it)?\W*$
     => is \1 forbidden?
# daft silly stupid dumb mad barmy bonkers crazy foolish idiotic nuts bad terrible dreadful rubbish
(?:\s*[,;:.?!]+|\s[–-])?\s(?:(?:is|was) (?:that|it|this) )?(?:an? )?(?:<very> )*{_FOOLISH} (?:idea|thing to
    \sdo|move|plan|shout|choice)\s*\?+\s*$ => , is that forbidden?
(?:\s*[,;:.?!]+|\s[–-])\s(?:is (?:that|it|this) )?(?:an? )?(?:good|bad|daft|sensible|silly|clever
    |stupid) (?:idea )?or
    \s(?:an? )?(?:good|bad|daft|sensible|silly|clever|stupid)(?: (?:idea|one))?\s*\?+\s*$ => , allowed?
(?:\s*[,;:.?!]+|\s[–-])\s(?:is (?:that|it|this) )?(?:<very> )*(?:daft|silly|stupid|mad|barmy
    |bonkers)\s*\?+\s*$ => , is
    \sthat forbidden?
^((?:is|was|would|isn't|wouldn't) (?:it|that) (?:be )?)(?:<very> )*(?:daft|silly|barmy|bonkers|nuts
    |foolish) (?:of
    \s<me> )?(?=(?:to|if) (?!ask\b)\w) => is it forbidden\s
# rocker head trolley mad daft barmy bonkers crazy nuts joking mick mickey piss laugh tree bollocks cobblers
     pants bull crap hat backside wrong
(?<=[.;,?!] )(?:so |and )?(?:(?:is|are|am) (?:he|she|they|i|we) |or (?:is|are) (?:he|she|they) )(?:just\s
    |only )?(?:off
    \s(?:his|her|their|my) (?:rocker|head|trolley|chump|nut)|(?:<very> )*(?:mad|daft|barmy|bonkers|crazy
    |nuts|potty
    |dreaming)|joking|kidding|having a (?:laugh|giraffe)|taking the (?:mick|mickey|michael|piss)
    |winding me up
    |barking up the wrong tree|full of it|talking (?:bollocks|cobblers|pants|bull|crap|out of (?:his|her
    |their)
    \s(?:hat|backside|bum|behind)))\W*$ => is that right?
# get gets
^(do|does) (.+?) (?:ever |still |also )?get to (?=(?:wear|carry|have|own|keep|use|put|grow
    |roll)\b) => may \2\s
# lot lads lasses bunch
\b(?:us|we|you) lot\b(?= (?!of\b)) => we
\b(?:us|we|you) ([\w-]+) (?:lot|lads|lasses|bunch|gang)\b => \1 people
# painted done
\b(?:have|get|got|wear) (?:(?:my|our|your|his|her|their) )?nails (?:painted|done|varnished
    |polished)\b => wear nail
    \svarnish
# home
^(.*\b(?:an?|my|our|his|her|the|any|some|own) )((?:[\w'-]+ )?(?!(?:way|work\w*|journey|walk|trip|travel
    |drive)\b)[a-z]+) (?:that
    \s(?:i|we) )?(?:brought |bring |got )?from (?:my |our )?home\b(?! (?:to|and)\b) => \1private \2
^((?:[\w'-]+ )?(?!(?:way|work\w*|working|journey|walk|trip|travel|drive|direct|far|come|coming|go
    |going)\b)[a-z]+) (?:brought )?from
    \shome\b(?! (?:to|and)\b) => private \1
# see
\bwhere (?:the |other |any )?([\w'-]+) (?:can|could|might|may|will)(?: all)? see (?:me|us|him|her|them
    |it)\b => in sight of \1
# since
\b(?<!n't )(?:'ve|have|has|'s) been (?:in|here|with (?:you|us|them|the [\w-]+)|in the [\w-]+|a member
    |on the books
    |serving|around) since (?=\d{{4}}\b|(?:\d+ )?[a-z]+ \d{{4}}\b) => joined in\s
# measure
^what(?:'s| is| does| do) (.+?) measure\W*$ => how big is \1?
# yes yeah yep
\s(?:yes|yeah|yep) or (?:no|nope|nah),? (?=(?:in|on|at|with|for|when|if|under|while|during)\b) =>\s
# no nope nah
^(?!(?:yes|no)\b|.*\b(?:definite|clear|firm|flat|straight|big|hard|simple|plain|absolute
    |strict) no\b)(.*\w)(?<! or)(?<! and)(?<! is)(?<! it)(?<! say)(?<! says)(?<! said)(?<! the)(?<! a)
    (?<! with)(?<! so)(?<! in)(?<! on)(?<! that)(?<! be)\s(?:no|nope|nah)\s*\?+\s*$ => \1?
# fag ciggie cig rollie smoke vape
\b(?:(?:go|going|nip|pop|step|come|slip)(?: out| outside| off)*(?: for)?|have|having|spark up
    |light up) an? (?:quick
    \s|cheeky |crafty |little )*(?:fag|ciggie|ciggy|cig|cigarette|rollie|smoke)(?: break)?\b => smoke
\b(?:(?:go|going|nip|pop|step)(?: out| outside| off)*(?: for)?|have|having) an? (?:quick |cheeky\s
    |crafty )*vape\b => vape
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
"""
