"""English as data: function words, phrases that carry structure, words that carry nothing.

Nothing here belongs to a service; everything a service names comes from its rule base. A phrase is written
in lower case with contractions taken apart ("can't" is "can n't"); its tag says what it does in a question.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from kb.reader.phrases.talk import TALK

# One line per tag, continued by lines that begin with "|", which separates phrases. A phrase under several
# tags has the last.
_PHRASES = """
self: i|we|me|us|myself|ourselves|he|she|they|him|her|them|it|itself
person: you|one|someone|anyone|somebody|anybody|everyone|everybody|person|persons|people|member|members
|personnel|staff|those|each|each person|all members|every member|the wearer|wearer|wearers|we all
|all of us|a member of the service
|mate|mates|friend|friends|colleague|colleagues|shipmate|shipmates|workmate|workmates
kin: son|sons|daughter|daughters|brother|brothers|sister|sisters|nephew|niece|cousin
det: a|an|the|any|some|this|that|these|those|all|every|pair of|a pair of|pairs of|another|other|the same
|both|its|their|there|kind of|type of|sort of|kinds of|types of|piece of|pieces of
poss: my|your|our|his|my own|your own|their own
can: can|could|might|can i just
may: may
must: must|shall|ought to|ought i to|ought we to|ought he to|ought she to|ought they to
|have i got to|have we got to|have you got to|have they got to
should: should
have to: have to|has to|had to|need to|needs to|got to|have got to|has got to|need|needs|require
|requires|required to|obliged to
|supposed to|expected to|bound to|meant to|need to be|have to be|has to be|needs to be
|required to be|supposed to be|obliged to be|made to|forced to|must be
allowed: allowed|allowed to|allowed to be|permitted|permitted to|permitted to be|permissible|permit
|permits|allow|allows|authorised|authorized|authorised to|authorized to|ok|okay|o.k.|fine|acceptable
|alright|all right|legal|proper|correct|right|in order|authorisation for|permission|need permission to
|need permission for|need permission|need authorisation to|need authorisation for|need authority to
|free to|at liberty to|entitled to|eligible for|eligible to|ok to|okay to|fine to|alright to|all right to
|acceptable to|ok if|okay if|fine if|all right if|alright if|acceptable if|good to go|get away with
|right to|mine to|yours to|ours to|permission to
|do the rules allow|do the rules permit|do the rules let|the rules allow
|does the order allow|do the regulations allow|do the books allow|let
|no rule against|no rules against|no ban on|nothing against
banned: a fault|a problem that|at fault|at fault if|at fault for|an offence if|any fault
|anything against|banned|prohibited|forbidden|disallowed|unauthorised|unauthorized|illegal
|against the rules|against regulations|against the regulations|out of order|wrong|a rule against
|any rule against
|a rule that forbids|a rule forbidding|rules against|a ban on|verboten|barred|banned from|forbidden to
|prohibited from|forbidden from|barred from|do the rules forbid|do the rules prohibit|do the books forbid
|does the order forbid
required: required|compulsory|mandatory|obligatory|necessary|needed|a must|a duty|obliged|wanted
|requirement|a requirement|called for|prescribed|do the rules require|do the books require
|does the order require
optional: may but need not|optional|voluntary|a choice|up to me|discretionary
be: is|are|am|was|were|be|been|being|'s|'re|'m
do: do|does|did
have: have|has|had|having|got|'ve|get
not: not|n't|never
no: no
neither: neither|none of|not any of|of neither|not of any of
what: what|what all|what sort of|what kind of|what type of|what else|what things|what items|what clothes
|what clothing|what garments|which items|which clothes|which garments|whatever|which things|what articles
|which articles|anything|what gear|what kit
which: which|which of|which one of
who: who|whom|whoever|who all|who else|which people|which members|what grades|which grades|which grade
|what grade|which ranks|which rank|what rank|what ranks|which persons|by whom|for whom|whose
where: where|on what|whereabouts|in what place|in which place|in what position|in which position|what position
|which position|on which side|on what side|which side|what side|at what position
|which hand|what hand|in which hand|in what hand|on which hand|on what hand
|which arm|what arm|which shoulder|what shoulder|which wrist|what wrist|which breast|which ear|which finger
|which leg|which foot|which sleeve|what sleeve|on which sleeve|on what sleeve|which lapel|on which lapel
|which cuff|on which cuff|which pocket|on which pocket|on which arm|on what arm|on which shoulder
|on which wrist|on which breast
|on which finger
|on which leg|whereabouts on
how: how|in what way|in which way|in what manner|what way|how exactly|by what means
how many: how many|the maximum number of|the max number of|maximum number of|max number of
|the greatest number of|the largest number of|what is the maximum number of|what 's the maximum number of
|what is the max number of|what 's the max number of|what 's the number of|what number of|how much
|what is the number of|number of
when: when|at what time|on what occasions|on which occasions|in which situations|in what situations
|under what conditions|in what circumstances|under which circumstances|in what weather
|under what circumstances|on what occasion
why: why|why or why not|why , or why not ,|why , or why not|how come|for what reason|what is the reason
|for which reason
compare: compare|difference between|differ from|differs from|difference|compared with|versus|vs
|distinguishes|differences between|tell apart|differ|differs|differences|compared to|comparison between
|comparison of|comparison|as against|against that|what differs|is different|are different|different from
|different between|different|what has changed|what changed|what changes|what will change|what is new
|now against|now versus|now vs|now compared with|now compared to
|has anything changed|has changed|have changed|what else has changed|anything changed|changed since
order: in what order|in which order|what order|which order|order of precedence|which comes first
|comes first|precedence|takes precedence|which goes first|which is senior|order of seniority
dimension:size: big|large|small|deep|how deep|how big|how large|how small|what size|which size|what dimensions
|dimensions|dimension|what measurements|measurements
dimension:height: high|tall|how high|how tall
dimension:width: wide|broad|how wide|how broad|across
dimension:length: long|how long|short|how short
dimension:diameter: in diameter|across in diameter
dimension:position: how far|how close|how near
care: care for|look after|wash|washing|washed|clean|cleaning|cleaned|launder|laundering|laundered|dry
|drying|dried|iron|ironing|ironed|store|stored|treat|maintain|maintained|maintenance|taken care of
|take care of|cared for|looked after|care
wear: be worn|sit|sits|put on|puts on|putting on|have on|has on|having on|keep on|keeps on|keeping on
|kept on|don|dons|donned|donning|dress in|dressed in|be dressed in|turn out in|turned out in|wear|wears
|wearing|worn|wore|consist of|consists of|made up of|comprise|comprises|dress|dressed|get dressed
|go about in|appear in|attire myself
use: put|puts|be in|use|used|using|display|displayed|displaying|sport|go in
|grow|grows|growing
leave off: go without|goes without|going without|do without|does without|doing without|leave off
|leaves off|leaving off|left off|take off|takes off|taking off|taken off|skip|skips|skipping|skipped|omit
|omits|omitting|omitted|remove|removes|removing|removed|be without|being without|get away without
|dispense with|dispensing with|doff|doffs|doffed|leave out|leaving out|left out|work without|stay without
|not bother with|ditch|shed|discard|forgo|forego|walk about without|appear without|go about without
|dispensed with
|shave off|shave|shaves|shaving|shaved off|shaved|removed
with: with|go with|goes with|going with
|over|under|underneath|beneath|on top of|alongside|together with|along with|as well as|plus
|in combination with|in addition to|in conjunction with|combined with|accompanied by|inside|inside of
|beside my|at the same time as|wearing only
without: without|without wearing|without a|without any|minus|w/o|instead of|rather than|in place of
|not wearing|lacking|sans|in the absence of|with no
alone: alone|with nothing else worn|nothing else worn|by itself|by themselves|on its own|on their own
|on it own|by its own|nothing else|and nothing else|with nothing else|solo|on its own only
|without anything else|nothing but|with nothing over it|by itself only|all by itself|all alone
|and no other|as the only thing|separately
only: only|just|merely|solely|exclusively
comma: ,
and: and|&|nor|also with
or: or|either|and or
together: together|at once|at a time|at the same time|simultaneously|in combination|at one time
but: but|except|but not|except for|excluding|not including|other than the|other than|save|except not
|apart from
|not counting|and not|and never
upward: and above|and up|and upwards|and upward|or above|and higher|or higher|and senior|and over|or over
|upwards|or up|or senior|and more senior|or more senior|or better|plus grade
downward: and below|and under|and down|and lower|or below|or lower|or under|and junior|or junior
|and downwards|downwards|or down|and more junior
above: above|higher than|senior to|more than|over grade|more senior than|greater than
below: below|lower than|junior to|less than|fewer than|under grade|more junior than
at least: at least|no lower than|not below|no less than|not less than|minimum|a minimum of|not under
at most: at most|no higher than|not above|no more than|not more than|maximum|a maximum of|not over
range: through|thru|until|till|up to|-|–|—
between: from|between
place: on the left|on the right|left|right|on the left side|on the right side|left side|right side
|on the left of|on the right of
on: on|onto|upon|next to|beside|near|at|in front of|behind|between the|around|along|close to|attached to
|pinned to|sewn to|fixed to
in: in|into|within|among|during|throughout|amid
of: of|belonging to|on behalf of|from the
for: for|as|as a|as an|being a|for a|like|if you are|if i am|if one is|that is|that are|acting as
|serving as|in the role of|in the case of|to be
if: if|when i make|when i become|once i make|once i become|if i make|if i become|when i|when you|when we
|while|whilst|whenever|provided|provided that|as long as|once|where i
|given that|in case|assuming|suppose|supposing|given|unless it is not
unless: unless
to: to|go to|goes to|so as to|be going to
by: by|through the|from the side of
say: say|says|said|state|states|read|reads|tell me about|write|written|contain|contains|text of|wording of
|provide|provides
show: show|show me|display clause|quote|print|give me|open|cite|see|look up|view|let me see
list: list|list all|name|enumerate|list everything|everything
clause: clause|clauses|paragraph|paragraphs|section|sections|article|articles|para|cl|rule number
|regulation number|subparagraph
rule: rules|rule|the rules|the rule|regulations|regulation|the regulations|the regulation
whatever: with or without|whether or not|regardless of|no matter
which clause: which clause|what clause|which clauses|what clauses|which rule|what rule|which rules
|what rules|which regulation|which paragraph|which section|where does it say|where does it state
|where is it written|where is it said|where does the book say|where do the rules say
|where does it say that|where is it stated|what is the source|what is the source for|source for|source
|the source|reference for|authority for|what authority|citation for|cite the rule|where do i find
|where can i find|what is the rule|what is the rule for|what are the rules|what are the rules for
|what does the book say|what do the rules say|what does it say|what says|rules for|rules on|rules about
|rule for|rule on|rule about|the rule for|the rules on|the rules for
about: cover|covers|covering|covered|govern|governs|governing|deal with|deals with|about|concerning
|regarding|concern|concerns|regulate|regulates|mention|mentions|relate to|relates to|speak of|speaks of
|apply|applies|apply to|applies to|on the subject of|with regard to|as to|set|sets|lay down|lays down
hold: hold|holds|holding|held|possess|possesses|possessing|qualified as|qualified|qualified in
|holder of|holders of|earned|awarded|been awarded|been given|certified|certified as|trained as|appointed
|appointed as|am appointed|entitled to wear
too many: too many|too few|enough|too much|suffice|suffices|sufficient
grant: granted|grant|grants|granting|has granted|have granted|been granted|has been granted|authorised by
|authorized by|approved|approved by|ordered|ordered by|has ordered|has authorised|has authorized
|has approved|has allowed|gave|has given|given by|has been given|granted by
|declared|declares|declare|in force|in effect|announced|proclaimed|signed|signed by
|gives permission for|has been declared|authorise|authorises|authorize|authorizes
|approve|approves|issue|issues|issued|give|gives|sign off|give leave for|gives leave for|give leave to
|gives leave to|give permission for|give permission to|gives permission to|grants leave for
|grants permission for|allows for
no longer: no longer|not any more|not anymore|no more|have stopped|stopped
and how about: what about|how about|and what about|and how about|and what if|what if|and if|and for
|and when
unread: last may|next may|by may|until may|since may|after may|before may|after|before
|despite|because|because of|towards|against|beyond
|than|via|per|although|though|unlike|on display|on view|in view|in sight|on show
beyond: outside|outside of|out of|away from
outdoors: outdoors|out of doors|outside|out in the open|in the open|in the open air|out in the open air
|open air
degree: heavy|heaviest|pouring|driving|torrential|dense|thick|persistent|steady|blinding|freezing|bitter
fix: fix|fixes|fixed|fixing|affix|affixed|attach|attaches|attached|attaching|mount|mounted|sew|sews|sewn|sewed
|situated|located|placed|positioned|stitch|stitched|pinned|put on to|stuck|kept|move|moves|moved
|shift|slot|stick|clip
run: start|starts|begin|begins|end|ends|finish|finishes|run|runs|hang|hangs|fall|falls|come|comes|come to
|comes to
fasten: button|button up|buttoned|buttoned up|buttoning|do up|done up|zip|zip up|zipped|zipped up|hook
|hooked|lace
|laced|laced up|lace up|fasten|fastened|fastening up|close|closed|unbutton|unbuttoned|undo|undone|unzip
|unzipped
|unfasten|unfastened
fully: all the way|all the way up|right up|fully|completely|to the top
mean: deemed|deemed to be|classed as|classed|treated as|regarded as|defined as|amount to|amounts to|rank as
|ranks as|mean|means|meant by|is meant by|counts as|count as|define|definition of|the definition of
oversize: too wide|too broad|too long|too short|too high|too tall|too big|too large|too small|too narrow
|too low|too far
|too close|too deep|too near
does:alteration: shorten|shortens|shortened|shortening|lengthen|lengthened|lengthening|modify|modifies
|modified
|taken in|taking in|let out|tailored|cut down|customise|customised|customize|customized
does:piercing: stick a pin through|stick a pin in|put a pin through|push a pin through|make a hole in
|make holes in
|punch a hole in|punch holes in|put a hole in|put holes in|stick a pin into|put a pin in|run a pin through
does:carrying: bring|brings|bringing|bring along|carry about|have on me|have with me|take with me
date: effective|as of|with effect from|starting|since|dated
"""

_FILLER = """
surely|, right|, correct|, ok|right ?|belong|belongs|please|pls|kindly|tell me|tell me whether
|tell me if|could you tell me|can you tell me|could you tell me if|can you tell me if
|can you tell me whether|could you tell me whether|do you know|do you know if|do you know whether
|i want to know|i want to know if|i want to know whether|i would like to know|i would like to know if
|i'd like to know|i would like to know whether|i wonder if|i wonder whether|i was wondering if
|i am wondering if|i wonder|whether|would you say|hello|hi|hey|thanks|thank you|cheers|also|really
|actually|still|then|so|well|currently|now|today|ever|exactly|normally|usually|generally|officially
|technically|strictly|strictly speaking|in general|at all|question|a question|quick question|simply|even
|too|as well|would|will|sir|maam|ma'am|dear|excuse me|by the way|anyhow|anyway|possible|possible to
|is it possible|is it possible to|is it true that|is it true|is it the case that|according to
|under the rules|under the regulations|by regulation|according to the rules|according to the regulations
|and so on|etc|etc.|out|about it|of them|of it|of these|of those|ones|let 's say|let us say|say i|i mean
|you know|i think|i believe|i guess|i heard that|they say|someone says that|someone said that|is it
|is there|are there|it is|it 's|that 's|there is|there are|let|ask|asking|know|wonder|wondering|want
|would like|like to|must there be|question about|under any circumstances|in any case|ever so|properly
|correctly|rightly|right now|at present|at the moment|presently|yet|already|again|instead|else|simply put
|in its place|in their place
|any time of year|at any time of year|at any time of the year|any time of the year|all year round
|the whole year round|all the year round|these days|nowadays|any more|any longer|anymore|for now|by now
|just now|as things stand|in short|myself personally|personally
|uniform|uniforms|outfit|order to|in order to|choose|choose to
|decide|decide to|opt|opt to|just to|going|go|be wearing|someone else|you guys|the service|service member
|or not|on my own|on your own|on our own|drops|drops to|sinks|sinks to|rises|rises to|climbs|climbs to
|reaches|dips|of mine|of ours|do the
|up here|down here|over here|out here|up there|down there|out there
|over there|around here|round here|say that|that says
|in this rig|in that rig|with this rig|with that rig|in the same rig
"""

_PARTICLES = "on|off|up|down|out|back"

SPLIT_VERBS: Mapping[tuple[str, str], str] = MappingProxyType(
    {
        (verb, "off"): "leave off"
        for verb in ("leave", "leaving", "left", "take", "taking", "taken", "keep", "have")
    }
    | {(verb, "out"): "leave off" for verb in ("leave", "leaving", "left")}
    | {
        (verb, "on"): "wear"
        for verb in ("put", "putting", "have", "keep", "keeping", "leave", "leaving", "pull")
    }
)
"""Verbs that are parted from their particle by an item: "leave the cap off"."""


BODY: Mapping[str, frozenset[str]] = MappingProxyType(
    {
        part: frozenset(words.split())
        for part, words in {
            "head": "head headgear headwear headdress hat cap helmet hood beret turban",
            "hands": "hand handwear glove mitten mitt gauntlet",
            "feet": "foot footwear shoe boot sandal clog slipper sock stocking",
            "neck": "neck neckwear scarf muffler tie necktie kerchief neckerchief cravat",
            "legs": "leg legwear trouser pant skirt short legging gaiter kilt",
            "upper body": "coat jacket tunic shirt jersey sweater jumper pullover smock vest blouse",
            "ears": "ear earring earmuff earphone headphone",
            "eyes": "eye eyewear goggle glass spectacle sunglass",
            "wrists": "wrist wristwatch watch bracelet",
        }.items()
    }
)
"""Parts of the body and the keys of the nouns of what is worn there, a body word itself among them."""

LIMBS = frozenset(
    [
        "hand",
        "head",
        "arm",
        "leg",
        "foot",
        "face",
        "neck",
        "wrist",
        "ear",
        "eye",
        "body",
        "chest",
        "finger",
        "thumb",
        "knee",
        "elbow",
    ]
)
"""Keys of parts of the body, which no item is meant by."""

_BODY_WORDS = {
    "head": "head heads", "hands": "hand hands", "feet": "foot feet", "neck": "neck throat",
    "legs": "leg legs", "upper body": "body chest torso", "ears": "ear ears", "eyes": "eye eyes face",
    "wrists": "wrist wrists",
}  # fmt: skip


def _body_phrases() -> Iterator[tuple[str, tuple[str, ...]]]:
    """ "on my head", "round the neck", each with its part of the body."""
    for part, words in _BODY_WORDS.items():
        for word in (*words.split(), *(["upper body"] if part == "upper body" else [])):
            for before in ("on", "for", "over", "round", "around", "about"):
                for owner in ("my", "your", "the", "his", "her", "their", "our", "both"):
                    yield part, (before, owner, *word.split())


def _phrases() -> dict[tuple[str, ...], str]:
    table: dict[tuple[str, ...], str] = {}
    for line in _PHRASES.strip().replace("\n|", "|").splitlines():
        tag, _, phrases = line.rpartition(": ")
        for phrase in phrases.split("|"):
            table[tuple(phrase.split())] = tag
    for phrase in _FILLER.replace("\n", "").split("|"):
        table.setdefault(tuple(phrase.split()), "filler")
    for line in TALK.strip().replace("\n|", "|").splitlines():
        tag, _, phrases = line.rpartition(": ")
        for phrase in phrases.split("|"):
            table.setdefault(tuple(phrase.split()), tag)
    for part, opening in _body_phrases():
        table[opening] = f"body:{part}"
    for word in _PARTICLES.split("|"):
        table.setdefault((word,), "particle")
    return table


PHRASES: Mapping[tuple[str, ...], str] = MappingProxyType(_phrases())
LONGEST_PHRASE = max(map(len, PHRASES))

SKIPPED_INSIDE_LABELS = frozenset(
    [
        "a",
        "an",
        "the",
        "my",
        "your",
        "his",
        "her",
        "its",
        "our",
        "their",
        "is",
        "are",
        "was",
        "were",
        "be",
        "being",
        "am",
        "'s",
    ]
)
"""Words that may stand between the words of a label: "the sleeves are down" is "sleeves down"."""

LEADING_PREPOSITIONS = frozenset(
    ["in", "on", "at", "by", "of", "aboard", "during", "under", "with", "the", "a", "an", "working"]
)


def tag_set(text: str) -> frozenset[str]:
    """Tags written in a row, parted by commas or line ends."""
    return frozenset(tag.strip() for tag in text.replace("\n", ",").split(",") if tag.strip())


WEAK = tag_set("fix, run, fasten, fully, degree, mean, outdoors, beyond")
"""Tags of words that a rule book may well use as names; a name of any rank goes before them."""

ARRANGED = tag_set("""
    tucked, draped, tied, knotted, wrapped, folded, turned, rolled, laced, buttoned, zipped, hooked, clipped
    pinned, closed, done, fastened, arranged, set, secured, slung
""")
"""Participles that say in what way something is worn."""

CREDENTIAL_NOUNS = frozenset(
    ("qualification", "qualified", "appointment", "appointed", "waiver", "exemption", "certificate", "badge")
)
"""Generic words of a credential's label: what is left names it ("diver qualification": diver)."""
