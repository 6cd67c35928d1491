"""A rule as one sentence of plain regulation prose."""

from __future__ import annotations

from kb.model.conditions import ALWAYS
from kb.model.lookup import Lookup
from kb.model.records import Aspect, Modality, Rule
from kb.model.values import Choices, contains
from kb.wording.aspects import say_aspect_statement
from kb.wording.conditions import Parts, follow, take_apart
from kb.wording.english import phrase, sentence
from kb.wording.holders import say_subject, with_holder
from kb.wording.labels import rule_reference
from kb.wording.quantities import say_date
from kb.wording.scopes import act_object, act_subject, is_denial

VERBS: dict[Modality, str] = {"must": "must", "must_not": "must not", "may": "may", "need_not": "need not"}


def say_rule(lookup: Lookup, rule: Rule) -> str:
    """The whole rule in one sentence, "K2 and above may wear the deck gloves when the weather is foul."."""
    parts = take_apart(lookup, rule.condition)
    aspect = lookup.aspects[rule.aspect]
    repaired = f"where the duty of {rule_reference(lookup, rule.repairs)} is broken," if rule.repairs else ""
    lead = phrase(_period(lookup, rule), repaired)
    if aspect.kind == "act" and aspect.verb is not None:
        body = _say_act(lookup, rule, aspect, parts)
    else:
        body = _say_other(lookup, rule, aspect, parts)
    return sentence(phrase(lead, body))


def _say_act(lookup: Lookup, rule: Rule, aspect: Aspect, parts: Parts) -> str:
    """ "K5 and above must wear the cap ashore", or without a holder "The cap must be worn ashore"."""
    affirmed = aspect_is_done(rule)
    modality = rule.modality if affirmed else _turned(rule.modality)
    subject = say_subject(lookup, parts.holder)
    if subject:
        done = phrase(subject, VERBS[modality], aspect.verb or "do", act_object(lookup, rule, modality))
    elif is_denial(lookup, rule, modality):
        verb = "need" if modality == "need_not" else "may"
        done = phrase(act_subject(lookup, rule, modality), verb, "be", aspect.done or "done")
    else:
        done = phrase(act_subject(lookup, rule, modality), VERBS[modality], "be", aspect.done or "done")
    if rule.scope.alternatives == "one" and len(rule.scope.items) == 2:
        done += ", but not both" + ("," if rule.condition != ALWAYS else "")
    if rule.residual:
        done += " unless provided for"
        tail = follow(parts)
        return f"{done}, {tail}" if tail else done
    return _join(done, follow(parts, "when"))


def aspect_is_done(rule: Rule) -> bool:
    """Whether an act's rule speaks of doing it (the usual way of writing)."""
    return isinstance(rule.value.values, Choices) and contains(rule.value.values, "yes")


def _turned(modality: Modality) -> Modality:
    """The same rule about not doing it, said of doing it: must not-wear is must not wear."""
    turned: dict[Modality, Modality] = {
        "must": "must_not",
        "must_not": "must",
        "may": "need_not",
        "need_not": "may",
    }
    return turned[modality]


def _say_other(lookup: Lookup, rule: Rule, aspect: Aspect, parts: Parts) -> str:
    holder = say_subject(lookup, parts.holder)
    statement, who_named = say_aspect_statement(lookup, rule, aspect, VERBS[rule.modality], holder)
    lead = "" if who_named else with_holder(holder)
    return phrase(lead, _join(statement, follow(parts, "when")))


def _join(statement: str, tail: str) -> str:
    if not tail or tail.startswith(","):
        return statement + tail
    mark = "," if statement.endswith(("”", ")")) or ", " in statement else ""
    return f"{statement}{mark} {tail}"


def _period(lookup: Lookup, rule: Rule) -> str:
    """The bounds of a rule that are its own and not those of its clause."""
    clause = lookup.clauses[rule.clause]
    start = rule.valid_from if rule.valid_from != clause.valid_from else None
    end = rule.valid_until if rule.valid_until != clause.valid_until else None
    if start and end:
        return f"from {say_date(start)} and before {say_date(end)},"
    if start:
        return f"from {say_date(start)},"
    return f"before {say_date(end)}," if end else ""
