"""Edits of a good draft that make it false, each with the code of what has to be found on its line.

`(name, what stands there, what is put there, code)`; invented, in the manner of slips and of bad faith.
"""

from __future__ import annotations

Edit = tuple[str, str, str, str]

EDITS: list[Edit] = [
    (
        "wrong clause",
        "The colour of the storm coat must be navy blue (ref. (a), 2.1)",
        "The colour of the storm coat must be navy blue (ref. (a), 2.2)",
        "wrong-clause",
    ),
    (
        "wrong clause 2",
        "The storm coat must be worn in storm rig (ref. (a), 3.6)",
        "The storm coat must be worn in storm rig (ref. (a), 3.4)",
        "wrong-clause",
    ),
    (
        "wrong clause in pair",
        "must be worn (ref. (a), 3.4; ref. (a), 3.6)",
        "must be worn (ref. (a), 3.4; ref. (a), 3.8)",
        "wrong-clause",
    ),
    (
        "wrong ref letter",
        "The knit cap must be worn in boat rig (ref. (a), 3.4)",
        "The knit cap must be worn in boat rig (ref. (b), 3)",
        "wrong-clause",
    ),
    (
        "missing letter",
        "The knit cap must be worn in boat rig (ref. (a), 3.4)",
        "The knit cap must be worn in boat rig (ref. (f), 3.4)",
        "unknown-reference",
    ),
    (
        "invented clause",
        "The knit cap must be worn in boat rig (ref. (a), 3.4)",
        "The knit cap must be worn in boat rig (ref. (a), 3.44)",
        "invented-clause",
    ),
    (
        "changed quotation",
        "is not worn in foul weather, on parade or off it",
        "is rarely worn in foul weather, on parade or off it",
        "not-verbatim",
    ),
    (
        "reach",
        "must reach 2 to 4 in (50.8 to 101.6 mm) from the knee",
        "must reach 2 to 5 in (50.8 to 127 mm) from the knee",
        "wrong-measure",
    ),
    (
        "reach datum",
        "from the knee to the lower edge",
        "from the ankle to the lower edge",
        "differs",
    ),
    (
        "relaxed",
        "The flotation vest must be worn in boat rig",
        "The flotation vest may be worn in boat rig",
        "contradicts",
    ),
    (
        "relaxed need not",
        "The flotation vest must be worn on deck",
        "The flotation vest need not be worn on deck",
        "contradicts",
    ),
    (
        "negation removed",
        "The service jersey must not be rolled",
        "The service jersey must be rolled",
        "contradicts",
    ),
    (
        "negation added",
        "The identity disc must be worn",
        "The identity disc must not be worn",
        "contradicts",
    ),
    (
        "permit prohib",
        "The umbrella must not be carried",
        "The umbrella may be carried",
        "contradicts",
    ),
    (
        "swapped measure",
        "must be 3 in (76.2 mm) from the crown",
        "must be 4 in (101.6 mm) from the crown",
        "wrong-measure",
    ),
    (
        "unit changed",
        "The height of the name strip must be 1 in (25 mm)",
        "The height of the name strip must be 1 cm (25 mm)",
        "units-disagree",
    ),
    (
        "unit only twin",
        "The height of the name strip must be 1 in (25 mm)",
        "The height of the name strip must be 1 in (52 mm)",
        "units-disagree",
    ),
    (
        "about added",
        "The height of the name strip must be 1 in (25 mm)",
        "The height of the name strip must be about 1 in (25 mm)",
        "wrong-measure",
    ),
    (
        "at most relaxed",
        "the length of the beard must be at most 1 in (25 mm)",
        "the length of the beard must be at most 2 in (51 mm)",
        "wrong-measure",
    ),
    (
        "at most tightened",
        "the length of the beard must be at most 1 in (25 mm)",
        "the length of the beard must be at most 1/2 in (13 mm)",
        "wrong-measure",
    ),
    (
        "at least",
        "The height of the hair must be at most 2 in (51 mm)",
        "The height of the hair must be at least 2 in (51 mm)",
        "wrong-measure",
    ),
    (
        "count",
        "The number of finger rings worn must be at most 2",
        "The number of finger rings worn must be at most 3",
        "wrong-number",
    ),
    (
        "wrong grade",
        "Petty keepers must carry the whistle on watch",
        "K4 and above must carry the whistle on watch",
        "narrower",
    ),
    (
        "wrong grade wide",
        "K1 to K5 may wear the beard unless diving",
        "Deck hands may wear the beard unless diving",
        "wrong-grade",
    ),
    (
        "wrong grade 3",
        "Deck hands must wear the service strip",
        "Petty keepers must wear the service strip",
        "contradicts",
    ),
    (
        "dropped exception",
        "K1 to K5 may wear the beard unless diving",
        "K1 to K5 may wear the beard",
        "dropped-exception",
    ),
    (
        "dropped exception 2",
        "The finger ring may be worn unless machinery is running or the wearer is hauling lines",
        "The finger ring may be worn unless machinery is running",
        "dropped-exception",
    ),
    (
        "dropped exception 3",
        "on the slipway, unless the weather is foul, the wearer is hauling lines or the "
        "air temperature is below 4",
        "on the slipway, unless the wearer is hauling lines or the air temperature is below 4",
        "dropped-condition",
    ),
    (
        "dropped condition",
        "The quilted liner may be worn with the storm coat when the air temperature is "
        "below 10 °C or the weather is foul",
        "The quilted liner may be worn with the storm coat",
        "dropped-condition",
    ),
    (
        "or to and",
        "when the air temperature is below 10 °C or the weather is foul",
        "when the air temperature is below 10 °C and the weather is foul",
        "narrower",
    ),
    (
        "temperature",
        "when the air temperature is below 10 °C",
        "when the air temperature is below 15 °C",
        "dropped-condition",
    ),
    (
        "rig swapped",
        "The knit cap must be worn in boat rig",
        "The knit cap must be worn in storm rig",
        "dropped-condition",
    ),
    (
        "rig swapped 2",
        "The nail varnish may be worn in storm rig",
        "The nail varnish may be worn in boat rig",
        "contradicts",
    ),
    (
        "item swapped",
        "The storm coat must be worn in storm rig",
        "The shore coat must be worn in storm rig",
        "contradicts",
    ),
    (
        "colour",
        "The colour of the flotation vest must be orange",
        "The colour of the flotation vest must be yellow",
        "wrong-value",
    ),
    (
        "side",
        "The coxswain's badge must be worn centred above the breast pocket of the day "
        "shirt, on the left side",
        "The coxswain's badge must be worn centred above the breast pocket of the day "
        "shirt, on the right side",
        "differs",
    ),
    (
        "position relation",
        "The coxswain's badge must be worn centred above the breast pocket",
        "The coxswain's badge must be worn centred below the breast pocket",
        "differs",
    ),
    (
        "manner",
        "The storm coat must have all buttons done up to the throat",
        "The storm coat must have all buttons done up to the waist",
        "differs",
    ),
    (
        "manner care",
        "The wool scarf must be dried flat",
        "The wool scarf must be ironed",
        "not-said",
    ),
    (
        "manner care neg",
        "must not be wrung",
        "must be wrung",
        "contradicts",
    ),
    (
        "manner quoted",
        "must be “ending at or above",
        "must be “ending at or below",
        "not-verbatim",
    ),
    (
        "stale date",
        "Dress Order, second edition, in force from 1 March 2024",
        "Dress Order, second edition, in force from 1 March 2023",
        "stale-date",
    ),
    (
        "expired edition",
        "Dress Order, second edition, in force from 1 March 2024",
        "Dress Order, first edition, in force from 1 May 2019",
        "expired-edition",
    ),
    (
        "unknown edition",
        "Dress Order, second edition, in force from 1 March 2024",
        "Dress Order, 2022 edition, in force from 1 March 2022",
        "unknown-edition",
    ),
    (
        "expiry before",
        "**Expiry:** 31 March 2027",
        "**Expiry:** 31 March 2026",
        "stale-date",
    ),
    (
        "sentence date",
        "From 15 January 2027, the headphones may be worn",
        "From 15 January 2026, the headphones may be worn",
        "not-in-force",
    ),
    (
        "sentence date 2",
        "From 15 January 2027, the headphones may be worn",
        "From 15 February 2027, the headphones may be worn",
        "stale-date",
    ),
    (
        "sentence date 3",
        "Before 15 January 2027, the headphones may be worn",
        "Before 15 March 2027, the headphones may be worn",
        "stale-date",
    ),
    (
        "local without",
        "(local, under ref. (a), 1.10)",
        "(local)",
        "no-delegation",
    ),
    (
        "local removed",
        "(local, under ref. (a), 1.10)",
        "",
        "dropped-condition",
    ),
    (
        "local wrong deleg",
        "(local, under ref. (a), 1.10)",
        "(local, under ref. (a), 1.12)",
        "no-delegation",
    ),
    (
        "local other deleg",
        "(local, under ref. (a), 1.10)",
        "(local, under ref. (a), 1.9)",
        "outside-delegation",
    ),
    (
        "local lenient",
        "The boat helmet must be worn on deck when the sea state is moderate or above (local",
        "The boat helmet need not be worn on deck when the sea state is rough or above (local",
        "outside-delegation",
    ),
    (
        "local vest",
        "The boat helmet must be worn on deck when the sea state is moderate or above (local",
        "The flotation vest need not be worn on the slipway (local",
        "outside-delegation",
    ),
    (
        "new rule",
        "The knit cap must be worn in boat rig (ref. (a), 3.4).",
        "The knit cap must be worn in boat rig (ref. (a), 3.4). The earrings may be worn "
        "in the mess (ref. (a), 6.5).",
        "wrong-clause",
    ),
    (
        "new rule uncited",
        "The knit cap must be worn in boat rig (ref. (a), 3.4).",
        "The knit cap must be worn in boat rig (ref. (a), 3.4). The earrings may be worn.",
        "contradicts",
    ),
    (
        "deleted exception sentence",
        "The sun hat must not be worn on watch, unless extreme heat dress has been "
        "granted by the District Superintendent or a higher authority",
        "The sun hat must not be worn on watch, unless extreme heat dress has been granted",
        "narrower",
    ),
    (
        "word only",
        "may be carried when not on watch",
        "may be carried when on watch",
        "contradicts",
    ),
    (
        "unless->when",
        "unless holding the medical waiver or the religious waiver",
        "when holding the medical waiver or the religious waiver",
        "dropped-condition",
    ),
    (
        "waiver swapped",
        "Deck hands with the medical waiver may wear the beard",
        "Deck hands with the pilot qualification may wear the beard",
        "dropped-condition",
    ),
    (
        "not both",
        "but not both ",
        "",
        "dropped-condition",
    ),
    (
        "either->both",
        "either the storm hat or the storm hood must be worn, but not both",
        "the storm hat and the storm hood must be worn",
        "dropped-condition",
    ),
    (
        "boundary",
        "air temperature is below 4 °C (ref. (a), 7.5)",
        "air temperature is at most 4 °C (ref. (a), 7.5)",
        "dropped-condition",
    ),
    (
        "wrong grade, wider",
        "Petty keepers must carry the whistle on watch",
        "K1 to K5 must carry the whistle on watch",
        "wrong-grade",
    ),
    (
        "belt",
        "The width of any belt must be 1 1/2 in (38 mm)",
        "The width of any belt must be 1 in (25 mm)",
        "wrong-measure",
    ),
    (
        "finish",
        "The finish of the belt buckle must be matt",
        "The finish of the belt buckle must be polished",
        "wrong-value",
    ),
    (
        "book swapped",
        "must be matt (ref. (b), 3)",
        "must be matt (ref. (c), 3)",
        "wrong-clause",
    ),
    (
        "authority",
        "has been granted by the District Superintendent or a higher authority",
        "has been granted by the Master of the Station or a higher authority",
        "differs",
    ),
    (
        "exactly one",
        "Either the canvas belt or the webbing belt must be worn, but not both",
        "Neither the canvas belt nor the webbing belt may be worn",
        "contradicts",
    ),
]
