"""Rules as written to rules of the model: the short forms become one rule for each item and aspect."""

from __future__ import annotations

import datetime

import msgspec

from kb.model.conditions import Condition, Test, all_of, any_of, negate
from kb.model.records import Clause, Modality, Rule, Scope
from kb.model.values import Choices, choices
from kb.sources.conditions import read_condition, read_conditions, read_fact_values
from kb.sources.drafts import Context, RuleDraft
from kb.sources.fields import Fields, is_id
from kb.sources.heads import Head, Subject, is_head, read_head, read_subjects
from kb.sources.report import Report, quoted
from kb.sources.tree import Mapping
from kb.sources.values import ACT, AspectValue, read_aspect_values
from kb.text import slug

_KEYS = (
    "id", "grades", "rig", "branch", "when", "unless", "otherwise", "except items", "this item only",
    "each kind", "exception to", "disables", "repairs", "under", "non-derogable", "residual", "from", "until",
    "note", "caution", "tolerance",
)  # fmt: skip
_EXTRA = {
    "only": ("of", "grants"),
    "not together": (),
    "phase out": ("on",),
    "phase in": ("on",),
}
_MODALS = ("must", "must not", "may", "need not")  # so that a slip in one is told as such
_OTHERWISE: dict[str, Modality] = {"may": "may", "need not": "need_not", "must not": "must_not"}


class _Parts(msgspec.Struct, frozen=True):
    """What all rules made from one entry share."""

    fields: Fields
    head: Head
    clause: Clause
    authority: str
    name: str
    non_derogable: bool
    condition: Condition
    valid_from: datetime.date
    valid_until: datetime.date | None


def read_rules(
    nodes: tuple[Mapping, ...], clause: Clause, authority: str, non_derogable: bool, context: Context
) -> list[RuleDraft]:
    """The rules of one clause, with ids "<edition>/<name>"."""
    drafts: list[RuleDraft] = []
    for number, node in enumerate(nodes, 1):
        drafts += _read_rule(node, number, clause, authority, non_derogable, context)
    return drafts


def _read_rule(
    node: Mapping, number: int, clause: Clause, authority: str, non_derogable: bool, context: Context
) -> list[RuleDraft]:
    report = context.report
    head = read_head(node, context)
    aspects = {a.id: a for a in context.vocabulary.aspects.values() if a.kind != "act"}
    extra = _EXTRA.get(head.key.text, ()) if head else tuple(key for keys in _EXTRA.values() for key in keys)
    heads = tuple(entry.key.text for entry in node.entries if is_head(entry.key.text))
    known = dict.fromkeys((*heads, *_MODALS, *_KEYS, *extra, *aspects))
    fields = Fields(node, tuple(known), "a rule", report)
    condition, grades = _condition(fields, context)
    if head is None:
        return []
    subjects = read_subjects(head, fields, context)
    items = [name for subject in subjects for name in subject.scope.items]
    values = _aspect_values(fields, head, items, context)
    begin, end = _validity(fields, head, clause)
    parts = _Parts(
        fields=fields,
        head=head,
        clause=clause,
        authority=authority,
        name=_rule_name(fields, clause, number),
        non_derogable=non_derogable or fields.flag("non-derogable"),
        condition=all_of([*grades, condition]),
        valid_from=begin,
        valid_until=end,
    )
    _check_residual(parts, report)
    drafts = [draft for subject in subjects for draft in _make(parts, subject, values)]
    return drafts + _otherwise(parts, grades, condition, subjects, values, context)


def _rule_name(fields: Fields, clause: Clause, number: int) -> str:
    written = fields.identifier() if fields.has("id") else None
    if written is not None and is_id(written.text):
        return written.text
    return f"{clause.number}-{number}"


def _validity(fields: Fields, head: Head, clause: Clause) -> tuple[datetime.date, datetime.date | None]:
    """Validity before it is cut to the clause: the rule's own dates, or those of its clause."""
    if head.key.text in ("phase out", "phase in"):
        begin, end = fields.span("on", "until")
    else:
        begin, end = fields.span("from", "until")
    return begin or clause.valid_from, end


def _condition(fields: Fields, context: Context) -> tuple[Condition, list[Test]]:
    """The condition without the grades, and the test of the grades (a list of none or one)."""
    vocabulary, report = context.vocabulary, context.report
    parts: list[Condition] = []
    grades: list[Test] = []
    for key, fact_id in (("grades", "grade"), ("rig", "rig"), ("branch", "branch")):
        texts = fields.scalars(key)
        fact = vocabulary.facts.get(fact_id)
        if not texts:
            continue
        if fact is None:
            section = {"grades": "ladders", "rig": "rigs", "branch": "branches"}[key]
            message = f"The rule names {quoted(key)}, but there are no {section}."
            report.error(fields.lines[key].key.at, "unknown-fact", message, f"Declare them under {section}.")
            continue
        values = read_fact_values(fact, texts, vocabulary, report)
        if values is not None:
            test = Test(fact_id, values)
            if key == "grades":
                grades.append(test)
            else:
                parts.append(test)
    when, unless = fields.node_of("when"), fields.node_of("unless")
    if when is not None:
        parts.append(read_condition(when, vocabulary, report))
    if unless is not None:
        parts.append(negate(any_of(read_conditions(unless, vocabulary, report))))
    return all_of(parts), grades


def _aspect_values(fields: Fields, head: Head, items: list[str], context: Context) -> list[AspectValue]:
    """What the rule says of each aspect; the act of its head if it names no aspect."""
    found: list[AspectValue] = []
    named = False
    tolerance = fields.scalar("tolerance")
    for key, entry in fields.lines.items():
        aspect = context.vocabulary.aspects.get(key)
        if aspect is None or aspect.kind == "act" or is_head(key):
            continue
        named = True
        if head.modality is None or (head.act != "wear"):
            act = quoted(head.key.text)
            message = f"{act} speaks about an act, so {quoted(key)} cannot stand in the same rule."
            remedy = f"Write a rule of its own, such as must: item with {key}: ... below it."
            context.report.error(entry.key.at, "aspect-not-wanted", message, remedy)
            continue
        if isinstance(head.value, Mapping):
            message = (
                f"A choice of items is a duty to wear one of them, so {quoted(key)} cannot stand beside it."
            )
            remedy = "Write a rule of its own for each item."
            context.report.error(entry.key.at, "aspect-not-wanted", message, remedy)
            continue
        found += read_aspect_values(aspect, entry.value, items, tolerance, context)
    if tolerance is not None and not any(map(_says_about, found)):
        message = "A tolerance is given, but no measure of the rule says about."
        remedy = "Write about before the measure, or remove the tolerance."
        context.report.error(tolerance.at, "tolerance-not-wanted", message, remedy)
    return found if named else [AspectValue(head.act, ACT)]


def _says_about(said: AspectValue) -> bool:
    """Whether a measure that a rule gives, or one of its offsets, says about."""
    measures = (said.value.measure, *(position.offset for position in said.value.positions))
    return any(measure is not None and measure.about for measure in measures)


def _make(
    parts: _Parts, subject: Subject, values: list[AspectValue], otherwise: Modality | None = None
) -> list[RuleDraft]:
    """One draft for each aspect value of one subject."""
    fields, clause = parts.fields, parts.clause
    drafts = []
    for value in values:
        suffix = subject.suffix + (f"-{slug(value.aspect)}" if len(values) > 1 else "")
        name = parts.name + suffix + ("-otherwise" if otherwise else "")
        rule = Rule(
            id=f"{clause.edition}/{name}",
            modality=otherwise or subject.modality,
            scope=subject.scope,
            aspect=value.aspect,
            value=value.value,
            condition=all_of([parts.condition, subject.condition]),
            clause=clause.id,
            authority=parts.authority,
            valid_from=parts.valid_from,
            valid_until=parts.valid_until,
            non_derogable=parts.non_derogable,
            residual=fields.flag("residual") and not otherwise,
            note=fields.text("note"),
            caution=fields.text("caution"),
            at=fields.at,
        )
        drafts.append(
            RuleDraft(
                rule=rule,
                source=f"{clause.edition}/{parts.name}",
                edition=clause.edition,
                exception_to=fields.scalars("exception to"),
                disables=() if otherwise else fields.scalars("disables"),
                repairs=None if otherwise else fields.scalar("repairs"),
                under=fields.scalar("under"),
                phase_out=parts.head.key.text == "phase out",
                each_kind=fields.flag("each kind"),
            )
        )
    return drafts


def _check_residual(parts: _Parts, report: Report) -> None:
    if parts.head.modality != "must_not" and parts.fields.flag("residual"):
        message = "Only a must not can be residual: it closes what nothing else speaks about."
        report.error(
            parts.fields.lines["residual"].key.at, "bad-residual", message, "Write must not, or remove it."
        )


def _otherwise(
    parts: _Parts,
    grades: list[Test],
    condition: Condition,
    subjects: list[Subject],
    values: list[AspectValue],
    context: Context,
) -> list[RuleDraft]:
    """The rule for all other grades, under the same condition."""
    fields, report = parts.fields, context.report
    if not fields.has("otherwise"):
        return []
    place = fields.lines["otherwise"].key.at
    modality = _OTHERWISE.get(fields.one_of("otherwise", _OTHERWISE) or "")
    if not fields.has("grades") or parts.head.modality is None:
        message = "Otherwise means all other grades, but the rule names no grades."
        report.error(
            place, "otherwise-without-grades", message, "Add grades: to a must, must not, may or need not."
        )
        return []
    if modality is None or not grades:
        return []
    others = _other_grades(grades[0], context)
    if not others.members:
        message = "The rule is for all grades, so there is nobody left for whom otherwise could hold."
        report.error(place, "otherwise-without-grades", message, "Narrow the grades, or remove otherwise.")
        return []
    rest = msgspec.structs.replace(parts, condition=all_of([Test("grade", others), condition]))
    singles = [single for subject in subjects for single in _singles(subject)]
    return [d for subject in singles for d in _make(rest, subject, values, otherwise=modality)]


def _other_grades(test: Test, context: Context) -> Choices:
    named = test.values.members if isinstance(test.values, Choices) else frozenset()
    return choices(*(v.id for v in context.vocabulary.facts["grade"].values if v.id not in named))


def _singles(subject: Subject) -> list[Subject]:
    """A duty over a set as one subject for each of its items: the others are free of each of them."""
    scope = subject.scope
    if scope.alternatives is None:
        return [subject]
    return [
        msgspec.structs.replace(
            subject,
            scope=Scope(items=(name,), excluding=scope.excluding, narrower=scope.narrower),
            suffix=f"{subject.suffix}-{name}",
        )
        for name in scope.items
    ]
