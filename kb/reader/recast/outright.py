"""Questions known by a turn of phrase, read before the words are given their parts."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query, Reading
from kb.model.records import Case, Clause, is_in_force
from kb.reader.meaning.authority import asked_authority
from kb.reader.meaning.defined import GRANTABLE, clause_defining, granting, holds, one_of
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.pieces.lasting import lasting
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_NAMED = frozenset(
    {"item", "items", "act", "measure", "clause number", "which clause", "say", "list", "rule"}
)
_GRANTED = Pattern(
    r"^how long\b.*\b(?:last|run|good|valid|hold|stand|for)\b|\bfrom whom\b|\bwho from\b|"
    r"^whom? .*\b(?:from|for)\b"
)
_SPELL = Pattern(r"^how long\b.*\b(?:last|run|good|valid|hold|stand)\b")
_RUNS = Pattern(
    r"^(?:and )?(?:for )?how long (?:does|do|is|are|will|can|would) .+ (?:last|run|valid|good|hold|stand"
    r"|in force|granted|go on)"
    r"(?: (?:for|good))?\W*$"
)
_GRANTS = Pattern(r"\b(?:grants?|gives?|approves?|orders?|authori[sz]es?|awards?|issues?|declares?|signs?)\b")
_PERMISSION = Pattern(
    r"\bwhose (?:permission|leave|say|approval|authority|consent|word)\b|"
    r"\bwho (?:can |may |must |could |has to |have to |needs to |would )?"
    r"(?:approves?|grants?|authori[sz]es?|permits?|allows?|signs?(?: off)?|okays?|"
    r"excuses?|exempts?|lets? (?:me|us|him|her|them|one|you|anyone|anybody|somebody|people) off)\b"
)
_PURPOSE = Pattern(
    r"(?:so |and )?(?:what (?:is|'s|are) (?:the )?(?:whole )?(?:purpose|aim|object|point|idea|use|reason)"
    r" (?:of|behind|for) (.+)"
    r"|what (?:is|are|'s) (.+?) (?:all )?(?:for|about|there for)|what(?:'s| is) the (?:purpose|aim|object"
    r"|point|idea) of having (.+)"
    r"|why (?:do|does|must|should) (?:we|one|you|they|anyone|people|members|i) (?:have to |all )?(?:wear"
    r"|have|need|bother with) (?:an? |the )?"
    r"(uniforms?|insignia|dress rules|rules)(?: at all)?|why is there (.+)|who is (.+) for|what does (.+?)"
    r" (?:cover|deal with)(?: in general)?)"
)
_GRAMMAR = frozenset({"on", "in", "of", "for", "with", "poss", "self", "person", "be"})
_OPENS = frozenset({"what", "why", "who"})
"""Words of which each of those has one."""
_HEADED = Pattern(r"\b(?:purpose|aim|object|why|whom)\b")
_ASIDE = Pattern(
    r",? (?:in (?:a nutshell|short|brief|a word|general|one line|a sentence)|briefly|exactly|according to"
    r" (?:the|this|your) \w+)\b"
)
_OF_DRESS = word_set("""
    the a an uniform dress rule rules book order regulation instruction all this these our your it wear
    wearing of have having clothes
""")
_CONTENTS = Pattern(
    r"\bwhat (?:all )?(?:does|do|did|is|are|'s)\b.*\b(?:say|says|contain|contains|state|tell us|in|about"
    r"|deal with)\b"
    r"|^(?:please )?(?:show|read|list|give|tell)\b|^(?:is|are)\b.*\b(?:in force|valid|current)\b"
    r"|\b(?:when|from what (?:day|date)|since when)\b.*\b(?:apply|applies|come in|comes in|force|effect"
    r"|start|starts|begin|begins|valid)\b"
)
_OF_A_BOOK = word_set("""
    what when which still current do does did is are be the this all say says contain contains state
    tell us in about deal with show me read list give please clause clauses rule rules of from date day
    since apply applies come comes into force effect take takes start starts begin begins valid 's it
    now ? . !
""")
_MOST_CLAUSES = 20
_ASKING = frozenset({"do", "be"})
_CHANGING = word_set("""
    change changes changed changing new news amend amends amended amendment amendments altered update
    updates updated revise revised replace replaces replaced repeal repeals repealed modified withdrawn
    dropped rewritten force different differently differ differs otherwise coming latest superseded
    tightened relaxed compare
""")  # spares most questions the patterns
_OF_DAYS = word_set("happens happened takes comes came force still valid say said kicks starts ends same")
_POWER = word_set("he she they power powers right rights authority")
_FREEING = word_set(
    "let sign excuse release free spare exempt relieve dispense waive allow permit give grant excused"
    " exempted spared released"
)
_GIVING = word_set("""
    let lets allow allows allowed permit permits permitted authorise authorised authorize authorized
    approve approved approves authorises authorizes sanction sanctioned okayed excuse excused excuses
    exempt exempted exempts spare spared release released relieve relieved free freed waive waived
    waives give gives grants gave given granted releases
""")
_HAPPENING = word_set("happened happen happens become became becomes gone done since when date day long")
_OF_RULES = word_set("before used previously originally formerly")


def asked_outright(
    found: Understood, previous: Query | None, case: Case, lookup: Lookup, read: Callable[[str], Reading]
) -> Query | Reading | Ask | Abstain | None:
    """The query that a turn of phrase makes of the text, or which clause is meant; None where it has none.

    `previous` is the question before; `read` reads other words.
    """
    before = previous.items if previous is not None else ()
    return (
        _going_on(found, previous, case, lookup, read)
        or _what_happened(found, previous, case, lookup)
        or _on_the_way(found, lookup, read)
        or _how_often(found, case, lookup)
        or lasting(found, before, case, lookup)
        or _asked_change(found, before, case, lookup, read)
        or _who_may(found, case, lookup, read)
        or _asked_term(found, case, lookup)
        or _asked_grant(found, case, lookup)
        or _asked_spell(found, case, lookup)
        or _asked_purpose(found, case, lookup)
        or _asked_book(found, case, lookup)
    )


def _going_on(
    found: Understood, previous: Query | None, case: Case, lookup: Lookup, read: Callable[[str], Reading]
) -> Query | None:
    """ "And for cadets?", after what has changed."""
    if previous is None or not (previous.other is not None or previous.book is not None):
        return None
    from kb.reader.meaning.changed_further import going_on  # noqa: PLC0415  as below

    return going_on(found, previous, case, lookup, read)


def _what_happened(
    found: Understood, previous: Query | None, case: Case, lookup: Lookup
) -> Query | Abstain | None:
    """ "What happened to the limit for beards", "since when?": the clause that altered it."""
    lows = {token.low for token in found.tokens}
    if _HAPPENING.isdisjoint(lows):
        return None
    from kb.reader.recast.happened import since_when, what_happened  # noqa: PLC0415  few questions ask it

    again = since_when(found, previous, lookup) if previous is not None else None
    return again or what_happened(found, case, lookup)


def _who_may(
    found: Understood, case: Case, lookup: Lookup, read: Callable[[str], Reading]
) -> Query | Reading | Ask | Abstain | None:
    """The clause that lets somebody depart from a rule, else the one on who is let off, or on what stays.

    Before them goes who gives the leave that a rule asks for, and what was asked once it was given.
    """
    given: Query | Reading | Abstain | None = None
    sure = False
    if not _POWER.isdisjoint(token.low for token in found.tokens[-8:]):
        from kb.reader.recast.his_power import his_power  # noqa: PLC0415  few questions ask it

        if (his := his_power(found, lookup, read)) is not None:
            return his
    if not _GIVING.isdisjoint(token.low for token in found.tokens):
        from kb.reader.recast.leave_given import leave_given  # noqa: PLC0415  few questions ask it

        given, sure = leave_given(found, case, lookup, read)
    if given is not None and sure:
        return given
    asked = asked_authority(found, case, lookup)
    off = _let_off(found, case, lookup, read)
    if isinstance(off, Query) and isinstance(asked, Query):
        who = any(token.low == "who" for token in found.tokens)
        powers = {one.clause for one in lookup.base.delegations}  # to depart from a rule, by an order
        if asked.clause not in powers or (who and off.clause not in powers):
            return off
    return asked or off or given


def _let_off(
    found: Understood, case: Case, lookup: Lookup, read: Callable[[str], Reading]
) -> Query | Reading | Abstain | None:
    """ "Can the manager let us off the hard hat": the clause that says who may, or that nobody may."""
    if _FREEING.isdisjoint(token.low for token in found.tokens):
        return None
    from kb.reader.recast.let_off import let_off  # noqa: PLC0415  few questions ask it
    from kb.reader.recast.waived import plainly_let_off  # noqa: PLC0415  as above

    for plain in plainly_let_off(found):
        again = read(plain)
        if again.query is not None and again.query.kind == "source":
            return again.query
    return let_off(found, case, lookup)


_AGED = word_set("""
    old year years month months season seasons winters knock knocked blow bang banged bump bumped hit dropped
    struck cracked crack split dent dented fall fell fallen came come landed torn ripped damaged worn whack
    whacked thump clout tear hole whack crashed smashed bounced
""")
_POWERS = word_set("buy buys pay pays lets allows permits empowers entitles find")


def _how_often(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """ "How often do I get new boots?", "who buys them?": the clause that says so, or that none does."""
    lows = {token.low for token in found.tokens}
    if not _POWERS.isdisjoint(lows):
        from kb.reader.recast.powers import let_or_bought  # noqa: PLC0415  as below

        if (told := let_or_bought(found, case, lookup)) is not None:
            return told
    if not _AGED.isdisjoint(lows):
        from kb.reader.recast.worn_out import when_worn_out  # noqa: PLC0415  few questions ask it

        if (worn := when_worn_out(found, case, lookup)) is not None:
            return worn
    if {"what", "do", "with"} <= lows or {"how", "often"} <= lows:
        from kb.reader.recast.recurring import done_often, worn_no_more  # noqa: PLC0415  as above

        if (done := worn_no_more(found, case, lookup) or done_often(found, case, lookup)) is not None:
            return done
    if "often" not in lows and not {"when", "new"} <= lows and not {"when", "fresh"} <= lows:
        return None
    from kb.reader.recast.replaced import how_often  # noqa: PLC0415  few questions ask it

    return how_often(found, case, lookup)


def _on_the_way(found: Understood, lookup: Lookup, read: Callable[[str], Reading]) -> Reading | None:
    """ "Can I wear my uniform on the bus to my duty?": the uniform as a whole, on the way."""
    if all(token.low != "uniform" for token in found.tokens):
        return None
    from kb.reader.recast.on_the_way import on_the_way  # noqa: PLC0415  few questions are on the uniform

    text = on_the_way(found, lookup)
    again = read(text) if text is not None and text != found.text else None
    if again is None or again.query is None:
        return None
    return msgspec.structs.replace(again, question=found.text)


def _asked_change(
    found: Understood, before: Sequence[str], case: Case, lookup: Lookup, read: Callable[[str], Reading]
) -> Query | Ask | None:
    """ "What is new about beards since June": the comparison of two days."""
    lows = {token.low for token in found.tokens}
    dated = any(low[0].isdigit() for low in lows) or any(piece.tag == "book" for piece in found.pieces)
    spoken = not _CHANGING.isdisjoint(lows) or (dated and not _OF_DAYS.isdisjoint(lows))
    if not spoken and (_OF_RULES.isdisjoint(lows) or lows.isdisjoint(("rule", "rules", "clause"))):
        return None
    from kb.reader.meaning.amended import asked_change  # noqa: PLC0415  few questions have the words

    return asked_change(found, before, case, lookup, read)


def _asked_term(found: Understood, case: Case, lookup: Lookup) -> Query | Ask | None:
    """ "Does fog count as dark hours", "is it heavy work": the clause that says what the term is."""
    pieces = [piece for piece in found.pieces if piece.tag not in ("filler", "comma", "det")]
    tags = [piece.tag for piece in pieces]
    facts = {piece.fact for piece in pieces if piece.tag == "fact"}
    terms = [fact for fact in facts if lookup.facts[fact].family == "term"]
    if "mean" in tags and not terms and facts:
        said = (p for p in pieces[tags.index("mean") + 1 :] if p.tag not in _GRAMMAR)
        meant = {token.key for p in said for token in found.tokens[p.first : p.last]}
        terms = [f.id for f in lookup.base.facts if f.family == "term" and meant & _keys(f.label)]
        tags = [tag for tag in tags if tag not in ("item", "items")]
        return (
            clause_defining(terms[0], case, lookup) if len(terms) == 1 and _NAMED.isdisjoint(tags) else None
        )
    if len(terms) != 1 or len(facts) < 2 or not _NAMED.isdisjoint(tags):
        return None
    counts = "mean" in tags or (tags[0] in _ASKING and tags[1:] == ["fact", "fact"])
    return clause_defining(terms[0], case, lookup) if counts else None


def _keys(label: str) -> set[str]:
    return {token.key for token in tokenize(label)}


def _asked_grant(found: Understood, case: Case, lookup: Lookup) -> Query | Ask | None:
    """ "How long does a waiver last", "whose permission do I need for a beard": the clause on granting it."""
    facts = {piece.fact for piece in found.pieces if piece.tag == "fact"}
    held = [fact for fact in facts if lookup.facts[fact].family in GRANTABLE]
    tags = {piece.tag for piece in found.pieces}
    said = " ".join(token.low for token in found.tokens)
    things = [entry.id for p in found.pieces if p.tag in ("item", "items") for entry in p.entries]
    if things and not facts and "who" in said and _PERMISSION.search(said):
        resting = facts_that_matter(Query(kind="may", items=(things[0],), case=case), lookup)
        held = [fact for fact in resting if lookup.facts[fact].family in ("authorisation", "waiver")]
    elif (
        len(held) != 1 or len(facts) != 1 or things or "act" in tags or not _asks_grantor(said, found, lookup)
    ):
        return None
    clauses = [clause.id for fact in held for clause in granting(lookup.facts[fact], lookup)]
    if len(held) == 1 and _SPELL.search(said):
        from kb.reader.meaning.permits import on_spell  # noqa: PLC0415  few questions ask how long

        clauses = on_spell(clauses, _keys(lookup.facts[held[0]].label), lookup)
    return one_of(clauses, case, lookup) if clauses else None


def _asks_grantor(said: str, found: Understood, lookup: Lookup) -> bool:
    return bool(_GRANTED.search(said) or (_GRANTS.search(said) and _names_authority(found, lookup)))


def _names_authority(found: Understood, lookup: Lookup) -> bool:
    keys = [token.key for token in found.tokens]
    names = (name for a in lookup.base.authorities for name in (a.label, *a.other_labels))
    return any(holds(keys, [token.key for token in tokenize(name)]) for name in names)


def _asked_spell(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """ "How long does a waiver run": the clause that says a time of what is named."""
    if found.tokens[0].low not in ("how", "for", "and") or not _RUNS.search(
        " ".join(t.low for t in found.tokens)
    ):
        return None
    from kb.reader.recast.by_words import clause_by_words  # noqa: PLC0415  few questions ask it

    return clause_by_words(found, case, lookup)


def _asked_purpose(found: Understood, case: Case, lookup: Lookup) -> Query | Ask | None:
    """ "What is the purpose of the Order", "what is uniform for": the clause that says so.

    Of a book that is named it is the book's own; of what else is named the one that names it; of dress in
    general that of the highest authority.
    """
    if not any(token.low in _OPENS for token in found.tokens):
        return None
    said = _ASIDE.sub("", " ".join(token.low for token in found.tokens)).strip(" ?.")
    match = _PURPOSE.fullmatch(said)
    if match is None:
        return None
    books = {piece.arg for piece in found.pieces if piece.tag == "book"}
    clauses = [c for c in lookup.base.clauses if c.kind == "purpose" and _holds_on(c, case)]
    if books:
        clauses = [c for c in clauses if books & {c.edition, lookup.editions[c.edition].book}]
    else:
        words = {token.key for token in tokenize(next(filter(None, match.groups()), ""))} - _OF_DRESS
        clauses = [c for c in clauses if words <= _keys(f"{c.heading} {c.text}")]
        top = min((authority.rank for authority in lookup.base.authorities), default=0)
        clauses = [c for c in clauses if words or _rank_of(c, lookup) == top]
    headed = [c for c in clauses if _HEADED.search((c.heading or "").casefold())]
    return one_of([c.id for c in headed or clauses], case, lookup)


def _holds_on(clause: Clause, case: Case) -> bool:
    return is_in_force(clause, case.as_of)


def _rank_of(clause: Clause, lookup: Lookup) -> int:
    return lookup.authorities[lookup.books[lookup.editions[clause.edition].book].authority].rank


def _asked_book(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """ "What does the Notice say": all clauses of a short book."""
    books = {piece.arg for piece in found.pieces if piece.tag == "book"}
    rest = {t.low for p in found.pieces if p.tag != "book" for t in found.tokens[p.first : p.last]}
    said = " ".join(token.low for token in found.tokens)
    if len(books) != 1 or not rest <= _OF_A_BOOK or not _CONTENTS.search(said):
        return None
    (book,) = books
    editions = [e for e in lookup.base.editions if book in (e.id, e.book) and e.valid_from <= case.as_of]
    edition = max(editions, key=lambda e: e.valid_from, default=None)
    count = sum(edition is not None and c.edition == edition.id for c in lookup.base.clauses)
    short = edition is not None and count <= _MOST_CLAUSES
    return Query(kind="source", book=book, case=case) if short else None
