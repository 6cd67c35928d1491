"""Ways of asking that come to a plainer one: "what's in boat rig", "X is 6 cm, right?", "clause for Y?".

A text that is not understood as it stands is read once more in the plainer words. Each line takes words of
structure away or puts others in their place; what is named (items, facts, measures) stays as it was written.
"""

from __future__ import annotations

import re
from functools import cache

from kb.reader.phrases.sayings import sayings
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern

# Alternatives by name, parted by spaces, "_" for a space; `<name>` stands for them in the lines below.
_NAMES = """
our: my your his her our their one's the a an
kit: kit kitbag kit_bag kit_list locker issue seabag sea_bag wardrobe sea_chest chest holdall stores? bag
who: lads lasses boys girls chief instructor skipper boss mates? storeman bosun sergeant officer leader
who: old_hands? others crew team trainer master supervisor coach teacher foreman mentor word
claims: says said reckons thinks tells_me told_me tells_us told_us claims swears insists has_it believes
claims: maintains assures_me assured_me keeps_saying keeps_telling_me keeps_telling_us is_sure is_certain
book: book order notice rule rules manual guide clause paragraph section regulations? law label
says: says? said reckons? thinks? tells?_me told_me tells?_us told_us claims? swears? insists? has_it
modal: is are does do did can could will would may must should has have was were
verb: wears? gets? goes go comes? needs? owns? hangs? stands? takes? counts? sits?
it: it they he she i we you that those these there
hair: hair moustaches? beards? whiskers sideburns nails fingernails fringe ponytail plaits?
clause: clause paragraph para section article rule regulation passage bit
rules: tells? lets? makes? has gets? forbids? bans? bars stops? allows? permits? requires? obliges?
rules: gives? sets?
rules: rules? orders? says states mentions? keeps? puts? governs? is_it_for prohibits? demands? limits? fixes
"""
# A pattern, "=>", what stands in its place; tried in this order, and every line that fits applies. A line
# set in goes on with the one before.
_LINES = r"""
\b(?:has|have|'s|'ve) (?:just |only )?(?:stuck|pinned|clipped|sewn|stitched|fixed|stapled|glued)
    \s(?=(?:an?|the|some|his|her|my|their)\b) => wears\s
^(?:it's |is it )?only (.+?) (?:who |that )?(?:may |can |should |must |gets? to )?(wear|carry|own)s?
    \s(.+)$ => who may \2 \3
\b(put|putting|pull|pulling|have|having|keep|keeping|wear|wearing) (my|the|his|her|our|a) ((?:[\w-]+ )?hood)
    \sup\b => wear \2 \3
\b(hood(?: of [\w -]+?)?) be up\b => \1 be worn
\b(hood(?: of [\w -]+?)?) be down\b => \1 not be worn
\b(?:be|go|stay|come|keep|being) clean[- ]shaven\b => be without a beard
\bin (?:my|a|his|her|your|the|our) (?:(?:back|trouser|trousers|coat|side|hip|jacket|shirt) )?pockets?
    (?=\W*$| (?:in|on|while|when|with|if|during)\b) => on me
\b(when|if|while) (?:the|my|our|a) (?:(?:station|senior|inspecting) )?(?:<who>|captain|officer|superintendent
    |old man|inspector) (?:\w+ )?(?:inspects?|is inspecting|comes to inspect)(?: us| me| the crew
    | the station)?\b
     => during inspection
\bfor (?:all|everyone|everybody|us all|all of us|all hands|the lot of us)\W*$ => ?
\bwhat(?:'s| is) the (?:right|proper|correct|best|approved) way (?:to|of) (\w+?)(?:ing)?
    \s(it|them|(?:my|the|our|a) [\w ]+) => how do I \1 \2
\bblowing (?:at |up to |around )?(?=\d) => , wind\s
\bwhat (?:must|has to|should|needs to) (?:be on|go on)\b(?! my| the) => what must be worn
\b(?:carry|take|bring|haul|lug|stow|put) (?:my|the|some|our) (?:tools|kit|gear|things|stuff|belongings|lunch)
    (.*?) in (an?|my|the) (\w+) => carry \2 \3\1
^(?:surely |so )no ([\w' -]+?)\W*$ => may I go without \1?
^(?:surely|obviously|of course|no doubt|clearly|presumably|i (?:assume|presume|gather)(?: that)?),?
    \s(?=\w+(?:'s|'re| \w+) ) =>
\b(i'm|i am|he's|she's|we're|we are) only (?=\w+ing\b) => \1
,? because (?:the|our|my) (?:\w+ )?(?:<book>) says so\W*$ => ?
^(?:the|our|my) (?:\w+ )?(?:<book>) says?(?: that)? (you|i|we|people) can\b => can \1
^(i(?:'m| am) (?:no|not an?) [\w' -]+?), but (?=(?:can|may|must|do|could|should)\b) => \1,\s
(?:\s*[,;.:?!]|\s+-)\s*is (?:that|it|this) (?:even |really )?(?:a thing|on|a goer|possible|doable
    |legit)\s*\??\s*$ => ?
^(.+?) (?:and|with|plus) (.+?),? (?:both )?(?:at once|together|at the same time|at one time)\W*$
     => may I wear \1 with \2?
^(?:there(?:'s| is) )?(?:nothing|no rule) (?:in the \w+ )?(?:against|to stop me) pinning\b => may I pin
\bpin (?:(?:a|an|any|my|the|some) )?(?:something|anything|(?:ribbon|popp(?:y|ie)|rosette|flower|sprig|note
    |brooch|flag|favou?r|charm|feather|daffodil|keepsake|sticker|trinket)(?:e?s)?)
    \s(?:to|on|onto|into) => pierce
\b(where .*?)\b(?:stops?|finish(?:es)?)(?=\W*$) => \1 end
^what (?:all )?(?:goes|has to go|must go|should go) on (?:for|in|with) => what must I wear in\s
\b(which clause mentions|(?:which|what) (?:clause|rule|paragraph) (?:is it that )?(?:bans|forbids|prohibits
    |bars|stops)) (?:a second|another|a further|an extra|more than one|two) => \1 the\s
^(?:what|which) (?:(?:sort|kind|type|style) of )?(?:toe|toecap|toe cap|sole|heel|tread|lining|upper)s?
    \s(?:do|does|should|must) (.+?) have\W*$ => what is the construction of \1?
\b(how many .+?) (do|should|must|may|can) (i|we|you|he|she|they) (?:sew|stitch|pin|put|fasten)(?: on)?
    (?: (?:my|the|his|her) \w+)?\W*$ => \1 \2 \3 wear?
\bright (?=(?:beside|next to|by|near|in front|behind|under|above|on top|here|there|now)\b) =>
^(?:does|do|must|should|will) (.+?) (?:have to |need to )?come off\b => must I take off \1
^(?!(?:which|what|who)\b)([\w' -]{3,40}?) (?:lets|allows|permits) (?:people|us|everyone|everybody|you|folk)
    \s(?:to )?(wear|carry|grow|keep|use|have) (.+?)(?:,? so .*)?$ => may I \2 \3 at \1?
\b(?:lug|cart|haul|tote|heft|schlep) (?=(?:a|an|my|the)\b) => carry
(?<=[.;:,] )([\w'-]+(?: [\w'-]+)?) in\?$ => \1?
^(?:will|would|can|could) (.+?) go (?:on|with) (my|the|an?) (.+?)\W*$ => may I wear \1 with \2 \3?
\b(?:hang|hold) on to (?=(?:the|my|an?)\b) => still wear
^(?:what|which) (?:(?:bits|pieces|items|kinds|sorts|things|parts) of )?(.+?)
    \s(?:counts?|qualif(?:y|ies)|is classed|are classed|is treated|are treated) as (.+?)\W*$
     => which clause mentions \2 \1?
\bwhich (?:one |\w+ )?takes (?:the )?(?:primary|first|top|senior|upper) (?:position|place|spot)\b
     => which comes first
\b(my|our|his|her|their|the|an) ID(?! (?:cards?|discs?|badge|tags?|pass|number|bracelet)\b) => \1 ID card
\b(need|wear|have) (?:any |some |an? )?(?:particular|special|specific|certain|dedicated)
    (?: (?:kind|sort|type)s? of)? (?=[a-z]) => \1\s
^(.*\b(?:<modal>|<verb>).*?)(?:\s*[,;.:?!]|\s+-)\s*(?:so )?(?:<modal>|wo|ca|sha)(?:n't|'t| not)?
    \s(?:<it>)(?: not)?
    \s*\??\s*$ => \1?
(?:\s*[,;.:?!]|\s+-)\s*(?:is that|is it|am i|is he|is she) (?:so|right|true|ok|correct|fine
    |wrong)\s*\??\s*$ => ?
(?:\s*[,;.:?!]|\s+-)\s*(?:yes|no|yeah|right|correct|true|ok|okay|agreed|or not|not so|fine)\s*\??\s*$ => ?
^(?!.*\b(?:sides?|left|goes?|breast|sleeve|shoulder|arm|hand|pocket|chest|wrist|collar|lapel
    |on (?:the|my|a))\b)(.+)(?<!\bor)(?<!\bto)(?<!\bis)(?<!\bworn)(?<!\band)(?<!\bnot)(?<!\bthe)(?<!\ball)
    \s(?:right|innit|correct)\s*\??\s*$ => \1?
^(?:so )?what(?:'s| is) the (?:full |whole |complete |entire |right |proper )?(?:<kit>|outfit|get-up)
    \s(?:for|of|in|with) (?:the )?(.+?)\W*$ => what is worn in \1?
(?:\s*[,;.:?!]|\s+-)\s*(?:i (?:think|believe|take it|suppose|hear))\s*\??\s*$ => ?
,? (?:so )?i(?:'m| am| was|'ve been| have been) (?:told|assured)\s*[.?!]*\s*$ => ?
^(?:so )?(?:the|my|our|a|an|some|that|one of (?:the|my|our)) (?:(?!(?:<book>)\b)[\w'-]+ ){1,5}?(?:<claims>)
    (?: that|,)?\s(?!(?:he|she|they|his|her|their|so|he's|she's|to|not to)\b) =>
^\s*(?:i(?:'m| am| was|'ve been| have been) told|i(?:'ve)? heard?|they (?:<says>))(?: that|,)?\s+
    (?!(?:to|not to)\b) =>
\b(?:is|are|stays?|falls?) (?:still )?within (?:the )?(?:rules?|limits?|tolerance|regulations?)\b => is ok
\bwill (?:pass|do)\b(?=\W*$) => is ok
\bwhat(?:'s| is| was) the (?:reason|point|idea|thinking|sense|logic|purpose) (?:that|for|why|behind|of
    |in)?\s* => why
\bhow come\b => why
\bwho (?:all )?gets to\b => who may
^(?:does|do|would|will) (.+?) counts? as (allowed|permitted|ok|okay|fine|banned|forbidden|prohibited
    |required|compulsory|optional)(?: (?=\w+\W*$)| as )? => is \1 \2 as\s
\bwhat(?:'s| is| are) (.+?) (?:made|built|knitted|woven|cut|sewn)(?: out)? (?:of|from)\b
     => what is the construction of \1
^(.*?)[,:;]?\s(?:is it )?(?:the )?(\w+ )?on,? or (?:the )?(?:\w+ )?off\W*$ => \1 \2?
\b(?:is|are) (.+?) (?:a problem|an issue|a worry)\b
    (?=\W*$|,? (?:in|with|on|at|for|when|if|under|while)\b) => may I have \1
^(?:there(?:'s| is) )?(?:nothing|no rule|no clause|no law|no bar) (?:in the \w+ )?(?:to stop|against
    |that stops|stopping|that bans|banning|that forbids|to forbid|to say i can't wear)
    \s(?:me |us |him |her |anyone )?(?:from )?(?:wearing |having )?(.+?)(?:,? is there)?\W*$ => may I wear \1?
\b(?:pin|stick|push|poke|sew|fasten) (?:my|a|an|the) [\w' -]+? through (?:my|a|an|the)\b => pierce my
\bpaint(?:ing|ed|s)? (my|your|his|her|our|their) nails\b => wear nail varnish
^([^.;!]*)\bwhat (?:do|must|should|shall|would|does|can) (i|we|you|he|she|one|they) do with\s
     => \1how must \2 wear\s
\ba couple(?: of)?\s(?=\w+s\b) => two\s
^(.*\b(?:wear|wears|wearing|wore|carry|carries|carrying|has|have|'ve|'s got|got|stuck|put|is in|in)\b.*)[.;]
    \s(?:is (?:that|this|it) |all )?(?:allowed|ok|okay|legal|permitted|permissible|fine|acceptable
    |right|in order)\?$ => \1?
\b(?:has|have|is|are) (.+?) (?:gone|been (?:phased out|withdrawn|scrapped|dropped|retired|done away with))
    (?: (?:for good|now|yet|completely|altogether|by now))*\W*$ => may I still wear \1?
\b(?:swap|change|exchange|trade|switch) (?:my |the |his |her |our )?(.+?) (?:for|with)
    \s(.+) => wear \2 instead of \1
\b(?:would|will) (.+?) (?:pass|do|serve|be good enough)\b(?= (?:with|in|for|on|at)\b|\W*$) => is \1 ok
^(?:does it matter|is it important|do you know|any idea|do you care|who knows),? (which|what|how|where|when)
    \s(?!does|do|is|are|must|may|can)(.+?) the (.+?) (goes|go|sits|sit|hangs|hang)\b => \1 \2 does the \3 go
^is there (?:a |any |an upper )?(?:maximum|limit|max|cap) (?:for|on|to|of|as to) (how (?:many|much|long|big
    |high|wide|far)\b.+?)\W*$ => \1?
^is there (?:a |any |an upper )?(?:maximum|limit|max|cap)(?: number)? (?:for|on|to|of|as to)
    (?: the number of)? (?!.*(?:<hair>))((?:[\w'-]+ )*?[\w'-]*[^\Ws]s
    (?: (?:in|with|on|at|for|when|if|while) .+?)?)\W*$ => how many \1 may be worn?
^is there (?:a |any |an upper )?(?:maximum|limit|max|cap) (?:for|on|to|of|as to) (.*(?:<hair>).*?)\W*$
     => how long may \1 be?
^is there (?:a |any |an upper )?(?:maximum|limit|max|cap) (?:for|on|to|of|as to) (.+?)\W*$
     => how big may \1 be?
\b(?:is|are)(?:n't)? (.+?) (?:finished(?: with)?|done (?:away )?with
    |over and done with)\W*$ => may I still wear \1?
^(?:can|may|could|am i allowed to) (?:i |we )?borrow (.+?)(?: (?:from|off|of) .+)?\W*$ => may anyone lend \1?
,? or (?:can|may|could|should|do|shall) (?:i|we|he|she|they) (?:just )?(?:go|do|be|work)
    \s(?:without(?: them| it)?|bare\w*|with nothing)(?: on)?\W*$ => ?
^what(?:'s| is| are) (?:a |an |the |my )?([\w'-]+(?: [\w'-]+){0,3}) for\W*$ => when must \1 be worn?
^(?:is it |does )?(.+?) or .+?(?: that| which)?
    \s(?:goes|comes|go|come|ranks?|is worn) (?:first|higher|above|on top)\W*$ => in what order is \1 worn?
\bis there (?:a|any|no) way (?:round|around|out of|past) (?:the |a )?no[- ](\w+(?: \w+)?)[- ]rule\b
     => may I wear \1
\bwhich (?:one |\w+ )?(?:goes|comes|ranks|sits|is worn) (?:first|higher|highest|ahead|above)\b
     => which comes first
\b(how \w+)'s\b => \1 is
\bwhat(?:'s| is) the (?:biggest|largest|smallest) (?:that )?(.+?)
    \s(?:(?:can|may|could|must) be|(?:is |are )?(?:allowed|permitted))\b => how big may \1 be
\bwhat(?:'s| is) the (?:widest|narrowest|broadest) (?:that )?(.+?)
    \s(?:(?:can|may|could|must) be|(?:is |are )?(?:allowed|permitted))\b => how wide may \1 be
\bwhat(?:'s| is) the (?:longest|shortest) (?:that )?(.+?)
    \s(?:(?:can|may|could|must) be|(?:is |are )?(?:allowed|permitted))\b => how long may \1 be
\bwhat(?:'s| is) the (?:highest|tallest|lowest) (?:that )?(.+?)
    \s(?:(?:can|may|could|must) be|(?:is |are )?(?:allowed|permitted))\b => how high may \1 be
\bwhat(?:'s| is) the (?:most|furthest|farthest) (?:that )?(.+?) (?:can|may|could) (\w+) => how far may \1 \2
\bthe (?:maximum|max|minimum|min|greatest|least|largest|right|permitted|allowed|required)
    \s(?=(?:\w+ )?(?:height|length|width|size|number|diameter|distance)\b) => the
\bwho (?:signs off|signs|okays|approves|hands out|issues|authorises|decides on) (?:on )?(?:a |an
    |the )? => who grants
\bwhose (?:decision|call|job) is (?:it to grant )?(?:a |an |the )? => who grants
^(?:please )?(?:list|show me|give me|tell me|name)?\s?(?:everything|the lot|the whole(?: lot)?
    |the full(?: list)?
    |all the (?:kit|clothes|items|gear|things)|all)\s(?:(?:that|which) goes? )?
    (?:in |for |of |on |with )?(?:the )?(.+?)
    (?: please)?\W*$
     => what is worn in \1?
^where (?:do|can|could|would) i (?:look up|look for|find|read about|read up on)\s => which clause mentions\s
\b(\w+) on,? or (?:off|not)(?= (?:in|on|at|for|with|when|if|during|while)\b) => \1
^which way (?:round |up |about |out )?(?:do|does|should|must|is|are) (.+?)(?: go(?:es)?| face
    | point| sit| lie
    | be worn| worn)?\W*$ => how is \1 worn?
\b(?:loose|running|spare) end\b => free end
^((?:i|we)(?:'ve)? (?:hold|have|own|got|earned|won|received|passed)\b[^,.;:?!]+)
    ,\s(?=(?:can|may|must|do|should|am|are|could) (?:i|we)\b) => \1.\s
\bwhat (colours?|shades?) (?:do|does) (.+?) come in\b => what colour is \2
^(.*?)[,:;]? (?:the )?(?:full|whole|complete|entire) (?:list|kit|outfit|lot|set)\W*$ => what is worn in \1?
\b(?:made|makes?|making) up\b(?! of) => are worn in
\b(?:has|have|needs?|keeps?|holds?)(?: got)?(?: to)?(?: have| keep| own)?\b(.*?) (?:in|for) (?:<our>)
    \s(?:<kit>)\b => must own\1
^(?:(?:<our>) )?(\w+(?: \w+)?s')(?: own)? kit\W*$ => what must \1 own?
\b(how many .*?)(?: keep| hold| stow)\W*$ => \1 own?
^(?:(?:please )?(?:give|show|find|tell|quote|read|get|point)(?: me)?(?: to)?(?: out)? |what(?:'s| is) )?
    (?:the |what |which )?(?:<clause>)(?: number)? (?:for|on|about|covering|re)\s => which clause mentions\s
^what (?:all )?goes? (?:in|into|on with|with)\b => what is worn in
\b(?:which|what) (?:<clause>) (?:is it that )?(?:<rules>)\b => which clause mentions
\bis (.+?) (?:a |(?:a )?part of (?:the |my )?)?kit (?:that )?(i|we|he|she|they|an? \w+)
    \s(must|should|has to|have to) (?:own|have|keep)\b => must \2 own \1
^when (?:must|should|do|does) (.+?) (?:have to )?be off\b => when may \1 not be worn
(?:\s*[,;.:?!]|\s+-)\s*(?:is (?:that|it|this) (?:in order|a no|a yes|allowed|legal|permitted|above board)
    |right or wrong|true or not)\s*\??\s*$ => ?
^(?!what|where|how|when|which|who)(?:so )?(the .+?) (?:goes|go) (over|under|on top of|beneath|underneath)
    \s(the .+?)\W*$ => is \1 worn \2 \3?
^(?:so )?(?:it|that)(?:'s not| isn't| is not) (?:really |actually )?(?:true|right|correct|so) that
    \s(.+?)(?:,? is it)?\W*$ => \1?
^(?:so )?nothing (?:stops|bars|prevents|keeps) (?:me|us|him|her|anyone|you) (?:from )?(?:wearing|having)
    \s(.+?)(?: on)?(?:,? does it)?\W*$ => may I wear \1?
^is there (?:a|any|no) (?:way|getting) (?:round|around|out of|past) (?:wearing |having to wear )?
    (?!(?:the |a )?no[- ])(.+?)\W*$ => may I leave off \1?
^(?:is|are|am) (.+?) (?:excused|exempt from|exempted from|let off|spared) (?:wearing )?
    ((?:the|a|an|his|her|their|my) .+?)\W*$ => may \1 go without \2?
^(?:can|may|could) (i|we|he|she|they|an? \w+) get away without lacing\s => must \1 lace\s
^is (?:nobody|no one|no-one) allowed\b => is anyone allowed
\b(can|may|could) (i|we|he|she|they) (?:lose|ditch|shed|skip|drop(?=.+ (?:in|for|when|while|at)\b))
    \s(?:the|my|our|his|her)\s => \1 \2 leave off the\s
\b(?:sporting|donning|rocking)\b => wearing
^(?:a |i'm a |i am a )?(?:new|newly joined|fresh|young) (?=[\w ]{2,30} here\b) =>
^(?:please )?(?:show|read|quote|open|print)(?: me)? ([a-z]{1,2}\d{1,3}[a-z]?)\W*$ => clause \1
^(?:the )?(?:kit|packing|dress|clothing) list,? ((?!for\b|of\b).+? (?:branch|crew|team|section|party))\W*$
     => what must the \1 own?
\b(?:drill|bore|make|cut|punch|burn) (?:a |an |any |some )?(?:holes?|slots?)
    \s(?:in|into|through)\b => pierce
\b(?:of|for) (?:some|any) (?:sort|kind|type|description)\b =>
^what (?:went|goes|was put) on (?:for|with|in)\b(?! my\b) => what was worn in
(?<!nothing)(?<!anything)(?<!all)(?<!everything)(?<!none) but (?=(?:with|without|not)\b) => ,\s
^(?!.*\balone\b)(.+?)(?:\s*[,;:.?!]|\s+[–-])\s*(?:(?:that|this|it)(?:'s| is)|they(?:'re| are))? ?(?:no good
    |not on|a no-no|a no no|no go)(?:,? (?:is|are) (?:it|that|this|they))?\W*$ => may I have \1?
\b(?:is|are) (.+?) (?:no good|a no-no|a no no|no go)\W*$ => may I have \1?
"""


def _named() -> dict[str, str]:
    names: dict[str, list[str]] = {}
    for line in _NAMES.strip().splitlines():
        name, _, words = line.partition(": ")
        names.setdefault(name, []).extend(words.split())
    return {name: "|".join(words).replace("_", " ") for name, words in names.items()}


@cache
def _ways() -> tuple[tuple[Pattern, str], ...]:
    named = _named()
    found = []
    for line in _LINES.strip().replace("\n    ", "").splitlines():
        source, _, put = line.partition(" =>")
        for name, words in named.items():
            source = source.replace(f"<{name}>", words)
        source = source.replace("colour", "colou?r")  # words are read before they are spelt alike
        found.append((Pattern(source, re.IGNORECASE), put.strip().replace(r"\s", " ")))
    return tuple(found)


_SENTENCE = Pattern(r"(?<=[.;!?]) +")


def _put(text: str, lines: tuple[tuple[Pattern, str], ...]) -> str:
    low = text.lower()
    for pattern, put in lines:
        if pattern.is_out(low):
            continue
        changed = pattern.sub(f" {put} " if put[:1].isalpha() else put, text)
        if changed != text:
            text, low = changed, changed.lower()
    return " ".join(text.split())


def rephrased(text: str, first: bool = False) -> str | None:
    """The text in plainer words; None where no line fits. `first`: by the lines for what misleads."""
    if first:
        changed, lines = text, sayings(text, first=True)
    else:
        from kb.reader.words.figures import in_figures  # noqa: PLC0415  most questions are understood without

        changed, lines = in_figures(text), (*sayings(text), *_ways())
    changed = _put(changed, lines)
    sentences = _SENTENCE.split(changed)
    if len(sentences) > 1:  # what opens a text opens each sentence of it
        changed = " ".join(_put(sentence, lines) for sentence in sentences)
    return changed if changed.strip(" ?") and changed != " ".join(text.split()) else None


def as_mended(found: Understood) -> str:
    """The text with each misspelt word as it was understood."""
    text, following = found.text, len(found.text) + 1
    for token in reversed(found.tokens):
        written = token.text.casefold()
        apart = token.end < following  # "won't" is two words written as one
        if apart and written.isalpha() and token.low.isalpha() and token.low != written:
            text = text[: token.start] + token.low + text[token.end :]
        following = token.start
    return text
