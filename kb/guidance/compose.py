"""From a plan and the rule books to a document: what holds, where it stands, and how it is cited."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from kb.answer.common import DEFERENCE
from kb.audit.auditing import change_days
from kb.audit.law import Law, covering_rules
from kb.errors import InvalidDataError, Problem
from kb.guidance.arranging import Arranged, arrange
from kb.guidance.citing import Citing
from kb.guidance.closing import Matter, open_matters, open_sentences, silent_topics
from kb.guidance.document import Document, Paragraph, Section, Sentence, Table
from kb.guidance.flowing import Said, flowing
from kb.guidance.merging import merge_days
from kb.guidance.plan import Plan
from kb.guidance.provisions import Provision
from kb.guidance.reading import Opened
from kb.guidance.selecting import Selection
from kb.guidance.setting import Setting
from kb.guidance.tables import grade_table
from kb.guidance.zones import ORDER
from kb.model.conditions import Test, all_of
from kb.model.lookup import Lookup
from kb.model.records import Rule
from kb.wording import (
    listing,
    rule_reference,
    say_audience,
    say_facts,
    say_protection,
    say_rule,
    sentence,
    the_item,
)

OPEN = "What the rule books leave open"


def spell_days(opened: Opened) -> tuple[datetime.date, ...]:
    """The first days of the spells without a change of the law in the time of the guidance."""
    plan = opened.plan
    return tuple(day for day in change_days(opened.lookup.base, plan.effective) if day <= plan.expires)


def selections(opened: Opened) -> tuple[tuple[datetime.date, ...], list[Selection]]:
    """The first days of the spells, and what the plan wants in each."""
    plan, lookup = opened.plan, opened.lookup
    days = spell_days(opened)
    index = covering_rules(lookup)
    settings = [Setting(Law(lookup, day, index), plan.facts) for day in days]
    if not settings[0].law.engine.check_case(settings[0].known):
        stated = say_facts(lookup, plan.facts)
        message = f"What the plan states cannot hold together: {stated}."
        raise InvalidDataError(
            (Problem(plan.at, "facts-exclude", message, "Take one of the lines back, or narrow it."),)
        )
    return days, [Selection(plan, setting) for setting in settings]


def compose(opened: Opened, digest: str) -> Document:
    """The draft of a plan that oversteps nothing; `digest` is that of the rule books."""
    plan, lookup = opened.plan, opened.lookup
    days, chosen = selections(opened)
    spells = [selection.chosen() for selection in chosen]
    provisions = merge_days([s.provisions for s in chosen], days, spells)
    residual = chosen[0].residual()
    matters = open_matters(chosen[0])
    told = [clause for matter in matters for clause in matter.clauses]
    told += [lookup.rules[s.rule.repairs].clause for s in provisions if s.rule.repairs]
    citing = Citing(lookup, plan.edition, [*provisions, *residual], told)
    sections = [
        _section(lookup, number, part, citing)
        for number, part in enumerate(arrange(lookup, plan, [*provisions, *residual]), 1)
    ]
    silent = silent_topics(chosen[0], provisions)
    if matters or silent:
        sections.append(_closing(len(sections) + 1, lookup, matters, silent, citing))
    return Document(
        subject=plan.subject,
        references=citing.references(),
        purpose=plan.purpose,
        applicability=_applicability(lookup, plan),
        sections=tuple(sections),
        effective=plan.effective,
        expires=plan.expires,
        review=plan.review,
        digest=digest,
        authority=lookup.authorities[plan.authority].label,
    )


def _applicability(lookup: Lookup, plan: Plan) -> str:
    """ "This guidance applies to K1 to K5 of the boat branch in boat or storm rig when it is winter."."""
    tests = all_of(Test(fact, values) for fact, values in plan.facts)
    return sentence(f"this guidance applies to {say_audience(lookup, tests)}")


# -- paragraphs -----------------------------------------------------------------------------------------


def _section(lookup: Lookup, number: int, part: Arranged, citing: Citing) -> Section:
    paragraphs: list[Paragraph] = []
    for provisions in part.paragraphs:
        name = f"{number}.{len(paragraphs) + 1}"
        paragraphs.append(_paragraph(lookup, name, provisions, citing))
    caution = _caution(lookup, [s.rule for provisions in part.paragraphs for s in provisions])
    if caution:
        paragraphs.append(Paragraph(f"{number}.{len(paragraphs) + 1}", caution))
    return Section(str(number), part.heading, tuple(paragraphs))


def _paragraph(lookup: Lookup, number: str, provisions: Sequence[Provision], citing: Citing) -> Paragraph:
    found = grade_table(lookup, provisions, citing)
    table: Table | None = None
    said: list[Said] = []
    in_table: list[Provision] = []
    if found is not None:
        table, in_table = found
    for provision in provisions:
        if provision not in in_table:
            said += _sentences(lookup, provision, citing)
    if table is not None:
        said.append(Said(Sentence(table.caption, kind="plain")))
    return Paragraph(number, flowing(lookup, said), table)


def _sentences(lookup: Lookup, provision: Provision, citing: Citing) -> list[Said]:
    """The sentence of a provision, and what its rule remarks."""
    rule = provision.rule
    citation = citing.citation((*provision.rules, *provision.rivals))
    text = say_rule(lookup, rule, provision.period).removesuffix(".")
    if rule.repairs:
        named = citing.clause(lookup.rules[rule.repairs].clause)
        text = text.replace(rule_reference(lookup, rule.repairs), named)
    stated = Sentence(text, citation, rules=provision.rules, rivals=provision.rivals)
    own = citing.citation(provision.rules)
    found = [Said(stated, provision)]
    if rule.note:
        found.append(Said(Sentence(f"Note: {_closed(rule.note)}", own, "note")))
    if rule.caution:
        found.append(Said(Sentence(f"Caution: {_closed(rule.caution)}", own, "caution")))
    return found


def _closed(text: str) -> str:
    return " ".join(text.split()).rstrip(".")


def _caution(lookup: Lookup, rules: Sequence[Rule]) -> tuple[Sentence, ...]:
    """What protects among the things of a section, and who decides where it is needed."""
    protecting: dict[str, tuple[str, ...]] = {}
    for item in dict.fromkeys(item for rule in rules for item in rule.scope.items):
        protects = dict.fromkeys(p for kind in lookup.broader(item) for p in lookup.items[kind].protects)
        if protects:
            protecting[item] = tuple(protects)
    if not protecting:
        return ()
    text = f"Caution: {say_protection(lookup, protecting)}"
    return (Sentence(text, kind="caution"), Sentence(DEFERENCE.removesuffix("."), kind="caution"))


def _closing(
    number: int, lookup: Lookup, matters: Sequence[Matter], silent: Sequence[str], citing: Citing
) -> Section:
    """Conflicts and silences, which are named and not smoothed over."""
    paragraphs = [
        Paragraph(f"{number}.{i}", open_sentences(lookup, matter, citing))
        for i, matter in enumerate(matters, 1)
    ]
    if silent:
        names = listing([the_item(lookup, item) for item in silent], "or")
        text = f"The rule books say nothing about {names} for those to whom this guidance applies"
        paragraphs.append(Paragraph(f"{number}.{len(matters) + 1}", (Sentence(text, kind="plain"),)))
    return Section(str(number), OPEN, tuple(paragraphs))


__all__ = ["ORDER", "compose", "selections"]
