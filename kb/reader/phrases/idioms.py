"""Everyday turns of phrase that come to a plainer question: "off the menu", "what knot does it take?".

Read only by `rephrase.py`, and only for a text that is not understood as it stands; written as its lines are.
"""

from __future__ import annotations

IDIOMS = r"""
\b(?:has|have|'s|'ve) (?:just |only )?(?:stuck|pinned|clipped|sewn|stitched|fixed|stapled|glued)
    \s(?=(?:an?|the|some|his|her|my|their)\b) => wears\s
\b(?:passes|passes muster|pass muster|is good enough|are good enough)(?: now| then| still)?\W*$ => is ok?
^(?:it's |is it )?only (.+?) (?:who |that )?(?:may |can |should |must |gets? to )?(?:keep|wear|have
    |carry|leave)s? (.+?) on\b(.*)$ => who may wear \2\3?
^(?:it's |is it )?only (.+?) (?:who |that )?(?:may |can |should |must |gets? to )?(wear|carry|own)s?
    \s(.+)$ => who may \2 \3
\b(?:let out|take in|take up|turn up|shorten|lengthen|widen|narrow|alter|tailor|nip in) (?:the|my|our|his|her)
    \s(?:waist|hem|seams?|cuffs?|shoulders?|legs?|sides?|waistband)
    \s(?:of|on) (?=(?:the|my|our|his|her)\b) => modify\s
\b(put|putting|pull|pulling|have|having|keep|keeping|wear|wearing) (my|the|his|her|our|a) ((?:[\w-]+ )?hood)
    \sup\b => wear \2 \3
\b(hood(?: of [\w -]+?)?) be up\b => \1 be worn
\b(hood(?: of [\w -]+?)?) be down\b => \1 not be worn
^(.+?) (?:starts?|begins?|sits?|ends?|stops?|comes?|hangs?) ((?:about |some )?\d.+?)[.;,]
    \s(?:is|was) (?:that|it|this) (?:near|close|good|exact) enough\W*$ => is \1 \2 ok?
\b(?:both )?(?:the |my |an )?old and (?:the |my |a )?new ((?!and\b|the\b)[\w']+(?: [\w']+)?)
     => the old \1 with the \1
\b(?:be|go|stay|come|keep|being) clean[- ]shaven\b => be without a beard
\bclean[- ]shaven\b => without a beard
^(?:please )?([\w' -]{3,40}?)[,:;-] ?(when|where|why|how|who)\W*$ => \2 is \1?
\bin (?:my|a|his|her|your|the|our) (?:(?:back|trouser|trousers|coat|side|hip|jacket|shirt) )?pockets?
    (?=\W*$| (?:in|on|while|when|with|if|during)\b) => on me
\b(when|if|while) (?:the|my|our|a) (?:(?:station|senior|inspecting) )?(?:<who>|captain|officer|superintendent
    |old man|inspector) (?:\w+ )?(?:inspects?|is inspecting|comes to inspect)(?: us| me| the crew
    | the station)?\b
     => during inspection
\bfor (?:all|everyone|everybody|us all|all of us|all hands|the lot of us)\W*$ => ?
\b((?:the|my|our|a) .+?) (?:that |which )?(?:we|i|they) (?:had|have|got|'ve had) (?:made|bought|ordered
    |printed|sewn|stitched)\b => \1
\bwhat(?:'s| is) the (?:right|proper|correct|best|approved) way (?:to|of) (\w+?)(?:ing)?
    \s(it|them|(?:my|the|our|a) [\w ]+) => how do I \1 \2
^(?:my|our|the|his|her) ([\w -]+?)(?:'s| is| are|'re| has got| have got) (?:all )?(?:filthy|dirty|muddy|grubby
    |stained|smelly)[.;,] (.*?)\b(?:it|them)\b => \2 my \1
\b(?:the )?(?:sky|skies)(?:'s| is| are)(?: all| quite| perfectly)? (?=clear\b) => it is\s
\bblowing (?:at |up to |around )?(?=\d) => , wind\s
\bgusting (?:at |up to |to |around )?(?=\d) => , wind\s
\b(it(?:'s| is) \w+) but ,? ?(?=wind\b) => \1,\s
\b(i'm|i am|he's|she's|we're|i was) (?:only|just|merely|but) (an? ) => \1 \2\s
\bwhat (?:must|has to|should|needs to) (?:be on|go on)\b(?! my| the) => what must be worn
^(?:have|has) (.+?) (?:still )?got to\b => must \1
\b(?:carry|take|bring|haul|lug|stow|put) (?:my|the|some|our) (?:tools|kit|gear|things|stuff|belongings|lunch)
    (.*?) in (an?|my|the) (\w+) => carry \2 \3\1
^(?:surely |so )no ([\w' -]+?)\W*$ => may I go without \1?
^(?:surely|obviously|of course|no doubt|clearly|presumably|i (?:assume|presume|gather)(?: that)?),?
    \s(?=\w+(?:'s|'re| \w+) ) =>
\b(i'm|i am|he's|she's|we're|we are) only (?=\w+ing\b) => \1
,? because (?:the|our|my) (?:\w+ )?(?:<book>) says so\W*$ => ?
,? so (?:i'm|i am|we're|we are|it's) (?:excused|exempt|fine|ok|okay|all right|in the clear|covered)\W*$ => ?
^(?:the|our|my) (?:\w+ )?(?:<book>) (?:lets|allows|excuses) (?:us|me|you|people) off (?:from )?
     => may I leave off\s
^(?:the|our|my) (?:\w+ )?(?:<book>) says?(?: that)? (you|i|we|people) can\b => can \1
\b(?:keep|leave) (my|the|our|his|her) ([\w'-]+(?: [\w'-]+)?) on (?=(?:till|until|til)\b) => wear \1 \2\s
\b(?:keep|have|leave) (my|the|our|his|her) ([\w'-]+(?: [\w'-]+)?) on (?:my|the|his|her)
    \s(?:wrist|finger|head|neck|hands?|feet|ears?)\b => wear \1 \2
\b(?:hide|conceal) (?=(?:my |the |our |his |her |their )?[a-z]+) => cover\s
\b(?:till|until|til) christmas(?: day)?\b => on 25 December
^who(?:'s| is) (?:able|allowed) to (?:call|grant|give|order)\b => who grants
^(?:give me |what's |what is )?(?:the )?chapter and verse (?:for|on|about) => which clause mentions\s
\b(what does) (?:plain |just |bare |simple |the word |the term )["“'‘]?(\w[\w -]*?)["”'’]? mean\b(?: in .*)?
     => \1 "\2" mean
\b(own|have|wear|carry) a second (?=[a-z]) => \1 two\s
^(?:can|may|could) (?:i|we|you|he|she|they) (?:leave|have|wear|keep) (my|the|our|his|her) ([\w' -]+?)
    \suntucked\b => may \1 \2 not be tucked in
^(i(?:'m| am) (?:no|not an?) [\w' -]+?), but (?=(?:can|may|must|do|could|should)\b) => \1,\s
(?:\s*[,;.:?!]|\s+-)\s*is (?:that|it|this) (?:even |really )?(?:a thing|on|a goer|possible|doable
    |legit)\s*\??\s*$ => ?
^(.+?) (?:and|with|plus) (.+?),? (?:both )?(?:at once|together|at the same time|at one time)\W*$
     => may I wear \1 with \2?
^(?:there(?:'s| is) )?(?:nothing|no rule) (?:in the \w+ )?(?:against|to stop me) pinning\b => may I pin
\bpin (?:(?:a|an|any|my|the|some) )?(?:something|anything|(?:ribbon|popp(?:y|ie)|rosette|flower|sprig|note
    |brooch|flag|favou?r|charm|feather|daffodil|keepsake|sticker|trinket)(?:e?s)?)
    \s(?:to|on|onto|into) => pierce
\b(where .*?)\bstarts? and (?:stops?|ends?|finish(?:es)?)\b => \1 go
\b(where .*?)\b(?:stops?|finish(?:es)?)(?=\W*$) => \1 end
^(?:please )?(?:tell|show|give|list)(?: me| us)? (?:everything|all|the lot|whatever|what all)(?: that| which)?
    \s(?:goes|go|is worn|gets worn|belongs|is part)(?: on)? (?:in|into|with|for|of|to) (?:the )?(.+?)\W*$
     => what is worn in \1?
^what (?:all )?(?:goes|has to go|must go|should go) on (?:for|in|with) => what must I wear in\s
\b(which clause mentions|(?:which|what) (?:clause|rule|paragraph) (?:is it that )?(?:bans|forbids|prohibits
    |bars|stops)) (?:a second|another|a further|an extra|more than one|two) => \1 the\s
^(?:what|which) (?:(?:sort|kind|type) of )?(?:knot|hitch|bow|fastening|fastener|closure)
    \s(?:do|does|should|must|can|shall) (?:i|you|we|one|they) (?:tie|fasten|close|secure|do up|use for|use on)
    \s(.+?)(?: with| in| by)?\W*$ => how must \1 be fastened?
^(?:what|which) (?:(?:sort|kind|type|style) of )?(?:knot|hitch|bow|fastening|fastener|closure)
    \s(?:do|does|should|must|is|are) (.+?) (?:have|take|get|tied|fastened|closed|secured)
    (?: with| in| by)?\W*$ => how must \1 be fastened?
^(?:what|which) (?:(?:sort|kind|type|style) of )?(?:toe|toecap|toe cap|sole|heel|tread|lining|upper)s?
    \s(?:do|does|should|must) (.+?) have\W*$ => what is the construction of \1?
\b(how many .+?) (do|should|must|may|can) (i|we|you|he|she|they) (?:sew|stitch|pin|put|fasten)(?: on)?
    (?: (?:my|the|his|her) \w+)?\W*$ => \1 \2 \3 wear?
\bright (?=(?:beside|next to|by|near|in front|behind|under|above|on top|here|there|now)\b) =>
^(?:does|do|must|should|will) (.+?) (?:have to |need to )?come off\b => must I take off \1
^(?!(?:which|what|who)\b)([\w' -]{3,40}?) (?:lets|allows|permits) (?:people|us|everyone|everybody|you|folk)
    \s(?:to )?(wear|carry|grow|keep|use|have) (.+?)(?:,? so .*)?$ => may I \2 \3 at \1?
\bwhat(?:'s| is| was) the (?:reason|point|idea|thinking|sense|purpose) (?:of|in|behind) (.+?) wearing
     => why does \1 wear
\bwith (\w+) (?:aboard|on board)\b => with \1
^(?:on |over |under |round |around |at )?(?:which|what) (?:shoulder|side|arm|hip|wrist|ear)
    \s(?:do|does|should|must) (?:i|you|we|one) (?:sling|hang|carry|have|put|wear|strap|pin|sew)
    \s(.+?)(?: straps?)?(?: on| over| round)?\W*$ => where must \1 be worn?
\b(?:lug|cart|haul|tote|heft|schlep) (?=(?:a|an|my|the)\b) => carry
(?<=[.;:,] )([\w'-]+(?: [\w'-]+)?) in\?$ => \1?
^i(?:'d| would) (?:quite |really )?(?:like|love|want|fancy) (?:to (?:wear|have) )?(.+?)[.;,]
    \s(?:may|can|could) i(?: do that| do so| have it)?\W*$ => may I wear \1?
\bwhy(?:'s|'re| is| are) (.+?) (?:off the (?:menu|table|list|cards)|out of the question|off[- ]limits
    |out of bounds|a no-no|ruled out|not on) => why may I not wear \1
\b(?:is|are) (.+?) (?:off the (?:menu|table|list|cards)|out of the question|off[- ]limits|out of bounds
    |ruled out)\b => may I have \1
^(?:will|would|can|could) (.+?) go (?:on|with) (my|the|an?) (.+?)\W*$ => may I wear \1 with \2 \3?
\b(?:hang|hold) on to (?=(?:the|my|an?)\b) => still wear
^(?:what|which) (?:(?:bits|pieces|items|kinds|sorts|things|parts) of )?(.+?)
    \s(?:counts?|qualif(?:y|ies)|is classed|are classed|is treated|are treated) as (.+?)\W*$
     => which clause mentions \2 \1?
\bwhich (?:one |\w+ )?takes (?:the )?(?:primary|first|top|senior|upper) (?:position|place|spot)\b
     => which comes first
\bbecause it(?:'s| is) (\w+)(?=[.,;]) => , it is \1
\b(my|our|his|her|their|the|an) ID(?! (?:cards?|discs?|badge|tags?|pass|number|bracelet)\b) => \1 ID card
\b(need|wear|have) (?:any |some |an? )?(?:particular|special|specific|certain|dedicated)
    (?: (?:kind|sort|type)s? of)? (?=[a-z]) => \1\s
[,;:.-]+ (?:and |but )?(?:nobody|no one|no-one) (?:here |really |ever )?(?:minds|cares|bothers|objects|notices
    |complains|will mind|would mind|will notice)(?: that| it| about that| about it)?(?:,? (?:surely|right
    |do they|will they|would they|i'm sure|i hope))?\W*$ => ?
"""
