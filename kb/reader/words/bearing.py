"""Words that may tell how a thing is, made by `tests/reader/everyday_words.py`.

Chosen by the hypernyms of WordNet 3.0, under the licence that `everyday.py` carries.
"""

from __future__ import annotations

from kb.reader.words.forms import word_set

WORN = word_set("""
aba abaya accessory accouterment accoutrement acetate achromasia activewear adornment aegis aertex afghan
afro aglet aiglet aigret aigrette aiguilette alb alizarin alizarine alpaca amber anil ankle anklet anklets
annualry annulet anorak antefix antimacassar apparel appendage apron aqua aquamarine arabesque archil
architrave arctic argent argyle argyll arm armet armguard armilla armor armour arms arras arthromere
articulatio ascot astragal astrodome attilio attire authentication aventail awning azure babushka backplate
bacteriochlorophyll bagging baize balaclava balbriggan baldachin baldric baldrick balldress balmoral bandage
bandana bandanna bandeau bandelet bandelette banding bandlet bandoleer bandolier bandyleg bangle banian
banner banyan barndoor barrette baseboard basinet bathrobe batik batiste bauble beachwear bead beading
beadwork beanie beany beard bearskin bedclothes bedcover bedding bedroll bedspread beige bellyband belt
belting beret berretta bib bicorn bicorne biggin bijou bikini bilirubin binnacle birdhouse biretta birretta
bister bistre bitumastic black blackness blanket blazer blazon blazonry bleach blind blinder blindfold bling
blond blonde blondness bloomers blouse blucher blue bluebonnet blueing blueness bluing boa boater bob
bobbysock bobbysocks bodice bodkin boilersuit bola bole bolero bolo bombazine bonce bonnet bookplate boot
bootee boothose bootie bootleg bootstrap bosom bottlecap boucle bouffant boule boulle bouquet boutonniere bow
bowknot bowleg bowline bowtie boxers boxershorts bra bracelet bracer brad braid braiding brand brassard
brassiere breast breastpin breastplate breechcloth breechclout breeches briefs brigandine britches broach
broadcloth broadloom brocade brochette brogan brogue brolly bromeosin brooch brow brown brownness buckle
buckler buckram buckskins buhl bulla bullethead bunting burberry burka burlap burnoose burnous burnouse
burnside burqa busby bushing buskin bustier button bvd byrnie cabasset caftan cagoule cairn calash calceus
calcimine caleche calico calpac calpack camail cambric camelhair camise camisole camlet camo camouflage
canopy canvas cap cape capote capuchin caput carabiner cardigan carmine carnation carotene carotenoid carpet
carpeting carpus casein cashmere casing casque casquet casquetel cassock cataphract cataplasm cavetto
cellophane centerpiece centrepiece cerecloth cerement cerise cerulean ceruse cervix chadar chaddar chador
chalk challis chambray chamfron chanfron chapeau chaplet chartreuse chasuble checkrein cheekpiece cheesecloth
chela chelicera chemise chenille chevron chiffon chignon chinchilla chino chintz chiton chlamys chlorofucin
chlorophyl chlorophyll chopine chromatism chuddar chukka churidars cilium circlet civies civvies cladding
claret clasp claw cleat cleats clingfilm clip cloak cloche clodhopper clog cloth clothes clothespin clothing
coat coatdress coatee coating coattail cobweb cochineal cockade codpiece coif coiffure collar collet colophon
color coloration coloring colors colour colouration colouring colours columbarium columbary complementary
complexion compress concealment conge congee coonskin cope coral cords corduroy corduroys cornice coronal
coronet corsage corselet corset corslet costume cosy cot cote cottar cotton couch countenance counterpane
counterstain courtelle cover coverall covering coverlet covert cowl cowlick cowling coxa coxcomb cozy
crankcase crape cravat crease cretonne crimp crimson cringle crinoline crisscross crocket cross crosshatch
crossjack crown crucifix crupper crus cubitiere cubitus cudbear cuff cufflink cuirass cuisse culotte cupola
curtain cuspidation cutaway cyan cyma cymatium dacron dactyl dag daishiki damascene damask dapple dart
dashboard dashiki deadlight decal decalcomania decor decoration deerstalker denim depigmentation derby dhoti
diadem diamante diamond diaper diarthrosis dimity dirndl disguise dishcloth dishrag dishtowel doeskin
doghouse dolman dome domino doorlock doormat doornail dossal dossel doublet dovecote dowel drab drape drapery
drawers dreadlock dress drugget duds duffel duffle dun dungaree duskiness dustcloth duster dustrag duvet dye
dyestuff eardrop earflap earlap earmark earmuff earring ebony echinus ecru egis eiderdown elastic elastoplast
elbow embellishment emblem emerald emulsion enarthrosis encaustic encolure ensign envelope eosin epaulet
epaulette epauliere epergne escutcheon espadrille etamin etamine eveningwear extremity eyebrow eyelash eyelet
eyepatch eyespot fabric face faceplate facing facula faille falderol fallal fallboard fang fanion fastener
fastening fatigues fauld fawn fedora felt ferrule fess fesse festoon festoonery fetlock fez fichu filagree
filigree fillagree fin finery finger fingerpaint fingerstall finial fireguard fist fixative fixing flag
flannel flannelette flap flatfoot flats flattop flatwork flavonoid fleck flexure flipper flounce flourish
fluorescein fluoresceine fluorochrome fly fob fold folder folderal foliage foot footgear footwear forearm
forefinger forefoot foreleg forelimb forelock forepaw foresail foretop formal formalwear foulard freckle fret
frieze frill frock frontal frontlet frontstall frostiness frosting fur furbelow furnishing fuschia fustian
gabardine gaberdine gaffsail gaiter gallus galosh gamboge gambrel gamp gantlet garb gargoyle garibaldi
garment garnish gasket gasmask gaud gauffer gauntlet gauze gearbox genu georgette geta getup gewgaw ghillie
gilding gillie gilt gimcrack gimcrackery gingham ginglymus glaze glengarry glove goatee gold golosh gorgerin
gorget gossamer gouache gown graffiti graffito gray grayness greatcoat greave green greenishness greyness
grillwork grizzle grogram grommet grosgrain groundsheet grummet guilloche guimpe gumshoe gunny gusset gymslip
habergeon habiliment hachure haem haematoidin haemitin haemosiderin haick haik hair haircloth haircut hairdo
hairgrip hairnet hairpiece hairpin hairstyle hakenkreuz hallmark hallux hammertoe hand handkerchief handstamp
handwear hanging hankey hankie hanky hasp hat hatband hatch hatching hatpin hauberk havelock head headdress
headgear headpiece headsail headscarf hearthrug heather heaume helmet hematin hematochrome hematoidin heme
hemosiderin henna henroost heraldry herringbone hessian hijab hindfoot hindlimb hip hoariness hobnail hock
holdfast holster homburg homespun hoof hook hooks hoopskirt hopsack hopsacking horsehair horseshoe hose
hosiery housecoat housepaint housetop housing huarache huaraches hubcap huck huckaback icing imbrication
imperial indigo indigotin inkiness inlay instep iodopsin ironing ivory izar jabot jackboot jacket jaconet
jacquard jalousie jambeau jammies jean jellaba jerkin jewel jewellery jewelry jib jock jockstrap jodhpur
jodhpurs joggle joint jumpsuit kaffiyeh kaftan kakemono kalansuwa kalpac kameez kanzu karabiner kendal kennel
kepi kerchief khaddar khadi khaki khakis khimar kilt kimono kingbolt kingpin kink kirtle kisser knee
knickerbockers knickers knit knitwear knot knuckle kurdistan kurta labium lace lacquer lake lambrequin lame
lamphouse lampshade lanugo lap lapel lappet lapping lash lashing latch latchet lateen latex laundry lavalava
lavalier lavaliere lavalliere lavender lazuline leatherette lederhosen leg legging leghorn leging lei lemon
lentigo leotard leotards levis lid limb linchpin linen liner lingerie lining link linkup linocut lint lip
lisle litmus livery lividity lividness loafer lock locker lockring logo logotype loincloth longyi loop
loungewear luciferin lug lugsail lumberjack lungi lungyi lunula luridness lutein lycopene lynchpin mac
macintosh mack mackinaw mackintosh macrame macula maculation macule magenta maillot mainsail maize mandala
mane mansard manta mantelet mantilla mantua manus marcel mark marker marking marocain maroon marquee
marqueterie marquetry marquise marseille mask masquerade mat matchbook matting maulers mauve maxi medal
melanin melanoderma mending meringue meshing meshwork metallic middy mihrab milepost milestone millinery
minge mini minimus miniskirt miniver mink mitt mitten mizen mizzen mobcap mocassin moccasin mohair moire
molding moleskin mopboard moquette mordant moreen morion mortarboard motif motley mottle moulding moustache
moustachio mouthpart muff muffler mufti mulch mule muslin mustache mustachio muumuu muzzle nail nailhead
nainsook nammad nankeen napkin nappy navy neck neckband neckcloth neckerchief necking necklace necklet
neckpiece necktie neckwear needlepoint neglige negligee netting newmarket nightcap nightclothes nightdress
nightgown nightie nightshirt nightwear ninon nipper nipple niqab nog noggin nonsense noodle noseband nosegay
nosepiece numdah nylon nylons ocellus ocher ochre oddment ogee oil oilcloth oilskin orange orangeness orchil
organdie organdy organza oriflamme orlon ornament ornamentation outerwear outfit overall overclothes overcoat
overcoating overgarment overlapping overlay overlayer overlip overshoe overskirt ovolo padlock pageboy paint
paisley pajama paleness pall pallette pallidness pallor panache panama pant pantie panting pants pantsuit
panty pantyhose paperclip paraph parapodium parasol parhelion parka parqueterie parquetry passementerie
pastel paster pasty patch patchwork patina patka patten pattern pavis pavise paw peacoat pearl pectoral peg
peignoir pelage pelisse pendant pendent pennon pennoncel pennoncelle penoncel peplos peplum peplus percale
periwig perm permanent peruke pes petticoat phenolphthalein phiz photopigment phycobilin phycocyanin
phycoerythrin physiognomy pickelhaube pigment pigmentation pigtail pillbox pin pinafore pincer pink pinkie
pinkness pinky pinner pinny pinpoint pinstripe pique placket plaid plait planking plaque plating playsuit
pleat pleopod plication plimsoll plume plush polaroid poliosis pollex polonaise pompadour pompon poncho
pongee pontifical ponytail poplin porkpie porphyrin portiere postiche postmark posy poultice prehensor
protection protoheme puce pucker pullover purple purpleness pushpin puttee pyjama pyrograph quartering
quercitron quiff quilt quilting radome rag raglan raiment raincoat rainfly rayon rayons rebozo red redness
refractory regalia regimentals rein remnant rep repp rerebrace reseau resorcinolphthalein respirator retinal
retinene revere revers reversible revetement revetment rhodopsin ribbon rickrack ricrac rigout ringlet rinse
rivet roach robe romper rood roof roost rosemaling rosette rosiness roundel royal ruby ruck ruddiness ruff
ruffle rug russet rya sabaton sabot sackcloth sacking sacque saddleback saffranine safranin safranine sail
sailcloth salade sallet sallowness saltire salwar samite sandal sanguine sapphire sarape sarcenet saree sari
sarong sarsenet sateen satin satinet satinette scabbard scanty scapular scapulary scarf scarfpin scarlet
sconce screen screening screwtop scrim scrubs scuff scuffer scutcheon seal sealskin seatbelt seersucker
semigloss separate sepia sequin serape serge setscrew sgraffito shade shading shako shalwar shantung
sharkskin shawl sheath sheathing sheepshank sheeting shellac shelter shield shielding shimmy shinpad shirt
shirtdress shirting shirtsleeve shirttail shirtwaist shirtwaister shoe shoji shorts shred shutter sideburn
sienna signet silesia silk silks silver sinapism singlet sinoper sinopia sinopis skewer skirt skivvies
skullcap skysail slacks sleepwear sleeve slicker slingback slipcover slipknot slipover slipper slops smiler
smock smokescreen sneaker snood snowsuit sock solferino solitaire solleret sombrero soutache soutane
spacesuit spandex spangle spanker sparker sparkler spat speck speckle spectator spindlelegs spindleshanks
spinnaker splashboard splasher splayfoot sportswear sprig spritsail stain stammel stays staysail stetson
sticker stickpin stifle stockinet stockinette stocking stole stomacher stopping stovepipe straightjacket
straitjacket strand strap strapless streak streusel stria striation stripe strop stubble stud subbase suede
suit suiting sunblind sunbonnet sunburst sundog sundress sunhat sunroof sunshade sunspot sunsuit supercilium
surbase surcoat surplice surtout suspender suspensor suspensory sutura suture swallowtail swarthiness
swastika swatch swathe swathing sweater sweatpants sweats sweatshirt sweatsuit swimmeret swimsuit swimwear
tabard tabi tabis tack taffeta tag tailcoat tailfin tails talaria tallis tallith tam tammy tan tapa tapestry
tapis tappa tarboosh tarp tarpaulin tartan tasse tassel tasset tatter tattoo taupe tawniness teal teddy
tempera terry terrycloth terylene tester testiere testudo tetraskele tetraskelion textile thatch thigh
thimble thong threads thumb thumbscrew thumbstall thumbtack tiara ticket ticking tie tiepin tights tincture
tinge tinsel tint tintack tippet tirolean titania titfer toe toecap toga togs toothbrush topcoat topee
topgallant topi topknot topping topsail toque tore torus totem toupe toupee tourniquet towel toweling
towelling toxicognath tracery trademark trappings treenail trenail tress trews tricolor tricolour tricorn
tricorne tricot trilby trim trimming trinket triskele triskelion trotter trouser trousering trousseau
trumpery trunks trunnel truss tudung tuille tulle tunic turban turnspit turnup turquoise turtle turtleneck
tutu tux tuxedo tweed twill twirl tyrolean ulster ultramarine ultrasuede umber umbrella underbodice
underclothes underclothing undercoat underdrawers underfur undergarment underlip underpants underseal
undershirt underskirt underwear undies uniform unitard unmentionable upholstery uplift urobilin valenciennes
vambrace vandyke varnish veil veiling velcro velour velours velvet velveteen veneer veneering ventail
verdigris vermiculation vermilion vest vestiture vestment vesture vicuna violet viridity visage viscose visor
viyella vizor voile volute waders waft waistcoat wanness wash washables washboard washer washing watercolor
watercolour watermark waterproof waterproofing wear wearable weave webfoot wedgie weeds whipcord whiskers
white whiteness whitewash whorl wig wilton wimple wincey winceyette windbreaker windcheater windscreen
windshield wine winker wirework woad woodscrew wool woolen woollen workwear worsted wrap wraparound wrapper
wrapping wreath wrist xanthophyl xanthophyll yarmelke yarmulka yarmulke yashmac yashmak yellow yellowness
yoke zeaxanthin zipper zori
""")
"""What is worn, parts of it, colours and stuffs."""

BEARING = word_set("""
access adapt adolescence after again ago agree alike allow almost alter amount ankle another apex appoint
approval approve april architecture area arm attach aug august authority authorize autumn award back
backwards badge bag ban band bandage banner bar bare barely beard before belly belt bit blanket bleach bomber
borrow bottom box boyhood braid breeze bridge brush buckle burn button buy calf cap case cast center centre
century certificate certify chain change chap cheek chest childhood chin civilian clean clip closed cloth
coat collar comb command conceal consent contractor cord corner corpse cover crease crest crib crop crown
crumple crutch cuff curl cut dangle dark darkness darn date dawn daylight dec decade december delegate demand
demote depth designate destroy detach different dip direct direction disabled discard discharge dispensation
display divorce doctor drape drawer dress drizzle droop drop dry dull dusk duty dye ear earlier early earn
edge elbow elect embroider end engrave enlist enrol enroll ex except exchange excuse exempt exemption expose
exterior eye face fade faith fasten feb february felt finger first fit flag flap flash flat flop flutter fog
fold foot forbid forehead former forwards fray friday front frost future gale gild glass glove grade graduate
grant grease habit hail half hand handling hang hardly hat head heat heel height hem hide hip hire hook hours
hue ice inch induction infancy initiation injury inside instant instead instruct instruction interior iron
jacket january join july june knee knife knit knot label lace lacquer landmark last late later least leave
left leg lend length lengthen lens less let licence license light lightning line lip loose loosen lose march
mark marry mask maturity may medal medic medical mend middle mist monday month more most mount moustache nail
narrow nearly neck neither never new next nightfall no nominate none nor nose not nov november number nurse
oct october oil old once only open orbit order orders origin other outline outside pack pad paint pair part
parts pass past patch pattern peak permission permit phone physician pin pipe place plait plant plaster plate
pleat plug pocket point poke polish position post pregnant press previous print probation prohibit promote
qualify rack radio rain rank rather raw rear rearward recent recruit regulation reign release religion
religious remove rent repair replace require reserve resign retire return ribbon rig right ring rip role roll
rope rose row rpm sack sag same sanction saturday scalp scarcely scarf sea seam season second section sell
sept september serve service sew sex sexual sexually shade shape shave sheet shift shin shine shirt shorten
shoulder show shrink shut side sideways silhouette since sixties size skin slave sleet sleeve sling slip snow
soak soon splint split spray spring stain stamp star starch state steps stick stitch stock storm strap
stratum stretch string strip stripe structure stud style summer sun sunday sundown sunrise sunset surgeon
suspend swap switch tab tag tailor tape tattoo tear temperature temple than then thigh third throat thumb
thunder thursday tide tie tighten till tint tip toe tomorrow tooth top torch torso trade trail training
transfer treatment trend trial trim tubing tuck tuesday turn twenties twice twilight twist typography
underside undress uniform unknown unless until upright upside varnish veil waist waive wash watch wave wax
wear weather weave wednesday week weight whistle widen width wig wind winter wire without wound wrap wring
wrinkle wrist year years yesterday youth zip
""")
"""What is done to it, how it is, when, and who lets one."""
