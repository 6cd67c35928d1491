"""Edits of a good draft that leave it as true as it was: `(name, what stands there, what is put there)`."""

from __future__ import annotations

Edit = tuple[str, str, str]

KNIT_CAP = "The knit cap must be worn in boat rig (ref. (a), 3.4)."
UMBRELLA = "The umbrella must not be carried (ref. (a), 6.10)."

EDITS: list[Edit] = [
    ("shall", KNIT_CAP, "The knit cap shall be worn in boat rig (ref. (a), 3.4)."),
    ("is to be", KNIT_CAP, "The knit cap is to be worn in boat rig (ref. (a), 3.4)."),
    ("plain present", KNIT_CAP, "The knit cap is worn in boat rig (ref. (a), 3.4)."),
    ("place first", KNIT_CAP, "In boat rig, the knit cap must be worn (ref. (a), 3.4)."),
    ("place first without a comma", KNIT_CAP, "In boat rig the knit cap must be worn (ref. (a), 3.4)."),
    ("active", KNIT_CAP, "In boat rig, all members must wear the knit cap (ref. (a), 3.4)."),
    ("citation in words", KNIT_CAP, "The knit cap must be worn in boat rig (reference (a), clause 3.4)."),
    (
        "citation in front",
        KNIT_CAP,
        "By clause 3.4 of the Dress Order the knit cap must be worn in boat rig.",
    ),
    ("citation behind the stop", KNIT_CAP, "The knit cap must be worn in boat rig. (ref. (a), 3.4)"),
    ("bold", KNIT_CAP, "The **knit cap** must be worn in boat rig (ref. (a), 3.4)."),
    ("broken line", KNIT_CAP, "The knit cap must be\nworn in boat rig\n(ref. (a), 3.4)."),
    ("wide spaces", KNIT_CAP, "The  knit cap\u00a0must be   worn in boat rig (ref.\u00a0(a),  3.4)."),
    ("in capitals", KNIT_CAP, "THE KNIT CAP MUST BE WORN IN BOAT RIG (ref. (a), 3.4)."),
    ("said twice", KNIT_CAP, f"{KNIT_CAP} {KNIT_CAP}"),
    ("a true sentence more", KNIT_CAP, f"{KNIT_CAP} The sea boots must be worn in boat rig (ref. (a), 3.4)."),
    ("a remark", KNIT_CAP, f"{KNIT_CAP} Caps are dried in the boat house."),
    ("a heading more", "## 1. Head", "## 1. Head\n\n### What goes on it"),
    ("another heading", "## 1. Head", "## 1. Headgear of the crews"),
    ("no space in a measure", "must be 1 in (25 mm)", "must be 1 in (25mm)"),
    (
        "inches in words",
        "The height of the name strip must be 1 in (25 mm)",
        "The name strip must be one inch high",
    ),
    (
        "one unit",
        "The height of the name strip must be 1 in (25 mm)",
        "The height of the name strip must be 1 in",
    ),
    (
        "the other unit",
        "The height of the name strip must be 1 in (25 mm)",
        "The height of the name strip must be 25 mm",
    ),
    ("may not", "The service jersey must not be rolled", "The service jersey may not be rolled"),
    ("never", "The service jersey must not be rolled", "The service jersey must never be rolled"),
    ("forbidden", UMBRELLA, "It is forbidden to carry the umbrella (ref. (a), 6.10)."),
    ("order", UMBRELLA, "Do not carry the umbrella (ref. (a), 6.10)."),
    ("nobody", UMBRELLA, "No one may carry the umbrella (ref. (a), 6.10)."),
    ("typographic quotes", "“The white lanyard", '"The white lanyard'),
    ("grades one by one", "For K1 to K5, the length", "For K1, K2, K3, K4 and K5, the length"),
    ("plural", "Petty keepers must carry the whistle", "All petty keepers must carry the whistle"),
    (
        "a comma less",
        "K1 to K5 may wear the beard unless diving",
        "K1 to K5 may wear the beard, unless diving",
    ),
    ("except when", "may wear the beard unless diving", "may wear the beard except when diving"),
    ("if", "K1 to K5 may wear the beard unless diving", "K1 to K5 may wear the beard if not diving"),
    (
        "granted by whoever can",
        "extreme heat dress has been granted by the District Superintendent or a higher authority",
        "extreme heat dress has been granted",
    ),
    ("dates in another form", "**Effective date:** 1 December 2026", "Effective date: 2026-12-01"),
    ("another label", "**Expiry:** 31 March 2027", "Expires on 31 March 2027"),
    ("edition by its year", "Dress Order, second edition, in force", "Dress Order, 2024 edition, in force"),
]
