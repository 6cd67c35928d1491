"""Words before a thing that say what it is of or how it looks, if no rule turns on it: "a thin gold chain".

No rule on the thing, on what it is a kind of or on its kinds may speak of such a matter, and the word may
stand neither in their clauses, nor in the name of anything that goes by the same noun, nor in a fact's. Such
words are left out, and named.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Reading
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.recast.its_own import described, without_its_own
from kb.reader.recast.owned import is_anybodys, is_award, is_of_kin
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, tokenize

_SIZES = word_set("""
    thin thick slim tiny small smallish little wee titchy dinky big large largish huge massive
    chunky narrow wide dainty delicate
""")
_STUFFS = word_set("""
    leather wool woollen woolen woolly wooly cotton silk satin linen velvet denim suede paper
    cardboard plastic metal steel brass copper tin rubber wooden glass knitted crochet crocheted
    beaded leatherette gold silver platinum diamond
""")
_LOOKS = word_set("""
    nice lovely pretty cute posh fancy cheap pricey expensive elegant stylish trendy tasteful
    subtle ordinary simple homemade handmade designer favourite favorite own personal
""")
_METALS = word_set("gold silver brass copper steel platinum")  # which are colours, too
_KINDS = {"size": _SIZES, "construction": _STUFFS, "colour": _METALS, "finish": _METALS}
_ANY = _SIZES | _STUFFS | _LOOKS
Read = Callable[[str], Reading]
_ACTS = frozenset({"wear", "carrying", "possession"})
_OWN, _DEAR = word_set("own personal"), word_set("late old dear poor own")
_JOINTS = frozenset({",", "and"})
_HOW = word_set("very really quite rather pretty fairly")
_LEADING = word_set("a an my the some his her our their your this these with in no one wear wearing")


def of_its_own(found: Understood, lookup: Lookup, read: Read) -> Reading | None:
    """ "May I wear a plain wedding ring", "a thin gold chain": without what it is anyway, or looks like."""
    text = without_its_own(found, lookup)
    again = read(text) if text is not None else None
    if again is not None and again.query is not None and again.query.clause is None:
        return again
    less = without_qualities(found, lookup)
    again = read(less[0]) if less is not None else None
    query = again.query if again is not None else None
    if less is None or again is None or query is None or query.clause is not None or query.value:
        return None
    if query.kind == "may" and query.aspect not in _ACTS:
        return None  # "a thin necklace so long as it is not seen" is asked of more than of being seen
    return msgspec.structs.replace(again, unused=(*less[1], *again.unused))


def without_qualities(found: Understood, lookup: Lookup) -> tuple[str, tuple[str, ...]] | None:
    """The text without such words, and these; None where there are none."""
    cuts = sorted(
        {cut for piece in found.pieces if piece.tag == "item" for cut in _cut(found, piece, lookup)}
    )
    if not cuts:
        return None
    text = found.text
    awards = any(piece.tag == "item" and is_award(piece.arg, lookup) for piece in found.pieces)
    gone = () if awards else tuple(text[start:end] for start, end in cuts)  # whose it is then is taken up
    for start, end in reversed(cuts):
        text = text[:start] + text[end:].lstrip(" ,")
    return text, gone


def _cut(found: Understood, piece: Piece, lookup: Lookup) -> Iterator[tuple[int, int]]:
    """The places in the text of words before a thing that say no more than how it looks or whose it was."""
    item = piece.arg
    if item not in lookup.items:
        return
    own, cuts, named = described(item, lookup), list[Token](), _is_named(found, piece, lookup)
    first = piece.first
    while first and (token := found.tokens[first - 1]):
        kin = is_of_kin(token) and is_anybodys(item, lookup)
        dear = bool(cuts) and is_of_kin(cuts[-1]) and token.low in _DEAR
        if kin or dear or (named and token.low in _ANY and is_idle(token, item, lookup)):
            cuts.append(token)
        elif token.key not in own and not (cuts and token.low in _JOINTS | _HOW):
            break
        first -= 1
    if first and found.tokens[first].low not in _JOINTS and found.tokens[first - 1].low in _LEADING:
        yield from ((token.start, token.end) for token in cuts)


def _is_named(found: Understood, piece: Piece, lookup: Lookup) -> bool:
    """Whether a thing is called by its own name, and not by a word for more than it: "thin gloves"."""
    record = lookup.items[piece.arg]
    said = tuple(token.key for token in found.tokens[piece.first : piece.last])
    names = (record.label, *record.other_labels)
    return not record.protects and any(tuple(t.key for t in tokenize(name)) == said for name in names)


def is_idle(token: Token, item: str, lookup: Lookup) -> bool:
    """Whether a word says nothing of a thing on which any rule turns."""
    words, aspects = _told(item, lookup)
    if token.key in words or token.low in words:
        return False
    kinds = [kind for kind, words in _KINDS.items() if token.low in words]
    label = {word.low for word in tokenize(lookup.items[item].label)}
    if any(kind in kinds and not words.isdisjoint(label) for kind, words in _KINDS.items()):
        return False  # a yellow tie is not the black tie
    return all(
        kind not in lookup.aspects or aspects.isdisjoint({kind, *lookup.aspects_within(kind)})
        for kind in kinds
    )


@lru_cache(maxsize=64)
def _told(item: str, lookup: Lookup) -> tuple[frozenset[str], frozenset[str]]:
    """Words that the books have for what goes by a thing's noun or tells it, and aspects of its clauses."""
    related = {*lookup.broader(item), *lookup.narrower(item)}
    nouns = {_noun(name) for name in _names(item, lookup)}
    alike = {i for i in lookup.items if any(_noun(name) in nouns for name in _names(i, lookup))}
    said = [name for i in related | alike for name in _names(i, lookup)]
    for fact in (f for f in lookup.base.facts if f.family not in ("worn", "term")):
        said += [fact.label, *(name for v in fact.values for name in (v.label, *v.other_labels))]
    rules = lookup.rules_on(related)
    said += [lookup.clauses[clause].text for clause in {rule.clause for rule in rules}]
    words = frozenset(word for text in said for token in tokenize(text) for word in (token.key, token.low))
    beside = (rule for clause in {rule.clause for rule in rules} for rule in lookup.rules_of(clause))
    return words - _OWN, frozenset(rule.aspect for rule in (*rules, *beside))


def _names(item: str, lookup: Lookup) -> tuple[str, ...]:
    record = lookup.items[item]
    return (record.label, *record.other_labels, *record.everyday)


def _noun(name: str) -> str:
    words = tokenize(name)
    return words[-1].key if words else ""


def mere_qualities(reading: Reading, item: str, lookup: Lookup) -> tuple[str, ...] | None:
    """The words that were taken as how a thing is, if it is called so anyway or if no rule turns on them."""
    spans = [span for span in reading.spans if span.role == "aspect" and span.target != "wear"]
    tokens = [token for span in spans for token in tokenize(span.text)]
    if not tokens or {token.key for token in tokens} <= described(item, lookup):
        return () if tokens else None
    things = {span.start for span in reading.spans if span.role == "item" and span.target == item}
    text = reading.question
    before = all(any(text[span.end : start].strip(" ") == "" for start in things) for span in spans)
    idle = all(token.low in _ANY and is_idle(token, item, lookup) for token in tokens)
    return tuple(span.text for span in spans) if before and idle else None
