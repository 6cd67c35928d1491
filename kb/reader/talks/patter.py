"""The words of a turn that tie it to the talk and say nothing else, and loose ways of saying how things are.

"Fine, and on leave then?", "sorry, wrong one, I meant the parade rig", "and at 12, if it stays dry?".
"""

from __future__ import annotations

import datetime
from collections.abc import Collection, Iterator
from functools import cache

from kb.measures import UNITS
from kb.model.lookup import Lookup
from kb.model.months import MONTHS
from kb.model.questions import Query, Reading
from kb.model.values import NO
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import CREDENTIAL_NOUNS
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.question import understand
from kb.reader.talks.loose import MORE_ELSE, MOVED
from kb.reader.talks.people import PEOPLE
from kb.reader.talks.talked import Talk, item_alone
from kb.reader.words.tokens import tokenize, word_key
from kb.text import Pattern

_WEATHERS = (
    "dry|wet|foul|fine|fair|clear|cold|cool|warm|hot|mild|dark|light|rough|calm|foggy|misty|windy|rainy|"
    "sunny|snowy|stormy|icy|freezing"
)
# What is put in other words in any further turn: pattern, then what stands in its place.
_ALWAYS = rf"""
\b(he|she|they) (?:keep|have|wear|leave)\s(?:his|hers|theirs)(?: own)?(?: on)?(?=\W*$|[,;]| (?:in|at|with|
 when|while|if|too|as well)\b) => \1 wear it
\b(has|have|['\u2019]s|['\u2019]ve) only (?=got (?:an?|the|my|his)\b) => \1\s
\b((?:when|if|once|while|as soon as) (?:i|we|you|he|she|they)) (?:step|go|come|get|walk|head|pop|nip|move)s?
 (?:\sback| straight)? (?=(?:indoors|inside|outdoors|outside)\b) => \1 are\s
^((?:(?:and|but|so|even|also)\b,? )*)when there(?:['\u2019]s| is| are)(?= ) => \1if there is
^(?:(?:ok|okay|right|fine|well|so|oh|ah) )+(?=(?:and|but|what about|how about)\b) =>
^(?:(?:and|but|so|ok|no|nope|sorry|oh|oops|what about|how about|make (?:that|it)|i mean|i meant)\b[ ,.:;]*)*
 ((?:19|20)\d\d)(?: then| i mean| i meant)?\W*$ => and in \1?
^(no|nope|sorry|oh) (?=i (?:mean|meant)\b) => \1,\s
^((?:(?:no|nope|sorry|oh|oops|ah|er|well|wait)\b[ ,.:;!]+)+)i (?:meant|mean)(?: to say)?[ ,:]+
 (?=(?:in|on|at|for|an?) |\d|minus ) => \1
^(?:(?:hm+|hmph|humph|huh|oh|ah|aha|ugh|wow|i see|got it|thanks|thank you|understood|noted|interesting|
 funny|odd|shame|pity|fair enough|makes sense|ok|okay|oh dear|oh well)[,.!;: ]*[,.!;:] +)+(?=\w) =>
\b(have|has|having|had) (it|them|those|these) on\b => wear \2
\b(i|we|he|she|they)(?:['\u2019]ve got|['\u2019]ve|['\u2019]s got| have got| has got| have| has)\s
 ((?:the|an?|my|his|her) (?:[\w'-]+ )?[\w'-]+) on(?= ?[?.,;]| ?$| as well| too) => \1 wear \2
\b(?:if |when |while |as long as |provided |so long as )?(?:it|the weather)(?:['\u2019]s)?
 \s(?:stays|remains|keeps|staying|remaining) (dry|wet|fine|foul|fair|clear)\b => in \1 weather
\b(?:it|the weather)(?:['\u2019]s)? (?:stays|remains|keeps|gets|turns|goes|staying|remaining|getting
 |turning)\s(?=(?:really |properly |very |quite )?(?:{_WEATHERS})\b) => it is\s
\b(it|(?:the |my )?[\w-]+(?: [\w-]+)?) (?:drops|falls|goes down|comes down|goes up|rises|climbs|
 warms up|cools down|
 cools|gets up|picks up|heats up|increases|decreases|sinks|shoots up|builds up|eases|
 moves) to (?=[\w -]*\w) => \1 is\s
\b(it|(?:the |my )?[\w-]+(?: [\w-]+)?)(?:['\u2019]s| has| had| is) (?:now |since |just )?(?:dropped|fallen|
 gone down|come down|gone up|risen|climbed|warmed up|cooled down|got up|picked up|increased|sunk|eased|moved|
 gone) to (?=[\w -]*\w) => \1 is\s
^((?:and |but |so )*(?:do|does|may|can|could|must|should|am|is|are)\b.*\w) (?:beneath|
 underneath)(?=(?: then| too| as well| at all)*\W*$)
  => \1 under it
\bhow (long|wide|high|tall|big|far|deep|many|much|thick)['\u2019]s\b => how \1 is
\b(over|under|above|inside|outside|on top of) ((?:my|the|an?|his|her) [\w' -]+?),? or (over|under|
 beneath|below|inside|outside|on top of)(?: (?:it|them|that))?(?=\W*$) => \1 or \3 \2
^(?:(?:and|but|so|ok|okay|right|now|well|no)\b[ ,]*)*(?:(?:(?:going|coming|getting|to (?:go|get)) )?
 back to|returning to) (?=(?:the|my|that|an?)\s\w) => and what about\s
\b(?:once |when |if |after )?(?:the )?(fog|rain|snow|mist|wind|storm|spray|snowfall|drizzle|frost|
 gale)(?:['\u2019]s| has|
 is| had)? (?:now |all |finally )?(?:lifted|cleared(?: up| off)?|gone|over|stopped|passed|ended|
 died down|melted|blown
 over|dropped(?: off)?|lifts|clears(?: up| off)?|stops|passes|dies down|melts|drops off|
 eases off) => and if there's no \1
\b(?:properly|really|proper|downright|absolutely|quite|rather|fairly|nice and|good and|reasonably)\s
 (?=(?:{_WEATHERS})\b) =>
^(?:and |but |so )?(?:what(?:['\u2019]s| is| was) the (?:reason|reasoning|point|thinking|logic|sense|idea)
 (?: (?:for|of|behind|in) (?:that|it|this))?|how come|for what reason|what for|why so|on what grounds)\W*$
  => why?
^((?:and |but |so )*)(?:(?:is|are) (?:there|it|they) )?(?:in )?(?:any|a) (?:particular|special|certain|set|
 specific|given|prescribed|fixed) (colour|size|length|width|height|material|cloth|way|order|place|number)\b
  => \1what \2
\b(?:the|that|this|the whole) thing(?! (?:is|that|to|i|we|about)\b) => it
^(?:and |but |so )*(?:(?:and |but )?what (?:did|does|do|will) (?:the|that|your) (?:old |new |
 earlier )?(?:book|order|rule|
 regulation|instruction|clause|manual)s? (?:say|said|have|allow)|(?:what|how) (?:was|were|is|
 will) (?:it|that|the rules?|things)
 (?: be)?)(?: (?:about|on|of|for) (?:it|that|this|them))?(?: back)? (?=(?:in|on|before|until|after|from|
 at the time) ?[\w ]*\d{{4}}) => and\s
^(?:and |but |so )*do(?:es)? (?:the|its|their) (colour|size|length|width|height|material|pattern|
 shape) (?:of (?:it|them) )?
 (?:matter|count)\W*$ => what \1 must it be?
\bback then\b|\bin those days\b => then
^(?:and |but |so )*unless (?=\w) => and if\s
^(?:and|but|so|then),? (?=who\b) =>
^and (?=not (?:in|at|on|with|when|if|while|under|over|during|for|among|near)\b) =>
^(?:and |but |so )*why(?:['\u2019]s| is| was| has) (?:that|it|this) (?:so|changed|different|
 been changed|like that|now)\W*$ => why?
^((?:in|at|on|when|for|while|if|under|during) [\w' -]+?),? what else(?: (?:must|may|can|do|should) (?:i|we)
 (?: wear| need| have)?)?\W*$ => what must I wear \1?
^((?:(?:and|but|so|ok|now|then|or),? )*)back (?=(?:in|on|at|outside|outdoors|inside|indoors|aboard|
 ashore|afloat)\b) => \1
\bnot (?:in|at|on|with|for) [\w' -]+?,? but (?:rather )?(?=(?:in|at|on|with|for) ) =>
\b(?:is|are) (it|they|those|(?:the|my) [\w' -]{{3,30}}?) to be (?=\w+(?:ed|en|t)\b) => must \1 be\s
\bhow (?:often|frequently|regularly)\b => when
^(?:on )?(?:one|both|each|either|just one) (?:sides?|arms?|sleeves?|shoulders?|cuffs?|hands?|lapels?)
 (?: or (?:on )?(?:one|both|two|the other|either))?\W*$ => where is it worn?
^(?:and |but |so )*(?:(?:what|how) about )?(?:my|our|the|his|her|a|an|this|that|some)\s
 (?:{PEOPLE})(?:,? who)?(?:['\u2019]s| is) ((?:an? |the )?[\w' -]+?)[,;.:]+ (?:and )?
 (can|may|must|could|should|does|would) \s*(?:he|she|they)\b
  => \2 \1
^(?:and |but |so )*(?:(?:what|how) about )?(?:my|our|the|his|her|a|an|this|that|some)\s
 (?:{PEOPLE}) (?:from|in|of|over in|on|at|with) ((?:the |an? )?[\w' -]+?)[,;.:?]+ (?:and |so )?
 (can|may|must|could|should|does|would) (?:he|she|they)\b => and \2 someone from \1
\b((?:the|my|our) (?:(?!ha[sd]|have|do|did|not\b|never\b|no\b|
 \w+n['\u2019]t\b)[\w'-]+ ){{1,4}}?)(?:has |had |have )?
 (?:now |just |already )?order(?:s|ed) (?:it|that|this|them)\b => ordered by \1
^((?:and |so |for |with |at |in |what about )+.+?), ((?:an? )?[\w' -]{{2,30}}?)
 \s(?:say|for instance|for example)\W*$ => \1, \2?
^(?:and |but |so )*(?:mine|my one|ours|his one|his|hers)(?:['\u2019]s| is| are)\s
 (?!(?:at |about |only |just )*\d)([\w' -]+?)[,;.:]+ (?:and |so )?(?:is|are|will|would|does|do)
 \s(?:that|it|this|they)(?: still)?(?: be)? (?:ok|okay|fine|all right|allowed|permitted|
 pass|do|acceptable|in order|good enough)(?: too| then)?\W*$ => may it be \1?
\b(how [a-z]+ (?:is|are|must|may|can|should|will)) (?:hers|his|theirs|yours|mine|ours)\b => \1 it
,? \bin (?:my|his|her|our|their) (?:own )?case\b,? =>\s
^(?:and |but |so )*(?:my|our|his|her) (?:{PEOPLE}),? ((?:an?|the) [\w' -]+?)[,;.:]+ (?:and )?
 (can|may|must|could|should|does|would) (?:he|she|they)\b => \2 \1
^(?:and |or )+(?=(?:under|over|below|above) (?:the|my|an?|his|her|our|it|them|that|those)\b) =>
\b(?:which|what) (?:standing )?(?:orders?|rules?|books?|regulations?|instructions?|directives?|manuals?)
 \s(?:says?|said|lays?|states?) (?:so|that|this|it)(?: down)?\W*$ => which clause says so?
^((?:and |but |so )*)(?:would|will|does|do) (?:that|it|this|the same)(?: last)?(?: one| answer| rule)?\s
 (?:still |also )?(?:go(?! (?:over|under|underneath|above|below|beneath|beside|behind)\b)
 |apply|hold|count|stand|be so|be true|be (?:ok|okay|fine|allowed)) => \1what about
"""
# What is left away, or put otherwise, where a turn is not understood as it stands.
_ELSE = r"""
^(?:(?:fine|great|good|thanks|thank you|understood|fair enough|never ?mind|cheers|got it|i see|all ?right|
 very well|noted|cool|lovely|brilliant|perfect|interesting|aha|ha+|hm+|hmph|humph|huh|oh|ah|ugh|tut|
 sigh|right|ok|okay|
 good to know|makes sense|thought so|as i thought|i thought so|i thought as much|shame|pity|(?:what a|
 that(?:['\u2019]s)? a)
 (?:shame|pity)|bother|damn|drat|blast|phew|funny|odd|strange|weird|curious|surprising|typical|ouch|
 yikes|wow|blimey|crikey|
 gosh|oh dear|dear me|oh well|ah well|too bad|worth a (?:try|go|shot)|no luck|just my luck|no way|
 really|seriously|you don['\u2019]t say|
 as expected|so be it|hang on|hold on|wait|one moment|let me see|let['\u2019]s see|good point|
 that helps|that(?:['\u2019]s| is)
 (?:odd|strange|funny|good|clear|fine|news|nice|helpful|strict|harsh|a relief|useful))(?: then| to know|
  to me| of you)?
 [,.!;: ]*[,.!;:] +)+(?=\w) =>
^(?:(?:no|nope|sorry|oops|oh|wait|hang on|hold on|my mistake|wrong \w+|(?:scratch|scrap|forget|strike|
 ignore|cancel) that|correction|i meant(?: to say)?|i mean|i should have said|i should say|make (?:that|it)|
 rather|let me rephrase|actually|apologies|my bad|i misspoke|i got that wrong|that(?:['\u2019]s| is) wrong|
 not that)\b[,.;:! -]+)+(?=\w) =>
^(?:(?:mind you|mind|by the way|btw|then again|on second thoughts?|come to think of it|besides|plus|
 also|oh and|
 and also|as it happens|admittedly|in fact|to be fair|i forgot to say|i should (?:say|
 add))\b[,.:;! -]+)+(?=\w) =>
^(?:one (?:more(?: thing| question)?|thing)|(?:another|next|last) (?:question|one)|while i(?:['\u2019]m| am)
 \s(?:at it|here))(?: then| now)?[,.:;!]+ (?=\w) =>
,? (?:mind|mind you|though|by the way|btw|as it happens|you see|remember|in fact|actually|admittedly|
 anyway|anyhow|meanwhile|in the meantime|
 (?:just )?(?:for |this )(?:the )?once|just the once|i mean|i meant|i said|
 after all|after(?:wards)?|later(?: on)?|by now|now|by then|as things stand|all the same|
 if that (?:helps|matters)|i should (?:add|say|mention)|
 i forgot to (?:say|mention|add)|you know|to be fair|of course|obviously|so you know)(?=\W*$) =>
^back to ([\w' -]+?)[.:;,-]+ (.+?)\W*$ => \2, \1?
^([\w' -]{2,40}?) (?:speaking|reporting)[.,:;]+ => \1 here.\s
\bstill (?=\w+ing\b) =>
(?<!the )\bsame (?!(?:dress|outfit|uniform|kit|rig|clothes|gear|thing|rules?|answer|again|for|as|with|in|on|at
 |if|when)\b)(?=[a-z][\w -]+\W*$) => the same\s
,? (?:who(?:['\u2019]s| is) )?(?:(?:coming|going|out|working|flying|walking|travell?ing|riding|serving
 |standing|sitting)(?: along| out)? (?:with|beside|next to)|helping|joining|assisting|shadowing)
 \s(?:me|us)(?= |,|\W*$) =>
\b(?:waiting|standing|sitting|working|parked) (?:there|here|about|by)(?=,) =>
^(.*\b(?:it|they|them)\b.*\w) there(?=\W*$) => \1
\boff the [\w-]+, (?=(?:on|in|at) ) =>
\b(?:well|far|just|right|way) (?=(?:outside|outdoors|out of|out|off|away from|inside|indoors|in|on|at|below|
 above|with)\b) =>
(?:^|(?<=, )|(?<=[Ii]'m )|(?<=\bam )|(?<=\bare )|(?<='re )|(?<=\band )|(?<=\bor )|(?<=\bbut )|(?<=\bif )|
 (?<=\bwhen )|(?<=\babout )|(?<=\bit's )|(?<=he's ))(?:back|up|down|over|out)\s
 (?=(?:outside|outdoors|out of|out|off|away from|inside|indoors|in|on|at|below|above|with)\b) =>
"""
_OTHERWISE = Pattern(
    r"(?i)^(?:(?:ok|okay|right|fine|well|oh|ah|no|sorry|anyway|actually|and|but)[ ,.:;!-]+)*"
    r"(?:(?:something|anything|(?:a |on a |and a )?(?:new|another|different|fresh|separate|other|next|"
    r"further) "
    r"(?:question|topic|one|thing|matter|man|person|case|subject|point|note)|change of (?:subject|topic)|"
    r"changing the subject|moving on|never ?mind(?: (?:that|it|this|about (?:that|it)))?|"
    r"(?:leave|forget|drop|skip|park) (?:about )?(?:that|it|this)(?: one| question)?)"
    r"(?: else| now| then| for now| instead)*(?: ?[,.:;!\u2013-]+)+ ?)+(?=\w)"
)
_TOPIC = Pattern(
    r"(?i)(?P<lead>(?:(?:now|next|on to|turning to|moving on to|back to|then there(?:['\u2019]s| is)|"
    r"another thing|ok|"
    r"okay|right|(?P<on>as for|and|but|so|also|what about|how about|about|regarding|concerning)),? )*)"
    r"(?P<topic>(?:(?:the|my|our|an?) )?[\w' -]+?)[.:;,?]+ (?P<asked>(?:do|does|did|may|can|could|must|"
    r"should|shall|is|are|am|"
    r"will|would|have|has|how|where|when|what|which|who|why)\b.*?)\b(?:it|they|them|(?:that|those|these|one)"
    r"(?= ?[?.!,;]| ?$| (?:then|too|as well|also|on|off|at|in|with|for|when|if|"
    r"while)\b))(?!['\u2019])\b(?P<rest>.*)"
)
_TOPICAL = frozenset(
    {"item", "items", "det", "poss", "filler", "of", "fact", "in", "on", "for", "if", "day", "on date"}
)
_WHO = Pattern(
    r"(?i)(?:(?:and|but|so|ok|what about|how about),? )*(?P<who>(?:(?:an?|the|our|some|any) )?[\w' -]{2,40}?)"
    r"[,;:?.]+ (?:and |so )?(?P<verb>can|may|must|could|should|does|do|would|is|are) (?:he|she|"
    r"they)\b(?P<rest>.*)"
)
_ELLIPTIC = Pattern(
    r"(?i)(?: (have to|need to|has to|got to))?(?: wear (?:it|one|them))?(?:,? (?:as well|too|also|then))*\W*"
)
_OFF = Pattern(r"(?i)[,;] (?:and |with )?(?:the |my |his |her )?([a-z]+(?: [a-z]+)?) off(?= ?[,;?.!]| ?$)")
_TOLD_OFF = Pattern(
    r"(?i)(?:(?:and|but|so|ok|okay|well|now|no|(?P<led>with|when|if))[ ,]+)*"
    r"(?:(?:i|we)(?:['\u2019]ve| have)(?: got| taken)? )?"
    r"(?:(?:the|my|his|her) )?(?P<it>(?!(?:and|but|i|we|it|they|not|take)\b)[a-z]+(?: (?!is\b|are\b)[a-z]+)?)"
    r"(?:['\u2019]s| is| are)? off\b"
)
_ON = Pattern(r"(?i)\bwith ((?:the|my|a|an|his|her) [\w'-]+(?: [\w'-]+)?) (up|on)(?= ?[,;?.!]| ?$)")
_ALONE = Pattern(r"(?i)\b(?:by (?:itself|themselves)|on (?:its|their) own|alone|and nothing else)\b")
_THAT_ONE = Pattern(
    r"(?i)\b(?:that|this|the same|that same|the said|her|his|my|their|the) ("
    + "|".join(sorted(CREDENTIAL_NOUNS))
    + r")\b(?! (?:of|for)\b)"
)
_THING = Pattern(
    r"(?i)\b(?:the|that|this|my) ([\w-]+) (?:thing|business|stuff|bit|question|matter|rule|one)\b"
)
_PUT_UP = Pattern(r"(?i)\bput (?:it|them) (up|down)\b")
_NTH = Pattern(r"(?i)\b(?:the )?(\d{1,2})(?:st|nd|rd|th)\b(?= ?[?.!,;]| ?$| (?:then|instead|too|as well)\b)")
_WAS = Pattern(
    r"(?i)\b(was|were|did|had)\b.*\bin (" + "|".join(MONTHS) + r")\b(?! ?(?:\d|of\b|last\b|this\b|that\b))"
)
_THAT_YEAR = Pattern(r"(?i) (?:of|in) (?:that|the same|that same) year\b")
_WITH_OVER = Pattern(
    r"(?i)with (?:the|an?|my) [\w' -]+ (?:over|under|beneath|on top of) (?:it|them|that)\W*$"
)
_BACK_THEN = Pattern(r"(?i),? (?:back then|(?:back )?in those days|at (?:that|the) time)(?= ?[?.,;!]| ?$)")
_BARE = Pattern(
    r"(?i)\b(at|it['\u2019]s|it is|is|only|below|above|under|over|around|about|to|exactly|say|with|after)"
    r" ((?:minus |-)?\d+(?:\.\d+)?)(?= ?(?:[,.;?!] |[?!.]?$)| (?:but|and|with|if|when|though|then|in|on)\b)"
)


def loosely(text: str, previous: Reading, talk: Talk) -> str:
    """The turn with its loose ways of saying how things are put plainly."""
    said = _of_the_topic(_put(text, _ALWAYS + MOVED.lstrip()), talk)
    off = _OFF.search(said)
    if off is not None and _ALONE.search(said):  # "the liner by itself, coat off", says the same twice
        said = f"{said[: off.start()]}{said[off.end() :]}"
    elif off is not None and item_alone(off.group(1), talk.lexicon, talk.lookup) is not None:
        said = f"{said[: off.start()]}, without the {off.group(1)}{said[off.end() :]}"
    said = _told_off(said, previous, talk)
    on = _ON.search(said)
    if on is not None and _is_worn_so(on.group(1), on.group(2), talk):
        said = f"{said[: on.end(1)]}{said[on.end() :]}"
    if previous.query is None:
        return said
    if previous.query.kind in ("may", "must") and _WITH_OVER.match(said):  # of the thing before, not of that
        said = f"and {said}"
    said = _of_that_credential(
        _the_said_thing(said, previous.query, talk.lookup), previous.query, talk.lookup
    )
    day = previous.query.case.as_of
    if day != talk.case.as_of:  # "and on the 20th?", of the month that was spoken of
        said = _NTH.sub(rf"\1 {day:%B %Y}", said)
    said = _in_the_past(said, talk.case.as_of)
    said = _BACK_THEN.sub(_as_said(day), said) if day < talk.case.as_of else said
    year = day.year
    said = _THAT_YEAR.sub(f" {year}", said) if year != talk.case.as_of.year else said
    return _with_unit(said, previous.query, talk.lookup)


def _told_off(text: str, previous: Reading, talk: Talk) -> str:
    """ "The apron's off", "apron off but it's June", after whether a coat may be worn: without the apron."""
    found, before = _TOLD_OFF.match(text), previous.query
    if found is None or before is None or (found["led"] is None and text.rstrip().endswith("?")):
        return text
    item = item_alone(found["it"], talk.lexicon, talk.lookup)
    worn = [f.partition(":")[2] for f, _ in before.case.facts if talk.lookup.facts[f].family == "worn"]
    word = word_key(found["it"])
    named = [i for i in worn if word in {t.key for t in tokenize(talk.lookup.items[i].label)}]
    item = named[0] if len(named) == 1 else item
    if item is None or not {*before.items}.isdisjoint(talk.lookup.narrower(item)) or item in before.items:
        return text
    return f"without the {talk.lookup.items[item].label}{text[found.end() :]}"


def _as_said(day: datetime.date) -> str:
    """A day as it is named: the first of a year stands for the year."""
    return f" in {day.year}" if (day.month, day.day) == (1, 1) else f" on {day.day} {day:%B %Y}"


def _the_said_thing(text: str, before: Query, lookup: Lookup) -> str:
    """ "Who can waive the neck thing?", of a tattoo on the neck: it."""
    found = _THING.search(text)
    item = lookup.items.get(before.items[0]) if len(before.items) == 1 else None
    if item is not None:  # the verb needs the thing within it: "put it up under the canopy?", of an umbrella
        text = _PUT_UP.sub(rf"put the {item.label} \1", text)
    if found is None or item is None:
        return text
    named = {t.key for name in (item.label, *item.other_labels, *item.everyday) for t in tokenize(name)}
    return f"{text[: found.start()]}it{text[found.end() :]}" if word_key(found.group(1)) in named else text


def _in_the_past(text: str, today: datetime.date) -> str:
    """ "Was it the same in April?": April of the year in which it was last over."""
    found = _WAS.search(text)
    if found is None:
        return text
    month = MONTHS.index(found.group(2).casefold()) + 1
    year = today.year - (month >= today.month)
    return f"{text[: found.end(2)]} {year}{text[found.end(2) :]}"


def _of_the_topic(text: str, talk: Talk) -> str:
    """ "And the tab, do I need that?", "a warden, must he?": with what is named first in its place."""
    found, who = _TOPIC.fullmatch(text.strip()), _WHO.fullmatch(text.strip())
    if who is not None:
        facts = _pieces(who["who"], {"fact", "det", "poss", "person", "filler"}, talk)
        if facts and all(talk.lookup.facts[p.fact].family in PERSONAL for p in facts if p.tag == "fact"):
            bare = _ELLIPTIC.fullmatch(who["rest"])
            verb = "must" if bare is not None and bare.group(1) else who["verb"]
            return f"and {verb} {who['who']}{'?' if bare is not None else who['rest']}"
    named = _pieces(found["topic"], _TOPICAL, talk) if found is not None else ()
    if found is None or not named or not {"item", "items"} & {p.tag for p in named}:
        return text
    first = next(piece.tag for piece in named if piece.tag not in ("det", "poss", "filler"))
    if first not in ("item", "items"):
        return text
    return f"{'and ' if found['on'] else ''}{found['asked']}{found['topic']}{found['rest']}"


def _pieces(text: str, tags: Collection[str], talk: Talk) -> tuple[Piece, ...]:
    """What a stretch of words is made of; nothing where it has other parts than these."""
    words = understand(text, talk.lexicon, talk.lookup, None)
    pieces = words.pieces if isinstance(words, Understood) else ()
    return pieces if {piece.tag for piece in pieces} <= {*tags} else ()


def _is_worn_so(thing: str, way: str, talk: Talk) -> bool:
    """Whether "the hood up" names a thing, and "hood up" is no fact of the books by itself."""
    if item_alone(thing, talk.lexicon, talk.lookup) is None:
        return False
    found = understand(f"{thing} {way}", talk.lexicon, talk.lookup, None)
    return isinstance(found, Understood) and all(piece.tag != "fact" for piece in found.pieces)


def without_patter(text: str) -> str | None:
    """The turn without what only ties it to the talk; None where there is nothing of the kind."""
    said = _put(text, _ELSE + MORE_ELSE.lstrip())
    return said if said != text and any(sign.isalnum() for sign in said) else None


def of_another_matter(text: str) -> str | None:
    """ "Something else: may I ...?": the question alone, where a turn says that it begins anew."""
    led = _OTHERWISE.match(text)
    return text[led.end() :] if led is not None else None


def _put(text: str, lines: str) -> str:
    for pattern, instead in _ways(lines):
        text = pattern.sub(instead, text)
    return text


@cache
def _ways(lines: str) -> tuple[tuple[Pattern, str], ...]:
    return tuple(_read(lines))


def _read(lines: str) -> Iterator[tuple[Pattern, str]]:
    for line in lines.strip().replace("\n ", "").splitlines():
        way, _, instead = line.partition(" =>")
        yield Pattern(f"(?i){way}"), instead.removeprefix(" ").replace(r"\s", " ")


def _of_that_credential(text: str, before: Query, lookup: Lookup) -> str:
    """ "With that waiver", where one waiver was spoken of: by its name."""
    said = _THAT_ONE.search(text)
    held = [lookup.facts[fact] for fact, values in before.case.facts if values != NO]
    named = [fact.label for fact in held if said is not None and fact.family == said.group(1).casefold()]
    if said is None or len(named) != 1:
        return text
    return f"{text[: said.start()]}the {named[0]}{text[said.end() :]}"


def _with_unit(text: str, before: Query, lookup: Lookup) -> str:
    """A bare number in the unit of the one quantity that is known of the situation: "and at 12, in rain?"."""
    units = [
        (lookup.facts[fact].label, lookup.facts[fact].unit)
        for fact, _ in before.case.facts
        if lookup.facts[fact].kind == "quantity" and lookup.facts[fact].unit
    ]
    if len(units) != 1 or units[0][1] is None or lookup.aspects[before.aspect].kind in ("measure", "count"):
        return text
    unit = UNITS[units[0][1]].symbol if units[0][1] in UNITS else units[0][1]
    return _BARE.sub(lambda found: f"{found.group(1)} {found.group(2)} {unit}", text)
