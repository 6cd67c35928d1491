"""From head to toe: which part of the body a thing belongs to, by the words of its name.

The words are everyday English for clothes. A part whose own name tells nothing goes with the whole, any other
thing with its kind, protective equipment with what it protects, and all else with its top kind.
"""

from __future__ import annotations

from kb.model.lookup import Lookup

HEAD, EYES, NECK, BODY, HANDS, WAIST, LEGS, FEET = (
    "Head", "Eyes and ears", "Neck", "Body", "Hands", "Waist", "Legs", "Feet",
)  # fmt: skip
INSIGNIA, ACCESSORIES, CARRIED, GROOMING, OTHER, KIT = (
    "Insignia", "Accessories", "Things carried", "Hair, face and skin", "Further rules", "Kit",
)  # fmt: skip
ORDER = (
    HEAD, EYES, NECK, BODY, HANDS, WAIST, LEGS, FEET, INSIGNIA, ACCESSORIES, CARRIED, GROOMING, OTHER, KIT,
)  # fmt: skip

_WORDS: dict[str, str] = {
    word: zone
    for zone, words in {
        HEAD: "head headgear headdress cap caps hat hats helmet helmets hood hoods beret bonnet turban crown "
        "visor brim peak chin headscarf veil balaclava wig tricorne shako",
        EYES: "eye eyes eyewear goggles glasses spectacles ear ears earmuffs hearing defenders visors",
        NECK: "neck neckwear scarf scarves collar collars tie ties necktie cravat neckerchief muffler stock "
        "bow jabot ruff",
        BODY: "coat coats jacket jackets shirt shirts blouse jersey sweater pullover jumper tunic smock vest "
        "waistcoat coveralls overalls suit apron robe robes gown cloak cape undershirt singlet parka anorak "
        "liner sleeve sleeves cuff cuffs placket pocket pockets shoulder chest breast cardigan fleece "
        "cassock mantle poncho habit kimono dress frock uniform outer",
        HANDS: "hand hands handwear glove gloves mitten mittens gauntlet gauntlets wrist finger",
        WAIST: "waist belt belts sash braces suspenders buckle cummerbund girdle harness obi",
        LEGS: "leg legs trouser trousers pants skirt shorts kilt breeches overtrousers tights leggings jeans "
        "knee",
        FEET: "foot feet footwear shoe shoes boot boots sock socks stocking stockings sandal sandals heel "
        "toe lace laces spats hose clogs slippers gaiters",
    }.items()
    for word in words.split()
}
_PROTECTS = {"head": HEAD, "eyes": EYES, "hearing": EYES, "hands": HANDS, "feet": FEET}
_TOPS = {"insignia": INSIGNIA, "accessory": ACCESSORIES, "carried": CARRIED, "grooming": GROOMING}


def zone_of(lookup: Lookup, item: str) -> str:
    """The heading under which a thing stands, from head to toe."""
    above = lookup.broader(item)
    top = next((zone for kind, zone in _TOPS.items() if kind in above), None)
    if top is not None:
        return top
    own, whole = _named(lookup, item), lookup.items[item].part_of
    if own is None and whole is not None:
        return zone_of(lookup, whole)
    named = (zone for kind in above if (zone := _named(lookup, kind)))
    protected = (_PROTECTS[p] for kind in above for p in lookup.items[kind].protects if p in _PROTECTS)
    return next(named, None) or next(protected, None) or (BODY if "garment" in above else OTHER)


def _named(lookup: Lookup, item: str) -> str | None:
    """The part of the body that a name tells of; the last word that tells any, as in "dress trousers"."""
    record = lookup.items[item]
    for label in (record.label, *record.other_labels, *record.everyday):
        head = label.lower().replace("-", " ").partition(" of ")[0]
        for word in reversed(head.split()):
            if word in _WORDS:
                return _WORDS[word]
    return None
