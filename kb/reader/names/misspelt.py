"""Misspelt words: text-speak, words that sound like a name, words that a name's other words give away.

Nothing is mended that is an ordinary word or that the books use, except where a closed list and the words
beside
it say what was meant ("were do I", "can I where it").
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from kb.reader.names.lexicon import Lexicon
from kb.reader.phrases.english import PHRASES, SKIPPED_INSIDE_LABELS
from kb.reader.words.forms import word_pairs, word_set
from kb.reader.words.tokens import Token, word_key

_TALK: Mapping[str, str] = word_pairs("""
    wot=what wat=what wht=what waht=what hwat=what wen=when whn=when wehn=when hoo=who whoo=who whitch=which
    whear=where hav=have hve=have havv=have ahve=have cna=can acn=can kan=can shuld=should shoud=should
    shoudl=should culd=could coud=could wud=would wuld=would mus=must msut=must mst=must alow=allow
    alows=allows
    u=you ur=your yr=your r=are pls=please plz=please plse=please pleese=please pleas=please cos=because
    cuz=because coz=because bcos=because rite=right ryt=right teh=the hte=the thier=their adn=and nad=and
    abt=about wth=with wiv=with wiht=with whit=with tho=though thru=through thx=thanks thnx=thanks
    tmrw=tomorrow tmr=tomorrow tomoro=tomorrow tomorow=tomorrow tonite=tonight nite=night evry=every
    evryone=everyone everone=everyone sumone=someone realy=really woring=wearing wering=wearing
    weering=wearing
    waring=wearing wer=wear weare=wear werr=wear hw=how howe=how meny=many menny=many mutch=much culour=colour
    culor=colour colr=colour befor=before durring=during untill=until til=until outsid=outside gud=good okk=ok
    yea=yes nope=no n=and any1=anyone some1=someone every1=everyone ne1=anyone sry=sorry sox=socks
    wile=while whil=while wyle=while alowed=allowed allowd=allowed runing=running haff=have
    werking=working haveing=having carrys=carries
    wanna=want haf=have hafta=have havta=have shld=should cld=could wld=would tht=that dis=this wher=where
    thier=their alwys=always allways=always wich=which whn=when abt=about bcs=because bc=because
    b4=before av=have em=them ere=here meself=myself yerself=yourself hisself=himself
    ya=you yer=your owt=anything nowt=nothing summat=something brekkie=breakfast brekky=breakfast
    temp=temperature yrs=years hrs=hours mins=minutes bike=bicycle craic=deal""")
_ASKING = word_set("do does did must should can could may might is are shall will dose exactly i we the my u")
_OWNING = word_set("the my")
_GOING = word_set("go goes going sit sits put placed pinned sewn worn fixed attached belong belongs supposed")
_SUBJECTS = word_set(
    "i we you they he she anyone someone everyone it u people not to n't ever still also just"
)
_MODALS = word_set("can could may might must should shall do does did will would to not n't")
_LEADING = word_set("have has need needs allowed got ought supposed permitted required want ok okay")
_QUESTION = word_set("where were what when why how who wot wat wen hoo which wher")


def plain_words(
    tokens: tuple[Token, ...], lexicon: Lexicon
) -> tuple[tuple[Token, ...], list[tuple[int, str]]]:
    """The words with text-speak and slips over words of structure mended, and the places mended."""
    found = list(tokens)
    mended: list[tuple[int, str]] = []
    for place, token in enumerate(tokens):
        meant = _by_place(tokens, place) or _TALK.get(token.low, "")
        if not meant or meant == token.low or (token.key in lexicon.known_words and token.low in _TALK):
            continue
        if token.text.isupper() and len(token.text) > 1 and not _all_upper(tokens):
            continue  # a code
        found[place] = mended_token(token, meant)
        mended.append((place, token.text))
    return tuple(found), mended


def mended_token(token: Token, word: str) -> Token:
    """A token as another word in its place."""
    return Token(token.start, token.end, token.text, word, word_key(word))


def _all_upper(tokens: Sequence[Token]) -> bool:
    return all(token.text.isupper() for token in tokens if token.text.isalpha())


def _by_place(tokens: tuple[Token, ...], place: int) -> str:
    """A word that is another for the words beside it."""
    low = tokens[place].low
    before = tokens[place - 1].low if place else ""
    after = tokens[place + 1].low if place + 1 < len(tokens) else ""
    further = tokens[place - 2].low if place > 1 else ""
    led = further in (_LEADING if before == "to" else _MODALS) and before in _SUBJECTS
    if low in ("where", "were", "ware") and led:
        return "wear"
    if low in ("were", "ware", "wear", "wer", "whare") and not before and after in _ASKING:
        worn = low == "wear" and after in _OWNING and _GOING.isdisjoint(token.low for token in tokens)
        return "" if worn else "where"  # "wear my hat?" is a word of its own, "wear my pin goes" is not
    if low == "dose" and (
        not before or before in _QUESTION or after in ("i", "it", "the", "my", "a", "an", "one")
    ):
        return "does"
    if low == "2" and _TALK.get(before, before) in _LEADING and not after.isdecimal():
        return "to"
    if tokens[place].text == "w" and before and after:
        return "with"
    if low in ("hi", "hy") and before == "how":
        return "high"
    if low == "witch" and not before:
        return "which"
    return "whether" if low == "weather" and after in _SUBJECTS and after not in ("not", "to") else ""


def names_nearby(tokens: tuple[Token, ...], place: int, lexicon: Lexicon) -> tuple[str, ...]:
    """The words close to the one at a place that make, with the words beside it, a name of several words."""
    from rapidfuzz.distance import OSA  # noqa: PLC0415  only when a word is left over

    word = tokens[place].low
    if len(word) < 3 or not word.isalpha():
        return ()
    found: dict[str, float] = {}
    beside = {tokens[p].key for p in (_beside(tokens, place, -1), _beside(tokens, place, 1)) if p is not None}
    for label in lexicon.long_names:
        if beside.isdisjoint(label):
            continue
        for at, part in enumerate(label):
            if part == tokens[place].key or not _fits(tokens, place, label, at):
                continue
            away = min(OSA.distance(word, part), OSA.distance(tokens[place].key, part))
            forms = {sound(word), sound(tokens[place].key), sound(word.rstrip("sz"))}
            alike = sound(part) in forms
            if away <= (1 if len(word) < 6 else 2) or (alike and away <= max(2, len(word) // 2)):
                found[part] = away - 0.5 * alike
    best = min(found.values(), default=0.0)
    return tuple(part for part, away in found.items() if away == best)


def _beside(tokens: tuple[Token, ...], place: int, step: int) -> int | None:
    """The next word in a direction that is not one that may stand inside a name."""
    place += step
    while 0 <= place < len(tokens) and tokens[place].low in _SKIPPED:
        place += step
    return place if 0 <= place < len(tokens) else None


def _fits(tokens: tuple[Token, ...], place: int, label: tuple[str, ...], at: int) -> bool:
    """Whether the words around a place are those around a word of a name."""
    return _runs(tokens, place, -1, label[:at][::-1]) and _runs(tokens, place, 1, label[at + 1 :])


def _runs(tokens: tuple[Token, ...], place: int, step: int, words: Sequence[str]) -> bool:
    for word in words:
        after = _beside(tokens, place, step)
        if after is None or tokens[after].key != word:
            return False
        place = after
    return True


_SKIPPED = SKIPPED_INSIDE_LABELS | {"-"}


def sounding(word: str, pool: Sequence[str]) -> tuple[str, ...]:
    """Words of a pool that sound like a long misspelt word and are not far from it in writing."""
    from rapidfuzz.distance import OSA  # noqa: PLC0415  only when a word is left over

    if len(word) < 5 or not word.isalpha():
        return ()
    forms = {sound(word), sound(word_key(word))}
    limit = 2 if len(word) < 7 else 3
    pool = pool if len(word) > 5 else [name for name in pool if name[0] == word[0] and name[-1] == word[-1]]
    return tuple(
        name
        for name in pool
        if len(name) > 4 and sound(name) in forms and OSA.distance(word, name, score_cutoff=limit) <= limit
    )


_SOUNDS = (
    ("tch", "S"), ("sch", "S"), ("ch", "S"), ("sh", "S"), ("ph", "f"), ("ght", "t"), ("ck", "k"), ("qu",
    "kw"),
    ("x", "ks"), ("ce", "s"), ("ci", "s"), ("cy", "s"), ("ge", "j"), ("gi", "j"), ("c", "k"), ("z", "s"),
    ("wh", "w"), ("kn", "n"), ("wr", "r"),
)  # fmt: skip


@lru_cache(maxsize=8192)  # the names of the books are heard again with each misspelt word
def sound(word: str) -> str:
    """The consonants that are heard, doubled ones once; a vowel at the beginning counts."""
    for written, heard in _SOUNDS:
        word = word.replace(written, heard)
    heard_word = ""
    for index, letter in enumerate(word):
        if letter in "aeiouyhw" and index:
            continue
        kept = "A" if letter in "aeiouy" else letter
        if kept != heard_word[-1:]:
            heard_word += kept
    return heard_word


def structure_words() -> Iterator[str]:
    """Words of phrases that may be recognised misspelt."""
    seen = {word for phrase in PHRASES for word in phrase}
    yield from (word for word in sorted(seen) if len(word) > 3 and word.isalpha())
