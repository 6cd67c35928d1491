"""Everyday words for what the clauses of a rule book say of procedure: "hand back" for "return".

A line is a class of words that stand for each other; only inflections are left out. Words of more than one
sense stand in the class that rules of dress use them in.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache

from kb.keywords import lemma
from kb.reader.words.tokens import Token

_SENSES = """
grant give issue approve sign authorise award confer excuse exempt let allow permit
return surrender restore back
report tell inform notify announce declare
last run valid good expire endure lapse spent
strict stricter tough tougher harsh harsher severe severer tight tighter hard harder
lenient mild milder relax relaxed soft softer loose looser easy easier lax
depart deviate vary differ change
prevail overrule precedence
pay paid charge cost bill bear
lose lost missing mislay mislaid loss
join enlist recruit enrol
leave quit resign retire discharge leaver
keep retain return
order command instruct direct
decide settle judge resolve answer
disagree differ differently dispute opinion argue quarrel
inspect inspection check examine
write written writing paper document
replace exchange swap renew
worn old tattered shabby ragged
mix mixed combine mingle blend
prevail precede win outrank override
doctor physician medic
lend lent borrow loan
mark label name
shorten alter alteration tailor cut
cleaner clean cleaning wash laundry
own have possess
bind bound apply govern
follow obey comply observe
bind bound follow obey
amend amendment revise revision change
purpose aim reason object
visitor guest contractor outsider stranger
name appoint choose pick select nominate elect
choose pick select decide
fault carelessness negligence blame careless negligent
cost price pay money
concern affect
refuse reject deny decline refusal
appeal challenge complain
show produce present display see view
see look
get receive
buy purchase
supply provide issue
beforehand before advance
grow grown grew
outside outdoors outdoor
free freed exempt excuse remove release relieve
clash conflict disagree
fine penalty punish punishment
lengthen extend prolong extension
dispute doubt question unsure unclear
permission leave consent approval authority word
harm danger injury accident
ask request
send sent submit forward
copy posted hang
begin start commence
end finish cease
often frequently
month monthly
year yearly annual annually
week weekly
day daily
soon within
state condition
person someone somebody anybody
stricter tougher
carry carried
protect protection safe safety
need require
decision ruling
differences quarrel
question asked
"""
_PHRASES = """
hand back = return
hand in = return
hand over = return
give back = return
give up = return
bring back = return
send back = return
turn in = return
take back = return
hang on to = keep
hang onto = keep
hold on to = keep
hold onto = keep
let know = tell
apply for = request
put in for = request
sign off = sign
in force = valid
go before = prevail
goes before = prevail
come before = prevail
comes before = prevail
come first = prevail
comes first = prevail
take precedence = prevail
take priority = prevail
wear out = worn out
worn out = worn out
get out of = excuse
let off = excuse
give way = prevail
in writing = written
for good = forever
for life = forever
for ever = forever
without limit = forever
not expire = forever
put right = right
carry on = continue
as before = continue
out of doors = outdoors
nobody can tell = doubt
no one can tell = doubt
say why = reason
state why = reason
tell why = reason
give a reason = reason
stick to = apply
look after = care
look at = examine
look over = examine
turn down = refuse
say no to = refuse
"""
_DECIDING = """
ordered by = decide
named by = decide
set by = decide
fixed by = decide
chosen by = decide
laid down by = decide
is for the = decide
names the = decide
chooses the = decide
"""
"""Phrases that stand for a word in a clause alone."""
_APART = 4


@cache
def _classes() -> Mapping[str, frozenset[int]]:
    found: dict[str, set[int]] = {}
    for number, line in enumerate(_SENSES.strip().splitlines()):
        for word in line.split():
            found.setdefault(lemma(word), set()).add(number)
    return {word: frozenset(numbers) for word, numbers in found.items()}


@cache
def _phrases(said: str = _PHRASES) -> Mapping[tuple[str, ...], str]:
    found = {}
    for line in said.strip().splitlines():
        words, _, word = line.partition(" = ")
        found[tuple(words.split())] = word
    return found


def has_a_sense(low: str) -> bool:
    """Whether a word, in any of its forms, stands in a class."""
    return lemma(low) in _classes()


def senses_of(word: str) -> frozenset[int]:
    """The classes that a lemma is of."""
    return _classes().get(word, frozenset())


def with_phrases(text: str) -> str:
    """A text with, after it, the one word for each phrase that stands in it: "goes before" is to prevail."""
    lower = text.casefold()
    plain = f" {' '.join(lemma(word.strip('.,;:()')) for word in lower.split())} "
    found = [word for said, word in _phrases().items() if _as_lemmas(said) in plain]
    return " ".join(
        (text, *found, *(word for said, word in _phrases(_DECIDING).items() if " ".join(said) in lower))
    )


def _as_lemmas(said: Sequence[str]) -> str:
    return f" {' '.join(lemma(word) for word in said)} "


def phrase_at(tokens: Sequence[Token], place: int) -> tuple[str, tuple[int, ...]] | None:
    """The one word that some words from a place on stand for, and their places: "hand it back"."""
    for said, word in _phrases().items():
        places = [place]
        if lemma(tokens[place].low) != lemma(said[0]):
            continue
        for part in said[1:]:
            after = places[-1] + 1
            most = after + (_APART if part == "back" else 2)  # "hand all my kit back"
            near = next((i for i in range(after, min(most, len(tokens))) if tokens[i].low == part), None)
            if near is None:
                break
            places.append(near)
        if len(places) == len(said):
            return word, tuple(places)
    return None
