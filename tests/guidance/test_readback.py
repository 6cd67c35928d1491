"""Every sentence that the program writes, read back as the claim that it makes: all rules of three services.

The exceptions are listed by name, each with its reason, so that one that goes away fails as one that comes up
does. That a rule holds everywhere is worked out by the reasoner without any words. No source.
"""

from __future__ import annotations

import msgspec
import pytest

from tests.guidance.readback import (
    FOLDERS,
    KEPT,
    RuleBack,
    claims_of,
    day_of,
    exceptions,
    holds_everywhere,
    opened,
    rules_back,
    says_the_rule,
    sentences_back,
)

pytestmark = pytest.mark.slow
SERVICES = pytest.mark.parametrize("service", FOLDERS)

DRAFTED = {
    "demo": {
        "In storm rig, either the storm hat or the storm hood must be worn, but not both": (
            "the hood goes with the storm coat (2.3), which storm rig asks for and the sentence does not name"
        ),
    },
    "second": {
        "The fell boots need not be worn in fell rig with the winter boots when the fell is white": (
            "in Cold Pike hut they must not be worn at all (Hut Order 3)"
        ),
    },
    "third": {
        "The peaked cap need not be worn in a cabin": "nor may it be off duty or with the helmet (5, 29)",
        "The grey tie need not be worn in cabin or hall dress when hot-day dress has been granted by the "
        "Chief of Service or a higher authority": "nor may it be by running machines or in wind (35, S5)",
        "The cabin jacket need not be worn in cabin dress on the platform with the down jacket when it is "
        "hard weather": "nor may it be off duty (5)",
        "Members with the religious waiver need not wear the peaked cap or the felt hat with the religious "
        "head covering": "nor may they off duty, with the helmet or out of full dress (5, 16, 29)",
        "The peaked cap need not be worn in cabin dress with the knitted hat when there is snowfall or the "
        "air temperature is below 5 °C": "nor may it be off duty or with the helmet (5, 29)",
        "In mountain dress, the shell jacket, the down jacket or both must be worn": (
            "attendants may not wear the one (22), and nobody the other among passengers (24)"
        ),
        "On the glacier when the weather is clear, the snow goggles, the sunglasses or both must be worn": (
            "on parade and among passengers the sunglasses are not to be worn (19)"
        ),
    },
}


@pytest.fixture(scope="module")
def back() -> dict[str, list[RuleBack]]:
    return {service: list(rules_back(service)) for service in FOLDERS}


@SERVICES
def test_the_sentence_of_every_rule_is_read_as_that_rule(service: str) -> None:
    claims, base = claims_of(service), opened(service)
    rules = base.lookup.base.rules
    other = [r.id for r in rules if not says_the_rule(claims, r, base.engine(day_of(r)))]
    assert other == []
    assert len(rules) > 100


def test_another_rule_is_not_taken_for_it() -> None:
    """The comparison tells rules apart: a rule with its modality or its cases changed is another."""
    claims, base = claims_of("demo"), opened("demo")
    rule = base.lookup.rules["dress-order/2024/2.11-5"]
    engine = base.engine(day_of(rule))
    assert says_the_rule(claims, rule, engine)
    other = base.lookup.rules["dress-order/2024/beard-allowed"]
    for changes in ({"modality": "may"}, {"condition": other.condition}, {"scope": other.scope}):
        assert not says_the_rule(claims, rule, engine, msgspec.structs.replace(rule, **changes))


def test_the_sentence_of_a_rule_gets_its_verdict_save_where_another_goes_before(
    back: dict[str, list[RuleBack]],
) -> None:
    lines = [line for service in FOLDERS for line in (f"# {service}", *exceptions(service, back[service]))]
    assert lines == KEPT.read_text(encoding="utf-8").splitlines(), (
        "Other sentences get another verdict: python -m tests.guidance.readback, then read the difference."
    )


@SERVICES
def test_a_sentence_gets_its_verdict_just_where_its_rule_holds(
    service: str, back: dict[str, list[RuleBack]]
) -> None:
    """The reasoner, asked of the rule itself, says of each whether it holds in all its cases."""
    tried = 0
    for one in back[service]:
        if one.found == "turned":
            continue  # the pair is forbidden by a rule on the other thing
        if one.rule.residual or one.rule.repairs or one.rule.scope.alternatives:
            continue  # what nothing provides for, a breach, and a choice are no conditions of the rule's own
        tried += 1
        assert holds_everywhere(service, one.rule) == (one.found == "same"), one
    assert tried > 90


@SERVICES
def test_the_sentences_of_a_whole_draft_get_their_verdict_back(service: str) -> None:
    found = list(sentences_back(service))
    assert len(found) > 80
    assert {sentence.text for sentence, outcome in found if outcome != "same"} == set(DRAFTED[service])
