"""States that have a contrary, in everyday words: done up and open, tucked in and out, seen and hidden.

A way of wearing that the books name ("buttoned", "ends tucked in", "out of sight") or an act ("rolling") is
of one of a few such pairs, by the words of its name. What somebody says of a thing is of one of them, too, in
whatever words and in any form of a verb; so it is the way that the books name, or the contrary of it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import cache

import msgspec

from kb.model.records import Aspect
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import Token, tokenize

Pole = tuple[str, bool]
"""A pair by its name, and whether it is the first or the second of it."""

# Verbs with their particles, then what is said of a thing without a verb; "_" joins words.
_POLES = """
fast +: button fasten close shut zip hook lace clip buckle secure strap tighten tie snap do_up
fast +: button_up zip_up
fast +: lace_up close_up buckle_up fasten_up tie_up hook_up | done_up closed shut fast tight snug
fast -: unbutton unfasten unzip unhook unlace unclip unbuckle undo untie loosen open dangle swing flap gape
fast -: hang_open hang_loose hang_free hang_down open_up loosen_off | undone open loose ajar free slack
fast -: flapping_open
raised +: turn_up flip_up pop_up put_up pull_up raise lift stand_up push_up pop flick_up
raised +: | up upright upturned
raised -: turn_down flip_down fold_down put_down pull_down push_down lower drop lie_flat | down flat
rolled +: roll_up push_up shove_up hitch_up hitch pull_up turn_up turn_back fold_up fold_back scrunch_up
rolled +: bunch_up ruck_up hoick_up shove_back push_back roll_back roll tuck_up | up rolled_up
rolled -: roll_down pull_down unroll push_down | down full_length
tucked +: tuck tuck_in tuck_into stuff_in stuff_into tuck_inside push_in tuck_up | in inside
tucked -: untuck hang_out flap_out dangle_out pull_out let_out stick_out come_out hang_over
tucked -: hang_outside leave_out
tucked -: hang_down hang_loose dangle hang flap trail flap_about flap_loose dangle_loose
tucked -: | out loose outside untucked free
hung +: hang_up peg_up
seen +: see show peep_out peek_out poke_out stick_out hang_out expose display uncover reveal peep peek
seen +: show_off
seen +: bare | in_plain_view visible on_show on_display on_view in_view in_sight on_full_view
seen +: | in_plain_sight in_full_view
seen -: hide conceal cover hide_away tuck_away cover_up tuck_under keep_under
seen -: | unseen invisible hidden out_of_sight
seen -: out_of_view not_seen not_visible not_showing not_on_show
straight +: straighten level square | square straight level dead_straight
straight -: tilt tip cock skew slant angle push_back tip_back perch
straight -: | crooked askew lopsided wonky skew sideways
straight -: at_an_angle on_one_side on_the_back_of backwards back_to_front rakish jaunty at_a_tilt
straight -: over_one_eye
gathered +: gather gather_up tie_back tie_up pin_up pin_back clip_back clip_up put_up pull_back
gathered +: scrape_back | up
gathered -: hang hang_loose hang_down let_down hang_free flow untie swing dangle fall wear_down
gathered -: | loose down free
gathered -: flowing untied
"""
_MEANS = ("button", "zip", "hook", "lace", "clip", "buckle", "strap", "tie", "snap", "pin")


def is_by_other_means(said: Collection[str], name: Collection[str]) -> bool:
    """Whether a way has another means in its name than what is said: tied, and not clipped or buttoned."""
    means = [
        {verb for verb in _MEANS if not words.isdisjoint(_forms(verb))} for words in (set(said), set(name))
    ]
    return all(means) and means[0].isdisjoint(means[1])


_IRREGULAR: Mapping[str, tuple[str, ...]] = {
    "do": ("done", "did", "doing", "does"), "undo": ("undone", "undid", "undoing", "undoes"),
    "hang": ("hung", "hanging", "hangs"), "see": ("seen", "saw", "sees", "seeing"),
    "show": ("shown", "showing", "shows", "showed"), "put": ("put", "putting", "puts"),
    "let": ("let", "letting", "lets"), "hide": ("hidden", "hid", "hiding", "hides"),
    "lie": ("lay", "lying", "lies", "lain"), "stand": ("stood", "standing", "stands"),
    "stick": ("stuck", "sticking", "sticks"), "come": ("came", "coming", "comes"),
    "keep": ("kept", "keeping", "keeps"), "tie": ("tied", "tying", "ties"), "untie": ("untied", "untying"),
    "leave": ("left", "leaving", "leaves"), "fall": ("fell", "falling", "falls", "fallen"),
    "swing": ("swung", "swinging", "swings"), "shut": ("shut", "shutting", "shuts"),
    "wear": ("worn", "wearing", "wears", "wore"),
}  # fmt: skip
_PARTICLES = word_set(
    "up down in out back away into inside under over off loose open free outside about flat"
)
PARTLY = word_set("half halfway partly partially incompletely")
"""Words that make what is said of a thing hold of a part of it only: "half laced"."""
BESIDE = word_set("my the your his her our their its a an it them this that these those all")
_FURTHEST = 6


class Posed(msgspec.Struct, frozen=True):
    """How a thing is said to be: one pole each of some pairs, and the places of the words that say it."""

    poles: frozenset[Pole]
    places: frozenset[int]


@cache
def phrases() -> Mapping[tuple[str, ...], frozenset[Pole]]:
    table: dict[tuple[str, ...], set[Pole]] = {}
    for line in _POLES.strip().splitlines():
        head, _, said = line.partition(": ")
        name, _, sign = head.partition(" ")
        verbs, _, others = said.partition("| ")
        bare = [tuple(word.split("_")) for word in others.split()]
        for word in verbs.split():
            verb, *rest = word.split("_")
            bare += [(form, *rest) for form in _forms(verb)]
        for phrase in bare:
            table.setdefault(phrase, set()).add((name, sign == "+"))
    return {phrase: frozenset(poles) for phrase, poles in table.items()}


def _forms(verb: str) -> Iterator[str]:
    """The forms of a verb: "tuck", "tucks", "tucked", "tucking"."""
    yield verb
    if verb in _IRREGULAR:
        yield from _IRREGULAR[verb]
        return
    stem = verb.removesuffix("e")
    short = len(verb) < 5 and verb[-1] not in "wyxe" and verb[-2] in "aeiou" and verb[-3:-2] not in "aeiou"
    doubled = verb + verb[-1] if short else stem
    yield from (
        verb + ("es" if verb.endswith(("sh", "ch", "x", "ss")) else "s"),
        f"{doubled}ed",
        f"{doubled}ing",
    )
    if verb == "unzip" or verb == "unclip" or verb == "unbutton":
        yield from (f"{verb}{verb[-1]}ed", f"{verb}{verb[-1]}ing")


def posed(tokens: Sequence[Token], nouns: frozenset[int]) -> Posed | None:
    """How the words say that something is; None where they say nothing of the kind, or two things at once.

    `nouns` are the places of the words of things, which may part a verb from its particle.
    """
    lows = [_as_said(token) for token in tokens]
    found: list[tuple[frozenset[Pole], tuple[int, ...]]] = []
    taken: set[int] = set()
    for places, poles in _sought(lows, nouns):
        if taken.isdisjoint(places):
            taken.update(places)
            found.append((poles, places))
    if not found:
        return None
    shared = frozenset.intersection(*(poles for poles, _ in found))
    return Posed(shared, frozenset(taken)) if shared else None


def _as_said(token: Token) -> str:
    """A word as it was written, where it was taken for a slip: "dangling"."""
    said = token.text.casefold()
    return said if (said,) in phrases() else token.low


def _sought(lows: Sequence[str], nouns: frozenset[int]) -> Iterator[tuple[tuple[int, ...], frozenset[Pole]]]:
    """The phrases in a row of words, the longest first."""
    table = phrases()
    longest = max(map(len, table))
    hits: list[tuple[tuple[int, ...], frozenset[Pole]]] = []
    for start in range(len(lows)):
        for size in range(min(longest, len(lows) - start), 0, -1):
            poles = table.get(tuple(lows[start : start + size]))
            places = tuple(range(start, start + size))
            noun = start in nouns or (size == 1 and _is_noun(lows, start))
            if poles and not noun and (size > 1 or _stands_alone(lows, start, nouns)):
                hits.append((places, poles))
        for later in range(start + 2, min(start + _FURTHEST + 2, len(lows))):
            between = range(start + 1, later)
            if not all(place in nouns or lows[place] in BESIDE for place in between):
                break
            poles = table.get((lows[start], lows[later])) if lows[later] in _PARTICLES else None
            if poles and start not in nouns and _ends(lows, later, nouns):
                hits.append(((start, later), poles))
    yield from sorted(hits, key=lambda hit: (-len(hit[0]), hit[0]))


def _is_noun(lows: Sequence[str], place: int) -> bool:
    """ "On the hook": a verb as it stands in the lexicon, after an article."""
    return lows[place] in _bare_verbs() and place > 0 and lows[place - 1] in BESIDE - {"it", "them"}


@cache
def _bare_verbs() -> frozenset[str]:
    heads = (line.partition(": ")[2].partition("| ")[0] for line in _POLES.strip().splitlines())
    return frozenset(verb.partition("_")[0] for head in heads for verb in head.split())


def _stands_alone(lows: Sequence[str], place: int, nouns: frozenset[int]) -> bool:
    """Whether a particle says how the thing before it is: "collar up", and not "up the hill"."""
    if lows[place] not in _PARTICLES or lows[place] in ("loose", "open", "flat", "free"):
        return True
    before = lows[place - 1] if place else ""
    return (place - 1 in nouns or before in _BEING) and _ends(lows, place, nouns)


_BEYOND = word_set("to into over of from past above round around near beside by")
_BEING = word_set("be is are was were stay stays left kept worn it them been right all fully")
_AFTER = word_set("""

    in on at for with when while if during and or but ok okay fine allowed alright all permitted is are
    may can then please indoors outside outdoors today as under because though , like because this
""")


def _ends(lows: Sequence[str], place: int, nouns: frozenset[int]) -> bool:
    """Whether a particle leads to nothing."""
    after = lows[place + 1] if place + 1 < len(lows) else ""
    return not after or (after in _AFTER and place + 1 not in nouns) or after in _BEYOND


_LABEL_ONLY = word_set("free in inside out up down flat level hang open fall clip pin")
"""Words that in the name of a way say by themselves how nothing is: "free end to the left"."""


def named_poles(aspect: Aspect) -> frozenset[Pole]:
    """The poles that the name of a way, or the verb of an act, says; a fastening is done up."""
    table = phrases()
    if aspect.within is None:
        words, done = (aspect.verb or "").split(), tuple((aspect.done or "").split())
        if not words or words[0] in ("wear", "carry"):
            return frozenset()
        return table.get(tuple(words[:1])) or table.get(done) or frozenset()  # "turned back" of "turn"
    lows = [token.low for token in tokenize(aspect.label)]
    if _MOVED.issuperset(lows):  # "worn down", of a visor as well as of hair
        return frozenset({("raised", "up" in lows), ("gathered", "up" in lows)})
    poles: frozenset[Pole] | None = None
    taken: set[int] = set()
    for size in (3, 2, 1):
        for start in range(len(lows) - size + 1):
            said, places = table.get(tuple(lows[start : start + size])), range(start, start + size)
            if not said or not taken.isdisjoint(places) or (size == 1 and lows[start] in _LABEL_ONLY):
                continue
            if start and lows[start - 1] == "to":
                continue  # "long enough to cover the belt"
            taken.update(places)
            if start and lows[start - 1] in ("not", "never", "without", "neither", "nor"):
                said = frozenset((name, not pole) for name, pole in said)
            poles = said if poles is None else poles & said
    if "outside" in lows and poles is None:
        poles = frozenset({("tucked", False)})
    if not poles and aspect.within == "fastening":
        return frozenset({("fast", "open" not in lows)})
    if "wrist" in lows and poles == frozenset({("fast", True)}):
        return poles | {("rolled", False)}  # what is done up at the wrist is not rolled up
    return poles or frozenset()


_MOVED = word_set("worn kept be up down")
