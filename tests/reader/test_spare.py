"""Circumstances and talk in the asking sentence are left out and named, and never a word that counts."""

from __future__ import annotations

import re

import pytest

from kb.reader.words import everyday
from kb.suggesting.wordnet import WordNet, open_wordnet
from tests.reader import everyday_words
from tests.reader.conftest import HERE, Base
from tests.reader.notation import read_cases

# What is left out stands in braces, with what is read in its place after "|".
HARMLESS = {
    "demo": """
        Are braces okay together with a belt {if the tunic hides them|with the parade tunic}?
        Watch coat over the storm coat {when it's perishing}?
        {If nobody minds,} may I wear the canvas belt with the storm rig?
        {When it's scorching,} must I wear the jersey in watch rig?
        {While I'm queueing for lunch,} must I wear the service cap?
        {Now that my wife is coming,} may I wear the white gloves in parade rig?
        {My mum is visiting,} may I wear white gloves with the parade rig?
        {I'm starving,} can I wear the brassard in town?
        May I wear the scarf in boat rig {on the ferry}?
        May I wear the scarf in boat rig {so my mum can see it}?
        May I wear the scarf{, though my wife laughs,} in shore rig?
        May I wear spectacles in boat rig{, my aunt wants to know}?
        May I wear sunglasses on parade{, however bright it is}?
        Must I wear the service cap with the shore rig {behind the ticket counter}?
        Must I wear the neck cloth {for the rehearsal} in parade rig?
        Must I wear the whistle {at dinner} in boat rig?
        Must I wear the jersey with the watch rig {even though I'm boiling}?
        Must I wear the identity disc {at college}?
        May I wear the scarf {to keep warm} in boat rig?
        May I wear the scarf in boat rig {to impress the tourists}?
        May I wear the scarf in boat rig {whatever my mum says}?
        May I wear the scarf in boat rig {though the Head Keeper hates it}?
        May I wear the scarf in boat rig{, or will I look silly}?
        May I wear the scarf in boat rig {because my ears get cold}?
        {My back's killing me,} do I have to wear the climbing harness when working aloft?
        May I wear the scarf {because|if} it's raining?
        {Though|If} it's raining, must I wear the jersey?
        In August 2022, did the jersey have to be worn with the watch rig {even though|if} it was summer?
        {As a joke,} may I wear the tarred smock with the parade rig?
        Do I have to keep the service cap on {while riding} in a skiff?
        Can {one of my ten|we} wear a wristwatch in the lamp room?
        May {a bloke|we} wear nail varnish with the watch rig?
        May {a woman|we} wear the dress skirt in parade rig?
        May {any man|we} wear the knit cap in watch rig?
        Can I keep my {trusty} canvas belt on with the storm rig?
        Can I wear my {silly} knit cap with the boat rig?
        Can I wear my {beloved} tarred smock in boat rig?
        Can I wear white gloves with the watch rig {for my birthday}?
        Can I wear the storm hood {this afternoon} in storm rig?
        Can I wear the high-visibility vest in town {most days}?
        Can I wear the storm trousers {on the bus}?
        Can I wear the wool scarf with the shore rig {in the queue}?
        Can I have my earrings in {at the dance} in shore rig?
        May I wear earrings with the parade rig {at my cousin's wedding}?
        May I wear deck shoes in a skiff {while I feed the dog}?
        May I wear headphones {while I chat with my mates}?
        May I wear the scarf {on a chilly morning} in shore rig?
        May I wear a wristwatch {during the meeting} in parade rig?
        May I wear the sunglasses {on the tram} in shore rig?
        May I wear the deck shoes {at a barbecue} in shore rig?
        May I wear a neck cloth {tonight} with the parade rig?
        May I wear the watch coat with the parade rig {because I'm freezing and knackered}?
        Are braces allowed in watch rig {so that I can breathe}?
        Is a beard allowed at K3 {since my wife likes it}?
        Do I need a flotation vest on the slipway {when nobody is laughing}?
        Do we have to wear the flotation vest in a skiff {if the tourists laugh}?
        Does {one of my lot|we} have to wear a boat helmet in a skiff?
        Do I need the leather apron for hot work {if I'm careful}?
        May I wear the scarf in boat rig{, surely nobody minds}?
    """,
    "third": """
        May I wear the red neckerchief {at a barbecue} in hall dress?
        May I wear white gloves with cabin dress {if nobody minds}?
        May I wear the short-sleeved shirt with cabin dress {because I'm boiling}?
        May I wear the feather on my felt hat in full dress {for my cousin's birthday}?
        May I wear mountain boots with cabin dress {this morning}?
        May I wear the grey tie {tonight} with hall dress?
        May I wear the rain cape {though my wife hates it}?
        Do I have to wear the helmet on the platform {while I chat to tourists}?
        Do I need gaiters {when I'm knackered}?
        {While I'm waiting for the bus,} must I wear the helmet?
        {Since my mum is visiting,} may I wear the white gloves with cabin dress?
        Must {a fellow|we} wear the grey tie with hall dress {on a dreary evening}?
        red neckerchief, mountain dress{, market}?
        Are headphones allowed on a {quiet} shift?
        Are headphones allowed on shift{, surely nobody minds}?
    """,
    "second": """
        Must I wear the hall tie with the hall rig {at my brother's wedding}?
        May I wear the wool hat on the fell {because my mum worries}?
        Do I need the rope gloves in rope rig {even if I'm hungover}?
        {If I'm hungover,} must I wear the helmet in rope rig?
    """,
}
LINES = [(books, line.strip()) for books, text in HARMLESS.items() for line in text.strip().splitlines()]
_SPARE = re.compile(r"\{([^|}]*)(?:\|([^}]*))?\}")


@pytest.mark.parametrize(("books", "line"), LINES, ids=[line for _, line in LINES])
def test_what_bears_on_nothing_is_left_out_and_named(
    books: str, line: str, request: pytest.FixtureRequest
) -> None:
    base: Base = request.getfixturevalue(books)
    reading = base.read(_SPARE.sub(r"\1", line))
    plain = base.read(" ".join(_SPARE.sub(lambda spare: spare[2] or "", line).split()))
    assert plain.query is not None
    assert reading.query == plain.query
    assert reading.unused == tuple(
        spare[1].strip(" ,") for spare in _SPARE.finditer(line) if spare[2] not in ("we", "if", "If")
    )


COUNTS = {
    "demo": """
        Are braces okay together with a sash?
        May I wear the scarf over a hoodie on the ferry?
        May I wear the scarf without a toggle on the ferry?
        May I wear the scarf tied to the railing?
        May I wear the scarf rather than a snood on the ferry?
        May I wear the scarf like a pirate?
        May I wear the scarf round my ankle at the beach?
        May I wear the scarf if it's torn?
        May I wear the scarf when it's faded?
        May I wear the scarf so it covers my badge?
        May I wear the scarf before lunch?
        May I wear the scarf once I've retired?
        May I wear the scarf unless the chief minds?
        May I wear the scarf 3 times on the bus?
        May I wear a paisley scarf on the ferry?
        May I wear a scarf made of wool on the ferry?
        May I use the scarf to mop the galley?
        May I dye the scarf for my birthday?
        May nobody wear the scarf in the pub?
        May I lend the service cap to a bloke on the ferry?
        May I pawn my service cap at the market?
        May I leave my service cap on the bench?
        May I hang the watch coat on the fence?
        May I stow my sea boots in the shed?
        May I wear the service cap half unbuttoned at the party?
        May I wear the service cap on the glorf?
        May I wear the glorfed service cap on the ferry?
        May I wear the service cap if the chief approves?
        May I wear the service cap if I'm a civilian?
        May I wear the service cap because I'm retired?
        May I wear the service cap when I'm suspended?
        May I wear the service cap if I'm demoted?
        May I wear the service cap with a plume on the ferry?
        May I wear the service cap that my nan knitted?
        May I wear the service cap which I dyed, at dinner?
        May I wear the jersey if I cut the sleeves off?
        May I wear the jersey if I wear a hoodie under it?
        May I wear the jersey when I was a kid?
        May I wear the watch coat if I have a hoodie on?
        May I wear the watch coat only on the ferry?
        May I wear the watch coat inside out on the bus?
        May I wear the watch coat if it's borrowed?
        May I wear the watch coat if the lining shows?
        May I wear the watch coat if a doctor says so?
        May I wear the watch coat if the bosun agrees?
        May I wear the watch coat since I'm pregnant?
        May I wear the watch coat as I'm under arrest?
        May I wear the watch coat for an hour?
        May I wear the watch coat over my arm at the party?
        May I wear the watch coat, rather than the poncho, on the bus?
        May I wear somebody else's watch coat on the bus?
        May I sell the watch coat on the bus?
        May I wear the scarf no matter how torn it is?
        May I wear the scarf to cover my tattoo?
        May I wear the scarf to hold my trousers up?
        May I use the scarf to keep warm at the beach?
        May I wear the watch coat, not on the ferry?
        May I wear the storm coat on the ferry or off it?
        May I wear the tarred smock if it drags on the deck?
        May I wear the tarred smock, dyed pink, on the ferry?
        May I wear the tarred smock, a size too big, on the ferry?
        May I wear the tighter canvas belt on the ferry?
        May I wear the neck cloth in a bow?
        May I wear the keeper's pin on the lapel?
        Where does the keeper's pin go on a blazer?
        May I wear my hair in a bun on the ferry?
        May I paint the boat helmet while I'm on the ferry?
        Do contractors have to wear a boat helmet in a skiff?
        Can a civilian wear the service cap on the ferry?
        May a rigger wear nail varnish with the watch rig?
        May visitors wear the flotation vest on the ferry?
        Must cadets wear the service cap at school?
        Must the lot be worn on the ferry?
        If I buy a hoodie, may I wear it on the bus?
        If I find a kitten, may I carry it?
        What should I wear to a wedding?
        What's for dinner in the mess tonight?
    """,
    "third": """
        May I wear the felt hat with a cockade at the party?
        May I wear the felt hat tilted on parade?
        May I wear the felt hat until the party?
        May I give my felt hat to a bloke at the party?
        May I wear the peaked cap turned backwards on the bus?
        Do tourists have to wear a helmet on the platform?
        Can a temp wear ear studs with hall dress?
        May I wear the whistle on a chain at the market?
        May I wear my hair longer at the temples?
        May I wear the grey tie loosened after dinner?
        May I wear the grey tie if it's creased?
        May I wear the grey tie my nan gave me?
        May I wear the fleece if I unpick the badge?
        May I wear the fleece because I'm a Quaker?
        May I wear the fleece if the Chief lets me?
        May I wear the mountain boots with spurs at the market?
        May I wear the rain cape folded on the bus?
        May I wear the rain cape instead of a poncho in the queue?
        May I stow the rain cape in the shed?
    """,
}
COUNTING = [(books, line.strip()) for books, text in COUNTS.items() for line in text.strip().splitlines()]


@pytest.mark.parametrize(("books", "text"), COUNTING, ids=[text for _, text in COUNTING])
def test_what_counts_is_never_left_out(books: str, text: str, request: pytest.FixtureRequest) -> None:
    base: Base = request.getfixturevalue(books)
    reading = base.read(text)
    assert reading.query is None
    assert not reading.unused


ANYWHERE = (" on the ferry", " because my wife likes it", " if nobody minds", " to impress the visitors")
NOWHERE = (
    " with a hoodie",
    " on a lanyard",
    " if it's torn",
    " because I'm a Quaker",
    " as a civilian",
    " dyed pink",
)


@pytest.mark.parametrize(("books", "file"), [("demo", "demo.txt"), ("second", "phrasings-second.txt")])
def test_no_question_becomes_another_one(books: str, file: str, request: pytest.FixtureRequest) -> None:
    """What may go changes no query, and what counts is never passed over, whatever it stands after."""
    base: Base = request.getfixturevalue(books)
    changed, ignored = [], []
    for place, (question, _) in enumerate(read_cases(HERE / file)):
        query = base.read(question).query
        if place % 4 or query is None or query.kind not in ("may", "must") or "." in question:
            continue
        stem = question.rstrip("?. ")
        changed += [
            stem + more for more in ANYWHERE if base.read(f"{stem}{more}?").query not in (None, query)
        ]
        ignored += [stem + more for more in NOWHERE if base.read(f"{stem}{more}?").query == query]
    assert not changed
    assert not ignored


def test_men_and_women_count_where_the_books_tell_them_apart(choir: Base) -> None:
    assert choir.read("May a bloke wear the sash?").query is not None
    assert choir.read("May a gardener wear the sash?").query is None


def test_the_everyday_words_are_those_of_the_thesaurus() -> None:
    net: WordNet = open_wordnet()
    assert everyday_words.OUT.read_text(encoding="utf-8") == everyday_words.written(
        everyday_words.everyday_words(net)
    )
    assert everyday_words.BEARING.read_text(encoding="utf-8") == everyday_words.bearing(net)


def test_no_everyday_word_is_one_that_stops_a_question() -> None:
    known = everyday.PLACES | everyday.OCCASIONS | everyday.DOINGS | everyday.OTHERS
    assert known.isdisjoint(everyday_words.NEVER)
    assert known.isdisjoint(
        ("scarf", "hoodie", "lapel", "pocket", "red", "leather", "button", "ankle", "hem")
    )
