"""The two days that a question about changes lies between: "since June", "in the next six months"."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator, Sequence

import msgspec

from kb.model.lookup import Lookup
from kb.model.months import MONTHS
from kb.model.records import Edition
from kb.reader.pieces.days import Period, days_of
from kb.reader.pieces.editions import book_words
from kb.reader.words.forms import NUMBER_WORDS
from kb.text import Pattern

_ONE = datetime.timedelta(days=1)
_MONTH, _YEAR = datetime.timedelta(days=31), datetime.timedelta(days=365)
_UNITS = {"day": 1, "week": 7, "fortnight": 14, "month": 30.5, "year": 365}
_DATE = Pattern(
    r"(?P<day>\d{1,2})(?:st|nd|rd|th)?(?: of)? (?P<month>[a-z]+)(?:,? (?P<year>\d{4}))?"
    r"|(?P<month2>[a-z]+) (?P<day2>\d{1,2})(?:st|nd|rd|th)?(?:,? (?P<year2>\d{4}))?"
    r"|(?P<iso>\d{4}-\d\d-\d\d)"
)
_AHEAD = Pattern(
    r"\b(?:soon|coming(?: up)?|upcoming|ahead|in (?:the )?future|planned|pending|on the (?:way|horizon)"
    r"|in the (?:pipeline|offing)|to come(?= |$)|afoot|later on|yet to come|from now on|going forward)\b"
)
_LATELY = Pattern(r"\b(?:lately|recently|of late|these days|nowadays|in recent (?:times|months|years))\b")
_BEFORE = Pattern(
    r"\b(?:before(?: (?:that|then|this|now|it|the (?:last )?(?:change|update|revision)))?|previously|formerly"
    r"|earlier|in the (?:old|early) days|back then|in the past|at one time|originally|once)(?=\W*$)"
)
_COUNTED = Pattern(
    r"\b(?:(?:in|over|within|during|for)(?: the)? )?(?:the )?(?P<which>last|past|next|coming|previous"
    r"|following)\s"
    r"(?:(?P<count>\d+|[a-z]+) )?(?P<unit>day|week|fortnight|month|year)(?P<many>s)?\b"
)
_PAST = Pattern(r"\b(?:was|were|did|has|have|had|changed|been|new|used|happened)\b|['’]s\b")
_SINCE_WHO = Pattern(
    r"\b(since|before|after) (?:i|we|he|she|they|you) (?:(?!in |on |at )[a-z']+ ){1,4}?(?:(?:back )?(?:in"
    r"|on|at) )?"
    r"(?=\d|(?:last|this) |(?:january|february|march|april|june|july|august|september|october|november"
    r"|december)\b)"
)
_DANGLING = Pattern(r" (?:of|in|on|over|for|during|since|from|at|by|with|as)$")
_LEADS = Pattern(
    r"(?:\b(?:as of|as from|with effect from|effective|starting|since|after|from|before|prior to|until|up to"
    r"|till|by|in|on|during|for|over|at|as at|come|around|about|throughout|back in))? *(?:the )?$"
)
_LONGEST = 4
_SEASONS = frozenset({"winter", "spring", "summer", "autumn"})
_TO_MONTH = frozenset(
    {"before", "since", "in", "from", "after", "by", "until", "till", "last", "next", "this"}
)
_BARE = frozenset({*MONTHS, *_SEASONS})


class Window(msgspec.Struct, frozen=True):
    """The day before and the day after; None for both where the text names no days.

    `ahead` asks of what is to come; `book` is the edition whose changes alone are asked for.
    """

    first: datetime.date | None = None
    last: datetime.date | None = None
    ahead: bool = False
    book: str | None = None


def window_in(said: str, state: bool, today: datetime.date, lookup: Lookup) -> tuple[str, Window] | None:
    """A text in small letters without the words that say when, and the days; None where these are unclear.

    `state`: it is asked how it was ("different in 2022"), not what happened ("changed in 2022").
    """
    counted = _COUNTED.search(said)
    if counted is not None and (counted["count"] or counted.group().startswith(("in the", "over", "within"))):
        window = _counted(counted, today)
        return None if window is None else (_cut(said, counted.start(), counted.end()), window)
    ahead = _is_ahead(said)
    for pattern, days in (
        (_AHEAD, Window(today, _last_change(today, lookup), ahead=True)),
        (_LATELY, Window(today - _YEAR, today)),
        (_BEFORE, Window()),
    ):
        match = pattern.search(said)
        if match is not None and not _days_in(_cut(said, match.start(), match.end()), ahead, today):
            return _cut(said, match.start(), match.end()), days
    said = _SINCE_WHO.sub(r"\1 ", said)
    named = _by_book(said, today, lookup, state)
    if named is not None:
        return named
    found = _days_in(said, ahead, today)
    if state and not ahead and not _PAST.search(said):  # "is it different in winter?" asks of no one winter
        found = [one for one in found if said[one[0] : one[1]] not in _BARE]
    if len(found) > 1:
        return None
    if not found:
        return said, Window(ahead=ahead)
    start, end, first, last = found[0]
    lead = _LEADS.search(said[:start])
    start, word = (lead.start(), lead.group().strip()) if lead is not None else (start, "")
    window = _led(word.removesuffix("the").strip(), first, last, ahead, state, today, lookup)
    return _cut(said, start, end), window


def _is_ahead(said: str) -> bool:
    """Whether it is asked of what is to come: "what will change", "what changes in January"."""
    plainly = re.search(r"\b(?:will|going to|about to|due to|changing|to come)\b", said) is not None
    coming = (
        plainly
        or re.search(r"\b(?:would|(?:what|which|anything)(?: \w+)? (?:changes|happens))\b", said) is not None
    )
    coming = coming and re.search(r"\bsince\b", said) is None
    return coming and (plainly or _PAST.search(said) is None)


def _cut(said: str, start: int, end: int) -> str:
    rest = " ".join(f"{said[:start]} {said[end:]}".split()).strip(" ,")
    return _DANGLING.sub("", rest).strip(" ,")


def _counted(match: re.Match[str], today: datetime.date) -> Window | None:
    word = match["count"] or "one"
    few = {"few": 3, "couple": 2, "several": 6}
    count = int(word) if word.isdecimal() else few.get(word, NUMBER_WORDS.get(word, 0))
    if not 0 < count < 1000:
        return None
    length = datetime.timedelta(days=int(_UNITS[match["unit"]] * count))
    if match["which"] in ("next", "coming", "following"):
        return Window(today, today + length, ahead=True)
    return Window(today - length, today)


def _days_in(
    said: str, ahead: bool, today: datetime.date
) -> list[tuple[int, int, datetime.date, datetime.date]]:
    """The stretches of a text that say days, the longest first at each place."""
    words = list(re.finditer(r"[\w'-]+", said))
    found, index = [], 0
    while index < len(words):
        for size in range(min(_LONGEST, len(words) - index), 0, -1):
            stretch = said[words[index].start() : words[index + size - 1].end()]
            led = index and words[index - 1].group() in _TO_MONTH
            days = None if stretch == "may" and not led else _said_days(stretch, ahead, today)
            if days is not None:
                found.append((words[index].start(), words[index + size - 1].end(), *days))
                index += size - 1
                break
        index += 1
    return found


def _said_days(text: str, ahead: bool, today: datetime.date) -> tuple[datetime.date, datetime.date] | None:
    match = _DATE.fullmatch(text)
    if match is not None:
        day = _date(match, ahead, today)
        return None if day is None else (day, day)
    lows = text.split()
    if lows[0] in ("in", "during"):
        return None  # whether the one gone by or the one to come is meant, the tense says
    if lows[-1] in _SEASONS and len(lows) < 3:
        middle = days_of(lows if len(lows) == 2 else ["next" if ahead else "last", *lows], today)
        if middle is None:
            return None
        return _begun(middle[0] - 45 * _ONE, ahead, today), middle[1] + 45 * _ONE
    if len(lows) == 1 and lows[0] in MONTHS:
        return days_of(
            ["this" if MONTHS.index(lows[0]) + 1 == today.month else "next" if ahead else "last", *lows],
            today,
        )
    if lows[0] in ("early", "late") and len(lows) == 1:
        return None
    return days_of(lows, today)


def _begun(first: datetime.date, ahead: bool, today: datetime.date) -> datetime.date:
    """The first day of a season: of "has it changed this winter" it has begun, whatever the calendar says."""
    early = not ahead and datetime.timedelta(0) < first - today <= _MONTH
    return today.replace(day=1) if early else first


def _date(match: re.Match[str], ahead: bool, today: datetime.date) -> datetime.date | None:
    try:
        if match["iso"]:
            return datetime.date.fromisoformat(match["iso"])
        month = MONTHS.index(match["month"] or match["month2"]) + 1
        number, year = int(match["day"] or match["day2"]), match["year"] or match["year2"]
        if year:
            return datetime.date(int(year), month, number)
        day = datetime.date(today.year, month, number)
        more = 1 if ahead and day < today else -1 if not ahead and day > today else 0
        return day.replace(year=today.year + more)
    except ValueError:
        return None


def _led(
    lead: str, first: datetime.date, last: datetime.date, ahead: bool, state: bool, today: datetime.date,
    lookup: Lookup,
) -> Window:  # fmt: skip
    """The window of days with the word before them: "since", "before", "from", "by"."""
    if lead in ("before", "prior to", "until", "up to", "till"):
        return Window(today, first - _ONE, ahead=True) if first > today else Window(first - _ONE, today)
    if lead == "by":
        return Window(today, last, ahead=True) if last > today else Window(first - _ONE, today)
    if lead in ("since", "after", "from", "as of", "as from", "with effect from", "effective", "starting"):
        if first > today:
            return Window(first - _ONE, last, ahead=True)
        return Window(first - _ONE if first in change_days(lookup) else first, today)
    if state and first < today:
        return Window(first, today)
    if first <= today <= last and first != last:
        return Window(today, last, ahead=True) if ahead else Window(first - _ONE, today)
    return Window(first - _ONE, last, ahead=first > today)


def change_days(lookup: Lookup) -> frozenset[datetime.date]:
    """All days on which a clause or a rule begins or ends to hold."""
    base = lookup.base
    days = {day for clause in base.clauses for day in (clause.valid_from, clause.valid_until)}
    days |= {day for rule in base.rules for day in (rule.valid_from, rule.valid_until)}
    return frozenset(day for day in days if day is not None)


def _last_change(today: datetime.date, lookup: Lookup) -> datetime.date:
    return max(today + _YEAR, max(change_days(lookup)))


# -- a book or an edition that made the changes ---------------------------------------------------------

_NEW = "new|newest|latest|current|present|recent"
_OLD = "old|older|previous|former|earlier|last"
_ORDINAL = "first|second|third|fourth|fifth|sixth"
_WITH = (
    r"(?:\b(?:with|by|in|under|through|because of|due to|as a result of|thanks to|since|after|before|from|at)"
    r"\s)?"
)


def _by_book(
    said: str, today: datetime.date, lookup: Lookup, state: bool = False
) -> tuple[str, Window] | None:
    """The window that a book or an edition makes: "with the Notice", "in the second edition"."""
    books = book_words(lookup)
    nouns = "|".join(
        sorted(map(re.escape, (n for n in books if n.isalpha() or " " in n)), key=len, reverse=True)
    )
    noun = rf"(?:{nouns})|edition|version|issue|(?:rule ?)?book|rules|regulations|amendment"
    match = re.search(
        rf"(?P<lead>{_WITH})(?:the |this |our |that )?(?:(?P<which>{_NEW}|{_OLD}|{_ORDINAL}|\d{{4}}) )?"
        rf"(?P<noun>{noun})\b(?: of (?P<year>\d{{4}})| (?P<year2>\d{{4}}))?"
        r"(?: (?:came (?:out|in|into force)|took effect|was issued|appeared|started|began))?",
        said,
    )
    if match is None or not match["noun"]:
        return None
    which, lead = match["which"] or match["year"] or match["year2"] or "", match["lead"].strip()
    name = match["noun"]
    chosen = list(_editions(name, which, books.get(name, ()), today, lookup))
    if len(chosen) != 1:
        return None
    (edition,) = chosen
    rest = _cut(said, match.start(), match.end())
    starts = [c.valid_from for c in lookup.base.clauses if c.edition == edition.id]
    until = edition.valid_until
    if until is not None and until <= today:  # "since the first edition": since it ended
        compared = lead in ("since", "after", "from") or (state and lead != "before")
        return (rest, Window(until - _ONE, today)) if compared else None
    before = min(starts) - _ONE
    if lead in ("since", "after", "before"):
        return rest, Window(before, max(today, min(starts)))
    if sum(e.book == edition.book for e in lookup.base.editions) == 1:
        return rest, Window(before, max(today, *starts), book=edition.book)
    return rest, Window(before, min(starts))


def _editions(
    noun: str, which: str, books: Sequence[str], today: datetime.date, lookup: Lookup
) -> Iterator[Edition]:
    """The one edition that the words mean; a book of one edition needs no word before it."""
    several = [book for book in lookup.books if sum(e.book == book for e in lookup.base.editions) > 1]
    amending = {lookup.clauses[c.id].edition for c in lookup.base.clauses if c.replaces or c.repeals}
    if noun == "amendment" and not books:
        yield from (lookup.editions[edition] for edition in amending)
        return
    if not books and noun in ("rules", "regulation", "regulations") and not which:
        return
    for book in books or several:
        editions = sorted((e for e in lookup.base.editions if e.book == book), key=lambda e: e.valid_from)
        if which.isdecimal():
            yield from (e for e in editions if which in (e.id.split("/")[-1], str(e.valid_from.year)))
        elif which in _OLD.split("|"):
            yield from [e for e in editions if e.valid_until is not None and e.valid_until <= today][-1:]
        elif which in _ORDINAL.split("|"):
            yield from editions[_ORDINAL.split("|").index(which) :][:1]
        elif len(editions) == 1 and noun not in (
            "edition",
            "version",
            "issue",
            "book",
            "rule book",
            "rulebook",
        ):
            yield editions[0]
        elif which in _NEW.split("|") and book in several:
            yield [e for e in editions if e.valid_from <= today][-1]


_BEFORE_DAYS = Pattern(
    r"\b(?:before|prior to)\s+(?:the )?(?P<what>[\w' -]{3,40}?)(?P<verb> (?:came|took|was|were"
    r"|went)\b[^,?]*)?(?=[?,.]|$)"
)
_DONE = Pattern(r"\b(?:was|were|did|had|could|used|wore|might)\b")


def before_that(text: str, today: datetime.date, lookup: Lookup) -> Period | None:
    """The day before a month gone by, or before a book began to hold: "before June", "before the Notice"."""
    match = _BEFORE_DAYS.search(text.casefold())
    if match is None or not _DONE.search(text.casefold()):
        return None
    days = _said_days(match["what"], False, today)
    named = _by_book(f"before {match['what']}", today, lookup)
    if days is not None and days[0] <= today:
        day = days[0] - _ONE
    elif named is not None and not named[0] and named[1].first is not None:
        day = named[1].first
    else:
        return None
    return Period(match.start(), match.end(), day, day, settled=True)
