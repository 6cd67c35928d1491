"""Whether an answer is right, withheld, or wrong, by what the clause texts say."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Literal, NamedTuple

from kb import Answer
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.model.values import NO, Choices
from kb.wording.unless import ordinary, usually_in
from tests.reading.sheets import Asked

Mark = Literal["right", "withheld", "wrong"]
# How the writers of the questions call the kinds, and which kinds of question may stand for them.
KINDS = {
    "may": {"may", "must", "how", "how_many", "where", "when"},
    "must": {"must", "may", "list", "how", "where", "how_many"},
    "claim": {"may", "must", "how", "where", "how_many", "who", "list"},
    "how": {"how", "may", "must", "where"},
    "how big": {"how", "where"},
    "how many": {"how_many"},
    "authority": {"who", "may", "when"},
    "other": {"source", "when", "who", "how"},
    "when": {"when", "may", "must"},
    "why": {"why"},
    "list": {"list"},
    "who": {"who"},
    "source": {"source"},
    "where": {"where", "how"},
    "compare": {"compare"},
}
# Yes and no to the same thing: what is permitted need not be done, and is so answered to who asks if it must.
_SAME = {("not_required", "permitted"), ("permitted", "not_required")}
# What the books say of a way ("hooked"), and what is then said of its contrary ("unhooked").
_TURNED = {
    ("required", "prohibited"),
    ("not_required", "permitted"),
    ("permitted", "permitted"),
    ("required", "required"),
}
_NUMBER = re.compile(r"\d+(?:\.\d+)?(?: \d+/\d+|/\d+)?")
_COUNTS = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6"}


class Verdict(NamedTuple):
    """What is held of one answer; `cited` is (clauses cited, of these expected, expected ones found)."""

    mark: Mark
    kind_is_right: bool
    asked: bool
    cited: tuple[int, int, bool] | None
    why: str = ""


def _absent(fact: Fact) -> str | None:
    """The value of a fact that says "nobody has it, grants it or wears it"; None for facts of the situation.

    The writers of the questions took what nobody mentions as absent; an answer may well depend on it.
    """
    if fact.family in ("waiver", "qualification", "appointment", "worn"):
        return "no"
    return fact.values[0].id if fact.family == "authorisation" else None


def _verdict_unless_mentioned(answer: Answer, lookup: Lookup) -> set[str]:
    """The verdicts of the cases in which everything is absent that nobody mentioned."""
    absent = {fact.id: value for fact in lookup.base.facts if (value := _absent(fact)) is not None}
    return {
        case.verdict
        for case in answer.cases
        if all(
            (absent[name] in values.members) != values.complement
            for name, values in case.when
            if name in absent and isinstance(values, Choices)
        )
    }


def _leading(answer: Answer, lookup: Lookup) -> str | None:
    """The verdict that the headline leads with: "Yes. ..., unless ..." says what else holds.

    Whoever asks whether something must be and is told that no clause requires it, and when one does, has
    the answer: it need not be.
    """
    if answer.verdict in ("silent", "conditional") and answer.headline.startswith("No clause requires "):
        return "not_required"
    if answer.headline.startswith("No. ") and "; otherwise no clause allows it here." in answer.headline:
        return "prohibited"  # forbidden in some of the cases and allowed in none, and that is what it says
    query = answer.reading.query
    why = query is not None and query.kind == "why" and ", unless " in answer.headline
    firm = why or answer.headline.startswith(("Yes", "No", "Right", "Wrong"))
    if answer.verdict == "conditional" and firm:
        usually = usually_in(lookup, query) if query is not None else {}
        usual = ordinary(lookup, [(case.when, case.verdict) for case in answer.cases], usually)
        led = _IN_RIG.match(answer.headline)
        said = next(
            (v for modal, v in _MODALS.items() if led and f" {modal} " in led["said"]), answer.verdict
        )
        return answer.cases[usual].verdict if usual is not None else said
    return answer.verdict


# "Yes, in dive dress. The hood must be worn; in any other rig ...": what holds in the rig that goes with it.
_IN_RIG = re.compile(r"(?:Yes|No), in [^.:;]+[.:] (?P<said>[^;]*); in any other rig ")
_MODALS = {
    "must not be": "prohibited",
    "must be": "required",
    "need not be": "not_required",
    "may be": "permitted",
}


def _is_in_place_of(answer: Answer) -> bool:
    """Whether it was asked if a thing may be worn instead of another: the one that is left may be a must."""
    query = answer.reading.query
    facts = query.case.facts if query is not None else ()
    return any(fact.startswith("worn:") and values == NO for fact, values in facts)


def _clauses(answer: Answer) -> set[str]:
    shown = answer.speaking if answer.verdict == "silent" else answer.citations
    return {f"{citation.edition} {citation.number}" for citation in shown}


def _said(answer: Answer) -> str:
    parts = [
        answer.headline,
        *(case.label for case in answer.cases),
        *(value.label for case in answer.cases for value in case.values),
        *(value.label for value in answer.values),
        *(entry.label for entry in answer.entries),
        *(value.label for entry in answer.entries for value in entry.values),
        *(citation.text for citation in answer.citations),
    ]
    return " ".join(" ".join(parts).casefold().split())


def _numbers(text: str) -> set[str]:
    words = (_COUNTS.get(word, word) for word in text.casefold().split())
    return set(_NUMBER.findall(" ".join(words)))


def _values_told(answer: Answer, wanted: Sequence[str]) -> bool:
    """Every number of the expected values is told; of words, half are (they may be put otherwise)."""
    said = _said(answer)
    told = _numbers(said)
    for value in wanted:
        numbers = _numbers(str(value))
        if numbers and not numbers & told:
            return False
        words = [word for word in re.findall(r"[a-z]{4,}", str(value).casefold()) if word not in _COUNTS]
        if words and not numbers and sum(word[:5] in said for word in words) * 2 < len(words):
            return False
    return True


def _fits(answer: Answer, asked: Asked, lookup: Lookup) -> str:
    """Empty if the answer is what the clauses say, else what is not."""
    expect = asked.expect
    verdict, clauses = expect.get("verdict"), set(expect.get("clauses", ()))
    if verdict == "conditional":
        return "" if answer.verdict == "conditional" else f"verdict {answer.verdict}, not conditional"
    got = _leading(answer, lookup) if verdict != "silent" else answer.verdict
    if got == "conditional":
        left = _verdict_unless_mentioned(answer, lookup)
        got = next(iter(left)) if len(left) == 1 else got
    same = (got, verdict) in _SAME and asked.kind in ("must", "claim")
    query = answer.reading.query
    if query is not None and query.polarity == "not" and lookup.aspects[query.aspect].within is not None:
        same = (got, verdict) in _TURNED
        if not same and verdict is not None:
            return f"verdict {answer.verdict} of the contrary, not {verdict}"
    # "24 mm above the peak", "with a grip sole": within what must be
    judged = query is not None and (
        query.value is not None or lookup.aspects[query.aspect].within is not None
    )
    if asked.kind == "may" and (answer.verdict == "conditional" or _is_in_place_of(answer) or judged):
        same = same or {got, verdict} == {"required", "permitted"}  # of two things either
    if query is not None and query.polarity == "not" and (got, verdict) == ("required", "prohibited"):
        same = True  # "the tunic without the shirt" is prohibited: the shirt must be worn
    if verdict == "silent" and got is None:
        return f"{len(answer.entries)} things listed, not silent"
    if verdict is not None and got not in (None, verdict) and not same:
        return f"verdict {answer.verdict}, not {verdict}"
    cited = _clauses(answer)
    if verdict == "conflict" and not clauses <= cited:
        return f"cites {sorted(cited)}, not all of {sorted(clauses)}"
    if verdict != "silent" and clauses and not clauses & cited:
        return f"cites {sorted(cited)}, none of {sorted(clauses)}"
    if verdict is None and not _values_told(answer, expect.get("values", ())):
        return f"does not tell {expect.get('values')}"
    return ""


_MARKS: tuple[Mark, ...] = ("right", "withheld", "wrong")


def judge_line(answers: Sequence[Answer], asked: Asked, lookup: Lookup) -> Verdict:
    """What is held of the answers to a line: of each, where it asks several things, the least of them.

    A line of which some part went unanswered, without a word of it, is wrong.
    """
    each, ways = asked.expect.get("each"), asked.expect.get("any_of", ())
    if any("each" in way for way in ways):  # asking one thing or two, as one takes it
        held = [judge_line(answers, asked._replace(expect=way), lookup) for way in ways]
        return min(held, key=lambda one: _MARKS.index(one.mark))
    if each is None:
        return judge(_least_leave(answers), asked, lookup)
    if len(answers) != len(each):
        listed = any(answer.reading.query and answer.reading.query.kind == "list" for answer in answers)
        told = all(answer.outcome == "answer" for answer in answers) and not listed
        said = f"{len(answers)} answers to {len(each)} questions"
        return Verdict("wrong" if told and len(answers) < len(each) else "withheld", False, False, None, said)
    held = [
        judge(answer, asked._replace(expect=expect), lookup)
        for answer, expect in zip(answers, each, strict=True)
    ]
    return max(held, key=lambda one: _MARKS.index(one.mark))


_LEAVE = ("conflict", "prohibited", None, "silent", "conditional", "not_required", "permitted", "required")


def _least_leave(answers: Sequence[Answer]) -> Answer:
    """The last answer; of a question about several things the one that gives the least leave."""
    same = [answer for answer in answers if answer.reading.question == answers[-1].reading.question]
    return min(same, key=lambda answer: _LEAVE.index(answer.verdict)) if len(same) > 1 else answers[-1]


def judge(answer: Answer, asked: Asked, lookup: Lookup, may_ask: bool = False) -> Verdict:
    """Right, withheld or wrong. `may_ask`: asking back is as good as a conditional answer (dialogues)."""
    expect = asked.expect
    if expect.get("outcome") == "silent":
        answered = {**expect, "outcome": "answer", "verdict": "silent"}
        return judge(answer, asked._replace(expect=answered), lookup, may_ask)
    if "each" in expect:
        return judge(answer, asked._replace(expect=expect["each"][-1]), lookup, may_ask)
    if "any_of" in expect:
        held = [judge(answer, asked._replace(expect=one), lookup, may_ask) for one in expect["any_of"]]
        return min(held, key=lambda one: _MARKS.index(one.mark))
    kind = bool(answer.reading.query and answer.reading.query.kind in KINDS[asked.kind])
    clauses = set(expect.get("clauses", ()))
    cited = None
    if expect["outcome"] == "answer" and answer.outcome == "answer" and clauses:
        found = _clauses(answer)
        cited = (len(found), len(found & clauses), bool(found & clauses))
    asks = answer.outcome == "ask"
    if expect["outcome"] == "abstain":
        quiet = answer.outcome in ("abstain", "ask")
        silent = answer.outcome == "answer" and answer.verdict == "silent"
        mark: Mark = "right" if quiet else "withheld" if silent else "wrong"
        return Verdict(mark, kind, asks, cited, "" if quiet else f"answers ({answer.verdict})")
    if answer.outcome != "answer":
        wanted = expect["outcome"] == "ask" or (
            asks and expect.get("verdict") == "conditional" and (may_ask or _asks_for(answer, asked))
        )
        return Verdict("right" if wanted and asks else "withheld", kind, asks, cited, answer.outcome)
    if expect["outcome"] == "ask":
        open_still = answer.verdict in ("conditional", "silent")
        return Verdict(
            "right" if answer.verdict == "conditional" else "withheld" if open_still else "wrong",
            kind,
            asks,
            cited,
            f"answers ({answer.verdict})",
        )
    wrong = _fits(answer, asked, lookup)
    hedged = answer.verdict == "conditional" and expect.get("verdict") in {
        case.verdict for case in answer.cases
    }
    shown = answer.verdict is None and not answer.entries  # a clause, for what no clause says
    hedged = hedged or (shown and expect.get("verdict") == "silent")
    if wrong and (answer.verdict == "silent" or hedged):
        return Verdict("withheld", kind, asks, cited, wrong)
    return Verdict("wrong" if wrong else "right", kind, asks, cited, wrong)


def _asks_for(answer: Answer, asked: Asked) -> bool:
    return bool(answer.ask and answer.ask.fact in asked.expect.get("depends", ()))
