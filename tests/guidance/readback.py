"""Sentences put to the program as claims, "Is it true that ...?": what is read, and with what verdict.

`python -m tests.guidance.readback` writes the shares of all rules of the three services and of the sentences
of whole drafts, and the exceptions anew (`rules-that-give-way.txt`), to be read before they are committed.
"""

from __future__ import annotations

import datetime
import re
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Literal, NamedTuple

from kb import demo_folder
from kb.errors import UsageError
from kb.files import write_atomically
from kb.guidance.checking.asking import read_claim
from kb.guidance.checking.claim import Claim
from kb.guidance.checking.claims import Claims
from kb.guidance.checking.names import Names
from kb.guidance.checking.truth import Instance, Judge
from kb.guidance.document import Sentence
from kb.guidance.reading import Opened, open_plan
from kb.model.conditions import ALWAYS
from kb.model.lookup import Lookup
from kb.model.questions import Answer, Verdict
from kb.model.records import Rule
from kb.reasoner import Engine
from kb.reasoner.norms import covers
from kb.wording import clause_reference, say_rule
from tests.guidance.draft_cases import plan_text
from tests.opening import opened

HERE = Path(__file__).parent
KEPT = HERE / "rules-that-give-way.txt"
FOLDERS = {
    "demo": demo_folder(),
    "second": HERE.parent / "second" / "books",
    "third": HERE.parent / "third" / "books",
}
TODAY = datetime.date(2026, 12, 1)
WHOLE = {
    "demo": (demo_folder() / "plans" / "boat-crews-in-winter.plan").read_text(encoding="utf-8"),
    "second": plan_text(authority="marshal", day="2026-01-01"),
    "third": plan_text(authority="chief", day="2026-12-01"),
}
"""A plan for each service; those of the second and third ask for everything that their books say."""

Outcome = Literal["same", "depends", "other", "unread", "no case", "turned"]
"""What comes of a sentence: "turned", where a rule on what is worn beside it forbids the two together."""


# -- what a sentence says and what comes of it --------------------------------------------------------------


def question(text: str) -> str:
    first, rest = text[0], text[1:].removesuffix(".")
    named = rest[:1].isdigit() or rest[:1].isupper() or rest.startswith(" to ")
    return f"Is it true that {first if named else first.lower()}{rest}?"


def wanted(rule: Rule, answer: Answer) -> set[Verdict]:
    """The verdicts that say what the rule says of what an answer is about.

    A duty to wear just one of two things forbids them together.
    """
    query = answer.reading.query
    if rule.modality == "must" and query is not None and query.kind == "may":
        return {"prohibited"}
    found: dict[str, set[Verdict]] = {
        "must": {"required"},
        "must_not": {"prohibited"},
        "may": {"permitted"},
        "need_not": {"permitted", "not_required"},
    }
    return found[rule.modality]


def is_choice(lookup: Lookup, rules: Sequence[str]) -> bool:
    """Whether what is required is so only as one of several."""
    duties = [lookup.rules[r] for r in rules if lookup.rules[r].modality == "must"]
    return bool(duties) and all(duty.scope.alternatives for duty in duties)


def rows_against(rule: Rule, lookup: Lookup, answer: Answer) -> list[tuple[str, ...]]:
    """The deciding rules of each row of an answer that says something else than the rule.

    What may be worn is also what has to be worn for want of another of a choice; what need not be is also
    what must not be beside another of a choice.
    """
    of_choice = {("may", "required"), ("need_not", "prohibited")}
    against = []
    for case in answer.cases:
        fits = (rule.modality, case.verdict) in of_choice and is_choice(lookup, case.rules)
        if case.verdict not in wanted(rule, answer) and not fits:
            against.append(case.rules)
    return against


def outcome(rule: Rule, lookup: Lookup, answers: Sequence[Answer]) -> Outcome:
    if any(answer.outcome != "answer" or not answer.cases for answer in answers):
        return "unread"
    against = [len(rows_against(rule, lookup, answer)) for answer in answers]
    if not any(against):
        return "same"
    everywhere = all(number == len(answer.cases) for number, answer in zip(against, answers, strict=True))
    return "other" if everywhere else "depends"


# -- the rules ----------------------------------------------------------------------------------------------


class RuleBack(NamedTuple):
    """What came of the sentence of one rule; `before` are the rules that decide where it says otherwise."""

    rule: Rule
    text: str
    day: datetime.date
    found: Outcome
    before: tuple[str, ...]


def day_of(rule: Rule) -> datetime.date:
    """A day on which a rule is in force: today, else its first or its last."""
    if rule.valid_from > TODAY:
        return rule.valid_from
    if rule.valid_until is not None and rule.valid_until <= TODAY:
        return rule.valid_until - datetime.timedelta(days=1)
    return TODAY


def rules_back(service: str) -> Iterator[RuleBack]:
    """Every rule of a service, in force or not, its sentence asked on a day on which it is."""
    base = opened(service)
    lookup = base.lookup
    for rule in lookup.base.rules:
        text, day = say_rule(lookup, rule), day_of(rule)
        try:
            answers = base.ask(question(text), as_of=day)
        except UsageError:  # what the sentence says of its cases excludes itself
            yield RuleBack(rule, text, day, "no case", ())
            continue
        before = [r for answer in answers for rules in rows_against(rule, lookup, answer) for r in rules]
        others = tuple(dict.fromkeys(one for one in before if one != rule.id))
        told = [answer.reading.query.items for answer in answers if answer.reading.query is not None]
        turned = any(items and not covers(lookup, rule.scope, items[0], as_such=True) for items in told)
        found = "turned" if turned else outcome(rule, lookup, answers)
        yield RuleBack(rule, text, day, found, others)


def claims_of(service: str) -> Claims:
    base = opened(service)
    return Claims(Names(base.lookup, base.lexicon))


def says_the_rule(claims: Claims, rule: Rule, engine: Engine, meant: Rule | None = None) -> bool:
    """Whether the sentence of a rule is read as that rule (or the one that is meant instead).

    It then says the same of the same things in the same cases.
    """
    found = read_claim(say_rule(claims.lookup, rule), claims)
    if found is None:
        return False
    claim, judge, rule = found[0], Judge(engine, claims.names), meant or rule
    parts = (claim.modality, claim.aspect, claim.value.values, claim.residual)
    if parts != (rule.modality, rule.aspect, rule.value.values, rule.residual):
        return False
    scopes = [(set(s.items), set(s.excluding), s.alternatives) for s in (claim.scope, rule.scope)]
    mine, its = claim.condition, rule.condition
    return scopes[0] == scopes[1] and judge.implies(mine, its) and judge.implies(its, mine)


def holds_everywhere(service: str, rule: Rule) -> bool:
    """Whether the reasoner bears a rule out in all its cases, asked without any words."""
    base = opened(service)
    judge = Judge(base.engine(day_of(rule)), claims_of(service).names)
    ruling = judge.judge(Claim.of(rule), ALWAYS)

    def borne_out(instance: Instance) -> bool:
        choice = is_choice(base.lookup, instance.rules)
        return instance.outcome == "agrees" or (choice and instance.outcome == "required")

    return bool(ruling.instances) and ruling.complete and all(map(borne_out, ruling.instances))


# -- the sentences of drafts --------------------------------------------------------------------------------


def plan_of(service: str) -> Opened:
    return open_plan(WHOLE[service].encode(), "whole.plan", FOLDERS[service])


def sentences_back(service: str) -> Iterator[tuple[Sentence, Outcome]]:
    """Every sentence of a whole draft that states rules of the books, and what comes of it.

    The question is put with what the plan says for whom it is.
    """
    from kb.guidance.compose import compose

    base, plan = opened(service), plan_of(service)
    rules = base.lookup.rules
    for sentence in compose(plan, "0" * 64).statements:
        if sentence.kind != "rule" or any(r not in rules for r in (*sentence.rules, *sentence.rivals)):
            continue
        duty = rules[sentence.rules[0]].repairs
        named = clause_reference(base.lookup, rules[duty].clause) if duty else ""
        text = re.sub(r"^Where ref\. \(\w\), \S+", f"Where {named}", sentence.text)
        asked = base.ask(question(text), facts=plan.plan.facts, as_of=plan.plan.effective)
        yield sentence, outcome(rules[sentence.rules[0]], base.lookup, asked)


# -- the record ---------------------------------------------------------------------------------------------


def exceptions(service: str, back: Sequence[RuleBack]) -> Iterator[str]:
    """A line for each rule whose sentence does not get its verdict back everywhere: which, how, and why."""
    lookup = opened(service).lookup
    for one in back:
        if one.found != "same":
            clauses = dict.fromkeys(clause_reference(lookup, lookup.rules[r].clause) for r in one.before)
            why = ", ".join(clauses)
            yield f"{one.rule.id} | {one.found} | {why}"


def main() -> None:
    lines = []
    for service in FOLDERS:
        back = list(rules_back(service))
        counts = Counter(one.found for one in back)
        drafted = Counter(found for _, found in sentences_back(service))
        print(service, "rules", len(back), dict(counts), "draft", drafted.total(), dict(drafted))
        lines += [f"# {service}", *exceptions(service, back)]
    write_atomically(KEPT, ("\n".join(lines) + "\n").encode())


if __name__ == "__main__":
    main()
