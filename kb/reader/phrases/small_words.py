"""Small words that limit nothing where they stand: "just for warmth", "daft, but ...", "gloves or none?".

"Only" and "just" are left away as adverbs of going, of a purpose, of a short while, of a size that is told;
where they limit whom or what a rule is for they stay. "But" is left away after an excuse, and joins where
nothing stands before it that it could except from. Written as the lines of `sayings.py`.
"""

from __future__ import annotations

_END = r"(?=\s*[.,;:?!]|\s*$)"
_CLOSE = r"(?:\s*[,;.:?!]+|\s+[-–—]+)\s*"
_DAFT = r"(?:daft|odd|silly|strange|stupid|dumb|weird|fussy|pedantic|picky|petty|cheeky|basic|trivial|naive)"
_BE = r"(?:['’](?:m|s|re)| am| is| are| was| were)"
_SURE = r"(?:sure|certain|positive|clear)"
_SMALL = r"(?:an?|half|one|two|three|four|about|\d[\d./]*)"
_GOING = r"""(?:walking|passing|crossing|going|coming|popping|nipping|running|driving|cycling|heading|stopping
    |travelling|changing trains|on (?:my|our|his|her|the) way)"""
_STATED = r"""(?:switched|turned|worn|kept|hidden|out of sight|under|inside|folded|tucked|done up|undone|open
    |closed|clean|plain|small|covered|rolled|fastened|unfastened|buttoned|unbuttoned)"""
"""What tells how a thing is; "but in rain", "but ashore" may except."""
_HOLDING = r"(?:hold|holds|have|has|did|passed|wear|wears|carry|carries|serve|serves|work|works|act|acts)"
_SIZED = "(?:short|long|small|thin|narrow|wide|plain|old|new|worn|loose|tight|light|heavy|dirty|clean)"

SMALL_WORDS = rf"""
# but
^(?:(?:(?:(?:either|one|both|any) of us|i|we|he|she|they|you) )?(?:may|might|could|can)(?: (?:well|easily
    |both))?\sbe (?:wrong|mistaken|right|confused|out of date|imagining (?:it|things))|(?:(?:it|this
    |that)(?:'s| is)?\s)?(?:sounds? |seems? |may (?:be|sound|seem) |might (?:be|sound|seem) )?(?:an? )?
    (?:bit |rather |very\s|probably |possibly )?{_DAFT}(?: question| thing to ask| to ask| perhaps
    | i know)?|call me {_DAFT}|(?:i(?:'m| am) )?not (?:quite |really |entirely |at all )?{_SURE}
    (?: (?:about|of) (?:it|this|that))?|(?:i(?:'ve| have)? (?:got )?)?no idea(?: why)?|(?:i )?hate to ask
    |don't laugh|forgive me|pardon me|excuse me|no offence|with respect|with all respect),? but (?=\w) =>
^(?!.*\b(?:all|any\w*|every\w*|no|none|nothing|nobody|nowhere|never|always|whatever|last|not|n't
    |cannot)\b[^.;?]*\bbut\b)(?!.*n['’]t\b[^.;?]*\bbut\b)(.*\w),? but (?:(?:it|they)['’]?(?:s| is|re
    | are) )?(?={_STATED}\b) => \1,\s
^((?:i|he|she|we|they){_BE} [^.;?,]+?),? but (?:i |he |she |we |they )?(?={_HOLDING}\b) => \1 and\s
^((?:some(?:one|body)|an? [\w' -]+?|any(?:one|body)) who (?:isn't|is not
    |is no) [^.;?,]+?),? but (?={_HOLDING}\b) => \1 and\s
# only just merely purely barely
,? (?:just|only|purely|merely|simply) for (?:(?:the )?(?:warmth|comfort|looks?|luck|company|view
    |convenience|feel of it)|show|fun){_END} =>
\b(for (?:an?|one|two|three|five|ten|fifteen|twenty|half an|a few|a couple of|\d+) (?:seconds?|moments?
    |minutes?|mins?|hours?)) only(?=\s*[.,;?!]|\s*$| (?:in|on|at|with|when|while|near)\b) => \1
\b(?:only|just) (?=for (?:an?|one|two|three|five|ten|fifteen|twenty|half an|a few|a couple of
    |\d+) (?:seconds?|moments?|minutes?|mins?|hours?)\b) =>
(?<=\w),? (?:just|only|merely) (?={_GOING}\b) =>\s
(['’]s|\bis|\bare|['’]re|\bwas) (?:only|just|merely|barely) (?={_SMALL} ?(?:inch|inches|mm|cm|in|ft|foot
    |feet|centim\w+|millim\w+|fingers?|thumbs?)\b) => \1\s
\b((?:when|if|as|since|because|though|but|and) (?:i|he|she|we|they|you){_BE}) (?:only|just|merely)\s
    (?!wearing|in\b|carrying|holding|with|to\b|those|the|allowed|permitted) => \1\s
\b((?:even )?(?:if|when|while) (?:i|he|she|we|they|you)) (?:only|just|merely) (?=(?:go|goes|come|comes
    |look|looks|walk|walks|stand|stands|watch|watches|climb|climbs|pass|passes|sit|sits|help|helps|cross
    |crosses|stop|stops|visit|visits|work|works|eat|eats)\b) => \1\s
^((?:where|how|what|which)\b[^.;?]*? (?:when|if|while) (?:i|he|she|we|they|you)(?:['’]ve|['’]s| have
    | has))\s(?:only|just)(?: got)? (?=(?:the|my|our|an?|his|her)\b) => \1\s
^(how many [^.;?,]+?),? (?:is it )?(?:just|only) (?:the )?(?:one|two|pair)\W*$ => \1?
^(how many [^.;?,]+?),? (?:is it )?(?:just|only) a pair\W*$ => \1?
# none nothing
^((?!.* or .* or ).+?),? or (?:none(?: at all)?|nothing(?: at all)?|not any)
    ((?: (?:in|on|at|for|when|while) [^.;?,]+)?)\W*$ => \1\2?
# nobody none no-one one
{_CLOSE}(?:and )?(?:nobody|no[- ]one|none)(?: will|['’]ll| would)? (?:minds?|objects?|cares?
    |complains?)\s*\?+\s*$ => , allowed?
,? (?:and|but|yet|though)(?: so far)? (?:nobody|no[- ]one)(?: has|['’]s|had)? (?:ever |yet )?
    (?:said (?:a\sword|anything|a thing)|minded|complained|objected|noticed|batted an eyelid|told me off
    |stopped me|cared)(?: yet| so far| about it)?{_END} =>
^(?:nobody|no[- ]one|none of us)(?: here| aboard| in (?:the|our|my) [\w-]+)?(?: seems to| can| could)?\s
    (?:remembers?|knows?|recalls?|is sure|agrees?|say|tell)(?: any ?more| for sure)?\s*[:,;.–-]+\s =>
# no
^((?!.*\b(?:is|are|am|may|can|must)\b)[^.;?]+?)[,: –-]+(?:a )?no[ -](?:go|no)\s*\?+\s*$ => may I have \1?
# not
{_CLOSE}(?:that(?:'s| is) |it(?:'s| is) )?not (?:possible|allowed|permitted|ok|okay|done|on),?\s
    (?:i (?:suppose|guess|take it|presume|imagine|fear|assume|expect)|surely|presumably|or is it
    |right)\s*\?+\s*$ => , allowed?
^(?:(?:please|sorry|excuse me),? )*i (?:do )?(?:not|don't) (?:quite |really |fully )?understand(?: this
    | it| the\srules?)?\s*[:,;.–-]+\s =>
\b(when|if|while) (i|we|he|she|they|you) (?:have|has) not (?:got )?((?:the|my|our|an?|any|his
    |her) [\w' -]+?) on\b => \1 \2 wear no \3
# very really quite rather fairly pretty extremely
\b(?:very|really|quite|rather|fairly|pretty|extremely|terribly) (?={_SIZED}\b) =>
# enough
(?:^|(?<=[.,;])) ?(?:and )?(?:(?:it|i)(?:['’](?:s|m)| is| am) )?(?:quite )?(?:warm|cool|light|dry|mild|hot)
    \senough(?: without(?: it| one|them)?)?{_END} =>
\b(is|are|will|would) ((?:the|my|our|an?|his|her) [\w' -]+?) (?:be |do )?(?:good |smart |fine |dress
    \s|(?<=alone ))enough\s(?:for|in|with|on|at) => is \2 ok in\s
# many much
{_CLOSE}(?:is (?:that|this|it) )?(?:one|a bit|two|rather) too (?:many|much)\s*\?+\s*$ => , allowed?
# problem
{_CLOSE}(?:(?:that|it|this)(?:'s| is) )?(?:not|no) (?:a )?problem\s*\?+\s*$ => , allowed?
# harm excuse objection objections
{_CLOSE}(?:is there )?(?:any|an|no) (?:harm|excuse|objections?)(?: (?:in|to|for) (?:that|it
    |this))?\s*\?+\s*$ => , allowed?
"""
