"""Words of the street and the home: people around one, how one feels, what clothes are called anywhere.

WordNet has few of them, and dictionaries call them informal. Written from memory.
"""

from __future__ import annotations

from kb.reader.words.forms import word_set

RELATIVES = word_set("""
    nan nana nanna nannan nanny gran granny gramma gramps grampy grandpa granda grandad granddad grandson
    granddaughter grandparents grandkids mum mam mammy mummy mumsy ma pa pops daddy dad stepmum stepdad
    stepmother stepfather stepson stepdaughter stepbrother stepsister hubby hubs missus mrs wifey wife
    bloke fella feller fiance fiancee bf gf bestie besties bff mate mates matey marra pal auntie aunty unc
    uncle cuz cousin sis sister bro bruv brother sibling siblings twin twins kiddie kiddies kiddo sprog
    sprogs bairn bairns nipper nippers tot toddler teen teenager lad lads lass lasses lassie wean weans
    neighbour neighbor lodger landlord landlady flatmate flatmates housemate housemates roommate roomie
    inlaws ex mother father partner vicar hairdresser barber dentist postman milkman babysitter carer
    workmate workmates deskmate crewmate crewmates shipmate shipmates teammate newbie noob starter newcomer
""")
"""Who is around one at home or at work; none of them is a standing in a service."""
FEELINGS = word_set("""
    knackered shattered cream-crackered zonked pooped bushed whacked gutted chuffed buzzing stoked pumped
    stressed frazzled frantic gobsmacked miffed peeved narked mardy grumpy skint broke brassic parched
    famished
    starving starved peckish hangry nithered nesh perished frozen freezing boiling roasting baking sweltering
    sweating sopping drenched soaked hungover tipsy unwell peaky queasy dizzy fussy picky clueless stumped
    baffled flummoxed bamboozled embarrassed mortified ashamed shy nervous anxious worried scared terrified
    excited thrilled delighted keen curious bored lonely homesick fed-up annoyed cross livid raging fuming
""")
"""How one feels, which no rule of dress heeds."""

STRONG = word_set("""
    stonking whopping massive humongous ginormous blooming bleeding bloody flipping flippin flaming ruddy
    blinking sodding freaking frigging fricking fecking effing chuffing jazzy snazzy naff tatty manky minging
    grotty swanky posh poncy fancy funky groovy dodgy iffy cheeky crafty sneaky nifty
""")
"""What is said for emphasis or liking."""
GARMENTS = word_set("""
    mitts mitt mittens kecks keks strides breeks trews slacks trackies joggers jogger leggings jeggings
    dungarees gilet gilets cagoule kagool cagoules anorak pac-a-mac poncho hoodie hoody hoodies cardi cardie
    cardy cardigan pinny pinnies tabard tux tuxedo sporran kilt daps plimsolls pumps creps kicks crocs
    sliders flipflops flops wellies welly wellie brogues loafers moccasins sandals espadrilles clogs slippers
    beanie bobble bonnet titfer trilby fedora snapback snood scrunchie bandana bandanna balaclava pompom
    undies grundies knickers pants boxers briefs bra vest longjohns thermals socks sox tights nylons
    specs shades sunnies peepers lippy lipstick barnet bling tash stache lanyard brolly rucksack bumbag
    togs clobber gear garb getup cozzie cossie trunks bikini swimsuit kimono sarong onesie jimjams pyjamas
""")
"""What clothes and the like are called anywhere, by books or not: never a slip for another word."""
