"""Short forms that people use of names: initials ("OOD", officer of the day), "super" for a superintendent.

Only what can mean one thing in the books is taken: nothing that is another name, a word of structure or an
ordinary word, and no beginning that another name has.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TypeVar

from kb.model.lookup import Lookup
from kb.model.records import Fact
from kb.reader.phrases.english import PHRASES, SKIPPED_INSIDE_LABELS
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import word_key

_T = TypeVar("_T")
_SMALL = frozenset({"of", "the", "a", "an", "and", "to", "for", "in", "on", "at", "by"})
_ARTICLES = frozenset({"the", "a", "an"})
_HELD = ("appointment", "qualification", "waiver")
_FEWEST = 2
_NO_NAMES = word_set("""
    mm cm dm km ft yd kg oz lb ml pt mb hz kt am pm ad bc eg ie cf vs re st nd rd th mr ms dr jr sr no nr nb
    op ps tv uk us eu ok ah eh er um oh hm aw ha la lo hi ur wt ht ca wo ai nt ya ye yo da de le el pc tb gp
    fm ed al jo bo vi di
""")
"""Units, titles and other words of two letters that nobody means a name by."""
_STEM = 4


def with_short_forms(names: dict[str, _T], lookup: Lookup) -> dict[str, _T]:
    """The names with the short forms that none of them is."""
    found = {form: names[key] for form, label in _short_forms(lookup) if (key := _key(label)) in names}
    found |= {stem: names[word] for stem, word in _stems(lookup, names) if word in names}
    return found | names


def _key(label: str) -> str:
    words = label.replace("-", " ").lower().split()
    kept = [word for word in words if word not in SKIPPED_INSIDE_LABELS]
    return "".join(word_key(word) for word in kept or words)


def _short_forms(lookup: Lookup) -> Iterator[tuple[str, str]]:
    """(short form, label) of appointments, authorities and items; none that two labels share."""
    labels = [
        label
        for named in (
            *lookup.base.authorities,
            *(fact for fact in lookup.base.facts if fact.family in _HELD or _is_state(fact)),
            *lookup.base.items,
        )
        for label in (named.label, *named.other_labels)
    ]
    from kb.reader.words.common_words import COMMON_WORDS  # noqa: PLC0415  names are stored once made

    meant: dict[str, set[str]] = {}
    for label in labels:
        for form in _initials(label.replace("-", " ").lower().split()):
            meant.setdefault(form, set()).add(label)
    for form, found in meant.items():
        slip = len(form) == 2 and (form in _NO_NAMES or (form[::-1],) in PHRASES)  # "fo" is "of"
        if len(found) == 1 and form not in COMMON_WORDS and (form,) not in PHRASES and not slip:
            yield form, found.pop()


def _is_state(fact: Fact) -> bool:
    return fact.kind == "yes_no" and fact.family == "situation"


def _initials(words: Sequence[str]) -> set[str]:
    forms = (
        [word for word in words if word not in _ARTICLES],
        [word for word in words if word not in _SMALL],
    )
    return {"".join(word[0] for word in form) for form in forms if len(form) >= _FEWEST}


def _stems(lookup: Lookup, names: Mapping[str, object]) -> Iterator[tuple[str, str]]:
    """(beginning, word) of the last words of authorities and measured facts, where nothing else begins so."""
    measured = (fact for fact in lookup.base.facts if fact.kind == "quantity")
    named = (*lookup.base.authorities, *measured)
    last = {label.lower().split()[-1] for one in named for label in (one.label, *one.other_labels)}
    for word in sorted(last):
        for length in range(_STEM, len(word) - 1):
            stem = word[:length]
            verb = word[length:] in ("er", "or")  # "may I keep it" is of no keeper
            if (
                (stem,) in PHRASES
                or verb
                or any(key.startswith(stem) and key != word_key(word) for key in names)
            ):
                continue
            yield stem, word_key(word)
