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
missing: left forgotten forgot lost mislaid can't_find cannot_find don't_have haven't_got can't_see dropped
book: book order notice rule rules manual guide clause paragraph section regulations? law label
says: says? said reckons? thinks? tells?_me told_me tells?_us told_us claims? swears? insists? has_it
modal: is are does do did can could will would may must should has have was were
verb: wears? gets? goes go comes? needs? owns? hangs? stands? takes? counts? sits?
it: it they he she i we you that those these there
all: everyone everybody all the_rest others everyone_else everybody_else all_the_rest
clause: clause paragraph para section article rule regulation passage bit
rules: tells? lets? makes? has gets? forbids? bans? bars stops? allows? permits? requires? obliges?
rules: gives? sets?
rules: rules? orders? says states mentions? keeps? puts? governs? is_it_for prohibits? demands? limits? fixes
"""
# A pattern, "=>", what stands in its place; tried in this order, and every line that fits applies. A line
# set in goes on with the one before.
_LINES = r"""
^(.*\b(?:<modal>|<verb>).*?)(?:\s*[,;.:?!]|\s+-)\s*(?:so )?(?:<modal>|wo|ca|sha)(?:n't|'t| not)?
    \s(?:<it>)(?: not)?
    \s*\??\s*$ => \1?
(?:\s*[,;.:?!]|\s+-)\s*(?:is that|is it|am i|is he|is she) (?:so|right|true|ok|correct|fine
    |wrong)\s*\??\s*$ => ?
(?:\s*[,;.:?!]|\s+-)\s*(?:yes|no|yeah|right|correct|true|ok|okay|agreed|or not|not so|fine)\s*\??\s*$ => ?
,? [\w'-]+(?: [\w'-]+)? and all(?=\s*[.,?!]|\s*$) =>
^(?!.*\b(?:sides?|left|goes?|breast|sleeve|shoulder|arm|hand|pocket|chest|wrist|collar|lapel
    |on (?:the|my|a))\b)(.+)(?<!\bor)(?<!\bto)(?<!\bis)(?<!\bworn)(?<!\band)(?<!\bnot)(?<!\bthe)(?<!\ball)
    \s(?:right|innit|correct)\s*\??\s*$ => \1?
\bstill (?:good|valid)\b => still ok
^(?:my|our|the|an?) ([a-z]{1,3}\d{1,2}) (?:<claims>)(?: that|,)? (?:he|she|they) => \1\s
^(?:and |but |so |what about |how about )*(?:my|our|the|his|her|an?)
    \s(?:<who>|mate|oppo|friend|colleague|buddy)(?:,? who(?:'s| is)|,? (?:he|she)(?:'s| is)|,)
    \s(an? .+)$ => and what about \1
\b(two|three|four|\d) watches\b => \1 wristwatches
^(?:so )?what(?:'s| is) the (?:full |whole |complete |entire |right |proper )?(?:<kit>|outfit|get-up)
    \s(?:for|of|in|with) (?:the )?(.+?)\W*$ => what is worn in \1?
^what (?:has |is |was )?(?:changed|different|new)(.*?) (?:with|in|under|by) the (?:second|2nd) edition\W*$
     => what's different since the first edition\1?
^what (?:has |is |was )?(?:changed|different|new)(.*?) (?:with|in|under|by) the (?:third|3rd) edition\W*$
     => what's different since the second edition\1?
(?:\s*[,;.:?!]|\s+-)\s*(?:true or false|yes or no|have i got that right|that's (?:right|so|ok
    |true))\s*\??\s*$ => ?
(?:\s*[,;.:?!]|\s+-)\s*(?:which|that|it|this)(?: will|'ll| would| should)? pass(?:es)?\s*\??\s*$ => ?
(?:\s*[,;.:?!]|\s+-)\s*(?:is (?:it|that) )?within (?:the )?(?:tolerance|limits|rules)\s*\??\s*$ => ?
(?:\s*[,;.:?!]|\s+-)\s*(?:i (?:think|believe|take it|suppose|hear))\s*\??\s*$ => ?
,? (?:so )?i(?:'m| am| was|'ve been| have been) (?:told|assured)\s*[.?!]*\s*$ => ?
,? (?:so )?(?:the|my|our) (?:new )?(?:<who>) (?:<says>)\s*[.?!]*\s*$ => ?
^(?:so )?(?:the|my|our|a|an|some|that|one of (?:the|my|our)) (?:(?!(?:<book>)\b)[\w'-]+ ){1,5}?(?:<claims>)
    (?: that|,)?\s(?!(?:he|she|they|his|her|their|so|he's|she's|to|not to)\b) =>
^\s*(?:the|my|our|a|an|some|one of (?:the|my)) (?:new )?(?:<who>) (?:<says>)(?: that|,)?\s+
    (?!(?:to|not to)\b) =>
^\s*(?:i(?:'m| am| was|'ve been| have been) told|i(?:'ve)? heard?|they (?:<says>))(?: that|,)?\s+
    (?!(?:to|not to)\b) =>
\b(?:is|are|stays?|falls?) (?:still )?within (?:the )?(?:rules?|limits?|tolerance|regulations?)\b => is ok
\bwill (?:pass|do)\b(?=\W*$) => is ok
\bwhat(?:'s| is| was) the (?:reason|point|idea|thinking|sense|logic|purpose) (?:that|for|why|behind|of
    |in)?\s* => why
\bhow come\b => why
\bwho (?:all )?gets to\b => who may
\b(?:in |during )?(?:what|which) months? (is|are|do|does|may|can|must|should)\b => when \1
^(?:does|do|would|will) (.+?) counts? as (allowed|permitted|ok|okay|fine|banned|forbidden|prohibited
    |required|compulsory|optional)(?: (?=\w+\W*$)| as )? => is \1 \2 as\s
^(?!(?:which|what|who|when|where|how|does|do|is|are|can|may)\b)(.+?) counts? as (?:an? )?(\w+)(?: in
    \s(?:its|their) own right)?\W*$ => which clause mentions \1 as \2?
\bwhat(?:'s| is| are) (.+?) (?:made|built|knitted|woven|cut|sewn)(?: out)? (?:of|from)\b
     => what is the construction of \1
\bwhat (?:material|fabric|cloth|stuff)(?: is| are| must| should| does| do) (.+?)(?: be| have to be)?
    \s(?:made|cut|sewn)?(?: (?:of|from|out of))?\W*$ => what is the construction of \1?
^(.*?)[,:;]?\s(?:is it )?(?:the )?(\w+ )?on,? or (?:the )?(?:\w+ )?off\W*$ => \1 \2?
\bwill (.+?) (?:be|cause) (?:a problem|an issue|trouble|a worry|any trouble)\b
    (?=\W*$|,? (?:in|with|on|at|for|when|if|under|while)\b) => may I have \1
\b(?:is|are) (.+?) (?:a problem|an issue|a worry)\b
    (?=\W*$|,? (?:in|with|on|at|for|when|if|under|while)\b) => may I have \1
^(?:there(?:'s| is) )?(?:nothing|no rule|no clause|no law|no bar) (?:in the \w+ )?(?:to stop|against
    |that stops|stopping|that bans|banning|that forbids|to forbid|to say i can't wear)
    \s(?:me |us |him |her |anyone )?(?:from )?(?:wearing |having )?(.+?)(?:,? is there)?\W*$ => may I wear \1?
^(?:i(?:'d| would) rather (?:not|go without)|i (?:don't|do not) want to) (?:have |wear )?(.+?)[.;,]
    \s(?:must|need|do|does)\s(?:i|we)(?: have to| need to)?\W*$ => must I wear \1?
^(?:would )?(?:nobody|no one|no-one|anybody|anyone|somebody|someone|would anybody|would anyone)
    \s(?:would |will |'d )?(?:mind|object to|complain about|object if i wore) (.+?)(?:,? would (?:they|he
    |she))?\W*$ => may I wear \1?
\b(?:put|stick|push|poke|run|shove) (?:a |an |any |my |the )?(?:pins?|needles?|holes?)
    \s(?:in|into|through)\b => pierce
\b(?:pin|stick|push|poke|sew|fasten) (?:my|a|an|the) [\w' -]+? through (?:my|a|an|the)\b => pierce my
\bbe (?:dyed|bleached|tinted|coloured|painted|sprayed) (?=\w+(?: \w+)?\W*$) => be\s
\bpaint(?:ing|ed|s)? (my|your|his|her|our|their) nails\b => wear nail varnish
\bhow many watches\b => how many wristwatches
\b(where .*)\bends? up\b => \1 go
^([^.;!]*)\bwhat (?:do|must|should|shall|would|does|can) (i|we|you|he|she|one|they) do with\s
     => \1how must \2 wear\s
\ba couple(?: of)?\s(?=\w+s\b) => two\s
^(.*\b(?:wear|wears|wearing|wore|carry|carries|carrying|has|have|'ve|'s got|got|stuck|put|is in|in)\b.*)[.;]
    \s(?:is (?:that|this|it) |all )?(?:allowed|ok|okay|legal|permitted|permissible|fine|acceptable
    |right|in order)\?$ => \1?
^(.*\b(?:wear|wears|wearing|wore|carry|carries|carrying|has|have|'ve|'s got|got|stuck|put|is in|in)\b.*)[.;]
    \s(?:(?:am i|is (?:he|she)|are (?:they|we)) in the wrong|(?:do i |should i |shall i )?send (?:him
    |her|them) (?:back|home|away)|(?:can|may|could) (?:i|he|she|they|we)(?: do (?:that|so))?)\?$ => \1?
\b(?:has|have|is|are) (.+?) (?:gone|been (?:phased out|withdrawn|scrapped|dropped|retired|done away with))
    (?: (?:for good|now|yet|completely|altogether|by now))*\W*$ => may I still wear \1?
^(?:does|do|would) the (?:\w+ ){0,2}(?:<book>)s? (?:let|allow|permit) (.+?)(?: to)?
    \s(?=(?:wear|carry|grow|have|go|keep|own|use|put|leave|take|display|sport)\b) => may \1\s
\b(?:swap|change|exchange|trade|switch) (?:my |the |his |her |our )?(.+?) (?:for|with)
    \s(.+) => wear \2 instead of \1
^(?:so )?(?:does |do )?(?:nobody|no one|no-one) (?:ever )?(?:(?:may|can|is allowed to|gets to) )?(?:ever )?
    (wear|carr(?=ies)|carry|lend|own|cut|shorten|alter|wash|iron|take|put|grow|use|borrow|keep|leave|tuck|roll)
    (?:s|ies)?\b(.*?)(?:,? not even\b[^,.;?]*)?\W*$ => may anyone \1\2?
(?:\s*[,:;.]|\s+-)\s*(?:any|no|is that a|would that be a) (?:problems?|trouble|issues?|worries|objections?)
    (?: with (?:that|it|this))?\s*\??\s*$ => ?
\b(?:would|will) (.+?) (?:pass|do|serve|be good enough)\b(?= (?:with|in|for|on|at)\b|\W*$) => is \1 ok
^what(?:'s| is| was) the (?:earliest|latest|first day|last day|first date|last date)(?: that| when)?
    \s(i|we|one|you|anyone|they) (can|may|could|might) => when \2 \1
^am i too (?:late|early) to => may I
^(?:does it matter|is it important|do you know|any idea|do you care|who knows),? (which|what|how|where|when)
    \s(?!does|do|is|are|must|may|can)(.+?) the (.+?) (goes|go|sits|sit|hangs|hang)\b => \1 \2 does the \3 go
^(?:does it matter|is it important|do you know|any idea|do you care|who knows),? (which|what|how|where|when)
    \s=> \1\s
^is there (?:a |any |an upper )?(?:maximum|limit|max|cap|minimum)(?: number)? (?:for|on|to|of|as to)
    (?: the)? (length|width|height|size|diameter|depth|reach) of\b => what is the \1 of
^is there (?:a |any |an upper )?(?:maximum|limit|max|cap)(?: number)? (?:for|on|to|of|as to)
    (?: the number of)? (.+?)\W*$ => how many \1 may be worn?
^(?:does|do|is|are) (.+?) (?:outranks?|ranks? above|come before|go before|take precedence over|senior to
    |above) .+?(?:badge|device|medal|pin|ribbon|strip|'s)\b.*?\W*$ => in what order is \1 worn?
\b(?:is|are)(?:n't)? (.+?) (?:finished(?: with)?|done (?:away )?with
    |over and done with)\W*$ => may I still wear \1?
^(?:can|may|could|am i allowed to) (?:i |we )?borrow (.+?)(?: (?:from|off|of) .+)?\W*$ => may anyone lend \1?
,? or (?:can|may|could) (?:i|we|he|she|they) (?:skip|leave|take off|drop|ditch) (?:it|them)
    (?: off| behind| at home| in (?:my|his|her|the|their) \w+)?\W*$ => ?
^(?:i(?:'m| am) )?(?:after|looking for|trying to find|hunting for) (?:the |a |some )?(?:<clause>)s?
    \s(?:on|about|for|covering)\s => which clause mentions\s
\b(?:which|what) (?:officer|authority|person|body|boss|office)
    \s(?:gives|grants|issues|signs|(?:can|may|has to|must) (?:give|grant|issue|sign))
    (?: permission| leave| authority)?(?: for)?\b => who grants
,? or (?:can|may|could|should|do|shall) (?:i|we|he|she|they) (?:just )?(?:go|do|be|work)
    \s(?:without(?: them| it)?|bare\w*|with nothing)(?: on)?\W*$ => ?
^what(?:'s| is| are) (?:a |an |the |my )?([\w'-]+(?: [\w'-]+){0,3}) for\W*$ => when must \1 be worn?
^(?:is it |does )?(.+?) or .+?(?: that| which)?
    \s(?:goes|comes|go|come|ranks?|is worn) (?:first|higher|above|on top)\W*$ => in what order is \1 worn?
\bis there (?:a|any|no) way (?:round|around|out of|past) (?:the |a )?no[- ](\w+(?: \w+)?)[- ]rule\b
     => may I wear \1
\bwhich (?:one |\w+ )?(?:goes|comes|ranks|sits|is worn) (?:first|higher|highest|ahead|above)\b
     => which comes first
\blook(?:ed|s|ing)? over\b => examined
\b(how \w+)'s\b => \1 is
^come (\w+), => in \1,
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
    |all the (?:kit|clothes|items|gear|things)|all)\s(?:in |for |of |on |with )?(?:the )?(.+?)
    (?: please)?\W*$
     => what is worn in \1?
\bthat (?:others|other people|the rest|nobody else|no one else) (?:do not|don't|does not|doesn't|do
    |does)\b =>
^where (?:do|can|could|would) i (?:look up|look for|find|read about|read up on)\s => which clause mentions\s
^(?:quote|show|give|read) me the one (?:on|about|for)\s => which clause mentions\s
^where(?:abouts)? in (?:the )?(?:\w+ ){1,3}(?:are|is)\s => which clause mentions\s
^where(?:abouts)? in (?:the )?(?:\w+ ){1,3}(?:can|could|do|would|will|must) (?:i|we|you|one)
    \s(?:find|read(?: about)?|see|look up|look for)\s => which clause mentions\s
\b(\w+) on,? or (?:off|not)(?= (?:in|on|at|for|with|when|if|during|while)\b) => \1
^which way (?:round |up |about |out )?(?:do|does|should|must|is|are) (.+?)(?: go(?:es)?| face
    | point| sit| lie
    | be worn| worn)?\W*$ => how is \1 worn?
\b(?:loose|running|spare) end\b => free end
\bwhat (colours?|shades?) (?:do|does) (.+?) come in\b => what colour is \2
\b(?:metal|exact|proper|correct) (colours?|shade|size|length|width|height)\b => \1
\b(?:shine|gleam|sparkle)\b => be shiny
^(.*?)[,:;]? (?:the )?(?:full|whole|complete|entire) (?:list|kit|outfit|lot|set)\W*$ => what is worn in \1?
\b(?:made|makes?|making) up\b(?! of) => are worn in
\b(?:get |am |be |are )?(?:kitted|rigged|fitted|togged|decked) out (?:in|with) for\b => wear in
\b(?:beyond|besides|on top of|over and above|apart from) what (?:<all>) (?:owns?|has|have|keeps?|needs?
    |gets?)\b =>
\b(?:has|have|needs?|keeps?|holds?)(?: got)?(?: to)?(?: have| keep| own)?\b(.*?) (?:in|for) (?:<our>)
    \s(?:<kit>)\b => must own\1
^(?:(?:<our>) )?(\w+(?: \w+)?s')(?: own)? kit\W*$ => what must \1 own?
\b(how many .*?)(?: keep| hold| stow)\W*$ => \1 own?
^(?:(?:please )?(?:give|show|find|tell|quote|read|get|point)(?: me)?(?: to)?(?: out)? |what(?:'s| is) )?
    (?:the |what |which )?(?:<clause>)(?: number)? (?:for|on|about|covering|re)\s => which clause mentions\s
^(?:the |what(?:'s| is) the )?(?:kit|rig|dress|packing|clothing) list (?:for|of) (?:the )?(.+?)\W*$
     => what is worn in \1?
^(.+?)[,:]? (?:kit|dress|clothing) list\W*$ => what is worn in \1?
^what (?:all )?goes? (?:in|into|on with|with)\b => what is worn in
\bwhat reason is there (?:for|to)\b => why
^(?:so )?what (?:would|will|must|has|needs) (?:have to |need to |to )?
    (?:change|be different|be otherwise|happen),? (?:for|before|so that|until)
    \s(me|us|him|her|them|you|an? \w+|[A-Z]\d+) (?:to|can|may|could) => why may \1 not
\b(?:which|what) (?:<clause>) (?:is it that )?(?:<rules>)\b => which clause mentions
\bis (.+?) (?:a |(?:a )?part of (?:the |my )?)?kit (?:that )?(i|we|he|she|they|an? \w+)
    \s(must|should|has to|have to) (?:own|have|keep)\b => must \2 own \1
\b(?:can|may|could) (.+?) do without (.+?) in (?:<our>) (?:<kit>)\b => may \1 choose not to own \2
\benough kit\b => enough
^when (?:must|should|do|does) (.+?) (?:have to )?be off\b => when may \1 not be worn
^(?:(?:from|at|in|above|over|beyond) )what (?:wind|wind speed|strength of wind|force of wind|temperature|heat
    |weather)\s(do|does|must|may|can|should|is|are)\b => when \1
^(?:according to|as per|as far as|if i believe) (?:<our>) (?:<who>|mate|friend|colleague|buddy|oppo)
    (?: knows?| goes| is concerned)?,?\s =>
\b(?:some(?:body|one)|every(?:body|one)|they|people) (?:swore|swears|claimed|insisted|maintained|assured me)
    (?: to me)?(?: that)?\s =>
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
^(?:can|may|could) (.+?) get away without (?:wearing )(.+?)\W*$ => may \1 go without \2?
^(?:can|may|could) (i|we|he|she|they|an? \w+) get away without lacing\s => must \1 lace\s
^is (?:nobody|no one|no-one) allowed\b => is anyone allowed
\b(can|may|could) (i|we|he|she|they) (?:lose|ditch|shed|skip|drop(?=.+ (?:in|for|when|while|at)\b))
    \s(?:the|my|our|his|her)\s => \1 \2 leave off the\s
\b(?:sporting|donning|rocking)\b => wearing
\b(?:hidden|concealed)\b(?=\W*$| (?:by|with|in|for|on|from|when)\b) => covered
^(?:one|some|two) of (?:<our>) \w+, (an? [\w ]+?), (?:has |have |is |'s )?(?:turned|turns) (?:out|up)
    \s(?:for|on|in|at) (.+?) (?:with|in|wearing) (?:both )?(.+?) and (.+?)(?: on)?[.;?]?$
     => may \1 wear \3 with \4 for \2?
^(?:a |i'm a |i am a )?(?:new|newly joined|fresh|young) (?=[\w ]{2,30} here\b) =>
^(?:please )?(?:show|read|quote|open|print)(?: me)? ([a-z]{1,2}\d{1,3}[a-z]?)\W*$ => clause \1
^(?:the )?(?:kit|packing|dress|clothing) list,? ((?!for\b|of\b).+? (?:branch|crew|team|section|party))\W*$
     => what must the \1 own?
\b(?:drill|bore|make|cut|punch|burn) (?:a |an |any |some )?(?:holes?|slots?)
    \s(?:in|into|through)\b => pierce
\b(?:of|for) (?:some|any) (?:sort|kind|type|description)\b =>
\b(?:the|my|our) (?:doctor|doc|medic|mo|chief|boss|office) (?:gave|has given|granted|has granted) me
    \s(an? (?:\w+ )?(?:waiver|permit|exemption|pass)) (?:for (?:my|the) \w+)?(?=[.,;]) => I have \1
^((?:an? |my |our )[\w ]+? with .+?)[:,;.-]+ (?:does|do|will|would) (?:he|she|it|they) pass(?: muster)?\W*$
     => is \1 ok?
^(.+?) that (?:come|comes|reach|reaches|go|goes|stand|stands) (\d.+?) (?:is|are) (?:long|high|tall|deep
    |wide|big) enough\b => are \1 that are \2 ok
^what (?:went|goes|was put) on (?:for|with|in)\b(?! my\b) => what was worn in
\bfor anything (?:but|except|other than) (?=\w+ing\b) => if not\s
\bby (?:a|the|my|our) (?:tailor|seamstress|dressmaker|cobbler|outfitter)\b =>
\bwhat(?:'s| has| is)? (?:changed|different|new) (?:about|with|for|in) (.+?) since the (\w+) edition\b
     => what's different since the \2 edition about \1
^((?:can|may|could|do|does|is|are|must|should) .+?) (?:plus|along with|together with) (.+?)
    \s(?:isn't|aren't|is not) (?:a problem|an issue) => \1 with \2
^((?:the |my |an? )?[\w' -]+?) (?:plus|along with|together with) ((?:the |my |an? )?[\w' -]+?) (?:isn't
    |aren't|is not|won't be) (?:a problem|an issue|trouble)(?:, (?:is|are|will) (?:it|they))?\W*$
     => may I wear \1 with \2?
^(?:and )?what if (?:i|we|you|he|she|they) (?:start|begin|go|get) (?=\w+ing\b) => and if\s
^not (?=(?:while|when|if|during)\b)(.+?),? (?:though|then|surely|either|mind)\W*$ => and \1?
(?<!nothing)(?<!anything)(?<!all)(?<!everything)(?<!none) but (?=(?:with|without|not)\b) => ,\s
\bstands? in for\b => instead of
\bwhat(?:'s| is| are| was| were) (.+?) (?:to |supposed to |meant to )?look like\b => how must \1 be
^(?!.*\balone\b)(.+?)(?:\s*[,;:.?!]|\s+[–-])\s*(?:(?:that|this|it)(?:'s| is)|they(?:'re| are))? ?(?:no good
    |not on|a no-no|a no no|no go)(?:,? (?:is|are) (?:it|that|this|they))?\W*$ => may I have \1?
\b(?:is|are) (.+?) (?:no good|a no-no|a no no|no go)\W*$ => may I have \1?
^(.+?) (?:is|are) (?:no good|not on),? (?:is|are) (?:it|that|this|they)\W*$ => may I have \1?
"""


def _named() -> dict[str, str]:
    names: dict[str, list[str]] = {}
    for line in _NAMES.strip().splitlines():
        name, _, words = line.partition(": ")
        names.setdefault(name, []).extend(words.split())
    return {name: "|".join(words).replace("_", " ") for name, words in names.items()}


@cache
def _ways(lines: str) -> tuple[tuple[Pattern, str], ...]:
    named = _named()
    found = []
    for line in lines.strip().replace("\n    ", "").splitlines():
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
    of_colour = any(
        word in text.casefold() for word in ("colo", "finish", "shade of", " come", " be any", " be some")
    )
    if of_colour:
        from kb.reader.phrases import any_colour  # noqa: PLC0415  few questions are of this
    if first:
        lines = (*sayings(text, first=True), *_ways(any_colour.MISLEADING if of_colour else ""))
    else:
        from kb.reader.phrases.idioms import IDIOMS  # noqa: PLC0415  as above
        from kb.reader.words.figures import in_figures  # noqa: PLC0415  most questions are understood without

        more = any_colour.LINES if of_colour else ""
        lines = (*sayings(text), *_ways(IDIOMS + _LINES), *_ways(more))
    changed = _put(text if first else in_figures(text), lines)
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
