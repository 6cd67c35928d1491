"""Writes `everyday.py` and `bearing.py` of `kb/reader/words/` anew: `python -m tests.reader.everyday_words`.

A word goes in if people use it (it is counted in WordNet's tagged texts, or stands in `_ALSO`), and if none
of its usual senses is a thing that can be worn, fastened, held or be part of a garment, a body, a material, a
colour, a shape or an amount: such a word must always stop a question.
"""

from __future__ import annotations

import textwrap
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

import kb.reader
from kb.reader.words.forms import word_set
from kb.suggesting.wordnet import WordNet, open_wordnet

OUT = Path(kb.reader.__path__[0]) / "words" / "everyday.py"
BEARING = OUT.with_name("bearing.py")
LEAST = 3  # how often a word is counted
OTHERS_LEAST = 8  # the same, of one that is no place and no occasion
SHARE = 0.1  # of its counts, from which a sense is a usual one

# Senses under which everything narrower is of a kind: what may be worn or is a part, where one may be, what
# one may take part in.
_WORN = """
clothing.1 covering.2 adornment.1 fastener.2 fabric.1 marking.1 decoration.1 decoration.2 symbol.1 body_part.1
color.1 color.8 coloring_material.1 hair.1 container.1 equipment.1 device.1 rope.1 thread.1 strip.2 badge.1
weapon.1 toiletry.1 jewelry.1 optical_instrument.1 implement.1 sheet.3 strap.1 part.2 part.3 part.5 award.2
edge.1 side.1 side.2 end.1 front.2 back.2 top.1 bottom.1 center.1 corner.1 surface.1 position.1 layer.1 ring.1
fold.1 knot.1 language_unit.1 writing.2 line.1 grade.1
"""
_CLOTHING = """
clothing.1 covering.2 adornment.1 fastener.2 fabric.1 marking.1 decoration.1 decoration.2 color.1 color.8
coloring_material.1 hair.1 jewelry.1 strap.1 external_body_part.1 joint.1 knot.1 fold.1
"""
"""The same, of what is worn and its parts alone."""
_PLACES = """
structure.1 way.6 facility.1 area.5 vehicle.1 conveyance.3 furniture.1 geological_formation.1 body_of_water.1
land.4 region.3 building_complex.1 geographical_area.1 establishment.4 plot.1 tract.1 craft.1 vessel.2
workplace.1
"""
_OCCASIONS = """
social_event.1 gathering.1 meal.1 ceremony.1 journey.1 contest.1 show.3 game.1 sport.1 diversion.1 music.1
work.1 lesson.1 trip.1 travel.1 holiday.1 vacation.1 day.1 day.4 time_of_day.1 time_period.1 meeting.2
emergency.1 conversation.1 discussion.2 inspection.1 education.1 rehearsal.1 celebration.1 service.4
"""
_FIELDS = {"worn": ("body", "substance", "shape", "quantity", "plant"), "place": ("location",)}
# Everyday words that the tagged texts have seldom or not, by what they are.
_ALSO = {
    "place": """
        ferry canteen queue pub cafe restaurant bus tram train coach lorry van taxi lift stairs staircase
        corridor hallway lobby foyer gym pool playground garage shed workshop warehouse depot harbour quay
        jetty pier wharf dock marina slip beach cliff promenade market shop supermarket bakery bank
        library museum theatre cinema church chapel mosque temple crypt cemetery school college classroom
        nursery hospital clinic surgery ward office desk counter kiosk checkout reception till bench sofa
        couch bunk bed hammock dormitory barracks mess galley wardroom bridge engine_room bathroom
        washroom toilet loo shower kitchen pantry larder cellar attic loft balcony terrace patio garden
        lawn orchard allotment field meadow moor marsh bog footpath path track lane alley street road
        motorway roundabout pavement kerb railway platform station airport runway hangar helipad farm barn
        stable zoo park campsite tent caravan cabin hut cottage flat house home stadium pitch court ring
        rink racecourse fairground summit peak quayside island village town city suburb
    """,
    "occasion": """
        break smoke cuppa pint carol tombola graduation housewarming prom reception bash breakfast lunch
        dinner supper tea teatime lunchtime dinnertime bedtime elevenses brunch picnic barbecue party
        wedding funeral christening baptism birthday anniversary reunion ball disco dance concert gig
        recital play match race regatta marathon quiz bingo raffle fete fair fairs carnival festival
        jamboree parade procession pageant rehearsal practice meeting briefing debrief seminar lecture
        lesson class course exam interview appointment visit tour outing trip voyage cruise crossing
        commute errand journey flight holiday weekend weekday afternoon morning evening night day daytime
        nighttime dawn dusk noon midday midnight sunrise sunset weekends evenings mornings afternoons
        nights fishing swimming running jogging cycling skating skiing football rugby cricket tennis golf
        chess darts cards gardening shopping
    """,
    "person": """
        bosun skipper boss captain officer instructor sergeant inspector steward mum mom mummy dad daddy
        nan gran granny grandma grandad grandpa auntie aunt uncle cousin niece nephew brother sister wife
        husband girlfriend boyfriend fiancee fiance missus in-laws kid kids neighbour landlady bloke chap
        lad lass lassie fella guy gal bairn toddler baby tourist visitor guest passenger punter
        photographer journalist reporter postman plumber dentist vicar bishop mayor bride groom everybody
    """,
    "verb": """
        nip pop dash stroll wander pootle collect fetch peel scrub sweep mop hoover vacuum adore work walk
        talk play drive ride come get look stand sit rest help eat drink think feel try sing dance mind
        care notice laugh cry sleep study teach travel visit wait win lose meet greet chase cheer pray
        shiver shelter queue commute natter chat gossip moan whinge grumble nag tease giggle snore doze
        nap yawn sneeze cough jog swim ski cycle skate row sail fish garden shop cook bake phone text
        email babysit volunteer rehearse revise skive dawdle loiter dally rush hurry panic worry fret sulk
        blush shiver freeze sweat swelter boil roast ache tickle itch bother pester hassle badger complain
        squint
    """,
    "other": """
        laundry pay sports rest boxing potato spud floor dish draughty perishing parky nippy baltic chilly
        muggy drizzly dreary gloomy poky stuffy smelly noisy crowded cramped busy lovely nice posh swanky
        grubby muddy dusty sandy grassy windswept deserted spooky ticket car coffee fuel luggage newspaper
        parking fish reception kitten puppy dog cat parrot seagull sandwich biscuit cake pudding crisps
        beer cider wine cocoa football telly homework gossip chores paperwork traffic nerves luck laugh
        joke bother fuss hurry rush hangover sniffles pity shame fun
    """,
}
# What must stop a question although no sense of it says so: words that put a state, a time or a standing, say
# how a thing is worn or what is done to it.
NEVER = word_set("""
    front back side edge top bottom middle centre center corner end tip point inside outside upside
    underside left right line row pair half inch foot hand head arm leg eye nose heel toe shift watch rank
    grade post duty probation leave reserve trial training service uniform rig dress undress change swap
    exchange trade switch wear tear wash dry clean iron press starch bleach dye paint mark stain polish
    shine mend repair patch darn knit weave sew stitch embroider engrave print stamp pin clip tie knot lace
    buckle zip hook fasten button fold roll tuck turn twist pleat crease crumple wrinkle crop trim cut shave
    comb brush plait braid curl shorten lengthen widen narrow tighten loosen stretch shrink pad lend borrow
    hire rent sell buy return replace remove lose discard destroy burn rip split fray fade wring soak dip
    spray oil wax grease varnish lacquer gild plate cover hide conceal expose show display bare strip cap
    hat veil mask glove coat jacket shirt collar cuff sleeve hem seam pocket belt badge medal ribbon stripe
    star bar crown shoulder chest waist hip knee ankle wrist neck ear chin lip tooth nail finger thumb skin
    forehead face cheek throat elbow thigh shin calf belly torso scalp
    beard moustache wig tattoo ring stud chain glass lens torch knife whistle radio phone bag pack sack case
    box rope cord string wire strap sling band tape tag label tab flash sheet blanket flag banner scarf
    cloth last next ago yesterday tomorrow former ex new old late early previous recent future past soon
    before after until till since later earlier then again once twice first second third other another more
    less most least rather instead than alike same different without only never not no none neither nor
    hardly barely scarcely almost nearly except unless loose open shut closed upright backwards forwards
    sideways retire resign discharge suspend promote demote transfer recruit qualify enlist religion faith
    medical religious injury wound bandage plaster splint cast crutch summer winter spring autumn season
    month year century week decade january february march april may june july august september october
    november december monday tuesday wednesday thursday friday saturday sunday size length width height
    depth weight shade tint hue shape style pattern fit number amount wind rain snow fog mist frost ice hail
    storm gale weather sun heat temperature daylight dark darkness light breeze drizzle sleet thunder
    lightning sea wave tide doctor medic physician surgeon nurse let allow approve authorize permit consent
    agree order command instruct direct forbid ban prohibit sanction grant waive excuse exempt release
    appoint elect designate nominate certify delegate require demand permission approval authority exemption
    dispensation certificate licence license orders regulation instruction join serve graduate enrol enroll
    pass earn award marry divorce pregnant disabled civilian contractor dangle trail flap stick poke hang
    flop droop sag flutter drape wrap attach detach mount alter adapt tailor drawer rack pipe plug tubing
    crib steps silhouette outline slave sex sexual sexually corpse aug dec feb nov oct sept sixties twenties
    rpm role date infancy adolescence boyhood childhood youth maturity apex crest peak exterior interior
    position place direction structure state rear rearward stratum typography unknown origin trend plant
    drop landmark orbit temple flat slip bomber chap habit stock rose felt dusk dawn nightfall sunset
    sunrise sundown twilight handling treatment reign induction initiation dull raw bridge access area
    architecture part parts section bit years hours instant
""")

_RUDE = ("offensive", "disparag", "insult", "obscen", "vulgar", "slang for")
"""What a meaning says of a word that is not written here."""

Words = dict[str, set[str]]


class _Counted:
    """The senses of all words of one part of speech, with how often each is counted."""

    def __init__(self, net: WordNet) -> None:
        folder = net._folder
        fields = dict(
            line.split()[:2] for line in (folder / "lexnames").read_text().splitlines() if line.strip()
        )
        self.senses: dict[str, list[tuple[str, str, int, int]]] = defaultdict(list)
        for line in (folder / "index.sense").read_text(encoding="utf-8").splitlines():
            key, offset, number, count = line.split()
            lemma, _, rest = key.partition("%")
            field = fields[rest.split(":")[1]]
            if lemma.isascii() and lemma.isalpha() and lemma.islower():
                self.senses[lemma].append((field, offset, int(number), int(count)))
        self.folder = folder

    def irregular(self, part: str) -> Iterator[tuple[str, str]]:
        for line in (self.folder / f"{part}.exc").read_text(encoding="utf-8").splitlines():
            form, *lemmas = line.split()
            if lemmas and form.isalpha():
                yield form, lemmas[0]


def _roots(net: WordNet, written: str) -> frozenset[str]:
    found = set()
    for one in written.split():
        word, _, number = one.rpartition(".")
        senses = net.senses(word)
        if len(senses) >= int(number):
            found.add(senses[int(number) - 1].id)
    return frozenset(found)


def _kinds(net: WordNet, counted: _Counted) -> Iterator[tuple[str, str]]:
    """Each common word with what it is: a place, an occasion, a verb, or another word of talk."""
    worn, places, occasions = (_roots(net, written) for written in (_WORN, _PLACES, _OCCASIONS))
    also = {word: kind for kind, words in _ALSO.items() for word in words.split()}
    for word, senses in counted.senses.items():
        total = sum(count for *_, count in senses)
        if (total < LEAST and word not in also) or word in NEVER or len(word) < 3:
            continue
        nouns: list[str] = []
        kinds: set[str] = set()
        for field, offset, number, count in sorted(senses, key=lambda sense: -sense[3]):
            usual = count >= max(1, SHARE * total) or (number == 1 and not total)
            part, _, group = field.partition(".")
            if part != "noun":
                kinds |= {"verb" if part == "verb" else "other"} if usual else set()
                continue
            line = net.lineage(f"{offset}-n")
            if usual and any(mark in net.sense(f"{offset}-n").meaning for mark in _RUDE):
                nouns.insert(0, "worn")
            place = bool(line & places) or group in _FIELDS["place"]
            if (line & worn or group in _FIELDS["worn"]) and not place:
                nouns += ["worn"] if usual or (number <= 2 and word not in also) else []
            elif usual:
                named = word not in net.sense(f"{offset}-n").words  # of one place, with a capital
                other = "worn" if group == "artifact" or named else "other"
                nouns.append("place" if place and not named else "occasion" if line & occasions else other)
        if word in also:
            yield word, also[word]
        elif "worn" in nouns or (total < OTHERS_LEAST and nouns[:1] in ([], ["other"])):
            continue
        yield from ((word, kind) for kind in (*nouns[:1], *kinds) if kind != "worn")


_HEAD = """\"\"\"Everyday words by what they can say in a question, made by `tests/reader/everyday_words.py`.

None of them is a thing that may be worn, a part, a material, a colour, an amount, or moves the day; a word
that stands nowhere here stops a question. Chosen and classed by the lexicographer files, the hypernyms and
the counts of WordNet 3.0 (Princeton University, https://wordnet.princeton.edu/), of which a list of words is
kept, no meaning and no relation. WordNet 3.0 Copyright 2006 by Princeton University. All rights reserved.
Used and distributed under the WordNet licence, which asks that this notice be kept:

Permission to use, copy, modify and distribute this software and database and its documentation for any
purpose and without fee or royalty is hereby granted, provided that you agree to comply with the following
copyright notice and statements, including the disclaimer, and that the same appear on ALL copies of the
software, database and documentation, including modifications that you make for internal use or for
distribution. THIS SOFTWARE AND DATABASE IS PROVIDED "AS IS" AND PRINCETON UNIVERSITY MAKES NO REPRESENTATIONS
OR WARRANTIES, EXPRESS OR IMPLIED. BY WAY OF EXAMPLE, BUT NOT LIMITATION, PRINCETON UNIVERSITY MAKES NO
REPRESENTATIONS OR WARRANTIES OF MERCHANTABILITY OR FITNESS FOR ANY PARTICULAR PURPOSE OR THAT THE USE OF THE
LICENSED SOFTWARE, DATABASE OR DOCUMENTATION WILL NOT INFRINGE ANY THIRD PARTY PATENTS, COPYRIGHTS, TRADEMARKS
OR OTHER RIGHTS. The name of Princeton University or Princeton may not be used in advertising or publicity
pertaining to distribution of the software and/or database. Title to copyright in this software, database and
any associated documentation shall at all times remain with Princeton University and LICENSEE agrees to
preserve same.
\"\"\"

from __future__ import annotations

from kb.reader.words.forms import word_set
"""
_BEARING_HEAD = """\"\"\"Words that may tell how a thing is, made by `tests/reader/everyday_words.py`.

Chosen by the hypernyms of WordNet 3.0, under the licence that `everyday.py` carries.
\"\"\"

from __future__ import annotations

from kb.reader.words.forms import word_set
"""
_SAID = {
    "place": "Where one may be.",
    "occasion": "What one may take part in, and times of the day.",
    "verb": "What people do, in the forms that are not made by rule, too.",
    "other": "Other words of talk.",
}


def _with_forms(found: Words, counted: _Counted) -> None:
    """Adds what is not formed by rule: "took" of "take", "men" of "man"."""
    for part in ("verb", "noun"):
        for form, lemma in counted.irregular(part):
            for kind, words in found.items():
                if lemma in words and (kind == "verb") == (part == "verb") and form not in NEVER:
                    words.add(form)


def written(found: Words) -> str:
    """The text of the module."""
    parts = [_HEAD]
    for kind, said in _SAID.items():
        words = textwrap.fill(" ".join(sorted(found[kind])), 109)
        name = {"place": "PLACES", "occasion": "OCCASIONS", "verb": "DOINGS", "other": "OTHERS"}[kind]
        parts.append(f'\n{name} = word_set("""\n{words}\n""")\n"""{said}"""\n')
    return "".join(parts)


def everyday_words(net: WordNet) -> Words:
    """Each kind of word with its words."""
    counted = _Counted(net)
    found: Words = defaultdict(set)
    for word, kind in _kinds(net, counted):
        found[kind if kind in _SAID else "other"].add(word)
    for kind, words in _ALSO.items():
        found[kind if kind in _SAID else "other"] |= word_set(words) - NEVER
    _with_forms(found, counted)
    for kind in ("place", "occasion"):
        found["other"] -= found[kind]
    return found


def worn_words(net: WordNet) -> set[str]:
    """What is worn, its parts and what it is made of, each in one of its first or usual senses."""
    counted, worn = _Counted(net), _roots(net, _CLOTHING)
    found = set()
    for word, senses in counted.senses.items():
        total = sum(count for *_, count in senses)
        usual = (s for s in senses if s[0].startswith("noun") and (s[2] < 3 or s[3] > SHARE * total))
        if any(net.lineage(f"{offset}-n") & worn for _, offset, _, _ in usual):
            found.add(word)
    return found


def bearing(net: WordNet) -> str:
    """The text of the module of words that bear on an answer."""
    parts = [_BEARING_HEAD]
    for name, words, said in (
        ("WORN", worn_words(net), "What is worn, parts of it, colours and stuffs."),
        ("BEARING", NEVER, "What is done to it, how it is, when, and who lets one."),
    ):
        text = textwrap.fill(" ".join(sorted(words)), 109)
        parts.append(f'\n{name} = word_set("""\n{text}\n""")\n"""{said}"""\n')
    return "".join(parts)


if __name__ == "__main__":
    OUT.write_text(written(everyday_words(open_wordnet())), encoding="utf-8")
    BEARING.write_text(bearing(open_wordnet()), encoding="utf-8")
