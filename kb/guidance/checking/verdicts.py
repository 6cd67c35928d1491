"""A claim that was read, held against the books: whether it is so, and if not, what they say instead."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import msgspec

from kb.guidance.checking.books import Books
from kb.guidance.checking.claim import Claim
from kb.guidance.checking.measured import apart, as_written, may_be_named, other_vagueness
from kb.guidance.checking.spelling import Spelling
from kb.guidance.checking.truth import Instance, Judge, Outcome, Ruling
from kb.model.conditions import ALWAYS, Condition, all_of, negate, tests
from kb.model.records import Clause, Rule, Scope
from kb.text import Pattern
from kb.wording import clause_reference, listing, say_rule, the_item


class Verdict(msgspec.Struct, frozen=True):
    """What became of a claim: `true`, `false`, `partly` (true but for what it leaves out), or `unsure`.

    `rule` is the rule that says what the books say, `others` those that go before it. `partial` says that the
    claim holds in some of its cases.
    """

    kind: str
    code: str = ""
    message: str = ""
    rule: Rule | None = None
    others: tuple[Rule, ...] = ()
    suggestion: str = ""
    cause: str = ""
    partial: bool = False


TRUE = Verdict("true")
_EXCEPTS = Pattern(r"(?i)\b(?:unless|except|save)\b")


class Weighing(Spelling):
    """Weighs claims on one day. `judge` answers for that day, `books` resolves citations."""

    def __init__(self, judge: Judge, books: Books) -> None:
        super().__init__(judge.lookup, books)
        self.judge = judge
        day = judge.engine.as_of
        self.day = day
        self.rules = [
            r
            for r in self.lookup.base.rules
            if r.valid_from <= day and (r.valid_until is None or day < r.valid_until)
        ]

    def weigh(
        self, claim: Claim, within: Condition, cited: Sequence[Clause], text: str, stated: frozenset[str]
    ) -> Verdict:
        """The verdict on a claim made for an audience with some clauses cited.

        `stated` are all clauses that the guidance cites: an exception that it states is not left out.
        Of several things each is weighed by itself; all have to be true.
        """
        verdicts = [
            self._weigh(as_written(one, self.judge, self.rules), within, cited, text, stated)
            for one in apart(claim)
        ]
        return next((verdict for verdict in verdicts if verdict.kind != "true"), TRUE)

    def _weigh(
        self, claim: Claim, within: Condition, cited: Sequence[Clause], text: str, stated: frozenset[str]
    ) -> Verdict:
        ruling = self.judge.judge(claim, within)
        if not ruling.complete:
            return Verdict("unsure", message="it speaks of too many cases")
        if may_be_named(claim, self.judge, self.rules):
            return Verdict("unsure", message="it may be the colour that the books name")
        if not ruling.instances:
            spared = self._spared(claim, within, [r for r in self.rules if r.clause in {c.id for c in cited}])
            return spared or Verdict("unsure", "no-case", "no case that the guidance is for fits it")
        faithful = self.judge.faithful(claim, within, self.rules)
        here = {clause.id for clause in cited}
        own = [rule for rule in faithful if rule.clause in here]
        vague = self._vague(claim, own or faithful)
        if vague is not None:
            return vague
        if ruling.holds or (claim.residual and faithful):
            return (
                self._right_clause(ruling, faithful, own, cited) or self._spared(claim, within, own) or TRUE
            )
        if "conflict" in ruling.outcomes and ruling.outcomes <= {"agrees", "conflict"}:
            return self._conflict(ruling)
        if faithful:
            return self._excepted(claim, within, ruling, faithful, own, cited, stated, text)
        return self._wrong(claim, within, ruling, cited, text)

    def _vague(self, claim: Claim, rules: Sequence[Rule]) -> Verdict | None:
        """The verdict that "about" was added to a measure that the rules give exactly, or taken from one."""
        rule = other_vagueness(claim, rules)
        if rule is None or claim.measure is None:
            return None
        said = "exactly" if claim.measure.about else "only about"
        message = f"{clause_reference(self.lookup, rule.clause)} gives this measure {said}."
        return Verdict("false", "wrong-measure", message, rule, suggestion=self.said(rule, ALWAYS))

    def weaker(self, claim: Claim, within: Condition, cited: Sequence[Clause], text: str) -> Verdict:
        """The verdict on a duty that is only advised: "should" where the books say "must"."""
        here = {clause.id for clause in cited}
        faithful = self.judge.faithful(claim, within, self.rules)
        near = self.best([rule for rule in faithful if rule.clause in here] or faithful, text)
        if near is None:
            return Verdict("unsure", message="it only advises")
        said = self.said(near, within, cite=False)
        message = (
            f"This only advises, and {clause_reference(self.lookup, near.clause)} makes it a rule: {said}"
        )
        return Verdict("partly", "weaker", message, near, suggestion=self.said(near, within))

    def _spared(self, claim: Claim, within: Condition, own: Sequence[Rule]) -> Verdict | None:
        """The verdict on items that a claim spares ("other than the ring") and its clause does not."""
        for rule in own:
            for item in claim.scope.excluding:
                alone = msgspec.structs.replace(claim, scope=Scope(items=(item,)))
                if self.judge.faithful(alone, within, [rule]) and self.judge.judge(alone, within).holds:
                    spared = the_item(self.lookup, item)
                    message = f"{self._says(claim, rule, within)} It does not leave out {spared}."
                    return Verdict(
                        "false", "dropped-condition", message, rule, suggestion=self.said(rule, within)
                    )
        return None

    # -- true, but --------------------------------------------------------------------------------------

    def _right_clause(
        self,
        ruling: Ruling,
        faithful: Sequence[Rule],
        own: Sequence[Rule],
        cited: Sequence[Clause],
    ) -> Verdict | None:
        """The verdict that a true claim cites the wrong clause; None if the citation is right."""
        if not cited or own:
            return None
        here = {clause.id for clause in cited}
        agreeing = [i for i in ruling.instances if i.outcome == "agrees"]
        if not faithful and all(self._clauses(i.rules) & here for i in agreeing):
            return None
        saying = list(faithful) or [self.lookup.rules[rule] for i in agreeing for rule in i.rules]
        if not saying:
            return None
        names = [clause_reference(self.lookup, clause.id) for clause in cited]
        right = dict.fromkeys(clause_reference(self.lookup, rule.clause) for rule in saying)
        if not right.keys().isdisjoint(names):  # the clause says it in some of the cases
            others = [r for r in saying if r.clause not in here]
            beside = listing([name for name in right if name not in names][:4])
            message = f"{listing(names)} says this of some cases only; {beside} says it of the others."
            cite = "; ".join(dict.fromkeys(self.books.cite(c) for c in (cited[0].id, others[0].clause)))
            return Verdict("false", "wrong-clause", message, others[0], suggestion=f"Cite {cite}.")
        do, does = ("does" if len(named) == 1 else "do" for named in (names, right))
        message = f"{listing(names)} {do} not say this; {listing(list(right)[:4])} {does}."
        cite = f"Cite {self.books.cite(saying[0].clause)}."
        return Verdict("false", "wrong-clause", message, saying[0], suggestion=cite)

    def _clauses(self, rules: Iterable[str]) -> set[str]:
        return {self.lookup.rules[rule].clause for rule in rules}

    def _conflict(self, ruling: Ruling) -> Verdict:
        rules = self._deciding(ruling.against())
        names = listing(list(dict.fromkeys(clause_reference(self.lookup, r.clause) for r in rules)))
        return Verdict(
            "partly",
            "open-conflict",
            f"The books do not settle this in every case: {names} oppose each other.",
            rules[0],
            tuple(rules),
        )

    def _deciding(self, instances: Iterable[Instance]) -> list[Rule]:
        return [self.lookup.rules[r] for r in dict.fromkeys(rule for i in instances for rule in i.rules)]

    def _excepted(
        self,
        claim: Claim,
        within: Condition,
        ruling: Ruling,
        faithful: Sequence[Rule],
        own: Sequence[Rule],
        cited: Sequence[Clause],
        stated: frozenset[str],
        text: str,
    ) -> Verdict:
        """A claim that a rule makes, and that other rules take back in some cases, or in all."""
        rule = (list(own) or list(faithful))[0]
        mine = {r.id for r in faithful}
        against = [r for r in self._deciding(ruling.against()) if r.id not in mine]
        if rule.scope.alternatives:  # what may not be worn of a choice leaves the duty to the others
            against = [r for r in against if r.modality in ("may", "need_not")]
        exact = any(r.id in claim.rules for r in own)
        if exact and ruling.outcomes <= {"agrees", "required"}:
            return TRUE  # the clause's own words, though another of its sentences asks for more
        if ruling.outcomes == {"agrees", "required"}:  # what may be worn at times must be worn at others
            duties = self._duties(claim, within, cited) if claim.modality == "may" else []
            if duties:
                said = self._says(claim, duties[0], within)
                return Verdict("false", "contradicts", said, duties[0], (), self.said(duties[0], within))
            return self._right_clause(ruling, faithful, own, cited) or TRUE
        wrong = None if ruling.never else self._right_clause(ruling, faithful, own, cited)
        if wrong is not None:
            return wrong
        names = listing(list(dict.fromkeys(clause_reference(self.lookup, r.clause) for r in against))[:4])
        denying = [r for r in against if r.clause in {clause.id for clause in cited}]
        if ruling.never and denying and not own:
            first = denying[0]
            said = self.said(first, within, cite=False)
            message = f"{clause_reference(self.lookup, first.clause)} says otherwise: {said}"
            return Verdict("false", "contradicts", message, first, tuple(against), self.said(first, within))
        if ruling.never:
            go = "go" if " and " in names else "goes"
            by = f": {names} {go} before it" if names else ""
            message = f"{clause_reference(self.lookup, rule.clause)} says so, but never with effect here{by}."
            first = against[0] if against else rule
            return Verdict("false", "overruled", message, first, tuple(against), self.said(first, within))
        here = {clause.id for clause in cited} - {rule.clause}
        left_out = [r for r in against if r.clause in here or r.clause not in stated]
        elsewhere = not left_out
        left_out = left_out or against
        if not left_out:
            return TRUE
        names = listing(list(dict.fromkeys(clause_reference(self.lookup, r.clause) for r in left_out))[:4])
        message = f"This leaves out an exception: {names}."
        if elsewhere:
            message = f"This leaves out an exception that stands elsewhere in the guidance: {names}."
        suggestion = self._with_exceptions(rule, left_out, within)
        if _EXCEPTS.search(text):
            elsewhere = False  # a sentence that names exceptions names them all
        code = "exception-elsewhere" if elsewhere else "dropped-exception"
        return Verdict("partly", code, message, left_out[0], tuple(left_out), suggestion, partial=True)

    def _duties(self, claim: Claim, within: Condition, cited: Sequence[Clause]) -> list[Rule]:
        """The rules of the cited clauses that make a duty of all that a claim permits."""
        here = {clause.id for clause in cited}
        strict = msgspec.structs.replace(claim, modality="must")
        return [r for r in self.judge.faithful(strict, within, self.rules) if r.clause in here]

    def _with_exceptions(self, rule: Rule, others: Sequence[Rule], within: Condition) -> str:
        """The rule's sentence with the cases of the others taken out of it."""
        own = self.settled(rule.condition, within)
        parts = [self.settled(other.condition, all_of([within, own])) for other in others[:3]]
        kept = [part for part in dict.fromkeys(parts) if part != ALWAYS]
        changed = msgspec.structs.replace(rule, condition=all_of([own, *(negate(part) for part in kept)]))
        names = dict.fromkeys(self.books.cite(r.clause) for r in (rule, *others[:3]))
        return f"{say_rule(self.lookup, changed).rstrip('.')} ({'; '.join(names)})."

    # -- not so -----------------------------------------------------------------------------------------

    def _wrong(
        self, claim: Claim, within: Condition, ruling: Ruling, cited: Sequence[Clause], text: str
    ) -> Verdict:
        """A claim that no rule makes in all its cases."""
        here = {clause.id for clause in cited}
        about = [rule for rule in self.rules if self.judge.about_the_same(rule, claim)]
        own = [rule for rule in about if rule.clause in here]
        deciding = self._deciding(ruling.against())
        shown = [r for r in about if self.judge.takes_effect(r, within)] or about  # else it would be an error
        mine = [r for r in own if r in shown]
        near = self.best(
            [r for r in mine if r in deciding] or mine or [r for r in deciding if r in shown] or shown, text
        )
        outcomes = {i.outcome for i in ruling.against()}
        like = [r for r in mine if r.modality == claim.modality]
        like = like or [r for r in shown if r.modality == claim.modality]
        if not claim.sure:
            return self._plain_present(claim, within, near)
        if "agrees" in ruling.outcomes:
            near = self.best(like or mine or deciding, text)
            return self._too_wide(claim, within, cited, own, near, outcomes, text)
        if near is None or not (own or deciding):
            clauses = self._listed(cited)
            message = (
                f"{clauses} does not say this, and no other clause does." if cited else "No clause says this."
            )
            return Verdict("false", "not-said", message, suggestion=self._not_said(cited))
        if outcomes <= {"silent"} and not own and not deciding:
            said = f"{self._listed(cited)} does not say this" if cited else "No clause says this"
            return Verdict(
                "false",
                "not-said",
                f"{said}; about the same thing there is another rule.",
                near,
                suggestion=self.said(near, within),
            )
        told = self._shown(claim, within, near, mine, text)
        return Verdict(
            "false",
            self._code(claim, near),
            self._says(claim, told, within),
            told,
            tuple(deciding),
            self.said(told, within),
        )

    def _shown(self, claim: Claim, within: Condition, near: Rule, own: Sequence[Rule], text: str) -> Rule:
        """The rule that a sentence was made from, if that shows, or else the one that goes against it.

        What a rule of the clause says of all cases of the sentence is shown whatever it was made from.
        """
        if near.modality != claim.modality and self.judge.implies(
            all_of([claim.condition, within]), near.condition
        ):
            return near
        return self.meant(own, text, within) or near

    def _not_said(self, cited: Sequence[Clause]) -> str:
        return (
            "Take the sentence out, or correct the citation."
            if cited
            else "Take it out, cite the clause, or name the delegation of a local rule."
        )

    def _too_wide(
        self,
        claim: Claim,
        within: Condition,
        cited: Sequence[Clause],
        own: Sequence[Rule],
        near: Rule | None,
        outcomes: set[Outcome],
        text: str,
    ) -> Verdict:
        """A claim that holds in some of its cases only."""
        if near is None:
            return Verdict("unsure", message="the books say it in some of its cases only")
        code = self._code(claim, near)
        shown = self._shown(claim, within, near, own, text)
        message = self._says(claim, shown, within)
        if cited and not own:
            return Verdict(
                "false",
                "wrong-clause",
                f"{self._listed(cited)} does not say this. {message}",
                near,
                suggestion=self.said(near, within),
            )
        kind = "false" if cited or outcomes & {"closed", "allowed", "required", "looser"} else "partly"
        if self._but_for_grantor(claim, within, near):
            kind = "partly"
        return Verdict(kind, code, message, shown, suggestion=self.said(shown, within), partial=True)

    def _but_for_grantor(self, claim: Claim, within: Condition, near: Rule) -> bool:
        """Whether a claim only leaves out who has to grant what it says is granted."""
        facts = self.lookup.facts
        grants = {t.fact: t for t in tests(near.condition) if facts[t.fact].family == "authorisation"}
        if not grants:
            return False
        wanted = all_of([grants[t.fact] for t in tests(claim.condition) if t.fact in grants])
        narrower = msgspec.structs.replace(claim, condition=all_of([claim.condition, wanted]))
        return wanted != ALWAYS and self.judge.judge(narrower, within).holds

    def _plain_present(self, claim: Claim, within: Condition, near: Rule | None) -> Verdict:
        """ "The cap is worn" may be a duty or a habit: only the opposite of a rule is called false."""
        turned = {"must": "must_not", "must_not": "must", "may": "must_not", "need_not": "must"}
        opposite = msgspec.structs.replace(claim, modality=turned[claim.modality])
        if near is not None and self.judge.judge(opposite, within).holds:
            return Verdict(
                "false",
                "contradicts",
                self._says(claim, near, within),
                near,
                suggestion=self.said(near, within),
            )
        return Verdict("unsure", message="it is not clear whether it states a duty")

    def _code(self, claim: Claim, rule: Rule) -> str:
        """What sets a claim apart from the rule of the books that is nearest to it."""
        if claim.modality != rule.modality:
            return "contradicts"
        if claim.value.values != rule.value.values:
            kind = self.lookup.aspects[claim.aspect].kind
            return {"measure": "wrong-measure", "count": "wrong-number", "position": "wrong-position"}.get(
                kind, "wrong-value"
            )
        grades = {f.id for f in self.lookup.base.facts if f.family == "grade"}
        ours = [t for t in tests(self.judge.names.plain(claim.condition)) if t.fact in grades]
        theirs = [t for t in tests(self.judge.names.plain(rule.condition)) if t.fact in grades]
        if ours != theirs:
            return "wrong-grade"
        return "dropped-condition"

    def _says(self, claim: Claim, rule: Rule, within: Condition) -> str:
        name = clause_reference(self.lookup, rule.clause)
        said = self.said(rule, within, cite=False)
        if claim.modality == rule.modality and claim.value.values == rule.value.values:
            return f"{name} says this in other cases than the sentence does: {said}"
        return f"{name} says otherwise: {said}"

    def _listed(self, clauses: Sequence[Clause]) -> str:
        return listing([clause_reference(self.lookup, clause.id) for clause in clauses])
