"""Words in which people tell of circumstances, beside those that a book has for them.

Facts of the language, written from memory.
"""

from __future__ import annotations

from kb.reader.words.forms import word_pairs, word_set

SHAPES = word_pairs("""
    ran=run stood=stand sat=sit lain=lie lay=lie swept=sweep swung=swing hung=hang held=hold began=begin
    begun=begin drove=drive driven=drive rode=ride ridden=ride flew=fly flown=fly blew=blow blown=blow
    fell=fall fallen=fall rang=ring rung=ring sank=sink sunk=sink shut=shut spoke=speak spoken=speak
    wrote=write shook=shake shaken=shake fed=feed fought=fight bore=bear led=lead met=meet left=leave
    sewn=sew stolen=steal stole=steal broke=break broken=broken training=training building=building
    crossing=cross meeting=meeting lining=lining evening=evening foggy=fog rainy=rain snowy=snow
    windy=wind stormy=storm icy=ice dusty=dust pregnancy=pregnant injury=injure injured=injure
    examination=examine marriage=marry wedding=wedding arrival=arrive launch=launch landing=land
""")
"""Forms of which a word cannot be seen to be one by its ending, and words that are no such form."""
SENSES = """
leave go gone depart
last back rear hindmost
first front foremost
detain prisoner inmate
bicycle bike cycle
hose sluice swill
speak talk chat
frail infirm
over above
under below beneath
beyond past
arrive come came
wedding marry married
colleague workmate
examine check inspect
receive get collect
no nobody none nothing
up flying hoisted raised
slip slippery
trouble pester harass
"""
"""Words of one sense in what is told of a circumstance, row by row."""
KINDS = """
vehicle: van car lorry truck minibus
fowl: chicken turkey duck goose poultry
meat: lamb beef pork veal ham venison
wind instrument: trumpet trombone flute clarinet oboe bassoon cornet tuba saxophone piccolo bugle fife
turning machine: lathe
"""
"""What a word is one of; not the other way round."""
KIN = word_set("""
    mate friend colleague brother sister wife husband partner son daughter mother father mum dad cousin aunt
    uncle boss neighbour girlfriend boyfriend fiancee fiance niece nephew twin chum pal buddy flatmate
""")
"""Those near to the one who speaks, of whom may be told what is not so of the speaker."""
