"""Hair that is said to be short, of which one rule asks whether it is long: "it only comes to my ears".

The books call it "hair that reaches the collar", or the like; who has it short has none of that. Where no
rule on what was asked minds the length, the answer before holds for short hair, too.
"""

from __future__ import annotations

import msgspec

from kb.model.questions import Reading
from kb.model.values import NO
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.meaning.query import merge_case
from kb.reader.talks.talked import Talk
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_HOW = r"(?: (?:only|just|very|quite|really|so|kept|cut|all|always|pretty|rather|too|a bit|well))*"
_MY = r"(?:my|his|her|their|the|our)"
_SHORT = Pattern(
    r"(?i)\W*(?:(?:and|but|so|even|what|well|no|oh|not),? )*(?:(?:if|when|though|since|as|because) )?"
    rf"(?:it|mine|{_MY}s?(?: own)? hair|hers|his|hair|i have|i['\u2019]ve(?: got)?)"
    rf"(?:['\u2019]s| is)?{_HOW} (?:"
    r"short(?: hair)?|cropped|shaved|an? (?:short )?(?:bob|crop|crew[- ]cut|buzz[- ]cut)|"
    rf"(?:above|clear of|off) {_MY} (?:collar|shoulders?|neck)|"
    r"(?:does(?: not|n['\u2019]t)|never)(?: quite| even)? "
    rf"(?:reach|touch|come (?:to|past)|go (?:past|below|over)|hang below) {_MY} (?:collar|shoulders?)|"
    rf"(?:(?:comes?|goes|reaches|hangs)(?: down)?|down)(?: (?:to|as far as))? {_MY} "
    r"(?:ears?|ear ?lobes?|chin|jaw|cheeks?))"
    r"(?: (?:though|then|now|anyway|surely))*\W*"
)
_LONG = frozenset({"longer", "long", "reaches", "reaching", "below", "past", "over", "touching", "beyond"})


def cropped(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """The question before, of hair that is short; None for any other turn, or where a measure is wanted."""
    before, lookup = previous.frame or previous.query, talk.lookup
    if before is None or len(before.items) != 1 or before.kind not in ("may", "must"):
        return None
    if _SHORT.fullmatch(text) is None or "hair" not in _words(lookup.items[before.items[0]].label):
        return None
    long = []
    for fact in facts_that_matter(before, lookup):
        record = lookup.facts[fact]
        words = _words(record.label)
        if "hair" in words or not words.isdisjoint(("collar", "shoulder", "shoulders")):
            if record.kind != "yes_no" or words.isdisjoint(_LONG):
                return None
            long.append(fact)
    case = merge_case(before.case, dict.fromkeys(long, NO), None, False, lookup)
    return talk.made(text, msgspec.structs.replace(before, case=case))


def _words(name: str) -> set[str]:
    return {token.low for token in tokenize(name)}
