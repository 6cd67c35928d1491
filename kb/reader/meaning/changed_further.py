"""Further questions after one about what has changed: "and for cadets?", "and last year?"."""

from __future__ import annotations

import msgspec

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case
from kb.reader.meaning.amended import Read, compared, plain
from kb.reader.meaning.rephrase import as_mended
from kb.reader.meaning.windows import window_in
from kb.reader.pieces.pieces import Understood
from kb.text import Pattern
from kb.wording.labels import book_name

_GOING_ON = Pattern(
    r"(?:(?:and|or|but|ok|so|then|now) )*(?:(?:what|how) about |about |for |on |of |with"
    r" )*(?P<rest>.+?)(?: then| too| as well)?"
)
_NAMES = frozenset({"item", "items", "fact"})
_BETWEEN = frozenset(
    {
        "det",
        "poss",
        "filler",
        "comma",
        "and how about",
        "and",
        "or",
        "but",
        "about",
        "for",
        "of",
        "on",
        "with",
        "in",
        "what",
        "how",
    }
)


def going_on(found: Understood, before: Query, case: Case, lookup: Lookup, read: Read) -> Query | None:
    """ "And for cadets?", "and last year?": the comparison of days before, of other things or other days."""
    dated = before.kind == "compare" and before.other is not None and before.other.as_of != before.case.as_of
    said = " ".join(as_mended(found).casefold().split()).strip(" ?.!")
    match = _GOING_ON.fullmatch(said)
    if (
        match is None
        or len(said.split()) > _LONGEST
        or not (dated or (before.kind == "source" and before.book))
    ):
        return None
    named = {piece.tag for piece in found.pieces}
    rest = plain(match["rest"])
    if named & _NAMES and named <= _NAMES | _BETWEEN:
        if not dated and before.book is not None:
            return read(f"what does {book_name(lookup, before.book)} say about {rest}?").query
        assert before.other is not None, "a comparison of days"
        query = compared(rest, before.case.as_of, before.other.as_of, read)
        return None if query is None else _joined(before, query)
    if not dated or not (said.startswith(("and", "or", "what about", "how about")) or before.items == ()):
        return None
    cut = window_in(match["rest"], False, case.as_of, lookup)
    if cut is None or cut[0].strip(" ,.") not in ("", "in", "the") or cut[1].first is None:
        return None
    assert before.other is not None, "a comparison of days"
    first, last = (
        msgspec.structs.replace(one, as_of=day)
        for one, day in ((before.case, cut[1].first), (before.other, cut[1].last or case.as_of))
    )
    return msgspec.structs.replace(before, case=first, other=last) if first.as_of < last.as_of else None


_LONGEST = 8


def _joined(before: Query, query: Query) -> Query:
    """The new comparison with what was known in the one before, where it says nothing else of that."""

    def with_facts(one: Case, more: Case) -> Case:
        known = dict(one.facts) | dict(more.facts)
        return msgspec.structs.replace(more, facts=tuple(sorted(known.items(), key=lambda entry: entry[0])))

    assert before.other is not None, "a comparison of days"
    assert query.other is not None, "a comparison of days"
    return msgspec.structs.replace(
        query,
        items=query.items or before.items,
        book=before.book,
        case=with_facts(before.case, query.case),
        other=with_facts(before.other, query.other),
    )
