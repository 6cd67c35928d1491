"""What the clause that a talk is on said before it was changed, and since when it says what it does.

"What did it say before?", "was it always like that?", "what was the limit before the amendment?", "since
when?": of the one clause in focus that altered another. Where none did, or more than one, nothing is told.
"""

from __future__ import annotations

import datetime
from collections.abc import Sequence

import msgspec

from kb.model.altering import altered
from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.model.records import Case, Clause, is_in_force
from kb.text import Pattern
from kb.wording import say_query

_LED = r"(?:(?:and|but|so|ok|okay|oh|hm+|well|right|wait)[ ,]+)*"
_IT = (
    r"(?:it|that|this|they|those|things|(?:the|that|this) (?:old )?"
    r"(?:rule|clause|book|order|text|one|wording|limit|paragraph)s?)"
)
_EVENT = (
    r"(?:(?:the |that |this |it |they |was |were |got |had |been )*"
    r"(?:chang(?:e|ed)|amend(?:ment|ed)|alter(?:ation|ed)|update|updated|revis(?:ion|ed)|replaced|notice|circular|"
    r"new (?:rule|one|order|clause|book)|came in))"
)
_EARLIER = (
    rf"(?:before(?:hand)?(?: (?:that|then|this|{_EVENT}))?|previously|originally|"
    rf"until (?:then|{_EVENT})|earlier)"
)
_SAY = r"(?:say|read|require|allow|state|ask|tell us|demand|be|look|have)"
_BEFORE = Pattern(
    rf"(?i){_LED}(?:"
    rf"what (?:did|does) {_IT} (?:use to |used to )?{_SAY} {_EARLIER}|"
    rf"what did {_IT} use(?:d)? to {_SAY}|what used {_IT} to {_SAY}|"
    rf"{_EARLIER},? what did {_IT} {_SAY}|"
    rf"(?:what|how|where) (?:was|were) (?:{_IT}|(?:the|its?|their) (?P<noun>[\w' -]{{2,40}}?)) {_EARLIER}|"
    rf"(?:what about |how about |how was {_IT} |what was {_IT} )?before (?:the |that |this )?{_EVENT}|"
    rf"(?:what|how) was (?:the |it |that )?(?:old|former|previous|earlier|original) "
    r"(?P<old>rule|one|text|clause|wording|limit|figure|number|size|measure|temperature|length|time|date|day)|"
    rf"(?:what|how) was it|"
    rf"(?:was|were|has|have) {_IT} (?:always|ever) (?:been )?(?:(?:like|the|that|this) ?)*"
    r"(?:that|so|this|way|same|case|rule|different|otherwise|many|much|long|strict)|"
    rf"(?:was|were) {_IT} (?:(?:any )?different|the same|otherwise|like that|so) {_EARLIER}|"
    rf"(?:has|have|did) {_IT} (?:ever )?(?:been )?chang(?:e|ed)(?: at all| recently| lately)?|"
    rf"did {_IT} use(?:d)? to be (?:different|otherwise|like that|so|the same)|"
    rf"is (?:that|this|it) (?:something |a )?new(?: rule| one)?|"
    rf"what (?:has|was) (?:been )?changed(?: about it| there| in it)?"
    r")(?: then| at all| though| exactly)?"
)
_SINCE = Pattern(
    rf"(?i){_LED}(?:(?:and )?(?:since|from) (?:when|what (?:date|day))(?: exactly| on)?"
    rf"(?: (?:has|have|is|was|are|were|did|does|can|could|may) [^?]{{1,60}})?|"
    rf"(?:when|on what (?:date|day)) (?:did|was|were|has) {_IT} (?:get |been )?"
    r"(?:change[ds]?|amended|altered|come in(?:to force)?|start(?:ed)?|brought in|introduced|begin|allowed)|"
    rf"how long has {_IT} been (?:so|like that|that way|allowed|the rule|the case|in force))"
    r"(?: then| though| exactly)?"
)


def formerly(reading: Reading, focus: Sequence[str], as_of: datetime.date, lookup: Lookup) -> Reading | None:
    """A reading that shows what a clause in focus altered, or that clause with its day; else None."""
    said = " ".join(reading.question.split()).strip(" ?.!")
    before, since = _BEFORE.fullmatch(said), _SINCE.fullmatch(said)
    if (before is None and since is None) or not focus:
        return None
    clauses = [lookup.clauses[one] for one in focus if is_in_force(lookup.clauses[one], as_of)]
    named = {span.target for span in reading.spans if span.role == "item"}
    changes = [(one, _altered(one, lookup)) for one in clauses]
    changes = [(one, old) for one, old in changes if old and _is_on(named, (one, *old), lookup)]
    if len(changes) != 1:
        return None
    new, old = changes[0]
    if before is not None and len(old) != 1:
        return None
    shown = new if before is None else old[0]
    query = Query(kind="source", clause=shown.id, case=Case(as_of=as_of))
    return msgspec.structs.replace(
        reading, query=query, text=say_query(lookup, query), abstain=None, ask=None, unused=()
    )


def _altered(clause: Clause, lookup: Lookup) -> tuple[Clause, ...]:
    outright = (*clause.replaces, *clause.repeals)
    return tuple(lookup.clauses[one] for one in outright or altered(clause, lookup))


def _is_on(named: set[str | None], clauses: Sequence[Clause], lookup: Lookup) -> bool:
    """Whether the clauses have a rule on all things that are named."""
    ruled = {item for clause in clauses for rule in lookup.rules_of(clause.id) for item in rule.scope.items}
    near = {wide for item in ruled for wide in (item, *lookup.broader(item), *lookup.narrower(item))}
    return named <= near
