"""How often a thing is replaced: told by the clause that says so of it, or by none.

A clause that issues a thing and says of another how often it is replaced does not tell it.
"""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Clause, is_in_force
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.let_off import strange
from kb.reader.recast.telling import analysed
from kb.reader.words.forms import word_set
from kb.text import Pattern

_ASKED = Pattern(
    r"(?:so |and |but )?how often (?:do|does|can|will|should|are|is|must) "
    r"(?:.+ (?:get|have|receive|given|issued)\b.* (?:new|fresh|another|replacement)\b.+"
    r"|.+ (?:be |get |gets )?(?:replaced|renewed|exchanged|swapped|reissued"
    r"|changed(?: for (?:a )?new(?: ones?)?)?)"
    r"|(?:i|we|you|they|he|she|one|people) (?:have to |need to |get to |ought to )?(?:replace|renew|exchange"
    r"|swap|change) .+)(?: \?)?"
)
_CHANGED = Pattern(r"\bchanged?\b(?! for\b)")
"""Which may be of a fresh one after each wear, too."""
_ASKING = word_set("""
    often new fresh another replacement replaced renewed swapped reissued receive given issued pair set pairs
    ones changed change replace renew swap exchange exchanged
""")
_ANEW_SAID = (
    r"\b(?:replac|renew)\w*|\bworn out\b(?! (?:of|in)\b)"
    r"|\b(?:issued|receives?|given|gets?)\b.*\b(?:every|each) (?:\w+ )?(?:months?|years?)\b"
)
_TELLS = Pattern(rf"(?i){_ANEW_SAID}")
_FRESH = Pattern(rf"(?i){_ANEW_SAID}|\bchang(?:ed?|es|ing)\b")
_IT = Pattern(r"(?i)\s*(?:it|they|this|these|one|each)\b")
_OF_A_CLAUSE = Pattern(
    r"(?i)\b(?:clauses?|sentences?|paragraphs?|figures?|words?)\b[^:]{0,40}?\b(?:is|are) replaced\b"
)
_EVERYTHING = Pattern(r"(?i)\b(?:they|all|everything|other|others|rest|each|these)\b")


def how_often(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The clause that says how often the one thing is replaced, or the query that no clause does."""
    said = " ".join(token.low for token in found.tokens)
    if _ASKED.fullmatch(said) is None:
        return None
    changed = _CHANGED.search(said) is not None
    named = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    if len(named) != 1 or not set(strange(found, 0)) <= _ASKING:
        return None
    items = [entry.id for entry in named[0].entries if entry.id in lookup.items]
    clauses = [clause for clause in lookup.base.clauses if is_in_force(clause, case.as_of)]
    telling = [
        clause.id for clause in clauses if any(tells_of(item, clause, lookup, changed) for item in items)
    ]
    if len(telling) == 1:
        return Query(kind="source", clause=telling[0], case=case)
    if (
        telling
        or changed
        or len(items) != 1
        or any(_may_tell(items[0], clause, lookup) for clause in clauses)
    ):
        return None
    return Query(kind="source", items=(items[0],), polarity="not", case=case)


def tells_of(item: str, clause: Clause, lookup: Lookup, changed: bool = False) -> bool:
    """Whether a sentence on replacing names the thing, a class of it or all that is issued with it.

    `changed`: or one on changing it for a fresh one.
    """
    telling = _FRESH if changed else _TELLS
    issued = last = False
    for sentence in clause.text.replace("; ", ". ").split(". "):
        names = names_in(item, sentence, lookup)
        told = telling.search(sentence) is not None and _OF_A_CLAUSE.search(sentence) is None
        meant = names or (last and _IT.match(sentence) is not None)  # "The helmet ... It is replaced"
        if told and (meant or (issued and _EVERYTHING.search(sentence) is not None)):
            return True
        issued, last = issued or names, meant
    return False


def _may_tell(item: str, clause: Clause, lookup: Lookup) -> bool:
    """Whether a sentence with the name of a thing, or of kit as such, may tell it in words of its own."""
    sentences = clause.text.replace("; ", ". ").split(". ")
    if names_in(item, clause.text, lookup) and any(
        _ANEW.search(sentence) and _IT.match(sentence) for sentence in sentences
    ):
        return True
    return any(
        (_SOMEHOW.search(sentence) and names_in(item, sentence, lookup))
        or (_ANEW.search(sentence) and _OF_ALL.search(sentence))
        for sentence in sentences
    )


_ANEW = Pattern(r"(?i)\b(?:replac|renew|exchang)\w*|\bworn[ -]out\b(?! (?:of|in)\b)")
_OF_ALL = Pattern(
    r"(?i)\b(?:kit|items?|uniform|garments?|clothing|clothes|everything|equipment|gear|pieces?|all)\b"
)
_SOMEHOW = Pattern(
    r"(?i)\b(?:exchang\w+|swap\w*|new (?:one|pair|set)s?|scrap\w*|discard\w*|thrown|months?|years?|yearly"
    r"|annually|expir\w+|condemned|worn (?:through|thin)|damaged|inspect\w*)\b"
)


def names_in(item: str, sentence: str, lookup: Lookup, wide: bool = True) -> bool:
    """Whether a sentence has a name of the thing, or the last word of it: "boots are replaced".

    `wide`: or a name of what it is a kind of.
    """
    said = f" {' '.join(analysed(sentence))} "
    near = {*lookup.broader(item), *lookup.narrower(item)}
    for other in lookup.base.items:  # "white boots are replaced" says nothing of yard boots
        for label in (other.label, *other.other_labels) if other.id not in near else ():
            words = analysed(label)
            said = said.replace(f" {' '.join(words)} ", " , ") if len(words) > 1 else said
    for kind in (item, *lookup.broader(item)) if wide else (item,):
        record = lookup.items[kind]
        for label in (record.label, *record.other_labels, *record.everyday):
            words = analysed(label)
            if words and (f" {' '.join(words)} " in said or f" {words[-1]} " in said):
                return True
    return False
