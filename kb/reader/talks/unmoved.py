"""A turn that says what moves no rule: what one would rather, or that somebody says otherwise.

"Even if I would rather keep the others on?", "the cook says it's fine in the mess. Is that so?".
"""

from __future__ import annotations

from kb.model.questions import Abstain, Query, Reading
from kb.reader.meaning.fits import facts_that_matter
from kb.reader.stories.hearsay import asks_whether_so
from kb.reader.talks.further import LEAD, bare_words, content, keys_of, put_as
from kb.reader.talks.talked import Talk
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_ANY = (
    r"(?:it|them|that|one|so|(?:the|any|some|my) (?:others?|other ones?|old ones?)|another(?: one)?|"
    r"something else)"
)
_DOES = r" (?:(?:really|simply|just) )?"
_WISH = Pattern(
    rf"(?i){LEAD}(?:(?:even|what) )*(?:if|though|when|although) (?:i|he|she|they|we)"
    r"(?:(?:['\u2019]d| would) (?:much )?(?:rather|sooner|prefer|like|love)|"
    rf"{_DOES}(?:do|does|did)(?:n['\u2019]t| not) (?:want|like|wish|care|fancy|feel like)|"
    rf"{_DOES}(?:prefer(?:s|red)?|want(?:s|ed)?|like[sd]?|hate[sd]?|wish(?:es|ed)?))"
    r"(?: (?:to|not|keep|keeping|have|having|wear|wearing|carry|carrying|use|using|go|do|take|leave|on|off|"
    rf"with|without|for|instead|itself|very much|at all|much|{_ANY}))*"
)
_WITHOUT = Pattern(r"(?i)\b(?:not|off|without|take|leave)\b")
_SAYS = (
    r"(?:says?|said|claims?|claimed|reckons?|reckoned|thinks?|thought|insists?|insisted|told (?:me|us)|"
    r"tells (?:me|us)|swears?|swore|maintains?)"
)
_WHERE = r"while|when|if|in|on|at|with|without|during|under|over|for|as|because|inside|outside|out|aboard"
_CLAIM = Pattern(
    r"(?i)(?:(?:but|and|well|hm+|yet|one more|another one)[,.:]? )*(?:the |my |our |a |an |some |his |her )?"
    rf"[\w' -]{{2,60}}? {_SAYS}(?: (?:that|to me))?(?: (?:at|in|aboard) (?:the )?[\w' -]{{2,30}}?,?)?? "
    r"(?:(?:it|that|this|they|those)(?:['\u2019]s|['\u2019]re| is| are| was| were)"
    r" (?:all right|fine|ok|okay|allowed|permitted|allowable|good|acceptable)|"
    r"(?:i|we|he|she|they|you) (?:can|may|could)(?!n['\u2019]t| not|not)"
    r"(?: (?:wear|carry|have|use|do|go with|keep)(?: (?:it|them|that|one)(?: on)?)?)?|"
    r"(?:i|we|he|she|they|you) ((?:can|may|could) (?:(?:leave|take|have) (?:it|them|that) off|"
    r"(?:go|do) without(?: (?:it|them))?|not wear (?:it|them))|"
    r"(?:need not|needn['\u2019]t|(?:do|does)(?: not|n['\u2019]t) (?:need|have) to)"
    r"(?: (?:wear|carry|have) (?:it|them))?))"
    rf"((?: (?:{_WHERE}|\w+ing)\b[^.;!?]*)?)[.;,!?]+ ?(.+)"
)
_ONLY = Pattern(
    r"(?i)(?:(?:but|and|well|hm+|yet)[,.:]? )*(?:the |my |our |a |an |some |his |her )?"
    rf"[\w' -]{{2,60}}? {_SAYS}(?: (?:that|to me))? (?:(?:it(?:['\u2019]s| is) )?only|just) "
    r"(?:(?:for )?(?:people|those|folk|men|women|someone|somebody|anyone)\b[\w' -]*|[\w' -]+?) "
    r"(?:have to|has to|must|need to|needs to|ought to|may|can|are allowed to)(?: (?:wear|carry|have|do) "
    r"(?:it|them|one|that|so))?[.;,!?]+ ?(.+)"
)
_SAYS_SO = Pattern(
    rf"(?i){LEAD}(?:even )?(?:if|when|though|although) ((?:the|my|our|his|her|a|an|some) [\w' -]{{2,40}}?) "
    r"(?:says? (?:so|yes|otherwise|it(?:['\u2019]s| is) (?:ok|okay|fine|all right))|"
    r"said (?:so|yes|otherwise)|agrees?|agreed|do(?:es)?n['\u2019]t mind|lets? (?:me|us|him|her|them)|"
    r"asks? (?:me|us) to|tells? (?:me|us) to|wants? (?:me|us|it)(?: to)?|insists?)"
)


def unmoved(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """The question before as it stands, or in the case in which somebody says otherwise; else None."""
    before = previous.query
    if before is None or before.kind in ("source", "compare"):
        return None
    bare = bare_words(text)
    if _WISH.fullmatch(bare):
        without = before.kind == "may" and before.polarity == "do" and _WITHOUT.search(bare)
        return None if without else talk.made(text, before)
    said = _SAYS_SO.fullmatch(bare)
    if said is not None:
        return _whatever_is_said(text, said.group(1), before, talk)
    only = _ONLY.fullmatch(text.strip())
    if only is not None and before.kind in ("may", "must"):
        asks = asks_whether_so([token.low for token in tokenize(only.group(1).strip(" .?!"))])
        return talk.made(text, before) if asks else None
    claim = _CLAIM.fullmatch(text.strip())
    if claim is None or not asks_whether_so([token.low for token in tokenize(claim.group(3).strip(" .?!"))]):
        return None
    off, rest = claim.group(1), claim.group(2).strip(" ,")
    if not rest and off is None:
        return talk.made(text, before)
    asked = f"and {rest}?" if off is None else f"may I leave it off {rest}?"
    again = talk.read(asked, previous)
    same = again.query is not None and again.query.items == before.items
    same = same and again.query is not None and (off is not None or again.query.kind == before.kind)
    return put_as(text, again) if same else None


def _whatever_is_said(text: str, who: str, before: Query, talk: Talk) -> Reading:
    """ "Even if the cook says so?": the question before, unless a grant or an order may move it."""
    lookup, words = talk.lookup, content(who)
    for fact in map(lookup.facts.__getitem__, facts_that_matter(before, lookup)):
        orders = any(words & keys_of(value.label) for value in fact.values)
        if fact.family in ("authorisation", "waiver") or (fact.family == "situation" and orders):
            reason = "What somebody says counts only as a grant or an order; say what was granted or ordered."
            return Reading(question=text, abstain=Abstain(reason=reason))
    return talk.made(text, before)
