"""Statements about what a thing is like: its colour, its measures, where and in what manner it is worn."""

from __future__ import annotations

import re
from functools import cached_property

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.conditions import read_condition, read_tail
from kb.guidance.checking.modals import Modal, denied
from kb.guidance.checking.names import Names
from kb.guidance.checking.scopes import read_scope
from kb.guidance.checking.values import Values
from kb.guidance.checking.words import fold
from kb.model.conditions import ALWAYS, Condition, all_of, negate
from kb.model.records import Aspect, Measure, Modality, RuleValue, Scope
from kb.model.values import YES
from kb.text import Pattern
from kb.wording.manners import say_manner

_RESIDUAL = Pattern(r"(?:^|,? )(?:unless|except when|except where) (?:it is |they are )?provided for$")
_HAVING = Pattern(r"have (?:an? |the )?")
_KEPT_TO = Pattern(r"(?:trimmed|cut|kept|limited|restricted) to ")
_THING = "this thing"
_QUOTED = Pattern(r'"(?P<text>[^"]*)"[.,]?')


class Statements:
    """Reads what follows "must", "may" and the like, in the language of one rule base."""

    def __init__(self, names: Names) -> None:
        self.names = names
        self.lookup = names.lookup
        self.values = Values(names)
        aspects = self.lookup.base.aspects
        self._acts = [a for a in aspects if a.kind == "act" and a.verb]
        self._manners = [a for a in aspects if a.kind == "act" and a.verb is None and a.within]
        self._others = [a for a in aspects if a.kind in ("measure", "choice", "count")]
        self._places = [a for a in aspects if a.kind == "position"]

    def _claim(
        self,
        modal: Modal,
        scope: Scope,
        aspect: str,
        value: RuleValue,
        tail: str,
        holder: Condition = ALWAYS,
        measure: Measure | None = None,
    ) -> Claim | None:
        residual = _RESIDUAL.search(tail)
        found = self._circumstances(modal, tail[: residual.start()] if residual else tail)
        if found is None:
            return None
        modality, condition = found
        return Claim(
            modality=modality,
            scope=scope,
            aspect=aspect,
            value=value,
            condition=all_of([holder, condition]),
            measure=measure,
            residual=residual is not None,
            sure=modal.sure,
            weak=modal.weak,
        )

    def _circumstances(self, modal: Modal, tail: str) -> tuple[Modality, Condition] | None:
        """What a statement says in the circumstances behind it: "only ashore" denies it for all others."""
        plain = tail.strip(" ,")
        if plain.startswith("neither "):
            neither = read_condition(self.names, plain) if modal.modality in ("may", "must") else None
            return None if neither is None or modal.only else (denied(modal).modality, negate(neither))
        bare = plain.removeprefix("only ").removesuffix(" only")
        condition = read_tail(self.names, bare)
        if condition is None:
            return None
        if bare == plain and not modal.only:
            return modal.modality, condition
        if modal.modality not in ("may", "must") or condition == ALWAYS:
            return None
        if modal.modality == "must":
            return "must", condition  # that the clause says it of no more cases is looked at with the others
        return "must_not", negate(condition)

    def _place(self, modal: Modal, scope: Scope, text: str, holder: Condition = ALWAYS) -> Claim | None:
        for aspect in self._places:
            for value in self.values.at_start(aspect.id, text):
                claim = self._claim(modal, scope, aspect.id, value.value, value.rest, holder)
                if claim is not None:
                    return claim
        return None

    def _named_aspect(self, left: str, modal: Modal, right: str) -> Claim | None:
        """ "The height of the name strip must be 1 in", "The number of rings worn must be at most 2"."""
        if not modal.be:
            return None
        for aspect in self._others:
            scope = self._aspect_subject(aspect, left, modal)
            for value in self.values.at_start(aspect.id, right) if scope is not None else ():
                claim = scope and self._claim(
                    modal, scope, aspect.id, value.value, value.rest, measure=value.measure
                )
                if claim:
                    return claim
        for aspect in self._places:
            scope = self._aspect_subject(aspect, left, modal)
            claim = scope and self._place(modal, scope, right)
            if claim:
                return claim
        quoted = _QUOTED.match(right)
        for manner in self._manners if quoted else ():
            within = self.lookup.aspects[manner.within or manner.id]
            scope = self._aspect_subject(within, left, modal)
            if scope is not None and quoted and fold(manner.label) == quoted["text"].rstrip(" ."):
                return self._claim(modal, scope, manner.id, RuleValue(values=YES), right[quoted.end() :])
        return None

    def _aspect_subject(self, aspect: Aspect, left: str, modal: Modal) -> Scope | None:
        """The items of "the height of the name strip" or "the number of rings worn"."""
        words = fold(aspect.label).split()
        plain = left.removeprefix("the ")
        scope = after(plain, f"{' '.join(words)} of")
        if scope is None and aspect.kind == "count" and len(words) == 2:
            start, end = f"{words[0]} of ", f" {words[1]}"
            if plain.startswith(start) and plain.endswith(end):
                scope = plain[len(start) : -len(end)]
        found = read_scope(self.names, scope, modal.modality, False) if scope else None
        return found[0] if found is not None and not found[1] else None

    @cached_property
    def _predicates(self) -> dict[str, str]:
        """What is said of a thing in a certain manner, "be washed by hand", folded, and the manner."""
        found: dict[str, str] = {}
        for manner in self._manners:
            said = fold(say_manner(self.lookup, _THING, manner, "must"))
            if said.startswith(f"{_THING} must "):
                found[said.removeprefix(f"{_THING} must ")] = manner.id
            label = fold(manner.label)
            found.setdefault(f"be {label}", manner.id)
            found.setdefault(f"have {label}", manner.id)
        return dict(sorted(found.items(), key=lambda pair: -len(pair[0])))

    def _manner(self, left: str, modal: Modal, right: str) -> Claim | None:
        """ "The shirt must be tucked in", "The coat must have the collar turned down"."""
        found = read_scope(self.names, left, modal.modality, False)
        if found is None:
            return None
        scope, denial = found
        modal = denied(modal) if denial else modal
        predicate = f"be {right}" if modal.be else right
        for words, manner in self._predicates.items():
            rest = after(predicate, words)
            claim = None if rest is None else self._claim(modal, scope, manner, RuleValue(values=YES), rest)
            if claim is not None:
                return claim
        return None

    def _reaching(self, left: str, modal: Modal, right: str) -> Claim | None:
        """ "The hem must reach 2 to 4 in from the knee": what is measured, as a verb."""
        found = None if modal.be else read_scope(self.names, left, modal.modality, False)
        if found is None or found[1]:
            return None
        for aspect in self._others:
            rest = after(right, fold(aspect.label)) if aspect.kind == "measure" else None
            for value in self.values.at_start(aspect.id, rest) if rest else ():
                claim = self._claim(
                    modal, found[0], aspect.id, value.value, value.rest, measure=value.measure
                )
                if claim is not None:
                    return claim
        return None

    def _plain_value(self, left: str, modal: Modal, right: str) -> Claim | None:
        """ "The storm coat must be navy blue", "must have a matt finish", "The belt must be 2 in wide"."""
        found = read_scope(self.names, left, modal.modality, False)
        if found is None or found[1]:
            return None
        if not modal.be:
            return self._valued(modal, found[0], _HAVING.match(right), right)
        for aspect in self._others:
            if aspect.kind == "choice":
                for value in self.values.at_start(aspect.id, right.removeprefix("of ")):
                    tail = value.rest.strip().removeprefix(f"in {fold(aspect.label)}")
                    claim = self._claim(modal, found[0], aspect.id, value.value, tail)
                    if claim is not None:
                        return claim
            elif aspect.kind == "measure":
                only = " from " not in right and self.only_measure(found[0]) == aspect.id
                kept = _KEPT_TO.match(right) if only else None
                for value in self.values.at_start(aspect.id, right[kept.end() :] if kept else right):
                    word = dimension(aspect.id)
                    rest = next((r for w in word if (r := after(value.rest.strip(), w)) is not None), None)
                    rest = value.rest.strip() if rest is None and only else rest
                    claim = (
                        rest
                        if rest is None
                        else self._claim(modal, found[0], aspect.id, value.value, rest, measure=value.measure)
                    )
                    if claim is not None:
                        return claim
        return None

    def only_measure(self, scope: Scope) -> str | None:
        """The one aspect in which rules give things a measure: a beard "of 1 in" has a length."""
        rules = self.lookup.rules_on(scope.items)
        found = {rule.aspect for rule in rules if self.lookup.aspects[rule.aspect].kind == "measure"}
        return found.pop() if len(found) == 1 else None

    def _valued(self, modal: Modal, scope: Scope, having: re.Match[str] | None, right: str) -> Claim | None:
        """ "(The buckle must) have a matt finish", "have a width of 2 in": a value beside its aspect."""
        for aspect in self._others if having else ():
            said = right[having.end() :] if having is not None else ""
            named = after(said, f"{fold(aspect.label)} of")
            for value in self.values.at_start(aspect.id, said if named is None else named):
                rest = (
                    value.rest.strip() if named is not None else after(value.rest.strip(), fold(aspect.label))
                )
                if rest is None or (named is None and aspect.kind != "choice"):
                    continue
                claim = self._claim(modal, scope, aspect.id, value.value, rest, measure=value.measure)
                if claim is not None:
                    return claim
        return None


def dimension(aspect: str) -> tuple[str, ...]:
    words = {
        "height": ("high", "tall", "in height"),
        "width": ("wide", "in width"),
        "length": ("long", "in length"),
        "diameter": ("in diameter", "across"),
    }
    return words.get(aspect, ())


def after(text: str, word: str) -> str | None:
    """What follows a word or phrase at the beginning of a text; None if it does not begin with it."""
    if not word or not text.startswith(word):
        return None
    rest = text[len(word) :]
    return None if rest[:1].isalnum() or rest[:1] in ("'", "-") else rest.strip()
