"""Who buys a thing, and which clause lets somebody make an order: told by the one clause that says so."""

from __future__ import annotations

from collections.abc import Iterator

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import OWNED_ASPECTS, Case, Clause, is_in_force
from kb.reader.pieces.pieces import Understood
from kb.reader.recast.let_off import strange
from kb.reader.recast.replaced import is_of_all, names_in
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
_PAYS = Pattern(r"(?:so |and |but )?who (?:has to |must )?pays? for\b")
_EITHER = Pattern(
    r" [,:–-] (?:is it )?(?:me|us|i|we|you|the [\w']+(?: [\w']+)?|my [\w']+) or (?:the |my |our )?[\w']+"
    r"(?: [\w']+)?(?: \?)?$"
)
"""Who may pay, as they are put to be chosen from."""
_MONEY = Pattern(
    r"(?i)\b(?:pays?|paid|payment|costs?|expense|(?<!in )charged?|deduct\w*|allowance|bought|buys?"
    r"|purchase\w*|free of charge|at (?:his|her|their) own"
    r"|(?:issued|provided|supplied|given) (?:free|with (?:all|every)))\b"
)


def let_or_bought(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The clause that lets somebody make an order, or that says who buys a thing; None if none is asked."""
    said = " ".join(token.low for token in found.tokens)
    clauses = [clause for clause in lookup.base.clauses if is_in_force(clause, case.as_of)]
    if (makes := _MAKES.fullmatch(said)) is not None:
        telling = list(dict.fromkeys(_letting(makes["who"], case, lookup)))
    elif _BUYS.fullmatch(said) is not None and (item := _bought(found, said, lookup)):
        telling = list(_of_buying(item, clauses, lookup))
        if not telling and _PAYS.match(said) and not any(_may_say(item, one, lookup) for one in clauses):
            return Query(kind="source", items=(item,), aspect="possession", polarity="not", case=case)
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


def _bought(found: Understood, said: str, lookup: Lookup) -> str | None:
    """The one thing that a text asks who buys, and that alone: "who pays for it, me or the company?"."""
    named = [piece for piece in found.pieces if piece.tag in ("item", "items")]
    items = [entry.id for piece in named for entry in piece.entries if entry.id in lookup.items]
    own = any(aspect.verb == "buy" for aspect in lookup.base.aspects)
    either = _EITHER.search(said)
    end = len(said[: either.start()].split()) if either is not None else None
    if own or len(named) != 1 or len(items) != 1 or not set(strange(found, 0, end)) <= _BUYING:
        return None
    return items[0]


def _of_buying(item: str, clauses: list[Clause], lookup: Lookup) -> Iterator[str]:
    """The clauses with a sentence by which the thing is bought by somebody, or issued."""
    for clause in clauses:
        sentences = clause.text.replace("; ", ". ").split(". ")
        if any(_BOUGHT.search(one) and names_in(item, one, lookup, wide=False) for one in sentences):
            yield clause.id


def _may_say(item: str, clause: Clause, lookup: Lookup) -> bool:
    """Whether a clause may say who pays in words of its own: of money at all, or by what each is to have."""
    owned = (rule for rule in lookup.rules_of(clause.id) if rule.aspect in OWNED_ASPECTS)
    kinds = {*lookup.broader(item)}
    near = {*kinds, *lookup.narrower(item)}
    return any(not kinds.isdisjoint(rule.scope.items) for rule in owned) or any(
        _MONEY.search(one) is not None and (names_in(item, one, lookup) or is_of_all(one, near, lookup))
        for one in clause.text.replace("; ", ". ").split(". ")
    )
