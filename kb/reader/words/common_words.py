"""Ordinary English words that are never taken for a misspelling of a name.

A compact list, written from memory, of words near dress, work, body, weather, places and everyday talk;
inflected forms are found through their stems, and every word of the rule books counts as well.
"""

from __future__ import annotations

_WORDS = """
able about above accept accident account across act add adult advice after again age ago agree aid aim air
airport alarm album alien alive alley almost alter amber anchor angle angry animal ankle answer ant anvil
any apart apple apply april apron arch area arm armour army arrive arrow art artist ash ask asleep aunt
wrote
author autumn average award away awful axe baby back bacon bad badge badger bag baggage bake baker balance
bald ball balloon banana band bandage bandana bang bank banner bar barber bare barge bark barn barrel base
basic basket bass bat bath bathrobe battery battle bay bayonet beach bead beak beam bean bear beard beast
beat beautiful bed bee beef beer beetle begin behave being belief bell belly belt bench bend beret berry
best bet better big bike bikini bill bin bind bird birth birthday biscuit bit bite bitter black blade blame
blank blanket blast blaze blazer bleach blind blister block blond blood bloom blouse blow blue board
boarding boast boat bob body boil bold bolero bolt bomb bond bone bonnet book boom boot booth border boring
born boss both bottle bottom bounce bow bowl bowler box boxer boy bra brace bracelet braid brain brake
branch brand brass brave bread break breakfast breast breath breathe breeches breeze brick bride bridge
brief briefs bright bring brisk broach broad broken bronze brooch brook broom brother brow brown brush
bubble bucket buckle bud budget bug build builder bull bullet bump bun bunch bundle bunk buoy burden burn
burst bury bus bush business busy butcher butter button buy buzz cab cabin cable cage cake calf call calm
camel camera camouflage camp can canal candle candy cane canoe canvas canyon cape capital captain car card
cardigan care cargo carol carpet carriage carrot carry cart carton case cash casket cast castle cat catch
cattle cause cave ceiling cell cellar cement centre century certain chain chair chalk challenge chamber
chance change channel chant chap chapel chapter charge charm chart chase chat cheap cheat check cheek cheer
cheese chef chemical cherry chest chew chick chicken chief child chill chimney chin chip chocolate choice
choir choke choose chop chord chorus chrome church cigar cinema circle circus city civil claim clamp clan
clap clash clasp class claw clay clean clear clerk clever click cliff climb clip cloak clock clog close
closet cloth clothes clothing cloud club clue coach coal coarse coast coat cob cobbler cock cod code coffee
coffin coil coin cold collar colleague collect college colonel colour column comb come comfort comic common
company complain computer concert conduct cone cook cool cope copper copy coral cord cork corn corner
corporal corps corset cosmetic cost costume cot cottage cotton couch cough count country couple courage
course court cousin cove cover cow cowl crab crack cradle craft crane crash crate cravat crawl crazy creak
cream crease create creature credit creek creep crest crew crewneck crib cricket crime crisp crocs crook
crop cross crow crowd crown crude cruel cruise crumb crush crust cry crystal cub cube cuff cuffs cull cup
cupboard curb cure curl curly current curse curtain curve cushion custom customer cut cute cycle dad daily
dairy damage damp dance danger dare dark dart dash date daughter dawn day dead deaf deal dear death debt
deck deep deer defend degree delay deliver demand denim dentist deny depart depth deputy desert deserve
design desk detail device devil dew diamond diary die diet differ dig dinner dip direct dirt dirty disc
discuss dish disk dive diver divide dock doctor dog doll dollar dolphin donkey door dot double doubt dough
dove down dozen drab draft drag dragon drain drama draw drawer dread dream dress drift drill drink drip
drive driver drop drown drug drum drunk duck due duel duffel dull dumb dump dungarees dusk dust duty dwell
dye each eager eagle ear early earn earring earth ease east easy eat edge egg eight elastic elbow elder
electric elegant eleven embroidery emerald employ empty enamel end enemy engine engineer enjoy enough enter
envelope equal error escape estate even evening event every evil exam example excuse exercise exist exit
expect explain expose extra eye eyebrow eyelash fabric face fact factory fade fail faint fair fairy faith
fake fall false fame family fan fancy far farm farmer fashion fast fat father fault favour fear feast
feather fee feed feel felt female fence fern ferry fever few field fierce fig fight figure file fill film
filter final find fine finger finish fir fire firm first fish fisher fist fit five fix flag flake flame
flannel flap flare flash flask flat flavour fleece fleet flesh flexible flight flint flip float flock flood
floor flour flow flower flu fluid flush flute fly foam fog fold folk follow food fool foot football force
ford forehead foreign forest forget fork form formal fort fortune foul found fountain four fowl fox frame
frank fraud freckle free freeze freight french fresh friend fringe frock frog front frost frown fruit fry
fuel full fun funeral funny fur furniture fury future gain gaiter gale gallery gallon game gang gap garage
garden garland garlic garment garter gas gate gather gauge gauze gear gem gender general gentle ghost giant
gift gilet ginger girdle girl give glad glance glass glasses glide globe gloom glory glove glow glue goal
goat goblet god goggles gold golden golf gone good goose gorge gown grab grace grade grain grand grape graph
grasp grass grave gravel gravy gray grease great greed green greet grey grief grill grim grin grind grip
groom ground group grow growl guard guess guest guide guilt guitar gulf gull gum gun guy gym habit hail hair
hairband haircut hairnet hairpin half hall halo halt ham hammer hand handbag handkerchief handle handy hang
hangar hanger happen happy harbour hard hare harm harness harp harsh harvest hat hatch hate haul haunt hawk
hay hazard head headband heal health heap hear heart heat heavy hedge heel height heir helmet help hem hen
henna herb herd here hero hide high hijab hike hill hind hinge hint hip hire hit hoist hold hole holiday
holly holster home honest honey honour hood hoodie hoof hook hoop hop hope horn horror horse hose hospital
host hot hotel hound hour house hover howl hug huge hull human humble humour hump hundred hunger hunt hurry
hurt husband hut ice icon idea idle idol ill imp inch index infant ink inn inner insect inside insole
inspect instead insult iron island itch item ivory ivy jacket jade jail jam january jar jaw jazz jealous
jeans jelly jersey jest jet jewel job jockey jog join joke jolly journal journey joy judge jug juice july
jump jumper jumpsuit june jungle junior junk jury just kaftan karate keen keep kerchief kettle key kick kid
kidney kill kilt kimono kin kind king kiss kit kitchen kite kitten knapsack knee kneel knife knight knit
knob knock knot know lab label labour lace lack lad ladder lady lake lamb lamp lance land lane language
lantern lap lapel large laser last late laugh launch laundry lava law lawn lawyer lay layer lazy lead leader
leaf league leak lean leap learn lease leash least leather leave lecture left leg legging leggings lemon
lend length lens leotard less lesson letter level lever liar liberty library licence lick lid lie life lift
light like lily limb lime limit line linen liner lion lip lipstick liquid list listen litre litter little
live lively liver lizard load loaf loafer loan lobby local lock locker locket lodge log logo lone long look
loop loose lord lorry lose loss lost lot loud lounge love low loyal luck luggage lump lunch lung lure luxury
machine mad magazine magic magnet maid mail main major make maker makeup male mall man manage mantle manual
many map maple marble march mare margin marine mark market marriage mars marsh mascara mash mask mass mast
master mat match mate material matter mature may maybe mayor meadow meal mean measure meat medal media
medical medicine meet melon melt member memory mend menu merchant mercy merry mesh mess message metal meter
middle midnight might mild mile military milk mill mind mine miner mini minor mint minus minute miracle
mirror miss mist mistake mitten mix moan moat mob mobile moccasin mode model modern modest moist mole mom
moment monday money monk monkey monocle monster month mood moon moor mop moral more morning moss moth mother
motion motor mould mount mountain mouse mouth move movie mud muff muffler mug mule murder muscle museum
mushroom music musician mustache mute mystery nail naked name nanny nap napkin narrow nasty nation native
nature naughty naval navel navy near neat neck necklace need needle nephew nerve nest net never new news
nice niece night nine noble nod noise none noon normal north nose nostril note nothing novel november now
nudge number nun nurse nut nylon oak oar oasis oath oats obey object ocean october odd offer office officer
oil oilskin old olive one onion only opal open opera orange orchard order organ orphan other otter out
outfit outside oval oven over overall owe owl own owner oxygen oyster pace pack packet pad paddle page pail
pain paint pair palace pale palm pan pane panel panic pansy pants paper parachute parade parcel pardon
parent park parka parrot part party pass passenger past paste pastry pasture pat patch path patient patrol
pattern pause pave paw pay pea peace peach peacock peak pear pearl peasant pebble pedal peel peep peg pelt
pen pencil pendant penny people pepper perfect perfume permit person petal petrol petticoat petty phone
photo piano pick picnic picture pie piece piercing pig pigeon pile pill pillow pilot pin pinafore pinch pine
pink pint pipe pirate pistol pit pitch place plaid plain plait plan plane planet plank plant plaster plastic
plate platform play player plead pleasant please pleat plenty plot plug plum plumber plume plus pocket poem
poet point poison polar pole police polish polite polo poncho pond ponytail pool poor pop poppy porch pork
port porter portrait position possible post pot potato pottery pouch pound pour powder power practice praise
pray prayer present press pretty prey price pride priest prince princess print prison prize problem proof
propel proper proud prove public pudding puddle pull pullover pulse pump punch pupil puppet puppy pure
purple purpose purse push put puzzle pyjamas quack quarrel quarter queen quest question queue quick quiet
quill quilt quit quiz rabbit race rack radar radio raft rag rage raid rail rain rainbow raincoat raise rake
ram ramp ranch random range rank rapid rare rat rate raven raw ray razor reach read ready real rear reason
rebel record red reed reef reflect refuse regret reins relative relax rent repair repeat rescue respect rest
result retire return reward rhyme rib ribbon rice rich ride rider ridge rifle rig right rigid ring rinse
riot ripe rise risk rival river road roar roast rob robe robin robot rock rocket rod role roll romper roof
room rooster root rope rose rosette rot rough round route row royal rub rubber ruby rucksack rude ruff rug
rugby ruin rule run rush rust sabre sack sacred sad saddle safe safety sail sailor saint salad salary sale
salmon salt salute same sand sandal sandals sandwich sari sarong sash satin sauce save saw scale scan scar
scare scarf scent school science scissors scold scooter score scout scrap scrape scratch scream screen screw
scrub scrubs sea seal seam search season seat second secret section security seed seek sell send senior
sense sergeant serious servant serve service set seven sew shade shadow shake shallow shame shampoo shape
share shark sharp shave shawl shed sheep sheet shelf shell shelter shepherd shield shift shin shine ship
shirt shock shoe shoelace shoot shop shore short shorts shot shoulder shout shovel show shower shrimp shrink
shut shy sick side sigh sight sign signal silent silk silly silver simple sin sing singer single sink sip
sister sit site six size skate skeleton sketch ski skill skin skinny skip skipper skirt skull sky slack
slacks slap slave sleep sleeve slice slide slim sling slip slipper slope slot slow sly small smart smell
smile smock smoke smooth snack snail snake snap snare sneak sneaker sneakers sneeze sniff snow soak soap
soccer social sock socket sofa soft soil soldier sole solid solo solve son song soon sore sorrow sorry sort
soul sound soup sour source south space spade spare spark sparrow speak spear special spectacles speech
speed spell spend spice spider spike spill spin spine spirit spit splash split spoil sponge spoon sport spot
spouse spray spread spring spur spy square squash squeak squeeze squid squirrel stable stack staff stage
stain stair stake stale stalk stall stamp stand star starch stare start starve state station statue stay
steady steak steal steam steel steep steer stem step stern stew steward stick sticker stiff still sting stir
stitch stock stocking stole stomach stone stool stop store stork storm story stove straight strand strange
strap straw strawberry stray stream street stress stretch strict strike string strip stripe striped stroke
strong stud student study stuff stumble style submarine subtle suck sudden suede sugar suggest suit suitcase
summer summit sun sunday sunglasses sunrise sunset super supper supply sure surf surface surgeon surname
surplus surprise suspender swallow swamp swan swap swarm sway swear sweat sweater sweatshirt sweep sweet
swell swift swim swimsuit swing switch sword symbol syrup table tablet tack tackle tail tailor take tale
talent talk tall tame tan tank tankard tap tape target tarp tart tartan task tassel taste tattoo tax taxi
tea teach teacher team tear tease teeth telephone tell temper temple ten tenant tender tennis tent term
terrace test text thank theatre thick thief thigh thin thing think thirst thistle thong thorn thread three
throat throne throw thrush thumb thunder ticket tickle tide tidy tie tiger tight tights tile till timber
time tin tiny tip tired title toad toast today toe toga toggle toilet tomato tomb tomorrow ton tone tongue
tonight tool tooth top topaz torch torn tortoise toss total touch tough tour towel tower town toy track
tracksuit trade tradition traffic trail train trainer trainers tram trap trash travel tray treat tree
tremble trench trend trial tribe trick trim trip troop trouble trouser trousers trout truck true trumpet
trunk trust truth try tub tube tuck tulip tune tunic tunnel turban turf turkey turn turtle turtleneck tutor
tuxedo tweed twelve twice twig twin twist two type ugly umbrella uncle underwear uniform union unit up upper
upset urge use usual vacuum vain valley value van vanity vase vault veil vein velcro velvet vent verse vest
vicar victim victory video view village vinegar violet violin visa visit visitor visor voice volcano volume
vote voyage wage wagon waist waistcoat wait waiter wake walk walker wall wallet walnut wander want war ward
wardrobe warm warn warrior wash wasp waste watch water waterproof wave wax weak wealth weapon wear weary
weather weave web wedding wee weed week weep weigh weight weird welcome weld welder well wellington west wet
wetsuit whale wheat wheel whip whisker whisper whistle white whole wide widow width wife wig wild will win
wind window wine wing wink winner winter wipe wire wise wish witch wolf woman wonder wood wooden wool
woollen word work worker world worm worry worse worth wound wrap wreath wreck wrestle wrinkle wrist
wristband wristwatch write wrong yacht yard yarn year yellow yes yesterday young youth zebra zero zip zipper
zone zoo
"""

_MORE = """
ban storeman bloke fez kepi snood toque shako coif tam boa bodice bangle anklet cufflink tiepin trilby
fedora stetson panama deerstalker balaclava anorak cagoule windcheater wader galoshes gumboot flipflop flop
espadrille brogue oxford stiletto jogger chinos culottes tutu tabard boilersuit onesie nightie nightgown
knickers singlet camisole dreadlock dreads mohawk mullet perm toupee extension highlight stubble goatee
sideburn handlebar eyeliner blusher foundation glitter sequin bling fitbit smartwatch pedometer earpods
airpods earpiece contact lanyard penknife multitool clutch tote briefcase holdall backpack bumbag laptop
walkie parasol crutch splint wheelchair pram pushchair chilly nippy sweltering muggy humid drizzle sleet
blizzard breezy windy sunny cloudy misty foggy frosty icy slush thaw lightning midday twilight teatime
weekend fortnight attic quay jetty wharf pontoon gangway galley burial christening barbecue interview bishop
bereaved altar pew bivvy campfire crag gully scree peat heather bracken tarn beck cairn stile pub cafe
restaurant bicycle motorbike tractor helicopter drone kayak dinghy fender winch forklift solder mow prune
darn abseil trek gloomy posh scruffy shabby tatty frayed muddy spotless baggy snug oversized floral stripy
shiny matt glossy neon fluorescent luminous reflective showerproof windproof fireproof polyester gilt buried
mourn mourner stroll trot scramble lower lug tow tug furl splice caulk tar braze rivet buff dunk wring
crumple hitch unhook unpin unlace unstrap unzip untie fasten shorten lengthen widen loosen tighten
straighten pierce jab poke stab prick nick graze bruise bleed scald wade rating recruit rookie newbie novice
apprentice trainee cadet acting temp casual volunteer relief reserve retired ex former veteran tourist
civilian contractor medic padre rabbi imam sikh muslim jewish christian pagan vegan allergic asthma diabetic
pregnant injured lame bearded tattooed pierced whose sleeper crucifix rosary amulet talisman sprig fell went
came took gave made got kept held sold told ran sat stood swam drove wore tore swore rode sang sank shook
slept spoke stuck struck swept swung taught threw woke wept bent blew bound bred brought built burnt bought
caught chose clung crept dealt dug drew drank ate fed fought fled flew forgot forgave froze grew hung heard
hid knew laid led leapt learnt lent lit meant met paid rang said sought sent sewn shone shrank slid slung
spent spun spat sprang stank stung strode strove sworn swollen trod understood won withdrew worn done seen
given shown known grown thrown drawn driven ridden risen frozen chosen spoken stolen woken fallen eaten
beaten bitten hidden forgotten lets gran granny grandma grandpa grandad nan nana mum mom mummy dad daddy
auntie godmother stepmother bunkmate roommate flatmate snore belt hammer lash teem host funeral wedding
inspection inspector saturday tuesday wednesday thursday friday manager commander partner lass neighbour
client audience pinched nicked broke rip ripped shrunk faded stained soaked drench drenched mouldy smelly
borrow borrowed delivered arrived later sooner often sometimes rarely seldom clinic injury allergy rash ache
pier canteen stairs boiling photograph journalist reporter charity collection fundraiser marathon swimming
running jogging cycling climbing skiing university training rehearsal briefing meeting conference
anniversary remembrance christmas easter halloween messy fitting upstairs downstairs evacuate evacuation
casualty stretcher ambulance siren emergency incident promote promotion demote transfer retirement probation
qualification certificate supervisor attendant cleaner mechanic electrician painter carpenter complaint
grumble argue disagree dispute thought believed insist escort afford ancient announce annual apologise
appointment approach arrange arrangement assistant attack attempt attend attention attract attractive
available avoid await awake aware awkward background backwards badly basis became becoming beforehand
beginning benefit besides bitterly borrower boundary briefly brilliant bruised building cancel candidate
capable career careful careless celebrate celebration central certainly chaos checked cheerful childish
circumstance classic clearly climate closely clumsy collapse combine comment commit committee commonly
community competition complete complicated concerned condition confident confuse confused connect consider
considered constant content contest contract contrary control convenient conversation convince council
countryside crisis critic culture curious dangerous deadline debate decent decided decision declare decline
decorate decoration definite definitely delicate delight department depend depends describe desire desperate
destroy develop difficult difficulty direction directly director disappear disappoint disaster discount
discover discussion disease disgrace distance distinct district disturb divorce document dozens dramatic
dusty easily economy educate efficient effort elect election element elsewhere embarrass embarrassed enable
encourage enforce engage enormous ensure entire entirely entrance environment equipment especially essential
establish eventually everyday everywhere evidence exact examine excellent exception exchange exciting
exhausted existing expense expensive experience expert explanation explode express extend extraordinary
extreme extremely failure fairly familiar famous fantastic farther favourite feature feeling fellow festival
fetch fiddle fifteen fifth fifty finally finding finished focus followed following fond foolish forever
forgive formerly forth forty fortunate forward fourth freedom freely frequent frequently friendly frighten
function fund furious further generous genuine gesture giving goodness government gradually graduate
grateful greatly guarantee guilty happened happily healthy heavily helpful hence hesitate highly history
hobby hopefully household however ideal identify idiot ignore imagine immediate immediately important
impossible impress impression improve include income increase indeed independent indicate individual
industry influence inform information initial innocent inquiry instance instant instruct instruction
insurance intention interested interesting internal introduce invent invite invited involve involved joined
judgement justice justify knowledge lasting lately latter leisure liable likely limited link living locate
lonely lucky mainly majority married massive meaning meanwhile medium memorial mental mere method minority
miserable missing mission mixed mixture monthly moreover mostly movement mutual natural naturally nearby
necessarily negative nervous nevertheless newspaper nobody noisy nonsense notice noticed notion nowhere
numerous oblige observe obtain obvious occasional occasionally occur offend official older ongoing online
opening openly operate operation opinion opportunity oppose opposite option ordinary organise original
others otherwise outcome outdoor outer overcome overnight overseas package painful partial participate
particular particularly partly passage patience peculiar perfectly perform performance perhaps period
permanent personal persuade phase philosophy phrase physical planned pleased pleasure popular population
positive possibly potential powerful practical practically practise precious precise precisely predict
prefer preferably prepare prepared presence presentation preserve president pressure pretend prevent
previous previously prime principal principle prior private privilege probably proceed process produce
product profession professional profit programme progress project promise promptly property proposal propose
protect protection protest publish punish punishment purchase quality quantity quickly quietly quite react
reaction realise reality reasonable reasonably receive recent recently recognise recommend recover reduce
refer region regular regularly reject relation relatively release relevant reliable religion religious
reluctant rely remember remote replace replacement reply report represent request research resign resist
resort resource respond response responsibility responsible restrict restriction retain reveal ridiculous
routine rubbish rumour rural safely sake satisfy scene schedule scheme secretary secure seem seems select
selection sensible sensitive separate session several severe shortage shortly significant silence similar
sincere situation slight slightly slowly society solution somehow sometime somewhat somewhere specialist
species specific spite statement status steadily strain stranger strategy strongly structure struggle
stubborn stupid submit subsequent substance substantial succeed success successful such suddenly suffer
suggestion suitable sum support surprised surround survey survive suspect suspend sweaty sympathy system
teaching technical technique teenage temporary tend tendency tense terribly terrify theory thereby therefore
third thorough thoroughly thousand threat threaten thus totally toward traditional transport treatment truly
trying typical typically ultimate unable uncertain unclear uncomfortable undergo undertake unemployed
unexpected unfair unfortunate unfortunately unhappy unhealthy unique unite universe unknown unlikely unlucky
unnecessary unpleasant unsafe unusual unusually approval consent clearance urgent useful useless user
vacation valid valuable variety various vary vast vehicle version very violent virtually visible vision
vital vulnerable warning weekly whereas widely willing witness wonderful working worried worst worthwhile
writer writing yell yourself waive exempt exemption dispense lenient
leniency soften permission lax relieve softer
"""

COMMON_WORDS = frozenset((_WORDS + _MORE).split())
