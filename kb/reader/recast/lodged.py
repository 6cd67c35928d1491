"""Which animals are kept there: "the lion enclosure" is an enclosure, where the books tell none apart."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from kb.model.lookup import Lookup
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize, word_key

Edit = tuple[int, int, str]
_ANIMALS = word_set("""
    alligator alpaca antelope ape baboon badger bat bear beaver bird bison boar buffalo bull calf camel
    cat cattle chameleon cheetah chicken chimp chimpanzee colt cow crane crocodile deer dog dolphin
    donkey duck eagle elephant elk emu falcon ferret fish flamingo foal fox frog gibbon giraffe goat
    goose gorilla hawk hen heron hippo hippopotamus horse hyena ibex iguana jaguar kangaroo kestrel koala
    lamb lemur leopard lion lizard llama lynx macaw mare meerkat mongoose monkey moose mule octopus
    ocelot orangutan ostrich otter owl ox panda panther parrot peacock pelican penguin pig pigeon pony
    porcupine puma python rabbit raccoon ram raptor reindeer rhino rhinoceros seal shark sheep sloth
    snake squirrel stallion stork swan tapir tiger toad tortoise turkey turtle vulture wallaby walrus
    wolf wombat yak zebra
""")
_DWELLINGS = word_set("""
    enclosure cage pen paddock stable stall barn byre kennel aviary aquarium tank pool pond run field meadow
    house quarters block compound pit sty fold yard shed hutch coop terrarium
""")
_WIDE = frozenset({"situation"})


def lodged(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and nothing in place of each animal before the place of the books where it is kept."""
    tokens = found.tokens
    for before, place in pairwise(found.pieces):
        if before.tag != "unknown" or not _is_dwelling(found, place, lookup):
            continue
        word, head = tokens[before.first], tokens[place.last - 1].key
        beast = word_key(word.low)
        if beast not in _ANIMALS or _are_told_apart(beast, head, lookup):
            continue
        led = tokens[before.first - 1].low if before.first else ""
        if led in ("the", "a", "an", "our", "my", "this", "that", "any", "every", "each"):
            yield word.start, tokens[place.first].start, ""


def _is_dwelling(found: Understood, place: Piece, lookup: Lookup) -> bool:
    """Whether a piece is the bare noun of a place of the books where animals are kept."""
    one = place.tag == "fact" and place.last - place.first == 1
    return (
        one
        and lookup.facts[place.fact].family in _WIDE
        and not _DWELLINGS.isdisjoint({found.tokens[place.first].low, found.tokens[place.first].key})
    )


def _are_told_apart(beast: str, head: str, lookup: Lookup) -> bool:
    """Whether a name or a clause has another word, or that beast, before the noun: "the monkey house"."""
    names = (
        name
        for fact in lookup.base.facts
        for one in (fact, *fact.values)
        for name in (one.label, *one.other_labels)
    )
    for name in names:
        keys = [token.key for token in tokenize(name)]
        if head in keys[1:] and keys[keys.index(head, 1) - 1] not in _PLAIN:
            return True
    texts = (tuple(token.key for token in tokenize(clause.text)) for clause in lookup.base.clauses)
    return any((beast, head) in pairwise(keys) for keys in texts)


_PLAIN = word_set("the a an in on at into inside within any animal animals of to from outside near")
