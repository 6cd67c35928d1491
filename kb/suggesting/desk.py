"""A writer's desk: what may be decided on words for the items of some books, and the deciding."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from pathlib import Path

import msgspec

from kb.errors import UsageError
from kb.model.lookup import Lookup
from kb.model.records import Item, SuggestedWord
from kb.reader import Lexicon
from kb.sources.report import quoted, suggestion
from kb.sources.suggested import Decision, key
from kb.suggesting import encoding
from kb.suggesting.clashes import LONGEST_WORD, find_clash, is_understood, is_word
from kb.suggesting.keeping import FILE, kept_decisions, locked, prepare, write
from kb.suggesting.proposing import Proposal, Suggestions, candidates, suggest
from kb.suggesting.wordnet import WordNet, open_wordnet
from kb.wording.english import listing

Choice = tuple[str, str]  # an item, by id or name, and a word


class WordDesk(msgspec.Struct, frozen=True):
    """The books as they are, what was decided before, and the thesaurus. Deciding gives another desk."""

    folder: Path
    lookup: Lookup
    lexicon: Lexicon
    decisions: tuple[Decision, ...]
    thesaurus: WordNet

    @classmethod
    def open(cls, folder: Path, lookup: Lookup, lexicon: Lexicon) -> WordDesk:
        """Raises `UsageError` with the line that installs the thesaurus where it is missing."""
        thesaurus = open_wordnet()
        return cls(folder, lookup, lexicon, kept_decisions(folder, lookup.items), thesaurus)

    @property
    def file(self) -> Path:
        """Where decisions are kept."""
        return self.folder / FILE

    def item(self, name: str) -> Item:
        """The item with an id, label or other label; `UsageError` with near ones if there is none."""
        items = self.lookup.items
        if name in items:
            return items[name]
        folded = " ".join(name.casefold().split())
        found = [i for i in items.values() if folded in map(str.casefold, (i.label, *i.other_labels))]
        if len(found) == 1:
            return found[0]
        known = [text for i in items.values() for text in (i.id, i.label)]
        raise UsageError(
            f"There is no item {quoted(name)}. {suggestion(name, known, 'Name one by its id or label.')}"
        )

    def suggestions(self, items: Sequence[str] = (), *, narrower: bool = False) -> Suggestions:
        """Words for these items, by id or name, or for all."""
        chosen = {self.item(name).id for name in items} or self.lookup.items.keys()
        decided = {key(d.word.item, d.word.word) for d in self.decisions}
        return suggest(chosen, self.lookup, self.lexicon, self.thesaurus, decided, narrower)

    def decide(
        self,
        *,
        accept: Iterable[Choice] = (),
        refuse: Iterable[Choice] = (),
        own: Iterable[Choice] = (),
        day: datetime.date | None = None,
    ) -> tuple[WordDesk, tuple[Decision, ...]]:
        """Keep what was decided, all of it or nothing: words of the thesaurus accepted or refused, and words
        of the writer's own. Gives the desk with it, and the new decisions.

        Raises `UsageError` for a word that is not proposed, that is decided so already, or that would mean
        something else; `InvalidDataError` and `StoreUnavailableError` as `prepare` and `write` do.
        """
        on = day or datetime.date.today()
        new = (
            *(self._decision(choice, on, accepted=True) for choice in accept),
            *(self._own(choice, on) for choice in own),
            *(self._decision(choice, on, accepted=False) for choice in refuse),
        )
        _check_apart(new)
        with locked(self.folder):
            prepared = prepare(self.folder, new)
            lookup = Lookup(prepared.base)
            lexicon = Lexicon.build(lookup)
            for decision in new:
                word = decision.word
                if decision.accepted and not is_understood(word.word, word.item, lexicon):
                    clash = find_clash(word.word, word.item, lexicon, lookup)
                    raise UsageError(
                        clash.reason if clash else f"{quoted(word.word)} would not be understood."
                    )
            write(prepared)
        return WordDesk(self.folder, lookup, lexicon, prepared.decisions, self.thesaurus), new

    def suggestions_to_json(self, found: Suggestions) -> bytes:
        """The suggestions, and what was decided before, as a JSON object."""
        return encoding.encode_suggestions(found, self.decisions, self.thesaurus)

    def decisions_to_json(self, new: Iterable[Decision]) -> bytes:
        """What was just decided, and where it is kept, as a JSON object."""
        return encoding.encode_decisions(new, self.file)

    def _decision(self, choice: Choice, on: datetime.date, accepted: bool) -> Decision:
        item, word = self.item(choice[0]), " ".join(choice[1].split())
        before = self._before(item, word)
        if before is not None and before.accepted == accepted:
            how = "accepted" if accepted else "refused"
            raise UsageError(f"{quoted(word)} is {how} for {quoted(item.label)} since {before.word.on}.")
        known = before.word if before is not None else self._proposed(item, word)
        if accepted:
            self._check_free(item, known.word)
        return Decision(
            SuggestedWord(
                item=item.id, word=known.word, on=on, origin=known.origin, meaning=known.meaning, at=item.at
            ),
            accepted,
        )

    def _own(self, choice: Choice, on: datetime.date) -> Decision:
        item, word = self.item(choice[0]), " ".join(choice[1].split())
        if not is_word(word):
            raise UsageError(
                f"{quoted(word)} is no word that people say: write one to four words of letters, at most "
                f"{LONGEST_WORD} characters."
            )
        self._check_free(item, word)
        return Decision(SuggestedWord(item=item.id, word=word, on=on, at=item.at), accepted=True)

    def _before(self, item: Item, word: str) -> Decision | None:
        wanted = key(item.id, word)
        return next((d for d in self.decisions if key(d.word.item, d.word.word) == wanted), None)

    def _proposed(self, item: Item, word: str) -> Proposal:
        found = list(candidates(item, self.lookup, self.thesaurus, narrower=True))
        same = [proposal for proposal in found if key("", proposal.word) == key("", word)]
        if same:
            return same[0]
        if is_understood(word, item.id, self.lexicon):
            raise UsageError(f"{quoted(word)} means {quoted(item.label)} as it is.")
        known = [proposal.word for proposal in found if proposal.relation == "synonym"]
        told = f"It has {listing(list(map(quoted, known[:12])))}. " if known else ""
        raise UsageError(
            f"{self.thesaurus.name} does not have {quoted(word)} for {quoted(item.label)}. {told}"
            "A word of your own is kept with --own."
        )

    def _check_free(self, item: Item, word: str) -> None:
        if is_understood(word, item.id, self.lexicon):
            raise UsageError(f"{quoted(word)} means {quoted(item.label)} as it is.")
        clash = find_clash(word, item.id, self.lexicon, self.lookup)
        if clash is not None:
            raise UsageError(f"{clash.reason} It cannot be a word for {quoted(item.label)} as well.")


def _check_apart(new: Sequence[Decision]) -> None:
    """No word may be decided on twice at once, or be accepted for two items."""
    seen: set[tuple[str, str]] = set()
    taken: dict[str, str] = {}
    for decision in new:
        word = decision.word
        if key(word.item, word.word) in seen:
            raise UsageError(f"{quoted(word.word)} is given twice for {quoted(word.item)}.")
        seen.add(key(word.item, word.word))
        first = taken.setdefault(key("", word.word)[1], word.item) if decision.accepted else word.item
        if first != word.item:
            raise UsageError(f"{quoted(word.word)} cannot be a word for both {first} and {word.item}.")
