"""Words that a thesaurus has for what an item is called: what is proposed, what is left out and why."""

from __future__ import annotations

from collections.abc import Iterator, Set
from functools import cache
from typing import Literal

import msgspec

from kb.model.lookup import Lookup
from kb.model.records import Item, WordOrigin
from kb.reader import Lexicon
from kb.reader.names.lexicon import joined
from kb.reader.words.kinds import same
from kb.sources.builtin import BUILT_IN
from kb.sources.suggested import key
from kb.suggesting.clashes import Clash, is_understood, is_word, named_clash, read_clash, some_of
from kb.suggesting.plausible import plausible
from kb.suggesting.wordnet import Sense, WordNet
from kb.wording.labels import item_label

Relation = Literal["synonym", "narrower"]


class Proposal(msgspec.Struct, frozen=True, kw_only=True):
    """A word that people may use for an item.

    `name` is what the item is called in this sense (its label, or the noun of it), `relation` how the word
    stands to that.
    """

    item: str
    word: str
    name: str
    relation: Relation
    origin: WordOrigin
    meaning: str


class LeftOut(msgspec.Struct, frozen=True, kw_only=True):
    """A word that is not proposed: `reason` in words, `items` those that it would be mixed up with."""

    proposal: Proposal
    reason: str
    items: tuple[str, ...] = ()


class Suggestions(msgspec.Struct, frozen=True):
    """What was found for the items that were asked about, in the order of the books."""

    proposals: tuple[Proposal, ...]
    left_out: tuple[LeftOut, ...]


def suggest(
    chosen: Set[str],
    lookup: Lookup,
    lexicon: Lexicon,
    thesaurus: WordNet,
    decided: Set[tuple[str, str]],
    narrower: bool,
) -> Suggestions:
    """Words for the chosen items. `decided` are the keys of what a writer decided on before; `narrower` also
    takes what names a kind of the item (parka for a coat), not only what means the same.

    A word that would do for several items alike is left out, since the reader would have to ask which is
    meant; that it would do for narrower ones as well is no hindrance.
    """
    written = [item for item in lookup.base.items if item.at != BUILT_IN]
    found = [
        candidate
        for item in written
        for candidate in candidates(item, lookup, thesaurus, narrower)
        if key(item.id, candidate.word) not in decided
    ]
    wanted: dict[str, list[str]] = {}
    for candidate in found:
        wanted.setdefault(joined(candidate.word), []).append(candidate.item)
    proposals: list[Proposal] = []
    left_out: list[LeftOut] = []
    for candidate in found:
        item, word = candidate.item, candidate.word
        if item not in chosen or is_understood(word, item, lexicon):
            continue
        others = tuple(other for other in wanted[joined(word)] if item not in lookup.broader(other))
        clash = (
            named_clash(word, item, lexicon, lookup)
            or _shared(word, others, lookup)
            or read_clash(word, item, lexicon, lookup)
        )
        if clash is None:
            proposals.append(candidate)
        else:
            left_out.append(LeftOut(proposal=candidate, reason=clash.reason, items=clash.items))
    return Suggestions(tuple(proposals), tuple(left_out))


def _shared(word: str, others: tuple[str, ...], lookup: Lookup) -> Clash | None:
    if not others:
        return None
    called = some_of([f"“{item_label(lookup, item)}”" for item in others])
    return Clash(f"“{word}” would fit {called} as well.", others)


def candidates(item: Item, lookup: Lookup, thesaurus: WordNet, narrower: bool) -> Iterator[Proposal]:
    """Every word of a fitting sense that the item does not have yet, each once."""
    own = {joined(name) for name in (item.label, *item.other_labels, *item.everyday)}
    for name, sense in _senses(item, lookup, thesaurus):
        below = [thesaurus.sense(identifier) for identifier in sense.narrower] if narrower else []
        for relation, found in _related(sense, below):
            origin = WordOrigin(thesaurus=thesaurus.name, version=thesaurus.version, sense=found.id)
            for word in found.words:
                if is_word(word) and (folded := joined(word)) not in own:
                    own.add(folded)
                    yield Proposal(
                        item=item.id, word=word, name=name, relation=relation, origin=origin,
                        meaning=found.meaning,
                    )  # fmt: skip


def _related(sense: Sense, below: list[Sense]) -> Iterator[tuple[Relation, Sense]]:
    yield "synonym", sense
    for found in below:
        yield "narrower", found


def _senses(item: Item, lookup: Lookup, thesaurus: WordNet) -> Iterator[tuple[str, Sense]]:
    """Each sense that the item may be, under the first of its names that has it.

    What it is called whole goes before the noun of that, which counts only where the thesaurus does not know
    the whole. A name with several senses has those that agree with another name of the item, if any do:
    what is also called trousers is not the pants that are worn under them.
    """
    found: list[tuple[str, tuple[Sense, ...]]] = []
    for names in _names(item):
        for name in names:
            fitting = plausible(item.id, thesaurus.senses(name), lookup, thesaurus)
            if fitting:
                found.append((name, fitting))
                break
    seen: set[str] = set()
    for number, (name, senses) in enumerate(found):
        rest = [sense for other, (_, those) in enumerate(found) if other != number for sense in those]
        agreeing = [sense for sense in senses if any(_agree(sense, other, thesaurus) for other in rest)]
        for sense in agreeing or senses:
            if sense.id not in seen:
                seen.add(sense.id)
                yield name, sense


def _agree(one: Sense, other: Sense, thesaurus: WordNet) -> bool:
    """Whether two senses are the same, or one is a kind of the other."""
    return one.id in thesaurus.lineage(other.id) or other.id in thesaurus.lineage(one.id)


def _names(item: Item) -> Iterator[tuple[str, ...]]:
    """What an item is called: labels, each with its noun after it, everyday words, and what the reader takes
    for the same as one of them."""
    for label in (item.label, *item.other_labels):
        yield (label, *_noun(label))
    known = {joined(name) for name in (item.label, *item.other_labels, *item.everyday)}
    for word in item.everyday:
        yield (word,)
    for row in _rows():
        if known & row.keys():
            yield from ((name,) for folded, name in row.items() if folded not in known)


@cache
def _rows() -> tuple[dict[str, str], ...]:
    return tuple({joined(name): name for name in row} for row in same())


def _noun(label: str) -> tuple[str, ...]:
    """The noun of a label of several words: its last word, or the one before "of"; () for one word alone."""
    words = label.replace("-", " ").split()
    if len(words) < 2:
        return ()
    if "of" in words[1:] and "'" not in label:
        return (words[words.index("of", 1) - 1],)
    return (words[-1],) if len(words[-1]) > 2 else ()
