"""Everyday words by what they can say in a question, made by `tests/reader/everyday_words.py`.

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
"""

from __future__ import annotations

from kb.reader.words.forms import word_set

PLACES = word_set("""
aircraft airplane airport airway aisle alley allotment ambulance apartment armchair arroyo attic auditoria
auditorium automobile backwoods backyard bakery balcony ballroom balustrade bank barge barn barracks
barricade barrier basement bathroom battlefield bay beach beachhead bed bedroom bench bicycle bluff bog
bombproof borough boxcar brook buffet building bunk burrow bus busses cab cabana cabin cabinet cafe cafeteria
cage camp campsite canteen canyon car caravan carpentry carriage carrier cart castle cathedral cave cellar
cemetery chair chapel checkout chimney church churchyard cinema city classroom clearing cliff clinic closet
coach coast college commune commuter conspiracy corral corridor cottage couch counter county court cradle
craft creek crypt depot desert desk destination district divan dive dock door doorway dormitory downtown
driveway drugstore dugout dungeon dwelling ecliptic embankment empire enclosure engine_room entrance
epicenter facility factory fairground farm farmhouse feedlot fence ferry field fireplace footpath fort
fortress foyer freeway furniture galley garage garden garrison ghetto ghettoes gig graveyard grill ground gym
hall hallway hammock hangar harbor harbour haunt headquarters hearth hedge helipad hell hideout highroad
highway hill hillside home horizon hospital hotel house hulk hurdle hut infield inlet inn island jail jeep
jet jetty kerb kiosk kitchen laboratory ladder lagoon lane larder lawn leftfield library lift lobby locality
loft loo lorry mainland marina market marsh meadow mess metropolis midst mill monument moor mosque motorway
museum neighborhood nightclub nursery obstruction office orchard outpost outskirts palace pantry park parlor
pasture path patio pavement pier pitch platform playground plumbing poky polls pond pool porch prison
promenade province pub quarters quay quayside queue racecourse railway ranch reception repertory repository
reservation residence resort restaurant rightfield rink river road roadway roundabout route runway saloon
scene school schoolhouse schoolroom sewer shed shelter ship shop shower sidewalk site skiff skylight slope
sluice slum sofa spire stable stadia stadium staircase stairs stairway stall station steeple store storehouse
strait stream street streetcar studio submarine suburb suite sulky summit supermarket surgery taxi taxies
tenement tent terrace territory theater theatre toilet town track tractor train tram transport transportation
trough truck tunnel valley van vehicle veranda vicinity village wagon wall ward wardroom warehouse washroom
waterfall weir wharf wharves whereabouts window workbench works workshop zoo
""")
"""Where one may be."""

OCCASIONS = word_set("""
adventure afternoon afternoons analogy analyses analysis anniversary appointment audience ball ballet baptism
barbecue bash bedtime behalf bingo birthday boxing break breakfast briefing brunch burial campaign cards
carnival carol celebration ceremony chatter checkout chess chore christening christmas circus class community
commute comparison concert concerti concerto conference congress consultation contest conversation
counterpoint course court cricket crossing crossroads crowd cruise culmination cuppa cycling dance dancing
darts day daytime debate debrief demonstration dialyses dialysis difficulty dinner dinnertime disco diversion
documentary duration easter education elevenses emergency endeavor enterprise entertainment epoch era errand
evening evenings exam examination exercise exertion exhibition experiment exploration fair fairs festival
festivity fete film fishing flight football fun funeral gambling game gardening gig golf gossip graduation
gymnastics handstand hike hitch holiday homework honeymoon horde housewarming huddle hunting hymn interview
jamboree jogging journey labor lecture legislature leisure lesson lunch lunchtime marathon massage match meal
meeting melody midday midnight millennia millennium mob modulation morning mornings movie music nap night
nights nighttime noon opera operetta orchestration outing overture pageant paperwork parade parish party
performance period phase picnic pint play playing practice procession project prom promenade pushup quiz
quizzes race raffle rally reception recital reconstruction recreation refrain regatta rehearsal rendering
research reunion revel rugby running scan scrutiny seminar senate session shining shopping singing skating
skiing smoke song span spatter spectroscopy spiritual sport springtime stroll study supper survey swimming
swoop symphony task tea teatime tennis testing therapy throng times tombola tour tournament travel trip tune
utility vacation vaudeville venture village visit voyage wedding weekday weekend weekends while work workout
""")
"""What one may take part in, and times of the day."""

DOINGS = word_set("""
abandon abolish absent absorb abstract accelerate accept accommodate accompanied accompany accomplish accord
accumulate accuse ache achieve acknowledge acquire add address addrest adhere adjust administer admire admit
admitted admitting adopt adore advance advise advocate affect affirm afford aid aim alert allot allotted
allotting alternate ambush amend analyze announce answer anticipate appeal appear applaud applied apply
appreciate approach appropriate approximate argue arise arisen arose arouse arrange arrest arrive ask assault
assemble assent assert assess assign assist associate assume assure ate attain attempt attend attract
attribute augment average avoid await awake awaken awoke awoken babysit bade badger bake balance bang baptize
barbecue barge barricade base bat batted batting bawl bay bear beat beaten became beckon become beg began
begged begging begin beginning begun behave believe bellow belong bench benefit benefitted benefitting bet
betray betted betting bid bidden bidding bind bite bitten blame blast blaze bled bleed blew blink bloat blow
blown blur blurred blurring blush boast bog boil boom boost bore born borne bother bounce bound break
breakfast breathe bring broaden broke broken brood brook brought brunch bubble budget buffet bulk bunch
buried burrow burst bury buzz calculate call calm came camp campaign cancel cancelled cancelling capture care
carol carolled carolling carried carry cart carve cash cause caution cease celebrate challenge chant
characterize charge chase chat chatted chatter chatting cheer cherish chew chill choose chose chosen chuckle
cite claim clamor classified classify clatter clear climb cling clung cluster clutch coin coincide
collaborate collapse collect combat combatted combatting come comfort commence commend comment commit
committed committing commune communicate commute compare compel compelled compelling compete complain
complete complied comply compose comprehend comprise compromise compute concede conceive concern conclude
condemn conduct confess confine confirm confront confuse congratulate connect consider constitute construct
consult consume contact contain contemplate contend contest continue contrast contribute control controlled
controlling convert convey convict convince cook cool cooperate coordinate corral corralled corralling
correct correspond cost couch cough counsel counselled counselling counter counterpoint crack cradle crash
crawl creak create credit creep crept cried criticize crouch crow crowd cruise cry culminate cycle dallied
dally damage damn dance dare dash dawdle deal dealt debrief debut decay decide declare decline decrease
deduce deduct deem defeat defend defied define defy delay delight deliver demonstrate denied denote denounce
deny depart depend depict deposit derive descend describe desert deserve design desire despair despise detect
determine develop devote dictate differ dig digging dilute diminish disagree disappear discipline disclose
disco discourage discover discuss dislike dismiss dispatch dispel dispelled dispelling dispose dispute
distinguish distribute disturb dive divide dock dodge dominate doom double doubt dove doze drag dragged
dragging drank draw drawn dream dreamt drew drift drink drip dripped dripping drive driven drove drown drunk
dug dump dwell dwelt dwindle ease eat eaten echo educate effect elaborate elicit eliminate email embrace
emerge emphasize employ enable enact encounter encourage endeavor endorse endure enforce engage enhance enjoy
enlarge ensure entail enter entertain entitle envied envy equal equalled equalling equate equip equipped
equipping erect erupt escape escort establish estimate evaluate evidence evoke exaggerate examine exceed
excite exclaim exclude exercise exert exhibit exist expand expect expend experience experiment explain
explode exploit explore express extend fail fall fallen fancied fancy fashion favor fear fed feed feel fell
ferried ferry fetch fete fight file finance find finish fire fish fix fled flee fling float flounder flow
flung flush focus follow fool force forecast foresaw foresee foreseen forgave forget forgetting forgive
forgiven forgot forgotten formulate foster fought found freeze fret fretted fretting frighten frown froze
frozen fuel fuelled fuelling fulfill function furnish further fuss gallop garage garden garrison gasp gather
gave gaze generate gesture get getting giggle give given glance glare gleam glimpse glow gossip got gotten
govern grasp greet grew grill grin grind grinned grinning groan groom ground grow grown grumble grunt
guarantee guard guess guide gulp had halt happen harbor harbour harm has hassle hasten hate haunt have hear
heard heave hedge heed held help herd hesitate hike hint hit hitch hitting hold honeymoon hoover hope hove
howl huddle hug hugged hugging hulk hunch hurdle hurl hurried hurry hurt identified identify idle ignore
illuminate illustrate imagine impart implied imply impose impress improve include incur incurred incurring
indicate induce inflict influence inform inherit initiate injure inquire insist inspect inspire install
institute insure integrate intend interfere interpret interrupt interview intimate introduce invade invent
invest investigate invoke involve isolate issue itch jail jerk jet jetted jetting jog jogged jogging joke
judge jump justified justify keep kept kick kill kiss kneel knelt knew knock know known labor lack lag lagged
lagging lain land lapse laugh launch lay lean leant leap leapt learn learnt lecture lessen lick lie lift like
limit linger list listen live lobbied lobby locate loiter look love lower lurch lurk lying made mail maintain
make manage maneuver manipulate market marshal marshalled marshalling massage master match mate matter mature
mean meant measure meet melt mention merge merit met mill mind mingle minimize minister miss mistake mistaken
mistook mix moan modified modify molten monitor moor mop mopped mopping move multiplied multiply muse mutter
nag nagged nagging nap napped napping natter near necessitate need neglect negotiate neighbour nest nip
nipped nipping nod nodded nodding notice notified notify obey object oblige obscure observe obtain occasion
occupied occupy occur occurred occurring offer omit omitted omitting operate oppose organize originate
overcame overcome overhear overheard overlook owe own paid panic panicked panicking parade parallel
parallelled parallelling park parrot participate pat patrol patrolled patrolling patted patting pause pay
peel peer penetrate perceive perfect perform perpetuate persist persuade pertain pester petition phrase
picnic picnicked picnicking pilot pitch pitied pity plague plan planned planning play plead please pled
plunge police ponder pool pootle pop popped popping portray pose possess postpone potter pour practice praise
pray preach precede predict prefer preferred preferring prepare present preserve presume pretend prevail
prevent pride proceed proclaim produce profess profit progress project promenade promise propose proposition
protect protest prove proven provide provoke publish pull punish purchase pursue push queue quit quitted
quitting quiver race raffle rage raise rallied rally ran range rattle reach react read realize reappear
rebuild rebuilt rebut rebutted rebutting recall receive reckon recognize recommend recount recover reduce
refer referred referring reflect refrain refund regard register regret regretted regretting regulate rehearse
reinforce reject relate relax relieve relinquish remain remark remember remind renew repaid repay repeat
repel repelled repelling replied reply represent reproach reproduce request rescue resemble resent reside
resist resort respect respond rest restore restrain restrict result resume retreat retrieve reveal revel
revelled revelling revenge revise revive ridden ride ripple rise risen risk roar roast rob robbed robbing
rode rotate rub rubbed rubbing ruin rule run running rush rustle sacrifice said sail sample sang sat
satisfied satisfy save saw sawn say scan scanned scanning scatter schedule score scorn scramble scrape scream
scrub scrubbed scrubbing search secede secure see seek seem seen seize select send sense sent sentence set
setting settle sever shatter shed shedding sheer shelter ship shipped shipping shiver shock shop shopped
shopping shout shove shower shriek shrill shrug shrugged shrugging shudder sigh sign signal signalled
signalling silence sin sing singing sinned sinning sip sipped sipping sit sitting skate ski skip skipped
skipper skipping skive slam slammed slamming slap slapped slapping slash slaughter sleep slept slice slid
slidden slide slow sluice slump smash smell smelt smile smoke smooth snake snap snapped snapping snarl sneeze
snore solve sought sound span spanned spanning spark spatter speak specified specify speculate sped speed
spell spelt spend spent spin spinning spoke spoken sponsor sprawl spread spud spudded spudding spun squeeze
squint stagger stall stand stare start startle starve station stay steadied steady steal steer stiffen
stimulate stir stirred stirring stole stolen stood stop stopped stopping store straighten strain stream
strengthen stress strike strive striven stroke stroll strove struck struggle studied study stumble submit
submitted submitting substitute subtract succeed sue suffer suggest sulk summarize summit summon sung
supervise support suppose surge surprise surrender surround survey survive suspect sustain swallow swam swarm
sway swear sweat sweep swell swelter swept swim swimming swollen swoop swore sworn swum symbolize take taken
talk tap tapped tapping taste taught taunt tax taxi taxying teach tease tell tempt tend tender terminate test
testified testify text thank think thought threaten threw thrill throng throw thrown thrust tickle tilt toast
told took toss touch tour track train tram trammed tramming tramp transform translate transmit transmitted
transmitting transport travel travelled travelling treat tried triple trot trotted trotting trust try tug
tugged tugging tumble tunnel tunnelled tunnelling underlain underlay underlie underlying understand
understood undertake undertaken undertook unite upheld uphold upset upsetting urge use utilize utter vacuum
vanish varied vary veer venture verified verify view violate visit volunteer vote wage wail wait wake walk
wander want warn weaken weep weigh welcome wept wet wetted wetting whinge whisper win wink winning wipe wish
withdraw withdrawn withdrew withheld withhold witness woke woken won wonder wonned wonning work worried worry
worship worshipped worshipping wreck write written wrote wrought yawn yell yield
""")
"""What people do, in the forms that are not made by rule, too."""

OTHERS = word_set("""
abandon ability able about abroad abruptly absence absent absolute absolutely absorbed abstract absurd
academic acceptance accident accordance accordingly account accuracy accurate accurately ache achievement
acquisition acting action activity actor actual actually address adequate adjustment administration
administrative administrator admiration admission adult advance advanced advertising advice advocate aerated
aesthetic affair affairs affection afraid afterward age agency agony agreement ahead aid aim alert alive all
alone along aloud already also alternate alternative altogether always amateur amazement amazing ambiguous
ambition ambitious ambush ample anaconda analyst analytic anatomical ancient andrena anecdote angel anger
angry animal anonymous answer anticipation anxiety any anyhow anymore anyway anywhere apart apparent
apparently appeal appearance applause applicant application appreciation apprehension apprentice approach
appropriate approximate approximately aqueous arbitrary architect argument armed army around arrangement
arrest arrival article artist artistic asleep aspect assault assent assistance assistant associate
association assumption assurance astonishment attempt attention attitude attorney attraction attribute aunt
auntie authentic author authorities automatically autonomic available average awake aware awareness away
awful awkward baby background backward bacterial bad badly badness bairn balance balanced ballplayer baltic
bang banker basic basis bat battle bearded beautiful beauty bee beef beer beeves beginning behavior being
belief bellow below benefit besides best better beyond biblical big bigger binomial biological bird birth
biscuit bishop bitter bitterness blame blast blaze bloat blockade bloke bloody blow blur bodybuilder boom
boost boss bosun bother boy boyfriend brave brethren bride briefly brigade bright brightness brilliant broad
broken brood brother bubble budget bulk bumblebee bunch burst business businessman busy cake calculation calm
calmly camper camping cancer candidate capability capable capital capitalism captain capture career careful
carefully carpenter cash casual cat catcher category cattle caution central certain certainly chairman
challenge champion chance changing chaos character characteristic charge charged charming chase cheap cheer
chicken chief chiefly child childish children chill chilly choice chores chronic chuckle cider circumstance
citizen civil civilization claim claimant clamor clarity classical classification clatter cleaning clear
clearly clergyman clerk client climate clinical closely cloud clue clump cluster clutch cocoa code coffee
coin cold collapse colleague collection collective collector colonel colony colored colorful combat
combination comedy comfort comfortable coming commander comment commerce commercial commission committee
common commonly commotion communication communism companion company comparable competent competition
competitive complete completely complexity complicated composer comprehensive compromise compulsive
compulsivity comrade concentrated concentration concept conception concern concerned conclusion condition
confidence conflict confused confusion congregation connected conscience conscious consciousness consequence
consequently conservative considerable considerably consideration consistently construction consumer contact
contemporary contempt content continually continued continuous continuously contour contradiction contrary
contrast contribution control controversy convenient convention conventional conversion convert conviction
convinced cook cool cooperation cooperative coordinate cop core corporal correct correlation corresponding
cost council counsel counterpart country courage cousin covered cow cowboy crack cramped crash crazy creative
creature credit crew crime criminal crises crisis crisps critic critical crouch crow crowded cry crying
cryings cultural culture curiosity curious current customary customer cycle cyclist dad daddy daily damage
damn damned dancer danger dangerous data daughter dead deaf dealer dear death debut decay decision decisive
decline decomposition decrease deduction deep deeply defeat defense defensive deficiency definite definitely
definition deliberately delicate delight delightful democracy democratic denial denomination density dentist
department departure dependent deposit depression deputy description deserted design desirable desire despair
desperate desperately destruction detail detailed detectable detective determination determined developed
development diagonalizable diarrhea dictionary diet difference differently difficult diffusion dignity
dilemma dilute dimension dimly din directly director dirty disappointment disaster discipline discovery
discrepancy discrimination discussion disease dish dislike dispatch dispute distal distance distant distinct
distinction distinctive distinguished distribution disturbance division doctrine dodge dog domestic doom
double doubt doubtful doubtless down dramatic draughty dream dreary dressed drift drink drinking driver
drizzly drunk due duly dumb dusty each eager earthquake easily eastern easy eccentric echo echoes economic
economical economy editor educational educator effect effective effectively effectiveness efficiency
efficient effort egg either elaborate election electoral electric electrical electricity electron electronics
elsewhere email embrace emotion emotional emphases emphasis employee employer employment encounter endless
enemy energy engaged engagement engineer engineering enjoyment enormous enthusiasm enthusiastic entire
entirely entitled entity entry environment envy epidemic equal equally equation equivalent erect error escape
escort especially essential essentially established establishment estate estimate eternal evaluation even
event eventually ever every everybody everywhere evidence evident evidently evil exact exactly example
excellent exception excess excited excitedly excitement exciting existence existing expansion expectation
expedition expenditure expense expensive experience experienced experimental expert explanation exploit
explosion exposure expression extension extensive extent external extraordinary extreme extremely fact factor
faded failure faint fairly false familiar family famous fancy fantastic far farmer farming farther fashion
fast fatal fate father fault favor favorite fear federal fee feed feeding feeling fella fellow fellowship
female fever few fewer fiance fiancee fictional fierce fight fighter fighting file filled final finally
finance financial finding fine finite fire firing firm firmly fish fishes fixed flame flatness flexibility
floor flow fluorescence flush flux foci focus foe folk folklore following food fool force forecast foreign
forest forever formidable formula formulae fortunate fortune forward foundation frantic fraud free freedom
freely frequency frequent frequently fresh friend friendly frightened fuel full fully function fund
fundamental funds funny furious furiously further furthermore fury fuss gal gallop gang gasp gaunt gay gaze
general generally generation gentle gentleman gently genuine geometric gesture giant gift gigantic giggle
girl girlfriend given glance glare gleam glimpse gloom gloomy glory glow goal golden gone good government
grace gradient gradually gran grandad grandma grandmother grandpa granny graph grassy grateful great greater
greatly grim grin groan groom grounds grove growth grubby grumble grunt guarantee guard guest guidance guilt
guilty gulp guy halfway hands handsome hangover happy hard harm harmony hassle haste hastily hate hatred hay
haze headache health healthy hearing heavily heavy heed helpful helpless hen hence herd here heritage hero
heroes high higher hint historian historical history hit homely homer honest honey hope host hostile hot hour
household however howl huge human humor humorous hunch hunger hungry hurry hurt husband hypothalamic idea
ideal identical identification identity idle ill illusion imagination immediacy immediate immediately
immortality impact implication importance important impossible impression impressive improvement impulse in-
laws inadequate incident income incomplete increased increasing increasingly incredible indeed indefinite
independence independent indication indifferent indignation indirect individual individualism industrial
industry inevitable inevitably infantry infection infectious infinite influence information initially
initiative inner inning innocent inquiry insane insect insight insoluble inspector instance instantly
institution instructor integration intelligence intelligent intense intensity intent intention interaction
interest interested interesting interference interlobular internal international interpretation interval
intimate intonation invariably investigation investigator investment involved ion isolated issue japanese
jewish job joke journalist joy judge judgment junior jury just justice kid kids killer killing kind king kiss
kitten knock knowledge known lack lad lady lag land landlady language lapse large largely larger lass lassie
latter laugh laughter laundry lawyer leader leaders leadership league lean leap learned legal legislation
legislative legislator level liberal liberty lieutenant life lighted lightly like likely likewise limit
limited linguist list listener literal literally literary lives livestock living loaded local located
location logical lonely long longer lookup loss lost loud loudly love lovely lover low loyalty luck lucky
luggage lunar lurid mad magnificent magnitude maid mail main mainly major maker male man management manager
maneuver manifestation manner manufacturer many marked marketing marksman marriage married marshal martyr
massive master mate matter mature maybe mayor meaning meaningful meanwhile measurement mechanical mechanism
media mediae medieval medium member membership memory men menace mental merchant mere merely merit message
meteorite method metropolitan mice micelle micrometeorite mid mighty military mimesis mind minimal minister
minor minute miracle misery mission missus mistake mistaken moan mode model moderate mom moment momenta
momentum money monkey monstrous mood moon moral morality moreover morphophonemics mostly motion motionless
motive mouse movement moving muddy muffled muggy mum mummy municipal murder murderer muscular musical
musician musketry mysterious mythological naked namely nan narrative nation national nationalism native
natural naturally nature naval near nearby neat necessarily necessary necessity need needed neighbor
neighbour nephew nerves nervous nest network neuroses neurosis neutral nevertheless newly news newspaper nice
niece nilpotent nineteenth nippy noise noisy nonspecific norm normal normally northern notice notion now
nowhere nuclear numerous object objection obligation obscure observation observer obstacle obvious obviously
occasion occasional occasionally occupation occurrence odd odor off officer official often older ominous
onset opening openly operation operational operator opinion opportunity opposition orchestra ordinarily
ordinary organism organization original orthography otherwise out outcome outdoor outlook outstanding over
overhead overwhelming own owner oxidation page pain painful painfully painter pale panic papa parallel
paramagnetic parent parking parky parrot participation particular particularly partly partner passenger
passing passion pastor patience patient patrol pause pay payment peace peculiar peer penalty people percent
percentage perception perfect perfectly performer perhaps perishing persistent personal personality
personally personnel petition petitioner phenomena phenomenon philosopher philosophical philosophy phonologic
photographer phrase physical physics physiological pilot pitching pity placement plain plainly plan planet
planetary planning platoon player pleasant pleased pleasure plight plumber poet poetry police policeman
policy political politician politics polynomial poor poorly pop popular population porous posh positivist
posse possession possibility possible possibly postman posture potato potatoes potential potter power
powerful practical practically praise prayer preacher preaching precaution precious precise precisely
precision preliminary prepared presence present presentation presently presidential pressure prestige
presumably pretty prevention previously price pride priest primarily primary primitive principal principle
prior prisoner private privately privilege prize probability probable probably problem procedure process
procurement producer productive productivity profession professional professor profile profit profound
program progress projection prominent promise promising promptly proof proper properly property proportion
proposal proposition proprietor proprietorship prospect protective protest proud provision pseudo
psychological psychologist public publication publicly pudding punishment punter puppy purchase pure purely
purpose pursuant quack qualification quality quantity queen queer question quickly quiet quietly quite quiver
radiation rage ragged range rapid rapidly rare rarely rate rating ratio ration rattle reaction reactionary
reactivity reader readily reading ready realistic reality really reason reasonable reasonably rebellion
recently recognition recommendation redcoat reduction reference refund regardless regiment regional
registrant regret regular rehabilitation related relation relations relationship relative relatively relevant
reliable relief remark remarkable remarkably removal repeatedly repetition replacement reply reporter
representative reproach reputation request required requirement rescue resident residential resistance
resonance resource respect respectable respectively respiratory response responsibility responsible rest
result resume retention retired retirement retreat revelation revenge revolution reward rhythm rich rigid
ripple risk ritual roar roleplaying romantic rookie rough roughly routine rugged ruin rule rumor rural rush
sacrifice sad sadly safety sake salary sale salesman salvation sample sandwich sandy satisfaction
satisfactory satisfied savage savagely saving scale scar scared schedule scheme scholar scholarship
scientific scope score scorn scrape scream seagull search secret secretary security seemingly seldom
selection self selling selves sensation sense sensitive sensitivity sentence sentiment separation sergeant
series serious seriously servant services set settlement settler several severe severely shadow shame sharply
sheep sheer shiver shock shooting short shortly shriek shrill shrug sick sigh sight sign signal significance
significant significantly silence silent silly similar similarity similarly simply simultaneously sin sip sir
sister situation skeletal skill skilled skipper sky slaughter slavery sleep slender slice slightly slow
slowly slump smaller smart smash smell smelly smile smooth snake snarl sneeze sniffles sober social socialism
society soft softly soiled soldier solely some someday somehow someone sometimes somewhat somewhere son
sophisticated sore sort soul sound southern sovereign soviet spark spatial special specialist species
specific specifically specificity spectra spectrum speech speed spell spirit sponsor spontaneous spooky
sporting sports spud squad stained staining standard startling statement stature status steady steward still
stimulation stimuli stimulus stockholder storage straight strain strange stranger strategy strength stress
strictly striking stroke strong strongly structural structured struggle student stuffy stupid sturdy
subjective subspace substance substantial substantially substitute subtle suburban success successful
successfully such sudden suddenly suffering sufficient sufficiently suggestion sulk sullen sum sunlight
superior superstition support supreme sure surely surge surplus surprise surprised surprising surrender
surrounding survival suspect suspicion swallow swanky swarm sweet swell swift swiftly sympathetic sympathy
symptom syntheses synthesis table tale talent tall tap taste tattered taunt tax taxes taxpayer teacher
teaching team tease technical technique technological technology teenager telly temptation tendency tender
tension terrible terribly terror test testimony texture thanks theme theologian theological theology theorem
theoretical theory therapeutic therapist there thereafter thereby therefore thereof thermal thick thicket
thief thieves thin thinking thoroughly though thought thoughtfully threat thrill through ticket tickle tight
time tiny tired titer toast today toddler together tone tonight too totally touch tough tourist tracing
tradition traditional traffic tragedy tragic trained tramp transition translation treasury trembling
tremendous triple triumph troop trooper troops trouble true truly trust truth tsunami tug tumor twentieth
type typical ultimate ultrasonic unable unadjusted unaware uncertain uncertainty uncle unconscious
understanding underway undoubtedly uneasy unfortunate unfortunately union unique universal universe
university unlikely unmolested unspeakable unstructured unusual upward usage use useful usual usually utter
utterly vacua vacuum vague vaguely valuable value valued values variable variation varied variety various
vast velocity verbal version vertex vertices very veteran vicar victim victory view viewpoint vigorous
violation violence violent virtually virtue viscosity visible vision visitor visual vitality vivid vocabulary
vocational voice volley voltage volunteer vote voting vulnerable wage wail wake war warfare warm warning
wavelength way weak weakness wealth weary weird welcome western wet whisky whisper whole wholly wide widely
widespread wife wild wildly willing willingness windswept wine wisdom wise wit witness wives woman wonderful
wooden woods worker working world worry worse worship worst worthy wounded wrath writer written wrong yawn
yell yes yet yield young youthful
""")
"""Other words of talk."""
