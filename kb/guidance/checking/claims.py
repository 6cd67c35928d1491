"""A sentence of guidance as a claim: the rule that it states, in the same terms as the rules of the books.

The grammar is that of the program's own sentences, with the turns that people use beside them. Each word has
to be explained; what is not is left unread, never guessed.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator
from functools import cached_property

import msgspec

from kb.guidance.checking.conditions import read_condition, read_holder, read_tail
from kb.guidance.checking.modals import Modal, denied, find_modals
from kb.guidance.checking.names import Names
from kb.guidance.checking.openings import openings, period, turned
from kb.guidance.checking.scopes import left_out, read_scope
from kb.guidance.checking.values import Values
from kb.guidance.checking.words import fold
from kb.model.conditions import ALWAYS, Condition, all_of, negate
from kb.model.records import Aspect, Measure, Modality, Rule, RuleValue, Scope
from kb.model.values import YES
from kb.text import Pattern
from kb.wording.manners import say_manner


class Claim(msgspec.Struct, frozen=True, kw_only=True):
    """What a sentence says: a rule without a clause; `measure` as written, `since` and `until` its time.

    `rules` are the rules of the books that are said in exactly these words. `sure` is False where the words
    leave open whether a duty is meant.
    """

    modality: Modality
    scope: Scope
    aspect: str
    value: RuleValue
    condition: Condition = ALWAYS
    measure: Measure | None = None
    since: datetime.date | None = None
    until: datetime.date | None = None
    residual: bool = False
    sure: bool = True
    rules: tuple[str, ...] = ()

    def as_rule(self, like: Rule) -> Rule:
        """The claim as a rule record; `like` lends what a claim does not have."""
        return msgspec.structs.replace(
            like,
            id="draft",
            modality=self.modality,
            scope=self.scope,
            aspect=self.aspect,
            value=self.value,
            condition=self.condition,
            residual=self.residual,
            repairs=None,
            exception_to=(),
            disables=(),
        )


_ADVERBS = Pattern(r"(?:(?:always|also|at all times|both|each|all|then|therefore) )+")
_COUNTED = Pattern(
    r"(?:not more than|no more than|at most|up to|a maximum of) (?P<number>\w+) (?P<items>.+?) "
    r"(?:may|must|can|shall|are to|are|is) (?:be )?(?P<rest>.+)"
)
_AT_ONCE = Pattern(r"at (?:a|one|any one|the same) time|at once|together")
_NOT_BOTH = Pattern(r", but not both\b,?")
_RESIDUAL = Pattern(r"(?:^|,? )(?:unless|except when|except where) (?:it is |they are )?provided for$")
_THING = "this thing"
_QUOTED = Pattern(r'"(?P<text>[^"]*)"[.,]?')


class Claims:
    """Reads claims in the language of one rule base."""

    def __init__(self, names: Names) -> None:
        self.names = names
        self.lookup = names.lookup
        self.values = Values(names)
        aspects = self.lookup.base.aspects
        self._acts = [a for a in aspects if a.kind == "act" and a.verb]
        self._manners = [a for a in aspects if a.kind == "act" and a.verb is None and a.within]
        self._others = [a for a in aspects if a.kind in ("measure", "choice", "count")]
        self._places = [a for a in aspects if a.kind == "position"]

    def read(self, sentence: str) -> Claim | None:
        """The claim that a sentence makes; None if it makes none that is wholly understood."""
        text = turned(fold(sentence).rstrip(" .;:!"))
        text, since, until = period(text)
        for opening, core in openings(text):
            before = self._opening(opening)
            if before is None:
                continue
            for found in self._statements(core):
                if found is not None:
                    condition = all_of([before, found.condition])
                    return msgspec.structs.replace(found, condition=condition, since=since, until=until)
        return None

    def _statements(self, core: str) -> Iterator[Claim | None]:
        """Every way to take a text for a statement; a plain verb ("keepers wear it") is the last resort."""
        yield self._counted(core)
        for modal in find_modals(core):
            yield self._core(core, modal)
        for aspect in self._acts:
            for match in re.finditer(rf"(?<= )({re.escape(aspect.verb or '')})(s|es)? ", f"{core} "):
                modal = Modal(match.start(), match.start(), "must", sure=False)
                verb = aspect.verb or ""
                yield self._core(f"{core[: match.start()]}{verb} {core[match.end() :]}", modal)

    def _counted(self, core: str) -> Claim | None:
        """ "Not more than two badges may be worn", "At most 2 badges are worn at a time"."""
        match = _COUNTED.match(core)
        if match is None:
            return None
        for aspect in self._others:
            words = fold(aspect.label).split()
            rest = _after(match["rest"], words[-1]) if aspect.kind == "count" else None
            found = read_scope(self.names, match["items"], "must", False) if rest is not None else None
            for value in self.values.at_start(aspect.id, f"at most {match['number']}") if found else ():
                modal = Modal(0, 0, "must")
                scope, denial = found or (Scope(items=()), True)
                tail = _AT_ONCE.sub("", rest or "").strip()
                claim = None if denial else self._claim(modal, scope, aspect.id, value.value, tail)
                if claim is not None:
                    return claim
        return None

    def _opening(self, text: str) -> Condition | None:
        """What stands before the statement: "for K2 and above in watch rig", "when it is winter"."""
        if not text:
            return ALWAYS
        if not text.startswith("for "):
            return read_tail(self.names, text)
        words = text.removeprefix("for ").split(" ")
        for cut in range(len(words), 0, -1):
            holder = read_holder(self.names, " ".join(words[:cut]))
            rest = read_tail(self.names, " ".join(words[cut:])) if holder is not None else None
            if holder is not None and rest is not None:
                return all_of([holder, rest])
        return None

    # -- the statement ----------------------------------------------------------------------------------

    def _core(self, core: str, modal: Modal) -> Claim | None:
        left, right = core[: modal.start].strip(" ,"), core[modal.end :].strip()
        adverb = _ADVERBS.match(right)
        right = right[adverb.end() :] if adverb else right
        if right.startswith("only "):
            be = right.startswith("only be ")
            right = right.removeprefix("only ").removeprefix("be ")
            modal = msgspec.structs.replace(modal, only=True, be=modal.be or be)
        one = _NOT_BOTH.search(core) is not None
        left, right = _NOT_BOTH.sub("", left), _NOT_BOTH.sub("", right)
        ways = (
            [self._passive(left, modal, right, one)]
            if modal.be or modal.done
            else [self._active(left, modal, right, one)]
        )
        ways += [self._named_aspect(left, modal, right), self._manner(left, modal, right)]
        ways += [self._reaching(left, modal, right), self._plain_value(left, modal, right)]
        return next((claim for claim in ways if claim is not None), None)

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
        if modal.modality != "may" or condition == ALWAYS:
            return None  # "must be worn only ashore" leaves open what holds elsewhere
        return "must_not", negate(condition)

    def _passive(self, left: str, modal: Modal, right: str, one: bool) -> Claim | None:
        """ "The cap must be worn in watch rig", "Earrings are prohibited on watch"."""
        found = read_scope(self.names, left, modal.modality, one)
        if found is None:
            return None
        scope, denial = found
        modal = denied(modal) if denial else modal
        if modal.done:
            return self._claim(modal, scope, "wear", RuleValue(values=YES), right)
        for aspect in self._acts:
            rest = _after(right, aspect.done or "")
            if rest is None:
                continue
            less = left_out(self.names, scope, rest) if denial else None
            scope, rest = less or (scope, rest)
            placed = self._place(modal, scope, rest) if aspect.id == "wear" else None
            return placed or self._claim(modal, scope, aspect.id, RuleValue(values=YES), rest)
        rest = _after(right, "placed")
        return self._place(modal, scope, rest) if rest is not None else None

    def _place(self, modal: Modal, scope: Scope, text: str, holder: Condition = ALWAYS) -> Claim | None:
        for aspect in self._places:
            for value in self.values.at_start(aspect.id, text):
                claim = self._claim(modal, scope, aspect.id, value.value, value.rest, holder)
                if claim is not None:
                    return claim
        return None

    def _active(self, left: str, modal: Modal, right: str, one: bool) -> Claim | None:
        """ "K2 and above may wear the gloves", "No one except K3 may wear the pin"."""
        nobody = next((word for word in ("no one", "nobody", "no member") if left.startswith(word)), None)
        if nobody is not None:
            modal = denied(modal)
            others = left.removeprefix(nobody).strip()
            holder = read_holder(self.names, f"everyone {others}".strip())
        elif left.startswith("only ") or left.endswith(" only"):
            among = read_holder(self.names, left.removeprefix("only ").removesuffix(" only"))
            if modal.modality != "may":
                return None
            modal = denied(modal)
            holder = None if among is None else negate(among)
        else:
            holder = read_holder(self.names, left)
        if holder is None:
            return None
        for aspect in self._acts:
            rest = _after(right, aspect.verb or "")
            if rest is not None:
                found = self._object(modal, aspect, rest, holder, one)
                if found is not None:
                    return found
        return None

    def _object(self, modal: Modal, aspect: Aspect, text: str, holder: Condition, one: bool) -> Claim | None:
        words = text.split(" ")
        for cut in range(min(len(words), 80), 0, -1):
            found = read_scope(self.names, " ".join(words[:cut]).rstrip(","), modal.modality, one)
            if found is None:
                continue
            scope, denial = found
            meant = denied(modal) if denial else modal
            rest = " ".join(words[cut:])
            placed = self._place(meant, scope, rest, holder) if aspect.id == "wear" and rest else None
            claim = placed or self._claim(meant, scope, aspect.id, RuleValue(values=YES), rest, holder)
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
        scope = _after(plain, f"{' '.join(words)} of")
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
            rest = _after(predicate, words)
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
            rest = _after(right, fold(aspect.label)) if aspect.kind == "measure" else None
            for value in self.values.at_start(aspect.id, rest) if rest else ():
                claim = self._claim(
                    modal, found[0], aspect.id, value.value, value.rest, measure=value.measure
                )
                if claim is not None:
                    return claim
        return None

    def _plain_value(self, left: str, modal: Modal, right: str) -> Claim | None:
        """ "The storm coat must be navy blue", "The belt must be 2 in wide"."""
        found = read_scope(self.names, left, modal.modality, False) if modal.be else None
        if found is None or found[1]:
            return None
        for aspect in self._others:
            if aspect.kind == "choice":
                for value in self.values.at_start(aspect.id, right):
                    claim = self._claim(modal, found[0], aspect.id, value.value, value.rest)
                    if claim is not None:
                        return claim
            elif aspect.kind == "measure":
                for value in self.values.at_start(aspect.id, right):
                    word = _dimension(aspect.id)
                    rest = next((r for w in word if (r := _after(value.rest.strip(), w)) is not None), None)
                    claim = (
                        rest
                        if rest is None
                        else self._claim(modal, found[0], aspect.id, value.value, rest, measure=value.measure)
                    )
                    if claim is not None:
                        return claim
        return None


def _dimension(aspect: str) -> tuple[str, ...]:
    words = {
        "height": ("high", "tall", "in height"),
        "width": ("wide", "in width"),
        "length": ("long", "in length"),
        "diameter": ("in diameter", "across"),
    }
    return words.get(aspect, ())


def _after(text: str, word: str) -> str | None:
    """What follows a word or phrase at the beginning of a text; None if it does not begin with it."""
    if not word or not text.startswith(word):
        return None
    rest = text[len(word) :]
    return None if rest[:1].isalnum() or rest[:1] in ("'", "-") else rest.strip()
