"""Everyday deeds by the verb that a rule has for them: who bleaches hair dyes it, who texts uses a telephone.

Painted nails are nail varnish, a hole that one has drilled is drilled, and who promised to wear a thing wants
to. Written as the lines of `sayings.py`; `MISLEADING_DEEDS` is for what would be read otherwise.
"""

from __future__ import annotations

from kb.reader.phrases.handlings import KIN_WORDS
from kb.reader.words.colours import HEADS, MODIFIERS

_SHADE = "|".join(sorted(HEADS | MODIFIERS))
_COLOUR = rf"(?:(?:{_SHADE})[ -])?(?:{_SHADE})"
_THERE = (
    r"(?=\W*$|[.,;:?!]"
    r"| (?:in|on|at|while|when|whilst|if|with|during|near|by|from|inside|outside|behind)\b)"
)
_BEGUN = r"(?:^|(?<=[.,;:–-] ))"
_WHO = r"(?:(?:my|our|the|an?|one of (?:my|our|the)) [\w' -]{2,25}?|i|we|she|he|they|some(?:one|body))"
_HAS = r"(?:'s|'ve)?(?: (?:has|have|had|just|only|once|already|since))*"
_NOT_FOR = r"(?!\w*(?:day|birthday|christmas|xmas|wedding|retirement|anniversary|sake|name)\b)"
_JUDGED = (
    r"(?=(?:so |and |but |surely )*(?:is|are|would|will|any|no|not|nobody|nothing|harmless|allowed|ok|okay"
    r"|fine|alright|all right|that|can|may|could)\b)"
)
_PIERCED = "nose|lip|eyebrow|tongue|cheek|septum|navel|belly button|chin"
_ROOM = r"(?!way\b|line\b)(?:<the> )(?:[\w'-]+ )?[\w'-]+"

MISLEADING_DEEDS = rf"""
# nails fingernails toenails
\b({_COLOUR}) (?:finger|toe)?nails\b(?! (?:varnish|polish)) => \1 nail varnish
\b(?:painted|varnished|polished|lacquered) (?:finger|toe)?nails\b => nail varnish
\b(?:my |our |her |his )?(?:finger|toe)?nails (?:are |were |have been |got )?(?:all |just )*(?:painted
    |varnished|polished|done) (?:in |a )?({_COLOUR})\b => I wear \1 nail varnish
^((?:[^?]*[.;,] )?){_WHO}{_HAS} (?:painted|varnished|did|done) (?:my|our) (?:finger|toe)?nails
    (?: (?:in |a )?({_COLOUR}))?(?: for [\w' -]+?)?(?=[.,;?!]) => \1I wear \2 nail varnish
# rock rocking
(?<!the )(?<!a )(?<!on )\brock(?:ing)? (?=(?:an?|my|some) ) => wear\s
# texting
{_BEGUN}texting(?: (?:my|a|the) [\w']+)?{_THERE} => using a mobile phone
# text
\b(can|may|could|must) (<subject>) (?:just |quickly )*text{_THERE} => \1 \2 use a mobile phone
# ring
\b((?:can|may|could|must|should|to|and) (?:(?:<i>) )?)(?:just |quickly )*ring (?:home|back|him|her|them
    |(?:for )?(?:my|our|his|her) {KIN_WORDS}|the (?:office|doctor|boss|police|station))\b
     => \1use a mobile phone
# vape
\b(can|may|could|must) (<subject>) (?:just |quickly )*vape{_THERE} => \1 \2 use a vape
# vaping
{_BEGUN}vaping{_THERE} => using a vape
# embroidered stitched sewn printed written painted
\b(?:get|have) ["'‘“][\w -]{{1,20}}["'’”] (?:embroidered|stitched|sewn|printed|written|painted) (?=on|in) =>
    \shave a name sewn\s
\b(name|initials|nickname)s? (?:embroidered|stitched) (?=on|in) => \1 sewn\s
# watch shift duty round turn
\b(can|may|could|must|should) (<i>) (?:do|stand|work|finish|see out) (?:my|the|our|this|his|her) watch in
    \s((?:<the> )?(?!order\b|full\b|peace\b)[\w' -]+?)(?=\W*$|[.,;]) => \1 \2 wear \3 on watch
\b(can|may|could|must|should) (<i>) (?:do|stand|work|finish|see out) (?:my|the|our|this|his|her)
    \s(?:shift|duty|round|turn) in ((?:<the> )?(?!order\b|full\b|peace\b)[\w' -]+?)(?=\W*$|[.,;])
     => \1 \2 wear \3
"""

DEEDS = rf"""
# taking bringing wheeling escorting showing walking leading seeing
\b(?:taking|bringing|wheeling|escorting|showing|walking|leading|seeing) (?:an? |the |some |my |our |a few )?
    (?:\w+ )?(?:patients?|visitors?|guests?|child|children|kids|people|somebody|someone|part(?:y|ies)|group
    |famil(?:y|ies)|parents|customers?|trainees?) (?:(?:in|on)?to|through|round|around|over)
    \s(?=(?:the|an?|our|my)\b) => in\s
# harm
([.;,:–-]+ ?)(?:so |and |but |surely )*(?:(?:there(?:'s| is)|there can't be|where(?:'s| is)|what(?:'s| is)) )?
    (?:no|any|the) (?:real )?harm(?: done)?(?: in (?:it|that|this|doing (?:so|that|it)))?(?:,? (?:is there
    |surely|right))*\s*\?+\s*$ => \1is that allowed?
# ring stud bar hoop bolt
\b(?:an? )?(?:small |little |tiny |plain )?(ring|stud|bar|hoop|bolt) (?:through|in)
    \s(?:my|his|her|the|their|one) ({_PIERCED})\b => a \2 \1
# pierced
\b(?:have|had|got|get|having|getting) (?:my|his|her|their) ({_PIERCED}) pierced\b => have a \1 piercing
# leave
\bleave (<the> (?:[\w'-]+ ){{0,2}}?(?:studs?|rings?|bar|hoops?|piercings?|earrings?|sleepers?|retainer)) in
    (?=\W*$|[.,;:?!]| (?:on|at|in|while|when|if|with|during|for)\b) => wear \1
\bleave (<the> (?:[\w'-]+ ){{0,2}}?[\w'-]+) on(?=\W*$|[.,;:?!]| (?:at|in|while|when|if|with|during|for|under)
    \b) => wear \1
# scrub soak dunk sluice
\b(?:scrub|soak|dunk|sluice) (<the> [\w' -]+?) in (?:the|a|my) (?:sink|bath|basin|tub|bucket
    |washing machine) => wash \1
# front
\bturn (<the> (?:[\w'-]+ ){{0,2}}?[\w'-]+) (?:round )?back to front\b => wear \1 back to front
# neck
\b(?:thin |fine |little |small |plain )?chain (?:round|around) (?:my|the|his|her) neck\b => neck chain
# left
\b(i|we|he|she) left (<the> (?:[\w'-]+ ){{0,2}}?[\w'-]+) on(?=\W*$|[.,;:?!]| (?:at|in|while|when|with|during)
    \b) => \1 wore \2
# wore had kept carried
\b((?:mind|object|notice|care|complain|matter)s? if (?:i|we|he|she|they)) wore\b => \1 wear
\b((?:mind|object|notice|care|complain|matter)s? if (?:i|we|he|she|they)) had\b => \1 have
\b((?:mind|object|notice|care|complain|matter)s? if (?:i|we|he|she|they)) kept\b => \1 keep
\b((?:mind|object|notice|care|complain|matter)s? if (?:i|we|he|she|they)) carried\b => \1 carry
# listen
\blisten(?:ing)? to (?:music|the radio|a podcast|podcasts|tunes|songs|the match|the news) (?:through|on|with
    |in|over) (?=(?:my|the|an?|some|our) ) => wear\s
# run come go walk pop nip dash get head slip step wander
\b(can|may|could|must|should) (<i>) (?:just |quickly |still )?(?:run|come|go|walk|pop|nip|dash|get|head|slip
    |step|wander) (?:back )?(?:into|inside) ({_ROOM}) (?:in|with|wearing) ((?:<the> )?(?!order\b|full\b
    |a hurry)[\w' -]+?)(?: on)?\W*$ => \1 \2 wear \4 in \3?
# brolly umbrella umbrellas
\b(?:put|have) (<the> (?:[\w-]+ )?(?:brolly|umbrella)) up\b => open \1
# give let
^((?:[^?]*[.;,] )?)(?:(?:my|our|the|a|one of (?:my|our|the))(?: [\w-]+){{1,3}}?|he|she|they
    |some(?:one|body))(?:'s|'ve| has| have)? (?:just )?(?:forgotten|forgot|lost|left|mislaid|broken|broke
    |torn|ripped) (?:<own> |an? |the )?((?:[\w-]+ ){{0,2}}?[\w-]+)(?: (?:today|at home|in the \w+))?[.;,]+
    \s(?:so )?(can|may|could) (<i>) (?:just )?(?:give|let) (?:him|her|them) (?:have |use |borrow |wear )?
    (?:mine|ours|my (?:spare|other|old)(?: one| pair)?)(?: for (?:the|a|one|this) [\w]+)?(?=\W*$)
     => \1\3 \4 lend the \2
# get ask have let
\b(can|may|could|should|must) (<i>) (?:just )?(?:get|ask|have|let) (?:my|our|his|her) {KIN_WORDS} (?:to )?
    (?=(?:shorten|lengthen|alter|hem|take (?:up|in)|let (?:out|down)|turn up|wash|iron|dye|bleach|mend|patch
    |sew|clean|press)\b) => \1 \2\s
# drilled drill
\b(?:have|get) (?:an? |some |the )?holes? drilled (?:in|into|through) (<the> [\w' -]+?)
    (?: for (?:an?|my|the) [\w' -]+?)?(?=[.,;?!]|$) => drill a hole in \1
\b(?:have|get) (<the> [\w' -]+?) drilled(?: for (?:an?|my|the) [\w' -]+?)?(?=[.,;?!]|$) => drill a hole in \1
\b((?:can|may|could|should|must) <i> (?:just )?)drill (?=(?:the|my|our|his|her) ) => \1drill a hole in\s
# bleach bleached bleaching peroxide
\b(?:bleach|peroxide) (?=(?:my|our|his|her|their|the|your) (?:\w+ )?hair\b) => dye\s
\bbleach(?:ed|ing) (?=(?:my |our |his |her |their )?(?:\w+ )?hair\b) => dyed\s
\bhair (?:bleached|peroxided)\b => hair dyed
# streaks streak highlights lowlights
\b(can|may|could) (<i>) (?:have|get|put) (?:an? |some )?(?:({_COLOUR}) )?(?:streaks?|highlights|lowlights)
    (?: put)? in(?:to)? (?:my|our|his|her|their) hair => \1 \2 dye my hair \3
^((?:[^?]*[.;,] )?){_WHO}{_HAS} (?:put|got|had|did|done|have|has) (?:an? |some )?(?:({_COLOUR}) )?(?:streaks?
    |highlights|lowlights)(?: put)? in(?:to)? (?:my|our) hair => \1I dye my hair \2
# stick
\b(can|may|could|must|should) (<i>) (?:just )?stick (<the> [\w' -]*?(?:stickers?|badges?|transfers?|decals?
    |patch(?:es)?|pins?)) (?:on|to|onto)\b => \1 \2 wear \3 on
# off
^((?:[^?]*[.;,] )?)((?:<own> )?(?!(?:is|are|take|should|must|do|does)\b)[\w' -]{{3,30}}?) off,? or
    \s(?:can|may|could) (?:it|they|i|we) (?:just |still )?(?:stay|keep|leave|be kept|be left)(?: it| them)? on
    \W*$ => \1may I wear \2?
# lent gave loaned lends
^((?:[^?]*[.;] )?)({_WHO}{_HAS} (?:lent|gave|loaned) me (?:an?|his|her|some|their|the) [\w' -]+?),
    \s(?=(?:so |and |but |surely )*(?:nobody|no one|can i|may i|could i|is that|is it|any)\b) => \1\2.\s
# promised
\bi(?:'ve| have)? promised(?: (?:him|her|them|my [\w'-]+(?: \w+)?))?(?: that)? (?:i'd|i would|to)
    \s(?=\w) => I want to\s
\bi(?:'ve| have)? promised(?: (?:him|her|them|my [\w'-]+(?: \w+)?))?(?: that)? (?:it|they)(?:'d| would)
    \sgo on\b => I want to wear it on
# gave sent bought got made knitted brought drew
^(?:my|our) [\w' -]{{2,25}}?{_HAS} (?:gave|sent|bought|got|made|knitted|brought|drew) me
    \s((?:an?|some|this|these) [\w' -]+?) for (?=my {_NOT_FOR})(my) ([\w' -]+?)[.;,]+ {_JUDGED}
     => I want to wear \1 on \2 \3.\s
# says said reckons insists claims swears
^((?:an?|the|one of (?:the|my|our)) [\w' -]+?) (?:walked|came|went|strolled|stood|sat|turned up|was)
    (?: \w+)?? ((?:through|across|into|in|on|at|round|along) (?:the|our|an?) [\w' -]+?) (wearing|carrying)
    \s((?:an?|the|her|his|their) [\w' -]+?),? and (?:says?|said|reckons?|insists?|claims?|swears?)(?: that)?
    \s(?:she|he|they)(?:'s| is| was)? (?:may|can|could|allowed to)
    (?: (?:because|since|as) (?:she|he|they)(?:'s| is)? (?:ranks? |outranks? |senior )[^.?!]*)?[.;,!]
    \s(?:is|was) (?:she|he|that|it) (?:right|allowed|correct|so|ok)\W*$ => \1 is \3 \4 \2. Is that allowed?
"""
