"""The sentences of a paragraph made to flow: what one clause says of one thing becomes one sentence."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import msgspec

from kb.guidance.document import Sentence
from kb.guidance.provisions import Provision
from kb.model.conditions import ALWAYS, tests
from kb.model.lookup import Lookup
from kb.reasoner import WORN
from kb.wording import capital, item_label, say_scope
from kb.wording.english import is_plural, listing

_USE = frozenset({"wear", "carrying"})
_MOST = 4  # statements in one sentence
_ORDER = ("must", "must_not", "need_not", "may")
_JOINING = (" and ", " or ", ",", ";", "“")


class Said(NamedTuple):
    """A sentence and the provision that it states; None for a note, a caution or a caption."""

    sentence: Sentence
    provision: Provision | None = None


def flowing(lookup: Lookup, said: Sequence[Said]) -> tuple[Sentence, ...]:
    """The sentences as they stand on the page; those that were joined are the `parts` of one."""
    found: list[Said] = []
    waiting = list(said)
    while waiting:
        run = [waiting.pop(0)]
        first = _predicate(lookup, run[0])
        while waiting and first and len(run) < _MOST and _goes_with(lookup, run[0], waiting[0]):
            run.append(waiting.pop(0))
        found.append(run[0] if len(run) == 1 else Said(_joined(lookup, run), run[0].provision))
    return tuple(
        _with_pronoun(lookup, before, here) for before, here in zip([None, *found], found, strict=False)
    )


def _subject(lookup: Lookup, provision: Provision) -> str:
    scope = provision.rule.scope
    return "" if scope.alternatives or scope.excluding else say_scope(lookup, scope, "the")


def _predicate(lookup: Lookup, said: Said) -> tuple[str, str] | None:
    """Modal and predicate of a sentence that always holds, "must", "be dried flat"; None for any other."""
    provision = said.provision
    if provision is None or provision.period or provision.rule.condition != ALWAYS:
        return None
    aspect = lookup.aspects[provision.rule.aspect]
    start = f"{capital(_subject(lookup, provision))} "
    if aspect.kind != "act" or aspect.id in _USE or not said.sentence.text.startswith(start):
        return None
    rest = said.sentence.text.removeprefix(start)
    modal = next((m for m in ("must not ", "need not ", "must ", "may ") if rest.startswith(m)), "")
    predicate = rest.removeprefix(modal)
    if not modal or any(mark in predicate for mark in _JOINING):
        return None
    return modal.strip(), predicate


def _goes_with(lookup: Lookup, one: Said, other: Said) -> bool:
    if one.provision is None or other.provision is None or _predicate(lookup, other) is None:
        return False
    return (
        one.sentence.citation == other.sentence.citation
        and one.provision.rule.scope == other.provision.rule.scope
    )


def _joined(lookup: Lookup, run: Sequence[Said]) -> Sentence:
    """ "The scarf must be washed by hand and dried flat, and must not be wrung"."""
    provision = run[0].provision
    assert provision is not None, "only provisions are joined"
    groups: dict[tuple[str, str], list[str]] = {}
    ordered = sorted(run, key=lambda s: _ORDER.index(s.provision.rule.modality) if s.provision else 0)
    for said in ordered:
        found = _predicate(lookup, said)
        assert found is not None, "only plain statements are joined"
        verb, _, rest = found[1].partition(" ")
        if rest.startswith("worn "):  # not "worn outside the trousers and long enough"
            verb, rest = f"{verb} worn", rest.removeprefix("worn ")
        groups.setdefault((found[0], verb), []).append(rest)
    clauses = [
        f"{modal} {verb} {listing(rests, 'or' if modal.endswith('not') else 'and')}"
        for (modal, verb), rests in groups.items()
    ]
    text = clauses[0] if len(clauses) == 1 else f"{', '.join(clauses[:-1])}, and {clauses[-1]}"
    return msgspec.structs.replace(
        run[0].sentence,
        text=f"{capital(_subject(lookup, provision))} {text}",
        rules=tuple(dict.fromkeys(rule for said in run for rule in said.sentence.rules)),
        rivals=tuple(dict.fromkeys(rule for said in run for rule in said.sentence.rivals)),
        parts=tuple(said.sentence for said in run),
    )


def _with_pronoun(lookup: Lookup, before: Said | None, here: Said) -> Sentence:
    """The sentence with "It" for a thing that the one before begins with, where no other can be meant."""
    earlier = before.provision if before else None
    if before is None or earlier is None or here.provision is None:
        return here.sentence
    subject = capital(_subject(lookup, here.provision))
    start = f"{subject} "
    both = all(said.sentence.text.startswith(start) for said in (before, here))
    others = any(
        test.fact.startswith(WORN) for p in (earlier, here.provision) for test in tests(p.rule.condition)
    )
    if not subject or not both or others or lookup.aspects[earlier.rule.aspect].kind == "position":
        return here.sentence
    items = here.provision.rule.scope.items
    several = len(items) > 1 or is_plural(item_label(lookup, items[0]))
    rest = here.sentence.text.removeprefix(start)
    stated = here.sentence.parts or (here.sentence,)
    return msgspec.structs.replace(here.sentence, text=f"{'They' if several else 'It'} {rest}", parts=stated)
