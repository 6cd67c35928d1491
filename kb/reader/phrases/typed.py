"""Words as thumbs type them: run together ("howmany"), without apostrophe ("theyre"), drawn out ("sooo").

They are parted and written out before anything else looks at a text, so that all ways of asking fit. Nothing
is changed that is a word of its own ("were", "its", "ill", "id"), and no word in capitals among others that
are not: that is a code.
"""

from __future__ import annotations

from collections.abc import Iterator

from kb.reader.words.forms import word_pairs, word_set
from kb.text import Pattern

_APART = word_pairs("""
    howmany=how_many howmuch=how_much howlong=how_long howbig=how_big howwide=how_wide howfar=how_far
    howhigh=how_high howtall=how_tall howoften=how_often howcome=how_come whatabout=what_about
    howabout=how_about alot=a_lot abit=a_bit aswell=as_well atall=at_all infront=in_front
    inside-out=inside_out
    ofcourse=of_course eachother=each_other inbetween=in_between incase=in_case upto=up_to noone=no_one
    everytime=every_time anytime=any_time allday=all_day nevermind=never_mind eventhough=even_though
    evenif=even_if aslong=as_long inthe=in_the onthe=on_the tothe=to_the ofthe=of_the forthe=for_the
    atthe=at_the withthe=with_the withmy=with_my onmy=on_my inmy=in_my tobe=to_be haveto=have_to
    haveta=have_to
    needto=need_to
    hasto=has_to usedto=used_to allowedto=allowed_to wantto=want_to gotto=got_to cani=can_I mayi=may_I
    doi=do_I
    couldi=could_I shouldi=should_I musti=must_I amiallowed=am_I_allowed canwe=can_we dowe=do_we isit=is_it
    isthe=is_the iam=I_am whatis=what_is whereis=where_is isthere=is_there doesthe=does_the dothe=do_the
    canthe=can_the lemme=let_me gimme=give_me dunno=don't_know kinda=kind_of sorta=sort_of outta=out_of
    dyou=do_you d'you=do_you d'ya=do_you dya=do_you whaddya=what_do_you wanna=want_to gonna=going_to
    coler=colour colers=colours collor=colour coulour=colour coulor=colour colur=colour sox=socks
    gotta=got_to shoulda=should_have coulda=could_have woulda=would_have musta=must_have oughta=ought_to
    useta=used_to tryna=trying_to finna=going_to imma=I'm_going_to betcha=bet_you
    dont=don't doesnt=doesn't didnt=didn't isnt=isn't arent=aren't wasnt=wasn't werent=weren't hasnt=hasn't
    havent=haven't hadnt=hadn't cant=can't couldnt=couldn't wouldnt=wouldn't shouldnt=shouldn't
    mustnt=mustn't neednt=needn't mightnt=mightn't wont=won't aint=ain't shant=shan't
    im=I'm ive=I've hes=he's shes=she's thats=that's theres=there's theyre=they're theyve=they've
    theyll=they'll weve=we've youre=you're youve=you've youll=you'll youd=you'd theyd=they'd itll=it'll
    itd=it'd whats=what's wots=what's wats=what's whos=who's wheres=where's hows=how's whens=when's
    whys=why's heres=here's whatll=what'll someones=someone's everyones=everyone's nobodys=nobody's
    somebodys=somebody's o'clock=o'clock oclock=o'clock thru=through tho=though altho=although
""")
"""A word as it is typed, and what it is written out as ("_" for a space)."""
_BESIDE = Pattern(
    r"(?i)\b(?:(?P<had>id(?= (?:like|love|rather|prefer|want|have|never|also|really|say|guess|hate)\b))"
    r"|(?P<will>ill(?= (?:be|have|get|go|need|take|carry|put|just|wear|bring|never)\b))"
    r"|(?P<are>were(?= (?:going to|gonna|having|not (?:allowed|sure)|allowed|supposed)\b))"
    r"|(?P<temp>(?<=what )temps?|(?<=which )temps?)"
    r"|(?P<varnish>(?:polish|varnish|lacquer) on (?:(?:my|the|your|our|his|her|their) )?(?:finger)?nails)"
    r"|(?P<partner>(?:other|better) half(?! (?:of|a|an|the)\b))"
    r"|(?P<kin>(?<=mother|father|sister)[- ]in[- ]law|(?<=brother)[- ]in[- ]law|(?<=son)[- ]in[- ]law"
    r"|(?<=daughter)[- ]in[- ]law))(?![\w-])"
)
_BESIDE_NEEDS = ("id ", "ill ", "were ", "temp", "nails", "half", "law")
"""One of them is in every text with such words: most have none, and need no pattern of that size."""
_INSTEAD = {
    "had": "I'd",
    "will": "I'll",
    "are": "we're",
    "partner": "partner",
    "kin": "",
    "varnish": "nail varnish",
    "temp": "temperature",
}
"""What is another word only beside some others: "id like", "ill wear", "were gonna", "my other half"."""
_WORD = Pattern(r"[A-Za-z]+(?:['’][A-Za-z]+)*")
_KEPT = frozenset({"xxx", "iii", "viii", "xiii", "hmmm", "mmm", "brrr", "grrr", "zzz"})


def as_spelt(text: str) -> tuple[str, tuple[int, ...]]:
    """The text with such words written out, and where in it each character of that stands."""
    shouted = text.isupper()
    put = []
    if any(word in text.lower() for word in _BESIDE_NEEDS):
        put = [(m.start(), m.end(), _INSTEAD[m.lastgroup or ""]) for m in _BESIDE.finditer(text)]
    for match in _WORD.finditer(text):
        told = _spelt(match.group().replace("’", "'"), shouted)
        if told is not None and all(end <= match.start() or match.end() <= start for start, end, _ in put):
            put.append((match.start(), match.end(), told))
    parts: list[str] = []
    places: list[int] = []
    done = 0
    for start, end, told in sorted(put):
        parts += (text[done:start], told)
        places += (*range(done, start), *_within(start, end, len(told)))
        done = end
    places += range(done, len(text))
    return "".join((*parts, text[done:])), tuple(places)


def _within(start: int, end: int, length: int) -> Iterator[int]:
    """Places of so many characters within a stretch, to its end."""
    yield from (min(start + i, end - 1) if i + 1 < length else end - 1 for i in range(length))


def _has_three_alike(word: str) -> bool:
    """Whether a letter stands three times in a row: "nooo"."""
    return any(a == b == c and a != "'" for a, b, c in zip(word, word[1:], word[2:], strict=False))


def _spelt(word: str, shouted: bool) -> str | None:
    low = word.casefold()
    if word.isupper() and len(word) > 1 and not shouted:
        return None
    told = _APART.get(low, "").replace("_", " ")
    if not told and len(low) > 3 and low not in _KEPT and _has_three_alike(low):
        told = _drawn_in(low)
    if not told or told.casefold() == low:
        return None
    return told[0].upper() + told[1:] if word[0].isupper() else told


def _drawn_in(low: str) -> str:
    """ "Sooo" as "so", "pleeease" as "please", "stillll" as "still": an ordinary word, else as it is."""
    from kb.reader.words.common_words import COMMON_WORDS  # noqa: PLC0415  few words are drawn out

    one = two = ""
    for sign in low:
        one = one if one.endswith(sign) and low.count(sign * 3) else one + sign
        two = two if two.endswith(sign * 2) else two + sign
    return next((word for word in (one, two) if word in COMMON_WORDS or word in _STRUCTURE), "")


_STRUCTURE = word_set("so no yes please really very way too hey hi what why how when where who help ok oh")
