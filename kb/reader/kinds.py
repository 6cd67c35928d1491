"""Everyday nouns of dress that mean the same, and those that name a kind of another, as people use them.

They help where a rule book has one of the names and a person another. A book's own names always go before.
"""

from __future__ import annotations

from collections.abc import Iterator

_SAME = """
wellies|wellie|wellington boots|wellingtons|gumboots|gum boots|rubber boots
specs|spectacles|eyeglasses|glasses
shades|sunglasses|dark glasses|sunnies
lifejacket|life jacket|life vest|lifevest|flotation vest|flotation jacket|buoyancy aid|buoyancy vest|PFD
hi-vis|hi-viz|high-vis|hi-vis vest|hi-viz vest|high-vis vest|high-visibility vest|reflective
vest|fluorescent vest
hi-vis jacket|hi-viz jacket|high-visibility jacket|high-vis jacket|reflective jacket|fluorescent jacket
jumper|jersey|sweater|pullover
trainers|sneakers|running shoes|sports shoes|gym shoes
backpack|rucksack|knapsack
mobile|mobile phone|cell phone|smartphone|smart phone|telephone|phone
earphones|headphones|earbuds|ear buds|airpods|headset|earpods
torch|flashlight|hand torch|pocket torch
tash|moustache|tache|stache
woolly hat|bobble hat|beanie|knit cap|knitted cap|knitted hat|wool hat|wool cap
overalls|boiler suit|coveralls
dog tags|identity disc|ID disc|identity tag|ID tag
ear defenders|ear muffs|earmuffs|ear protectors|hearing protection
hard hat|safety helmet
tie|necktie
nail varnish|nail polish|nail lacquer|nail enamel
make-up|cosmetics|makeup
hair tie|hair band|hair bobble|scrunchie|hair elastic
hair clip|hair grip|hairgrip|kirby grip|hair slide|bobby pin
umbrella|brolly
penknife|pocket knife|clasp knife
raincoat|mac|mackintosh
neckerchief|neck cloth|kerchief
braces|suspenders
waterproof trousers|overtrousers|rain trousers|waterproof bottoms
walkie-talkie|two-way radio|handheld radio
satchel|shoulder bag|messenger bag
bumbag|waist pack|fanny pack
name tag|name strip|name tape|name label
earrings|ear studs|ear rings
ear plugs|earplugs
plimsolls|canvas shoes
neck gaiter|snood|neck tube
high heels|stilettos
handbag|purse
swimming trunks|swim shorts
"""
_NARROWER = """
beard: goatee|van dyke|full set|chin beard|stubble
jewellery: bracelet|bangle|anklet|ankle chain|necklace|nose stud|nose ring|lip ring|lip stud|tongue stud
|eyebrow ring|brooch|toe ring
wristwatch: smartwatch|smart watch|digital watch
make-up: lipstick|mascara|eyeliner|foundation|blusher|eye shadow|concealer|lip gloss
hair fastening: hair tie|hair band|hair bobble|scrunchie|hair clip|hair grip|kirby grip|hair slide|bobby pin
mobile phone: iphone
headgear: baseball cap|bucket hat|trilby|fedora|bowler hat
sandals: flip-flops
"""


def same() -> Iterator[tuple[str, ...]]:
    """Names that mean the same, row by row."""
    yield from (tuple(line.split("|")) for line in _SAME.strip().replace("\n|", "|").splitlines())


def narrower() -> Iterator[tuple[str, tuple[str, ...]]]:
    """A name and those of its kinds."""
    for line in _NARROWER.strip().replace("\n|", "|").splitlines():
        kind, _, names = line.partition(": ")
        yield kind, tuple(names.split("|"))
