"""What has changed: "what is new about beards", "has the belt rule changed", "what did the Notice change".

Each is a comparison of two days. The words that say when are taken out, what is left of the question names
the things and the circumstances, and is read as those of any comparison are.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Sequence

import msgspec

from kb.model.altering import altered
from kb.model.lookup import Lookup
from kb.model.questions import Ask, Query, Reading
from kb.model.records import Case
from kb.reader.meaning.rephrase import as_mended
from kb.reader.meaning.superseded import LEAD, NUMBER, of_clause
from kb.reader.meaning.windows import Window, window_in
from kb.reader.pieces.days import say_day
from kb.reader.pieces.pieces import Understood
from kb.reader.words.forms import word_set
from kb.text import Pattern

Read = Callable[[str], Reading]

_AUX = r"(?:is|are|was|were|has|have|had|did|does|do|will|would|gets?|got|can|could|['’]s|['’]ve)"
_BE = (
    r"(?:be|been|being|treated|handled|get|got|getting|going to|due to|about to|set to|likely to|there"
    r"|actually|really"
    r"|ever|last"
    r"|next|just|already|all|also|now|yet|at all|still|any|much|a lot|recently|first|most recently)"
)
_EVENT = (
    r"changed|changes|changing|change|amended|amends?|altered|alters?|updated?|updates|revised?|replaced?"
    r"|replaces"
    r"|repealed|repeals?|modified|modify|withdrawn|dropped|rewritten|no longer in force|out of force|spent"
    r"|superseded|lapsed|cancelled|added|tightened|relaxed|done away with"
)
_SOFT = (
    r"do|happen(?:s|ed|ing)?|takes? effect|took effect|com(?:es?|ing) (?:in(?:to (?:force|effect))?|up)|came"
    r" in(?:to (?:force|effect))?"
    r"|kicks? in|starts?|started|begins?|began|ends?|ended"
)
_STATE = r"different|differently|differ|the same|otherwise"
_NEW = r"new|news"
_NOUN = r"changes?|amendments?|updates?|news|alterations?|revisions?|what['’]?s new"
_WHAT = Pattern(
    rf"{LEAD}(?P<what>what|which|who)(?: exactly| else| all| things| (?:rules?|clauses?|bits?|parts?"
    rf"|paragraphs?"
    rf"|items?|provisions?)(?: of (?:dress|uniform))?)?(?: {_AUX}|['’]s)?(?: (?:it|they))?(?: {_BE})*"
    rf" (?:(?P<event>{_EVENT})|(?P<state>{_STATE})|(?P<new>{_NEW})|(?P<soft>{_SOFT}))(?:"
    rf" {_BE})*(?P<rest>(?:[ ,].*)?)"
)
_ANY = Pattern(
    rf"{LEAD}(?:{_AUX} )?(?:there )?(?:been )?(?:any(?:thing)?|something|anything at all|(?<=there )some"
    rf"|(?<=there ))(?: else| recent| major"
    rf"| big| more)?(?: (?:{_AUX}|{_BE}))* ?(?:(?P<event>{_EVENT}|{_NOUN})|(?P<state>{_STATE})"
    rf"|(?P<new>{_NEW}))"
    rf"(?: {_BE})*(?P<rest>(?:[ ,].*)?)"
)
_TITLE = Pattern(
    rf"{LEAD}(?:(?:list|show|give|what(?:['’]s| is| are| was| were)|which are) )?(?:me |us )?(?:all"
    rf" )?(?:of )?(?:the "
    rf"|any |our |your )?(?:(?:recent|latest|last|new|next|coming|upcoming|planned|main) )*"
    rf"(?P<event>{_NOUN}|latest(?= (?:on|about|for|with|regarding)\b))"
    rf"(?P<rest>(?: (?:to|in|about|on|for|since|over|with|made|regarding|concerning|as) .*)?)"
)
_HAS = Pattern(
    rf"{LEAD}(?P<how>(?:how|when|in what way|since when|what way)(?: exactly| much)? )?(?P<aux>has|have"
    rf"|had|was|were|did"
    rf"|will|does|do|is|are)(?: (?P<thing>.+?))?(?: {_BE})* (?:(?P<event>{_EVENT})"
    rf"|(?P<state>{_STATE}))(?P<rest>(?:[ ,].*)?)"
)
_WAS = Pattern(
    rf"{LEAD}(?:what|how) (?:was|were|used to be) (?:the )?(?P<thing>(?:[\w-]+ ){{0,3}}(?:rules?|position"
    rf"|wording|order|clause"
    rf"|requirements?|limits?)\b.*)"
)
_ABOUT = Pattern(
    r"^(?:about|for|on|with|to|of|as to|regarding|concerning|around|when it comes to|as regards|as far"
    r" as)\b *"
)
_RULES = Pattern(
    r"^(?:made )?(?:the |our |your |any )?(?:old |previous |former |current |dress |uniform )*(?:rules?"
    r"|regulations?|wording"
    r"|orders?|policy|position|law|clauses?|requirements?|instructions?|limits?|text)"
    r"(?: (?:on|about|for|of|as to|regarding|concerning|around|with|over|to do with)\b|$) *"
)
_RULE = Pattern(
    r" (?:rules?|regulations?|requirements?|policy|clauses?|limits?|wording)$|['’]s (?:rules?|regulations?)$"
)
_HOW = Pattern(
    r"^(?:where|how|when|whether|if|who|by whom|the way|what) (?P<thing>.+?) (?:is|are|goes?|(?:may|must"
    r"|can|should) be)"
    r"(?: to be)?(?: worn| carried| put| placed| allowed)?(?: on)?$"
)
_WORN = Pattern(r"^(?:the way|how) (?:we|you|they|people|members|i) (?:wear|carry|have) ")
_ACTIVE = Pattern(
    r"(?:.*\b)?(?:what|which|who) (?:replaces?|replaced|amends?|alters?|updates?|revises?|repeals?"
    r"|modif(?:y|ies)|tightened|relaxed|added|dropped) .+"
)
_LED = Pattern(
    r" *(?:$|(?:about|for|on|in|with|to|as|regarding|concerning|when|at|from|under|since|and|then)\b)"
)
_LOOSE = Pattern(r"\b(?:alter|updat|modif|withdrawn|dropped|rewritten|added|tighten|relax|spent|done away)")
_ANYTHING = Pattern(r"^(?:anything|something|much|things?) *")
_TAIL = Pattern(
    r"(?:^|[ ,]+)(?:(?:and|if so,?) (?:how|why|to what|what to|in what way)|for (?:me|us|everyone"
    r"|everybody|all)|at all|or not|then|recently|to be|like|go(?:es)?|(?:is|are) concerned)$"
)
_STRANGE = word_set("""
    i me you we he she than compared versus vs may must can should could would need if because between into
    out
    myself someone something this these those clothes clothing dressed before
""")
_BY = Pattern(r"what differs by (?:the )?.+?(?P<rest>(?: for .+?)?,(?: .*?,)? on .+ compared with on .+)")
_PARTS_OF = Pattern(
    r"\b(parts?|clauses?|rules?|paragraphs?|bits?) (?:of|in) the (?:[\w-]+ ){0,2}[\w-]+(?= (?:has|have|did"
    r"|does|do|is|are|was|were)\b)"
)
_EDITIONS = Pattern(
    r"compare the (?P<one>\w+)(?: edition)? (?:with|and|to|against) the (?P<other>\w+)(?: edition)?(?:"
    r" (?:for|on|about|as to) (?P<thing>.+))?"
)
_AWAY = Pattern(
    r"(?:(?:i|we|he|she|they)(?: |['’]))[^.;?!]*?(?P<when>\b(?:since|for|in|until|after) [^.;?!,]+?)[.;,]"
    r" (?:so |and )?(?P<rest>[^.;?!]+)"
)
_SINCE_IN = Pattern(r"^(?:in|on|after) ")
_TOPIC = Pattern(
    r"(?:about |on |regarding )?(?P<thing>[\w'’ -]{3,40}?)(?: -|:|;|,|\.|\?) "
    r"(?P<rest>(?:what|any(?:thing)?|has|have"
    r"|did|how|is|are|was|were|when)\b.+)"
)
_LEADING = Pattern(
    r"(?:what|which|who|how|when|where|why|is|are|was|were|has|have|did|does|do|will|so|and|in|on|at|since"
    r"|before|after|from|i|we)\b"
)
_IT = word_set("it that this they them things thing rules rule the anything everything these those all")


def asked_change(
    found: Understood, before: Sequence[str], case: Case, lookup: Lookup, read: Read
) -> Query | Ask | None:
    """The comparison of two days that a text asks for; None where it asks for something else.

    `before` are the items of the question before, `read` reads the rest as a comparison.
    """
    for text in dict.fromkeys((found.text, as_mended(found))):
        said = _put_last(" ".join(text.casefold().split()).strip(" ?.!"))
        asked = _asked(said, found, before, case, lookup, read)
        if asked is not None:
            return asked
    return None


def _put_last(said: str) -> str:
    """ "I have been away since March. Anything new?", "beards: what has changed?" in their plain order."""
    away = _AWAY.fullmatch(said)
    if away is not None:
        rest = away["rest"].replace(" since then", "").replace(" since", "")
        said = f"{rest} {_SINCE_IN.sub('since ', away['when'])}"
    topic = _TOPIC.fullmatch(said)
    if topic is not None and not any(_LEADING.match(part) for part in (topic["thing"],)):
        said = f"{topic['rest']} for {topic['thing']}"
    return said


def _asked(
    said: str, found: Understood, before: Sequence[str], case: Case, lookup: Lookup, read: Read
) -> Query | Ask | None:
    if (told := _told_back(said, found, read)) is not None:
        return told
    said = _PARTS_OF.sub(r"\1", said)
    if (editions := _EDITIONS.fullmatch(said)) is not None and editions["thing"]:
        return read(
            f"what is the difference between the {editions['one']} and the {editions['other']} edition"
            f" for {editions['thing']}?"
        ).query
    if NUMBER.search(said):
        return of_clause(said, found, case, lookup)
    state = re.search(rf"\b(?:{_STATE})\b", said) is not None
    cut = window_in(said, state, case.as_of, lookup)
    if cut is None:
        return None
    rest = _asked_of(*cut)
    if rest is None:
        return None
    window = cut[1]
    if not rest and before and _points_back(said):
        rest = " and ".join(lookup.items[item].label for item in before)
    return _in_window(rest, window, case.as_of, lookup, read)


def _told_back(said: str, found: Understood, read: Read) -> Query | None:
    """The comparison whose read-back a text is, of what one book changed."""
    match = _BY.fullmatch(said)
    books = {piece.arg for piece in found.pieces if piece.tag == "book"}
    if match is None or len(books) != 1:
        return None
    query = read(f"what differs{match['rest']}?").query
    if query is None or query.kind != "compare" or query.other is None:
        return None
    return msgspec.structs.replace(query, book=books.pop())


def _points_back(said: str) -> bool:
    return not _IT.isdisjoint(said.split()) or len(said.split()) < 6


def _asked_of(said: str, window: Window) -> str | None:
    """What of a text names things and circumstances, if the rest of it asks for changes."""
    dated = window.first is not None
    if (
        window.ahead
        and dated
        and said.strip(" ,") in ("what's", "what’s", "what is", "what", "anything", "is anything")
    ):
        return ""
    for pattern in (_WHAT, _ANY, _TITLE, _HAS, _WAS):
        match = pattern.fullmatch(said.strip(" ,"))
        if match is None:
            continue
        groups = match.groupdict()
        if groups.get("what") == "who" or (groups.get("state") and not (dated or _is_past(said))):
            continue
        if pattern is _WHAT and _ACTIVE.fullmatch(said.strip(" ,")) and window.book is None:
            continue
        if groups.get("new") and _LED.match(groups["rest"]) is None:
            continue
        if groups.get("soft") == "do" and window.book is None:
            continue
        if groups.get("soft") and (groups["rest"].strip() or not dated):
            continue
        if pattern is _HAS and not _may_change(match, dated):
            continue
        if pattern is _WAS and not dated and "before" not in said and "used to" not in said:
            continue
        thing, rest = plain(groups.get("thing") or ""), plain(groups.get("rest") or "")
        left = " ".join(part for part in (thing, rest) if part)
        return left if _STRANGE.isdisjoint(left.split()) else None
    return None


def _is_past(said: str) -> bool:
    return re.search(r"\b(?:was|were|did|has|have|had|used)\b", said) is not None


_PRESENT = frozenset({"is", "are", "does", "do", "will"})


def _may_change(match: re.Match[str], dated: bool) -> bool:
    """Whether what is said to change is a rule, or is said to have changed: not "do I change my shirt"."""
    named = re.search(
        r"\b(?:rules?|regulations?|clauses?|wording|policy|order|limits?)\b", match["thing"] or ""
    )
    done = match["aux"] in ("has", "have", "had", "was", "were", "will", "did") or match["how"]
    if not named and (match["event"] or "").startswith("replac") and match["aux"] in _PRESENT:
        return False  # "when is the helmet replaced?" asks of a thing that wears out
    loosely = _LOOSE.search(match.group()) is not None and not (named or dated)
    if loosely or (match["thing"] or "").split()[-1:] == ["to"]:
        return False
    return bool(named or done) and (bool(match["event"]) or dated or _is_past(match.group()))


def plain(text: str) -> str:
    """The words without those that only say that rules are meant."""
    text = text.strip(" ,")
    for _ in range(2):
        text = _TAIL.sub("", text).strip(" ,")
        text = _ANYTHING.sub("", text).strip(" ,")
        how = _HOW.match(text)
        text = how["thing"] if how is not None else text
        text = _RULES.sub("", _WORN.sub("", text)).strip(" ,")
        text = _ABOUT.sub("", text).strip(" ,")
    text = _RULE.sub("", text).strip(" ,")
    return "" if not text or set(text.split()) <= _IT else text


def _in_window(rest: str, window: Window, today: datetime.date, lookup: Lookup, read: Read) -> Query | None:
    """The rest read as a comparison of the two days, or of the last change of what it names."""
    one = datetime.timedelta(days=1)
    first, last = window.first or today - one, window.last or today
    if first >= last:
        return None
    query = compared(rest, first, last, read)
    if query is not None and window.first is None:
        days = _of_last_change(query, window.ahead, today, lookup)
        query = compared(rest, *days, read) if days is not None else query
    if query is None or query.other is None or window.book is None:
        return query
    return msgspec.structs.replace(query, book=window.book)


def compared(rest: str, first: datetime.date, last: datetime.date, read: Read) -> Query | None:
    days = f"on {say_day(first)} and on {say_day(last)}"
    for lead in ("for ", "") if rest else ("",):
        query = read(f"what differs {lead}{rest} {days}?").query
        other = query.other if query is not None and query.kind == "compare" else None
        if query is not None and other is not None and (query.case.as_of, other.as_of) == (first, last):
            return query
    return None


def _of_last_change(
    query: Query, ahead: bool, today: datetime.date, lookup: Lookup
) -> tuple[datetime.date, datetime.date] | None:
    """The days around the last change of what a comparison is of, or the next one where it is to come.

    Where it is of everything: around all that amending clauses have done so far, and the year gone by.
    """
    one = datetime.timedelta(days=1)
    kinds = {near for item in query.items for near in lookup.narrower(item)}
    if not kinds and not ahead:
        amending = [clause.valid_from for clause in lookup.base.clauses if clause.replaces or clause.repeals]
        gone = [day for day in amending if day <= today]
        return min([today - 365 * one, *(day - one for day in gone)]), today
    rules = [rule for rule in lookup.base.rules if not kinds or kinds.intersection(rule.scope.items)]
    days = {day for rule in rules for day in (rule.valid_from, rule.valid_until) if day is not None}
    begun = min((rule.valid_from for rule in lookup.base.rules), default=today)
    if ahead:
        coming = [day for day in days if day > today]
        return (today, min(coming)) if coming else None
    gone = [day for day in days if begun < day <= today]
    # The order of one place is no change of the rules of all.
    altering = (rule for rule in rules if altered(lookup.clauses[rule.clause], lookup))
    ordered = [rule.valid_from for rule in altering if rule.valid_from in gone]
    return (max(ordered or gone) - one, today) if gone else None
