"""Everyday nouns of dress that mean the same, those that name a kind of another, and words for circumstances.

They help where a rule book has one of the names and a person another. A book's own names always go before.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

_SAME = """
wellies|wellie|wellington boots|wellingtons|gumboots|gum boots|rubber boots
specs|spectacles|eyeglasses|glasses
shades|sunglasses|dark glasses|sunnies
lifejacket|life jacket|life vest|lifevest|flotation vest|flotation jacket|buoyancy aid|buoyancy vest|PFD
hi-vis|hi-viz|high-vis|high-viz|hi-visibility|high-visibility|hi-vis vest|hi-viz vest|high-vis vest
|high-viz vest|high-visibility vest|reflective vest|fluorescent vest|hi-vis tabard|hi-viz tabard
|high-vis tabard|high-viz tabard|high-visibility tabard|reflective tabard|fluorescent tabard|warning vest
|warning tabard|hi-vis waistcoat|high-visibility waistcoat
hi-vis jacket|hi-viz jacket|high-visibility jacket|high-vis jacket|reflective jacket|fluorescent jacket
jumper|jersey|sweater|pullover
trainers|sneakers|running shoes|sports shoes|gym shoes|creps|trainer shoes|runners|tennis shoes|training shoes
backpack|rucksack|knapsack|daysack|day sack|bergen|ruckie
mobile|mobile phone|cell phone|smartphone|smart phone|telephone|phone
earphones|headphones|earbuds|ear buds|airpods|headset|earpods
torch|flashlight|hand torch|pocket torch
tash|moustache|tache|stache
woolly hat|wooly hat|bobble hat|bobble cap|beanie|beany|knit cap|knitted cap|knitted hat|wool hat|wool cap
overalls|boiler suit|coveralls
dog tags|identity disc|ID disc|identity tag|ID tag
ear defenders|ear muffs|earmuffs|ear protectors|hearing protection
hard hat|safety helmet
safety boots|safety shoes|steel toe caps|steel toecaps|toe-capped boots|toecapped boots|toecap boots
|toe-cap boots|steel-toed boots|steel-toed shoes|steel toe boots|steel-toecap boots|steel-capped boots
|steelies|protective boots|protective shoes|protective footwear|safety footwear|toecap shoes
identity card|ID card|identity pass|ID pass|ID badge|photo card|photo ID
tie|necktie
nail varnish|nail polish|nail lacquer|nail enamel|gel polish|gel nail polish|shellac
activity tracker|fitness tracker|fitbit|step counter|fitness band|activity band
make-up|cosmetics|makeup
hair tie|hair band|hairband|hair bobble|scrunchie|hair elastic|elastic hair tie|elastic
hair clip|hair grip|hairgrip|kirby grip|hair slide|bobby pin
umbrella|brolly
penknife|pocket knife|clasp knife
raincoat|mac|mackintosh
overcoat|greatcoat|topcoat|big coat|heavy coat|thick coat
rain jacket|waterproof jacket|cagoule|kagool|kagoule|pac-a-mac
neckerchief|neck cloth|kerchief
braces|suspenders
waterproof trousers|overtrousers|rain trousers|waterproof bottoms
walkie-talkie|two-way radio|handheld radio
satchel|shoulder bag|messenger bag
bumbag|waist pack|fanny pack
name tag|name strip|name tape|name label
earrings|ear studs|ear rings
ear plugs|earplugs
plimsolls|canvas shoes|daps|sandshoes
neck gaiter|snood|neck tube
high heels|stilettos
handbag|purse
swimming trunks|swim shorts
helmet|lid|skid lid|skidlid|tin hat|bone dome
trousers|slacks|kecks|keks|strides|trews|breeks
medical bracelet|medical alert bracelet|medic-alert bracelet|medic-alert|medical alert|alert bracelet
|medicalert|medicalert bracelet|medical ID bracelet
necklace|neck chain
facial hair|whiskers
mittens|mitts
oven gloves|oven mitts
bow tie|bowtie|dicky bow|dickie bow
apron|pinny|pinnie|pinafore
cardigan|cardi|cardie|cardy
scent|perfume|aftershave|after shave|cologne|eau de cologne|eau de toilette|fragrance
track trousers|tracksuit trousers|tracksuit bottoms|trackie bottoms|tracky bottoms|trackies|joggers
|jogging bottoms|jogging trousers|sweatpants|sweat pants
track top|tracksuit top|trackie top|tracky top
down jacket|puffer jacket|puffa jacket|puffer coat|puffer|puffa|duvet jacket
tattoo|tat|body art
jewellery|bling
waistcoat|weskit
tights|nylons|pantyhose
"""
_NARROWER = """
beard: goatee|van dyke|full set|chin beard|stubble
high-visibility jacket: hi-vis|hi-viz|high-vis|high-viz|hi-visibility|high-visibility
hi-vis jacket: hi-vis|hi-viz|high-vis|high-viz|hi-visibility|high-visibility
facial piercing: nose stud|nose ring|lip ring|lip stud|tongue stud|eyebrow ring|eyebrow stud|nose piercing
|septum ring|eyebrow bar|eyebrow piercing|lip bar|lip piercing|tongue bar|tongue piercing|cheek stud
|cheek piercing|nose bar|nose hoop|lip hoop|septum bar|septum piercing|chin stud|chin piercing
facial jewellery: nose stud|nose ring|lip ring|lip stud|tongue stud|eyebrow ring|eyebrow stud|nose piercing
|septum ring|eyebrow bar|eyebrow piercing|lip bar|lip piercing|tongue bar|tongue piercing|cheek stud
|cheek piercing|nose bar|nose hoop|lip hoop|septum bar|septum piercing|chin stud|chin piercing
jewellery: bracelet|bangle|anklet|ankle chain|necklace|nose stud|nose ring|lip ring|lip stud|tongue stud
|eyebrow ring|brooch|toe ring
wristwatch: smartwatch|smart watch|digital watch
make-up: lipstick|lippy|mascara|eyeliner|foundation|blusher|eye shadow|concealer|lip gloss
hair fastening: hair tie|hair band|hair bobble|scrunchie|hair clip|hair grip|kirby grip|hair slide|bobby pin
mobile phone: iphone
headgear: baseball cap|bucket hat|trilby|fedora|bowler hat|bowler|stetson|cowboy hat|panama|panama hat
|snapback|beanie|woolly hat|bobble hat|party hat|santa hat
long hair: ponytail|pony tail|pigtails|dreadlocks|bun|plait|plaits|braid|braids
ring: signet ring|wedding ring|wedding band|engagement ring|thumb ring
earrings: hoop earrings|hoops|sleepers|drop earrings|dangly earrings
necklace: pendant|locket|choker
sunglasses: aviators
tattoo: tattoo on the forearm|tattoo on the arm|tattoo on the wrist|tattoo on the hand|tattoo on the neck
|tattoo on the leg|forearm tattoo|arm tattoo|wrist tattoo|hand tattoo|neck tattoo|leg tattoo|sleeve tattoo
|ink
facial hair: goatee|van dyke|full set|chin beard|stubble
sandals: flip-flops|sliders|pool sliders
"""

_CIRCUMSTANCES = """
by day|daylight|daytime|in the daytime|broad daylight|noon|midday|lunchtime|during the day|during daylight
|day time|at noon|at midday|in broad daylight|middle of the day|in the middle of the day|in daylight
|in full daylight|full daylight
at night|night|nighttime|night time|by night|midnight|during the night|overnight|middle of the night
|in the middle of the night|dead of night|in the dead of night
dark|dark hours|darkness|hours of darkness|after dark|nightfall|after nightfall|after sunset|dark outside
|pitch dark|pitch black|pitch dark out|pitch dark outside|pitch-dark|dark out
rain|raining|rainy|wet weather|pouring|pouring down|pouring with rain|drizzle|drizzling|downpour
|driving rain|in a downpour|cloudburst|deluge|stair rods|coming down in stair rods|wet out|wet outside
|chucking it down|bucketing down|tipping down|tipping it down|pelting down|raining cats and dogs
|belting down|hammering down|lashing down|teeming|teeming down|belting down with rain|coming down in buckets
|showery|showers
snow|snowing|falling snow|snowfall|snowstorm|blizzard|snowing hard|in a blizzard|driving snow|snow flurries
|flurries
fog|foggy|mist|misty|fog bank
fair weather|fine weather|dry weather|clear weather|sunny|sunny weather|sunshine|sunny day|fine day|dry day
|fair day|clear day|nice weather|lovely weather|good weather
foul weather|bad weather|filthy weather|dirty weather|nasty weather|horrible weather|awful weather
|rotten weather|lousy weather|dreadful weather|stormy weather
funeral|attending a funeral|burial|interment|cremation|memorial service|at a graveside|graveside
on leave|on holiday|holiday|on vacation|vacation|on furlough|furlough
on watch|on duty|on shift|at work
travelling on duty|duty travel|duty journey|duty trip|on a duty journey|on a duty trip
ashore|on land|on dry land|on shore
afloat|at sea|on the water|out on the water
diving|scuba diving
painting|doing some painting
machinery running|running machinery|moving machinery|near moving machinery|machinery in motion
|machines running|running machines|machines going|near running machines|near moving machines|moving machines
searching|on a search|out on a search
off duty|off shift|off watch|day off|on a day off|in free time|in spare time|in own time|knocked off
|clocked off|after work|not at work
at an incident|incident|incident ground|on the incident ground|at a fire|at the fire|to a fire|to the fire
|attending a fire|at a house fire|house fire|to a house fire|at a blaze|at the blaze|blaze|on a shout
|out on a shout|fireground|fire ground|fighting a fire|fighting fires|firefighting|fire fighting
|at an emergency|on an emergency call
on a public road|public road|on the road|on a road|on the street|in the street|on the highway|on a highway
|at the roadside|roadside|by the roadside|beside the road|by the road|at the side of the road|in traffic
|on the motorway|along the road
giving first aid|first aid|treating a casualty|treating casualties|tending a casualty|tending to a casualty
|helping a casualty|looking after a casualty|caring for a casualty|treating a patient|treating the injured
|bandaging|bandaging somebody|dressing a wound|dressing wounds|doing CPR|giving CPR|performing first aid
|administering first aid|doing first aid|patching somebody up
at a concert|concert|concerts|recital|at a recital|performing at a concert
band practice|at band practice|rehearsal|at rehearsal|band rehearsal|rehearsing
parade|on parade|parading|in a parade|march past|marching past|marching
inspection|at inspection|muster|kit inspection
driving|at the wheel|behind the wheel|at the steering wheel|driving a vehicle|driving a car|driving a lorry
|driving a van|driving an engine|driving the engine|driving a fire engine|driving an ambulance
|driving a truck
children about|with children present|children present|kids about|kids around|children around|school group
|school party|a school party|with a school party|with a school group|a school group|party of schoolchildren
|group of schoolchildren|schoolchildren about|group of children|group of kids|class of children|kids present
|school group coming round|school party coming round|a school group coming round|schoolchildren
school visit|on a school visit|school visits|visiting a school|visiting schools|at a school|in a school
on the way to and from work|way to and from work|on the way to duty|on the direct way to or from duty
|on the commute|commuting|heading home|going home|on the bus home|on the train home|on the way back
|going home from work|going home from duty|walking home|cycling home|driving home|on the way home
|going straight home|straight home|going straight home from work|straight home from work|go straight home
|go home from work|walking home from work|travelling home|on my way home|on the way home from work
|travelling to work|on the way in
hot work|welding|brazing|soldering
working aloft|aloft|up the mast|working at height|at height|climbing the mast
cutting|using cutting gear|cutting gear in use|using cutting tools|using cutters|cutting metal|cutting a car
|cutting a car open|cutting open a car|cutting up a car
abroad|overseas|in a foreign country|out of the country|in another country
in the band|band member|member of the band|bandsman|bandsmen|bandswoman|bandswomen|playing in the band
quartermaster|QM
snow on the ground|snow lying|lying snow|snow underfoot
working with a dog|with a dog|handling a dog|with a search dog
strong wind|in a strong wind|high wind|high winds|blowing hard|blowing a gale|blowing a hooley|gale|in a gale
|in high winds|gale-force wind|gale-force winds|howling wind|strong winds
on sick leave|sick leave|off sick|on the sick|signed off sick|signed off work
on light duty|light duty|light duties|on light duties
expecting a child|expecting|pregnant|expecting a baby|having a baby|with child|in the family way
standing by|on standby|on stand-by|on call|standing by at home
on a bicycle|on the bicycle|cycling|by bicycle|on my bike|on a bike|by bike|on the bike|on my bicycle
|riding a bike|riding my bike|on a pushbike|on a push-bike
left-handed|left handed|a left-hander|left-hander
red flag up|the red flag is up|red flag is flying|red flag flying|red flag is hoisted|red flag hoisted
winter|wintertime|in the winter months|in the wintertime|winter months|midwinter|cold half of the year
|colder half of the year|cold months|colder months|cold season|winter half of the year|winter half-year
|winter season|dead of winter|depths of winter
summer|summertime|in the summer months|in the summertime|summer months|midsummer|high summer
|warm half of the year|warmer half of the year|warm months|warmer months|warm season|hot months|hot season
|summer half of the year|summer half-year|summer season
"""

NO_STUDS = ("hoop earrings", "hoops", "sleepers", "drop earrings", "dangly earrings")
"""Earrings that are none of those where a book calls its studs earrings."""


def circumstances() -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """Words for one state of things, row by row, each with those for its contrary."""
    lines = _CIRCUMSTANCES.strip().replace("\n|", "|").splitlines()
    rows = [tuple(line.split("|")) for line in lines]
    contrary = {rows[0]: rows[2], rows[-1]: rows[-2]}  # by day and in the dark, in summer and in winter
    on_duty = next(row for row in rows if "on duty" in row)
    contrary |= {row: on_duty for row in rows if "off duty" in row}
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


@cache
def garment_words() -> frozenset[str]:
    """All words of these names."""
    names = (name for row in (*same(), *(kinds for _, kinds in narrower())) for name in row)
    return frozenset(word for name in names for word in name.casefold().replace("-", " ").split())
