"""Words of colour and finish: which are shades of which, and which two may be of one thing.

Common knowledge of English, not of any service; what a book's own labels say goes before it.
"""

from __future__ import annotations

from kb.reader.words.forms import word_set

# Base: the words for it, then the words for shades of it, dark (d), light (l), vivid (v) or neither (-).
_TABLE = """
red: red > maroon/d burgundy/d claret/d oxblood/d wine/d
red: red > crimson/- scarlet/v ruby/- cherry/v vermilion/v rust/-
blue: blue > navy/d midnight/d indigo/d azure/l cobalt/v
blue: blue > sapphire/- turquoise/- teal/- aqua/l cyan/v ultramarine/v
green: green > olive/- emerald/v turquoise/- teal/- lime/v mint/l jade/- khaki/- aqua/l
yellow: yellow > lemon/l mustard/- amber/- canary/v
orange: orange > amber/- tangerine/v apricot/l peach/l coral/- rust/-
brown: brown > tan/l beige/l fawn/l khaki/- chestnut/- chocolate/d
brown: brown > sand/l buff/l camel/l auburn/- mahogany/d bronze/- copper/-
purple: purple > violet/- lilac/l lavender/l mauve/l plum/d aubergine/d magenta/v fuchsia/v
pink: pink > rose/- salmon/- coral/- magenta/v fuchsia/v
white: white > cream/- ivory/- off-white/- pearl/-
black: black > ebony/- jet/-
grey: grey gray > charcoal/d slate/-
gold: gold golden gilt > brass/- brassy/-
silver: silver > chrome/- nickel/- steel/- pewter/-
blond: blond blonde > ginger/- auburn/- chestnut/-
mixed: rainbow multicoloured multicolored
shine: polished shiny shine glossy gloss patent lacquered
dull: matt matte dull
brushed: brushed satin
"""
_DEPTHS = {
    **dict.fromkeys(("dark", "deep", "darker", "bottle", "forest"), "d"),
    **dict.fromkeys(("light", "pale", "pastel", "sky", "baby", "lighter", "ice", "powder"), "l"),
    **dict.fromkeys(
        ("bright", "neon", "hot", "royal", "electric", "vivid", "fluorescent", "shocking", "brilliant"), "v"
    ),
}
MODIFIERS = frozenset((*_DEPTHS, "petrol", "steel", "dusty", "dirty", "metallic", "air", "french", "soft"))
_BASIC: dict[str, str] = {}  # "blue": the colour itself
_BASES: dict[str, set[str]] = {}
_SHADES: dict[str, str] = {}
for _line in _TABLE.strip().splitlines():
    _base, _, _words = _line.partition(": ")
    _plain, _, _more = _words.partition(" > ")
    for _word in _plain.split():
        _BASIC[_word] = _base
        _BASES.setdefault(_word, set()).add(_base)
    for _word, _, _letter in (one.partition("/") for one in _more.split()):
        _BASES.setdefault(_word, set()).add(_base)
        _SHADES[_word] = _letter
HEADS = frozenset(_BASES)
FINISHES = frozenset(w for w, base in _BASIC.items() if base in ("shine", "dull", "brushed"))
# Names of things as well: colours only right before what is coloured, or after "be".
DOUBTFUL = word_set("""
    wine cherry rust lime mint lemon mustard amber peach apricot coral chestnut chocolate sand camel buff rose
    salmon plum cream ivory pearl jet slate steel nickel brass copper bronze tan patent shine gloss
    satin polished brushed""")
_COLOURLESS = word_set("clear colourless transparent uncoloured or and")
_NOT = frozenset({"not", "non", "never"})
_HAIR = frozenset({"brown", "black", "blond"})
_NATURAL = frozenset({"red", "brown", "white", "black", "grey", "silver", "gold", "blond"})


def _known(words: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(word for word in words if word in HEADS)


def is_bare(words: tuple[str, ...]) -> bool:
    """Whether a colour is named without saying which shade: "blue", not "navy" nor "sky blue"."""
    return len(words) == 1 and words[0] in _BASIC


def _depth(words: tuple[str, ...]) -> str:
    found = {_DEPTHS.get(word) or _SHADES.get(word, "") for word in words} - {"", "-"}
    return found.pop() if len(found) == 1 else ""


def may_be(words: tuple[str, ...], label: tuple[str, ...]) -> bool:
    """Whether what is asked about may be what a label of the books names, or a shade of it, or it of that.

    Two shades of one colour are two colours, save that a dark blue may be navy.
    """
    bases = {base for word in words for base in _BASES.get(word, ())}
    named = {base for word in _known(label) for base in _BASES[word]}
    if not named and _COLOURLESS.issuperset(label):
        return bases <= {"shine", "dull", "brushed"}
    if not named:  # no colour but a kind of them: "a natural hair colour"
        natural = bool(bases & _NATURAL) and _depth(words) != "v"
        return not natural if is_unnatural(label) else "natural" not in label or natural
    if not bases & named:
        return False
    if words == label or is_bare(words) or is_bare(label):
        return True
    return bool(_depth(words)) and _depth(words) == _depth(label)


def is_unnatural(label: tuple[str, ...]) -> bool:
    """Whether a label names the colours that hair has not by nature: "a colour that could not be natural"."""
    return "unnatural" in label or ("natural" in label and not _NOT.isdisjoint(label))


def is_natural(words: tuple[str, ...]) -> bool:
    """Whether hair has a colour by nature for certain: blond has, red, grey and silver may be dyed."""
    bases = {base for word in words for base in _BASES.get(word, ())}
    return bool(bases) and bases <= _HAIR and _depth(words) != "v"


def is_name_of(words: tuple[str, ...], label: tuple[str, ...]) -> bool:
    """Whether a bare colour is that of a label that names a shade of it: "blue" of "navy blue"."""
    bases = {base for word in label for base in _BASES.get(word, ())}
    return is_bare(words) and words[0] not in FINISHES and bases == {_BASIC[words[0]]}
