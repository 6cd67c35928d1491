"""Cold, heat and wind as people feel them: "even if it's cold?" asks how cold it is."""

from __future__ import annotations

from kb.model.conditions import tests
from kb.model.questions import Ask, Query, Reading
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.talks.further import LEAD, bare_words
from kb.reader.talks.talked import Talk
from kb.text import Pattern

_FELT = Pattern(
    rf"(?i){LEAD}(?:(?:even |only )?(?:if|when|while|on|in|though)|what if|what about(?: when| if)?)? ?"
    r"(?:(?:it|the (?:air|weather|day))(?:['\u2019]s| is| gets| turns| feels)|"
    r"i(?:['\u2019]m| am|['\u2019]m feeling)|a)? ?"
    r"(?:(?:too|so|very|really|quite|a bit|rather|that|bitterly|freezing|still) )*"
    r"(?:(cold|colder|freezing|chilly|icy|bitter|nippy|frosty|hot|hotter|warm|warmer|cool|mild|boiling|baking|"
    r"sweltering)|(windy|breezy|blowy|blowing(?: hard| a gale)?|gusty|a gale))"
    r"(?: (?:day|days|night|weather|out|outside|today|enough|there))*"
)
_UNITS = (("Cel", "[degF]"), ("km/h", "m/s", "[kn_i]", "[mi_i]/h"))


def felt(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """The question for the measure that is meant; the question before, where its answer rests on none."""
    before, found = previous.query, _FELT.fullmatch(bare_words(text))
    if before is None or found is None or not before.items:
        return None
    units = _UNITS[0 if found.group(1) else 1]
    facts = [fact for fact in talk.lookup.base.facts if fact.kind == "quantity" and fact.unit in units]
    if len(facts) != 1:
        return None
    fact = facts[0]
    known = {name for name, _ in before.case.facts}
    if fact.id in known or not _rests_on(fact.id, before, talk):
        return talk.made(text, before)
    return Reading(question=text, ask=Ask(fact=fact.id, prompt=fact.ask or f"What is the {fact.label}?"))


def _rests_on(fact: str, before: Query, talk: Talk) -> bool:
    """Whether a rule on what was asked tests the fact, by itself or in a defined term."""
    named = {*facts_that_matter(before, talk.lookup)}
    terms = (defined.condition for defined in talk.lookup.base.definitions if defined.term in named)
    return fact in named or any(test.fact == fact for condition in terms for test in tests(condition))
