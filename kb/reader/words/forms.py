"""Forms of words as data: contractions, odd plurals, British and American spelling, slips, numbers."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType


def word_pairs(text: str) -> Mapping[str, str]:
    """ "scarves=scarf feet=foot" as a table."""
    return MappingProxyType(dict(pair.split("=") for pair in text.split()))


def word_row(text: str) -> tuple[str, ...]:
    """Words written in a row, in order."""
    return tuple(text.split())


def word_set(text: str) -> frozenset[str]:
    """Words written in a row."""
    return frozenset(text.split())


_CONTRACTIONS: Mapping[str, str] = word_pairs("""
    cannot=can+not cant=can+n't dont=do+n't doesnt=does+n't isnt=is+n't arent=are+n't mustnt=must+n't
    shouldnt=should+n't wont=will+n't won't=will+n't can't=can+n't shan't=shall+n't couldnt=could+n't
    didnt=did+n't ive=i+'ve whats=what+'s wats=what+'s wots=what+'s wheres=where+'s whos=who+'s hows=how+'s
    im=i+'m havent=have+n't ain't=is+n't
    what's=what+'s where's=where+'s who's=who+'s how's=how+'s when's=when+'s why's=why+'s it's=it+'s
    that's=that+'s there's=there+'s he's=he+'s she's=she+'s let's=let+'s i'm=i+'m gotta=got+to
    gonna=going+to wanna=want+to needn't=need+n't neednt=need+n't mayn't=may+n't mightn't=might+n't
""")
CONTRACTIONS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {word: (parts.split("+")[0], parts.split("+")[1]) for word, parts in _CONTRACTIONS.items()}
)

IRREGULAR_SINGULARS: Mapping[str, str] = word_pairs("""
    scarves=scarf hooves=hoof knives=knife wives=wife leaves=leaf loaves=loaf calves=calf halves=half
    shelves=shelf lives=life feet=foot teeth=tooth men=man women=woman children=child geese=goose mice=mouse
    people=person oxen=ox dice=die kerchieves=kerchief neckerchieves=neckerchief handkerchieves=handkerchief
    insignia=insignia lens=lens lenses=lens canvas=canvas gas=gas bus=bus wellies=welly shoes=shoe toes=toe
    horseshoes=horseshoe aches=ache moustaches=mustache its=its was=was always=always perhaps=perhaps
    does=does has=has
""")

SPELLINGS: Mapping[str, str] = word_pairs("""
    grey=gray jewellery=jewelry moustache=mustache pyjama=pajama aluminium=aluminum tyre=tire plough=plow
    cheque=check matte=matt pullover=pullover fibre=fiber sceptre=scepter woollen=woolen axe=ax
    programme=program organisation=organization licence=license disc=disk practise=practice storey=story
    manoeuvre=maneuver draught=draft sombre=somber calibre=caliber kerb=curb
""")
"""British to American; regular changes (-our, -ise, -re, -ll-) are rules in `tokens`."""

SLIPS: Mapping[str, str] = word_pairs("""
    ware=wear aloud=allowed allowd=allowed alowed=allowed requierd=required permited=permitted
    prohibitted=prohibited forbiden=forbidden manditory=mandatory compulsary=compulsory optinal=optional
    wera=wear waer=wear weer=wear mustnt=must shud=should wher=where wich=which hwo=how
    shd=should cld=could wld=would shld=should cn=can cud=could
""")
"""Slips over words of structure, a closed list."""

_NUMBERS: Mapping[str, str] = word_pairs("""
    zero=0 one=1 two=2 three=3 four=4 five=5 six=6 seven=7 eight=8 nine=9 ten=10 eleven=11 twelve=12
""")
NUMBER_WORDS: Mapping[str, int] = MappingProxyType({word: int(number) for word, number in _NUMBERS.items()})
