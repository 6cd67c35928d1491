"""What people say before and after a question: greetings, excuses, thanks, oaths, doubts of themselves.

Each line is one way; `<name>` stands for the words of that name. None of them can be part of what is asked,
where it stands before a mark or before the opening of a question, or after the whole question.
"""

from __future__ import annotations

from functools import cache

from kb.reader.words.forms import word_set
from kb.text import Pattern

_NAMES = r"""
daft: (?:daft|silly|stupid|dumb|thick|random|odd|weird|strange|basic|simple|easy|newbie|noob|cheeky|trivial
    |obvious)
very: (?:(?:really|very|so|probably|possibly|such|a bit|a bit of|bit|bit of|just|maybe|kind of|sort of) )*
you: (?:you|u|ya|yous|anyone|anybody|someone|somebody|any of you|one of you|everyone|folks)
please: (?:please|pls|plz|plse|kindly)
mate: (?:sir|madam|ma'am|maam|mate|m8|matey|pal|love|luv|duck|ducky|hun|hon|hen|pet|petal|guv|guvnor|gaffer
    |bro|bruv|bruh
    |fam|dude|buddy|chum|marra|our kid|chaps|gents|lads|guys|folks|you lot)
being: (?:i'm |i am |am i |i'm just |am i just |i'm being |am i being |being )
"""
_OPENERS = r"""
(?:hi|hiya|hey|heya|hello|helloo|hullo|howdy|greetings|hey up|ey up|ay up|eyup|ayup|wotcha|wotcher|yo|oi
    |alreet
    |alright|alrite|g'day|salutations)
(?:good )?(?:morning|mornin'?|afternoon|evening|day)
dear (?:sirs?|madam|all|team|(?:dress |duty |uniform )?(?:officer|desk|office|committee))(?:(?: or | and\s
    |/)(?:sirs?|madam))?
to whom it may concern
(?:i |we )?(?:hope|trust|hoping) (?:<you>|you're|you are|this|all|all is|everything is|everyone is
    |everyone's)(?: all| are)?
    (?: keeping| doing| finds you)? ?(?:well|ok|okay|good|fine|alright|all right)
happy (?:\w+day|new year|easter|christmas|friday)
merry (?:christmas|xmas)
how are (?:you|u|things|ya)(?: doing| today| all)*
how(?:'s| is) (?:it going|things|tricks)
(?:'?scuse|excuse|pardon|forgive) (?:me|my ignorance|the <daft> question)(?: for (?:asking|butting in))?
<very>(?:i'm |i am )?<very>(?:sorry|soz|sozz|apologies)(?: (?:to|for|if) (?:ask(?:ing)?
    |be(?:ing)? (?:a )?(?:pain|nuisance|bother|pest|thick|dense)
    |(?:the )?(?:bother|trouble|pester|bug|interrupt|disturb)(?:ing)?(?: <you>)?|this(?:'s| is
    | has)? (?:been asked|an? <daft>|<daft>)(?: question)?))?
    (?: (?:again|before|already|so early|so late|at this hour|with this|on a \w+day|a \w+day))*(?: but)?
no offen[cs]e(?: but)?
(?:bear with me|don't laugh|dont judge|don't judge|hear me out)(?: but)?
(?:i(?:'ve| have)? )?(?:just |got |it's |this is |here's )*<very>(?:an? )?<very>(?:(?:<daft>|quick|quickie
    |honest|genuine|serious|urgent
    |brief|short|small|little|tiny|real),? )+(?:question|query|one|q|qu|thing|point)(?: (?:for <you>|i know
    |here|this|about this|of mine))?(?: but)?
(?:question|query|q)(?: for (?:<you>|you all))?
(?:this |it )?(?:may|might|will|probably) <very>(?:sounds?|be
    |seem) <very>(?:an? )?<very><daft>(?: question)?(?: but)?
(?:i know )?(?:this|it)(?:'s| is| sounds) <very>(?:an? )?<very><daft>(?: question)?(?: i know)?(?: but)?
(?:can|could|would|will) <you>(?: <please>)? (?:help|advise|assist)(?: me| us)?(?: out)?(?: <please>
    | with this)?
(?:<please> )?help(?: me| us)?(?: out)?(?: <please>)?
(?:i )?need (?:a bit of |some )?(?:help|advice)(?: with this| here)?
(?:just )?wondering if <you> (?:can|could) (?:help|advise)(?: me| us)?(?: out)?
(?:can|could|would) <you> (?:<please> )?(?:tell|say|let) (?:me|us)(?: know)?(?: <please>)?
    (?!\s+(?:where|what|which|how|who|when|why)\b)
(?:anyone|anybody|does anyone|does anybody|do any of you|do you|do you lot)(?: happen to)? know
    (?!\s+(?:where|what|which|how|who|when|why)\b)
(?:(?:has )?anyone (?:got )?|got )?any (?:idea|clue)s?
(?:i )?(?:just )?(?:need|want|wanted|would like|wanna) to (?:know|ask|check)(?: (?:asap|urgently|quickly
    |quick|something))?
    (?!\s+(?:where|what|which|how|who|when|why)\b)
(?:i(?:'m| am| was) )?(?:just |only )?(?:wondering|asking|checking|curious)
(?:omg|omfg|wtf|ffs|lol|rofl|lmao|ha|haha+|hehe+|argh+|aargh+|ugh|uh|uhh|um+|er+m*|hm+|ah|oh|aw|ooh|eek
    |oops|yikes|sheesh|phew|blimey
    |cor blimey|crikey|gosh|jeez|jesus|christ|good (?:grief|lord|heavens|god)|oh my (?:god|days|goodness
    |word)
    |(?:bloody|flipping|flippin'?|effing) (?:hell|heck)|what the (?:hell|heck)
    |(?:oh )?for (?:the love of (?:god|mike)
    |(?:goodness|god|christ|heaven|pete|fuck)'?s? sakes?|crying out loud))
(?:tbh|ngl|fyi|btw|imho|imo|asap|urgent(?:ly)?|no (?:joke|kidding|rush)|not gonna lie|(?:to )?be (?:fair
    |honest|frank)(?: with (?:me|you|us))?(?: now)?
    |seriously|honestly|long story short|(?:the |here's the )?thing is|basically|so basically|right(?: then
    | so)?|like|look|listen|see|you see
    |(?:it's |its )?(?:only )?me again|(?:just )?out of (?:interest|curiosity)|by the way)
(?:many )?(?:thanks|thank you|thx|ta|cheers)(?: in advance| for (?:your|the|any) help)?
settle (?:an argument|a bet|this|something|a row)(?: for (?:me|us))?
(?:(?:pretty )?<please>)+(?: pretty <please>| <please>)*
"""
_LOOSE = r"""
(?:hiya|hey|heya|hello|howdy|hey up|ey up|ay up|eyup|ayup|wotcha|wotcher|oi|soz|omg|wtf|ffs|lol|haha+
    |blimey|crikey|jeez
    |erm+|umm+|tbh|ngl|btw|fyi|'?scuse me|excuse me)
"""
"""What needs no mark and no opening of a question after it."""
_CLOSERS = r"""
(?:<please>)
(?:(?:many |big |huge )?(?:thanks|thank you|thankyou|thx|thnx|tnx|thanx|cheers|ta|ty|tysm|tyvm|tia
    |nice one)(?: <very>much| a (?:lot|bunch|million|ton)
    | loads| tons| millions| in advance| ever so much| so much| very much| again| for (?:your|the|any
    |all your) help)*)
(?:(?:v |very |really )?much appreciated|appreciate it|appreciated|you're a (?:star|legend|gem|diamond)
    |you are a (?:star|legend|gem))
(?:(?:kind|best|warm|kindest) )?(?:regards|rgds)
(?:all the best|best wishes|yours (?:sincerely|faithfully|truly))
(?:lol|haha+|hehe+|lmao|rofl|xd|tbh|btw|ngl|imho|imo|innit|asap|fyi|ffs|wtf|omg|smh|pmsl)
(?:do you know|can you tell me|could you tell me|if you know|anyone know|does anyone know|any ideas?
    |any clues?|any thoughts?|though|tho)
x{2,}
(?:hun|luv|bruv|bruh|m8|matey)
or nah+
"""
"""What may close a question without a mark before it."""
_CLOSERS_MARKED = r"""
(?:like|eh|ay|huh|hey|mind|mind you|you know|y'know|yeah|yeh|yep|aye|x)
(?:or )?(?:<being>)<very>(?:an? )?<very>(?:thick|daft|dim|dense|stupid|silly|mad|crazy|nuts|bonkers|dumb
    |slow|blind|paranoid|fussy|idiot
    |muppet|wally|numpty|idiotic|losing it|losing my (?:mind|marbles)|going mad|off my (?:head|rocker
    |trolley)|missing something)
(?:i'm |i am |just |only |was |i was )*(?:asking|checking|curious|wondering|interested|saying)(?: (?:for
    |on behalf of) (?:a|my|the) [a-z]+)?
(?:i'm |i am |really |just )*not (?:<very>)(?:sure|certain|clear)(?: (?:about|on) (?:it|this
    |that))?(?: any ?more)?
or (?:will|would|might|could|am) i (?:be|get|gonna be|gonna get|going to get
    |going to be)(?: in(?:to)?)? <very>(?:trouble|bother|told off|shouted at
    |moaned at|laughed at|a (?:telling off|bollocking|rollicking)|bollocked|sent home|done|sacked
    |in trouble)(?: for (?:it|that))?
(?:i )?(?:just |really |honestly )*(?:can't|cannot|can never|don't|never
    |couldn't) (?:for the life of me )?(?:remember|recall|know|find it|see it|work it out
    |tell)(?: anywhere| any ?more| for sure| in the book)?
(?:i(?:'ve)? )(?:keep )?(?:forget|forgot|forgotten|forgetting)
(?:i(?:'ve)? )?looked (?:everywhere )?(?:and|but) (?:i )?(?:can't|couldn't|cannot) (?:find|see) (?:it
    |anything)(?: anywhere)?
(?:i(?:'m| am) )?(?:so |a bit |really |totally |well |dead )?(?:confused|baffled|puzzled|stumped|lost
    |clueless)
(?:sorry|soz)(?: (?:if|for|to) (?:it's |that's |this is |being |be |the )?(?:an? )?<very>(?:<daft>|pain
    |bother|nuisance)(?: question)?)?
(?:i know )?(?:it's |this is |that's )?<very>(?:an? )<very><daft> question(?: i know)?
(?:your|ur) (?:help|advice|thoughts)(?: would be)? (?:much )?(?:appreciated|needed|welcome)
(?:hope (?:that|this) makes sense|does that make sense|if that makes sense)
<mate>
"""
"""What closes a question after a mark alone: "..., duck", "..., or am I being daft"."""
OPENING = word_set("""
    hi hiya hey heya hello helloo hullo howdy greetings ey ay eyup ayup wotcha wotcher yo oi alreet alright
    alrite g'day salutations good morning mornin afternoon evening day dear hope trust hoping happy merry
    how's 'scuse scuse excuse pardon forgive sorry soz sozz apologies really bear probably possibly daft silly
    stupid dumb thick random odd weird strange basic simple easy newbie noob cheeky trivial obvious quick
    quickie honest genuine serious urgent urgently brief question query q please pls plz plse kindly help
    wondering asking checking curious omg omfg wtf ffs lol rofl lmao ha haha hahaha hehe argh aargh ugh uh uhh
    um umm ummm er err erm ermm hm hmm hmmm ah oh aw ooh eek oops yikes sheesh phew blimey cor crikey gosh
    jeez jesus christ bloody flipping flippin effing tbh ngl fyi btw imho imo asap seriously honestly thing
    basically thanks thank thx ta cheers many right like look listen see settle pretty anyone anybody want
    wanted wanna
""")
NO_MEANING = word_set("""
    hiya heya hello howdy greetings eyup ayup wotcha wotcher oi omg omfg wtf ffs lol rofl lmao haha hahaha
    hehe
    argh aargh um umm ummm er err erm ermm ooh eek yikes sheesh phew blimey cor crikey gosh jeez tbh ngl
    btw fyi
    asap
""")
"""Those that tie a question to nothing that was said before."""
OPENING_PAIRS = word_set("""
    you u ya yous anyone anybody someone somebody any hope trust need want wanted was am just only bit know
    quick daft silly stupid dumb random odd weird basic simple newbie question query hell heck grief lord
    heavens sounds may might probably goodness god christ heaven pete crying love laugh judge here's thing
    story gonna fair honest frank way interest curiosity help it's this is a the sorry of
""")
"""Words with one of which, or with a common one and one of which, chatter before a question begins."""
COMMON = word_set("""
    to i we how very so bit a an no don't dont just got it it's its this i'm i've here's short small little
    tiny real may can could would need does do has any what for not be long the out by me
""")
CLOSING = word_set("""
    please pls plz plse kindly thanks thankyou thx thnx tnx thanx cheers ta ty tysm tyvm tia bunch million ton
    tons millions advance nah appreciated appreciate regards rgds wishes sincerely faithfully truly lol haha
    hahaha hehe lmao rofl xd tbh btw ngl imho imo innit asap fyi ffs wtf omg smh pmsl xx xxx xxxx though tho
    idea ideas clue clues thoughts hun luv bruv bruh m8 matey
""")
CLOSING_AFTER_MARK = word_set("""
    you one much lot loads again help it star legend gem diamond best know me x like eh ay huh hey mind yeah
    yeh yep aye thick daft dim dense stupid silly mad crazy nuts bonkers dumb slow blind paranoid fussy idiot
    muppet wally numpty idiotic marbles head rocker trolley something asking checking curious wondering
    interested saying sure certain clear that this more remember recall see out tell anywhere book forget
    forgot forgotten forgetting anything confused baffled puzzled stumped lost clueless sorry soz question
    pain bother nuisance needed welcome sense sir madam ma'am maam mate m8 matey pal love luv duck ducky hun
    hon hen pet petal guv guvnor gaffer bro bruv bruh fam dude buddy chum marra kid chaps gents lads guys
    folks friend off at home done sacked trouble bollocked bollocking rollicking
""")
"""The last words of what closes a question: anywhere, and only after a mark."""
_ASKS = (
    r"(?=(?:can|could|may|might|must|should|shall|do|does|did|am|is|are|was|will|would|what|which|where|how|who|when"
    r"|why|if|whether)(?:n't|'s|'re)?\b)"
)
_MARK = r"(?:[,.!:;?\u2013\u2026]+|\s-)"


def _ways(block: str) -> str:
    lines = block.strip().replace("\n    ", "").splitlines()
    named = [line.partition(": ")[::2] for line in _NAMES.strip().replace("\n    ", "").splitlines()]
    found = "|".join(lines)
    for name, words in reversed(named):
        found = found.replace(f"<{name}>", words)
    return f"(?:{found})"


@cache
def opener() -> Pattern:
    """All that leads in, from the beginning of a text."""
    mate = _ways(r"(?: there| then| again| all| everyone| everybody| team| friends| boss| chief| <mate>)?")
    ways = _ways(_OPENERS)
    return Pattern(
        rf"(?i)\s*(?:{ways}{mate}(?:\s*{_MARK}|\s+{_ASKS}|\s+(?={ways}\b))|{_ways(_LOOSE)}{mate}(?=\s+\w))(?:\s*{_MARK})*\s*(?=\S)"
    )


@cache
def closer() -> Pattern:
    """One thing that closes a text, with the marks around it; `mark` is what stood before it."""
    mate = _ways(r"(?:[, ]+<mate>)?(?: x+)?")
    return Pattern(
        rf"(?i)(?:(?P<mark>[ ,.;!?-]*[,.;!?-][ ,.;!?-]*)(?:{_ways(_CLOSERS_MARKED)}|{_ways(_CLOSERS)})"
        rf"|\s+{_ways(_CLOSERS)}){mate}(?P<after>[ .!?]*)$"
    )
