"""Who buys a thing, and which clause lets somebody make an order: told by the one clause that says so."""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case, Clause, is_in_force
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.let_off import strange
from kb.reader.recast.replaced import names_in
from kb.reader.recast.telling import LIGHT, analysed
from kb.reader.words.forms import word_set
from kb.text import Pattern

_MAKES = Pattern(
    r"(?:so |and |but )?(?:which|what) (?:rule|clause|paragraph|section)"
    r" (?:lets|allows|permits|empowers|entitles) (?P<who>.+?) (?:to )?(?:make|give|issue|write|lay down)"
    r" (?:(?:that|this|such|an?|the|his|her|their|local|standing|own) )*(?:orders?|rules?)(?: \?)?"
)
_BUYS = Pattern(
    r"(?:so |and |but )?(?:(?:do|does|must|should|will) .+ (?:have to |need to )?(?:buy|pay for|find)\b.+"
    r"|(?:do|does) .+ get .+ or (?:do|must|does) .+ (?:buy|pay for) .+"
    r"|who (?:has to |must )?(?:buys?|pays? for) .+"
    r"|(?:is|are) .+ issued or (?:do|must|does) .+ (?:buy|pay for) .+)"
)
_BUYING = word_set("""
    buy buys pay pays find own issued given ones myself ourselves yourself free company service store stores
    first pair
""")
_BOUGHT = Pattern(
    r"(?i)\b(?:bought|found|paid(?: for)?|provided) by\b|\bexpense\b|\b(?:is|are) (?:issued|lent|supplied)\b"
    r"|\b(?:issues|receives?|supplies)\b"
)


def let_or_bought(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The clause that lets somebody make an order, or that says who buys a thing; None if none is asked."""
    said = " ".join(token.low for token in found.tokens)
    clauses = [clause for clause in lookup.base.clauses if is_in_force(clause, case.as_of)]
    if (makes := _MAKES.fullmatch(said)) is not None:
        telling = list(dict.fromkeys(_letting(makes["who"], case, lookup)))
    elif _BUYS.fullmatch(said) is not None:
        telling = list(_of_buying(found, clauses, lookup))
    else:
        return None
    return Query(kind="source", clause=telling[0], case=case) if len(telling) == 1 else None


def _letting(who: str, case: Case, lookup: Lookup) -> Iterator[str]:
    """The clauses by which those of the name may make orders: "the manager of the paint hall"."""
    words = {lemma for low in who.split() if low not in LIGHT for lemma in analysed(low)}
    for delegation in lookup.base.delegations:
        authority = lookup.authorities[delegation.to]
        names = [set(analysed(label)) for label in (authority.label, *authority.other_labels)]
        clause = lookup.clauses[delegation.clause]
        if words and is_in_force(clause, case.as_of) and any(words <= name for name in names):
            yield clause.id


def _of_buying(found: Understood, clauses: list[Clause], lookup: Lookup) -> Iterator[str]:
    """The clauses with a sentence by which the one thing named is bought by somebody, or issued."""
    named = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    items = [entry.id for piece in named for entry in piece.entries if entry.id in lookup.items]
    own = any(aspect.verb == "buy" for aspect in lookup.base.aspects)
    if own or len(named) != 1 or len(items) != 1 or not set(strange(found, 0)) <= _BUYING:
        return
    for clause in clauses:
        sentences = clause.text.replace("; ", ". ").split(". ")
        if any(_BOUGHT.search(one) and names_in(items[0], one, lookup, wide=False) for one in sentences):
            yield clause.id
