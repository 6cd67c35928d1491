"""The uniform as a whole on the way and in one's own time: "on the bus to my duty", "shopping in uniform".

A journey to or from duty is what the books call it, where they have one name for it; one that is broken
("I stop at the shops") is not. What is done off duty is left aside, if no clause on the uniform speaks of it.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.keywords import analyse
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.telling import clause_words, word_level
from kb.text import Pattern
from kb.wording.labels import is_whole

_BY = (
    r"(?:(?:on|by|in) (?:the |a |my |our )?(?:(?:early|late|last|first|night|school|service) )?"
    r"(?:bus|coach|train|tube|underground|metro|tram|ferry|bike|bicycle|motorbike|moped|car|taxi)"
    r"|on foot)"
)
_GO = (
    r"(?:go|going|goes|went|come|coming|comes|came|travel|travelling|traveling|travelled|walk|walking|walked"
    r"|cycle|cycling|cycled|drive|driving|drove|ride|riding|rode|get|getting|got|head|heading|headed|commute"
    r"|commuting)"
)
_DUTY = (
    r"(?:a |an |my |our |the |his |her |their )?(?:[a-z]+ )?"
    r"(?:duty|duties|work|shift|turn|drill night|drill|drills|parade|activity|practice|station|depot|base"
    r"|boathouse|hall|job)(?! (?:dress|rig|uniform|order|kit|clothes|wear)\b)"
)  # "back to station dress" is no journey
_STRAIGHT = r"(?:straight|directly|direct|right|back|all the way)"
_FROM_TO = (
    rf"(?:(?:{_STRAIGHT} )*(?:(?:to|from|into|in to|for) {_DUTY}|from home|home)(?: {_BY})?"
    rf"(?: (?:to|from|after) {_DUTY})?(?: {_BY})?)"
)
JOURNEY = Pattern(
    rf"(?i)\b(?:{_GO} (?:{_BY} )?{_FROM_TO}|{_BY} (?:on (?:the|my) way )?{_FROM_TO}|{_STRAIGHT} {_FROM_TO}"
    rf"|(?:on|along) (?:the|my|our) (?:direct |short )?way (?:{_FROM_TO}|in\b)"
    rf"|(?:to and from|to or from|between home and) {_DUTY}|between {_DUTY} and home)"
)
VEHICLE = Pattern(rf"(?i)\b{_BY}\b")
OWN_TIME = Pattern(
    r"(?i)\b(?:(?:go |going |out |do |doing |while |when |whilst )*(?:my |the |a bit of )?shopping"
    r"|(?:go |going |pop |nip |popping |nipping )?(?:down |out |round |in )?(?:to|into|in|at|round)"
    r" (?:the |a |an |my |our )?(?:(?:corner|chip|sandwich|sweet|paper|coffee|village) )?"
    r"(?:shops?|chippy|newsagent'?s?|chemist'?s?|baker'?s|bakery|takeaway|post ?box|post office"
    r"|supermarket|cinema|pictures|market|gym|bank|hairdresser'?s"
    r"|barber'?s|dentist'?s?|party|disco|night ?club|football|match|gig|concert|caf[eé]|restaurant))\b"
)
_UNIFORM = Pattern(
    r"(?i)\b(?:in|wear|wearing|wore|have|keep|with) (?:(?:my|our|the|his|her|full) )*uniform\b"
)
WAY_NAMED = Pattern(
    r"(?i)(?:travelling|traveling|on the|the|going|commuting)\b.*\b(?:way|to|from)\b"
    r".*\b(?:duty|duties|work|home|shift|activity|station|depot)\b.*"
)
_CAN = (
    r"(?:(?:can|could|may|am|are)(?:n't|n’t|'t|’t)? (?:i|we|you|they|cadets?|members?|staff)(?: allowed to)?"
    r"|is it (?:ok|okay|all right|alright|allowed)(?: for (?:me|us))? to"
    r"|is (?:one|anyone|everyone) allowed to)"
)
_EASY = r"(?:still|even|just|please|then|now|ok|okay|actually|always|normally|really|also|, )"
_ASKS = Pattern(
    rf"(?i)(?:(?:so|and|but|i'm off duty(?: (?:on )?\w+)?[.,;]|off duty[.,;:]|when off duty,?) )*{_CAN}"
    rf"(?: {_EASY})*(?: (?:go|be|travel|going|come))? uuu(?: (?:when|while|if) (?:i'm |i am |we're )?off duty"
    rf"| off duty| (?:after|before) {_DUTY}| {_EASY})*\W*"
)
"""What is left of a question of the uniform alone ("uuu"): "can I smoke in uniform" is of more."""
_DID = Pattern(
    r"(?i)(?:i|we)(?:'ve| have| had)?(?: been)? (?:was |were )?uuu"
    r"(?: and (?:one of )?(?:the|my|our|a|an|some|somebody|someone)?[\w' ]{0,30}? "
    r"(?:had a go at|told (?:me|us) off|moaned|complained|shouted at|went mad|objected|had a word"
    r"|pulled (?:me|us) up|ticked (?:me|us) off)[\w' ]*)?"
    r"[.!;,] (?:so )?(?:was (?:i|that)|were we|am i|is that|is it)(?: not)?"
    r" (?:allowed|ok|okay|all right|alright|right)(?: to)?(?: do (?:so|that|it))?\W*"
)


def on_the_way(found: Understood, lookup: Lookup) -> str | None:
    """The question of the uniform as such, on the way to or from duty, or without what is done off duty."""
    text = " ".join(found.text.split())
    if _UNIFORM.search(text) is None or any(piece.tag == "measure" for piece in found.pieces):
        return None
    whole = [item.id for item in lookup.base.items if is_whole(lookup, item.id)]
    if len(whole) != 1 or _others(found, whole[0]):
        return None
    journey = JOURNEY.search(text)
    aside = journey or OWN_TIME.search(text) or VEHICLE.search(text)
    if aside is None or not _is_all(text, aside[0]) or _spoken(aside[0], whole[0], lookup):
        return None
    off = " off duty" if "off duty" in text.casefold() else ""
    if journey is None:
        return f"May I wear the uniform{off}?"
    way = _way(whole[0], lookup)
    return f"May I wear the uniform, {way}?" if way is not None and not off else None


def _is_all(text: str, aside: str) -> bool:
    """Whether nothing is asked but whether the uniform is worn so: no stop on the way, nothing else done."""
    rest = _UNIFORM.sub(" uuu ", text.replace(aside, " ", 1))
    rest = " ".join(rest.split()).replace(" ?", "?").replace(" .", ".").replace(" ,", ",")
    return any(pattern.fullmatch(rest) is not None for pattern in (_ASKS, _DID))


def _others(found: Understood, whole: str) -> bool:
    """Whether another thing is named beside the uniform."""
    named = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    return any(all(entry.id != whole for entry in piece.entries) for piece in named)


def _way(whole: str, lookup: Lookup) -> str | None:
    """What the books call the way to and from duty, if a rule on the uniform rests on one so called."""
    facts = {
        test.fact for rule in lookup.base.rules if whole in rule.scope.items for test in tests(rule.condition)
    }
    names = {name for fact in facts if fact in lookup.facts for name in _ways(lookup.facts[fact])}
    return names.pop() if len(names) == 1 else None


def _ways(fact: Fact) -> Iterator[str]:
    for value in fact.values:
        if WAY_NAMED.fullmatch(value.label):
            yield value.label
    if not fact.values and WAY_NAMED.fullmatch(fact.label):
        yield fact.label


def _spoken(said: str, whole: str, lookup: Lookup) -> bool:
    """Whether a clause with a rule on the uniform has a word of what is done: "necessary shopping"."""
    words = [word for word in analyse(said) if word not in _LIGHT]
    clauses = {rule.clause for rule in lookup.rules_on((whole,))}
    return any(word_level(word, clause_words(lookup.clauses[one])) for one in clauses for word in words)


_LIGHT = set(
    analyse("go come travel walk direct straight home way duty work shift drill parade station activity")
)
