"""How an inspection asks of what was seen: "Do I write it down?", "Excuse or not?", "Clause?".

What is seen is told first, and a short question passes judgement on it. A line has such a question and what
it asks: whether what is told is a fault, by which clause, or whether it is fine. The blocks are those of
`sayings.py`.
"""

from __future__ import annotations

SEEN = r"""
seen: (?:that|it|this|those|these|he|she|they)
man: (?:him|her|them|me|us|(?:the|that|this) (?:man|woman|lad|lass|hand|member|one)|it|that|this)
for_it: (?:(?: down| up| back| home| off| away| out| below| ashore| in(?: the (?:book|log|report))?
    | on (?:report|a charge))?(?:,? (?:for|over|about|on|with) (?:it|that|this|them|those)| to (?:change
    |get changed|(?:put|set|sort) it (?:right|out)|get dressed)|,? too|,? then|,? now|,? or (?:not|what
    |no))*)
doing: (?:(?:and |so |but )?(?:do|does|did|should|shall|must|can|could|may|might|ought|would|will|need|am
    |have|had|is|was|are|were)(?:n't)? (?:i|we|you|one|he|she|they|anyone|the inspector|the officer)
    (?: not)?(?: to| have to| need to| going to)?(?: really| just| now| even| better| still| actually)*)
grade: (?:(?:an?|any|some|the|one|no)\s(?:more\s)?)?(?:(?:real|actual|serious|minor|small|genuine|proper
    |big|great|technical|slight|clear|possible)\s)?
fault: (?:faults?|failing|defects?|defaults?|demerits?|black marks?|marks? against <man>|faux pas
    |reportable|finable|chargeable|punishable|trouble|bother|infractions?|misdemeanours?|lapses?
    |shortcomings?)
note: (?:write|note|book|mark|jot|log|report|charge|fault|fail|dock|punish|reprimand|scold
    |rebuke|reproach|query|challenge)
fellow: (?:him|her|me|us|(?:the|that|this) (?:man|woman|lad|lass|hand|member))
"""

JUDGING = r"""
# fault faults failing defect defects default defaults demerit demerits mark marks pas reportable finable
     chargeable punishable trouble bother infraction infractions misdemeanour misdemeanours lapse lapses
     shortcoming shortcomings
^(?:(?:and |so |but )?(?:is|was|would|are|does|isn't|wasn't|do)(?: <seen>| there| i)?(?: be| make
    | count as| class as| amount to| constitute| get)?(?: <very>)* )?<grade><fault>(?: (?:in|with
    |there) (?:that|it|this)| there| here| for (?:him|her|me|us|them))?(?:,? or (?:not|no|no fault|fine
    |ok|okay|all right|is it(?: not| fine| ok| all right)?|isn't it|am i seeing things|what))?
    (?:,? (?:then|though|surely|please))*\W*$ => fault
# in at trouble bother blamed faulted
^(?:am|is|are|was|were|will|would|could|might|can)(?:n't)? (?:i|he|she|we|they)(?: be| get)?
    (?: <very>)* (?:in(?:to)? (?:<grade>)?(?:trouble|bother)|at fault|<blamed>)(?: (?:for|over
    |with) (?:it|that|this))?(?:,? (?:then|though|now))?\W*$ => fault
^(?:in trouble|at fault|in for it)(?: or not| then| now)?\W*$ => fault
# wrong breach
^(?:in the wrong|in breach)(?: or not| or in the right)?\W*$ => fault
# lad lass man girl boy soldier hand
^(?:(?:is|was) (?:he|she) )?(?:a )?good (?:lad|lass|man|woman|girl|boy|soldier|hand|sailor|chap|fellow)
    (?: or (?:not|bad|in the wrong|(?:a )?(?:bad|naughty|sloppy) (?:one|lad|lass|man|girl
    |boy)))?\W*$ => fine
# write note book mark jot log put report charge fault fail dock punish reprimand scold fine rebuke
     reproach correct query challenge
^(?:<doing> )?<note> <man><for_it>\W*$ => fault
^<doing> (?:<note> (?:up|down)|make a note of) <man><for_it>\W*$ => fault
# put pull pick haul call tell tick take catch stop turn send have speak talk throw
^(?:<doing> )?put (?:<fellow>|it|that|this|them) (?:down(?: for (?:it|that))?|on report|on a charge|in the
    \s(?:book|log|report))<for_it>\W*$ => fault
^(?:<doing> )?(?:pull|pick|haul|call|tell|tick|catch|stop|turn|send|throw) <fellow><for_it>\W*$ => fault
^(?:<doing> )?(?:speak to|talk to|have a (?:quiet )?(?:word|chat) with|take a note of) <man><for_it>
    \W*$ => fault
^(?:<doing> )?(?:pull|pick|tell|send|call) them (?:up (?:for|on|over|about) (?:it|that|this)|off(?: for (?:it
    |that))?|back to change|home)\W*$ => fault
^(?:<doing> )?(?:have a (?:quiet )?word|take (?:his|her|their) names?)<for_it>\W*$ => fault
# say mention raise object protest complain
^(?:<doing> )?(?:say (?:something|anything|a word)(?: to <man>)?|mention (?:it|that|this)(?: to <man>)?
    |raise (?:it|that|this)|object(?: to (?:it|that|this))?|complain|protest)<for_it>\W*$ => fault
^worth (?:(?:a|an) (?:note|mention|word|remark|entry|line)|(?:mentioning|noting|reporting|raising
    |writing(?: (?:up|down|it (?:up|down)))?)(?: it| that)?)<for_it>\W*$ => fault
# worth
^(?:(?:is|was) (?:that|it|this) )?worth (?:(?:a|an) (?:note|mention|word|remark|entry|line)|(?:mentioning
    |noting|reporting|raising|writing(?: it| that)?(?: up| down)?)(?: it| that)?)<for_it>\W*$ => fault
# against
^(?:(?:is|was|would) (?:that|it|this)(?: be)?(?: <very>)* )?against (?:anything|something|any (?:rule
    |clause|order)|(?:any |some )?(?:rules|orders|clauses)|<rulebook>|a (?:rule|clause))(?: (?:at all
    |in <rulebook>|you know of))?\W*$ => fault
^(?:(?:is|was) there )?(?:anything|any (?:rule|clause|order)|a (?:rule|clause)|rule
    |something) (?:in <rulebook> )?against (?:it|that|this|them|those)\W*$ => fault
^(?:does|do|did|would|will) (?:it|that|this|he|she|they) (?:break|breach|violate|contravene|infringe
    |offend|go|fall foul of|run|offend against|go against|run against) ?(?:against )?(?:anything
    |something|any (?:rule|clause|order)s?|a (?:rule|clause)|(?:the )?<rulebook>)\W*$ => fault
# break breach violate contravene infringe offend foul
^(?:does|do|did|would|will|is|am) (?:it|that|this|he|she|they|i|we) (?:break|breaking|breach|violate
    |contravene|infringe|offend(?: against)?|fall foul of) (?:anything|something|any (?:rule|clause
    |order)s?|a(?:rule|clause)|<rulebook>)\W*$ => fault
# clause rule paragraph para chapter section
^(?:and )?(?:(?:under |by |against )?(?:what|which)(?:'s the| is the)? |the )?(?:clause|rule|paragraph
    |para)(?: number)?(?: (?:(?:do|can|should|would|shall|must|could|may|might) (?:i|we|you) (?:quote
    |cite|name|give|show|read|point|tell|use|mention|write down|hold|throw)(?: at| to)?(?: <man>)?
    (?: (?:to|for|at|against)(?: <man>)?)?|(?:is|was|would) (?:that|it|this)(?: be)?(?: against)?|
    (?:covers?|forbids?|bans?|bars?|stops?|says so|says no|is against) ?(?:it|that|this|him|her)?|(?:does
    |did|would) (?:that|it|this|he|she) (?:break|breach|go against|offend(?: against)?|fall foul of
    |violate|contravene)|applies|(?:is|was) (?:he|she)breaking))?\W*$ => clause
^chapter and verse(?:, please| please)?\W*$ => clause
# excuse excuses excused
^(?:(?:and |so |but )?(?:is|was|are|have|has|does) (?:there|that|it|this|he|she|they)(?: have)?
    (?: <very>)* )?(?:(?:an?|any|no|some|a good|a valid|enough of an|the) )?(?:(?:good|valid|real|earthly
    |possible|lawful) )?excuse(?: (?:for|in) (?:it|that|this|him|her|them))?(?: or (?:not|no|no excuse
    |fault|what))?\W*$ => fine
^(?:(?:is|was|are|am) (?:he|she|that|it|they|i) )?excused(?: or not)?\W*$ => fine
# pass go through stand stay overlook let leave blind wave slide get turn be ignore fit presentable good
     say look
^(?:<doing> )?(?:pass <man>(?: over| off| fit)?|let (?:<man> )?(?:go|pass|slide|stand|off|through|be|by
    |slip|stay)|overlook (?:it|that|this)|wave <man> through|turn a blind eye|leave (?:it|that) (?:be
    |alone|at that|as it is|like that|so)|say nothing|look the other way|ignore (?:it|that|this))
    (?: (?:to|about|on) (?:it|that|this))?(?:,? or (?:not|no))?\W*$ => fine
^(?:can|could|may|will|would|does|do|should|might|did) (?:that|it|this|he|she|they|those|these|i|we)
    (?: still| really| ever| just)? (?:pass(?: muster| like that| as (?:it is|he is|she is))?|stand|stay
    |go|stay (?:that way|as it is|like that|so)|get (?:by|away with (?:it|that|this))|go (?:out|on
    |on parade|about)like (?:that|this)|turn out like (?:that|this)|be (?:seen|passed|excused|let (?:go
    |off|through|by))(?: like(?: that|this))?)\W*$ => fine
^(?:pass|fit to be seen|presentable|good to go)(?: or (?:not|fail))?\W*$ => fine
# dressed turned
^(?:(?:is|are|am|was) (?:he|she|they|i|we) )?(?:properly|correctly|rightly|well|smartly) (?:dressed
    |turnedout|rigged)(?: (?:like that|or not))?\W*$ => fine
^(?:(?:is|are|am|was) (?:he|she|they|i|we) )?(?:dressed|turned out) (?:right|rightly|properly
    |correctly)(?: or not)?\W*$ => fine
"""
