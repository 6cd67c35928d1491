"""Ways of asking by sense: whether one may, must or need not, who, when, where, and what is worn.

The form of a line is that of `rephrase.py`. Lines stand in blocks under words of which a text must have one:
the others are neither looked at nor compiled. `first` lines are for what would be read otherwise than it is
meant, the rest (`sayings_more.py`, `sayings_last.py`) for what is not understood as it stands.

A line stands here if it answers more than one line of the sheets, is a plain way of asking of any thing, or
keeps a text from being taken for another: what fits one sentence alone is not worth its place.
"""

from __future__ import annotations

import re
from functools import cache

from kb.reader.phrases.fellows import FELLOWS
from kb.reader.phrases.inspections import SEEN
from kb.reader.phrases.misleading import MISLEADING
from kb.reader.phrases.misleading_more import MISLEADING_MORE
from kb.reader.phrases.telephones import TELEPHONES
from kb.text import Pattern

Line = tuple[Pattern, str]

# Stretches of a pattern by name; `<name>` stands for them in the lines below.
_NAMES = r"""
i: (?:i|we|one|you|he|she|they|anyone|anybody|someone|somebody|everyone|everybody|people|folk)
me: (?:me|us|one|you|him|her|them|anyone|anybody|someone|somebody|everyone|everybody|people|folk)
the: (?:the|my|our|your|his|her|their|one's|an?|this|that|any)
subject: (?:<i>|<the> [\w' -]+?)
books: (?:<the> )?(?:[\w-]+ ){0,2}?(?:rules?|regs|regulations?|orders?|rulebook|book|manual|code|clauses?)
wear: (?:wear|have on|have|put on|don|sport|use|be in|go in|go about in|appear in|turn out in)
wearing: (?:wearing|having on|having|putting on|donning|sporting|using|being in|going about in|appearing in)
fine: (?:ok|okay|o\.k\.|allowed|all right|alright|fine|permitted|acceptable|legal|lawful|legit|proper|right
    |in\sorder|possible|permissible|correct|cool|kosher|a problem|an issue|wrong|a breach)
so: (?:is|would|will|was) (?:that|it|this)(?: be)?(?: still| really)? <fine>
tell: (?:(?:please |kindly |just |so |and |now |but )*(?:(?:can|could|would|will) (?:you|someone|somebody
    |anyone|anybody)\s)?(?:please |kindly |just |possibly )*(?:tell|remind|show|advise|inform|let|help)(?:\s
    (?:me|us))?(?: know)?(?: please| again| exactly)?|(?:please )?(?:say|advise|confirm|explain|clarify|state)
    |do you (?:happen to )?know|does (?:anyone|anybody|someone) know|(?:any|have you any|got any)\s(?:idea
    |clue)s?|(?:i|we) (?:just )?(?:need|want|wish|would like|'d like|should like|would love|'d love)(?: to\s
    (?:know|check|be sure|be told|find out|ask))?|(?:i'm|i am|we're|we are) (?:not (?:quite |entirely\s
    |really\s)?(?:sure|certain|clear)(?: about)?|unsure|uncertain|wondering|puzzled|in doubt|asking)|not\s
    (?:sure|certain)|unsure|wondering|(?:i|we) (?:wonder|forget|forgot|have forgotten|'ve forgotten
    |can't\sremember|cannot remember|can't recall|don't know|do not know|never know|keep forgetting
    |was\swondering|were\swondering)|(?:do|does) <books> say|what (?:do|does) <books> say about)
owing: (?:(?:still|really|actually|also|always|even) )*(?:need|require|have to (?:have|hold|get|own)
    |need to (?:have|hold|get)|have|hold)
credential: (?:the|an?|my|our|his|her|their|any)? ?(?:[\w'-]+ ){0,3}?(?:waiver|exemption|dispensation|note
    |certificate|qualification|appointment|licence|chit|permit|ticket)
before: (?:for|(?:in order )?to <wear>|(?:before|when|while|if) <wearing>|(?:before|if) <i> (?:can |may |want
    \sto )?<wear>)
own: (?:my|our|your|his|her|their|one's)
nobody: (?:nobody|no one|no-one|none of (?:us|them|you)|not a soul)
rulebook: (?:<the> )?(?:book|rules|regs|regulations|rulebook|rule book|dress code|letter of the (?:law
    |rules))
sep: (?:\s*[,;.:?!]+\s*|\s+[-–—]+\s*)
whether: (?:yes|no|yep|yeah|nope|true|false|untrue|right|wrong|correct|incorrect|agreed|fact|fiction|myth
    |aye|nay)
hoping: (?:i (?:do )?(?:hope|suppose|take it|presume|assume|trust|imagine|gather|expect|guess|bet)|surely
    |presumably|one hopes|i'd (?:hope|imagine|guess|have thought)|you'd (?:think|hope)|no doubt|i dare ?say)
shortly: in (?:a nutshell|short|brief|a word|one word|plain (?:english|words)|simple terms)
very: (?:really|actually|still|quite|strictly|absolutely|totally|completely|entirely|ever|even|now|then
    |always|considered|deemed|thought|regarded as|classed as|seen as|counted as|treated as|altogether
    |simply|such)
be: (?:is|are|was|were|be|been|am|isn't|aren't|wasn't|weren't|'s|'re|s)
next: (?=\s*[.,;:?!)]|\s*$|\s+(?:to|if|for|in|on|at|with|when|while|whilst|aboard|under|over|during
    |without|as|then|these|this|anyway|though|once|where|after|before|here|there|nowadays|today|by|just
    |because)\b|\s+-)
any: (?:any|a|some|the)
unit: (?:mm|cm|metres?|meters?|inch(?:es)?|feet|millim\w+|centim\w+|imperial|metric|old money)
choosing: (?:choice|taste|discretion|judge?ment|preference|liking|conscience)
whoever: (?:<me>|the wearer|the individual|each(?: of us| member)?|everyone|the member)
volume: book|order|rules?|notice|manual|guide|clauses?|regulations?|instructions?|rulebook
healer: doctor|doc|physician|medic|gp|surgeon|optician|nurse|consultant|dentist|safety
comrade: (?:old |new )?(?:cooks?|bosun|mates?|oppos?|lads?|lass(?:es)?|boys?|girls?|men|crew|chief|boss
    |skipper|cox|clerk|instructor|storem[ae]n|storekeeper|sergeant|foreman|others?|driver|neighbou?rs?|friends?|colleagues?
    |rumou?rs?|gossip|old hands?|usher|porter|steward|receptionist|secretary|trainer|coach)
somebody: (?:<i>|(?:<the> )?(?:(?!is\b|are\b|was\b|has\b|wears?\b|in\b)[\w'-]+ ){0,3}?[\w'-]+)
says: (?:(?:always|all|both|still|even|now|just|also|keeps?|kept|has|have|been) )*(?:says?|said|saying
    |reckons?|reckoned|thinks?|thought|claims?|claimed|swears?|swore|insists?|insisted|maintains?
    |maintained|believes?|argues?|argued|going on|tells? <me>|told (?:<me>|<the> [\w'-]+)|telling <me>
    |assures? <me>|assured <me>|promised(?: <me>)?|warned <me>|has it|have it|is (?:sure|certain|adamant
    |convinced|positive))(?: to <me>)?(?: blind| once| firmly| flatly| loudly| again| for sure| on good
    \sauthority)?
blamed: (?:at fault|faulted|blamed|criticised|punished|reported|marked down|shot|hanged|hauled up|charged
    |fined|in for it)
echo: (?:(?:but )?(?:i|we) (?:said|say|told (?:him|her|them)|think|thought) (?:no|not|otherwise|never|so
    |yes)[.;,]+ )?(?:(?:he|she|they|it|that)(?:'s| is|'re| are| was| were) (?:right|wrong|mistaken|lying
    |joking|having me on)(?:,? (?:surely|right|(?:isn't|wasn't) (?:he|she|it|that)|(?:aren't|weren't)
    \sthey))?|not so|(?:that's |it's |what )?(?:nonsense|rubbish|rot|tosh|twaddle|hogwash|poppycock)(?:,?
    \s(?:right|surely|isn't it))?|(?:is|are|was|were|am) (?:it|they|that|this|he|she|i|we)(?: (?:right(?:
    \sabout that)?|in the (?:right|wrong)|correct|wrong|having me on|pulling my leg|talking (?:rubbish
    |nonsense|rot)|joking|mistaken|telling the truth|to be believed|really|so))?|who(?:'s| is) right
    |(?:should|do|can|shall) (?:i|we) (?:believe|trust|listen to|heed|follow) (?:him|her|them|that|it)|can
    \sthat be(?: right| true| so)?|(?:has|have|did) (?:he|she|they|i) got? (?:that|it) (?:right|wrong)
    |(?:is there )?(?:any|some) truth in (?:it|that)|what do <books> say)
good: (?:(?:an?|any|one)(?: \w+)? (?:option|possibility|goer|runner|starter)|on the cards|fair game|the
    \s(?:done|correct|proper|right) thing|right and proper|a safe bet|in line with <rulebook>|in the clear)
fit: (?:admissible|allowable|excusable|tolerated|tolerable|countenanced|sanctioned|approved(?: of)?
    |endorsed|licit|suitable|appropriate|advisable|sensible|wise|feasible|an? (?:good|acceptable|proper)
    \s(?:idea|thing|choice|plan)|correct dress|regulation|an? (?:definite |clear |firm )?yes
    |(?:perfectly\s|quite |entirely )?normal|(?:standard|common|normal|usual) practice|fair enough
    |justified|accepted|legitimate|valid|cricket|kosher|allowable|within <rulebook>)
bad: (?:(?:an?|any)(?: kind of| sort of| form of| \w+)? (?:crime|sin|offen[cs]e|misdemeanou?r|felony|faux
    \spas|transgression|hanging matter|disciplinary matter)|(?:an?|any)(?: \w+)? (?:violation|infringement
    |contravention|breach)(?: of (?:<rulebook>|etiquette|discipline|protocol|good order))?|out of (?:line
    |order|the question|bounds)|beyond the pale|(?:bad|poor) form|asking for trouble|pushing (?:<own> luck
    |it)|chancing (?:<own> arm|it)|(?:bending|stretching|flouting) <rulebook>|overstepping the mark|taking
    \sliberties|a liberty|cheeky|(?:not|never) (?:<very> )*(?:done(?! by)|the (?:done\s)?thing|cricket)
    |off the (?:menu|table|cards|list|agenda)|ruled out|a step too far|off[- ]limits|frowned up?on|verboten|a
    \sno[- ]no|a no[- ]go)
ill: (?:an? (?:blunder|error|slip|gaffe)|unlawful|unacceptable|inadmissible|improper|impermissible|illicit
    |inappropriate|unsuitable|criminal|sinful|disallowed|taboo|(?:forbidden|prohibited|banned) outright|a
    \smistake|an? (?:definite\s|clear |firm |flat |straight )?no|naughty|cheating|bad manners|rude
    |disrespectful|a bad (?:idea|thing)|unwise|a breach)
free: (?:(?:left (?:up |down )?|up |down )to (?:<whoever>|(?:<own> )?(?:own |free |personal )*<choosing>)
    |left open|a matter of (?:(?:free|personal|individual|pure|one's own) )?<choosing>|at
    \s<own> (?:own\s)?discretion|(?:an?|<own>)(?: own| personal| free| individual)+ (?:choice|affair
    |lookout|business|call|decision)|<own> (?:choice|affair|lookout))
due: (?:an absolute must|non[- ]negotiable|de[- ]rigueur|part of the (?:uniform|dress)|a fixture
    |(?:standard|regular|normal) issue)
needful: (?:essential|imperative|vital|unavoidable|indispensable|expected of (?:me|us|you)|demanded|stipulated
    |insisted (?:up)?on|laid down|a necessity|a condition|incumbent)
consent: (?:(?:any|an?|the|some|my|special|prior|written|express|formal|(?:any(?:one|body)|some(?:one|body))'s
    |<the> [\w -]{2,30}?'s) )*(?:permission|approval|authori[sz]ation|authority|consent|clearance|say-so
    |go-ahead|blessing|leave)(?: (?:from|of) (?:any(?:one|body)|some(?:one|body)|<the> [\w -]{2,30}?))?(?:
    \s(?:first|beforehand|in advance))?
seek: (?:so |and |but )?(?:do|does|did|must|should|will|would) (<i>|(?:<the>|an?) [\w' -]{2,30}?) (?:<very> )*
    (?:(?:need|have) to )?(?:need|ask(?: for)?|get|seek|obtain|request|require|have) <consent>
minds: (?:(?:really |actually |ever |much |surely )*(?:minds?|cares?|objects?|bothers?|complains?
    |fuss(?:es)?|notices?|worr(?:y|ies)|kicks up a fuss|gives a (?:hoot|damn|monkey's|toss)))
pocketed: (?:phones?|mobiles?|mobile phones?|telephones?|smartphones?|keys|penknife|pocket knife|knife
    |lighter|torch|radio|whistle|pen|cigarettes|wallet|vape)
in_pocket: (?: (?:off|on silent|switched off|turned off))?,? (?:in|inside) (?:my|the|a|his|her|our|your
    |their) (?:(?:back|hip|side|top|breast|jacket|coat|shirt|trouser|front|inside|left|right|closed
    |zipped) )*pockets?
from_when: (?:today|tonight|tomorrow|soon|shortly|(?:this|next) (?:week|month|year|term|season|morning
    |evening)|(?:on |next |this )*(?:mon|tues|wednes|thurs|fri|satur|sun)day)
have_on: (?:i|he|she|we)(?:['’]ve|['’]s| have| has)? (?:already )?(?:wears?|have|has|got|owns?)?(?: on)? ?
and_wants: (?: on| already)? (?:and|but) (?:i |he |she |we )?(?:wants?|would like|['’]d like|fancy
    |need)(?: to (?:wear|have|add|put on))?
as_well: (?: one)?(?: on)?[.,;?!]*(?: (?:any chance|<so>|(?:may|can|could) <i>(?: do that)?|<fine>))?\W*$
there: (?=\W*$|[.,;:?!]| (?:in|on|at|while|when|whilst|if|as|for|to|with|during|near|by|from|inside
    |outside|behind)\b)
"""

_FIRST = TELEPHONES.rstrip() + MISLEADING.rstrip() + MISLEADING_MORE.rstrip() + FELLOWS


@cache
def _named() -> tuple[tuple[str, str], ...]:
    lines = (_NAMES + SEEN.lstrip()).strip().replace("\n    ", "").splitlines()
    pairs = [(f"<{name}>", words) for name, _, words in (line.partition(": ") for line in lines)]
    return tuple(reversed(pairs))  # a name stands for what those before it are made of


@cache
def _compiled(block: str) -> tuple[Line, ...]:
    found = []
    for line in block.splitlines():
        source, _, put = line.partition(" =>")
        for name, words in _named():
            source = source.replace(name, words)
        found.append(
            (Pattern(source.replace("colour", "colou?r"), re.IGNORECASE), put.strip().replace(r"\s", " "))
        )
    return tuple(found)


@cache
def _blocks(lines: str) -> tuple[tuple[str, ...], dict[str, tuple[int, ...]]]:
    """The blocks of some lines in their order, and the places of those for which a word is needed."""
    parts = lines.replace("\n    ", "").removeprefix("\n# ").rstrip().split("\n# ")
    places: dict[str, tuple[int, ...]] = {}
    blocks = list[str]()
    for place, part in enumerate(parts):
        words, _, block = part.partition("\n")
        blocks.append(block)
        for word in words.split():
            places[word] = (*places.get(word, ()), place)
    return tuple(blocks), places


def sayings(text: str, first: bool = False) -> tuple[Line, ...]:
    """The lines that may fit a text, in their order. `first`: those for what misleads."""
    if first:
        return fitting(_FIRST, text)
    from kb.reader.phrases.sayings_last import SAYINGS  # noqa: PLC0415  most questions are understood without

    return fitting(SAYINGS, text)


def fitting(lines: str, text: str) -> tuple[Line, ...]:
    """The lines of some blocks of which a text has a word, in their order."""
    plain = "".join(sign if sign.isalpha() or sign == "'" else " " for sign in text.lower().replace("’", "'"))
    blocks, places = _blocks(lines)
    words = {*plain.split(), *plain.replace("'", " ").split()}
    found = {place for word in words for place in places.get(word, ())}
    return tuple(line for place in sorted(found) for line in _compiled(blocks[place]))
