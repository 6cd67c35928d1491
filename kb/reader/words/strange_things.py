"""Things of dress that a rule book need not mention, by what they are: a charity badge, a hoodie, a cravat.

Nothing here protects anybody or is worn for a faith or on the head or feet, and none is another name for what
most books have (those are in `kinds.py`).
"""

from __future__ import annotations

from functools import cache

_OF_BADGES = """
charity|cancer|poppy|remembrance|remembrance poppy
|remembrance day|poppy appeal|awareness
|campaign|protest|political|party|election|union|trade union|lodge
|society|association|club|team
|football|football club|football team|rugby|rugby club|cricket|cricket club
|golf club|hockey|supporters' club|fan|fan club|band|festival|concert|rainbow|pride|flag|national flag
|country|peace|climate|vegan|smiley|smiley face|slogan|novelty|comedy|joke|funny|silly|homemade|home-made
|christmas|easter|halloween|valentine|birthday|wedding|holiday|souvenir|tourist|museum|zoo|veteran|veterans
|regimental|regiment|army|navy|masonic|rotary|scout|scouts|guide|guides|girl guide|school|university|college
|sponsor|sponsor's|brand|cartoon|disney|film|superhero|dragon|unicorn|teddy|flower|butterfly|heart|skull
|star|animal|cat|dog|enamel|tin|button|lapel|favourite|collector's|collectors'
"""
_BADGES = "badge|pin|pin badge|lapel badge|lapel pin|enamel badge|enamel pin|button badge|patch"
_SINGLE_BADGES = """
remembrance poppy|paper poppy|white poppy|awareness ribbon|charity ribbon|pink ribbon|aids ribbon
|campaign ribbon|daffodil badge
"""
_CLOTHES = """
hoodie|hoody|hooded top|hooded sweatshirt|hooded sweater|sweatshirt|leggings|jeggings|jeans|denims|dungarees
|bermuda shorts|bermudas|cycling shorts|hot pants|tracksuit|track suit|shell suit|pyjamas|pajamas|onesie
|dressing gown|crop top|tank top|vest top|string vest|halter top|football shirt|football top|rugby shirt
|team shirt|band t-shirt|hawaiian shirt|lumberjack shirt|denim shirt|bomber jacket|denim jacket
|leather jacket|biker jacket|donkey jacket|ski jacket|miniskirt|mini-skirt|mini skirt|christmas jumper
|novelty jumper|fancy dress
"""
_NECK = "scarf|silk scarf|woolly scarf|football scarf|cravat|shawl|pashmina|feather boa|muffler"
_EXTRAS = "pocket watch|pocket square"

_CHAINS = (
    (("badge", "insignia", "adornment", "anything"), _SINGLE_BADGES),
    (("clothing", "garment", "clothes", "anything"), _CLOTHES),
    (("clothing", "garment", "clothes", "accessory", "anything"), _NECK),
    (("accessory", "adornment", "anything"), _EXTRAS),
)


@cache
def strange_things() -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    """What such things may be called by a book as a class, the nearest first, and their names."""
    badges = tuple(f"{word} {noun}" for word in _row(_OF_BADGES) for noun in _row(_BADGES))
    return (_CHAINS[0][0], badges), *((chain, _row(names)) for chain, names in _CHAINS)


@cache
def pictured() -> frozenset[str]:
    """Single words for what a badge or a sticker may be of."""
    return frozenset(word for word in _row(_OF_BADGES) if " " not in word)


def _row(text: str) -> tuple[str, ...]:
    return tuple(text.strip().replace("\n|", "|").split("|"))
