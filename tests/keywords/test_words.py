"""How words are brought to a common form, and that different words stay apart."""

from __future__ import annotations

from collections import defaultdict
from itertools import combinations

import pytest

from kb.files import data_folder
from kb.keywords import Document, analyse, documents_of, lemma
from kb.model.records import RuleBase
from kb.sources import load_rule_base

ONE_WORD = """
scarf scarves | wear worn wears wearing wore | sleeve sleeves sleeved | glove gloves | shoe shoes
badge badges | watch watches | knife knives | foot feet | dress dresses dressed | tie ties tied
button buttons buttoned | tar tarred tarring | line lined lines | pierce pierced piercing
roll rolled rolling | travel travelled travelling | stripe striped stripes | centre centred
authorise authorised authorized authorize | colour color colours | grey gray | carry carried carries carrying
member member's | earring earrings | fasten fastened fastening fastenings | trousers trouser | body bodies
require required requiring | handle handled handling | fit fitted fits | accessory accessories | hang hung
lend lent | draw drew drawn | write wrote written | steal stole stolen | mean meant | say said | lose lost
"""
APART = """
officer office | cap cape | hat hate | pin pine | tap tape | short shorts | ear earring | glass glasses
line lining | ring wring | boat boot | arm army | cloth clothing | canvas canva | tie tier | shed she
bus bu | lens len | read red | dress address | brass bra | class clash | sewing seeing | stock stocking
string stre | need nee | web webbing | wedding wed | even evening | morning mourning | pipe piping
leave left | feel felt | ring rung | bite bit | see saw | find foundry | know known | fall fell
"""


def _groups(text: str) -> list[list[str]]:
    return [group.split() for line in text.strip().splitlines() for group in line.split("|")]


@pytest.mark.parametrize("forms", _groups(ONE_WORD), ids=lambda forms: forms[0])
def test_forms_of_one_word_meet(forms: list[str]) -> None:
    assert {lemma(form) for form in forms} == {forms[0]}


@pytest.mark.parametrize("words", _groups(APART), ids=lambda words: words[0])
def test_different_words_stay_apart(words: list[str]) -> None:
    assert lemma(words[0]) != lemma(words[1])


def test_a_text_becomes_tokens() -> None:
    assert analyse("The Keeper's high-visibility vests, worn with 2 pins (or \u00e9paulettes)!") == (
        "keeper",
        "high",
        "visibility",
        "vest",
        "wear",
        "2",
        "pin",
        "\u00e9paulette",
    )
    assert analyse("") == analyse("the of and") == analyse("— … ***") == ()
    assert analyse("NOT gloves AND (cap") == ("glove", "cap")


@pytest.fixture(scope="module")
def base() -> RuleBase:
    loaded = load_rule_base(data_folder("demo_facts")).base
    assert loaded is not None
    return loaded


def _texts(document: Document) -> list[str]:
    return [document.label, *document.other, *document.everyday, document.heading, document.text]


def _word_forms(base: RuleBase) -> dict[str, set[str]]:
    """Every word of the base, in lower case, under its common form."""
    forms: dict[str, set[str]] = defaultdict(set)
    for document in documents_of(base):
        for text in _texts(document):
            for word in text.casefold().replace("-", " ").split():
                bare = word.strip(".,;:()\"'’")
                if bare.isalpha():
                    forms[lemma(bare)].add(bare)
    return forms


def _share_an_inflection(left: str, right: str) -> bool:
    """Whether two forms differ in nothing but endings that mark number, person, tense or participle."""
    endings = ("", "s", "es", "d", "ed", "ing", "ings", "e", "y", "ies", "ied")
    stems = [{word.removesuffix(e) for e in endings if word.endswith(e)} for word in (left, right)]
    doubled = [{stem[:-1] for stem in group if len(stem) > 2 and stem[-1] == stem[-2]} for group in stems]
    return bool((stems[0] | doubled[0]) & (stems[1] | doubled[1]))


IRREGULAR = {
    form: forms[0]
    for forms in _groups(
        """
        wear worn wore | give given gave | hold held | keep kept | hang hung | show shown | bind bound
        draw drew drawn | lend lent | mean meant | find found | say said
        tell told
        take taken took | do done | make made | sew sewn | tear torn | go gone went goes | scarf scarves
        foot feet | colour color | grey gray | trousers trouser | travel traveled traveling
        carry carried carries
        knife knives | half halves | shelf shelves | wharf wharves | loaf loaves | life lives | shine shone
        moustache moustaches | tooth teeth | man men | woman women
        """
    )
    for form in forms[1:]
}


def test_no_two_words_of_the_base_collide(base: RuleBase) -> None:
    """Whatever shares a common form differs by inflection alone, save for the irregular forms listed here."""
    compared = 0
    for forms in _word_forms(base).values():
        for left, right in combinations(sorted(forms), 2):
            compared += 1
            plain = (IRREGULAR.get(left, left), IRREGULAR.get(right, right))
            assert _share_an_inflection(*plain), (left, right)
    assert compared > 100


def test_no_two_items_of_the_base_have_one_name(base: RuleBase) -> None:
    names: dict[tuple[str, ...], set[str]] = defaultdict(set)
    for item in base.items:
        names[tuple(sorted(analyse(item.label)))].add(item.id)
    assert [ids for ids in names.values() if len(ids) > 1] == []
    assert () not in names, "a label of stop words alone could never be found"
