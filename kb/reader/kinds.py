"""Everyday nouns of dress that mean the same, those that name a kind of another, and words for circumstances.

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

_CIRCUMSTANCES = """
by day|daylight|daytime|in the daytime|broad daylight|noon|midday|lunchtime|during the day|during daylight
|day time|at noon|at midday|in broad daylight
at night|night|nighttime|night time|by night|midnight|during the night|overnight
dark|dark hours|darkness|hours of darkness|after dark|nightfall|after nightfall|after sunset|dark outside
rain|raining|rainy|wet weather|pouring|pouring down|pouring with rain|drizzle|drizzling|downpour
|chucking it down|bucketing down|tipping down|tipping it down|pelting down|raining cats and dogs
|belting down|hammering down|lashing down|teeming|teeming down|belting down with rain|coming down in buckets
|showery|showers
snow|snowing|falling snow|snowfall|snowstorm|blizzard|snowing hard
fog|foggy|mist|misty|fog bank
fair weather|fine weather|dry weather|clear weather|sunny|sunny weather|sunshine|sunny day|fine day|dry day
|fair day|clear day|nice weather|lovely weather|good weather
foul weather|bad weather|filthy weather|dirty weather|nasty weather|horrible weather|awful weather
|rotten weather|lousy weather|dreadful weather|stormy weather
funeral|attending a funeral|burial|interment
on leave|on holiday|holiday|on vacation|vacation|on furlough|furlough
on watch|on duty|on shift
travelling on duty|duty travel|duty journey|duty trip|on a duty journey|on a duty trip
ashore|on land|on dry land
afloat|at sea|on the water|out on the water
diving|scuba diving
painting|doing some painting
machinery running|running machinery|moving machinery|near moving machinery|machinery in motion
|machines running|running machines|machines going|near running machines|near moving machines|moving machines
searching|on a search|out on a search
winter|wintertime|winter months|midwinter
summer|summertime|summer months|midsummer|high summer
"""


def circumstances() -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """Words for one state of things, row by row, each with those for its contrary."""
    lines = _CIRCUMSTANCES.strip().replace("\n|", "|").splitlines()
    rows = [tuple(line.split("|")) for line in lines]
    contrary = {rows[0]: rows[2], rows[-1]: rows[-2]}  # by day and in the dark, in summer and in winter
    yield from ((row, contrary.get(row, ())) for row in rows)
    yield (*rows[1], *rows[2]), ()  # "at night", where all that the books have is "dark"


def same() -> Iterator[tuple[str, ...]]:
    """Names that mean the same, row by row."""
    yield from (tuple(line.split("|")) for line in _SAME.strip().replace("\n|", "|").splitlines())


def narrower() -> Iterator[tuple[str, tuple[str, ...]]]:
    """A name and those of its kinds."""
    for line in _NARROWER.strip().replace("\n|", "|").splitlines():
        kind, _, names = line.partition(": ")
        yield kind, tuple(names.split("|"))
