"""Questions known by a turn of phrase, read before the words are given their parts."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Query
from kb.model.records import Case
from kb.reader.authority import asked_authority
from kb.reader.lasting import lasting
from kb.reader.pieces import Understood


def asked_outright(found: Understood, case: Case, lookup: Lookup) -> Query | None:
    """The query that a turn of phrase makes of the text; None where it has none."""
    return lasting(found, case, lookup) or asked_authority(found, case, lookup)
