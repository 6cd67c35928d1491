"""What a thing is worn for: "what's it for?", "what is the waistcoat for anyway?", told by the clause on it.

Only of what protects, where one clause in force that has it worn tells in a sentence what it does.
"""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Clause, is_in_force
from kb.reader.talks.talked import Talk, item_alone
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_WHAT_FOR = Pattern(
    r"(?i)(?:(?:and|but|so|ok|okay)[ ,]+)*(?:"
    r"what(?:['\u2019]?s| is| are|['\u2019]?re) (?P<thing>.{2,50}?)(?: (?:actually|really|even|all))*"
    r" (?:meant to be )?for(?: (?:anyway|anyhow|exactly|then|though|really))*|"
    r"what(?:['\u2019]?s| is) the (?:point|purpose|use) of (?:wearing )?(?P<other>.{2,50}?)"
    r"(?: (?:anyway|anyhow|exactly|then|though))*|"
    r"what (?:does|do|will|would) (?P<third>.{2,50}?) (?:protect|save|guard|shield)"
    r"(?: (?:me|us|you|one|against|from|anyone))*)\W*"
)
_TELLS = Pattern(
    r"(?i)\b(?:protect(?:s|ion)?|against|from being|to (?:be seen|save|keep|prevent|avoid|stop|guard)|"
    r"so that|because of|save[sd]?|guards?|shields?|saved from)\b"
)
_SENTENCE = Pattern(r"(?<=[.;]) +")


def what_for(text: str, previous: Reading | None, talk: Talk) -> Reading | None:
    """The clause that tells what the thing is for that a turn names, or that the one before was of."""
    found = _WHAT_FOR.fullmatch(text.strip())
    if found is None:
        return None
    said = found["thing"] or found["other"] or found["third"]
    before = (previous.frame or previous.query) if previous is not None else None
    item = item_alone(said, talk.lexicon, talk.lookup)
    if said.casefold() in _IT and before is not None and len(before.items) == 1:
        item = before.items[0]
    query = told_by_purpose(item, talk.case, talk.lookup) if item is not None else None
    return talk.made(text, query) if query is not None else None


_IT = frozenset({"it", "that", "this", "they", "those", "these", "them"})


def told_by_purpose(item: str, case: Case, lookup: Lookup) -> Query | None:
    """The one clause in force that has the thing worn and tells what it protects from; else None."""
    if not lookup.items[item].protects:
        return None
    wide = {item, *lookup.broader(item)}
    ruled = {rule.clause for rule in lookup.rules_on(wide) if rule.modality == "must"}
    clauses = [lookup.clauses[one] for one in sorted(ruled) if is_in_force(lookup.clauses[one], case.as_of)]
    telling = [one for one in clauses if _tells(one, item, lookup)]
    return Query(kind="source", clause=telling[0].id, case=case) if len(telling) == 1 else None


_POINTING = frozenset({"it", "they", "this", "these", "the"})


def _tells(clause: Clause, item: str, lookup: Lookup) -> bool:
    """Whether a sentence that names the thing, or one after it that names no other, tells what it is for."""
    names = (lookup.items[item].label, *lookup.items[item].other_labels)
    own = {token.key for name in names for token in tokenize(name)}
    named = False
    for sentence in _SENTENCE.split(clause.text):
        keys = {token.key for token in tokenize(sentence)}
        opens = bool(sentence) and sentence.split()[0].casefold() in _POINTING
        has = not own.isdisjoint(keys)
        if _TELLS.search(sentence) and (has or (named and opens)):
            return True
        named = named or has
    return False
