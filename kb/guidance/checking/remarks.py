"""Sentences of guidance that state no duty and may still be false: notes, cautions, definitions, silences."""

from __future__ import annotations

from difflib import SequenceMatcher

from kb.guidance.checking.findings import CheckFinding, finding_at
from kb.guidance.checking.names import Names
from kb.guidance.checking.passage import Passage
from kb.guidance.checking.scopes import read_items
from kb.guidance.checking.verdicts import Weighing
from kb.guidance.checking.words import fold
from kb.model.records import Rule
from kb.reasoner.norms import covered_items
from kb.text import Pattern
from kb.wording import clause_reference, say_protection, say_rule, the_item

_REMARK = Pattern(r"(?:note|caution|warning|definition|attention): .+")
_CAUTION = Pattern(r"(?:caution|warning): ")
_PROTECTS = Pattern(r"(?P<items>.+?) protects? (?P<from>.+)")
_SILENT = Pattern(
    r"(?:the )?(?:rule )?books (?:say|have|hold) nothing (?:about|on) (?P<items>.+?)(?: for those .+)?"
)
_DEFINES = Pattern(
    r"(?:the (?:term|word|expression) )?\"?(?P<term>[^\"]{2,60}?)\"? "
    r"(?:means|is defined as|are defined as|stands? for|counts? as|refers? to)\b.*"
)
_NEAR = 0.6


class Remarks:
    """Holds such sentences against the books of one day."""

    def __init__(self, names: Names, weighing: Weighing) -> None:
        self.names = names
        self.weighing = weighing
        self.lookup = names.lookup

    def must_be_understood(self, text: str) -> bool:
        """Whether a sentence is a note, a caution, a definition or the like, on which a reader relies."""
        plain = fold(text).rstrip(" .")
        if _REMARK.match(plain) or self._is_deference(plain) or _SILENT.fullmatch(plain):
            return True
        defines = _DEFINES.match(plain)
        return defines is not None and self._is_term(defines["term"].removeprefix("the "))

    def check(self, passage: Passage, text: str) -> tuple[bool, CheckFinding | None]:
        """Whether a sentence was understood, and the finding if it is not so."""
        plain = fold(text).rstrip(" .")
        silent = _SILENT.fullmatch(plain)
        if silent:
            return self._silence(passage, silent["items"])
        if self._is_deference(plain):
            return True, self._deference(passage, plain)
        caution = _CAUTION.match(plain)
        parts = plain[caution.end() if caution else 0 :].split("; ")
        protecting = [_PROTECTS.fullmatch(part.removeprefix("and ")) for part in parts]
        said = [(read_items(self.names, m["items"]), m["from"]) for m in protecting if m]
        if len(said) < len(parts):
            return False, None
        for items, protects in said:
            if items is None:
                return False, None
            for item in items:
                finding = self._protection(passage, item, protects)
                if finding is not None:
                    return True, finding
        return True, None

    # -- one kind at a time -----------------------------------------------------------------------------

    def _is_term(self, name: str) -> bool:
        facts = [fact for fact in self.lookup.base.facts if fact.family == "term"]
        labels = {fold(label) for fact in facts for label in (fact.label, *fact.other_labels)}
        return name in labels or self.names.item(name) is not None

    def _is_deference(self, plain: str) -> bool:
        from kb.answer.common import DEFERENCE  # noqa: PLC0415

        house = fold(DEFERENCE).rstrip(".")
        return any(
            part in plain or SequenceMatcher(None, plain, part, autojunk=False).ratio() >= _NEAR
            for part in (house, *house.split("; "))
        )

    def _deference(self, passage: Passage, plain: str) -> CheckFinding | None:
        from kb.answer.common import DEFERENCE  # noqa: PLC0415

        if plain in fold(DEFERENCE).rstrip(".").split("; "):
            return None
        message = "The caution about protective equipment was changed."
        return finding_at(passage, "error", "differs", message, DEFERENCE, quotation=DEFERENCE)

    def _protection(self, passage: Passage, item: str, protects: str) -> CheckFinding | None:
        found = dict.fromkeys(
            p for kind in self.lookup.broader(item) for p in self.lookup.items[kind].protects
        )
        if not found:
            message = f"The books do not say that {the_item(self.lookup, item)} protects."
            return finding_at(passage, "error", "differs", message, "Take it out.")
        said = say_protection(self.lookup, {item: tuple(found)})
        wanted = _PROTECTS.fullmatch(fold(said))
        if wanted is not None and _words(wanted["from"]) == _words(protects):
            return None
        return finding_at(passage, "error", "differs", f"By the books {said}.", f"Caution: {said}.")

    def _silence(self, passage: Passage, text: str) -> tuple[bool, CheckFinding | None]:
        """ "The rule books say nothing about the cap or the hat": no rule in force is about either."""
        items = read_items(self.names, text)
        for item in items or ():
            mine = set(self.lookup.narrower(item))
            rule = next((r for r in self.weighing.rules if self._is_about(r, mine)), None)
            if rule is not None:
                name, said = clause_reference(self.lookup, rule.clause), say_rule(self.lookup, rule)
                message = f"{name} says something of {the_item(self.lookup, item)}: {said}"
                return True, finding_at(passage, "error", "contradicts", message, "Take it out.", clause=name)
        return items is not None, None

    def _is_about(self, rule: Rule, items: set[str]) -> bool:
        if rule.residual:
            return False
        return not items.isdisjoint({*covered_items(self.lookup, rule.scope), *rule.scope.items})


def _words(text: str) -> frozenset[str]:
    """What protection is told by, whatever the order: "the feet, and against cold"."""
    return frozenset(text.replace(",", " ").split()) - {"and", "the", "against", "from"}
