"""Checks a saved answer against the rule books, without the reasoner that made it.

Each claim of the answer is held against the books and against the plain meaning of the rules. The first claim
that fails is the reason for refusing.
"""

from __future__ import annotations

import datetime
from itertools import combinations
from typing import Any

from kb.model.conditions import AllOf, Condition, Test, evaluate
from kb.model.lookup import Lookup
from kb.model.values import ValueSet, intersect, is_empty, is_subset, subtract, unite
from kb.plain import NONE, VERDICTS, Fate, Known, Question, Range, Truth, has_whole_number, is_sound, opposed
from kb.plain import facts_from_json as facts_of
from kb.plain import values_from_json as values_of
from kb.plain.citing import citing
from kb.plain.comparing import Sides

UNFIT = (AttributeError, IndexError, KeyError, RecursionError, TypeError, ValueError, ZeroDivisionError)


class Refused(Exception):  # noqa: N818  not a mistake of the program
    """A claim that does not hold: `where` in the answer, and `what` is wrong with it."""


def hold(claim: bool, where: str, what: str) -> None:
    if not claim:
        raise Refused(where, what)


class _Claims:
    """The claims of one answer, held one after the other against the meaning of the rules."""

    def __init__(self, data: Any, lookup: Lookup) -> None:
        self.data, self.lookup, self.day = data, lookup, datetime.date.fromisoformat(data["as_of"])
        self.question = Question(data["reading"], lookup, self.day)
        self.meaning = self.question.meaning

    def check(self) -> None:
        sound = is_sound(self.data["reading"], self.lookup)
        hold(sound, "reading", "it names what the books do not have, or something that is no question")
        cases, proofs = self.data["cases"], self.data["derivation"]
        hold(len(cases) == len(proofs), "derivation", "every row of the table needs its proof")
        parts: dict[tuple[str, str], list[int]] = {}
        for n, proof in enumerate(proofs):
            parts.setdefault((proof["item"], proof["aspect"]), []).append(n)
        for (item, aspect), rows in parts.items():
            self.part(item, aspect, rows)
        self.whole(parts)
        self.changes(next(iter(parts), ("", "")))
        for claim in citing(self.data, self.lookup, self.question.is_duty):
            hold(*claim)

    def part(self, item: str, aspect: str, rows: list[int]) -> None:
        """The rows for one item and aspect: disjoint, complete, and right in every case."""
        known = self.question.known(item, aspect)
        whens = [facts_of(self.data["cases"][n]["when"]) for n in rows]
        regions = [AllOf(tuple(Test(fact, values) for fact, values in when.items())) for when in whens]
        found = Range(self.meaning, item, aspect, known, regions)
        sets, left, inside = found.sets, found.sets.possible, dict[int, int]()
        for n, region in zip(rows, regions, strict=True):
            inside[n] = sets.both(sets.possible, sets.of(region))
            hold(inside[n] != NONE, f"cases[{n}].when", "no possible case is in this row")
            hold(sets.but(inside[n], left) == NONE, f"cases[{n}].when", "the rows of the table overlap")
            left = sets.but(left, inside[n])
        hold(left == NONE, "cases", "the rows of the table leave a case out")
        for n in rows:
            self.row(n, found, inside[n])
        for n, when in zip(rows, whens, strict=True):
            row, proof = self.data["cases"][n], self.data["derivation"][n]
            self.opened(f"cases[{n}].values", row, proof)
            self.proof(f"derivation[{n}]", proof, found.watched, known, when)

    def row(self, n: int, found: Range, inside: int) -> None:
        """The verdict and the rules of a row, in every case of it; a folded row has cases that differ."""
        where, row = f"cases[{n}]", self.data["cases"][n]
        kinds, rules = self.question.kinds(found, inside)
        wrong = [verdict for verdict, _ in kinds if verdict != row["verdict"]]
        if row["verdict"] == "conditional":
            hold(len(kinds) > 1, f"{where}.verdict", "the rules say the same in every case of this row")
        else:
            hold(not wrong, f"{where}.verdict", f"the rules say {(*wrong, '')[0]}, in a case of this row")
            hold(len(kinds) == 1, f"{where}.values", "not the same in every case of this row")
        hold(set(row["rules"]) == rules, f"{where}.rules", "these are not the rules that decide")

    def proof(self, where: str, proof: Any, watched: dict[str, Condition], known: Known, when: Known) -> None:
        """The proof of one case of a row: the case, each rule, each defeat, each value."""
        meaning, item, aspect = self.meaning, proof["item"], proof["aspect"]
        row = {**known, **{fact: intersect(known.get(fact, values), values) for fact, values in when.items()}}
        case = {**row, **facts_of(proof["when"])}
        inside = all(is_subset(case[f], row.get(f, self.lookup.domain(f))) for f in proof["when"])
        hold(inside, f"{where}.when", "the case is not one of its row")
        decided = meaning.outcomes(tuple(watched.values()), case)
        hold(len(decided) == 1, f"{where}.when", "the case is impossible, or does not settle every condition")
        truth = dict(zip(watched, next(iter(decided)), strict=True))
        fates, live = meaning.fates(item, aspect, truth), meaning.live(item, aspect, truth)
        alive = {rule for fate in fates for rule in fate.closed_by | fate.supported_by}
        hold(proof["verdict"] == meaning.verdict(aspect, fates), f"{where}.verdict", "it does not follow")
        listed = [step["rule"] for step in proof["rules"]]
        full = {*listed} == {key for key in watched if "#" not in key} and len(listed) == len({*listed})
        hold(full, f"{where}.rules", "a rule is missing, strange or there twice")
        for n, step in enumerate(proof["rules"]):
            self.step(f"{where}.rules[{n}]", step, watched, case, truth, alive)
        pieces = meaning.pieces(item, aspect)
        wins = {(*meaning.win(a, b), a.key, b.key) for a, b in combinations(live, 2) if opposed(a, b, pieces)}
        names = {key: key.partition("#")[0] for win in wins for key in win[2:]}
        expected = {(names[w], names[b if w == a else a], line) for w, line, a, b in wins if w}
        claimed = [(d["winner"], d["loser"], d["principle"]) for d in proof["defeats"]]
        for n, one in enumerate(claimed):
            hold(one in expected, f"{where}.defeats[{n}]", f"{one[0]} does not beat {one[1]} by {one[2]}")
        hold(len(claimed) == len(expected), f"{where}.defeats", "a defeat is left out")
        self.values(f"{where}.values", proof["values"], fates, self.lookup.aspects[aspect].kind == "count")

    def step(
        self, where: str, step: Any, watched: dict[str, Condition], case: Known, truth: Truth, alive: set[str]
    ) -> None:
        """What is said of one rule: its clause, whether it applies, and the facts that decide so."""
        rule = self.lookup.rules[step["rule"]]
        applies = self.meaning.applies(rule.id, truth)
        by = [d.id for d in self.meaning.disablers(rule.id) if self.meaning.applies(d.id, truth)]
        status = "applies" if applies else "disabled" if truth[rule.id] and by else "does_not_apply"
        written = {
            "modality": rule.modality,
            "clause": rule.clause,
            "text": self.lookup.clauses[rule.clause].text,
            "authority": rule.authority,
            "source": {"file": rule.at.file, "line": rule.at.line},
            "status": status,
            "alive": rule.id in alive,
            "disabled_by": by,
        }
        for key, value in written.items():
            hold(step[key] == value, f"{where}.{key}", f"for {rule.id} it should be {value}")
        facts = facts_of(step["facts"])
        hold(all(case.get(f) == v for f, v in facts.items()), f"{where}.facts", "not the facts of the case")
        settled = evaluate(watched[rule.id], lambda f: facts.get(f, self.lookup.domain(f))) is truth[rule.id]
        hold(settled, f"{where}.facts", "these facts do not decide whether the rule applies")

    def values(self, where: str, claimed: Any, fates: list[Fate], count: bool) -> None:
        """The fates of the values: each as the rules leave it, none twice, none left out."""
        whole: ValueSet = fates[0].values
        for fate in fates:
            whole = unite(whole, fate.values)
        for n, one in enumerate(claimed):
            values = values_of(one["values"])
            fitting = [f for f in fates if not is_empty(values) and is_subset(values, f.values)]
            hold(bool(fitting), f"{where}[{n}].values", "the rules tell some of these values apart")
            said = (one["status"], {*one["closed_by"]}, {*one["supported_by"]})
            hold(said == fitting[0][1:], f"{where}[{n}]", f"the rules leave these values {fitting[0].status}")
            hold(is_subset(values, whole), f"{where}[{n}].values", "some of them are given twice")
            whole = subtract(whole, values)
        hold(is_empty(whole) or (count and not has_whole_number(whole)), where, "values are left out")

    def opened(self, where: str, row: Any, proof: Any) -> None:
        """The values that a row says are open are those that its proof leaves open."""
        closed = any(one["status"] == "closed" for one in proof["values"])
        statuses = ("supported", "unaddressed") if closed else ("supported",)
        left = [values_of(o["values"]) for o in proof["values"] if o["status"] in statuses]
        kind = self.lookup.aspects[proof["aspect"]].kind
        for n, one in enumerate(row["values"]):
            values = values_of(one["values"])
            place = (one["item"], one["aspect"]) == (proof["item"], proof["aspect"])
            single = kind in ("measure", "count") or len(left) == 1
            forced = proof["verdict"] == "required" if kind == "act" else closed and single
            hold(place and one["required"] == forced, f"{where}[{n}]", "not what the proof leaves open")
            rest = values
            for piece in left:
                rest = subtract(rest, piece)
            hold(kind == "act" or is_empty(rest), f"{where}[{n}].values", "not all of it is left open")

    def whole(self, parts: dict[tuple[str, str], list[int]]) -> None:
        """The verdict of the answer follows from its rows, and no item or aspect that counts is left out."""
        rows = self.data["cases"]
        found = {p: rows[r[0]]["verdict"] if len(r) == 1 else "conditional" for p, r in parts.items()}
        plain = [value for r in parts.values() if len(r) == 1 for value in rows[r[0]]["values"]]
        hold(self.data["values"] == plain, "values", "not the values of the rows")
        verdicts, verdict = set(found.values()), self.data["verdict"]
        if self.data["outcome"] != "answer" or self.question.kind is None:
            filled = [k for k in ("headline", "entries", "citations", "cautions", "notes") if self.data[k]]
            blank = not filled and not parts and verdict is None and self.question.kind is None
            raised = [key for key in ("ask", "abstain") if self.data[key] is not None]
            hold(blank and raised == [self.data["outcome"]], "outcome", "nothing is answered here")
        elif self.question.kind in ("list", "source"):
            hold(not parts and verdict in (None, "silent"), "verdict", "nothing here proves it")
            if self.question.kind == "list":
                claimed = {(e["item"], e["verdict"], frozenset(e["rules"])) for e in self.data["entries"]}
                wrong = sorted({one[0] for one in claimed ^ self.question.entries()})
                hold(not wrong, "entries", f"not what the rules say of {', '.join(wrong)}")
        elif self.question.kind == "compare":
            hold(not parts and verdict in (None, "silent"), "verdict", "nothing here proves it")
            self.comparison()
        elif self.question.acts:
            told = {"conditional"} if self.question.kind == "who" and verdict is None else {verdict}
            hold(len(found) == 1 and verdicts == told, "verdict", "it does not follow from the rows")
            for item in {*self.question.items} - {item for item, _ in found}:
                others = self.question.verdicts(item, self.question.aspect)
                other = others.pop() if len(others) == 1 else "conditional"
                hold(VERDICTS.index(other) >= VERDICTS.index(verdict), "verdict", f"{item} is {other}")
        else:
            for place in {(self.question.items[0], aspect) for aspect in self.question.aspects} - {*found}:
                silent = not self.meaning.rules_for(*place) or self.question.is_silent(*place)
                hold(silent, "cases", f"{place[1]} is left out")
            leading = [one for one in ("conflict", "conditional") if one in verdicts]
            expected = leading[0] if leading else verdicts.pop() if len(verdicts) == 1 else "required"
            hold(verdict == (expected if found else "silent"), "verdict", "it does not follow from the rows")

    def comparison(self) -> None:
        """What each side is said to say is so, what differs is all listed, and nothing else is."""
        differences, sides = self.data["differences"], Sides(self.data["reading"], self.lookup, self.day)
        for claim in sides.claims(differences):
            hold(*claim)
        shown = [n for n, one in enumerate(differences) if sides.has_table(one)]
        for n, m in [(n, m) for n in shown for m in (0, 1)]:
            side, aspect, where = differences[n]["sides"][m], differences[n]["aspect"], f"differences[{n}]"
            place, proofs = (side["item"], aspect), side["derivation"]
            same = all((proof["item"], proof["aspect"]) == place for proof in proofs)
            hold(same and len(side["cases"]) == len(proofs), where, "these are not its proofs")
            reading, day = sides.reading_of(m, *place), sides.cases[m][0].isoformat()
            claims = _Claims({**self.data, **side, "reading": reading, "as_of": day}, self.lookup)
            try:
                claims.part(*place, list(range(len(proofs))))
            except Refused as refused:
                raise Refused(f"{where}.sides[{m}].{refused.args[0]}", refused.args[1]) from None

    def changes(self, place: tuple[str, str]) -> None:
        """Each change of facts that is named gives the verdict that is named, in every case."""
        for n, change in enumerate(self.data["changes"]):
            facts = {**self.question.known(*place), **facts_of(change["facts"])}
            found = self.question.outcomes(*place, facts)
            said = ({change["verdict"]}, {*change["rules"]})
            hold(found == said, f"changes[{n}]", f"it gives {' or '.join(sorted(found[0]))}, by {found[1]}")


def check(data: Any, lookup: Lookup, digest: str) -> tuple[str, str] | None:
    """Where and why a saved answer (its JSON, decoded) is refused; None if every claim in it holds."""
    try:
        hold("format" in data and data["format"] == 1, "format", "only answers in format 1 are known")
        hold(isinstance(data["question"], str), "question", "it is no text")
        hold(data["kb"] == digest, "kb", "the answer is from other rule books or another state of these")
        _Claims(data, lookup).check()
    except Refused as refused:
        return refused.args
    except UNFIT as error:
        odd = f"{error} is missing or unknown" if isinstance(error, KeyError) else "its shape is another"
        return "the answer", f"it is not an answer in format 1: {odd}"
    return None
