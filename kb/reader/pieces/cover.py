"""From words to pieces: every word ends up in exactly one piece, longest names first."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from kb.reader.names.lexicon import Entry, Lexicon
from kb.reader.phrases.english import (
    LEADING_PREPOSITIONS,
    LONGEST_PHRASE,
    PHRASES,
    SKIPPED_INSIDE_LABELS,
    SPLIT_VERBS,
    WEAK,
)
from kb.reader.pieces.misnamed import is_misnamed, is_penalty
from kb.reader.pieces.ordered import ordered
from kb.reader.pieces.parted import is_day, parted
from kb.reader.pieces.patterns import pattern_pieces
from kb.reader.pieces.pieces import SHARING, How, Piece
from kb.reader.pieces.reported import reported
from kb.reader.pieces.shared import LISTING, listed_outfits
from kb.reader.words.colours import HEADS
from kb.reader.words.forms import word_set
from kb.reader.words.sentences import sentence_starts
from kb.reader.words.tokens import Token

_SKIPPED = SKIPPED_INSIDE_LABELS | {"-"}
_BE = frozenset({"is", "are", "was", "were", "'s"})
_DIMENSIONS = frozenset({"high", "tall", "wide", "broad", "long", "deep", "across", "thick"})


def phrase_piece(tokens: tuple[Token, ...], first: int, last: int) -> Piece | None:
    """The phrase of structure that the words from `first` to `last` are."""
    tag = PHRASES.get(tuple(token.low for token in tokens[first:last]))
    if tag is None:
        return None
    tag, _, arg = tag.partition(":")
    if tag in ("wear", "use"):
        return Piece(first=first, last=last, tag="act", arg=tag)
    if tag == "does":
        return Piece(first=first, last=last, tag="act", arg=arg)
    return Piece(first=first, last=last, tag=tag, arg=arg)


_ADJECTIVES = word_set("wet dry warm cold hot cool tight slack long woolly thermal light heavy old new best")


def _names_at(tokens: tuple[Token, ...], first: int, lexicon: Lexicon) -> list[Piece]:
    """Every name that begins at a word; articles and "is" may stand inside it."""
    found: list[Piece] = []
    joined, denied = "", ""
    count = 0
    if tokens[first].low in _SKIPPED:
        return found
    for last in range(first, len(tokens)):
        token = tokens[last]
        if token.low in _SKIPPED:
            lettered = lexicon.names.get(joined + token.key) if count and _is_letter(tokens, last) else None
            if lettered:
                found.append(Piece(first=first, last=last + 1, tag="name", entries=lettered))
            continue
        if token.low in ("not", "n't") and count and not denied and tokens[last - 1].low in _BE:
            denied = "not"
            continue
        joined += token.key
        count += 1
        if count > lexicon.longest + 2:
            break
        entries = lexicon.names.get(joined)
        if entries and count == 1 and _is_no_plural(token.low) and token.low == joined in lexicon.plurals:
            continue
        if entries and count == 1 and token.low in HEADS:
            entries = tuple(e for e in entries if (token.low, e.owner, e.id) not in lexicon.in_the_plural)
        if entries and count == 1 and _goes_with(tokens, first, lexicon):
            continue
        written = tokens[first : last + 1]
        if entries and not _loose_code(written) and not _swallows_act(written, entries, lexicon):
            how: How = "label" if entries[0].rank == 0 else "everyday"
            if not denied or _is_of_one_fact(entries):
                found.append(
                    Piece(first=first, last=last + 1, tag="name", entries=entries, how=how, arg=denied)
                )
    return found


def _is_letter(tokens: tuple[Token, ...], place: int) -> bool:
    """Whether an "a" is no article but what ends a name: "rig A", "in rig a"."""
    ends = place + 1 == len(tokens) or not tokens[place + 1].low[0].isalnum()
    return ends or (tokens[place].text == "A" and not tokens[place - 1].text.isupper())


def _is_no_plural(word: str) -> bool:
    """ "Short" is not the shorts, and what is wet is not the wets."""
    return (word,) in PHRASES or word in _ADJECTIVES


def _turned(tokens: tuple[Token, ...], lexicon: Lexicon) -> list[Piece]:
    """ "The patch of the station": the label of an item, its last word before "of"."""
    found: list[Piece] = []
    for place in range(1, len(tokens) - 1):
        if tokens[place].low != "of" or tokens[place + 1].low in ("a", "an"):
            continue
        joined = ""
        for last in range(place + 1, min(place + 6, len(tokens))):
            if tokens[last].low in _SKIPPED:
                continue
            joined += tokens[last].key
            entries = lexicon.names.get(joined + tokens[place - 1].key, ())
            if entries and {entry.kind for entry in entries} == {"item"} and entries[0].rank == 0:
                found.append(Piece(first=place - 1, last=last + 1, tag="name", entries=entries))
    return found


_ONE = frozenset({"one", "ones"})
_LED = frozenset({"the", "a", "my", "this", "that", "these", "those", "your", "his", "her", "our"})


def _ones(tokens: tuple[Token, ...], names: Sequence[Piece], lexicon: Lexicon) -> list[Piece]:
    """ "The lined smock or the tarred one": the item whose label has the noun of one named before."""
    found: list[Piece] = []
    for place in range(3, len(tokens)):
        if tokens[place].low not in _ONE:
            continue
        first = next((i for i in range(place - 1, max(place - 5, 1), -1) if tokens[i - 1].low in _LED), 0)
        said = "".join(token.key for token in tokens[first:place]) if first else ""
        heads = {tokens[n.last - 1].key for n in names if n.last < first and n.entries[0].kind == "item"}
        entries = {e: None for head in heads for e in lexicon.names.get(said + head, ()) if e.kind == "item"}
        if said and len({entry.id for entry in entries}) == 1:
            found.append(Piece(first=first, last=place + 1, tag="name", entries=tuple(entries)[:1]))
    return found


def _goes_with(tokens: tuple[Token, ...], index: int, lexicon: Lexicon) -> bool:
    """Whether a word that may be a place ("inside") stands before an item, as a preposition does."""
    if PHRASES.get((tokens[index].low,)) != "with":
        return False
    after = index + 1
    while after < len(tokens) and PHRASES.get((tokens[after].low,)) in ("det", "poss"):
        after += 1
    joined = ""
    for token in tokens[after : after + 3]:
        joined += token.key
        if any(entry.kind == "item" for entry in lexicon.names.get(joined, ())):
            return True
    return False


def _is_of_one_fact(entries: tuple[Entry, ...]) -> bool:
    return {entry.kind for entry in entries} <= {"value", "group"} and len({e.owner for e in entries}) == 1


def _cuts_item(piece: Piece, names: Sequence[Piece], tokens: tuple[Token, ...], lexicon: Lexicon) -> bool:
    """Whether a name takes the first word of an item's label: "length of the name" of "the name strip"."""
    if piece.tag != "name" or piece.last - piece.first < 2 or piece.entries[0].kind == "item":
        return False
    if tokens[piece.first].low in LEADING_PREPOSITIONS and any(
        other.first == piece.first + 1 and other.last > piece.last and other.entries[0].rank == 0
        for other in names
    ):
        return True  # "on watch rig" is the watch rig
    return any(
        piece.first < other.first < piece.last < other.last
        and other.entries[0].rank == 0
        and {entry.kind for entry in other.entries} == {"item"}
        and all(_stands_alone(token, lexicon) for token in tokens[piece.first : other.first])
        for other in names
    )


def _cuts_name(piece: Piece, names: Sequence[Piece], tokens: tuple[Token, ...], lexicon: Lexicon) -> bool:
    """Whether a name takes the end of another, where two names explain all: "rope work | on a tower"."""
    if piece.tag != "name" or piece.last - piece.first < 2:
        return False
    ends = {name.first for name in names if name.last == piece.last}
    return any(
        other.first < piece.first < other.last < piece.last
        and other.entries[0].rank == 0
        and other.last in ends
        and not any(_stands_alone(token, lexicon) for token in tokens[other.first : piece.first])
        for other in names
    )


def _stands_alone(token: Token, lexicon: Lexicon) -> bool:
    return (token.low,) in PHRASES or any(entry.rank == 0 for entry in lexicon.names.get(token.key, ()))


def _runs_on(piece: Piece, names: Sequence[Piece]) -> bool:
    """Whether a name begins with the last word of a phrase and goes on after it: "for the neck cloth",
    "on the left sleeve"."""
    return any(name.first == piece.last - 1 and name.last > piece.last for name in names)


def _is_cut(piece: Piece, names: Sequence[Piece], text: str, tokens: tuple[Token, ...]) -> bool:
    """Whether a measure's unit is a word of something else: "two day shirts", "20 in boat rig"."""
    if piece.tag != "measure":
        return False
    unit = piece.last - 1
    if any(piece.first < name.first < piece.last < name.last and name.entries[0].rank < 2 for name in names):
        return True
    if tokens[unit].text != "in" or text[tokens[unit].end : tokens[unit].end + 1] == ".":
        return False
    after = piece.last
    while after < len(tokens) and tokens[after].low in SKIPPED_INSIDE_LABELS:
        after += 1
    led = [name for name in names if name.first == after]
    if after < len(tokens) and tokens[after].low in _DIMENSIONS:
        led = [name for name in led if name.last > after + 1]  # "4 in high", but "20 in high wind"
    return any({entry.kind for entry in name.entries} <= {"value", "group", "fact"} for name in led)


_BOUNDING = frozenset({"for", "within", "until", "during"})


def _is_of_a_name(piece: Piece, names: Sequence[Piece], tokens: tuple[Token, ...]) -> bool:
    """Whether a measure, a day or a verb is in a label: "lifting something hotter than 60 degrees".

    Not where the label tells another fact before it: "in the cold room | for more than 5 minutes" says both.
    """
    around = [
        name
        for name in names
        if name.first <= piece.first
        and piece.last <= name.last
        and name.last - name.first > piece.last - piece.first
        and name.entries[0].rank == 0
        and name.entries[0].kind in ("value", "group")
    ]
    return bool(around) and not any(
        name.first <= part.first
        and part.last < name.last
        and part.entries[0].rank == 0
        and part.entries[0].owner != name.entries[0].owner
        and tokens[part.last].low in _BOUNDING
        for name in around
        for part in names
    )


def _swallows_act(tokens: tuple[Token, ...], entries: tuple[Entry, ...], lexicon: Lexicon) -> bool:
    """Whether "a hand wear" was joined to the label of an item in one word, "handwear"."""
    if len(tokens) < 2 or PHRASES.get((tokens[-1].low,)) not in ("wear", "use"):
        return False
    if any(entry.kind != "item" or lexicon.is_written_apart(entry, len(tokens)) for entry in entries):
        return False
    subject = lexicon.names.get("".join(token.key for token in tokens[:-1]), ())
    return any(entry.kind in ("value", "group") for entry in subject)


def _loose_code(tokens: tuple[Token, ...]) -> bool:
    """Whether "a 5" was joined to a code "A5": an article is none."""
    return len(tokens) > 1 and tokens[0].text in ("a", "i") and tokens[1].start > tokens[0].end


_LEADING = frozenset({"if", "when", "while", "whilst", "because", "provided"})


def _split_verbs(tokens: tuple[Token, ...], names: list[Piece]) -> list[Piece]:
    """Verbs that an item parts from their particle ("leave the cap off")."""
    found: list[Piece] = []
    for index, token in enumerate(tokens):
        if index + 1 < len(tokens) and tokens[index + 1].low == "to":
            continue
        for later in range(index + 2, min(index + 9, len(tokens))):
            if tokens[later].low in _LEADING:
                break  # "may I have my phone on me if it is off"
            tag = SPLIT_VERBS.get((token.low, tokens[later].low))
            if not tag:
                continue
            if any(n.first == later < n.last - 1 for n in names):
                continue  # "have a torch on watch"
            following = tokens[later + 1].low if later + 1 < len(tokens) else ""
            if tag == "wear" and (PHRASES.get((following,)) in ("det", "poss") or is_day(following)):
                break
            parted = any(
                index < n.first and n.last <= later and any(e.kind == "item" for e in n.entries)
                for n in names
            )
            whole = Piece(first=index, last=later + 1, tag="name")
            if _is_of_a_name(whole, names, tokens):
                break
            if parted or tokens[later - 1].low in ("it", "them", "this", "that"):
                kind, arg = ("act", "wear") if tag == "wear" else (tag, "")
                found.append(Piece(first=index, last=index + 1, tag=kind, arg=arg, how="pattern"))
                found.append(Piece(first=later, last=later + 1, tag="particle", how="pattern"))
                break
    return found


def _strength(piece: Piece, tokens: tuple[Token, ...]) -> tuple[int, int, int, int, int]:
    """Sort key: patterns, then the most words (those between a label's words do not count), then labels
    before phrases before everyday words before verbs that are often nouns ("hook", "lace")."""
    words = tokens[piece.first : piece.last]
    size = (
        sum(token.low not in _SKIPPED for token in words) - (piece.arg == "not")
        if piece.tag == "name"
        else len(words)
    )
    order = 1
    if piece.tag == "name":
        order = 0 if piece.entries[0].rank == 0 else 2
    elif piece.tag in WEAK:
        order = 3
    return (0 if piece.how == "pattern" else 1, -size, order, len(words) - size, piece.first)


def find_pieces(text: str, tokens: tuple[Token, ...], lexicon: Lexicon) -> tuple[Piece, ...]:
    """Cover the words: patterns (dates, measures, clauses), then the longest names and phrases."""
    starts = sentence_starts(text, tokens)
    ends = [start for start in starts if start and text[tokens[start - 1].end :].lstrip()[:1] != ":"]
    named = (piece for first in range(len(tokens)) for piece in _names_at(tokens, first, lexicon))
    names = [
        piece
        for piece in named
        if not is_misnamed(piece, tokens) and not any(piece.first < end < piece.last for end in ends)
    ]
    names += [*_turned(tokens, lexicon), *_ones(tokens, names, lexicon)]
    patterns = [
        piece
        for piece in pattern_pieces(text, tokens)
        if not (_is_cut(piece, names, text, tokens) or _is_of_a_name(piece, names, tokens))
    ]
    whole = [
        name
        for name in names
        if not (_cuts_item(name, names, tokens, lexicon) or _cuts_name(name, names, tokens, lexicon))
    ]
    candidates = [
        *patterns,
        *reported(tokens, frozenset(place for n in names for place in range(n.first, n.last))),
        *ordered(tokens),
        *_split_verbs(tokens, names),
        *parted(tokens, names),
        *whole,
    ]
    for first in range(len(tokens)):
        for last in range(first + 1, min(first + LONGEST_PHRASE, len(tokens)) + 1):
            if (last - first > 1 and last - 1 in starts) or is_penalty(tokens, first):
                break
            piece = phrase_piece(tokens, first, last)
            if piece is not None and piece.tag == "kin":
                piece = Piece(first=first, last=last, tag="person") if lexicon.is_for_the_young else None
            if piece is not None and not (piece.tag in ("body", "place") and _runs_on(piece, names)):
                candidates.append(piece)
    candidates.sort(key=lambda piece: _strength(piece, tokens))
    owner: list[Piece | None] = [None] * len(tokens)
    for piece in candidates:
        if not any(owner[piece.first : piece.last]):
            owner[piece.first : piece.last] = [piece] * (piece.last - piece.first)
    found: list[Piece] = []
    for index, piece in enumerate(owner):
        if piece is None:
            found.append(Piece(first=index, last=index + 1, tag="unknown"))
        elif not found or found[-1] is not piece:
            found.append(piece)
    return listed_outfits(_shared_starts(_shared_ends(found, tokens, lexicon), tokens, lexicon), tokens)


def _shared_starts(
    pieces: tuple[Piece, ...], tokens: tuple[Token, ...], lexicon: Lexicon
) -> tuple[Piece, ...]:
    """ "The lights branch flash": a word before an item takes the item's first word, if that makes a name."""
    found = list(pieces)
    for index, (piece, after) in enumerate(pairwise(pieces)):
        single = piece.tag in ("unknown", "name") and piece.last - piece.first == 1
        if not single or after.tag != "name" or after.last - after.first < 2:
            continue
        entries = lexicon.names.get(tokens[piece.first].key + tokens[after.first].key, ())
        if entries and entries[0].rank == 0 and all(entry.kind in ("value", "group") for entry in entries):
            found[index] = Piece(first=piece.first, last=piece.last, tag="name", entries=entries, arg=SHARING)
    return tuple(found)


def _shared_ends(pieces: list[Piece], tokens: tuple[Token, ...], lexicon: Lexicon) -> tuple[Piece, ...]:
    """ "fair or foul weather": a word joined to a name takes the name's last word where that makes a name."""
    tail, shared = "", len(pieces)
    for index in range(len(pieces) - 1, -1, -1):
        piece = pieces[index]
        if piece.tag in ("and", "or", "comma", "det"):
            continue
        led = all(token.low in LEADING_PREPOSITIONS for token in tokens[piece.first : piece.last - 1])
        single = piece.tag in ("unknown", "name") and led  # "in fell or hall rig"
        lone = piece.last - piece.first == 1  # "on a pier, when doing rope work" says no pier work
        links = LISTING if lone or shared == index + 2 else LISTING[:2]
        joined = index + 1 < len(pieces) and pieces[index + 1].tag in links
        entries = (
            lexicon.names.get(tokens[piece.last - 1].key + tail, ()) if tail and single and joined else ()
        )
        if entries and entries[0].rank == 0:
            pieces[index] = Piece(first=piece.first, last=piece.last, tag="name", entries=entries)
            shared = index
        else:
            tail = tokens[piece.last - 1].key if piece.tag == "name" and piece.last - piece.first > 1 else ""
    return tuple(pieces)
