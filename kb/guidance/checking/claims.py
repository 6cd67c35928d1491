"""A sentence of guidance as a claim: the rule that it states, in the same terms as the rules of the books.

The grammar is that of the program's own sentences, with the turns that people use beside them. Each word has
to be explained; what is not is left unread, never guessed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cached_property, lru_cache
from itertools import islice

import msgspec

from kb.guidance.checking.claim import Claim
from kb.guidance.checking.conditions import read_holder, read_people, read_tail
from kb.guidance.checking.counts import Counting
from kb.guidance.checking.modals import Modal, denied, find_modals
from kb.guidance.checking.names import Names
from kb.guidance.checking.openings import openings, other_ways, period, turned
from kb.guidance.checking.orders import read_order
from kb.guidance.checking.scopes import left_out, read_scope
from kb.guidance.checking.statements import after, dimension
from kb.guidance.checking.words import KEPT, fold
from kb.model.conditions import ALWAYS, Condition, Test, all_of, negate
from kb.model.records import Aspect, RuleValue
from kb.model.values import YES
from kb.reader.meaning.fits import wearing
from kb.text import Pattern

_ADVERBS = Pattern(r"(?:(?:always|also|at all times|both|each|all|then|therefore) )+")
_PAST = Pattern(r"\b(?:was|were|had|did)\b")
_SAYS = Pattern(
    r"\b(?:is|are|has|have|do(?:es)?|wears?|carr(?:y|ies)|owns?|goes|go|stays?|takes?|keeps?|puts?|comes?|ends?"
    r"|falls?|hangs?|sits?|stands?|shows?|reach(?:es)?|covers?|belongs?|needs?|fits?)\b"
)
_SIZED = Pattern(
    r"(?P<before>.+?),?(?: of)? (?P<size>(?:up to|at most|no more than|not more than) (?:\d|one|two).*)"
)
_NOT_BOTH = Pattern(r", but not both\b,?")
_MODALS = 20  # a sentence with more modal verbs is written by nobody, and would take long


class Claims(Counting):
    """Reads claims in the language of one rule base."""

    def __init__(self, names: Names) -> None:
        super().__init__(names)
        self.read = lru_cache(maxsize=KEPT)(self._claim_of)
        """The claim that a sentence makes; None if it makes none that is wholly understood."""

    def _claim_of(self, sentence: str) -> Claim | None:
        text = turned(fold(sentence).rstrip(" .;:!"))
        ways = (self._read(way) for way in (text, *other_ways(text)))
        return next((claim for claim in ways if claim is not None), None)

    def _read(self, text: str) -> Claim | None:
        text, since, until = period(text)
        for opening, core in openings(text):
            before = self._opening(opening)
            for found in self._statements(core) if before is not None else ():
                if found is not None and before is not None:
                    condition = all_of([before, found.condition])
                    return msgspec.structs.replace(found, condition=condition, since=since, until=until)
            spared = self._sparing(opening, core) if before is None else None
            if spared is not None:
                return msgspec.structs.replace(spared, since=since, until=until)
        return None

    def speaks_of_thing(self, text: str) -> bool:
        """Whether a folded text says something of a thing of the books, as they do: "is worn", "is black"."""
        if text.endswith("?") or _PAST.search(text) or not _SAYS.search(text):
            return False
        words = [word.strip(".,;:()\"'") for word in text.split(" ")]
        spans = ((start, end) for start in range(len(words)) for end in range(start + 1, start + 5))
        return any(self.names.item(" ".join(words[start:end])) for start, end in spans if end <= len(words))

    def sized(self, text: str) -> tuple[str, Claim] | None:
        """ "(Keepers may wear a beard), up to 1 in": what is said before a measure, and the limit."""
        match = _SIZED.fullmatch(fold(text).rstrip(" .;:!"))
        whole = self.read(match["before"]) if match else None
        aspect = self.only_measure(whole.scope) if whole is not None and whole.modality == "may" else None
        if match is None or whole is None or aspect is None:
            return None
        size = match["size"].replace("up to", "at most", 1)
        for value in self.values.at_start(aspect, size):
            if value.rest.strip(" ,") in ("", *dimension(aspect)) and whole.aspect != aspect:
                limit = msgspec.structs.replace(
                    whole, modality="must", aspect=aspect, value=value.value, measure=value.measure
                )
                return match["before"], limit
        return None

    def _sparing(self, opening: str, core: str) -> Claim | None:
        """ "Except for the ring, no jewellery may be worn"."""
        for found in self._statements(core) if opening else ():
            if found is not None:
                less = left_out(self.names, found.scope, opening)
                return msgspec.structs.replace(found, scope=less[0]) if less and not less[1] else None
        return None

    def _statements(self, core: str) -> Iterator[Claim | None]:
        """Every way to take a text for a statement; a plain verb ("keepers wear it") is the last resort."""
        yield read_order(self.names, core)
        yield self.counted(core)
        for modal in islice(find_modals(core), _MODALS):
            yield self._core(core, modal)
        for verb, pattern in self._verbs:
            for match in pattern.finditer(f"{core} "):
                modal = Modal(match.start(), match.start(), "must", sure=False)
                yield self._core(f"{core[: match.start()]}{verb} {core[match.end() :]}", modal)

    @cached_property
    def _verbs(self) -> list[tuple[str, re.Pattern[str]]]:
        """The verbs of acts and what they look like in a sentence."""
        verbs = [aspect.verb for aspect in self._acts if aspect.verb]
        return [(verb, re.compile(rf"(?<= )(?:{_third(verb)}) ")) for verb in verbs]

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
        apart = self._never_together(left, modal, right)
        return apart or self._any_way(left, modal, right, one) or self._of_people(left, modal, right, one)

    def _any_way(self, left: str, modal: Modal, right: str, one: bool) -> Claim | None:
        ways = (
            [self._passive(left, modal, right, one)]
            if modal.be or modal.done
            else [self._active(left, modal, right, one)]
        )
        ways += [self._named_aspect(left, modal, right), self._manner(left, modal, right)]
        ways += [self._reaching(left, modal, right), self._plain_value(left, modal, right)]
        return next((claim for claim in ways if claim is not None), None)

    def _of_people(self, left: str, modal: Modal, right: str, one: bool) -> Claim | None:
        """ "The cap device of wardens must be gilt": a thing and whose it is."""
        thing, _, whose = left.rpartition(" of ")
        holder = read_holder(self.names, whose) if thing else None
        claim = self._any_way(thing, modal, right, one) if holder not in (None, ALWAYS) else None
        if claim is None or holder is None:
            return None
        return msgspec.structs.replace(claim, condition=all_of([holder, claim.condition]))

    def _never_together(self, left: str, modal: Modal, right: str) -> Claim | None:
        """ "The scarf and the neck cloth must not be worn together": neither with the other."""
        alone = right.removesuffix(" together")
        if alone == right or modal.modality != "must_not" or not modal.be or " and " not in left:
            return None
        found = read_scope(self.names, left.removeprefix("both "), "must_not", False)
        if found is None or found[1]:
            return None
        worn = [f"worn:{item}" for item in found[0].items]
        if len(worn) != 2 or any(fact not in self.lookup.facts for fact in worn):
            return None
        claim = self._passive(left.removeprefix("both ").partition(" and ")[0], modal, alone, False)
        if claim is None or claim.scope.items != found[0].items[:1]:
            return None
        return msgspec.structs.replace(claim, condition=all_of([claim.condition, Test(worn[1], YES)]))

    def _passive(self, left: str, modal: Modal, right: str, one: bool) -> Claim | None:
        """ "The cap must be worn in watch rig", "Earrings are prohibited on watch"."""
        act, thing = self._doing(left) if modal.done else ("", left)
        found = read_scope(self.names, thing, modal.modality, one)
        words = thing.split(" ") if thing != left and found is None else []
        for cut in range(len(words) - 1, 0, -1):  # "carrying the umbrella in boat rig (is prohibited)"
            found = read_scope(self.names, " ".join(words[:cut]), modal.modality, one)
            if found is not None:
                right = f"{' '.join(words[cut:])} {right}"
                break
        if found is None:
            return None
        scope, denial = found
        modal = denied(modal) if denial else modal
        if modal.done:
            act = act or wearing(scope.items, self.lookup)
            return self._claim(modal, scope, act, RuleValue(values=YES), right)
        for aspect in self._acts:
            rest = after(right, aspect.done or "")
            if rest is None:
                continue
            less = left_out(self.names, scope, rest) if denial else None
            scope, rest = less or (scope, rest)
            placed = self._place(modal, scope, rest) if aspect.id == "wear" else None
            return placed or self._claim(modal, scope, aspect.id, RuleValue(values=YES), rest)
        rest = after(right, "placed")
        return self._place(modal, scope, rest) if rest is not None else None

    def _doing(self, text: str) -> tuple[str, str]:
        """The act and the thing of "carrying the umbrella (is prohibited)"; no act if it is a thing alone."""
        bare = text.removeprefix("the ")
        for aspect in self._acts:
            verb = aspect.verb or ""
            for stem in (verb, verb.removesuffix("e"), verb + verb[-1:]):
                rest = after(bare, f"{stem}ing")
                if rest:
                    return aspect.id, rest.removeprefix("of ")
        return "", text

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
            holder = read_holder(self.names, left) or read_people(self.names, left)
        if holder is None:
            return None
        for aspect in self._acts:
            rest = after(right, aspect.verb or "")
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


def _third(verb: str) -> str:
    """What a verb may look like: "wear", "wears", "carries"."""
    forms = [verb, f"{verb}s", f"{verb}es", *([f"{verb[:-1]}ies"] if verb.endswith("y") else [])]
    return "|".join(re.escape(form) for form in forms)
