"""Plain English grammar: articles, number, lists, sentences. Nothing here knows about rules.

Labels are written by authors, so number is only guessed where no construction avoids it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from kb.text import Pattern

_DETERMINED = Pattern(
    r"(the|an?|any|no|one|each|every|either|all|his|her|their|your|my|its|own)(?=\s|$)", re.I
)
_CODE = Pattern(r"[A-Z]{1,4}(-?\d+)?\b")
_VOWEL_LETTERS = frozenset("AEFHILMNORSX")
_CONSONANT_SOUND = Pattern(r"(uni|use|usu|eu|ewe|one\b|once\b|ut[ei])", re.I)
_SILENT_H = Pattern(r"(hour|honour|honor|heir|honest)", re.I)
_SINGULAR_S = Pattern(r"(ss|us|is|ous)$|^(lens|series|gas|news|canvas|bus|means|species)$", re.I)
_UNCOUNTED = Pattern(
    r"(wear|gear|ware|jewell?e?ry|hair|clothing|equipment|kit|grooming|make-?up|varnish|polish|perfume)$",
    re.I,
)

_LINKS = frozenset((
    "of", "in", "on", "at", "for", "with", "without", "from", "to", "by", "under", "over", "above", "below",
    "between", "and", "or", "than", "as", "per",
))  # fmt: skip
_PLURAL = frozenset((
    "men", "women", "people", "feet", "teeth", "children", "insignia", "data", "police", "clothes",
))  # fmt: skip
_IRREGULAR = {
    "man": "men", "woman": "women", "foot": "feet", "tooth": "teeth", "scarf": "scarves", "knife": "knives",
}  # fmt: skip

PREPOSITIONS = frozenset((
    "in", "on", "at", "under", "aboard", "by", "with", "without", "off", "during", "near", "inside",
    "outside", "within", "beyond", "between", "over", "below", "above", "behind", "before", "after", "along",
    "among", "around", "beside", "beneath",
    "from", "to", "up", "down", "of", "while", "for", "against", "across",
))  # fmt: skip
ADVERBS = frozenset((
    "ashore", "afloat", "aboard", "abroad", "aloft", "indoors", "outdoors", "outside", "inside", "alongside",
    "underway", "offshore", "onshore", "inshore", "away", "overseas", "below", "anywhere", "everywhere",
    "elsewhere", "home", "aground", "adrift", "upstairs", "downstairs", "overboard", "alone",
))  # fmt: skip
_NO_ACTIVITY = frozenset(("evening", "morning", "during", "spring", "string", "nothing", "anything"))


def definite(label: str) -> str:
    """ "the storm coat"; a label that brings its own article or determiner stays as it is."""
    return label if _DETERMINED.match(label) else f"the {label}"


def indefinite(label: str) -> str:
    """ "a K5", "an H2", "an officer"; plural and uncounted labels stay bare."""
    words = label.split()
    uncounted = bool(words) and _UNCOUNTED.search(words[head_index(words)])
    if _DETERMINED.match(label) or is_plural(label) or uncounted:
        return label
    return f"{'an' if _vowel_sound(label) else 'a'} {label}"


def _vowel_sound(label: str) -> bool:
    code = _CODE.match(label)
    if code and (code.group(1) or len(code.group()) == len(label.split()[0])):
        return label[0] in _VOWEL_LETTERS
    if _SILENT_H.match(label):
        return True
    return label[:1].lower() in "aeiou" and not _CONSONANT_SOUND.match(label)


def head_index(words: Sequence[str]) -> int:
    """Where the noun that governs number stands: before the first preposition, else last."""
    for index, word in enumerate(words):
        if index and (word.lower() in _LINKS or word.lower() in ADVERBS):
            return index - 1
    return len(words) - 1


def is_plural(label: str) -> bool:
    """Whether a noun phrase looks plural ("deck gloves", "pairs of boots")."""
    words = label.split()
    if not words:
        return False
    head = words[head_index(words)].lower()
    if head in _PLURAL:
        return True
    return len(head) > 2 and head.endswith("s") and not _SINGULAR_S.search(head)


def be(label: str) -> str:
    return "are" if is_plural(label) else "is"


def plural(label: str) -> str:
    """The plural of a noun phrase, on its head noun; plural and uncounted labels stay."""
    words = label.split()
    if not words or is_plural(label) or _UNCOUNTED.search(words[head_index(words)]):
        return label
    index = head_index(words)
    words[index] = _plural_word(words[index])
    return " ".join(words)


def _plural_word(word: str) -> str:
    if word.lower() in _IRREGULAR:
        return _IRREGULAR[word.lower()]
    if re.search(r"[^aeiou]y$", word):
        return word[:-1] + "ies"
    if re.search(r"man$", word):
        return word[:-2] + "en"
    if re.search(r"(s|x|z|ch|sh)$", word):
        return word + "es"
    return word + "s"


def is_adverbial(label: str) -> bool:
    """Whether a label stands by itself as where, when or how: "ashore", "in town", "on watch"."""
    words = label.lower().split()
    if not words:
        return False
    return (words[0] in PREPOSITIONS and len(words) > 1) or (words[0] in ADVERBS)


def is_participial(label: str) -> bool:
    """Whether a label is an activity of a person: "hauling lines", "boarding"."""
    first = label.split()[0].lower() if label.split() else ""
    return len(first) > 4 and first.endswith("ing") and first not in _NO_ACTIVITY


_JOINS = Pattern(r",| (and|or|nor|but|except) (?!above\b|below\b|higher\b|a higher)")


def is_compound(text: str) -> bool:
    """Whether a text holds a joining word of its own, so that joining it to others takes a comma."""
    return bool(_JOINS.search(text))


def listing(parts: Sequence[str], word: str = "and") -> str:
    """ "a", "a and b", "a, b and c"; parts that hold a joining word themselves are set off by commas."""
    if len(parts) < 2:
        return "".join(parts)
    range_end = re.compile(rf" {word} (above|below|higher|a higher)\b")
    apart = any(is_compound(part) or range_end.search(part) for part in parts)
    last = f", {word} " if apart else f" {word} "
    return ", ".join(parts[:-1]) + last + parts[-1]


def with_shared_start(labels: Sequence[str], word: str = "or") -> str:
    """ "in the engine house or the engine room": labels that begin with one preposition share it."""
    firsts = {label.split()[0] for label in labels if label.split()}
    if len(labels) < 2 or len(firsts) != 1 or not firsts <= PREPOSITIONS or any(map(is_compound, labels)):
        return listing(labels, word)
    start = firsts.pop()
    rest = [label.removeprefix(start).strip() for label in labels]
    if len({bool(_DETERMINED.match(label)) for label in rest}) > 1:
        return listing(labels, word)
    return f"{start} {listing(rest, word)}"


def with_shared_end(labels: Sequence[str], word: str = "or") -> str:
    """ "fair or foul weather": labels with a common last word share it."""
    split = [label.split() for label in labels]
    share = (
        len(labels) > 1
        and all(len(words) > 1 and words[-1] == split[0][-1] for words in split)
        and not any(_LINKS.intersection(w.lower() for w in words) for words in split)
        and not any(is_adverbial(label) or is_participial(label) for label in labels)
    )
    if not share:
        return listing(labels, word)
    return f"{listing([' '.join(words[:-1]) for words in split], word)} {split[0][-1]}"


def capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def sentence(text: str, mark: str = ".") -> str:
    """The text with a capital and one closing mark, spaces tidied."""
    tidy = re.sub(r"\s+", " ", text).strip().rstrip(" ,;")
    tidy = re.sub(r" ([,;])", r"\1", tidy)
    tidy = re.sub(r",{2,}", ",", tidy)
    closed = tidy.endswith(("?", "!")) or (mark == "." and tidy.endswith((".", ".”")))
    return capital(tidy) + ("" if closed else mark)


def phrase(*parts: str) -> str:
    """The non-empty parts joined by spaces."""
    return " ".join(part for part in parts if part)
