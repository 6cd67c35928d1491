"""How often a thing is replaced: told by the clause that says so of it, or by none.

A clause that issues a thing and says of another how often it is replaced does not tell it.
"""

from __future__ import annotations

from collections.abc import Collection

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Clause, is_in_force
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.let_off import strange
from kb.reader.recast.telling import analysed
from kb.reader.words.forms import word_set
from kb.text import Pattern

_ASKED = Pattern(
    r"(?:so |and |but )?(?:when (?=(?:do|does|can|will|should) .+ (?:get|receive|given|issued)(?: with)?"
    r" (?:an? |my |our |some )?(?:new|fresh) )|how often )(?:do|does|can|will|should|are|is|must) "
    r"(?:.+ (?:get|have|receive|given|issued|give (?:me|us|you|people))\b.* (?:new|fresh|another"
    r"|replacement)\b.+"
    r"|.+ (?:be |get |gets )?(?:replaced|renewed|exchanged|swapped|reissued"
    r"|changed(?: for (?:a )?new(?: ones?)?)?)"
    r"|(?:i|we|you|they|he|she|one|people) (?:have to |need to |get to |ought to )?(?:replace|renew|exchange"
    r"|swap|change) .+)(?: \?)?"
)
_PROVIDED = frozenset({"if", "provided", "assuming", "unless"})
"""What comes after such a word says how it has been kept, and no thing more: "if I don't rip them"."""
_OPENING = 3  # words in which a question begins
_CHANGED = Pattern(r"\bchanged?\b(?! for\b)")
"""Which may be of a fresh one after each wear, too."""
_ASKING = word_set("""
    when often new fresh another replacement replaced renewed swapped reissued receive give given issued pair
    set pairs me us you people ones changed change replace renew swap exchange exchanged
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
_EVERYTHING = Pattern(r"(?i)^\W*(?:they|each|these)\b|\b(?:all|everything|others?|rest)\b")
"""All that was issued: "shoes are replaced each year" is of shoes, and "if they leak" of what leaks."""


def how_often(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The clause that says how often the one thing is replaced, or the query that no clause does."""
    lows = [token.low for token in found.tokens]
    end = next((at for at, low in enumerate(lows) if low in _PROVIDED and at > _OPENING), len(lows))
    said = " ".join(lows[:end])
    if _ASKED.fullmatch(said) is None:
        return None
    changed = _CHANGED.search(said) is not None
    named = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    if len(named) != 1 or named[0].first >= end or not set(strange(found, 0, end)) <= _ASKING:
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
        names = names_in(item, sentence, lookup) and not _is_of_another(item, clause, lookup)
        told = telling.search(sentence) is not None and _OF_A_CLAUSE.search(sentence) is None
        meant = names or (last and _IT.match(sentence) is not None)  # "The helmet ... It is replaced"
        if told and (meant or (issued and _EVERYTHING.search(sentence) is not None)):
            return True
        issued, last = issued or names, meant
    return False


def _is_of_another(item: str, clause: Clause, lookup: Lookup) -> bool:
    """Whether a clause is on another thing of the same noun: "trousers with a cut" are those it is about."""
    near = {*lookup.broader(item), *lookup.narrower(item)}
    ruled = {one for rule in lookup.rules_of(clause.id) for one in rule.scope.items}
    said = f" {' '.join(analysed(clause.text))} "
    if not near.isdisjoint(ruled) or any(name in said for name in _names(item, lookup)):
        return False
    nouns = {name.split()[-1] for name in _names(item, lookup)}
    others = (name for one in ruled if one in lookup.items for name in _names(one, lookup))
    return any(len(name.split()) > 1 and name.split()[-1] in nouns and name in said for name in others)


def _names(item: str, lookup: Lookup) -> list[str]:
    """The names of a thing as the words of a text are taken, each between spaces."""
    record = lookup.items[item]
    labels = (analysed(label) for label in (record.label, *record.other_labels))
    return [f" {' '.join(words)} " for words in labels if words]


def _may_tell(item: str, clause: Clause, lookup: Lookup) -> bool:
    """Whether a sentence with the name of a thing, or of kit as such, may tell it in words of its own."""
    sentences = clause.text.replace("; ", ". ").split(". ")
    near = {*lookup.broader(item), *lookup.narrower(item)}
    if names_in(item, clause.text, lookup) and any(
        _ANEW.search(sentence) and _IT.match(sentence) for sentence in sentences
    ):
        return True
    plain = [_OF_A_CLAUSE.sub(" ", sentence) for sentence in sentences]  # "clause 2.6 is replaced"
    return any(
        (_SOMEHOW.search(sentence) and names_in(item, _OF_ALL.sub(" ", sentence), lookup))
        or (_ANEW.search(sentence) and is_of_all(sentence, near, lookup))
        for sentence in plain
    )


_ANEW = Pattern(r"(?i)\b(?:replac|renew|exchang)\w*|\bworn[ -]out\b(?! (?:of|in)\b)")
_OF_ALL = Pattern(
    r"(?i)\b(?:kit|items?|uniform|garments?|clothing|clothes|everything|equipment|gear|pieces?|all)\b"
)
_SOMEHOW = Pattern(
    r"(?i)\b(?:exchang\w+|swap\w*|new (?:one|pair|set)s?|scrap\w*|discard\w*|thrown|months?|years?|yearly"
    r"|annually|expir\w+|condemned|worn (?:through|thin)|damaged|inspect\w*)\b"
)


def is_of_all(sentence: str, near: Collection[str], lookup: Lookup) -> bool:
    """Whether a sentence names kit as such, and not in another thing's name: "high-visibility garments"."""
    low = sentence.casefold()
    others = {
        label.casefold()
        for other in lookup.base.items
        for label in ((other.label, *other.other_labels) if other.id not in near else ())
        if len(label.split()) > 1
    }
    said = (low[: match.end()].removesuffix("s") for match in _OF_ALL.finditer(low))
    return any(not any(before.endswith(label) for label in others) for before in said)


def names_in(item: str, sentence: str, lookup: Lookup, wide: bool = True) -> bool:
    """Whether a sentence has a name of the thing, or the last word of it: "boots are replaced".

    `wide`: or a name of what it is a kind of.
    """
    said = f" {' '.join(analysed(sentence))} "
    near = {*lookup.broader(item), *lookup.narrower(item)}
    for other in lookup.base.items:  # "white boots are replaced" says nothing of yard boots
        for name in _names(other.id, lookup) if other.id not in near else ():
            said = said.replace(name, " , ") if len(name.split()) > 1 else said
    for kind in (item, *lookup.broader(item)) if wide else (item,):
        record = lookup.items[kind]
        for label in (record.label, *record.other_labels, *record.everyday):
            words = analysed(label)
            if words and (f" {' '.join(words)} " in said or f" {words[-1]} " in said):
                return True
    return False
