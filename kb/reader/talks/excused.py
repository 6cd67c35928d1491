"""Who may let one off what was spoken of, and for how long: "who can excuse me?", "can't she waive it?".

Each is read as it is asked in full, of the thing before.
"""

from __future__ import annotations

from collections.abc import Callable

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query, Reading
from kb.reader.meaning.defined import granting, one_of
from kb.reader.meaning.permits import held
from kb.reader.talks.further import LEAD, bare_words, put_as
from kb.reader.talks.talked import Talk, item_alone
from kb.reader.talks.thereupon import told_of_another
from kb.reader.words.tokens import tokenize, word_key
from kb.text import Pattern

Read = Callable[[str, Reading, Talk], Reading]

_ONE = r"(?:me|us|him|her|them|anyone|anybody|someone|somebody|people|one|you)"
_IT = (
    r"(?: (?:from |of |off |with )?(?:it|that|this|them|those|the rule|doing (?:it|that|so)|"
    r"wearing (?:it|them|that)))?"
)
_OFF = (
    rf"(?:(?:let(?:s|ting)?|get(?:s|ting)?) {_ONE} (?:off|out of){_IT}|excuses? {_ONE}{_IT}|"
    r"(?:waives?|lifts?|relax(?:es)?|drops?|dispenses? with|overrules?) (?:it|that|this|them|the rule)|"
    rf"make(?:s)? an exception(?: for {_ONE})?|free(?:s)? {_ONE}{_IT})"
)
_END = (
    r"(?: (?:then|though|at all|ever|today|once|just (?:this )?once|just today|"
    r"(?:just )?for (?:today|the day|now|once)))*"
)
_WHO = Pattern(
    rf"(?i){LEAD}(?:who(?:ever)?|(?:is|isn['\u2019]t) there any(?:one|body) who) "
    r"(?:else )?(?:can|could|may|might|would|is allowed to|has the power to|gets to|is able to) "
    rf"{_OFF}{_END}"
)
_MAY_THEY = Pattern(
    rf"(?i){LEAD}(?:can|could|may|might)(?:n?['\u2019]t| not)? (?P<who>(?:the|our|my|a|an) [\w' -]+?)"
    rf"(?: not)?(?: just| simply| ever| at least| perhaps)? {_OFF}{_END}"
)
_AND_WHO = Pattern(rf"(?i){LEAD}(?:for |from )?(.+?),? who(?:['\u2019]s that| can| could| for that| then)?")
_HOW_LONG = Pattern(
    rf"(?i){LEAD}(?:for )?how long(?:['\u2019]s| is| would| do| does| will| can| could| might| am| are) "
    r"(?:it|that|this|one|i|we|he|she|they) (?:be )?"
    r"(?:for|get|have|let off|excused|last|given|allowed|good|valid|run)(?: for| it| one| that| off)*"
    r"(?: then)?"
)
_GRANT_LASTS = Pattern(
    rf"(?i){LEAD}(?:for )?how long (?:does|do|is|are|will|would|can) (?:the|that|this|my|such an?|an?) "
    r"(?P<it>[\w' -]+?) (?:be )?(?:last|good|hold|run|valid|granted|given|stand)(?: for| good)?(?: then)?"
)
_AGAIN = Pattern(
    rf"(?i){LEAD}(?:can|could|may|is|are|will|would) (?:it|that|one|they|this|(?:the|my|such an?) [\w' -]+?) "
    r"(?:be )?(?:renew(?:ed|able)|extend(?:ed|able)|prolonged|given again|granted again|repeated)"
    r"(?: again| once more| after that| at all| then)*"
)
_FREES = Pattern(r"(?i)\b(?:excus|let\w* off|waive|exempt|releas|dispens|grant|allow|permit|relax)")
_RENEWED = Pattern(r"(?i)\b(?:renew\w*|extend\w*|prolong\w*|once more|again)\b")


def excused(text: str, previous: Reading, talk: Talk, read: Read) -> Reading | None:
    """A turn on being let off what was spoken of, on how long that lasts, and on whether it is renewed."""
    before, bare, lookup = previous.frame or previous.query, bare_words(text), talk.lookup
    if before is None:
        return None
    if _AGAIN.fullmatch(bare) is not None:
        renewed = _renewed(previous.query or before, before, lookup)
        return None if renewed is None else talk.made(text, renewed)
    lasts = _GRANT_LASTS.fullmatch(bare)
    if lasts is not None and _is_held(lasts["it"], before, lookup):
        return _shown(text, read("how long does it last?", previous, talk))
    if len(before.items) != 1 or before.kind == "list":
        return None
    label, they = f"the {lookup.items[before.items[0]].label}", _MAY_THEY.fullmatch(bare)
    if _WHO.fullmatch(bare) is not None:
        again = _shown(text, talk.read(f"who can let me off {label}?", None))
        unsaid = Reading(
            question=text, abstain=Abstain(reason="No clause was found that says who may do that.")
        )
        return again or (unsaid if " from " in bare else None)
    if they is not None:
        return _shown(text, talk.read(f"can {they['who']} let me off {label}?", None))
    if previous.query is None or previous.query.clause is None:
        return None
    of_it = _AND_WHO.fullmatch(bare)
    frees = _FREES.search(lookup.clauses[previous.query.clause].text) is not None
    if frees and of_it is not None and item_alone(f"the {of_it.group(1)}", talk.lexicon, lookup) is not None:
        other = told_of_another(f"and the {of_it.group(1)}?", previous, talk)
        return other or _shown(text, talk.read(f"who can let me off the {of_it.group(1)}?", None))
    if _HOW_LONG.fullmatch(bare) is not None and frees:
        unsaid = Reading(question=text, abstain=Abstain(reason="The books do not say for how long."))
        return _shown(text, read("for how long?", previous, talk)) or unsaid
    return None


def _shown(text: str, again: Reading) -> Reading | None:
    """The reading of other words, where they are answered by a clause."""
    return put_as(text, again) if again.query is not None and again.query.clause is not None else None


def _is_held(noun: str, before: Query, lookup: Lookup) -> bool:
    """Whether words name the one grant or waiver that was said: "the order", of the summer order."""
    said = held(before, lookup)
    words = {word_key(word.casefold()) for word in noun.split()}
    return len(said) == 1 and words <= {token.key for token in tokenize(lookup.facts[said[0]].label)}


def _renewed(shown: Query, before: Query, lookup: Lookup) -> Query | None:
    """The clause before, or the one on what was granted, where it says how often that may be given."""
    facts = held(before, lookup)
    clauses = [clause.id for fact in facts for clause in granting(lookup.facts[fact], lookup)]
    clauses = [shown.clause] if shown.clause is not None else clauses
    again = [c for c in clauses if c in lookup.clauses and _RENEWED.search(lookup.clauses[c].text)]
    found = one_of(again, before.case, lookup) if again else None
    return found if isinstance(found, Query) else None
