"""Who may let somebody off a thing: "can the Production Manager let us off the hard hat", "he says he can".

Told by the clause that says who may, or that nobody may. Where a thing protects and a clause says that nobody
is let off it, that is the answer whoever is asked about.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from kb.model.altering import takes_in
from kb.model.conditions import tests
from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Query
from kb.model.records import Case, Clause, Rule, is_in_force
from kb.model.values import intersect, is_empty
from kb.reader.meaning.defined import GRANTABLE
from kb.reader.meaning.superseded import LEAD
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.telling import LIGHT, analysed, clause_words, word_level
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token
from kb.text import Pattern

NONE_SAYS_WHO = "No clause was found that says who may"
"""How a refusal begins where it was asked who gives leave, and no clause tells."""
MODAL = r"(?:can|could|may|might|will|would|is|does|has)"
WHO_CAN = r"(?:can|could|may|might|will|must|should|is|has|(?:has|have|needs|is) to)"
ABLE = r"(?:(?:able|allowed|entitled|free|in a position|have the power|the power|the right) to )?"
SOMEBODY = (
    r"(?:me|us|him|her|them|you|everyone|everybody|anyone|anybody|someone|somebody|people|staff|members?"
    r"|(?:my|our|a|an|the|his|her) \w+|one of (?:us|them|my \w+))"
)
PEOPLE = rf"(?:{SOMEBODY}|(?:[\w'-]+ ){{0,2}}[\w'-]+)"
WITHOUT = (
    r"(?:go without|go out without|do without|work without|leave off|take off|not wear|stop wearing|skip)"
)
LETS = (
    rf"(?:(?:let|sign|release|free|relieve) {PEOPLE} (?:off|from|out of)"
    rf"|(?:excuse|spare|exempt|release) {PEOPLE} from|(?:excuse|spare|exempt|dispense) {SOMEBODY}"
    r"|waive|dispense with"
    rf"|(?:let|allow|permit) {PEOPLE} (?:to )?{WITHOUT}"
    rf"|(?:give|grant) {SOMEBODY} (?:leave|permission|a waiver) (?:to {WITHOUT}|not to wear))"
    r"(?: with| having to)?(?: (?:wear|wearing|put on|putting on))?"
)
_SAYS = r"(?:says?|said|reckons?|thinks?|claims?|told (?:me|us|him|her)|tells (?:me|us)|promised)(?: that)?"
_ASKED = (
    Pattern(
        rf"{LEAD}{MODAL}(?: n't| not)? (?P<who>.+?) (?:even |just |really |ever )?{ABLE}{LETS}"
        r" (?P<thing>.+)"
    ),
    Pattern(rf"{LEAD}who {WHO_CAN} {ABLE}{LETS} (?P<thing>.+)"),
    Pattern(
        rf"(?:.*? (?=the |my |our |an? ))?(?P<who>(?:[\w'-]+ ){{1,5}}?){_SAYS} (?:he|she|they)"
        rf" (?:can|could|will|'ll|may|is|'s) {ABLE}{LETS} (?P<thing>.+?)"
        r"(?: [.?!;,])? (?:so )?(?:(?:can|could|may|will|is) (?:he|she|they|that)|true|right)"
        r"(?: (?:really|right|so|true|correct|do that|do so|allowed(?: to)?(?: do that)?))*"
    ),
)
_CLAIMED = Pattern(
    rf"{LEAD}(?:.*?\b(?:told (?:me|us)|says?|said|reckons?|thinks?|heard)(?: that)? "
    r"|(?:is it (?:true|right|so|correct)|am i right)(?: in thinking)?(?: that)? )?"
    r"(?:nobody|no one|no-one|you|we|i|people|staff)"
    r" (?:(?:can|could|may|must|will|is|are)(?: n't| not| never)?|cannot|can never) (?:ever )?(?:be )?"
    r"(?:let off|excused|exempted|spared|released)(?: from)?(?: (?:wearing|having to wear))?"
    r" (?P<thing>.+?)"
    r"(?: ,? ?(?:whatever|no matter|for any|for whatever) [\w' ]+)?"
    r"(?: [.,;!?-] (?:is (?:that|it) )?(?:so|true|right|correct|yes|is (?:he|she) right))?"
)
"""That nobody is let off a thing, put to be confirmed."""
FREES = Pattern(r"(?i)\b(?:excus|waiv|exempt|let off|leave off|left off|dispens)")
_NOBODY = Pattern(r"(?i)\b(?:no one|nobody|no (?:\w+ )?waivers?|never waived?|not be waived)\b")
_ANYONE = word_set("anyone anybody someone somebody who nobody he she they it i we you")
BESIDE = word_set("""
    fortnight week weeks month months day days shift shifts tonight today tomorrow year years hour hours
    medical religious grounds reasons reason doctor's note once time being few couple two three four
    performance show one work job duty little bit short hot warm heat weather
""")
"""For how long and why: a clause that says who may tells that, too."""


def let_off(found: Understood, case: Case, lookup: Lookup) -> Query | Abstain | None:
    """The clause that says that nobody may be let off what is named, or else who may let somebody off it."""
    tokens = found.tokens[: len(found.tokens) - (found.tokens[-1].low in ("?", ".", "!"))]
    said, lasting = _without_time(in_order(tokens))
    match = next((m for p in (*_ASKED, _CLAIMED) if (m := p.fullmatch(said)) is not None), None)
    if match is None:
        return None
    claimed = match.re is _CLAIMED.compiled
    place = begun(said[: match.start("thing")], found.tokens[lasting:]) + lasting
    named = [p for p in found.pieces if p.tag in ("item", "items")]
    items = [entry.id for p in named if p.first >= place for entry in p.entries if entry.id in lookup.items]
    duty = not named or not _DUTIES.keys().isdisjoint(strange(found, place))
    if duty and match.re in (_ASKED[0].compiled, _ASKED[1].compiled):
        who = [low for low in (match.groupdict().get("who") or "").split() if low not in LIGHT | _ANYONE]
        return _let_off_duty(strange(found, place), who, case, lookup)
    if not items or any(p.first < place for p in named):
        return None
    if len(items) > 1 and sum(p.first >= place for p in named) == 1:
        items = _as_stated(items, found, lookup) or items
    clauses = _freeing(case, lookup)
    before = [p for p in found.pieces if p.first < place]
    if any(p.tag == "fact" and lookup.facts[p.fact].family in GRANTABLE for p in before):
        return None  # what a waiver does, and not what somebody may do
    denied = [_denying(item, clauses, lookup) for item in items]
    if denied[0] and len(denied[0]) == 1 and all(one.keys() == denied[0].keys() for one in denied):
        ((clause, always),) = denied[0].items()
        if not always:
            return Query(kind="source", clause=clause, case=case)
        return Query(kind="source", items=(items[0],), clause=clause, polarity="not", case=case)
    in_part = _denying_some(items, clauses, lookup)
    if claimed:
        return Query(kind="source", clause=in_part[0], case=case) if len(in_part) == 1 else None
    who = [low for low in (match.groupdict().get("who") or "").split() if low not in LIGHT | _ANYONE]
    others = strange(found, place)
    near = [
        c.id
        for c in clauses
        if who and has_words(who, c) and has_words(others, c) and _is_on(items, c, lookup)
    ]
    if not any(denied) and len(near) == 1:
        return Query(kind="source", clause=near[0], case=case)
    if len(in_part) == 1:
        return Query(kind="source", clause=in_part[0], case=case)
    if match.re is _ASKED[1].compiled and len(taking := _taking(items, clauses, lookup)) == 1:
        return Query(kind="source", clause=taking[0], case=case)
    grades = (p for p in before if p.tag == "fact" and lookup.facts[p.fact].family == "grade")
    people = any(grades) or any(p.tag == "authority" for p in before)
    return Abstain(reason=f"{NONE_SAYS_WHO} let anybody off it.") if people else None


def _without_time(said: str) -> tuple[str, int]:
    """ "How long can he let me off it for" as whether he can, and how many words that takes away in front."""
    asked = _HOW_LONG.fullmatch(said)
    return (said, 0) if asked is None else (asked["rest"], len(said[: asked.start("rest")].split()))


_HOW_LONG = Pattern(rf"{LEAD}(?:and )?(?:for )?how long (?P<rest>{MODAL} .+?)(?: for| at most| at a time)?")


def _let_off_duty(words: Sequence[str], who: Sequence[str], case: Case, lookup: Lookup) -> Query | None:
    """ "Who can let a cadet off being clean-shaven": the one clause on waiving that takes in the one duty."""
    words = [duty for word in words for duty in _DUTIES.get(word, (word,))]
    freeing = _freeing(case, lookup)
    duties = [
        clause
        for clause in lookup.base.clauses
        if words and is_in_force(clause, case.as_of) and has_words(words, clause)
        if any(rule.modality in ("must", "must_not") for rule in lookup.rules_of(clause.id))
    ]
    if len(duties) != 1:
        return None
    taking = [
        clause.id
        for clause in freeing
        for sentence in clause.text.split(". ")
        if FREES.search(sentence) and has_words_of(who, sentence)
        if takes_in(sentence, clause, duties[0], protecting=False)
    ]
    found = tuple(dict.fromkeys(taking))
    return Query(kind="source", clause=found[0], case=case) if len(found) == 1 else None


def in_order(tokens: Sequence[Token]) -> str:
    """The words, with "leave my tights off" as "leave off my tights"."""
    return PARTED.sub(r"\1 off \2", " ".join(token.low for token in tokens))


def begun(before: str, tokens: Sequence[Token]) -> int:
    """Where the thing begins, by what is said before it in order: "take ties off" has "off" after it."""
    words = before.split()
    place = len(words)
    parted = words[-1:] == ["off"] and place <= len(tokens) and tokens[place - 1].low != "off"
    return place - parted


PARTED = Pattern(
    r"\b(leave|take) ((?:my|our|his|her|their|the|an?) (?:[\w'-]+ ){0,3}[\w'-]+|(?:[\w'-]+ )?[\w'-]+s) off\b"
)


def nobody_may(items: Sequence[str], case: Case, lookup: Lookup) -> Query | None:
    """The one clause that says that nobody is let off some of the things, as it stands."""
    clauses = _denying_some(items, _freeing(case, lookup), lookup)
    return Query(kind="source", clause=clauses[0], case=case) if len(clauses) == 1 else None


def _freeing(case: Case, lookup: Lookup) -> list[Clause]:
    clauses = (clause for clause in lookup.base.clauses if is_in_force(clause, case.as_of))
    return [clause for clause in clauses if FREES.search(clause.text) is not None]


def _taking(items: Sequence[str], clauses: Sequence[Clause], lookup: Lookup) -> list[str]:
    """The clauses that let people off what some rule on the things wants: "any clause of this book"."""
    own = {
        r.clause for r in lookup.base.rules if r.aspect == "wear" and not {*items}.isdisjoint(r.scope.items)
    }
    return [
        clause.id
        for clause in clauses
        if any(
            FREES.search(sentence) and not _NOBODY.search(sentence)
            for sentence in clause.text.split(". ")
            if any(takes_in(sentence, clause, lookup.clauses[one], protecting=False) for one in own)
        )
    ]


def _as_stated(items: Sequence[str], found: Understood, lookup: Lookup) -> list[str]:
    """Those of the things that are a duty where what is stated is so: "gloves for body fluids"."""
    stated = [(p.fact, p.values) for p in found.pieces if p.tag == "fact" and p.values is not None]
    stated = [(fact, values) for fact, values in stated if lookup.facts[fact].family == "situation"]
    return [
        item
        for item in items
        if any(
            test.fact == fact and not is_empty(intersect(test.values, values))
            for rule in _duties(item, lookup)
            for test in tests(rule.condition)
            for fact, values in stated
        )
    ]


def strange(found: Understood, place: int, end: int | None = None) -> list[str]:
    """The words of the thing that are no name and do not only say for how long or why."""
    names = {i for p in found.pieces if p.tag in _NAMED for i in range(p.first, p.last)}
    rest = (token.low for at, token in enumerate(found.tokens[:end]) if at >= place and at not in names)
    return [low for low in rest if low[0].isalpha() and low not in LIGHT | BESIDE]


_NAMED = frozenset({"item", "items", "fact", "grade", "measure", "number"})


_DUTIES = dict.fromkeys(("shaving", "shave", "razor"), ("clean", "shaven"))
"""What must be done, as the books call it."""


def has_words_of(words: Sequence[str], text: str) -> bool:
    return all(word_level(lemma, analysed(text)) for word in words for lemma in analysed(word))


def has_words(words: Sequence[str], clause: Clause) -> bool:
    said = clause_words(clause)
    return all(word_level(lemma, said) for word in words for lemma in analysed(word))


def _is_on(items: Sequence[str], clause: Clause, lookup: Lookup) -> bool:
    """Whether a clause lets off things in general, or this one: not one that grants a waiver of its own."""
    named = {item for rule in lookup.rules_of(clause.id) for item in rule.scope.items}
    near = {kind for item in items for kind in (*lookup.broader(item), *lookup.narrower(item))}
    general = any(d.clause == clause.id for d in lookup.base.delegations) or _GENERAL.search(clause.text)
    return not named.isdisjoint(near) or bool(general)


_GENERAL = Pattern(r"(?i)\b(?:any|one) (?:(?:one )?item|rule|clause|part)s?\b")


def _denying(item: str, clauses: Sequence[Clause], lookup: Lookup) -> dict[str, bool]:
    """The clauses that say that nobody is let off a thing, each with whether the thing protects.

    One that requires it says so itself, and goes before the others.
    """
    rules = _duties(item, lookup)
    own = dict.fromkeys(rule.clause for rule in rules)
    if named := [clause.id for clause in clauses if _denies_by_name(item, clause, lookup)]:
        return dict.fromkeys(named, True)
    safe = _is_kept(rules) or any(lookup.items[kind].protects for kind in lookup.narrower(item))
    denying: dict[str, bool] = {}
    for clause, taken in _denials(own, clauses, _is_kept(rules), lookup):
        same = [one for one in own if lookup.clauses[one].edition == clause.edition]
        if clause.id in own or taken >= len(same):
            denying[clause.id] = safe  # a duty of another part may be waived
    return {clause: True for clause in denying if clause in own} or denying


def _denies_by_name(item: str, clause: Clause, lookup: Lookup) -> bool:
    """Whether a sentence lets nobody off the thing by its name: "no one may waive the hard hat"."""
    names = [analysed(label) for label in (lookup.items[item].label, *lookup.items[item].other_labels)]
    for sentence in clause.text.split(". "):
        said = _OFF_WHAT.search(sentence) if _NOBODY.search(sentence) else None
        words = f" {' '.join(analysed(said['what']))} " if said is not None else ""
        if any(name and f" {' '.join(name)} " in words for name in names):
            return True
    return False


_OFF_WHAT = Pattern(
    r"(?i)\b(?:waived?|excused?|exempt(?:ed)?|let off|dispense with)(?: from)? (?P<what>[^.;]*)"
)


def _denying_some(items: Sequence[str], clauses: Sequence[Clause], lookup: Lookup) -> list[str]:
    """The clauses that say that nobody is let off some duty to wear one of the things."""
    found: dict[str, None] = {}
    for item in items:
        rules = _duties(item, lookup)
        own = dict.fromkeys(rule.clause for rule in rules)
        found |= {clause.id: None for clause, _ in _denials(own, clauses, _is_kept(rules), lookup)}
    return list(found)


def _duties(item: str, lookup: Lookup) -> list[Rule]:
    kinds = set(lookup.narrower(item))
    rules = (r for r in lookup.base.rules if r.modality == "must" and r.aspect == "wear")
    return [rule for rule in rules if not kinds.isdisjoint(rule.scope.items)]


def _is_kept(rules: Sequence[Rule]) -> bool:
    return any(rule.non_derogable for rule in rules)


def _denials(
    own: Iterable[str], clauses: Sequence[Clause], kept: bool, lookup: Lookup
) -> Iterator[tuple[Clause, int]]:
    """The clauses with a sentence that lets nobody off some of the `own` ones, and off how many of them."""
    for clause in clauses:
        for sentence in clause.text.split(". "):
            if _NOBODY.search(sentence) and FREES.search(sentence):
                taken = sum(takes_in(sentence, clause, lookup.clauses[one], kept) for one in own)
                if taken:
                    yield clause, taken
