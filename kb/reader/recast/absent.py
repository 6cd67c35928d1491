"""What is told to be at rest, or to go on, where the rules of the thing ask for it: "nobody's grinding",
"nothing is being heated", "the set's off", "beside a lathe that's turning".

Each is put as the books' own name for it, and only where one fact on which the rules of the thing rest is
meant. Read only for a text that is not understood as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set
from kb.reader.words.machines import MACHINERY, MACHINES
from kb.reader.words.tokens import tokenize, word_key
from kb.reader.words.turned import KINDS
from kb.text import Pattern

Edit = tuple[int, int, str]
_NOBODY = (
    r"(?:(?:with |there(?:['’]s| is) )?(?:nobody|no one|no-one|no body|not one of (?:us|them|you)"
    r"|none of (?:us|them|you|my \w+|the \w+))(?:(?: else)?(?:['’]s| is| are| was| were| has been))?"
    r"(?: (?:here|there|currently|actually|really|even|now|still|around|else))*)"
)
_BEING = r"(?:['’](?:s|re)| (?:is|are|was|were|has been|have been))?(?: (?:now|still|currently))*"
_NOTHING = r"(?:there(?:['’]s| is) )?(?:nothing|not a thing|none of (?:it|them|this|that))"
_THERE = r"(?:(?:with|there(?:['’]s|['’]re| is| are)) )?"
_OWN = r"(?:(?:all )?(?:the|my|our|your|his|her|their|its|any|all|this|that|those|these|both|each|every) )?"
_IS = (
    r"(?:['’](?:s|re)|,? (?:that['’]s|which is|is|are|was|were|has|have|stays?))"
    r"(?: (?:now|been|all|both|currently|already|still|completely|safely|fully|just|actually|being))*"
)
_AFTER = r"(?=\s*(?:[.,;:!?–—-]|$|(?:and|but|so|in|at|for|near|when|now|today|while|do|does|must|can|may)\b))"
_OFF = (
    r"(?:(?:switched|turned|shut|powered|closed) (?:off|down)|off|stopped|standing (?:still|idle)|stationary"
    r"|silent|idle|at rest|at a standstill|dead|unplugged|isolated|locked off|parked(?: up)?|finished"
    r"|(?:not|n['’]t) (?:on|going|turning|running|in use|working|moving|switched on))"
)
_ON = (
    r"(?:(?:switched|turned) on|turning over|turning|going|running|humming|ticking over|roaring|spinning"
    r"|moving|in use|in motion|on|live|whirring|churning|rotating|going round|on the move)"
)
_MOVING = r"(?:moving|running|turning|switched on|on the move|in motion|going round)"
_RUNNING = word_set("running moving turning on working")
_CONTRARY = {
    "lit": (r"lit|burning|alight|going", r"(?:out|unlit|cold|dead|gone out|off|(?:not|n['’]t) (?:lit|on))"),
    "up": (r"up|flying|hoisted|raised", r"(?:down|lowered|hauled down|(?:not|n['’]t) (?:up|flying))"),
} | dict.fromkeys(_RUNNING, (_ON, _OFF))
"""For the last word of the name of a state what is said of it, and what is said of its contrary."""
_LIGHT = word_set(
    "any or other near within reach of a an the with its is are while it at to by in being visitor public"
)
_LED = word_set("near within at in on under below behind beneath beside over")
_UNSURE = Pattern(r"(?i)\b(?:unless|until|till|before|not that|isn['’]t|aren['’]t|is|are|was|were)\W*$")
_FORMS = {"sold": "sell", "cut": "cut", "fed": "feed", "run": "run", "held": "hold", "ground": "grind"}


def absent(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """Start, end and the books' words of each such stretch of a text."""
    low = found.text.casefold()
    if not any(word in low for word in _TRIGGERS):
        return
    facts = _tested(found, lookup)
    yield from _nobody(found, lookup)
    yield from _undone(found, facts)
    yield from _states(found, facts)


_TRIGGERS = (
    *("nobody", "no one", "no-one", "nothing", "none", "no ", "not ", "n't", "n’t", "off", "stopped", "idle"),
    *("still", "everything", "dead", "that's ", "that’s ", "which is", "out", "down", "isolated", "silent"),
)


@cache
def _compiled(source: str) -> Pattern:
    return Pattern(rf"(?<![\w'’-])(?:{source})(?![\w’-])", re.IGNORECASE)


def _matches(source: str, found: Understood) -> Iterator[re.Match[str]]:
    for match in _compiled(source).finditer(found.text):
        if not _UNSURE.search(found.text[: match.start()]):
            yield match


def _tested(found: Understood, lookup: Lookup) -> list[Fact]:
    """The circumstances on which the rules of the things that are named rest."""
    named = {entry.id for p in found.pieces if p.tag in ("item", "items") for entry in p.entries}
    covering = {broad for item in named for broad in lookup.broader(item)}
    rules = [r for r in lookup.base.rules if not named or not covering.isdisjoint(r.scope.items)]
    if named and any(rule.residual for rule in rules):
        rules = [rule for rule in rules if rule.modality != "must"]  # what no duty is left of would be closed
    facts = (lookup.facts[name] for name in dict.fromkeys(t.fact for r in rules for t in tests(r.condition)))
    return [f for f in facts if f.family in ("situation", "term") and f.kind == "yes_no"]


def _nobody(found: Understood, lookup: Lookup) -> Iterator[Edit]:
    """ "Nobody's heating anything": we are not."""
    doing = {
        found.tokens[piece.first].start
        for piece in found.pieces
        if piece.tag == "fact"
        and lookup.facts[piece.fact].family in ("situation", "term")
        and found.tokens[piece.first].low.endswith("ing")
    }
    for match in _matches(rf"{_NOBODY}(?= \w)", found):
        if match.end() + 1 in doing:
            yield match.start(), match.end(), "we are not"


def _undone(found: Understood, facts: list[Fact]) -> Iterator[Edit]:
    """ "Nothing is being heated", "no stone being moved": of what the books have as being done."""
    doings = [
        (fact, keys, keys - _LIGHT)
        for fact in facts
        for tokens in map(tokenize, (fact.label, *fact.other_labels))
        for keys in ({token.key for token in tokens},)
        if any(_DOING.search(token.low) for token in tokens)
    ]
    pattern = (
        rf"(?:{_NOTHING}|{_THERE}no (?P<what>[\w-]+(?: [\w-]+)?)){_BEING} being (?P<done>[\w-]+)"
        r"(?: (?:at the moment|just now|right now|today|here|there|yet))*"
    )
    for match in _matches(pattern, found):
        done = match["done"].casefold()
        verb = word_key(_FORMS.get(done, done))
        what = {token.key for token in tokenize(match["what"] or "")}
        meant = {
            fact.id: fact
            for fact, keys, rest in doings
            if (any(_same(key, verb) for key in keys) and (not what or what & rest))
            or (what & rest and done in _ANYHOW)
        }
        if len(meant) == 1:
            yield match.start(), match.end(), _denial(next(iter(meant.values())))


_DOING = Pattern(r"^(?!during|evening|morning|wedding|building|clothing)\w{2,}ing$|^progress$")
_ANYHOW = word_set("moved shifted handled worked used done touched")
"""What is done to a thing whatever is done to it."""


def _same(one: str, other: str) -> bool:
    """Whether two verbs are one, whatever their endings: "heating", "heated"."""
    stems = [re.sub(r"(?:ing|ed|e|en)$", "", word) for word in (one, other)]
    return stems[0] == stems[1] or stems[0].rstrip(stems[0][-1:]) == stems[1].rstrip(stems[1][-1:]) != ""


def _states(found: Understood, facts: list[Fact]) -> Iterator[Edit]:
    """ "The set's off", "nothing moving", "everything's switched off", "by a lathe that's turning"."""
    known: dict[str, tuple[Fact, str, frozenset[str]]] = {}
    for fact in facts:
        for name in (fact.label, *fact.other_labels):
            if (state := _state(name)) is not None and fact.id not in known:
                asked = re.match(
                    rf"(?i)(?:is|are) (.+?) {state[0]}\b", fact.ask
                )  # "is the chaff cutter or ..."
                more = {token.key for token in tokenize(asked[1])} - _LIGHT if asked else set()
                known[fact.id] = (fact, state[0], state[1] | {noun for noun in more if noun.isalpha()})
    for fact, word, subjects in known.values():
        on, off = _CONTRARY[word]
        nouns = "|".join(sorted({f for s in subjects for f in (re.escape(s), re.escape(s) + "s")}))
        near = r"(?:(?:right |just )?(?:by|beside|near|next to|close to|at|alongside) )?(?:a |an |some )?"
        it = rf"{near}{_OWN}(?:[\w-]+ )?(?:{nouns})"
        put = _denial(fact)
        for match in _matches(rf"{it}{_IS}? ?{off}{_AFTER}", found):
            yield match.start(), match.end(), put
        for match in _matches(rf"{it}{_IS} (?:{on}){_AFTER}", found):
            yield match.start(), match.end(), fact.label
    running = [fact for fact, word, _ in known.values() if word in _RUNNING]
    if running:
        put = " and ".join(map(_denial, running))
        at_rest = (
            rf"(?:{_THERE}{_NOTHING}|{_THERE}no \w+){_BEING} {_MOVING}(?: (?:near|by|around) (?:me|us|here))?"
        )
        every = rf"(?:everything|it['’]s all|it all|the lot){_IS}? ?{_OFF}{_AFTER}"
        for match in (*_matches(at_rest, found), *_matches(every, found)):
            yield match.start(), match.end(), put


def _state(name: str) -> tuple[str, frozenset[str]] | None:
    """The word for the state that a name tells of, and the nouns of what is in it."""
    lows = [token.low for token in tokenize(name)]
    word = next((low for low in lows if low in _CONTRARY), None)
    if word is None or (word in ("on", "up") and lows[-1] != word):
        return None
    nouns = {word_key(low) for low in lows} - _LIGHT - {word_key(word), word}
    if nouns & (MACHINERY | MACHINES):
        nouns |= MACHINES | MACHINERY
    for row in KINDS.strip().splitlines():
        head, _, kinds = row.partition(": ")
        nouns |= word_set(kinds) if head in nouns else frozenset()
    return word, frozenset(noun for noun in nouns if noun.isalpha())


def _denial(fact: Fact) -> str:
    first = fact.label.casefold().split()[0]
    return f"{'not' if first in _LED or first.endswith('ing') else 'no'} {fact.label}"
