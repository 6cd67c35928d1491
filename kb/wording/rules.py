"""A rule as one sentence of plain regulation prose."""

from __future__ import annotations

import datetime
import re
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from kb.model.conditions import AllOf
from kb.model.lookup import Lookup
from kb.model.records import OWNED_ASPECTS, Aspect, Modality, Rule
from kb.model.values import Choices, contains
from kb.wording.aspects import say_aspect_statement
from kb.wording.conditions import Parts, follow, take_apart, with_unless
from kb.wording.english import phrase, sentence
from kb.wording.holders import EVERY_MEMBER, say_subject
from kb.wording.labels import rule_reference
from kb.wording.phrases import Phrase
from kb.wording.quantities import say_date
from kb.wording.scopes import act_object, act_subject, is_denial, is_given

VERBS: dict[Modality, str] = {"must": "must", "must_not": "must not", "may": "may", "need_not": "need not"}


class Statement(NamedTuple):
    """The core of a sentence; `first` says that its circumstances had better stand before it.

    `holder` is who it is for if it does not say so itself, `beside` the word before who is left out of it.
    """

    text: str
    first: bool = False
    holder: str = ""
    beside: str = "for"


@lru_cache(maxsize=2048)
def say_rule(lookup: Lookup, rule: Rule, period: str | None = None) -> str:
    """The whole rule in one sentence, "K2 and above may wear the deck gloves when the weather is foul.".

    `period` ("from 1 April 2027,") stands in the place of the bounds that are the rule's own.
    """
    parts = take_apart(lookup, rule.condition)
    aspect = lookup.aspects[rule.aspect]
    repaired = f"where {rule_reference(lookup, rule.repairs)} is not complied with," if rule.repairs else ""
    if aspect.kind == "act" and aspect.verb is not None:
        statement = _say_act(lookup, rule, aspect, parts)
    else:
        statement = _say_other(lookup, rule, aspect, parts)
    bounds = _period(lookup, rule) if period is None else period
    return sentence(phrase(bounds, repaired, _arranged(lookup, statement, parts)))


def _arranged(lookup: Lookup, statement: Statement, parts: Parts) -> str:
    """Holder, circumstances, statement and "unless" in the order that reads best."""
    tail = follow(parts)
    text, holder = statement.text, f"for {statement.holder}" if statement.holder else ""
    if statement.first or holder:
        opening = phrase(holder, tail)
        text = f"{opening}, {text}" if opening else text
    else:
        text = phrase(text, tail)
    mark = "," if tail or "," in text else ""
    if not tail and " must not " in text and _denies(parts.unless):
        unless = parts.unless[0]
        where = unless.attached or f"when {unless.bare or unless.clause}"
        return f"{text.replace(' must not ', ' may ', 1)} only {where}"
    if parts.except_for and statement.beside:
        return f"{text}{mark} except {statement.beside} {say_subject(lookup, parts.except_for)}"
    except_by = _except_by(lookup, parts) if statement.beside == "by" else ""
    return f"{text}{mark} except by {except_by}" if except_by else with_unless(text, parts.unless, mark)


def _except_by(lookup: Lookup, parts: Parts) -> str:
    """Who is left out and when, "members with the coxswain appointment when diving"; else empty."""
    if not isinstance(parts.exception, AllOf):
        return ""
    left_out = take_apart(lookup, parts.exception)
    if not left_out.holder or left_out.unless:
        return ""
    return phrase(say_subject(lookup, left_out.holder), follow(left_out))


def _denies(unless: Sequence[Phrase]) -> bool:
    """Whether exceptions deny something themselves: "only when not on watch" is plainer than "unless not"."""
    return any(re.search(r"\b(not|neither|without)\b", phrase.bare or phrase.clause) for phrase in unless)


def _say_act(lookup: Lookup, rule: Rule, aspect: Aspect, parts: Parts) -> Statement:
    """ "K5 and above must wear the cap", or without a holder "The cap must be worn"."""
    modality = rule.modality if aspect_is_done(rule) else _turned(rule.modality)
    owned = aspect.id in OWNED_ASPECTS and modality == "must"
    subject = say_subject(lookup, parts.holder, EVERY_MEMBER if owned else "")
    if subject.startswith("everyone except ") and modality == "must_not":
        nobody = f"no one {subject.removeprefix('everyone ')}"
        text = phrase(nobody, "may", aspect.verb or "do", act_object(lookup, rule, "may"))
    elif subject and is_given(aspect):
        done = aspect.done or "done"
        text = phrase(act_subject(lookup, rule, modality), VERBS[modality], "be", done, "to", subject)
    elif subject:
        text = phrase(subject, VERBS[modality], aspect.verb or "do", act_object(lookup, rule, modality))
    else:
        denied = "need" if modality == "need_not" else "may"
        verb = denied if is_denial(lookup, rule, modality) else VERBS[modality]
        text = phrase(act_subject(lookup, rule, modality), verb, "be", aspect.done or "done")
    if rule.scope.alternatives == "one" and len(rule.scope.items) == 2:
        text += ", but not both"
    if rule.residual:
        text += " unless provided for"
    first = rule.residual or rule.scope.alternatives is not None
    return Statement(text, first, beside="" if subject else "by")


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


def _say_other(lookup: Lookup, rule: Rule, aspect: Aspect, parts: Parts) -> Statement:
    holder = say_subject(lookup, parts.holder)
    text, named = say_aspect_statement(lookup, rule, aspect, VERBS[rule.modality], holder)
    beside = any((p.attached or "").startswith(("with ", "without ")) for p in parts.attached)
    first = beside or aspect.kind not in ("choice", "act") or ", " in text or text.endswith("”")
    return Statement(text, first, "" if named else holder, "" if holder else "for")


def _period(lookup: Lookup, rule: Rule) -> str:
    """The bounds of a rule that are its own and not those of its clause."""
    clause = lookup.clauses[rule.clause]
    start = rule.valid_from if rule.valid_from != clause.valid_from else None
    end = rule.valid_until if rule.valid_until != clause.valid_until else None
    if start and end:
        return f"from {say_date(start)} to {say_date(end - datetime.timedelta(days=1))},"
    if start:
        return f"from {say_date(start)},"
    return f"before {say_date(end)}," if end else ""
