"""Words that a writer accepted or refused for items: the log that `clothbound suggest-words` keeps."""

from __future__ import annotations

from collections.abc import Iterable

import msgspec

from kb.model.records import Item, SuggestedWord, WordOrigin
from kb.sources.fields import Fields
from kb.sources.report import Report
from kb.sources.things import check_item
from kb.sources.tree import Mapping

SECTION = "suggested words"
_ORIGIN = ("thesaurus", "version", "sense")
_KEYS = ("word", "item", "accepted", "refused", *_ORIGIN, "meaning")


class Decision(msgspec.Struct, frozen=True):
    """What a writer decided on a word."""

    word: SuggestedWord
    accepted: bool


def read_decisions(nodes: Iterable[Mapping], items: dict[str, Item], report: Report) -> tuple[Decision, ...]:
    """What was decided on each word for each item; of several entries on one the last counts."""
    found: dict[tuple[str, str], Decision] = {}
    for node in nodes:
        decision = _decision(node, items, report)
        if decision is not None:
            name = key(decision.word.item, decision.word.word)
            found.pop(name, None)
            found[name] = decision
    return tuple(found.values())


def key(item: str, word: str) -> tuple[str, str]:
    """What two entries on one word have in common: capitals and spaces make no other word."""
    return item, " ".join(word.casefold().split())


def _decision(node: Mapping, items: dict[str, Item], report: Report) -> Decision | None:
    fields = Fields(node, _KEYS, "a suggested word", report)
    word = fields.required("word", "word: specs")
    item = fields.required("item", "item: spectacles")
    known = item is not None and check_item(item, items, report)
    accepted = fields.has("accepted")
    if accepted == fields.has("refused"):
        what = "both accepted and refused" if accepted else "neither accepted nor refused"
        remedy = "Write the day of one of them, as in accepted: 2026-03-01."
        report.error(fields.at, "undecided-word", f"The word is {what}.", remedy)
        return None
    day = fields.date("accepted" if accepted else "refused")
    origin = _origin(fields, report)
    if word is None or item is None or day is None or not known:
        return None
    found = SuggestedWord(
        item=item.text,
        word=" ".join(word.text.split()),
        on=day,
        origin=origin,
        meaning=fields.text("meaning"),
        at=fields.at,
    )
    return Decision(found, accepted)


def _origin(fields: Fields, report: Report) -> WordOrigin | None:
    given = [name for name in _ORIGIN if fields.has(name)]
    if given and len(given) < len(_ORIGIN):
        message = "It is said in part where the word comes from: thesaurus, version and sense go together."
        remedy = "Write all three as they were, or none for a word of your own."
        report.error(fields.place(given[0]), "incomplete-origin", message, remedy)
        return None
    thesaurus, version, sense = (fields.text(name) for name in _ORIGIN)
    if thesaurus is None or version is None or sense is None:
        return None
    return WordOrigin(thesaurus=thesaurus, version=version, sense=sense)


def with_words(items: dict[str, Item], words: Iterable[SuggestedWord]) -> dict[str, Item]:
    """The items with the accepted words among their everyday words; what a writer also wrote stands once."""
    found = dict(items)
    for word in words:
        item = found[word.item]
        names = (item.label, *item.other_labels, *item.everyday)
        if key("", word.word) not in {key("", name) for name in names}:
            found[item.id] = msgspec.structs.replace(item, everyday=(*item.everyday, word.word))
    return found
