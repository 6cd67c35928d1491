"""How far a thing reaches, or how several are arranged, where the books say it in words, not as a measure.

"How low may the cap be pulled", "my skirt ends 70 mm above the knee", "side by side or what": what they ask
is told by a way of wearing of the one thing named ("hemmed between 20 mm above and 60 mm below the knee").
That way is shown, for a number in it is none that could be judged.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Rule, is_in_force
from kb.reader.meaning.query import said_case
from kb.reader.names.spelling import akin
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.recast.gauge import is_light, same_words, stated
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_FAR = Pattern(
    r"\bhow (?:far|low|high|short|long|deep|close)\b|\b(?:up|down|as far as) (?:to )?where\b|\bto where\b"
    r"|\bwhere (?:do|does|should|must|may|can) .*\b(?:up|down|come|reach|go|end|stop|finish)"
    r"(?: up| down)? to\b"
    r"|\bwhere (?:do|does|should|must|may|can) .*\b(?:end|ends|stop|stops|finish|finishes)\b"
)
_REACHING = word_set("above below lower higher reach reaching hemmed ending finishing mid short height")
_TO = Pattern(r"\b(?:buttoned|closed|fastened|laced|zipped|up|down|hemmed) to the \w")
_ROWS = Pattern(
    r"\bside by side\b|\b(?:one|a|two|three|single|straight|\d) rows?\b|\brows?\b|\boverlap\w*\b|\bapart\b"
    r"|\b(?:next to|beside|above|below|under|over|on top of) (?:each other|one another|another)\b"
    r"|\bone (?:above|below|under|over|beside) (?:the other|another)\b|\bstack(?:ed)?\b|\bspaced?\b"
)
_ROW_KEYS = word_set("row side overlap apart space another gap innermost")
_ROW_WORDS = word_set("""
    side by row one two three four five single straight overlap overlapping overlapped apart next beside each
    other another stack stacked space spaced line together closely touching or what wide more many hang
""")
_OWN_LIGHT = word_set("too all that any as for or so only")
_WITHIN = frozenset({"fit", "construction", "fastening"})
_PLAIN = tag_set("item, items, measure")


def in_words(found: Understood, roles: Roles, case: Case, lookup: Lookup) -> Query | None:
    """How the one thing must be worn, or the clause; None where no way of wearing it tells what is asked."""
    text = " ".join(token.low for token in found.tokens)
    rows = _ROWS.search(text) is not None
    claims = any(piece.tag == "measure" for piece in found.pieces)
    up = " long " not in text  # how far up a coat is buttoned does not say how long it is
    if not (rows or claims or _FAR.search(text)) or roles.clashing:
        return None
    named = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    if not named or not named[0].entries:
        return None
    words = [word for piece in found.pieces for word in _weighty(piece, found, rows)]
    if claims and not rows and (not words or _is_measured(named[0], case, lookup)):
        return None  # "a cap of 30 mm" is of its size
    beside = [word for piece in named[1:] for word in _keys(*_texts(piece, found))]
    rules = [
        rule
        for rule in _ways(named[0], case, lookup)
        if all(_is_said(word, rule, lookup) for word in (*words, *beside)) and _tells(rule, rows, up, lookup)
    ]
    if len({rule.clause for rule in rules}) != 1:
        return None
    said = said_case(case, roles, lookup)
    things = {item for rule in rules for item in rule.scope.items}
    manners = {lookup.aspects[rule.aspect].within for rule in rules}
    if len(things) > 1 or len(manners) > 1 or any(rule.scope.excluding for rule in rules):
        return Query(kind="source", clause=rules[0].clause, case=case)
    return Query(kind="how", items=(things.pop(),), aspect=manners.pop() or "fit", case=said)


def _weighty(piece: Piece, found: Understood, rows: bool) -> Iterator[str]:
    if piece.tag in _PLAIN or stated(piece):
        return
    for token in found.tokens[piece.first : piece.last]:
        light = is_light(token.low) or token.key in _OWN_LIGHT or (rows and token.key in _ROW_WORDS)
        if not light and token.low.isalpha():
            yield token.key


def _texts(piece: Piece, found: Understood) -> Iterator[str]:
    yield found.text[found.tokens[piece.first].start : found.tokens[piece.last - 1].end]


def _keys(*texts: str) -> set[str]:
    return {token.key for text in texts for token in tokenize(text)}


def _is_said(word: str, rule: Rule, lookup: Lookup) -> bool:
    """Whether a word is of a way of wearing, or of what it is of."""
    items = (lookup.items[item].label for item in rule.scope.items)
    said = _keys(lookup.aspects[rule.aspect].label, *items)
    return bool(same_words(word) & said) or any(akin(word, other) for other in said)


def _tells(rule: Rule, rows: bool, up: bool, lookup: Lookup) -> bool:
    """Whether a way says how far a thing reaches, or how several are arranged."""
    label = lookup.aspects[rule.aspect].label
    if rows:
        return not _keys(label).isdisjoint(_ROW_KEYS)
    return (up and _TO.search(label) is not None) or not _REACHING.isdisjoint(
        token.low for token in tokenize(label)
    )


def _is_measured(subject: Piece, case: Case, lookup: Lookup) -> bool:
    """Whether the books measure a thing from something, so that what is told of it can be judged."""
    near = {one for entry in subject.entries for one in lookup.broader(entry.id)}
    return any(
        rule.value.measure is not None and rule.value.measure.datum is not None
        for rule in lookup.rules_on(near)
        if is_in_force(rule, case.as_of)
    )


def _ways(subject: Piece, case: Case, lookup: Lookup) -> Iterator[Rule]:
    """The rules in force that say in what way a thing is worn."""
    near = {one for entry in subject.entries for one in lookup.broader(entry.id)}
    for rule in lookup.base.rules:
        aspect = lookup.aspects[rule.aspect]
        of_it = not near.isdisjoint(rule.scope.items) and rule.modality in ("must", "may")
        if of_it and aspect.kind == "act" and aspect.within in _WITHIN and is_in_force(rule, case.as_of):
            yield rule
