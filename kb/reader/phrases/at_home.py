"""What somebody at home does to a thing, and alters at home: "can my gran take up my trousers?".

Who does it is no member of a service, so that it is asked whether it may be done at all.
"""

from __future__ import annotations

from kb.reader.phrases.handlings import KIN_WORDS

_ALTER = (
    r"(?:shorten|lengthen|alter|adjust|hem|re-?hem|take up|take in|let out|let down|turn up|tailor|cut down)"
)
_CARE = (
    r"(?:wash|hand-?wash|machine-?wash|launder|clean|dry-?clean|iron|press|steam|starch|bleach|dye|polish"
    r"|brush|scrub|rinse|grease|oil|wax|mend|repair|patch|darn|tumble-?dry|boil|soak|sew|stitch|customi[sz]e"
    r"|decorate|paint|cut|trim)"
)
_PAST = {
    "shortened": "shorten", "lengthened": "lengthen", "altered": "alter", "adjusted": "adjust",
    "hemmed": "hem", "took up": "take up", "taken up": "take up", "took in": "take in",
    "taken in": "take in", "let out": "let out", "let down": "let down", "turned up": "turn up",
    "washed": "wash", "ironed": "iron", "pressed": "press", "starched": "starch", "bleached": "bleach",
    "dyed": "dye", "polished": "polish", "mended": "mend", "repaired": "repair", "patched": "patch",
    "darned": "darn", "boiled": "boil", "painted": "paint", "cut": "cut", "trimmed": "trim",
}  # fmt: skip
_HOME = (
    r"(?: (?:at home|back home|myself|ourselves|himself|herself|themselves|by hand at home|on the machine))*"
)
_OWN = r"(?:my|our|his|her|their|the)"
_BECAUSE = r"(?:,? (?:because|cos|coz|as|since|so that|so) [^.?!;]*)?"
_FINE = (
    r"[.;,–-]+ (?:so |and |but )*(?:that(?:'s| is)|is (?:that|it)|it(?:'s| is)|was (?:that|it)|all|any"
    r"|no|are|fine|ok|okay|right|allowed|nothing)\b[^.?]*\?+\s*$"
)
_DEEDS = "".join(
    rf"""# {done.split()[0]}
^(?:[^.?!]*[.!] )?(?:my|our) {KIN_WORDS} (?:has |have |'s |had |just
    \s|already )*{done} ({_OWN} [\w' -]+?){_HOME}
    {_BECAUSE}{_FINE} => may I {plain} \1?
"""
    for done, plain in _PAST.items()
)

AT_HOME = (
    rf"""
# mum mam mom mummy mother dad daddy father nan nana nanna gran granny grandma grandmother grandad grandpa
     grandfather wife husband missus hubby partner sister brother aunt auntie uncle daughter son girlfriend
     boyfriend fiancee fiance friend mate neighbour flatmate parents
\b(can|may|could|should|must|might) (?:my|our|his|her|their) {KIN_WORDS}
    (?=\s(?:just |please |still |quickly )?(?:{_ALTER}|{_CARE})\b) => \1 I
# shorten lengthen alter adjust hem take let turn tailor
\b((?:can|may|could) <i> (?:just |please )?{_ALTER} {_OWN} [\w' -]+?)(?: (?:at home|back home|myself|ourselves
    |himself|herself|themselves))+(?=\W*$|[.;,?]) => \1
\b((?:can|may|could) <i> (?:just |please )?)(take|let|turn) (them|it) (up|in|down|out)(?: (?:at home|back home
    |myself|ourselves|himself|herself|themselves))+(?=\W*$|[.;,?]) => \1\2 \3 \4
"""
    + _DEEDS
)
