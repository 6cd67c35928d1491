"""Of two things of which one must be worn, the one that is asked about: yes, and that there is a choice."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.lookup import Lookup
from kb.model.questions import Query, Verdict
from kb.model.values import YES
from kb.wording.cases import Facts
from kb.wording.labels import the_item
from kb.wording.situations import WORN
from kb.wording.verdicts import say_plain


def say_either(lookup: Lookup, query: Query, rows: Sequence[tuple[Facts, Verdict]]) -> str:
    """ "Yes. The skirt may be worn, or the trousers: one of the two must be"; the other alone decides.

    Nothing is said of a class of things ("other headgear"), of which some may not be worn.
    """
    facts = {fact for when, _ in rows for fact, _ in when}
    asked = query.kind in ("may", "must") and query.polarity == "do" and not query.modalities
    if not asked or query.value is not None or len(facts) != 1:
        return ""
    (worn,) = facts
    found = {dict(when)[worn] == YES: verdict for when, verdict in rows}
    if not worn.startswith(WORN) or not len(rows) == len(found) == _SIDES or found[False] != "required":
        return ""
    other = worn.removeprefix(WORN)
    if found[True] == "required" or len(lookup.narrower(other)) > 1:
        return ""
    line = say_plain(lookup, "permitted" if query.kind == "may" else "required", query).removesuffix(".")
    both = ", not both" if found[True] == "prohibited" else ""
    return f"{line}, or {the_item(lookup, other)}: one of the two must be{both}."


_SIDES = 2  # with the other thing on, and without it
